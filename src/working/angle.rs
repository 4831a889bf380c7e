//! Directions as sums: a fixed number of degrees plus and minus angles that are known.
//!
//! Kept as sums, "180° − (90° − θ + β)" becomes "90° + θ − β", as a person would write it.

use super::{Expression, Quantity};
use crate::key::{Atom, Formula};
use std::f64::consts::PI;

/// A direction, anticlockwise from the x axis.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Turn {
    degrees: f64,
    parts: Vec<(f64, Atom<Quantity>)>,
}

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
    pub(super) fn fixed(degrees: f64) -> Turn {
        Turn {
            degrees,
            parts: Vec::new(),
        }
    }

    pub(super) fn angle(atom: Atom<Quantity>) -> Turn {
        Turn {
            degrees: 0.0,
            parts: vec![(1.0, atom)],
        }
    }

    pub(super) fn plus(mut self, factor: f64, other: &Turn) -> Turn {
        self.degrees += factor * other.degrees;
        for (sign, atom) in &other.parts {
            match self.parts.iter_mut().find(|(_, known)| known == atom) {
                Some((known, _)) => *known += factor * sign,
                None => self.parts.push((factor * sign, *atom)),
            }
        }
        self.parts.retain(|(sign, _)| *sign != 0.0);
        self
    }

    /// Value in radians.
    pub(super) fn value(&self, atom: &dyn Fn(&Atom<Quantity>) -> Option<f64>) -> f64 {
        self.parts
            .iter()
            .fold(self.degrees.to_radians(), |sum, (sign, one)| {
                sum + sign * atom(one).unwrap_or(f64::NAN)
            })
    }

    /// The same direction with whole turns taken away at these values.
    fn within(mut self, whole: f64, atom: &dyn Fn(&Atom<Quantity>) -> Option<f64>) -> Turn {
        let value = self.value(atom);
        if value.is_finite() {
            let radians = whole.to_radians();
            self.degrees -= whole * libm::floor(value / radians + 1e-12);
        }
        self
    }

    /// True if no angle of the problem is in it.
    pub(super) fn is_fixed(&self) -> bool {
        self.parts.is_empty()
    }

    /// The fixed degrees, where nothing else is in it.
    pub(super) fn fixed_degrees(&self) -> Option<f64> {
        self.is_fixed().then_some(self.degrees)
    }

    /// Steepness and sides.
    pub(super) fn slope(&self, atom: &dyn Fn(&Atom<Quantity>) -> Option<f64>) -> Slope {
        let turn = self.clone().within(360.0, atom);
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

    /// As a formula: the fixed part first unless it vanishes, positive angles before negative.
    pub(super) fn formula(&self) -> Expression {
        let mut parts = Vec::new();
        if self.degrees > 0.0 {
            parts.push(Formula::Degrees(self.degrees));
        }
        for wanted in [true, false] {
            for (sign, atom) in self
                .parts
                .iter()
                .filter(|(sign, _)| (*sign > 0.0) == wanted)
            {
                let angle = Formula::Atom(*atom);
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
        if self.degrees < 0.0 {
            parts.push(Formula::Negative(Box::new(Formula::Degrees(-self.degrees))));
        }
        match parts.len() {
            0 => Formula::Degrees(0.0),
            1 => parts.remove(0),
            _ => Formula::Sum(parts),
        }
    }
}
