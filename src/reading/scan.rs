//! From characters to tokens: numbers with their units, signs, brackets. Words are in `word.rs`.

use super::choice::{Choice, Offered};
use super::names::Lexicon;
use super::number::{Comma, Found, number_at};
use super::signs::{
    blanks, is_blank, is_divide, is_minus, is_open, is_times, lowered, starts_word, word_length,
};
use super::token::{Kind, Token};
use super::tree::{Function, Literal, Remark};
use super::trouble::{Misreading, Trouble};
use super::unit::unit_at;
use crate::text::Span;
use crate::units::{Dimension, Unit, Written, find_unit};

/// What British hands write for a decimal point, and everybody for a product.
const RAISED_POINT: char = '·';

/// A scan of one line.
pub(super) struct Scan<'a> {
    pub(super) line: &'a str,
    /// The next byte to read.
    pub(super) at: usize,
    /// One past the last byte to read.
    pub(super) end: usize,
    pub(super) lexicon: &'a Lexicon<'a>,
    pub(super) choice: Choice,
    pub(super) offered: Offered,
    pub(super) tokens: Vec<Token>,
    pub(super) remarks: Vec<Remark>,
    literals: usize,
    bars: usize,
    /// Where newtons or a force N may stand.
    newtons: Vec<usize>,
}

impl<'a> Scan<'a> {
    pub(super) fn new(
        line: &'a str,
        part: Span,
        lexicon: &'a Lexicon<'a>,
        choice: Choice,
    ) -> Scan<'a> {
        Scan {
            line,
            at: part.start,
            end: part.end,
            lexicon,
            choice,
            offered: Offered::default(),
            tokens: Vec::new(),
            remarks: Vec::new(),
            literals: 0,
            bars: 0,
            newtons: Vec::new(),
        }
    }

    /// Reads the whole part.
    pub(super) fn run(&mut self) -> Result<(), Misreading> {
        while let Some(c) = self.rest().chars().next() {
            if is_blank(c) {
                self.at += c.len_utf8();
            } else if starts_word(c) {
                self.word();
            } else if !(self.raised() || self.number()? || self.sign(c)) {
                let found = c.to_string();
                let span = Span::new(self.at, self.at + c.len_utf8());
                return Err(Trouble::Unexpected { found }.at(span));
            }
        }
        Ok(())
    }

    /// What is still to be read.
    pub(super) fn rest(&self) -> &'a str {
        &self.line[self.at.min(self.end)..self.end]
    }

    /// The text of a span.
    pub(super) fn text(&self, span: Span) -> &'a str {
        &self.line[span.start..span.end]
    }

    pub(super) fn push(&mut self, kind: Kind, length: usize) {
        let span = Span::new(self.at, self.at + length);
        self.tokens.push(Token { kind, span });
        self.at += length;
    }

    /// True if an expression can end at what was read last.
    pub(super) fn after_operand(&self) -> bool {
        self.tokens
            .last()
            .is_some_and(|token| token.kind.ends_operand())
    }

    pub(super) fn next_index(&mut self) -> usize {
        self.literals += 1;
        self.literals - 1
    }

    fn number(&mut self) -> Result<bool, Misreading> {
        let powers = !matches!(
            self.tokens.last().map(|token| &token.kind),
            Some(Kind::Divide | Kind::Power)
        );
        let Some(found) = number_at(self.rest(), self.choice.decimal, powers) else {
            return Ok(false);
        };
        let found = self.raised_point(found);
        let span = Span::new(self.at, self.at + found.length);
        if !found.value.is_finite() {
            return Err(Trouble::NotFinite.at(span));
        }
        self.remark_comma(found.comma, span);
        let loose = self.unit_stands_apart();
        let index = self.next_index();
        self.push(Kind::Literal(literal(index, &found)), found.length);
        if let Some((unit, length)) = self.unit_after() {
            if loose && unit.dimension != Dimension::ANGLE {
                self.at += blanks(self.rest());
                self.push(Kind::Unit(unit), length);
            } else {
                self.attach(unit, length);
                // sin 35° N: the degrees are the angle's, the newtons those of the whole.
                if !loose {
                    self.refuse_second_unit()?;
                }
            }
        }
        Ok(true)
    }

    fn remark_comma(&mut self, comma: Comma, span: Span) {
        match comma {
            Comma::None => {}
            Comma::Decimal => {
                self.offered.decimal_comma = true;
                self.remarks.push(Remark::DecimalComma { span });
            }
            Comma::Thousands => self.remarks.push(Remark::Thousands { span }),
            Comma::Either { decimal } => {
                self.offered.either_comma = true;
                self.remarks.push(if decimal {
                    Remark::DecimalComma { span }
                } else {
                    Remark::Thousands { span }
                });
            }
        }
    }

    /// In `sin 35 N` and `2^3 N` the unit belongs to the whole, not to the number before it.
    fn unit_stands_apart(&self) -> bool {
        let mut before = self.tokens.iter().rev().map(|token| &token.kind);
        let mut kind = before.next();
        if matches!(kind, Some(Kind::Minus)) {
            kind = before.next();
        }
        let is_angle = |kind: Option<&Kind>| matches!(kind, Some(Kind::Function(function)) if function.takes_angle());
        match kind {
            Some(Kind::Power) => true,
            // sin² 35 N
            Some(Kind::Literal(_)) => {
                matches!(before.next(), Some(Kind::Power)) && is_angle(before.next())
            }
            kind => is_angle(kind),
        }
    }

    /// The unit after a number, with its bytes, blanks before it not counted.
    fn unit_after(&mut self) -> Option<(&'static Unit, usize)> {
        let rest = self.rest();
        let text = &rest[blanks(rest)..];
        self.unit_here(text, true)
    }

    /// The unit at the start of `text`, unless it rather is a name.
    ///
    /// After a number `m` and `N` are units first; `g` and every other letter that is also a name
    /// is the name first. Away from a number, names come first always.
    pub(super) fn unit_here(
        &mut self,
        text: &str,
        after_number: bool,
    ) -> Option<(&'static Unit, usize)> {
        let (lexicon, choice) = (self.lexicon, self.choice);
        let (mut unit_as_name, mut name_as_unit) = (false, false);
        // A place that was looked at before keeps its number.
        let at = self.end - text.len();
        let place = self.newtons.iter().position(|known| *known == at);
        let place = place.unwrap_or(self.newtons.len());
        let mut newton = false;
        let found = unit_at(text, &mut |spelling, unit| {
            let words = spelling.split(|c: char| !c.is_alphabetic());
            let letter = matches!(unit.symbol, "m" | "N") && spelling.chars().count() == 1;
            // Behind a number `m` is no moment M of another case.
            let is_name = |word: &str| match letter {
                true => lexicon.exact(word).is_some(),
                false => lexicon.find(word).is_some(),
            };
            let named = words.filter(|word| !word.is_empty()).any(is_name);
            let strong = matches!(unit.symbol, "m" | "N") || spelling.chars().count() > 1;
            let whole = lexicon.find(spelling).is_some() && spelling.chars().count() > 1;
            if !named {
                true
            } else if after_number && strong && !whole {
                unit_as_name = true;
                newton |= unit.symbol == "N";
                let named = unit.symbol == "N" && choice.newtons_as_name >> place.min(7) & 1 == 1;
                !choice.unit_as_name && !named
            } else {
                name_as_unit = true;
                choice.name_as_unit
            }
        });
        if newton && place == self.newtons.len() {
            self.newtons.push(at);
        }
        self.offered.newtons = u8::try_from(self.newtons.len()).unwrap_or(u8::MAX);
        self.offered.unit_as_name |= unit_as_name;
        self.offered.name_as_unit |= name_as_unit;
        found
    }

    /// Gives the number just read its unit.
    fn attach(&mut self, unit: &'static Unit, length: usize) {
        let gap = blanks(self.rest());
        let Some(token) = self.tokens.last_mut() else {
            return;
        };
        if let Kind::Literal(literal) = &mut token.kind {
            literal.unit = Some(unit);
            literal.value = literal.typed * unit.factor;
            literal.written.last_place *= unit.factor;
        }
        self.at += gap + length;
        token.span.end = self.at;
    }

    fn refuse_second_unit(&mut self) -> Result<(), Misreading> {
        let gap = blanks(self.rest());
        let text = &self.rest()[gap..];
        let word = word_length(text);
        let is_name = word > 0 && self.lexicon.find(&text[..word]).is_some();
        match unit_at(text, &mut |_, _| true) {
            Some((_, length)) if !is_name && word > 0 => {
                let span = Span::new(self.at + gap, self.at + gap + length);
                let second = text[..length].to_owned();
                Err(Trouble::SeveralUnits { second }.at(span))
            }
            _ => Ok(()),
        }
    }

    /// `²`, `⁻¹` and the like: a power with its exponent.
    fn raised(&mut self) -> bool {
        let rest = self.rest();
        let length: usize = rest
            .chars()
            .take_while(|c| lowered(*c).is_some())
            .map(char::len_utf8)
            .sum();
        let digits: String = rest[..length].chars().filter_map(lowered).collect();
        let plain = digits.trim_start_matches('-');
        let sign = digits.len() - plain.len();
        if plain.is_empty() || plain.contains('-') || sign > 1 || plain.len() > 3 {
            return false;
        }
        self.push(Kind::Power, 0);
        if sign == 1 {
            self.push(Kind::Minus, '⁻'.len_utf8());
        }
        let found = Found {
            length: length - sign * '⁻'.len_utf8(),
            digits: plain.to_owned(),
            value: plain.parse().unwrap_or(0.0),
            comma: Comma::None,
            fraction: false,
        };
        let index = self.next_index();
        self.push(Kind::Literal(literal(index, &found)), found.length);
        true
    }

    /// `T.sin 35`, `2.1)(…`: a dot right between a name or bracket and a letter.
    fn dot_multiplies(&self) -> bool {
        let last = self.tokens.last();
        let touches = last.is_some_and(|token| {
            token.span.end == self.at && matches!(token.kind, Kind::Name(_) | Kind::Close(_))
        });
        let next = self.rest().chars().nth(1);
        touches && next.is_some_and(|c| starts_word(c) || is_open(c))
    }

    /// `9·8`: a raised dot right between digits, which may be a decimal point.
    fn raised_point(&mut self, found: Found) -> Found {
        let digit = |c: char| c.is_ascii_digit();
        let whole = found.digits.chars().all(digit);
        let rest = self.rest();
        let (number, behind) = rest.split_at(found.length);
        let Some(decimals) = behind.strip_prefix(RAISED_POINT).filter(|_| whole) else {
            return found;
        };
        let count = decimals.len() - decimals.trim_start_matches(digit).len();
        let after = decimals[count..].chars().next();
        let more = after.is_some_and(|c| is_times(c) || matches!(c, '.' | ',' | '^'));
        if count == 0
            || more
            || self
                .tokens
                .last()
                .is_some_and(|token| matches!(token.kind, Kind::Times))
                && self.line[..self.at].ends_with(RAISED_POINT)
        {
            return found;
        }
        self.offered.raised_point = true;
        let digits = format!("{number}.{}", &decimals[..count]);
        match (self.choice.raised_point, digits.parse()) {
            (true, Ok(value)) => Found {
                length: found.length + RAISED_POINT.len_utf8() + count,
                digits,
                value,
                ..found
            },
            _ => found,
        }
    }

    fn only_a_name(&self) -> bool {
        matches!(
            self.tokens.as_slice(),
            [Token {
                kind: Kind::Name(_),
                ..
            }]
        )
    }

    /// True for ` : W = 5 : 4` behind a name: a ratio, and no label.
    fn is_ratio(&self, rest: &str) -> bool {
        let Some((under, behind)) = rest[1..].split_once('=') else {
            return false;
        };
        let known = self.lexicon.find(under.trim()).is_some();
        known && behind.contains(':') && !behind.contains('=')
    }

    /// Operators, brackets and signs; false if `c` is none.
    fn sign(&mut self, c: char) -> bool {
        let rest = self.rest();
        let doubled = |sign: &str| if rest.starts_with(sign) { 2 } else { 1 };
        let (kind, length) = match c {
            '=' if rest.starts_with("=>") => (Kind::Equals(false), 2),
            '=' => (Kind::Equals(false), doubled("==")),
            '≈' | '~' | '≃' | '≅' => (Kind::Equals(true), c.len_utf8()),
            ':' if rest.starts_with(":=") => (Kind::Equals(false), 2),
            // `T => 45`, `T -> 45`: what follows is what it comes to.
            '⇒' | '⟹' | '→' => (Kind::Equals(false), c.len_utf8()),
            '-' if rest.starts_with("->") => (Kind::Equals(false), 2),
            // `T: 45` says what T is; `64.2 : 2.4` divides.
            // `B : W = 5 : 4` is a ratio.
            ':' if self.only_a_name() && !self.is_ratio(rest) => (Kind::Equals(false), 1),
            ':' if self.after_operand() => (Kind::Divide, 1),
            '*' if rest.starts_with("**") => (Kind::Power, 2),
            '.' if self.dot_multiplies() => (Kind::Times, 1),
            '^' => (Kind::Power, 1),
            '+' | '＋' => (Kind::Plus, c.len_utf8()),
            '√' => (Kind::Function(Function::SquareRoot), c.len_utf8()),
            '|' if self.bars > 0 && self.after_operand() => (Kind::Close('|'), 1),
            '|' => (Kind::Open('|'), 1),
            '°' | 'º' if self.after_operand() => match find_unit("°") {
                Some(degree) => (Kind::Unit(degree), c.len_utf8()),
                None => return false,
            },
            c if is_minus(c) => (Kind::Minus, c.len_utf8()),
            c if is_times(c) => (Kind::Times, c.len_utf8()),
            c if is_divide(c) => (Kind::Divide, c.len_utf8()),
            c if is_open(c) => (Kind::Open(c), 1),
            ')' | ']' | '}' => (Kind::Close(c), 1),
            _ => return false,
        };
        match kind {
            Kind::Open('|') => self.bars += 1,
            Kind::Close('|') => self.bars -= 1,
            _ => {}
        }
        self.push(kind, length);
        true
    }
}

fn literal(index: usize, found: &Found) -> Literal {
    Literal {
        index,
        value: found.value,
        typed: found.value,
        digits: found.digits.clone(),
        written: if found.fraction {
            exact()
        } else {
            Written::of_digits(&found.digits, 1.0)
        },
        unit: None,
        unit_alone: false,
    }
}

/// The figures of a number that is exact, such as ½ and π.
pub(super) fn exact() -> Written {
    Written {
        significant: 15,
        last_place: 0.0,
    }
}
