//! Deriving a working: the balances in their order, with what they need.

use super::force::{Elementary, Source, Twist, part_name};
use super::level::kept_level;
use super::order::{Candidate, Chosen};
use super::place::{Run, Signed};
use super::trouble::Underivable;
use super::{
    Balance, Expression, Kind, Meaning, Method, Named, Quantity, Rule, Stage, Term, Working,
};
use crate::key::{Atom, Axis, Formula};
use crate::statics::{SystemSolution, solve_system};
use crate::system::{ActId, BodyId, Spot, System};
use crate::text::Symbol;
use crate::units::Dimension;

/// A force worked out farther from the solver's than this share is another one.
const ASTRAY: f64 = 1e-6;

/// A working while it is derived.
pub(super) struct Builder<'a> {
    pub(super) system: &'a System,
    pub(super) values: Vec<f64>,
    /// Other values, at which what vanishes by chance does not.
    pub(super) moved: Vec<f64>,
    gravity: f64,
    /// The forces by the solver: which way what is found points.
    pub(super) solution: SystemSolution,
    /// True while what is sought is worked out like an unknown.
    pub(super) seeks: bool,
    /// Where the resultant of parallel given forces acts, from the first of them.
    pub(super) shift: Option<Run>,
    pub(super) working: Working,
    pub(super) forces: Vec<Elementary>,
    pub(super) twists: Vec<Twist>,
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
    if pivot.is_some() && system.parts().bodies.iter().all(|body| body.knot) {
        return Err(Underivable::KnotPivot);
    }
    let gravity = system.gravity();
    let solution = solve_system(system, values, gravity)?;
    let builder = |seeks: bool| Builder {
        system,
        values: values.to_vec(),
        moved: kept_level(system, values, moved(values)),
        gravity,
        solution: solution.clone(),
        seeks,
        shift: None,
        working: Working {
            method,
            quantities: Vec::new(),
            conditions: Vec::new(),
            left: None,
            sought: None,
            triangle: Vec::new(),
            centres: Vec::new(),
            stages: Vec::new(),
            parts: Vec::new(),
            results: Vec::new(),
        },
        forces: Vec::new(),
        twists: Vec::new(),
    };
    if method == Method::Triangle {
        let mut builder = builder(system.parts().sought.is_some());
        builder.take_apart();
        return builder.triangle();
    }
    let worked = |seeks: bool| {
        let worked = builder(seeks).by_balances(pivot)?;
        match gives_back(&worked, &solution, values, gravity) {
            true => Ok(worked),
            false => Err(Underivable::NoOrder),
        }
    };
    let by_hand = match system.parts().sought.is_some() {
        true => worked(true),
        false => Err(Underivable::NoOrder),
    };
    // Where no balance gives what is sought by hand, its value is taken as found by trial.
    let found = match by_hand {
        Err(Underivable::NoOrder) => worked(false),
        found => found,
    };
    match (found, pivot) {
        // Without the pivot there is an order.
        (Err(Underivable::NoOrder), Some(_)) => {
            derive(system, values, method, None).and(Err(Underivable::PivotUnused))
        }
        (found, _) => found,
    }
}

/// True if every quantity has a value, and every unknown force that of the solver: balances may be
/// two names of one, and then give nothing, or anything.
fn gives_back(working: &Working, solution: &SystemSolution, values: &[f64], gravity: f64) -> bool {
    let (force, length) = solution.scales();
    let mut all = working.quantities.iter().enumerate();
    all.all(|(at, named)| {
        let found = working.value(Quantity(at), values, gravity);
        let Some(found) = found.filter(|value| value.is_finite()) else {
            return false;
        };
        let scale = match named.meaning {
            Meaning::Couple(_) => force * length,
            _ => force,
        };
        let solved = matches!(named.rule, Rule::Solved(_)).then(|| named.meaning.solved(solution));
        solved
            .flatten()
            .is_none_or(|solved| (found - solved).abs() <= ASTRAY * scale.max(solved.abs()))
    })
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
    fn by_balances(mut self, pivot: Option<&Spot>) -> Result<Working, Underivable> {
        self.take_apart();
        self.seek();
        for chosen in self.order(pivot)? {
            let left = chosen.left;
            self.stage(chosen);
            if let Some(left) = left {
                self.leave(left);
            }
        }
        self.sought_ratio();
        self.results();
        self.parts_asked();
        Ok(self.working)
    }

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

    /// How much of a force or couple one unit of its unknown is.
    pub(super) fn share(&self, size: &Source, unknown: Option<Quantity>, values: &[f64]) -> f64 {
        let (Source::Formula(formula), Some(unknown)) = (size, unknown) else {
            return 1.0;
        };
        let share = |atom: &Atom<Quantity>| match atom {
            Atom::Step(id) if *id == unknown => Some(1.0),
            Atom::Step(id) => match &self.working.named(*id)?.rule {
                Rule::Formula(formula) => formula.value(&|inner| match inner {
                    Atom::Step(id) if *id == unknown => Some(1.0),
                    inner => self.atom_at(inner, values),
                }),
                Rule::Solved(_) | Rule::Given(_) => None,
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

    /// A name that nothing has yet: the wish itself, with a number behind it, or with primes where it
    /// has an index already. A comma in it could not be typed.
    pub(super) fn unique(&self, wish: &str) -> Symbol {
        let taken = |name: &Symbol| {
            let givens = self.system.givens().iter().map(|given| &given.symbol);
            let known = self.working.quantities.iter().map(|named| &named.symbol);
            givens.chain(known).any(|symbol| symbol.looks_like(name))
        };
        let mut name = Symbol::new(wish);
        let mut number = 2;
        while taken(&name) {
            name = Symbol::new(match wish.contains('_') {
                true => format!("{wish}{}", "′".repeat(number - 1)),
                false => format!("{wish}_{number}"),
            });
            number += 1;
        }
        name
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
        let stage = self.working.stages.len();
        let mut balances = Vec::new();
        for candidate in &chosen.candidates {
            let terms = self.terms(candidate);
            balances.push(Balance {
                kind: candidate.kind.clone(),
                bodies: candidate.bodies.clone(),
                terms,
                removed: candidate.removed.clone(),
            });
        }
        for unknown in &chosen.unknowns {
            if let Some(named) = self.working.quantities.get_mut(unknown.0)
                && matches!(named.rule, Rule::Solved(_))
            {
                named.rule = Rule::Solved(stage);
            }
        }
        let mut needs: Vec<Quantity> = Vec::new();
        for balance in &balances {
            for term in &balance.terms {
                self.need(&term.amount, &mut needs);
            }
        }
        // A part that the limit leaves is worked out before anything else.
        needs.sort_by_key(|need| Some(*need) != self.working.left);
        self.working.stages.push(Stage {
            needs,
            balances,
            unknowns: chosen.unknowns,
        });
    }

    /// Quantities with a formula that an expression rests on and no earlier stage has told.
    pub(super) fn need(&self, formula: &Expression, needs: &mut Vec<Quantity>) {
        for id in formula.inputs() {
            let stages = self.working.stages.iter();
            let told = stages.into_iter().any(|stage| stage.needs.contains(&id))
                || self.working.centres.iter().any(|centre| centre.tells(id))
                || self.working.conditions.contains(&id);
            if told || needs.contains(&id) {
                continue;
            }
            if let Some(Rule::Formula(inner)) = self.working.named(id).map(|named| &named.rule) {
                let inner = inner.clone();
                self.need(&inner, needs);
                needs.push(id);
            }
        }
    }

    pub(super) fn size(&mut self, act: ActId, source: &Source) -> Expression {
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
            .filter(|force| !self.pulls_back(&candidate.kind, force, &within))
            .cloned()
            .collect();
        for force in &forces {
            match &candidate.kind {
                Kind::Forces(axis) => terms.extend(self.part_term(force, *axis)),
                Kind::Tilted { body, leg, across } => {
                    terms.extend(self.tilted_term(force, (*body, *leg), *across));
                }
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
    pub(super) fn part(&mut self, force: &Elementary, axis: Axis) -> Option<Signed> {
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
        let formula = match axis {
            Axis::Horizontal => size.clone().times(slope.angle.cosine()),
            Axis::Vertical => size.clone().times(slope.angle.sine()),
        };
        // The push and the friction of one contact have parts of their own; the two sides of a
        // joint share theirs.
        let wish = part_name(&self.name_of(&size), axis);
        Some((sign, self.force_quantity(meaning, &wish, formula)))
    }

    /// A force by its formula, made once.
    pub(super) fn force_quantity(
        &mut self,
        meaning: Meaning,
        wish: &str,
        formula: Expression,
    ) -> Expression {
        let rule = Rule::Formula(formula);
        let mut known = self.working.quantities.iter();
        if let Some(known) = known.position(|one| one.meaning == meaning && one.rule == rule) {
            return Formula::step(Quantity(known));
        }
        let symbol = self.unique(wish);
        Formula::step(self.add(symbol, Dimension::FORCE, meaning, rule))
    }

    fn part_term(&mut self, force: &Elementary, axis: Axis) -> Option<Term> {
        let (sign, amount) = self.part(force, axis)?;
        Some(Term {
            act: force.act,
            sign,
            amount,
        })
    }

    /// The term of a force along a leg or across it.
    fn tilted_term(
        &mut self,
        force: &Elementary,
        (body, leg): (BodyId, usize),
        across: bool,
    ) -> Option<Term> {
        let turn = self.leg_turn(body, leg);
        let turned = force.turn.clone().plus(-1.0, &turn);
        let slope = turned.slope(&|atom| self.atom(atom));
        let (side, straight) = match across {
            true => (slope.up, slope.right == 0.0),
            false => (slope.right, slope.up == 0.0),
        };
        if side == 0.0 {
            return None;
        }
        let size = self.size(force.act, &force.size);
        let (mark, meaning, ratio) = match across {
            true => ("⊥", Meaning::Across(force.act), slope.angle.sine()),
            false => ("∥", Meaning::Along(force.act), slope.angle.cosine()),
        };
        let amount = match straight {
            true => size,
            false => {
                let wish = format!("{}{mark}", self.name_of(&size));
                self.force_quantity(meaning, &wish, size.times(ratio))
            }
        };
        Some(Term {
            act: force.act,
            sign: side * force.sign,
            amount,
        })
    }

    /// The name of a size.
    pub(super) fn name_of(&self, size: &Expression) -> String {
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
            let part = |id: Quantity| Formula::Absolute(Box::new(Formula::step(id)));
            let size = match both {
                true => {
                    Formula::SquareRoot(Box::new(Formula::Sum(vec![square(right), square(up)])))
                }
                false if x.abs() > y.abs() => part(right),
                false => part(up),
            };
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
            let direction = Formula::ArcTangent(Box::new(part(up).over(part(right))));
            let wish = format!("ψ_{}", hold.symbol.as_str().replace('_', ""));
            let name = self.unique(&wish);
            let meaning = Meaning::Direction(act);
            let direction = self.add(name, Dimension::ANGLE, meaning, Rule::Formula(direction));
            self.working.results.push(direction);
        }
    }
}
