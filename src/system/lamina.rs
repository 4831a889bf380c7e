//! Laminae: bodies cut of named shapes, some of which are holes.

use super::{Fault, Piece, System};
use crate::plane::Vector;
use crate::problem::GivenId;

/// What is known of a lamina's mass.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LaminaMass {
    /// The mass of the whole, holes taken away; it is shared out by area.
    Whole(GivenId),
    /// The mass of every square metre.
    PerArea(GivenId),
    /// Every piece has a mass of its own; that of a hole is taken away.
    OfPieces,
}

/// A flat body of named shapes.
///
/// Its axes are the body's: from where the body begins, x along its first leg and y to the left of
/// it; for a body without legs, x to the right and y up.
#[derive(Clone, Debug, PartialEq)]
pub struct Lamina {
    /// Its shapes and holes.
    pub pieces: Vec<Piece>,
    /// What is known of its mass.
    pub mass: LaminaMass,
}

impl Lamina {
    /// How much a piece counts: its mass where each has one, else its area; negative for a hole.
    fn share(&self, piece: &Piece, values: &[f64]) -> f64 {
        let amount = match self.mass {
            LaminaMass::OfPieces => piece.mass.map_or(f64::NAN, |mass| values[mass.0]),
            LaminaMass::Whole(_) | LaminaMass::PerArea(_) => piece.area(values),
        };
        if piece.hole { -amount } else { amount }
    }

    /// Its mass in kilograms.
    pub fn mass(&self, values: &[f64]) -> f64 {
        let shares = || -> f64 {
            let pieces = self.pieces.iter();
            pieces.map(|piece| self.share(piece, values)).sum()
        };
        match self.mass {
            LaminaMass::Whole(mass) => values[mass.0],
            LaminaMass::PerArea(density) => values[density.0] * shares(),
            LaminaMass::OfPieces => shares(),
        }
    }

    /// Its centre of mass in the body's axes, in metres.
    pub fn centre(&self, values: &[f64]) -> Vector {
        let mut whole = 0.0;
        let mut sum = Vector::default();
        for piece in &self.pieces {
            let share = self.share(piece, values);
            whole += share;
            sum = sum + piece.centroid(values) * share;
        }
        sum * (1.0 / whole)
    }

    /// What cannot be cut so.
    pub(super) fn faults(&self, noun: &str, values: &[f64]) -> Vec<Fault> {
        let what = |piece: &Piece| piece.noun.clone();
        let (holes, solid): (Vec<&Piece>, Vec<&Piece>) =
            self.pieces.iter().partition(|piece| piece.hole);
        let area = |pieces: &[&Piece]| -> f64 { pieces.iter().map(|one| one.area(values)).sum() };
        let mut faults = Vec::new();
        if solid.is_empty() {
            let what = noun.to_owned();
            return vec![Fault::AllHoles { what }];
        }
        for hole in &holes {
            let inside = |point: &Vector| solid.iter().any(|piece| piece.holds(*point, values));
            if hole.area(values) >= area(&solid) {
                faults.push(Fault::HoleTooLarge { what: what(hole) });
            } else if !hole.samples(values).iter().all(inside) {
                faults.push(Fault::HoleOutside { what: what(hole) });
            }
        }
        let mut overlapping = |pieces: &[&Piece]| {
            for (index, piece) in pieces.iter().enumerate() {
                let before = &pieces[..index];
                if before.iter().any(|other| piece.overlaps(other, values)) {
                    faults.push(Fault::Overlap { what: what(piece) });
                }
            }
        };
        overlapping(&holes);
        // Pieces with masses of their own may lie on each other.
        if self.mass != LaminaMass::OfPieces {
            overlapping(&solid);
        }
        let mass = self.mass(values);
        if faults.is_empty() && !(mass.is_finite() && mass > 0.0) {
            let what = noun.to_owned();
            faults.push(Fault::NoMass { what });
        }
        faults
    }
}

impl System {
    /// The lamina of the weight at this place, if it is one.
    pub fn lamina(&self, weight: usize) -> Option<&Lamina> {
        match &self.parts().weights.get(weight)?.kind {
            super::WeightKind::Lamina(lamina) => Some(lamina),
            super::WeightKind::Point { .. } => None,
        }
    }

    /// The centre of mass of the lamina of a weight, in metres.
    pub(super) fn lamina_centre(&self, weight: usize, values: &[f64], depth: usize) -> Vector {
        let (Some(lamina), Some(found)) = (self.lamina(weight), self.parts().weights.get(weight))
        else {
            return Vector::new(f64::NAN, f64::NAN);
        };
        let body = found.body;
        let start = self.body_start(body, values, depth);
        let along = match self.leg(body, 0) {
            Some(_) => self.leg_unit(body, 0, values, depth),
            None => Vector::new(1.0, 0.0),
        };
        let own = lamina.centre(values);
        start + along * own.x + along.quarter_turn() * own.y
    }
}
