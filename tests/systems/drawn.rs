//! Random systems: every kind of point, direction, load, hold, question and condition.

use leverwright::problem::{Given, GivenId, Place, Reference, Side, Upright};
use leverwright::system::{
    ActId, Asked, Bearing, Body, BodyId, Coordinate, Cord, CordEnd, Facing, Friction, Hold,
    HoldKind, Lamina, LaminaMass, Leg, Load, LoadKind, Parts, Piece, Shape, Sought, Spot, System,
    Turning, Weight, WeightKind, When,
};
use leverwright::text::Symbol;
use leverwright::units::Dimension;
use rand::rngs::ChaCha8Rng;
use rand::{Rng, RngExt, SeedableRng};

/// What a number is drawn as: its dimension, its range in SI, its unit.
type Kind = (&'static str, Dimension, f64, f64, &'static str);

const LEG: Kind = ("L", Dimension::LENGTH, 1.0, 5.0, "m");
const PLACE: Kind = ("d", Dimension::LENGTH, 0.01, 0.9, "m");
const COORDINATE: Kind = ("x", Dimension::LENGTH, -3.0, 3.0, "m");
const MASS: Kind = ("m", Dimension::MASS, 0.1, 90.0, "kg");
const FORCE: Kind = ("P", Dimension::FORCE, 1.0, 900.0, "N");
const COUPLE: Kind = ("C", Dimension::MOMENT, 1.0, 90.0, "N m");
const SPREAD: Kind = ("q", Dimension::FORCE_A_LENGTH, 1.0, 90.0, "N/m");
const SLOPE: Kind = ("θ", Dimension::ANGLE, 0.1, 1.5, "rad");
const TURN: Kind = ("φ", Dimension::ANGLE, 1.6, 3.1, "rad");
const RADIUS: Kind = ("r", Dimension::LENGTH, 0.05, 0.2, "m");
const INSIDE: Kind = ("u", Dimension::LENGTH, 0.3, 0.7, "m");
const DENSITY: Kind = ("σ", Dimension::MASS_PER_AREA, 1.0, 30.0, "kg/m²");
const COEFFICIENT: Kind = ("μ", Dimension::NUMBER, 0.05, 1.2, "");

struct Draw {
    rng: ChaCha8Rng,
    /// The place that each new given takes, in the order of drawing.
    places: Vec<usize>,
    givens: Vec<(usize, Kind, Given)>,
}

/// A random system; `None` where the draw happens to point nowhere.
pub(super) fn system(seed: u64) -> Option<System> {
    // Drawn twice: only then is known how many givens there are to be put into another order.
    let first = parts(seed, Vec::new());
    let count = first.givens.len();
    let mut places: Vec<usize> = (0..count).collect();
    if seed.is_multiple_of(2) {
        places.reverse();
    } else if seed.is_multiple_of(3) {
        places.rotate_left(count / 2);
    }
    System::new(parts(seed, places)).ok()
}

fn parts(seed: u64, places: Vec<usize>) -> Parts {
    let mut draw = Draw {
        rng: ChaCha8Rng::seed_from_u64(seed),
        places,
        givens: Vec::new(),
    };
    let mut parts = draw.parts();
    draw.givens.sort_by_key(|(place, _, _)| *place);
    parts.givens = draw.givens.into_iter().map(|(_, _, given)| given).collect();
    if let Some(sought) = &mut parts.sought {
        let given = &mut parts.givens[sought.given.0];
        let half = 0.5 * given.value.abs();
        (sought.low, sought.high) = (given.value - half, given.value + half);
        given.value = 0.5 * (sought.low + sought.high);
        given.written = "?".to_owned();
    }
    parts
}

impl Draw {
    fn below(&mut self, end: usize) -> usize {
        (self.rng.next_u64() % end as u64) as usize
    }

    fn coin(&mut self) -> bool {
        self.below(2) == 0
    }

    fn pick<T: Clone>(&mut self, among: &[T]) -> T {
        among[self.below(among.len())].clone()
    }

    /// A given of this kind: one in four is an old one.
    fn given(&mut self, kind: Kind) -> GivenId {
        let old: Vec<usize> = self
            .givens
            .iter()
            .filter(|(_, known, _)| known.0 == kind.0)
            .map(|(place, _, _)| *place)
            .collect();
        if !old.is_empty() && self.below(4) == 0 {
            return GivenId(self.pick(&old));
        }
        let (letter, dimension, low, high, unit) = kind;
        let count = self.givens.len();
        let place = self.places.get(count).copied().unwrap_or(count);
        let value: f64 = self.rng.random_range(low..high);
        let (value, written) = match self.below(4) {
            // As printed.
            0 => {
                let digits = format!("{value:.2}");
                let printed = format!("{digits} {unit}");
                (digits.parse().unwrap(), printed.trim().to_owned())
            }
            1 if kind.0 == "x" => (0.0, "0 m".to_owned()),
            // Not the printed one.
            2 => (value, format!("about {value:.1}")),
            _ => (value, format!("{value} {unit}").trim().to_owned()),
        };
        let meaning = if self.coin() {
            String::new()
        } else {
            format!("what {letter}{count} is")
        };
        let given = Given {
            symbol: Symbol::new(format!("{letter}{count}")),
            meaning,
            value,
            written,
            dimension,
        };
        self.givens.push((place, kind, given));
        GivenId(place)
    }

    fn coordinate(&mut self) -> Coordinate {
        let count = self.below(4);
        let mut terms = Vec::new();
        for _ in 0..count {
            let kind = self.pick(&[COORDINATE, PLACE, LEG]);
            let factor = self.pick(&[1.0, 1.0, -1.0, 0.5, -2.25]);
            terms.push((factor, self.given(kind)));
        }
        Coordinate(terms)
    }

    fn place(&mut self) -> Place {
        match self.below(5) {
            0 => Place::Foot,
            1 => Place::Middle,
            2 => Place::Tip,
            3 => Place::Fraction { over: 2, under: 3 },
            _ => Place::At(self.given(PLACE)),
        }
    }

    /// A leg among those of these bodies, if they have one.
    fn leg(&mut self, bodies: &[Body]) -> Option<(BodyId, usize)> {
        let legs: Vec<(BodyId, usize)> = bodies
            .iter()
            .enumerate()
            .flat_map(|(body, found)| (0..found.legs.len()).map(move |leg| (BodyId(body), leg)))
            .collect();
        (!legs.is_empty()).then(|| self.pick(&legs))
    }

    fn spot(&mut self, bodies: &[Body]) -> Spot {
        match (self.below(4), self.leg(bodies)) {
            (0, _) => Spot::Origin,
            (1 | 2, Some((body, leg))) => Spot::On {
                body,
                leg,
                place: self.place(),
            },
            _ => Spot::At {
                x: self.coordinate(),
                y: self.coordinate(),
            },
        }
    }

    fn bearing(&mut self, bodies: &[Body], points: bool) -> Bearing {
        let side = if self.coin() { Side::Left } else { Side::Right };
        match (self.below(10), self.leg(bodies)) {
            (0, _) => Bearing::Up,
            (1, _) => Bearing::Down,
            (2, _) => Bearing::Level(side),
            (3, _) => Bearing::FromAxis {
                angle: self.given(TURN),
            },
            (4, _) if points => Bearing::Towards(self.spot(bodies)),
            (5, Some((body, leg))) => Bearing::Along {
                body,
                leg,
                onward: self.coin(),
            },
            (6, Some((body, leg))) => Bearing::Across {
                body,
                leg,
                left: self.coin(),
            },
            (7, Some((body, leg))) => {
                let kind = if self.coin() { SLOPE } else { TURN };
                Bearing::FromLeg {
                    angle: self.given(kind),
                    body,
                    leg,
                    onward: self.coin(),
                    left: self.coin(),
                }
            }
            _ => Bearing::Oblique {
                angle: self.given(SLOPE),
                from: if self.coin() {
                    Reference::Horizontal
                } else {
                    Reference::Vertical
                },
                upright: if self.coin() {
                    Upright::Up
                } else {
                    Upright::Down
                },
                side,
            },
        }
    }

    fn bodies(&mut self) -> Vec<Body> {
        let mut bodies: Vec<Body> = Vec::new();
        for index in 0..1 + self.below(3) {
            let start = self.spot(&bodies);
            bodies.push(Body {
                noun: format!("body \"{index}\""),
                start,
                legs: Vec::new(),
                knot: false,
            });
            for _ in 0..self.below(4) {
                let length = self.given(LEG);
                let bearing = self.bearing(&bodies, false);
                bodies[index].legs.push(Leg { length, bearing });
            }
        }
        bodies
    }

    fn load(&mut self, bodies: &[Body], body: BodyId, index: usize) -> Load {
        let mut symbol = Symbol::new(format!("W_{index}"));
        let legs = bodies[body.0].legs.len();
        let kind = match self.below(4) {
            0 => LoadKind::Mass {
                at: self.spot(bodies),
                mass: self.given(MASS),
            },
            1 if legs > 0 => {
                let (first, last) = (self.given(SPREAD), self.given(SPREAD));
                let which = self.below(3);
                LoadKind::Spread {
                    leg: self.below(legs),
                    from: self.pick(&[Place::Foot, Place::Fraction { over: 1, under: 7 }]),
                    to: self.pick(&[Place::Tip, Place::Middle]),
                    first: (which != 0).then_some(first),
                    last: (which != 1).then_some(last),
                    bearing: self.bearing(bodies, true),
                }
            }
            2 => LoadKind::Couple {
                size: self.given(COUPLE),
                turning: if self.coin() {
                    Turning::Clockwise
                } else {
                    Turning::Anticlockwise
                },
            },
            _ => LoadKind::Force {
                at: self.spot(bodies),
                size: self.given(FORCE),
                bearing: self.bearing(bodies, true),
            },
        };
        // A force and its size are one thing and may have one name, if no other force has it.
        if let LoadKind::Force { size, .. } | LoadKind::Couple { size, .. } = &kind
            && let Some((_, _, given)) = self.givens.iter().find(|(place, _, _)| *place == size.0)
            && self.givens.len().is_multiple_of(2)
        {
            symbol = given.symbol.clone();
        }
        Load {
            symbol,
            noun: "load".to_owned(),
            body,
            kind,
        }
    }

    /// A push and the friction square to it; limiting where the push has a square bearing.
    fn rough(&mut self, bodies: &[Body]) -> (Bearing, Friction) {
        let push = self.bearing(bodies, true);
        let friction = match (self.below(3), self.square_to(&push)) {
            (0, _) => Friction::AsNeeded,
            (1, _) | (_, None) => Friction::UpTo(self.given(COEFFICIENT)),
            (_, Some(bearing)) => Friction::Limiting {
                coefficient: self.given(COEFFICIENT),
                bearing,
            },
        };
        (push, friction)
    }

    fn square_to(&mut self, push: &Bearing) -> Option<Bearing> {
        let side = if self.coin() { Side::Left } else { Side::Right };
        Some(match push.clone() {
            Bearing::Up | Bearing::Down => Bearing::Level(side),
            Bearing::Level(_) => Bearing::Up,
            Bearing::Oblique {
                angle,
                from,
                upright,
                side,
            } => Bearing::Oblique {
                angle,
                from: match from {
                    Reference::Horizontal => Reference::Vertical,
                    Reference::Vertical => Reference::Horizontal,
                },
                upright,
                side: side.other(),
            },
            Bearing::Along { body, leg, .. } => Bearing::Across {
                body,
                leg,
                left: self.coin(),
            },
            Bearing::Across { body, leg, .. } => Bearing::Along {
                body,
                leg,
                onward: self.coin(),
            },
            Bearing::FromAxis { .. } | Bearing::Towards(_) | Bearing::FromLeg { .. } => {
                return None;
            }
        })
    }

    fn hold(&mut self, bodies: &[Body], body: BodyId, index: usize) -> Hold {
        let kind = match self.below(7) {
            0 => HoldKind::Hinge,
            1 => HoldKind::Push(self.bearing(bodies, true)),
            2 => HoldKind::Line(self.bearing(bodies, true)),
            3 => HoldKind::BuiltIn,
            4 => HoldKind::Couple,
            5 => {
                let (push, friction) = self.rough(bodies);
                HoldKind::Rough { push, friction }
            }
            _ => {
                let (push, friction) = self.rough(bodies);
                let width = self.given(LEG);
                HoldKind::Base {
                    push,
                    friction,
                    width,
                }
            }
        };
        let other = BodyId(self.below(bodies.len()));
        Hold {
            symbol: Symbol::new(format!("H_{index}")),
            noun: "hold".to_owned(),
            body,
            by: (other != body && self.coin()).then_some(other),
            at: self.spot(bodies),
            kind,
        }
    }

    fn weight(&mut self, bodies: &[Body]) -> WeightKind {
        if self.below(3) > 0 {
            return WeightKind::Point {
                at: self.spot(bodies),
                mass: self.given(MASS),
            };
        }
        let sheet = Shape::Rectangle {
            width: self.given(LEG),
            height: self.given(LEG),
        };
        let mut pieces = vec![self.piece(sheet, Coordinate::default())];
        let one = |given| Coordinate(vec![(1.0, given)]);
        match self.below(3) {
            0 => {
                // It fits into every sheet that is drawn.
                let radius = self.given(RADIUS);
                let x = one(self.given(INSIDE));
                let mut hole = self.piece(Shape::Disc { radius }, x);
                (hole.y, hole.hole) = (one(self.given(INSIDE)), true);
                pieces.push(hole);
                let mass = match self.coin() {
                    true => LaminaMass::Whole(self.given(MASS)),
                    false => LaminaMass::PerArea(self.given(DENSITY)),
                };
                WeightKind::Lamina(Lamina { pieces, mass })
            }
            which => {
                let shape = match which {
                    1 => Shape::Semicircle {
                        radius: self.given(RADIUS),
                    },
                    _ if self.coin() => Shape::QuarterCircle {
                        radius: self.given(RADIUS),
                    },
                    _ => Shape::Triangle {
                        width: self.given(LEG),
                        height: self.given(LEG),
                        apex: self.place(),
                    },
                };
                let x = self.coordinate();
                let mut more = self.piece(shape, x);
                more.points = self.pick(&[Facing::Up, Facing::Left, Facing::Down, Facing::Right]);
                pieces.push(more);
                for piece in &mut pieces {
                    piece.mass = Some(self.given(MASS));
                }
                let mass = LaminaMass::OfPieces;
                WeightKind::Lamina(Lamina { pieces, mass })
            }
        }
    }

    fn piece(&mut self, shape: Shape, x: Coordinate) -> Piece {
        Piece {
            noun: "piece".to_owned(),
            shape,
            x,
            y: Coordinate::default(),
            points: Facing::Up,
            hole: false,
            mass: None,
        }
    }

    fn parts(&mut self) -> Parts {
        let bodies = self.bodies();
        let all: Vec<BodyId> = (0..bodies.len()).map(BodyId).collect();
        let mut weights = Vec::new();
        for (index, body) in all.iter().enumerate() {
            weights.push(Weight {
                symbol: Symbol::new(format!("G_{index}")),
                noun: "part".to_owned(),
                body: *body,
                kind: self.weight(&bodies),
            });
        }
        let with_ring = self.below(3) == 0;
        if with_ring {
            // At a knot all forces act at one point.
            weights.push(Weight {
                symbol: Symbol::new("G_k"),
                noun: "ring".to_owned(),
                body: BodyId(bodies.len()),
                kind: WeightKind::Point {
                    at: Spot::Origin,
                    mass: self.given(MASS),
                },
            });
        }
        let mut loads: Vec<Load> = Vec::new();
        for index in 0..self.below(4) {
            let body = self.pick(&all);
            loads.push(self.load(&bodies, body, index));
        }
        let spread = loads
            .iter()
            .position(|load| matches!(load.kind, LoadKind::Spread { .. }));
        if let (Some(spread), WeightKind::Point { at, .. }) = (spread, &mut weights[0].kind) {
            *at = Spot::Resultant(spread);
        }
        let mut cords = Vec::new();
        for index in 0..self.below(3) {
            let mut ends = Vec::new();
            for _ in 0..1 + self.below(2) {
                ends.push(CordEnd {
                    body: self.pick(&all),
                    at: self.spot(&bodies),
                    bearing: self.bearing(&bodies, true),
                });
            }
            cords.push(Cord {
                symbol: Symbol::new(format!("T_{index}")),
                noun: "rope".to_owned(),
                ends,
            });
        }
        let mut holds = Vec::new();
        for index in 0..1 + self.below(4) {
            let body = self.pick(&all);
            holds.push(self.hold(&bodies, body, index));
        }
        let sought = self.sought(&cords, &holds);
        let asked = self.asked(&holds, sought.is_some());
        let mut bodies = bodies;
        if with_ring {
            bodies.push(Body {
                noun: "ring".to_owned(),
                start: Spot::Origin,
                legs: Vec::new(),
                knot: true,
            });
        }
        Parts {
            title: "A {brace} of \"beams\"".to_owned(),
            statement: "Braces {L} {{m_1=}} }".to_owned(),
            caution: "For learning only.".to_owned(),
            givens: Vec::new(),
            bodies,
            weights,
            loads,
            cords,
            holds,
            asked,
            sought,
            gravity: self.rng.random_range(1.0..20.0),
            accepted_gravity: vec![9.81],
            figures: 2 + self.below(5) as u8,
        }
    }

    fn sought(&mut self, cords: &[Cord], holds: &[Hold]) -> Option<Sought> {
        let act = ActId::Hold(self.below(holds.len()));
        let ActId::Hold(index) = act else { return None };
        let when = match (self.below(4), &holds[index].kind) {
            (0 | 1, HoldKind::Rough { .. }) | (0, HoldKind::Base { .. }) => When::Slips {
                act,
                coefficient: self.given(COEFFICIENT),
            },
            (1 | 2, HoldKind::Base { .. }) => When::Topples(act),
            (1, _) if !cords.is_empty() => When::Reaches {
                act: ActId::Cord(0),
                limit: self.given(FORCE),
            },
            (2, _) => When::Vanishes(act),
            (3, _) => When::Rests(BodyId(0)),
            _ => return None,
        };
        // A zero has no range about it.
        let able: Vec<usize> = self
            .givens
            .iter()
            .filter(|(_, _, given)| given.value != 0.0)
            .map(|(place, _, _)| *place)
            .collect();
        let given = GivenId(self.pick(&able));
        Some(Sought {
            given,
            low: 0.0,
            high: 0.0,
            when,
        })
    }

    fn asked(&mut self, holds: &[Hold], sought: bool) -> Vec<Asked> {
        let mut asked = vec![Asked::Force(ActId::Weight(0))];
        for (index, hold) in holds.iter().enumerate() {
            let id = ActId::Hold(index);
            asked.push(match (&hold.kind, self.below(3)) {
                (HoldKind::Couple | HoldKind::BuiltIn | HoldKind::Base { .. }, 0) => {
                    Asked::Couple(id)
                }
                (HoldKind::Couple, _) | (_, 0) => Asked::Force(id),
                (_, 1) => Asked::Horizontal(id),
                _ => Asked::Vertical(id),
            });
        }
        if sought {
            asked.push(Asked::Sought);
        }
        asked
    }
}
