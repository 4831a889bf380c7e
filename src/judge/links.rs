//! Every link of a chain at the values that stand, or else at the right ones: a side that is not
//! the value of the one before it makes the chain false, whatever its first link says.

use super::aside::Aside;
use super::board::{Board, Memo};
use super::by_terms::terms_of;
use super::chain::{is_rounded_hard, is_value_by_terms};
use super::identity::free_parts;
use super::lift::{plain_leaf, plain_value};
use super::open::is_open;
use super::stock::Stock;
use super::{Judgement, Truth};
use crate::key::StepId;
use crate::reading::{Leaf, Node, Reading, Tree, Value, evaluate};
use crate::text::Span;
use crate::units::Dimension;

const KILO: f64 = 1000.0;

/// The sides of a chain without those that have an open unknown in them: what these say of it is
/// judged as a balance, and what stands around them must be equal.
pub(super) fn without_open<'t>(board: &Board<'_>, sides: &[&'t Tree]) -> Vec<&'t Tree> {
    let is_known = |side: &&&Tree| {
        let names = side.names().into_iter();
        let mut roles = names.filter_map(|(id, _)| board.names.role(id));
        !roles.any(|role| is_open(board, role).is_some() || board.is_multiple_of_open(role))
    };
    sides.iter().filter(is_known).copied().collect()
}

/// The first side of a relation that is not equal to the one before it, the parts of a support's
/// force counted in any sense, but each in one. What is `known` of a link lets it stand, rounded
/// as it may be.
pub(super) fn broken_relation(
    board: &Board<'_>,
    stock: &Stock,
    sides: &[&Tree],
    known: &dyn Fn(&[&Tree]) -> bool,
) -> Option<Span> {
    let sides = &without_open(board, sides)[..];
    let parts = free_parts(board, sides);
    let break_in = |flips: usize| {
        let turned = turned_with(board, &parts, flips);
        let with = Board {
            turned: &turned,
            memo: Memo::default(),
            ..*board
        };
        let holds = |pair: &[&Tree]| match values(&with, pair) {
            Some((kind, one, other)) => {
                is_link(&with, stock, kind, (pair, one, other)) || one * other >= 0.0 && known(pair)
            }
            None => true,
        };
        let broken = sides.windows(2).find(|pair| !holds(pair));
        broken.map(|pair| pair[1].span)
    };
    let breaks: Option<Vec<Span>> = (0..1_usize << parts.len().min(2)).map(break_in).collect();
    breaks?.first().copied()
}

/// The parts that are counted against their sense where some of `parts` are turned about.
pub(super) fn turned_with(board: &Board<'_>, parts: &[StepId], flips: usize) -> Vec<StepId> {
    let is_flipped = |part: &StepId| {
        let at = parts.iter().position(|known| known == part);
        at.is_some_and(|at| flips & (1 << at) != 0)
    };
    let is_turned = |part: &&StepId| board.turned.contains(part) != is_flipped(part);
    let others = board.turned.iter().filter(|step| !parts.contains(step));
    parts
        .iter()
        .filter(is_turned)
        .chain(others)
        .copied()
        .collect()
}

/// The judgement of a definition whose expression does not come to the number told behind it:
/// neither of the two is kept under the name.
pub(super) fn broken_name(
    board: &Board<'_>,
    stock: &Stock,
    asked: StepId,
    reading: &Reading,
    judgement: &Judgement,
) -> Option<Judgement> {
    let (_, own) = judgement.names.as_ref()?;
    let sides: Vec<&Tree> = match reading.defines {
        Some(_) => reading.sides.iter().collect(),
        None => reading.sides.iter().skip(1).collect(),
    };
    // `ΣM = … = 0` says what the sum must be.
    let zero = |side: &&Tree| matches!(&side.node, Node::Literal(literal) if literal.value == 0.0);
    if judgement.truth.holds() || own.of_unknown || sides.last().is_some_and(zero) {
        return None;
    }
    let holds = |pair: &[&Tree]| match values(board, pair) {
        Some((kind, one, other)) => {
            is_link(board, stock, kind, (pair, one, other))
                || is_typed_so(board, pair)
                || is_rounded_hard((pair[0], pair[1]), (one, other))
        }
        None => true,
    };
    let broken = sides.windows(2).find(|pair| !holds(pair))?;
    let mut found = Judgement::of(asked, Truth::DoesNotHold);
    found.evidence.broken_link = true;
    found.evidence.aside = Some(Aside::Misnamed);
    found.caret = Some(broken[1].span);
    Some(found)
}

/// True if either of two neighbours, both of known value, is the value of the other.
pub(super) fn is_equal(board: &Board<'_>, stock: &Stock, pair: &[&Tree]) -> bool {
    let values = values(board, pair);
    values.is_some_and(|(kind, one, other)| is_link(board, stock, kind, (pair, one, other)))
        || is_typed_so(board, pair)
}

/// The same of the first two sides of a line, where a number that is added in the first and is no
/// quantity of this working counts as it is typed.
pub(super) fn is_equal_as_typed(board: &Board<'_>, stock: &Stock, pair: &[&Tree]) -> bool {
    let terms = terms_of(&pair[..1]);
    let literals = terms.iter().filter_map(|(_, term)| match &term.node {
        Node::Literal(literal) if !stock.is_meant(literal) => Some(literal.value),
        _ => None,
    });
    let exact: Vec<f64> = literals.collect();
    let is_value = |(kind, one, other): (Dimension, f64, f64)| {
        let beside = |sides, values| is_value_by_terms(board, stock, kind, (sides, values), &exact);
        beside((pair[0], pair[1]), (one, other)) || beside((pair[1], pair[0]), (other, one))
    };
    values(board, pair).is_some_and(is_value) || is_typed_so(board, pair)
}

/// True if two neighbours have one size where every unknown has its right value, the second perhaps
/// as a number of kilonewtons.
pub(super) fn is_equal_in_size(board: &Board<'_>, stock: &Stock, pair: &[&Tree]) -> bool {
    values(board, pair).is_none_or(|(kind, one, other)| {
        [1.0, KILO, 1.0 / KILO].iter().any(|times| {
            let sizes = (pair, one.abs(), times * other.abs());
            is_link(board, stock, kind, sizes)
        })
    })
}

/// The values of two neighbours, and what they are compared as; `None` where one has none.
fn values(board: &Board<'_>, pair: &[&Tree]) -> Option<(Dimension, f64, f64)> {
    let one = plain_value(board, pair[0]).ok()?;
    let other = plain_value(board, pair[1]).ok()?;
    let is_angle = |dimension, bare: bool| dimension == Dimension::ANGLE && !bare;
    let angle = is_angle(one.dimension, one.bare) || is_angle(other.dimension, other.bare);
    let kind = match angle {
        true => Dimension::ANGLE,
        false => Dimension::NUMBER,
    };
    let (one, other) = (one.number_as(kind), other.number_as(kind));
    (one.is_finite() && other.is_finite()).then_some((kind, one, other))
}

/// True if either of two neighbours is the value of the other as far as their figures go.
fn is_link(
    board: &Board<'_>,
    stock: &Stock,
    kind: Dimension,
    (pair, one, other): (&[&Tree], f64, f64),
) -> bool {
    let by_terms = |sides, values| is_value_by_terms(board, stock, kind, (sides, values), &[]);
    by_terms((pair[0], pair[1]), (one, other)) || by_terms((pair[1], pair[0]), (other, one))
}

/// True if a number is, without its unit, what numbers without units come to: `36*9.8/1000 =
/// 0.3528 kN`, `π/4 = 0.785`.
fn is_typed_so(board: &Board<'_>, pair: &[&Tree]) -> bool {
    let Node::Literal(literal) = &pair[1].node else {
        return false;
    };
    let form = with_pi_as_number(board, pair[0]).filter(|form| form.bare);
    let place = literal.written.last_place * (literal.typed / literal.value).abs();
    form.is_some_and(|form| (form.number - literal.typed).abs() <= 0.5 * place * (1.0 + 1e-6))
}

/// The value of an expression in which π is the number, and no angle.
pub(super) fn with_pi_as_number(board: &Board<'_>, tree: &Tree) -> Option<Value> {
    let value = evaluate(tree, &mut |leaf| match leaf {
        Leaf::Literal(literal) if literal.digits == "π" => Value::bare(literal.value),
        leaf => plain_leaf(board, leaf),
    });
    value.ok()
}
