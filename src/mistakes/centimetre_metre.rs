//! One distance in the wrong multiple of its unit.
//!
//! # What the learner did
//! Counted the metres of one distance as centimetres, or turned them into centimetres, and left the
//! others as they are.
//!
//! # Why it tempts
//! Drawings are dimensioned in centimetres, and moments are told in newton metres.
//!
//! # Rewrite
//! Formula: the distance of one force times a hundred, or over a hundred.
//!
//! # Known false alarms
//! With every distance in centimetres the pull is right: that is no mistake, and not looked for.
//!
//! # Source
//! Common practice, no source.

use super::rewriting::{turning, with_distance};
use super::{Kind, Mistake, Scope, Skill};
use crate::key::{Formula, Key, StepId};
use crate::problem::{ForceId, Problem};

/// The mistake.
pub(super) static MISTAKE: Mistake = Mistake {
    id: "centimetre-metre",
    family: "unit-multiple",
    kind: Kind::Formula,
    skill: Skill::Places,
    prior: 1.0,
    common: false,
    sign: None,
    scopes: |_, key| {
        let both = |id: ForceId| [Scope::Force(id), Scope::Here(StepId::Distance(id))];
        turning(key).into_iter().flat_map(both).collect()
    },
    rewrite,
};

fn rewrite(_: &Problem, key: &Key, scope: Scope) -> Option<Key> {
    let hundred = || Formula::Number(100.0);
    let (Scope::Force(id) | Scope::Here(StepId::Distance(id))) = scope else {
        return None;
    };
    let distance = key.formula(StepId::Distance(id))?;
    let changed = match scope {
        Scope::Force(_) => hundred().times(distance),
        _ => distance.over(hundred()),
    };
    Some(with_distance(key, id, changed))
}
