//! Why there is no working.

use crate::statics::Unsolvable;
use std::fmt;

/// Why no working can be derived.
#[derive(Clone, Debug, PartialEq)]
pub enum Underivable {
    /// The forces cannot be found at all.
    Unsolvable(Unsolvable),
    /// The pivot lies on the line of the unknown that is asked, which then has no moment.
    PivotOnLine {
        /// The name of the unknown.
        unknown: String,
    },
    /// No order of balances was found that gives every unknown.
    NoOrder,
}

impl Underivable {
    /// A short name that stays the same in every version, for machines.
    pub fn code(&self) -> &'static str {
        match self {
            Underivable::Unsolvable(trouble) => trouble.code(),
            Underivable::PivotOnLine { .. } => "pivot-on-line",
            Underivable::NoOrder => "no-order",
        }
    }
}

impl fmt::Display for Underivable {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Underivable::Unsolvable(trouble) => trouble.fmt(formatter),
            Underivable::PivotOnLine { unknown } => write!(
                formatter,
                "the pivot lies on the line of {unknown}, so moments about it say nothing of \
                 {unknown}; take another pivot"
            ),
            Underivable::NoOrder => write!(
                formatter,
                "no order of balances was found in which the unknowns can be worked out"
            ),
        }
    }
}

impl std::error::Error for Underivable {}

impl From<Unsolvable> for Underivable {
    fn from(trouble: Unsolvable) -> Underivable {
        Underivable::Unsolvable(trouble)
    }
}
