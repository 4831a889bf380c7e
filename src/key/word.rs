//! Stable words for steps: journals, `--json` and the command line speak of steps by them.

use super::{Axis, Part, StepId};
use crate::problem::{ForceId, Problem};

/// The stable word of a step: `weight:W_1`, `across:T`, `moment-sum`, `reaction:H:x`.
pub fn step_word(problem: &Problem, step: StepId) -> String {
    let force = |id: ForceId| {
        problem
            .force(id)
            .map_or_else(String::new, |force| force.symbol.as_str().to_owned())
    };
    let axis = |axis: Axis| if axis == Axis::Horizontal { "x" } else { "y" };
    match step {
        StepId::Forces => "forces".to_owned(),
        StepId::Pivot => "pivot".to_owned(),
        StepId::Weight(id) => format!("weight:{}", force(id)),
        StepId::Distance(id) => format!("distance:{}", force(id)),
        StepId::Angle(id) => format!("angle:{}", force(id)),
        StepId::Across(id) => format!("across:{}", force(id)),
        StepId::Moment(id) => format!("moment:{}", force(id)),
        StepId::KnownMoments => "known-moments".to_owned(),
        StepId::MomentSum => "moment-sum".to_owned(),
        StepId::Pull(id) => format!("pull:{}", force(id)),
        StepId::PartOf(id, along) => format!("part:{}:{}", force(id), axis(along)),
        StepId::ForceSum(along) => format!("force-sum:{}", axis(along)),
        StepId::Reaction(id, Part::Along(along)) => {
            format!("reaction:{}:{}", force(id), axis(along))
        }
        StepId::Reaction(id, Part::Size) => format!("reaction:{}:size", force(id)),
        StepId::Reaction(id, Part::Direction) => format!("reaction:{}:direction", force(id)),
    }
}
