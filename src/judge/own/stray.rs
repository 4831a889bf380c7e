//! Whether a line that is near a wrong one of the learner's own has a term that does not stand in
//! it: after `1.4 T = 695 + 3` the line `1.4 T = 695 + 6` is one more try, whatever the share of it.

use super::super::board::Board;
use super::super::printed_units::printed_force;
use super::relation::{NEAR, unknowns_of, value_of};
use crate::key::StepId;
use crate::reading::{Literal, Node, Operator, Tree};

/// Two terms are one where they differ by no more than this share of them.
const SAME: f64 = 5e-4;
/// Sums nearer than this share of their terms are one.
const EXACT: f64 = 1e-6;
/// The most terms into which a line is multiplied out.
const MOST_TERMS: usize = 64;

/// A term: what it is a multiple of, how often, and how far that may be off by rounding.
#[derive(Clone, Copy)]
struct Term {
    of: Option<StepId>,
    times: f64,
    off: f64,
}

/// True if the terms in which two lines differ are no nearer to each other than chance: all that
/// is the same in both apart, what is left must be equal as far as it is rounded.
pub(super) fn strays(board: &Board<'_>, told: &[Tree], hers: &[Tree]) -> bool {
    strays_in(board, told, hers).unwrap_or(false)
}

fn strays_in(board: &Board<'_>, told: &[Tree], hers: &[Tree]) -> Option<bool> {
    let ends = |sides: &[Tree]| Some((sides.first()?.clone(), sides.last()?.clone()));
    let (told, hers) = (ends(told)?, ends(hers)?);
    let open = unknowns_of(board, &[&told.0, &told.1]);
    // A number that stands in her line is exact.
    let known: Vec<String> = [&hers.0, &hers.1].into_iter().flat_map(digits_of).collect();
    let line = |(one, other): &(Tree, Tree), known: &[String]| {
        let of = Terms { board, known };
        let mut all = of.terms(one)?;
        all.extend(of.terms(other)?.into_iter().map(|term| times(term, -1.0)));
        Some(all)
    };
    let (told, hers) = (line(&told, &known)?, line(&hers, &[])?);
    let sum = |all: &[Term], step: StepId| -> f64 {
        let of_step = all.iter().filter(|term| term.of == Some(step));
        of_step.map(|term| term.times).sum()
    };
    // One of them may be a multiple of the other.
    let shared = open.iter().find_map(|step| {
        let (one, other) = (sum(&told, *step), sum(&hers, *step));
        (one != 0.0 && other != 0.0).then(|| other / one)
    })?;
    let told: Vec<Term> = told.into_iter().map(|term| times(term, shared)).collect();
    let mut kinds: Vec<Option<StepId>> = told.iter().chain(&hers).map(|term| term.of).collect();
    kinds.sort();
    kinds.dedup();
    Some(kinds.into_iter().any(|kind| strays_of(kind, &told, &hers)))
}

/// The same of the terms that are multiples of one thing.
fn strays_of(kind: Option<StepId>, told: &[Term], hers: &[Term]) -> bool {
    let of_kind = |all: &[Term]| -> Vec<Term> {
        let of = all.iter().filter(|term| term.of == kind);
        of.copied().collect()
    };
    let (told, mut left) = (of_kind(told), of_kind(hers));
    let sum = |all: &[Term]| all.iter().map(|term| term.times).sum::<f64>();
    let apart = (sum(&told) - sum(&left)).abs();
    let size = |all: &[Term]| all.iter().map(|term| term.times.abs()).sum::<f64>();
    let mut room = EXACT * (size(&told) + size(&left));
    for term in told {
        let from = |other: &Term| (other.times - term.times).abs();
        let at =
            (0..left.len()).min_by(|one, other| from(&left[*one]).total_cmp(&from(&left[*other])));
        let same = at.filter(|at| from(&left[*at]) <= term.off.max(SAME * term.times.abs()));
        match same {
            Some(at) => room += from(&left.swap_remove(at)),
            None => room += NEAR * term.times.abs() + term.off,
        }
    }
    room += left.iter().map(|term| NEAR * term.times.abs()).sum::<f64>();
    apart > room
}

fn times(term: Term, by: f64) -> Term {
    Term {
        times: term.times * by,
        off: term.off * by.abs(),
        ..term
    }
}

fn digits_of(side: &Tree) -> Vec<String> {
    match &side.node {
        Node::Literal(literal) => vec![literal.digits.clone()],
        Node::Negative(inner) => digits_of(inner),
        Node::Binary(_, one, other) => [digits_of(one), digits_of(other)].concat(),
        _ => Vec::new(),
    }
}

/// Multiplies lines out.
struct Terms<'a> {
    board: &'a Board<'a>,
    known: &'a [String],
}

impl Terms<'_> {
    /// The terms of a side; `None` where it is not linear, or of very many.
    fn terms(&self, side: &Tree) -> Option<Vec<Term>> {
        let scaled =
            |all: Vec<Term>, by: f64| all.into_iter().map(|term| times(term, by)).collect();
        match &side.node {
            Node::Negative(inner) => Some(scaled(self.terms(inner)?, -1.0)),
            Node::Binary(Operator::Add, one, other) => {
                Some([self.terms(one)?, self.terms(other)?].concat())
            }
            Node::Binary(Operator::Subtract, one, other) => {
                Some([self.terms(one)?, scaled(self.terms(other)?, -1.0)].concat())
            }
            Node::Binary(Operator::Multiply, one, other) => {
                let (one, other) = (self.terms(one)?, self.terms(other)?);
                if one.len() * other.len() > MOST_TERMS {
                    return None;
                }
                let all = one
                    .iter()
                    .flat_map(|one| other.iter().map(|other| product(*one, *other)));
                all.collect()
            }
            Node::Binary(Operator::Divide, above, below) if self.is_known(below) => {
                let below = self.value(below).filter(|below| *below != 0.0)?;
                Some(scaled(self.terms(above)?, 1.0 / below))
            }
            Node::Literal(literal) => Some(vec![Term {
                of: None,
                times: self.value(side)?,
                off: self.off(literal),
            }]),
            _ if self.is_known(side) => Some(vec![Term {
                of: None,
                times: self.value(side)?,
                off: 0.0,
            }]),
            Node::Name(_) => {
                let step = unknowns_of(self.board, &[side]).first().copied()?;
                let one = value_of(self.board, side, &|_| Some(1.0))?;
                Some(vec![Term {
                    of: Some(step),
                    times: one,
                    off: 0.0,
                }])
            }
            _ => None,
        }
    }

    fn is_known(&self, side: &Tree) -> bool {
        unknowns_of(self.board, &[side]).is_empty()
    }

    fn value(&self, side: &Tree) -> Option<f64> {
        value_of(self.board, side, &|_| None).filter(|value| value.is_finite())
    }

    fn off(&self, literal: &Literal) -> f64 {
        if self.known.contains(&literal.digits) {
            return 0.0;
        }
        // A bare number is one of the unit in which forces are printed.
        let unit = match literal.unit {
            Some(_) => printed_force(self.board).unwrap_or(1.0),
            None => 1.0,
        };
        0.5 * literal.written.last_place / unit
    }
}

fn product(one: Term, other: Term) -> Option<Term> {
    if one.of.is_some() && other.of.is_some() {
        return None;
    }
    Some(Term {
        of: one.of.or(other.of),
        times: one.times * other.times,
        off: one.off * other.times.abs() + other.off * one.times.abs(),
    })
}
