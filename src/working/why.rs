//! Why there is no working, in the words of the learner's language.

use super::Underivable;
use crate::statics::{Motion, Unsolvable};
use crate::text::{Slot, Words};

/// Why no working can be derived, without a stop at its end.
pub fn why(trouble: &Underivable, words: &Words) -> String {
    let say = |key: &str, slots: &[(&str, Slot)]| words.say(key, slots).to_string();
    let name = |slot, name: &str| (slot, Slot::Name(name.to_owned()));
    match trouble {
        Underivable::Unsolvable(trouble) => why_unsolvable(trouble, words),
        Underivable::Moves {
            bodies,
            contacts,
            why,
            ..
        } => match contacts.is_empty() {
            true => held_by_nothing(why, bodies, words),
            false => say(
                "underivable.moves-at-limit",
                &[name("contacts", &contacts.join(", "))],
            ),
        },
        Underivable::CannotBe { at, count, why } => {
            let slots = [
                name("at", at),
                ("count", Slot::Value(count.to_string())),
                ("why", Slot::Word(why_unsolvable(why, words))),
            ];
            match count {
                1 => say("underivable.cannot-be.one", &slots),
                _ => say("underivable.cannot-be.many", &slots),
            }
        }
        Underivable::PivotOnLine { unknown } => {
            say("underivable.pivot-on-line", &[name("unknown", unknown)])
        }
        Underivable::PivotUnused => say("underivable.pivot-unused", &[]),
        Underivable::KnotPivot => say("underivable.knot-pivot", &[]),
        Underivable::NoTriangle { why } => say(
            "underivable.no-triangle",
            &[("why", Slot::Word(why.clone()))],
        ),
        Underivable::NotByTriangle { symbol, is_needed } => {
            let key = match is_needed {
                true => "underivable.not-by-triangle.needed",
                false => "underivable.not-by-triangle",
            };
            say(key, &[name("symbol", symbol)])
        }
        Underivable::TooManyForces { names } => {
            let names = listed(names, words);
            say("underivable.too-many-forces", &[name("names", &names)])
        }
        Underivable::Parallel => say("underivable.parallel", &[]),
        Underivable::ByTrial { symbol } => say("underivable.by-trial", &[name("symbol", symbol)]),
        Underivable::OnlyHere { symbol } => say("underivable.only-here", &[name("symbol", symbol)]),
        Underivable::NoOrder => say("underivable.no-order", &[]),
    }
}

/// Why the forces cannot be found and what could be done, without a stop at its end.
pub fn why_unsolvable(trouble: &Unsolvable, words: &Words) -> String {
    if let Unsolvable::Mechanism { motions } = trouble
        && !motions.is_empty()
    {
        return held_by_nothing(trouble, &[], words);
    }
    let parts = trouble.parts();
    let mut slots: Vec<(&str, Slot)> = (parts.slots.into_iter())
        .map(|(slot, text)| match slot {
            "what" | "body" => (slot, Slot::Word(text)),
            _ => (slot, Slot::Name(text)),
        })
        .collect();
    if let Unsolvable::NoOneMotion { contacts } = trouble {
        let and = words.word("general.and");
        slots.push(("contacts", Slot::Name(contacts.join(&format!(" {and} ")))));
    }
    let reason = words.say(&format!("unsolvable.{}", parts.key), &slots);
    with_remedy(reason.to_string(), parts.remedy, words)
}

fn with_remedy(reason: String, remedy: Option<&str>, words: &Words) -> String {
    match remedy {
        Some(remedy) => {
            let remedy = words.word(&format!("remedy.{remedy}"));
            format!("{reason}; {remedy}")
        }
        None => reason,
    }
}

/// Bodies that nothing holds, by their names where they have any.
fn held_by_nothing(why: &Unsolvable, bodies: &[String], words: &Words) -> String {
    let motions: &[Motion] = match why {
        Unsolvable::Mechanism { motions } => motions,
        _ => &[],
    };
    let told = motions.iter().enumerate().map(|(place, motion)| {
        let (key, texts) = motion.reason();
        let number = [("number", Slot::Value((motion.body() + 1).to_string()))];
        let body = match (bodies.get(place), motion.body()) {
            (Some(noun), _) => words.say("unsolvable.body", &[("body", Slot::Word(noun.clone()))]),
            (None, 0) => words.say("unsolvable.the-body", &[]),
            (None, _) => words.say("unsolvable.body-number", &number),
        };
        let mut slots = vec![("name", Slot::Value(body.to_string()))];
        slots.extend(
            texts
                .into_iter()
                .map(|(slot, text)| (slot, Slot::Value(text))),
        );
        let said = words.say(&format!("unsolvable.motion.{key}"), &slots);
        said.to_string()
    });
    let told: Vec<String> = told.collect();
    let and = words.word("general.and");
    let slots = [("motions", Slot::Value(told.join(&format!(" {and} "))))];
    let parts = why.parts();
    let reason = words.say(&format!("unsolvable.{}", parts.key), &slots);
    with_remedy(reason.to_string(), parts.remedy, words)
}

/// `A, B and C`.
fn listed(names: &[String], words: &Words) -> String {
    let and = words.word("general.and");
    match names {
        [before @ .., last] if !before.is_empty() => {
            format!("{} {and} {last}", before.join(", "))
        }
        names => names.concat(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::plane::Vector;
    use crate::statics::Stays;
    use crate::system::Fault;
    use crate::units::Dimension;

    fn troubles() -> Vec<Unsolvable> {
        let motion = |body, way: Vector| Motion::Slide {
            body,
            direction: way,
        };
        let turn = |body, anticlockwise| Motion::Turn {
            body,
            about: Vector::new(1.25, 0.0),
            anticlockwise,
        };
        let name = || "A".to_owned();
        let stays = |least_n, most_n| {
            Box::new(Stays {
                force: "T".to_owned(),
                least_n,
                most_n,
            })
        };
        let (low, high, dimension) = (0.5, 3.0, Dimension::LENGTH);
        let mut troubles = vec![
            Unsolvable::Indeterminate {
                unknowns: 4,
                equations: 3,
                names: vec![name(), "B".to_owned()],
            },
            Unsolvable::Mechanism { motions: vec![] },
            Unsolvable::Mechanism {
                motions: vec![turn(0, true), turn(1, false)],
            },
            Unsolvable::RopeWouldPush {
                rope: name(),
                size_n: 12.0,
            },
            Unsolvable::ContactWouldPull {
                support: name(),
                size_n: 12.0,
            },
            Unsolvable::WouldSlip {
                contact: name(),
                needed_n: 20.0,
                most_n: 12.0,
            },
            Unsolvable::NoOneMotion {
                contacts: vec![name(), "B".to_owned()],
            },
            Unsolvable::WouldTopple {
                base: name(),
                off_m: 0.4,
                half_m: 0.3,
            },
            Unsolvable::NearlySingular {
                pivot: 1e-9,
                threshold: 1e-7,
                length_m: 2.0,
                force_n: 100.0,
            },
            Unsolvable::WrongValues {
                expected: 3,
                found: 2,
            },
            Unsolvable::Misplaced {
                fault: Fault::OffLeg {
                    what: "lamp".to_owned(),
                    distance_m: 3.0,
                    length_m: 2.0,
                },
            },
        ];
        let ways = [
            (1.0, 0.0),
            (-1.0, 0.0),
            (0.0, 1.0),
            (0.0, -1.0),
            (0.6, -0.8),
        ];
        troubles.extend(ways.map(|(x, y)| Unsolvable::Mechanism {
            motions: vec![motion(0, Vector::new(x, y))],
        }));
        for flag in [true, false] {
            troubles.push(Unsolvable::NoneInRange {
                sought: "d".to_owned(),
                low,
                high,
                dimension,
                elsewhere: flag,
            });
            troubles.push(Unsolvable::HoldsForEvery {
                sought: "d".to_owned(),
                low,
                high,
                whole: flag,
                dimension,
            });
            for most in [200.0, 300.0] {
                troubles.push(Unsolvable::NeverReaches {
                    sought: "d".to_owned(),
                    low,
                    high,
                    dimension,
                    elsewhere: flag,
                    stays: stays(200.0, most),
                });
            }
        }
        troubles
    }

    /// What the catalogue says in English is what an error says by itself.
    #[test]
    fn the_english_words_are_those_of_the_error() {
        let words = Words::english();
        for trouble in troubles() {
            assert_eq!(why_unsolvable(&trouble, &words), trouble.to_string());
        }
        let unsolvable = || Unsolvable::RopeWouldPush {
            rope: "T".to_owned(),
            size_n: 3.0,
        };
        let symbol = || "d".to_owned();
        for trouble in [
            Underivable::CannotBe {
                at: "d = 2 m".to_owned(),
                count: 1,
                why: unsolvable(),
            },
            Underivable::CannotBe {
                at: "d = 2 m".to_owned(),
                count: 2,
                why: unsolvable(),
            },
            Underivable::PivotOnLine { unknown: symbol() },
            Underivable::PivotUnused,
            Underivable::KnotPivot,
            Underivable::NoTriangle {
                why: "two of the three sides are parallel".to_owned(),
            },
            Underivable::NotByTriangle {
                symbol: symbol(),
                is_needed: true,
            },
            Underivable::NotByTriangle {
                symbol: symbol(),
                is_needed: false,
            },
            Underivable::TooManyForces {
                names: vec!["A".to_owned(), "B".to_owned(), "C".to_owned()],
            },
            Underivable::Parallel,
            Underivable::ByTrial { symbol: symbol() },
            Underivable::OnlyHere { symbol: symbol() },
            Underivable::NoOrder,
        ] {
            assert_eq!(why(&trouble, &words), trouble.to_string());
        }
    }
}
