//! The pull shared out among the forces.
//!
//! # What the learner did
//! Divided what the balance gives by the number of weights.
//!
//! # Why it tempts
//! The rope carries several weights, and a share for each of them seems fair.
//!
//! # Rewrite
//! Formula: the pull over the number of known forces.
//!
//! # Known false alarms
//! None known.
//!
//! # Source
//! Common practice, no source.

use super::rewriting::{known_turning, pull, several_known, with_pull};
use super::{Kind, Mistake, SHARED_OUT, Scope, Skill};
use crate::key::{Formula, Key, StepId};
use crate::problem::Problem;

/// The mistake.
pub(super) static MISTAKE: Mistake = Mistake {
    id: "pull-shared-between-forces",
    family: SHARED_OUT,
    kind: Kind::Formula,
    skill: Skill::Solving,
    prior: 1.0,
    common: false,
    sign: None,
    scopes: |problem, key| match several_known(problem, key) {
        true => vec![Scope::Pull],
        false => Vec::new(),
    },
    rewrite,
};

fn rewrite(problem: &Problem, key: &Key, _: Scope) -> Option<Key> {
    let id = pull(key)?;
    let (known, factor) = key.solved(StepId::Pull(id), StepId::MomentSum)?;
    let shares = Formula::Number(known_turning(problem, key).len() as f64);
    Some(with_pull(key, id, known.over(factor).over(shares)))
}
