//! Directions, anticlockwise from the x axis, as sums of angles.

use super::{Expression, Quantity};
use crate::key::{AngleSum, Atom, Formula};
use std::f64::consts::PI;

/// A direction, anticlockwise from the x axis.
pub(super) type Turn = AngleSum<Quantity>;

/// A direction by its steepness: the angle with the horizontal, and the signs of its parts.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Slope {
    /// The angle with the horizontal, from 0 to 90° at the printed values.
    pub(super) angle: Turn,
    /// +1 to the right, −1 to the left, 0 where it is upright whatever the numbers.
    pub(super) right: f64,
    /// +1 up, −1 down, 0 where it is level whatever the numbers.
    pub(super) up: f64,
}

impl Turn {
    /// The same direction with whole turns taken away at these values.
    fn within(mut self, whole: f64, atom: &dyn Fn(&Atom<Quantity>) -> Option<f64>) -> Turn {
        let value = self.value(atom);
        if value.is_finite() {
            let radians = whole.to_radians();
            self.degrees -= whole * libm::floor(value / radians + 1e-12);
        }
        self
    }

    /// Steepness and sides.
    pub(super) fn slope(&self, atom: &dyn Fn(&Atom<Quantity>) -> Option<f64>) -> Slope {
        let turn = self.clone().within(360.0, atom);
        let value = turn.value(atom);
        // What is level at these numbers and opposite to an angle is told by that angle.
        let opposite = turn.degrees == 0.0 && turn.parts.iter().all(|(sign, _)| *sign < 0.0);
        let turn = match value <= 1e-9 && opposite && !turn.parts.is_empty() {
            true => Turn::fixed(360.0).plus(1.0, &turn),
            false => turn,
        };
        let value = turn.value(atom);
        let (angle, right, up) = if value <= 0.5 * PI {
            (turn, 1.0, 1.0)
        } else if value <= PI {
            (Turn::fixed(180.0).plus(-1.0, &turn), -1.0, 1.0)
        } else if value <= 1.5 * PI {
            (turn.plus(-1.0, &Turn::fixed(180.0)), -1.0, -1.0)
        } else {
            (Turn::fixed(360.0).plus(-1.0, &turn), 1.0, -1.0)
        };
        let fixed = angle.fixed_degrees();
        Slope {
            right: if fixed == Some(90.0) { 0.0 } else { right },
            up: if fixed == Some(0.0) { 0.0 } else { up },
            angle,
        }
    }

    /// The angle between two lines, from 0 to 90° at these values.
    pub(super) fn between(
        &self,
        other: &Turn,
        atom: &dyn Fn(&Atom<Quantity>) -> Option<f64>,
    ) -> Turn {
        let turn = self.clone().plus(-1.0, other).within(180.0, atom);
        if turn.value(atom) > 0.5 * PI + 1e-12 {
            Turn::fixed(180.0).plus(-1.0, &turn)
        } else {
            turn
        }
    }

    /// Its cosine, as the sine of what it lacks to a right angle where that is simpler.
    pub(super) fn cosine(&self) -> Expression {
        match self.lacking() {
            Some(other) => Formula::Sine(Box::new(other.formula())),
            None => Formula::Cosine(Box::new(self.formula())),
        }
    }

    /// Its sine, as the cosine of what it lacks to a right angle where that is simpler.
    pub(super) fn sine(&self) -> Expression {
        match self.lacking() {
            Some(other) => Formula::Cosine(Box::new(other.formula())),
            None => Formula::Sine(Box::new(self.formula())),
        }
    }

    /// For 90° − θ the θ.
    fn lacking(&self) -> Option<Turn> {
        let one = self.degrees == 90.0 && self.parts.len() == 1 && self.parts[0].0 < 0.0;
        one.then(|| Turn::fixed(90.0).plus(-1.0, self))
    }
}
