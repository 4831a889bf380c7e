//! What this learner has shown before: mistakes whose correction she has confirmed.

use crate::mistakes::Mistake;
use std::collections::BTreeMap;

/// The pseudo-count that one confirmed mistake adds to its prior.
const CONFIRMED: f64 = 2.0;
/// So many are counted at most: a habit is no proof.
const MOST_COUNTED: u32 = 3;

/// The mistakes that a learner has made and corrected. One that was only named, by the tutor, is
/// evidence of nothing, and does not stand here.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Leaning(BTreeMap<&'static str, u32>);

impl Leaning {
    /// Counts a mistake that was named and whose line the learner then corrected.
    pub fn confirm(&mut self, id: &'static str) {
        *self.0.entry(id).or_default() += 1;
    }

    /// The pseudo-count of a mistake for this learner.
    pub fn prior(&self, mistake: &Mistake) -> f64 {
        let times = self.0.get(mistake.id).copied().unwrap_or_default();
        mistake.prior + CONFIRMED * f64::from(times.min(MOST_COUNTED))
    }
}
