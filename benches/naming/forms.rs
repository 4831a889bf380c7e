//! The forms in which a right line is typed.

use leverwright::key::{
    Atom, Formula, Key, Pins, Sampling, StepId, Teller, balance_names, balance_numbers,
    formula_names, formula_numbers,
};
use leverwright::problem::Problem;
use leverwright::units::{Dimension, figures_text};
use std::collections::BTreeMap;

/// The step of the unknown that the moment balance gives.
fn unknown(key: &Key) -> Option<StepId> {
    key.steps
        .iter()
        .map(|step| step.id)
        .find(|id| matches!(id, StepId::Pull(_)))
}

/// A formula or a balance in numbers, with calculated values to so many figures or pinned.
fn in_numbers(
    problem: &Problem,
    key: &Key,
    step: StepId,
    sampling: &Sampling,
    figures: u8,
    pins: &Pins,
) -> Option<String> {
    let unknown = unknown(key)?;
    let named = [unknown];
    let teller = Teller {
        problem,
        key,
        sample: sampling.own(),
        pins,
        figures,
        typed: true,
        named: if key.rank(step)? < key.rank(unknown)? {
            &named
        } else {
            &[]
        },
    };
    match key.balance(step) {
        Some(balance) => Some(balance_numbers(&teller, balance)),
        None => Some(formula_numbers(&teller, &key.formula(step)?)),
    }
}

fn in_names(problem: &Problem, key: &Key, step: StepId) -> Option<String> {
    match key.balance(step) {
        Some(balance) => Some(balance_names(problem, key, balance)),
        None => Some(formula_names(problem, key, &key.formula(step)?)),
    }
}

/// The moment balance of a key in names, each component as its force times its ratio, each angle
/// and distance as what it is made of.
pub(super) fn balance_written_out(problem: &Problem, key: &Key) -> Option<String> {
    let mut balance = key.balance(StepId::MomentSum)?.clone();
    let written_out = |part: &Formula| match part {
        Formula::Atom(Atom::Step(id @ StepId::Across(_))) => key.formula(*id),
        _ => None,
    };
    let angles = |part: &Formula| match part {
        Formula::Atom(Atom::Step(id @ (StepId::Angle(_) | StepId::Distance(_)))) => {
            key.formula(*id)
        }
        _ => None,
    };
    for term in &mut balance.terms {
        term.amount = term.amount.rewrite(&written_out).rewrite(&angles);
    }
    Some(balance_names(problem, key, &balance))
}

/// A right line as an expression or an equation, in several forms.
pub(super) fn of_expression(
    problem: &Problem,
    key: &Key,
    step: StepId,
    sampling: &Sampling,
) -> Vec<String> {
    let mut lines: Vec<String> = [3, 4, 5]
        .into_iter()
        .filter_map(|figures| in_numbers(problem, key, step, sampling, figures, &Pins::new()))
        .collect();
    lines.extend(in_numbers(
        problem,
        key,
        step,
        sampling,
        4,
        &carried(key, step, sampling),
    ));
    lines.extend(in_names(problem, key, step));
    let base = lines.clone();
    for line in &base {
        lines.push(complementary(line));
        lines.push(other_order(line));
        if let Some((left, right)) = line.split_once('=') {
            let (left, right) = (left.trim(), right.trim());
            lines.push(format!("{right} = {left}"));
            lines.push(format!("{left} - {} = 0", negated(right)));
            lines.push(format!("{right} - {} = 0", negated(left)));
            lines.push(format!("0 = {left} - ({right})"));
            lines.push(format!("-({left}) + {right} = 0"));
        } else if let Some(symbol) = key.step(step).map(|step| step.symbol.typed()) {
            lines.push(format!("{symbol} = {line}"));
        }
    }
    lines.sort();
    lines.dedup();
    lines
}

/// The bracket of a sum, with its signs turned by taking it away: `a + b` becomes `a - b`.
fn negated(side: &str) -> String {
    side.replace(" + ", " - ")
}

/// sin(x) as cos(90-x) and the other way about.
fn complementary(line: &str) -> String {
    let mut text = String::new();
    let mut rest = line;
    while let Some((at, to)) = rest
        .find("sin(")
        .map(|at| (at, "cos"))
        .into_iter()
        .chain(rest.find("cos(").map(|at| (at, "sin")))
        .min()
    {
        let inside = &rest[at + 4..];
        let Some(end) = closing(inside) else { break };
        text.push_str(&rest[..at]);
        text.push_str(&format!("{to}(90-({}))", &inside[..end]));
        rest = &inside[end + 1..];
    }
    text + rest
}

/// Where the bracket that is open before `text` closes.
fn closing(text: &str) -> Option<usize> {
    let mut depth = 1;
    text.char_indices().find_map(|(at, sign)| {
        match sign {
            '(' => depth += 1,
            ')' => depth -= 1,
            _ => {}
        }
        (depth == 0).then_some(at)
    })
}

/// The factors of every product in the other order.
fn other_order(line: &str) -> String {
    let reversed = |term: &str, sign: char| {
        // Only plain products: a quotient keeps its order.
        if term.contains('/') || term.contains(' ') {
            return term.to_owned();
        }
        let factors: Vec<&str> = term.split(sign).collect();
        let whole = factors
            .iter()
            .all(|factor| factor.matches('(').count() == factor.matches(')').count());
        if !whole || term.starts_with('-') {
            return term.to_owned();
        }
        factors
            .into_iter()
            .rev()
            .collect::<Vec<_>>()
            .join(&sign.to_string())
    };
    let sign = if line.contains('·') { '·' } else { '*' };
    line.split(" = ")
        .map(|side| {
            side.split(" + ")
                .map(|term| reversed(term, sign))
                .collect::<Vec<_>>()
                .join(" + ")
        })
        .collect::<Vec<_>>()
        .join(" = ")
}

/// Every calculated quantity, worked out from quantities that were themselves rounded to three
/// figures on the way.
fn carried(key: &Key, step: StepId, sampling: &Sampling) -> Pins {
    let mut pins = Pins::new();
    for earlier in key.steps.iter().take_while(|earlier| earlier.id != step) {
        if matches!(earlier.id, StepId::Weight(_) | StepId::Across(_) | StepId::Pull(_) | StepId::PartOf(..) | StepId::Reaction(..))
            && let Some(value) = value_of(key, earlier.id, sampling, &pins)
            // A multiple of the unknown is no number before the unknown is found.
            && !before_unknown(key, earlier.id, step)
        {
            pins.insert(earlier.id, rounded(value, 3));
        }
    }
    pins
}

/// True for a multiple of the unknown where the unknown is still to be found.
fn before_unknown(key: &Key, id: StepId, step: StepId) -> bool {
    let Some(unknown) = unknown(key) else {
        return false;
    };
    let refers = key
        .formula(id)
        .is_some_and(|formula| formula.inputs().contains(&unknown));
    refers && key.rank(step) <= key.rank(unknown)
}

fn value_of(key: &Key, step: StepId, sampling: &Sampling, pins: &Pins) -> Option<f64> {
    key.value(step, sampling.own(), pins)
}

fn rounded(value: f64, figures: u8) -> f64 {
    figures_text(value, figures).parse().unwrap_or(value)
}

/// Right bare numbers, to several figures, in full or carried in three figures, with and without
/// unit.
pub(super) fn of_value(
    problem: &Problem,
    key: &Key,
    step: StepId,
    sampling: &Sampling,
) -> Vec<(StepId, String)> {
    let _ = problem;
    let Some(unknown) = unknown(key) else {
        return Vec::new();
    };
    let refers = step == StepId::MomentSum
        || key.rank(step) < key.rank(unknown)
            && key
                .formula(step)
                .is_some_and(|formula| formula.inputs().contains(&unknown));
    let at = if refers { unknown } else { step };
    let Some(dimension) = key.step(at).map(|step| step.dimension) else {
        return Vec::new();
    };
    if matches!(at, StepId::ForceSum(_)) {
        return Vec::new();
    }
    let full = key
        .function(key, at, sampling, &BTreeMap::new())
        .map(|samples| samples[0]);
    let chained = value_of(key, at, sampling, &carried(key, at, sampling));
    let mut lines = Vec::new();
    for value in full.into_iter().chain(chained) {
        let (shown, unit) = match dimension {
            Dimension::ANGLE => (value.to_degrees(), "deg"),
            Dimension::FORCE => (value, "N"),
            Dimension::MOMENT => (value, "N m"),
            Dimension::LENGTH => (value, "m"),
            _ => (value, ""),
        };
        for figures in [3, 4, 5] {
            let number = figures_text(shown, figures);
            lines.push((at, format!("{number} {unit}")));
            lines.push((at, number));
        }
    }
    lines.sort();
    lines.dedup();
    lines
}
