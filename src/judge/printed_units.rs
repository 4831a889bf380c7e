//! Numbers without units in a general problem whose forces are printed in kilonewtons: whoever
//! works in them throughout types `Ay = 18` and `Q = 4*3 = 12 kN`.

use super::board::Board;
use super::lift::plain_value;
use super::names::NameRole;
use super::stock::Stock;
use super::{Judgement, Remark, Truth, judge_reading};
use crate::key::StepId;
use crate::reading::{Leaf, Literal, Node, Operator, Reading, Tree, Value, evaluate};
use crate::units::{Dimension, Unit, find_unit, unit_for};

/// How many newtons a unit of the printed forces is, where all of them are printed in the same
/// multiple; weights beside them may be counted in it, too.
pub(super) fn printed_force(board: &Board<'_>) -> Option<f64> {
    board.key.general.as_ref()?;
    let mut factors = Vec::new();
    for given in board.problem.givens() {
        match given.dimension {
            Dimension::FORCE | Dimension::MOMENT | Dimension::FORCE_A_LENGTH => {
                let unit = given.written.split_once(' ').map_or("", |(_, unit)| unit);
                factors.push(find_unit(unit)?.factor);
            }
            _ => {}
        }
    }
    let first = *factors.first()?;
    (first != 1.0 && factors.iter().all(|factor| *factor == first)).then_some(first)
}

/// A value whose newtons are counted in a multiple of them.
pub(super) fn counted_in(unit: f64, value: Value) -> Value {
    let of_forces = matches!(
        value.dimension,
        Dimension::FORCE | Dimension::MOMENT | Dimension::FORCE_A_LENGTH
    );
    let number = match of_forces {
        true => value.number / unit,
        false => value.number,
    };
    Value { number, ..value }
}

/// What the root of a wrong balance in bare numbers counts for, where forces are printed in a
/// multiple of the newton: `12·3 = B·3` gives 12 kN. Of the two the one nearer in size to the right
/// value is meant; a balance with units or other names in it has its root in newtons.
pub(super) fn factor_of_root(
    board: &Board<'_>,
    unknown: StepId,
    sides: &[&Tree],
    root: f64,
) -> f64 {
    let of_unknown = |id| board.names.role(id) == Some(NameRole::Step(unknown));
    let bare = sides.iter().all(|side| {
        let places = side.literals();
        side.names().iter().all(|(id, _)| of_unknown(*id))
            && places.iter().all(|place| place.literal.unit.is_none())
    });
    let kind = board.key.step(unknown).map(|step| step.dimension);
    let force = matches!(kind, Some(Dimension::FORCE | Dimension::MOMENT));
    let factor = printed_force(board).filter(|_| bare && force);
    let right = board.right(unknown).map_or(0.0, |right| right[0].abs());
    match factor {
        Some(factor) if root != 0.0 && root * root * factor < right * right => factor,
        _ => 1.0,
    }
}

/// A reading with its bare numbers in the printed unit of the forces named beside them: those of
/// sides without names, and those that are added to names. Empty where there are none.
pub(super) fn in_printed_unit(board: &Board<'_>, reading: &Reading) -> Vec<Reading> {
    let factor = printed_force(board).filter(|_| reading.defines.is_none());
    let named = reading.sides.iter().any(|side| !side.names().is_empty());
    let Some(factor) = factor.filter(|_| named) else {
        return Vec::new();
    };
    // `Ay/3` is a force, or with 3 of metres something else.
    let kinds = match named_kind(board, reading) {
        Some(kind) => vec![kind],
        None => vec![Dimension::FORCE, Dimension::MOMENT],
    };
    let units = kinds
        .into_iter()
        .filter_map(|kind| multiple_of(kind, factor));
    let ways = units.filter_map(|unit| both_in_unit(reading, unit));
    ways.flat_map(|(sides, terms)| [sides, terms]).collect()
}

/// A reading with its sides of bare numbers in a unit, and with the terms beside names so, too.
fn both_in_unit(reading: &Reading, unit: &'static Unit) -> Option<(Reading, Reading)> {
    let mut index = reading.sides.iter().flat_map(Tree::literals).count() + 100;
    let (mut told, mut terms) = (reading.clone(), reading.clone());
    for (side, each) in told.sides.iter_mut().zip(&mut terms.sides) {
        if side.names().is_empty() {
            *side = in_unit(side, unit, &mut index)?;
            *each = side.clone();
        } else {
            *each = terms_in_unit(each, unit, &mut index)?;
        }
    }
    Some((told, terms))
}

/// Judges a line; where it does not hold and its numbers are bare, its value counts in the printed
/// unit, if it is nearer to the right one so: her `B = 8` are 8 kN.
pub(super) fn judge_readings(
    board: &Board<'_>,
    asked: StepId,
    readings: &[Reading],
    line: (&str, usize),
) -> Judgement {
    let found = super::judge_readings(board, asked, readings, line);
    let bare = |reading: &&Reading| {
        let places = reading.sides.iter().flat_map(Tree::literals);
        let mut forces = places.filter(|place| !place.in_angle);
        reading.defines.is_none() && forces.all(|place| place.literal.unit.is_none())
    };
    let printed = printed_force(board).zip(readings.first().filter(bare));
    let Some((factor, reading)) = printed else {
        return found;
    };
    let unseen = found.truth == Truth::Noted && found.remarks.contains(&Remark::NotSeen);
    if unseen && is_next_to_nothing(board, reading, factor) {
        let refused = as_printed(board, asked, (reading, factor), line)
            .find(|one| one.truth == Truth::DoesNotHold);
        let layout = found.layout.clone();
        return refused.map_or(found, |refused| Judgement { layout, ..refused });
    }
    let valued = found.evidence.number.is_some() && !found.target.is_balance();
    let refused = found.truth == Truth::DoesNotHold && found.evidence.aside.is_none();
    let right = board.right(found.target).filter(|_| refused && valued);
    let Some(right) = right else {
        return found;
    };
    let apart = |judgement: &Judgement| {
        let number = judgement.evidence.number.map(|number| number.value);
        number.map_or(f64::INFINITY, |number| {
            (number.abs() / right[0].abs()).ln().abs()
        })
    };
    let nearer = as_printed(board, asked, (reading, factor), line)
        .filter(|one| one.target == found.target && one.truth == Truth::DoesNotHold)
        .find(|one| apart(one) < apart(&found));
    let Some(nearer) = nearer else {
        return found;
    };
    let mut judgement = found;
    judgement.value = nearer.value;
    judgement.evidence.number = nearer.evidence.number;
    judgement.evidence.ended = nearer.evidence.ended;
    judgement
}

/// A line with its bare numbers in the printed unit, judged.
fn as_printed<'a>(
    board: &'a Board<'_>,
    asked: StepId,
    (reading, factor): (&'a Reading, f64),
    line: (&'a str, usize),
) -> impl Iterator<Item = Judgement> + 'a {
    let target = target(board, asked, reading);
    let kind = board.key.step(target).map(|step| step.dimension);
    let kinds = named_kind(board, reading).or(kind);
    let unit = kinds.and_then(|kind| multiple_of(kind, factor));
    let ways = unit.and_then(|unit| both_in_unit(reading, unit));
    let ways = ways.into_iter().flat_map(|(sides, terms)| [terms, sides]);
    ways.map(move |way| judge_reading(board, &Stock::of(board), asked, &way, line))
}

/// True for bare numbers that in newtons are next to nothing beside the forces that are named with
/// them: who types `MA + B·7 = 50` means kilonewtons.
fn is_next_to_nothing(board: &Board<'_>, reading: &Reading, factor: f64) -> bool {
    let named = reading.sides.iter().filter(|side| !side.names().is_empty());
    let largest = named.filter_map(|side| largest_term(board, side));
    let largest = largest.fold(0.0_f64, f64::max);
    let numbers = reading.sides.iter().filter(|side| side.names().is_empty());
    let mut numbers = numbers.filter_map(|side| plain_value(board, side).ok());
    let small = |number: f64| number != 0.0 && number * number * factor < largest * largest;
    numbers.any(|value| small(value.number))
}

/// What a form comes to at the right values; `None` where it has none.
pub(super) fn at_right_values(board: &Board<'_>, tree: &Tree) -> Option<f64> {
    let mut leaf = |leaf: Leaf<'_>| match leaf {
        Leaf::Literal(literal) => Value::of_literal(literal),
        Leaf::Name(id) => {
            let role = board.names.role(id);
            let number = match role {
                Some(NameRole::Step(step)) => board.right(step).map(|right| right[0]),
                role => role.and_then(|role| board.name_value(role)),
            };
            board.value_of_name(id, number.unwrap_or(f64::NAN))
        }
    };
    let value = evaluate(tree, &mut leaf).ok()?;
    value.number.is_finite().then_some(value.number)
}

/// The largest term of a sum at the right values.
fn largest_term(board: &Board<'_>, tree: &Tree) -> Option<f64> {
    match &tree.node {
        Node::Binary(Operator::Add | Operator::Subtract, left, right) => {
            let both = [largest_term(board, left), largest_term(board, right)];
            both.into_iter().flatten().reduce(f64::max)
        }
        Node::Negative(inner) => largest_term(board, inner),
        _ => at_right_values(board, tree).map(f64::abs),
    }
}

/// Judges a line that does not hold as it stands with its bare numbers in the printed unit; `None`
/// where that makes nothing hold.
pub(super) fn judge(
    board: &Board<'_>,
    stock: &Stock,
    asked: StepId,
    reading: &Reading,
    line: (&str, usize),
    known: &Judgement,
) -> Option<Judgement> {
    if !known.is_unseen() || reading.defines.is_some() {
        return None;
    }
    let factor = printed_force(board)?;
    let target = target(board, asked, reading);
    let asked_kind = board.key.step(target)?.dimension;
    // Without a name in it a line may speak of moments where a force is asked.
    let kinds = match named_kind(board, reading) {
        Some(kind) => vec![kind],
        None => vec![asked_kind, Dimension::MOMENT, Dimension::FORCE],
    };
    kinds
        .into_iter()
        .filter_map(|kind| multiple_of(kind, factor))
        .find_map(|unit| in_multiple(board, (stock, factor, unit), (asked, target), reading, line))
}

/// Judges a line with its bare numbers in this unit; `None` where it does not stand so.
fn in_multiple(
    board: &Board<'_>,
    (stock, factor, unit): (&Stock, f64, &'static Unit),
    (asked, target): (StepId, StepId),
    reading: &Reading,
    line: (&str, usize),
) -> Option<Judgement> {
    let (told, terms) = both_in_unit(reading, unit)?;
    let counted = stock.counted_in(1.0 / factor, 1.0);
    // A number alone has its unit already.
    let counted_so: Vec<Judgement> = [(&told, &counted), (&told, stock), (&terms, stock)]
        .into_iter()
        .map(|(told, stock)| judge_reading(board, stock, asked, told, line))
        .collect();
    // What comes out right though nobody sees how is no more wrong in kilonewtons than in newtons.
    let unseen = |judgement: &&Judgement| {
        judgement.truth == Truth::Noted && judgement.remarks.contains(&Remark::NotSeen)
    };
    let mut found = counted_so.iter().find(|judgement| judgement.stands());
    found = found.or_else(|| counted_so.iter().find(unseen));
    found = found.or_else(|| counted_so.iter().find(|found| found.evidence.rounded_hard));
    let mut judgement = found?.clone();
    let alone = reading.sides.last().is_some_and(|side| {
        let number = matches!(side.node, Node::Literal(_) | Node::Negative(_));
        let places = side.literals();
        number && places.iter().all(|place| place.literal.unit.is_none())
    });
    if alone && judgement.target == target {
        judgement.remarks.push(Remark::PrintedUnit(unit.symbol));
    }
    Some(judgement)
}

/// What the sides with names in them are: of `12*1.5 = MA + Gy*4` moments, whatever is asked.
fn named_kind(board: &Board<'_>, reading: &Reading) -> Option<Dimension> {
    let named = reading.sides.iter().filter(|side| !side.names().is_empty());
    let mut values = named.filter_map(|side| plain_value(board, side).ok());
    let sure = values.find(|value| !value.bare && !value.uncertain)?;
    Some(sure.dimension)
}

/// The step whose value a line tells: by its name, or the one asked.
fn target(board: &Board<'_>, asked: StepId, reading: &Reading) -> StepId {
    let named = reading.sides.iter().find_map(|side| match side.node {
        Node::Name(id) => board.names.role(id),
        _ => None,
    });
    match named {
        Some(NameRole::Step(step)) => step,
        _ => board.key.gives(asked).unwrap_or(asked),
    }
}

/// This multiple of the unit of a force or moment.
fn multiple_of(dimension: Dimension, factor: f64) -> Option<&'static Unit> {
    let symbol = unit_for(dimension)?.symbol;
    let force = matches!(dimension, Dimension::FORCE | Dimension::MOMENT);
    let unit = find_unit(&format!("k{symbol}")).filter(|_| force)?;
    (unit.factor == factor).then_some(unit)
}

/// A side of bare numbers in a unit; a unit that stands behind its last number is meant for all.
/// `None` where other numbers have units of their own.
pub(super) fn in_unit(side: &Tree, unit: &'static Unit, index: &mut usize) -> Option<Tree> {
    let mut bare = side.clone();
    if let Node::Binary(Operator::Multiply, whole, last) = &side.node
        && let Node::Literal(literal) = &last.node
        && literal.unit_alone
        && literal.unit == Some(unit)
    {
        bare = (**whole).clone();
    } else if let Some(last) = last_number(&mut bare)
        && last.unit == Some(unit)
    {
        last.value = last.typed;
        last.written.last_place /= unit.factor;
        last.unit = None;
    }
    let places = bare.literals();
    if !places
        .iter()
        .all(|place| place.literal.unit.is_none() || place.in_angle)
    {
        return None;
    }
    if let Some(alone) = literal_alone(&mut bare) {
        alone.value *= unit.factor;
        alone.written.last_place *= unit.factor;
        alone.unit = Some(unit);
        return Some(bare);
    }
    *index += 1;
    let last = Tree {
        node: Node::Literal(Literal::unit_alone(*index, unit)),
        span: side.span,
    };
    Some(Tree {
        node: Node::Binary(Operator::Multiply, Box::new(bare), Box::new(last)),
        span: side.span,
    })
}

/// A side with its terms of bare numbers in a unit: the 12 of `12 + Gy`.
fn terms_in_unit(side: &Tree, unit: &'static Unit, index: &mut usize) -> Option<Tree> {
    if side.names().is_empty() {
        return in_unit(side, unit, index);
    }
    let node = match &side.node {
        Node::Binary(operator @ (Operator::Add | Operator::Subtract), left, right) => Node::Binary(
            *operator,
            Box::new(terms_in_unit(left, unit, index)?),
            Box::new(terms_in_unit(right, unit, index)?),
        ),
        node => node.clone(),
    };
    Some(Tree {
        node,
        span: side.span,
    })
}

/// The last number of a side.
fn last_number(tree: &mut Tree) -> Option<&mut Literal> {
    match &mut tree.node {
        Node::Literal(literal) => Some(literal),
        Node::Name(_) | Node::Call(..) => None,
        Node::Negative(inner) => last_number(inner),
        Node::Binary(_, _, right) => last_number(right),
    }
}

/// The number that a side is, whichever sign it has.
fn literal_alone(tree: &mut Tree) -> Option<&mut Literal> {
    match &mut tree.node {
        Node::Literal(literal) => Some(literal),
        Node::Negative(inner) => literal_alone(inner),
        _ => None,
    }
}
