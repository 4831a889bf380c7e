//! The scene behind the forces while they are being named: supports, ropes, loads, distances and
//! given angles stay in sight, and each named force stands at what it comes from.

use super::acting::{ARROW, runs};
use super::frame::Frame;
use super::scene::Shape;
use super::sheet::{Guise, faint};
use super::site::{self, STRING};
use super::{Ink, Marks, guise};
use crate::plane::Vector;
use crate::problem::{ForceId, LoadKind};

/// Steps and rows from the place of a hung load to the head of its weight, past its box.
const PAST_BOX: (f64, f64) = (STRING + 1.4, 2.2);
/// Rows from the last arrow to the first dimension line: a label stands between.
const CLEAR: f64 = 2.4;

/// Draws the scene, faint, without the masses: they name no force.
pub(super) fn draw(frame: &mut Frame, marks: &Marks) {
    site::tilt(frame);
    let room = room_below(frame, marks);
    site::lengths(frame, room, ARROW);
    guise::given(frame);
    let before = frame.scene.strokes.len();
    for index in 0..frame.problem.supports().len() {
        site::support(frame, index);
    }
    for index in 0..frame.problem.ropes().len() {
        site::rope(frame, index, marks);
    }
    for (index, load) in frame.problem.loads().iter().enumerate() {
        let named = marks
            .forces
            .iter()
            .any(|mark| mark.force == ForceId::Load(index));
        // A given force is its own arrow.
        let is_spread = matches!(frame.guise(ForceId::Load(index)), Some(Guise::Spread(_)));
        match load.kind {
            LoadKind::Force { direction, .. } if named && !is_spread => {
                let acts = Vector::at_angle(frame.angle(direction));
                let runs = runs(frame, ForceId::Load(index), acts);
                let spot = frame.spot(load.at);
                site::direction_given(frame, spot, direction, runs);
            }
            LoadKind::Force { .. } => site::load(frame, index, true),
            // A box just under a rope would hide it, and its arrow stands.
            LoadKind::Mass(_) if named && load.stands && site::under_rope(frame, load.at) => {
                let spot = frame.spot(load.at);
                frame.draw(Ink::Weight, Shape::Knot(spot));
            }
            LoadKind::Mass(_) => site::load(frame, index, false),
        }
    }
    for stroke in &mut frame.scene.strokes[before..] {
        faint(stroke);
    }
}

/// Steps and rows from a hung load's place to the head of its arrow; `None` for all else.
pub(super) fn past_box(frame: &Frame, force: ForceId, site: bool) -> Option<(f64, f64)> {
    let ForceId::Load(index) = force else {
        return None;
    };
    let load = frame.problem.loads().get(index).filter(|_| site)?;
    let hung = matches!(load.kind, LoadKind::Mass(_)) && !load.stands;
    hung.then_some(PAST_BOX)
}

/// The side of a rope on which the name of its pull stands: the upper one, or outwards.
pub(super) fn off_rope(frame: &Frame, runs: Vector) -> Vector {
    let side = runs.quarter_turn();
    let upright = side.y.abs() < 0.1;
    let up = if upright {
        side.x * frame.along.x
    } else {
        side.y
    };
    if up < 0.0 { side * -1.0 } else { side }
}

/// Steps and rows that loads, supports and the named weights take below a level body.
fn room_below(frame: &Frame, marks: &Marks) -> (f64, f64) {
    let (mut steps, mut rows) = site::room_below(frame);
    for mark in &marks.forces {
        let falls = match frame.marked(mark.force, &marks.forces) {
            Some((_, Some(runs))) => runs.y < -0.1,
            _ => false,
        };
        if falls {
            let (far, down) = past_box(frame, mark.force, true).unwrap_or((ARROW, 0.0));
            steps = steps.max(far);
            rows = rows.max(down + CLEAR);
        }
    }
    (steps, rows)
}
