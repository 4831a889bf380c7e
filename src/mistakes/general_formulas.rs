//! What can be done wrongly in one formula of a general working: weights, parts of forces, friction at
//! its limit, sums of areas, centres, and the size and direction of a force with two parts.
//!
//! The thoughts that the lessons know, too, keep their names; those that only friction and laminae
//! allow stand here. Source: common practice, no source.

use super::general::general_only;
use super::{
    Mistake, NOT_RESOLVED, Skill, angle_sum_for_difference, arctangent_inverted, complement,
    components_added, divided_by_g, hypotenuse_confused, mass_for_weight, misread_given,
    not_resolved, sine_cosine_exchanged, squares_subtracted, tangent_used,
};
use crate::key::{Atom, Formula, Key, StepId};

/// The coefficient of friction times a weight, where it belongs to the push.
static FRICTION_FROM_WEIGHT: Mistake =
    general_only("friction-from-weight", "friction", Skill::Forces, 5.0);
/// The push over the coefficient.
static COEFFICIENT_INVERTED: Mistake =
    general_only("coefficient-inverted", "friction", Skill::Forces, 3.0);
/// The coefficient times the push of another contact.
static WALL_FOR_FLOOR: Mistake =
    general_only("wall-for-floor-normal", "friction", Skill::Forces, 4.0);
/// The coefficient times the push, where less friction is enough.
static TAKEN_AS_LIMITING: Mistake =
    general_only("friction-taken-as-limiting", "friction", Skill::Forces, 5.0);
/// The force per length of a spread load, where the whole of it belongs.
static INTENSITY_FOR_TOTAL: Mistake =
    general_only("intensity-for-total", "spread-size", Skill::Forces, 4.0);
/// The largest force per length all along, of a load that grows from nothing.
static EVEN_FOR_GROWING: Mistake =
    general_only("even-for-growing", "spread-size", Skill::Forces, 3.0);
/// A triangle balanced at its half.
static TRIANGLE_AT_HALF: Mistake = general_only("triangle-at-half", "thirds", Skill::Places, 4.0);
/// The third of a triangle from its other side.
static THIRDS_EXCHANGED: Mistake =
    general_only("triangle-thirds-exchanged", "thirds", Skill::Places, 3.0);
/// A body about to topple that stands on another line than its edge.
static TIPPING_EDGE: Mistake = general_only("tipping-edge-wrong", "tipping", Skill::Places, 4.0);
/// The distance along the body, where the lever arm of an oblique force belongs.
static FULL_LENGTH_AS_ARM: Mistake =
    general_only("full-length-as-arm", NOT_RESOLVED, Skill::Moments, 6.0);
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
        for other in other_masses(key, at, mass) {
            wrong.push((&misread_given::MISTAKE, other.times(gravity.clone())));
        }
    }
    let exchanged = ratios_exchanged(formula);
    if exchanged != *formula {
        wrong.push((&sine_cosine_exchanged::MISTAKE, exchanged));
    }
    of_part(key, at, formula, &mut wrong);
    of_angle(at, formula, &mut wrong);
    of_edge(key, at, formula, &mut wrong);
    of_thirds(key, at, formula, &mut wrong);
    of_friction(key, at, formula, &mut wrong);
    of_spread(key, at, formula, &mut wrong);
    of_pieces(formula, &mut wrong);
    of_whole(formula, &mut wrong);
    wrong
}

fn kind_of(key: &Key, at: StepId) -> &'static str {
    key.heading(at).map_or("", |heading| heading.kind)
}

/// A formula with sine and cosine exchanged throughout.
pub(super) fn ratios_exchanged(formula: &Formula) -> Formula {
    formula.rewrite(&|part| match part {
        Formula::Sine(angle) => Some(Formula::Cosine(angle.clone())),
        Formula::Cosine(angle) => Some(Formula::Sine(angle.clone())),
        _ => None,
    })
}

/// The masses of the other weights.
fn other_masses(key: &Key, at: StepId, mass: &Formula) -> Vec<Formula> {
    let weights = key.steps.iter().map(|step| step.id);
    let others = weights.filter(|id| *id != at && id.is_weight());
    let masses = others.filter_map(|id| match key.formula(id)?.bare() {
        Formula::Product(factors) => match factors.as_slice() {
            [other, _] if other != mass => Some(other.clone()),
            _ => None,
        },
        _ => None,
    });
    masses.collect()
}

/// An angle: the other one of a right angle, or two angles added for subtracted.
fn of_angle(at: StepId, formula: &Formula, wrong: &mut Vec<(&'static Mistake, Formula)>) {
    if !at.is_angle() {
        return;
    }
    let right_angle = Formula::Degrees(90.0);
    let other = match formula.bare() {
        Formula::Sum(parts) if parts.first() == Some(&right_angle) => match &parts[1..] {
            [Formula::Negative(angle)] => angle.as_ref().clone(),
            _ => return,
        },
        _ => Formula::Sum(vec![
            right_angle,
            Formula::Negative(Box::new(formula.clone())),
        ]),
    };
    wrong.push((&complement::MISTAKE, other));
    let Formula::Sum(parts) = formula.bare() else {
        return;
    };
    if let [one @ Formula::Atom(_), second] = parts.as_slice() {
        let turned = match second {
            Formula::Negative(angle) => angle.as_ref().clone(),
            angle => Formula::Negative(Box::new(angle.clone())),
        };
        let turned = Formula::Sum(vec![one.clone(), turned]);
        wrong.push((&angle_sum_for_difference::MISTAKE, turned));
    }
}

/// The push of a body about to topple: at twice the distance of its edge, or in its middle.
fn of_edge(key: &Key, at: StepId, formula: &Formula, wrong: &mut Vec<(&'static Mistake, Formula)>) {
    if kind_of(key, at) != "at-edge" {
        return;
    }
    let whole = formula.rewrite(&|part| match part {
        Formula::Quotient(over, under) if under.bare() == &Formula::Number(2.0) => {
            Some(over.as_ref().clone())
        }
        _ => None,
    });
    wrong.push((&TIPPING_EDGE, whole));
}

/// The thirds of a triangle: halves in their place, or those from its other side.
fn of_thirds(
    key: &Key,
    at: StepId,
    formula: &Formula,
    wrong: &mut Vec<(&'static Mistake, Formula)>,
) {
    let placed = matches!(
        kind_of(key, at),
        "piece-x" | "piece-y" | "centre-x" | "centre-y" | "resultant-at"
    );
    let three = Formula::Number(3.0);
    let with = |change: &dyn Fn(&Formula) -> Formula| {
        formula.rewrite(&|part| match part {
            Formula::Quotient(over, under) if *under.bare() == three => Some(change(over)),
            _ => None,
        })
    };
    let half = |of: Formula| of.over(Formula::Number(2.0));
    let doubled = |over: &Formula| match over.bare() {
        Formula::Product(factors) => match factors.as_slice() {
            [Formula::Number(two), rest] if *two == 2.0 => Some(rest.clone()),
            _ => None,
        },
        _ => None,
    };
    if !placed {
        return;
    }
    let halves = with(&|over| half(doubled(over).unwrap_or_else(|| over.clone())));
    let exchanged = with(&|over| match doubled(over) {
        Some(one) => one.over(three.clone()),
        None => Formula::Number(2.0).times(over.clone()).over(three.clone()),
    });
    if halves != *formula {
        wrong.push((&TRIANGLE_AT_HALF, halves));
        wrong.push((&THIRDS_EXCHANGED, exchanged));
    }
}

/// Friction as if it were at its limit, where a balance gives it.
pub(super) fn limiting(key: &Key, at: StepId) -> Option<(&'static Mistake, Formula)> {
    let grips = &key.general.as_ref()?.grips;
    let (coefficient, push) = grips.get(&at)?;
    let taken = Formula::given(*coefficient).times(Formula::step(*push));
    Some((&TAKEN_AS_LIMITING, taken))
}

/// A formula over what is known without `at`: what rests on it, and what balances give, written out.
fn written_out(key: &Key, formula: &Formula, at: StepId, deep: usize) -> Option<Formula> {
    if deep == 0 {
        return None;
    }
    let lost = std::cell::Cell::new(false);
    let written = formula.rewrite(&|part| match part {
        Formula::Atom(Atom::Step(id)) if *id == at || id.is_unknown() => {
            let inner = key.formula(*id);
            let inner = inner.and_then(|inner| written_out(key, &inner, at, deep - 1));
            lost.set(lost.get() || inner.is_none());
            inner
        }
        _ => None,
    });
    (!lost.get()).then_some(written)
}

/// A part of a force: the whole of it, or divided by the ratio.
fn of_part(key: &Key, at: StepId, formula: &Formula, wrong: &mut Vec<(&'static Mistake, Formula)>) {
    let part = matches!(kind_of(key, at), "across" | "along" | "part-x" | "part-y");
    let Formula::Product(factors) = formula.bare() else {
        return;
    };
    let [force, ratio] = factors.as_slice() else {
        return;
    };
    let (Formula::Sine(angle) | Formula::Cosine(angle)) = ratio.bare() else {
        return;
    };
    if part {
        wrong.push((&not_resolved::MISTAKE, force.clone()));
        let divided = force.clone().over(ratio.clone());
        wrong.push((&hypotenuse_confused::MISTAKE, divided));
        let tangent = Formula::Tangent(angle.clone());
        wrong.push((&tangent_used::MISTAKE, force.clone().times(tangent)));
    } else if kind_of(key, at) == "arm" {
        wrong.push((&FULL_LENGTH_AS_ARM, force.clone()));
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
    let pushes = key.steps.iter().map(|step| step.id);
    let pushes = pushes.filter(|id| matches!(kind_of(key, *id), "push" | "pull"));
    for other in pushes.filter(|id| id.is_unknown() && Formula::step(*id) != *push) {
        // The push may itself be found from this friction.
        let other = written_out(key, &Formula::step(other), at, 6);
        let taken = other.map(|other| coefficient.clone().times(other));
        wrong.extend(taken.map(|taken| (&WALL_FOR_FLOOR, taken)));
    }
    let inverted = push.clone().over(coefficient.clone());
    wrong.push((&COEFFICIENT_INVERTED, inverted));
}

/// The size of a spread load, and the place of an even one: its end for its middle.
fn of_spread(
    key: &Key,
    at: StepId,
    formula: &Formula,
    wrong: &mut Vec<(&'static Mistake, Formula)>,
) {
    if let ("resultant", Formula::Product(factors)) = (kind_of(key, at), formula.bare())
        && let [mean, span] = factors.as_slice()
    {
        wrong.push((&INTENSITY_FOR_TOTAL, mean.clone()));
        if let Formula::Quotient(largest, _) = mean.bare()
            && matches!(largest.bare(), Formula::Atom(_))
        {
            let even = largest.as_ref().clone().times(span.clone());
            wrong.push((&EVEN_FOR_GROWING, even));
        }
    }
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
            if let [one, other] = parts.as_slice() {
                let less = Formula::Negative(Box::new(other.clone()));
                let squares = Formula::Absolute(Box::new(Formula::Sum(vec![one.clone(), less])));
                let root = Formula::SquareRoot(Box::new(squares));
                wrong.push((&squares_subtracted::MISTAKE, root));
            }
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
