//! Lines that the printed numbers make level, upright or straight stay so when the numbers move.
//!
//! A rope between two points of equal height is level to everybody who draws it, though only the
//! numbers say so: 0.5 m from the foot of one leg, 1.5 m from the top of the other. Moved numbers
//! that tilted it would ask for an angle of 0° that nobody needs.

use crate::plane::Vector;
use crate::problem::{GivenId, Place};
use crate::system::{Bearing, Coordinate, Line, Spot, System};
use crate::units::Dimension;

/// What vanishes, as a share of the line's length.
const NONE: f64 = 1e-9;

/// These numbers, with a length changed for each line that is level or upright, and each rope that
/// leads straight to its other end, at the printed numbers only: it is so at these too. A line for
/// which no length does it stays as it is.
pub(super) fn kept_level(system: &System, printed: &[f64], moved: Vec<f64>) -> Vec<f64> {
    let mut values = moved;
    for act in system.acts() {
        for effect in &act.on {
            if let Line::Known(Bearing::Towards(end)) = &effect.line {
                let ends = Ends {
                    system,
                    one: &effect.at,
                    other: end,
                };
                ends.keep(printed, &mut values, &|way, _| way.x);
                ends.keep(printed, &mut values, &|way, _| way.y);
            }
        }
    }
    for cord in &system.parts().cords {
        if let [one, other] = cord.ends.as_slice()
            && one.body != other.body
        {
            let ends = Ends {
                system,
                one: &one.at,
                other: &other.at,
            };
            ends.keep(printed, &mut values, &|way, values| {
                system.unit(&one.bearing, &one.at, values).cross(way)
            });
        }
    }
    values
}

struct Ends<'a> {
    system: &'a System,
    one: &'a Spot,
    other: &'a Spot,
}

impl Ends<'_> {
    fn between(&self, values: &[f64]) -> Vector {
        self.system.point(self.other, values) - self.system.point(self.one, values)
    }

    /// Keeps what vanishes of the way from end to end at the printed numbers.
    fn keep(&self, printed: &[f64], values: &mut Vec<f64>, part: &dyn Fn(Vector, &[f64]) -> f64) {
        let off = |values: &[f64]| part(self.between(values), values);
        let vanishes = |values: &[f64]| off(values).abs() <= NONE * self.between(values).size();
        if !vanishes(printed) || vanishes(values) {
            return;
        }
        let turned = self
            .lengths()
            .into_iter()
            .find_map(|given| straightened(given, values, &off));
        if let Some(turned) = turned {
            *values = turned;
        }
    }

    /// The lengths that say where its ends are; first those that say where the other end is.
    fn lengths(&self) -> Vec<GivenId> {
        let mut found = Vec::new();
        for spot in [self.other, self.one] {
            match spot {
                Spot::On { place, .. } => {
                    if let Place::At(given) = place {
                        found.push(*given);
                    }
                }
                Spot::At { x, y } => found.extend([x, y].into_iter().flat_map(told_by)),
                Spot::Origin | Spot::Resultant(_) | Spot::Centroid(_) => {}
            }
        }
        let sought = self.system.parts().sought.as_ref().map(|one| one.given);
        found.retain(|given| {
            Some(*given) != sought && self.system.given(*given).dimension == Dimension::LENGTH
        });
        found
    }
}

fn told_by(coordinate: &Coordinate) -> Vec<GivenId> {
    coordinate.0.iter().map(|(_, given)| *given).collect()
}

/// The values with this length such that the line is straight, where it can be: what it lacks is
/// linear in a distance along a straight leg.
fn straightened(given: GivenId, values: &[f64], off: &dyn Fn(&[f64]) -> f64) -> Option<Vec<f64>> {
    let mut values = values.to_vec();
    let before = *values.get(given.0)?;
    for _ in 0..3 {
        let here = off(&values);
        let length = *values.get(given.0)?;
        let mut other = values.clone();
        *other.get_mut(given.0)? = 1.01 * length;
        let slope = (off(&other) - here) / (0.01 * length);
        let step = here / slope;
        if !step.is_finite() {
            return None;
        }
        *values.get_mut(given.0)? = length - step;
    }
    let share = *values.get(given.0)? / before;
    (0.8..1.25).contains(&share).then_some(values)
}
