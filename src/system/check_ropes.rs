//! Whether the ends of a straight rope lie on the line along which they pull.

use super::check_reach::choices;
use super::{ActId, Cord, CordEnd, Fault, Spot, System};

/// Lines nearer to each other than this, in metres, were meant as one.
const APART_M: f64 = 1e-2;

/// A line that leads past the other end by less than this angle, in radians, is one whose direction
/// was rounded.
const ROUNDED: f64 = 0.02;

impl System {
    /// The ropes of two ends that pull exactly against each other along lines apart. A rope over
    /// pulleys goes on in another direction, and where a knot lies is not told.
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
            let distance_m = offs.fold(f64::INFINITY, f64::min);
            let fault = Fault::OffItsLine {
                what: cord.noun.clone(),
                distance_m,
            };
            (distance_m.is_finite() && distance_m > 0.0).then_some((ActId::Cord(index), fault))
        };
        self.parts()
            .cords
            .iter()
            .enumerate()
            .filter_map(off)
            .collect()
    }

    /// True of an end on a leg, or at coordinates, of what is no knot.
    fn is_fixed(&self, end: &CordEnd) -> bool {
        let body = self.parts().bodies.get(end.body.0);
        let is_told = matches!(end.at, Spot::On { .. } | Spot::At { .. });
        body.is_some_and(|body| !body.knot) && is_told
    }

    /// How far apart the lines lie along which both ends pull, at these numbers; 0 where the rope
    /// is not told as straight.
    fn off(&self, one: &CordEnd, other: &CordEnd, values: &[f64]) -> f64 {
        let pull = self.unit(&one.bearing, &one.at, values);
        let back = self.unit(&other.bearing, &other.at, values);
        let way = self.point(&other.at, values) - self.point(&one.at, values);
        let aside = pull.cross(way).abs();
        let is_straight = (pull + back).size() < 1e-9;
        let is_apart = aside > APART_M && aside > ROUNDED * way.size();
        match is_straight && is_apart {
            true => aside,
            false => 0.0,
        }
    }
}
