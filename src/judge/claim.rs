//! A line of a general working that sets known things equal: true or not, it is no answer.

use super::board::Board;
use super::chain::is_value_of;
use super::lift::plain_value;
use super::names::NameRole;
use super::stock::Stock;
use super::{Judgement, Truth, equation};
use crate::key::StepId;
use crate::reading::{Node, Tree};
use crate::units::Dimension;

/// The judgement of a line that does not answer, unless it is an equation between what is known:
/// one that holds is noted, and of one that does not no form speaks.
pub(super) fn of_known(
    board: &Board<'_>,
    stock: &Stock,
    asked: StepId,
    sides: &[&Tree],
    mut judgement: Judgement,
) -> Judgement {
    let is_answer = !matches!(
        judgement.truth,
        Truth::DoesNotHold | Truth::Mismatched(_) | Truth::WrongUnit { .. } | Truth::TooFewFigures
    );
    if is_answer || board.key.general.is_none() || !is_equation(board, asked, sides) {
        return judgement;
    }
    if holds(board, stock, sides) {
        let mut noted = Judgement::of(asked, Truth::Noted);
        noted.proved = true;
        return noted;
    }
    if judgement.truth == Truth::DoesNotHold {
        judgement.evidence.lifted.clear();
        judgement.evidence.number = None;
        judgement.evidence.false_equation = true;
    }
    judgement
}

/// True where nothing open is named and more is said than a value.
fn is_equation(board: &Board<'_>, asked: StepId, sides: &[&Tree]) -> bool {
    let lone_step = sides.iter().any(|side| match side.node {
        Node::Name(id) => matches!(
            board.names.role(id),
            Some(NameRole::Step(_) | NameRole::Own(_))
        ),
        _ => false,
    });
    let worked = |side: &&&Tree| {
        !matches!(side.node, Node::Literal(_) | Node::Negative(_)) && !side.names().is_empty()
    };
    sides.len() > 1
        && !lone_step
        && !equation::has_unknown(board, sides)
        && (asked.is_balance() || sides[1..].iter().any(|side| worked(&side)))
}

/// True if each side has the value of the one before, within what was rounded.
fn holds(board: &Board<'_>, stock: &Stock, sides: &[&Tree]) -> bool {
    sides.windows(2).all(|pair| {
        let value = |side: &Tree| plain_value(board, side).ok().map(|value| value.number);
        let (Some(one), Some(other)) = (value(pair[0]), value(pair[1])) else {
            return false;
        };
        let kind = Dimension::NUMBER;
        is_value_of(board, stock, kind, (pair[0], pair[1]), (one, other))
    })
}
