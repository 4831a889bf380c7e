//! A problem of the learner's own, by questions: each said once, choices numbered.

use super::{After, Dialogue, asks_for_help, is_one_of};
use crate::builder::{Asked, Builder, Standing};
use crate::practice::Opening;
use crate::sketch::{Marks, tell, told_words};
use crate::text::{Prose, Slot};
use std::io;

/// What comes of building.
enum Built {
    /// A problem to work at.
    Open(Opening),
    /// The list again.
    Menu,
    /// The end.
    Leave,
}

/// What comes of a question, or of the word at the end.
enum Step {
    /// On with the questions.
    On,
    /// It is built.
    Whole,
    /// The list.
    Menu,
    /// The end.
    Leave,
}

impl Dialogue<'_> {
    /// A problem of the learner's own, from its first question to the end of its working.
    pub(super) fn own_problem(&mut self) -> io::Result<After> {
        match self.build()? {
            Built::Open(opening) => self.work(opening),
            Built::Menu => Ok(After::Menu),
            Built::Leave => Ok(After::Leave),
        }
    }

    /// Asks for a problem, tells its drawing as it grows, and offers to keep it. What was answered
    /// waits where one goes back to the list.
    fn build(&mut self) -> io::Result<Built> {
        self.say(&self.words.say("plain.build.begin", &[]))?;
        let begun = self.draft.take();
        let mut builder = begun.unwrap_or_else(|| Builder::new(self.words.clone()));
        let mut known = Vec::new();
        self.grown(&builder, &mut known)?;
        let mut said = None;
        loop {
            let step = match builder.asked() {
                Some(asked) => {
                    if said.as_ref() != Some(&asked) {
                        self.put(&asked)?;
                    }
                    said = Some(asked);
                    self.step(&mut builder, &mut known, &mut said)?
                }
                None => {
                    said = None;
                    self.whole(&mut builder)?
                }
            };
            match step {
                Step::On => {}
                Step::Leave => {
                    self.draft = Some(builder).filter(|builder| builder.answered() > 0);
                    self.farewell()?;
                    return Ok(Built::Leave);
                }
                Step::Menu => {
                    if builder.answered() > 0 {
                        self.say(&self.words.say("plain.build.waits", &[]))?;
                        self.draft = Some(builder);
                    }
                    return Ok(Built::Menu);
                }
                Step::Whole => {
                    let problem = builder.problem();
                    match problem.map(|problem| self.desk.open_own(&problem)) {
                        Some(Ok(opening)) => return Ok(Built::Open(opening)),
                        Some(Err(why)) => self.say(&why)?,
                        None => {}
                    }
                }
            }
        }
    }

    /// The question, its choices, and an example.
    fn put(&mut self, asked: &Asked) -> io::Result<()> {
        self.blank()?;
        self.say(&asked.prompt)?;
        for (index, choice) in asked.choices.iter().enumerate() {
            self.paragraph(&format!("{}. {choice}", index + 1))?;
        }
        if asked.example.is_empty() {
            return Ok(());
        }
        let slots = [("example", Slot::Prose(asked.example.clone()))];
        self.say(&self.words.say("plain.example", &slots))
    }

    /// Takes a line as an answer. `said` is emptied where the question is to be said again.
    fn step(
        &mut self,
        builder: &mut Builder,
        known: &mut Vec<Prose>,
        said: &mut Option<Asked>,
    ) -> io::Result<Step> {
        let Some(line) = self.ask()? else {
            return Ok(Step::Leave);
        };
        let typed = line.trim().to_lowercase();
        if is_one_of(&self.words, "command.quit", &typed) {
            return Ok(Step::Menu);
        }
        if asks_for_help(&self.words, &line) {
            *said = None;
            self.say(&self.words.say("plain.build.begin", &[]))?;
            return Ok(Step::On);
        }
        if is_one_of(&self.words, "build.back", &typed) {
            *said = None;
            self.take_back(builder)?;
            return Ok(Step::On);
        }
        let before = builder.trouble();
        match builder.answer(&line) {
            Ok(_) => {
                self.grown(builder, known)?;
                let trouble = builder.trouble();
                match trouble {
                    Some(why) if before.as_ref() != Some(&why) => {
                        self.say(&why)?;
                        self.say(&self.words.say("plain.build.back", &[]))?;
                    }
                    None if before.is_some() => {
                        self.say(&self.words.say("plain.build.mended", &[]))?;
                    }
                    _ => {}
                }
            }
            Err(fault) => self.say(&fault)?,
        }
        Ok(Step::On)
    }

    fn take_back(&mut self, builder: &mut Builder) -> io::Result<()> {
        let last = builder.listed().last().cloned();
        if builder.back().is_none() {
            return self.say(&self.words.say("plain.build.none-back", &[]));
        }
        let slots = [(
            "answer",
            Slot::Word(last.map_or_else(String::new, |last| last.told)),
        )];
        self.say(&self.words.say("plain.build.taken-back", &slots))
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
        let told = told_words(&tell(&problem, &problem.values(), &marks), &self.words);
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

    /// The whole problem: why it cannot be worked, or a file for it if one wants.
    fn whole(&mut self, builder: &mut Builder) -> io::Result<Step> {
        let problem = builder.problem();
        let sound = builder.standing() == Standing::Sound;
        let problem = problem.filter(|_| sound);
        match &problem {
            Some(problem) => {
                self.blank()?;
                self.paragraph(&self.manner.text(problem.statement()))?;
                for key in ["plain.build.whole", "plain.build.work", "plain.build.keep"] {
                    self.say(&self.words.say(key, &[]))?;
                }
            }
            // Why was said with the answer that made it so.
            None => self.say(&self.words.say("plain.build.unsound", &[]))?,
        }
        loop {
            let Some(line) = self.ask()? else {
                return Ok(Step::Leave);
            };
            let typed = line.trim().to_lowercase();
            if is_one_of(&self.words, "command.quit", &typed) {
                return Ok(Step::Menu);
            }
            if is_one_of(&self.words, "build.back", &typed) {
                self.take_back(builder)?;
                return Ok(Step::On);
            }
            let Some(problem) = &problem else {
                self.say(&self.words.say("plain.build.unsound", &[]))?;
                continue;
            };
            let line = match typed.as_str() {
                "" | "1" => return Ok(Step::Whole),
                "2" => {
                    self.say(&self.words.say("plain.build.name", &[]))?;
                    match self.ask()? {
                        Some(name) => name,
                        None => return Ok(Step::Leave),
                    }
                }
                _ => line,
            };
            match self.desk.keep_problem(problem, line.trim()) {
                Ok(said) => {
                    self.say(&said)?;
                    return Ok(Step::Whole);
                }
                Err(fault) => self.say(&fault)?,
            }
        }
    }
}
