//! Reading places and directions, and what cannot stand together.

use super::decode::Item;
use super::family::Amount;
use super::fault::FaultKind;
use super::model::{Listed, Model, SIDES};
use super::quantity::Want;
use crate::problem::{
    Body, Direction, GivenId, Load, Place, Rope, Side, Support, SupportKind, Tilt, Upright,
};
use std::f64::consts::FRAC_PI_2;

impl<'a> Model<'_, 'a> {
    /// A place along the body.
    pub(super) fn place(&mut self, item: &Item<'a>, usual: &str) -> Option<Place> {
        let named = match item.as_text() {
            Some("foot") => Some(Place::Foot),
            Some("middle") => Some(Place::Middle),
            Some("tip") => Some(Place::Tip),
            _ => None,
        };
        let fraction = item
            .value
            .as_object()
            .is_some_and(|object| object.get("fraction").is_some());
        let place = if named.is_some() {
            named
        } else if fraction {
            self.fraction(item)
        } else if is_word(item) {
            item.expected(
                "\"foot\", \"middle\", \"tip\", {\"fraction\": \"2/3\"} or a distance from the \
                 foot such as \"1.2 m\"",
                self.report,
            );
            None
        } else {
            self.quantity(item, Want::Length, usual).map(Place::At)
        };
        self.places.extend(place.map(|place| (item.clone(), place)));
        place
    }

    fn fraction(&mut self, item: &Item<'a>) -> Option<Place> {
        let item = item
            .fields(&["fraction"], self.report)?
            .optional("fraction")?;
        let read = item.as_text().and_then(|text| {
            let (over, under) = text.split_once('/')?;
            Some((over.parse::<u32>().ok()?, under.parse::<u32>().ok()?))
        });
        match read.filter(|(over, under)| *under > 0 && over <= under) {
            Some((over, under)) => Some(Place::Fraction { over, under }),
            None => {
                item.expected(
                    "a fraction of the body from 0 to 1, such as \"2/3\"",
                    self.report,
                );
                None
            }
        }
    }

    /// A direction in the plane.
    pub(super) fn direction(&mut self, item: &Item<'a>, usual: &str) -> Option<Direction> {
        let words = [
            ("up", Direction::Up),
            ("down", Direction::Down),
            ("left", Direction::Level(Side::Left)),
            ("right", Direction::Level(Side::Right)),
        ];
        let Some(object) = item.value.as_object() else {
            let known = |text| words.iter().find(|(word, _)| *word == text);
            let found = item
                .as_text()
                .and_then(known)
                .map(|(_, direction)| *direction);
            if found.is_none() {
                item.expected(
                    "\"up\", \"down\", \"left\", \"right\", or an object with \"angle\" or \
                     \"angle_with_body\"",
                    self.report,
                );
            }
            return found;
        };
        if object.get("angle_with_body").is_some() {
            let fields = item.fields(&["angle_with_body"], self.report)?;
            let angle = fields.optional("angle_with_body")?;
            let angle = self.quantity(&angle, Want::BodyAngle, usual)?;
            return Some(Direction::FromBody { angle });
        }
        self.oblique(item, usual)
    }

    fn oblique(&mut self, item: &Item<'a>, usual: &str) -> Option<Direction> {
        let fields = item.fields(&["angle", "from", "up", "side"], self.report)?;
        let angle = fields
            .required("angle", Want::Slope.example(), self.report)
            .and_then(|item| self.quantity(&item, Want::Slope, usual));
        let from = self.reference(&fields);
        let up = fields.required("up", "true for upwards, false for downwards", self.report);
        let upright = up.and_then(|item| match item.value.as_boolean_lit() {
            Some(truth) if truth.value => Some(Upright::Up),
            Some(_) => Some(Upright::Down),
            None => {
                item.expected("true for upwards, false for downwards", self.report);
                None
            }
        });
        let side = fields
            .required("side", "\"left\" or \"right\"", self.report)
            .and_then(|item| item.word(SIDES, self.report));
        Some(Direction::Oblique {
            angle: angle?,
            from: from?,
            upright: upright?,
            side: side?,
        })
    }
}

/// True for a text that is no number: a misspelt place rather than a wrong unit.
fn is_word(item: &Item<'_>) -> bool {
    item.as_text()
        .is_some_and(|text| text.starts_with(|c: char| c.is_alphabetic()) || text.is_empty())
}

/// Reports places beyond the tip and parts that cannot stand together.
pub(super) fn check<'a>(
    model: &mut Model<'_, 'a>,
    item: &Item<'a>,
    body: Option<&Body>,
    supports: &Listed<'a, Support>,
    ropes: &Listed<'a, Rope>,
    loads: &Listed<'a, Load>,
) {
    if supports.is_empty() && ropes.is_empty() {
        contradiction(
            model,
            item,
            "nothing holds the body: give it a support or a rope",
        );
    }
    for (index, (item, support)) in supports.iter().enumerate() {
        let Some(at) = support.as_ref().map(|support| support.at) else {
            continue;
        };
        let others = supports[..index].iter().flat_map(|(_, other)| other);
        if others
            .into_iter()
            .any(|other| is_one_spot(model, body, other.at, at))
        {
            contradiction(model, item, "two supports cannot stand at one place");
        }
    }
    let hinge = match &supports[..] {
        [(_, Some(support))] if support.kind == SupportKind::Hinge => Some(support.at),
        _ => None,
    };
    for (item, rope) in ropes {
        if let (Some(rope), Some(hinge)) = (rope, hinge)
            && is_one_spot(model, body, rope.at, hinge)
        {
            let why = "this rope is tied at the hinge, so it cannot turn the body";
            contradiction(model, item, why);
        }
    }
    if let Some(length) = model.length {
        check_places(model, length);
    }
    let Some(body) = body else {
        return;
    };
    for (item, rope) in ropes {
        let level = |rope: &Rope| matches!(rope.direction, Direction::Level(_));
        if body.tilt == Tilt::Level && rope.as_ref().is_some_and(level) {
            let why = "this rope pulls along the level body, so it cannot hold it up";
            contradiction(model, item, why);
        }
        if rope
            .as_ref()
            .is_some_and(|rope| is_along(model, body, rope.direction))
        {
            let why = "this rope pulls along the body, so it cannot turn it; give it another angle";
            contradiction(model, item, why);
        }
    }
    if body.mass.is_none() && loads.is_empty() {
        let why = "the body has no mass and no load, so there is nothing to hold";
        contradiction(model, item, why);
    }
}

fn contradiction(model: &mut Model<'_, '_>, item: &Item<'_>, why: &str) {
    let why = why.to_owned();
    model.report.add(item, FaultKind::Contradiction { why });
}

/// True if two places are one, however they are written and whatever is drawn.
fn is_one_spot(model: &Model<'_, '_>, body: Option<&Body>, one: Place, other: Place) -> bool {
    let part = |place: Place| match place {
        Place::Foot => Some((0, 1)),
        Place::Middle => Some((1, 2)),
        Place::Tip => Some((1, 1)),
        Place::Fraction { over, under } => Some((u64::from(over), u64::from(under))),
        Place::At(_) => None,
    };
    if let (Some((over, under)), Some((above, below))) = (part(one), part(other)) {
        return over * below == above * under;
    }
    let fixed = |given: GivenId| match &model.choices[given.0][..] {
        [amount] => Some(amount.value),
        _ => None,
    };
    let metres = |place: Place| match (place, part(place)) {
        (Place::At(given), _) => fixed(given),
        (_, Some((0, _))) => Some(0.0),
        (_, Some((over, under))) => Some(fixed(body?.length)? * over as f64 / under as f64),
        _ => None,
    };
    let near = |one: f64, other: f64| (one - other).abs() <= 1e-9 * one.abs().max(other.abs());
    one == other
        || matches!((metres(one), metres(other)), (Some(one), Some(other)) if near(one, other))
}

/// True if a direction is that of the body or its opposite, whatever is drawn.
fn is_along(model: &Model<'_, '_>, body: &Body, direction: Direction) -> bool {
    let (
        Tilt::Rising { angle, from },
        Direction::Oblique {
            angle: pull,
            from: reference,
            upright,
            side,
        },
    ) = (body.tilt, direction)
    else {
        return false;
    };
    // Up to the right and down to the left are one line.
    let rises_right = (upright == Upright::Up) == (side == Side::Right);
    if rises_right != (body.towards == Side::Right) {
        return false;
    }
    if angle == pull {
        return from == reference;
    }
    let (own, other) = (&model.choices[angle.0][..], &model.choices[pull.0][..]);
    let ([own], [other]) = (own, other) else {
        return false;
    };
    let wanted = if from == reference {
        own.value
    } else {
        FRAC_PI_2 - own.value
    };
    (other.value - wanted).abs() < 1e-9
}

/// No choice of a distance may lie beyond the tip for any choice of the length.
fn check_places(model: &mut Model<'_, '_>, length: GivenId) {
    let smaller = |a: &&Amount, b: &&Amount| a.value.total_cmp(&b.value);
    let Some(shortest) = model.choices[length.0].iter().min_by(smaller) else {
        return;
    };
    for (item, place) in &model.places {
        let Place::At(given) = *place else {
            continue;
        };
        let farthest = model.choices[given.0].iter().max_by(smaller);
        if let Some(farthest) = farthest
            && given != length
            && farthest.value > shortest.value * (1.0 + 1e-12)
        {
            let kind = FaultKind::OffBody {
                place: farthest.written.clone(),
                length: shortest.written.clone(),
            };
            model.report.add(item, kind);
        }
    }
}
