//! Two mistakes in one line: looked for only where its form is no single mistake's, and named only
//! where it is that of both together.

use super::literal::{is_literal, rests_on_unseen_pull};
use super::several::say_the_same;
use super::term_by_term::{self, Fit};
use super::world::{World, is_of_support, told_unknown};
use super::{Because, Named, Voice, form, same};
use crate::judge::{Board, Judgement};
use crate::key::{Key, Part, Samples, StepId, agree};
use crate::mistakes::{Instance, MASS_OF_ANOTHER, SHARED_OUT, Scope, Skill, WRONG_LEG};

/// So many pairs are tried at most, the likeliest first: a count, so a line has the same verdict on
/// every computer.
const MOST_PAIRS: usize = 3000;

/// Mistakes that change several distances at once: beside a second one a line does not show all of
/// them.
const OF_ALL_DISTANCES: [&str; 6] = [
    "all-mass-at-one-point",
    "distances-exchanged",
    "from-the-middle",
    "pivot-at-the-rope",
    "two-pivots",
    "wrong-pivot-without-the-hinge-term",
];

/// The likeliest two mistakes whose formula, both made, the typed form is. Neither alone is the line,
/// and what both give together is never right, since the line is not.
pub(super) fn by_pair(
    board: &Board<'_>,
    judgement: &Judgement,
    instances: &[Instance],
    (worlds, accepted): (&[World], &[(Samples, Vec<usize>)]),
) -> Option<[Named; 2]> {
    let evidence = &judgement.evidence;
    let open = board.key.general.is_none()
        // Printed angles put together the wrong way are some two mistakes each time.
        && !judgement.target.is_angle()
        // The moment of one force shows one distance, and a direction no weight.
        && !matches!(
            judgement.target,
            StepId::Moment(_) | StepId::Reaction(_, Part::Direction)
        )
        && !evidence.lifted.is_empty()
        && !evidence.alone
        && !evidence.broken_link
        // What is another step's, or true beside the question, is that.
        && evidence.other_step.is_none()
        && evidence.tells.is_none()
        && evidence.aside.is_none()
        && !evidence
            .rests_on
            .iter()
            .any(|id| matches!(id, StepId::Reaction(..)));
    if !open {
        return None;
    }
    let shows = |index: &usize| {
        let mistake = instances[*index].mistake;
        // What is only ever named alone is no half of a pair; another body's mass, a share of the
        // whole, and all distances changed at once agree with too much beside a second mistake.
        let of_form = mistake.skill != Skill::Numbers && !mistake.has_no_prior();
        let loose = [MASS_OF_ANOTHER, SHARED_OUT].contains(&mistake.family)
            || OF_ALL_DISTANCES.contains(&mistake.id);
        of_form && !loose && !worlds[*index].anew.is_empty()
    };
    let showing: Vec<usize> = (0..instances.len()).filter(shows).collect();
    let prior = |index: usize| instances[index].mistake.prior;
    let mut pairs: Vec<(usize, usize)> = Vec::new();
    for (at, one) in showing.iter().enumerate() {
        let others = showing[at + 1..].iter().map(|other| (*one, *other));
        pairs.extend(others.filter(|(one, other)| {
            are_two(judgement.target, &instances[*one], &instances[*other])
        }));
    }
    pairs.sort_by(|one, other| {
        let weight = |pair: &(usize, usize)| prior(pair.0) * prior(pair.1);
        weight(other).total_cmp(&weight(one))
    });
    let mut found = pairs
        .into_iter()
        .take(MOST_PAIRS)
        .filter_map(|(one, other)| {
            let orders = [(one, other), (other, one)];
            let (key, exact) = orders.into_iter().find_map(|(first, second)| {
                both(
                    board,
                    judgement,
                    (&instances[first], &instances[second]),
                    accepted,
                )
            })?;
            let literal = [one, other]
                .iter()
                .all(|index| is_literal(board, judgement, &key, &instances[*index]));
            Some((one, other, key, (exact, literal)))
        });
    // Two that give the line sign and all come before two that give it in the other sense, and of
    // these two whose angles stand in it before two that only come to the same.
    let mut best = found.next()?;
    while best.3 != (true, true) {
        let Some(next) = found.next() else {
            break;
        };
        if next.3 > best.3 {
            best = next;
        }
    }
    let (one, other, key, (_, literal)) = best;
    // What agrees with one of the two as functions cannot be told from it beside the other.
    let alike = |index: usize| {
        let function = worlds[index].anew.first();
        let agrees = |other: &usize| {
            let anew = worlds[*other].anew.first();
            *other != index
                && function
                    .zip(anew)
                    .is_some_and(|(one, other)| agree(one, other))
        };
        showing.iter().copied().filter(agrees).collect()
    };
    let pair = [one, other].map(|index| &instances[index]);
    let said = |index: usize| {
        let alike: Vec<usize> = alike(index);
        let mistake = |index: usize| instances[index].mistake;
        let mut alike = alike.into_iter();
        alike.all(|other| say_the_same(mistake(index), mistake(other)))
    };
    let apart = !judgement.target.is_pull() || said(one) && said(other);
    let literal = literal && apart && is_shown(board, judgement, &key, pair);
    let (first, second) = match prior(other) > prior(one) {
        true => (other, one),
        false => (one, other),
    };
    Some([first, second].map(|instance| Named {
        instance,
        alike: alike(instance),
        voice: if literal { Voice::Flat } else { Voice::Perhaps },
        because: Because::Form,
        share: 0.5,
        beside: Some(Box::new(key.clone())),
    }))
}

/// True unless a line tells a pull, and the two may be other thoughts: two of one family are one
/// thought of both forces, and a ratio before a whole sum belongs to the weights or to the pull.
fn is_shown(
    board: &Board<'_>,
    judgement: &Judgement,
    key: &Key,
    [one, other]: [&Instance; 2],
) -> bool {
    let of_pull = judgement.target.is_pull();
    let apart = one.mistake.family != other.mistake.family;
    (apart && !term_by_term::has_ratio_before_a_sum(judgement) || !of_pull)
        && term_by_term::fit(board, judgement, key) == Fit::Exact
}

/// False for one mistake twice, and for two of one angle: what they come to is some third angle.
fn are_two(target: StepId, one: &Instance, other: &Instance) -> bool {
    let of_angle = |instance: &Instance| {
        let mistake = instance.mistake;
        // A ratio divided by, and of the wrong side, is an arm or a length that she meant.
        mistake.skill == Skill::Angles || mistake.family == WRONG_LEG || mistake.sign.is_some()
    };
    // What is done in the weights, or in the pull, shows at the same place as what is done there in
    // one force.
    let place = |instance: &Instance| (instance.shows_at, instance.force());
    let (at, of) = (place(one), place(other));
    // What is done everywhere is done there too, and a step of one force has one angle.
    let everywhere = [one.scope, other.scope].contains(&Scope::Everywhere);
    let of_one = matches!(
        target,
        StepId::Angle(_) | StepId::Across(_) | StepId::Moment(_) | StepId::PartOf(..)
    );
    let one_place = at.0 == of.0 || at.1 == of.1 || everywhere || of_one;
    let one_angle = of_angle(one) && of_angle(other) && one_place;
    let same = one.mistake.id == other.mistake.id;
    !one_angle && !(same && (one.scope == other.scope || one.mistake.id == "one-weight-only"))
}

/// The key of a learner who makes both mistakes, the second in the working of the first, if the typed
/// form is the formula of it; and whether it is so with its sign.
fn both(
    board: &Board<'_>,
    judgement: &Judgement,
    (first, second): (&Instance, &Instance),
    accepted: &[(Samples, Vec<usize>)],
) -> Option<(Key, bool)> {
    let target = judgement.target;
    let key = (second.mistake.rewrite)(board.problem, &first.key, second.scope)?;
    if key == first.key || key == second.key {
        return None;
    }
    let function = |key: &Key, pins| key.function(board.key, target, board.sampling, pins);
    let near = |one: f64, other: f64| (one.abs() - other.abs()).abs() <= 1e-7 * one.abs();
    let lifted = &judgement.evidence.lifted;
    let mut told = told_unknown(board, judgement);
    if is_of_support(first) && is_of_support(second) {
        told.clear();
    }
    let mut own = board.own_pins();
    own.extend(told.clone());
    let pins = [&own, &told];
    let found = pins
        .into_iter()
        .take(if own == told { 1 } else { 2 })
        .find_map(|pins| {
            let may_be = |made: f64| lifted.iter().any(|one| near(one[0], made));
            let made = key.function_if(board.key, target, board.sampling, pins, &may_be)?;
            let is_typed = |one: &Samples| near(one[0], made[0]) && same(target, &made, one);
            lifted.iter().any(is_typed).then_some((made, pins))
        });
    let (made, pins) = found?;
    // What leaves nothing of a balance has no form to be seen.
    if made.iter().any(|made| made.abs() < 1e-9) {
        return None;
    }
    // Each of the two changes something, and the two together are not right.
    let alone = [first, second]
        .iter()
        .any(|one| function(&one.key, pins).is_some_and(|alone| same(target, &alone, &made)));
    let right = accepted.iter().any(|(right, _)| agree(right, &made));
    // One product of printed numbers is too many things at once; and what was multiplied out shows
    // each term of both.
    // A balance with no weight left in it lacks everything.
    let least = if matches!(target, StepId::Reaction(..)) {
        2
    } else {
        1
    };
    let many = judgement.evidence.terms.as_they_stand().len() > least;
    let shown = many && form::is_made_of(board, judgement, &key, [first, second]);
    let written = [first, second]
        .iter()
        .all(|one| form::is_written(judgement, one) && form::is_shown(judgement, one.mistake));
    let unmoved = [first, second]
        .iter()
        .any(|one| form::WITHOUT_DISTANCES.contains(&one.mistake.id))
        && form::has_an_arm_throughout(board, judgement, &key);
    let clear = !unmoved
        && !form::is_refuted(board, judgement, &key)
        && !rests_on_unseen_pull(board, judgement, &key);
    let exact = lifted.iter().any(|one| agree(one, &made));
    (!alone && !right && shown && written && clear).then_some((key, exact))
}
