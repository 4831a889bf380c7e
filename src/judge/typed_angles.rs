//! The angles that stand in a line, as they were typed: what is said of a ratio is said of that one.

use super::Judgement;
use super::board::Board;
use super::lift::plain_value;
use crate::key::StepId;
use crate::reading::{Function, Node, Tree};
use crate::units::Dimension;

/// A ratio of two sides of a right triangle.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Ratio {
    /// The side opposite the angle to the long side.
    Sine,
    /// The side beside the angle to the long side.
    Cosine,
    /// The side opposite the angle to the one beside it.
    Tangent,
}

impl Ratio {
    /// The ratio of the other short side to the long one.
    fn of_other_side(self) -> Ratio {
        match self {
            Ratio::Sine => Ratio::Cosine,
            Ratio::Cosine => Ratio::Sine,
            Ratio::Tangent => Ratio::Tangent,
        }
    }

    fn of(function: Function) -> Option<Ratio> {
        match function {
            Function::Sine => Some(Ratio::Sine),
            Function::Cosine => Some(Ratio::Cosine),
            Function::Tangent => Some(Ratio::Tangent),
            _ => None,
        }
    }
}

/// A sine, cosine or tangent as it was typed.
#[derive(Clone, Debug, PartialEq)]
pub struct TypedRatio {
    /// Which of them.
    pub ratio: Ratio,
    /// The angle that it is taken of, in radians.
    pub angle: f64,
    /// The numbers of an angle that was put together from several, as typed: `50/2`, `90 - 65`.
    pub numbers: Vec<f64>,
}

impl TypedRatio {
    /// What the two sides of the triangle come to.
    pub fn value(&self) -> f64 {
        match self.ratio {
            Ratio::Sine => libm::sin(self.angle),
            Ratio::Cosine => libm::cos(self.angle),
            Ratio::Tangent => libm::tan(self.angle),
        }
    }
}

/// Gathers the ratios of a line with the values of their angles, whether a number may be one that was
/// worked out before, and in a line about an angle of the working the numbers that it is put together
/// from.
pub(super) fn see(board: &Board<'_>, sides: &[&Tree], judgement: &mut Judgement) {
    let evidence = &mut judgement.evidence;
    evidence.typed_ratios.clear();
    evidence.typed_degrees.clear();
    evidence.worked_ratio = false;
    let of_angle = matches!(judgement.target, StepId::Angle(_));
    for side in sides {
        let typed = ratios(board, side);
        side.visit(&mut |tree| {
            // A root of squares gives the other short side of the triangle.
            if let Node::Call(Function::SquareRoot, inner) = &tree.node {
                let others = ratios(board, inner).into_iter().map(|one| TypedRatio {
                    ratio: one.ratio.of_other_side(),
                    ..one
                });
                evidence.typed_ratios.extend(others);
            }
        });
        evidence.typed_ratios.extend(typed);
        let literals = side.literals();
        let numbers = || literals.iter().map(|place| place.literal.typed);
        evidence.worked_ratio |= numbers().any(|number| number.abs() < 1.0);
        if of_angle {
            evidence.typed_degrees.extend(numbers());
        }
    }
}

/// The ratios that stand anywhere in a side.
fn ratios(board: &Board<'_>, side: &Tree) -> Vec<TypedRatio> {
    let mut found = Vec::new();
    side.visit(&mut |tree| found.extend(ratio_of(board, tree)));
    found
}

/// The sine, cosine or tangent that a form is as a whole.
pub(super) fn ratio_of(board: &Board<'_>, tree: &Tree) -> Option<TypedRatio> {
    let Node::Call(function, inner) = &tree.node else {
        return None;
    };
    let ratio = Ratio::of(*function)?;
    let value = plain_value(board, inner).ok()?;
    let literals = inner.literals();
    let numbers = literals.iter().map(|place| place.literal.typed);
    Some(TypedRatio {
        ratio,
        angle: value.number_as(Dimension::ANGLE),
        numbers: numbers.filter(|_| literals.len() > 1).collect(),
    })
}
