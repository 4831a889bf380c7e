//! Values with another acceleration of free fall than the problem's.

use super::board::{Board, Own};
use super::grade::{Typed, unknown_pins};
use crate::key::{Sample, StepId};

/// Accelerations that differ by no more than this share are one to three figures.
const NO_OTHER: f64 = 0.001;

/// The value of a step with another acceleration of free fall.
pub(super) fn with_gravity(board: &Board<'_>, id: StepId, gravity: f64) -> Option<f64> {
    let sample = Sample {
        values: board.sampling.own().values.clone(),
        gravity,
    };
    let pins = unknown_pins(board, id, &sample);
    board.key.value(id, &sample, &pins)
}

/// True if a number is the step's value with g = 10 m/s², to which many are used.
pub(super) fn takes_ten(board: &Board<'_>, id: StepId, typed: Typed) -> bool {
    let right = board.right(id).map_or(0.0, |right| right[0]);
    with_gravity(board, id, 10.0)
        .is_some_and(|value| typed.is(value) && !typed.is(right) && typed.written.significant >= 2)
}

/// True if a standing weight was worked with another accepted acceleration of free fall, or no
/// weight stands that could tell.
pub(super) fn uses_other_gravity(board: &Board<'_>) -> bool {
    // Forces that are given in newtons know no g.
    let general = board.key.general.is_some();
    if general && !board.key.steps.iter().any(|step| step.id.is_weight()) {
        return false;
    }
    let mut told = board.standing.iter().filter_map(|(id, own)| {
        if !id.is_weight() {
            return tells_usual(board, *id, own).then_some(false);
        }
        let right = board.right(*id)?;
        // A number that is the usual value, rounded, tells of no other g.
        if own
            .typed
            .is_some_and(|(value, written)| Typed { value, written }.is(right[0]))
        {
            return Some(false);
        }
        let own = own.typed.map_or(own.value, |(typed, _)| typed);
        let near = |gravity: f64| (own - right[0] * gravity / board.problem.gravity()).abs();
        let usual = near(board.problem.gravity());
        let accepted = board.other_gravities();
        Some(accepted.iter().any(|gravity| near(*gravity) < usual))
    });
    told.next()
        .is_none_or(|first| first || told.any(|other| other))
}

/// True for a value of another kind that is the one with the usual acceleration, and none with
/// another that is accepted.
fn tells_usual(board: &Board<'_>, id: StepId, own: &Own) -> bool {
    let Some((value, written)) = own.typed.filter(|_| own.right) else {
        return false;
    };
    let typed = Typed { value, written };
    let apart = |gravity: &f64| (gravity / board.problem.gravity() - 1.0).abs() > NO_OTHER;
    let mut others = board.other_gravities().into_iter().filter(apart);
    let is_other = |gravity: f64| {
        let other = with_gravity(board, id, gravity);
        other.is_none_or(|other| typed.is(other) || typed.is(-other))
    };
    let usual = board
        .right(id)
        .is_some_and(|right| typed.is(right[0]) || typed.is(-right[0]));
    usual && !others.any(is_other)
}
