//! The unit of another kind behind a form of bare numbers: `sqrt(595^2 + 750^2) kg` for a force,
//! `2736 N = 3.9·T·sin 75°` for moments. A number without unit may be anything, so that such a
//! unit fits each; what it is behind tells that the relation itself is right.

use super::board::Board;
use super::stock::Stock;
use super::{Judgement, Remark, Truth, judge_reading};
use crate::key::StepId;
use crate::reading::{Node, Operator, Reading, Tree};
use crate::text::Span;
use crate::units::{Dimension, Unit};

impl Judgement {
    /// True for a line that is not seen to hold: how its value comes about may be another unit's
    /// doing.
    pub(super) fn is_unseen(&self) -> bool {
        let unseen = |remark: &Remark| matches!(remark, Remark::NotSeen | Remark::ByChance);
        self.truth == Truth::DoesNotHold
            || self.truth == Truth::Noted && self.remarks.iter().any(unseen)
    }
}

/// Judges a line that is not seen to hold without the units behind its bare terms; `None` where it
/// does not hold so, or where these units are of the kind that is asked.
pub(super) fn judge(
    board: &Board<'_>,
    stock: &Stock,
    asked: StepId,
    reading: &Reading,
    line: (&str, usize),
    known: &Judgement,
) -> Option<Judgement> {
    // A number alone is graded with its unit.
    let alone = matches!(&reading.sides[..], [side] if matches!(side.node, Node::Literal(_) | Node::Negative(_)));
    if alone || !known.is_unseen() {
        return None;
    }
    let mut bare = reading.clone();
    let mut behind = Vec::new();
    for side in &mut bare.sides {
        without_units(side, &mut behind);
    }
    let (span, unit) = *behind.first()?;
    let left = bare.sides.iter().flat_map(|side| side.literals());
    let others = left.filter(|place| !place.in_angle && place.literal.unit.is_some());
    if others.count() > 0
        || behind
            .iter()
            .any(|(_, each)| each.dimension != unit.dimension)
    {
        return None;
    }
    let right = judge_reading(board, stock, asked, &bare, line);
    let wanted = board.key.step(right.target)?.dimension;
    if !right.truth.holds() || wanted == unit.dimension {
        return None;
    }
    let mut judgement = Judgement::of(
        right.target,
        Truth::WrongUnit {
            wanted,
            found: unit.dimension,
        },
    );
    judgement.evidence.number = right.evidence.number;
    judgement.evidence.dimension = Some(unit.dimension);
    judgement.caret = Some(span);
    Some(judgement)
}

/// Takes the units from the terms of a side whose other numbers are bare, and lists them.
fn without_units(side: &mut Tree, behind: &mut Vec<(Span, &'static Unit)>) {
    let span = side.span;
    let whole = match &mut side.node {
        Node::Binary(Operator::Add | Operator::Subtract, left, right) => {
            without_units(left, behind);
            without_units(right, behind);
            None
        }
        Node::Negative(inner) => {
            without_units(inner, behind);
            None
        }
        Node::Literal(literal) => {
            let unit = literal
                .unit
                .filter(|unit| unit.dimension != Dimension::ANGLE);
            if let Some(unit) = unit.filter(|_| !literal.unit_alone) {
                literal.unit = None;
                literal.value = literal.typed;
                literal.written.last_place /= unit.factor;
                behind.push((span, unit));
            }
            None
        }
        Node::Binary(Operator::Multiply, whole, last) => match &last.node {
            Node::Literal(literal) if literal.unit_alone => {
                let unit = literal
                    .unit
                    .filter(|unit| unit.dimension != Dimension::ANGLE);
                unit.filter(|_| whole.names().is_empty()).map(|unit| {
                    behind.push((last.span, unit));
                    (**whole).clone()
                })
            }
            _ => None,
        },
        _ => None,
    };
    if let Some(whole) = whole {
        *side = whole;
    }
}
