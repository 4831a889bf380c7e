//! Lines that the printed numbers make level, upright or straight stay so when the numbers move.
//!
//! A rope between two points of equal height is level to everybody who draws it, though only the
//! numbers say so: 0.5 m from the foot of one leg, 1.5 m from the top of the other. Moved numbers
//! that tilted it would ask for an angle of 0° that nobody needs.

use crate::plane::Vector;
use crate::problem::{GivenId, Place};
use crate::system::{Bearing, Coordinate, Line, Spot, System};
use crate::units::Dimension;

/// What vanishes: a part of a unit vector, or the sine of an angle.
const NONE: f64 = 1e-9;

/// So many steps find a number to all its figures, if they find it at all.
const STEPS: usize = 12;

/// These numbers, with a length changed for each line that is level or upright at the printed
/// numbers only, and a length and an angle for each rope that is straight from end to end there
/// only: it is so at these too. A line for which no number does it stays as it is.
pub(super) fn kept_level(system: &System, printed: &[f64], moved: Vec<f64>) -> Vec<f64> {
    let mut kept = Kept {
        system,
        printed,
        values: moved,
    };
    for act in system.acts() {
        for effect in &act.on {
            if let Line::Known(Bearing::Towards(end)) = &effect.line {
                let way = |values: &[f64]| between(system, &effect.at, end, values);
                let lengths = lengths(system, [end, &effect.at]);
                kept.keep(&lengths, &|values| way(values).x);
                kept.keep(&lengths, &|values| way(values).y);
            }
        }
    }
    for cord in &system.parts().cords {
        if let [one, other] = cord.ends.as_slice()
            && one.body != other.body
        {
            let pull = |values: &[f64]| system.unit(&one.bearing, &one.at, values);
            let back = |values: &[f64]| system.unit(&other.bearing, &other.at, values);
            let mut told = lengths(system, [&other.at, &one.at]);
            told.extend(angle_of(&one.bearing));
            kept.keep(&told, &|values| {
                pull(values).cross(between(system, &one.at, &other.at, values))
            });
            let angles = [&other.bearing, &one.bearing]
                .into_iter()
                .filter_map(angle_of);
            let angles: Vec<GivenId> = angles.collect();
            kept.keep(&angles, &|values| pull(values).cross(back(values)));
        }
    }
    kept.values
}

/// From one spot to another, as a unit vector.
fn between(system: &System, one: &Spot, other: &Spot, values: &[f64]) -> Vector {
    let way = system.point(other, values) - system.point(one, values);
    way * (1.0 / way.size())
}

struct Kept<'a> {
    system: &'a System,
    printed: &'a [f64],
    values: Vec<f64>,
}

impl Kept<'_> {
    /// Keeps at nothing what is so at the printed numbers, by one of these.
    fn keep(&mut self, told: &[GivenId], off: &dyn Fn(&[f64]) -> f64) {
        let vanishes = |values: &[f64]| off(values).abs() <= NONE;
        if !vanishes(self.printed) || vanishes(&self.values) {
            return;
        }
        let sought = self.system.parts().sought.as_ref().map(|one| one.given);
        let told = told.iter().filter(|given| Some(**given) != sought);
        let turned = told
            .filter_map(|given| straightened(*given, &self.values, off))
            .find(|values| vanishes(values));
        if let Some(turned) = turned {
            self.values = turned;
        }
    }
}

/// The lengths that say where two spots are, in their order.
fn lengths(system: &System, spots: [&Spot; 2]) -> Vec<GivenId> {
    let mut found = Vec::new();
    for spot in spots {
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
    found.retain(|given| system.given(*given).dimension == Dimension::LENGTH);
    found
}

/// The given angle of a direction.
fn angle_of(bearing: &Bearing) -> Option<GivenId> {
    match bearing {
        Bearing::Oblique { angle, .. }
        | Bearing::FromAxis { angle }
        | Bearing::FromLeg { angle, .. } => Some(*angle),
        _ => None,
    }
}

fn told_by(coordinate: &Coordinate) -> Vec<GivenId> {
    coordinate.0.iter().map(|(_, given)| *given).collect()
}

/// The values with this length or angle such that the line is straight, where it can be.
fn straightened(given: GivenId, values: &[f64], off: &dyn Fn(&[f64]) -> f64) -> Option<Vec<f64>> {
    let mut values = values.to_vec();
    let before = *values.get(given.0)?;
    for _ in 0..STEPS {
        let here = off(&values);
        if here.abs() < 1e-3 * NONE {
            break;
        }
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
