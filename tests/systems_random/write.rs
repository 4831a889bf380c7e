//! A system in the JSON form of problems, and what the program finds of it.

use leverwright::plane::Vector;
use leverwright::problem::{GivenId, Place, Reference, Side, Upright};
use leverwright::statics::{Unsolvable, solve_system};
use leverwright::system::{
    Act, Bearing, BodyId, Coordinate, Friction, HoldKind, Load, LoadKind, Spot, System, Turning,
    WeightKind,
};
use serde_json::{Map, Value, json};
use std::cell::RefCell;
use std::collections::BTreeSet;

/// Writes givens in full where they come first, then by name.
struct Writer<'s> {
    system: &'s System,
    told: RefCell<BTreeSet<usize>>,
}

/// The system in the JSON form.
pub(crate) fn written(system: &System) -> Value {
    let writer = Writer {
        system,
        told: RefCell::default(),
    };
    let parts = system.parts();
    let mut bodies: Vec<Value> = Vec::new();
    for body in &parts.bodies {
        let legs: Vec<Value> = (body.legs.iter())
            .map(|leg| json!({ "length": writer.given(leg.length), "direction": writer.bearing(&leg.bearing) }))
            .collect();
        bodies.push(json!({
            "name": body.noun, "start": writer.spot(&body.start), "legs": legs, "knot": body.knot,
        }));
    }
    let weights: Vec<Value> = (parts.weights.iter())
        .map(|weight| {
            let WeightKind::Point { at, mass } = &weight.kind else {
                unreachable!("no laminae are drawn");
            };
            json!({
                "symbol": weight.symbol.as_str(), "noun": weight.noun,
                "body": writer.body(weight.body), "at": writer.spot(at),
                "mass": writer.given(*mass),
            })
        })
        .collect();
    let loads: Vec<Value> = parts.loads.iter().map(|load| writer.load(load)).collect();
    let mut ropes: Vec<Value> = Vec::new();
    for cord in &parts.cords {
        let ends: Vec<Value> = (cord.ends.iter())
            .map(|end| {
                json!({
                    "body": writer.body(end.body), "at": writer.spot(&end.at),
                    "direction": writer.bearing(&end.bearing),
                })
            })
            .collect();
        ropes.push(json!({ "symbol": cord.symbol.as_str(), "noun": cord.noun, "ends": ends }));
    }
    let holds: Vec<Value> = (0..parts.holds.len())
        .map(|index| writer.hold(index))
        .collect();
    let asked: Vec<&str> = (parts.cords.iter().map(|cord| cord.symbol.as_str()))
        .chain(parts.holds.iter().map(|hold| hold.symbol.as_str()))
        .collect();
    json!({
        "leverwright": 1,
        "g": format!("{} m/s^2", parts.gravity),
        "figures": parts.figures,
        "system": {
            "bodies": bodies, "weights": weights, "loads": loads, "ropes": ropes, "holds": holds,
            "asked": asked,
        },
        "text": { "title": parts.title, "statement": parts.statement },
    })
}

impl Writer<'_> {
    fn body(&self, body: BodyId) -> &str {
        &self.system.parts().bodies[body.0].noun
    }

    fn given(&self, id: GivenId) -> Value {
        let given = self.system.given(id);
        if self.told.borrow_mut().insert(id.0) {
            json!({ "symbol": given.symbol.as_str(), "is": given.written })
        } else {
            json!({ "same_as": given.symbol.as_str() })
        }
    }

    /// A coordinate: its number where it is one, which is told nowhere else; else a sum.
    fn coordinate(&self, coordinate: &Coordinate) -> Value {
        match coordinate.0.as_slice() {
            [] => json!("0 m"),
            [(1.0, id)] if self.system.given(*id).symbol.as_str().starts_with('x') => {
                json!(self.system.given(*id).written)
            }
            terms => {
                let term = |(factor, id): &(f64, GivenId)| {
                    json!([factor.to_string(), self.system.given(*id).symbol.as_str()])
                };
                json!({ "sum": terms.iter().map(term).collect::<Vec<Value>>() })
            }
        }
    }

    fn spot(&self, spot: &Spot) -> Value {
        match spot {
            Spot::Origin => json!("origin"),
            Spot::On { body, leg, place } => json!({
                "on": self.body(*body), "leg": leg, "at": self.place(*place),
            }),
            Spot::At { x, y } => json!({ "x": self.coordinate(x), "y": self.coordinate(y) }),
            Spot::Resultant(_) | Spot::Centroid(_) => unreachable!("only loads act there"),
        }
    }

    fn place(&self, place: Place) -> Value {
        match place {
            Place::Foot => json!("foot"),
            Place::Middle => json!("middle"),
            Place::Tip => json!("tip"),
            Place::Fraction { over, under } => json!({ "fraction": format!("{over}/{under}") }),
            Place::At(given) => self.given(given),
        }
    }

    fn bearing(&self, bearing: &Bearing) -> Value {
        match bearing {
            Bearing::Up => json!("up"),
            Bearing::Down => json!("down"),
            Bearing::Level(side) => json!(side_word(*side)),
            Bearing::Oblique {
                angle,
                from,
                upright,
                side,
            } => json!({
                "angle": self.given(*angle),
                "from": if *from == Reference::Horizontal { "horizontal" } else { "vertical" },
                "up": *upright == Upright::Up,
                "side": side_word(*side),
            }),
            Bearing::FromAxis { angle } => json!({ "angle": self.given(*angle), "from": "x-axis" }),
            Bearing::Towards(spot) => json!({ "towards": self.spot(spot) }),
            Bearing::Along { body, leg, onward } => {
                json!({ "along": self.body(*body), "leg": leg, "onward": onward })
            }
            Bearing::Across { body, leg, left } => {
                json!({ "across": self.body(*body), "leg": leg, "left": left })
            }
            Bearing::FromLeg {
                angle,
                body,
                leg,
                onward,
                left,
            } => json!({
                "angle": self.given(*angle), "with": self.body(*body), "leg": leg,
                "onward": onward, "left": left,
            }),
        }
    }

    fn load(&self, load: &Load) -> Value {
        let mut form = Map::new();
        form.insert("symbol".to_owned(), json!(load.symbol.as_str()));
        form.insert("noun".to_owned(), json!(load.noun));
        form.insert("body".to_owned(), json!(self.body(load.body)));
        let mut put = |key: &str, value: Value| form.insert(key.to_owned(), value);
        match &load.kind {
            LoadKind::Mass { at, mass } => {
                put("at", self.spot(at));
                put("mass", self.given(*mass));
            }
            LoadKind::Force { at, size, bearing } => {
                put("at", self.spot(at));
                put("force", self.given(*size));
                put("direction", self.bearing(bearing));
            }
            LoadKind::Couple { size, turning } => {
                put("couple", self.given(*size));
                let word = match turning {
                    Turning::Anticlockwise => "anticlockwise",
                    Turning::Clockwise => "clockwise",
                };
                put("turns", json!(word));
            }
            LoadKind::Spread {
                leg,
                from,
                to,
                first,
                last,
                bearing,
            } => {
                put("leg", json!(leg));
                put("from", self.place(*from));
                put("to", self.place(*to));
                if let Some(first) = first {
                    put("first", self.given(*first));
                }
                if let Some(last) = last {
                    put("last", self.given(*last));
                }
                put("direction", self.bearing(bearing));
            }
        }
        Value::Object(form)
    }

    fn hold(&self, index: usize) -> Value {
        let hold = &self.system.parts().holds[index];
        let mut form = Map::new();
        let mut put = |key: &str, value: Value| form.insert(key.to_owned(), value);
        put("symbol", json!(hold.symbol.as_str()));
        put("noun", json!(hold.noun));
        put("body", json!(self.body(hold.body)));
        if let Some(by) = hold.by {
            put("by", json!(self.body(by)));
        }
        put("at", self.spot(&hold.at));
        let (kind, direction, friction, width) = match &hold.kind {
            HoldKind::Hinge => ("hinge", None, None, None),
            HoldKind::Push(push) => ("push", Some(push), None, None),
            HoldKind::Line(line) => ("line", Some(line), None, None),
            HoldKind::BuiltIn => ("built-in", None, None, None),
            HoldKind::Rough { push, friction } => ("rough", Some(push), Some(friction), None),
            HoldKind::Base {
                push,
                friction,
                width,
            } => ("base", Some(push), Some(friction), Some(*width)),
            HoldKind::Couple => ("couple", None, None, None),
        };
        put("kind", json!(kind));
        if let Some(direction) = direction {
            put("direction", self.bearing(direction));
        }
        if let Some(friction) = friction {
            put("friction", self.friction(friction));
        }
        if let Some(width) = width {
            put("width", self.given(width));
        }
        Value::Object(form)
    }

    fn friction(&self, friction: &Friction) -> Value {
        match friction {
            Friction::AsNeeded => json!("as-needed"),
            Friction::UpTo(coefficient) => json!({ "up_to": self.given(*coefficient) }),
            Friction::Limiting {
                coefficient,
                bearing,
            } => json!({
                "limiting": self.given(*coefficient), "direction": self.bearing(bearing),
            }),
        }
    }
}

fn side_word(side: Side) -> &'static str {
    match side {
        Side::Left => "left",
        Side::Right => "right",
    }
}

/// What the program finds: every force by its symbol, or the code of the refusal and what it is
/// about.
pub(crate) fn outcome(system: &System) -> Value {
    match solve_system(system, &system.values(), system.gravity()) {
        Ok(solution) => {
            let part = |Vector { x, y }, size, couple| json!({ "x": x, "y": y, "size": size, "couple": couple });
            let forces: Map<String, Value> = (system.acts().iter())
                .filter_map(|act: &Act<'_>| {
                    let found = solution.reaction(act.id)?;
                    let told = part(found.force, found.size, found.couple);
                    Some((act.symbol.as_str().to_owned(), told))
                })
                .collect();
            let (force, length) = solution.scales();
            json!({ "forces": forces, "force_scale": force, "length_scale": length })
        }
        Err(trouble) => {
            let about = match &trouble {
                Unsolvable::RopeWouldPush { rope: name, .. }
                | Unsolvable::ContactWouldPull { support: name, .. }
                | Unsolvable::WouldSlip { contact: name, .. }
                | Unsolvable::WouldTopple { base: name, .. } => (system.acts().iter())
                    .find(|act| act.symbol.to_string() == *name)
                    .map(|act| act.symbol.as_str().to_owned()),
                _ => None,
            };
            let pivot = match &trouble {
                Unsolvable::NearlySingular { pivot, .. } => Some(*pivot),
                _ => None,
            };
            json!({ "refused": trouble.code(), "of": about, "pivot": pivot })
        }
    }
}
