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
        StepId::Found(_, index) => format!("found:{index}"),
        StepId::Sum(stage, index) => format!("balance:{stage}:{index}"),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::key::{derive, tests::mast};

    #[test]
    fn journals_can_rely_on_the_words_of_the_steps() {
        let problem = mast();
        let key = derive(&problem).unwrap_or_else(|trouble| panic!("{trouble}"));
        let words: Vec<String> = key
            .steps
            .iter()
            .map(|step| step_word(&problem, step.id))
            .collect();
        // Frozen: journals and programs that read `--json` hold these words.
        let expected = [
            "forces",
            "pivot",
            "weight:W_b",
            "weight:W_1",
            "distance:W_b",
            "distance:W_1",
            "distance:T",
            "angle:W_b",
            "angle:T",
            "across:W_b",
            "across:W_1",
            "across:T",
            "moment:W_b",
            "moment:W_1",
            "moment:T",
            "known-moments",
            "moment-sum",
            "pull:T",
            "force-sum:x",
            "reaction:H:x",
            "force-sum:y",
            "reaction:H:y",
            "reaction:H:size",
            "reaction:H:direction",
        ];
        assert_eq!(words, expected);
        let part = StepId::PartOf(ForceId::Rope(0), Axis::Vertical);
        assert_eq!(step_word(&problem, part), "part:T:y");
    }
}
