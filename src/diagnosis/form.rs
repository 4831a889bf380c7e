//! How well a mistake's terms are those of a typed form.
//!
//! Mistakes that agree as functions are told apart by what was written: the terms of the line,
//! and what stands in each: a sine, a cosine, a stretch that is a difference.

use super::world::is_of_support;
use crate::judge::{Board, Factor, Judgement, Terms};
use crate::key::{Axis, Formula, Key, Part, StepId};
use crate::mistakes::{Instance, Mistake, NOT_RESOLVED, Sign, Skill, WRONG_LEG};
use crate::units::Dimension;

/// Two terms are the same though numbers in them were rounded.
const SAME: f64 = 0.006;
/// What a term that was written counts beside its having the right shape.
const TERM: f64 = 2.0;

/// Families of what goes wrong with the distances of a moment balance, and with couples.
const OF_ARMS: [&str; 7] = [
    NO_DISTANCES,
    "moment-divided",
    "distance-origin",
    "load-place",
    "own-weight-place",
    "couples",
    "tipping",
];
/// Balances of forces in place of one of moments.
pub(super) const WITHOUT_DISTANCES: [&str; 2] = ["forces-for-moments", "hinge-forgotten"];
/// The family of moments without their distances.
pub(super) const NO_DISTANCES: &str = "no-distances";

/// From how much on a form is seen to be a mistake's: two of its terms stand in it.
pub(super) const SEEN: f64 = 2.0 * TERM;

/// How many of the terms that `key` would write at the judged step stand in the line, and with
/// the same shape; the known moments may stand as one sum. A line may be cleared of what stands
/// under a line, and then be multiplied by one of these `scales`.
pub(super) fn fit(board: &Board<'_>, judgement: &Judgement, key: &Key, scales: &[f64]) -> f64 {
    let typed = &judgement.evidence.terms;
    let (stands, cleared) = (typed.as_they_stand(), typed.cleared());
    let forms = [false, true].map(|summed| Terms::of_step(board, key, judgement.target, summed));
    let fits = forms.iter().flatten().map(|meant| {
        let above = meant.cleared();
        scales
            .iter()
            .map(|scale| matched(&cleared, &above, *scale))
            .fold(matched(&stands, &meant.as_they_stand(), 1.0), f64::max)
    });
    fits.fold(0.0, f64::max)
}

/// True if terms of a key's step stand in the line.
pub(super) fn has_terms(board: &Board<'_>, judgement: &Judgement, key: &Key) -> bool {
    fit(board, judgement, key, &scales(board)) >= SEEN
}

/// True for a line that sets the component of the unknown equal to the unknown itself.
pub(super) fn takes_component_for_pull(board: &Board<'_>, judgement: &Judgement) -> bool {
    if matches!(judgement.target, StepId::Reaction(..) | StepId::PartOf(..)) {
        return false;
    }
    let value = |id: StepId| Some(board.right(id)?[0]);
    let across = board.unknown().and_then(StepId::force).map(StepId::Across);
    let (Some(pull), Some(across)) = (board.unknown().and_then(value), across.and_then(value))
    else {
        return false;
    };
    let terms = judgement.evidence.terms.as_they_stand();
    let has = |value: f64, ratio: bool| {
        let is = |term: &Factor| same(term.value, value) && term.shape.is_resolved() == ratio;
        terms.iter().any(is)
    };
    terms.len() == 2 && !same(pull, across) && has(pull, false) && has(across, true)
}

/// False where a part of a force is explained by what was done before it, or an equation with the
/// support's force in it by a balance of forces that it is not: about another point each force stands
/// there with a distance.
pub(super) fn is_of_forces(board: &Board<'_>, judgement: &Judgement, instance: &Instance) -> bool {
    match judgement.target {
        StepId::PartOf(..) => is_of_support(instance),
        StepId::Reaction(_, Part::Along(_)) if judgement.evidence.equation => {
            fit(board, judgement, &instance.key, &[1.0]) >= SEEN
        }
        _ => true,
    }
}

/// What a balance is commonly multiplied or divided by.
pub(super) fn scales(board: &Board<'_>) -> Vec<f64> {
    let lengths = board
        .problem
        .givens()
        .iter()
        .filter(|given| given.dimension == Dimension::LENGTH)
        .map(|given| given.value);
    let through = [1.0, board.problem.gravity()].into_iter().chain(lengths);
    through
        .flat_map(|by| [by, 2.0 * by, 1.0 / by, 2.0 / by])
        .collect()
}

/// True if the line has the terms of `key` at the judged step, each once and no other, in numbers.
pub(super) fn has_every_term(board: &Board<'_>, judgement: &Judgement, key: &Key) -> bool {
    let typed = judgement.evidence.terms.as_they_stand();
    let meant = Terms::of_step(board, key, judgement.target, false);
    typed.len() > 2 && meant.is_some_and(|meant| is_each_once(&typed, &meant.as_they_stand(), 1.0))
}

/// True if the line has the terms of `key` at the judged step, each once and no other, as they stand
/// or multiplied through.
pub(super) fn is_made_of(
    board: &Board<'_>,
    judgement: &Judgement,
    key: &Key,
    instances: [&Instance; 2],
) -> bool {
    let typed = &judgement.evidence.terms;
    let (stands, cleared) = (typed.as_they_stand(), typed.cleared());
    let scales = scales(board);
    // A sum worked out before shows no distance in it.
    let of_arms = |one: &Instance| one.mistake.skill == Skill::Places;
    let apart = instances.into_iter().any(of_arms);
    let ways = if apart { &[false][..] } else { &[false, true] };
    let mut forms = ways
        .iter()
        .filter_map(|summed| Terms::of_step(board, key, judgement.target, *summed));
    forms.any(|meant| {
        let above = meant.cleared();
        is_each_once(&stands, &meant.as_they_stand(), 1.0)
            || scales
                .iter()
                .any(|scale| is_each_once(&cleared, &above, *scale))
    })
}

/// True unless the thought is named by its form only, about the moment balance, and the line has not
/// each of its terms and no other: what else agrees with it as a function shows nothing of it.
pub(super) fn has_its_form(board: &Board<'_>, judgement: &Judgement, instance: &Instance) -> bool {
    let of_balance = instance.shows_at == StepId::MomentSum;
    // A sum worked out before may be anything, and `= 0` is no term.
    let mut typed = judgement.evidence.terms.cleared();
    typed.retain(|term| term.value.abs() > 1e-9);
    let made_at = |id| {
        let meant = Terms::of_step(board, &instance.key, id, false);
        let scaled = |above: Vec<Factor>| {
            let mut scales = scales(board).into_iter();
            scales.any(|scale| is_each_once(&typed, &above, scale))
        };
        meant.is_some_and(|meant| scaled(meant.cleared()))
    };
    // Half of all forces is a form without moments.
    let shared = instance.mistake.is_share_of_all();
    let by_form_only = instance.mistake.has_no_prior() && of_balance && !shared;
    !by_form_only || made_at(judgement.target) || made_at(StepId::MomentSum)
}

/// True for a mistake that leaves the distances out, where the line has one distance in every term and
/// only their ratio is none.
pub(super) fn cancels_an_arm(
    board: &Board<'_>,
    judgement: &Judgement,
    instance: &Instance,
) -> bool {
    if board.key.general.is_some() || !WITHOUT_DISTANCES.contains(&instance.mistake.id) {
        return false;
    }
    has_an_arm_throughout(board, judgement, &instance.key)
}

/// True if the line is the step of `key`, multiplied through by a length.
pub(super) fn has_an_arm_throughout(board: &Board<'_>, judgement: &Judgement, key: &Key) -> bool {
    let Some(meant) = Terms::of_step(board, key, judgement.target, false) else {
        return false;
    };
    let (typed, meant) = (judgement.evidence.terms.cleared(), meant.cleared());
    let times = |scale: f64| is_each_once(&typed, &meant, scale);
    let gravity = board.problem.gravity();
    let as_it_is = [1.0, gravity, 1.0 / gravity].into_iter().any(times);
    !as_it_is && scales(board).into_iter().any(times)
}

/// True if the line has the moments of the known forces that `key` sets against each other, each once
/// and nothing else, at least three; a ratio that all of them have may be divided out.
pub(super) fn has_known_moments(board: &Board<'_>, judgement: &Judgement, key: &Key) -> bool {
    let pull = board.unknown().and_then(StepId::force);
    let Some(moments) = Terms::of_balance(board, key, StepId::MomentSum) else {
        return false;
    };
    let known = moments.iter().filter(|(force, _)| Some(*force) != pull);
    let meant: Vec<Factor> = known
        .clone()
        .filter_map(|(_, terms)| terms.as_they_stand().first().copied())
        .collect();
    let value = |id| Some(board.right(id)?[0]);
    let whole = known.filter_map(|(force, _)| {
        let across = value(StepId::Across(*force))?;
        Some(value(StepId::Weight(*force))? / across)
    });
    let mut scales = std::iter::once(1.0).chain(whole);
    let typed = judgement.evidence.against.as_they_stand();
    typed.len() > 2 && scales.any(|scale| is_each_once(&typed, &meant, scale))
}

/// True if these terms are so many times those meant, each once and no other.
fn is_each_once(typed: &[Factor], meant: &[Factor], scale: f64) -> bool {
    let mut left: Vec<&Factor> = typed.iter().collect();
    let mut found = |term: &Factor| {
        let wanted = scale * term.value;
        let at = left.iter().position(|other| same(other.value, wanted));
        at.map(|at| left.remove(at)).is_some()
    };
    typed.len() == meant.len() && meant.iter().all(&mut found)
}

fn matched(typed: &[Factor], meant: &[Factor], scale: f64) -> f64 {
    let mut left: Vec<&Factor> = typed.iter().collect();
    let mut sum = 0.0;
    for term in meant {
        let same = |other: &Factor| same(other.value, scale * term.value);
        let alike = left
            .iter()
            .position(|other| same(other) && other.shape == term.shape);
        if let Some(at) = alike.or_else(|| left.iter().position(|other| same(other))) {
            let found = left.remove(at);
            sum += TERM + f64::from(u8::from(found.shape == term.shape));
        }
    }
    sum
}

fn same(one: f64, other: f64) -> bool {
    (one.abs() - other.abs()).abs() <= SAME * one.abs().max(other.abs())
}

/// True if the line shows a moment as it is right, and not as `key` has it: what the mistake says
/// about that force was not done.
pub(super) fn is_refuted(board: &Board<'_>, judgement: &Judgement, key: &Key) -> bool {
    let of_balance = judgement.target == StepId::MomentSum
        || Some(judgement.target) == board.unknown()
            && key.step(judgement.target).map(|step| &step.rule)
                == board.key.step(judgement.target).map(|step| &step.rule);
    let terms = |key: &Key| Terms::of_balance(board, key, StepId::MomentSum).filter(|_| of_balance);
    let (Some(right), Some(wrong)) = (terms(board.key), terms(key)) else {
        return false;
    };
    let value = |moments: &[(_, Terms)], force| {
        let found = moments.iter().find(|(of, _)| *of == force)?;
        Some(found.1.value())
    };
    // A moment shows above a line as well, whatever the whole is divided by.
    let typed = &judgement.evidence.terms;
    let mut shown_values = typed.above();
    shown_values.extend(typed.as_they_stand().iter().map(|term| term.value));
    let shown = |value: f64| shown_values.iter().any(|term| same(*term, value));
    wrong.iter().any(|(force, moment)| {
        value(&right, *force).is_some_and(|right| {
            !same(right, moment.value()) && shown(right) && !shown(moment.value())
        })
    })
}

/// True unless a thought of the direction of a force needs a ratio that the line does not show: a
/// number alone, or one less than a right angle, tells no triangle.
pub(super) fn is_written(judgement: &Judgement, instance: &Instance) -> bool {
    let direction = matches!(judgement.target, StepId::Reaction(_, Part::Direction));
    // Of a direction, and of a size that is put together from two parts, what was done before the
    // support's force shows nothing.
    let level = |force| StepId::Reaction(force, Part::Along(Axis::Horizontal));
    let whole = match judgement.target {
        StepId::Reaction(force, Part::Size) => instance.key.step(level(force)).is_some(),
        _ => direction,
    };
    if whole && !matches!(instance.shows_at, StepId::Reaction(..)) {
        return false;
    }
    // An angle taken over has no ratio to show.
    let formula = instance.key.formula(judgement.target);
    let taken_over = formula.is_some_and(|formula| !has_arctangent(&formula));
    !direction || taken_over || instance.shows_at != judgement.target || judgement.evidence.angled
}

fn has_arctangent(formula: &Formula) -> bool {
    let is_one = matches!(formula, Formula::ArcTangent(_));
    is_one || formula.children().into_iter().any(has_arctangent)
}

/// False where the line cannot show the thought though it agrees as a function: nobody divided by a
/// ratio or took one at all, or the force stands by its level and upright parts and its angle with
/// the body nowhere.
pub(super) fn is_shown(judgement: &Judgement, mistake: &Mistake) -> bool {
    let evidence = &judgement.evidence;
    // A tangent is no sine or cosine that something is divided by.
    let divided = mistake.sign != Some(Sign::OverRatio)
        || evidence.over_ratio
        || !evidence.equation && !evidence.tangent;
    // What an equation sets against each other is not solved yet.
    let unsolved = mistake.skill == Skill::Solving && evidence.equation;
    let of_ratio = mistake.family == WRONG_LEG || mistake.sign.is_some();
    // Where a ratio stands in every term no force was left whole.
    let terms = evidence.terms.as_they_stand();
    let every = evidence.equation && terms.len() > 1;
    let every = every && terms.iter().all(|term| term.shape.is_resolved());
    if every && mistake.family == NOT_RESOLVED {
        return false;
    }
    // A tangent is neither the sine nor the cosine that would be exchanged.
    if evidence.tangent && mistake.family == WRONG_LEG && mistake.sign != Some(Sign::Tangent) {
        return false;
    }
    let ratio = !(of_ratio && evidence.unresolved && !judgement.target.is_angle());
    divided && ratio && !unsolved && !(evidence.names_parts && mistake.skill == Skill::Angles)
}

/// False where a thought of a general working is not in what was typed, though the line agrees with it
/// as a function: a ratio or tangent that stands nowhere, distances that only cancel to the same.
pub(super) fn is_typed(board: &Board<'_>, judgement: &Judgement, instance: &Instance) -> bool {
    if board.key.general.is_none() {
        return true;
    }
    let evidence = &judgement.evidence;
    let mistake = instance.mistake;
    let signed = match mistake.sign {
        Some(Sign::OverRatio) => evidence.over_ratio,
        Some(Sign::Tangent) => evidence.tangent,
        Some(Sign::Angle) | None => true,
    };
    let places = [judgement.target, instance.shows_at];
    let balance = places.into_iter().find(|step| step.is_balance());
    let balance = balance.filter(|_| OF_ARMS.contains(&mistake.family));
    let Some(balance) = balance.filter(|_| signed) else {
        return signed;
    };
    let typed = evidence.terms.as_they_stand();
    let stands = || {
        let meant = Terms::of_balance(board, &instance.key, balance);
        meant.is_some_and(|meant| {
            let whole = meant.iter().map(|(_, term)| Factor::number(term.value()));
            let whole: Vec<Factor> = whole.collect();
            let apart = meant.into_iter().flat_map(|(_, term)| term.as_they_stand());
            let apart: Vec<Factor> = apart.collect();
            is_each_once(&typed, &whole, 1.0) || is_each_once(&typed, &apart, 1.0)
        })
    };
    // Two forces alone, and some that are resolved beside others that are whole, may be a balance of
    // forces in which one is missing.
    let resolved = typed.iter().filter(|term| term.shape.is_resolved()).count();
    let of_forces = typed.len() < 3 || resolved > 0 && resolved < typed.len();
    let distances = mistake.family != NO_DISTANCES || !of_forces && !has_one_metre(board);
    distances && (!evidence.equation || stands())
}

/// True where a distance, or a simple part of one, is one metre: who uses it writes the same number as
/// who leaves it out.
fn has_one_metre(board: &Board<'_>) -> bool {
    let givens = board.problem.givens().iter();
    let mut lengths = givens.filter(|given| given.dimension == Dimension::LENGTH);
    lengths.any(|length| {
        let parts = [1.0, 2.0, 3.0, 4.0].map(|parts| length.value / parts);
        parts.iter().any(|part| (part - 1.0).abs() < 1e-9)
    })
}

/// False for a general balance with more terms than one that lacks a term has: there is one too many,
/// and what it comes to is chance.
pub(super) fn may_lack(board: &Board<'_>, judgement: &Judgement, instance: &Instance) -> bool {
    if board.key.general.is_none() {
        return true;
    }
    let terms = |key: &Key| {
        key.balance(instance.shows_at)
            .map(|balance| balance.terms.len())
    };
    let (Some(right), Some(wrong)) = (terms(board.key), terms(&instance.key)) else {
        return true;
    };
    wrong == right || judgement.evidence.terms.as_they_stand().len() <= wrong
}
