//! Level and upright parts that are asked of forces which no balance tells by their parts.

use super::build::Builder;
use super::force::part_name;
use super::place::{Signed, opposite};
use super::{Meaning, Quantity, Rule};
use crate::key::{Atom, Axis, Formula};
use crate::system::{ActId, Asked};
use crate::units::Dimension;

impl Builder<'_> {
    /// Finds, or makes, the quantity of each part that is asked. Of a rough contact the whole force
    /// is meant, push and friction together; of what acts on two bodies, the force on the first.
    pub(super) fn parts_asked(&mut self) {
        for asked in self.system.asked() {
            let (act, axis) = match asked {
                Asked::Horizontal(act) => (act, Axis::Horizontal),
                Asked::Vertical(act) => (act, Axis::Vertical),
                _ => continue,
            };
            let known = self.working.find(Meaning::Component(act, axis));
            let part = known.unwrap_or_else(|| self.part_asked(act, axis));
            self.working.parts.push((act, axis, part));
            let told = self
                .working
                .stages
                .iter()
                .any(|stage| stage.needs.contains(&part) || stage.unknowns.contains(&part));
            let told = told || self.working.left == Some(part);
            if !told && !self.working.results.contains(&part) {
                let mut needs = Vec::new();
                self.need(&Formula::step(part), &mut needs);
                needs.retain(|need| !self.working.results.contains(need));
                self.working.results.append(&mut needs);
            }
        }
    }

    fn part_asked(&mut self, act: ActId, axis: Axis) -> Quantity {
        let first = self.system.act(act).and_then(|act| act.on.first().cloned());
        let on_first: Vec<_> = (self.forces.iter())
            .filter(|force| {
                let meets = first.as_ref();
                let meets = meets.is_some_and(|it| it.body == force.body && it.at == force.at);
                force.act == act && meets
            })
            .cloned()
            .collect();
        let parts = on_first.iter().filter_map(|force| self.part(force, axis));
        let parts: Vec<Signed> = parts.collect();
        if let [(_, Formula::Atom(Atom::Step(only)))] = parts.as_slice() {
            return *only;
        }
        let formula = match self.signed_sum(parts) {
            Some((sign, sum)) if sign < 0.0 => opposite(sum),
            Some((_, sum)) => sum,
            None => Formula::Number(0.0),
        };
        // The push of a contact has parts of its own.
        let whole = match on_first.len() {
            0 | 1 => self.symbol_of(act),
            _ => format!("R_{}", self.symbol_of(act).replace('_', "")),
        };
        let symbol = self.unique(&part_name(&whole, axis));
        let rule = Rule::Formula(formula);
        self.add(
            symbol,
            Dimension::FORCE,
            Meaning::Component(act, axis),
            rule,
        )
    }
}
