//! A wrong value of the learner's own by way of which a line comes to the right one: that is no way.

use super::board::{Board, Own};
use super::links::is_equal;
use super::names::NameRole;
use super::stock::Stock;
use crate::key::StepId;
use crate::reading::{Node, Operator, Place, Reading, Tree, read};
use crate::units::Dimension;

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

/// True if a wrong force of hers is typed as a term of a sum in a line whose number is that of a part of
/// it as it is right, and of none that stands: after `T = 608 N`, where that is the upright part of T, the 608 of
/// `Hy = 1000 − 608` is her whole T.
pub fn types_wrong_as_part(board: &Board<'_>, target: StepId, line: &str) -> bool {
    let stands = |number: f64| {
        let mut right = board.standing.values().filter(|own| own.right);
        right.any(|own| (as_told(own).abs() - number).abs() <= EXACT * number)
    };
    let steps = || board.key.steps.iter().map(|step| step.id);
    let is_part = |of: StepId, number: f64| {
        let near = |right: f64| (right.abs() - number).abs() <= NEAR * number;
        steps().any(|id| {
            let part = id.is_component() && id != target && board.key.is_multiple(id, of);
            part && board.right(id).is_some_and(|right| near(right[0]))
        })
    };
    let typed = |number: &f64| {
        let mut wrong = wrong_beside(board, target).filter(|(step, _)| step.is_unknown());
        let same = |own: &Own| (as_told(own).abs() - number).abs() <= EXACT * number;
        !stands(*number) && wrong.any(|(step, own)| same(own) && is_part(step, *number))
    };
    let readings = read(line, board.names.vocabulary()).unwrap_or_default();
    let sides = readings.iter().flat_map(|reading| &reading.sides);
    // The number at the end of a chain is what the line tells.
    let sums = sides.filter(|side| !matches!(side.node, Node::Literal(_) | Node::Negative(_)));
    sums.flat_map(numbers_added).any(|number| typed(&number))
}

/// The sizes of the numbers that stand in a sum as terms of their own.
fn numbers_added(side: &Tree) -> Vec<f64> {
    match &side.node {
        Node::Binary(Operator::Add | Operator::Subtract, one, other) => {
            [numbers_added(one), numbers_added(other)].concat()
        }
        Node::Negative(inner) => numbers_added(inner),
        Node::Literal(literal) => vec![literal.value.abs()],
        _ => Vec::new(),
    }
}

/// True for a number that is the value of one of these steps, as she told it.
fn is_own_of(board: &Board<'_>, steps: &[StepId], number: f64) -> bool {
    let own = steps.iter().filter_map(|step| board.standing.get(step));
    let mut told = own.map(|own| as_told(own).abs());
    told.any(|told| (told - number.abs()).abs() <= EXACT * told)
}

/// The lines of her wrong values that are named in a line, and whether one of them is an unknown that
/// stands beside what is none, as in a balance, or an angle.
pub fn wrong_named(board: &Board<'_>, line: &str) -> (Vec<usize>, bool) {
    let readings = read(line, board.names.vocabulary()).unwrap_or_default();
    let sides = readings.first().into_iter().flat_map(|first| &first.sides);
    let steps = sides.flat_map(Tree::names);
    let steps = steps.filter_map(|(id, _)| match board.names.role(id)? {
        NameRole::Step(step) => Some(step),
        _ => None,
    });
    let steps: Vec<StepId> = steps.collect();
    let wrong = |step: &&StepId| board.standing.get(step).filter(|own| !own.right);
    let mut lines: Vec<usize> = steps
        .iter()
        .filter_map(|step| Some(wrong(&step)?.line))
        .collect();
    lines.sort_unstable();
    lines.dedup();
    let unknown = steps
        .iter()
        .any(|step| step.is_unknown() && wrong(&step).is_some());
    // Numbers beside it are those of a balance, unless her value of it is one of them.
    let of_numbers = || {
        let sides = readings.first().into_iter().flat_map(|first| &first.sides);
        let mut literals = sides.clone().flat_map(Tree::literals);
        let typed = literals.any(|place| is_own_of(board, &steps, place.literal.value));
        let mut formed = sides.filter(|side| matches!(side.node, Node::Binary(..)));
        !typed && formed.any(|side| side.names().is_empty())
    };
    let beside = steps.iter().any(|step| !step.is_unknown()) || of_numbers();
    // `W1·ℓ = 62` is worked out, and no balance.
    let product = |side: &Tree| match &side.node {
        Node::Binary(operator, ..) => !matches!(operator, Operator::Add | Operator::Subtract),
        _ => true,
    };
    let value = |side: &Tree| matches!(side.node, Node::Literal(_));
    let worked = readings
        .first()
        .is_some_and(|first| match first.sides.as_slice() {
            [one, other] => product(one) && value(other) || value(one) && product(other),
            _ => false,
        });
    // `tan ψ = 392/294` is how ψ is found, whatever she has for it.
    let angle = |step: &StepId| {
        (board.key.step(*step)).is_some_and(|step| step.dimension == Dimension::ANGLE)
    };
    (
        lines,
        unknown && !worked && (beside || steps.iter().any(angle)),
    )
}

/// True for a chain of numbers alone, each side the value of the one before, whose numbers are the
/// problem's or stand in her lines before it: `568·1.5 = 852` after her W = 568 N. It says nothing
/// of the problem.
pub fn is_true_of_typed(board: &Board<'_>, line: &str, lines: &[&str]) -> bool {
    let readings = |line: &str| read(line, board.names.vocabulary()).unwrap_or_default();
    let all = readings(line);
    let numbers = |reading: &Reading| {
        let literals = reading.sides.iter().flat_map(Tree::literals);
        let typed = literals.map(|place| (place.literal.value.abs(), place.literal.typed.abs()));
        typed.collect::<Vec<(f64, f64)>>()
    };
    let earlier = lines.iter().flat_map(|line| readings(line));
    let earlier: Vec<(f64, f64)> = earlier.flat_map(|reading| numbers(&reading)).collect();
    let stock = Stock::of(board);
    all.iter().any(|reading| {
        let sides: Vec<&Tree> = reading.sides.iter().collect();
        let nameless = sides.iter().all(|side| side.names().is_empty());
        let form = matches!(sides.first(), Some(side) if !matches!(side.node, Node::Literal(_)));
        if sides.len() < 2 || !nameless || !form || reading.defines.is_some() {
            return false;
        }
        let known = |place: &Place<'_>| {
            let number = place.literal.typed.abs();
            let meanings = stock.meanings(place.literal, place.in_angle, false);
            let is = |other: f64| (other - number).abs() <= EXACT * number;
            stock.is_pure(place.literal)
                || meanings.iter().any(|meaning| !meaning.constant)
                || earlier
                    .iter()
                    .any(|(value, typed)| is(*value) || is(*typed))
        };
        let worked = &sides[..sides.len() - 1];
        let mut literals = worked.iter().flat_map(|side| side.literals());
        literals.all(|place| known(&place))
            && sides.windows(2).all(|pair| is_equal(board, &stock, pair))
    })
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
