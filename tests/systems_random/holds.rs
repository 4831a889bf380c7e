//! Ropes and holds of a random system.

use super::Family;
use super::maker::Maker;
use leverwright::problem::{GivenId, Side, Upright};
use leverwright::system::{Bearing, BodyId, Cord, CordEnd, Friction, Hold, HoldKind, Spot, System};
use std::f64::consts::PI;

/// Whether a change was made.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(super) enum Flipped {
    Yes,
    No,
}

impl Maker<'_> {
    /// Holds that count to three unknowns a body and two a knot, to more, or to fewer.
    pub(super) fn holds(&mut self, family: Family) {
        let bodies = self.parts.bodies.len();
        let mut due: Vec<usize> = (0..bodies).map(|index| self.due(BodyId(index))).collect();
        // Two bodies that lean on each other at a hinge, each held by two unknowns more.
        if bodies >= 2 && due[0] == 3 && due[1] == 3 && self.stream.chance(40) {
            let at = self.spot(BodyId(1));
            self.hold(BodyId(1), Some(BodyId(0)), at, HoldKind::Hinge);
            due[0] = 2;
            due[1] = 2;
        }
        match family {
            Family::Over => {
                let body = self.stream.below(bodies as u64) as usize;
                due[body] += 1 + self.stream.weighted(&[3, 1]);
            }
            Family::Under => {
                let body = self.stream.below(bodies as u64) as usize;
                due[body] -= 1;
            }
            _ => {}
        }
        for (index, count) in due.into_iter().enumerate() {
            self.meet(BodyId(index), count);
        }
    }

    fn due(&self, body: BodyId) -> usize {
        if self.parts.bodies[body.0].knot { 2 } else { 3 }
    }

    /// Adds unknowns to a body until they are so many.
    fn meet(&mut self, body: BodyId, count: usize) {
        let knot = self.parts.bodies[body.0].knot;
        let mut left = count;
        while left > 0 {
            let weights = [
                if left >= 3 && !knot { 30 } else { 0 },
                if left >= 2 { 45 } else { 0 },
                35,
            ];
            left -= match self.stream.weighted(&weights) {
                0 => self.three(body),
                1 => self.two(body),
                _ => self.one(body),
            };
        }
    }

    /// A body before this one, or the ground.
    fn other(&mut self, body: BodyId) -> Option<BodyId> {
        (body.0 > 0 && self.stream.chance(40))
            .then(|| BodyId(self.stream.below(body.0 as u64) as usize))
    }

    fn joint(&mut self, body: BodyId) -> (Option<BodyId>, Spot) {
        let by = self.other(body);
        let knot = self.parts.bodies[body.0].knot;
        let at = match by {
            Some(by) if !knot && (self.parts.bodies[by.0].knot || self.stream.chance(50)) => {
                self.spot(by)
            }
            // A knot on a knot would have to be at one point: held by the ground instead.
            Some(by) if knot && self.parts.bodies[by.0].knot => return (None, self.spot(body)),
            _ => self.spot(body),
        };
        (by, at)
    }

    fn hold(&mut self, body: BodyId, by: Option<BodyId>, at: Spot, kind: HoldKind) {
        let symbol = self.name("H");
        self.parts.holds.push(Hold {
            symbol,
            noun: "hold".to_owned(),
            body,
            by,
            at,
            kind,
        });
    }

    fn coefficient(&mut self) -> GivenId {
        let number = self.stream.between(5, 140);
        self.given("μ", number, 2, "")
    }

    /// A push and a direction square to it.
    fn contact(&mut self) -> (Bearing, Bearing) {
        let legged = (0..self.parts.bodies.len())
            .map(BodyId)
            .rfind(|body| self.legs(*body) > 0);
        let flip = self.stream.chance(50);
        match legged {
            Some(body) if self.stream.chance(40) => (
                Bearing::Across {
                    body,
                    leg: 0,
                    left: self.stream.chance(50),
                },
                Bearing::Along {
                    body,
                    leg: 0,
                    onward: flip,
                },
            ),
            _ if !self.square && self.stream.chance(40) => {
                let number = self.stream.between(1, 899);
                let push = self.given("α", number, 1, "°");
                let across = self.given("α", number + if flip { 900 } else { 2700 }, 1, "°");
                (
                    Bearing::FromAxis { angle: push },
                    Bearing::FromAxis { angle: across },
                )
            }
            _ => {
                let side = if flip { Side::Left } else { Side::Right };
                match self.stream.weighted(&[3, 1]) {
                    0 => (Bearing::Up, Bearing::Level(side)),
                    _ => (Bearing::Level(side), Bearing::Up),
                }
            }
        }
    }

    fn friction(&mut self, across: Option<Bearing>) -> Friction {
        match across {
            Some(bearing) => Friction::Limiting {
                coefficient: self.coefficient(),
                bearing,
            },
            None if self.stream.chance(30) => Friction::AsNeeded,
            None => Friction::UpTo(self.coefficient()),
        }
    }

    /// A contact; unused angles must not stay behind, so friction's own direction is only drawn
    /// where it is at its limit.
    fn rough(&mut self, limiting: bool, base: bool) -> HoldKind {
        let (push, across) = if limiting {
            let (push, across) = self.contact();
            (push, Some(across))
        } else {
            (self.bearing(), None)
        };
        let friction = self.friction(across);
        if base {
            let width = self.length(20, 200);
            return HoldKind::Base {
                push,
                friction,
                width,
            };
        }
        HoldKind::Rough { push, friction }
    }

    fn three(&mut self, body: BodyId) -> usize {
        let (by, at) = self.joint(body);
        let knot_by = by.is_some_and(|by| self.parts.bodies[by.0].knot);
        let kind = if self.stream.chance(50) {
            HoldKind::BuiltIn
        } else {
            self.rough(false, true)
        };
        // A knot takes no couple.
        self.hold(body, by.filter(|_| !knot_by), at, kind);
        3
    }

    fn two(&mut self, body: BodyId) -> usize {
        let (by, at) = self.joint(body);
        let knot = self.parts.bodies[body.0].knot;
        let knots = knot || by.is_some_and(|by| self.parts.bodies[by.0].knot);
        let base = if knots { 0 } else { 8 };
        let kind = match self.stream.weighted(&[55, 35, base]) {
            0 => HoldKind::Hinge,
            1 => self.rough(false, false),
            _ => self.rough(true, true),
        };
        self.hold(body, by, at, kind);
        2
    }

    fn one(&mut self, body: BodyId) -> usize {
        let (knot, many) = (self.parts.bodies[body.0].knot, body.0 > 0);
        let couple = if knot { 0 } else { 5 };
        let weights = [22, if many { 14 } else { 0 }, 8, 20, 20, 11, couple];
        let choice = self.stream.weighted(&weights);
        if choice <= 2 {
            self.rope(body, choice);
            return 1;
        }
        let (by, at) = self.joint(body);
        let kind = match choice {
            3 => HoldKind::Push(self.bearing()),
            4 => HoldKind::Line(self.bearing()),
            5 => self.rough(true, false),
            _ => HoldKind::Couple,
        };
        let knot_by = by.is_some_and(|by| self.parts.bodies[by.0].knot);
        let by = by.filter(|_| choice != 6 || !knot_by);
        self.hold(body, by, at, kind);
        1
    }

    /// A rope to the ground, between two bodies, or over a pulley on this body.
    fn rope(&mut self, body: BodyId, kind: usize) {
        let at = self.spot(body);
        let mut ends = Vec::new();
        let mut end = |body, at: &Spot, bearing| {
            ends.push(CordEnd {
                body,
                at: at.clone(),
                bearing,
            });
        };
        match kind {
            0 => end(body, &at, self.bearing()),
            1 => {
                let other = BodyId(self.stream.below(body.0 as u64) as usize);
                let far = self.spot(other);
                end(body, &at, Bearing::Towards(far.clone()));
                end(other, &far, Bearing::Towards(at.clone()));
            }
            _ => {
                end(body, &at, self.bearing());
                end(body, &at, self.bearing());
                if body.0 > 0 && self.stream.chance(40) {
                    let other = BodyId(self.stream.below(body.0 as u64) as usize);
                    let far = self.spot(other);
                    end(other, &far, Bearing::Towards(at.clone()));
                }
            }
        }
        let symbol = self.name("T");
        self.parts.cords.push(Cord {
            symbol,
            noun: "rope".to_owned(),
            ends,
        });
    }

    /// Turns a rope round.
    pub(super) fn flip_rope(&mut self, name: &str) -> Flipped {
        let cord = (0..self.parts.cords.len())
            .find(|index| self.parts.cords[*index].symbol.to_string() == name);
        let Some(cord) = cord else {
            return Flipped::No;
        };
        let Some(system) = self.system() else {
            return Flipped::No;
        };
        for end in 0..self.parts.cords[cord].ends.len() {
            let told = self.parts.cords[cord].ends[end].clone();
            let turned = self.turned(&system, &told.bearing, &told.at);
            self.parts.cords[cord].ends[end].bearing = turned;
        }
        Flipped::Yes
    }

    /// Turns a contact round.
    pub(super) fn flip_hold(&mut self, name: &str) -> Flipped {
        let hold = (0..self.parts.holds.len())
            .find(|index| self.parts.holds[*index].symbol.to_string() == name);
        let (Some(hold), Some(system)) = (hold, self.system()) else {
            return Flipped::No;
        };
        let told = self.parts.holds[hold].clone();
        let turned = |maker: &mut Self, bearing: &Bearing| maker.turned(&system, bearing, &told.at);
        let kind = match &told.kind {
            HoldKind::Push(bearing) => HoldKind::Push(turned(self, bearing)),
            HoldKind::Rough { push, friction } => HoldKind::Rough {
                push: turned(self, push),
                friction: friction.clone(),
            },
            HoldKind::Base {
                push,
                friction,
                width,
            } => HoldKind::Base {
                push: turned(self, push),
                friction: friction.clone(),
                width: *width,
            },
            _ => return Flipped::No,
        };
        self.parts.holds[hold].kind = kind;
        Flipped::Yes
    }

    /// The reverse of a direction.
    fn turned(&mut self, system: &System, bearing: &Bearing, at: &Spot) -> Bearing {
        match bearing.clone() {
            Bearing::Up => Bearing::Down,
            Bearing::Down => Bearing::Up,
            Bearing::Level(Side::Left) => Bearing::Level(Side::Right),
            Bearing::Level(Side::Right) => Bearing::Level(Side::Left),
            Bearing::Oblique {
                angle,
                from,
                upright,
                side,
            } => Bearing::Oblique {
                angle,
                from,
                upright: match upright {
                    Upright::Up => Upright::Down,
                    Upright::Down => Upright::Up,
                },
                side: match side {
                    Side::Left => Side::Right,
                    Side::Right => Side::Left,
                },
            },
            Bearing::FromAxis { angle } => {
                let given = &mut self.parts.givens[angle.0];
                let degrees: f64 = given.written.trim_end_matches('°').parse().unwrap();
                let turned = (degrees + 180.0) % 360.0;
                given.written = format!("{turned:.1}°");
                let told: f64 = given.written.trim_end_matches('°').parse().unwrap();
                given.value = told.to_radians();
                Bearing::FromAxis { angle }
            }
            Bearing::Along { body, leg, onward } => Bearing::Along {
                body,
                leg,
                onward: !onward,
            },
            Bearing::Across { body, leg, left } => Bearing::Across {
                body,
                leg,
                left: !left,
            },
            Bearing::FromLeg {
                angle,
                body,
                leg,
                onward,
                left,
            } => Bearing::FromLeg {
                angle,
                body,
                leg,
                onward: !onward,
                left: !left,
            },
            Bearing::Towards(spot) => {
                let away = system.unit(&Bearing::Towards(spot), at, &system.values());
                let degrees = (away.angle() + PI).to_degrees().rem_euclid(360.0);
                let tenths = ((degrees * 10.0).round() as u64).clamp(1, 3599);
                Bearing::FromAxis {
                    angle: self.given("α", tenths, 1, "°"),
                }
            }
        }
    }

    /// Writes a larger number in place of a given of two decimals.
    fn grow(&mut self, given: GivenId, factor: f64, unit: &str) -> Flipped {
        let value = self.value(given) * factor * 1.2;
        if !(value.is_finite() && value < 90.0) {
            return Flipped::No;
        }
        let gap = if unit.is_empty() { "" } else { " " };
        let number = format!("{value:.2}");
        let given = &mut self.parts.givens[given.0];
        given.value = number.parse().unwrap();
        given.written = format!("{number}{gap}{unit}");
        Flipped::Yes
    }

    /// Makes a contact rough enough.
    pub(super) fn roughen(&mut self, name: &str, factor: f64) -> Flipped {
        let found = self.parts.holds.iter().find_map(|hold| match &hold.kind {
            HoldKind::Rough {
                friction: Friction::UpTo(coefficient),
                ..
            }
            | HoldKind::Base {
                friction: Friction::UpTo(coefficient),
                ..
            } if hold.symbol.to_string() == name => Some(*coefficient),
            _ => None,
        });
        found.map_or(Flipped::No, |given| self.grow(given, factor, ""))
    }

    /// Makes a base wide enough.
    pub(super) fn widen(&mut self, name: &str, factor: f64) -> Flipped {
        let found = self.parts.holds.iter().find_map(|hold| match &hold.kind {
            HoldKind::Base { width, .. } if hold.symbol.to_string() == name => Some(*width),
            _ => None,
        });
        found.map_or(Flipped::No, |given| self.grow(given, factor, "m"))
    }
}
