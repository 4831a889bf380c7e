//! What is typed of rough contacts: inequalities, and `f` for the friction that is asked.

use super::own_meant::with_symbol;
use super::{Outcome, Session};
use crate::judge::{Judgement, Truth};
use crate::key::StepId;

/// Signs of an inequality, the longer ones first.
const SIGNS: [&str; 7] = ["<=", ">=", "=<", "≤", "≥", "<", ">"];
/// What many call friction, whatever the problem calls it.
const USUAL: &str = "f";

impl Session {
    /// The answer to an inequality, in a general problem: it settles no value, though what it
    /// compares may be equal here; `None` for other lines.
    pub(super) fn answer_inequality(&self, asked: StepId, line: &str) -> Option<Outcome> {
        let (at, sign) = SIGNS
            .iter()
            .find_map(|sign| Some((line.find(sign)?, *sign)))
            .filter(|_| self.is_general())?;
        let (before, behind) = (&line[..at], &line[at + sign.len()..]);
        // `=>` and `->` stand before what a line comes to.
        let is_one = !before.ends_with('-')
            && !behind.contains(['<', '>', '≤', '≥', '='])
            && !before.contains('=');
        if !is_one || before.trim().is_empty() || behind.trim().is_empty() {
            return None;
        }
        let equal = self.judged(asked, &format!("{before}={behind}"));
        let key = match equal.stands() {
            true => "general.inequality-equal",
            false => "general.inequality",
        };
        let message = self.words.say(key, &[]);
        Some(Outcome::noted(message))
    }

    /// Judges `f = …` as the friction that is asked, in a free working as the only friction, where
    /// it does not hold of another force that is called so; `None` for other lines.
    pub(super) fn judged_as_friction(
        &self,
        asked: StepId,
        line: &str,
        judgement: &Judgement,
    ) -> Option<Judgement> {
        if matches!(judgement.truth, Truth::NotUnderstood(_)) {
            return self.judged_with_friction(asked, line);
        }
        let start = line.len() - line.trim_start().len();
        let behind = line.get(start..)?.strip_prefix(USUAL)?;
        let is_told = behind.trim_start().starts_with('=');
        let is_asked = self.key.heading(asked)?.kind == "friction";
        // As a name of her own it would say nothing yet.
        if judgement.stands() && judgement.names.is_none() || !is_told {
            return None;
        }
        let friction = match is_asked {
            true => asked,
            false => {
                let friction = self.only_friction().or_else(|| self.only_limit());
                friction.filter(|_| self.is_free())?
            }
        };
        let symbol = self.key.step(friction)?.symbol.typed();
        let told = self.judged(friction, &format!("{symbol}{behind}"));
        // A force that is wrong is the friction too: what follows from it counts.
        let unit = behind.trim_end();
        let is_force = [" N", "kN"].iter().any(|one| unit.ends_with(one));
        let wrong = told.truth == Truth::DoesNotHold && is_force && self.is_free();
        (told.truth.holds() || wrong).then_some(told)
    }

    /// `f - R = 0`, where `f` was not told before: judged with the only friction in its place.
    fn judged_with_friction(&self, asked: StepId, line: &str) -> Option<Judgement> {
        let friction = self.only_friction().filter(|_| self.is_free())?;
        if self.is_symbol(USUAL) || !line.contains('=') {
            return None;
        }
        let symbol = self.key.step(friction)?.symbol.typed();
        let written = with_symbol(line, USUAL, &symbol);
        let told = self.judged(asked, &written);
        told.stands().then_some(told)
    }

    /// From here on `f` is the friction in a free working, whatever it was kept as before, unless it
    /// is a name of the problem.
    pub(super) fn keep_as_friction(&mut self) {
        let friction = self.only_friction().or_else(|| self.only_limit());
        let friction = friction.filter(|_| self.is_free());
        let Some(step) = friction.filter(|_| !self.is_symbol(USUAL)) else {
            return;
        };
        self.stands_for(USUAL.to_owned(), step);
    }

    /// A name of hers for friction at its limit, told by a push that is not found yet, where what is
    /// sought has several values: it is another name for that friction, which differs from one value
    /// to the next.
    pub(super) fn keep_as_limit(&mut self, judgement: &Judgement) {
        let several = self.others.iter().any(|other| other.worked.is_some());
        let named = judgement.names.as_ref().filter(|(_, own)| own.of_unknown);
        let Some((name, _)) = named.filter(|_| several && judgement.truth.holds()) else {
            return;
        };
        if self.is_free() && self.only_limit() == Some(judgement.target) {
            self.stands_for(name.clone(), judgement.target);
        }
    }
}
