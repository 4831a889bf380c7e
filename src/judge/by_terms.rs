//! Whether a balance of many numbers is the right one, term by term.
//!
//! Every number of a long line may stand for several quantities, more together than can be tried.
//! The terms of a balance are only added up: the functions of each are found alone, and of the sums
//! of one half of them that one is looked for which the other half balances.

use super::board::{Board, Memo};
use super::identity::free_parts;
use super::lift::{Lifted, lift, plain_value};
use super::links::turned_with;
use super::room::room;
use super::stock::{Stock, THREE_FIGURES};
use crate::key::{CHOICES, Samples, StepId};
use crate::reading::{Leaf, Node, Operator, Tree, Value, evaluate};
use crate::units::Dimension;

/// The most sums of half of the terms.
const MOST_SUMS: usize = 10_000;
/// Weights that make one number of the values at every choice of numbers.
const MIXED: Samples = [0.317, 1.0, 0.618, 1.414];
/// Sums nearer to nothing than this share of their terms' sizes are nothing.
const EQUAL: f64 = 1e-9;

/// The unknown as the sides give it that are equal at every choice of numbers, in the sense in which
/// it is counted then; `None` where no meaning of the numbers makes them so.
pub(super) fn proved(
    board: &Board<'_>,
    stock: &Stock,
    unknown: StepId,
    sides: &[&Tree],
) -> Option<Lifted> {
    let right = Lifted::right(board, unknown)?;
    let parts = free_parts(board, sides);
    in_senses(board, &parts, &|with, flips| {
        let (apart, size) = apart(with, sides)?;
        if apart > THREE_FIGURES * size {
            return None;
        }
        let functions: Option<Vec<Vec<Samples>>> = terms_of(sides)
            .into_iter()
            .map(|(sign, term)| functions(with, stock, sign, term))
            .collect();
        let at = parts.iter().position(|part| *part == unknown);
        let against = at.is_some_and(|at| flips & (1 << at) != 0);
        let function = right
            .function
            .map(|value| if against { -value } else { value });
        balances(&functions?).then_some(Lifted { function, ..right })
    })
}

/// True if the sides of a balance differ at the right values by no more than what was rounded in
/// them.
pub(super) fn nearly(board: &Board<'_>, stock: &Stock, sides: &[&Tree]) -> bool {
    let near = |with: &Board<'_>, _: usize| {
        let (apart, size) = apart(with, sides)?;
        let rooms = sides.iter();
        let rooms = rooms.map(|side| room(with, stock, side, Dimension::NUMBER, 1));
        (apart <= rooms.sum::<f64>().min(THREE_FIGURES * size)).then_some(())
    };
    in_senses(board, &free_parts(board, sides), &near).is_some()
}

/// True if the sides of a balance are equal at the right values of this problem, in full.
pub(super) fn exactly(board: &Board<'_>, sides: &[&Tree]) -> bool {
    let equal = |with: &Board<'_>, _: usize| {
        let (apart, size) = apart(with, sides)?;
        (apart <= EQUAL * size).then_some(())
    };
    in_senses(board, &free_parts(board, sides), &equal).is_some()
}

/// How far apart the sides are as they are typed, and the sizes of their terms, added.
fn apart(board: &Board<'_>, sides: &[&Tree]) -> Option<(f64, f64)> {
    let (mut apart, mut size) = (0.0, 0.0);
    for (sign, term) in terms_of(sides) {
        let value = plain_value(board, term).ok()?.number;
        apart += sign * value;
        size += value.abs();
    }
    Some((apart.abs(), size))
}

/// True for sides that differ, as they are typed, by more than this share of their terms.
pub(super) fn differ(board: &Board<'_>, sides: &[&Tree], share: f64) -> bool {
    apart(board, sides).is_some_and(|(apart, size)| apart > share * size)
}

/// What is found with the parts of a support's force counted in some sense, each in one.
fn in_senses<T>(
    board: &Board<'_>,
    parts: &[StepId],
    found: &dyn Fn(&Board<'_>, usize) -> Option<T>,
) -> Option<T> {
    (0..1_usize << parts.len().min(2)).find_map(|flips| {
        let turned = turned_with(board, parts, flips);
        let with = Board {
            turned: &turned,
            memo: Memo::default(),
            ..*board
        };
        found(&with, flips)
    })
}

/// The terms of the sides, everything brought to the first one, each with its sign.
pub(super) fn terms_of<'t>(sides: &[&'t Tree]) -> Vec<(f64, &'t Tree)> {
    fn collect<'t>(tree: &'t Tree, sign: f64, terms: &mut Vec<(f64, &'t Tree)>) {
        match &tree.node {
            Node::Negative(inner) => collect(inner, -sign, terms),
            Node::Binary(Operator::Add, left, right) => {
                collect(left, sign, terms);
                collect(right, sign, terms);
            }
            Node::Binary(Operator::Subtract, left, right) => {
                collect(left, sign, terms);
                collect(right, -sign, terms);
            }
            _ => terms.push((sign, tree)),
        }
    }
    let mut terms = Vec::new();
    for (at, side) in sides.iter().enumerate() {
        collect(side, if at == 0 { 1.0 } else { -1.0 }, &mut terms);
    }
    terms
}

/// What a term may be at every choice of numbers.
fn functions(board: &Board<'_>, stock: &Stock, sign: f64, term: &Tree) -> Option<Vec<Samples>> {
    let combine = |sides: &[&Tree], _: usize, leaf: &mut dyn FnMut(Leaf<'_>) -> Value| {
        evaluate(sides[0], leaf).ok().map(|value| value.number)
    };
    let lifted = lift(board, stock, &[term], None, &combine);
    let found: Vec<Samples> = lifted
        .iter()
        .map(|one| one.function.map(|value| sign * value))
        .collect();
    (!found.is_empty()).then_some(found)
}

/// True if one function of every term can be chosen so that they add up to nothing.
fn balances(terms: &[Vec<Samples>]) -> bool {
    // Sums that are one at every choice of numbers, and they alone, are nearly always one here.
    let mixed = |sum: &Samples| sum.iter().zip(MIXED).map(|(one, by)| one * by).sum::<f64>();
    let (one, other) = terms.split_at(terms.len() / 2);
    let (ones, others) = (sums(one), sums(other));
    let mut others: Vec<(f64, Samples, Samples)> = others
        .into_iter()
        .map(|(sum, size)| (mixed(&sum), sum, size))
        .collect();
    others.sort_by(|one, other| one.0.total_cmp(&other.0));
    let most = others.iter().map(|(_, _, size)| mixed(size));
    let most = most.fold(0.0, f64::max);
    ones.iter().any(|(sum, size)| {
        let (wanted, room) = (-mixed(sum), EQUAL * (mixed(size) + most));
        let first = others.partition_point(|(other, ..)| *other < wanted - room);
        let near = others[first..].iter();
        let mut near = near.take_while(|(other, ..)| *other <= wanted + room);
        near.any(|(_, other, sizes)| {
            (0..CHOICES).all(|choice| {
                let size = size[choice] + sizes[choice];
                (sum[choice] + other[choice]).abs() <= EQUAL * size
            })
        })
    })
}

/// The sums of one function of every term, each with the sizes of its terms added; of too many the
/// likeliest.
fn sums(terms: &[Vec<Samples>]) -> Vec<(Samples, Samples)> {
    let mut lengths: Vec<usize> = terms.iter().map(Vec::len).collect();
    while lengths.iter().product::<usize>() > MOST_SUMS {
        let Some(longest) = lengths.iter_mut().max() else {
            break;
        };
        *longest -= 1;
    }
    let mut found = vec![([0.0; CHOICES], [0.0; CHOICES])];
    for (term, length) in terms.iter().zip(lengths) {
        let add = |(sum, size): &(Samples, Samples)| {
            let (sum, size) = (*sum, *size);
            let some = term[..length].iter();
            some.map(move |function| {
                let sum: Samples = std::array::from_fn(|choice| sum[choice] + function[choice]);
                let size = std::array::from_fn(|choice| size[choice] + function[choice].abs());
                (sum, size)
            })
        };
        found = found.iter().flat_map(add).collect();
    }
    found
}
