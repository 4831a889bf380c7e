//! Several thoughts behind one form: where numbers may stand for several things, none is proved.

use super::form::NO_DISTANCES;
use super::term_by_term::Fit;
use super::{Because, Named, Voice};
use crate::judge::Judgement;
use crate::key::StepId;
use crate::mistakes::{Instance, MASS_OF_ANOTHER, Mistake, Sign, Skill};

/// So many families are named at most.
const MOST_NAMED: usize = 3;

/// Two families of which what is said of the one is true of the other as well, or that are told apart
/// otherwise: two masses from two distances by the names of the weights.
const SAY_THE_SAME: [[&str; 2]; 6] = [
    ["force-missing", "term-missing"],
    ["own-weight-place", "load-place"],
    ["own-weight-missing", "term-missing"],
    ["turning-sense", "solving"],
    ["moment-for-force", "no-distances"],
    ["load-place", MASS_OF_ANOTHER],
];

/// True for two thoughts of which what is said of the one is true of the other as well.
pub(super) fn say_the_same(one: &Mistake, other: &Mistake) -> bool {
    let families = [one.family, other.family];
    let both = |pair: &[&str; 2]| families.iter().all(|family| pair.contains(family));
    one.family == other.family || SAY_THE_SAME.iter().any(both)
}

/// True where another thought, of another family, is the typed form as literally as the first: a force
/// told by whole forces may lack its distances or the hinge's force.
pub(super) fn has_rival(
    judgement: &Judgement,
    instances: &[Instance],
    fits: &[(usize, Fit)],
) -> bool {
    let Some(((first, fit), others)) = fits.split_first() else {
        return false;
    };
    let mistake = |index: usize| instances[index].mistake;
    let of_ratio = |index: usize| matches!(mistake(index).skill, Skill::Angles | Skill::Resolving);
    // Where none stands, none is that of another angle.
    let shown = !judgement.evidence.typed_ratios.is_empty();
    let mut rivals = others.iter().filter(|(other, as_literal)| {
        let ratios = shown && of_ratio(*first) && of_ratio(*other);
        let counts = judgement.target.is_pull() && !judgement.evidence.equation || ratios;
        counts && as_literal >= fit && !say_the_same(mistake(*first), mistake(*other))
    });
    // Names of whole forces alone have no distance, whatever else was thought.
    let whole = mistake(*first).family == NO_DISTANCES && judgement.evidence.unresolved;
    *fit > Fit::Not && !whole && rivals.next().is_some()
}

/// The other thought, where a moment is the product of one force's mass and another's distance and no
/// weight is told by its name: two masses exchanged are then written as two distances are.
pub(super) fn mass_or_distance(
    judgement: &Judgement,
    instances: &[Instance],
    (first, alike): (usize, &mut Vec<usize>),
) -> Option<Named> {
    const EXCHANGED: [&str; 2] = ["distances-exchanged", "masses-exchanged"];
    let id = |index: usize| instances[index].mistake.id;
    let named = |step: &StepId| matches!(step, StepId::Weight(_));
    if !EXCHANGED.contains(&id(first)) || judgement.evidence.rests_on.iter().any(named) {
        return None;
    }
    let other = |index: &usize| EXCHANGED.contains(&id(*index)) && id(*index) != id(first);
    let instance = *alike.iter().find(|index| other(index))?;
    let family = instances[instance].mistake.family;
    alike.retain(|index| instances[*index].mistake.family != family);
    Some(Named {
        instance,
        alike: Vec::new(),
        voice: Voice::Perhaps,
        because: Because::Form,
        share: 1.0,
        beside: None,
    })
}

/// Numbers that may stand for several things show several thoughts: then none is proved, and each
/// has its share by its prior.
pub(super) fn one_thought_each(found: &mut Vec<Named>, instances: &[Instance]) {
    let family = |named: &Named| instances[named.instance].mistake.family;
    let mut kept: Vec<Named> = Vec::new();
    for named in found.drain(..) {
        let known = kept.iter().any(|one| {
            let mut alike = one.alike.iter();
            family(one) == family(&named)
                || alike.any(|index| instances[*index].mistake.family == family(&named))
        });
        if !known {
            kept.push(named);
        }
    }
    kept.truncate(MOST_NAMED);
    // One that is named by its form only has no prior, and counts as the least likely here.
    let prior = |named: &Named| instances[named.instance].mistake.prior.max(1.0);
    let whole: f64 = kept.iter().map(prior).sum();
    if kept.len() > 1 {
        for named in &mut kept {
            named.voice = Voice::Perhaps;
            named.share = prior(named) / whole;
        }
        kept.sort_by(|one, other| other.share.total_cmp(&one.share));
    }
    *found = kept;
}

/// A line in which nothing is divided by a ratio: of two thoughts of one form the one that multiplied
/// by it comes first.
pub(super) fn multiplied_first(judgement: &Judgement, instances: &[Instance], alike: &mut [usize]) {
    let divides = |index: usize| instances[index].mistake.sign == Some(Sign::OverRatio);
    let first = alike.first().copied();
    if judgement.evidence.over_ratio || !first.is_some_and(divides) {
        return;
    }
    let solved = |index: &usize| instances[*index].mistake.skill == Skill::Solving;
    if let Some(at) = alike.iter().position(solved) {
        alike.swap(0, at);
    }
}
