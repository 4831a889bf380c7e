//! `k = 248 N`, `T = 2k`: a value told by a form of numbers that she gave names to.

use super::Session;
use crate::judge::{Judgement, NameRole, Names, OwnName, Truth};
use crate::key::StepId;
use crate::reading::{Leaf, Literal, Node, Tree, Value, evaluate, read};
use crate::units::{Dimension, number_text, to_figures, unit_for};

/// Figures to which a value is commonly told.
const FIGURES: u8 = 3;

/// The smallest number that does not count.
const NO_COUNT: f64 = 100.0;

impl Session {
    /// The value that a form of names of her own and of counts tells, where it counts as such.
    pub(super) fn by_own_multiple(
        &mut self,
        asked: StepId,
        line: &str,
        found: &Judgement,
    ) -> Option<Judgement> {
        if !matches!(found.truth, Truth::DoesNotHold | Truth::TooFewFigures) {
            return None;
        }
        let (name, value) = self.told_by_own_names(line)?;
        let told = [value.number, to_figures(value.number, FIGURES)];
        told.into_iter().find_map(|number| {
            let told = value_told(&name, number, &value);
            let mut judgement = self.judged_in_force(asked, &told);
            judgement.truth.holds().then(|| {
                judgement.layout.clone_from(&found.layout);
                judgement
            })
        })
    }

    /// The name of a step, and the value that is told for it so, on whichever side it stands.
    fn told_by_own_names(&self, line: &str) -> Option<(String, Value)> {
        let (names, own_values) = (self.names(), self.own_values());
        let readings = read(line, names.vocabulary()).ok()?;
        let reading = readings.first().filter(|one| one.defines.is_none())?;
        let [left, right] = reading.sides.as_slice() else {
            return None;
        };
        let step = |side: &Tree| match side.node {
            Node::Name(id) => matches!(names.role(id), Some(NameRole::Step(_))),
            _ => false,
        };
        let (name, form) = match (step(left), step(right)) {
            (true, false) => (left, right),
            (false, true) => (right, left),
            _ => return None,
        };
        let value = value_of(&names, &own_values, form)?;
        let name = line.get(name.span.start..name.span.end)?;
        Some((name.trim().to_owned(), value))
    }
}

/// The value of a form in which her own names for known numbers stand, and beside these counts alone.
fn value_of(names: &Names, own_values: &[OwnName], form: &Tree) -> Option<Value> {
    let own = |id| match names.role(id) {
        Some(NameRole::Own(index)) => own_values.get(index),
        _ => None,
    };
    let named = form.names();
    let known = |own: &OwnName| !own.of_unknown && !own.of_open_weight;
    let all_known = named.iter().all(|(id, _)| own(*id).is_some_and(known));
    let literals = form.literals();
    let counts = literals.iter().all(|place| is_count(place.literal));
    if named.is_empty() || literals.is_empty() && named.len() < 2 || !all_known || !counts {
        return None;
    }
    let value = evaluate(form, &mut |leaf| match leaf {
        Leaf::Name(id) => match own(id) {
            Some(own) if own.bare => Value::bare(own.value),
            Some(own) => Value::of(own.value, own.dimension),
            None => Value::bare(f64::NAN),
        },
        Leaf::Literal(literal) => Value::of_literal(literal),
    });
    value.ok().filter(|value| value.number.is_finite())
}

/// True for a small whole number without a unit.
fn is_count(literal: &Literal) -> bool {
    let whole = literal.value.fract() == 0.0 && literal.value < NO_COUNT;
    literal.unit.is_none() && whole
}

/// `T = 496 N`.
fn value_told(name: &str, number: f64, value: &Value) -> String {
    let text = number_text(number);
    match unit_for(value.dimension).filter(|_| !value.bare) {
        Some(_) if value.dimension == Dimension::ANGLE => format!("{name} = {text} rad"),
        Some(unit) => format!("{name} = {text} {}", unit.symbol),
        None => format!("{name} = {text}"),
    }
}
