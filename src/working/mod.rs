//! The right working of a system of bodies: by a method, about a pivot.
//!
//! A [`Working`] is balances in an order in which each can be worked by hand, with the quantities
//! that they need on the way (weights, angles, components or arms) and those that they give. Every
//! quantity has a formula tree, so that it can be told in names and in numbers and evaluated at any
//! choice of the givens.
//!
//! Four methods: components across the body, lever arms, coordinates (x·Fy − y·Fx). Where one is
//! not defined for a force (components across a body that the pivot does not lie on), coordinates
//! take its place. A body under three forces can be worked by their triangle too. All methods and all pivots give the same forces.

mod angle;
mod build;
mod corners;
mod evaluate;
mod figures;
mod force;
mod gather;
mod grip;
mod lamina;
mod level;
mod meeting;
mod moments;
mod order;
mod parts_asked;
mod pivot;
mod place;
mod resultant;
mod seek;
mod sense;
mod settled;
mod sides;
mod taken;
mod tell;
mod tell_triangle;
mod triangle;
mod triangle_parts;
mod triangle_sought;
mod trouble;
mod walk;
mod walk_heading;
mod walk_lengths;
mod walk_others;
mod walk_sampling;
mod walk_ways;
mod why;

pub use build::derive;
pub use figures::shows_more;
pub use lamina::{centres, only_laminae};
pub use sense::{Sense, Way};
pub use settled::{Settled, settle};
pub use taken::Taken;
pub use tell::{Told, spot_act, spot_name, told};
pub use triangle::Section;
pub use trouble::Underivable;
pub use walk::{Walk, walk};
pub use walk_others::{But, OtherValue};
pub use why::{why, why_unsolvable};

use crate::key::{Axis, Formula};
use crate::problem::GivenId;
use crate::system::{ActId, BodyId, Spot};
use crate::text::Symbol;
use crate::units::Dimension;

/// How moments are worked out.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Method {
    /// A force's component across the body times the distance along it.
    Components,
    /// A force times the perpendicular distance of its line from the pivot.
    LeverArms,
    /// x·Fy − y·Fx from the pivot.
    Coordinates,
    /// The triangle of three forces whose lines meet in one point.
    Triangle,
}

/// Which quantity of a working: its place in [`Working::quantities`].
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Quantity(pub usize);

/// A formula over givens and quantities of a working.
pub type Expression = Formula<Quantity>;

/// What a quantity is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Meaning {
    /// A weight, m·g.
    Weight(ActId),
    /// The area of a piece of a lamina, or of the whole.
    Area(ActId),
    /// The mass of a lamina.
    Mass(ActId),
    /// Where the centroid of a piece of a lamina lies along an axis of its body.
    PieceAt(ActId, Axis),
    /// Where the centre of mass of a lamina lies along an axis of its body: along its first leg,
    /// or to the left of it.
    CentreAt(ActId, Axis),
    /// The resultant of a spread load.
    Resultant(ActId),
    /// The distance of a spread load's resultant from the beginning of its leg.
    ResultantAt(ActId),
    /// The angle of a line with the horizontal.
    Slope(ActId),
    /// The angle between a force's line and the body.
    Angle(ActId),
    /// The component of a force across the body.
    Across(ActId),
    /// The perpendicular distance of a force's line from the pivot.
    Arm(ActId),
    /// The component of a force along a leg.
    Along(ActId),
    /// The size of a force's part along an axis.
    Part(ActId, Axis),
    /// Limiting friction, or friction by the triangle of forces.
    Friction(ActId),
    /// The push of a contact, by the triangle of forces.
    Push(ActId),
    /// The resultant of given forces, or a part of it.
    Sum,
    /// Where that resultant acts.
    SumAt,
    /// A coordinate of the point in which three lines meet.
    Meeting,
    /// The angle of the triangle of forces opposite to a force.
    Corner(ActId),
    /// The size of a base's couple when the push acts at its edge.
    AtEdge(ActId),
    /// The given that is sought.
    Sought,
    /// An unknown force along a known line.
    Force(ActId),
    /// A part of an unknown force, right or up positive.
    Component(ActId, Axis),
    /// Friction that is to be found, to the left of one who looks along the push.
    FrictionNeeded(ActId),
    /// An unknown couple, anticlockwise positive.
    Couple(ActId),
    /// The size of a force with two parts.
    Size(ActId),
    /// The angle of its line with the horizontal, from 0° to 90°.
    Direction(ActId),
}

/// How a quantity's value comes about.
#[derive(Clone, Debug, PartialEq)]
pub enum Rule {
    /// A formula.
    Formula(Expression),
    /// One of the unknowns of the stage at this place.
    Solved(usize),
    /// The given that is sought, at the value for which its condition holds.
    Given(GivenId),
}

/// A quantity of a working.
#[derive(Clone, Debug, PartialEq)]
pub struct Named {
    /// Its name.
    pub symbol: Symbol,
    /// Its dimension.
    pub dimension: Dimension,
    /// What it is.
    pub meaning: Meaning,
    /// How its value comes about.
    pub rule: Rule,
}

/// How a balance is taken.
#[derive(Clone, Debug, PartialEq)]
pub enum Kind {
    /// Moments about a spot, anticlockwise positive.
    Moments(Spot),
    /// Forces along an axis, right or up positive.
    Forces(Axis),
    /// Forces along a leg, onward positive, or across it, left positive.
    Tilted {
        /// The body.
        body: BodyId,
        /// Which of its legs.
        leg: usize,
        /// True for across.
        across: bool,
    },
}

/// One term of a balance.
#[derive(Clone, Debug, PartialEq)]
pub struct Term {
    /// What it comes from.
    pub act: ActId,
    /// +1 where it turns anticlockwise, or points right or up; −1 else. An unknown that comes out
    /// negative points the other way.
    pub sign: f64,
    /// Its size.
    pub amount: Expression,
}

/// A sum of terms that must vanish, for some of the bodies together.
#[derive(Clone, Debug, PartialEq)]
pub struct Balance {
    /// How it is taken.
    pub kind: Kind,
    /// For which bodies.
    pub bodies: Vec<BodyId>,
    /// Its terms.
    pub terms: Vec<Term>,
    /// The unknowns of these bodies that do not stand in it.
    pub removed: Vec<Quantity>,
}

/// A part of a working: what is needed, the balances, and the unknowns that they give together.
#[derive(Clone, Debug, PartialEq)]
pub struct Stage {
    /// Quantities that its balances need, in order.
    pub needs: Vec<Quantity>,
    /// Its balances: one, or as many as it has unknowns.
    pub balances: Vec<Balance>,
    /// What they give.
    pub unknowns: Vec<Quantity>,
}

impl Stage {
    /// The bodies that its balances are for, in the order in which they come.
    pub fn bodies(&self) -> Vec<BodyId> {
        let mut bodies = Vec::new();
        for body in self.balances.iter().flat_map(|balance| &balance.bodies) {
            if !bodies.contains(body) {
                bodies.push(*body);
            }
        }
        bodies
    }
}

/// The centre of mass of a lamina, worked out.
#[derive(Clone, Debug, PartialEq)]
pub struct Centre {
    /// Its weight.
    pub act: ActId,
    /// What is worked out of each of its pieces, or known of it, in order.
    pub pieces: Vec<Vec<Expression>>,
    /// The sums over all pieces.
    pub sums: Vec<Quantity>,
}

/// The right working by one method.
#[derive(Clone, Debug, PartialEq)]
pub struct Working {
    /// The method asked for.
    pub method: Method,
    /// Every quantity.
    pub quantities: Vec<Named>,
    /// What holds when what is sought just happens: limiting friction, a force at its limit.
    pub conditions: Vec<Quantity>,
    /// The part of a force at its limit that the limit leaves beside its other part.
    pub left: Option<Quantity>,
    /// The given that is sought, where a stage finds it.
    pub sought: Option<(Quantity, GivenId)>,
    /// The parts of a working by the triangle of forces.
    pub triangle: Vec<Section>,
    /// Centres of mass that the stages need, worked out before them.
    pub centres: Vec<Centre>,
    /// The stages in order.
    pub stages: Vec<Stage>,
    /// The level and upright parts that are asked.
    pub parts: Vec<(ActId, Axis, Quantity)>,
    /// Sizes and directions at the end, then parts that are asked and stand in no stage.
    pub results: Vec<Quantity>,
}

impl Working {
    /// A quantity.
    pub fn named(&self, id: Quantity) -> Option<&Named> {
        self.quantities.get(id.0)
    }

    /// The first quantity of this meaning.
    pub fn find(&self, meaning: Meaning) -> Option<Quantity> {
        let index = self
            .quantities
            .iter()
            .position(|one| one.meaning == meaning)?;
        Some(Quantity(index))
    }

    /// True if what is sought is used in the working and nothing before gives it.
    fn is_by_trial(&self, sought: GivenId) -> bool {
        if self.sought.is_some() || self.method == Method::Triangle {
            return false;
        }
        let formulas = self
            .quantities
            .iter()
            .filter_map(|named| match &named.rule {
                Rule::Formula(formula) => Some(formula),
                _ => None,
            });
        let balances = self.stages.iter().flat_map(|stage| &stage.balances);
        let amounts = balances.flat_map(|balance| balance.terms.iter().map(|term| &term.amount));
        // A coefficient that another contact shares stands in the working before the end.
        self.find(Meaning::Sought).is_none()
            || formulas.chain(amounts).any(|formula| formula.holds(sought))
    }
}
