//! A level pull in the upright balance.
//!
//! # What the learner did
//! Let a rope that pulls level count in the balance of the upright forces.
//!
//! # Why it tempts
//! The balance is taken for one of all forces, whichever way they point.
//!
//! # Rewrite
//! Balance: the whole pull stands in the vertical balance, as one that pulls up, or down.
//!
//! # Known false alarms
//! None known.
//!
//! # Source
//! Common practice, no source.

use super::rewriting::{pull, size};
use super::{Kind, Mistake, Scope, Skill};
use crate::key::{Axis, Key, StepId, Term};
use crate::problem::{ForceId, Problem};

/// The upright balance.
const UPRIGHT: StepId = StepId::ForceSum(Axis::Vertical);

/// The mistake.
pub(super) static MISTAKE: Mistake = Mistake {
    id: "level-pull-upright",
    family: "vertical-balance",
    kind: Kind::Balance,
    skill: Skill::Reactions,
    prior: 0.0,
    common: false,
    sign: None,
    scopes: |_, key| match level(key) {
        // As one that pulls up, and as one that pulls down.
        Some(id) => vec![Scope::Force(id), Scope::Here(part(id))],
        None => Vec::new(),
    },
    rewrite,
};

fn rewrite(problem: &Problem, key: &Key, scope: Scope) -> Option<Key> {
    let force = level(key)?;
    let downwards = scope == Scope::Here(part(force));
    let sign = if downwards { -1.0 } else { 1.0 };
    let amount = size(problem, force)?;
    Some(key.with_balance(UPRIGHT, |balance| {
        balance.terms.push(Term {
            force,
            sign,
            amount: amount.clone(),
        });
    }))
}

/// What would be its upright part.
fn part(id: ForceId) -> StepId {
    StepId::PartOf(id, Axis::Vertical)
}

/// The pull, where it stands in the level balance and not in the upright one.
fn level(key: &Key) -> Option<ForceId> {
    let id = pull(key)?;
    let stands = |axis: Axis| {
        let balance = key.balance(StepId::ForceSum(axis))?;
        Some(balance.terms.iter().any(|term| term.force == id))
    };
    let level = stands(Axis::Horizontal)? && !stands(Axis::Vertical)?;
    level.then_some(id)
}
