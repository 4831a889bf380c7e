//! The whole tension taken as level.
//!
//! # What the learner did
//! Put the whole tension into the horizontal balance.
//!
//! # Why it tempts
//! The rope is the only other force that pulls to the side, so it is set equal to the hinge's
//! part.
//!
//! # Rewrite
//! Balance: the rope's term in the horizontal balance is the whole pull.
//!
//! # Known false alarms
//! A level rope is whole in this balance.
//!
//! # Source
//! Common practice, no source.

use super::rewriting::{each, only, pull_along, with_whole};
use super::{Kind, Mistake, Skill};
use crate::key::Axis;

/// The mistake.
pub(super) static MISTAKE: Mistake = Mistake {
    id: "whole-tension-sideways",
    family: "horizontal-balance",
    kind: Kind::Balance,
    skill: Skill::Reactions,
    prior: 4.0,
    common: false,
    sign: None,
    scopes: |_, key| each(pull_along(key, Axis::Horizontal)),
    rewrite: |problem, key, scope| with_whole(problem, key, Axis::Horizontal, only(scope)?),
};
