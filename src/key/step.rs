//! Steps, balances and the key that holds them.

use super::formula::Role;
use super::{Formula, General, Nature};
use crate::problem::{ForceId, Place};
use crate::text::Symbol;
use crate::units::Dimension;

/// A direction on the page.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Axis {
    /// Positive to the right.
    Horizontal,
    /// Positive upwards.
    Vertical,
}

/// What is asked of a support's force.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Part {
    /// Its part along an axis, with sign.
    Along(Axis),
    /// Its size.
    Size,
    /// The angle of its line with the horizontal, from 0° to 90°.
    Direction,
}

/// One thing in the key. The same thing has the same id in every key of a problem, right or
/// rewritten.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum StepId {
    /// Which forces act, where, and which way.
    Forces,
    /// The point about which moments are taken.
    Pivot,
    /// A weight, m·g.
    Weight(ForceId),
    /// The distance of a force from the pivot along the body.
    Distance(ForceId),
    /// The angle between a force's line and the body, from 0° to 90°. All upright forces share
    /// the angle of the first.
    Angle(ForceId),
    /// The component of a force across the body.
    Across(ForceId),
    /// The size of a force's moment about the pivot.
    Moment(ForceId),
    /// The sum of the moments of all known forces, as the unknown must balance it.
    KnownMoments,
    /// The moment balance.
    MomentSum,
    /// The size of an unknown rope pull or contact push.
    Pull(ForceId),
    /// The size of a force's part along an axis.
    PartOf(ForceId, Axis),
    /// The balance of forces along an axis.
    ForceSum(Axis),
    /// A part of a support's force.
    Reaction(ForceId, Part),
    /// A quantity of a general working, by its nature and its place there.
    Found(Nature, usize),
    /// A balance of a general working: its stage, and its place in it.
    Sum(usize, usize),
}

impl StepId {
    /// The force that the step is about; `None` for statements and sums.
    pub fn force(self) -> Option<ForceId> {
        match self {
            StepId::Weight(force)
            | StepId::Distance(force)
            | StepId::Angle(force)
            | StepId::Across(force)
            | StepId::Moment(force)
            | StepId::Pull(force)
            | StepId::PartOf(force, _)
            | StepId::Reaction(force, _) => Some(force),
            StepId::Forces
            | StepId::Pivot
            | StepId::KnownMoments
            | StepId::MomentSum
            | StepId::ForceSum(_)
            | StepId::Found(..)
            | StepId::Sum(..) => None,
        }
    }
}

/// How a balance is taken.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum BalanceKind {
    /// Moments about a place of the body, anticlockwise positive.
    MomentsAbout(Place),
    /// Forces along an axis.
    ForcesAlong(Axis),
    /// A balance of a general working; its heading tells how it is taken.
    General,
}

/// One term of a balance: a force's moment or part.
#[derive(Clone, Debug, PartialEq)]
pub struct Term {
    /// The force. Of a general working, the weights of all bodies are [`ForceId::OwnWeight`].
    pub force: ForceId,
    /// +1 where it turns anticlockwise, or points right or up; −1 else.
    pub sign: f64,
    /// Its size: a force times its distance, or a force's part.
    pub amount: Formula,
}

/// A sum of terms that must vanish.
#[derive(Clone, Debug, PartialEq)]
pub struct Balance {
    /// How it is taken.
    pub kind: BalanceKind,
    /// Its terms, in the order of the problem's forces.
    pub terms: Vec<Term>,
}

/// How a step's value comes about.
#[derive(Clone, Debug, PartialEq)]
pub enum Rule {
    /// Said in words: which forces, which pivot.
    Statement,
    /// A formula.
    Formula(Formula),
    /// A balance; its value is the sum of its terms.
    Balance(Balance),
    /// The step's own value solved from this balance.
    Solve(StepId),
    /// The known terms of a balance, with the sign with which the unknown's term balances them.
    KnownSide {
        /// The balance.
        balance: StepId,
        /// The unknown in it.
        unknown: StepId,
    },
    /// One of the unknowns that the balances of this stage of a general working give.
    Stage(usize),
}

/// A step of the key.
#[derive(Clone, Debug, PartialEq)]
pub struct Step {
    /// Which step.
    pub id: StepId,
    /// The name of its quantity.
    pub symbol: Symbol,
    /// The dimension of its value.
    pub dimension: Dimension,
    /// How its value comes about.
    pub rule: Rule,
    /// True if the guided walk asks for it; other steps are recognised when they are typed.
    pub asked: bool,
}

/// The right working, or a rewritten one.
#[derive(Clone, Debug, PartialEq)]
pub struct Key {
    /// The point about which moments are taken.
    pub pivot: Place,
    /// The steps, in the order in which they are worked.
    pub steps: Vec<Step>,
    /// What only the key of a general working has.
    pub general: Option<Box<General>>,
}

impl Key {
    /// The step with this id.
    pub fn step(&self, id: StepId) -> Option<&Step> {
        self.steps.iter().find(|step| step.id == id)
    }

    /// The place of a step in the order of working.
    pub fn rank(&self, id: StepId) -> Option<usize> {
        self.steps.iter().position(|step| step.id == id)
    }

    /// The steps that the guided walk asks for, in order.
    pub fn asked(&self) -> impl Iterator<Item = &Step> {
        self.steps.iter().filter(|step| step.asked)
    }

    /// The formula of a step: its own, or for a solved step the known terms over the unknown's
    /// factor. `None` for statements and balances, or where the unknown's factor can't be split
    /// off.
    pub fn formula(&self, id: StepId) -> Option<Formula> {
        match &self.step(id)?.rule {
            Rule::Formula(formula) => Some(formula.clone()),
            Rule::Solve(balance) => {
                self.solved(id, *balance)
                    .map(|(over, factor)| match factor.bare() {
                        Formula::Number(1.0) => over,
                        _ => over.over(factor),
                    })
            }
            Rule::KnownSide { balance, unknown } => {
                self.solved(*unknown, *balance).map(|(over, _)| over)
            }
            Rule::Stage(stage) => self.worked_out(id, *stage),
            Rule::Statement | Rule::Balance(_) => None,
        }
    }

    /// The balance of a step that is one.
    pub fn balance(&self, id: StepId) -> Option<&Balance> {
        match &self.step(id)?.rule {
            Rule::Balance(balance) => Some(balance),
            _ => None,
        }
    }

    /// This key with the rule of one step replaced.
    #[must_use]
    pub fn with_rule(&self, id: StepId, rule: Rule) -> Key {
        let mut changed = self.clone();
        changed
            .steps
            .iter_mut()
            .filter(|step| step.id == id)
            .for_each(|step| step.rule = rule.clone());
        changed
    }

    /// This key with one balance changed.
    #[must_use]
    pub fn with_balance(&self, id: StepId, change: impl Fn(&mut Balance)) -> Key {
        let mut changed = self.clone();
        for step in &mut changed.steps {
            if let (true, Rule::Balance(balance)) = (step.id == id, &mut step.rule) {
                change(balance);
            }
        }
        changed
    }

    /// This key with every formula node of a step offered to `change` (see [`Formula::rewrite`]).
    #[must_use]
    pub fn with_formula(&self, id: StepId, change: &dyn Fn(&Formula) -> Option<Formula>) -> Key {
        let mut changed = self.clone();
        for step in &mut changed.steps {
            if let (true, Rule::Formula(formula)) = (step.id == id, &step.rule) {
                step.rule = Rule::Formula(formula.rewrite(change));
            }
        }
        changed
    }

    /// The known terms of a balance and the factor of the unknown in it: the unknown is the first
    /// over the second.
    pub fn solved(&self, unknown: StepId, balance: StepId) -> Option<(Formula, Formula)> {
        let balance = self.balance(balance)?;
        let (mut known, mut factor) = (Vec::new(), None);
        let mut unknown_sign = 1.0;
        for term in &balance.terms {
            match self.factor_of(unknown, &term.amount) {
                Some(found) => {
                    factor = Some(found);
                    unknown_sign = term.sign;
                }
                None => known.push(term),
            }
        }
        let factor = factor?;
        let signed: Vec<Formula> = known
            .into_iter()
            .map(|term| {
                if term.sign == unknown_sign {
                    Formula::Negative(Box::new(term.amount.clone()))
                } else {
                    term.amount.clone()
                }
            })
            .collect();
        let over = match signed.len() {
            0 => Formula::Number(0.0),
            1 => signed.into_iter().next()?,
            _ => Formula::Sum(positive_first(signed)),
        };
        Some((over, factor))
    }

    /// What multiplies the unknown in a product, or `None` if the unknown does not occur in it.
    pub(super) fn factor_of(&self, unknown: StepId, amount: &Formula) -> Option<Formula> {
        match amount {
            Formula::Atom(super::Atom::Step(id)) if *id == unknown => Some(Formula::Number(1.0)),
            Formula::Atom(super::Atom::Step(id)) => match &self.step(*id)?.rule {
                Rule::Formula(inner) => self.factor_of(unknown, inner),
                _ => None,
            },
            Formula::Tagged(role @ (Role::Distance(_) | Role::Ratio(_)), inner) => self
                .factor_of(unknown, inner)
                .map(|found| found.tagged(*role)),
            Formula::Tagged(_, inner) => self.factor_of(unknown, inner),
            Formula::Product(parts) => {
                let at = parts
                    .iter()
                    .position(|part| self.factor_of(unknown, part).is_some())?;
                let found = self.factor_of(unknown, &parts[at])?;
                let mut rest: Vec<Formula> = parts
                    .iter()
                    .enumerate()
                    .filter(|(index, _)| *index != at)
                    .map(|(_, part)| part.clone())
                    .collect();
                match found {
                    Formula::Number(1.0) => {}
                    Formula::Product(more) => rest.extend(more),
                    other => rest.push(other),
                }
                match rest.len() {
                    0 => Some(Formula::Number(1.0)),
                    1 => rest.pop(),
                    _ => Some(Formula::Product(rest)),
                }
            }
            Formula::Quotient(over, under) => self
                .factor_of(unknown, over)
                .map(|found| found.over(under.as_ref().clone())),
            _ => None,
        }
    }
}

/// Puts a sum's positive parts first, so that it reads as a person would write it.
pub(super) fn positive_first(parts: Vec<Formula>) -> Vec<Formula> {
    let (negative, mut positive): (Vec<_>, Vec<_>) = parts
        .into_iter()
        .partition(|part| matches!(part, Formula::Negative(_)));
    positive.extend(negative);
    positive
}
