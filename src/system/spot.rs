//! Where something is.

use super::{BodyId, LoadKind, System};
use crate::plane::Vector;
use crate::problem::{GivenId, Place};

/// Bodies start at spots of others, which start at spots of others; deeper than this is a ring.
const DEEPEST: usize = 16;

/// A length along an axis: a sum of multiples of given lengths, in the order of writing.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Coordinate(pub Vec<(f64, GivenId)>);

impl Coordinate {
    /// Its value in metres.
    pub fn value(&self, values: &[f64]) -> f64 {
        self.0
            .iter()
            .map(|(factor, given)| factor * values[given.0])
            .sum()
    }
}

/// A point of the plane, told by a relation.
#[derive(Clone, Debug, Default, PartialEq)]
pub enum Spot {
    /// Where coordinates are measured from.
    #[default]
    Origin,
    /// On a leg of a body; the foot of a leg is where it begins.
    On {
        /// The body.
        body: BodyId,
        /// Which of its legs.
        leg: usize,
        /// Where along it.
        place: Place,
    },
    /// By coordinates from the origin.
    At {
        /// To the right.
        x: Coordinate,
        /// Upwards.
        y: Coordinate,
    },
    /// Where the resultant of a spread load acts: the load at this place in
    /// [`super::Parts::loads`].
    Resultant(usize),
    /// The centre of mass of a lamina: the weight at this place in [`super::Parts::weights`].
    Centroid(usize),
}

impl System {
    /// A spot in the plane, in metres. Not finite where bodies start at each other in a ring,
    /// which a checked system does not.
    pub fn point(&self, spot: &Spot, values: &[f64]) -> Vector {
        self.point_within(spot, values, 0)
    }

    pub(super) fn point_within(&self, spot: &Spot, values: &[f64], depth: usize) -> Vector {
        match spot {
            Spot::Origin => Vector::default(),
            Spot::At { x, y } => Vector::new(x.value(values), y.value(values)),
            Spot::Resultant(load) => self.resultant_point(*load, values, depth),
            Spot::Centroid(weight) => self.lamina_centre(*weight, values, depth),
            Spot::On { body, leg, place } => {
                let start = self.leg_start(*body, *leg, values, depth);
                let Some(found) = self.leg(*body, *leg).filter(|_| depth < DEEPEST) else {
                    return Vector::new(f64::NAN, f64::NAN);
                };
                let along = self.leg_unit(*body, *leg, values, depth);
                start + along * place.distance(found.length, values)
            }
        }
    }

    /// Where the resultant of a spread load acts: the centroid of the trapezium of its values.
    /// Meriam and Kraige, Engineering Mechanics: Statics, chapter 5 (from memory).
    fn resultant_point(&self, load: usize, values: &[f64], depth: usize) -> Vector {
        let nowhere = Vector::new(f64::NAN, f64::NAN);
        let Some(load) = self.parts().loads.get(load) else {
            return nowhere;
        };
        let LoadKind::Spread {
            leg,
            from,
            to,
            first,
            last,
            ..
        } = &load.kind
        else {
            return nowhere;
        };
        let Some(found) = self.leg(load.body, *leg) else {
            return nowhere;
        };
        let start = self.leg_start(load.body, *leg, values, depth);
        let along = self.leg_unit(load.body, *leg, values, depth);
        let (begins, ends) = (
            from.distance(found.length, values),
            to.distance(found.length, values),
        );
        let value = |given: &Option<GivenId>| given.map_or(0.0, |given| values[given.0]);
        let (first, last) = (value(first), value(last));
        let share = (first + 2.0 * last) / (3.0 * (first + last));
        start + along * (begins + (ends - begins) * share)
    }

    /// Where a body begins.
    pub(super) fn body_start(&self, body: BodyId, values: &[f64], depth: usize) -> Vector {
        match self.parts().bodies.get(body.0).filter(|_| depth < DEEPEST) {
            Some(found) => self.point_within(&found.start, values, depth + 1),
            None => Vector::new(f64::NAN, f64::NAN),
        }
    }

    /// Where a leg begins.
    fn leg_start(&self, body: BodyId, leg: usize, values: &[f64], depth: usize) -> Vector {
        let Some(found) = self.parts().bodies.get(body.0).filter(|_| depth < DEEPEST) else {
            return Vector::new(f64::NAN, f64::NAN);
        };
        let first = self.body_start(body, values, depth);
        found
            .legs
            .iter()
            .take(leg)
            .enumerate()
            .fold(first, |at, (index, before)| {
                at + self.leg_unit(body, index, values, depth) * values[before.length.0]
            })
    }
}
