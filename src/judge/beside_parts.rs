//! Balances with a part of the hinge's force in them, where its size or direction is asked, or all
//! of their forces are found.

use super::board::{Board, Memo};
use super::names::NameRole;
use super::stock::Stock;
use super::{Judgement, Remark, Truth, equation, identity, judge_sides};
use crate::key::{Part, StepId};
use crate::reading::{Reading, Tree};

/// A balance with a part of the hinge's force in it, where its size or direction is asked: noted as
/// it was where that part was asked.
pub(super) fn noted(
    board: &Board<'_>,
    asked: StepId,
    reading: &Reading,
    line: (&str, usize),
) -> Option<Judgement> {
    let sides: Vec<&Tree> = reading.sides.iter().collect();
    let roles = equation::roles(board, &sides);
    // So is a check with all of its forces found, whatever is asked.
    let found = |role: &NameRole| match role {
        NameRole::Step(id) => board.standing.contains_key(id),
        _ => true,
    };
    let size = matches!(asked, StepId::Reaction(_, Part::Size | Part::Direction));
    let check = board.key.general.is_none() && roles.iter().all(found);
    if !(size || check) {
        return None;
    }
    let named = identity::free_parts(board, &sides).into_iter();
    let of_other = |part: &StepId| {
        let mut forces = roles.iter().filter_map(|role| match role {
            NameRole::Step(id) => id.force(),
            _ => None,
        });
        forces.any(|force| Some(force) != part.force())
    };
    let mut parts = named.filter(of_other);
    parts.find_map(|part| {
        let mut standing = board.standing.clone();
        standing.remove(&part);
        let open = Board {
            standing: &standing,
            memo: Memo::default(),
            ..*board
        };
        let stock = Stock::of(&open);
        let judgement = judge_sides(&open, &stock, part, reading, line);
        let near = judgement.remarks.contains(&Remark::NotSeen);
        let true_of_it = judgement.truth == Truth::Noted && (judgement.proved || near);
        true_of_it.then(|| {
            let mut noted = Judgement::noted_true(asked);
            noted.proved = judgement.proved;
            let seen = |remark: &Remark| matches!(remark, Remark::NotSeen | Remark::AllKnown);
            noted.remarks = judgement.remarks;
            noted.remarks.retain(seen);
            noted
        })
    })
}
