//! One distance in the wrong multiple of its unit.
//!
//! # What the learner did
//! Turned the metres of one distance into centimetres, and left the
//! others as they are.
//!
//! # Why it tempts
//! Drawings are dimensioned in centimetres, and moments are told in newton metres.
//!
//! # Rewrite
//! Formula: the distance of one force times a hundred.
//!
//! # Known false alarms
//! With every distance in centimetres the pull is right: that is no mistake, and not looked for.
//!
//! # Source
//! Common practice, no source.

use super::rewriting::{each, only, turning, with_distance};
use super::{Kind, Mistake, Scope, Skill};
use crate::key::{Formula, Key, StepId};
use crate::problem::Problem;

/// The mistake.
pub(super) static MISTAKE: Mistake = Mistake {
    id: "centimetre-metre",
    family: "unit-multiple",
    kind: Kind::Formula,
    skill: Skill::Places,
    prior: 1.0,
    common: false,
    sign: None,
    scopes: |_, key| each(turning(key)),
    rewrite,
};

fn rewrite(_: &Problem, key: &Key, scope: Scope) -> Option<Key> {
    let id = only(scope)?;
    let distance = key.formula(StepId::Distance(id))?;
    let changed = Formula::Number(100.0).times(distance);
    Some(with_distance(key, id, changed))
}
