//! The printed angle taken over as it stands.
//!
//! # What the learner did
//! Used the rope's printed angle, measured from the horizontal or the vertical, as the angle
//! between the rope and the body.
//!
//! # Why it tempts
//! The printed angle stands right at the rope, and it is the only one that does.
//!
//! # Rewrite
//! Formula: the angle step of an oblique rope or load.
//!
//! # Known false alarms
//! On a level body the printed angle is right, or its complement is; then the mistake is not
//! listed.
//!
//! # Source
//! Common practice, no source.

use super::rewriting::{difference, each, only, turning};
use super::{Kind, Mistake, Scope, Skill};
use crate::key::{Formula, Key, Rule, StepId};
use crate::problem::{Acting, Direction, ForceId, GivenId, Problem};

/// The mistake.
pub(super) static MISTAKE: Mistake = Mistake {
    id: "given-angle-as-is",
    family: "angle-taken-over",
    kind: Kind::Formula,
    skill: Skill::Angles,
    prior: 6.0,
    common: false,
    sign: None,
    scopes: |problem, key| {
        each(
            turning(key)
                .into_iter()
                .filter(|id| printed(problem, key, *id).is_some()),
        )
    },
    rewrite,
};

fn rewrite(problem: &Problem, key: &Key, scope: Scope) -> Option<Key> {
    let id = only(scope)?;
    let printed = printed(problem, key, id)?;
    Some(key.with_rule(StepId::Angle(id), Rule::Formula(Formula::given(printed))))
}

/// The printed angle of an oblique force, unless it is the angle asked or its complement.
fn printed(problem: &Problem, key: &Key, id: ForceId) -> Option<GivenId> {
    let Acting::Along(Direction::Oblique { angle, .. }) = problem.force(id)?.acting else {
        return None;
    };
    let complement = difference(Formula::Degrees(90.0), Formula::given(angle));
    match &key.step(StepId::Angle(id))?.rule {
        Rule::Formula(right) if *right == Formula::given(angle) || *right == complement => None,
        _ => Some(angle),
    }
}
