//! The hard rules for drawn numbers: the common mistakes show, the literals of a working are
//! distinct, and the scene is physical.
//!
//! Cheap rules come first, since a draw tries many candidates. Where a mistake gives the same
//! *function* as the right working (a rope parallel to the weights, say), no numbers can tell the
//! two apart and the rule does not count there.

mod literals;
mod refusal;

pub use refusal::Refusal;

use crate::key::{Formula, Key, Pins, Rule, Sample, Sampling, StepId, agree};
use crate::mistakes::{Instance, candidates, function, instances, unknown};
use crate::problem::{Acting, Direction, Force, GivenId, Problem, Size, Tilt};
use crate::statics::{self, Solution};
use crate::units::{Dimension, figures_text};
use literals::{same_literal, unit_distance};
use std::collections::BTreeMap;
use std::f64::consts::{FRAC_PI_2, PI};

/// A wrong value must be farther from the right one than this share of it.
const SHOWN: f64 = 0.01;
/// The prior from which a mistake counts as likely, common or not.
const LIKELY: f64 = 4.0;
/// Values at other numbers that differ by less than this share are of the same function.
const IDENTICAL: f64 = 1e-8;
/// Basic angles lie at least this far apart, in degrees.
const ANGLES_APART_DEG: f64 = 3.0;
/// Sums of angles stay at least this far from a right angle, in degrees.
const FROM_RIGHT_ANGLE_DEG: f64 = 5.0;
/// Opposing moments differ by at least this share of the larger.
const MOMENTS_APART: f64 = 0.25;
/// A force is absurd beyond this many times the total load.
const ABSURD: f64 = 6.0;
/// A pull is tiny below this share of the total load.
const TINY: f64 = 0.05;
/// A part of a support's force smaller than this, as a share of the largest force along its axis,
/// is the small difference of large ones.
const DIFFERENCE: f64 = 0.08;

/// The first hard rule that these numbers break.
pub fn refuse(problem: &Problem, key: &Key) -> Option<Refusal> {
    let sampling = Sampling::of(problem);
    special_angle(problem)
        .or_else(|| equal_distances(key, &sampling))
        .or_else(|| unit_distance(problem))
        .or_else(|| same_literal(problem, key, &sampling))
        .or_else(|| sum_near_right_angle(problem))
        .or_else(|| angles_too_close(problem, key, &sampling))
        .or_else(|| moments_nearly_cancel(problem, key, &sampling))
        .or_else(|| unphysical(problem))
        .or_else(|| mistake_hidden(problem, key, &sampling))
        .or_else(|| mistakes_alike(problem, key, &sampling))
}

/// The share of the mistakes' prior weight that a bare number of three figures at the pull would
/// put under another mistake's name, or take for right. Mistakes with the same function at the
/// pull count as one, and so do those of one family.
pub fn misnamed(problem: &Problem, key: &Key) -> f64 {
    let sampling = Sampling::of(problem);
    let Some(pull) = unknown(key) else {
        return 0.0;
    };
    let at_pull = |wrong: &Key| function(wrong, key, pull, &sampling, &BTreeMap::new());
    let Some(right) = at_pull(key) else {
        return 0.0;
    };
    let mut all = instances(problem, key, &sampling);
    all.retain(|instance| !instance.mistake.has_no_prior());
    let weight = |instance: &Instance| {
        let scopes = all
            .iter()
            .filter(|other| other.mistake.id == instance.mistake.id)
            .count();
        instance.mistake.prior / scopes as f64
    };
    let showing: Vec<_> = all
        .iter()
        .filter_map(|instance| Some((instance, at_pull(&instance.key)?, weight(instance))))
        .filter(|(_, samples, _)| !agree(samples, &right))
        .collect();
    let shown = |value: f64| figures_text(value, 3);
    let right_shown = shown(right[0]);
    let (mut total, mut lost) = (0.0, 0.0);
    for (instance, samples, weight) in &showing {
        total += weight;
        let number = shown(samples[0]);
        let strength = |family: &str| -> f64 {
            let rivals = showing.iter().filter(|(other, samples, _)| {
                other.mistake.family == family && shown(samples[0]) == number
            });
            rivals.map(|(_, _, weight)| weight).sum()
        };
        let own = strength(instance.mistake.family);
        let outdone = showing.iter().any(|(other, others, _)| {
            other.mistake.family != instance.mistake.family
                && shown(others[0]) == number
                && !agree(others, samples)
                && strength(other.mistake.family) > own
        });
        if number == right_shown || outdone {
            lost += weight;
        }
    }
    if total > 0.0 { lost / total } else { 0.0 }
}

/// The given angle of the body's tilt.
fn tilt(problem: &Problem) -> Option<GivenId> {
    match problem.body().tilt {
        Tilt::Level => None,
        Tilt::Rising { angle, .. } => Some(angle),
    }
}

/// The given angle of the rope that is looked for.
fn rope_angle(problem: &Problem) -> Option<GivenId> {
    problem
        .forces()
        .iter()
        .filter(|force| force.size == Size::Unknown)
        .find_map(|force| match force.acting {
            Acting::Along(Direction::Oblique { angle, .. } | Direction::FromBody { angle }) => {
                Some(angle)
            }
            _ => None,
        })
}

fn special_angle(problem: &Problem) -> Option<Refusal> {
    let given = problem.given(tilt(problem).or_else(|| rope_angle(problem))?);
    let angle_deg = given.value.to_degrees();
    [30.0, 45.0, 60.0]
        .iter()
        .any(|special| (angle_deg - special).abs() < 0.01)
        .then(|| Refusal::SpecialAngle {
            symbol: given.symbol.to_string(),
            angle_deg,
        })
}

fn equal_distances(key: &Key, sampling: &Sampling) -> Option<Refusal> {
    let distances: Vec<(&Rule, f64)> = key
        .steps
        .iter()
        .filter(|step| matches!(step.id, StepId::Distance(_)))
        .filter_map(|step| {
            let value = key.value(step.id, sampling.own(), &Pins::new())?;
            Some((&step.rule, value))
        })
        .collect();
    pairs(&distances).find_map(|((rule, first), (other, second))| {
        let same = (first - second).abs() < 1e-9 && rule != other;
        same.then_some(Refusal::EqualDistances { distance_m: *first })
    })
}

fn sum_near_right_angle(problem: &Problem) -> Option<Refusal> {
    let value = |id: GivenId| problem.given(id).value.to_degrees();
    let (tilt, rope) = (value(tilt(problem)?), value(rope_angle(problem)?));
    let near = |sum: f64, least: f64| (sum - 90.0).abs() < least;
    if near(tilt + rope, FROM_RIGHT_ANGLE_DEG) {
        return Some(Refusal::SumNearRightAngle {
            sum_deg: tilt + rope,
        });
    }
    let twice = 2.0 * tilt + rope;
    near(twice, ANGLES_APART_DEG).then_some(Refusal::SumNearRightAngle { sum_deg: twice })
}

/// The basic angles are the printed ones, those between the forces and the body, and all their
/// complements; those that are equal by construction count once.
fn angles_too_close(problem: &Problem, key: &Key, sampling: &Sampling) -> Option<Refusal> {
    let printed = problem
        .givens()
        .iter()
        .enumerate()
        .filter(|(_, given)| given.dimension == Dimension::ANGLE)
        .map(|(index, _)| Formula::given(GivenId(index)));
    let found = key
        .steps
        .iter()
        .filter(|step| matches!(step.id, StepId::Angle(_)))
        .map(|step| Formula::step(step.id));
    let pins = Pins::new();
    let mut angles: Vec<Vec<f64>> = Vec::new();
    for formula in printed.chain(found) {
        let folded: Option<Vec<f64>> = sampling
            .samples
            .iter()
            .map(|sample| key.evaluate(&formula, sample, &pins).map(acute))
            .collect();
        let folded = folded?;
        let complement = folded.iter().map(|angle| FRAC_PI_2 - angle).collect();
        for angle in [folded, complement] {
            let known = |other: &Vec<f64>| {
                other
                    .iter()
                    .zip(&angle)
                    .all(|(one, other)| (one - other).abs() < 1e-9)
            };
            if !angles.iter().any(known) {
                angles.push(angle);
            }
        }
    }
    pairs(&angles).find_map(|(first, second)| {
        let (first_deg, second_deg) = (first[0].to_degrees(), second[0].to_degrees());
        ((first_deg - second_deg).abs() < ANGLES_APART_DEG - 1e-6).then_some(
            Refusal::AnglesTooClose {
                first_deg,
                second_deg,
            },
        )
    })
}

/// The angle between two lines, from 0 to 90°.
fn acute(angle: f64) -> f64 {
    let turned = angle.abs() % PI;
    turned.min(PI - turned)
}

fn moments_nearly_cancel(problem: &Problem, key: &Key, sampling: &Sampling) -> Option<Refusal> {
    let (mut one_way, mut other_way) = (0.0, 0.0);
    for term in &key.balance(StepId::MomentSum)?.terms {
        if problem.force(term.force)?.size == Size::Unknown {
            continue;
        }
        let amount = key.evaluate(&term.amount, sampling.own(), &Pins::new())?;
        if term.sign > 0.0 {
            one_way += amount;
        } else {
            other_way += amount;
        }
    }
    let (larger_n_m, smaller_n_m) = (f64::max(one_way, other_way), f64::min(one_way, other_way));
    (smaller_n_m > 0.0 && larger_n_m - smaller_n_m < MOMENTS_APART * larger_n_m).then_some(
        Refusal::MomentsNearlyCancel {
            larger_n_m,
            smaller_n_m,
        },
    )
}

fn unphysical(problem: &Problem) -> Option<Refusal> {
    let solution = match statics::solve(problem, &problem.values()) {
        Ok(solution) => solution,
        Err(cause) => return Some(Refusal::Unsolvable { cause }),
    };
    let forces = problem.forces();
    if let Some(refusal) = small_difference(problem, &solution) {
        return Some(refusal);
    }
    let is_known = |size: Size| size != Size::Unknown;
    let load: f64 = forces
        .iter()
        .filter(|force| is_known(force.size))
        .map(|force| solution.size(force.id))
        .sum();
    forces
        .iter()
        .filter(|force| !is_known(force.size))
        .find_map(|force| {
            let times_load = solution.size(force.id) / load;
            let symbol = force.symbol.to_string();
            if times_load > ABSURD {
                Some(Refusal::AbsurdForce { symbol, times_load })
            } else if times_load < TINY && force.acting != Acting::Anywhere {
                Some(Refusal::TinyPull { symbol, times_load })
            } else {
                None
            }
        })
}

/// A part of a support's force that is what two nearly equal sums leave: to three figures nothing
/// of it is certain.
fn small_difference(problem: &Problem, solution: &Solution) -> Option<Refusal> {
    let forces = problem.forces();
    let parts = |force: &Force<'_>| {
        let found = solution.force(force.id);
        [found.x, found.y]
    };
    let largest = |axis: usize| {
        let sizes = forces.iter().map(|force| parts(force)[axis].abs());
        sizes.fold(0.0, f64::max)
    };
    let largest = [largest(0), largest(1)];
    let anywhere = forces
        .iter()
        .filter(|force| force.acting == Acting::Anywhere);
    anywhere
        .flat_map(|force| {
            let found = parts(force);
            [0, 1].map(|axis| (force.symbol.to_string(), found[axis], largest[axis]))
        })
        .find_map(|(symbol, part, largest)| {
            let share = part.abs() / largest;
            let left = largest > 0.0 && share > 1e-9 && share < DIFFERENCE;
            left.then_some(Refusal::SmallDifference { symbol, share })
        })
}

/// A common mistake within [`SHOWN`] of the right value at a step asked up to the pull.
fn mistake_hidden(problem: &Problem, key: &Key, sampling: &Sampling) -> Option<Refusal> {
    let pull = unknown(key)?;
    let last = key.rank(pull)?;
    // Rewriting copies the key: only what the pull needs.
    let key = &Key {
        pivot: key.pivot,
        steps: key.steps[..=last].to_vec(),
        general: None,
    };
    let [own, other, ..] = &sampling.samples;
    let right = asked_values(key, key, own)?;
    let right_elsewhere = asked_values(key, key, other)?;
    for (mistake, _, wrong) in candidates(problem, key, |mistake| mistake.common) {
        // A key without a value for the pull is no mistake that can be made here.
        let Some(values) = asked_values(&wrong, key, own) else {
            continue;
        };
        let apart = |step: &StepId, value: f64, right: &BTreeMap<StepId, f64>| {
            let right = right.get(step)?;
            Some((value - right).abs() / right.abs())
        };
        let near: Vec<(StepId, f64)> = values
            .iter()
            .filter_map(|(step, value)| Some((*step, apart(step, *value, &right)?)))
            .filter(|(_, apart)| *apart <= SHOWN)
            .collect();
        // What is near here and equal at other numbers is the same function.
        let elsewhere = asked_values(&wrong, key, other).unwrap_or_default();
        let hidden = near.into_iter().find(|(step, _)| {
            let value = elsewhere.get(step).copied().unwrap_or(f64::NAN);
            apart(step, value, &right_elsewhere).is_some_and(|apart| apart > IDENTICAL)
        });
        if let Some((step, apart)) = hidden {
            return Some(Refusal::MistakeHidden {
                mistake: mistake.id,
                step,
                apart,
            });
        }
    }
    None
}

/// A common mistake that is made at the balance or at the pull, and gives there the same number
/// of three figures as a likelier one of another family.
fn mistakes_alike(problem: &Problem, key: &Key, sampling: &Sampling) -> Option<Refusal> {
    let pull = unknown(key)?;
    let StepId::Pull(pulling) = pull else {
        return None;
    };
    let right = asked_values(key, key, sampling.own())?;
    let close = |one: f64, other: f64| (one - other).abs() <= IDENTICAL * one.abs();
    struct Wrong {
        id: &'static str,
        family: &'static str,
        prior: f64,
        pulls: [f64; 2],
        made_here: bool,
    }
    let mut all: Vec<Wrong> = Vec::new();
    let likely = |mistake: &crate::mistakes::Mistake| mistake.common || mistake.prior >= LIKELY;
    for (mistake, _, wrong) in candidates(problem, key, likely) {
        let [own, other, ..] = &sampling.samples;
        let (Some(values), Some(elsewhere)) = (
            asked_values(&wrong, key, own),
            key_pull(&wrong, pull, other),
        ) else {
            continue;
        };
        let made_here = values.iter().all(|(step, value)| {
            *step == pull
                || *step == StepId::Across(pulling)
                || right.get(step).is_some_and(|right| close(*right, *value))
        });
        all.push(Wrong {
            id: mistake.id,
            family: mistake.family,
            prior: mistake.prior,
            pulls: [values.get(&pull).copied().unwrap_or(f64::NAN), elsewhere],
            made_here: mistake.common && made_here,
        });
    }
    let shown = |wrong: &Wrong| figures_text(wrong.pulls[0], 3);
    all.iter()
        .filter(|wrong| wrong.made_here)
        .find_map(|wrong| {
            let other = all.iter().find(|other| {
                other.family != wrong.family
                    && other.prior >= wrong.prior
                    && shown(other) == shown(wrong)
                    && !(close(other.pulls[0], wrong.pulls[0])
                        && close(other.pulls[1], wrong.pulls[1]))
            })?;
            Some(Refusal::MistakesAlike {
                mistake: wrong.id,
                other: other.id,
                pull_n: wrong.pulls[0],
            })
        })
}

/// The pull in a key at one choice of numbers.
fn key_pull(key: &Key, pull: StepId, sample: &Sample) -> Option<f64> {
    key.value(pull, sample, &Pins::new())
}

/// The asked values up to the pull at one choice of numbers. The component of the pull is
/// taken per newton of pull. Each value is worked out once and pinned for the next.
fn asked_values(key: &Key, right: &Key, own: &Sample) -> Option<BTreeMap<StepId, f64>> {
    let pull = unknown(right)?;
    let StepId::Pull(pulling) = pull else {
        return None;
    };
    let mut pins = Pins::new();
    let mut values = BTreeMap::new();
    for step in &key.steps {
        let (StepId::Weight(_) | StepId::Distance(_) | StepId::Angle(_) | StepId::Across(_)) =
            step.id
        else {
            continue;
        };
        if step.id == StepId::Across(pulling) {
            continue;
        }
        let value = key.value(step.id, own, &pins)?;
        pins.insert(step.id, value);
        if step.asked {
            values.insert(step.id, value);
        }
    }
    let found = key.value(pull, own, &pins)?;
    values.insert(pull, found);
    pins.insert(pull, 1.0);
    if let Some(component) = key.value(StepId::Across(pulling), own, &pins) {
        values.insert(StepId::Across(pulling), component);
    }
    Some(values)
}

/// Every pair of a list.
fn pairs<T>(list: &[T]) -> impl Iterator<Item = (&T, &T)> {
    list.iter()
        .enumerate()
        .flat_map(|(index, first)| list[index + 1..].iter().map(move |second| (first, second)))
}
