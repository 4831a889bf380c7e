//! Deriving a working: the balances in their order, with what they need.

use super::force::{Elementary, Source, Twist, part_name};
use super::order::{Candidate, Chosen};
use super::place::Signed;
use super::trouble::Underivable;
use super::{
    Balance, Expression, Kind, Meaning, Method, Named, Quantity, Rule, Stage, Term, Working,
};
use crate::key::{Atom, Axis, Formula};
use crate::statics::solve_system;
use crate::system::{ActId, BodyId, Spot, System};
use crate::text::Symbol;
use crate::units::Dimension;

/// A working while it is derived.
pub(super) struct Builder<'a> {
    pub(super) system: &'a System,
    pub(super) values: Vec<f64>,
    /// Other values, at which what vanishes by chance does not.
    pub(super) moved: Vec<f64>,
    gravity: f64,
    pub(super) working: Working,
    pub(super) forces: Vec<Elementary>,
    pub(super) twists: Vec<Twist>,
    /// Parts along the axes and across a body that were made already.
    made: Vec<(ActId, usize, Meaning, Quantity)>,
}

/// The working of a system by a method, at these values of its givens. `pivot` is the point about
/// which moments are taken; without one the engine takes what a teacher would: the point that
/// removes most unknowns.
///
/// # Errors
/// [`Underivable`]: the forces cannot be found, or the pivot lies on the unknown's own line.
pub fn derive(
    system: &System,
    values: &[f64],
    method: Method,
    pivot: Option<&Spot>,
) -> Result<Working, Underivable> {
    let gravity = system.gravity();
    solve_system(system, values, gravity)?;
    let mut builder = Builder {
        system,
        values: values.to_vec(),
        moved: moved(values),
        gravity,
        working: Working {
            method,
            quantities: Vec::new(),
            stages: Vec::new(),
            results: Vec::new(),
        },
        forces: Vec::new(),
        twists: Vec::new(),
        made: Vec::new(),
    };
    builder.take_apart();
    for chosen in builder.order(pivot)? {
        builder.stage(chosen);
    }
    builder.results();
    Ok(builder.working)
}

/// Values a little away from these, each by its own share.
fn moved(values: &[f64]) -> Vec<f64> {
    values
        .iter()
        .enumerate()
        .map(|(index, value)| value * (1.0 + 0.004 * (1.0 + 0.37 * ((index * 7) % 11) as f64)))
        .collect()
}

impl Builder<'_> {
    /// The value of an atom at the printed values.
    pub(super) fn atom(&self, atom: &Atom<Quantity>) -> Option<f64> {
        self.atom_at(atom, &self.values)
    }

    pub(super) fn atom_at(&self, atom: &Atom<Quantity>, values: &[f64]) -> Option<f64> {
        match atom {
            Atom::Given(given) => values.get(given.0).copied(),
            Atom::Gravity => Some(self.gravity),
            Atom::Step(id) => self.working.value(*id, values, self.gravity),
        }
    }

    /// The value of a formula that rests on no unknown.
    pub(super) fn number(&self, formula: &Expression, moved: bool) -> Option<f64> {
        let values = if moved { &self.moved } else { &self.values };
        formula.value(&|atom| self.atom_at(atom, values))
    }

    /// How much of a force one unit of its unknown is.
    pub(super) fn share(&self, force: &Elementary, values: &[f64]) -> f64 {
        let (Source::Formula(formula), Some(unknown)) = (&force.size, force.unknown) else {
            return 1.0;
        };
        let share = |atom: &Atom<Quantity>| match atom {
            Atom::Step(id) if *id == unknown => Some(1.0),
            Atom::Step(id) => match &self.working.named(*id)?.rule {
                Rule::Formula(formula) => formula.value(&|inner| match inner {
                    Atom::Step(id) if *id == unknown => Some(1.0),
                    inner => self.atom_at(inner, values),
                }),
                Rule::Solved(_) => None,
            },
            atom => self.atom_at(atom, values),
        };
        formula.value(&share).unwrap_or(1.0)
    }

    pub(super) fn add(
        &mut self,
        symbol: Symbol,
        dimension: Dimension,
        meaning: Meaning,
        rule: Rule,
    ) -> Quantity {
        self.working.quantities.push(Named {
            symbol,
            dimension,
            meaning,
            rule,
        });
        Quantity(self.working.quantities.len() - 1)
    }

    /// A name that nothing has yet: the wish itself, or with a number or a prime behind it.
    pub(super) fn unique(&self, wish: &str) -> Symbol {
        let taken = |name: &str| {
            let shown = Symbol::new(name).shown();
            let givens = self.system.givens().iter().map(|given| &given.symbol);
            let known = self.working.quantities.iter().map(|named| &named.symbol);
            givens.chain(known).any(|symbol| symbol.shown() == shown)
        };
        let mut name = wish.to_owned();
        let mut number = 2;
        while taken(&name) {
            let joint = if wish.contains('_') { "," } else { "_" };
            name = format!("{wish}{joint}{number}");
            number += 1;
        }
        Symbol::new(name)
    }

    /// What follows the underscore of an action's name, or the whole name.
    pub(super) fn suffix(&self, id: ActId) -> String {
        let symbol = self
            .system
            .act(id)
            .map(|act| act.symbol.as_str().to_owned());
        let symbol = symbol.unwrap_or_default();
        symbol.rsplit('_').next().unwrap_or_default().to_owned()
    }

    /// An angle by its formula: a given one or a right angle stays what it is, one that is known
    /// already is used again.
    pub(super) fn angle_quantity(
        &mut self,
        meaning: Meaning,
        wish: &str,
        formula: Expression,
    ) -> Expression {
        if matches!(formula, Formula::Atom(_) | Formula::Degrees(_)) {
            return formula;
        }
        let known = self.working.quantities.iter().position(|named| {
            named.dimension == Dimension::ANGLE && named.rule == Rule::Formula(formula.clone())
        });
        if let Some(known) = known {
            return Formula::step(Quantity(known));
        }
        let symbol = self.unique(wish);
        Formula::step(self.add(symbol, Dimension::ANGLE, meaning, Rule::Formula(formula)))
    }

    fn stage(&mut self, chosen: Chosen) {
        let before = self.working.quantities.len();
        let stage = self.working.stages.len();
        let removed = chosen.candidates.first().map_or(0, |one| one.removed);
        let mut balances = Vec::new();
        for candidate in &chosen.candidates {
            let terms = self.terms(candidate);
            balances.push(Balance {
                kind: candidate.kind.clone(),
                bodies: candidate.bodies.clone(),
                terms,
            });
        }
        for unknown in &chosen.unknowns {
            if let Some(named) = self.working.quantities.get_mut(unknown.0) {
                named.rule = Rule::Solved(stage);
            }
        }
        let mut needs: Vec<Quantity> = Vec::new();
        for balance in &balances {
            for term in &balance.terms {
                self.need(&term.amount, before, &mut needs);
            }
        }
        self.working.stages.push(Stage {
            needs,
            balances,
            unknowns: chosen.unknowns,
            removed,
        });
    }

    /// Quantities with a formula that an expression rests on and no earlier stage has told.
    fn need(&self, formula: &Expression, _before: usize, needs: &mut Vec<Quantity>) {
        for id in formula.inputs() {
            let told = self
                .working
                .stages
                .iter()
                .any(|stage| stage.needs.contains(&id));
            if told || needs.contains(&id) {
                continue;
            }
            if let Some(Rule::Formula(inner)) = self.working.named(id).map(|named| &named.rule) {
                let inner = inner.clone();
                self.need(&inner, _before, needs);
                needs.push(id);
            }
        }
    }

    fn size(&mut self, act: ActId, source: &Source) -> Expression {
        match source {
            Source::Known => self.known_size(act),
            Source::Formula(formula) => formula.clone(),
        }
    }

    fn terms(&mut self, candidate: &Candidate) -> Vec<Term> {
        let bodies = &candidate.bodies;
        let within = |body: BodyId, partner: Option<BodyId>| {
            bodies.contains(&body) && !partner.is_some_and(|partner| bodies.contains(&partner))
        };
        let counts = |unknown: Option<Quantity>| {
            unknown.is_none_or(|unknown| candidate.factors.contains_key(&unknown))
        };
        let mut terms = Vec::new();
        let forces: Vec<Elementary> = self
            .forces
            .iter()
            .filter(|force| within(force.body, force.partner) && counts(force.unknown))
            .cloned()
            .collect();
        for force in &forces {
            match &candidate.kind {
                Kind::Forces(axis) => terms.extend(self.part_term(force, *axis)),
                Kind::Moments(pivot) => terms.extend(self.moment_terms(force, pivot)),
            }
        }
        if matches!(candidate.kind, Kind::Moments(_)) {
            let twists: Vec<Twist> = self
                .twists
                .iter()
                .filter(|twist| within(twist.body, twist.partner) && counts(twist.unknown))
                .cloned()
                .collect();
            for twist in twists {
                let amount = self.size(twist.act, &twist.size);
                terms.push(Term {
                    act: twist.act,
                    sign: twist.sign,
                    amount,
                });
            }
        }
        terms
    }

    /// The size of a force's part along an axis, with the sign of its direction.
    fn part(&mut self, force: &Elementary, axis: Axis) -> Option<Signed> {
        let slope = force.turn.slope(&|atom| self.atom(atom));
        let (side, straight) = match axis {
            Axis::Horizontal => (slope.right, slope.up == 0.0),
            Axis::Vertical => (slope.up, slope.right == 0.0),
        };
        if side == 0.0 {
            return None;
        }
        let sign = side * force.sign;
        let size = self.size(force.act, &force.size);
        if straight {
            return Some((sign, size));
        }
        let meaning = Meaning::Part(force.act, axis);
        let key = |made: &&(ActId, usize, Meaning, Quantity)| {
            made.0 == force.act && made.1 == force.effect && made.2 == meaning
        };
        // The push and the friction of one contact have parts of their own.
        let known = self.made.iter().find(key).map(|made| made.3).filter(|known| {
            let rule = self.working.named(*known).map(|named| named.rule.clone());
            matches!(rule, Some(Rule::Formula(Formula::Product(parts))) if parts.first() == Some(&size))
        });
        if let Some(known) = known {
            return Some((sign, Formula::step(known)));
        }
        let formula = match axis {
            Axis::Horizontal => size.clone().times(slope.angle.cosine()),
            Axis::Vertical => size.clone().times(slope.angle.sine()),
        };
        let name = match &size {
            Formula::Atom(Atom::Step(id)) => self
                .working
                .named(*id)
                .map(|named| named.symbol.as_str().to_owned()),
            Formula::Atom(Atom::Given(id)) => {
                Some(self.system.given(*id).symbol.as_str().to_owned())
            }
            _ => None,
        };
        let symbol = self.unique(&part_name(&name.unwrap_or_else(|| "F".to_owned()), axis));
        let made = self.add(symbol, Dimension::FORCE, meaning, Rule::Formula(formula));
        self.made.push((force.act, force.effect, meaning, made));
        Some((sign, Formula::step(made)))
    }

    fn part_term(&mut self, force: &Elementary, axis: Axis) -> Option<Term> {
        let (sign, amount) = self.part(force, axis)?;
        Some(Term {
            act: force.act,
            sign,
            amount,
        })
    }

    fn moment_terms(&mut self, force: &Elementary, pivot: &Spot) -> Vec<Term> {
        let term = |(sign, amount): Signed| Term {
            act: force.act,
            sign,
            amount,
        };
        match self.working.method {
            Method::Components => {
                if let Some(found) = self.across(force, pivot) {
                    return found.into_iter().map(term).collect();
                }
                self.coordinates(force, pivot)
                    .into_iter()
                    .map(term)
                    .collect()
            }
            Method::LeverArms => self.lever(force, pivot).into_iter().map(term).collect(),
            Method::Coordinates => self
                .coordinates(force, pivot)
                .into_iter()
                .map(term)
                .collect(),
        }
    }

    /// A leg on which both lie, with the signed distance from pivot to force along it.
    fn shared_leg(
        &mut self,
        force: &Elementary,
        pivot: &Spot,
    ) -> Option<(BodyId, usize, Option<Signed>)> {
        let about = self.legs_of(pivot);
        let here = self.legs_of(&force.at);
        for (body, leg, distance) in here {
            let Some((_, _, from)) = about
                .iter()
                .find(|(one, other, _)| (*one, *other) == (body, leg))
            else {
                continue;
            };
            let way = self.signed_sum(vec![(1.0, distance), (-1.0, from.clone())]);
            return Some((body, leg, way));
        }
        None
    }

    /// Across the body times along it. `None` where the pivot lies on no leg of the force's place;
    /// an empty one where there is no moment.
    fn across(&mut self, force: &Elementary, pivot: &Spot) -> Option<Option<Signed>> {
        let (body, leg, way) = self.shared_leg(force, pivot)?;
        let Some((way, distance)) = way else {
            return Some(None);
        };
        let leg_turn = self.leg_turn(body, leg);
        let Some((side, angle)) = self.angle_with(force, &leg_turn) else {
            return Some(None);
        };
        let size = self.size(force.act, &force.size);
        let across = match &angle {
            Formula::Degrees(90.0) => size,
            _ => {
                let meaning = Meaning::Across(force.act);
                let formula = size.clone().times(Formula::Sine(Box::new(angle)));
                let known = self.made.iter().find(|made| {
                    let rule = self.working.named(made.3).map(|named| &named.rule);
                    made.2 == meaning && rule == Some(&Rule::Formula(formula.clone()))
                });
                match known.map(|made| made.3) {
                    Some(known) => Formula::step(known),
                    None => {
                        let name = self.name_of(&size);
                        let symbol = self.unique(&format!("{name}⊥"));
                        let rule = Rule::Formula(formula);
                        let made = self.add(symbol, Dimension::FORCE, meaning, rule);
                        self.made.push((force.act, force.effect, meaning, made));
                        Formula::step(made)
                    }
                }
            }
        };
        Some(Some((way * side * force.sign, across.times(distance))))
    }

    /// The angle between a force's line and a leg, with the sign of the force's part to the left of
    /// the leg; `None` where the force acts along it.
    fn angle_with(
        &mut self,
        force: &Elementary,
        leg: &super::angle::Turn,
    ) -> Option<(f64, Expression)> {
        let turned = force.turn.clone().plus(-1.0, leg);
        let value = turned.value(&|atom| self.atom(atom));
        let left = libm::sin(value);
        let other = turned.value(&|atom| self.atom_at(atom, &self.moved));
        if left.abs() < 1e-10 && libm::sin(other).abs() < 1e-9 {
            return None;
        }
        let between = force.turn.between(leg, &|atom| self.atom(atom));
        let upright = force
            .turn
            .fixed_degrees()
            .is_some_and(|d| d == 90.0 || d == 270.0);
        let wish = match force.act {
            _ if upright => "α".to_owned(),
            ActId::Cord(_) => "γ".to_owned(),
            act => format!("φ_{}", self.suffix(act)),
        };
        let angle = self.angle_quantity(Meaning::Angle(force.act), &wish, between.formula());
        Some((left.signum(), angle))
    }

    /// A force times the perpendicular distance of its line.
    fn lever(&mut self, force: &Elementary, pivot: &Spot) -> Option<Signed> {
        let (sign, arm) = self.arm(force, pivot)?;
        let size = self.size(force.act, &force.size);
        Some((sign * force.sign, size.times(arm)))
    }

    /// The perpendicular distance of a force's line from a pivot, with the sense of its turning.
    fn arm(&mut self, force: &Elementary, pivot: &Spot) -> Option<Signed> {
        if let Some((body, leg, way)) = self.shared_leg(force, pivot) {
            let (way, distance) = way?;
            let leg_turn = self.leg_turn(body, leg);
            let (side, angle) = self.angle_with(force, &leg_turn)?;
            if angle == Formula::Degrees(90.0) {
                return Some((way * side, distance));
            }
            let formula = distance.times(Formula::Sine(Box::new(angle)));
            return Some((way * side, self.arm_quantity(force, formula)));
        }
        let way = self.way(pivot, &force.at);
        let (x, y) = (
            self.coordinate(&way, Axis::Horizontal),
            self.coordinate(&way, Axis::Vertical),
        );
        let slope = force.turn.slope(&|atom| self.atom(atom));
        let mut parts: Vec<Signed> = Vec::new();
        if let Some((side, x)) = x
            && slope.up != 0.0
        {
            let amount = match slope.right == 0.0 {
                true => x,
                false => x.times(slope.angle.sine()),
            };
            parts.push((side * slope.up, amount));
        }
        if let Some((side, y)) = y
            && slope.right != 0.0
        {
            let amount = match slope.up == 0.0 {
                true => y,
                false => y.times(slope.angle.cosine()),
            };
            parts.push((-side * slope.right, amount));
        }
        let (sign, formula) = self.signed_sum(parts)?;
        let plain = slope.right == 0.0 || slope.up == 0.0;
        Some((
            sign,
            if plain {
                formula
            } else {
                self.arm_quantity(force, formula)
            },
        ))
    }

    fn arm_quantity(&mut self, force: &Elementary, formula: Expression) -> Expression {
        let symbol = self.unique(&format!("a_{}", self.suffix(force.act)));
        Formula::step(self.add(
            symbol,
            Dimension::LENGTH,
            Meaning::Arm(force.act),
            Rule::Formula(formula),
        ))
    }

    /// x·Fy − y·Fx.
    fn coordinates(&mut self, force: &Elementary, pivot: &Spot) -> Vec<Signed> {
        let way = self.way(pivot, &force.at);
        let mut terms = Vec::new();
        if let Some((side, x)) = self.coordinate(&way, Axis::Horizontal)
            && let Some((sign, upright)) = self.part(force, Axis::Vertical)
        {
            terms.push((side * sign, upright.times(x)));
        }
        if let Some((side, y)) = self.coordinate(&way, Axis::Vertical)
            && let Some((sign, level)) = self.part(force, Axis::Horizontal)
        {
            terms.push((-side * sign, level.times(y)));
        }
        terms
    }

    /// The name of a size.
    fn name_of(&self, size: &Expression) -> String {
        match size {
            Formula::Atom(Atom::Step(id)) => self
                .working
                .named(*id)
                .map_or_else(|| "F".to_owned(), |named| named.symbol.as_str().to_owned()),
            Formula::Atom(Atom::Given(id)) => self.system.given(*id).symbol.as_str().to_owned(),
            _ => "F".to_owned(),
        }
    }

    /// Sizes and directions of forces with two parts.
    fn results(&mut self) {
        for (index, hold) in self.system.parts().holds.iter().enumerate() {
            let act = ActId::Hold(index);
            let pair = (
                self.working.find(Meaning::Component(act, Axis::Horizontal)),
                self.working.find(Meaning::Component(act, Axis::Vertical)),
            );
            let (Some(right), Some(up)) = pair else {
                continue;
            };
            let value = |id: Quantity| self.atom(&Atom::Step(id)).unwrap_or(0.0);
            let (x, y) = (value(right), value(up));
            let both = x.abs() > 1e-9 * y.abs() && y.abs() > 1e-9 * x.abs();
            let square = |id: Quantity| Formula::Square(Box::new(Formula::step(id)));
            let size = Formula::SquareRoot(Box::new(Formula::Sum(vec![square(right), square(up)])));
            let name = self.unique(hold.symbol.as_str());
            let size = self.add(
                name,
                Dimension::FORCE,
                Meaning::Size(act),
                Rule::Formula(size),
            );
            self.working.results.push(size);
            if !both {
                continue;
            }
            let part = |id: Quantity| Formula::Absolute(Box::new(Formula::step(id)));
            let direction = Formula::ArcTangent(Box::new(part(up).over(part(right))));
            let wish = format!("ψ_{}", hold.symbol.as_str().replace('_', ""));
            let name = self.unique(&wish);
            let meaning = Meaning::Direction(act);
            let direction = self.add(name, Dimension::ANGLE, meaning, Rule::Formula(direction));
            self.working.results.push(direction);
        }
    }
}
