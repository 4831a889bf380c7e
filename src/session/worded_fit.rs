//! Whether a force acts as a sentence says: the ways and the angle told, against a vector. What is
//! too near to tell stays open.

use super::acting::Way;

/// How what is told stands to a way.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Fit {
    True,
    False,
    /// Too near to tell.
    Open,
}

/// The line that an angle is told with.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Against {
    Level,
    Upright,
}

/// One thing told of which way a force acts.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Said {
    Left,
    Right,
    Up,
    Down,
    /// Along the horizontal, along the vertical.
    Level,
    Upright,
    /// An angle with a line, and half of its last place, in degrees.
    Angle(f64, f64, Against),
}

/// A part smaller than this share of a force is none.
const NONE: f64 = 1e-6;
/// One smaller than this share is too small to speak of.
const SMALL: f64 = 0.03;
/// How far an angle may be off that was worked out with three figures, in degrees.
const CARRIED: f64 = 0.15;
/// An angle farther off than this, in degrees, is another one.
const ANOTHER: f64 = 1.0;

/// Whether all that is said holds of a way.
pub(super) fn fits(said: &[Said], (x, y): Way) -> Fit {
    let size = libm::hypot(x, y);
    if size <= f64::MIN_POSITIVE || !size.is_finite() {
        return Fit::Open;
    }
    let unit = (x / size, y / size);
    all(said.iter().map(|one| fits_one(*one, unit)))
}

/// All of several: false as soon as one is, true if each is.
fn all(fits: impl Iterator<Item = Fit>) -> Fit {
    fits.fold(Fit::True, |before, fit| match (before, fit) {
        (Fit::False, _) | (_, Fit::False) => Fit::False,
        (Fit::True, Fit::True) => Fit::True,
        _ => Fit::Open,
    })
}

/// Several readings of one sentence: it is false only if it is so in each, and true likewise.
pub(super) fn in_each(readings: impl Iterator<Item = Fit>) -> Fit {
    let same = |one: Fit, other: Fit| if one == other { one } else { Fit::Open };
    readings.reduce(same).unwrap_or(Fit::Open)
}

fn fits_one(said: Said, (x, y): Way) -> Fit {
    match said {
        Said::Right => along(x),
        Said::Left => along(-x),
        Said::Up => along(y),
        Said::Down => along(-y),
        Said::Level => no_part(y),
        Said::Upright => no_part(x),
        Said::Angle(told, half, against) => {
            let level = libm::atan2(y.abs(), x.abs()).to_degrees();
            let own = match against {
                Against::Level => level,
                Against::Upright => 90.0 - level,
            };
            let off = (told - own).abs();
            match off {
                _ if off <= half + CARRIED => Fit::True,
                _ if off > half + ANOTHER => Fit::False,
                _ => Fit::Open,
            }
        }
    }
}

/// Whether a part points along its axis; a force without it does not.
fn along(part: f64) -> Fit {
    match part {
        _ if part > SMALL => Fit::True,
        _ if part < -SMALL || part.abs() < NONE => Fit::False,
        _ => Fit::Open,
    }
}

fn no_part(part: f64) -> Fit {
    match part.abs() {
        size if size < NONE => Fit::True,
        size if size > SMALL => Fit::False,
        _ => Fit::Open,
    }
}
