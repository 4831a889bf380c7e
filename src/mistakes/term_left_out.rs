//! A term left out of the moment balance.
//!
//! # What the learner did
//! Left the moment of one force out of the moment balance, though the force is in the other
//! balances.
//!
//! # Why it tempts
//! The terms are written one after another, and one is skipped.
//!
//! # Rewrite
//! Balance: one known term of the moment balance is dropped.
//!
//! # Known false alarms
//! At the pull it gives the same function as a force forgotten altogether.
//!
//! # Source
//! Common practice, no source.

use super::rewriting::{each, known_turning, only, several_known, without_in};
use super::{Kind, Mistake, Scope, Skill};
use crate::key::{Key, StepId};
use crate::problem::Problem;

/// The mistake.
pub(super) static MISTAKE: Mistake = Mistake {
    id: "term-left-out",
    family: "term-missing",
    kind: Kind::Balance,
    skill: Skill::Moments,
    prior: 5.0,
    common: true,
    sign: None,
    scopes: |problem, key| {
        if several_known(problem, key) {
            each(known_turning(problem, key))
        } else {
            Vec::new()
        }
    },
    rewrite,
};

fn rewrite(_: &Problem, key: &Key, scope: Scope) -> Option<Key> {
    Some(without_in(key, StepId::MomentSum, only(scope)?))
}
