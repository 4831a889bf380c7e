//! The distances of two loads exchanged.
//!
//! # What the learner did
//! Gave each of two loads the distance that belongs to the other.
//!
//! # Why it tempts
//! Both distances stand in one sentence, and both are measured from the hinge.
//!
//! # Rewrite
//! Formula: the distances of a load and of the next one in the balance change places.
//!
//! # Known false alarms
//! Two loads of one weight: the exchange changes nothing, and is not looked for.
//!
//! # Source
//! Common practice, no source.

use super::rewriting::{each, loads, only, with_rules};
use super::{Kind, Mistake, Skill};
use crate::key::StepId;

/// The mistake.
pub(super) static MISTAKE: Mistake = Mistake {
    id: "distances-exchanged",
    family: "load-place",
    kind: Kind::Formula,
    skill: Skill::Places,
    prior: 3.0,
    common: false,
    // The last load has no next one.
    scopes: |problem, key| each(loads(problem, key).into_iter().rev().skip(1).rev()),
    rewrite: |problem, key, scope| {
        let one = only(scope)?;
        let mut others = loads(problem, key).into_iter().skip_while(|id| *id != one);
        let (one, other) = (others.next()?, others.next()?);
        let (near, far) = (StepId::Distance(one), StepId::Distance(other));
        let rule = |id: StepId| Some(key.step(id)?.rule.clone());
        Some(with_rules(key, [(near, rule(far)?), (far, rule(near)?)]))
    },
};
