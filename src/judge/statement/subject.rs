//! What a force was called, before it is clear which it is; and two names joined into one.

use super::Invention;
use super::mention::Mention;
use super::scene::Behind;
use crate::problem::{ForceId, Problem};

/// What a force was called.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Subject {
    Force(ForceId),
    Pull,
    Reaction,
    Weight,
    Body,
    /// A mass, which is no force.
    Mass(Option<ForceId>),
    /// What stands behind a hinge or a rope.
    Behind(Behind),
    Any,
    Invented(Invention),
}

/// What a mention calls a force, if it does.
pub(super) fn subject(problem: &Problem, mention: Mention) -> Option<Subject> {
    Some(match mention {
        Mention::Force(force) => Subject::Force(force),
        Mention::Rope => of_pull(problem),
        Mention::Pull => Subject::Pull,
        Mention::Hinge => of_reaction(problem),
        Mention::Reaction => Subject::Reaction,
        Mention::Weight | Mention::Earth => Subject::Weight,
        Mention::OwnWeight => own(problem),
        Mention::Body => Subject::Body,
        Mention::Mass(force) => Subject::Mass(force),
        Mention::Behind(behind) => Subject::Behind(behind),
        Mention::AnyForce | Mention::Push => Subject::Any,
        // A square push is that of a roller, where one holds the body.
        Mention::Invented(Invention::Contact) if roller(problem).is_some() => Subject::Reaction,
        Mention::Invented(kind) => Subject::Invented(kind),
        _ => return None,
    })
}

/// Two names of one force as one, or `None` where the second begins another force.
pub(super) fn joined(current: Subject, next: Subject, of: bool, parted: bool) -> Option<Subject> {
    use Subject::{Any, Behind, Body, Force, Invented, Mass, Pull, Reaction, Weight};
    let weight = |force: ForceId| matches!(force, ForceId::OwnWeight | ForceId::Load(_));
    let support = |subject: Subject| matches!(subject, Force(ForceId::Support(_)) | Reaction);
    match (current, next) {
        (current, next) if current == next => Some(current),
        (Body, Force(ForceId::OwnWeight)) | (Force(ForceId::OwnWeight), Body) => {
            Some(Force(ForceId::OwnWeight))
        }
        // "The mass of the dummy"; but "the crate of mass m1" is the crate.
        (Mass(None), Body) | (Body, Mass(None)) if !(of && next == Mass(None)) => {
            Some(Mass(Some(ForceId::OwnWeight)))
        }
        (Mass(None), Force(force)) if weight(force) => Some(Mass(Some(force))),
        (Force(force), Mass(None)) if weight(force) && !of => Some(Mass(Some(force))),
        (Mass(Some(_)), Mass(None)) | (Mass(Some(ForceId::OwnWeight)), Body) => Some(current),
        (Mass(None), Mass(Some(_))) | (Body, Mass(Some(ForceId::OwnWeight))) => Some(next),
        (Mass(Some(mass)), Force(force)) | (Force(force), Mass(Some(mass))) if mass == force => {
            Some(current)
        }
        (current, Mass(None)) if of => Some(current),
        // "The force of the mass" is its weight.
        (Weight | Any | Pull, Mass(_)) => Some(next),
        (Mass(_), Weight) => Some(current),
        (current, Any) => Some(current),
        (Any, next) => Some(next),
        // "Weight, mast" and "weight of the mast" alike.
        (Weight, Body) | (Body, Weight) => Some(Body),
        (Weight, Force(force)) if weight(force) => Some(next),
        (Force(force), Weight) if weight(force) => Some(current),
        // "Tension, rope": what it is called, and what makes it.
        (Pull, Force(ForceId::Rope(_))) => Some(next),
        (Force(ForceId::Rope(_)), Pull) => Some(current),
        (Reaction, next) if support(next) => Some(next),
        (Reaction, Body) if of => Some(current),
        (current, Reaction) if support(current) => Some(current),
        _ if parted => None,
        (Weight, Behind(_)) => Some(next),
        (Weight, Force(_)) if of => Some(Invented(Invention::Weightless)),
        (Force(_), Weight) => Some(Invented(Invention::Weightless)),
        (current, Pull) => Some(current),
        (Behind(_), Reaction | Invented(Invention::Contact)) => Some(current),
        (Invented(_), Reaction) => Some(current),
        (Behind(_), Invented(_)) => Some(next),
        (Force(_), Behind(_)) => Some(current),
        (Pull | Reaction, next) => Some(next),
        // "The normal force of the hinge" is the hinge's; "friction of the rope" stays friction.
        (Invented(Invention::Contact), next) => Some(next),
        (Behind(_), Force(ForceId::Rope(_) | ForceId::Support(_))) => Some(next),
        (Invented(_), _) if of => Some(current),
        (current, Invented(Invention::Contact) | Body) => Some(current),
        (Body, Force(_)) if of => Some(next),
        (current, Invented(_)) if of => Some(current),
        _ => None,
    }
}

/// The force that a name most likely means, to see whether a direction could be its own.
pub(super) fn likely(problem: &Problem, subject: Subject) -> Option<ForceId> {
    let settled = match subject {
        Subject::Weight | Subject::Mass(None) => {
            return problem
                .forces()
                .iter()
                .map(|force| force.id)
                .find(is_weight);
        }
        Subject::Mass(Some(force)) => Subject::Force(force),
        Subject::Body => own(problem),
        Subject::Pull => of_pull(problem),
        Subject::Reaction => of_reaction(problem),
        subject => subject,
    };
    match settled {
        Subject::Force(force) => Some(force),
        _ => None,
    }
}

pub(super) fn is_weight(force: &ForceId) -> bool {
    matches!(force, ForceId::OwnWeight | ForceId::Load(_))
}

pub(super) fn own(problem: &Problem) -> Subject {
    match problem.force(ForceId::OwnWeight) {
        Some(_) => Subject::Force(ForceId::OwnWeight),
        None => Subject::Invented(Invention::OwnWeight),
    }
}

pub(super) fn of_pull(problem: &Problem) -> Subject {
    let rope = |id: &ForceId| matches!(id, ForceId::Rope(_));
    let first = problem.forces().iter().map(|force| force.id).find(rope);
    first.map_or(Subject::Invented(Invention::Pull), Subject::Force)
}

/// The hinge, or what else holds the body.
pub(super) fn of_reaction(problem: &Problem) -> Subject {
    let supports = || {
        let forces = problem.forces().into_iter().map(|force| force.id);
        forces.filter(|id| matches!(id, ForceId::Support(_)))
    };
    let hinge = supports().find(|id| super::may_stay_open(problem, *id));
    let first = hinge.or_else(|| supports().next());
    first.map_or(Subject::Invented(Invention::Contact), Subject::Force)
}

pub(super) fn roller(problem: &Problem) -> Option<ForceId> {
    let mut forces = problem.forces().into_iter().map(|force| force.id);
    forces.find(|id| matches!(id, ForceId::Support(_)) && !super::may_stay_open(problem, *id))
}
