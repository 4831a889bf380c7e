//! What a typed number may stand for: givens, values of steps, the learner's own values, and what
//! is worked out on the way from one step to the next.
//!
//! How near a number must come depends on what it is. A given, or a length, mass or angle that
//! follows from givens without rounding, is met exactly; a value is met by rounding it at the
//! number's own last place; what a learner works out with rounded values (a moment, a sum of them,
//! a lever arm) may be off by what three figures allow.

mod angles;
mod counted;
mod own;
mod wide;

use super::board::{Board, Own, PinnedSamples};
use super::grade::figures_meant;
use super::names::NameRole;
use super::room::lost_in_figures;
use super::stock_general::{given_angles, is_unrounded};
use super::worked::{Quantities, chosen_sums, partial_sums};
use crate::key::{Key, Nature, Rule, Samples, StepId, agree};
use crate::problem::GivenId;
use crate::reading::{Literal, Node, Tree, Value};
use crate::units::{Dimension, Written};
use std::f64::consts::PI;

/// The most meanings tried for one literal.
const MOST_MEANINGS: usize = 7;
/// How far three figures may put off what is worked out with them: half a last unit of 1.00.
pub(super) const THREE_FIGURES: f64 = 0.005;

/// Numbers that are likelier to belong to a formula than to be rounded quantities.
const PURE: [f64; 8] = [0.5, 1.0, 2.0, 3.0, 4.0, 90.0, 180.0, 360.0];

/// What a literal may stand for.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Meaning {
    /// Its value at every choice of numbers, SI.
    pub(super) function: Samples,
    pub(super) dimension: Dimension,
    /// True if it stands for nothing but itself.
    pub(super) constant: bool,
}

/// How near a number must come to be taken for a quantity.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Nearness {
    /// It equals it, and then it is no other quantity of its kind, rounded.
    Exact,
    /// It equals it, which may be by chance.
    Equal,
    /// It is the quantity, rounded or cut at the number's last place; where it equals it, that may
    /// be by chance.
    Derived,
    /// It is the quantity, rounded or cut at the number's last place.
    Rounded,
    /// It may also have been worked out with values of three figures.
    Worked,
}

/// A quantity that a number may stand for.
#[derive(Clone)]
struct Entry {
    /// True for a number that is this quantity only without a unit.
    bare: bool,
    /// Its value at every choice of numbers, SI.
    function: Samples,
    dimension: Dimension,
    /// The value that a number is compared with.
    shown: f64,
    nearness: Nearness,
    /// How far it may be off where it was worked out, as a share.
    reach: f64,
}

/// All quantities that a literal is compared with.
pub(super) struct Stock {
    /// True where a number of one or two figures may be a rounding of anything.
    coarse: bool,
    /// True for a general working, in which values often are alike.
    general: bool,
    entries: Vec<Entry>,
    /// How many of these are known without what is worked out in the head or on the drawing.
    narrow: usize,
}

impl Stock {
    /// Everything that a literal of this working may stand for.
    pub(super) fn of(board: &Board<'_>) -> Stock {
        let mut stock = Stock {
            coarse: false,
            general: board.key.general.is_some(),
            entries: Vec::new(),
            narrow: 0,
        };
        let printed = board.problem.givens().iter().enumerate();
        for (index, given) in printed.filter(|(index, _)| !board.key.is_sought(GivenId(*index))) {
            if let Some(function) = board.name_function(NameRole::Given(GivenId(index))) {
                stock.add(function, given.dimension, function[0], Nearness::Exact);
                // Of a coordinate that points the other way the size is written.
                if function[0] < 0.0 {
                    stock.add_signed(function, given.dimension, Nearness::Exact);
                }
            }
        }
        if let Some(function) = board.name_function(NameRole::Gravity) {
            let accepted = board.other_gravities();
            for shown in accepted.into_iter().chain([function[0]]) {
                stock.add(function, Dimension::ACCELERATION, shown, Nearness::Exact);
            }
        }
        for (id, own) in board.standing {
            // A pull never typed as a number may be worked out again with rounded ones.
            if id.is_pull() && own.typed.is_none() {
                stock.add(own.function, Dimension::FORCE, own.value, Nearness::Worked);
            }
            stock.add_own(dimension_of(board.key, *id), own);
            if id.has_free_sense() {
                stock.add_own(dimension_of(board.key, *id), &own.size());
                stock.add_square(dimension_of(board.key, *id), own.function);
            } else if id.is_pull() && own.function[0] < 0.0 {
                // Put in below zero, its minus sign stands before the number.
                stock.add_own(dimension_of(board.key, *id), &own.size());
            }
        }
        for own in board.own_names {
            stock.add(own.function, own.dimension, own.value, Nearness::Rounded);
        }
        stock.add_steps(board);
        stock.add_of_own_parts(board);
        stock.add_own_component(board);
        stock.add_worked(board, board.key, &PinnedSamples::new());
        let own = board.own_pins();
        if !own.is_empty() {
            stock.add_worked(board, board.key, &own);
        }
        for (_, key) in board.carried {
            stock.add_worked(board, key, &own);
        }
        stock.add_inner(board);
        stock.add_stretches();
        stock.add_coordinates(board);
        stock.add_of_own_pull(board);
        stock.add_angles(board);
        stock.narrow = stock.entries.len();
        if board.wide {
            stock.add_wide(board);
        }
        stock
    }

    /// The same quantities, of each of which a number of one or two figures may be a rounding.
    pub(super) fn coarsely(&self) -> Stock {
        Stock {
            coarse: true,
            general: self.general,
            entries: self.entries.clone(),
            narrow: self.narrow,
        }
    }

    /// A standing value, in full and as it was typed.
    fn add_own(&mut self, dimension: Dimension, own: &Own) {
        self.add(own.function, dimension, own.value, Nearness::Rounded);
        // What follows from values of her own, before she rounded it.
        self.add(own.function, dimension, own.function[0], Nearness::Rounded);
        if let Some((typed, _)) = own.typed {
            self.add(own.function, dimension, typed, Nearness::Exact);
        }
    }

    /// The square of a part, of which a force's size is made.
    fn add_square(&mut self, dimension: Dimension, function: Samples) {
        if let Some(squared) = dimension.times(dimension) {
            let square = function.map(|value| value * value);
            self.add(square, squared, square[0], Nearness::Worked);
        }
    }

    /// The right values of all steps.
    fn add_steps(&mut self, board: &Board<'_>) {
        for step in &board.key.steps {
            if step.id.is_balance() || matches!(step.id, StepId::ForceSum(_)) {
                continue;
            }
            let Some(function) = board.right(step.id) else {
                continue;
            };
            let nearness = match step.id {
                StepId::Weight(_) | StepId::Angle(_) | StepId::Distance(_) => Nearness::Rounded,
                StepId::Found(Nature::Weight | Nature::Angle | Nature::Plain, _) => {
                    Nearness::Rounded
                }
                id if board.standing.contains_key(&id) => Nearness::Rounded,
                _ => Nearness::Worked,
            };
            self.add_with_gravities(board, function, step.dimension, nearness);
            // A part that points the other way is often written by its size.
            if matches!(step.id, StepId::Reaction(..)) || step.id.has_free_sense() {
                let size = function.map(|value| -value);
                self.add_with_gravities(board, size, step.dimension, nearness);
                self.add_square(step.dimension, function);
            }
        }
    }

    /// What is worked out on the way, by a key and the learner's own values: moments and parts,
    /// their partial sums, lever arms, forces times their distance, the factor of the unknown.
    fn add_worked(&mut self, board: &Board<'_>, key: &Key, pins: &PinnedSamples) {
        let quantities = Quantities { board, key, pins };
        for step in &key.steps {
            let Rule::Balance(balance) = &step.rule else {
                continue;
            };
            // A force alone is the value of a step, and is known as that.
            let fewest = if step.id == StepId::MomentSum { 1 } else { 2 };
            let terms = quantities.terms(balance);
            self.add_sums_of_weights(board, step.dimension, &terms);
            let mut sums = partial_sums(&terms, fewest);
            if step.id == StepId::MomentSum {
                // A ratio that all weights share is often put outside the brackets.
                sums.extend(partial_sums(
                    &quantities.weights_times_distances(balance),
                    fewest,
                ));
            }
            for sum in sums {
                self.add_with_gravities(board, sum, step.dimension, Nearness::Worked);
                if let Some((masses, dimension)) = quantities.without_gravity(&sum, step.dimension)
                {
                    self.add(masses, dimension, masses[0], Nearness::Worked);
                }
            }
            if step.id != StepId::MomentSum {
                continue;
            }
            for term in &balance.terms {
                if let Some(arm) = quantities.arm(term.force) {
                    self.add(arm, Dimension::LENGTH, arm[0], Nearness::Worked);
                }
            }
        }
        let factor = board
            .unknown()
            .filter(|_| key.general.is_none())
            .and_then(|unknown| key.solved(unknown, StepId::MomentSum))
            .and_then(|(_, factor)| quantities.value(&factor));
        if let Some(function) = factor {
            self.add(function, Dimension::LENGTH, function[0], Nearness::Worked);
        }
    }

    /// Sums of weights, which are off by what each of these loses to three figures.
    fn add_sums_of_weights(&mut self, board: &Board<'_>, dimension: Dimension, terms: &[Samples]) {
        let steps = board.key.steps.iter().filter(|step| step.id.is_weight());
        let weights: Vec<Samples> = steps.filter_map(|step| board.right(step.id)).collect();
        let is_weight = |term: &Samples| {
            let size = term.map(f64::abs);
            weights.iter().any(|weight| agree(weight, &size))
        };
        if dimension != Dimension::FORCE {
            return;
        }
        for (sum, of) in chosen_sums(terms, 2) {
            if !of.iter().all(is_weight) {
                continue;
            }
            let from = self.entries.len();
            self.add_with_gravities(board, sum, dimension, Nearness::Worked);
            let reach: f64 = of.iter().map(|term| lost_in_figures(term[0])).sum();
            for entry in &mut self.entries[from..] {
                entry.reach = entry.reach.min(reach / sum[0]);
            }
        }
    }

    /// Adds a quantity, and if it is a force or a moment, as it comes out with each accepted
    /// acceleration of free fall.
    fn add_with_gravities(
        &mut self,
        board: &Board<'_>,
        function: Samples,
        dimension: Dimension,
        nearness: Nearness,
    ) {
        self.add(function, dimension, function[0], nearness);
        if matches!(dimension, Dimension::FORCE | Dimension::MOMENT) {
            for gravity in board.other_gravities() {
                let shown = function[0] * gravity / board.problem.gravity();
                self.add(function, dimension, shown, nearness);
            }
        }
    }

    pub(super) fn add(
        &mut self,
        function: Samples,
        dimension: Dimension,
        shown: f64,
        nearness: Nearness,
    ) {
        let nearness = match nearness {
            Nearness::Equal | Nearness::Derived => nearness,
            _ if is_unrounded(shown, dimension) => Nearness::Exact,
            _ => nearness,
        };
        let twice = self.entries.iter().any(|entry| {
            entry.dimension == dimension && entry.shown == shown && entry.function == function
        });
        // A number is no quantity by being nothing; an angle in a ratio may be that.
        if !twice && (shown != 0.0 || dimension == Dimension::ANGLE) {
            self.entries.push(Entry {
                bare: false,
                function,
                dimension,
                shown,
                nearness,
                reach: THREE_FIGURES,
            });
        }
    }

    /// Adds a quantity as it is written without its unit.
    pub(super) fn add_bare(&mut self, function: Samples, dimension: Dimension, shown: f64) {
        self.entries.push(Entry {
            bare: true,
            function,
            dimension,
            shown,
            nearness: Nearness::Exact,
            reach: 0.0,
        });
    }

    /// The stretches between points of the body: one length less another.
    fn add_stretches(&mut self) {
        let exact = |entry: &&Entry| {
            entry.dimension == Dimension::LENGTH && entry.nearness == Nearness::Exact && !entry.bare
        };
        let lengths: Vec<Samples> = self
            .entries
            .iter()
            .filter(exact)
            .map(|entry| entry.function)
            .collect();
        for long in &lengths {
            for short in lengths.iter().filter(|short| short[0] < long[0]) {
                let stretch: Samples = std::array::from_fn(|choice| long[choice] - short[choice]);
                self.add(stretch, Dimension::LENGTH, stretch[0], Nearness::Equal);
            }
        }
    }

    /// How far each force acts to the side of the pivot and above it, for whoever works with
    /// coordinates: distances times the ratios of the given angles.
    fn add_coordinates(&mut self, board: &Board<'_>) {
        let distances: Vec<Samples> = board
            .key
            .steps
            .iter()
            .filter(|step| matches!(step.id, StepId::Distance(_)))
            .filter_map(|step| board.right(step.id))
            .collect();
        let angles: Vec<Samples> = given_angles(board).collect();
        for distance in &distances {
            for angle in &angles {
                for ratio in [libm::sin, libm::cos] {
                    let side: Samples =
                        std::array::from_fn(|choice| distance[choice] * ratio(angle[choice]));
                    self.add(side, Dimension::LENGTH, side[0], Nearness::Worked);
                }
            }
        }
    }

    /// True for a number that is likelier to belong to a formula than to be a quantity.
    pub(super) fn is_pure(&self, literal: &Literal) -> bool {
        literal.unit.is_none() && PURE.contains(&literal.value)
    }

    /// True for a pure number, and for one that equals a given, a derived given such as L/2, or an
    /// own value: nothing was rounded there.
    pub(super) fn is_exact(&self, literal: &Literal, as_angle: bool) -> bool {
        self.is_pure(literal) || self.fits_within(0, literal, as_angle)
    }

    /// True for such a number, and for one that is as long as a stretch of the body.
    pub(super) fn equals_a_quantity(&self, literal: &Literal, as_angle: bool) -> bool {
        self.is_pure(literal) || self.fits_within(1, literal, as_angle)
    }

    pub(super) fn fits_within(&self, rank: u8, literal: &Literal, as_angle: bool) -> bool {
        self.entries.iter().any(|entry| {
            let kind = (entry.dimension == Dimension::ANGLE) == as_angle;
            kind && entry.fits(literal).is_some_and(|fits| fits <= rank)
        })
    }

    /// True for a pure number, and for one that may stand for a quantity of this working.
    pub(super) fn is_meant(&self, literal: &Literal) -> bool {
        let meanings = self.meanings(literal, false, false);
        self.is_pure(literal) || meanings.iter().any(|meaning| !meaning.constant)
    }

    /// True for a number that may be a force or a moment of this working, and for any name.
    pub(super) fn may_be_force(&self, term: &Tree) -> bool {
        let Node::Literal(literal) = &term.node else {
            return true;
        };
        let kinds = [Dimension::FORCE, Dimension::MOMENT];
        let meanings = self.meanings(literal, false, false);
        let force = |meaning: &Meaning| !meaning.constant && kinds.contains(&meaning.dimension);
        meanings.iter().any(force)
    }

    /// True if a number with its unit is a quantity of this working.
    pub(super) fn knows(&self, literal: &Literal) -> bool {
        self.entries.iter().any(|entry| {
            literal
                .unit
                .is_some_and(|unit| unit.dimension == entry.dimension)
                && entry.fits(literal).is_some()
        })
    }

    /// What a literal may stand for, the likeliest first; itself last.
    /// `of_whole` is true where its unit may be meant for the whole expression (`42*9.8 N`).
    pub(super) fn meanings(
        &self,
        literal: &Literal,
        as_angle: bool,
        of_whole: bool,
    ) -> Vec<Meaning> {
        let mut found: Vec<(u8, Meaning)> = Vec::new();
        for (index, entry) in self.entries.iter().enumerate() {
            if (entry.dimension == Dimension::ANGLE) != as_angle {
                continue;
            }
            if literal
                .unit
                .is_some_and(|unit| unit.dimension != entry.dimension && !of_whole)
            {
                continue;
            }
            let coarsely = || (self.coarse && entry.rounds_to(literal)).then_some(4);
            let Some(rank) = entry.fits(literal).or_else(coarsely) else {
                continue;
            };
            // What equals a stretch is not taken for a place that was worked out and rounded.
            let equals =
                |(rank, known): &(u8, Meaning)| *rank <= 1 && known.dimension == entry.dimension;
            if index >= self.narrow && rank > 1 && !self.coarse && found.iter().any(equals) {
                continue;
            }
            let meaning = Meaning {
                function: entry.function,
                dimension: entry.dimension,
                constant: false,
            };
            let known = found.iter_mut().find(|(_, known)| {
                known.dimension == meaning.dimension && agree(&known.function, &meaning.function)
            });
            match known {
                Some((known, _)) => *known = rank.min(*known),
                None => found.push((rank, meaning)),
            }
        }
        // What equals a quantity is exact: it is no other one of its kind, rounded; unless it was
        // written out to a third figure, as a rounded number is (2.60 where 2.6 is given).
        let written_out = !as_angle
            && literal.unit.is_none_or(|unit| unit.factor == 1.0)
            && is_written_out(literal);
        let exact: Vec<Dimension> = found
            .iter()
            .filter(|(rank, _)| *rank == 0)
            .map(|(_, meaning)| meaning.dimension)
            .collect();
        // A stretch that is as long as a given distance is as exact.
        let kept = 1 + u8::from(self.general || written_out);
        found.retain(|(rank, meaning)| *rank <= kept || !exact.contains(&meaning.dimension));
        found.sort_by_key(|(rank, _)| *rank);
        found.truncate(MOST_MEANINGS);
        if found.is_empty() && !as_angle {
            found.extend(self.multiple(literal).map(|meaning| (0, meaning)));
        }
        let value = Value::of_literal(literal);
        let itself = Meaning {
            function: [literal.value; 4],
            dimension: value.dimension,
            constant: true,
        };
        let mut meanings: Vec<Meaning> = found.into_iter().map(|(_, meaning)| meaning).collect();
        let pure = self.is_pure(literal);
        meanings.insert(
            if pure {
                meanings.len().min(1)
            } else {
                meanings.len()
            },
            itself,
        );
        meanings
    }
}

impl Entry {
    /// True for a number of one or two figures that the quantity, however exact, rounds to.
    fn rounds_to(&self, literal: &Literal) -> bool {
        let angle = self.dimension == Dimension::ANGLE;
        let written = coarsest(literal);
        let half = 0.5 * written.last_place * (1.0 + 1e-6);
        written.significant <= 2
            && !angle
            && !(self.bare && literal.unit.is_some())
            && (literal.value - self.shown).abs() <= half
    }

    /// How far a number of this last place may be off where it was worked out.
    fn reach_of(&self, place: f64) -> f64 {
        let shown = self.shown.abs();
        (self.reach * shown + 0.5 * place).min(THREE_FIGURES * shown)
    }

    /// How well a literal fits: 0 exactly, 1 exactly, which may be by chance, 2 rounded, 3 with
    /// digits cut, 4 as worked out with values of three figures; `None` not at all.
    fn fits(&self, literal: &Literal) -> Option<u8> {
        if self.bare && literal.unit.is_some() {
            return None;
        }
        let bare_angle = self.dimension == Dimension::ANGLE && literal.unit.is_none();
        let scale = if bare_angle { PI / 180.0 } else { 1.0 };
        let written = figures_meant(literal.value, literal.written);
        let (value, place) = (literal.value * scale, written.last_place * scale);
        let apart = (value - self.shown).abs();
        if apart <= 1e-9 * self.shown.abs().max(1e-9) {
            return Some(match self.nearness {
                Nearness::Equal => 1,
                Nearness::Derived => 2,
                Nearness::Exact | Nearness::Rounded | Nearness::Worked => 0,
            });
        }
        // A single figure says too little, except for a ratio (0.6 for a sine).
        let coarse = literal.written.significant < 2 && self.dimension != Dimension::NUMBER;
        // An angle in radians is rounded wherever it has a fraction.
        let radians = literal
            .unit
            .is_some_and(|unit| unit.dimension == Dimension::ANGLE && unit.factor == 1.0);
        let exact = match self.nearness {
            Nearness::Exact => !radians,
            Nearness::Equal => true,
            Nearness::Derived | Nearness::Rounded | Nearness::Worked => false,
        };
        if exact || coarse || place > 0.2 * self.shown.abs() {
            return None;
        }
        if apart <= 0.5 * place * (1.0 + 1e-6) {
            Some(2)
        } else if written.significant > 1
            && apart < place * (1.0 - 1e-6)
            && value.abs() < self.shown.abs()
        {
            Some(3)
        } else if self.nearness == Nearness::Worked
            && written.significant >= 3
            && apart <= self.reach_of(place)
        {
            Some(4)
        } else {
            None
        }
    }
}

/// How finely a number was meant at the least: one that ends in zeros may have been rounded at any
/// of them (600 for 588).
pub(super) fn coarsest(literal: &Literal) -> Written {
    let mut written = literal.written;
    let ends_in_zero = |place: f64| {
        let tens = literal.value / (place * 10.0);
        (tens - libm::round(tens)).abs() <= 1e-9 * tens.abs()
    };
    while written.significant > 1 && written.last_place >= 1.0 && ends_in_zero(written.last_place) {
        written.significant -= 1;
        written.last_place *= 10.0;
    }
    written
}

/// True for a number of three figures or more whose last one, behind the point, is a zero.
fn is_written_out(literal: &Literal) -> bool {
    let place = literal.written.last_place;
    let tens = literal.value / (10.0 * place);
    place < 1.0 && literal.written.significant >= 3 && (tens - libm::round(tens)).abs() <= 1e-6
}

fn dimension_of(key: &Key, id: StepId) -> Dimension {
    key.step(id)
        .map_or(Dimension::NUMBER, |step| step.dimension)
}
