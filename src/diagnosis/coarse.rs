//! Numbers on the way that were rounded to two figures: the right way, and a value that is near.

use crate::judge::{Board, Typed};
use crate::key::{Formula, Part, Pins, Role, StepId};
use crate::units::to_figures;

/// The pseudo-count of rounding to two figures on the way, beside the priors of the mistakes
/// (common practice, no source).
const ROUNDED: f64 = 4.0;
/// Figures to which numbers are rounded too hard.
const FIGURES: u8 = 2;
/// A number is no further than this share, beside half its last place, from what one rounding gives.
const NEAR: f64 = 0.0005;
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

/// The one quantity that, rounded to two figures on the way, gives this number where the right one
/// does not: its step, and its value as it was taken and in full, SI.
pub fn rounded_on_the_way(
    board: &Board<'_>,
    target: StepId,
    number: Typed,
) -> Option<(StepId, f64, f64)> {
    let sample = board.sampling.own();
    let right = board.right(target)?[0];
    let off = |value: f64| (value.abs() - number.value.abs()).abs();
    let near = |value: f64| off(value) <= 0.5 * number.written.last_place + NEAR * value.abs();
    let mut best: Option<(f64, (StepId, f64, f64))> = None;
    for (step, full) in on_the_way(board, target) {
        let taken = to_figures(full, FIGURES);
        let value = board
            .key
            .value(target, sample, &Pins::from([(step, taken)]))?;
        let nearest = best.is_none_or(|(least, _)| off(value) < least);
        if near(value) && !near(right) && nearest {
            best = Some((off(value), (step, taken, full)));
        }
    }
    best.map(|(_, found)| found)
}

/// The weights, parts and forces before a step, each with its value in full.
fn on_the_way<'a>(
    board: &'a Board<'_>,
    target: StepId,
) -> impl Iterator<Item = (StepId, f64)> + 'a {
    let before = move |id: &StepId| board.key.rank(*id) < board.key.rank(target);
    let steps = board.key.steps.iter().map(|step| step.id);
    let carried = steps.take_while(before).filter(|id| {
        matches!(
            id,
            StepId::Weight(_) | StepId::Across(_) | StepId::PartOf(..) | StepId::Pull(_)
        )
    });
    carried.filter_map(|id| Some((id, board.right(id)?[0])))
}

/// How far a step's value moves when each quantity before it, and each sine and cosine, is rounded
/// to two figures.
fn reach(board: &Board<'_>, target: StepId, right: f64) -> f64 {
    let sample = board.sampling.own();
    let unknown = board.unknown();
    let mut sum = 0.0;
    for (id, full) in on_the_way(board, target) {
        // A component of the open unknown is no number yet: its ratio is rounded, not it.
        let open = unknown.is_some_and(|unknown| {
            board.key.rank(target) <= board.key.rank(unknown)
                && matches!(id, StepId::Across(force) if StepId::Pull(force) == unknown)
        });
        let share = ratio(board, id).map_or(0.0, rounding);
        if open {
            sum += share * right.abs();
            continue;
        }
        for moved in [to_figures(full, FIGURES), full * (1.0 + share)] {
            let pins = Pins::from([(id, moved)]);
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
