//! Writing a system down in the form that [`super::parse_problem_file`] reads.

use super::family::Amount;
use super::quantity::{Want, amount_of};
use super::read::FORM;
use super::system_asked::bound_text;
use super::system_hold::AS_NEEDED;
use super::system_lamina::{FACINGS, shape_word};
use super::system_names::{SOUGHT, SOUGHT_KINDS};
use super::system_parts::TURNS;
use super::system_spot::X_AXIS;
use super::texts::escape;
use super::write::{reference_word, side_word};
use crate::problem::{GivenId, Place, Upright};
use crate::system::{
    ActId, Asked, Bearing, Body, BodyId, Coordinate, Facing, Friction, Hold, HoldKind, Lamina,
    LaminaMass, Load, LoadKind, Parts, Piece, Shape, Sought, Spot, System, WeightKind, When,
};
use serde_json::{Map, Value, json};

/// The system as the JSON of a problem file, in one line.
///
/// Reading it again gives an equal system, every double and every printed form unchanged. Only
/// what a file cannot tell may differ: bodies of one name are numbered, and a number that is
/// sought has the middle of its range as its value and is printed as `?`.
pub fn write_system(system: &System) -> String {
    let parts = system.parts();
    let gravity = |g: &f64| format!("{g} m/s^2");
    let accepted: Vec<String> = parts.accepted_gravity.iter().map(gravity).collect();
    let mut meanings = Map::new();
    for given in &parts.givens {
        if !given.meaning.is_empty() {
            meanings.insert(given.symbol.as_str().to_owned(), json!(given.meaning));
        }
    }
    let mut writer = Writer {
        parts,
        names: names(&parts.bodies),
        seen: Vec::new(),
    };
    json!({
        "leverwright": FORM,
        "g": gravity(&parts.gravity),
        "accepted_g": accepted,
        "figures": parts.figures,
        "system": writer.system(),
        "text": {
            "title": parts.title,
            "statement": escape(&parts.statement),
            "caution": parts.caution,
            "meanings": meanings,
        },
    })
    .to_string()
}

/// The names of the bodies, each once.
fn names(bodies: &[Body]) -> Vec<String> {
    let mut names: Vec<String> = Vec::new();
    for body in bodies {
        let mut name = body.noun.clone();
        let mut number = 2;
        while names.contains(&name) {
            name = format!("{} {number}", body.noun);
            number += 1;
        }
        names.push(name);
    }
    names
}

struct Writer<'p> {
    parts: &'p Parts,
    names: Vec<String>,
    /// The givens in the order in which they were written.
    seen: Vec<GivenId>,
}

impl Writer<'_> {
    /// The system, its numbers in the order in which they are read.
    fn system(&mut self) -> Value {
        let parts = self.parts;
        let bodies: Vec<Value> = (0..parts.bodies.len())
            .map(|index| self.body(index))
            .collect();
        let mut weights = Vec::new();
        for weight in &parts.weights {
            let mut fields = Map::new();
            fields.insert("symbol".to_owned(), json!(weight.symbol.as_str()));
            fields.insert("noun".to_owned(), json!(weight.noun));
            fields.insert("body".to_owned(), json!(self.name(weight.body)));
            match &weight.kind {
                WeightKind::Point { at, mass } => {
                    fields.insert("at".to_owned(), self.spot(at));
                    fields.insert("mass".to_owned(), self.quantity(*mass, Want::Mass));
                }
                WeightKind::Lamina(lamina) => self.lamina(lamina, &mut fields),
            }
            weights.push(Value::Object(fields));
        }
        let loads: Vec<Value> = parts.loads.iter().map(|load| self.load(load)).collect();
        let mut ropes = Vec::new();
        for rope in &parts.cords {
            let mut ends = Vec::new();
            for end in &rope.ends {
                ends.push(json!({
                    "body": self.name(end.body),
                    "at": self.spot(&end.at),
                    "direction": self.bearing(&end.bearing),
                }));
            }
            ropes.push(json!({"symbol": rope.symbol.as_str(), "noun": rope.noun, "ends": ends}));
        }
        let holds: Vec<Value> = parts.holds.iter().map(|hold| self.hold(hold)).collect();
        let mut system = Map::new();
        system.insert("bodies".to_owned(), Value::Array(bodies));
        for (name, list) in [
            ("weights", weights),
            ("loads", loads),
            ("ropes", ropes),
            ("holds", holds),
        ] {
            if !list.is_empty() {
                system.insert(name.to_owned(), Value::Array(list));
            }
        }
        let asked: Vec<Value> = parts.asked.iter().map(|asked| self.asked(asked)).collect();
        system.insert("asked".to_owned(), Value::Array(asked));
        if let Some(sought) = &parts.sought {
            let sought = self.sought(sought);
            system.insert(SOUGHT.to_owned(), sought);
        }
        if !self.seen.is_sorted() {
            let givens = parts.givens.iter();
            let order: Vec<&str> = givens.map(|given| given.symbol.as_str()).collect();
            system.insert("order".to_owned(), json!(order));
        }
        Value::Object(system)
    }

    fn name(&self, body: BodyId) -> &str {
        self.names.get(body.0).map_or("", String::as_str)
    }

    fn force(&self, id: ActId) -> String {
        let parts = self.parts;
        let symbol = match id {
            ActId::Weight(index) => parts.weights.get(index).map(|weight| &weight.symbol),
            ActId::Load(index) => parts.loads.get(index).map(|load| &load.symbol),
            ActId::Cord(index) => parts.cords.get(index).map(|cord| &cord.symbol),
            ActId::Hold(index) => parts.holds.get(index).map(|hold| &hold.symbol),
        };
        symbol.map_or(String::new(), |symbol| symbol.as_str().to_owned())
    }

    fn body(&mut self, index: usize) -> Value {
        let body = &self.parts.bodies[index];
        let mut fields = Map::new();
        fields.insert("name".to_owned(), json!(self.name(BodyId(index))));
        if body.start != Spot::Origin {
            fields.insert("start".to_owned(), self.spot(&body.start));
        }
        let mut legs = Vec::new();
        for leg in &body.legs {
            legs.push(json!({
                "length": self.quantity(leg.length, Want::Length),
                "direction": self.bearing(&leg.bearing),
            }));
        }
        if !legs.is_empty() {
            fields.insert("legs".to_owned(), Value::Array(legs));
        }
        if body.knot {
            fields.insert("knot".to_owned(), json!(true));
        }
        Value::Object(fields)
    }

    /// The fields of a weight that tell a lamina, its numbers in the order in which they are read.
    fn lamina(&mut self, lamina: &Lamina, fields: &mut Map<String, Value>) {
        let pieces: Vec<Value> = lamina.pieces.iter().map(|one| self.piece(one)).collect();
        fields.insert("shapes".to_owned(), Value::Array(pieces));
        match lamina.mass {
            LaminaMass::Whole(mass) => {
                fields.insert("mass".to_owned(), self.quantity(mass, Want::Mass));
            }
            LaminaMass::PerArea(density) => {
                let density = self.quantity(density, Want::MassPerArea);
                fields.insert("mass_per_area".to_owned(), density);
            }
            LaminaMass::OfPieces => {}
        }
    }

    fn piece(&mut self, piece: &Piece) -> Value {
        let mut fields = Map::new();
        let mut put = |name: &str, value: Value| fields.insert(name.to_owned(), value);
        put("shape", json!(shape_word(&piece.shape)));
        put("noun", json!(piece.noun));
        match piece.shape {
            Shape::Rectangle { width, height } => {
                put("width", self.quantity(width, Want::Length));
                put("height", self.quantity(height, Want::Length));
            }
            Shape::Triangle {
                width,
                height,
                apex,
            } => {
                put("width", self.quantity(width, Want::Length));
                put("height", self.quantity(height, Want::Length));
                put("apex", self.place(apex));
            }
            Shape::Disc { radius }
            | Shape::Semicircle { radius }
            | Shape::QuarterCircle { radius } => {
                put("radius", self.quantity(radius, Want::Length));
            }
        }
        put("x", self.coordinate(&piece.x));
        put("y", self.coordinate(&piece.y));
        if piece.points != Facing::Up {
            let word = FACINGS.iter().find(|(_, facing)| *facing == piece.points);
            put("points", json!(word.map_or("", |(word, _)| word)));
        }
        if piece.hole {
            put("hole", json!(true));
        }
        if let Some(mass) = piece.mass {
            put("mass", self.quantity(mass, Want::Mass));
        }
        Value::Object(fields)
    }

    fn load(&mut self, load: &Load) -> Value {
        let mut fields = Map::new();
        let mut put = |name: &str, value: Value| fields.insert(name.to_owned(), value);
        put("symbol", json!(load.symbol.as_str()));
        put("noun", json!(load.noun));
        put("body", json!(self.name(load.body)));
        match &load.kind {
            LoadKind::Mass { at, mass } => {
                put("at", self.spot(at));
                put("mass", self.quantity(*mass, Want::Mass));
            }
            LoadKind::Force { at, size, bearing } => {
                put("at", self.spot(at));
                put("force", self.quantity(*size, Want::Force));
                put("direction", self.bearing(bearing));
            }
            LoadKind::Couple { size, turning } => {
                put("couple", self.quantity(*size, Want::Couple));
                let word = TURNS.iter().find(|(_, known)| known == turning);
                put("turns", json!(word.map_or("", |(word, _)| word)));
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
                for (name, value) in [("first", first), ("last", last)] {
                    if let Some(value) = value {
                        put(name, self.quantity(*value, Want::Spread));
                    }
                }
                put("direction", self.bearing(bearing));
            }
        }
        Value::Object(fields)
    }

    fn hold(&mut self, hold: &Hold) -> Value {
        let mut fields = Map::new();
        let mut put = |name: &str, value: Value| fields.insert(name.to_owned(), value);
        put("symbol", json!(hold.symbol.as_str()));
        put("noun", json!(hold.noun));
        put("body", json!(self.name(hold.body)));
        if let Some(by) = hold.by {
            put("by", json!(self.name(by)));
        }
        put("at", self.spot(&hold.at));
        let (kind, push) = match &hold.kind {
            HoldKind::Hinge => ("hinge", None),
            HoldKind::Push(way) => ("push", Some(way)),
            HoldKind::Line(way) => ("line", Some(way)),
            HoldKind::BuiltIn => ("built-in", None),
            HoldKind::Rough { push, .. } => ("rough", Some(push)),
            HoldKind::Base { push, .. } => ("base", Some(push)),
            HoldKind::Couple => ("couple", None),
        };
        put("kind", json!(kind));
        if let Some(push) = push {
            put("direction", self.bearing(push));
        }
        if let HoldKind::Rough { friction, .. } | HoldKind::Base { friction, .. } = &hold.kind {
            put("friction", self.friction(friction));
        }
        if let HoldKind::Base { width, .. } = &hold.kind {
            put("width", self.quantity(*width, Want::Length));
        }
        Value::Object(fields)
    }

    fn friction(&mut self, friction: &Friction) -> Value {
        match friction {
            Friction::AsNeeded => json!(AS_NEEDED),
            Friction::UpTo(coefficient) => {
                json!({"up_to": self.quantity(*coefficient, Want::Coefficient)})
            }
            Friction::Limiting {
                coefficient,
                bearing,
            } => json!({
                "limiting": self.quantity(*coefficient, Want::Coefficient),
                "direction": self.bearing(bearing),
            }),
        }
    }

    fn asked(&self, asked: &Asked) -> Value {
        match asked {
            Asked::Force(id) => json!(self.force(*id)),
            Asked::Horizontal(id) => json!({"horizontal": self.force(*id)}),
            Asked::Vertical(id) => json!({"vertical": self.force(*id)}),
            Asked::Couple(id) => json!({"couple": self.force(*id)}),
            Asked::Sought => json!(SOUGHT),
        }
    }

    fn sought(&mut self, sought: &Sought) -> Value {
        let when = match sought.when {
            When::Reaches { act, limit } => json!({
                "reaches": self.force(act),
                "limit": self.quantity(limit, Want::Force),
            }),
            When::Vanishes(act) => json!({"vanishes": self.force(act)}),
            When::Slips { act, coefficient } => json!({
                "slips": self.force(act),
                "coefficient": self.quantity(coefficient, Want::Coefficient),
            }),
            When::Topples(act) => json!({"topples": self.force(act)}),
            When::Rests(body) => json!({"rests": self.name(body)}),
        };
        let given = &self.parts.givens[sought.given.0];
        json!({
            "given": given.symbol.as_str(),
            "from": bound_text(sought.low, given.dimension),
            "to": bound_text(sought.high, given.dimension),
            "when": when,
        })
    }

    fn spot(&mut self, spot: &Spot) -> Value {
        match spot {
            Spot::Origin => json!("origin"),
            Spot::On { body, leg, place } => {
                let at = self.place(*place);
                json!({"on": self.name(*body), "leg": leg, "at": at})
            }
            Spot::At { x, y } => json!({"x": self.coordinate(x), "y": self.coordinate(y)}),
            Spot::Resultant(load) => json!({"resultant": self.force(ActId::Load(*load))}),
            Spot::Centroid(weight) => json!({"centroid": self.force(ActId::Weight(*weight))}),
        }
    }

    fn coordinate(&mut self, coordinate: &Coordinate) -> Value {
        match &coordinate.0[..] {
            [] => json!("0 m"),
            // A factor of one is left out.
            [(1.0, given)] => self.quantity(*given, Want::Coordinate),
            terms => {
                let mut written = Vec::new();
                for (factor, given) in terms {
                    let length = self.quantity(*given, Want::Coordinate);
                    let length = match length.get("same_as") {
                        Some(name) => name.clone(),
                        None => length,
                    };
                    written.push(json!([factor.to_string(), length]));
                }
                json!({"sum": written})
            }
        }
    }

    fn place(&mut self, place: Place) -> Value {
        match place {
            Place::Foot => json!("foot"),
            Place::Middle => json!("middle"),
            Place::Tip => json!("tip"),
            Place::Fraction { over, under } => json!({"fraction": format!("{over}/{under}")}),
            Place::At(given) => self.quantity(given, Want::Length),
        }
    }

    fn bearing(&mut self, bearing: &Bearing) -> Value {
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
                "angle": self.quantity(*angle, Want::Slope),
                "from": reference_word(*from),
                "up": *upright == Upright::Up,
                "side": side_word(*side),
            }),
            Bearing::FromAxis { angle } => {
                json!({"angle": self.quantity(*angle, Want::Turn), "from": X_AXIS})
            }
            Bearing::Towards(spot) => json!({"towards": self.spot(spot)}),
            Bearing::Along { body, leg, onward } => {
                json!({"along": self.name(*body), "leg": leg, "onward": onward})
            }
            Bearing::Across { body, leg, left } => {
                json!({"across": self.name(*body), "leg": leg, "left": left})
            }
            Bearing::FromLeg {
                angle,
                body,
                leg,
                onward,
                left,
            } => {
                let angle = self.quantity(*angle, Want::BodyAngle);
                json!({"angle": angle, "with": self.name(*body), "leg": leg, "onward": onward, "left": left})
            }
        }
    }

    fn quantity(&mut self, id: GivenId, want: Want) -> Value {
        let given = &self.parts.givens[id.0];
        let symbol = given.symbol.as_str();
        if self.seen.contains(&id) {
            return json!({"same_as": symbol});
        }
        self.seen.push(id);
        let sought = self.parts.sought.as_ref();
        if sought.is_some_and(|sought| sought.given == id) {
            let kinds = SOUGHT_KINDS.iter();
            let kind = kinds.clone().find(|(_, known)| *known == given.dimension);
            return json!({"symbol": symbol, "sought": kind.map_or("", |(word, _)| word)});
        }
        let amount = Amount {
            value: given.value,
            written: given.written.clone(),
        };
        if amount_of(&amount.written, want).as_ref() == Some(&amount) {
            json!({"symbol": symbol, "is": amount.written})
        } else {
            // The printed form does not give the value back, so both are told.
            json!({"symbol": symbol, "written": amount.written, "si": amount.value})
        }
    }
}
