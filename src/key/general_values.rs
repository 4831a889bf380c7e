//! Values of a general working's steps at one choice of numbers.
//!
//! A stage is solved as a whole: Newton's rule over its balances, which ends after one step where
//! they are linear in what they give, and finds a sought angle or distance from where the printed
//! numbers have it. Steps that rest on no open unknown are worked out once.

use super::{Atom, Formula, General, Key, Pins, Rule, Sample, StepId};
use std::cell::RefCell;
use std::collections::BTreeMap;

/// Steps rest on others, which rest on others; deeper than this is a ring.
const DEEPEST: usize = 60;
/// More steps of Newton's rule find nothing.
const MOST_STEPS: usize = 40;
/// A last step below this part of the values has found them.
const NEAR: f64 = 1e-10;
/// A value below this part of the terms that it is made of is nothing.
const DUST: f64 = 1e-11;

/// One evaluation: numbers, pinned steps, and what was worked out already.
pub(super) struct Course<'a> {
    key: &'a Key,
    general: &'a General,
    sample: &'a Sample,
    pins: &'a Pins,
    known: RefCell<BTreeMap<StepId, Option<f64>>>,
}

impl<'a> Course<'a> {
    pub(super) fn new(
        key: &'a Key,
        general: &'a General,
        sample: &'a Sample,
        pins: &'a Pins,
    ) -> Course<'a> {
        Course {
            key,
            general,
            sample,
            pins,
            known: RefCell::default(),
        }
    }

    /// The value of a step.
    pub(super) fn value(&self, id: StepId) -> Option<f64> {
        self.value_within(id, 0)
    }

    /// The value of a formula.
    pub(super) fn formula(&self, formula: &Formula) -> Option<f64> {
        self.formula_with(formula, &Pins::new(), 0)
    }

    fn value_within(&self, id: StepId, depth: usize) -> Option<f64> {
        if let Some(pinned) = self.pins.get(&id) {
            return Some(*pinned);
        }
        if let Some(known) = self.known.borrow().get(&id) {
            return *known;
        }
        if depth > DEEPEST {
            return None;
        }
        let value = match &self.key.step(id)?.rule {
            Rule::Formula(formula) => self.formula_with(formula, &Pins::new(), depth + 1),
            Rule::Stage(stage) => {
                self.solve(*stage, depth + 1);
                return self.known.borrow().get(&id).copied().flatten();
            }
            Rule::Statement | Rule::Balance(_) | Rule::Solve(_) | Rule::KnownSide { .. } => None,
        };
        let value = value.filter(|value| value.is_finite());
        self.known.borrow_mut().insert(id, value);
        value
    }

    /// The value of a formula with these unknowns on trial.
    fn formula_with(&self, formula: &Formula, trial: &Pins, depth: usize) -> Option<f64> {
        if depth > DEEPEST {
            return None;
        }
        formula.value(&|atom| match atom {
            Atom::Given(given) => self.sample.values.get(given.0).copied(),
            Atom::Gravity => Some(self.sample.gravity),
            Atom::Step(id) => self.step_with(*id, trial, depth + 1),
        })
    }

    fn step_with(&self, id: StepId, trial: &Pins, depth: usize) -> Option<f64> {
        if let Some(tried) = trial.get(&id) {
            return Some(*tried);
        }
        if let Some(pinned) = self.pins.get(&id) {
            return Some(*pinned);
        }
        let rests = self.general.rests.get(&id);
        if !rests.is_some_and(|rests| rests.iter().any(|one| trial.contains_key(one))) {
            return self.value_within(id, depth);
        }
        match &self.key.step(id)?.rule {
            Rule::Formula(formula) => self.formula_with(formula, trial, depth + 1),
            _ => None,
        }
    }

    /// The sum of a balance's terms and of their sizes, with these unknowns on trial.
    fn sum(&self, id: StepId, trial: &Pins, depth: usize) -> Option<(f64, f64)> {
        let balance = self.key.balance(id)?;
        balance.terms.iter().try_fold((0.0, 0.0), |sum, term| {
            let amount = self.formula_with(&term.amount, trial, depth)?;
            Some((sum.0 + term.sign * amount, sum.1 + amount.abs()))
        })
    }

    /// Finds the unknowns of a stage.
    fn solve(&self, stage: usize, depth: usize) {
        let Some(stage) = self.general.stages.get(stage) else {
            return;
        };
        let pinned = |id: &StepId| self.pins.contains_key(id);
        let unknowns: Vec<StepId> = stage
            .unknowns
            .iter()
            .filter(|id| !pinned(id))
            .copied()
            .collect();
        let found = self.newton(&stage.balances, &unknowns, depth);
        let mut known = self.known.borrow_mut();
        for (at, id) in unknowns.iter().enumerate() {
            let value = found.as_ref().and_then(|found| found.get(at).copied());
            known.insert(*id, value.filter(|value| value.is_finite()));
        }
    }

    fn newton(&self, sums: &[StepId], unknowns: &[StepId], depth: usize) -> Option<Vec<f64>> {
        let start = |id: &StepId| match self.general.sought {
            Some((given, sought)) if sought == *id => self.sample.values.get(given.0).copied(),
            _ => Some(self.general.start.get(id).copied().unwrap_or(0.0)),
        };
        let mut at: Vec<f64> = unknowns.iter().map(start).collect::<Option<_>>()?;
        let trial =
            |at: &[f64]| -> Pins { unknowns.iter().copied().zip(at.iter().copied()).collect() };
        let sums_at = |at: &[f64]| -> Option<Vec<(f64, f64)>> {
            let trial = trial(at);
            sums.iter()
                .map(|sum| self.sum(*sum, &trial, depth))
                .collect()
        };
        let mut most = f64::INFINITY;
        for _ in 0..MOST_STEPS {
            let here = sums_at(&at)?;
            let mut rows: Vec<Vec<f64>> = here.iter().map(|(sum, _)| vec![-sum]).collect();
            for index in (0..unknowns.len()).rev() {
                let step = self.step_of(unknowns[index], at[index]);
                let moved = |by: f64| {
                    let mut moved = at.clone();
                    moved[index] += by;
                    sums_at(&moved)
                };
                let (more, less) = (moved(step)?, moved(-step)?);
                for (row, (more, less)) in rows.iter_mut().zip(more.iter().zip(&less)) {
                    row.insert(0, (more.0 - less.0) / (2.0 * step));
                }
            }
            let change = eliminate(rows, unknowns.len())?;
            most = 0.0;
            for (value, change) in at.iter_mut().zip(&change) {
                *value += change;
                most = most.max(change.abs() / value.abs().max(1e-300));
            }
            if at.iter().any(|value| !value.is_finite()) {
                return None;
            }
            let there = sums_at(&at)?;
            if there.iter().all(|(sum, size)| sum.abs() <= 1e-13 * size) || most < 1e-13 {
                break;
            }
        }
        // With an own value in their place there are more balances than unknowns.
        let there = sums_at(&at)?;
        let is_nothing = |(sum, size): &(f64, f64)| sum.abs() <= 1e-8 * size.max(1e-300);
        let settled = sums.len() > unknowns.len() || most < NEAR || there.iter().all(is_nothing);
        settled.then(|| self.without_dust(&at, &there))
    }

    /// By how much an unknown is moved to see what depends on it.
    fn step_of(&self, id: StepId, at: f64) -> f64 {
        let sought = self.general.sought.is_some_and(|(_, sought)| sought == id);
        if sought {
            1e-5 * at.abs().max(1e-3)
        } else {
            at.abs().max(1.0)
        }
    }

    /// Unknowns with what rounding left of nothing taken away.
    fn without_dust(&self, at: &[f64], sums: &[(f64, f64)]) -> Vec<f64> {
        let largest = at.iter().fold(0.0_f64, |most, one| most.max(one.abs()));
        let size = sums.iter().fold(largest, |most, (_, size)| most.max(*size));
        let clean = |value: &f64| {
            if value.abs() <= DUST * size {
                0.0
            } else {
                *value
            }
        };
        at.iter().map(clean).collect()
    }
}

/// Solves as many equations as there are unknowns, or more that agree, by elimination with the
/// largest pivot of a column; each row ends with its right side.
pub(crate) fn eliminate(mut rows: Vec<Vec<f64>>, count: usize) -> Option<Vec<f64>> {
    if rows.len() < count {
        return None;
    }
    for row in &mut rows {
        let scale = row[..count]
            .iter()
            .fold(0.0_f64, |most, one| most.max(one.abs()));
        if scale > 0.0 {
            row.iter_mut().for_each(|one| *one /= scale);
        }
    }
    for column in 0..count {
        let size = |row: &usize| rows[*row][column].abs();
        let best = (column..rows.len()).max_by(|one, other| size(one).total_cmp(&size(other)))?;
        if rows[best][column].abs() < 1e-12 {
            return None;
        }
        rows.swap(column, best);
        let pivot = rows[column].clone();
        for (index, row) in rows.iter_mut().enumerate() {
            if index == column {
                continue;
            }
            let factor = row[column] / pivot[column];
            for (entry, taken) in row.iter_mut().zip(&pivot).skip(column) {
                *entry -= factor * taken;
            }
        }
    }
    Some(
        (0..count)
            .map(|at| rows[at][count] / rows[at][at])
            .collect(),
    )
}
