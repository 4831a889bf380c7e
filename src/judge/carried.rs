//! What rounding on the way may change that no step asks for: sums and factors carried to three
//! figures.

use super::board::Board;
use super::grade::{COMMON_FIGURES, Typed};
use crate::key::{Formula, Pins, StepId};
use crate::units::{Dimension, to_figures};

/// The most that what is carried in a balance may count for, as a share.
const MOST: f64 = 0.005;

/// The root of a right balance of rounded numbers is off by no more than this share.
const ROOT: f64 = 0.01;

/// True for what lies between a right value and the root of her own right balance of numbers that
/// were rounded, whichever way she counted it.
pub(super) fn reaches_her_root(
    board: &Board<'_>,
    (id, right): (StepId, f64),
    typed: Typed,
) -> bool {
    let sum = board.key.sum_of(id);
    let own = sum.and_then(|sum| board.standing.get(&sum));
    let Some(own) = own.filter(|own| own.right && !own.relation) else {
        return false;
    };
    let root = own.value.abs().copysign(right);
    let near = (root - right).abs() <= ROOT * right.abs();
    near && typed.is_between(root.min(right), root.max(right))
}

/// A value to three figures, an angle in degrees.
pub(super) fn carried(board: &Board<'_>, step: StepId, value: f64) -> f64 {
    let angle = board
        .key
        .step(step)
        .is_some_and(|step| step.dimension == Dimension::ANGLE);
    if angle {
        to_figures(value.to_degrees(), COMMON_FIGURES).to_radians()
    } else {
        to_figures(value, COMMON_FIGURES)
    }
}

/// How far a value moves when what its own sum or balance is made of is carried to three figures:
/// no step asks for that. In a lesson a `fine` value is one for which only the sum and the component
/// were.
pub(super) fn carried_sums(board: &Board<'_>, (id, right): (StepId, f64), fine: bool) -> f64 {
    if !id.is_general() && Some(id) != board.unknown() {
        return 0.0;
    }
    if id.is_general() || !fine {
        return balance_sums(board, id).unwrap_or(0.0).min(MOST) * right.abs();
    }
    let share_of = |step: StepId| board.right(step).map_or(0.0, |function| share(function[0]));
    let across = board.unknown().and_then(StepId::force).map(StepId::Across);
    (share_of(StepId::KnownMoments) + across.map_or(0.0, share_of)) * right.abs()
}

/// What is lost of a value, as a share, when it is carried to three figures.
fn share(full: f64) -> f64 {
    if full == 0.0 {
        return 0.0;
    }
    (to_figures(full, COMMON_FIGURES) / full - 1.0).abs()
}

/// The share by which an unknown that one balance gives moves when each known term of it, their
/// sum and the unknown's factor are carried to three figures.
fn balance_sums(board: &Board<'_>, id: StepId) -> Option<f64> {
    let (key, sample) = (board.key, board.sampling.own());
    let worked = key.balance(key.sum_of(id)?)?;
    let amount = |formula: &Formula| key.evaluate(formula, sample, &Pins::new());
    let value = key.value(id, sample, &Pins::new())?;
    let (mut known, mut moved, mut own) = (0.0, 0.0, 0.0);
    for term in &worked.terms {
        let size = amount(&term.amount)?;
        if key.holds(&term.amount, id) {
            own += term.sign * size;
        } else {
            known += term.sign * size;
            moved += share(size) * size.abs();
        }
    }
    let (whole, factor) = (own.abs(), share(own / value));
    (whole > 0.0).then(|| moved / whole + share(known) + factor)
}

/// The order in which the inputs of a value are taken: each after those before it, a multiple of an
/// unknown after the unknown.
pub(super) fn in_order(board: &Board<'_>, step: StepId) -> (Option<usize>, bool, Option<usize>) {
    let rank = board.key.rank(step);
    let open = match step.is_general() {
        true => board.key.open_in(step),
        false => Vec::new(),
    };
    let unknowns = open.iter().map(|unknown| board.key.rank(*unknown));
    let last = unknowns.chain([rank]).max().flatten();
    (last, !open.is_empty(), rank)
}
