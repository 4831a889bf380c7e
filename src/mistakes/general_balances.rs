//! What can be done wrongly in one balance of a general working: a term left out or turned, and what
//! goes wrong with the distances of a moment balance.
//!
//! The thoughts that the lessons know, too, keep their names. Source: common practice, no source.

use super::general::general_only;
use super::general_formulas::ratios_exchanged;
use super::{
    Mistake, Skill, distance_left_out, distances_exchanged, divided_by_distance,
    forces_for_moments, from_the_far_end, halved_twice, not_resolved, sine_cosine_exchanged,
    term_left_out, turns_the_wrong_way,
};
use crate::key::{Atom, Balance, Formula, Key, StepId, Term};

/// Friction that acts the way in which the surfaces would slip.
static FRICTION_REVERSED: Mistake =
    general_only("friction-reversed", "friction", Skill::Forces, 5.0);
/// A couple times a distance.
static COUPLE_GIVEN_AN_ARM: Mistake =
    general_only("couple-given-an-arm", "couples", Skill::Moments, 4.0);
/// A whole length where its half belongs.
static HALF_FORGOTTEN: Mistake =
    general_only("half-forgotten", "own-weight-place", Skill::Places, 5.0);

/// The wrong balances in the place of one that alone gives `unknown`, each with its thought. A sum
/// with another sign as a whole may be among them.
pub(super) fn wrong_balances(
    key: &Key,
    at: StepId,
    unknown: StepId,
) -> Vec<(&'static Mistake, Balance)> {
    let Some(balance) = key.balance(at) else {
        return Vec::new();
    };
    let mut wrong = Vec::new();
    for index in 0..balance.terms.len() {
        of_term(key, balance, (index, unknown), &mut wrong);
    }
    let moments = key.heading(at).is_some_and(|one| one.kind == "moments");
    if moments {
        of_arms(
            balance,
            &|term| key.holds(&term.amount, unknown),
            &mut wrong,
        );
    }
    wrong
}

/// A balance with another amount in one term.
fn with_amount(balance: &Balance, index: usize, amount: Formula) -> Balance {
    let mut changed = balance.clone();
    if let Some(term) = changed.terms.get_mut(index) {
        term.amount = amount;
    }
    changed
}

/// A term left out or turned, and what can be done with a sine or cosine in it.
fn of_term(
    key: &Key,
    balance: &Balance,
    (index, unknown): (usize, StepId),
    wrong: &mut Vec<(&'static Mistake, Balance)>,
) {
    let Some(term) = balance.terms.get(index) else {
        return;
    };
    let exchanged = ratios_exchanged(&term.amount);
    if exchanged != term.amount {
        let exchanged = with_amount(balance, index, exchanged);
        wrong.push((&sine_cosine_exchanged::MISTAKE, exchanged));
    }
    if let Some(whole) = without_ratio(&term.amount) {
        wrong.push((&not_resolved::MISTAKE, with_amount(balance, index, whole)));
    }
    if key.holds(&term.amount, unknown) {
        return;
    }
    let mut without = balance.clone();
    without.terms.remove(index);
    wrong.push((&term_left_out::MISTAKE, without));
    // Which way an unknown of either sense was taken to act is a matter of convention.
    let either = |id: &StepId| {
        id.has_free_sense() || key.open_in(*id).iter().any(|open| open.has_free_sense())
    };
    let is_either = |term: &Term| term.amount.inputs().iter().any(either);
    let others = balance.terms.iter().enumerate();
    let mut others = others.filter(|(other, _)| *other != index);
    if is_either(term) || others.all(|(_, other)| is_either(other)) {
        return;
    }
    let rubs = |id: &StepId| key.heading(*id).is_some_and(|one| one.kind == "friction");
    let mistake = match term.amount.inputs().iter().any(rubs) {
        true => &FRICTION_REVERSED,
        false => &turns_the_wrong_way::MISTAKE,
    };
    let mut turned = balance.clone();
    if let Some(term) = turned.terms.get_mut(index) {
        term.sign = -term.sign;
    }
    wrong.push((mistake, turned));
}

/// A product without the sine or cosine that stands in it as a factor.
fn without_ratio(amount: &Formula) -> Option<Formula> {
    let Formula::Product(factors) = amount.bare() else {
        return None;
    };
    let is_ratio = |part: &Formula| matches!(part.bare(), Formula::Sine(_) | Formula::Cosine(_));
    let at = factors.iter().position(is_ratio)?;
    let mut left = factors.clone();
    left.remove(at);
    product(left)
}

fn product(mut factors: Vec<Formula>) -> Option<Formula> {
    match factors.len() {
        0 => None,
        1 => factors.pop(),
        _ => Some(Formula::Product(factors)),
    }
}

/// The force of a moment and what stands beside it: its distance, whole or resolved. `None` for a
/// couple.
fn moment(amount: &Formula) -> Option<(Formula, Formula)> {
    match amount.bare() {
        Formula::Product(factors) => {
            let (force, arm) = factors.split_first()?;
            Some((force.clone(), product(arm.to_vec())?))
        }
        Formula::Quotient(over, under) => {
            let (force, arm) = moment(over)?;
            Some((force, arm.over(under.as_ref().clone())))
        }
        _ => None,
    }
}

/// A quantity by itself.
fn is_atom(formula: &Formula) -> bool {
    matches!(formula.bare(), Formula::Atom(_))
}

/// The length of which a distance is the half.
fn halved(arm: &Formula) -> Option<&Formula> {
    match arm.bare() {
        Formula::Quotient(over, under) if under.bare() == &Formula::Number(2.0) => Some(over),
        _ => None,
    }
}

/// What goes wrong with the distances of a moment balance. What is done to the distance of the unknown
/// shows where the line is solved, and there as the reverse of it.
fn of_arms(
    balance: &Balance,
    is_unknown: &dyn Fn(&Term) -> bool,
    wrong: &mut Vec<(&'static Mistake, Balance)>,
) {
    let moments: Vec<Option<(Formula, Formula)>> = balance
        .terms
        .iter()
        .map(|term| moment(&term.amount))
        .collect();
    let lengths = lengths(moments.iter().flatten().map(|(_, arm)| arm));
    for (index, term) in balance.terms.iter().enumerate() {
        let mut put = |mistake, amount| wrong.push((mistake, with_amount(balance, index, amount)));
        let Some(Some((force, arm))) = moments.get(index) else {
            for length in lengths.iter().filter(|_| is_atom(&term.amount)) {
                let amount = term.amount.clone().times(length.clone());
                put(&COUPLE_GIVEN_AN_ARM, amount);
            }
            continue;
        };
        put(&distance_left_out::MISTAKE, force.clone());
        let from_elsewhere = lengths
            .iter()
            .filter(|length| is_atom(arm) && *length != arm);
        for length in from_elsewhere {
            let rest = Formula::Sum(vec![
                length.clone(),
                Formula::Negative(Box::new(arm.clone())),
            ]);
            put(&from_the_far_end::MISTAKE, force.clone().times(rest));
        }
        if is_unknown(term) {
            continue;
        }
        put(
            &divided_by_distance::MISTAKE,
            force.clone().over(arm.clone()),
        );
        if let Some(length) = halved(arm) {
            put(&HALF_FORGOTTEN, force.clone().times(length.clone()));
            let quarter = length.clone().over(Formula::Number(4.0));
            put(&halved_twice::MISTAKE, force.clone().times(quarter));
        }
    }
    exchanged(balance, &moments, wrong);
    without_distances(balance, &moments, wrong);
}

/// The lengths that stand in these distances by themselves or halved, each once.
fn lengths<'f>(arms: impl Iterator<Item = &'f Formula>) -> Vec<Formula> {
    let mut found: Vec<Formula> = Vec::new();
    for arm in arms {
        let length = halved(arm).unwrap_or(arm);
        let is_length = matches!(length.bare(), Formula::Atom(Atom::Given(_) | Atom::Step(_)));
        if is_length && !found.contains(length) {
            found.push(length.clone());
        }
    }
    found
}

/// Two forces with each other's distance.
fn exchanged(
    balance: &Balance,
    moments: &[Option<(Formula, Formula)>],
    wrong: &mut Vec<(&'static Mistake, Balance)>,
) {
    let known = moments.iter().enumerate();
    let known: Vec<(usize, &(Formula, Formula))> = known
        .filter_map(|(at, found)| Some((at, found.as_ref()?)))
        .collect();
    for (place, (one, (force, arm))) in known.iter().enumerate() {
        for (other, (its, other_arm)) in known.iter().skip(place + 1) {
            let changed = with_amount(balance, *one, force.clone().times(other_arm.clone()));
            let changed = with_amount(&changed, *other, its.clone().times(arm.clone()));
            wrong.push((&distances_exchanged::MISTAKE, changed));
        }
    }
}

/// Every force without its distance.
fn without_distances(
    balance: &Balance,
    moments: &[Option<(Formula, Formula)>],
    wrong: &mut Vec<(&'static Mistake, Balance)>,
) {
    if moments.iter().flatten().count() < 2 {
        return;
    }
    let mut changed = balance.clone();
    for (term, found) in changed.terms.iter_mut().zip(moments) {
        if let Some((force, _)) = found {
            term.amount = force.clone();
        }
    }
    wrong.push((&forces_for_moments::MISTAKE, changed));
}
