//! A problem of the learner's own, by questions: each said once, choices numbered.

use super::{After, Dialogue, is_one_of};
use crate::builder::{Builder, Standing};
use crate::practice::Opening;
use crate::sketch::{Marks, tell, told_words};
use crate::text::{Prose, Slot};
use std::io;

/// What comes of building.
pub(super) enum Built {
    /// A problem to work at.
    Open(Opening),
    /// The list again.
    Menu,
    /// The end.
    Leave,
}

impl Dialogue<'_> {
    /// Asks for a problem, tells its drawing as it grows, and offers to keep it.
    pub(super) fn build(&mut self) -> io::Result<Built> {
        self.say(&self.words.say("plain.build.begin", &[]))?;
        let mut builder = Builder::new(self.words.clone());
        let mut known: Vec<Prose> = Vec::new();
        while let Some(asked) = builder.asked() {
            self.say(&asked.prompt)?;
            for (index, choice) in asked.choices.iter().enumerate() {
                self.line(&format!("{}. {choice}", index + 1))?;
            }
            if !asked.example.is_empty() {
                let slots = [("example", Slot::Prose(asked.example))];
                self.say(&self.words.say("plain.example", &slots))?;
            }
            let Some(line) = self.ask()? else {
                self.farewell()?;
                return Ok(Built::Leave);
            };
            let typed = line.trim().to_lowercase();
            if is_one_of(self.words, "command.quit", &typed) {
                return Ok(Built::Menu);
            }
            if is_one_of(self.words, "build.back", &typed) {
                builder.back();
                continue;
            }
            match builder.answer(&line) {
                Ok(remark) => {
                    self.grown(&builder, &mut known)?;
                    if let Some(remark) = remark {
                        self.say(&remark)?;
                        self.say(&self.words.say("plain.build.back", &[]))?;
                    }
                }
                Err(fault) => self.say(&fault)?,
            }
        }
        self.keep(&builder)
    }

    /// What the drawing shows since the last answer.
    fn grown(&mut self, builder: &Builder, known: &mut Vec<Prose>) -> io::Result<()> {
        let Some(problem) = builder.problem() else {
            return Ok(());
        };
        let marks = Marks {
            givens: true,
            ..Marks::default()
        };
        let told = told_words(&tell(&problem, &problem.values(), &marks), self.words);
        let fresh: Vec<String> = told
            .iter()
            .filter(|prose| !known.contains(prose))
            .map(ToString::to_string)
            .collect();
        *known = told;
        if fresh.is_empty() {
            return Ok(());
        }
        let slots = [("told", Slot::Word(fresh.join(" ")))];
        self.say(&self.words.say("plain.diagram", &slots))
    }

    /// The whole problem: why it cannot be worked, or a file for it and then its working.
    fn keep(&mut self, builder: &Builder) -> io::Result<Built> {
        let problem = match (builder.standing(), builder.problem()) {
            (Standing::Sound, Some(problem)) => problem,
            (Standing::Unsound(why), _) => {
                self.say(&why)?;
                return Ok(Built::Menu);
            }
            (_, None) => return Ok(Built::Menu),
        };
        self.paragraph(problem.statement())?;
        self.say(&self.words.say("build.keep", &[]))?;
        loop {
            let Some(line) = self.ask()? else {
                self.farewell()?;
                return Ok(Built::Leave);
            };
            if line.trim().is_empty() {
                break;
            }
            match self.desk.keep_problem(&problem, line.trim()) {
                Ok(said) => {
                    self.say(&said)?;
                    break;
                }
                Err(fault) => self.say(&fault)?,
            }
        }
        match self.desk.open_own(&problem) {
            Ok(opening) => Ok(Built::Open(opening)),
            Err(why) => {
                self.say(&why)?;
                Ok(Built::Menu)
            }
        }
    }

    /// A problem of the learner's own, from its first question to the end of its working.
    pub(super) fn own_problem(&mut self) -> io::Result<After> {
        match self.build()? {
            Built::Open(opening) => self.work(opening),
            Built::Menu => Ok(After::Menu),
            Built::Leave => Ok(After::Leave),
        }
    }
}
