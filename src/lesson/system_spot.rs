//! Reading places, points and directions of a system.

use super::decode::{Fields, Item};
use super::model::{REFERENCES, SIDES};
use super::quantity::{Want, factor_of};
use super::system_names::Reader;
use crate::problem::{Place, Reference, Side, Upright};
use crate::system::{ActId, Bearing, BodyId, Coordinate, Spot};

/// The fields of a point on a leg.
const ON: &[&str] = &["on", "leg", "at"];
/// The fields of a point by coordinates.
const AT: &[&str] = &["x", "y"];
/// The fields of directions, each list with the one by which it is known first.
const TOWARDS: &[&str] = &["towards"];
const ALONG: &[&str] = &["along", "leg", "onward"];
const ACROSS: &[&str] = &["across", "leg", "left"];
const WITH_LEG: &[&str] = &["with", "angle", "leg", "onward", "left"];
const FROM_AXIS: &[&str] = &["angle", "from"];
const OBLIQUE: &[&str] = &["angle", "from", "up", "side"];
/// The most terms of a coordinate.
const MOST_TERMS: usize = 12;

/// The word for the x axis as a line from which angles are measured.
pub(super) const X_AXIS: &str = "x-axis";

const SPOT: &str = "\"origin\", a point on a body such as {\"on\": \"beam\", \"at\": \"tip\"}, or \
                    coordinates such as {\"x\": \"1.2 m\", \"y\": \"0 m\"}";
const DIRECTION: &str = "a direction such as \"up\", {\"angle\": \"35 deg\", \"from\": \"horizontal\", \
                         \"up\": true, \"side\": \"left\"}, or an object with \"towards\", \"along\", \
                         \"across\" or \"with\"";
const PLACE: &str = "\"foot\", \"middle\", \"tip\", {\"fraction\": \"2/3\"} or a distance from the \
                     beginning of the leg such as \"1.2 m\"";

/// True where a field of this name stands in an object.
pub(super) fn stands(item: &Item<'_>, name: &str) -> bool {
    let object = item.value.as_object();
    object.is_some_and(|object| object.get(name).is_some())
}

impl<'a> Reader<'_, 'a> {
    /// The point under `at`, or another field of this name.
    pub(super) fn spot_in(&mut self, fields: &Fields<'a>, name: &str, usual: &str) -> Option<Spot> {
        let item = fields.required(name, SPOT, self.report);
        let spot = item.and_then(|item| self.spot(&item, usual));
        if spot.is_none() {
            self.lacks(usual);
        }
        spot
    }

    /// A point; `usual` names a distance along a leg.
    pub(super) fn spot(&mut self, item: &Item<'a>, usual: &str) -> Option<Spot> {
        if item.as_text() == Some("origin") {
            return Some(Spot::Origin);
        }
        if stands(item, "on") {
            return self.on_leg(item, usual);
        }
        if stands(item, "resultant") {
            let fields = item.fields(&["resultant"], self.report)?;
            let item = fields.optional("resultant")?;
            let (id, traits) = self.force(&item)?;
            return match id {
                ActId::Load(load) if traits.spread => Some(Spot::Resultant(load)),
                _ => {
                    item.expected("the name of a spread load", self.report);
                    None
                }
            };
        }
        if stands(item, "centroid") {
            let fields = item.fields(&["centroid"], self.report)?;
            let item = fields.optional("centroid")?;
            let (id, traits) = self.force(&item)?;
            return match id {
                ActId::Weight(weight) if traits.lamina => Some(Spot::Centroid(weight)),
                _ => {
                    item.expected("the name of a lamina's weight", self.report);
                    None
                }
            };
        }
        if item.value.as_object().is_none() {
            item.expected(SPOT, self.report);
            return None;
        }
        let fields = item.fields(AT, self.report)?;
        let mut along = |name: &str| {
            let example = Want::Coordinate.example();
            let item = fields.required(name, example, self.report);
            let found = item.and_then(|item| self.coordinate(&item, name));
            if found.is_none() {
                self.lacks(name);
            }
            found
        };
        let (x, y) = (along("x"), along("y"));
        Some(Spot::At { x: x?, y: y? })
    }

    fn on_leg(&mut self, item: &Item<'a>, usual: &str) -> Option<Spot> {
        let fields = item.fields(ON, self.report)?;
        let leg = self.leg_of(&fields, "on");
        let place = fields
            .required("at", PLACE, self.report)
            .and_then(|item| Some((self.place(&item, usual)?, item)));
        let ((body, leg), (place, at)) = (leg?, place?);
        self.places.push((at, body, leg, place));
        Some(Spot::On { body, leg, place })
    }

    /// A body and one of its legs.
    fn leg_of(&mut self, fields: &Fields<'a>, name: &str) -> Option<(BodyId, usize)> {
        let item = fields.required(name, "the name of a body", self.report)?;
        let body = self.body(&item);
        let leg = self.leg(fields, body, &item);
        Some((body?, leg?))
    }

    /// The number of a leg; 0 where it is left out.
    pub(super) fn leg(
        &mut self,
        fields: &Fields<'a>,
        body: Option<BodyId>,
        at_body: &Item<'a>,
    ) -> Option<usize> {
        let item = fields.optional("leg");
        let leg = match &item {
            Some(item) => self.leg_number(item, body)?,
            None => 0,
        };
        let body = &self.bodies[body?.0];
        if leg < body.legs {
            return Some(leg);
        }
        let why = match body.legs {
            0 => format!("{} has no legs; give coordinates in its place", body.name),
            legs => format!("{} has legs 0 to {} only", body.name, legs - 1),
        };
        self.contradiction(item.as_ref().unwrap_or(at_body), why);
        None
    }

    /// The number of a leg, at most the last of its body where that is known.
    fn leg_number(&mut self, item: &Item<'a>, body: Option<BodyId>) -> Option<usize> {
        let legs = body.map_or(0, |body| self.bodies[body.0].legs);
        let is_number = item.value.as_number_lit();
        let read = is_number.and_then(|number| number.value.parse::<usize>().ok());
        if read.is_none() {
            let expected = match legs {
                0 => "the number of a leg: 0 is the first".to_owned(),
                1 => "0, the number of its only leg".to_owned(),
                legs => format!("the number of a leg, from 0 to {}", legs - 1),
            };
            item.expected(&expected, self.report);
        }
        read
    }

    /// A place along a leg.
    pub(super) fn place(&mut self, item: &Item<'a>, usual: &str) -> Option<Place> {
        match item.as_text() {
            Some("foot") => return Some(Place::Foot),
            Some("middle") => return Some(Place::Middle),
            Some("tip") => return Some(Place::Tip),
            Some(text) if !text.starts_with(|c: char| c.is_ascii_digit()) => {
                item.expected(PLACE, self.report);
                return None;
            }
            _ => {}
        }
        if !stands(item, "fraction") {
            return self.quantity(item, Want::Length, usual).map(Place::At);
        }
        let fields = item.fields(&["fraction"], self.report)?;
        let item = fields.optional("fraction")?;
        let read = item.as_text().and_then(|text| {
            let (over, under) = text.split_once('/')?;
            Some((over.parse::<u32>().ok()?, under.parse::<u32>().ok()?))
        });
        let fraction = read.filter(|(over, under)| *under > 0 && over <= under);
        if fraction.is_none() {
            let expected = "a fraction of the leg from 0 to 1, such as \"2/3\"";
            item.expected(expected, self.report);
        }
        fraction.map(|(over, under)| Place::Fraction { over, under })
    }

    pub(super) fn coordinate(&mut self, item: &Item<'a>, axis: &str) -> Option<Coordinate> {
        if stands(item, "sum") {
            let fields = item.fields(&["sum"], self.report)?;
            let item = fields.optional("sum")?;
            let terms = item.elements("terms", (1, MOST_TERMS), self.report)?;
            let terms: Vec<_> = terms.iter().map(|term| self.term(term, axis)).collect();
            return terms.into_iter().collect::<Option<_>>().map(Coordinate);
        }
        // Nothing is told by a zero: it is the axis itself.
        let zero = item.as_text().and_then(|text| {
            let amount = super::quantity::amount_of(text, Want::Coordinate)?;
            (amount.value == 0.0).then_some(Coordinate::default())
        });
        if zero.is_some() {
            return zero;
        }
        let given = self.quantity(item, Want::Coordinate, axis)?;
        Some(Coordinate(vec![(1.0, given)]))
    }

    /// A factor and what it multiplies: `["-0.5", "d"]`.
    fn term(&mut self, item: &Item<'a>, axis: &str) -> Option<(f64, crate::problem::GivenId)> {
        let expected = "a factor and the name of a length, such as [\"-0.5\", \"d\"]";
        let is_list = item.value.as_array().is_some();
        let parts = is_list.then(|| item.elements("parts of a term", (0, 2), self.report));
        let parts = parts.flatten().unwrap_or_default();
        let [factor, length] = &parts[..] else {
            item.expected(expected, self.report);
            return None;
        };
        let read = factor.as_text().and_then(factor_of);
        if read.is_none() {
            factor.expected("a factor such as \"1\" or \"-0.5\"", self.report);
        }
        let given = match length.as_text() {
            Some(name) => Some(self.refer(length, name, Want::Coordinate)),
            None => self.quantity(length, Want::Coordinate, axis),
        };
        Some((read?, given?))
    }

    /// The direction under a field of this name.
    pub(super) fn bearing_in(
        &mut self,
        fields: &Fields<'a>,
        name: &str,
        usual: &str,
    ) -> Option<Bearing> {
        let item = fields.required(name, DIRECTION, self.report);
        let bearing = item.and_then(|item| self.bearing(&item, usual));
        if bearing.is_none() {
            self.lacks(usual);
        }
        bearing
    }

    /// A direction; `usual` names its angle.
    pub(super) fn bearing(&mut self, item: &Item<'a>, usual: &str) -> Option<Bearing> {
        if item.value.as_object().is_none() {
            let found = match item.as_text() {
                Some("up") => Some(Bearing::Up),
                Some("down") => Some(Bearing::Down),
                Some("left") => Some(Bearing::Level(Side::Left)),
                Some("right") => Some(Bearing::Level(Side::Right)),
                _ => None,
            };
            if found.is_none() {
                item.expected(DIRECTION, self.report);
            }
            return found;
        }
        if stands(item, "towards") {
            let fields = item.fields(TOWARDS, self.report)?;
            return self
                .spot_in(&fields, "towards", usual)
                .map(Bearing::Towards);
        }
        if stands(item, "along") {
            let fields = item.fields(ALONG, self.report)?;
            let leg = self.leg_of(&fields, "along");
            let onward = self.truth(&fields, "onward", ONWARD);
            let ((body, leg), onward) = (leg?, onward?);
            return Some(Bearing::Along { body, leg, onward });
        }
        if stands(item, "across") {
            let fields = item.fields(ACROSS, self.report)?;
            let leg = self.leg_of(&fields, "across");
            let left = self.truth(&fields, "left", LEFT);
            let ((body, leg), left) = (leg?, left?);
            return Some(Bearing::Across { body, leg, left });
        }
        self.at_angle(item, usual)
    }

    fn at_angle(&mut self, item: &Item<'a>, usual: &str) -> Option<Bearing> {
        if stands(item, "with") {
            let fields = item.fields(WITH_LEG, self.report)?;
            let leg = self.leg_of(&fields, "with");
            let angle = self.angle(&fields, Want::BodyAngle, usual);
            let onward = self.truth(&fields, "onward", ONWARD);
            let left = self.truth(&fields, "left", LEFT);
            let ((body, leg), angle) = (leg?, angle?);
            return Some(Bearing::FromLeg {
                angle,
                body,
                leg,
                onward: onward?,
                left: left?,
            });
        }
        let from = item.value.as_object().and_then(|object| object.get("from"));
        let from = from.and_then(|from| from.value.as_string_lit());
        if from.is_some_and(|from| from.value == X_AXIS) {
            let fields = item.fields(FROM_AXIS, self.report)?;
            let angle = self.angle(&fields, Want::Turn, usual)?;
            return Some(Bearing::FromAxis { angle });
        }
        let fields = item.fields(OBLIQUE, self.report)?;
        let angle = self.angle(&fields, Want::Slope, usual);
        let from = fields
            .required(
                "from",
                "\"horizontal\", \"vertical\" or \"x-axis\"",
                self.report,
            )
            .and_then(|item| self.reference(&item));
        let up = self.truth(&fields, "up", "true for upwards, false for downwards");
        let side = fields
            .required("side", "\"left\" or \"right\"", self.report)
            .and_then(|item| item.word(SIDES, self.report));
        Some(Bearing::Oblique {
            angle: angle?,
            from: from?,
            upright: if up? { Upright::Up } else { Upright::Down },
            side: side?,
        })
    }

    fn reference(&mut self, item: &Item<'a>) -> Option<Reference> {
        let known = REFERENCES.iter().map(|(word, line)| (*word, Some(*line)));
        let known: Vec<_> = known.chain([(X_AXIS, None)]).collect();
        item.word(&known, self.report).flatten()
    }

    fn angle(
        &mut self,
        fields: &Fields<'a>,
        want: Want,
        usual: &str,
    ) -> Option<crate::problem::GivenId> {
        let item = fields.required("angle", want.example(), self.report)?;
        self.quantity(&item, want, usual)
    }

    /// A field that is true or false.
    pub(super) fn truth(&mut self, fields: &Fields<'a>, name: &str, meaning: &str) -> Option<bool> {
        let item = fields.required(name, meaning, self.report)?;
        let truth = item.value.as_boolean_lit().map(|truth| truth.value);
        if truth.is_none() {
            item.expected(meaning, self.report);
        }
        truth
    }
}

const ONWARD: &str = "true for the way to the end of the leg, false for the way back";
const LEFT: &str = "true for the left of one who walks along the leg, false for the right";
