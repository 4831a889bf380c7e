//! Forms in bare centimetres or millimetres with the unit behind their value: the area of a piece,
//! the place of a centroid, a length: `π·15² = 707 cm²`.

use super::board::Board;
use super::known_truth::truth_of;
use super::otherwise::with_pi_as_number;
use super::printed_units::in_unit;
use super::stock::Stock;
use super::{Judgement, Remark, Truth, judge_reading};
use crate::key::StepId;
use crate::reading::{Node, Reading, Tree};
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

/// The unit of a side that is a number.
fn unit_behind(side: &Tree) -> Option<&'static Unit> {
    match &side.node {
        Node::Literal(literal) => literal.unit,
        Node::Negative(inner) => unit_behind(inner),
        _ => None,
    }
    .and_then(|unit| find_unit(unit.symbol))
}
