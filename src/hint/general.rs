//! What is said of the steps of a general working: their names, their questions, their hints, and
//! how they are written on the board.

use super::Case;
use crate::key::{
    Atom, Formula, Heading, Key, Nature, Rule, StageIds, StepId, balance_names, balance_numbers,
    formula_names, formula_numbers,
};
use crate::text::{Piece, Prose, Slot, Tag, Words};
use crate::units::{Dimension, value_text};

/// A step's name in a few words: "weight of the ladder".
pub(super) fn title(words: &Words, key: &Key, step: StepId) -> String {
    let Some(heading) = key.heading(step) else {
        return String::new();
    };
    let kind = match (heading.kind, heading.spot.is_empty()) {
        ("moments", true) => "moments-free",
        ("across", _) if !heading.bodies.is_empty() => "across-named",
        ("along", _) if !heading.bodies.is_empty() => "along-named",
        ("angle", _) if !heading.bodies.is_empty() => "angle-named",
        ("part-x", _) if !heading.end.is_empty() => "part-x-end",
        ("part-y", _) if !heading.end.is_empty() => "part-y-end",
        (kind, _) => kind,
    };
    let slots = slots(words, key, step, heading);
    words
        .say(&format!("general.title.{kind}"), &slots)
        .to_string()
}

/// What is asked at a step.
pub(super) fn question(words: &Words, key: &Key, step: StepId) -> Prose {
    let Some(heading) = key.heading(step) else {
        return Prose::default();
    };
    let mut slots = slots(words, key, step, heading);
    slots.push(("title", Slot::Word(title(words, key, step))));
    if !heading.condition.is_empty() {
        let told = words.say(&format!("general.when.{}", heading.condition), &slots);
        return told.then(value_question(words, key, step, slots));
    }
    match step {
        StepId::Sum(..) => {
            let told = match (heading.kind, heading.removed.is_empty()) {
                ("moments", false) => words.say("general.ask.moments", &slots),
                _ => words.say("general.ask.balance", &slots),
            };
            match together(key, step) {
                Some(stage) => {
                    slots.push(("count", Slot::Word(stage.balances.len().to_string())));
                    told.then(words.say("general.ask.together", &slots))
                }
                None => told,
            }
        }
        StepId::Found(Nature::Sought, _) => words.say("general.ask.sought", &slots),
        step if step.is_unknown() && !key.sums_of(step).is_empty() => {
            let sum = key.sum_of(step).filter(|sum| !is_asked(key, *sum));
            match sum {
                // Alone in its balance it is what the balance says.
                Some(sum) => {
                    slots.push(("balance", Slot::Word(title(words, key, sum))));
                    words.say("general.ask.alone", &slots)
                }
                None => words.say("general.ask.unknown", &slots),
            }
        }
        step => value_question(words, key, step, slots),
    }
}

fn is_asked(key: &Key, step: StepId) -> bool {
    key.step(step).is_some_and(|step| step.asked)
}

/// What is asked of a value, and which letters may stand in it.
fn value_question(
    words: &Words,
    key: &Key,
    step: StepId,
    mut slots: Vec<(&'static str, Slot)>,
) -> Prose {
    let before = |one: &StepId| key.rank(step) < key.rank(*one);
    let open = key.open_in(step).into_iter().filter(before);
    let names = open.filter_map(|one| Some(key.step(one)?.symbol.shown()));
    let names: Vec<String> = names.collect();
    if names.is_empty() {
        let kind = key.heading(step).map_or("", |heading| heading.kind);
        let asked = words.say("general.ask.value", &slots);
        return match kind {
            "centre-y" | "piece-y" => asked.then(words.say("general.ask.beside", &slots)),
            _ => asked,
        };
    }
    slots.push(("open", Slot::Name(names.join(", "))));
    words.say("general.ask.multiple", &slots)
}

/// The stage of a balance or of an unknown, where several balances give their unknowns together.
fn together(key: &Key, step: StepId) -> Option<&StageIds> {
    let mut stages = key.general.as_ref()?.stages.iter();
    let stage = stages.find(|stage| {
        let mut ids = stage.balances.iter().chain(&stage.unknowns);
        ids.any(|id| *id == step)
    })?;
    (stage.balances.len() > 1).then_some(stage)
}

fn slots(words: &Words, key: &Key, step: StepId, heading: &Heading) -> Vec<(&'static str, Slot)> {
    let bodies = heading
        .bodies
        .join(&format!(" {} ", words.word("general.and")));
    let shown = |id: StepId| key.step(id).map(|step| step.symbol.shown());
    let symbol = shown(step);
    let stage = together(key, step).map(|stage| stage.unknowns.iter());
    let unknowns: Vec<String> = stage
        .into_iter()
        .flatten()
        .filter_map(|id| shown(*id))
        .collect();
    let end = match heading.end {
        "" => String::new(),
        end => words.word(&format!("sketch.heading.{end}")),
    };
    vec![
        ("end", Slot::Word(end)),
        ("symbol", Slot::Name(symbol.unwrap_or_default())),
        ("noun", Slot::Word(heading.noun.clone())),
        ("force", Slot::Name(heading.force.clone())),
        ("bodies", Slot::Word(bodies)),
        ("spot", Slot::Word(heading.spot.clone())),
        ("removed", Slot::Name(heading.removed.clone())),
        ("unknowns", Slot::Name(unknowns.join(", "))),
    ]
}

/// The hint of a stage: what to look at; which body and which point, and why; the formula in
/// names; the line itself.
pub(super) fn hint(words: &Words, case: &Case<'_>, step: StepId, stage: u8) -> Prose {
    let Some(heading) = case.key.heading(step) else {
        return Prose::default();
    };
    let slots = slots(words, case.key, step, heading);
    let kind = group(step, heading);
    let stage_of = together(case.key, step);
    let is_last = stage_of.is_some_and(|stage| stage.unknowns.last() == Some(&step));
    let kind = match kind {
        // Where a single force acts along a line, its formula would be the answer.
        _ if is_alone(case.key, step) => "alone",
        "unknown" if is_last => "unknown-last",
        "unknown" if stage_of.is_some() => "unknown-together",
        "unknown" if is_angle(case.key, step) => "unknown-angle",
        // What is sought may stand in no balance: only the law holds it that just holds.
        "unknown" if is_by_law(case.key, step) => "law",
        // An angle told by points has no printed angle beside it.
        "angle" if matches!(case.key.formula(step), Some(Formula::ArcTangent(_))) => "angle-points",
        // A size with a single part is no side of a triangle.
        "size" if matches!(case.key.formula(step), Some(Formula::Absolute(_))) => "size-one",
        "angle" if !heading.bodies.is_empty() => "angle-named",
        kind => kind,
    };
    match stage {
        3 if kind == "alone" => words.say("general.solve-alone", &slots),
        3 if kind == "unknown-together" => words.say("general.solve-together", &slots),
        3 if is_angle(case.key, step) => words.say("general.solve-angle", &slots),
        // In names it would be the answer.
        3 if matches!(case.key.formula(step), Some(Formula::Number(_))) => {
            words.say("general.solve-nothing", &slots)
        }
        0 | 1 => words.say(&format!("general.look.{kind}"), &slots),
        2 => {
            let kind = match (kind, heading.removed.is_empty()) {
                ("moments", true) => "moments-free",
                ("moments", false) if stage_of.is_some() => "moments-together",
                ("unknown-last", _) if is_angle(case.key, step) => "unknown-angle",
                ("unknown-last", _) => "unknown",
                (kind, _) => kind,
            };
            words.say(&format!("general.place.{kind}"), &slots)
        }
        3 => {
            let mut slots = slots;
            slots.push(("formula", Slot::Value(in_names(case, step))));
            match in_names(case, step).is_empty() {
                true => words.say("general.solve-hint", &slots),
                false => words.say("general.formula", &slots),
            }
        }
        _ => case.line_said(words).then(Prose(vec![Piece {
            tag: Tag::Value,
            text: super::told(words, case, step),
        }])),
    }
}

/// True for an unknown that is the only term of the balance that gives it: it is nothing.
fn is_alone(key: &Key, step: StepId) -> bool {
    let balance = key.sum_of(step).and_then(|sum| key.balance(sum));
    balance.is_some_and(|balance| {
        let only = balance.terms.first().filter(|_| balance.terms.len() == 1);
        only.is_some_and(|term| term.amount == Formula::step(step))
    })
}

/// True for what is sought where no balance gives it.
fn is_by_law(key: &Key, step: StepId) -> bool {
    matches!(step, StepId::Found(Nature::Sought, _)) && key.sums_of(step).is_empty()
}

/// True for an angle that is sought: it stands in sines and cosines.
fn is_angle(key: &Key, step: StepId) -> bool {
    let dimension = key.step(step).map(|step| step.dimension);
    matches!(step, StepId::Found(Nature::Sought, _)) && dimension == Some(Dimension::ANGLE)
}

/// Steps that one hint serves.
fn group(step: StepId, heading: &Heading) -> &'static str {
    match (step, heading.kind) {
        (_, "moments") => "moments",
        (StepId::Sum(..), _) => "forces",
        (_, "weight") => "weight",
        (_, "resultant") => "spread",
        (_, "resultant-at") => "spread-at",
        (_, "area") => "area",
        (_, "centre-x" | "centre-y" | "piece-x" | "piece-y") => "centre",
        (_, "mass") => "mass",
        (StepId::Found(Nature::Angle, _), _) => "angle",
        (StepId::Found(Nature::Size, _), _) => "size",
        (StepId::Found(Nature::Direction, _), _) => "direction",
        (_, "friction" | "at-edge") if !step.is_unknown() => "condition",
        (_, "across" | "along" | "part-x" | "part-y") => "part",
        (step, _) if !heading.condition.is_empty() && step.along().is_some() => "condition-parts",
        (step, _) if step.is_unknown() => "unknown",
        _ if !heading.condition.is_empty() => "condition",
        _ => "value",
    }
}

/// The line in names, without its value.
fn in_names(case: &Case<'_>, step: StepId) -> String {
    if let Some(balance) = case.key.balance(step) {
        return balance_names(case.problem, case.key, balance);
    }
    let (Some(found), Some(formula)) = (case.key.step(step), case.key.formula(step)) else {
        return String::new();
    };
    let names = formula_names(case.problem, case.key, &formula);
    format!("{} = {names}", found.symbol.shown())
}

/// A step as written on the board.
pub(super) fn told(case: &Case<'_>, step: StepId) -> String {
    let Some(found) = case.key.step(step) else {
        return String::new();
    };
    let named = open_at(case.key, step);
    let teller = case.teller(&named);
    if let Some(balance) = case.key.balance(step) {
        let names = balance_names(case.problem, case.key, balance);
        let numbers = balance_numbers(&teller, balance);
        return match names == numbers {
            true => names,
            false => format!("{names}, {numbers}"),
        };
    }
    let value = case.key.value(step, case.sampling.own(), &case.own);
    let text = value.map(|value| value_text(value, found.dimension, case.problem.figures()));
    let mut parts = vec![found.symbol.shown()];
    let nothing = value == Some(0.0);
    if nothing && let Some(formula) = case.key.formula(step) {
        let in_names = !matches!(formula, Formula::Number(_));
        parts.extend(in_names.then(|| formula_names(case.problem, case.key, &formula)));
        parts.extend(text);
    } else if let Some(formula) = case.key.formula(step) {
        parts.push(formula_names(case.problem, case.key, &formula));
        parts.push(formula_numbers(&teller, &formula));
        // A given number, printed as it was given, needs no second telling.
        let is_given = matches!(formula.bare(), Formula::Atom(Atom::Given(_)));
        let of_open = formula.inputs().iter().any(|id| {
            named.contains(id) || case.key.open_in(*id).iter().any(|one| named.contains(one))
        });
        if !is_given && !of_open {
            parts.extend(text);
        }
    } else {
        parts.extend(text);
    }
    parts.dedup();
    parts.join(" = ")
}

/// True for a balance that is told again word for word by what it gives: `F = FN`.
pub(super) fn is_said_again(case: &Case<'_>, sum: StepId) -> bool {
    let (Some(unknown), Some(balance)) = (case.key.gives(sum), case.key.balance(sum)) else {
        return false;
    };
    balance_names(case.problem, case.key, balance) == in_names(case, unknown)
}

/// The unknowns that are still letters when a step is worked.
pub(super) fn open_at(key: &Key, step: StepId) -> Vec<StepId> {
    let Some(rank) = key.rank(step) else {
        return Vec::new();
    };
    let later = key.steps.iter().skip(rank + 1);
    let stages = later.filter(|one| matches!(one.rule, Rule::Stage(_)));
    stages.map(|one| one.id).collect()
}

/// How an answer may look: the end of its key in the catalogue of words.
pub(super) fn example(key: &Key, step: StepId) -> &'static str {
    let angle = key
        .step(step)
        .is_some_and(|one| one.dimension == Dimension::ANGLE);
    match step {
        StepId::Sum(..) if key.heading(step).is_some_and(|one| one.kind == "moments") => "moments",
        StepId::Sum(..) => "forces",
        step if step.is_weight() => "weight",
        _ if angle => "angle",
        StepId::Found(Nature::Part, _) => match key.heading(step).map(|one| one.kind) {
            Some("across" | "along" | "part-x" | "part-y") => "part",
            _ => "value",
        },
        _ => "value",
    }
}
