//! Reading the ropes of a system.

use super::decode::{Fields, Item};
use super::model::usual;
use super::quantity::{Want, amount_of};
use super::system_names::Reader;
use super::system_parts::MOST;
use super::system_spot::stands;
use crate::system::{ActId, Bearing, Cord, CordEnd};
use crate::text::Symbol;
use jsonc_parser::ast::Value;

const ROPE: &[&str] = &["symbol", "noun", "ends"];
const END: &[&str] = &["body", "at", "direction"];

/// The way in which a rope pulls.
enum Way {
    Told(Bearing),
    /// To the other end of it, told in the same words as there.
    OtherEnd,
}

impl<'a> Reader<'_, 'a> {
    /// A rope. Of two ends, each may be told as the point to which the other runs: the numbers of
    /// that point are the same then, and are not told twice.
    pub(super) fn rope(&mut self, item: &Item<'a>, index: usize) -> Option<Cord> {
        let fields = item.fields(ROPE, self.report)?;
        let symbol = self.symbol(&fields, ActId::Cord(index));
        let noun = self.noun(&fields);
        let place = format!("d_{}", symbol.as_ref().map_or("T", Symbol::as_str));
        let expected = "a list of where and how the rope pulls";
        let ends = fields.required("ends", expected, self.report);
        let ends = ends.and_then(|item| item.elements("ends", (1, MOST), self.report))?;
        let fields: Vec<_> = ends
            .iter()
            .map(|end| end.fields(END, self.report))
            .collect();
        let mut read = Vec::new();
        for (place_in, end) in fields.iter().enumerate() {
            let Some(end) = end else {
                read.push(None);
                continue;
            };
            let body = self.body_in(end);
            let at = self.spot_in(end, "at", &place);
            let other = match &fields[..] {
                [Some(one), Some(other)] => Some([other, one][place_in]),
                _ => None,
            };
            let way = match other.is_some_and(|other| runs_to(end, other)) {
                true => Some(Way::OtherEnd),
                false => {
                    let bearing = self.bearing_in(end, "direction", &usual("β", index));
                    bearing.map(Way::Told)
                }
            };
            read.push(body.zip(at).zip(way));
        }
        let read = read.into_iter().collect::<Option<Vec<_>>>()?;
        let spots: Vec<_> = read.iter().map(|((_, at), _)| at.clone()).collect();
        let ends = read
            .into_iter()
            .enumerate()
            .map(|(place, ((body, at), way))| {
                let bearing = match way {
                    Way::Told(bearing) => bearing,
                    Way::OtherEnd => Bearing::Towards(spots.iter().rev().nth(place)?.clone()),
                };
                Some(CordEnd { body, at, bearing })
            });
        Some(Cord {
            symbol: symbol?,
            noun: noun?,
            ends: ends.collect::<Option<_>>()?,
        })
    }
}

/// True if an end's direction is told as towards the point at which the other end is.
fn runs_to(end: &Fields<'_>, other: &Fields<'_>) -> bool {
    let (Some(direction), Some(at)) = (end.optional("direction"), other.optional("at")) else {
        return false;
    };
    let object = direction.value.as_object();
    object.is_some_and(|object| {
        object.properties.len() == 1
            && stands(&direction, "towards")
            && same(&object.properties[0].value, at.value)
    })
}

/// True if the same is told. A number with a name of its own is the same as without.
fn same(one: &Value<'_>, other: &Value<'_>) -> bool {
    match (one, other) {
        (Value::StringLit(one), Value::StringLit(other)) => {
            one.value == other.value || is_same_length(&one.value, &other.value)
        }
        (Value::NumberLit(one), Value::NumberLit(other)) => one.value == other.value,
        (Value::BooleanLit(one), Value::BooleanLit(other)) => one.value == other.value,
        (Value::Array(one), Value::Array(other)) => {
            let pairs = one.elements.iter().zip(&other.elements);
            one.elements.len() == other.elements.len() && pairs.into_iter().all(|(a, b)| same(a, b))
        }
        (Value::Object(one), Value::Object(other)) => {
            let told = |name: &str| other.get(name).map(|property| &property.value);
            one.properties.len() == other.properties.len()
                && one.properties.iter().all(|property| {
                    told(property.name.as_str()).is_some_and(|other| same(&property.value, other))
                })
        }
        (Value::StringLit(_), Value::Object(named)) => is_named(one, named),
        _ => false,
    }
}

/// True of two lengths of one value: 1.5 m and 1.50 m.
fn is_same_length(one: &str, other: &str) -> bool {
    let value = |text: &str| amount_of(text, Want::Length).map(|amount| amount.value);
    value(one).is_some_and(|one| value(other) == Some(one))
}

/// True if this number is told there with a name.
fn is_named(number: &Value<'_>, named: &jsonc_parser::ast::Object<'_>) -> bool {
    let is = named.get("is").map(|property| &property.value);
    named.properties.len() == 2
        && named.get("symbol").is_some()
        && is.is_some_and(|is| same(number, is))
}
