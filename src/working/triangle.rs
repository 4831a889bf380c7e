//! The triangle of forces: a body under three forces whose lines meet in one point.

use super::angle::Turn;
use super::build::Builder;
use super::force::Elementary;
use super::sense::Sense;
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
    /// Known forces added into one.
    Resultant {
        /// Their names, in a row: `Wb and W1`.
        of: String,
        /// The name of their sum.
        sum: String,
        /// The name of its distance from another force, that force, and on which side of it, where it
        /// acts elsewhere.
        from: Option<(String, String, Sense)>,
        /// Which way it acts.
        way: Sense,
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
    /// That a force whose direction was to be found turns out to be level or upright.
    Acts {
        /// Its name.
        force: String,
        /// Which way.
        sense: Sense,
        /// What follows.
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
    /// The level or upright parts that are asked.
    Asked(Vec<Quantity>),
}

/// One of the three forces.
#[derive(Clone)]
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
    /// The size of its push, where the condition says it.
    pub(super) limit: Option<Quantity>,
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
        let mut sides = self.known_sides(known, &unknown, &mut contacts)?;
        match sides.len() + unknown.len() {
            3 => {}
            4.. => return Err(self.too_many()),
            _ => {
                self.refuse_nothing(&unknown)?;
                return Err(self.too_few());
            }
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
                "the {noun} pushes along a width, and it is worked here for forces that act at one \
                 point each"
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
        self.refuse_nothing(&sides)?;
        self.tell_three(&sides);
        if let Some(sought) = self.sought_direction(&sides) {
            return self.by_sought_direction(sides, sought, contacts);
        }
        let open: Vec<usize> = (0..3).filter(|at| sides[*at].turn.is_none()).collect();
        let sized = sides.iter().filter(|side| side.size.is_some()).count();
        match open[..] {
            [] => {}
            [third] if sized == 2 && sides[third].size.is_none() => {
                self.two_known(sides, third, contacts)?;
                return Ok(self.working);
            }
            [third] => {
                self.meeting(&mut sides, third)?;
                self.size_by_push(&mut sides[third], contacts);
            }
            _ => {
                let why = "the directions of two forces are unknown";
                return Err(no_triangle(why));
            }
        }
        self.by_sines(sides, contacts)
    }

    /// Where one of the forces turns out to be nothing there is no triangle.
    fn refuse_nothing(&self, sides: &[Side]) -> Result<(), Underivable> {
        let (force, _) = self.solution.scales();
        let nothing = sides.iter().find(|side| {
            let found = self.solution.reaction(side.act);
            let is_open = side.size.is_none() && !side.is_sum;
            is_open && found.is_some_and(|found| found.force.size() < 1e-9 * force)
        });
        let Some(side) = nothing else {
            return Ok(());
        };
        let name = Symbol::new(side.name.clone()).shown();
        Err(no_triangle(&format!(
            "{name} turns out to be 0 N, and no triangle has such a side"
        )))
    }

    /// Tells which three forces act, and the given ones that are worked out.
    fn tell_three(&mut self, sides: &[Side]) {
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
    }

    /// The size of a contact's force from its push, where the condition says that, once its direction
    /// is known; told with the direction.
    fn size_by_push(&mut self, side: &mut Side, contacts: &[Contact]) {
        let contact = contacts.iter().find(|contact| contact.act == side.act);
        let Some((contact, limit)) = contact.and_then(|one| Some((one, one.limit?))) else {
            return;
        };
        let Some(turn) = &side.turn else {
            return;
        };
        let off = turn.between(&contact.push, &|atom| self.atom(atom));
        let whole = self.whole_at_limit(side.act, Formula::step(limit), &off);
        side.size = Some(Formula::step(whole));
        if let Some(Section::Meeting { lines, .. } | Section::Acts { lines, .. }) =
            self.working.triangle.last_mut()
        {
            lines.push(whole);
        }
    }

    /// The sides that are sought by the rule of sines, from the angles and a known side.
    fn by_sines(mut self, sides: Vec<Side>, contacts: &[Contact]) -> Result<Working, Underivable> {
        let angles = self.angles(&sides)?;
        let told = sides.iter().zip(&angles).map(|(side, angle)| {
            let name = Symbol::new(side.name.clone()).shown();
            (angle.clone(), name)
        });
        let told = told.collect();
        self.working.triangle.push(Section::Angles(told));
        let Some(known) = sides.iter().position(|side| side.size.is_some()) else {
            return Err(no_triangle("no force on the body has a known size"));
        };
        self.sines(&sides, &angles, known, contacts)?;
        Ok(self.working)
    }

    /// The size of a side that was found.
    pub(super) fn found(
        &mut self,
        side: &Side,
        formula: Expression,
        contacts: &[Contact],
    ) -> Quantity {
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

    /// The name of a force that was found; unknowns that this method does not need have it too.
    pub(super) fn own_name(&self, name: &str) -> Symbol {
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
