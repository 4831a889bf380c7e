//! Why there is no working.

use crate::statics::Unsolvable;
use std::fmt;

/// Why no working can be derived.
#[derive(Clone, Debug, PartialEq)]
pub enum Underivable {
    /// The forces cannot be found at all.
    Unsolvable(Unsolvable),
    /// What is sought has values for which it just happens, and at none of them can the forces be.
    CannotBe {
        /// What is sought, with the first of these values.
        at: String,
        /// How many of them there are.
        count: usize,
        /// Why it cannot be there.
        why: Unsolvable,
    },
    /// Something moves under the loads.
    Moves {
        /// What moves and how: `the ladder from sliding to the right`.
        told: Box<[String]>,
        /// The names of the bodies that move, in the same order.
        bodies: Box<[String]>,
        /// The names of the contacts whose friction is said to be at its limit.
        contacts: Box<[String]>,
        /// The same, of bodies without names.
        why: Unsolvable,
    },
    /// The pivot lies on the line of the unknown that is asked, which then has no moment.
    PivotOnLine {
        /// The name of the unknown.
        unknown: String,
    },
    /// No unknown follows from moments about the pivot, in any order that was found.
    PivotUnused,
    /// A pivot for bodies that are knots, which have no moments.
    KnotPivot,
    /// There is no triangle of forces, or none that is worked here.
    NoTriangle {
        /// Why.
        why: String,
    },
    /// What is sought is not what the triangle of forces gives.
    NotByTriangle {
        /// Its name.
        symbol: String,
        /// True if the working starts from it.
        is_needed: bool,
    },
    /// More than three forces act, so they form no triangle.
    TooManyForces {
        /// Every force on the body by its name, push and friction of a contact as one.
        names: Vec<String>,
    },
    /// The forces on the body are all parallel, so they form no triangle.
    Parallel,
    /// What is sought is found by trial, so no balance gives it that could be asked.
    ByTrial {
        /// Its name.
        symbol: String,
    },
    /// What is sought has a value at the printed numbers and none at others near them, so that
    /// typed forms cannot be compared.
    OnlyHere {
        /// Its name.
        symbol: String,
    },
    /// No order of balances was found that gives every unknown.
    NoOrder,
}

impl Underivable {
    /// A short name that stays the same in every version, for machines.
    pub fn code(&self) -> &'static str {
        match self {
            Underivable::Unsolvable(trouble)
            | Underivable::CannotBe { why: trouble, .. }
            | Underivable::Moves { why: trouble, .. } => trouble.code(),
            Underivable::PivotOnLine { .. } => "pivot-on-line",
            Underivable::PivotUnused => "pivot-unused",
            Underivable::KnotPivot => "knot-pivot",
            Underivable::NoTriangle { .. } => "no-triangle",
            Underivable::NotByTriangle { .. } => "sought-not-by-triangle",
            Underivable::TooManyForces { .. } => "too-many-forces",
            Underivable::Parallel => "parallel-forces",
            Underivable::ByTrial { .. } => "by-trial",
            Underivable::OnlyHere { .. } => "only-here",
            Underivable::NoOrder => "no-order",
        }
    }
}

impl fmt::Display for Underivable {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Underivable::Unsolvable(trouble) => trouble.fmt(formatter),
            Underivable::Moves { told, contacts, .. } => {
                let stops = told.join(" and ");
                match contacts.is_empty() {
                    true => write!(
                        formatter,
                        "the supports and ropes cannot hold the loads: nothing stops {stops}; add \
                         a support or a rope, or turn one so that it does"
                    ),
                    false => write!(
                        formatter,
                        "with friction at its limit at {} the forces cannot balance at these \
                         numbers, so this is not what happens; let friction be as needed, turn it \
                         about if it acts the other way, or seek the number at which it just slips",
                        contacts.join(", ")
                    ),
                }
            }
            Underivable::CannotBe { at, count: 1, why } => {
                write!(
                    formatter,
                    "the condition is met only at {at}, and there {why}"
                )
            }
            Underivable::CannotBe { at, count, why } => write!(
                formatter,
                "the condition is met at {count} values, and none of them can be: at {at} {why}"
            ),
            Underivable::PivotOnLine { unknown } => write!(
                formatter,
                "the pivot lies on the line of {unknown}, so moments about it say nothing of \
                 {unknown}; take another pivot"
            ),
            Underivable::PivotUnused => write!(
                formatter,
                "no order of balances was found in which moments about this pivot give an unknown; \
                 take another pivot, or leave it out"
            ),
            Underivable::KnotPivot => write!(
                formatter,
                "at a knot all forces meet, so it has no moments; leave the pivot out"
            ),
            Underivable::NoTriangle { why } => {
                write!(formatter, "no working by the triangle of forces: {why}")
            }
            Underivable::NotByTriangle {
                symbol,
                is_needed: true,
            } => write!(
                formatter,
                "{symbol} is sought, and this working by the triangle of forces starts from it; take \
                 another method"
            ),
            Underivable::NotByTriangle { symbol, .. } => write!(
                formatter,
                "the triangle of forces gives forces, and {symbol} does not follow from their sizes \
                 and directions alone; take another method"
            ),
            Underivable::TooManyForces { names } => write!(
                formatter,
                "the triangle of forces is for three forces, and {} act on the body; take another \
                 method",
                listed(names)
            ),
            Underivable::Parallel => write!(
                formatter,
                "the forces on the body are all parallel, so they form no triangle; take another \
                 method"
            ),
            Underivable::ByTrial { symbol } => write!(
                formatter,
                "only the balances and the condition together give {symbol}, so it is found by trial \
                 and there is no step at which it could be asked; solve prints its value and the \
                 forces there"
            ),
            Underivable::OnlyHere { symbol } => write!(
                formatter,
                "{symbol} has a value at these numbers and may have none at others near them, so \
                 a typed form could not be told from its value; move the limit or another number"
            ),
            Underivable::NoOrder => write!(
                formatter,
                "no order of balances was found in which the unknowns can be worked out"
            ),
        }
    }
}

/// `A, B and C`.
pub(super) fn listed(names: &[String]) -> String {
    match names {
        [before @ .., last] if !before.is_empty() => format!("{} and {last}", before.join(", ")),
        names => names.concat(),
    }
}

impl std::error::Error for Underivable {}

impl From<Unsolvable> for Underivable {
    fn from(trouble: Unsolvable) -> Underivable {
        Underivable::Unsolvable(trouble)
    }
}
