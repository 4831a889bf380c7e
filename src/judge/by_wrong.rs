//! A wrong value of the learner's own by way of which a line comes to the right one: that is no way.

use super::board::{Board, Own};
use super::names::NameRole;
use crate::key::StepId;
use crate::reading::{Place, Tree, read};

/// Numbers nearer than this share of them are one.
const EXACT: f64 = 1e-9;
/// A value is the right one up to this share of it.
const NEAR: f64 = 0.003;
/// A wrong value is another than the right one from this share of it on.
const FAR: f64 = 0.02;

/// True for a form that comes to the right value by way of a wrong one of hers that is named or
/// typed in it. What is found so is no right line, so only a value counts that is far from what it
/// should be, and as a number only one that is none of the problem's.
pub(super) fn is_by_wrong(board: &Board<'_>, target: StepId, sides: &[&Tree], number: f64) -> bool {
    let apart = |value: f64, of: StepId| {
        let right = board.right(of)?[0].abs();
        Some((value.abs() - right).abs() / right)
    };
    let far = |value: f64, of: StepId| apart(value, of).is_some_and(|apart| apart > FAR);
    let given = |number: f64| {
        let mut givens = board.problem.givens().iter();
        givens.any(|given| (given.value - number).abs() <= EXACT * number)
    };
    let named = |role: Option<NameRole>| {
        let mut wrong = wrong_beside(board, target);
        wrong.any(|(step, own)| role == Some(NameRole::Step(step)) && far(own.value, step))
    };
    let typed = |place: &Place<'_>| {
        let mut wrong = wrong_beside(board, target);
        !given(place.literal.value.abs())
            && wrong.any(|(step, own)| is_typed(own, place) && far(as_told(own), step))
    };
    let holds_wrong = |side: &&Tree| {
        let names = side.names();
        let mut roles = names.iter().map(|(id, _)| board.names.role(*id));
        roles.any(named) || side.literals().iter().any(typed)
    };
    apart(number, target).is_some_and(|apart| apart < NEAR) && sides.iter().any(holds_wrong)
}

/// True if a wrong value of hers is typed in a line. For that the value of an unseen way is not
/// counted, and the line still noted, so in doubt it is: any wrong value will do, near the right
/// one or a number of the problem's. Names are not looked at: by the right key alone, which such a
/// line is judged by, they stand for the right values.
pub fn types_wrong(board: &Board<'_>, target: StepId, line: &str) -> bool {
    let typed = |place: &Place<'_>| {
        let mut wrong = wrong_beside(board, target);
        wrong.any(|(_, own)| is_typed(own, place))
    };
    let readings = read(line, board.names.vocabulary()).unwrap_or_default();
    let mut sides = readings.iter().flat_map(|reading| &reading.sides);
    sides.any(|side| side.literals().iter().any(typed))
}

/// Her wrong values in force beside that of a step, which may be mended by way of itself:
/// `T = 929 + 196*2.2/3.9` where T was 929.
fn wrong_beside<'a>(
    board: &'a Board<'_>,
    target: StepId,
) -> impl Iterator<Item = (StepId, &'a Own)> {
    let standing = board.standing.iter();
    let wrong = standing.filter(move |(step, own)| !own.right && **step != target);
    wrong.map(|(step, own)| (*step, own))
}

/// True for a number that is a value of hers. Those in angles are left out: bare degrees may be as
/// large as a force of hers by chance.
fn is_typed(own: &Own, place: &Place<'_>) -> bool {
    let number = place.literal.value.abs();
    !place.in_angle && (as_told(own).abs() - number).abs() <= EXACT * number
}

/// A value as she told it: the number she typed, else what her form comes to.
fn as_told(own: &Own) -> f64 {
    own.typed.map_or(own.value, |(typed, _)| typed)
}
