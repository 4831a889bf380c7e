//! The parts of forces that a triangle gave as wholes.

use super::angle::Turn;
use super::build::Builder;
use super::force::part_name;
use super::place::opposite;
use super::triangle::{Contact, Section, Side};
use super::{Expression, Meaning, Quantity, Rule};
use crate::key::{Axis, Formula};
use crate::system::Asked;
use crate::units::Dimension;

impl Builder<'_> {
    /// The push and the friction of contacts, and the level and upright parts that are asked.
    pub(super) fn tell_parts(
        &mut self,
        sides: &[Side],
        sizes: &[Option<Expression>],
        contacts: &[Contact],
    ) {
        let parts = self.contact_parts(sides, sizes, contacts);
        if !parts.is_empty() {
            self.working.triangle.push(Section::Parts(parts));
        }
        let asked = self.asked_parts(sides, sizes);
        if !asked.is_empty() {
            self.working.triangle.push(Section::Asked(asked));
        }
    }

    /// The push and the friction of contacts whose forces are found as wholes; a push that the
    /// condition says is not told again.
    fn contact_parts(
        &mut self,
        sides: &[Side],
        sizes: &[Option<Expression>],
        contacts: &[Contact],
    ) -> Vec<Quantity> {
        let mut parts = Vec::new();
        for (side, size) in sides.iter().zip(sizes) {
            let contact = contacts.iter().find(|contact| contact.act == side.act);
            let (Some(contact), Some(size), false) = (contact, size, side.is_sum) else {
                continue;
            };
            let turn = side.turn.clone().unwrap_or_else(|| Turn::fixed(0.0));
            let off = turn.between(&contact.push, &|atom| self.atom(atom));
            let name = self.symbol_of(side.act);
            let is_push = off.fixed_degrees() == Some(0.0);
            let (push, friction) = match is_push {
                true => (size.clone(), Formula::Number(0.0)),
                false => (
                    size.clone().times(off.cosine()),
                    size.clone().times(off.sine()),
                ),
            };
            if contact.limit.is_none() {
                let symbol = self.own_name(&name);
                let meaning = Meaning::Push(side.act);
                parts.push(self.add(symbol, Dimension::FORCE, meaning, Rule::Formula(push)));
            }
            let symbol = self.own_name(&format!("F_{}", name.replace('_', "")));
            let meaning = Meaning::Friction(side.act);
            parts.push(self.add(symbol, Dimension::FORCE, meaning, Rule::Formula(friction)));
        }
        parts
    }

    /// The level and upright parts that are asked of forces.
    fn asked_parts(&mut self, sides: &[Side], sizes: &[Option<Expression>]) -> Vec<Quantity> {
        let mut parts = Vec::new();
        for asked in self.system.asked() {
            let (act, axis) = match asked {
                Asked::Horizontal(act) => (act, Axis::Horizontal),
                Asked::Vertical(act) => (act, Axis::Vertical),
                _ => continue,
            };
            let of_it = sides.iter().zip(sizes);
            let mut of_it = of_it.filter(|(side, _)| side.act == act && !side.is_sum);
            let Some((name, turn, Some(size))) = of_it
                .next()
                .and_then(|(side, size)| Some((&side.name, side.turn.clone()?, size)))
            else {
                continue;
            };
            let slope = turn.slope(&|atom| self.atom(atom));
            let (sign, is_whole, ratio) = match axis {
                Axis::Horizontal => (slope.right, slope.up == 0.0, slope.angle.cosine()),
                Axis::Vertical => (slope.up, slope.right == 0.0, slope.angle.sine()),
            };
            let amount = match is_whole {
                true => size.clone(),
                false => size.clone().times(ratio),
            };
            let formula = match sign {
                0.0 => Formula::Number(0.0),
                sign if sign < 0.0 => opposite(amount),
                _ => amount,
            };
            let symbol = self.own_name(&part_name(name, axis));
            let meaning = Meaning::Component(act, axis);
            parts.push(self.add(symbol, Dimension::FORCE, meaning, Rule::Formula(formula)));
        }
        parts
    }
}
