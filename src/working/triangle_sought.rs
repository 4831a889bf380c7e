//! What is sought, from the forces that a triangle gave.

use super::trouble::Underivable;
use super::{Expression, Meaning, Named, Quantity, Rule, Section, Working};
use crate::key::{Atom, Formula};
use crate::problem::GivenId;
use crate::system::{ActId, Size, System, When};

/// Tells what is sought from the forces that a triangle gave.
pub(super) fn tell_sought(
    system: &System,
    sought_act: Option<(ActId, Size)>,
    working: &mut Working,
) -> Result<(), Underivable> {
    let Some(sought) = &system.parts().sought else {
        return Ok(());
    };
    let printed = system.given(sought.given);
    let refused = |is_needed: bool| {
        Err(Underivable::NotByTriangle {
            symbol: printed.symbol.shown(),
            is_needed,
        })
    };
    let told = used(working);
    if told.iter().any(|one| rests_on(working, one, sought.given)) {
        return refused(true);
    }
    let found = |meaning| {
        let is_it = |one: &&Expression| match one {
            Expression::Atom(Atom::Step(id)) => {
                let named = working.named(*id);
                named.is_some_and(|named| named.meaning == meaning)
            }
            _ => false,
        };
        told.iter().find(is_it).cloned()
    };
    let formula = match (sought.when, sought_act) {
        (When::Slips { act, coefficient }, _) if coefficient == sought.given => {
            let (friction, push) = (found(Meaning::Friction(act)), found(Meaning::Push(act)));
            friction
                .zip(push)
                .map(|(friction, push)| friction.over(push))
        }
        (When::Reaches { act, limit }, _) if limit == sought.given => {
            found(Meaning::Force(act)).or_else(|| found(Meaning::Size(act)))
        }
        // The force has the name of what is sought.
        (_, Some((act, Size::Given(_)))) if found(Meaning::Force(act)).is_some() => return Ok(()),
        (_, Some((act, Size::Weight(_)))) => {
            let weight = found(Meaning::Force(act));
            weight.map(|weight| weight.over(Formula::Atom(Atom::Gravity)))
        }
        _ => None,
    };
    let Some(formula) = formula else {
        return refused(false);
    };
    working.quantities.push(Named {
        symbol: printed.symbol.clone(),
        dimension: printed.dimension,
        meaning: Meaning::Sought,
        rule: Rule::Formula(formula),
    });
    working.results.push(Quantity(working.quantities.len() - 1));
    Ok(())
}

/// What a working by the triangle tells.
fn used(working: &Working) -> Vec<Expression> {
    let mut all = Vec::new();
    for section in &working.triangle {
        match section {
            Section::Angles(angles) => all.extend(angles.iter().map(|(angle, _)| angle.clone())),
            Section::Three { lines, .. }
            | Section::Resultant { lines, .. }
            | Section::Cosines(lines)
            | Section::Parts(lines)
            | Section::Meeting { lines, .. }
            | Section::Sines { lines, .. } => all.extend(lines.iter().copied().map(Formula::step)),
        }
    }
    all
}

/// True if a formula rests on a given, itself or through quantities.
fn rests_on(working: &Working, formula: &Expression, given: GivenId) -> bool {
    match formula {
        Expression::Atom(Atom::Given(id)) => *id == given,
        Expression::Atom(Atom::Step(id)) => match working.named(*id).map(|named| &named.rule) {
            Some(Rule::Formula(inner)) => rests_on(working, inner, given),
            _ => false,
        },
        other => {
            let mut children = other.children().into_iter();
            children.any(|child| rests_on(working, child, given))
        }
    }
}
