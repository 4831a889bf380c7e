//! Whether a system can be drawn at some value of what is sought.

use super::check::{Use, Walk};
use super::{Fault, Parts, System};
use crate::units::value_text;

/// Steps in which the range of what is sought is looked along for a value that can be drawn.
const LOOKED_AT: usize = 400;

/// What would be at fault if what is sought had this value: as a file with this number would be
/// refused.
pub(super) fn fault_at(parts: &Parts, value: f64) -> Option<Fault> {
    let sought = parts.sought.as_ref()?;
    let mut walk = Walk::over(parts);
    walk.faults.clear();
    let mut told = parts.clone();
    told.givens.get_mut(sought.given.0)?.value = value;
    let uses = walk.uses.clone();
    let own = || uses.iter().filter(|(given, _)| *given == sought.given);
    let symbol = told.givens[sought.given.0].symbol.to_string();
    if value < 0.0 && !own().any(|(_, used)| *used == Use::Coordinate) {
        return Some(Fault::NotPositive { symbol });
    }
    let below = own().filter_map(|(_, used)| used.demands().2);
    let below = below.fold(f64::INFINITY, f64::min);
    if value > below {
        let below_deg = below.to_degrees().round();
        return Some(Fault::AngleOutOfRange { symbol, below_deg });
    }
    told.sought = None;
    let drawn = System { parts: told };
    walk.geometry(&drawn);
    let apart = || drawn.out_of_reach().into_iter().next();
    let fault = walk.faults.into_iter().next();
    fault.or_else(|| apart().map(|(_, fault)| fault))
}

impl Walk<'_> {
    /// What only shows once every number is known. Of a number that is sought one value of its range
    /// must do; where none does, its ends are told.
    pub(super) fn drawing(&mut self) {
        let mut system = System {
            parts: self.parts.clone(),
        };
        let Some(sought) = system.parts.sought.take() else {
            return self.geometry(&system);
        };
        let mut at = |value: f64| {
            if let Some(given) = system.parts.givens.get_mut(sought.given.0) {
                given.value = value;
            }
            self.geometry(&system);
            std::mem::take(&mut self.faults)
        };
        let share = |index: usize| index as f64 / LOOKED_AT as f64;
        let mut always = at(sought.low);
        let first = always.first().cloned();
        for index in 1..=LOOKED_AT {
            let here = at(sought.low + share(index) * (sought.high - sought.low));
            if here.is_empty() {
                return;
            }
            always.retain(|fault| here.contains(fault));
        }
        let printed = self.parts.givens.get(sought.given.0);
        let none_does = || {
            let given = printed?;
            let end = value_text(sought.low, given.dimension, 3);
            Some(Fault::NoValue {
                at: format!("{} = {end}", given.symbol.shown()),
                fault: Box::new(first?),
            })
        };
        self.faults = match always.is_empty() {
            true => none_does().into_iter().collect(),
            false => always,
        };
    }
}
