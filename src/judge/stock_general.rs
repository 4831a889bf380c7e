//! What is worked out inside the formulas of a general working: lengths times ratios, products of
//! some of the factors, differences of lengths.

use super::board::{Board, PinnedSamples};
use super::names::NameRole;
use super::stock::{Nearness, Stock};
use crate::key::{Atom, CHOICES, Formula, Key, Pins, Rule, Samples};
use crate::problem::GivenId;
use crate::units::Dimension;

/// The most factors of a product of which every partial product is known.
const MOST_FACTORS: usize = 5;

impl Stock {
    /// The parts of every formula and balance, at the right values and at the learner's own.
    pub(super) fn add_inner(&mut self, board: &Board<'_>) {
        if board.key.general.is_none() {
            return;
        }
        self.add_as_written(board);
        self.add_masses(board);
        self.add_parts_of_spread_loads(board);
        let lengths = board
            .key
            .general
            .iter()
            .flat_map(|general| &general.lengths);
        for length in lengths {
            self.add_signed(*length, Dimension::LENGTH, Nearness::Worked);
        }
        let own = board.own_pins();
        let mut all = vec![PinnedSamples::new()];
        if !own.is_empty() {
            all.push(own);
        }
        for step in &board.key.steps {
            match &step.rule {
                Rule::Formula(formula) => self.add_of(board, formula, &all),
                Rule::Balance(balance) => {
                    for term in &balance.terms {
                        self.add_of(board, &term.amount, &all);
                    }
                }
                _ => {}
            }
        }
    }

    /// Lengths that are printed in centimetres or millimetres: who works in them throughout types
    /// them without their unit.
    fn add_as_written(&mut self, board: &Board<'_>) {
        for (index, given) in board.problem.givens().iter().enumerate() {
            let number = given.written.split(' ').next().unwrap_or_default();
            let number = number.replace('−', "-").parse::<f64>().unwrap_or(0.0);
            let factor = given.value / number;
            let other_unit = number != 0.0 && (factor - 1.0).abs() > 1e-9;
            let name = NameRole::Given(GivenId(index));
            if other_unit
                && given.dimension == Dimension::LENGTH
                && let Some(function) = board.name_function(name)
            {
                let written = function.map(|value| (value / factor).abs());
                self.add_bare(written, Dimension::LENGTH, number.abs());
            }
        }
    }

    /// Sums of the given masses, as they are worked in the head: 90 for 20 kg and 70 kg; and of the
    /// weights of several bodies taken together.
    fn add_masses(&mut self, board: &Board<'_>) {
        let givens = board.problem.givens().iter().enumerate();
        let masses: Vec<Samples> = givens
            .filter(|(index, _)| !board.key.is_sought(GivenId(*index)))
            .filter(|(_, given)| given.dimension == Dimension::MASS)
            .filter_map(|(index, _)| board.name_function(NameRole::Given(GivenId(index))))
            .take(MOST_FACTORS)
            .collect();
        self.add_sums(&masses, Dimension::MASS, Nearness::Exact);
        let steps = board.key.steps.iter().map(|step| step.id);
        let weights: Vec<Samples> = steps
            .filter(|id| id.is_weight() && board.key.open_in(*id).is_empty())
            .filter_map(|id| board.name_function(NameRole::Step(id)))
            .take(MOST_FACTORS)
            .collect();
        self.add_sums(&weights, Dimension::FORCE, Nearness::Worked);
    }

    /// What a load that rises from one value to another is made of, for whoever takes it as a
    /// rectangle and a triangle or as two triangles: the difference of the values, each part's force,
    /// its place at half or a third of the stretch, and its moment about the point from which the
    /// stretch is measured.
    fn add_parts_of_spread_loads(&mut self, board: &Board<'_>) {
        let of = |wanted: Option<Dimension>| -> Vec<Samples> {
            let givens = board.problem.givens().iter().enumerate();
            givens
                .filter(|(index, given)| {
                    Some(given.dimension) == wanted && !board.key.is_sought(GivenId(*index))
                })
                .filter_map(|(index, _)| board.name_function(NameRole::Given(GivenId(index))))
                .take(MOST_FACTORS)
                .collect()
        };
        let spread = Dimension::FORCE.per(Dimension::LENGTH);
        let (values, places) = (of(spread), of(Some(Dimension::LENGTH)));
        let mix = |one: &Samples, other: &Samples, share: f64| -> Samples {
            std::array::from_fn(|choice| one[choice] * (1.0 - share) + other[choice] * share)
        };
        for (start, end) in pairs(&places).filter(|_| !values.is_empty()) {
            let stretch: Samples = std::array::from_fn(|choice| end[choice] - start[choice]);
            let shares = [1.0 / 3.0, 0.5, 2.0 / 3.0];
            let spots = shares.map(|share| mix(start, end, share));
            for spot in spots {
                self.add(spot, Dimension::LENGTH, spot[0], Nearness::Equal);
            }
            let steps = pairs(&values).map(|(low, high)| -> Samples {
                std::array::from_fn(|choice| high[choice] - low[choice])
            });
            for value in values.iter().copied().chain(steps) {
                if let Some(spread) = spread {
                    self.add(value, spread, value[0], Nearness::Exact);
                }
                // Of a rectangle the whole, of a triangle half.
                for share in [1.0, 0.5] {
                    let force = std::array::from_fn(|at| share * value[at] * stretch[at]);
                    self.add(force, Dimension::FORCE, force[0], Nearness::Worked);
                    for spot in spots {
                        let moment = std::array::from_fn(|at| force[at] * spot[at]);
                        self.add(moment, Dimension::MOMENT, moment[0], Nearness::Worked);
                    }
                }
            }
        }
    }

    /// Adds the sums of two or more of these.
    fn add_sums(&mut self, all: &[Samples], dimension: Dimension, nearness: Nearness) {
        for chosen in 1..1_usize << all.len() {
            let some = (0..all.len()).filter(|index| chosen & (1 << index) != 0);
            let some: Vec<&Samples> = some.map(|index| &all[index]).collect();
            if some.len() > 1 {
                let sum = std::array::from_fn(|choice| some.iter().map(|one| one[choice]).sum());
                self.add(sum, dimension, sum[0], nearness);
            }
        }
    }

    fn add_of(&mut self, board: &Board<'_>, formula: &Formula, all: &[PinnedSamples]) {
        for part in formula.children() {
            self.add_of(board, part, all);
        }
        match formula.bare() {
            Formula::Product(factors) => {
                let factors = &factors[..factors.len().min(MOST_FACTORS)];
                for chosen in 1..1_usize << factors.len() {
                    let some = (0..factors.len()).filter(|index| chosen & (1 << index) != 0);
                    let some: Vec<Formula> = some.map(|index| factors[index].clone()).collect();
                    if some.len() > 1 {
                        self.add_one(board, &Formula::Product(some), all);
                    }
                }
            }
            Formula::Sum(_) | Formula::Quotient(..) | Formula::Square(_) => {
                self.add_one(board, formula, all);
            }
            _ => {}
        }
    }

    /// Adds a quantity by its size.
    pub(super) fn add_signed(&mut self, function: Samples, dimension: Dimension, near: Nearness) {
        let sized = match function[0] < 0.0 {
            true => function.map(|value| -value),
            false => function,
        };
        self.add(sized, dimension, sized[0], near);
    }

    fn add_one(&mut self, board: &Board<'_>, formula: &Formula, all: &[PinnedSamples]) {
        let Some(dimension) = dimension(board, formula) else {
            return;
        };
        // Lengths are worked out from what is given; forces carry what was rounded.
        let nearness = match formula.inputs().is_empty() {
            true => Nearness::Rounded,
            false => Nearness::Worked,
        };
        for pins in all {
            if let Some(function) = value(board.key, formula, board, pins) {
                self.add_signed(function, dimension, nearness);
            }
        }
    }
}

fn value(
    key: &Key,
    formula: &Formula,
    board: &Board<'_>,
    pinned: &PinnedSamples,
) -> Option<Samples> {
    let mut function = [0.0; CHOICES];
    for (choice, value) in function.iter_mut().enumerate() {
        let pins: Pins = pinned.iter().map(|(id, own)| (*id, own[choice])).collect();
        *value = key
            .evaluate(formula, &board.sampling.samples[choice], &pins)
            .filter(|value| value.is_finite())?;
    }
    Some(function)
}

/// Every two of these, the smaller one first.
fn pairs(all: &[Samples]) -> impl Iterator<Item = (&Samples, &Samples)> {
    all.iter()
        .flat_map(|one| all.iter().map(move |other| (one, other)))
        .filter(|(one, other)| one[0] < other[0])
}

/// The dimension of a formula; `None` where it has none that is known.
fn dimension(board: &Board<'_>, formula: &Formula) -> Option<Dimension> {
    let inner = |part: &Formula| dimension(board, part);
    match formula.bare() {
        Formula::Atom(Atom::Given(id)) => Some(board.problem.given(*id).dimension),
        Formula::Atom(Atom::Gravity) => Some(Dimension::ACCELERATION),
        Formula::Atom(Atom::Step(id)) => Some(board.key.step(*id)?.dimension),
        Formula::Number(_) => Some(Dimension::NUMBER),
        Formula::Degrees(_) | Formula::ArcSine(_) | Formula::ArcTangent(_) => {
            Some(Dimension::ANGLE)
        }
        Formula::Sum(parts) => inner(parts.first()?),
        Formula::Product(parts) => parts
            .iter()
            .try_fold(Dimension::NUMBER, |all, part| all.times(inner(part)?)),
        Formula::Quotient(over, under) => inner(over)?.per(inner(under)?),
        Formula::Negative(part) | Formula::Absolute(part) => inner(part),
        Formula::Square(part) => inner(part)?.times(inner(part)?),
        Formula::Sine(_) | Formula::Cosine(_) | Formula::Tangent(_) => Some(Dimension::NUMBER),
        Formula::SquareRoot(_) | Formula::Tagged(..) => None,
    }
}

/// The angles that the problem gives.
pub(super) fn given_angles<'a>(board: &'a Board<'_>) -> impl Iterator<Item = Samples> + 'a {
    let givens = board.problem.givens().iter().enumerate();
    givens
        .filter(|(index, _)| !board.key.is_sought(GivenId(*index)))
        .filter(|(_, given)| given.dimension == Dimension::ANGLE)
        .filter_map(|(index, _)| board.name_function(NameRole::Given(GivenId(index))))
}

/// True for a length or mass of whole millimetres or grams, and an angle of tenths of a degree:
/// such a value is written in full, not rounded.
pub(super) fn is_unrounded(shown: f64, dimension: Dimension) -> bool {
    let steps = match dimension {
        Dimension::LENGTH | Dimension::MASS => shown * 1000.0,
        Dimension::ANGLE => shown.to_degrees() * 10.0,
        _ => return false,
    };
    (steps - libm::round(steps)).abs() <= 1e-6
}
