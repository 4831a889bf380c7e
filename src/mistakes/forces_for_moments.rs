//! Forces balanced where moments must balance.
//!
//! # What the learner did
//! Set up a balance of forces without any distance: of their components, or of the whole forces.
//!
//! # Why it tempts
//! Up must equal down is the first balance learnt.
//!
//! # Rewrite
//! Balance: every distance leaves the moment balance; with the second scope every ratio too.
//!
//! # Known false alarms
//! None known.
//!
//! # Source
//! Common practice, no source.

use super::rewriting::{acts_squarely, size, turning, without_distance};
use super::{Kind, Mistake, Scope, Skill};
use crate::key::{Key, StepId};
use crate::problem::Problem;

/// The mistake.
pub(super) static MISTAKE: Mistake = Mistake {
    id: "forces-for-moments",
    family: "no-distances",
    kind: Kind::Balance,
    skill: Skill::Moments,
    prior: 5.0,
    common: true,
    sign: None,
    scopes: |_, key| {
        let oblique = turning(key).iter().any(|id| !acts_squarely(key, *id));
        let mut scopes = vec![Scope::Here(StepId::MomentSum)];
        scopes.extend(oblique.then_some(Scope::Everywhere));
        scopes
    },
    rewrite,
};

fn rewrite(problem: &Problem, key: &Key, scope: Scope) -> Option<Key> {
    Some(key.with_balance(StepId::MomentSum, |balance| {
        for term in &mut balance.terms {
            let whole = match scope {
                Scope::Everywhere => size(problem, term.force),
                _ => None,
            };
            term.amount = whole.unwrap_or_else(|| without_distance(&term.amount));
        }
    }))
}
