//! A way told twice in one breath, so that the one contradicts the other: "up and left, level".

use super::gather::next;
use super::mention::Mention;
use super::way::{NONE, Way};
use crate::plane::Vector;
use crate::problem::Reference;

/// How a way was told, where that may contradict itself.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Telling {
    /// It was called level, by itself.
    level: bool,
    /// It was called upright, by itself.
    upright: bool,
    /// Up or down was said, and not straight.
    plain: bool,
    /// It was told part by part: "level to the left, and up".
    split: bool,
    /// A side was said with "to": it is no place.
    aimed: bool,
}

/// The second of two ways of one force that were told and cannot both be.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Clash {
    /// Level.
    Level,
    /// Upright.
    Upright,
    /// Straight up or down.
    Straight,
}

impl Telling {
    /// What was told here and there.
    pub(super) fn and(self, other: Telling) -> Telling {
        Telling {
            level: self.level || other.level,
            upright: self.upright || other.upright,
            plain: self.plain || other.plain,
            split: self.split || other.split,
            aimed: self.aimed || other.aimed,
        }
    }

    /// True where a line was told as a way, and not as what an angle is measured from.
    pub(super) fn lies(self) -> bool {
        self.level || self.upright
    }

    /// True where it was told part by part.
    pub(super) fn is_split(self) -> bool {
        self.split
    }

    /// Up or down, straight or not.
    pub(super) fn hear_upright(&mut self, straight: bool) {
        self.plain |= !straight;
    }

    /// True where a side was said with "to".
    pub(super) fn is_aimed(self) -> bool {
        self.aimed
    }

    /// A side, with "to" before it or without.
    pub(super) fn hear_side(&mut self, aimed: bool) {
        self.aimed |= aimed;
    }

    /// A part or component of the force.
    pub(super) fn hear_part(&mut self) {
        self.split = true;
    }

    /// The level or the upright as a way. With the side beside it ("level to the left"), or with
    /// what the other part does ("level and up"), it tells a part only.
    pub(super) fn hear_line(&mut self, line: Reference, heard: &[Mention], ahead: &[Mention]) {
        let small = |mention: &&Mention| {
            matches!(
                mention,
                Mention::Filler
                    | Mention::Unknown
                    | Mention::Upright
                    | Mention::Aimed
                    | Mention::Part
            )
        };
        let mut before = heard.iter().rev().filter(|mention| !small(mention));
        let mut after = ahead.iter().filter(|mention| !small(mention));
        let (last, first) = (before.next(), after.next());
        let joined =
            |and: Option<&Mention>, other: Option<&Mention>| match (and, other.and_then(axis)) {
                (Some(Mention::And), Some(axis)) => axis != line,
                _ => false,
            };
        let beside = |mention: Option<&Mention>| mention.and_then(axis) == Some(line);
        if beside(last)
            || beside(first)
            || joined(last, before.next())
            || joined(first, after.next())
        {
            self.split = true;
        } else if !last.is_some_and(measures) && !first.is_some_and(is_measured) {
            match line {
                Reference::Horizontal => self.level = true,
                Reference::Vertical => self.upright = true,
            }
        }
    }
}

/// The line along which a side lies.
fn axis(mention: &Mention) -> Option<Reference> {
    match mention {
        Mention::Left | Mention::Right => Some(Reference::Horizontal),
        Mention::Up | Mention::Down => Some(Reference::Vertical),
        Mention::Line(line) => Some(*line),
        _ => None,
    }
}

/// True before a line from which something is measured, or that says how high a thing is.
fn measures(mention: &Mention) -> bool {
    matches!(
        mention,
        Mention::At
            | Mention::To
            | Mention::From
            | Mention::On
            | Mention::Of
            | Mention::Above
            | Mention::Below
            | Mention::Between
            | Mention::Measured
    )
}

/// True after a line that belongs to a length or an angle.
fn is_measured(mention: &Mention) -> bool {
    matches!(
        mention,
        Mention::From
            | Mention::Of
            | Mention::Measured
            | Mention::Length(_)
            | Mention::Number(_)
            | Mention::Degrees(_)
    )
}

/// True for a line that only describes what follows, "the level walkway", or what went before, "at
/// ground level".
pub(super) fn describes(heard: &[Mention], ahead: &[Mention]) -> bool {
    let thing = |mention: Mention| {
        matches!(
            mention,
            Mention::Body | Mention::Behind(_) | Mention::Invented(_)
        )
    };
    let mut before = heard
        .iter()
        .rev()
        .filter(|mention| **mention != Mention::Filler);
    let of_a_thing = before.next().is_some_and(|last| {
        matches!(last, Mention::Behind(_) | Mention::Invented(_))
            && before.next() == Some(&Mention::At)
    });
    of_a_thing || next(ahead).is_some_and(thing)
}

/// The second of two ways that cannot both be, if a way was told so. `unit` is the force's own
/// direction, where the problem tells one.
pub(super) fn clash(way: Way, unit: Option<Vector>) -> Option<Clash> {
    let told = way.told;
    if told.split || told.level && told.upright {
        return None;
    }
    // Along itself a rope may be level or upright.
    let slopes =
        |part: fn(Vector) -> f64| way.along && unit.is_some_and(|unit| part(unit).abs() > NONE);
    let (rises, leans) = (slopes(|unit| unit.y), slopes(|unit| unit.x));
    if told.level && (way.up.is_some() || rises) {
        Some(Clash::Level)
    } else if told.upright && (way.right.is_some() || leans) {
        Some(Clash::Upright)
    } else if way.upright && (told.plain && way.right.is_some() || leans) {
        Some(Clash::Straight)
    } else {
        None
    }
}
