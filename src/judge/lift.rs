//! Lifting: what the typed numbers of an expression stand for.
//!
//! Each literal may stand for a given, a simple derived given, a pure number of the formula, the
//! value of a step, or an earlier value of the learner's own. With the literals lifted, the
//! expression is a function of the givens, and functions are compared at other choices of numbers
//! ([`crate::key::Sampling`]). So a right way is told from a value that agrees by chance.

use super::board::Board;
use super::grade::figures_meant;
use super::names::NameRole;
use crate::key::{Key, Samples, StepId};
use crate::problem::GivenId;
use crate::reading::{Function, Leaf, Literal, Mismatch, Node, Tree, Value, evaluate};
use crate::units::Dimension;
use std::f64::consts::{FRAC_PI_2, PI};

/// The most assignments of meanings to literals that are tried.
const MOST_ASSIGNMENTS: usize = 3000;
/// The most meanings tried for one literal.
const MOST_MEANINGS: usize = 7;

/// Numbers that are likelier to belong to a formula than to be rounded quantities.
const PURE: [f64; 8] = [0.5, 1.0, 2.0, 3.0, 4.0, 90.0, 180.0, 360.0];

/// What a literal may stand for.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Meaning {
    /// Its value at every choice of numbers, SI.
    function: Samples,
    dimension: Dimension,
    /// True if it stands for nothing but itself.
    constant: bool,
}

/// Values of all named and derived quantities that a literal is compared with.
pub(super) struct Stock {
    entries: Vec<(Samples, Dimension, f64, bool)>,
}

impl Stock {
    /// Everything that a literal of this working may stand for.
    pub(super) fn of(board: &Board<'_>) -> Stock {
        let mut stock = Stock {
            entries: Vec::new(),
        };
        for (index, given) in board.problem.givens().iter().enumerate() {
            if let Some(function) = board.name_function(NameRole::Given(GivenId(index))) {
                stock.add(function, given.dimension, function[0], true);
            }
        }
        if let Some(function) = board.name_function(NameRole::Gravity) {
            stock.add(function, Dimension::ACCELERATION, function[0], true);
            for accepted in board.other_gravities() {
                stock.add(function, Dimension::ACCELERATION, accepted, true);
            }
        }
        for (id, own) in board.standing {
            let dimension = dimension_of(board.key, *id);
            stock.add(own.function, dimension, own.value, false);
            if let Some((typed, _)) = own.typed {
                stock.add(own.function, dimension, typed, true);
            }
        }
        for own in board.own_names {
            stock.add(own.function, own.dimension, own.value, false);
        }
        for step in &board.key.steps {
            if let Some(function) = board.right(step.id)
                && step.id != StepId::MomentSum
                && !matches!(step.id, StepId::ForceSum(_))
            {
                stock.add(function, step.dimension, function[0], false);
                // A part that points the other way is often written by its size.
                if matches!(step.id, StepId::Reaction(..)) {
                    stock.add(
                        function.map(|value| -value),
                        step.dimension,
                        -function[0],
                        false,
                    );
                }
            }
        }
        stock.add_factor(board);
        stock.add_angles();
        stock
    }

    fn add(&mut self, function: Samples, dimension: Dimension, shown: f64, exact: bool) {
        let twice = self.entries.iter().any(|(known, kind, value, _)| {
            *kind == dimension && *value == shown && *known == function
        });
        if !twice {
            self.entries.push((function, dimension, shown, exact));
        }
    }

    /// The factor of the unknown in the moment balance, as learners multiply it out.
    fn add_factor(&mut self, board: &Board<'_>) {
        let factor = board
            .unknown()
            .and_then(|unknown| board.key.solved(unknown, StepId::MomentSum));
        if let Some((_, factor)) = factor {
            let pins = crate::key::Pins::new();
            let values: Vec<f64> = board
                .sampling
                .samples
                .iter()
                .filter_map(|sample| board.key.evaluate(&factor, sample, &pins))
                .collect();
            if let Ok(function) = Samples::try_from(values) {
                self.add(function, Dimension::LENGTH, function[0], false);
            }
        }
    }

    /// Complements, supplements and ratios of every angle.
    fn add_angles(&mut self) {
        let angles: Vec<Samples> = self
            .entries
            .iter()
            .filter(|(_, dimension, ..)| *dimension == Dimension::ANGLE)
            .map(|(function, ..)| *function)
            .collect();
        for angle in angles {
            for whole in [FRAC_PI_2, PI] {
                let other = angle.map(|angle| whole - angle);
                self.add(other, Dimension::ANGLE, other[0], false);
            }
            for ratio in [libm::sin, libm::cos, libm::tan] {
                let function = angle.map(ratio);
                self.add(function, Dimension::NUMBER, function[0], false);
            }
        }
    }

    /// True for a pure number, and for one that equals a given, a derived given such as L/2, or an
    /// own value: nothing was rounded there.
    pub(super) fn is_exact(&self, literal: &Literal, as_angle: bool) -> bool {
        let pure = literal.unit.is_none() && PURE.contains(&literal.value);
        pure || self.entries.iter().any(|(_, dimension, shown, _)| {
            (*dimension == Dimension::ANGLE) == as_angle
                && fits(literal, *shown, *dimension, true) == Some(0)
        })
    }

    /// True if a number with its unit is a quantity of this working.
    pub(super) fn knows(&self, literal: &Literal) -> bool {
        self.entries.iter().any(|(_, dimension, shown, exact)| {
            literal
                .unit
                .is_some_and(|unit| unit.dimension == *dimension)
                && fits(literal, *shown, *dimension, *exact).is_some()
        })
    }

    /// What a literal may stand for, the likeliest first; itself last.
    fn meanings(&self, literal: &Literal, as_angle: bool) -> Vec<Meaning> {
        let mut found: Vec<(u8, Meaning)> = Vec::new();
        for (function, dimension, shown, exact) in &self.entries {
            if (*dimension == Dimension::ANGLE) != as_angle {
                continue;
            }
            if literal
                .unit
                .is_some_and(|unit| unit.dimension != *dimension)
            {
                continue;
            }
            let Some(rank) = fits(literal, *shown, *dimension, *exact) else {
                continue;
            };
            let meaning = Meaning {
                function: *function,
                dimension: *dimension,
                constant: false,
            };
            if found.iter().all(|(_, known)| *known != meaning) {
                found.push((rank, meaning));
            }
        }
        // What equals a quantity is exact: it is no other one of its kind, rounded.
        let exact: Vec<Dimension> = found
            .iter()
            .filter(|(rank, _)| *rank == 0)
            .map(|(_, meaning)| meaning.dimension)
            .collect();
        found.retain(|(rank, meaning)| *rank == 0 || !exact.contains(&meaning.dimension));
        found.sort_by_key(|(rank, _)| *rank);
        found.truncate(MOST_MEANINGS);
        let value = Value::of_literal(literal);
        let itself = Meaning {
            function: [literal.value; 4],
            dimension: value.dimension,
            constant: true,
        };
        let mut meanings: Vec<Meaning> = found.into_iter().map(|(_, meaning)| meaning).collect();
        let pure = literal.unit.is_none() && PURE.contains(&literal.value);
        meanings.insert(
            if pure {
                meanings.len().min(1)
            } else {
                meanings.len()
            },
            itself,
        );
        meanings
    }
}

/// How well a literal fits a value: 0 exactly, 1 rounded, 2 with digits cut; `None` not at all.
fn fits(literal: &Literal, shown: f64, dimension: Dimension, exact: bool) -> Option<u8> {
    let bare_angle = dimension == Dimension::ANGLE && literal.unit.is_none();
    let scale = if bare_angle { PI / 180.0 } else { 1.0 };
    let written = figures_meant(literal.value, literal.written);
    let (value, place) = (literal.value * scale, written.last_place * scale);
    let apart = (value - shown).abs();
    if apart <= 1e-9 * shown.abs().max(1e-9) {
        return Some(0);
    }
    // A single figure says too little, except for a ratio (0.6 for a sine).
    let coarse = literal.written.significant < 2 && dimension != Dimension::NUMBER;
    if exact || coarse || place > 0.2 * shown.abs() {
        return None;
    }
    if apart <= 0.5 * place * (1.0 + 1e-6) {
        Some(1)
    } else if apart < place * (1.0 - 1e-6) && value.abs() < shown.abs() {
        Some(2)
    } else {
        None
    }
}

/// How far the value of an expression may be off because its numbers were rounded: the sum of the
/// changes that half a last unit of each makes. Numbers that stand for a given, and pure numbers,
/// are exact; numbers with fewer figures than `least` are left out.
pub(super) fn looseness(
    board: &Board<'_>,
    stock: &Stock,
    tree: &Tree,
    wanted: Dimension,
    least: u8,
) -> f64 {
    let value = |moved: Option<(usize, f64)>| {
        evaluate(tree, &mut |leaf| match leaf {
            Leaf::Literal(literal) => {
                let mut value = Value::of_literal(literal);
                if let Some((index, by)) = moved
                    && index == literal.index
                {
                    value.number += by;
                }
                value
            }
            name => plain_leaf(board, name),
        })
        .map(|value| value.number_as(wanted))
        .ok()
    };
    let Some(middle) = value(None) else {
        return 0.0;
    };
    tree.literals()
        .iter()
        .filter(|place| {
            !stock.is_exact(place.literal, place.in_angle)
                && place.literal.written.significant >= least
        })
        .filter_map(|place| {
            let written = figures_meant(place.literal.value, place.literal.written);
            let moved = value(Some((place.literal.index, 0.5 * written.last_place)))?;
            Some((moved - middle).abs())
        })
        .sum()
}

fn dimension_of(key: &Key, id: StepId) -> Dimension {
    key.step(id)
        .map_or(Dimension::NUMBER, |step| step.dimension)
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

/// Every function that the sides of a line can be lifted to, fewest unexplained numbers first.
/// `combine` makes one number of the sides' values at one choice (a value, a root).
pub(super) fn lift(
    board: &Board<'_>,
    stock: &Stock,
    sides: &[&Tree],
    wanted: Option<Dimension>,
    combine: &Combine<'_>,
) -> Vec<Lifted> {
    let mut meanings: Vec<Vec<Meaning>> = Vec::new();
    let mut slots: Vec<(usize, usize)> = Vec::new();
    let mut angles: Vec<(&Literal, usize)> = Vec::new();
    for side in sides {
        for place in side.literals() {
            let as_angle = place.in_angle
                || wanted == Some(Dimension::ANGLE) && !in_ratio(side, place.literal.index);
            // An angle that is typed twice means the same both times.
            let twice = angles.iter().find(|(known, _)| {
                as_angle && known.value == place.literal.value && known.unit == place.literal.unit
            });
            if let Some((_, meaning)) = twice {
                slots.push((place.literal.index, *meaning));
                continue;
            }
            slots.push((place.literal.index, meanings.len()));
            if as_angle {
                angles.push((place.literal, meanings.len()));
            }
            meanings.push(stock.meanings(place.literal, as_angle));
        }
    }
    let most = MOST_ASSIGNMENTS / (1 + meanings.len() / 10);
    let count = |meanings: &[Vec<Meaning>]| {
        meanings
            .iter()
            .fold(1_usize, |product, all| product.saturating_mul(all.len()))
    };
    while count(&meanings) > most {
        let Some(longest) = meanings.iter_mut().max_by_key(|meanings| meanings.len()) else {
            break;
        };
        if longest.len() < 2 {
            break;
        }
        // The last is the number itself: keep it.
        longest.remove(longest.len() - 2);
    }
    let mut found: Vec<Lifted> = Vec::new();
    let mut assignment = vec![0; meanings.len()];
    loop {
        let function = lifted_function(board, sides, &slots, &meanings, &assignment, combine);
        if let Some(function) = function {
            let constants = assignment
                .iter()
                .zip(&meanings)
                .filter(|(at, all)| all[**at].constant)
                .count();
            if found.iter().all(|known| known.function != function) {
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

fn lifted_function(
    board: &Board<'_>,
    sides: &[&Tree],
    slots: &[(usize, usize)],
    meanings: &[Vec<Meaning>],
    assignment: &[usize],
    combine: &Combine<'_>,
) -> Option<Samples> {
    let mut function: Samples = [0.0; 4];
    for (choice, value) in function.iter_mut().enumerate() {
        let mut leaf = |leaf: Leaf<'_>| match leaf {
            Leaf::Literal(literal) => match slots.iter().find(|(index, _)| *index == literal.index)
            {
                Some((_, slot)) => {
                    let meaning = &meanings[*slot][assignment[*slot]];
                    if meaning.constant {
                        Value::of_literal(literal)
                    } else {
                        Value::of(meaning.function[choice], meaning.dimension)
                    }
                }
                None => Value::of_literal(literal),
            },
            Leaf::Name(id) => {
                let role = board.names.role(id);
                let number = role
                    .and_then(|role| board.name_function(role))
                    .map(|function| function[choice]);
                board.value_of_name(id, number.unwrap_or(f64::NAN))
            }
        };
        *value = combine(sides, choice, &mut leaf).filter(|value| value.is_finite())?;
    }
    Some(function)
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
