//! Sine for cosine, or cosine for sine, in a component.
//!
//! # What the learner did
//! Took the cosine of the angle between the force and the body where the component across the
//! body needs the sine (or, with the complementary angle, the other way round).
//!
//! # Why it tempts
//! "Sine is opposite, cosine is adjacent" is remembered without the triangle it belongs to; many
//! first examples have the angle where the cosine is right.
//!
//! # Rewrite
//! Formula: the ratio of the component, for one force, for all weights, or for every force; or the
//! ratio of a rope's level or upright part.
//!
//! # Known false alarms
//! With a rope parallel to the weights the exchange everywhere gives the right pull.
//!
//! # Source
//! Common practice, no source.

use super::rewriting::{parts_along, with_across};
use super::{Kind, Mistake, Scope, Sign, Skill, WRONG_LEG, covered, every_scope};
use crate::key::{Formula, Key, StepId};
use crate::problem::Problem;

/// The mistake.
pub(super) static MISTAKE: Mistake = Mistake {
    id: "sine-cosine-exchanged",
    family: WRONG_LEG,
    kind: Kind::Formula,
    skill: Skill::Resolving,
    prior: 10.0,
    common: true,
    sign: Some(Sign::Angle),
    scopes: |problem, key| {
        let mut scopes = every_scope(problem, key, StepId::Across);
        scopes.extend(parts_along(key).map(Scope::Here));
        scopes
    },
    rewrite,
};

fn rewrite(problem: &Problem, key: &Key, scope: Scope) -> Option<Key> {
    if let Scope::Here(part @ StepId::PartOf(..)) = scope {
        return Some(key.with_formula(part, &|node| match node {
            Formula::Sine(angle) => Some(Formula::Cosine(angle.clone())),
            Formula::Cosine(angle) => Some(Formula::Sine(angle.clone())),
            _ => None,
        }));
    }
    let forces = covered(problem, key, scope, StepId::Across);
    Some(with_across(problem, key, &forces, |size, ratio| {
        size.times(match ratio {
            Formula::Tagged(role, inner) => match *inner {
                Formula::Sine(angle) => Formula::Cosine(angle).tagged(role),
                other => other.tagged(role),
            },
            other => other,
        })
    }))
}
