//! Numbers with their units, and symbols, in a statement.

use super::mention::{Mention, Reader};
use super::tokens::quotient;
use crate::problem::{ForceId, Size};
use crate::units::Dimension;

/// What a unit after a number makes of it.
#[derive(Clone, Copy)]
pub(super) enum Unit {
    /// A length: metres in one of it.
    Length(f64),
    Degrees,
    Force,
    Other,
}

/// Units as a learner may write them after a number, by their words. A length in a unit that fits
/// no place is still a length: "3.8 km" is not 3.8 m.
pub(super) const UNITS: &[(&str, Unit)] = &[
    ("statement.unit-metre", Unit::Length(1.0)),
    ("statement.unit-centimetre", Unit::Length(0.01)),
    ("statement.unit-millimetre", Unit::Length(0.001)),
    ("statement.unit-decimetre", Unit::Length(0.1)),
    ("statement.unit-kilometre", Unit::Length(1000.0)),
    // NIST SP 811 (2008), appendix B: exact.
    ("statement.unit-inch", Unit::Length(0.0254)),
    ("statement.unit-foot", Unit::Length(0.3048)),
    ("statement.unit-yard", Unit::Length(0.9144)),
    ("statement.unit-degree", Unit::Degrees),
    ("statement.unit-force", Unit::Force),
    ("statement.unit-other", Unit::Other),
];

impl Reader<'_> {
    /// A number, with its unit where one stands beside it.
    pub(super) fn number(&self, tokens: &[String]) -> Option<(Mention, usize)> {
        let token = tokens[0].as_str();
        let digits = token.trim_end_matches(|c: char| c.is_alphabetic());
        let unsigned = digits.strip_prefix('-').unwrap_or(digits);
        if !unsigned.starts_with(|c: char| c.is_ascii_digit() || c == '.') {
            return None;
        }
        let number = quotient(digits)?;
        let attached = &token[digits.len()..];
        let (unit, taken) = if attached.is_empty() {
            (tokens.get(1).map_or("", String::as_str), 2)
        } else {
            (attached, 1)
        };
        if attached.is_empty()
            && let Some(taken) = self.of_the_way(&tokens[1..])
        {
            let length = self.problem.given(self.problem.body().length).value;
            return Some((Mention::Length(number * length), 1 + taken));
        }
        let known = self
            .units
            .iter()
            .find(|(names, _)| names.iter().any(|name| name == unit))
            .map(|(_, unit)| *unit);
        let length = self.problem.body().length;
        Some(match known {
            Some(Unit::Length(factor)) => (Mention::Length(number * factor), taken),
            Some(Unit::Degrees) => (Mention::Degrees(number), taken),
            Some(Unit::Force) => (Mention::Newtons, taken),
            Some(Unit::Other) => (Mention::Quantity, taken),
            None if self.problem.given(length).symbol.matches(unit) && !unit.is_empty() => (
                Mention::Length(number * self.problem.given(length).value),
                taken,
            ),
            None if attached.is_empty() => (Mention::Number(number), 1),
            None => return None,
        })
    }

    /// The symbol of a force, of one of its parts, of a mass, a length or an angle, and how many
    /// tokens it is. A mass times g is a weight.
    pub(super) fn symbol(&self, tokens: &[String]) -> Option<(Mention, usize)> {
        let token = tokens[0].as_str();
        let forces = self.problem.forces();
        let part = token
            .strip_suffix(['x', 'y'])
            .filter(|stem| !stem.is_empty());
        let by_symbol = forces.iter().find(|force| {
            let support = matches!(force.id, ForceId::Support(_));
            force.symbol.matches(token)
                || support && part.is_some_and(|stem| force.symbol.matches(stem))
        });
        if let Some(force) = by_symbol {
            return Some((Mention::Force(force.id), 1));
        }
        let stem = token.strip_suffix('g').unwrap_or(token);
        let values = self.problem.values();
        for (index, given) in self.problem.givens().iter().enumerate() {
            let whole = given.symbol.matches(token);
            if whole && given.dimension == Dimension::LENGTH {
                return Some((Mention::Length(values[index]), 1));
            }
            if whole && given.dimension == Dimension::ANGLE {
                return Some((Mention::Degrees(values[index].to_degrees()), 1));
            }
            if given.dimension == Dimension::MASS && (whole || given.symbol.matches(stem)) {
                let of = |size: Size| matches!(size, Size::Weight(mass) if mass.0 == index);
                let force = forces.iter().find(|force| of(force.size))?.id;
                return Some(match (whole, self.times_g(&tokens[1..])) {
                    (true, None) => (Mention::Mass(Some(force)), 1),
                    (_, more) => (Mention::Force(force), 1 + more.unwrap_or(0)),
                });
            }
        }
        None
    }

    /// How many tokens say that a share is one of the body's length, counted from its foot.
    fn of_the_way(&self, tokens: &[String]) -> Option<usize> {
        let longest = |phrases: &[Vec<String>], tokens: &[String]| {
            let stands = phrases.iter().filter(|phrase| tokens.starts_with(phrase));
            stands.map(Vec::len).max()
        };
        let share = longest(&self.shares, tokens)?;
        Some(share + longest(&self.from_foot, &tokens[share..]).unwrap_or(0))
    }

    /// How many tokens say "times g", if the next ones do.
    pub(super) fn times_g(&self, tokens: &[String]) -> Option<usize> {
        self.gravity
            .iter()
            .filter(|phrase| tokens.starts_with(phrase))
            .map(Vec::len)
            .max()
    }
}
