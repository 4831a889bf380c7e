//! The question that tells thoughts apart: an earlier value in which they differ.

use super::{Diagnosis, Voice};
use crate::judge::Board;
use crate::key::StepId;
use crate::mistakes::Instance;

/// Values that lie farther apart than this share are told apart by whoever reads them.
const APART: f64 = 0.01;

/// An earlier value to ask for.
#[derive(Clone, Debug, PartialEq)]
pub struct Probe {
    /// The step whose value is asked for.
    pub step: StepId,
    /// What each of the named mistakes gives there, SI, in their order.
    pub values: Vec<f64>,
}

/// The earlier value that best tells the named families apart, where their hints differ. `None`
/// where the form has proved one, where one family is named alone, or where no value that is still
/// open tells them apart.
pub fn probe(
    board: &Board<'_>,
    target: StepId,
    instances: &[Instance],
    diagnosis: &Diagnosis,
) -> Option<Probe> {
    let first = diagnosis.named.first()?;
    let family = |index: usize| instances[index].mistake.family;
    let hints_differ = diagnosis
        .named
        .iter()
        .any(|named| family(named.instance) != family(first.instance));
    if first.voice == Voice::Flat || !hints_differ {
        return None;
    }
    let before = board.key.rank(target)?;
    // What she has told, right or wrong, is what she goes on from.
    let own = board.own_pins();
    let value = |instance: &Instance, step: StepId| {
        let function = (instance.key).function(board.key, step, board.sampling, &own);
        function.map(|function| function[0])
    };
    let mut best: Option<(f64, Probe)> = None;
    for step in board.key.steps.iter().take(before) {
        if !step.asked || !is_value(board, step.id) {
            continue;
        }
        let named = diagnosis.named.iter();
        let values: Option<Vec<f64>> = named
            .map(|named| value(&instances[named.instance], step.id))
            .collect();
        let Some(values) = values else { continue };
        let weight = told_apart(diagnosis, instances, &values);
        // Of two that tell as much the earlier one is asked for.
        if weight > best.as_ref().map_or(0.0, |(most, _)| *most + 1e-9) {
            best = Some((
                weight,
                Probe {
                    step: step.id,
                    values,
                },
            ));
        }
    }
    best.map(|(_, probe)| probe)
}

/// True for a step that has a value before the unknown is found, and that the learner has not told.
fn is_value(board: &Board<'_>, step: StepId) -> bool {
    let of_unknown = step.force() == board.unknown().and_then(StepId::force);
    let multiple = matches!(step, StepId::Across(_) | StepId::Moment(_)) && of_unknown;
    let told = board.standing.get(&step).is_some_and(|own| own.line > 0);
    board.key.balance(step).is_none() && !multiple && !told && board.right(step).is_some()
}

/// The weight of all pairs of families that these values tell apart.
fn told_apart(diagnosis: &Diagnosis, instances: &[Instance], values: &[f64]) -> f64 {
    let mut weight = 0.0;
    for (at, one) in diagnosis.named.iter().enumerate() {
        for (other_at, other) in diagnosis.named.iter().enumerate().skip(at + 1) {
            let family = |index: usize| instances[index].mistake.family;
            let (mine, its) = (values[at], values[other_at]);
            let apart = (mine - its).abs() > APART * mine.abs().max(its.abs());
            if apart && family(one.instance) != family(other.instance) {
                weight += one.share * other.share;
            }
        }
    }
    weight
}
