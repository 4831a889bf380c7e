//! What a line that waits to be mended leaves behind when the learner goes on with it, and a later
//! line that would follow from it.

use super::sight::Sight;
use super::state::Open;
use super::{Outcome, Session};
use crate::judge::{Board, Judgement, Memo, Own, Remark, Truth, judge, own_of_wrong};
use crate::key::{Formula, Key, Nature, Rule, Samples, StepId, agree};
use crate::problem::ForceId;
use crate::text::Slot;
use std::collections::BTreeMap;

/// What a line that does not hold leaves behind.
pub(super) struct Left {
    /// The step that it answers.
    pub(super) target: StepId,
    /// Its value there, where it is one.
    pub(super) own: Option<Own>,
    /// The step, and the working that its line is right in.
    pub(super) carried: Option<(StepId, Key)>,
    /// True for a balance or a wrong relation of the unknown: the working counts, too.
    pub(super) relation: bool,
}

impl Session {
    /// A line that does not hold and would follow from the wrong one before it, which still waits:
    /// noted, and the other waits on.
    pub(super) fn follows_waiting(
        &self,
        asked: StepId,
        line: &str,
        judgement: &Judgement,
    ) -> Option<Outcome> {
        let by_chance = |remark: &Remark| {
            matches!(
                remark,
                Remark::ByChance | Remark::NotSeen | Remark::OtherName(_)
            )
        };
        let refused = match judgement.truth {
            Truth::DoesNotHold | Truth::TooFewFigures => true,
            Truth::Noted => judgement.remarks.iter().any(by_chance),
            _ => false,
        };
        let open = self.state.open.as_ref().filter(|_| refused)?;
        if open.judgement.evidence.false_equation || judgement.evidence.superseded.is_some() {
            return None;
        }
        let left = self.left_by(open, asked);
        // What follows from a balance may follow from its relation alone.
        let carries = left.target.is_balance() && left.carried.is_some();
        let mut standing = self.state.standing.clone();
        standing.insert(left.target, left.own?);
        let mut carried = self.state.carried.clone();
        carried.extend(left.carried.filter(|_| left.relation));
        let (names, own_values) = (self.names(), self.own_values());
        let board = Board {
            standing: &standing,
            carried: &carried,
            memo: Memo::default(),
            ..self.board(&names, &own_values)
        };
        let behind = |id: &StepId| *id != left.target && !self.state.reached.contains_key(id);
        let next = self.key.asked().map(|step| step.id).find(behind);
        // A number alone is one more try at what is asked.
        let next = next.filter(|_| !judgement.evidence.alone);
        let then = [Some(asked), next]
            .into_iter()
            .flatten()
            .find_map(|asked| {
                let then = judge(&board, asked, line, self.state.next_number);
                let follows = match &then.truth {
                    Truth::Follows(lines) if lines.is_empty() => carries,
                    Truth::Follows(lines) => lines.contains(&open.number),
                    _ => false,
                };
                let elsewhere = then.target != open.judgement.target && then.target != left.target;
                (follows && elsewhere).then_some(then)
            })?;
        let slots = [("line", Slot::Word(open.number.to_string()))];
        let message = self.words.say("talk.follows-waiting", &slots);
        let mut outcome = Outcome::noted(message);
        outcome.reading = self.reading_shown(&then);
        Some(outcome)
    }

    /// What a line that waits leaves behind at the step that it answers.
    pub(super) fn left_by(&self, open: &Open, asked: StepId) -> Left {
        let (own, mut carried) = self.own_of_open(open);
        // The unknown given where its balance is asked is the balance solved.
        let target = match open.judgement.target {
            StepId::Pull(_) if asked == StepId::MomentSum => StepId::MomentSum,
            target if self.key.sum_of(target) == Some(asked) => asked,
            target => target,
        };
        // A wrong relation of the unknown is carried as a relation, not as a number.
        let of_open = |force: ForceId| {
            let pull = StepId::Pull(force);
            self.key.step(pull).is_some() && !self.state.standing.contains_key(&pull)
        };
        let pull = matches!(target, StepId::Across(force) if self.key.step(StepId::Pull(force)).is_some())
            || matches!(target, StepId::PartOf(force, _) if of_open(force))
            || self.is_open_multiple(target);
        if pull && carried.is_none() {
            carried = self.own_multiple(open);
        }
        Left {
            target,
            own: own.filter(|_| !pull),
            carried: carried.map(|key| (target, key)),
            relation: pull || target.is_balance(),
        }
    }

    /// The working in which the unknown's component is the learner's own multiple of it: `T sin 20`.
    fn own_multiple(&self, open: &Open) -> Option<Key> {
        let unknown = match open.judgement.target {
            StepId::Across(force) | StepId::PartOf(force, _) => StepId::Pull(force),
            target => *self.key.general.as_ref()?.multiples.get(&target)?,
        };
        let pull = self
            .key
            .samples(unknown, &self.sampling, &BTreeMap::new())?;
        let shares = open.judgement.evidence.lifted.iter().map(|typed| {
            let share: Samples = std::array::from_fn(|choice| typed[choice] / pull[choice]);
            share
        });
        let shares: Vec<Samples> = shares.collect();
        // Numbers that stand for themselves give the same share whatever is given.
        let steady = shares.iter().find(|share| agree(share, &[share[0]; 4]));
        let share = steady.or(shares.first())?[0];
        let multiple = Formula::step(unknown).times(Formula::Number(share));
        Some(
            self.key
                .with_rule(open.judgement.target, Rule::Formula(multiple)),
        )
    }

    /// What a line that does not hold leaves behind when the learner goes on with it: its value,
    /// and the working that it is right in.
    fn own_of_open(&self, open: &Open) -> (Option<Own>, Option<Key>) {
        let names = self.names();
        let own_values = self.own_values();
        let board = self.board(&names, &own_values);
        let pins = board.own_pins();
        let target = open.judgement.target;
        // Of two mistakes in one line her working has both; beside her other lines it has the one.
        let together = open.diagnosis.together;
        let model = open
            .diagnosis
            .spoken()
            .filter(|named| named.beside.is_none() || together)
            // A general working goes on with her equation itself, and ends with a whole force: nothing
            // rests on how that was found.
            .filter(|_| !(self.is_general() && is_gone_on_with(target)))
            .map(|named| named.key(&self.instances));
        let function: Option<Samples> =
            model.and_then(|key| key.function(&self.key, target, &self.sampling, &pins));
        let sight = self.sight(target, &open.judgement, &open.diagnosis);
        let kilo = sight == Some(Sight::Kilo);
        let own = if open.judgement.evidence.wrong_way || kilo {
            // Its size holds, if in kilonewtons: a part in the wrong sense is her value, or the right
            // one, with the other sign.
            let size = target.is_size() || target.is_pull() || kilo;
            let sign = if size { 1.0 } else { -1.0 };
            let told = open.judgement.evidence.turned_about.clone();
            let told = told.filter(|_| !kilo);
            let right = || {
                let right = board.right(target);
                right.map(|right| Own::right(right, open.number))
            };
            told.or_else(right)
                .map(|own| own.pointing(sign, open.number))
        } else {
            own_of_wrong(&board, &open.judgement, open.number, function)
        };
        (own, model.cloned())
    }
}

/// True for what a general working has as it stands, without the thought behind it.
fn is_gone_on_with(target: StepId) -> bool {
    target.is_balance() || target.is_direction() || matches!(target, StepId::Found(Nature::Size, _))
}
