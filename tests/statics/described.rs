//! Problems in the form of tests/reference/README.md, as the program's own problems.

use super::{list, number, text};
use leverwright::problem::{
    Body, Direction, ForceId, Given, GivenId, Load, LoadKind, Parts, Place, Problem, Reference,
    Rope, Side, Support, SupportKind, Tilt, Upright,
};
use leverwright::statics::Solution;
use leverwright::text::Symbol;
use leverwright::units::Dimension;
use serde_json::Value;
use std::collections::BTreeMap;

/// The problem, and the name of each of its forces.
pub(super) fn problem(form: &Value) -> (Problem, Vec<(String, ForceId)>) {
    let mut reader = Reader::default();
    let parts = reader.parts(form);
    let problem = Problem::new(parts).unwrap_or_else(|flaws| panic!("{form}: {flaws:?}"));
    let mut names = Vec::new();
    if problem.body().mass.is_some() {
        names.push(("own weight".to_owned(), ForceId::OwnWeight));
    }
    for force in problem.forces() {
        if force.id != ForceId::OwnWeight {
            names.push((force.symbol.as_str().to_owned(), force.id));
        }
    }
    (problem, names)
}

/// What the forces are called in expressions: `T` for a size, `A_x`, `A_y`, `A_m` for the parts
/// and the couple.
pub(super) fn quantities(
    solution: &Solution,
    names: &[(String, ForceId)],
) -> BTreeMap<String, f64> {
    let mut quantities = BTreeMap::new();
    for (name, id) in names {
        quantities.insert(name.clone(), solution.size(*id));
        quantities.insert(format!("{name}_x"), solution.force(*id).x);
        quantities.insert(format!("{name}_y"), solution.force(*id).y);
        quantities.insert(format!("{name}_m"), solution.couple(*id));
    }
    quantities
}

#[derive(Default)]
struct Reader {
    givens: Vec<Given>,
}

impl Reader {
    fn given(&mut self, value: f64, dimension: Dimension) -> GivenId {
        let id = GivenId(self.givens.len());
        self.givens.push(Given {
            symbol: Symbol::new(format!("given_{}", id.0)),
            meaning: String::new(),
            value,
            written: value.to_string(),
            dimension,
        });
        id
    }

    fn angle(&mut self, form: &Value, key: &str) -> GivenId {
        let angle = match form[format!("{key}_rad")].as_f64() {
            Some(radians) => radians,
            None => number(&form[format!("{key}_deg")]).to_radians(),
        };
        self.given(angle, Dimension::ANGLE)
    }

    fn place(&mut self, form: &Value) -> Place {
        match form.as_str() {
            Some("foot") => Place::Foot,
            Some("middle") => Place::Middle,
            Some("tip") => Place::Tip,
            Some(other) => panic!("no place: {other}"),
            None if form.get("distance").is_some() => {
                Place::At(self.given(number(&form["distance"]), Dimension::LENGTH))
            }
            None => Place::Fraction {
                over: number(&form["over"]) as u32,
                under: number(&form["under"]) as u32,
            },
        }
    }

    fn direction(&mut self, form: &Value) -> Direction {
        match form.as_str() {
            Some("up") => Direction::Up,
            Some("down") => Direction::Down,
            Some(name) => Direction::Level(side(name)),
            None if form.get("from").is_some() => Direction::Oblique {
                angle: self.angle(form, "angle"),
                from: reference(&form["from"]),
                upright: match text(&form["upright"]) {
                    "up" => Upright::Up,
                    "down" => Upright::Down,
                    other => panic!("neither up nor down: {other}"),
                },
                side: side(text(&form["side"])),
            },
            None => Direction::FromBody {
                angle: self.angle(form, "from_body"),
            },
        }
    }

    fn body(&mut self, form: &Value) -> Body {
        let length = self.given(number(&form["length"]), Dimension::LENGTH);
        let mass = form["mass"]
            .as_f64()
            .map(|mass| self.given(mass, Dimension::MASS));
        let centre = match mass {
            Some(_) => self.place(&form["centre"]),
            None => Place::Middle,
        };
        let tilt = if form["tilt"] == "level" {
            Tilt::Level
        } else {
            Tilt::Rising {
                angle: self.angle(&form["tilt"], "angle"),
                from: reference(&form["tilt"]["from"]),
            }
        };
        Body {
            noun: "beam".to_owned(),
            length,
            mass,
            weight_symbol: Symbol::new("own weight"),
            centre,
            tilt,
            towards: side(text(&form["towards"])),
        }
    }

    fn load(&mut self, form: &Value) -> Load {
        let kind = match form["mass"].as_f64() {
            Some(mass) => LoadKind::Mass(self.given(mass, Dimension::MASS)),
            None => LoadKind::Force {
                size: self.given(number(&form["force"]), Dimension::FORCE),
                direction: self.direction(&form["direction"]),
            },
        };
        Load {
            symbol: Symbol::new(text(&form["name"])),
            noun: "load".to_owned(),
            at: self.place(&form["at"]),
            kind,
            stands: false,
        }
    }

    fn support(&mut self, form: &Value) -> Support {
        Support {
            symbol: Symbol::new(text(&form["name"])),
            noun: "support".to_owned(),
            at: self.place(&form["at"]),
            kind: match text(&form["kind"]) {
                "hinge" => SupportKind::Hinge,
                "built-in" => SupportKind::BuiltIn,
                "roller" => SupportKind::Roller(self.direction(&form["direction"])),
                other => panic!("no kind of support: {other}"),
            },
        }
    }

    fn rope(&mut self, form: &Value) -> Rope {
        Rope {
            symbol: Symbol::new(text(&form["name"])),
            noun: "rope".to_owned(),
            at: self.place(&form["at"]),
            direction: self.direction(&form["direction"]),
        }
    }

    fn parts(&mut self, form: &Value) -> Parts {
        let body = self.body(&form["body"]);
        let supports = list(form, "supports");
        let supports = supports.iter().map(|part| self.support(part)).collect();
        let ropes = list(form, "ropes");
        let ropes = ropes.iter().map(|part| self.rope(part)).collect();
        let loads = list(form, "loads");
        let loads = loads.iter().map(|part| self.load(part)).collect();
        Parts {
            title: String::new(),
            statement: String::new(),
            caution: String::new(),
            givens: std::mem::take(&mut self.givens),
            body,
            supports,
            ropes,
            loads,
            gravity: number(&form["gravity"]),
            accepted_gravity: Vec::new(),
            figures: 3,
        }
    }
}

fn side(name: &str) -> Side {
    match name {
        "left" => Side::Left,
        "right" => Side::Right,
        other => panic!("no side: {other}"),
    }
}

fn reference(form: &Value) -> Reference {
    match text(form) {
        "horizontal" => Reference::Horizontal,
        "vertical" => Reference::Vertical,
        other => panic!("no reference: {other}"),
    }
}
