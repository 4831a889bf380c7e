//! The calculator set to radians.
//!
//! # What the learner did
//! Typed degrees into a calculator that was set to radians.
//!
//! # Why it tempts
//! The setting is out of sight and stays from another lesson.
//!
//! # Rewrite
//! Formula: the number of degrees is taken as radians, in one component or everywhere.
//!
//! # Known false alarms
//! Values may come out negative or by chance near the right ones.
//!
//! # Source
//! Common practice, no source.

use super::rewriting::turning;
use super::{Kind, Mistake, Scope, Skill};
use crate::key::{Formula, Key, StepId};
use crate::problem::Problem;

/// The mistake.
pub(super) static MISTAKE: Mistake = Mistake {
    id: "radian-calculator",
    family: "calculator-mode",
    kind: Kind::Formula,
    skill: Skill::Numbers,
    prior: 4.0,
    common: false,
    sign: None,
    scopes: |_, key| {
        let mut scopes: Vec<Scope> = turning(key)
            .into_iter()
            .filter(|id| key.step(StepId::Across(*id)).is_some())
            .map(|id| Scope::Here(StepId::Across(id)))
            .collect();
        scopes.push(Scope::Everywhere);
        scopes
    },
    rewrite,
};

fn rewrite(_: &Problem, key: &Key, scope: Scope) -> Option<Key> {
    let steps = key
        .steps
        .iter()
        .map(|step| step.id)
        .filter(|id| match scope {
            Scope::Here(step) => *id == step,
            _ => true,
        });
    Some(steps.fold(key.clone(), |changed, id| {
        changed.with_formula(id, &radians)
    }))
}

/// A function of so many degrees with the number of degrees taken as radians; an angle found in
/// radians with its number taken as degrees.
fn radians(node: &Formula) -> Option<Formula> {
    let taken = |angle: &Formula| {
        Box::new(Formula::Product(vec![
            angle.clone(),
            Formula::Number(1.0_f64.to_degrees()),
        ]))
    };
    match node {
        Formula::Sine(angle) => Some(Formula::Sine(taken(angle))),
        Formula::Cosine(angle) => Some(Formula::Cosine(taken(angle))),
        Formula::Tangent(angle) => Some(Formula::Tangent(taken(angle))),
        Formula::ArcTangent(ratio) => Some(Formula::Product(vec![
            Formula::ArcTangent(ratio.clone()),
            Formula::Number(1.0_f64.to_radians()),
        ])),
        _ => None,
    }
}
