//! Whether the angles of a line are those of a thought, as they were typed. Angles agree by chance:
//! sin 125° is sin 55°, cos 70° is sin 20°, and 70° − 35° is 35°. Of an angle or a ratio that she did
//! not write, nothing is said flatly.

use super::same;
use crate::judge::{Board, Judgement, Ratio, TypedRatio};
use crate::key::{Formula, Key, Part, Pins, Rule, Samples, StepId};
use crate::mistakes::{Instance, Skill, WRONG_LEG};
use crate::units::Dimension;
use std::collections::{BTreeMap, BTreeSet};

/// Two angles, in radians, are the same though one was rounded to a tenth of a degree.
const SAME_ANGLE: f64 = 0.002;
/// The same in degrees.
const SAME_DEGREES: f64 = 0.1;

/// True unless the thought changes ratios of the working behind the judged step, and the line has
/// others; or an angle, and the line puts it together from printed angles that the thought has not.
pub(super) fn is_literal(
    board: &Board<'_>,
    judgement: &Judgement,
    key: &Key,
    instance: &Instance,
) -> bool {
    if board.key.general.is_some() {
        return true;
    }
    match judgement.target {
        StepId::Angle(_) => has_her_angles(board, judgement, key),
        _ if rests_on_unseen_pull(board, judgement, key) => false,
        _ if has_distance_of_another(board, judgement, key) => false,
        target => {
            let typed = &judgement.evidence.typed_ratios;
            // Names alone agree with no angle by chance; numbers alone show no other ratio.
            if typed.is_empty() && !judgement.evidence.worked_ratio {
                let exchanged = instance.mistake.family == WRONG_LEG && target.is_pull();
                return !exchanged || judgement.evidence.names_only;
            }
            // Which of the two ways to write a side she took matters to a thought about ratios only.
            let of_ratio = matches!(instance.mistake.skill, Skill::Angles | Skill::Resolving);
            let same = |one: &TypedRatio, ratio: &TypedRatio| {
                is_one(one, ratio) || !of_ratio && (one.value() - ratio.value()).abs() < SAME_ANGLE
            };
            let is_hers = |one: &TypedRatio| is_put_together(board, target, key, one);
            typed.iter().all(is_hers)
                && has_each(board, target, key, typed)
                && changed(board, target, key)
                    .iter()
                    .all(|ratio| typed.iter().any(|one| same(one, ratio)))
        }
    }
}

/// True unless a pull is told with a sine or cosine that the wrong working has not, or not so often: in
/// a quotient the ratios of several forces cancel, and what is left agrees with other thoughts.
fn has_each(board: &Board<'_>, target: StepId, key: &Key, typed: &[TypedRatio]) -> bool {
    if !target.is_pull() {
        return true;
    }
    let steps = needed(target, key).into_iter();
    let all = steps.flat_map(|id| ratios(board, id, key));
    let mut hers: Vec<f64> = all.map(|ratio| ratio.value().abs()).collect();
    typed.iter().all(|one| {
        let value = one.value().abs();
        let at = hers
            .iter()
            .position(|other| (other - value).abs() < SAME_ANGLE);
        at.map(|at| hers.swap_remove(at)).is_some()
    })
}

/// True for a thought about the angle that a force makes, as a whole.
pub(super) fn is_of_angle(instance: &Instance) -> bool {
    instance.mistake.skill == Skill::Angles
}

/// The ratios of a wrong working behind a step that the right one has not there.
fn changed(board: &Board<'_>, target: StepId, wrong: &Key) -> Vec<TypedRatio> {
    let mut found = Vec::new();
    for id in needed(target, wrong) {
        let right = ratios(board, id, board.key);
        let fresh = ratios(board, id, wrong)
            .into_iter()
            .filter(|ratio| !right.iter().any(|one| is_one(one, ratio)));
        found.extend(fresh);
    }
    found
}

fn is_one(one: &TypedRatio, other: &TypedRatio) -> bool {
    one.ratio == other.ratio && (one.angle.abs() - other.angle.abs()).abs() < SAME_ANGLE
}

/// The steps that a step rests on, with itself.
fn needed(target: StepId, key: &Key) -> BTreeSet<StepId> {
    let mut found = BTreeSet::new();
    let mut open = vec![target];
    while let Some(id) = open.pop() {
        if !found.insert(id) {
            continue;
        }
        match key.step(id).map(|step| &step.rule) {
            Some(Rule::Solve(balance) | Rule::KnownSide { balance, .. }) => open.push(*balance),
            _ => {
                let formulas = formulas(id, key);
                open.extend(formulas.into_iter().flat_map(Formula::inputs));
            }
        }
    }
    found
}

fn formulas(id: StepId, key: &Key) -> Vec<&Formula> {
    match key.step(id).map(|step| &step.rule) {
        Some(Rule::Formula(formula)) => vec![formula],
        Some(Rule::Balance(balance)) => balance.terms.iter().map(|term| &term.amount).collect(),
        _ => Vec::new(),
    }
}

/// The ratios that a step of a key is written with.
fn ratios(board: &Board<'_>, id: StepId, key: &Key) -> Vec<TypedRatio> {
    let mut found = Vec::new();
    for formula in formulas(id, key) {
        see(formula, &mut |node| {
            let (ratio, angle) = match node {
                Formula::Sine(angle) => (Ratio::Sine, angle),
                Formula::Cosine(angle) => (Ratio::Cosine, angle),
                Formula::Tangent(angle) => (Ratio::Tangent, angle),
                _ => return,
            };
            let radians = key.evaluate(angle, board.sampling.own(), &Pins::new());
            found.extend(radians.map(|radians| TypedRatio {
                ratio,
                angle: radians,
                numbers: parts_of(board, key, angle),
            }));
        });
    }
    found
}

fn see<'f>(formula: &'f Formula, found: &mut dyn FnMut(&'f Formula)) {
    found(formula);
    for part in formula.children() {
        see(part, found);
    }
}

/// True unless a printed angle stands in the line that the wrong angle is not made of.
fn has_her_angles(board: &Board<'_>, judgement: &Judgement, key: &Key) -> bool {
    let evidence = &judgement.evidence;
    evidence.angle_sum.is_none()
        || is_made_of(board, judgement.target, key, &evidence.typed_degrees)
}

/// True unless one of the typed numbers is a printed angle that the wrong working has not behind a
/// step: half of 50° is no other angle of 25°.
fn is_made_of(board: &Board<'_>, target: StepId, key: &Key, typed: &[f64]) -> bool {
    let steps = needed(target, key).into_iter();
    let made_of: Vec<f64> = steps.flat_map(|id| degrees(board, id, key)).collect();
    has_printed(board, typed, &made_of)
}

/// The degrees of all parts of a step's formulas.
fn degrees(board: &Board<'_>, id: StepId, key: &Key) -> Vec<f64> {
    let mut found: Vec<f64> = Vec::new();
    for formula in formulas(id, key) {
        see(formula, &mut |node| {
            let value = key.evaluate(node, board.sampling.own(), &Pins::new());
            found.extend(value.map(f64::to_degrees));
        });
    }
    found
}

/// The degrees of all parts of an angle in a key, down to what is printed.
fn parts_of(board: &Board<'_>, key: &Key, angle: &Formula) -> Vec<f64> {
    let mut found: Vec<f64> = Vec::new();
    see(angle, &mut |node| {
        let value = key.evaluate(node, board.sampling.own(), &Pins::new());
        found.extend(value.map(f64::to_degrees));
    });
    let steps = angle.inputs().into_iter().flat_map(|id| needed(id, key));
    found.extend(steps.flat_map(|id| degrees(board, id, key)));
    found
}

/// True where every printed angle among the typed numbers is one of the parts.
fn has_printed(board: &Board<'_>, typed: &[f64], parts: &[f64]) -> bool {
    let is_one = |one: f64, other: f64| (one.abs() - other.abs()).abs() < SAME_DEGREES;
    let printed = |degrees: f64| {
        let mut givens = board.problem.givens().iter();
        givens.any(|given| {
            given.dimension == Dimension::ANGLE && is_one(given.value.to_degrees(), degrees)
        })
    };
    let mut typed = typed.iter().copied().filter(|degrees| printed(*degrees));
    typed.all(|degrees| parts.iter().any(|one| is_one(*one, degrees)))
}

/// True unless an angle was put together from printed ones as the wrong working puts none together:
/// where 70° − 35° is 35°, it is no printed angle taken over.
fn is_put_together(board: &Board<'_>, target: StepId, key: &Key, typed: &TypedRatio) -> bool {
    if typed.numbers.is_empty() {
        return true;
    }
    let steps = needed(target, key).into_iter();
    let like: Vec<TypedRatio> = steps
        .flat_map(|id| ratios(board, id, key))
        .filter(|ratio| is_one(typed, ratio))
        .collect();
    let mut parts = like.iter().map(|ratio| &ratio.numbers);
    match like.is_empty() {
        true => is_made_of(board, target, key, &typed.numbers),
        false => parts.any(|parts| has_printed(board, &typed.numbers, parts)),
    }
}

/// True for a wrong working with a distance that is worked out, where the line has one in numbers that
/// is printed for another force, or half of one that is printed: that one may have been taken.
fn has_distance_of_another(board: &Board<'_>, judgement: &Judgement, key: &Key) -> bool {
    let layout = judgement.layout.as_deref().unwrap_or_default();
    let numbers = layout.split(|c: char| !(c.is_ascii_digit() || c == '.'));
    let typed: Vec<f64> = numbers.filter_map(|number| number.parse().ok()).collect();
    let givens = board.problem.givens().iter();
    let lengths = givens.filter(|given| given.dimension == Dimension::LENGTH);
    let printed: Vec<f64> = lengths.map(|given| given.value).collect();
    let same = |one: f64, other: f64| (one - other.abs()).abs() < 1e-9;
    let is_typed = |value: f64| typed.iter().any(|number| same(*number, value));
    let steps = needed(judgement.target, key).into_iter();
    let changed: Vec<&Formula> = steps
        .filter(|id| matches!(id, StepId::Distance(_)))
        .filter(|id| formulas(*id, key) != formulas(*id, board.key))
        .flat_map(|id| formulas(id, key))
        .collect();
    let is_another = |formula: &&Formula| {
        // Half of a length is meant as that, and several distances are none by chance.
        let halved = changed.len() == 1 && matches!(formula.bare(), Formula::Sum(_));
        let value = key.evaluate(formula, board.sampling.own(), &Pins::new());
        value.filter(|value| is_typed(*value)).is_some_and(|value| {
            let half = |one: &f64| halved && same(*one / 2.0, value);
            printed.iter().any(|one| same(*one, value) || half(one))
        })
    };
    let mut worked = changed.iter().filter(|one| !one.children().is_empty());
    worked.any(is_another)
}

/// True for a part of a force that is the wrong working's only with the pull that this gives, where no
/// pull stands and the line shows no distance that one could be worked out with: half a weight may be
/// a share as well.
pub(super) fn rests_on_unseen_pull(board: &Board<'_>, judgement: &Judgement, key: &Key) -> bool {
    let target = judgement.target;
    let along = matches!(target, StepId::Reaction(_, Part::Along(_)));
    let of_part = along || matches!(target, StepId::PartOf(..));
    // What stands beside no line is not hers.
    let open = |id: &StepId| board.standing.get(id).is_none_or(|own| own.line == 0);
    let Some(pull) = board.unknown().filter(|id| of_part && open(id)) else {
        return false;
    };
    let right = board
        .right(pull)
        .map(|right| BTreeMap::from([(pull, right)]));
    let with_right = right.and_then(|pins| key.function(board.key, target, board.sampling, &pins));
    let is_typed = |function: &Samples| {
        let mut lifted = judgement.evidence.lifted.iter();
        lifted.any(|one| same(target, function, one))
    };
    with_right.is_some_and(|function| !is_typed(&function)) && !shows_a_length(board, judgement)
}

/// True where a printed length stands in a line, by its number or by its name.
fn shows_a_length(board: &Board<'_>, judgement: &Judgement) -> bool {
    let layout = judgement.layout.as_deref().unwrap_or_default();
    let inner = |c: char| c.is_alphanumeric() || c == '.';
    let words: Vec<&str> = layout.split(|c| !inner(c)).collect();
    let givens = board.problem.givens().iter();
    let mut lengths = givens.filter(|given| given.dimension == Dimension::LENGTH);
    lengths.any(|given| {
        let symbol = given.symbol.shown();
        let is = |word: &&str| {
            let number = word.parse::<f64>().ok();
            *word == symbol || number.is_some_and(|number| (number - given.value).abs() < 1e-9)
        };
        words.iter().any(is)
    })
}
