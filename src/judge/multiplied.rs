//! A side of a line multiplied out: its terms, each with the factors that stand in it as they were
//! typed.

use crate::reading::{Node, Operator, Tree};

/// The most terms into which a side is multiplied out.
const MOST_TERMS: usize = 64;

/// A factor of a term.
#[derive(Clone, Copy, Debug)]
pub(super) struct Placed<'t> {
    /// The factor as it was typed.
    pub(super) tree: &'t Tree,
    /// True where it divides.
    pub(super) below: bool,
    /// True where it stands beside a whole sum of which the term is one.
    pub(super) outside: bool,
}

/// A term: a product of factors.
#[derive(Clone, Debug)]
pub(super) struct Product<'t> {
    /// 1, or −1 for a term that is taken away.
    pub(super) sign: f64,
    /// The factors.
    pub(super) factors: Vec<Placed<'t>>,
}

impl<'t> Product<'t> {
    fn one(tree: &'t Tree, below: bool) -> Product<'t> {
        let outside = false;
        let factor = Placed {
            tree,
            below,
            outside,
        };
        Product {
            sign: 1.0,
            factors: vec![factor],
        }
    }

    /// The same, taken away.
    pub(super) fn negative(self) -> Product<'t> {
        Product {
            sign: -self.sign,
            ..self
        }
    }

    fn inverse(mut self) -> Product<'t> {
        for factor in &mut self.factors {
            factor.below = !factor.below;
        }
        self
    }

    /// The product of both; `sums` tells of each whether it is one term of a whole sum.
    fn times(&self, other: &Product<'t>, sums: [bool; 2]) -> Product<'t> {
        let beside = |factors: &[Placed<'t>], sum: bool| -> Vec<Placed<'t>> {
            let outside = |factor: &Placed<'t>| Placed {
                outside: factor.outside || sum,
                ..*factor
            };
            factors.iter().map(outside).collect()
        };
        let mut factors = beside(&self.factors, sums[1]);
        factors.extend(beside(&other.factors, sums[0]));
        Product {
            sign: self.sign * other.sign,
            factors,
        }
    }
}

/// The terms of a side, with what `is_whole` says of not taken apart; `None` where there are very many.
pub(super) fn products<'t>(
    side: &'t Tree,
    is_whole: &dyn Fn(&Tree) -> bool,
) -> Option<Vec<Product<'t>>> {
    let inner = |tree: &'t Tree| products(tree, is_whole);
    if is_whole(side) {
        return Some(vec![Product::one(side, false)]);
    }
    Some(match &side.node {
        Node::Negative(of) => inner(of)?.into_iter().map(Product::negative).collect(),
        Node::Binary(Operator::Add, one, other) => [inner(one)?, inner(other)?].concat(),
        Node::Binary(Operator::Subtract, one, other) => {
            let other = inner(other)?.into_iter().map(Product::negative);
            [inner(one)?, other.collect()].concat()
        }
        Node::Binary(Operator::Multiply, one, other) => all_times(&inner(one)?, &inner(other)?)?,
        Node::Binary(Operator::Divide, above, below) => {
            let mut under = inner(below)?;
            let under = match under.len() {
                1 => under.remove(0).inverse(),
                _ => Product::one(below, true),
            };
            all_times(&inner(above)?, &[under])?
        }
        _ => vec![Product::one(side, false)],
    })
}

fn all_times<'t>(one: &[Product<'t>], other: &[Product<'t>]) -> Option<Vec<Product<'t>>> {
    let sums = [one.len() > 1, other.len() > 1];
    let all = one
        .iter()
        .flat_map(|left| other.iter().map(move |right| left.times(right, sums)));
    (one.len() * other.len() <= MOST_TERMS).then(|| all.collect())
}
