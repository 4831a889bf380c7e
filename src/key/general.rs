//! What the key of a general working has beside its steps: stages of balances with the unknowns
//! that they give, the unknown that is worked towards now, and what each step is called.

use super::step::positive_first;
use super::{Atom, Formula, Key, Rule, Samples, StepId};
use crate::plane::Vector;
use crate::problem::GivenId;
use std::collections::{BTreeMap, BTreeSet};

/// What a step is called, as plain data; the words are in the catalogue.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Heading {
    /// The end of its keys in the catalogue of words: `weight`, `moments`.
    pub kind: &'static str,
    /// What it is of: the noun of what makes a force, of a piece, of a body.
    pub noun: String,
    /// The name of the force that it is of.
    pub force: String,
    /// The nouns of the bodies of a balance.
    pub bodies: Vec<String>,
    /// Where moments are taken; empty where no name stands there.
    pub spot: String,
    /// The unknowns that have no moment there.
    pub removed: String,
    /// The end of a key in the catalogue of words for the way in which the end of a rope pulls, of
    /// which a part is; empty where the rope pulls in no other way at that body.
    pub end: &'static str,
    /// The end of a key in the catalogue of words for what just happens; empty where nothing does.
    pub condition: &'static str,
}

/// The balances of a stage, and what they give.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct StageIds {
    /// One, or as many as it has unknowns.
    pub balances: Vec<StepId>,
    /// What they give.
    pub unknowns: Vec<StepId>,
}

/// What only the key of a general working has.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct General {
    /// The stages in order.
    pub stages: Vec<StageIds>,
    /// The stage that each step is worked in; steps before and after all stages have none.
    pub stage_of: BTreeMap<StepId, usize>,
    /// The unknown that is worked towards now.
    pub focus: Option<StepId>,
    /// The given that is sought, and its step.
    pub sought: Option<(GivenId, StepId)>,
    /// The unknowns at the printed numbers: from there their values at others are looked for.
    pub start: BTreeMap<StepId, f64>,
    /// What the problem asks for.
    pub wanted: Vec<StepId>,
    /// What each step is called.
    pub headings: BTreeMap<StepId, Heading>,
    /// The unknowns that a step with a formula rests on before they are found.
    pub rests: BTreeMap<StepId, BTreeSet<StepId>>,
    /// Lengths of the drawing beside those of the formulas, for whoever works another way.
    pub lengths: Vec<Samples>,
    /// Steps that are multiples of one unknown.
    pub multiples: BTreeMap<StepId, StepId>,
    /// Unit vectors of the ways in which forces and their parts point where their values are
    /// positive; of what acts between two bodies on the first of them, none of a rope's pulls.
    pub ways: BTreeMap<StepId, Vector>,
    /// The unit vectors of the pulls of a rope at each of its ends, where it has several, with the
    /// noun of the body there; of its parts those along their axis.
    pub ends: BTreeMap<StepId, Vec<(String, Vector)>>,
    /// The level and the upright part of a force, of its size and its direction.
    pub parts: BTreeMap<StepId, [StepId; 2]>,
    /// The nouns of the bodies that each force, part, size and direction acts on.
    pub bodies: BTreeMap<StepId, Vec<String>>,
    /// Of friction that a balance gives, and that a coefficient limits: the coefficient and the push.
    pub grips: BTreeMap<StepId, (GivenId, StepId)>,
    /// The nouns of the two bodies of what acts between them: in the key's sense on the first, the
    /// reverse of it on the second.
    pub between: BTreeMap<StepId, [String; 2]>,
}

impl Key {
    /// The unknown that is worked towards: that of the moment balance, or of the stage in focus.
    pub fn unknown(&self) -> Option<StepId> {
        match &self.general {
            Some(general) => general
                .focus
                .or_else(|| general.stages.first()?.unknowns.first().copied()),
            None => self
                .steps
                .iter()
                .map(|step| step.id)
                .find(|id| matches!(id, StepId::Pull(_))),
        }
    }

    /// Turns to the unknown that is worked towards while this step is asked; `is_found` tells what
    /// the learner has already.
    pub fn turn_to(&mut self, asked: StepId, is_found: &dyn Fn(StepId) -> bool) {
        let Some(general) = &mut self.general else {
            return;
        };
        let stage = general.stage_of.get(&asked);
        let Some(stage) = stage.and_then(|stage| general.stages.get(*stage)) else {
            let mut all = general.stages.iter().flat_map(|stage| &stage.unknowns);
            general.focus = all.find(|id| !is_found(**id)).copied();
            return;
        };
        let open = || stage.unknowns.iter().find(|id| !is_found(**id));
        let own = stage.unknowns.iter().find(|id| **id == asked);
        general.focus = own.or_else(open).or(stage.unknowns.first()).copied();
    }

    /// The balances that give an unknown: the moment balance its pull, those of a stage theirs.
    pub fn sums_of(&self, unknown: StepId) -> Vec<StepId> {
        match (&self.general, unknown) {
            (None, StepId::Pull(_)) => vec![StepId::MomentSum],
            (Some(general), _) => {
                let mut stages = general.stages.iter();
                stages
                    .find(|stage| stage.unknowns.contains(&unknown))
                    .map_or_else(Vec::new, |stage| stage.balances.clone())
            }
            _ => Vec::new(),
        }
    }

    /// The balance that alone gives an unknown.
    pub fn sum_of(&self, unknown: StepId) -> Option<StepId> {
        match self.sums_of(unknown).as_slice() {
            [only] => Some(*only),
            _ => None,
        }
    }

    /// What a balance alone gives.
    pub fn gives(&self, sum: StepId) -> Option<StepId> {
        match (&self.general, sum) {
            (None, StepId::MomentSum) => self.unknown(),
            (Some(general), StepId::Sum(stage, _)) => {
                let stage = general.stages.get(stage)?;
                match (stage.balances.as_slice(), stage.unknowns.as_slice()) {
                    ([_], [only]) => Some(*only),
                    _ => None,
                }
            }
            _ => None,
        }
    }

    /// The unknowns that a step is made of before they are found: the pull of its component, what
    /// a formula of a general working rests on.
    pub fn open_in(&self, id: StepId) -> Vec<StepId> {
        match (&self.general, id) {
            (Some(general), _) => {
                let rests = general.rests.get(&id);
                rests.map_or_else(Vec::new, |all| all.iter().copied().collect())
            }
            (None, StepId::Across(force) | StepId::PartOf(force, _) | StepId::Moment(force)) => {
                let pull = StepId::Pull(force);
                let is_unknown = self.unknown() == Some(pull);
                is_unknown.then_some(pull).into_iter().collect()
            }
            _ => Vec::new(),
        }
    }

    /// True for a component, part or other multiple of an unknown.
    pub fn is_multiple(&self, id: StepId, unknown: StepId) -> bool {
        match &self.general {
            Some(general) => general.multiples.get(&id) == Some(&unknown),
            None => self.open_in(id).contains(&unknown),
        }
    }

    /// True for the given that is sought: its name stands for what is to be found.
    pub fn is_sought(&self, given: GivenId) -> bool {
        let general = self.general.as_ref();
        general
            .and_then(|general| general.sought)
            .is_some_and(|(sought, _)| sought == given)
    }

    /// What a step of a general working is called.
    pub fn heading(&self, id: StepId) -> Option<&Heading> {
        self.general.as_ref()?.headings.get(&id)
    }

    /// The steps that a step is worked out from, as they stand in its formula or its balances.
    pub fn inputs(&self, id: StepId) -> Vec<StepId> {
        if let Some(Rule::Stage(stage)) = self.step(id).map(|step| &step.rule) {
            let general = self.general.as_ref();
            let stage = general.and_then(|general| general.stages.get(*stage));
            let sums = stage.map_or(&[][..], |stage| &stage.balances);
            return sums.iter().flat_map(|sum| self.inputs(*sum)).collect();
        }
        if let Some(formula) = self.formula(id) {
            return formula.inputs();
        }
        let terms = self.balance(id).map(|balance| balance.terms.iter());
        let terms = terms.into_iter().flatten();
        terms.flat_map(|term| term.amount.inputs()).collect()
    }

    /// The formula of an unknown that one balance gives, where it stands in one term of it as a
    /// factor.
    pub(super) fn worked_out(&self, unknown: StepId, stage: usize) -> Option<Formula> {
        let general = self.general.as_ref()?;
        let [sum] = general.stages.get(stage)?.balances[..] else {
            return None;
        };
        let balance = self.balance(sum)?;
        let holds = |formula: &Formula| self.holds(formula, unknown);
        let mut with = balance.terms.iter().filter(|term| holds(&term.amount));
        let (Some(term), None) = (with.next(), with.next()) else {
            return None;
        };
        let factor = self.factor_of(unknown, &term.amount)?;
        if holds(&factor) {
            return None;
        }
        let others = balance.terms.iter().filter(|other| !holds(&other.amount));
        let signed: Vec<Formula> = others
            .map(|other| match other.sign == term.sign {
                true => Formula::Negative(Box::new(other.amount.clone())),
                false => other.amount.clone(),
            })
            .collect();
        let over = match signed.len() {
            0 => Formula::Number(0.0),
            1 => signed.into_iter().next()?,
            _ => Formula::Sum(positive_first(signed)),
        };
        Some(match factor.bare() {
            Formula::Number(1.0) => over,
            _ => over.over(factor),
        })
    }

    /// True if an unknown stands in a formula, in itself or in what it names.
    pub(crate) fn holds(&self, formula: &Formula, unknown: StepId) -> bool {
        match formula {
            Formula::Atom(Atom::Step(id)) => *id == unknown || self.open_in(*id).contains(&unknown),
            other => other
                .children()
                .into_iter()
                .any(|part| self.holds(part, unknown)),
        }
    }
}
