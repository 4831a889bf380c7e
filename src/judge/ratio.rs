//! The ratio of two forces that are still to be found, told by its number: `A/B = 1.28`,
//! `A = 1.28 B`. As with any value told without its way, the number alone is compared.

use super::board::Board;
use super::grade::{COMMON_FIGURES, Typed};
use super::names::step_of;
use super::{Judgement, Remark, Truth};
use crate::key::StepId;
use crate::reading::{Leaf, Node, Operator, Tree, Value, evaluate};
use crate::units::Written;

/// A ratio of values of three figures may be off by this share.
const CARRIED: f64 = 0.005;
/// One of counted numbers by this.
const EXACT: f64 = 1e-6;

/// The judgement of such a line where its number is right; `None` for other lines.
pub(super) fn noted(board: &Board<'_>, asked: StepId, sides: &[&Tree]) -> Option<Judgement> {
    let [one, other] = sides else { return None };
    let (over, under, told) = match &one.node {
        Node::Binary(Operator::Divide, over, under) => (open(board, over)?, under.as_ref(), *other),
        _ => (open(board, one)?, name_in(other)?, *other),
    };
    let under = step_of(board, under)?;
    let ratio = (board.right(over)?[0] / board.right(under)?[0]).abs();
    // Nothing is no measure of a force.
    if !ratio.is_normal() {
        return None;
    }
    let near = |value: f64, share: f64| (value.abs() - ratio).abs() <= share * ratio;
    let literals = told.literals();
    let coarse = |written: Written| written.significant < COMMON_FIGURES;
    let is_right = match literals.as_slice() {
        [only] => {
            let (value, written) = (only.literal.value, only.literal.written);
            let fine = written.significant >= COMMON_FIGURES && near(value, CARRIED);
            let times = is_product(told, &[Operator::Multiply]);
            times && written.significant >= 2 && (Typed { value, written }.is(ratio) || fine)
        }
        [] => false,
        // `5/3`: exactly.
        _ => {
            is_product(told, &[Operator::Multiply, Operator::Divide]) && near(of_one(told)?, EXACT)
        }
    };
    let bare = literals.iter().all(|place| place.literal.unit.is_none());
    // Of two figures many a ratio is so.
    let rough = matches!(literals.as_slice(), [only] if coarse(only.literal.written) && !near(only.literal.value, CARRIED));
    (bare && is_right).then(|| match rough {
        true => Judgement {
            remarks: vec![Remark::NotSeen],
            ..Judgement::of(asked, Truth::Noted)
        },
        false => Judgement::noted_true(asked),
    })
}

/// The only name in a side.
fn name_in(side: &Tree) -> Option<&Tree> {
    match &side.node {
        Node::Name(_) => Some(side),
        Node::Negative(inner) => name_in(inner),
        Node::Binary(_, left, right) => match (name_in(left), name_in(right)) {
            (Some(name), None) | (None, Some(name)) => Some(name),
            _ => None,
        },
        _ => None,
    }
}

/// True for numbers, and names, that are only combined so.
fn is_product(side: &Tree, by: &[Operator]) -> bool {
    match &side.node {
        Node::Literal(_) | Node::Name(_) => true,
        Node::Binary(operator, left, right) => {
            let under = *operator == Operator::Divide && name_in(right).is_some();
            by.contains(operator) && !under && is_product(left, by) && is_product(right, by)
        }
        _ => false,
    }
}

/// The value of a side with one for its name.
fn of_one(side: &Tree) -> Option<f64> {
    let value = evaluate(side, &mut |leaf| match leaf {
        Leaf::Literal(literal) => Value::of_literal(literal),
        Leaf::Name(_) => Value::bare(1.0),
    });
    value.ok().map(|value| value.number)
}

/// The step that a side is the name of, where it is one still to be found, or is made of such.
fn open(board: &Board<'_>, side: &Tree) -> Option<StepId> {
    let step = step_of(board, side)?;
    let made_of_open = || {
        let mut open = board.key.open_in(step).into_iter();
        open.any(|id| !board.standing.contains_key(&id))
    };
    let known = board.standing.contains_key(&step);
    (!known && (step.is_unknown() || made_of_open())).then_some(step)
}
