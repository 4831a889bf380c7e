//! Why a shown line is as it is: which reason is asked of a step, and the names in its words.
//!
//! The words of a reason are `reason.<kind>.…`: what is asked (`ask`), the right reason (`right`),
//! two thoughts behind usual mistakes of the step (`a`, `b`) and what is said of each (`a-no`,
//! `b-no`).

use super::Session;
use crate::key::{Axis, Formula, Part, StepId};
use crate::problem::Acting;
use crate::text::Slot;

/// One reason in so many found at the first go is enough to go on with the last steps.
pub(super) const ENOUGH: usize = 2;
/// Below this share of a force its part along an axis is none.
const NOTHING: f64 = 1e-9;

impl Session {
    /// The kind of the reason that is asked of a step.
    pub(super) fn reason_of(&self, step: StepId) -> Option<&'static str> {
        Some(match step {
            StepId::Forces => "forces",
            StepId::Pivot => "pivot",
            StepId::Weight(_) if !self.has_asked("weight") => "weight",
            StepId::Weight(_) => "weight-other",
            StepId::Angle(_) => match self.key.formula(step)?.bare() {
                Formula::Atom(_) => "angle-printed",
                _ => "angle-worked",
            },
            StepId::Across(force) if self.is_pull(force) => "across-pull",
            StepId::Across(_) if !self.has_asked("across") => "across",
            StepId::Across(_) => "across-again",
            StepId::MomentSum => "moment-sum",
            StepId::Pull(_) => "pull",
            StepId::Reaction(_, part) => self.reason_of_part(part)?,
            _ => return None,
        })
    }

    /// The kind of the reason of a part of the support's force.
    fn reason_of_part(&self, part: Part) -> Option<&'static str> {
        let (level, upright) = (
            self.pull_along(Axis::Horizontal),
            self.pull_along(Axis::Vertical),
        );
        Some(match part {
            Part::Along(Axis::Horizontal) if level && upright => "reaction-x-part",
            Part::Along(Axis::Horizontal) if level => "reaction-x",
            Part::Along(Axis::Horizontal) => return None,
            Part::Along(Axis::Vertical) if upright => "reaction-y-pull",
            Part::Along(Axis::Vertical) => "reaction-y",
            Part::Size => "reaction-size",
            Part::Direction => "reaction-direction",
        })
    }

    /// The names that the words of a step's reason speak of.
    pub(super) fn slots_of(&self, step: StepId) -> Vec<(&'static str, Slot)> {
        let name = |step: Option<StepId>| {
            let found = step.and_then(|step| self.key.step(step));
            Slot::Name(found.map_or_else(String::new, |step| step.symbol.shown()))
        };
        let force = step.force().and_then(|force| self.problem.force(force));
        let inputs = self.key.formula(step).map(|formula| formula.inputs());
        let angle = inputs.and_then(|inputs| {
            let mut inputs = inputs.into_iter();
            inputs.find(|step| matches!(step, StepId::Angle(_)))
        });
        let shown = force.map_or_else(String::new, |force| force.symbol.shown());
        vec![
            ("symbol", name(Some(step))),
            ("angle", name(angle)),
            ("pull", name(self.key.unknown())),
            ("force", Slot::Name(shown)),
            ("body", Slot::Word(self.problem.body().noun.clone())),
            ("pivot", Slot::Word(self.pivot_noun())),
        ]
    }

    /// True if the unknown pull has a part along an axis.
    fn pull_along(&self, axis: Axis) -> bool {
        let pull = self.key.unknown().and_then(StepId::force);
        let acting = pull.and_then(|pull| self.problem.force(pull));
        let Some(Acting::Along(direction)) = acting.map(|force| force.acting) else {
            return false;
        };
        let angle = direction.angle(self.problem.body(), &self.problem.values());
        let share = match axis {
            Axis::Horizontal => libm::cos(angle),
            Axis::Vertical => libm::sin(angle),
        };
        share.abs() > NOTHING
    }
}
