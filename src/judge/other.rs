//! What a line is about where it is not about the step asked: another step, another angle, another
//! name.

use super::board::Board;
use super::expression::{judge, typed_number};
use super::lift::{Lifted, lift_near, plain_value};
use super::names::step_of;
use super::open::is_of_open_unknown;
use super::stock::{Stock, THREE_FIGURES};
use super::{Judgement, Truth, equation};
use crate::key::{Axis, Part, Samples, Step, StepId, agree};
use crate::problem::GivenId;
use crate::reading::{Tree, Value};
use crate::units::Dimension;
use std::f64::consts::PI;

/// What is smaller is nothing.
pub(super) const NOTHING: f64 = 1e-9;

/// Another step whose value this is.
pub(super) fn other_step(
    board: &Board<'_>,
    stock: &Stock,
    target: StepId,
    tree: &Tree,
    value: Value,
) -> Option<StepId> {
    // Nothing is the value of much.
    if value.number.abs() < NOTHING {
        return None;
    }
    // `Ty` is Ty, though T⊥ may be as large; and so is its value once she has told it.
    let named = step_of(board, tree);
    let steps = board.key.steps.iter();
    let candidates = steps
        .clone()
        .filter(|step| Some(step.id) == named)
        .chain(steps.clone().filter(|step| {
            matches!(step.id, StepId::PartOf(..)) && board.standing.contains_key(&step.id)
        }))
        .chain(steps)
        .filter(|step| step.id != target && value.may_be(step.dimension));
    // A bare number guessed right tells nothing of what is still to be found.
    let guessed = typed_number(tree, value.number, Dimension::NUMBER).is_some();
    let ahead = |id: &StepId| {
        (id.is_unknown() || matches!(id, StepId::PartOf(..)))
            && !board.standing.contains_key(id)
            && board.key.rank(*id) > board.key.rank(target)
            || is_of_open_unknown(board, *id)
    };
    let telling =
        |id: &StepId| !id.is_balance() && !matches!(id, StepId::ForceSum(_) | StepId::Distance(_));
    candidates
        .filter(|step| telling(&step.id) && !(guessed && ahead(&step.id)))
        .find(|step| {
            let number = value.number_as(step.dimension);
            let accepted = board.accepted(step.id);
            let mut functions = accepted.iter().map(|(function, _)| function);
            match typed_number(tree, number, step.dimension) {
                Some(typed) => {
                    typed.written.significant >= 3 && functions.any(|one| typed.is(one[0]))
                }
                None => {
                    // A coarse number may stand for a quantity that it is far from.
                    let near = |known: &Samples| {
                        (number.abs() - known[0].abs()).abs() <= THREE_FIGURES * known[0].abs()
                    };
                    let near: Vec<&Samples> = functions.filter(|known| near(known)).collect();
                    let is_one =
                        |one: &Lifted| near.iter().any(|known| agree(&one.function, known));
                    let form = (tree, step.dimension);
                    !near.is_empty()
                        && lift_near(board, stock, form, None, &near)
                            .iter()
                            .any(is_one)
                }
            }
        })
        .map(|step| step.id)
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
        || matches!(judgement.target, StepId::Across(force) | StepId::Moment(force)
            if Some(StepId::Pull(force)) == unknown);
    if asked == StepId::MomentSum && of_pull && from_weights {
        judgement.establishes.push(StepId::MomentSum);
    }
    // In a general working an unknown found is a balance done, asked for or not.
    let sum = board.key.sum_of(judgement.target);
    judgement
        .establishes
        .extend(sum.filter(|sum| sum.is_general()));
}

/// True if a number is an angle of the drawing: a given one, or the complement of the one asked.
pub(super) fn is_other_angle(board: &Board<'_>, target: StepId, judgement: &Judgement) -> bool {
    let (true, Some(number)) = (target.is_angle(), judgement.evidence.number) else {
        return false;
    };
    let givens = board
        .problem
        .givens()
        .iter()
        .enumerate()
        .filter(|(index, _)| !board.key.is_sought(GivenId(*index)))
        .filter(|(_, given)| given.dimension == Dimension::ANGLE)
        .map(|(_, given)| given.value);
    let complement = board.right(target).map(|right| PI / 2.0 - right[0]);
    givens
        .chain(complement)
        .any(|angle| (angle - number.value).abs() < 1e-6)
}

/// What a line under the name of one quantity is the value of, where it is that of the step asked,
/// or of another part of the same support's force.
pub(super) fn meant_by(
    board: &Board<'_>,
    stock: &Stock,
    (asked, named): (StepId, StepId),
    sides: &[&Tree],
    judgement: &Judgement,
) -> Option<StepId> {
    let wrong = judgement.truth == Truth::DoesNotHold && !judgement.evidence.broken_link;
    let nothing = judgement.evidence.number;
    let nothing = nothing.is_some_and(|number| number.value.abs() < NOTHING);
    if !wrong || nothing || named == asked || asked.is_balance() {
        return None;
    }
    let same = |id: &StepId| {
        matches!((named, *id), (StepId::Reaction(one, _), StepId::Reaction(other, _)) if one == other)
            && board.standing.get(id).is_some_and(|own| own.right)
    };
    let known = board.key.steps.iter().map(|step| step.id).filter(same);
    [asked].into_iter().chain(known).find(|id| {
        let judgement = judge(board, stock, *id, sides, 0, false);
        *id != named && judgement.truth.holds()
    })
}

/// How a name for the part of a force along the body ends.
const ALONG: [&str; 6] = ["par", "parallel", "∥", "along", "axial", "x"];

/// True for a name of the part of a force along the body: `W1par`.
pub fn is_part_along(name: &str) -> bool {
    name.chars().count() > 1 && ALONG.iter().any(|end| name.ends_with(end))
}

/// True if a name of the learner's own may be meant for the step asked: it is of its kind, and
/// begins like its name or is its usual letter. Any other letter names what the learner likes.
pub(super) fn is_alike(board: &Board<'_>, name: &str, asked: StepId, sides: &[&Tree]) -> bool {
    let asked = match asked {
        StepId::MomentSum => board.unknown().unwrap_or(asked),
        asked => asked,
    };
    let Some(step) = board.key.step(asked) else {
        return false;
    };
    let value = sides.first().and_then(|side| plain_value(board, side).ok());
    let kind = value.is_none_or(|value| value.bare || value.dimension == step.dimension);
    let letter = name.chars().count() == 1;
    // `h` for H; an upright part is often V, a weight G.
    let own_letter = letter
        && (step.symbol.shown().to_lowercase().chars().next()
            == name.to_lowercase().chars().next()
            || match asked {
                StepId::Reaction(_, Part::Along(Axis::Vertical)) => name == "V",
                StepId::Weight(_) => name == "G",
                _ => false,
            });
    // `Wbpar`, `Wx`: the other part of the force is not what is asked.
    let along = matches!(asked, StepId::Across(_)) && !letter && is_part_along(name);
    kind && !along && (own_letter || step.symbol.shown().chars().next() == name.chars().next())
}

/// True for a name that the key uses for another step, and for the parts of a force (`Ty`, `W1x`).
pub(super) fn is_name_of_another(board: &Board<'_>, name: &str, asked: StepId) -> bool {
    // `Hx` where only the upright part is there to be found.
    if let StepId::Reaction(_, Part::Along(axis)) = asked {
        let other = match axis {
            Axis::Horizontal => 'y',
            Axis::Vertical => 'x',
        };
        return name.len() > 1 && name.ends_with(other);
    }
    if !matches!(asked, StepId::MomentSum | StepId::Pull(_)) {
        return false;
    }
    let meant = |id: StepId| {
        id == asked
            || Some(id) == board.unknown()
            || !matches!(
                id,
                StepId::Weight(_)
                    | StepId::Across(_)
                    | StepId::PartOf(..)
                    | StepId::Reaction(..)
                    | StepId::Angle(_)
                    | StepId::Moment(_)
            )
    };
    let part = name
        .strip_suffix(['x', 'y'])
        .filter(|stem| !stem.is_empty());
    let taken = |step: &Step| {
        step.symbol.matches(name) || part.is_some_and(|stem| step.symbol.matches(stem))
    };
    board
        .key
        .steps
        .iter()
        .any(|step| !meant(step.id) && taken(step))
        || part.is_some() && board.unknown().is_some()
}
