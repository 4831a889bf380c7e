//! The scene as it is told: body, supports, ropes, loads, and the givens on them.

use super::frame::{Frame, Span};
use super::scene::{Line, Shape, Spot};
use super::{Ink, Marks};
use crate::plane::Vector;
use crate::problem::{
    Direction, GivenId, LoadKind, Place, Reference, Side, SupportKind, Tilt, Upright,
};
use std::collections::BTreeMap;
use std::f64::consts::{FRAC_PI_2, PI};

/// Steps from the body to a hung box.
const STRING: f64 = 1.6;

/// Draws the scene.
pub(super) fn draw(frame: &mut Frame, marks: &Marks) {
    if marks.givens {
        tilt(frame);
        lengths(frame);
    }
    frame.body();
    for index in 0..frame.problem.supports().len() {
        support(frame, index);
    }
    for index in 0..frame.problem.ropes().len() {
        rope(frame, index, marks.givens);
    }
    for index in 0..frame.problem.loads().len() {
        load(frame, index, marks.givens);
    }
    if marks.givens
        && let Some(mass) = frame.problem.body().mass
    {
        let anchors =
            [0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8].map(|share| frame.spot_at(frame.length * share));
        let text = given_text(frame, mass);
        let lean = if frame.is_level() {
            frame.upper
        } else {
            frame.upper * -1.0
        };
        frame.label(Ink::Weight, &text, anchors.to_vec(), lean);
    }
    if let Some(pivot) = marks.pivot {
        let spot = frame.spot(pivot);
        frame.draw(Ink::Pivot, Shape::Ring(spot));
    }
}

/// "θ = 35°".
fn given_text(frame: &Frame, id: GivenId) -> String {
    frame
        .problem
        .givens()
        .get(id.0)
        .map(|given| format!("{} = {}", given.symbol, given.written))
        .unwrap_or_default()
}

fn tilt(frame: &mut Frame) {
    let body = frame.problem.body();
    let Tilt::Rising { angle, from } = body.tilt else {
        return;
    };
    let reference = match from {
        Reference::Horizontal => level(body.towards),
        Reference::Vertical => FRAC_PI_2,
    };
    let foot = frame.spot(Place::Foot);
    let text = given_text(frame, angle);
    let to = frame.along.angle();
    measured(frame, foot, reference, to, &text);
}

/// An angle from a dashed reference line.
fn measured(frame: &mut Frame, centre: Spot, reference: f64, to: f64, text: &str) {
    let line = Vector::at_angle(reference);
    // Where the body itself lies on the reference line, it needs no dashes.
    if line.cross(frame.along).abs() > 0.03 {
        let end = centre.moved(line * 5.5);
        frame.line(Ink::Faint, centre, end, Line::Dashed);
    }
    frame.arc(Ink::Angle, centre, reference, to, text);
}

fn lengths(frame: &mut Frame) {
    let body = frame.problem.body();
    let mut wanted: BTreeMap<GivenId, Place> = BTreeMap::new();
    wanted.insert(body.length, Place::Tip);
    let places = (frame.problem.supports().iter().map(|support| support.at))
        .chain(frame.problem.ropes().iter().map(|rope| rope.at))
        .chain(frame.problem.loads().iter().map(|load| load.at))
        .chain(body.mass.map(|_| body.centre));
    for place in places {
        if let Place::At(given) = place {
            wanted.entry(given).or_insert(place);
        }
    }
    let spans = wanted
        .into_iter()
        .map(|(given, place)| Span {
            from: 0.0,
            to: frame.distance(place),
            text: given_text(frame, given),
        })
        .collect();
    if frame.is_level() {
        let hangs = !frame.problem.loads().is_empty();
        let below = frame.upper * -1.0;
        frame.dimensions(spans, below, if hangs { STRING + 3.4 } else { 3.6 });
    } else {
        frame.dimensions(spans, frame.upper, 2.2);
    }
}

fn support(frame: &mut Frame, index: usize) {
    let support = &frame.problem.supports()[index];
    let spot = frame.spot(support.at);
    let down = Vector::new(0.0, -1.0);
    match support.kind {
        SupportKind::Hinge => {
            frame.draw(Ink::Ground, Shape::Stand(spot.moved(down)));
            let looks = FRAC_PI_2;
            let at = spot.moved(down * 2.0);
            frame.draw(
                Ink::Ground,
                Shape::Face {
                    at,
                    looks,
                    half: 1.5,
                },
            );
            frame.draw(Ink::Ground, Shape::Hinge(spot));
        }
        SupportKind::Roller(normal) => {
            let looks = frame.angle(normal);
            let back = Vector::at_angle(looks) * -1.0;
            frame.draw(Ink::Ground, Shape::Wheel(spot.moved(back)));
            let at = spot.moved(back * 2.0);
            frame.draw(
                Ink::Ground,
                Shape::Face {
                    at,
                    looks,
                    half: 1.5,
                },
            );
        }
        SupportKind::BuiltIn => {
            let inward = if frame.distance(support.at) > frame.length / 2.0 {
                -1.0
            } else {
                1.0
            };
            let looks = if frame.is_level() {
                (frame.along * inward).angle()
            } else if inward > 0.0 {
                FRAC_PI_2
            } else {
                -FRAC_PI_2
            };
            let at = spot.moved(Vector::at_angle(looks) * -0.6);
            frame.draw(
                Ink::Ground,
                Shape::Face {
                    at,
                    looks,
                    half: 2.0,
                },
            );
        }
    }
}

fn rope(frame: &mut Frame, index: usize, givens: bool) {
    let rope = &frame.problem.ropes()[index];
    let spot = frame.spot(rope.at);
    let angle = frame.angle(rope.direction);
    let run = Vector::at_angle(angle);
    if givens {
        direction_given(frame, spot, rope.direction, run);
    }
    let (end, looks) = rope_end(frame, spot, run);
    frame.line(Ink::Rope, spot, end, Line::Solid);
    let at = end.moved(Vector::at_angle(looks) * -0.5);
    frame.draw(
        Ink::Ground,
        Shape::Face {
            at,
            looks,
            half: 1.6,
        },
    );
    frame.draw(Ink::Rope, Shape::Knot(spot));
}

/// Where a rope ends, and which way the face looks at which it ends.
fn rope_end(frame: &Frame, spot: Spot, run: Vector) -> (Spot, f64) {
    let length = frame.length;
    let sideways = frame.along.x.signum();
    let wall = if run.x > 0.0 { PI } else { 0.0 };
    let flat = if run.y > 0.0 { -FRAC_PI_2 } else { FRAC_PI_2 };
    let steep = run.y.abs() > run.x.abs() * 2.0;
    if run.y < -0.05 {
        // A guy line runs down to the ground on which the foot stands.
        let reach = (spot.at.y / -run.y).clamp(0.25 * length, 1.3 * length);
        return (Spot::at(spot.at + run * reach), FRAC_PI_2);
    }
    if steep {
        return (spot.moved(run * 5.0), flat);
    }
    if run.x * sideways < 0.0 {
        // Back over the foot: to a wall a little behind it, if the rope need not climb too high.
        let reach = (spot.at.x.abs() + 0.06 * length) / run.x.abs();
        let capped = reach.clamp(0.3 * length, 1.05 * length);
        let looks = if capped < reach && run.y > 0.3 {
            flat
        } else {
            wall
        };
        return (Spot::at(spot.at + run * capped), looks);
    }
    (spot.moved(run * 5.5), wall)
}

/// The arc that shows a given direction at a spot; the line meant runs out from the spot.
fn direction_given(frame: &mut Frame, spot: Spot, direction: Direction, runs: Vector) {
    match direction {
        Direction::Oblique {
            angle,
            from,
            upright,
            side,
        } => {
            let reference = match from {
                Reference::Horizontal => level(side),
                Reference::Vertical if upright == Upright::Up => FRAC_PI_2,
                Reference::Vertical => -FRAC_PI_2,
            };
            // A push is drawn on the other side of its place, and so is its angle.
            let pushed = Vector::at_angle(frame.angle(direction)).dot(runs) < 0.0;
            let reference = if pushed { reference + PI } else { reference };
            let text = given_text(frame, angle);
            measured(frame, spot, reference, runs.angle(), &text);
        }
        Direction::FromBody { angle } => {
            let pushed = Vector::at_angle(frame.angle(direction)).dot(runs) < 0.0;
            let back = if pushed {
                frame.along
            } else {
                frame.along * -1.0
            };
            let text = given_text(frame, angle);
            frame.arc(Ink::Angle, spot, back.angle(), runs.angle(), &text);
        }
        Direction::Up | Direction::Down | Direction::Level(_) => {}
    }
}

fn load(frame: &mut Frame, index: usize, givens: bool) {
    let load = &frame.problem.loads()[index];
    let spot = frame.spot(load.at);
    match load.kind {
        LoadKind::Mass(mass) => {
            let top = spot.moved(Vector::new(0.0, -STRING));
            frame.line(Ink::Weight, spot, top, Line::Solid);
            frame.draw(Ink::Weight, Shape::Box(top));
            frame.draw(Ink::Weight, Shape::Knot(spot));
            if givens {
                let text = given_text(frame, mass);
                let side = if frame.is_level() {
                    1.0
                } else {
                    frame.along.x.signum()
                };
                let anchors = vec![
                    top.moved(Vector::new(0.9 * side, -0.9)),
                    top.moved(Vector::new(-0.9 * side, -0.9)),
                    top.moved(Vector::new(0.0, -2.0)),
                ];
                frame.label(Ink::Weight, &text, anchors, Vector::new(side, 0.0));
            }
        }
        LoadKind::Force { size, direction } => {
            let push = Vector::at_angle(frame.angle(direction));
            let tail = spot.moved(push * -4.5);
            let head = spot.moved(push * -0.9);
            frame.draw(
                Ink::Load,
                Shape::Arrow {
                    from: tail,
                    to: head,
                    line: Line::Solid,
                },
            );
            if givens {
                direction_given(frame, spot, direction, push * -1.0);
                let text = given_text(frame, size);
                let anchors = vec![tail, spot.moved(push * -3.0)];
                frame.label(Ink::Load, &text, anchors, push * -1.0);
            }
        }
    }
}

fn level(side: Side) -> f64 {
    if side == Side::Right { 0.0 } else { PI }
}
