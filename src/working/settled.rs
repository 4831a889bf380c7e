//! A system with what it seeks found: the values at which it is worked.

use super::Underivable;
use crate::statics::{Root, SystemSolution, roots, solve_system};
use crate::system::System;

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
        let solution = solve_system(system, &values, gravity)?;
        return Ok(Settled {
            values,
            solution,
            roots: Vec::new(),
        });
    };
    let found = roots(system, gravity)?;
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
        Some((_, Err(trouble))) => Err(trouble.into()),
        None => Err(Underivable::NoOrder),
    }
}
