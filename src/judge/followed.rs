//! What follows from the learner's own wrong values without a line of hers: a multiple of an
//! unknown that she has otherwise, a part that is asked nowhere.

use super::board::{Own, PinnedSamples, Standing};
use crate::key::{Key, Pins, Sampling, StepId};
use std::collections::BTreeMap;

/// True for a step whose name follows from her own wrong values: one without a value of its own,
/// or a relation to an unknown that came to stand after it. `T⊥ = T·sin γ` stays right, and its
/// value is that of her T.
pub(crate) fn follows_own(key: &Key, standing: &Standing, id: StepId) -> bool {
    if id.is_balance() || id.is_unknown() {
        return false;
    }
    match standing.get(&id) {
        Some(own) => own.right && is_stale(key, standing, (id, own)),
        None => wrong_values(standing).next().is_some(),
    }
}

/// The values, at the problem's own numbers, from which such a step follows; none where nothing
/// of hers is wrong.
pub(crate) fn pins_of_own(key: &Key, standing: &Standing, sampling: &Sampling) -> Pins {
    fixed(key, standing)
        .filter_map(|(id, own)| {
            let right = || key.value(id, sampling.own(), &Pins::new());
            let sensed = |own: &Own| match id.has_free_sense() {
                true => own.in_sense(),
                false => own.value,
            };
            Some((id, own.map(sensed).or_else(right)?))
        })
        .collect()
}

/// The same as functions.
pub(crate) fn functions_of_own(
    key: &Key,
    standing: &Standing,
    sampling: &Sampling,
) -> PinnedSamples {
    fixed(key, standing)
        .filter_map(|(id, own)| {
            let right = || key.function(key, id, sampling, &BTreeMap::new());
            Some((id, own.map(|own| own.function).or_else(right)?))
        })
        .collect()
}

/// Everything that a step rests on, nearest first, and the step itself before it.
pub(crate) fn nearest_inputs(key: &Key, id: StepId) -> Vec<StepId> {
    let mut found = vec![id];
    let mut next = 0;
    while let Some(step) = found.get(next).copied() {
        let fresh = |input: &StepId| !found.contains(input);
        let inputs: Vec<StepId> = key.inputs(step).into_iter().filter(fresh).collect();
        found.extend(inputs);
        next += 1;
    }
    found
}

fn wrong_values(standing: &Standing) -> impl Iterator<Item = (StepId, &Own)> {
    let all = standing.iter().map(|(id, own)| (*id, own));
    all.filter(|(id, own)| !own.right && !id.is_balance())
}

/// Her wrong values, and beside them the steps that she has right: those count as they stand.
fn fixed<'a>(
    key: &'a Key,
    standing: &'a Standing,
) -> impl Iterator<Item = (StepId, Option<&'a Own>)> {
    let any = wrong_values(standing).next().is_some();
    // A multiple of an unknown is a relation: it follows with the unknown.
    let multiple = |id: StepId| {
        let unknowns = key.open_in(id).into_iter();
        unknowns.into_iter().any(|one| key.is_multiple(id, one))
    };
    let right = standing
        .iter()
        .filter(move |(id, own)| any && own.right && !id.is_balance() && !multiple(**id));
    let right = right.map(|(id, _)| (*id, None));
    wrong_values(standing)
        .map(|(id, own)| (id, Some(own)))
        .chain(right)
}

/// True for a value made of an unknown that came to stand later, and wrong.
fn is_stale(key: &Key, standing: &Standing, (id, own): (StepId, &Own)) -> bool {
    let unknowns = key.open_in(id).into_iter();
    unknowns
        .filter_map(|unknown| standing.get(&unknown))
        .any(|unknown| !unknown.right && unknown.line > own.line)
}
