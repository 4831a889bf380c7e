//! What is told again: a given, the acceleration of free fall, the way of a hinge's part.

use super::board::Board;
use super::expression;
use super::lift::plain_value;
use super::own::own_name;
use super::stock::Stock;
use super::{Judgement, Remark, Truth};
use crate::key::{Axis, Part, StepId};
use crate::problem::GivenId;
use crate::reading::{Reading, Tree, Way};

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

/// Compares the way that was said after a value with the way of a hinge's part.
pub(super) fn compare_way(board: &Board<'_>, reading: &Reading, judgement: &mut Judgement) {
    let said = reading.remarks.iter().find_map(|remark| match remark {
        crate::reading::Remark::Direction { way, span } => Some((*way, *span)),
        _ => None,
    });
    let Some((way, span)) = said else {
        return;
    };
    let (says_axis, sign) = match way {
        Way::Up => (Axis::Vertical, 1.0),
        Way::Down => (Axis::Vertical, -1.0),
        Way::Right => (Axis::Horizontal, 1.0),
        Way::Left => (Axis::Horizontal, -1.0),
    };
    let number = judgement.evidence.number.map(|typed| typed.value);
    // A value of another step with a wrong way is not that step's value.
    if let Some(other) = judgement.evidence.other_step
        && fits_way(board, other, number, (says_axis, sign)) == Some(false)
    {
        judgement.evidence.other_step = None;
    }
    let Some(fits) = fits_way(board, judgement.target, number, (says_axis, sign)) else {
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

/// Whether a way is that of a hinge's part, or above or below the horizontal as its line lies;
/// `None` for other steps.
fn fits_way(
    board: &Board<'_>,
    step: StepId,
    number: Option<f64>,
    (says, sign): (Axis, f64),
) -> Option<bool> {
    let StepId::Reaction(support, part) = step else {
        return None;
    };
    let axis = match part {
        Part::Along(axis) => axis,
        Part::Direction => Axis::Vertical,
        Part::Size => return None,
    };
    let part = StepId::Reaction(support, Part::Along(axis));
    // The way of what follows from her own values is hers too: the accepted value nearest in size.
    let accepted = board.accepted(part);
    let off = |value: f64| number.map_or(0.0, |number| (value.abs() - number.abs()).abs());
    let nearest = accepted
        .iter()
        .map(|(function, _)| function[0])
        .min_by(|one, other| off(*one).total_cmp(&off(*other)))?;
    Some(says == axis && sign * nearest > 0.0)
}
