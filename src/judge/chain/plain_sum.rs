//! A sum of forces or moments that are known, as it may come out: each term rounded, and with each
//! accepted acceleration of free fall. What the terms lose is all that their sum does.

use super::super::board::Board;
use super::super::by_terms::terms_of;
use super::super::gravity::with_gravity;
use super::super::lift::plain_value;
use super::super::names::NameRole;
use super::super::room::{Exact, lost_in_figures, room_beside};
use super::super::stock::Stock;
use crate::reading::{Node, Tree};
use crate::units::{Dimension, to_figures};

/// Figures to which the parts of a sum are commonly rounded.
const FIGURES: u8 = 3;

/// A value, and how far it may be off.
pub(super) type About = (f64, f64);

/// Where the value of a sum of names and numbers alone may lie; `None` for anything else. It is
/// `coarse` where it stands beside a number of three figures: then each sum on the way may have been
/// rounded, too.
pub(super) fn values(
    board: &Board<'_>,
    stock: &Stock,
    (tree, value): (&Tree, f64),
    (exact, coarse): (Exact<'_>, bool),
) -> Option<Vec<About>> {
    let terms = terms_of(&[tree]);
    let leaf = |tree: &Tree| matches!(tree.node, Node::Literal(_) | Node::Name(_));
    if terms.len() < 2 || !terms.iter().all(|(_, term)| leaf(term)) {
        return None;
    }
    let (mut whole, mut off, mut stepwise) = (0.0, 0.0, 0.0);
    let mut named = false;
    for (sign, term) in &terms {
        let found = plain_value(board, term).ok()?;
        let force = matches!(found.dimension, Dimension::FORCE | Dimension::MOMENT);
        if !(found.bare || force) {
            return None;
        }
        named |= force;
        let kept = room_beside(board, stock, (term, Dimension::NUMBER), 1, exact);
        off += match is_exact_name(board, term) {
            true => kept,
            false => kept.max(lost_in_figures(found.number)),
        };
        whole += sign * found.number;
        stepwise = to_figures(stepwise + sign * to_figures(found.number, FIGURES), FIGURES);
    }
    // A sum of bare numbers may be one of lengths or masses.
    if !named && !terms.iter().all(|(_, term)| stock.may_be_force(term)) {
        return None;
    }
    let turned = if whole * value < 0.0 { -1.0 } else { 1.0 };
    let mut found = vec![(value, off)];
    let others = board.other_gravities().into_iter();
    found.extend(others.filter_map(|gravity| {
        let moved = terms
            .iter()
            .map(|(sign, term)| sign * with(board, term, gravity));
        let apart = moved.sum::<f64>();
        (apart != 0.0).then_some((value + turned * apart, off))
    }));
    if coarse && terms.len() > 2 {
        found.push((turned * stepwise, 0.0));
    }
    Some(found)
}

/// How much more a name that is not found yet is with another acceleration of free fall.
fn with(board: &Board<'_>, term: &Tree, gravity: f64) -> f64 {
    let Node::Name(id) = term.node else {
        return 0.0;
    };
    let Some(NameRole::Step(step)) = board.names.role(id) else {
        return 0.0;
    };
    let (Ok(here), Some(right)) = (plain_value(board, term), board.right(step)) else {
        return 0.0;
    };
    if board.standing.contains_key(&step) || right[0] == 0.0 {
        return 0.0;
    }
    with_gravity(board, step, gravity).map_or(0.0, |other| here.number * (other / right[0] - 1.0))
}

/// True for a number, and for a name whose value was not rounded, or whose rounding is hers.
fn is_exact_name(board: &Board<'_>, term: &Tree) -> bool {
    match term.node {
        Node::Name(id) => !matches!(board.names.role(id), Some(NameRole::Step(_))),
        _ => true,
    }
}
