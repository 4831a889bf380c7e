//! The place said of a force: whether it is its own, and what a wrong one tells.

use super::Session;
use super::reply::Reply;
use super::state::Pending;
use super::turn::Sign;
use crate::judge::statement::{Fit, Said, Where, is_on, place_fits, side_for_place};
use crate::problem::{ForceId, Problem};
use crate::text::Slot;

impl Session {
    /// Whether the place said is its own. Where a wrong one was said, none is missing.
    pub(super) fn place_fit(&self, pending: &Pending) -> Fit {
        match place_fits(&self.problem, pending.force, pending.place) {
            Fit::Right if pending.misplaced && pending.place.is_none() => Fit::Missing,
            fit => fit,
        }
    }

    /// What was said where a place is asked, with a side of it taken for that place.
    pub(super) fn side_for_place(&self, said: Said) -> Said {
        match self.state.pending.first() {
            Some(open) if self.place_fit(open) == Fit::Missing => {
                let only = self.pending_asks() == Some("where");
                side_for_place(&self.problem, open.force, said, only)
            }
            _ => said,
        }
    }

    /// A wrong place, explained by what acts there.
    pub(super) fn misplaced(&self, force: ForceId, place: Option<Where>) -> Reply {
        let beyond = matches!(place, Some(Where::At(metres)) if !is_on(&self.problem, metres));
        if beyond {
            let length = self.problem.given(self.problem.body().length);
            let slots = [
                ("body", Slot::Word(self.problem.body().noun.clone())),
                ("length", Slot::Value(length.written.clone())),
            ];
            return Reply::new(Sign::Wrong, self.words.say("talk.place-beyond", &slots));
        }
        let key = match force {
            ForceId::OwnWeight => "talk.own-weight-place",
            ForceId::Rope(_) => "talk.rope-place-wrong",
            ForceId::Support(_) => "talk.hinge-place-wrong",
            ForceId::Load(_) => "talk.force-place-wrong",
        };
        Reply {
            mistake: place.and_then(|place| misplacement(&self.problem, force, place)),
            ..Reply::new(Sign::Wrong, self.words.say(key, &self.force_slots(force)))
        }
    }
}

/// The mistake behind a wrong place, by what acts there.
fn misplacement(problem: &Problem, force: ForceId, place: Where) -> Option<&'static str> {
    let Where::At(metres) = place else {
        return None;
    };
    let values = problem.values();
    let length = problem.given(problem.body().length).value;
    let same = |other: f64| (other - metres).abs() < 1e-6;
    let rope = problem
        .ropes()
        .iter()
        .any(|rope| same(problem.distance(rope.at, &values)));
    match (force, same(length), same(length / 2.0)) {
        (ForceId::OwnWeight, true, _) => Some("own-weight-at-tip"),
        (ForceId::Load(_), true, _) => Some("load-at-tip"),
        (ForceId::Load(_), _, true) => Some("load-at-middle"),
        (ForceId::Rope(_), true, _) => Some("rope-at-tip"),
        (ForceId::Rope(_), _, true) => Some("rope-at-middle"),
        (ForceId::OwnWeight, ..) if rope => Some("own-weight-at-rope"),
        (ForceId::Load(_), ..) if rope => Some("load-at-rope"),
        _ => None,
    }
}
