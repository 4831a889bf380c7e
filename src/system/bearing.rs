//! Which way something points.

use super::{BodyId, Leg, Spot, System};
use crate::plane::Vector;
use crate::problem::{GivenId, Reference, Side, Upright};
use std::f64::consts::FRAC_PI_2;

/// A direction in the plane, told by a relation.
#[derive(Clone, Debug, PartialEq)]
pub enum Bearing {
    /// Straight up.
    Up,
    /// Straight down.
    Down,
    /// Level, to a side.
    Level(Side),
    /// At a given angle with the horizontal or the vertical.
    Oblique {
        /// The given angle, between 0 and a right angle.
        angle: GivenId,
        /// The line from which it is measured.
        from: Reference,
        /// Upwards or downwards.
        upright: Upright,
        /// To which side.
        side: Side,
    },
    /// At a given angle from the x axis, anticlockwise.
    FromAxis {
        /// The given angle, between 0 and 360°.
        angle: GivenId,
    },
    /// From where it acts towards a point.
    Towards(Spot),
    /// Along a leg of a body, towards its end or back to its beginning.
    Along {
        /// The body.
        body: BodyId,
        /// Which of its legs.
        leg: usize,
        /// True towards the leg's end.
        onward: bool,
    },
    /// Square to a leg of a body.
    Across {
        /// The body.
        body: BodyId,
        /// Which of its legs.
        leg: usize,
        /// True to the left of one who walks along the leg from its beginning.
        left: bool,
    },
    /// At a given angle with a leg, measured from its onward or backward direction.
    FromLeg {
        /// The given angle, between 0 and 180°.
        angle: GivenId,
        /// The body.
        body: BodyId,
        /// Which of its legs.
        leg: usize,
        /// True if the angle is measured from the direction towards the leg's end.
        onward: bool,
        /// True if it lies to the left of one who walks along the leg from its beginning.
        left: bool,
    },
}

impl System {
    /// A leg of a body.
    pub fn leg(&self, body: BodyId, leg: usize) -> Option<&Leg> {
        self.parts().bodies.get(body.0)?.legs.get(leg)
    }

    /// Unit vector of a bearing that acts at a spot. Exact where it is upright or level, so that a
    /// weight has no part to the side.
    pub fn unit(&self, bearing: &Bearing, at: &Spot, values: &[f64]) -> Vector {
        self.unit_within(bearing, at, values, 0)
    }

    pub(super) fn leg_unit(
        &self,
        body: BodyId,
        leg: usize,
        values: &[f64],
        depth: usize,
    ) -> Vector {
        match self.leg(body, leg) {
            Some(found) if depth < 16 => {
                self.unit_within(&found.bearing, &Spot::Origin, values, depth + 1)
            }
            _ => Vector::new(f64::NAN, f64::NAN),
        }
    }

    fn unit_within(&self, bearing: &Bearing, at: &Spot, values: &[f64], depth: usize) -> Vector {
        let along = |body: BodyId, leg: usize, onward: bool| {
            let unit = self.leg_unit(body, leg, values, depth);
            if onward { unit } else { unit * -1.0 }
        };
        match bearing {
            Bearing::Up => Vector::new(0.0, 1.0),
            Bearing::Down => Vector::new(0.0, -1.0),
            Bearing::Level(side) => Vector::new(side.sign(), 0.0),
            Bearing::Oblique {
                angle,
                from,
                upright,
                side,
            } => {
                let slope = match from {
                    Reference::Horizontal => values[angle.0],
                    Reference::Vertical => FRAC_PI_2 - values[angle.0],
                };
                let rising = Vector::at_angle(slope);
                let up = if *upright == Upright::Up { 1.0 } else { -1.0 };
                Vector::new(rising.x * side.sign(), rising.y * up)
            }
            Bearing::FromAxis { angle } => Vector::at_angle(values[angle.0]),
            Bearing::Towards(spot) => {
                let way = self.point_within(spot, values, depth + 1)
                    - self.point_within(at, values, depth + 1);
                way * (1.0 / way.size())
            }
            Bearing::Along { body, leg, onward } => along(*body, *leg, *onward),
            Bearing::Across { body, leg, left } => {
                let quarter = along(*body, *leg, true).quarter_turn();
                if *left { quarter } else { quarter * -1.0 }
            }
            Bearing::FromLeg {
                angle,
                body,
                leg,
                onward,
                left,
            } => {
                let from = along(*body, *leg, *onward);
                // From the onward direction the left lies anticlockwise, from the other clockwise.
                let turn = if left == onward {
                    values[angle.0]
                } else {
                    -values[angle.0]
                };
                let (sine, cosine) = (libm::sin(turn), libm::cos(turn));
                Vector::new(
                    from.x * cosine - from.y * sine,
                    from.x * sine + from.y * cosine,
                )
            }
        }
    }
}
