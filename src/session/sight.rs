//! What the value or the form of a line that does not hold shows at first sight, without any
//! mistake's working.

use super::Session;
use crate::diagnosis::Diagnosis;
use crate::judge::{Judgement, Truth};
use crate::key::{Axis, Part, Samples, StepId, agree};
use crate::text::{Prose, Slot};
use crate::units::Dimension;

/// A number that is off by no more than this share is meant for the value.
const SAME: f64 = 0.002;

/// What is seen.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Sight {
    /// A bare number that is right in kilonewtons.
    Kilo,
    /// The known moments set equal to the unknown's part across: no distance.
    NoDistance(StepId),
    /// The two parts of a force added as they are.
    PartsAdded,
    /// A part that something must balance, taken for nothing.
    NoPart,
}

impl Sight {
    /// What it is called in the summary, or the mistake of the catalogue.
    pub(super) fn slip(self) -> &'static str {
        match self {
            Sight::Kilo => "unit",
            Sight::NoDistance(_) => "lacking",
            Sight::PartsAdded => "components-added",
            Sight::NoPart => "no-part",
        }
    }
}

impl Session {
    /// What a line that does not hold shows at first sight, unless its form shows a mistake.
    pub(super) fn sight(
        &self,
        asked: StepId,
        judgement: &Judgement,
        diagnosis: &Diagnosis,
    ) -> Option<Sight> {
        let unexplained = judgement.truth == Truth::DoesNotHold && !diagnosis.is_by_form();
        if self.is_general() || !unexplained {
            return None;
        }
        let number = judgement.evidence.number?.value;
        let names = self.names();
        let own = self.own_values();
        let board = self.board(&names, &own);
        let near = |step: StepId, number: f64| {
            let right = board.right(step).map(|right| right[0].abs());
            right.is_some_and(|right| (number.abs() - right).abs() <= SAME * right)
        };
        match judgement.target {
            StepId::Across(force) if asked == StepId::MomentSum && self.is_pull(force) => {
                near(StepId::KnownMoments, number).then_some(Sight::NoDistance(judgement.target))
            }
            StepId::Reaction(_, Part::Along(_)) if number == 0.0 => Some(Sight::NoPart),
            StepId::Reaction(support, Part::Size) => {
                let part = |axis| board.right(StepId::Reaction(support, Part::Along(axis)));
                let parts = part(Axis::Horizontal).zip(part(Axis::Vertical))?;
                let added = judgement.evidence.lifted.iter().any(|one| adds(one, parts));
                added.then_some(Sight::PartsAdded)
            }
            _ => None,
        }
        .or_else(|| {
            let force = self.key.step(judgement.target)?.dimension == Dimension::FORCE;
            let meant = force && is_bare(judgement) && near(judgement.target, 1e3 * number);
            meant.then_some(Sight::Kilo)
        })
    }

    /// What is said of it.
    pub(super) fn sight_told(&self, sight: Sight, target: StepId) -> Prose {
        let symbol = |step: StepId| {
            let step = self.key.step(step);
            Slot::Name(step.map_or_else(String::new, |step| step.symbol.shown()))
        };
        match sight {
            Sight::Kilo => self.words.say("talk.kilo", &[]),
            Sight::NoDistance(step) => {
                let slots = [("symbol", symbol(step))];
                self.words.say("talk.distance-lacks", &slots)
            }
            Sight::PartsAdded => {
                let slots = [("force", symbol(target))];
                self.words.say("mistake.components-added.thought", &slots)
            }
            Sight::NoPart => self
                .words
                .say("talk.no-part", &[("symbol", symbol(target))]),
        }
    }
}

/// True for a number typed alone and without a unit.
fn is_bare(judgement: &Judgement) -> bool {
    let layout = judgement.layout.as_deref().unwrap_or_default();
    let last = layout.rsplit(" = ").next().unwrap_or_default();
    layout.split(" = ").count() <= 2 && last.parse::<f64>().is_ok()
}

/// True for the sum of two parts or their difference, whatever their signs.
fn adds(typed: &Samples, (one, other): (Samples, Samples)) -> bool {
    let joined =
        |sign: f64| -> Samples { std::array::from_fn(|choice| one[choice] + sign * other[choice]) };
    let turned = typed.map(|value| -value);
    let same = |sum: Samples| agree(typed, &sum) || agree(&turned, &sum);
    same(joined(1.0)) || same(joined(-1.0))
}
