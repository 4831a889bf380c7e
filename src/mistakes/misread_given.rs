//! The number of another body.
//!
//! # What the learner did
//! Used one body's mass for another's weight, and for its own as well.
//!
//! # Why it tempts
//! The problem tells several masses in one sentence, and the eye takes the wrong one.
//!
//! # Rewrite
//! Formula: the weight of one force becomes that of another.
//!
//! # Known false alarms
//! Where the other body is given this mass in turn, the two were exchanged.
//!
//! # Source
//! Common practice, no source.

use super::rewriting::turning;
use super::{Kind, MASS_OF_ANOTHER, Mistake, Scope, Skill};
use crate::key::{Key, StepId};
use crate::problem::{ForceId, Problem};

/// The mistake.
pub(super) static MISTAKE: Mistake = Mistake {
    id: "misread-given",
    family: MASS_OF_ANOTHER,
    kind: Kind::Formula,
    skill: Skill::Weights,
    prior: 1.5,
    common: false,
    sign: None,
    scopes: |_, key| {
        let mut weights = turning(key);
        weights.retain(|id| key.step(StepId::Weight(*id)).is_some());
        let of = |one: ForceId| {
            let others = weights.iter().filter(move |other| **other != one);
            others.map(move |other| Scope::Two(one, *other))
        };
        weights.iter().flat_map(|one| of(*one)).collect()
    },
    rewrite,
};

fn rewrite(_: &Problem, key: &Key, scope: Scope) -> Option<Key> {
    let Scope::Two(one, other) = scope else {
        return None;
    };
    let taken = key.step(StepId::Weight(other))?.rule.clone();
    Some(key.with_rule(StepId::Weight(one), taken))
}
