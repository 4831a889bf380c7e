//! Where a force was said to act, and whether it does.

use crate::problem::{ForceId, Problem};

/// Where a force was said to act.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Where {
    /// At this distance from the foot, in metres.
    At(f64),
    /// Where it does act, whatever that is ("where it is tied").
    There,
    /// Not on the body: at what stands behind a rope or a hinge.
    Off,
}

/// How a part of a statement stands to the problem.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Fit {
    /// It is so.
    Right,
    /// It is not so.
    Wrong,
    /// It was not said.
    Missing,
}

/// Two places nearer than this, in metres, are one.
const SAME_PLACE: f64 = 1e-6;

/// Whether the place said for a force is its place.
pub fn place_fits(problem: &Problem, force: ForceId, place: Option<Where>) -> Fit {
    match place {
        // A hinge is where it is; nobody needs to say so.
        None if matches!(force, ForceId::Support(_)) => Fit::Right,
        None => Fit::Missing,
        // Nobody ties or hangs a body's own weight.
        Some(Where::There) if force == ForceId::OwnWeight => Fit::Missing,
        Some(Where::There) => Fit::Right,
        Some(Where::At(said)) if acts_at(problem, force, said) => Fit::Right,
        Some(Where::At(_) | Where::Off) => Fit::Wrong,
    }
}

/// True if a force acts at this distance from the foot, in metres.
pub(super) fn acts_at(problem: &Problem, force: ForceId, metres: f64) -> bool {
    problem.force(force).is_some_and(|force| {
        (problem.distance(force.at, &problem.values()) - metres).abs() < SAME_PLACE
    })
}

/// True if a distance from the foot, in metres, lies on the body.
pub fn is_on(problem: &Problem, metres: f64) -> bool {
    let length = problem.given(problem.body().length).value;
    (-SAME_PLACE..=length + SAME_PLACE).contains(&metres)
}
