//! Reading what holds the bodies of a system: hinges, contacts, friction.

use super::decode::{Fields, Item};
use super::model::usual;
use super::quantity::Want;
use super::system_names::Reader;
use super::system_spot::stands;
use crate::system::{ActId, Friction, Hold, HoldKind};
use crate::text::Symbol;

/// The fields of every hold; its kind may add some.
const HOLD: &[&str] = &["symbol", "noun", "body", "by", "at", "kind"];
const LIMITING: &[&str] = &["limiting", "direction"];

/// The kinds of holds, each with the fields that it adds.
const KINDS: &[(&str, &[&str])] = &[
    ("hinge", &[]),
    ("push", &["direction"]),
    ("line", &["direction"]),
    ("built-in", &[]),
    ("rough", &["direction", "friction"]),
    ("base", &["direction", "friction", "width"]),
    ("couple", &[]),
];
/// The word for friction that is as large as needed.
pub(super) const AS_NEEDED: &str = "as-needed";

const FRICTION: &str =
    "\"as-needed\", {\"up_to\": \"0.4\"} or {\"limiting\": \"0.4\", \"direction\": \"left\"}";

/// True for a hold whose kind is one of those that there are.
pub(super) fn has_known_kind(item: &Item<'_>) -> bool {
    let object = item.value.as_object();
    let word = object.and_then(|object| object.get_string("kind"));
    word.is_some_and(|word| KINDS.iter().any(|(known, _)| word.value == *known))
}

impl<'a> Reader<'_, 'a> {
    pub(super) fn hold(&mut self, item: &Item<'a>, index: usize) -> Option<Hold> {
        let word = item
            .value
            .as_object()
            .and_then(|object| object.get_string("kind"));
        let kind = KINDS
            .iter()
            .find(|(known, _)| word.is_some_and(|word| word.value == *known));
        let more = kind.map_or(KINDS[5].1, |(_, more)| more);
        let known: Vec<&str> = HOLD.iter().chain(more).copied().collect();
        let fields = item.fields(&known, self.report)?;
        let symbol = self.symbol(&fields, ActId::Hold(index));
        let (noun, body) = (self.noun(&fields), self.body_in(&fields));
        let by = match fields.optional("by") {
            None => Some(None),
            Some(item) => self.body(&item).map(|by| Some((by, item))),
        };
        if let (Some(body), Some(Some((by, at)))) = (body, &by)
            && body == *by
        {
            self.contradiction(
                at,
                "this joins a body to itself; name another body, or leave it out",
            );
        }
        let name = symbol.as_ref().map_or("H", Symbol::as_str).to_owned();
        let at = self.spot_in(&fields, "at", &format!("d_{name}"));
        let kind = self.hold_kind(&fields, index);
        Some(Hold {
            symbol: symbol?,
            noun: noun?,
            body: body?,
            by: by?.map(|(by, _)| by),
            at: at?,
            kind: kind?,
        })
    }

    fn hold_kind(&mut self, fields: &Fields<'a>, index: usize) -> Option<HoldKind> {
        let words: Vec<(&str, usize)> = KINDS
            .iter()
            .enumerate()
            .map(|(at, (word, _))| (*word, at))
            .collect();
        let expected =
            "\"hinge\", \"push\", \"line\", \"built-in\", \"rough\", \"base\" or \"couple\"";
        let angle = usual("γ", index);
        let item = fields.required("kind", expected, self.report);
        let Some(word) = item.and_then(|item| item.word(&words, self.report)) else {
            [&angle, "μ", "b"]
                .iter()
                .for_each(|usual| self.lacks(usual));
            return None;
        };
        let word = KINDS[word].0;
        match word {
            "hinge" => return Some(HoldKind::Hinge),
            "built-in" => return Some(HoldKind::BuiltIn),
            "couple" => return Some(HoldKind::Couple),
            _ => {}
        }
        let push = self.bearing_in(fields, "direction", &angle);
        match word {
            "push" => return push.map(HoldKind::Push),
            "line" => return push.map(HoldKind::Line),
            _ => {}
        }
        let friction = fields
            .required("friction", FRICTION, self.report)
            .and_then(|item| self.friction(&item, &angle));
        if friction.is_none() {
            self.lacks("μ");
        }
        if word == "rough" {
            let (push, friction) = (push?, friction?);
            return Some(HoldKind::Rough { push, friction });
        }
        let width = self.number_in(fields, "width", Want::Length, "b");
        Some(HoldKind::Base {
            push: push?,
            friction: friction?,
            width: width?,
        })
    }

    fn friction(&mut self, item: &Item<'a>, angle: &str) -> Option<Friction> {
        if item.as_text() == Some(AS_NEEDED) {
            return Some(Friction::AsNeeded);
        }
        if stands(item, "up_to") {
            let item = item.fields(&["up_to"], self.report)?.optional("up_to")?;
            return self
                .quantity(&item, Want::Coefficient, "μ")
                .map(Friction::UpTo);
        }
        if !stands(item, "limiting") {
            item.expected(FRICTION, self.report);
            return None;
        }
        let fields = item.fields(LIMITING, self.report)?;
        let coefficient = fields.optional("limiting")?;
        let coefficient = self.quantity(&coefficient, Want::Coefficient, "μ");
        let bearing = self.bearing_in(&fields, "direction", angle);
        Some(Friction::Limiting {
            coefficient: coefficient?,
            bearing: bearing?,
        })
    }
}
