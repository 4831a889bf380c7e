//! What follows from wrong values of hers by a balance that the key takes for another unknown: the
//! level forces give B from her own Ax, though the key has Ax from B.

use super::board::{Board, Memo, Own};
use super::evidence::ByPart;
use super::{Judgement, Truth, judge_as_told};
use crate::key::{Balance, Nature, Part, Pins, Rule, Samples, StepId};

/// An unknown's value that each balance gives in which all others are found, one of them wrong, as
/// a function, with the lines of these.
pub(super) fn by_other_balances(board: &Board<'_>, id: StepId) -> Vec<(Samples, Vec<usize>)> {
    if board.key.general.is_none() || !id.is_unknown() {
        return Vec::new();
    }
    let steps = board.key.steps.iter();
    let balances = steps.filter_map(|step| match &step.rule {
        Rule::Balance(balance) => Some(balance),
        _ => None,
    });
    balances
        .filter_map(|balance| from_balance(board, balance, id))
        .collect()
}

/// The same of a lesson, whose key has the parts of the hinge's force from the pull: what her own
/// part, from a balance about another point, leaves for the pull, and for what is made of that.
pub(super) fn by_own_parts(board: &Board<'_>, id: StepId) -> Vec<(Samples, Vec<usize>)> {
    let unknown = board.unknown().filter(|_| board.key.general.is_none());
    let gives = board.key.gives(id).filter(|_| id.is_balance());
    let itself = |unknown: StepId| id == unknown || gives == Some(unknown);
    let of_unknown = |unknown: &StepId| {
        itself(*unknown) || !id.is_balance() && board.key.open_in(id).contains(unknown)
    };
    let Some(unknown) = unknown.filter(of_unknown) else {
        return Vec::new();
    };
    // A part that was worked from the pull says nothing new of it.
    let earlier = |own: &Own| {
        let pull = board.standing.get(&unknown);
        pull.is_none_or(|pull| pull.line > own.line)
    };
    let parts = board.standing.iter().filter(|(step, own)| {
        !own.right && matches!(step, StepId::Reaction(_, Part::Along(_))) && earlier(own)
    });
    parts
        .filter_map(|(part, own)| {
            let function = from_part(board, unknown, (*part, own))?;
            let made = match itself(unknown) {
                true => function,
                false => {
                    let pins = [(unknown, function)].into_iter().collect();
                    board.key.function(board.key, id, board.sampling, &pins)?
                }
            };
            Some((made, vec![own.line]))
        })
        .collect()
}

/// The size of a force of a general working from her own parts of it, also where the key has but one
/// part: Pythagoras.
pub(super) fn by_size(board: &Board<'_>, id: StepId) -> Option<(Samples, Vec<usize>)> {
    let is_size = matches!(id, StepId::Found(Nature::Size, _));
    let general = board.key.general.as_ref().filter(|_| is_size)?;
    let parts = general.parts.get(&id)?;
    let own = parts.map(|part| board.standing.get(&part));
    let wrong = own.iter().flatten().filter(|own| !own.right);
    let mut lines: Vec<usize> = wrong.map(|own| own.line).collect();
    lines.sort_unstable();
    lines.dedup();
    if lines.is_empty() {
        return None;
    }
    let [one, other] = [0, 1].map(|at| match own[at] {
        Some(own) => Some(own.function),
        None => board.right(parts[at]),
    });
    let (one, other) = (one?, other?);
    let size = std::array::from_fn(|choice| libm::hypot(one[choice], other[choice]));
    Some((size, lines))
}

/// The pull with which a part of the hinge's force comes out as she has it, all else right.
fn from_part(board: &Board<'_>, unknown: StepId, (part, own): (StepId, &Own)) -> Option<Samples> {
    let mut function: Samples = [0.0; 4];
    for (choice, value) in function.iter_mut().enumerate() {
        let sum = |trial: f64| {
            let pins = Pins::from([(unknown, trial)]);
            let sample = &board.sampling.samples[choice];
            board.key.value(part, sample, &pins)
        };
        let (none, one) = (sum(0.0)?, sum(1.0)?);
        let slope = one - none;
        *value = (slope.abs() > 1e-9).then(|| (own.function[choice] - none) / slope)?;
    }
    Some(function)
}

fn from_balance(board: &Board<'_>, balance: &Balance, id: StepId) -> Option<(Samples, Vec<usize>)> {
    let mut others = unknowns_of(board, balance);
    let at = others.iter().position(|unknown| *unknown == id)?;
    others.remove(at);
    let standing: Option<Vec<_>> = others
        .iter()
        .map(|other| Some((*other, board.standing.get(other)?)))
        .collect();
    let standing = standing?;
    let wrong = standing.iter().filter(|(_, own)| !own.right);
    let mut lines: Vec<usize> = wrong.map(|(_, own)| own.line).collect();
    lines.sort_unstable();
    lines.dedup();
    let mut function: Samples = [0.0; 4];
    for (choice, value) in function.iter_mut().enumerate() {
        let mut pins = Pins::new();
        for (other, own) in &standing {
            let found = if own.right {
                board.right(*other)?
            } else {
                own.function
            };
            pins.insert(*other, found[choice]);
        }
        let mut sum = |trial: f64| {
            pins.insert(id, trial);
            balance.terms.iter().try_fold(0.0, |total, term| {
                let sample = &board.sampling.samples[choice];
                let amount = board.key.evaluate(&term.amount, sample, &pins)?;
                Some(total + term.sign * amount)
            })
        };
        let (none, one) = (sum(0.0)?, sum(1.0)?);
        let slope = one - none;
        *value = (slope.abs() > 1e-9).then(|| -none / slope)?;
    }
    (!lines.is_empty()).then_some((function, lines))
}

/// The unknowns that stand in a balance, in themselves or in what is made of them.
fn unknowns_of(board: &Board<'_>, balance: &Balance) -> Vec<StepId> {
    let mut found = Vec::new();
    for input in balance.terms.iter().flat_map(|term| term.amount.inputs()) {
        let itself = input.is_unknown().then_some(input);
        for open in itself.into_iter().chain(board.key.open_in(input)) {
            if !found.contains(&open) {
                found.push(open);
            }
        }
    }
    found
}

/// What a refused equation with the unknown and one part of the hinge's force says of that part.
pub fn by_part(
    board: &Board<'_>,
    (line, number): (&str, usize),
    found: &Judgement,
) -> Option<ByPart> {
    let evidence = &found.evidence;
    let along = |id: &&StepId| matches!(id, StepId::Reaction(_, Part::Along(_)));
    let named = evidence.rests_on.iter().chain([&found.target]);
    let mut parts: Vec<StepId> = named.filter(along).copied().collect();
    parts.dedup();
    let ([part], true) = (parts.as_slice(), found.truth == Truth::DoesNotHold) else {
        return None;
    };
    let (unknown, standing) = board.with_unknown_right()?;
    let found_right = board.standing.get(&unknown).is_some_and(|own| own.right);
    if found_right || !evidence.rests_on.contains(&unknown) {
        return None;
    }
    let with = Board {
        standing: &standing,
        memo: Memo::default(),
        ..*board
    };
    let told = judge_as_told(&with, *part, line, number);
    let is_of_part = told.truth == Truth::DoesNotHold && told.target == *part;
    is_of_part.then_some(ByPart {
        part: *part,
        lifted: told.evidence.lifted,
        terms: told.evidence.terms,
    })
}
