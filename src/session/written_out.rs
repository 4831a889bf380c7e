//! What a thought comes to, in formulas and numbers: from what the learner goes on with, as a teacher
//! would work it beside the sheet.

use super::Session;
use crate::diagnosis::Named;
use crate::judge::{Judgement, functions_of_own, nearest_inputs, pins_of_own};
use crate::key::{
    Atom, Formula, Key, Pins, Rule, Samples, StepId, Teller, balance_names, balance_numbers,
    formula_names, formula_numbers,
};
use crate::mistakes::Instance;
use crate::units::{Dimension, value_text};
use std::collections::BTreeMap;

/// A formula in names and in numbers.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Formulas {
    /// In names.
    pub names: String,
    /// In numbers.
    pub numbers: String,
}

/// Earlier wrong values of hers on which a line with a mistake rests.
#[derive(Default)]
pub(super) struct Hers {
    /// As functions of the problem's numbers.
    functions: BTreeMap<StepId, Samples>,
    /// At the problem's own numbers, SI.
    pins: Pins,
    /// The lines that told them.
    pub(super) lines: Vec<usize>,
}

impl Session {
    /// The wrong values of hers from which the mistake gives what she wrote; none where it gives that
    /// from the right ones as well, or better.
    pub(super) fn hers_behind(&self, judgement: &Judgement, named: &Named, at: StepId) -> Hers {
        let (right, standing, sampling) = (&self.key, &self.state.standing, &self.sampling);
        let target = judgement.target;
        let key = named.key(&self.instances);
        let mut inputs = nearest_inputs(key, target);
        inputs.extend(nearest_inputs(key, at));
        // What the line tells and where the mistake was made follow from the others.
        let told = [Some(target), Some(at), right.gives(target)];
        let rests_on = |id: &StepId| !told.contains(&Some(*id)) && inputs.contains(id);
        let mut functions = functions_of_own(right, standing, sampling);
        functions.retain(|id, _| rests_on(id));
        let off = |number: f64, pins: &BTreeMap<StepId, Samples>| {
            let found = key.function(right, target, sampling, pins);
            // A size told for what may act both ways is one in her sense.
            let apart = |found: f64| match target.has_free_sense() {
                true => (found.abs() - number.abs()).abs(),
                false => (found - number).abs(),
            };
            found.map_or(f64::INFINITY, |found| apart(found[0]))
        };
        let number = judgement.evidence.number.map(|number| number.value);
        // The pull may stand in the line as it is: what was done shows in this balance alone.
        let none = BTreeMap::new();
        let pull = right
            .unknown()
            .filter(|id| rests_on(id) && !functions.contains_key(id));
        let pull = pull.and_then(|id| Some((id, right.function(right, id, sampling, &none)?)));
        let told = pull.zip(number).filter(|(pull, number)| {
            let near = 0.002 * number.abs();
            off(*number, &BTreeMap::from([*pull])) < near && off(*number, &none) > near
        });
        if let Some(((id, pull), _)) = told {
            return Hers {
                functions: BTreeMap::from([(id, pull)]),
                pins: Pins::from([(id, pull[0])]),
                lines: Vec::new(),
            };
        }
        let from_hers = number.is_none_or(|number| off(number, &functions) < off(number, &none));
        if !from_hers {
            return Hers::default();
        }
        let mut pins = pins_of_own(right, standing, sampling);
        pins.retain(|id, _| rests_on(id));
        let used = standing
            .iter()
            .filter(|(id, own)| !own.right && rests_on(id));
        let lines = used.map(|(_, own)| own.line).filter(|line| *line > 0);
        let mut lines: Vec<usize> = lines.collect();
        lines.sort_unstable();
        lines.dedup();
        Hers {
            lines,
            functions,
            pins,
        }
    }

    /// What the learner would have written at a step, and what is right there.
    pub(super) fn formulas(
        &self,
        instance: &Instance,
        at: StepId,
        hers: &Hers,
    ) -> Option<(Formulas, Formulas)> {
        let wrong = self.written(&instance.key, at, hers)?;
        let right = self.written(&self.key, at, hers)?;
        (wrong != right).then_some((wrong, right))
    }

    fn written(&self, key: &Key, at: StepId, hers: &Hers) -> Option<Formulas> {
        let named = self.unfound_at(at);
        let teller = Teller {
            problem: &self.problem,
            key,
            sample: self.sampling.own(),
            pins: &hers.pins,
            figures: self.problem.figures(),
            typed: false,
            named: &named,
        };
        if let Some(balance) = key.balance(at) {
            return Some(Formulas {
                names: balance_names(&self.problem, key, balance),
                numbers: balance_numbers(&teller, balance),
            });
        }
        // The known moments are a sum on paper, not a name.
        let known = key.formula(StepId::KnownMoments);
        let formula = key.formula(at)?.rewrite(&|part| match part {
            Formula::Atom(Atom::Step(StepId::KnownMoments)) => known.clone(),
            _ => None,
        });
        Some(Formulas {
            names: formula_names(&self.problem, key, &formula),
            numbers: formula_numbers(&teller, &formula),
        })
    }

    /// What is still a letter when a step is worked.
    fn unfound_at(&self, at: StepId) -> Vec<StepId> {
        let Some(rank) = self.key.rank(at) else {
            return Vec::new();
        };
        let later = self.key.steps.iter().skip(rank + 1);
        let unknown = |id: StepId| Some(id) == self.key.unknown();
        let open = later.filter(|step| matches!(step.rule, Rule::Stage(_)) || unknown(step.id));
        open.map(|step| step.id).collect()
    }

    /// What a key gives at the step of a line, as it is told. An angle or a pull that was told without
    /// a sign is one whichever way the difference was taken.
    pub(super) fn gives(&self, key: &Key, judgement: &Judgement, hers: &Hers) -> Option<String> {
        let step = judgement.target;
        let step = match self.key.balance(step) {
            Some(_) => self.key.gives(step)?,
            None => step,
        };
        let found = key.function(&self.key, step, &self.sampling, &hers.functions)?;
        let sized = step.is_angle() || step.is_pull() || step.has_free_sense();
        let plus = judgement
            .evidence
            .number
            .is_some_and(|number| number.value > 0.0);
        Some(self.told_value(
            step,
            if sized && plus {
                found[0].abs()
            } else {
                found[0]
            },
        ))
    }

    pub(super) fn told_value(&self, step: StepId, value: f64) -> String {
        let dimension = self.key.step(step).map(|step| step.dimension);
        let dimension = dimension.unwrap_or(Dimension::NUMBER);
        value_text(value, dimension, self.problem.figures())
    }
}
