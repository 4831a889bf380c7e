//! The form of a line that tells a quantity, term by term, with nothing worked out or cancelled: what
//! is said of a form is said of that one.

use super::Judgement;
use super::board::Board;
use super::lift::plain_value;
use super::multiplied::{Placed, products};
use super::terms::is_stretch;
use super::typed_angles::{TypedRatio, ratio_of};
use crate::reading::{Node, Operator, Tree};

/// A factor of a term, as it was written or as a key would write it.
#[derive(Clone, Debug, PartialEq)]
pub struct WrittenFactor {
    /// Its size, SI.
    pub value: f64,
    /// The sine, cosine or tangent that it is.
    pub ratio: Option<TypedRatio>,
    /// True where it divides.
    pub below: bool,
    /// True where it stands beside a whole sum of which the term is one.
    pub outside: bool,
}

/// A term of a sum, as it was written or as a key would write it.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct WrittenTerm {
    /// True for a term that is taken away.
    pub negative: bool,
    /// What stands in it.
    pub factors: Vec<WrittenFactor>,
}

/// Keeps the terms of the first side that is a form.
pub(super) fn see(board: &Board<'_>, sides: &[&Tree], judgement: &mut Judgement) {
    let form = sides.iter().find(|side| !is_leaf(side));
    let written = form.and_then(|side| terms_of(board, side));
    judgement.evidence.written = written.unwrap_or_default();
}

fn is_leaf(tree: &Tree) -> bool {
    match &tree.node {
        Node::Negative(inner) => is_leaf(inner),
        node => matches!(node, Node::Literal(_) | Node::Name(_)),
    }
}

fn terms_of(board: &Board<'_>, side: &Tree) -> Option<Vec<WrittenTerm>> {
    let stretch = |tree: &Tree| match &tree.node {
        Node::Binary(Operator::Subtract, from, taken) => is_stretch(board, from, taken),
        _ => false,
    };
    let factor = |placed: &Placed<'_>| {
        let value = plain_value(board, placed.tree).ok()?;
        Some(WrittenFactor {
            value: value.number,
            ratio: ratio_of(board, placed.tree),
            below: placed.below,
            outside: placed.outside,
        })
    };
    let terms = products(side, &stretch)?.into_iter().map(|product| {
        let factors = product.factors.iter().map(factor);
        let mut factors = factors.collect::<Option<Vec<WrittenFactor>>>()?;
        let negative = factors.iter().filter(|one| one.value < 0.0).count() % 2 == 1;
        for one in &mut factors {
            one.value = one.value.abs();
        }
        Some(WrittenTerm {
            negative: negative != (product.sign < 0.0),
            factors,
        })
    });
    terms.collect()
}
