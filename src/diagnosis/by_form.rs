//! Thoughts that the form of a line shows: those whose formula it is, and those whose terms it has.

use super::several::{has_rival, mass_or_distance, multiplied_first, one_thought_each};
use super::term_by_term::{self, Fit};
use super::world::World;
use super::{Because, Named, PERHAPS_SHARE, Voice, form, literal, same};
use crate::judge::{Board, Judgement};
use crate::key::{Samples, StepId, agree};
use crate::mistakes::{Instance, Scope, Sign, Skill};
use std::cmp::Ordering;

/// The share of a thought that agrees as a function, where what was typed does not prove it.
const UNPROVED: f64 = 0.8;

/// A moment that came to the other side of the balance without its sign turned.
const TURNED_IN_SOLVING: &str = "solved-wrongly";

/// Mistakes whose formula the typed form is.
pub(super) fn by_form(
    board: &Board<'_>,
    judgement: &Judgement,
    instances: &[Instance],
    worlds: &[World],
) -> Option<Vec<Named>> {
    let target = judgement.target;
    // At the hinge's force, what the values that stand have mended agrees by chance only.
    let last = matches!(target, StepId::Reaction(..));
    let counts =
        |index: usize| !last || !worlds[index].is_mended() || instances[index].shows_at == target;
    // With the hinge's force in it a line is no balance about the hinge, and gives a mistake's value
    // by chance.
    let named = |id: &StepId| matches!(id, StepId::Reaction(..));
    let other = !last && judgement.evidence.rests_on.iter().any(named);
    // Two forces alone show no distance.
    let two = judgement.evidence.terms.as_they_stand().len() < 3;
    let mut found: Vec<Named> = Vec::new();
    for lifted in &judgement.evidence.lifted {
        let alike: Vec<usize> = (0..instances.len())
            .filter(|index| {
                counts(*index)
                    && worlds[*index]
                        .functions()
                        .any(|function| same(target, function, lifted))
            })
            .filter(|index| {
                let mut keys = worlds[*index].keys(&instances[*index]);
                keys.any(|key| !form::is_refuted(board, judgement, key))
            })
            .filter(|index| form::is_written(judgement, &instances[*index]))
            .filter(|index| form::has_its_form(board, judgement, &instances[*index]))
            .filter(|index| {
                let mut keys = worlds[*index].keys(&instances[*index]);
                !other || !two && keys.any(|key| form::has_terms(board, judgement, key))
            })
            .filter(|index| form::is_of_forces(board, judgement, &instances[*index]))
            .filter(|index| form::is_shown(judgement, instances[*index].mistake))
            .filter(|index| form::may_lack(board, judgement, &instances[*index]))
            .filter(|index| form::is_typed(board, judgement, &instances[*index]))
            .collect();
        let mut alike = likeliest_first(board, judgement, instances, worlds, (lifted, alike));
        let fit = |index: usize| {
            let keys = worlds[index].keys(&instances[index]);
            let instance = &instances[index];
            let literal = keys.filter(|key| literal::is_literal(board, judgement, key, instance));
            let fits = literal.map(|key| term_by_term::fit(board, judgement, key));
            fits.max()
        };
        // An angle that she did not write is not told of her.
        let of_angle = alike
            .first()
            .is_some_and(|first| literal::is_of_angle(&instances[*first]) && fit(*first).is_none());
        if alike.is_empty() || of_angle && judgement.evidence.angled_or_sum() {
            continue;
        }
        multiplied_first(judgement, instances, &mut alike);
        let fits = |index: &usize| (*index, fit(*index).unwrap_or(Fit::Not));
        let fits: Vec<(usize, Fit)> = alike.iter().map(fits).collect();
        let instance = alike.remove(0);
        if let Some(both) = mass_or_distance(judgement, instances, (instance, &mut alike)) {
            found.push(both);
        }
        let shown = fits[0].1 > Fit::Not && may_be_flat(board, judgement, &instances[instance]);
        let flat = shown && !has_rival(judgement, instances, &fits);
        found.push(Named {
            instance,
            alike,
            voice: if flat { Voice::Flat } else { Voice::Perhaps },
            because: if shown { Because::Form } else { Because::Value },
            share: if flat { 1.0 } else { UNPROVED },
            beside: worlds[instance].key_beside(target, lifted),
        });
    }
    one_thought_each(&mut found, instances);
    (!found.is_empty()).then_some(found)
}

/// False for a thought that the line cannot prove, whatever its form.
fn may_be_flat(board: &Board<'_>, judgement: &Judgement, instance: &Instance) -> bool {
    let mistake = instance.mistake;
    // A ratio that was worked out before does not tell a wrong function from a wrong angle.
    let by_angle = mistake.sign == Some(Sign::Angle);
    // Without a balance before it a term turned in solving is one turned in the balance as well.
    let turned =
        mistake.id == TURNED_IN_SOLVING && !board.standing.contains_key(&StepId::MomentSum);
    // Nobody divided by a ratio where none stands below a line.
    let over = mistake.sign == Some(Sign::OverRatio);
    let divided = !over || judgement.evidence.over_ratio || !judgement.target.is_pull();
    (judgement.evidence.angled || !by_angle) && !turned && divided
}

/// The mistake whose terms the balance has, where its numbers were worked out before and show no
/// form: every term is one of the mistake's, and at least one of them is no term of the right
/// balance.
pub(super) fn by_terms(
    board: &Board<'_>,
    judgement: &Judgement,
    instances: &[Instance],
    worlds: &[World],
) -> Option<Named> {
    let evidence = &judgement.evidence;
    if !judgement.target.is_balance() || !evidence.equation || evidence.broken_link {
        return None;
    }
    let fits = |index: &usize| {
        !worlds[*index].anew.is_empty()
            && form::is_shown(judgement, instances[*index].mistake)
            && form::is_typed(board, judgement, &instances[*index])
            && form::has_every_term(board, judgement, &instances[*index].key)
    };
    let mut alike: Vec<usize> = (0..instances.len()).filter(fits).collect();
    let rank = |index: &usize| {
        let instance = &instances[*index];
        (instance.mistake.prior, scope_rank(instance.scope))
    };
    alike.sort_by(|one, other| {
        rank(other)
            .partial_cmp(&rank(one))
            .unwrap_or(Ordering::Equal)
    });
    // Numbers that are those of several mistakes by chance show none; names would show their form.
    let function = |index: &usize| worlds[*index].anew.first();
    let first = alike.first().and_then(function)?;
    let one = alike
        .iter()
        .all(|index| function(index).is_some_and(|other| agree(first, other)));
    if board.key.general.is_some() && (!one || evidence.names_only) {
        return None;
    }
    let instance = alike.remove(0);
    // In a general working each mistake is made in one term, which then stands in the line.
    let (voice, because) = match board.key.general {
        Some(_) => (Voice::Flat, Because::Form),
        None => (Voice::Perhaps, Because::Value),
    };
    Some(Named {
        instance,
        alike,
        voice,
        because,
        share: PERHAPS_SHARE,
        beside: None,
    })
}

/// Mistakes that agree as functions with the typed one, those whose terms are the typed ones first.
fn likeliest_first(
    board: &Board<'_>,
    judgement: &Judgement,
    instances: &[Instance],
    worlds: &[World],
    (lifted, alike): (&Samples, Vec<usize>),
) -> Vec<usize> {
    let fits = |scales: &[f64]| -> Vec<f64> {
        let fit = |index: &usize| {
            let keys = worlds[*index].keys(&instances[*index]);
            let fits = keys.map(|key| form::fit(board, judgement, key, scales));
            fits.fold(0.0, f64::max)
        };
        alike.iter().map(fit).collect()
    };
    let mut fit = fits(&[1.0]);
    // Half of all is what it is where no moments are written that would come to the same.
    let shared = |index: &&usize| instances[**index].mistake.is_share_of_all();
    if let Some(shared) = alike.iter().find(shared).copied()
        && fit.iter().all(|fit| *fit < form::SEEN)
    {
        let others = alike.iter().copied().filter(|index| *index != shared);
        return std::iter::once(shared).chain(others).collect();
    }
    // Multiplied or divided through, but only where nothing stands as it is.
    if fit.iter().all(|fit| *fit < form::SEEN) {
        fit = fits(&form::scales(board));
    }
    let seen = fit.iter().any(|fit| *fit >= form::SEEN);
    // An equation shows its terms, or it shows nothing.
    let of_balance =
        judgement.target == StepId::MomentSum || Some(judgement.target) == board.unknown();
    if judgement.evidence.equation && of_balance && !seen {
        return Vec::new();
    }
    let mut ranked: Vec<(usize, [f64; 9])> = alike
        .iter()
        .zip(fit)
        .map(|(index, fit)| {
            let instance = &instances[*index];
            let mut keys = worlds[*index].keys(instance);
            let literal = keys.any(|key| literal::is_literal(board, judgement, key, instance));
            let here = !seen && instance.shows_at == judgement.target;
            // What an equation says is said before it is solved.
            let solving = judgement.evidence.equation && instance.mistake.skill == Skill::Solving;
            let evidence = &judgement.evidence;
            let signed = match instance.mistake.sign {
                Some(Sign::Tangent) => evidence.tangent,
                Some(Sign::OverRatio) => evidence.over_ratio,
                Some(Sign::Angle) | None => false,
            };
            let rank = [
                f64::from(u8::from(signed)),
                if seen { fit } else { 0.0 },
                f64::from(u8::from(literal)),
                f64::from(u8::from(!solving)),
                f64::from(u8::from(!worlds[*index].is_mended())),
                f64::from(u8::from(here)),
                instance.mistake.prior,
                scope_rank(instance.scope),
                f64::from(u8::from(agrees_with_sign(&worlds[*index], lifted))),
            ];
            (*index, rank)
        })
        .collect();
    ranked.sort_by(|(_, one), (_, other)| other.partial_cmp(one).unwrap_or(Ordering::Equal));
    ranked.into_iter().map(|(index, _)| index).collect()
}

/// True if the mistake gives the typed function, sign and all: of two weights that go against each
/// other, the one whose sign is not the right one is turned.
fn agrees_with_sign(world: &World, lifted: &Samples) -> bool {
    world.functions().any(|function| agree(function, lifted))
}

/// Wider scopes are less likely to be meant by one line.
pub(super) fn scope_rank(scope: Scope) -> f64 {
    match scope {
        Scope::Here(_) | Scope::Force(_) | Scope::Two(..) => 3.0,
        Scope::Pull => 2.0,
        Scope::Weights => 1.0,
        Scope::Everywhere => 0.0,
    }
}
