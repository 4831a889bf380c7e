//! A given that is sought, worked out like an unknown: its condition takes the place of one of the
//! unknown forces, and a balance gives it.

use super::build::Builder;
use super::force::Source;
use super::{Expression, Kind, Meaning, Quantity, Rule};
use crate::key::{Axis, Formula};
use crate::problem::GivenId;
use crate::statics::SystemSolution;
use crate::system::{Act, ActId, BodyId, HoldKind, Size, Sought, System, When};
use crate::units::Dimension;
use std::collections::BTreeSet;

/// A change of a balance below this part of its terms counts as none.
const NONE: f64 = 1e-9;

impl Builder<'_> {
    fn sought_given(&self) -> Option<&Sought> {
        let sought = self.system.parts().sought.as_ref();
        sought.filter(|_| self.seeks)
    }

    /// Makes what is sought a quantity, if a balance may hold it.
    pub(super) fn seek(&mut self) {
        let Some(given) = self.sought_given().map(|sought| sought.given) else {
            return;
        };
        if self.ratio_of().is_some() {
            return;
        }
        let printed = self.system.given(given);
        let (symbol, dimension) = (printed.symbol.clone(), printed.dimension);
        let sought = self.add(symbol, dimension, Meaning::Sought, Rule::Given(given));
        self.working.sought = Some((sought, given));
    }

    /// True for an action that vanishes by the condition; it is told and left out.
    pub(super) fn vanishes(&mut self, act: &Act<'_>) -> bool {
        let sought = self.sought_given();
        let gone =
            matches!(sought.map(|sought| sought.when), Some(When::Vanishes(id)) if id == act.id);
        if gone {
            let hold = match act.id {
                ActId::Hold(index) => self.system.parts().holds.get(index),
                _ => None,
            };
            let turns = hold.is_some_and(|hold| hold.kind == HoldKind::Couple);
            let (dimension, meaning) = match turns {
                true => (Dimension::MOMENT, Meaning::Couple(act.id)),
                false => (Dimension::FORCE, Meaning::Size(act.id)),
            };
            let symbol = self.unique(act.symbol.as_str());
            let none = self.add(
                symbol,
                dimension,
                meaning,
                Rule::Formula(Formula::Number(0.0)),
            );
            self.working.conditions.push(none);
        }
        gone
    }

    /// The weight or given force whose size is sought, or its mass: by the triangle of forces it is
    /// found like an unknown.
    pub(super) fn sought_act(&self) -> Option<(ActId, Size)> {
        let given = self.sought_given()?.given;
        sized_by(self.system, given).into_iter().next()
    }

    /// A force along a known line that is at its limit by the condition.
    pub(super) fn reaches(&mut self, act: &Act<'_>) -> bool {
        if self.has_parts(act.id) {
            return false;
        }
        let Some(force) = self.at_limit(act) else {
            return false;
        };
        self.along_lines(act, force, None);
        true
    }

    /// The size of a force that is its limit by the condition: minus the limit where it acts
    /// against the sense in which it is counted.
    pub(super) fn at_limit(&mut self, act: &Act<'_>) -> Option<Quantity> {
        let sought = self.sought_given()?;
        let When::Reaches { act: id, limit } = sought.when else {
            return None;
        };
        if id != act.id || limit == sought.given {
            return None;
        }
        let limit = Formula::given(limit);
        let found = self.solution.reaction(id).unwrap_or_default();
        let size = match acts_either_way(act, self.system) && found.size < 0.0 {
            true => Formula::Negative(Box::new(limit)),
            false => limit,
        };
        let symbol = self.unique(act.symbol.as_str());
        let rule = Rule::Formula(size);
        let force = self.add(symbol, Dimension::FORCE, Meaning::Force(id), rule);
        self.working.conditions.push(force);
        Some(force)
    }

    /// The part of a force at its limit that follows from the limit once one of these is found,
    /// its other part; `None` where what is sought is found already.
    pub(super) fn left_by_limit(
        &self,
        found: &[Quantity],
        open: &BTreeSet<Quantity>,
    ) -> Option<Quantity> {
        let (sought, _) = self.working.sought?;
        let When::Reaches { act, limit } = self.sought_given()?.when else {
            return None;
        };
        if !open.contains(&sought) || Some(limit) == self.working.sought.map(|(_, given)| given) {
            return None;
        }
        let part = |axis| self.working.find(Meaning::Component(act, axis));
        let (level, upright) = (part(Axis::Horizontal)?, part(Axis::Vertical)?);
        let left = match (found.contains(&level), found.contains(&upright)) {
            (true, false) => upright,
            (false, true) => level,
            _ => return None,
        };
        open.contains(&left).then_some(left)
    }

    /// Works out the part of a force at its limit that its other part leaves: ±√(limit² − part²),
    /// with the sense that it has; ±limit where the other part is nothing.
    pub(super) fn leave(&mut self, left: Quantity) {
        let meaning = self.working.named(left).map(|named| named.meaning);
        let (Some(Meaning::Component(act, axis)), Some(When::Reaches { limit, .. })) =
            (meaning, self.sought_given().map(|sought| sought.when))
        else {
            return;
        };
        let force = self.solution.reaction(act).unwrap_or_default().force;
        let (own, across) = match axis {
            Axis::Horizontal => (force.x, Axis::Vertical),
            Axis::Vertical => (force.y, Axis::Horizontal),
        };
        let Some(other) = self.working.find(Meaning::Component(act, across)) else {
            return;
        };
        let other = Formula::step(other);
        let largest = self.number(&Formula::given(limit), false).unwrap_or(0.0);
        let is_nothing = [false, true].iter().all(|moved| {
            let value = self.number(&other, *moved);
            value.is_some_and(|value| value.abs() <= NONE * largest.abs())
        });
        let square = |formula| Formula::Square(Box::new(formula));
        let size = match is_nothing {
            true => Formula::given(limit),
            false => Formula::SquareRoot(Box::new(Formula::Sum(vec![
                square(Formula::given(limit)),
                Formula::Negative(Box::new(square(other))),
            ]))),
        };
        let signed = match own < 0.0 {
            true => Formula::Negative(Box::new(size)),
            false => size,
        };
        if let Some(named) = self.working.quantities.get_mut(left.0) {
            named.rule = Rule::Formula(signed);
        }
        self.working.left = Some(left);
    }

    /// The coefficient of a contact that is about to slip by the condition; `None` where the
    /// coefficient itself is sought.
    pub(super) fn slips(&self, contact: ActId) -> Option<GivenId> {
        let sought = self.sought_given()?;
        match sought.when {
            When::Slips { act, coefficient } if act == contact && coefficient != sought.given => {
                Some(coefficient)
            }
            _ => None,
        }
    }

    /// The side to which friction at its limit acts: +1 to the left of one who looks along the push.
    pub(super) fn slip_side(&self, contact: ActId) -> f64 {
        let found = self.solution.reaction(contact);
        match found.and_then(|found| found.contact) {
            Some((_, friction)) if friction < 0.0 => -1.0,
            _ => 1.0,
        }
    }

    /// A base whose push acts at its edge by the condition: its couple is the push times half the
    /// width.
    pub(super) fn at_edge(&mut self, act: &Act<'_>, push: Quantity, width: GivenId) -> bool {
        let edge = matches!(self.sought_given().map(|sought| sought.when), Some(When::Topples(id)) if id == act.id);
        if edge {
            let found = self.solution.reaction(act.id).unwrap_or_default();
            let half = Formula::given(width).over(Formula::Number(2.0));
            let symbol = self.unique(&format!("M_{}", act.symbol.as_str().replace('_', "")));
            let rule = Rule::Formula(Formula::step(push).times(half));
            let couple = self.add(symbol, Dimension::MOMENT, Meaning::AtEdge(act.id), rule);
            self.twists_of(act, couple, push, found.couple.signum());
            self.working.conditions.push(couple);
        }
        edge
    }

    /// True for holds whose force has two parts.
    fn has_parts(&self, act: ActId) -> bool {
        let ActId::Hold(index) = act else {
            return false;
        };
        let hold = self.system.parts().holds.get(index);
        !hold.is_some_and(|hold| matches!(hold.kind, HoldKind::Push(_) | HoldKind::Line(_)))
    }

    /// Where the sought number is a coefficient or a limit, the forces that give it once all are
    /// found.
    fn ratio_of(&self) -> Option<Expression> {
        let sought = self.sought_given()?;
        let step = |meaning| self.working.find(meaning).map(Formula::step);
        match sought.when {
            When::Slips { act, coefficient } if coefficient == sought.given => {
                let friction = step(Meaning::FrictionNeeded(act))?;
                let size = Formula::Absolute(Box::new(friction));
                Some(size.over(step(Meaning::Force(act))?))
            }
            When::Reaches { act, limit } if limit == sought.given => {
                let force = step(Meaning::Force(act))?;
                let act = self.system.act(act)?;
                Some(match acts_either_way(&act, self.system) {
                    true => Formula::Absolute(Box::new(force)),
                    false => force,
                })
            }
            _ => None,
        }
    }

    /// Tells the sought number from the forces that give it.
    pub(super) fn sought_ratio(&mut self) {
        let (Some(formula), Some(given)) = (
            self.ratio_of(),
            self.sought_given().map(|sought| sought.given),
        ) else {
            return;
        };
        let printed = self.system.given(given);
        let (symbol, dimension) = (printed.symbol.clone(), printed.dimension);
        let found = self.add(symbol, dimension, Meaning::Sought, Rule::Formula(formula));
        self.working.results.push(found);
    }

    /// How a balance changes with what is sought while the forces stay as they were found; `None`
    /// where it does not.
    pub(super) fn sought_slope(
        &self,
        kind: &Kind,
        within: &dyn Fn(BodyId, Option<BodyId>) -> bool,
    ) -> Option<f64> {
        let (_, given) = self.working.sought?;
        let mut nudged = self.values.clone();
        // Not too near: at the value itself a balance that holds it may happen to stand still.
        let step = 0.02 * (nudged[given.0].abs() + 1e-3);
        nudged[given.0] += step;
        let (here, scale) = self.balance_at(kind, within, &self.values);
        let (there, other) = self.balance_at(kind, within, &nudged);
        let slope = (there - here) / step;
        // Of terms that are dust themselves nothing can be said.
        let (force, length) = self.solution.scales();
        let dust = match kind {
            Kind::Forces(_) | Kind::Tilted { .. } => force,
            Kind::Moments(_) => force * length,
        };
        let least = NONE * scale.max(other).max(dust) / step;
        (slope.abs() > least && slope.is_finite()).then_some(slope)
    }

    /// How fast a balance changes with what is sought, at its very value: two balances of which one
    /// says what the other says are seen to do so only there.
    pub(super) fn sought_rate(
        &self,
        kind: &Kind,
        within: &dyn Fn(BodyId, Option<BodyId>) -> bool,
    ) -> f64 {
        let Some((_, given)) = self.working.sought else {
            return 0.0;
        };
        let step = 1e-5 * (self.values[given.0].abs() + 1e-3);
        let beside = |step: f64| {
            let mut values = self.values.clone();
            values[given.0] += step;
            self.balance_at(kind, within, &values).0
        };
        (beside(step) - beside(-step)) / (2.0 * step)
    }

    /// The sum of a balance's terms, and of their sizes, at these values with the forces as found.
    fn balance_at(
        &self,
        kind: &Kind,
        within: &dyn Fn(BodyId, Option<BodyId>) -> bool,
        values: &[f64],
    ) -> (f64, f64) {
        let (mut sum, mut scale) = (0.0, 0.0);
        let mut count = |term: f64| {
            sum += term;
            scale += term.abs();
        };
        for force in &self.forces {
            if !within(force.body, force.partner) {
                continue;
            }
            let part = self.weight_in(kind, force, values);
            count(part * self.amount_at(force.act, &force.size, force.unknown, values));
        }
        for twist in &self.twists {
            if within(twist.body, twist.partner) && matches!(kind, Kind::Moments(_)) {
                let amount = self.amount_at(twist.act, &twist.size, twist.unknown, values);
                count(twist.sign * amount);
            }
        }
        (sum, scale)
    }

    /// The size of a force or couple at these values, unknowns as they were found.
    fn amount_at(
        &self,
        act: ActId,
        size: &Source,
        unknown: Option<Quantity>,
        values: &[f64],
    ) -> f64 {
        match (unknown, size) {
            (Some(unknown), size) => {
                self.turned_out(unknown) * self.share(size, Some(unknown), values)
            }
            (None, Source::Formula(formula)) => {
                let value = formula.value(&|atom| self.atom_at(atom, values));
                value.unwrap_or(0.0)
            }
            (None, Source::Known) => self.solver_size(act, values),
        }
    }

    /// The size of a given action at these values.
    fn solver_size(&self, act: ActId, values: &[f64]) -> f64 {
        let found = self.system.act(act);
        let size = found.map(|found| {
            crate::statics::known_size(self.system, &found.size, values, self.system.gravity())
        });
        size.flatten().unwrap_or(0.0)
    }

    /// What an unknown turned out to be.
    fn turned_out(&self, unknown: Quantity) -> f64 {
        let named = self.working.named(unknown);
        let solved = named.and_then(|named| named.meaning.solved(&self.solution));
        solved.unwrap_or(0.0)
    }
}

impl Meaning {
    /// The value that the solver found for an unknown force, part or couple.
    pub(super) fn solved(self, solution: &SystemSolution) -> Option<f64> {
        let of = |act: ActId| solution.reaction(act).unwrap_or_default();
        Some(match self {
            Meaning::Component(act, Axis::Horizontal) => of(act).force.x,
            Meaning::Component(act, Axis::Vertical) => of(act).force.y,
            Meaning::Couple(act) => of(act).couple,
            Meaning::FrictionNeeded(act) => of(act).contact.map_or(0.0, |found| found.1),
            Meaning::Force(act) => {
                let found = of(act);
                found.contact.map_or(found.size, |contact| contact.0)
            }
            _ => return None,
        })
    }
}

/// True for a hold along a line, which pulls or pushes as needed.
fn acts_either_way(act: &Act<'_>, system: &System) -> bool {
    let ActId::Hold(index) = act.id else {
        return false;
    };
    let hold = system.parts().holds.get(index);
    hold.is_some_and(|hold| matches!(hold.kind, HoldKind::Line(_)))
}

/// The weights of this mass, and the actions of this size.
pub(super) fn sized_by(system: &System, given: GivenId) -> Vec<(ActId, Size)> {
    let acts = system.acts().into_iter();
    let of_it = acts.filter(|act| match act.size {
        Size::Weight(mass) => mass == given,
        Size::Given(size) => size == given,
        _ => false,
    });
    of_it.map(|act| (act.id, act.size)).collect()
}
