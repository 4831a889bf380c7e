//! The angles that a typed one may stand for, and their ratios.

use super::{Nearness, Stock};
use crate::judge::board::Board;
use crate::judge::stock_general::given_angles;
use crate::key::{Axis, Samples, StepId};
use crate::units::Dimension;
use std::f64::consts::{FRAC_PI_2, PI};

impl Stock {
    /// Sums and differences of two given angles, as a rope's angle with the level may be, and the
    /// complements, supplements and ratios of every angle.
    pub(super) fn add_angles(&mut self, board: &Board<'_>) {
        for slope in slopes(board) {
            self.add(slope, Dimension::ANGLE, slope[0], Nearness::Rounded);
        }
        let given: Vec<Samples> = given_angles(board).collect();
        let mut combined = Vec::new();
        for (index, one) in given.iter().enumerate() {
            for other in &given[..index] {
                let sum: Samples = std::array::from_fn(|choice| one[choice] + other[choice]);
                let apart: Samples = std::array::from_fn(|choice| one[choice] - other[choice]);
                let apart = if apart[0] < 0.0 {
                    apart.map(|angle| -angle)
                } else {
                    apart
                };
                for angle in [sum, apart] {
                    self.add(angle, Dimension::ANGLE, angle[0], Nearness::Rounded);
                    combined.push(angle);
                }
            }
        }
        let angles: Vec<(Samples, Nearness)> = self
            .entries
            .iter()
            .filter(|entry| entry.dimension == Dimension::ANGLE)
            .map(|entry| (entry.function, entry.nearness))
            .collect();
        for (angle, nearness) in angles {
            // An angle that was worked out from rounded forces has ratios no nearer than it.
            let nearness = match nearness {
                Nearness::Exact => Nearness::Rounded,
                other => other,
            };
            // What lacks to a sum of given angles is seldom meant by a number that is one of them.
            let rest = match combined.contains(&angle) {
                true => Nearness::Derived,
                false => nearness,
            };
            for whole in [FRAC_PI_2, PI] {
                let other = angle.map(|angle| whole - angle);
                self.add(other, Dimension::ANGLE, other[0], rest);
            }
            // Between a rope and a weight, as three forces on a knot are told.
            let beyond = angle.map(|angle| FRAC_PI_2 + angle);
            self.add(beyond, Dimension::ANGLE, beyond[0], Nearness::Derived);
            for ratio in [libm::sin, libm::cos, libm::tan] {
                let function = angle.map(ratio);
                self.add(function, Dimension::NUMBER, function[0], nearness);
            }
        }
    }
}

/// The angles that the pulls make with the horizontal.
fn slopes(board: &Board<'_>) -> Vec<Samples> {
    let pulls = board.key.steps.iter().filter_map(|step| match step.id {
        StepId::Pull(force) => Some(force),
        _ => None,
    });
    pulls
        .filter_map(|force| {
            let level = board.right(StepId::PartOf(force, Axis::Horizontal))?;
            let upright = board.right(StepId::PartOf(force, Axis::Vertical))?;
            // Counted from one side throughout: at other numbers a part may change its sign.
            let (up, out) = (upright[0].signum(), level[0].signum());
            Some(std::array::from_fn(|choice| {
                libm::atan2(up * upright[choice], out * level[choice])
            }))
        })
        .collect()
}
