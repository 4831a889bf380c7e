//! "1.19 m from the top": a length that is sought along a body, told from another place than the one
//! that it is counted from.

use super::{Outcome, Session};
use crate::key::StepId;
use crate::problem::Place;
use crate::system::{BodyId, Spot, System};
use crate::units::number_text;

/// How far from level, as a sine, a body is that has an upper and a lower end.
const TILTED: f64 = 0.1;
/// Words for the ends, with the axis and the side that they are at.
const ENDS: [(&str, Axis, f64); 7] = [
    ("statement.left-end", Axis::Level, -1.0),
    ("statement.left", Axis::Level, -1.0),
    ("statement.right-end", Axis::Level, 1.0),
    ("statement.right", Axis::Level, 1.0),
    ("statement.lower-end", Axis::Upright, -1.0),
    ("statement.foot", Axis::Upright, -1.0),
    ("statement.tip", Axis::Upright, 1.0),
];

#[derive(Clone, Copy, PartialEq)]
enum Axis {
    Level,
    Upright,
}

/// A straight body along which a length is sought, from its beginning.
#[derive(Clone)]
pub(super) struct Lengthwise {
    /// Its length in metres.
    length: f64,
    /// Which way it runs.
    way: (f64, f64),
    /// What stands at the place that is sought.
    nouns: Vec<String>,
    /// What else acts at a given place of it, and how far from its beginning, in metres.
    others: Vec<(String, f64)>,
}

/// Where a length is told from.
enum From {
    Beginning,
    End,
    /// So far from the beginning.
    Between(f64),
}

impl Lengthwise {
    /// The body along which the length lies that a problem seeks; `None` where it seeks another
    /// thing, or the body is bent, or its length is sought as well.
    pub(super) fn of(system: &System) -> Option<Lengthwise> {
        let parts = system.parts();
        let sought = parts.sought.as_ref()?;
        let values = system.values();
        let mut along: Option<BodyId> = None;
        let (mut nouns, mut others) = (Vec::new(), Vec::new());
        let acts = system.acts();
        let effects = acts
            .iter()
            .flat_map(|act| act.on.iter().map(move |effect| (act.noun, &effect.at)));
        for (noun, at) in effects {
            let Spot::On {
                body,
                leg: 0,
                place,
            } = at
            else {
                continue;
            };
            let noun = noun.to_lowercase();
            if *place == Place::At(sought.given) {
                along = Some(*body);
                nouns.push(noun);
            } else {
                others.push((*body, *place, noun));
            }
        }
        let [leg] = parts.bodies.get(along?.0)?.legs.as_slice() else {
            return None;
        };
        let unit = system.unit(&leg.bearing, &Spot::Origin, &values);
        let others = others.into_iter().filter(|(body, ..)| Some(*body) == along);
        let others = others
            .map(|(_, place, noun)| (noun, place.distance(leg.length, &values)))
            .collect();
        (leg.length != sought.given).then(|| Lengthwise {
            length: values[leg.length.0],
            way: (unit.x, unit.y),
            nouns,
            others,
        })
    }

    /// True if the body's beginning is at that side; `None` where it has no such side.
    fn begins_at(&self, axis: Axis, side: f64) -> Option<bool> {
        let along = match axis {
            Axis::Level => self.way.0,
            Axis::Upright => self.way.1,
        };
        (along.abs() > TILTED).then_some(along * side < 0.0)
    }
}

impl Session {
    /// The answer to a length that is told from a named place; `None` for other lines.
    pub(super) fn answer_lengthwise(&mut self, asked: StepId, line: &str) -> Option<Outcome> {
        let told = self.told_lengthwise(line)?;
        let refused = told
            .iter()
            .skip(1)
            .find(|told| !self.judged_anywhere(asked, told).stands());
        let answered = refused.or(told.first())?.clone();
        Some(self.answer(asked, &answered))
    }

    /// What such a line says of the length as the problem counts it, of every statement in it.
    fn told_lengthwise(&mut self, line: &str) -> Option<Vec<String>> {
        let along = &self.lengthwise.clone()?;
        let (_, step) = self.key.general.as_ref()?.sought?;
        let symbol = &self.key.step(step)?.symbol.clone();
        let mut all = Vec::new();
        for (at, part) in line.split(", ").enumerate() {
            let part = part.trim().trim_end_matches('.');
            let (rest, from) = self.place_behind(along, part)?;
            let (head, value) = match rest.rsplit_once('=') {
                Some((head, value)) => (head, value),
                None => rest.split_at(rest.find(|c: char| c.is_ascii_digit())?),
            };
            let name = head.split('=').next().unwrap_or_default().trim();
            let small = name.to_lowercase();
            let of_it = along.nouns.iter().any(|noun| small.contains(noun.as_str()));
            let named = symbol.matches(name) || of_it && !self.has_word(name, "statement.no");
            if !named && (at == 0 && !name.is_empty() || head.contains('=')) {
                return None;
            }
            let value = value.trim();
            let bare = !value.ends_with(char::is_alphabetic);
            let place = |metres: f64| {
                let number = number_text(metres);
                match bare {
                    true => number,
                    false => format!("{number} m"),
                }
            };
            let typed = symbol.typed();
            all.push(match from {
                From::Beginning => format!("{typed} = {value}"),
                From::End => {
                    let form = format!("{typed} = {} - ({value})", place(along.length));
                    let worked = worked_out(along.length, -1.0, value);
                    let worked = worked.map(|number| format!("{typed} = {number}"));
                    let ways: Vec<String> = [form.clone()].into_iter().chain(worked).collect();
                    self.first_standing(step, &ways, &form)
                }
                From::Between(metres) => {
                    let signs = [("+", 1.0), ("-", -1.0)];
                    let form = |sign: &str| format!("{typed} = {} {sign} ({value})", place(metres));
                    let forms = signs.iter().map(|(sign, _)| form(sign));
                    let worked = signs
                        .iter()
                        .filter_map(|(_, sign)| worked_out(metres, *sign, value))
                        .map(|number| format!("{typed} = {number}"));
                    let ways: Vec<String> = forms.chain(worked).collect();
                    self.first_standing(step, &ways, &form("-"))
                }
            });
        }
        Some(all)
    }

    /// Of the ways to put a length the first that stands, or else that follows from her own lines;
    /// `usual` where none does.
    fn first_standing(&mut self, step: StepId, ways: &[String], usual: &str) -> String {
        let mut all = ways.iter();
        let mut stands = all.find(|told| self.judged_anywhere(step, told).stands());
        if stands.is_none() && self.is_free() {
            let mut all = ways.iter();
            stands = all.find(|told| self.judged_freely(step, told).stands());
        }
        stands.map_or(usual, String::as_str).to_owned()
    }

    /// A text without the place that stands at its end as what a length is told from.
    fn place_behind<'l>(&self, along: &Lengthwise, text: &'l str) -> Option<(&'l str, From)> {
        let ends = ENDS.iter().find_map(|(key, axis, side)| {
            let rest = self.before(text, key)?;
            let from = match along.begins_at(*axis, *side)? {
                true => From::Beginning,
                false => From::End,
            };
            Some((rest, from))
        });
        let others = || {
            along.others.iter().find_map(|(noun, metres)| {
                let at = text.len().checked_sub(noun.len())?;
                let (rest, last) = (text.get(..at)?, text.get(at..)?);
                let is = last.to_lowercase() == *noun;
                is.then_some((rest, From::Between(*metres)))
            })
        };
        let (rest, from) = ends.or_else(others)?;
        let rest = self.before(rest, "statement.filler").unwrap_or(rest);
        Some((self.before(rest, "statement.from")?, from))
    }
}

/// So far from a place, worked out where a number alone is told, to the last place typed; with the
/// unit behind it.
fn worked_out(place: f64, sign: f64, value: &str) -> Option<String> {
    let metres = value.trim_end_matches('m').trim_end();
    let number = metres.parse::<f64>().ok()?;
    let decimals = metres.split_once('.').map_or(0, |(_, after)| after.len());
    let unit = if metres.len() == value.len() {
        ""
    } else {
        " m"
    };
    Some(format!("{:.decimals$}{unit}", place + sign * number))
}
