//! A short way to write a system with something sought.

use leverwright::problem::{Given, GivenId, Place};
use leverwright::system::{
    Asked, Bearing, Body, BodyId, Cord, CordEnd, Hold, HoldKind, Leg, Load, LoadKind, Parts,
    Sought, Spot, System, Weight, WeightKind, When,
};
use leverwright::text::Symbol;
use leverwright::units::Dimension;

/// The acceleration of free fall in these tests, in m/s².
pub(super) const G: f64 = 9.81;

/// A system that is being told.
pub(super) struct Scene(Parts);

impl Scene {
    pub(super) fn new() -> Scene {
        Scene(Parts {
            title: String::new(),
            statement: String::new(),
            caution: String::new(),
            givens: Vec::new(),
            bodies: Vec::new(),
            weights: Vec::new(),
            loads: Vec::new(),
            cords: Vec::new(),
            holds: Vec::new(),
            asked: vec![Asked::Sought],
            sought: None,
            gravity: G,
            accepted_gravity: Vec::new(),
            figures: 3,
        })
    }

    pub(super) fn given(&mut self, symbol: &str, value: f64, dimension: Dimension) -> GivenId {
        self.0.givens.push(Given {
            symbol: Symbol::new(symbol),
            meaning: String::new(),
            value,
            written: String::new(),
            dimension,
        });
        self.last_given()
    }

    pub(super) fn last_given(&self) -> GivenId {
        GivenId(self.0.givens.len() - 1)
    }

    pub(super) fn length(&mut self, symbol: &str, value: f64) -> GivenId {
        self.given(symbol, value, Dimension::LENGTH)
    }

    pub(super) fn angle(&mut self, symbol: &str, value: f64) -> GivenId {
        self.given(symbol, value, Dimension::ANGLE)
    }

    pub(super) fn force(&mut self, symbol: &str, value: f64) -> GivenId {
        self.given(symbol, value, Dimension::FORCE)
    }

    pub(super) fn number(&mut self, symbol: &str, value: f64) -> GivenId {
        self.given(symbol, value, Dimension::NUMBER)
    }

    fn add_body(&mut self, legs: Vec<Leg>, knot: bool) -> BodyId {
        self.0.bodies.push(Body {
            noun: "body".to_owned(),
            start: Spot::Origin,
            legs,
            knot,
        });
        BodyId(self.0.bodies.len() - 1)
    }

    /// A straight body from the origin.
    pub(super) fn body(&mut self, bearing: Bearing, length: GivenId) -> BodyId {
        self.add_body(vec![Leg { length, bearing }], false)
    }

    /// A body of which only coordinates are told.
    pub(super) fn block(&mut self) -> BodyId {
        self.add_body(Vec::new(), false)
    }

    /// A point at the origin where forces meet.
    pub(super) fn knot(&mut self) -> BodyId {
        self.add_body(Vec::new(), true)
    }

    pub(super) fn foot(body: BodyId) -> Spot {
        Scene::on(body, Place::Foot)
    }

    pub(super) fn middle(body: BodyId) -> Spot {
        Scene::on(body, Place::Middle)
    }

    pub(super) fn tip(body: BodyId) -> Spot {
        Scene::on(body, Place::Tip)
    }

    pub(super) fn at(body: BodyId, distance: GivenId) -> Spot {
        Scene::on(body, Place::At(distance))
    }

    fn on(body: BodyId, place: Place) -> Spot {
        Spot::On {
            body,
            leg: 0,
            place,
        }
    }

    /// The weight of a mass of its own given.
    pub(super) fn weight(&mut self, symbol: &str, body: BodyId, at: Spot, mass_kg: f64) {
        let mass = self.given(&format!("mass_{symbol}"), mass_kg, Dimension::MASS);
        self.0.weights.push(Weight {
            symbol: Symbol::new(symbol),
            noun: "weight".to_owned(),
            body,
            kind: WeightKind::Point { at, mass },
        });
    }

    pub(super) fn load(&mut self, symbol: &str, body: BodyId, kind: LoadKind) {
        self.0.loads.push(Load {
            symbol: Symbol::new(symbol),
            noun: "load".to_owned(),
            body,
            kind,
        });
    }

    pub(super) fn rope(&mut self, symbol: &str, ends: &[(BodyId, Spot, Bearing)]) {
        let ends = ends.iter().cloned();
        self.0.cords.push(Cord {
            symbol: Symbol::new(symbol),
            noun: "rope".to_owned(),
            ends: ends
                .map(|(body, at, bearing)| CordEnd { body, at, bearing })
                .collect(),
        });
    }

    pub(super) fn hold(&mut self, symbol: &str, body: BodyId, at: Spot, kind: HoldKind) {
        self.0.holds.push(Hold {
            symbol: Symbol::new(symbol),
            noun: "hold".to_owned(),
            body,
            by: None,
            at,
            kind,
        });
    }

    /// The system in which the given of this name is sought.
    pub(super) fn seek(self, symbol: &str, low: f64, high: f64, when: When) -> System {
        let named = |given: &Given| given.symbol.as_str() == symbol;
        let given = GivenId(self.0.givens.iter().position(named).unwrap());
        self.seek_id(given, low, high, when)
    }

    pub(super) fn seek_id(mut self, given: GivenId, low: f64, high: f64, when: When) -> System {
        self.0.sought = Some(Sought {
            given,
            low,
            high,
            when,
        });
        System::new(self.0).unwrap_or_else(|faults| panic!("{faults:?}"))
    }
}
