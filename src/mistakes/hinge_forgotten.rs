//! The hinge's force forgotten: the rope alone carries the weights.
//!
//! # What the learner did
//! Found the pull from a balance of the upright forces that has no force of the hinge.
//!
//! # Why it tempts
//! The weights are seen and the rope is seen; that the hinge carries a share as well is not, and a
//! balance of forces is shorter than one of moments.
//!
//! # Rewrite
//! Balance: in place of the moments stand the upright forces, without that of the support.
//!
//! # Known false alarms
//! On a level body it agrees with forces that are balanced without their distances, which is said
//! before it.
//!
//! # Source
//! Common practice, no source.

use super::rewriting::{each, only, pull, support};
use super::{Kind, Mistake, Scope, Skill};
use crate::key::{Axis, Formula, Key, StepId, Term};
use crate::problem::Problem;

/// The mistake.
pub(super) static MISTAKE: Mistake = Mistake {
    id: "hinge-forgotten",
    family: "vertical-balance",
    kind: Kind::Balance,
    skill: Skill::Reactions,
    prior: 0.0,
    common: false,
    sign: None,
    scopes: |_, key| {
        let carries = |id: &_| upright(key).is_some_and(|terms| has(&terms, *id));
        each(pull(key).filter(carries))
    },
    rewrite,
};

fn rewrite(_: &Problem, key: &Key, scope: Scope) -> Option<Key> {
    only(scope)?;
    let terms = upright(key)?;
    Some(key.with_balance(StepId::MomentSum, |balance| balance.terms = terms.clone()))
}

/// The upright forces but the support's, an oblique one as its size times its ratio.
fn upright(key: &Key) -> Option<Vec<Term>> {
    let support = support(key)?;
    let balance = key.balance(StepId::ForceSum(Axis::Vertical))?;
    let others = balance.terms.iter().filter(|term| term.force != support);
    let written = others.map(|term| {
        let part = StepId::PartOf(term.force, Axis::Vertical);
        let amount = match key.formula(part) {
            Some(formula) if term.amount == Formula::step(part) => formula,
            _ => term.amount.clone(),
        };
        Term {
            amount,
            ..term.clone()
        }
    });
    Some(written.collect())
}

fn has(terms: &[Term], id: crate::problem::ForceId) -> bool {
    terms.iter().any(|term| term.force == id)
}
