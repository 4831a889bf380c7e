//! Where things are, as formulas.

use super::angle::Turn;
use super::build::Builder;
use super::gather::gathered;
use super::{Expression, Meaning, Quantity, Rule};
use crate::key::{Atom, Axis, Formula, difference, place_length};
use crate::problem::{GivenId, Place, Reference, Side, Upright};
use crate::system::{ActId, Bearing, BodyId, Coordinate, LoadKind, Spot};
use crate::units::Dimension;

/// A straight way from one point to another.
#[derive(Clone, Debug)]
pub(super) struct Run {
    /// +1, or −1 against the turn; a multiple where a coordinate says one.
    pub(super) factor: f64,
    pub(super) length: Expression,
    pub(super) turn: Turn,
}

/// A size with its sign, as a formula that is positive at the printed values.
pub(super) type Signed = (f64, Expression);

impl Builder<'_> {
    /// A place on a leg by its distance from the leg's beginning.
    pub(super) fn on_leg(&mut self, spot: &Spot) -> Option<(BodyId, usize, Expression)> {
        match spot {
            Spot::On { body, leg, place } => {
                let length = self.system.leg(*body, *leg)?.length;
                Some((*body, *leg, place_length(*place, length)))
            }
            Spot::Resultant(load) => {
                let at = self.resultant_at(*load)?;
                let found = self.system.parts().loads.get(*load)?;
                match &found.kind {
                    LoadKind::Spread { leg, .. } => Some((found.body, *leg, Formula::step(at))),
                    _ => None,
                }
            }
            Spot::Origin | Spot::At { .. } | Spot::Centroid(_) => None,
        }
    }

    /// Every leg on which a spot lies, with its distance from the leg's beginning: a joint lies on
    /// the legs of both bodies.
    pub(super) fn legs_of(&mut self, spot: &Spot) -> Vec<(BodyId, usize, Expression)> {
        let mut found: Vec<_> = self.on_leg(spot).into_iter().collect();
        let here = self.system.point(spot, &self.values);
        let there = self.system.point(spot, &self.moved);
        let bodies = self.system.parts().bodies.len();
        for body in (0..bodies).map(BodyId) {
            let legs = self.system.parts().bodies[body.0].legs.len();
            for leg in 0..legs {
                for place in [Place::Foot, Place::Tip] {
                    let end = Spot::On { body, leg, place };
                    let known = found
                        .iter()
                        .any(|(one, other, _)| (*one, *other) == (body, leg));
                    let near = (self.system.point(&end, &self.values) - here).size() < 1e-9
                        && (self.system.point(&end, &self.moved) - there).size() < 1e-9;
                    if near && !known {
                        found.extend(self.on_leg(&end));
                    }
                }
            }
        }
        found
    }

    /// The way from the origin to a spot.
    pub(super) fn runs(&mut self, spot: &Spot, depth: usize) -> Vec<Run> {
        match spot {
            Spot::Origin => Vec::new(),
            Spot::At { x, y } => {
                let mut runs = self.coordinate_runs(x, 0.0);
                runs.extend(self.coordinate_runs(y, 90.0));
                runs
            }
            Spot::Centroid(weight) => self.centroid_runs(*weight, depth),
            Spot::On { .. } | Spot::Resultant(_) => {
                let Some((body, leg, distance)) = self.on_leg(spot) else {
                    return Vec::new();
                };
                let Some(found) = self
                    .system
                    .parts()
                    .bodies
                    .get(body.0)
                    .filter(|_| depth < 16)
                else {
                    return Vec::new();
                };
                let mut runs = self.runs(&found.start.clone(), depth + 1);
                for before in 0..leg {
                    let length = Formula::given(found.legs[before].length);
                    let turn = self.leg_turn(body, before);
                    runs.push(Run {
                        factor: 1.0,
                        length,
                        turn,
                    });
                }
                if distance != Formula::Number(0.0) {
                    let turn = self.leg_turn(body, leg);
                    runs.push(Run {
                        factor: 1.0,
                        length: distance,
                        turn,
                    });
                }
                runs
            }
        }
    }

    /// The ways along an axis that a coordinate tells; the size of a negative one is told.
    fn coordinate_runs(&self, coordinate: &Coordinate, degrees: f64) -> Vec<Run> {
        let run = |(factor, given): &(f64, GivenId)| {
            let length = Formula::given(*given);
            let (factor, length) = match self.values.get(given.0) {
                Some(value) if *value < 0.0 => (-factor, Formula::Absolute(Box::new(length))),
                _ => (*factor, length),
            };
            Run {
                factor,
                length,
                turn: Turn::fixed(degrees),
            }
        };
        coordinate.0.iter().map(run).collect()
    }

    /// The way from a pivot to a spot, runs there and back left out.
    pub(super) fn way(&mut self, pivot: &Spot, spot: &Spot) -> Vec<Run> {
        let mut runs = self.runs(spot, 0);
        for mut back in self.runs(pivot, 0) {
            back.factor = -back.factor;
            runs.push(back);
        }
        let mut kept: Vec<Run> = Vec::new();
        for run in runs {
            let Some(same) = kept.iter_mut().find(|one| one.turn == run.turn) else {
                kept.push(run);
                continue;
            };
            if same.factor == 0.0 {
                // There and back is no way.
                *same = run;
            } else if same.length == run.length {
                same.factor += run.factor;
            } else {
                let signed = |run: &Run| match run.factor {
                    1.0 => run.length.clone(),
                    -1.0 => Formula::Negative(Box::new(run.length.clone())),
                    factor => Formula::Number(factor).times(run.length.clone()),
                };
                let mut parts = flat(signed(same));
                parts.extend(flat(signed(&run)));
                let terms = gathered(parts.into_iter().map(|part| (1.0, part)).collect());
                (same.factor, same.length) = match &terms[..] {
                    [] => (0.0, Formula::Number(0.0)),
                    [(sign, only)] => (*sign, only.clone()),
                    _ => {
                        let signed = |(sign, one): (f64, Expression)| {
                            if sign < 0.0 { opposite(one) } else { one }
                        };
                        let terms = terms.into_iter().map(signed).collect();
                        (1.0, Formula::Sum(positive_first(terms)))
                    }
                };
            }
        }
        // Whatever the numbers, some lengths take each other away.
        kept.retain(|run| {
            let vanishes = |moved: bool| {
                let length = self.number(&run.length, moved);
                length.is_some_and(|length| length.abs() < 1e-12)
            };
            run.factor != 0.0 && !(vanishes(false) && vanishes(true))
        });
        for run in &mut kept {
            // A difference is told with the greater length first.
            if let Formula::Sum(parts) = &run.length
                && self
                    .number(&run.length, false)
                    .is_some_and(|length| length < 0.0)
            {
                let turned = parts.iter().cloned().map(opposite).collect();
                run.length = Formula::Sum(positive_first(turned));
                run.factor = -run.factor;
            }
        }
        kept
    }

    /// A way's part along an axis: its sign and its size; `None` where it vanishes.
    pub(super) fn coordinate(&self, way: &[Run], axis: Axis) -> Option<Signed> {
        let mut parts: Vec<Signed> = Vec::new();
        for run in way {
            let slope = run.turn.slope(&|atom| self.atom(atom));
            let (side, level) = match axis {
                Axis::Horizontal => (slope.right, slope.up == 0.0),
                Axis::Vertical => (slope.up, slope.right == 0.0),
            };
            if side == 0.0 {
                continue;
            }
            let length = multiple(run.factor.abs(), run.length.clone());
            let amount = match (level, axis) {
                (true, _) => length,
                (false, Axis::Horizontal) => length.times(slope.angle.cosine()),
                (false, Axis::Vertical) => length.times(slope.angle.sine()),
            };
            parts.push((side * run.factor.signum(), amount));
        }
        self.signed_sum(parts)
    }

    /// The sum of signed parts as one signed size; `None` where it vanishes whatever the numbers.
    pub(super) fn signed_sum(&self, mut parts: Vec<Signed>) -> Option<Signed> {
        parts.retain(|(_, amount)| *amount != Formula::Number(0.0));
        let total = |moved: bool| -> f64 {
            parts
                .iter()
                .map(|(sign, amount)| sign * self.number(amount, moved).unwrap_or(f64::NAN))
                .sum()
        };
        let (here, there) = (total(false), total(true));
        let scale: f64 = parts
            .iter()
            .map(|(_, amount)| self.number(amount, false).unwrap_or(0.0).abs())
            .sum();
        if parts.is_empty() || (here.abs() <= 1e-12 * scale && there.abs() <= 1e-11 * scale) {
            return None;
        }
        let sign = if here < 0.0 { -1.0 } else { 1.0 };
        let mut flat_parts: Vec<Signed> = Vec::new();
        for (side, amount) in parts {
            match amount {
                Formula::Sum(inner) => flat_parts.extend(inner.into_iter().map(|one| (side, one))),
                amount => flat_parts.push((side, amount)),
            }
        }
        let terms = gathered(flat_parts).into_iter().map(|(side, amount)| {
            if side * sign < 0.0 {
                opposite(amount)
            } else {
                amount
            }
        });
        let mut flipped = positive_first(terms.collect());
        let amount = match flipped.len() {
            1 => flipped.remove(0),
            _ => Formula::Sum(flipped),
        };
        Some((sign, amount))
    }

    /// The direction of a leg.
    pub(super) fn leg_turn(&mut self, body: BodyId, leg: usize) -> Turn {
        match self.system.leg(body, leg).map(|leg| leg.bearing.clone()) {
            Some(bearing) => self.turn(&bearing, &Spot::Origin, None),
            None => Turn::fixed(0.0),
        }
    }

    /// A direction. `act` is the action that it belongs to, for the name of an angle that only
    /// coordinates tell.
    pub(super) fn turn(&mut self, bearing: &Bearing, at: &Spot, act: Option<ActId>) -> Turn {
        match bearing {
            Bearing::Up => Turn::fixed(90.0),
            Bearing::Down => Turn::fixed(270.0),
            Bearing::Level(Side::Right) => Turn::fixed(0.0),
            Bearing::Level(Side::Left) => Turn::fixed(180.0),
            Bearing::Oblique {
                angle,
                from,
                upright,
                side,
            } => {
                let given = Turn::angle(Atom::Given(*angle));
                let slope = match from {
                    Reference::Horizontal => given,
                    Reference::Vertical => Turn::fixed(90.0).plus(-1.0, &given),
                };
                sided(&slope, *side == Side::Right, *upright == Upright::Up)
            }
            Bearing::FromAxis { angle } => Turn::angle(Atom::Given(*angle)),
            Bearing::Along { body, leg, onward } => self.onward(*body, *leg, *onward),
            Bearing::Across { body, leg, left } => {
                let quarter = Turn::fixed(if *left { 90.0 } else { -90.0 });
                self.leg_turn(*body, *leg).plus(1.0, &quarter)
            }
            Bearing::FromLeg {
                angle,
                body,
                leg,
                onward,
                left,
            } => {
                let sign = if left == onward { 1.0 } else { -1.0 };
                self.onward(*body, *leg, *onward)
                    .plus(sign, &Turn::angle(Atom::Given(*angle)))
            }
            Bearing::Towards(spot) => self.towards(at, spot, act),
        }
    }

    fn onward(&mut self, body: BodyId, leg: usize, onward: bool) -> Turn {
        let turn = self.leg_turn(body, leg);
        if onward {
            turn
        } else {
            turn.plus(1.0, &Turn::fixed(180.0))
        }
    }

    /// The direction from one spot to another; an angle of its own where only coordinates tell it.
    fn towards(&mut self, at: &Spot, spot: &Spot, act: Option<ActId>) -> Turn {
        let way = self.way(at, spot);
        if let [only] = way.as_slice() {
            let back = if only.factor < 0.0 { 180.0 } else { 0.0 };
            let negative = self.number(&only.length, false).unwrap_or(0.0) < 0.0;
            let turned = if negative { 180.0 } else { 0.0 };
            return only.turn.clone().plus(1.0, &Turn::fixed(back + turned));
        }
        let (right, up) = (
            self.coordinate(&way, Axis::Horizontal),
            self.coordinate(&way, Axis::Vertical),
        );
        match (right, up) {
            (None, None) => Turn::fixed(0.0),
            (Some((side, _)), None) => Turn::fixed(if side > 0.0 { 0.0 } else { 180.0 }),
            (None, Some((side, _))) => Turn::fixed(if side > 0.0 { 90.0 } else { 270.0 }),
            (Some((right, width)), Some((up, height))) => {
                let formula = Formula::ArcTangent(Box::new(height.over(width)));
                let act = act.unwrap_or(ActId::Weight(usize::MAX));
                let slope = self.angle_quantity(Meaning::Slope(act), "β", formula);
                let slope = match slope {
                    Formula::Atom(atom) => Turn::angle(atom),
                    _ => Turn::fixed(0.0),
                };
                sided(&slope, right > 0.0, up > 0.0)
            }
        }
    }

    /// Where the resultant of a spread load acts, from the beginning of its leg.
    fn resultant_at(&mut self, index: usize) -> Option<Quantity> {
        let act = ActId::Load(index);
        if let Some(known) = self.working.find(Meaning::ResultantAt(act)) {
            return Some(known);
        }
        let load = self.system.parts().loads.get(index)?;
        let LoadKind::Spread {
            leg,
            from,
            to,
            first,
            last,
            ..
        } = &load.kind
        else {
            return None;
        };
        let length = self.system.leg(load.body, *leg)?.length;
        let (mut begins, mut ends) = (place_length(*from, length), place_length(*to, length));
        let (mut first, mut last) = (first, last);
        if self.number(&begins, false) > self.number(&ends, false) {
            std::mem::swap(&mut begins, &mut ends);
            std::mem::swap(&mut first, &mut last);
        }
        let span = difference(ends, begins.clone());
        let share: Expression = match (first, last) {
            (Some(first), Some(last)) if first == last => span.over(Formula::Number(2.0)),
            (Some(_), None) => span.over(Formula::Number(3.0)),
            (None, Some(_)) => Formula::Number(2.0).times(span).over(Formula::Number(3.0)),
            _ => {
                let value =
                    |given: &Option<GivenId>| given.map_or(Formula::Number(0.0), Formula::given);
                let (first, last) = (value(first), value(last));
                let weighted = Formula::Sum(vec![
                    first.clone(),
                    Formula::Number(2.0).times(last.clone()),
                ]);
                let whole = Formula::Number(3.0).times(Formula::Sum(vec![first, last]));
                span.times(weighted).over(whole)
            }
        };
        let formula = match begins {
            Formula::Number(0.0) => share,
            begins => Formula::Sum(vec![begins, share]),
        };
        let symbol = self.unique(&format!("d_{}", self.suffix(act)));
        Some(self.add(
            symbol,
            Dimension::LENGTH,
            Meaning::ResultantAt(act),
            Rule::Formula(formula),
        ))
    }
}

/// A direction by its slope and its sides.
pub(super) fn sided(slope: &Turn, right: bool, up: bool) -> Turn {
    match (right, up) {
        (true, true) => slope.clone(),
        (false, true) => Turn::fixed(180.0).plus(-1.0, slope),
        (false, false) => Turn::fixed(180.0).plus(1.0, slope),
        (true, false) => Turn::fixed(360.0).plus(-1.0, slope),
    }
}

/// So many times a length: a half of it as L/2.
pub(super) fn multiple(factor: f64, length: Expression) -> Expression {
    let parts = libm::round(1.0 / factor);
    match factor {
        1.0 => length,
        factor if (2.0..=12.0).contains(&parts) && (factor * parts - 1.0).abs() < 1e-12 => {
            length.over(Formula::Number(parts))
        }
        factor => Formula::Number(factor).times(length),
    }
}

fn flat(formula: Expression) -> Vec<Expression> {
    match formula {
        Formula::Sum(parts) => parts,
        Formula::Negative(inner) => match *inner {
            Formula::Sum(parts) => parts.into_iter().map(opposite).collect(),
            inner => vec![Formula::Negative(Box::new(inner))],
        },
        one => vec![one],
    }
}

pub(super) fn opposite(formula: Expression) -> Expression {
    match formula {
        Formula::Negative(inner) => *inner,
        other => Formula::Negative(Box::new(other)),
    }
}

/// Terms with a plus before those with a minus, in their order.
pub(super) fn positive_first(parts: Vec<Expression>) -> Vec<Expression> {
    let (negative, mut positive): (Vec<_>, Vec<_>) = parts
        .into_iter()
        .partition(|part| matches!(part, Formula::Negative(_)));
    positive.extend(negative);
    positive
}
