//! Slopes of bodies and directions as sums of angles, and the angle between two lines.

use super::angle::AngleSum;
use super::{Atom, StepId};
use crate::problem::{Body, Direction, GivenId, Reference, Side, Tilt, Upright};
use std::f64::consts::FRAC_PI_2;

/// A slope by given angles.
pub(super) type Slope = AngleSum<StepId>;

impl Slope {
    fn given(angle: GivenId) -> Slope {
        AngleSum::angle(Atom::Given(angle))
    }

    fn measured(angle: GivenId, from: Reference) -> Slope {
        match from {
            Reference::Horizontal => Slope::given(angle),
            Reference::Vertical => Slope::fixed(90.0).plus(-1.0, &Slope::given(angle)),
        }
    }

    /// Value in radians at these values of the givens.
    fn at(&self, values: &[f64]) -> f64 {
        self.value(&|atom| match atom {
            Atom::Given(given) => values.get(given.0).copied(),
            Atom::Gravity | Atom::Step(_) => None,
        })
    }

    /// True if it is exactly a right angle whatever the numbers.
    pub(super) fn is_right_angle(&self) -> bool {
        self.fixed_degrees() == Some(90.0)
    }

    /// The same angle between two lines, between 0 and 90° at these values.
    pub(super) fn acute(self, values: &[f64]) -> Slope {
        let value = self.at(values);
        if value > FRAC_PI_2 + 1e-9 {
            Slope::fixed(180.0).plus(-1.0, &self)
        } else if value < 0.0 {
            Slope::fixed(0.0).plus(-1.0, &self)
        } else {
            self
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
            let above_body = Slope::given(angle);
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
    while between.at(values) > std::f64::consts::PI {
        between.degrees -= 180.0;
    }
    while between.at(values) < -FRAC_PI_2 {
        between.degrees += 180.0;
    }
    between.acute(values)
}
