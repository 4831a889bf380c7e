//! What may be estimated before any number is worked out, and what is true of it.

use super::{Axis, Key, Part, Pins, Sample, StepId};
use crate::problem::{Acting, ForceId, Problem, Size, SupportKind};

/// Two forces nearer than this share of the larger are alike: neither is asked for as the larger,
/// and a force this small beside the others has no way worth asking for.
const ALIKE: f64 = 0.02;

/// What is true of the forces that may be estimated, in newtons. What has no clear answer is left
/// out.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Estimable {
    /// The pull, its size, and all weights together, where one is clearly the larger.
    pub pull: Option<(ForceId, f64, f64)>,
    /// The hinge.
    pub hinge: Option<ForceId>,
    /// The part of its force along each axis, right or up positive: those that are more than
    /// nothing. Both are there only where one is clearly the larger.
    pub level: Option<f64>,
    /// The same, upright.
    pub upright: Option<f64>,
}

/// What may be estimated in a lesson's problem.
pub fn estimable(problem: &Problem, key: &Key, sample: &Sample) -> Estimable {
    let value = |id: StepId| key.value(id, sample, &Pins::new());
    let forces = problem.forces();
    let weights: f64 = forces
        .iter()
        .filter(|force| matches!(force.size, Size::Weight(_)))
        .filter_map(|force| value(StepId::Weight(force.id)))
        .sum();
    let line = forces
        .iter()
        .find(|force| force.size == Size::Unknown && force.acting != Acting::Anywhere);
    let pull = line.and_then(|force| Some((force.id, value(StepId::Pull(force.id))?)));
    let hinges = problem.supports().iter().enumerate();
    let mut hinges = hinges.filter(|(_, support)| support.kind == SupportKind::Hinge);
    let hinge = hinges.next().map(|(place, _)| ForceId::Support(place));
    let largest = pull.map_or(weights, |(_, pull)| pull.max(weights));
    let part = |axis| {
        let part = value(StepId::Reaction(hinge?, Part::Along(axis)))?;
        (part.abs() > ALIKE * largest).then_some(part)
    };
    let (level, upright) = (part(Axis::Horizontal), part(Axis::Vertical));
    let alike = level
        .zip(upright)
        .is_some_and(|(level, upright)| are_alike(level.abs(), upright.abs()));
    let pull = pull
        .filter(|(_, pull)| weights > 0.0 && !are_alike(*pull, weights))
        .map(|(force, pull)| (force, pull, weights));
    Estimable {
        pull,
        hinge,
        level: level.filter(|_| !alike),
        upright: upright.filter(|_| !alike),
    }
}

fn are_alike(one: f64, other: f64) -> bool {
    (one - other).abs() <= ALIKE * one.max(other)
}
