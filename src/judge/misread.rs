//! A number that the problem does not print, in whose place one that it does print would make the line
//! right.

use super::board::Board;
use super::equation::has_unknown;
use super::lift::{Combine, lift_as};
use super::root::root;
use super::stock::Stock;
use super::{Judgement, Truth};
use crate::key::{Samples, agree};
use crate::problem::GivenId;
use crate::reading::{Leaf, Literal, Reading, Tree, Value, evaluate};
use crate::units::Dimension;

/// A number of a line that the problem does not print, and the given that belongs there.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct MisreadNumber {
    /// The number as it was typed.
    pub typed: f64,
    /// The given.
    pub given: GivenId,
}

/// Sees whether a line that does not hold would with a given in the place of its one number that is
/// nothing of this problem and of no working.
pub(super) fn see(board: &Board<'_>, stock: &Stock, reading: &Reading, judgement: &mut Judgement) {
    let seen = judgement.truth != Truth::DoesNotHold
        || board.key.general.is_some()
        || judgement.evidence.broken_link
        || judgement.evidence.misread.is_some()
        || judgement.evidence.wrong_angle.is_some();
    if seen {
        return;
    }
    let places = reading.sides.iter().flat_map(Tree::literals);
    let mut unknown = places.filter(|place| {
        let meanings = || stock.meanings(place.literal, place.in_angle, false);
        !stock.is_pure(place.literal) && meanings().iter().all(|meaning| meaning.constant)
    });
    let (Some(place), None) = (unknown.next(), unknown.next()) else {
        return;
    };
    let other_unit = place.literal.unit.is_some_and(|unit| unit.factor != 1.0);
    if place.in_angle || other_unit || is_put_together(reading, place.literal) {
        return;
    }
    let given = (0..board.problem.givens().len())
        .map(GivenId)
        .find(|given| is_right_with(board, stock, reading, (place.literal, *given), judgement));
    judgement.evidence.misread_number = given.map(|given| MisreadNumber {
        typed: place.literal.typed,
        given,
    });
}

/// True for a number that two others of its line come to when they are added: it was worked out, and
/// not misread.
fn is_put_together(reading: &Reading, literal: &Literal) -> bool {
    let places = reading.sides.iter().flat_map(Tree::literals);
    let others = places.filter(|place| !place.in_angle && place.literal.index != literal.index);
    let others: Vec<f64> = others.map(|place| place.literal.typed).collect();
    let is = |sum: f64| (sum - literal.typed).abs() < 1e-9 * literal.typed.abs();
    let mut pairs = others.iter().enumerate();
    pairs.any(|(at, one)| others[at + 1..].iter().any(|other| is(one + other)))
}

/// True if a line is the right one with a given in the place of one of its numbers.
fn is_right_with(
    board: &Board<'_>,
    stock: &Stock,
    reading: &Reading,
    (literal, given): (&Literal, GivenId),
    judgement: &Judgement,
) -> bool {
    let dimension = board.problem.given(given).dimension;
    let fits = literal.unit.is_none_or(|unit| unit.dimension == dimension);
    if !fits
        || !matches!(
            dimension,
            Dimension::MASS | Dimension::LENGTH | Dimension::FORCE
        )
    {
        return false;
    }
    let replaced =
        |choice: usize, found: Leaf<'_>, leaf: &mut dyn FnMut(Leaf<'_>) -> Value| match found {
            Leaf::Literal(own) if own.index == literal.index => {
                Value::of(board.sampling.samples[choice].values[given.0], dimension)
            }
            found => leaf(found),
        };
    let sides: Vec<&Tree> = reading.sides.iter().collect();
    let (right, forms) = match (sides.as_slice(), board.unknown()) {
        ([_, _], Some(unknown)) if has_unknown(board, &sides) => {
            let combine =
                |sides: &[&Tree], choice: usize, leaf: &mut dyn FnMut(Leaf<'_>) -> Value| {
                    root(board, unknown, sides, choice, &mut |found| {
                        replaced(choice, found, leaf)
                    })
                };
            let each = (&combine as &Combine<'_>, false);
            (
                board.right(unknown),
                lift_as(board, stock, &sides, None, each),
            )
        }
        (_, _) => {
            let Some(side) = reading.sides.iter().find(|side| {
                side.literals()
                    .iter()
                    .any(|place| place.literal.index == literal.index)
            }) else {
                return false;
            };
            let Some(wanted) = board.key.step(judgement.target).map(|step| step.dimension) else {
                return false;
            };
            let combine =
                |sides: &[&Tree], choice: usize, leaf: &mut dyn FnMut(Leaf<'_>) -> Value| {
                    let value = evaluate(sides[0], &mut |found| replaced(choice, found, leaf));
                    value.ok().map(|value| value.number_as(wanted))
                };
            let each = (&combine as &Combine<'_>, false);
            (
                board.right(judgement.target),
                lift_as(board, stock, &[side], Some(wanted), each),
            )
        }
    };
    // A number alone is a value, and no given is one.
    let many = sides
        .iter()
        .any(|side| side.literals().len() > 1 || !side.names().is_empty());
    let is_right = |right: &Samples| forms.iter().any(|form| agree(&form.function, right));
    many && right.as_ref().is_some_and(is_right)
}
