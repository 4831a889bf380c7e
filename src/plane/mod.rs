//! The flat world: points, vectors, angles and moments.
//!
//! Signs, once for the whole program: x to the right, y up, angles from the x axis and moments
//! positive anticlockwise. A learner's own conventions are met in `judge`, not here.

use std::ops::{Add, Mul, Sub};

/// A point or a free vector in the plane, in metres or newtons as its owner says.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Vector {
    /// Part to the right.
    pub x: f64,
    /// Part upwards.
    pub y: f64,
}

impl Vector {
    /// The vector with these parts.
    pub const fn new(x: f64, y: f64) -> Vector {
        Vector { x, y }
    }

    /// The unit vector at this angle, anticlockwise from the x axis, in radians.
    pub fn at_angle(angle: f64) -> Vector {
        Vector::new(libm::cos(angle), libm::sin(angle))
    }

    /// Length of the vector.
    pub fn size(self) -> f64 {
        libm::hypot(self.x, self.y)
    }

    /// Scalar product.
    pub fn dot(self, other: Vector) -> f64 {
        self.x * other.x + self.y * other.y
    }

    /// The part of the vector product out of the plane: positive when `other` lies
    /// anticlockwise of `self`.
    pub fn cross(self, other: Vector) -> f64 {
        self.x * other.y - self.y * other.x
    }

    /// The vector turned by a quarter anticlockwise.
    pub fn quarter_turn(self) -> Vector {
        Vector::new(-self.y, self.x)
    }

    /// Angle from the x axis, anticlockwise, in radians, from −π to π.
    pub fn angle(self) -> f64 {
        libm::atan2(self.y, self.x)
    }
}

impl Add for Vector {
    type Output = Vector;
    fn add(self, other: Vector) -> Vector {
        Vector::new(self.x + other.x, self.y + other.y)
    }
}

impl Sub for Vector {
    type Output = Vector;
    fn sub(self, other: Vector) -> Vector {
        Vector::new(self.x - other.x, self.y - other.y)
    }
}

impl Mul<f64> for Vector {
    type Output = Vector;
    fn mul(self, factor: f64) -> Vector {
        Vector::new(self.x * factor, self.y * factor)
    }
}

/// Moment about `pivot` of a force that acts at `at`: anticlockwise positive, in N m for
/// newtons and metres.
pub fn moment(pivot: Vector, at: Vector, force: Vector) -> f64 {
    (at - pivot).cross(force)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_weight_right_of_the_pivot_turns_clockwise() {
        let turned = moment(
            Vector::new(0.0, 0.0),
            Vector::new(2.0, 1.0),
            Vector::new(0.0, -10.0),
        );
        assert_eq!(turned, -20.0);
    }
}
