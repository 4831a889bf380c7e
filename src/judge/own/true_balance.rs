//! The balances of a general working as lines in what is still to be found, whether she typed them
//! or not.

use super::super::board::Board;
use super::relation::{Row, TRIED};
use crate::key::{Balance, Pins, Rule, StepId};
use crate::units::Dimension;
use std::f64::consts::FRAC_PI_2;

/// The most parts of which either sense is tried.
const MOST_TURNED: usize = 2;

/// The balances of the key, in the forces and in their parts, and those of the forces along the
/// angles of the problem, with every unknown part counted in either sense.
pub(super) fn true_balances(board: &Board<'_>) -> Vec<Row> {
    let steps = board.key.steps.iter();
    let balances = steps.filter_map(|step| match &step.rule {
        Rule::Balance(balance) if board.key.general.is_some() => Some((step.id, balance)),
        _ => None,
    });
    let balances: Vec<(StepId, &Balance)> = balances.collect();
    let ways = balances.iter().flat_map(|(_, balance)| {
        let direct = open_in(board, balance);
        let whole = whole(board, &direct);
        let ways = match whole == direct {
            true => vec![direct],
            false => vec![direct, whole],
        };
        ways.into_iter()
            .map(|steps| row(board, &[(1.0, *balance)], &steps))
    });
    let tilted = tilted(board, &balances);
    ways.chain(tilted)
        .flatten()
        .flat_map(|row| turned(board, row))
        .collect()
}

/// The balances of the forces on a body along each angle of the problem, and across it.
fn tilted(board: &Board<'_>, balances: &[(StepId, &Balance)]) -> Vec<Option<Row>> {
    let heading = |step: &StepId| board.key.general.as_ref()?.headings.get(step);
    let of_kind = |kind: &'static str| {
        balances
            .iter()
            .filter(move |(step, _)| heading(step).is_some_and(|heading| heading.kind == kind))
    };
    let pairs = of_kind("level").flat_map(|level| of_kind("upright").map(move |up| (level, up)));
    let bodies = |step: &StepId| heading(step).map(|heading| &heading.bodies);
    let pairs = pairs.filter(|((one, _), (other, _))| bodies(one) == bodies(other));
    let givens = board.problem.givens().iter();
    let angles = givens.filter(|given| given.dimension == Dimension::ANGLE);
    let angles = angles.map(|given| given.value);
    let angles = angles.flat_map(|angle| [angle, -angle, FRAC_PI_2 - angle, angle - FRAC_PI_2]);
    let angles: Vec<f64> = angles.collect();
    pairs
        .flat_map(|((_, level), (_, up))| {
            let mut steps = whole(board, &open_in(board, level));
            let others = whole(board, &open_in(board, up));
            steps.extend(others);
            steps.sort();
            steps.dedup();
            let along = |angle: &f64| {
                let parts = [(libm::cos(*angle), *level), (libm::sin(*angle), *up)];
                row(board, &parts, &steps)
            };
            angles.iter().map(along).collect::<Vec<_>>()
        })
        .collect()
}

/// What stands in a balance and is not found yet.
fn open_in(board: &Board<'_>, balance: &Balance) -> Vec<StepId> {
    let mut open: Vec<StepId> = Vec::new();
    for input in balance.terms.iter().flat_map(|term| term.amount.inputs()) {
        let of_unknown = input.is_unknown() || !board.key.open_in(input).is_empty();
        let known = board.standing.contains_key(&input);
        if of_unknown && !known && !open.contains(&input) {
            open.push(input);
        }
    }
    open
}

/// The forces of which their parts and friction are made, in the place of these.
fn whole(board: &Board<'_>, direct: &[StepId]) -> Vec<StepId> {
    let mut whole: Vec<StepId> = Vec::new();
    for step in direct {
        let made_of = match step.is_unknown() {
            true => vec![*step],
            false => board.key.open_in(*step).into_iter().collect(),
        };
        for of in made_of {
            if !whole.contains(&of) && !board.standing.contains_key(&of) {
                whole.push(of);
            }
        }
    }
    whole
}

/// A sum of balances, each so many times, as a line, where it is linear in these steps.
fn row(board: &Board<'_>, balances: &[(f64, &Balance)], steps: &[StepId]) -> Option<Row> {
    let sum = |values: &dyn Fn(StepId) -> f64| {
        let standing = board.standing.iter();
        let mut pins: Pins = standing
            .map(|(step, own)| (*step, own.function[0]))
            .collect();
        pins.extend(steps.iter().map(|step| (*step, values(*step))));
        let mut terms = balances
            .iter()
            .flat_map(|(times, balance)| balance.terms.iter().map(move |term| (times, term)));
        let sum = terms.try_fold(0.0, |total, (times, term)| {
            let amount = board
                .key
                .evaluate(&term.amount, board.sampling.own(), &pins)?;
            Some(total + times * term.sign * amount)
        });
        sum.filter(|sum: &f64| sum.is_finite())
    };
    let base = sum(&|_| TRIED[0])?;
    let mut of = Vec::new();
    for step in steps {
        let moved = sum(&|one| if one == *step { TRIED[1] } else { TRIED[0] })?;
        of.push((*step, (moved - base) / (TRIED[1] - TRIED[0])));
    }
    let number = base - of.iter().map(|(_, times)| times * TRIED[0]).sum::<f64>();
    let all = number + of.iter().map(|(_, times)| times * TRIED[1]).sum::<f64>();
    let terms = number.abs() + of.iter().map(|(_, times)| times.abs()).sum::<f64>();
    let linear = (sum(&|_| TRIED[1])? - all).abs() <= 1e-6 * terms;
    of.retain(|(_, times)| times.abs() > 1e-9 * terms);
    let number = if number.abs() <= 1e-9 * terms {
        0.0
    } else {
        number
    };
    (linear && !of.is_empty()).then_some(Row { of, number })
}

/// A line with each of its parts that may act both ways counted in either sense.
fn turned(board: &Board<'_>, row: Row) -> Vec<Row> {
    let free = row.of.iter().map(|(step, _)| *step);
    let free: Vec<StepId> = free
        .filter(|step| step.has_free_sense() && !board.standing.contains_key(step))
        .take(MOST_TURNED)
        .collect();
    let with = |flips: usize| {
        let turns = |step: StepId| {
            let at = free.iter().position(|known| *known == step);
            at.is_some_and(|at| flips & (1 << at) != 0)
        };
        let of = row.of.iter().map(|(step, times)| match turns(*step) {
            true => (*step, -times),
            false => (*step, *times),
        });
        Row {
            of: of.collect(),
            number: row.number,
        }
    };
    (0..1_usize << free.len()).map(with).collect()
}
