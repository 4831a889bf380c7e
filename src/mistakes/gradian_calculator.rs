//! A calculator set to gradians.
//!
//! # What the learner did
//! Typed degrees into a calculator that takes 400 to the full turn.
//!
//! # Why it tempts
//! One more press of the mode key than was meant.
//!
//! # Rewrite
//! Formula: each angle in a sine, cosine or tangent is nine tenths of itself.
//!
//! # Known false alarms
//! Near the value of a rounded angle where angles are small.
//!
//! # Source
//! Common practice, no source.

use super::rewriting::turning;
use super::{Kind, Mistake, Scope, Skill};
use crate::key::{Formula, StepId};

/// How much of a degree a gradian is.
const GRADIAN: f64 = 0.9;

/// The mistake.
pub(super) static MISTAKE: Mistake = Mistake {
    id: "gradian-calculator",
    family: "calculator-mode",
    kind: Kind::Formula,
    skill: Skill::Numbers,
    prior: 1.0,
    common: false,
    sign: None,
    scopes: |_, key| {
        let across = |id: &crate::problem::ForceId| key.step(StepId::Across(*id)).is_some();
        match turning(key).iter().any(across) {
            true => vec![Scope::Everywhere],
            false => Vec::new(),
        }
    },
    rewrite: |_, key, _| {
        let mut changed = key.clone();
        for step in &key.steps {
            changed = changed.with_formula(step.id, &gradians);
        }
        Some(changed)
    },
};

fn gradians(node: &Formula) -> Option<Formula> {
    let taken = |angle: &Formula| {
        let part = Formula::Number(GRADIAN);
        Box::new(Formula::Product(vec![angle.clone(), part]))
    };
    match node {
        Formula::Sine(angle) => Some(Formula::Sine(taken(angle))),
        Formula::Cosine(angle) => Some(Formula::Cosine(taken(angle))),
        Formula::Tangent(angle) => Some(Formula::Tangent(taken(angle))),
        Formula::ArcTangent(ratio) => Some(Formula::Product(vec![
            Formula::ArcTangent(ratio.clone()),
            Formula::Number(1.0 / GRADIAN),
        ])),
        _ => None,
    }
}
