//! The numbers of a working as they are typed: each stands for one quantity only, and none hides
//! whether it was used.

use super::{Refusal, pairs};
use crate::key::{
    CHOICES, Formula, Key, Pins, Rule, Samples, Sampling, StepId, agree, difference, place_length,
};
use crate::problem::{GivenId, Place, Problem};
use crate::units::{Dimension, number_text};

/// A force one metre from an end of the body or from its middle, or a quarter of the body of one
/// metre: times or divided by one metre, or left out, the distance gives the same number.
pub(super) fn unit_distance(problem: &Problem) -> Option<Refusal> {
    let values = problem.values();
    let length = values[problem.body().length.0];
    problem.forces().iter().find_map(|force| {
        let at = problem.distance(force.at, &values);
        // Half of the half is what is halved twice.
        let halved = (force.at == Place::Middle).then_some(length / 4.0);
        let unit = [at, length - at, (length / 2.0 - at).abs()]
            .into_iter()
            .chain(halved)
            .any(|distance| (distance - 1.0).abs() < 1e-9);
        unit.then(|| Refusal::UnitDistance {
            symbol: force.symbol.to_string(),
        })
    })
}

/// Numbers of the working as typed, each once: givens as printed, the distances, also those from
/// the far end, the angles and their complements, the right angle, and g. What is the same quantity whatever the numbers counts once.
pub(super) fn same_literal(problem: &Problem, key: &Key, sampling: &Sampling) -> Option<Refusal> {
    let mut literals: Vec<Literal> = Vec::new();
    for (index, given) in problem.givens().iter().enumerate() {
        let printed = given.written.split([' ', '°']).next().unwrap_or_default();
        let id = GivenId(index);
        let samples = sampling
            .samples
            .each_ref()
            .map(|sample| sample.values[id.0]);
        let value = printed.parse().unwrap_or(told(samples[0], given.dimension));
        keep(
            &mut literals,
            Literal {
                samples,
                value,
                dimension: given.dimension,
            },
        );
    }
    let of = |formula: &Formula, dimension: Dimension| -> Option<Literal> {
        let mut samples: Samples = [0.0; CHOICES];
        for (sample, found) in sampling.samples.iter().zip(&mut samples) {
            *found = key.evaluate(formula, sample, &Pins::new())?;
        }
        let value = told(samples[0], dimension);
        Some(Literal {
            samples,
            value,
            dimension,
        })
    };
    let length = problem.body().length;
    for step in &key.steps {
        let (StepId::Distance(_) | StepId::Angle(_)) = step.id else {
            continue;
        };
        if let Rule::Formula(formula) = &step.rule {
            literals_of(&mut literals, of(formula, step.dimension));
            if step.dimension == Dimension::ANGLE {
                let other = difference(Formula::Degrees(90.0), formula.clone());
                literals_of(&mut literals, of(&other, step.dimension));
            }
        }
        if let StepId::Distance(force) = step.id
            && let Some(force) = problem.force(force)
        {
            let from_far_end = difference(Formula::given(length), place_length(force.at, length));
            literals_of(&mut literals, of(&from_far_end, Dimension::LENGTH));
        }
    }
    let gravity = sampling.samples.each_ref().map(|sample| sample.gravity);
    keep(
        &mut literals,
        Literal {
            samples: gravity,
            value: problem.gravity(),
            dimension: Dimension::NUMBER,
        },
    );
    // The right angle that a complement is taken from.
    let has_angle = literals
        .iter()
        .any(|literal| literal.dimension == Dimension::ANGLE);
    if has_angle {
        let samples = [90.0; CHOICES];
        literals.push(Literal {
            samples,
            value: 90.0,
            dimension: Dimension::NUMBER,
        });
    }
    pairs(&literals).find_map(|(first, second)| {
        let (first, second) = (first.value, second.value);
        ((first - second).abs() <= 1e-9 * first.abs()).then(|| Refusal::SameLiteral {
            number: number_text(first),
        })
    })
}

/// A number of the working, and what it stands for.
struct Literal {
    samples: Samples,
    /// As it is typed.
    value: f64,
    dimension: Dimension,
}

fn told(value: f64, dimension: Dimension) -> f64 {
    match dimension {
        Dimension::ANGLE => value.to_degrees(),
        _ => value,
    }
}

fn literals_of(literals: &mut Vec<Literal>, found: Option<Literal>) {
    // From the end where a force acts there is no distance.
    if let Some(found) = found.filter(|found| found.value.abs() > 1e-9) {
        keep(literals, found);
    }
}

fn keep(literals: &mut Vec<Literal>, literal: Literal) {
    let known = |other: &Literal| {
        other.dimension == literal.dimension && agree(&other.samples, &literal.samples)
    };
    if !literals.iter().any(known) {
        literals.push(literal);
    }
}
