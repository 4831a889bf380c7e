//! Values of a working's quantities at any choice of the givens.

use super::{Balance, Expression, Quantity, Rule, Working};
use crate::key::{Atom, eliminate};
use std::collections::BTreeMap;

/// Quantities rest on others, which rest on others; deeper than this is a ring.
const DEEPEST: usize = 60;

/// One choice of numbers.
pub(super) struct Numbers<'a> {
    pub(super) values: &'a [f64],
    pub(super) gravity: f64,
}

/// Quantities whose value is fixed from outside.
type Pins = BTreeMap<Quantity, f64>;

impl Working {
    /// The value of a quantity, SI, angles in radians; `None` where it has none.
    pub fn value(&self, id: Quantity, values: &[f64], gravity: f64) -> Option<f64> {
        let numbers = Numbers { values, gravity };
        self.quantity(id, &numbers, &Pins::new(), 0)
    }

    fn quantity(
        &self,
        id: Quantity,
        numbers: &Numbers<'_>,
        pins: &Pins,
        depth: usize,
    ) -> Option<f64> {
        if let Some(pinned) = pins.get(&id) {
            return Some(*pinned);
        }
        if depth > DEEPEST {
            return None;
        }
        match &self.named(id)?.rule {
            Rule::Formula(formula) => self.expression(formula, numbers, pins, depth + 1),
            Rule::Given(given) => numbers.values.get(given.0).copied(),
            Rule::Solved(stage) => {
                let stage = self.stages.get(*stage)?;
                // What is sought has its value; the balances then give the rest.
                let solved: Vec<Quantity> = (stage.unknowns.iter())
                    .filter(|one| {
                        let rule = self.named(**one).map(|named| &named.rule);
                        matches!(rule, Some(Rule::Solved(_)))
                    })
                    .copied()
                    .collect();
                let at = solved.iter().position(|unknown| *unknown == id)?;
                self.stage(&stage.balances, &solved, numbers, pins, depth + 1)
                    .and_then(|found| found.get(at).copied())
            }
        }
    }

    fn expression(
        &self,
        formula: &Expression,
        numbers: &Numbers<'_>,
        pins: &Pins,
        depth: usize,
    ) -> Option<f64> {
        formula.value(&|atom| match atom {
            Atom::Given(given) => numbers.values.get(given.0).copied(),
            Atom::Gravity => Some(numbers.gravity),
            Atom::Step(id) => self.quantity(*id, numbers, pins, depth + 1),
        })
    }

    fn balance(
        &self,
        balance: &Balance,
        numbers: &Numbers<'_>,
        pins: &Pins,
        depth: usize,
    ) -> Option<f64> {
        balance.terms.iter().try_fold(0.0, |sum, term| {
            Some(sum + term.sign * self.expression(&term.amount, numbers, pins, depth)?)
        })
    }

    /// The unknowns of a stage: its balances are linear in them.
    fn stage(
        &self,
        balances: &[Balance],
        unknowns: &[Quantity],
        numbers: &Numbers<'_>,
        pins: &Pins,
        depth: usize,
    ) -> Option<Vec<f64>> {
        let count = unknowns.len();
        let mut pins = pins.clone();
        for unknown in unknowns {
            pins.insert(*unknown, 0.0);
        }
        let mut rows: Vec<Vec<f64>> = Vec::new();
        for balance in balances {
            let none = self.balance(balance, numbers, &pins, depth)?;
            let mut row = Vec::new();
            for unknown in unknowns {
                pins.insert(*unknown, 1.0);
                row.push(self.balance(balance, numbers, &pins, depth)? - none);
                pins.insert(*unknown, 0.0);
            }
            row.push(-none);
            rows.push(row);
        }
        eliminate(rows, count)
    }
}
