//! The lines of a general working, as text.

use crate::key::Axis;
use crate::problem::Place;
use crate::system::{ActId, HoldKind, Spot, System, When};
use crate::text::{Prose, Slot, Words};
use crate::working::{Kind, Meaning, Sense, Taken, Told, spot_act};

/// One line of a working with its end of line; headings stand to the left of what they head, which
/// is moved to the right.
pub fn working_line(system: &System, line: Told, words: &Words) -> String {
    let heading = |key: &str, slots: &[(&str, Slot)]| format!("{}\n", words.say(key, slots));
    let indented = |line: &str| format!("    {line}\n");
    match line {
        Told::Stage { first, together: 1 } => format!("{}\n", taken(system, &first, words)),
        Told::Stage { first, together } => {
            let slots = [
                ("bodies", Slot::Word(first.bodies.join(", "))),
                ("count", Slot::Word(together.to_string())),
            ];
            heading("solve.stage.together", &slots)
        }
        Told::Centre { noun, along_leg } => {
            let key = match along_leg {
                true => "solve.centre.leg",
                false => "solve.centre",
            };
            heading(key, &[("noun", Slot::Word(noun))])
        }
        Told::Piece { noun, hole } => {
            let key = if hole { "solve.hole" } else { "solve.piece" };
            heading(key, &[("noun", Slot::Word(noun))])
        }
        Told::Whole => heading("solve.whole", &[]),
        Told::Condition(when) => condition(system, when, words),
        Told::Trial { name, value } => {
            let slots = [("symbol", Slot::Name(name)), ("value", Slot::Value(value))];
            heading("solve.trial", &slots)
        }
        Told::Three(names) => {
            let told = |(name, noun): (String, String)| match noun.is_empty() {
                true => name,
                false => format!("{name} ({noun})"),
            };
            let names: Vec<String> = names.into_iter().map(told).collect();
            heading("solve.three", &[("forces", Slot::Name(names.join(", ")))])
        }
        Told::Resultant {
            of,
            sum,
            from: None,
        } => {
            let slots = [("forces", Slot::Name(of)), ("sum", Slot::Name(sum))];
            heading("solve.resultant", &slots)
        }
        Told::Resultant {
            of,
            sum,
            from: Some((distance, force, side)),
        } => {
            let slots = [
                ("forces", Slot::Name(of)),
                ("sum", Slot::Name(sum)),
                ("distance", Slot::Name(distance)),
                ("force", Slot::Name(force)),
                ("side", Slot::Prose(words.say(beside(side), &[]))),
            ];
            heading("solve.resultant-at", &slots)
        }
        Told::Meeting { open, from, point } => {
            let spot = spot_told(system, &from, words);
            let slots = [
                ("point", Slot::Name(point.to_owned())),
                ("force", Slot::Name(open)),
                ("spot", Slot::Word(spot)),
            ];
            heading("solve.meeting", &slots)
        }
        Told::Acts { force, sense } => {
            let way = words.say(straight(sense), &[]);
            let slots = [("force", Slot::Name(force)), ("way", Slot::Prose(way))];
            indented(&words.say("solve.acts", &slots).to_string())
        }
        Told::Angles => heading("solve.angles", &[]),
        Told::Angle { opposite, text } => {
            let slots = [("force", Slot::Name(opposite)), ("angle", Slot::Name(text))];
            indented(&words.say("solve.angle", &slots).to_string())
        }
        Told::Sines => heading("solve.sines", &[]),
        Told::Cosines => heading("solve.cosines", &[]),
        Told::Parts => heading("solve.parts", &[]),
        Told::Asked => heading("solve.parts-asked", &[]),
        Told::Given { text }
        | Told::Quantity {
            text, way: None, ..
        } => indented(&text),
        Told::Quantity {
            text,
            way: Some(way),
            meaning,
        } => {
            let told = match (meaning, way.sense) {
                (Meaning::FrictionNeeded(_), Sense::Slanted { above, right }) => {
                    slanted(above, right, words)
                }
                (_, sense) => sense_told(sense, words),
            };
            indented(&format!("{text} ({})", on_body(told, way.on, words)))
        }
        Told::Balance {
            taken: how,
            names,
            numbers,
        } => {
            let lines = match names == numbers {
                true => vec![names],
                false => vec![format!("{names},"), numbers],
            };
            match how {
                None => lines.iter().map(|line| indented(line)).collect(),
                Some(how) => {
                    let head = indented(&taken(system, &how, words));
                    let lines = lines.iter().map(|line| indented(&format!("    {line}")));
                    head + &lines.collect::<String>()
                }
            }
        }
        Told::Results => heading("solve.results", &[]),
        Told::Grip { noun } => heading("solve.grip", &[("noun", Slot::Word(noun))]),
        Told::Compared { text } => indented(&text),
    }
}

/// How a balance is taken: `Moments about the pin (beam), without Ax, Ay`.
fn taken(system: &System, taken: &Taken, words: &Words) -> String {
    let key = match &taken.kind {
        Kind::Moments(_) if !taken.removed.is_empty() => "solve.stage.moments",
        Kind::Moments(_) => "solve.stage.moments-all",
        Kind::Tilted { across: true, .. } => "solve.stage.across",
        Kind::Tilted { across: false, .. } => "solve.stage.along",
        Kind::Forces(Axis::Horizontal) => "solve.stage.level",
        Kind::Forces(Axis::Vertical) => "solve.stage.upright",
    };
    let slots = [
        ("spot", Slot::Word(stage_spot(system, &taken.kind, words))),
        ("bodies", Slot::Word(taken.bodies.join(", "))),
        ("removed", Slot::Name(taken.removed.join(", "))),
    ];
    words.say(key, &slots).to_string()
}

/// What just happens.
fn condition(system: &System, when: When, words: &Words) -> String {
    let (key, act) = match when {
        When::Reaches { act, .. } => ("solve.when.reaches", act),
        When::Vanishes(act) => (vanishing(system, act), act),
        When::Slips { act, .. } => ("solve.when.slips", act),
        When::Topples(act) => ("solve.when.topples", act),
        When::Rests(body) => {
            let body = system.parts().bodies.get(body.0);
            let noun = body.map_or_else(String::new, |body| body.noun.clone());
            let slots = [("body", Slot::Word(noun))];
            return format!("{}\n", words.say("solve.when.rests", &slots));
        }
    };
    let act = system.act(act);
    let noun = act.map_or_else(String::new, |act| act.noun.to_owned());
    format!("{}\n", words.say(key, &[("noun", Slot::Word(noun))]))
}

/// What it means that an action vanishes.
fn vanishing(system: &System, act: ActId) -> &'static str {
    let ActId::Hold(index) = act else {
        return "solve.when.slack";
    };
    match system.parts().holds.get(index).map(|hold| &hold.kind) {
        Some(HoldKind::Push(_) | HoldKind::Rough { .. } | HoldKind::Base { .. }) => {
            "solve.when.parts"
        }
        _ => "solve.when.vanishes",
    }
}

/// Which way, and on which body where that makes a difference.
fn on_body(told: Prose, on: Option<String>, words: &Words) -> Prose {
    let Some(body) = on else {
        return told;
    };
    let slots = [("way", Slot::Prose(told)), ("body", Slot::Word(body))];
    words.say("solve.on-body", &slots)
}

/// Which way friction along a slope acts: its slope is told by the contact, so only the sides are.
fn slanted(above: bool, right: bool, words: &Words) -> Prose {
    let vertical = if above { "solve.up" } else { "solve.down" };
    let side = if right { "solve.right" } else { "solve.left" };
    let slots = [
        ("vertical", Slot::Prose(words.say(vertical, &[]))),
        ("side", Slot::Prose(words.say(side, &[]))),
    ];
    words.say("solve.slanted", &slots)
}

fn sense_told(sense: Sense, words: &Words) -> Prose {
    let key = match sense {
        Sense::Right => "solve.right",
        Sense::Left => "solve.left",
        Sense::Up => "solve.up",
        Sense::Down => "solve.down",
        Sense::Anticlockwise => "solve.anticlockwise",
        Sense::Clockwise => "solve.clockwise",
        Sense::Reverse => "solve.reverse",
        Sense::Slanted { above, right } => {
            let vertical = if above { "solve.above" } else { "solve.below" };
            let side = if right { "solve.right" } else { "solve.left" };
            let slots = [
                ("vertical", Slot::Prose(words.say(vertical, &[]))),
                ("side", Slot::Prose(words.say(side, &[]))),
            ];
            return words.say("solve.direction", &slots);
        }
    };
    words.say(key, &[])
}

/// Which way, of what is level or upright.
fn straight(sense: Sense) -> &'static str {
    match sense {
        Sense::Left => "solve.straight.left",
        Sense::Up => "solve.straight.up",
        Sense::Down => "solve.straight.down",
        _ => "solve.straight.right",
    }
}

/// On which side of another force a sum acts.
fn beside(side: Sense) -> &'static str {
    match side {
        Sense::Left => "solve.beside.left",
        Sense::Up => "solve.beside.above",
        Sense::Down => "solve.beside.below",
        _ => "solve.beside.right",
    }
}

/// A spot in words: by what acts there, else by its place on a body.
fn spot_told(system: &System, spot: &Spot, words: &Words) -> String {
    let act = spot_act(system, spot).and_then(|id| system.act(id));
    if let Some(act) = act {
        let noun = Slot::Word(act.noun.to_owned());
        return match act.id {
            // A weight is called as its body is.
            ActId::Weight(_) => words.say("general.scene.centroid", &[("body", noun)]),
            _ => words.say("solve.spot", &[("noun", noun)]),
        }
        .to_string();
    }
    let Spot::On { body, leg, place } = spot else {
        return words.word("solve.point");
    };
    let Some(found) = system.parts().bodies.get(body.0) else {
        return words.word("solve.point");
    };
    let key = match place {
        Place::Foot if *leg == 0 => "general.scene.foot",
        Place::Tip if leg + 1 == found.legs.len() => "general.scene.tip",
        Place::Middle if found.legs.len() == 1 => "general.scene.middle",
        _ => return words.word("solve.point"),
    };
    let body = Slot::Word(found.noun.clone());
    words.say(key, &[("body", body)]).to_string()
}

/// Where a balance is taken: the pivot of moments, the body that forces are taken along or across.
fn stage_spot(system: &System, kind: &Kind, words: &Words) -> String {
    match kind {
        Kind::Moments(spot) => spot_told(system, spot, words),
        Kind::Tilted { body, .. } => {
            let body = system.parts().bodies.get(body.0);
            body.map_or_else(String::new, |body| body.noun.clone())
        }
        Kind::Forces(_) => String::new(),
    }
}
