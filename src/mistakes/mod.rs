//! The catalogue of mistakes: each a rewrite of the right working.
//!
//! A mistake changes the model (a force forgotten), a balance (a term left out) or a formula (sine
//! for cosine), within a scope (one force, all weights, the pull, everywhere). Its rewritten key
//! gives what a learner who thinks so would have written, here and in every later step. Nothing
//! here is a string match or a list of numbers.
//!
//! One file a mistake, with the headings *What the learner did / Why it tempts / Rewrite / Known
//! false alarms / Source*. Words live in the catalogue of words, by `mistake.<id>`.

mod catalogue;
mod complement;
mod sine_cosine_exchanged;

pub use catalogue::CATALOGUE;

use crate::key::{Key, Samples, Sampling, StepId, agree};
use crate::problem::{ForceId, Problem, Size};
use std::collections::BTreeMap;

/// What a mistake rewrites.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Kind {
    /// The model: changes every balance.
    Model,
    /// One balance.
    Balance,
    /// A formula.
    Formula,
}

/// Where a mistake is made.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Scope {
    /// In one step.
    Here(StepId),
    /// For one force, in every step it touches.
    Force(ForceId),
    /// For all weights.
    Weights,
    /// For the pull that is looked for.
    Pull,
    /// For every force.
    Everywhere,
}

/// The skill that a mistake speaks about.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Skill {
    /// Naming the forces on the body.
    Forces,
    /// Weights from masses.
    Weights,
    /// Where a force acts.
    Places,
    /// Angles between lines.
    Angles,
    /// Sine and cosine of a component.
    Resolving,
    /// The moment balance.
    Moments,
    /// Solving for the unknown.
    Solving,
    /// The force balances and the hinge.
    Reactions,
    /// Units, figures and the calculator.
    Numbers,
}

/// A named wrong rule.
#[derive(Debug)]
pub struct Mistake {
    /// Its name, which never changes: journals hold it.
    pub id: &'static str,
    /// Mistakes that one first hint serves share a family.
    pub family: &'static str,
    /// What it rewrites.
    pub kind: Kind,
    /// The skill it speaks about.
    pub skill: Skill,
    /// How often it is met, as a pseudo-count against one another (common practice, no source).
    pub prior: f64,
    /// True for those that drawn numbers must keep apart from the right value.
    pub common: bool,
    /// Where it can be made in a problem.
    pub scopes: fn(&Problem, &Key) -> Vec<Scope>,
    /// The key of a learner who makes it; `None` where it does not apply.
    pub rewrite: fn(&Problem, &Key, Scope) -> Option<Key>,
}

/// A mistake made somewhere in a problem.
#[derive(Clone, Debug)]
pub struct Instance {
    /// Which mistake.
    pub mistake: &'static Mistake,
    /// Where.
    pub scope: Scope,
    /// The key of a learner who makes it.
    pub key: Key,
    /// The first asked step whose value or balance it changes.
    pub shows_at: StepId,
}

/// Every mistake that can be made in this problem and changes something.
pub fn instances(problem: &Problem, key: &Key, sampling: &Sampling) -> Vec<Instance> {
    CATALOGUE
        .iter()
        .flat_map(|mistake| {
            (mistake.scopes)(problem, key)
                .into_iter()
                .map(move |scope| (*mistake, scope))
        })
        .filter_map(|(mistake, scope)| {
            let rewritten = (mistake.rewrite)(problem, key, scope)?;
            let shows_at = shows_at(key, &rewritten, sampling)?;
            Some(Instance {
                mistake,
                scope,
                key: rewritten,
                shows_at,
            })
        })
        .collect()
}

/// The function of a step in a key, as it stands before the unknown is found: the unknown itself
/// is pinned to its right value for every step that comes before it. A balance's function is the
/// unknown that it would give.
pub fn function(
    key: &Key,
    right: &Key,
    id: StepId,
    sampling: &Sampling,
    pins: &BTreeMap<StepId, Samples>,
) -> Option<Samples> {
    let unknown = right
        .steps
        .iter()
        .map(|step| step.id)
        .find(|id| matches!(id, StepId::Pull(_)))?;
    if id == StepId::MomentSum {
        return key.samples(unknown, sampling, pins);
    }
    let mut pins = pins.clone();
    if right.rank(id)? < right.rank(unknown)? && !pins.contains_key(&unknown) {
        pins.insert(unknown, right.samples(unknown, sampling, &BTreeMap::new())?);
    }
    key.samples(id, sampling, &pins)
}

/// The first asked step that differs between two keys, each judged on right earlier values.
fn shows_at(right: &Key, wrong: &Key, sampling: &Sampling) -> Option<StepId> {
    let none = BTreeMap::new();
    right.asked().map(|step| step.id).find(|id| {
        match (
            function(right, right, *id, sampling, &none),
            function(wrong, right, *id, sampling, &none),
        ) {
            (Some(right), Some(wrong)) => !agree(&right, &wrong),
            _ => false,
        }
    })
}

/// The value of a step in a key at the problem's own numbers.
pub fn value(key: &Key, right: &Key, id: StepId, sampling: &Sampling) -> Option<f64> {
    function(key, right, id, sampling, &BTreeMap::new()).map(|samples| samples[0])
}

/// The forces whose size is the weight of a mass.
pub(crate) fn weights(problem: &Problem) -> Vec<ForceId> {
    problem
        .forces()
        .iter()
        .filter(|force| matches!(force.size, Size::Weight(_)))
        .map(|force| force.id)
        .collect()
}

/// The forces that a scope covers, among those with a step made by `step_of`.
pub(crate) fn covered(
    problem: &Problem,
    key: &Key,
    scope: Scope,
    step_of: fn(ForceId) -> StepId,
) -> Vec<ForceId> {
    let all = problem.forces();
    all.iter()
        .filter(|force| key.step(step_of(force.id)).is_some())
        .filter(|force| match scope {
            Scope::Here(step) => step_of(force.id) == step,
            Scope::Force(id) => force.id == id,
            Scope::Weights => matches!(force.size, Size::Weight(_) | Size::Given(_)),
            Scope::Pull => force.size == Size::Unknown,
            Scope::Everywhere => true,
        })
        .map(|force| force.id)
        .collect()
}

/// One scope for every force with a step made by `step_of`, then all weights, the pull, and
/// everywhere, each only where it says more than the scopes before it.
pub(crate) fn every_scope(
    problem: &Problem,
    key: &Key,
    step_of: fn(ForceId) -> StepId,
) -> Vec<Scope> {
    let with = |scope: Scope| covered(problem, key, scope, step_of);
    let all = with(Scope::Everywhere);
    let mut scopes: Vec<Scope> = all.iter().map(|id| Scope::Force(*id)).collect();
    if with(Scope::Weights).len() > 1 {
        scopes.push(Scope::Weights);
    }
    if all.len() > with(Scope::Weights).len().max(1) && with(Scope::Pull).len() < all.len() {
        scopes.push(Scope::Everywhere);
    }
    scopes
}
