//! The body alone, lying level, with what turns it and how far from the pivot.

use super::abreast::tail_of;
use super::acting::{Drawn, Look, force, spans, standing, turning};
use super::frame::Frame;
use super::scene::{Line, Shape};
use super::{Ink, Marks};

/// Steps of an arrow across the body.
const ARROW: f64 = 4.0;

/// Draws the lever.
pub(super) fn draw(frame: &mut Frame, marks: &Marks) {
    frame.body();
    let tails = standing(frame, marks);
    let mut below = false;
    for mark in &marks.components {
        let Some((spot, sense)) = turning(frame, mark, marks) else {
            continue;
        };
        below |= sense < 0.0;
        let acts = spot;
        frame.draw(Ink::Component, Shape::Knot(spot));
        let tail = tail_of(&tails, &Drawn::Part(mark.force));
        let up = frame.upper * sense;
        let from = spot.moved_rows(tail);
        let across = up * ARROW;
        let spot = spot.moved_rows(tail - up * tail.dot(up));
        let end = spot.moved(across);
        frame.draw(
            Ink::Component,
            Shape::Arrow {
                acts,
                from,
                to: end,
                line: Line::Solid,
            },
        );
        let anchors = vec![end, spot.moved(across * 0.7), spot.moved(across * 0.5)];
        frame.label(Ink::Component, &mark.label, anchors, up);
    }
    for mark in &marks.forces {
        // A force whose component is found is drawn by it.
        if !marks.is_replaced(mark.force) {
            let tail = tail_of(&tails, &Drawn::Whole(mark.force));
            force(frame, mark, tail, Look::long(ARROW));
            let runs = frame.marked(mark.force, &marks.forces);
            below |= matches!(runs, Some((_, Some(runs))) if runs.dot(frame.upper) < 0.0);
        }
    }
    let wanted = spans(frame, &marks.distances, marks.pivot);
    let side = frame.upper * -1.0;
    let arrows = if below { ARROW } else { 0.0 };
    frame.dimensions(wanted, side, arrows, if below { 2.4 } else { 2.0 });
    if let Some(pivot) = marks.pivot {
        let spot = frame.spot(pivot);
        frame.draw(Ink::Pivot, Shape::Ring(spot));
    }
}
