//! The moment of a force about a pivot, by each method.

use super::build::Builder;
use super::force::Elementary;
use super::place::Signed;
use super::{Expression, Meaning, Method, Rule, Term};
use crate::key::{Axis, Formula};
use crate::system::{ActId, BodyId, Spot};
use crate::units::Dimension;

impl Builder<'_> {
    /// The terms of a force in the moments about a pivot.
    pub(super) fn moment_terms(&mut self, force: &Elementary, pivot: &Spot) -> Vec<Term> {
        let term = |(sign, amount): Signed| Term {
            act: force.act,
            sign,
            amount,
        };
        match self.working.method {
            Method::Components => {
                if let Some(found) = self.across(force, pivot) {
                    return found.into_iter().map(term).collect();
                }
                self.coordinates(force, pivot)
                    .into_iter()
                    .map(term)
                    .collect()
            }
            Method::LeverArms => self.lever(force, pivot).into_iter().map(term).collect(),
            Method::Coordinates | Method::Triangle => self
                .coordinates(force, pivot)
                .into_iter()
                .map(term)
                .collect(),
        }
    }

    /// A leg on which both lie, with the signed distance from pivot to force along it.
    fn shared_leg(
        &mut self,
        force: &Elementary,
        pivot: &Spot,
    ) -> Option<(BodyId, usize, Option<Signed>)> {
        let about = self.legs_of(pivot);
        let here = self.legs_of(&force.at);
        for (body, leg, distance) in here {
            let Some((_, _, from)) = about
                .iter()
                .find(|(one, other, _)| (*one, *other) == (body, leg))
            else {
                continue;
            };
            let way = self.signed_sum(vec![(1.0, distance), (-1.0, from.clone())]);
            return Some((body, leg, way));
        }
        None
    }

    /// Across the body times along it. `None` where the pivot lies on no leg of the force's place;
    /// an empty one where there is no moment.
    fn across(&mut self, force: &Elementary, pivot: &Spot) -> Option<Option<Signed>> {
        let (body, leg, way) = self.shared_leg(force, pivot)?;
        let Some((way, distance)) = way else {
            return Some(None);
        };
        let leg_turn = self.leg_turn(body, leg);
        let Some((side, angle)) = self.angle_with(force, &leg_turn) else {
            return Some(None);
        };
        let size = self.size(force.act, &force.size);
        let across = match &angle {
            Formula::Degrees(90.0) => size,
            _ => {
                let meaning = Meaning::Across(force.act);
                let formula = size.clone().times(Formula::Sine(Box::new(angle)));
                let wish = format!("{}⊥", self.name_of(&size));
                self.force_quantity(meaning, &wish, formula)
            }
        };
        Some(Some((way * side * force.sign, across.times(distance))))
    }

    /// The angle between a force's line and a leg, with the sign of the force's part to the left of
    /// the leg; `None` where the force acts along it.
    fn angle_with(
        &mut self,
        force: &Elementary,
        leg: &super::angle::Turn,
    ) -> Option<(f64, Expression)> {
        let turned = force.turn.clone().plus(-1.0, leg);
        let value = turned.value(&|atom| self.atom(atom));
        let left = libm::sin(value);
        let other = turned.value(&|atom| self.atom_at(atom, &self.moved));
        if left.abs() < 1e-10 && libm::sin(other).abs() < 1e-9 {
            return None;
        }
        let between = force.turn.between(leg, &|atom| self.atom(atom));
        let upright = force
            .turn
            .fixed_degrees()
            .is_some_and(|d| d == 90.0 || d == 270.0);
        let wish = match force.act {
            _ if upright => "α".to_owned(),
            ActId::Cord(_) => "γ".to_owned(),
            act => format!("φ_{}", self.suffix(act)),
        };
        let angle = self.angle_quantity(Meaning::Angle(force.act), &wish, between.formula());
        Some((left.signum(), angle))
    }

    /// A force times the perpendicular distance of its line.
    fn lever(&mut self, force: &Elementary, pivot: &Spot) -> Option<Signed> {
        let (sign, arm) = self.arm(force, pivot)?;
        let size = self.size(force.act, &force.size);
        Some((sign * force.sign, size.times(arm)))
    }

    /// The perpendicular distance of a force's line from a pivot, with the sense of its turning.
    fn arm(&mut self, force: &Elementary, pivot: &Spot) -> Option<Signed> {
        if let Some((body, leg, way)) = self.shared_leg(force, pivot) {
            let (way, distance) = way?;
            let leg_turn = self.leg_turn(body, leg);
            let (side, angle) = self.angle_with(force, &leg_turn)?;
            if angle == Formula::Degrees(90.0) {
                return Some((way * side, distance));
            }
            let formula = distance.times(Formula::Sine(Box::new(angle)));
            return Some((way * side, self.arm_quantity(force, formula)));
        }
        let way = self.way(pivot, &force.at);
        let (x, y) = (
            self.coordinate(&way, Axis::Horizontal),
            self.coordinate(&way, Axis::Vertical),
        );
        let slope = force.turn.slope(&|atom| self.atom(atom));
        let mut parts: Vec<Signed> = Vec::new();
        if let Some((side, x)) = x
            && slope.up != 0.0
        {
            let amount = match slope.right == 0.0 {
                true => x,
                false => x.times(slope.angle.sine()),
            };
            parts.push((side * slope.up, amount));
        }
        if let Some((side, y)) = y
            && slope.right != 0.0
        {
            let amount = match slope.up == 0.0 {
                true => y,
                false => y.times(slope.angle.cosine()),
            };
            parts.push((-side * slope.right, amount));
        }
        let (sign, formula) = self.signed_sum(parts)?;
        let plain = slope.right == 0.0 || slope.up == 0.0;
        Some((
            sign,
            if plain {
                formula
            } else {
                self.arm_quantity(force, formula)
            },
        ))
    }

    fn arm_quantity(&mut self, force: &Elementary, formula: Expression) -> Expression {
        let symbol = self.unique(&format!("a_{}", self.suffix(force.act)));
        Formula::step(self.add(
            symbol,
            Dimension::LENGTH,
            Meaning::Arm(force.act),
            Rule::Formula(formula),
        ))
    }

    /// x·Fy − y·Fx.
    fn coordinates(&mut self, force: &Elementary, pivot: &Spot) -> Vec<Signed> {
        let way = self.way(pivot, &force.at);
        let mut terms = Vec::new();
        if let Some((side, x)) = self.coordinate(&way, Axis::Horizontal)
            && let Some((sign, upright)) = self.part(force, Axis::Vertical)
        {
            terms.push((side * sign, upright.times(x)));
        }
        if let Some((side, y)) = self.coordinate(&way, Axis::Vertical)
            && let Some((sign, level)) = self.part(force, Axis::Horizontal)
        {
            terms.push((-side * sign, level.times(y)));
        }
        terms
    }
}
