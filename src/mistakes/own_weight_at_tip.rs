//! The own weight at the far end.
//!
//! # What the learner did
//! Let the body's weight act at its far end: the whole length where half of it belongs.
//!
//! # Why it tempts
//! The length is the number that is printed; the middle must be thought of.
//!
//! # Rewrite
//! Formula: the distance of the own weight. A half that was forgotten gives the same function.
//!
//! # Known false alarms
//! None known.
//!
//! # Source
//! Common practice, no source.

use super::rewriting::{each, only, placed, turning};
use super::{Kind, Mistake, Scope, Skill};
use crate::key::Key;
use crate::problem::{ForceId, Place, Problem};

/// The mistake.
pub(super) static MISTAKE: Mistake = Mistake {
    id: "own-weight-at-tip",
    family: "own-weight-place",
    kind: Kind::Formula,
    skill: Skill::Places,
    prior: 7.0,
    common: true,
    sign: None,
    scopes: |problem, key| {
        each(
            turning(key)
                .into_iter()
                .filter(|id| *id == ForceId::OwnWeight && problem.body().centre != Place::Tip),
        )
    },
    rewrite,
};

fn rewrite(problem: &Problem, key: &Key, scope: Scope) -> Option<Key> {
    placed(problem, key, only(scope)?, Place::Tip)
}
