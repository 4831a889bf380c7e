//! Relations that are not one balance with one unknown: balances about any pivot, with parts of
//! the hinge's force in them, and lines that are not linear in the forces (tan ψ, H²).

use super::board::{Board, Own};
use super::by_terms::terms_of;
use super::lift::{lift, plain_leaf, plain_value};
use super::names::NameRole;
use super::open::{is_alias, is_open};
use super::stock::Stock;
use crate::key::{Nature, Part, Pins, Samples, StepId};
use crate::reading::{Leaf, NameId, Node, Operator, Tree, Value, evaluate};
use crate::units::Dimension;

/// Two sides nearer than this, relative to their size, are equal.
const EQUAL: f64 = 1e-9;
/// No number of a working is larger, in SI units.
const HUGE: f64 = 1e7;
/// How far the unknowns are moved to see whether a relation says anything about them.
const MOVED: f64 = 1.37;
/// A root smaller than this share of the unknown is none: the unknown drops out.
const NOTHING: f64 = 1e-3;

/// The senses of the hinge's parts (true for one counted against its axis) in which the sides are
/// equal for every choice of numbers once each unknown has its right value, and not for other
/// values of the unknowns; `None` where they are not equal in any.
pub(super) fn holds_identically(
    board: &Board<'_>,
    stock: &Stock,
    sides: &[&Tree],
) -> Option<Vec<(StepId, bool)>> {
    let parts = free_parts(board, sides);
    let equal = |flips: usize, off: f64| {
        equal_when(board, stock, sides, &|id, choice| {
            unknown_at(board, id, &parts, (flips, off), choice)
        })
    };
    let flips = (0..1_usize << parts.len().min(2))
        .find(|flips| equal(*flips, 1.0) && !equal(*flips, MOVED))?;
    let counted = |(at, part): (usize, &StepId)| (*part, flips & (1 << at) != 0);
    Some(parts.iter().enumerate().map(counted).collect())
}

/// True for sides that are forces, as the names in them tell.
pub(super) fn is_of_forces(board: &Board<'_>, sides: &[&Tree]) -> bool {
    let mut values = sides
        .iter()
        .filter_map(|side| plain_value(board, side).ok());
    let sure = values.find(|value| !value.bare && !value.uncertain);
    sure.is_some_and(|value| value.dimension == Dimension::FORCE)
}

/// True if, everything brought to one side, some terms are positive and some negative, or one may be
/// either.
pub(super) fn goes_both_ways(board: &Board<'_>, sides: &[&Tree]) -> bool {
    let terms = terms_of(sides);
    let values = terms.iter().filter_map(|(sign, term)| {
        let mut at_right = |leaf: Leaf<'_>| match leaf {
            Leaf::Name(id) => match board.names.role(id) {
                Some(NameRole::Step(step)) if board.right(step).is_some() => {
                    let right = board.right(step).map_or(f64::NAN, |right| right[0]);
                    board.value_of_name(id, right)
                }
                _ => plain_leaf(board, leaf),
            },
            literal => plain_leaf(board, literal),
        };
        let value = evaluate(term, &mut at_right).ok()?;
        Some(sign * value.number)
    });
    let values: Vec<f64> = values.collect();
    let both = values.iter().any(|value| *value > 0.0) && values.iter().any(|value| *value < 0.0);
    both || !free_parts(board, sides).is_empty()
}

/// The parts of a support's force that are named, each once, and may be counted in either sense.
pub(super) fn free_parts(board: &Board<'_>, sides: &[&Tree]) -> Vec<StepId> {
    let mut parts: Vec<StepId> = Vec::new();
    for side in sides {
        for (id, _) in side.names() {
            let Some(NameRole::Step(step)) = board.names.role(id) else {
                continue;
            };
            // A part of a strut's force has the sense in which that is counted.
            let open = |step: &StepId| !board.standing.contains_key(step);
            let made_of = board.key.open_in(step).into_iter().filter(open);
            for step in std::iter::once(step).chain(made_of) {
                let free = step.has_free_sense() && !parts.contains(&step);
                if free && !is_signed(board, step, sides) {
                    parts.push(step);
                }
            }
        }
    }
    parts
}

/// True for a part that she found with a minus in a general working: `FN = −48.3 N` tells the sense
/// in which a balance counts it. A plus may be a size; so may a name where the parts of one force
/// are compared with each other, as in `FN = μ·N` and `tan ψ = Hy/Hx`.
fn is_signed(board: &Board<'_>, part: StepId, sides: &[&Tree]) -> bool {
    let is_negative = |own: &Own| own.right && own.line > 0 && (own.value < 0.0) != own.against;
    if !part.is_general() || !board.standing.get(&part).is_some_and(is_negative) {
        return false;
    }
    let noun = |step: StepId| board.key.heading(step).map(|heading| &heading.noun);
    let names = sides.iter().flat_map(|side| side.names());
    let steps = names.filter_map(|(id, _)| match board.names.role(id)? {
        NameRole::Step(step) => Some(step),
        _ => None,
    });
    let steps: Vec<StepId> = steps.collect();
    let is_whole = |step: &StepId| {
        matches!(
            step,
            StepId::Found(Nature::Size | Nature::Direction | Nature::Sought, _)
        )
    };
    steps.iter().any(|step| noun(*step) != noun(part)) && !steps.iter().any(is_whole)
}

/// True if the sides are equal whatever the unknowns are.
pub(super) fn is_empty(board: &Board<'_>, stock: &Stock, sides: &[&Tree]) -> bool {
    // Beside a huge term any other is nothing.
    let huge = |side: &Tree| {
        side.literals()
            .iter()
            .any(|place| place.literal.value > HUGE)
    };
    !sides.iter().any(|side| huge(side))
        && equal_when(board, stock, sides, &|id, choice| {
            unknown_at(board, id, &[], (0, MOVED), choice)
        })
}

/// True for a relation that is true of the values as they stand and not by itself: `1.4T = 323.4`
/// once T is found, `T² = Tx² + Ty²`. A side that is a number alone is a value, not a relation;
/// only a sum may be set to zero. With an unknown that is still open in it, its truth would tell
/// what nobody has found.
pub(super) fn is_true_relation(board: &Board<'_>, stock: &Stock, sides: &[&Tree]) -> bool {
    let [left, right] = sides else { return false };
    let value = |side: &Tree| matches!(&side.node, Node::Literal(literal) if literal.value != 0.0);
    let name = |side: &Tree| matches!(side.node, Node::Name(_));
    let open = |side: &Tree| {
        let names = side.names();
        let mut roles = names.iter().filter_map(|(id, _)| board.names.role(*id));
        roles.any(|role| is_open(board, role).is_some())
    };
    let told = |side: &Tree| value(side) || name(side) || open(side);
    let relation = !told(left) && !told(right);
    // `T + Hx = 0` is true with Hx as she has it, counted to the other side.
    let is_turned = |step: StepId| {
        let signs = board.standing.get(&step).zip(board.right(step));
        step.has_free_sense() && signs.is_some_and(|(own, right)| own.value * right[0] < 0.0)
    };
    let in_her_sense = |id: NameId, choice: usize| match board.names.role(id) {
        Some(role @ NameRole::Step(step)) if is_turned(step) => {
            let function = board.name_function(role)?;
            Some(board.value_of_name(id, -function[choice]))
        }
        _ => None,
    };
    let equal = || {
        equal_when(board, stock, sides, &|_, _| None)
            || equal_when(board, stock, sides, &in_her_sense)
    };
    relation && equal() && !is_same(left, right)
}

/// True if both sides are one and the same expression.
pub(super) fn is_same(left: &Tree, right: &Tree) -> bool {
    match (&left.node, &right.node) {
        (Node::Literal(one), Node::Literal(other)) => one.value == other.value,
        (Node::Name(one), Node::Name(other)) => one == other,
        (Node::Negative(one), Node::Negative(other)) => is_same(one, other),
        (Node::Call(one, left), Node::Call(other, right)) => one == other && is_same(left, right),
        (Node::Binary(one, a, b), Node::Binary(other, c, d)) => {
            one == other && is_same(a, c) && is_same(b, d)
        }
        _ => false,
    }
}

/// True if some lifting makes the sides equal at every choice of numbers, names standing for what
/// `named` says of them.
fn equal_when(
    board: &Board<'_>,
    stock: &Stock,
    sides: &[&Tree],
    named: &dyn Fn(NameId, usize) -> Option<Value>,
) -> bool {
    let combine = |sides: &[&Tree], choice: usize, leaf: &mut dyn FnMut(Leaf<'_>) -> Value| {
        let mut leaf = |found: Leaf<'_>| match found {
            Leaf::Name(id) => named(id, choice).unwrap_or_else(|| leaf(Leaf::Name(id))),
            literal => leaf(literal),
        };
        let (left, right) = values(sides, &mut leaf)?;
        let mut size = 0.0;
        for side in sides {
            size += magnitude(side, &mut leaf)?;
        }
        // What is apart at one choice of numbers need not be looked at for the others.
        let apart = (left - right) / size.max(EQUAL);
        (apart.abs() < EQUAL).then_some(apart)
    };
    !lift(board, stock, sides, None, &combine).is_empty()
}

/// The sizes of the terms of a sum, added: what its value is small or large against.
fn magnitude(tree: &Tree, leaf: &mut dyn FnMut(Leaf<'_>) -> Value) -> Option<f64> {
    match &tree.node {
        Node::Binary(Operator::Add | Operator::Subtract, left, right) => {
            Some(magnitude(left, leaf)? + magnitude(right, leaf)?)
        }
        Node::Negative(inner) => magnitude(inner, leaf),
        _ => evaluate(tree, leaf).ok().map(|value| value.number.abs()),
    }
}

/// The values of both sides.
fn values(sides: &[&Tree], leaf: &mut dyn FnMut(Leaf<'_>) -> Value) -> Option<(f64, f64)> {
    let mut number = |at: usize| match sides.get(at) {
        Some(side) => evaluate(side, leaf).ok().map(|value| value.number),
        // An expression alone is a sum that vanishes.
        None => Some(0.0),
    };
    Some((number(0)?, number(1)?))
}

/// The value of an unknown's name: `off` times the right one, in the sense that `flips` says; each
/// unknown is moved by an amount of its own, so that no balance still holds.
pub(super) fn unknown_at(
    board: &Board<'_>,
    id: NameId,
    parts: &[StepId],
    (flips, off): (usize, f64),
    choice: usize,
) -> Option<Value> {
    let role = board.names.role(id)?;
    let step = match role {
        // What is made of the unknown moves with it.
        role if is_alias(board, role) => board.unknown()?,
        NameRole::Step(step) if step.is_general() => {
            let number = general_at(board, step, parts, (flips, off), choice)?;
            return Some(Value::of(number, board.names.dimension(id)));
        }
        NameRole::Step(step @ (StepId::Pull(_) | StepId::Reaction(..))) => step,
        _ => return None,
    };
    let flipped = parts
        .iter()
        .position(|part| *part == step)
        .is_some_and(|at| flips & (1 << at) != 0);
    let sign = if flipped { -1.0 } else { 1.0 };
    let rank = board.key.rank(step)?;
    let own = 1.0 + (off - 1.0) * (1.0 + 0.3 * rank as f64);
    let number = sign * own * board.name_function(role)?[choice];
    Some(Value::of(number, board.names.dimension(id)))
}

/// The value of an unknown of a general working, moved like that of [`unknown_at`], or of what is
/// made of such.
fn general_at(
    board: &Board<'_>,
    step: StepId,
    parts: &[StepId],
    (flips, off): (usize, f64),
    choice: usize,
) -> Option<f64> {
    let moved = |id: StepId| {
        let at = parts.iter().position(|part| *part == id);
        let sign = if at.is_some_and(|at| flips & (1 << at) != 0) {
            -1.0
        } else {
            1.0
        };
        let rank = board.key.rank(id)? % 7;
        let own = 1.0 + (off - 1.0) * (1.0 + 0.3 * rank as f64);
        let named = board.name_function(NameRole::Step(id))?[choice];
        let right = board.sign_of_name(id) * named;
        // What is nothing must move too.
        Some(sign * own * right + if right == 0.0 { off - 1.0 } else { 0.0 })
    };
    let sign = board.sign_of_name(step);
    if step.is_unknown() {
        return moved(step).map(|value| sign * value);
    }
    let mut pins = Pins::new();
    for (id, own) in board.own_pins() {
        pins.insert(id, own[choice]);
    }
    let made_of = board.key.open_in(step);
    if made_of.is_empty() || pins.contains_key(&step) {
        return None;
    }
    for id in made_of {
        pins.insert(id, moved(id)?);
    }
    let sample = &board.sampling.samples[choice];
    board
        .key
        .value(step, sample, &pins)
        .map(|value| sign * value)
}

/// The lines of the learner's own from which an equation follows that is not linear in its
/// unknown: the sides are equal where the unknown is what those lines give.
pub(super) fn follows_identically(
    board: &Board<'_>,
    stock: &Stock,
    sides: &[&Tree],
    unknown: StepId,
    accepted: &[(Samples, Vec<usize>)],
) -> Option<Vec<usize>> {
    if !unknown.is_general() {
        return follows_from_parts(board, stock, sides, unknown, accepted);
    }
    let holds = |function: &Samples, by: f64| {
        equal_when(board, stock, sides, &|id, choice| {
            let mut pins = Pins::new();
            for (id, own) in board.own_pins() {
                pins.insert(id, own[choice]);
            }
            pins.insert(unknown, by * function[choice]);
            let NameRole::Step(step) = board.names.role(id)? else {
                return None;
            };
            let made_of = step == unknown || board.key.open_in(step).contains(&unknown);
            let sample = &board.sampling.samples[choice];
            let number = board.key.value(step, sample, &pins).filter(|_| made_of)?;
            Some(Value::of(number, board.names.dimension(id)))
        })
    };
    lines_where(accepted, &holds)
}

/// The lines of her own with whose function a relation holds, and not with that function moved.
fn lines_where(
    accepted: &[(Samples, Vec<usize>)],
    holds: &dyn Fn(&Samples, f64) -> bool,
) -> Option<Vec<usize>> {
    let mut own = accepted.iter().skip(1);
    let found = own.find(|(function, _)| holds(function, 1.0) && !holds(function, MOVED));
    found.map(|(_, lines)| lines.clone())
}

/// The same for the size and the direction of a support's force, which her parts give:
/// `H² = Hx² + Hy²`, `tan ψ = 260/1005`.
fn follows_from_parts(
    board: &Board<'_>,
    stock: &Stock,
    sides: &[&Tree],
    unknown: StepId,
    accepted: &[(Samples, Vec<usize>)],
) -> Option<Vec<usize>> {
    if !matches!(unknown, StepId::Reaction(_, Part::Size | Part::Direction)) {
        return None;
    }
    let parts = free_parts(board, sides);
    let holds = |function: &Samples, by: f64| {
        (0..1_usize << parts.len().min(2)).any(|flips| {
            equal_when(board, stock, sides, &|id, choice| {
                let role = board.names.role(id)?;
                if role != NameRole::Step(unknown) {
                    return unknown_at(board, id, &parts, (flips, 1.0), choice);
                }
                Some(Value::of(by * function[choice], board.names.dimension(id)))
            })
        })
    };
    lines_where(accepted, &holds)
}

/// The unknown near its right value for which both sides are equal, where they are not linear in
/// it.
pub(super) fn near_root(board: &Board<'_>, unknown: StepId, sides: &[&Tree]) -> Option<f64> {
    let right = board.right(unknown)?[0];
    let apart = |trial: f64| -> Option<f64> {
        let (left, right) = values(sides, &mut |leaf| match leaf {
            Leaf::Name(id) if board.names.role(id) == Some(NameRole::Step(unknown)) => {
                Value::of(trial, board.names.dimension(id))
            }
            leaf => plain_leaf(board, leaf),
        })?;
        Some(left - right)
    };
    let (mut low, mut high) = (0.97 * right, 1.03 * right);
    let (first, last) = (apart(low)?, apart(high)?);
    if first * last > 0.0 {
        return None;
    }
    for _ in 0..60 {
        let middle = 0.5 * (low + high);
        if apart(middle)? * first > 0.0 {
            low = middle;
        } else {
            high = middle;
        }
    }
    Some(0.5 * (low + high))
}

/// True where a balance with one unknown cannot tell: other unknowns stand in it, or none is found.
pub(super) fn may_hold_otherwise(
    board: &Board<'_>,
    unknown: StepId,
    sides: &[&Tree],
    root: Option<f64>,
) -> bool {
    let other = |side: &&Tree| {
        side.names().iter().any(|(id, _)| {
            board
                .names
                .role(*id)
                .and_then(|role| is_open(board, role))
                .is_some_and(|open| open != unknown)
        })
    };
    let reaction = matches!(unknown, StepId::Reaction(..)) || unknown.is_general();
    // `T·sin 65 = 0.906·T`: what is left of the unknown is what was rounded.
    let nothing = root.is_none_or(|root| {
        let right = board.right(unknown).map_or(0.0, |right| right[0].abs());
        root.abs() < NOTHING * right
    });
    nothing || reaction || sides.iter().any(other)
}
