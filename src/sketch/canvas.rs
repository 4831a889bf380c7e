//! The grid while it is drawn on: dots and glyphs, and what each cell holds.

use super::Ink;
use super::fit::{ASPECT, Point};
use super::picture::Cell;
use super::scene::Line;

/// What a cell holds, for the labels that look for room.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Held {
    /// Nothing.
    Free,
    /// A help line or a dimension line, which a label may interrupt.
    Soft,
    /// Something that must stay visible.
    Hard,
    /// A label.
    Label,
}

/// One cell while it is drawn on.
#[derive(Clone, Copy, Debug)]
struct Draft {
    dots: u8,
    glyph: Option<char>,
    ink: Ink,
    held: Held,
}

const EMPTY: Draft = Draft {
    dots: 0,
    glyph: None,
    ink: Ink::Blank,
    held: Held::Free,
};

/// Bits of the Braille dots, by row and column within a cell (Unicode 15, U+2800 block).
const BRAILLE: [[u8; 2]; 4] = [[0x01, 0x08], [0x02, 0x10], [0x04, 0x20], [0x40, 0x80]];

/// Beyond this many cells off the grid nothing is drawn.
const FAR: f64 = 2000.0;

/// The grid while it is drawn on.
#[derive(Clone)]
pub(super) struct Canvas {
    columns: i64,
    rows: i64,
    pub(super) unicode: bool,
    cells: Vec<Draft>,
}

impl Canvas {
    pub(super) fn new(columns: u16, rows: u16, unicode: bool) -> Canvas {
        Canvas {
            columns: i64::from(columns),
            rows: i64::from(rows),
            unicode,
            cells: vec![EMPTY; usize::from(columns) * usize::from(rows)],
        }
    }

    pub(super) fn columns(&self) -> i64 {
        self.columns
    }

    pub(super) fn rows(&self) -> i64 {
        self.rows
    }

    fn index(&self, column: i64, row: i64) -> Option<usize> {
        let inside = (0..self.columns).contains(&column) && (0..self.rows).contains(&row);
        inside.then(|| (row * self.columns + column) as usize)
    }

    /// What the cell holds; off the grid counts as hard.
    pub(super) fn held(&self, column: i64, row: i64) -> Held {
        self.index(column, row)
            .map_or(Held::Hard, |index| self.cells[index].held)
    }

    /// The ink of a cell.
    pub(super) fn ink(&self, column: i64, row: i64) -> Ink {
        self.index(column, row)
            .map_or(Ink::Blank, |index| self.cells[index].ink)
    }

    /// The character of a cell, if it has one of its own.
    pub(super) fn glyph(&self, column: i64, row: i64) -> Option<char> {
        self.index(column, row)
            .and_then(|index| self.cells[index].glyph)
    }

    /// Sets a whole cell.
    pub(super) fn put(&mut self, column: i64, row: i64, glyph: char, ink: Ink, held: Held) {
        if let Some(index) = self.index(column, row) {
            self.cells[index] = Draft {
                dots: 0,
                glyph: Some(glyph),
                ink,
                held,
            };
        }
    }

    /// Empties a cell.
    pub(super) fn clear(&mut self, column: i64, row: i64) {
        if let Some(index) = self.index(column, row) {
            self.cells[index] = EMPTY;
        }
    }

    /// The finished cells.
    pub(super) fn finish(self) -> Vec<Cell> {
        let finished = |draft: Draft| Cell {
            glyph: draft.glyph.unwrap_or_else(|| {
                if draft.dots == 0 {
                    ' '
                } else {
                    char::from_u32(0x2800 + u32::from(draft.dots)).unwrap_or(' ')
                }
            }),
            ink: draft.ink,
        };
        self.cells.into_iter().map(finished).collect()
    }

    /// A straight line. Level and upright lines take box characters, others dots.
    pub(super) fn line(&mut self, from: Point, to: Point, line: Line, ink: Ink) {
        if !(near(from) && near(to)) {
            return;
        }
        let across = to.column - from.column;
        let down = to.row - from.row;
        if across.abs() + down.abs() < 1e-6 {
            return;
        }
        if down.abs() < 0.02 * across.abs() / ASPECT {
            self.level(from, to, line, ink);
        } else if across.abs() / ASPECT < 0.02 * down.abs() {
            self.upright(from, to, line, ink);
        } else if self.unicode {
            self.slanted(from, to, line, ink);
        } else {
            self.typed(from, to, line, ink);
        }
    }

    fn level(&mut self, from: Point, to: Point, line: Line, ink: Ink) {
        let glyph = match (line, self.unicode) {
            (Line::Solid, true) => '─',
            (Line::Dashed, true) => '╌',
            (Line::Heavy, true) => '━',
            (Line::Heavy, false) => '=',
            (_, false) => '-',
        };
        let row = floor(from.row);
        let (one, other) = (floor(from.column), floor(to.column));
        for column in one.min(other)..=one.max(other) {
            if self.unicode || line != Line::Dashed || column % 2 == 0 {
                self.put(column, row, glyph, ink, hold(ink));
            }
        }
    }

    fn upright(&mut self, from: Point, to: Point, line: Line, ink: Ink) {
        let glyph = match (line, self.unicode) {
            (Line::Solid, true) => '│',
            (Line::Dashed, true) => '╎',
            (Line::Heavy, true) => '┃',
            (Line::Dashed, false) => ':',
            (_, false) => '|',
        };
        let column = floor(from.column);
        let (one, other) = (floor(from.row), floor(to.row));
        for row in one.min(other)..=one.max(other) {
            // A level body is not cut by what stands on it.
            if !matches!(self.glyph(column, row), Some('━' | '=')) {
                self.put(column, row, glyph, ink, hold(ink));
            }
        }
    }

    /// A slanted line in dots.
    fn slanted(&mut self, from: Point, to: Point, line: Line, ink: Ink) {
        let (across, down) = ((to.column - from.column) * 2.0, (to.row - from.row) * 4.0);
        let length = libm::hypot(across, down);
        let steps = (length * 1.5) as i64 + 1;
        // A heavy line is three dots thick, across its own direction.
        let aside = (-down / length, across / length);
        let offsets: &[f64] = match line {
            Line::Heavy => &[-0.9, 0.0, 0.9],
            _ => &[0.0],
        };
        for step in 0..=steps {
            let share = step as f64 / steps as f64;
            if line == Line::Dashed && (share * length) as i64 % 7 >= 4 {
                continue;
            }
            for offset in offsets {
                let x = from.column * 2.0 + share * across + aside.0 * offset;
                let y = from.row * 4.0 + share * down + aside.1 * offset;
                self.dot(floor(x), floor(y), ink);
            }
        }
    }

    fn dot(&mut self, x: i64, y: i64, ink: Ink) {
        let (column, row) = (x.div_euclid(2), y.div_euclid(4));
        if let Some(index) = self.index(column, row) {
            let bit = BRAILLE[y.rem_euclid(4) as usize][x.rem_euclid(2) as usize];
            let cell = &mut self.cells[index];
            cell.glyph = None;
            cell.dots |= bit;
            // A help line never recolours or softens what it touches.
            if hold(ink) == Held::Hard || cell.held == Held::Free {
                cell.ink = ink;
                cell.held = hold(ink);
            }
        }
    }

    /// A slanted line in ASCII signs.
    fn typed(&mut self, from: Point, to: Point, line: Line, ink: Ink) {
        let across = to.column - from.column;
        let down = to.row - from.row;
        if across.abs() > 1.4 * down.abs() {
            let (one, other) = (floor(from.column), floor(to.column));
            for column in one.min(other)..=one.max(other) {
                let share = ((column as f64 + 0.5 - from.column) / across).clamp(0.0, 1.0);
                let height = from.row + share * down;
                let glyph = match (line, (height - libm::floor(height)) * 3.0) {
                    (Line::Heavy, _) => '#',
                    (_, part) if part < 1.0 => '\'',
                    (_, part) if part < 2.0 => '-',
                    _ => '.',
                };
                if line != Line::Dashed || column % 2 == 0 {
                    self.put(column, floor(height), glyph, ink, hold(ink));
                }
            }
            return;
        }
        let (one, other) = (floor(from.row), floor(to.row));
        for row in one.min(other)..=one.max(other) {
            let share = ((row as f64 + 0.5 - from.row) / down).clamp(0.0, 1.0);
            let column = floor(from.column + share * across);
            let glyph = match line {
                Line::Heavy => '#',
                Line::Dashed => ':',
                Line::Solid if across.abs() < 0.2 * down.abs() => '|',
                Line::Solid if across * down < 0.0 => '/',
                Line::Solid => '\\',
            };
            self.put(column, row, glyph, ink, hold(ink));
        }
    }

    /// One spot of a curve.
    pub(super) fn speck(&mut self, at: Point, ink: Ink) {
        if !near(at) {
            return;
        }
        if self.unicode {
            self.dot(floor(at.column * 2.0), floor(at.row * 4.0), ink);
        } else if self.held(floor(at.column), floor(at.row)) == Held::Free {
            self.put(floor(at.column), floor(at.row), '.', ink, hold(ink));
        }
    }
}

/// What a stroke of this ink leaves in a cell.
pub(super) fn hold(ink: Ink) -> Held {
    match ink {
        Ink::Blank => Held::Free,
        Ink::Faint | Ink::Distance => Held::Soft,
        _ => Held::Hard,
    }
}

/// The whole cell or dot that holds a coordinate.
pub(super) fn floor(value: f64) -> i64 {
    libm::floor(value) as i64
}

fn near(point: Point) -> bool {
    point.column.abs() < FAR && point.row.abs() < FAR
}
