//! A sum of angles that is not the angle asked: it was calculated here, so no slip of a calculator
//! explains it, only which angles stand in it.

use super::stock::Stock;
use crate::reading::{Literal, Node, Operator, Tree};
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

/// What stands in a sum or difference of angles; `None` for any other form.
pub(super) fn angle_sum(stock: &Stock, tree: &Tree) -> Option<AngleSum> {
    if !matches!(
        tree.node,
        Node::Binary(Operator::Add | Operator::Subtract, ..)
    ) || !is_sum(tree)
    {
        return None;
    }
    let is_known = |literal: &Literal| {
        let meanings = stock.meanings(literal, true, false);
        stock.is_pure(literal) || meanings.iter().any(|meaning| !meaning.constant)
    };
    let places = tree.literals();
    let unknown = places.iter().find(|place| !is_known(place.literal));
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
        // In radians it is not to be seen which angle was meant.
        Node::Literal(literal) => literal
            .unit
            .is_none_or(|unit| unit.dimension == Dimension::ANGLE && unit.factor != 1.0),
        _ => false,
    }
}
