//! A form that comes to the right value and is not seen to be the right way.

use super::Remark;
use super::board::Board;
use super::followed::nearest_inputs;
use super::grade::{Grade, Typed, figures_meant, grade};
use super::lift::is_all_known;
use super::sense::same;
use super::shape::parts_of;
use super::stock::{Meaning, Stock};
use crate::key::StepId;
use crate::reading::{Place, Tree};
use crate::units::Dimension;

/// What is said of a form whose value agrees: that it is another relation, or, where its numbers
/// leave that open, that the way is not to be seen.
pub(super) fn unproved(board: &Board<'_>, stock: &Stock, target: StepId, tree: &Tree) -> Remark {
    let dimension = board
        .key
        .step(target)
        .map_or(Dimension::NUMBER, |step| step.dimension);
    let other = is_all_known(stock, tree, dimension) && !may_be_part(board, stock, target, tree);
    match other {
        true => Remark::ByChance,
        false => Remark::NotSeen,
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
