//! What is said of a line in the line dialogue: how it was read, its verdict, and its hints.

use super::Dialogue;
use crate::session::{LineView, Sign, Turn};
use crate::sketch::spelled;
use crate::text::{Prose, Slot, Span};
use std::io;

impl Dialogue<'_> {
    pub(super) fn answer(&mut self, turn: &Turn) -> io::Result<()> {
        self.answer_line(&turn.line)?;
        for line in &turn.shown {
            self.shown(line)?;
        }
        Ok(())
    }

    /// A line's verdict, what is said about it, and its hints.
    pub(super) fn answer_line(&mut self, line: &LineView) -> io::Result<()> {
        if let Some(caret) = line.caret.filter(|_| line.sign != Sign::Right) {
            self.caret(&line.text, caret)?;
        }
        if let Some(reading) = line
            .reading
            .as_ref()
            .filter(|reading| reading.trim() != line.text.trim())
        {
            self.say(&self.words.say(
                "plain.read-as",
                &[("reading", Slot::Value(reading.clone()))],
            ))?;
        }
        let verdict = match line.number {
            Some(number) => format!(
                "{} {number}: {}.",
                self.words.word("plain.line"),
                line.verdict
            ),
            None => String::new(),
        };
        let prose = Prose::plain(verdict).then(line.message.clone());
        if !prose.is_empty() {
            self.say(&prose)?;
        }
        for hint in &line.hints {
            self.say(
                &self
                    .words
                    .say("plain.hint", &[("hint", Slot::Prose(hint.clone()))]),
            )?;
        }
        Ok(())
    }

    /// The line once more, with a mark under what is meant.
    fn caret(&mut self, text: &str, span: Span) -> io::Result<()> {
        let shown = if self.ascii {
            spelled(text)
        } else {
            text.to_owned()
        };
        let (column, width) = match self.ascii {
            // Letters that are spelled out take more columns.
            true => {
                let before = spelled(text.get(..span.start).unwrap_or_default());
                let within = spelled(text.get(span.start..span.end).unwrap_or_default());
                (before.len(), within.len().max(1))
            }
            false => span.columns(text),
        };
        self.line(&format!("  {shown}"))?;
        self.line(&format!("  {}{}", " ".repeat(column), "^".repeat(width)))
    }
}
