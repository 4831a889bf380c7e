//! What was answered so far, and the problem that it makes.

use super::hold::{Hold, Way};
use super::prose;
use super::read::Measure;
use crate::problem::{
    Body, Direction, Given, GivenId, Load, LoadKind, Parts, Place, Problem, Reference, Rope, Side,
    Support, SupportKind, Tilt,
};
use crate::text::{Symbol, Words};
use crate::units::Dimension;

/// The acceleration of free fall of a problem that is built, in m/s² (rounded standard gravity; the
/// shipped lessons use the same).
const GRAVITY: f64 = 9.8;
/// Also taken as right, in m/s².
const ALSO: f64 = 9.81;
/// Figures in which results are asked.
const FIGURES: u8 = 3;

/// A place on the body, as it was answered.
#[derive(Clone, Debug, PartialEq)]
pub(super) enum Spot {
    Foot,
    Middle,
    Tip,
    At(Measure),
}

/// What the body carries.
#[derive(Clone, Debug, PartialEq, Default)]
pub(super) struct Carried {
    pub(super) noun: String,
    pub(super) mass: Option<Measure>,
    pub(super) spot: Option<Spot>,
    pub(super) stands: Option<bool>,
}

impl Carried {
    pub(super) fn is_whole(&self) -> bool {
        self.mass.is_some() && self.spot.is_some() && self.stands.is_some()
    }
}

/// What holds the body at one place in more than one direction.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Fixing {
    Hinge,
    BuiltIn,
    Nothing,
}

/// How the body stands.
#[derive(Clone, Debug, PartialEq)]
pub(super) enum Stance {
    Level,
    Tilted {
        from: Option<Reference>,
        angle: Option<Measure>,
    },
}

/// The answers so far. A field is `None` until it is answered.
#[derive(Clone, Debug, Default)]
pub(super) struct Draft {
    pub(super) noun: Option<String>,
    pub(super) length: Option<Measure>,
    /// The inner `None`: its own weight does not count.
    pub(super) mass: Option<Option<Measure>>,
    pub(super) stance: Option<Stance>,
    pub(super) towards: Option<Side>,
    pub(super) fixing: Option<Fixing>,
    pub(super) fixed_at: Option<Spot>,
    pub(super) holds: Vec<Hold>,
    pub(super) no_more_holds: bool,
    pub(super) loads: Vec<Carried>,
    pub(super) no_more_loads: bool,
}

impl Draft {
    /// The noun of the body.
    pub(super) fn body(&self) -> &str {
        self.noun.as_deref().unwrap_or_default()
    }

    pub(super) fn is_tilted(&self) -> bool {
        matches!(self.stance, Some(Stance::Tilted { .. }))
    }

    /// True once it is told what holds the body, at least in part where more may be told.
    pub(super) fn is_held(&self) -> bool {
        match self.fixing {
            None => false,
            Some(Fixing::Hinge) => self.no_more_holds || self.holds.iter().any(Hold::is_whole),
            Some(Fixing::BuiltIn) => self.fixed_at.is_some(),
            Some(Fixing::Nothing) => self.no_more_holds,
        }
    }

    /// True once something has a weight, or nothing will have.
    pub(super) fn is_loaded(&self) -> bool {
        matches!(self.mass, Some(Some(_)))
            || self.no_more_loads
            || self.loads.iter().any(Carried::is_whole)
    }

    /// Only what is complete: holds and loads that are still asked about are left out.
    pub(super) fn problem(&self, words: &Words) -> Option<Problem> {
        Problem::new(self.parts(words)?).ok()
    }

    fn parts(&self, words: &Words) -> Option<Parts> {
        let mut numbers = Numbers::default();
        let noun = self.noun.clone()?;
        let body = self.body_of(&mut numbers, noun, words)?;
        let (mut supports, mut ropes) = (Vec::new(), Vec::new());
        supports.extend(self.fixed(&mut numbers, words));
        for (index, hold) in self.holds.iter().filter(|hold| hold.is_whole()).enumerate() {
            let noun = words.word(hold.noun());
            let symbol = hold.symbol(&self.holds, index);
            let (at, direction) = self.held(&mut numbers, hold, (&symbol, &noun), words)?;
            let symbol = Symbol::new(symbol);
            match hold {
                Hold::Rope { .. } => ropes.push(Rope {
                    symbol,
                    noun,
                    at,
                    direction,
                }),
                Hold::Prop { .. } => supports.push(Support {
                    symbol,
                    noun,
                    at,
                    kind: SupportKind::Roller(direction),
                }),
            }
        }
        let mut loads = Vec::new();
        for (index, load) in self.loads.iter().filter(|load| load.is_whole()).enumerate() {
            loads.push(numbers.load(load, index + 1, words)?);
        }
        Some(Parts {
            title: prose::title(self, words),
            statement: prose::statement(self, words),
            caution: words.word("build.caution"),
            givens: numbers.0,
            body,
            supports,
            ropes,
            loads,
            gravity: GRAVITY,
            accepted_gravity: vec![ALSO],
            figures: FIGURES,
        })
    }

    fn body_of(&self, numbers: &mut Numbers, noun: String, words: &Words) -> Option<Body> {
        let means = |key: &str| prose::meaning(key, &noun, words);
        let length = numbers.add("L", means("build.meaning.length"), self.length.as_ref()?);
        let mass = self.mass.clone().flatten();
        let mass = mass.map(|mass| numbers.add("m_b", means("build.meaning.mass"), &mass));
        let tilt = match &self.stance {
            Some(Stance::Tilted {
                from: Some(from),
                angle: Some(angle),
            }) => Tilt::Rising {
                angle: numbers.add("θ", means("build.meaning.angle"), angle),
                from: *from,
            },
            _ => Tilt::Level,
        };
        Some(Body {
            noun,
            length,
            mass,
            weight_symbol: Symbol::new("W_b"),
            centre: Place::Middle,
            tilt,
            towards: self.towards.unwrap_or(Side::Right),
        })
    }

    /// The hinge or the built-in end.
    fn fixed(&self, numbers: &mut Numbers, words: &Words) -> Option<Support> {
        let (symbol, noun, kind) = match self.fixing? {
            Fixing::Hinge => ("H", "build.noun.hinge", SupportKind::Hinge),
            Fixing::BuiltIn => ("A", "build.noun.built-in", SupportKind::BuiltIn),
            Fixing::Nothing => return None,
        };
        let noun = words.word(noun);
        let means = || prose::meaning("build.meaning.distance", &noun, words);
        let at = numbers.place(self.fixed_at.as_ref()?, &format!("d_{symbol}"), means);
        Some(Support {
            symbol: Symbol::new(symbol),
            noun: noun.clone(),
            at,
            kind,
        })
    }

    /// Where a hold acts, and which way.
    fn held(
        &self,
        numbers: &mut Numbers,
        hold: &Hold,
        (symbol, noun): (&str, &str),
        words: &Words,
    ) -> Option<(Place, Direction)> {
        let at = numbers.place(hold.spot()?, &format!("d_{symbol}"), || {
            prose::meaning("build.meaning.distance", noun, words)
        });
        let Hold::Rope { way: Some(way), .. } = hold else {
            return Some((at, Direction::Up));
        };
        let angle_name = match symbol {
            "T" => "β".to_owned(),
            other => format!("β{}", other.trim_start_matches('T')),
        };
        let mut angle = |measure: &Measure| {
            numbers.add(
                &angle_name,
                prose::meaning("build.meaning.rope-angle", noun, words),
                measure,
            )
        };
        let direction = match way {
            Way::Up => Direction::Up,
            Way::Level(side) => Direction::Level(*side),
            Way::Aslant {
                from: Some(from),
                angle: Some(measure),
                side: Some(side),
            } => Direction::Oblique {
                angle: angle(measure),
                from: *from,
                upright: crate::problem::Upright::Up,
                side: *side,
            },
            Way::WithBody {
                angle: Some(measure),
            } => Direction::FromBody {
                angle: angle(measure),
            },
            Way::Aslant { .. } | Way::WithBody { .. } => return None,
        };
        Some((at, direction))
    }
}

/// The numbers of a problem, in the order in which they are told.
#[derive(Default)]
struct Numbers(Vec<Given>);

impl Numbers {
    fn add(&mut self, symbol: &str, meaning: String, measure: &Measure) -> GivenId {
        self.0.push(Given {
            symbol: Symbol::new(symbol),
            meaning,
            value: measure.value,
            written: measure.written.clone(),
            dimension: measure.dimension,
        });
        GivenId(self.0.len() - 1)
    }

    fn place(&mut self, spot: &Spot, symbol: &str, meaning: impl Fn() -> String) -> Place {
        match spot {
            Spot::Foot => Place::Foot,
            Spot::Middle => Place::Middle,
            Spot::Tip => Place::Tip,
            Spot::At(measure) => Place::At(self.add(symbol, meaning(), measure)),
        }
    }

    fn load(&mut self, load: &Carried, number: usize, words: &Words) -> Option<Load> {
        let means = |key: &str| prose::meaning(key, &load.noun, words);
        let mass = self.add(
            &format!("m_{number}"),
            means("build.meaning.mass"),
            load.mass.as_ref()?,
        );
        let at = self.place(load.spot.as_ref()?, &format!("d_{number}"), || {
            means("build.meaning.distance")
        });
        Some(Load {
            symbol: Symbol::new(format!("W_{number}")),
            noun: load.noun.clone(),
            at,
            kind: LoadKind::Mass(mass),
            stands: load.stands?,
        })
    }
}

/// How far a spot lies from the foot, as a share of the length.
pub(super) fn share(spot: &Spot, length: &Measure) -> f64 {
    match spot {
        Spot::Foot => 0.0,
        Spot::Middle => 0.5,
        Spot::Tip => 1.0,
        Spot::At(measure) if measure.dimension == Dimension::LENGTH => measure.value / length.value,
        Spot::At(_) => f64::NAN,
    }
}
