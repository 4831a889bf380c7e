//! Whether the ends of a straight rope lie on the line along which they pull.

use super::check_reach::choices;
use super::{ActId, Cord, CordEnd, Fault, Spot, System};
use crate::plane::Vector;

/// Lines nearer to each other than this, in metres, or apart by a smaller angle from end to end, in
/// radians, are one: a rope off its line turns the whole that it holds together.
const ONE_LINE: f64 = 1e-6;

/// An end that points past the other by less than this, in radians, was meant for it.
const NEARLY: f64 = 0.1;

impl System {
    /// The ropes of two ends that pull against each other along lines that are not one. A rope over
    /// pulleys goes on in another direction.
    pub fn off_their_lines(&self) -> Vec<(ActId, Fault)> {
        let choices = choices(self);
        let off = |(index, cord): (usize, &Cord)| {
            let [one, other] = cord.ends.as_slice() else {
                return None;
            };
            if one.body == other.body || !self.is_fixed(one) || !self.is_fixed(other) {
                return None;
            }
            let offs = choices.iter().map(|values| self.off(one, other, values));
            let offs: Option<Vec<(f64, f64)>> = offs.collect();
            let offs = offs?;
            let least = offs.iter().map(|off| off.0).fold(f64::INFINITY, f64::min);
            // What is sought may move an end off a line that is told once for all.
            let most = offs
                .into_iter()
                .max_by(|one, other| one.0.total_cmp(&other.0));
            let (distance_m, length) = most?;
            let fault = Fault::OffItsLine {
                what: cord.noun.clone(),
                distance_m,
                varies: distance_m - least > ONE_LINE,
            };
            let is_off = distance_m > ONE_LINE && distance_m > ONE_LINE * length;
            is_off.then_some((ActId::Cord(index), fault))
        };
        self.parts()
            .cords
            .iter()
            .enumerate()
            .filter_map(off)
            .collect()
    }

    /// True of an end on a leg, or at coordinates; of a knot where its place is told.
    fn is_fixed(&self, end: &CordEnd) -> bool {
        let body = self.parts().bodies.get(end.body.0);
        let is_told = matches!(end.at, Spot::On { .. } | Spot::At { .. });
        body.is_some_and(|body| match body.knot {
            true => body.start != Spot::Origin,
            false => is_told,
        })
    }

    /// How far apart the lines lie along which both ends pull, at these numbers, and how far the
    /// ends; `None` where the rope is not told as straight.
    fn off(&self, one: &CordEnd, other: &CordEnd, values: &[f64]) -> Option<(f64, f64)> {
        let pull = self.unit(&one.bearing, &one.at, values);
        let back = self.unit(&other.bearing, &other.at, values);
        let way = self.point(&other.at, values) - self.point(&one.at, values);
        let aside = |pull: Vector, way: Vector| pull.cross(way).abs();
        let nearly = |pull: Vector, way: Vector| {
            pull.dot(way) > 0.0 && aside(pull, way) < NEARLY * way.size()
        };
        let meets = nearly(pull, way) && nearly(back, way * -1.0);
        let is_straight = (pull + back).size() < 1e-9 || meets;
        is_straight.then(|| (aside(pull, way).max(aside(back, way)), way.size()))
    }
}
