//! The masses of two bodies exchanged.
//!
//! # What the learner did
//! Used one body's mass for the other's weight, and the reverse.
//!
//! # Why it tempts
//! The problem tells several masses in one sentence, and the symbols stand far from the bodies.
//!
//! # Rewrite
//! Formula: the weights of two forces change places.
//!
//! # Known false alarms
//! None known.
//!
//! # Source
//! Common practice, no source.

use super::rewriting::{turning, with_rules};
use super::{Kind, MASS_OF_ANOTHER, Mistake, Scope, Skill};
use crate::key::StepId;

/// The mistake.
pub(super) static MISTAKE: Mistake = Mistake {
    id: "masses-exchanged",
    family: MASS_OF_ANOTHER,
    kind: Kind::Formula,
    skill: Skill::Weights,
    prior: 2.0,
    common: false,
    sign: None,
    scopes: |_, key| {
        let mut weights = turning(key);
        weights.retain(|id| key.step(StepId::Weight(*id)).is_some());
        let pairs = weights.iter().enumerate().flat_map(|(index, one)| {
            let later = &weights[index + 1..];
            later.iter().map(|other| Scope::Two(*one, *other))
        });
        pairs.collect()
    },
    rewrite: |_, key, scope| {
        let Scope::Two(one, other) = scope else {
            return None;
        };
        let (first, second) = (StepId::Weight(one), StepId::Weight(other));
        let rule = |id: StepId| Some(key.step(id)?.rule.clone());
        Some(with_rules(
            key,
            [(first, rule(second)?), (second, rule(first)?)],
        ))
    },
};
