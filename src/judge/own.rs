//! What is the learner's own: the names that she defines, and wrong values that she goes on with.

mod anew;
mod fresh;
mod relation;
mod restated;
mod solved;
mod stray;
mod true_balance;
mod typed;

use super::board::{Board, Memo, Own, OwnName};
use super::chain::is_to_two_figures;
use super::equation;
use super::expression::scaled;
use super::followed::{follows_own, nearest_inputs};
use super::lift::{Lifted, lifted, plain_leaf, plain_value};
use super::links::with_pi_as_number;
use super::names::NameRole;
use super::open::{is_alias, is_known, is_known_with_weights};
use super::other::other_step;
use super::points::told_along;
use super::root::share_of;
use super::sense::{settle_sense, signed_as};
use super::stock::Stock;
use super::{Judgement, Truth};
use crate::key::{Part, Samples, StepId, agree};
use crate::reading::{Leaf, Literal, NameId, Node, Reading, Tree, Value, evaluate};
use crate::units::{Dimension, unit_of_figure};

pub(super) use anew::told_anew;
pub(super) use fresh::accepted_of;
pub use relation::{follows_relation, is_of_a_kind};
pub use restated::restates;
pub use solved::{says_as_own, solves_own};

/// The most quantities beside the likeliest that a name set to a number is tried as.
const MOST_OTHERS: usize = 3;

/// The name of the learner's own that a line defines.
pub(super) fn own_name(
    board: &Board<'_>,
    stock: &Stock,
    name: &str,
    sides: &[&Tree],
    judgement: &Judgement,
) -> Option<(String, OwnName)> {
    let first = sides.first()?;
    let of_open_weight = !is_known(board, first);
    if of_open_weight && !is_known_with_weights(board, first) {
        return None;
    }
    let value = plain_value(board, first).ok()?;
    // She goes on with what she rounded it to.
    let behind = sides.get(1..).and_then(<[&Tree]>::last);
    let behind = behind.filter(|last| matches!(last.node, Node::Literal(_)));
    let behind = behind.and_then(|last| plain_value(board, last).ok());
    let coarse = behind.filter(|last| is_to_two_figures(value.number, last.number));
    let kept = |full: f64| coarse.map_or(full, |last| last.number);
    // `3·π = 9.42 m`: what is said behind it is no angle.
    let of_pi = || with_pi_as_number(board, first).filter(|pure| pure.bare);
    let told = behind.filter(|last| last.dimension != Dimension::ANGLE);
    let value = match told.filter(|_| value.dimension == Dimension::ANGLE && !value.bare) {
        Some(_) => of_pi().unwrap_or(value),
        None if behind.is_none() && is_length_of_arc(name, first) => of_pi().unwrap_or(value),
        None => value,
    };
    let own = match judgement.values.first() {
        // A name of hers has the sign that she gave it.
        Some((_, own)) => OwnName {
            value: kept(own.value.abs().copysign(value.number)),
            function: signed_as(own.function, value.number),
            dimension: board.key.step(judgement.target)?.dimension,
            of_unknown: false,
            of_open_weight: false,
            bare: false,
            degrees: None,
            others: Vec::new(),
        },
        None => {
            let value = as_weight(board, stock, first, value);
            let value = as_moment(name, first, behind, value);
            let own = defined(board, stock, first, value);
            // Numbers alone are what is said behind them.
            let unit = behind.filter(|last| own.bare && !last.bare);
            let own = match unit.is_some_and(|last| last.dimension == Dimension::ANGLE) {
                true => in_degrees(own),
                false => own,
            };
            OwnName {
                value: kept(own.value),
                dimension: unit.map_or(own.dimension, |last| last.dimension),
                bare: own.bare && unit.is_none(),
                ..own
            }
        }
    };
    let own = OwnName {
        of_open_weight,
        ..own
    };
    Some((name.to_owned(), own))
}

/// `M1 = Wb·1.9 = 968 N m`: a force times a distance without its unit, where the unit behind it or
/// the name says so.
fn as_moment(name: &str, form: &Tree, behind: Option<Value>, value: Value) -> Value {
    let said = match behind {
        Some(last) => !last.bare && last.dimension == Dimension::MOMENT,
        None => name.starts_with(['M', '\u{41c}']),
    };
    let places = form.literals();
    let mut bare = places.iter().map(|place| place.literal.unit.is_none());
    match said && !value.bare && value.dimension == Dimension::FORCE && bare.any(|bare| bare) {
        true => Value {
            dimension: Dimension::MOMENT,
            ..value
        },
        false => value,
    }
}

/// `q = 80 − 65 = 15°`: numbers of degrees, as the angle that they are.
fn in_degrees(own: OwnName) -> OwnName {
    let degrees = own.degrees.unwrap_or(own.function);
    OwnName {
        value: own.value.to_radians(),
        function: degrees.map(f64::to_radians),
        others: Vec::new(),
        ..own
    }
}

/// `h = π·0.5`: π times what is no whole number, under a letter that is no usual one of an angle.
fn is_length_of_arc(name: &str, form: &Tree) -> bool {
    let latin = name.chars().count() <= 2 && name.is_ascii();
    let places = form.literals();
    let part = |value: f64| value.fract() != 0.0;
    let pi = |literal: &Literal| literal.digits == "π";
    let mut others = places.iter().filter(|place| !pi(place.literal));
    latin && others.any(|place| part(place.literal.value))
}

/// How a line was read. A name of her own stands as she typed it: the G of `G = 412` is no g.
pub(super) fn layout(board: &Board<'_>, reading: &Reading, judgement: &Judgement) -> String {
    let layout = reading.layout(board.names.vocabulary());
    match (&judgement.names, layout.split_once(" = ")) {
        (Some((name, _)), Some((_, rest)))
            if reading.defines.is_none() && matches!(reading.sides[0].node, Node::Name(_)) =>
        {
            format!("{name} = {rest}")
        }
        _ => layout,
    }
}

/// The value that stands when a learner goes on with a wrong line; of a balance, the unknown that
/// it gives.
pub fn own_of_wrong(
    board: &Board<'_>,
    judgement: &Judgement,
    line: usize,
    function: Option<Samples>,
) -> Option<Own> {
    let number = judgement.evidence.number?;
    let balance = judgement.target.is_balance();
    let of = if balance {
        board.key.gives(judgement.target)?
    } else {
        judgement.target
    };
    // What a mistake gives, unless the number is further from it than rounding: then as typed.
    let third = unit_of_figure(number.value, 3);
    let rounded = |function: &Samples| (function[0] - number.value).abs() <= third;
    let function = function.filter(|function| balance || rounded(function));
    // Her form, where she may write it again: 19·9.8 with a mass that was misread, or the unknown
    // as her balance gives it.
    let exactly = |form: &Samples| (form[0] - number.value).abs() <= 1e-6 * number.value.abs();
    let mut forms = judgement.evidence.lifted.iter().copied();
    let form = match balance {
        true => forms.find(rounded),
        false => forms
            .next()
            .filter(|form| !judgement.evidence.alone && exactly(form)),
    };
    let function = function.or(form);
    // What she goes on with is the number she wrote last.
    let last = judgement.evidence.ended.unwrap_or(number);
    let mut own = Own {
        line,
        value: number.value,
        typed: (!balance).then_some((last.value, last.written)),
        function: function.unwrap_or_else(|| scaled(board, of, number.value)),
        right: false,
        against: false,
        relation: false,
    };
    // A wrong turn may give a pull that pushes, and a strut may push where the key lets it pull: she
    // goes on with its size, in the sense in which it acts.
    if let Some(right) = board.right(of).filter(|_| balance) {
        settle_sense(of, &mut own, right[0]);
        own.function = signed_as(own.function, own.value);
    }
    // A part points as she said, whatever its size.
    let said = match of {
        StepId::Reaction(_, Part::Along(axis)) => told_along(&judgement.evidence.ways, axis),
        _ => None,
    };
    match said {
        Some(sign) if sign * own.function[0] < 0.0 => Some(own.pointing(-1.0, line)),
        _ => Some(own),
    }
}

/// True for the weights, or some of them, under a name such as W or `Wtot`: a definition, and no
/// balance without the other forces.
pub(super) fn is_weights(board: &Board<'_>, stock: &Stock, name: &str, sides: &[&Tree]) -> bool {
    let named = name.starts_with(['W', 'w', 'G']);
    let sum = |side: &&Tree| {
        let lifted = lifted(board, stock, side, Dimension::FORCE);
        lifted
            .iter()
            .any(|one| stock.has(&one.function, Dimension::FORCE))
    };
    named && sides.first().is_some_and(sum)
}

/// Bare numbers times g are weights: the 42 of `42 g` is of kilograms.
fn as_weight(board: &Board<'_>, stock: &Stock, side: &Tree, value: Value) -> Value {
    let force = Dimension::FORCE;
    let is_weight =
        value.dimension == Dimension::ACCELERATION && !lifted(board, stock, side, force).is_empty();
    match is_weight {
        true => Value {
            dimension: force,
            ..value
        },
        false => value,
    }
}

/// What an expression of known value stands for.
fn defined(board: &Board<'_>, stock: &Stock, side: &Tree, value: Value) -> OwnName {
    let found = lifted(board, stock, side, value.dimension);
    let angles = lifted(board, stock, side, Dimension::ANGLE);
    // Of the ways to read its numbers the one that makes it a quantity of this working is meant
    // first: 40° may be that of the beam or that of the rope.
    let alone = matches!(side.node, Node::Literal(_));
    let unknown = |one: &&Lifted| !alone && !stock.has(&one.function, value.dimension);
    let fewest = found.first().map(|one| one.constants);
    let mut likely: Vec<&Lifted> = found
        .iter()
        .filter(|one| alone || Some(one.constants) == fewest || !unknown(one))
        .collect();
    likely.sort_by_key(unknown);
    let mut likely = likely.into_iter().map(|one| one.function);
    let function = likely.next();
    OwnName {
        value: value.number,
        function: function.unwrap_or([value.number; 4]),
        dimension: value.dimension,
        of_unknown: false,
        of_open_weight: false,
        bare: value.bare,
        degrees: angles.first().map(|one| one.function.map(f64::to_degrees)),
        others: likely.take(MOST_OTHERS).collect(),
    }
}

/// What a name of the learner's own stands for where it is a multiple of the unknown that is not
/// found yet: `a = T sin 40`.
pub(super) fn multiple_of_unknown(
    board: &Board<'_>,
    stock: &Stock,
    sides: &[&Tree],
) -> Option<OwnName> {
    let (unknown, [side]) = (board.unknown()?, sides) else {
        return None;
    };
    let open = !board.standing.contains_key(&unknown) && equation::has_unknown(board, &[*side]);
    if !open {
        return None;
    }
    let right = board.right(unknown)?[0];
    let share = |role: NameRole| {
        let open = role == NameRole::Step(unknown) || is_alias(board, role);
        open.then(|| share_of(board, unknown, role, 0)).flatten()
    };
    let at = |trial: f64| {
        evaluate(side, &mut |leaf| match leaf {
            Leaf::Name(id) => match board.names.role(id).and_then(share) {
                Some(share) => Value::of(share * trial, board.names.dimension(id)),
                None => plain_leaf(board, leaf),
            },
            leaf => plain_leaf(board, leaf),
        })
        .ok()
    };
    let (none, once, twice) = (at(0.0)?, at(right)?, at(2.0 * right)?);
    let scale = once.number.abs();
    let multiple = none.number.abs() <= 1e-9 * scale
        && (twice.number - 2.0 * once.number).abs() <= 1e-9 * scale
        && scale > 0.0;
    let function = lifted(board, stock, side, once.dimension).first()?.function;
    multiple.then_some(OwnName {
        value: once.number,
        function,
        dimension: once.dimension,
        of_unknown: true,
        of_open_weight: false,
        bare: false,
        degrees: None,
        others: Vec::new(),
    })
}

/// How a form stands to the right way, with wrong values of the learner's own in it.
pub(super) enum Way {
    /// With right values in the place of those of these lines it is the right way.
    Follows(Vec<usize>),
    /// It would be that only if a number meant the second of these, her own, and not the first,
    /// which has the same value and on which the step rests.
    TwoMeanings(StepId, StepId),
}

/// What a form is where right values in the place of the learner's own wrong ones prove it:
/// `T·cos γ` may stand where the key goes by β, and then her γ counts. `proved` judges the form on
/// a board.
pub(super) fn right_way(
    board: &Board<'_>,
    target: StepId,
    sides: &[&Tree],
    proved: &dyn Fn(&Board<'_>, &Stock) -> bool,
) -> Option<Way> {
    let roles = equation::roles(board, sides);
    let named = |step: StepId| roles.contains(&NameRole::Step(step));
    let wrong = || board.standing.iter().filter(|(_, own)| !own.right);
    let used: Vec<(StepId, &Own)> = wrong()
        .map(|(step, own)| (*step, own))
        .filter(|(step, own)| named(*step) || is_typed(sides, own) && !is_given(board, own))
        .collect();
    if used.is_empty() {
        return None;
    }
    let mended = |own: &[(StepId, &Own)]| {
        let mut standing = board.standing.clone();
        for (step, own) in own {
            let function = board.right(*step)?;
            let own = (*own).clone();
            standing.insert(*step, Own { function, ..own });
        }
        let with = Board {
            standing: &standing,
            memo: Memo::default(),
            ..*board
        };
        proved(&with, &Stock::of(&with)).then_some(())
    };
    // A number that a right value has too stands for that.
    let alike = |(step, own): &(StepId, &Own)| {
        let right = board.alike(target, own).filter(|_| !named(*step));
        right.map(|right| (right, *step))
    };
    let clear: Vec<_> = used
        .iter()
        .copied()
        .filter(|one| alike(one).is_none())
        .collect();
    if !clear.is_empty() && mended(&clear).is_some() {
        let mut lines: Vec<usize> = clear.iter().map(|(_, own)| own.line).collect();
        lines.sort_unstable();
        return Some(Way::Follows(lines));
    }
    let (right, own) = used.iter().find_map(alike)?;
    mended(&used).map(|()| Way::TwoMeanings(right, own))
}

/// Tells the lines of those own values that stand in a line, by name or by number, or from which
/// its value follows first: what these rest on was told with them.
pub(super) fn tell_lines(board: &Board<'_>, reading: &Reading, judgement: &mut Judgement) {
    let lines = match &mut judgement.truth {
        Truth::Follows(lines) => lines,
        Truth::Noted if !judgement.evidence.follows.is_empty() => &mut judgement.evidence.follows,
        _ => return,
    };
    let sides: Vec<&Tree> = reading.sides.iter().collect();
    let target = judgement.target;
    let mut near: Vec<StepId> = nearest_standing(board, target);
    let typed = |step: &StepId| {
        let own = board.standing.get(step);
        own.is_some_and(|own| is_typed(&sides, own) && !is_given(board, own))
    };
    let mut used: Vec<StepId> = nearest_inputs(board.key, target);
    used.retain(|step| *step != target && typed(step));
    // A value of hers that a given has too is hers where the line follows from it: the mass that
    // stands for a weight.
    let hers = board.standing.iter().filter(|(step, own)| {
        let follows = **step != target && !own.right && lines.contains(&own.line);
        follows && is_typed(&sides, own)
    });
    used.extend(hers.map(|(step, _)| *step));
    for role in equation::roles(board, &sides) {
        match role {
            NameRole::Step(step) if step == target => {}
            NameRole::Step(step) if board.standing.get(&step).is_some_and(|own| !own.right) => {
                used.push(step);
            }
            NameRole::Step(step) if follows_own(board.key, board.standing, step) => {
                used.extend(nearest_standing(board, step));
            }
            _ => {}
        }
    }
    let of_lines = |steps: &[StepId]| {
        let own = steps.iter().filter_map(|step| board.standing.get(step));
        let mut lines: Vec<usize> = own.filter(|own| !own.right).map(|own| own.line).collect();
        lines.sort_unstable();
        lines.dedup();
        lines
    };
    let direct = of_lines(&used);
    if !direct.is_empty() {
        *lines = direct;
        return;
    }
    // A number alone follows from the nearest, if it does from these.
    near.retain(|step| !step.is_balance());
    let pins = near.iter().filter_map(|step| {
        let own = board.standing.get(step).filter(|own| !own.right)?;
        Some((*step, own.function))
    });
    let pins = pins.collect();
    let function = board.key.function(board.key, target, board.sampling, &pins);
    let taken = judgement.values.iter().find(|(step, _)| *step == target);
    let same = function
        .zip(taken)
        .is_some_and(|(function, (_, own))| agree(&function, &own.function));
    let nearest = of_lines(&near);
    if same && !nearest.is_empty() {
        *lines = nearest;
    }
}

/// The standing values that a step is made of, without those that these are made of.
fn nearest_standing(board: &Board<'_>, id: StepId) -> Vec<StepId> {
    let mut found = vec![id];
    let mut next = 0;
    while let Some(step) = found.get(next).copied() {
        next += 1;
        let inputs = board.key.inputs(step).into_iter();
        let fresh: Vec<StepId> = inputs.filter(|input| !found.contains(input)).collect();
        let stops = step != id && board.standing.contains_key(&step);
        found.extend(fresh.into_iter().filter(|_| !stops));
    }
    found.retain(|step| *step != id && board.standing.contains_key(step));
    found
}

/// True if a value of her own stands in a line as it was typed.
fn is_typed(sides: &[&Tree], own: &Own) -> bool {
    let own = own.typed.map_or(own.value, |(typed, _)| typed);
    let mut places = sides.iter().flat_map(|side| side.literals());
    places.any(|place| {
        let angle = place.in_angle && place.literal.unit.is_none();
        let value = if angle {
            place.literal.value.to_radians()
        } else {
            place.literal.value
        };
        (value - own).abs() <= 1e-9 * own.abs()
    })
}

/// True for a value of her own that a given has too: its number stands for what is given.
fn is_given(board: &Board<'_>, own: &Own) -> bool {
    let mut givens = board.problem.givens().iter().map(|given| given.value);
    givens.any(|value| (value - own.value).abs() <= 1e-9 * value.abs())
}

/// True for a usual name of what the problem has one of. `M` before a form, or before a moment of
/// this working, may be that of something else, and before another value is the couple.
fn is_of_the_one(
    board: &Board<'_>,
    stock: &Stock,
    (id, typed): (NameId, &str),
    value: &Tree,
) -> bool {
    let bare = match &value.node {
        Node::Negative(inner) => inner,
        _ => value,
    };
    let is_couple = || match &bare.node {
        Node::Literal(literal) => {
            let meanings = stock.meanings(literal, false, false);
            let mut known = meanings.iter().filter(|meaning| !meaning.constant);
            !known.any(|meaning| meaning.dimension == Dimension::MOMENT)
        }
        _ => false,
    };
    let is_moment = board.names.dimension(id) == Dimension::MOMENT;
    board.names.is_usual(id, typed) && (!is_moment || is_couple())
}

/// A definition whose name the key also uses, for a quantity that nobody is asked (`M1` for the
/// first moment): where the line is wrong for that quantity, the name is the learner's own.
pub(super) fn taken_name(
    board: &Board<'_>,
    stock: &Stock,
    (text, name): (&str, &Tree),
    sides: &[&Tree],
    judgement: &Judgement,
) -> Option<(String, OwnName)> {
    let Node::Name(id) = name.node else {
        return None;
    };
    let Some(NameRole::Step(step)) = board.names.role(id) else {
        return None;
    };
    let asked = board.key.step(step).is_some_and(|step| step.asked);
    let fits_not = matches!(
        judgement.truth,
        Truth::DoesNotHold | Truth::Mismatched(_) | Truth::Circular
    );
    let first = sides.first().filter(|side| is_known(board, side))?;
    let dimension = board.key.step(step)?.dimension;
    let mut value = plain_value(board, first).ok()?;
    if sides.len() == 1 && is_length_of_arc(text.get(name.span.start..name.span.end)?, first) {
        value = with_pi_as_number(board, first)?;
    }
    // A known name of another kind, or spelled otherwise, such as h for a height where H is the
    // hinge's force.
    let typed = text.get(name.span.start..name.span.end)?;
    let symbol = &board.names.vocabulary().name(id)?.symbol;
    let spelled_so = [symbol.as_str().to_owned(), symbol.shown(), symbol.typed()];
    let own_spelling = (spelled_so.iter())
        .any(|way| way.replace('ℓ', "l") == typed.replace('ℓ', "l"))
        || board.names.is_told(typed)
        || value.may_be(dimension) && is_of_the_one(board, stock, (id, typed), first);
    let other_kind = !value.may_be(dimension) || !own_spelling && typed.chars().count() == 1;
    // The moment, part or distance of another force.
    let of_another = !asked
        && !is_part_by_its_name(board, step, own_spelling)
        && other_step(board, stock, step, first, value).is_some();
    if asked && own_spelling
        || !fits_not
        || !(other_kind && !board.standing.contains_key(&step) || of_another)
    {
        return None;
    }
    Some((typed.to_owned(), defined(board, stock, first, value)))
}

/// True for a part of a pull, called as the key does: its x and y are level and upright, as the
/// problem has them.
fn is_part_by_its_name(board: &Board<'_>, step: StepId, own_spelling: bool) -> bool {
    let part = matches!(step, StepId::PartOf(..)) && board.key.general.is_none();
    part && own_spelling
}
