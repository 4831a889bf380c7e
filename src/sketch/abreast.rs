//! Arrows that would lie on each other stand side by side, each joined to its own point.

use crate::plane::Vector;

/// Lines of action nearer than so many rows share a place on the grid.
const NEAR: f64 = 1.1;
/// Rows between the lines of two arrows that stand side by side, beyond what is between their
/// points.
const APART: f64 = 1.5;
/// The same where one makes way for another on the one side that the body leaves free.
const ON: f64 = 1.3;
/// Rows from a point to the tail of an arrow that stands aside of it.
pub(super) const LEAD: f64 = 1.0;
/// The cosine from which on an arrow keeps to the body, so that one side of it is not free.
const LEANS: f64 = 0.25;

/// An arrow that runs out from its point.
#[derive(Clone, Copy, Debug)]
pub(super) struct Out<K> {
    /// What it is known by.
    pub(super) key: K,
    /// Its point, in metres.
    pub(super) at: Vector,
    /// Its direction, a unit vector.
    pub(super) runs: Vector,
    /// True if it stands at its point and others make way.
    pub(super) stays: bool,
    /// The direction of the body beside it, away from its point, where it leans to it.
    pub(super) body: Vector,
}

impl<K: Copy> Out<K> {
    /// Its tail so many rows to the left of its direction.
    fn tail(&self, aside: f64) -> (K, Vector) {
        let shift = if aside == 0.0 {
            Vector::default()
        } else {
            self.runs.quarter_turn() * aside + self.runs * LEAD
        };
        (self.key, shift)
    }

    /// +1 or −1 for the one side, left or right of its direction, on which the body leaves room.
    fn free_side(&self) -> Option<f64> {
        let leans = self.runs.dot(self.body);
        let leg = self.body * leans.signum();
        (leans.abs() > LEANS).then(|| -self.runs.cross(leg).signum())
    }
}

/// From the point of each arrow to its tail, in rows of text; nothing for one that stands at its
/// point. `scale` is about how many rows a metre takes.
pub(super) fn tails<K: Copy + PartialEq>(arrows: &[Out<K>], scale: f64) -> Vec<(K, Vector)> {
    let is_sound = |arrow: &&Out<K>| (arrow.at.size() * scale + arrow.runs.size()).is_finite();
    let mut left: Vec<Out<K>> = arrows.iter().filter(is_sound).copied().collect();
    let mut tails = Vec::new();
    while let Some(first) = left.first().copied() {
        let across = first.runs.quarter_turn();
        let mut alike = vec![first];
        let rest = left.split_off(1);
        let (same, other): (Vec<Out<K>>, Vec<Out<K>>) =
            (rest.into_iter()).partition(|arrow| arrow.runs.dot(first.runs) > 0.98);
        alike.extend(same);
        left = other;
        let off = |arrow: &Out<K>| arrow.at.dot(across) * scale;
        alike.sort_by(|one, other| off(one).total_cmp(&off(other)));
        if let Some(side) = first.free_side() {
            if side < 0.0 {
                alike.reverse();
            }
            let places: Vec<f64> = alike.iter().map(|arrow| off(arrow) * side).collect();
            let shifts = onward(&places).into_iter().map(|shift| shift * side);
            tails.extend(
                alike
                    .iter()
                    .zip(shifts)
                    .map(|(arrow, shift)| arrow.tail(shift)),
            );
        } else {
            tails.extend(side_by_side(&alike, &off));
        }
    }
    tails
}

/// By how much each of ascending places moves on so that it is clear of the one before.
fn onward(places: &[f64]) -> Vec<f64> {
    let mut last = f64::NEG_INFINITY;
    let moved = |place: &f64| {
        let to = if *place < last + NEAR {
            last + ON
        } else {
            *place
        };
        last = to;
        to - place
    };
    places.iter().map(moved).collect()
}

/// The tails of arrows with room on both sides, told from right to left of their direction.
fn side_by_side<K: Copy>(alike: &[Out<K>], off: &impl Fn(&Out<K>) -> f64) -> Vec<(K, Vector)> {
    let mut groups: Vec<Vec<Out<K>>> = alike.iter().map(|arrow| vec![*arrow]).collect();
    // A group that spreads may come to stand on the next, and then both are one.
    let meet = |one: &[Out<K>], next: &[Out<K>]| {
        let ends = (
            one.last().zip(spread(one).last().copied()),
            next.first().zip(spread(next).first().copied()),
        );
        matches!(ends, (Some((last, right)), Some((first, left)))
            if off(first) + left - off(last) - right < NEAR)
    };
    while let Some(index) = groups.windows(2).position(|pair| meet(&pair[0], &pair[1])) {
        let next = groups.remove(index + 1);
        groups[index].extend(next);
    }
    let tails = |group: &Vec<Out<K>>| {
        let shifts = spread(group);
        group
            .iter()
            .zip(shifts)
            .map(|(arrow, shift)| arrow.tail(shift))
            .collect::<Vec<_>>()
    };
    groups.iter().flat_map(tails).collect()
}

/// By how much each of a group moves aside.
fn spread<K>(group: &[Out<K>]) -> Vec<f64> {
    let middle = group.len().saturating_sub(1) as f64 / 2.0;
    let stays = group.iter().position(|arrow| arrow.stays);
    let straight = stays.map_or(middle, |index| index as f64);
    (0..group.len())
        .map(|rank| (rank as f64 - straight) * APART)
        .collect()
}

/// Where the arrow known by a key stands.
pub(super) fn tail_of<K: PartialEq>(tails: &[(K, Vector)], key: &K) -> Vector {
    let found = tails.iter().find(|(known, _)| known == key);
    found.map_or(Vector::default(), |(_, shift)| *shift)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn down(key: usize, x: f64, body: Vector) -> Out<usize> {
        Out {
            key,
            at: Vector::new(x, 0.0),
            runs: Vector::new(0.0, -1.0),
            stays: false,
            body,
        }
    }

    /// Where each arrow's line stands, in rows from the left, by key.
    fn lines(arrows: &[Out<usize>]) -> Vec<f64> {
        let tails = tails(arrows, 4.0);
        let line = |arrow: &Out<usize>| arrow.at.x * 4.0 + tail_of(&tails, &arrow.key).x;
        arrows.iter().map(line).collect()
    }

    #[test]
    fn near_arrows_stand_side_by_side_in_the_order_of_their_points() {
        let level = Vector::new(1.0, 0.0);
        let placed = lines(&[
            down(0, 2.1, level),
            down(1, 2.0, level),
            down(2, 3.0, level),
        ]);
        assert!(placed[0] - placed[1] >= APART, "{placed:?}");
        assert!(placed[2] - placed[0] >= NEAR, "{placed:?}");
        let far = lines(&[down(0, 2.0, level), down(1, 3.0, level)]);
        assert_eq!(far, [8.0, 12.0]);
    }

    #[test]
    fn beside_a_tilted_body_arrows_make_way_on_its_free_side_alone() {
        let rising = Vector::at_angle(1.0);
        let placed = lines(&[
            down(0, 2.0, rising),
            down(1, 2.1, rising),
            down(2, 2.5, rising),
        ]);
        assert_eq!(placed[0], 8.0);
        assert!(
            placed[1] >= placed[0] + ON && placed[2] >= placed[1] + NEAR,
            "{placed:?}"
        );
        let falling = Vector::at_angle(-1.0);
        let placed = lines(&[down(0, 2.0, falling), down(1, 2.1, falling)]);
        assert!(
            placed[0] <= placed[1] - ON && placed[1] == 2.1 * 4.0,
            "{placed:?}"
        );
    }
}
