//! Whether a line says once more what a refused one said: the same relation up to a factor and its
//! sides, with no number put in or worked out and nothing solved.

use super::super::board::Board;
use super::super::multiplied::{self, Product};
use super::super::names::NameRole;
use super::super::open::is_sought;
use super::relation::readings_of;
use crate::key::StepId;
use crate::reading::{Literal, Node, Operator, Tree};
use std::collections::BTreeMap;

/// Factors nearer than this share of them are one.
const EXACT: f64 = 1e-9;

/// A factor of a term: a name, a typed number, or a form that is not multiplied out.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
enum Factor {
    Name(String),
    Form(String),
    Number(u64),
}

/// The factors of a term, each with its power.
type Factors = BTreeMap<Factor, i32>;
/// A sum: each product of factors, and how often it stands there.
type Sum = BTreeMap<Factors, f64>;

/// True if `line` says no more than `hers`, a relation that was refused, does already. To solve it for
/// a quantity says more, and so does any number in the place of a name or of a form.
pub fn restates(board: &Board<'_>, hers: &str, line: &str) -> bool {
    let told = relation_of(board, line);
    let refused = relation_of(board, hers);
    told.zip(refused)
        .is_some_and(|(told, refused)| says_again(board, &told, &refused))
}

/// The sides of a line of two sides in which a quantity stands that is to be found.
fn relation_of(board: &Board<'_>, line: &str) -> Option<[Tree; 2]> {
    let mut readings = readings_of(board, line).into_iter();
    readings.find_map(|sides| {
        let sides: [Tree; 2] = sides.try_into().ok()?;
        (!sought_in(board, &sides).is_empty()).then_some(sides)
    })
}

fn says_again(board: &Board<'_>, told: &[Tree; 2], refused: &[Tree; 2]) -> bool {
    let (alone, before) = (alone_in(board, told), alone_in(board, refused));
    // A quantity told by numbers is a value, and no relation.
    let is_value = before.is_some() && sought_in(board, refused).len() == 1;
    let solved = alone.is_some() && alone != before;
    // Of one quantity every step but another order is one on the way to it.
    let one = sought_in(board, refused).len() == 1;
    let worked = one && sums_inside(told) != sums_inside(refused);
    if is_value || solved || worked || isolates(board, told, refused) {
        return false;
    }
    let sums = sum_of(board, told).zip(sum_of(board, refused));
    sums.is_some_and(|(told, refused)| {
        told.len() > 1 && (is_multiple(&told, &refused) || is_scaled(&told, &refused))
    })
}

/// The quantity to be found that stands alone on a side, but for its sign.
fn alone_in(board: &Board<'_>, sides: &[Tree; 2]) -> Option<StepId> {
    sides.iter().find_map(|side| match &side.node {
        Node::Negative(inner) => sought(board, inner),
        _ => sought(board, side),
    })
}

fn sought(board: &Board<'_>, side: &Tree) -> Option<StepId> {
    let Node::Name(id) = side.node else {
        return None;
    };
    match board.names.role(id)? {
        NameRole::Step(step) if is_sought(board, step) => Some(step),
        _ => None,
    }
}

/// The quantities to be found that are named in some sides, each once.
fn sought_in(board: &Board<'_>, sides: &[Tree]) -> Vec<StepId> {
    let names = sides.iter().flat_map(Tree::names);
    let mut found: Vec<StepId> = names
        .filter_map(|(id, _)| match board.names.role(id)? {
            NameRole::Step(step) if is_sought(board, step) => Some(step),
            _ => None,
        })
        .collect();
    found.sort();
    found.dedup();
    found
}

/// How many sums some sides have as factors.
fn sums_inside(sides: &[Tree; 2]) -> usize {
    let sum = |tree: &Tree| {
        let sum = matches!(
            tree.node,
            Node::Binary(Operator::Add | Operator::Subtract, ..)
        );
        usize::from(sum)
    };
    let mut count = 0;
    for side in sides {
        side.visit(&mut |tree| {
            if let Node::Binary(Operator::Multiply | Operator::Divide, one, other) = &tree.node {
                count += sum(one) + sum(other);
            }
        });
    }
    count
}

/// True where the only quantity that is to be found has a side for itself, and had none before.
fn isolates(board: &Board<'_>, told: &[Tree; 2], refused: &[Tree; 2]) -> bool {
    let by_itself = |sides: &[Tree; 2]| {
        let of = |side: &Tree| !sought_in(board, std::slice::from_ref(side)).is_empty();
        let one = |side: &Tree| {
            let sum = matches!(
                side.node,
                Node::Binary(Operator::Add | Operator::Subtract, ..)
            );
            of(side) && !sum
        };
        one(&sides[0]) && !of(&sides[1]) || one(&sides[1]) && !of(&sides[0])
    };
    sought_in(board, refused).len() == 1 && by_itself(told) && !by_itself(refused)
}

/// True if every term of a sum is one of another times the same numbers, and none is left out; with
/// fewer factors than before it is on its way to be solved.
fn is_multiple(told: &Sum, refused: &Sum) -> bool {
    let count = |sum: &Sum| -> i32 {
        let powers = sum.keys().flat_map(BTreeMap::values);
        powers.map(|power| power.abs()).sum()
    };
    let Some((first, _)) = refused.first_key_value() else {
        return false;
    };
    let is_number = |by: &Factors| by.keys().all(|one| matches!(one, Factor::Number(_)));
    let by = |other: &Factors| {
        let inverse = first.iter().map(|(factor, power)| (factor.clone(), -power));
        multiplied(other, &inverse.collect())
    };
    told.len() == refused.len()
        && told.keys().map(by).filter(is_number).any(|by| {
            let mut ratios = refused.iter().map(|(factors, times)| {
                let other = told.get(&multiplied(factors, &by))?;
                Some(other / times)
            });
            let ratio = ratios.next().flatten();
            let same = |ratio: f64, other: Option<f64>| {
                other.is_some_and(|other| (other - ratio).abs() <= EXACT * ratio.abs())
            };
            ratio.is_some_and(|ratio| ratios.all(|other| same(ratio, other)))
                && (by.is_empty() || count(told) >= count(refused))
        })
}

/// True if a sum is another with the numbers of each term multiplied by the same number.
fn is_scaled(told: &Sum, refused: &Sum) -> bool {
    let terms = |sum: &Sum| {
        let mut all: Vec<(Factors, f64, usize)> = Vec::new();
        for (factors, times) in sum {
            let number = |(factor, power): (&Factor, &i32)| match factor {
                Factor::Number(bits) => Some(f64::from_bits(*bits).powi(*power)),
                _ => None,
            };
            let named = |factor: &Factor| !matches!(factor, Factor::Number(_));
            let mut rest = factors.clone();
            rest.retain(|factor, _| named(factor));
            let numbers = || factors.iter().filter_map(number);
            all.push((rest, times * numbers().product::<f64>(), numbers().count()));
        }
        all.sort_by(|one, other| {
            let size = one.1.abs().total_cmp(&other.1.abs());
            one.0.cmp(&other.0).then(size)
        });
        all
    };
    let (told, refused) = (terms(told), terms(refused));
    let both = || told.iter().zip(&refused);
    let same = |(one, other): (&(Factors, f64, usize), &(Factors, f64, usize))| {
        one.0 == other.0 && one.2 >= other.2
    };
    let mut ratios = both().map(|(one, other)| one.1 / other.1);
    let first = ratios.next().unwrap_or(f64::NAN);
    // Of the same size they are worked out, or the same as typed.
    let scaled = (first.abs() - 1.0).abs() > EXACT;
    told.len() == refused.len()
        && scaled
        && both().all(same)
        && ratios.all(|ratio| (ratio - first).abs() <= EXACT * first.abs())
}

fn multiplied(one: &Factors, other: &Factors) -> Factors {
    let mut all = one.clone();
    for (factor, power) in other {
        *all.entry(factor.clone()).or_insert(0) += power;
    }
    all.retain(|_, power| *power != 0);
    all
}

/// The difference of two sides, multiplied out.
fn sum_of(board: &Board<'_>, sides: &[Tree; 2]) -> Option<Sum> {
    let mut all = terms_of(board, &sides[0])?;
    let other = terms_of(board, &sides[1])?.into_iter();
    all.extend(other.map(|(factors, times)| (factors, -times)));
    let mut sum = Sum::new();
    for (factors, times) in all {
        *sum.entry(factors).or_insert(0.0) += times;
    }
    sum.retain(|_, times| *times != 0.0);
    Some(sum)
}

/// The terms of a side, multiplied out; `None` where there are very many.
fn terms_of(board: &Board<'_>, side: &Tree) -> Option<Vec<(Factors, f64)>> {
    let terms = multiplied::products(side, &|_| false)?.into_iter();
    let term = |product: Product<'_>| {
        let mut all = Factors::new();
        for one in &product.factors {
            let factor = match &one.tree.node {
                // A term with nought in it is none.
                Node::Literal(literal) if literal.value == 0.0 && !one.below => return None,
                Node::Literal(literal) => factor_of(literal),
                Node::Name(_) => Some(Factor::Name(text_of(board, one.tree))),
                _ => Some(Factor::Form(text_of(board, one.tree))),
            };
            let power = if one.below { -1 } else { 1 };
            if let Some(factor) = factor {
                *all.entry(factor).or_insert(0) += power;
            }
        }
        all.retain(|_, power| *power != 0);
        Some((all, product.sign))
    };
    Some(terms.filter_map(term).collect())
}

/// A number as a factor; none for one that changes nothing, and for nought.
fn factor_of(literal: &Literal) -> Option<Factor> {
    let plain = literal.unit_alone || literal.value == 1.0 || literal.value == 0.0;
    (!plain).then(|| Factor::Number(literal.value.to_bits()))
}

/// A form by which it is known again, whatever its names are typed like.
fn text_of(board: &Board<'_>, tree: &Tree) -> String {
    let text = |tree: &Tree| text_of(board, tree);
    match &tree.node {
        Node::Literal(literal) => format!("{}", literal.typed),
        Node::Name(id) => format!("{:?}", (board.names.role(*id), id)),
        Node::Negative(inner) => format!("-({})", text(inner)),
        Node::Binary(operator, left, right) => {
            format!("({}) {operator:?} ({})", text(left), text(right))
        }
        Node::Call(function, inner) => format!("{function:?}({})", text(inner)),
    }
}
