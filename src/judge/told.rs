//! What is told again: a given, the acceleration of free fall.

use super::board::Board;
use super::expression::typed_number;
use super::lift::plain_value;
use super::moment_sum::value_of_name;
use super::own::own_name;
use super::printed_units::printed_force;
use super::stock::Stock;
use super::{Judgement, Truth, other};
use crate::key::StepId;
use crate::problem::{Given, GivenId};
use crate::reading::{Node, Operator, Tree};
use crate::units::Dimension;

/// A given told again: right, or misread.
pub(super) fn told_again(
    board: &Board<'_>,
    asked: StepId,
    given: GivenId,
    sides: &[&Tree],
) -> Judgement {
    let printed = board.problem.given(given);
    let of_force = [
        Dimension::FORCE,
        Dimension::MOMENT,
        Dimension::FORCE_A_LENGTH,
    ];
    let factor = printed_force(board).filter(|_| of_force.contains(&printed.dimension));
    let is_given = |(at, side): (usize, &&Tree)| {
        let value = plain_value(board, side).ok();
        let Some(value) = value.filter(|value| value.may_be(printed.dimension)) else {
            return false;
        };
        let number = value.number_as(printed.dimension);
        // Where the forces are printed in kN, whoever works in kN types them so.
        let in_print = factor.filter(|_| value.bare);
        let printed_so = in_print.is_some_and(|factor| {
            (factor * number - printed.value).abs() <= 1e-6 * printed.value.abs()
        });
        // In another unit behind it (`65° = 1.134 rad`) it may be rounded.
        let radians = matches!(&side.node, Node::Literal(literal) if literal.unit
            .is_some_and(|unit| unit.symbol == "rad"));
        let rounded = typed_number(side, number, printed.dimension).filter(|_| at > 0 || radians);
        // A coordinate that points the other way may be told by its size.
        let turned = printed.dimension == Dimension::LENGTH && printed.value < 0.0;
        let size = turned && (number + printed.value).abs() <= 1e-6 * number.abs();
        printed_so
            || size
            || (number - printed.value).abs() <= 1e-6 * printed.value.abs()
            || rounded.is_some_and(|typed| typed.is(printed.value))
    };
    let holds = sides.iter().enumerate().all(is_given);
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

/// `M = 882 N m` where the problem has a mass m: a capital letter with a value of another kind is a
/// name of the learner's own. So is one set to a form of bare numbers, `M = 803.6*3`, that does not
/// come to the mass.
pub(super) fn of_other_kind(
    board: &Board<'_>,
    stock: &Stock,
    (asked, given): (StepId, GivenId),
    (typed, line): (Option<&str>, usize),
    sides: &[&Tree],
) -> Option<Judgement> {
    let printed = board.problem.given(given);
    let first = |text: &str| text.chars().next();
    let typed = typed?;
    let capital = first(typed)?.is_uppercase() && first(&printed.symbol.shown())?.is_lowercase();
    // The unit behind it tells as well as the form.
    let other = |side: &&Tree| {
        let value = plain_value(board, side).ok();
        value.is_some_and(|value| !value.may_be(printed.dimension))
    };
    let form = || is_form_of_another(board, (printed.value, printed.dimension), typed, sides);
    let own = sides.iter().any(other) || form();
    if !(capital && own
        || is_of_several(board, given, typed) && is_other_sum(board, printed, sides))
    {
        return None;
    }
    let mut judgement = value_of_name(board, stock, asked, sides, line);
    judgement.names = own_name(board, stock, typed, sides, &judgement);
    if !judgement.truth.holds() && judgement.names.is_some() {
        judgement.truth = Truth::Noted;
    }
    Some(judgement)
}

/// True for a short name, such as a bare `m`, of one of several givens of a kind.
fn is_of_several(board: &Board<'_>, given: GivenId, typed: &str) -> bool {
    let printed = board.problem.given(given);
    let all = board.problem.givens().iter();
    let of_kind = all.filter(|one| one.dimension == printed.dimension);
    !printed.symbol.matches(typed) && of_kind.count() > 1
}

/// True for a sum, `51 + 59`, that does not come to a given.
fn is_other_sum(board: &Board<'_>, printed: &Given, sides: &[&Tree]) -> bool {
    let Some(Node::Binary(Operator::Add, ..)) = sides.first().map(|side| &side.node) else {
        return false;
    };
    let is_told = |side: &&Tree| {
        let number = plain_value(board, side).map(|value| value.number_as(printed.dimension));
        number.is_ok_and(|number| (number - printed.value).abs() <= 1e-6 * printed.value.abs())
    };
    !sides.iter().all(is_told)
}

/// True for a form worked out from numbers that is nowhere said to be of this kind, and has another
/// value.
fn is_form_of_another(
    board: &Board<'_>,
    (printed, dimension): (f64, Dimension),
    typed: &str,
    sides: &[&Tree],
) -> bool {
    let letter = typed.chars().count() == 1;
    let form = sides.first().is_some_and(|side| !is_value(side));
    let said = |side: &&Tree| {
        let value = plain_value(board, side).ok();
        value.is_some_and(|value| !value.bare && !value.uncertain && value.dimension == dimension)
    };
    let near = |side: &&Tree| {
        let value = plain_value(board, side).ok();
        value.is_some_and(|value| (value.number - printed).abs() <= 0.005 * printed.abs())
    };
    letter && form && !sides.iter().any(said) && !sides.iter().any(near)
}

/// True for a number alone, whichever sign it has.
fn is_value(side: &Tree) -> bool {
    match &side.node {
        Node::Literal(_) => true,
        Node::Negative(inner) => is_value(inner),
        _ => false,
    }
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
        let mut judgement = value_of_name(board, stock, asked, sides, line);
        judgement.names = own_name(board, stock, "G", sides, &judgement);
        let meant = other::is_alike(board, "G", asked, sides) || judgement.names.is_none();
        if !judgement.truth.holds() && !meant {
            judgement.truth = Truth::Noted;
        }
        return judgement;
    }
    let mut judgement = Judgement::of(asked, Truth::DoesNotHold);
    judgement.evidence.gravity_told = true;
    judgement.caret = sides.first().map(|side| side.span);
    judgement
}
