//! The key: the right working of a problem, step by step.
//!
//! A step has a name, a unit and a rule: a formula tree over givens and other steps, a balance of
//! terms, or "solve that balance for this". Formula nodes know their role (the ratio of a
//! component, the place of a weight), and so a mistake can be written as a rewrite of the key
//! ([`crate::mistakes`]) and its wrong values follow, here and in every later step.
//!
//! The same key feeds the questions, the verdicts, the hints, the diagram's stages, the printed
//! answers and the simulated learners. Nothing in it belongs to one lesson.
//!
//! A key is a graph over [`StepId`]s. The unknown (a rope's tension) refers to the balance, and
//! the balance to the rope's component, which is a multiple of the unknown: evaluation breaks the
//! ring by pinning the unknown ([`Key::value`]).

mod angle;
mod derive;
mod estimate;
mod evaluate;
mod formula;
mod general;
mod general_values;
mod nature;
mod reactions;
mod slope;
mod step;
mod tell;
#[cfg(test)]
pub(crate) mod tests;
mod word;

pub(crate) use angle::AngleSum;
pub use derive::{Underivable, derive};
pub use estimate::{Estimable, estimable};
pub(crate) use evaluate::{CHOICES, moved};
pub use evaluate::{Pins, Sample, Samples, Sampling, agree};
pub use formula::{Atom, Formula, Role};
pub(crate) use formula::{difference, place_length};
pub use general::{General, Heading, StageIds};
pub(crate) use general_values::eliminate;
pub use nature::Nature;
pub use step::{Axis, Balance, BalanceKind, Key, Part, Rule, Step, StepId, Term};
pub(crate) use tell::{Binding, two_sides, written};
pub use tell::{Teller, balance_names, balance_numbers, formula_names, formula_numbers};
pub use word::step_word;
