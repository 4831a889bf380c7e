//! The sentences for what the diagram shows.

use super::tell::{Heading, LoadHow, PlaceWord, Told, Whereabouts};
use crate::text::{Prose, Slot, Words};

/// The sentences for what is told, one each, in the same order.
pub fn told_words(told: &[Told], words: &Words) -> Vec<Prose> {
    told.iter().map(|one| sentence(one, words)).collect()
}

fn sentence(told: &Told, words: &Words) -> Prose {
    match told {
        Told::Body { .. } | Told::Support { .. } | Told::Rope { .. } | Told::Load { .. } => {
            site_sentence(told, words)
        }
        Told::Given {
            symbol,
            meaning,
            written,
        } => words.say(
            "sketch.told.given",
            &[
                ("symbol", Slot::Name(symbol.clone())),
                ("meaning", Slot::Word(meaning.clone())),
                ("value", Slot::Value(written.clone())),
            ],
        ),
        Told::Force { .. } | Told::Component { .. } | Told::Couple { .. } => {
            arrow_sentence(told, words)
        }
        Told::Pivot { at } => words.say("sketch.told.pivot", &[("place", place(at, words))]),
        Told::Angle { label, force } => words.say("sketch.told.angle", &named(label, force)),
        Told::Distance {
            label,
            force,
            from_foot,
        } => {
            let key = if *from_foot {
                "sketch.told.distance.foot"
            } else {
                "sketch.told.distance.pivot"
            };
            words.say(key, &named(label, force))
        }
        Told::Triangle { force, by_axes } => {
            let key = match by_axes {
                true => "sketch.told.triangle.axes",
                false => "sketch.told.triangle",
            };
            words.say(key, &named("", force))
        }
    }
}

fn site_sentence(told: &Told, words: &Words) -> Prose {
    let (key, noun, at, heading) = match told {
        Told::Body {
            noun,
            heading,
            level: true,
        } => ("sketch.told.body.level", noun, None, Some(heading)),
        Told::Body { noun, heading, .. } => ("sketch.told.body.tilted", noun, None, Some(heading)),
        Told::Support { noun, at } => ("sketch.told.support", noun, Some(at), None),
        Told::Rope { noun, at, heading } => ("sketch.told.rope", noun, Some(at), Some(heading)),
        Told::Load {
            noun,
            at,
            heading,
            how,
        } => {
            let key = match how {
                LoadHow::Hangs => "sketch.told.load.hung",
                LoadHow::Stands => "sketch.told.load.standing",
                LoadHow::Pushes => "sketch.told.load.force",
            };
            (key, noun, Some(at), Some(heading))
        }
        _ => return Prose::default(),
    };
    let mut slots = vec![("noun", Slot::Word(noun.clone()))];
    slots.extend(at.map(|at| ("place", place(at, words))));
    slots.extend(heading.map(|heading| ("heading", way(*heading, words))));
    words.say(key, &slots)
}

fn arrow_sentence(told: &Told, words: &Words) -> Prose {
    match told {
        Told::Force { label, at, heading } => {
            let mut slots = vec![
                ("label", Slot::Name(label.clone())),
                ("place", place(at, words)),
            ];
            match heading {
                Some(heading) => {
                    slots.push(("heading", way(*heading, words)));
                    words.say("sketch.told.force", &slots)
                }
                None => words.say("sketch.told.force.open", &slots),
            }
        }
        Told::Couple {
            label,
            at,
            anticlockwise,
        } => {
            let sense = match anticlockwise {
                Some(true) => "anticlockwise",
                Some(false) => "clockwise",
                None => "open",
            };
            let mut slots = vec![("label", Slot::Name(label.clone()))];
            slots.extend(at.as_ref().map(|at| ("place", place(at, words))));
            let key = match at {
                Some(_) => format!("sketch.told.couple.at.{sense}"),
                None => format!("sketch.told.couple.{sense}"),
            };
            words.say(&key, &slots)
        }
        Told::Component {
            label,
            force,
            at,
            upper,
        } => {
            let key = match upper {
                Some(true) => "sketch.told.component.upper",
                Some(false) => "sketch.told.component.lower",
                None => "sketch.told.component.open",
            };
            let mut slots = named(label, force).to_vec();
            slots.push(("place", place(at, words)));
            words.say(key, &slots)
        }
        _ => Prose::default(),
    }
}

fn named(label: &str, force: &str) -> [(&'static str, Slot); 2] {
    [
        ("label", Slot::Name(label.to_owned())),
        ("force", Slot::Name(force.to_owned())),
    ]
}

fn place(at: &Whereabouts, words: &Words) -> Slot {
    let said = match at.word {
        PlaceWord::Foot => words.say("sketch.place.foot", &[]),
        PlaceWord::Middle => words.say("sketch.place.middle", &[]),
        PlaceWord::Tip => words.say("sketch.place.tip", &[]),
        PlaceWord::Part { over, under } => {
            let fraction = Slot::Value(format!("{over}/{under}"));
            words.say("sketch.place.part", &[("fraction", fraction)])
        }
        PlaceWord::Between => {
            let distance = Slot::Value(at.distance.clone());
            words.say("sketch.place.between", &[("distance", distance)])
        }
    };
    Slot::Prose(said)
}

fn way(heading: Heading, words: &Words) -> Slot {
    let key = match heading {
        Heading::Right => "sketch.heading.right",
        Heading::UpRight => "sketch.heading.up-right",
        Heading::Up => "sketch.heading.up",
        Heading::UpLeft => "sketch.heading.up-left",
        Heading::Left => "sketch.heading.left",
        Heading::DownLeft => "sketch.heading.down-left",
        Heading::Down => "sketch.heading.down",
        Heading::DownRight => "sketch.heading.down-right",
    };
    Slot::Prose(words.say(key, &[]))
}
