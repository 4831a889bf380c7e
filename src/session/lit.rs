//! The right triangle that a hint of the second stage speaks of.

use super::Session;
use crate::key::{Axis, Part, StepId};
use crate::problem::{Acting, Direction, ForceId, Reference};
use crate::sketch::{ForceMark, Legs, Marks, TriangleMark};

/// Below this share of a force its part is no side of a triangle.
const LEAST: f64 = 0.03;

impl Session {
    /// Adds the drawing of the triangle, where a hint speaks of one.
    pub(super) fn light_triangle(&self, stages: &mut Vec<Marks>) {
        let lit = self.state.hint_stage == 2 || self.state.hint_stage == 3;
        let Some((asked, last)) = self.asked().zip(stages.last()).filter(|_| lit) else {
            return;
        };
        if let Some(triangle) = self.triangle(asked, &last.forces) {
            let last = last.clone();
            stages.push(Marks {
                triangle: Some(triangle),
                ..last
            });
        }
    }

    fn triangle(&self, asked: StepId, forces: &[ForceMark]) -> Option<TriangleMark> {
        let named = || {
            let open = self.state.open.as_ref()?;
            self.instances[open.diagnosis.spoken()?.instance].force()
        };
        let is_known = |force: &ForceId| forces.iter().any(|mark| mark.force == *force);
        match asked {
            StepId::Across(force) => Some(force),
            // The weights share an angle, and a mistake about it may be told of another of them.
            StepId::Angle(own) => named().or(Some(own)),
            _ => return self.triangle_by_axes(asked, forces),
        }
        .filter(is_known)
        .filter(|force| self.key.step(StepId::Across(*force)).is_some())
        .map(|force| TriangleMark {
            force,
            legs: Legs::Body,
            along: String::new(),
            across: self.said(StepId::Across(force), asked),
            angle: self.said(self.angle_of(force), asked),
        })
    }

    /// The triangle of a force with a level and an upright side, for the parts of a support.
    fn triangle_by_axes(&self, asked: StepId, forces: &[ForceMark]) -> Option<TriangleMark> {
        let StepId::Reaction(support, part) = asked else {
            return None;
        };
        let of_support = |axis| self.said(StepId::Reaction(support, Part::Along(axis)), asked);
        let (force, sides, angle) = match part {
            Part::Along(Axis::Horizontal) => {
                let [rope] = self.problem.ropes() else {
                    return None;
                };
                let angle = match rope.direction {
                    Direction::Oblique {
                        angle,
                        from: Reference::Horizontal,
                        ..
                    } => self.problem.given(angle).symbol.shown(),
                    _ => String::new(),
                };
                (ForceId::Rope(0), Default::default(), angle)
            }
            Part::Along(Axis::Vertical) => return None,
            Part::Size | Part::Direction => {
                let sides = [of_support(Axis::Horizontal), of_support(Axis::Vertical)];
                let angle = self.said(StepId::Reaction(support, Part::Direction), asked);
                (support, sides, angle)
            }
        };
        let mark = forces.iter().find(|mark| mark.force == force)?;
        let runs = match self.problem.force(force)?.acting {
            Acting::Along(direction) => {
                direction.angle(self.problem.body(), &self.problem.values())
            }
            Acting::Anywhere => mark.direction?,
        };
        let seen = libm::sin(runs).abs() > LEAST && libm::cos(runs).abs() > LEAST;
        let [along, across]: [String; 2] = sides;
        seen.then_some(TriangleMark {
            force,
            legs: Legs::Axes,
            along,
            across,
            angle,
        })
    }

    /// The step of the angle of a force with the body: forces of one direction share it.
    fn angle_of(&self, force: ForceId) -> StepId {
        let acting = |force| self.problem.force(force).map(|force| force.acting);
        let shared = self
            .key
            .asked()
            .map(|step| step.id)
            .find(|step| match step {
                StepId::Angle(other) => acting(*other) == acting(force),
                _ => false,
            });
        shared.unwrap_or(StepId::Angle(force))
    }

    /// The name of a step once it is reached, with a question mark while it is asked; nothing
    /// before.
    fn said(&self, step: StepId, asked: StepId) -> String {
        let name = self.key.step(step).map(|step| step.symbol.shown());
        match name {
            Some(name) if step == asked => format!("{name} ?"),
            Some(name) if self.state.reached.contains_key(&step) => name,
            _ => String::new(),
        }
    }
}
