//! The values of the learner's own that stand in a line as numbers, where a name might stand: the 147
//! of `MA + 147·7 = 2162` after `B = 147 N`.

use super::super::board::{Board, Own};
use super::super::names::NameRole;
use super::super::printed_units::printed_force;
use crate::key::StepId;
use crate::reading::{Place, Tree, read};
use crate::text::Span;
use crate::units::Dimension;

/// Numbers nearer than this share of them are one.
const EXACT: f64 = 1e-9;

impl Board<'_> {
    /// The quantities whose values, as she told them, stand in a line as numbers, each with the stretches
    /// of the line where they stand; none where the line names no other quantity, which it would tell.
    pub fn values_typed(&self, line: &str) -> Vec<(StepId, Vec<Span>)> {
        let readings = read(line, self.names.vocabulary()).unwrap_or_default();
        let Some(first) = readings.first().filter(|first| first.defines.is_none()) else {
            return Vec::new();
        };
        let names = first.sides.iter().flat_map(Tree::names);
        let steps = names.filter_map(|(id, _)| match self.names.role(id)? {
            NameRole::Step(step) => Some(step),
            _ => None,
        });
        let named: Vec<StepId> = steps.collect();
        let open = |step: &StepId| step.is_unknown() || !self.standing.contains_key(step);
        if !named.iter().any(open) {
            return Vec::new();
        }
        let told = self.standing.iter().filter(|(step, own)| {
            own.line > 0 && !step.is_balance() && !named.contains(step) && own.typed.is_some()
        });
        told.filter_map(|(step, own)| {
            let kind = self.key.step(*step)?.dimension;
            let places = first.sides.iter().flat_map(Tree::literals);
            let spans = places.filter(|place| is_value(self, place, (own, kind)));
            let spans: Vec<Span> = spans.map(|place| place.span).collect();
            (!spans.is_empty()).then_some((*step, spans))
        })
        .collect()
    }
}

/// True for a number that is a value of this kind as she told it, without its sign; bare also in the
/// unit in which forces are printed.
fn is_value(board: &Board<'_>, place: &Place<'_>, (own, kind): (&Own, Dimension)) -> bool {
    let told = own.typed.map_or(own.value, |(typed, _)| typed).abs();
    let is = |number: f64| (number.abs() - told).abs() <= EXACT * told;
    let literal = place.literal;
    let angle = kind == Dimension::ANGLE;
    match literal.unit {
        Some(unit) => unit.dimension == kind && is(literal.value),
        None if angle => place.in_angle && is(literal.value.to_radians()),
        None if place.in_angle || !matches!(kind, Dimension::FORCE | Dimension::MOMENT) => false,
        None => is(literal.value) || printed_force(board).is_some_and(|by| is(by * literal.value)),
    }
}
