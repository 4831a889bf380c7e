//! Formula trees whose nodes know their role.

use super::StepId;
use crate::problem::{ForceId, GivenId, Place};

/// A sum that is no larger than this part of what its terms come to is nothing.
const DUST: f64 = 1e-13;

/// A quantity that a formula refers to; `S` names the steps of its key.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Atom<S = StepId> {
    /// A number that the problem tells.
    Given(GivenId),
    /// The acceleration of free fall.
    Gravity,
    /// The value of another step.
    Step(S),
}

/// What a node is there for. Mistakes find their node by its role.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Role {
    /// The mass times g that makes this force.
    Weight(ForceId),
    /// The sine that takes this force to its component across the body.
    Ratio(ForceId),
    /// The sine or cosine that takes this force to its horizontal or vertical part.
    PartRatio(ForceId),
    /// The distance of this force from the pivot, where a term multiplies or divides by it.
    Distance(ForceId),
}

/// A formula; `S` names the steps of its key. Values are SI, angles radians; `Degrees` is a pure angle such as the 90° of a
/// complement.
#[derive(Clone, Debug, PartialEq)]
pub enum Formula<S = StepId> {
    /// A quantity.
    Atom(Atom<S>),
    /// A pure number of the formula, such as the 2 of L/2.
    Number(f64),
    /// A fixed angle in degrees.
    Degrees(f64),
    /// A sum; differences have [`Formula::Negative`] terms.
    Sum(Vec<Formula<S>>),
    /// A product.
    Product(Vec<Formula<S>>),
    /// A quotient.
    Quotient(Box<Formula<S>>, Box<Formula<S>>),
    /// The opposite.
    Negative(Box<Formula<S>>),
    /// The size without its sign.
    Absolute(Box<Formula<S>>),
    /// Sine.
    Sine(Box<Formula<S>>),
    /// Cosine.
    Cosine(Box<Formula<S>>),
    /// Tangent.
    Tangent(Box<Formula<S>>),
    /// The angle whose sine this is, between −90° and 90°.
    ArcSine(Box<Formula<S>>),
    /// The angle whose tangent this is, between −90° and 90°.
    ArcTangent(Box<Formula<S>>),
    /// Square.
    Square(Box<Formula<S>>),
    /// Square root.
    SquareRoot(Box<Formula<S>>),
    /// A formula with its role.
    Tagged(Role, Box<Formula<S>>),
}

impl<S: Copy> Formula<S> {
    /// The value of another step.
    pub fn step(id: S) -> Formula<S> {
        Formula::Atom(Atom::Step(id))
    }

    /// A given number.
    pub fn given(id: GivenId) -> Formula<S> {
        Formula::Atom(Atom::Given(id))
    }

    /// This formula with a role.
    #[must_use]
    pub fn tagged(self, role: Role) -> Formula<S> {
        Formula::Tagged(role, Box::new(self))
    }

    /// The quotient of two formulas.
    #[must_use]
    pub fn over(self, under: Formula<S>) -> Formula<S> {
        Formula::Quotient(Box::new(self), Box::new(under))
    }

    /// The product of two formulas, flat.
    #[must_use]
    pub fn times(self, other: Formula<S>) -> Formula<S> {
        let mut factors = match self {
            Formula::Product(factors) => factors,
            one => vec![one],
        };
        match other {
            Formula::Product(more) => factors.extend(more),
            one => factors.push(one),
        }
        Formula::Product(factors)
    }

    /// The formula without its roles at the top.
    pub fn bare(&self) -> &Formula<S> {
        match self {
            Formula::Tagged(_, inner) => inner.bare(),
            other => other,
        }
    }

    /// The parts of this node, left to right.
    pub fn children(&self) -> Vec<&Formula<S>> {
        match self {
            Formula::Atom(_) | Formula::Number(_) | Formula::Degrees(_) => Vec::new(),
            Formula::Sum(parts) | Formula::Product(parts) => parts.iter().collect(),
            Formula::Quotient(over, under) => vec![over, under],
            Formula::Negative(inner)
            | Formula::Absolute(inner)
            | Formula::Sine(inner)
            | Formula::Cosine(inner)
            | Formula::Tangent(inner)
            | Formula::ArcSine(inner)
            | Formula::ArcTangent(inner)
            | Formula::Square(inner)
            | Formula::SquareRoot(inner)
            | Formula::Tagged(_, inner) => vec![inner],
        }
    }

    /// True if this given stands in the formula itself.
    pub fn holds(&self, given: GivenId) -> bool {
        match self {
            Formula::Atom(atom) => matches!(atom, Atom::Given(found) if *found == given),
            other => other.children().into_iter().any(|one| one.holds(given)),
        }
    }

    /// Every step that the formula refers to directly.
    pub fn inputs(&self) -> Vec<S> {
        match self {
            Formula::Atom(Atom::Step(id)) => vec![*id],
            other => other
                .children()
                .into_iter()
                .flat_map(Formula::inputs)
                .collect(),
        }
    }

    /// The same tree with every node offered to `change`, from the top; where it gives a
    /// replacement, that is taken whole.
    #[must_use]
    pub fn rewrite(&self, change: &dyn Fn(&Formula<S>) -> Option<Formula<S>>) -> Formula<S> {
        self.mapped(change, &Atom::clone)
    }

    /// The same formula over the steps of another key.
    pub(crate) fn renamed<T>(&self, atom: &dyn Fn(&Atom<S>) -> Atom<T>) -> Formula<T> {
        self.mapped(&|_| None, atom)
    }

    /// Each part as `change` has it, else its own parts so, and atoms as `atom` has them.
    fn mapped<T>(
        &self,
        change: &dyn Fn(&Formula<S>) -> Option<Formula<T>>,
        atom: &dyn Fn(&Atom<S>) -> Atom<T>,
    ) -> Formula<T> {
        if let Some(changed) = change(self) {
            return changed;
        }
        let again = |inner: &Formula<S>| Box::new(inner.mapped(change, atom));
        let all = |parts: &[Formula<S>]| {
            let parts = parts.iter();
            parts.map(|part| part.mapped(change, atom)).collect()
        };
        match self {
            Formula::Atom(which) => Formula::Atom(atom(which)),
            Formula::Number(number) => Formula::Number(*number),
            Formula::Degrees(degrees) => Formula::Degrees(*degrees),
            Formula::Sum(parts) => Formula::Sum(all(parts)),
            Formula::Product(parts) => Formula::Product(all(parts)),
            Formula::Quotient(over, under) => Formula::Quotient(again(over), again(under)),
            Formula::Negative(inner) => Formula::Negative(again(inner)),
            Formula::Absolute(inner) => Formula::Absolute(again(inner)),
            Formula::Sine(inner) => Formula::Sine(again(inner)),
            Formula::Cosine(inner) => Formula::Cosine(again(inner)),
            Formula::Tangent(inner) => Formula::Tangent(again(inner)),
            Formula::ArcSine(inner) => Formula::ArcSine(again(inner)),
            Formula::ArcTangent(inner) => Formula::ArcTangent(again(inner)),
            Formula::Square(inner) => Formula::Square(again(inner)),
            Formula::SquareRoot(inner) => Formula::SquareRoot(again(inner)),
            Formula::Tagged(role, inner) => Formula::Tagged(*role, again(inner)),
        }
    }

    /// The value at the values of its atoms: SI, angles in radians. `None` where an atom has none.
    pub fn value(&self, atom: &dyn Fn(&Atom<S>) -> Option<f64>) -> Option<f64> {
        let value = |inner: &Formula<S>| inner.value(atom);
        Some(match self {
            Formula::Atom(which) => atom(which)?,
            Formula::Number(number) => *number,
            Formula::Degrees(degrees) => degrees.to_radians(),
            Formula::Sum(parts) => {
                let (sum, scale) = parts.iter().try_fold((0.0, 0.0), |(sum, scale), part| {
                    let part = value(part)?;
                    Some((sum + part, scale + part.abs()))
                })?;
                // What terms leave that take each other away is dust.
                if f64::abs(sum) <= DUST * scale {
                    0.0
                } else {
                    sum
                }
            }
            Formula::Product(parts) => parts
                .iter()
                .try_fold(1.0, |product, part| Some(product * value(part)?))?,
            Formula::Quotient(over, under) => value(over)? / value(under)?,
            Formula::Negative(inner) => -value(inner)?,
            Formula::Absolute(inner) => value(inner)?.abs(),
            Formula::Sine(inner) => libm::sin(value(inner)?),
            Formula::Cosine(inner) => libm::cos(value(inner)?),
            Formula::Tangent(inner) => libm::tan(value(inner)?),
            Formula::ArcSine(inner) => {
                let sine = value(inner)?;
                // Of a right angle that was sought rounding may leave a sine just above 1.
                let is_dust = sine.abs() > 1.0 && sine.abs() <= 1.0 + 1e-9;
                libm::asin(if is_dust { sine.signum() } else { sine })
            }
            Formula::ArcTangent(inner) => libm::atan(value(inner)?),
            Formula::Square(inner) => {
                let value = value(inner)?;
                value * value
            }
            Formula::SquareRoot(inner) => libm::sqrt(value(inner)?),
            Formula::Tagged(_, inner) => value(inner)?,
        })
    }
}

/// The distance of a place from the beginning of a straight part of this length.
pub(crate) fn place_length<S: Copy>(place: Place, length: GivenId) -> Formula<S> {
    let length = Formula::given(length);
    match place {
        Place::Foot => Formula::Number(0.0),
        Place::Middle => length.over(Formula::Number(2.0)),
        Place::Tip => length,
        Place::Fraction { over: 1, under } => length.over(Formula::Number(f64::from(under))),
        Place::Fraction { over, under } => Formula::Number(f64::from(over))
            .times(length)
            .over(Formula::Number(f64::from(under))),
        Place::At(given) => Formula::given(given),
    }
}

/// One length less another.
pub(crate) fn difference<S>(from: Formula<S>, taken: Formula<S>) -> Formula<S> {
    match taken {
        Formula::Number(0.0) => from,
        taken => Formula::Sum(vec![from, Formula::Negative(Box::new(taken))]),
    }
}
