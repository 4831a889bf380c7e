//! The way behind a form that tells a force by what is not found yet, and behind a value of her own
//! told once more.

use super::super::board::Board;
use super::super::expression::calculated;
use super::super::names::{NameRole, step_alone};
use super::super::printed_units::{counted_in, printed_force};
use super::super::value_behind::in_full;
use super::super::{Judgement, Remark, Truth};
use super::{along_axis, compare_one, ends, on_body, says, sense_on};
use crate::key::{Axis, Nature, Part, Samples, StepId};
use crate::plane::Vector;
use crate::problem::ForceId;
use crate::reading::{Leaf, Node, Operator, Reading, Tree, Value, Way, evaluate};
use crate::text::Span;

/// A form comes to a value if it is off by no more than this share of it.
const NEAR: f64 = 0.02;

/// Refuses a form that tells a force by names, some of which are not found yet, with a way behind it
/// in which that force does not act. A form that comes out below zero has its sign beside the word.
pub(super) fn compare_form(
    board: &Board<'_>,
    reading: &Reading,
    said: &[(Way, Span)],
    judgement: &mut Judgement,
) {
    let noted = judgement.truth == Truth::Noted && judgement.proved;
    let told = judgement.evidence.tells.filter(|_| noted);
    let Some(step) = told.or_else(|| told_by_balance(board, reading, judgement)) else {
        return;
    };
    let number = number_told(board, reading, step, judgement);
    let Some(number) = number.filter(|number| *number > 0.0) else {
        return;
    };
    let mut told = Judgement::of(step, Truth::Holds);
    told.evidence.number = Some(calculated(number));
    let on = on_body(board, &told, said);
    for (way, span) in said {
        compare_one(board, *way, (*span, on), &mut told);
    }
    if told.truth == Truth::DoesNotHold {
        judgement.target = step;
        judgement.evidence.tells = None;
        judgement.remarks.clear();
        judgement.refuse_way();
        judgement.caret = told.caret;
    }
}

/// Refuses a part of a force that is told by a product, `T sin 10 = 141 N`, with a way in which neither
/// its level nor its upright part acts, nor that along the body or across it, where it is one of them.
pub(super) fn compare_product(
    board: &Board<'_>,
    reading: &Reading,
    said: &[(Way, Span)],
    judgement: &mut Judgement,
) {
    let ([form, value], Some((_, span))) = (reading.sides.as_slice(), said.first()) else {
        return;
    };
    let Node::Literal(number) = &value.node else {
        return;
    };
    let number = Value::of_literal(number).number.abs();
    let Some(force) = force_of_product(board, form) else {
        return;
    };
    let known = board.name_value(NameRole::Step(force.0));
    let Some(size) = known.map(f64::abs) else {
        return;
    };
    let is_it = |way: &&Vector| {
        let part = size * libm::hypot(way.x, way.y);
        (part - number).abs() <= NEAR * number
    };
    let acts_so = |part: &Vector| {
        said.iter().all(|(way, _)| match says(*way) {
            Ok((axis, sign)) => sign * along_axis(*part, axis) > super::NONE,
            Err(_) => true,
        })
    };
    let parts = parts_of_force(board, force);
    let mut it = parts.iter().filter(is_it).peekable();
    if it.peek().is_some() && !it.any(acts_so) {
        judgement.target = StepId::PartOf(force.1, Axis::Horizontal);
        judgement.remarks.clear();
        judgement.refuse_way();
        judgement.caret = Some(*span);
    }
}

/// The force of whose name and a sine or cosine a side is a product; `None` of other sides.
fn force_of_product(board: &Board<'_>, form: &Tree) -> Option<(StepId, ForceId)> {
    let product = matches!(form.node, Node::Binary(Operator::Multiply, ..));
    let names = form.names();
    let ([(id, _)], true, None) = (names.as_slice(), product, &board.key.general) else {
        return None;
    };
    match board.names.role(*id)? {
        NameRole::Step(step @ (StepId::Weight(force) | StepId::Pull(force))) => Some((step, force)),
        _ => None,
    }
}

/// The parts of such a force for one unit of it: level, upright, across the body and along it.
fn parts_of_force(board: &Board<'_>, (step, force): (StepId, ForceId)) -> Vec<Vector> {
    let part = |step: StepId| super::acting(board, step);
    let across = part(StepId::Across(force));
    let along = part(step).zip(across);
    let along = along.map(|(whole, across)| Vector::new(whole.x - across.x, whole.y - across.y));
    let level = part(StepId::PartOf(force, Axis::Horizontal));
    let upright = part(StepId::PartOf(force, Axis::Vertical));
    [level, upright, across, along]
        .into_iter()
        .flatten()
        .collect()
}

/// What a balance that holds tells by its name alone on one side.
fn told_by_balance(board: &Board<'_>, reading: &Reading, judgement: &Judgement) -> Option<StepId> {
    let balance = judgement.truth.holds() && judgement.target.is_balance();
    board.key.general.as_ref().filter(|_| balance)?;
    step_alone(board, &reading.sides)
}

/// What a form comes to with all that is not found at its right value, in the senses in which the
/// line counts it; `None` where that is not the size of what it tells.
fn number_told(
    board: &Board<'_>,
    reading: &Reading,
    step: StepId,
    judgement: &Judgement,
) -> Option<f64> {
    let right = board.right(step)?[0];
    let senses = judgement.remarks.iter().find_map(|remark| match remark {
        Remark::SensesTaken(senses) => Some(senses.as_slice()),
        _ => None,
    });
    let senses = senses.unwrap_or_default();
    let against = |step: StepId| senses.contains(&(step, true));
    if let Some((_, against)) = senses.iter().find(|(told, _)| *told == step) {
        let counted = board.sign_of_name(step) * right;
        return Some(if *against { -counted } else { counted });
    }
    let is_name = |side: &&Tree| match side.node {
        Node::Name(id) => board.names.role(id) == Some(NameRole::Step(step)),
        _ => false,
    };
    let form = reading.sides.iter().find(|side| !is_name(side))?;
    // Bare numbers may be counted in the unit in which the forces are printed.
    let units = [Some(1.0), printed_force(board)].into_iter().flatten();
    let mut numbers = units.filter_map(|unit| {
        let mut leaf = |leaf: Leaf<'_>| {
            let turned = match leaf {
                Leaf::Name(id) => match board.names.role(id) {
                    Some(NameRole::Step(named)) => against(named),
                    _ => false,
                },
                Leaf::Literal(_) => false,
            };
            let value = counted_in(unit, in_full(board, leaf));
            let number = if turned { -value.number } else { value.number };
            Value { number, ..value }
        };
        let value = evaluate(form, &mut leaf).ok()?;
        Some(unit * value.number)
    });
    numbers.find(|number| (number.abs() - right.abs()).abs() <= NEAR * right.abs())
}

impl Judgement {
    /// True for a wrong value of hers told once more with a way in which neither that value points
    /// nor the right one.
    pub fn is_turned_again(&self, board: &Board<'_>) -> bool {
        let below_zero = self.evidence.number.is_some_and(|typed| typed.value < 0.0);
        let own = board.standing.get(&self.target);
        let Some((own, right)) = own.zip(board.right(self.target)).filter(|_| !below_zero) else {
            return false;
        };
        let named = |on: &usize| match (board.on_body, bodies_of(board, self.target).get(*on)) {
            (Some(named), Some(body)) => named == *body,
            _ => true,
        };
        let bodies = 0..bodies_of(board, self.target).len().max(1);
        let fits = |on: usize, value: f64| {
            let mut ways = self.evidence.ways.iter();
            ways.all(|way| points(board, (self.target, on), value, *way).unwrap_or(true))
        };
        let mut here = bodies.filter(named);
        !here.any(|on| fits(on, own.function[0]) || fits(on, right[0]))
    }
}

/// The bodies on which a force acts with a way of its own on each.
fn bodies_of<'b>(board: &Board<'b>, step: StepId) -> Vec<&'b str> {
    if let Some(ends) = ends(board, step) {
        return ends.iter().map(|(body, _)| body.as_str()).collect();
    }
    let general = board.key.general.as_ref();
    let between = general.and_then(|general| general.between.get(&step));
    let both = between.into_iter().flatten();
    both.map(String::as_str).collect()
}

/// Whether a quantity of this value, counted as the key does, has a way; `None` where it has none of
/// its own.
pub(super) fn points(
    board: &Board<'_>,
    (step, on): (StepId, usize),
    value: f64,
    way: Way,
) -> Option<bool> {
    let sense = sense_on(board, step, on);
    let (axis, sign) = match says(way) {
        Ok(says) => says,
        Err(turns) => {
            let own = super::turn_of(board, step, value)?;
            return Some(sense * turns * own > 0.0);
        }
    };
    if let Some((_, pull)) = ends(board, step).and_then(|ends| ends.get(on)) {
        return Some(sign * along_axis(*pull, axis) > 0.0);
    }
    if let Some(along) = step.along() {
        return Some(along == axis && sense * sign * value > 0.0);
    }
    let along = match step {
        StepId::Found(Nature::Size | Nature::Direction, _)
        | StepId::Reaction(_, Part::Size | Part::Direction) => return None,
        StepId::Found(Nature::Weight, _) => {
            return Some(axis == Axis::Vertical && sign < 0.0);
        }
        StepId::Found(..) => {
            let way = board.key.general.as_ref()?.ways.get(&step)?;
            value * along_axis(*way, axis)
        }
        step => along_axis(super::acting(board, step)?, axis),
    };
    Some(sense * sign * along > 0.0)
}

/// Of a value that points as was said, the function that does so: beside the nearest in size another
/// may be rounded to the same number.
pub(super) fn take_pointing(
    board: &Board<'_>,
    said: &[(Way, Span)],
    on: usize,
    judgement: &mut Judgement,
) {
    let target = judgement.target;
    let typed = judgement.evidence.number.filter(|typed| typed.value >= 0.0);
    let (Some(typed), Some(_)) = (typed, target.along()) else {
        return;
    };
    let so = |function: &Samples| {
        let mut ways = said.iter();
        ways.all(|(way, _)| points(board, (target, on), function[0], *way) == Some(true))
    };
    let mut values = judgement.values.iter_mut();
    let Some((_, own)) = values.find(|(step, own)| *step == target && !so(&own.function)) else {
        return;
    };
    let near = super::near(board, target, Some(typed));
    let accepted = board.accepted(target);
    let mut pointing = accepted.iter().enumerate();
    let found = pointing.find(|(_, (function, _))| so(function) && near.contains(&function[0]));
    if let Some((at, (function, lines))) = found {
        own.function = *function;
        own.right = at == 0;
        judgement.truth = match at {
            0 => Truth::Holds,
            _ => Truth::Follows(lines.clone()),
        };
    }
}
