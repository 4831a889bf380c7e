//! What is asked: a rigid body in the plane with its supports, ropes, loads and own weight, and
//! the numbers that are given.
//!
//! A problem is declarative and says *relations*, not only numbers: a weight acts at the middle,
//! a lamp hangs from the tip, a rope runs to the left. Numbers that may be drawn anew are
//! [`Given`]s; everything else follows from them. So the same problem can be evaluated at other
//! numbers ([`Problem::values`] is only the first choice), which is how a typed line is told
//! from one that agrees with it by chance.
//!
//! A problem is valid by construction: [`Problem::new`] refuses what cannot be drawn. Whether it
//! can be solved is for `statics` to say.

mod asking;
mod body;
mod check;
mod force;
mod given;

pub use asking::{Asking, FiguresAsked, UnitAsked};
pub use body::{
    Body, Direction, Load, LoadKind, Place, Reference, Rope, Side, Support, SupportKind, Tilt,
    Upright,
};
pub use check::Flaw;
pub use force::{Acting, Force, ForceId, Size};
pub use given::{Given, GivenId};

use crate::plane::Vector;
use crate::units::{Dimension, number_text};

/// A problem of planar statics with one straight body.
#[derive(Clone, Debug, PartialEq)]
pub struct Problem {
    parts: Parts,
    asking: Asking,
}

/// Everything a problem is made of, as its author gives it.
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
    /// The body that is in equilibrium.
    pub body: Body,
    /// What holds it.
    pub supports: Vec<Support>,
    /// Ropes that pull at it.
    pub ropes: Vec<Rope>,
    /// What it carries.
    pub loads: Vec<Load>,
    /// Size of the acceleration of free fall that the problem is told with, in m/s².
    pub gravity: f64,
    /// Other sizes that count as right, each with a remark, in m/s².
    pub accepted_gravity: Vec<f64>,
    /// Significant figures in which results are told and asked.
    pub figures: u8,
}

impl Problem {
    /// A checked problem.
    ///
    /// # Errors
    /// Every flaw at once: a place off the body, a size that is not positive and finite, a given
    /// that nothing uses, two forces of one name.
    pub fn new(parts: Parts) -> Result<Problem, Vec<Flaw>> {
        let flaws = check::flaws(&parts);
        if flaws.is_empty() {
            Ok(Problem::page(parts))
        } else {
            Err(flaws)
        }
    }

    /// The printed page of a problem whose bodies are told elsewhere: its words, its numbers, g and
    /// the figures asked. No force is known of it.
    pub(crate) fn page(parts: Parts) -> Problem {
        Problem {
            parts,
            asking: Asking::default(),
        }
    }

    /// One line that names the problem.
    pub fn title(&self) -> &str {
        &self.parts.title
    }

    /// The scene in words.
    pub fn statement(&self) -> &str {
        &self.parts.statement
    }

    /// Words of caution shown with the problem.
    pub fn caution(&self) -> &str {
        &self.parts.caution
    }

    /// The given numbers.
    pub fn givens(&self) -> &[Given] {
        &self.parts.givens
    }

    /// One of the given numbers.
    pub fn given(&self, id: GivenId) -> &Given {
        &self.parts.givens[id.0]
    }

    /// The values of the givens as printed, in SI, in the order of [`Problem::givens`].
    pub fn values(&self) -> Vec<f64> {
        self.parts.givens.iter().map(|given| given.value).collect()
    }

    /// The body.
    pub fn body(&self) -> &Body {
        &self.parts.body
    }

    /// The supports.
    pub fn supports(&self) -> &[Support] {
        &self.parts.supports
    }

    /// The ropes.
    pub fn ropes(&self) -> &[Rope] {
        &self.parts.ropes
    }

    /// The loads.
    pub fn loads(&self) -> &[Load] {
        &self.parts.loads
    }

    /// The acceleration of free fall in m/s².
    pub fn gravity(&self) -> f64 {
        self.parts.gravity
    }

    /// Other accelerations of free fall that count as right, in m/s².
    pub fn accepted_gravity(&self) -> &[f64] {
        &self.parts.accepted_gravity
    }

    /// Significant figures asked.
    pub fn figures(&self) -> u8 {
        self.parts.figures
    }

    /// The same problem in a class that asks this of answers.
    #[must_use]
    pub fn asking(self, asking: Asking) -> Problem {
        Problem { asking, ..self }
    }

    /// What is asked of answers beside their value.
    pub fn asks(&self) -> Asking {
        self.asking
    }

    /// All parts, for writing the problem down.
    pub fn parts(&self) -> &Parts {
        &self.parts
    }

    /// Angle of the body from the x axis, from its foot to its tip, anticlockwise, in radians.
    pub fn body_angle(&self, values: &[f64]) -> f64 {
        self.parts.body.angle(values)
    }

    /// Distance of a place from the foot along the body, in metres.
    pub fn distance(&self, place: Place, values: &[f64]) -> f64 {
        place.distance(self.parts.body.length, values)
    }

    /// A length in metres as the problem writes its lengths, with the unit: 2.0 m where another is
    /// 3.6 m.
    pub fn length_text(&self, metres: f64) -> String {
        let decimals = |text: &str| text.split_once('.').map_or(0, |(_, places)| places.len());
        let lengths = self.givens().iter().filter_map(|given| {
            let number = given.written.strip_suffix(" m")?;
            (given.dimension == Dimension::LENGTH).then(|| decimals(number))
        });
        let places = lengths.max().unwrap_or(0);
        let shortest = number_text(metres);
        if decimals(&shortest) < places {
            format!("{metres:.places$} m")
        } else {
            format!("{shortest} m")
        }
    }

    /// A place in the plane, in metres, with the foot of the body at the origin.
    pub fn point(&self, place: Place, values: &[f64]) -> Vector {
        Vector::at_angle(self.body_angle(values)) * self.distance(place, values)
    }
}
