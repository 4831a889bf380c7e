//! An expression, or a chain of them, as the value of a step.

use super::again::note_said_again;
use super::angles::{AngleSum, angle_sum};
use super::board::{Board, Own};
use super::by_wrong::is_by_wrong;
use super::chain::{first_break, follow_chain, remark_on_unit, runs_on, stray_unit};
use super::grade::{Grade, Typed, figures_meant, goes_coarsely, grade, with_own_inputs};
use super::gravity::takes_ten;
use super::lift::{Lifted, lift_masses_as_forces, lift_near, lifted, plain_value};
use super::open::{is_known, is_of_open_unknown, names_itself, rests_on_open};
use super::other::{is_other_angle, other_step};
use super::own::{Way, accepted_of, right_way};
use super::prefix::prefix_too_many;
use super::room::room;
use super::rounded_hard::is_rounded_hard;
use super::sense::{
    nearest_size, note_sense, points_so, same, settle_sense, signed_as, size_meant,
};
use super::stock::Stock;
use super::unproved;
use super::{Evidence, Judgement, Remark, Truth, equation, open};
use crate::key::{Part, Samples, StepId};
use crate::reading::{Function, Node, Tree, Value};
use crate::text::Span;
use crate::units::{Dimension, Written, to_figures, unit_of_figure};
use std::cell::Cell;
use std::f64::consts::PI;

/// A right way whose value is off by more than this share was rounded too hard (2-figure sines).
pub(super) const TOO_COARSE: f64 = 0.01;
/// A right way that is off by more than this share should keep more figures.
pub(super) const COARSE: f64 = 0.002;

/// What is off by more than this share of the value was not rounded.
const MULTIPLE: f64 = 0.5;

/// What is off by more than this share, and more than its numbers leave open, is not near.
const FAR: f64 = 0.25;

/// An angle that comes from a ratio of too few figures is off by more than this, in radians.
const COARSE_ANGLE: f64 = 0.01;

/// However rounded its numbers are, an expression's value counts to this share of it at least.
const MOST_LOOSE: f64 = 0.003;

/// Judges a chain of expressions as the value of `target`. `named` is true where the line says
/// so by name.
pub(super) fn judge(
    board: &Board<'_>,
    stock: &Stock,
    target: StepId,
    sides: &[&Tree],
    line: usize,
    named: bool,
) -> Judgement {
    // In a general working a value that is told by its name counts like that of any later step.
    let tried = !(named && target.is_general());
    judge_chain(board, stock, target, (sides, line), (named, tried))
}

/// Judges a chain; a number for what rests on an open unknown says nothing where it is `tried`.
pub(super) fn judge_chain(
    board: &Board<'_>,
    stock: &Stock,
    target: StepId,
    (sides, line): (&[&Tree], usize),
    (named, tried): (bool, bool),
) -> Judgement {
    let dimension = board
        .key
        .step(target)
        .map_or(Dimension::NUMBER, |step| step.dimension);
    if let Some(span) = names_itself(board, target, sides) {
        let mut judgement = Judgement::of(target, Truth::Circular);
        judgement.caret = Some(span);
        return judgement;
    }
    let mut values = Vec::new();
    for side in sides {
        match plain_value(board, side) {
            Ok(value) => values.push(value),
            Err(mismatch) => {
                let mut judgement = Judgement::of(target, Truth::Mismatched(mismatch));
                judgement.caret = Some(mismatch.span);
                return judgement;
            }
        }
    }
    let (Some(first), Some(last)) = (values.first(), values.last()) else {
        return Judgement::of(target, Truth::DoesNotHold);
    };
    let trial = typed_number(sides[0], first.number_as(dimension), dimension)
        .filter(|_| first.may_be(dimension) && is_of_open_unknown(board, target));
    let mut judgement = match trial {
        // A number tried here would tell the unknown before it is worked out.
        Some(typed) if tried => {
            let mut judgement = Judgement::of(target, Truth::Noted);
            judgement.evidence.number = Some(typed);
            judgement.remarks.push(Remark::LeaveLetter);
            judgement
        }
        _ => one(board, stock, target, dimension, sides[0], *first, line),
    };
    if sides.len() > 1 {
        follow_chain(board, stock, dimension, (sides, &values), &mut judgement);
        // `294*6.6 = 0.906*T*3.8` claims something; it gives no value.
        let worked = |side: &Tree| !matches!(side.node, Node::Literal(_) | Node::Negative(_));
        let apart = |value: &Value| (value.number / first.number - 1.0).abs() > TOO_COARSE;
        let of_numbers = sides.iter().all(|side| side.names().is_empty());
        let claims = |(side, value): (&&Tree, &Value)| {
            worked(side) && (!side.names().is_empty() || of_numbers && apart(value))
        };
        judgement.evidence.false_equation =
            !named && !judgement.truth.holds() && sides.iter().zip(&values).skip(1).any(claims);
    }
    // A value, or an angle, that would tell what the learner has not found is not shown.
    let known = sides.iter().all(|side| is_known(board, side));
    let told = known && !judgement.evidence.false_equation;
    judgement.value = Some(last.number_as(dimension)).filter(|_| told);
    let equal = || first_break(board, stock, dimension, sides).is_none();
    if !named
        && known
        && judgement.truth == Truth::DoesNotHold
        && is_other_angle(board, target, &judgement)
        && equal()
    {
        judgement.truth = Truth::OtherAngle;
    }
    if target.is_angle() && judgement.truth == Truth::DoesNotHold && !judgement.evidence.broken_link
    {
        judgement.evidence.angle_sum = match angle_sum(stock, sides[0]) {
            Some(AngleSum::Known) if !equal() => Some(AngleSum::NotEqual),
            other => other,
        };
    }
    // `12000 N = 6000 N` is no value of another step, whichever has its first side.
    let broken = || {
        let chain = sides.len() > 2 || board.key.general.is_some() && sides.len() > 1;
        chain && first_break(board, stock, Dimension::NUMBER, sides).is_some()
    };
    if !judgement.truth.holds() && !named && !broken() {
        judgement.evidence.other_step = other_step(board, stock, target, sides[0], *first);
    }
    // With an open unknown in it, its value speaks for nothing.
    if judgement.truth == Truth::DoesNotHold
        && sides
            .iter()
            .any(|side| equation::has_unknown(board, &[*side]))
        && board
            .unknown()
            .is_some_and(|unknown| !board.standing.contains_key(&unknown))
    {
        judgement.evidence.number = None;
    }
    if judgement.truth == Truth::DoesNotHold
        && let Some(span) = runs_on(dimension, sides, &values)
    {
        judgement.evidence = Evidence {
            runs_on: true,
            broken_link: true,
            ..Evidence::default()
        };
        judgement.caret = Some(span);
    }
    for (_, own) in &mut judgement.values {
        own.relation = open::is_told_by_unknown(board, sides);
    }
    note_said_again(board, dimension, (sides, &values), &mut judgement);
    if judgement.truth.holds() && rests_on_open(board, target, sides) {
        // True, but its value would tell what nobody has found.
        judgement.remarks.push(Remark::RestsOnOpen);
        judgement.value = None;
    }
    if judgement.truth.holds() {
        judgement.establishes.push(target);
        remark_on_unit(sides, &values, dimension, &mut judgement);
    }
    judgement
}

/// Judges one expression.
fn one(
    board: &Board<'_>,
    stock: &Stock,
    target: StepId,
    dimension: Dimension,
    tree: &Tree,
    value: Value,
    line: usize,
) -> Judgement {
    let number = value.number_as(dimension);
    let typed = typed_number(tree, number, dimension);
    let mut judgement = Judgement::of(target, Truth::DoesNotHold);
    judgement.evidence.ratios = ratios(tree);
    judgement.evidence.number = Some(typed.unwrap_or_else(|| calculated(number)));
    let taken = typed.unwrap_or_else(|| {
        let loose = 2.0 * room(board, stock, tree, dimension, 1);
        let mut taken = calculated(number);
        let most = MOST_LOOSE * number.abs();
        taken.written.last_place = taken.written.last_place.max(loose.min(most));
        taken
    });
    let graded = grade(board, target, taken);
    if !value.may_be(dimension) {
        judgement.evidence.dimension = Some(value.dimension);
        if graded.is_some_and(|grade| grade != Grade::TooFewFigures) {
            judgement.truth = Truth::WrongUnit {
                wanted: dimension,
                found: value.dimension,
            };
            judgement.caret = Some(tree.span);
        }
        judgement.evidence.lifted = lifted(board, stock, tree, dimension)
            .iter()
            .map(|one| one.function)
            .collect();
        return judgement;
    }
    // Ten times the mass may be a rounding of the weight as well, and seldom is.
    let ten = may_take_ten(target, tree) && takes_ten(board, target, taken);
    let few = ten && graded == Some(Grade::TooFewFigures);
    let graded = graded.filter(|_| !few);
    let accepted = accepted_of(board, &[tree], target);
    if typed.is_none() {
        let lifted = lifted(board, stock, tree, dimension);
        let hits = accepted.iter().filter(|(function, _)| {
            lifted
                .iter()
                .any(|one| same(target, &one.function, function))
        });
        // Numbers that may be hers or right ones prove what they come to.
        let hers = with_own_inputs(board, target);
        let as_typed = hers.as_ref().map(|(value, _)| *value);
        let apart = |function: f64| {
            let from = |value: f64| (size_meant(target, number) - value.abs()).abs();
            from(function).min(as_typed.map_or(f64::INFINITY, from))
        };
        let comes_to = |(function, _): &&(Samples, Vec<usize>)| {
            apart(function[0]) <= COARSE * function[0].abs()
        };
        // What stands for the other sense of a part comes to something else altogether.
        let loose = room(board, stock, tree, dimension, 3);
        let is_far = |function: f64| apart(function) > (FAR * function.abs()).max(loose);
        let hit = hits.clone().find(comes_to).or_else(|| {
            let mut near = hits.clone();
            near.find(|(function, _)| {
                target.is_angle()
                    || !is_far(function[0])
                    || prefix_too_many(board, target, tree, dimension).is_some()
            })
        });
        if let Some((function, lines)) = hit {
            judgement.proved = true;
            judgement.truth = if lines.is_empty()
                && board
                    .right(target)
                    .is_some_and(|right| same(target, &right, function))
            {
                Truth::Holds
            } else {
                Truth::Follows(lines.clone())
            };
            if judgement.truth == Truth::Holds && is_by_wrong(board, target, &[tree], number) {
                return unproved::by_chance(judgement);
            }
            let off = apart(function[0]);
            // The right way, with values of hers that were rounded too hard.
            let away = (size_meant(target, number) - function[0].abs()).abs();
            if let Some((_, lines)) = hers.filter(|_| goes_coarsely(board))
                && away > loose.max(TOO_COARSE * function[0].abs())
            {
                judgement.truth = Truth::Follows(lines);
            }
            if off > MULTIPLE * function[0].abs()
                && let Some(span) = prefix_too_many(board, target, tree, dimension)
            {
                judgement.proved = false;
                return wrong_prefix(judgement, dimension, span);
            }
            let shaped = target.is_angle();
            let aside = off.min((PI - number - function[0]).abs());
            // A difference gets what the figures carried allow.
            let coarse = match shaped {
                true => aside > COARSE_ANGLE,
                false => off > loose.max(TOO_COARSE * function[0].abs()),
            };
            if coarse && !board.few_figures_count() {
                if let Truth::Follows(lines) = judgement.truth {
                    judgement.evidence.follows = lines;
                }
                judgement.truth = Truth::TooFewFigures;
                return judgement;
            }
            if !shaped && off > loose.max(COARSE * function[0].abs()) {
                judgement.remarks.push(Remark::FewFigures);
            }
            if !shaped && !points_so(board, target, tree, number) {
                return points_elsewhere(judgement);
            }
            note_sense(target, number, function[0], &mut judgement);
            if target.is_pull() && number < 0.0 {
                judgement.remarks.push(Remark::NegativePull);
            }
            let mut own = own(line, number, None, *function, &judgement.truth);
            let right = own.function[0];
            settle_sense(target, &mut own, right);
            judgement.values.push((target, own));
            return judgement;
        }
        let against = Cell::new(false);
        let way = right_way(board, target, &[tree], &|with, stock| {
            let right = board.right(target);
            right.is_some_and(|right| {
                let forms = super::lift::lifted(with, stock, tree, dimension);
                let mut forms = forms.iter().map(|one| one.function);
                let form = forms.find(|form| same(target, form, &right));
                against.set(form.is_some_and(|form| form[0] * right[0] < 0.0));
                form.is_some()
            })
        });
        if let Some(Way::TwoMeanings(right, own)) = way {
            judgement.evidence.two_meanings = Some((right, own));
        }
        if let Some(Way::Follows(lines)) = way {
            judgement.proved = true;
            judgement.truth = Truth::Follows(lines);
            let right = board.right(target).map_or(number, |right| right[0]);
            note_sense(target, number, right, &mut judgement);
            let function = lifted
                .first()
                .map_or_else(|| scaled(board, target, number), |one| one.function);
            // Either sense of a hinge's part is no fault: it points as the right one.
            let turned = target.has_free_sense() && against.get();
            let function = function.map(|value| if turned { -value } else { value });
            let mut own = own(line, number, None, function, &judgement.truth);
            settle_sense(target, &mut own, right);
            judgement.values.push((target, own));
            return judgement;
        }
        judgement.evidence.lifted = lifted.into_iter().map(|one| one.function).collect();
        if matches!(target, StepId::Reaction(_, Part::Along(_))) {
            let lifted = &mut judgement.evidence.lifted;
            for one in lift_masses_as_forces(board, stock, tree) {
                if !lifted.contains(&one.function) {
                    lifted.push(one.function);
                }
            }
        }
    }
    let plain = typed.is_none() && graded.is_some();
    if typed.is_none() {
        let rights: Vec<&Samples> = accepted.iter().map(|(right, _)| right).collect();
        let is_right = |one: &Lifted| {
            rights
                .iter()
                .any(|right| same(target, &one.function, right))
        };
        let right = |sides: &[&Tree]| {
            let form = (sides[0], dimension);
            // A number that is left alone may be near by chance.
            typed_number(sides[0], number, dimension).is_none()
                && lift_near(board, stock, form, None, &rights)
                    .iter()
                    .any(is_right)
        };
        // Of angles, any sum is one part more than another.
        let angle = target.is_angle();
        let surplus = || super::surplus::surplus(board, &[tree], &right);
        if let Some(span) = (!angle).then(surplus).flatten() {
            judgement.evidence.surplus = true;
            judgement.caret = Some(span);
            return judgement;
        }
        if plain && let Some(span) = stray_unit(stock, tree, dimension) {
            judgement.truth = Truth::WrongUnit {
                wanted: dimension,
                found: value.dimension,
            };
            judgement.caret = Some(span);
            return judgement;
        }
    }
    let scaled = |truth: &Truth| {
        own(
            line,
            number,
            typed.map(|typed| (typed.value, typed.written)),
            scaled(board, target, number),
            truth,
        )
    };
    let Some(graded) = graded else {
        if let Some(span) = prefix_too_many(board, target, tree, dimension) {
            return wrong_prefix(judgement, dimension, span);
        }
        let turned = Typed {
            value: size_meant(target, taken.value),
            ..taken
        };
        if target.is_direction()
            && turned.value != taken.value
            && grade(board, target, turned).is_some()
        {
            return points_elsewhere(judgement);
        }
        judgement.evidence.takes_ten = ten;
        judgement.evidence.ten_or_few = few && is_whole(tree);
        judgement.evidence.perhaps_ten = !ten && typed.is_some() && takes_ten(board, target, taken);
        judgement.evidence.rounded_hard = typed.is_none()
            && !ten
            && is_rounded_hard(board, stock, target, (tree, number), dimension);
        let opposite = Typed {
            value: -taken.value,
            ..taken
        };
        judgement.evidence.negative_pull =
            target.is_pull() && taken.value < 0.0 && grade(board, target, opposite).is_some();
        return judgement;
    };
    judgement.truth = match graded {
        Grade::Holds => Truth::Holds,
        Grade::OtherGravity(gravity) => {
            // Standard gravity and 9.81 are one to three figures.
            if (gravity / board.problem.gravity() - 1.0).abs() > 0.001 {
                judgement.remarks.push(Remark::OtherGravity(gravity));
            }
            Truth::Holds
        }
        Grade::Rounded => Truth::HoldsRounded,
        Grade::Follows(lines) => Truth::Follows(lines),
        Grade::TooFewFigures => Truth::TooFewFigures,
    };
    // A form must show how its value comes about; one that agrees by chance shows nothing.
    if plain && !unproved::counts(board, stock, (target, number), tree, &mut judgement) {
        return judgement;
    }
    if typed.is_some_and(|typed| typed.written.significant < 3)
        && matches!(judgement.truth, Truth::Holds | Truth::HoldsRounded)
        && (judgement.truth == Truth::Holds || board.few_figures_count())
        && board.right(target).is_some_and(|right| {
            let off = to_figures(right[0], 3).abs() - number.abs();
            off.abs() > 1e-9 * number.abs()
        })
        && dimension != Dimension::ANGLE
    {
        judgement.remarks.push(Remark::FewFiguresTyped);
    }
    // The sense is compared with what is accepted, whatever sign was typed.
    let nearest = nearest_size(&accepted, number);
    let in_sense = |function| match target.has_free_sense() {
        true => signed_as(function, nearest),
        false => function,
    };
    let function = match &judgement.truth {
        // Of the relations that give this size, the one that rests on the same lines.
        Truth::Follows(lines) => accepted
            .iter()
            .skip(1)
            .filter(|(function, _)| close(function[0].abs(), number.abs()))
            .min_by_key(|(_, used)| used != lines)
            .map_or_else(
                || in_sense(scaled(&judgement.truth).function),
                |(function, _)| *function,
            ),
        _ => board.right(target).unwrap_or([number; 4]),
    };
    note_sense(target, number, nearest, &mut judgement);
    if target.is_pull() && number < 0.0 && judgement.truth.holds() {
        judgement.remarks.push(Remark::NegativePull);
    }
    if judgement.truth.holds() {
        let mut own = scaled(&judgement.truth);
        // A wrong turn may give a pull that pushes: she goes on with what she told.
        own.function = match target.is_pull() {
            true => signed_as(function, number),
            false => function,
        };
        settle_sense(target, &mut own, function[0]);
        judgement.values.push((target, own));
    }
    judgement
}

/// A value that is right in another multiple of the unit than the one typed behind it.
fn wrong_prefix(mut judgement: Judgement, dimension: Dimension, span: Span) -> Judgement {
    judgement.truth = Truth::WrongUnit {
        wanted: dimension,
        found: dimension,
    };
    judgement.caret = Some(span);
    judgement
}

/// A direction that holds as an angle with the horizontal, and as it was counted points another
/// way.
fn points_elsewhere(mut judgement: Judgement) -> Judgement {
    judgement.refuse_way();
    judgement
}

fn close(left: f64, right: f64) -> bool {
    (left - right).abs() <= 0.02 * left.abs().max(right.abs())
}

/// A standing value.
pub(super) fn own(
    line: usize,
    value: f64,
    typed: Option<(f64, Written)>,
    function: Samples,
    truth: &Truth,
) -> Own {
    Own {
        line,
        value,
        typed,
        function,
        right: !matches!(truth, Truth::Follows(_) | Truth::DoesNotHold),
        against: false,
        relation: false,
    }
}

/// A value without a form, as a function: it goes with the right one in proportion.
pub(super) fn scaled(board: &Board<'_>, target: StepId, number: f64) -> Samples {
    match board.right(target) {
        Some(right) if right[0].abs() > 1e-9 => right.map(|value| value * number / right[0]),
        _ => [number; 4],
    }
}

/// True where g = 10 m/s² can be told from the line: at a weight, or where a ten stands.
fn may_take_ten(target: StepId, tree: &Tree) -> bool {
    let ten = tree
        .literals()
        .iter()
        .any(|place| place.literal.value == 10.0);
    // A number alone may be the weight with it; a form shows which g was taken.
    let alone = matches!(tree.node, Node::Literal(_) | Node::Negative(_));
    target.is_weight() && alone || ten
}

/// A number alone, with the figures as written; `None` for anything that has a form.
pub(super) fn typed_number(tree: &Tree, number: f64, dimension: Dimension) -> Option<Typed> {
    match &tree.node {
        Node::Literal(literal) if !literal.unit_alone => {
            let mut written = figures_meant(literal.value, literal.written);
            if dimension == Dimension::ANGLE && literal.unit.is_none() {
                written.last_place *= PI / 180.0;
            }
            Some(Typed {
                value: number,
                written,
            })
        }
        Node::Negative(inner) => typed_number(inner, -number, dimension).map(|typed| Typed {
            value: number,
            ..typed
        }),
        _ => None,
    }
}

/// True for a number that was typed without decimals: its last zeros may say nothing.
fn is_whole(tree: &Tree) -> bool {
    matches!(&tree.node, Node::Literal(literal) if !literal.digits.contains('.'))
}

/// A calculated number is taken to four figures when it must be compared as a value.
pub(super) fn calculated(number: f64) -> Typed {
    let place = if number == 0.0 {
        1e-6
    } else {
        unit_of_figure(number, 4)
    };
    Typed {
        value: number,
        written: Written {
            significant: 4,
            last_place: place,
        },
    }
}

/// Whether a line has a sine, and a cosine. What stands under a root is the other side of the
/// triangle: √(W² − (W·sin α)²) is W·cos α.
pub(super) fn ratios(tree: &Tree) -> (bool, bool) {
    let mut found = (false, false);
    tree.visit(&mut |tree| match &tree.node {
        Node::Call(Function::Sine, _) => found.0 = true,
        Node::Call(Function::Cosine, _) => found.1 = true,
        _ => {}
    });
    match &tree.node {
        Node::Call(Function::SquareRoot, _) => (found.1, found.0),
        _ => found,
    }
}
