//! The whole force given for one of its parts.
//!
//! # What the learner did
//! Gave the size of the hinge's force where one of its two parts is asked.
//!
//! # Why it tempts
//! Both are called the hinge's force, and the last number of the working is at hand.
//!
//! # Rewrite
//! Formula: the scope's part becomes the root of the squares of both.
//!
//! # Known false alarms
//! Where the other part is small the two are nearly the same.
//!
//! # Source
//! Common practice, no source.

use super::rewriting::support;
use super::{Kind, Mistake, Scope, Skill};
use crate::key::{Atom, Axis, Formula, Key, Part, Rule, StepId};
use crate::problem::Problem;

/// The mistake.
pub(super) static MISTAKE: Mistake = Mistake {
    id: "whole-given-for-a-part",
    family: "resultant",
    kind: Kind::Formula,
    skill: Skill::Reactions,
    prior: 0.0,
    common: false,
    sign: None,
    scopes: |_, key| parts_of_sized(key),
    rewrite,
};

/// The two parts of the support's force, where its size is worked out from them.
pub(super) fn parts_of_sized(key: &Key) -> Vec<Scope> {
    let sized = support(key).filter(|id| key.step(StepId::Reaction(*id, Part::Size)).is_some());
    let part = |id, axis| Scope::Here(StepId::Reaction(id, Part::Along(axis)));
    let both = |id| [part(id, Axis::Horizontal), part(id, Axis::Vertical)];
    sized.into_iter().flat_map(both).collect()
}

fn rewrite(_: &Problem, key: &Key, scope: Scope) -> Option<Key> {
    let Scope::Here(part @ StepId::Reaction(id, Part::Along(_))) = scope else {
        return None;
    };
    let worked = key.formula(part)?;
    let whole = key.formula(StepId::Reaction(id, Part::Size))?;
    let whole = whole.rewrite(&|inner| match inner {
        Formula::Atom(Atom::Step(step)) if *step == part => Some(worked.clone()),
        _ => None,
    });
    Some(key.with_rule(part, Rule::Formula(whole)))
}
