//! What is still open: names of steps that are not found yet, and lines that rest on them.

use super::board::Board;
use super::names::NameRole;
use super::stock::Stock;
use super::{Judgement, Remark, expression};
use crate::key::StepId;
use crate::reading::Tree;
use crate::text::Span;

/// True if a name stands for a step that is not yet known: its value may not be put in.
pub(super) fn is_open(board: &Board<'_>, role: NameRole) -> Option<StepId> {
    match role {
        NameRole::Step(id) if id.is_unknown() && !board.standing.contains_key(&id) => Some(id),
        _ => None,
    }
}

/// True for the component, part or moment of an unknown that is not found yet.
pub(super) fn is_of_open_unknown(board: &Board<'_>, target: StepId) -> bool {
    if target.is_general() {
        let open = |id: &StepId| !board.standing.contains_key(id);
        return !target.is_unknown() && board.key.open_in(target).iter().any(open);
    }
    let (StepId::Across(force) | StepId::PartOf(force, _) | StepId::Moment(force)) = target else {
        return false;
    };
    let pull = StepId::Pull(force);
    board.unknown() == Some(pull) && !board.standing.contains_key(&pull)
}

/// True for the unknown under another name: a multiple of it that was told by it, as components,
/// parts, moments and names of the learner's own are, and that has no value of its own.
pub(super) fn is_alias(board: &Board<'_>, role: NameRole) -> bool {
    match role {
        NameRole::Own(index) => board.own_names.get(index).is_some_and(|own| own.of_unknown),
        NameRole::Step(id) if !id.is_general() => {
            let valued = board.standing.get(&id).is_some_and(|own| !own.relation);
            board
                .unknown()
                .is_some_and(|unknown| board.key.is_multiple(id, unknown))
                && !valued
        }
        _ => false,
    }
}

/// The unknown, while it is not found yet.
fn open_unknown(board: &Board<'_>) -> Option<StepId> {
    board
        .unknown()
        .filter(|unknown| !board.standing.contains_key(unknown))
}

/// Where the unknown that is not found yet, or another name of it, stands in a side.
fn unknown_in(board: &Board<'_>, side: &Tree) -> Option<Span> {
    let unknown = open_unknown(board)?;
    let mut names = side.names().into_iter();
    names.find_map(|(id, span)| {
        let role = board.names.role(id)?;
        (role == NameRole::Step(unknown) || is_alias(board, role)).then_some(span)
    })
}

/// True if every side holds the unknown that is not found yet: what they say is a multiple of it.
pub(super) fn is_told_by_unknown(board: &Board<'_>, sides: &[&Tree]) -> bool {
    sides.iter().all(|side| unknown_in(board, side).is_some())
}

/// Where a quantity is told by its own name, or an open unknown where a value is asked.
pub(super) fn names_itself(board: &Board<'_>, target: StepId, sides: &[&Tree]) -> Option<Span> {
    let unknown = board.unknown();
    // The unknown by what is made of it, and by nothing else.
    if Some(target) == unknown && is_told_by_unknown(board, sides) {
        return sides.first().and_then(|side| unknown_in(board, side));
    }
    // So is an unknown of a general working by a part of it that has no value.
    let is_part_of_it = |id: StepId| {
        let general = board.key.general.as_ref();
        general.is_some_and(|general| general.multiples.get(&id) == Some(&target))
            && board.standing.get(&id).is_none_or(|own| own.relation)
    };
    let named = || sides.iter().flat_map(|side| side.names());
    let circular = named().find_map(|(id, span)| match board.names.role(id) {
        Some(NameRole::Step(step)) if is_part_of_it(step) => Some(span),
        _ => None,
    });
    if circular.is_some() {
        return circular;
    }
    // Before the pull is known, only its own component, part or moment may be told by it.
    let by_pull = |id: StepId| match target {
        StepId::Across(force) | StepId::PartOf(force, _) | StepId::Moment(force) => {
            Some(StepId::Pull(force)) == unknown && Some(id) == unknown
        }
        StepId::Reaction(..) => true,
        StepId::Found(..) => target.is_unknown() || board.key.open_in(target).contains(&id),
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

/// True for a quantity that is to be found, and for what is made of one.
pub(super) fn is_sought(board: &Board<'_>, step: StepId) -> bool {
    !step.is_balance() && (step.is_unknown() || !board.key.open_in(step).is_empty())
}

/// True if every name in an expression is given or found, multiples of an open unknown excepted.
pub(super) fn is_known(board: &Board<'_>, side: &Tree) -> bool {
    all_names(board, side, &|role| is_known_name(board, role))
}

/// The same where weights, and the parts of forces that are found, may have no line of their own: what
/// they are is known before any balance.
pub(super) fn is_known_with_weights(board: &Board<'_>, side: &Tree) -> bool {
    let found = |id: &StepId| board.standing.get(id).is_some_and(|own| own.right);
    let implied = |role| match role {
        NameRole::Step(step) => {
            let of_lesson = matches!(step, StepId::PartOf(..) | StepId::Across(_));
            let part = of_lesson || step.is_general() && board.key.formula(step).is_some();
            (step.is_weight() || part) && board.key.open_in(step).iter().all(found)
        }
        _ => false,
    };
    all_names(board, side, &|role| {
        implied(role) || is_known_name(board, role)
    })
}

fn all_names(board: &Board<'_>, side: &Tree, known: &dyn Fn(NameRole) -> bool) -> bool {
    let names = side.names().into_iter();
    let mut roles = names.filter_map(|(id, _)| board.names.role(id));
    roles.all(known)
}

fn is_known_name(board: &Board<'_>, role: NameRole) -> bool {
    let open = |id: &StepId| !board.standing.contains_key(id);
    match role {
        NameRole::Step(StepId::Distance(_)) => true,
        role if open_unknown(board).is_some() && is_alias(board, role) => false,
        NameRole::Step(step) => {
            !(open(&step) || step.is_general() && board.key.open_in(step).iter().any(open))
        }
        NameRole::Own(_) => !board.is_multiple_of_open(role),
        _ => true,
    }
}

/// True if an expression rests on a step that is not found yet. A component, part or moment of the
/// unknown may be told by the unknown.
pub(super) fn rests_on_open(board: &Board<'_>, target: StepId, sides: &[&Tree]) -> bool {
    let unknown = board.unknown();
    let of_unknown = matches!(target, StepId::Across(force) | StepId::PartOf(force, _) | StepId::Moment(force)
        if Some(StepId::Pull(force)) == unknown);
    sides
        .iter()
        .flat_map(|side| side.names())
        .any(|(id, _)| match board.names.role(id) {
            Some(NameRole::Step(StepId::Distance(_))) => false,
            Some(NameRole::Step(step)) if of_unknown && Some(step) == unknown => false,
            // A part may be told by its force; an unknown is found by what is found.
            Some(NameRole::Step(step))
                if !target.is_unknown() && board.key.open_in(target).contains(&step) =>
            {
                false
            }
            Some(NameRole::Step(StepId::PartOf(force, _) | StepId::Moment(force))) => {
                // A part or moment may be used unasked once its force is found.
                let found = [StepId::Weight(force), StepId::Pull(force)]
                    .iter()
                    .any(|step| board.standing.contains_key(step));
                !found
            }
            Some(NameRole::Step(step)) => !board.standing.contains_key(&step),
            Some(role) => !of_unknown && board.is_multiple_of_open(role),
            None => false,
        })
}

/// Judges a chain that says by name that it is the value of `target`. Once the balance stands that
/// gives the unknown, a right value of its component may be told too.
pub(super) fn judge_named(
    board: &Board<'_>,
    stock: &Stock,
    (asked, target): (StepId, StepId),
    sides: &[&Tree],
    line: usize,
) -> Judgement {
    let judgement = expression::judge(board, stock, target, sides, line, true);
    let stands = asked.is_pull() && board.unknown() == Some(asked);
    if !stands || !judgement.remarks.contains(&Remark::LeaveLetter) {
        return judgement;
    }
    let told = expression::judge_chain(board, stock, target, (sides, line), (true, false));
    if told.truth.holds() { told } else { judgement }
}
