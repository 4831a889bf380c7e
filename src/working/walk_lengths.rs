//! Lengths of the drawing that a working by another pivot or method needs: how far points lie apart,
//! across and up, and how far lines of forces pass from them.

use crate::key::{CHOICES, Samples, Sampling};
use crate::plane::{Vector, moment};
use crate::problem::Place;
use crate::system::{Bearing, BodyId, Line, Spot, System};

/// A length below this is none, in metres.
const NONE: f64 = 1e-9;

/// Every such length, at every choice of numbers.
pub(super) fn lengths(system: &System, sampling: &Sampling) -> Vec<Samples> {
    let mut spots: Vec<Spot> = Vec::new();
    let mut lines: Vec<(Spot, Bearing)> = Vec::new();
    for (body, found) in system.parts().bodies.iter().enumerate() {
        for leg in 0..found.legs.len() {
            for place in [Place::Foot, Place::Middle, Place::Tip] {
                let body = BodyId(body);
                spots.push(Spot::On { body, leg, place });
            }
        }
    }
    for act in system.acts() {
        for effect in &act.on {
            match &effect.line {
                Line::Couple(_) => continue,
                Line::Known(bearing) => lines.push((effect.at.clone(), bearing.clone())),
                Line::Open => {}
            }
            spots.push(effect.at.clone());
        }
    }
    let mut found: Vec<Samples> = Vec::new();
    let mut keep = |of: &dyn Fn(&[f64]) -> f64| {
        let function: Samples = std::array::from_fn(|choice: usize| {
            let values: &[f64] = &sampling.samples[choice % CHOICES].values;
            of(values)
        });
        let function = match function[0] < 0.0 {
            true => function.map(|value| -value),
            false => function,
        };
        let counts = function[0] > NONE && function.iter().all(|value| value.is_finite());
        if counts && !found.contains(&function) {
            found.push(function);
        }
    };
    for (index, one) in spots.iter().enumerate() {
        for other in &spots[..index] {
            let way = |values: &[f64]| -> Vector {
                system.point(one, values) - system.point(other, values)
            };
            keep(&|values| way(values).x);
            keep(&|values| way(values).y);
            keep(&|values| way(values).size());
        }
        for (at, bearing) in &lines {
            keep(&|values| {
                let unit = system.unit(bearing, at, values);
                moment(system.point(one, values), system.point(at, values), unit)
            });
        }
    }
    found
}
