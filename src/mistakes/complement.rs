//! The complementary angle.
//!
//! # What the learner did
//! Took 90° − α where the angle α between the force and the body belongs: the angle with the
//! vertical for the one with the horizontal.
//!
//! # Why it tempts
//! Both angles stand at the same corner of the drawing, and the printed one is near at hand.
//!
//! # Rewrite
//! Formula: the angle step, for one angle or for all.
//!
//! # Known false alarms
//! A learner who calls the other angle α and then takes its cosine is right; an angle alone is
//! only noted.
//!
//! # Source
//! Common practice, no source.

use super::rewriting::{difference, pull, with_across, with_rules};
use super::{Kind, Mistake, Scope, Skill, WRONG_LEG, covered, every_scope};
use crate::key::{Formula, Key, Rule, StepId};
use crate::problem::Problem;

/// The mistake.
pub(super) static MISTAKE: Mistake = Mistake {
    id: "complement",
    family: WRONG_LEG,
    kind: Kind::Formula,
    skill: Skill::Angles,
    prior: 8.0,
    common: true,
    sign: None,
    scopes: |problem, key| {
        let mut scopes = every_scope(problem, key, StepId::Angle);
        if shares_angle(key) {
            scopes.extend([Scope::Weights, Scope::Pull]);
        }
        scopes
    },
    rewrite,
};

fn rewrite(problem: &Problem, key: &Key, scope: Scope) -> Option<Key> {
    // One angle serves all upright forces: taken wrongly for some of them it shows in their parts.
    if shares_angle(key) && matches!(scope, Scope::Weights | Scope::Pull) {
        let forces = covered(problem, key, scope, StepId::Across);
        return Some(with_across(problem, key, &forces, |size, ratio| {
            let other = ratio.rewrite(&|node| match node {
                Formula::Sine(angle) => {
                    let right_angle = Formula::Degrees(90.0);
                    let other = difference(right_angle, angle.as_ref().clone());
                    Some(Formula::Sine(Box::new(other)))
                }
                _ => None,
            });
            size.times(other)
        }));
    }
    let rules = covered(problem, key, scope, StepId::Angle)
        .into_iter()
        .filter_map(|force| {
            let angle = key.formula(StepId::Angle(force))?;
            let other = other_angle(angle);
            Some((StepId::Angle(force), Rule::Formula(other)))
        });
    Some(with_rules(key, rules))
}

/// True where the rope is upright, and so has the angle of the weights.
fn shares_angle(key: &Key) -> bool {
    pull(key).is_some_and(|id| {
        key.step(StepId::Across(id)).is_some() && key.step(StepId::Angle(id)).is_none()
    })
}

/// The complement as a person writes it: θ for 90° − θ.
fn other_angle(angle: Formula) -> Formula {
    if let Formula::Sum(parts) = &angle
        && let [Formula::Degrees(90.0), Formula::Negative(inner)] = parts.as_slice()
    {
        return inner.as_ref().clone();
    }
    // What a right angle exceeds is told without it: β − θ for 90° − (90° + θ − β).
    if let Formula::Sum(parts) = &angle
        && let [Formula::Degrees(90.0), rest @ ..] = parts.as_slice()
        && rest.len() > 1
    {
        let turned = rest.iter().map(|part| match part {
            Formula::Negative(inner) => inner.as_ref().clone(),
            part => Formula::Negative(Box::new(part.clone())),
        });
        let (taken, kept): (Vec<Formula>, Vec<Formula>) =
            turned.partition(|part| matches!(part, Formula::Negative(_)));
        return Formula::Sum(kept.into_iter().chain(taken).collect());
    }
    difference(Formula::Degrees(90.0), angle)
}
