//! A bare number against a step: rounding in three grades.
//!
//! A number *is* the value when it is the value rounded at its own last place. It is *rounded on
//! the way* when it is reached with earlier quantities taken in full, as typed, or (unseen ones)
//! to three figures, or lies between those within one last unit. Everything else is not explained
//! by rounding. No fixed percentage decides, except that the last unit of a coarse number is not
//! allowed to count for more than half a per cent.

use super::board::{Board, Memo, Own, PinnedSamples};
use super::carried::{carried, carried_sums, in_order, reaches_her_root};
use super::followed::nearest_inputs;
use super::gravity::{uses_other_gravity, with_gravity};
use super::shape::{Shape, shapes};
use super::standing::says_right_again;
use crate::key::{Pins, Sample, StepId};
use crate::units::{Written, to_figures, unit_of_figure};
use std::collections::BTreeSet;

/// The most earlier quantities whose rounding is combined.
const MOST_INPUTS: usize = 9;
/// A number of one figure and zeros is a rounded one if it is off by no more than this share.
const ONE_FIGURE: f64 = 0.1;
/// How far a value of two figures may be off that was worked out with such.
const TWO_FIGURES: f64 = 0.012;
/// The same of a general working.
const MOST_GENERAL: usize = 6;
/// Figures to which results are commonly rounded.
pub(super) const COMMON_FIGURES: u8 = 3;

/// How a number stands to a step's value.
#[derive(Clone, Debug, PartialEq)]
pub enum Grade {
    /// It is the value, rounded at its own last place.
    Holds,
    /// It is the value for another accepted acceleration of free fall, in m/s².
    OtherGravity(f64),
    /// Reached by rounding on the way.
    Rounded,
    /// It follows from these lines of the learner's own (none: from a relation carried on).
    Follows(Vec<usize>),
    /// The right value with too few figures.
    TooFewFigures,
}

/// A number as typed, in SI units of the step.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Typed {
    /// Its value.
    pub value: f64,
    /// How finely it was written.
    pub written: Written,
}

impl Typed {
    /// True if this number is `value` rounded (ties either way) at its last place.
    pub fn is(&self, value: f64) -> bool {
        (self.value - value).abs()
            <= 0.5 * self.written.last_place * (1.0 + 1e-6) + 1e-9 * value.abs()
    }

    /// True if this number lies between two values, or within one last unit of them. A number
    /// finer than three figures gets half a unit of the third: 297.9 is no worse than 298. Nor is
    /// such a number worse when it is told to three figures: 1180 where 1178 counts.
    pub(super) fn is_between(&self, low: f64, high: f64) -> bool {
        let middle = 0.5 * (low.abs() + high.abs());
        let third = unit_of_figure(middle, COMMON_FIGURES);
        let most = 0.005 * middle;
        let finer = (0.5 * third).min(most) * (1.0 + 1e-9);
        let rounded = match self.written.significant == COMMON_FIGURES {
            true => finer + 0.5 * self.written.last_place,
            false => 0.0,
        };
        let unit = self.written.last_place.max(0.5 * third).min(most);
        let unit = unit.max(rounded);
        self.value >= low - unit && self.value <= high + unit
    }

    /// True if this number is a value whose further digits were cut off.
    fn is_cut(&self, value: f64) -> bool {
        let apart = (self.value - value).abs();
        let smaller = self.value.abs() < value.abs() && self.value * value >= 0.0;
        smaller && apart < self.written.last_place.min(0.005 * value.abs()) * (1.0 - 1e-6)
    }
}

/// A value of a step that is off by no more than this share may be a rounding of it.
const ROUNDED_STEP: f64 = 0.01;

/// So many times as far as rounding reaches must what follows from her own values be from what is
/// right, so that nothing between the two is taken for a rounding.
const APART: f64 = 4.0;

/// How finely a number was meant: one that ends in zeros may have been rounded there, as long as
/// three figures are left (1770 N is 1766 N to three figures, 412.0 N is 411.6 N).
pub(super) fn figures_meant(number: f64, written: Written) -> Written {
    let mut meant = written;
    let ends_in_zero = |place: f64| {
        let tens = number / (place * 10.0);
        (tens - libm::round(tens)).abs() <= 1e-9 * tens.abs()
    };
    while written.last_place <= 1.0
        && meant.significant > COMMON_FIGURES
        && ends_in_zero(meant.last_place)
    {
        meant.significant -= 1;
        meant.last_place *= 10.0;
    }
    meant
}

/// Grades a number against a step; `None` where rounding does not explain it.
pub fn grade(board: &Board<'_>, id: StepId, typed: Typed) -> Option<Grade> {
    let accepted = board.accepted(id);
    let (right, _) = accepted.first()?;
    if right[0] == 0.0 {
        // Nothing is told exactly or not at all.
        return match typed.value == 0.0 {
            true => Some(Grade::Holds),
            false => is_left_over(board, id, typed).then_some(Grade::Rounded),
        };
    }
    let shapes = shapes(board, id);
    let any =
        |test: &dyn Fn(f64) -> bool, value: f64| shapes.iter().any(|shape| test(shape.of(value)));
    // One figure is too little to tell that a value is meant.
    let exactly = |value: f64| (typed.value - value).abs() < 1e-9 * value.abs();
    let telling = typed.written.significant >= 2
        || exactly(right[0])
        || id.has_free_sense() && exactly(-right[0]);
    let coarse = too_coarse(id, typed, right[0]) && !is_difference(board, id, typed);
    if telling && !coarse && any(&|value| typed.is(value), right[0]) {
        return Some(Grade::Holds);
    }
    // What her own values give to the figure is no rounding of what is right.
    if typed.written.significant >= COMMON_FIGURES
        && let Some(lines) = exactly_own(board, id, &|value| any(&|value| typed.is(value), value))
    {
        return Some(Grade::Follows(lines));
    }
    let again = says_right_again(board.standing, id, &|value| typed.is(value));
    let reached = || !uses_other_gravity(board) && in_hull(board, id, &shapes, typed) == Some(true);
    if telling && !coarse && (again || reached()) {
        return Some(Grade::Rounded);
    }
    for gravity in board.other_gravities() {
        let value = with_gravity(board, id, gravity);
        let fine = typed.written.significant >= COMMON_FIGURES;
        if fine && value.is_some_and(|value| any(&|value| typed.is(value), value)) {
            return Some(Grade::OtherGravity(gravity));
        }
    }
    for (function, lines) in accepted.iter().skip(1) {
        let value = function[0];
        let whole = telling || exactly(value) || id.has_free_sense() && exactly(-value);
        let nothing = typed.value == 0.0 && value.abs() <= 1e-9 * right[0].abs();
        let near = |value: f64| typed.is(value) || telling && typed.is_between(value, value);
        if nothing || whole && any(&near, value) {
            return Some(Grade::Follows(lines.clone()));
        }
    }
    // The unknown as the learner's own balance gives it, with her numbers as typed.
    let own_root = board
        .standing
        .get(&board.key.sum_of(id).unwrap_or(id))
        .filter(|own| !own.right && board.key.sum_of(id).is_some());
    if let Some(own) = own_root
        && (typed.is(own.value) || (typed.value - own.value).abs() <= 0.003 * own.value.abs())
    {
        return Some(Grade::Follows(vec![own.line]));
    }
    if telling && !coarse && reaches_her_root(board, (id, right[0]), typed) {
        return Some(Grade::Rounded);
    }
    if inputs(board, id).is_empty() {
        if telling && !coarse && any(&|value| typed.is_cut(value), right[0]) {
            return Some(Grade::Rounded);
        }
    } else if telling && !coarse {
        let fine = typed.written.significant > COMMON_FIGURES;
        let mut own = board.own_pins();
        // An earlier wrong value of the same gives nothing for it.
        own.remove(&id);
        let follows = Grade::Follows(lines_of(board, &own));
        if !own.is_empty() {
            own.extend(board.in_place(id).0);
        }
        let hulls = [
            (PinnedSamples::new(), Settled::Rounded, Grade::Rounded),
            (own.clone(), Settled::Rounded, follows.clone()),
            (own.clone(), Settled::Stands, follows),
        ];
        for (pins, settled, grade) in hulls {
            let (low, high) = widened(board, (id, fine), (&pins, settled))?;
            if shapes.iter().any(|shape| {
                let (one, other) = (shape.of(low), shape.of(high));
                typed.is_between(one.min(other), one.max(other))
            }) {
                return Some(grade);
            }
            if own.is_empty() {
                break;
            }
        }
        if let Some(lines) = at_own_slope(board, id, &shapes, typed) {
            return Some(Grade::Follows(lines));
        }
    }
    let figures = typed.written.significant.min(2);
    let to_two = |value: f64| rounded_to(value, figures, typed.value);
    // What comes from values that were rounded may be off by a unit more.
    let way = !inputs(board, id).is_empty() && typed.written.significant == 2;
    let reach = TWO_FIGURES * right[0].abs();
    let near = way && any(&|value| (typed.value - value).abs() <= reach, right[0]);
    // To one figure nearly anything is the same.
    let one = |value: f64| (typed.value - value).abs() <= ONE_FIGURE * value.abs();
    let zeros = |value: f64| {
        let is = |figures| rounded_to(value, figures, typed.value);
        is(2) || is(1) && one(value)
    };
    // What coarse values give, told as coarsely.
    let coarsely = || {
        let (value, _) = with_own_inputs(board, id).filter(|_| goes_coarsely(board))?;
        any(&zeros, value).then_some(())
    };
    // An angle is rounded in degrees, whatever it is counted in.
    let rounded = telling && any(&|value| typed.is(value), right[0]);
    (near
        || rounded
        || coarsely().is_some()
        || typed.written.significant <= 2 && any(&to_two, right[0])
        || trailing_zeros(typed) && any(&zeros, right[0]))
    .then(|| board.few_figures(typed.written.significant))
}

/// The lines of her own that give a number to its last place, in full or as she typed them.
fn exactly_own(board: &Board<'_>, id: StepId, is: &dyn Fn(f64) -> bool) -> Option<Vec<usize>> {
    let accepted = board.accepted(id);
    let mut own = accepted
        .iter()
        .skip(1)
        .filter(|(_, lines)| !lines.is_empty());
    if let Some((_, lines)) = own.find(|(function, _)| is(function[0])) {
        return Some(lines.clone());
    }
    let (value, lines) = with_own_inputs(board, id)?;
    is(value).then_some(lines)
}

/// The lines of her own by which a number is reached with the rope at the slope that her angle
/// between rope and body gives it, and her pull taken in full or as typed.
fn at_own_slope(
    board: &Board<'_>,
    id: StepId,
    shapes: &[Shape],
    typed: Typed,
) -> Option<Vec<usize>> {
    board.own_slopes(id).iter().find_map(|(sampling, line)| {
        let moved = Board {
            sampling,
            memo: Memo::default(),
            ..*board
        };
        let (low, high) = hull(&moved, id, &board.own_pins(), Settled::Rounded)?;
        let reached = shapes.iter().any(|shape| {
            let (one, other) = (shape.of(low), shape.of(high));
            typed.is_between(one.min(other), one.max(other))
        });
        let pull = board
            .unknown()
            .and_then(|unknown| board.standing.get(&unknown));
        let pull = pull.filter(|own| !own.right).map(|own| own.line);
        let mut lines: Vec<usize> = pull.into_iter().chain([*line]).collect();
        lines.sort_unstable();
        lines.dedup();
        reached.then_some(lines)
    })
}

/// What a step comes to with the wrong or coarse values of her own on which it rests, near or far,
/// as she typed them, and the lines of those that matter.
pub(super) fn with_own_inputs(board: &Board<'_>, id: StepId) -> Option<(f64, Vec<usize>)> {
    let hers = |own: &&Own| !own.right || own.is_coarse();
    let wrong = |step: &StepId| board.standing.get(step).filter(hers);
    let mut inputs = nearest_inputs(board.key, id);
    inputs.retain(|step| *step != id && wrong(step).is_some());
    let typed = inputs
        .iter()
        .map(|step| (*step, board.standing[step].value));
    let mut pins: Pins = typed.collect();
    let with = |pins: &Pins| board.key.value(id, board.sampling.own(), pins);
    let value = with(&pins)?;
    // What nearer ones give without it need not be told.
    for step in inputs.iter().rev() {
        let own = pins.remove(step);
        if with(&pins) != Some(value) {
            pins.extend(own.map(|own| (*step, own)));
        }
    }
    let lines: BTreeSet<usize> = pins.keys().map(|step| board.standing[step].line).collect();
    (!pins.is_empty()).then(|| (value, lines.into_iter().collect()))
}

/// True where none of her values is wrong, and some are coarse.
pub(super) fn goes_coarsely(board: &Board<'_>) -> bool {
    let mut hers = board.standing.values();
    hers.clone().all(|own| own.right) && hers.any(Own::is_coarse)
}

/// True for a number of fewer than three figures that is further off than half a per cent: a
/// dropped zero (64 for 64.0) is right, 16 for 16.33 is the right way with too few figures. An angle
/// may be told to the degree.
fn too_coarse(id: StepId, typed: Typed, right: f64) -> bool {
    let angle = id.is_angle() || id.is_direction();
    let off = (typed.value.abs() - right.abs()).abs();
    if angle {
        return off > 0.51_f64.to_radians() && typed.written.last_place > 1.01_f64.to_radians();
    }
    typed.written.significant < COMMON_FIGURES && off > 0.005 * right.abs()
}

/// True for a part of a support's force told as finely as three figures of the forces that it is
/// the difference of.
fn is_difference(board: &Board<'_>, id: StepId, typed: Typed) -> bool {
    let part = id.has_free_sense();
    let forces = inputs(board, id)
        .into_iter()
        .filter_map(|step| board.right(step));
    let largest = forces.map(|function| function[0].abs()).fold(0.0, f64::max);
    part && largest > 0.0
        && typed.written.last_place <= unit_of_figure(largest, COMMON_FIGURES) * (1.0 + 1e-9)
}

/// True for what rounding the forces leaves of a part of a support's force that is nothing.
fn is_left_over(board: &Board<'_>, id: StepId, typed: Typed) -> bool {
    let unit = 0.5 * typed.written.last_place;
    let ends = hull(board, id, &PinnedSamples::new(), Settled::Rounded);
    let reach = ends.map_or(0.0, |(low, high)| low.abs().max(high.abs()));
    is_difference(board, id, typed) && typed.value.abs() <= reach + unit
}

/// True if a number is reached by rounding on the way from right values. What comes straight from
/// the givens has no way: only its own digits may be cut.
fn in_hull(board: &Board<'_>, id: StepId, shapes: &[Shape], typed: Typed) -> Option<bool> {
    if inputs(board, id).is_empty() {
        let right = board.right(id)?[0];
        return Some(shapes.iter().any(|shape| typed.is_cut(shape.of(right))));
    }
    let (low, high) = hull(board, id, &PinnedSamples::new(), Settled::Rounded)?;
    // Who is nearer than rounding allows on the other side is no further off.
    let right = board.right(id)?[0];
    let reach = (high - right).abs().max((right - low).abs());
    // Who tells more than three figures has carried more of them.
    let fine = typed.written.significant > COMMON_FIGURES;
    let reach = reach + carried_sums(board, (id, right), fine);
    let (low, high) = (right - reach, right + reach);
    Some(shapes.iter().any(|shape| {
        let (one, other) = (shape.of(low), shape.of(high));
        typed.is_between(one.min(other), one.max(other))
    }))
}

/// The hull of what follows from her own values, as wide as that of right ones, where no value
/// lies between the two.
fn widened(
    board: &Board<'_>,
    (id, fine): (StepId, bool),
    (pins, settled): (&PinnedSamples, Settled),
) -> Option<(f64, f64)> {
    let (low, high) = hull(board, id, pins, settled)?;
    let given: Pins = pins.iter().map(|(id, own)| (*id, own[0])).collect();
    let value = board.key.value(id, board.sampling.own(), &given);
    let (Some(value), Some(right)) = (value, board.right(id)) else {
        return Some((low, high));
    };
    let reach =
        (high - value).abs().max((value - low).abs()) + carried_sums(board, (id, value), fine);
    let apart = (value.abs() - right[0].abs()).abs();
    match apart > APART * reach.max(0.005 * value.abs()) {
        true => Some((low.min(value - reach), high.max(value + reach))),
        false => Some((low, high)),
    }
}

fn lines_of(board: &Board<'_>, pins: &PinnedSamples) -> Vec<usize> {
    let lines: BTreeSet<usize> = pins
        .keys()
        .filter_map(|id| board.standing.get(id))
        .map(|own| own.line)
        .collect();
    lines.into_iter().collect()
}

/// Pins the unknown to its right value for steps that come before it.
pub(super) fn unknown_pins(board: &Board<'_>, id: StepId, sample: &Sample) -> Pins {
    let mut pins = Pins::new();
    if let Some(unknown) = board.unknown()
        && board.key.rank(id) < board.key.rank(unknown)
        && let Some(value) = board.key.value(unknown, sample, &Pins::new())
    {
        pins.insert(unknown, value);
    }
    pins
}

/// The least and greatest value of a step when earlier quantities are taken in full, as typed, or
/// to three figures; once each by itself, and once each worked out from those before it as they
/// were taken.
fn hull(
    board: &Board<'_>,
    id: StepId,
    own: &PinnedSamples,
    settled: Settled,
) -> Option<(f64, f64)> {
    let pinned = own.iter().map(|(step, own)| (*step, own[0].to_bits()));
    let of = (id, pinned.collect(), settled == Settled::Stands);
    if let Some(known) = board.memo.hulls.borrow().get(&of) {
        return *known;
    }
    let found = hull_anew(board, id, own, settled);
    board.memo.hulls.borrow_mut().insert(of, found);
    found
}

fn hull_anew(
    board: &Board<'_>,
    id: StepId,
    own: &PinnedSamples,
    settled: Settled,
) -> Option<(f64, f64)> {
    let mut base = unknown_pins(board, id, board.sampling.own());
    for (step, function) in own {
        if *step != id {
            base.insert(*step, function[0]);
        }
    }
    if settled == Settled::Stands {
        let right = board.standing.iter().filter(|(_, line)| line.right);
        for (step, line) in right.filter(|(step, _)| **step != id) {
            let key = board.right(*step).map_or(line.value, |right| right[0]);
            // One counted the other way round is no other value.
            let turned = line.value * key < 0.0;
            base.insert(*step, if turned { -line.value } else { line.value });
        }
    }
    let mut steps = inputs(board, id);
    steps.sort_by_key(|step| in_order(board, *step));
    let mut reached = (f64::INFINITY, f64::NEG_INFINITY);
    let alone = base.clone();
    for from in [None, Some(&alone)] {
        let hull = Hull {
            board,
            id,
            own,
            settled,
            from,
        };
        hull.widen(&steps, &mut base, &mut reached)?;
    }
    Some(reached)
}

/// How a value that she has right is taken beside wrong ones of her own before it.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Settled {
    /// As a rounding of what they give, if it is one.
    Rounded,
    /// As it stands, whatever they give.
    Stands,
}

/// How earlier quantities are taken.
struct Hull<'a> {
    board: &'a Board<'a>,
    id: StepId,
    own: &'a PinnedSamples,
    settled: Settled,
    /// What each is worked out from; `None` for those before it as they were taken.
    from: Option<&'a Pins>,
}

impl Hull<'_> {
    /// Takes the first of `steps` in each of its ways, and the others after it.
    fn widen(&self, steps: &[StepId], pins: &mut Pins, reached: &mut (f64, f64)) -> Option<()> {
        let (board, sample) = (self.board, self.board.sampling.own());
        let Some((step, later)) = steps.split_first() else {
            let value = board.key.value(self.id, sample, pins)?;
            *reached = (reached.0.min(value), reached.1.max(value));
            return Some(());
        };
        let full = board.key.value(*step, sample, self.from.unwrap_or(pins));
        let Some(full) = full else {
            return self.widen(later, pins, reached);
        };
        let line = board.standing.get(step);
        let line = line.filter(|line| line.right || self.own.contains_key(step));
        // Between what her own values give and what stands right lies no value of the step.
        let near = |line: &&Own| {
            self.own.is_empty() || (line.value - full).abs() <= ROUNDED_STEP * full.abs()
        };
        let stands = line.filter(|_| self.settled == Settled::Stands);
        let mut ways = match stands {
            Some(_) => Vec::new(),
            None => vec![full],
        };
        match stands.or(line.filter(near)) {
            Some(line) => {
                // A right value counted the other way round is no other value, in full or as typed.
                let turned = |value: f64| line.right && value * full < 0.0;
                let in_sense = |value: f64| if turned(value) { -value } else { value };
                ways.push(in_sense(line.value));
                ways.extend(line.typed.map(|(typed, _)| in_sense(typed)));
                // As the program shows it.
                ways.push(in_sense(carried(board, *step, line.value)));
            }
            None => ways.push(carried(board, *step, full)),
        }
        ways.sort_by(f64::total_cmp);
        ways.dedup_by(|one, other| (*one - *other).abs() <= 1e-12 * other.abs());
        // Only the ends count for a value that goes one way with each input.
        if ways.len() > 2 {
            ways = vec![ways[0], ways[ways.len() - 1]];
        }
        let before = pins.get(step).copied();
        for way in ways {
            pins.insert(*step, way);
            self.widen(later, pins, reached)?;
        }
        match before {
            Some(value) => pins.insert(*step, value),
            None => pins.remove(step),
        };
        Some(())
    }
}

/// The calculated quantities that a step rests on, nearest first, without the unknown's ring.
fn inputs(board: &Board<'_>, id: StepId) -> Vec<StepId> {
    // A general working has more on the way, and each counts less.
    let most = if id.is_general() {
        MOST_GENERAL
    } else {
        MOST_INPUTS
    };
    let mut found: Vec<StepId> = Vec::new();
    let mut open = vec![id];
    while let Some(step) = open.pop() {
        for step in board.key.inputs(step) {
            let calculated = !matches!(step, StepId::Distance(_)) && !step.is_angle();
            let fresh = step != id && !found.contains(&step) && found.len() < most;
            // A multiple of the unknown asked comes after it.
            let in_ring = id.is_general() && board.key.open_in(step).contains(&id);
            if calculated && fresh && !in_ring {
                found.push(step);
                open.insert(0, step);
            }
        }
    }
    found
}

/// True if `typed` is `value` to so many figures.
fn rounded_to(value: f64, figures: u8, typed: f64) -> bool {
    (to_figures(value, figures.max(1)) - typed).abs() <= 1e-9 * value.abs()
}

/// True for whole numbers whose last shown digits are zeros: 230 may be two figures, and so may
/// 1200, which is taken for three.
fn trailing_zeros(typed: Typed) -> bool {
    let place = typed.written.last_place;
    let tens = typed.value / (10.0 * place);
    place >= 1.0 && typed.value != 0.0 && (tens - libm::round(tens)).abs() <= 1e-9
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn three_figures_are_no_worse_than_four() {
        // Hand-made: with half a unit of the third figure, 5, values from 1165.4 to 1178 count.
        for (value, significant, last_place, counts) in [
            (1178.0, 4, 1.0, true),
            (1179.0, 4, 1.0, false),
            (1180.0, 3, 10.0, true),
            (1190.0, 3, 10.0, false),
            (1160.0, 3, 10.0, false),
            (1150.0, 3, 10.0, false),
        ] {
            let typed = Typed {
                value,
                written: Written {
                    significant,
                    last_place,
                },
            };
            assert_eq!(typed.is_between(1170.4, 1173.0), counts, "{value}");
        }
    }
}
