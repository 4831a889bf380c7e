//! What the rewrites share: finding forces by what they are for, and moving or dropping them.

use super::Scope;
pub(super) use crate::key::difference;
use crate::key::{Axis, Formula, Key, Part, Role, Rule, StepId, place_length};
use crate::problem::{ForceId, Place, Problem, Size};

/// The known forces that turn the body, in the order of the moment balance.
pub(super) fn known_turning(problem: &Problem, key: &Key) -> Vec<ForceId> {
    turning(key)
        .into_iter()
        .filter(|id| size_of(problem, *id).is_some_and(|size| size != Size::Unknown))
        .collect()
}

/// The known forces other than the body's own weight.
pub(super) fn loads(problem: &Problem, key: &Key) -> Vec<ForceId> {
    known_turning(problem, key)
        .into_iter()
        .filter(|id| *id != ForceId::OwnWeight)
        .collect()
}

/// True if moments of at least two known forces are added, so that one of them can be missed.
pub(super) fn several_known(problem: &Problem, key: &Key) -> bool {
    known_turning(problem, key).len() > 1
}

/// Every force that turns the body.
pub(super) fn turning(key: &Key) -> Vec<ForceId> {
    key.balance(StepId::MomentSum)
        .map(|balance| balance.terms.iter().map(|term| term.force).collect())
        .unwrap_or_default()
}

/// The rope's tension or the contact's push that is looked for.
pub(super) fn pull(key: &Key) -> Option<ForceId> {
    key.steps.iter().find_map(|step| match step.id {
        StepId::Pull(force) => Some(force),
        _ => None,
    })
}

/// The rope's pull as a scope, if the problem's unknown is a rope.
pub(super) fn rope(key: &Key) -> Option<ForceId> {
    pull(key).filter(|id| matches!(id, ForceId::Rope(_)))
}

/// The support whose force the force balances give.
pub(super) fn support(key: &Key) -> Option<ForceId> {
    key.steps.iter().find_map(|step| match step.id {
        StepId::Reaction(force, _) => Some(force),
        _ => None,
    })
}

/// The steps of the parts of forces along the axes.
pub(super) fn parts_along(key: &Key) -> impl Iterator<Item = StepId> {
    let steps = key.steps.iter().map(|step| step.id);
    steps.filter(|id| matches!(id, StepId::PartOf(..)))
}

/// The direction of the support's force, where it is asked.
pub(super) fn direction_of_support(key: &Key) -> Option<StepId> {
    let mut steps = key.steps.iter().map(|step| step.id);
    steps.find(|id| matches!(id, StepId::Reaction(_, Part::Direction)))
}

/// One scope for each of these forces.
pub(super) fn each(forces: impl IntoIterator<Item = ForceId>) -> Vec<Scope> {
    forces.into_iter().map(Scope::Force).collect()
}

/// The one force of a scope.
pub(super) fn only(scope: Scope) -> Option<ForceId> {
    match scope {
        Scope::Force(id) => Some(id),
        _ => None,
    }
}

/// The size of a force as a formula.
pub(super) fn size(problem: &Problem, id: ForceId) -> Option<Formula> {
    Some(match size_of(problem, id)? {
        Size::Weight(_) => Formula::step(StepId::Weight(id)),
        Size::Given(given) => Formula::given(given),
        Size::Unknown => Formula::step(StepId::Pull(id)),
    })
}

fn size_of(problem: &Problem, id: ForceId) -> Option<Size> {
    problem
        .forces()
        .into_iter()
        .find(|force| force.id == id)
        .map(|force| force.size)
}

/// The sine that takes a force to its component across the body; `None` where it acts squarely.
pub(super) fn ratio(key: &Key, id: ForceId) -> Option<Formula> {
    fn tagged(formula: &Formula, role: Role) -> Option<Formula> {
        match formula {
            Formula::Tagged(found, inner) if *found == role => Some(inner.as_ref().clone()),
            other => other
                .children()
                .into_iter()
                .find_map(|child| tagged(child, role)),
        }
    }
    match &key.step(StepId::Across(id))?.rule {
        Rule::Formula(formula) => tagged(formula, Role::Ratio(id)),
        _ => None,
    }
}

/// The angle of a force's ratio.
pub(super) fn ratio_angle(key: &Key, id: ForceId) -> Option<Formula> {
    match ratio(key, id)? {
        Formula::Sine(angle) => Some(*angle),
        _ => None,
    }
}

/// The key with the component of each of these forces built anew from its size and its ratio.
pub(super) fn with_across(
    problem: &Problem,
    key: &Key,
    forces: &[ForceId],
    build: impl Fn(Formula, Formula) -> Formula,
) -> Key {
    let rules = forces.iter().filter_map(|id| {
        let ratio = ratio(key, *id)?.tagged(Role::Ratio(*id));
        let rule = Rule::Formula(build(size(problem, *id)?, ratio));
        Some((StepId::Across(*id), rule))
    });
    with_rules(key, rules)
}

/// The key without a force in any balance.
pub(super) fn without(key: &Key, id: ForceId) -> Key {
    let mut changed = key.clone();
    for step in &mut changed.steps {
        if let Rule::Balance(balance) = &mut step.rule {
            balance.terms.retain(|term| term.force != id);
        }
    }
    changed
}

/// The key with several rules replaced. One copy of the key only: a draw rewrites it thousands
/// of times.
pub(super) fn with_rules(key: &Key, rules: impl IntoIterator<Item = (StepId, Rule)>) -> Key {
    let mut changed = key.clone();
    for (id, rule) in rules {
        if let Some(step) = changed.steps.iter_mut().find(|step| step.id == id) {
            step.rule = rule;
        }
    }
    changed
}

/// The key without a force in one balance.
pub(super) fn without_in(key: &Key, balance: StepId, id: ForceId) -> Key {
    key.with_balance(balance, |balance| {
        balance.terms.retain(|term| term.force != id);
    })
}

/// The key with a force at another place of the body, its sense of turning with it. `None` where
/// it would then act at the pivot.
pub(super) fn placed(problem: &Problem, key: &Key, id: ForceId, place: Place) -> Option<Key> {
    let values = problem.values();
    let along =
        |place: Place| problem.distance(place, &values) - problem.distance(key.pivot, &values);
    let (before, after) = (along(problem.force(id)?.at), along(place));
    if after.abs() < 1e-9 {
        return None;
    }
    let (far, near) = if after > 0.0 {
        (place, key.pivot)
    } else {
        (key.pivot, place)
    };
    let formula = difference(along_body(problem, far), along_body(problem, near));
    let moved = with_distance(key, id, formula);
    Some(if before * after < 0.0 {
        turned(&moved, StepId::MomentSum, id)
    } else {
        moved
    })
}

/// The key with another distance of a force from the pivot.
pub(super) fn with_distance(key: &Key, id: ForceId, formula: Formula) -> Key {
    key.with_rule(StepId::Distance(id), Rule::Formula(formula))
}

/// The key with the sign of one term of a balance turned round.
pub(super) fn turned(key: &Key, balance: StepId, id: ForceId) -> Key {
    key.with_balance(balance, |balance| {
        for term in balance.terms.iter_mut().filter(|term| term.force == id) {
            term.sign = -term.sign;
        }
    })
}

/// Distance of a place from the foot along the body.
pub(super) fn along_body(problem: &Problem, place: Place) -> Formula {
    place_length(place, problem.body().length)
}

/// The key with the amount of one force's term in a balance changed.
pub(super) fn with_amount(
    key: &Key,
    balance: StepId,
    id: ForceId,
    change: impl Fn(&Formula) -> Formula,
) -> Key {
    key.with_balance(balance, |balance| {
        for term in balance.terms.iter_mut().filter(|term| term.force == id) {
            term.amount = change(&term.amount);
        }
    })
}

/// The pull that is looked for, where only a part of it lies along an axis.
pub(super) fn pull_along(key: &Key, axis: Axis) -> Option<ForceId> {
    pull(key).filter(|id| key.step(StepId::PartOf(*id, axis)).is_some())
}

/// The key with the whole of a force in the force balance of an axis.
pub(super) fn with_whole(problem: &Problem, key: &Key, axis: Axis, id: ForceId) -> Option<Key> {
    let whole = size(problem, id)?;
    let balance = StepId::ForceSum(axis);
    Some(with_amount(key, balance, id, |_| whole.clone()))
}

/// A term's amount without its distance.
pub(super) fn without_distance(amount: &Formula) -> Formula {
    let Formula::Product(parts) = amount else {
        return amount.clone();
    };
    let mut kept: Vec<Formula> = parts
        .iter()
        .filter(|part| !matches!(part, Formula::Tagged(Role::Distance(_), _)))
        .cloned()
        .collect();
    if kept.len() == 1 {
        kept.remove(0)
    } else {
        Formula::Product(kept)
    }
}

/// The key with another last step: the pull as this formula of the known moments.
pub(super) fn with_pull(key: &Key, id: ForceId, formula: Formula) -> Key {
    key.with_rule(StepId::Pull(id), Rule::Formula(formula))
}

/// The known moments over the pull's distance.
pub(super) fn known_over_distance(id: ForceId) -> Formula {
    Formula::step(StepId::KnownMoments)
        .over(Formula::step(StepId::Distance(id)).tagged(Role::Distance(id)))
}

/// True where a force acts squarely on the body, and so has no ratio.
pub(super) fn acts_squarely(key: &Key, id: ForceId) -> bool {
    ratio(key, id).is_none()
}

/// The key with the distance of a force measured from the far end; at that end it has no term.
pub(super) fn from_far_end(problem: &Problem, key: &Key, id: ForceId) -> Option<Key> {
    Some(match problem.force(id)?.at {
        Place::Tip => without_in(key, StepId::MomentSum, id),
        at => {
            let length = Formula::given(problem.body().length);
            with_distance(key, id, difference(length, along_body(problem, at)))
        }
    })
}

/// The scopes of a mistake in the size of an angle: each force that has one with the body.
pub(super) fn each_angle(key: &Key) -> Vec<Scope> {
    let has_angle = |id: &ForceId| key.step(StepId::Angle(*id)).is_some();
    each(turning(key).into_iter().filter(has_angle))
}

/// The key with the angle of a force changed.
pub(super) fn with_angle(key: &Key, scope: Scope, change: fn(Formula) -> Formula) -> Option<Key> {
    let step = StepId::Angle(only(scope)?);
    let changed = change(key.formula(step)?);
    Some(key.with_rule(step, Rule::Formula(changed)))
}

/// The key with one force divided by its distance in the moment balance.
pub(super) fn over_distance(key: &Key, id: ForceId) -> Key {
    let distance = Formula::step(StepId::Distance(id)).tagged(Role::Distance(id));
    with_amount(key, StepId::MomentSum, id, |amount| {
        without_distance(amount).over(distance.clone())
    })
}

/// The key with the distances of these forces measured from the place of another, which they turn
/// the body about; what acts there has no term.
pub(super) fn measured_from(
    problem: &Problem,
    key: &Key,
    forces: Vec<ForceId>,
    pivot: ForceId,
) -> Option<Key> {
    let from = problem.force(pivot)?.at;
    let values = problem.values();
    let mut changed = key.clone();
    for id in forces {
        let at = problem.force(id)?.at;
        let after = apart(problem, id, pivot);
        if after == 0.0 {
            changed = without_in(&changed, StepId::MomentSum, id);
            continue;
        }
        let (at_length, from_length) = (along_body(problem, at), along_body(problem, from));
        let distance = match after > 0.0 {
            true => difference(at_length, from_length),
            false => difference(from_length, at_length),
        };
        changed = with_distance(&changed, id, distance);
        let before = problem.distance(at, &values) - problem.distance(key.pivot, &values);
        if before * after < 0.0 {
            changed = turned(&changed, StepId::MomentSum, id);
        }
    }
    Some(changed)
}

/// How far the one force acts beyond the other along the body, in metres; nothing where both act
/// at one place.
pub(super) fn apart(problem: &Problem, one: ForceId, other: ForceId) -> f64 {
    let values = problem.values();
    let along = |id: ForceId| {
        let force = problem.force(id);
        force.map_or(0.0, |force| problem.distance(force.at, &values))
    };
    let apart = along(one) - along(other);
    if apart.abs() < 1e-9 { 0.0 } else { apart }
}
