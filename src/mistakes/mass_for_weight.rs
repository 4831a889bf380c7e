//! The mass where the weight belongs.
//!
//! # What the learner did
//! Used the mass in kilograms as if it were the force in newtons.
//!
//! # Why it tempts
//! In daily life kilograms are called a weight, and scales show them.
//!
//! # Rewrite
//! Formula: the weight step, for one body or for all, without g.
//!
//! # Known false alarms
//! A learner who keeps g out and multiplies by it at the end is right; the last line shows it.
//!
//! # Source
//! Common practice, no source.

use super::rewriting::with_rules;
use super::{Kind, Mistake, Scope, Skill, covered, every_scope};
use crate::key::{Formula, Key, Role, Rule, StepId};
use crate::problem::{Problem, Size};

/// The mistake.
pub(super) static MISTAKE: Mistake = Mistake {
    id: "mass-for-weight",
    family: "weight-from-mass",
    kind: Kind::Formula,
    skill: Skill::Weights,
    prior: 7.0,
    common: true,
    sign: None,
    scopes: |problem, key| every_scope(problem, key, StepId::Weight),
    rewrite,
};

fn rewrite(problem: &Problem, key: &Key, scope: Scope) -> Option<Key> {
    Some(weighed(problem, key, scope, |mass| mass))
}

/// The key with the weights of a scope made from their masses in another way.
pub(super) fn weighed(
    problem: &Problem,
    key: &Key,
    scope: Scope,
    weight: impl Fn(Formula) -> Formula,
) -> Key {
    let rules = covered(problem, key, scope, StepId::Weight)
        .into_iter()
        .filter_map(|id| match problem.force(id)?.size {
            Size::Weight(mass) => {
                let formula = weight(Formula::given(mass)).tagged(Role::Weight(id));
                Some((StepId::Weight(id), Rule::Formula(formula)))
            }
            _ => None,
        });
    with_rules(key, rules)
}
