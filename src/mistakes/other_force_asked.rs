//! One part given for the whole force.
//!
//! # What the learner did
//! Gave one of the two parts of the hinge's force where its size is asked.
//!
//! # Why it tempts
//! The last balance gives a force of the hinge, and the working seems done.
//!
//! # Rewrite
//! Formula: the size becomes the size of the scope's part.
//!
//! # Known false alarms
//! None known.
//!
//! # Source
//! Common practice, no source.

use super::whole_given_for_a_part::parts_of_sized;
use super::{Kind, Mistake, Scope, Skill};
use crate::key::{Formula, Key, Part, Rule, StepId};
use crate::problem::Problem;

/// The mistake.
pub(super) static MISTAKE: Mistake = Mistake {
    id: "other-force-asked",
    family: "resultant",
    kind: Kind::Formula,
    skill: Skill::Reactions,
    prior: 0.0,
    common: false,
    sign: None,
    scopes: |_, key| parts_of_sized(key),
    rewrite,
};

fn rewrite(_: &Problem, key: &Key, scope: Scope) -> Option<Key> {
    let Scope::Here(part @ StepId::Reaction(id, Part::Along(_))) = scope else {
        return None;
    };
    let size = StepId::Reaction(id, Part::Size);
    let given = Formula::Absolute(Box::new(Formula::step(part)));
    Some(key.with_rule(size, Rule::Formula(given)))
}
