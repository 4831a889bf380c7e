//! What follows from a wrong relation of the learner's own between unknowns: after
//! `T1 sin 40 = T2 sin 25` the line `T1 = 0.657 T2`, and with a right balance beside it the values.

use super::super::board::Board;
use super::super::names::NameRole;
use super::super::printed_units::printed_force;
use crate::key::{StepId, agree};
use crate::reading::{Leaf, Node, Tree, Value, evaluate, read};

/// A line follows where its sides differ by no more than this share of what stands in them.
const NEAR: f64 = 0.003;
/// A matrix is singular where its determinant is no more than this share of its terms.
const SINGULAR: f64 = 1e-6;
/// What stands for an unknown where the terms of a line are sought.
const TRIED: [f64; 2] = [1.0, 7.3];

/// A line as a sum of multiples of unknowns and a number, which is zero.
struct Row {
    of: Vec<(StepId, f64)>,
    number: f64,
}

/// True if a line follows from one of these wrong lines, alone or with one of the right ones
/// beside it.
pub fn follows_relation(board: &Board<'_>, wrong: &[&str], right: &[&str], line: &str) -> bool {
    follows(board, wrong, right, line).unwrap_or(false)
}

fn follows(board: &Board<'_>, wrong: &[&str], right: &[&str], line: &str) -> Option<bool> {
    // Bare numbers may be of several units there.
    if printed_force(board).is_some() {
        return None;
    }
    let sides = sides_of(board, line)?;
    let (last, others) = sides.split_last()?;
    let told = row(board, others.first()?, last).filter(|told| !told.of.is_empty())?;
    let mut beside: Vec<Row> = right
        .iter()
        .filter_map(|line| row_of(board, line))
        .collect();
    // `A = B = 294`: what is equal by itself, with the number behind it.
    beside.extend(
        others
            .windows(2)
            .filter_map(|pair| equal_names(board, pair)),
    );
    let bare = |line: &str| line.replace(char::is_whitespace, "");
    // The same line once more is as wrong.
    let wrong = wrong.iter().filter(|wrong| bare(wrong) != bare(line));
    let wrong = wrong.filter(|wrong| relates(board, wrong));
    let mut wrong = wrong.filter_map(|wrong| row_of(board, wrong));
    let from = |wrong: &Row| {
        let mut beside = beside.iter();
        let alone = follows_from(&told, &[wrong]);
        alone || beside.any(|row| follows_from(&told, &[wrong, row]))
    };
    Some(wrong.any(|wrong| !wrong.of.is_empty() && from(&wrong)))
}

/// True for two lines that say the same kind of thing: of the same unknowns, and both with a
/// number or both without. The later takes the place of the earlier.
pub fn is_of_a_kind(board: &Board<'_>, one: &str, other: &str) -> bool {
    let kind = |line: &str| {
        let row = row_of(board, line)?;
        let mut steps: Vec<StepId> = row.of.iter().map(|(step, _)| *step).collect();
        steps.sort();
        Some((steps, row.number == 0.0))
    };
    kind(one).is_some_and(|one| kind(other) == Some(one))
}

/// True for a line with the names of quantities that are to be found and no value of one: that is
/// known by then.
fn relates(board: &Board<'_>, line: &str) -> bool {
    let sides = sides_of(board, line).unwrap_or_default();
    let names = sides.iter().flat_map(Tree::names);
    let mut steps: Vec<StepId> = names
        .filter_map(|(id, _)| match board.names.role(id) {
            Some(NameRole::Step(step)) if !step.is_weight() => Some(step),
            _ => None,
        })
        .collect();
    steps.sort();
    steps.dedup();
    let value = |side: &Tree| matches!(side.node, Node::Name(_));
    steps.len() > 1 || steps.len() == 1 && !sides.iter().any(value)
}

fn sides_of(board: &Board<'_>, line: &str) -> Option<Vec<Tree>> {
    let readings = read(line, board.names.vocabulary()).ok()?;
    let reading = readings.into_iter().next()?;
    let relation = reading.defines.is_none() && reading.sides.len() > 1;
    relation.then_some(reading.sides)
}

fn row_of(board: &Board<'_>, line: &str) -> Option<Row> {
    let sides = sides_of(board, line)?;
    row(board, sides.first()?, sides.last()?)
}

/// The difference of two sides, where it is linear in the unknowns that have no value yet.
fn row(board: &Board<'_>, one: &Tree, other: &Tree) -> Option<Row> {
    let mut steps: Vec<StepId> = Vec::new();
    for (id, _) in one.names().into_iter().chain(other.names()) {
        if let Some(NameRole::Step(step)) = board.names.role(id) {
            // A weight is known to whoever goes on with its name.
            let open = !board.standing.contains_key(&step) && !step.is_weight();
            if open && !steps.contains(&step) {
                steps.push(step);
            }
        }
    }
    let apart = |values: &dyn Fn(StepId) -> f64| {
        let side = |tree: &Tree| {
            let mut leaf = |leaf: Leaf<'_>| match leaf {
                Leaf::Literal(literal) => Value::of_literal(literal),
                Leaf::Name(id) => {
                    let role = board.names.role(id);
                    let number = match role {
                        Some(NameRole::Step(step)) if steps.contains(&step) => Some(values(step)),
                        role => role.and_then(|role| board.name_value(role)),
                    };
                    board.value_of_name(id, number.unwrap_or(f64::NAN))
                }
            };
            evaluate(tree, &mut leaf).ok().map(|value| value.number)
        };
        let apart = side(one)? - side(other)?;
        apart.is_finite().then_some(apart)
    };
    let base = apart(&|_| TRIED[0])?;
    let mut of = Vec::new();
    for step in &steps {
        let moved = apart(&|one| if one == *step { TRIED[1] } else { TRIED[0] })?;
        of.push((*step, (moved - base) / (TRIED[1] - TRIED[0])));
    }
    let number = base - of.iter().map(|(_, times)| times * TRIED[0]).sum::<f64>();
    let all: f64 = number + of.iter().map(|(_, times)| times * TRIED[1]).sum::<f64>();
    let terms: f64 = number.abs() + of.iter().map(|(_, times)| times.abs()).sum::<f64>();
    let linear = (apart(&|_| TRIED[1])? - all).abs() <= 1e-6 * terms;
    let small = number.abs() <= 1e-9 * terms;
    linear.then_some(Row {
        of,
        number: if small { 0.0 } else { number },
    })
}

/// Two names that are equal in this problem, whatever its numbers, as a line.
fn equal_names(board: &Board<'_>, pair: &[Tree]) -> Option<Row> {
    let step = |side: &Tree| match side.node {
        Node::Name(id) => match board.names.role(id) {
            Some(NameRole::Step(step)) => Some(step),
            _ => None,
        },
        _ => None,
    };
    let (one, other) = (step(&pair[0])?, step(&pair[1])?);
    agree(&board.right(one)?, &board.right(other)?).then(|| Row {
        of: vec![(one, 1.0), (other, -1.0)],
        number: 0.0,
    })
}

fn coefficient(row: &Row, step: StepId) -> f64 {
    let of = row.of.iter().find(|(known, _)| *known == step);
    of.map_or(0.0, |(_, times)| *times)
}

/// True if a line holds wherever these do: one of at most two unknowns, or two of two.
fn follows_from(told: &Row, rows: &[&Row]) -> bool {
    let mut steps: Vec<StepId> = Vec::new();
    for (step, _) in rows.iter().flat_map(|row| &row.of) {
        if !steps.contains(step) {
            steps.push(*step);
        }
    }
    let known = told.of.iter().all(|(step, _)| steps.contains(step));
    let holds = |point: &[f64]| {
        let value = |step: StepId| {
            let at = steps.iter().position(|known| *known == step);
            at.map_or(0.0, |at| point[at])
        };
        let terms = told.of.iter().map(|(step, times)| times * value(*step));
        let (sum, size) = terms.fold((told.number, told.number.abs()), |(sum, size), term| {
            (sum + term, size + term.abs())
        });
        sum.abs() <= NEAR * size && size > 0.0
    };
    let at = |row: &Row, place: usize| coefficient(row, steps[place]);
    match (rows, steps.len()) {
        ([one], 1) => holds(&[-one.number / at(one, 0)]),
        ([one], 2) => {
            // Two points of the line that it is.
            let point = |second: f64| [-(one.number + at(one, 1) * second) / at(one, 0), second];
            known && holds(&point(100.0)) && holds(&point(270.0))
        }
        ([one, two], 2) => {
            let terms = [at(one, 0) * at(two, 1), at(one, 1) * at(two, 0)];
            let whole = terms[0] - terms[1];
            if whole.abs() <= SINGULAR * (terms[0].abs() + terms[1].abs()) {
                return false;
            }
            let first = (at(one, 1) * two.number - at(two, 1) * one.number) / whole;
            let second = (at(two, 0) * one.number - at(one, 0) * two.number) / whole;
            known && holds(&[first, second])
        }
        _ => false,
    }
}
