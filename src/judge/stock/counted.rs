//! The same quantities, as they are typed without units by whoever counts in other ones.

use super::{Entry, Meaning, Nearness, Stock};
use crate::key::{Samples, agree};
use crate::reading::Literal;
use crate::units::Dimension;

impl Stock {
    /// These quantities where a newton is typed as `force` and a metre as `length`: 0.706 for
    /// 706 N, 310 for 3.1 m.
    pub(in crate::judge) fn counted_in(&self, force: f64, length: f64) -> Stock {
        let factor = |dimension| match dimension {
            Dimension::FORCE => force,
            Dimension::LENGTH => length,
            Dimension::MOMENT => force * length,
            Dimension::FORCE_A_LENGTH => force / length,
            _ => 1.0,
        };
        let entries = self.entries.iter().map(|entry| Entry {
            shown: entry.shown * factor(entry.dimension),
            ..*entry
        });
        Stock {
            coarse: self.coarse,
            general: self.general,
            entries: entries.collect(),
            narrow: self.narrow,
        }
    }

    /// These quantities where a metre is typed as `length` and no unit stands behind a number: 30
    /// for 0.30 m and 900 for 0.09 m². So typed they are pure numbers.
    pub(in crate::judge) fn typed_in(&self, length: f64) -> Stock {
        let of_lengths = |entry: &Entry| match entry.dimension {
            Dimension::LENGTH => Some(length),
            Dimension::AREA => Some(length * length),
            _ => None,
        };
        let entries = self.entries.iter().map(|entry| match of_lengths(entry) {
            Some(factor) => Entry {
                bare: true,
                function: entry.function.map(|value| value * factor),
                dimension: Dimension::NUMBER,
                shown: entry.shown * factor,
                nearness: entry.nearness,
                reach: entry.reach,
            },
            None => entry.clone(),
        });
        Stock {
            coarse: self.coarse,
            general: self.general,
            entries: entries.collect(),
            narrow: self.narrow,
        }
    }

    /// A mass in grams or tonnes, or a length in centimetres or by a hundred too small: what a bare
    /// number that is nothing else may be, so that it is seen what was done to it.
    pub(super) fn multiple(&self, literal: &Literal) -> Option<Meaning> {
        if self.general || literal.unit.is_some() || self.is_pure(literal) {
            return None;
        }
        let factors = |dimension| match dimension {
            Dimension::MASS => [1000.0, 0.001],
            Dimension::LENGTH => [100.0, 0.01],
            _ => [1.0, 1.0],
        };
        let exact = self.entries[..self.narrow].iter();
        exact
            .filter(|entry| entry.nearness == Nearness::Exact && !entry.bare)
            .find_map(|entry| {
                let is = |factor: &f64| {
                    let shown = factor * entry.function[0];
                    (literal.value - shown).abs() <= 1e-9 * shown.abs()
                };
                let factor = factors(entry.dimension).into_iter().find(is)?;
                (factor != 1.0).then(|| Meaning {
                    function: entry.function.map(|value| value * factor),
                    dimension: entry.dimension,
                    constant: false,
                })
            })
    }

    /// True if a function is a quantity of this working.
    pub(in crate::judge) fn has(&self, function: &Samples, dimension: Dimension) -> bool {
        self.entries
            .iter()
            .any(|entry| entry.dimension == dimension && agree(&entry.function, function))
    }
}
