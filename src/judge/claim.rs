//! A line of a general working that sets known things equal: true or not, it is no answer.

use super::aside::{Aside, is_leaf};
use super::board::Board;
use super::chain::is_value_by_terms;
use super::lift::{lifted, plain_value};
use super::names::NameRole;
use super::stock::Stock;
use super::worked::{Quantities, partial_sums};
use super::{Judgement, Truth, equation, ratio};
use crate::key::{Samples, StepId, agree};
use crate::reading::{Node, Reading, Tree};
use crate::units::Dimension;

/// `882 = 588*1.5` as `588*1.5 = 882`: which side the value stands on says nothing.
pub(super) fn value_last(board: &Board<'_>, reading: &Reading) -> Option<Reading> {
    let [value, form] = reading.sides.as_slice() else {
        return None;
    };
    let first = board.key.general.is_some()
        && reading.defines.is_none()
        && is_number(value)
        && !is_leaf(form);
    first.then(|| Reading {
        sides: vec![form.clone(), value.clone()],
        ..reading.clone()
    })
}

/// True for a number alone, whichever sign it has.
fn is_number(side: &Tree) -> bool {
    match &side.node {
        Node::Literal(_) => true,
        Node::Negative(inner) => is_number(inner),
        _ => false,
    }
}

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
    if is_answer && !judgement.is_unseen() || board.key.general.is_none() {
        return judgement;
    }
    if let Some(noted) = ratio::noted(board, asked, sides) {
        return noted;
    }
    if is_answer {
        return judgement;
    }
    if !is_equation(board, asked, sides) {
        if is_worked_beside(board, stock, asked, sides, &judgement) {
            judgement.evidence.aside = Some(Aside::True);
            judgement.evidence.surplus = false;
            // Shown as a value of what is asked it would be false.
            judgement.value = None;
            judgement.caret = None;
        }
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
        let value = |side: &Tree| plain_value(board, side).ok();
        let (Some(one), Some(other)) = (value(pair[0]), value(pair[1])) else {
            return false;
        };
        let kind = Dimension::NUMBER;
        let of_a_kind = one.may_be(other.dimension) || other.may_be(one.dimension);
        let numbers = (one.number, other.number);
        of_a_kind && is_value_by_terms(board, stock, kind, ((pair[0], pair[1]), numbers), &[])
    })
}

/// `588*1.5 = 882`: a moment or a sum of the working, or a quantity of another kind than the one
/// asked, set equal to its value.
fn is_worked_beside(
    board: &Board<'_>,
    stock: &Stock,
    asked: StepId,
    sides: &[&Tree],
    judgement: &Judgement,
) -> bool {
    let [form, value] = sides else { return false };
    let beside = is_number(value)
        && !is_leaf(form)
        && judgement.evidence.other_step.is_none()
        && !equation::has_unknown(board, &[*form])
        && holds(board, stock, sides);
    if !beside {
        return false;
    }
    let kind = |tree: &Tree| plain_value(board, tree).ok();
    let (Some(told), Some(typed)) = (kind(form), kind(value)) else {
        return false;
    };
    let wanted = board.key.step(asked).map(|step| step.dimension);
    if !told.bare && !told.uncertain {
        let other_kind = wanted.is_some_and(|wanted| told.dimension != wanted);
        return other_kind && typed.may_be(told.dimension);
    }
    [Dimension::MOMENT, Dimension::FORCE]
        .into_iter()
        .filter(|kind| told.may_be(*kind) && typed.may_be(*kind))
        .any(|kind| {
            let sums = sums_of(board, kind);
            let lifted = lifted(board, stock, form, kind);
            lifted
                .iter()
                .any(|one| sums.iter().any(|sum| agree(sum, &one.function)))
        })
}

/// The terms of the balances of moments, or of forces, and their sums.
fn sums_of(board: &Board<'_>, kind: Dimension) -> Vec<Samples> {
    let pins = board.own_pins();
    let quantities = Quantities {
        board,
        key: board.key,
        pins: &pins,
    };
    let steps = board.key.steps.iter();
    let balances = steps
        .filter(|step| step.dimension == kind)
        .filter_map(|step| board.key.balance(step.id));
    balances
        .flat_map(|balance| partial_sums(&quantities.terms(balance), 1))
        .collect()
}
