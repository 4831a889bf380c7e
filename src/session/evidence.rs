//! What the form of a line shows by itself: told before any mistake is looked for, or in place of
//! one.

use super::Session;
use crate::diagnosis::{Because, Diagnosis};
use crate::judge::{AngleSum, Aside, Judgement, Lacking, Own};
use crate::key::StepId;
use crate::problem::GivenId;
use crate::reading::{Mismatch, MismatchKind};
use crate::text::{Prose, Slot};
use crate::units::{Dimension, number_text, value_text};

impl Session {
    /// What the form of a line shows by itself, before any mistake is looked for.
    pub(super) fn evidence_told(
        &self,
        judgement: &Judgement,
        diagnosis: &Diagnosis,
    ) -> Option<Prose> {
        if let Some((step, own)) = &judgement.evidence.superseded {
            return Some(self.superseded(*step, own));
        }
        if judgement.evidence.not_concluded {
            let slots = [("symbol", Slot::Name(self.unknown_symbol()))];
            return Some(self.words.say("talk.not-concluded", &slots));
        }
        if let Some(two) = judgement.evidence.two_meanings {
            return Some(self.two_meanings(two, judgement, diagnosis));
        }
        if judgement.evidence.negative_size {
            let symbol = self.key.step(judgement.target);
            let symbol = symbol.map_or_else(String::new, |step| step.symbol.shown());
            let slots = [("symbol", Slot::Name(symbol))];
            return Some(self.words.say("talk.size-negative", &slots));
        }
        let by_form = diagnosis.is_by_form();
        if judgement.evidence.runs_on {
            return Some(self.words.say("talk.runs-on", &[]));
        }
        if judgement.evidence.aside == Some(Aside::Misnamed) {
            return Some(self.words.say("talk.misnamed", &[]));
        }
        if judgement.evidence.aside == Some(Aside::False) && !by_form {
            return Some(self.words.say("talk.aside-false", &[]));
        }
        if judgement.evidence.reaction_arm {
            return Some(self.words.say("talk.reaction-arm", &[]));
        }
        if judgement.evidence.surplus && !by_form {
            return Some(self.words.say("talk.surplus", &[]));
        }
        if let Some(angle) = judgement.evidence.wrong_angle.filter(|_| !by_form) {
            let slots = [(
                "value",
                Slot::Value(format!("{}°", number_text(angle.degrees))),
            )];
            let key = match angle.known {
                true => "talk.wrong-angle",
                false => "talk.wrong-angle-unknown",
            };
            return Some(self.words.say(key, &slots));
        }
        if let Some(lacking) = judgement.evidence.lacking.filter(|_| !by_form) {
            return Some(self.lacking(judgement.target, lacking));
        }
        let own = [("own", Slot::Value(number_text(self.problem.gravity())))];
        let both_ways = judgement.evidence.both_ways;
        let same_turn = judgement.evidence.same_turn && !(both_ways && by_form);
        if same_turn && self.is_general() {
            return Some(self.general_same_turn(
                judgement.target,
                both_ways,
                judgement.evidence.of_forces,
            ));
        }
        if same_turn && !both_ways {
            let slots = [
                ("body", Slot::Word(self.problem.body().noun.clone())),
                ("pivot", Slot::Word(self.pivot_noun())),
            ];
            return Some(self.words.say("talk.same-turn", &slots));
        }
        if judgement.evidence.ten_or_few {
            return Some(self.words.say("talk.ten-or-few", &own));
        }
        if judgement.evidence.takes_ten {
            return Some(self.words.say("talk.gravity-ten", &own));
        }
        if judgement.evidence.gravity_told {
            return Some(self.words.say("talk.gravity-told", &own));
        }
        if judgement.evidence.negative_pull {
            let key = match self.is_push(judgement.target) {
                true => "talk.push-negative",
                false => "talk.pull-negative",
            };
            return Some(self.words.say(key, &[]));
        }
        if judgement.evidence.wrong_way {
            return Some(self.wrong_way_told(judgement.target));
        }
        if let Some(line) = judgement.evidence.turned_again {
            let slots = [("line", Slot::Word(line.to_string()))];
            return Some(self.words.say("talk.own-turned", &slots));
        }
        if judgement.evidence.wrong_body {
            let symbol = self.key.step(judgement.target);
            let symbol = symbol.map_or_else(String::new, |step| step.symbol.shown());
            let slots = [("symbol", Slot::Name(symbol))];
            return Some(self.words.say("general.wrong-body", &slots));
        }
        if judgement.evidence.other_line {
            return Some(self.words.say("talk.angle-other-line", &[]));
        }
        let number = judgement.evidence.misread_number.filter(|_| !by_form);
        let number = number.map(|misread| self.misread_number(misread.typed, misread.given));
        let told = judgement.evidence.misread.map(|given| self.misread(given));
        number.or(told)
    }

    /// A number that the problem does not print, in the place of a given.
    fn misread_number(&self, typed: f64, given: GivenId) -> Prose {
        let slots = [
            ("value", Slot::Value(number_text(typed))),
            (
                "symbol",
                Slot::Name(self.problem.given(given).symbol.shown()),
            ),
        ];
        self.words.say("talk.misread-number", &slots)
    }

    /// A line that would follow from a value of hers that she has since replaced.
    fn superseded(&self, step: StepId, own: &Own) -> Prose {
        let value = |own: &Own| Slot::Value(self.own_value_text(step, own));
        let (now, old) = (self.state.standing.get(&step).unwrap_or(own), value(own));
        let slots = [
            ("symbol", Slot::Name(self.symbol_of(step))),
            ("old", old),
            ("line", Slot::Word(own.line.to_string())),
            ("new", value(now)),
            ("later", Slot::Word(now.line.to_string())),
        ];
        self.words.say("talk.superseded", &slots)
    }

    /// A number that is an angle of the problem and another one of hers.
    fn two_meanings(
        &self,
        (right, own): (StepId, StepId),
        judgement: &Judgement,
        diagnosis: &Diagnosis,
    ) -> Prose {
        let standing = self.state.standing.get(&own);
        let value = standing.map_or_else(String::new, |value| self.own_value_text(own, value));
        let slots = [
            ("value", Slot::Value(value)),
            ("right", Slot::Name(self.symbol_of(right))),
            ("own", Slot::Name(self.symbol_of(own))),
        ];
        let prose = self.words.say("talk.two-meanings", &slots);
        match diagnosis.spoken() {
            Some(named) if named.because == Because::Form => {
                prose.then(self.thought(judgement, named))
            }
            _ => prose,
        }
    }

    /// A value of hers as she typed it, or to the figures asked.
    pub(super) fn own_value_text(&self, step: StepId, own: &Own) -> String {
        let dimension = self
            .key
            .step(step)
            .map_or(Dimension::NUMBER, |step| step.dimension);
        match own.typed {
            Some((typed, written)) => value_text(typed, dimension, written.significant),
            None => value_text(own.value, dimension, self.problem.figures()),
        }
    }

    pub(super) fn symbol_of(&self, step: StepId) -> String {
        let step = self.key.step(step);
        step.map_or_else(String::new, |step| step.symbol.shown())
    }

    /// The same of this line: of a given that is told wrongly nothing follows.
    pub(super) fn offer_after(&self, judgement: &Judgement) -> Prose {
        let evidence = &judgement.evidence;
        match evidence.misread.is_some() && evidence.number.is_none() {
            true => self.words.say("talk.after-given", &[]),
            false => self.offer(),
        }
    }

    fn misread(&self, given: GivenId) -> Prose {
        let given = self.problem.given(given);
        let slots = [
            ("symbol", Slot::Name(given.symbol.shown())),
            ("value", Slot::Value(given.written.clone())),
        ];
        self.words.say("talk.misread", &slots)
    }

    /// What a balance lacks.
    fn lacking(&self, target: StepId, lacking: Lacking) -> Prose {
        let key = match lacking {
            Lacking::Distance => "talk.distance-lacks",
            Lacking::Unknown => "talk.unknown-lacks",
            Lacking::Reaction => "talk.reaction-lacks",
        };
        let symbol = match lacking {
            Lacking::Reaction => self.symbol_of(target),
            Lacking::Distance | Lacking::Unknown => self.unknown_symbol(),
        };
        let slots = [("symbol", Slot::Name(symbol))];
        self.words.say(key, &slots)
    }

    /// A sum of other angles than those of the step.
    pub(super) fn angle_sum(&self, step: StepId, sum: AngleSum) -> Prose {
        match sum {
            AngleSum::Known => {
                let slots = [("step", Slot::Word(self.title(step)))];
                self.words.say("talk.angle-sum", &slots)
            }
            AngleSum::NotEqual => self.words.say("talk.aside-false", &[]),
            AngleSum::Unknown(degrees) => {
                let slots = [("value", Slot::Value(format!("{}°", number_text(degrees))))];
                self.words.say("talk.angle-unknown", &slots)
            }
        }
    }

    pub(super) fn mismatch(&self, mismatch: &Mismatch) -> Prose {
        let slots = [
            ("left", Slot::Word(self.kind(mismatch.left))),
            ("right", Slot::Word(self.kind(mismatch.right))),
        ];
        let key = match mismatch.kind {
            MismatchKind::Sum => match mismatch.missing {
                Some(missing) if missing == Dimension::LENGTH => "mismatch.sum-lacks-length",
                _ => "mismatch.sum",
            },
            MismatchKind::Angle => "mismatch.angle",
            MismatchKind::Unit => "mismatch.unit",
            MismatchKind::NotFinite => "mismatch.not-finite",
            _ => "mismatch.other",
        };
        self.words.say(key, &slots)
    }
}
