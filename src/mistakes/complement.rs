//! The complementary angle.
//!
//! # What the learner did
//! Took 90° − α where the angle α between the force and the body belongs: the angle with the
//! vertical for the one with the horizontal.
//!
//! # Why it tempts
//! Both angles stand at the same corner of the drawing, and the printed one is near at hand.
//!
//! # Rewrite
//! Formula: the angle step, for one angle or for all.
//!
//! # Known false alarms
//! A learner who calls the other angle α and then takes its cosine is right; an angle alone is
//! only noted.
//!
//! # Source
//! Common practice, no source.

use super::{Kind, Mistake, Scope, Skill, covered, every_scope};
use crate::key::{Formula, Key, Rule, StepId};
use crate::problem::Problem;

/// The mistake.
pub(super) static MISTAKE: Mistake = Mistake {
    id: "complement",
    family: "wrong-leg",
    kind: Kind::Formula,
    skill: Skill::Angles,
    prior: 8.0,
    common: true,
    scopes: |problem, key| every_scope(problem, key, StepId::Angle),
    rewrite,
};

fn rewrite(problem: &Problem, key: &Key, scope: Scope) -> Option<Key> {
    let forces = covered(problem, key, scope, StepId::Angle);
    let changed = forces.iter().fold(key.clone(), |key, force| {
        let id = StepId::Angle(*force);
        match key.formula(id) {
            Some(angle) => {
                let other = Formula::Sum(vec![
                    Formula::Degrees(90.0),
                    Formula::Negative(Box::new(angle)),
                ]);
                key.with_rule(id, Rule::Formula(other))
            }
            None => key,
        }
    });
    Some(changed)
}
