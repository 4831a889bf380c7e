//! The angle of another force.
//!
//! # What the learner did
//! Used the rope's angle with the body for the weights, or the weights' angle for the rope.
//!
//! # Why it tempts
//! The drawing shows one angle largest, and it is taken for all.
//!
//! # Rewrite
//! Formula: the ratio of a component, of the weights or of the rope, with the other angle in it.
//!
//! # Known false alarms
//! Where the two add to a right angle it agrees with the complementary angle.
//!
//! # Source
//! Common practice, no source.

use super::rewriting::with_across;
use super::{Kind, Mistake, Scope, Skill, covered};
use crate::key::{Formula, Key, StepId};
use crate::problem::{ForceId, Problem};

/// The mistake.
pub(super) static MISTAKE: Mistake = Mistake {
    id: "angle-of-another-force",
    family: "angle-taken-over",
    kind: Kind::Formula,
    skill: Skill::Angles,
    prior: 2.0,
    common: false,
    sign: None,
    scopes: |_, key| match angled(key).len() {
        2 => vec![Scope::Weights, Scope::Pull],
        _ => Vec::new(),
    },
    rewrite,
};

fn rewrite(problem: &Problem, key: &Key, scope: Scope) -> Option<Key> {
    let forces = covered(problem, key, scope, StepId::Across);
    let pull = matches!(scope, Scope::Pull);
    let is_rope = |id: &ForceId| matches!(id, ForceId::Rope(_));
    let other = angled(key).into_iter().find(|id| is_rope(id) != pull)?;
    let sine = Formula::Sine(Box::new(Formula::step(StepId::Angle(other))));
    Some(with_across(problem, key, &forces, |size, ratio| {
        size.times(match ratio {
            Formula::Tagged(role, _) => sine.clone().tagged(role),
            other => other,
        })
    }))
}

/// The forces that an angle with the body is found for: the first of the weights, and the rope.
fn angled(key: &Key) -> Vec<ForceId> {
    let found = key.steps.iter().filter_map(|step| match step.id {
        StepId::Angle(force) => Some(force),
        _ => None,
    });
    found.collect()
}
