//! Balances that give their unknowns together: each line must say something that those before it
//! do not.

use super::board::{Board, Own};
use super::lift::plain_leaf;
use super::{Judgement, NameRole, Remark};
use crate::key::{Pins, Rule, StepId};
use crate::reading::{Leaf, Tree, Value, evaluate};

/// By which share an unknown is moved to see how a line depends on it.
const MOVED: f64 = 1e-4;
/// A part of a line below this share of it counts as none: sines are rounded to three figures.
const NONE: f64 = 3e-3;
/// Two lines that differ by less than this share of them are one balance: sines are rounded to two
/// figures.
const SAME: f64 = 1e-2;
/// A line so many times nearer to a balance that is still open is that one, and not one that stands.
const NEARER: f64 = 3.0;

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

/// What a balance says of the unknowns that it gives together with others.
enum Place {
    /// It is this one, or it counts as this one.
    New(StepId, Row),
    /// This one stands already and says it, alone or with others that stand.
    There(StepId),
}

/// Lets a right balance stand at the step whose equation it is; true if those that stand say it
/// already.
pub(super) fn stands(
    board: &Board<'_>,
    judgement: &mut Judgement,
    sides: &[&Tree],
    line: usize,
) -> bool {
    let counted = judgement.remarks.iter().find_map(|remark| match remark {
        Remark::SensesTaken(senses) => Some(senses.as_slice()),
        _ => None,
    });
    let place = place(board, judgement.target, sides, counted.unwrap_or_default());
    match place {
        Some(Place::There(there)) => {
            judgement.remarks.push(Remark::SaidAlready(there));
            true
        }
        Some(Place::New(sum, row)) => {
            judgement.target = sum;
            keep(judgement, &row, line);
            false
        }
        None => false,
    }
}

/// How a line depends on each unknown of its stage, each counted by its size.
type Row = Vec<f64>;

/// The balance of a stage that a line is: the one whose equation it is, else (about another point,
/// for other bodies) the one asked, or the first that is still open. `counted` tells the unknowns
/// that the line counts in the other sense than the key.
fn place(
    board: &Board<'_>,
    target: StepId,
    sides: &[&Tree],
    counted: &[(StepId, bool)],
) -> Option<Place> {
    let unknowns = unknowns(board, target);
    let of_key = |sum: StepId| slopes(board, &unknowns, &|pins| of_key(board, sum, pins));
    let mut row = slopes(board, &unknowns, &|pins| of_sides(board, sides, pins))?;
    for (entry, unknown) in row.iter_mut().zip(&unknowns) {
        if counted.contains(&(*unknown, true)) {
            *entry = -*entry;
        }
    }
    let sums = board.key.sums_of(*unknowns.first()?);
    // What a balance that stands says: as it was typed, else as the key has it.
    let said = |sum: &StepId| {
        let own = board.standing.get(sum)?;
        let typed = &own.function[..unknowns.len().min(own.function.len())];
        match typed.len() == unknowns.len() && typed.iter().any(|entry| *entry != 0.0) {
            true => Some(typed.to_vec()),
            false => of_key(*sum),
        }
    };
    let nearest = sums
        .iter()
        .filter_map(|sum| Some((*sum, apart(&of_key(*sum)?, &row))))
        .filter(|(_, apart)| *apart < SAME)
        .min_by(|(_, one), (_, other)| one.total_cmp(other));
    let own = nearest.map(|(sum, _)| sum);
    let stand = sums.iter().filter_map(|sum| Some((*sum, said(sum)?)));
    let stand: Vec<(StepId, Row)> = stand.collect();
    // Of two balances that are nearly one it is the nearer.
    let open = nearest.filter(|(sum, _)| !board.standing.contains_key(sum));
    let is_other = |off: f64| open.is_some_and(|(_, nearest)| off > NEARER * nearest);
    let same = stand.iter().find(|(_, known)| {
        let off = apart(known, &row);
        off < SAME && !is_other(off)
    });
    if let Some((there, _)) = same {
        return Some(Place::There(*there));
    }
    let known = stand.iter().map(|(_, known)| known.clone()).collect();
    if depends(known, row.clone()) {
        return Some(Place::There(own.unwrap_or(target)));
    }
    let is_open = |sum: &StepId| !board.standing.contains_key(sum);
    let counts_as = own
        .filter(is_open)
        .or(Some(target).filter(is_open))
        .or(sums.iter().copied().find(is_open))?;
    Some(Place::New(counts_as, row))
}

/// Lets such a balance stand with what it says, so that the next line must say something else.
fn keep(judgement: &mut Judgement, row: &[f64], line: usize) {
    let mut function = [0.0; 4];
    if row.len() <= function.len() {
        function[..row.len()].copy_from_slice(row);
    }
    let own = Own {
        value: 0.0,
        ..Own::right(function, line)
    };
    judgement.values.clear();
    judgement.values.push((judgement.target, own));
}

/// The sine of the angle between what two balances say; 1 where one says nothing.
fn apart(one: &[f64], other: &[f64]) -> f64 {
    let dot =
        |one: &[f64], other: &[f64]| -> f64 { one.iter().zip(other).map(|(a, b)| a * b).sum() };
    let sizes = dot(one, one) * dot(other, other);
    if sizes == 0.0 {
        return 1.0;
    }
    let along = dot(one, other);
    libm::sqrt((1.0 - along * along / sizes).max(0.0))
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
