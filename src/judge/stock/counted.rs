//! The same quantities, as they are typed without units by whoever counts in other ones.

use super::{Entry, Stock};
use crate::key::{Samples, agree};
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
        }
    }

    /// True if a function is a quantity of this working.
    pub(in crate::judge) fn has(&self, function: &Samples, dimension: Dimension) -> bool {
        self.entries
            .iter()
            .any(|entry| entry.dimension == dimension && agree(&entry.function, function))
    }
}
