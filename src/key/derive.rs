//! Deriving the key of a problem by components across the body.

use super::formula::{difference, place_length};
use super::reactions;
use super::slope::{Slope, angle_with_body};
use super::step::{Axis, Balance, BalanceKind, Key, Part, Rule, Step, StepId, Term};
use super::{Atom, Formula, Role};
use crate::plane::{Vector, moment};
use crate::problem::{Acting, Direction, Force, ForceId, Place, Problem, Size, SupportKind};
use crate::text::Symbol;
use crate::units::Dimension;
use std::fmt;

/// Why no key can be derived.
#[derive(Clone, Debug, PartialEq)]
pub enum Underivable {
    /// The walk needs one hinge and one rope or roller; this is what was found.
    Supports {
        /// How many hinges.
        hinges: usize,
        /// How many ropes and rollers.
        lines: usize,
    },
    /// The pull's line passes through the pivot, so that moments cannot find it.
    ThroughPivot {
        /// The name of the pull.
        pull: String,
    },
}

impl fmt::Display for Underivable {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Underivable::Supports { hinges, lines } => write!(
                formatter,
                "the guided working needs one hinge and one rope or roller; this body has {hinges} and {lines}"
            ),
            Underivable::ThroughPivot { pull } => write!(
                formatter,
                "the line of {pull} passes through the hinge, so moments about the hinge cannot find it; tie it elsewhere"
            ),
        }
    }
}

/// The key of a problem: weights, angles, components across the body, moments about the hinge,
/// the pull, and then the hinge's force from the force balances.
///
/// # Errors
/// [`Underivable`], when the supports are not one hinge and one line of pull or push, or the pull
/// has no moment about the hinge.
pub fn derive(problem: &Problem) -> Result<Key, Underivable> {
    let hinges: Vec<usize> = (0..problem.supports().len())
        .filter(|index| problem.supports()[*index].kind == SupportKind::Hinge)
        .collect();
    let forces = problem.forces();
    let lines: Vec<&Force<'_>> = forces
        .iter()
        .filter(|force| force.size == Size::Unknown && force.acting != Acting::Anywhere)
        .collect();
    let ([hinge], [pull]) = (hinges.as_slice(), lines.as_slice()) else {
        return Err(Underivable::Supports {
            hinges: hinges.len(),
            lines: lines.len(),
        });
    };
    let hinge = ForceId::Support(*hinge);
    let builder = Builder::new(problem, &forces, problem.supports()[hinges[0]].at);
    if builder.turning(pull).is_none() {
        return Err(Underivable::ThroughPivot {
            pull: pull.symbol.to_string(),
        });
    }
    let mut steps = vec![
        builder.statement(StepId::Forces, "F"),
        builder.statement(StepId::Pivot, "P"),
    ];
    steps.extend(forces.iter().filter_map(|force| builder.weight(force)));
    steps.extend(forces.iter().filter_map(|force| builder.distance(force)));
    steps.extend(forces.iter().filter_map(|force| builder.angle(force)));
    steps.extend(forces.iter().filter_map(|force| builder.across(force)));
    steps.extend(forces.iter().filter_map(|force| builder.moment(force)));
    steps.extend(builder.moment_sum(pull));
    steps.extend(reactions::steps(&builder, hinge));
    Ok(Key {
        pivot: builder.pivot,
        steps,
        general: None,
    })
}

/// What the derivation keeps at hand.
pub(super) struct Builder<'a> {
    pub(super) problem: &'a Problem,
    pub(super) forces: &'a [Force<'a>],
    pub(super) values: Vec<f64>,
    pivot: Place,
}

impl<'a> Builder<'a> {
    fn new(problem: &'a Problem, forces: &'a [Force<'a>], pivot: Place) -> Builder<'a> {
        Builder {
            problem,
            forces,
            values: problem.values(),
            pivot,
        }
    }

    fn statement(&self, id: StepId, symbol: &str) -> Step {
        Step {
            id,
            symbol: Symbol::new(symbol),
            dimension: Dimension::NUMBER,
            rule: Rule::Statement,
            asked: true,
        }
    }

    fn weight(&self, force: &Force<'_>) -> Option<Step> {
        let Size::Weight(mass) = force.size else {
            return None;
        };
        let formula = Formula::given(mass)
            .times(Formula::Atom(Atom::Gravity))
            .tagged(Role::Weight(force.id));
        Some(Step {
            id: StepId::Weight(force.id),
            symbol: force.symbol.clone(),
            dimension: Dimension::FORCE,
            rule: Rule::Formula(formula),
            asked: true,
        })
    }

    /// The size of a force: its weight step, its given, or the pull that is looked for.
    pub(super) fn size(&self, force: &Force<'_>) -> Formula {
        match force.size {
            Size::Weight(_) => Formula::step(StepId::Weight(force.id)),
            Size::Given(given) => Formula::given(given),
            Size::Unknown => Formula::step(StepId::Pull(force.id)),
        }
    }

    pub(super) fn direction(force: &Force<'_>) -> Option<Direction> {
        match force.acting {
            Acting::Along(direction) => Some(direction),
            Acting::Anywhere => None,
        }
    }

    /// +1 where the force turns the body anticlockwise about the pivot, −1 where clockwise,
    /// `None` where it does not turn it.
    fn turning(&self, force: &Force<'_>) -> Option<f64> {
        let direction = Self::direction(force)?;
        let body = self.problem.body();
        let at = self.problem.point(force.at, &self.values);
        let pivot = self.problem.point(self.pivot, &self.values);
        let unit: Vector = direction.unit(body, &self.values);
        let turned = moment(pivot, at, unit);
        (turned.abs() > 1e-9).then(|| turned.signum())
    }

    fn distance(&self, force: &Force<'_>) -> Option<Step> {
        self.turning(force)?;
        let (at, pivot) = (self.along(force.at), self.along(self.pivot));
        let formula = match self.pivot {
            Place::Foot => at,
            _ => {
                let further = self.problem.distance(force.at, &self.values)
                    > self.problem.distance(self.pivot, &self.values);
                let (far, near) = if further { (at, pivot) } else { (pivot, at) };
                difference(far, near)
            }
        };
        Some(Step {
            id: StepId::Distance(force.id),
            symbol: Symbol::new(format!("d_{}", suffix(force.symbol))),
            dimension: Dimension::LENGTH,
            rule: Rule::Formula(formula),
            asked: false,
        })
    }

    /// Distance of a place from the foot.
    fn along(&self, place: Place) -> Formula {
        place_length(place, self.problem.body().length)
    }

    /// The angle between a force's line and the body, unless it is always a right angle.
    fn oblique(&self, force: &Force<'_>) -> Option<Slope> {
        let slope = angle_with_body(Self::direction(force)?, self.problem.body(), &self.values);
        (!slope.is_right_angle()).then_some(slope)
    }

    /// The force whose angle step serves this one: upright forces share the first one's.
    fn angle_owner(&self, force: &Force<'_>) -> ForceId {
        let upright = |force: &Force<'_>| Self::direction(force).is_some_and(Direction::is_upright);
        if upright(force) {
            let first = self
                .forces
                .iter()
                .find(|other| upright(other) && self.turning(other).is_some());
            return first.map_or(force.id, |first| first.id);
        }
        force.id
    }

    fn angle(&self, force: &Force<'_>) -> Option<Step> {
        self.turning(force)?;
        let slope = self.oblique(force)?;
        if self.angle_owner(force) != force.id {
            return None;
        }
        let is_pull = force.size == Size::Unknown;
        let upright = Self::direction(force).is_some_and(Direction::is_upright);
        let wanted: &[&str] = match (upright, is_pull) {
            (true, _) => &["α", "α_W"],
            (false, true) => &["γ", "γ_T"],
            (false, false) => &["δ", "φ"],
        };
        let taken = |name: &str| {
            self.problem
                .givens()
                .iter()
                .any(|given| given.symbol.as_str() == name)
        };
        let name = wanted
            .iter()
            .find(|name| !taken(name))
            .copied()
            .unwrap_or("ψ_1");
        let name = match force.id {
            ForceId::Load(index) if !upright && index > 0 => format!("{name}_{}", index + 1),
            _ => name.to_owned(),
        };
        Some(Step {
            id: StepId::Angle(force.id),
            symbol: Symbol::new(name),
            dimension: Dimension::ANGLE,
            rule: Rule::Formula(slope.formula()),
            asked: true,
        })
    }

    fn across(&self, force: &Force<'_>) -> Option<Step> {
        self.turning(force)?;
        self.oblique(force)?;
        let angle = Formula::step(StepId::Angle(self.angle_owner(force)));
        let ratio = Formula::Sine(Box::new(angle)).tagged(Role::Ratio(force.id));
        Some(Step {
            id: StepId::Across(force.id),
            symbol: Symbol::new(format!("{}⊥", force.symbol.as_str())),
            dimension: Dimension::FORCE,
            rule: Rule::Formula(self.size(force).times(ratio)),
            asked: true,
        })
    }

    /// The size of a force's moment: across times distance.
    fn amount(&self, force: &Force<'_>) -> Option<Formula> {
        self.turning(force)?;
        let across = match self.oblique(force) {
            Some(_) => Formula::step(StepId::Across(force.id)),
            None => self.size(force),
        };
        Some(
            across
                .times(Formula::step(StepId::Distance(force.id)).tagged(Role::Distance(force.id))),
        )
    }

    fn moment(&self, force: &Force<'_>) -> Option<Step> {
        Some(Step {
            id: StepId::Moment(force.id),
            symbol: Symbol::new(format!("M_{}", suffix(force.symbol))),
            dimension: Dimension::MOMENT,
            rule: Rule::Formula(self.amount(force)?),
            asked: false,
        })
    }

    fn moment_sum(&self, pull: &Force<'_>) -> [Step; 3] {
        let terms = self
            .forces
            .iter()
            .filter_map(|force| {
                Some(Term {
                    force: force.id,
                    sign: self.turning(force)?,
                    amount: self.amount(force)?,
                })
            })
            .collect();
        let kind = BalanceKind::MomentsAbout(self.pivot);
        let unknown = StepId::Pull(pull.id);
        let step = |id: StepId, symbol: &str, dimension: Dimension, rule: Rule, asked: bool| Step {
            id,
            symbol: Symbol::new(symbol),
            dimension,
            rule,
            asked,
        };
        let known = Rule::KnownSide {
            balance: StepId::MomentSum,
            unknown,
        };
        [
            step(
                StepId::KnownMoments,
                "M_known",
                Dimension::MOMENT,
                known,
                false,
            ),
            step(
                StepId::MomentSum,
                "ΣM",
                Dimension::MOMENT,
                Rule::Balance(Balance { kind, terms }),
                true,
            ),
            step(
                unknown,
                pull.symbol.as_str(),
                Dimension::FORCE,
                Rule::Solve(StepId::MomentSum),
                true,
            ),
        ]
    }
}

/// What follows the underscore of a force's name, or the whole name: `b` of `W_b`, `T` of `T`.
pub(super) fn suffix(symbol: &Symbol) -> &str {
    symbol
        .as_str()
        .rsplit('_')
        .next()
        .unwrap_or(symbol.as_str())
}

/// The parts of a support's force that have a step of their own.
pub(super) fn reaction(support: ForceId, part: Part) -> StepId {
    StepId::Reaction(support, part)
}

/// The name of a force's part along an axis.
pub(super) fn part_symbol(symbol: &Symbol, axis: Axis) -> Symbol {
    let letter = match axis {
        Axis::Horizontal => "x",
        Axis::Vertical => "y",
    };
    let joint = if symbol.as_str().contains('_') {
        ""
    } else {
        "_"
    };
    Symbol::new(format!("{}{joint}{letter}", symbol.as_str()))
}
