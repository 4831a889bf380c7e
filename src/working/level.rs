//! Lines that the printed numbers make level or upright stay so when the numbers move.
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

/// These numbers, with a length changed for each line that is level or upright at the printed
/// numbers only: it is so at these too. A line for which no length does it stays tilted.
pub(super) fn kept_level(system: &System, printed: &[f64], moved: Vec<f64>) -> Vec<f64> {
    let mut values = moved;
    for act in system.acts() {
        for effect in &act.on {
            if let Line::Known(Bearing::Towards(end)) = &effect.line {
                let line = Ends {
                    system,
                    one: &effect.at,
                    other: end,
                };
                line.keep(printed, &mut values);
            }
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

    fn keep(&self, printed: &[f64], values: &mut Vec<f64>) {
        let here = self.between(printed);
        let vanishes = |part: f64, whole: Vector| part.abs() <= NONE * whole.size();
        for part in [|way: Vector| way.x, |way: Vector| way.y] {
            let off = |values: &[f64]| part(self.between(values));
            if !vanishes(part(here), here) || vanishes(off(values), self.between(values)) {
                continue;
            }
            let turned = self
                .lengths()
                .into_iter()
                .find_map(|given| straightened(given, values, &off));
            if let Some(turned) = turned {
                *values = turned;
            }
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
