//! An angle halved.
//!
//! # What the learner did
//! Took half the angle between the force and the body.
//!
//! # Why it tempts
//! An angle that is halved by a line of symmetry in one drawing is halved in the next one as well.
//!
//! # Rewrite
//! Formula: the angle of a force becomes half the angle.
//!
//! # Known false alarms
//! None known.
//!
//! # Source
//! Common practice, no source.

use super::rewriting::{each_angle, with_angle};
use super::{Kind, Mistake, Skill};
use crate::key::Formula;

/// The mistake.
pub(super) static MISTAKE: Mistake = Mistake {
    id: "halved-angle",
    family: "angle-size",
    kind: Kind::Formula,
    skill: Skill::Angles,
    prior: 1.5,
    common: false,
    sign: None,
    scopes: |_, key| each_angle(key),
    rewrite: |_, key, scope| with_angle(key, scope, |angle| angle.over(Formula::Number(2.0))),
};
