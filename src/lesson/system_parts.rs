//! Reading the parts of a system: bodies, weights, loads, ropes.

use super::decode::{Fields, Item, Report};
use super::model::usual;
use super::quantity::{Want, read_symbol};
use super::system_hold::has_known_kind;
use super::system_names::{KnownBody, KnownForce, Reader, Traits};
use super::system_spot::stands;
use crate::system::{ActId, Body, BodyId, Leg, Load, LoadKind, Spot, Turning, Weight, WeightKind};
use crate::text::Symbol;

const BODY: &[&str] = &["name", "start", "legs", "knot"];
const LEG: &[&str] = &["length", "direction"];
const WEIGHT: &[&str] = &["symbol", "noun", "body", "at", "mass"];
const LAMINA: &[&str] = &["symbol", "noun", "body", "shapes", "mass", "mass_per_area"];
const MASS: &[&str] = &["symbol", "noun", "body", "at", "mass"];
const FORCE: &[&str] = &["symbol", "noun", "body", "at", "force", "direction"];
const COUPLE: &[&str] = &["symbol", "noun", "body", "couple", "turns"];
const SPREAD: &[&str] = &[
    "symbol",
    "noun",
    "body",
    "leg",
    "from",
    "to",
    "first",
    "last",
    "direction",
];

/// Which way couples turn, by its word.
pub(super) const TURNS: &[(&str, Turning)] = &[
    ("clockwise", Turning::Clockwise),
    ("anticlockwise", Turning::Anticlockwise),
];

const A_BODY: &str = "the name of the body";
/// The most parts in one list.
pub(super) const MOST: usize = 60;

impl<'a> Reader<'_, 'a> {
    /// The elements of a list that may be left out.
    pub(super) fn list(&mut self, fields: &Fields<'a>, name: &str) -> Vec<Item<'a>> {
        let item = fields.optional(name);
        let elements = item.and_then(|item| item.elements(name, (0, MOST), self.report));
        elements.unwrap_or_default()
    }

    /// Takes down the names of all bodies, which may be used before they are described.
    pub(super) fn meet_bodies(&mut self, items: &[Item<'a>]) {
        for item in items {
            let object = item.value.as_object();
            let name = object
                .and_then(|object| object.get_string("name"))
                .map(|name| name.value.as_ref());
            let legs = object
                .and_then(|object| object.get_array("legs"))
                .map_or(0, |legs| legs.elements.len());
            let name = name.unwrap_or_default().to_owned();
            self.bodies.push(KnownBody { name, legs });
        }
    }

    /// Takes down the names of the forces of one list, their own or their usual ones.
    pub(super) fn meet_forces(&mut self, items: &[Item<'a>], id: fn(usize) -> ActId) {
        for (index, item) in items.iter().enumerate() {
            let object = item.value.as_object();
            let own = object.and_then(|object| object.get("symbol"));
            let symbol = match own {
                // A name that cannot be read is told where the part is read.
                Some(own) => own.value.as_string_lit().map(|own| own.value.to_string()),
                None => Some(self.free(&usual_name(item, id(index)))),
            };
            let symbol = symbol.unwrap_or_default();
            if !symbol.is_empty() {
                let entries = item.entries(&mut Report::default()).unwrap_or_default();
                let own = entries.iter().find(|(name, _)| *name == "symbol");
                self.take(own.map_or(item, |(_, own)| own), &symbol);
            }
            let size =
                object.and_then(|object| object.get("force").or_else(|| object.get("couple")));
            let size = size.and_then(|size| size.value.as_object()?.get_string("same_as"));
            if size.is_some_and(|size| size.value == symbol) {
                self.shared.insert(symbol.clone());
            }
            let id = id(index);
            let mut traits = traits(item);
            if matches!(id, ActId::Hold(_)) && !has_known_kind(item) {
                // What kind is meant is told there; it may be one that slips, topples or turns.
                (traits.turns, traits.rough, traits.base) = (true, true, true);
            }
            self.forces.push(KnownForce { symbol, id, traits });
        }
    }

    /// The name of a force that was met.
    pub(super) fn symbol(&mut self, fields: &Fields<'a>, id: ActId) -> Option<Symbol> {
        if let Some(item) = fields.optional("symbol") {
            read_symbol(&item, self.report)?;
        }
        let found = self.forces.iter().find(|force| force.id == id)?;
        Some(Symbol::new(found.symbol.clone()))
    }

    pub(super) fn noun(&mut self, fields: &Fields<'a>) -> Option<String> {
        let expected = "a word such as \"lamp\"";
        let item = fields.required("noun", expected, self.report)?;
        item.text(expected, self.report).map(str::to_owned)
    }

    pub(super) fn body_in(&mut self, fields: &Fields<'a>) -> Option<BodyId> {
        let item = fields.required("body", A_BODY, self.report)?;
        self.body(&item)
    }

    pub(super) fn body_part(&mut self, item: &Item<'a>, index: usize) -> Option<Body> {
        let fields = item.fields(BODY, self.report)?;
        let name = self.body_name(&fields, index);
        let start = match fields.optional("start") {
            None => Some(Spot::Origin),
            Some(at) => self
                .spot(&at, "s")
                .filter(|spot| self.may_start(&at, spot, index)),
        };
        let mut legs = Vec::new();
        for (place, item) in self.list(&fields, "legs").into_iter().enumerate() {
            legs.push(self.leg_part(&item, (index, place)));
        }
        let knot = match fields.has("knot") {
            true => self.truth(
                &fields,
                "knot",
                "true for a point where forces meet, or false",
            ),
            false => Some(false),
        };
        Some(Body {
            noun: name?,
            start: start?,
            legs: legs.into_iter().collect::<Option<_>>()?,
            knot: knot?,
        })
    }

    fn body_name(&mut self, fields: &Fields<'a>, index: usize) -> Option<String> {
        let expected = "a name such as \"beam\", by which the body is called";
        let item = fields.required("name", expected, self.report)?;
        let name = item.text(expected, self.report)?;
        if name.trim().is_empty() {
            item.expected(expected, self.report);
            return None;
        }
        if self.bodies[..index]
            .iter()
            .any(|before| before.name == name)
        {
            let why = format!("two bodies cannot both be called {name}");
            self.contradiction(&item, why);
        }
        Some(name.to_owned())
    }

    fn may_start(&mut self, at: &Item<'a>, spot: &Spot, index: usize) -> bool {
        let why = match spot {
            Spot::On { body, .. } if body.0 >= index => {
                "a body begins at one that stands before it in the list"
            }
            Spot::Resultant(_) => "a body cannot begin where a load acts",
            Spot::Centroid(_) => "a body cannot begin at a centre of mass",
            _ => return true,
        };
        self.contradiction(at, why);
        false
    }

    fn leg_part(&mut self, item: &Item<'a>, (body, leg): (usize, usize)) -> Option<Leg> {
        let fields = item.fields(LEG, self.report)?;
        let length = self.number_in(&fields, "length", Want::Length, "L");
        self.lengths
            .extend(length.map(|length| ((BodyId(body), leg), length)));
        let bearing = self.bearing_in(&fields, "direction", "θ");
        if let Some(crate::system::Bearing::Towards(_)) = bearing {
            let why = "the direction of a leg is told by an angle, or along or across a leg before \
                       it, and not by a point";
            self.contradiction(item, why);
            return None;
        }
        let leans = match &bearing {
            Some(
                crate::system::Bearing::Along { body, leg, .. }
                | crate::system::Bearing::Across { body, leg, .. }
                | crate::system::Bearing::FromLeg { body, leg, .. },
            ) => Some((body.0, *leg)),
            _ => None,
        };
        if leans.is_some_and(|leans| leans >= (body, leg)) {
            let why = "the direction of a leg can rest on a leg before it only";
            self.contradiction(item, why);
            return None;
        }
        Some(Leg {
            length: length?,
            bearing: bearing?,
        })
    }

    pub(super) fn weight(&mut self, item: &Item<'a>, index: usize) -> Option<Weight> {
        let is_lamina = stands(item, "shapes");
        let known = if is_lamina { LAMINA } else { WEIGHT };
        let fields = item.fields(known, self.report)?;
        let symbol = self.symbol(&fields, ActId::Weight(index));
        let (noun, body) = (self.noun(&fields), self.body_in(&fields));
        let kind = if is_lamina {
            self.lamina(item, &fields).map(WeightKind::Lamina)
        } else {
            let at = self.spot_in(&fields, "at", "d_b");
            let mass = self.number_in(&fields, "mass", Want::Mass, "m_b");
            at.zip(mass)
                .map(|(at, mass)| WeightKind::Point { at, mass })
        };
        Some(Weight {
            symbol: symbol?,
            noun: noun?,
            body: body?,
            kind: kind?,
        })
    }

    pub(super) fn load(&mut self, item: &Item<'a>, index: usize) -> Option<Load> {
        let has = |name: &str| stands(item, name);
        let known = match (has("force"), has("couple"), is_spread(item)) {
            (true, false, false) => FORCE,
            (false, true, false) => COUPLE,
            (false, false, true) => SPREAD,
            _ => MASS,
        };
        let fields = item.fields(known, self.report)?;
        let symbol = self.symbol(&fields, ActId::Load(index));
        let (noun, body) = (self.noun(&fields), self.body_in(&fields));
        let name = symbol.as_ref().map_or("F", Symbol::as_str).to_owned();
        let number = index + 1;
        let (place, angle) = (format!("d_{number}"), format!("α_{number}"));
        let kind = if known == FORCE {
            let at = self.spot_in(&fields, "at", &place);
            let size = fields.optional("force");
            let size =
                size.and_then(|item| self.quantity_of(&item, Want::Force, &name, Some(&name)));
            let bearing = self.bearing_in(&fields, "direction", &angle);
            self.joined(at, size, bearing)
        } else if known == COUPLE {
            let size = fields.optional("couple");
            let size =
                size.and_then(|item| self.quantity_of(&item, Want::Couple, &name, Some(&name)));
            let turning = fields
                .required("turns", "\"clockwise\" or \"anticlockwise\"", self.report)
                .and_then(|item| item.word(TURNS, self.report));
            size.zip(turning)
                .map(|(size, turning)| LoadKind::Couple { size, turning })
        } else if known == SPREAD {
            self.spread(item, &fields, body, number)
        } else {
            let at = self.spot_in(&fields, "at", &place);
            let expected = "a \"mass\" such as \"12 kg\", or a \"force\", a \"couple\", or the \"first\" \
                            and \"last\" value of a spread load";
            let usual = format!("m_{number}");
            let mass = fields.required("mass", expected, self.report);
            if mass.is_none() {
                self.lacks(&usual);
            }
            let mass = mass.and_then(|item| self.quantity(&item, Want::Mass, &usual));
            at.zip(mass).map(|(at, mass)| LoadKind::Mass { at, mass })
        };
        Some(Load {
            symbol: symbol?,
            noun: noun?,
            body: body?,
            kind: kind?,
        })
    }

    fn joined(
        &self,
        at: Option<Spot>,
        size: Option<crate::problem::GivenId>,
        bearing: Option<crate::system::Bearing>,
    ) -> Option<LoadKind> {
        Some(LoadKind::Force {
            at: at?,
            size: size?,
            bearing: bearing?,
        })
    }

    fn spread(
        &mut self,
        item: &Item<'a>,
        fields: &Fields<'a>,
        body: Option<BodyId>,
        number: usize,
    ) -> Option<LoadKind> {
        if !fields.has("first") && !fields.has("last") {
            let expected = "how many newtons act on each metre where the load begins, such as \
                            \"150 N/m\", or under \"last\" where it ends, or both";
            fields.required("first", expected, self.report);
            self.lacks(&format!("q_{number}"));
            self.lacks(&format!("p_{number}"));
        }
        let leg = self.leg(fields, body, item);
        let mut place = |name: &str, letter: &str| {
            let expected = "a place on the leg such as \"foot\" or \"1.2 m\"";
            let usual = format!("{letter}_{number}");
            let item = fields.required(name, expected, self.report);
            let place = item.and_then(|item| Some((self.place(&item, &usual)?, item)));
            if place.is_none() {
                self.lacks(&usual);
            }
            let (place, item) = place?;
            self.places
                .extend(body.zip(leg).map(|(body, leg)| (item, body, leg, place)));
            Some(place)
        };
        let (from, to) = (place("from", "a"), place("to", "b"));
        let mut value = |name: &str, letter: &str| match fields.optional(name) {
            None => Some(None),
            Some(item) => self
                .quantity(&item, Want::Spread, &format!("{letter}_{number}"))
                .map(Some),
        };
        let (first, last) = (value("first", "q"), value("last", "p"));
        let bearing = self.bearing_in(fields, "direction", &format!("α_{number}"));
        if from.is_some() && from == to {
            self.contradiction(item, "a spread load that ends where it begins is none");
        }
        Some(LoadKind::Spread {
            leg: leg?,
            from: from?,
            to: to?,
            first: first?,
            last: last?,
            bearing: bearing?,
        })
    }
}

/// The usual name of a force whose part gives none.
fn usual_name(item: &Item<'_>, id: ActId) -> String {
    match id {
        ActId::Weight(_) => "W_b".to_owned(),
        ActId::Load(index) => {
            let letter = match traits(item) {
                Traits { spread: true, .. } => "Q",
                Traits {
                    only_turns: true, ..
                } => "M",
                _ if stands(item, "force") => "F",
                _ => "W",
            };
            format!("{letter}_{}", index + 1)
        }
        ActId::Cord(index) => usual("T", index),
        ActId::Hold(_) if traits(item).only_turns => "M".to_owned(),
        ActId::Hold(index) => usual("H", index),
    }
}

/// True for a load that is spread: one that tells its value along a leg, or where it begins and
/// ends and nothing else that a load is made by.
fn is_spread(item: &Item<'_>) -> bool {
    let any = |names: &[&str]| names.iter().any(|name| stands(item, name));
    any(&["first", "last"]) || any(&["from", "to"]) && !any(&["force", "couple", "mass"])
}

/// What a force can do, from a first look at its part.
fn traits(item: &Item<'_>) -> Traits {
    let object = item.value.as_object();
    let kind = object.and_then(|object| object.get_string("kind"));
    let kind = kind.map_or("", |kind| kind.value.as_ref());
    Traits {
        turns: matches!(kind, "built-in" | "base"),
        only_turns: kind == "couple" || stands(item, "couple"),
        rough: matches!(kind, "rough" | "base"),
        base: kind == "base",
        spread: is_spread(item),
        lamina: stands(item, "shapes"),
    }
}
