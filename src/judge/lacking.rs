//! Balances in which something does not stand: the distance of the unknown's term, the unknown
//! itself, or the hinge's part.

use super::board::Board;
use super::expression::judge;
use super::lift::plain_value;
use super::names::NameRole;
use super::stock::Stock;
use super::{Judgement, Truth};
use crate::key::{Samples, StepId, agree};
use crate::problem::GivenId;
use crate::reading::{Function, Node, Operator, Tree};
use crate::units::Dimension;

/// What is no moment beside the known ones is smaller than this share of their sum.
const NO_MOMENT: f64 = 0.1;

/// What a balance lacks.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Lacking {
    /// The distance in the unknown's term.
    Distance,
    /// The unknown.
    Unknown,
    /// The part of the hinge's force that is asked, in its balance of forces.
    Reaction,
}

/// True if the known moments are set against the unknown times a ratio alone: `… = T sin 80`.
/// `roots` are what the unknown would be.
pub(super) fn lacks_distance(
    board: &Board<'_>,
    stock: &Stock,
    sides: &[&Tree],
    roots: &[Samples],
) -> bool {
    let known = board.accepted(StepId::KnownMoments);
    // Of an angle that is none of the problem the ratio is what was typed.
    let typed = ratios(board, sides);
    let distances = own_distances(board, sides);
    let is_ratio = |factor: &Samples| {
        // A distance of her own stands there, whatever it is.
        let over = |own: &Samples| -> Samples { std::array::from_fn(|at| factor[at] / own[at]) };
        let is_typed = |rest: Samples| typed.iter().any(|ratio| agree(&rest, &[*ratio; 4]));
        let stands = |own: &Samples| agree(factor, own) || is_typed(over(own));
        !distances.iter().any(stands)
            && !agree(factor, &[1.0; 4])
            // No sine or cosine is larger than one.
            && (factor[0].abs() <= 1.0 && stock.has(factor, Dimension::NUMBER)
                || typed.iter().any(|ratio| agree(factor, &[*ratio; 4])))
    };
    roots.iter().any(|root| {
        known.iter().any(|(moments, _)| {
            is_ratio(&std::array::from_fn(|choice| {
                moments[choice] / root[choice]
            }))
        })
    })
}

/// The distances that stand in a line under names of her own, right or not: bare numbers or
/// lengths that are no sine or cosine of the problem.
fn own_distances(board: &Board<'_>, sides: &[&Tree]) -> Vec<Samples> {
    let angles = board.key.steps.iter().filter(|step| step.id.is_angle());
    let angles = angles.filter_map(|step| board.right(step.id));
    let givens = board.problem.givens().iter().enumerate();
    let givens = givens
        .filter(|(_, given)| given.dimension == Dimension::ANGLE)
        .filter_map(|(index, _)| board.name_function(NameRole::Given(GivenId(index))));
    let angles: Vec<Samples> = angles.chain(givens).collect();
    let is_sine = |own: &Samples| {
        let mut angles = angles.iter();
        angles.any(|angle| agree(own, &angle.map(f64::sin)) || agree(own, &angle.map(f64::cos)))
    };
    let names = sides.iter().flat_map(|side| side.names());
    let own = names.filter_map(|(id, _)| match board.names.role(id) {
        Some(NameRole::Own(index)) => board.own_names.get(index),
        _ => None,
    });
    own.filter(|own| own.bare || own.dimension == Dimension::LENGTH)
        .map(|own| own.function)
        .filter(|own| !is_sine(own))
        .collect()
}

/// The two sides of what was brought to one: `… − T sin 80 = 0`.
pub(super) fn parted<'t>(sides: &[&'t Tree]) -> Option<[&'t Tree; 2]> {
    let zero = |side: &Tree| matches!(&side.node, Node::Literal(literal) if literal.value == 0.0);
    let whole = match sides {
        [whole] => whole,
        [whole, other] if zero(other) => whole,
        [other, whole] if zero(other) => whole,
        _ => return None,
    };
    match &whole.node {
        Node::Binary(Operator::Subtract, one, other) => Some([&**one, &**other]),
        _ => None,
    }
}

/// The sines and cosines of a line.
fn ratios(board: &Board<'_>, sides: &[&Tree]) -> Vec<f64> {
    let mut found = Vec::new();
    for side in sides {
        side.visit(&mut |tree| {
            if matches!(tree.node, Node::Call(Function::Sine | Function::Cosine, _)) {
                found.extend(plain_value(board, tree).map(|value| value.number));
            }
        });
    }
    found
}

/// The known moments set equal to what is no moment, where the unknown was left out:
/// `236*3.1 + 405*4 = 6.1`.
pub(super) fn without_unknown(
    board: &Board<'_>,
    stock: &Stock,
    sides: &[&Tree],
    line: usize,
) -> Option<Judgement> {
    let [left, right] = sides else {
        return None;
    };
    let value = |side: &Tree| {
        plain_value(board, side)
            .map(|value| value.number.abs())
            .ok()
    };
    let (one, other) = (value(left)?, value(right)?);
    let sum = if one > other { left } else { right };
    let known = judge(board, stock, StepId::KnownMoments, &[*sum], line, false);
    if one.min(other) > NO_MOMENT * one.max(other) || !known.truth.holds() {
        return None;
    }
    let mut judgement = Judgement::of(StepId::MomentSum, Truth::DoesNotHold);
    judgement.evidence.lacking = Some(Lacking::Unknown);
    Some(judgement)
}
