//! What a line is judged against: the problem, its key, and the learner's standing lines.

use super::names::{NameRole, Names};
use crate::key::{Key, Samples, Sampling, StepId, agree};
use crate::problem::Problem;
use crate::units::{Dimension, Written};
use std::collections::BTreeMap;

/// A value that the learner has established, right or not.
#[derive(Clone, Debug, PartialEq)]
pub struct Own {
    /// The number of the line.
    pub line: usize,
    /// The value that its name holds: in full for an expression, as typed for a bare number. SI.
    pub value: f64,
    /// The number as typed, if one was typed.
    pub typed: Option<(f64, Written)>,
    /// What it is as a function of the givens; the first entry is at the problem's own numbers.
    pub function: Samples,
    /// True if it is the right value, rounded or not.
    pub right: bool,
}

/// The learner's standing values.
pub type Standing = BTreeMap<StepId, Own>;

/// A name of the learner's own.
#[derive(Clone, Debug, PartialEq)]
pub struct OwnName {
    /// The value it holds, SI.
    pub value: f64,
    /// What it is as a function of the givens.
    pub function: Samples,
    /// Its dimension.
    pub dimension: Dimension,
}

/// Everything that a line is judged against.
pub struct Board<'a> {
    /// The problem.
    pub problem: &'a Problem,
    /// The right key.
    pub key: &'a Key,
    /// The choices of numbers at which functions are compared.
    pub sampling: &'a Sampling,
    /// The names that may be typed.
    pub names: &'a Names,
    /// The learner's standing values.
    pub standing: &'a Standing,
    /// The learner's own names, in the order handed to [`Names::of`].
    pub own_names: &'a [OwnName],
    /// Keys of mistakes whose line the learner chose to go on with: what follows from them is
    /// right too.
    pub carried: &'a [Key],
}

/// Values pinned at every choice of numbers.
pub(crate) type PinnedSamples = BTreeMap<StepId, Samples>;

impl Board<'_> {
    /// The unknown of the moment balance.
    pub fn unknown(&self) -> Option<StepId> {
        self.key
            .steps
            .iter()
            .map(|step| step.id)
            .find(|id| matches!(id, StepId::Pull(_)))
    }

    /// The right function of a step, before the unknown is found (see [`Key::function`]).
    pub fn right(&self, id: StepId) -> Option<Samples> {
        self.key
            .function(self.key, id, self.sampling, &BTreeMap::new())
    }

    /// The learner's own wrong values, as pins.
    pub fn own_pins(&self) -> PinnedSamples {
        self.standing
            .iter()
            .filter(|(_, own)| !own.right)
            .map(|(id, own)| (*id, own.function))
            .collect()
    }

    /// The functions that count as right for a step: the right one first, then those that follow
    /// from some of the learner's own wrong values, each with the lines used.
    pub fn accepted(&self, id: StepId) -> Vec<(Samples, Vec<usize>)> {
        let mut accepted: Vec<(Samples, Vec<usize>)> = Vec::new();
        let mut add = |function: Option<Samples>, lines: Vec<usize>| {
            if let Some(function) = function
                && accepted.iter().all(|(known, _)| !agree(known, &function))
            {
                accepted.push((function, lines));
            }
        };
        add(self.right(id), Vec::new());
        // A balance of her own gives her the unknown.
        let unknown = self.unknown();
        let own_balance = self
            .standing
            .get(&StepId::MomentSum)
            .filter(|own| !own.right);
        if let Some(own) = own_balance.filter(|_| Some(id) == unknown) {
            add(Some(own.function), vec![own.line]);
        }
        let wrong: Vec<(StepId, &Own)> = self
            .standing
            .iter()
            .filter(|(_, own)| !own.right)
            .map(|(step, own)| {
                (
                    unknown
                        .filter(|_| *step == StepId::MomentSum)
                        .unwrap_or(*step),
                    own,
                )
            })
            .filter(|(step, _)| *step != id)
            .collect();
        // All own values first, then each subset: a learner may silently repair some of them.
        let most = 1_usize << wrong.len().min(5);
        for chosen in (1..most).rev() {
            let used: Vec<&(StepId, &Own)> = wrong
                .iter()
                .enumerate()
                .filter(|(index, _)| chosen & (1 << index) != 0)
                .map(|(_, used)| used)
                .collect();
            let pins: PinnedSamples = used
                .iter()
                .map(|(step, own)| (*step, own.function))
                .collect();
            let mut lines: Vec<usize> = used.iter().map(|(_, own)| own.line).collect();
            lines.sort_unstable();
            add(
                self.key.function(self.key, id, self.sampling, &pins),
                lines.clone(),
            );
            for key in self.carried {
                add(
                    key.function(self.key, id, self.sampling, &pins),
                    lines.clone(),
                );
            }
        }
        for key in self.carried {
            add(
                key.function(self.key, id, self.sampling, &BTreeMap::new()),
                Vec::new(),
            );
        }
        accepted
    }

    /// What a name stands for as a function of the givens: a learner's own wrong value where
    /// there is one, else the right one.
    pub(super) fn name_function(&self, role: NameRole) -> Option<Samples> {
        match role {
            NameRole::Given(id) => Some(std::array::from_fn(|choice| {
                self.sampling.samples[choice].values[id.0]
            })),
            NameRole::Gravity => Some(std::array::from_fn(|choice| {
                self.sampling.samples[choice].gravity
            })),
            NameRole::Step(id) => match self.standing.get(&id) {
                Some(own) if !own.right => Some(own.function),
                _ => self.right(id),
            },
            NameRole::Own(index) => self.own_names.get(index).map(|own| own.function),
        }
    }

    /// The number that a name holds at the problem's own numbers.
    pub(super) fn name_value(&self, role: NameRole) -> Option<f64> {
        match role {
            NameRole::Step(id) => match self.standing.get(&id) {
                Some(own) => Some(own.value),
                None => self.right(id).map(|function| function[0]),
            },
            NameRole::Own(index) => self.own_names.get(index).map(|own| own.value),
            role => self.name_function(role).map(|function| function[0]),
        }
    }
}
