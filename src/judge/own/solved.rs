//! What solves her own line where that is not linear: `588·2 = 600·3·cos β` gives β = 49.2°, and a
//! line multiplied out says the same of θ as the one before it.

use super::super::board::Board;
use super::super::grade::Typed;
use super::super::lift::plain_leaf;
use super::super::names::NameRole;
use super::relation::readings_of;
use crate::key::StepId;
use crate::reading::{Leaf, Tree, Value, evaluate};
use crate::units::Dimension;
use std::f64::consts::FRAC_PI_2;

/// A value solves a line of numbers rounded to three figures up to this share of it.
const ROUNDED: f64 = 0.002;
/// Lines of such numbers say the same of an unknown up to this share of it.
const SAME: f64 = 0.003;
/// A line is not linear from this bend on, as a share of its terms.
const CURVED: f64 = 1e-6;
/// Steps in which a root is looked for, up to a right angle or to this many times the right value.
const STEPS: usize = 90;
const MOST: f64 = 4.0;
/// Halvings of a step in which a root lies.
const HALVINGS: usize = 50;

/// True if a value told for `target` solves one of her lines in which all else is known.
pub fn solves_own(board: &Board<'_>, target: StepId, told: Typed, lines: &[&str]) -> bool {
    let off = 0.5 * told.written.last_place + ROUNDED * told.value.abs();
    lines.iter().any(|line| {
        let readings = readings_of(board, line).into_iter();
        let mut of_target = readings.filter(|sides| {
            unknown_in(board, sides) == Some(target)
                && is_curved(board, target, sides, told.value) == Some(true)
        });
        of_target.any(|sides| crosses(board, target, &sides, (told.value - off, told.value + off)))
    })
}

/// True if a line with one unknown in it says of that what one of her lines says.
pub fn says_as_own(board: &Board<'_>, line: &str, lines: &[&str]) -> bool {
    readings_of(board, line).iter().any(|sides| {
        let Some(unknown) = unknown_in(board, sides) else {
            return false;
        };
        let near = |root: f64| (root - SAME * root.abs(), root + SAME * root.abs());
        let curved = |sides: &[Tree], root| is_curved(board, unknown, sides, root) == Some(true);
        let says = |root: &f64| curved(sides, *root) && crosses(board, unknown, sides, near(*root));
        let hers = lines.iter().flat_map(|line| readings_of(board, line));
        let mut hers = hers.filter(|sides| unknown_in(board, sides) == Some(unknown));
        hers.any(|hers| {
            let roots = roots(board, unknown, &hers);
            roots.iter().any(|root| curved(&hers, *root) && says(root))
        })
    })
}

impl Board<'_> {
    /// True if a line with one unknown in it says of that what two of her lines say together, each with one
    /// more unknown, the same one: `tan θ = 1/μ` after `W cos θ = μ·N` and `W sin θ = N`.
    pub fn says_as_two(&self, line: &str, (one, other): (&str, &str)) -> bool {
        let pairs = || {
            let others = || readings_of(self, other).into_iter();
            let ones = readings_of(self, one).into_iter();
            ones.flat_map(move |one| others().map(move |other| (one.clone(), other)))
        };
        let board = self;
        readings_of(board, line).iter().any(|sides| {
            let Some(unknown) = unknown_in(board, sides) else {
                return false;
            };
            let curved = |root: f64| is_curved(board, unknown, sides, root) == Some(true);
            let near = |root: f64| (root - SAME * root.abs(), root + SAME * root.abs());
            pairs().any(|(one, other)| {
                let Some(second) = second_unknown(board, unknown, [&one, &other]) else {
                    return false;
                };
                let together = |at: f64| together(board, [&one, &other], (unknown, at), second);
                let roots = roots_of(board, unknown, &together);
                roots
                    .into_iter()
                    .any(|root| curved(root) && crosses(board, unknown, sides, near(root)))
            })
        })
    }
}

/// The one unknown beside this that both lines have.
fn second_unknown(board: &Board<'_>, first: StepId, lines: [&[Tree]; 2]) -> Option<StepId> {
    let of = |sides: &[Tree]| {
        let names = sides.iter().flat_map(Tree::names);
        let steps = names.filter_map(|(id, _)| match board.names.role(id)? {
            NameRole::Step(step) => Some(step).filter(|step| step.is_unknown()),
            _ => None,
        });
        let mut steps: Vec<StepId> = steps.collect();
        steps.sort();
        steps.dedup();
        let has_first = steps.contains(&first);
        steps.retain(|step| *step != first);
        (steps.len() == 1 && has_first).then(|| steps[0])
    };
    let [one, other] = lines.map(of);
    one.filter(|_| one == other)
}

/// How far one line is apart at this value of the first unknown, with the second as the other line
/// gives it, in which that must be linear.
fn together(
    board: &Board<'_>,
    [one, other]: [&[Tree]; 2],
    (first, at): (StepId, f64),
    second: StepId,
) -> Option<f64> {
    let apart =
        |sides: &[Tree], value: f64| apart_at(board, &[(first, at), (second, value)], sides);
    let (none, once, twice) = (apart(one, 0.0)?, apart(one, 1.0)?, apart(one, 2.0)?);
    let slope = once - none;
    let bend = (twice - 2.0 * once + none).abs();
    let linear = bend <= CURVED * (twice.abs() + once.abs() + none.abs());
    (linear && slope != 0.0).then(|| apart(other, -none / slope))?
}

/// The only unknown of a line, where it stands beside more than itself.
fn unknown_in(board: &Board<'_>, sides: &[Tree]) -> Option<StepId> {
    let names = sides.iter().flat_map(|side| side.names());
    let mut unknown = None;
    for (id, _) in names {
        if let NameRole::Step(step) = board.names.role(id)?
            && step.is_unknown()
        {
            // Her value of it is what the line is asked for.
            let known = board.standing.contains_key(&step) && unknown.is_some();
            if !known && unknown.is_some_and(|other| other != step) {
                return None;
            }
            unknown = unknown.or(Some(step));
        }
    }
    unknown
}

/// How far the sides of a line are apart at a value of the unknown; numbers alone are compared.
fn apart(board: &Board<'_>, unknown: StepId, sides: &[Tree], at: f64) -> Option<f64> {
    apart_at(board, &[(unknown, at)], sides)
}

/// The same at the values of several unknowns.
fn apart_at(board: &Board<'_>, values: &[(StepId, f64)], sides: &[Tree]) -> Option<f64> {
    let of = |id| match board.names.role(id) {
        Some(NameRole::Step(step)) => values.iter().find(|(known, _)| *known == step),
        _ => None,
    };
    let bare = |value: Value| match value.dimension == Dimension::ANGLE {
        true => value,
        false => Value::bare(value.number),
    };
    let mut leaf = |leaf: Leaf<'_>| match leaf {
        Leaf::Name(id) => match of(id) {
            Some((_, at)) => bare(Value::of(*at, board.names.dimension(id))),
            None => bare(plain_leaf(board, leaf)),
        },
        leaf => bare(plain_leaf(board, leaf)),
    };
    let mut value = |side: &Tree| evaluate(side, &mut leaf).ok().map(|value| value.number);
    let apart = value(sides.first()?)? - value(sides.last()?)?;
    apart.is_finite().then_some(apart)
}

/// True for a line that is not linear in the unknown: of the others other rules tell what follows.
fn is_curved(board: &Board<'_>, unknown: StepId, sides: &[Tree], near: f64) -> Option<bool> {
    let at = |times: f64| apart(board, unknown, sides, times * near);
    let (one, half, nothing) = (at(1.0)?, at(0.5)?, at(0.0)?);
    let bend = (one + nothing - 2.0 * half).abs();
    Some(bend > CURVED * (one.abs() + half.abs() + nothing.abs()))
}

/// True if the sides of a line change places between two values of the unknown.
fn crosses(board: &Board<'_>, unknown: StepId, sides: &[Tree], ends: (f64, f64)) -> bool {
    changes(&|at| apart(board, unknown, sides, at), ends)
}

/// True if what is nought at a root changes its sign between two values.
fn changes(apart: &dyn Fn(f64) -> Option<f64>, (from, to): (f64, f64)) -> bool {
    let ends = apart(from).zip(apart(to));
    ends.is_some_and(|(one, other)| one * other < 0.0)
}

/// The values of the unknown at which the sides of a line are equal.
fn roots(board: &Board<'_>, unknown: StepId, sides: &[Tree]) -> Vec<f64> {
    roots_of(board, unknown, &|at| apart(board, unknown, sides, at))
}

/// The values of the unknown at which something is nought.
fn roots_of(board: &Board<'_>, unknown: StepId, apart: &dyn Fn(f64) -> Option<f64>) -> Vec<f64> {
    let right = board.right(unknown).map_or(0.0, |right| right[0].abs());
    let is_angle = (board.key.step(unknown)).is_some_and(|step| step.dimension == Dimension::ANGLE);
    let most = if is_angle { FRAC_PI_2 } else { MOST * right };
    let at = |step: usize| most * step as f64 / STEPS as f64;
    let steps = (0..STEPS).map(|step| (at(step), at(step + 1)));
    let within = steps.filter(|ends| changes(apart, *ends));
    within
        .map(|(mut from, mut to)| {
            for _ in 0..HALVINGS {
                let middle = 0.5 * (from + to);
                match changes(apart, (from, middle)) {
                    true => to = middle,
                    false => from = middle,
                }
            }
            0.5 * (from + to)
        })
        .collect()
}
