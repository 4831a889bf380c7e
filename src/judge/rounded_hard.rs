//! A right way whose numbers were rounded too hard: `588·2.5·0.3/(2·0.9)` for the sine of 20° and
//! the cosine of it.

use super::Board;
use super::lift::lifted;
use super::sense::same;
use super::stock::{Stock, coarsest};
use crate::key::StepId;
use crate::reading::{Literal, Tree};
use crate::units::Dimension;

/// The furthest, as a share of the right value, that a number counts as rounded too hard.
const FARTHEST: f64 = 0.15;

/// The multiple of a unit in which bare numbers may be counted.
const KILO: f64 = 1000.0;

/// True if a form that does not hold would, were its numbers of one or two figures what they are
/// roundings of, and if it comes near the right value.
pub(super) fn is_rounded_hard(
    board: &Board<'_>,
    stock: &Stock,
    target: StepId,
    (tree, number): (&Tree, f64),
    dimension: Dimension,
) -> bool {
    let Some(right) = board.right(target) else {
        return false;
    };
    let literals = tree.literals();
    let coarse = literals
        .iter()
        .filter(|place| coarsest(place.literal).significant <= 2);
    // With ten for g it is another thought, where there is a mass.
    let givens = board.problem.givens().iter();
    let mut masses = givens.filter(|given| given.dimension == Dimension::MASS);
    let of_mass = masses.next().is_some();
    // Three and four may be counted, and are as well lengths.
    let counted = |literal: &Literal| {
        stock.is_pure(literal) && !(literal.value == 3.0 || literal.value == 4.0)
    };
    let hard = coarse
        .filter(|place| place.literal.value != 10.0 || !of_mass)
        .any(|place| {
            let quantity = stock.fits_within(0, place.literal, place.in_angle);
            !counted(place.literal) && !quantity
        });
    // Counted in kilonewtons it comes out in them.
    let near = [1.0, KILO]
        .iter()
        .any(|unit| (unit * number.abs() - right[0].abs()).abs() <= FARTHEST * right[0].abs());
    if !hard || !near || target.is_angle() || target.is_direction() {
        return false;
    }
    let forms = lifted(board, &stock.coarsely(), tree, dimension);
    forms
        .iter()
        .any(|form| same(target, &form.function, &right))
}
