//! What a learner who works as the key does types at a step.

use leverwright::key::{
    Pins, Rule, Sample, Sampling, StepId, Teller, balance_names, balance_numbers, formula_names,
    formula_numbers,
};
use leverwright::session::Session;
use leverwright::units::{Dimension, figures_text};

/// The printed numbers.
pub(crate) fn own(session: &Session) -> Sample {
    session.sampling().own().clone()
}

/// A value with three or more figures and its unit.
pub(crate) fn value_typed(session: &Session, step: StepId, value: f64) -> String {
    let dimension = session.key().step(step).unwrap().dimension;
    match dimension {
        Dimension::ANGLE => format!("{}°", figures_text(value.to_degrees(), 4)),
        _ => {
            let unit = leverwright::units::unit_for(dimension).map_or("", |unit| unit.symbol);
            format!("{} {unit}", figures_text(value, 4))
        }
    }
}

/// The formula or balance in names; the value where there is no formula.
pub(crate) fn in_names(session: &Session, step: StepId) -> String {
    let key = session.key();
    if let Some(balance) = key.balance(step) {
        return balance_names(session.problem(), key, balance);
    }
    match key.formula(step) {
        Some(formula) => formula_names(session.problem(), key, &formula),
        None => values(session, step),
    }
}

/// The formula or balance in numbers, the open unknowns as letters.
pub(crate) fn in_numbers(session: &Session, step: StepId) -> String {
    let key = session.key();
    let sampling: &Sampling = session.sampling();
    let rank = key.rank(step).unwrap();
    let later = key.steps.iter().skip(rank + 1);
    let named: Vec<StepId> = later
        .filter(|one| matches!(one.rule, Rule::Stage(_)))
        .map(|one| one.id)
        .collect();
    let pins = Pins::new();
    let teller = Teller {
        problem: session.problem(),
        key,
        sample: sampling.own(),
        pins: &pins,
        figures: 4,
        typed: false,
        named: &named,
    };
    if let Some(balance) = key.balance(step) {
        return balance_numbers(&teller, balance);
    }
    match key.formula(step) {
        Some(formula) => formula_numbers(&teller, &formula),
        None => values(session, step),
    }
}

/// The value; of what is made of an unknown, and of balances, the form in numbers.
pub(crate) fn values(session: &Session, step: StepId) -> String {
    let key = session.key();
    let open = key.open_in(step);
    let later = |one: &StepId| key.rank(*one) > key.rank(step);
    if key.balance(step).is_some() || open.iter().any(later) {
        return in_numbers(session, step);
    }
    let value = key.value(step, session.sampling().own(), &Pins::new());
    value_typed(session, step, value.unwrap())
}
