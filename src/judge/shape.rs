//! The conventions by which a value may be told: either sense of a part, an angle on either side.

use super::board::Board;
use super::names::NameRole;
use crate::key::{Axis, Part, StepId};

/// How a learner's convention may change a value: its size, or also the turns from the positive x
/// axis to it.
#[derive(Clone, Copy)]
pub(super) enum Shape {
    Same,
    Opposite,
    Supplement,
    /// The value, and half turns more or less.
    Turned(f64),
    /// What lacks to so many half turns.
    Lacking(f64),
}

impl Shape {
    pub(super) fn of(self, value: f64) -> f64 {
        match self {
            Shape::Same => value,
            Shape::Opposite => -value,
            Shape::Supplement => std::f64::consts::PI - value,
            Shape::Turned(halves) => halves * std::f64::consts::PI + value,
            Shape::Lacking(halves) => halves * std::f64::consts::PI - value,
        }
    }
}

/// The conventions that are no faults: either sense of a hinge's part; an angle between two lines
/// measured on either side.
pub(super) fn shapes(board: &Board<'_>, id: StepId) -> Vec<Shape> {
    match id {
        id if id.has_free_sense() => vec![Shape::Same, Shape::Opposite],
        id if id.is_angle() => vec![Shape::Same, Shape::Supplement],
        // The sign of a weight or a component belongs in the sum.
        id if id.is_size() => vec![Shape::Same, Shape::Opposite],
        id if id.is_direction() => {
            let Some([level, upright]) = parts_of(board, id) else {
                return vec![Shape::Same];
            };
            let part = |step| {
                let value = board.name_function(NameRole::Step(step));
                value.is_none_or(|function| function[0] > 0.0)
            };
            let (right, up) = (part(level), part(upright));
            let general = board.key.general.as_ref();
            let Some([first, second]) = general.and_then(|general| general.between.get(&id)) else {
                return turns(right, up);
            };
            let is_on = |body: &String| board.on_body.is_none_or(|named| named == body);
            let mut shapes = if is_on(first) {
                turns(right, up)
            } else {
                vec![]
            };
            // On the other of two bodies it points the other way.
            if is_on(second) {
                shapes.extend(turns(!right, !up));
            }
            if shapes.is_empty() {
                shapes.push(Shape::Same);
            }
            shapes
        }
        _ => vec![Shape::Same],
    }
}

/// The level and the upright part of the force that a step is the direction of.
pub(super) fn parts_of(board: &Board<'_>, id: StepId) -> Option<[StepId; 2]> {
    match id {
        StepId::Reaction(support, _) => Some(
            [Axis::Horizontal, Axis::Vertical]
                .map(|axis| StepId::Reaction(support, Part::Along(axis))),
        ),
        id => board.key.general.as_ref()?.parts.get(&id).copied(),
    }
}

/// A direction as the angle with the horizontal, or counted anticlockwise from the positive x axis
/// to where it points: to the right or not, up or not.
fn turns(right: bool, up: bool) -> Vec<Shape> {
    let mut shapes = vec![Shape::Same];
    shapes.extend(match (right, up) {
        (true, true) => vec![],
        (false, true) => vec![Shape::Supplement],
        // Below the horizontal, the sign may say only that.
        (false, false) => vec![Shape::Opposite, Shape::Turned(1.0), Shape::Turned(-1.0)],
        (true, false) => vec![Shape::Opposite, Shape::Lacking(2.0)],
    });
    shapes
}
