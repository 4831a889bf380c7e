//! Numbers on the way that were rounded to two figures: the right way, and a value that is near.

use crate::judge::{Board, Typed};
use crate::key::{Formula, Part, Pins, Role, StepId};
use crate::units::to_figures;

/// The pseudo-count of rounding to two figures on the way, beside the priors of the mistakes
/// (common practice, no source).
const ROUNDED: f64 = 4.0;
/// Figures to which numbers are rounded too hard.
const FIGURES: u8 = 2;
/// A value that is further off than this share of it is not put down to rounding.
const MOST: f64 = 0.025;

/// The weight of the thought that a number is the step's value, with what it rests on rounded to
/// two figures.
pub(super) fn weight(board: &Board<'_>, target: StepId, number: Typed) -> f64 {
    let result = matches!(
        target,
        StepId::Pull(_) | StepId::Reaction(_, Part::Along(_) | Part::Size)
    );
    let Some(right) = board.right(target).map(|right| right[0]) else {
        return 0.0;
    };
    let off = (number.value.abs() - right.abs()).abs();
    let reach = reach(board, target, right);
    if !result || number.written.significant <= 2 || off > reach.min(MOST * right.abs()) {
        return 0.0;
    }
    let width = (number.written.last_place / right.abs()).max(0.002);
    ROUNDED * width * right.abs() / (2.0 * reach)
}

/// How far a step's value moves when each quantity before it, and each sine and cosine, is rounded
/// to two figures.
fn reach(board: &Board<'_>, target: StepId, right: f64) -> f64 {
    let sample = board.sampling.own();
    let unknown = board.unknown();
    let mut sum = 0.0;
    for step in &board.key.steps {
        if board.key.rank(step.id) >= board.key.rank(target) {
            break;
        }
        if !matches!(
            step.id,
            StepId::Weight(_) | StepId::Across(_) | StepId::PartOf(..) | StepId::Pull(_)
        ) {
            continue;
        }
        let Some(full) = board.right(step.id).map(|function| function[0]) else {
            continue;
        };
        // A component of the open unknown is no number yet: its ratio is rounded, not it.
        let open = unknown.is_some_and(|unknown| {
            board.key.rank(target) <= board.key.rank(unknown)
                && matches!(step.id, StepId::Across(force) if StepId::Pull(force) == unknown)
        });
        let share = ratio(board, step.id).map_or(0.0, rounding);
        if open {
            sum += share * right.abs();
            continue;
        }
        for moved in [to_figures(full, FIGURES), full * (1.0 + share)] {
            let pins = Pins::from([(step.id, moved)]);
            let value = board.key.value(target, sample, &pins).unwrap_or(right);
            sum += (value - right).abs();
        }
    }
    // The sum of the known moments is carried too.
    if Some(target) == unknown
        && let Some(moments) = board.right(StepId::KnownMoments)
    {
        sum += rounding(moments[0]) * right.abs();
    }
    sum
}

/// By what share a number moves when it is rounded to two figures.
fn rounding(value: f64) -> f64 {
    if value == 0.0 {
        return 0.0;
    }
    (to_figures(value, FIGURES) / value - 1.0).abs()
}

/// The sine or cosine in a component's formula.
fn ratio(board: &Board<'_>, id: StepId) -> Option<f64> {
    fn tagged(formula: &Formula) -> Option<&Formula> {
        match formula {
            Formula::Tagged(Role::Ratio(_) | Role::PartRatio(_), inner) => Some(inner),
            other => other.children().into_iter().find_map(tagged),
        }
    }
    let formula = board.key.formula(id)?;
    let sample = board.sampling.own();
    board.key.evaluate(tagged(&formula)?, sample, &Pins::new())
}
