//! Naming the thought behind a line that does not hold.
//!
//! The evidence of the judge is compared with the keys of every mistake that can be made in this
//! problem. Mistakes that agree as functions at a step are one family there: no value can split
//! them. Two voices: *flat* only where the typed form (its lifted function), a typed unit or a
//! broken sum proves the thought; *perhaps* where only a value fits. "None of these" is a
//! hypothesis with a weight of its own, so that a nonsense number is not explained at any price.

mod slip;

use crate::judge::{Board, Judgement, Truth};
use crate::key::{Formula, Samples, StepId, agree};
use crate::mistakes::{Instance, Scope};
use crate::units::Dimension;

/// The pseudo-count of "another thing altogether", beside the priors of the mistakes (common
/// practice, no source).
const NONE_OF_THESE: f64 = 12.0;
/// How far nonsense values spread: the natural logarithm of the range from a third to three times
/// the right value.
const NONSENSE_SPREAD: f64 = 2.2;
/// The share of the weight that a family must have before it is said with "perhaps".
const PERHAPS_SHARE: f64 = 0.5;

/// What is left of a mistake's weight where the learner has a right value at the step where it
/// would have shown first.
const NOT_MADE_BEFORE: f64 = 0.2;
/// How well a number fits that is a mistake's value only roughly, as rounded on the way: the
/// chance is spread over several neighbouring numbers.
const ROUGH_FIT: f64 = 0.05;

/// How surely a mistake is named.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Voice {
    /// The typed form proves it.
    Flat,
    /// Only a value fits.
    Perhaps,
}

/// What speaks for a mistake.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Because {
    /// The typed expression is the mistake's formula.
    Form,
    /// A unit that was typed.
    Unit,
    /// The form is right, and the number after the sign is what the mistake gives.
    Sum,
    /// The number is what the mistake gives.
    Value,
}

/// A mistake that explains the line.
#[derive(Clone, Debug, PartialEq)]
pub struct Named {
    /// Its place in the list of instances handed in.
    pub instance: usize,
    /// Other instances that agree with it here and cannot be told from it.
    pub alike: Vec<usize>,
    /// How surely.
    pub voice: Voice,
    /// What speaks for it.
    pub because: Because,
    /// Its share of the weight among everything that was considered, "none of these" included.
    pub share: f64,
}

/// The mistakes that explain a line, most likely first.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Diagnosis {
    /// At most three families.
    pub named: Vec<Named>,
    /// True if the form is right and only the sum is not.
    pub slip: bool,
    /// True if a slip of the pen explains the number better than any mistake: digits exchanged,
    /// one digit off, a power of ten.
    pub pen_slip: bool,
}

impl Diagnosis {
    /// The mistake to speak about, if one is likely enough.
    pub fn spoken(&self) -> Option<&Named> {
        self.named.first().filter(|named| {
            named.voice == Voice::Flat || (named.share >= PERHAPS_SHARE && !self.pen_slip)
        })
    }
}

/// Explains a judged line that does not hold.
pub fn diagnose(board: &Board<'_>, judgement: &Judgement, instances: &[Instance]) -> Diagnosis {
    let mut diagnosis = Diagnosis::default();
    let fault = matches!(
        judgement.truth,
        Truth::DoesNotHold
            | Truth::WrongUnit { .. }
            | Truth::TooFewFigures
            | Truth::OtherAngle
            | Truth::Mismatched(_)
    );
    if !fault {
        return diagnosis;
    }
    let worlds = worlds(board, judgement.target, instances);
    let mended = mended(board, judgement.target, instances);
    if let Some(named) = by_form(board, judgement, instances, (&worlds, &mended)) {
        diagnosis.named = named;
        return diagnosis;
    }
    diagnosis.slip = judgement.evidence.broken_link;
    // The root of an equation speaks less than its form, which no mistake explains.
    let equation = judgement.target == StepId::MomentSum && !judgement.evidence.broken_link;
    if !equation {
        let found = (&worlds[..], &mended[..]);
        diagnosis.named = by_value(board, judgement, instances, found, &mut diagnosis.pen_slip);
    }
    diagnosis
}

/// For each instance: true if, from the right values that stand, its key gives what is right here.
fn mended(board: &Board<'_>, target: StepId, instances: &[Instance]) -> Vec<bool> {
    let standing: std::collections::BTreeMap<StepId, Samples> = board
        .standing
        .iter()
        .filter(|(id, _)| **id != target)
        .map(|(id, own)| (*id, own.function))
        .collect();
    let accepted = board.accepted(target);
    instances
        .iter()
        .map(|instance| {
            let function = instance
                .key
                .function(board.key, target, board.sampling, &standing);
            function
                .is_none_or(|function| accepted.iter().any(|(right, _)| agree(right, &function)))
        })
        .collect()
}

/// The function of the target step in the key of each instance, on the learner's own values first
/// and then on the right ones.
fn worlds(board: &Board<'_>, target: StepId, instances: &[Instance]) -> Vec<Vec<Samples>> {
    let own = board.own_pins();
    let none = std::collections::BTreeMap::new();
    let accepted = board.accepted(target);
    instances
        .iter()
        .map(|instance| {
            let mut functions = Vec::new();
            for pins in [&own, &none] {
                let function = instance
                    .key
                    .function(board.key, target, board.sampling, pins);
                let fresh = function.filter(|function| {
                    accepted.iter().all(|(right, _)| !agree(right, function))
                        && !functions.contains(function)
                });
                functions.extend(fresh);
            }
            functions
        })
        .collect()
}

/// Mistakes whose formula the typed form is.
fn by_form(
    board: &Board<'_>,
    judgement: &Judgement,
    instances: &[Instance],
    (worlds, mended): (&[Vec<Samples>], &[bool]),
) -> Option<Vec<Named>> {
    let evidence = &judgement.evidence;
    let target = judgement.target;
    // At the hinge's force, what the values that stand have mended agrees by chance only.
    let last = matches!(target, StepId::Reaction(..));
    let counts = |index: usize| !last || !mended[index] || instances[index].shows_at == target;
    for lifted in &evidence.lifted {
        let mut alike: Vec<usize> = (0..instances.len())
            .filter(|index| {
                counts(*index)
                    && worlds[*index]
                        .iter()
                        .any(|function| same(target, function, lifted))
            })
            .collect();
        if alike.is_empty() {
            continue;
        }
        alike.sort_by(|one, other| {
            let rank = |index: usize| {
                (
                    ratio_fits(board, judgement, &instances[index]),
                    instances[index].mistake.prior,
                    scope_rank(instances[index].scope),
                )
            };
            rank(*other)
                .partial_cmp(&rank(*one))
                .unwrap_or(std::cmp::Ordering::Equal)
        });
        let instance = alike.remove(0);
        return Some(vec![Named {
            instance,
            alike,
            voice: Voice::Flat,
            because: Because::Form,
            share: 1.0,
        }]);
    }
    None
}

/// True if two functions are the same; an angle may be told with either sign.
fn same(target: StepId, one: &Samples, other: &Samples) -> bool {
    agree(one, other)
        || matches!(target, StepId::Angle(_)) && agree(&one.map(|value| -value), other)
}

/// Wider scopes are less likely to be meant by one line.
fn scope_rank(scope: Scope) -> f64 {
    match scope {
        Scope::Here(_) | Scope::Force(_) => 3.0,
        Scope::Pull => 2.0,
        Scope::Weights => 1.0,
        Scope::Everywhere => 0.0,
    }
}

/// 1 where the formula of a mistake has the same ratio, sine or cosine, as the typed form.
fn ratio_fits(board: &Board<'_>, judgement: &Judgement, instance: &Instance) -> f64 {
    let (sine, cosine) = judgement.evidence.ratios;
    if !sine && !cosine {
        // Nothing was resolved on paper, whatever else comes to the same.
        return f64::from(u8::from(instance.mistake.id == "not-resolved"));
    }
    if sine == cosine {
        return 0.0;
    }
    let formula = instance
        .key
        .formula(judgement.target)
        .or_else(|| board.key.formula(judgement.target));
    let has = |wanted: fn(&Formula) -> bool| {
        formula
            .as_ref()
            .is_some_and(|formula| contains(formula, wanted))
    };
    let fits = if sine {
        has(|node| matches!(node, Formula::Sine(_)))
            && !has(|node| matches!(node, Formula::Cosine(_)))
    } else {
        has(|node| matches!(node, Formula::Cosine(_)))
    };
    if fits { 1.0 } else { 0.0 }
}

fn contains(formula: &Formula, wanted: fn(&Formula) -> bool) -> bool {
    wanted(formula)
        || formula
            .children()
            .into_iter()
            .any(|child| contains(child, wanted))
}

/// Mistakes whose value the number is, against "none of these".
fn by_value(
    board: &Board<'_>,
    judgement: &Judgement,
    instances: &[Instance],
    (worlds, mended): (&[Vec<Samples>], &[bool]),
    pen_slip: &mut bool,
) -> Vec<Named> {
    let Some(number) = judgement.evidence.number else {
        return Vec::new();
    };
    let target = judgement.target;
    let mut families: Vec<(f64, Vec<usize>, Samples)> = Vec::new();
    // Where the form is right, no thought about it can be wrong: only the calculator.
    let form_right = judgement.evidence.broken_link;
    for (index, functions) in worlds.iter().enumerate() {
        if form_right && instances[index].mistake.family != "calculator-mode" {
            continue;
        }
        let shows_at = instances[index].shows_at;
        let made_before =
            shows_at == target || board.standing.get(&shows_at).is_none_or(|own| !own.right);
        for (at, function) in functions.iter().enumerate() {
            let told = match target {
                StepId::Angle(_) => function[0].abs(),
                _ => function[0],
            };
            let Some(fit) = fit(number.value, number.written.last_place, told) else {
                continue;
            };
            // The second function is the one on right values, where own ones stand.
            let weight = instances[index].mistake.prior
                * fit
                * if at == 0 { 1.0 } else { 0.5 }
                * match (made_before, mended[index] && shows_at != target) {
                    // From the values that stand it would give the right value here.
                    (_, true) => continue,
                    (true, false) => 1.0,
                    (false, false) => NOT_MADE_BEFORE,
                };
            match families
                .iter_mut()
                .find(|(_, _, known)| agree(known, function))
            {
                Some((sum, members, _)) => {
                    // Members of a family are one thought met under several names.
                    *sum = sum.max(weight) + 0.3 * sum.min(weight);
                    members.push(index);
                }
                None => families.push((weight, vec![index], *function)),
            }
        }
    }
    let right = board
        .right(target)
        .map_or(number.value, |right| right[0])
        .abs()
        .max(1e-9);
    let width = (number.written.last_place / right).max(0.002);
    let none = NONE_OF_THESE * width / NONSENSE_SPREAD * 4.0;
    let dimension = board
        .key
        .step(target)
        .map_or(Dimension::NUMBER, |step| step.dimension);
    let slip = board
        .accepted(target)
        .iter()
        .map(|(function, _)| {
            let (typed, right) = slip::told(number, function[0], dimension);
            slip::weight(typed, right)
        })
        .fold(0.0, f64::max);
    let whole: f64 = families.iter().map(|(weight, ..)| weight).sum::<f64>() + none + slip;
    let most = families
        .iter()
        .map(|(weight, ..)| *weight)
        .fold(none, f64::max);
    *pen_slip = slip > most;
    families.sort_by(|(one, ..), (other, ..)| {
        other.partial_cmp(one).unwrap_or(std::cmp::Ordering::Equal)
    });
    let unit = judgement.evidence.dimension == Some(Dimension::MOMENT);
    families
        .into_iter()
        .take(3)
        .map(|(weight, mut members, _)| {
            members.sort_by(|one, other| {
                let rank = |index: &usize| {
                    let instance = &instances[*index];
                    let moment = unit && instance.mistake.id == "moment-called-force";
                    (
                        f64::from(u8::from(moment)),
                        instance.mistake.prior,
                        scope_rank(instance.scope),
                    )
                };
                rank(other)
                    .partial_cmp(&rank(one))
                    .unwrap_or(std::cmp::Ordering::Equal)
            });
            members.dedup();
            let instance = members.remove(0);
            let mistake = instances[instance].mistake;
            let (voice, because) =
                if judgement.evidence.broken_link && mistake.family == "calculator-mode" {
                    (Voice::Flat, Because::Sum)
                } else if unit && mistake.family == "moment-for-force" {
                    (Voice::Flat, Because::Unit)
                } else {
                    (Voice::Perhaps, Because::Value)
                };
            Named {
                instance,
                alike: members,
                voice,
                because,
                share: weight / whole,
            }
        })
        .collect()
}

/// How well a number fits a mistake's value: 1 as its rounding, less when rounded on the way.
fn fit(number: f64, last_place: f64, value: f64) -> Option<f64> {
    let apart = (number - value).abs();
    if apart <= 0.5 * last_place * (1.0 + 1e-6) + 1e-9 * value.abs() {
        Some(1.0)
    } else if apart <= 0.004 * value.abs() {
        Some(ROUGH_FIT)
    } else {
        None
    }
}
