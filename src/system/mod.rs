//! Bodies in the plane in general: everything that a free-body diagram can say.
//!
//! A [`System`] is rigid bodies (straight, bent, or only a knot where forces meet), what acts on
//! them, and what is asked. It says relations, not only numbers: a rope is tied two thirds along
//! a leg, a contact pushes across a beam, a ladder's foot stands where the wall's corner is. So it
//! can be evaluated at any choice of its givens ([`System::values`] is the printed one).
//!
//! A system is valid by construction: [`System::new`] refuses what cannot be drawn, with every
//! flaw at once. Whether its forces can be found is for `statics` to say.

mod act;
mod asked;
mod bearing;
mod body;
mod check;
mod check_reach;
mod check_ropes;
mod check_shapes;
mod check_sought;
mod fault;
mod guided;
mod lamina;
mod page;
mod shape;
mod spot;

pub use act::{
    Act, ActId, Cord, CordEnd, Effect, Friction, Hold, HoldKind, Line, Load, LoadKind, Size,
    Turning, Weight, WeightKind,
};
pub use asked::{Asked, Sought, When};
pub use bearing::Bearing;
pub use body::{Body, BodyId, Leg};
pub use fault::Fault;
pub use lamina::{Lamina, LaminaMass};
pub use shape::{Facing, Piece, Shape};
pub use spot::{Coordinate, Spot};

use crate::problem::{Given, GivenId};

/// A system of bodies in equilibrium.
#[derive(Clone, Debug, PartialEq)]
pub struct System {
    parts: Parts,
}

/// Everything a system is made of, as its author gives it.
#[derive(Clone, Debug, PartialEq)]
pub struct Parts {
    /// One line that names the problem.
    pub title: String,
    /// The scene in words, with every given that is printed.
    pub statement: String,
    /// Words of caution shown with the problem.
    pub caution: String,
    /// The numbers that are given, in the order in which they are told.
    pub givens: Vec<Given>,
    /// The bodies. One may start at a spot of another that stands before it.
    pub bodies: Vec<Body>,
    /// Own weights: of a uniform body one at its middle, of a bent one often one a leg.
    pub weights: Vec<Weight>,
    /// What the bodies carry.
    pub loads: Vec<Load>,
    /// Ropes: each pulls with one tension at every place where it is listed.
    pub cords: Vec<Cord>,
    /// What holds the bodies, or joins two of them.
    pub holds: Vec<Hold>,
    /// What is asked, in order.
    pub asked: Vec<Asked>,
    /// A given that is to be found from a condition, if one is.
    pub sought: Option<Sought>,
    /// Size of the acceleration of free fall that the problem is told with, in m/s².
    pub gravity: f64,
    /// Other sizes that count as right, each with a remark, in m/s².
    pub accepted_gravity: Vec<f64>,
    /// Significant figures in which results are told and asked.
    pub figures: u8,
}

impl System {
    /// A checked system.
    ///
    /// # Errors
    /// Every fault at once.
    pub fn new(parts: Parts) -> Result<System, Vec<Fault>> {
        let faults = check::faults(&parts);
        if faults.is_empty() {
            Ok(System { parts })
        } else {
            Err(faults)
        }
    }

    /// What cannot be drawn of parts among which some may be missing or at fault: holes outside,
    /// shapes that overlap, ropes that point at themselves, places off their legs. Nothing where
    /// the parts rest on one of the `unread` numbers.
    pub(crate) fn undrawable(parts: &Parts, unread: &[GivenId]) -> Vec<Fault> {
        check::undrawable(parts, unread)
    }

    /// What would be at fault if what is sought had this value, found up to `slack`: a place off
    /// its part, a hole beyond its plate, a length below nothing.
    pub(crate) fn fault_at(&self, value: f64, slack: f64) -> Option<Fault> {
        let near = [value, value - slack, value + slack];
        let mut faults = near
            .iter()
            .map(|value| check_sought::fault_at(&self.parts, *value));
        let first = faults.next()??;
        faults.all(|fault| fault.is_some()).then_some(first)
    }

    /// Everything it is made of.
    pub fn parts(&self) -> &Parts {
        &self.parts
    }

    /// The given numbers.
    pub fn givens(&self) -> &[Given] {
        &self.parts.givens
    }

    /// One of the given numbers.
    pub fn given(&self, id: GivenId) -> &Given {
        &self.parts.givens[id.0]
    }

    /// The values of the givens as printed, in SI, in the order of [`System::givens`]. That of a
    /// given that is sought is the middle of its range.
    pub fn values(&self) -> Vec<f64> {
        let mut values: Vec<f64> = self.parts.givens.iter().map(|given| given.value).collect();
        if let Some(sought) = &self.parts.sought
            && let Some(value) = values.get_mut(sought.given.0)
        {
            *value = 0.5 * (sought.low + sought.high);
        }
        values
    }

    /// The acceleration of free fall in m/s².
    pub fn gravity(&self) -> f64 {
        self.parts.gravity
    }

    /// Significant figures asked.
    pub fn figures(&self) -> u8 {
        self.parts.figures
    }
}
