//! Which force a group of mentions speaks of, once all of it is heard.

use super::group::Group;
use super::place::{Where, acts_at, is_on};
use super::subject::{Subject, is_weight, of_pull, of_reaction, own, roller};
use super::way::Way;
use super::{Invention, Named, Said};
use crate::problem::{ForceId, Problem};

/// What a group says, once it is clear which force it speaks of.
pub(super) fn resolved(problem: &Problem, group: &Group) -> Said {
    let number = group
        .number
        .filter(|number| group.subject.is_some() && is_on(problem, *number));
    let place = group.whereabouts(problem);
    let mut place = match (group.place, number) {
        (None | Some(Where::There), Some(number)) => Some(Where::At(number)),
        _ => place,
    };
    let mut subject = group.subject;
    let mut named = None;
    match (group.onto, subject) {
        (Some(Subject::Body), Some(Subject::Weight)) => subject = Some(own(problem)),
        (Some(Subject::Force(on)), Some(Subject::Weight)) if is_weight(&on) => {
            subject = group.onto;
        }
        (None | Some(Subject::Body), _) => {}
        // "The weight of the mast on the hinge", "the force on the hinge": a place.
        // "The normal force of the walkway on the watcher" acts on the watcher.
        (Some(Subject::Force(ForceId::Load(_))), Some(Subject::Body)) if !group.weight => {
            named = Some(Named::Elsewhere);
        }
        (Some(onto), Some(maker)) => {
            let names = maker != Subject::Any && maker != Subject::Reaction;
            if group.acting && names && !group.weight {
                named = Some(Named::Elsewhere);
            } else {
                place = place.or(place_of(problem, onto, subject));
            }
        }
        (Some(_), None) => {}
    }
    let named = named
        .or(group.doubt.map(Named::OneOrTwo))
        .unwrap_or_else(|| which(problem, subject, group, place));
    Said {
        named,
        place,
        way: (group.way != Way::default()).then_some(group.way),
        denied: group.denied,
        refused: group.refused,
        undecided: group.undecided,
        two_places: group.has_two_places(),
        bare: group.bare && !group.acting && !group.weight,
        pushes: group.pushes,
        lifts: group.lifts,
        moment: group.moment,
        sized: group.sized,
        strange: group.strange || group.strange_first && group.subject.is_none(),
    }
}

fn which(
    problem: &Problem,
    subject: Option<Subject>,
    group: &Group,
    place: Option<Where>,
) -> Named {
    let settled = match subject {
        None => return Named::None,
        Some(Subject::Any) => return at_a_support(problem, place),
        // "The weight of the bag", where there is none: no place tells whose it is.
        Some(Subject::Weight) if group.strange => return Named::SomeWeight,
        Some(Subject::Pull | Subject::Reaction) if group.strange => return Named::SomeForce,
        Some(Subject::Weight) => return some_weight(problem, place),
        Some(Subject::Mass(mass)) => {
            let makes_a_weight = group.weight || group.acting || group.onto.is_some();
            match (makes_a_weight, mass) {
                (false, mass) => return Named::Mass(mass),
                (true, None) => return some_weight(problem, place),
                (true, Some(force)) => Subject::Force(force),
            }
        }
        // The weight of the ground or of a tower acts on these.
        Some(Subject::Behind(_)) if group.weight => return Named::Elsewhere,
        Some(Subject::Behind(behind)) => {
            let hinge = match of_reaction(problem) {
                Subject::Force(force) if behind.hinge => Some(force),
                _ => None,
            };
            let there = |force: &ForceId| match place {
                Some(Where::At(metres)) => acts_at(problem, *force, metres),
                _ => group.way.open && !behind.rope,
            };
            return match hinge.filter(there) {
                Some(force) => Named::Force(force),
                None => Named::Behind(hinge),
            };
        }
        Some(Subject::Pull) => of_pull(problem),
        Some(Subject::Reaction) => roller(problem)
            .filter(|force| matches!(place, Some(Where::At(at)) if acts_at(problem, *force, at)))
            .map_or_else(|| of_reaction(problem), Subject::Force),
        Some(Subject::Body) => own(problem),
        // "The normal reaction at the hinge" is the hinge's; at the foot, it is asked through what.
        Some(contact @ Subject::Invented(Invention::Contact)) => match at_a_support(problem, place)
        {
            Named::Force(force) if group.beside == Some(Subject::Force(force)) => {
                Subject::Force(force)
            }
            Named::Force(force) => return Named::Behind(Some(force)),
            _ => contact,
        },
        Some(subject) => subject,
    };
    match settled {
        Subject::Force(force) => Named::Force(force),
        Subject::Invented(kind) => Named::Invented(kind),
        _ => Named::SomeForce,
    }
}

/// A force named twice in one line is one force, unless its two places or ways differ.
pub(super) fn with_one_more(mut all: Vec<Said>, more: Said) -> Vec<Said> {
    let same = |known: &&mut Said| {
        matches!(more.named, Named::Force(_))
            && known.named == more.named
            && (known.place.is_none() || more.place.is_none())
            && (known.way.is_none() || more.way.is_none())
    };
    match all.iter_mut().find(same) {
        Some(known) => {
            known.place = known.place.or(more.place);
            known.way = known.way.or(more.way);
            known.denied |= more.denied;
            known.refused |= more.refused;
            known.undecided |= more.undecided;
            known.two_places |= more.two_places;
            known.pushes |= more.pushes;
            known.lifts |= more.lifts;
            known.moment |= more.moment;
            known.sized |= more.sized;
            known.bare &= more.bare;
        }
        None => all.push(more),
    }
    all
}

/// The place by which a thing is meant: "at the hinge", "where the dummy hangs", "at the ground".
/// What `of` asks matters where a thing stands behind both a hinge and a rope.
pub(super) fn place_of(problem: &Problem, thing: Subject, of: Option<Subject>) -> Option<Where> {
    let at_force = |force: ForceId| {
        let at = problem.force(force)?.at;
        Some(Where::At(problem.distance(at, &problem.values())))
    };
    match thing {
        Subject::Force(ForceId::OwnWeight) => None,
        Subject::Force(force) => at_force(force),
        Subject::Reaction => match of_reaction(problem) {
            Subject::Force(force) => at_force(force),
            _ => None,
        },
        Subject::Behind(behind) => {
            let rope = matches!(of, Some(Subject::Force(ForceId::Rope(_)) | Subject::Pull));
            match of_reaction(problem) {
                Subject::Force(hinge) if behind.hinge && !(behind.rope && rope) => at_force(hinge),
                _ => Some(Where::Off),
            }
        }
        _ => None,
    }
}

/// "The force at the hinge" is the hinge's.
fn at_a_support(problem: &Problem, place: Option<Where>) -> Named {
    let Some(Where::At(metres)) = place else {
        return Named::SomeForce;
    };
    let here = problem
        .forces()
        .into_iter()
        .map(|force| force.id)
        .filter(|id| acts_at(problem, *id, metres))
        .collect::<Vec<_>>();
    match here.as_slice() {
        [only @ ForceId::Support(_)] => Named::Force(*only),
        _ => Named::SomeForce,
    }
}

/// A weight of nothing in particular: the only one, or the only one that acts at the place said.
fn some_weight(problem: &Problem, place: Option<Where>) -> Named {
    // "About the middle" is the middle's.
    let point = match place {
        Some(Where::At(metres)) => Some(metres),
        Some(Where::Within(stretch)) => stretch.point(),
        _ => None,
    };
    let weights: Vec<ForceId> = problem
        .forces()
        .iter()
        .map(|force| force.id)
        .filter(is_weight)
        .collect();
    let here: Vec<ForceId> = match point {
        Some(metres) => weights
            .iter()
            .copied()
            .filter(|id| acts_at(problem, *id, metres))
            .collect(),
        None => Vec::new(),
    };
    match (weights.as_slice(), here.as_slice()) {
        ([only], _) | (_, [only]) => Named::Force(*only),
        ([], _) => Named::Invented(Invention::OwnWeight),
        _ => Named::SomeWeight,
    }
}
