//! The drawing of a general problem told in words: its bodies, what holds them, what acts on them.

use crate::problem::{GivenId, Place, Reference, Side, Upright};
use crate::system::{
    ActId, Bearing, BodyId, Coordinate, Effect, Friction, HoldKind, Line, LoadKind, Spot, System,
    Turning,
};
use crate::text::{Prose, Slot, Words};
use crate::units::{Dimension, value_text};

/// Everything that a drawing would show, a sentence each.
pub(super) fn scene(system: &System, words: &Words) -> Vec<Prose> {
    let teller = Teller { system, words };
    let mut told: Vec<Prose> = Vec::new();
    for (index, body) in system.parts().bodies.iter().enumerate() {
        for leg in 0..body.legs.len() {
            told.push(teller.leg(BodyId(index), leg));
        }
    }
    for act in system.acts() {
        let Some(effect) = act.on.first() else {
            continue;
        };
        let slots = [
            ("symbol", Slot::Name(act.symbol.shown())),
            ("noun", Slot::Word(act.noun.to_owned())),
            ("place", Slot::Word(teller.spot(&effect.at, effect.body))),
            ("way", Slot::Word(teller.line(&effect.line))),
        ];
        told.push(teller.act(act.id, effect, slots.to_vec()));
    }
    let asked = system.asked_unnamed();
    if !asked.is_empty() {
        let slots = [("wanted", Slot::Name(asked.join(", ")))];
        told.push(words.say("general.all-asked", &slots));
    }
    told
}

struct Teller<'a> {
    system: &'a System,
    words: &'a Words,
}

impl Teller<'_> {
    fn say(&self, key: &str, slots: &[(&str, Slot)]) -> String {
        self.words.say(key, slots).to_string()
    }

    fn body(&self, body: BodyId) -> String {
        let found = self.system.parts().bodies.get(body.0);
        found.map_or_else(String::new, |body| body.noun.clone())
    }

    /// A number of the problem: its name and value; of what is sought the name alone.
    fn given(&self, id: GivenId) -> String {
        let given = self.system.given(id);
        let sought = self.system.parts().sought.as_ref();
        let is_sought = sought.is_some_and(|sought| sought.given == id);
        match is_sought || given.written.is_empty() {
            true => given.symbol.shown(),
            false => format!("{} = {}", given.symbol.shown(), given.written),
        }
    }

    fn leg(&self, body: BodyId, leg: usize) -> Prose {
        let Some(found) = self.system.leg(body, leg) else {
            return Prose::default();
        };
        let start = self
            .system
            .parts()
            .bodies
            .get(body.0)
            .map(|body| &body.start);
        let from = match (leg, start) {
            (0, Some(start)) => self.spot(start, BodyId(usize::MAX)),
            _ => self.words.word("general.scene.leg-end"),
        };
        let slots = [
            ("body", Slot::Word(self.body(body))),
            ("length", Slot::Value(self.given(found.length))),
            ("way", Slot::Word(self.way(&found.bearing))),
            ("from", Slot::Word(from)),
            ("leg", Slot::Word((leg + 1).to_string())),
        ];
        let key = match self.legs(body) {
            1 => "general.scene.leg",
            _ => "general.scene.leg-part",
        };
        self.words.say(key, &slots)
    }

    /// How many straight parts a body has.
    fn legs(&self, body: BodyId) -> usize {
        let found = self.system.parts().bodies.get(body.0);
        found.map_or(0, |body| body.legs.len())
    }

    fn act(&self, id: ActId, effect: &Effect, mut slots: Vec<(&'static str, Slot)>) -> Prose {
        slots.push(("body", Slot::Word(self.body(effect.body))));
        let parts = self.system.parts();
        let key = match id {
            ActId::Weight(_) => "general.scene.weight",
            ActId::Cord(index) => {
                let cord = parts.cords.get(index);
                let ends = cord.map_or(&[][..], |cord| &cord.ends[..]);
                let told = ends.iter().map(|end| {
                    // No word begins a sentence here.
                    let slots = [
                        ("place", Slot::Value(self.spot(&end.at, end.body))),
                        ("way", Slot::Word(self.way(&end.bearing))),
                    ];
                    self.say("general.scene.end", &slots)
                });
                let told: Vec<String> = told.collect();
                let and = self.words.word("general.and");
                slots.push(("ends", Slot::Word(told.join(&format!(" {and} ")))));
                "general.scene.rope"
            }
            ActId::Load(index) => match parts.loads.get(index).map(|load| &load.kind) {
                Some(LoadKind::Mass { .. }) => "general.scene.weight",
                Some(LoadKind::Couple { .. }) => "general.scene.couple",
                Some(LoadKind::Spread {
                    from,
                    to,
                    leg,
                    first,
                    last,
                    ..
                }) => {
                    let end = |place: &Place| {
                        let at = Spot::On {
                            body: effect.body,
                            leg: *leg,
                            place: *place,
                        };
                        Slot::Word(self.spot(&at, effect.body))
                    };
                    slots.push(("from", end(from)));
                    slots.push(("to", end(to)));
                    let rate = |given: &Option<GivenId>| match given {
                        Some(given) => self.given(*given),
                        None => self.words.word("general.scene.nothing"),
                    };
                    slots.push(("first", Slot::Value(rate(first))));
                    slots.push(("last", Slot::Value(rate(last))));
                    match first == last {
                        true => "general.scene.spread",
                        false => "general.scene.spread-changing",
                    }
                }
                _ => "general.scene.force",
            },
            ActId::Hold(index) => {
                let hold = parts.holds.get(index);
                let by = hold.and_then(|hold| hold.by);
                slots.push((
                    "by",
                    Slot::Word(by.map_or_else(String::new, |by| self.body(by))),
                ));
                let joint = by.is_some();
                let kind = hold.map(|hold| &hold.kind);
                if let Some(
                    HoldKind::Rough { push, friction } | HoldKind::Base { push, friction, .. },
                ) = kind
                {
                    slots.push(("push", Slot::Word(self.way(push))));
                    slots.push(("friction", Slot::Word(self.friction(friction))));
                }
                match kind {
                    Some(HoldKind::Hinge) if joint => "general.scene.joint",
                    Some(HoldKind::Hinge) => "general.scene.hinge",
                    Some(HoldKind::BuiltIn) => "general.scene.built-in",
                    Some(HoldKind::Push(_)) => "general.scene.push",
                    Some(HoldKind::Line(_)) => "general.scene.line",
                    Some(HoldKind::Rough { .. }) => "general.scene.rough",
                    Some(HoldKind::Base { .. }) => "general.scene.base",
                    Some(HoldKind::Couple) | None => "general.scene.held",
                }
            }
        };
        self.words.say(key, &slots)
    }

    fn friction(&self, friction: &Friction) -> String {
        match friction {
            Friction::AsNeeded => self.words.word("general.scene.friction"),
            Friction::UpTo(most) => {
                let slots = [("most", Slot::Value(self.given(*most)))];
                self.say("general.scene.friction-up-to", &slots)
            }
            Friction::Limiting {
                coefficient,
                bearing,
            } => {
                let slots = [
                    ("most", Slot::Value(self.given(*coefficient))),
                    ("way", Slot::Word(self.way(bearing))),
                ];
                self.say("general.scene.friction-limiting", &slots)
            }
        }
    }

    fn line(&self, line: &Line) -> String {
        match line {
            Line::Known(bearing) => self.way(bearing),
            Line::Couple(Some(Turning::Clockwise)) => self.words.word("solve.clockwise"),
            Line::Couple(Some(Turning::Anticlockwise)) => self.words.word("solve.anticlockwise"),
            Line::Open | Line::Couple(None) => String::new(),
        }
    }

    /// Which way something points.
    fn way(&self, bearing: &Bearing) -> String {
        let side = |side: &Side| match side {
            Side::Left => self.words.word("solve.left"),
            Side::Right => self.words.word("solve.right"),
        };
        match bearing {
            Bearing::Up => self.words.word("general.scene.up"),
            Bearing::Down => self.words.word("general.scene.down"),
            Bearing::Level(to) => side(to),
            Bearing::Oblique {
                angle,
                from,
                upright,
                side: to,
            } => {
                let key = match (from, upright) {
                    (Reference::Horizontal, Upright::Up) => "general.scene.oblique-up",
                    (Reference::Horizontal, Upright::Down) => "general.scene.oblique-down",
                    (Reference::Vertical, Upright::Up) => "general.scene.steep-up",
                    (Reference::Vertical, Upright::Down) => "general.scene.steep-down",
                };
                let slots = [
                    ("angle", Slot::Value(self.given(*angle))),
                    ("side", Slot::Word(side(to))),
                ];
                self.say(key, &slots)
            }
            Bearing::FromAxis { angle } => self.say(
                "general.scene.from-axis",
                &[("angle", Slot::Value(self.given(*angle)))],
            ),
            Bearing::Towards(spot) => {
                let slots = [("place", Slot::Word(self.spot(spot, BodyId(usize::MAX))))];
                self.say("general.scene.towards", &slots)
            }
            Bearing::Along { body, onward, .. } => {
                let key = if *onward {
                    "general.scene.onward"
                } else {
                    "general.scene.backward"
                };
                self.say(key, &[("body", Slot::Word(self.body(*body)))])
            }
            Bearing::Across { body, left, .. } => {
                let key = if *left {
                    "general.scene.square-left"
                } else {
                    "general.scene.square-right"
                };
                self.say(key, &[("body", Slot::Word(self.body(*body)))])
            }
            Bearing::FromLeg {
                angle,
                body,
                left,
                onward,
                ..
            } => {
                let key = match (left, onward) {
                    (true, true) => "general.scene.leg-left",
                    (false, true) => "general.scene.leg-right",
                    (true, false) => "general.scene.leg-back-left",
                    (false, false) => "general.scene.leg-back-right",
                };
                let slots = [
                    ("angle", Slot::Value(self.given(*angle))),
                    ("body", Slot::Word(self.body(*body))),
                ];
                self.say(key, &slots)
            }
        }
    }

    /// A length along an axis; the name of what is sought where it stands in it.
    /// The size of a coordinate as it is told, and its sign: 0 on the axis.
    fn coordinate(&self, length: &Coordinate) -> (String, f64) {
        let sought = self
            .system
            .parts()
            .sought
            .as_ref()
            .map(|sought| sought.given);
        match length.0.iter().find(|(_, given)| Some(*given) == sought) {
            Some((_, given)) => (self.given(*given), 1.0),
            None => {
                let value = length.value(&self.system.values());
                let size = value_text(value.abs(), Dimension::LENGTH, self.system.figures());
                let sign = if value == 0.0 { 0.0 } else { value.signum() };
                (size, sign)
            }
        }
    }

    /// A point by its coordinates: to which side of the origin, and above or below it.
    fn coordinates(&self, x: &Coordinate, y: &Coordinate) -> String {
        let ((x, right), (y, above)) = (self.coordinate(x), self.coordinate(y));
        let side = if right < 0.0 {
            "solve.left"
        } else {
            "solve.right"
        };
        let height = match above < 0.0 {
            true => "general.scene.below",
            false => "general.scene.above",
        };
        let slots = [
            ("x", Slot::Value(x)),
            ("y", Slot::Value(y)),
            ("side", Slot::Word(self.words.word(side))),
            ("height", Slot::Word(self.words.word(height))),
        ];
        let key = match (right == 0.0, above == 0.0) {
            (true, true) => "general.scene.origin",
            (false, true) => "general.scene.coordinates-level",
            (true, false) => "general.scene.coordinates-upright",
            (false, false) => "general.scene.coordinates",
        };
        self.say(key, &slots)
    }

    /// Where something is, told from the body that it acts on.
    fn spot(&self, spot: &Spot, on: BodyId) -> String {
        match spot {
            Spot::Origin => self.words.word("general.scene.origin"),
            Spot::On { body, leg, place } => {
                let count = self.legs(*body);
                let key = match place {
                    Place::Foot if *leg == 0 => "general.scene.foot",
                    Place::Tip if leg + 1 == count => "general.scene.tip",
                    Place::Middle if count == 1 => "general.scene.middle",
                    Place::Foot => "general.scene.part-foot",
                    Place::Tip => "general.scene.part-tip",
                    Place::Middle => "general.scene.middle-of-leg",
                    Place::Fraction { .. } => "general.scene.fraction",
                    Place::At(_) if count == 1 => "general.scene.at",
                    Place::At(_) => "general.scene.at-leg",
                };
                let distance = match place {
                    Place::At(given) => self.given(*given),
                    Place::Fraction { over, under } => format!("{over}/{under}"),
                    _ => String::new(),
                };
                let slots = [
                    ("body", Slot::Word(self.body(*body))),
                    ("distance", Slot::Value(distance)),
                    ("leg", Slot::Word((leg + 1).to_string())),
                ];
                self.say(key, &slots)
            }
            Spot::At { x, y } => self.coordinates(x, y),
            Spot::Resultant(_) => String::new(),
            Spot::Centroid(_) => self.say(
                "general.scene.centroid",
                &[("body", Slot::Word(self.body(on)))],
            ),
        }
    }
}
