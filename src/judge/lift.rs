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
use crate::key::{Samples, StepId, agree};
use crate::reading::{
    Function, Leaf, Literal, Mismatch, NameId, Node, Operator, Place, Tree, Value, evaluate,
};
use crate::units::Dimension;
use std::cell::Cell;
use std::collections::BTreeSet;

/// The most assignments of meanings to literals that are tried.
const MOST_ASSIGNMENTS: usize = 12000;

/// The same in a general working, where more numbers are alike.
const MOST_GENERAL: usize = 24000;

/// The most numbers that are put in while one line is judged, in all that it is judged beside: an
/// assignment of meanings costs one for each number of the line and for every second name. A count,
/// so a line has the same verdict on every computer.
const MOST_PUT_IN: usize = 1_500_000;

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
    combine: (&Combine<'_>, bool),
) -> Vec<Lifted> {
    let (mut found, narrowed) = lift_angles(board, stock, sides, wanted, (combine, false));
    if narrowed {
        // Where not all can be tried, 40° typed four times is likely the same angle each time.
        let (more, _) = lift_angles(board, stock, sides, wanted, (combine, true));
        let is_new = |one: &Lifted| !found.iter().any(|known| known.function == one.function);
        let more: Vec<Lifted> = more.into_iter().filter(is_new).collect();
        found.extend(more);
        found.sort_by_key(|lifted| lifted.constants);
    }
    found
}

/// The same, and whether some meanings were passed over though an angle that may be two is typed
/// several times; `alike` takes such an angle for one.
fn lift_angles(
    board: &Board<'_>,
    stock: &Stock,
    sides: &[&Tree],
    wanted: Option<Dimension>,
    ((combine, in_groups), alike): ((&Combine<'_>, bool), bool),
) -> (Vec<Lifted>, bool) {
    let mut meanings: Vec<Vec<Meaning>> = Vec::new();
    let mut pure: Vec<bool> = Vec::new();
    let mut divisors: Vec<bool> = Vec::new();
    let mut twofold: Vec<bool> = Vec::new();
    let mut slots: Vec<(usize, usize)> = Vec::new();
    let mut known: Vec<(&Literal, usize)> = Vec::new();
    let (mut doubtful, mut again) = (Vec::new(), false);
    for side in sides {
        for place in side.literals() {
            let as_angle = is_angle(side, &place, wanted.unwrap_or(Dimension::NUMBER));
            // An angle that stands alone in two ratios means the same both times, and so does a
            // ratio that is typed twice.
            let is_ratio = !as_angle
                && place.literal.value.abs() < 1.0
                && !stock.equals_a_quantity(place.literal, false);
            let two_angles = as_angle && is_two_angles(stock, place.literal);
            let one_meaning = is_ratio
                || is_alone_in_ratio(side, place.literal.index)
                    && (alike || !two_angles)
                    // 115° is 90° + 25° and 180° − 65° in one sine rule.
                    && !(board.wide && place.literal.value > 90.0);
            let twice = known.iter().find(|(known, _)| {
                one_meaning
                    && known.value == place.literal.value
                    && known.unit == place.literal.unit
            });
            if let Some((_, meaning)) = twice {
                slots.push((place.literal.index, *meaning));
                continue;
            }
            if two_angles {
                again |= doubtful.contains(&place.literal.value);
                doubtful.push(place.literal.value);
            }
            slots.push((place.literal.index, meanings.len()));
            if one_meaning {
                known.push((place.literal, meanings.len()));
            }
            let of_whole = place.literal.unit.is_some_and(|unit| {
                let fits = match wanted {
                    Some(wanted) => unit.dimension == wanted,
                    None => matches!(unit.dimension, Dimension::FORCE | Dimension::MOMENT),
                };
                fits && unit.factor == 1.0 && is_last_factor(side, place.literal.index)
            });
            let is_pure = stock.is_pure(place.literal);
            divisors.push(is_pure && is_divisor(side, place.literal.index));
            pure.push(is_pure);
            twofold.push(two_angles);
            meanings.push(stock.meanings(place.literal, as_angle, of_whole));
        }
    }
    let named = names_of_numbers(board, sides, &mut meanings);
    pure.resize(meanings.len(), false);
    let most = match board.key.general {
        Some(_) => MOST_GENERAL,
        None => MOST_ASSIGNMENTS,
    };
    let most = most / (1 + meanings.len() / 10);
    // A name is looked up for every assignment, too.
    let names = sides.iter().flat_map(|side| side.names()).count();
    let put_in = meanings.len() + names / 2;
    let left = board.effort.map(|effort| effort.left(put_in));
    let most = most.min(left.unwrap_or(most));
    let count = |meanings: &[Vec<Meaning>]| {
        meanings
            .iter()
            .fold(1_usize, |product, all| product.saturating_mul(all.len()))
    };
    let narrowed = again && !alike && count(&meanings) > most;
    while count(&meanings) > most {
        // Of a pure number both are likely to the last.
        let longest = meanings
            .iter_mut()
            .zip(&pure)
            .enumerate()
            .max_by_key(|(_, (meanings, pure))| (meanings.len(), !**pure));
        let Some((place, (longest, _))) = longest else {
            break;
        };
        match longest.len() {
            0 | 1 => break,
            // What a number may stand for is kept longer than the number itself.
            2 => {
                let itself = longest.iter().rposition(|meaning| meaning.constant);
                longest.remove(itself.unwrap_or(1));
            }
            // The last is the number itself: keep it; of a pure number it stands before the less
            // likely, and is kept where something is divided by it.
            count => {
                let divides = divisors.get(place).is_some_and(|divides| *divides);
                let two = twofold.get(place).is_some_and(|two| *two);
                longest.remove(count - 1 - usize::from(!divides && !two));
            }
        }
    }
    if let Some(effort) = board.effort {
        effort.spend(count(&meanings), put_in);
    }
    let angles = angle_names(board, sides, wanted);
    let counts: Vec<usize> = meanings.iter().map(Vec::len).collect();
    let known = functions_of_names(board, sides);
    let grouped = in_groups.then(|| Grouped::of(sides, &slots, &counts));
    let of_groups = grouped.as_ref().map(|grouped| grouped.sides.iter());
    let reduced: Vec<&Tree> = of_groups.map_or_else(|| sides.to_vec(), Iterator::collect);
    let mut found: Vec<Lifted> = Vec::new();
    let mut seen = BTreeSet::new();
    let mut assignment = vec![0; meanings.len()];
    loop {
        let assigned = Assigned {
            slots: &slots,
            meanings: &meanings,
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
                .zip(&meanings)
                .filter(|(at, all)| all[**at].constant)
                .count();
            if seen.insert(function.map(f64::to_bits)) {
                found.push(Lifted {
                    function,
                    constants,
                });
            }
        }
        if !next(&mut assignment, &meanings) {
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

/// True for a number that counts as an angle in a side of this dimension.
fn is_angle(side: &Tree, place: &Place<'_>, wanted: Dimension) -> bool {
    place.in_angle || wanted == Dimension::ANGLE && !in_ratio(side, place.literal.index)
}

/// True for a number that two angles of this working have: 40° of the mast and 40° of the rope, or
/// a right one and a wrong one of hers.
fn is_two_angles(stock: &Stock, literal: &Literal) -> bool {
    let meanings = stock.meanings(literal, true, false);
    let mut angles = meanings.iter().filter(|meaning| !meaning.constant);
    let first = angles.next();
    first.is_some_and(|first| angles.any(|other| !agree(&other.function, &first.function)))
}

/// True for a literal that is all a sine, cosine or tangent is taken of.
fn is_alone_in_ratio(side: &Tree, index: usize) -> bool {
    let mut found = false;
    side.visit(&mut |tree| {
        if let Node::Call(function, inner) = &tree.node
            && function.takes_angle()
            && let Node::Literal(literal) = &inner.node
        {
            found |= literal.index == index;
        }
    });
    found
}

/// True for the last factor of a product: its unit may be meant for the product.
fn is_last_factor(side: &Tree, index: usize) -> bool {
    let mut found = false;
    side.visit(&mut |tree| {
        if let Node::Binary(Operator::Multiply | Operator::Divide, _, right) = &tree.node
            && let Node::Literal(literal) = &right.node
        {
            found |= literal.index == index;
        }
    });
    found
}

/// True for a literal by which something is divided, as in `4.2/2`.
fn is_divisor(side: &Tree, index: usize) -> bool {
    let mut found = false;
    side.visit(&mut |tree| {
        if let Node::Binary(Operator::Divide, _, right) = &tree.node
            && let Node::Literal(literal) = &right.node
        {
            found |= literal.index == index;
        }
    });
    found
}

/// True for a literal inside an inverse sine, cosine or tangent, where it is no angle.
fn in_ratio(side: &Tree, index: usize) -> bool {
    let mut found = false;
    side.visit(&mut |tree| {
        if let Node::Call(Function::ArcSine | Function::ArcCosine | Function::ArcTangent, inner) =
            &tree.node
        {
            found |= inner
                .literals()
                .iter()
                .any(|place| place.literal.index == index);
        }
    });
    found
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

/// The names that may stand for one of several quantities: these are added to `meanings`, once for
/// each name.
fn names_of_numbers(
    board: &Board<'_>,
    sides: &[&Tree],
    meanings: &mut Vec<Vec<Meaning>>,
) -> Vec<(NameId, usize)> {
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
        found.push((id, meanings.len()));
        meanings.push(functions.into_iter().map(meaning).collect());
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
