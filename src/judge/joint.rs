//! Balances that give their unknowns together: each line must say something that those before it
//! do not.

use super::board::{Board, Own};
use super::lift::plain_leaf;
use super::{Judgement, NameRole};
use crate::key::{Pins, Rule, StepId};
use crate::reading::{Leaf, Tree, Value, evaluate};

/// By which share an unknown is moved to see how a line depends on it.
const MOVED: f64 = 1e-4;
/// A part of a line below this share of it counts as none.
const NONE: f64 = 1e-6;

/// The unknowns that the balances beside this one give together with it; none where it stands
/// alone.
pub(super) fn unknowns(board: &Board<'_>, sum: StepId) -> Vec<StepId> {
    let (Some(general), StepId::Sum(stage, _)) = (&board.key.general, sum) else {
        return Vec::new();
    };
    match general.stages.get(stage) {
        Some(stage) if stage.balances.len() > 1 => stage.unknowns.clone(),
        _ => Vec::new(),
    }
}

/// True if a line says of the unknowns of its stage only what balances that stand say already.
pub(super) fn says_nothing_new(board: &Board<'_>, sum: StepId, sides: &[&Tree]) -> bool {
    let unknowns = unknowns(board, sum);
    if unknowns.is_empty() {
        return false;
    }
    let sums = unknowns.first().map(|one| board.key.sums_of(*one));
    let known = sums.unwrap_or_default().into_iter();
    let known = known.filter(|sum| board.standing.contains_key(sum));
    let mut rows: Vec<Vec<f64>> = Vec::new();
    for sum in known {
        let row = slopes(board, &unknowns, &|pins| of_key(board, sum, pins));
        rows.extend(row);
    }
    let Some(row) = slopes(board, &unknowns, &|pins| of_sides(board, sides, pins)) else {
        return false;
    };
    depends(rows, row)
}

/// Lets such a balance stand, so that the next line must say something else.
pub(super) fn keep(judgement: &mut Judgement, together: &[StepId], line: usize) {
    if together.is_empty() {
        return;
    }
    let own = Own {
        line,
        value: 0.0,
        typed: None,
        function: [0.0; 4],
        right: true,
        against: false,
        relation: false,
    };
    judgement.values.clear();
    judgement.values.push((judgement.target, own));
}

/// How something depends on each unknown near their right values, each counted by its size.
fn slopes(
    board: &Board<'_>,
    unknowns: &[StepId],
    value: &dyn Fn(&Pins) -> Option<f64>,
) -> Option<Vec<f64>> {
    let right: Option<Pins> = unknowns
        .iter()
        .map(|id| Some((*id, board.right(*id)?[0])))
        .collect();
    let right = right?;
    unknowns
        .iter()
        .map(|id| {
            let size = right[id].abs().max(MOVED);
            let moved = |by: f64| {
                let mut pins = right.clone();
                pins.insert(*id, right[id] + by * size);
                value(&pins)
            };
            Some((moved(MOVED)? - moved(-MOVED)?) / (2.0 * MOVED))
        })
        .collect()
}

fn of_key(board: &Board<'_>, sum: StepId, pins: &Pins) -> Option<f64> {
    let Rule::Balance(balance) = &board.key.step(sum)?.rule else {
        return None;
    };
    balance.terms.iter().try_fold(0.0, |total, term| {
        let amount = board
            .key
            .evaluate(&term.amount, board.sampling.own(), pins)?;
        Some(total + term.sign * amount)
    })
}

fn of_sides(board: &Board<'_>, sides: &[&Tree], pins: &Pins) -> Option<f64> {
    let mut total = 0.0;
    for (index, side) in sides.iter().enumerate() {
        let value = evaluate(side, &mut |leaf| match leaf {
            Leaf::Name(id) => match board.names.role(id).and_then(|role| at(board, role, pins)) {
                Some(number) => Value::of(number, board.names.dimension(id)),
                None => plain_leaf(board, leaf),
            },
            literal => plain_leaf(board, literal),
        })
        .ok()?;
        total += if index == 0 {
            value.number
        } else {
            -value.number
        };
    }
    Some(total)
}

/// The value of an unknown, or of what is made of it, with the unknowns as they are pinned.
pub(super) fn at(board: &Board<'_>, role: NameRole, pins: &Pins) -> Option<f64> {
    let NameRole::Step(id) = role else {
        return None;
    };
    if let Some(pinned) = pins.get(&id) {
        return Some(*pinned);
    }
    let made_of = board.key.open_in(id);
    let moves = made_of.iter().any(|open| pins.contains_key(open));
    moves
        .then(|| board.key.value(id, board.sampling.own(), pins))
        .flatten()
}

/// True if a row is a sum of multiples of others.
fn depends(mut rows: Vec<Vec<f64>>, row: Vec<f64>) -> bool {
    rows.push(row);
    let count = rows.len();
    let mut base: Vec<Vec<f64>> = Vec::new();
    for (index, row) in rows.into_iter().enumerate() {
        let dot = |one: &[f64], other: &[f64]| -> f64 {
            one.iter().zip(other).map(|(one, other)| one * other).sum()
        };
        let whole = libm::sqrt(dot(&row, &row));
        let mut left = row;
        for known in &base {
            let share = dot(&left, known);
            for (entry, taken) in left.iter_mut().zip(known) {
                *entry -= share * taken;
            }
        }
        let size = libm::sqrt(dot(&left, &left));
        if size <= NONE * whole || whole == 0.0 {
            if index + 1 == count {
                return true;
            }
            continue;
        }
        left.iter_mut().for_each(|entry| *entry /= size);
        base.push(left);
    }
    false
}
