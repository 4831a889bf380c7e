//! Working freely: lines in any order and by any method, and no step is asked.
//!
//! What holds by the right key counts, whatever wrong values stand before it, so who mends a slip
//! in silence is right. Else the line is judged beside her own wrong values, which stay in force
//! without being asked about. A line that is taken back, or in whose place another stands, is
//! undone by working the others anew (`freely_back.rs`).

use super::command::Command;
use super::state::{Freely, Open};
use super::turn::{Course, Progress, Sign, verdict_of};
use super::{Outcome, Session};
use crate::diagnosis::diagnose_of;
use crate::judge::{Aside, Judgement, NameRole, Own, Remark, Truth, nearest_inputs, own_of_wrong};
use crate::key::{StepId, agree};
use crate::reading::{Node, Tree, read};
use crate::text::{Prose, Slot};
use std::collections::BTreeMap;

impl Session {
    /// True while lines are taken in any order and no step is asked.
    pub(super) fn is_free(&self) -> bool {
        self.state.freely.is_some()
    }

    /// From here on no step is asked. Which forces act, and the pivot, are hers to choose.
    pub(super) fn begin_freely(&mut self) -> Outcome {
        if !self.is_free() {
            let said = self.said_so_far();
            while let Some(step @ (StepId::Forces | StepId::Pivot)) = self.asked() {
                self.pass(step);
            }
            self.state.open = None;
            let base = Box::new(self.state.clone());
            self.state.freely = Some(Freely {
                base,
                said,
                seen: BTreeMap::new(),
                lines: Vec::new(),
                void: BTreeMap::new(),
                fallen: BTreeMap::new(),
                shown: Vec::new(),
                told_by: BTreeMap::new(),
                now: String::new(),
            });
        }
        let mut outcome = Outcome::talk(self.words.say("talk.freely", &[]));
        outcome.truth = "freely";
        outcome
    }

    /// From here on the steps are asked again, from the first that is still open.
    pub(super) fn end_freely(&mut self) -> Outcome {
        let unsaid = self.forces_in_sight().len() < self.problem.forces().len();
        self.state.freely = None;
        self.state.open = None;
        // What is asked from here on names every force.
        let key = match unsaid || !self.state.pivot_said {
            true => "talk.guided-unsaid",
            false => "talk.guided",
        };
        let mut outcome = Outcome::talk(self.words.say(key, &[]));
        outcome.truth = "guided";
        outcome
    }

    /// The step that is asked, or where all is found in a free working, the last one.
    pub(super) fn asked_now(&self) -> Option<StepId> {
        let last = || self.key.asked().last().map(|step| step.id);
        self.asked().or_else(|| last().filter(|_| self.is_free()))
    }

    /// A line of a free working.
    pub(super) fn answer_freely(&mut self, line: &str) -> Outcome {
        let instead = self.instead_of(line);
        let (gone, rest) = match instead {
            Some((number, rest)) => (self.withdraw(number), rest),
            None => (None, line.to_owned()),
        };
        let rest = self.with_own_moments(&rest).unwrap_or(rest);
        let wrong = self.wrong_in_force();
        let outcome = self.work_freely(&rest);
        let mut outcome = self.as_sum_of_label(&rest, outcome);
        self.take_in_sight(&rest, &outcome);
        let label = self
            .other_axis_told(&rest, &outcome)
            .or_else(|| self.other_point_told(&rest, &outcome))
            .or_else(|| self.other_place_told(&rest, &outcome));
        if let Some(told) = label {
            outcome.message = outcome.message.then(told);
        }
        let number = self.state.next_number;
        if let Some(freely) = self.state.freely.as_mut().filter(|_| outcome.numbered) {
            freely.lines.push((number, rest, outcome.truth));
        }
        let mended = self.mended(&wrong, number);
        if !mended.is_empty()
            && let Some(changed) = self.worked_mended(&mended, number)
        {
            outcome.message = outcome.message.then(changed);
        }
        let Some(gone) = gone else { return outcome };
        Outcome {
            message: gone.then(outcome.message),
            ..outcome
        }
    }

    /// Judges a line as one statement, and takes what it establishes or leaves behind.
    pub(super) fn work_statement(&mut self, line: &str) -> Outcome {
        let Some(asked) = self.asked_now() else {
            return Outcome::talk(self.words.say("talk.finished", &[]));
        };
        if let Some(freely) = &mut self.state.freely {
            line.clone_into(&mut freely.now);
        }
        self.before.effort().renew();
        let friction = self.friction_under_f(line);
        let line = friction.as_deref().unwrap_or(line);
        let labelled = self.without_name_label(asked, line);
        let line = labelled.as_deref().unwrap_or(line);
        let meant = self.with_meanings(asked, line);
        let line = meant.as_str();
        let in_words = self
            .answer_pivot_freely(line)
            .or_else(|| self.answer_broken_off(line))
            .or_else(|| self.asks_capital(asked, line))
            .or_else(|| self.answer_renamed(line))
            .or_else(|| self.answer_unexplained(asked, line))
            .or_else(|| self.answer_other_case(line))
            .or_else(|| self.answer_compared(asked, line))
            .or_else(|| self.answer_chain_compared(asked, line))
            .or_else(|| self.answer_worded(asked, line))
            .or_else(|| self.answer_of_another_kind(asked, line))
            .or_else(|| self.answer_measured(asked, line))
            .or_else(|| self.answer_member_length(asked, line));
        let outcome = in_words.unwrap_or_else(|| self.answer(asked, line));
        if matches!(outcome.sign, Sign::Wrong | Sign::Incomplete) {
            self.leave_in_force(asked);
        }
        self.settle_names();
        outcome
    }

    /// The unknowns named in a line that are not found yet, and what is made of them.
    pub(super) fn open_names(&self, judgement: &Judgement) -> Vec<StepId> {
        let named = judgement.evidence.rests_on.iter();
        let tells = judgement.evidence.tells.iter();
        let open = |id: &StepId| {
            let unknown = id.is_unknown() || !self.is_number(*id);
            unknown && !self.state.reached.contains_key(id)
        };
        let steps = tells.chain(named).copied();
        // A part of a force that is not found yet is no nearer than that.
        let behind = |id: StepId| match open(&id) {
            true => vec![id],
            false => self.key.open_in(id).into_iter().filter(open).collect(),
        };
        let mut found: Vec<StepId> = steps.flat_map(behind).collect();
        // A name of hers may stand for a multiple of the unknown.
        let unknown = self
            .key
            .unknown()
            .filter(|id| open(id) && *id != judgement.target);
        let rests = judgement.remarks.contains(&Remark::RestsOnOpen) && self.types_multiple();
        found.extend(unknown.filter(|_| found.is_empty() && rests));
        found
    }

    /// True for a quantity told by names that were told by it: `T = Hx/cos β` after `Hx = T cos β` finds
    /// neither.
    pub(super) fn goes_in_circle(&mut self, told: StepId, judgement: &Judgement) -> bool {
        let evidence = &judgement.evidence;
        // What was found by a value may be said in another way.
        let state = &mut self.state;
        let valued = state.reached.contains_key(&told) && !state.in_names.contains(&told);
        let freely = state.freely.as_mut();
        let Some(freely) = freely.filter(|_| evidence.names_only && !told.is_balance()) else {
            return false;
        };
        let named = evidence.rests_on.iter().filter(|id| **id != told);
        let named: Vec<StepId> = named.copied().collect();
        let (mut behind, mut seen) = (named.clone(), Vec::new());
        while let Some(id) = behind.pop() {
            if id == told {
                return !valued;
            }
            if !seen.contains(&id) {
                behind.extend(freely.told_by.get(&id).into_iter().flatten());
                seen.push(id);
            }
        }
        freely.told_by.insert(told, named);
        false
    }

    /// That a line holds, and what is still unknown in it.
    pub(super) fn holds_with(&self, open: &[StepId]) -> Prose {
        let names = open.iter().filter_map(|id| self.key.step(*id));
        let mut names: Vec<String> = names.map(|step| step.symbol.shown()).collect();
        names.dedup();
        if names.is_empty() {
            return self.words.say("talk.holds", &[]);
        }
        let slots = [("unknowns", Slot::Name(names.join(", ")))];
        self.words.say("talk.holds-with", &slots)
    }

    /// What counts of a judged line that would only be noted where a step is asked: what is true
    /// is right, and a right form is never asked for its number. `named` where a thought is told.
    pub(super) fn counted_freely(
        &mut self,
        outcome: Outcome,
        judgement: &Judgement,
        named: bool,
    ) -> Outcome {
        // Of an expression by itself nobody can tell what it is meant for.
        let one_side = !judgement
            .layout
            .as_deref()
            .is_some_and(|line| line.contains(['=', '≈']));
        let refused = judgement.truth == Truth::DoesNotHold && outcome.sign == Sign::Wrong;
        if refused && one_side && !named && judgement.evidence.misread.is_none() {
            self.state.open = None;
            let asks = Outcome::noted(self.words.say("talk.freely-what", &[]));
            return Outcome {
                reading: outcome.reading,
                ..asks
            };
        }
        let in_names = judgement.truth.holds() && self.is_only_in_names(judgement);
        if in_names && outcome.sign != Sign::Wrong && !self.is_unknown_name(judgement) {
            return self.told_in_names(judgement.target, judgement, outcome.reading);
        }
        // A wrong value of hers told once more follows from itself; told again as it was refused, it
        // says nothing new.
        let again = judgement.own_again_of();
        let said = again.is_some_and(|first| self.was_refused(first));
        if outcome.sign == Sign::Noted && again.is_some() && !said {
            let (sign, verdict) = verdict_of("follows");
            return Outcome {
                sign,
                verdict,
                truth: "follows",
                ..outcome
            };
        }
        let says_less = |remark: &Remark| {
            matches!(
                remark,
                Remark::SaysNothing
                    | Remark::OfNumbers
                    | Remark::SaidAlready(_)
                    | Remark::OwnAgain(_)
                    | Remark::NotSeen
                    | Remark::ByChance
                    | Remark::LeaveLetter
                    | Remark::OtherName(_)
                    | Remark::SignAndWay
            )
        };
        // What those that stand say together, with one unknown left, is a step on.
        let joins = |remark: &Remark| matches!(remark, Remark::SaidAlready(_));
        if outcome.sign == Sign::Noted && judgement.remarks.iter().any(joins) {
            let open = self.open_names(judgement);
            if open.len() == 1 {
                let outcome_right = right(self.holds_with(&open));
                return Outcome {
                    reading: outcome.reading,
                    ..outcome_right
                };
            }
        }
        let lines = &judgement.evidence.follows;
        if outcome.sign == Sign::Noted && judgement.truth == Truth::Noted && !lines.is_empty() {
            let open = self.open_names(judgement);
            let (sign, verdict) = verdict_of("follows");
            return Outcome {
                sign,
                verdict,
                truth: "follows",
                message: self.own_lines(lines).then(self.holds_with(&open)),
                ..outcome
            };
        }
        // The value of another quantity is no value of the one named.
        let of_another = judgement.remarks.iter().find_map(|remark| match remark {
            Remark::OtherName(named) => Some(*named),
            _ => None,
        });
        if let Some(named) = of_another.filter(|_| outcome.sign == Sign::Noted) {
            // Whose value it is is told only of a given, or of what she has found.
            let meant = judgement.target;
            let found = self.state.standing.get(&meant).is_some_and(|own| own.right);
            let message = match found || meant.is_of_givens() {
                true => outcome.message,
                false => self.not_yet(named),
            };
            self.leave_under_name(named, judgement);
            let (sign, verdict) = verdict_of("wrong");
            let wrong = Outcome::verdict(sign, verdict, "wrong", message);
            return Outcome {
                reading: outcome.reading,
                ..wrong
            };
        }
        let noted = outcome.sign == Sign::Noted && judgement.truth == Truth::Noted;
        let is_true = judgement.proved || judgement.evidence.aside == Some(Aside::True);
        if !noted
            || !is_true
            || judgement.names.is_some()
            || judgement.remarks.iter().any(says_less)
        {
            return outcome;
        }
        if let Some(step) = judgement.evidence.tells {
            return self.told_in_names(step, judgement, outcome.reading);
        }
        Outcome {
            reading: outcome.reading,
            ..right(outcome.message)
        }
    }

    /// True for a form with names in it that are not found yet. What follows from a wrong value of
    /// hers is her value all the same.
    pub(super) fn is_only_in_names(&self, judgement: &Judgement) -> bool {
        let follows = self.is_free() && matches!(judgement.truth, Truth::Follows(_));
        judgement.remarks.contains(&Remark::RestsOnOpen) && !follows
    }

    /// A step told by a right form: found once all that stands in it is found. Where it has no
    /// value of hers yet, none is shown.
    fn told_in_names(
        &mut self,
        step: StepId,
        judgement: &Judgement,
        reading: Option<String>,
    ) -> Outcome {
        if self.goes_in_circle(step, judgement) {
            let noted = Outcome::noted(self.words.say("general.said-already-freely", &[]));
            return Outcome { reading, ..noted };
        }
        let mut open = self.open_names(judgement);
        open.retain(|id| *id != step);
        let mut outcome = right(self.holds_with(&open).then(self.senses_taken(judgement)));
        outcome.reading = reading;
        if open.is_empty() {
            self.reach_in_names(step);
            outcome.progress = vec![step];
        } else {
            self.state.open = None;
            self.state.pending_names.push((step, open));
        }
        outcome
    }

    fn reach_in_names(&mut self, step: StepId) {
        let known = self.state.standing.get(&step).is_some_and(|own| own.right);
        if !known {
            self.state.in_names.insert(step);
        }
        self.reach(step, Progress::Done);
    }

    /// Takes what was told in names as found where all that stands in it is found by now.
    fn settle_names(&mut self) {
        loop {
            let reached = &self.state.reached;
            let found =
                |(_, open): &(StepId, Vec<StepId>)| open.iter().all(|id| reached.contains_key(id));
            let Some(at) = self.state.pending_names.iter().position(found) else {
                return;
            };
            let (step, _) = self.state.pending_names.remove(at);
            if !self.state.reached.contains_key(&step) {
                self.reach_in_names(step);
            }
        }
    }

    /// What a line that does not hold leaves behind: her value, and the working that it is right
    /// in. Nobody is asked whether to go on with it.
    fn leave_in_force(&mut self, asked: StepId) {
        let Some(open) = self.state.open.clone() else {
            return;
        };
        // A number of which it is not said what it is leaves nothing.
        let judgement = &open.judgement;
        let said = !judgement.evidence.alone
            || open.diagnosis.spoken().is_some()
            || self.names_target(judgement);
        if judgement.evidence.false_equation || !said || self.speaks_of_others(judgement) {
            return;
        }
        // A number in another unit is none of hers yet, and the right value is not for show.
        if matches!(judgement.truth, Truth::WrongUnit { .. }) {
            return;
        }
        // `sin 65 = 0.5` and `W1/Wb = 1.3` are worked out wrongly, and no attempt at a pull; nor is
        // `W1² = 68600` another value of a W1 that has one.
        let named = self.named_in_form();
        let target = &judgement.target;
        let has_one = || self.state.standing.contains_key(target);
        let elsewhere = match named.as_deref() {
            Some(named) if named.contains(target) => {
                named.iter().all(|step| step == target) && has_one()
            }
            Some(_) => !target.is_balance() && !self.is_meant_so(&open),
            None => false,
        };
        if elsewhere {
            return;
        }
        // A pull told by its name is no balance solved.
        let asked = match judgement.target {
            pull @ StepId::Pull(_) => pull,
            _ => asked,
        };
        let left = self.left_by(&open, asked);
        if let Some(own) = left.own {
            let coarse = self.coarsely_right(&open, left.target, &own);
            // As with a value that holds, its sign tells in which sense a part is counted.
            let turned = coarse
                .as_ref()
                .is_some_and(|own| own.value * own.function[0] < 0.0);
            if turned && left.target.has_free_sense() {
                let number = self.state.next_number;
                self.state
                    .senses
                    .entry(left.target)
                    .or_insert((true, number));
            }
            let counted = || self.in_sense_counted(left.target, own, &open.judgement);
            let own = coarse.unwrap_or_else(counted);
            self.state.put(left.target, own);
        }
        if left.relation {
            self.state.carried.extend(left.carried);
        }
    }

    /// True for numbers that show what they are meant for: by a value, by a thought that was told, or
    /// by the right form.
    fn is_meant_so(&self, open: &Open) -> bool {
        let judgement = &open.judgement;
        let own = &BTreeMap::new();
        let right = self.key.samples(judgement.target, &self.sampling, own);
        let mut forms = judgement.evidence.lifted.iter();
        judgement.evidence.alone
            || open.diagnosis.spoken().is_some()
            || right.is_some_and(|right| forms.any(|form| agree(form, &right)))
    }

    /// The steps whose names stand in the relation that is answered; `None` for an expression, for a
    /// definition, and where a name stands alone on its side.
    fn named_in_form(&self) -> Option<Vec<StepId>> {
        let names = self.names();
        let now = &self.state.freely.as_ref()?.now;
        let first = read(now, names.vocabulary()).ok()?.into_iter().next()?;
        let lone = |side: &Tree| matches!(side.node, Node::Name(_));
        if first.defines.is_some() || first.sides.len() < 2 || first.sides.iter().any(lone) {
            return None;
        }
        let names_in = first.sides.iter().flat_map(Tree::names);
        let roles = names_in.filter_map(|(id, _)| names.role(id));
        let steps = roles.filter_map(|role| match role {
            NameRole::Step(step) => Some(step),
            _ => None,
        });
        Some(steps.collect())
    }

    /// True for a form of other quantities than the one judged, and of which that is not made:
    /// `D = Wb − W1` tells no T.
    fn speaks_of_others(&self, judgement: &Judgement) -> bool {
        let target = judgement.target;
        if target.is_balance() {
            return judgement.names.is_some();
        }
        let made_of = nearest_inputs(&self.key, target);
        let mut rests_on = judgement.evidence.rests_on.iter();
        !self.names_target(judgement) && !rests_on.all(|step| made_of.contains(step))
    }

    /// The value of another quantity stays in force under the name that she gave it.
    fn leave_under_name(&mut self, named: StepId, judgement: &Judgement) {
        let hers = Judgement {
            target: named,
            truth: Truth::DoesNotHold,
            remarks: Vec::new(),
            ..judgement.clone()
        };
        let (names, own_values) = (self.names(), self.own_values());
        let board = self.board(&names, &own_values);
        let number = self.state.next_number;
        let Some(own) = own_of_wrong(&board, &hers, number, None) else {
            return;
        };
        let diagnosis = diagnose_of(&board, &hers, &self.instances, &self.state.leaning);
        self.state.put(named, own);
        // It takes the place of her value before it, and help speaks of what it is named.
        self.state.open = Some(Open {
            judgement: hers,
            diagnosis,
            number,
        });
        self.state.hint_stage = 0;
    }

    /// A right value with too few figures, which she goes on with: it stands for the right one.
    fn coarsely_right(&self, open: &Open, target: StepId, own: &Own) -> Option<Own> {
        let of_own = !open.judgement.evidence.follows.is_empty();
        if open.judgement.truth != Truth::TooFewFigures || of_own {
            return None;
        }
        let typed = own.typed.map_or(own.value, |(typed, _)| typed);
        Some(Own {
            value: typed,
            function: self.key.samples(target, &self.sampling, &BTreeMap::new())?,
            right: true,
            ..own.clone()
        })
    }

    /// Commands of a free working that do otherwise than where a step is asked.
    pub(super) fn steer_freely(&mut self, command: Command) -> Option<Outcome> {
        self.state.freely.as_ref()?;
        match command {
            Command::Back => {
                let last = self.state.freely.as_ref()?.lines.last().map(|(at, ..)| *at);
                let Some(prose) = last.and_then(|last| self.withdraw(last)) else {
                    return Some(Outcome::talk(self.words.say("talk.nothing-back", &[])));
                };
                let mut outcome = Outcome::talk(prose);
                outcome.truth = "withdrawn";
                Some(outcome)
            }
            Command::Done => {
                if let Some(wanted) = self.wanted_freely() {
                    let slots = [("wanted", Slot::Word(wanted))];
                    return Some(Outcome::talk(
                        self.words.say("talk.freely-not-done", &slots),
                    ));
                }
                while let Some(open) = self.asked() {
                    self.pass(open);
                    self.state.done_without.insert(open);
                }
                self.state.course = Course::Finished;
                let mut outcome = Outcome::talk(self.words.say("talk.done-without", &[]));
                outcome.truth = "skipped";
                Some(outcome)
            }
            Command::Skip => Some(Outcome::talk(self.words.say("talk.freely-no-skip", &[]))),
            Command::GoOn => Some(Outcome::talk(self.words.say("talk.freely-go-on", &[]))),
            _ => None,
        }
    }

    /// What the problem asks for and is not found yet, in names.
    pub(super) fn wanted_freely(&self) -> Option<String> {
        if self.is_general() {
            return self.still_wanted();
        }
        let sought = |id: &StepId| matches!(id, StepId::Pull(_) | StepId::Reaction(..));
        let open = self.key.asked().filter(|step| sought(&step.id));
        let open = open.filter(|step| !self.state.reached.contains_key(&step.id));
        let names: Vec<String> = open.map(|step| step.symbol.shown()).collect();
        (!names.is_empty()).then(|| names.join(", "))
    }

    /// What stands in the place of a question.
    pub(super) fn question_freely(&self) -> Prose {
        match self.wanted_freely() {
            Some(wanted) => {
                let slots = [("wanted", Slot::Word(wanted))];
                self.words.say("question.freely", &slots)
            }
            None => self.words.say("question.freely-found", &[]),
        }
    }
}

/// A line that is right and settles no step by a value.
fn right(message: Prose) -> Outcome {
    let (sign, verdict) = verdict_of("holds");
    Outcome::verdict(sign, verdict, "holds", message)
}
