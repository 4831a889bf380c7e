//! Whether contacts that are at the limit of their friction can all be about to slip.
//!
//! What slips does so against its friction, and the bodies have one motion at a time. Balances and
//! limits alone know nothing of that: a ladder whose foot slips away from the wall slides down it,
//! and the balances also have a solution in which the wall's friction, at its limit, holds it down.
//! There nothing is about to slip.

use super::frame::{Columns, SystemSolution, add, add_hold};
use super::{Equilibrium, Unsolvable, balance};
use crate::system::{Act, ActId, Friction, Hold, HoldKind, Sought, System, When};

/// Work below this share of the largest is rounding.
const NO_WORK: f64 = 1e-9;

/// Refuses forces at which something is to slip, but not all contacts at their limit can slip
/// against their friction in one motion of the bodies.
///
/// # Errors
/// [`Unsolvable::NoOneMotion`]
pub(super) fn in_one_motion(
    system: &System,
    sought: &Sought,
    solution: &SystemSolution,
    values: &[f64],
    gravity: f64,
) -> Result<(), Unsolvable> {
    let When::Slips { act: slips, .. } = sought.when else {
        return Ok(());
    };
    let mut equilibrium = Equilibrium::new();
    let mut slipping: Vec<(&Act<'_>, usize)> = Vec::new();
    let acts = system.acts();
    for act in &acts {
        let free = loosened(system, act.id, slips);
        let columns = match &free {
            Some(hold) => add_hold(&mut equilibrium, system, act, hold, values),
            None => add(&mut equilibrium, system, act, values, gravity),
        };
        if let (Some(_), Columns::Contact(_, Some(tangent), _)) = (free, columns) {
            slipping.push((act, tangent));
        }
    }
    let places: Vec<usize> = slipping.iter().map(|(_, tangent)| *tangent).collect();
    let (sorted, first) = put_last(&equilibrium, &places);
    let works = balance::works(&sorted, first)?;
    let size = |works: &Vec<f64>| {
        works
            .iter()
            .fold(0.0, |most: f64, work| most.max(work.abs()))
    };
    let Some(motion) = works.iter().max_by(|a, b| size(a).total_cmp(&size(b))) else {
        return Ok(());
    };
    let dust = NO_WORK * size(motion);
    // Of several motions another one may fit.
    let is_same = |other: &Vec<f64>| {
        let cross = |i: usize, j: usize| (motion[i] * other[j] - motion[j] * other[i]).abs();
        let pairs = (0..motion.len()).flat_map(|i| (0..i).map(move |j| (i, j)));
        pairs
            .into_iter()
            .all(|(i, j)| cross(i, j) <= dust * size(motion))
    };
    if size(motion) == 0.0 || !works.iter().all(is_same) {
        return Ok(());
    }
    let scale = solution.scales().0;
    let friction = |act: ActId| solution.reaction(act).and_then(|found| found.contact);
    let sense = |(act, work): (&Act<'_>, f64)| {
        let friction = friction(act.id).map_or(0.0, |(_, friction)| friction);
        let works = work.abs() > dust && friction.abs() > NO_WORK * scale;
        works.then_some((act.id, act.symbol.shown(), friction * work > 0.0))
    };
    let contacts = slipping.iter().map(|(act, _)| *act);
    let senses: Vec<_> = contacts
        .zip(motion.iter().copied())
        .filter_map(sense)
        .collect();
    let own = senses.iter().find(|(act, ..)| *act == slips);
    match own {
        Some((_, _, way)) if senses.iter().any(|(_, _, other)| other != way) => {
            let contacts = senses.iter().map(|(_, name, _)| name.clone()).collect();
            Err(Unsolvable::NoOneMotion { contacts })
        }
        _ => Ok(()),
    }
}

/// A contact that slips, with friction as an unknown of its own.
fn loosened(system: &System, act: ActId, slips: ActId) -> Option<Hold> {
    let ActId::Hold(index) = act else {
        return None;
    };
    let mut hold = system.parts().holds.get(index)?.clone();
    let (HoldKind::Rough { friction, .. } | HoldKind::Base { friction, .. }) = &mut hold.kind
    else {
        return None;
    };
    let at_limit = act == slips || matches!(friction, Friction::Limiting { .. });
    *friction = Friction::AsNeeded;
    at_limit.then_some(hold)
}

/// The same unknowns with those at these places behind the others, and the place of the first of
/// them.
fn put_last(equilibrium: &Equilibrium, places: &[usize]) -> (Equilibrium, usize) {
    let unknowns = equilibrium.unknowns();
    let others = (0..unknowns.len()).filter(|at| !places.contains(at));
    let others: Vec<usize> = others.collect();
    let mut sorted = Equilibrium::new();
    for at in others.iter().chain(places) {
        sorted.unknown(unknowns[*at].clone());
    }
    (sorted, others.len())
}
