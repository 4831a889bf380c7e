//! Which way the forces of a walk point: what a word of direction behind a value is held against.

use super::seek::sized_by;
use super::{Meaning, Quantity, Rule, Working};
use crate::key::{Axis, General, Nature, StepId};
use crate::plane::Vector;
use crate::statics::solve_system;
use crate::system::{ActId, Bearing, Effect, Friction, Hold, HoldKind, Line, Size, System};

/// A part of a line below this share of it points nowhere.
const NONE: f64 = 1e-9;

/// Keeps the way of every quantity that has one, at these values.
pub(super) fn add_ways(
    general: &mut General,
    (system, working, values): (&System, &Working, &[f64]),
    steps: &[StepId],
) {
    let step = |id: Quantity| {
        let is_it = |step: &&StepId| matches!(step, StepId::Found(_, index) if *index == id.0);
        steps.iter().find(is_it).copied()
    };
    for id in steps {
        let StepId::Found(nature, index) = id else {
            continue;
        };
        let Some(named) = working.named(Quantity(*index)) else {
            continue;
        };
        // A given force is called by its size, too; its way stands in the problem.
        let solved = matches!(named.rule, Rule::Solved(_));
        let way = match named.meaning {
            Meaning::Force(act) if solved || !matches!(act, ActId::Load(_)) => {
                line_of(system, act, values)
            }
            Meaning::Resultant(act) => line_of(system, act, values),
            Meaning::Sought => sought_force(system).and_then(|act| line_of(system, act, values)),
            Meaning::FrictionNeeded(act) => line_of(system, act, values).map(Vector::quarter_turn),
            Meaning::Friction(act) => limiting_friction(system, act, values),
            Meaning::Part(act, Axis::Horizontal) => {
                line_of(system, act, values).map(|line| Vector::new(way_along(line.x), 0.0))
            }
            Meaning::Part(act, Axis::Vertical) => {
                line_of(system, act, values).map(|line| Vector::new(0.0, way_along(line.y)))
            }
            _ => None,
        };
        if let Some(way) = way {
            general.ways.insert(*id, way);
        }
        let ends = ends_of(system, named.meaning, values);
        if !ends.is_empty() {
            general.ends.insert(*id, ends);
        }
        let sought = || sought_force(system).filter(|_| named.meaning == Meaning::Sought);
        if let Some(act) = act_of(named.meaning).or_else(sought) {
            let bodies = bodies_of(system, act);
            if let (ActId::Hold(_), [first, second]) = (act, bodies.as_slice()) {
                let both = [first.clone(), second.clone()];
                general.between.insert(*id, both);
            }
            general.bodies.insert(*id, bodies);
        }
        let of = match named.meaning {
            Meaning::Size(act) if *nature == Nature::Size => act,
            Meaning::Direction(act) => act,
            _ => continue,
        };
        let part = |axis| step(working.find(Meaning::Component(of, axis))?);
        let parts = part(Axis::Horizontal).zip(part(Axis::Vertical));
        if let Some((level, upright)) = parts {
            general.parts.insert(*id, [level, upright]);
        }
    }
}

/// The action that a quantity is the force, a part, the size or the direction of.
fn act_of(meaning: Meaning) -> Option<ActId> {
    match meaning {
        Meaning::Weight(act)
        | Meaning::Resultant(act)
        | Meaning::Part(act, _)
        | Meaning::Friction(act)
        | Meaning::Push(act)
        | Meaning::Force(act)
        | Meaning::Component(act, _)
        | Meaning::FrictionNeeded(act)
        | Meaning::Couple(act)
        | Meaning::Size(act)
        | Meaning::Direction(act) => Some(act),
        _ => None,
    }
}

/// The one given force whose size is sought.
fn sought_force(system: &System) -> Option<ActId> {
    let given = system.parts().sought.as_ref()?.given;
    match sized_by(system, given).as_slice() {
        [(act, Size::Given(_))] => Some(*act),
        _ => None,
    }
}

/// The nouns of the bodies that something acts on, first the one for which it is named.
fn bodies_of(system: &System, act: ActId) -> Vec<String> {
    let mut effects = system.act(act).map_or_else(Vec::new, |act| act.on);
    effects.sort_by_key(|effect| effect.reversed);
    let bodies = effects
        .iter()
        .filter_map(|effect| system.parts().bodies.get(effect.body.0));
    bodies.map(|body| body.noun.clone()).collect()
}

fn way_along(part: f64) -> f64 {
    if part.abs() < NONE {
        0.0
    } else {
        part.signum()
    }
}

/// What an action does where it is told for: on its body, and not the reverse of it on another.
/// `None` for what acts at several places by itself, as a rope does.
fn effect_of(system: &System, act: ActId) -> Option<Effect> {
    let found = system.act(act)?;
    let mut own = found.on.iter().filter(|effect| !effect.reversed);
    let first = own.next()?;
    own.next().is_none().then(|| first.clone())
}

/// How a rope with several ends pulls at each of them, or a part of its pull; of other things none.
fn ends_of(system: &System, meaning: Meaning, values: &[f64]) -> Vec<(String, Vector)> {
    let (act, axis) = match meaning {
        Meaning::Force(act) => (act, None),
        Meaning::Part(act, axis) => (act, Some(axis)),
        _ => return Vec::new(),
    };
    let ActId::Cord(index) = act else {
        return Vec::new();
    };
    let cord = system.parts().cords.get(index);
    let ends = cord.map_or(&[][..], |cord| cord.ends.as_slice());
    if ends.len() < 2 {
        return Vec::new();
    }
    let pulls = ends.iter().filter_map(|end| {
        let body = system.parts().bodies.get(end.body.0)?;
        let pull = system.unit(&end.bearing, &end.at, values);
        let part = match axis {
            None => pull,
            Some(Axis::Horizontal) => Vector::new(way_along(pull.x), 0.0),
            Some(Axis::Vertical) => Vector::new(0.0, way_along(pull.y)),
        };
        (part.x != 0.0 || part.y != 0.0).then(|| (body.noun.clone(), part))
    });
    pulls.collect()
}

/// The line along which a force acts where its value is positive; of a contact its push.
fn line_of(system: &System, act: ActId, values: &[f64]) -> Option<Vector> {
    let effect = effect_of(system, act)?;
    if let Some((hold, push)) = contact_of(system, act) {
        return Some(system.unit(push, &hold.at, values));
    }
    match &effect.line {
        Line::Known(bearing) => Some(system.unit(bearing, &effect.at, values)),
        Line::Open | Line::Couple(_) => None,
    }
}

/// The way of friction at its limit; where it only slips at what is sought, it acts the way in
/// which it is needed.
fn limiting_friction(system: &System, act: ActId, values: &[f64]) -> Option<Vector> {
    let (hold, push) = contact_of(system, act)?;
    let (HoldKind::Rough { friction, .. } | HoldKind::Base { friction, .. }) = &hold.kind else {
        return None;
    };
    match friction {
        Friction::Limiting { bearing, .. } => Some(system.unit(bearing, &hold.at, values)),
        Friction::AsNeeded | Friction::UpTo(_) => {
            let solution = solve_system(system, values, system.gravity()).ok()?;
            let (_, needed) = solution.reaction(act)?.contact?;
            let left = system.unit(push, &hold.at, values).quarter_turn();
            Some(left * way_along(needed))
        }
    }
}

/// The hold of a rough contact, and the way of its push.
fn contact_of(system: &System, act: ActId) -> Option<(&Hold, &Bearing)> {
    let ActId::Hold(index) = act else {
        return None;
    };
    let hold = system.parts().holds.get(index)?;
    match &hold.kind {
        HoldKind::Rough { push, .. } | HoldKind::Base { push, .. } => Some((hold, push)),
        _ => None,
    }
}
