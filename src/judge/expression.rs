//! An expression, or a chain of them, as the value of a step.

use super::board::{Board, Own};
use super::grade::{Grade, Typed, figures_meant, grade, takes_ten, to_figures};
use super::lift::{Lifted, Stock, lift, looseness, plain_value};
use super::names::NameRole;
use super::{Judgement, Remark, Truth, equation};
use crate::key::{Part, Samples, StepId, agree};
use crate::reading::{Function, Node, Tree, Value, evaluate};
use crate::units::{Dimension, Written};
use std::f64::consts::PI;

/// A right way whose value is off by more than this share was rounded too hard (2-figure sines).
const TOO_COARSE: f64 = 0.01;
/// A right way that is off by more than this share should keep more figures.
const COARSE: f64 = 0.002;

/// However rounded its numbers are, an expression's value counts to this share of it at least.
const MOST_LOOSE: f64 = 0.003;

/// Judges a chain of expressions as the value of `target`. `named` is true where the line says
/// so by name.
pub(super) fn judge(
    board: &Board<'_>,
    stock: &Stock,
    target: StepId,
    sides: &[&Tree],
    line: usize,
    named: bool,
) -> Judgement {
    let dimension = board
        .key
        .step(target)
        .map_or(Dimension::NUMBER, |step| step.dimension);
    if let Some(span) = names_itself(board, target, sides) {
        let mut judgement = Judgement::of(target, Truth::Circular);
        judgement.caret = Some(span);
        return judgement;
    }
    let mut values = Vec::new();
    for side in sides {
        match plain_value(board, side) {
            Ok(value) => values.push(value),
            Err(mismatch) => {
                let mut judgement = Judgement::of(target, Truth::Mismatched(mismatch));
                judgement.caret = Some(mismatch.span);
                return judgement;
            }
        }
    }
    let (Some(first), Some(last)) = (values.first(), values.last()) else {
        return Judgement::of(target, Truth::DoesNotHold);
    };
    let mut judgement = one(board, stock, target, dimension, sides[0], *first, line);
    if sides.len() > 1 {
        follow_chain(dimension, sides, &values, &mut judgement);
    }
    // A value that would tell what the learner has not found is not shown.
    judgement.value =
        Some(last.number_as(dimension)).filter(|_| sides.iter().all(|side| is_known(board, side)));
    if judgement.truth == Truth::DoesNotHold && is_other_angle(board, target, &judgement) {
        judgement.truth = Truth::OtherAngle;
    }
    if !judgement.truth.holds() && !named {
        judgement.evidence.other_step = other_step(board, stock, target, sides[0], *first);
    }
    if judgement.truth.holds() && rests_on_open(board, target, sides) {
        // True, but its value would tell what nobody has found.
        judgement.remarks.push(Remark::RestsOnOpen);
        judgement.value = None;
    }
    if judgement.truth.holds() {
        judgement.establishes.push(target);
        remark_on_unit(sides, &values, dimension, &mut judgement);
    }
    judgement
}

/// Judges one expression.
fn one(
    board: &Board<'_>,
    stock: &Stock,
    target: StepId,
    dimension: Dimension,
    tree: &Tree,
    value: Value,
    line: usize,
) -> Judgement {
    let number = value.number_as(dimension);
    let typed = typed_number(tree, number, dimension);
    let mut judgement = Judgement::of(target, Truth::DoesNotHold);
    judgement.evidence.ratios = ratios(tree);
    judgement.evidence.number = Some(typed.unwrap_or_else(|| calculated(number)));
    let taken = typed.unwrap_or_else(|| {
        let loose = 2.0 * looseness(board, stock, tree, dimension, 1);
        let mut taken = calculated(number);
        let most = MOST_LOOSE * number.abs();
        taken.written.last_place = taken.written.last_place.max(loose.min(most));
        taken
    });
    let graded = grade(board, target, taken);
    if !value.may_be(dimension) {
        judgement.evidence.dimension = Some(value.dimension);
        if graded.is_some() {
            judgement.truth = Truth::WrongUnit {
                wanted: dimension,
                found: value.dimension,
            };
            judgement.caret = Some(tree.span);
        }
        judgement.evidence.lifted = lifted(board, stock, tree, dimension)
            .iter()
            .map(|one| one.function)
            .collect();
        return judgement;
    }
    let accepted = board.accepted(target);
    if typed.is_none() {
        let lifted = lifted(board, stock, tree, dimension);
        let hit = accepted.iter().find(|(function, _)| {
            lifted
                .iter()
                .any(|one| same(target, &one.function, function))
        });
        if let Some((function, lines)) = hit {
            judgement.proved = true;
            judgement.truth = if lines.is_empty()
                && board
                    .right(target)
                    .is_some_and(|right| same(target, &right, function))
            {
                Truth::Holds
            } else {
                Truth::Follows(lines.clone())
            };
            let off = (number.abs() - function[0].abs()).abs();
            let shaped = matches!(
                target,
                StepId::Angle(_) | StepId::Reaction(_, Part::Direction)
            );
            // A difference gets what the figures carried allow.
            let loose = looseness(board, stock, tree, dimension, 3);
            if !shaped && off > loose.max(TOO_COARSE * function[0].abs()) {
                judgement.truth = Truth::TooFewFigures;
                return judgement;
            }
            if !shaped && off > loose.max(COARSE * function[0].abs()) {
                judgement.remarks.push(Remark::FewFigures);
            }
            note_sense(target, number, function[0], &mut judgement);
            let mut own = own(line, number, None, *function, &judgement.truth);
            own.value = as_size(target, own.value);
            judgement.values.push((target, own));
            return judgement;
        }
        judgement.evidence.lifted = lifted.into_iter().map(|one| one.function).collect();
    }
    let scaled = |truth: &Truth| {
        own(
            line,
            number,
            typed.map(|typed| (typed.value, typed.written)),
            scaled(board, target, number),
            truth,
        )
    };
    let Some(graded) = graded else {
        judgement.evidence.takes_ten = takes_ten(board, target, taken);
        let opposite = Typed {
            value: -taken.value,
            ..taken
        };
        judgement.evidence.negative_pull = matches!(target, StepId::Pull(_))
            && taken.value < 0.0
            && grade(board, target, opposite).is_some();
        return judgement;
    };
    judgement.truth = match graded {
        Grade::Holds => Truth::Holds,
        Grade::OtherGravity(gravity) => {
            judgement.remarks.push(Remark::OtherGravity(gravity));
            Truth::Holds
        }
        Grade::Rounded => Truth::HoldsRounded,
        Grade::Follows(lines) => Truth::Follows(lines),
        Grade::TooFewFigures => Truth::TooFewFigures,
    };
    if typed.is_some_and(|typed| typed.written.significant < 3)
        && judgement.truth == Truth::Holds
        && board
            .right(target)
            .is_some_and(|right| (to_figures(right[0], 3) - number).abs() > 1e-9 * number.abs())
        && dimension != Dimension::ANGLE
    {
        judgement.remarks.push(Remark::FewFigures);
    }
    let function = match &judgement.truth {
        Truth::Follows(lines) => accepted
            .iter()
            .skip(1)
            .find(|(function, used)| used == lines && close(function[0], number))
            .map_or_else(
                || scaled(&judgement.truth).function,
                |(function, _)| *function,
            ),
        _ => board.right(target).unwrap_or([number; 4]),
    };
    note_sense(target, number, function[0], &mut judgement);
    if judgement.truth.holds() {
        let mut own = scaled(&judgement.truth);
        own.function = function;
        own.value = as_size(target, own.value);
        own.typed = own
            .typed
            .map(|(typed, written)| (as_size(target, typed), written));
        judgement.values.push((target, own));
    }
    judgement
}

fn close(left: f64, right: f64) -> bool {
    (left - right).abs() <= 0.02 * left.abs().max(right.abs())
}

/// A standing value.
fn own(
    line: usize,
    value: f64,
    typed: Option<(f64, Written)>,
    function: Samples,
    truth: &Truth,
) -> Own {
    Own {
        line,
        value,
        typed,
        function,
        right: !matches!(truth, Truth::Follows(_) | Truth::DoesNotHold),
    }
}

/// A value without a form, as a function: it goes with the right one in proportion.
pub(super) fn scaled(board: &Board<'_>, target: StepId, number: f64) -> Samples {
    match board.right(target) {
        Some(right) if right[0].abs() > 1e-9 => right.map(|value| value * number / right[0]),
        _ => [number; 4],
    }
}

/// The value that stands when a learner goes on with a wrong line.
pub fn own_of_wrong(
    board: &Board<'_>,
    judgement: &Judgement,
    line: usize,
    function: Option<Samples>,
) -> Option<Own> {
    let number = judgement.evidence.number?;
    let function = function.unwrap_or_else(|| scaled(board, judgement.target, number.value));
    Some(Own {
        line,
        value: number.value,
        typed: Some((number.value, number.written)),
        function,
        right: false,
    })
}

pub(super) fn lifted(
    board: &Board<'_>,
    stock: &Stock,
    tree: &Tree,
    dimension: Dimension,
) -> Vec<Lifted> {
    let combine =
        |sides: &[&Tree], _: usize, leaf: &mut dyn FnMut(crate::reading::Leaf<'_>) -> Value| {
            evaluate(sides[0], leaf)
                .ok()
                .map(|value| value.number_as(dimension))
        };
    lift(board, stock, &[tree], Some(dimension), &combine)
}

/// True if two functions are the same but for a convention that is no fault.
fn same(target: StepId, left: &Samples, right: &Samples) -> bool {
    agree(left, right)
        || match target {
            StepId::Reaction(_, Part::Along(_)) => agree(&left.map(|value| -value), right),
            id if is_size(id) => agree(&left.map(|value| -value), right),
            StepId::Angle(_) => agree(&left.map(|value| PI - value), right),
            StepId::Reaction(_, Part::Direction) => {
                agree(&left.map(|value| -value), right)
                    || agree(&left.map(|value| PI - value), right)
            }
            _ => false,
        }
}

/// True for what is asked as a size: its sign belongs in the sum.
fn is_size(target: StepId) -> bool {
    matches!(
        target,
        StepId::Weight(_) | StepId::Across(_) | StepId::PartOf(..) | StepId::Moment(_)
    )
}

fn as_size(target: StepId, value: f64) -> f64 {
    if is_size(target) { value.abs() } else { value }
}

fn note_sense(target: StepId, number: f64, right: f64, judgement: &mut Judgement) {
    if matches!(target, StepId::Reaction(_, Part::Along(_)))
        && number * right < 0.0
        && judgement.truth.holds()
    {
        judgement.remarks.push(Remark::OppositeSense);
    }
    if is_size(target) && number * right < 0.0 && judgement.truth.holds() {
        judgement.remarks.push(Remark::SignInSum);
    }
}

/// A number alone, with the figures as written; `None` for anything that has a form.
pub(super) fn typed_number(tree: &Tree, number: f64, dimension: Dimension) -> Option<Typed> {
    match &tree.node {
        Node::Literal(literal) if !literal.unit_alone => {
            let mut written = figures_meant(literal.value, literal.written);
            if dimension == Dimension::ANGLE && literal.unit.is_none() {
                written.last_place *= PI / 180.0;
            }
            Some(Typed {
                value: number,
                written,
            })
        }
        Node::Negative(inner) => typed_number(inner, -number, dimension).map(|typed| Typed {
            value: number,
            ..typed
        }),
        _ => None,
    }
}

/// A calculated number is taken to four figures when it must be compared as a value.
fn calculated(number: f64) -> Typed {
    let place = if number == 0.0 {
        1e-6
    } else {
        libm::pow(10.0, libm::floor(libm::log10(number.abs())) - 3.0)
    };
    Typed {
        value: number,
        written: Written {
            significant: 4,
            last_place: place,
        },
    }
}

/// Whether a line has a sine, and a cosine.
fn ratios(tree: &Tree) -> (bool, bool) {
    let mut found = (false, false);
    tree.visit(&mut |tree| match &tree.node {
        Node::Call(Function::Sine, _) => found.0 = true,
        Node::Call(Function::Cosine, _) => found.1 = true,
        _ => {}
    });
    found
}

/// The later sides of a chain: each must be the value of the one before, and the last one counts.
fn follow_chain(
    dimension: Dimension,
    sides: &[&Tree],
    values: &[Value],
    judgement: &mut Judgement,
) {
    for index in 1..sides.len() {
        let (before, here) = (
            values[index - 1].number_as(dimension),
            values[index].number_as(dimension),
        );
        let place = typed_number(sides[index], here, dimension)
            .map_or(0.0, |typed| typed.written.last_place);
        let allowed = place.max(0.006 * before.abs().max(here.abs()));
        let fits = (before - here).abs() <= allowed;
        if !fits && judgement.truth.holds() {
            judgement.truth = Truth::DoesNotHold;
            judgement.proved = false;
            judgement.values.clear();
            judgement.evidence.broken_link = true;
            judgement.evidence.lifted.clear();
            judgement.evidence.number = Some(
                typed_number(sides[index], here, dimension).unwrap_or_else(|| calculated(here)),
            );
            judgement.caret = Some(sides[index].span);
            return;
        }
    }
    let last = sides.len() - 1;
    let number = values[last].number_as(dimension);
    if let Some(typed) = typed_number(sides[last], number, dimension) {
        if !values[last].may_be(dimension) && judgement.truth.holds() {
            judgement.truth = Truth::WrongUnit {
                wanted: dimension,
                found: values[last].dimension,
            };
            judgement.values.clear();
            judgement.caret = Some(sides[last].span);
        }
        for (_, own) in &mut judgement.values {
            own.typed = Some((typed.value, typed.written));
        }
    }
}

/// Another step whose value this is.
pub(super) fn other_step(
    board: &Board<'_>,
    stock: &Stock,
    target: StepId,
    tree: &Tree,
    value: Value,
) -> Option<StepId> {
    let candidates = board
        .key
        .steps
        .iter()
        .filter(|step| step.id != target && value.may_be(step.dimension));
    let telling = |id: &StepId| {
        !matches!(
            id,
            StepId::MomentSum | StepId::ForceSum(_) | StepId::Distance(_)
        )
    };
    candidates
        .filter(|step| telling(&step.id))
        .find(|step| {
            let Some(right) = board.right(step.id) else {
                return false;
            };
            let number = value.number_as(step.dimension);
            match typed_number(tree, number, step.dimension) {
                Some(typed) => typed.written.significant >= 3 && typed.is(right[0]),
                None => lifted(board, stock, tree, step.dimension)
                    .iter()
                    .any(|one| agree(&one.function, &right)),
            }
        })
        .map(|step| step.id)
}

fn remark_on_unit(
    sides: &[&Tree],
    values: &[Value],
    dimension: Dimension,
    judgement: &mut Judgement,
) {
    let (Some(side), Some(value)) = (sides.last(), values.last()) else {
        return;
    };
    let alone =
        matches!(side.node, Node::Literal(_) | Node::Negative(_)) && dimension != Dimension::ANGLE;
    if alone && value.bare && dimension != Dimension::NUMBER {
        judgement.remarks.push(Remark::UnitMissing);
    }
}

/// A line that speaks of another step than the one asked: it is credited with what it settles.
pub(super) fn credit(board: &Board<'_>, asked: StepId, judgement: &mut Judgement, sides: &[&Tree]) {
    if !judgement.truth.holds() {
        return;
    }
    let unknown = board.unknown();
    // The pull, or its component, worked out from the weights implies the moment balance.
    let from_weights = !equation::has_unknown(board, sides);
    let of_pull = Some(judgement.target) == unknown
        || matches!(judgement.target, StepId::Across(force) if Some(StepId::Pull(force)) == unknown);
    if asked == StepId::MomentSum && of_pull && from_weights {
        judgement.establishes.push(StepId::MomentSum);
    }
}

/// True if a name stands for a step that is not yet known: its value may not be put in.
pub(super) fn is_open(board: &Board<'_>, role: NameRole) -> Option<StepId> {
    match role {
        NameRole::Step(id @ (StepId::Pull(_) | StepId::Reaction(..)))
            if !board.standing.contains_key(&id) =>
        {
            Some(id)
        }
        _ => None,
    }
}

/// Where a quantity is told by its own name, or an open unknown where a value is asked.
fn names_itself(board: &Board<'_>, target: StepId, sides: &[&Tree]) -> Option<crate::text::Span> {
    let unknown = board.unknown();
    // Before the pull is known, only its own component, part or moment may be told by it.
    let by_pull = |id: StepId| match target {
        StepId::Across(force) | StepId::PartOf(force, _) | StepId::Moment(force) => {
            Some(StepId::Pull(force)) == unknown && Some(id) == unknown
        }
        StepId::Reaction(..) => true,
        _ => Some(id) != unknown,
    };
    sides
        .iter()
        .flat_map(|side| side.names())
        .find_map(|(id, span)| match board.names.role(id) {
            Some(NameRole::Step(step)) if step == target => Some(span),
            Some(role @ NameRole::Step(step))
                if is_open(board, role).is_some() && !by_pull(step) =>
            {
                Some(span)
            }
            _ => None,
        })
}

/// True if every name in an expression is given or found, multiples of an open unknown excepted.
pub(super) fn is_known(board: &Board<'_>, side: &Tree) -> bool {
    let open = board
        .unknown()
        .filter(|unknown| !board.standing.contains_key(unknown));
    side.names()
        .iter()
        .all(|(id, _)| match board.names.role(*id) {
            Some(NameRole::Step(StepId::Distance(_))) => true,
            Some(NameRole::Step(
                StepId::Across(force) | StepId::PartOf(force, _) | StepId::Moment(force),
            )) if Some(StepId::Pull(force)) == open => false,
            Some(NameRole::Step(step)) => board.standing.contains_key(&step),
            Some(role @ NameRole::Own(_)) => !board.is_multiple_of_open(role),
            _ => true,
        })
}

/// True if a number is an angle of the drawing: a given one, or the complement of the one asked.
fn is_other_angle(board: &Board<'_>, target: StepId, judgement: &Judgement) -> bool {
    let (StepId::Angle(_), Some(number)) = (target, judgement.evidence.number) else {
        return false;
    };
    let givens = board
        .problem
        .givens()
        .iter()
        .filter(|given| given.dimension == Dimension::ANGLE)
        .map(|given| given.value);
    let complement = board.right(target).map(|right| PI / 2.0 - right[0]);
    givens
        .chain(complement)
        .any(|angle| (angle - number.value).abs() < 1e-6)
}

/// True if an expression rests on a step that is not found yet. A component, part or moment of the
/// unknown may be told by the unknown.
fn rests_on_open(board: &Board<'_>, target: StepId, sides: &[&Tree]) -> bool {
    let unknown = board.unknown();
    let of_unknown = matches!(target, StepId::Across(force) | StepId::PartOf(force, _) | StepId::Moment(force)
        if Some(StepId::Pull(force)) == unknown);
    sides
        .iter()
        .flat_map(|side| side.names())
        .any(|(id, _)| match board.names.role(id) {
            Some(NameRole::Step(StepId::Distance(_))) => false,
            Some(NameRole::Step(step)) if of_unknown && Some(step) == unknown => false,
            Some(NameRole::Step(StepId::PartOf(force, _) | StepId::Moment(force))) => {
                // A part or moment may be used unasked once its force is found.
                let found = [StepId::Weight(force), StepId::Pull(force)]
                    .iter()
                    .any(|step| board.standing.contains_key(step));
                !found
            }
            Some(NameRole::Step(step)) => !board.standing.contains_key(&step),
            _ => false,
        })
}
