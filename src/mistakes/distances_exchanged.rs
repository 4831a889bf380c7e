//! The distances of two forces exchanged.
//!
//! # What the learner did
//! Gave each of two forces the distance that belongs to the other.
//!
//! # Why it tempts
//! The distances stand in one sentence, and all are measured from the hinge.
//!
//! # Rewrite
//! Formula: the distances of two forces in the balance change places.
//!
//! # Known false alarms
//! Two loads of one weight: the exchange changes nothing, and is not looked for.
//!
//! # Source
//! Common practice, no source.

use super::rewriting::{turning, with_rules};
use super::{Kind, Mistake, Scope, Skill};
use crate::key::StepId;

/// The mistake.
pub(super) static MISTAKE: Mistake = Mistake {
    id: "distances-exchanged",
    family: "load-place",
    kind: Kind::Formula,
    skill: Skill::Places,
    prior: 3.0,
    common: false,
    sign: None,
    scopes: |_, key| {
        let forces = turning(key);
        let pairs = forces.iter().enumerate().flat_map(|(index, one)| {
            let later = &forces[index + 1..];
            later.iter().map(|other| Scope::Two(*one, *other))
        });
        pairs.collect()
    },
    rewrite: |_, key, scope| {
        let Scope::Two(one, other) = scope else {
            return None;
        };
        let (near, far) = (StepId::Distance(one), StepId::Distance(other));
        let rule = |id: StepId| Some(key.step(id)?.rule.clone());
        Some(with_rules(key, [(near, rule(far)?), (far, rule(near)?)]))
    },
};
