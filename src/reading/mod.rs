//! What a learner typed, as trees.
//!
//! A line becomes one or several readings, in order of plausibility. The reader is handed names
//! with dimensions, never values, so it cannot bend a line towards the answer.
//!
//! The way of a line: `trim` takes away what carries nothing, `scan` and `word` cut tokens
//! (numbers with their units, names, signs), `arrange` writes out what is implied, `grammar` (the
//! only file that uses meval) gives the tree. Where a line can be read in several ways, `choice`
//! lists them and the line is read once for each.

mod arrange;
mod choice;
mod convert;
mod evaluate;
mod grammar;
mod layout;
mod names;
mod number;
mod said;
mod scan;
mod settle;
mod signs;
mod squared;
mod token;
mod tree;
mod trim;
mod trouble;
mod unit;
mod word;

pub use evaluate::{Leaf, Mismatch, MismatchKind, Value, evaluate};
pub use layout::layout;
pub use tree::{
    Function, Literal, Name, NameId, Node, Operator, Place, Reading, Relation, Remark, Tree,
    Vocabulary, Way,
};
pub use trouble::{Misreading, Trouble};

use crate::text::Span;
use crate::units::Dimension;
use arrange::Arrange;
use choice::{Choice, Offered};
use convert::{convert_sides, converted};
use names::Lexicon;
use scan::Scan;
use settle::settle_units;
use squared::signs_squared;
use token::{Kind, Token};

/// The longest line that is read, in characters.
pub const LONGEST_LINE: usize = 500;

/// The most readings of one line that are given.
const MOST_READINGS: usize = 8;

/// Words of an own name at the head of a line, at most.
const OWN_NAME_WORDS: usize = 7;

/// Reads a line: its readings in order of plausibility, at least one. Never panics.
///
/// # Errors
/// A [`Misreading`] that says what is wrong and where.
pub fn read(line: &str, vocabulary: &Vocabulary) -> Result<Vec<Reading>, Misreading> {
    let whole = Span::new(0, line.len());
    if line.chars().count() > LONGEST_LINE {
        let limit = LONGEST_LINE;
        return Err(Trouble::TooLong { limit }.at(whole));
    }
    let lexicon = Lexicon::new(vocabulary);
    let (part, passed) = trim::part(line, &lexicon);
    if part.start == part.end {
        return Err(Trouble::Empty.at(whole));
    }
    let mut first = Choice::default();
    let (mut best, mut offered) = one(line, part, &lexicon, first);
    // A decimal comma elsewhere in the line says what 1,500 means.
    if offered.decimal_comma && offered.either_comma {
        first.decimal = true;
        (best, offered) = one(line, part, &lexicon, first);
    }
    let mut readings: Vec<(String, Reading)> = Vec::new();
    for choice in offered.combinations(first) {
        if let (Ok(mut reading), _) = one(line, part, &lexicon, choice) {
            let layout = reading.layout(vocabulary);
            if readings.iter().all(|(known, _)| *known != layout) {
                reading.remarks.splice(0..0, passed.iter().cloned());
                readings.push((layout, reading));
            }
        }
    }
    match (readings.is_empty(), best) {
        (true, Err(misreading)) => Err(misreading),
        (true, Ok(reading)) => Ok(vec![reading]),
        (false, _) => Ok(plausible(readings, vocabulary)),
    }
}

/// The readings whose dimensions agree, in their order; where none does, the first.
fn plausible(readings: Vec<(String, Reading)>, vocabulary: &Vocabulary) -> Vec<Reading> {
    let agree: Vec<bool> = readings
        .iter()
        .map(|(_, reading)| {
            reading
                .sides
                .iter()
                .all(|side| dimensions_agree(side, vocabulary))
        })
        .collect();
    let any = agree.contains(&true);
    let kept = readings
        .into_iter()
        .zip(agree)
        .filter(|(_, agree)| *agree || !any);
    kept.take(if any { MOST_READINGS } else { 1 })
        .map(|((_, reading), _)| reading)
        .collect()
}

/// True unless certain dimensions contradict each other. No values are known here: every name is
/// put in as 0.7 of its unit, and only the dimensions are looked at.
fn dimensions_agree(side: &Tree, vocabulary: &Vocabulary) -> bool {
    let mut leaf = |leaf: Leaf<'_>| match leaf {
        Leaf::Literal(literal) => Value::of_literal(literal),
        Leaf::Name(id) => {
            let name = vocabulary.name(id);
            Value::of(0.7, name.map_or(Dimension::NUMBER, |name| name.dimension))
        }
    };
    match evaluate(side, &mut leaf) {
        Ok(_) => true,
        Err(mismatch) => mismatch.kind == MismatchKind::NotFinite,
    }
}

/// One reading of the part of a line, and the choices that were met on the way.
fn one(
    line: &str,
    part: Span,
    lexicon: &Lexicon<'_>,
    choice: Choice,
) -> (Result<Reading, Misreading>, Offered) {
    let mut scan = Scan::new(line, part, lexicon, choice);
    let result = scan.run();
    let offered = scan.offered;
    if let Err(misreading) = result {
        return (Err(misreading), offered);
    }
    let mut reading = Reading {
        defines: None,
        sides: Vec::new(),
        relation: None,
        remarks: std::mem::take(&mut scan.remarks),
    };
    let next_index = scan.next_index();
    let mut tokens = scan.tokens.as_slice();
    let own = own_name(line, tokens, &mut reading);
    tokens = &tokens[own..];
    if let Err(misreading) = refuse_unknown(tokens, lexicon) {
        return (Err(misreading), offered);
    }
    let end = part.end;
    let mut sides = Sides {
        line,
        end,
        lexicon,
        choice,
        offered,
        next_index,
    };
    let read = sides.read(tokens, &mut reading);
    (read.map(|()| reading), sides.offered)
}

/// The sides of a line on their way to trees.
struct Sides<'a> {
    line: &'a str,
    /// One past the last byte that is read.
    end: usize,
    lexicon: &'a Lexicon<'a>,
    choice: Choice,
    offered: Offered,
    /// The next free index for a literal that nobody typed.
    next_index: usize,
}

impl Sides<'_> {
    fn read(&mut self, tokens: &[Token], reading: &mut Reading) -> Result<(), Misreading> {
        let is_sign = |token: &Token| matches!(token.kind, Kind::Equals(_));
        let mut rest = Some(tokens);
        while let Some(now) = rest {
            let sign = now.iter().position(is_sign);
            let (side, after) = now.split_at(sign.unwrap_or(now.len()));
            let end = after.first().map_or(self.end, |token| token.span.start);
            let mut arrange = Arrange::new(self.line, side, end, self.lexicon, self.choice);
            arrange.next_index = self.next_index;
            let tree = arrange.side();
            self.next_index = arrange.next_index;
            self.offered = self.offered.and(arrange.offered);
            reading.remarks.append(&mut arrange.remarks);
            let mut tree = converted(settle_units(tree?, &mut self.next_index));
            if let Some(inside) = signs_squared(&tree) {
                self.offered.signed_power = true;
                if self.choice.signed_power {
                    tree = inside;
                }
            }
            reading.sides.push(tree);
            reading.relate(after.first());
            rest = after.get(1..).filter(|_| sign.is_some());
        }
        convert_sides(&mut reading.sides, &mut self.next_index);
        Ok(())
    }
}

impl Reading {
    fn relate(&mut self, token: Option<&Token>) {
        if let Some(Token {
            kind: Kind::Equals(about),
            ..
        }) = token
        {
            let about = *about || self.relation == Some(Relation::About);
            self.relation = Some(if about {
                Relation::About
            } else {
                Relation::Equal
            });
        }
    }
}

/// Takes an own name at the head (`Wx = …`) into the reading; the number of tokens it takes, its
/// sign included.
fn own_name(line: &str, tokens: &[Token], reading: &mut Reading) -> usize {
    let sign = tokens
        .iter()
        .position(|token| matches!(token.kind, Kind::Equals(_)));
    let Some(words) = sign.filter(|words| (1..=OWN_NAME_WORDS).contains(words)) else {
        return 0;
    };
    let all_unknown = tokens[..words]
        .iter()
        .all(|token| matches!(token.kind, Kind::Unknown(_)));
    if !all_unknown || tokens.len() == words + 1 {
        return 0;
    }
    let span = tokens[0].span.join(tokens[words - 1].span);
    reading.defines = Some((line[span.start..span.end].to_owned(), span));
    reading.relate(tokens.get(words));
    words + 1
}

/// The letter of an unknown name that lacks its index, with the names that it may be: `W`, or the
/// `m` of `mg`.
fn which_names(name: &str, lexicon: &Lexicon<'_>) -> (String, Vec<crate::text::Symbol>) {
    let whole = lexicon.with_index(name);
    let first = name.chars().next().map_or(0, char::len_utf8);
    let rest = &name[first..];
    let product = rest.chars().count() == 1 && lexicon.exact(rest).is_some();
    if !whole.is_empty() || !product {
        return (name.to_owned(), whole);
    }
    (name[..first].to_owned(), lexicon.with_index(&name[..first]))
}

fn refuse_unknown(tokens: &[Token], lexicon: &Lexicon<'_>) -> Result<(), Misreading> {
    for (place, token) in tokens.iter().enumerate() {
        let Kind::Unknown(name) = &token.kind else {
            continue;
        };
        let name = name.clone();
        let before = place.checked_sub(1).and_then(|place| tokens.get(place));
        let after_number = matches!(
            before.map(|token| &token.kind),
            Some(Kind::Literal(literal)) if literal.unit.is_none()
        );
        let which = which_names(&name, lexicon);
        if !which.1.is_empty() {
            let (name, names) = which;
            let span = Span::new(token.span.start, token.span.start + name.len());
            let trouble = match <[_; 1]>::try_from(names) {
                Ok([only]) => Trouble::UnknownName {
                    name,
                    nearest: Some(only),
                },
                Err(names) => Trouble::WhichName { name, names },
            };
            return Err(trouble.at(span));
        }
        let nearest = lexicon.nearest(&name);
        let trouble = if after_number && nearest.is_none() {
            Trouble::UnknownUnit { name }
        } else {
            Trouble::UnknownName { name, nearest }
        };
        return Err(trouble.at(token.span));
    }
    Ok(())
}
