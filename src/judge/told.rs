//! What is told again: a given, the acceleration of free fall, the way of a hinge's part.

use super::board::Board;
use super::expression;
use super::lift::plain_value;
use super::names::NameRole;
use super::own::own_name;
use super::stock::Stock;
use super::{Judgement, Remark, Truth};
use crate::key::{Axis, Nature, Part, StepId};
use crate::problem::GivenId;
use crate::reading::{Reading, Tree, Way};
use crate::text::Span;

/// A given told again: right, or misread.
pub(super) fn told_again(
    board: &Board<'_>,
    asked: StepId,
    given: GivenId,
    sides: &[&Tree],
) -> Judgement {
    let printed = board.problem.given(given);
    let holds = sides.iter().all(|side| match plain_value(board, side) {
        Ok(value) => {
            let number = value.number_as(printed.dimension);
            (number - printed.value).abs() <= 1e-6 * printed.value.abs()
                && value.may_be(printed.dimension)
        }
        Err(_) => false,
    });
    let mut judgement = Judgement::of(
        asked,
        if holds {
            Truth::Noted
        } else {
            Truth::DoesNotHold
        },
    );
    if !holds {
        judgement.evidence.misread = Some(given);
        judgement.caret = sides.first().map(|side| side.span);
    }
    judgement
}

/// What g is, told: noted if it is an accepted value; a capital G is also written for a weight.
pub(super) fn gravity_told(
    board: &Board<'_>,
    stock: &Stock,
    asked: StepId,
    (typed, line): (Option<&str>, usize),
    sides: &[&Tree],
) -> Judgement {
    let told = sides.first().and_then(|side| plain_value(board, side).ok());
    let fits = told.is_some_and(|value| {
        let mut accepted = board.other_gravities();
        accepted.push(board.problem.gravity());
        accepted
            .iter()
            .any(|known| (known - value.number).abs() < 1e-9)
    });
    if fits {
        return Judgement::of(asked, Truth::Noted);
    }
    if typed == Some("G") {
        let mut judgement = expression::judge(board, stock, asked, sides, line, false);
        judgement.names = own_name(board, stock, "G", sides, &judgement);
        return judgement;
    }
    let mut judgement = Judgement::of(asked, Truth::DoesNotHold);
    judgement.evidence.gravity_told = true;
    judgement.caret = sides.first().map(|side| side.span);
    judgement
}

/// Compares the ways that were said after a value with the way of a hinge's part.
pub(super) fn compare_way(board: &Board<'_>, reading: &Reading, judgement: &mut Judgement) {
    for remark in &reading.remarks {
        if let crate::reading::Remark::Direction { way, span } = remark {
            compare_one(board, *way, *span, judgement);
        }
    }
}

fn compare_one(board: &Board<'_>, way: Way, span: Span, judgement: &mut Judgement) {
    let says = match way {
        Way::Up => (Axis::Vertical, 1.0),
        Way::Down => (Axis::Vertical, -1.0),
        Way::Right => (Axis::Horizontal, 1.0),
        Way::Left => (Axis::Horizontal, -1.0),
    };
    let number = judgement.evidence.number.map(|typed| typed.value);
    // A value of another step with a wrong way is not that step's value.
    if let Some(other) = judgement.evidence.other_step
        && fits_way(board, other, number, says) == Some(false)
    {
        judgement.evidence.other_step = None;
    }
    let Some(fits) = fits_way(board, judgement.target, number, says) else {
        return;
    };
    if !judgement.truth.holds() {
        return;
    }
    if fits {
        judgement
            .remarks
            .retain(|remark| *remark != Remark::OppositeSense);
        return;
    }
    judgement.truth = Truth::DoesNotHold;
    judgement.establishes.clear();
    judgement.values.clear();
    judgement.evidence.lifted.clear();
    judgement.evidence.number = None;
    judgement.evidence.wrong_way = true;
    judgement.caret = Some(span);
}

/// Whether a way is that of a hinge's part, or of its force as its direction is told; `None` for
/// other steps.
fn fits_way(
    board: &Board<'_>,
    step: StepId,
    number: Option<f64>,
    (says, sign): (Axis, f64),
) -> Option<bool> {
    if let StepId::Found(Nature::Along(axis), _) = step {
        let own = nearest(board, step, number)?;
        return Some(axis == says && sign * own > 0.0);
    }
    let StepId::Reaction(support, part) = step else {
        return None;
    };
    let along = StepId::Reaction(support, Part::Along(says));
    let stands = match part {
        Part::Size => return None,
        // An angle tells no size: the part that stands is meant.
        Part::Direction => board.name_function(NameRole::Step(along))?[0],
        Part::Along(axis) if axis != says => return Some(false),
        // The way of what follows from her own values is hers too: the accepted value nearest in
        // size.
        Part::Along(_) => nearest(board, along, number)?,
    };
    Some(sign * stands > 0.0)
}

/// Of the values that count as right for a part the one nearest in size to a number.
fn nearest(board: &Board<'_>, part: StepId, number: Option<f64>) -> Option<f64> {
    let off = |value: f64| number.map_or(0.0, |number| (value.abs() - number.abs()).abs());
    let accepted = board.accepted(part);
    let values = accepted.iter().map(|(function, _)| function[0]);
    values.min_by(|one, other| off(*one).total_cmp(&off(*other)))
}
