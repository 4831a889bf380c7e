//! The angles of a triangle of forces, and its sides by the rules of sines and cosines.

use super::angle::Turn;
use super::build::Builder;
use super::meeting::turn_along;
use super::place::{Signed, opposite, sided};
use super::sense::straight;
use super::triangle::{Contact, Section, Side, no_triangle};
use super::trouble::Underivable;
use super::{Expression, Meaning, Quantity, Rule};
use crate::key::{Atom, Formula};
use crate::plane::Vector;
use crate::text::Symbol;
use crate::units::Dimension;

impl Builder<'_> {
    /// The rule of sines from a known side: the sizes that are open, and what follows from them.
    pub(super) fn sines(
        &mut self,
        sides: &[Side],
        angles: &[Expression],
        known: usize,
        contacts: &[Contact],
    ) -> Result<(), Underivable> {
        let sine = |at: usize| match &angles[at] {
            Formula::Degrees(90.0) => None,
            angle => Some(Formula::Sine(Box::new(angle.clone()))),
        };
        let base = sides[known].size.clone().unwrap_or(Formula::Number(0.0));
        // The angles are those of the forces as they act; a size below zero has none of them.
        if self.number(&base, false).is_some_and(|size| size < 0.0) {
            let name = Symbol::new(sides[known].name.clone()).shown();
            return Err(no_triangle(&format!(
                "{name}, from which it starts, acts against the sense in which the file counts \
                 it; turn its line about in the file, or take another method"
            )));
        }
        let mut lines = Vec::new();
        let mut sizes: Vec<Option<Expression>> =
            sides.iter().map(|side| side.size.clone()).collect();
        let mut pairs = vec![(base.clone(), angles[known].clone())];
        for at in (0..3).filter(|at| *at != known) {
            let size = match &sides[at].size {
                Some(size) => size.clone(),
                None => {
                    let mut formula = base.clone();
                    if let Some(over) = sine(at) {
                        formula = formula.times(over);
                    }
                    if let Some(under) = sine(known) {
                        formula = formula.over(under);
                    }
                    let found = self.found(&sides[at], formula, contacts);
                    lines.push(found);
                    Formula::step(found)
                }
            };
            pairs.push((size.clone(), angles[at].clone()));
            sizes[at] = Some(size);
        }
        self.working.triangle.push(Section::Sines { pairs, lines });
        self.tell_parts(sides, &sizes, contacts);
        Ok(())
    }

    /// The angles of the triangle, each opposite to the side at its place.
    pub(super) fn angles(&mut self, sides: &[Side]) -> Result<Vec<Expression>, Underivable> {
        let turns: Vec<Turn> = sides
            .iter()
            .map(|side| side.turn.clone().unwrap_or_else(|| Turn::fixed(0.0)))
            .collect();
        let mut angles = Vec::new();
        for at in 0..3 {
            let (one, other) = (&turns[(at + 1) % 3], &turns[(at + 2) % 3]);
            let inner = self.inner_angle(one, other);
            let value = inner.value(&|atom| self.atom(atom));
            if value.sin().abs() < 1e-6 {
                return Err(self.parallel());
            }
            let wish = format!("α_{}", sides[at].name.replace('_', ""));
            let formula = inner.formula();
            let act = sides[at].act;
            angles.push(self.angle_quantity(Meaning::Corner(act), &wish, formula));
        }
        Ok(angles)
    }

    /// Why three forces of which two are parallel form no triangle.
    pub(super) fn parallel(&self) -> Underivable {
        let ways = self.forces.iter().map(|force| {
            let found = match self.solution.reaction(force.act) {
                Some(found) => found.force,
                None => Vector::at_angle(force.turn.value(&|atom| self.atom(atom))),
            };
            found * (1.0 / found.size())
        });
        let ways: Vec<Vector> = ways.collect();
        let first = ways.first().copied().unwrap_or_default();
        match ways.iter().all(|way| first.cross(*way).abs() < 1e-6) {
            true => Underivable::Parallel,
            false => no_triangle("two of the three sides are parallel"),
        }
    }

    /// The angle between two sides that are drawn one after the other.
    pub(super) fn inner_angle(&self, one: &Turn, other: &Turn) -> Turn {
        let atom = |atom: &Atom<Quantity>| self.atom(atom);
        let mut between = other.clone().plus(-1.0, one);
        let whole = (between.value(&atom).to_degrees() / 360.0).floor();
        between.degrees -= 360.0 * whole;
        if between.value(&atom) > std::f64::consts::PI {
            between = Turn::fixed(360.0).plus(-1.0, &between);
        }
        Turn::fixed(180.0).plus(-1.0, &between)
    }

    /// Two known sides and the angle between them: the third by the rule of cosines. Gives the angle
    /// opposite to the second of the two.
    pub(super) fn two_known(
        &mut self,
        mut sides: Vec<Side>,
        third: usize,
        contacts: &[Contact],
    ) -> Result<Quantity, Underivable> {
        let rest: Vec<usize> = (0..3).filter(|at| *at != third).collect();
        let turn_at = |at: usize| sides[at].turn.clone().unwrap_or_else(|| Turn::fixed(0.0));
        let (first, second) = (turn_at(rest[0]), turn_at(rest[1]));
        let size = |at: usize| sides[at].size.clone().unwrap_or(Formula::Number(0.0));
        let inner = self.inner_angle(&first, &second);
        if inner.value(&|atom| self.atom(atom)).sin().abs() < 1e-6 {
            return Err(self.parallel());
        }
        let act = sides[third].act;
        let wish = format!("α_{}", sides[third].name.replace('_', ""));
        let corner = self.angle_quantity(Meaning::Corner(act), &wish, inner.formula());
        let name = Symbol::new(sides[third].name.clone()).shown();
        self.working
            .triangle
            .push(Section::Angles(vec![(corner.clone(), name)]));
        let (one, two) = (size(rest[0]), size(rest[1]));
        let square = |side: &Expression| Formula::Square(Box::new(side.clone()));
        let mut terms = vec![square(&one), square(&two)];
        if corner != Formula::Degrees(90.0) {
            let twice = Formula::Number(2.0).times(one.clone()).times(two.clone());
            terms.push(opposite(
                twice.times(Formula::Cosine(Box::new(corner.clone()))),
            ));
        }
        let formula = Formula::SquareRoot(Box::new(Formula::Sum(terms)));
        let found = self.found(&sides[third], formula, contacts);
        let other = self.other_corner(&one, &two, &corner, &sides[rest[1]]);
        self.working
            .triangle
            .push(Section::Cosines(vec![found, other]));
        if sides[third].turn.is_none() {
            let turn = self.closing(&first, &second, other);
            let told = self.tell_direction(&sides[third], &turn);
            // The push of a contact lies nearer to the angles of the triangle.
            let is_contact = contacts.iter().any(|contact| contact.act == act);
            let is_straight = told.fixed_degrees().is_some();
            sides[third].turn = Some(if is_contact && !is_straight {
                turn
            } else {
                told
            });
        }
        let mut sizes: Vec<Option<Expression>> =
            sides.iter().map(|side| side.size.clone()).collect();
        sizes[third] = Some(Formula::step(found));
        self.tell_parts(&sides, &sizes, contacts);
        Ok(other)
    }

    /// The direction of the side that closes the triangle of two, from the angle opposite to the
    /// second.
    fn closing(&self, one: &Turn, two: &Turn, corner: Quantity) -> Turn {
        let between = two.clone().plus(-1.0, one);
        let side = libm::sin(between.value(&|atom| self.atom(atom))).signum();
        one.clone()
            .plus(1.0, &Turn::fixed(180.0))
            .plus(side, &Turn::angle(Atom::Step(corner)))
    }

    /// Tells the direction of the side that was found by the rule of cosines, and gives it by the
    /// angle that it told.
    fn tell_direction(&mut self, side: &Side, turn: &Turn) -> Turn {
        let found = self.atom_reaction(side.act);
        if let Some(sense) = straight(found) {
            self.working.triangle.push(Section::Acts {
                force: Symbol::new(side.name.clone()).shown(),
                sense,
                lines: Vec::new(),
            });
            return turn_along(sense);
        }
        let slope = turn.slope(&|atom| self.atom(atom)).angle.formula();
        let symbol = self.unique(&format!("ψ_{}", side.name.replace('_', "")));
        let meaning = Meaning::Direction(side.act);
        let slope = self.add(symbol, Dimension::ANGLE, meaning, Rule::Formula(slope));
        if let Some(Section::Cosines(lines)) = self.working.triangle.last_mut() {
            lines.push(slope);
        }
        let slope = Turn::angle(Atom::Step(slope));
        sided(&slope, found.x > 0.0, found.y > 0.0)
    }

    /// The angle opposite to the second of two known sides, from them and the angle between them: it
    /// tells the direction of the third.
    fn other_corner(
        &mut self,
        one: &Expression,
        two: &Expression,
        corner: &Expression,
        second: &Side,
    ) -> Quantity {
        let ratio = |sine: bool| match (corner, sine) {
            (Formula::Degrees(90.0), true) => Some(two.clone()),
            (Formula::Degrees(90.0), false) => None,
            (corner, true) => Some(two.clone().times(Formula::Sine(Box::new(corner.clone())))),
            (corner, false) => Some(two.clone().times(Formula::Cosine(Box::new(corner.clone())))),
        };
        let mut along: Vec<Signed> = vec![(1.0, one.clone())];
        along.extend(ratio(false).map(|part| (-1.0, part)));
        let across = ratio(true).unwrap_or_else(|| two.clone());
        let formula = match self.signed_sum(along) {
            None => Formula::Degrees(90.0),
            Some((sign, along)) => {
                let acute = Formula::ArcTangent(Box::new(across.over(along)));
                match sign < 0.0 {
                    true => Formula::Sum(vec![
                        Formula::Degrees(180.0),
                        Formula::Negative(Box::new(acute)),
                    ]),
                    false => acute,
                }
            }
        };
        let symbol = self.unique(&format!("α_{}", second.name.replace('_', "")));
        let meaning = Meaning::Corner(second.act);
        self.add(symbol, Dimension::ANGLE, meaning, Rule::Formula(formula))
    }
}
