//! How far the value of an expression may be off because its numbers, the values behind its names
//! and what is worked out inside it were rounded.
//!
//! To first order: each rounding counts by how strongly the whole changes with it.

use super::board::Board;
use super::grade::figures_meant;
use super::lift::plain_value;
use super::names::NameRole;
use super::stock::{Stock, THREE_FIGURES};
use crate::reading::{Function, Literal, Node, Operator, Tree};
use crate::units::{Dimension, to_figures, unit_of_figure};
use std::f64::consts::PI;

/// What is lost of most values to three figures is no more than this share of them.
const FINE: f64 = 0.001;

/// Figures to which a result on the way is carried at least.
const CARRIED: u8 = 3;

/// How far the value of a side of this dimension may be off when what stands in it was carried to
/// three figures, SI. Numbers that equal a quantity of the problem are exact; others are good to
/// half a last unit, and left out if they have fewer figures than `least`.
pub(super) fn room(
    board: &Board<'_>,
    stock: &Stock,
    tree: &Tree,
    dimension: Dimension,
    least: u8,
) -> f64 {
    room_beside(board, stock, (tree, dimension), least, Exact::default())
}

/// Numbers that count as they are typed, SI.
pub(super) type Exact<'a> = &'a [f64];

/// The same where some numbers of the line are `exact`.
pub(super) fn room_beside(
    board: &Board<'_>,
    stock: &Stock,
    (tree, dimension): (&Tree, Dimension),
    least: u8,
    exact: Exact<'_>,
) -> f64 {
    let rounding = Rounding {
        board,
        stock,
        least,
        exact,
    };
    let angle = dimension == Dimension::ANGLE;
    let bare = plain_value(board, tree).is_ok_and(|value| value.bare);
    let scale = if bare && angle { PI / 180.0 } else { 1.0 };
    let inside = if angle { Inside::Angle } else { Inside::Value };
    // What is off by just so much is not off by more.
    rounding.of(tree, inside).unwrap_or(0.0) * scale * (1.0 + 1e-6)
}

/// What a part of an expression counts in.
#[derive(Clone, Copy, PartialEq)]
enum Inside {
    /// Whatever it is.
    Value,
    /// A sum of angles, in the units typed.
    Angle,
    /// An angle of which a ratio is taken, in radians.
    Ratio,
}

struct Rounding<'a> {
    board: &'a Board<'a>,
    stock: &'a Stock,
    least: u8,
    exact: Exact<'a>,
}

impl Rounding<'_> {
    /// How far an expression is off, without being rounded itself.
    fn of(&self, tree: &Tree, within: Inside) -> Option<f64> {
        let off = match &tree.node {
            Node::Literal(literal) if literal.unit_alone => 0.0,
            Node::Literal(literal) if self.exact.contains(&literal.value) => 0.0,
            Node::Literal(literal) if self.stock.is_exact(literal, within != Inside::Value) => {
                self.told_before(literal)
            }
            Node::Literal(literal)
                if is_count(literal) || literal.written.significant < self.least =>
            {
                0.0
            }
            Node::Literal(literal) => {
                // Whoever carries three figures does so wherever fewer are shown.
                let half = 0.5 * figures_meant(literal.value, literal.written).last_place;
                let half = half.min(THREE_FIGURES * literal.value.abs());
                if within == Inside::Ratio && literal.unit.is_none() {
                    half * PI / 180.0
                } else {
                    half.max(self.told_before(literal))
                }
            }
            Node::Name(id) => match self.board.names.role(*id)? {
                NameRole::Given(_) | NameRole::Gravity => 0.0,
                // A typed value may be the rounded one of what is carried in full.
                role => {
                    let full = self.board.name_function(role)?[0];
                    // The sense in which it was told is no matter of rounding, nor is the side on which an
                    // angle was measured.
                    let angle = matches!(role, NameRole::Step(step) if step.is_angle());
                    self.carried(tree)?
                        .max(lost(angle, full, self.value(tree)?))
                }
            },
            Node::Negative(inner) => self.of(inner, within)?,
            Node::Binary(operator, left, right) => {
                let (one, other) = (self.inside(left, within)?, self.inside(right, within)?);
                let (first, second) = (self.value(left)?, self.value(right)?);
                match operator {
                    Operator::Add | Operator::Subtract => one + other,
                    Operator::Multiply => (first * other).abs() + (second * one).abs(),
                    Operator::Divide => {
                        (one / second).abs() + (first * other / (second * second)).abs()
                    }
                    Operator::Power => (second * libm::pow(first, second - 1.0) * one).abs(),
                }
            }
            Node::Call(function, inner) => {
                let within = if function.takes_angle() {
                    Inside::Ratio
                } else {
                    Inside::Value
                };
                let off = self.inside(inner, within)?;
                let at = plain_value(self.board, inner).ok()?;
                let at = if function.takes_angle() {
                    at.number_as(Dimension::ANGLE)
                } else {
                    at.number
                };
                off * steepness(*function, at)
            }
        };
        off.is_finite().then_some(off)
    }

    /// How far a number is off that she told as a right value or as one of her own, typed or as what
    /// a form of hers comes to: with the numbers in it, a difference of values to three figures has
    /// fewer itself.
    fn told_before(&self, literal: &Literal) -> f64 {
        let off = self.board.standing.iter().filter_map(|(step, own)| {
            let half = 0.5 * literal.written.last_place * (1.0 + 1e-6);
            let (told, near) = match own.typed {
                Some((typed, _)) => (typed, 1e-9 * typed.abs()),
                None if own.relation => return None,
                None => (own.value, half),
            };
            let same = (told.abs() - literal.value.abs()).abs() <= near;
            let full = match own.right {
                true => self.board.right(*step)?[0],
                false => own.function[0],
            };
            same.then(|| lost(step.is_angle(), full, told))
        });
        off.fold(0.0, f64::max)
    }

    /// How far a part of an expression is off: a result in it may have been rounded too.
    fn inside(&self, tree: &Tree, within: Inside) -> Option<f64> {
        let off = self.of(tree, within)?;
        let worked = matches!(tree.node, Node::Binary(..) | Node::Call(..));
        Some(if worked && within == Inside::Value {
            off + self.carried(tree)?
        } else {
            off
        })
    }

    /// What rounding a value to three figures changes. Angles are carried as they are.
    fn carried(&self, tree: &Tree) -> Option<f64> {
        let value = plain_value(self.board, tree).ok()?;
        Some(if value.dimension == Dimension::ANGLE {
            0.0
        } else {
            (to_figures(value.number, CARRIED) - value.number).abs()
        })
    }

    fn value(&self, tree: &Tree) -> Option<f64> {
        plain_value(self.board, tree).ok().map(|value| value.number)
    }
}

/// What a force or a moment in a sum may lose to three figures, rounded or cut: a large one of them
/// no more than it does.
pub(super) fn lost_in_figures(value: f64) -> f64 {
    if value == 0.0 {
        return 0.0;
    }
    let half = 0.5 * unit_of_figure(value, CARRIED);
    let lost = (to_figures(value, CARRIED) - value).abs();
    lost.max(half.min(FINE * value.abs()))
}

/// How far a value as it was told is off from the one in full, in either sense; of an angle between
/// lines, on either side of them.
fn lost(angle: bool, full: f64, told: f64) -> f64 {
    let off = (full.abs() - told.abs()).abs();
    match angle {
        true => off.min((PI - full.abs() - told.abs()).abs()),
        false => off,
    }
}

/// True for a small whole number without a unit: it counts, and was not rounded.
fn is_count(literal: &Literal) -> bool {
    literal.unit.is_none() && literal.written.last_place == 1.0 && literal.value.abs() < 100.0
}

/// The size of a function's derivative.
fn steepness(function: Function, at: f64) -> f64 {
    let root = libm::sqrt((1.0 - at * at).max(0.0));
    match function {
        Function::Sine => libm::cos(at).abs(),
        Function::Cosine => libm::sin(at).abs(),
        Function::Tangent => 1.0 / (libm::cos(at) * libm::cos(at)),
        Function::ArcSine | Function::ArcCosine => 1.0 / root,
        Function::ArcTangent => 1.0 / (1.0 + at * at),
        Function::SquareRoot => 0.5 / libm::sqrt(at),
        Function::Absolute => 1.0,
    }
}
