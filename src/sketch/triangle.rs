//! The right triangle of one force, drawn by itself and as large as the grid allows.

use super::angle;
use super::frame::{Frame, arc_radius, force_ink, wrapped};
use super::scene::{Line, Shape, Spot};
use super::{Ink, Legs, Marks, TriangleMark};
use crate::plane::Vector;

/// How far the body goes on beyond the triangle, as a share of the long side.
const BEYOND: f64 = 0.2;
/// Steps by which it goes on at least, so that it is seen to go on.
const ON: f64 = 1.6;
/// Steps of the right-angle mark.
const CORNER: f64 = 1.5;
/// Below this share of the long side a short side cannot be seen.
const LEAST: f64 = 0.03;

/// The directions of the sides of a force's triangle, unless it has none: its long side, its side
/// along the body (or the level one), and the one across.
pub(super) fn sides(frame: &Frame, mark: &TriangleMark, marks: &Marks) -> Option<[Vector; 3]> {
    let (_, direction) = frame.marked(mark.force, &marks.forces)?;
    let long = direction?;
    let leg = match mark.legs {
        Legs::Body => frame.along,
        Legs::Axes => Vector::new(1.0, 0.0),
    };
    let along = leg * long.dot(leg);
    let across = long - along;
    let seen = along.size() > LEAST && across.size() > LEAST;
    seen.then_some([long, along, across])
}

/// Draws the triangle: the force from its place, and the two short sides to its head.
pub(super) fn draw(
    frame: &mut Frame,
    mark: &TriangleMark,
    marks: &Marks,
    [long, along, across]: [Vector; 3],
) {
    let (place, foot, head) = (Spot::default(), Spot::at(along), Spot::at(long));
    let unit = |side: Vector| side * (1.0 / side.size());
    let out = unit(along);
    match mark.legs {
        Legs::Body => {
            body(frame, mark, marks, (long, along));
            frame.line(Ink::Lit, place, foot, Line::Heavy);
        }
        Legs::Axes => frame.line(Ink::Lit, place, foot, Line::Solid),
    }
    frame.line(Ink::Lit, foot, head, Line::Dashed);
    let corner = Shape::RightAngle {
        corner: foot,
        along: out * -CORNER,
        across: unit(across) * CORNER,
    };
    frame.draw(Ink::Lit, corner);
    let ink = force_ink(frame.problem, mark.force);
    frame.draw(ink, Shape::Knot(place));
    let long_side = Shape::Arrow {
        acts: place,
        from: place,
        to: head,
        line: Line::Solid,
    };
    frame.draw(Ink::Lit, long_side);
    name_sides(frame, mark, marks, [long, along, across]);
    arc(frame, mark, marks, (long, along));
}

/// The body through the place of the force, and what it is called.
fn body(frame: &mut Frame, mark: &TriangleMark, marks: &Marks, (long, along): (Vector, Vector)) {
    let out = along * (1.0 / along.size());
    // The angle may be measured on the side away from the triangle.
    let leg = measured_from(frame, mark, marks, long);
    let back = match leg.dot(out) < 0.0 {
        true => arc_radius(wrapped(long.angle() - leg.angle())) + 0.8,
        false => ON,
    };
    let near = Spot::at(out * -BEYOND).moved(out * -back);
    let far = Spot::at(along + out * BEYOND).moved(out * ON);
    frame.line(Ink::Body, near, far, Line::Heavy);
    let noun = frame.problem.body().noun.clone();
    // On the side away from the triangle.
    let side = out.quarter_turn() * -out.cross(long).signum();
    frame.label(Ink::Body, &noun, vec![far, near], side);
}

/// The direction along the body from which the angle of the force is measured.
fn measured_from(frame: &Frame, mark: &TriangleMark, marks: &Marks, long: Vector) -> Vector {
    let size = (marks.angles.iter())
        .find(|angle| angle.force == mark.force)
        .and_then(|angle| angle.size);
    angle::meant(angle::leg(frame, mark.force, long), long, size)
}

/// Names the sides by what was said of them.
fn name_sides(
    frame: &mut Frame,
    mark: &TriangleMark,
    marks: &Marks,
    [long, along, across]: [Vector; 3],
) {
    let unit = |side: Vector| side * (1.0 / side.size());
    let force = marks.forces.iter().find(|one| one.force == mark.force);
    let label = force.map_or("", |force| force.label.as_str());
    let off = unit(long).quarter_turn() * along.cross(long).signum();
    let on = |from: Vector, side: Vector| {
        let at = |share: f64| Spot::at(from + side * share);
        [0.55, 0.7, 0.4, 0.85].map(at).to_vec()
    };
    let ink = force_ink(frame.problem, mark.force);
    frame.label(ink, label, on(Vector::default(), long), off);
    frame.label(Ink::Component, &mark.across, on(along, across), unit(along));
    let below = unit(across) * -1.0;
    let ink = Ink::Component;
    frame.label(ink, &mark.along, on(Vector::default(), along), below);
}

/// The angle at the place of the force, with what was said of it.
fn arc(frame: &mut Frame, mark: &TriangleMark, marks: &Marks, (long, along): (Vector, Vector)) {
    let leg = match mark.legs {
        Legs::Body => measured_from(frame, mark, marks, long),
        Legs::Axes => along * (1.0 / along.size()),
    };
    let place = Spot::default();
    frame.arc(Ink::Angle, place, leg.angle(), long.angle(), &mark.angle);
}
