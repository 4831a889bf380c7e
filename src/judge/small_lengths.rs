//! Forms in bare centimetres or millimetres with the unit behind their value: the area of a piece,
//! the place of a centroid, a length: `π·15² = 707 cm²`.

use super::board::Board;
use super::known_truth::truth_of;
use super::otherwise::with_pi_as_number;
use super::printed_units::in_unit;
use super::stock::Stock;
use super::{Judgement, Remark, Truth, judge_reading};
use crate::key::StepId;
use crate::reading::{Leaf, Literal, NameId, Node, Operator, Reading, Tree, Value, evaluate};
use crate::text::Span;
use crate::units::{Dimension, Unit, find_unit};

/// Units of a length and of what is made of lengths alone, and what a metre is typed as.
const TYPED_AS: [(&str, f64); 6] = [
    ("cm", 100.0),
    ("cm²", 100.0),
    ("cm³", 100.0),
    ("mm", 1000.0),
    ("mm²", 1000.0),
    ("mm³", 1000.0),
];

/// Judges a line that is not seen to hold with its bare numbers in the unit behind its value;
/// `None` where it does not stand so.
pub(super) fn judge(
    board: &Board<'_>,
    stock: &Stock,
    asked: StepId,
    reading: &Reading,
    line: (&str, usize),
    known: &Judgement,
) -> Option<Judgement> {
    let refused = known.is_unseen() || matches!(known.truth, Truth::Mismatched(_));
    if !refused || reading.sides.len() < 2 {
        return None;
    }
    let unit = unit_behind(reading.sides.last()?)?;
    let (_, length) = TYPED_AS.iter().find(|(symbol, _)| *symbol == unit.symbol)?;
    let mut index = reading.sides.iter().flat_map(Tree::literals).count() + 100;
    // In an area π is no angle.
    let mut told = with_pi_as_number(reading);
    for side in &mut told.sides {
        if side.names().is_empty() {
            *side = in_unit(side, unit, &mut index)?;
        }
    }
    let counted = stock.typed_in(*length);
    if unit.dimension == Dimension::VOLUME {
        // The first moment of an area is no step.
        truth_of(board, &counted, &told)?;
        let mut judgement = Judgement::noted_true(asked);
        judgement.remarks.push(Remark::OfNumbers);
        return Some(judgement);
    }
    let judged = |step: StepId| {
        let judgement = judge_reading(board, &counted, step, &told, line);
        judgement.stands().then_some(judgement)
    };
    let named = told.sides.iter().any(|side| !side.names().is_empty());
    let steps = board.key.steps.iter().filter(|step| step.asked && !named);
    let mut others = steps.filter(|step| step.dimension == unit.dimension);
    judged(asked).or_else(|| others.find_map(|step| judged(step.id).filter(|told| told.proved)))
}

/// `c = (1.6 − 0.4) m`: of the readings of a name of her own the one with metres first, where all that
/// stands before them are lengths of this problem and make one. Nothing behind the name tells it
/// from a multiple of the mass m.
pub(super) fn metres_first(board: &Board<'_>, mut readings: Vec<Reading>) -> Vec<Reading> {
    let of_mass = |(id, _): &(NameId, Span)| board.names.dimension(*id) == Dimension::MASS;
    let is_mass = readings.first().is_some_and(|first| {
        first.defines.is_some()
            && matches!(first.sides.as_slice(), [side] if side.names().iter().any(of_mass))
    });
    if !is_mass || readings.len() < 2 {
        return readings;
    }
    let stock = Stock::of(board);
    let metres = readings.iter().position(|reading| {
        let [side] = reading.sides.as_slice() else {
            return false;
        };
        side.names().is_empty() && is_length_before_metres(&stock, side)
    });
    if let Some(metres) = metres {
        readings[..=metres].rotate_right(1);
    }
    readings
}

/// True for lengths in a bracket that make one, and the metre behind it.
fn is_length_before_metres(stock: &Stock, side: &Tree) -> bool {
    let is_length = |literal: &Literal| {
        let meanings = stock.meanings(literal, false, false);
        let mut meanings = meanings.iter().filter(|meaning| !meaning.constant);
        meanings.any(|meaning| meaning.dimension == Dimension::LENGTH)
    };
    let mut exponents = Vec::new();
    side.visit(&mut |tree| {
        if let Node::Binary(Operator::Power, _, exponent) = &tree.node {
            exponents.extend(exponent.literals().iter().map(|place| place.literal.index));
        }
    });
    let mut metres = false;
    let value = evaluate(side, &mut |leaf| match leaf {
        Leaf::Literal(literal) if literal.unit_alone => {
            metres |= (literal.unit).is_some_and(|unit| unit.dimension == Dimension::LENGTH);
            Value::of(literal.value, Dimension::NUMBER)
        }
        Leaf::Literal(literal)
            if literal.unit.is_none()
                && !exponents.contains(&literal.index)
                && is_length(literal) =>
        {
            Value::of(literal.value, Dimension::LENGTH)
        }
        Leaf::Literal(literal) => Value::of_literal(literal),
        Leaf::Name(_) => Value::bare(f64::NAN),
    });
    metres && value.is_ok_and(|value| !value.bare && value.dimension == Dimension::LENGTH)
}

/// The unit of a side that is a number.
fn unit_behind(side: &Tree) -> Option<&'static Unit> {
    match &side.node {
        Node::Literal(literal) => literal.unit,
        Node::Negative(inner) => unit_behind(inner),
        _ => None,
    }
    .and_then(|unit| find_unit(unit.symbol))
}
