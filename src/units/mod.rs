//! Numbers that know their dimension, and figures as somebody wrote them.
//!
//! Inside the program everything is SI: metres, kilograms, newtons, newton metres, radians.
//! Degrees exist only where a person reads or types. Angles carry a dimension of their own here
//! (the SI counts them as pure numbers), so that "35 deg" offered as a force is noticed and
//! degrees and radians can be told apart.

mod dimension;
mod figures;
mod table;

pub use dimension::Dimension;
pub use figures::{Written, figures_text, number_text, to_figures, unit_of_figure};
pub use table::{Unit, find_unit, unit_for, value_text, with_minus};
