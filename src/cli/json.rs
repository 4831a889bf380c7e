//! The JSON that we promise to other programs. Every form carries a version; values are in full,
//! in SI units, angles in degrees.

use super::board;
use super::general::{Board, Other};
use super::library::Found;
use crate::hint::kind_word;
use crate::key::{Axis, Key, Pins, Sampling, step_word};
use crate::lesson::{Fault, write_problem};
use crate::session::{Formulas, Ranked, Speaks, Thought};
use crate::statics::{Root, Solution, SystemSolution, solve_system};
use crate::system::{Act, ActId, Asked, Effect, Line, System};
use crate::text::Words;
use crate::units::{Dimension, unit_for};
use crate::working::{Kind, Sense, Settled, Told, Working, spot_name, told};
use serde_json::{Value, json};

/// The version of these forms.
const VERSION: u32 = 1;

/// A solved problem.
pub(super) fn solved(found: &Found, key: &Key, solution: &Solution, words: &Words) -> String {
    let problem = &found.problem;
    let forces: Vec<Value> = problem
        .forces()
        .iter()
        .map(|force| {
            let vector = solution.force(force.id);
            json!({
                "symbol": force.symbol.as_str(),
                "what": force.noun,
                "x": vector.x,
                "y": vector.y,
                "size": vector.size(),
                "unit": "N",
            })
        })
        .collect();
    let problem_json: Value = serde_json::from_str(&write_problem(problem)).unwrap_or(Value::Null);
    let system = System::of(problem);
    let worked = solve_system(&system, &system.values(), system.gravity());
    let strained = worked.ok().and_then(|worked| strained(&system, &worked));
    let whole = json!({
        "version": VERSION,
        "code": found.origin.as_ref().map(|origin| origin.code.as_str()),
        "title": problem.title(),
        "statement": problem.statement(),
        "gravity": { "value": problem.gravity(), "unit": "m/s²" },
        "problem": problem_json,
        "steps": steps(found, key, words),
        "forces": forces,
        "strained": strained,
        "caution": problem.caution(),
    });
    format!("{whole:#}\n")
}

/// A system of bodies, worked.
pub(super) fn system(system: &System, solved: &Settled, board: &Board<'_>) -> String {
    let parts = system.parts();
    let roots = &solved.roots;
    let found = |value: f64| {
        let given = system.given(parts.sought.as_ref()?.given);
        let is_angle = given.dimension == Dimension::ANGLE;
        Some(json!({
            "symbol": given.symbol.as_str(),
            "value": if is_angle { value.to_degrees() } else { value },
            "unit": unit_for(given.dimension).map(|unit| unit.symbol),
        }))
    };
    let root = |root: &Root| {
        let mut told = found(root.value)?;
        told["holds"] = json!(root.solution.is_ok());
        told["stable"] = json!(root.stable);
        told["why_not"] = json!(root.solution.as_ref().err().map(|trouble| trouble.code()));
        Some(told)
    };
    let sought: Vec<Value> = roots.iter().filter_map(root).collect();
    let other = |other: &Other| {
        let mut told = found(other.value)?;
        told["forces"] = json!(forces(system, &other.solution, &other.values));
        told["working"] = json!(working_lines(system, &other.values, &other.working));
        Some(told)
    };
    let others: Vec<Value> = board.others.iter().filter_map(other).collect();
    let lines = working_lines(system, &solved.values, board.working);
    let whole = json!({
        "version": VERSION,
        "title": parts.title,
        "statement": parts.statement,
        "gravity": { "value": parts.gravity, "unit": "m/s²" },
        "forces": forces(system, &solved.solution, &solved.values),
        "sought": sought,
        "asked": asked(system),
        "asked_by_name": system.asks_by_name(),
        "strained": strained(system, &solved.solution),
        "working": lines,
        "other_values": others,
        "caution": parts.caution,
    });
    format!("{whole:#}\n")
}

/// Every force and couple.
fn forces(system: &System, solution: &SystemSolution, values: &[f64]) -> Vec<Value> {
    let told = |act: &Act<'_>| {
        let found = solution.reaction(act.id)?;
        Some(json!({
            "symbol": act.symbol.as_str(),
            "what": act.noun,
            "on": on(system, act, false),
            "reverse_on": on(system, act, true),
            "at": { "x": found.at.x, "y": found.at.y, "unit": "m" },
            "x": found.force.x,
            "y": found.force.y,
            "size": found.force.size(),
            "unit": "N",
            "couple": { "value": found.couple, "unit": "N m" },
            "ends": ends(system, act, found.size, values),
        }))
    };
    system.acts().iter().filter_map(told).collect()
}

/// Of a rope: what each of its ends does, at which body; `null` of anything else.
fn ends(system: &System, act: &Act<'_>, tension: f64, values: &[f64]) -> Option<Vec<Value>> {
    let ActId::Cord(_) = act.id else {
        return None;
    };
    let told = |effect: &Effect| {
        let Line::Known(bearing) = &effect.line else {
            return None;
        };
        let at = system.point(&effect.at, values);
        let force = system.unit(bearing, &effect.at, values) * tension;
        Some(json!({
            "on": system.parts().bodies.get(effect.body.0)?.noun,
            "at": { "x": at.x, "y": at.y, "unit": "m" },
            "x": force.x,
            "y": force.y,
            "unit": "N",
        }))
    };
    Some(act.on.iter().filter_map(told).collect())
}

/// The nouns of the bodies that a force acts on as it is told, or that meet the reverse of it.
fn on(system: &System, act: &Act<'_>, reversed: bool) -> Vec<String> {
    let effects = act.on.iter().filter(|effect| effect.reversed == reversed);
    let bodies = effects.filter_map(|effect| system.parts().bodies.get(effect.body.0));
    bodies.map(|body| body.noun.clone()).collect()
}

/// What is asked.
fn asked(system: &System) -> Vec<Value> {
    let of = |act: ActId, what: &str| {
        let symbol = system.act(act)?.symbol.as_str().to_owned();
        Some(json!({ "symbol": symbol, "what": what }))
    };
    let told = |asked: Asked| match asked {
        Asked::Force(act) => of(act, "force"),
        Asked::Horizontal(act) => of(act, "horizontal"),
        Asked::Vertical(act) => of(act, "vertical"),
        Asked::Couple(act) => of(act, "couple"),
        Asked::Sought => {
            let given = system.parts().sought.as_ref()?.given;
            let symbol = system.given(given).symbol.as_str();
            Some(json!({ "symbol": symbol, "what": "sought" }))
        }
    };
    system.asked().into_iter().filter_map(told).collect()
}

/// The force that is very large beside the loads, if one is.
fn strained(system: &System, solution: &SystemSolution) -> Option<Value> {
    let strained = solution.strained()?;
    let act = system.act(strained.act)?;
    Some(json!({
        "symbol": act.symbol.as_str(),
        "size": strained.size_n,
        "largest_load": strained.load_n,
        "unit": "N",
    }))
}

/// The lines of a working.
fn working_lines(system: &System, values: &[f64], working: &Working) -> Vec<Value> {
    told(system, working, values)
        .into_iter()
        .filter_map(|line| match line {
            Told::Quantity {
                text, way: None, ..
            } => Some(json!({ "quantity": text })),
            Told::Quantity {
                text,
                way: Some(way),
                ..
            } => Some(json!({
                "quantity": text,
                "way": way_word(way.sense),
                "on": way.on,
            })),
            Told::Balance {
                taken: None,
                names,
                numbers,
            } => Some(json!({ "balance": names, "numbers": numbers })),
            Told::Balance {
                taken: Some(taken),
                names,
                numbers,
            } => Some(json!({
                "balance": names,
                "numbers": numbers,
                "taken": balance_kind(&taken.kind),
                "about": about(system, &taken.kind),
                "bodies": taken.bodies,
                "removed": taken.removed,
            })),
            Told::Stage { first, together } => Some(json!({
                "stage": {
                    "balances": together,
                    "first": balance_kind(&first.kind),
                    "about": about(system, &first.kind),
                    "bodies": first.bodies,
                    "unknowns_removed": first.removed.len(),
                    "removed": first.removed,
                }
            })),
            Told::Given { text } => Some(json!({ "given": text })),
            Told::Grip { noun } => Some(json!({ "contact": noun })),
            Told::Compared { text } => Some(json!({ "compared": text })),
            Told::Trial { name, value } => Some(json!({ "by_trial": format!("{name} = {value}") })),
            Told::Centre { noun, .. } => Some(json!({ "centre_of_mass": noun })),
            Told::Piece { noun, hole } => Some(json!({ "piece": noun, "hole": hole })),
            Told::Three(names) => {
                let names: Vec<String> = names.into_iter().map(|(name, _)| name).collect();
                Some(json!({ "three_forces": names }))
            }
            Told::Meeting { open, .. } => Some(json!({ "meeting": open })),
            Told::Acts { force, sense } => Some(json!({ "acts": force, "way": way_word(sense) })),
            Told::Angle { opposite, text } => Some(json!({ "angle": text, "opposite": opposite })),
            Told::Whole
            | Told::Condition(_)
            | Told::Resultant { .. }
            | Told::Angles
            | Told::Sines
            | Told::Cosines
            | Told::Parts
            | Told::Asked
            | Told::Results => None,
        })
        .collect()
}

/// How a balance is taken, in one word.
fn balance_kind(kind: &Kind) -> &'static str {
    match kind {
        Kind::Moments(_) => "moments",
        Kind::Forces(Axis::Horizontal) => "horizontal",
        Kind::Forces(Axis::Vertical) => "vertical",
        Kind::Tilted { across: true, .. } => "across",
        Kind::Tilted { across: false, .. } => "along",
    }
}

/// The point about which moments are taken, where something that acts there or a place of a body
/// names it.
fn about(system: &System, kind: &Kind) -> Option<String> {
    match kind {
        Kind::Moments(spot) => spot_name(system, spot),
        Kind::Forces(_) | Kind::Tilted { .. } => None,
    }
}

/// Which way something acts, in one word; of what slants its two sides.
fn way_word(sense: Sense) -> &'static str {
    match sense {
        Sense::Right => "right",
        Sense::Left => "left",
        Sense::Up => "up",
        Sense::Down => "down",
        Sense::Anticlockwise => "anticlockwise",
        Sense::Clockwise => "clockwise",
        Sense::Reverse => "reverse",
        Sense::Slanted { above, right } => match (above, right) {
            (true, true) => "up-right",
            (true, false) => "up-left",
            (false, true) => "down-right",
            (false, false) => "down-left",
        },
    }
}

/// Laminae that nothing holds: the working of their centres of mass.
pub(super) fn centres(system: &System, values: &[f64], working: &Working) -> String {
    let parts = system.parts();
    let centres: Vec<Value> = system
        .acts()
        .iter()
        .filter_map(|act| {
            let at = system.point(&act.on.first()?.at, values);
            Some(json!({ "symbol": act.symbol.as_str(), "what": act.noun, "x": at.x, "y": at.y, "unit": "m" }))
        })
        .collect();
    let whole = json!({
        "version": VERSION,
        "title": parts.title,
        "statement": parts.statement,
        "centres_of_mass": centres,
        "working": working_lines(system, values, working),
        "caution": parts.caution,
    });
    format!("{whole:#}\n")
}

/// Lines with the thoughts that may lie behind them.
pub(super) fn diagnosed(code: Option<&str>, lines: &[(&String, &Ranked)]) -> String {
    let told = |(typed, ranked): &(&String, &Ranked)| {
        let thoughts: Vec<Value> = ranked.thoughts.iter().map(thought).collect();
        let speaks = |(value, places): &(String, Vec<usize>)| {
            let of: Vec<&str> = places
                .iter()
                .filter_map(|at| ranked.thoughts.get(*at))
                .map(|thought| thought.id.as_str())
                .collect();
            json!({ "value": value, "speaks_for": of })
        };
        let ask = ranked.ask.as_ref().map(|ask| {
            let values: Vec<Value> = ask.speaks.iter().map(speaks).collect();
            json!({ "question": ask.question.to_string(), "values": values })
        });
        json!({
            "line": ranked.line,
            "typed": typed,
            "step": ranked.step.0,
            "meaning": ranked.step.1,
            "truth": ranked.truth,
            "verdict": ranked.verdict,
            "said": ranked.said.to_string(),
            "thoughts": thoughts,
            "together": ranked.together,
            "another_thing": ranked.other,
            "ask": ask,
        })
    };
    let lines: Vec<Value> = lines.iter().map(told).collect();
    let whole = json!({ "version": VERSION, "code": code, "lines": lines });
    format!("{whole:#}\n")
}

fn thought(thought: &Thought) -> Value {
    let formulas = |formulas: &Formulas| {
        json!({
            "names": formulas.names,
            "numbers": formulas.numbers,
        })
    };
    let (speaks, lines) = match &thought.speaks {
        Speaks::Form => ("form", None),
        Speaks::Ratio => ("ratio", None),
        Speaks::Unit => ("unit", None),
        Speaks::Sum => ("sum", None),
        Speaks::OwnLines(lines) => ("own-lines", Some(lines)),
        Speaks::Value => ("value", None),
    };
    json!({
        "mistake": thought.id,
        "family": thought.family,
        "name": thought.name,
        "of": thought.of,
        "made_at": thought.made_at.as_ref().map(|(id, _)| id),
        "voice": if thought.flat { "flat" } else { "perhaps" },
        "speaks": speaks,
        "own_lines": lines,
        "share": thought.share,
        "wrong": thought.formulas.as_ref().map(|(wrong, _)| formulas(wrong)),
        "right": thought.formulas.as_ref().map(|(_, right)| formulas(right)),
        "gives": thought.gives,
        "alike": thought.alike.iter().map(|(id, _)| *id).collect::<Vec<_>>(),
    })
}

/// A problem that has no solution.
pub(super) fn refused(code: &str, message: &str) -> String {
    json!({ "version": VERSION, "error": { "code": code, "message": message } }).to_string()
}

/// A file with faults.
pub(super) fn faulty(faults: &[Fault]) -> String {
    let faults: Vec<Value> = faults
        .iter()
        .map(|fault| {
            json!({
                "code": fault.kind.code(),
                "line": fault.line,
                "column": fault.column,
                "path": fault.path,
                "message": fault.kind.to_string(),
            })
        })
        .collect();
    json!({ "version": VERSION, "faults": faults }).to_string()
}

fn steps(found: &Found, key: &Key, words: &Words) -> Vec<Value> {
    let problem = &found.problem;
    let sampling = Sampling::of(problem);
    let pins = Pins::new();
    key.steps
        .iter()
        .map(|step| {
            let written = board::written(problem, key, &sampling, step.id);
            let value = key
                .value(step.id, sampling.own(), &pins)
                .filter(|_| key.balance(step.id).is_none());
            let shown = if step.dimension == Dimension::ANGLE {
                value.map(f64::to_degrees)
            } else {
                value
            };
            json!({
                "id": step_word(problem, step.id),
                "kind": kind_word(step.id),
                "symbol": step.symbol.as_str(),
                "meaning": board::title(words, problem, step.id),
                "formula": written.as_ref().map(|written| &written.names),
                "numbers": written.as_ref().map(|written| &written.numbers),
                "value": shown,
                "unit": value.and_then(|_| unit_for(step.dimension)).map(|unit| unit.symbol),
                "asked": step.asked,
            })
        })
        .collect()
}
