//! The sense in which a balance that holds counts what may act both ways.

use super::board::Board;
use super::equation::roles;
use super::identity::{free_parts, unknown_at};
use super::lift::plain_leaf;
use super::names::NameRole;
use super::printed_units::{counted_in, printed_force};
use crate::key::{Nature, StepId};
use crate::reading::{Leaf, Tree, evaluate};
use crate::units::Dimension;

/// The most names of a line that are tried in both senses.
const MOST_PARTS: usize = 3;
/// A balance holds in those senses in which its sides differ by less than this share of what they
/// differ by in others.
const CLEAR: f64 = 0.1;
/// It is a balance of these values at all if they leave less than this share of its sides: counted in
/// kilonewtons none of the senses fits.
const NEAR: f64 = 0.02;

/// The senses in which a true balance of a general working counts the parts named in it (true for
/// one against its axis); nothing where it holds in several alike, or where parts may stand by
/// their sizes, beside a coefficient, the size of a force or its direction.
pub(super) fn counted(board: &Board<'_>, sides: &[&Tree]) -> Vec<(StepId, bool)> {
    let mut parts = free_parts(board, sides);
    parts.truncate(MOST_PARTS);
    let of_sizes = roles(board, sides).into_iter().any(|role| match role {
        NameRole::Step(step) => is_whole(step) || is_number(board, step),
        NameRole::Given(given) => board.problem.given(given).dimension == Dimension::NUMBER,
        _ => false,
    });
    if of_sizes || board.key.general.is_none() {
        return Vec::new();
    }
    // Where forces are printed in kilonewtons, so are those of bare numbers: beside 6000 N a 12 is as
    // good as nothing.
    let unit = printed_force(board).filter(|_| has_bare_numbers(sides));
    let holding = holding(board, sides, &parts, unit.unwrap_or(1.0)).unwrap_or_default();
    // `Hx = S·cos β` says of neither which way it counts.
    let told = |(at, part): (usize, &StepId)| {
        let turned = |flips: &usize| flips & (1 << at) != 0;
        let first = turned(holding.first()?);
        let one_way = holding.iter().all(|flips| turned(flips) == first);
        one_way.then_some((*part, first))
    };
    parts.iter().enumerate().filter_map(told).collect()
}

/// The choices of parts turned about with which a balance holds, forces with a unit counted in this
/// multiple of the newton.
fn holding(board: &Board<'_>, sides: &[&Tree], parts: &[StepId], unit: f64) -> Option<Vec<usize>> {
    let all = (0..1_usize << parts.len())
        .map(|flips| Some((flips, apart(board, sides, (parts, flips, unit))?)));
    let all = all.collect::<Option<Vec<(usize, (f64, f64))>>>()?;
    let most = |of: fn(&(f64, f64)) -> f64| all.iter().map(|(_, one)| of(one)).fold(0.0, f64::max);
    let (furthest, largest) = (most(|one| one.0), most(|one| one.1));
    let holds = |(_, (apart, _)): &&(usize, (f64, f64))| {
        *apart < CLEAR * furthest && *apart < NEAR * largest
    };
    Some(all.iter().filter(holds).map(|(flips, _)| *flips).collect())
}

/// How far the sides are apart with every unknown at its right value and the chosen parts turned
/// about, and the size of the largest.
fn apart(
    board: &Board<'_>,
    sides: &[&Tree],
    (parts, flips, unit): (&[StepId], usize, f64),
) -> Option<(f64, f64)> {
    let numbers = sides.iter().map(|side| {
        let mut leaf = |leaf: Leaf<'_>| {
            let value = match leaf {
                Leaf::Name(id) => unknown_at(board, id, parts, (flips, 1.0), 0)
                    .unwrap_or_else(|| plain_leaf(board, leaf)),
                literal => plain_leaf(board, literal),
            };
            counted_in(unit, value)
        };
        evaluate(side, &mut leaf).ok().map(|value| value.number)
    });
    let numbers = numbers.collect::<Option<Vec<f64>>>()?;
    let (first, rest) = numbers.split_first()?;
    let apart = (first - rest.iter().sum::<f64>()).abs();
    let largest = numbers.iter().map(|side| side.abs()).fold(0.0, f64::max);
    apart.is_finite().then_some((apart, largest))
}

/// True for a balance with bare numbers in it.
fn has_bare_numbers(sides: &[&Tree]) -> bool {
    let bare = |side: &&Tree| {
        let mut literals = side.literals().into_iter();
        literals.any(|place| place.literal.unit.is_none() && place.literal.value != 0.0)
    };
    sides.iter().any(bare)
}

fn is_whole(step: StepId) -> bool {
    step.is_direction() || matches!(step, StepId::Found(Nature::Size, _))
}

fn is_number(board: &Board<'_>, step: StepId) -> bool {
    let known = board.key.step(step);
    known.is_some_and(|step| step.dimension == Dimension::NUMBER)
}
