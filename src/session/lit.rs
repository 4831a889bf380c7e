//! The right triangle that a hint speaks of, lit on the drawing.

use super::Session;
use crate::hint::spoken_force;
use crate::key::StepId;
use crate::mistakes::WRONG_LEG;
use crate::problem::ForceId;
use crate::sketch::{Marks, Stage};

/// Mistakes whose hints speak of the triangle of a force and its part across the body.
const OF_TRIANGLE: [&str; 3] = [WRONG_LEG, "wrong-ratio", "divides-for-multiplies"];

impl Session {
    /// Lights the right triangle that a hint speaks of.
    pub(super) fn light_triangle(&self, stages: &mut Vec<Marks>) {
        let lit = self.triangle_asked().or_else(|| self.triangle_named());
        let Some(force) = lit.filter(|force| self.key.step(StepId::Across(*force)).is_some())
        else {
            return;
        };
        // On the lever no force stands as a whole.
        let whole = |marks: &&Marks| {
            marks.stage != Stage::Turning && marks.forces.iter().any(|mark| mark.force == force)
        };
        let Some(marks) = stages.iter().rev().find(whole).cloned() else {
            return;
        };
        stages.push(Marks {
            triangle: Some(force),
            stage: Stage::Components,
            ..marks
        });
    }

    /// The triangle of the angle or part that is asked, from the second hint on.
    fn triangle_asked(&self) -> Option<ForceId> {
        let asked = self.asked().filter(|_| !self.is_free())?;
        let resolving = matches!(asked, StepId::Angle(_) | StepId::Across(_));
        if !resolving || !matches!(self.state.hint_stage, 2 | 3) {
            return None;
        }
        // The weights share an angle, and a mistake about it may be told of another of them.
        let named = || {
            let open = self.state.open.as_ref()?;
            self.instances[open.diagnosis.spoken()?.instance].force()
        };
        match asked {
            StepId::Across(force) => Some(force),
            _ => named().or_else(|| asked.force()),
        }
    }

    /// The triangle of the mistake that was named in the line that waits, once a hint spoke of it: in
    /// a balance, or in any line of a free working.
    fn triangle_named(&self) -> Option<ForceId> {
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
        spoken_force(instance, target).filter(|_| resolves && speaks && hinted)
    }
}
