//! What a number may stand for beside the rest, where a line comes out right and its way is not
//! seen: what is worked out in the head or on the drawing. Places on tilted bodies, sums of weights
//! and of their moments about any named place, shares of lengths and of ratios. Each is met only by rounding it at the number's own last place.

use super::super::board::Board;
use super::super::names::NameRole;
use super::super::stock_general::given_angles;
use super::{Nearness, Stock};
use crate::key::{Axis, Samples, StepId};
use crate::problem::{ForceId, GivenId};
use crate::units::Dimension;

/// The most weights of which sums are tried.
const MOST_WEIGHTS: usize = 4;
/// The most lengths of which shares and places are tried.
const MOST_LENGTHS: usize = 8;

impl Stock {
    pub(super) fn add_wide(&mut self, board: &Board<'_>) {
        let masses = given(board, Dimension::MASS);
        let weights = weights(board);
        self.add_with_halves(&masses, Dimension::MASS);
        self.add_with_halves(&weights, Dimension::FORCE);
        self.add_moments_about_places(board);
        self.add_resultant(board);
        self.add_without_gravity(board);
        self.add_ratios(board);
        self.add_places();
    }

    /// Sums of some of these, of each the whole or half: `½·25 + 100`.
    fn add_with_halves(&mut self, all: &[Samples], dimension: Dimension) {
        for shares in shares_of(all.len(), &[0.0, 0.5, 1.0]) {
            let sum = sum_of(all, &shares);
            self.add(sum, dimension, sum[0], Nearness::Rounded);
        }
    }

    /// The weights' moments about every named place of a straight body, some on this side of it and
    /// some on that: along a level body by the distances, along a tilted one by their shares.
    fn add_moments_about_places(&mut self, board: &Board<'_>) {
        if board.key.general.is_some() {
            self.add_weights_times_lengths(board);
            return;
        }
        let distances = distances(board);
        let loads = loads(board);
        let mut places: Vec<Samples> = vec![[0.0; 4]];
        places.extend(distances.iter().map(|(_, distance)| *distance));
        places.extend(given(board, Dimension::LENGTH));
        let mut ratios: Vec<Samples> = vec![[1.0; 4]];
        for angle in given_angles(board) {
            ratios.extend([angle.map(libm::sin), angle.map(libm::cos)]);
        }
        for place in places.iter().take(MOST_LENGTHS) {
            let moments: Vec<Samples> = loads
                .iter()
                .map(|(weight, at)| std::array::from_fn(|one| weight[one] * (place[one] - at[one])))
                .collect();
            for shares in shares_of(moments.len(), &[0.0, 1.0]) {
                let sum = sum_of(&moments, &shares);
                for ratio in &ratios {
                    let part: Samples = std::array::from_fn(|one| (sum[one] * ratio[one]).abs());
                    self.add(part, Dimension::MOMENT, part[0], Nearness::Rounded);
                }
            }
        }
    }

    /// The same of bodies in general, for moments about points that no name stands for.
    fn add_weights_times_lengths(&mut self, board: &Board<'_>) {
        let lengths: Vec<Samples> = self.lengths().into_iter().take(MOST_LENGTHS).collect();
        for weight in weights(board) {
            for length in &lengths {
                let moment: Samples = std::array::from_fn(|one| (weight[one] * length[one]).abs());
                self.add(moment, Dimension::MOMENT, moment[0], Nearness::Rounded);
            }
        }
    }

    /// Where the weights together act, and where their line meets that of the rope: three forces go
    /// through one point.
    fn add_resultant(&mut self, board: &Board<'_>) {
        let loads = loads(board);
        let whole = sum_of(
            &loads.iter().map(|(weight, _)| *weight).collect::<Vec<_>>(),
            &[1.0; MOST_WEIGHTS],
        );
        if board.key.general.is_some() || loads.len() < 2 {
            return;
        }
        let at: Samples = std::array::from_fn(|one| {
            let moments = loads.iter().map(|(weight, at)| weight[one] * at[one]);
            moments.sum::<f64>() / whole[one]
        });
        let knots: Vec<(Samples, Samples)> = distances(board)
            .into_iter()
            .filter_map(|(force, at)| {
                let part = |axis| board.right(StepId::PartOf(force, axis));
                let (up, side) = (part(Axis::Vertical)?, part(Axis::Horizontal)?);
                Some((at, std::array::from_fn(|one| (up[one] / side[one]).abs())))
            })
            .collect();
        let mut slants = vec![([1.0; 4], [0.0; 4])];
        for angle in given_angles(board).take(MOST_WEIGHTS) {
            let (one, other) = (angle.map(libm::cos), angle.map(libm::sin));
            slants.extend([(one, other), (other, one)]);
        }
        for (across, up) in slants {
            let place: Samples = std::array::from_fn(|one| at[one] * across[one]);
            self.add(place, Dimension::LENGTH, place[0], Nearness::Rounded);
            for (knot, slope) in &knots {
                for sense in [1.0, -1.0] {
                    let height: Samples = std::array::from_fn(|one| {
                        let gain = (knot[one] - at[one]) * across[one] * slope[one];
                        (knot[one] * up[one] + sense * gain).abs()
                    });
                    self.add(height, Dimension::LENGTH, height[0], Nearness::Rounded);
                }
            }
        }
    }

    /// Forces and moments that are counted without g throughout.
    fn add_without_gravity(&mut self, board: &Board<'_>) {
        let Some(gravity) = board.name_function(NameRole::Gravity) else {
            return;
        };
        let entries = self.entries.clone();
        let known = entries.iter().filter(|entry| !entry.bare);
        for entry in known {
            let of_forces = matches!(entry.dimension, Dimension::FORCE | Dimension::MOMENT);
            let Some(dimension) = entry.dimension.per(Dimension::ACCELERATION) else {
                continue;
            };
            if of_forces {
                let function: Samples =
                    std::array::from_fn(|one| entry.function[one] / gravity[one]);
                self.add(function, dimension, function[0], Nearness::Rounded);
            }
        }
    }

    /// One length as a share of another, one ratio of an angle as a share of another's.
    fn add_ratios(&mut self, board: &Board<'_>) {
        let lengths: Vec<Samples> = self.lengths().into_iter().take(MOST_LENGTHS).collect();
        let mut ratios: Vec<Samples> = Vec::new();
        for angle in given_angles(board).take(MOST_WEIGHTS) {
            ratios.extend([libm::sin, libm::cos].map(|ratio| angle.map(ratio)));
            let other = angle.map(|angle| 1.0 / libm::tan(angle));
            self.add(other, Dimension::NUMBER, other[0], Nearness::Rounded);
        }
        for all in [&lengths, &ratios] {
            for (one, other) in all
                .iter()
                .flat_map(|one| all.iter().map(move |other| (one, other)))
            {
                let share: Samples = std::array::from_fn(|at| one[at] / other[at]);
                let says = share.iter().all(|share| share.is_finite());
                if says && share != [1.0; 4] {
                    self.add(share, Dimension::NUMBER, share[0], Nearness::Rounded);
                }
            }
        }
    }

    /// How far a stretch of a tilted body goes to the side and up, and the height that a line under
    /// a given angle gains over it.
    fn add_places(&mut self) {
        let exact = |entry: &&super::Entry| entry.dimension == Dimension::ANGLE && !entry.bare;
        let angles: Vec<Samples> = self
            .entries
            .iter()
            .filter(exact)
            .filter(|entry| entry.nearness == Nearness::Exact)
            .map(|entry| entry.function)
            .collect();
        for length in self.lengths() {
            for angle in &angles {
                for ratio in [libm::sin, libm::cos, libm::tan] {
                    let place: Samples =
                        std::array::from_fn(|one| (length[one] * ratio(angle[one])).abs());
                    self.add(place, Dimension::LENGTH, place[0], Nearness::Rounded);
                }
            }
        }
    }

    /// The lengths that were met exactly, and the stretches between them.
    fn lengths(&self) -> Vec<Samples> {
        let exact = self.entries.iter().filter(|entry| {
            entry.dimension == Dimension::LENGTH
                && matches!(entry.nearness, Nearness::Exact | Nearness::Equal)
                && !entry.bare
        });
        let mut found: Vec<Samples> = Vec::new();
        for entry in exact {
            if !found.contains(&entry.function) {
                found.push(entry.function);
            }
        }
        found
    }
}

/// How far every force of a straight body acts from its foot.
fn distances(board: &Board<'_>) -> Vec<(ForceId, Samples)> {
    let steps = board.key.steps.iter().filter_map(|step| match step.id {
        StepId::Distance(force) => Some((force, board.right(step.id)?)),
        _ => None,
    });
    steps.collect()
}

/// The weights on a straight body, and how far each acts from its foot.
fn loads(board: &Board<'_>) -> Vec<(Samples, Samples)> {
    let all = distances(board).into_iter();
    all.filter_map(|(force, distance)| Some((board.right(StepId::Weight(force))?, distance)))
        .take(MOST_WEIGHTS)
        .collect()
}

/// The givens of a kind that are not sought.
fn given(board: &Board<'_>, dimension: Dimension) -> Vec<Samples> {
    let givens = board.problem.givens().iter().enumerate();
    givens
        .filter(|(index, _)| !board.key.is_sought(GivenId(*index)))
        .filter(|(_, given)| given.dimension == dimension)
        .filter_map(|(index, _)| board.name_function(NameRole::Given(GivenId(index))))
        .take(MOST_LENGTHS)
        .collect()
}

/// The weights, and the loads that are given or follow at once from what is.
fn weights(board: &Board<'_>) -> Vec<Samples> {
    let mut found = given(board, Dimension::FORCE);
    let known = board.key.steps.iter().filter(|step| {
        let of_hinge = matches!(step.id, StepId::Reaction(..) | StepId::Pull(_));
        let part = matches!(step.id, StepId::PartOf(..) | StepId::Across(_));
        step.dimension == Dimension::FORCE
            && !step.id.is_unknown()
            && !(of_hinge || part || step.id.is_balance())
            && board.key.open_in(step.id).is_empty()
    });
    for weight in known.filter_map(|step| board.right(step.id)) {
        if !found.contains(&weight) {
            found.push(weight);
        }
    }
    found.truncate(MOST_WEIGHTS);
    found
}

/// Every choice of shares for so many terms, but none for all.
fn shares_of(count: usize, shares: &[f64]) -> Vec<Vec<f64>> {
    let mut all: Vec<Vec<f64>> = vec![Vec::new()];
    for _ in 0..count.min(MOST_WEIGHTS) {
        let longer = all.iter().flat_map(|chosen| {
            shares.iter().map(move |share| {
                let mut chosen = chosen.clone();
                chosen.push(*share);
                chosen
            })
        });
        all = longer.collect();
    }
    all.retain(|chosen| chosen.iter().any(|share| *share != 0.0));
    all
}

fn sum_of(all: &[Samples], shares: &[f64]) -> Samples {
    let terms = || all.iter().zip(shares);
    std::array::from_fn(|one| terms().map(|(term, share)| share * term[one]).sum())
}
