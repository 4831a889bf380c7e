//! Who is at work, in the line dialogue: a line `name …` at any time.

use super::Dialogue;
use crate::practice::People;
use crate::text::{Slot, Words};
use std::io;

/// What was said at the list.
pub(super) enum Chosen {
    /// A line that chooses.
    Line(String),
    /// Somebody else is at work: the list is another.
    Anew,
}

impl Dialogue<'_> {
    /// Says who is at work, if a name is known.
    pub(super) fn at_work(&mut self) -> io::Result<()> {
        match self.desk.people().name {
            Some(name) => {
                let slots = [("name", Slot::Word(name))];
                self.say(&self.words.say("plain.at-work", &slots))
            }
            None => Ok(()),
        }
    }

    /// Asks for a choice of the list, and takes what is said of names and settings meanwhile. The
    /// list is told again where somebody else has sat down; `None` at the end of the input.
    pub(super) fn choice(&mut self) -> io::Result<Option<Chosen>> {
        let who = self.desk.people().name;
        while let Some(line) = self.ask()? {
            if !self.named(&line, false)? && !self.set(&line)? {
                return Ok(Some(Chosen::Line(line)));
            }
            if self.desk.people().name != who {
                return Ok(Some(Chosen::Anew));
            }
        }
        Ok(None)
    }

    /// Asks for a name once there is something to keep. It may be given or passed over.
    pub(super) fn ask_name(&mut self) -> io::Result<()> {
        let people = self.desk.people();
        if !people.ask {
            return Ok(());
        }
        self.say(&self.words.say("plain.ask-name", &[]))?;
        self.known(&people)
    }

    /// Takes a line that says who is at work. True if it was one.
    pub(super) fn named(&mut self, line: &str, at_problem: bool) -> io::Result<bool> {
        let Some(name) = name_in(&self.words, line) else {
            return Ok(false);
        };
        if name.is_empty() {
            let people = self.desk.people();
            match people.name {
                Some(_) => self.at_work()?,
                None => self.say(&self.words.say("plain.nameless", &[]))?,
            }
            self.known(&people)?;
            return Ok(true);
        }
        let said = self.desk.call(name, at_problem);
        self.take_settings();
        self.say(&said.unwrap_or_else(|trouble| trouble))?;
        Ok(true)
    }

    /// Who else is known, each with a number.
    fn known(&mut self, people: &People) -> io::Result<()> {
        let others = people.others.iter().enumerate();
        for (place, name) in others {
            let slots = [
                ("number", Slot::Word((place + 1).to_string())),
                ("name", Slot::Word(name.clone())),
            ];
            self.say(&self.words.say("plain.known", &slots))?;
        }
        Ok(())
    }
}

/// The name in a line such as `name Mira` or `my name is Mira`; empty for the words alone.
fn name_in<'l>(words: &Words, line: &'l str) -> Option<&'l str> {
    let line = line.trim();
    let list = words.word("plain.name-command");
    list.split(',').map(str::trim).find_map(|word| {
        let (start, rest) = line.split_at_checked(word.len())?;
        let whole = rest.is_empty() || rest.starts_with(' ');
        (whole && start.eq_ignore_ascii_case(word)).then(|| rest.trim())
    })
}
