//! Weights and loads of a random system.

use super::maker::Maker;
use leverwright::problem::Place;
use leverwright::system::{Bearing, BodyId, Load, LoadKind, Spot, Turning, Weight, WeightKind};

impl Maker<'_> {
    /// Own weights and loads of every body. Once in a hundred there are none at all.
    pub(super) fn loads(&mut self) {
        if self.stream.chance(1) {
            return;
        }
        for index in 0..self.parts.bodies.len() {
            let body = BodyId(index);
            let own = if self.parts.bodies[index].knot {
                10
            } else {
                60
            };
            if self.stream.chance(own) {
                self.own_weight(body);
            }
            for _ in 0..self.stream.weighted(&[25, 40, 25, 10]) {
                self.load(body);
            }
        }
        if self.parts.weights.is_empty() && self.parts.loads.is_empty() {
            self.load(BodyId(0));
        }
    }

    fn own_weight(&mut self, body: BodyId) {
        let legs = self.legs(body);
        for leg in 0..legs.max(1) {
            let at = if legs == 0 {
                self.spot(body)
            } else {
                let place = Place::Middle;
                Spot::On { body, leg, place }
            };
            let mass = self.mass();
            let symbol = self.name("W");
            self.parts.weights.push(Weight {
                symbol,
                noun: "own weight".to_owned(),
                body,
                kind: WeightKind::Point { at, mass },
            });
        }
    }

    pub(super) fn load(&mut self, body: BodyId) {
        let (turns, spreads) = (!self.parts.bodies[body.0].knot, self.legs(body) > 0);
        let weights = [30, 35, u64::from(turns) * 15, u64::from(spreads) * 25];
        let kind = match self.stream.weighted(&weights) {
            0 => LoadKind::Mass {
                at: self.spot(body),
                mass: self.mass(),
            },
            1 => self.push(body),
            2 => LoadKind::Couple {
                size: {
                    let number = self.stream.between(1, 4000);
                    self.given("C", number, 1, "N m")
                },
                turning: [Turning::Anticlockwise, Turning::Clockwise]
                    [self.stream.weighted(&[1, 1])],
            },
            _ => self.spread(body),
        };
        let symbol = self.name("Q");
        self.parts.loads.push(Load {
            symbol,
            noun: "load".to_owned(),
            body,
            kind,
        });
    }

    fn push(&mut self, body: BodyId) -> LoadKind {
        let size = self.force();
        let at = self.spot(body);
        // Towards a point three steps to the side and four up: a direction in whole fifths.
        if let Spot::At { x, y } = &at
            && let (Some(x), Some(y)) = (self.whole_cm(x), self.whole_cm(y))
            && self.stream.chance(60)
        {
            let step = self.stream.between(5, 60) as i64;
            let mut way = |size: i64| if self.stream.chance(50) { size } else { -size };
            let (x, y) = (x + way(3 * step), y + way(4 * step));
            let (x, y) = (self.literal(x), self.literal(y));
            let bearing = Bearing::Towards(Spot::At { x, y });
            return LoadKind::Force { at, size, bearing };
        }
        let bearing = self.bearing();
        LoadKind::Force { at, size, bearing }
    }

    fn spread(&mut self, body: BodyId) -> LoadKind {
        let leg = self.stream.below(self.legs(body) as u64) as usize;
        let length = self.parts.bodies[body.0].legs[leg].length;
        let (from, to) = if self.stream.chance(40) {
            (Place::Foot, Place::Tip)
        } else {
            (self.place(length), self.place(length))
        };
        let value = |maker: &mut Self| {
            let number = maker.stream.between(1, 600);
            maker.given("q", number, 0, "N/m")
        };
        let (first, last) = match self.stream.weighted(&[35, 20, 20, 25]) {
            0 => {
                let even = value(self);
                (Some(even), Some(even))
            }
            1 => (Some(value(self)), None),
            2 => (None, Some(value(self))),
            _ => (Some(value(self)), Some(value(self))),
        };
        let bearing = if self.stream.chance(50) {
            Bearing::Down
        } else {
            self.bearing()
        };
        LoadKind::Spread {
            leg,
            from,
            to,
            first,
            last,
            bearing,
        }
    }
}
