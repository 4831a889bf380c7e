//! A system of one straight body laid open for its drawing.

use super::sheet::{Entry, GivenArc, GivenSpan, Guise, Share, Sheet, Spread};
use crate::plane::Vector;
use crate::problem::{
    Direction, ForceId, GivenId, Load, LoadKind, Parts, Place, Problem, Reference, Rope, Side,
    Support, SupportKind, Tilt, Upright,
};
use crate::system::{
    Bearing, Coordinate, Friction, Hold, HoldKind, LoadKind as Acts, Spot, System, Turning,
    WeightKind,
};
use crate::text::Symbol;
use crate::units::Dimension;
use std::collections::BTreeMap;
use std::f64::consts::PI;

/// Off the body by more than this share of its length is not on it.
const OFF: f64 = 1e-6;

impl Sheet {
    /// The drawing of a system; `None` where it is not one straight body whose places, directions
    /// and lengths are all told.
    pub fn of(system: &System) -> Option<Sheet> {
        let parts = system.parts();
        let [body] = parts.bodies.as_slice() else {
            return None;
        };
        let [leg] = body.legs.as_slice() else {
            return None;
        };
        // What is sought has no size yet to be drawn to.
        let sought = parts.sought.as_ref().map(|sought| sought.given);
        let dimension = sought.map(|given| system.given(given).dimension);
        if matches!(dimension, Some(Dimension::LENGTH | Dimension::ANGLE)) {
            return None;
        }
        let values = system.values();
        let length = *values.get(leg.length.0)?;
        let mut open = Open {
            foot: system.point(&body.start, &values),
            along: system.unit(&leg.bearing, &body.start, &values),
            system,
            values,
            length,
            page: of_length(system, leg.length),
            guises: BTreeMap::new(),
            arcs: Vec::new(),
            spans: Vec::new(),
            entries: Vec::new(),
        };
        open.tilt(&leg.bearing);
        open.weights()?;
        open.loads()?;
        open.ropes()?;
        open.holds()?;
        let finite = open.values.iter().all(|value| value.is_finite());
        finite.then(|| open.sheet())
    }
}

/// The page of a system of one straight body of this length, without any force.
fn of_length(system: &System, length: GivenId) -> Parts {
    let mut page = system.page();
    page.body.length = length;
    page
}

/// A system while it is laid open.
struct Open<'a> {
    system: &'a System,
    /// Its values, and behind them those that are printed nowhere.
    values: Vec<f64>,
    foot: Vector,
    along: Vector,
    length: f64,
    page: Parts,
    guises: BTreeMap<ForceId, Guise>,
    arcs: Vec<GivenArc>,
    spans: Vec<GivenSpan>,
    entries: Vec<Entry>,
}

impl Open<'_> {
    fn sheet(self) -> Sheet {
        Sheet {
            problem: Problem::page(self.page),
            values: self.values,
            guises: self.guises,
            arcs: self.arcs,
            spans: self.spans,
            entries: self.entries,
        }
    }

    /// A number that is printed nowhere.
    fn hidden(&mut self, value: f64) -> GivenId {
        self.values.push(value);
        GivenId(self.values.len() - 1)
    }

    fn enter(&mut self, force: ForceId, symbol: &Symbol, share: Share) {
        self.entries.push(Entry {
            force,
            symbol: symbol.shown(),
            share,
        });
    }

    fn given_text(&self, id: GivenId) -> String {
        let given = self.system.givens().get(id.0);
        let written = given.filter(|given| !given.written.is_empty());
        written.map_or_else(String::new, |given| {
            format!("{} = {}", given.symbol, given.written)
        })
    }

    /// How the body stands, in the terms of a lesson where these do.
    fn tilt(&mut self, bearing: &Bearing) {
        let side = match self.along.x < -1e-9 {
            true => Side::Left,
            false => Side::Right,
        };
        self.page.body.towards = side;
        let level = self.along.y.abs() < 1e-9;
        self.page.body.tilt = match bearing {
            _ if level => Tilt::Level,
            Bearing::Oblique {
                angle,
                from,
                upright: Upright::Up,
                ..
            } => Tilt::Rising {
                angle: *angle,
                from: *from,
            },
            other => {
                let foot = Place::Foot;
                self.arc(other, foot, self.along, false);
                let rises = libm::atan2(self.along.y, self.along.x.abs());
                Tilt::Rising {
                    angle: self.hidden(rises),
                    from: Reference::Horizontal,
                }
            }
        };
    }

    /// Where something is along the body; `None` off it.
    fn place(&mut self, spot: &Spot) -> Option<Place> {
        if let Spot::On { place, .. } = spot {
            return Some(*place);
        }
        let from = self.system.point(spot, &self.values) - self.foot;
        let (on, off) = (from.dot(self.along), from.cross(self.along));
        let slack = OFF * self.length;
        if !(off.abs() <= slack && on >= -slack && on <= self.length + slack) {
            return None;
        }
        if on <= slack {
            return Some(Place::Foot);
        }
        if on >= self.length - slack {
            return Some(Place::Tip);
        }
        if let Spot::At { x, y } = spot
            && let [(factor, given)] = [x.0.as_slice(), y.0.as_slice()].concat().as_slice()
            && *factor == 1.0
            && (self.values[given.0] - on).abs() <= slack
        {
            return Some(Place::At(*given));
        }
        Some(Place::At(self.hidden(on)))
    }

    /// A direction in the terms of a lesson, with the angle by which it is told.
    fn direction(&mut self, bearing: &Bearing, spot: &Spot, at: Place, pushed: bool) -> Direction {
        match bearing {
            Bearing::Up => return Direction::Up,
            Bearing::Down => return Direction::Down,
            Bearing::Level(side) => return Direction::Level(*side),
            Bearing::Oblique {
                angle,
                from,
                upright,
                side,
            } => {
                return Direction::Oblique {
                    angle: *angle,
                    from: *from,
                    upright: *upright,
                    side: *side,
                };
            }
            _ => {}
        }
        let unit = self.system.unit(bearing, spot, &self.values);
        self.arc(bearing, at, unit, pushed);
        let side = if unit.x < 0.0 {
            Side::Left
        } else {
            Side::Right
        };
        match (unit.x.abs() < 1e-9, unit.y.abs() < 1e-9) {
            (true, _) if unit.y > 0.0 => Direction::Up,
            (true, _) => Direction::Down,
            (_, true) => Direction::Level(side),
            _ => Direction::Oblique {
                angle: self.hidden(libm::atan2(unit.y.abs(), unit.x.abs())),
                from: Reference::Horizontal,
                upright: if unit.y > 0.0 {
                    Upright::Up
                } else {
                    Upright::Down
                },
                side,
            },
        }
    }

    /// Keeps the given angle of a bearing that no lesson has.
    fn arc(&mut self, bearing: &Bearing, at: Place, unit: Vector, pushed: bool) {
        let level = if unit.x < 0.0 { PI } else { 0.0 };
        let (angle, from) = match bearing {
            Bearing::FromAxis { angle } => (*angle, 0.0),
            Bearing::FromLeg { angle, onward, .. } => {
                let leg = if *onward {
                    self.along
                } else {
                    self.along * -1.0
                };
                (*angle, leg.angle())
            }
            Bearing::Oblique {
                angle,
                from: Reference::Horizontal,
                ..
            } => (*angle, level),
            Bearing::Oblique { angle, upright, .. } => {
                let up = if *upright == Upright::Up { 0.5 } else { -0.5 };
                (*angle, up * PI)
            }
            _ => return,
        };
        let turned = if pushed { PI } else { 0.0 };
        self.arcs.push(GivenArc {
            at,
            from: from + turned,
            to: unit.angle() + turned,
            text: self.given_text(angle),
        });
    }

    /// The other end of what runs towards a point, from the foot, with the lengths that tell it.
    fn end_of(&mut self, bearing: &Bearing) -> Option<Vector> {
        let Bearing::Towards(spot) = bearing else {
            return None;
        };
        let origin = self.foot * -1.0;
        let end = self.system.point(spot, &self.values) - self.foot;
        if let Spot::At { x, y } = spot {
            let corner = Vector::new(origin.x, end.y);
            self.span(x, corner, end);
            let corner = Vector::new(end.x, origin.y);
            self.span(y, corner, end);
        }
        Some(end)
    }

    /// Keeps a coordinate that is one given length.
    fn span(&mut self, coordinate: &Coordinate, from: Vector, to: Vector) {
        let [(factor, given)] = coordinate.0.as_slice() else {
            return;
        };
        let text = self.given_text(*given);
        let known = self.spans.iter().any(|span| span.text == text);
        if factor.abs() == 1.0 && !text.is_empty() && !known {
            self.spans.push(GivenSpan { from, to, text });
        }
    }

    /// The first own weight is the body's; others are masses on it.
    fn weights(&mut self) -> Option<()> {
        let weights = &self.system.parts().weights;
        let first_other = self.system.parts().loads.len();
        for (index, weight) in weights.iter().enumerate() {
            let WeightKind::Point { at, mass } = &weight.kind else {
                return None;
            };
            let at = self.place(at)?;
            if index == 0 {
                self.page.body.mass = Some(*mass);
                self.page.body.centre = at;
                self.page.body.weight_symbol = weight.symbol.clone();
                self.enter(ForceId::OwnWeight, &weight.symbol, Share::Whole);
                continue;
            }
            let force = ForceId::Load(first_other + index - 1);
            self.guises.insert(force, Guise::Mass);
            self.enter(force, &weight.symbol, Share::Whole);
        }
        Some(())
    }

    fn loads(&mut self) -> Option<()> {
        let parts = self.system.parts();
        for (index, load) in parts.loads.iter().enumerate() {
            let force = ForceId::Load(index);
            let (at, kind, share) = match &load.kind {
                Acts::Mass { at, mass } => {
                    self.guises.insert(force, Guise::Mass);
                    (self.place(at)?, LoadKind::Mass(*mass), Share::Whole)
                }
                Acts::Force { at, size, bearing } => {
                    let place = self.place(at)?;
                    let direction = self.direction(bearing, at, place, true);
                    let size = *size;
                    (place, LoadKind::Force { size, direction }, Share::Whole)
                }
                Acts::Couple { size, turning } => {
                    let turns = match turning {
                        Turning::Anticlockwise => 1.0,
                        Turning::Clockwise => -1.0,
                    };
                    self.guises.insert(force, Guise::Couple(Some(turns)));
                    let kind = LoadKind::Force {
                        size: *size,
                        direction: Direction::Level(Side::Right),
                    };
                    (self.free_place(), kind, Share::Couple)
                }
                Acts::Spread { .. } => {
                    let (at, direction) = self.spread(index)?;
                    let size = self.hidden(0.0);
                    (at, LoadKind::Force { size, direction }, Share::Whole)
                }
            };
            self.enter(force, &load.symbol, share);
            self.page.loads.push(Load {
                symbol: load.symbol.clone(),
                noun: load.noun.clone(),
                at,
                kind,
                stands: true,
            });
        }
        for weight in parts.weights.iter().skip(1) {
            let WeightKind::Point { at, mass } = &weight.kind else {
                return None;
            };
            let at = self.place(at)?;
            self.page.loads.push(Load {
                symbol: weight.symbol.clone(),
                noun: weight.noun.clone(),
                at,
                kind: LoadKind::Mass(*mass),
                stands: true,
            });
        }
        Some(())
    }

    /// Where the resultant of a spread load acts, and which way.
    fn spread(&mut self, index: usize) -> Option<(Place, Direction)> {
        let Acts::Spread {
            from,
            to,
            first,
            last,
            bearing,
            ..
        } = &self.system.parts().loads.get(index)?.kind
        else {
            return None;
        };
        let resultant = Spot::Resultant(index);
        let at = self.place(&resultant)?;
        let direction = self.direction(bearing, &resultant, at, true);
        let value = |given: &Option<GivenId>| given.map_or(0.0, |given| self.values[given.0]);
        let sizes = [value(first), value(last)];
        let largest = sizes[0].max(sizes[1]);
        let told = |given: &Option<GivenId>| {
            given.map_or_else(String::new, |given| self.given_text(given))
        };
        let mut texts = [told(first), told(last)];
        if first == last {
            texts[1] = String::new();
        }
        let spread = Spread {
            ends: [*from, *to],
            acts: self.system.unit(bearing, &resultant, &self.values),
            shares: sizes.map(|size| size / largest),
            texts,
        };
        self.guises
            .insert(ForceId::Load(index), Guise::Spread(spread));
        Some((at, direction))
    }

    /// A place with room around it, for a couple, which has none of its own.
    fn free_place(&mut self) -> Place {
        let parts = self.system.parts();
        let loads = parts.loads.iter().filter_map(|load| match &load.kind {
            Acts::Mass { at, .. } | Acts::Force { at, .. } => Some(at),
            Acts::Couple { .. } | Acts::Spread { .. } => None,
        });
        let spots = (parts.holds.iter().map(|hold| &hold.at))
            .chain(
                parts
                    .cords
                    .iter()
                    .flat_map(|cord| &cord.ends)
                    .map(|end| &end.at),
            )
            .chain(loads);
        let on = |spot: &Spot| {
            (self.system.point(spot, &self.values) - self.foot).dot(self.along) / self.length
        };
        let couples = self.page.loads.iter().zip(0..).filter_map(|(load, index)| {
            let couple = matches!(
                self.guises.get(&ForceId::Load(index)),
                Some(Guise::Couple(_))
            );
            couple.then(|| load.at.distance(self.page.body.length, &self.values) / self.length)
        });
        let taken: Vec<f64> = spots.map(on).chain(couples).collect();
        let end = |place: &Place| place.distance(self.page.body.length, &self.values) / self.length;
        let spreads: Vec<[f64; 2]> = (parts.loads.iter())
            .filter_map(|load| match &load.kind {
                Acts::Spread { from, to, .. } => Some([end(from), end(to)]),
                _ => None,
            })
            .collect();
        let room = |share: f64| {
            let near = |ends: &[f64; 2]| share > ends[0] - 0.08 && share < ends[1] + 0.08;
            if spreads.iter().any(near) {
                return 0.0;
            }
            let nearest = taken.iter().map(|at| (at - share).abs());
            nearest.fold(0.3, f64::min)
        };
        let shares = [0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8, 0.12, 0.88];
        let best = shares.into_iter().fold(0.5, |best, share| {
            if room(share) > room(best) + 0.02 {
                share
            } else {
                best
            }
        });
        Place::At(self.hidden(best * self.length))
    }

    fn ropes(&mut self) -> Option<()> {
        for cord in &self.system.parts().cords {
            for end in &cord.ends {
                let at = self.place(&end.at)?;
                let direction = self.direction(&end.bearing, &end.at, at, false);
                let force = ForceId::Rope(self.page.ropes.len());
                if let Some(end) = self.end_of(&end.bearing) {
                    self.guises.insert(force, Guise::Tied(end));
                }
                self.enter(force, &cord.symbol, Share::Whole);
                self.page.ropes.push(Rope {
                    symbol: cord.symbol.clone(),
                    noun: cord.noun.clone(),
                    at,
                    direction,
                });
            }
        }
        Some(())
    }

    fn holds(&mut self) -> Option<()> {
        let holds = &self.system.parts().holds;
        let mut beside = Vec::new();
        for (index, hold) in holds.iter().enumerate() {
            if hold.by.is_some() {
                return None;
            }
            let at = self.place(&hold.at)?;
            let (kind, guise, more) = self.hold(hold, at)?;
            let force = ForceId::Support(index);
            self.guises.extend(guise.map(|guise| (force, guise)));
            self.enter(force, &hold.symbol, Share::Whole);
            beside.extend(more.map(|share| (hold, at, share)));
            self.page.supports.push(support(hold, at, kind));
        }
        for (hold, at, share) in beside {
            let force = ForceId::Support(self.page.supports.len());
            let guise = match share {
                Share::Couple => Guise::Couple(None),
                _ => Guise::Beside,
            };
            self.guises.insert(force, guise);
            self.enter(force, &hold.symbol, share);
            self.page
                .supports
                .push(support(hold, at, SupportKind::Hinge));
        }
        Some(())
    }

    /// How a hold looks, and what it does beside its force.
    fn hold(
        &mut self,
        hold: &Hold,
        at: Place,
    ) -> Option<(SupportKind, Option<Guise>, Option<Share>)> {
        let open = SupportKind::Hinge;
        Some(match &hold.kind {
            HoldKind::Hinge => (open, None, None),
            HoldKind::BuiltIn => (SupportKind::BuiltIn, None, Some(Share::Couple)),
            HoldKind::Push(bearing) => {
                let direction = self.direction(bearing, &hold.at, at, true);
                let guise = match bearing {
                    Bearing::Level(_) => Some(Guise::Contact),
                    Bearing::Across { .. } => Some(Guise::Peg),
                    _ => None,
                };
                (SupportKind::Roller(direction), guise, None)
            }
            HoldKind::Rough { push, friction } => {
                let direction = self.direction(push, &hold.at, at, true);
                if let Friction::Limiting { bearing, .. } = friction {
                    self.arc(
                        bearing,
                        at,
                        self.system.unit(bearing, &hold.at, &self.values),
                        false,
                    );
                }
                let kind = SupportKind::Roller(direction);
                (kind, Some(Guise::Contact), Some(Share::Friction))
            }
            HoldKind::Line(bearing) => {
                let runs = self.system.unit(bearing, &hold.at, &self.values);
                // Its angle is drawn with its line.
                self.arc(bearing, at, runs, false);
                let end = self.end_of(bearing);
                (open, Some(Guise::Strut(runs, end)), None)
            }
            HoldKind::Base { .. } | HoldKind::Couple => return None,
        })
    }
}

fn support(hold: &Hold, at: Place, kind: SupportKind) -> Support {
    Support {
        symbol: hold.symbol.clone(),
        noun: hold.noun.clone(),
        at,
        kind,
    }
}
