//! Estimates before the numbers: asked once, passed over by any line that answers something else,
//! never judged, and said beside the result at the end.

use super::turn::Course;
use super::{Outcome, Session, command};
use crate::key::{Axis, Estimable, StepId, estimable};
use crate::problem::ForceId;
use crate::text::{Prose, Slot};
use crate::units::{Dimension, value_text};

/// What is estimated.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Guess {
    /// Whether the pull is more or less than all weights together.
    Pull,
    /// Which part of the hinge's force is the larger.
    Larger,
    /// Which way its part along this axis acts.
    Way(Axis),
}

/// The estimates of a session.
#[derive(Clone, Default)]
pub(super) struct Guesses {
    /// True if they are asked for without being called for.
    asks: bool,
    /// True once they were called for.
    called: bool,
    /// True once the rest was passed over.
    over: bool,
    /// What was answered: 1 or 2 by its number, 3 for "not sure".
    said: Vec<(Guess, u8)>,
}

impl Guesses {
    fn answer(&self, guess: Guess) -> Option<u8> {
        let said = self.said.iter().find(|(known, _)| *known == guess);
        said.map(|(_, choice)| *choice)
    }
}

impl Session {
    /// Asks for estimates before the first number. Problems of bodies in general have none.
    pub fn ask_estimates(&mut self) {
        self.state.guesses.asks = true;
    }

    /// Readies the session for a line of a journal: where it was answered as something else than an
    /// estimate, the truth that was kept of it tells so, and estimates are passed over. So a journal
    /// that was written without them is read as it was.
    pub fn pass_estimates(&mut self, truth: &str) {
        if self.guess().is_some() && !matches!(truth, "estimate" | "command") {
            self.state.guesses.over = true;
        }
    }

    fn estimable(&self) -> Option<Estimable> {
        let own = self.sampling.own();
        (!self.is_general()).then(|| estimable(&self.problem, &self.key, own))
    }

    /// True while estimates may be asked for: until the pull is found or the end, and where steps
    /// are asked, between what is said in words and the first number.
    fn is_time(&self) -> bool {
        let found = |id: &StepId| matches!(id, StepId::Pull(_) | StepId::Reaction(..));
        let words_said = || !matches!(self.asked(), Some(StepId::Forces | StepId::Pivot) | None);
        self.state.course == Course::On
            && !self.state.reached.keys().any(found)
            && (self.is_free() || words_said())
    }

    /// The estimate that is asked for now.
    pub(super) fn guess(&self) -> Option<Guess> {
        let guesses = &self.state.guesses;
        let in_words = |id: &StepId| matches!(id, StepId::Forces | StepId::Pivot);
        let no_number = || self.state.reached.keys().all(in_words);
        let wanted = guesses.called || guesses.asks && !self.is_free() && no_number();
        // In an example a reason is asked, and nothing is left to be estimated.
        let shown = self.reason_step().is_some();
        if !wanted || shown || guesses.over || !self.is_time() {
            return None;
        }
        let true_of_it = self.estimable()?;
        let mut all = Vec::new();
        all.extend(true_of_it.pull.map(|_| Guess::Pull));
        all.extend(match (true_of_it.level, true_of_it.upright) {
            (Some(_), Some(_)) => match guesses.answer(Guess::Larger) {
                Some(1) => vec![Guess::Larger, Guess::Way(Axis::Horizontal)],
                Some(2) => vec![Guess::Larger, Guess::Way(Axis::Vertical)],
                _ => vec![Guess::Larger],
            },
            (Some(_), None) => vec![Guess::Way(Axis::Horizontal)],
            (None, Some(_)) => vec![Guess::Way(Axis::Vertical)],
            (None, None) => Vec::new(),
        });
        let open = |guess: &Guess| guesses.answer(*guess).is_none();
        all.into_iter().find(open)
    }

    /// The question for an estimate, with its numbered choices.
    pub(super) fn guess_question(&self, guess: Guess) -> Prose {
        let one_part = self
            .estimable()
            .is_some_and(|it| it.level.is_none() || it.upright.is_none());
        let key = match guess {
            Guess::Pull => "guess.ask.pull",
            Guess::Larger => "guess.ask.larger",
            Guess::Way(Axis::Horizontal) if one_part => "guess.ask.only-level",
            Guess::Way(Axis::Vertical) if one_part => "guess.ask.only-upright",
            Guess::Way(Axis::Horizontal) => "guess.ask.way-level",
            Guess::Way(Axis::Vertical) => "guess.ask.way-upright",
        };
        self.words.say(key, &self.guess_slots())
    }

    fn guess_slots(&self) -> Vec<(&'static str, Slot)> {
        let it = self.estimable();
        let title = |force: Option<ForceId>| {
            let title = force.map(|force| self.force_title(force));
            Slot::Word(title.unwrap_or_default())
        };
        vec![
            ("pull", title(it.and_then(|it| Some(it.pull?.0)))),
            ("hinge", title(it.and_then(|it| it.hinge))),
            ("body", Slot::Word(self.problem.body().noun.clone())),
        ]
    }

    /// The command that calls for estimates.
    pub(super) fn call_for_estimates(&mut self) -> Outcome {
        let (before, now) = (self.state.guesses.clone(), self.is_time());
        self.state.guesses = Guesses {
            called: true,
            asks: before.asks,
            ..Guesses::default()
        };
        if self.guess().is_some() {
            return estimate(self.words.say("guess.called", &[]));
        }
        self.state.guesses = before;
        let words_first = matches!(self.asked(), Some(StepId::Forces | StepId::Pivot));
        let key = match self.estimable() {
            Some(_) if !now && words_first && !self.is_free() => "guess.words-first",
            Some(_) if !now => "guess.too-late",
            _ => "guess.none",
        };
        Outcome::talk(self.words.say(key, &[]))
    }

    /// Takes a line as an estimate where one is asked for. Any other line passes the estimates over,
    /// but for one that asks for help or leaves.
    pub(super) fn answer_guess(&mut self, line: &str) -> Option<Outcome> {
        use command::Command;
        let guess = self.guess()?;
        if let Some(choice) = self.choice_of(guess, line) {
            self.state.guesses.said.push((guess, choice));
            let key = match choice {
                3 => "guess.unsure",
                _ => "guess.kept",
            };
            return Some(estimate(self.words.say(key, &[])));
        }
        let order = command::command(&self.words, line);
        if line.trim().is_empty() || order == Some(Command::Skip) {
            self.state.guesses.over = true;
            return Some(estimate(self.words.say("guess.passed", &[])));
        }
        let stays = matches!(
            order,
            Some(Command::Help | Command::Quit | Command::Estimate)
        );
        self.state.guesses.over = !stays;
        None
    }

    /// The number of the choice that a line is.
    pub(super) fn choice_of(&self, guess: Guess, line: &str) -> Option<u8> {
        let plain = line
            .trim()
            .trim_end_matches(['.', ')', '!'])
            .to_lowercase()
            .replace(['\u{2019}', '\''], "");
        let keys = match guess {
            Guess::Pull => ["guess.say.more", "guess.say.less"],
            Guess::Larger => ["guess.say.level", "guess.say.upright"],
            Guess::Way(Axis::Horizontal) => ["guess.say.left", "guess.say.right"],
            Guess::Way(Axis::Vertical) => ["guess.say.up", "guess.say.down"],
        };
        let is_in = |key: &str| {
            let all = self.words.word(key);
            all.split(',').any(|word| word.trim() == plain)
        };
        let [one, two] = keys;
        let choices = [("1", one), ("2", two), ("3", "guess.say.unsure")];
        let mut choices = choices.into_iter().zip(1..);
        choices
            .find_map(|((number, key), choice)| (plain == number || is_in(key)).then_some(choice))
    }

    /// What was estimated, beside what came out.
    pub(super) fn guesses_told(&self) -> Vec<Prose> {
        let Some(it) = self.estimable() else {
            return Vec::new();
        };
        let answer = |guess| {
            let said = self.state.guesses.answer(guess);
            said.filter(|choice| *choice < 3)
        };
        let mut told = Vec::new();
        if let (Some(choice), Some((_, pull, weights))) = (answer(Guess::Pull), it.pull) {
            let (more, less) = ("guess.more", "guess.less");
            let mut slots = self.guess_slots();
            slots.extend([
                ("expected", self.slot(if choice == 1 { more } else { less })),
                ("is", self.slot(if pull > weights { more } else { less })),
                ("size", self.newtons(pull)),
                ("weights", self.newtons(weights)),
            ]);
            told.push(self.words.say("guess.end.pull", &slots));
        }
        told.extend(self.hinge_guess_told(&it, &answer));
        told
    }

    fn hinge_guess_told(
        &self,
        it: &Estimable,
        answer: &dyn Fn(Guess) -> Option<u8>,
    ) -> Option<Prose> {
        let way = |axis: Axis| {
            let ways = match axis {
                Axis::Horizontal => ["guess.left", "guess.right"],
                Axis::Vertical => ["guess.up", "guess.down"],
            };
            let choice = answer(Guess::Way(axis))?;
            ways.get(usize::from(choice) - 1).map(|key| self.slot(key))
        };
        let acts = |axis: Axis, part: f64| {
            self.slot(match (axis, part > 0.0) {
                (Axis::Horizontal, true) => "guess.right",
                (Axis::Horizontal, false) => "guess.left",
                (Axis::Vertical, true) => "guess.up",
                (Axis::Vertical, false) => "guess.down",
            })
        };
        let mut slots = self.guess_slots();
        let (Some(level), Some(upright)) = (it.level, it.upright) else {
            let (axis, part) = match (it.level, it.upright) {
                (Some(level), _) => (Axis::Horizontal, level),
                (_, upright) => (Axis::Vertical, upright?),
            };
            slots.extend([
                ("expected", way(axis)?),
                ("size", self.newtons(part.abs())),
                ("way", acts(axis, part)),
            ]);
            return Some(self.words.say("guess.end.only", &slots));
        };
        let (axis, part) = match answer(Guess::Larger)? {
            1 => (Axis::Horizontal, "guess.level"),
            _ => (Axis::Vertical, "guess.upright"),
        };
        let way = way(axis);
        let key = match way {
            Some(_) => "guess.end.parts-way",
            None => "guess.end.parts",
        };
        slots.extend(way.map(|way| ("expected", way)));
        slots.extend([
            ("part", self.slot(part)),
            ("level", self.newtons(level.abs())),
            ("level-way", acts(Axis::Horizontal, level)),
            ("upright", self.newtons(upright.abs())),
            ("upright-way", acts(Axis::Vertical, upright)),
        ]);
        Some(self.words.say(key, &slots))
    }

    fn slot(&self, key: &str) -> Slot {
        Slot::Word(self.words.word(key))
    }

    fn newtons(&self, size: f64) -> Slot {
        let figures = self.problem.figures();
        Slot::Value(value_text(size, Dimension::FORCE, figures))
    }
}

/// What is said to an estimate: no verdict.
fn estimate(message: Prose) -> Outcome {
    Outcome {
        truth: "estimate",
        ..Outcome::talk(message)
    }
}
