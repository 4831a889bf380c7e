//! The sides of a chain against each other, and the units that stand in it.

mod plain_sum;

use super::board::Board;
use super::expression::{calculated, typed_number};
use super::grade::{COMMON_FIGURES, Grade, grade};
use super::lift::plain_value;
use super::names::NameRole;
use super::open::is_of_open_unknown;
use super::room::{Exact, room_beside};
use super::stock::{Stock, THREE_FIGURES};
use super::{Judgement, Remark, Truth};
use crate::key::{Part, StepId};
use crate::reading::{Node, Operator, Reading, Relation, Tree, Value};
use crate::units::{Dimension, Written, to_figures, unit_of_figure};

/// Digits are believed to be cut off where the last unit left is no more than this share.
const CUT_UNIT: f64 = 0.01;

/// A number of one figure may be off by no more than this share.
const ONE_FIGURE: f64 = 0.025;

/// A difference is small where its largest part is so many times as large.
const SMALL_DIFFERENCE: f64 = 50.0;

/// The largest count: a number up to it, and without a unit, is set equal to itself for nothing.
const MOST_COUNTED: f64 = 10.0;

/// `0 = 0`, `1 = 1`: numbers that are equal, and no name. Where a balance is asked any number may
/// stand so; elsewhere a value may be told twice, and only a count says nothing.
pub(super) fn says_nothing(sides: &[&Tree], balance: bool) -> bool {
    let number = |side: &&Tree| match &side.node {
        Node::Literal(literal) => Some((literal.value, literal.unit.is_none())),
        _ => None,
    };
    let numbers: Option<Vec<(f64, bool)>> = sides.iter().map(number).collect();
    numbers.is_some_and(|numbers| {
        let counted = |(number, bare): &(f64, bool)| {
            *bare && number.fract() == 0.0 && (0.0..=MOST_COUNTED).contains(number)
        };
        numbers.len() > 1
            && numbers.iter().all(|one| *one == numbers[0])
            && (balance || counted(&numbers[0]))
    })
}

/// The later sides of a chain: each must be the value of the one before, and the last one counts.
pub(super) fn follow_chain(
    board: &Board<'_>,
    stock: &Stock,
    dimension: Dimension,
    (sides, values): (&[&Tree], &[Value]),
    judgement: &mut Judgement,
) {
    let mut unbroken = true;
    for index in 1..sides.len() {
        let here = values[index].number_as(dimension);
        let before = values[index - 1].number_as(dimension);
        let pair = (sides[index - 1], sides[index]);
        // A direction is told by its size: the way says the rest.
        let meant = match judgement.target {
            StepId::Reaction(_, Part::Direction) if before < 0.0 => -here.abs(),
            // A part of the pull may have been counted to either side.
            StepId::Reaction(_, Part::Along(_)) if names_a_part(board, pair.0) => {
                here.abs().copysign(before)
            }
            _ => here,
        };
        let last = index + 1 == sides.len();
        let fits = is_value_of(board, stock, dimension, pair, (before, meant))
            || last && is_rounded_hard(pair, (before, meant));
        unbroken &= fits;
        if last
            && is_coarse(
                board,
                dimension,
                (pair.0, pair.1, here),
                judgement,
                (fits, before),
            )
        {
            judgement.truth = Truth::TooFewFigures;
            judgement.proved = false;
            judgement.values.clear();
            judgement.evidence.ended = typed_number(sides[index], here, dimension);
            return;
        }
        // Whatever the numbers are of, the number behind a form of them must be its value.
        let in_numbers = sides[index - 1..=index]
            .iter()
            .all(|side| side.names().is_empty());
        let noted = judgement.truth == Truth::Noted && in_numbers;
        if !fits && (judgement.truth.holds() || noted) {
            judgement.truth = Truth::DoesNotHold;
            judgement.proved = false;
            judgement.values.clear();
            judgement.evidence.broken_link = true;
            judgement.evidence.lifted.clear();
            let typed = typed_number(sides[index], here, dimension);
            judgement.evidence.broken_by_form = typed.is_none() || noted;
            judgement.evidence.number = Some(typed.unwrap_or_else(|| calculated(here)));
            judgement.caret = Some(sides[index].span);
            return;
        }
    }
    let last = sides.len() - 1;
    let number = values[last].number_as(dimension);
    if let Some(typed) = typed_number(sides[last], number, dimension) {
        if !values[last].may_be(dimension) && judgement.truth.holds() {
            judgement.truth = Truth::WrongUnit {
                wanted: dimension,
                found: values[last].dimension,
            };
            judgement.values.clear();
            judgement.caret = Some(sides[last].span);
        }
        for (_, own) in &mut judgement.values {
            own.typed = Some((typed.value, typed.written));
        }
        judgement.evidence.ended = Some(typed).filter(|_| unbroken);
    }
}

/// True for a part of the pull by its name, whichever sign stands before it.
fn names_a_part(board: &Board<'_>, side: &Tree) -> bool {
    match &side.node {
        Node::Negative(inner) => names_a_part(board, inner),
        Node::Name(id) => matches!(
            board.names.role(*id),
            Some(NameRole::Step(StepId::PartOf(..)))
        ),
        _ => false,
    }
}

/// True if a right chain ends with a number that would be too coarse if it were typed alone, or
/// that no rounding of this value explains (the room of what stands before it may be wide).
fn is_coarse(
    board: &Board<'_>,
    dimension: Dimension,
    (form, side, number): (&Tree, &Tree, f64),
    judgement: &Judgement,
    (fits, before): (bool, f64),
) -> bool {
    let right = matches!(judgement.truth, Truth::Holds | Truth::HoldsRounded);
    let open = is_of_open_unknown(board, judgement.target);
    let typed = typed_number(side, number, dimension).filter(|_| right && !open);
    // A difference is told as finely as three figures of its parts.
    let largest = largest_part(board, form);
    let finest = match largest > SMALL_DIFFERENCE * before.abs() {
        true => unit_of_figure(largest, COMMON_FIGURES),
        false => 0.0,
    };
    typed
        .filter(|_| !board.few_figures_count())
        .is_some_and(|typed| {
            // What the right form gives, told to three figures, has figures enough.
            let place = typed.written.last_place * (1.0 - 1e-9);
            let enough = typed.written.significant >= COMMON_FIGURES || place <= finest;
            let of_form = fits && enough && typed.is(before);
            match grade(board, judgement.target, typed) {
                Some(Grade::TooFewFigures) => !of_form,
                Some(_) => false,
                None => fits && !of_form,
            }
        })
}

/// The first side of known value that is not the value of the one before it.
pub(super) fn first_break(
    board: &Board<'_>,
    stock: &Stock,
    dimension: Dimension,
    sides: &[&Tree],
) -> Option<crate::text::Span> {
    let value = |side: &Tree| {
        let value = plain_value(board, side).ok()?;
        Some(value.number_as(dimension))
    };
    let broken = |pair: &&[&Tree]| {
        let values = value(pair[0]).zip(value(pair[1]));
        values.is_some_and(|values| {
            !is_value_by_terms(board, stock, dimension, ((pair[0], pair[1]), values), &[])
        })
    };
    sides.windows(2).find(broken).map(|pair| pair[1].span)
}

/// The side that goes on from the value of the one before it, as on a calculator, and has another:
/// `608 + 578 = 1186 - 170`.
pub(super) fn runs_on(
    dimension: Dimension,
    sides: &[&Tree],
    values: &[Value],
) -> Option<crate::text::Span> {
    let goes_on = |index: &usize| {
        let (before, here) = (values[*index - 1], values[*index]);
        let (before, here) = (before.number_as(dimension), here.number_as(dimension));
        let Node::Literal(first) = &leftmost(sides[*index]).node else {
            return false;
        };
        let alone = matches!(sides[*index].node, Node::Literal(_));
        let unit = 0.5 * first.written.last_place + 1e-9 * before.abs();
        !alone && (first.value - before).abs() <= unit && (here - before).abs() > unit
    };
    (1..sides.len())
        .find(goes_on)
        .map(|index| sides[index].span)
}

/// What an expression begins with.
fn leftmost(tree: &Tree) -> &Tree {
    match &tree.node {
        Node::Binary(_, left, _) => leftmost(left),
        _ => tree,
    }
}

/// True if the second of two sides with these values is the value of the first: it may be off by
/// half a last unit, by cut digits, and by what was rounded inside a form.
pub(super) fn is_value_of(
    board: &Board<'_>,
    stock: &Stock,
    dimension: Dimension,
    sides: (&Tree, &Tree),
    values: (f64, f64),
) -> bool {
    is_value_with(board, stock, dimension, (sides, values), None)
}

/// The same of what is no value of a step: a sum of known terms is off by what these lose, and no
/// sum on the way was rounded. Some numbers of the sides are `exact`.
pub(super) fn is_value_by_terms(
    board: &Board<'_>,
    stock: &Stock,
    dimension: Dimension,
    pair: ((&Tree, &Tree), (f64, f64)),
    exact: Exact<'_>,
) -> bool {
    is_value_with(board, stock, dimension, pair, Some(exact))
}

fn is_value_with(
    board: &Board<'_>,
    stock: &Stock,
    dimension: Dimension,
    (sides, (before, here)): ((&Tree, &Tree), (f64, f64)),
    by_terms: Option<Exact<'_>>,
) -> bool {
    let written =
        |side: &Tree, value: f64| typed_number(side, value, dimension).map(|typed| typed.written);
    let (one, other) = (written(sides.0, before), written(sides.1, here));
    let form = |side: &Tree, value: f64, alone: Option<Written>, beside: Option<Written>| {
        let coarse = beside.is_some_and(|number| number.significant <= COMMON_FIGURES);
        let exact = by_terms.unwrap_or_default();
        let room = || room_beside(board, stock, (side, dimension), 1, exact);
        let sum = || {
            let exact = by_terms?;
            plain_sum::values(board, stock, (side, value), (exact, coarse))
        };
        match alone {
            Some(_) => vec![(value, 0.0)],
            None => sum().unwrap_or_else(|| vec![(value, room())]),
        }
    };
    let numbers = || one.iter().chain(&other);
    let unit = numbers().fold(0.0_f64, |most, number| most.max(number.last_place));
    let (firsts, seconds) = (
        form(sides.0, before, one, other),
        form(sides.1, here, other, one),
    );
    // How far apart they are whatever was rounded inside.
    let gap = |first: &(f64, f64)| {
        let of = |second: &(f64, f64)| (first.0 - second.0).abs() - (first.1 + second.1);
        seconds.iter().map(of).fold(f64::INFINITY, f64::min)
    };
    let gap = firsts.iter().map(gap).fold(f64::INFINITY, f64::min);
    let apart = (before - here).abs();
    // One figure may be half of what it stands for away: `15/13 = 1`.
    let coarse = numbers().any(|number| number.significant == 1);
    if coarse && apart > ONE_FIGURE * before.abs().max(here.abs()) {
        // What is left of a small difference has few figures, and its parts have more.
        let parts = largest_part(board, sides.0).max(largest_part(board, sides.1));
        if SMALL_DIFFERENCE * before.abs() > parts || apart > ONE_FIGURE * parts {
            return false;
        }
    }
    // Two numbers side by side differ by rounding only.
    let fine = unit <= CUT_UNIT * before.abs();
    let is_cut = one.is_none() && fine && here.abs() < before.abs() && gap < unit * (1.0 - 1e-6);
    is_cut || gap <= 0.5 * unit * (1.0 + 1e-9) + 1e-9 * before.abs()
}

/// The size of the largest term of a sum, in the unit that it is worked out in; 0 where there is none.
fn largest_part(board: &Board<'_>, side: &Tree) -> f64 {
    let Node::Binary(Operator::Add | Operator::Subtract, left, right) = &side.node else {
        return 0.0;
    };
    let part = |side: &Tree| {
        let value = plain_value(board, side).map_or(0.0, |value| value.number.abs());
        value.max(largest_part(board, side))
    };
    part(left).max(part(right))
}

/// True if the number behind a form is its value to two figures.
pub(super) fn is_rounded_hard(sides: (&Tree, &Tree), (before, here): (f64, f64)) -> bool {
    let number = |side: &Tree| matches!(side.node, Node::Literal(_) | Node::Negative(_));
    !number(sides.0) && number(sides.1) && is_to_two_figures(before, here)
}

/// True if a number is another to two figures: 160 for 157.9. What that comes from may have been
/// rounded too.
pub(super) fn is_to_two_figures(before: f64, here: f64) -> bool {
    let half = 0.5 * unit_of_figure(before, 2) + THREE_FIGURES * before.abs();
    let two = (to_figures(here, 2) - here).abs() <= 1e-9 * here.abs();
    two && (before - here).abs() <= half
}

pub(super) fn remark_on_unit(
    sides: &[&Tree],
    values: &[Value],
    dimension: Dimension,
    judgement: &mut Judgement,
) {
    let (Some(side), Some(value)) = (sides.last(), values.last()) else {
        return;
    };
    let alone =
        matches!(side.node, Node::Literal(_) | Node::Negative(_)) && dimension != Dimension::ANGLE;
    if alone && value.bare && value.number != 0.0 && dimension != Dimension::NUMBER {
        judgement.remarks.push(Remark::UnitMissing);
    }
}

/// A number whose unit is of another kind than the result's and which is no quantity of this
/// problem, and the only one in the line: `42*9.8 kg`, where the unit was meant for the whole.
pub(super) fn stray_unit(
    stock: &Stock,
    tree: &Tree,
    dimension: Dimension,
) -> Option<crate::text::Span> {
    let places = tree.literals();
    let with_unit = places.iter().filter(|place| place.literal.unit.is_some());
    if with_unit.count() != 1 {
        return None;
    }
    places
        .iter()
        .find(|place| {
            place.literal.unit.is_some_and(|unit| {
                unit.dimension != dimension
                    && unit.dimension != Dimension::ANGLE
                    && !stock.knows(place.literal)
            })
        })
        .map(|place| place.span)
}

/// `T = 849 N ≈ 850 N` without what was rounded once more after the value was told.
pub(super) fn without_rounding(reading: &Reading) -> Option<Reading> {
    let [.., told, last] = reading.sides.as_slice() else {
        return None;
    };
    let (Node::Literal(told), Node::Literal(last)) = (&told.node, &last.node) else {
        return None;
    };
    let rounded = (to_figures(told.value, 2) - last.value).abs() < 1e-9 * last.value;
    let about = reading.relation == Some(Relation::About);
    (about && rounded).then(|| {
        let mut shortened = reading.clone();
        shortened.sides.pop();
        shortened
    })
}
