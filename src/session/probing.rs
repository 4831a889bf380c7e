//! The one question of a problem that tells two thoughts apart, and what its answer changes; and the
//! mistakes that a learner confirms by correcting their lines.

use super::Session;
use super::state::Open;
use crate::diagnosis::{Diagnosis, Voice, diagnose_of, probe};
use crate::judge::{Judgement, Truth};
use crate::key::StepId;
use crate::mistakes::CATALOGUE;
use crate::text::{Prose, Slot};
use std::collections::BTreeMap;

/// A second thought with a smaller share than this is not worth a question.
const WORTH_ASKING: f64 = 0.2;
/// So often a mistake of earlier sittings is counted at most.
const MOST_BEFORE: u32 = 3;

impl Session {
    /// Asks for an earlier value in which the likeliest thoughts differ: where no form has proved
    /// one, where their hints differ, and once a problem.
    pub(super) fn probe_asked(
        &mut self,
        judgement: &Judgement,
        diagnosis: &Diagnosis,
    ) -> Option<Prose> {
        let [first, second, ..] = diagnosis.named.as_slice() else {
            return None;
        };
        let open = judgement.truth == Truth::DoesNotHold && !self.is_general();
        let even = first.voice == Voice::Perhaps && second.share >= WORTH_ASKING;
        if !open || !even || self.state.probe.is_some() {
            return None;
        }
        let (names, own) = (self.names(), self.own_values());
        let board = self.board(&names, &own);
        let found = probe(&board, judgement.target, &self.instances, diagnosis)?;
        let symbol = self.key.step(found.step)?.symbol.typed();
        let slots = [
            ("step", Slot::Word(self.title(found.step))),
            ("symbol", Slot::Key(format!("{symbol} = …"))),
        ];
        self.state.probe = Some(found.step);
        Some(self.words.say("talk.probe", &slots))
    }

    /// The line that waits, where this one answers what was asked about it.
    pub(super) fn line_of_probe(&self, judgement: &Judgement) -> Option<Open> {
        let asked = self.state.probe?;
        let open = self.state.open.as_ref()?;
        let answers = judgement.target == asked && open.judgement.target != asked;
        answers.then(|| open.clone())
    }

    /// Looks at the line that waits once more, beside the value that was told; it waits on.
    pub(super) fn told_after_probe(&mut self, mut open: Open) -> Option<Prose> {
        let (names, own) = (self.names(), self.own_values());
        let board = self.board(&names, &own);
        open.diagnosis = diagnose_of(
            &board,
            &open.judgement,
            &self.instances,
            &self.state.leaning,
        );
        let slots = [("line", Slot::Word(open.number.to_string()))];
        let told = open.diagnosis.spoken().map(|named| {
            let thought = self.thought(&open.judgement, named);
            self.words.say("talk.probe-told", &slots).then(thought)
        });
        self.state.open = Some(open);
        told
    }

    /// A mistake that was named counts as this learner's once she has corrected its line.
    pub(super) fn confirm_mended(&mut self, judgement: &Judgement) {
        let Some(open) = &self.state.open else { return };
        let mended =
            |step: StepId| judgement.target == step || judgement.establishes.contains(&step);
        let right = matches!(judgement.truth, Truth::Holds | Truth::HoldsRounded);
        if !right || !mended(open.judgement.target) || open.diagnosis.spoken().is_none() {
            return;
        }
        let made = if open.diagnosis.together { 2 } else { 1 };
        let named = open.diagnosis.named.iter().take(made);
        let ids: Vec<&str> = named
            .map(|named| self.instances[named.instance].mistake.id)
            .collect();
        for id in ids {
            self.state.leaning.confirm(id);
            self.state.confirmed.push(id);
        }
    }

    /// Takes over the mistakes that this learner has confirmed before, each with how often.
    pub fn lean(&mut self, confirmed: &BTreeMap<String, u32>) {
        for mistake in CATALOGUE {
            let times = confirmed.get(mistake.id).copied().unwrap_or_default();
            (0..times.min(MOST_BEFORE)).for_each(|_| self.state.leaning.confirm(mistake.id));
        }
    }

    /// The mistakes that the line just answered has put right.
    pub(super) fn confirmed_now(&mut self) -> Vec<String> {
        let confirmed = std::mem::take(&mut self.state.confirmed);
        confirmed.into_iter().map(ToOwned::to_owned).collect()
    }
}
