//! Lifting: what the typed numbers of an expression stand for.
//!
//! Each literal may stand for a given, a simple derived given, a pure number of the formula, the
//! value of a step, or an earlier value of the learner's own. With the literals lifted, the
//! expression is a function of the givens, and functions are compared at other choices of numbers
//! ([`crate::key::Sampling`]). So a right way is told from a value that agrees by chance.

use super::board::Board;
use super::grouped::Grouped;
use super::names::NameRole;
use super::stock::{Meaning, Stock};
use crate::key::{Samples, StepId};
use crate::reading::{Leaf, Literal, Mismatch, NameId, Node, Tree, Value, evaluate};
use crate::units::Dimension;
use meant::{Meant, Typed, is_angle};
use std::cell::Cell;
use std::collections::BTreeSet;

mod meant;

/// The most assignments of meanings to literals that are tried.
const MOST_ASSIGNMENTS: usize = 12000;

/// The same in a general working, where more numbers are alike.
const MOST_GENERAL: usize = 24000;

/// The most numbers that are put in while one line is judged, in all that it is judged beside: an
/// assignment of meanings costs one for each number of the line and for every second name. A count,
/// so a line has the same verdict on every computer.
const MOST_PUT_IN: usize = 1_500_000;

/// What is farther from a right function than this share of its largest value is not that function.
const NEAR: f64 = 1e-6;

/// Assignments that are tried whatever was spent before.
const FEWEST_ASSIGNMENTS: usize = 64;

/// How many numbers were put in while one line was judged.
#[derive(Clone, Debug, Default)]
pub struct Effort(Cell<usize>);

impl Effort {
    /// Begins another line.
    pub fn renew(&self) {
        self.0.set(0);
    }

    /// How many assignments may still be tried of a line of so many numbers.
    fn left(&self, numbers: usize) -> usize {
        let left = MOST_PUT_IN.saturating_sub(self.0.get()) / numbers.max(1);
        left.max(FEWEST_ASSIGNMENTS)
    }

    fn spend(&self, assignments: usize, numbers: usize) {
        let now = self.0.get();
        self.0
            .set(now.saturating_add(assignments.saturating_mul(numbers)));
    }
}

/// Makes one number of a line's sides at one choice of numbers, given values for its leaves.
pub(super) type Combine<'c> =
    dyn Fn(&[&Tree], usize, &mut dyn FnMut(Leaf<'_>) -> Value) -> Option<f64> + 'c;

/// An expression with its literals lifted in one way.
#[derive(Clone, Debug)]
pub(super) struct Lifted {
    /// Its value at every choice of numbers.
    pub(super) function: Samples,
    /// How many literals stand for nothing but themselves though they are no pure numbers.
    pub(super) constants: usize,
}

impl Lifted {
    /// What a form that is the right one is lifted to.
    pub(super) fn right(board: &Board<'_>, step: StepId) -> Option<Lifted> {
        board.right(step).map(|function| Lifted {
            function,
            constants: 0,
        })
    }
}

/// Every function that the sides of a line can be lifted to, fewest unexplained numbers first.
/// `combine` makes one number of the sides' values at one choice (a value, a root).
pub(super) fn lift(
    board: &Board<'_>,
    stock: &Stock,
    sides: &[&Tree],
    wanted: Option<Dimension>,
    combine: &Combine<'_>,
) -> Vec<Lifted> {
    lift_as(board, stock, sides, wanted, (combine, true))
}

/// The same; `in_groups` is false for a `combine` that looks at every typed number by itself.
pub(super) fn lift_as(
    board: &Board<'_>,
    stock: &Stock,
    sides: &[&Tree],
    wanted: Option<Dimension>,
    (combine, in_groups): (&Combine<'_>, bool),
) -> Vec<Lifted> {
    lift_twice(
        board,
        stock,
        sides,
        (combine, in_groups),
        &Typed::as_it_stands(wanted),
    )
}

/// Every function that an expression of this dimension can be lifted to.
pub(super) fn lifted(
    board: &Board<'_>,
    stock: &Stock,
    tree: &Tree,
    dimension: Dimension,
) -> Vec<Lifted> {
    let combine = |sides: &[&Tree], _: usize, leaf: &mut dyn FnMut(Leaf<'_>) -> Value| {
        evaluate(sides[0], leaf)
            .ok()
            .map(|value| value.number_as(dimension))
    };
    lift(board, stock, &[tree], Some(dimension), &combine)
}

/// The functions that an expression of this dimension can be lifted to and that are as large as one of
/// `rights`; with `fixed`, with an angle in the place of one of its numbers. Most ways of taking its
/// numbers are told from these at the first choice of numbers; of angles, several are one line.
pub(super) fn lift_near(
    board: &Board<'_>,
    stock: &Stock,
    (tree, wanted): (&Tree, Dimension),
    fixed: Option<(&Literal, &Samples)>,
    rights: &[&Samples],
) -> Vec<Lifted> {
    let size = |right: &Samples| right.iter().fold(0.0_f64, |most, one| most.max(one.abs()));
    let rights: Vec<(&Samples, f64)> = rights.iter().map(|right| (*right, size(right))).collect();
    let combine = |sides: &[&Tree], choice: usize, leaf: &mut dyn FnMut(Leaf<'_>) -> Value| {
        let value = evaluate(sides[0], leaf).ok()?.number_as(wanted);
        let mut near = rights
            .iter()
            .map(|(right, size)| (right[choice], NEAR * size));
        let is_near = near.any(|(right, reach)| (value.abs() - right.abs()).abs() <= reach);
        (is_near || wanted == Dimension::ANGLE).then_some(value)
    };
    let typed = Typed {
        fixed,
        ..Typed::as_it_stands(Some(wanted))
    };
    lift_twice(board, stock, &[tree], (&combine, true), &typed)
}

fn lift_twice(
    board: &Board<'_>,
    stock: &Stock,
    sides: &[&Tree],
    combine: (&Combine<'_>, bool),
    typed: &Typed<'_>,
) -> Vec<Lifted> {
    let (mut found, narrowed) = lift_once(board, stock, sides, combine, typed);
    if narrowed {
        // Where not all can be tried, 40° typed four times is likely the same angle each time.
        let alike = Typed {
            alike: true,
            ..*typed
        };
        let (more, _) = lift_once(board, stock, sides, combine, &alike);
        let is_new = |one: &Lifted| !found.iter().any(|known| known.function == one.function);
        let more: Vec<Lifted> = more.into_iter().filter(is_new).collect();
        found.extend(more);
        found.sort_by_key(|lifted| lifted.constants);
    }
    found
}

/// The same, and whether some meanings were passed over though an angle that may be two is typed
/// several times.
fn lift_once(
    board: &Board<'_>,
    stock: &Stock,
    sides: &[&Tree],
    (combine, in_groups): (&Combine<'_>, bool),
    typed: &Typed<'_>,
) -> (Vec<Lifted>, bool) {
    let mut meant = Meant::of(stock, sides, typed, board.wide);
    let named = names_of_numbers(board, sides, &mut meant);
    let most = match board.key.general {
        Some(_) => MOST_GENERAL,
        None => MOST_ASSIGNMENTS,
    };
    let most = most / (1 + meant.meanings.len() / 10);
    // A name is looked up for every assignment, too.
    let names = sides.iter().flat_map(|side| side.names()).count();
    let put_in = meant.meanings.len() + names / 2;
    let left = board.effort.map(|effort| effort.left(put_in));
    let most = most.min(left.unwrap_or(most));
    let narrowed = meant.again && !typed.alike && meant.assignments() > most;
    meant.keep(most);
    if let Some(effort) = board.effort {
        effort.spend(meant.assignments(), put_in);
    }
    let Meant {
        meanings, slots, ..
    } = &meant;
    let counts: Vec<usize> = meanings.iter().map(Vec::len).collect();
    let known = functions_of_names(board, sides);
    let grouped = in_groups.then(|| Grouped::of(sides, slots, &counts));
    let of_groups = grouped.as_ref().map(|grouped| grouped.sides.iter());
    let reduced: Vec<&Tree> = of_groups.map_or_else(|| sides.to_vec(), Iterator::collect);
    let angles = angle_names(board, sides, typed.wanted);
    let mut found: Vec<Lifted> = Vec::new();
    let mut seen = BTreeSet::new();
    let mut assignment = vec![0; meanings.len()];
    loop {
        let assigned = Assigned {
            slots,
            meanings,
            chosen: &assignment,
            angles: &angles,
            named: &named,
            known: &known,
            grouped: grouped.as_ref(),
        };
        let function = assigned.function(board, &reduced, combine);
        if let Some(function) = function {
            let constants = assignment
                .iter()
                .zip(meanings)
                .filter(|(at, all)| all[**at].constant)
                .count();
            if seen.insert(function.map(f64::to_bits)) {
                found.push(Lifted {
                    function,
                    constants,
                });
            }
        }
        if !next(&mut assignment, meanings) {
            break;
        }
    }
    found.sort_by_key(|lifted| lifted.constants);
    (found, narrowed)
}

/// Every function that a force can be lifted to where a bare number may be a mass that stands among
/// forces: nothing for truth, only for what was thought.
pub(super) fn lift_masses_as_forces(board: &Board<'_>, stock: &Stock, tree: &Tree) -> Vec<Lifted> {
    let combine = |sides: &[&Tree], _: usize, leaf: &mut dyn FnMut(Leaf<'_>) -> Value| {
        let mut among_forces = |found: Leaf<'_>| {
            let value = leaf(found);
            let bare = matches!(found, Leaf::Literal(literal) if literal.unit.is_none());
            Value {
                uncertain: value.uncertain || bare && value.dimension == Dimension::MASS,
                ..value
            }
        };
        let value = evaluate(sides[0], &mut among_forces).ok();
        value.map(|value| value.number_as(Dimension::FORCE))
    };
    let each = (&combine as &Combine<'_>, false);
    lift_as(board, stock, &[tree], Some(Dimension::FORCE), each)
}

/// True if every number of an expression of this dimension is a pure one or a quantity of this
/// working.
pub(super) fn is_all_known(stock: &Stock, tree: &Tree, wanted: Dimension) -> bool {
    tree.literals().iter().all(|place| {
        let as_angle = is_angle(tree, place, wanted);
        let meanings = stock.meanings(place.literal, as_angle, false);
        let pure = stock.is_pure(place.literal) || place.literal.value == 0.0;
        pure || meanings.iter().any(|meaning| !meaning.constant)
    })
}

/// True if no number of an expression of this dimension may be one of several quantities.
pub(super) fn is_one_each(stock: &Stock, tree: &Tree, wanted: Dimension) -> bool {
    tree.literals().iter().all(|place| {
        let as_angle = is_angle(tree, place, wanted);
        let meanings = stock.meanings(place.literal, as_angle, false);
        let quantities = meanings.iter().filter(|meaning| !meaning.constant);
        quantities.count() <= 1
    })
}

/// The bare names of the learner's own that stand inside a sine, cosine or tangent or in a sum of
/// angles, with the angle that each is there.
fn angle_names(
    board: &Board<'_>,
    sides: &[&Tree],
    wanted: Option<Dimension>,
) -> Vec<(NameId, Samples)> {
    let mut found = Vec::new();
    for side in sides {
        let mut ratios = false;
        side.visit(&mut |tree| ratios |= matches!(tree.node, Node::Call(..)));
        if wanted == Some(Dimension::ANGLE) && !ratios {
            let names = side.names().into_iter();
            found.extend(names.filter_map(|(id, _)| Some((id, board.degrees_of_name(id)?))));
        }
        side.visit(&mut |tree| {
            if let Node::Call(function, inner) = &tree.node
                && function.takes_angle()
            {
                let names = inner.names().into_iter();
                found.extend(names.filter_map(|(id, _)| Some((id, board.degrees_of_name(id)?))));
            }
        });
    }
    found
}

/// What each name of the sides stands for.
fn functions_of_names(board: &Board<'_>, sides: &[&Tree]) -> Vec<(NameId, Option<Samples>)> {
    let mut found: Vec<(NameId, Option<Samples>)> = Vec::new();
    for (id, _) in sides.iter().flat_map(|side| side.names()) {
        if found.iter().all(|(known, _)| *known != id) {
            let role = board.names.role(id);
            found.push((id, role.and_then(|role| board.name_function(role))));
        }
    }
    found
}

/// The names that may stand for one of several quantities: these are added to what is `meant`, once
/// for each name.
fn names_of_numbers(board: &Board<'_>, sides: &[&Tree], meant: &mut Meant) -> Vec<(NameId, usize)> {
    let mut found: Vec<(NameId, usize)> = Vec::new();
    for (id, _) in sides.iter().flat_map(|side| side.names()) {
        let functions = board.names.role(id).and_then(|role| meant_by(board, role));
        let known = found.iter().any(|(known, _)| *known == id);
        let Some((functions, dimension)) = functions.filter(|_| !known) else {
            continue;
        };
        let meaning = |function: Samples| Meaning {
            function,
            dimension,
            constant: false,
        };
        let functions = functions.into_iter().map(meaning).collect();
        found.push((id, meant.add_name(functions)));
    }
    found
}

/// What a name may stand for where that is not one thing: a name of the learner's own that was set
/// to a number, and a coordinate that points the other way, of which the size may be meant.
fn meant_by(board: &Board<'_>, role: NameRole) -> Option<(Vec<Samples>, Dimension)> {
    match role {
        NameRole::Own(index) => {
            let own = board.own_names.get(index)?;
            let mut all = vec![own.function];
            all.extend(&own.others);
            (all.len() > 1).then_some((all, own.dimension))
        }
        NameRole::Given(given) => {
            let dimension = board.problem.given(given).dimension;
            let function = board.name_function(role)?;
            let turned = dimension == Dimension::LENGTH && function[0] < 0.0;
            turned.then(|| (vec![function, function.map(|value| -value)], dimension))
        }
        _ => None,
    }
}

/// Counts an assignment up; false after the last.
fn next(assignment: &mut [usize], meanings: &[Vec<Meaning>]) -> bool {
    for (at, all) in assignment.iter_mut().zip(meanings) {
        *at += 1;
        if *at < all.len() {
            return true;
        }
        *at = 0;
    }
    false
}

/// A line's numbers, each with one of its meanings chosen.
struct Assigned<'a> {
    /// The number of a literal, and its place in `meanings`.
    slots: &'a [(usize, usize)],
    meanings: &'a [Vec<Meaning>],
    chosen: &'a [usize],
    /// Names that stand for angles here, in degrees.
    angles: &'a [(NameId, Samples)],
    /// Names that stand for one of several quantities, and their places in `meanings`.
    named: &'a [(NameId, usize)],
    /// What every name of the line stands for by itself.
    known: &'a [(NameId, Option<Samples>)],
    grouped: Option<&'a Grouped>,
}

impl Assigned<'_> {
    fn function(
        &self,
        board: &Board<'_>,
        sides: &[&Tree],
        combine: &Combine<'_>,
    ) -> Option<Samples> {
        let mut function: Samples = [0.0; 4];
        for (choice, value) in function.iter_mut().enumerate() {
            let mut leaf = |leaf: Leaf<'_>| match leaf {
                Leaf::Literal(literal) => self.literal(literal, choice),
                Leaf::Name(id) => self.name(board, id, choice),
            };
            *value = combine(sides, choice, &mut leaf).filter(|value| value.is_finite())?;
        }
        Some(function)
    }

    fn literal(&self, literal: &Literal, choice: usize) -> Value {
        let at = (self.chosen, choice);
        let of_group = self.grouped.and_then(|grouped| {
            grouped.value(literal, at, &mut |leaf| match leaf {
                Leaf::Literal(literal) => self.typed(literal, choice),
                Leaf::Name(_) => Value::bare(f64::NAN),
            })
        });
        of_group.unwrap_or_else(|| self.typed(literal, choice))
    }

    fn typed(&self, literal: &Literal, choice: usize) -> Value {
        let slot = self.slots.iter().find(|(index, _)| *index == literal.index);
        let meaning = slot.map(|(_, slot)| &self.meanings[*slot][self.chosen[*slot]]);
        match meaning.filter(|meaning| !meaning.constant) {
            Some(meaning) => Value::of(meaning.function[choice], meaning.dimension),
            None => Value::of_literal(literal),
        }
    }

    fn name(&self, board: &Board<'_>, id: NameId, choice: usize) -> Value {
        let angle = self.angles.iter().find(|(name, _)| *name == id);
        let of_number = self.named.iter().find(|(name, _)| *name == id);
        let meant = of_number.map(|(_, slot)| &self.meanings[*slot][self.chosen[*slot]]);
        let known = || self.known.iter().find(|(name, _)| *name == id)?.1;
        let number = angle
            .map(|(_, degrees)| *degrees)
            .or_else(|| meant.map(|meaning| meaning.function))
            .or_else(known)
            .map(|function| function[choice]);
        board.value_of_name(id, number.unwrap_or(f64::NAN))
    }
}

/// The value of an expression with its numbers as typed and its names at what they hold.
pub(super) fn plain_value(board: &Board<'_>, tree: &Tree) -> Result<Value, Mismatch> {
    evaluate(tree, &mut |leaf| plain_leaf(board, leaf))
}

/// A number as typed, or what a name holds.
pub(super) fn plain_leaf(board: &Board<'_>, leaf: Leaf<'_>) -> Value {
    match leaf {
        Leaf::Literal(literal) => Value::of_literal(literal),
        Leaf::Name(id) => {
            let number = board.names.role(id).and_then(|role| board.name_value(role));
            board.value_of_name(id, number.unwrap_or(f64::NAN))
        }
    }
}
