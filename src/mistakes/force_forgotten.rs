//! A load forgotten.
//!
//! # What the learner did
//! Left a load out of the whole working.
//!
//! # Why it tempts
//! With several loads one is missed, most often the one drawn last or smallest.
//!
//! # Rewrite
//! Model: the load leaves every balance.
//!
//! # Known false alarms
//! None known.
//!
//! # Source
//! Common practice, no source.

use super::rewriting::{each, loads, only, several_known, without};
use super::{Kind, Mistake, Scope, Skill};
use crate::key::Key;
use crate::problem::Problem;

/// The mistake.
pub(super) static MISTAKE: Mistake = Mistake {
    id: "force-forgotten",
    family: "force-missing",
    kind: Kind::Model,
    skill: Skill::Forces,
    prior: 5.0,
    common: true,
    sign: None,
    scopes: |problem, key| {
        if several_known(problem, key) {
            each(loads(problem, key))
        } else {
            Vec::new()
        }
    },
    rewrite,
};

fn rewrite(_: &Problem, key: &Key, scope: Scope) -> Option<Key> {
    Some(without(key, only(scope)?))
}
