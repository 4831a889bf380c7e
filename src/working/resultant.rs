//! Known forces added into one: parallel ones, and those that act at one point.

use super::angle::Turn;
use super::build::Builder;
use super::force::part_name;
use super::place::{Run, Signed, sided};
use super::sense::{Sense, sense_of};
use super::triangle::{Section, Side, no_triangle, turn_of};
use super::trouble::{Underivable, listed};
use super::{Expression, Meaning, Quantity, Rule};
use crate::key::{Axis, Formula};
use crate::plane::Vector;
use crate::text::Symbol;
use crate::units::Dimension;

impl Builder<'_> {
    /// So many sides of these: the fewest of them that must be are added into one. `None` where they
    /// can not be.
    pub(super) fn added(
        &mut self,
        sides: &[Side],
        most: usize,
    ) -> Option<Result<Vec<Side>, Underivable>> {
        if sides.len() <= most {
            return Some(Ok(sides.to_vec()));
        }
        let apart: Vec<Option<usize>> = match most {
            0 => return None,
            1 => vec![None],
            _ if most == 2 => (0..sides.len()).rev().map(Some).collect(),
            _ => return None,
        };
        for left in apart {
            let rest = sides.iter().enumerate().filter(|(at, _)| Some(*at) != left);
            let rest: Vec<Side> = rest.map(|(_, side)| side.clone()).collect();
            if let Some(sum) = self.one_of(rest) {
                let left = left.and_then(|at| sides.get(at)).cloned();
                return Some(sum.map(|mut sides| {
                    sides.extend(left);
                    sides
                }));
            }
        }
        None
    }

    /// Forces as one, where they are parallel or act at one point.
    fn one_of(&mut self, sides: Vec<Side>) -> Option<Result<Vec<Side>, Underivable>> {
        let first = sides.first()?.turn.clone()?;
        let along = |side: &Side| {
            let off = side.turn.clone().map(|turn| turn.plus(-1.0, &first));
            off.and_then(|off| off.fixed_degrees())
                .map(|degrees| degrees.rem_euclid(360.0))
        };
        let parallel = sides
            .iter()
            .all(|side| matches!(along(side), Some(0.0 | 180.0)));
        let here = self.system.point(&sides.first()?.at, &self.values);
        let at_one_point = sides
            .iter()
            .all(|side| (self.system.point(&side.at, &self.values) - here).size() < 1e-9);
        match (parallel, at_one_point) {
            (true, _) => {
                let signs = sides
                    .iter()
                    .map(|side| if along(side) == Some(0.0) { 1.0 } else { -1.0 })
                    .collect();
                Some(self.parallel_sum(sides, signs, first))
            }
            (false, true) => Some(self.sum_at_a_point(sides)),
            (false, false) => None,
        }
    }

    /// Parallel forces as one: its size is their sum, its line by moments about the first's place.
    fn parallel_sum(
        &mut self,
        sides: Vec<Side>,
        signs: Vec<f64>,
        turn: Turn,
    ) -> Result<Vec<Side>, Underivable> {
        let slope = turn.slope(&|atom| self.atom(atom));
        // Upright and level forces are the ones whose line a person finds in one step.
        let axis = match (slope.right == 0.0, slope.up == 0.0) {
            (true, _) => Axis::Horizontal,
            (_, true) => Axis::Vertical,
            _ => {
                return Err(no_triangle(&format!(
                    "it adds parallel forces into one here only where they are level or upright, \
                     and {} slant; take another method",
                    named(&sides)
                )));
            }
        };
        let sized = sides.iter().zip(&signs).map(|(side, sign)| {
            let size = side.size.clone().unwrap_or(Formula::Number(0.0));
            (*sign, size)
        });
        let sized: Vec<Signed> = sized.collect();
        let Some((sign, sum)) = self.lasting_sum(sized.clone()) else {
            return Err(cancelled(&sides));
        };
        let stem = self.unique("R");
        let act = sides[0].act;
        let size = self.add(
            stem.clone(),
            Dimension::FORCE,
            Meaning::Sum,
            Rule::Formula(sum),
        );
        let mut lines = vec![size];
        let mut moments: Vec<Signed> = Vec::new();
        let from = sides[0].at.clone();
        for (side, (its, amount)) in sides.iter().zip(&sized) {
            let way = self.way(&from, &side.at);
            if let Some((side, length)) = self.coordinate(&way, axis) {
                moments.push((its * side * sign, amount.clone().times(length)));
            }
        }
        let mut shift = None;
        if let Some((side, moment)) = self.signed_sum(moments) {
            let symbol = self.unique(&format!("d_{}", stem.as_str().replace('_', "")));
            let rule = Rule::Formula(moment.over(Formula::step(size)));
            let distance = self.add(symbol, Dimension::LENGTH, Meaning::SumAt, rule);
            lines.push(distance);
            shift = Some((side, distance));
        }
        let shown = |id: Quantity| Symbol::new(self.name_of(&Formula::step(id))).shown();
        let from_name = shift.map(|(side, distance)| {
            let force = Symbol::new(sides[0].name.clone()).shown();
            let side = match (axis, side > 0.0) {
                (Axis::Horizontal, true) => Sense::Right,
                (Axis::Horizontal, false) => Sense::Left,
                (Axis::Vertical, true) => Sense::Up,
                (Axis::Vertical, false) => Sense::Down,
            };
            (shown(distance), force, side)
        });
        let sum = shown(size);
        let turn = match sign < 0.0 {
            true => turn.plus(1.0, &Turn::fixed(180.0)),
            false => turn,
        };
        let way = self.sense_along(&turn);
        self.working.triangle.push(Section::Resultant {
            of: named(&sides),
            sum,
            from: from_name,
            way,
            lines,
        });
        self.shift = shift.map(|(side, distance)| Run {
            factor: side,
            length: Formula::step(distance),
            turn: Turn::fixed(if axis == Axis::Horizontal { 0.0 } else { 90.0 }),
        });
        Ok(vec![Side {
            name: self.name_of(&Formula::step(size)),
            is_sum: true,
            size: Some(Formula::step(size)),
            act,
            at: from,
            turn: Some(turn),
        }])
    }

    /// The sum of the parts of forces along an axis.
    fn sum_along(&self, sides: &[Side], axis: Axis) -> Option<Signed> {
        let part = |side: &Side| {
            let (turn, size) = (side.turn.as_ref()?, side.size.clone()?);
            let slope = turn.slope(&|atom| self.atom(atom));
            let (sign, straight, ratio) = match axis {
                Axis::Horizontal => (slope.right, slope.up == 0.0, slope.angle.cosine()),
                Axis::Vertical => (slope.up, slope.right == 0.0, slope.angle.sine()),
            };
            let amount = match straight {
                true => size,
                false => size.times(ratio),
            };
            (sign != 0.0).then_some((sign, amount))
        };
        self.lasting_sum(sides.iter().filter_map(part).collect())
    }

    /// A sum that is more than the dust of rounding at these values.
    fn lasting_sum(&self, parts: Vec<Signed>) -> Option<Signed> {
        let size = |part: &Expression| self.number(part, false).unwrap_or(0.0).abs();
        let scale: f64 = parts.iter().map(|(_, part)| size(part)).sum();
        self.signed_sum(parts)
            .filter(|(_, sum)| size(sum) > 1e-9 * scale)
    }

    /// Which way what has this direction acts.
    fn sense_along(&self, turn: &Turn) -> Sense {
        sense_of(Vector::at_angle(turn.value(&|atom| self.atom(atom))))
    }

    /// Forces at one point as one, by its parts.
    fn sum_at_a_point(&mut self, sides: Vec<Side>) -> Result<Vec<Side>, Underivable> {
        let act = sides[0].act;
        let stem = self.unique("R");
        let across = self.sum_along(&sides, Axis::Horizontal);
        let upright = self.sum_along(&sides, Axis::Vertical);
        let mut lines = Vec::new();
        let mut sum_of = |builder: &mut Self, name: Symbol, sum: Expression| {
            let rule = Rule::Formula(sum);
            let sum = builder.add(name, Dimension::FORCE, Meaning::Sum, rule);
            lines.push(sum);
            sum
        };
        let (size, turn) = match (across, upright) {
            (Some((right, x)), Some((up, y))) => {
                // Its parts have its own name.
                let named = |axis| Symbol::new(part_name(stem.as_str(), axis));
                let x = sum_of(self, named(Axis::Horizontal), x);
                let y = sum_of(self, named(Axis::Vertical), y);
                let square = |id: Quantity| Formula::Square(Box::new(Formula::step(id)));
                let root = Formula::SquareRoot(Box::new(Formula::Sum(vec![square(x), square(y)])));
                let size = sum_of(self, stem.clone(), root);
                let slope = Formula::ArcTangent(Box::new(Formula::step(y).over(Formula::step(x))));
                let wish = format!("ψ_{}", stem.as_str().replace('_', ""));
                let slope = self.angle_quantity(Meaning::Slope(act), &wish, slope);
                lines.extend(slope.inputs());
                let turn = sided(&turn_of(&slope), right > 0.0, up > 0.0);
                (size, turn)
            }
            (Some((right, x)), None) => {
                let turn = Turn::fixed(if right > 0.0 { 0.0 } else { 180.0 });
                (sum_of(self, stem, x), turn)
            }
            (None, Some((up, y))) => {
                let turn = Turn::fixed(if up > 0.0 { 90.0 } else { 270.0 });
                (sum_of(self, stem, y), turn)
            }
            (None, None) => return Err(cancelled(&sides)),
        };
        let sum = Symbol::new(self.name_of(&Formula::step(size))).shown();
        self.working.triangle.push(Section::Resultant {
            of: named(&sides),
            sum,
            from: None,
            way: self.sense_along(&turn),
            lines,
        });
        Ok(vec![Side {
            name: self.name_of(&Formula::step(size)),
            is_sum: true,
            size: Some(Formula::step(size)),
            act,
            at: sides[0].at.clone(),
            turn: Some(turn),
        }])
    }
}

/// Why forces that cancel are no side: they are in balance, or a couple.
fn cancelled(sides: &[Side]) -> Underivable {
    no_triangle(&format!("{} add up to no single force", named(sides)))
}

/// The names of forces in a row.
fn named(sides: &[Side]) -> String {
    let shown = |side: &Side| Symbol::new(side.name.clone()).shown();
    listed(&sides.iter().map(shown).collect::<Vec<_>>())
}
