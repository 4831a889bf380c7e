//! What is sought, from the forces that a triangle gave.

use super::angle::Turn;
use super::build::Builder;
use super::triangle::{Contact, Side, turn_of};
use super::trouble::Underivable;
use super::{Expression, Meaning, Named, Quantity, Rule, Section, Working};
use crate::key::{Atom, Formula};
use crate::problem::GivenId;
use crate::system::{ActId, Size, System, When};
use crate::text::Symbol;
use crate::units::Dimension;

impl Builder<'_> {
    /// The one side whose direction is the angle that is sought, or rests on it beside known angles:
    /// the two others must not rest on it.
    pub(super) fn sought_direction(&self, sides: &[Side]) -> Option<usize> {
        let given = self.system.parts().sought.as_ref()?.given;
        let rests = |side: &Side| {
            let turn = side.turn.iter().flat_map(|turn| &turn.parts);
            let turned = turn
                .into_iter()
                .any(|(_, atom)| rests_on(&self.working, &Formula::Atom(*atom), given));
            let size = side.size.iter();
            turned
                || size
                    .into_iter()
                    .any(|size| rests_on(&self.working, size, given))
        };
        let mut resting = (0..sides.len()).filter(|at| rests(&sides[*at]));
        let only = resting.next().filter(|_| resting.next().is_none())?;
        let parts = &sides[only].turn.as_ref()?.parts;
        let factor = |atom: &Atom<Quantity>| *atom == Atom::Given(given);
        let mut of_it = parts.iter().filter(|(_, atom)| factor(atom));
        let is_once = of_it.next().is_some_and(|(sign, _)| sign.abs() == 1.0);
        let free = |side: &Side| side.turn.is_some();
        let sized = sides.iter().filter(|side| side.size.is_some()).count();
        (is_once && sized == 2 && sides.iter().all(free)).then_some(only)
    }

    /// Two known sizes and one known angle give the triangle, and so the direction that is sought.
    pub(super) fn by_sought_direction(
        mut self,
        sides: Vec<Side>,
        sought: usize,
        contacts: &[Contact],
    ) -> Result<Working, Underivable> {
        let rest: Vec<usize> = (0..3).filter(|at| *at != sought).collect();
        let turn = |at: usize| sides[at].turn.clone().unwrap_or_else(|| Turn::fixed(0.0));
        if sides[sought].size.is_none() {
            let told = self.inner_angle(&turn(rest[0]), &turn(sought));
            let corner = self.two_known(sides, sought, contacts)?;
            self.direction_from(&Formula::step(corner), &told);
            return Ok(self.working);
        }
        let (known, open) = match sides[rest[0]].size.is_some() {
            true => (rest[0], rest[1]),
            false => (rest[1], rest[0]),
        };
        let between = self.inner_angle(&turn(known), &turn(open));
        if between.value(&|atom| self.atom(atom)).sin().abs() < 1e-6 {
            return Err(self.parallel());
        }
        let wish = |at: usize| format!("α_{}", sides[at].name.replace('_', ""));
        let shown = |at: usize| Symbol::new(sides[at].name.clone()).shown();
        let meaning = |at: usize| Meaning::Corner(sides[at].act);
        let opposite = self.angle_quantity(meaning(sought), &wish(sought), between.formula());
        let size = |at: usize| sides[at].size.clone().unwrap_or(Formula::Number(0.0));
        // The sine of the second angle; of the two angles with it the one as the forces stand.
        let told = self.inner_angle(&turn(open), &turn(sought));
        let ratio = match &opposite {
            Formula::Degrees(90.0) => size(known).over(size(sought)),
            angle => {
                let sine = Formula::Sine(Box::new(angle.clone()));
                size(known).times(sine).over(size(sought))
            }
        };
        let acute = Formula::ArcSine(Box::new(ratio));
        let is_blunt = told.value(&|atom| self.atom(atom)) > 0.5 * std::f64::consts::PI;
        let second = match is_blunt {
            true => Formula::Sum(vec![
                Formula::Degrees(180.0),
                Formula::Negative(Box::new(acute)),
            ]),
            false => acute,
        };
        let second = self.angle_quantity(meaning(known), &wish(known), second);
        let last = Turn::fixed(180.0)
            .plus(-1.0, &turn_of(&opposite))
            .plus(-1.0, &turn_of(&second));
        let last = self.angle_quantity(meaning(open), &wish(open), last.formula());
        let mut angles = vec![Formula::Degrees(0.0); 3];
        angles[sought] = opposite;
        angles[known] = second.clone();
        angles[open] = last;
        let order = [sought, known, open];
        let corners = order.iter().map(|at| (angles[*at].clone(), shown(*at)));
        let corners = corners.collect();
        self.working.triangle.push(Section::Angles(corners));
        self.sines(&sides, &angles, sought, contacts)?;
        self.direction_from(&second, &told);
        Ok(self.working)
    }

    /// Tells the angle that is sought from an angle of the triangle that rests on it in this way.
    fn direction_from(&mut self, corner: &Expression, told: &Turn) {
        let Some(given) = self
            .system
            .parts()
            .sought
            .as_ref()
            .map(|sought| sought.given)
        else {
            return;
        };
        let is_it = |atom: &Atom<Quantity>| *atom == Atom::Given(given);
        let found = told.parts.iter().find(|(_, atom)| is_it(atom));
        let Some((sign, _)) = found.copied() else {
            return;
        };
        let rest = told.clone().plus(-sign, &Turn::angle(Atom::Given(given)));
        let angle = Turn::fixed(0.0)
            .plus(sign, &turn_of(corner))
            .plus(-sign, &rest);
        let printed = self.system.given(given);
        let symbol = printed.symbol.clone();
        let rule = Rule::Formula(angle.formula());
        let found = self.add(symbol, Dimension::ANGLE, Meaning::Sought, rule);
        let sections = self.working.triangle.iter_mut().rev();
        let mut rules = sections.filter_map(|section| match section {
            Section::Cosines(lines) | Section::Sines { lines, .. } => Some(lines),
            _ => None,
        });
        // Where the condition is told before, it follows where its angle does.
        match rules.next() {
            Some(lines) if !self.working.conditions.is_empty() => lines.push(found),
            _ => self.working.results.push(found),
        }
    }
}

/// Tells what is sought from the forces that a triangle gave.
pub(super) fn tell_sought(
    system: &System,
    sought_act: Option<(ActId, Size)>,
    working: &mut Working,
) -> Result<(), Underivable> {
    let Some(sought) = &system.parts().sought else {
        return Ok(());
    };
    let printed = system.given(sought.given);
    let refused = |is_needed: bool| {
        Err(Underivable::NotByTriangle {
            symbol: printed.symbol.shown(),
            is_needed,
        })
    };
    // A direction that was found from the angles.
    if working.find(Meaning::Sought).is_some() {
        return Ok(());
    }
    let told = used(working);
    if told.iter().any(|one| rests_on(working, one, sought.given)) {
        return refused(true);
    }
    let found = |meaning| {
        let is_it = |one: &&Expression| match one {
            Expression::Atom(Atom::Step(id)) => {
                let named = working.named(*id);
                named.is_some_and(|named| named.meaning == meaning)
            }
            _ => false,
        };
        told.iter().find(is_it).cloned()
    };
    let formula = match (sought.when, sought_act) {
        (When::Slips { act, coefficient }, _) if coefficient == sought.given => {
            let (friction, push) = (found(Meaning::Friction(act)), found(Meaning::Push(act)));
            friction
                .zip(push)
                .map(|(friction, push)| friction.over(push))
        }
        (When::Reaches { act, limit }, _) if limit == sought.given => {
            found(Meaning::Force(act)).or_else(|| found(Meaning::Size(act)))
        }
        // The force has the name of what is sought.
        (_, Some((act, Size::Given(_)))) if found(Meaning::Force(act)).is_some() => return Ok(()),
        (_, Some((act, Size::Weight(_)))) => {
            let weight = found(Meaning::Force(act));
            weight.map(|weight| weight.over(Formula::Atom(Atom::Gravity)))
        }
        _ => None,
    };
    let Some(formula) = formula else {
        return refused(false);
    };
    working.quantities.push(Named {
        symbol: printed.symbol.clone(),
        dimension: printed.dimension,
        meaning: Meaning::Sought,
        rule: Rule::Formula(formula),
    });
    working.results.push(Quantity(working.quantities.len() - 1));
    Ok(())
}

/// What a working by the triangle tells.
fn used(working: &Working) -> Vec<Expression> {
    let mut all = Vec::new();
    for section in &working.triangle {
        match section {
            Section::Angles(angles) => all.extend(angles.iter().map(|(angle, _)| angle.clone())),
            Section::Three { lines, .. }
            | Section::Resultant { lines, .. }
            | Section::Cosines(lines)
            | Section::Parts(lines)
            | Section::Asked(lines)
            | Section::Acts { lines, .. }
            | Section::Meeting { lines, .. }
            | Section::Sines { lines, .. } => all.extend(lines.iter().copied().map(Formula::step)),
        }
    }
    all
}

/// True if a formula rests on a given, itself or through quantities.
fn rests_on(working: &Working, formula: &Expression, given: GivenId) -> bool {
    match formula {
        Expression::Atom(Atom::Given(id)) => *id == given,
        Expression::Atom(Atom::Step(id)) => match working.named(*id).map(|named| &named.rule) {
            Some(Rule::Formula(inner)) => rests_on(working, inner, given),
            _ => false,
        },
        other => {
            let mut children = other.children().into_iter();
            children.any(|child| rests_on(working, child, given))
        }
    }
}
