//! Hand-made scenes and what is worked out of them.

use leverwright::key::{Axis, Key, Part, Sampling, StepId, derive};
use leverwright::mistakes::{Instance, Scope, instances, value};
use leverwright::problem::{
    Body, Direction, ForceId, Given, GivenId, Load, LoadKind, Parts, Place, Problem, Reference,
    Rope, Side, Support, SupportKind, Tilt, Upright,
};
use leverwright::text::Symbol;
use leverwright::units::Dimension;

pub(crate) const G: f64 = 9.8;
pub(crate) const OWN: ForceId = ForceId::OwnWeight;
pub(crate) const FIRST: ForceId = ForceId::Load(0);
pub(crate) const SECOND: ForceId = ForceId::Load(1);
pub(crate) const ROPE: ForceId = ForceId::Rope(0);
pub(crate) const PULL: StepId = StepId::Pull(ROPE);
pub(crate) const LEVEL_PART: StepId =
    StepId::Reaction(ForceId::Support(0), Part::Along(Axis::Horizontal));
pub(crate) const UPRIGHT_PART: StepId =
    StepId::Reaction(ForceId::Support(0), Part::Along(Axis::Vertical));

pub(crate) fn sin(degrees: f64) -> f64 {
    degrees.to_radians().sin()
}

pub(crate) fn cos(degrees: f64) -> f64 {
    degrees.to_radians().cos()
}

/// How the rope of a scene pulls.
#[derive(Clone, Copy)]
pub(crate) enum Pulling {
    Up,
    Down,
    Level,
    /// Up and back, so many degrees above the horizontal.
    Back(f64),
    /// On the upper side, so many degrees from the part of the body that leads to its foot.
    FromFoot(f64),
}

/// A body hinged at its foot, leaning right. Loads: mass and distance, `None` for the tip.
#[derive(Clone)]
pub(crate) struct Scene {
    pub(crate) length: f64,
    pub(crate) mass: f64,
    /// Degrees above the horizontal; 0 is level.
    pub(crate) rise: f64,
    pub(crate) loads: Vec<(f64, Option<f64>)>,
    /// A given force straight up at the tip, in newtons.
    pub(crate) lift: Option<f64>,
    pub(crate) tied: f64,
    /// Where the hinge is; `None` for the foot.
    pub(crate) hinge: Option<f64>,
    pub(crate) pulling: Pulling,
}

impl Scene {
    pub(crate) fn problem(&self) -> Problem {
        let mut givens = Vec::new();
        let mut given = |symbol: &str, number: f64, unit: &str, dimension: Dimension| {
            let value = match dimension {
                Dimension::ANGLE => number.to_radians(),
                _ => number,
            };
            givens.push(Given {
                symbol: Symbol::new(symbol),
                meaning: symbol.to_owned(),
                value,
                written: format!("{number}{unit}"),
                dimension,
            });
            GivenId(givens.len() - 1)
        };
        let length = given("L", self.length, " m", Dimension::LENGTH);
        let mass = given("m_b", self.mass, " kg", Dimension::MASS);
        let tilt = match self.rise {
            0.0 => Tilt::Level,
            rise => Tilt::Rising {
                angle: given("θ", rise, "°", Dimension::ANGLE),
                from: Reference::Horizontal,
            },
        };
        let mut loads = Vec::new();
        for (index, (mass, at)) in self.loads.iter().enumerate() {
            let number = index + 1;
            let mass = given(&format!("m_{number}"), *mass, " kg", Dimension::MASS);
            let at = at.map_or(Place::Tip, |at| {
                Place::At(given(&format!("d_{number}"), at, " m", Dimension::LENGTH))
            });
            loads.push(Load {
                symbol: Symbol::new(format!("W_{number}")),
                noun: "lamp".into(),
                at,
                kind: LoadKind::Mass(mass),
                stands: false,
            });
        }
        if let Some(newtons) = self.lift {
            loads.push(Load {
                symbol: Symbol::new("F"),
                noun: "float".into(),
                at: Place::Tip,
                kind: LoadKind::Force {
                    size: given("F_0", newtons, " N", Dimension::FORCE),
                    direction: Direction::Up,
                },
                stands: false,
            });
        }
        let hinge = self.hinge.map_or(Place::Foot, |at| {
            Place::At(given("d_H", at, " m", Dimension::LENGTH))
        });
        let at = Place::At(given("d_T", self.tied, " m", Dimension::LENGTH));
        let direction = match self.pulling {
            Pulling::Up => Direction::Up,
            Pulling::Down => Direction::Down,
            Pulling::Level => Direction::Level(Side::Left),
            Pulling::Back(slope) => Direction::Oblique {
                angle: given("β", slope, "°", Dimension::ANGLE),
                from: Reference::Horizontal,
                upright: Upright::Up,
                side: Side::Left,
            },
            Pulling::FromFoot(angle) => Direction::FromBody {
                angle: given("β", angle, "°", Dimension::ANGLE),
            },
        };
        Problem::new(Parts {
            title: "A boom".into(),
            statement: "A boom.".into(),
            caution: String::new(),
            givens,
            body: Body {
                noun: "boom".into(),
                length,
                mass: Some(mass),
                weight_symbol: Symbol::new("W_b"),
                centre: Place::Middle,
                tilt,
                towards: Side::Right,
            },
            supports: vec![Support {
                symbol: Symbol::new("H"),
                noun: "hinge".into(),
                at: hinge,
                kind: SupportKind::Hinge,
            }],
            ropes: vec![Rope {
                symbol: Symbol::new("T"),
                noun: "rope".into(),
                at,
                direction,
            }],
            loads,
            gravity: G,
            accepted_gravity: vec![9.81],
            figures: 3,
        })
        .unwrap()
    }
}

/// Level, 5 m, 14 kg, 9 kg at 3.2 m, upright rope at 4 m.
pub(crate) fn level_upright() -> Scene {
    Scene {
        length: 5.0,
        mass: 14.0,
        rise: 0.0,
        loads: vec![(9.0, Some(3.2))],
        lift: None,
        tied: 4.0,
        hinge: None,
        pulling: Pulling::Up,
    }
}

/// Level, 4.4 m, 12 kg, 7 kg at the tip, rope at 3 m, 35° above the horizontal.
pub(crate) fn level_oblique() -> Scene {
    Scene {
        length: 4.4,
        mass: 12.0,
        rise: 0.0,
        loads: vec![(7.0, None)],
        lift: None,
        tied: 3.0,
        hinge: None,
        pulling: Pulling::Back(35.0),
    }
}

/// 6 m, 20 kg, rising 25°, 11 kg at 2.2 m and 8 kg at the tip, rope at 4.5 m.
pub(crate) fn tilted(pulling: Pulling) -> Scene {
    Scene {
        length: 6.0,
        mass: 20.0,
        rise: 25.0,
        loads: vec![(11.0, Some(2.2)), (8.0, None)],
        lift: None,
        tied: 4.5,
        hinge: None,
        pulling,
    }
}

pub(crate) struct Worked {
    pub(crate) problem: Problem,
    pub(crate) key: Key,
    pub(crate) sampling: Sampling,
    pub(crate) found: Vec<Instance>,
}

pub(crate) fn worked(scene: &Scene) -> Worked {
    let problem = scene.problem();
    let key = derive(&problem).unwrap();
    let sampling = Sampling::of(&problem);
    let found = instances(&problem, &key, &sampling);
    Worked {
        problem,
        key,
        sampling,
        found,
    }
}

pub(crate) fn all_scenes() -> Vec<Scene> {
    vec![
        level_upright(),
        level_oblique(),
        tilted(Pulling::Level),
        tilted(Pulling::Back(50.0)),
        tilted(Pulling::FromFoot(75.0)),
    ]
}

impl Worked {
    pub(crate) fn instance(&self, id: &str, scope: Scope) -> &Instance {
        self.found
            .iter()
            .find(|instance| instance.mistake.id == id && instance.scope == scope)
            .unwrap_or_else(|| panic!("{id} {scope:?} is not among the instances"))
    }

    /// Checks the values of a table of mistakes at their steps.
    pub(crate) fn check(&self, rows: &[(&str, Scope, StepId, f64)]) {
        for (id, scope, step, by_hand) in rows {
            let instance = self.instance(id, *scope);
            let found = value(&instance.key, &self.key, *step, &self.sampling)
                .unwrap_or_else(|| panic!("{id} {scope:?} has no value at {step:?}"));
            assert!(
                (found - by_hand).abs() < 1e-9 * by_hand.abs(),
                "{id} {scope:?} at {step:?}: {found}, by hand {by_hand}"
            );
        }
    }
}
