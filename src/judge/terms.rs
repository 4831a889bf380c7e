//! A line multiplied out: which terms were written down, and what stands in each.
//!
//! Two lines can agree as functions and still set other things against each other: with a level
//! rope, a cosine for a sine in the rope alone gives what nothing resolved gives. The terms tell.

use super::Judgement;
use super::board::Board;
use super::equation::has_unknown;
use super::expression::ratios;
use super::lift::plain_leaf;
use super::names::NameRole;
use super::{typed_angles, written};
use crate::key::{Atom, Formula, Key, Pins, StepId};
use crate::problem::ForceId;
use crate::reading::{Function, NameId, Node, Operator, Reading, Tree, evaluate};
use crate::units::Dimension;

/// More terms than these are not multiplied out.
const MOST_TERMS: usize = 24;

/// What stands in a product, beside its value.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Shape {
    /// A sine.
    pub sine: bool,
    /// A cosine.
    pub cosine: bool,
    /// A stretch that is one length less another.
    pub stretch: bool,
}

impl Shape {
    fn and(self, other: Shape) -> Shape {
        Shape {
            sine: self.sine || other.sine,
            cosine: self.cosine || other.cosine,
            stretch: self.stretch || other.stretch,
        }
    }

    /// True if a force or a side is resolved in it.
    pub fn is_resolved(self) -> bool {
        self.sine || self.cosine
    }
}

/// A product of quantities at the problem's own numbers.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Factor {
    /// Its value, SI.
    pub value: f64,
    /// What stands in it.
    pub shape: Shape,
}

impl Factor {
    /// A number in which nothing stands.
    pub fn number(value: f64) -> Factor {
        Factor {
            value,
            shape: Shape::default(),
        }
    }

    fn times(self, other: Factor) -> Factor {
        Factor {
            value: self.value * other.value,
            shape: self.shape.and(other.shape),
        }
    }

    fn over(self, under: Factor) -> Factor {
        Factor {
            value: self.value / under.value,
            shape: self.shape.and(under.shape),
        }
    }

    /// True if it is the double of the other.
    fn is_double(self, other: Factor) -> bool {
        self.shape == other.shape
            && (self.value - 2.0 * other.value).abs() <= 1e-9 * self.value.abs()
    }

    fn plus(self, other: Factor) -> Factor {
        Factor {
            value: self.value + other.value,
            shape: self.shape.and(other.shape),
        }
    }
}

/// An expression as a sum of products over products.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Terms(Vec<(Factor, Factor)>);

impl Terms {
    fn of(value: f64, shape: Shape) -> Terms {
        Terms(vec![(Factor { value, shape }, Factor::number(1.0))])
    }

    fn number(value: f64) -> Terms {
        Terms::of(value, Shape::default())
    }

    /// The terms as they stand.
    pub fn as_they_stand(&self) -> Vec<Factor> {
        let stands = |(over, under): &(Factor, Factor)| over.over(*under);
        self.0.iter().map(stands).collect()
    }

    /// The terms with the equation multiplied by everything that stands under a line. Of a thing and
    /// its double only the single one: the 2 of L/2 belongs to its distance.
    pub fn cleared(&self) -> Vec<Factor> {
        let mut unders: Vec<Factor> = Vec::new();
        for (_, under) in &self.0 {
            if *under != Factor::number(1.0) && !unders.contains(under) {
                unders.push(*under);
            }
        }
        let all = unders.clone();
        unders.retain(|under| !all.iter().any(|other| under.is_double(*other)));
        let clear = |(over, under): &(Factor, Factor)| {
            let own = unders
                .iter()
                .find(|other| *other == under || under.is_double(**other));
            let others = unders.iter().filter(|other| Some(*other) != own);
            let term = others.fold(*over, |term, other| term.times(*other));
            match own {
                Some(own) if own != under => term.times(Factor::number(0.5)),
                _ => term,
            }
        };
        self.0.iter().map(clear).collect()
    }

    /// What stands above the line, with the least of what stands under one as the common line.
    pub fn above(&self) -> Vec<f64> {
        let under = |term: &&(Factor, Factor)| term.1 != Factor::number(1.0);
        let least = self
            .0
            .iter()
            .filter(under)
            .map(|(_, under)| under.value.abs());
        let least = least.fold(f64::INFINITY, f64::min);
        let terms = self.0.iter().filter(under);
        terms
            .map(|(over, under)| over.value * least / under.value)
            .collect()
    }

    /// The value of the whole, SI.
    pub fn value(&self) -> f64 {
        self.sum().value
    }

    fn negative(self) -> Terms {
        let turned = |(over, under): (Factor, Factor)| {
            let value = -over.value;
            (Factor { value, ..over }, under)
        };
        Terms(self.0.into_iter().map(turned).collect())
    }

    fn plus(mut self, other: Terms) -> Terms {
        self.0.extend(other.0);
        self
    }

    fn times(self, other: Terms) -> Terms {
        if self.0.len() * other.0.len() > MOST_TERMS {
            let product = self.sum().times(other.sum());
            return Terms::of(product.value, product.shape);
        }
        let mut products = Vec::new();
        for (over, under) in &self.0 {
            let by = other.0.iter();
            products.extend(by.map(|(more, less)| (over.times(*more), under.times(*less))));
        }
        Terms(products)
    }

    fn over(self, other: Terms) -> Terms {
        let by = match other.0.as_slice() {
            [(over, under)] => (*under, *over),
            _ => (Factor::number(1.0), other.sum()),
        };
        self.times(Terms(vec![by]))
    }

    /// The terms as one.
    fn sum(&self) -> Factor {
        let terms = self.as_they_stand();
        terms.into_iter().fold(Factor::number(0.0), Factor::plus)
    }

    /// A formula of a key, the components and known moments in it worked out too.
    fn of_formula(key: &Key, formula: &Formula, board: &Board<'_>, pins: &Pins) -> Option<Self> {
        let inner = |formula: &Formula| Terms::of_formula(key, formula, board, pins);
        Some(match formula {
            Formula::Tagged(_, tagged) => inner(tagged)?,
            Formula::Negative(of) => inner(of)?.negative(),
            Formula::Sum(parts) => parts
                .iter()
                .map(inner)
                .reduce(|sum, part| Some(sum?.plus(part?)))??,
            Formula::Product(parts) => parts
                .iter()
                .map(inner)
                .reduce(|product, part| Some(product?.times(part?)))??,
            Formula::Quotient(over, under) => inner(over)?.over(inner(under)?),
            Formula::Atom(Atom::Step(
                id @ (StepId::Across(_)
                | StepId::PartOf(..)
                | StepId::Moment(_)
                | StepId::KnownMoments),
            )) if !pins.contains_key(id) => inner(&key.formula(*id)?)?,
            other => {
                let stretch = match other {
                    Formula::Atom(Atom::Step(id @ StepId::Distance(_))) => {
                        matches!(key.formula(*id), Some(Formula::Sum(_)))
                    }
                    _ => false,
                };
                let shape = Shape {
                    sine: matches!(other, Formula::Sine(_)),
                    cosine: matches!(other, Formula::Cosine(_)),
                    stretch,
                };
                Terms::of(key.evaluate(other, board.sampling.own(), pins)?, shape)
            }
        })
    }

    /// The moment or part of each force in a balance of a key.
    pub fn of_balance(
        board: &Board<'_>,
        key: &Key,
        balance: StepId,
    ) -> Option<Vec<(ForceId, Terms)>> {
        let mut pins = pins(board)?;
        // What it gives stands at its right value, whatever the terms of this key.
        if let Some(unknown) = board.key.gives(balance) {
            pins.entry(unknown).or_insert(board.right(unknown)?[0]);
        }
        key.balance(balance)?
            .terms
            .iter()
            .map(|term| {
                let amount = Terms::of_formula(key, &term.amount, board, &pins)?;
                Some((term.force, amount))
            })
            .collect()
    }

    /// What a learner with this key sets against each other at a step: the terms of the balance
    /// where the step is one or is solved from one, else the formula against its value; the known
    /// moments each by itself or, if `summed`, as one.
    pub fn of_step(board: &Board<'_>, key: &Key, id: StepId, summed: bool) -> Option<Terms> {
        let unknown = board.unknown()?;
        let pins = pins(board)?;
        let of_balance = id == StepId::MomentSum || id == unknown;
        let rule = |key: &Key| key.step(unknown).map(|step| step.rule.clone());
        let known = key.value(StepId::KnownMoments, board.sampling.own(), &pins);
        if of_balance && rule(key) == rule(board.key) {
            let terms = Terms::of_balance(board, key, StepId::MomentSum)?.into_iter();
            if summed {
                let pull = terms.filter(|(force, _)| Some(*force) == unknown.force());
                return Some(
                    pull.map(|(_, term)| term)
                        .fold(Terms::number(known?), Terms::plus),
                );
            }
            return terms.map(|(_, term)| term).reduce(Terms::plus);
        }
        if let StepId::Sum(..) = id {
            let terms = Terms::of_balance(board, key, id)?.into_iter();
            return terms.map(|(_, term)| term).reduce(Terms::plus);
        }
        let id = if of_balance { unknown } else { id };
        let value = pins.get(&id).copied().or(Some(board.right(id)?[0]))?;
        let formula = key.formula(id)?;
        let terms = if summed {
            // The sum stands as a number.
            let mut pins = pins.clone();
            pins.insert(StepId::KnownMoments, known?);
            Terms::of_formula(key, &formula, board, &pins)?
        } else {
            Terms::of_formula(key, &formula, board, &pins)?
        };
        Some(terms.plus(Terms::number(value)))
    }

    /// An expression as typed.
    fn of_tree(board: &Board<'_>, tree: &Tree) -> Option<Terms> {
        let inner = |tree: &Tree| Terms::of_tree(board, tree);
        Some(match &tree.node {
            Node::Negative(of) => inner(of)?.negative(),
            Node::Binary(Operator::Add, one, other) => inner(one)?.plus(inner(other)?),
            Node::Binary(Operator::Subtract, one, other) if !is_stretch(board, one, other) => {
                inner(one)?.plus(inner(other)?.negative())
            }
            Node::Binary(Operator::Multiply, one, other) => inner(one)?.times(inner(other)?),
            Node::Binary(Operator::Divide, one, other) => inner(one)?.over(inner(other)?),
            _ => {
                let value = evaluate(tree, &mut |leaf| plain_leaf(board, leaf)).ok()?;
                let (sine, cosine) = ratios(tree);
                let stretch = matches!(tree.node, Node::Binary(Operator::Subtract, ..));
                let shape = Shape {
                    sine,
                    cosine,
                    stretch,
                };
                Terms::of(value.number_as(Dimension::NUMBER), shape)
            }
        })
    }
}

/// True for one length less another, such as L − L/2: no terms of their own.
pub(super) fn is_stretch(board: &Board<'_>, from: &Tree, taken: &Tree) -> bool {
    let is_leaf = |tree: &Tree| match &tree.node {
        Node::Literal(_) => true,
        Node::Name(id) => board.names.dimension(*id) == Dimension::LENGTH,
        _ => false,
    };
    let is_length = |tree: &Tree| match &tree.node {
        Node::Binary(Operator::Divide, over, under) => is_leaf(over) && is_leaf(under),
        _ => is_leaf(tree),
    };
    is_length(from) && is_length(taken)
}

/// The learner's own values, and the unknown.
fn pins(board: &Board<'_>) -> Option<Pins> {
    let mut pins: Pins = board
        .own_pins()
        .iter()
        .filter(|(id, _)| !id.is_balance())
        .map(|(id, function)| (*id, function[0]))
        .collect();
    let unknown = board.unknown()?;
    let right = board.right(unknown)?[0];
    pins.entry(unknown).or_insert(right);
    Some(pins)
}

/// Which functions stand in a line, and whether it is a number alone or names alone.
fn see_leaves(board: &Board<'_>, sides: &[&Tree], judgement: &mut Judgement) {
    let number = |side: &Tree| {
        let inner = match &side.node {
            Node::Negative(inner) => &inner.node,
            node => node,
        };
        matches!(inner, Node::Literal(_))
    };
    let named = |side: &Tree| matches!(side.node, Node::Name(_));
    judgement.evidence.alone = sides.iter().all(|side| number(side) || named(side))
        && sides.iter().any(|side| number(side));
    let own = |(id, _): &(NameId, _)| matches!(board.names.role(*id), Some(NameRole::Own(_)));
    judgement.evidence.names_only = sides.iter().all(|side| {
        side.literals()
            .iter()
            .all(|place| place.literal.written.significant < 2)
            && !side.names().iter().any(own)
            && !number(side)
    });
    typed_angles::see(board, sides, judgement);
    written::see(board, sides, judgement);
    judgement.evidence.of_unknown = sides.iter().any(|side| has_unknown_told(board, side));
    // The unknown is found by dividing by its own ratio: that is no sign of another thought.
    let usual = usize::from(judgement.target.is_unknown());
    let mut divided = 0;
    for side in sides {
        judgement.evidence.names_parts |= side.names().iter().any(|(id, _)| {
            matches!(
                board.names.role(*id),
                Some(NameRole::Step(StepId::PartOf(..)))
            )
        });
        side.visit(&mut |tree| {
            if let Node::Binary(Operator::Divide, _, under) = &tree.node {
                let (sine, cosine) = ratios(under);
                divided += usize::from(sine || cosine);
            }
            if let Node::Call(function, _) = &tree.node {
                let angled = !matches!(function, Function::SquareRoot | Function::Absolute);
                judgement.evidence.tangent |= *function == Function::Tangent;
                judgement.evidence.angled |= angled;
            }
        });
    }
    judgement.evidence.over_ratio = divided > usual;
    let whole = |(id, _): &(NameId, _)| match board.names.role(*id) {
        Some(NameRole::Given(_) | NameRole::Gravity) => true,
        Some(NameRole::Step(step)) => matches!(
            step,
            StepId::Weight(_) | StepId::Pull(_) | StepId::Distance(_)
        ),
        Some(NameRole::Own(_)) | None => false,
    };
    judgement.evidence.unresolved = judgement.evidence.names_only
        && !judgement.evidence.angled
        && sides.iter().all(|side| side.names().iter().all(whole));
}

/// True if the unknown stands in a side: its name, or the number that was typed for it before.
fn has_unknown_told(board: &Board<'_>, side: &Tree) -> bool {
    let Some(unknown) = board.unknown() else {
        return false;
    };
    let by_name = |(id, _): &(NameId, _)| board.names.role(*id) == Some(NameRole::Step(unknown));
    let typed = board.standing.get(&unknown).and_then(|own| own.typed);
    let told = typed.is_some_and(|(value, _)| {
        let literals = side.literals();
        let mut values = literals.iter().map(|place| place.literal.value.abs());
        values.any(|number| (number - value.abs()).abs() <= 1e-9 * number)
    });
    told || side.names().iter().any(by_name)
}

/// What a line sets against each other, and whether it measures an angle in radians.
pub(super) fn see(board: &Board<'_>, reading: &Reading, judgement: &mut Judgement) {
    let sides: Vec<&Tree> = reading.sides.iter().collect();
    judgement.evidence.radians = sides.iter().any(|side| {
        side.literals().iter().any(|place| {
            place
                .literal
                .unit
                .is_some_and(|unit| unit.dimension == Dimension::ANGLE && unit.factor == 1.0)
        })
    });
    see_leaves(board, &sides, judgement);
    let Some(first) = sides.first().and_then(|side| Terms::of_tree(board, side)) else {
        return;
    };
    let lone = |side: Option<&&Tree>| side.is_some_and(|side| matches!(side.node, Node::Name(_)));
    let named = lone(sides.first()) || has_unknown(board, &sides);
    judgement.evidence.equation =
        sides.len() > 1 && named && !lone(sides.first()) && !lone(sides.last());
    let other = match sides.get(1).filter(|_| named) {
        Some(side) => Terms::of_tree(board, side),
        None => board
            .right(judgement.target)
            .filter(|_| !judgement.target.is_balance())
            .map(|right| Terms::number(right[0])),
    };
    let known = judgement.evidence.false_equation && sides.len() == 2;
    let second = sides.get(1).filter(|_| known);
    if let Some(second) = second.and_then(|side| Terms::of_tree(board, side)) {
        judgement.evidence.against = first.clone().plus(second.negative());
    }
    judgement.evidence.terms = match other {
        Some(other) => first.plus(other.negative()),
        None => first,
    };
}
