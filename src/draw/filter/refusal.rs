//! Why drawn numbers are refused, as data that can be told.

use crate::key::StepId;
use crate::statics::Unsolvable;
use crate::units::figures_text;
use std::fmt;

/// Why numbers are not worth asking.
#[derive(Clone, Debug, PartialEq)]
pub enum Refusal {
    /// An angle with well-known sine and cosine, which hide the working.
    SpecialAngle {
        /// The given's name.
        symbol: String,
        /// The angle, in degrees.
        angle_deg: f64,
    },
    /// Two different quantities of the working have the same number.
    SameLiteral {
        /// The number as a person would type it.
        number: String,
    },
    /// Two forces act at the same distance from the pivot though the problem does not say so.
    EqualDistances {
        /// The distance, in metres.
        distance_m: f64,
    },
    /// A distance of one metre, which hides whether it was multiplied by.
    UnitDistance {
        /// The name of the force, or what the distance is taken from.
        symbol: String,
    },
    /// Two common mistakes give the same number for the pull, and the one that is made there
    /// would be called by the other's name.
    MistakesAlike {
        /// The mistake that would be misnamed.
        mistake: &'static str,
        /// The other.
        other: &'static str,
        /// The number that both give, in newtons.
        pull_n: f64,
    },
    /// Two angles that can be confused are too close.
    AnglesTooClose {
        /// One angle, in degrees.
        first_deg: f64,
        /// The other, in degrees.
        second_deg: f64,
    },
    /// The body's angle and the rope's, or twice the one and the other, add to nearly 90°.
    SumNearRightAngle {
        /// The sum, in degrees.
        sum_deg: f64,
    },
    /// Moments of opposite sense nearly cancel.
    MomentsNearlyCancel {
        /// The larger sum, in newton metres.
        larger_n_m: f64,
        /// The smaller sum, in newton metres.
        smaller_n_m: f64,
    },
    /// The forces cannot be found.
    Unsolvable {
        /// Why.
        cause: Unsolvable,
    },
    /// A force far larger than the loads.
    AbsurdForce {
        /// The force's name.
        symbol: String,
        /// Its size over the sum of all loads.
        times_load: f64,
    },
    /// A pull so small that the rope is hardly needed.
    TinyPull {
        /// The pull's name.
        symbol: String,
        /// Its size over the sum of all loads.
        times_load: f64,
    },
    /// A part of a support's force that is the small difference of larger forces.
    SmallDifference {
        /// The force's name.
        symbol: String,
        /// The part over the largest force along its axis.
        share: f64,
    },
    /// A common mistake gives nearly the right value.
    MistakeHidden {
        /// The mistake.
        mistake: &'static str,
        /// The step at which it hides.
        step: StepId,
        /// How far its value is from the right one, as a share of the right one.
        apart: f64,
    },
}

impl fmt::Display for Refusal {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        let short = |value: f64| figures_text(value, 3);
        match self {
            Refusal::SpecialAngle { symbol, angle_deg } => write!(
                formatter,
                "{symbol} is {}°, whose sine and cosine are known by heart; choose another",
                short(*angle_deg)
            ),
            Refusal::SameLiteral { number } => write!(
                formatter,
                "the number {number} stands for two quantities, so a typed line has two readings"
            ),
            Refusal::EqualDistances { distance_m } => write!(
                formatter,
                "two forces act {} m from the pivot, so their distances cannot be told apart",
                short(*distance_m)
            ),
            Refusal::UnitDistance { symbol } => write!(
                formatter,
                "{symbol} acts 1 m from the hinge, the tip or the middle, which hides whether its distance was used"
            ),
            Refusal::MistakesAlike {
                mistake,
                other,
                pull_n,
            } => write!(
                formatter,
                "the mistakes {mistake} and {other} both give a pull of {} N",
                short(*pull_n)
            ),
            Refusal::AnglesTooClose {
                first_deg,
                second_deg,
            } => write!(
                formatter,
                "the angles {}° and {}° are too close to be told apart",
                short(*first_deg),
                short(*second_deg)
            ),
            Refusal::SumNearRightAngle { sum_deg } => write!(
                formatter,
                "the angles of body and rope add to {}°, too near 90°",
                short(*sum_deg)
            ),
            Refusal::MomentsNearlyCancel {
                larger_n_m,
                smaller_n_m,
            } => write!(
                formatter,
                "moments of {} N m and {} N m nearly cancel; move a load",
                short(*larger_n_m),
                short(*smaller_n_m)
            ),
            Refusal::Unsolvable { cause } => write!(formatter, "{cause}"),
            Refusal::AbsurdForce { symbol, times_load } => write!(
                formatter,
                "{symbol} is {} times all loads together; turn the rope or tie it farther out",
                short(*times_load)
            ),
            Refusal::TinyPull { symbol, times_load } => write!(
                formatter,
                "{symbol} is only {} of all loads together; move a load",
                short(*times_load)
            ),
            Refusal::SmallDifference { symbol, share } => write!(
                formatter,
                "a part of {symbol} is only {} of the largest force along it, so three figures say nothing of it; change a load",
                short(*share)
            ),
            Refusal::MistakeHidden {
                mistake,
                step,
                apart,
            } => write!(
                formatter,
                "the mistake {mistake} is only {} % from the right value at {step:?}",
                short(100.0 * apart)
            ),
        }
    }
}

impl std::error::Error for Refusal {}
