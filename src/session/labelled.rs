//! `level: Wb + W1 = Hy`: along which axis a line is said to sum, where it sums along the other.
//! `if it slides: P = 0.6 N`: which of two ways of giving way a line is said to be of, where the
//! problem is at the limit of the other.

use super::turn::Sign;
use super::{Outcome, Session};
use crate::judge::statement::{PivotSaid, is_pivot, pivot_said};
use crate::key::{Axis, StepId};
use crate::reading::{Reading, read};
use crate::text::Prose;

impl Session {
    /// What is told of a line that stands and whose label names the other axis.
    pub(super) fn other_axis_told(&self, line: &str, outcome: &Outcome) -> Option<Prose> {
        let stands = matches!(outcome.sign, Sign::Right);
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

    /// What is told of a sum of moments that stands and whose label names another point than the
    /// hinge, where the hinge's force is not in it: about no other point would it hold without.
    pub(super) fn other_point_told(&self, line: &str, outcome: &Outcome) -> Option<Prose> {
        let stands = matches!(outcome.sign, Sign::Right | Sign::Follows);
        let (label, sum) = line
            .split_once(':')
            .filter(|_| stands && self.key.general.is_none())?;
        let said = pivot_said(&self.problem, &self.words, label);
        let (PivotSaid::At(metres) | PivotSaid::OnUnknown(metres, _)) = said else {
            return None;
        };
        let unknown = self.key.unknown()?;
        let of = |name: &str, of: &dyn Fn(StepId) -> bool| {
            let mut steps = self.key.steps.iter();
            steps.any(|step| !name.is_empty() && of(step.id) && step.symbol.matches(name))
        };
        let names: Vec<&str> = sum
            .split(|c: char| !c.is_alphanumeric() && c != '_')
            .collect();
        let is_pull = |id: StepId| id == unknown;
        let is_hinge = |id: StepId| matches!(id, StepId::Reaction(..));
        // Under a name of her own it may stand there, too.
        let hers = |name: &&str| self.is_hers(name);
        // Once it is found its force may be a number.
        let found = self.state.standing.keys().any(|id| is_hinge(*id));
        let hidden = found || names.iter().any(hers);
        let without = !hidden && !names.iter().any(|name| of(name, &is_hinge));
        let moments = names.iter().any(|name| of(name, &is_pull)) && sum.contains('=');
        let other = !is_pivot(&self.problem, self.key.pivot, metres) && without && moments;
        other.then(|| self.say("talk.label-pivot"))
    }

    /// `H: T cos 70 = 377`, `A: B·1.2 = 588·1.5` where H and A are names, too: without the label, where
    /// the line holds only so, or is no more than an equation of an unknown. Of what that is made of
    /// itself (`H: Hx + Hy = …`) it tells the value.
    pub(super) fn without_name_label(&mut self, asked: StepId, line: &str) -> Option<String> {
        let (label, sum) = line.split_once(':')?;
        let (form, last) = (sum.split('=').next()?, sum.rsplit_once('=')?.1);
        let name = label.trim();
        if !self.is_symbol(name) || sum.contains(':') {
            return None;
        }
        let made_of = self.steps_named(name).into_iter();
        let made_of: Vec<StepId> = made_of.flat_map(|step| self.key.inputs(step)).collect();
        let named = self.steps_named(sum);
        if named.iter().any(|step| made_of.contains(step)) {
            return None;
        }
        let way = format!("{}{sum}", " ".repeat(label.len() + 1));
        let mut unknown = self.steps_named(form).into_iter();
        let equation = last.contains(['*', '·', '+', '/']) && unknown.any(StepId::is_unknown);
        let told = self.judged_freely(asked, line).stands();
        (!told && (equation || self.judged_freely(asked, &way).stands())).then_some(way)
    }

    /// The quantities that are named in a text.
    pub(super) fn steps_named(&self, text: &str) -> Vec<StepId> {
        let letter = |c: char| c.is_alphanumeric() || c == '_';
        let words = text.split(|c: char| !letter(c));
        let words = words.map(|word| word.trim_start_matches(|c: char| c.is_ascii_digit()));
        let words: Vec<&str> = words.filter(|word| !word.is_empty()).collect();
        let steps = self.key.steps.iter().filter(|step| {
            let ways = [step.symbol.as_str().to_owned(), step.symbol.typed()];
            words.iter().any(|word| ways.iter().any(|way| way == word))
        });
        steps.map(|step| step.id).collect()
    }

    /// The answer to a line of the other way in which a body may give way: whoever compares both
    /// works that one, too, and only the one that comes first is the problem's.
    pub(super) fn answer_other_case(&self, line: &str) -> Option<Outcome> {
        let (label, _) = line.split_once(':')?;
        let general = self.key.general.as_ref()?;
        let mut conditions = general.headings.values().map(|heading| heading.condition);
        let is = conditions.find(|condition| !condition.is_empty())?;
        let said = match (
            self.label_says(label, "label.slips"),
            self.label_says(label, "label.topples"),
        ) {
            (true, false) => "slips",
            (false, true) => "topples",
            _ => return None,
        };
        let other = matches!(is, "slips" | "topples") && is != said;
        other.then(|| Outcome::noted(self.words.say("talk.other-case", &[])))
    }

    /// `arm of T: 3.6·cos 65° = 1.521 m`: of a true sum of numbers behind a label nothing shows that it
    /// is what the label calls it; `B : W = 5 : 4` is a ratio.
    pub(super) fn as_sum_of_label(&self, line: &str, outcome: Outcome) -> Outcome {
        let told = outcome.sign == Sign::Right && outcome.progress.is_empty();
        let sum = line.split_once(':').filter(|_| told);
        let Some((label, sum)) = sum.filter(|(_, sum)| sum.contains('=') && !sum.contains(':'))
        else {
            return outcome;
        };
        let names = self.names();
        let readings = read(sum, names.vocabulary()).unwrap_or_default();
        let numbers = |reading: &Reading| reading.sides.iter().all(|side| side.names().is_empty());
        if !label.contains(char::is_alphabetic) || !readings.iter().any(numbers) {
            return outcome;
        }
        Outcome {
            reading: outcome.reading,
            ..Outcome::noted(self.words.say("talk.sum-of-label", &[]))
        }
    }

    /// True if one of the words of the catalogue under `key` stands in a label.
    fn label_says(&self, label: &str, key: &str) -> bool {
        let small = label.trim().to_lowercase();
        let known = self.words.word(key);
        let mut known = known.split(',').map(str::trim);
        known.any(|word| small.split([' ', '=']).any(|said| said == word))
    }

    /// The axis that a label names, and no other.
    fn axis_of_label(&self, label: &str) -> Option<Axis> {
        let says = |key: &str| self.label_says(label, key);
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
