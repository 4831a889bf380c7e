//! The whole tension taken as upright.
//!
//! # What the learner did
//! Put the whole tension into the vertical balance.
//!
//! # Why it tempts
//! The rope holds the body up, so its pull is thought of as upward.
//!
//! # Rewrite
//! Balance: the rope's term in the vertical balance is the whole pull.
//!
//! # Known false alarms
//! An upright rope is whole in this balance.
//!
//! # Source
//! Common practice, no source.

use super::rewriting::{each, only, pull_along, with_whole};
use super::{Kind, Mistake, Skill};
use crate::key::Axis;

/// The mistake.
pub(super) static MISTAKE: Mistake = Mistake {
    id: "whole-tension-upward",
    family: "vertical-balance",
    kind: Kind::Balance,
    skill: Skill::Reactions,
    prior: 3.0,
    common: false,
    sign: None,
    scopes: |_, key| each(pull_along(key, Axis::Vertical)),
    rewrite: |problem, key, scope| with_whole(problem, key, Axis::Vertical, only(scope)?),
};
