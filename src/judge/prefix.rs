//! A multiple of a unit behind what has its unit already, or is right in the SI unit: `T sin 55° kN`
//! is a thousand times too large, and so is `412*sin 35 kN`.

use super::board::Board;
use super::expression::calculated;
use super::grade::{Typed, grade};
use super::lift::{plain_leaf, plain_value};
use super::{Judgement, Truth};
use crate::key::StepId;
use crate::reading::{Leaf, Literal, Node, Operator, Place, Reading, Tree, Value, evaluate};
use crate::text::Span;
use crate::units::{Dimension, Written};

/// A multiple of a unit behind an expression that has its dimension already: names stand for SI
/// values, and numbers may have their own units.
pub(super) fn compare_prefix(board: &Board<'_>, reading: &Reading, judgement: &mut Judgement) {
    if !judgement.truth.holds() {
        return;
    }
    let found = reading.sides.iter().find_map(|side| prefixed(board, side));
    let Some((span, dimension)) = found else {
        return;
    };
    judgement.truth = Truth::WrongUnit {
        wanted: dimension,
        found: dimension,
    };
    judgement.proved = false;
    judgement.establishes.clear();
    judgement.values.clear();
    judgement.evidence.lifted.clear();
    judgement.value = None;
    judgement.caret = Some(span);
}

/// The multiple of a unit that stands behind a whole side whose value has its dimension already.
fn prefixed(board: &Board<'_>, side: &Tree) -> Option<(Span, Dimension)> {
    let Node::Binary(Operator::Multiply, whole, last) = &side.node else {
        return None;
    };
    let Node::Literal(literal) = &last.node else {
        return None;
    };
    let unit = literal.unit.filter(|_| literal.unit_alone)?;
    let value = plain_value(board, whole).ok()?;
    let stands = !value.bare && value.may_be(unit.dimension);
    let multiple = unit.factor != 1.0 && unit.dimension != Dimension::ANGLE;
    // Whoever works in kilonewtons throughout may say so once more.
    let places = whole.literals();
    let alike = |literal: &Literal| {
        literal
            .unit
            .is_some_and(|inner| inner.dimension == unit.dimension && inner.factor == unit.factor)
    };
    let again = places.iter().any(|place| alike(place.literal));
    let has_unit =
        !whole.names().is_empty() || places.iter().any(|place| place.literal.unit.is_some());
    (stands && multiple && has_unit && !again).then_some((last.span, unit.dimension))
}

/// A number, or a form of numbers without units, that is right in SI units and stands with a
/// multiple of its unit (68.6 kN for 68.6 N); of an angle, one in degrees with radians behind it.
pub(super) fn prefix_too_many(
    board: &Board<'_>,
    target: StepId,
    tree: &Tree,
    dimension: Dimension,
) -> Option<Span> {
    let (last, span) = last_factor(tree)?;
    let unit = last.unit.filter(|unit| unit.dimension == dimension)?;
    // Without a unit an angle is in degrees.
    let multiple = match dimension {
        Dimension::ANGLE => unit.factor == 1.0,
        _ => unit.factor != 1.0,
    };
    let with_unit =
        |place: &Place<'_>| place.literal.unit.is_some() && place.literal.index != last.index;
    if !multiple || tree.literals().iter().any(with_unit) {
        return None;
    }
    let without = evaluate(tree, &mut |leaf| match leaf {
        Leaf::Literal(literal) if literal.index == last.index => match last.unit_alone {
            true => Value::bare(1.0),
            false => Value::bare(literal.typed),
        },
        leaf => plain_leaf(board, leaf),
    })
    .ok()?;
    let number = without.number_as(dimension);
    let typed = match tree.node {
        Node::Literal(_) | Node::Negative(_) => Typed {
            value: number,
            written: Written {
                last_place: last.written.last_place * (number / last.value).abs(),
                ..last.written
            },
        },
        _ => calculated(number),
    };
    grade(board, target, typed).map(|_| span)
}

/// The number alone, or the last number of a product or a sum: its unit may be meant for all.
fn last_factor(tree: &Tree) -> Option<(&Literal, Span)> {
    match &tree.node {
        Node::Literal(literal) => Some((literal, tree.span)),
        Node::Negative(inner) => last_factor(inner),
        Node::Binary(Operator::Multiply | Operator::Add | Operator::Subtract, _, last) => {
            last_factor(last)
        }
        _ => None,
    }
}
