//! "20.1° from the vertical": a direction told with the line that it is measured from.

use super::turn::Sign;
use super::{Outcome, Session};
use crate::judge::{Judgement, Truth};
use crate::key::{Part, StepId};
use std::f64::consts::FRAC_PI_2;

/// The line that an angle is measured from.
#[derive(Clone, Copy, PartialEq)]
pub(super) enum Reference {
    Horizontal,
    Vertical,
    /// The positive x axis.
    Right,
    /// The negative x axis.
    Left,
}

/// The words for each line.
const REFERENCES: &[(&str, Reference)] = &[
    ("statement.axis-left", Reference::Left),
    ("statement.axis-right", Reference::Right),
    ("statement.horizontal", Reference::Horizontal),
    ("statement.vertical", Reference::Vertical),
];

impl Session {
    /// The answer to a direction that names the line it is measured from; `None` for other lines.
    pub(super) fn answer_measured(&mut self, asked: StepId, line: &str) -> Option<Outcome> {
        if asked.is_general() {
            return self.answer_measured_general(asked, line);
        }
        let StepId::Reaction(_, Part::Direction) = asked else {
            return None;
        };
        let (angle, from) = self.measured_from(line)?;
        let as_told = self.judged(asked, angle);
        let to = |side: &str| self.words.word(side);
        match from {
            Reference::Horizontal => Some(self.answer(asked, angle)),
            Reference::Vertical => Some(self.answer_from_vertical(asked, angle, as_told)),
            Reference::Right | Reference::Left => {
                let (this, other) = match from {
                    Reference::Left => (to("solve.left"), to("solve.right")),
                    _ => (to("solve.right"), to("solve.left")),
                };
                // Up to a right angle the force points to the side of that end, beyond it away.
                let acute = as_told.value.is_some_and(|value| value.abs() < FRAC_PI_2);
                let told = match from {
                    _ if acute => format!("{angle} {this}"),
                    Reference::Left => format!("180° - ({angle}) {other}"),
                    _ => angle.to_owned(),
                };
                let judgement = self.judged(asked, &told);
                Some(
                    match judgement.evidence.wrong_way && as_told.truth.holds() {
                        true => self.answer_judged(asked, with_another_line(as_told)),
                        false => self.answer_judged(asked, judgement),
                    },
                )
            }
        }
    }

    /// The same of a general problem, where a direction may be told by its name before it is asked,
    /// and where no question says which line it is measured from.
    fn answer_measured_general(&mut self, asked: StepId, line: &str) -> Option<Outcome> {
        let (told, from) = self.measured_from(line)?;
        let (name, angle) = match told.rfind('=') {
            Some(at) => told.split_at(at + 1),
            None => ("", told),
        };
        let target = match name.trim_end_matches('=').trim() {
            "" => asked,
            name => {
                let mut steps = self.key.steps.iter();
                steps.find(|step| step.symbol.matches(name))?.id
            }
        };
        let heading = self.key.heading(target);
        let with_level =
            target.is_direction() || heading.is_some_and(|heading| heading.kind == "slope");
        let angle = angle.trim();
        match from {
            _ if !with_level => target.is_angle().then(|| self.answer(asked, told)),
            Reference::Horizontal | Reference::Right => Some(self.answer(asked, told)),
            Reference::Vertical => Some(self.answer(asked, &format!("{name} 90° - ({angle})"))),
            Reference::Left => Some(self.answer(asked, &format!("{name} 180° - ({angle})"))),
        }
    }

    /// An angle with the vertical: with the horizontal it is the rest of a right angle.
    fn answer_from_vertical(&mut self, asked: StepId, angle: &str, as_told: Judgement) -> Outcome {
        let rest = format!("90° - ({angle})");
        if self.judged(asked, &rest).truth.holds() {
            let message = self.words.say("talk.angle-with-vertical", &[]);
            return Outcome::verdict(Sign::Noted, "verdict.noted", "noted", message);
        }
        if as_told.truth.holds() {
            return self.answer_judged(asked, with_another_line(as_told));
        }
        self.answer(asked, &rest)
    }

    /// An angle, and the line that it is measured from where that is told behind it.
    pub(super) fn measured_from<'l>(&self, line: &'l str) -> Option<(&'l str, Reference)> {
        let before = |text: &'l str, key: &str| {
            let text = text.trim_end().trim_end_matches('.');
            let known = self.words.word(key);
            known.split(',').find_map(|phrase| {
                let at = text.len().checked_sub(phrase.trim().len())?;
                let (rest, last) = (text.get(..at)?, text.get(at..)?);
                let stands = rest.ends_with(char::is_whitespace);
                (stands && last.to_lowercase() == phrase.trim()).then_some(rest.trim_end())
            })
        };
        let (rest, from) = REFERENCES
            .iter()
            .find_map(|(key, from)| Some((before(line, key)?, *from)))?;
        let rest = before(rest, "statement.filler").unwrap_or(rest);
        let angle = ["statement.from", "statement.at", "statement.to"]
            .iter()
            .find_map(|key| before(rest, key))?;
        (!angle.trim().is_empty()).then_some((angle.trim_end(), from))
    }
}

/// A judgement of an angle that would hold with another line than the one told.
fn with_another_line(mut judgement: Judgement) -> Judgement {
    judgement.truth = Truth::DoesNotHold;
    judgement.proved = false;
    judgement.establishes.clear();
    judgement.values.clear();
    judgement.evidence.number = None;
    judgement.evidence.lifted.clear();
    judgement.evidence.other_line = true;
    judgement
}
