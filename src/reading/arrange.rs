//! From tokens to an expression in which nothing is implied: products get their sign, functions
//! their brackets, open brackets their partner.

use super::choice::{Choice, Extent, Offered};
use super::grammar::{Item, tree_of};
use super::names::Lexicon;
use super::token::{Kind, Token};
use super::tree::{Function, Literal, Node, Operator, Remark, Tree};
use super::trouble::{Misreading, Trouble};
use super::word::closes;
use crate::text::Span;
use crate::units::{Dimension, Unit};

/// Brackets and functions inside each other, deeper than any working needs.
const DEEPEST: usize = 40;

/// One side of a line on its way to a tree.
pub(super) struct Arrange<'a> {
    pub(super) line: &'a str,
    pub(super) tokens: &'a [Token],
    /// One past the last byte of the side: where something is missing, it is missing here.
    pub(super) end: usize,
    pub(super) lexicon: &'a Lexicon<'a>,
    pub(super) choice: Choice,
    pub(super) offered: Offered,
    pub(super) remarks: Vec<Remark>,
    /// The next free index for a literal that nobody typed.
    pub(super) next_index: usize,
    at: usize,
    depth: usize,
    items: Vec<Item>,
    /// The token after the bracket of a function that closed last.
    after_call: Option<usize>,
}

impl<'a> Arrange<'a> {
    pub(super) fn new(
        line: &'a str,
        tokens: &'a [Token],
        end: usize,
        lexicon: &'a Lexicon<'a>,
        choice: Choice,
    ) -> Arrange<'a> {
        Arrange {
            line,
            tokens,
            end,
            lexicon,
            choice,
            offered: Offered::default(),
            remarks: Vec::new(),
            next_index: 0,
            at: 0,
            depth: 0,
            items: Vec::new(),
            after_call: None,
        }
    }

    /// The tree of the whole side.
    pub(super) fn side(&mut self) -> Result<Tree, Misreading> {
        self.sequence()?;
        if let Some(Token {
            kind: Kind::Close(close),
            span,
        }) = self.peek()
        {
            let missing = super::signs::partner(*close);
            return Err(Trouble::MissingBracket { missing }.at(*span));
        }
        match tree_of(&self.items) {
            Some(tree) => Ok(tree),
            None => Err(self.unexpected()),
        }
    }

    fn peek(&self) -> Option<&'a Token> {
        self.tokens.get(self.at)
    }

    fn kind(&self, ahead: usize) -> Option<&'a Kind> {
        self.tokens.get(self.at + ahead).map(|token| &token.kind)
    }

    /// The token before the next one.
    fn before(&self, back: usize) -> Option<&'a Token> {
        self.tokens.get(self.at.checked_sub(back)?)
    }

    fn unexpected(&self) -> Misreading {
        match self.peek() {
            None => Trouble::NumberExpected.at(Span::new(self.end, self.end)),
            Some(token) => {
                let found = self.line[token.span.start..token.span.end].to_owned();
                Trouble::Unexpected { found }.at(token.span)
            }
        }
    }

    fn is_angle_name(&self, kind: Option<&Kind>) -> bool {
        let Some(Kind::Name(id)) = kind else {
            return false;
        };
        let name = self.lexicon.vocabulary().name(*id);
        name.is_some_and(|name| name.dimension == Dimension::ANGLE)
    }

    /// Operands and operators up to a closing bracket or the end.
    fn sequence(&mut self) -> Result<(), Misreading> {
        self.operand()?;
        loop {
            let operator = match self.kind(0) {
                None | Some(Kind::Close(_)) => return Ok(()),
                Some(Kind::Plus) => Operator::Add,
                Some(Kind::Minus) => Operator::Subtract,
                Some(Kind::Times) => Operator::Multiply,
                Some(Kind::Divide) => Operator::Divide,
                Some(Kind::Power) => Operator::Power,
                Some(_) => {
                    self.implied()?;
                    continue;
                }
            };
            self.at += 1;
            self.items.push(Item::Binary(operator));
            if operator == Operator::Divide {
                self.divisor()?;
            } else {
                self.operand()?;
            }
        }
    }

    /// A factor without a multiplication sign before it.
    fn implied(&mut self) -> Result<(), Misreading> {
        let (Some(token), Some(before)) = (self.peek(), self.before(1)) else {
            return Err(self.unexpected());
        };
        match &token.kind {
            Kind::Literal(second) => {
                if let Some(trouble) = self.two_numbers(second, token.span, before) {
                    return Err(trouble);
                }
            }
            Kind::Unit(unit) => {
                self.unit(unit, token.span);
                // A power of a unit that stands for the whole has no meaning.
                return match self.kind(0) {
                    Some(Kind::Power) => Err(self.unexpected()),
                    _ => Ok(()),
                };
            }
            Kind::Name(_) | Kind::Open(_) | Kind::Function(_) => {}
            _ => return Err(self.unexpected()),
        }
        self.items.push(Item::Binary(Operator::Multiply));
        self.operand()
    }

    /// Two numbers side by side are no product: one of them, or the sign between them, may be a
    /// slip of the hand. π and a raised exponent are not taken for a second number.
    fn two_numbers(&self, second: &Literal, span: Span, before: &Token) -> Option<Misreading> {
        let Kind::Literal(first) = &before.kind else {
            return None;
        };
        let raised = self.before(2).is_some_and(|power| {
            matches!(power.kind, Kind::Power) && power.span.start == power.span.end
        });
        if raised || first.digits == "π" || second.digits == "π" {
            return None;
        }
        let text = |span: Span| self.line[span.start..span.end].to_owned();
        let (first, second) = (text(before.span), text(span));
        Some(Trouble::TwoNumbers { first, second }.at(before.span.join(span)))
    }

    /// A unit that stands for the expression before it. Degrees after the name of an angle, or
    /// after a function, say nothing new.
    fn unit(&mut self, unit: &'static Unit, span: Span) {
        let said = self.is_angle_name(self.before(1).map(|token| &token.kind))
            || self.after_call == Some(self.at);
        self.at += 1;
        if unit.dimension == Dimension::ANGLE && said {
            self.remarks.push(Remark::PassedOver { span });
            return;
        }
        let node = Node::Literal(Literal::unit_alone(self.next_index, unit));
        self.next_index += 1;
        self.remarks.push(Remark::UnitOfWhole { span });
        self.items.push(Item::Binary(Operator::Multiply));
        self.items.push(Item::Leaf(Tree { node, span }));
    }

    /// What stands after a division sign. Read tightly, factors without a sign between them hold
    /// together there.
    fn divisor(&mut self) -> Result<(), Misreading> {
        let wrap = self.choice.tight.then(|| self.open(None, None));
        self.operand()?;
        if !self.holds_more() {
            self.close(wrap);
            return Ok(());
        }
        self.offered.tight = true;
        while wrap.is_some() && (self.holds_more() || matches!(self.kind(0), Some(Kind::Power))) {
            if matches!(self.kind(0), Some(Kind::Power)) {
                self.at += 1;
                self.items.push(Item::Binary(Operator::Power));
                self.operand()?;
            } else {
                self.implied()?;
            }
        }
        self.close(wrap);
        Ok(())
    }

    /// True if a factor without sign follows.
    fn holds_more(&self) -> bool {
        let next = self.kind(0);
        matches!(
            next,
            Some(Kind::Name(_) | Kind::Open(_) | Kind::Function(_) | Kind::Literal(_))
        )
    }

    fn open(&mut self, function: Option<Function>, from: Option<Span>) -> usize {
        let span = from.or_else(|| self.peek().map(|token| token.span));
        self.items
            .push(Item::Open(function, span.unwrap_or_default()));
        self.items.len() - 1
    }

    fn close(&mut self, opened: Option<usize>) {
        let Some(opened) = opened else {
            return;
        };
        self.items.push(Item::Close);
        let last = self.before(1).map(|token| token.span);
        if let (Some(Item::Open(_, span)), Some(last)) = (self.items.get_mut(opened), last) {
            *span = span.join(last);
        }
    }

    fn signs(&mut self) {
        while let Some(token) = self.peek() {
            match token.kind {
                Kind::Plus => {}
                Kind::Minus => self.items.push(Item::Negative(token.span)),
                _ => return,
            }
            self.at += 1;
        }
    }

    fn operand(&mut self) -> Result<(), Misreading> {
        self.signs();
        self.primary()
    }

    fn primary(&mut self) -> Result<(), Misreading> {
        let Some(token) = self.peek() else {
            return Err(self.unexpected());
        };
        let node = match &token.kind {
            Kind::Literal(literal) => Node::Literal(literal.clone()),
            Kind::Name(id) => Node::Name(*id),
            Kind::Open(_) => return self.group(None, None),
            Kind::Function(function) => return self.function(*function, token.span),
            Kind::Close(_) => return Err(Trouble::NumberExpected.at(token.span)),
            _ => return Err(self.unexpected()),
        };
        self.at += 1;
        let span = token.span;
        self.items.push(Item::Leaf(Tree { node, span }));
        Ok(())
    }

    fn deeper(&mut self) -> Result<(), Misreading> {
        self.depth += 1;
        if self.depth > DEEPEST {
            let span = self.peek().or(self.before(1)).map(|token| token.span);
            return Err(Trouble::TooNested { limit: DEEPEST }.at(span.unwrap_or_default()));
        }
        Ok(())
    }

    /// A bracket, of a function or of none; left open at the end, it is closed.
    fn group(&mut self, function: Option<Function>, from: Option<Span>) -> Result<(), Misreading> {
        self.deeper()?;
        let Some(Token {
            kind: Kind::Open(bracket),
            span,
        }) = self.peek()
        else {
            return Err(self.unexpected());
        };
        let absolute = (*bracket == '|').then_some(Function::Absolute);
        let opened = self.open(function.or(absolute), Some(from.unwrap_or(*span)));
        self.at += 1;
        self.sequence()?;
        match self.peek() {
            Some(Token {
                kind: Kind::Close(close),
                ..
            }) if closes(*bracket, *close) => self.at += 1,
            Some(token) => {
                let missing = super::signs::partner(*bracket);
                return Err(Trouble::MissingBracket { missing }.at(token.span));
            }
            None => self.remarks.push(Remark::BracketClosed { span: *span }),
        }
        self.close(Some(opened));
        self.depth -= 1;
        Ok(())
    }

    fn function(&mut self, function: Function, span: Span) -> Result<(), Misreading> {
        self.deeper()?;
        self.at += 1;
        let (function, power) = self.function_power(function);
        if matches!(self.kind(0), Some(Kind::Open(_))) {
            self.group(Some(function), Some(span))?;
            if function.takes_angle() {
                self.after_call = Some(self.at);
            }
        } else {
            self.bare_argument(function, span)?;
        }
        if let Some(exponent) = power {
            self.items.push(Item::Binary(Operator::Power));
            self.items.extend(exponent);
        }
        self.depth -= 1;
        Ok(())
    }

    /// `sin²` and `sin^-1`: the inverse function, or a power for after the argument.
    fn function_power(&mut self, function: Function) -> (Function, Option<Vec<Item>>) {
        let none = (function, None);
        let Some(inverse) = function.inverse() else {
            return none;
        };
        if !matches!(self.kind(0), Some(Kind::Power)) {
            return none;
        }
        let bracket = usize::from(matches!(self.kind(1), Some(Kind::Open(_))));
        let minus = usize::from(matches!(self.kind(1 + bracket), Some(Kind::Minus)));
        let place = 1 + bracket + minus;
        let Some(Kind::Literal(literal)) = self.kind(place) else {
            return none;
        };
        if bracket == 1 && !matches!(self.kind(place + 1), Some(Kind::Close(_))) {
            return none;
        }
        let Some(token) = self.tokens.get(self.at + place) else {
            return none;
        };
        let sign = self.tokens.get(self.at + place - 1).map(|token| token.span);
        self.at += place + 1 + bracket;
        if minus == 1 && literal.typed == 1.0 {
            return (inverse, None);
        }
        let mut items = Vec::new();
        if minus == 1 {
            items.push(Item::Negative(sign.unwrap_or(token.span)));
        }
        items.push(Item::Leaf(Tree {
            node: Node::Literal(literal.clone()),
            span: token.span,
        }));
        (function, Some(items))
    }

    /// The argument of a function without brackets: one number, name or function, a number times
    /// an angle (`sin 2θ`), and more where the choice says so.
    fn bare_argument(&mut self, function: Function, span: Span) -> Result<(), Misreading> {
        let opened = self.open(Some(function), Some(span));
        self.operand()?;
        let bare = |kind: Option<&Kind>| matches!(kind, Some(Kind::Literal(l)) if l.unit.is_none());
        if bare(self.before(1).map(|token| &token.kind)) && self.is_angle_name(self.kind(0)) {
            self.implied()?;
        }
        if matches!(self.kind(0), Some(Kind::Power)) {
            self.offered.power = true;
            if self.choice.inner_power {
                self.at += 1;
                self.items.push(Item::Binary(Operator::Power));
                self.operand()?;
            }
        }
        if function.takes_angle() {
            self.longer_argument()?;
        }
        self.close(Some(opened));
        Ok(())
    }

    fn longer_argument(&mut self) -> Result<(), Misreading> {
        loop {
            let operator = match self.kind(0) {
                Some(Kind::Times) => Operator::Multiply,
                Some(Kind::Divide) => Operator::Divide,
                Some(Kind::Plus) if self.sum_goes_on() => Operator::Add,
                Some(Kind::Minus) if self.sum_goes_on() => Operator::Subtract,
                _ => return Ok(()),
            };
            let sum = matches!(operator, Operator::Add | Operator::Subtract);
            self.offered.sum |= sum;
            self.offered.term |= !sum;
            let wanted = if sum { Extent::Sum } else { Extent::Term };
            if self.choice.extent != wanted {
                return Ok(());
            }
            self.at += 1;
            self.items.push(Item::Binary(operator));
            self.operand()?;
        }
    }

    /// True if one angle follows the sign, and then nothing that belongs to it.
    fn sum_goes_on(&self) -> bool {
        let may_be_angle = |kind: Option<&Kind>| match kind {
            Some(Kind::Literal(literal)) => literal
                .unit
                .is_none_or(|unit| unit.dimension == Dimension::ANGLE),
            kind => self.is_angle_name(kind),
        };
        may_be_angle(self.before(1).map(|token| &token.kind))
            && may_be_angle(self.kind(1))
            && matches!(
                self.kind(2),
                None | Some(Kind::Plus | Kind::Minus | Kind::Close(_))
            )
    }
}
