//! The sense of a value: which signs and angles are a matter of convention.

use super::board::Board;
use super::grade::{Shape, shapes};
use super::{Judgement, Remark};
use crate::key::{Part, Samples, StepId, agree};
use crate::reading::{Function, Node, Tree};
use std::f64::consts::PI;

/// True if two functions are the same but for a convention that is no fault.
pub(super) fn same(target: StepId, left: &Samples, right: &Samples) -> bool {
    agree(left, right)
        || match target {
            id if id.has_free_sense() => agree(&left.map(|value| -value), right),
            id if id.is_size() => agree(&left.map(|value| -value), right),
            id if id.is_angle() => agree(&left.map(|value| PI - value), right),
            // A line has one direction, however its parts are signed; at other numbers a part may
            // change its sign.
            id if id.is_direction() => agree(&left.map(|value| size_meant(target, value)), right),
            _ => false,
        }
}

/// The size of a value, however its sign was counted; of a direction, the angle that it makes with
/// the horizontal.
pub(super) fn size_meant(target: StepId, number: f64) -> f64 {
    match target {
        id if id.is_direction() => {
            let line = number.rem_euclid(PI);
            line.min(PI - line)
        }
        _ => number.abs(),
    }
}

/// True unless a direction, as it was counted, points another way than the force. The arctangent
/// of the two parts gives the line, whichever sign they have.
pub(super) fn points_so(board: &Board<'_>, target: StepId, tree: &Tree, number: f64) -> bool {
    let StepId::Reaction(_, Part::Direction) = target else {
        return true;
    };
    let line = matches!(&tree.node, Node::Call(Function::ArcTangent, _));
    let size = size_meant(target, number);
    let near = |shape: &Shape| (shape.of(size) - number).abs() < 1e-9;
    line || shapes(board, target).iter().any(near)
}

/// A value of what is asked as a size, with the sign of the right one: of a force that turns out to
/// act the other way a part is negative.
pub(super) fn as_size(target: StepId, value: f64, right: f64) -> f64 {
    let either = target.is_size() || target.has_free_sense();
    match target.is_size() {
        // What follows is worked with the sense that the key counts positive.
        _ if target.is_general() && either && right != 0.0 => value.abs().copysign(right),
        true => value.abs(),
        false => value,
    }
}

pub(super) fn note_sense(target: StepId, number: f64, right: f64, judgement: &mut Judgement) {
    if target.has_free_sense() && number * right < 0.0 && judgement.truth.holds() {
        judgement.remarks.push(Remark::OppositeSense);
    }
    if target.is_size() && number * right < 0.0 && judgement.truth.holds() {
        judgement.remarks.push(Remark::SignInSum);
    }
}
