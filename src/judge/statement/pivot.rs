//! The point that a statement about the pivot names.

use super::place::{Where, acts_at, is_on};
use super::{Named, Statement, read};
use crate::problem::{ForceId, Place, Problem, Size};
use crate::text::Words;

/// What a line says about the pivot.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum PivotSaid {
    /// This point, in metres from the foot.
    At(f64),
    /// A point of the body through which the line of the unknown pull goes.
    OnUnknown(f64, ForceId),
    /// A point beyond the body.
    Beyond,
    /// A letter that nothing in the problem is called.
    Letter(char),
    /// No point.
    Nothing,
}

/// The point that a line names, read from what is [said](read) about forces and places: a support
/// is a point too. A line that denies a point ("not the hinge") names none.
pub fn pivot_said(problem: &Problem, words: &Words, line: &str) -> PivotSaid {
    if denies(words, line) {
        return PivotSaid::Nothing;
    }
    let point = match read(problem, words, line) {
        Statement::Says(said) => said.iter().find_map(|said| match (said.place, said.named) {
            (Some(Where::At(metres)), _) => Some(metres),
            (Some(Where::Within(stretch)), _) if stretch.point().is_some() => stretch.point(),
            (_, Named::Force(force) | Named::Behind(Some(force)))
                if force != ForceId::OwnWeight =>
            {
                problem
                    .force(force)
                    .map(|force| problem.distance(force.at, &problem.values()))
            }
            _ => None,
        }),
        _ => None,
    };
    match point.or_else(|| bare_number(line)) {
        Some(metres) => at(problem, metres),
        None => letter(line).map_or(PivotSaid::Nothing, PivotSaid::Letter),
    }
}

/// True for a line that says where the pivot is not.
fn denies(words: &Words, line: &str) -> bool {
    let line = format!(" {} ", line.to_lowercase());
    let denials = words.word("statement.not-there");
    denials
        .split(',')
        .any(|denial| line.contains(&format!(" {} ", denial.trim())))
}

fn at(problem: &Problem, metres: f64) -> PivotSaid {
    if !is_on(problem, metres) {
        return PivotSaid::Beyond;
    }
    let unknown = problem.forces().into_iter().find(|force| {
        force.size == Size::Unknown
            && !super::may_stay_open(problem, force.id)
            && acts_at(problem, force.id, metres)
    });
    match unknown {
        Some(force) => PivotSaid::OnUnknown(metres, force.id),
        None => PivotSaid::At(metres),
    }
}

/// A number alone: a distance in metres.
pub fn bare_number(line: &str) -> Option<f64> {
    let text = line.trim().replace(',', ".").to_lowercase();
    let number = text.parse::<f64>().ok()?;
    // `1e-999` is too small to be read, and no zero.
    let mantissa = text.split('e').next().unwrap_or_default();
    let vanished = number == 0.0 && mantissa.contains(|c: char| matches!(c, '1'..='9'));
    (number.is_finite() && !vanished).then_some(number)
}

/// A capital letter, as points are called elsewhere, alone or after "point".
fn letter(line: &str) -> Option<char> {
    if line.split_whitespace().count() > 3 || line.contains(['=', '+', '*']) {
        return None;
    }
    let last = line.split_whitespace().last()?;
    let mut letters = last.chars().filter(|c| c.is_alphanumeric());
    let first = letters.next()?;
    (letters.next().is_none() && first.is_alphabetic())
        .then(|| first.to_uppercase().next().unwrap_or(first))
}

/// True if a point, in metres from the foot, is where the guided working takes its moments.
pub fn is_pivot(problem: &Problem, pivot: Place, metres: f64) -> bool {
    (problem.distance(pivot, &problem.values()) - metres).abs() < 1e-6
}
