//! What a line says of numbers that are known, whatever it is meant for: of a free working it is
//! asked only whether that is true.

use super::Stock;
use super::board::Board;
use super::identity::{is_same, is_true_relation};
use super::lift::{Combine, lift_as, plain_value};
use super::links::{is_equal, is_equal_as_typed};
use super::names::NameRole;
use super::open::{is_known, is_known_with_weights};
use super::printed_units::in_printed_unit;
use super::unproved::is_of_names;
use crate::key::StepId;
use crate::reading::{Leaf, Node, Operator, Place, Reading, Tree, Value, evaluate, read};
use crate::units::Dimension;

/// A sine or cosine smaller than this is nothing: 90° in radians is rounded.
const NOTHING: f64 = 1e-12;

/// Kinds of what is worked out on the way, those that are likelier first.
const KINDS: [Dimension; 4] = [
    Dimension::FORCE,
    Dimension::MOMENT,
    Dimension::LENGTH,
    Dimension::MASS,
];

/// What a line with true links between known numbers is made of.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum KnownTruth {
    /// Names of the problem stand in it, so that it says something of the problem.
    OfNames,
    /// Numbers alone, or names of the learner's own: it is true, whatever it is of.
    OfNumbers,
    /// A sum of numbers alone: nothing says what it is meant for.
    Sum,
}

/// Whether a line is a relation between known numbers that is true within what was rounded; `None`
/// where it is not, where a name in it is not found yet, and for the value of a single name.
pub fn known_truth(board: &Board<'_>, line: &str) -> Option<KnownTruth> {
    let readings = read(line, board.names.vocabulary()).ok()?;
    let stock = Stock::of(board);
    readings.iter().find_map(|reading| {
        let printed = || in_printed_unit(board, reading);
        let in_printed = || {
            printed()
                .iter()
                .find_map(|way| truth_of(board, &stock, way))
        };
        truth_of(board, &stock, reading).or_else(in_printed)
    })
}

/// What a form with names in it is, and the unit of another kind behind its number, where that
/// agrees: `mb·9.8 = 509.6 kg`. `None` where a number in it may be anything.
pub fn unit_of_another_kind(board: &Board<'_>, line: &str) -> Option<(Dimension, Dimension)> {
    let readings = read(line, board.names.vocabulary()).ok()?;
    let reading = readings.first().filter(|one| one.defines.is_none())?;
    let [form, last] = reading.sides.as_slice() else {
        return None;
    };
    let Node::Literal(literal) = &last.node else {
        return None;
    };
    let found = literal.unit?.dimension;
    let stock = Stock::of(board);
    let known = is_known(board, form) || is_known_with_weights(board, form);
    let plain = matches!(form.node, Node::Name(_)) || form.names().is_empty();
    if plain || !known || !is_equal(board, &stock, &[form, last]) {
        return None;
    }
    let constants = |kind: Dimension| {
        let combine = |sides: &[&Tree], _: usize, leaf: &mut dyn FnMut(Leaf<'_>) -> Value| {
            let mut sure = |found: Leaf<'_>| {
                let value = leaf(found);
                // What may be a quantity of the problem is that.
                let quantity = matches!(found, Leaf::Literal(literal) if !stock.is_pure(literal));
                match value.bare {
                    true if quantity => Value::of(f64::NAN, Dimension::NUMBER),
                    true => Value::of(value.number, Dimension::NUMBER),
                    false => value,
                }
            };
            let value = evaluate(sides[0], &mut sure).ok()?;
            (value.dimension == kind).then_some(value.number)
        };
        let each = (&combine as &Combine<'_>, false);
        let forms = lift_as(board, &stock, &[form], Some(kind), each);
        forms.first().map(|form| form.constants)
    };
    let meant = |place: &Place<'_>| {
        let meanings = stock.meanings(place.literal, place.in_angle, false);
        let is_meant = meanings.iter().any(|meaning| !meaning.constant);
        place.literal.unit.is_some() || stock.is_pure(place.literal) || is_meant
    };
    // A name of her own for a bare number may be anything, too.
    let mut names = form.names().into_iter();
    let sure = names.all(|(id, _)| !board.value_of_name(id, 1.0).bare);
    if !sure || !form.literals().iter().all(meant) || constants(found).is_some() {
        return None;
    }
    let kinds = KINDS.into_iter();
    let kinds = kinds.filter_map(|kind| Some((constants(kind)?, kind)));
    let (_, wanted) = kinds.min_by_key(|(constants, _)| *constants)?;
    Some((wanted, found))
}

/// The same of a reading.
pub(super) fn truth_of(board: &Board<'_>, stock: &Stock, reading: &Reading) -> Option<KnownTruth> {
    let sides: Vec<&Tree> = reading.sides.iter().collect();
    let leaf = |side: &&Tree| matches!(side.node, Node::Literal(_) | Node::Name(_));
    let name = |side: &&Tree| matches!(side.node, Node::Name(_));
    let relation = sides.len() > 1 && reading.defines.is_none();
    if !relation || sides.iter().all(leaf) || sides.iter().any(name) {
        return None;
    }
    let known = |side: &&Tree| {
        let of_givens = || is_of_givens(board, side);
        is_known(board, side) || is_known_with_weights(board, side) || of_givens()
    };
    let known = sides
        .iter()
        .all(|side| known(side) || vanishes(board, side));
    // Names alone leave no room for rounding, and none for chance.
    let in_names = is_of_names(stock, &sides);
    let links = |pair: &[&Tree]| match in_names {
        true => {
            let both = || pair.iter().all(|side| vanishes(board, side));
            is_same(pair[0], pair[1]) || is_true_relation(board, stock, pair) || both()
        }
        false => is_of_one_kind(board, pair) && is_equal(board, stock, pair),
    };
    let links = sides.windows(2).all(links);
    if !known || !links {
        return None;
    }
    let names = sides.iter().flat_map(|side| side.names());
    let roles: Vec<Option<NameRole>> = names.map(|(id, _)| board.names.role(id)).collect();
    // Beside a name a number that is no quantity of this working is what was typed.
    if !in_names && !roles.is_empty() && !is_equal_as_typed(board, stock, &sides[..2]) {
        return None;
    }
    let own = |role: &Option<NameRole>| matches!(role, None | Some(NameRole::Own(_)));
    if !roles.is_empty() {
        return Some(match roles.iter().any(own) {
            true => KnownTruth::OfNumbers,
            false => KnownTruth::OfNames,
        });
    }
    // Of numbers that nobody knows a true product tells nothing.
    let worked = &sides[..sides.len() - 1];
    let literals = worked.iter().flat_map(|side| side.literals());
    let mut known = literals.map(|place| {
        let meanings = stock.meanings(place.literal, place.in_angle, false);
        stock.is_pure(place.literal) || meanings.iter().any(|meaning| !meaning.constant)
    });
    // A true sum says nothing of the problem, whatever its numbers are.
    match sides.iter().all(|side| is_sum(side)) {
        true => Some(KnownTruth::Sum),
        false => known.all(|known| known).then_some(KnownTruth::OfNumbers),
    }
}

/// True if every name in an expression is given, found, or follows from the givens before any
/// balance.
fn is_of_givens(board: &Board<'_>, side: &Tree) -> bool {
    let names = side.names().into_iter();
    let mut roles = names.map(|(id, _)| board.names.role(id));
    roles.all(|role| match role {
        Some(NameRole::Step(step)) => {
            let found = board.standing.contains_key(&step);
            let formula = match step.is_general() {
                true => board.key.formula(step).is_some(),
                // What a weight is made into: `Wb⊥·3.3 = 984 N m`.
                false => matches!(step, StepId::Across(_) | StepId::Moment(_)),
            };
            let open = step.is_unknown() || step.is_balance();
            found || formula && !open && board.key.open_in(step).is_empty()
        }
        Some(NameRole::Own(_)) | None => false,
        Some(_) => true,
    })
}

/// True for nothing, and for what is multiplied by a sine or cosine of numbers that is nothing.
fn vanishes(board: &Board<'_>, tree: &Tree) -> bool {
    match &tree.node {
        Node::Literal(literal) => literal.value == 0.0,
        Node::Name(_) => false,
        Node::Negative(inner) => vanishes(board, inner),
        Node::Call(..) => {
            let value = plain_value(board, tree).map(|value| value.number.abs());
            tree.names().is_empty() && value.is_ok_and(|value| value < NOTHING)
        }
        Node::Binary(Operator::Multiply, left, right) => {
            vanishes(board, left) || vanishes(board, right)
        }
        Node::Binary(Operator::Divide, left, _) => vanishes(board, left),
        Node::Binary(Operator::Add | Operator::Subtract, left, right) => {
            vanishes(board, left) && vanishes(board, right)
        }
        Node::Binary(Operator::Power, ..) => false,
    }
}

/// True for numbers that are only added to each other or taken from each other.
fn is_sum(tree: &Tree) -> bool {
    match &tree.node {
        Node::Literal(_) => true,
        Node::Negative(inner) => is_sum(inner),
        Node::Binary(Operator::Add | Operator::Subtract, left, right) => {
            is_sum(left) && is_sum(right)
        }
        _ => false,
    }
}

/// True where two sides may be of one kind, as their units and names tell.
fn is_of_one_kind(board: &Board<'_>, pair: &[&Tree]) -> bool {
    let (Ok(one), Ok(other)) = (plain_value(board, pair[0]), plain_value(board, pair[1])) else {
        return false;
    };
    one.bare || other.bare || one.may_be(other.dimension) || other.may_be(one.dimension)
}

/// True if every side of a chain is the value of the one before it, a name before the first apart.
pub fn links_hold(board: &Board<'_>, line: &str) -> bool {
    let Ok(readings) = read(line, board.names.vocabulary()) else {
        return false;
    };
    let stock = Stock::of(board);
    readings.iter().any(|reading| {
        let sides: Vec<&Tree> = reading.sides.iter().collect();
        let named = matches!(sides.first().map(|side| &side.node), Some(Node::Name(_)));
        let chain = &sides[usize::from(named)..];
        let mut links = chain.windows(2);
        links.all(|pair| is_equal(board, &stock, pair))
    })
}

/// A form of numbers alone and the number to which it does not come, both as typed.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct WrongSum {
    /// The form: `40 + 25`.
    pub form: String,
    /// The number behind it, without a unit: `75`.
    pub typed: String,
}

/// What a line works out wrongly from numbers alone, a name before the first side apart; `None`
/// where all of it is right.
pub fn worked_out_wrongly(board: &Board<'_>, line: &str) -> Option<WrongSum> {
    let readings = read(line, board.names.vocabulary()).ok()?;
    let reading = readings.first()?;
    let sides: Vec<&Tree> = reading.sides.iter().collect();
    let named = matches!(sides.first()?.node, Node::Name(_));
    let [form, behind @ ..] = &sides[usize::from(named)..] else {
        return None;
    };
    let last = behind.last()?;
    let Node::Literal(literal) = &last.node else {
        return None;
    };
    let leaf = matches!(form.node, Node::Literal(_) | Node::Name(_));
    let pure = |side: &&Tree| {
        let names = side.names().into_iter();
        let mut roles = names.map(|(id, _)| board.names.role(id));
        roles.all(|role| matches!(role, Some(NameRole::Given(_) | NameRole::Gravity)))
    };
    let off = !is_equal(board, &Stock::of(board), &[form, last]);
    if leaf || !sides[usize::from(named)..].iter().all(pure) || !off || literal.value == 0.0 {
        return None;
    }
    let text = |tree: &Tree| line.get(tree.span.start..tree.span.end);
    let digits = |c: char| !(c.is_ascii_digit() || c == '.' || c == ',');
    let typed = text(last)?.split(digits).next()?;
    Some(WrongSum {
        form: text(form)?.trim().to_owned(),
        typed: typed.to_owned(),
    })
    .filter(|sum| !sum.typed.is_empty())
}
