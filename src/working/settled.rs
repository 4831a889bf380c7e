//! A system with what it seeks found: the values at which it is worked.

use super::Underivable;
use crate::statics::{Motion, Root, SystemSolution, Unsolvable, roots, solve_system};
use crate::system::{Friction, Hold, HoldKind, System};
use crate::units::value_text;

/// A system solved: its values, its forces, and what was sought.
#[derive(Clone, Debug)]
pub struct Settled {
    /// The values of the givens, SI, the sought one at the value that was found for it.
    pub values: Vec<f64>,
    /// The forces there.
    pub solution: SystemSolution,
    /// Every value of what is sought.
    pub roots: Vec<Root>,
}

/// Solves a system, for what it seeks if it seeks something.
///
/// # Errors
/// Why its forces cannot be found, or that what is sought has no value.
pub fn settle(system: &System) -> Result<Settled, Underivable> {
    let gravity = system.gravity();
    let mut values = system.values();
    let Some(sought) = &system.parts().sought else {
        let solution = solve_system(system, &values, gravity);
        let solution = solution.map_err(|trouble| named(system, trouble))?;
        return Ok(Settled {
            values,
            solution,
            roots: Vec::new(),
        });
    };
    let found = roots(system, gravity).map_err(|trouble| named(system, trouble))?;
    let can_be = || found.iter().filter(|root| root.solution.is_ok());
    let first = can_be()
        .find(|root| root.stable != Some(false))
        .or_else(|| can_be().next())
        .or(found.first());
    match first.map(|root| (root.value, root.solution.clone())) {
        Some((value, Ok(solution))) => {
            if let Some(slot) = values.get_mut(sought.given.0) {
                *slot = value;
            }
            Ok(Settled {
                values,
                solution,
                roots: found,
            })
        }
        Some((value, Err(why))) => {
            let given = system.given(sought.given);
            let told = value_text(value, given.dimension, system.figures());
            Err(Underivable::CannotBe {
                at: format!("{} = {told}", given.symbol.shown()),
                count: found.len(),
                why,
            })
        }
        None => Err(Underivable::NoOrder),
    }
}

/// Why the forces cannot be found; of what moves by the names of the bodies.
fn named(system: &System, why: Unsolvable) -> Underivable {
    let Unsolvable::Mechanism { motions } = &why else {
        return why.into();
    };
    let bodies = &system.parts().bodies;
    let told = motions.iter().map(|motion| {
        let noun = bodies.get(motion.body()).map(|body| body.noun.as_str());
        motion.told(&format!("the {}", noun.unwrap_or_default()))
    });
    let told: Vec<String> = told.collect();
    let noun = |motion: &Motion| bodies.get(motion.body()).map(|body| body.noun.clone());
    let moved = motions
        .iter()
        .map(|motion| noun(motion).unwrap_or_default());
    let moved: Vec<String> = moved.collect();
    let at_limit = |hold: &&Hold| {
        matches!(
            &hold.kind,
            HoldKind::Rough { friction, .. } | HoldKind::Base { friction, .. }
                if matches!(friction, Friction::Limiting { .. })
        )
    };
    let holds = system.parts().holds.iter().filter(at_limit);
    match told.is_empty() {
        true => why.into(),
        false => Underivable::Moves {
            told: told.into(),
            bodies: moved.into(),
            contacts: holds.map(|hold| hold.symbol.shown()).collect(),
            why,
        },
    }
}
