//! The one place that joins the rooms: a line in, a [`Turn`] out.
//!
//! A session is a function of its problem and the lines entered: entering the same lines again
//! rebuilds it exactly, which is how a journal resumes it. It knows no terminal, file or clock.

mod acting;
mod again_by_form;
mod answer;
mod apart;
mod asked_of;
mod bearing;
mod before;
mod besides;
mod bodies;
mod chain_end;
mod changed;
mod command;
mod compared;
mod contact;
mod drawn;
mod estimate;
mod evidence;
mod example;
mod force_hint;
mod forces;
mod freely;
mod freely_again;
mod freely_back;
mod freely_seen;
mod freely_wide;
mod general;
mod given_meaning;
mod guided_back;
mod her_gravity;
mod in_force;
mod label_place;
mod labelled;
mod length_shares;
mod lengthwise;
mod lies;
mod line_shown;
mod lit;
mod meant;
mod measured;
mod member_length;
mod own_meant;
mod own_moment;
mod own_multiple;
mod own_named;
mod own_relations;
mod own_sums;
mod own_words;
mod pivot;
mod pivots;
mod placed;
mod probing;
mod ranked;
mod ranked_slips;
mod reasons;
mod reply;
mod restore;
mod roots;
mod said_again;
mod scene;
mod senses;
mod show;
mod sight;
mod speak;
mod state;
mod steer;
mod summary;
mod thought;
mod true_of_hers;
mod turn;
mod unit_told;
mod unknown_name;
mod waiting;
mod ways;
mod why;
mod worded;
mod worded_fit;
mod worked;
mod worked_from;
mod worked_keys;
mod working_line;
mod written_out;

pub use pivots::PivotPlace;
pub use ranked::{Ask, Ranked, Speaks, Thought};
pub use turn::{
    Course, Kept, LineView, NameView, Progress, Sign, StepView, Turn, View, Worked, WorkedLine,
};
pub use worked::Fading;
pub use working_line::working_line;
pub use written_out::Formulas;

use crate::hint::Case;
use crate::judge::statement::{Statement, Topic, read};
use crate::judge::{Board, Memo, Names, OwnName};
use crate::key::{Key, Pins, Sampling, StepId, Underivable, derive};
use crate::mistakes::{Instance, instances};
use crate::problem::Problem;
use crate::sketch::Sheet;
use crate::system::System;
use crate::text::{Formula, Prose, Words, printable, visible};
use crate::working::OtherValue;
use before::Before;
use state::State;
use std::sync::Arc;

/// The longest line that is taken, in characters.
pub const LONGEST_LINE: usize = crate::reading::LONGEST_LINE;
/// The most numbers in a line: what each may stand for is tried, and that takes its time.
const MOST_NUMBERS: usize = 60;

/// A learner at one problem. A copy goes on by itself from where the first one stands.
#[derive(Clone)]
pub struct Session {
    problem: Problem,
    key: Key,
    sampling: Sampling,
    instances: Vec<Instance>,
    sister: Option<(Problem, Key, Sampling)>,
    words: Words,
    /// The drawing of a general problem, in words.
    scene: Vec<Prose>,
    /// The drawing of a general problem, where one can be made.
    sheet: Option<Arc<Sheet>>,
    /// The bodies of a general problem.
    system: Option<Arc<System>>,
    /// The straight bodies of a general problem.
    straight: Vec<lies::Straight>,
    /// The body along which a length is sought.
    lengthwise: Option<lengthwise::Lengthwise>,
    /// The ropes and struts of known length of a general problem.
    members: Vec<member_length::Member>,
    /// The other values of what is sought, each with its working.
    others: Vec<OtherValue>,
    state: State,
    before: Before,
}

/// What one line brought about, before it becomes a [`Turn`].
struct Outcome {
    sign: Sign,
    verdict: &'static str,
    truth: &'static str,
    message: Prose,
    reading: Option<String>,
    caret: Option<crate::text::Span>,
    hint: Option<(u8, Prose)>,
    progress: Vec<StepId>,
    mistakes: Vec<&'static str>,
    numbered: bool,
    /// Lines of an example that are shown behind it.
    shown: Vec<LineView>,
}

impl Outcome {
    /// Something said without a verdict.
    fn talk(message: Prose) -> Outcome {
        Outcome {
            sign: Sign::Talk,
            verdict: "verdict.none",
            truth: "command",
            message,
            reading: None,
            caret: None,
            hint: None,
            progress: Vec::new(),
            mistakes: Vec::new(),
            numbered: false,
            shown: Vec::new(),
        }
    }

    /// A verdict on a line of the working.
    fn verdict(sign: Sign, verdict: &'static str, truth: &'static str, message: Prose) -> Outcome {
        Outcome {
            sign,
            verdict,
            truth,
            message,
            numbered: true,
            ..Outcome::talk(Prose::default())
        }
    }

    /// A line that is neither right nor wrong.
    fn noted(message: Prose) -> Outcome {
        Outcome::verdict(Sign::Noted, "verdict.noted", "noted", message)
    }
}

impl Session {
    /// Opens a problem. `sister` is another problem of the same lesson, worked in a hint.
    ///
    /// # Errors
    /// When no guided working exists for the problem.
    pub fn start(
        problem: Problem,
        sister: Option<Problem>,
        words: Words,
    ) -> Result<Session, Underivable> {
        let key = derive(&problem)?;
        let sampling = Sampling::of(&problem);
        let instances = instances(&problem, &key, &sampling);
        let sister = sister.and_then(|sister| {
            let key = derive(&sister).ok()?;
            let sampling = Sampling::of(&sister);
            Some((sister, key, sampling))
        });
        Ok(Session {
            problem,
            key,
            sampling,
            instances,
            sister,
            words,
            scene: Vec::new(),
            sheet: None,
            system: None,
            straight: Vec::new(),
            lengthwise: None,
            members: Vec::new(),
            others: Vec::new(),
            state: State::new(),
            before: Before::default(),
        })
    }

    /// The problem.
    pub fn problem(&self) -> &Problem {
        &self.problem
    }

    /// The key, for those who print it.
    pub fn key(&self) -> &Key {
        &self.key
    }

    /// The numbers at which functions are compared.
    pub fn sampling(&self) -> &Sampling {
        &self.sampling
    }

    /// The words in which the session speaks.
    pub fn words(&self) -> &Words {
        &self.words
    }

    /// How the session stands.
    pub fn course(&self) -> Course {
        self.state.course
    }

    /// Takes leaving back, after a replay of lines that ended with it.
    pub fn stay(&mut self) {
        if self.state.course == Course::Quit {
            self.state.course = Course::On;
        }
    }

    /// How a line that is being typed would be read, in mathematical layout; `None` where it is a
    /// command, words, or not readable yet. Never with a value.
    pub fn preview(&self, line: &str) -> Option<Formula> {
        let asked = self.asked();
        let estimated = |guess| self.choice_of(guess, line).is_some();
        if line.trim().is_empty()
            || self.guess().is_some_and(estimated)
            || command::command(&self.words, line).is_some()
            || self.reason_step().is_some()
            || matches!(asked, Some(StepId::Forces | StepId::Pivot))
            || asked.is_none() && !self.is_free()
        {
            return None;
        }
        let names = self.names();
        let readings = crate::reading::read(line, names.vocabulary()).ok()?;
        readings
            .first()
            .map(|reading| reading.formula(names.vocabulary()))
    }

    /// Takes a line and answers it.
    pub fn submit(&mut self, line: &str) -> Turn {
        let seen = visible(line);
        let line = seen.as_str();
        let before = self.at_hand();
        let guess = self.guess();
        let reasoned = self.reason_step().is_some();
        self.before.clear();
        let outcome = self.outcome(line);
        // A line is filed under what it settles, else under what was asked.
        let settled = outcome.progress.first().copied();
        let settled =
            settled.filter(|_| !outcome.progress.iter().any(|step| Some(*step) == before));
        let about = match self.is_free() {
            true => self.about_freely(&outcome),
            false => settled.or(before),
        };
        let about = about.map_or_else(String::new, |step| self.title(step));
        let number = outcome.numbered.then(|| {
            let number = self.state.next_number;
            self.state.next_number += 1;
            number
        });
        let view = LineView {
            number,
            text: printable(&shortened(line)),
            about,
            sign: outcome.sign,
            verdict: self.words.word(outcome.verdict),
            message: outcome.message.clone(),
            reading: outcome.reading,
            caret: outcome.caret,
            hints: outcome.hint.iter().map(|(_, hint)| hint.clone()).collect(),
            standing: true,
        };
        self.keep(view.clone(), outcome.truth == "hint");
        self.state.lines.extend(outcome.shown.iter().cloned());
        self.turn_to_asked();
        self.finish_if_worked();
        let after = self.at_hand();
        let kept = Kept {
            truth: outcome.truth.to_owned(),
            progress: outcome
                .progress
                .iter()
                .map(|step| self.step_name(*step))
                .collect(),
            mistakes: outcome.mistakes.iter().map(|id| (*id).to_owned()).collect(),
            confirmed: self.confirmed_now(),
            hint: outcome.hint.as_ref().map(|(stage, _)| *stage),
            message: outcome.message.to_string(),
        };
        Turn {
            line: view,
            shown: outcome.shown,
            question: self.question(),
            moved_on: before != after
                || guess != self.guess()
                || reasoned != self.reason_step().is_some(),
            course: self.state.course,
            kept,
        }
    }

    fn outcome(&mut self, line: &str) -> Outcome {
        let longest = [
            ("reading.too-long", line.chars().count(), LONGEST_LINE),
            ("reading.too-many-numbers", numbers_in(line), MOST_NUMBERS),
        ];
        if let Some((key, _, limit)) = longest.into_iter().find(|(_, is, limit)| is > limit) {
            let slots = [("limit", crate::text::Slot::Word(limit.to_string()))];
            let message = self.words.say(key, &slots);
            return Outcome::verdict(Sign::Unclear, "verdict.unclear", "too-long", message);
        }
        if let Some(outcome) = self.answer_guess(line) {
            return outcome;
        }
        let outcome = self.answer_why(line);
        if let Some(outcome) = outcome
            .or_else(|| self.answer_example(line))
            .or_else(|| self.begin_freely_about(line))
        {
            return outcome;
        }
        if let Some(command) = command::command(&self.words, line) {
            return self.steer(command);
        }
        let outcome = self.answered_at_step(line);
        let outcome = self.or_meant(line, outcome);
        self.with_unit_told(line, outcome)
    }

    fn answered_at_step(&mut self, line: &str) -> Outcome {
        match self.asked() {
            _ if self.is_free() && self.state.course == Course::On && !line.trim().is_empty() => {
                self.answer_freely(line)
            }
            None => Outcome::talk(self.words.say("talk.finished", &[])),
            Some(_) if line.trim().is_empty() => Outcome::talk(self.words.say("talk.empty", &[])),
            Some(StepId::Forces) => self.name_force(line),
            Some(StepId::Pivot) => self.choose_pivot(line),
            Some(_) if self.asks_why_pivot(line) => self.explain(Topic::Pivot),
            Some(step) => self
                .answer_renamed(line)
                .or_else(|| self.answer_unexplained(step, line))
                .or_else(|| self.answer_compared(step, line))
                .or_else(|| self.answer_measured(step, line))
                .unwrap_or_else(|| self.answer_asked(step, line)),
        }
    }

    /// Puts a line on the working. A hint is shown beneath the line that it speaks of: the last
    /// one, if that was to answer the same step and did not.
    fn keep(&mut self, view: LineView, is_hint: bool) {
        let open = self.open_line().map(|open| open.number);
        if is_hint
            && let Some(last) = self.state.lines.last_mut()
            && last.number.is_some()
            && last.about == view.about
            && (self.state.freely.is_none() || open == last.number)
            && matches!(last.sign, Sign::Wrong | Sign::Unclear | Sign::Incomplete)
        {
            last.hints.extend(view.hints);
            return;
        }
        self.state.lines.push(view);
    }

    /// Ends a guided problem of which no step is open any more; of a free one she says the end.
    fn finish_if_worked(&mut self) {
        if self.state.course == Course::On && self.at_hand().is_none() && !self.is_free() {
            self.state.course = Course::Finished;
        }
    }

    /// The step that is asked now.
    pub(crate) fn asked(&self) -> Option<StepId> {
        self.key
            .asked()
            .map(|step| step.id)
            .find(|id| !self.state.reached.contains_key(id))
    }

    fn names(&self) -> Names {
        let own: Vec<_> = self
            .state
            .own_names
            .iter()
            .map(|(symbol, own)| (symbol.clone(), own.dimension))
            .collect();
        self.with_told_names(Names::asking(
            &self.problem,
            &self.key,
            &own,
            self.asked_by_names(),
        ))
    }

    fn own_values(&self) -> Vec<OwnName> {
        self.state
            .own_names
            .iter()
            .map(|(_, own)| own.clone())
            .collect()
    }

    fn board<'a>(&'a self, names: &'a Names, own_names: &'a [OwnName]) -> Board<'a> {
        Board {
            problem: &self.problem,
            key: &self.key,
            sampling: &self.sampling,
            names,
            standing: &self.state.standing,
            own_names,
            carried: &self.state.carried,
            turned: &[],
            earlier: &self.state.earlier,
            on_body: None,
            on_next: &[],
            wide: self.state.wide,
            effort: Some(self.before.effort()),
            memo: Memo::default(),
        }
    }

    fn case(&self) -> Case<'_> {
        Case {
            problem: &self.problem,
            key: &self.key,
            sampling: &self.sampling,
            own: Pins::new(),
        }
    }

    fn sister_case(&self) -> Option<Case<'_>> {
        self.sister.as_ref().map(|(problem, key, sampling)| Case {
            problem,
            key,
            sampling,
            own: Pins::new(),
        })
    }

    /// "Why the hinge?", asked after the pivot was taken.
    fn asks_why_pivot(&self, line: &str) -> bool {
        let why = self.words.word("statement.why");
        let first = line
            .split_whitespace()
            .next()
            .unwrap_or_default()
            .to_lowercase();
        why.split(',').any(|word| word.trim() == first)
            && read(&self.problem, &self.words, line) == Statement::Asks(Topic::Pivot)
    }

    fn title(&self, step: StepId) -> String {
        if self.is_general() {
            return crate::hint::general_title(&self.words, &self.key, step);
        }
        crate::hint::step_title(&self.words, &self.problem, step)
    }
}

/// A line of any length cut to what a screen can bear.
fn shortened(line: &str) -> String {
    if line.chars().count() <= LONGEST_LINE {
        return line.to_owned();
    }
    line.chars().take(60).chain("…".chars()).collect()
}

/// How many numbers stand in a line.
fn numbers_in(line: &str) -> usize {
    let part = |c: char| !(c.is_ascii_digit() || matches!(c, '.' | ','));
    let words = line.split(part);
    words
        .filter(|word| word.contains(|c: char| c.is_ascii_digit()))
        .count()
}
