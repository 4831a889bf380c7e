//! Multiplied by the distance where it must be divided out.
//!
//! # What the learner did
//! Multiplied the sum of the known moments by the pull's distance at the end, where the pull is
//! that sum over the distance.
//!
//! # Why it tempts
//! Every line before it multiplied a force by a distance.
//!
//! # Rewrite
//! Formula: the pull becomes the known moments times its distance, beside the ratio as it was
//! divided out, or multiplied by the ratio too.
//!
//! # Known false alarms
//! None known: nothing else has moments times a distance in it.
//!
//! # Source
//! Common practice, no source.

use super::rewriting::{acts_squarely, pull, ratio, with_pull};
use super::{Kind, Mistake, Scope, Skill};
use crate::key::{Formula, Key, Role, StepId};
use crate::problem::Problem;

/// The mistake.
pub(super) static MISTAKE: Mistake = Mistake {
    id: "arm-multiplied",
    family: "moment-for-force",
    kind: Kind::Formula,
    skill: Skill::Solving,
    prior: 2.0,
    common: false,
    sign: None,
    scopes: |_, key| {
        let Some(id) = pull(key) else {
            return Vec::new();
        };
        let mut scopes = vec![Scope::Force(id)];
        if !acts_squarely(key, id) {
            scopes.push(Scope::Pull);
        }
        scopes
    },
    rewrite,
};

fn rewrite(_: &Problem, key: &Key, scope: Scope) -> Option<Key> {
    let id = pull(key)?;
    let distance = Formula::step(StepId::Distance(id)).tagged(Role::Distance(id));
    let moments = Formula::step(StepId::KnownMoments).times(distance);
    let formula = match (ratio(key, id), scope) {
        (Some(ratio), Scope::Pull) => moments.over(ratio),
        (Some(ratio), _) => moments.times(ratio),
        (None, _) => moments,
    };
    Some(with_pull(key, id, formula))
}
