//! A working as a person writes it on the board.

use super::evaluate::Numbers;
use super::figures::shown_figures;
use super::sense::{Sense, Way};
use super::taken::Taken;
use super::{Balance, Expression, Meaning, Quantity, Rule, Working};
use crate::key::{Atom, Binding, two_sides, written};
use crate::problem::GivenId;
use crate::system::{ActId, Spot, System, When};
use crate::units::{Dimension, value_text, with_minus};

/// One line of a working, told.
#[derive(Clone, Debug, PartialEq)]
pub enum Told {
    /// A centre of mass is worked out: the noun of its lamina.
    Centre {
        /// The noun.
        noun: String,
        /// True if the lamina's axes are those of its first leg.
        along_leg: bool,
    },
    /// A piece of a lamina.
    Piece {
        /// Its noun.
        noun: String,
        /// True if it is taken away.
        hole: bool,
    },
    /// The sums over the pieces of a lamina.
    Whole,
    /// A stage begins: how its first balance is taken.
    Stage {
        /// Its first balance, for all bodies of the stage.
        first: Taken,
        /// How many balances are taken together.
        together: usize,
    },
    /// A given that a sum is made of: `x_2 = 0.45 m`.
    Given {
        /// Name and value.
        text: String,
    },
    /// A quantity: what it is, and `W_b = m_b·g = 42 kg·9.8 m/s² = 412 N`.
    Quantity {
        /// What it is.
        meaning: Meaning,
        /// Name, formula in names, in numbers, value.
        text: String,
        /// Of a part of an unknown force, or of an unknown couple: which way it acts.
        way: Option<Way>,
    },
    /// A balance, in names and in numbers.
    Balance {
        /// How it is taken, where it is one of several that give their unknowns together.
        taken: Option<Taken>,
        /// In names.
        names: String,
        /// In numbers, the unknowns as names.
        numbers: String,
    },
    /// The condition of what is sought is told.
    Condition(When),
    /// What is sought was found by trial, since no balance gives it by hand; the forces at it follow.
    Trial {
        /// Its name.
        name: String,
        /// Its value.
        value: String,
    },
    /// Three forces act: their names and what makes them, nothing for a resultant.
    Three(Vec<(String, String)>),
    /// Given forces are added into one.
    Resultant {
        /// Their names, in a row: `Wb and W1`.
        of: String,
        /// The name of their sum.
        sum: String,
        /// The name of its distance from another force, that force, and on which side of it, where it
        /// acts elsewhere.
        from: Option<(String, String, Sense)>,
    },
    /// The lines of three forces meet: the name of the force whose direction that gives, and where
    /// it acts.
    Meeting {
        /// The force.
        open: String,
        /// Where it acts.
        from: Spot,
        /// The name of the point.
        point: &'static str,
    },
    /// A force whose direction was to be found turns out to be level or upright.
    Acts {
        /// The force.
        force: String,
        /// Which way.
        sense: Sense,
    },
    /// The angles of the triangle of forces.
    Angles,
    /// One of them: the force opposite to it, and the angle.
    Angle {
        /// The force.
        opposite: String,
        /// Name, formula, value.
        text: String,
    },
    /// The rule of sines.
    Sines,
    /// The rule of cosines.
    Cosines,
    /// Parts of a force that was found as a whole.
    Parts,
    /// Level or upright parts that are asked.
    Asked,
    /// The results begin.
    Results,
    /// A contact holds by its coefficient: what pushes there.
    Grip {
        /// Its noun.
        noun: String,
    },
    /// The most friction that a contact gives, and what is needed beside it.
    Compared {
        /// Names, numbers and value; then both values.
        text: String,
    },
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
        figures: shown_figures(working, values, system.gravity(), system.figures()),
    };
    let before: Vec<Quantity> = working.sought.iter().map(|(sought, _)| *sought).collect();
    let mut lines = teller.centres(&before);
    let when = system.parts().sought.as_ref().map(|sought| sought.when);
    let is_first = working.sought.is_some() || !working.conditions.is_empty();
    let condition = when.map(Told::Condition);
    // Where it gives a part only when the other is found, it is told there.
    let is_at_top = is_first && working.left.is_none();
    lines.extend(condition.clone().filter(|_| is_at_top));
    lines.extend(teller.trial());
    let all_open = teller.all_open();
    // Told while one of their unknowns was still open, so without a value.
    let mut unvalued: Vec<Quantity> = Vec::new();
    for condition in &working.conditions {
        lines.extend(teller.condition(*condition, &all_open));
        unvalued.extend(Some(*condition).filter(|one| teller.is_open(*one, &all_open)));
    }
    let triangle = teller.triangle(&lines);
    lines.extend(triangle);
    let mut is_found = false;
    for stage in &working.stages {
        let Some(first) = stage.balances.first() else {
            continue;
        };
        if let Some(left) = working.left.filter(|left| stage.needs.contains(left)) {
            lines.extend(condition.clone());
            lines.extend(teller.quantity(left, &[]));
        }
        lines.push(Told::Stage {
            first: teller.taken(first, &stage.bodies()),
            together: stage.balances.len(),
        });
        let mut open = stage.unknowns.clone();
        if !is_found {
            open.extend(&before);
        }
        is_found |= before.iter().any(|sought| stage.unknowns.contains(sought));
        let open = &open[..];
        let is_told = |need: &&Quantity| Some(**need) == working.left;
        for need in stage.needs.iter().filter(|need| !is_told(need)) {
            lines.extend(teller.valued(&mut unvalued, &[*need], open));
            lines.extend(teller.quantity(*need, open));
            unvalued.extend(Some(*need).filter(|need| teller.is_open(*need, open)));
        }
        let terms = stage.balances.iter().flat_map(|balance| &balance.terms);
        let used: Vec<Quantity> = terms.flat_map(|term| term.amount.inputs()).collect();
        lines.extend(teller.valued(&mut unvalued, &used, open));
        for balance in &stage.balances {
            let is_alone = stage.balances.len() == 1;
            let taken = || teller.taken(balance, &balance.bodies);
            lines.push(Told::Balance {
                taken: (!is_alone).then(taken),
                names: teller.balance(balance, &|formula| teller.names(formula)),
                numbers: teller.balance(balance, &|formula| teller.in_numbers(formula, open)),
            });
        }
        for unknown in &stage.unknowns {
            let found = teller.quantity(*unknown, &[]);
            // A balance of two terms may say it already.
            if let (Some(Told::Balance { names, numbers, .. }), Some(Told::Quantity { text, .. })) =
                (lines.last(), &found)
                && text.starts_with(numbers.as_str())
            {
                let said = Told::Given {
                    text: format!("{names},"),
                };
                let only_names = names != numbers;
                lines.pop();
                lines.extend(only_names.then_some(said));
            }
            lines.extend(found);
        }
    }
    let is_sought = |result: &Quantity| {
        let named = working.named(*result);
        named.is_some_and(|named| named.meaning == Meaning::Sought)
    };
    let (sought, rest): (Vec<Quantity>, Vec<Quantity>) =
        working.results.iter().partition(|result| is_sought(result));
    let is_part = |result: &Quantity| {
        let named = working.named(*result);
        let told = named.is_some_and(|named| matches!(named.meaning, Meaning::Part(..)));
        told || working.parts.iter().any(|(_, _, part)| part == result)
    };
    let (parts, rest): (Vec<Quantity>, Vec<Quantity>) = rest.into_iter().partition(is_part);
    let condition = condition.filter(|_| !is_first);
    let sections = [
        (condition, sought),
        (Some(Told::Results), rest),
        (Some(Told::Asked), parts),
    ];
    for (head, results) in sections {
        if !results.is_empty() {
            lines.extend(head);
        }
        for result in results {
            lines.extend(teller.valued(&mut unvalued, &[result], &[]));
            lines.extend(teller.quantity(result, &[]));
        }
    }
    lines.extend(teller.grips());
    lines
}

/// The noun of what stands at a spot.
pub fn spot_name(system: &System, spot: &Spot) -> Option<String> {
    let act = system.act(spot_act(system, spot)?)?;
    Some(act.noun.to_owned())
}

/// What stands at a spot, whatever is sought: a hold before a rope, a rope before a load, a load
/// before a weight.
pub fn spot_act(system: &System, spot: &Spot) -> Option<ActId> {
    let values = system.values();
    let mut other = values.clone();
    if let Some(sought) = &system.parts().sought
        && let Some(value) = other.get_mut(sought.given.0)
    {
        *value = 0.7 * sought.low + 0.3 * sought.high;
    }
    let is_here = |at: &Spot| {
        [&values, &other].iter().all(|values| {
            let apart = system.point(at, values) - system.point(spot, values);
            apart.size() < 1e-9
        })
    };
    let rank = |id: ActId| match id {
        ActId::Hold(_) => 0,
        ActId::Cord(_) => 1,
        ActId::Load(_) => 2,
        ActId::Weight(_) => 3,
    };
    let acts = system.acts();
    acts.iter()
        .filter(|act| act.on.iter().any(|effect| is_here(&effect.at)))
        .min_by_key(|act| rank(act.id))
        .map(|act| act.id)
}

pub(super) struct Teller<'a> {
    pub(super) system: &'a System,
    pub(super) working: &'a Working,
    pub(super) numbers: Numbers<'a>,
    /// Figures of the quantities, by their places.
    figures: Vec<u8>,
}

impl Teller<'_> {
    pub(super) fn quantity(&self, id: Quantity, open: &[Quantity]) -> Option<Told> {
        let named = self.working.named(id)?;
        let value = self
            .working
            .value(id, self.numbers.values, self.numbers.gravity)?;
        let shown = named.symbol.shown();
        let value = self.settled(value, named.dimension);
        let way = self.way(named, value);
        let value = value_text(value, named.dimension, self.figures_of(id));
        let text = match &named.rule {
            Rule::Formula(formula) => {
                let rests = self.rests_on(formula, open);
                let (names, numbers) = (self.names(formula), self.in_numbers(formula, open));
                let mut text = format!("{shown} = {names}");
                if matches!(formula, Expression::Number(_)) {
                    return Some(Told::Quantity {
                        meaning: named.meaning,
                        text,
                        way: None,
                    });
                }
                if numbers != names {
                    text.push_str(&format!(" = {numbers}"));
                }
                let is_given = matches!(formula, Expression::Atom(Atom::Given(_)));
                if !rests && !is_given && numbers != value {
                    text.push_str(&format!(" = {value}"));
                }
                text
            }
            Rule::Solved(_) | Rule::Given(_) => format!("{shown} = {value}"),
        };
        Some(Told::Quantity {
            meaning: named.meaning,
            text,
            way,
        })
    }

    fn figures_of(&self, id: Quantity) -> u8 {
        let own = self.figures.get(id.0).copied();
        own.unwrap_or(self.system.figures())
    }

    /// A value without the dust of rounding: what is nothing beside the largest of its kind.
    fn settled(&self, value: f64, dimension: Dimension) -> f64 {
        let numbers = &self.numbers;
        let largest = || {
            let quantities = self.working.quantities.iter().enumerate();
            quantities
                .filter(|(_, named)| named.dimension == dimension)
                .filter_map(|(index, _)| {
                    let id = Quantity(index);
                    self.working.value(id, numbers.values, numbers.gravity)
                })
                .fold(0.0_f64, |most, one| most.max(one.abs()))
        };
        let forces = [Dimension::FORCE, Dimension::MOMENT].contains(&dimension);
        // Only what is small in its unit can be dust.
        if forces && value.abs() < 1e-3 && value.abs() < 1e-9 * largest() {
            0.0
        } else {
            value
        }
    }

    /// The centres of mass, piece by piece.
    fn centres(&self, open: &[Quantity]) -> Vec<Told> {
        let mut lines = Vec::new();
        for centre in &self.working.centres {
            let ActId::Weight(weight) = centre.act else {
                continue;
            };
            let (Some(lamina), Some(found)) = (
                self.system.lamina(weight),
                self.system.parts().weights.get(weight),
            ) else {
                continue;
            };
            lines.push(Told::Centre {
                noun: found.noun.clone(),
                along_leg: self.system.leg(found.body, 0).is_some(),
            });
            for (piece, known) in lamina.pieces.iter().zip(&centre.pieces) {
                lines.push(Told::Piece {
                    noun: piece.noun.clone(),
                    hole: piece.hole,
                });
                for one in known {
                    match one {
                        Expression::Atom(Atom::Step(id)) => lines.extend(self.quantity(*id, open)),
                        Expression::Atom(atom) => lines.push(Told::Given {
                            text: format!("{} = {}", self.names(one), self.number(*atom, open).0),
                        }),
                        _ => {}
                    }
                }
            }
            lines.push(Told::Whole);
            for sum in &centre.sums {
                lines.extend(self.quantity(*sum, open));
            }
        }
        lines
    }

    /// What is sought, where nothing in the working gives it.
    fn trial(&self) -> Option<Told> {
        let sought = self.system.parts().sought.as_ref()?;
        if !self.working.is_by_trial(sought.given) {
            return None;
        }
        let given = self.system.given(sought.given);
        Some(Told::Trial {
            name: given.symbol.shown(),
            value: self.number(Atom::Given(sought.given), &[]).0,
        })
    }

    /// A condition, in names only where no balance gives what stands in it.
    fn condition(&self, id: Quantity, open: &[Quantity]) -> Option<Told> {
        let told = self.quantity(id, open);
        let named = self.working.named(id)?;
        told.or_else(|| match &named.rule {
            Rule::Formula(formula) => Some(Told::Given {
                text: format!("{} = {}", named.symbol.shown(), self.names(formula)),
            }),
            _ => None,
        })
    }

    /// Every unknown: a condition is told before any is found.
    fn all_open(&self) -> Vec<Quantity> {
        let stages = self.working.stages.iter();
        stages.flat_map(|stage| stage.unknowns.clone()).collect()
    }

    /// True if a quantity has a formula that rests on one of these.
    fn is_open(&self, id: Quantity, open: &[Quantity]) -> bool {
        let rule = self.working.named(id).map(|named| &named.rule);
        matches!(rule, Some(Rule::Formula(formula)) if self.rests_on(formula, open))
    }

    /// The quantities told without a value that these rest on, or are, and that have one now.
    fn valued(
        &self,
        unvalued: &mut Vec<Quantity>,
        used: &[Quantity],
        open: &[Quantity],
    ) -> Vec<Told> {
        let mut lines = Vec::new();
        for id in used {
            let Some(Rule::Formula(formula)) = self.working.named(*id).map(|named| &named.rule)
            else {
                continue;
            };
            lines.extend(self.valued(unvalued, &formula.inputs(), open));
            if unvalued.contains(id) && !self.is_open(*id, open) {
                unvalued.retain(|one| one != id);
                lines.extend(self.quantity(*id, open));
            }
        }
        lines
    }

    /// True if a formula rests on one of these, directly or through others.
    fn rests_on(&self, formula: &Expression, open: &[Quantity]) -> bool {
        if self.holds_sought(formula, open) {
            return true;
        }
        formula.inputs().iter().any(|id| {
            open.contains(id)
                || match self.working.named(*id).map(|named| &named.rule) {
                    Some(Rule::Formula(inner)) => self.rests_on(inner, open),
                    _ => false,
                }
        })
    }

    /// True if what is sought stands in a formula itself while it is open.
    fn holds_sought(&self, formula: &Expression, open: &[Quantity]) -> bool {
        match formula {
            Expression::Atom(Atom::Given(id)) => self.is_sought(*id, open),
            other => {
                let mut children = other.children().into_iter();
                children.any(|child| self.holds_sought(child, open))
            }
        }
    }

    fn is_sought(&self, id: GivenId, open: &[Quantity]) -> bool {
        let sought = self.working.sought;
        sought.is_some_and(|(quantity, given)| given == id && open.contains(&quantity))
    }

    pub(super) fn names(&self, formula: &Expression) -> String {
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

    pub(super) fn number(&self, atom: Atom<Quantity>, open: &[Quantity]) -> (String, bool) {
        match atom {
            Atom::Given(id) if self.is_sought(id, open) => {
                (self.system.given(id).symbol.shown(), true)
            }
            Atom::Given(id) => {
                let given = self.system.given(id);
                // What is sought may come out just where the search for it began.
                let sought = self.system.parts().sought.as_ref();
                let told = sought.is_none_or(|sought| sought.given != id);
                let printed = told && self.numbers.values.get(id.0) == Some(&given.value);
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
                let value = self
                    .working
                    .value(id, self.numbers.values, self.numbers.gravity)
                    .unwrap_or(f64::NAN);
                let value = self.settled(value, named.dimension);
                let text = value_text(value, named.dimension, self.figures_of(id));
                (text, value >= 0.0)
            }
        }
    }

    fn balance(&self, balance: &Balance, write: &dyn Fn(&Expression) -> String) -> String {
        let terms = balance.terms.iter();
        two_sides(terms.map(|term| (term.sign, write(&term.amount))).collect())
    }
}
