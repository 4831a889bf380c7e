//! What may be meant otherwise than it is read: π as the number in `0.4 − π·0.15²`, and g as
//! another accepted acceleration of free fall, `Wb = 10·g = 98.1 N`.

use super::board::Board;
use super::names::NameRole;
use super::stock::Stock;
use super::{Judgement, judge_reading};
use crate::key::StepId;
use crate::reading::{Literal, Node, Reading, Tree};
use crate::units::{Dimension, Written, number_text};

/// Judges a line that does not stand with π as a number, or with another g; `None` where it does
/// not hold so either.
pub(super) fn judge(
    board: &Board<'_>,
    stock: &Stock,
    asked: StepId,
    reading: &Reading,
    line: (&str, usize),
    known: &Judgement,
) -> Option<Judgement> {
    if known.truth.holds() || known.stands() || reading.defines.is_some() {
        return None;
    }
    let holds = |changed: Reading| {
        let judgement = judge_reading(board, stock, asked, &changed, line);
        (judgement.truth.holds() && judgement.names.is_none()).then_some(judgement)
    };
    if has(reading, &is_pi) {
        let found = holds(with_pi_as_number(reading));
        let dimension = |id: StepId| board.key.step(id).map(|step| step.dimension);
        let is_angle = |found: &Judgement| dimension(found.target) == Some(Dimension::ANGLE);
        return found.filter(|found| !is_angle(found));
    }
    let is_g = |node: &Node| match node {
        Node::Name(id) => board.names.role(*id) == Some(NameRole::Gravity),
        _ => false,
    };
    // Only a value behind a form tells which g was taken.
    if !has(reading, &is_g) || !known.evidence.broken_link {
        return None;
    }
    let others = board.other_gravities();
    others.into_iter().find_map(|gravity| {
        let first = reading.sides.iter().flat_map(Tree::literals).count() + 100;
        let number = |node: &Node| is_g(node).then(|| Node::Literal(literal(first, gravity)));
        holds(changed(reading, &number))
    })
}

fn is_pi(node: &Node) -> bool {
    matches!(node, Node::Literal(literal) if literal.digits == "π")
}

/// A reading in which π is a number wherever no sine or its like is taken.
pub(super) fn with_pi_as_number(reading: &Reading) -> Reading {
    changed(reading, &|node| match node {
        Node::Literal(literal) if is_pi(node) => Some(Node::Literal(Literal {
            unit: None,
            ..literal.clone()
        })),
        _ => None,
    })
}

/// A number as it would be typed.
fn literal(index: usize, number: f64) -> Literal {
    let digits = number_text(number);
    Literal {
        index,
        value: number,
        typed: number,
        written: Written::of_digits(&digits, 1.0),
        digits,
        unit: None,
        unit_alone: false,
    }
}

/// True for a reading with such a part outside sines and their like, in which π is an angle.
fn has(reading: &Reading, is: &dyn Fn(&Node) -> bool) -> bool {
    fn within(tree: &Tree, is: &dyn Fn(&Node) -> bool) -> bool {
        match &tree.node {
            Node::Negative(inner) => within(inner, is),
            Node::Binary(_, left, right) => within(left, is) || within(right, is),
            Node::Call(function, inner) => !function.takes_angle() && within(inner, is),
            node => is(node),
        }
    }
    reading.sides.iter().any(|side| within(side, is))
}

/// A reading with other parts in the place of those that `instead` knows.
fn changed(reading: &Reading, instead: &dyn Fn(&Node) -> Option<Node>) -> Reading {
    fn within(tree: &mut Tree, instead: &dyn Fn(&Node) -> Option<Node>) {
        if let Some(node) = instead(&tree.node) {
            tree.node = node;
            return;
        }
        match &mut tree.node {
            Node::Negative(inner) => within(inner, instead),
            Node::Binary(_, left, right) => {
                within(left, instead);
                within(right, instead);
            }
            Node::Call(function, inner) if !function.takes_angle() => within(inner, instead),
            _ => {}
        }
    }
    let mut other = reading.clone();
    for side in &mut other.sides {
        within(side, instead);
    }
    other
}
