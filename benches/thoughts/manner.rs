//! How a pupil writes: figures, units, zeros dropped, lines skipped. All from the seed.

use super::paper::Paper;
use super::pupil::Line;
use leverwright::key::{Part, StepId};
use leverwright::units::figures_text;
use rand::Rng;
use rand::rngs::ChaCha8Rng;

/// A number below `end`.
pub(super) fn below(random: &mut ChaCha8Rng, end: usize) -> usize {
    (random.next_u64() % end.max(1) as u64) as usize
}

/// True in so many of a hundred.
pub(super) fn chance(random: &mut ChaCha8Rng, of_hundred: usize) -> bool {
    below(random, 100) < of_hundred
}

/// The place in a list of weights that a draw falls on.
pub(super) fn weighted(random: &mut ChaCha8Rng, weights: &[f64]) -> usize {
    let whole: f64 = weights.iter().sum();
    let mut left = whole * (random.next_u64() >> 11) as f64 / (1_u64 << 53) as f64;
    for (at, weight) in weights.iter().enumerate() {
        left -= weight;
        if left < 0.0 {
            return at;
        }
    }
    weights.len().saturating_sub(1)
}

/// The unit of a step's value.
fn unit(step: StepId) -> &'static str {
    match step {
        StepId::Angle(_) | StepId::Reaction(_, Part::Direction) => "°",
        _ => " N",
    }
}

/// A value as typed: so many figures, perhaps without its trailing zeros, perhaps without unit.
pub(super) fn number(random: &mut ChaCha8Rng, step: StepId, value: f64, figures: u8) -> String {
    let mut text = figures_text(value, figures);
    if text.contains('.') && chance(random, 40) {
        text = text.trim_end_matches('0').trim_end_matches('.').to_owned();
    }
    if chance(random, 60) {
        text.push_str(unit(step));
    }
    text
}

/// A line of a working with its name, and its value if it has one.
pub(super) fn named(random: &mut ChaCha8Rng, paper: &Paper, line: &Line, figures: u8) -> String {
    let Some(value) = line.value else {
        return match line.form.contains('=') {
            true => line.form.clone(),
            false => format!("{} = {}", paper.name(line.step).unwrap_or("T"), line.form),
        };
    };
    let name = paper.name(line.step).unwrap_or("T");
    let number = number(random, line.step, value, figures);
    match below(random, 4) {
        0 => format!("{name} = {}", line.form),
        _ => format!("{name} = {} = {number}", line.form),
    }
}

/// True for a line that a pupil may leave out: components, and one of the balance and the pull.
pub(super) fn skipped(random: &mut ChaCha8Rng, step: StepId) -> bool {
    match step {
        StepId::Across(_) => chance(random, 30),
        StepId::Reaction(_, Part::Size | Part::Direction) => chance(random, 20),
        _ => false,
    }
}
