//! The hinge's force along the body.
//!
//! # What the learner did
//! Let the hinge's force point along the body, and gave the body's angle for its direction.
//!
//! # Why it tempts
//! A rod on a hinge that carries nothing between its ends is pushed along itself.
//!
//! # Rewrite
//! Formula: the direction of the hinge's force is the body's angle with the horizontal.
//!
//! # Known false alarms
//! None known.
//!
//! # Source
//! Common practice, no source.

use super::rewriting::direction_of_support;
use super::{Kind, Mistake, Scope, Skill};
use crate::key::{Formula, Rule, difference};
use crate::problem::{Reference, Tilt};

/// The mistake.
pub(super) static MISTAKE: Mistake = Mistake {
    id: "reaction-along-the-body",
    family: "resultant-angle",
    kind: Kind::Formula,
    skill: Skill::Reactions,
    prior: 3.0,
    common: false,
    sign: None,
    scopes: |problem, key| match problem.body().tilt {
        Tilt::Level => Vec::new(),
        Tilt::Rising { .. } => direction_of_support(key)
            .map(Scope::Here)
            .into_iter()
            .collect(),
    },
    rewrite: |problem, key, scope| {
        let Scope::Here(step) = scope else {
            return None;
        };
        let Tilt::Rising { angle, from } = problem.body().tilt else {
            return None;
        };
        let given = Formula::given(angle);
        let rise = match from {
            Reference::Horizontal => given,
            Reference::Vertical => difference(Formula::Degrees(90.0), given),
        };
        Some(key.with_rule(step, Rule::Formula(rise)))
    },
};
