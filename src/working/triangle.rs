//! The triangle of forces: a body under three forces whose lines meet in one point.

use super::angle::{Slope, Turn};
use super::build::Builder;
use super::force::Elementary;
use super::place::{Signed, opposite, positive_first, sided};
use super::trouble::Underivable;
use super::{Expression, Meaning, Quantity, Rule, Working};
use crate::key::{Atom, Axis, Formula};
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
    pub(super) fn triangle(mut self) -> Result<Working, Underivable> {
        let refuse = |why: &'static str| Err(Underivable::NoTriangle { why });
        if self.system.parts().bodies.len() != 1 {
            return refuse("it is for one body, and here there are more");
        }
        if !self.twists.is_empty() {
            return refuse("a couple acts on the body, which no force of a triangle can stand for");
        }
        let sought = self.sought_load();
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
                return Err(Underivable::NoTriangle { why });
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
            return Err(Underivable::NoTriangle { why });
        };
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

    /// The point in which the lines meet, and so the direction of the third force.
    fn meeting(&mut self, sides: &mut [Side], third: usize) -> Result<(), Underivable> {
        let from = sides[third].at.clone();
        let point = self.free_letter();
        let mut lines: Vec<Quantity> = Vec::new();
        let rest: Vec<usize> = (0..3).filter(|at| *at != third).collect();
        let mut points = Vec::new();
        for at in &rest {
            let side = &sides[*at];
            let spot = side.at.clone();
            let mut way = self.way(&from, &spot);
            if side.size.is_some() {
                way.extend(self.shift.clone());
            }
            let x = self.coordinate(&way, Axis::Horizontal);
            let y = self.coordinate(&way, Axis::Vertical);
            let turn = sides[*at].turn.clone().unwrap_or_else(|| Turn::fixed(0.0));
            let slope = turn.slope(&|atom| self.atom(atom));
            points.push(Crossed { x, y, slope });
        }
        let [one, two] = &points[..] else {
            return Err(Underivable::NoOrder);
        };
        let names = (format!("x_{point}"), format!("y_{point}"));
        let (x, y) = self.crossing(one, two, &names, &mut lines);
        let act = sides[third].act;
        let found = self.atom_reaction(act);
        let (right, up) = (found.x > 0.0, found.y > 0.0);
        let turn = match (x, y) {
            (None, None) => {
                let why = "the lines meet where the third force acts, so its direction is open";
                return Err(Underivable::NoTriangle { why });
            }
            (Some(_), None) => Turn::fixed(if right { 0.0 } else { 180.0 }),
            (None, Some(_)) => Turn::fixed(if up { 90.0 } else { 270.0 }),
            (Some((_, x)), Some((_, y))) => {
                let size = |part: Expression| Formula::Absolute(Box::new(part));
                let formula = Formula::ArcTangent(Box::new(size(y).over(size(x))));
                let name = sides[third].name.replace('_', "");
                let symbol = self.unique(&format!("ψ_{name}"));
                let rule = Rule::Formula(formula);
                let slope = self.add(symbol, Dimension::ANGLE, Meaning::Direction(act), rule);
                lines.push(slope);
                let slope = Turn::angle(Atom::Step(slope));
                sided(&slope, right, up)
            }
        };
        sides[third].turn = Some(turn);
        self.working.triangle.push(Section::Meeting {
            open: Symbol::new(sides[third].name.clone()).shown(),
            from,
            point,
            lines,
        });
        Ok(())
    }

    /// Where two lines cross. An upright line says x, a level one y, and an oblique one leads from
    /// the one to the other; of two oblique ones their slopes give x.
    fn crossing(
        &mut self,
        one: &Crossed,
        two: &Crossed,
        (x_name, y_name): &(String, String),
        lines: &mut Vec<Quantity>,
    ) -> (Option<Signed>, Option<Signed>) {
        let straight = |line: &Crossed| line.slope.right == 0.0 || line.slope.up == 0.0;
        let (a, b) = match straight(two) && !straight(one) {
            true => (two, one),
            false => (one, two),
        };
        if a.slope.up == 0.0 && b.slope.right == 0.0 {
            return self.crossing(b, a, &(x_name.clone(), y_name.clone()), lines);
        }
        if a.slope.up == 0.0 {
            let y = self.meeting_part(y_name, parts(&a.y), lines);
            let (sign, ratio) = tangent(b);
            let mut sum = parts(&b.x);
            if let Some((side, rise)) = self.signed_sum(less(&y, &b.y)) {
                sum.push((side * sign, rise.over(ratio)));
            }
            return (self.meeting_part(x_name, sum, lines), y);
        }
        let x = if a.slope.right == 0.0 {
            self.meeting_part(x_name, parts(&a.x), lines)
        } else {
            self.oblique_crossing(a, b, x_name, lines)
        };
        let mut sum = parts(&b.y);
        if b.slope.up != 0.0
            && let Some((side, run)) = self.signed_sum(less(&x, &b.x))
        {
            let (sign, ratio) = tangent(b);
            sum.push((side * sign, run.times(ratio)));
        }
        (x, self.meeting_part(y_name, sum, lines))
    }

    /// The x at which two oblique lines are equally high.
    fn oblique_crossing(
        &mut self,
        a: &Crossed,
        b: &Crossed,
        name: &str,
        lines: &mut Vec<Quantity>,
    ) -> Option<Signed> {
        let ((rise_a, ratio_a), (rise_b, ratio_b)) = (tangent(a), tangent(b));
        let mut over = less(&b.y, &a.y);
        let times = |place: &Option<Signed>, sign: f64, ratio: &Expression| {
            let placed = place.clone();
            placed.map(|(side, length)| (side * sign, length.times(ratio.clone())))
        };
        over.extend(times(&a.x, rise_a, &ratio_a));
        over.extend(times(&b.x, -rise_b, &ratio_b));
        let (side, over) = self.signed_sum(over)?;
        let (other, under) = self.signed_sum(vec![(rise_a, ratio_a), (-rise_b, ratio_b)])?;
        self.meeting_part(name, vec![(side * other, over.over(under))], lines)
    }

    /// A letter for the meeting point that is no force's.
    fn free_letter(&self) -> &'static str {
        let acts = self.system.acts();
        let is_free = |letter: &&str| !acts.iter().any(|act| act.symbol.matches(letter));
        ["P", "Q", "X", "K"]
            .into_iter()
            .find(is_free)
            .unwrap_or("Z")
    }

    /// A coordinate of the meeting point, with its sign; `None` where it is zero.
    fn meeting_part(
        &mut self,
        name: &str,
        parts: Vec<Signed>,
        lines: &mut Vec<Quantity>,
    ) -> Option<Signed> {
        let (sign, sum) = self.signed_sum(parts)?;
        let formula = if sign < 0.0 { negative(sum) } else { sum };
        let symbol = self.unique(name);
        let part = self.add(
            symbol,
            Dimension::LENGTH,
            Meaning::Meeting,
            Rule::Formula(formula),
        );
        lines.push(part);
        Some((1.0, Formula::step(part)))
    }

    /// The force that an action turns out to be.
    fn atom_reaction(&self, act: ActId) -> crate::plane::Vector {
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

/// A line by one of its points and its slope.
struct Crossed {
    x: Option<Signed>,
    y: Option<Signed>,
    slope: Slope,
}

/// Height over width of a line, with its sign.
fn tangent(line: &Crossed) -> Signed {
    let sign = line.slope.right * line.slope.up;
    let angle = Box::new(line.slope.angle.formula());
    (sign, Formula::Tangent(angle))
}

fn parts(place: &Option<Signed>) -> Vec<Signed> {
    place.clone().into_iter().collect()
}

fn less(from: &Option<Signed>, taken: &Option<Signed>) -> Vec<Signed> {
    let mut parts = parts(from);
    parts.extend(taken.clone().map(|(sign, amount)| (-sign, amount)));
    parts
}

/// The angle of a formula as a turn.
pub(super) fn turn_of(angle: &Expression) -> Turn {
    match angle {
        Formula::Atom(atom) => Turn::angle(*atom),
        Formula::Degrees(degrees) => Turn::fixed(*degrees),
        _ => Turn::fixed(0.0),
    }
}

fn negative(formula: Expression) -> Expression {
    match formula {
        Formula::Sum(parts) => {
            Formula::Sum(positive_first(parts.into_iter().map(opposite).collect()))
        }
        one => opposite(one),
    }
}
