//! The body's own weight left out.
//!
//! # What the learner did
//! Worked as if the body itself weighed nothing.
//!
//! # Why it tempts
//! Only what hangs on the body looks like a load; the body is what carries it.
//!
//! # Rewrite
//! Model: the own weight leaves every balance.
//!
//! # Known false alarms
//! A body whose mass is not given has no such term.
//!
//! # Source
//! Common practice, no source.

use super::rewriting::{each, known_turning, only, several_known, without};
use super::{Kind, Mistake, Scope, Skill};
use crate::key::Key;
use crate::problem::{ForceId, Problem};

/// The mistake.
pub(super) static MISTAKE: Mistake = Mistake {
    id: "own-weight-left-out",
    family: "own-weight-missing",
    kind: Kind::Model,
    skill: Skill::Forces,
    prior: 8.0,
    common: true,
    sign: None,
    scopes: |problem, key| {
        if several_known(problem, key) {
            each(
                known_turning(problem, key)
                    .into_iter()
                    .filter(|id| *id == ForceId::OwnWeight),
            )
        } else {
            Vec::new()
        }
    },
    rewrite,
};

fn rewrite(_: &Problem, key: &Key, scope: Scope) -> Option<Key> {
    Some(without(key, only(scope)?))
}
