//! Mistakes whose value a number is, against slips, hard rounding and "none of these".

use super::by_form::scope_rank;
use super::{
    Because, Beside, Diagnosis, Leaning, Named, Voice, World, another, coarse, is_settled, slip,
    term_by_term,
};
use crate::judge::{Board, Judgement, Typed};
use crate::key::{Part, Samples, StepId, agree};
use crate::mistakes::Instance;
use crate::units::Dimension;

/// The pseudo-count of "another thing altogether", beside the priors of the mistakes (common
/// practice, no source).
const NONE_OF_THESE: f64 = 12.0;
/// The pseudo-count of g = 10 m/s² on the way (common practice, no source).
const TEN: f64 = 4.0;
/// The pseudo-count of another quantity of the working given for the one asked (common practice, no
/// source).
const ANOTHER: f64 = 3.0;
/// Figures that a number must have to show it: it moves the value by two in a hundred.
const TEN_SHOWS: u8 = 3;
/// The pseudo-count of a mistake that is met too seldom for a prior of its own (common practice, no
/// source): a value names it only where nothing likelier has that value.
const RARE: f64 = 0.5;
/// How far nonsense values spread: the natural logarithm of the range from a third to three times
/// the right value.
const NONSENSE_SPREAD: f64 = 2.2;
/// A number that is so many times the right value lies beyond that range.
const FAR: f64 = 3.0;
/// What is left of a mistake's weight where the learner has a right value at the step where it
/// would have shown first.
const NOT_MADE_BEFORE: f64 = 0.2;
/// What is left of it where the number is what it gives from right values, and wrong ones of the
/// learner's own stand.
const SECOND_START: f64 = 0.5;
/// What is left of a mistake's weight where the number is its value in the other sense.
const OTHER_SENSE: f64 = 0.5;
/// How well a number fits that is a mistake's value only roughly, as rounded on the way: the
/// chance is spread over several neighbouring numbers.
const ROUGH_FIT: f64 = 0.05;
/// The same where components or weights carried to three figures are enough to reach it.
const NEAR_FIT: f64 = 0.3;
/// By what share of it a value moves when what it rests on is carried to three figures.
const CARRIED: f64 = 0.0015;
/// The share of a value that a last place counts for at most.
const COARSEST: f64 = 0.1;
/// The share of an exact mistake's weight that a slip of the pen has at most beside it.
const SLIP_BESIDE: f64 = 0.4;

/// The family of what a wrong setting of the calculator does.
pub(super) const CALCULATOR: &str = "calculator-mode";

/// Mistakes that agree as functions at the step.
struct Family {
    weight: f64,
    /// The mistakes, each with true where her own values give the number so.
    members: Vec<(usize, bool)>,
    function: Samples,
    /// True if the number is its value as rounded, and nothing speaks against it.
    exact: bool,
}

/// Names what explains the number of a line, the likeliest first.
pub(super) fn explain(
    board: &Board<'_>,
    judgement: &Judgement,
    known: (&[Instance], &Leaning),
    worlds: &[World],
    diagnosis: &mut Diagnosis,
) {
    let Some(number) = judgement.evidence.number else {
        return;
    };
    let mut families = families(board, judgement, known, worlds, number);
    let right = board
        .right(judgement.target)
        .map_or(number.value, |right| right[0])
        .abs()
        .max(1e-9);
    // Far beyond the right value nonsense is as rare as in a range about the number itself.
    let size = match number.value.abs() > FAR * right {
        true => number.value.abs(),
        false => right,
    };
    let width = (number.written.last_place / size).max(0.002);
    let none = NONE_OF_THESE * width / NONSENSE_SPREAD * 4.0;
    let exact = families
        .iter()
        .filter(|family| family.exact)
        .map(|family| family.weight)
        .fold(f64::INFINITY, f64::min);
    // What stands as a form was calculated here: no key or pen slipped in its value.
    let typed = judgement.evidence.alone || judgement.evidence.broken_link;
    let slip = match typed {
        true => slip_of(board, judgement.target, number).min(SLIP_BESIDE * exact),
        false => 0.0,
    };
    let coarse = if judgement.evidence.broken_link {
        0.0
    } else {
        coarse::weight(board, judgement.target, number)
    };
    let shows_ten = judgement.evidence.perhaps_ten && number.written.significant >= TEN_SHOWS;
    let ten = if shows_ten { TEN } else { 0.0 };
    let asked = another::asked_for(board, judgement, number);
    let another = asked.map_or(0.0, |_| ANOTHER.min(SLIP_BESIDE * exact));
    let others = none + slip + coarse + ten + another;
    let whole = families.iter().map(|family| family.weight).sum::<f64>() + others;
    let most = families
        .iter()
        .map(|family| family.weight)
        .fold(none, f64::max);
    let beats = |one: f64, rest: [f64; 3]| one > rest.into_iter().fold(most, f64::max);
    diagnosis.pen_slip = beats(slip, [coarse, ten, another]);
    diagnosis.coarse = beats(coarse, [slip, ten, another]);
    diagnosis.ten = beats(ten, [slip, coarse, another]);
    diagnosis.another = asked.filter(|_| beats(another, [slip, coarse, ten]));
    diagnosis.beside = Beside {
        pen: slip / whole,
        coarse: coarse / whole,
        ten: ten / whole,
        another: asked.map(|step| (step, another / whole)),
    };
    families.sort_by(|one, other| other.weight.total_cmp(&one.weight));
    let named = families.into_iter().take(3).map(|family| {
        let share = family.weight / whole;
        name(judgement, known.0, family.members, share)
    });
    diagnosis.named = named.collect();
}

/// The mistakes whose value the number is.
fn families(
    board: &Board<'_>,
    judgement: &Judgement,
    (instances, leaning): (&[Instance], &Leaning),
    worlds: &[World],
    number: Typed,
) -> Vec<Family> {
    let target = judgement.target;
    let mut families: Vec<Family> = Vec::new();
    for (index, world) in worlds.iter().enumerate() {
        let instance = &instances[index];
        // Where the form is right, no thought about it can be wrong: only the calculator.
        let calculator = instance.mistake.family == CALCULATOR;
        if judgement.evidence.broken_link && !(calculator && judgement.evidence.angled) {
            continue;
        }
        let made_before =
            instance.shows_at == target || !is_settled(board, target, instance.shows_at);
        for (at, function) in world.values().enumerate() {
            let told = match target {
                StepId::Angle(_) => function[0].abs(),
                _ => function[0],
            };
            let fits = |told| fit(number.value, number.written.last_place, told);
            // A part of a support's force may be counted in either sense.
            let turned = || {
                let share = fits(-told).filter(|_| target.has_free_sense())?;
                Some((share, OTHER_SENSE))
            };
            let Some((fit, sense)) = fits(told).map(|share| (share, 1.0)).or_else(turned) else {
                continue;
            };
            // Right values, where own ones stand, are those of a second start.
            let from_hers = at == 0 && !world.is_apart_from_own(function);
            // What she has there herself is not what the mistake gives.
            let made_before = made_before && (from_hers || !has_another(board, instance));
            if term_by_term::is_refuted(board, judgement, &instance.key) {
                continue;
            }
            let weight = leaning.prior(instance.mistake).max(RARE)
                * fit
                * sense
                * if from_hers { 1.0 } else { SECOND_START }
                * if made_before { 1.0 } else { NOT_MADE_BEFORE };
            let exact = fit == 1.0 && made_before;
            match families
                .iter_mut()
                .find(|family| agree(&family.function, function))
            {
                Some(family) => {
                    // Members of a family are one thought met under several names.
                    family.weight = family.weight.max(weight) + 0.3 * family.weight.min(weight);
                    family.members.push((index, from_hers));
                    family.exact |= exact;
                }
                None => families.push(Family {
                    weight,
                    members: vec![(index, from_hers)],
                    function: *function,
                    exact,
                }),
            }
        }
    }
    families
}

/// True where a wrong value of hers stands at the step at which a mistake would have shown first.
fn has_another(board: &Board<'_>, instance: &Instance) -> bool {
    let own = board.standing.get(&instance.shows_at);
    own.is_some_and(|own| !own.right && own.line > 0)
}

/// The weight of a slip of the pen.
fn slip_of(board: &Board<'_>, target: StepId, number: Typed) -> f64 {
    let dimension = board
        .key
        .step(target)
        .map_or(Dimension::NUMBER, |step| step.dimension);
    board
        .accepted(target)
        .iter()
        .map(|(function, _)| {
            let (typed, right) = slip::told(number, function[0], dimension);
            slip::weight(typed, right)
        })
        .fold(0.0, f64::max)
}

/// A family, spoken of by its likeliest member.
fn name(
    judgement: &Judgement,
    instances: &[Instance],
    mut members: Vec<(usize, bool)>,
    share: f64,
) -> Named {
    let moment = judgement.evidence.dimension == Some(Dimension::MOMENT);
    let direction = matches!(judgement.target, StepId::Reaction(_, Part::Direction));
    let rank = |(index, from_hers): &(usize, bool)| {
        let instance = &instances[*index];
        let called = moment && instance.mistake.id == "moment-called-force";
        (
            f64::from(u8::from(called)),
            f64::from(u8::from(*from_hers)),
            // A direction that is another force's is a thought about directions.
            f64::from(u8::from(direction && instance.shows_at == judgement.target)),
            instance.mistake.prior,
            // Of two that are as frequent, the one that was made at this step, and not before it.
            f64::from(u8::from(instance.shows_at == judgement.target)),
            scope_rank(instance.scope),
        )
    };
    members.sort_by(|one, other| {
        rank(other)
            .partial_cmp(&rank(one))
            .unwrap_or(std::cmp::Ordering::Equal)
    });
    let mut members: Vec<usize> = members.into_iter().map(|(index, _)| index).collect();
    members.dedup();
    let instance = members.remove(0);
    let mistake = instances[instance].mistake;
    let calculator = mistake.family == CALCULATOR;
    let (voice, because) = if calculator && judgement.evidence.broken_link {
        (Voice::Flat, Because::Sum)
    } else if moment && mistake.family == "moment-for-force" {
        (Voice::Flat, Because::Unit)
    } else {
        (Voice::Perhaps, Because::Value)
    };
    Named {
        instance,
        alike: members,
        voice,
        because,
        share,
        beside: None,
    }
}

/// How well a number fits a mistake's value: 1 as its rounding, less when rounded on the way. A
/// number of one figure says little.
fn fit(number: f64, last_place: f64, value: f64) -> Option<f64> {
    let apart = (number - value).abs();
    let half = 0.5 * last_place.min(COARSEST * value.abs());
    if apart <= half * (1.0 + 1e-6) + 1e-9 * value.abs() {
        Some(1.0)
    } else if apart <= half + CARRIED * value.abs() {
        Some(NEAR_FIT)
    } else if apart <= 0.004 * value.abs() {
        Some(ROUGH_FIT)
    } else {
        None
    }
}
