//! Formulas as a person would write them: in names, or in numbers.

use super::{Atom, Balance, Formula, Key, Pins, Rule, Sample, StepId};
use crate::problem::Problem;
use crate::units::{Dimension, figures_text, value_text, with_minus};
use std::f64::consts::PI;

/// How formulas are written.
pub struct Teller<'a> {
    /// The problem, for names and printed numbers.
    pub problem: &'a Problem,
    /// The key whose steps the formulas refer to.
    pub key: &'a Key,
    /// The numbers to put in.
    pub sample: &'a Sample,
    /// Values that stand instead of the key's.
    pub pins: &'a Pins,
    /// Figures of calculated values.
    pub figures: u8,
    /// True: as typed on a plain keyboard, without units (`117.6*sin(35)`). False: as on the
    /// board (`117.6 N · sin 35°`).
    pub typed: bool,
    /// Steps whose name is written where their value would be (the unknown of an equation).
    pub named: &'a [StepId],
}

/// How tightly a written formula binds.
#[derive(Clone, Copy, PartialEq, PartialOrd)]
pub(crate) enum Binding {
    Sum,
    Product,
    Tight,
}

/// A formula in names: `W_b·sin α`.
pub fn formula_names(problem: &Problem, key: &Key, formula: &Formula) -> String {
    written(formula, &|atom| name(problem, key, atom), false).0
}

/// A formula in numbers.
pub fn formula_numbers(teller: &Teller<'_>, formula: &Formula) -> String {
    written(formula, &|atom| teller.number(atom), teller.typed).0
}

/// A balance in names, clockwise and downward terms on one side: `W_b⊥·L/2 = T⊥·d_T`.
pub fn balance_names(problem: &Problem, key: &Key, balance: &Balance) -> String {
    sides(balance, &|formula| {
        written(formula, &|atom| name(problem, key, atom), false).0
    })
}

/// A balance in numbers, the unknown as a name.
pub fn balance_numbers(teller: &Teller<'_>, balance: &Balance) -> String {
    sides(balance, &|formula| formula_numbers(teller, formula))
}

fn sides(balance: &Balance, write: &dyn Fn(&Formula) -> String) -> String {
    let terms = balance.terms.iter();
    two_sides(terms.map(|term| (term.sign, write(&term.amount))).collect())
}

/// Signed terms as an equation: those with the sign of the first on the left.
pub(crate) fn two_sides(terms: Vec<(f64, String)>) -> String {
    let first = terms.first().map_or(1.0, |(sign, _)| *sign);
    let side = |sign: f64| {
        let on_it = terms.iter().filter(|(its, _)| *its == sign);
        joined(&on_it.map(|(_, text)| text.clone()).collect::<Vec<_>>())
    };
    format!("{} = {}", side(first), side(-first))
}

/// The terms of a side; one that begins with a minus sign is taken away.
fn joined(terms: &[String]) -> String {
    let mut text = String::new();
    for term in terms {
        let sign = term.chars().next().filter(|c| matches!(c, '-' | '−'));
        let size = sign.map_or("", |sign| &term[sign.len_utf8()..]);
        match sign {
            Some(sign) if !text.is_empty() => text.push_str(&format!(" {sign} {size}")),
            _ if !text.is_empty() => text.push_str(&format!(" + {term}")),
            _ => text.push_str(term),
        }
    }
    if text.is_empty() {
        text.push('0');
    }
    text
}

/// The name of an atom; distances are written out, since `L/2` says more than a name.
fn name(problem: &Problem, key: &Key, atom: Atom) -> (String, bool) {
    match atom {
        Atom::Given(id) => (problem.given(id).symbol.shown(), true),
        Atom::Gravity => ("g".to_owned(), true),
        Atom::Step(id @ StepId::Distance(_)) => match key.step(id).map(|step| &step.rule) {
            Some(Rule::Formula(formula)) => {
                let (text, binding) = written(formula, &|atom| name(problem, key, atom), false);
                (text, binding >= Binding::Product)
            }
            _ => ("d".to_owned(), true),
        },
        Atom::Step(id) => (
            key.step(id)
                .map_or_else(String::new, |step| step.symbol.shown()),
            true,
        ),
    }
}

impl Teller<'_> {
    /// The number of an atom, and whether it needs no brackets inside a product.
    fn number(&self, atom: Atom) -> (String, bool) {
        let plain = |value: f64, dimension: Dimension| {
            if self.typed {
                let value = if dimension == Dimension::ANGLE {
                    value.to_degrees()
                } else {
                    value
                };
                figures_text(value, self.figures)
            } else {
                value_text(value, dimension, self.figures)
            }
        };
        match atom {
            Atom::Given(id) => {
                let given = self.problem.given(id);
                let number = given.written.split([' ', '°']).next().unwrap_or_default();
                (
                    if self.typed {
                        number.to_owned()
                    } else {
                        with_minus(&given.written)
                    },
                    true,
                )
            }
            Atom::Gravity => {
                let g = crate::units::number_text(self.sample.gravity);
                (if self.typed { g } else { format!("{g} m/s²") }, true)
            }
            Atom::Step(id) if self.named.contains(&id) => (
                self.key
                    .step(id)
                    .map_or_else(String::new, |step| self.step_name(step)),
                true,
            ),
            Atom::Step(id @ StepId::Distance(_)) => {
                match self.key.step(id).map(|step| &step.rule) {
                    Some(Rule::Formula(formula)) => {
                        let (text, binding) =
                            written(formula, &|atom| self.number(atom), self.typed);
                        (text, binding >= Binding::Product)
                    }
                    _ => ("d".to_owned(), true),
                }
            }
            // What is made of an unknown that is still a letter is written out.
            Atom::Step(id @ StepId::Found(..))
                if self
                    .key
                    .open_in(id)
                    .iter()
                    .any(|open| self.named.contains(open)) =>
            {
                match self.key.formula(id) {
                    Some(formula) => {
                        let (text, binding) =
                            written(&formula, &|atom| self.number(atom), self.typed);
                        (text, binding >= Binding::Product)
                    }
                    None => (String::new(), true),
                }
            }
            // A component of the unknown is written out: T·sin γ.
            Atom::Step(id @ (StepId::Across(_) | StepId::PartOf(..)))
                if self.named.iter().any(|named| self.refers(id, *named)) =>
            {
                match self.key.step(id).map(|step| &step.rule) {
                    Some(Rule::Formula(formula)) => {
                        let (text, binding) =
                            written(formula, &|atom| self.number(atom), self.typed);
                        (text, binding >= Binding::Product)
                    }
                    _ => (String::new(), true),
                }
            }
            Atom::Step(id) => {
                let dimension = self
                    .key
                    .step(id)
                    .map_or(Dimension::NUMBER, |step| step.dimension);
                match self.key.value(id, self.sample, self.pins) {
                    Some(value) => (plain(value, dimension), value >= 0.0),
                    None => (
                        self.key
                            .step(id)
                            .map_or_else(String::new, |step| self.step_name(step)),
                        true,
                    ),
                }
            }
        }
    }

    fn step_name(&self, step: &super::Step) -> String {
        if self.typed {
            step.symbol.typed()
        } else {
            step.symbol.shown()
        }
    }

    fn refers(&self, id: StepId, wanted: StepId) -> bool {
        match self.key.step(id).map(|step| &step.rule) {
            Some(Rule::Formula(formula)) => formula.inputs().contains(&wanted),
            _ => false,
        }
    }
}

/// Writes a formula; `atom` gives an atom's text and whether it needs no brackets in a product.
pub(crate) fn written<S: Copy>(
    formula: &Formula<S>,
    atom: &dyn Fn(Atom<S>) -> (String, bool),
    typed: bool,
) -> (String, Binding) {
    let inner = |part: &Formula<S>| written(part, atom, typed);
    let bracketed = |part: &Formula<S>, least: Binding| {
        let (text, binding) = inner(part);
        if binding < least {
            format!("({text})")
        } else {
            text
        }
    };
    let function = |name: &str, argument: &Formula<S>| {
        let (text, binding) = inner(argument);
        let text = if typed || binding < Binding::Tight {
            format!("{name}({text})")
        } else {
            format!("{name} {text}")
        };
        (text, Binding::Tight)
    };
    let minus = if typed { '-' } else { '−' };
    let degrees = |value: f64| {
        let number = crate::units::number_text(value);
        if typed { number } else { format!("{number}°") }
    };
    match formula {
        Formula::Atom(which) => {
            let (text, tight) = atom(*which);
            let product = text.contains(['·', '/', '*']);
            let binding = match (tight, product) {
                (true, false) => Binding::Tight,
                (true, true) => Binding::Product,
                (false, _) => Binding::Sum,
            };
            (text, binding)
        }
        Formula::Number(PI) => {
            let name = if typed { "pi" } else { "π" };
            (name.to_owned(), Binding::Tight)
        }
        Formula::Number(number) => (crate::units::number_text(*number), Binding::Tight),
        Formula::Degrees(value) => (degrees(*value), Binding::Tight),
        Formula::Sum(parts) => (sum(parts, &bracketed, minus), Binding::Sum),
        Formula::Product(parts) => {
            let dot = if typed { "*" } else { "·" };
            let mut text = String::new();
            for (index, part) in parts.iter().enumerate() {
                let factor = bracketed(part, Binding::Product);
                // A number before a name needs no dot: 3L/4.
                let close = !typed
                    && index > 0
                    && matches!(parts[index - 1].bare(), Formula::Number(number) if *number != PI)
                    && matches!(part.bare(), Formula::Atom(_))
                    && factor.starts_with(char::is_alphabetic);
                if index > 0 && !close {
                    text.push_str(dot);
                }
                text.push_str(&factor);
            }
            (text, Binding::Product)
        }
        Formula::Quotient(over, under) => (
            format!(
                "{}/{}",
                bracketed(over, Binding::Product),
                bracketed(under, Binding::Tight)
            ),
            Binding::Product,
        ),
        Formula::Negative(part) => match opposite(part) {
            Some(positive) => inner(&positive),
            None => (
                format!("{minus}{}", bracketed(part, Binding::Product)),
                Binding::Sum,
            ),
        },
        Formula::Absolute(part) => {
            // The size of a number is that number without its sign.
            let (text, binding) = inner(part);
            match text.strip_prefix(minus) {
                Some(size) if size.contains(['·', '/', '*', '+']) => {
                    (size.to_owned(), Binding::Product)
                }
                Some(size) => (size.to_owned(), Binding::Tight),
                None if binding != Binding::Sum
                    && text.starts_with(|c: char| c.is_ascii_digit()) =>
                {
                    (text, Binding::Tight)
                }
                None => (format!("|{text}|"), Binding::Tight),
            }
        }
        Formula::Sine(part) => function("sin", part),
        Formula::Cosine(part) => function("cos", part),
        Formula::Tangent(part) => function("tan", part),
        Formula::ArcSine(part) => (format!("asin({})", inner(part).0), Binding::Tight),
        Formula::ArcTangent(part) => (format!("atan({})", inner(part).0), Binding::Tight),
        Formula::Square(part) => {
            let mark = if typed { "^2" } else { "²" };
            let (text, binding) = inner(part);
            // A value with its unit squares as a whole.
            let apart = binding < Binding::Tight || text.contains(' ');
            (
                if apart {
                    format!("({text}){mark}")
                } else {
                    format!("{text}{mark}")
                },
                Binding::Tight,
            )
        }
        Formula::SquareRoot(part) => {
            let name = if typed { "sqrt" } else { "√" };
            (format!("{name}({})", inner(part).0), Binding::Tight)
        }
        Formula::Tagged(_, part) => inner(part),
    }
}

/// The opposite of a formula that as a whole stands below a minus sign, so that two of them need
/// not be written: `(−x − d)·tan θ` gives `(x + d)·tan θ`.
fn opposite<S: Copy>(formula: &Formula<S>) -> Option<Formula<S>> {
    match formula {
        Formula::Negative(part) => Some((**part).clone()),
        Formula::Sum(parts) => {
            let parts: Option<Vec<_>> = parts.iter().map(opposite).collect();
            parts.map(Formula::Sum)
        }
        Formula::Product(parts) => {
            let turned =
                (parts.iter().enumerate()).find_map(|(index, part)| Some((index, opposite(part)?)));
            turned.map(|(index, part)| {
                let mut parts = parts.clone();
                parts[index] = part;
                Formula::Product(parts)
            })
        }
        Formula::Quotient(over, under) => {
            opposite(over).map(|over| Formula::Quotient(Box::new(over), under.clone()))
        }
        Formula::Tagged(role, part) => {
            opposite(part).map(|part| Formula::Tagged(*role, Box::new(part)))
        }
        _ => None,
    }
}

fn sum<S: Copy>(
    parts: &[Formula<S>],
    bracketed: &dyn Fn(&Formula<S>, Binding) -> String,
    minus: char,
) -> String {
    let mut text = String::new();
    for (index, part) in parts.iter().enumerate() {
        match (part.bare(), index) {
            (Formula::Negative(inner), _) if opposite(inner).is_some() => {
                let positive = opposite(inner).unwrap_or_else(|| part.clone());
                let plus = if index == 0 { "" } else { " + " };
                text.push_str(&format!("{plus}{}", bracketed(&positive, Binding::Product)));
            }
            (Formula::Negative(inner), 0) => {
                text.push_str(&format!("{minus}{}", bracketed(inner, Binding::Product)))
            }
            (Formula::Negative(inner), _) => {
                text.push_str(&format!(" {minus} {}", bracketed(inner, Binding::Product)))
            }
            (_, 0) => text.push_str(&bracketed(part, Binding::Product)),
            (_, _) => text.push_str(&format!(" + {}", bracketed(part, Binding::Product))),
        }
    }
    text
}
