//! `level: Wb + W1 = Hy`: along which axis a line is said to sum, where it sums along the other.

use super::{Outcome, Session};
use crate::key::{Axis, StepId};
use crate::text::Prose;

impl Session {
    /// What is told of a line that stands and whose label names the other axis.
    pub(super) fn other_axis_told(&self, line: &str, outcome: &Outcome) -> Option<Prose> {
        let stands = matches!(outcome.sign, super::turn::Sign::Right);
        let (label, sum) = line.split_once(':').filter(|_| stands)?;
        let said = self.axis_of_label(label)?;
        let names = sum.split(|c: char| !c.is_alphanumeric() && c != '_');
        let along = names.filter_map(|name| self.axis_of_name(name));
        let along: Vec<Axis> = along.collect();
        let other = !along.is_empty() && !along.contains(&said);
        let key = match said {
            Axis::Horizontal => "talk.label-upright",
            Axis::Vertical => "talk.label-level",
        };
        other.then(|| self.words.say(key, &[]))
    }

    /// The axis that a label names, and no other.
    fn axis_of_label(&self, label: &str) -> Option<Axis> {
        let small = label.trim().to_lowercase();
        let says = |key: &str| {
            let known = self.words.word(key);
            let mut known = known.split(',').map(str::trim);
            known.any(|word| small.split([' ', '=']).any(|said| said == word))
        };
        match (says("label.level"), says("label.upright")) {
            (true, false) => Some(Axis::Horizontal),
            (false, true) => Some(Axis::Vertical),
            _ => None,
        }
    }

    /// The axis of a part of a force that is named so.
    fn axis_of_name(&self, name: &str) -> Option<Axis> {
        let steps = self.key.steps.iter();
        let mut steps = steps.filter(|step| !name.is_empty() && step.symbol.matches(name));
        steps.find_map(|step| match step.id {
            StepId::PartOf(_, axis) => Some(axis),
            id => id.along(),
        })
    }
}
