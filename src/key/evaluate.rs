//! Values of a key's steps, at the problem's numbers and at numbers drawn anew.

use super::general_values::Course;
use super::{Atom, Formula, Key, Rule, StepId, Term};
use crate::problem::Problem;
use std::cell::{Cell, RefCell};
use std::collections::BTreeMap;

/// How many choices of numbers a formula is compared at: the problem's own and three others.
/// Two functions that agree at all of them are taken for the same.
pub(crate) const CHOICES: usize = 4;

/// Steps rest on others, which rest on others; deeper than this is a ring.
const DEEPEST: usize = 40;

/// A quantity's value at every choice of numbers; the first is the problem's own.
pub type Samples = [f64; CHOICES];

/// Steps whose value is fixed from outside: a learner's own value, or an unknown still free.
pub type Pins = BTreeMap<StepId, f64>;

/// One choice of numbers.
#[derive(Clone, Debug, PartialEq)]
pub struct Sample {
    /// Values of the givens, SI.
    pub values: Vec<f64>,
    /// Acceleration of free fall, m/s².
    pub gravity: f64,
}

/// The choices of numbers at which formulas are compared.
#[derive(Clone, Debug, PartialEq)]
pub struct Sampling {
    /// The problem's own numbers first.
    pub samples: [Sample; CHOICES],
}

impl Sampling {
    /// The choices for a problem. The others move every given by its own few per cent, so that
    /// relations which only hold by chance at the printed numbers break.
    pub fn of(problem: &Problem) -> Sampling {
        let values = problem.values();
        let sample = |choice: usize| Sample {
            values: values
                .iter()
                .enumerate()
                .map(|(index, value)| value * moved(index + 1, choice))
                .collect(),
            gravity: problem.gravity() * moved(0, choice),
        };
        Sampling {
            samples: std::array::from_fn(sample),
        }
    }

    /// The problem's own numbers.
    pub fn own(&self) -> &Sample {
        &self.samples[0]
    }
}

/// The factor of one number at one choice: between 0.92 and 1.08, never near 1, except that the
/// first choice moves nothing. A fixed low-discrepancy pattern: no generator is needed.
pub(crate) fn moved(index: usize, choice: usize) -> f64 {
    if choice == 0 {
        return 1.0;
    }
    const GOLDEN: f64 = 0.618_033_988_749_894_9;
    const PLASTIC: f64 = 0.754_877_666_246_692_8;
    let turn = index as f64 * GOLDEN + choice as f64 * PLASTIC;
    let fraction = turn - libm::floor(turn);
    let size = 0.02 + 0.06 * fraction;
    if (index * 5 + choice * 3) % 7 < 3 {
        1.0 + size
    } else {
        1.0 - size
    }
}

/// True if two quantities are the same function: equal at every choice of numbers.
pub fn agree(left: &Samples, right: &Samples) -> bool {
    let largest = left
        .iter()
        .chain(right)
        .fold(0.0_f64, |most, one| most.max(one.abs()));
    left.iter().zip(right).all(|(left, right)| {
        let scale = left.abs().max(right.abs());
        // What is nothing at one choice of numbers is what rounding left of it.
        let is_dust = scale < 1e-12 || scale < 1e-8 * largest;
        (left - right).abs() <= 1e-8 * scale || is_dust
    })
}

impl Key {
    /// The value of a step at one choice of numbers, with some steps pinned. SI; angles in
    /// radians. `None` where the step has no value (a statement, or a balance that leaves the
    /// unknown open).
    pub fn value(&self, id: StepId, sample: &Sample, pins: &Pins) -> Option<f64> {
        match &self.general {
            Some(general) => Course::new(self, general, sample, pins).value(id),
            None => Run::new(self, sample, pins).value(id, 0),
        }
    }

    /// The value of a step at every choice of numbers. `pins` gives the pinned steps' values.
    pub fn samples(
        &self,
        id: StepId,
        sampling: &Sampling,
        pins: &BTreeMap<StepId, Samples>,
    ) -> Option<Samples> {
        self.samples_if(id, sampling, pins, &|_| true)
    }

    /// The same, where the value at the printed numbers is one that `may_be`.
    fn samples_if(
        &self,
        id: StepId,
        sampling: &Sampling,
        pins: &BTreeMap<StepId, Samples>,
        may_be: &dyn Fn(f64) -> bool,
    ) -> Option<Samples> {
        let mut found = [0.0; CHOICES];
        for (choice, sample) in sampling.samples.iter().enumerate() {
            let pins: Pins = pins
                .iter()
                .map(|(id, samples)| (*id, samples[choice]))
                .collect();
            let value = self.value(id, sample, &pins);
            found[choice] =
                value.filter(|value| value.is_finite() && (choice > 0 || may_be(*value)))?;
        }
        Some(found)
    }

    /// The function of a step in this key, as it stands before the unknown is found: for every
    /// step that comes before the unknown in the `right` key, the unknown is pinned to its right
    /// value unless `pins` says otherwise. The function of the moment balance is the unknown that
    /// it gives.
    pub fn function(
        &self,
        right: &Key,
        id: StepId,
        sampling: &Sampling,
        pins: &BTreeMap<StepId, Samples>,
    ) -> Option<Samples> {
        self.function_if(right, id, sampling, pins, &|_| true)
    }

    /// The same, where its value at the printed numbers is one that `may_be`: of many keys most are
    /// told from a line by one value.
    pub fn function_if(
        &self,
        right: &Key,
        id: StepId,
        sampling: &Sampling,
        pins: &BTreeMap<StepId, Samples>,
        may_be: &dyn Fn(f64) -> bool,
    ) -> Option<Samples> {
        let mut pins = pins.clone();
        if id.is_balance() {
            let unknown = right.gives(id)?;
            pins.remove(&unknown);
            return self.samples_if(unknown, sampling, &pins, may_be);
        }
        pins.remove(&id);
        if let StepId::Found(..) = id {
            for unknown in right.open_in(id) {
                if let (false, Some(value)) = (
                    pins.contains_key(&unknown),
                    right.samples(unknown, sampling, &BTreeMap::new()),
                ) {
                    pins.insert(unknown, value);
                }
            }
            return self.samples_if(id, sampling, &pins, may_be);
        }
        let unknown = right.unknown()?;
        if right.rank(id)? < right.rank(unknown)? && !pins.contains_key(&unknown) {
            pins.insert(unknown, right.samples(unknown, sampling, &BTreeMap::new())?);
        }
        self.samples_if(id, sampling, &pins, may_be)
    }

    /// How far the size of a step's value lies from that of the same step in another problem's
    /// key, as a share of the larger. `None` where a step has no value, and for a multiple of the
    /// unknown, which is told without one.
    pub fn share_apart(
        &self,
        id: StepId,
        sample: &Sample,
        (other, its): (&Key, &Sample),
    ) -> Option<f64> {
        let of_unknown =
            matches!(id, StepId::Across(force) if self.step(StepId::Pull(force)).is_some());
        if of_unknown || self.balance(id).is_some() {
            return None;
        }
        let value = self.value(id, sample, &Pins::new())?.abs();
        let theirs = other.value(id, its, &Pins::new())?.abs();
        let larger = f64::max(value, theirs);
        Some(if larger > 0.0 {
            (value - theirs).abs() / larger
        } else {
            0.0
        })
    }

    /// The value of a formula at one choice of numbers.
    pub fn evaluate(&self, formula: &Formula, sample: &Sample, pins: &Pins) -> Option<f64> {
        match &self.general {
            Some(general) => Course::new(self, general, sample, pins).formula(formula),
            None => Run::new(self, sample, pins).formula(formula, 0),
        }
    }
}

/// One evaluation of a lesson's key: its numbers, its pinned steps, and what was worked out
/// already, by the step's place in the key.
struct Run<'a> {
    key: &'a Key,
    sample: &'a Sample,
    pins: &'a Pins,
    known: RefCell<Vec<Option<Option<f64>>>>,
    /// The unknown on trial, and whether it was met so far.
    trial: Option<StepId>,
    met: Cell<bool>,
}

impl<'a> Run<'a> {
    fn new(key: &'a Key, sample: &'a Sample, pins: &'a Pins) -> Run<'a> {
        Run {
            key,
            sample,
            pins,
            known: RefCell::new(vec![None; key.steps.len()]),
            trial: None,
            met: Cell::new(false),
        }
    }

    fn value(&self, id: StepId, depth: usize) -> Option<f64> {
        if let Some(pinned) = self.pins.get(&id) {
            if self.trial == Some(id) {
                self.met.set(true);
            }
            return Some(*pinned);
        }
        let at = self.key.steps.iter().position(|step| step.id == id)?;
        if let Some(known) = self.known.borrow()[at] {
            return known;
        }
        // A ring that no pin breaks has no value.
        if depth > DEEPEST {
            return None;
        }
        let value = match &self.key.steps[at].rule {
            Rule::Statement | Rule::Stage(_) => None,
            Rule::Formula(formula) => self.formula(formula, depth + 1),
            Rule::Balance(_) => self.balance(id, depth + 1),
            Rule::KnownSide { balance, unknown } => self
                .balance_on_trial(*balance, *unknown, depth)
                .map(|(without, with_one)| match with_one > without {
                    true => -without,
                    false => without,
                }),
            Rule::Solve(balance) => {
                self.balance_on_trial(*balance, id, depth)
                    .and_then(|(without, with_one)| {
                        let factor = with_one - without;
                        (factor.abs() > 1e-9).then(|| -without / factor)
                    })
            }
        };
        self.known.borrow_mut()[at] = Some(value);
        value
    }

    /// A balance with the unknown at nothing, and at one. What stands before the unknown is met is
    /// worked out once.
    fn balance_on_trial(
        &self,
        balance: StepId,
        unknown: StepId,
        depth: usize,
    ) -> Option<(f64, f64)> {
        let mut pins = self.pins.clone();
        pins.insert(unknown, 0.0);
        let without = Run {
            trial: Some(unknown),
            ..Run::new(self.key, self.sample, &pins)
        };
        let mut with_one = self.pins.clone();
        with_one.insert(unknown, 1.0);
        let with_one = Run::new(self.key, self.sample, &with_one);
        let terms = &self.key.balance(balance)?.terms;
        terms.iter().try_fold((0.0, 0.0), |(none, one), term| {
            let pinned = self.pinned_moment((balance, unknown), term);
            let amount = match pinned {
                Some(moment) => moment,
                None => without.formula(&term.amount, depth + 2)?,
            };
            let other = match without.met.get() && pinned.is_none() {
                true => with_one.formula(&term.amount, depth + 2)?,
                false => amount,
            };
            Some((none + term.sign * amount, one + term.sign * other))
        })
    }

    /// The moment of a term of the moment sum where that is pinned by itself, and is not the
    /// unknown's.
    fn pinned_moment(&self, (balance, unknown): (StepId, StepId), term: &Term) -> Option<f64> {
        let known = balance == StepId::MomentSum && unknown != StepId::Pull(term.force);
        let moment = self.pins.get(&StepId::Moment(term.force));
        moment.filter(|_| known).copied()
    }

    fn balance(&self, id: StepId, depth: usize) -> Option<f64> {
        let terms = &self.key.balance(id)?.terms;
        terms.iter().try_fold(0.0, |sum, term| {
            Some(sum + term.sign * self.formula(&term.amount, depth + 1)?)
        })
    }

    fn formula(&self, formula: &Formula, depth: usize) -> Option<f64> {
        formula.value(&|atom| match atom {
            Atom::Given(given) => self.sample.values.get(given.0).copied(),
            Atom::Gravity => Some(self.sample.gravity),
            Atom::Step(id) => self.value(*id, depth + 1),
        })
    }
}
