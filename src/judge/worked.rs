//! What is worked out on the way from one step to the next: terms of balances, lever arms, sums.

use super::board::{Board, PinnedSamples};
use super::names::NameRole;
use crate::key::{Balance, Formula, Key, Pins, Samples, StepId, Term};
use crate::problem::ForceId;
use crate::units::Dimension;

/// The most terms of a balance whose partial sums are known.
const MOST_TERMS: usize = 5;

/// The quantities of one working: a key, with some steps as the learner has them.
pub(super) struct Quantities<'a> {
    pub(super) board: &'a Board<'a>,
    pub(super) key: &'a Key,
    pub(super) pins: &'a PinnedSamples,
}

impl Quantities<'_> {
    /// The value of a step, taken as it stands before the unknown is found.
    pub(super) fn step(&self, id: StepId) -> Option<Samples> {
        match self.pins.get(&id) {
            Some(own) => Some(*own),
            None => self
                .key
                .function(self.board.key, id, self.board.sampling, self.pins),
        }
    }

    /// The value of a formula of the key.
    pub(super) fn value(&self, formula: &Formula) -> Option<Samples> {
        let unknown = self.board.unknown();
        let pull = unknown.and_then(|unknown| self.step(unknown));
        let mut function: Samples = [0.0; 4];
        for (choice, value) in function.iter_mut().enumerate() {
            let mut pins: Pins = self
                .pins
                .iter()
                .map(|(id, own)| (*id, own[choice]))
                .collect();
            if let (Some(unknown), Some(pull)) = (unknown, pull) {
                pins.insert(unknown, pull[choice]);
            }
            *value = self
                .key
                .evaluate(formula, &self.board.sampling.samples[choice], &pins)
                .filter(|value| value.is_finite())?;
        }
        Some(function)
    }

    /// The terms of a balance with their signs.
    pub(super) fn terms(&self, balance: &Balance) -> Vec<Samples> {
        let signed = |term: &Term| {
            let value = self.value(&term.amount)?;
            Some(value.map(|value| term.sign * value))
        };
        balance.terms.iter().filter_map(signed).collect()
    }

    /// The weights of a balance of moments times their distances, with the terms' signs.
    pub(super) fn weights_times_distances(&self, balance: &Balance) -> Vec<Samples> {
        let signed = |term: &Term| {
            let weight = self.step(StepId::Weight(term.force))?;
            let distance = self.step(StepId::Distance(term.force))?;
            Some(std::array::from_fn(|choice| {
                term.sign * weight[choice] * distance[choice]
            }))
        };
        balance.terms.iter().filter_map(signed).collect()
    }

    /// Masses in place of weights, for whoever keeps g to the end.
    pub(super) fn without_gravity(
        &self,
        function: &Samples,
        dimension: Dimension,
    ) -> Option<(Samples, Dimension)> {
        let gravity = self.board.name_function(NameRole::Gravity)?;
        let dimension = dimension.per(Dimension::ACCELERATION)?;
        Some((quotient(function, &gravity), dimension))
    }

    /// A force's lever arm.
    pub(super) fn arm(&self, force: ForceId) -> Option<Samples> {
        let size = self
            .step(StepId::Weight(force))
            .or_else(|| self.step(StepId::Pull(force)));
        let (Some(size), Some(moment)) = (size, self.step(StepId::Moment(force))) else {
            return None;
        };
        Some(quotient(&moment, &size))
    }
}

/// Every sum of at least `fewest` of these terms, and not of all but fewer (a balance adds up to
/// nothing), with the sign that makes it positive at the problem's own numbers.
pub(super) fn partial_sums(terms: &[Samples], fewest: u32) -> Vec<Samples> {
    let chosen = chosen_sums(terms, fewest);
    chosen.into_iter().map(|(sum, _)| sum).collect()
}

/// The same, each with its terms.
pub(super) fn chosen_sums(terms: &[Samples], fewest: u32) -> Vec<(Samples, Vec<Samples>)> {
    let terms = &terms[..terms.len().min(MOST_TERMS)];
    let most = terms.iter().map(|term| term[0].abs()).fold(0.0, f64::max);
    (1..1_usize << terms.len())
        .filter(|chosen| {
            let count = chosen.count_ones();
            count >= fewest && (fewest < 2 || count + fewest <= terms.len() as u32)
        })
        .map(|chosen| {
            let of = (0..terms.len()).filter(|index| chosen & (1 << index) != 0);
            let of: Vec<Samples> = of.map(|index| terms[index]).collect();
            let sum: Samples =
                std::array::from_fn(|choice| of.iter().map(|term| term[choice]).sum());
            let sum = if sum[0] < 0.0 {
                sum.map(|value| -value)
            } else {
                sum
            };
            (sum, of)
        })
        .filter(|(sum, _)| sum[0] > 1e-9 * most)
        .collect()
}

fn quotient(over: &Samples, under: &Samples) -> Samples {
    std::array::from_fn(|choice| over[choice] / under[choice])
}
