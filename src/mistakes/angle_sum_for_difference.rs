//! A sum of angles for a difference, or the other way round.
//!
//! # What the learner did
//! Subtracted two angles that had to be added, or added two that had to be subtracted.
//!
//! # Why it tempts
//! Both angles stand at the same point, and a sketch that is not to scale shows either.
//!
//! # Rewrite
//! Formula: the sign of the second printed angle in an angle step.
//!
//! # Known false alarms
//! None known.
//!
//! # Source
//! Common practice, no source.

use super::rewriting::{each, only, turning};
use super::{Kind, Mistake, Scope, Skill};
use crate::key::{Atom, Formula, Key, Rule, StepId};
use crate::problem::Problem;

/// The mistake.
pub(super) static MISTAKE: Mistake = Mistake {
    id: "angle-sum-for-difference",
    family: "angle-combined",
    kind: Kind::Formula,
    skill: Skill::Angles,
    prior: 4.0,
    common: false,
    sign: None,
    scopes: |problem, key| {
        each(
            turning(key)
                .into_iter()
                .filter(|id| rewrite(problem, key, Scope::Force(*id)).is_some()),
        )
    },
    rewrite,
};

fn rewrite(_: &Problem, key: &Key, scope: Scope) -> Option<Key> {
    let step = StepId::Angle(only(scope)?);
    let Formula::Sum(parts) = key.formula(step)? else {
        return None;
    };
    let is_angle = |part: &Formula| match part {
        Formula::Negative(inner) => matches!(**inner, Formula::Atom(Atom::Given(_))),
        part => matches!(part, Formula::Atom(Atom::Given(_))),
    };
    if parts.iter().filter(|part| is_angle(part)).count() < 2 {
        return None;
    }
    let mut changed = parts;
    let last = changed.pop()?;
    changed.push(match last {
        Formula::Negative(inner) => *inner,
        other => Formula::Negative(Box::new(other)),
    });
    Some(key.with_rule(step, Rule::Formula(Formula::Sum(changed))))
}
