//! What a free working takes back: a line withdrawn, replaced, or mended by a later one, and what
//! followed from it, worked anew.

use super::Session;
use super::state::{Freely, State};
use super::turn::{Sign, verdict_of};
use crate::judge::Own;
use crate::key::StepId;
use crate::text::{Prose, Slot};
use std::collections::{BTreeMap, BTreeSet};

impl Session {
    /// Her wrong values in force, each with its line.
    pub(super) fn wrong_in_force(&self) -> Vec<(StepId, usize)> {
        let wrong = self.state.standing.iter().filter(|(_, own)| !own.right);
        wrong.map(|(step, own)| (*step, own.line)).collect()
    }

    /// The steps whose wrong values, or wrong balances, a line has just put right: what followed from
    /// them does no longer.
    pub(super) fn mended(&self, before: &[(StepId, usize)], number: usize) -> BTreeSet<StepId> {
        let is_right_now = |step: StepId| {
            let own = self.state.standing.get(&step);
            own.is_some_and(|own| own.right && own.line == number)
        };
        let is_mended = |step: StepId| {
            let gives = || self.key.gives(step).is_some_and(is_right_now);
            is_right_now(step) || step.is_balance() && gives()
        };
        let mended = before.iter().map(|(step, _)| *step);
        mended.filter(|step| is_mended(*step)).collect()
    }

    /// Works the lines anew without what is wrong in these steps before line `number`; says which of
    /// them are judged otherwise now.
    pub(super) fn worked_mended(
        &mut self,
        mended: &BTreeSet<StepId>,
        number: usize,
    ) -> Option<Prose> {
        let is_wrong = |session: &Session, at: usize| {
            let standing = session.state.standing.iter();
            let mut hers = standing.filter(|(_, own)| !own.right && own.line == at);
            at < number
                && hers.any(|(step, _)| mended.contains(step) || gives(session, *step, mended))
        };
        self.worked_anew(&|_| false, &is_wrong)
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
    fn worked_without(&mut self, number: usize) -> Option<Prose> {
        self.worked_anew(&|at| at == number, &|_, _| false)
    }

    /// Works the lines anew, but those that are `gone`; of one that `is_void` once it is worked
    /// nothing stays in force.
    fn worked_anew(
        &mut self,
        gone: &dyn Fn(usize) -> bool,
        is_void: &dyn Fn(&Session, usize) -> bool,
    ) -> Option<Prose> {
        let Freely {
            base,
            said,
            seen,
            lines,
            mut void,
            mut fallen,
            shown: passed,
            ..
        } = self.state.freely.take()?;
        let shown = std::mem::take(&mut self.state.lines);
        let next = self.state.next_number;
        let kept: Vec<_> = lines.into_iter().filter(|(at, ..)| !gone(*at)).collect();
        let told = State {
            lines: shown.clone(),
            ..self.state.clone()
        };
        self.state = State::clone(&base);
        // What a name stands for stays told, unless the line that told it is gone.
        let names = told.told_names.iter().filter(|name| !gone(name.line));
        self.state.told_names = names.cloned().collect();
        // What was concluded of them is concluded anew.
        for name in &mut self.state.told_names {
            name.means = None;
        }
        self.state.freely = Some(Freely {
            base,
            said,
            seen,
            lines: Vec::new(),
            void: BTreeMap::new(),
            fallen: BTreeMap::new(),
            shown: passed.clone(),
            told_by: BTreeMap::new(),
            now: String::new(),
        });
        let mut prose = Prose::default();
        let mut replaced: Vec<f64> = Vec::new();
        let mut passed = passed.into_iter().peekable();
        for (at, line, truth) in kept {
            // What was shown before a line stands behind it as it did.
            while let Some((_, step)) = passed.next_if(|(next, _)| *next <= at) {
                self.pass_again(step);
            }
            self.state.next_number = at;
            // Its place among the lines shown is what a step is filed under.
            let place = shown.iter().position(|view| view.number == Some(at));
            self.state.lines = shown[..place.unwrap_or(shown.len())].to_vec();
            // What stands for it before it is told is told now.
            self.state.standing.retain(|_, own| own.line != at);
            let before = self.state.clone();
            let mut again = self.work_freely(&line);
            // The old number of what was told anew stands for nothing any more; and what followed in
            // its unit is no matter of the unit now: `T = 37.2 N` from masses.
            let replaced_number = again.truth == "follows" && types_one_of(&line, &replaced);
            if replaced_number || truth == "follows" && again.truth == "wrong-unit" {
                (again.sign, again.verdict) = verdict_of("wrong");
                again.truth = "wrong";
            }
            // What was refused follows from no other wrong line for that a later one is right.
            let refused = truth == "wrong" && again.truth == "follows";
            if refused {
                (again.sign, again.verdict) = verdict_of("wrong");
                again.truth = "wrong";
            }
            if is_void(self, at) {
                void.insert(at, wrong_of(&self.state, at));
            }
            let mended = self.right_since(&told, at);
            let hers = mended
                .iter()
                .filter_map(|(step, _)| self.state.standing.get(step));
            replaced.extend(hers.filter_map(|own| Some(own.typed?.0)));
            // What followed and does no longer gives the lines after it nothing.
            let wrong = again.sign == Sign::Wrong;
            if wrong && again.truth != truth {
                fallen.insert(at, wrong_of(&told, at));
            } else if !wrong {
                fallen.remove(&at);
            }
            if refused || void.contains_key(&at) || fallen.contains_key(&at) {
                self.state = before;
                self.state.standing.extend(mended);
            }
            if again.truth != truth {
                let slots = [
                    ("line", Slot::Word(at.to_string())),
                    ("verdict", Slot::Word(self.words.word(again.verdict))),
                ];
                prose = prose.then(self.words.say("talk.judged-again", &slots));
            }
            if let Some(freely) = &mut self.state.freely {
                freely.lines.push((at, line, again.truth));
                freely.void.clone_from(&void);
                freely.fallen.clone_from(&fallen);
            }
        }
        passed.for_each(|(_, step)| self.pass_again(step));
        self.go_on_with(&fallen, &void);
        self.state.next_number = next;
        self.state.keep_told(told);
        self.state.lines = shown;
        self.turn_to_asked();
        Some(prose)
    }

    /// The right values told since in the place of the wrong ones of a line: what was made of those
    /// is held against these, even where another wrong value of hers would give the same.
    fn right_since(&self, told: &State, line: usize) -> Vec<(StepId, Own)> {
        let hers = self.state.standing.iter();
        let hers = hers.filter(|(_, own)| !own.right && own.line == line);
        let given = |step: StepId| match step.is_balance() {
            true => self.key.gives(step),
            false => Some(step),
        };
        hers.filter_map(|(step, _)| {
            let step = given(*step)?;
            let own = told.standing.get(&step)?;
            (own.right && own.line > line).then(|| (step, own.clone()))
        })
        .collect()
    }

    /// Her old values of lines that follow no longer: she may go on with them all the same.
    fn go_on_with(
        &mut self,
        fallen: &BTreeMap<usize, Vec<(StepId, Own)>>,
        void: &BTreeMap<usize, Vec<(StepId, Own)>>,
    ) {
        let lines = fallen.iter().filter(|(line, _)| !void.contains_key(line));
        for (step, own) in lines.flat_map(|(_, hers)| hers) {
            self.state.standing.entry(*step).or_insert(own.clone());
        }
    }
}

/// The wrong values of hers that a line gave.
fn wrong_of(state: &State, line: usize) -> Vec<(StepId, Own)> {
    let standing = state.standing.iter();
    let wrong = standing.filter(|(_, own)| !own.right && own.line == line);
    wrong.map(|(step, own)| (*step, own.clone())).collect()
}

/// True if one of these numbers stands in a line as it was typed.
fn types_one_of(line: &str, numbers: &[f64]) -> bool {
    let part = |c: char| !(c.is_ascii_digit() || matches!(c, '.' | ','));
    let typed = line.split(part).filter_map(|text| {
        let text = text.trim_matches(['.', ',']).replace(',', ".");
        text.parse::<f64>().ok()
    });
    let same = |one: f64, other: f64| (one - other.abs()).abs() <= 1e-9 * one;
    typed
        .into_iter()
        .any(|typed| numbers.iter().any(|number| same(typed, *number)))
}

/// True for a balance that gives one of these steps.
fn gives(session: &Session, balance: StepId, steps: &BTreeSet<StepId>) -> bool {
    let given = session.key.gives(balance).filter(|_| balance.is_balance());
    given.is_some_and(|given| steps.contains(&given))
}
