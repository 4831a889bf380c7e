//! An equation with an unknown in it.
//!
//! The equation is taken as a function of the unknown and solved for it at every choice of
//! numbers; a balance about any pivot, in any order, multiplied out or not, then gives the right
//! unknown everywhere. A learner's named component is a multiple of the unknown by the relation
//! that she holds true.

use super::board::{Board, Memo, Own, Standing};
use super::by_wrong::is_by_wrong;
use super::chain::first_break;
use super::counted::counted;
use super::expression::{COARSE, TOO_COARSE};
use super::grade::Typed;
use super::identity::{
    follows_identically, goes_both_ways, holds_identically, is_empty, is_of_forces,
    may_hold_otherwise,
};
use super::lacking::{self, Lacking};
use super::lift::{Lifted, lift, plain_leaf, plain_value};
use super::links::{broken_relation, is_equal_in_size, without_open};
use super::names::NameRole;
use super::near::{MOST_LOOSE, is_digit, is_near, rounded};
use super::open::is_open;
use super::own::{Way, accepted_of, right_way};
use super::root::root;
use super::sense::signed_as;
use super::stock::Stock;
use super::unproved::{has_square_angle, is_of_names, not_seen};
use super::{Judgement, Remark, Truth, by_terms, joint, printed_units};
use crate::key::{Samples, StepId, agree};
use crate::reading::{Function, Leaf, Mismatch, Node, Operator, Tree, Value};
use crate::units::{Dimension, Written};
use std::cell::Cell;

/// True if a line of several sides is a statement about an unknown.
pub(super) fn is_equation(board: &Board<'_>, asked: StepId, sides: &[&Tree]) -> bool {
    sides.len() >= 2 && (asked.is_balance() || has_unknown(board, sides)) && has_open(board, sides)
}

/// True if an unknown, or a part or component of it, is named.
pub(super) fn has_unknown(board: &Board<'_>, sides: &[&Tree]) -> bool {
    if !open_in(board, sides).is_empty() {
        return true;
    }
    let unknown = board.unknown();
    roles(board, sides).into_iter().any(|role| match role {
        NameRole::Step(id) if id.is_general() => false,
        NameRole::Step(id) if Some(id) == unknown => true,
        NameRole::Step(
            StepId::Across(force) | StepId::PartOf(force, _) | StepId::Moment(force),
        ) => Some(StepId::Pull(force)) == unknown,
        NameRole::Step(StepId::Reaction(..)) => true,
        role => board.is_multiple_of_open(role),
    })
}

/// True if a part of a support's force that is not found yet is named.
pub(super) fn has_reaction(board: &Board<'_>, sides: &[&Tree]) -> bool {
    roles(board, sides)
        .into_iter()
        .filter_map(|role| is_open(board, role))
        .any(|open| matches!(open, StepId::Reaction(..)))
}

/// True if an unknown of a general working is named, or something made of it, that is not found
/// yet and that `target` is not made of.
pub(super) fn has_open_beside(board: &Board<'_>, target: StepId, sides: &[&Tree]) -> bool {
    let of_target = board.key.open_in(target);
    open_in(board, sides)
        .iter()
        .any(|open| open.is_general() && *open != target && !of_target.contains(open))
}

/// True if something made of an unknown that is not found yet is set equal to what is known:
/// `W2 = T2` with the mass of W2 sought.
pub(super) fn sets_multiple(board: &Board<'_>, target: StepId, sides: &[&Tree]) -> bool {
    let open = |id: &StepId| !board.standing.contains_key(id);
    let made_of = board.key.open_in(target);
    let named = open_in(board, sides);
    target.is_general()
        && !roles(board, sides).is_empty()
        && made_of.iter().any(open)
        && made_of.iter().all(|id| !named.contains(id))
}

/// The unknowns that stand in a line and are not found yet, in themselves or in what is made of
/// them.
pub(super) fn open_in(board: &Board<'_>, sides: &[&Tree]) -> Vec<StepId> {
    let mut found: Vec<StepId> = Vec::new();
    for role in roles(board, sides) {
        let NameRole::Step(id) = role else { continue };
        let mut all = is_open(board, role).into_iter().collect::<Vec<_>>();
        if id.is_general() {
            all.extend(board.key.open_in(id));
        }
        for open in all {
            if !board.standing.contains_key(&open) && !found.contains(&open) {
                found.push(open);
            }
        }
    }
    found
}

fn has_open(board: &Board<'_>, sides: &[&Tree]) -> bool {
    wanted(board, StepId::MomentSum, sides).is_some()
}

pub(super) fn roles(board: &Board<'_>, sides: &[&Tree]) -> Vec<NameRole> {
    sides
        .iter()
        .flat_map(|side| side.names())
        .filter_map(|(id, _)| board.names.role(id))
        .collect()
}

/// The unknown that an equation is solved for: the one asked if it is named, else the pull, else
/// a part of the hinge's force.
fn wanted(board: &Board<'_>, asked: StepId, sides: &[&Tree]) -> Option<StepId> {
    let roles = roles(board, sides);
    let open = open_in(board, sides);
    if open.contains(&asked) {
        return Some(asked);
    }
    let unknown = board.unknown()?;
    let through = |id: StepId| match id {
        StepId::Across(force) | StepId::PartOf(force, _) | StepId::Moment(force) => {
            StepId::Pull(force) == unknown
        }
        id => id == unknown || board.key.open_in(id).contains(&unknown),
    };
    let named = roles.iter().any(|role| {
        matches!(role, NameRole::Step(id) if through(*id)) || board.is_multiple_of_open(*role)
    });
    if named && !board.standing.contains_key(&unknown) {
        return Some(unknown);
    }
    open.first().copied()
}

/// The balance that an equation for this unknown is: that of the unknown worked towards, or any of
/// a general working; of several that give their unknowns together, the one asked or the first
/// that is still open. The unknown itself where its value is asked, or where no balance is.
fn balance_of(board: &Board<'_>, asked: StepId, unknown: StepId) -> StepId {
    let guided = board.key.general.is_none() && Some(unknown) != board.unknown();
    if asked == unknown || guided {
        return unknown;
    }
    let sums = board.key.sums_of(unknown);
    if sums.contains(&asked) {
        return asked;
    }
    let open = sums.iter().find(|sum| !board.standing.contains_key(sum));
    open.or(sums.first()).copied().unwrap_or(unknown)
}

/// Judges a chain with an unknown in it: the side with the unknown against its neighbour, and the
/// others as the values that they should be.
pub(super) fn judge(
    board: &Board<'_>,
    stock: &Stock,
    asked: StepId,
    sides: &[&Tree],
    line: usize,
) -> Judgement {
    if sides.len() <= 2 {
        return judge_pair(board, stock, asked, sides, line);
    }
    // Sides that only say the unknown in two ways say nothing yet.
    let mut pairs = sides
        .windows(2)
        .filter(|pair| has_unknown(board, pair))
        .map(|pair| judge_pair(board, stock, asked, pair, line));
    let first = pairs.next();
    let empty = |judgement: &Judgement| judgement.remarks.contains(&Remark::SaysNothing);
    let telling = match &first {
        Some(first) if empty(first) => pairs.find(|judgement| !empty(judgement)),
        _ => None,
    };
    let mut judgement = telling
        .or(first)
        .unwrap_or_else(|| judge_pair(board, stock, asked, &sides[..2], line));
    for pair in sides.windows(2) {
        if let Some(mismatch) = unequal_dimensions(board, pair) {
            return mismatched(judgement.target, mismatch);
        }
    }
    // What stands around the unknown is equal, and so is what each side says of it.
    let known_sides = without_open(board, sides);
    // Of equal sides the one that is no sum worked out already shows what a wrong balance is.
    if judgement.truth == Truth::DoesNotHold
        && are_near(board, &known_sides)
        && let Some(told) = known_sides.iter().find(|side| !is_number(side))
        && let Some(open) = sides.iter().find(|side| has_unknown(board, &[**side]))
    {
        judgement = judge_pair(board, stock, asked, &[*told, *open], line);
    }
    // The first pair around the unknown that is false, those that are `spared` apart.
    let false_pair = |spared: &dyn Fn(&[&Tree]) -> bool| {
        let mut pairs = sides.windows(2).filter(|pair| has_unknown(board, pair));
        let found = pairs.find(|pair| {
            let truth = || judge_pair(board, stock, asked, pair, line).truth;
            !spared(pair) && truth() == Truth::DoesNotHold
        });
        found.map(|pair| pair[1].span)
    };
    if judgement.truth.holds()
        && let Some(span) = first_break(board, stock, Dimension::NUMBER, &known_sides)
            .or_else(|| false_pair(&|_| false))
    {
        judgement.truth = Truth::DoesNotHold;
        judgement.establishes.clear();
        judgement.values.clear();
        judgement.evidence.broken_link = true;
        // Whether the form before it is right was not looked at.
        judgement.evidence.number = None;
        judgement.caret = Some(span);
    }
    // What is noted says that it holds: then every link of it must.
    let known = |pair: &[&Tree]| {
        let open = !open_in(board, pair).is_empty();
        let found = open.then(|| judge_pair(board, stock, asked, pair, line).truth);
        found.is_some_and(|truth| {
            truth.holds() || matches!(truth, Truth::Noted | Truth::TooFewFigures)
        })
    };
    // So must the links with an unknown on both sides, whichever senses are counted.
    let false_link = || false_pair(&|pair| is_equal_in_size(board, stock, pair));
    if judgement.truth == Truth::Noted
        && let Some(span) = broken_relation(board, stock, sides, &known).or_else(false_link)
    {
        judgement = Judgement::of(judgement.target, Truth::DoesNotHold);
        judgement.evidence.broken_link = true;
        judgement.caret = Some(span);
    }
    judgement
}

/// True for sides whose values differ by no more than what is rounded on the way.
fn are_near(board: &Board<'_>, sides: &[&Tree]) -> bool {
    let values = sides.iter().map(|side| plain_value(board, side));
    let values: Vec<f64> = values.flatten().map(|value| value.number).collect();
    let near = |pair: &[f64]| (pair[0] - pair[1]).abs() <= MOST_LOOSE * pair[0].abs();
    values.len() == sides.len() && values.windows(2).all(near)
}

/// True for numbers added up, which show nothing of where they come from.
fn is_number(side: &Tree) -> bool {
    match &side.node {
        Node::Literal(_) => true,
        Node::Negative(inner) => is_number(inner),
        Node::Binary(Operator::Add | Operator::Subtract, left, right) => {
            is_number(left) && is_number(right)
        }
        _ => false,
    }
}

/// Judges an equation (or an expression that must vanish).
fn judge_pair(
    board: &Board<'_>,
    stock: &Stock,
    asked: StepId,
    sides: &[&Tree],
    line: usize,
) -> Judgement {
    let Some(unknown) = wanted(board, asked, sides) else {
        return Judgement::of(asked, Truth::DoesNotHold);
    };
    let target = balance_of(board, asked, unknown);
    for side in sides {
        if let Err(mismatch) = plain_value(board, side) {
            return mismatched(target, mismatch);
        }
    }
    if is_false_of_sizes(board, sides) {
        return Judgement::of(target, Truth::DoesNotHold);
    }
    if let Some(mismatch) = unequal_dimensions(board, sides) {
        return mismatched(target, mismatch);
    }
    if is_product_of_unknowns(board, sides) {
        let mut judgement = Judgement::of(target, Truth::Noted);
        judgement.remarks = not_seen(stock, sides, Dimension::NUMBER);
        return judgement;
    }
    let combine = |sides: &[&Tree], choice: usize, leaf: &mut dyn FnMut(Leaf<'_>) -> Value| {
        root(board, unknown, sides, choice, leaf)
    };
    let mut lifted = lift(board, stock, sides, None, &combine);
    let mut judgement = Judgement::of(target, Truth::DoesNotHold);
    let plain_root = root(board, unknown, sides, 0, &mut |leaf| {
        plain_leaf(board, leaf)
    });
    let sense = unknown.has_free_sense();
    let alone = board.key.gives(target).is_some();
    let accepted = accepted_of(board, sides, if alone { target } else { unknown });
    let same = |left: &Samples, right: &Samples| {
        agree(left, right) || sense && agree(&left.map(|value| -value), right)
    };
    // What only follows is kept in the key's sense, in which the next line is judged.
    let in_key_sense = |root: f64, against: bool| match sense && against && target.is_general() {
        true => -root,
        false => root,
    };
    let opposite = Cell::new(false);
    let otherwise = may_hold_otherwise(board, unknown, sides, plain_root);
    let is_hit = |lifted: &[Lifted], function: &Samples| {
        lifted.iter().any(|one| same(&one.function, function))
    };
    let proved = (accepted.iter()).any(|(function, _)| is_hit(&lifted, function));
    let near = !proved
        && is_near(board, stock, (target, unknown), sides, plain_root)
        && !plain_root.is_some_and(|root| is_by_wrong(board, unknown, sides, root));
    let names = near && board.key.general.is_some() && is_of_names(stock, sides);
    let holds_here = names && by_terms::exactly(board, sides);
    if near && target.is_general() && target.is_balance() {
        let proved = by_terms::proved(board, stock, unknown, sides);
        // What is level or upright here is as good as its force.
        let seen =
            || (holds_here && has_square_angle(board)).then(|| Lifted::right(board, unknown));
        lifted.extend(proved.or_else(|| seen().flatten()));
    }
    let hit = accepted
        .iter()
        .find(|(function, _)| is_hit(&lifted, function));
    let off = hit.zip(plain_root).map_or(0.0, |((function, _), root)| {
        (root.abs() / function[0].abs() - 1.0).abs()
    });
    // A balance counted in other units gives its root in them.
    let off = if off < 0.1 { off } else { 0.0 };
    let fine = sides.iter().flat_map(|side| side.literals()).all(|place| {
        place.literal.written.significant >= 3
            || stock.is_exact(place.literal, place.in_angle)
            || is_digit(place.literal)
    });
    if !fine && off > TOO_COARSE && !board.few_figures_count() {
        judgement.truth = Truth::TooFewFigures;
        return judgement;
    }
    // A balance in names has no figure that could be rounded.
    let in_names = sides.iter().all(|side| side.literals().is_empty());
    if let Some((function, lines)) = hit {
        judgement.proved = true;
        let right = board
            .right(if alone { target } else { unknown })
            .is_some_and(|right| same(&right, function));
        judgement.truth = if right && lines.is_empty() {
            if fine && off > COARSE && !in_names {
                Truth::HoldsRounded
            } else {
                Truth::Holds
            }
        } else {
            Truth::Follows(lines.clone())
        };
        if !fine && off > COARSE {
            judgement.remarks.push(Remark::FewFigures);
        }
        let against = !lifted.iter().any(|one| agree(&one.function, function));
        if sense {
            (judgement.remarks).push(Remark::SensesTaken(vec![(unknown, against)]));
        }
        if alone || !target.is_balance() {
            let root = in_key_sense(plain_root.unwrap_or(function[0]), against && !right);
            settle(&mut judgement, target, (line, right), root, *function);
        }
    } else if let Some(senses) = otherwise
        .then(|| holds_identically(board, stock, sides))
        .flatten()
    {
        judgement.truth = Truth::Holds;
        judgement.proved = true;
        // Beside ψ, an acute angle, the parts stand for their sizes.
        let is_direction =
            |role: &NameRole| matches!(role, NameRole::Step(id) if id.is_direction());
        if !roles(board, sides).iter().any(is_direction) {
            judgement.remarks.push(Remark::SensesTaken(senses));
        }
    } else if let Some(lines) = follows_identically(board, stock, sides, unknown, &accepted) {
        judgement.truth = Truth::Follows(lines);
        judgement.proved = true;
    } else if otherwise && is_empty(board, stock, sides) {
        judgement.truth = Truth::Noted;
        judgement.remarks.push(Remark::SaysNothing);
        return judgement;
    } else if let Some(way) = right_way(board, target, sides, &|with, stock| {
        let forms = lift(with, stock, sides, None, &|sides, choice, leaf| {
            root(with, unknown, sides, choice, leaf)
        });
        let right = accepted.first().map(|(right, _)| right);
        let form = right.and_then(|right| {
            let mut forms = forms.iter().map(|one| &one.function);
            forms.find(|one| same(one, right)).map(|one| (one, right))
        });
        opposite.set(form.is_some_and(|(one, right)| !agree(one, right)));
        form.is_some() || otherwise && holds_identically(with, stock, sides).is_some()
    }) {
        match way {
            Way::Follows(lines) => {
                judgement.proved = true;
                judgement.truth = Truth::Follows(lines);
                let form = lifted.first().map(|one| one.function);
                if let Some((root, form)) = plain_root.zip(form)
                    && (alone || !target.is_balance())
                {
                    let root = in_key_sense(root, opposite.get());
                    settle(&mut judgement, target, (line, false), root, form);
                }
            }
            Way::TwoMeanings(right, own) => judgement.evidence.two_meanings = Some((right, own)),
        }
    } else if near {
        let proved = |sides: &[&Tree]| {
            lift(board, stock, sides, None, &combine).iter().any(|one| {
                accepted
                    .iter()
                    .any(|(function, _)| same(&one.function, function))
            })
        };
        if let Some(span) = super::surplus::surplus(board, sides, &proved) {
            judgement.evidence.surplus = true;
            judgement.caret = Some(span);
            return judgement;
        }
        judgement.truth = Truth::Noted;
        judgement.remarks = match (holds_here, names) {
            (true, _) => vec![Remark::HoldsHere],
            (_, true) => vec![Remark::ByChance],
            _ => not_seen(stock, sides, Dimension::NUMBER),
        };
        return judgement;
    }
    if judgement.truth.holds() {
        if matches!(judgement.truth, Truth::Follows(_)) {
            judgement.evidence.own_root = plain_root;
        }
        // Only a balance with no other unknown settles a step; a value asked is still to be given.
        let mut open = open_in(board, sides);
        let together = joint::unknowns(board, target);
        open.retain(|open| *open != unknown && !together.contains(open));
        open.sort();
        let others = !open.is_empty();
        if others && target.is_balance() {
            judgement.remarks.push(Remark::OtherUnknowns(open));
        }
        let again =
            !others && !together.is_empty() && joint::stands(board, &mut judgement, sides, line);
        if target.is_general() {
            tell_senses(&mut judgement, counted(board, sides));
        }
        if others || again || !target.is_balance() {
            if let Truth::Follows(lines) = std::mem::replace(&mut judgement.truth, Truth::Noted) {
                judgement.evidence.follows = lines;
            }
            judgement.proved = true;
            judgement.values.clear();
        } else {
            judgement.establishes.push(judgement.target);
        }
        return judgement;
    }
    let ten = |side: &&&Tree| {
        side.literals()
            .iter()
            .any(|place| place.literal.value == 10.0)
    };
    judgement.evidence.takes_ten = sides.iter().any(|side| ten(&side))
        && plain_root.is_some_and(|root| super::gravity::takes_ten(board, unknown, rounded(root)));
    // With the hinge's force in it, or about another point, the terms turn otherwise.
    judgement.evidence.same_turn = (target.is_general() || Some(unknown) == board.unknown())
        && !has_reaction(board, sides)
        && accepted.iter().any(|(function, _)| {
            lifted
                .iter()
                .any(|one| agree(&one.function.map(|value| -value), function))
        });
    judgement.evidence.of_forces = is_of_forces(board, sides);
    judgement.evidence.both_ways = judgement.evidence.same_turn && goes_both_ways(board, sides);
    judgement.evidence.lifted = lifted.into_iter().map(|one| one.function).collect();
    if target == StepId::MomentSum {
        let parted =
            lacking::parted(sides).map(|parted| lift(board, stock, &parted, None, &combine));
        let parted = parted.into_iter().flatten().map(|one| one.function);
        let roots: Vec<Samples> = parted.chain(judgement.evidence.lifted.clone()).collect();
        if lacking::lacks_distance(board, stock, sides, &roots) {
            judgement.evidence.lacking = Some(Lacking::Distance);
        }
    }
    let in_printed = |root: f64| root * printed_units::factor_of_root(board, unknown, sides, root);
    judgement.evidence.number = plain_root.map(in_printed).map(|root| Typed {
        value: root,
        written: Written {
            significant: 4,
            last_place: 1e-4 * root.abs().max(1e-9),
        },
    });
    judgement
}

/// Sides of sizes that differ by more than this share of their terms are not equal.
const APART: f64 = 0.02;

/// `|Hx| = −361 N`, `|Hy| + 230 = 0`: a size has no sense in which it may be counted otherwise, so
/// that the sides must be equal at the right values or at hers.
fn is_false_of_sizes(board: &Board<'_>, sides: &[&Tree]) -> bool {
    let mut bars = false;
    for side in sides {
        side.visit(&mut |tree| bars |= matches!(tree.node, Node::Call(Function::Absolute, _)));
    }
    let right = Board {
        standing: &Standing::new(),
        memo: Memo::default(),
        ..*board
    };
    let apart = |with: &Board<'_>| by_terms::differ(with, sides, APART);
    bars && apart(board) && apart(&right)
}

/// `(T − 811)·(T − 5) = 0`: a product that vanishes tells of no factor that it does. A factor that
/// holds no unknown changes nothing.
fn is_product_of_unknowns(board: &Board<'_>, sides: &[&Tree]) -> bool {
    let zero = |side: &&&Tree| matches!(&side.node, Node::Literal(literal) if literal.value == 0.0);
    let mut others = sides.iter().filter(|side| !zero(side));
    let (Some(product), None) = (others.next(), others.next()) else {
        return false;
    };
    let Node::Binary(Operator::Multiply, left, right) = &product.node else {
        return false;
    };
    let sum = |tree: &Tree| {
        matches!(
            tree.node,
            Node::Binary(Operator::Add | Operator::Subtract, ..)
        )
    };
    let open = |tree: &Tree| has_unknown(board, &[tree]);
    [left, right]
        .iter()
        .all(|factor| sum(factor) && open(factor))
}

/// Says in which senses a balance of a general working counts its parts: those alone that it tells
/// beyond doubt.
fn tell_senses(judgement: &mut Judgement, counted: Vec<(StepId, bool)>) {
    let told = |remark: &Remark| matches!(remark, Remark::SensesTaken(_));
    judgement.remarks.retain(|remark| !told(remark));
    if !counted.is_empty() {
        judgement.remarks.push(Remark::SensesTaken(counted));
    }
}

/// Lets a value stand that the line only implies.
fn settle(
    judgement: &mut Judgement,
    target: StepId,
    (line, right): (usize, bool),
    value: f64,
    function: Samples,
) {
    // Counted against its sense, its number stands for that.
    let function = signed_as(function, value);
    judgement.values.push((
        target,
        Own {
            line,
            value,
            typed: None,
            function,
            right,
            against: false,
            relation: false,
        },
    ));
}

fn mismatched(target: StepId, mismatch: Mismatch) -> Judgement {
    let mut judgement = Judgement::of(target, Truth::Mismatched(mismatch));
    judgement.caret = Some(mismatch.span);
    judgement
}

/// Both sides certain, and of different dimensions.
fn unequal_dimensions(board: &Board<'_>, sides: &[&Tree]) -> Option<Mismatch> {
    let [left, right] = sides else { return None };
    let (one, other) = (
        plain_value(board, left).ok()?,
        plain_value(board, right).ok()?,
    );
    if one.may_be(other.dimension) || other.may_be(one.dimension) {
        return None;
    }
    Some(Mismatch {
        kind: crate::reading::MismatchKind::Sum,
        span: right.span,
        left: one.dimension,
        right: other.dimension,
        missing: one.dimension.per(other.dimension),
    })
}
