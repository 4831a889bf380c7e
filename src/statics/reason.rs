//! Why a problem has no answer, as the parts of a sentence in any language.

use super::unsolvable::{end_text, told_apart};
use super::{Motion, Unsolvable};
use crate::system::Fault;
use crate::units::figures_text;

/// A sentence by its key and what stands in it.
#[derive(Clone, Debug, PartialEq)]
pub struct Reason {
    /// The end of its key in the catalogue of words.
    pub key: &'static str,
    /// What stands in it, by name.
    pub slots: Vec<(&'static str, String)>,
    /// The end of the key of what could be done about it.
    pub remedy: Option<&'static str>,
}

impl Motion {
    /// How a body moves, as the end of a key and what stands there beside its name.
    pub fn reason(&self) -> (&'static str, Vec<(&'static str, String)>) {
        match self {
            Motion::Turn {
                about,
                anticlockwise,
                ..
            } => {
                let key = match anticlockwise {
                    true => "turn-anticlockwise",
                    false => "turn-clockwise",
                };
                let slots = [
                    ("x", super::motion::place_text(about.x)),
                    ("y", super::motion::place_text(about.y)),
                ];
                (key, slots.to_vec())
            }
            Motion::Slide { direction, .. } => {
                let near = |part: f64| part.abs() < 1e-9;
                let key = match (near(direction.y), near(direction.x)) {
                    (true, _) if direction.x > 0.0 => "slide-right",
                    (true, _) => "slide-left",
                    (_, true) if direction.y > 0.0 => "slide-up",
                    (_, true) => "slide-down",
                    _ => "slide-aslant",
                };
                let degrees = direction.angle().to_degrees();
                let turn = if degrees < 0.0 {
                    degrees + 360.0
                } else {
                    degrees
                };
                let slots = match key {
                    "slide-aslant" => vec![("angle", super::motion::place_text(turn))],
                    _ => Vec::new(),
                };
                (key, slots)
            }
        }
    }
}

impl Unsolvable {
    /// What stands in the way as the parts of a sentence. How bodies move is told by each
    /// [`Motion::reason`], and stands in no slot.
    pub fn parts(&self) -> Reason {
        let three = |value: f64| figures_text(value, 3);
        let of = |key, slots: &[(&'static str, String)], remedy| Reason {
            key,
            slots: slots.to_vec(),
            remedy,
        };
        match self {
            Unsolvable::Indeterminate {
                unknowns,
                equations,
                names,
            } => of(
                "indeterminate",
                &[
                    ("unknowns", unknowns.to_string()),
                    ("equations", equations.to_string()),
                    ("names", names.join(", ")),
                ],
                Some("take-away"),
            ),
            Unsolvable::Mechanism { motions } if motions.is_empty() => {
                of("contradiction", &[], Some("take-one"))
            }
            Unsolvable::Mechanism { .. } => of("mechanism", &[], Some("add")),
            Unsolvable::RopeWouldPush { rope, size_n } => of(
                "rope-would-push",
                &[("name", rope.clone()), ("size", three(*size_n))],
                Some("tie-elsewhere"),
            ),
            Unsolvable::ContactWouldPull { support, size_n } => of(
                "contact-would-pull",
                &[("name", support.clone()), ("size", three(*size_n))],
                Some("other-side"),
            ),
            Unsolvable::WouldSlip {
                contact,
                needed_n,
                most_n,
            } => {
                let (needed, most) = told_apart(*needed_n, *most_n);
                let slots = [
                    ("name", contact.clone()),
                    ("needed", needed),
                    ("most", most),
                    ("lacking", three(needed_n - most_n)),
                ];
                of("would-slip", &slots, Some("rougher"))
            }
            Unsolvable::NoOneMotion { .. } => of("no-one-motion", &[], Some("turn-friction")),
            Unsolvable::WouldTopple {
                base,
                off_m,
                half_m,
            } => {
                let (off, half) = told_apart(*off_m, *half_m);
                let slots = [("name", base.clone()), ("off", off), ("half", half)];
                of("would-topple", &slots, Some("widen-base"))
            }
            Unsolvable::NearlySingular {
                pivot,
                threshold,
                length_m,
                force_n,
            } => of(
                "nearly-singular",
                &[
                    ("pivot", figures_text(*pivot, 2)),
                    ("least", figures_text(*threshold, 1)),
                    ("length", three(*length_m)),
                    ("force", three(*force_n)),
                ],
                Some("turn-hold"),
            ),
            Unsolvable::NotFinite { what } => of(
                "not-finite",
                &[("what", what.clone())],
                Some("check-numbers"),
            ),
            Unsolvable::WrongValues { expected, found } => of(
                "wrong-values",
                &[
                    ("expected", expected.to_string()),
                    ("found", found.to_string()),
                ],
                None,
            ),
            Unsolvable::Misplaced { fault } => misplaced(fault),
            _ => self.of_range(),
        }
    }

    /// The same of what is sought.
    fn of_range(&self) -> Reason {
        let (Unsolvable::NoneInRange {
            sought,
            low,
            high,
            dimension,
            ..
        }
        | Unsolvable::NeverReaches {
            sought,
            low,
            high,
            dimension,
            ..
        }
        | Unsolvable::HoldsForEvery {
            sought,
            low,
            high,
            dimension,
            ..
        }) = self
        else {
            return Reason {
                key: "not-finite",
                slots: vec![("what", String::new())],
                remedy: None,
            };
        };
        let mut slots = vec![
            ("sought", sought.clone()),
            ("low", end_text(*low, *dimension)),
            ("high", end_text(*high, *dimension)),
        ];
        let (key, remedy) = match self {
            Unsolvable::NoneInRange {
                elsewhere: true, ..
            } => ("none-in-range", "widen-range"),
            Unsolvable::NoneInRange { .. } => ("none-anywhere", "change-given"),
            Unsolvable::NeverReaches { stays, .. } if stays.is_steady() => {
                slots.push(("force", stays.force.clone()));
                slots.push(("size", figures_text(stays.most_n, 3)));
                ("steady", "seek-or-limit")
            }
            Unsolvable::NeverReaches {
                stays, elsewhere, ..
            } => {
                let (least, most) = told_apart(stays.least_n, stays.most_n);
                slots.push(("force", stays.force.clone()));
                slots.push(("least", least));
                slots.push(("most", most));
                let remedy = match elsewhere {
                    true => "limit-or-range",
                    false => "change-limit",
                };
                ("never-reaches", remedy)
            }
            Unsolvable::HoldsForEvery { whole: true, .. } => ("every-value", "seek-or-condition"),
            _ => ("every-value-there", "seek-or-condition"),
        };
        Reason {
            key,
            slots,
            remedy: Some(remedy),
        }
    }
}

fn misplaced(fault: &Fault) -> Reason {
    let (key, slots) = match fault {
        Fault::OffLeg {
            what,
            distance_m,
            length_m,
        } => {
            let (distance, length) = told_apart(*distance_m, *length_m);
            let slots = vec![
                ("what", what.clone()),
                ("distance", distance),
                ("length", length),
            ];
            ("off-leg", slots)
        }
        Fault::Apart {
            what,
            body,
            distance_m,
        } => {
            let slots = vec![
                ("what", what.clone()),
                ("body", body.clone()),
                ("distance", figures_text(*distance_m, 3)),
            ];
            ("apart", slots)
        }
        Fault::HoleOutside { .. } | Fault::HoleTooLarge { .. } | Fault::Overlap { .. } => {
            ("misplaced", vec![("fault", format!("the {fault}"))])
        }
        fault => ("misplaced", vec![("fault", fault.to_string())]),
    };
    Reason {
        key,
        slots,
        remedy: None,
    }
}
