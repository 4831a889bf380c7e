//! What makes a system one that can be drawn at all.

use super::fault::Fault;
use super::{
    Bearing, BodyId, Coordinate, Friction, HoldKind, LoadKind, Parts, Spot, System, WeightKind,
    When,
};
use crate::plane::Vector;
use crate::problem::{GivenId, Place};
use crate::units::Dimension;
use std::collections::{BTreeMap, BTreeSet};
use std::f64::consts::{FRAC_PI_2, PI};

/// The push and the friction of a contact are at a right angle if no more than this share of one
/// lies along the other.
const NOT_SQUARE: f64 = 1e-3;

/// What a given is used for.
#[derive(Clone, Copy, PartialEq)]
pub(super) enum Use {
    Length,
    Coordinate,
    Mass,
    MassPerArea,
    Force,
    Moment,
    ForceALength,
    Slope,
    HalfTurn,
    FullTurn,
    Coefficient,
}

impl Use {
    /// The dimension asked, its name in a message, and the upper bound of an angle.
    pub(super) fn demands(self) -> (Dimension, &'static str, Option<f64>) {
        match self {
            Use::Length | Use::Coordinate => (Dimension::LENGTH, "a length", None),
            Use::Mass => (Dimension::MASS, "a mass", None),
            Use::MassPerArea => (Dimension::MASS_PER_AREA, "a mass per area", None),
            Use::Force => (Dimension::FORCE, "a force", None),
            Use::Moment => (Dimension::MOMENT, "a couple", None),
            Use::ForceALength => (Dimension::FORCE_A_LENGTH, "a force a length", None),
            Use::Slope => (Dimension::ANGLE, "an angle", Some(FRAC_PI_2)),
            Use::HalfTurn => (Dimension::ANGLE, "an angle", Some(PI)),
            Use::FullTurn => (Dimension::ANGLE, "an angle", Some(2.0 * PI)),
            Use::Coefficient => (Dimension::NUMBER, "a coefficient", None),
        }
    }
}

/// Everything that the parts refer to, gathered in one walk.
pub(super) struct Walk<'a> {
    pub(super) parts: &'a Parts,
    pub(super) uses: Vec<(GivenId, Use)>,
    pub(super) faults: Vec<Fault>,
    touched: BTreeSet<usize>,
}

/// Every fault of these parts.
pub(super) fn faults(parts: &Parts) -> Vec<Fault> {
    let mut walk = Walk::over(parts);
    walk.asked();
    if walk
        .faults
        .iter()
        .any(|fault| matches!(fault, Fault::NoSuch { .. }))
    {
        return walk.faults;
    }
    if walk
        .uses
        .iter()
        .any(|(given, _)| given.0 >= parts.givens.len())
    {
        walk.miss("a part");
        return walk.faults;
    }
    walk.numbers();
    walk.names();
    for (index, body) in parts.bodies.iter().enumerate() {
        if !walk.touched.contains(&index) {
            walk.faults.push(Fault::Idle {
                what: body.noun.clone(),
            });
        }
    }
    if walk.faults.is_empty() {
        walk.drawing();
    }
    walk.faults
}

/// What of these parts cannot be drawn, where others of them may be missing or at fault; nothing
/// where they rest on one of the `unread` numbers.
pub(super) fn undrawable(parts: &Parts, unread: &[GivenId]) -> Vec<Fault> {
    let mut walk = Walk::over(parts);
    let astray =
        |fault: &Fault| matches!(fault, Fault::NoSuch { .. } | Fault::StartsAtLater { .. });
    let unknown =
        |(given, _): &(GivenId, Use)| given.0 >= parts.givens.len() || unread.contains(given);
    if walk.faults.iter().any(astray) || walk.uses.iter().any(unknown) {
        return Vec::new();
    }
    walk.faults.clear();
    walk.drawing();
    walk.faults
}

impl<'a> Walk<'a> {
    /// What the bodies of these parts, and all that acts on them, refer to.
    pub(super) fn over(parts: &'a Parts) -> Walk<'a> {
        let mut walk = Walk {
            parts,
            uses: Vec::new(),
            faults: Vec::new(),
            touched: BTreeSet::new(),
        };
        walk.bodies();
        walk.acts();
        walk
    }
}

impl Walk<'_> {
    pub(super) fn miss(&mut self, what: &str) {
        self.faults.push(Fault::NoSuch {
            what: what.to_owned(),
        });
    }

    fn body(&mut self, what: &str, body: BodyId) {
        if body.0 >= self.parts.bodies.len() {
            self.miss(what);
        }
    }

    pub(super) fn place(&mut self, place: Place) {
        if let Place::At(given) = place {
            self.uses.push((given, Use::Length));
        }
    }

    pub(super) fn coordinate(&mut self, coordinate: &Coordinate) {
        let uses = coordinate
            .0
            .iter()
            .map(|(_, given)| (*given, Use::Coordinate));
        self.uses.extend(uses);
    }

    fn spot(&mut self, what: &str, spot: &Spot) {
        match spot {
            Spot::Origin => {}
            Spot::At { x, y } => {
                self.coordinate(x);
                self.coordinate(y);
            }
            Spot::On { body, leg, place } => {
                let legs = self
                    .parts
                    .bodies
                    .get(body.0)
                    .map_or(0, |body| body.legs.len());
                if *leg >= legs {
                    self.miss(what);
                }
                self.place(*place);
            }
            Spot::Resultant(load) => {
                if *load >= self.parts.loads.len() {
                    self.miss(what);
                }
            }
            Spot::Centroid(weight) => {
                let found = self.parts.weights.get(*weight);
                if !found.is_some_and(|found| matches!(found.kind, WeightKind::Lamina(_))) {
                    self.miss(what);
                }
            }
        }
    }

    fn leg(&mut self, what: &str, body: BodyId, leg: usize) {
        let legs = self
            .parts
            .bodies
            .get(body.0)
            .map_or(0, |body| body.legs.len());
        if leg >= legs {
            self.miss(what);
        }
    }

    fn bearing(&mut self, what: &str, bearing: &Bearing) {
        match bearing {
            Bearing::Up | Bearing::Down | Bearing::Level(_) => {}
            Bearing::Oblique { angle, .. } => self.uses.push((*angle, Use::Slope)),
            Bearing::FromAxis { angle } => self.uses.push((*angle, Use::FullTurn)),
            Bearing::Towards(spot) => self.spot(what, spot),
            Bearing::Along { body, leg, .. } | Bearing::Across { body, leg, .. } => {
                self.leg(what, *body, *leg);
            }
            Bearing::FromLeg {
                angle, body, leg, ..
            } => {
                self.uses.push((*angle, Use::HalfTurn));
                self.leg(what, *body, *leg);
            }
        }
    }

    fn bodies(&mut self) {
        for (index, body) in self.parts.bodies.iter().enumerate() {
            self.spot(&body.noun, &body.start);
            let later = match body.start {
                Spot::On { body: before, .. } => before.0 >= index,
                Spot::Resultant(_) | Spot::Centroid(_) => true,
                Spot::Origin | Spot::At { .. } => false,
            };
            if later {
                self.faults.push(Fault::StartsAtLater {
                    what: body.noun.clone(),
                });
            }
            for (place, leg) in body.legs.iter().enumerate() {
                self.uses.push((leg.length, Use::Length));
                self.bearing(&body.noun, &leg.bearing);
                // A leg may lean on one before it, not on itself or a later one.
                let leans = match &leg.bearing {
                    Bearing::Along { body, leg, .. }
                    | Bearing::Across { body, leg, .. }
                    | Bearing::FromLeg { body, leg, .. } => Some((body.0, *leg)),
                    Bearing::Towards(_) => Some((index, place)),
                    _ => None,
                };
                if leans.is_some_and(|leans| leans >= (index, place)) {
                    self.faults.push(Fault::StartsAtLater {
                        what: body.noun.clone(),
                    });
                }
            }
        }
    }

    fn acts(&mut self) {
        let parts = self.parts;
        for weight in &parts.weights {
            self.body(&weight.noun, weight.body);
            self.touched.insert(weight.body.0);
            match &weight.kind {
                WeightKind::Point { at, mass } => {
                    self.spot(&weight.noun, at);
                    self.uses.push((*mass, Use::Mass));
                }
                WeightKind::Lamina(lamina) => self.lamina(&weight.noun, lamina),
            }
        }
        for load in &parts.loads {
            if matches!(load.kind, LoadKind::Couple { .. }) {
                self.turns(&load.noun, load.body);
            }
            self.body(&load.noun, load.body);
            self.touched.insert(load.body.0);
            self.load(&load.noun, load.body, &load.kind);
        }
        for cord in &parts.cords {
            if cord.ends.is_empty() {
                self.faults.push(Fault::Loose {
                    what: cord.noun.clone(),
                });
            }
            for end in &cord.ends {
                self.body(&cord.noun, end.body);
                self.touched.insert(end.body.0);
                self.spot(&cord.noun, &end.at);
                self.bearing(&cord.noun, &end.bearing);
            }
        }
        for hold in &parts.holds {
            self.body(&hold.noun, hold.body);
            self.touched.insert(hold.body.0);
            if let Some(by) = hold.by {
                self.body(&hold.noun, by);
                self.touched.insert(by.0);
                if by == hold.body {
                    self.faults.push(Fault::Loose {
                        what: hold.noun.clone(),
                    });
                }
            }
            if hold.kind.turns() {
                self.turns(&hold.noun, hold.body);
                hold.by.iter().for_each(|by| self.turns(&hold.noun, *by));
            }
            self.spot(&hold.noun, &hold.at);
            self.hold(&hold.noun, &hold.kind);
        }
    }

    fn load(&mut self, noun: &str, body: BodyId, kind: &LoadKind) {
        match kind {
            LoadKind::Mass { at, mass } => {
                self.spot(noun, at);
                self.uses.push((*mass, Use::Mass));
            }
            LoadKind::Force { at, size, bearing } => {
                self.spot(noun, at);
                self.uses.push((*size, Use::Force));
                self.bearing(noun, bearing);
            }
            LoadKind::Couple { size, .. } => self.uses.push((*size, Use::Moment)),
            LoadKind::Spread {
                leg,
                from,
                to,
                first,
                last,
                bearing,
            } => {
                self.leg(noun, body, *leg);
                self.place(*from);
                self.place(*to);
                if first.is_none() && last.is_none() {
                    self.faults.push(Fault::Loose {
                        what: noun.to_owned(),
                    });
                }
                let values = first.iter().chain(last);
                self.uses
                    .extend(values.map(|given| (*given, Use::ForceALength)));
                self.bearing(noun, bearing);
            }
        }
    }

    fn hold(&mut self, noun: &str, kind: &HoldKind) {
        let friction = |walk: &mut Self, friction: &Friction| match friction {
            Friction::AsNeeded => {}
            Friction::UpTo(coefficient) => walk.uses.push((*coefficient, Use::Coefficient)),
            Friction::Limiting {
                coefficient,
                bearing,
            } => {
                walk.uses.push((*coefficient, Use::Coefficient));
                walk.bearing(noun, bearing);
            }
        };
        match kind {
            HoldKind::Hinge | HoldKind::BuiltIn | HoldKind::Couple => {}
            HoldKind::Push(bearing) | HoldKind::Line(bearing) => self.bearing(noun, bearing),
            HoldKind::Rough { push, friction: of } => {
                self.bearing(noun, push);
                friction(self, of);
            }
            HoldKind::Base {
                push,
                friction: of,
                width,
            } => {
                self.bearing(noun, push);
                friction(self, of);
                self.uses.push((*width, Use::Length));
            }
        }
    }

    fn asked(&mut self) {
        let Some(sought) = &self.parts.sought else {
            return;
        };
        match sought.when {
            When::Reaches { limit, .. } => self.uses.push((limit, Use::Force)),
            When::Slips { coefficient, .. } => self.uses.push((coefficient, Use::Coefficient)),
            When::Rests(body) => self.body("what rests", body),
            When::Vanishes(_) | When::Topples(_) => {}
        }
        if !(sought.low.is_finite() && sought.high.is_finite() && sought.low < sought.high) {
            self.faults.push(Fault::EmptyRange);
        }
    }

    fn numbers(&mut self) {
        let sought = self.parts.sought.as_ref().map(|sought| sought.given);
        let signed: BTreeSet<GivenId> = self
            .uses
            .iter()
            .filter(|(_, used)| *used == Use::Coordinate)
            .map(|(given, _)| *given)
            .collect();
        for (index, given) in self.parts.givens.iter().enumerate() {
            let id = GivenId(index);
            let signed = signed.contains(&id);
            let fits = given.value.is_finite() && (signed || given.value > 0.0);
            if !fits && sought != Some(id) {
                self.faults.push(Fault::NotPositive {
                    symbol: given.symbol.to_string(),
                });
            }
        }
        let mut used = BTreeSet::new();
        for (given, used_as) in &self.uses {
            used.insert(*given);
            let (dimension, kind, below) = used_as.demands();
            let printed = &self.parts.givens[given.0];
            let symbol = printed.symbol.to_string();
            if printed.dimension != dimension {
                self.faults.push(Fault::WrongDimension {
                    symbol,
                    used_as: kind,
                });
            } else if let Some(below) = below
                && printed.value >= below
                && sought != Some(*given)
            {
                let below_deg = below.to_degrees().round();
                self.faults
                    .push(Fault::AngleOutOfRange { symbol, below_deg });
            }
        }
        for (index, given) in self.parts.givens.iter().enumerate() {
            if !used.contains(&GivenId(index)) {
                self.faults.push(Fault::Unused {
                    symbol: given.symbol.to_string(),
                });
            }
        }
        let gravities = self
            .parts
            .accepted_gravity
            .iter()
            .chain([&self.parts.gravity]);
        if !gravities.into_iter().all(|g| g.is_finite() && *g > 0.0) {
            self.faults.push(Fault::Gravity);
        }
        if !(2..=6).contains(&self.parts.figures) {
            self.faults.push(Fault::Figures);
        }
    }

    fn names(&mut self) {
        let parts = self.parts;
        let same_as_size = |symbol: &crate::text::Symbol, kind: &LoadKind| match kind {
            LoadKind::Force { size, .. } | LoadKind::Couple { size, .. } => {
                parts.givens[size.0].symbol == *symbol
            }
            _ => false,
        };
        let names = parts
            .givens
            .iter()
            .map(|given| &given.symbol)
            .chain(parts.weights.iter().map(|weight| &weight.symbol))
            .chain(parts.cords.iter().map(|cord| &cord.symbol))
            .chain(parts.holds.iter().map(|hold| &hold.symbol))
            .chain(
                parts
                    .loads
                    .iter()
                    .filter(|load| !same_as_size(&load.symbol, &load.kind))
                    .map(|load| &load.symbol),
            );
        let mut counts: BTreeMap<String, usize> = BTreeMap::new();
        for name in names {
            *counts.entry(name.as_str().to_owned()).or_default() += 1;
        }
        // Two loads of one given size still need two names.
        for (index, load) in parts.loads.iter().enumerate() {
            if parts.loads[..index]
                .iter()
                .any(|before| before.symbol == load.symbol)
            {
                counts.insert(load.symbol.as_str().to_owned(), 2);
            }
        }
        let twice = counts.into_iter().filter(|(_, count)| *count > 1);
        self.faults
            .extend(twice.map(|(symbol, _)| Fault::NameTwice { symbol }));
    }

    /// What only shows at these numbers: places off their legs, directions to nowhere.
    pub(super) fn geometry(&mut self, system: &System) {
        let values = system.values();
        for weight in &self.parts.weights {
            if let WeightKind::Lamina(lamina) = &weight.kind {
                self.faults.extend(lamina.faults(&weight.noun, &values));
            }
        }
        self.knots(system, &values);
        for act in system.acts() {
            for effect in &act.on {
                if let Spot::On { body, leg, place } = &effect.at {
                    self.on_leg(system, act.noun, (*body, *leg), *place, &values);
                }
                let super::Line::Known(bearing) = &effect.line else {
                    continue;
                };
                let unit = system.unit(bearing, &effect.at, &values);
                self.somewhere(act.noun, unit);
            }
        }
        for hold in &self.parts.holds {
            let bearings = hold.kind.contact_bearings();
            let units = bearings.iter();
            let units = units.map(|bearing| system.unit(bearing, &hold.at, &values));
            let units: Vec<Vector> = units.collect();
            for unit in &units {
                self.somewhere(&hold.noun, *unit);
            }
            if let [push, friction] = units[..]
                && push.dot(friction).abs() > NOT_SQUARE
            {
                let what = hold.noun.clone();
                self.faults.push(Fault::FrictionNotSquare { what });
            }
        }
        for load in &self.parts.loads {
            if let LoadKind::Spread { leg, from, to, .. } = &load.kind {
                for place in [*from, *to] {
                    self.on_leg(system, &load.noun, (load.body, *leg), place, &values);
                }
                let Some(length) = system.leg(load.body, *leg).map(|leg| leg.length) else {
                    continue;
                };
                let along = |place: &Place| place.distance(length, &values);
                if (along(from) - along(to)).abs() <= 1e-9 * values[length.0] {
                    let what = load.noun.clone();
                    self.faults.push(Fault::NoLength { what });
                }
            }
        }
    }

    fn somewhere(&mut self, what: &str, unit: Vector) {
        if !(unit.x.is_finite() && unit.y.is_finite()) {
            let what = what.to_owned();
            self.faults.push(Fault::NoDirection { what });
        }
    }

    fn on_leg(
        &mut self,
        system: &System,
        what: &str,
        (body, leg): (BodyId, usize),
        place: Place,
        values: &[f64],
    ) {
        let Some(length) = system.leg(body, leg).map(|leg| leg.length) else {
            return;
        };
        let (distance_m, length_m) = (place.distance(length, values), values[length.0]);
        if distance_m.is_nan() || distance_m > length_m * (1.0 + 1e-12) {
            self.faults.push(Fault::OffLeg {
                what: what.to_owned(),
                distance_m,
                length_m,
            });
        }
    }
}
