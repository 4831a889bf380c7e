//! How many figures a working shows, so that who reckons with what is shown comes to the result.

use super::{Quantity, Rule, Working};
use crate::key::Atom;
use crate::units::{Dimension, to_figures};

/// How far the result of a line may lie from what its shown numbers give, as a part of it.
const FAR: f64 = 5e-3;
/// A result below this part of what it is made of is nothing.
const DUST: f64 = 1e-6;
/// The most figures shown.
const MOST: u8 = 8;

/// True if a quantity is shown to more figures than asked.
pub fn shows_more(working: &Working, values: &[f64], gravity: f64, asked: u8) -> bool {
    let figures = shown_figures(working, values, gravity, asked);
    figures.iter().any(|shown| *shown > asked)
}

/// The figures of every quantity: those asked, or more where a line that uses it would come out
/// too far from its result.
pub(super) fn shown_figures(working: &Working, values: &[f64], gravity: f64, asked: u8) -> Vec<u8> {
    let mut figures = vec![asked; working.quantities.len()];
    for (index, named) in working.quantities.iter().enumerate() {
        let (Rule::Formula(formula), Some(value)) =
            (&named.rule, working.value(Quantity(index), values, gravity))
        else {
            continue;
        };
        let inputs = formula.inputs();
        // What comes out where these inputs are taken as they are shown.
        let given_back = |shown_ones: &[Quantity], figures: &[u8]| {
            formula.value(&|atom| match atom {
                Atom::Given(given) => values.get(given.0).copied(),
                Atom::Gravity => Some(gravity),
                Atom::Step(id) => {
                    let dimension = working.named(*id)?.dimension;
                    let value = working.value(*id, values, gravity)?;
                    let is_shown = shown_ones.contains(id);
                    Some(match is_shown {
                        true => shown(value, dimension, *figures.get(id.0)?),
                        false => value,
                    })
                }
            })
        };
        // Of what is nothing but the dust of rounding no figure is right.
        let largest = inputs
            .iter()
            .filter_map(|id| working.value(*id, values, gravity))
            .fold(0.0_f64, |most, one| most.max(one.abs()));
        if value.abs() <= DUST * largest {
            continue;
        }
        let off = |shown_ones: &[Quantity], figures: &[u8]| {
            let back = given_back(shown_ones, figures).unwrap_or(value);
            (back - value).abs() / value.abs()
        };
        while off(&inputs, &figures) > FAR {
            let open = inputs.iter().filter(|id| figures[id.0] < MOST);
            let worst = open
                .max_by(|one, other| off(&[**one], &figures).total_cmp(&off(&[**other], &figures)));
            let Some(worst) = worst else { break };
            figures[worst.0] += 1;
        }
    }
    figures
}

/// A value as it is shown.
fn shown(value: f64, dimension: Dimension, figures: u8) -> f64 {
    if dimension == Dimension::ANGLE {
        to_figures(value.to_degrees(), figures).to_radians()
    } else {
        to_figures(value, figures)
    }
}
