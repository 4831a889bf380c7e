//! Angles as sums: a fixed number of degrees plus and minus given angles.
//!
//! Kept as sums, "180° − (90° − θ + β)" becomes "90° + θ − β", as a person would write it.

use super::Formula;
use crate::problem::{Body, Direction, GivenId, Reference, Side, Tilt, Upright};
use std::f64::consts::FRAC_PI_2;

/// A fixed angle plus signed given angles.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Slope {
    degrees: f64,
    angles: Vec<(f64, GivenId)>,
}

impl Slope {
    fn fixed(degrees: f64) -> Slope {
        Slope {
            degrees,
            angles: Vec::new(),
        }
    }

    fn measured(angle: GivenId, from: Reference) -> Slope {
        match from {
            Reference::Horizontal => Slope {
                degrees: 0.0,
                angles: vec![(1.0, angle)],
            },
            Reference::Vertical => Slope {
                degrees: 90.0,
                angles: vec![(-1.0, angle)],
            },
        }
    }

    fn plus(mut self, factor: f64, other: &Slope) -> Slope {
        self.degrees += factor * other.degrees;
        for (sign, angle) in &other.angles {
            match self.angles.iter_mut().find(|(_, known)| known == angle) {
                Some((known, _)) => *known += factor * sign,
                None => self.angles.push((factor * sign, *angle)),
            }
        }
        self.angles.retain(|(sign, _)| *sign != 0.0);
        self
    }

    /// Value in radians.
    pub(super) fn value(&self, values: &[f64]) -> f64 {
        self.angles
            .iter()
            .fold(self.degrees.to_radians(), |sum, (sign, angle)| {
                sum + sign * values[angle.0]
            })
    }

    /// True if it is exactly a right angle whatever the numbers.
    pub(super) fn is_right_angle(&self) -> bool {
        self.angles.is_empty() && self.degrees == 90.0
    }

    /// The same angle between two lines, between 0 and 90° at these values.
    pub(super) fn acute(self, values: &[f64]) -> Slope {
        let value = self.value(values);
        if value > FRAC_PI_2 + 1e-9 {
            Slope::fixed(180.0).plus(-1.0, &self)
        } else if value < 0.0 {
            Slope::fixed(0.0).plus(-1.0, &self)
        } else {
            self
        }
    }

    /// As a formula: the fixed part first unless it vanishes, positive angles before negative.
    pub(super) fn formula(&self) -> Formula {
        let mut parts = Vec::new();
        if self.degrees != 0.0 {
            parts.push(Formula::Degrees(self.degrees));
        }
        for wanted in [true, false] {
            for (sign, angle) in self
                .angles
                .iter()
                .filter(|(sign, _)| (*sign > 0.0) == wanted)
            {
                let angle = Formula::given(*angle);
                let sized = if sign.abs() == 1.0 {
                    angle
                } else {
                    Formula::Number(sign.abs()).times(angle)
                };
                parts.push(if *sign > 0.0 {
                    sized
                } else {
                    Formula::Negative(Box::new(sized))
                });
            }
        }
        match parts.len() {
            0 => Formula::Degrees(0.0),
            1 => parts.remove(0),
            _ => Formula::Sum(parts),
        }
    }
}

/// How steeply the body rises from its foot.
fn rise(body: &Body) -> Slope {
    match body.tilt {
        Tilt::Level => Slope::fixed(0.0),
        Tilt::Rising { angle, from } => Slope::measured(angle, from),
    }
}

/// How steeply a direction rises above the horizontal (negative below), and to which side it
/// points. Upright directions rise by ±90°.
pub(super) fn elevation(direction: Direction, body: &Body) -> (Slope, Side) {
    match direction {
        Direction::Up => (Slope::fixed(90.0), body.towards),
        Direction::Down => (Slope::fixed(-90.0), body.towards),
        Direction::Level(side) => (Slope::fixed(0.0), side),
        Direction::Oblique {
            angle,
            from,
            upright,
            side,
        } => {
            let slope = Slope::measured(angle, from);
            let sign = if upright == Upright::Up { 1.0 } else { -1.0 };
            (Slope::fixed(0.0).plus(sign, &slope), side)
        }
        Direction::FromBody { angle } => {
            let above_body = Slope {
                degrees: 0.0,
                angles: vec![(1.0, angle)],
            };
            (above_body.plus(-1.0, &rise(body)), body.towards.other())
        }
    }
}

/// The angle between a direction's line and the body, between 0 and 90° at these values.
pub(super) fn angle_with_body(direction: Direction, body: &Body, values: &[f64]) -> Slope {
    let (elevation, side) = elevation(direction, body);
    let between = if side == body.towards {
        elevation.plus(-1.0, &rise(body))
    } else {
        elevation.plus(1.0, &rise(body))
    };
    // Lines, not arrows: whole half turns do not count.
    let mut between = between;
    while between.value(values) > std::f64::consts::PI {
        between.degrees -= 180.0;
    }
    while between.value(values) < -FRAC_PI_2 {
        between.degrees += 180.0;
    }
    between.acute(values)
}
