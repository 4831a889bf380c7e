//! What a learner types: the line of a mistake at the step where it shows, and the right line.
//!
//! Simulated learners, the markers' table and the tests of the judge read these lines.

use super::{Instance, Skill, unknown, value};
use crate::key::{
    Atom, Formula, Key, Pins, Sampling, StepId, Teller, agree, balance_numbers, formula_numbers,
};
use crate::problem::Problem;
use crate::units::{Dimension, figures_text};

/// Figures of values that are carried on.
const CARRIED: u8 = 4;
/// Figures of a bare number.
const STATED: u8 = 3;

/// A line as typed on a plain keyboard.
#[derive(Clone, Debug, PartialEq)]
pub struct TypedLine {
    /// The step that it is about.
    pub step: StepId,
    /// The line: a formula or a balance in numbers.
    pub expression: String,
    /// The bare value to three figures, in newtons, newton metres, metres or degrees, and the
    /// step that a bare number answers: the unknown itself for what comes before it and refers
    /// to it. `None` where that step has the right value all the same.
    pub number: Option<(String, StepId)>,
}

/// The line of a learner who makes this mistake, at the step where it shows.
pub fn typed_line(
    problem: &Problem,
    right: &Key,
    instance: &Instance,
    sampling: &Sampling,
) -> Option<TypedLine> {
    // The setting of a calculator cannot be seen in a formula, only in its value.
    if instance.mistake.skill == Skill::Numbers {
        return typed_value(problem, right, instance, sampling);
    }
    let step = instance.shows_at;
    let expression = written(problem, &instance.key, right, step, sampling)?;
    Some(TypedLine {
        step,
        expression,
        number: bare(&instance.key, right, step, sampling)
            .filter(|(_, at)| differs(&instance.key, right, *at, sampling)),
    })
}

/// The right line of a step.
pub fn right_line(
    problem: &Problem,
    right: &Key,
    step: StepId,
    sampling: &Sampling,
) -> Option<TypedLine> {
    Some(TypedLine {
        step,
        expression: written(problem, right, right, step, sampling)?,
        number: bare(right, right, step, sampling),
    })
}

/// The right formula with the value that a wrong calculator shows for it.
fn typed_value(
    problem: &Problem,
    right: &Key,
    instance: &Instance,
    sampling: &Sampling,
) -> Option<TypedLine> {
    let step = number_step(right, instance.shows_at)?;
    let (number, at) = bare(&instance.key, right, step, sampling)?;
    let formula = written(problem, right, right, step, sampling)?;
    Some(TypedLine {
        step,
        expression: format!("{formula} = {number}"),
        number: differs(&instance.key, right, at, sampling).then_some((number, at)),
    })
}

fn written(
    problem: &Problem,
    key: &Key,
    right: &Key,
    step: StepId,
    sampling: &Sampling,
) -> Option<String> {
    let unknown = unknown(right)?;
    let named = [unknown];
    let pins = Pins::new();
    let before = right.rank(step)? < right.rank(unknown)?;
    let teller = Teller {
        problem,
        key,
        sample: sampling.own(),
        pins: &pins,
        figures: CARRIED,
        typed: true,
        named: if before { &named } else { &[] },
    };
    match key.balance(step) {
        Some(balance) => Some(balance_numbers(&teller, balance)),
        None => {
            // The known moments are a sum on paper, not a name.
            let known = key.formula(StepId::KnownMoments);
            let formula = key.formula(step)?.rewrite(&|part| match part {
                Formula::Atom(Atom::Step(StepId::KnownMoments)) => known.clone(),
                _ => None,
            });
            Some(formula_numbers(&teller, &formula))
        }
    }
}

/// The step that a bare number answers for this one: the unknown itself where the step comes
/// before the unknown and refers to it.
fn number_step(right: &Key, step: StepId) -> Option<StepId> {
    let unknown = unknown(right)?;
    let refers = match step {
        StepId::MomentSum => true,
        step => right
            .formula(step)
            .is_some_and(|formula| formula.inputs().contains(&unknown)),
    };
    let before = right.rank(step)? < right.rank(unknown)?;
    Some(if before && refers { unknown } else { step })
}

fn bare(key: &Key, right: &Key, step: StepId, sampling: &Sampling) -> Option<(String, StepId)> {
    let at = number_step(right, step)?;
    let number = value(key, right, at, sampling)?;
    let shown = match right.step(at)?.dimension {
        Dimension::ANGLE => number.to_degrees(),
        _ => number,
    };
    Some((figures_text(shown, STATED), at))
}

fn differs(key: &Key, right: &Key, step: StepId, sampling: &Sampling) -> bool {
    let function = |key: &Key| super::function(key, right, step, sampling, &Default::default());
    match (function(key), function(right)) {
        (Some(wrong), Some(right)) => !agree(&wrong, &right),
        _ => false,
    }
}
