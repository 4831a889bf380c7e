//! Bodies, places, directions and numbers of a random system.

use super::Stream;
use leverwright::problem::{Given, GivenId, Place, Reference, Side, Upright};
use leverwright::system::{Asked, Bearing, Body, BodyId, Coordinate, Leg, Parts, Spot, System};
use leverwright::text::Symbol;
use leverwright::units::Dimension;
use std::collections::BTreeMap;

/// A system that is being made.
pub(super) struct Maker<'s> {
    pub(super) stream: &'s mut Stream,
    pub(super) parts: Parts,
    /// Every direction is upright, level, or three-four-five.
    pub(super) square: bool,
    counts: BTreeMap<&'static str, usize>,
}

/// A whole number of tenths, hundredths and so on as a decimal.
fn decimal(number: u64, decimals: usize) -> String {
    let digits = format!("{number:0>width$}", width = decimals + 1);
    let (whole, part) = digits.split_at(digits.len() - decimals);
    if decimals == 0 {
        digits
    } else {
        format!("{whole}.{part}")
    }
}

impl<'s> Maker<'s> {
    pub(super) fn new(stream: &'s mut Stream, square: bool) -> Maker<'s> {
        let gravity = [9.8, 9.81, 10.0][stream.weighted(&[1, 1, 1])];
        let parts = Parts {
            title: "Drawn".to_owned(),
            statement: String::new(),
            caution: "For learning only.".to_owned(),
            givens: Vec::new(),
            bodies: Vec::new(),
            weights: Vec::new(),
            loads: Vec::new(),
            cords: Vec::new(),
            holds: Vec::new(),
            asked: Vec::new(),
            sought: None,
            gravity,
            accepted_gravity: Vec::new(),
            figures: 3,
        };
        Maker {
            stream,
            parts,
            square,
            counts: BTreeMap::new(),
        }
    }

    /// The system as it stands; nothing if it is not valid.
    pub(super) fn system(&self) -> Option<System> {
        let mut parts = self.parts.clone();
        let holds = (0..parts.holds.len()).map(leverwright::system::ActId::Hold);
        parts.asked = holds.map(Asked::Force).collect();
        System::new(parts).ok()
    }

    /// A fresh name.
    pub(super) fn name(&mut self, stem: &'static str) -> Symbol {
        let count = self.counts.entry(stem).or_default();
        *count += 1;
        Symbol::new(format!("{stem}_{count}"))
    }

    /// A given: so many units of the last decimal.
    pub(super) fn given(
        &mut self,
        stem: &'static str,
        number: u64,
        decimals: usize,
        unit: &str,
    ) -> GivenId {
        let symbol = self.name(stem);
        let digits = decimal(number, decimals);
        let plain: f64 = digits.parse().unwrap();
        let spread = Dimension::FORCE.per(Dimension::LENGTH).unwrap();
        let (value, dimension) = match unit {
            "m" => (plain, Dimension::LENGTH),
            "cm" => (plain * 0.01, Dimension::LENGTH),
            "mm" => (plain * 0.001, Dimension::LENGTH),
            "kg" => (plain, Dimension::MASS),
            "g" => (plain * 0.001, Dimension::MASS),
            "N" => (plain, Dimension::FORCE),
            "kN" => (plain * 1000.0, Dimension::FORCE),
            "N m" => (plain, Dimension::MOMENT),
            "N/m" => (plain, spread),
            "°" => (plain.to_radians(), Dimension::ANGLE),
            _ => (plain, Dimension::NUMBER),
        };
        let gap = if unit == "°" || unit.is_empty() {
            ""
        } else {
            " "
        };
        self.parts.givens.push(Given {
            symbol,
            meaning: String::new(),
            value,
            written: format!("{digits}{gap}{unit}"),
            dimension,
        });
        GivenId(self.parts.givens.len() - 1)
    }

    pub(super) fn value(&self, given: GivenId) -> f64 {
        self.parts.givens[given.0].value
    }

    /// A length of so many centimetres, in one of three units.
    pub(super) fn length(&mut self, low_cm: u64, high_cm: u64) -> GivenId {
        let number = self.stream.between(low_cm, high_cm);
        match self.stream.weighted(&[6, 1, 1]) {
            0 => self.given("L", number, 2, "m"),
            1 => self.given("L", number, 0, "cm"),
            _ => self.given("L", number * 10, 0, "mm"),
        }
    }

    pub(super) fn tenths_of_degrees(&mut self, low: u64, high: u64) -> GivenId {
        let number = self.stream.between(low, high);
        self.given("α", number, 1, "°")
    }

    pub(super) fn mass(&mut self) -> GivenId {
        let number = self.stream.between(5, 900);
        if self.stream.chance(10) {
            self.given("m", number * 10, 0, "g")
        } else {
            self.given("m", number, 1, "kg")
        }
    }

    pub(super) fn force(&mut self) -> GivenId {
        let number = self.stream.between(1, 500);
        if self.stream.chance(15) {
            self.given("P", number, 2, "kN")
        } else {
            self.given("P", number, 0, "N")
        }
    }

    pub(super) fn legs(&self, body: BodyId) -> usize {
        self.parts.bodies[body.0].legs.len()
    }

    /// One to three bodies.
    pub(super) fn bodies(&mut self) {
        let count = 1 + self.stream.weighted(&[45, 33, 22]);
        for index in 0..count {
            let id = BodyId(index);
            let start = self.start(index);
            let kind = self.stream.weighted(&[15, 10, 50, 25]);
            self.parts.bodies.push(Body {
                noun: format!("body {}", index + 1),
                start,
                legs: Vec::new(),
                knot: kind == 0,
            });
            let legs = [0, 0, 1, 2][kind];
            for _ in 0..legs {
                let before = self.leg_lengths();
                let length = match before.last() {
                    Some(length) if self.stream.chance(15) => *length,
                    _ => self.length(60, 420),
                };
                let bearing = self.leg_bearing(id);
                self.parts.bodies[index].legs.push(Leg { length, bearing });
            }
        }
    }

    fn start(&mut self, index: usize) -> Spot {
        let legged: Vec<BodyId> = (0..index)
            .map(BodyId)
            .filter(|body| self.legs(*body) > 0)
            .collect();
        if index == 0 && self.stream.chance(60) {
            return Spot::Origin;
        }
        if !legged.is_empty() && self.stream.chance(55) {
            let before = legged[self.stream.below(legged.len() as u64) as usize];
            return self.spot(before);
        }
        self.coordinates()
    }

    /// A spot by coordinates: numbers, or sums of the lengths of legs that stand already.
    pub(super) fn coordinates(&mut self) -> Spot {
        let x = self.coordinate();
        let y = if self.stream.chance(20) {
            Coordinate::default()
        } else {
            self.coordinate()
        };
        Spot::At { x, y }
    }

    fn coordinate(&mut self) -> Coordinate {
        let lengths = self.leg_lengths();
        if lengths.is_empty() || self.stream.chance(75) {
            let number = self.stream.between(5, 300) as i64;
            let sign = if self.stream.chance(50) { 1 } else { -1 };
            return self.literal(sign * number);
        }
        let count = self.stream.between(1, 2);
        let terms = (0..count).map(|_| {
            let factor = [1.0, 0.5, -0.3, -1.2][self.stream.weighted(&[1, 1, 1, 1])];
            let which = self.stream.below(lengths.len() as u64) as usize;
            (factor, lengths[which])
        });
        Coordinate(terms.collect())
    }

    fn leg_lengths(&self) -> Vec<GivenId> {
        let bodies = self.parts.bodies.iter();
        bodies
            .flat_map(|body| body.legs.iter().map(|leg| leg.length))
            .collect()
    }

    /// A coordinate of so many centimetres, told as a number.
    pub(super) fn literal(&mut self, number_cm: i64) -> Coordinate {
        let id = self.given("x", number_cm.unsigned_abs(), 2, "m");
        if number_cm < 0 {
            let given = &mut self.parts.givens[id.0];
            given.value = -given.value;
            given.written.insert(0, '-');
        }
        Coordinate(vec![(1.0, id)])
    }

    /// The centimetres of a coordinate that is one number.
    pub(super) fn whole_cm(&self, coordinate: &Coordinate) -> Option<i64> {
        match coordinate.0.as_slice() {
            [(1.0, id)] => Some((self.value(*id) * 100.0).round() as i64),
            _ => None,
        }
    }

    fn leg_bearing(&mut self, id: BodyId) -> Bearing {
        let before = self.some_leg(id);
        if let Some((body, leg)) = before
            && self.stream.chance(45)
        {
            return self.by_leg(body, leg);
        }
        let side = self.side();
        match self.stream.weighted(if self.square {
            &[60, 30, 10]
        } else {
            &[20, 8, 2, 50, 20]
        }) {
            0 => Bearing::Level(side),
            1 => Bearing::Up,
            2 => Bearing::Down,
            3 => self.oblique(),
            _ => self.at_axis_angle(),
        }
    }

    /// A leg that stands already, of this body or one before it.
    fn some_leg(&mut self, last: BodyId) -> Option<(BodyId, usize)> {
        let all: Vec<(BodyId, usize)> = (0..=last.0)
            .flat_map(|body| (0..self.legs(BodyId(body))).map(move |leg| (BodyId(body), leg)))
            .collect();
        if all.is_empty() {
            return None;
        }
        Some(all[self.stream.below(all.len() as u64) as usize])
    }

    fn by_leg(&mut self, body: BodyId, leg: usize) -> Bearing {
        let (onward, left) = (self.stream.chance(50), self.stream.chance(50));
        match self
            .stream
            .weighted(&[1, 2, if self.square { 0 } else { 3 }])
        {
            0 => Bearing::Along { body, leg, onward },
            1 => Bearing::Across { body, leg, left },
            _ => Bearing::FromLeg {
                angle: self.tenths_of_degrees(100, 1700),
                body,
                leg,
                onward,
                left,
            },
        }
    }

    fn side(&mut self) -> Side {
        if self.stream.chance(50) {
            Side::Left
        } else {
            Side::Right
        }
    }

    fn oblique(&mut self) -> Bearing {
        let from = [Reference::Horizontal, Reference::Vertical][self.stream.weighted(&[1, 1])];
        let upright = [Upright::Up, Upright::Down][self.stream.weighted(&[1, 1])];
        Bearing::Oblique {
            angle: self.tenths_of_degrees(50, 850),
            from,
            upright,
            side: self.side(),
        }
    }

    pub(super) fn at_axis_angle(&mut self) -> Bearing {
        Bearing::FromAxis {
            angle: self.tenths_of_degrees(1, 3599),
        }
    }

    /// Any direction that needs no new point.
    pub(super) fn bearing(&mut self) -> Bearing {
        let last = BodyId(self.parts.bodies.len() - 1);
        let leg = self.some_leg(last);
        let side = self.side();
        let leg_weight = if leg.is_some() { 25 } else { 0 };
        let weights = if self.square {
            [30, 15, 25, leg_weight, 0, 0, 0]
        } else {
            [9, 5, 8, leg_weight, 28, 17, 8]
        };
        match self.stream.weighted(&weights) {
            0 => Bearing::Up,
            1 => Bearing::Down,
            2 => Bearing::Level(side),
            3 => {
                let (body, leg) = leg.unwrap_or((last, 0));
                self.by_leg(body, leg)
            }
            4 => self.oblique(),
            5 => self.at_axis_angle(),
            _ => self.towards(),
        }
    }

    fn towards(&mut self) -> Bearing {
        let last = BodyId(self.parts.bodies.len() - 1);
        let spot = match self.some_leg(last) {
            Some((body, leg)) if self.stream.chance(70) => Spot::On {
                body,
                leg,
                place: [Place::Foot, Place::Middle, Place::Tip][self.stream.weighted(&[1, 1, 1])],
            },
            _ => Spot::Origin,
        };
        Bearing::Towards(spot)
    }

    pub(super) fn place(&mut self, length: GivenId) -> Place {
        match self.stream.weighted(&[15, 15, 30, 15, 25]) {
            0 => Place::Foot,
            1 => Place::Middle,
            2 => Place::Tip,
            3 => {
                let under = self.stream.between(2, 7) as u32;
                let over = self.stream.between(1, u64::from(under) - 1) as u32;
                Place::Fraction { over, under }
            }
            _ => {
                let whole_cm = (self.value(length) * 100.0).round() as u64;
                Place::At(self.length(1, whole_cm))
            }
        }
    }

    /// A spot of a body: on a leg, the knot, or by coordinates.
    pub(super) fn spot(&mut self, body: BodyId) -> Spot {
        let found = &self.parts.bodies[body.0];
        if found.knot {
            return found.start.clone();
        }
        if found.legs.is_empty() {
            return self.coordinates();
        }
        let leg = self.stream.below(self.legs(body) as u64) as usize;
        let length = self.parts.bodies[body.0].legs[leg].length;
        let place = self.place(length);
        Spot::On { body, leg, place }
    }
}
