//! A quarter of the length for the own weight's distance.
//!
//! # What the learner did
//! Halved the length twice: L/4 where L/2 belongs.
//!
//! # Why it tempts
//! The half is in the head already when the number is taken from the drawing.
//!
//! # Rewrite
//! Formula: half the distance of the own weight, where it acts at the middle.
//!
//! # Known false alarms
//! None known.
//!
//! # Source
//! Common practice, no source.

use super::rewriting::{each, only, turning, with_distance};
use super::{Kind, Mistake, Skill};
use crate::key::Formula;
use crate::problem::{ForceId, Place};

/// The mistake.
pub(super) static MISTAKE: Mistake = Mistake {
    id: "halved-twice",
    family: "own-weight-place",
    kind: Kind::Formula,
    skill: Skill::Places,
    prior: 1.0,
    common: false,
    sign: None,
    scopes: |problem, key| {
        let at_middle = problem.body().centre == Place::Middle;
        let own = turning(key).into_iter();
        each(own.filter(|id| *id == ForceId::OwnWeight && at_middle))
    },
    rewrite: |problem, key, scope| {
        let id = only(scope)?;
        let length = Formula::given(problem.body().length);
        Some(with_distance(key, id, length.over(Formula::Number(4.0))))
    },
};
