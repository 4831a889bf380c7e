//! A form that comes to the right value and is not seen to be the right way.

use super::board::Board;
use super::by_wrong::is_by_wrong;
use super::followed::nearest_inputs;
use super::grade::{Grade, Typed, figures_meant, grade};
use super::lift::{is_all_known, is_one_each, lifted};
use super::sense::same;
use super::shape::parts_of;
use super::stock::{Meaning, Stock};
use super::{Judgement, Remark, Truth};
use crate::key::StepId;
use crate::reading::{Place, Tree};
use crate::units::Dimension;

/// Values nearer than this share of them are one.
const EXACT: f64 = 1e-9;

/// Whether a form that is not proved, and whose value agrees, counts as that value all the same; if
/// not, the judgement says what it is.
pub(super) fn counts(
    board: &Board<'_>,
    stock: &Stock,
    (target, number): (StepId, f64),
    tree: &Tree,
    judgement: &mut Judgement,
) -> bool {
    if is_by_wrong(board, target, &[tree], number) {
        judgement.truth = Truth::DoesNotHold;
        return false;
    }
    if !is_of_names(stock, &[tree]) {
        judgement.truth = Truth::Noted;
        judgement.remarks = unproved(board, stock, target, tree);
        return false;
    }
    // Names alone leave nothing open: they are another function, whatever it gives here.
    let size = board.right(target).map_or(f64::NAN, |right| right[0].abs());
    let angle = board.key.general.is_none() && target.is_angle();
    let dimension = board.key.step(target).map(|step| step.dimension);
    let in_full = lifted(board, stock, tree, dimension.unwrap_or(Dimension::NUMBER));
    // A value that she rounded stands in it for what it is in full.
    let exact = |value: f64| (value.abs() - size).abs() <= EXACT * size;
    let comes_out = exact(number) || in_full.iter().any(|one| exact(one.function[0]));
    if angle || !comes_out {
        judgement.truth = Truth::DoesNotHold;
        return false;
    }
    let counts = board.key.general.is_some() && has_square_angle(board);
    if !counts {
        judgement.truth = Truth::Noted;
        judgement.remarks = vec![Remark::HoldsHere];
    }
    counts
}

/// A form in which two wrong things make up for each other: it is no right way.
pub(super) fn by_chance(judgement: Judgement) -> Judgement {
    Judgement {
        truth: Truth::Noted,
        proved: false,
        remarks: vec![Remark::ByChance],
        ..judgement
    }
}

/// True for sides with names in them and no numbers but pure ones.
pub(super) fn is_of_names(stock: &Stock, sides: &[&Tree]) -> bool {
    let pure = |side: &&Tree| {
        let places = side.literals();
        places
            .iter()
            .all(|place| stock.is_pure(place.literal) || place.literal.value == 0.0)
    };
    sides.iter().all(pure) && sides.iter().any(|side| !side.names().is_empty())
}

/// True where a line lies level or upright, or across another, with the numbers of this problem and
/// not with others: what is as large as another then is seen to be so.
pub(super) fn has_square_angle(board: &Board<'_>) -> bool {
    let is_square = |angle: f64| libm::sin(2.0 * angle).abs() < EXACT;
    let steps = board.key.steps.iter();
    let angles = steps.filter(|step| step.dimension == Dimension::ANGLE);
    board.key.general.is_some()
        && angles.filter_map(|step| board.right(step.id)).any(|angle| {
            let moved = angle.iter().any(|angle| !is_square(*angle));
            is_square(angle[0]) && moved
        })
}

/// What is said of a form whose value agrees: that it is another relation, or, where its numbers
/// leave that open, that the way is not to be seen.
fn unproved(board: &Board<'_>, stock: &Stock, target: StepId, tree: &Tree) -> Vec<Remark> {
    let dimension = board
        .key
        .step(target)
        .map_or(Dimension::NUMBER, |step| step.dimension);
    let other = is_all_known(stock, tree, dimension) && !may_be_part(board, stock, target, tree);
    // In a general working a number may be one of several quantities, and not all are tried.
    let tried = board.key.general.is_none() || is_one_each(stock, tree, dimension);
    match other && tried {
        true => vec![Remark::ByChance],
        false => not_seen(stock, &[tree], dimension),
    }
}

/// That the way is not to be seen, whether or not every number is one of this working.
pub(super) fn not_seen(stock: &Stock, sides: &[&Tree], dimension: Dimension) -> Vec<Remark> {
    let mut sides = sides.iter();
    match sides.all(|side| is_all_known(stock, side, dimension)) {
        true => vec![Remark::NotSeen, Remark::AllKnown],
        false => vec![Remark::NotSeen],
    }
}

/// True if a number in a form would count as the pull, or as a part of the force whose size or
/// direction is asked, and is none that stands: the form may be the right way with that value as
/// she rounded it.
fn may_be_part(board: &Board<'_>, stock: &Stock, target: StepId, tree: &Tree) -> bool {
    let places = tree.literals();
    let is_part = |place: &Place<'_>, part: StepId| {
        let literal = place.literal;
        let typed = Typed {
            value: literal.value,
            written: figures_meant(literal.value, literal.written),
        };
        let counts = grade(board, part, typed);
        let known = board.accepted(part);
        let stands = |meaning: &Meaning| {
            let mut known = known.iter();
            known.any(|(function, _)| same(part, &meaning.function, function))
        };
        let meanings = stock.meanings(literal, place.in_angle, false);
        counts.is_some_and(|grade| grade != Grade::TooFewFigures) && !meanings.iter().any(stands)
    };
    let pull = board.unknown().filter(|pull| *pull != target);
    let pull = pull.filter(|pull| nearest_inputs(board.key, target).contains(pull));
    let parts = parts_of(board, target).into_iter().flatten();
    parts
        .chain(pull)
        .any(|part| places.iter().any(|place| is_part(place, part)))
}
