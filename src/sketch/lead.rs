//! The bent line from a point to an arrow that stands aside of it.

use super::Ink;
use super::canvas::{Canvas, floor, hold};
use super::fit::{ASPECT, Point};
use super::scene::Line;

/// Arms of a sign of box drawing.
const UP: usize = 1;
const RIGHT: usize = 2;
const DOWN: usize = 4;
const LEFT: usize = 8;

/// The signs by their arms.
const SIGNS: [char; 16] = [
    ' ', '│', '─', '└', '│', '│', '┌', '├', '─', '┘', '─', '┴', '┐', '┤', '┬', '┼',
];

/// Joins the point of an arrow to its tail.
pub(super) fn lead(canvas: &mut Canvas, acts: Point, tail: Point, head: Point, ink: Ink) {
    let (across, down) = ((head.column - tail.column) / ASPECT, head.row - tail.row);
    if across.abs() > 0.02 * down.abs() {
        return canvas.line(acts, tail, Line::Solid, ink);
    }
    let (from, to, row) = (floor(acts.column), floor(tail.column), floor(tail.row));
    if from == to {
        return;
    }
    let (back, onward) = if down > 0.0 { (UP, DOWN) } else { (DOWN, UP) };
    let (out, home) = if to > from {
        (RIGHT, LEFT)
    } else {
        (LEFT, RIGHT)
    };
    for column in from.min(to)..=from.max(to) {
        let arms = if column == from {
            back | out
        } else if column == to {
            home | onward
        } else {
            LEFT | RIGHT
        };
        // The shaft of this arrow begins here, that of another may pass.
        let known = canvas.glyph(column, row).map_or(0, arms_of);
        let known = if column == to && known == UP | DOWN {
            0
        } else {
            known
        };
        canvas.put(column, row, sign(canvas, arms | known), ink, hold(ink));
    }
}

/// The arms of a sign that stands in a cell already.
fn arms_of(sign: char) -> usize {
    match sign {
        '|' | '╎' | ':' => UP | DOWN,
        '-' => LEFT | RIGHT,
        _ => (SIGNS.iter().rposition(|known| *known == sign)).unwrap_or(0),
    }
}

fn sign(canvas: &Canvas, arms: usize) -> char {
    match arms {
        _ if canvas.unicode => SIGNS[arms],
        arms if arms == LEFT | RIGHT => '-',
        arms if arms == UP | DOWN => '|',
        _ => '+',
    }
}
