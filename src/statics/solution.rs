//! The forces of a problem, found.

use super::assemble::{Assembled, BODY, Kind};
use super::{Balance, Equilibrium, Motion};
use crate::plane::Vector;
use crate::problem::ForceId;
use std::collections::BTreeMap;

/// Every force on the body of a problem, known or found.
#[derive(Clone, Debug, PartialEq)]
pub struct Solution {
    equilibrium: Equilibrium,
    balance: Balance,
    forces: BTreeMap<ForceId, Found>,
}

/// One force on the body.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Found {
    /// Where it acts, in metres from the foot of the body.
    pub at: Vector,
    /// The force on the body, in newtons.
    pub force: Vector,
    /// Its size in newtons: along its line where it has one, else its length.
    pub size: f64,
    /// The couple that comes with it, in newton metres, anticlockwise positive.
    pub couple: f64,
}

/// What is left of the balances: all zero but for rounding.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Residual {
    /// Sum of the forces, in newtons.
    pub force: Vector,
    /// Sum of the moments about the point asked for, in newton metres.
    pub moment: f64,
    /// The larger of the two without unit: forces over the largest force, moments also over the
    /// farthest distance of the point from a force.
    pub relative: f64,
}

impl Solution {
    pub(super) fn new(
        equilibrium: Equilibrium,
        balance: Balance,
        assembled: &[Assembled],
    ) -> Solution {
        let value = |index: usize| balance.values().get(index).copied().unwrap_or(0.0);
        let forces = assembled
            .iter()
            .map(|part| {
                let (force, size, couple) = match part.kind {
                    Kind::Known { size, direction } => (direction * size, size, 0.0),
                    Kind::Line { unknown, direction } => {
                        (direction * value(unknown), value(unknown), 0.0)
                    }
                    Kind::Point { right, up, couple } => {
                        let force = Vector::new(value(right), value(up));
                        (force, force.size(), couple.map_or(0.0, value))
                    }
                };
                let at = part.at;
                let found = Found {
                    at,
                    force,
                    size,
                    couple,
                };
                (part.id, found)
            })
            .collect();
        Solution {
            equilibrium,
            balance,
            forces,
        }
    }

    /// Everything about one force; `None` if the problem has no such force.
    pub fn found(&self, id: ForceId) -> Option<Found> {
        self.forces.get(&id).copied()
    }

    /// All forces, own weight first, then loads, ropes and supports.
    pub fn all(&self) -> impl Iterator<Item = (ForceId, Found)> + '_ {
        self.forces.iter().map(|(id, found)| (*id, *found))
    }

    /// The force on the body, in newtons; zero if the problem has no such force.
    pub fn force(&self, id: ForceId) -> Vector {
        self.found(id).unwrap_or_default().force
    }

    /// The size in newtons: for weights, loads, ropes and rollers along their line, positive as
    /// they should pull or push; for a hinge or a built-in end the length of its force.
    pub fn size(&self, id: ForceId) -> f64 {
        self.found(id).unwrap_or_default().size
    }

    /// The couple of a built-in end on the body, in newton metres, anticlockwise positive; zero
    /// for everything else.
    pub fn couple(&self, id: ForceId) -> f64 {
        self.found(id).unwrap_or_default().couple
    }

    /// Where a force acts, in metres, with the foot of the body at the origin.
    pub fn at(&self, id: ForceId) -> Vector {
        self.found(id).unwrap_or_default().at
    }

    /// What is left of the balances, moments taken about `pivot`.
    pub fn residual(&self, pivot: Vector) -> Residual {
        let values = self.balance.values();
        let (force, moment) = self.equilibrium.residual(values, BODY, pivot);
        let mut largest = self.balance.force_scale();
        let mut reach = self.balance.length_scale();
        for found in self.forces.values() {
            largest = largest.max(found.force.size());
            reach = reach.max((found.at - pivot).size());
        }
        Residual {
            force,
            moment,
            relative: (force.size() / largest).max(moment.abs() / (largest * reach)),
        }
    }

    /// Motions that nothing resists, though these loads do not cause them.
    pub fn free_motions(&self) -> &[Motion] {
        self.balance.free_motions()
    }

    /// The equations that were solved.
    pub fn equilibrium(&self) -> &Equilibrium {
        &self.equilibrium
    }

    /// The values of the unknowns of [`Solution::equilibrium`].
    pub fn balance(&self) -> &Balance {
        &self.balance
    }
}
