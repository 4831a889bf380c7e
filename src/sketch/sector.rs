//! Which angle a label is taken for, and which dimension line: its own or a neighbour's.

use super::angle::off_segment;
use super::fit::{ASPECT, Fit};
use super::frame::wrapped;
use super::scene::{Sector, Spot};
use crate::plane::Vector;

/// Rows by which a label is nearer to its own than to another.
const CLEARLY: f64 = 0.25;
/// Rows around the arc of an angle that look like its inside.
const EDGE: f64 = 0.3;
/// Radians beside its legs that look like between them.
const ASIDE: f64 = 0.05;
/// Rows from its line within which the label of a distance belongs to it.
const AT_LINE: f64 = 1.3;
/// Rows from a line within which a cell lies on it.
const ON_LINE: f64 = 0.75;

/// A sector on the grid, in rows, y up.
#[derive(Clone, Copy, Debug)]
pub(super) struct Laid {
    centre: Vector,
    radius: f64,
    from: f64,
    sweep: f64,
}

/// A text on the grid: its first cell, and how wide it is.
pub(super) type Text = ((i64, i64), i64);

/// A spot on the grid, in rows, y up.
fn rows(fit: &Fit, spot: Spot) -> Vector {
    let point = fit.point(spot);
    Vector::new(point.column / ASPECT, -point.row)
}

/// The middles of the cells of a text.
fn cells(((first, row), wide): Text) -> impl Iterator<Item = Vector> {
    (first..first + wide)
        .map(move |column| Vector::new((column as f64 + 0.5) / ASPECT, -(row as f64) - 0.5))
}

impl Laid {
    pub(super) fn of(sector: &Sector, fit: &Fit) -> Laid {
        Laid {
            centre: rows(fit, sector.centre),
            radius: sector.radius * fit.step,
            from: sector.from,
            sweep: sector.sweep,
        }
    }

    /// Rows from a point to the arc; less than nothing inside the sector.
    fn off(&self, point: Vector) -> f64 {
        let out = point - self.centre;
        let turned = wrapped(out.angle() - self.from) * self.sweep.signum();
        if (0.0..=self.sweep.abs()).contains(&turned) {
            return out.size() - self.radius;
        }
        [self.from, self.from + self.sweep]
            .map(|end| (out - Vector::at_angle(end) * self.radius).size())
            .into_iter()
            .fold(f64::INFINITY, f64::min)
    }

    /// The same, nothing at the least.
    fn gap(&self, text: Text) -> f64 {
        let off = cells(text).map(|cell| self.off(cell).max(0.0));
        off.fold(f64::INFINITY, f64::min)
    }

    /// True if a text stands between the legs of the angle, or beyond its arc.
    pub(super) fn faces(&self, text: Text) -> bool {
        let within = |cell: Vector| {
            let turned = wrapped((cell - self.centre).angle() - self.from) * self.sweep.signum();
            (-ASIDE..=self.sweep.abs() + ASIDE).contains(&turned)
        };
        cells(text).any(within)
    }

    /// True if two sectors are of one angle.
    fn is_same(&self, other: &Laid) -> bool {
        let ends = |laid: &Laid| {
            let end = laid.from + laid.sweep;
            Vector::at_angle(laid.from) + Vector::at_angle(end)
        };
        (self.centre - other.centre).size() < 0.1 && (ends(self) - ends(other)).size() < 0.02
    }

    /// True if a text would be taken for the name of another angle: it stands inside of that, or
    /// nearer to its arc.
    pub(super) fn is_taken_for(&self, other: &Laid, text: Text) -> bool {
        if self.is_same(other) {
            return false;
        }
        let inside = |cell: &Vector| other.off(*cell) < EDGE && self.off(*cell) >= 0.0;
        let nearer = || {
            let own = self.gap(text);
            own > 0.0 && other.gap(text) < own + CLEARLY
        };
        cells(text).any(|cell| inside(&cell)) || nearer()
    }

    /// The point of the arc that is nearest to a text, as a cell.
    pub(super) fn nearest(&self, text: Text) -> (i64, i64) {
        let on = |step: u8| {
            let out = Vector::at_angle(self.from + self.sweep * f64::from(step) / 8.0);
            self.centre + out * self.radius
        };
        let gap = |point: &Vector| {
            let off = cells(text).map(|cell| (cell - *point).size());
            off.fold(f64::INFINITY, f64::min)
        };
        let nearest = (0..=8)
            .map(on)
            .min_by(|one, other| gap(one).total_cmp(&gap(other)));
        let point = nearest.unwrap_or(self.centre);
        let cell = |rows: f64| libm::floor(rows) as i64;
        (cell(point.x * ASPECT), cell(-point.y))
    }
}

/// A dimension line on the grid, in rows, y up.
pub(super) type Measure = (Vector, Vector);

/// The dimension line between two spots.
pub(super) fn measure(fit: &Fit, (from, to): (Spot, Spot)) -> Measure {
    (rows(fit, from), rows(fit, to))
}

/// True if a cell lies on a dimension line.
pub(super) fn is_on(line: Measure, (column, row): (i64, i64)) -> bool {
    cells(((column, row), 1)).all(|cell| off_segment(cell, line) < ON_LINE)
}

/// True if a text stands at its own dimension line, and at no other as near.
pub(super) fn is_at(own: Measure, others: impl Iterator<Item = Measure>, text: Text) -> bool {
    let gap = |line: Measure| {
        let off = cells(text).map(|cell| off_segment(cell, line));
        off.fold(f64::INFINITY, f64::min)
    };
    let near = gap(own);
    let shorter = |line: Measure| gap(line) < near + CLEARLY && near > ON_LINE;
    near < AT_LINE && !others.filter(|line| *line != own).any(shorter)
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::f64::consts::FRAC_PI_2;

    /// A quarter from the right to straight up around the middle of a cell, and the one beside it.
    fn quarters() -> (Laid, Laid) {
        let laid = |from| Laid {
            centre: Vector::new(10.25, -10.5),
            radius: 4.0,
            from,
            sweep: FRAC_PI_2,
        };
        (laid(0.0), laid(FRAC_PI_2))
    }

    #[test]
    fn a_name_in_the_angle_beside_its_own_is_taken_for_that() {
        let (own, beside) = quarters();
        // Column 20 and row 10 are the centre.
        for (text, taken) in [
            (((23, 8), 1), false),
            (((24, 6), 5), false),
            (((17, 8), 1), true),
            (((14, 9), 5), true),
            // Beyond the arc of the one that is not its own.
            (((8, 10), 3), true),
        ] {
            assert_eq!(own.is_taken_for(&beside, text), taken, "{text:?}");
        }
        for (text, faces) in [
            (((24, 6), 5), true),
            (((30, 2), 3), true),
            (((16, 12), 3), false),
        ] {
            assert_eq!(own.faces(text), faces, "{text:?}");
        }
        assert!(!own.is_taken_for(&own, ((14, 9), 5)));
    }

    #[test]
    fn a_length_stands_at_its_own_line() {
        let line = |x| (Vector::new(x, 0.0), Vector::new(x, -20.0));
        let (own, other) = (line(10.25), line(14.25));
        let at = |text| is_at(own, [own, other].into_iter(), text);
        assert!(at(((17, 8), 7)));
        assert!(at(((22, 8), 3)));
        assert!(!at(((25, 8), 3)));
        assert!(!at(((30, 8), 7)));
    }
}
