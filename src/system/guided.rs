//! A problem of the guided walk as a system of one straight body.

use super::{
    ActId, Asked, Bearing, Body, BodyId, Cord, CordEnd, Hold, HoldKind, Leg, Load, LoadKind, Parts,
    Spot, System, Weight, WeightKind,
};
use crate::problem::{
    Direction, ForceId, LoadKind as GuidedLoad, Place, Problem, Side, SupportKind, Tilt, Upright,
};

/// The only body.
const BODY: BodyId = BodyId(0);

impl System {
    /// The same problem in general parts: its body is one leg from the origin.
    pub fn of(problem: &Problem) -> System {
        let parts = problem.parts();
        let body = &parts.body;
        let bearing = match body.tilt {
            Tilt::Level => Bearing::Level(body.towards),
            Tilt::Rising { angle, from } => Bearing::Oblique {
                angle,
                from,
                upright: Upright::Up,
                side: body.towards,
            },
        };
        let on = |place: Place| Spot::On {
            body: BODY,
            leg: 0,
            place,
        };
        let points = |direction: Direction| bearing_of(direction, body.towards);
        let weights = body.mass.map(|mass| Weight {
            symbol: body.weight_symbol.clone(),
            noun: body.noun.clone(),
            body: BODY,
            kind: WeightKind::Point {
                at: on(body.centre),
                mass,
            },
        });
        let loads = parts.loads.iter().map(|load| Load {
            symbol: load.symbol.clone(),
            noun: load.noun.clone(),
            body: BODY,
            kind: match load.kind {
                GuidedLoad::Mass(mass) => LoadKind::Mass {
                    at: on(load.at),
                    mass,
                },
                GuidedLoad::Force { size, direction } => LoadKind::Force {
                    at: on(load.at),
                    size,
                    bearing: points(direction),
                },
            },
        });
        let cords = parts.ropes.iter().map(|rope| Cord {
            symbol: rope.symbol.clone(),
            noun: rope.noun.clone(),
            ends: vec![CordEnd {
                body: BODY,
                at: on(rope.at),
                bearing: points(rope.direction),
            }],
        });
        let holds = parts.supports.iter().map(|support| Hold {
            symbol: support.symbol.clone(),
            noun: support.noun.clone(),
            body: BODY,
            by: None,
            at: on(support.at),
            kind: match support.kind {
                SupportKind::Hinge => HoldKind::Hinge,
                SupportKind::BuiltIn => HoldKind::BuiltIn,
                SupportKind::Roller(direction) => HoldKind::Push(points(direction)),
            },
        });
        let ropes = (0..parts.ropes.len()).map(|index| Asked::Force(ActId::Cord(index)));
        let supports = (0..parts.supports.len()).map(|index| Asked::Force(ActId::Hold(index)));
        System {
            parts: Parts {
                title: parts.title.clone(),
                statement: parts.statement.clone(),
                caution: parts.caution.clone(),
                givens: parts.givens.clone(),
                bodies: vec![Body {
                    noun: body.noun.clone(),
                    start: Spot::Origin,
                    legs: vec![Leg {
                        length: body.length,
                        bearing,
                    }],
                    knot: false,
                }],
                weights: weights.into_iter().collect(),
                loads: loads.collect(),
                cords: cords.collect(),
                holds: holds.collect(),
                asked: ropes.chain(supports).collect(),
                sought: None,
                gravity: parts.gravity,
                accepted_gravity: parts.accepted_gravity.clone(),
                figures: parts.figures,
            },
        }
    }
}

impl From<ForceId> for ActId {
    /// The action that a force of a guided problem is in [`System::of`].
    fn from(force: ForceId) -> ActId {
        match force {
            ForceId::OwnWeight => ActId::Weight(0),
            ForceId::Load(index) => ActId::Load(index),
            ForceId::Rope(index) => ActId::Cord(index),
            ForceId::Support(index) => ActId::Hold(index),
        }
    }
}

fn bearing_of(direction: Direction, towards: Side) -> Bearing {
    match direction {
        Direction::Up => Bearing::Up,
        Direction::Down => Bearing::Down,
        Direction::Level(side) => Bearing::Level(side),
        Direction::Oblique {
            angle,
            from,
            upright,
            side,
        } => Bearing::Oblique {
            angle,
            from,
            upright,
            side,
        },
        // From the part that leads back to the foot, on the body's upper side.
        Direction::FromBody { angle } => Bearing::FromLeg {
            angle,
            body: BODY,
            leg: 0,
            onward: false,
            left: towards == Side::Right,
        },
    }
}
