//! The triangle of forces: a body under three forces whose lines meet in one point.

use super::angle::Turn;
use super::build::Builder;
use super::force::Elementary;
use super::place::{Signed, opposite};
use super::triangle_sought::tell_sought;
use super::trouble::Underivable;
use super::{Expression, Meaning, Quantity, Rule, Working};
use crate::key::{Atom, Formula};
use crate::system::{ActId, HoldKind, Spot};
use crate::text::Symbol;
use crate::units::Dimension;

/// A part of the working by the triangle of forces.
#[derive(Clone, Debug, PartialEq)]
pub enum Section {
    /// Which three forces act.
    Three {
        /// By their names and what makes them.
        names: Vec<(String, String)>,
        /// The given ones that are worked out: weights.
        lines: Vec<Quantity>,
    },
    /// The known forces added into one.
    Resultant {
        /// The name of their sum.
        sum: String,
        /// The name of its distance from another force, and of that force, where it acts elsewhere.
        from: Option<(String, String)>,
        /// The quantities in order.
        lines: Vec<Quantity>,
    },
    /// Where the lines meet, from the point where the force of unknown direction acts, and so the
    /// direction of that force.
    Meeting {
        /// The name of that force.
        open: String,
        /// Where it acts.
        from: Spot,
        /// The name of the point.
        point: &'static str,
        /// The quantities in order.
        lines: Vec<Quantity>,
    },
    /// The angles of the triangle, each with the name of the force opposite to it.
    Angles(Vec<(Expression, String)>),
    /// The third side by the rule of cosines.
    Cosines(Vec<Quantity>),
    /// The rule of sines: each side over the sine of the angle opposite, and what follows.
    Sines {
        /// Side and angle.
        pairs: Vec<(Expression, Expression)>,
        /// What follows.
        lines: Vec<Quantity>,
    },
    /// Parts that follow from a force: the push and friction of a contact.
    Parts(Vec<Quantity>),
}

/// One of the three forces.
pub(super) struct Side {
    pub(super) name: String,
    /// True for given forces added into one.
    pub(super) is_sum: bool,
    /// Its size, where it is known.
    pub(super) size: Option<Expression>,
    pub(super) act: ActId,
    pub(super) at: Spot,
    /// The way in which it acts, where its line is known.
    pub(super) turn: Option<Turn>,
}

/// A rough contact whose force is one of the three: its push, and the angle with it.
pub(super) struct Contact {
    pub(super) act: ActId,
    pub(super) push: Turn,
}

impl Builder<'_> {
    /// The working by the triangle of forces.
    pub(super) fn triangle(self) -> Result<Working, Underivable> {
        let system = self.system;
        let sought = self.sought_act();
        let mut working = self.three_forces()?;
        tell_sought(system, sought, &mut working)?;
        Ok(working)
    }

    fn three_forces(mut self) -> Result<Working, Underivable> {
        let refuse = |why: &str| Err(no_triangle(why));
        if self.system.parts().bodies.len() != 1 {
            return refuse("it is for one body, and here there are more");
        }
        if let Some(twist) = self.twists.first() {
            return Err(no_triangle(&self.turned_by(twist.act)));
        }
        let sought = self.sought_act().map(|(act, _)| act);
        let (open, known): (Vec<Elementary>, Vec<Elementary>) = (self.forces.iter())
            .filter(|force| force.unknown.is_none())
            .cloned()
            .partition(|force| sought == Some(force.act));
        let mut contacts = Vec::new();
        let mut unknown = self.unknown_sides(&mut contacts)?;
        unknown.extend(open.into_iter().map(|force| Side {
            name: self.symbol_of(force.act),
            is_sum: false,
            size: None,
            act: force.act,
            at: force.at,
            turn: Some(force.turn),
        }));
        if known.is_empty() {
            return refuse("no given force acts on the body");
        }
        let mut sides = self.known_sides(known, 3usize.saturating_sub(unknown.len()))?;
        let count = sides.len() + unknown.len();
        if count > 3 {
            return Err(Underivable::TooManyForces { count });
        }
        if count < 3 {
            return refuse("fewer than three forces act on the body; two are equal and opposite");
        }
        sides.extend(unknown);
        self.solve_triangle(sides, &contacts)
    }

    /// Why what turns a body leaves no triangle: a couple, or a hold that turns it.
    fn turned_by(&self, act: ActId) -> String {
        let noun = self.system.act(act).map(|act| act.noun.to_owned());
        let noun = noun.unwrap_or_default();
        let hold = match act {
            ActId::Hold(index) => self.system.parts().holds.get(index),
            _ => None,
        };
        match hold.map(|hold| &hold.kind) {
            Some(HoldKind::Base { .. }) => format!(
                "the {noun} pushes along a width, so where its force acts is not known beforehand"
            ),
            Some(HoldKind::BuiltIn) => format!(
                "the {noun} also holds the body from turning, so the line of its force is not known"
            ),
            _ => "a couple acts on the body, which no force of a triangle can stand for".to_owned(),
        }
    }

    /// What an action is called.
    pub(super) fn symbol_of(&self, act: ActId) -> String {
        let symbol = self.system.act(act).map(|act| act.symbol.clone());
        symbol.map_or_else(String::new, |symbol| symbol.as_str().to_owned())
    }

    fn solve_triangle(
        mut self,
        mut sides: Vec<Side>,
        contacts: &[Contact],
    ) -> Result<Working, Underivable> {
        let names = sides.iter().map(|side| {
            let noun = self.system.act(side.act).map(|act| act.noun.to_owned());
            let noun = noun.filter(|_| !side.is_sum).unwrap_or_default();
            (Symbol::new(side.name.clone()).shown(), noun)
        });
        let names: Vec<(String, String)> = names.collect();
        let lines = sides.iter().filter_map(|side| match &side.size {
            Some(Formula::Atom(Atom::Step(id))) if !side.is_sum => Some(*id),
            _ => None,
        });
        // A force at its limit is told as the condition.
        let lines = lines.filter(|line| !self.working.conditions.contains(line));
        let lines = lines.collect();
        self.working
            .triangle
            .insert(0, Section::Three { names, lines });
        let open: Vec<usize> = (0..3).filter(|at| sides[*at].turn.is_none()).collect();
        match open[..] {
            [] => {}
            [third] if sides.iter().filter(|side| side.size.is_some()).count() == 1 => {
                self.meeting(&mut sides, third)?;
            }
            [third] => return self.two_known(sides, third, contacts),
            _ => {
                let why = "the directions of two forces are unknown";
                return Err(no_triangle(why));
            }
        }
        let angles = self.angles(&sides)?;
        let told = sides.iter().zip(&angles).map(|(side, angle)| {
            let name = Symbol::new(side.name.clone()).shown();
            (angle.clone(), name)
        });
        let told = told.collect();
        self.working.triangle.push(Section::Angles(told));
        let Some(known) = sides.iter().position(|side| side.size.is_some()) else {
            let why = "no force is given";
            return Err(no_triangle(why));
        };
        // The angles are those of the forces as they act; a size below zero has none of them.
        let against = self.solution.reaction(sides[known].act);
        if !sides[known].is_sum && against.is_some_and(|found| found.size < 0.0) {
            let name = Symbol::new(sides[known].name.clone()).shown();
            return Err(no_triangle(&format!(
                "{name}, from which it starts, acts against the sense in which the file counts \
                 it; turn its line about in the file, or take another method"
            )));
        }
        let sine = |at: usize| match &angles[at] {
            Formula::Degrees(90.0) => None,
            angle => Some(Formula::Sine(Box::new(angle.clone()))),
        };
        let base = sides[known].size.clone().unwrap_or(Formula::Number(0.0));
        let mut lines = Vec::new();
        let mut pairs = vec![(base.clone(), angles[known].clone())];
        for at in (0..3).filter(|at| *at != known) {
            let mut formula = base.clone();
            if let Some(over) = sine(at) {
                formula = formula.times(over);
            }
            if let Some(under) = sine(known) {
                formula = formula.over(under);
            }
            let found = self.found(&sides[at], formula, contacts);
            pairs.push((Formula::step(found), angles[at].clone()));
            lines.push(found);
        }
        self.working.triangle.push(Section::Sines {
            pairs,
            lines: lines.clone(),
        });
        self.contact_parts(&sides, &lines, known, contacts);
        Ok(self.working)
    }

    /// The size of a side that was found.
    fn found(&mut self, side: &Side, formula: Expression, contacts: &[Contact]) -> Quantity {
        let whole =
            contacts.iter().any(|contact| contact.act == side.act) || self.is_open(side.act);
        let meaning = match whole {
            true => Meaning::Size(side.act),
            false => Meaning::Force(side.act),
        };
        let symbol = self.own_name(&side.name);
        self.add(symbol, Dimension::FORCE, meaning, Rule::Formula(formula))
    }

    /// True for holds whose force may have any direction, or either sense of a line.
    fn is_open(&self, act: ActId) -> bool {
        let ActId::Hold(index) = act else {
            return false;
        };
        let hold = self.system.parts().holds.get(index);
        hold.is_some_and(|hold| {
            matches!(
                hold.kind,
                HoldKind::Hinge | HoldKind::BuiltIn | HoldKind::Line(_)
            )
        })
    }

    /// The force that an action turns out to be.
    pub(super) fn atom_reaction(&self, act: ActId) -> crate::plane::Vector {
        let reaction = self.solution.reaction(act).unwrap_or_default();
        reaction.force
    }

    /// The angles of the triangle, each opposite to the side at its place.
    fn angles(&mut self, sides: &[Side]) -> Result<Vec<Expression>, Underivable> {
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
                return Err(Underivable::Parallel);
            }
            let wish = format!("α_{}", sides[at].name.replace('_', ""));
            let formula = inner.formula();
            let act = sides[at].act;
            angles.push(self.angle_quantity(Meaning::Corner(act), &wish, formula));
        }
        Ok(angles)
    }

    /// The angle between two sides that are drawn one after the other.
    fn inner_angle(&self, one: &Turn, other: &Turn) -> Turn {
        let atom = |atom: &Atom<Quantity>| self.atom(atom);
        let mut between = other.clone().plus(-1.0, one);
        let whole = (between.value(&atom).to_degrees() / 360.0).floor();
        between.degrees -= 360.0 * whole;
        if between.value(&atom) > std::f64::consts::PI {
            between = Turn::fixed(360.0).plus(-1.0, &between);
        }
        Turn::fixed(180.0).plus(-1.0, &between)
    }

    /// Two known sides and the angle between them: the third by the rule of cosines.
    fn two_known(
        mut self,
        sides: Vec<Side>,
        third: usize,
        contacts: &[Contact],
    ) -> Result<Working, Underivable> {
        let rest: Vec<usize> = (0..3).filter(|at| *at != third).collect();
        let turn = |at: usize| sides[at].turn.clone().unwrap_or_else(|| Turn::fixed(0.0));
        let size = |at: usize| sides[at].size.clone().unwrap_or(Formula::Number(0.0));
        let inner = self.inner_angle(&turn(rest[0]), &turn(rest[1]));
        if inner.value(&|atom| self.atom(atom)).sin().abs() < 1e-6 {
            return Err(Underivable::Parallel);
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
        let side = Side {
            turn: Some(Turn::fixed(0.0)),
            name: sides[third].name.clone(),
            is_sum: false,
            size: None,
            act,
            at: sides[third].at.clone(),
        };
        let found = self.found(&side, formula, contacts);
        let other = self.other_corner(&one, &two, &corner, &sides[rest[1]]);
        self.working
            .triangle
            .push(Section::Cosines(vec![found, other]));
        Ok(self.working)
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

    /// The push and the friction of a contact whose force was found as a whole.
    fn contact_parts(
        &mut self,
        sides: &[Side],
        found: &[Quantity],
        known: usize,
        contacts: &[Contact],
    ) {
        let unknown: Vec<usize> = (0..3).filter(|at| *at != known).collect();
        let mut parts = Vec::new();
        for (at, whole) in unknown.iter().zip(found) {
            let side = &sides[*at];
            let Some(contact) = contacts.iter().find(|contact| contact.act == side.act) else {
                continue;
            };
            let turn = side.turn.clone().unwrap_or_else(|| Turn::fixed(0.0));
            let off = turn.between(&contact.push, &|atom| self.atom(atom));
            let name = self
                .system
                .act(side.act)
                .map_or_else(String::new, |act| act.symbol.as_str().to_owned());
            let size = Formula::step(*whole);
            let push = size.clone().times(off.cosine());
            let friction = size.times(off.sine());
            let symbol = self.own_name(&name);
            let meaning = Meaning::Push(side.act);
            parts.push(self.add(symbol, Dimension::FORCE, meaning, Rule::Formula(push)));
            let symbol = self.own_name(&format!("F_{}", name.replace('_', "")));
            let meaning = Meaning::Friction(side.act);
            parts.push(self.add(symbol, Dimension::FORCE, meaning, Rule::Formula(friction)));
        }
        if !parts.is_empty() {
            self.working.triangle.push(Section::Parts(parts));
        }
    }

    /// The name of a force that was found; unknowns that this method does not need have it too.
    fn own_name(&self, name: &str) -> Symbol {
        let shown = Symbol::new(name);
        let quantities = self.working.quantities.iter();
        // Limiting friction stands for the balances, which this method does not take.
        let told = |one: &super::Named| {
            let unused =
                matches!(one.rule, Rule::Solved(_)) || matches!(one.meaning, Meaning::Friction(_));
            one.symbol == shown && !unused
        };
        if quantities.into_iter().any(told) {
            return self.unique(name);
        }
        shown
    }
}

/// No triangle, for this reason.
pub(super) fn no_triangle(why: &str) -> Underivable {
    Underivable::NoTriangle {
        why: why.to_owned(),
    }
}

/// The angle of a formula as a turn.
pub(super) fn turn_of(angle: &Expression) -> Turn {
    match angle {
        Formula::Atom(atom) => Turn::angle(*atom),
        Formula::Degrees(degrees) => Turn::fixed(*degrees),
        _ => Turn::fixed(0.0),
    }
}
