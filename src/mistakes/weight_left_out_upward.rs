//! A weight left out of the upright balance.
//!
//! # What the learner did
//! Let the hinge and the rope carry all the weights but one.
//!
//! # Why it tempts
//! The terms are written one after another, and one is skipped.
//!
//! # Rewrite
//! Balance: the scope's weight leaves the vertical balance.
//!
//! # Known false alarms
//! Of two weights the one that stays is one weight only, which is a mistake of its own.
//!
//! # Source
//! Common practice, no source.

use super::one_weight_only::weights;
use super::rewriting::{each, only, without_in};
use super::{Kind, Mistake, Scope, Skill};
use crate::key::{Axis, Key, StepId};
use crate::problem::Problem;

/// The fewest weights of which one can be left out and several stay.
const SEVERAL: usize = 3;

/// The mistake.
pub(super) static MISTAKE: Mistake = Mistake {
    id: "weight-left-out-upward",
    family: "vertical-balance",
    kind: Kind::Balance,
    skill: Skill::Reactions,
    prior: 0.0,
    common: false,
    sign: None,
    scopes: |problem, key| {
        let down = weights(problem, key);
        match down.len() >= SEVERAL {
            true => each(down),
            false => Vec::new(),
        }
    },
    rewrite,
};

fn rewrite(_: &Problem, key: &Key, scope: Scope) -> Option<Key> {
    Some(without_in(
        key,
        StepId::ForceSum(Axis::Vertical),
        only(scope)?,
    ))
}
