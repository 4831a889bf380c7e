//! A slip that a line makes anew, and that follows from no line of hers though its number would: a
//! balance of moments with arms of its own, and a rope's pull with its sign turned in a balance.

use super::super::board::{Board, Memo, Own, Standing};
use super::super::lift::plain_value;
use super::super::multiplied::{self, Placed, Product};
use super::super::names::NameRole;
use super::super::open::is_sought;
use super::relation::{NEAR, readings_of, row};
use super::stray::is_length;
use crate::key::{Part, Samples, StepId};
use crate::problem::ForceId;
use crate::reading::{Node, Tree};
use crate::units::Dimension;
use std::collections::BTreeMap;

/// A number is a force's where it differs from that by no more than this share of it.
const SAME: f64 = 2e-3;
/// Arms nearer than this share of them are one.
const ONE_ARM: f64 = 5e-3;
/// The most unknowns of a line whose signs are tried.
const MOST_UNKNOWNS: usize = 5;

/// A known force, and what stands beside it in a moment.
type Moment = (ForceId, f64);

/// True for a balance of moments of two known forces or more whose arms, up to a common factor, stand in
/// none of these lines of hers.
pub(super) fn has_fresh_moments(board: &Board<'_>, sides: &[Tree], hers: &[&str]) -> bool {
    let told = moments(board, sides);
    let known: Vec<Vec<Moment>> = hers
        .iter()
        .flat_map(|line| readings_of(board, line))
        .map(|sides| moments(board, &sides))
        .collect();
    let is_from = |from: &[Moment], ratio: f64| {
        told.iter().all(|(force, arm)| {
            let is = |(known, other): &Moment| {
                known == force && (arm - ratio * other).abs() <= ONE_ARM * arm.abs()
            };
            from.iter().any(is)
        })
    };
    let Some((first, arm)) = told.first() else {
        return false;
    };
    let from_one = known.iter().any(|from| {
        let same = from.iter().filter(|(force, _)| force == first);
        same.map(|(_, other)| arm / other)
            .any(|ratio| is_from(from, ratio))
    });
    told.len() > 1 && !from_one && !is_from(&known.concat(), 1.0)
}

/// The functions that count as right for the unknown of these sides. A balance of moments in which only
/// weights and that unknown stand says nothing of any other force, so what follows from a wrong value
/// of one, by the balance of forces, is none of its.
pub(in super::super) fn accepted_of(
    board: &Board<'_>,
    sides: &[&Tree],
    id: StepId,
) -> Vec<(Samples, Vec<usize>)> {
    let mut accepted = board.accepted(id);
    let pull = board.unknown().filter(|_| board.key.general.is_none());
    let of_pull = |step: StepId| {
        let step = board.key.gives(step).unwrap_or(step);
        pull.is_some_and(|pull| step == pull || board.key.open_in(step).contains(&pull))
    };
    let part = |step: StepId| matches!(step, StepId::Reaction(_, Part::Along(_)));
    let is_other = |step: StepId| match part(id) {
        true => of_pull(step) || part(step) && step != id,
        false => of_pull(id) && part(step),
    };
    let by_other = |lines: &[usize]| {
        let mut others = board.standing.iter();
        others.any(|(step, own)| {
            !own.right
                && is_other(*step)
                && lines.contains(&own.line)
                && !stands_in(board, sides, (*step, own))
        })
    };
    let some = pull.is_some() && accepted.iter().any(|(_, lines)| by_other(lines));
    if some && is_of_moments(board, sides) {
        accepted.retain(|(_, lines)| !by_other(lines));
    }
    accepted
}

/// True if all that stands in some sides are moments of weights, and what is to be found.
fn is_of_moments(board: &Board<'_>, sides: &[&Tree]) -> bool {
    let all: Option<Vec<_>> = sides.iter().map(|side| products(side)).collect();
    let all = all.unwrap_or_default().concat();
    let nought = |product: &Product<'_>| {
        let zero = |tree: &Tree| matches!(&tree.node, Node::Literal(one) if one.value == 0.0);
        product.factors.iter().any(|factor| zero(factor.tree))
    };
    let of_unknown = |product: &Product<'_>| names_sought(board, product);
    let is_moment = |product: &Product<'_>| moment(board, product).is_some();
    all.iter().any(is_moment)
        && all
            .iter()
            .all(|product| nought(product) || of_unknown(product) || is_moment(product))
}

/// True if a factor has the name of what is to be found.
fn names_sought(board: &Board<'_>, product: &Product<'_>) -> bool {
    let names = product.factors.iter().flat_map(|one| one.tree.names());
    let mut roles = names.filter_map(|(id, _)| board.names.role(id));
    roles.any(|role| matches!(role, NameRole::Step(step) if is_sought(board, step)))
}

/// True if a step stands in some sides by its name, by that of what is made of it, or by the number
/// that she told.
fn stands_in(board: &Board<'_>, sides: &[&Tree], (step, own): (StepId, &Own)) -> bool {
    let named = |side: &Tree| {
        let names = side.names();
        let mut roles = names.iter().filter_map(|(id, _)| board.names.role(*id));
        let made_of = |id: StepId| id == step || board.key.open_in(id).contains(&step);
        roles.any(|role| matches!(role, NameRole::Step(id) if made_of(id)))
    };
    let typed = |side: &Tree| {
        let mut places = side.literals().into_iter();
        places.any(|place| is_near(place.literal.value.abs(), own.value.abs()))
    };
    sides.iter().any(|side| named(side) || typed(side))
}

/// True for a relation of two quantities or more that would be true with the sign of a pull in it
/// turned: of what acts one way only nobody may count otherwise.
pub(super) fn turns_a_pull(board: &Board<'_>, one: &Tree, other: &Tree) -> bool {
    let none = Standing::new();
    let board = Board {
        standing: &none,
        memo: Memo::default(),
        ..*board
    };
    let Some(told) = row(&board, one, other) else {
        return false;
    };
    let count = told.of.len();
    let none = BTreeMap::new();
    let value = |step: StepId| board.key.samples(step, board.sampling, &none);
    let right = told
        .of
        .iter()
        .map(|(step, times)| Some(times * value(*step)?[0]));
    let Some(terms) = right.collect::<Option<Vec<f64>>>() else {
        return false;
    };
    let size = terms
        .iter()
        .fold(told.number.abs(), |size, term| size + term.abs());
    let holds = |flips: usize| {
        let sign = |at: usize| if flips & (1 << at) != 0 { -1.0 } else { 1.0 };
        let sum = terms.iter().enumerate().map(|(at, term)| sign(at) * term);
        (told.number + sum.sum::<f64>()).abs() <= NEAR * size
    };
    let one_way = |at: usize| !told.of[at].0.has_free_sense();
    let turned = |flips: &usize| (0..count).any(|at| flips & (1 << at) != 0 && one_way(at));
    (2..=MOST_UNKNOWNS).contains(&count)
        && !holds(0)
        && (1..1_usize << count).filter(turned).any(holds)
}

/// The moments of known forces in a line: each product of one and a length.
fn moments(board: &Board<'_>, sides: &[Tree]) -> Vec<Moment> {
    let (Some(first), Some(last)) = (sides.first(), sides.last()) else {
        return Vec::new();
    };
    let mut all = products(first).unwrap_or_default();
    if sides.len() > 1 {
        let last = products(last).unwrap_or_default().into_iter();
        all.extend(last.map(Product::negative));
    }
    let found = all.iter().filter_map(|product| moment(board, product));
    found.collect()
}

/// The terms of a side, multiplied out; `None` where there are very many.
fn products(side: &Tree) -> Option<Vec<Product<'_>>> {
    multiplied::products(side, &|_| false)
}

/// The moment of a known force that a product is.
fn moment(board: &Board<'_>, product: &Product<'_>) -> Option<Moment> {
    if names_sought(board, product) {
        return None;
    }
    let factors = &product.factors;
    let value = |one: &Placed<'_>| plain_value(board, one.tree).ok().map(|value| value.number);
    let values: Option<Vec<f64>> = factors.iter().map(value).collect();
    let values = values?;
    let above = || factors.iter().zip(&values).enumerate();
    let above = || above().filter(|(_, (one, _))| !one.below);
    let (force, size, used) = forces(board).into_iter().find_map(|(force, size)| {
        let is = |value: f64| is_near(value.abs(), size);
        let whole = above().find(|(_, (_, value))| is(**value));
        if let Some((at, _)) = whole {
            return Some((force, size, vec![at]));
        }
        // `21·9.8`: a mass times the acceleration of free fall.
        let of_mass = |(at, (_, mass)): (usize, (&Placed<'_>, &f64))| {
            let mut others = above().filter(|(other, _)| *other != at);
            let by = others.find(|(_, (_, by))| is_gravity(board, **by) && is(*mass * **by))?;
            Some((force, size, vec![at, by.0]))
        };
        above().find_map(of_mass)
    })?;
    let length = |(at, (one, value)): (usize, (&Placed<'_>, &f64))| {
        let given = plain_value(board, one.tree)
            .is_ok_and(|value| !value.bare && value.dimension == Dimension::LENGTH);
        !used.contains(&at) && (given || is_length(board, value.abs()))
    };
    let whole = values
        .iter()
        .zip(factors)
        .fold(product.sign, |all, (value, one)| match one.below {
            true => all / value,
            false => all * value,
        });
    above().any(length).then_some((force, whole / size))
}

/// The weights, and what they are across the body, each with its size.
fn forces(board: &Board<'_>) -> Vec<(ForceId, f64)> {
    let steps = board.key.steps.iter().map(|step| step.id);
    let known = steps.filter(|step| {
        let across = matches!(step, StepId::Across(_));
        step.is_weight() || across && !is_sought(board, *step)
    });
    let found = known.filter_map(|step| {
        let value = board.name_value(NameRole::Step(step))?.abs();
        Some((step.force()?, value))
    });
    found.filter(|(_, value)| *value > 0.0).collect()
}

fn is_gravity(board: &Board<'_>, number: f64) -> bool {
    let others = board.other_gravities().into_iter();
    let mut all = others.chain([board.problem.gravity(), 10.0]);
    all.any(|gravity| is_near(number, gravity))
}

fn is_near(one: f64, other: f64) -> bool {
    (one - other).abs() <= SAME * other
}
