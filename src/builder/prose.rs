//! The sentences of a problem that is built, and why it cannot be worked.

use super::draft::{Carried, Draft, Fixing, Spot, Stance};
use super::hold::{Hold, Way};
use super::read::Measure;
use crate::problem::{Reference, Side};
use crate::statics::Unsolvable;
use crate::text::{Prose, Slot, Words};
use crate::units::figures_text;

/// What a number is, by its key in the catalogue of words: "mass of the lamp".
pub(super) fn meaning(key: &str, noun: &str, words: &Words) -> String {
    let slots = [("noun", Slot::Word(noun.to_owned()))];
    words.say(key, &slots).to_string()
}

/// One line that names the problem.
pub(super) fn title(draft: &Draft, words: &Words) -> String {
    let slots = [("body", Slot::Word(draft.body().to_owned()))];
    words.say("build.title", &slots).to_string()
}

/// The scene in words, sentence by sentence, as far as it is told.
pub(super) fn statement(draft: &Draft, words: &Words) -> String {
    let mut told = vec![body(draft, words)];
    told.extend(stance(draft, words));
    told.extend(fixing(draft, words));
    let whole = draft.holds.iter().filter(|hold| hold.is_whole());
    for (index, one) in whole.enumerate() {
        told.extend(hold(draft, one, index, words));
    }
    let whole = draft.loads.iter().filter(|load| load.is_whole());
    for (index, load) in whole.enumerate() {
        told.extend(carried(draft, load, index + 1, words));
    }
    if draft.no_more_holds {
        told.push(ask(draft, words));
    }
    told.join(" ")
}

fn value(name: &str, measure: &Measure) -> Slot {
    Slot::Value(format!("{name} = {}", measure.written))
}

fn noun(draft: &Draft) -> (&'static str, Slot) {
    ("body", Slot::Word(draft.body().to_owned()))
}

fn body(draft: &Draft, words: &Words) -> String {
    let length = draft.length.as_ref();
    let length = (
        "length",
        length.map_or(Slot::Value(String::new()), |l| value("L", l)),
    );
    match &draft.mass {
        Some(Some(mass)) => {
            let slots = [noun(draft), length, ("mass", value("mb", mass))];
            words.say("build.say.body", &slots).to_string()
        }
        _ => words
            .say("build.say.body-light", &[noun(draft), length])
            .to_string(),
    }
}

fn side(side: Side, words: &Words) -> Slot {
    Slot::Word(words.word(match side {
        Side::Left => "build.left",
        Side::Right => "build.right",
    }))
}

fn reference(from: Reference, words: &Words) -> Slot {
    Slot::Word(words.word(match from {
        Reference::Horizontal => "build.line-horizontal",
        Reference::Vertical => "build.line-vertical",
    }))
}

fn stance(draft: &Draft, words: &Words) -> Option<String> {
    let towards = ("side", side(draft.towards?, words));
    match draft.stance.as_ref()? {
        Stance::Level => Some(
            words
                .say("build.say.level", &[noun(draft), towards])
                .to_string(),
        ),
        Stance::Tilted {
            from: Some(from),
            angle: Some(angle),
        } => {
            let slots = [
                noun(draft),
                towards,
                ("angle", value("θ", angle)),
                ("line", reference(*from, words)),
            ];
            Some(words.say("build.say.tilted", &slots).to_string())
        }
        Stance::Tilted { .. } => None,
    }
}

/// Where something is: "at its tip", "at a distance d1 = 1.2 m from its foot".
fn place(spot: &Spot, name: &str, words: &Words) -> Slot {
    let key = match spot {
        Spot::Foot => "build.say.at-foot",
        Spot::Middle => "build.say.at-middle",
        Spot::Tip => "build.say.at-tip",
        Spot::At(measure) => {
            let slots = [("distance", value(name, measure))];
            return Slot::Prose(words.say("build.say.at", &slots));
        }
    };
    Slot::Prose(words.say(key, &[]))
}

fn fixing(draft: &Draft, words: &Words) -> Option<String> {
    let (key, name) = match draft.fixing? {
        Fixing::Hinge => ("build.say.hinge", "dH"),
        Fixing::BuiltIn => ("build.say.built-in", "dA"),
        Fixing::Nothing => return None,
    };
    let at = place(draft.fixed_at.as_ref()?, name, words);
    Some(words.say(key, &[noun(draft), ("place", at)]).to_string())
}

fn hold(draft: &Draft, hold: &Hold, index: usize, words: &Words) -> Option<String> {
    let symbol = hold.symbol(&draft.holds, index);
    let at = ("place", place(hold.spot()?, &format!("d{symbol}"), words));
    let name = ("name", Slot::Name(symbol.clone()));
    let Hold::Rope { way, .. } = hold else {
        let slots = [noun(draft), at, name];
        return Some(words.say("build.say.prop", &slots).to_string());
    };
    let angle_name = format!("β{}", symbol.trim_start_matches('T'));
    let mut slots = vec![noun(draft), at, name];
    let key = match way.as_ref()? {
        Way::Up => "build.say.rope-up",
        Way::Level(to) => {
            slots.push(("side", side(*to, words)));
            "build.say.rope-level"
        }
        Way::Aslant {
            from,
            angle,
            side: to,
        } => {
            slots.push(("angle", value(&angle_name, angle.as_ref()?)));
            slots.push(("line", reference((*from)?, words)));
            slots.push(("side", side((*to)?, words)));
            "build.say.rope-aslant"
        }
        Way::WithBody { angle } => {
            slots.push(("angle", value(&angle_name, angle.as_ref()?)));
            "build.say.rope-body"
        }
    };
    Some(words.say(key, &slots).to_string())
}

fn carried(draft: &Draft, load: &Carried, number: usize, words: &Words) -> Option<String> {
    let slots = [
        noun(draft),
        ("load", Slot::Word(load.noun.clone())),
        ("mass", value(&format!("m{number}"), load.mass.as_ref()?)),
        (
            "place",
            place(load.spot.as_ref()?, &format!("d{number}"), words),
        ),
    ];
    let key = match load.stands? {
        true => "build.say.stands",
        false => "build.say.hangs",
    };
    Some(words.say(key, &slots).to_string())
}

/// What is to be found.
fn ask(draft: &Draft, words: &Words) -> String {
    let key = match (draft.fixing, draft.holds.as_slice()) {
        (Some(Fixing::Hinge), [Hold::Rope { .. }]) => "build.say.ask-rope",
        (Some(Fixing::Hinge), [Hold::Prop { .. }]) => "build.say.ask-prop",
        _ => "build.say.ask-all",
    };
    words.say(key, &[noun(draft)]).to_string()
}

/// Why the forces cannot be found, and what to change; what helps is another thing where a hinge
/// holds the body.
pub(super) fn unsolvable(why: &Unsolvable, has_hinge: bool, words: &Words) -> Prose {
    let force = |key: &str, name: &str, size: f64| {
        let slots = [
            ("name", Slot::Name(name.to_owned())),
            ("size", Slot::Value(format!("{} N", figures_text(size, 3)))),
        ];
        words.say(key, &slots)
    };
    match why {
        Unsolvable::Indeterminate { .. } => words.say("build.why.indeterminate", &[]),
        Unsolvable::Mechanism { .. } => words.say("build.why.mechanism", &[]),
        Unsolvable::RopeWouldPush { rope, size_n } => {
            force("build.why.rope-would-push", rope, *size_n)
        }
        Unsolvable::ContactWouldPull { support, size_n } => {
            let key = match has_hinge {
                true => "build.why.prop-would-pull",
                false => "build.why.prop-would-pull-free",
            };
            force(key, support, *size_n)
        }
        Unsolvable::NearlySingular { .. } => words.say("build.why.nearly", &[]),
        _ => words.say("build.why.other", &[]),
    }
}
