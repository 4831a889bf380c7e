//! Whether the ends of a straight rope lie on the line along which they pull.

use super::check_reach::choices;
use super::{ActId, Cord, CordEnd, Fault, Spot, System};

/// Lines nearer to each other than this, in metres, or apart by a smaller angle from end to end, in
/// radians, are one: a rope off its line turns the whole that it holds together.
const ONE_LINE: f64 = 1e-6;

/// The same where what is sought moves an end, and the line is looked at beside its value.
const NEAR_M: f64 = 1e-2;
const NEAR: f64 = 0.02;

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
            let offs: Option<Vec<(f64, f64)>> = offs.collect();
            let offs = offs?;
            let least = offs
                .iter()
                .copied()
                .reduce(|one, other| if other.0 < one.0 { other } else { one })?;
            let stays = offs.iter().all(|off| (off.0 - least.0).abs() <= ONE_LINE);
            let (apart, angle) = if stays {
                (ONE_LINE, ONE_LINE)
            } else {
                (NEAR_M, NEAR)
            };
            let (distance_m, length) = least;
            let fault = Fault::OffItsLine {
                what: cord.noun.clone(),
                distance_m,
            };
            let is_off = distance_m > apart && distance_m > angle * length;
            is_off.then_some((ActId::Cord(index), fault))
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

    /// How far apart the lines lie along which both ends pull, at these numbers, and how far the
    /// ends; `None` where the rope is not told as straight.
    fn off(&self, one: &CordEnd, other: &CordEnd, values: &[f64]) -> Option<(f64, f64)> {
        let pull = self.unit(&one.bearing, &one.at, values);
        let back = self.unit(&other.bearing, &other.at, values);
        let way = self.point(&other.at, values) - self.point(&one.at, values);
        let is_straight = (pull + back).size() < 1e-9;
        is_straight.then(|| (pull.cross(way).abs(), way.size()))
    }
}
