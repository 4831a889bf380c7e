//! A problem taken as an example that fades: fully worked, each line shown with a reason asked; or
//! its first steps shown and the last ones the learner's; or all of them the learner's.
//!
//! How it is taken is a line like any other, so a journal brings it back.

use super::command::{Command, command};
use super::turn::{LineView, Sign};
use super::{Outcome, Session, reasons};
use crate::hint::{force_words, hint, line_itself};
use crate::key::StepId;
use crate::text::{Prose, Slot, Words};

/// How much of a problem is the learner's.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Fading {
    /// All steps.
    #[default]
    All,
    /// So many last steps; without a number, those from the balance of moments on.
    Last(Option<usize>),
    /// None: each line is shown, and its reason asked.
    Worked,
}

impl Fading {
    /// What comes next, when a problem was taken so: a little more of it is the learner's.
    #[must_use]
    pub fn next(self) -> Fading {
        match self {
            Fading::Worked => Fading::Last(None),
            Fading::Last(_) | Fading::All => Fading::All,
        }
    }

    /// The line that takes a problem so; none where nothing is shown.
    pub fn line(self, words: &Words) -> Option<String> {
        let chief = |key: &str| {
            let list = words.word(key);
            list.split(',').next().unwrap_or_default().trim().to_owned()
        };
        match self {
            Fading::All => None,
            Fading::Last(None) => Some(chief("command.last")),
            Fading::Last(Some(count)) => Some(format!("{} {count}", chief("command.last"))),
            Fading::Worked => Some(chief("command.worked")),
        }
    }

    /// How a line says that a problem is to be taken, if it does: `worked`, `last`, `last 3`.
    pub fn told(words: &Words, line: &str) -> Option<Fading> {
        let lower = line.trim().trim_end_matches(['.', '?']).to_lowercase();
        let is_number = |word: &&str| word.chars().all(|c| c.is_ascii_digit());
        let (numbers, rest): (Vec<&str>, Vec<&str>) = lower.split_whitespace().partition(is_number);
        let rest = rest.join(" ");
        let is = |key: &str| words.word(key).split(',').any(|word| word.trim() == rest);
        match numbers.as_slice() {
            [] if is("command.worked") => Some(Fading::Worked),
            [] if is("command.last") => Some(Fading::Last(None)),
            [count] if is("command.last") => Some(Fading::Last(Some(count.parse().ok()?))),
            _ => None,
        }
    }
}

/// How an example stands.
#[derive(Clone, Default)]
pub(super) struct Example {
    /// How the problem is taken.
    fading: Fading,
    /// The reason that is asked now.
    asks: Option<Asked>,
    /// The reasons asked by now: none is asked twice.
    asked: Vec<&'static str>,
    /// How many of them were found at the first go.
    at_once: usize,
    /// Steps that were shown.
    shown: Vec<StepId>,
}

/// A reason that is asked.
#[derive(Clone)]
struct Asked {
    /// The step whose line is shown.
    step: StepId,
    /// Its kind, as the catalogue of words calls it.
    reason: &'static str,
    /// True once a wrong one was chosen.
    again: bool,
}

impl Session {
    /// How much of the problem is the learner's.
    pub(super) fn fading(&self) -> Fading {
        self.state.example.fading
    }

    /// The step whose reason is asked now.
    pub(super) fn reason_step(&self) -> Option<StepId> {
        self.state.example.asks.as_ref().map(|asked| asked.step)
    }

    /// The step that is spoken of: one whose reason is asked, else the one that is asked.
    pub(super) fn at_hand(&self) -> Option<StepId> {
        self.reason_step().or_else(|| self.asked())
    }

    /// True if any line was shown as an example.
    pub(super) fn has_example(&self) -> bool {
        !self.state.example.shown.is_empty()
    }

    /// True for a step of which the line was shown as an example: it is not taken back.
    pub(super) fn is_of_example(&self, step: StepId) -> bool {
        self.state.example.shown.contains(&step)
    }

    /// True once a reason of this kind was asked.
    pub(super) fn has_asked(&self, reason: &str) -> bool {
        self.state.example.asked.contains(&reason)
    }

    /// The reason that is asked.
    pub(super) fn reason_question(&self) -> Option<Prose> {
        let asked = self.state.example.asks.as_ref()?;
        Some(self.say_reason(asked, "ask"))
    }

    /// The reasons to choose from, in the order of their numbers; empty where none is asked.
    pub(super) fn choices(&self) -> Vec<Prose> {
        let Some(asked) = &self.state.example.asks else {
            return Vec::new();
        };
        let parts = self.order_of_choices(asked).into_iter();
        parts.map(|part| self.say_reason(asked, part)).collect()
    }

    /// Answers a line that takes the problem as an example, and while a reason is asked any other.
    pub(super) fn answer_example(&mut self, line: &str) -> Option<Outcome> {
        if let Some(fading) = Fading::told(&self.words, line) {
            return Some(self.take_as(fading));
        }
        let asked = self.state.example.asks.clone()?;
        let say = |key: &str| Outcome::talk(self.words.say(key, &[]));
        Some(match command(&self.words, line) {
            Some(Command::Quit) => return None,
            Some(Command::Freely) => {
                self.leave_example();
                return None;
            }
            Some(Command::Guided) => {
                let outcome = say("worked.guided");
                self.leave_example();
                outcome
            }
            Some(Command::Skip | Command::Show | Command::GoOn | Command::Done) => {
                let told = self.words.say("worked.told", &self.reason_slots(&asked));
                self.go_on_behind(Outcome::talk(told))
            }
            Some(Command::Hint) => {
                let look = hint(&self.words, &self.case(), asked.step, None, None, 1);
                Outcome::talk(look)
            }
            Some(Command::Back) => say("worked.nothing-back"),
            Some(Command::Help | Command::Dispute | Command::Estimate) => say("worked.choose"),
            None => match line.trim().trim_end_matches(['.', ')']).parse() {
                Ok(number) => self.choose_reason(&asked, number),
                Err(_) => say("worked.choose"),
            },
        })
    }

    /// A reason chosen by its number, from 1.
    fn choose_reason(&mut self, asked: &Asked, number: usize) -> Outcome {
        let order = self.order_of_choices(asked);
        let Some(part) = number.checked_sub(1).and_then(|place| order.get(place)) else {
            return Outcome::talk(self.words.say("worked.choose", &[]));
        };
        let slots = self.reason_slots(asked);
        if *part == "right" {
            self.state.example.at_once += usize::from(!asked.again);
            let message = self.words.say("worked.right", &slots);
            let outcome = Outcome::verdict(Sign::Right, "verdict.right", "reason", message);
            return self.go_on_behind(Outcome {
                numbered: false,
                ..outcome
            });
        }
        let told = self.say_reason(asked, &format!("{part}-no"));
        let outcome = |message| Outcome {
            sign: Sign::Noted,
            verdict: "verdict.other-reason",
            truth: "reason",
            ..Outcome::talk(message)
        };
        if asked.again {
            let right = self.words.say("worked.told", &slots);
            return self.go_on_behind(outcome(told.then(right)));
        }
        if let Some(asks) = &mut self.state.example.asks {
            asks.again = true;
        }
        outcome(told.then(self.words.say("worked.again", &[])))
    }

    /// Takes what is open of the problem as an example.
    fn take_as(&mut self, fading: Fading) -> Outcome {
        let trouble = if self.is_general() {
            Some("worked.general")
        } else if self.is_free() {
            Some("worked.freely")
        } else if self.reason_step().is_some() {
            Some("worked.already")
        } else if self.asked().is_none() {
            Some("talk.finished")
        } else {
            None
        };
        if let Some(key) = trouble {
            return Outcome::talk(self.words.say(key, &[]));
        }
        // What was begun in words is shown whole.
        self.state.pending.clear();
        self.state.loose = None;
        if fading == Fading::Worked {
            self.state.example.fading = fading;
            return self.go_on_behind(Outcome::talk(self.words.say("worked.begin", &[])));
        }
        let open: Vec<StepId> = self.key.asked().map(|step| step.id).collect();
        let from = match fading {
            Fading::Last(Some(count)) => open.len().saturating_sub(count.max(1)),
            _ => {
                let balance = |id: &StepId| *id == StepId::MomentSum;
                open.iter().position(balance).unwrap_or(0)
            }
        };
        let mut shown = Vec::new();
        while let Some(step) = self.asked().filter(|step| !open[from..].contains(step)) {
            shown.extend(self.show_line(step));
        }
        if shown.is_empty() {
            return Outcome::talk(self.words.say("worked.none", &[]));
        }
        self.state.example.fading = fading;
        let slots = [("count", Slot::Word((open.len() - from).to_string()))];
        let mut outcome = Outcome::talk(self.words.say("worked.last", &slots));
        outcome.truth = "shown";
        outcome.shown = shown;
        outcome
    }

    /// The steps from here on are the learner's.
    fn leave_example(&mut self) {
        self.state.example.asks = None;
        self.state.example.fading = Fading::Last(None);
    }

    /// Goes on behind a reason: lines are shown up to one whose reason was not asked yet.
    fn go_on_behind(&mut self, mut outcome: Outcome) -> Outcome {
        self.state.example.asks = None;
        while let Some(step) = self.asked() {
            outcome.shown.extend(self.show_line(step));
            outcome.truth = "shown";
            let reason = self.reason_of(step);
            if let Some(reason) = reason.filter(|reason| !self.has_asked(reason)) {
                self.state.example.asked.push(reason);
                self.state.example.asks = Some(Asked {
                    step,
                    reason,
                    again: false,
                });
                break;
            }
        }
        outcome
    }

    /// Shows a step as its line, or as one for each force; it is passed over by that.
    fn show_line(&mut self, step: StepId) -> Vec<LineView> {
        let about = self.title(step);
        let forces = self.problem.forces();
        let forces: Vec<_> = forces.iter().map(|force| force.id).collect();
        let texts = self.pass_shown(step, |words, case| match step {
            StepId::Forces => forces
                .iter()
                .map(|force| force_words(words, case, *force))
                .collect(),
            step => vec![line_itself(words, case, step).to_string()],
        });
        self.state.example.shown.push(step);
        let line = |text| LineView {
            number: None,
            text,
            about: about.clone(),
            sign: Sign::Shown,
            verdict: self.words.word("verdict.shown"),
            message: Prose::default(),
            reading: None,
            caret: None,
            hints: Vec::new(),
            standing: true,
        };
        texts.into_iter().map(line).collect()
    }

    /// The parts of the words of a reason, in the order in which they are offered: the right one
    /// stands at a place that the problem's numbers choose.
    fn order_of_choices(&self, asked: &Asked) -> Vec<&'static str> {
        let sum: f64 = self.problem.givens().iter().map(|given| given.value).sum();
        let rank = self.key.rank(asked.step).unwrap_or(0);
        // Whole thousandths of what is printed, which are the same on every machine.
        let turn = (libm::round(libm::fabs(sum) * 1000.0) % 3001.0) as usize + 2 * rank;
        let mut parts = match turn / 3 % 2 {
            0 => vec!["a", "b"],
            _ => vec!["b", "a"],
        };
        parts.insert(turn % 3, "right");
        parts
    }

    fn say_reason(&self, asked: &Asked, part: &str) -> Prose {
        let key = format!("reason.{}.{part}", asked.reason);
        self.words.say(&key, &self.slots_of(asked.step))
    }

    /// The right reason, to be put into a sentence.
    fn reason_slots(&self, asked: &Asked) -> [(&'static str, Slot); 1] {
        [("reason", Slot::Prose(self.say_reason(asked, "right")))]
    }

    /// After a whole example: how the reasons went, and what comes next; `None` after any other
    /// problem.
    pub(super) fn summary_of_example(&self) -> Option<Vec<Prose>> {
        let example = &self.state.example;
        if !self.is_finished() || example.fading != Fading::Worked {
            return None;
        }
        let slots = [
            ("steps", Slot::Word(example.shown.len().to_string())),
            ("count", Slot::Word(example.at_once.to_string())),
            ("all", Slot::Word(example.asked.len().to_string())),
        ];
        let say = |key: &str| self.words.say(key, &slots);
        let next = match reasons::ENOUGH * example.at_once >= example.asked.len() {
            true => "worked.summary.next",
            false => "worked.summary.again",
        };
        Some(vec![
            say("worked.summary.steps"),
            say("worked.summary.reasons"),
            say(next),
        ])
    }
}
