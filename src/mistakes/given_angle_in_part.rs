//! A printed angle taken over for a level or upright part.
//!
//! # What the learner did
//! Resolved the pull along the axes with the angle as it is printed, which is measured from another
//! line.
//!
//! # Why it tempts
//! One angle is printed at the rope, and it has just served for the component across the body.
//!
//! # Rewrite
//! Formula: the angle in both parts of the pull along the axes is the printed one.
//!
//! # Known false alarms
//! None: it is looked for only where the printed angle is measured from the body.
//!
//! # Source
//! Common practice, no source.

use super::rewriting::{each, only, pull};
use super::{Kind, Mistake, Scope, Skill};
use crate::key::{Axis, Formula, Key, StepId};
use crate::problem::{Acting, Direction, Problem};

/// The mistake.
pub(super) static MISTAKE: Mistake = Mistake {
    id: "given-angle-in-part",
    family: "angle-taken-over",
    kind: Kind::Formula,
    skill: Skill::Resolving,
    prior: 0.0,
    common: false,
    sign: None,
    scopes: |problem, key| {
        let changes = |id: &_| {
            rewrite(problem, key, Scope::Force(*id)).is_some_and(|changed| changed != *key)
        };
        each(pull(key).filter(changes))
    },
    rewrite,
};

fn rewrite(problem: &Problem, key: &Key, scope: Scope) -> Option<Key> {
    let id = only(scope)?;
    let Acting::Along(Direction::FromBody { angle, .. }) = problem.force(id)?.acting else {
        return None;
    };
    let printed = || Box::new(Formula::given(angle));
    // What is resolved along an axis by the sum of several angles.
    let taken = |node: &Formula| match node {
        Formula::Sine(inner) if is_sum(inner) => Some(Formula::Sine(printed())),
        Formula::Cosine(inner) if is_sum(inner) => Some(Formula::Cosine(printed())),
        _ => None,
    };
    let axes = [Axis::Horizontal, Axis::Vertical];
    let steps = axes.map(|axis| StepId::PartOf(id, axis));
    let parts = steps.iter().all(|step| key.step(*step).is_some());
    parts.then(|| {
        let changed = key.clone();
        steps
            .iter()
            .fold(changed, |key, step| key.with_formula(*step, &taken))
    })
}

fn is_sum(angle: &Formula) -> bool {
    matches!(angle.bare(), Formula::Sum(_))
}
