//! Bodies in balance as bare geometry: known actions, unknown lines and couples.

use super::{Balance, Unsolvable, balance};
use crate::plane::{Vector, moment};

/// What acts on a body: a force at a point or a couple.
///
/// For a known load this is the whole action. For an unknown it is the action per unit of the
/// unknown's value, so an unknown along a unit vector has its value in newtons.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Action {
    /// On which body. Any number may name a body.
    pub body: usize,
    /// What it does there.
    pub acts: Acts,
}

/// A force at a point, or a couple.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Acts {
    /// A force along a line.
    Force {
        /// A point of the line, in metres.
        at: Vector,
        /// The force, in newtons, or its direction.
        force: Vector,
    },
    /// A couple, in newton metres, anticlockwise positive.
    Couple(f64),
}

impl Action {
    /// A force at a point of a body.
    pub fn force(body: usize, at: Vector, force: Vector) -> Action {
        Action {
            body,
            acts: Acts::Force { at, force },
        }
    }

    /// A couple on a body, anticlockwise positive.
    pub fn couple(body: usize, size: f64) -> Action {
        Action {
            body,
            acts: Acts::Couple(size),
        }
    }

    /// The force, zero for a couple.
    pub fn vector(&self) -> Vector {
        match self.acts {
            Acts::Force { force, .. } => force,
            Acts::Couple(_) => Vector::default(),
        }
    }

    /// Its moment about a point, anticlockwise positive.
    pub fn moment(&self, pivot: Vector) -> f64 {
        match self.acts {
            Acts::Force { at, force } => moment(pivot, at, force),
            Acts::Couple(size) => size,
        }
    }

    /// Where it acts, if it acts at a point.
    pub(super) fn at(&self) -> Option<Vector> {
        match self.acts {
            Acts::Force { at, .. } => Some(at),
            Acts::Couple(_) => None,
        }
    }

    pub(super) fn is_finite(&self) -> bool {
        match self.acts {
            Acts::Force { at, force } => [at.x, at.y, force.x, force.y]
                .iter()
                .all(|number| number.is_finite()),
            Acts::Couple(size) => size.is_finite(),
        }
    }
}

/// Which sign an unknown may have.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Sense {
    /// Either.
    Either,
    /// Not negative, since it is a rope along whose pull the action is given.
    Pull,
    /// Not negative, since it is a contact along whose push the action is given.
    Push,
}

/// An unknown: one column of the equations.
///
/// It may act on several bodies at once: a pin between two of them acts on the second with the
/// reverse of what it does to the first.
#[derive(Clone, Debug, PartialEq)]
pub struct UnknownColumn {
    /// Its name, by which its value is asked and by which messages speak of it.
    pub name: String,
    /// What it does per unit of its value.
    pub acts: Vec<Action>,
    /// Which sign it may have.
    pub sense: Sense,
}

impl UnknownColumn {
    /// An unknown force along a line through `at`, of either sign.
    pub fn along(name: impl Into<String>, body: usize, at: Vector, direction: Vector) -> Self {
        UnknownColumn {
            name: name.into(),
            acts: vec![Action::force(body, at, direction)],
            sense: Sense::Either,
        }
    }

    /// An unknown couple, anticlockwise positive.
    pub fn couple(name: impl Into<String>, body: usize) -> Self {
        UnknownColumn {
            name: name.into(),
            acts: vec![Action::couple(body, 1.0)],
            sense: Sense::Either,
        }
    }

    /// The same with a restriction of its sign.
    pub fn with_sense(mut self, sense: Sense) -> Self {
        self.sense = sense;
        self
    }
}

/// A further linear condition on the unknowns beside the balances, such as equal shares of two
/// hinges, or friction at its limit.
#[derive(Clone, Debug, PartialEq)]
pub struct Condition {
    /// Which unknown, by its place, and its factor.
    pub terms: Vec<(usize, f64)>,
    /// What the terms add up to.
    pub total: f64,
}

/// Rigid bodies with what acts on them. Each must be in balance: the sums of the horizontal
/// forces, of the vertical forces and of the moments about any point are zero.
///
/// ```
/// use leverwright::plane::Vector;
/// use leverwright::statics::{Action, Equilibrium, UnknownColumn};
///
/// // A light beam of 4 m on two props, 120 N at 1 m from the left.
/// let up = Vector::new(0.0, 1.0);
/// let mut beam = Equilibrium::new();
/// beam.load(Action::force(0, Vector::new(1.0, 0.0), Vector::new(0.0, -120.0)));
/// beam.unknown(UnknownColumn::along("left", 0, Vector::new(0.0, 0.0), up));
/// beam.unknown(UnknownColumn::along("right", 0, Vector::new(4.0, 0.0), up));
/// let balance = beam.solve()?;
/// assert!((balance.value("left").unwrap_or(0.0) - 90.0).abs() < 1e-9);
/// assert!((balance.value("right").unwrap_or(0.0) - 30.0).abs() < 1e-9);
/// # Ok::<(), leverwright::statics::Unsolvable>(())
/// ```
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Equilibrium {
    loads: Vec<Action>,
    unknowns: Vec<UnknownColumn>,
    conditions: Vec<Condition>,
}

impl Equilibrium {
    /// Nothing yet: no load, no unknown.
    pub fn new() -> Equilibrium {
        Equilibrium::default()
    }

    /// Adds a known force or couple.
    pub fn load(&mut self, action: Action) {
        self.loads.push(action);
    }

    /// Adds an unknown and tells its place among the unknowns.
    pub fn unknown(&mut self, column: UnknownColumn) -> usize {
        self.unknowns.push(column);
        self.unknowns.len() - 1
    }

    /// Adds a further condition. A term of an unknown that is not there counts for nothing.
    pub fn condition(&mut self, condition: Condition) {
        self.conditions.push(condition);
    }

    /// The known actions.
    pub fn loads(&self) -> &[Action] {
        &self.loads
    }

    /// The unknowns.
    pub fn unknowns(&self) -> &[UnknownColumn] {
        &self.unknowns
    }

    /// The further conditions.
    pub fn conditions(&self) -> &[Condition] {
        &self.conditions
    }

    /// Finds every unknown.
    ///
    /// Fewer unknowns than equations are no fault as long as the loads are in balance: a level
    /// beam on two props can slide, but vertical loads do not make it. What is free to move then
    /// is told by [`Balance::free_motions`].
    ///
    /// # Errors
    /// In this order: a number that is not finite; lines that nearly meet or are nearly parallel;
    /// loads that nothing holds; unknowns that equilibrium does not fix; a rope that would push
    /// or a contact that would pull (the first of them).
    pub fn solve(&self) -> Result<Balance, Unsolvable> {
        balance::solve(self)
    }

    /// The same with every unknown free in its sign.
    pub(super) fn with_any_sense(&self) -> Equilibrium {
        let mut free = self.clone();
        for unknown in &mut free.unknowns {
            unknown.sense = Sense::Either;
        }
        free
    }

    /// What is left of the forces (N) and of the moments about `pivot` (N m) on one body when the
    /// unknowns have these values: zero in balance.
    pub fn residual(&self, values: &[f64], body: usize, pivot: Vector) -> (Vector, f64) {
        let mut force = Vector::default();
        let mut turning = 0.0;
        let mut count = |action: &Action, factor: f64| {
            if action.body == body {
                force = force + action.vector() * factor;
                turning += action.moment(pivot) * factor;
            }
        };
        self.loads.iter().for_each(|action| count(action, 1.0));
        for (column, value) in self.unknowns.iter().zip(values) {
            column.acts.iter().for_each(|action| count(action, *value));
        }
        (force, turning)
    }
}
