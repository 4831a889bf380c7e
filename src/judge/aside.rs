//! Asides: relations that are true of what is given and found and are not what is asked, such as
//! `L/2 = 3.3`, `mb + m1 = 143 kg` or `sin 25 = 0.4226`.

use super::board::Board;
use super::chain::is_value_by_terms;
use super::equation::has_unknown;
use super::lift::{lift, plain_leaf, plain_value};
use super::links;
use super::names::{NameRole, step_of};
use super::open::is_open;
use super::stock::Stock;
use super::worked::partial_sums;
use super::{Judgement, Truth};
use crate::key::{Samples, StepId, agree};
use crate::reading::{Leaf, Node, Operator, Tree, Value, evaluate};
use crate::units::Dimension;

/// Numbers that seldom stand in a formula, so that here they are the quantities of that value.
const COUNTED: [f64; 2] = [3.0, 4.0];

/// How an aside stands to what is asked.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Aside {
    /// It is true.
    True,
    /// It is true of quantities of the working, and cannot be meant for what is asked.
    Known,
    /// Its sides differ.
    False,
    /// It names an expression that does not come to the number told behind it.
    Misnamed,
}

/// What a chain of sides without an unknown says beside the question; `None` where it may be meant
/// for the step asked, or where it is not to be seen what it is about.
pub(super) fn aside(
    board: &Board<'_>,
    stock: &Stock,
    asked: StepId,
    sides: &[&Tree],
) -> Option<Aside> {
    if sides.len() < 2 || is_about_open(board, asked, sides) {
        return None;
    }
    let form = sides.iter().find(|side| !is_leaf(side))?;
    let kind = [false, true]
        .into_iter()
        .find_map(|angles| kind_of(board, stock, form, angles))?;
    let wanted = match asked {
        StepId::MomentSum => Dimension::MOMENT,
        asked => board.key.step(asked)?.dimension,
    };
    let known = is_known_quantity(board, stock, form, kind);
    let beside = match kind {
        Dimension::LENGTH | Dimension::ANGLE | Dimension::NUMBER | Dimension::ACCELERATION => {
            known || kind != wanted
        }
        // No moment is asked for by forces alone, and a sum by name tells what it is.
        Dimension::FORCE => known || asked == StepId::MomentSum || is_sum(form),
        Dimension::MASS | Dimension::MOMENT => known,
        // The squares that a force's size is made of.
        kind => Some(kind) == Dimension::FORCE.times(Dimension::FORCE),
    };
    if !beside {
        return None;
    }
    if !sides
        .windows(2)
        .all(|pair| is_equal(board, stock, kind, pair))
    {
        // `W1 = 71·10 = 710 N`: equal as numbers, with another thought behind them.
        let apart = sides
            .windows(2)
            .any(|pair| step_of(board, pair[0]).is_none() && !links::is_equal(board, stock, pair));
        return (kind != wanted && apart).then_some(Aside::False);
    }
    // No balance is a line without the unknown.
    Some(if asked == StepId::MomentSum && known {
        Aside::Known
    } else {
        Aside::True
    })
}

/// True if something still unknown stands in the sides, or the step asked itself.
fn is_about_open(board: &Board<'_>, asked: StepId, sides: &[&Tree]) -> bool {
    let open = |role: NameRole| {
        is_open(board, role).is_some() || role == NameRole::Step(asked) || own(role)
    };
    has_unknown(board, sides)
        || sides.iter().any(|side| {
            let names = side.names();
            let mut roles = names.iter().filter_map(|(id, _)| board.names.role(*id));
            roles.any(open)
        })
}

/// A name of the learner's own says nothing yet of the problem.
fn own(role: NameRole) -> bool {
    matches!(role, NameRole::Own(_))
}

/// True for a number or a name alone.
pub(super) fn is_leaf(side: &Tree) -> bool {
    match &side.node {
        Node::Literal(_) | Node::Name(_) => true,
        Node::Negative(inner) => is_leaf(inner),
        _ => false,
    }
}

/// The dimension of a form, each bare number taken for the quantity (the angle) that it is
/// likeliest to be; `None` where one is no quantity of this working, or where the dimension stays
/// open.
fn kind_of(board: &Board<'_>, stock: &Stock, form: &Tree, angles: bool) -> Option<Dimension> {
    let mut explained = true;
    let angles: Vec<usize> = form
        .literals()
        .iter()
        .filter(|place| angles || place.in_angle)
        .map(|place| place.literal.index)
        .collect();
    let value = evaluate(form, &mut |leaf| match leaf {
        Leaf::Literal(literal) if !literal.unit_alone => {
            let as_angle = angles.contains(&literal.index);
            let meanings = stock.meanings(literal, as_angle, false);
            match meanings.iter().find(|meaning| !meaning.constant) {
                Some(meaning) if !stock.is_pure(literal) || COUNTED.contains(&literal.value) => {
                    Value::of(meaning.function[0], meaning.dimension)
                }
                _ => {
                    explained &= stock.is_pure(literal) || as_angle;
                    Value::of_literal(literal)
                }
            }
        }
        leaf => plain_leaf(board, leaf),
    })
    .ok()?;
    // A pure factor leaves the dimension as it is.
    let open = value.bare || !explained;
    (!open).then_some(value.dimension)
}

/// True if some way to read the numbers makes the form a quantity of the working.
fn is_known_quantity(board: &Board<'_>, stock: &Stock, form: &Tree, kind: Dimension) -> bool {
    let is_known = |function: &Samples| match kind {
        // A weight times a distance is no moment on a tilted body.
        Dimension::MOMENT => known_moments(board).iter().any(|sum| agree(sum, function)),
        kind => stock.has(function, kind),
    };
    let combine = |sides: &[&Tree], _: usize, leaf: &mut dyn FnMut(Leaf<'_>) -> Value| {
        let value = evaluate(sides[0], leaf).ok()?;
        (value.may_be(kind)).then(|| value.number_as(kind))
    };
    lift(board, stock, &[form], Some(kind), &combine)
        .iter()
        .any(|one| is_known(&one.function))
}

/// The sums of some of the known moments.
fn known_moments(board: &Board<'_>) -> Vec<Samples> {
    let unknown = board.unknown().and_then(StepId::force);
    let known = board
        .key
        .steps
        .iter()
        .filter(|step| matches!(step.id, StepId::Moment(force) if Some(force) != unknown));
    let moments: Vec<Samples> = known.filter_map(|step| board.right(step.id)).collect();
    partial_sums(&moments, 1)
}

/// True if two neighbours are equal as far as their figures go.
fn is_equal(board: &Board<'_>, stock: &Stock, kind: Dimension, pair: &[&Tree]) -> bool {
    let [left, right] = pair else { return false };
    let value = |side: &Tree| {
        let value = plain_value(board, side).ok()?;
        value.may_be(kind).then(|| value.number_as(kind))
    };
    match (value(left), value(right)) {
        (Some(one), Some(other)) => {
            is_value_by_terms(board, stock, kind, ((left, right), (one, other)), &[])
        }
        _ => false,
    }
}

/// A sum where moments are asked that is set equal to its value. Of forces by name it is no balance
/// of moments and no value of the pull, true or not (`named`); of numbers alone it is noted where it
/// is true.
pub(super) fn sum_and_value(
    board: &Board<'_>,
    stock: &Stock,
    sides: &[&Tree],
    named: bool,
) -> Option<Judgement> {
    let [left, right] = sides else {
        return None;
    };
    let one = plain_value(board, left).ok()?;
    let other = plain_value(board, right).ok()?;
    let force =
        |value: Value| !value.bare && !value.uncertain && value.dimension == Dimension::FORCE;
    let fits = match named {
        true => force(one) || force(other),
        false => one.bare && other.bare,
    };
    if !fits || !(is_sum(left) || is_sum(right)) {
        return None;
    }
    let equal =
        |sides, values| is_value_by_terms(board, stock, Dimension::FORCE, (sides, values), &[]);
    let holds = equal((left, right), (one.number, other.number))
        || equal((right, left), (other.number, one.number));
    if !(named || holds) {
        return None;
    }
    // A mass is no sum of forces.
    let other = [one, other]
        .into_iter()
        .find(|value| !value.may_be(Dimension::FORCE));
    let truth = match other {
        Some(other) if holds => Truth::WrongUnit {
            wanted: Dimension::FORCE,
            found: other.dimension,
        },
        _ if holds => Truth::Noted,
        _ => Truth::DoesNotHold,
    };
    let mut judgement = Judgement::of(StepId::MomentSum, truth);
    judgement.proved = judgement.truth == Truth::Noted;
    judgement.evidence.broken_link = !holds;
    Some(judgement)
}

/// True for a sum or difference of numbers and names, without a product in it.
fn is_sum(tree: &Tree) -> bool {
    let leaf = |tree: &Tree| matches!(tree.node, Node::Literal(_) | Node::Name(_));
    match &tree.node {
        Node::Binary(Operator::Add | Operator::Subtract, left, right) => {
            (is_sum(left) || leaf(left)) && (is_sum(right) || leaf(right))
        }
        _ => false,
    }
}
