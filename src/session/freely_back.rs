//! What a free working takes back: a line withdrawn, replaced, or mended by a later one, and what
//! followed from it, worked anew.

use super::Session;
use super::state::{Freely, State};
use crate::key::StepId;
use crate::text::{Prose, Slot};
use std::collections::BTreeSet;

impl Session {
    /// Her wrong values in force, each with its line.
    pub(super) fn wrong_in_force(&self) -> Vec<(StepId, usize)> {
        let wrong = self.state.standing.iter().filter(|(_, own)| !own.right);
        wrong.map(|(step, own)| (*step, own.line)).collect()
    }

    /// The lines whose wrong values a line has just put right: what followed from them does no
    /// longer.
    pub(super) fn mended(&self, before: &[(StepId, usize)], number: usize) -> BTreeSet<usize> {
        let is_right_now = |step: &StepId| {
            let own = self.state.standing.get(step);
            own.is_some_and(|own| own.right && own.line == number)
        };
        let mended = before.iter().filter(|(step, _)| is_right_now(step));
        mended.map(|(_, line)| *line).collect()
    }

    /// `instead of line 3: …`: the number of the line whose place is taken, and the rest.
    pub(super) fn instead_of(&self, line: &str) -> Option<(usize, String)> {
        let small = line.trim_start();
        let words = self.words.word("freely.instead");
        let lead = words.split(',').map(str::trim).find(|lead| {
            small
                .get(..lead.len())
                .is_some_and(|start| start.eq_ignore_ascii_case(lead))
        })?;
        let after = small[lead.len()..].trim_start();
        let digits: String = after.chars().take_while(char::is_ascii_digit).collect();
        let rest = after[digits.len()..]
            .trim_start()
            .strip_prefix([':', ','])?;
        Some((digits.parse().ok()?, rest.trim_start().to_owned()))
    }

    /// Takes a line back; says which of the others are judged otherwise now.
    pub(super) fn withdraw(&mut self, number: usize) -> Option<Prose> {
        let lines = &self.state.freely.as_ref()?.lines;
        let known = lines.iter().any(|(at, ..)| *at == number);
        let slots = [("line", Slot::Word(number.to_string()))];
        if !known {
            return Some(self.words.say("talk.freely-no-line", &slots));
        }
        let changed = self.worked_without(number);
        let lines = self.state.lines.iter_mut();
        for view in lines.filter(|view| view.number == Some(number)) {
            view.standing = false;
        }
        let back = self.words.say("talk.freely-back", &slots);
        Some(back.then(changed.unwrap_or_default()))
    }

    /// Works the lines but one anew; says which of them are judged otherwise now.
    pub(super) fn worked_without(&mut self, number: usize) -> Option<Prose> {
        let Freely { base, lines } = self.state.freely.take()?;
        let shown = std::mem::take(&mut self.state.lines);
        let next = self.state.next_number;
        let kept: Vec<_> = lines.into_iter().filter(|(at, ..)| *at != number).collect();
        let told = State {
            lines: shown.clone(),
            ..self.state.clone()
        };
        self.state = State::clone(&base);
        // What a name stands for stays told, unless the line that told it is gone.
        let names = told.told_names.iter().filter(|name| name.line != number);
        self.state.told_names = names.cloned().collect();
        self.state.freely = Some(Freely {
            base,
            lines: Vec::new(),
        });
        let mut prose = Prose::default();
        for (at, line, truth) in kept {
            self.state.next_number = at;
            // Its place among the lines shown is what a step is filed under.
            let place = shown.iter().position(|view| view.number == Some(at));
            self.state.lines = shown[..place.unwrap_or(shown.len())].to_vec();
            let again = self.work_freely(&line);
            if again.truth != truth {
                let slots = [
                    ("line", Slot::Word(at.to_string())),
                    ("verdict", Slot::Word(self.words.word(again.verdict))),
                ];
                prose = prose.then(self.words.say("talk.judged-again", &slots));
            }
            if let Some(freely) = &mut self.state.freely {
                freely.lines.push((at, line, again.truth));
            }
        }
        self.state.next_number = next;
        self.state.keep_told(told);
        self.state.lines = shown;
        self.turn_to_asked();
        Some(prose)
    }
}
