//! A sum of angles that is not the angle asked: it was calculated here, so no slip of a calculator
//! explains it, only which angles stand in it.

use super::board::Board;
use super::lift::lift_near;
use super::sense::same;
use super::stock::Stock;
use super::stock_general::given_angles;
use super::{Judgement, Truth};
use crate::key::{Samples, agree};
use crate::reading::{Literal, Node, Operator, Reading, Tree};
use crate::units::Dimension;

/// What stands in a sum of angles.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum AngleSum {
    /// Angles of this problem or of the working.
    Known,
    /// This number, in degrees, which is no angle of either.
    Unknown(f64),
    /// Such angles, and behind a sign of equality what is not their sum.
    NotEqual,
}

/// A number inside a sine, cosine or tangent in whose place another angle would make the line right.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct WrongAngle {
    /// The number, in degrees.
    pub degrees: f64,
    /// True if it is an angle of this problem or of the working.
    pub known: bool,
}

/// Sees whether a line that does not hold would with another given or worked angle in it, not with
/// what lacks of one to 90°: that would be the other leg of a triangle.
pub(super) fn see(board: &Board<'_>, stock: &Stock, reading: &Reading, judgement: &mut Judgement) {
    let target = judgement.target;
    let step = board
        .key
        .step(target)
        .filter(|_| board.key.general.is_none());
    let Some(dimension) = step.map(|step| step.dimension) else {
        return;
    };
    let is_force = dimension == Dimension::FORCE && judgement.truth == Truth::DoesNotHold;
    if !is_force || judgement.evidence.broken_link || judgement.evidence.wrong_way {
        return;
    }
    let accepted = board.accepted(target);
    let rights: Vec<&Samples> = accepted.iter().map(|(right, _)| right).collect();
    let angles = angles_of(board);
    for side in &reading.sides {
        for place in side.literals().iter().filter(|place| place.in_angle) {
            let right = |angle: &Samples| {
                let fixed = Some((place.literal, angle));
                let forms = lift_near(board, stock, (side, dimension), fixed, &rights);
                let is_right =
                    |form: &Samples| rights.iter().any(|right| same(target, form, right));
                forms.iter().any(|form| is_right(&form.function))
            };
            if is_degrees(place.literal) && angles.iter().any(right) {
                judgement.evidence.wrong_angle = Some(WrongAngle {
                    degrees: place.literal.typed,
                    known: is_known(stock, place.literal),
                });
                return;
            }
        }
    }
}

/// The given angles and those of the steps, without twins.
fn angles_of(board: &Board<'_>) -> Vec<Samples> {
    let steps = board.key.steps.iter().filter(|step| step.id.is_angle());
    let steps = steps.filter_map(|step| board.right(step.id));
    let mut angles: Vec<Samples> = Vec::new();
    for angle in given_angles(board).chain(steps) {
        if angles.iter().all(|known| !agree(known, &angle)) {
            angles.push(angle);
        }
    }
    angles
}

/// True for a number of degrees: of radians it is not to be seen which angle was meant.
fn is_degrees(literal: &Literal) -> bool {
    literal
        .unit
        .is_none_or(|unit| unit.dimension == Dimension::ANGLE && unit.factor != 1.0)
}

/// True for an angle of the problem or of the working.
fn is_known(stock: &Stock, literal: &Literal) -> bool {
    let meanings = stock.meanings(literal, true, false);
    stock.is_pure(literal) || meanings.iter().any(|meaning| !meaning.constant)
}

/// What stands in a sum or difference of angles; `None` for any other form.
pub(super) fn angle_sum(stock: &Stock, tree: &Tree) -> Option<AngleSum> {
    if !matches!(
        tree.node,
        Node::Binary(Operator::Add | Operator::Subtract, ..)
    ) || !is_sum(tree)
    {
        return None;
    }
    let places = tree.literals();
    let unknown = places.iter().find(|place| !is_known(stock, place.literal));
    Some(unknown.map_or(AngleSum::Known, |place| {
        AngleSum::Unknown(place.literal.typed)
    }))
}

/// True for numbers and names that are added and subtracted, and nothing else.
fn is_sum(tree: &Tree) -> bool {
    match &tree.node {
        Node::Binary(Operator::Add | Operator::Subtract, left, right) => {
            is_sum(left) && is_sum(right)
        }
        Node::Negative(inner) => is_sum(inner),
        Node::Name(_) => true,
        Node::Literal(literal) => is_degrees(literal),
        _ => false,
    }
}

/// True if a line has a sine, cosine or tangent.
pub(super) fn has_ratio(reading: &Reading) -> bool {
    let mut found = false;
    for side in &reading.sides {
        side.visit(&mut |tree| {
            found |= matches!(&tree.node, Node::Call(function, _) if function.takes_angle());
        });
    }
    found
}
