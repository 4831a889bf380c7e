//! A force with the wrong sign in a force balance.
//!
//! # What the learner did
//! Gave one force the wrong sign in a balance of forces.
//!
//! # Why it tempts
//! The sign is set while the equation is rearranged, away from the drawing.
//!
//! # Rewrite
//! Balance: the sign of one term in a force balance.
//!
//! # Known false alarms
//! A learner whose axis points the other way changes every sign and is right.
//!
//! # Source
//! Common practice, no source.

use super::rewriting::{support, turned};
use super::{Kind, Mistake, Scope, Skill};
use crate::key::{Axis, Key, StepId};
use crate::problem::{ForceId, Problem};

/// The mistake.
pub(super) static MISTAKE: Mistake = Mistake {
    id: "direction-reversed",
    family: "reaction-sense",
    kind: Kind::Balance,
    skill: Skill::Reactions,
    prior: 4.0,
    common: false,
    sign: None,
    scopes: |_, key| {
        let axes = [Axis::Horizontal, Axis::Vertical];
        let terms = axes.into_iter().flat_map(|axis| {
            let balance = key.balance(StepId::ForceSum(axis));
            let terms = balance.map(|balance| balance.terms.clone());
            terms
                .unwrap_or_default()
                .into_iter()
                .map(move |term| (axis, term.force))
        });
        terms
            .filter(|(_, force)| Some(*force) != support(key))
            .map(
                |(axis, force)| match key.step(StepId::PartOf(force, axis)) {
                    Some(part) => Scope::Here(part.id),
                    None => Scope::Force(force),
                },
            )
            .collect()
    },
    rewrite,
};

fn rewrite(_: &Problem, key: &Key, scope: Scope) -> Option<Key> {
    let (axes, force): (&[Axis], ForceId) = match scope {
        Scope::Here(StepId::PartOf(force, Axis::Horizontal)) => (&[Axis::Horizontal], force),
        Scope::Here(StepId::PartOf(force, Axis::Vertical)) => (&[Axis::Vertical], force),
        Scope::Force(force) => (&[Axis::Horizontal, Axis::Vertical], force),
        _ => return None,
    };
    Some(axes.iter().fold(key.clone(), |changed, axis| {
        turned(&changed, StepId::ForceSum(*axis), force)
    }))
}
