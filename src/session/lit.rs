//! The right triangle that a hint speaks of, drawn large.

use super::Session;
use crate::hint::spoken_force;
use crate::key::{Axis, Part, StepId};
use crate::mistakes::WRONG_LEG;
use crate::problem::{Acting, Direction, ForceId, Reference};
use crate::sketch::{ForceMark, Legs, Marks, TriangleMark};

/// Below this share of a force its part is no side of a triangle.
const LEAST: f64 = 0.03;

/// Mistakes whose hints speak of the triangle of a force and its part across the body.
const OF_TRIANGLE: [&str; 3] = [WRONG_LEG, "wrong-ratio", "divides-for-multiplies"];

impl Session {
    /// Adds the drawing of the triangle, where a hint speaks of one.
    pub(super) fn light_triangle(&self, stages: &mut Vec<Marks>) {
        let Some(last) = stages.last() else {
            return;
        };
        let lit = self
            .triangle_asked(&last.forces)
            .or_else(|| self.triangle_named(&last.forces));
        if let Some(triangle) = lit {
            let last = last.clone();
            stages.push(Marks {
                triangle: Some(triangle),
                ..last
            });
        }
    }

    /// The triangle of the angle or part that is asked, from the second hint on.
    fn triangle_asked(&self, forces: &[ForceMark]) -> Option<TriangleMark> {
        if let Some(step) = self.reason_step() {
            return self.triangle(step, forces);
        }
        let lit = matches!(self.state.hint_stage, 2 | 3) && !self.is_free();
        self.triangle(self.asked().filter(|_| lit)?, forces)
    }

    /// The triangle of the mistake that was named in the line that waits, once a hint spoke of it: in
    /// a balance, or in any line of a free working.
    fn triangle_named(&self, forces: &[ForceMark]) -> Option<TriangleMark> {
        let open = self.open_line()?;
        let named = open.diagnosis.spoken()?;
        let target = open.judgement.target;
        let resolves = match target {
            StepId::MomentSum | StepId::Pull(_) | StepId::Moment(_) | StepId::KnownMoments => true,
            StepId::Across(_) | StepId::Angle(_) => self.is_free(),
            _ => false,
        };
        let instance = &self.instances[named.instance];
        let speaks = OF_TRIANGLE.contains(&instance.mistake.family);
        let hinted = matches!(self.state.hint_stage, 1..=3);
        let force = spoken_force(instance, target).filter(|_| resolves && speaks && hinted)?;
        self.triangle_of(force, target, forces)
    }

    fn triangle(&self, asked: StepId, forces: &[ForceMark]) -> Option<TriangleMark> {
        let named = || {
            let open = self.state.open.as_ref()?;
            self.instances[open.diagnosis.spoken()?.instance].force()
        };
        match asked {
            StepId::Across(force) => Some(force),
            // The weights share an angle, and a mistake about it may be told of another of them.
            StepId::Angle(own) => named().or(Some(own)),
            _ => return self.triangle_by_axes(asked, forces),
        }
        .and_then(|force| self.triangle_of(force, asked, forces))
    }

    /// The triangle of a force and its part across the body, if the force is drawn.
    fn triangle_of(
        &self,
        force: ForceId,
        asked: StepId,
        forces: &[ForceMark],
    ) -> Option<TriangleMark> {
        let drawn = forces.iter().any(|mark| mark.force == force);
        let resolved = self.key.step(StepId::Across(force)).is_some();
        (drawn && resolved).then(|| TriangleMark {
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
            Some(name) if step == asked && !self.is_of_example(step) => format!("{name} ?"),
            Some(name) if self.state.reached.contains_key(&step) => name,
            _ => String::new(),
        }
    }
}
