//! "20.1° from the vertical": a direction told with the line that it is measured from.

use super::turn::Sign;
use super::{Outcome, Session};
use crate::judge::judge;
use crate::key::{Part, StepId};

/// The line that an angle is measured from.
#[derive(Clone, Copy, PartialEq)]
enum Reference {
    Horizontal,
    Vertical,
}

impl Session {
    /// The answer to a direction that names the line it is measured from; `None` for other lines.
    pub(super) fn answer_measured(&mut self, asked: StepId, line: &str) -> Option<Outcome> {
        if !matches!(asked, StepId::Reaction(_, Part::Direction)) {
            return None;
        }
        let (angle, from) = self.measured_from(line)?;
        if from == Reference::Horizontal {
            return Some(self.answer(asked, angle));
        }
        // With the horizontal it is the rest of a right angle.
        let rest = format!("90° - ({angle})");
        let (names, own) = (self.names(), self.own_values());
        let board = self.board(&names, &own);
        let judgement = judge(&board, asked, &rest, self.state.next_number);
        if !judgement.truth.holds() {
            return Some(self.answer(asked, &rest));
        }
        let message = self.words.say("talk.angle-with-vertical", &[]);
        let (sign, verdict) = (Sign::Noted, "verdict.noted");
        Some(Outcome::verdict(sign, verdict, "noted", message))
    }

    /// An angle, and the line that it is measured from where that is told behind it.
    fn measured_from<'l>(&self, line: &'l str) -> Option<(&'l str, Reference)> {
        let before = |text: &'l str, key: &str| {
            let (rest, last) = text.trim_end().rsplit_once(' ')?;
            let known = self.words.word(key);
            let last = last.trim_end_matches('.').to_lowercase();
            known
                .split(',')
                .any(|word| word.trim() == last)
                .then_some(rest)
        };
        let (rest, from) = before(line, "statement.horizontal")
            .map(|rest| (rest, Reference::Horizontal))
            .or_else(|| Some((before(line, "statement.vertical")?, Reference::Vertical)))?;
        let rest = before(rest, "statement.filler").unwrap_or(rest);
        let angle = ["statement.from", "statement.at", "statement.to"]
            .iter()
            .find_map(|key| before(rest, key))?;
        (!angle.trim().is_empty()).then_some((angle.trim_end(), from))
    }
}
