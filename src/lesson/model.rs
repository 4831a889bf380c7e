//! Reading the model of a problem: the body, what holds it, what it carries.

use super::decode::{Fields, Item, Report};
use super::family::{Amount, Drawn, Variant};
use super::fault::FaultKind;
use super::quantity::{Source, Want, read_quantity, read_symbol};
use super::{geometry, order};
use crate::problem::{
    Body, Given, GivenId, Load, LoadKind, Parts, Place, Reference, Rope, Side, Support,
    SupportKind, Tilt,
};
use crate::text::Symbol;
use std::collections::BTreeMap;

/// The fields of a model; a lesson's variant has `says` beside them.
pub(super) const MODEL: &[&str] = &["body", "supports", "ropes", "loads", "order", "says"];
const BODY: &[&str] = &[
    "noun",
    "length",
    "mass",
    "weight_symbol",
    "centre",
    "tilt",
    "towards",
];
/// The most supports, ropes or loads that a model may have.
const MOST_PARTS: usize = 12;

/// Sides by their words.
pub(super) const SIDES: &[(&str, Side)] = &[("left", Side::Left), ("right", Side::Right)];
/// Lines that angles are measured from, by their words.
pub(super) const REFERENCES: &[(&str, Reference)] = &[
    ("horizontal", Reference::Horizontal),
    ("vertical", Reference::Vertical),
];

/// A part with where it stands; `None` where it could not be read.
pub(super) type Listed<'a, T> = Vec<(Item<'a>, Option<T>)>;

/// A model while it is read.
pub(super) struct Model<'r, 'a> {
    pub(super) report: &'r mut Report,
    /// True where numbers may be drawn.
    draws: bool,
    pub(super) givens: Vec<Given>,
    /// The values of each given: one, or those it is drawn from.
    pub(super) choices: Vec<Vec<Amount>>,
    is_drawn: Vec<bool>,
    /// The body's length, once it is read: whatever else of the body cannot be.
    pub(super) length: Option<GivenId>,
    /// Where each name that is taken stands, by its folded form: learners may type any case.
    names: BTreeMap<String, Item<'a>>,
    /// Every place, with where it stands in the file.
    pub(super) places: Vec<(Item<'a>, Place)>,
}

/// Reads a model. Its words are still keys, and `says` is empty.
pub(super) fn read_model<'a>(
    item: &Item<'a>,
    fields: &Fields<'a>,
    draws: bool,
    report: &mut Report,
) -> Option<Variant> {
    let mut model = Model {
        report,
        draws,
        givens: Vec::new(),
        choices: Vec::new(),
        is_drawn: Vec::new(),
        length: None,
        names: BTreeMap::new(),
        places: Vec::new(),
    };
    let body = fields
        .required("body", "an object that describes the body", model.report)
        .and_then(|item| model.body(&item));
    let supports = model.list(fields, "supports", Model::support);
    let loads = model.list(fields, "loads", Model::load);
    let ropes = model.list(fields, "ropes", Model::rope);
    let forces = supports.iter().flat_map(|(_, part)| part);
    forces.for_each(|part| model.check_parts_of(&part.symbol));
    let forces = ropes.iter().flat_map(|(_, part)| part);
    forces.for_each(|part| model.check_parts_of(&part.symbol));
    let forces = loads.iter().flat_map(|(_, part)| part);
    forces.for_each(|part| model.check_parts_of(&part.symbol));
    geometry::check(&mut model, item, body.as_ref(), &supports, &ropes, &loads);
    let drawn = model.drawn();
    let mut variant = Variant {
        parts: Parts {
            title: String::new(),
            statement: String::new(),
            caution: String::new(),
            givens: model.givens,
            body: body?,
            supports: every(supports)?,
            ropes: every(ropes)?,
            loads: every(loads)?,
            gravity: 0.0,
            accepted_gravity: Vec::new(),
            figures: 0,
        },
        drawn,
        says: Vec::new(),
    };
    if let Some(item) = fields.optional("order") {
        order::apply(&mut variant, &item, report);
    }
    Some(variant)
}

/// All of a list, if all of it was read.
fn every<T>(parts: Listed<'_, T>) -> Option<Vec<T>> {
    parts.into_iter().map(|(_, part)| part).collect()
}

impl<'a> Model<'_, 'a> {
    fn list<T>(
        &mut self,
        fields: &Fields<'a>,
        name: &str,
        read: fn(&mut Self, &Item<'a>, usize) -> Option<T>,
    ) -> Listed<'a, T> {
        let Some(item) = fields.optional(name) else {
            return Vec::new();
        };
        let elements = item.elements(name, (0, MOST_PARTS), self.report);
        let mut parts = Vec::new();
        for (index, element) in elements.unwrap_or_default().into_iter().enumerate() {
            let part = read(self, &element, index);
            parts.push((element, part));
        }
        parts
    }

    fn drawn(&self) -> Vec<Drawn> {
        let drawn = self.choices.iter().enumerate();
        drawn
            .filter(|(index, _)| self.is_drawn[*index])
            .map(|(index, choices)| Drawn {
                given: GivenId(index),
                choices: choices.clone(),
            })
            .collect()
    }

    /// Takes a name for something; reports a name that is taken.
    fn name(&mut self, item: &Item<'a>, symbol: &str) {
        let folded = Symbol::new(symbol).folded();
        if self.names.insert(folded, item.clone()).is_some() {
            let symbol = symbol.to_owned();
            self.report.add(item, FaultKind::NameTwice { symbol });
        }
    }

    /// Reports names that the working gives to the parts of a force.
    fn check_parts_of(&mut self, symbol: &Symbol) {
        for axis in ["x", "y"] {
            let name = format!("{}{axis}", symbol.folded());
            if let Some(item) = self.names.get(&name) {
                let name = item.as_text().map_or(name, str::to_owned);
                let means = format!("a part of the force {symbol}");
                self.report.add(item, FaultKind::Reserved { name, means });
            }
        }
    }

    /// Reads a quantity and adds it to the givens under its own or its usual name.
    pub(super) fn quantity(&mut self, item: &Item<'a>, want: Want, usual: &str) -> Option<GivenId> {
        let quantity = read_quantity(item, want, self.report)?;
        let choices = match quantity.source {
            Source::SameAs(item, symbol) => return self.same_as(&item, symbol, want),
            Source::Fixed(amount) => {
                self.is_drawn.push(false);
                vec![amount]
            }
            Source::Drawn(choices) => {
                if !self.draws {
                    self.report.add(item, FaultKind::DrawnInProblem);
                }
                self.is_drawn.push(true);
                choices
            }
        };
        let (at, symbol) = quantity
            .symbol
            .unwrap_or_else(|| (item.clone(), usual.to_owned()));
        self.name(&at, &symbol);
        self.givens.push(Given {
            symbol: Symbol::new(symbol),
            meaning: String::new(),
            value: choices[0].value,
            written: choices[0].written.clone(),
            dimension: want.dimension(),
        });
        self.choices.push(choices);
        Some(GivenId(self.givens.len() - 1))
    }

    /// The given of this name, if it can be used so.
    fn same_as(&mut self, item: &Item<'a>, symbol: &str, want: Want) -> Option<GivenId> {
        let found = self
            .givens
            .iter()
            .position(|given| given.symbol.as_str() == symbol);
        let Some(index) = found else {
            let given = self
                .givens
                .iter()
                .map(|given| given.symbol.as_str().to_owned());
            let kind = FaultKind::NoSuchGiven {
                symbol: symbol.to_owned(),
                given: given.collect(),
            };
            self.report.add(item, kind);
            return None;
        };
        let fits = self.givens[index].dimension == want.dimension()
            && self.choices[index]
                .iter()
                .all(|amount| want.allows(amount.value));
        if !fits {
            item.expected(&format!("the name of {}", want.example()), self.report);
        }
        fits.then_some(GivenId(index))
    }

    fn noun(&mut self, fields: &Fields<'a>) -> Option<String> {
        let item = fields.required("noun", "a word such as \"beam\"", self.report)?;
        let noun = item.said("a word such as \"beam\"", self.report)?;
        Some(noun.to_owned())
    }

    /// The name of a force, its own or its usual one.
    fn force_name(
        &mut self,
        item: &Item<'a>,
        fields: &Fields<'a>,
        field: &str,
        usual: String,
    ) -> Option<Symbol> {
        let (at, symbol) = match fields.optional(field) {
            Some(item) => {
                let symbol = read_symbol(&item, self.report)?;
                (item, symbol)
            }
            None => (item.clone(), usual),
        };
        self.name(&at, &symbol);
        Some(Symbol::new(symbol))
    }

    fn body(&mut self, item: &Item<'a>) -> Option<Body> {
        let fields = item.fields(BODY, self.report)?;
        let noun = self.noun(&fields);
        let length = fields
            .required("length", Want::Length.example(), self.report)
            .and_then(|item| self.quantity(&item, Want::Length, "L"));
        self.length = length;
        let mass = match fields.optional("mass") {
            Some(item) => self.quantity(&item, Want::Mass, "m_b").map(Some),
            None => Some(None),
        };
        let weight_symbol = match (&mass, fields.optional("weight_symbol")) {
            // A weight that does not count takes no name.
            (Some(None), Some(item)) => read_symbol(&item, self.report).map(Symbol::new),
            (Some(None), None) => Some(Symbol::new("W_b")),
            _ => self.force_name(item, &fields, "weight_symbol", "W_b".to_owned()),
        };
        let tilt = fields
            .required(
                "tilt",
                "\"level\" or an object with \"angle\" and \"from\"",
                self.report,
            )
            .and_then(|item| self.tilt(&item));
        let centre = match fields.optional("centre") {
            Some(item) => self.place(&item, "d_b"),
            None => Some(Place::Middle),
        };
        let towards = fields
            .required("towards", "\"left\" or \"right\"", self.report)
            .and_then(|item| item.word(SIDES, self.report));
        Some(Body {
            noun: noun?,
            length: length?,
            mass: mass?,
            weight_symbol: weight_symbol?,
            centre: centre?,
            tilt: tilt?,
            towards: towards?,
        })
    }

    fn tilt(&mut self, item: &Item<'a>) -> Option<Tilt> {
        if item.value.as_object().is_none() {
            let expected = "\"level\" or an object with \"angle\" and \"from\"";
            if item.as_text() != Some("level") {
                item.expected(expected, self.report);
                return None;
            }
            return Some(Tilt::Level);
        }
        let fields = item.fields(&["angle", "from"], self.report)?;
        let angle = fields
            .required("angle", Want::Slope.example(), self.report)
            .and_then(|item| self.quantity(&item, Want::Slope, "θ"));
        let from = self.reference(&fields);
        Some(Tilt::Rising {
            angle: angle?,
            from: from?,
        })
    }

    pub(super) fn reference(&mut self, fields: &Fields<'a>) -> Option<Reference> {
        let item = fields.required("from", "\"horizontal\" or \"vertical\"", self.report)?;
        item.word(REFERENCES, self.report)
    }

    fn at(&mut self, fields: &Fields<'a>, usual: &str) -> Option<Place> {
        let expected = "a place such as \"tip\" or \"1.2 m\" from the foot";
        let item = fields.required("at", expected, self.report)?;
        self.place(&item, usual)
    }

    fn support(&mut self, item: &Item<'a>, index: usize) -> Option<Support> {
        let known = ["symbol", "noun", "at", "kind", "direction"];
        let fields = item.fields(&known, self.report)?;
        let noun = self.noun(&fields);
        let symbol = self.force_name(item, &fields, "symbol", usual("H", index));
        let place = format!("d_{}", symbol.as_ref().map_or("H", Symbol::as_str));
        let at = self.at(&fields, &place);
        let kinds = [
            ("hinge", Some(SupportKind::Hinge)),
            ("built_in", Some(SupportKind::BuiltIn)),
            ("roller", None),
        ];
        let kind = fields
            .required("kind", "\"hinge\", \"roller\" or \"built_in\"", self.report)
            .and_then(|item| item.word(&kinds, self.report));
        let direction = fields.optional("direction");
        let kind = match (kind?, direction) {
            (Some(kind), None) => Some(kind),
            (Some(_), Some(item)) => {
                let why = "only a roller has a direction; take it out".to_owned();
                self.report.add(&item, FaultKind::Contradiction { why });
                None
            }
            (None, _) => fields
                .required(
                    "direction",
                    "the way the roller pushes, such as \"up\"",
                    self.report,
                )
                .and_then(|item| self.direction(&item, &usual("γ", index)))
                .map(SupportKind::Roller),
        };
        Some(Support {
            symbol: symbol?,
            noun: noun?,
            at: at?,
            kind: kind?,
        })
    }

    fn rope(&mut self, item: &Item<'a>, index: usize) -> Option<Rope> {
        let fields = item.fields(&["symbol", "noun", "at", "direction"], self.report)?;
        let noun = self.noun(&fields);
        let symbol = self.force_name(item, &fields, "symbol", usual("T", index));
        let place = format!("d_{}", symbol.as_ref().map_or("T", Symbol::as_str));
        let at = self.at(&fields, &place);
        let direction = fields
            .required(
                "direction",
                "the way the rope pulls, such as \"up\"",
                self.report,
            )
            .and_then(|item| self.direction(&item, &usual("β", index)));
        Some(Rope {
            symbol: symbol?,
            noun: noun?,
            at: at?,
            direction: direction?,
        })
    }

    fn load(&mut self, item: &Item<'a>, index: usize) -> Option<Load> {
        let known = [
            "symbol",
            "noun",
            "at",
            "mass",
            "stands",
            "force",
            "direction",
        ];
        let fields = item.fields(&known, self.report)?;
        let noun = self.noun(&fields);
        let number = index + 1;
        let is_force = fields.has("force");
        let letter = if is_force { "F" } else { "W" };
        let symbol = self.force_name(item, &fields, "symbol", format!("{letter}_{number}"));
        let kind = if is_force {
            self.force(&fields, symbol.as_ref(), index)
        } else {
            if let Some(item) = fields.optional("direction") {
                let why = "a mass always pulls down; take the direction out, or give a \"force\"";
                let why = why.to_owned();
                self.report.add(&item, FaultKind::Contradiction { why });
            }
            let expected = "a \"mass\" such as \"12 kg\", or a \"force\" with a \"direction\"";
            fields
                .required("mass", expected, self.report)
                .and_then(|item| self.quantity(&item, Want::Mass, &format!("m_{number}")))
                .map(LoadKind::Mass)
        };
        let at = self.at(&fields, &format!("d_{number}"));
        let stands = fields
            .optional("stands")
            .is_some_and(|item| self.stands(&item, is_force));
        Some(Load {
            symbol: symbol?,
            noun: noun?,
            at: at?,
            kind: kind?,
            stands,
        })
    }

    /// Whether a mass stands on the body rather than hangs from it.
    fn stands(&mut self, item: &Item<'a>, is_force: bool) -> bool {
        let said = item.value.as_boolean_lit().map(|said| said.value);
        if is_force {
            let why = "a force neither stands nor hangs; take \"stands\" out".to_owned();
            self.report.add(item, FaultKind::Contradiction { why });
        } else if said.is_none() {
            item.expected("true or false", self.report);
        }
        said.unwrap_or(false)
    }

    fn force(
        &mut self,
        fields: &Fields<'a>,
        symbol: Option<&Symbol>,
        index: usize,
    ) -> Option<LoadKind> {
        if let Some(item) = fields.optional("mass") {
            let why = "a load is a mass or a force, not both".to_owned();
            self.report.add(&item, FaultKind::Contradiction { why });
        }
        // The force and its given size are one thing and have one name.
        let name = symbol.map(|symbol| symbol.as_str().to_owned());
        let taken = symbol.and_then(|symbol| self.names.remove_entry(&symbol.folded()));
        let size = fields
            .optional("force")
            .and_then(|item| self.quantity(&item, Want::Force, name.as_deref().unwrap_or("F")));
        self.names.extend(taken);
        let expected = "the way the force acts, such as \"down\"";
        let direction = fields
            .required("direction", expected, self.report)
            .and_then(|item| self.direction(&item, &format!("α_{}", index + 1)));
        Some(LoadKind::Force {
            size: size?,
            direction: direction?,
        })
    }
}

/// The usual name of the first and of later things of a kind: `T`, `T_2`.
pub(super) fn usual(letter: &str, index: usize) -> String {
    if index == 0 {
        letter.to_owned()
    } else {
        format!("{letter}_{}", index + 1)
    }
}
