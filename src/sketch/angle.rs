//! The arcs between a force's line and the body.

use super::abreast::tail_of;
use super::acting::{ARROW, Drawn};
use super::frame::{Frame, arc_radius, wrapped};
use super::scene::{Label, Line, Sector, Spot};
use super::{AngleMark, Ink, Marks, Stage};
use crate::plane::Vector;
use crate::problem::{Acting, Direction, ForceId, LoadKind, Problem};

/// Rows of clear room around an arc beyond which more is no gain.
const CLEAR: f64 = 2.2;
/// Radians within which an angle is of the size that is said of it.
const AGREES: f64 = 0.01;
/// Rows around the foot that the ring of an open force and the body's own angle take.
const FOOT: f64 = 4.0;

/// Draws the arc of an angle with its label; the first so many labels are those of what is given.
pub(super) fn draw(
    frame: &mut Frame,
    mark: &AngleMark,
    marks: &Marks,
    (tails, given): (&[(Drawn, Vector)], usize),
) {
    let Some((spot, direction)) = frame.marked(mark.force, &marks.forces) else {
        return;
    };
    let Some(direction) = direction else {
        return frame.label(Ink::Angle, &mark.label, vec![spot], frame.upper);
    };
    let leg = meant(leg(frame, mark.force, direction), direction, mark.size);
    let force = roomiest(frame, mark, marks, (direction, leg), tails);
    let Some((spot, _)) = frame.marked(force, &marks.forces) else {
        return;
    };
    let tail = tail_of(tails, &Drawn::Whole(force));
    let spot = spot.moved_rows(back_on_body(frame, tail, direction));
    // The body may end at this place: then the leg is shown dashed.
    let place = spot.at.dot(frame.along);
    let ends = (leg.dot(frame.along) > 0.0 && place > frame.length * 0.98)
        || (leg.dot(frame.along) < 0.0 && place < frame.length * 0.02);
    if ends {
        let end = spot.moved(leg * 4.5);
        frame.line(Ink::Faint, spot, end, Line::Dashed);
    }
    let (from, to) = (leg.angle(), direction.angle());
    match given_there(&mut frame.scene.labels[..given], mark, spot, (from, to)) {
        Some(given) => given.text = format!("{} = {}", name(&mark.label), given.text),
        None => frame.arc(Ink::Angle, spot, from, to, &mark.label),
    }
}

/// The name in a label: "γ" of "γ = 55.0°".
fn name(label: &str) -> &str {
    label.split(' ').next().unwrap_or_default()
}

/// The label of a given angle that is this very one; `None` where the mark says another size.
fn given_there<'l>(
    given: &'l mut [Label],
    mark: &AngleMark,
    spot: Spot,
    (from, to): (f64, f64),
) -> Option<&'l mut Label> {
    let sweep = wrapped(to - from);
    let agrees = |size: f64| (size.abs() - sweep.abs()).abs() < AGREES;
    if mark.label.is_empty() || !mark.size.is_none_or(agrees) {
        return None;
    }
    let near = |one: f64, other: f64| wrapped(one - other).abs() < 1e-6;
    let same = |sector: &Sector| {
        let ends = (sector.from, sector.from + sector.sweep);
        sector.centre == spot
            && (near(ends.0, from) && near(ends.1, to) || near(ends.0, to) && near(ends.1, from))
    };
    (given.iter_mut()).find(|label| label.angle.as_ref().is_some_and(same))
}

/// The direction along the body from which a force's angle is measured.
pub(super) fn leg(frame: &Frame, force: ForceId, direction: Vector) -> Vector {
    let acting = frame.problem.force(force).map(|force| force.acting);
    let back = frame.along * -1.0;
    let given = matches!(acting, Some(Acting::Along(Direction::FromBody { .. })));
    if given || direction.dot(back) >= -1e-9 {
        back
    } else {
        frame.along
    }
}

/// Of the two legs, the one whose angle with the force comes nearer to what the label says.
pub(super) fn meant(usual: Vector, direction: Vector, size: Option<f64>) -> Vector {
    let off = |leg: Vector, size: f64| (between(leg, direction) - size.abs()).abs();
    match size.filter(|size| size.is_finite()) {
        Some(size) if off(usual * -1.0, size) < off(usual, size) - 1e-6 => usual * -1.0,
        _ => usual,
    }
}

fn between(leg: Vector, direction: Vector) -> f64 {
    wrapped(direction.angle() - leg.angle()).abs()
}

/// From a place to where the line of an arrow whose tail stands aside of it meets the body.
fn back_on_body(frame: &Frame, tail: Vector, direction: Vector) -> Vector {
    let across = direction.quarter_turn();
    let lies = frame.along.dot(across);
    if lies.abs() < 0.2 {
        return Vector::default();
    }
    frame.along * (tail.dot(across) / lies)
}

fn is_weight(problem: &Problem, force: ForceId) -> bool {
    match force {
        ForceId::OwnWeight => true,
        ForceId::Load(index) => {
            (problem.loads().get(index)).is_some_and(|load| matches!(load.kind, LoadKind::Mass(_)))
        }
        ForceId::Rope(_) | ForceId::Support(_) => false,
    }
}

/// Where an angle is drawn: all weights make the same angle with the body, and at one of them an
/// arc may have more room than at another.
fn roomiest(
    frame: &Frame,
    mark: &AngleMark,
    marks: &Marks,
    (direction, leg): (Vector, Vector),
    tails: &[(Drawn, Vector)],
) -> ForceId {
    if !is_weight(frame.problem, mark.force) {
        return mark.force;
    }
    let own = |force: ForceId| marks.angles.iter().any(|other| other.force == force);
    let others = (marks.forces.iter().map(|other| other.force))
        .filter(|force| is_weight(frame.problem, *force) && !own(*force));
    let mut best = (mark.force, 0.0);
    for force in std::iter::once(mark.force).chain(others) {
        let room = room(frame, force, marks, (direction, leg), tails);
        if force == mark.force || room > best.1 + 0.3 {
            best = (force, room);
        }
    }
    best.0
}

/// Rows between an arc with its label at a force and the nearest other thing, about.
fn room(
    frame: &Frame,
    force: ForceId,
    marks: &Marks,
    (direction, leg): (Vector, Vector),
    tails: &[(Drawn, Vector)],
) -> f64 {
    let scale = frame.usual_scale();
    let rows = |spot: Spot| spot.at * scale + spot.shift + spot.rows;
    let tail_of = |force| tail_of(tails, &Drawn::Whole(force));
    let Some((spot, _)) = frame.marked(force, &marks.forces) else {
        return 0.0;
    };
    let spot = spot.moved_rows(back_on_body(frame, tail_of(force), direction));
    let sweep = wrapped(direction.angle() - leg.angle());
    let radius = arc_radius(sweep);
    let on_arc = |share: f64| {
        let out = Vector::at_angle(leg.angle() + sweep * share);
        (rows(spot.moved(out * radius)), out)
    };
    let mut taken: Vec<(Vector, Vector)> = Vec::new();
    for other in marks.forces.iter().filter(|other| other.force != force) {
        if let Some((spot, Some(runs))) = frame.marked(other.force, &marks.forces) {
            let from = rows(spot.moved_rows(tail_of(other.force)));
            taken.push((from, from + runs * ARROW));
        }
    }
    let mut nearest = CLEAR;
    for share in [0.2, 0.5, 0.8] {
        let (point, out) = on_arc(share);
        for point in [point, point + out * 1.2] {
            let off = taken.iter().map(|line| off_segment(point, *line));
            nearest = off.fold(nearest, f64::min);
            // The ring of an open force and the body's own angle stand around the foot.
            if marks.stage == Stage::Angles {
                nearest = nearest.min((point.size() - FOOT).max(0.0));
            }
        }
    }
    nearest
}

/// How far a point is from a straight line between two others.
pub(super) fn off_segment(point: Vector, (from, to): (Vector, Vector)) -> f64 {
    let run = to - from;
    let length = run.dot(run);
    let share = if length > 0.0 {
        ((point - from).dot(run) / length).clamp(0.0, 1.0)
    } else {
        0.0
    };
    (point - from - run * share).size()
}
