//! What can be done wrongly in one formula of a general working: weights, parts of forces, friction at
//! its limit, sums of areas, centres, and the size and direction of a force with two parts.
//!
//! The thoughts that the lessons know, too, keep their names; those that only friction and laminae
//! allow stand here. Source: common practice, no source.

use super::{
    Kind, Mistake, Skill, arctangent_inverted, components_added, divided_by_g, hypotenuse_confused,
    mass_for_weight, not_resolved, sine_cosine_exchanged,
};
use crate::key::{Atom, Formula, Key, StepId};

/// A mistake that only general workings allow: it is made there in one formula, and in no lesson.
const fn general_only(id: &'static str, family: &'static str, skill: Skill, prior: f64) -> Mistake {
    Mistake {
        id,
        family,
        kind: Kind::Formula,
        skill,
        prior,
        common: false,
        sign: None,
        scopes: |_, _| Vec::new(),
        rewrite: |_, _, _| None,
    }
}

/// The coefficient of friction times a weight, where it belongs to the push.
static FRICTION_FROM_WEIGHT: Mistake =
    general_only("friction-from-weight", "friction", Skill::Forces, 5.0);
/// The push over the coefficient.
static COEFFICIENT_INVERTED: Mistake =
    general_only("coefficient-inverted", "friction", Skill::Forces, 3.0);
/// A spread load at its end, for its middle.
static SPREAD_AT_ITS_END: Mistake =
    general_only("spread-load-at-its-end", "load-place", Skill::Places, 3.0);
/// What was cut away, added.
static HOLE_ADDED: Mistake = general_only("hole-added", "laminae", Skill::Places, 5.0);
/// The middle of the pieces' centres, whatever their sizes.
static PLAIN_AVERAGE: Mistake = general_only("plain-average", "laminae", Skill::Places, 4.0);

/// The wrong formulas of a step, each with its thought.
pub(super) fn wrong_formulas(
    key: &Key,
    at: StepId,
    formula: &Formula,
) -> Vec<(&'static Mistake, Formula)> {
    let mut wrong: Vec<(&'static Mistake, Formula)> = Vec::new();
    if at.is_weight()
        && let Formula::Product(factors) = formula.bare()
        && let [mass, gravity] = factors.as_slice()
    {
        wrong.push((&mass_for_weight::MISTAKE, mass.clone()));
        wrong.push((&divided_by_g::MISTAKE, mass.clone().over(gravity.clone())));
    }
    let exchanged = formula.rewrite(&|part| match part {
        Formula::Sine(angle) => Some(Formula::Cosine(angle.clone())),
        Formula::Cosine(angle) => Some(Formula::Sine(angle.clone())),
        _ => None,
    });
    if exchanged != *formula {
        wrong.push((&sine_cosine_exchanged::MISTAKE, exchanged));
    }
    of_part(key, at, formula, &mut wrong);
    of_friction(key, at, formula, &mut wrong);
    of_spread(key, at, formula, &mut wrong);
    of_pieces(formula, &mut wrong);
    of_whole(formula, &mut wrong);
    wrong
}

fn kind_of(key: &Key, at: StepId) -> &'static str {
    key.heading(at).map_or("", |heading| heading.kind)
}

/// A part of a force: the whole of it, or divided by the ratio.
fn of_part(key: &Key, at: StepId, formula: &Formula, wrong: &mut Vec<(&'static Mistake, Formula)>) {
    let part = matches!(kind_of(key, at), "across" | "along" | "part-x" | "part-y");
    let Formula::Product(factors) = formula.bare() else {
        return;
    };
    if let (true, [force, ratio]) = (part, factors.as_slice())
        && matches!(ratio.bare(), Formula::Sine(_) | Formula::Cosine(_))
    {
        wrong.push((&not_resolved::MISTAKE, force.clone()));
        let divided = force.clone().over(ratio.clone());
        wrong.push((&hypotenuse_confused::MISTAKE, divided));
    }
}

/// Friction at its limit.
fn of_friction(
    key: &Key,
    at: StepId,
    formula: &Formula,
    wrong: &mut Vec<(&'static Mistake, Formula)>,
) {
    let Formula::Product(factors) = formula.bare() else {
        return;
    };
    let ("friction", [coefficient, push]) = (kind_of(key, at), factors.as_slice()) else {
        return;
    };
    let weights = key.steps.iter().map(|step| step.id);
    for weight in weights.filter(|id| id.is_weight()) {
        let taken = coefficient.clone().times(Formula::step(weight));
        wrong.push((&FRICTION_FROM_WEIGHT, taken));
    }
    let inverted = push.clone().over(coefficient.clone());
    wrong.push((&COEFFICIENT_INVERTED, inverted));
}

/// The place of an even spread load: its end for its middle.
fn of_spread(
    key: &Key,
    at: StepId,
    formula: &Formula,
    wrong: &mut Vec<(&'static Mistake, Formula)>,
) {
    if let ("resultant-at", Formula::Quotient(span, half)) = (kind_of(key, at), formula.bare())
        && **half == Formula::Number(2.0)
    {
        wrong.push((&SPREAD_AT_ITS_END, span.as_ref().clone()));
    }
}

/// A sum of pieces, or their centre: what was taken away added, or no piece weighed.
fn of_pieces(formula: &Formula, wrong: &mut Vec<(&'static Mistake, Formula)>) {
    let added = |parts: &[Formula]| {
        let sizes = parts.iter().map(|part| match part {
            Formula::Negative(inner) => inner.as_ref().clone(),
            part => part.clone(),
        });
        Formula::Sum(sizes.collect())
    };
    let has_hole = |parts: &[Formula]| {
        let mut parts = parts.iter();
        parts.any(|part| matches!(part, Formula::Negative(_)))
    };
    let is_size = |part: &Formula| match part {
        Formula::Negative(inner) => matches!(inner.bare(), Formula::Atom(Atom::Step(_))),
        part => matches!(part.bare(), Formula::Atom(Atom::Step(_))),
    };
    match formula.bare() {
        Formula::Sum(parts) if has_hole(parts) && parts.iter().all(is_size) => {
            wrong.push((&HOLE_ADDED, added(parts)));
        }
        Formula::Quotient(over, under) => {
            let Formula::Sum(parts) = over.bare() else {
                return;
            };
            let places: Option<Vec<Formula>> = parts.iter().map(place_of_piece).collect();
            let Some(places) = places else { return };
            if has_hole(parts) {
                wrong.push((&HOLE_ADDED, added(parts).over(under.as_ref().clone())));
            }
            let count = Formula::Number(places.len() as f64);
            wrong.push((&PLAIN_AVERAGE, Formula::Sum(places).over(count)));
        }
        _ => {}
    }
}

/// The place of a piece in `A·x`, with its sign.
fn place_of_piece(part: &Formula) -> Option<Formula> {
    let inner = match part {
        Formula::Negative(inner) => inner.as_ref(),
        part => part,
    };
    match inner.bare() {
        Formula::Product(factors) => match factors.as_slice() {
            [_, place @ Formula::Atom(Atom::Step(_))] => Some(place.clone()),
            _ => None,
        },
        _ => None,
    }
}

/// The size and direction of a force with two parts.
fn of_whole(formula: &Formula, wrong: &mut Vec<(&'static Mistake, Formula)>) {
    match formula.bare() {
        Formula::SquareRoot(inner) => {
            let Formula::Sum(parts) = inner.bare() else {
                return;
            };
            let sides: Option<Vec<Formula>> = parts
                .iter()
                .map(|part| match part.bare() {
                    Formula::Square(side) => Some(Formula::Absolute(side.clone())),
                    _ => None,
                })
                .collect();
            wrong.extend(sides.map(|sides| (&components_added::MISTAKE, Formula::Sum(sides))));
        }
        Formula::ArcTangent(inner) => {
            if let Formula::Quotient(over, under) = inner.bare() {
                let turned = under.as_ref().clone().over(over.as_ref().clone());
                let turned = Formula::ArcTangent(Box::new(turned));
                wrong.push((&arctangent_inverted::MISTAKE, turned));
            }
        }
        _ => {}
    }
}
