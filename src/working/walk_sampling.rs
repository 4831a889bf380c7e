//! Numbers at which the functions of a general problem are compared.
//!
//! Every given moves by itself, and what is sought moves with them. Where that would tear joined
//! bodies apart, or leave numbers at which the forces are not those of the working, all lengths
//! move together and the angles stay, or everything moves less.

use super::level::kept_level;
use super::{Meaning, Quantity, Rule, Underivable, Working};
use crate::key::{Axis, CHOICES, Key, Pins, Sample, Sampling, moved};
use crate::plane::Vector;
use crate::problem::Place;
use crate::statics::{SystemSolution, solve_system};
use crate::system::{BodyId, Spot, System, When};
use crate::units::Dimension;

/// How far two forces may lie apart that should be one, relative to the largest.
const SAME: f64 = 1e-8;
/// How near points must be that are one, in metres.
const TOUCHING: f64 = 1e-9;

/// How the givens move.
#[derive(Clone, Copy)]
struct Freedom {
    /// The share of the full movement.
    share: f64,
    /// True if all lengths move alike and no angle moves.
    rigid: bool,
}

/// The printed numbers and others.
///
/// # Errors
/// Where the working has no value for what is sought.
pub(super) fn sampling(
    system: &System,
    working: &Working,
    key: &Key,
    values: &[f64],
) -> Result<Sampling, Underivable> {
    let all = [
        (1.0, false),
        (0.4, false),
        (1.0, true),
        (0.3, true),
        (0.1, false),
        (0.05, true),
    ];
    let freedoms = all.map(|(share, rigid)| Freedom { share, rigid });
    let maker = Maker {
        system,
        working,
        key,
        values,
    };
    let sample = |choice: usize| {
        let moved = |freedom: &Freedom| maker.sample(choice, *freedom);
        let mut tried = freedoms.iter().filter_map(moved);
        let held = tried.find(|sample| choice == 0 || maker.holds(sample));
        // Forces that balance at the printed numbers only do so at no others.
        let any = || freedoms.iter().find_map(moved);
        held.or_else(any).ok_or_else(|| {
            let sought = system.parts().sought.as_ref();
            sought.map_or(Underivable::NoOrder, |sought| Underivable::OnlyHere {
                symbol: system.given(sought.given).symbol.shown(),
            })
        })
    };
    let mut samples = Vec::with_capacity(CHOICES);
    for choice in 0..CHOICES {
        samples.push(sample(choice)?);
    }
    let samples = samples.try_into().map_err(|_| Underivable::NoOrder)?;
    Ok(Sampling { samples })
}

struct Maker<'a> {
    system: &'a System,
    working: &'a Working,
    key: &'a Key,
    values: &'a [f64],
}

impl Maker<'_> {
    fn sample(&self, choice: usize, freedom: Freedom) -> Option<Sample> {
        let by = |index: usize| 1.0 + freedom.share * (moved(index, choice) - 1.0);
        let rigid = |dimension: Dimension, index: usize| match dimension {
            Dimension::LENGTH if freedom.rigid => by(1),
            Dimension::ANGLE if freedom.rigid => 1.0,
            // Numbers that are printed alike cannot be told apart where they are typed.
            _ => by(self.first_alike(index) + 1),
        };
        let givens = self.system.givens().iter().enumerate();
        let values =
            givens.map(|(index, given)| self.values[index] * rigid(given.dimension, index));
        let mut sample = Sample {
            values: kept_level(self.system, self.values, values.collect()),
            gravity: self.system.gravity() * by(0),
        };
        if let Some((given, step)) = self.key.general.as_ref().and_then(|one| one.sought) {
            if let Some(slot) = sample.values.get_mut(given.0) {
                *slot = self.values[given.0];
            }
            let found = self.key.value(step, &sample, &Pins::new())?;
            *sample.values.get_mut(given.0)? = found;
        }
        Some(sample)
    }

    /// The first given of the same value and kind.
    fn first_alike(&self, index: usize) -> usize {
        let givens = self.system.givens();
        let alike = |other: usize| {
            givens[other].dimension == givens[index].dimension
                && (self.values[other] - self.values[index]).abs()
                    <= 1e-9 * self.values[index].abs()
        };
        (0..index).find(|other| alike(*other)).unwrap_or(index)
    }

    /// True if the bodies still meet where they met, and the forces are those of the working.
    fn holds(&self, sample: &Sample) -> bool {
        let forces = || match solve_system(self.system, &sample.values, sample.gravity) {
            Ok(solution) => self.same_forces(&solution, sample),
            // A body at rest by the condition alone is held by nothing at numbers a little off.
            Err(_) => self.rests(),
        };
        self.still_meet(&sample.values) && (self.working.stages.is_empty() || forces())
    }

    fn rests(&self) -> bool {
        let sought = self.system.parts().sought.as_ref();
        sought.is_some_and(|sought| matches!(sought.when, When::Rests(_)))
    }

    fn same_forces(&self, solution: &SystemSolution, sample: &Sample) -> bool {
        same_forces(self.working, solution, sample)
    }

    /// True if every point that lies on a leg of a body it acts on at the printed numbers lies on
    /// it at these.
    fn still_meet(&self, values: &[f64]) -> bool {
        let acts = self.system.acts();
        acts.iter().all(|act| {
            act.on.iter().all(|effect| {
                let legs = self.system.parts().bodies.get(effect.body.0);
                let count = legs.map_or(0, |body| body.legs.len());
                (0..count).all(|leg| {
                    let here = |values: &[f64]| self.off_leg(effect.body, leg, &effect.at, values);
                    here(self.values).is_none_or(|place| {
                        // At its ends it stays at its ends.
                        here(values).is_some_and(|other| {
                            let at_end =
                                |place: f64| place.abs() < 1e-9 || (place - 1.0).abs() < 1e-9;
                            !at_end(place) || (place - other).abs() < 1e-9
                        })
                    })
                })
            })
        })
    }

    /// Where along a leg a point lies, as a share of its length; `None` off its line.
    fn off_leg(&self, body: BodyId, leg: usize, at: &Spot, values: &[f64]) -> Option<f64> {
        let end = |place| self.system.point(&Spot::On { body, leg, place }, values);
        let (foot, tip) = (end(Place::Foot), end(Place::Tip));
        let along: Vector = tip - foot;
        let way = self.system.point(at, values) - foot;
        let length = along.size();
        let off = (along.x * way.y - along.y * way.x) / length;
        (off.abs() < TOUCHING * length.max(1.0)).then(|| along.dot(way) / (length * length))
    }
}

/// True if a working that was found at other values holds at these.
pub(super) fn holds_at(system: &System, working: &Working, values: &[f64]) -> bool {
    let sample = Sample {
        values: values.to_vec(),
        gravity: system.gravity(),
    };
    let solution = solve_system(system, values, system.gravity());
    solution.is_ok_and(|solution| same_forces(working, &solution, &sample))
}

/// True if the unknowns of a working are those of the solver.
fn same_forces(working: &Working, solution: &SystemSolution, sample: &Sample) -> bool {
    let (force, length) = solution.scales();
    let quantities = working.quantities.iter().enumerate();
    let open = quantities.filter(|(_, named)| matches!(named.rule, Rule::Solved(_)));
    open.map(|(index, named)| (Quantity(index), named))
        .all(|(id, named)| {
            let found = |act| solution.reaction(act).unwrap_or_default();
            let (by_solver, scale) = match named.meaning {
                Meaning::Component(act, Axis::Horizontal) => (found(act).force.x, force),
                Meaning::Component(act, Axis::Vertical) => (found(act).force.y, force),
                Meaning::Couple(act) => (found(act).couple, force * length),
                Meaning::FrictionNeeded(act) => match found(act).contact {
                    Some((_, friction)) => (friction, force),
                    None => return true,
                },
                Meaning::Force(act) => {
                    let one = found(act);
                    (one.contact.map_or(one.size, |contact| contact.0), force)
                }
                _ => return true,
            };
            let value = working.value(id, &sample.values, sample.gravity);
            value.is_some_and(|value| (value - by_solver).abs() <= SAME * scale)
        })
}
