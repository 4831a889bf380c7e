//! A level or upright part found by dividing.
//!
//! # What the learner did
//! Divided the force by the sine or cosine to get its part along an axis.
//!
//! # Why it tempts
//! The formula of the ratio is solved for the wrong side of the triangle.
//!
//! # Rewrite
//! Formula: the part is the force over its ratio.
//!
//! # Known false alarms
//! The whole force from its part is right to divide; that is another line.
//!
//! # Source
//! Common practice, no source.

use super::rewriting::{parts_along, size, with_rules};
use super::{Kind, Mistake, Scope, Sign, Skill};
use crate::key::{Formula, Key, Role, Rule, StepId};
use crate::problem::Problem;

/// The mistake.
pub(super) static MISTAKE: Mistake = Mistake {
    id: "part-by-dividing",
    family: "divides-for-multiplies",
    kind: Kind::Formula,
    skill: Skill::Resolving,
    prior: 0.0,
    common: false,
    sign: Some(Sign::OverRatio),
    scopes: |_, key| parts_along(key).map(Scope::Here).collect(),
    rewrite,
};

fn rewrite(problem: &Problem, key: &Key, scope: Scope) -> Option<Key> {
    let Scope::Here(part @ StepId::PartOf(force, _)) = scope else {
        return None;
    };
    let ratio = ratio(&key.formula(part)?)?;
    let divided = size(problem, force)?.over(ratio.tagged(Role::PartRatio(force)));
    Some(with_rules(key, [(part, Rule::Formula(divided))]))
}

fn ratio(formula: &Formula) -> Option<Formula> {
    match formula {
        Formula::Sine(_) | Formula::Cosine(_) => Some(formula.clone()),
        other => other.children().into_iter().find_map(ratio),
    }
}
