//! A scene on a grid of character cells.

use super::canvas::Canvas;
use super::clear::{NEAR, Ways, clear};
use super::fit::{ASPECT, Fit};
use super::{Ink, Scene, labels, strokes};

/// The most columns of a picture; beyond, a drawing gains nothing.
pub const WIDEST: u16 = 400;
/// The most rows of a picture.
pub const HIGHEST: u16 = 200;

/// The length in rows from which on slanted dimension lines can be told apart.
const ROOMY: f64 = 24.0;

/// Which characters a picture may use.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Style {
    /// Box drawing, Braille and Greek letters; false: plain ASCII only.
    pub unicode: bool,
}

/// One character cell.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Cell {
    /// The character, one column wide.
    pub glyph: char,
    /// What it shows.
    pub ink: Ink,
}

impl Default for Cell {
    fn default() -> Cell {
        Cell {
            glyph: ' ',
            ink: Ink::Blank,
        }
    }
}

/// A label that found no place in the picture.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct LegendEntry {
    /// The small letter that stands for it in the picture; empty if not even that found place.
    pub mark: String,
    /// The label's text.
    pub text: String,
    /// What it names.
    pub ink: Ink,
}

/// Where a label (or its mark) stands.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct PlacedLabel {
    /// The text as it stands in the picture.
    pub text: String,
    /// Its first column.
    pub column: u16,
    /// Its row.
    pub row: u16,
    /// What it names.
    pub ink: Ink,
}

/// A scene on a grid of character cells.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Picture {
    /// Cells in a row.
    pub columns: u16,
    /// Rows.
    pub rows: u16,
    /// The cells, row by row from the top.
    pub cells: Vec<Cell>,
    /// The labels in the picture.
    pub labels: Vec<PlacedLabel>,
    /// The labels beside the picture.
    pub legend: Vec<LegendEntry>,
}

impl Picture {
    /// The cell at a column and a row; blank outside the picture.
    pub fn cell(&self, column: u16, row: u16) -> Cell {
        if column >= self.columns || row >= self.rows {
            return Cell::default();
        }
        let index = usize::from(row) * usize::from(self.columns) + usize::from(column);
        self.cells.get(index).copied().unwrap_or_default()
    }

    /// The rows as plain text, without blanks at their ends.
    pub fn lines(&self) -> Vec<String> {
        (0..self.rows)
            .map(|row| {
                let line: String = (0..self.columns)
                    .map(|column| self.cell(column, row).glyph)
                    .collect();
                line.trim_end().to_owned()
            })
            .collect()
    }
}

/// The scene as a grid of this size can show it, and how it is fitted in.
pub(super) fn laid_out(scene: &Scene, columns: u16, rows: u16) -> (Scene, Option<Fit>) {
    let mut scene = roomed(scene, columns, rows);
    if Fit::of(&scene, columns, rows).is_none() {
        scene = scene.unmeasured();
    }
    let mut best: Option<((usize, usize), Scene, Fit)> = None;
    for fit in Fit::fits(&scene, columns, rows) {
        let mut tried = scene.clone();
        clear(&mut tried, &fit, (columns, rows));
        let ways = Ways::of(&tried, &fit);
        let clashes = (ways.clashes(NEAR).len(), ways.crowded());
        if best.as_ref().is_none_or(|(known, ..)| clashes < *known) {
            best = Some((clashes, tried, fit));
        }
        if clashes == (0, 0) {
            break;
        }
    }
    match best {
        Some((_, scene, fit)) => (scene, Some(fit)),
        None => (scene, None),
    }
}

/// The scene without dimension lines for which there is no room.
fn roomed(scene: &Scene, columns: u16, rows: u16) -> Scene {
    let Some(fit) = Fit::of(scene, columns, rows) else {
        return scene.clone();
    };
    let long = |(from, to)| {
        let (from, to) = (fit.point(from), fit.point(to));
        libm::hypot((from.column - to.column) / ASPECT, from.row - to.row)
    };
    let longest = scene.slanted().map(long).fold(0.0, f64::max);
    if longest > 0.0 && longest < ROOMY {
        scene.unslanted()
    } else {
        scene.clone()
    }
}

/// Lays a scene out on `columns` by `rows` cells, taking a cell to be twice as high as wide.
///
/// The picture is as large as fits. No label covers another, an arrowhead, the body or a rope;
/// a label without room becomes a letter, and its text goes to the legend. A grid too small for
/// any drawing stays blank with every label in the legend. No picture is wider than
/// [`WIDEST`] or higher than [`HIGHEST`].
pub fn picture(scene: &Scene, columns: u16, rows: u16, style: Style) -> Picture {
    let (columns, rows) = (columns.min(WIDEST), rows.min(HIGHEST));
    let asked = scene;
    let (scene, fit) = laid_out(asked, columns, rows);
    let mut canvas = Canvas::new(columns, rows, style.unicode);
    let (labels, legend) = match fit {
        Some(fit) => {
            strokes::draw(&mut canvas, &scene, &fit);
            let (placed, mut legend) = labels::place(&mut canvas, &scene, &fit);
            let left_out = &asked.labels[..];
            let left_out = left_out.iter().filter(|label| !scene.names(label));
            legend.extend(left_out.map(|label| labels::beside(label, style.unicode)));
            (placed, legend)
        }
        None => {
            let beside = |label| labels::beside(label, style.unicode);
            (Vec::new(), asked.labels.iter().map(beside).collect())
        }
    };
    Picture {
        columns,
        rows,
        cells: canvas.finish(),
        labels,
        legend,
    }
}
