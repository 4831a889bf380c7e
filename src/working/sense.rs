//! Which way what was found acts.

use super::evaluate::Numbers;
use super::tell::Teller;
use super::{Meaning, Method, Named, Rule};
use crate::key::Axis;
use crate::plane::Vector;
use crate::statics::solve_system;
use crate::system::{ActId, HoldKind};

/// Which way a found force or couple acts.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Sense {
    /// To the right.
    Right,
    /// To the left.
    Left,
    /// Upwards.
    Up,
    /// Downwards.
    Down,
    /// Anticlockwise.
    Anticlockwise,
    /// Clockwise.
    Clockwise,
    /// Slanted: upwards or downwards, and to the right or to the left.
    Slanted {
        /// True if it has a part upwards.
        above: bool,
        /// True if it has a part to the right.
        right: bool,
    },
    /// Along its line, against the way in which the line is told.
    Reverse,
}

/// Which way something acts, and on what.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Way {
    /// Which way.
    pub sense: Sense,
    /// The noun of the body on which it acts so, where it acts the opposite way on another.
    pub on: Option<String>,
}

impl Teller<'_> {
    /// Which way an unknown acts that was found with this value.
    pub(super) fn way(&self, named: &Named, value: f64) -> Option<Way> {
        let sense = self.sense(named, value)?;
        let on = match named.meaning {
            Meaning::Direction(act)
            | Meaning::Component(act, _)
            | Meaning::Couple(act)
            | Meaning::Force(act)
            | Meaning::FrictionNeeded(act) => self.counted_on(act),
            _ => None,
        };
        Some(Way { sense, on })
    }

    /// The noun of the body for which a force between two bodies is counted; the other meets the
    /// reverse of it.
    fn counted_on(&self, act: ActId) -> Option<String> {
        let ActId::Hold(index) = act else {
            return None;
        };
        let parts = self.system.parts();
        let hold = parts.holds.get(index).filter(|hold| hold.by.is_some())?;
        Some(parts.bodies.get(hold.body.0)?.noun.clone())
    }

    fn sense(&self, named: &Named, value: f64) -> Option<Sense> {
        if let Meaning::Direction(act) = named.meaning {
            return self.slanted(act);
        }
        if let (Meaning::Size(act), Method::Triangle) = (named.meaning, self.working.method) {
            return self.against(act);
        }
        let is_part = matches!(named.meaning, Meaning::Component(..));
        if !(is_part || matches!(named.rule, Rule::Solved(_))) || value == 0.0 {
            return None;
        }
        let along = |way: Vector| match (way.x, way.y) {
            (x, 0.0) => Some(if x > 0.0 { Sense::Right } else { Sense::Left }),
            (0.0, y) => Some(if y > 0.0 { Sense::Up } else { Sense::Down }),
            _ => None,
        };
        match named.meaning {
            Meaning::Component(_, Axis::Horizontal) => along(Vector::new(value, 0.0)),
            Meaning::Component(_, Axis::Vertical) => along(Vector::new(0.0, value)),
            Meaning::Couple(_) if value > 0.0 => Some(Sense::Anticlockwise),
            Meaning::Couple(_) => Some(Sense::Clockwise),
            Meaning::Force(ActId::Hold(_)) if value < 0.0 => Some(Sense::Reverse),
            Meaning::FrictionNeeded(ActId::Hold(index)) => {
                let hold = self.system.parts().holds.get(index)?;
                let (HoldKind::Rough { push, .. } | HoldKind::Base { push, .. }) = &hold.kind
                else {
                    return None;
                };
                let push = self.system.unit(push, &hold.at, self.numbers.values);
                Some(sense_of(push.quarter_turn() * value))
            }
            _ => None,
        }
    }

    /// That a hold along a line acts against the way in which the line is told, of a size that has no
    /// sign.
    fn against(&self, act: ActId) -> Option<Sense> {
        let ActId::Hold(index) = act else {
            return None;
        };
        let hold = self.system.parts().holds.get(index)?;
        let Numbers { values, gravity } = self.numbers;
        let solution = solve_system(self.system, values, gravity).ok()?;
        let size = solution.reaction(act)?.size;
        let is_against = matches!(hold.kind, HoldKind::Line(_)) && size < 0.0;
        is_against.then_some(Sense::Reverse)
    }

    /// Which way a force in a direction that was to be found acts.
    fn slanted(&self, act: ActId) -> Option<Sense> {
        let Numbers { values, gravity } = self.numbers;
        let solution = solve_system(self.system, values, gravity).ok()?;
        Some(sense_of(solution.reaction(act)?.force))
    }
}

/// Which way a force acts.
pub(super) fn sense_of(force: Vector) -> Sense {
    straight(force).unwrap_or(Sense::Slanted {
        above: force.y > 0.0,
        right: force.x > 0.0,
    })
}

/// Which way a force acts that is level or upright but for the dust of rounding.
pub(super) fn straight(force: Vector) -> Option<Sense> {
    let dust = 1e-9 * force.size();
    match (force.x.abs() <= dust, force.y.abs() <= dust) {
        (false, true) if force.x > 0.0 => Some(Sense::Right),
        (false, true) => Some(Sense::Left),
        (true, false) if force.y > 0.0 => Some(Sense::Up),
        (true, false) => Some(Sense::Down),
        _ => None,
    }
}
