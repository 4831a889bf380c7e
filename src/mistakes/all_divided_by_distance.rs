//! Every force divided by its distance.
//!
//! # What the learner did
//! Divided each force by its distance where the moment needs their product: the weights, or the pull
//! as well.
//!
//! # Why it tempts
//! It is felt that a force farther out needs less strength.
//!
//! # Rewrite
//! Balance: every known term, or every term, has the force over its distance.
//!
//! # Known false alarms
//! None known.
//!
//! # Source
//! Common practice, no source.

use super::rewriting::{known_turning, over_distance, several_known, turning};
use super::{Kind, Mistake, Scope, Skill};
use crate::key::Key;
use crate::problem::Problem;

/// The mistake.
pub(super) static MISTAKE: Mistake = Mistake {
    id: "all-divided-by-distance",
    family: "moment-divided",
    kind: Kind::Balance,
    skill: Skill::Moments,
    prior: 0.0,
    common: false,
    sign: None,
    scopes: |problem, key| match several_known(problem, key) {
        true => vec![Scope::Weights, Scope::Everywhere],
        false => vec![Scope::Everywhere],
    },
    rewrite,
};

fn rewrite(problem: &Problem, key: &Key, scope: Scope) -> Option<Key> {
    let divided = match scope {
        Scope::Weights => known_turning(problem, key),
        Scope::Everywhere => turning(key),
        _ => return None,
    };
    let each = divided.into_iter();
    Some(each.fold(key.clone(), |changed, id| over_distance(&changed, id)))
}
