//! What makes a problem one that can be drawn at all.

use super::{Body, Direction, GivenId, LoadKind, Parts, Place, SupportKind, Tilt};
use crate::units::Dimension;
use std::collections::{BTreeMap, BTreeSet};
use std::f64::consts::{FRAC_PI_2, PI};
use std::fmt;

/// Something wrong with a problem's parts.
#[derive(Clone, Debug, PartialEq)]
pub enum Flaw {
    /// A given number that is not finite or not positive.
    NotPositive {
        /// The given's name.
        symbol: String,
    },
    /// An angle outside its range.
    AngleOutOfRange {
        /// The given's name.
        symbol: String,
        /// Upper end of the range, in degrees; the lower is 0, both ends excluded.
        below_deg: f64,
    },
    /// A given of the wrong dimension for what it is used for.
    WrongDimension {
        /// The given's name.
        symbol: String,
        /// What it is used for.
        used_as: &'static str,
    },
    /// A place that lies beyond the body's tip.
    PlaceOffBody {
        /// What is placed there.
        what: String,
        /// Its distance from the foot, in metres.
        distance_m: f64,
        /// The body's length, in metres.
        length_m: f64,
    },
    /// A given that nothing uses.
    Unused {
        /// The given's name.
        symbol: String,
    },
    /// A reference to a given that is not there.
    NoSuchGiven,
    /// Two quantities of one name.
    NameTwice {
        /// The name.
        symbol: String,
    },
    /// An acceleration of free fall that is not positive and finite.
    Gravity,
    /// Figures outside 2 to 6.
    Figures,
}

impl Flaw {
    /// A short name that stays the same in every version, for machines.
    pub fn code(&self) -> &'static str {
        match self {
            Flaw::NotPositive { .. } => "not-positive",
            Flaw::AngleOutOfRange { .. } => "angle-out-of-range",
            Flaw::WrongDimension { .. } => "wrong-dimension",
            Flaw::PlaceOffBody { .. } => "off-body",
            Flaw::Unused { .. } => "unused-number",
            Flaw::NoSuchGiven => "no-such-given",
            Flaw::NameTwice { .. } => "name-twice",
            Flaw::Gravity => "gravity",
            Flaw::Figures => "figures",
        }
    }
}

impl fmt::Display for Flaw {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Flaw::NotPositive { symbol } => write!(formatter, "{symbol} must be a positive number"),
            Flaw::AngleOutOfRange { symbol, below_deg } => {
                write!(
                    formatter,
                    "{symbol} must lie between 0° and {below_deg}°, both excluded"
                )
            }
            Flaw::WrongDimension { symbol, used_as } => {
                write!(
                    formatter,
                    "{symbol} is used as {used_as}, but its unit is of another kind"
                )
            }
            Flaw::PlaceOffBody {
                what,
                distance_m,
                length_m,
            } => write!(
                formatter,
                "{what} is placed {distance_m} m from the foot, but the body is only {length_m} m long"
            ),
            Flaw::Unused { symbol } => write!(formatter, "{symbol} is given but nothing uses it"),
            Flaw::NoSuchGiven => write!(formatter, "a part refers to a number that is not given"),
            Flaw::NameTwice { symbol } => {
                write!(formatter, "the name {symbol} is used for two things")
            }
            Flaw::Gravity => write!(formatter, "g must be a positive number of m/s²"),
            Flaw::Figures => write!(formatter, "figures must lie between 2 and 6"),
        }
    }
}

/// Every flaw of these parts.
pub(super) fn flaws(parts: &Parts) -> Vec<Flaw> {
    let uses = uses(parts);
    if uses.iter().any(|(given, _)| given.0 >= parts.givens.len()) {
        return vec![Flaw::NoSuchGiven];
    }
    let mut flaws = Vec::new();
    for given in &parts.givens {
        if !(given.value.is_finite() && given.value > 0.0) {
            flaws.push(Flaw::NotPositive {
                symbol: given.symbol.to_string(),
            });
        }
    }
    let mut used = BTreeSet::new();
    for (given, use_as) in uses {
        used.insert(given);
        let (dimension, used_as, below) = use_as.demands();
        let printed = &parts.givens[given.0];
        if printed.dimension != dimension {
            flaws.push(Flaw::WrongDimension {
                symbol: printed.symbol.to_string(),
                used_as,
            });
        } else if let Some(below) = below
            && printed.value >= below
        {
            let below_deg = below.to_degrees().round();
            flaws.push(Flaw::AngleOutOfRange {
                symbol: printed.symbol.to_string(),
                below_deg,
            });
        }
    }
    for (index, given) in parts.givens.iter().enumerate() {
        if !used.contains(&GivenId(index)) {
            flaws.push(Flaw::Unused {
                symbol: given.symbol.to_string(),
            });
        }
    }
    flaws.extend(places_off_body(parts));
    flaws.extend(names_twice(parts));
    if !parts
        .accepted_gravity
        .iter()
        .chain([&parts.gravity])
        .all(|g| g.is_finite() && *g > 0.0)
    {
        flaws.push(Flaw::Gravity);
    }
    if !(2..=6).contains(&parts.figures) {
        flaws.push(Flaw::Figures);
    }
    flaws
}

/// What a given is used for.
enum Use {
    Length,
    Mass,
    Force,
    Slope,
    BodyAngle,
}

impl Use {
    /// The dimension asked, its name in a message, and the upper bound of an angle.
    fn demands(&self) -> (Dimension, &'static str, Option<f64>) {
        match self {
            Use::Length => (Dimension::LENGTH, "a length", None),
            Use::Mass => (Dimension::MASS, "a mass", None),
            Use::Force => (Dimension::FORCE, "a force", None),
            Use::Slope => (Dimension::ANGLE, "an angle", Some(FRAC_PI_2)),
            Use::BodyAngle => (Dimension::ANGLE, "an angle", Some(PI)),
        }
    }
}

fn uses(parts: &Parts) -> Vec<(GivenId, Use)> {
    let mut uses = vec![(parts.body.length, Use::Length)];
    uses.extend(parts.body.mass.map(|mass| (mass, Use::Mass)));
    if let Tilt::Rising { angle, .. } = parts.body.tilt {
        uses.push((angle, Use::Slope));
    }
    let direction = |uses: &mut Vec<(GivenId, Use)>, direction: Direction| match direction {
        Direction::Oblique { angle, .. } => uses.push((angle, Use::Slope)),
        Direction::FromBody { angle } => uses.push((angle, Use::BodyAngle)),
        Direction::Up | Direction::Down | Direction::Level(_) => {}
    };
    for support in &parts.supports {
        if let SupportKind::Roller(normal) = support.kind {
            direction(&mut uses, normal);
        }
    }
    parts
        .ropes
        .iter()
        .for_each(|rope| direction(&mut uses, rope.direction));
    for load in &parts.loads {
        match load.kind {
            LoadKind::Mass(mass) => uses.push((mass, Use::Mass)),
            LoadKind::Force {
                size,
                direction: acting,
            } => {
                uses.push((size, Use::Force));
                direction(&mut uses, acting);
            }
        }
    }
    for (_, place) in places(parts) {
        if let Place::At(given) = place {
            uses.push((given, Use::Length));
        }
    }
    uses
}

fn places(parts: &Parts) -> Vec<(String, Place)> {
    let mut places = vec![(parts.body.noun.clone(), parts.body.centre)];
    places.extend(
        parts
            .supports
            .iter()
            .map(|support| (support.noun.clone(), support.at)),
    );
    places.extend(parts.ropes.iter().map(|rope| (rope.noun.clone(), rope.at)));
    places.extend(parts.loads.iter().map(|load| (load.noun.clone(), load.at)));
    places
}

fn places_off_body(parts: &Parts) -> Vec<Flaw> {
    let values: Vec<f64> = parts.givens.iter().map(|given| given.value).collect();
    let Body { length, .. } = parts.body;
    let length_m = values[length.0];
    places(parts)
        .into_iter()
        .filter_map(|(what, place)| {
            let distance_m = place.distance(length, &values);
            let off = distance_m.is_nan() || distance_m > length_m * (1.0 + 1e-12);
            off.then_some(Flaw::PlaceOffBody {
                what,
                distance_m,
                length_m,
            })
        })
        .collect()
}

fn names_twice(parts: &Parts) -> Vec<Flaw> {
    let names = parts
        .givens
        .iter()
        .map(|given| &given.symbol)
        .chain(
            parts
                .body
                .mass
                .is_some()
                .then_some(&parts.body.weight_symbol),
        )
        .chain(parts.supports.iter().map(|support| &support.symbol))
        .chain(parts.ropes.iter().map(|rope| &rope.symbol))
        .chain(parts.loads.iter().filter_map(|load| match load.kind {
            // A given force and its size are one thing and share one name.
            LoadKind::Force { size, .. } if parts.givens[size.0].symbol == load.symbol => None,
            LoadKind::Force { .. } | LoadKind::Mass(_) => Some(&load.symbol),
        }));
    let mut counts: BTreeMap<String, usize> = BTreeMap::new();
    for name in names {
        *counts.entry(name.as_str().to_owned()).or_default() += 1;
    }
    counts
        .into_iter()
        .filter(|(_, count)| *count > 1)
        .map(|(symbol, _)| Flaw::NameTwice { symbol })
        .collect()
}
