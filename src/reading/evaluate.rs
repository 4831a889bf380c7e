//! The value and dimension of a tree, for anyone who can give values for its leaves.
//!
//! A number typed without a unit is *bare*: it may be a pure number, or a force whose unit was
//! left out. Bare values take the dimension of their neighbour in a sum. A bare factor makes the
//! dimension of a product *uncertain*, and an uncertain dimension never contradicts anything. Only
//! two certain dimensions can disagree.

use super::tree::{Function, Literal, NameId, Node, Operator, Tree};
use crate::text::Span;
use crate::units::Dimension;

/// A difference below this share of what it is the difference of is nothing.
const DUST: f64 = 1e-11;
const DEGREE: f64 = std::f64::consts::PI / 180.0;

/// A leaf that needs a value.
#[derive(Clone, Copy, Debug)]
pub enum Leaf<'a> {
    /// A typed number. [`Value::of_literal`] is what it says by itself.
    Literal(&'a Literal),
    /// A name of the vocabulary.
    Name(NameId),
}

/// A value with what is known of its dimension.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Value {
    /// In SI units (radians); as typed where it is bare.
    pub number: f64,
    /// The dimension; [`Dimension::NUMBER`] where it is bare.
    pub dimension: Dimension,
    /// Made from literals without unit and pure numbers only: takes any dimension.
    pub bare: bool,
    /// A bare factor went into it, which may stand for a unit that was not written: the dimension
    /// is a guess and contradicts nothing.
    pub uncertain: bool,
}

impl Value {
    /// A quantity of known dimension, in SI units.
    pub const fn of(number: f64, dimension: Dimension) -> Value {
        Value {
            number,
            dimension,
            bare: false,
            uncertain: false,
        }
    }

    /// A number typed without a unit.
    pub const fn bare(number: f64) -> Value {
        Value {
            number,
            dimension: Dimension::NUMBER,
            bare: true,
            uncertain: false,
        }
    }

    /// What a literal says by itself.
    pub fn of_literal(literal: &Literal) -> Value {
        match literal.unit {
            Some(unit) => Value::of(literal.value, unit.dimension),
            None => Value::bare(literal.value),
        }
    }

    /// True unless this certainly has another dimension.
    pub fn may_be(self, dimension: Dimension) -> bool {
        self.bare || self.uncertain || self.dimension == dimension
    }

    /// The number as a quantity of this dimension: a bare number offered as an angle is in
    /// degrees and becomes radians; everything else stays.
    pub fn number_as(self, dimension: Dimension) -> f64 {
        if self.bare && dimension == Dimension::ANGLE {
            self.number * DEGREE
        } else {
            self.number
        }
    }

    /// A certain number without dimension, such as a sine.
    fn is_pure(self) -> bool {
        !self.bare && !self.uncertain && self.dimension == Dimension::NUMBER
    }

    /// Certain, and certainly not without dimension.
    fn is_certain(self) -> bool {
        !self.bare && !self.uncertain
    }
}

/// What disagrees.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[non_exhaustive]
pub enum MismatchKind {
    /// The two parts of a sum or difference.
    Sum,
    /// The argument of sin, cos or tan is not an angle.
    Angle,
    /// A unit after an expression of another dimension. Left is the unit's.
    Unit,
    /// The argument of sin⁻¹, cos⁻¹ or tan⁻¹ is not a pure number.
    Ratio,
    /// An exponent is not a pure number.
    Exponent,
    /// A quantity raised to a power that is not whole.
    Power,
    /// The square root of something that is no square.
    Root,
    /// More factors of one kind than any quantity of statics has.
    Range,
    /// No finite number: division by zero, or an inverse sine of more than one.
    NotFinite,
}

/// An expression that has no value, with both dimensions kept as data.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Mismatch {
    /// What disagrees.
    pub kind: MismatchKind,
    /// The expression concerned, in bytes of the line as typed.
    pub span: Span,
    /// The dimension of the left part, or of what was expected.
    pub left: Dimension,
    /// The dimension of the right part, or of what was found.
    pub right: Dimension,
    /// The factor that the right part lacks: left divided by right. A force where a moment is due
    /// lacks a length.
    pub missing: Option<Dimension>,
}

impl Mismatch {
    fn new(kind: MismatchKind, span: Span, left: Dimension, right: Dimension) -> Mismatch {
        Mismatch {
            kind,
            span,
            left,
            right,
            missing: left.per(right),
        }
    }
}

/// The value of a tree, with values for its leaves from `leaf`.
///
/// A bare number beside an angle in a sum, or inside sin, cos or tan, is in degrees. sin⁻¹, cos⁻¹
/// and tan⁻¹ give radians with dimension [`Dimension::ANGLE`].
///
/// # Errors
/// A [`Mismatch`] where two certain dimensions disagree or no finite number comes out.
pub fn evaluate(tree: &Tree, leaf: &mut dyn FnMut(Leaf<'_>) -> Value) -> Result<Value, Mismatch> {
    let value = match &tree.node {
        Node::Literal(literal) => leaf(Leaf::Literal(literal)),
        Node::Name(id) => leaf(Leaf::Name(*id)),
        Node::Negative(inner) => {
            let inner = evaluate(inner, leaf)?;
            Value {
                number: -inner.number,
                ..inner
            }
        }
        Node::Binary(operator, left, right) => {
            let lhs = evaluate(left, leaf)?;
            let rhs = evaluate(right, leaf)?;
            let (lhs, rhs) = (as_ratio(lhs, left, rhs), as_ratio(rhs, right, lhs));
            match operator {
                Operator::Add => sum(lhs, rhs, 1.0, tree.span)?,
                Operator::Subtract => sum(lhs, rhs, -1.0, tree.span)?,
                Operator::Multiply => match unit_of_whole(lhs, rhs, right) {
                    Some(value) => value?,
                    None => product(lhs, rhs, tree.span)?,
                },
                Operator::Divide => quotient(lhs, rhs, tree.span)?,
                Operator::Power => power(lhs, rhs, tree.span)?,
            }
        }
        Node::Call(function, inner) => call(*function, evaluate(inner, leaf)?, inner.span)?,
    };
    if value.number.is_finite() {
        Ok(value)
    } else {
        let dimension = value.dimension;
        Err(Mismatch::new(
            MismatchKind::NotFinite,
            tree.span,
            dimension,
            dimension,
        ))
    }
}

/// π beside a quantity that is no angle is the ratio of the circle, a pure number: `π·r²`.
fn as_ratio(value: Value, tree: &Tree, other: Value) -> Value {
    let pi = matches!(&tree.node, Node::Literal(literal) if literal.digits == "π");
    let plain = matches!(other.dimension, Dimension::NUMBER | Dimension::ANGLE);
    match pi && !plain {
        true => Value::of(value.number, Dimension::NUMBER),
        false => value,
    }
}

fn sum(left: Value, right: Value, sign: f64, span: Span) -> Result<Value, Mismatch> {
    let plain = |kind: Value| {
        let (one, other) = (
            left.number_as(kind.dimension),
            right.number_as(kind.dimension),
        );
        let number = one + sign * other;
        // What rounding leaves of two equal numbers is nothing.
        let is_dust = number.abs() <= DUST * one.abs();
        Value {
            number: if is_dust { 0.0 } else { number },
            ..kind
        }
    };
    if left.bare {
        return Ok(plain(right));
    }
    if right.bare {
        return Ok(plain(left));
    }
    if left.dimension != right.dimension && left.is_certain() && right.is_certain() {
        return Err(Mismatch::new(
            MismatchKind::Sum,
            span,
            left.dimension,
            right.dimension,
        ));
    }
    Ok(plain(if left.uncertain { right } else { left }))
}

fn product(left: Value, right: Value, span: Span) -> Result<Value, Mismatch> {
    let number = left.number * right.number;
    if left.is_pure() {
        return Ok(Value { number, ..right });
    }
    if right.is_pure() || (left.bare && right.bare) {
        return Ok(Value { number, ..left });
    }
    let dimension = left.dimension.times(right.dimension);
    joined(number, dimension, left, right, span)
}

fn quotient(left: Value, right: Value, span: Span) -> Result<Value, Mismatch> {
    let number = left.number / right.number;
    if right.is_pure() || (left.bare && right.bare) {
        return Ok(Value { number, ..left });
    }
    if left.is_pure() && right.bare {
        return Ok(Value { number, ..right });
    }
    let dimension = left.dimension.per(right.dimension);
    joined(number, dimension, left, right, span)
}

/// A product or quotient of two values, of which not both are bare.
fn joined(
    number: f64,
    dimension: Option<Dimension>,
    left: Value,
    right: Value,
    span: Span,
) -> Result<Value, Mismatch> {
    let dimension = dimension.ok_or(Mismatch::new(
        MismatchKind::Range,
        span,
        left.dimension,
        right.dimension,
    ))?;
    Ok(Value {
        number,
        dimension,
        bare: false,
        uncertain: !(left.is_certain() && right.is_certain()),
    })
}

/// A unit that is meant for the whole product, if the right factor has one.
///
/// A unit that stands alone after something with a dimension (`T sin γ N`) only says which; the
/// number is in SI units already. In `12 kg*9.8 N` the newton is that of the product: nothing in
/// statics is measured in kilogram newtons.
fn unit_of_whole(left: Value, right: Value, tree: &Tree) -> Option<Result<Value, Mismatch>> {
    let Node::Literal(literal) = &tree.node else {
        return None;
    };
    let unit = literal.unit?.dimension;
    if left.bare || left.is_pure() || right.dimension != unit {
        return None;
    }
    if literal.unit_alone {
        if !left.may_be(unit) {
            let kind = MismatchKind::Unit;
            return Some(Err(Mismatch::new(kind, tree.span, unit, left.dimension)));
        }
        return Some(Ok(Value {
            dimension: unit,
            ..left
        }));
    }
    let for_whole = unit == Dimension::FORCE || unit == Dimension::MOMENT;
    let has_mass = left.dimension.mass > 0 && left.dimension.time == 0;
    (for_whole && has_mass).then_some(Ok(Value {
        number: left.number * right.number,
        dimension: unit,
        bare: false,
        uncertain: true,
    }))
}

fn power(base: Value, exponent: Value, span: Span) -> Result<Value, Mismatch> {
    if !exponent.may_be(Dimension::NUMBER) {
        return Err(Mismatch::new(
            MismatchKind::Exponent,
            span,
            Dimension::NUMBER,
            exponent.dimension,
        ));
    }
    let number = libm::pow(base.number, exponent.number);
    if base.bare || base.is_pure() {
        return Ok(Value { number, ..base });
    }
    let whole = exponent.number;
    let dimension = if whole == libm::round(whole) && whole.abs() <= 12.0 {
        base.dimension.power(whole as i8)
    } else if whole == 0.5 {
        base.dimension.root()
    } else {
        None
    };
    let lost = Mismatch::new(
        MismatchKind::Power,
        span,
        base.dimension,
        exponent.dimension,
    );
    with_dimension(number, dimension, base, lost)
}

/// A value of a new dimension; where there is none, an error if the old one was certain.
fn with_dimension(
    number: f64,
    dimension: Option<Dimension>,
    from: Value,
    lost: Mismatch,
) -> Result<Value, Mismatch> {
    match dimension {
        Some(dimension) => Ok(Value {
            number,
            dimension,
            ..from
        }),
        None if from.uncertain => Ok(Value {
            number,
            dimension: Dimension::NUMBER,
            ..from
        }),
        None => Err(lost),
    }
}

fn call(function: Function, argument: Value, span: Span) -> Result<Value, Mismatch> {
    let number = argument.number;
    let expected = |kind, dimension| Mismatch::new(kind, span, dimension, argument.dimension);
    match function {
        Function::Absolute => Ok(Value {
            number: number.abs(),
            ..argument
        }),
        Function::SquareRoot => {
            let root = libm::sqrt(number);
            let lost = expected(MismatchKind::Root, Dimension::NUMBER);
            with_dimension(root, argument.dimension.root(), argument, lost)
        }
        Function::Sine | Function::Cosine | Function::Tangent => {
            if !argument.may_be(Dimension::ANGLE) {
                return Err(expected(MismatchKind::Angle, Dimension::ANGLE));
            }
            // An uncertain dimension other than angle says only that units were left out.
            let radians = if argument.dimension == Dimension::ANGLE {
                number
            } else {
                number * DEGREE
            };
            Ok(Value::of(ratio(function, radians), Dimension::NUMBER))
        }
        Function::ArcSine | Function::ArcCosine | Function::ArcTangent => {
            if !argument.may_be(Dimension::NUMBER) {
                return Err(expected(MismatchKind::Ratio, Dimension::NUMBER));
            }
            let radians = match function {
                Function::ArcSine => libm::asin(number),
                Function::ArcCosine => libm::acos(number),
                _ => libm::atan(number),
            };
            Ok(Value::of(radians, Dimension::ANGLE))
        }
    }
}

/// sin, cos or tan of an angle in radians. A tangent of a right angle is not a number, though
/// binary arithmetic would give a large one.
fn ratio(function: Function, radians: f64) -> f64 {
    let (sine, cosine) = (libm::sin(radians), libm::cos(radians));
    match function {
        Function::Sine => sine,
        Function::Cosine => cosine,
        _ if cosine.abs() < 1e-15 => f64::INFINITY,
        _ => libm::tan(radians),
    }
}
