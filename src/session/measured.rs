//! "20.1° from the vertical": a direction told with the line that it is measured from.

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

/// An angle that is told with its line.
pub(super) struct Measured<'l> {
    /// The angle, perhaps behind its name.
    pub(super) angle: &'l str,
    /// What it is measured from.
    pub(super) from: Reference,
    /// The ways that were said with it, to put behind the angle: ` to the left`, or nothing.
    pub(super) ways: String,
}

/// The words for each way, and how it is put.
const WAYS: [(&str, &str); 4] = [
    ("statement.left", "solve.left"),
    ("statement.right", "solve.right"),
    ("statement.up", "solve.up"),
    ("statement.down", "solve.down"),
];

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
            return self
                .answer_lengthwise(asked, line)
                .or_else(|| self.answer_measured_general(asked, line));
        }
        let StepId::Reaction(_, Part::Direction) = asked else {
            return None;
        };
        let Measured { angle, from, ways } = self.measured_from(line)?;
        let to = |side: &str| self.words.word(side);
        let with_ways = format!("{angle}{ways}");
        let as_told = match from {
            Reference::Horizontal | Reference::Vertical => self.judged(asked, &with_ways),
            Reference::Right | Reference::Left => self.judged(asked, angle),
        };
        match from {
            Reference::Horizontal => Some(self.answer(asked, &with_ways)),
            Reference::Vertical => Some(self.answer_from_vertical(asked, angle, &ways, as_told)),
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
        let Measured {
            angle: told,
            from,
            ways,
        } = self.measured_from(line)?;
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
            Reference::Horizontal | Reference::Right => {
                Some(self.answer(asked, &format!("{told}{ways}")))
            }
            Reference::Vertical => {
                Some(self.answer(asked, &format!("{name} 90° - ({angle}){ways}")))
            }
            Reference::Left => Some(self.answer(asked, &format!("{name} 180° - ({angle})"))),
        }
    }

    /// "The pin's force is 24.5° from the vertical", "H points at 126.5° from the x axis": the only
    /// direction of a problem, told in a sentence, whatever is asked; `None` for other lines.
    pub(super) fn answer_direction(&mut self, line: &str) -> Option<Outcome> {
        let mut steps = self.key.steps.iter();
        let direction = steps.find(|step| step.id.is_direction())?;
        let (id, symbol) = (direction.id, direction.symbol.clone());
        if steps.any(|step| step.id.is_direction()) {
            return None;
        }
        let start = match line.split_once('=') {
            Some((head, _)) => head.len() + 1,
            None => line.find(|c: char| c.is_ascii_digit())?,
        };
        let head = line[..start].trim_end_matches(['=', ' ']);
        let of_it = |word: &str| {
            let small = word.to_lowercase();
            symbol.matches(word)
                || matches!(word, "ψ" | "psi")
                || self.is_in("beside.angle-of", &small)
        };
        let mut words = head.split_whitespace();
        let told = words.any(of_it) && !head.contains(|c: char| c.is_ascii_digit());
        let head = head.strip_suffix(" at").unwrap_or(head);
        if !told || self.weighs(head) || !line[start..].contains('°') {
            return None;
        }
        let alone = format!("{}{}", " ".repeat(start), &line[start..]);
        if self.measured_from(&alone).is_none() {
            return self.is_readable(&alone).then(|| self.answer(id, &alone));
        }
        self.answer_measured(id, &alone)
    }

    /// An angle with the vertical: with the horizontal it is the rest of a right angle.
    fn answer_from_vertical(
        &mut self,
        asked: StepId,
        angle: &str,
        ways: &str,
        as_told: Judgement,
    ) -> Outcome {
        let rest = format!("90° - ({angle}){ways}");
        if self.judged(asked, &rest).truth.holds() {
            let message = self.words.say("talk.angle-with-vertical", &[]);
            return Outcome::noted(message);
        }
        if as_told.truth.holds() {
            return self.answer_judged(asked, with_another_line(as_told));
        }
        self.answer(asked, &rest)
    }

    /// An angle, and the line that it is measured from where that is told behind it: `20.1° from
    /// the vertical, to the left`, `20.1° to the left of the vertical`.
    pub(super) fn measured_from<'l>(&self, line: &'l str) -> Option<Measured<'l>> {
        let (mut line, mut ways) = (line, String::new());
        while let Some((rest, way)) = self.way_behind(line) {
            ways = format!(" {way}{ways}");
            line = rest;
        }
        let (rest, from) = REFERENCES
            .iter()
            .find_map(|(key, from)| Some((self.before(line, key)?, *from)))?;
        let rest = self.before(rest, "statement.filler").unwrap_or(rest);
        let from_it = ["statement.from", "statement.at", "statement.to"]
            .iter()
            .find_map(|key| self.before(rest, key));
        let angle = match from_it {
            Some(angle) => angle,
            // The side of an upright line on which it lies.
            None => {
                let side = self.before(rest, "statement.of")?;
                let (angle, way) = self.way_behind(side)?;
                if from != Reference::Vertical {
                    return None;
                }
                ways = format!(" {way}{ways}");
                angle
            }
        };
        let angle = angle.trim_end();
        (!angle.trim().is_empty()).then_some(Measured { angle, from, ways })
    }

    /// A text without a way that stands at its end, and how that way is put.
    pub(super) fn way_behind<'l>(&self, text: &'l str) -> Option<(&'l str, String)> {
        WAYS.iter().find_map(|(key, put)| {
            let rest = self.before(text, key)?;
            let rest = self.before(rest, "statement.filler").unwrap_or(rest);
            let rest = self.before(rest, "statement.to").unwrap_or(rest);
            let rest = self.before(rest, "statement.and").unwrap_or(rest);
            Some((rest.trim_end_matches([',', ' ']), self.words.word(put)))
        })
    }

    /// A text without the last words of it, where these are of this list.
    pub(super) fn before<'l>(&self, text: &'l str, key: &str) -> Option<&'l str> {
        let text = text.trim_end().trim_end_matches('.');
        let known = self.words.word(key);
        known.split(',').find_map(|phrase| {
            let at = text.len().checked_sub(phrase.trim().len())?;
            let (rest, last) = (text.get(..at)?, text.get(at..)?);
            let stands = rest.ends_with(char::is_whitespace);
            (stands && last.to_lowercase() == phrase.trim()).then_some(rest.trim_end())
        })
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
