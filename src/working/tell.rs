//! A working as a person writes it on the board.

use super::evaluate::Numbers;
use super::{Balance, Expression, Kind, Meaning, Quantity, Rule, Working};
use crate::key::{Atom, Binding, two_sides, written};
use crate::system::{ActId, Spot, System};
use crate::units::{value_text, with_minus};

/// A value below this share of another of its kind is left over from rounding.
const DUST: f64 = 1e-12;

/// One line of a working, told.
#[derive(Clone, Debug, PartialEq)]
pub enum Told {
    /// A stage begins: the moments or forces of which bodies, about which spot.
    Stage {
        /// How its first balance is taken.
        kind: Kind,
        /// The nouns of its bodies.
        bodies: Vec<String>,
        /// How many unknowns of these bodies the balance does not hold.
        removed: usize,
        /// How many balances are taken together.
        together: usize,
    },
    /// A quantity: what it is, and `W_b = m_b·g = 42 kg·9.8 m/s² = 412 N`.
    Quantity {
        /// What it is.
        meaning: Meaning,
        /// Name, formula in names, in numbers, value.
        text: String,
    },
    /// A balance, in names and in numbers.
    Balance {
        /// In names.
        names: String,
        /// In numbers, the unknowns as names.
        numbers: String,
    },
    /// The results begin.
    Results,
}

/// Every line of a working.
pub fn told(system: &System, working: &Working, values: &[f64]) -> Vec<Told> {
    let teller = Teller {
        system,
        working,
        numbers: Numbers {
            values,
            gravity: system.gravity(),
        },
    };
    let mut lines = Vec::new();
    for stage in &working.stages {
        let Some(first) = stage.balances.first() else {
            continue;
        };
        lines.push(Told::Stage {
            kind: first.kind.clone(),
            bodies: first
                .bodies
                .iter()
                .filter_map(|body| system.parts().bodies.get(body.0))
                .map(|body| body.noun.clone())
                .collect(),
            removed: stage.removed,
            together: stage.balances.len(),
        });
        for need in &stage.needs {
            lines.extend(teller.quantity(*need, &stage.unknowns));
        }
        for balance in &stage.balances {
            let open = &stage.unknowns;
            lines.push(Told::Balance {
                names: teller.balance(balance, &|formula| teller.names(formula)),
                numbers: teller.balance(balance, &|formula| teller.in_numbers(formula, open)),
            });
        }
        for unknown in &stage.unknowns {
            lines.extend(teller.quantity(*unknown, &[]));
        }
    }
    if !working.results.is_empty() {
        lines.push(Told::Results);
    }
    for result in &working.results {
        lines.extend(teller.quantity(*result, &[]));
    }
    lines
}

/// What stands at a spot: a hold before a rope, a rope before a load.
pub fn spot_name(system: &System, spot: &Spot) -> Option<String> {
    let values = system.values();
    let here = system.point(spot, &values);
    let acts = system.acts();
    let rank = |id: ActId| match id {
        ActId::Hold(_) => 0,
        ActId::Cord(_) => 1,
        ActId::Weight(_) | ActId::Load(_) => 2,
    };
    acts.iter()
        .filter(|act| {
            act.on
                .iter()
                .any(|effect| (system.point(&effect.at, &values) - here).size() < 1e-9)
        })
        .min_by_key(|act| rank(act.id))
        .map(|act| act.noun.to_owned())
}

struct Teller<'a> {
    system: &'a System,
    working: &'a Working,
    numbers: Numbers<'a>,
}

impl Teller<'_> {
    /// A quantity's value; what is only the dust of rounding is zero.
    fn value(&self, id: Quantity) -> Option<f64> {
        let of = |id| {
            self.working
                .value(id, self.numbers.values, self.numbers.gravity)
        };
        let (value, dimension) = (of(id)?, self.working.named(id)?.dimension);
        let count = self.working.quantities.len();
        let larger = (0..count)
            .map(Quantity)
            .filter(|other| {
                let named = self.working.named(*other);
                named.is_some_and(|named| named.dimension == dimension)
            })
            .filter_map(of)
            .any(|other| value.abs() < DUST * other.abs());
        Some(if larger { 0.0 } else { value })
    }

    fn quantity(&self, id: Quantity, open: &[Quantity]) -> Option<Told> {
        let named = self.working.named(id)?;
        let value = self.value(id)?;
        let shown = named.symbol.shown();
        let value = value_text(value, named.dimension, self.system.figures());
        let text = match &named.rule {
            Rule::Formula(formula) => {
                let rests = self.rests_on(formula, open);
                let (names, numbers) = (self.names(formula), self.in_numbers(formula, open));
                let mut text = format!("{shown} = {names}");
                if numbers != names {
                    text.push_str(&format!(" = {numbers}"));
                }
                if !rests && numbers != value {
                    text.push_str(&format!(" = {value}"));
                }
                text
            }
            Rule::Solved(_) => format!("{shown} = {value}"),
        };
        Some(Told::Quantity {
            meaning: named.meaning,
            text,
        })
    }

    /// True if a formula rests on one of these, directly or through others.
    fn rests_on(&self, formula: &Expression, open: &[Quantity]) -> bool {
        formula.inputs().iter().any(|id| {
            open.contains(id)
                || match self.working.named(*id).map(|named| &named.rule) {
                    Some(Rule::Formula(inner)) => self.rests_on(inner, open),
                    _ => false,
                }
        })
    }

    fn names(&self, formula: &Expression) -> String {
        let name = |atom: Atom<Quantity>| match atom {
            Atom::Given(id) => (self.system.given(id).symbol.shown(), true),
            Atom::Gravity => ("g".to_owned(), true),
            Atom::Step(id) => {
                let symbol = self.working.named(id).map(|named| named.symbol.shown());
                (symbol.unwrap_or_default(), true)
            }
        };
        written(formula, &name, false).0
    }

    fn in_numbers(&self, formula: &Expression, open: &[Quantity]) -> String {
        let number = |atom: Atom<Quantity>| self.number(atom, open);
        written(formula, &number, false).0
    }

    fn number(&self, atom: Atom<Quantity>, open: &[Quantity]) -> (String, bool) {
        match atom {
            Atom::Given(id) => {
                let given = self.system.given(id);
                let printed = self.numbers.values.get(id.0) == Some(&given.value);
                let text = if printed {
                    with_minus(&given.written)
                } else {
                    let value = self.numbers.values.get(id.0).copied().unwrap_or(f64::NAN);
                    value_text(value, given.dimension, self.system.figures())
                };
                (text, given.value >= 0.0)
            }
            Atom::Gravity => (
                format!("{} m/s²", crate::units::number_text(self.numbers.gravity)),
                true,
            ),
            Atom::Step(id) => {
                let Some(named) = self.working.named(id) else {
                    return (String::new(), true);
                };
                if open.contains(&id) {
                    return (named.symbol.shown(), true);
                }
                if let Rule::Formula(formula) = &named.rule
                    && self.rests_on(formula, open)
                {
                    let (text, binding) = written(formula, &|atom| self.number(atom, open), false);
                    return (text, binding >= Binding::Product);
                }
                let value = self.value(id).unwrap_or(f64::NAN);
                let text = value_text(value, named.dimension, self.system.figures());
                (text, value >= 0.0)
            }
        }
    }

    fn balance(&self, balance: &Balance, write: &dyn Fn(&Expression) -> String) -> String {
        let terms = balance.terms.iter();
        two_sides(terms.map(|term| (term.sign, write(&term.amount))).collect())
    }
}
