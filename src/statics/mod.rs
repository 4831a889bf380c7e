//! Forces from equilibrium.
//!
//! [`solve`] writes down the balances of a problem's body (forces to the right, forces upwards,
//! moments about a point, all in SI, anticlockwise positive) and finds every force that they
//! determine, or says as data why they do not. Below it lies [`Equilibrium`], which knows bodies,
//! lines of action and couples only, any number of each.
//!
//! Absent on purpose: steps, formulas and words of a working (`key`), and any judgement of what
//! a learner wrote. What comes out here is numbers.

mod assemble;
mod balance;
mod equilibrium;
mod frame;
mod inverse;
mod linear;
mod motion;
mod reason;
mod slipping;
mod solution;
mod unsolvable;

pub use balance::Balance;
pub use equilibrium::{Action, Acts, Condition, Equilibrium, Sense, UnknownColumn};
pub(crate) use frame::known_size;
pub use frame::{Reaction, Strained, SystemSolution, solve_system};
pub use inverse::{Root, roots};
pub use motion::Motion;
pub use reason::Reason;
pub use solution::{Found, Residual, Solution};
pub use unsolvable::{Stays, Unsolvable};

use crate::problem::Problem;

/// Finds every force on the body of a problem, with the problem's own acceleration of free fall.
///
/// `values` are the givens in SI, as [`Problem::values`] tells them or others in their place.
///
/// # Errors
/// As [`solve_with`].
pub fn solve(problem: &Problem, values: &[f64]) -> Result<Solution, Unsolvable> {
    solve_with(problem, values, problem.gravity())
}

/// Finds every force on the body of a problem, with another acceleration of free fall in m/s².
///
/// # Errors
/// Why there is no answer: see [`Unsolvable`].
pub fn solve_with(problem: &Problem, values: &[f64], gravity: f64) -> Result<Solution, Unsolvable> {
    let (equilibrium, assembled) = assemble::assemble(problem, values, gravity)?;
    let balance = equilibrium.solve()?;
    Ok(Solution::new(equilibrium, balance, &assembled))
}
