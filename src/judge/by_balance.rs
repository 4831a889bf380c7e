//! What follows from wrong values of hers by a balance that the key takes for another unknown: the
//! level forces give B from her own Ax, though the key has Ax from B.

use super::board::{Board, Memo, Own};
use super::evidence::ByPart;
use super::{Judgement, Truth, judge_as_told};
use crate::key::{Balance, Nature, Part, Pins, Rule, Samples, StepId};

/// The most bodies whose forces are added.
const MOST_BODIES: usize = 4;

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

/// The same by the level or upright forces on all bodies together, in which what acts between them
/// cancels: after her A the other foot carries the rest of the weights.
pub(super) fn by_forces_on_all(board: &Board<'_>, id: StepId) -> Vec<(Samples, Vec<usize>)> {
    let wrong = |(step, own): (&StepId, &Own)| !own.right && step.is_unknown() && *step != id;
    if board.key.general.is_none() || !id.is_unknown() || !board.standing.iter().any(wrong) {
        return Vec::new();
    }
    let along = ["level", "upright"].into_iter();
    let of_all = along.flat_map(|kind| {
        let each = forces_on_each(board, kind);
        let last = each.len().min(MOST_BODIES);
        // A balance may count against its axis.
        let signs = if last > 1 { 1_usize << (last - 1) } else { 0 };
        let signed = move |flips: usize| -> Vec<(f64, &Balance)> {
            let sign = |at: usize| if flips & (1 << at) != 0 { -1.0 } else { 1.0 };
            let all = each.iter().take(last).enumerate();
            all.map(|(at, balance)| (sign(at), *balance)).collect()
        };
        (0..signs).map(signed).collect::<Vec<_>>()
    });
    of_all
        .filter_map(|balances| from_balances(board, &balances, id))
        .collect()
}

/// The balances of the forces along an axis on single bodies, each body once.
fn forces_on_each<'b>(board: &'b Board<'_>, kind: &str) -> Vec<&'b Balance> {
    let mut bodies: Vec<&[String]> = Vec::new();
    let mut found = Vec::new();
    for step in &board.key.steps {
        let Some(heading) = board.key.heading(step.id).filter(|one| one.kind == kind) else {
            continue;
        };
        let Rule::Balance(balance) = &step.rule else {
            continue;
        };
        if heading.bodies.len() == 1 && !bodies.contains(&heading.bodies.as_slice()) {
            bodies.push(&heading.bodies);
            found.push(balance);
        }
    }
    found
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
    from_balances(board, &[(1.0, balance)], id)
}

/// The same from a sum of balances.
fn from_balances(
    board: &Board<'_>,
    balances: &[(f64, &Balance)],
    id: StepId,
) -> Option<(Samples, Vec<usize>)> {
    let mut others = unknowns_of(board, balances);
    let at = others.iter().position(|unknown| *unknown == id)?;
    others.remove(at);
    if balances.len() > 1 {
        others.retain(|other| stays(board, balances, *other));
    }
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
            sum_of(board, balances, choice, &pins)
        };
        let (none, one) = (sum(0.0)?, sum(1.0)?);
        let slope = one - none;
        *value = (slope.abs() > 1e-9).then(|| -none / slope)?;
    }
    (!lines.is_empty()).then_some((function, lines))
}

/// What a sum of balances comes to at one choice of numbers.
fn sum_of(
    board: &Board<'_>,
    balances: &[(f64, &Balance)],
    choice: usize,
    pins: &Pins,
) -> Option<f64> {
    let sample = &board.sampling.samples[choice];
    let mut terms = balances
        .iter()
        .flat_map(|(times, balance)| balance.terms.iter().map(move |term| (times, term)));
    terms.try_fold(0.0, |total, (times, term)| {
        let amount = board.key.evaluate(&term.amount, sample, pins)?;
        Some(total + times * term.sign * amount)
    })
}

/// True unless what acts between the bodies cancels in a sum of balances.
fn stays(board: &Board<'_>, balances: &[(f64, &Balance)], unknown: StepId) -> bool {
    let all = unknowns_of(board, balances).into_iter();
    let right: Pins = all
        .filter_map(|id| Some((id, board.right(id)?[0])))
        .collect();
    let at = |times: f64| {
        let mut pins = right.clone();
        let value = pins.get_mut(&unknown)?;
        *value = times * (value.abs() + 1.0);
        sum_of(board, balances, 0, &pins)
    };
    let size = board
        .right(unknown)
        .map_or(1.0, |right| right[0].abs() + 1.0);
    match at(1.0).zip(at(2.0)) {
        Some((one, two)) => (one - two).abs() > 1e-9 * size,
        None => true,
    }
}

/// The unknowns that stand in balances, in themselves or in what is made of them.
fn unknowns_of(board: &Board<'_>, balances: &[(f64, &Balance)]) -> Vec<StepId> {
    let mut found = Vec::new();
    let terms = balances.iter().flat_map(|(_, balance)| &balance.terms);
    for input in terms.flat_map(|term| term.amount.inputs()) {
        let itself = input.is_unknown().then_some(input);
        for open in itself.into_iter().chain(board.key.open_in(input)) {
            if !found.contains(&open) {
                found.push(open);
            }
        }
    }
    found
}

/// What a refused equation with the unknown and one part of the hinge's force says of that part; `typed`
/// is a part that the line has its name for in the place of a number.
pub fn by_part(
    board: &Board<'_>,
    (line, number): (&str, usize),
    found: &Judgement,
    typed: Option<StepId>,
) -> Option<ByPart> {
    let evidence = &found.evidence;
    let (unknown, standing) = board.with_unknown_right()?;
    let found_right = board.standing.get(&unknown).is_some_and(|own| own.right);
    let refused = found.truth == Truth::DoesNotHold && evidence.rests_on.contains(&unknown);
    if found_right || !refused {
        return None;
    }
    let along = |id: &&StepId| matches!(id, StepId::Reaction(_, Part::Along(_)));
    let named = evidence.rests_on.iter().chain([&found.target]);
    let mut parts: Vec<StepId> = named.filter(along).copied().chain(typed).collect();
    parts.dedup();
    let [part] = parts.as_slice() else {
        return None;
    };
    // What the equation says of the part shows as it does before the part is told.
    let mut standing = standing.clone();
    standing.remove(part);
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
