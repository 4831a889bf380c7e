//! The body alone, lying level, with what turns it and how far from the pivot.

use super::acting::{among, force, spans};
use super::frame::Frame;
use super::scene::{Line, Shape, Spot};
use super::{ComponentMark, Ink, Marks};
use crate::problem::ForceId;

/// Steps of an arrow across the body.
const ARROW: f64 = 4.0;

/// Draws the lever.
pub(super) fn draw(frame: &mut Frame, marks: &Marks) {
    frame.body();
    let mut below = false;
    for mark in &marks.components {
        let Some((spot, sense)) = turning(frame, mark, marks) else {
            continue;
        };
        below |= sense < 0.0;
        frame.draw(Ink::Component, Shape::Knot(spot));
        // Components at one place stand side by side.
        let twins: Vec<ForceId> = (marks.components.iter())
            .filter(|other| turning(frame, other, marks) == Some((spot, sense)))
            .map(|other| other.force)
            .collect();
        let spot = spot.moved(frame.along * among(&twins, mark.force));
        let across = frame.upper * (sense * ARROW);
        let end = spot.moved(across);
        frame.draw(
            Ink::Component,
            Shape::Arrow {
                from: spot,
                to: end,
                line: Line::Solid,
            },
        );
        let anchors = vec![end, spot.moved(across * 0.7), spot.moved(across * 0.5)];
        frame.label(Ink::Component, &mark.label, anchors, across * (1.0 / ARROW));
    }
    for mark in &marks.forces {
        // A force whose component is found is drawn by it.
        if !marks.is_replaced(mark.force) {
            force(frame, mark, &marks.forces, false);
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

/// Where a component turns the lever, and to which side it acts: +1 for the upper side, also
/// where the direction of its force is still to be found.
fn turning(frame: &Frame, mark: &ComponentMark, marks: &Marks) -> Option<(Spot, f64)> {
    let (spot, direction) = frame.marked(mark.force, &marks.forces)?;
    let sense = direction.map_or(1.0, |direction| direction.dot(frame.upper).signum());
    Some((spot, sense))
}
