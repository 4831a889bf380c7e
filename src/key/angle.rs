//! Angles as sums: a fixed number of degrees plus and minus angles that are known.
//!
//! Kept as sums, "180° − (90° − θ + β)" becomes "90° + θ − β", as a person would write it.

use super::{Atom, Formula};

/// A fixed angle plus signed angles; `S` names the steps of the key that they may be of.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct AngleSum<S> {
    pub(crate) degrees: f64,
    pub(crate) parts: Vec<(f64, Atom<S>)>,
}

impl<S: Copy + PartialEq> AngleSum<S> {
    /// So many degrees.
    pub(crate) fn fixed(degrees: f64) -> AngleSum<S> {
        AngleSum {
            degrees,
            parts: Vec::new(),
        }
    }

    /// An angle that is known.
    pub(crate) fn angle(atom: Atom<S>) -> AngleSum<S> {
        AngleSum {
            degrees: 0.0,
            parts: vec![(1.0, atom)],
        }
    }

    /// This and a multiple of another.
    #[must_use]
    pub(crate) fn plus(mut self, factor: f64, other: &AngleSum<S>) -> AngleSum<S> {
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

    /// Value in radians; not a number where an angle has no value.
    pub(crate) fn value(&self, atom: &dyn Fn(&Atom<S>) -> Option<f64>) -> f64 {
        self.parts
            .iter()
            .fold(self.degrees.to_radians(), |sum, (sign, one)| {
                sum + sign * atom(one).unwrap_or(f64::NAN)
            })
    }

    /// The fixed degrees, where nothing else is in it.
    pub(crate) fn fixed_degrees(&self) -> Option<f64> {
        self.parts.is_empty().then_some(self.degrees)
    }

    /// As a formula: the fixed part first unless it is taken away, positive angles before negative.
    pub(crate) fn formula(&self) -> Formula<S> {
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
