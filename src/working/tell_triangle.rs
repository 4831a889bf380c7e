//! The parts of a working by the triangle of forces, told.

use super::sense::{Sense, Way};
use super::tell::{Teller, Told};
use super::{Expression, Meaning, Quantity, Rule, Section};
use crate::key::Atom;

impl Teller<'_> {
    /// The parts of a working by the triangle of forces, after what was told before.
    pub(super) fn triangle(&self, before: &[Told]) -> Vec<Told> {
        let mut told = before.to_vec();
        for section in &self.working.triangle {
            let (head, lines) = match section {
                Section::Three { names, lines } => (Told::Three(names.clone()), &lines[..]),
                Section::Resultant {
                    of,
                    sum,
                    from,
                    way,
                    lines,
                } => {
                    let (of, sum, from) = (of.clone(), sum.clone(), from.clone());
                    told.push(Told::Resultant { of, sum, from });
                    self.lines_of_sum(*way, lines, &mut told);
                    continue;
                }
                Section::Meeting {
                    open,
                    from,
                    point,
                    lines,
                } => {
                    let (open, from, point) = (open.clone(), from.clone(), *point);
                    (Told::Meeting { open, from, point }, &lines[..])
                }
                Section::Acts {
                    force,
                    sense,
                    lines,
                } => {
                    let (force, sense) = (force.clone(), *sense);
                    (Told::Acts { force, sense }, &lines[..])
                }
                Section::Angles(angles) => {
                    told.push(Told::Angles);
                    for (angle, opposite) in self.as_they_follow(angles) {
                        for id in angle.inputs() {
                            self.needs_of(id, &mut told);
                        }
                        told.push(self.angle(angle, opposite, &told));
                    }
                    continue;
                }
                Section::Cosines(lines) => (Told::Cosines, &lines[..]),
                Section::Sines { pairs, lines } => {
                    told.push(Told::Sines);
                    told.push(self.rule_of_sines(pairs));
                    told.extend(lines.iter().filter_map(|line| self.quantity(*line, &[])));
                    continue;
                }
                Section::Parts(lines) => (Told::Parts, &lines[..]),
                Section::Asked(lines) => (Told::Asked, &lines[..]),
            };
            told.push(head);
            for line in lines {
                self.needs_of(*line, &mut told);
                told.extend(self.quantity(*line, &[]));
            }
        }
        told.split_off(before.len())
    }

    /// The lines of a resultant: which way it acts stands with its angle, else with its size.
    fn lines_of_sum(&self, sense: Sense, lines: &[Quantity], told: &mut Vec<Told>) {
        let is_slope = |line: &Quantity| {
            let named = self.working.named(*line);
            named.is_some_and(|named| matches!(named.meaning, Meaning::Slope(_)))
        };
        let with_way = lines.iter().position(is_slope).unwrap_or(0);
        for (index, line) in lines.iter().enumerate() {
            self.needs_of(*line, told);
            let mut line = self.quantity(*line, &[]);
            if let Some(Told::Quantity { way, .. }) = &mut line
                && index == with_way
            {
                *way = Some(Way { sense, on: None });
            }
            told.extend(line);
        }
    }

    /// The angles in an order in which none stands in the formula of an earlier one.
    fn as_they_follow<'a>(
        &self,
        angles: &'a [(Expression, String)],
    ) -> Vec<&'a (Expression, String)> {
        let rests_on = |(angle, _): &(Expression, String), other: &(Expression, String)| {
            let inner = angle.inputs().into_iter();
            let mut inner = inner.filter_map(|id| match &self.working.named(id)?.rule {
                Rule::Formula(formula) => Some(formula.inputs()),
                _ => None,
            });
            angle != &other.0 && inner.any(|ids| ids.iter().any(|id| other.0.inputs().contains(id)))
        };
        let (rest, first): (Vec<_>, Vec<_>) = angles
            .iter()
            .partition(|one| angles.iter().any(|other| rests_on(one, other)));
        first.into_iter().chain(rest).collect()
    }

    /// Weights and resultants that a line of the triangle rests on, each told once.
    fn needs_of(&self, line: Quantity, told: &mut Vec<Told>) {
        let Some(Rule::Formula(formula)) = self.working.named(line).map(|named| &named.rule) else {
            return;
        };
        for id in formula.inputs() {
            let need = self.quantity(id, &[]);
            // A force at its limit is told as the condition.
            let is_told = self.is_of_triangle(id) || self.working.conditions.contains(&id);
            if !is_told && need.as_ref().is_some_and(|need| !told.contains(need)) {
                self.needs_of(id, told);
                told.extend(need);
            }
        }
    }

    /// True for a quantity that a section of the triangle tells itself.
    fn is_of_triangle(&self, id: Quantity) -> bool {
        self.working.triangle.iter().any(|section| match section {
            Section::Angles(angles) => angles
                .iter()
                .any(|(angle, _)| *angle == Expression::step(id)),
            Section::Three { lines, .. }
            | Section::Resultant { lines, .. }
            | Section::Cosines(lines)
            | Section::Parts(lines)
            | Section::Asked(lines)
            | Section::Acts { lines, .. }
            | Section::Meeting { lines, .. }
            | Section::Sines { lines, .. } => lines.contains(&id),
        })
    }

    fn angle(&self, angle: &Expression, opposite: &str, before: &[Told]) -> Told {
        let found = match angle {
            Expression::Atom(Atom::Step(id)) => self.quantity(*id, &[]),
            _ => None,
        };
        let text = match found {
            Some(Told::Quantity { text, .. }) => Some(text),
            _ => None,
        };
        let is_above = |text: &String| {
            let is_it =
                |one: &Told| matches!(one, Told::Quantity { text: told, .. } if told == text);
            before.iter().any(is_it)
        };
        // What stands above with its formula is told by its value.
        let text = match (text.filter(|text| !is_above(text)), angle) {
            (Some(text), _) => text,
            (_, Expression::Atom(atom)) => {
                format!("{} = {}", self.names(angle), self.number(*atom, &[]).0)
            }
            (_, other) => self.names(other),
        };
        let opposite = opposite.to_owned();
        Told::Angle { opposite, text }
    }

    /// `R/sin α = T/sin β = H/sin γ`.
    fn rule_of_sines(&self, pairs: &[(Expression, Expression)]) -> Told {
        let side = |(side, angle): &(Expression, Expression)| {
            let sine = Expression::Sine(Box::new(angle.clone()));
            self.names(&side.clone().over(sine))
        };
        let text = pairs.iter().map(side).collect::<Vec<_>>().join(" = ");
        Told::Given { text }
    }
}
