//! The values of what is sought beside the one that a walk is worked with: each as true, or with
//! what speaks against it.

use super::walk::worked;
use super::walk_sampling::holds_at;
use super::{Method, Working, derive};
use crate::key::{Key, Pins, Sampling};
use crate::statics::Root;
use crate::system::System;

/// Values that differ by less than this share of them are one.
const SAME: f64 = 1e-6;

/// A value of what is sought beside the one that the walk is worked with.
#[derive(Clone, Debug)]
pub struct OtherValue {
    /// The value, SI.
    pub value: f64,
    /// What speaks against it.
    pub but: But,
    /// The working at it, of the same steps; `None` where there is none or it is no answer.
    pub worked: Option<(Key, Sampling)>,
}

/// What speaks against a value that solves the equations.
#[derive(Clone, Debug, PartialEq)]
pub enum But {
    /// Nothing: it is as true as the other.
    Nothing,
    /// The body rests there, and does not come back when it is moved a little.
    Unstable,
    /// It cannot be: a rope would have to push, or the like.
    CannotBe(String),
}

/// The values of what is sought beside the one at which the key is worked.
pub(super) fn others(
    system: &System,
    (working, key): (&Working, &Key),
    values: &[f64],
    roots: &[Root],
) -> Vec<OtherValue> {
    let Some(given) = system.parts().sought.as_ref().map(|sought| sought.given) else {
        return Vec::new();
    };
    let same = |other: &Key| {
        let mut both = key.steps.iter().zip(&other.steps);
        key.steps.len() == other.steps.len()
            && both.all(|(one, other)| (one.id, &one.symbol) == (other.id, &other.symbol))
    };
    let at = |root: &Root| {
        let mut there = values.to_vec();
        *there.get_mut(given.0)? = root.value;
        let anew = derive(system, &there, Method::Components, None).ok();
        let with = |working: &Working| worked(system, working, &there).ok();
        let anew = anew.and_then(|anew| with(&anew));
        // A working of other steps may hold there as well: the cosine of an obtuse angle is below zero.
        anew.filter(|(other, _)| same(other))
            .or_else(|| with(working).filter(|_| holds_at(system, working, &there)))
            .filter(|(key, sampling)| {
                let sought = key.general.as_ref().and_then(|general| general.sought);
                let found = sought.and_then(|(_, id)| key.value(id, sampling.own(), &Pins::new()));
                found.is_some_and(|found| (found - root.value).abs() <= SAME * root.value.abs())
            })
    };
    let elsewhere = roots.iter().filter(|root| root.value != values[given.0]);
    elsewhere
        .map(|root| {
            let but = match (&root.solution, root.stable) {
                (Err(trouble), _) => But::CannotBe(trouble.reason()),
                (Ok(_), Some(false)) => But::Unstable,
                (Ok(_), _) => But::Nothing,
            };
            OtherValue {
                value: root.value,
                worked: (but == But::Nothing).then(|| at(root)).flatten(),
                but,
            }
        })
        .collect()
}
