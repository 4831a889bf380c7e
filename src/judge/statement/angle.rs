//! An angle that was said for a direction: from which line, in which sense, and whether it is so.

use super::way::{NONE, Way};
use crate::plane::Vector;
use crate::problem::Reference;

/// A line with which an angle is made.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Line {
    /// The horizontal or the vertical.
    Fixed(Reference),
    /// An axis: x to the right, y up; one of its senses, where that was told.
    Axis(Reference, Option<bool>),
    /// The body.
    Body,
}

/// How an angle stands to a direction.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum AngleFit {
    /// It tells the whole direction: 140° from the positive x axis.
    Whole,
    /// It is an angle of the direction with that line; the sides are another matter.
    Partly,
    /// It is none.
    Wrong,
}

/// Two angles nearer than this, in degrees, are one: angles are typed in whole degrees.
const SAME_ANGLE: f64 = 0.5;

/// How the angle of a way stands to a direction; where no line was said, with the horizontal, the
/// vertical, the body or, if it is larger than a right angle, turned anticlockwise from the
/// positive x axis.
pub(super) fn angle_fit(
    (degrees, from): (f64, Option<Line>),
    way: Way,
    unit: Vector,
    body: Vector,
) -> AngleFit {
    let bearing = libm::atan2(unit.y, unit.x).to_degrees();
    let along = unit.dot(body).abs();
    let across = (unit.x * body.y - unit.y * body.x).abs();
    let with_body = libm::atan2(across, along).to_degrees();
    let with_level = libm::atan2(unit.y.abs(), unit.x.abs()).to_degrees();
    let same = |angle: f64| (angle - degrees).abs() < SAME_ANGLE;
    let turned = |ray: f64, clockwise: bool| {
        let sense = if clockwise { -1.0 } else { 1.0 };
        turns(bearing - ray - sense * degrees)
    };
    let rays = |line: Reference| match line {
        Reference::Horizontal => [0.0, 180.0],
        Reference::Vertical => [90.0, 270.0],
    };
    let whole = |fits: bool| match fits {
        true => AngleFit::Whole,
        false => AngleFit::Wrong,
    };
    let partly = |fits: bool| match fits {
        true => AngleFit::Partly,
        false => AngleFit::Wrong,
    };
    // More than an angle between two lines can be.
    let large = !(0.0..=90.0 + SAME_ANGLE).contains(&degrees);
    match (from, way.clockwise) {
        (Some(Line::Axis(line, sense)), turn) if sense.is_some() || turn.is_some() => {
            let [plus, minus] = rays(line);
            let ray = if sense == Some(false) { minus } else { plus };
            match turn {
                Some(clockwise) => whole(turned(ray, clockwise)),
                None if ray == 0.0 && turned(ray, false) => AngleFit::Whole,
                None => partly(same(between(bearing, ray)) || turned(ray, false)),
            }
        }
        (Some(Line::Fixed(line)), Some(clockwise)) => {
            whole(rays(line).into_iter().any(|ray| turned(ray, clockwise)))
        }
        (Some(Line::Fixed(line) | Line::Axis(line, _)), _) => match line {
            Reference::Horizontal if large => whole(turned(0.0, false)),
            Reference::Horizontal => partly(same(with_level)),
            Reference::Vertical => partly(same(90.0 - with_level)),
        },
        (Some(Line::Body), _) => partly(same(with_body) || same(180.0 - with_body)),
        (None, Some(clockwise)) => whole(turned(0.0, clockwise)),
        (None, None) if large => whole(turned(0.0, false)),
        (None, None) => partly(same(with_level) || same(90.0 - with_level) || same(with_body)),
    }
}

/// True for an angle, in degrees, that is none but for whole turns.
fn turns(degrees: f64) -> bool {
    let rest = degrees.rem_euclid(360.0);
    rest < SAME_ANGLE || 360.0 - rest < SAME_ANGLE
}

/// The angle between two bearings, in degrees, from 0 to 180.
fn between(one: f64, other: f64) -> f64 {
    let off = (one - other).rem_euclid(360.0);
    off.min(360.0 - off)
}

/// True for two directions along one line.
pub(super) fn parallel(one: Vector, other: Vector) -> bool {
    (one.x * other.y - one.y * other.x).abs() < NONE
}
