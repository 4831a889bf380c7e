//! The angles that stand in a line, as they were typed: what is said of a ratio is said of that one.

use super::Judgement;
use super::board::Board;
use super::lift::plain_value;
use crate::key::StepId;
use crate::reading::{Function, Node, Tree};
use crate::units::Dimension;

/// A sine, cosine or tangent as it was typed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TypedRatio {
    /// Which of them.
    pub function: Function,
    /// The angle that it is taken of, in radians.
    pub angle: f64,
}

/// Gathers the ratios of a line with the values of their angles and, in a line about an angle of the
/// working, the numbers that it is put together from.
pub(super) fn see(board: &Board<'_>, sides: &[&Tree], judgement: &mut Judgement) {
    let evidence = &mut judgement.evidence;
    evidence.typed_ratios.clear();
    evidence.typed_degrees.clear();
    for side in sides {
        side.visit(&mut |tree| {
            if let Node::Call(function, inner) = &tree.node
                && function.takes_angle()
                && let Ok(value) = plain_value(board, inner)
            {
                evidence.typed_ratios.push(TypedRatio {
                    function: *function,
                    angle: value.number_as(Dimension::ANGLE),
                });
            }
        });
        if matches!(judgement.target, StepId::Angle(_)) {
            let literals = side.literals();
            let degrees = literals.iter().map(|place| place.literal.typed);
            evidence.typed_degrees.extend(degrees);
        }
    }
}
