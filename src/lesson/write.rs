//! Writing a problem down in the form that [`super::parse_problem`] reads, and the checksum of a
//! lesson's numbers.

use super::family::{Amount, Variant};
use super::model::{REFERENCES, SIDES, usual};
use super::quantity::{Want, amount_of};
use super::read::FORM;
use super::texts::escape;
use crate::problem::{
    Direction, GivenId, Load, LoadKind, Parts, Place, Problem, Reference, Side, SupportKind, Tilt,
    Upright,
};
use serde_json::{Map, Value, json};

/// The problem as the JSON of a problem file, in one line.
///
/// Reading it again gives an equal problem, every double and every printed form unchanged.
pub fn write_problem(problem: &Problem) -> String {
    let parts = problem.parts();
    let gravity = |g: &f64| format!("{g} m/s^2");
    let accepted: Vec<String> = parts.accepted_gravity.iter().map(gravity).collect();
    let mut meanings = Map::new();
    for given in &parts.givens {
        meanings.insert(given.symbol.as_str().to_owned(), json!(given.meaning));
    }
    let mut writer = Writer::new(parts, Values::AsPrinted);
    let mut model = writer.model();
    if !writer.seen.is_sorted() {
        let names: Vec<&str> = parts
            .givens
            .iter()
            .map(|given| given.symbol.as_str())
            .collect();
        model.insert("order".to_owned(), json!(names));
    }
    json!({
        "leverwright": FORM,
        "g": gravity(&parts.gravity),
        "accepted_g": accepted,
        "figures": parts.figures,
        "model": model,
        "text": {
            "title": parts.title,
            "statement": escape(&parts.statement),
            "caution": parts.caution,
            "meanings": meanings,
        },
    })
    .to_string()
}

/// A checksum of all that decides the numbers of a lesson's problems: structures, ranges, g and
/// figures. FNV-1a of the models as written, with every word left out.
pub(super) fn checksum(variants: &[Variant]) -> u32 {
    let mut sum = 0x811c_9dc5_u32;
    for variant in variants {
        let parts = &variant.parts;
        let mut writer = Writer::new(parts, Values::Ranges(variant));
        let order: Vec<&str> = parts
            .givens
            .iter()
            .map(|given| given.symbol.as_str())
            .collect();
        let written = json!([parts.gravity, parts.figures, order, writer.model()]).to_string();
        for byte in written.bytes() {
            sum = (sum ^ u32::from(byte)).wrapping_mul(0x0100_0193);
        }
    }
    sum
}

/// How quantities and words are written.
enum Values<'p> {
    /// One value each, and all words.
    AsPrinted,
    /// All values that each may have, and no words.
    Ranges(&'p Variant),
}

struct Writer<'p> {
    parts: &'p Parts,
    values: Values<'p>,
    /// The givens in the order in which they were written.
    seen: Vec<GivenId>,
}

impl<'p> Writer<'p> {
    fn new(parts: &'p Parts, values: Values<'p>) -> Writer<'p> {
        let seen = Vec::new();
        Writer {
            parts,
            values,
            seen,
        }
    }

    /// The model, its givens in the order in which [`super::model`] reads them.
    fn model(&mut self) -> Map<String, Value> {
        let body = self.body();
        let parts = self.parts;
        let mut supports = Vec::new();
        for (index, support) in parts.supports.iter().enumerate() {
            let mut fields = self.named("H", index, support.symbol.as_str(), &support.noun);
            fields.insert(
                "at".to_owned(),
                self.place(support.at, &format!("d_{}", support.symbol.as_str())),
            );
            let kind = match support.kind {
                SupportKind::Hinge => "hinge",
                SupportKind::BuiltIn => "built_in",
                SupportKind::Roller(direction) => {
                    let direction = self.direction(direction, &usual("γ", index));
                    fields.insert("direction".to_owned(), direction);
                    "roller"
                }
            };
            fields.insert("kind".to_owned(), json!(kind));
            supports.push(Value::Object(fields));
        }
        let loads: Vec<Value> = parts
            .loads
            .iter()
            .enumerate()
            .map(|(index, load)| self.load(load, index))
            .collect();
        let mut ropes = Vec::new();
        for (index, rope) in parts.ropes.iter().enumerate() {
            let mut fields = self.named("T", index, rope.symbol.as_str(), &rope.noun);
            fields.insert(
                "at".to_owned(),
                self.place(rope.at, &format!("d_{}", rope.symbol.as_str())),
            );
            let direction = self.direction(rope.direction, &usual("β", index));
            fields.insert("direction".to_owned(), direction);
            ropes.push(Value::Object(fields));
        }
        let mut model = Map::new();
        model.insert("body".to_owned(), Value::Object(body));
        for (name, list) in [("supports", supports), ("loads", loads), ("ropes", ropes)] {
            if !list.is_empty() {
                model.insert(name.to_owned(), Value::Array(list));
            }
        }
        model
    }

    fn body(&mut self) -> Map<String, Value> {
        let body = &self.parts.body;
        let mut fields = Map::new();
        self.noun(&mut fields, &body.noun);
        fields.insert(
            "length".to_owned(),
            self.quantity(body.length, Want::Length, "L"),
        );
        if let Some(mass) = body.mass {
            fields.insert("mass".to_owned(), self.quantity(mass, Want::Mass, "m_b"));
        }
        if body.weight_symbol.as_str() != "W_b" {
            fields.insert(
                "weight_symbol".to_owned(),
                json!(body.weight_symbol.as_str()),
            );
        }
        let tilt = match body.tilt {
            Tilt::Level => json!("level"),
            Tilt::Rising { angle, from } => json!({
                "angle": self.quantity(angle, Want::Slope, "θ"),
                "from": reference_word(from),
            }),
        };
        fields.insert("tilt".to_owned(), tilt);
        if body.centre != Place::Middle {
            fields.insert("centre".to_owned(), self.place(body.centre, "d_b"));
        }
        fields.insert("towards".to_owned(), json!(side_word(body.towards)));
        fields
    }

    fn load(&mut self, load: &Load, index: usize) -> Value {
        let number = index + 1;
        let letter = if matches!(load.kind, LoadKind::Mass(_)) {
            "W"
        } else {
            "F"
        };
        let symbol = load.symbol.as_str();
        let mut fields = Map::new();
        if symbol != format!("{letter}_{number}") {
            fields.insert("symbol".to_owned(), json!(symbol));
        }
        self.noun(&mut fields, &load.noun);
        match load.kind {
            LoadKind::Mass(mass) => {
                let mass = self.quantity(mass, Want::Mass, &format!("m_{number}"));
                fields.insert("mass".to_owned(), mass);
                // It decides no number, so it is no part of a lesson's checksum.
                if load.stands && matches!(self.values, Values::AsPrinted) {
                    fields.insert("stands".to_owned(), json!(true));
                }
            }
            LoadKind::Force { size, direction } => {
                fields.insert("force".to_owned(), self.quantity(size, Want::Force, symbol));
                let direction = self.direction(direction, &format!("α_{number}"));
                fields.insert("direction".to_owned(), direction);
            }
        }
        fields.insert("at".to_owned(), self.place(load.at, &format!("d_{number}")));
        Value::Object(fields)
    }

    fn named(&self, letter: &str, index: usize, symbol: &str, noun: &str) -> Map<String, Value> {
        let mut fields = Map::new();
        if symbol != usual(letter, index) {
            fields.insert("symbol".to_owned(), json!(symbol));
        }
        self.noun(&mut fields, noun);
        fields
    }

    fn noun(&self, fields: &mut Map<String, Value>, noun: &str) {
        if matches!(self.values, Values::AsPrinted) {
            fields.insert("noun".to_owned(), json!(noun));
        }
    }

    fn place(&mut self, place: Place, usual: &str) -> Value {
        match place {
            Place::Foot => json!("foot"),
            Place::Middle => json!("middle"),
            Place::Tip => json!("tip"),
            Place::Fraction { over, under } => json!({"fraction": format!("{over}/{under}")}),
            Place::At(given) => self.quantity(given, Want::Length, usual),
        }
    }

    fn direction(&mut self, direction: Direction, usual: &str) -> Value {
        match direction {
            Direction::Up => json!("up"),
            Direction::Down => json!("down"),
            Direction::Level(side) => json!(side_word(side)),
            Direction::Oblique {
                angle,
                from,
                upright,
                side,
            } => json!({
                "angle": self.quantity(angle, Want::Slope, usual),
                "from": reference_word(from),
                "up": upright == Upright::Up,
                "side": side_word(side),
            }),
            Direction::FromBody { angle } => {
                json!({"angle_with_body": self.quantity(angle, Want::BodyAngle, usual)})
            }
        }
    }

    fn quantity(&mut self, id: GivenId, want: Want, usual: &str) -> Value {
        let given = &self.parts.givens[id.0];
        let symbol = given.symbol.as_str();
        if self.seen.contains(&id) {
            return json!({"same_as": symbol});
        }
        self.seen.push(id);
        let amount = Amount {
            value: given.value,
            written: given.written.clone(),
        };
        if let Values::Ranges(variant) = self.values {
            let drawn = variant.drawn.iter().find(|drawn| drawn.given == id);
            let choices = drawn.map_or(std::slice::from_ref(&amount), |drawn| &drawn.choices);
            let written: Vec<&str> = choices.iter().map(|one| one.written.as_str()).collect();
            return json!({"symbol": symbol, "is_drawn": drawn.is_some(), "among": written});
        }
        if amount_of(&amount.written, want).as_ref() != Some(&amount) {
            // The printed form does not give the value back, so both are told.
            return json!({"symbol": symbol, "written": amount.written, "si": amount.value});
        }
        if symbol == usual {
            json!(amount.written)
        } else {
            json!({"symbol": symbol, "is": amount.written})
        }
    }
}

pub(super) fn side_word(side: Side) -> &'static str {
    let found = SIDES.iter().find(|(_, known)| *known == side);
    found.map_or("", |(word, _)| word)
}

pub(super) fn reference_word(reference: Reference) -> &'static str {
    let found = REFERENCES.iter().find(|(_, known)| *known == reference);
    found.map_or("", |(word, _)| word)
}
