//! What follows from a wrong relation of the learner's own between unknowns: after
//! `T1 sin 40 = T2 sin 25` the line `T1 = 0.657 T2`, and with a right balance beside it the values.

use super::super::board::Board;
use super::super::identity::is_same;
use super::super::links::is_equal;
use super::super::names::{NameRole, step_of};
use super::super::printed_units::{at_right_values, counted_in, printed_force};
use super::super::stock::Stock;
use super::fresh::{has_fresh_moments, turns_a_pull};
use super::stray::strays;
use super::true_balance::true_balances;
use crate::key::{StepId, agree};
use crate::reading::{Leaf, Literal, Node, Operator, Tree, Value, evaluate, read};

/// A line follows where its sides differ by no more than this share of what stands in them.
pub(super) const NEAR: f64 = 0.003;
/// Two lines are one balance told twice where all but one of their terms agree up to this share.
const VARIANT: f64 = 0.01;
/// An unknown is nought where two lines leave no more of it than this share of its right value.
const LEFT: f64 = 0.003;
/// A matrix is singular where its determinant is no more than this share of its terms.
const SINGULAR: f64 = 1e-6;
/// What is no more than this share of the unknowns is nought.
const NOUGHT: f64 = 1e-9;
/// What stands for an unknown where the terms of a line are sought.
pub(super) const TRIED: [f64; 2] = [1.0, 7.3];

/// The values, in newtons, that an unknown gets which the lines leave free.
const FREE: [f64; 2] = [100.0, 270.0];
/// The most unknowns of lines that are put together.
const MOST_UNKNOWNS: usize = 6;

/// A line as a sum of multiples of unknowns and a number, which is zero.
pub(super) struct Row {
    pub(super) of: Vec<(StepId, f64)>,
    pub(super) number: f64,
}

/// True if a line follows from one of these wrong lines, alone or with one or two others of hers
/// beside it.
pub fn follows_relation(board: &Board<'_>, wrong: &[&str], right: &[&str], line: &str) -> bool {
    // `2.5 N = 4.33 R + 698` may be of newtons or of a force N.
    let mut told = readings_of(board, line).into_iter();
    told.any(|sides| follows(board, wrong, right, (line, &sides)).unwrap_or(false))
}

fn follows(
    board: &Board<'_>,
    wrong: &[&str],
    right: &[&str],
    (line, sides): (&str, &[Tree]),
) -> Option<bool> {
    let (last, others) = sides.split_last()?;
    let told = row(board, others.first()?, last).filter(|told| !told.of.is_empty())?;
    if has_false_link(board, sides) {
        return None;
    }
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
    let hers = wrong;
    // The same line once more is as wrong.
    let wrong = wrong.iter().filter(|wrong| bare(wrong) != bare(line));
    let wrong = wrong.filter(|wrong| relates(board, wrong));
    // Another number for the same unknown, or a form of numbers, is one more try, near the first or not.
    let of_numbers = || step_of(board, &sides[0]).filter(|_| last.names().is_empty());
    let value = valued(board, sides).or_else(of_numbers);
    let value = value.filter(|_| sides.len() == 2);
    let is_try = |wrong: &str| {
        let sides = sides_of(board, wrong).unwrap_or_default();
        value.is_some() && valued(board, &sides) == value
    };
    let wrong = wrong.filter(|wrong| !is_try(wrong) && !is_other_number(board, wrong, sides));
    let wrong = wrong.filter(|wrong| !is_form_of_number(board, (wrong, sides), &told));
    let wrong = wrong.filter_map(|wrong| Some((*wrong, row_of(board, wrong)?)));
    let wrong: Vec<(&str, Row)> = wrong.filter(|(_, row)| !row.of.is_empty()).collect();
    // What one of them nearly says, with a number that does not stand in it, is one more try.
    let mut near = wrong
        .iter()
        .filter(|(_, row)| follows_from(board, &told, &[row]))
        .peekable();
    if near.peek().is_some() {
        return Some(near.any(|(line, _)| {
            let hers = sides_of(board, line).unwrap_or_default();
            !strays(board, sides, &hers)
        }));
    }
    // So is what a right line of hers nearly says.
    if beside.iter().any(|row| follows_from(board, &told, &[row])) {
        return Some(false);
    }
    // A slip that is made anew follows from none of them, whatever number they give together.
    let turned = others
        .first()
        .is_some_and(|one| turns_a_pull(board, one, last));
    if turned || has_fresh_moments(board, sides, hers) {
        return Some(false);
    }
    // Her wrong lines first: one of them at least gives what is told.
    let wrong = wrong.into_iter().map(|(_, row)| row);
    let count = wrong.len();
    let rows: Vec<Row> = wrong.chain(beside).collect();
    let from = |first: usize| {
        let later = || first + 1..rows.len();
        let pairs = || later().flat_map(|one| (one + 1..rows.len()).map(move |two| (one, two)));
        let row = |at: usize| &rows[at];
        later().any(|one| follows_from(board, &told, &[row(first), row(one)]))
            || pairs()
                .any(|(one, two)| follows_from(board, &told, &[row(first), row(one), row(two)]))
    };
    // A value alone may agree by chance with one of many balances.
    let form = valued(board, sides).is_none();
    Some((0..count).any(from) || form && follows_with_balance(board, &told, &rows[..count]))
}

/// True if a line follows from one or two wrong lines of hers and a true balance that she may not
/// have typed: the parts of two pulls, each wrong, set equal.
fn follows_with_balance(board: &Board<'_>, told: &Row, wrong: &[Row]) -> bool {
    let balances = true_balances(board);
    let with = |balance: &Row| {
        let others = |at: usize| wrong[at + 1..].iter();
        wrong.iter().enumerate().any(|(at, one)| {
            follows_from(board, told, &[one, balance])
                || others(at).any(|two| follows_from(board, told, &[one, two, balance]))
        })
    };
    // What the balance says by itself needs none of her lines.
    let by_itself = |balance: &Row| follows_from(board, told, &[balance]);
    !balances.iter().any(by_itself) && balances.iter().any(with)
}

/// True for a chain in which a form of numbers alone does not come to the one behind it.
fn has_false_link(board: &Board<'_>, sides: &[Tree]) -> bool {
    let bare = |side: &Tree| side.names().is_empty();
    let mut links = sides.windows(2).filter(|pair| pair.iter().all(bare));
    let stock = links.next().map(|first| (Stock::of(board), first));
    stock.is_some_and(|(stock, first)| {
        let mut all = std::iter::once(first).chain(links);
        all.any(|pair| !is_equal(board, &stock, &[&pair[0], &pair[1]]))
    })
}

impl Board<'_> {
    /// True for a line that is linear in what is open beside her wrong values, and not where these
    /// are open, too: a product of the two.
    pub fn has_product_of_own(&self, open: &Board<'_>, line: &str) -> bool {
        let linear = row_of(self, line).is_some_and(|row| !row.of.is_empty());
        linear && row_of(open, line).is_none()
    }

    /// True for a line that tells of two quantities or more that are to be found.
    pub fn relates_unknowns(&self, line: &str) -> bool {
        open_steps(self, line).len() > 1
    }
}

/// True for two lines that say the same kind of thing: of the same unknowns, and both with a
/// number or both without; of three terms or more two are alike, as two balances of the same
/// unknowns are not. The later takes the place of the earlier.
pub fn is_of_a_kind(board: &Board<'_>, one: &str, other: &str) -> bool {
    let entries = |line: &str| {
        let row = row_of(board, line)?;
        let mut entries: Vec<(Option<StepId>, f64)> = row
            .of
            .iter()
            .map(|(step, times)| (Some(*step), *times))
            .collect();
        entries.extend((row.number != 0.0).then_some((None, row.number)));
        entries.sort_by_key(|(step, _)| *step);
        Some(entries)
    };
    let (Some(one), Some(other)) = (entries(one), entries(other)) else {
        return false;
    };
    let both = || one.iter().zip(&other);
    let same = one.len() == other.len() && both().all(|((one, _), (other, _))| one == other);
    let ratios: Vec<f64> = both().map(|((_, one), (_, other))| one / other).collect();
    let alike = |(at, one): (usize, &f64)| {
        let mut later = ratios[at + 1..].iter();
        later.any(|other| (one - other).abs() <= NEAR * one.abs())
    };
    same && (ratios.len() < 3 || ratios.iter().enumerate().any(alike))
}

/// True for a wrong line and another, each a relation set equal to a bare number, where the relation
/// is the same and the number is no rounding of the wrong one: `A + B = 1005` after
/// `A + B = 1000` is one more try.
fn is_other_number(board: &Board<'_>, wrong: &str, sides: &[Tree]) -> bool {
    fn number(side: &Tree) -> Option<&Literal> {
        match &side.node {
            Node::Literal(literal) => Some(literal),
            _ => None,
        }
    }
    let wrong = sides_of(board, wrong).unwrap_or_default();
    let ([form, told], [wrong, first]) = (sides, wrong.as_slice()) else {
        return false;
    };
    let (Some(told), Some(first)) = (number(told), number(first)) else {
        return false;
    };
    let apart = (told.value - first.value).abs();
    is_same(wrong, form) && apart > 0.5 * told.written.last_place * (1.0 + 1e-6)
}

/// True for a wrong line that tells an unknown, or a multiple of it, by a number alone, and another that
/// tells it by a form in which that number does not stand: a balance is compared as one, and not by
/// the value that it gives.
fn is_form_of_number(board: &Board<'_>, (wrong, sides): (&str, &[Tree]), told: &Row) -> bool {
    fn number(sides: &[Tree]) -> Option<&Literal> {
        sides.iter().find_map(|side| match &side.node {
            Node::Literal(literal) => Some(literal),
            Node::Negative(inner) => match &inner.node {
                Node::Literal(literal) => Some(literal),
                _ => None,
            },
            _ => None,
        })
    }
    let wrong = sides_of(board, wrong).unwrap_or_default();
    let Some(hers) = number(&wrong).filter(|_| wrong.len() == 2) else {
        return false;
    };
    let of_one = |row: &Row| match row.of.as_slice() {
        [(step, _)] => Some(*step),
        _ => None,
    };
    let first = row(board, &wrong[0], &wrong[1]);
    let same = of_one(told).is_some() && first.as_ref().and_then(of_one) == of_one(told);
    let literals = || sides.iter().flat_map(Tree::literals);
    let typed = || literals().any(|place| place.literal.value.abs() == hers.value.abs());
    same && number(sides).is_none() && !typed()
}

/// The step whose name stands first in a line that ends in a number.
fn valued(board: &Board<'_>, sides: &[Tree]) -> Option<StepId> {
    let number = |side: &Tree| match &side.node {
        Node::Negative(inner) => matches!(inner.node, Node::Literal(_)),
        node => matches!(node, Node::Literal(_)),
    };
    sides.last().filter(|side| number(side))?;
    step_of(board, sides.first()?)
}

/// True for a line with the names of quantities that are to be found and no value of one that is
/// in force: that is known by then.
fn relates(board: &Board<'_>, line: &str) -> bool {
    let sides = sides_of(board, line).unwrap_or_default();
    let steps = open_steps(board, line);
    let in_force = |step: &StepId| board.standing.contains_key(step);
    let value = |side: &Tree| matches!(side.node, Node::Name(_)) && steps.iter().all(in_force);
    steps.len() > 1 || steps.len() == 1 && !sides.iter().any(value)
}

/// The quantities that are to be found whose names stand in a line.
fn open_steps(board: &Board<'_>, line: &str) -> Vec<StepId> {
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
    steps
}

fn sides_of(board: &Board<'_>, line: &str) -> Option<Vec<Tree>> {
    let readings = readings_of(board, line);
    let named = |sides: &[Tree]| sides.iter().any(|side| !side.names().is_empty());
    let right = readings.iter().position(|sides| is_right(board, sides));
    let first = right.or_else(|| readings.iter().position(|sides| named(sides)));
    readings.into_iter().nth(first.unwrap_or(0))
}

/// True for sides that are equal at the right values: of `R = 0.35 N` those of a force N.
fn is_right(board: &Board<'_>, sides: &[Tree]) -> bool {
    let value = |side: &Tree| at_right_values(board, side);
    let (Some(one), Some(other)) = (sides.first().and_then(value), sides.last().and_then(value))
    else {
        return false;
    };
    (one - other).abs() <= NEAR * one.abs().max(other.abs()) && one != 0.0
}

/// The sides of a relation in each of its readings.
pub(super) fn readings_of(board: &Board<'_>, line: &str) -> Vec<Vec<Tree>> {
    let readings = read(line, board.names.vocabulary()).unwrap_or_default();
    let relations = readings
        .into_iter()
        .filter(|reading| reading.defines.is_none() && reading.sides.len() > 1);
    relations.map(|reading| reading.sides).collect()
}

fn row_of(board: &Board<'_>, line: &str) -> Option<Row> {
    let sides = sides_of(board, line)?;
    row(board, sides.first()?, sides.last()?)
}

/// `T1/T2 = cos 40/cos 25` as `T1 = (cos 40/cos 25)·T2`: the sides without a quotient by what has a
/// name.
fn without_quotient(one: &Tree, other: &Tree) -> Option<(Tree, Tree)> {
    let Node::Binary(Operator::Divide, above, below) = &one.node else {
        return None;
    };
    let factors = (Box::new(other.clone()), below.clone());
    let product = Tree {
        node: Node::Binary(Operator::Multiply, factors.0, factors.1),
        span: other.span,
    };
    (!below.names().is_empty()).then(|| ((**above).clone(), product))
}

/// The difference of two sides, where it is linear in the unknowns that have no value yet.
pub(super) fn row(board: &Board<'_>, one: &Tree, other: &Tree) -> Option<Row> {
    let whole = without_quotient(one, other).or_else(|| without_quotient(other, one));
    let (one, other) = whole
        .as_ref()
        .map_or((one, other), |(one, other)| (one, other));
    let steps = unknowns_of(board, &[one, other]);
    let apart = |values: &dyn Fn(StepId) -> f64| {
        let value = |step: StepId| steps.contains(&step).then(|| values(step));
        let side = |tree: &Tree| value_of(board, tree, &value);
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

/// The unknowns of some sides that have no value yet.
pub(super) fn unknowns_of(board: &Board<'_>, sides: &[&Tree]) -> Vec<StepId> {
    let mut steps: Vec<StepId> = Vec::new();
    for (id, _) in sides.iter().flat_map(|side| side.names()) {
        if let Some(NameRole::Step(step)) = board.names.role(id) {
            // A weight is known to whoever goes on with its name.
            let open = !board.standing.contains_key(&step) && !step.is_weight();
            if open && !steps.contains(&step) {
                steps.push(step);
            }
        }
    }
    steps
}

/// The value of a side with such values for its unknowns.
pub(super) fn value_of(
    board: &Board<'_>,
    tree: &Tree,
    values: &dyn Fn(StepId) -> Option<f64>,
) -> Option<f64> {
    // Where forces are printed in kilonewtons, so are those of bare numbers; the unknowns of all rows
    // are scaled alike.
    let unit = printed_force(board).unwrap_or(1.0);
    let mut leaf = |leaf: Leaf<'_>| match leaf {
        Leaf::Literal(literal) => counted_in(unit, Value::of_literal(literal)),
        Leaf::Name(id) => {
            let role = board.names.role(id);
            let open = match role {
                Some(NameRole::Step(step)) => values(step),
                _ => None,
            };
            let number = open.or_else(|| role.and_then(|role| board.name_value(role)));
            let value = board.value_of_name(id, number.unwrap_or(f64::NAN));
            counted_in(unit, value)
        }
    };
    evaluate(tree, &mut leaf).ok().map(|value| value.number)
}

/// Two names that are equal in this problem, whatever its numbers, as a line.
fn equal_names(board: &Board<'_>, pair: &[Tree]) -> Option<Row> {
    let (one, other) = (step_of(board, &pair[0])?, step_of(board, &pair[1])?);
    agree(&board.right(one)?, &board.right(other)?).then(|| Row {
        of: vec![(one, 1.0), (other, -1.0)],
        number: 0.0,
    })
}

fn coefficient(row: &Row, step: StepId) -> f64 {
    let of = row.of.iter().find(|(known, _)| *known == step);
    of.map_or(0.0, |(_, times)| *times)
}

/// True if a line holds wherever these do together, all of whose unknowns stand in them.
fn follows_from(board: &Board<'_>, told: &Row, rows: &[&Row]) -> bool {
    let mut steps: Vec<StepId> = Vec::new();
    for (step, _) in rows.iter().flat_map(|row| &row.of) {
        if !steps.contains(step) {
            steps.push(*step);
        }
    }
    let known = told.of.iter().all(|(step, _)| steps.contains(step));
    if !known || rows.len() > steps.len() || steps.len() > MOST_UNKNOWNS || says_twice(rows) {
        return false;
    }
    let holds = |point: &Vec<f64>| {
        let value = |step: StepId| {
            let at = steps.iter().position(|known| *known == step);
            at.map_or(0.0, |at| point[at])
        };
        let terms = told.of.iter().map(|(step, times)| times * value(*step));
        let (sum, size) = terms.fold((told.number, told.number.abs()), |(sum, size), term| {
            (sum + term, size + term.abs())
        });
        let largest = |all: &mut dyn Iterator<Item = f64>| all.fold(0.0_f64, |a, b| a.max(b.abs()));
        let whole = largest(&mut point.iter().copied())
            * largest(&mut told.of.iter().map(|(_, times)| *times));
        // Of one unknown nought is told, where it comes to that.
        let nought = told.of.len() == 1 && size <= NOUGHT * whole;
        nought || sum.abs() <= NEAR * size && size > 0.0
    };
    points_of(rows, &steps).is_some_and(|points| {
        !comes_to_nought(board, told, rows, (&steps, &points)) && points.iter().all(holds)
    })
}

/// True where one balance is told twice among these, in two variants: together they only say that
/// what they differ in is nought, and beside nought any factor of it passes.
fn says_twice(rows: &[&Row]) -> bool {
    let entries = |row: &Row| {
        let mut of: Vec<(Option<StepId>, f64)> = Vec::new();
        of.extend(row.of.iter().map(|(step, times)| (Some(*step), *times)));
        of.push((None, row.number));
        of.retain(|(_, times)| *times != 0.0);
        of.sort_by_key(|(step, _)| *step);
        of
    };
    let varies = |one: &Row, other: &Row| {
        let (one, other) = (entries(one), entries(other));
        let both = || one.iter().zip(&other);
        let ratios: Vec<f64> = both().map(|((_, one), (_, other))| one / other).collect();
        let alike = |ratio: &f64| {
            let near = |other: &&f64| (**other - ratio).abs() <= VARIANT * ratio.abs();
            ratios.iter().filter(near).count() + 1 >= ratios.len()
        };
        one.len() == other.len()
            && both().all(|((one, _), (other, _))| one == other)
            && ratios.iter().any(alike)
    };
    let mut first = rows.iter().enumerate();
    first.any(|(at, one)| rows[at + 1..].iter().any(|other| varies(one, other)))
}

/// True where lines together leave nothing of an unknown that is none, though none of them says so:
/// they are at odds, and all that has it for a factor would follow. That it is nought may be told
/// all the same.
fn comes_to_nought(
    board: &Board<'_>,
    told: &Row,
    rows: &[&Row],
    (steps, points): (&[StepId], &[Vec<f64>]),
) -> bool {
    let says_so = |row: &&Row| row.of.len() == 1 && row.number == 0.0;
    let alone = |step: StepId| told.of.len() == 1 && told.of[0].0 == step;
    let nought = |at: usize| {
        let right = board.right(steps[at]).map_or(0.0, |right| right[0].abs());
        right > 0.0 && points.iter().all(|point| point[at].abs() <= LEFT * right)
    };
    rows.len() > 1
        && !rows.iter().any(says_so)
        && (0..steps.len()).any(|at| !alone(steps[at]) && nought(at))
}

/// Enough points at which these lines hold together to tell everything that follows from them;
/// `None` where two of them say the same, or against each other.
fn points_of(rows: &[&Row], steps: &[StepId]) -> Option<Vec<Vec<f64>>> {
    let count = steps.len();
    let entries = |row: &&Row| {
        let of = steps.iter().map(|step| coefficient(row, *step));
        of.chain([row.number]).collect::<Vec<f64>>()
    };
    let mut matrix: Vec<Vec<f64>> = rows.iter().map(entries).collect();
    let mut led = Vec::new();
    for at in 0..matrix.len() {
        let size = |row: &[f64]| {
            row[..count]
                .iter()
                .fold(0.0_f64, |most, one| most.max(one.abs()))
        };
        let whole = size(&entries(&rows[at]));
        let column = (0..count)
            .max_by(|one, other| matrix[at][*one].abs().total_cmp(&matrix[at][*other].abs()))?;
        if size(&matrix[at]) <= SINGULAR * whole {
            return None;
        }
        let lead = matrix[at][column];
        matrix[at].iter_mut().for_each(|entry| *entry /= lead);
        let row = matrix[at].clone();
        let others = matrix.iter_mut().enumerate();
        for (_, taken) in others.filter(|(other, _)| *other != at) {
            let share = taken[column];
            taken
                .iter_mut()
                .zip(&row)
                .for_each(|(entry, one)| *entry -= share * one);
        }
        led.push(column);
    }
    // Every free unknown in turn at another of two values.
    let free: Vec<usize> = (0..count).filter(|at| !led.contains(at)).collect();
    let point = |moved: Option<usize>| {
        let mut point = vec![FREE[0]; count];
        if let Some(moved) = moved {
            point[moved] = FREE[1];
        }
        for (row, column) in matrix.iter().zip(&led) {
            let others = free.iter().map(|at| row[*at] * point[*at]);
            point[*column] = -(row[count] + others.sum::<f64>());
        }
        point
    };
    let moved = free.iter().map(|at| point(Some(*at)));
    Some(std::iter::once(point(None)).chain(moved).collect())
}
