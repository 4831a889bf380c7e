//! The sense of a value: which signs and angles are a matter of convention.

use super::board::{Board, Memo, Own};
use super::lift::plain_value;
use super::names::NameRole;
use super::shape::{Shape, shapes};
use super::{Judgement, Remark, Truth};
use crate::key::{Nature, Part, Samples, StepId, agree};
use crate::reading::{Function, NameId, Node, Operator, Reading, Tree};
use crate::units::Dimension;
use std::f64::consts::PI;

/// True if two functions are the same but for a convention that is no fault.
pub(super) fn same(target: StepId, left: &Samples, right: &Samples) -> bool {
    agree(left, right)
        || match target {
            id if id.has_free_sense() => agree(&left.map(|value| -value), right),
            id if id.is_size() => agree(&left.map(|value| -value), right),
            id if id.is_angle() => agree(&left.map(|value| PI - value), right),
            // A line has one direction, however its parts are signed; at other numbers a part may
            // change its sign.
            id if id.is_direction() => agree(&left.map(|value| size_meant(target, value)), right),
            _ => false,
        }
}

/// The size of a value, however its sign was counted; of a direction, the angle that it makes with
/// the horizontal.
pub(super) fn size_meant(target: StepId, number: f64) -> f64 {
    match target {
        id if id.is_direction() => {
            let line = number.rem_euclid(PI);
            line.min(PI - line)
        }
        _ => number.abs(),
    }
}

/// True unless a direction, as it was counted, points another way than the force. The arctangent
/// of the two parts gives the line, whichever sign they have.
pub(super) fn points_so(board: &Board<'_>, target: StepId, tree: &Tree, number: f64) -> bool {
    if !target.is_direction() {
        return true;
    }
    let line = matches!(&tree.node, Node::Call(Function::ArcTangent, _));
    let size = size_meant(target, number);
    let near = |number: f64, shape: &Shape| (shape.of(size) - number).abs() < 1e-9;
    // Parts of which she knows the way are put in by their sizes: `180° − atan(Hy/Hx)`.
    let by_sizes = beside_arctangent(board, tree).map(|whole| {
        let angle = number - whole;
        match tree.node {
            Node::Binary(Operator::Subtract, ..) => whole - angle.abs(),
            _ => whole + angle.abs(),
        }
    });
    let mut shapes = shapes(board, target).into_iter();
    line || shapes
        .any(|shape| near(number, &shape) || by_sizes.is_some_and(|number| near(number, &shape)))
}

/// The angle to which an arctangent is added, or from which it is taken.
fn beside_arctangent(board: &Board<'_>, tree: &Tree) -> Option<f64> {
    let Node::Binary(Operator::Add | Operator::Subtract, whole, angle) = &tree.node else {
        return None;
    };
    let arctangent = matches!(&angle.node, Node::Call(Function::ArcTangent, _));
    let value = plain_value(board, whole).ok().filter(|_| arctangent)?;
    Some(value.number_as(Dimension::ANGLE))
}

/// A value of what is asked as a size, with the sign of the right one: of a force that turns out to
/// act the other way a part is negative.
pub(super) fn as_size(target: StepId, value: f64, right: f64) -> f64 {
    match target.is_size() {
        // What follows is worked with the sense that the key counts positive.
        _ if is_turned(target, right) => value.abs().copysign(right),
        true => value.abs(),
        false => value,
    }
}

/// True for a quantity of a general working that may be counted in either sense.
fn is_turned(target: StepId, right: f64) -> bool {
    target.is_general() && (target.is_size() || target.has_free_sense()) && right != 0.0
}

/// `H = −√(Hx² + Hy²)`: the size of a force set equal to a root with a minus before it.
pub(super) fn negative_root(lone: Option<&(NameRole, Vec<&Tree>)>) -> Option<Judgement> {
    let (NameRole::Step(target), rest) = lone? else {
        return None;
    };
    let whole = matches!(
        target,
        StepId::Reaction(_, Part::Size) | StepId::Found(Nature::Size, _)
    );
    let negative = |side: &&Tree| sign_of_root(side).is_some_and(|sign| sign < 0.0);
    (whole && rest.iter().any(negative)).then(|| {
        let mut judgement = Judgement::of(*target, Truth::DoesNotHold);
        judgement.evidence.negative_size = true;
        judgement
    })
}

/// The sign of a root, and of a multiple of one.
fn sign_of_root(tree: &Tree) -> Option<f64> {
    let number = |tree: &Tree| match &tree.node {
        Node::Literal(literal) => Some(literal.value),
        Node::Negative(inner) => match &inner.node {
            Node::Literal(literal) => Some(-literal.value),
            _ => None,
        },
        _ => None,
    };
    match &tree.node {
        Node::Call(Function::SquareRoot, _) => Some(1.0),
        Node::Negative(inner) => Some(-sign_of_root(inner)?),
        Node::Binary(Operator::Multiply, one, other) => {
            let sign = |root: &Tree, by: &Tree| Some(sign_of_root(root)? * number(by)?.signum());
            sign(one, other).or_else(|| sign(other, one))
        }
        Node::Binary(Operator::Divide, root, by) => {
            Some(sign_of_root(root)? * number(by)?.signum())
        }
        Node::Binary(Operator::Subtract, nought, root) => {
            let nothing = number(nought) == Some(0.0);
            Some(-sign_of_root(root)?).filter(|_| nothing)
        }
        _ => None,
    }
}

/// A function with the sign of a value.
pub(super) fn signed_as(function: Samples, value: f64) -> Samples {
    let sign = (value * function[0]).signum();
    function.map(|one| sign * one)
}

/// Of values at the problem's numbers the one nearest in size to a number; the number where none is.
pub(super) fn nearest_size(accepted: &[(Samples, Vec<usize>)], number: f64) -> f64 {
    let values = accepted.iter().map(|(function, _)| function[0]);
    let off = |value: &f64| (value.abs() - number.abs()).abs();
    let nearest = values.min_by(|one, other| off(one).total_cmp(&off(other)));
    nearest.unwrap_or(number)
}

/// Lets a value stand in the key's sense, with the sense in which it was counted.
pub(super) fn settle_sense(target: StepId, own: &mut Own, right: f64) {
    // A weight or part told below zero has its sign in the sums of whoever told it so.
    let signed = is_turned(target, right) || !target.is_general() && target.is_size();
    own.against = signed && own.value * right < 0.0;
    own.value = as_size(target, own.value, right);
    own.typed = own
        .typed
        .map(|(typed, written)| (as_size(target, typed, right), written));
}

/// A part told by its force is counted in the sense in which she counts the force.
pub(super) fn turn_with_unknown(board: &Board<'_>, judgement: &mut Judgement) {
    let Some(general) = &board.key.general else {
        return;
    };
    for (target, own) in &mut judgement.values {
        let unknown = general.multiples.get(target);
        let named = unknown.filter(|unknown| judgement.evidence.rests_on.contains(unknown));
        // A number behind it says itself in which sense it is counted.
        let turned = own.typed.is_none() && named.is_some_and(|unknown| board.is_against(*unknown));
        if turned && own.right && is_turned(*target, own.value) {
            own.against = !own.against;
        }
    }
}

/// The most names of a line that are tried in the learner's sense.
const MOST_TURNED: usize = 3;

/// Judges a line of a general working with its names in the senses that the learner counted, where
/// she counted some in another than the key; `None` where it holds in none of them.
pub(super) fn in_own_senses(
    board: &Board<'_>,
    asked: StepId,
    readings: &[Reading],
    judge: &dyn Fn(&Board<'_>) -> Judgement,
) -> Option<Judgement> {
    let names = || {
        let sides = readings.iter().flat_map(|reading| &reading.sides);
        sides.flat_map(Tree::names)
    };
    // A coefficient is made of sizes: `μ = FN/N`, whatever sign FN has.
    let of_number = |(id, _): (NameId, _)| board.names.dimension(id) == Dimension::NUMBER;
    let asked = board.key.step(asked).map(|step| step.dimension);
    let of_sizes = asked == Some(Dimension::NUMBER) || names().any(of_number);
    let mut named: Vec<StepId> = Vec::new();
    for (id, _) in names() {
        if let Some(NameRole::Step(step)) = board.names.role(id)
            && (board.is_against(step)
                || is_friction_by_size(board, step, of_sizes)
                || is_push_by_size(board, step))
            && !named.contains(&step)
        {
            named.push(step);
        }
    }
    named.truncate(MOST_TURNED);
    // Every name in her sense first.
    (1..1_usize << named.len()).rev().find_map(|chosen| {
        let is_chosen = |(at, step): (usize, &StepId)| (chosen & (1 << at) != 0).then_some(*step);
        let turned: Vec<StepId> = named.iter().enumerate().filter_map(is_chosen).collect();
        let with = Board {
            turned: &turned,
            memo: Memo::default(),
            ..*board
        };
        // What is true beside the question is no fault either.
        let noted = |found: &Judgement| found.truth == Truth::Noted && found.proved;
        let found = Some(judge(&with)).filter(|found| found.truth.holds() || noted(found));
        found.map(|mut found| {
            found.evidence.turned = turned.clone();
            found
        })
    })
}

/// A line that holds, unless a way is said behind it that does not hold with its names in the senses
/// in which she counted them; which struts it counts otherwise than she did is kept.
pub(super) fn unless_turned(
    board: &Board<'_>,
    readings: &[Reading],
    mut first: Judgement,
    judge: &dyn Fn(&Board<'_>) -> Judgement,
) -> Judgement {
    let sides = readings.iter().flat_map(|reading| &reading.sides);
    let steps = sides
        .flat_map(Tree::names)
        .filter_map(|(id, _)| match board.names.role(id)? {
            NameRole::Step(step) => Some(step),
            _ => None,
        });
    let turned: Vec<StepId> = steps.filter(|step| board.is_against(*step)).collect();
    let struts: Vec<StepId> = turned
        .iter()
        .copied()
        .filter(|step| is_of_strut(board, *step))
        .collect();
    let said = !first.evidence.ways.is_empty();
    if turned.is_empty() || !said && struts.is_empty() {
        return first;
    }
    let with = Board {
        turned: if said { &turned } else { &struts },
        memo: Memo::default(),
        ..*board
    };
    let found = judge(&with);
    if !said {
        first.evidence.unturned = if found.stands() { Vec::new() } else { struts };
        return first;
    }
    match found.evidence.wrong_way {
        true => found,
        false => first,
    }
}

/// True for friction that the key counts against its way, and of which she has said no way or that
/// stands in a line of sizes: its name may stand for its size.
fn is_friction_by_size(board: &Board<'_>, step: StepId, of_sizes: bool) -> bool {
    let heading = board.key.heading(step);
    let unsaid = |own: &Own| own.line == 0;
    heading.is_some_and(|heading| heading.kind == "friction")
        && step.has_free_sense()
        && (of_sizes || board.standing.get(&step).is_none_or(unsaid))
        && board.right(step).is_some_and(|right| right[0] < 0.0)
}

impl Board<'_> {
    /// True for the force of a strut that pushes where the key lets it pull.
    pub fn is_pushing_strut(&self, step: StepId) -> bool {
        let pushes = self.right(step).is_some_and(|right| right[0] < 0.0);
        pushes && step.is_unknown() && is_of_strut(self, step)
    }
}

/// True for the force of a strut, or a part of it: it pulls or pushes along its line, so that its name
/// has one sense from where that is told.
fn is_of_strut(board: &Board<'_>, step: StepId) -> bool {
    let multiples = board.key.general.as_ref().map(|general| &general.multiples);
    let of = multiples
        .and_then(|multiples| multiples.get(&step))
        .copied();
    let strut = of.unwrap_or(step);
    let kind = board.key.heading(strut).map(|heading| heading.kind);
    let is_force = board.key.step(strut).map(|step| step.dimension) == Some(Dimension::FORCE);
    matches!(strut, StepId::Found(Nature::Either, _)) && is_force && kind != Some("friction")
}

/// True for the pull of a strut that pushes, of which she has said nothing: `T cos 25 = S cos 30` may
/// count it as it acts.
fn is_push_by_size(board: &Board<'_>, step: StepId) -> bool {
    let unsaid = |own: &Own| own.line == 0;
    let force = board.key.step(step).map(|step| step.dimension) == Some(Dimension::FORCE);
    let weight = matches!(step, StepId::Found(Nature::Weight, _));
    (force && step.is_general() && !weight && !step.has_free_sense())
        && board.standing.get(&step).is_none_or(unsaid)
        && board.right(step).is_some_and(|right| right[0] < 0.0)
}

pub(super) fn note_sense(target: StepId, number: f64, right: f64, judgement: &mut Judgement) {
    if target.has_free_sense() && number * right < 0.0 && judgement.truth.holds() {
        judgement.remarks.push(Remark::OppositeSense);
    }
    if target.is_size() && number * right < 0.0 && judgement.truth.holds() {
        judgement.remarks.push(Remark::SignInSum);
    }
}
