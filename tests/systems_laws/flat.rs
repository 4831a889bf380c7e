//! The same system told by coordinates and angles from the x axis alone, turned, mirrored or
//! scaled as a whole.

use leverwright::plane::Vector;
use leverwright::problem::{Given, GivenId, Side};
use leverwright::system::{
    ActId, Bearing, Body, Coordinate, CordEnd, Friction, HoldKind, Line, Load, LoadKind, Parts,
    Size, Spot, System, Turning,
};
use leverwright::text::Symbol;
use leverwright::units::Dimension;
use std::f64::consts::TAU;

/// What is done to the whole scene: mirrored at the y axis, then turned about the origin; lengths
/// and forces multiplied.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Change {
    pub(crate) mirror: bool,
    pub(crate) turn: f64,
    pub(crate) length: f64,
    pub(crate) force: f64,
}

impl Change {
    /// None.
    pub(crate) const NONE: Change = Change {
        mirror: false,
        turn: 0.0,
        length: 1.0,
        force: 1.0,
    };

    /// A direction or a point of the old scene in the new one, not scaled.
    pub(crate) fn vector(&self, old: Vector) -> Vector {
        let x = if self.mirror { -old.x } else { old.x };
        let (sine, cosine) = (libm::sin(self.turn), libm::cos(self.turn));
        Vector::new(x * cosine - old.y * sine, x * sine + old.y * cosine)
    }

    /// A couple of the old scene in the new one.
    pub(crate) fn couple(&self, old: f64) -> f64 {
        let sign = if self.mirror { -1.0 } else { 1.0 };
        sign * old * self.length * self.force
    }

    /// The action that an action of the old scene became.
    pub(crate) fn id(system: &System, old: ActId) -> ActId {
        match old {
            ActId::Weight(index) => ActId::Load(index),
            ActId::Load(index) => ActId::Load(index + system.parts().weights.len()),
            other => other,
        }
    }
}

struct Flat<'s> {
    system: &'s System,
    values: Vec<f64>,
    change: Change,
    givens: Vec<Given>,
}

/// The system with everything told by numbers, changed as a whole.
pub(crate) fn flat(system: &System, change: Change) -> System {
    let mut flat = Flat {
        system,
        values: system.values(),
        change,
        givens: Vec::new(),
    };
    let told = system.parts();
    let mut parts = Parts {
        weights: Vec::new(),
        loads: Vec::new(),
        bodies: (told.bodies.iter())
            .map(|body| Body {
                start: Spot::Origin,
                legs: Vec::new(),
                ..body.clone()
            })
            .collect(),
        ..told.clone()
    };
    for act in system.acts() {
        if matches!(act.id, ActId::Weight(_) | ActId::Load(_)) {
            parts.loads.push(flat.load(&act));
        }
    }
    for cord in &mut parts.cords {
        for end in &mut cord.ends {
            *end = CordEnd {
                body: end.body,
                bearing: flat.bearing(&end.bearing, &end.at),
                at: flat.spot(&end.at),
            };
        }
    }
    for hold in &mut parts.holds {
        hold.kind = flat.kind(&hold.kind, &hold.at);
        hold.at = flat.spot(&hold.at);
    }
    parts.givens = flat.givens;
    System::new(parts).unwrap()
}

impl Flat<'_> {
    fn given(&mut self, value: f64, dimension: Dimension) -> GivenId {
        let symbol = Symbol::new(format!("k_{}", self.givens.len()));
        self.givens.push(Given {
            symbol,
            meaning: String::new(),
            value,
            written: String::new(),
            dimension,
        });
        GivenId(self.givens.len() - 1)
    }

    fn spot(&mut self, old: &Spot) -> Spot {
        let at = self.change.vector(self.system.point(old, &self.values)) * self.change.length;
        let x = Coordinate(vec![(1.0, self.given(at.x, Dimension::LENGTH))]);
        let y = Coordinate(vec![(1.0, self.given(at.y, Dimension::LENGTH))]);
        Spot::At { x, y }
    }

    fn bearing(&mut self, old: &Bearing, at: &Spot) -> Bearing {
        let unit = self.system.unit(old, at, &self.values);
        let angle = self.change.vector(unit).angle().rem_euclid(TAU);
        if angle > 0.0 && angle < TAU {
            let angle = self.given(angle, Dimension::ANGLE);
            Bearing::FromAxis { angle }
        } else {
            Bearing::Level(Side::Right)
        }
    }

    fn load(&mut self, act: &leverwright::system::Act<'_>) -> Load {
        let effect = &act.on[0];
        let size = match act.size {
            Size::Weight(mass) => self.values[mass.0] * self.system.gravity(),
            Size::Lamina(weight) => {
                let lamina = self.system.lamina(weight).unwrap();
                lamina.mass(&self.values) * self.system.gravity()
            }
            Size::Given(size) => self.values[size.0],
            Size::Spread {
                length,
                from,
                to,
                first,
                last,
            } => {
                let along =
                    |place: leverwright::problem::Place| place.distance(length, &self.values);
                let value = |given: Option<GivenId>| given.map_or(0.0, |id| self.values[id.0]);
                0.5 * (value(first) + value(last)) * (along(to) - along(from)).abs()
            }
            Size::Unknown => 0.0,
        };
        let kind = match &effect.line {
            Line::Known(bearing) => LoadKind::Force {
                at: self.spot(&effect.at),
                size: self.given(size * self.change.force, Dimension::FORCE),
                bearing: self.bearing(bearing, &effect.at),
            },
            Line::Couple(turning) => {
                let sign = turning.map_or(1.0, Turning::sign);
                let anticlockwise = self.change.couple(sign) > 0.0;
                let size = size * self.change.force * self.change.length;
                LoadKind::Couple {
                    size: self.given(size, Dimension::MOMENT),
                    turning: if anticlockwise {
                        Turning::Anticlockwise
                    } else {
                        Turning::Clockwise
                    },
                }
            }
            Line::Open => unreachable!("a load has a line"),
        };
        Load {
            symbol: act.symbol.clone(),
            noun: act.noun.to_owned(),
            body: effect.body,
            kind,
        }
    }

    fn friction(&mut self, old: &Friction, at: &Spot) -> Friction {
        let number =
            |flat: &mut Self, old: GivenId| flat.given(flat.values[old.0], Dimension::NUMBER);
        match old {
            Friction::AsNeeded => Friction::AsNeeded,
            Friction::UpTo(old) => Friction::UpTo(number(self, *old)),
            Friction::Limiting {
                coefficient,
                bearing,
            } => Friction::Limiting {
                coefficient: number(self, *coefficient),
                bearing: self.bearing(bearing, at),
            },
        }
    }

    fn kind(&mut self, old: &HoldKind, at: &Spot) -> HoldKind {
        match old {
            HoldKind::Push(bearing) => HoldKind::Push(self.bearing(bearing, at)),
            HoldKind::Line(bearing) => HoldKind::Line(self.bearing(bearing, at)),
            HoldKind::Rough { push, friction } => HoldKind::Rough {
                push: self.bearing(push, at),
                friction: self.friction(friction, at),
            },
            HoldKind::Base {
                push,
                friction,
                width,
            } => HoldKind::Base {
                push: self.bearing(push, at),
                friction: self.friction(friction, at),
                width: {
                    let width = self.values[width.0] * self.change.length;
                    self.given(width, Dimension::LENGTH)
                },
            },
            other => other.clone(),
        }
    }
}
