//! A value behind a relation with open unknowns in it: `A = B = 588 N`.
//!
//! The relation says nothing of the number, so each is judged by itself, and both must hold.

use super::board::Board;
use super::expression::{own, scaled};
use super::lift::plain_value;
use super::names::NameRole;
use super::open::{is_of_open_unknown, is_open};
use super::stock::{Stock, THREE_FIGURES};
use super::{Judgement, Truth, judge_relation};
use crate::key::StepId;
use crate::reading::{Leaf, Node, Reading, Tree, Value, evaluate};

/// The furthest, as a share of it, that a number may lie from the value of the side it is set equal
/// to.
const FARTHEST: f64 = 0.02;

/// Judges such a line; `None` for any other.
pub(super) fn judge(
    board: &Board<'_>,
    stock: &Stock,
    asked: StepId,
    reading: &Reading,
    line: (&str, usize),
) -> Option<Judgement> {
    let (value, sides) = reading.sides.split_last()?;
    if sides.len() < 2 || reading.defines.is_some() || !is_number(value) {
        return None;
    }
    let open = |side: &Tree| {
        let names = side.names();
        let mut roles = names.iter().filter_map(|(id, _)| board.names.role(*id));
        roles.any(|role| match role {
            NameRole::Step(step) => {
                is_open(board, role).is_some() || is_of_open_unknown(board, step)
            }
            _ => false,
        })
    };
    if !sides[1..].iter().any(open) {
        return None;
    }
    let part = |sides: Vec<Tree>| Reading {
        sides,
        ..reading.clone()
    };
    let is_step = |side: &Tree| match side.node {
        Node::Name(id) => matches!(board.names.role(id), Some(NameRole::Step(_))),
        _ => false,
    };
    let number = plain_value(board, value).ok()?.number;
    if is_step(&sides[0]) {
        let told = part(vec![sides[0].clone(), value.clone()]);
        let told = judge_relation(board, stock, asked, &told, line);
        let relation = judge_relation(board, stock, asked, &part(sides.to_vec()), line);
        if told.truth == Truth::DoesNotHold {
            let behind = follows(board, (&sides[1..], number), told.clone(), line.1);
            // Of a relation that does not hold nobody can say that the number is not its value.
            let is_false = relation.truth == Truth::DoesNotHold && !behind.truth.holds();
            return Some(if is_false { told } else { behind });
        }
        return relation.stands().then_some(told);
    }
    let right = evaluate(&sides[0], &mut |leaf| in_full(board, leaf))
        .ok()?
        .number;
    let far = (number.abs() - right.abs()).abs() > FARTHEST * right.abs();
    far.then(|| {
        let mut wrong = Judgement::of(asked, Truth::DoesNotHold);
        wrong.evidence.false_equation = true;
        not_its_value(wrong)
    })
}

/// `A = B = W/2`: what a chain that holds gives to each name before its last side, not only to the
/// first.
pub(super) fn credit_names(
    board: &Board<'_>,
    stock: &Stock,
    (asked, line): (StepId, (&str, usize)),
    reading: &Reading,
    judgement: &mut Judgement,
) {
    let Some((value, names)) = reading.sides.split_last().filter(|_| judgement.stands()) else {
        return;
    };
    let open = |side: &Tree| {
        let names = side.names();
        let mut roles = names.iter().filter_map(|(id, _)| board.names.role(*id));
        roles.any(|role| is_open(board, role).is_some())
    };
    if open(value) || judgement.names.is_some() {
        return;
    }
    let step = |side: &Tree| match side.node {
        Node::Name(id) => match board.names.role(id)? {
            NameRole::Step(step) => Some(step),
            _ => None,
        },
        _ => None,
    };
    let steps: Vec<StepId> = names.iter().filter_map(step).collect();
    if steps.len() < 2 || steps.len() < names.len() {
        return;
    }
    let each = steps.iter().zip(names).map(|(step, name)| {
        let told = Reading {
            sides: vec![name.clone(), value.clone()],
            ..reading.clone()
        };
        let told = judge_relation(board, stock, asked, &told, line);
        (told.truth.holds() && told.target == *step).then_some(told)
    });
    let mut each: Vec<Judgement> = each.flatten().collect();
    if !judgement.truth.holds() {
        // A relation that is true gives nothing unless each of its names has this value.
        if each.len() < steps.len() {
            return;
        }
        *judgement = each.remove(0);
    }
    for told in each {
        for (step, own) in told.values {
            if judgement.values.iter().all(|(known, _)| *known != step) {
                judgement.values.push((step, own));
                judgement.establishes.push(step);
            }
        }
    }
}

/// True if a side of a chain lies far from its first side, every name at what it holds: a link that
/// was left out because an unknown is open in it does not hold.
pub(super) fn breaks_apart(board: &Board<'_>, reading: &Reading) -> bool {
    let [first, others @ ..] = reading.sides.as_slice() else {
        return false;
    };
    if others.len() < 2 {
        return false;
    }
    let size = |side: &Tree| {
        let value = evaluate(side, &mut |leaf| in_full(board, leaf));
        value.ok().map(|value| value.number.abs())
    };
    let Some(whole) = size(first) else {
        return false;
    };
    let far = |value: f64| (value - whole).abs() > FARTHEST * whole.max(value) && value > 0.0;
    whole > 0.0 && others.iter().filter_map(size).any(far)
}

/// The relation before the number holds, and the number is not its value.
pub(super) fn not_its_value(mut wrong: Judgement) -> Judgement {
    wrong.evidence.broken_link = true;
    wrong.evidence.lifted.clear();
    wrong
}

/// The value of a true relation in which wrong ones of her own stand follows from them.
fn follows(
    board: &Board<'_>,
    (sides, number): (&[Tree], f64),
    told: Judgement,
    line: usize,
) -> Judgement {
    let wrong = |side: &Tree| {
        let names = side.names().into_iter();
        let owns = names.filter_map(|(id, _)| match board.names.role(id)? {
            NameRole::Step(step) => board.standing.get(&step).filter(|own| !own.right),
            _ => None,
        });
        owns.map(|own| own.line).collect::<Vec<usize>>()
    };
    let comes_to = |side: &&Tree| {
        let value = plain_value(board, side).map(|value| value.number);
        value.is_ok_and(|value| (value - number).abs() <= THREE_FIGURES * number.abs())
    };
    let lines = sides.iter().find(comes_to).map(wrong).unwrap_or_default();
    if lines.is_empty() {
        return not_its_value(told);
    }
    let truth = Truth::Follows(lines);
    let function = scaled(board, told.target, number);
    let own = own(line, number, None, function, &truth);
    Judgement {
        truth,
        values: vec![(told.target, own)],
        establishes: vec![told.target],
        ..told
    }
}

/// A number as typed, or the value of a name, of an unknown that is still open its right one.
pub(super) fn in_full(board: &Board<'_>, leaf: Leaf<'_>) -> Value {
    match leaf {
        Leaf::Literal(literal) => Value::of_literal(literal),
        Leaf::Name(id) => {
            let role = board.names.role(id);
            let function = role.and_then(|role| board.name_function(role));
            board.value_of_name(id, function.map_or(f64::NAN, |function| function[0]))
        }
    }
}

fn is_number(side: &Tree) -> bool {
    match &side.node {
        Node::Literal(_) => true,
        Node::Negative(inner) => is_number(inner),
        _ => false,
    }
}
