//! The sides of a chain against each other, and the units that stand in it.

use super::expression::{calculated, typed_number};
use super::lift::Stock;
use super::{Judgement, Remark, Truth};
use crate::reading::{Node, Tree, Value};
use crate::units::Dimension;

/// The later sides of a chain: each must be the value of the one before, and the last one counts.
pub(super) fn follow_chain(
    dimension: Dimension,
    sides: &[&Tree],
    values: &[Value],
    judgement: &mut Judgement,
) {
    for index in 1..sides.len() {
        let (before, here) = (
            values[index - 1].number_as(dimension),
            values[index].number_as(dimension),
        );
        let place = typed_number(sides[index], here, dimension)
            .map_or(0.0, |typed| typed.written.last_place);
        // Two numbers side by side differ by rounding only.
        let both = typed_number(sides[index - 1], before, dimension)
            .map(|typed| typed.written.last_place)
            .filter(|_| place > 0.0);
        let share = if both.is_some() { 0.0 } else { 0.006 };
        let allowed = place
            .max(both.unwrap_or(0.0))
            .max(share * before.abs().max(here.abs()));
        let rounded = if both.is_some() { 0.5 } else { 1.0 };
        let fits = (before - here).abs() <= rounded * allowed * (1.0 + 1e-9);
        if !fits && judgement.truth.holds() {
            judgement.truth = Truth::DoesNotHold;
            judgement.proved = false;
            judgement.values.clear();
            judgement.evidence.broken_link = true;
            judgement.evidence.lifted.clear();
            judgement.evidence.number = Some(
                typed_number(sides[index], here, dimension).unwrap_or_else(|| calculated(here)),
            );
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
    }
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
    if alone && value.bare && dimension != Dimension::NUMBER {
        judgement.remarks.push(Remark::UnitMissing);
    }
}

/// A number whose unit is of another kind than the result's and which is no quantity of this
/// problem: `42*9.8 kg`, where the unit was meant for the whole.
pub(super) fn stray_unit(
    stock: &Stock,
    tree: &Tree,
    dimension: Dimension,
) -> Option<crate::text::Span> {
    tree.literals()
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
