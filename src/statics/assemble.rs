//! From a problem's parts to bare equilibrium.

use super::{Action, Equilibrium, Sense, UnknownColumn, Unsolvable};
use crate::plane::Vector;
use crate::problem::{Acting, Force, ForceId, Problem, Size, SupportKind};

/// The only body of a problem.
pub(super) const BODY: usize = 0;

/// A force of the problem and the unknowns it stands on.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Assembled {
    pub(super) id: ForceId,
    pub(super) at: Vector,
    pub(super) kind: Kind,
}

/// What is known of it beforehand.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Kind {
    /// All: a size along a unit vector.
    Known { size: f64, direction: Vector },
    /// Its line: the unknown at this place is its size along the unit vector.
    Line { unknown: usize, direction: Vector },
    /// Its point: two unknowns, right and up, and perhaps a couple.
    Point {
        right: usize,
        up: usize,
        couple: Option<usize>,
    },
}

/// The equilibrium of a problem at these values of its givens.
pub(super) fn assemble(
    problem: &Problem,
    values: &[f64],
    gravity: f64,
) -> Result<(Equilibrium, Vec<Assembled>), Unsolvable> {
    let expected = problem.givens().len();
    if values.len() != expected {
        return Err(Unsolvable::WrongValues {
            expected,
            found: values.len(),
        });
    }
    for (given, value) in problem.givens().iter().zip(values) {
        if !value.is_finite() {
            let what = given.symbol.to_string();
            return Err(Unsolvable::NotFinite { what });
        }
    }
    if !gravity.is_finite() {
        let what = "the acceleration of free fall".to_owned();
        return Err(Unsolvable::NotFinite { what });
    }
    let mut equilibrium = Equilibrium::new();
    let assembled = problem
        .forces()
        .iter()
        .map(|force| {
            let at = problem.point(force.at, values);
            let kind = add(&mut equilibrium, problem, force, at, values, gravity);
            let id = force.id;
            Assembled { id, at, kind }
        })
        .collect();
    Ok((equilibrium, assembled))
}

fn add(
    equilibrium: &mut Equilibrium,
    problem: &Problem,
    force: &Force<'_>,
    at: Vector,
    values: &[f64],
    gravity: f64,
) -> Kind {
    let size = match force.size {
        Size::Weight(mass) => Some(values[mass.0] * gravity),
        Size::Given(size) => Some(values[size.0]),
        Size::Unknown => None,
    };
    let name = force.symbol.to_string();
    let Acting::Along(direction) = force.acting else {
        return add_point(equilibrium, problem, force.id, &name, at);
    };
    let direction = direction.unit(problem.body(), values);
    if let Some(size) = size {
        equilibrium.load(Action::force(BODY, at, direction * size));
        return Kind::Known { size, direction };
    }
    let sense = match force.id {
        ForceId::Rope(_) => Sense::Pull,
        _ => Sense::Push,
    };
    let column = UnknownColumn::along(name, BODY, at, direction).with_sense(sense);
    let unknown = equilibrium.unknown(column);
    Kind::Line { unknown, direction }
}

fn add_point(
    equilibrium: &mut Equilibrium,
    problem: &Problem,
    id: ForceId,
    name: &str,
    at: Vector,
) -> Kind {
    let part = |suffix: &str, direction| {
        UnknownColumn::along(format!("{name}{suffix}"), BODY, at, direction)
    };
    let right = equilibrium.unknown(part("x", Vector::new(1.0, 0.0)));
    let up = equilibrium.unknown(part("y", Vector::new(0.0, 1.0)));
    let built_in = matches!(id, ForceId::Support(index)
        if problem.supports().get(index).is_some_and(|s| s.kind == SupportKind::BuiltIn));
    let couple =
        built_in.then(|| equilibrium.unknown(UnknownColumn::couple(format!("M{name}"), BODY)));
    Kind::Point { right, up, couple }
}
