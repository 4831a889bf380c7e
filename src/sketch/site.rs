//! The scene as it is told: body, supports, ropes, loads, and the givens on them.

use super::acting::{head_off, runs};
use super::frame::{Frame, Span, arc_radius, wrapped};
use super::scene::{Line, Shape, Spot};
use super::sheet::text;
use super::{Ink, Marks, guise};
use crate::plane::Vector;
use crate::problem::{
    Direction, ForceId, GivenId, LoadKind, Place, Reference, Side, SupportKind, Tilt, Upright,
};
use std::collections::BTreeMap;
use std::f64::consts::{FRAC_PI_2, PI};

/// Steps from the body to a hung box.
pub(super) const STRING: f64 = 1.6;
/// Steps of the arrow of a given force.
pub(super) const PUSH: f64 = 4.5;

/// Steps of a rope at a level body while the arrows of forces hang below.
const SHORT_ROPE: f64 = 6.0;

/// Rows by which a reference line passes the arc that begins at it.
const BEYOND: f64 = 1.2;

/// Draws the scene.
pub(super) fn draw(frame: &mut Frame, marks: &Marks) {
    if marks.givens {
        tilt(frame);
        let room = room_below(frame);
        lengths(frame, room, 0.0);
        guise::given(frame);
    }
    frame.body();
    for index in 0..frame.problem.supports().len() {
        support(frame, index);
    }
    for index in 0..frame.problem.ropes().len() {
        rope(frame, index, marks);
    }
    for index in 0..frame.problem.loads().len() {
        load(frame, index, marks.givens);
    }
    if marks.givens
        && let Some(mass) = frame.problem.body().mass
    {
        let anchors = free_stretches(frame);
        let text = given_text(frame, mass);
        // Beside a tilted body either side will do.
        let lean = if frame.is_level() {
            frame.upper
        } else {
            Vector::default()
        };
        frame.label(Ink::Weight, &text, anchors, lean);
    }
    if let Some(pivot) = marks.pivot {
        let spot = frame.spot(pivot);
        frame.draw(Ink::Pivot, Shape::Ring(spot));
    }
}

/// Spots along the body for its own mass, those far from what else hangs on it first.
fn free_stretches(frame: &Frame) -> Vec<Spot> {
    let problem = frame.problem;
    let taken: Vec<f64> = (problem.ropes().iter().map(|rope| rope.at))
        .chain(problem.loads().iter().map(|load| load.at))
        .chain(problem.supports().iter().map(|support| support.at))
        .map(|place| frame.distance(place) / frame.length)
        .collect();
    let crowding = |share: f64| {
        let nearest = taken
            .iter()
            .map(|at| (at - share).abs())
            .fold(0.3, f64::min);
        0.3 - nearest + 0.3 * (share - 0.5).abs()
    };
    let mut shares = [0.5, 0.45, 0.55, 0.4, 0.6, 0.35, 0.65, 0.3, 0.7, 0.25, 0.75];
    shares.sort_by(|one, other| crowding(*one).total_cmp(&crowding(*other)));
    shares[..6]
        .iter()
        .map(|share| frame.spot_at(frame.length * share))
        .collect()
}

/// "θ = 35°".
fn given_text(frame: &Frame, id: GivenId) -> String {
    text(frame.problem, id)
}

/// The given angle of the body.
pub(super) fn tilt(frame: &mut Frame) {
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

/// An angle from a dashed reference line; nothing for one that is printed nowhere.
pub(super) fn measured(frame: &mut Frame, centre: Spot, reference: f64, to: f64, text: &str) {
    if text.is_empty() {
        return;
    }
    let line = Vector::at_angle(reference);
    // Where the body itself lies on the reference line, it needs no dashes.
    if line.cross(frame.along).abs() > 0.03 {
        // It runs on past the arc, which would hide it on a small grid.
        let radius = arc_radius(wrapped(to - reference));
        let end = centre
            .moved(line * (radius + 0.3))
            .moved_rows(line * BEYOND);
        frame.line(Ink::Faint, centre, end, Line::Dashed);
    }
    frame.arc(Ink::Angle, centre, reference, to, text);
}

/// The given distances along the body: below a level one, past so many steps and rows, or above it
/// past arrows of so many steps; on the upper side of a tilted one.
pub(super) fn lengths(frame: &mut Frame, (steps, rows): (f64, f64), arrows: f64) {
    let body = frame.problem.body();
    let mut wanted: BTreeMap<GivenId, Place> = BTreeMap::new();
    wanted.insert(body.length, Place::Tip);
    let places = (frame.problem.supports().iter().map(|support| support.at))
        .chain(frame.problem.ropes().iter().map(|rope| rope.at))
        .chain(frame.problem.loads().iter().map(|load| load.at))
        .chain(body.mass.map(|_| body.centre))
        .chain(guise::places(frame));
    for place in places {
        if let Place::At(given) = place {
            wanted.entry(given).or_insert(place);
        }
    }
    // A number that is printed nowhere has no line.
    wanted.retain(|given, _| !given_text(frame, *given).is_empty());
    let spans = wanted
        .into_iter()
        .map(|(given, place)| Span {
            from: 0.0,
            to: frame.distance(place),
            text: given_text(frame, given),
        })
        .collect();
    if let Some((steps, rows)) = guise::room_above(frame, arrows) {
        frame.dimensions(spans, frame.upper, steps, rows);
    } else if frame.is_level() {
        let below = frame.upper * -1.0;
        frame.dimensions(spans, below, steps, rows);
    } else {
        // An angle with the vertical is drawn on that side too and needs room.
        let from_vertical = matches!(
            body.tilt,
            Tilt::Rising {
                from: Reference::Vertical,
                ..
            }
        );
        let steps = if from_vertical { 1.2 } else { 0.0 };
        frame.dimensions(spans, frame.upper, steps, 2.2);
    }
}

/// Steps and rows that loads and supports take below a level body.
pub(super) fn room_below(frame: &Frame) -> (f64, f64) {
    let falls = |direction: Direction| libm::sin(frame.angle(direction)) < -0.1;
    let loads = frame.problem.loads();
    let hangs = loads
        .iter()
        .any(|load| matches!(load.kind, LoadKind::Force { direction, .. } if falls(direction)));
    let hung = (loads.iter()).any(|load| matches!(load.kind, LoadKind::Mass(_)) && !load.stands);
    if hangs {
        (PUSH, 2.4)
    } else if hung {
        (STRING, 3.0)
    } else {
        (0.0, 3.6)
    }
}

pub(super) fn support(frame: &mut Frame, index: usize) {
    if guise::support(frame, index) {
        return;
    }
    let support = &frame.problem.supports()[index];
    let spot = frame.spot(support.at);
    let down = Vector::new(0.0, -1.0);
    match support.kind {
        SupportKind::Hinge => {
            frame.draw(Ink::Ground, Shape::Stand(spot.moved_rows(down)));
            let looks = FRAC_PI_2;
            let at = spot.moved_rows(down * 2.0);
            frame.draw(
                Ink::Ground,
                Shape::Face {
                    at,
                    looks,
                    half: 1.3,
                },
            );
            frame.draw(Ink::Ground, Shape::Hinge(spot));
        }
        SupportKind::Roller(normal) => {
            let looks = frame.angle(normal);
            let back = Vector::at_angle(looks) * -1.0;
            frame.draw(Ink::Ground, Shape::Wheel(spot.moved_rows(back)));
            let at = spot.moved_rows(back * 2.0);
            frame.draw(
                Ink::Ground,
                Shape::Face {
                    at,
                    looks,
                    half: 1.3,
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
            let at = spot.moved_rows(behind(looks));
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

pub(super) fn rope(frame: &mut Frame, index: usize, marks: &Marks) {
    let rope = &frame.problem.ropes()[index];
    let spot = frame.spot(rope.at);
    let angle = frame.angle(rope.direction);
    let run = Vector::at_angle(angle);
    if marks.givens || marks.has_site() {
        direction_given(frame, spot, rope.direction, run);
    }
    let told = guise::rope_end(frame, index, spot);
    let (mut end, looks) = told.unwrap_or_else(|| rope_end(frame, spot, run));
    // Arrows need the room below a level body: of a long rope only the beginning is shown.
    let short = marks.has_site() && frame.is_level() && told.is_none();
    if short {
        end = spot.moved(run * SHORT_ROPE);
    }
    frame.line(Ink::Rope, spot, end, Line::Solid);
    let at = end.moved_rows(behind(looks));
    let half = 1.3;
    frame.draw(Ink::Ground, Shape::Face { at, looks, half });
    frame.draw(Ink::Rope, Shape::Knot(spot));
}

/// One cell behind a face that looks this way, in rows of text.
pub(super) fn behind(looks: f64) -> Vector {
    let out = Vector::at_angle(looks);
    Vector::new(out.x * -0.5, -out.y)
}

/// Where a rope ends, and which way the face looks at which it ends.
fn rope_end(frame: &Frame, spot: Spot, run: Vector) -> (Spot, f64) {
    let most = 1.15 * frame.length;
    let least = 0.25 * frame.length;
    let wall = if run.x > 0.0 { PI } else { 0.0 };
    let back = run.x * frame.along.x < 0.0 && run.x.abs() > 0.1;
    let to_wall = spot.at.x.abs() / run.x.abs();
    let to_ground = spot.at.y / -run.y;
    let falls = run.y < -0.1 && to_ground < most;
    if falls && !(back && to_wall < to_ground) {
        // A guy line runs down to the ground on which the foot stands.
        let end = Spot::at(spot.at + run * to_ground.max(least));
        return (end.moved_rows(run * (1.0 / -run.y).min(3.0)), FRAC_PI_2);
    }
    if back && to_wall < most {
        // A wall that holds the foot is the wall of the rope too.
        let built_in = frame.is_level()
            && frame.problem.supports().iter().any(|support| {
                support.kind == SupportKind::BuiltIn && frame.distance(support.at) == 0.0
            });
        let behind = if built_in { 0.0 } else { 2.0 / run.x.abs() };
        let end = Spot::at(spot.at + run * to_wall.max(least));
        return (end.moved(run * behind.min(4.0)), wall);
    }
    if run.y > 0.5 {
        let reach = if back { most * 0.8 } else { 0.0 };
        let steps = if back { 0.0 } else { 5.0 };
        return (
            Spot::at(spot.at + run * reach).moved(run * steps),
            -FRAC_PI_2,
        );
    }
    (spot.moved(run * 5.5), wall)
}

/// True if a rope runs back so close above a place that a box there would hide it.
pub(super) fn under_rope(frame: &Frame, place: Place) -> bool {
    let at = frame.distance(place);
    frame.problem.ropes().iter().any(|rope| {
        let run = Vector::at_angle(frame.angle(rope.direction));
        let (back, up) = (-run.dot(frame.along), run.dot(frame.upper));
        let ahead = frame.distance(rope.at) - at;
        back > 0.0 && ahead >= 0.0 && ahead * up / back < frame.length * 0.22
    })
}

/// The arc that shows a given direction at a spot; the line meant runs out from the spot.
pub(super) fn direction_given(frame: &mut Frame, spot: Spot, direction: Direction, runs: Vector) {
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
            if !text.is_empty() {
                frame.arc(Ink::Angle, spot, back.angle(), runs.angle(), &text);
            }
        }
        Direction::Up | Direction::Down | Direction::Level(_) => {}
    }
}

pub(super) fn load(frame: &mut Frame, index: usize, givens: bool) {
    if guise::load(frame, index, givens) {
        return;
    }
    let load = &frame.problem.loads()[index];
    let spot = frame.spot(load.at);
    match load.kind {
        LoadKind::Mass(mass) if load.stands => {
            let low = under_rope(frame, load.at);
            frame.draw(Ink::Weight, Shape::Standing { at: spot, low });
            frame.draw(Ink::Weight, Shape::Knot(spot));
            if givens {
                let text = given_text(frame, mass);
                let side = frame.along.x.signum();
                let mut spots = if low {
                    vec![(1.0, 1.0), (-1.0, 1.0), (0.0, 2.0)]
                } else {
                    vec![(1.0, 1.5), (-1.0, 1.5), (0.0, 2.5)]
                };
                if frame.is_level() {
                    // Below the body there is room where a rope or an arc takes that above.
                    spots.push((0.0, -1.0));
                }
                let anchors = spots
                    .into_iter()
                    .map(|(aside, up)| spot.moved_rows(Vector::new(0.5 * side * aside, up)));
                let anchors = anchors.collect();
                frame.label(Ink::Weight, &text, anchors, Vector::new(0.0, 1.0));
            }
        }
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
                    top.moved_rows(Vector::new(0.5 * side, -0.5)),
                    top.moved_rows(Vector::new(-0.5 * side, -0.5)),
                    top.moved_rows(Vector::new(0.0, -1.0)),
                ];
                frame.label(Ink::Weight, &text, anchors, Vector::new(side, 0.0));
            }
        }
        LoadKind::Force { size, direction } => {
            let force = ForceId::Load(index);
            let acts = Vector::at_angle(frame.angle(direction));
            let runs = runs(frame, force, acts);
            let (from, to) = if runs.dot(acts) < 0.0 {
                let head = spot.moved_rows(runs * head_off(acts));
                (spot.moved(runs * PUSH), head)
            } else {
                (spot, spot.moved(runs * PUSH))
            };
            let arrow = Shape::Arrow {
                acts: spot,
                from,
                to,
                line: Line::Solid,
            };
            frame.draw(Ink::Load, arrow);
            frame.draw(Ink::Load, Shape::Knot(spot));
            if givens {
                direction_given(frame, spot, direction, runs);
                let text = given_text(frame, size);
                let anchors = vec![spot.moved(runs * PUSH), spot.moved(runs * 3.0)];
                frame.label(Ink::Load, &text, anchors, runs);
            }
        }
    }
}

fn level(side: Side) -> f64 {
    if side == Side::Right { 0.0 } else { PI }
}
