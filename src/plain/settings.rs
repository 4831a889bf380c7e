//! What the learner chooses for the display, in the line dialogue: `settings`, and `settings 2` for
//! the next value of the second.

use super::Dialogue;
use crate::practice::{choices, choose_next};
use crate::text::{Manner, Slot, Symbols, Words};
use std::io;

impl Dialogue<'_> {
    /// Shows everything as the learner at work has chosen.
    pub(super) fn take_settings(&mut self) {
        let settings = self.desk.settings();
        let open = self.of_problem.clone();
        self.words = open.unwrap_or_else(|| self.desk.words());
        self.manner = Manner::of(settings, &self.words);
        self.ascii = settings.symbols == Symbols::Ascii;
    }

    /// Takes a line that is about the settings. True if it was one.
    pub(super) fn set(&mut self, line: &str) -> io::Result<bool> {
        let Some(rest) = after_command(line) else {
            return Ok(false);
        };
        let settings = self.desk.settings();
        let all = choices(settings);
        let place = rest
            .parse::<usize>()
            .ok()
            .and_then(|number| number.checked_sub(1));
        match place.filter(|place| *place < all.len()) {
            Some(place) => {
                let settings = choose_next(settings, place);
                let notes = self.desk.settle(settings);
                self.take_settings();
                self.setting(place)?;
                for note in notes {
                    self.say(&note)?;
                }
            }
            None => {
                self.say(&self.words.say("plain.settings", &[]))?;
                for place in 0..all.len() {
                    self.setting(place)?;
                }
                for told in self.desk.fixed() {
                    self.say(&told)?;
                }
            }
        }
        Ok(true)
    }

    /// A choice: its number, what is chosen, what holds, and what else there is.
    fn setting(&mut self, place: usize) -> io::Result<()> {
        let choice = choices(self.desk.settings())[place];
        let others = choice.values.iter().enumerate();
        let others: Vec<String> = others
            .filter(|(value, _)| *value != choice.taken)
            .map(|(_, value)| self.words.word(value))
            .collect();
        let slots = [
            ("number", Slot::Word((place + 1).to_string())),
            ("heading", Slot::Word(self.words.word(choice.heading))),
            // Words to choose are no words of a sentence: they stay as they are.
            (
                "taken",
                Slot::Key(self.words.word(choice.values[choice.taken])),
            ),
            ("others", Slot::Key(others.join(", "))),
        ];
        self.say(&self.words.say("plain.setting", &slots))
    }
}

/// What stands behind the word `settings`; empty for the word alone. Whoever chose a language by
/// mistake finds back with the word of any other.
fn after_command(line: &str) -> Option<&str> {
    let line = line.trim();
    Words::listed("plain.settings-command")
        .iter()
        .find_map(|word| {
            let (start, rest) = line.split_at_checked(word.len())?;
            let rest = rest.trim();
            let number = rest.is_empty() || rest.bytes().all(|byte| byte.is_ascii_digit());
            (number && start.eq_ignore_ascii_case(word.as_str())).then_some(rest)
        })
}
