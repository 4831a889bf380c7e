//! The hinge's force from the balances of forces.

use super::derive::{Builder, part_symbol, reaction};
use super::slope::elevation;
use super::step::{Axis, Balance, BalanceKind, Part, Rule, Step, StepId, Term};
use super::{Formula, Role};
use crate::problem::{Direction, Force, ForceId, Side};
use crate::text::Symbol;
use crate::units::Dimension;

/// Parts of oblique forces, the two force balances, and the hinge's parts, size and direction.
/// Where every other force is upright, the hinge's is too and has one part only.
pub(super) fn steps(builder: &Builder<'_>, hinge: ForceId) -> Vec<Step> {
    let Some(support) = builder.forces.iter().find(|force| force.id == hinge) else {
        return Vec::new();
    };
    let others: Vec<&Force<'_>> = builder
        .forces
        .iter()
        .filter(|force| force.id != hinge)
        .collect();
    let upright_only = others
        .iter()
        .all(|force| Builder::direction(force).is_some_and(Direction::is_upright));
    let axes: &[Axis] = if upright_only {
        &[Axis::Vertical]
    } else {
        &[Axis::Horizontal, Axis::Vertical]
    };
    let mut steps = Vec::new();
    for axis in axes {
        steps.extend(
            others
                .iter()
                .filter_map(|force| part_step(builder, force, *axis)),
        );
    }
    for axis in axes {
        let mut terms: Vec<Term> = others
            .iter()
            .filter_map(|force| part_term(builder, force, *axis))
            .collect();
        let unknown = reaction(hinge, Part::Along(*axis));
        terms.push(Term {
            force: hinge,
            sign: 1.0,
            amount: Formula::step(unknown),
        });
        let (letter, symbol) = match axis {
            Axis::Horizontal => ("ΣF_x", part_symbol(support.symbol, *axis)),
            Axis::Vertical if upright_only => ("ΣF_y", support.symbol.clone()),
            Axis::Vertical => ("ΣF_y", part_symbol(support.symbol, *axis)),
        };
        let balance = Balance {
            kind: BalanceKind::ForcesAlong(*axis),
            terms,
        };
        steps.push(step(
            StepId::ForceSum(*axis),
            Symbol::new(letter),
            Dimension::FORCE,
            Rule::Balance(balance),
            false,
        ));
        steps.push(step(
            unknown,
            symbol,
            Dimension::FORCE,
            Rule::Solve(StepId::ForceSum(*axis)),
            true,
        ));
    }
    if !upright_only {
        steps.extend(resultant(support, hinge));
    }
    steps
}

fn step(id: StepId, symbol: Symbol, dimension: Dimension, rule: Rule, asked: bool) -> Step {
    Step {
        id,
        symbol,
        dimension,
        rule,
        asked,
    }
}

/// Size and direction of the hinge's force from its parts.
fn resultant(support: &Force<'_>, hinge: ForceId) -> [Step; 2] {
    let part = |axis: Axis| Formula::step(reaction(hinge, Part::Along(axis)));
    let square = |formula: Formula| Formula::Square(Box::new(formula));
    let size = Formula::SquareRoot(Box::new(Formula::Sum(vec![
        square(part(Axis::Horizontal)),
        square(part(Axis::Vertical)),
    ])));
    let ratio = Formula::Absolute(Box::new(part(Axis::Vertical)))
        .over(Formula::Absolute(Box::new(part(Axis::Horizontal))));
    let direction = Formula::ArcTangent(Box::new(ratio));
    [
        step(
            reaction(hinge, Part::Size),
            support.symbol.clone(),
            Dimension::FORCE,
            Rule::Formula(size),
            true,
        ),
        step(
            reaction(hinge, Part::Direction),
            Symbol::new("ψ"),
            Dimension::ANGLE,
            Rule::Formula(direction),
            true,
        ),
    ]
}

/// The size of an oblique force's part along an axis; upright and level forces need none.
fn part_step(builder: &Builder<'_>, force: &Force<'_>, axis: Axis) -> Option<Step> {
    let direction = Builder::direction(force)?;
    let (Direction::Oblique { .. } | Direction::FromBody { .. }) = direction else {
        return None;
    };
    let (slope, _) = elevation(direction, builder.problem.body());
    let slope = slope.acute(&builder.values).formula();
    let ratio = match axis {
        Axis::Horizontal => Formula::Cosine(Box::new(slope)),
        Axis::Vertical => Formula::Sine(Box::new(slope)),
    };
    Some(step(
        StepId::PartOf(force.id, axis),
        part_symbol(force.symbol, axis),
        Dimension::FORCE,
        Rule::Formula(
            builder
                .size(force)
                .times(ratio.tagged(Role::PartRatio(force.id))),
        ),
        false,
    ))
}

/// A force's term in the balance along an axis: right and up positive.
fn part_term(builder: &Builder<'_>, force: &Force<'_>, axis: Axis) -> Option<Term> {
    let direction = Builder::direction(force)?;
    let unit = direction.unit(builder.problem.body(), &builder.values);
    let along = if axis == Axis::Horizontal {
        unit.x
    } else {
        unit.y
    };
    let amount = match (direction, axis) {
        (Direction::Up | Direction::Down, Axis::Horizontal)
        | (Direction::Level(_), Axis::Vertical) => return None,
        (Direction::Up | Direction::Down, Axis::Vertical)
        | (Direction::Level(Side::Left | Side::Right), Axis::Horizontal) => builder.size(force),
        (Direction::Oblique { .. } | Direction::FromBody { .. }, _) => {
            Formula::step(StepId::PartOf(force.id, axis))
        }
    };
    (along.abs() > 1e-9).then(|| Term {
        force: force.id,
        sign: along.signum(),
        amount,
    })
}
