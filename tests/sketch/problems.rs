//! Problems that are drawn in the tests.

use leverwright::problem::{
    Body, Direction, Given, GivenId, Load, LoadKind, Parts, Place, Problem, Reference, Rope, Side,
    Support, SupportKind, Tilt, Upright,
};
use leverwright::text::Symbol;
use leverwright::units::Dimension;

/// Collects givens and parts.
pub(super) struct Maker {
    parts: Parts,
}

impl Maker {
    pub(super) fn new(noun: &str, length: f64) -> Maker {
        let mut maker = Maker {
            parts: Parts {
                title: "Test".into(),
                statement: "A test.".into(),
                caution: String::new(),
                givens: Vec::new(),
                body: Body {
                    noun: noun.into(),
                    length: GivenId(0),
                    mass: None,
                    weight_symbol: Symbol::new("W_b"),
                    centre: Place::Middle,
                    tilt: Tilt::Level,
                    towards: Side::Right,
                },
                supports: Vec::new(),
                ropes: Vec::new(),
                loads: Vec::new(),
                gravity: 9.8,
                accepted_gravity: Vec::new(),
                figures: 3,
            },
        };
        maker.metres("L", length);
        maker
    }

    fn given(
        &mut self,
        symbol: &str,
        value: f64,
        written: String,
        dimension: Dimension,
    ) -> GivenId {
        self.parts.givens.push(Given {
            symbol: Symbol::new(symbol),
            meaning: format!("the {symbol} of the test"),
            value,
            written,
            dimension,
        });
        GivenId(self.parts.givens.len() - 1)
    }

    pub(super) fn metres(&mut self, symbol: &str, value: f64) -> GivenId {
        self.given(symbol, value, format!("{value} m"), Dimension::LENGTH)
    }

    pub(super) fn kilograms(&mut self, symbol: &str, value: f64) -> GivenId {
        self.given(symbol, value, format!("{value} kg"), Dimension::MASS)
    }

    pub(super) fn newtons(&mut self, symbol: &str, value: f64) -> GivenId {
        self.given(symbol, value, format!("{value} N"), Dimension::FORCE)
    }

    pub(super) fn degrees(&mut self, symbol: &str, value: f64) -> GivenId {
        let written = format!("{value}°");
        self.given(symbol, value.to_radians(), written, Dimension::ANGLE)
    }

    pub(super) fn own_mass(mut self, kilograms: f64) -> Maker {
        self.parts.body.mass = Some(self.kilograms("m_b", kilograms));
        self
    }

    pub(super) fn rising(mut self, degrees: f64, from: Reference) -> Maker {
        let angle = self.degrees("θ", degrees);
        self.parts.body.tilt = Tilt::Rising { angle, from };
        self
    }

    pub(super) fn towards(mut self, side: Side) -> Maker {
        self.parts.body.towards = side;
        self
    }

    pub(super) fn support(mut self, symbol: &str, at: Place, kind: SupportKind) -> Maker {
        self.parts.supports.push(Support {
            symbol: Symbol::new(symbol),
            noun: "hinge".into(),
            at,
            kind,
        });
        self
    }

    pub(super) fn hinge(self) -> Maker {
        self.support("H", Place::Foot, SupportKind::Hinge)
    }

    pub(super) fn rope(mut self, at: Place, direction: Direction) -> Maker {
        self.parts.ropes.push(Rope {
            symbol: Symbol::new("T"),
            noun: "rope".into(),
            at,
            direction,
        });
        self
    }

    pub(super) fn oblique_rope(mut self, at: Place, degrees: f64, side: Side) -> Maker {
        let angle = self.degrees("φ", degrees);
        self.rope(
            at,
            Direction::Oblique {
                angle,
                from: Reference::Horizontal,
                upright: Upright::Up,
                side,
            },
        )
    }

    pub(super) fn hung(mut self, kilograms: f64, at: Place) -> Maker {
        let number = self.parts.loads.len() + 1;
        let mass = self.kilograms(&format!("m_{number}"), kilograms);
        self.parts.loads.push(Load {
            symbol: Symbol::new(format!("W_{number}")),
            noun: "lamp".into(),
            at,
            kind: LoadKind::Mass(mass),
            stands: false,
        });
        self
    }

    pub(super) fn pushed(mut self, newtons: f64, at: Place, direction: Direction) -> Maker {
        let size = self.newtons("P", newtons);
        self.parts.loads.push(Load {
            symbol: Symbol::new("F"),
            noun: "push".into(),
            at,
            kind: LoadKind::Force { size, direction },
            stands: false,
        });
        self
    }

    pub(super) fn at(
        mut self,
        symbol: &str,
        metres: f64,
        then: impl FnOnce(Maker, Place) -> Maker,
    ) -> Maker {
        let place = Place::At(self.metres(symbol, metres));
        then(self, place)
    }

    pub(super) fn problem(self) -> Problem {
        Problem::new(self.parts).unwrap()
    }
}

/// A level beam on a hinge, held by an upright rope at its tip, with one lamp.
pub(super) fn level_upright() -> Problem {
    Maker::new("beam", 3.0)
        .hinge()
        .rope(Place::Tip, Direction::Up)
        .at("d_1", 1.2, |maker, place| maker.hung(12.0, place))
        .own_mass(8.0)
        .problem()
}

/// A level beam whose rope runs up and back to the wall.
pub(super) fn level_oblique() -> Problem {
    Maker::new("beam", 4.0)
        .support("H", Place::Foot, SupportKind::BuiltIn)
        .oblique_rope(Place::Fraction { over: 3, under: 4 }, 35.0, Side::Left)
        .hung(15.0, Place::Tip)
        .own_mass(20.0)
        .problem()
}

/// A tilted mast with a level rope, its own weight and two loads.
pub(super) fn mast(degrees: f64, side: Side) -> Problem {
    Maker::new("mast", 5.0)
        .rising(degrees, Reference::Horizontal)
        .towards(side)
        .hinge()
        .own_mass(25.0)
        .hung(8.0, Place::Tip)
        .at("d_2", 2.0, |maker, place| maker.hung(12.0, place))
        .rope(
            Place::Fraction { over: 4, under: 5 },
            Direction::Level(side.other()),
        )
        .problem()
}

/// A level plank on a hinge and a roller, with a given push.
pub(super) fn plank() -> Problem {
    let mut maker = Maker::new("plank", 6.0)
        .hinge()
        .support(
            "R",
            Place::Fraction { over: 2, under: 3 },
            SupportKind::Roller(Direction::Up),
        )
        .hung(30.0, Place::Tip);
    let angle = maker.degrees("β", 50.0);
    maker
        .at("d_2", 2.2, |maker, place| {
            maker.pushed(
                240.0,
                place,
                Direction::Oblique {
                    angle,
                    from: Reference::Horizontal,
                    upright: Upright::Down,
                    side: Side::Right,
                },
            )
        })
        .problem()
}

/// A boom measured from the vertical, with a rope at a given angle with the boom.
pub(super) fn boom(from_vertical: f64, with_boom: f64, side: Side) -> Problem {
    let mut maker = Maker::new("boom", 4.0)
        .rising(from_vertical, Reference::Vertical)
        .towards(side)
        .hinge()
        .own_mass(30.0)
        .hung(50.0, Place::Tip)
        .hung(10.0, Place::Middle);
    let angle = maker.degrees("γ", with_boom);
    maker
        .rope(Place::Tip, Direction::FromBody { angle })
        .problem()
}
