//! What kind of quantity a step is: which conventions hold for its value.
//!
//! The walk of one body tells it by the step's own id; a quantity of a general working carries it.

use super::{Axis, Part, StepId};

/// What a quantity of a general working is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Nature {
    /// A weight: its sign belongs in the sum.
    Weight,
    /// An angle between lines.
    Angle,
    /// A part or component of a force, or friction that follows from a push: a size.
    Part,
    /// A length, an area, a mass or another value with its sign.
    Plain,
    /// An unknown pull or push: its sense is known.
    Pull,
    /// A part of an unknown force along an axis: its sense is a matter of convention.
    Along(Axis),
    /// An unknown force or couple in either sense.
    Either,
    /// A given that is sought.
    Sought,
    /// The size of a force with two parts.
    Size,
    /// The angle of a force's line with the horizontal.
    Direction,
}

impl StepId {
    /// True for what is to be found from balances: its name stands open until then.
    pub fn is_unknown(self) -> bool {
        matches!(
            self,
            StepId::Pull(_)
                | StepId::Reaction(..)
                | StepId::Found(
                    Nature::Pull
                        | Nature::Along(_)
                        | Nature::Either
                        | Nature::Sought
                        | Nature::Size
                        | Nature::Direction,
                    _
                )
        )
    }

    /// True for an equation that is asked for.
    pub fn is_balance(self) -> bool {
        matches!(self, StepId::MomentSum | StepId::Sum(..))
    }

    /// True for an unknown of which the sense is known: a rope only pulls, a contact only pushes.
    pub fn is_pull(self) -> bool {
        matches!(self, StepId::Pull(_) | StepId::Found(Nature::Pull, _))
    }

    /// True for an unknown whose sense is a matter of convention.
    pub fn has_free_sense(self) -> bool {
        matches!(
            self,
            StepId::Reaction(_, Part::Along(_))
                | StepId::Found(Nature::Along(_) | Nature::Either, _)
        )
    }

    /// The axis of a part of an unknown force.
    pub fn along(self) -> Option<Axis> {
        match self {
            StepId::Reaction(_, Part::Along(axis)) | StepId::Found(Nature::Along(axis), _) => {
                Some(axis)
            }
            _ => None,
        }
    }

    /// True for what follows from the givens before any balance.
    pub fn is_of_givens(self) -> bool {
        self.is_weight() || self.is_angle() || matches!(self, StepId::Distance(_))
    }

    /// True for a weight.
    pub fn is_weight(self) -> bool {
        matches!(self, StepId::Weight(_) | StepId::Found(Nature::Weight, _))
    }

    /// True for an angle between lines, measured on either side.
    pub fn is_angle(self) -> bool {
        matches!(self, StepId::Angle(_) | StepId::Found(Nature::Angle, _))
    }

    /// True for the direction of a force's line.
    pub fn is_direction(self) -> bool {
        matches!(
            self,
            StepId::Reaction(_, Part::Direction) | StepId::Found(Nature::Direction, _)
        )
    }

    /// True for a component, part or moment of a force.
    pub fn is_component(self) -> bool {
        matches!(
            self,
            StepId::Across(_)
                | StepId::PartOf(..)
                | StepId::Moment(_)
                | StepId::Found(Nature::Part, _)
        )
    }

    /// True for what is asked as a size: its sign belongs in the sum.
    pub fn is_size(self) -> bool {
        self.is_weight()
            || self.is_component()
            || matches!(
                self,
                StepId::Reaction(_, Part::Size) | StepId::Found(Nature::Size, _)
            )
    }

    /// True for a quantity or balance of a general working.
    pub fn is_general(self) -> bool {
        matches!(self, StepId::Found(..) | StepId::Sum(..))
    }
}
