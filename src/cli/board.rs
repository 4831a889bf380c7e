//! Steps as they stand on the board: their titles, and their formulas in names and in numbers.

use crate::hint::step_title;
use crate::key::{
    Axis, Key, Part, Pins, Sampling, StepId, Teller, balance_names, balance_numbers, formula_names,
    formula_numbers,
};
use crate::problem::Problem;
use crate::text::Words;

/// A step's formula or balance.
pub(super) struct Written {
    /// In names: `Wb·sin α`.
    pub(super) names: String,
    /// In numbers, what the step looks for as a name: `617 N·sin 35.0°`.
    pub(super) numbers: String,
}

/// What a step is, in words.
pub(super) fn title(words: &Words, problem: &Problem, id: StepId) -> String {
    match id {
        StepId::ForceSum(Axis::Horizontal) => words.word("solve.sum.x"),
        StepId::ForceSum(Axis::Vertical) => words.word("solve.sum.y"),
        _ => step_title(words, problem, id),
    }
}

/// A step's formula or balance; `None` for what is said in words.
pub(super) fn written(
    problem: &Problem,
    key: &Key,
    sampling: &Sampling,
    id: StepId,
) -> Option<Written> {
    let (pins, named) = (Pins::new(), looked_for(key, id));
    let teller = Teller {
        problem,
        key,
        sample: sampling.own(),
        pins: &pins,
        figures: problem.figures(),
        typed: false,
        named: &named,
    };
    if let Some(balance) = key.balance(id) {
        return Some(Written {
            names: balance_names(problem, key, balance),
            numbers: balance_numbers(&teller, balance),
        });
    }
    let formula = key.formula(id)?;
    Some(Written {
        names: formula_names(problem, key, &formula),
        numbers: formula_numbers(&teller, &formula),
    })
}

/// What has no value yet at a step: the pull as long as it is not found, and in a balance of
/// forces the part that is solved from it.
fn looked_for(key: &Key, id: StepId) -> Vec<StepId> {
    let before = |other: StepId| key.rank(id) < key.rank(other);
    let ids = key.steps.iter().map(|step| step.id);
    ids.filter(|other| match (other, id) {
        (StepId::Pull(_), _) => before(*other),
        (StepId::Reaction(_, Part::Along(part)), StepId::ForceSum(axis)) => *part == axis,
        _ => false,
    })
    .collect()
}
