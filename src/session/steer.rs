//! Commands: help, hints, going back and on.

use super::command::Command;
use super::state::Open;
use super::turn::{Course, LineView, Progress, Sign};
use super::{Outcome, Session};
use crate::hint::{STAGES, hint};
use crate::judge::{Own, Truth};
use crate::key::StepId;
use crate::mistakes::WRONG_LEG;
use crate::problem::ForceId;
use crate::text::{Prose, Slot};
use std::collections::BTreeMap;

impl Session {
    /// Follows a command.
    pub(super) fn steer(&mut self, command: Command) -> Outcome {
        if command == Command::Quit {
            self.state.course = Course::Quit;
            return Outcome::talk(self.words.say("talk.quit", &[]));
        }
        match command {
            Command::Freely => return self.begin_freely(),
            Command::Estimate => return self.call_for_estimates(),
            Command::Guided if self.is_free() => return self.end_freely(),
            _ => {}
        }
        if let Some(outcome) = self.steer_freely(command) {
            return outcome;
        }
        let helps = matches!(command, Command::Hint | Command::Show);
        let open = self.step_of_open().filter(|_| helps);
        let all_found = self.is_free() && self.wanted_freely().is_none();
        if command == Command::Hint && open.is_none() && all_found {
            return Outcome::talk(self.question_freely());
        }
        let ahead = || self.asked_ahead().filter(|_| helps);
        let Some(asked) = open.or_else(ahead).or_else(|| self.asked()) else {
            return match command {
                Command::Back => self.back(),
                _ => Outcome::talk(self.words.say("talk.finished", &[])),
            };
        };
        match command {
            Command::Help => Outcome::talk(self.help(asked)),
            Command::Hint => self.next_hint(asked),
            Command::Show => self.show(asked),
            Command::Skip => self.skip(asked),
            Command::Back => self.back(),
            Command::GoOn => self.go_on(asked, false),
            Command::Dispute => self.go_on(asked, true),
            Command::Done if asked == StepId::Forces => self.forces_done(),
            Command::Done if self.may_end() => self.end_without(),
            Command::Done => Outcome::talk(self.not_done(asked)),
            Command::Guided => Outcome::talk(self.words.say("talk.guided", &[])),
            Command::Freely | Command::Estimate | Command::Quit => Outcome::talk(Prose::default()),
        }
    }

    /// What is still to be found before a problem may end.
    fn not_done(&self, asked: StepId) -> Prose {
        let step = ("step", Slot::Word(self.title(asked)));
        match self.still_wanted() {
            Some(wanted) => {
                let slots = [step, ("wanted", Slot::Word(wanted))];
                self.words.say("general.not-done", &slots)
            }
            None => self.words.say("talk.not-done", &[step]),
        }
    }

    pub(super) fn help(&self, asked: StepId) -> Prose {
        let about = match asked {
            StepId::Forces => "help.forces",
            StepId::Pivot => "help.pivot",
            _ => "help.value",
        };
        self.words
            .say(about, &self.example_numbers())
            .then(self.words.say("help.commands", &[]))
    }

    fn next_hint(&mut self, asked: StepId) -> Outcome {
        let stage = (self.state.hint_stage + 1).min(STAGES);
        if asked == StepId::Forces {
            return self.hint_at_a_force(stage);
        }
        if stage == STAGES && self.state.hint_stage < STAGES {
            self.state.hint_stage = stage;
            return self.show(asked);
        }
        self.note_hint(asked, stage);
        // A wrong line about another step does not turn the hint away from what is asked.
        let about = |target: StepId| {
            self.is_free()
                || target == asked
                || asked == StepId::MomentSum && matches!(target, StepId::Pull(_))
                || matches!(asked, StepId::Pull(_)) && target == StepId::MomentSum
        };
        let open = self.open_line().filter(|_| self.may_help_open());
        let spoken = open
            .filter(|open| about(open.judgement.target))
            .and_then(|open| {
                open.diagnosis
                    .spoken()
                    .map(|named| (named.instance, open.judgement.target))
            });
        let target = spoken.map(|(_, target)| target);
        // The part of a force is looked at by itself before the balance that it stands in.
        let part = open.map(|open| open.judgement.target);
        let part = part.filter(|target| {
            spoken.is_none() && stage < STAGES - 1 && matches!(target, StepId::PartOf(..))
        });
        let told = target.filter(|_| !self.is_free());
        let step = part.or(told).unwrap_or(asked);
        // An angle has no legs yet: what is said of the triangle belongs to the component.
        let angle = matches!(step, StepId::Angle(_));
        let named = spoken
            .map(|(instance, _)| &self.instances[instance])
            .filter(|named| !(angle && named.mistake.family == WRONG_LEG));
        let slipped = open.filter(|open| about(open.judgement.target) && spoken.is_none());
        if let Some(prose) = slipped.and_then(|open| self.slip_hint(open, stage)) {
            return self.hint_given(stage, prose);
        }
        let prose = hint(
            &self.words,
            &self.case(),
            step,
            named,
            self.sister_case().as_ref(),
            stage,
        );
        self.hint_given(stage, prose)
    }

    /// After a slip of the pen or of the keys the first hints are about the sum, and not about
    /// statics; where another angle belongs in a right form they are about that.
    fn slip_hint(&self, open: &Open, stage: u8) -> Option<Prose> {
        let evidence = &open.judgement.evidence;
        let about = match open.diagnosis.slip || open.diagnosis.pen_slip {
            true if evidence.alone => "value",
            true => "sum",
            false => evidence.wrong_angle.map(|_| "other-angle")?,
        };
        let stage = match stage {
            1 => "look",
            2 => "place",
            _ => return None,
        };
        Some(self.words.say(&format!("hint.{about}.{stage}"), &[]))
    }

    /// The step that is looked for next in a free working: the ways to what is found already are
    /// behind her, however she found it, and so are those to a balance that she has.
    fn asked_ahead(&self) -> Option<StepId> {
        if !self.is_free() || self.is_general() {
            return None;
        }
        let has = |id: &StepId| matches!(id, StepId::MomentSum | StepId::Pull(_));
        let reached = |id: &StepId| self.state.reached.contains_key(id);
        let found = || self.state.reached.keys().filter(|id| has(id));
        let mut asked = self.key.asked().map(|step| step.id);
        asked.find(|id| !reached(id) && found().any(|found| self.leads_to(*found, *id)))
    }

    pub(super) fn note_hint(&mut self, asked: StepId, stage: u8) {
        self.state.hint_stage = stage;
        let deepest = self.state.hinted.entry(asked).or_default();
        *deepest = (*deepest).max(stage);
    }

    pub(super) fn hint_given(&self, stage: u8, prose: Prose) -> Outcome {
        let left = [("left", Slot::Word((STAGES - stage).to_string()))];
        let mut outcome = Outcome::talk(self.words.say("talk.hint-given", &left));
        outcome.truth = "hint";
        outcome.hint = Some((stage, prose));
        outcome
    }

    fn skip(&mut self, asked: StepId) -> Outcome {
        self.pass(asked);
        let key = match asked {
            StepId::Forces | StepId::Pivot => "talk.skipped-words",
            step if step.is_balance() => "talk.skipped-balance",
            _ => "talk.skipped",
        };
        let mut outcome = Outcome::talk(
            self.words
                .say(key, &[("step", Slot::Word(self.title(asked)))]),
        );
        outcome.truth = "skipped";
        outcome
    }

    /// True for a step of the guided way that stands before another.
    pub(super) fn leads_to(&self, step: StepId, other: StepId) -> bool {
        let place = |id: StepId| self.key.asked().position(|step| step.id == id);
        place(step)
            .zip(place(other))
            .is_some_and(|(step, other)| step < other)
    }

    /// True once everything is found that the problem asks for, though steps of the guided way are
    /// still open.
    pub(super) fn may_end(&self) -> bool {
        if let Some(found) = self.has_wanted() {
            return found && self.asked().is_some();
        }
        let sought = |id: &StepId| matches!(id, StepId::Pull(_) | StepId::Reaction(..));
        let open = |id: &StepId| !self.state.reached.contains_key(id);
        let asked = || self.key.asked().map(|step| step.id).filter(open);
        asked().next().is_some()
            && !asked().any(|id| sought(&id) || matches!(id, StepId::Forces | StepId::Pivot))
    }

    /// Ends a problem that was worked another way; what that way did without is not passed over.
    fn end_without(&mut self) -> Outcome {
        while let Some(open) = self.asked() {
            self.pass(open);
            self.state.done_without.insert(open);
        }
        let mut outcome = Outcome::talk(self.words.say("talk.done-without", &[]));
        outcome.truth = "skipped";
        outcome
    }

    /// Goes past a step. What it would have said is taken as said.
    pub(super) fn pass(&mut self, asked: StepId) {
        if asked == StepId::Forces {
            for force in self.problem.forces() {
                self.state.name(force.id);
            }
            self.state.pending.clear();
        }
        if asked == StepId::Pivot {
            self.state.pivot_said = true;
        }
        self.state.standing.remove(&asked);
        self.passed_balance(asked);
        let function = match asked {
            StepId::Forces | StepId::Pivot => None,
            step if step.is_balance() => None,
            step => self
                .key
                .function(&self.key, step, &self.sampling, &BTreeMap::new()),
        };
        if let Some(function) = function {
            let own = Own {
                relation: !self.is_number(asked),
                ..Own::right(function, 0)
            };
            self.state.standing.insert(asked, own);
        }
        self.state.told.insert(asked);
        self.reach(asked, Progress::Passed);
    }

    /// Takes the line back that waits to be mended; what was right before it stands.
    fn open_back(&mut self) -> Option<Outcome> {
        let open = self.state.open.take()?;
        self.state.hint_stage = 0;
        let waits = |view: &&mut LineView| view.number == Some(open.number);
        if let Some(view) = self.state.lines.iter_mut().find(waits) {
            view.standing = false;
        }
        let asked = self.asked();
        let slots = [
            ("line", Slot::Word(open.number.to_string())),
            (
                "step",
                Slot::Word(asked.map_or_else(String::new, |step| self.title(step))),
            ),
        ];
        Some(withdrawn(self.words.say("talk.line-taken-back", &slots)))
    }

    /// Takes the latest line back: the one that waits to be mended, or else the latest answer,
    /// whose step is asked again.
    fn back(&mut self) -> Outcome {
        if let Some(outcome) = self.open_back() {
            return outcome;
        }
        if let Some(outcome) = self.force_back() {
            return outcome;
        }
        let latest = self
            .state
            .reached
            .iter()
            .filter(|(step, _)| !self.is_of_example(**step))
            .filter_map(|(step, (_, line))| line.map(|line| (line, self.key.rank(*step), *step)))
            .max();
        let Some((line, _, step)) = latest else {
            return Outcome::talk(self.words.say("talk.nothing-back", &[]));
        };
        let together: Vec<StepId> = self
            .state
            .reached
            .iter()
            .filter(|(_, (_, at))| *at == Some(line))
            .map(|(step, _)| *step)
            .collect();
        for step in &together {
            self.state.reached.remove(step);
            self.state.standing.remove(step);
            self.state.gone_on.remove(step);
            self.state.done_without.remove(step);
        }
        let number = self.state.lines.get(line).and_then(|line| line.number);
        self.state
            .standing
            .retain(|_, own| Some(own.line) != number);
        if let Some(view) = self.state.lines.get_mut(line) {
            view.standing = false;
        }
        // What earlier lines named stands.
        let forces = match together.contains(&StepId::Forces) {
            true => self.state.unname(line),
            false => Vec::new(),
        };
        let was_told = self.state.told.contains(&StepId::Forces);
        if together.contains(&StepId::Pivot) {
            self.state.pivot_said = false;
            self.state.other_pivot = None;
        }
        self.state
            .carried
            .retain(|(step, _)| !together.contains(step));
        self.state.open = None;
        self.state.hint_stage = 0;
        self.state.course = Course::On;
        if !forces.is_empty() && !was_told {
            return self.forces_withdrawn(&forces);
        }
        let slots = [("step", Slot::Word(self.title(step)))];
        withdrawn(self.words.say("talk.taken-back", &slots))
    }

    /// Takes back what was last said at the first step: the force that waits for its place or its
    /// way, what was said of no force in particular, or what the last line named.
    fn force_back(&mut self) -> Option<Outcome> {
        if self.asked() != Some(StepId::Forces) {
            return None;
        }
        if self.state.loose.take().is_some() {
            return self.loose_back();
        }
        let forces = match self.state.pending.is_empty() {
            false => vec![self.state.pending.remove(0).force],
            true => {
                let last = self.state.named.last()?;
                let line = *self.state.named_at.get(last)?;
                self.state.unname(line)
            }
        };
        self.state.open = None;
        self.state.hint_stage = 0;
        Some(self.forces_withdrawn(&forces))
    }

    /// Takes back the last line, of which it was asked what it speaks of.
    fn loose_back(&mut self) -> Option<Outcome> {
        let view = self.state.lines.iter_mut().rev();
        let view = view.into_iter().find(|view| view.number.is_some())?;
        view.standing = false;
        let line = view.number?.to_string();
        let step = self.title(StepId::Forces);
        let slots = [("line", Slot::Word(line)), ("step", Slot::Word(step))];
        Some(withdrawn(self.words.say("talk.line-taken-back", &slots)))
    }

    fn forces_withdrawn(&self, forces: &[ForceId]) -> Outcome {
        let titles: Vec<String> = forces.iter().map(|id| self.force_title(*id)).collect();
        let slots = [("force", Slot::Word(titles.join(", ")))];
        let key = match self.state.pending.is_empty() {
            true => "talk.force-taken-back",
            false => "talk.force-taken-back-open",
        };
        withdrawn(self.words.say(key, &slots))
    }

    /// Goes on with a wrong line as it stands: what follows from it is right.
    fn go_on(&mut self, asked: StepId, disputed: bool) -> Outcome {
        let Some(open) = self.state.open.clone() else {
            let key = if disputed {
                "talk.nothing-disputed"
            } else {
                "talk.nothing-open"
            };
            return Outcome::talk(self.words.say(key, &[]));
        };
        // An equation that does not hold gives no value for what is asked.
        if open.judgement.evidence.false_equation {
            return Outcome::talk(self.words.say("talk.no-value", &[]));
        }
        let left = self.left_by(&open, asked);
        // The number is right where only its unit or its figures are not.
        let number_right = matches!(
            open.judgement.truth,
            Truth::WrongUnit { .. } | Truth::TooFewFigures
        );
        let relation = left.relation && left.carried.is_some();
        let gives_value = left.own.is_some() || number_right || relation;
        if !gives_value && !disputed {
            return Outcome::talk(self.words.say("talk.no-value", &[]));
        }
        let target = left.target;
        self.state.gone_on.insert(target, gives_value);
        if let Some(own) = left.own {
            self.state.put(target, own);
        }
        if left.relation {
            self.state.carried.extend(left.carried);
        }
        self.reach(target, Progress::Done);
        let key = if disputed {
            "talk.disputed"
        } else {
            "talk.carried"
        };
        let slots = [("line", Slot::Word(open.number.to_string()))];
        let mut outcome = Outcome::talk(self.words.say(key, &slots));
        outcome.truth = if disputed { "disputed" } else { "carried" };
        outcome.sign = Sign::Talk;
        outcome
    }
}

/// Something taken back.
fn withdrawn(message: Prose) -> Outcome {
    Outcome {
        truth: "withdrawn",
        ..Outcome::talk(message)
    }
}
