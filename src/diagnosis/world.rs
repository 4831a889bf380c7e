//! What a mistake gives at the judged step: alone, after what the learner has right, and beside the
//! wrong relations that she goes on with.

use super::{same, second};
use crate::judge::{Board, Judgement};
use crate::key::{Key, Samples, StepId, agree};
use crate::mistakes::{Instance, Skill};
use std::collections::BTreeMap;

/// Values that were told, by their steps.
type Told = BTreeMap<StepId, Samples>;

/// What a mistake gives at the judged step, wherever that is not what counts as right.
#[derive(Default)]
pub(super) struct World {
    /// With nothing settled before: the working may have been done anew in this line.
    pub(super) anew: Vec<Samples>,
    /// From what the learner has right before this step: there the mistake was not made.
    from_settled: Vec<Samples>,
    /// The one of these that rests on none of her own wrong values, where they change it.
    apart_from_own: Option<Samples>,
    /// The key of a learner who makes it beside the wrong relations that she goes on with, and what
    /// that gives.
    second: Option<(Key, Vec<Samples>)>,
}

impl World {
    pub(super) fn of(
        board: &Board<'_>,
        (target, accepted): (StepId, &[(Samples, Vec<usize>)]),
        (hers, told): (Option<&Key>, &Told),
        instance: &Instance,
    ) -> World {
        // How the unknown was found shows there no more; what is done after it shows anyhow.
        let none = Told::new();
        let told = if is_of_support(instance) { &none } else { told };
        let mut own = board.own_pins();
        own.extend(told.clone());
        // What a calculator shows is seen in typed numbers only.
        let shown = instance.mistake.skill == Skill::Numbers;
        // A multiple of the unknown is a relation, not a value.
        let multiple = |id: StepId| {
            matches!(id, StepId::Across(_) | StepId::Moment(_))
                && id.force() == board.unknown().and_then(StepId::force)
        };
        let is_settled = |id: StepId| id != target && is_settled(board, target, id);
        let settled: BTreeMap<StepId, Samples> = board
            .standing
            .iter()
            .filter(|(id, own)| {
                is_settled(**id) && !multiple(**id) && (!shown || own.typed.is_some())
            })
            .map(|(id, own)| (*id, own.function))
            .chain(told.clone())
            .collect();
        let last = board.key.rank(StepId::MomentSum);
        let balanced = board.key.rank(target) > last && is_settled(StepId::MomentSum);
        let key = with_right(board.key, &instance.key, |id| {
            let before = balanced && board.key.rank(id) <= last;
            let resolved = match id {
                StepId::Angle(force) => is_settled(StepId::Across(force)),
                id => multiple(id) && is_settled(id),
            };
            !shown && (before || resolved)
        });
        let mut both = settled.clone();
        both.extend(own.clone());
        let fresh = |function: &Samples| accepted.iter().all(|(right, _)| !agree(right, function));
        let mut anew = functions(board, target, &instance.key, [&own, told]);
        let mut from_settled = functions(board, target, &key, [&both, &settled]);
        for function in anew.iter_mut().chain(&mut from_settled) {
            *function = as_pull(board, target, instance, *function);
        }
        anew.retain(fresh);
        let apart_from_own = from_settled.get(1).copied();
        from_settled.retain(fresh);
        let second = hers.and_then(|hers| second::rewritten(board, hers, instance));
        // What her wrong relations give by themselves shows nothing beside them.
        let by_hers = hers.map(|hers| functions(board, target, hers, [&own, told]));
        let by_hers = by_hers.unwrap_or_default();
        let second = second.map(|key| {
            let mut found = functions(board, target, &key, [&own, told]);
            found.retain(|function| {
                let mut known = by_hers.iter().chain(&anew);
                fresh(function) && !known.any(|known| agree(known, function))
            });
            (key, found)
        });
        World {
            anew,
            from_settled,
            apart_from_own,
            second,
        }
    }

    /// The keys in which the mistake is made: alone, and beside what she goes on with.
    pub(super) fn keys<'k>(&'k self, instance: &'k Instance) -> impl Iterator<Item = &'k Key> {
        let beside = self.second.iter().map(|(key, _)| key);
        std::iter::once(&instance.key).chain(beside)
    }

    /// True if what is settled leaves nothing of the mistake at this step.
    pub(super) fn is_mended(&self) -> bool {
        self.from_settled.is_empty()
    }

    /// True for what the mistake gives from right values, where wrong ones of her own stand.
    pub(super) fn is_apart_from_own(&self, function: &Samples) -> bool {
        self.apart_from_own.as_ref() == Some(function)
    }

    pub(super) fn functions(&self) -> impl Iterator<Item = &Samples> {
        self.alone().chain(self.beside())
    }

    fn alone(&self) -> impl Iterator<Item = &Samples> {
        self.anew.iter().chain(&self.from_settled)
    }

    fn beside(&self) -> impl Iterator<Item = &Samples> {
        self.second.iter().flat_map(|(_, functions)| functions)
    }

    /// What a number may be: beside her wrong relations only where the mistake alone gives nothing.
    pub(super) fn values(&self) -> impl Iterator<Item = &Samples> {
        let alone = !self.from_settled.is_empty();
        let beside = self.beside().filter(move |_| !alone);
        self.from_settled.iter().chain(beside)
    }

    /// Her key with the mistake in it, where only that gives this function.
    pub(super) fn key_beside(&self, target: StepId, lifted: &Samples) -> Option<Box<Key>> {
        let alone = self.alone().any(|function| same(target, function, lifted));
        let (key, _) = self.second.as_ref().filter(|_| !alone)?;
        Some(Box::new(key.clone()))
    }
}

/// The unknown as it was told, where the line works a part of a force from it.
pub(super) fn told_unknown(board: &Board<'_>, judgement: &Judgement) -> Told {
    let last = matches!(judgement.target, StepId::Reaction(..) | StepId::PartOf(..));
    let unknown = board
        .unknown()
        .filter(|_| last && judgement.evidence.of_unknown);
    let told = unknown.and_then(|id| Some((id, board.standing.get(&id)?.function)));
    told.into_iter().collect()
}

/// True for a mistake that is made in the support's force.
pub(super) fn is_of_support(instance: &Instance) -> bool {
    matches!(instance.shows_at, StepId::Reaction(..))
}

/// What a mistake in an angle gives, as the pull it is told as: angles that were put together the
/// wrong way are told without their sign, and so is what they give.
fn as_pull(board: &Board<'_>, target: StepId, instance: &Instance, function: Samples) -> Samples {
    let pull = target == StepId::MomentSum || Some(target) == board.unknown();
    let turned = pull && instance.mistake.skill == Skill::Angles && function[0] < 0.0;
    match turned && board.right(target).is_some_and(|right| right[0] > 0.0) {
        true => function.map(|value| -value),
        false => function,
    }
}

/// True for a step that is right before the judged one. What was passed over is not the learner's:
/// she may have worked it on paper, and wrongly, as far as the unknown; the support's force is
/// worked from the values that were told.
pub(super) fn is_settled(board: &Board<'_>, target: StepId, id: StepId) -> bool {
    let told = matches!(target, StepId::Reaction(..) | StepId::PartOf(..));
    let own = board.standing.get(&id);
    own.is_some_and(|own| own.right && (told || own.line > 0))
}

/// A mistake's key with the right rule at the steps that are `settled`.
fn with_right(right: &Key, wrong: &Key, settled: impl Fn(StepId) -> bool) -> Key {
    let mut key = wrong.clone();
    for step in key.steps.iter_mut().filter(|step| settled(step.id)) {
        if let Some(known) = right.step(step.id) {
            step.rule = known.rule.clone();
        }
    }
    key
}

/// The functions of a step in a key with each of these values pinned.
fn functions(
    board: &Board<'_>,
    target: StepId,
    key: &Key,
    pinned: [&BTreeMap<StepId, Samples>; 2],
) -> Vec<Samples> {
    let mut functions = Vec::new();
    for pins in pinned {
        let function = key.function(board.key, target, board.sampling, pins);
        functions.extend(function.filter(|function| !functions.contains(function)));
    }
    functions
}
