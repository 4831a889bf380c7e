//! An equation solved for its unknown, and what other names are worth in it.

use super::board::Board;
use super::names::NameRole;
use crate::key::{Samples, StepId, agree};
use crate::reading::{Leaf, Tree, Value, evaluate};
use crate::units::Dimension;

/// What a name is worth for one unit of the unknown, at one choice of numbers; `None` where it is no
/// multiple of it.
pub(super) fn share_of(
    board: &Board<'_>,
    unknown: StepId,
    role: NameRole,
    choice: usize,
) -> Option<f64> {
    let reference = reference(board, unknown, choice)?;
    match role {
        NameRole::Step(id) if id == unknown => Some(1.0),
        NameRole::Step(StepId::Moment(force)) if StepId::Pull(force) != unknown => None,
        NameRole::Step(id)
            if !matches!(id, StepId::Moment(_)) && board.key.is_multiple(id, unknown) =>
        {
            let function = match board.standing.get(&id) {
                Some(own) if !own.right => own.function,
                _ => carried_relation(board, id).or_else(|| board.right(id))?,
            };
            Some(board.sign_of_name(id) * function[choice] / reference)
        }
        NameRole::Step(id @ StepId::Moment(force)) if StepId::Pull(force) == unknown => {
            Some(board.right(id)?[choice] / reference)
        }
        NameRole::Own(index) if board.is_multiple_of_open(role) => {
            let own = board.own_names.get(index)?;
            Some(own.function[choice] / reference)
        }
        _ => None,
    }
}

/// The right value of an unknown, to measure others by.
fn reference(board: &Board<'_>, unknown: StepId, choice: usize) -> Option<f64> {
    Some(match board.right(unknown)?[choice] {
        0.0 => 1.0,
        right => right,
    })
}

/// The unknown for which both sides are equal, at one choice of numbers; the equation must be
/// linear in it.
pub(super) fn root(
    board: &Board<'_>,
    unknown: StepId,
    sides: &[&Tree],
    choice: usize,
    leaf: &mut dyn FnMut(Leaf<'_>) -> Value,
) -> Option<f64> {
    let reference = reference(board, unknown, choice)?;
    let per_unit = |role: NameRole| share_of(board, unknown, role, choice);
    let mut apart = |trial: f64| {
        let mut values = Vec::new();
        for side in sides {
            let value = evaluate(side, &mut |found| match found {
                Leaf::Name(id) => match board.names.role(id).and_then(per_unit) {
                    Some(factor) => Value::of(factor * trial, board.names.dimension(id)),
                    None => leaf(Leaf::Name(id)),
                },
                literal => leaf(literal),
            })
            .ok()?;
            values.push(value);
        }
        // A bare side beside an angle is in degrees.
        let angle = values
            .iter()
            .any(|value| !value.bare && value.dimension == Dimension::ANGLE);
        let kind = if angle {
            Dimension::ANGLE
        } else {
            Dimension::NUMBER
        };
        let mut numbers = values.iter().map(|value| value.number_as(kind));
        let first = numbers.next()?;
        Some(numbers.fold(first, |sum, number| sum - number))
    };
    let (zero, one, two) = (apart(0.0)?, apart(reference)?, apart(2.0 * reference)?);
    let slope = one - zero;
    let linear = (two - one - slope).abs() <= 1e-9 * (two.abs() + one.abs() + slope.abs());
    (linear && slope.abs() > 1e-9 * (zero.abs() + one.abs())).then(|| -zero / slope * reference)
}

/// The relation of a component to the unknown in a mistake that the learner went on with.
fn carried_relation(board: &Board<'_>, id: StepId) -> Option<Samples> {
    let right = board.right(id)?;
    let none = std::collections::BTreeMap::new();
    let relations = board
        .carried
        .iter()
        .filter_map(|(_, key)| key.function(board.key, id, board.sampling, &none));
    relations
        .into_iter()
        .find(|function| !agree(function, &right))
}
