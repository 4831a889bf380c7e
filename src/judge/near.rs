//! Whether an equation whose form does not prove it gives its unknown all the same, within what was
//! rounded in it.

use super::board::Board;
use super::by_terms;
use super::equation::open_in;
use super::grade::{Grade, Typed, grade};
use super::identity::{free_parts, near_root};
use super::lift::plain_leaf;
use super::names::{NameRole, names_step};
use super::root::root;
use super::stock::Stock;
use crate::key::{Nature, StepId};
use crate::reading::{Leaf, Literal, Tree, Value};
use crate::units::{Dimension, Written};

/// However rounded the numbers of a balance are, its root counts to this share of it.
pub(super) const MOST_LOOSE: f64 = 0.006;

/// How far, as a share, the unknown of a balance of rounded numbers may come out wrong where its
/// terms nearly cancel.
const CLOSE: f64 = 0.1;

/// True if the unknown comes out right, or the balance that `target` is holds at the right values,
/// as far as the figures of the line go.
pub(super) fn is_near(
    board: &Board<'_>,
    stock: &Stock,
    (target, unknown): (StepId, StepId),
    sides: &[&Tree],
    plain_root: Option<f64>,
) -> bool {
    // Where a value is asked, a line with another unknown in it is a balance all the same.
    let beside = || open_in(board, sides).iter().any(|id| *id != unknown);
    let balance = target.is_general() && (target.is_balance() || beside());
    let (measured, its_root) = measured_by(board, unknown, sides, plain_root);
    comes_near(board, stock, measured, sides, its_root)
        || balance
            && (is_close(board, measured, its_root) || is_beside_size(board, sides, plain_root))
            && by_terms::nearly(board, stock, sides)
}

/// The unknown that shows whether a line is near, and its root: that of the line, or where it has
/// none, as Ax in `3.5(686 − Ay) = 588 + 490d` at a limit of A, the first named that has one.
fn measured_by(
    board: &Board<'_>,
    unknown: StepId,
    sides: &[&Tree],
    its_root: Option<f64>,
) -> (StepId, Option<f64>) {
    let mut leaf = |leaf: Leaf<'_>| plain_leaf(board, leaf);
    let mut with_root = |id: StepId| root(board, id, sides, 0, &mut leaf).map(|at| (id, Some(at)));
    let named = |id: &StepId| sides.iter().any(|side| names_step(board, *id, side));
    let elsewhere = its_root.is_none() && !named(&unknown);
    let mut others = open_in(board, sides)
        .into_iter()
        .filter(|id| elsewhere && named(id));
    others
        .find_map(&mut with_root)
        .unwrap_or((unknown, its_root))
}

/// True for a root that differs from the unknown by no more than small differences of rounded
/// numbers may.
fn is_close(board: &Board<'_>, unknown: StepId, root: Option<f64>) -> bool {
    let right = board.right(unknown).map_or(0.0, |right| right[0].abs());
    root.is_some_and(|root| (root.abs() - right).abs() <= CLOSE * right)
}

/// True for a line without a root in which the size of a force of two parts stands beside another
/// force: `A + B = 1680 N`, of which no balance speaks.
fn is_beside_size(board: &Board<'_>, sides: &[&Tree], root: Option<f64>) -> bool {
    let names = sides.iter().flat_map(|side| side.names());
    let forces = names.filter_map(|(id, _)| match board.names.role(id)? {
        NameRole::Step(step) if board.names.dimension(id) == Dimension::FORCE => Some(step),
        _ => None,
    });
    let forces: Vec<StepId> = forces.collect();
    let is_size = |step: &StepId| matches!(step, StepId::Found(Nature::Size, _));
    root.is_none() && forces.len() > 1 && forces.iter().any(is_size)
}

/// True if the unknown comes out right, within the figures of the line, with the hinge's parts
/// counted in any sense.
fn comes_near(
    board: &Board<'_>,
    stock: &Stock,
    unknown: StepId,
    sides: &[&Tree],
    plain_root: Option<f64>,
) -> bool {
    let graded = |leaf: &dyn Fn(Leaf<'_>) -> Value, at: f64| {
        let typed = loose_root(board, stock, unknown, sides, (leaf, at));
        matches!(
            grade(board, unknown, typed),
            Some(Grade::Holds | Grade::OtherGravity(_) | Grade::Rounded)
        )
    };
    let plain = |leaf: Leaf<'_>| plain_leaf(board, leaf);
    let near = plain_root.or_else(|| near_root(board, unknown, sides));
    if near.is_some_and(|root| graded(&plain, root)) {
        return true;
    }
    let mut parts = free_parts(board, sides);
    parts.retain(|part| *part != unknown);
    (1..1_usize << parts.len().min(2)).any(|flips| {
        let turned = |leaf: Leaf<'_>| {
            let step = match leaf {
                Leaf::Name(id) => board.names.role(id),
                Leaf::Literal(_) => None,
            };
            let place = parts
                .iter()
                .position(|part| step == Some(NameRole::Step(*part)));
            let mut value = plain_leaf(board, leaf);
            if place.is_some_and(|place| flips & (1 << place) != 0) {
                value.number = -value.number;
            }
            value
        };
        let found = root(board, unknown, sides, 0, &mut |leaf| turned(leaf));
        found.is_some_and(|at| graded(&turned, at))
    })
}

/// A root as a number whose last place counts for what the figures of the line leave open.
fn loose_root(
    board: &Board<'_>,
    stock: &Stock,
    unknown: StepId,
    sides: &[&Tree],
    (value_of, at): (&dyn Fn(Leaf<'_>) -> Value, f64),
) -> Typed {
    let mut typed = rounded(at);
    let moved = |index: usize, by: f64| {
        root(board, unknown, sides, 0, &mut |leaf| match leaf {
            Leaf::Literal(literal) if literal.index == index => {
                let mut value = Value::of_literal(literal);
                value.number += by;
                value
            }
            leaf => value_of(leaf),
        })
    };
    let mut loose = 0.0;
    for side in sides {
        for place in side.literals() {
            if stock.is_exact(place.literal, place.in_angle) {
                continue;
            }
            let half = 0.5 * place.literal.written.last_place;
            loose += moved(place.literal.index, half).map_or(0.0, |other| (other - at).abs());
        }
    }
    let most = MOST_LOOSE * at.abs();
    typed.written.last_place = typed.written.last_place.max((2.0 * loose).min(most));
    typed
}

/// A root as a number of four figures.
pub(super) fn rounded(root: f64) -> Typed {
    let place = 1e-3 * root.abs().max(1e-9);
    Typed {
        value: root,
        written: Written {
            significant: 4,
            last_place: place,
        },
    }
}

/// True for a whole number of one digit without a unit: it counts.
pub(super) fn is_digit(literal: &Literal) -> bool {
    literal.unit.is_none() && literal.written.last_place == 1.0 && literal.value.abs() < 10.0
}
