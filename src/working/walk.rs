//! A working as the key of a guided walk: the same steps, with what a learner is asked at each.

use super::grip::grip;
use super::walk_heading::Headings;
use super::walk_lengths::lengths;
use super::walk_others::{OtherValue, others};
use super::walk_sampling::sampling;
use super::walk_ways::add_ways;
use super::{
    Balance, Expression, Meaning, Method, Quantity, Rule, Stage, Underivable, Working, centres,
    derive, only_laminae, settle,
};
use crate::key::{
    self, Atom, Axis, BalanceKind, Formula, General, Heading, Key, Nature, Pins, Sampling,
    StageIds, Step, StepId,
};
use crate::problem::{ForceId, GivenId, Place, Problem};
use crate::system::{ActId, Asked, HoldKind, System};
use crate::text::Symbol;
use crate::units::Dimension;
use std::collections::{BTreeMap, BTreeSet};

/// A general problem, ready to be walked through.
#[derive(Clone, Debug)]
pub struct Walk {
    /// Its words and numbers.
    pub page: Problem,
    /// The right working.
    pub key: Key,
    /// The numbers at which functions are compared.
    pub sampling: Sampling,
    /// The other values of what is sought.
    pub others: Vec<OtherValue>,
}

/// The walk through a system: by components across the bodies, about the pivots that a teacher
/// would take.
///
/// # Errors
/// Why it cannot be worked.
pub fn walk(system: &System) -> Result<Walk, Underivable> {
    let (working, values, roots) = if only_laminae(system) {
        (centres(system)?, system.values(), Vec::new())
    } else {
        let settled = settle(system)?;
        let working = derive(system, &settled.values, Method::Components, None)?;
        (working, settled.values, settled.roots)
    };
    let (key, sampling) = worked(system, &working, &values)?;
    let others = others(system, (&working, &key), &values, &roots);
    Ok(Walk {
        page: Problem::page(system.page()),
        key,
        sampling,
        others,
    })
}

/// The key of a working at these values.
pub(super) fn worked(
    system: &System,
    working: &Working,
    values: &[f64],
) -> Result<(Key, Sampling), Underivable> {
    let mut key = Maker::new(system, working, values)?.key();
    if let Some(general) = &mut key.general {
        let all = general
            .stages
            .iter()
            .flat_map(|stage| stage.unknowns.clone());
        let value = |id: StepId| match id {
            StepId::Found(_, index) => working.value(Quantity(index), values, system.gravity()),
            _ => None,
        };
        general.start = all.filter_map(|id| Some((id, value(id)?))).collect();
    }
    let sampling = sampling(system, working, &key, values)?;
    multiples(&mut key, &sampling);
    let steps: Vec<StepId> = key.steps.iter().map(|step| step.id).collect();
    if let Some(general) = &mut key.general {
        add_ways(general, (system, working, values), &steps);
        general.lengths = lengths(system, &sampling);
    }
    Ok((key, sampling))
}

struct Maker<'a> {
    system: &'a System,
    working: &'a Working,
    /// The printed numbers, with what is sought found.
    values: &'a [f64],
    /// The given that is sought, and the quantity that stands for it.
    sought: Option<(GivenId, Quantity)>,
    general: General,
    steps: Vec<Step>,
}

impl<'a> Maker<'a> {
    fn new(
        system: &'a System,
        working: &'a Working,
        values: &'a [f64],
    ) -> Result<Maker<'a>, Underivable> {
        let wanted = system.parts().sought.as_ref().map(|sought| sought.given);
        let found = working.find(Meaning::Sought);
        let by_trial = |given: GivenId| Underivable::ByTrial {
            symbol: system.given(given).symbol.shown(),
        };
        let sought = match (wanted, found) {
            (Some(given), _) if working.is_by_trial(given) => return Err(by_trial(given)),
            (Some(given), Some(id)) => Some((given, id)),
            // A condition that no balance gives by hand cannot be walked through.
            (Some(given), None) => return Err(by_trial(given)),
            (None, _) => None,
        };
        Ok(Maker {
            system,
            working,
            values,
            sought,
            general: General::default(),
            steps: Vec::new(),
        })
    }

    fn key(mut self) -> Key {
        self.add_all();
        self.tell_rests();
        self.ask();
        let sought = self.sought.map(|(given, id)| (given, self.id(id)));
        self.general.sought = sought;
        let holds = self.system.parts().holds.iter().enumerate();
        let grips = holds.filter_map(|(index, hold)| {
            let act = ActId::Hold(index);
            let (coefficient, needed, push) = grip(self.system, self.working, act, hold)?;
            Some((self.id(needed), (coefficient, self.id(push))))
        });
        self.general.grips = grips.collect();
        Key {
            pivot: Place::Foot,
            steps: self.steps,
            general: Some(Box::new(self.general)),
        }
    }

    /// Every step, in the order in which they are worked.
    fn add_all(&mut self) {
        let working = self.working;
        let headings = Headings::new(self.system, working, self.values);
        for condition in &working.conditions {
            let heading = headings.of_condition(*condition);
            self.add(*condition, heading, None);
        }
        for centre in &working.centres {
            let pieces = centre.pieces.iter().flatten().flat_map(Formula::inputs);
            for id in pieces.chain(centre.sums.iter().copied()) {
                self.add(id, headings.of_quantity(id), None);
            }
        }
        for (index, stage) in working.stages.iter().enumerate() {
            for need in &stage.needs {
                let heading = match Some(*need) == working.left {
                    true => headings.of_condition(*need),
                    false => headings.of_quantity(*need),
                };
                self.add(*need, heading, Some(index));
            }
            self.add_balances(index, stage, &headings);
            for unknown in &stage.unknowns {
                self.add(*unknown, headings.of_quantity(*unknown), Some(index));
            }
        }
        for result in &working.results {
            self.add(*result, headings.of_quantity(*result), None);
        }
        // What is told nowhere and stands in a formula all the same is never asked.
        let all: Vec<Quantity> = (0..working.quantities.len()).map(Quantity).collect();
        let before = self.steps.len();
        for id in all {
            self.add(id, headings.of_quantity(id), None);
        }
        for step in &mut self.steps[before..] {
            step.asked = false;
        }
        let told_nowhere = self.steps.len() - before;
        self.steps.rotate_right(told_nowhere);
    }

    fn id(&self, id: Quantity) -> StepId {
        StepId::Found(self.nature(id), id.0)
    }

    fn nature(&self, id: Quantity) -> Nature {
        let Some(named) = self.working.named(id) else {
            return Nature::Plain;
        };
        let is_open = !matches!(named.rule, Rule::Formula(_));
        match named.meaning {
            Meaning::Weight(_) => Nature::Weight,
            Meaning::Slope(_) | Meaning::Angle(_) | Meaning::Corner(_) => Nature::Angle,
            Meaning::Sought => Nature::Sought,
            Meaning::Force(act) if is_open => match self.hold(act) {
                Some(HoldKind::Line(_)) => Nature::Either,
                _ => Nature::Pull,
            },
            Meaning::Component(_, axis) => Nature::Along(axis),
            Meaning::FrictionNeeded(_) | Meaning::Couple(_) if is_open => Nature::Either,
            Meaning::Size(_) if self.working.results.contains(&id) => Nature::Size,
            Meaning::Direction(_) => Nature::Direction,
            Meaning::Area(_)
            | Meaning::Mass(_)
            | Meaning::PieceAt(..)
            | Meaning::CentreAt(..)
            | Meaning::ResultantAt(_)
            | Meaning::Arm(_)
            | Meaning::SumAt
            | Meaning::Meeting => Nature::Plain,
            _ => Nature::Part,
        }
    }

    fn hold(&self, act: ActId) -> Option<&HoldKind> {
        match act {
            ActId::Hold(index) => Some(&self.system.parts().holds.get(index)?.kind),
            _ => None,
        }
    }

    fn add(&mut self, id: Quantity, heading: Heading, stage: Option<usize>) {
        let step = self.id(id);
        let known = self.steps.iter().any(|known| known.id == step);
        let Some(named) = self.working.named(id).filter(|_| !known) else {
            return;
        };
        let trivial = matches!(
            named.rule,
            Rule::Formula(Formula::Number(_) | Formula::Atom(Atom::Given(_)))
        );
        let rule = match &named.rule {
            Rule::Formula(formula) => key::Rule::Formula(self.formula(formula)),
            Rule::Solved(stage) => key::Rule::Stage(*stage),
            Rule::Given(_) => key::Rule::Stage(self.sought_stage()),
        };
        if let Some(stage) = stage {
            self.general.stage_of.insert(step, stage);
        }
        self.general.headings.insert(step, heading);
        self.steps.push(Step {
            id: step,
            symbol: self.symbol(&named.symbol),
            dimension: named.dimension,
            rule,
            asked: !trivial
                || self.working.conditions.contains(&id)
                || self.working.left == Some(id),
        });
    }

    /// A name as it can be typed: a comma in it would part two numbers.
    fn symbol(&self, symbol: &Symbol) -> Symbol {
        if !symbol.as_str().contains(',') {
            return symbol.clone();
        }
        let quantities = self.working.quantities.iter().map(|named| &named.symbol);
        let givens = self.system.givens().iter().map(|given| &given.symbol);
        let all: Vec<&Symbol> = quantities.chain(givens).collect();
        let mut plain = symbol.as_str().replace(',', "");
        while all.iter().any(|known| known.matches(&plain)) {
            plain.push('′');
        }
        Symbol::new(plain)
    }

    /// The stage that gives what is sought.
    fn sought_stage(&self) -> usize {
        let sought = self.working.sought.map(|(sought, _)| sought);
        let mut stages = self.working.stages.iter();
        let at = stages.position(|stage| sought.is_some_and(|id| stage.unknowns.contains(&id)));
        at.unwrap_or(usize::MAX)
    }

    fn add_balances(&mut self, index: usize, stage: &Stage, headings: &Headings<'_>) {
        let mut ids = StageIds::default();
        for (place, balance) in stage.balances.iter().enumerate() {
            let id = StepId::Sum(index, place);
            let terms = balance.terms.iter().map(|term| key::Term {
                force: force_of(term.act),
                sign: term.sign,
                amount: self.formula(&term.amount),
            });
            let rule = key::Rule::Balance(key::Balance {
                kind: BalanceKind::General,
                terms: terms.collect(),
            });
            let moments = matches!(balance.kind, super::Kind::Moments(_));
            self.general
                .headings
                .insert(id, headings.of_balance(balance));
            self.general.stage_of.insert(id, index);
            self.steps.push(Step {
                id,
                symbol: Symbol::new(if moments { "ΣM" } else { "ΣF" }),
                dimension: if moments {
                    Dimension::MOMENT
                } else {
                    Dimension::FORCE
                },
                rule,
                asked: !is_alone(balance, stage),
            });
            ids.balances.push(id);
        }
        ids.unknowns = stage.unknowns.iter().map(|id| self.id(*id)).collect();
        self.general.stages.push(ids);
    }

    /// A formula of the working as one of the key.
    fn formula(&self, formula: &Expression) -> Formula {
        let atom = |atom: &Atom<Quantity>| match atom {
            Atom::Given(given) => match self.sought {
                Some((sought, id)) if sought == *given => Atom::Step(self.id(id)),
                _ => Atom::Given(*given),
            },
            Atom::Gravity => Atom::Gravity,
            Atom::Step(id) => Atom::Step(self.id(*id)),
        };
        formula.renamed(&atom)
    }

    /// Which unknowns each formula rests on.
    fn tell_rests(&mut self) {
        let mut rests: BTreeMap<StepId, BTreeSet<StepId>> = BTreeMap::new();
        // As often as formulas may stand within formulas.
        for _ in 0..self.steps.len() {
            let before = rests.clone();
            for step in &self.steps {
                let key::Rule::Formula(formula) = &step.rule else {
                    continue;
                };
                for id in formula.inputs() {
                    let open = self
                        .steps
                        .iter()
                        .any(|one| one.id == id && matches!(one.rule, key::Rule::Stage(_)));
                    let more = rests.get(&id).cloned().unwrap_or_default();
                    let all = rests.entry(step.id).or_default();
                    all.extend(more);
                    all.extend(open.then_some(id));
                }
            }
            if rests == before {
                break;
            }
        }
        rests.retain(|_, all| !all.is_empty());
        self.general.rests = rests;
    }

    /// What the problem wants; what comes after all of it is not asked.
    fn ask(&mut self) {
        let mut wanted: Vec<StepId> = Vec::new();
        for asked in self.system.asked() {
            wanted.extend(self.wanted(asked));
        }
        if wanted.is_empty() {
            wanted = match self
                .working
                .centres
                .iter()
                .flat_map(|centre| &centre.sums)
                .count()
            {
                0 => Vec::new(),
                _ => self
                    .steps
                    .iter()
                    .filter(|step| step.asked)
                    .map(|step| step.id)
                    .collect(),
            };
        }
        let last = self
            .steps
            .iter()
            .rposition(|step| wanted.contains(&step.id));
        if let Some(last) = last {
            for step in &mut self.steps[last + 1..] {
                step.asked = false;
            }
        }
        self.general.wanted = wanted;
    }

    fn part(&self, act: ActId, axis: Axis) -> Vec<StepId> {
        let mut parts = self.working.parts.iter();
        let part = parts.find(|(of, along, _)| (*of, *along) == (act, axis));
        part.map(|(_, _, id)| self.id(*id)).into_iter().collect()
    }

    fn wanted(&self, asked: Asked) -> Vec<StepId> {
        let all = |meanings: &[Meaning]| -> Vec<StepId> {
            let found = meanings
                .iter()
                .filter_map(|meaning| self.working.find(*meaning));
            found.map(|id| self.id(id)).collect()
        };
        match asked {
            Asked::Horizontal(act) => self.part(act, Axis::Horizontal),
            Asked::Vertical(act) => self.part(act, Axis::Vertical),
            Asked::Couple(act) => all(&[Meaning::Couple(act)]),
            Asked::Sought => self.sought.map(|(_, id)| self.id(id)).into_iter().collect(),
            Asked::Force(act) => {
                let whole = all(&[Meaning::Size(act), Meaning::Direction(act)]);
                match whole.is_empty() {
                    false => whole,
                    true => {
                        let force = all(&[
                            Meaning::Force(act),
                            Meaning::FrictionNeeded(act),
                            Meaning::Friction(act),
                        ]);
                        match force.is_empty() {
                            false => force,
                            true => all(&[Meaning::Couple(act)]),
                        }
                    }
                }
            }
        }
    }
}

/// True for a balance that says by itself what its unknown is: `Gx = 0`.
fn is_alone(balance: &Balance, stage: &Stage) -> bool {
    let one = stage.balances.len() == 1 && stage.unknowns.len() == 1;
    let only = balance
        .terms
        .iter()
        .all(|term| term.amount == Formula::step(stage.unknowns[0]));
    one && only
}

fn force_of(act: ActId) -> ForceId {
    match act {
        ActId::Weight(_) => ForceId::OwnWeight,
        ActId::Load(index) => ForceId::Load(index),
        ActId::Cord(index) => ForceId::Rope(index),
        ActId::Hold(index) => ForceId::Support(index),
    }
}

/// Finds which steps are multiples of one unknown: nothing without it, twice as much at twice it.
fn multiples(key: &mut Key, sampling: &Sampling) {
    let Some(general) = &key.general else {
        return;
    };
    let sample = sampling.own();
    let mut found = BTreeMap::new();
    for (id, all) in &general.rests {
        let mut one = all.iter();
        let (Some(unknown), None) = (one.next(), one.next()) else {
            continue;
        };
        let at = |value: f64| key.value(*id, sample, &Pins::from([(*unknown, value)]));
        if let (Some(none), Some(once), Some(twice)) = (at(0.0), at(1.0), at(2.0))
            && none.abs() <= 1e-12 * once.abs()
            && (twice - 2.0 * once).abs() <= 1e-12 * once.abs()
        {
            found.insert(*id, *unknown);
        }
    }
    if let Some(general) = &mut key.general {
        general.multiples = found;
    }
}
