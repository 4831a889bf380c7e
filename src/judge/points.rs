//! The way that was said with a value: up, down, left or right, and whether the force points so.

mod told;

use super::board::Board;
use super::names::NameRole;
use super::{Judgement, Remark, Truth, Typed};
use crate::key::{Atom, Axis, Formula, Nature, Part, StepId, Term};
use crate::plane::Vector;
use crate::problem::{Acting, ForceId};
use crate::reading::{Reading, Way};
use crate::text::Span;
use crate::units::Dimension;

/// Parts of a force below this, in newtons or of its size, point nowhere.
const NONE: f64 = 1e-9;
/// Numbers nearer than this share of them are one.
const EXACT: f64 = 1e-9;

/// A way along an axis: 1 with it, −1 against it.
type Says = (Axis, f64);

/// Compares the ways that were said after a value with the way of the force or part, on the body
/// that was said with it.
pub(super) fn compare_way(board: &Board<'_>, reading: &Reading, judgement: &mut Judgement) {
    if acts_elsewhere(board, judgement) {
        return;
    }
    let said: Vec<(Way, Span)> = reading
        .remarks
        .iter()
        .filter_map(|remark| match remark {
            crate::reading::Remark::Direction { way, span } => Some((*way, *span)),
            _ => None,
        })
        .collect();
    judgement.evidence.ways = said.iter().map(|(way, _)| *way).collect();
    told::compare_form(board, reading, &said, judgement);
    told::compare_product(board, reading, &said, judgement);
    let on = on_body(board, judgement, &said);
    for (way, span) in &said {
        compare_one(board, *way, (*span, on), judgement);
    }
    let told = board.key.general.as_ref();
    let between = told.is_some_and(|told| told.between.contains_key(&judgement.target));
    let points = said
        .iter()
        .any(|(way, _)| fits(board, judgement, *way, on).is_some());
    let number = judgement.evidence.number;
    let plain = number.is_none_or(|typed| typed.value >= 0.0);
    let plain = plain && board.on_body.is_none();
    let stands = judgement.truth.holds() && points && plain;
    if between && stands {
        judgement.remarks.push(Remark::OnBody(on));
    }
    if stands {
        told::take_pointing(board, &said, on, judgement);
        judgement
            .remarks
            .extend(part_of_way(board, judgement, &said));
    }
}

/// Of a force's size, told with the way of one part of it: that it has the other part too. "706 N
/// up" does not act straight up.
fn part_of_way(board: &Board<'_>, judgement: &Judgement, said: &[(Way, Span)]) -> Option<Remark> {
    let axes = said.iter().filter_map(|(way, _)| says(*way).ok());
    let axes: Vec<Axis> = axes.map(|(axis, _)| axis).collect();
    let first = *axes.first()?;
    let other = match first {
        Axis::Horizontal => Axis::Vertical,
        Axis::Vertical => Axis::Horizontal,
    };
    let part = match judgement.target {
        StepId::Reaction(support, Part::Size) => StepId::Reaction(support, Part::Along(other)),
        step @ StepId::Found(Nature::Size, _) => part_of(board, step, other)?,
        _ => return None,
    };
    let size = judgement.evidence.number.map(|typed| typed.value.abs())?;
    // Less than the last figure of a size is no part to speak of.
    let counts = |value: f64| value.abs() > 0.005 * size;
    let accepted = board.accepted(part);
    let all = accepted.iter().all(|(function, _)| counts(function[0]));
    (all && axes.iter().all(|axis| *axis == first)).then_some(Remark::OtherPart(other))
}

impl Judgement {
    /// Refuses a value whose size holds and whose way does not.
    pub fn refuse_way(&mut self) {
        forget(self, Truth::DoesNotHold);
        self.proved = false;
        self.evidence.lifted.clear();
        self.evidence.number = None;
        // True of the numbers alone.
        self.evidence.aside = None;
        self.evidence.wrong_way = true;
    }

    /// The sense along an axis of the ways that were said behind a line: 1 with it, −1 against it.
    pub fn said_along(&self, axis: Axis) -> Option<f64> {
        let along = |way: &Way| says(*way).ok().filter(|(said, _)| *said == axis);
        self.evidence
            .ways
            .iter()
            .find_map(along)
            .map(|(_, sign)| sign)
    }

    /// True if a force that points so has all the ways that were said behind its value; of a number
    /// below zero they may say the same as its sign.
    pub fn points_as_said(&self, (x, y): (f64, f64)) -> bool {
        let number = self.evidence.number.map(|typed| typed.value);
        let fits = |said: &Way| match says(*said) {
            Ok((Axis::Horizontal, sign)) => sign * x > 0.0,
            Ok((Axis::Vertical, sign)) => sign * y > 0.0,
            Err(_) => true,
        };
        number.is_some_and(|number| number < 0.0) || self.evidence.ways.iter().all(fits)
    }
}

/// Refuses a value of a force that was said to act on a body on which it does not act.
fn acts_elsewhere(board: &Board<'_>, judgement: &mut Judgement) -> bool {
    let bodies = board.key.general.as_ref();
    let bodies = bodies.and_then(|general| general.bodies.get(&judgement.target));
    let (Some(said), Some(bodies)) = (board.on_body, bodies) else {
        return false;
    };
    let elsewhere = judgement.truth.holds() && bodies.iter().all(|body| body != said);
    if elsewhere {
        forget(judgement, Truth::DoesNotHold);
        judgement.evidence.lifted.clear();
        judgement.evidence.number = None;
        judgement.evidence.wrong_body = true;
    }
    elsewhere
}

/// Of what acts between two bodies, the one that the ways are said for: the one named, else the one
/// on which all of them fit, else the first; of a rope with several ends that end.
fn on_body(board: &Board<'_>, judgement: &Judgement, said: &[(Way, Span)]) -> usize {
    if let Some(ends) = ends(board, judgement.target) {
        let here = |end: &usize| board.on_body.is_none_or(|named| named == ends[*end].0);
        let all = |end: &usize| {
            let mut ways = said.iter();
            ways.all(|(way, _)| fits(board, judgement, *way, *end).unwrap_or(true))
        };
        let mut own = (0..ends.len()).filter(here);
        let first = own.clone().next();
        return own.find(all).or(first).unwrap_or(0);
    }
    let general = board.key.general.as_ref();
    let both = general.and_then(|general| general.between.get(&judgement.target));
    let Some([_, second]) = both else { return 0 };
    if let Some(named) = board.on_body {
        return usize::from(named == second);
    }
    // Of a number below zero the sign may say the same as the word.
    let number = judgement.evidence.number.map(|typed| typed.value);
    if number.is_some_and(|number| number < 0.0) {
        return 0;
    }
    let all = |on: usize| {
        let mut ways = said.iter();
        ways.all(|(way, _)| fits(board, judgement, *way, on).unwrap_or(true))
    };
    usize::from(!all(0) && all(1))
}

/// The ends of a rope that has several.
fn ends<'b>(board: &Board<'b>, step: StepId) -> Option<&'b Vec<(String, Vector)>> {
    board.key.general.as_ref()?.ends.get(&step)
}

/// Whether a way fits on one of the bodies; `None` where it is not known.
fn fits(board: &Board<'_>, judgement: &Judgement, way: Way, on: usize) -> Option<bool> {
    let number = judgement.evidence.number;
    let sign = sense_on(board, judgement.target, on);
    match says(way) {
        Ok((axis, way)) => fits_as_told(board, (judgement.target, on), number, (axis, sign * way)),
        Err(turns) => turns_so(board, judgement.target, number, sign * turns),
    }
}

/// The sense of what acts between two bodies, on the first or the second of them. Of a rope each
/// end has its own way.
fn sense_on(board: &Board<'_>, step: StepId, body: usize) -> f64 {
    if body == 0 || ends(board, step).is_some() {
        1.0
    } else {
        -1.0
    }
}

/// The axis and sign of a way, or the sign of a turn.
fn says(way: Way) -> Result<Says, f64> {
    match way {
        Way::Up => Ok((Axis::Vertical, 1.0)),
        Way::Down => Ok((Axis::Vertical, -1.0)),
        Way::Right => Ok((Axis::Horizontal, 1.0)),
        Way::Left => Ok((Axis::Horizontal, -1.0)),
        Way::Anticlockwise => Err(1.0),
        Way::Clockwise => Err(-1.0),
    }
}

/// The sign along an axis that was said in words, if one was.
pub(super) fn told_along(ways: &[Way], axis: Axis) -> Option<f64> {
    let mut told = ways.iter().filter_map(|way| says(*way).ok());
    told.find(|told| told.0 == axis).map(|told| told.1)
}

/// Whether a way fits as it was told with this number: `-125 N up` is 125 N down; of a size the
/// sign belongs in the sum, and may say nothing.
fn fits_as_told(
    board: &Board<'_>,
    (target, on): (StepId, usize),
    number: Option<Typed>,
    says: Says,
) -> Option<bool> {
    let fits = fits_way(board, (target, on), number, says)?;
    let turned = || fits_way(board, (target, on), number, (says.0, -says.1)) == Some(true);
    Some(match number.is_some_and(|typed| typed.value < 0.0) {
        true if target.along() == Some(says.0) => turned(),
        true if target.is_size() || target.has_free_sense() => fits || turned(),
        _ => fits,
    })
}

fn compare_one(board: &Board<'_>, way: Way, (span, on): (Span, usize), judgement: &mut Judgement) {
    let sense = sense_on(board, judgement.target, on);
    let says = match says(way) {
        Ok((axis, sign)) => (axis, sense * sign),
        Err(turn) => return compare_turn(board, sense * turn, span, judgement),
    };
    let number = judgement.evidence.number;
    // A value of another step with a wrong way is not that step's value.
    if let Some(other) = judgement.evidence.other_step
        && fits_way(board, (other, 0), number, says) == Some(false)
    {
        judgement.evidence.other_step = None;
    }
    let target = judgement.target;
    let Some(fits) = fits_as_told(board, (target, on), number, says) else {
        return;
    };
    if !is_compared(judgement) {
        return;
    }
    let negative = number.is_some_and(|typed| typed.value < 0.0);
    // `-349 N to the left`: the sign may say the same as the word, or turn it about.
    let both = negative && target.along() == Some(says.0) && says.1 < 0.0;
    let true_word = || fits_way(board, (target, on), number, says) == Some(true);
    if both && !true_word() {
        forget(judgement, Truth::Noted);
        judgement.remarks = vec![Remark::SignAndWay];
        judgement.caret = Some(span);
        return;
    }
    if fits || both {
        judgement
            .remarks
            .retain(|remark| *remark != Remark::OppositeSense);
        return;
    }
    turned_about(judgement);
    judgement.caret = Some(span);
}

/// True where the size is the right one, if only roughly: then the way is compared, too.
fn is_compared(judgement: &Judgement) -> bool {
    judgement.truth.holds() || judgement.truth == Truth::TooFewFigures
}

/// Compares the turn that was said after a couple or moment with its own.
fn compare_turn(board: &Board<'_>, sign: f64, span: Span, judgement: &mut Judgement) {
    if !is_compared(judgement) {
        return;
    }
    let number = judgement.evidence.number;
    let Some(fits) = turns_so(board, judgement.target, number, sign) else {
        return;
    };
    judgement.caret = Some(span);
    // `-42 N m clockwise`: the sign may say the same as the word, or turn it about.
    if number.is_some_and(|typed| typed.value < 0.0) && !fits {
        forget(judgement, Truth::Noted);
        judgement.remarks = vec![Remark::SignAndWay];
    } else if fits {
        judgement.caret = None;
        judgement
            .remarks
            .retain(|remark| *remark != Remark::OppositeSense);
    } else {
        turned_about(judgement);
    }
}

/// Whether a couple or a force's moment that is told with this number turns so, 1 for anticlockwise;
/// `None` for what does not turn.
fn turns_so(board: &Board<'_>, step: StepId, number: Option<Typed>, sign: f64) -> Option<bool> {
    let near = near(board, step, number);
    let turns: Option<Vec<f64>> = near.iter().map(|own| turn_of(board, step, *own)).collect();
    let turns = turns.filter(|turns| !turns.is_empty())?;
    Some(turns.iter().any(|turn| sign * turn > 0.0))
}

/// Which way a couple or a force's moment of this value turns: positive anticlockwise; `None` for
/// what does not turn.
fn turn_of(board: &Board<'_>, step: StepId, value: f64) -> Option<f64> {
    if let StepId::Moment(force) = step {
        let balance = board.key.balance(StepId::MomentSum)?;
        let term = balance.terms.iter().find(|term| term.force == force)?;
        return Some(term.sign);
    }
    if !step.is_general() || board.key.step(step)?.dimension != Dimension::MOMENT {
        return None;
    }
    let own = |term: &&Term| *term.amount.bare() == Formula::Atom(Atom::Step(step));
    let sums = board.key.sums_of(step);
    let balances = sums.iter().filter_map(|sum| board.key.balance(*sum));
    let term = balances.flat_map(|balance| &balance.terms).find(own)?;
    Some(term.sign * value)
}

/// Refuses a value whose size holds and whose way does not; it is kept for who goes on with it.
fn turned_about(judgement: &mut Judgement) {
    let target = judgement.target;
    let told = judgement.values.iter().find(|(step, _)| *step == target);
    judgement.evidence.turned_about = told.map(|(_, own)| own.clone());
    judgement.refuse_way();
}

/// Takes back what a line would establish.
fn forget(judgement: &mut Judgement, truth: Truth) {
    judgement.truth = truth;
    judgement.establishes.clear();
    judgement.values.clear();
}

/// Whether a way is that of a force, a component of it or a part of a hinge's, or of its force as
/// its direction is told; `None` where a step has no way, or where it is not known here.
fn fits_way(
    board: &Board<'_>,
    (step, on): (StepId, usize),
    number: Option<Typed>,
    (says, sign): Says,
) -> Option<bool> {
    if let Some((_, pull)) = ends(board, step).and_then(|ends| ends.get(on)) {
        return Some(sign * along_axis(*pull, says) > NONE);
    }
    // The way of what follows from her own values is hers too: of the accepted values nearest in size.
    let any = |step: StepId, points: &dyn Fn(f64) -> bool| {
        let near = near(board, step, number);
        (!near.is_empty()).then(|| near.into_iter().any(points))
    };
    let (along, part) = match step {
        StepId::Reaction(support, part) => (StepId::Reaction(support, Part::Along(says)), part),
        StepId::Found(Nature::Size, _) => (part_of(board, step, says)?, Part::Size),
        StepId::Found(Nature::Direction, _) => (part_of(board, step, says)?, Part::Direction),
        StepId::Found(Nature::Along(axis), _) => {
            return any(step, &|own| axis == says && sign * own > 0.0);
        }
        StepId::Found(Nature::Weight, _) => return Some(says == Axis::Vertical && sign < 0.0),
        StepId::Found(..) => {
            let way = board.key.general.as_ref()?.ways.get(&step)?;
            return any(step, &|own| sign * own * along_axis(*way, says) > NONE);
        }
        step => {
            let acting = acting(board, step)?;
            return Some(sign * along_axis(acting, says) > NONE);
        }
    };
    let stands = match part {
        // The force points as its part does, whether that is right or follows from her own values.
        Part::Size => {
            let accepted = board.accepted(along);
            let fits = |value: f64| sign * value > NONE;
            return Some(accepted.iter().any(|(function, _)| fits(function[0])));
        }
        // An angle tells no size: the part that stands is meant.
        Part::Direction => board.name_function(NameRole::Step(along))?[0],
        Part::Along(axis) if axis != says => return Some(false),
        Part::Along(_) => return any(along, &|own| sign * own > 0.0),
    };
    Some(sign * stands > 0.0)
}

/// The way of a force whose direction the problem tells, or of its component.
fn acting(board: &Board<'_>, step: StepId) -> Option<Vector> {
    let unit = |force: ForceId| {
        let values = board.problem.values();
        let body = board.problem.body();
        match board.problem.force(force)?.acting {
            Acting::Along(direction) => Some(Vector::at_angle(direction.angle(body, &values))),
            Acting::Anywhere => None,
        }
    };
    match step {
        StepId::Weight(force) | StepId::Pull(force) => unit(force),
        StepId::PartOf(force, Axis::Horizontal) => unit(force).map(|unit| Vector::new(unit.x, 0.0)),
        StepId::PartOf(force, Axis::Vertical) => unit(force).map(|unit| Vector::new(0.0, unit.y)),
        StepId::Across(force) => {
            let unit = unit(force)?;
            let body = Vector::at_angle(board.problem.body_angle(&board.problem.values()));
            let lies = unit.dot(body);
            Some(Vector::new(unit.x - lies * body.x, unit.y - lies * body.y))
        }
        _ => None,
    }
}

/// The part of a force of a general working along an axis.
fn part_of(board: &Board<'_>, step: StepId, axis: Axis) -> Option<StepId> {
    let [level, upright] = board.key.general.as_ref()?.parts.get(&step)?;
    Some(match axis {
        Axis::Horizontal => *level,
        Axis::Vertical => *upright,
    })
}

fn along_axis(vector: Vector, axis: Axis) -> f64 {
    match axis {
        Axis::Horizontal => vector.x,
        Axis::Vertical => vector.y,
    }
}

/// Of the values that count as right for a step those nearest in size to a number: more than one
/// where it may be each of them, rounded at its last place.
fn near(board: &Board<'_>, step: StepId, number: Option<Typed>) -> Vec<f64> {
    let accepted = board.accepted(step);
    let values = accepted.iter().map(|(function, _)| function[0]);
    let Some(typed) = number else {
        return values.take(1).collect();
    };
    let off = |value: f64| (value.abs() - typed.value.abs()).abs();
    let least = values.clone().map(off).fold(f64::INFINITY, f64::min);
    let rounded = 0.5 * typed.written.last_place * (1.0 + 1e-6);
    // Turned about a value is as near, but for the last bit.
    let reach = least.max(rounded) + EXACT * typed.value.abs();
    values.filter(|value| off(*value) <= reach).collect()
}
