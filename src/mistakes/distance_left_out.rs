//! The distance of one force left out of the moment balance.
//!
//! # What the learner did
//! Wrote the part of one force across the body without its distance, the other terms with theirs.
//!
//! # Why it tempts
//! The part across was hard work, and feels like the whole term.
//!
//! # Rewrite
//! Balance: one term of the moment balance loses its distance.
//!
//! # Known false alarms
//! A distance of one metre: the term's number is the same, and the mistake is not looked for. A
//! rope that pulls squarely: its bare tension on one side is the tension solved for.
//!
//! # Source
//! Common practice, no source.

use super::rewriting::{acts_squarely, each, only, pull, turning, with_amount, without_distance};
use super::{Kind, Mistake, Skill};
use crate::key::StepId;
use crate::problem::ForceId;

/// The mistake.
pub(super) static MISTAKE: Mistake = Mistake {
    id: "distance-left-out",
    family: "no-distances",
    kind: Kind::Balance,
    skill: Skill::Moments,
    prior: 3.0,
    common: false,
    sign: None,
    // A bare unknown on one side is an unknown that was solved for.
    scopes: |_, key| {
        let shows = |id: &ForceId| pull(key) != Some(*id) || !acts_squarely(key, *id);
        each(turning(key).into_iter().filter(shows))
    },
    rewrite: |_, key, scope| {
        let id = only(scope)?;
        Some(with_amount(key, StepId::MomentSum, id, without_distance))
    },
};
