//! Who takes g = 10 for one weight takes it for all: what she makes of the weights that she has not
//! written down.

use super::Session;
use crate::judge::{Judgement, Own, Truth};
use crate::key::StepId;

/// The acceleration of free fall that many are used to, in m/s².
const TEN: f64 = 10.0;

/// A weight is worked with g = 10 m/s² if it is off by no more than this share.
const SAME: f64 = 1e-3;

impl Session {
    /// A line that does not hold and follows with g = 10 m/s² in the weights that stand nowhere, too,
    /// where she has taken it in one that stands.
    pub(super) fn by_her_gravity(
        &mut self,
        asked: StepId,
        line: &str,
        found: &Judgement,
    ) -> Option<Judgement> {
        if found.truth != Truth::DoesNotHold || found.evidence.false_equation {
            return None;
        }
        let times = TEN / self.problem.gravity();
        let with_ten = |step: &StepId| {
            let right = self.right_weight(*step)?;
            let own = self.state.standing.get(step).filter(|own| !own.right)?;
            let typed = own.typed.map_or(own.value, |(typed, _)| typed);
            let same = (typed - right[0] * times).abs() <= SAME * right[0] * times;
            same.then_some(own.line)
        };
        let weights = self.key.steps.iter().map(|step| step.id);
        let weights: Vec<StepId> = weights.filter(|step| step.is_weight()).collect();
        let first = weights.iter().find_map(with_ten)?;
        let is_open = |step: &&StepId| !self.state.standing.contains_key(*step);
        let open: Vec<StepId> = weights.iter().filter(is_open).copied().collect();
        let hers = open.iter().filter_map(|step| {
            let function = self.right_weight(*step)?.map(|value| value * times);
            let own = Own {
                right: false,
                ..Own::right(function, first)
            };
            Some((*step, own))
        });
        let hers: Vec<(StepId, Own)> = hers.collect();
        if hers.is_empty() {
            return None;
        }
        let standing = self.state.standing.clone();
        self.state.standing.extend(hers);
        let judgement = self.judged_anywhere(asked, line);
        self.state.standing = standing;
        matches!(judgement.truth, Truth::Follows(_)).then_some(judgement)
    }

    fn right_weight(&self, step: StepId) -> Option<crate::key::Samples> {
        let none = std::collections::BTreeMap::new();
        self.key.samples(step, &self.sampling, &none)
    }
}
