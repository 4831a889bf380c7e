//! The equations of equilibrium as scaled numbers, and what they say.
//!
//! Two scales make every entry a pure number near 1. Forces are divided by the largest load;
//! moments also by a length, for each body how far apart its forces act. Unknowns are measured
//! along unit vectors in units of the force scale. The thresholds below are held against these
//! numbers, so they mean the same for a ruler and for a bridge.

use super::equilibrium::{Action, Condition, Equilibrium, Sense};
use super::linear::{self, Rows};
use super::{Motion, Unsolvable};
use crate::plane::Vector;
use std::collections::BTreeMap;

/// Below this pivot the unknown lines count as nearly meeting or nearly parallel: they miss each
/// other by about a millionth of the body's length or of a radian. From [`linear::ZERO_PIVOT`]
/// down they count as exactly so.
const NEARLY_SINGULAR: f64 = 1e-6;

/// Loads that nothing holds, and unknowns of the forbidden sign, count from this part of the
/// force scale; below it they are rounding.
const NEGLIGIBLE: f64 = 1e-9;

/// Points nearer to each other than this part of their distance from the origin are one point;
/// parts of an unknown of unit size that cancel down to this are none.
const ROUNDING: f64 = 1e-13;

/// Values for all unknowns.
#[derive(Clone, Debug, PartialEq)]
pub struct Balance {
    names: Vec<String>,
    values: Vec<f64>,
    free_motions: Vec<Motion>,
    force_n: f64,
    length_m: f64,
}

impl Balance {
    /// The values in the order of the unknowns: newtons along unit vectors, newton metres for
    /// couples.
    pub fn values(&self) -> &[f64] {
        &self.values
    }

    /// The value of the first unknown of this name.
    pub fn value(&self, name: &str) -> Option<f64> {
        let index = self.names.iter().position(|known| known == name)?;
        self.values.get(index).copied()
    }

    /// Motions that nothing resists, though these loads do not cause them: one way to describe
    /// them, since several together may be told in other ways.
    pub fn free_motions(&self) -> &[Motion] {
        &self.free_motions
    }

    /// The largest load, in newtons: the scale of forces. 1 where there is no load.
    pub fn force_scale(&self) -> f64 {
        self.force_n
    }

    /// How far apart the forces act, in metres: the scale of lengths. 1 where all meet.
    pub fn length_scale(&self) -> f64 {
        self.length_m
    }
}

/// Where moments of one body are taken, and the unit of its lengths.
#[derive(Clone, Copy)]
struct Frame {
    first_row: usize,
    origin: Vector,
    length: f64,
}

/// The scaled equations: `rows` times unknowns = `right`.
struct Scaled {
    frames: BTreeMap<usize, Frame>,
    force: f64,
    length: f64,
    /// What one unit of a scaled unknown is worth.
    worth: Vec<f64>,
    rows: Rows,
    right: Vec<f64>,
}

pub(super) fn solve(equilibrium: &Equilibrium) -> Result<Balance, Unsolvable> {
    finite(equilibrium)?;
    let scaled = scale(equilibrium)?;
    let columns = equilibrium.unknowns().len();
    let found = linear::eliminate(&scaled.rows, &scaled.right, columns);
    if found.smallest < NEARLY_SINGULAR {
        return Err(Unsolvable::NearlySingular {
            pivot: found.smallest,
            threshold: NEARLY_SINGULAR,
            length_m: scaled.length,
            force_n: scaled.force,
        });
    }
    let left = linear::left_null_space(&scaled.rows, columns);
    held(&scaled, &left)?;
    fixed(equilibrium, &found)?;
    let values: Vec<f64> = found
        .solution()
        .iter()
        .zip(&scaled.worth)
        .map(|(value, worth)| value * worth)
        .collect();
    if !values.iter().all(|value| value.is_finite()) {
        return Err(not_finite("a force that was found"));
    }
    allowed(equilibrium, &values, scaled.force)?;
    let free_motions = left
        .iter()
        .flat_map(|vector| motions(&scaled, vector))
        .collect();
    let names = equilibrium.unknowns().iter().map(|u| u.name.clone());
    Ok(Balance {
        names: names.collect(),
        values,
        free_motions,
        force_n: scaled.force,
        length_m: scaled.length,
    })
}

fn not_finite(what: impl Into<String>) -> Unsolvable {
    Unsolvable::NotFinite { what: what.into() }
}

fn finite(equilibrium: &Equilibrium) -> Result<(), Unsolvable> {
    if !equilibrium.loads().iter().all(Action::is_finite) {
        return Err(not_finite("a load"));
    }
    for column in equilibrium.unknowns() {
        let acts_at_all = column
            .acts
            .iter()
            .any(|action| action.vector().size() > 0.0 || action.moment(Vector::default()) != 0.0);
        if !acts_at_all || !column.acts.iter().all(Action::is_finite) {
            return Err(not_finite(format!("the line of {}", column.name)));
        }
    }
    let conditions = equilibrium.conditions();
    let known = conditions.iter().all(|condition| {
        condition.total.is_finite() && condition.terms.iter().all(|term| term.1.is_finite())
    });
    if known {
        Ok(())
    } else {
        Err(not_finite("a condition"))
    }
}

/// All actions, known ones first.
fn actions(equilibrium: &Equilibrium) -> impl Iterator<Item = &Action> {
    let unknown = equilibrium.unknowns().iter().flat_map(|u| &u.acts);
    equilibrium.loads().iter().chain(unknown)
}

/// The middle of some points and the largest distance from it, doubled.
fn spread(points: &[Vector]) -> (Vector, f64) {
    let sum = points.iter().fold(Vector::default(), |sum, at| sum + *at);
    let middle = sum * (1.0 / points.len().max(1) as f64);
    let reach = points.iter().map(|at| (*at - middle).size());
    (middle, 2.0 * reach.fold(0.0, f64::max))
}

fn frames(equilibrium: &Equilibrium) -> (BTreeMap<usize, Frame>, f64) {
    let mut points: BTreeMap<usize, Vec<Vector>> = BTreeMap::new();
    for action in actions(equilibrium) {
        points.entry(action.body).or_default().extend(action.at());
    }
    let all: Vec<Vector> = points.values().flatten().copied().collect();
    let (_, whole) = spread(&all);
    // One point told in two ways differs by rounding of its coordinates: no length at all.
    let outermost = all.iter().map(|at| at.size()).fold(0.0, f64::max);
    let dust = outermost * ROUNDING;
    let length = if whole > dust { whole } else { 1.0 };
    let frames = points.iter().enumerate().map(|(index, (body, points))| {
        let (origin, own) = spread(points);
        // Forces that all but meet would make a length scale of rounding dust.
        let length = if own > dust.max(whole * NEGLIGIBLE) {
            own
        } else {
            length
        };
        let frame = Frame {
            first_row: 3 * index,
            origin,
            length,
        };
        (*body, frame)
    });
    (frames.collect(), length)
}

/// Adds an action to a column of forces and moments.
fn add_action(column: &mut [f64], frames: &BTreeMap<usize, Frame>, action: &Action, factor: f64) {
    if let Some(frame) = frames.get(&action.body) {
        let force = action.vector();
        column[frame.first_row] += force.x * factor;
        column[frame.first_row + 1] += force.y * factor;
        column[frame.first_row + 2] += action.moment(frame.origin) / frame.length * factor;
    }
}

fn scale(equilibrium: &Equilibrium) -> Result<Scaled, Unsolvable> {
    let (frames, length) = frames(equilibrium);
    let height = 3 * frames.len();
    let size = |action: &Action| match frames.get(&action.body) {
        Some(frame) if action.at().is_none() => action.moment(frame.origin).abs() / frame.length,
        _ => action.vector().size(),
    };
    let largest = equilibrium.loads().iter().map(size).fold(0.0, f64::max);
    let force = if largest > 0.0 { largest } else { 1.0 };
    let mut worth = Vec::new();
    let mut columns: Rows = Vec::new();
    for unknown in equilibrium.unknowns() {
        let unit = unknown.acts.iter().map(size).fold(0.0, f64::max);
        let mut column = vec![0.0; height];
        for action in &unknown.acts {
            add_action(&mut column, &frames, action, 1.0 / unit);
        }
        // A rope that pulls a body both ways moves nothing: what is left of it is rounding, and
        // as the only column it would be the largest pivot.
        let dust = |entry: &&mut f64| entry.abs() <= ROUNDING;
        column
            .iter_mut()
            .filter(dust)
            .for_each(|entry| *entry = 0.0);
        worth.push(force / unit);
        columns.push(column);
    }
    let mut right = vec![0.0; height];
    for load in equilibrium.loads() {
        add_action(&mut right, &frames, load, -1.0 / force);
    }
    let mut rows: Rows = (0..height)
        .map(|row| columns.iter().map(|column| column[row]).collect())
        .collect();
    for condition in equilibrium.conditions() {
        let (row, total) = condition_row(condition, &worth, force);
        rows.push(row);
        right.push(total);
    }
    let numbers = rows.iter().flatten().chain(&right).chain(&worth);
    if !numbers.into_iter().all(|number| number.is_finite()) {
        return Err(not_finite("a moment"));
    }
    Ok(Scaled {
        frames,
        force,
        length,
        worth,
        rows,
        right,
    })
}

/// A further condition on the scaled unknowns, divided so that its largest factor is 1.
fn condition_row(condition: &Condition, worth: &[f64], force: f64) -> (Vec<f64>, f64) {
    let mut row = vec![0.0; worth.len()];
    for &(index, factor) in &condition.terms {
        if let Some(entry) = row.get_mut(index) {
            *entry += factor * worth[index];
        }
    }
    let sizes = row.iter().map(|entry| entry.abs());
    let largest = sizes.fold(0.0, f64::max);
    let unit = if largest > 0.0 { largest } else { force };
    row.iter_mut().for_each(|entry| *entry /= unit);
    (row, condition.total / unit)
}

/// Refuses loads that do work in a motion that nothing resists.
fn held(scaled: &Scaled, left: &[Vec<f64>]) -> Result<(), Unsolvable> {
    // What the unknowns cannot balance, by its share of each free motion. The loads stand on the
    // right-hand side with their sign turned; here it is turned back.
    let mut driven = vec![0.0; scaled.right.len()];
    for vector in left {
        let work = linear::dot(vector, &scaled.right);
        linear::add(&mut driven, vector, -work);
    }
    let size = libm::sqrt(linear::dot(&driven, &driven));
    if size <= NEGLIGIBLE {
        return Ok(());
    }
    driven.iter_mut().for_each(|entry| *entry /= size);
    Err(Unsolvable::Mechanism {
        motions: motions(scaled, &driven),
    })
}

/// The motion of each body that a left null vector stands for: its entries at the forces are
/// shifts of the origin, that at the moment an angle times the length scale.
fn motions(scaled: &Scaled, vector: &[f64]) -> Vec<Motion> {
    scaled
        .frames
        .iter()
        .filter_map(|(body, frame)| {
            let shift = Vector::new(vector[frame.first_row], vector[frame.first_row + 1]);
            let angle = vector[frame.first_row + 2] / frame.length;
            // Only the ratio of shift and angle counts, so the shift may stay without unit.
            Motion::of(*body, frame.origin, shift, angle, frame.length)
        })
        .collect()
}

/// The work of each unknown from the place `first` on, by its sign and up to one positive factor of
/// its own, in every independent motion that the unknowns before them leave.
pub(super) fn works(equilibrium: &Equilibrium, first: usize) -> Result<Rows, Unsolvable> {
    let scaled = scale(equilibrium)?;
    let work = |motion: &[f64], column: usize| {
        let shares = scaled.rows.iter().zip(motion);
        shares.map(|(row, share)| row[column] * share).sum()
    };
    let motions = linear::left_null_space(&scaled.rows, first);
    let columns = first..equilibrium.unknowns().len();
    let works = |motion: Vec<f64>| columns.clone().map(|at| work(&motion, at)).collect();
    Ok(motions.into_iter().map(works).collect())
}

/// Refuses unknowns that may change together without disturbing the balance.
fn fixed(equilibrium: &Equilibrium, found: &linear::Elimination) -> Result<(), Unsolvable> {
    let unknowns = equilibrium.unknowns();
    if found.rank() == unknowns.len() {
        return Ok(());
    }
    let free = found.null_space();
    let names = unknowns
        .iter()
        .enumerate()
        .filter(|(index, _)| free.iter().any(|vector| vector[*index].abs() > NEGLIGIBLE))
        .map(|(_, unknown)| unknown.name.clone())
        .collect();
    Err(Unsolvable::Indeterminate {
        unknowns: unknowns.len(),
        equations: found.rank(),
        names,
    })
}

/// Refuses ropes that push and contacts that pull.
fn allowed(equilibrium: &Equilibrium, values: &[f64], force: f64) -> Result<(), Unsolvable> {
    for (unknown, value) in equilibrium.unknowns().iter().zip(values) {
        let unit = unknown.acts.iter().map(|action| action.vector().size());
        let size_n = -value * unit.fold(0.0, f64::max);
        if size_n <= NEGLIGIBLE * force {
            continue;
        }
        let name = unknown.name.clone();
        match unknown.sense {
            Sense::Either => {}
            Sense::Pull => return Err(Unsolvable::RopeWouldPush { rope: name, size_n }),
            Sense::Push => {
                return Err(Unsolvable::ContactWouldPull {
                    support: name,
                    size_n,
                });
            }
        }
    }
    Ok(())
}
