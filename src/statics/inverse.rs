//! For which value of a given something just happens.
//!
//! What happens is written as a number that vanishes there: a force less its limit, a force, the
//! friction less the coefficient times the push, the moment of a base less the push times half its
//! width, the couple that a body needs to rest. It is looked at along the whole range on a fine grid; where it changes its sign, or
//! comes nearest to zero without doing so, the value is closed in on. A change of sign across a
//! pole (lines that become parallel) is no solution. Where it is zero along a whole stretch, what
//! is sought has no influence there, and none of its values is the answer.

use super::Unsolvable;
use super::frame::{Reaction, SystemSolution, any_sense, solve_system, steadied};
use super::slipping::in_one_motion;
use super::unsolvable::Stays;
use crate::system::{ActId, Fault, Friction, Hold, HoldKind, Sought, Spot, System, When};
use crate::units::Dimension;
use std::f64::consts::TAU;

/// Places of the range that are looked at.
const GRID: usize = 2000;
/// Halvings of an interval.
const HALVINGS: usize = 80;
/// A value counts as zero below this part of the force scale (times the length scale for bases).
const ZERO: f64 = 1e-9;
/// Below this part it is nothing but the dust of rounding.
const DUST: f64 = 1e-11;
/// So many places of the range one after the other with nothing but dust are a stretch. A root of
/// the third order is above it two places away.
const STRETCH: usize = 20;

/// A value of what is sought.
#[derive(Clone, Debug, PartialEq)]
pub struct Root {
    /// The value, in SI units.
    pub value: f64,
    /// All forces there; an error where ropes would have to push, something would stand beside its
    /// part or nothing is about to slip, so that the value is one of the equations only.
    pub solution: Result<SystemSolution, Unsolvable>,
    /// Of a body that rests, where what is sought turns it: true if it comes back when it is moved
    /// a little, false if it moves on, as where its centre of mass stands above its hinge.
    pub stable: Option<bool>,
}

/// Every value of what is sought, in rising order.
///
/// # Errors
/// [`Unsolvable::NoneInRange`] where nothing happens within the range,
/// [`Unsolvable::HoldsForEvery`] where it happens along a whole stretch of it; where the system has
/// no solution anywhere in it, why.
pub fn roots(system: &System, gravity: f64) -> Result<Vec<Root>, Unsolvable> {
    let Some(sought) = &system.parts().sought else {
        return Ok(Vec::new());
    };
    let at = |value: f64| {
        let mut values = system.values();
        if let Some(slot) = values.get_mut(sought.given.0) {
            *slot = value;
        }
        values
    };
    let held = match sought.when {
        When::Rests(body) => Some(body),
        _ => None,
    };
    let apart = |value: f64| -> Result<f64, Unsolvable> {
        let values = at(value);
        let solution = steadied(system, &values, gravity, held)?;
        Ok(distance(system, &solution, &values))
    };
    let step = (sought.high - sought.low) / GRID as f64;
    let grid: Vec<(f64, Result<f64, Unsolvable>)> = (0..=GRID)
        .map(|index| {
            let value = sought.low + step * index as f64;
            (value, apart(value))
        })
        .collect();
    if let Some((_, Err(trouble))) = grid.first()
        && grid.iter().all(|(_, found)| found.is_err())
    {
        // The couple that is looked for is no force of the problem.
        let free = || any_sense(system, &at(sought.low), gravity);
        return Err(match (held.map(|_| free()), trouble) {
            (Some(Ok(_)), Unsolvable::Indeterminate { .. }) => {
                holds_for_every(system, sought, (sought.low, sought.high), true)
            }
            (Some(Err(own)), Unsolvable::Indeterminate { .. }) => own,
            _ => trouble.clone(),
        });
    }
    let apart = |value: f64| apart(value).ok().filter(|apart| apart.is_finite());
    let grid: Vec<(f64, Option<f64>)> = grid
        .into_iter()
        .map(|(value, found)| (value, found.ok().filter(|apart| apart.is_finite())))
        .collect();
    if let Some(stretch) = stretch(&grid) {
        let ends = (stretch.low, stretch.high);
        return Err(holds_for_every(system, sought, ends, stretch.whole));
    }
    let slack = 1e-7 * (sought.high - sought.low);
    let unit = match system.given(sought.given).dimension {
        Dimension::ANGLE => 1f64.to_radians(),
        _ => 1.0,
    };
    let found = crossings(&apart, &grid, slack).into_iter();
    let found: Vec<f64> = found.map(|value| plainest(&apart, value, unit)).collect();
    let forces = |value: f64| -> Result<SystemSolution, Unsolvable> {
        if let Some(fault) = system.fault_at(value, slack) {
            return Err(Unsolvable::Misplaced { fault });
        }
        let solution = solve_system(system, &at(value), gravity)?;
        in_one_motion(system, sought, &solution, &at(value), gravity)?;
        Ok(solution)
    };
    if found.is_empty() {
        let can_stand = |value: &f64| system.fault_at(*value, slack).is_none();
        let places = grid.iter().map(|(value, _)| *value).filter(can_stand);
        let any = places.filter_map(|value| any_sense(system, &at(value), gravity).ok());
        let elsewhere = elsewhere(system, sought, &apart, &|value| forces(value).is_ok());
        return Err(none(system, sought, any, elsewhere));
    }
    Ok(found
        .into_iter()
        .map(|value| Root {
            value,
            solution: forces(value),
            stable: stable(system, sought, &apart, &at, value),
        })
        .collect())
}

/// The values at which it happens, in rising order.
fn crossings(
    apart: &dyn Fn(f64) -> Option<f64>,
    grid: &[(f64, Option<f64>)],
    slack: f64,
) -> Vec<f64> {
    let mut found: Vec<f64> = Vec::new();
    for pair in grid.windows(2) {
        let ((low, Some(one)), (high, Some(other))) = (pair[0], pair[1]) else {
            continue;
        };
        if one == 0.0 {
            found.push(low);
        } else if one * other < 0.0 {
            found.extend(halve(apart, low, high, one));
        }
    }
    // An end of the range may lie a hair beside the value that it means.
    for end in [grid.first(), grid.last()].into_iter().flatten() {
        if let (value, Some(apart)) = end
            && apart.abs() <= ZERO
        {
            found.push(*value);
        }
    }
    for three in grid.windows(3) {
        found.extend(touching(apart, three));
    }
    found.sort_by(f64::total_cmp);
    found.dedup_by(|one, other| (*one - *other).abs() <= slack);
    found
}

/// True if a value outside the range was found at which it happens and everything holds, so that a
/// wider range would help. Looked at is as far as a hundred times the numbers of the range reach, of
/// an angle the whole turn.
fn elsewhere(
    system: &System,
    sought: &Sought,
    apart: &dyn Fn(f64) -> Option<f64>,
    holds: &dyn Fn(f64) -> bool,
) -> bool {
    let (low, high) = (sought.low, sought.high);
    let largest = low.abs().max(high.abs());
    let is_angle = system.given(sought.given).dimension == Dimension::ANGLE;
    let (near, far) = match is_angle {
        true => (TAU, TAU),
        false => (10.0 * largest, 100.0 * largest),
    };
    // A number that may not be below zero may not be zero either.
    let below_zero = system.fault_at(-near, 0.0);
    let is_signed = !matches!(below_zero, Some(Fault::NotPositive { .. }));
    let least = |value: f64| if is_signed { value } else { value.max(0.0) };
    let ranges = [
        (least(low - near), low),
        (high, high + near),
        (high + near, high + far),
    ];
    ranges.into_iter().any(|(from, to)| {
        let step = (to - from) / GRID as f64;
        let values = (0..=GRID).map(|index| from + step * index as f64);
        let grid: Vec<(f64, Option<f64>)> = values.map(|value| (value, apart(value))).collect();
        let slack = 1e-7 * (to - from);
        let counts = |value: &f64| (is_signed || *value > slack) && holds(*value);
        step > 0.0 && stretch(&grid).is_none() && crossings(apart, &grid, slack).iter().any(counts)
    })
}

fn holds_for_every(
    system: &System,
    sought: &Sought,
    (low, high): (f64, f64),
    whole: bool,
) -> Unsolvable {
    let given = system.given(sought.given);
    Unsolvable::HoldsForEvery {
        sought: given.symbol.to_string(),
        low,
        high,
        whole,
        dimension: given.dimension,
    }
}

/// Why it happens nowhere: of a force that reaches no limit, between which sizes it stays.
fn none(
    system: &System,
    sought: &Sought,
    forces: impl Iterator<Item = SystemSolution>,
    elsewhere: bool,
) -> Unsolvable {
    let given = system.given(sought.given);
    let (low, high) = (sought.low, sought.high);
    let (name, dimension) = (given.symbol.to_string(), given.dimension);
    if let When::Reaches { act, limit } = sought.when
        && limit != sought.given
        && let Some(force) = system.act(act)
    {
        let sizes = forces.filter_map(|forces| Some(reached(system, act, forces.reaction(act)?)));
        let (least_n, most_n) = sizes.fold((f64::INFINITY, f64::NEG_INFINITY), |ends, size| {
            (ends.0.min(size), ends.1.max(size))
        });
        if least_n.is_finite() && most_n.is_finite() && least_n >= 0.0 {
            return Unsolvable::NeverReaches {
                sought: name,
                low,
                high,
                dimension,
                elsewhere,
                stays: Box::new(Stays {
                    force: force.symbol.to_string(),
                    least_n,
                    most_n,
                }),
            };
        }
    }
    Unsolvable::NoneInRange {
        sought: name,
        low,
        high,
        dimension,
        elsewhere,
    }
}

/// Whether a body comes back to a rest. The couple that would hold it a little beside must turn it
/// the way it was moved: else the loads turn it on.
fn stable(
    system: &System,
    sought: &Sought,
    apart: &dyn Fn(f64) -> Option<f64>,
    at: &dyn Fn(f64) -> Vec<f64>,
    value: f64,
) -> Option<bool> {
    let When::Rests(body) = sought.when else {
        return None;
    };
    let slips = |hold: &Hold| {
        let friction = match &hold.kind {
            HoldKind::Rough { friction, .. } => Some(friction),
            _ => None,
        };
        matches!(friction, Some(Friction::Limiting { .. }))
    };
    // Where it is about to slip it is no rest of its own, so it comes back to none.
    if system.parts().holds.iter().any(slips) {
        return None;
    }
    let bearing = &system.leg(body, 0)?.bearing;
    let aside = 1e-4 * (sought.high - sought.low);
    let unit = |value: f64| system.unit(bearing, &Spot::Origin, &at(value));
    let turned = unit(value - aside).cross(unit(value + aside));
    let held = apart(value + aside)? - apart(value - aside)?;
    let is_told = turned.abs() > 1e-12 && held.abs() > DUST;
    is_told.then_some(held * turned > 0.0)
}

/// A part of the range in which it happens everywhere.
#[derive(Debug, PartialEq)]
struct Stretch {
    low: f64,
    high: f64,
    /// True if it happens wherever there are forces at all.
    whole: bool,
}

/// The longest stretch of the grid in which there is nothing but dust, if one is long enough.
fn stretch(grid: &[(f64, Option<f64>)]) -> Option<Stretch> {
    let is_dust = |apart: &Option<f64>| apart.is_some_and(|apart| apart.abs() <= DUST);
    let whole = grid
        .iter()
        .all(|(_, apart)| apart.is_none() || is_dust(apart));
    let runs = grid.chunk_by(|one, other| is_dust(&one.1) == is_dust(&other.1));
    let longest = runs
        .filter(|run| run.first().is_some_and(|(_, apart)| is_dust(apart)))
        .max_by_key(|run| run.len())
        .filter(|run| run.len() >= STRETCH)?;
    Some(Stretch {
        low: longest.first()?.0,
        high: longest.last()?.0,
        whole,
    })
}

/// How far it is from happening, as a part of the force scale.
fn distance(system: &System, solution: &SystemSolution, values: &[f64]) -> f64 {
    let (force, length) = solution.scales();
    let Some(sought) = &system.parts().sought else {
        return f64::NAN;
    };
    let reaction = |act| solution.reaction(act).unwrap_or_default();
    match sought.when {
        When::Reaches { act, limit } => {
            (reached(system, act, reaction(act)) - values[limit.0]) / force
        }
        When::Vanishes(act) => reaction(act).size / force,
        When::Rests(_) => solution.last_unknown() / (force * length),
        When::Slips { act, coefficient } => {
            let Some((push, friction)) = reaction(act).contact else {
                return f64::NAN;
            };
            (friction.abs() - values[coefficient.0] * push) / force
        }
        When::Topples(act) => {
            let ActId::Hold(index) = act else {
                return f64::NAN;
            };
            let width = system.parts().holds.get(index).map(|hold| &hold.kind);
            let (Some(HoldKind::Base { width, .. }), Some((push, _))) =
                (width, reaction(act).contact)
            else {
                return f64::NAN;
            };
            (reaction(act).couple.abs() - push * 0.5 * values[width.0]) / (force * length)
        }
    }
}

/// The size that reaches a limit: of a rough contact its push, which its name stands for; of what
/// acts either way along its line the size in the sense in which it acts.
fn reached(system: &System, act: ActId, found: Reaction) -> f64 {
    if let Some((push, _)) = found.contact {
        return push;
    }
    match act {
        ActId::Hold(hold) => match system.parts().holds.get(hold).map(|hold| &hold.kind) {
            Some(HoldKind::Line(_)) => found.size.abs(),
            _ => found.size,
        },
        _ => found.size,
    }
}

/// Closes in on a change of sign; nothing where it is a pole.
fn halve(apart: &dyn Fn(f64) -> Option<f64>, low: f64, high: f64, one: f64) -> Option<f64> {
    let (mut low, mut high, at_first) = (low, high, one);
    for _ in 0..HALVINGS {
        let middle = 0.5 * (low + high);
        let here = apart(middle)?;
        if here == 0.0 {
            return Some(middle);
        }
        if (here > 0.0) == (at_first > 0.0) {
            low = middle;
        } else {
            high = middle;
        }
    }
    let root = 0.5 * (low + high);
    apart(root).filter(|here| here.abs() <= 1e-6).map(|_| root)
}

/// What rounding leaves of a condition that is met.
const ROUNDING: f64 = 1e-14;

/// A value where it is nearest to zero without a change of sign, if it is zero there.
fn touching(apart: &dyn Fn(f64) -> Option<f64>, three: &[(f64, Option<f64>)]) -> Option<f64> {
    let [(low, Some(one)), (_, Some(middle)), (high, Some(other))] = three else {
        return None;
    };
    let nearest = middle.abs() <= one.abs() && middle.abs() <= other.abs();
    let same = one * middle > 0.0 && middle * other > 0.0;
    if !(nearest && same) {
        return None;
    }
    let (mut low, mut high) = (*low, *high);
    for _ in 0..HALVINGS {
        let (left, right) = (low + (high - low) / 3.0, high - (high - low) / 3.0);
        if apart(left)?.abs() < apart(right)?.abs() {
            high = right;
        } else {
            low = left;
        }
    }
    let root = 0.5 * (low + high);
    apart(root).filter(|here| here.abs() <= ZERO).map(|_| root)
}

/// The value with few digits that a root so near to it means. Where the curve only touches zero, the
/// root itself is known to half the digits: 90.0000006° for 90°, and a force of 1e-6 N for none.
fn plainest(apart: &dyn Fn(f64) -> Option<f64>, value: f64, unit: f64) -> f64 {
    let told = value / unit;
    if told == 0.0 {
        return value;
    }
    let scale = 10f64.powi(5 - libm::floor(libm::log10(told.abs())) as i32);
    let plain = libm::round(told * scale) / scale * unit;
    let off = |value: f64| apart(value).map(f64::abs);
    match (off(plain), off(value)) {
        (Some(there), Some(here)) if there <= here + ROUNDING => plain,
        _ => value,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn grid(apart: impl Fn(f64) -> Option<f64>) -> Vec<(f64, Option<f64>)> {
        let value = |index: usize| index as f64 / GRID as f64;
        (0..=GRID).map(value).map(|at| (at, apart(at))).collect()
    }

    #[test]
    fn a_value_at_which_the_curve_only_touches_zero_is_the_plain_one_beside_it() {
        let touches = |at: f64| Some(1.0 - libm::sin(at));
        let plain = plainest(&touches, 90.0000006f64.to_radians(), 1f64.to_radians());
        assert_eq!(plain, 90f64.to_radians());
        let crosses = |at: f64| Some(at - 0.123_456_789);
        assert_eq!(plainest(&crosses, 0.123_456_789, 1.0), 0.123_456_789);
    }

    #[test]
    fn a_stretch_is_told_from_a_root_however_flat() {
        for flat in [1, 2, 3] {
            let rooted = grid(|at| Some((at - 0.5).powi(flat)));
            assert_eq!(stretch(&rooted), None, "{flat}");
        }
        // One place alone where there are forces at all may be the answer.
        let alone = grid(|at| (at == 0.5).then_some(0.0));
        assert_eq!(stretch(&alone), None);
        let noise = |at: f64| Some(1e-15 * (at * 1e5).sin());
        let told = |grid: Vec<_>| stretch(&grid).map(|found| (found.low, found.high, found.whole));
        assert_eq!(told(grid(noise)), Some((0.0, 1.0, true)));
        let some = grid(|at| Some((at - 0.25).max(0.0)));
        assert_eq!(told(some), Some((0.0, 0.25, false)));
        let between = grid(|at| if at < 0.5 { None } else { noise(at) });
        assert_eq!(told(between), Some((0.5, 1.0, true)));
    }
}
