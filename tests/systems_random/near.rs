//! Lines that nearly meet in a point, or are nearly parallel.

use super::maker::Maker;
use leverwright::problem::{Place, Side};
use leverwright::system::{Bearing, Body, BodyId, Coordinate, Hold, HoldKind, Leg, Spot};

impl Maker<'_> {
    fn line(&mut self, at: Spot, kind: HoldKind) {
        let symbol = self.name("H");
        self.parts.holds.push(Hold {
            symbol,
            noun: "hold".to_owned(),
            body: BodyId(0),
            by: None,
            at,
            kind,
        });
    }
}

/// A beam at a hinge and a strut that all but runs through it, or three struts of which the third
/// misses the point where two meet by a hair's breadth.
pub(super) fn fill(maker: &mut Maker<'_>) {
    let body = BodyId(0);
    let length = maker.length(60, 420);
    let bearing = if maker.square {
        Bearing::Up
    } else {
        maker.at_axis_angle()
    };
    maker.parts.bodies.push(Body {
        noun: "beam".to_owned(),
        start: Spot::Origin,
        legs: vec![Leg { length, bearing }],
        knot: false,
    });
    maker.loads();
    let on = |place| Spot::On {
        body,
        leg: 0,
        place,
    };
    let decimals = maker.stream.between(1, 12) as usize;
    let digit = maker.stream.between(1, 9);
    if maker.stream.chance(50) {
        maker.line(on(Place::Foot), HoldKind::Hinge);
        let angle = maker.given("α", digit, decimals, "°");
        let bearing = Bearing::FromLeg {
            angle,
            body,
            leg: 0,
            onward: maker.stream.chance(50),
            left: maker.stream.chance(50),
        };
        maker.line(on(Place::Tip), HoldKind::Line(bearing));
    } else {
        let across = Bearing::Across {
            body,
            leg: 0,
            left: true,
        };
        let miss = maker.given("x", digit, decimals, "m");
        let beside = Spot::At {
            x: Coordinate(vec![(1.0, miss)]),
            y: Coordinate::default(),
        };
        let other = maker.bearing();
        maker.line(on(Place::Foot), HoldKind::Line(across));
        maker.line(
            on(Place::Foot),
            HoldKind::Line(Bearing::Along {
                body,
                leg: 0,
                onward: true,
            }),
        );
        maker.line(beside, HoldKind::Line(other));
    }
}

impl Maker<'_> {
    /// A beam at a hinge and a strut, and so many loads.
    pub(super) fn beam_with(&mut self, loads: usize) {
        let body = BodyId(0);
        let length = self.length(300, 420);
        self.parts.bodies.push(Body {
            noun: "beam".to_owned(),
            start: Spot::Origin,
            legs: vec![Leg {
                length,
                bearing: Bearing::Level(Side::Right),
            }],
            knot: false,
        });
        for _ in 0..loads {
            self.load(body);
        }
        let on = |place| Spot::On {
            body,
            leg: 0,
            place,
        };
        self.line(on(Place::Foot), HoldKind::Hinge);
        self.line(on(Place::Tip), HoldKind::Line(Bearing::Up));
    }
}
