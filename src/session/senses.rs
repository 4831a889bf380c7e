//! The senses in which a free working counts what may act both ways: told by the first line that
//! does so beyond doubt, kept, and told where a later line counts otherwise.

use super::turn::verdict_of;
use super::{Outcome, Session};
use crate::judge::{Judgement, Own, Remark, Truth};
use crate::key::{Part, StepId};
use crate::text::Slot;

/// Parts, each true if it counts against its axis.
type Senses = Vec<(StepId, bool)>;

impl Session {
    /// Keeps the senses in which a true balance counts what may act both ways; of a line that
    /// counts one of them the other way it is told since when.
    pub(super) fn sense_kept(&mut self, judgement: &Judgement) -> Option<Outcome> {
        self.state.freely.as_ref().filter(|_| judgement.stands())?;
        // A value counts its part so, too.
        let turned = judgement.remarks.contains(&Remark::OppositeSense);
        let (mut taken, along) = self.senses_counted(judgement);
        // Nobody is wrong to count along the axis, whatever was counted before.
        let told = self.sign_told(judgement, turned);
        let of_joint = self.joints_in_form(judgement);
        // What acts up on one body acts down on the other: there is no other way to count it.
        let kept = |(step, against): &(StepId, bool), free: bool| {
            let (before, line) = self.state.senses.get(step).copied()?;
            let free = free && !self.acts_on_two(*step);
            (before != *against && !free).then_some((*step, before, line))
        };
        let by_balance = |one: &(StepId, bool)| kept(one, self.is_free_to_count(*one));
        let by_value =
            |one: &(StepId, bool)| kept(one, self.is_general() && self.acts_so(one.0, one.1));
        let changed = taken.iter().find_map(by_balance);
        // Nor is there for a strut, once it is told whether it pulls or pushes.
        let of_strut = self.struts_in_form(judgement);
        let mut others = told.iter().chain(&of_joint).chain(&of_strut);
        let changed = changed.or_else(|| others.find_map(by_value));
        let Some((step, before, line)) = changed else {
            taken.extend(along);
            self.keep_senses(judgement, turned, taken);
            return None;
        };
        let symbol = self.key.step(step).map(|step| step.symbol.shown());
        let slots = [
            ("symbol", Slot::Name(symbol.unwrap_or_default())),
            ("line", Slot::Word(line.to_string())),
            (
                "way",
                Slot::Prose(self.way_counted(step, before).unwrap_or_default()),
            ),
        ];
        let (sign, verdict) = verdict_of("wrong");
        let message = match self.way_counted(step, before) {
            Some(_) => self.words.say("talk.sense-changed", &slots),
            None => self.words.say("talk.sense-turned", &slots[..2]),
        };
        Some(Outcome::verdict(sign, verdict, "wrong", message))
    }

    /// The senses in which a form counts what acts between two bodies, by the names in it.
    fn joints_in_form(&self, judgement: &Judgement) -> Senses {
        let evidence = &judgement.evidence;
        let told = |remark: &Remark| matches!(remark, Remark::SensesTaken(_));
        let balance = evidence.equation || judgement.target.is_balance();
        let form = !balance && !judgement.remarks.iter().any(told);
        // `J = √(Jx² + Jy²)` is of sizes, whichever way Jx counts.
        let form = form && !is_of_whole(judgement) && !judgement.target.is_size();
        let joints = evidence.rests_on.iter().filter(|step| {
            form && judgement.truth.holds()
                && self.acts_on_two(**step)
                && step.has_free_sense()
                && **step != judgement.target
        });
        let counted = |step: &StepId| (*step, evidence.turned.contains(step));
        joints.map(counted).collect()
    }

    /// The struts that a form counts as the key does, though she counts them the other way round.
    fn struts_in_form(&self, judgement: &Judgement) -> Senses {
        let told = |step: &StepId| judgement.values.iter().any(|(told, _)| told == step);
        let all = judgement.evidence.unturned.iter();
        let others = all.filter(|step| !told(step) && !is_of_whole(judgement));
        others.map(|step| (*step, false)).collect()
    }

    /// The senses that a line says it counts in, and those along their axis where nothing is said.
    fn senses_counted(&self, judgement: &Judgement) -> (Senses, Senses) {
        // `cos ψ = Hx/H` is of sizes, whichever way Hx counts.
        if is_of_whole(judgement) {
            return (Senses::new(), Senses::new());
        }
        let said = judgement.remarks.iter().find_map(|remark| match remark {
            Remark::SensesTaken(senses) => Some(senses.clone()),
            _ => None,
        });
        let said = said.unwrap_or_default();
        let balance = |remark: &Remark| matches!(remark, Remark::OtherUnknowns(_));
        let mut along = Senses::new();
        if !self.is_general() && judgement.remarks.iter().any(balance) {
            let unsaid = |step: &&StepId| {
                step.along().is_some() && !said.iter().any(|(known, _)| known == *step)
            };
            let rests_on = judgement.evidence.rests_on.iter().filter(unsaid);
            along.extend(rests_on.map(|step| (*step, false)));
        }
        (said, along)
    }

    /// A wrong value told alone in a general working, counted as she counts its quantity: where no line
    /// tells that, the number of a strut that pushes is its size.
    pub(super) fn in_sense_counted(&self, step: StepId, own: Own, judgement: &Judgement) -> Own {
        let evidence = &judgement.evidence;
        let plain = own.typed.is_some() && evidence.ways.is_empty() && !evidence.wrong_way;
        if !self.is_general() || !step.has_free_sense() || self.acts_on_two(step) || !plain {
            return own;
        }
        let known = self.state.senses.get(&step).map(|(against, _)| *against);
        let (names, own_values) = (self.names(), self.own_values());
        let pushes = || self.board(&names, &own_values).is_pushing_strut(step) && own.value > 0.0;
        match known.unwrap_or_else(pushes) {
            true => Own {
                value: -own.value,
                typed: own.typed.map(|(typed, written)| (-typed, written)),
                function: own.function.map(|value| -value),
                against: true,
                ..own
            },
            false => own,
        }
    }

    /// `Hy = Wb + W1 − Hx·tan 65` after `Hx = T cos 65`, with T still open: right with each part that
    /// a form of hers counts against its axis turned about.
    pub(super) fn with_parts_turned(
        &mut self,
        asked: StepId,
        line: &str,
        found: &Judgement,
    ) -> Option<Judgement> {
        if self.is_general() || found.truth != Truth::DoesNotHold {
            return None;
        }
        let turned = |step: StepId| {
            let known = self.state.senses.get(&step);
            let has_value = self.state.standing.contains_key(&step);
            step != found.target && !has_value && known.is_some_and(|(against, _)| *against)
        };
        let word = |step: StepId| {
            let symbol = self.key.step(step)?.symbol.typed();
            turned(step).then(|| format!("(-{symbol})"))
        };
        let way = self.with_names_replaced(line, &word)?;
        let judgement = self.judged_in_force(asked, &way);
        let right = judgement.truth.holds() || matches!(judgement.truth, Truth::Follows(_));
        right.then(|| Judgement {
            layout: found.layout.clone(),
            ..judgement
        })
    }

    /// Keeps what a line counts and what its values say.
    fn keep_senses(&mut self, judgement: &Judgement, turned: bool, taken: Senses) {
        let number = self.state.next_number;
        let said_any = !judgement.evidence.ways.is_empty();
        for (step, own) in &judgement.values {
            // A sign before its value says anew in which sense a part counts.
            let typed = judgement.evidence.number.map(|typed| typed.value);
            let signed = typed.is_some_and(|typed| typed < 0.0);
            // So does a form with its number behind it.
            let formed = judgement.proved && !judgement.evidence.alone && typed.is_some();
            let kept = self
                .state
                .senses
                .get(step)
                .filter(|(_, line)| !(signed || formed && self.is_of_value(step, *line)));
            // A relation may say it in words: `Hx = T cos β, to the left`.
            let said = step.along().and_then(|axis| judgement.said_along(axis));
            let against = match (said, own.relation) {
                // What acts between two bodies has the sign that its number has, whatever is said.
                _ if self.acts_on_two(*step) && typed.is_some() => {
                    typed.map(|typed| typed * own.function[0] < 0.0)
                }
                (Some(sign), true) => Some(sign < 0.0),
                // `Hx = 349 N to the left` tells a size, and leaves open how Hx will be counted; of what
                // acts along its axis size and sign say the same.
                (Some(sign), false) if self.is_general() && sign > 0.0 && own.function[0] > 0.0 => {
                    Some(false)
                }
                (Some(_), false) => None,
                (None, _) => Some(turned),
            };
            // The part of a strut's force, told with its way, counts that way from then on.
            let part = self.is_general() && step.is_component() && said_any && own.against;
            if let Some(against) = against
                .filter(|_| step.has_free_sense())
                .or(part.then_some(true))
                && own.right
                && kept.is_none()
            {
                self.state.senses.insert(*step, (against, number));
            }
        }
        for (step, against) in taken {
            let counted = (against, number);
            // A balance says more than a value, which may be a size.
            let by_value = |(_, line): &(bool, usize)| self.is_of_value(&step, *line);
            let kept = self.state.senses.get(&step);
            if kept.is_some_and(by_value) && !self.acts_on_two(step) {
                self.state.senses.remove(&step);
            }
            // Who counts it the way it acts may go on in the sense before, too.
            self.state.senses.entry(step).or_insert(counted);
        }
    }

    /// True where a balance counts a part the way that it acts in, or in a lesson along its axis:
    /// nobody is wrong to count it so, whatever was counted before.
    fn is_free_to_count(&self, (step, against): (StepId, bool)) -> bool {
        match self.is_general() {
            true => self.acts_so(step, against),
            false => !against,
        }
    }

    /// True where a part is counted the way that it acts in.
    fn acts_so(&self, step: StepId, against: bool) -> bool {
        let (names, own_values) = (self.names(), self.own_values());
        let right = self.board(&names, &own_values).right(step);
        let counted = right.map(|right| if against { -right[0] } else { right[0] });
        counted.is_some_and(|counted| counted > 0.0)
    }

    /// True where it was a value of a part that told its sense: it may be a size.
    fn is_of_value(&self, step: &StepId, line: usize) -> bool {
        let standing = self.state.standing.get(step);
        standing.is_some_and(|own| own.line == line && own.typed.is_some())
    }

    /// The part of which a line tells beyond doubt, by a sign or by names alone, a sign that is not
    /// that along its axis. What was told as a value before may be a size.
    fn sign_told(&self, judgement: &Judgement, turned: bool) -> Option<(StepId, bool)> {
        let evidence = &judgement.evidence;
        let (step, own) = judgement.values.first()?;
        let kept = self.state.senses.get(step);
        let said = kept.is_some_and(|(_, line)| !self.is_of_value(step, *line));
        let told = turned && said && own.right && step.has_free_sense() && !self.acts_on_two(*step);
        let minus = evidence.number.is_some_and(|typed| typed.value < 0.0);
        (told && (evidence.plus_told || evidence.names_only || minus)).then_some((*step, turned))
    }
}

/// True for a line in which the size or the direction of a support's force stands.
fn is_of_whole(judgement: &Judgement) -> bool {
    let whole = |step: &StepId| {
        let size = matches!(step, StepId::Reaction(_, Part::Size));
        size || step.is_direction()
    };
    let evidence = &judgement.evidence;
    let mut named = evidence.rests_on.iter().chain(&evidence.tells);
    named.any(whole)
}
