//! Where a force was said to act, and whether it does.

use super::mention::Mention;
use super::stretch::Stretch;
use crate::plane::Vector;
use crate::problem::{ForceId, Problem};

/// Where a force was said to act.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Where {
    /// At this distance from the foot, in metres.
    At(f64),
    /// Somewhere in this stretch of the body.
    Within(Stretch),
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
    /// It is so, and not yet at which point.
    Rough,
    /// It was not said.
    Missing,
}

/// Two places nearer than this, in metres, are one.
const SAME_PLACE: f64 = 1e-6;

/// Two places nearer than this, in metres, may be one that was rounded.
const ROUNDED_PLACE: f64 = 0.01;

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
        Some(Where::Within(stretch)) => within(problem, force, stretch),
        Some(Where::At(_) | Where::Off) => Fit::Wrong,
    }
}

fn within(problem: &Problem, force: ForceId, stretch: Stretch) -> Fit {
    let Some(acting) = problem.force(force) else {
        return Fit::Wrong;
    };
    let at = problem.distance(acting.at, &problem.values());
    // Nobody needs to say where a hinge is.
    let told = stretch.tells(problem, force) || matches!(force, ForceId::Support(_));
    match (stretch.holds(at), told) {
        (false, _) => Fit::Wrong,
        (true, true) => Fit::Right,
        (true, false) => Fit::Rough,
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
    let length = length(problem);
    (-SAME_PLACE..=length + SAME_PLACE).contains(&metres)
}

/// To which side a length goes from where it is measured.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Side {
    Up,
    Down,
    Left,
    Right,
    /// Towards the tip.
    Out,
    /// Towards the foot.
    In,
}

impl Side {
    pub(super) fn of(mention: Mention) -> Option<Side> {
        match mention {
            Mention::Up => Some(Side::Up),
            Mention::Down => Some(Side::Down),
            Mention::Left => Some(Side::Left),
            Mention::Right => Some(Side::Right),
            _ => None,
        }
    }

    pub(super) fn upright(above: bool) -> Side {
        if above { Side::Up } else { Side::Down }
    }
}

/// The way from the foot to the tip, of size 1.
fn lies(problem: &Problem) -> Vector {
    Vector::at_angle(problem.body_angle(&problem.values()))
}

/// The length of the body, in metres.
pub(super) fn length(problem: &Problem) -> f64 {
    problem.given(problem.body().length).value
}

/// True for a body that rises more than it reaches.
pub(super) fn is_steep(problem: &Problem) -> bool {
    let body = lies(problem);
    body.y.abs() > body.x.abs()
}

/// Whether a side is the tip's or the foot's; `None` where the body does not lie that way.
pub(super) fn forward(problem: &Problem, side: Side) -> Option<bool> {
    let body = lies(problem);
    let part = match side {
        Side::Up => body.y,
        Side::Down => -body.y,
        Side::Right => body.x,
        Side::Left => -body.x,
        Side::Out => 1.0,
        Side::In => -1.0,
    };
    (part.abs() > SAME_PLACE).then_some(part > 0.0)
}

/// The distance from the foot of a point that is so far from another, in metres. Towards the foot
/// where no side was said; negative beyond the foot.
pub(super) fn along_from(problem: &Problem, from: f64, length: f64, side: Option<Side>) -> f64 {
    match side.and_then(|side| forward(problem, side)) {
        Some(true) => from + length,
        Some(false) => from - length,
        None => (from - length).abs(),
    }
}

/// A place told with its sign: to the left of the foot a coordinate counts negative.
pub(super) fn coordinate(problem: &Problem, metres: f64) -> f64 {
    match lies(problem).x < -SAME_PLACE {
        true => metres.abs(),
        false => metres,
    }
}

/// True if a length is the whole of the body's.
pub(super) fn is_whole(problem: &Problem, metres: f64) -> bool {
    (length(problem) - metres).abs() < SAME_PLACE
}

/// True for two points of the body that are not one, however they were rounded.
pub(super) fn apart(one: Where, other: Where) -> bool {
    match (one, other) {
        (Where::At(one), Where::At(other)) => (one - other).abs() > ROUNDED_PLACE,
        _ => false,
    }
}
