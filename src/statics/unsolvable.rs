//! Why a problem has no answer, as data that can be told.

use super::Motion;
use crate::system::Fault;
use crate::units::{Dimension, figures_text, number_text, unit_for, with_minus};
use std::fmt;

/// Why the forces of a problem cannot be found from equilibrium.
#[derive(Clone, Debug, PartialEq)]
pub enum Unsolvable {
    /// More unknown forces than independent equations.
    Indeterminate {
        /// How many unknowns there are.
        unknowns: usize,
        /// How many independent equations bind them.
        equations: usize,
        /// The unknowns that are not fixed by equilibrium.
        names: Vec<String>,
    },
    /// Something moves under the loads: the supports and ropes cannot hold it.
    Mechanism {
        /// How it moves, one entry for each body that does. Empty if no motion but further
        /// conditions that contradict each other stand in the way.
        motions: Vec<Motion>,
    },
    /// A rope would have to push.
    RopeWouldPush {
        /// Name of its force.
        rope: String,
        /// Size of the push, in newtons, positive.
        size_n: f64,
    },
    /// A contact that can only push would have to pull.
    ContactWouldPull {
        /// Name of its force.
        support: String,
        /// Size of the pull, in newtons, positive.
        size_n: f64,
    },
    /// A rough contact would need more friction than it can give.
    WouldSlip {
        /// Name of its force.
        contact: String,
        /// Size of the friction that equilibrium needs, in newtons.
        needed_n: f64,
        /// The most that it can give, the coefficient times the push, in newtons.
        most_n: f64,
    },
    /// Contacts have their friction at its limit, but the bodies have no motion in which all of them
    /// slip against it.
    NoOneMotion {
        /// Names of their forces.
        contacts: Vec<String>,
    },
    /// A base would topple: its push would have to act outside it.
    WouldTopple {
        /// Name of its force.
        base: String,
        /// How far from the base's middle the push would have to act, in metres.
        off_m: f64,
        /// Half the base's width, in metres.
        half_m: f64,
    },
    /// The value found for what is sought leaves something that cannot be drawn.
    Misplaced {
        /// What.
        fault: Fault,
    },
    /// No value of what is sought makes it happen.
    NoneInRange {
        /// What is sought.
        sought: String,
        /// The least value looked at, in SI units.
        low: f64,
        /// The greatest value looked at, in SI units.
        high: f64,
        /// Of what kind it is.
        dimension: Dimension,
        /// True if a value outside that range does.
        elsewhere: bool,
    },
    /// A force has its limit nowhere in the range of what is sought.
    NeverReaches {
        /// What is sought.
        sought: String,
        /// The least value looked at, in SI units.
        low: f64,
        /// The greatest value looked at, in SI units.
        high: f64,
        /// Of what kind it is.
        dimension: Dimension,
        /// True if it has it outside that range.
        elsewhere: bool,
        /// What the force is instead.
        stays: Box<Stays>,
    },
    /// What is to happen happens at every value of what is sought, or at all of an interval, so
    /// that it fixes none.
    HoldsForEvery {
        /// What is sought.
        sought: String,
        /// Where the interval begins, in SI units.
        low: f64,
        /// Where it ends, in SI units.
        high: f64,
        /// True if that is all of the range in which there are forces at all.
        whole: bool,
        /// Of what kind it is.
        dimension: Dimension,
    },
    /// The lines of action nearly meet in one point or are nearly parallel, so that a hair's
    /// breadth in the drawing changes the forces many times over.
    NearlySingular {
        /// Smallest pivot of the scaled equations over the largest: a pure number.
        pivot: f64,
        /// What it must reach.
        threshold: f64,
        /// The length by which moments were divided, in metres: how far apart the forces act.
        length_m: f64,
        /// The force by which forces were divided, in newtons: the largest load.
        force_n: f64,
    },
    /// A number that is not finite, or a direction without length.
    NotFinite {
        /// Where it was met.
        what: String,
    },
    /// The list of values does not belong to the problem.
    WrongValues {
        /// How many givens the problem has.
        expected: usize,
        /// How many values were handed in.
        found: usize,
    },
}

/// Between which sizes a force stays.
#[derive(Clone, Debug, PartialEq)]
pub struct Stays {
    /// Its name.
    pub force: String,
    /// The least, in newtons.
    pub least_n: f64,
    /// The greatest, in newtons.
    pub most_n: f64,
}

impl Stays {
    /// True for sizes that do not differ but by rounding.
    pub(super) fn is_steady(&self) -> bool {
        self.most_n - self.least_n <= 1e-9 * self.most_n.abs()
    }
}

impl Unsolvable {
    /// A short name that stays the same in every version, for machines.
    pub fn code(&self) -> &'static str {
        match self {
            Unsolvable::Indeterminate { .. } => "indeterminate",
            Unsolvable::Mechanism { .. } => "mechanism",
            Unsolvable::RopeWouldPush { .. } => "rope-would-push",
            Unsolvable::ContactWouldPull { .. } => "contact-would-pull",
            Unsolvable::WouldSlip { .. } => "would-slip",
            Unsolvable::NoOneMotion { .. } => "no-one-motion",
            Unsolvable::WouldTopple { .. } => "would-topple",
            Unsolvable::Misplaced { .. } => "misplaced",
            Unsolvable::NoneInRange { .. } | Unsolvable::NeverReaches { .. } => "none-in-range",
            Unsolvable::HoldsForEvery { .. } => "holds-for-every-value",
            Unsolvable::NearlySingular { .. } => "nearly-singular",
            Unsolvable::NotFinite { .. } => "not-finite",
            Unsolvable::WrongValues { .. } => "wrong-values",
        }
    }
}

impl Unsolvable {
    /// What stands in the way, without what could be done about it.
    pub fn reason(&self) -> String {
        match self {
            Unsolvable::Indeterminate {
                unknowns,
                equations,
                names,
            } => format!(
                "there are {unknowns} unknown forces but only {equations} independent equations of \
                 equilibrium: {} cannot be found",
                names.join(", ")
            ),
            Unsolvable::Mechanism { motions } if motions.is_empty() => {
                "the further conditions contradict each other or the balances".to_owned()
            }
            Unsolvable::Mechanism { motions } => {
                let told: Vec<String> = motions.iter().map(Motion::to_string).collect();
                format!(
                    "the supports and ropes cannot hold the loads: nothing stops {}",
                    told.join(" and ")
                )
            }
            Unsolvable::RopeWouldPush { rope, size_n } => format!(
                "the rope {rope} would have to push with {} N, and a rope can only pull",
                figures_text(*size_n, 3)
            ),
            Unsolvable::ContactWouldPull { support, size_n } => format!(
                "the support {support} would have to pull with {} N, and a contact can only push",
                figures_text(*size_n, 3)
            ),
            Unsolvable::WouldSlip {
                contact,
                needed_n,
                most_n,
            } => {
                let (needed, most) = told_apart(*needed_n, *most_n);
                format!(
                    "it would slip at {contact}: {needed} N of friction are needed and {most} N is \
                     the most that the contact gives, {} N too little",
                    figures_text(needed_n - most_n, 3)
                )
            }
            Unsolvable::NoOneMotion { contacts } => format!(
                "friction is at its limit at {}, but the bodies have no motion in which each of them \
                 slips against its friction, so nothing is about to slip",
                contacts.join(" and ")
            ),
            Unsolvable::WouldTopple {
                base,
                off_m,
                half_m,
            } => {
                let (off, half) = told_apart(*off_m, *half_m);
                format!(
                    "it would topple over {base}: the push would have to act {off} m from the \
                     middle of the base, and the edge is {half} m away"
                )
            }
            Unsolvable::Misplaced {
                fault:
                    Fault::OffLeg {
                        what,
                        distance_m,
                        length_m,
                    },
            } => {
                let (distance, length) = told_apart(*distance_m, *length_m);
                format!(
                    "the {what} would stand {distance} m along a part that is only {length} m long"
                )
            }
            Unsolvable::Misplaced {
                fault:
                    fault @ (Fault::HoleOutside { .. }
                    | Fault::HoleTooLarge { .. }
                    | Fault::Overlap { .. }),
            } => format!("the {fault}"),
            Unsolvable::Misplaced {
                fault:
                    Fault::Apart {
                        what,
                        body,
                        distance_m,
                    },
            } => {
                let distance = figures_text(*distance_m, 3);
                format!("the {what} would stand {distance} m away from the {body}")
            }
            Unsolvable::Misplaced { fault } => fault.to_string(),
            Unsolvable::NoneInRange {
                sought,
                low,
                high,
                dimension,
                elsewhere,
            } => {
                let (low, high) = (end_text(*low, *dimension), end_text(*high, *dimension));
                let outside = match elsewhere {
                    true => "",
                    false => ", and none was found outside that range",
                };
                format!("no value of {sought} between {low} and {high} makes it happen{outside}")
            }
            Unsolvable::NeverReaches {
                sought,
                low,
                high,
                dimension,
                stays,
                ..
            } => {
                let (low, high) = (end_text(*low, *dimension), end_text(*high, *dimension));
                let force = &stays.force;
                if stays.is_steady() {
                    let size = figures_text(stays.most_n, 3);
                    return format!(
                        "{force} is {size} N for every {sought} between {low} and {high}: {sought} \
                         has no influence on it"
                    );
                }
                let (least, most) = told_apart(stays.least_n, stays.most_n);
                format!(
                    "no value of {sought} between {low} and {high} makes it happen: {force} stays \
                     between {least} N and {most} N there"
                )
            }
            Unsolvable::HoldsForEvery {
                sought,
                low,
                high,
                whole,
                dimension,
            } => {
                let (low, high) = (end_text(*low, *dimension), end_text(*high, *dimension));
                let so = match whole {
                    true => format!("{sought} has no influence on it"),
                    false => format!("it fixes no {sought} there"),
                };
                format!("the condition holds for every {sought} between {low} and {high}: {so}")
            }
            Unsolvable::NearlySingular {
                pivot,
                threshold,
                length_m,
                force_n,
            } => format!(
                "the lines of the unknown forces nearly meet in one point or are nearly parallel \
                 (measure of independence {}, at least {} is needed, with lengths in units of {} m and \
                 forces in units of {} N)",
                figures_text(*pivot, 2),
                figures_text(*threshold, 1),
                figures_text(*length_m, 3),
                figures_text(*force_n, 3)
            ),
            Unsolvable::NotFinite { what } => {
                format!("{what} is not a finite number, or is a direction without length")
            }
            Unsolvable::WrongValues { expected, found } => format!(
                "the problem has {expected} given numbers, but {found} values were handed in"
            ),
        }
    }

    /// What the author of the problem could do about it; empty where nothing is to be said.
    fn remedy(&self) -> &'static str {
        match self {
            Unsolvable::Indeterminate { .. } => {
                "take away a support or a rope, or give one of these forces"
            }
            Unsolvable::Mechanism { motions } if motions.is_empty() => "take one away",
            Unsolvable::Mechanism { .. } => "add a support or a rope, or turn one so that it does",
            Unsolvable::RopeWouldPush { .. } => "tie it on the other side or move a load",
            Unsolvable::ContactWouldPull { .. } => {
                "put it on the other side, move a load, or make it a hinge"
            }
            Unsolvable::WouldSlip { .. } => "make it rougher, or change what pushes",
            Unsolvable::WouldTopple { .. } => "widen the base, or push lower",
            Unsolvable::Misplaced { .. } => "",
            Unsolvable::NoneInRange {
                elsewhere: true, ..
            } => "widen the range, or change what is given",
            Unsolvable::NoneInRange { .. } => "change what is given",
            Unsolvable::NoOneMotion { .. } => "turn a friction round, or change what is given",
            Unsolvable::NeverReaches { stays, .. } if stays.is_steady() => {
                "seek another number, or change the limit"
            }
            Unsolvable::NeverReaches {
                elsewhere: true, ..
            } => "change the limit, or the range",
            Unsolvable::NeverReaches { .. } => "change the limit",
            Unsolvable::HoldsForEvery { .. } => "seek another number, or set another condition",
            Unsolvable::NearlySingular { .. } => "turn a rope or a support, or move it",
            Unsolvable::NotFinite { .. } => "check the numbers that are given",
            Unsolvable::WrongValues { .. } => "",
        }
    }
}

impl fmt::Display for Unsolvable {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        formatter.write_str(&self.reason())?;
        match self.remedy() {
            "" => Ok(()),
            remedy => write!(formatter, "; {remedy}"),
        }
    }
}

/// An end of a range in the unit of its kind, without needless zeros.
pub(super) fn end_text(value: f64, dimension: Dimension) -> String {
    let unit = unit_for(dimension);
    let number = unit.map_or(value, |unit| value / unit.factor);
    let told = number_text(number);
    let is_near = |told: f64| (told - number).abs() <= 1e-3 * number.abs();
    let told = match told.parse().is_ok_and(is_near) {
        true => told,
        false => figures_text(number, 3),
    };
    let gap = unit.map_or("", |unit| if unit.symbol == "°" { "" } else { " " });
    let unit = unit.map_or("", |unit| unit.symbol);
    format!("{}{gap}{unit}", with_minus(&told))
}

/// Two numbers at three figures, or at as many as show which is the larger.
pub(super) fn told_apart(one: f64, other: f64) -> (String, String) {
    let told = |figures: u8| (figures_text(one, figures), figures_text(other, figures));
    (3..=9)
        .map(told)
        .find(|(one, other)| one != other)
        .unwrap_or_else(|| told(9))
}

impl std::error::Error for Unsolvable {}

#[cfg(test)]
mod tests {
    use super::Unsolvable;

    #[test]
    fn a_reason_is_told_with_what_could_be_done_and_without() {
        let trouble = Unsolvable::RopeWouldPush {
            rope: "T".to_owned(),
            size_n: 12.0,
        };
        let reason = "the rope T would have to push with 12.0 N, and a rope can only pull";
        assert_eq!(trouble.reason(), reason);
        let whole = format!("{reason}; tie it on the other side or move a load");
        assert_eq!(trouble.to_string(), whole);
    }
}
