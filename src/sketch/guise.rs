//! What looks unlike anything in a lesson: spread loads, couples, walls that a body leans on, pegs,
//! struts, and what is told by lengths off the body.

use super::frame::{Frame, wrapped};
use super::scene::{Label, Line, Shape, Spot};
use super::sheet::{Guise, Spread, text};
use super::site::{self, behind};
use super::{ForceMark, Ink};
use crate::plane::Vector;
use crate::problem::{Acting, ForceId, LoadKind, Place};
use std::f64::consts::{FRAC_PI_2, PI};

/// Steps and rows from the body to the top of a spread load where it is largest: on a small grid too
/// its arrows are seen.
const HIGH: (f64, f64) = (1.4, 1.5);
/// Steps of a strut of which only the direction is told, to each side.
const STRUT: f64 = 3.4;
/// Steps of the radius of the bent arrow of a couple.
pub(super) const TURN: f64 = 1.9;
/// How far it goes to each side of its middle, in radians.
pub(super) const TURNED: f64 = 1.25;
/// Steps by which a length off the body stands aside of what it measures.
const ASIDE: f64 = 1.6;

impl Frame<'_> {
    /// How something looks that no lesson has.
    pub(super) fn guise(&self, force: ForceId) -> Option<&Guise> {
        self.sheet?.guises.get(&force)
    }

    /// True for a couple, which has no arrow.
    pub(super) fn is_couple(&self, force: ForceId) -> bool {
        matches!(self.guise(force), Some(Guise::Couple(_)))
    }
}

/// Draws a support that no lesson has; false for all others.
pub(super) fn support(frame: &mut Frame, index: usize) -> bool {
    let Some(guise) = frame.guise(ForceId::Support(index)).cloned() else {
        return false;
    };
    let support = &frame.problem.supports()[index];
    let spot = frame.spot(support.at);
    let acting = frame.problem.force(ForceId::Support(index));
    let looks = match acting.map(|force| force.acting) {
        Some(Acting::Along(normal)) => frame.angle(normal),
        _ => FRAC_PI_2,
    };
    match guise {
        Guise::Contact => {
            let at = spot.moved_rows(behind(looks));
            let half = 1.6;
            frame.draw(Ink::Ground, Shape::Face { at, looks, half });
            frame.draw(Ink::Ground, Shape::Knot(spot));
        }
        Guise::Peg => {
            let back = Vector::at_angle(looks) * -1.0;
            frame.draw(Ink::Ground, Shape::Wheel(spot.moved_rows(back)));
        }
        Guise::Strut(runs, end) => {
            strut(frame, spot, runs, end);
            frame.draw(Ink::Ground, Shape::Hinge(spot));
        }
        _ => {}
    }
    true
}

/// A strut: to its other end, or where that is not told a piece of its line to both sides.
fn strut(frame: &mut Frame, spot: Spot, runs: Vector, end: Option<Vector>) {
    match end {
        Some(end) => {
            frame.line(Ink::Ground, spot, Spot::at(end), Line::Solid);
            frame.draw(Ink::Ground, Shape::Hinge(Spot::at(end)));
        }
        None => {
            let (one, other) = (spot.moved(runs * STRUT), spot.moved(runs * -STRUT));
            frame.line(Ink::Ground, one, other, Line::Dashed);
        }
    }
}

/// Where a rope ends whose other end is told, and which way the face looks there.
pub(super) fn rope_end(frame: &Frame, index: usize, spot: Spot) -> Option<(Spot, f64)> {
    let Some(Guise::Tied(end)) = frame.guise(ForceId::Rope(index)) else {
        return None;
    };
    let runs = *end - spot.at;
    let looks = match () {
        () if runs.y > runs.x.abs() => -FRAC_PI_2,
        () if runs.y < -runs.x.abs() => FRAC_PI_2,
        () if runs.x > 0.0 => PI,
        () => 0.0,
    };
    Some((Spot::at(*end), looks))
}

/// Draws a load that no lesson has; false for all others.
pub(super) fn load(frame: &mut Frame, index: usize, givens: bool) -> bool {
    let Some(guise) = frame.guise(ForceId::Load(index)).cloned() else {
        return false;
    };
    let load = &frame.problem.loads()[index];
    let spot = frame.spot(load.at);
    let named = |frame: &Frame| match load.kind {
        LoadKind::Mass(id) | LoadKind::Force { size: id, .. } if givens => text(frame.problem, id),
        _ => String::new(),
    };
    match guise {
        Guise::Spread(spread) => self::spread(frame, &spread, givens),
        Guise::Couple(turns) => {
            let label = named(frame);
            turn(frame, Ink::Load, spot, turns, &label);
        }
        Guise::Mass => {
            frame.draw(Ink::Weight, Shape::Knot(spot));
            let label = named(frame);
            let up = Vector::new(0.0, 1.0);
            let side = frame.along.x.signum();
            let anchors = [(0.0, 0.0), (0.5 * side, -0.5), (-0.5 * side, 0.5)]
                .map(|(aside, up)| spot.moved_rows(Vector::new(aside, up)));
            frame.label(Ink::Weight, &label, anchors.to_vec(), up);
        }
        _ => {}
    }
    true
}

/// The top of a spread load above a spot of the body; `high` is 1 where it is largest.
pub(super) fn top_of(spot: Spot, high: Vector) -> Spot {
    spot.moved(high * HIGH.0).moved_rows(high * HIGH.1)
}

/// A comb of arrows along the body.
fn spread(frame: &mut Frame, spread: &Spread, givens: bool) {
    let [from, to] = spread.ends.map(|place| frame.spot(place));
    let [first, last] = spread.shares.map(|share| spread.acts * -share);
    let shape = Shape::Spread {
        from,
        to,
        first,
        last,
    };
    frame.draw(Ink::Load, shape);
    if !givens {
        return;
    }
    let on = |share: f64| {
        let top = first * (1.0 - share) + last * share;
        let at = from.at * (1.0 - share) + to.at * share;
        top_of(Spot::at(at), top)
    };
    let shares = match spread.texts[1].is_empty() {
        true => [[0.5, 0.35, 0.65], [0.5, 0.5, 0.5]],
        false => [[0.05, 0.2, 0.0], [0.95, 0.8, 1.0]],
    };
    for (label, shares) in spread.texts.iter().zip(shares) {
        frame.label(
            Ink::Load,
            label,
            shares.map(on).to_vec(),
            spread.acts * -1.0,
        );
    }
}

/// The bent arrow of a couple; where its sense is still to be found the name alone.
fn turn(frame: &mut Frame, ink: Ink, spot: Spot, turns: Option<f64>, label: &str) {
    let up = frame.upper;
    // Its head must not lie in the row of a level body.
    let spot = spot.moved_rows(up * 0.7);
    let anchors = |far: f64| vec![spot.moved(up * far), spot.moved(up * -far)];
    let Some(turns) = turns else {
        let label = format!("{label} ?");
        return frame.label(ink, &label, anchors(TURN * 0.5), up);
    };
    let shape = Shape::Turn {
        centre: spot,
        middle: up.angle(),
        anticlockwise: turns > 0.0,
    };
    frame.draw(ink, shape);
    frame.label(ink, label, anchors(TURN + 0.2), up);
}

/// Draws a couple by its mark; false for what is none.
pub(super) fn couple(frame: &mut Frame, mark: &ForceMark) -> bool {
    let Some(Guise::Couple(given)) = frame.guise(mark.force).cloned() else {
        return false;
    };
    let found = mark.direction.filter(|angle| angle.is_finite());
    let turns = found.map(libm::sin).or(given);
    let ink = super::frame::force_ink(frame.problem, mark.force);
    if let Some(place) = frame.place_of(mark.force) {
        let spot = frame.spot(place);
        turn(frame, ink, spot, turns, &mark.label);
    }
    true
}

/// Steps and rows that loads and arrows take above a level body from which something runs down to
/// a point below, so that distances stand above it; none where they stand below.
pub(super) fn room_above(frame: &Frame, arrows: f64) -> Option<(f64, f64)> {
    let sheet = frame.sheet.filter(|_| frame.is_level())?;
    let ends = sheet.guises.values().filter_map(|guise| match guise {
        Guise::Strut(_, Some(end)) | Guise::Tied(end) => Some(end.dot(frame.upper)),
        _ => None,
    });
    let mut sides: Vec<f64> = ends.collect();
    sides.retain(|off| off.abs() > 1e-6 * frame.length);
    if sides.is_empty() || sides.iter().any(|off| *off > 0.0) {
        return None;
    }
    let pulled = frame.problem.loads().iter().any(|load| {
        matches!(load.kind, LoadKind::Force { direction, .. } if libm::sin(frame.angle(direction)) > 0.1)
    });
    let steps = if pulled { site::PUSH } else { 0.0 };
    Some((steps.max(arrows), 2.6))
}

/// Given angles and lengths that no lesson has.
pub(super) fn given(frame: &mut Frame) {
    let Some(sheet) = frame.sheet else {
        return;
    };
    angles(frame);
    for span in &sheet.spans {
        let run = span.to - span.from;
        if run.size() < 1e-9 * frame.length {
            continue;
        }
        // Away from the body's middle.
        let off = span.to - frame.along * (frame.length / 2.0);
        let side = run.quarter_turn() * (1.0 / run.size());
        let side = if side.dot(off) < 0.0 {
            side * -1.0
        } else {
            side
        };
        let shift = |at: Vector| Spot::at(at).moved(side * ASIDE);
        let (from, to) = (shift(span.from), shift(span.to));
        frame.draw(Ink::Distance, Shape::Dimension { from, to });
        let at = |share: f64| shift(span.from + run * share);
        frame.scene.labels.push(Label {
            ink: Ink::Distance,
            text: crate::text::printable(&span.text),
            anchors: [0.5, 0.35, 0.65].map(at).to_vec(),
            lean: side,
            on: Some((from, to)),
            angle: None,
        });
    }
}

/// Given angles that no lesson has.
pub(super) fn angles(frame: &mut Frame) {
    let Some(sheet) = frame.sheet else {
        return;
    };
    for arc in &sheet.arcs {
        let spot = frame.spot(arc.at);
        // An angle of more than half a turn would be drawn the other way round.
        if wrapped(arc.to - arc.from).abs() < 1e-6 || arc.text.is_empty() {
            continue;
        }
        site::measured(frame, spot, arc.from, arc.to, &arc.text);
    }
}

/// Where spread loads begin and end, as dimension lines.
pub(super) fn places(frame: &Frame) -> Vec<Place> {
    frame
        .sheet
        .map_or_else(Vec::new, |sheet| sheet.places().collect())
}
