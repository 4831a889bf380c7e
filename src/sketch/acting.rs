//! The forces on the freed body, their angles with it, and their components across it.

use super::abreast::{Out, tail_of, tails};
use super::angle;
use super::behind;
use super::frame::{Frame, Span, force_ink};
use super::scene::{Line, Shape, Spot};
use super::{ComponentMark, DistanceMark, ForceMark, Ink, Marks, Stage, guise};
use crate::plane::Vector;
use crate::problem::{ForceId, Place};
use std::f64::consts::PI;

/// Steps of an arrow.
pub(super) const ARROW: f64 = 5.0;
/// Steps of an arrow whose parts are shown: longer, so that the parts can be seen.
const PARTED: f64 = 6.5;
/// Steps of the radius of the ring that stands for a direction still to be found.
const OPEN: f64 = 1.25;

/// Draws the freed body with the forces that are marked.
pub(super) fn draw(frame: &mut Frame, marks: &Marks) {
    if marks.has_site() {
        behind::draw(frame, marks);
    }
    distances(frame, marks);
    frame.body();
    let tails = standing(frame, marks);
    let parts: &[_] = if marks.stage == Stage::Components {
        &marks.components
    } else {
        &[]
    };
    if matches!(marks.stage, Stage::Forces | Stage::Angles) && marks.given_angles {
        given_angles(frame, &marks.forces);
    }
    if marks.stage != Stage::Forces {
        let given = frame.scene.labels.len();
        for mark in &marks.angles {
            angle::draw(frame, mark, marks, (&tails, given));
        }
    }
    for mark in &marks.forces {
        if guise::couple(frame, mark) {
            continue;
        }
        if marks.is_replaced(mark.force) {
            if let Some(spot) = frame.place_of(mark.force).map(|at| frame.spot(at)) {
                frame.draw(force_ink(frame.problem, mark.force), Shape::Knot(spot));
            }
            continue;
        }
        let look = Look {
            parted: parts.iter().any(|part| part.force == mark.force),
            site: marks.has_site(),
            ..Look::PLAIN
        };
        let tail = tail_of(&tails, &Drawn::Whole(mark.force));
        force(frame, mark, tail, look);
    }
    for part in parts {
        // Help lines at each would hide each other.
        let helped = !marks.is_replaced(part.force);
        let whole = helped && tails.iter().any(|tail| tail.0 == Drawn::Whole(part.force));
        let drawn = if whole {
            Drawn::Whole(part.force)
        } else {
            Drawn::Part(part.force)
        };
        component(
            frame,
            part,
            &marks.forces,
            (tail_of(&tails, &drawn), helped),
        );
    }
    if let Some(pivot) = marks.pivot {
        let spot = frame.spot(pivot);
        frame.draw(Ink::Pivot, Shape::Ring(spot));
    }
}

/// An arrow of a drawing: a whole force, or its component across the body.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Drawn {
    /// The force.
    Whole(ForceId),
    /// Its component.
    Part(ForceId),
}

/// Where each arrow stands that runs out from its place.
pub(super) fn standing(frame: &Frame, marks: &Marks) -> Vec<(Drawn, Vector)> {
    let parts: &[_] = match marks.stage {
        Stage::Components | Stage::Turning => &marks.components,
        Stage::Scene | Stage::Forces | Stage::Angles => &[],
    };
    let out = |key, spot: Spot, runs, stays| Out {
        key,
        at: spot.at,
        runs,
        stays,
        body: frame.along,
    };
    let mut arrows = Vec::new();
    for mark in marks
        .forces
        .iter()
        .filter(|mark| !marks.is_replaced(mark.force))
    {
        let Some((spot, Some(runs))) = frame.force(mark.force, mark.direction) else {
            continue;
        };
        let parted = parts.iter().any(|part| part.force == mark.force);
        let own_part = parted && is_across(frame, runs);
        if !(own_part || is_pushed(frame, mark.force, runs)) {
            arrows.push(out(Drawn::Whole(mark.force), spot, runs, false));
        }
    }
    for part in parts {
        let Some((spot, sense)) = turning(frame, part, marks) else {
            continue;
        };
        // Only the lever shows a component whose direction is still to be found.
        let known = matches!(frame.marked(part.force, &marks.forces), Some((_, Some(_))));
        if !known && marks.stage != Stage::Turning {
            continue;
        }
        let stays = !marks.is_replaced(part.force);
        arrows.push(out(
            Drawn::Part(part.force),
            spot,
            frame.upper * sense,
            stays,
        ));
    }
    tails(&arrows, frame.usual_scale())
}

/// Where a component turns the lever, and to which side it acts: +1 for the upper side, also
/// where the direction of its force is still to be found.
pub(super) fn turning(frame: &Frame, mark: &ComponentMark, marks: &Marks) -> Option<(Spot, f64)> {
    let (spot, direction) = frame.marked(mark.force, &marks.forces)?;
    let sense = direction.map_or(1.0, |direction| direction.dot(frame.upper).signum());
    Some((spot, sense))
}

/// True for a force that is its own component across the body.
fn is_across(frame: &Frame, runs: Vector) -> bool {
    runs.dot(frame.along).abs() < 0.02
}

/// The angles that the statement gives.
fn given_angles(frame: &mut Frame, forces: &[ForceMark]) {
    super::site::tilt(frame);
    guise::angles(frame);
    for (index, rope) in frame.problem.ropes().iter().enumerate() {
        if forces.iter().any(|mark| mark.force == ForceId::Rope(index)) {
            let runs = Vector::at_angle(frame.angle(rope.direction));
            let spot = frame.spot(rope.at);
            super::site::direction_given(frame, spot, rope.direction, runs);
        }
    }
}

/// Rows between a place and the head of an arrow that pushes on it this way: a steep one keeps
/// clear of the row of its place.
pub(super) fn head_off(direction: Vector) -> f64 {
    let rises = direction.y.abs();
    if rises > 0.7 { 1.0 / rises } else { 0.8 }
}

/// How the arrow of a whole force looks.
#[derive(Clone, Copy, Debug)]
pub(super) struct Look {
    /// Its length in steps, unless its component is shown too.
    pub(super) steps: f64,
    /// True where its component is shown too.
    pub(super) parted: bool,
    /// True where the scene stands behind it.
    pub(super) site: bool,
}

impl Look {
    const PLAIN: Look = Look::long(ARROW);

    /// An arrow of so many steps.
    pub(super) const fn long(steps: f64) -> Look {
        Look {
            steps,
            parted: false,
            site: false,
        }
    }
}

/// A force's arrow with its tail so many rows from its place, or the ring of one whose direction
/// is to be found.
pub(super) fn force(frame: &mut Frame, mark: &ForceMark, tail: Vector, look: Look) {
    let Some((spot, direction)) = frame.force(mark.force, mark.direction) else {
        return;
    };
    let ink = force_ink(frame.problem, mark.force);
    frame.draw(ink, Shape::Knot(spot));
    let Some(direction) = direction else {
        return open(frame, ink, spot, &mark.label, look.site);
    };
    let acts = spot;
    let from = spot.moved_rows(tail);
    let pushed = is_pushed(frame, mark.force, direction) && !look.parted;
    let (from, to) = if look.parted {
        (from, from.moved(direction * PARTED))
    } else if pushed {
        let off = spot.moved_rows(direction * -head_off(direction));
        (off.moved(direction * -look.steps), off)
    } else {
        // Heads keep in line, wherever the tails stand.
        let aside = tail - direction * tail.dot(direction);
        let head = spot.moved_rows(aside).moved(direction * look.steps);
        // A hung box stands on the way.
        let past = behind::past_box(frame, mark.force, look.site);
        match past {
            Some((steps, rows)) => {
                let head = spot.moved_rows(aside).moved(direction * steps);
                (from, head.moved_rows(direction * rows))
            }
            None => (from, head),
        }
    };
    // A force that stands across the body is its own component: one arrow for both.
    let own_part = look.parted && is_across(frame, direction);
    if !own_part {
        let line = if look.parted {
            Line::Dashed
        } else {
            Line::Solid
        };
        let arrow = Shape::Arrow {
            acts,
            from,
            to,
            line,
        };
        frame.draw(ink, arrow);
    }
    let (end, lean) = if pushed {
        (from, direction * -1.0)
    } else if look.site && ink == Ink::Rope {
        // The rope goes on ahead of the arrow.
        (to, behind::off_rope(frame, direction))
    } else {
        (to, direction)
    };
    let back = |share: f64| Spot {
        at: end.at,
        shift: from.shift * (1.0 - share) + to.shift * share,
        rows: end.rows,
    };
    frame.label(ink, &mark.label, vec![end, back(0.7), back(0.5)], lean);
}

/// Which way the arrow of a force is drawn from its place: the way it acts, or where that lies on
/// the body the way it comes from.
pub(super) fn runs(frame: &Frame, force: ForceId, direction: Vector) -> Vector {
    direction
        * if is_pushed(frame, force, direction) {
            -1.0
        } else {
            1.0
        }
}

/// True for an arrow that pushes from outside, since it would otherwise lie on the body.
fn is_pushed(frame: &Frame, force: ForceId, direction: Vector) -> bool {
    let place = frame.place_of(force).map_or(0.0, |at| frame.distance(at));
    let lies = direction.dot(frame.along);
    let on_body =
        (lies > 0.75 && place < frame.length * 0.3) || (lies < -0.75 && place > frame.length * 0.7);
    on_body && matches!(force_ink(frame.problem, force), Ink::Support | Ink::Load)
}

/// A ring around the place of a force that may yet point anywhere. Its label stands off the
/// body, so that nothing looks like an arrow along it.
fn open(frame: &mut Frame, ink: Ink, spot: Spot, label: &str, site: bool) {
    let ring = Shape::Arc {
        centre: spot,
        radius: OPEN,
        from: 0.0,
        sweep: 2.0 * PI,
    };
    // In the scene the support itself shows the place.
    frame.draw(ink, if site { Shape::Hinge(spot) } else { ring });
    let at_tip = spot.at.size() > frame.length * 0.7;
    let out = if at_tip {
        frame.along
    } else {
        frame.along * -1.0
    };
    // Beside a level body the arrows of weights hang below, so the label stands above.
    let lean = if frame.is_level() {
        Vector::new(out.x * 0.8, 0.6)
    } else {
        Vector::new(out.x.signum() * 0.94, -0.34)
    };
    let text = format!("{label} ?");
    let edge = |lean: Vector| spot.moved(lean * OPEN);
    let below = Vector::new(lean.x, -lean.y);
    frame.label(ink, &text, vec![edge(lean), edge(below)], lean);
}

fn component(
    frame: &mut Frame,
    mark: &ComponentMark,
    forces: &[ForceMark],
    (tail, helped): (Vector, bool),
) {
    let Some((spot, direction)) = frame.marked(mark.force, forces) else {
        return;
    };
    let label = &mark.label;
    let acts = spot;
    let spot = spot.moved_rows(tail);
    let Some(direction) = direction else {
        let lean = frame.upper;
        return frame.label(Ink::Component, label, vec![spot.moved(lean)], lean);
    };
    let across = frame.upper * (direction.dot(frame.upper) * PARTED);
    let end = spot.moved(across);
    let tip = spot.moved(direction * PARTED);
    let along = direction.dot(frame.along) * PARTED;
    if helped && along.abs() > 0.6 && across.size() > 0.6 {
        frame.line(Ink::Faint, end, tip, Line::Dashed);
        let corner = Shape::RightAngle {
            corner: end,
            along: frame.along * along.signum(),
            across: across * (-1.0 / across.size()),
        };
        frame.draw(Ink::Faint, corner);
    }
    frame.draw(
        Ink::Component,
        Shape::Arrow {
            acts,
            from: spot,
            to: end,
            line: Line::Solid,
        },
    );
    let lean = across * (1.0 / across.size().max(1e-9));
    // The force that is its own component has its label at the head already.
    let whole = helped && is_across(frame, direction);
    let head = if whole { end.moved_rows(lean) } else { end };
    let anchors = vec![head, spot.moved(across * 0.7), spot.moved(across * 0.5)];
    frame.label(Ink::Component, label, anchors, lean);
}

/// Distances from the pivot: on the upper side of a tilted body, below the arrows of a level one.
fn distances(frame: &mut Frame, marks: &Marks) {
    let spans = spans(frame, &marks.distances, marks.pivot);
    if frame.is_level() {
        let parted = marks.stage == Stage::Components;
        let steps = if parted { PARTED } else { ARROW };
        let rows = if parted { 3.4 } else { 2.4 };
        frame.dimensions(spans, frame.upper * -1.0, steps, rows);
    } else {
        frame.dimensions(spans, frame.upper, 0.0, 2.4);
    }
}

/// The dimension lines that distance marks ask for, each only once.
pub(super) fn spans(frame: &Frame, marks: &[DistanceMark], pivot: Option<Place>) -> Vec<Span> {
    let from = pivot.map_or(0.0, |pivot| frame.distance(pivot));
    let mut spans: Vec<Span> = Vec::new();
    for mark in marks {
        let Some(place) = frame.place_of(mark.force) else {
            continue;
        };
        let to = frame.distance(place);
        let known = |span: &Span| span.text == mark.label && (span.to - to).abs() < 1e-9;
        if !spans.iter().any(known) {
            spans.push(Span {
                from,
                to,
                text: mark.label.clone(),
            });
        }
    }
    spans
}
