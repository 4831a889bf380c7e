//! Strokes on the grid.

use super::canvas::{Canvas, Held, floor, hold};
use super::fit::{ASPECT, Fit, Point};
use super::guise::{TURN, TURNED, top_of};
use super::lead::lead;
use super::scene::{Line, Scene, Shape, Spot};
use super::{Ink, PointMark, Stroke};
use crate::plane::Vector;
use std::f64::consts::{FRAC_PI_4, TAU};

/// Rows of the radius of a ring at most: a larger one looks like a part of the scene.
pub(super) const WIDEST_RING: f64 = 1.2;

/// Rows of a grid on which a ring of dots has room.
const LEAST_ROWS: i64 = 20;

/// Draws every stroke; arrowheads last and beside the marks of points, so that none is covered.
pub(super) fn draw(canvas: &mut Canvas, scene: &Scene, fit: &Fit) {
    let (lines, points): (Vec<&Stroke>, Vec<&Stroke>) = scene
        .strokes
        .iter()
        .partition(|stroke| is_line(&stroke.shape));
    for stroke in &lines {
        draw_line(canvas, stroke, fit);
    }
    for stroke in &lines {
        if let Shape::Arrow { acts, from, to, .. } = stroke.shape
            && stands_aside(acts, from)
        {
            lead(
                canvas,
                fit.point(acts),
                fit.point(from),
                fit.point(to),
                stroke.ink,
            );
        }
    }
    for stroke in &points {
        draw_point(canvas, stroke, fit);
    }
    for stroke in &lines {
        if let Shape::Arc { centre, sweep, .. } = stroke.shape
            && sweep.abs() > TAU - 1e-6
            && canvas.rows() < LEAST_ROWS
        {
            small_ring(canvas, fit.point(centre), stroke.ink);
        }
    }
    let mut taken: Vec<(i64, i64)> = (points.iter())
        .filter_map(|stroke| mark_cell(&stroke.shape, fit))
        .collect();
    for stroke in &lines {
        if let Shape::Arrow { from, to, .. } = stroke.shape {
            let cell = head(canvas, (fit.point(from), fit.point(to)), stroke.ink, &taken);
            taken.extend(cell);
        }
    }
    for stroke in &lines {
        for ends in comb(&stroke.shape, fit)
            .into_iter()
            .chain(bent(&stroke.shape, fit))
        {
            taken.extend(head(canvas, ends, stroke.ink, &taken));
        }
    }
}

/// Columns between the arrows of a spread load, about.
const TEETH: f64 = 5.0;

/// The arrows of a spread load, each from its tail to just off the body.
fn comb(shape: &Shape, fit: &Fit) -> Vec<(Point, Point)> {
    let Shape::Spread {
        from,
        to,
        first,
        last,
    } = *shape
    else {
        return Vec::new();
    };
    let (one, other) = (fit.point(from), fit.point(to));
    let long = libm::hypot(other.column - one.column, (other.row - one.row) * ASPECT);
    let teeth = floor(long / TEETH).clamp(1, 40);
    let tooth = |tooth: i64| {
        let share = tooth as f64 / teeth as f64;
        let high = first * (1.0 - share) + last * share;
        let at = Spot::at(from.at * (1.0 - share) + to.at * share);
        let size = high.size();
        let off = at.moved_rows(high * (1.0 / size.max(1e-9)));
        let (tail, head) = (fit.point(top_of(at, high)), fit.point(off));
        let long = libm::hypot((tail.column - head.column) / ASPECT, tail.row - head.row);
        // What would lie within a row is no arrow.
        (long > 0.7).then_some((tail, head))
    };
    (0..=teeth).filter_map(tooth).collect()
}

/// The last piece of the bent arrow of a couple.
fn bent(shape: &Shape, fit: &Fit) -> Option<(Point, Point)> {
    let Shape::Turn {
        centre,
        middle,
        anticlockwise,
    } = *shape
    else {
        return None;
    };
    let side = if anticlockwise { 1.0 } else { -1.0 };
    let on = |aside: f64| {
        let out = Vector::at_angle(middle + side * aside) * TURN;
        fit.point(centre.moved(out))
    };
    Some((on(TURNED - 0.5), on(TURNED)))
}

/// True if the tail of an arrow stands aside of the point from which it runs out: one that pushes
/// from outside begins steps away.
pub(super) fn stands_aside(acts: Spot, from: Spot) -> bool {
    from.shift == acts.shift && from.rows != acts.rows
}

fn is_line(shape: &Shape) -> bool {
    matches!(
        shape,
        Shape::Line { .. }
            | Shape::Arrow { .. }
            | Shape::Arc { .. }
            | Shape::Dimension { .. }
            | Shape::RightAngle { .. }
            | Shape::Face { .. }
            | Shape::Spread { .. }
            | Shape::Turn { .. }
    )
}

fn draw_line(canvas: &mut Canvas, stroke: &Stroke, fit: &Fit) {
    let ink = stroke.ink;
    match stroke.shape {
        Shape::Line { from, to, line } | Shape::Arrow { from, to, line, .. } => {
            canvas.line(fit.point(from), fit.point(to), line, ink);
        }
        Shape::Arc {
            centre,
            radius,
            from,
            sweep,
        } => {
            // A ring stands around the middle of a cell, where the mark of its place stands.
            let ring = sweep.abs() > TAU - 1e-6;
            let radius = if ring {
                radius.min(WIDEST_RING / fit.step)
            } else {
                radius
            };
            let middle = fit.point(centre);
            if ring && canvas.rows() < LEAST_ROWS {
                return;
            }
            let (aside, down) = if ring {
                (
                    libm::floor(middle.column) + 0.5 - middle.column,
                    libm::floor(middle.row) + 0.5 - middle.row,
                )
            } else {
                (0.0, 0.0)
            };
            // Two specks to a dot leave no gap.
            let specks = (sweep.abs() * radius * fit.step * 10.0).clamp(2.0, 400.0) as i32;
            for speck in 0..=specks {
                let angle = from + sweep * f64::from(speck) / f64::from(specks);
                let spot = centre.moved(Vector::at_angle(angle) * radius);
                let mut point = fit.point(spot);
                point.column += aside;
                point.row += down;
                canvas.speck(point, ink);
            }
        }
        Shape::Dimension { from, to } => dimension(canvas, fit.point(from), fit.point(to), ink),
        Shape::RightAngle {
            corner,
            along,
            across,
        } => right_angle(canvas, fit, corner, along, across, ink),
        Shape::Face { at, looks, half } => face(canvas, fit, at, looks, half, ink),
        Shape::Spread {
            from,
            to,
            first,
            last,
        } => {
            let (one, other) = (fit.point(top_of(from, first)), fit.point(top_of(to, last)));
            canvas.line(one, other, Line::Solid, ink);
            for (tail, head) in comb(&stroke.shape, fit) {
                canvas.line(tail, head, Line::Solid, ink);
            }
        }
        Shape::Turn { centre, middle, .. } => {
            for speck in 0..=60 {
                let aside = TURNED * (f64::from(speck) / 30.0 - 1.0);
                let out = Vector::at_angle(middle + aside) * TURN;
                canvas.speck(fit.point(centre.moved(out)), ink);
            }
        }
        _ => {}
    }
}

/// A ring of brackets: one of dots would hide the end of the body on a coarse grid.
fn small_ring(canvas: &mut Canvas, middle: Point, ink: Ink) {
    let (column, row) = (floor(middle.column), floor(middle.row));
    canvas.put(column - 1, row, '(', ink, Held::Hard);
    canvas.put(column + 1, row, ')', ink, Held::Hard);
}

fn dimension(canvas: &mut Canvas, from: Point, to: Point, ink: Ink) {
    canvas.line(from, to, Line::Solid, ink);
    let (across, down) = ((to.column - from.column) / ASPECT, to.row - from.row);
    let length = libm::hypot(across, down);
    if down.abs() < 0.02 * across.abs() {
        let row = floor(from.row);
        let (one, other) = (floor(from.column), floor(to.column));
        let ends = if canvas.unicode {
            ['├', '┤']
        } else {
            ['|', '|']
        };
        canvas.put(one.min(other), row, ends[0], ink, Held::Soft);
        canvas.put(one.max(other), row, ends[1], ink, Held::Soft);
    } else if canvas.unicode {
        let tick = Point {
            column: -down / length * 0.55 * ASPECT,
            row: across / length * 0.55,
        };
        for end in [from, to] {
            let one = Point {
                column: end.column + tick.column,
                row: end.row + tick.row,
            };
            let other = Point {
                column: end.column - tick.column,
                row: end.row - tick.row,
            };
            canvas.line(one, other, Line::Solid, ink);
        }
    } else {
        for end in [from, to] {
            canvas.put(floor(end.column), floor(end.row), '+', ink, Held::Soft);
        }
    }
}

fn right_angle(
    canvas: &mut Canvas,
    fit: &Fit,
    corner: Spot,
    along: Vector,
    across: Vector,
    ink: Ink,
) {
    // Large enough to be seen on a coarse grid.
    let size = 1.0_f64.max(0.85 / fit.step);
    let one = fit.point(corner.moved(along * size));
    let middle = fit.point(corner.moved((along + across) * size));
    let other = fit.point(corner.moved(across * size));
    if canvas.unicode || along.size() > 1.1 {
        for (from, to) in [(one, middle), (middle, other)] {
            for speck in 0..=24 {
                let share = f64::from(speck) / 24.0;
                let point = Point {
                    column: from.column + (to.column - from.column) * share,
                    row: from.row + (to.row - from.row) * share,
                };
                canvas.speck(point, ink);
            }
        }
    } else {
        canvas.speck(middle, ink);
    }
}

fn face(canvas: &mut Canvas, fit: &Fit, at: Spot, looks: f64, half: f64, ink: Ink) {
    let out = Vector::at_angle(looks);
    let point = fit.point(at);
    let (column, row) = (floor(point.column), floor(point.row));
    let hatch = PointMark::Face.glyph(canvas.unicode);
    if out.x.abs() < 0.1 {
        let wide = floor(half * fit.step * ASPECT + 0.5).max(2);
        for aside in -wide..=wide {
            canvas.put(column + aside, row, hatch, ink, Held::Hard);
        }
    } else if out.y.abs() < 0.1 {
        let high = floor(half * fit.step + 0.3).max(1);
        for aside in -high..=high {
            canvas.put(column, row + aside, hatch, ink, Held::Hard);
        }
    } else {
        let side = out.quarter_turn() * half;
        let (one, other) = (at.moved(side), at.moved(side * -1.0));
        canvas.line(fit.point(one), fit.point(other), Line::Heavy, ink);
    }
}

/// The cell of the mark of a point.
pub(super) fn mark_cell(shape: &Shape, fit: &Fit) -> Option<(i64, i64)> {
    match *shape {
        Shape::Hinge(spot)
        | Shape::Stand(spot)
        | Shape::Wheel(spot)
        | Shape::Knot(spot)
        | Shape::Ring(spot) => {
            let point = fit.point(spot);
            Some((floor(point.column), floor(point.row)))
        }
        _ => None,
    }
}

/// An arrowhead: the character that points nearest to the arrow's direction, in the nearest cell
/// that is not taken, towards its tail. Gives the cell.
fn head(
    canvas: &mut Canvas,
    (from, to): (Point, Point),
    ink: Ink,
    taken: &[(i64, i64)],
) -> Option<(i64, i64)> {
    let (across, up) = ((to.column - from.column) / ASPECT, from.row - to.row);
    if !(across.is_finite() && up.is_finite()) || (across == 0.0 && up == 0.0) {
        return None;
    }
    let angle = Vector::new(across, up).angle();
    let eighth = (libm::round(angle / FRAC_PI_4) as i64).rem_euclid(8) as usize;
    let glyph = if canvas.unicode {
        ['▶', '↗', '▲', '↖', '◀', '↙', '▼', '↘'][eighth]
    } else {
        let quarter = if across.abs() > up.abs() {
            if across > 0.0 { 0 } else { 2 }
        } else if up > 0.0 {
            1
        } else {
            3
        };
        ['>', '^', '<', 'v'][quarter]
    };
    let cell = |share: f64| {
        let part = |from: f64, to: f64| floor(to + (from - to) * share);
        (part(from.column, to.column), part(from.row, to.row))
    };
    let free = (0..=24).map(|step| cell(f64::from(step) / 24.0));
    // On a very small grid there is room only beyond.
    let (aside, down) = (to.column - from.column, to.row - from.row);
    let longest = aside.abs().max(down.abs());
    let beyond = (1..=4).map(|step| {
        let on = |at: f64, run: f64| floor(at + run / longest * f64::from(step));
        (on(to.column, aside), on(to.row, down))
    });
    let tail = cell(1.0);
    let found = free
        .chain(beyond)
        .find(|cell| *cell != tail && !taken.contains(cell))?;
    canvas.put(found.0, found.1, glyph, ink, Held::Hard);
    Some(found)
}

fn draw_point(canvas: &mut Canvas, stroke: &Stroke, fit: &Fit) {
    let ink = stroke.ink;
    let spot = match stroke.shape {
        Shape::Hinge(spot)
        | Shape::Stand(spot)
        | Shape::Wheel(spot)
        | Shape::Knot(spot)
        | Shape::Ring(spot) => spot,
        Shape::Box(spot) => return weight_box(canvas, fit, spot, ink, (true, false)),
        Shape::Standing { at, low } => {
            return weight_box(canvas, fit, at, ink, (false, low));
        }
        _ => return,
    };
    let point = fit.point(spot);
    let Some(mark) = stroke.shape.point_mark() else {
        return;
    };
    canvas.put(
        floor(point.column),
        floor(point.row),
        mark.glyph(canvas.unicode),
        ink,
        Held::Hard,
    );
}

/// The box of a mass: hung below a spot, or standing above it, there perhaps low.
fn weight_box(canvas: &mut Canvas, fit: &Fit, spot: Spot, ink: Ink, (hung, low): (bool, bool)) {
    let point = fit.point(spot);
    let (column, row) = (floor(point.column), floor(point.row));
    let lines = match (canvas.unicode, low || fit.step < 0.6, hung) {
        (true, false, true) => ["┌┴┐", "└─┘"],
        (true, false, false) => ["┌─┐", "└─┘"],
        (false, false, true) => [".+.", "|_|"],
        (false, false, false) => [".-.", "|_|"],
        (true, true, true) => [" ■ ", ""],
        (false, true, true) => [" # ", ""],
        (true, true, false) => ["", " ■ "],
        (false, true, false) => ["", " # "],
    };
    // What stands has its lower row just above the body.
    let top = if hung { row } else { row - 2 };
    for (down, line) in lines.iter().enumerate() {
        for (aside, glyph) in line.chars().enumerate() {
            if glyph != ' ' {
                let (aside, down) = (aside as i64 - 1, down as i64);
                canvas.put(column + aside, top + down, glyph, ink, hold(ink));
            }
        }
    }
}
