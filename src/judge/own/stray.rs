//! Whether a line that is near a wrong one of the learner's own has a term that does not stand in
//! it: after `1.4 T = 695 + 3` the line `1.4 T = 695 + 6` is one more try, whatever the share of it.

use super::super::board::Board;
use super::super::names::NameRole;
use super::super::printed_units::printed_force;
use super::relation::{NEAR, unknowns_of, value_of};
use crate::key::StepId;
use crate::reading::{Literal, Node, Operator, Tree};
use crate::units::Dimension;

/// Two terms are one where they differ by no more than this share of them.
const SAME: f64 = 5e-4;
/// No rounding takes a term farther than this share of it.
const ROUNDED: f64 = 0.01;
/// Sums nearer than this share of their terms are one.
const EXACT: f64 = 1e-6;
/// The most terms into which a line is multiplied out.
const MOST_TERMS: usize = 64;

/// What each known force is multiplied by, one after the other, to see of which of them a line is made; in
/// two ways, as one may agree by chance.
const MOVED: [[f64; 2]; 4] = [[1.37, 0.47], [0.61, 1.59], [1.83, 1.21], [0.29, 0.83]];

/// What a term comes to with the known forces moved in either way.
type Moved = [f64; 2];

/// A term: what it is a multiple of, how often, and how far that may be off by rounding; how often
/// with the known forces moved, where one of them stands in it.
#[derive(Clone, Copy)]
struct Term {
    of: Option<StepId>,
    times: f64,
    off: f64,
    moved: Moved,
    force: Force,
}

/// Whether a known force stands in a term, by itself or times something else.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Force {
    None,
    Bare,
    Times,
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
    let forces = forces(board);
    let line = |(one, other): &(Tree, Tree), known: &[String]| {
        let of = Terms {
            board,
            known,
            forces: &forces,
        };
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
    let mut room = EXACT * (size(&told) + size(&left));
    let mut alone: Vec<Term> = Vec::new();
    for term in told {
        let from = |other: &Term| (other.times - term.times).abs();
        let at =
            (0..left.len()).min_by(|one, other| from(&left[*one]).total_cmp(&from(&left[*other])));
        let same = at.filter(|at| from(&left[*at]) <= term.off.max(SAME * term.times.abs()));
        match same {
            Some(at) => room += from(&left.swap_remove(at)),
            None => {
                room += NEAR * term.times.abs() + term.off;
                alone.push(term);
            }
        }
    }
    room += left.iter().map(|term| NEAR * term.times.abs()).sum::<f64>();
    apart > room || is_another_sum(&alone, &left)
}

/// True for terms that only come to what others come to: of the same known forces, which other arms
/// would show, or as many numbers, none of which is near one of the others.
fn is_another_sum(alone: &[Term], left: &[Term]) -> bool {
    let moved = |all: &[Term], way: usize| all.iter().map(|term| term.moved[way]).sum::<f64>();
    let off = |all: &[Term]| all.iter().map(|term| term.off).sum::<f64>();
    let room = NEAR * (size(alone) + size(left)) + off(alone) + off(left);
    // One number may be that of a force by chance.
    let of_forces = |all: &[Term]| {
        let several = all.len() > 1;
        let mut terms = all.iter();
        let is = |term: &Term| term.force == Force::Times || several && term.force == Force::Bare;
        !all.is_empty() && terms.all(is)
    };
    if of_forces(alone) && of_forces(left) {
        return (0..2).any(|way| (moved(alone, way) - moved(left, way)).abs() > room);
    }
    let far = |term: &Term| {
        let near = ROUNDED * term.times.abs() + term.off;
        let mut others = left.iter();
        others.all(|other| (other.times - term.times).abs() > near)
    };
    alone.len() > 1 && alone.len() == left.len() && alone.iter().all(far)
}

fn size(all: &[Term]) -> f64 {
    all.iter().map(|term| term.times.abs()).sum()
}

fn times(term: Term, by: f64) -> Term {
    Term {
        times: term.times * by,
        off: term.off * by.abs(),
        moved: term.moved.map(|moved| moved * by),
        ..term
    }
}

/// The known forces, and the sums of several of them, each with what it comes to where every force
/// is moved by another factor.
fn forces(board: &Board<'_>) -> Vec<(f64, Moved)> {
    let mut all: Vec<(StepId, f64)> = Vec::new();
    for step in board.key.steps.iter().map(|step| step.id) {
        let value = board.name_value(NameRole::Step(step)).map(f64::abs);
        let of_lesson = matches!(step, StepId::Across(_) | StepId::PartOf(..));
        let known = step.is_weight() || of_lesson && board.key.open_in(step).is_empty();
        all.extend(
            value
                .filter(|value| known && *value > 0.0)
                .map(|value| (step, value)),
        );
    }
    let weights: Vec<(StepId, f64)> = all
        .iter()
        .filter(|(step, _)| step.is_weight())
        .copied()
        .collect();
    let factor = |at: usize| {
        // Equal forces are told apart by nothing.
        let equal = |(_, value): &(StepId, f64)| is_near(*value, weights[at].1);
        let first = weights.iter().position(equal).unwrap_or(at);
        MOVED[first % MOVED.len()]
    };
    let of = |step: StepId| {
        weights
            .iter()
            .position(|(weight, _)| weight.force() == step.force())
    };
    let parts = all.iter().filter(|(step, _)| !step.is_weight());
    let parts = parts.filter_map(|(step, value)| {
        let factors = factor(of(*step)?);
        Some((*value, factors.map(|factor| factor * value)))
    });
    let mut found: Vec<(f64, Moved)> = parts.collect();
    for chosen in 1..1_usize << weights.len().min(MOVED.len()) {
        let chosen = (0..weights.len()).filter(|at| chosen & (1 << at) != 0);
        let sum = chosen.fold((0.0, [0.0; 2]), |(sum, moved), at| {
            let (value, by) = (weights[at].1, factor(at));
            (sum + value, [0, 1].map(|way| moved[way] + by[way] * value))
        });
        found.push(sum);
    }
    found
}

/// True for a length of the problem, a half of one, or what two of these differ by: none of them is
/// rounded.
pub(super) fn is_length(board: &Board<'_>, number: f64) -> bool {
    let givens = board.problem.givens().iter();
    let lengths = givens.filter(|given| given.dimension == Dimension::LENGTH);
    let known: Vec<f64> = lengths
        .flat_map(|given| [given.value, 0.5 * given.value])
        .collect();
    let is = |length: f64| (length - number).abs() <= EXACT * number;
    known.iter().any(|one| {
        let mut others = known.iter();
        is(*one) || others.any(|other| is(one - other))
    })
}

fn is_near(one: f64, other: f64) -> bool {
    (one - other).abs() <= SAME * one.abs()
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
    forces: &'a [(f64, Moved)],
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
                let above = self.terms(above)?.into_iter().map(multiplied);
                Some(scaled(above.collect(), 1.0 / below))
            }
            Node::Literal(literal) => {
                let (times, off) = (self.value(side)?, self.off(literal));
                let force = self.force(times, 0.5 * literal.written.last_place);
                Some(vec![Term {
                    off,
                    ..number(times, force, Force::Bare)
                }])
            }
            Node::Name(_) if self.is_known(side) => {
                let times = self.value(side)?;
                Some(vec![number(times, self.force(times, 0.0), Force::Times)])
            }
            _ if self.is_known(side) => Some(vec![number(self.value(side)?, None, Force::None)]),
            Node::Name(_) => {
                let step = unknowns_of(self.board, &[side]).first().copied()?;
                let one = value_of(self.board, side, &|_| Some(1.0))?;
                Some(vec![Term {
                    of: Some(step),
                    times: one,
                    off: 0.0,
                    moved: [one; 2],
                    force: Force::None,
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

    /// What a number comes to where the known forces are moved, if it is one of them or their sum,
    /// and of no two of these.
    fn force(&self, value: f64, rounded: f64) -> Option<Moved> {
        let is = |(force, _): &&(f64, Moved)| {
            is_near(*force, value.abs()) || (force - value.abs()).abs() <= rounded * (1.0 + EXACT)
        };
        let found = self.forces.iter().filter(is);
        let mut found = found.map(|(force, moved)| moved.map(|moved| moved / force));
        let by = found.next()?;
        let one = found.all(|other| (0..2).all(|way| is_near(other[way], by[way])));
        one.then(|| by.map(|by| value * by))
    }

    fn off(&self, literal: &Literal) -> f64 {
        if self.known.contains(&literal.digits) || is_length(self.board, literal.value) {
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
    let force = match (one.force, other.force) {
        (Force::None, Force::None) => Force::None,
        _ => Force::Times,
    };
    Some(Term {
        of: one.of.or(other.of),
        times: one.times * other.times,
        off: one.off * other.times.abs() + other.off * one.times.abs(),
        moved: [0, 1].map(|way| one.moved[way] * other.moved[way]),
        force,
    })
}

/// A term of numbers alone, which is a known force where it moves with these.
fn number(times: f64, moved: Option<Moved>, as_force: Force) -> Term {
    Term {
        of: None,
        times,
        off: 0.0,
        moved: moved.unwrap_or([times; 2]),
        force: moved.map_or(Force::None, |_| as_force),
    }
}

fn multiplied(term: Term) -> Term {
    let force = match term.force {
        Force::None => Force::None,
        _ => Force::Times,
    };
    Term { force, ..term }
}
