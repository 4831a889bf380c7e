//! The answers to the parts of one statement, joined into one.

use super::turn::{Progress, Sign};
use super::{Outcome, Session};
use crate::key::StepId;
use crate::problem::ForceId;
use crate::text::{Prose, Slot};

/// What is said about one force of a statement.
pub(super) struct Reply {
    pub(super) sign: Sign,
    pub(super) message: Prose,
    pub(super) mistake: Option<&'static str>,
    /// The message asks on by itself.
    pub(super) asks: bool,
    /// The force of which more is asked.
    pub(super) open: Option<ForceId>,
}

impl Reply {
    pub(super) fn new(sign: Sign, message: Prose) -> Reply {
        Reply {
            sign,
            message,
            mistake: None,
            asks: false,
            open: None,
        }
    }

    pub(super) fn asking(message: Prose) -> Reply {
        Reply {
            asks: true,
            ..Reply::new(Sign::Noted, message)
        }
    }

    pub(super) fn unclear(message: Prose) -> Reply {
        Reply {
            asks: true,
            ..Reply::new(Sign::Unclear, message)
        }
    }
}

impl Session {
    /// Several answers as one: the gravest sign, every message, and once what is asked next.
    pub(super) fn answered(&mut self, replies: Vec<Reply>) -> Outcome {
        let grave = |sign: Sign| match sign {
            Sign::Wrong => 3,
            Sign::Unclear => 2,
            Sign::Noted => 1,
            _ => 0,
        };
        let sign = replies
            .iter()
            .map(|reply| reply.sign)
            .max_by_key(|sign| grave(*sign))
            .unwrap_or(Sign::Noted);
        let (verdict, truth) = match sign {
            Sign::Wrong => ("verdict.wrong", "wrong"),
            Sign::Unclear => ("verdict.unclear", "not-understood"),
            Sign::Right => ("verdict.right", "holds"),
            _ => ("verdict.noted", "noted"),
        };
        let mut outcome = Outcome::verdict(sign, verdict, truth, Prose::default());
        for reply in &replies {
            if reply.sign == Sign::Wrong {
                self.miss(StepId::Forces, reply.mistake.or(Some("force-said")));
            }
            outcome.mistakes.extend(reply.mistake);
        }
        let replies = self.noted_together(replies);
        let asks = replies.iter().any(|reply| reply.asks);
        let wrong = sign == Sign::Wrong;
        for reply in replies {
            outcome.message = outcome.message.then(reply.message);
        }
        if self.state.named.len() == self.problem.forces().len() {
            let count = [("count", Slot::Word(self.state.named.len().to_string()))];
            outcome.message = outcome
                .message
                .then(self.words.say("talk.forces-complete", &count));
            self.reach(StepId::Forces, Progress::Done);
            outcome.progress.push(StepId::Forces);
        } else if !asks && !wrong {
            outcome.message = outcome.message.then(self.still_open());
        }
        self.offer_help(&mut outcome);
        outcome
    }

    /// Several forces named in one line and not yet placed: noted in one sentence, and only of
    /// the first is more asked.
    fn noted_together(&self, replies: Vec<Reply>) -> Vec<Reply> {
        let open: Vec<ForceId> = replies.iter().filter_map(|reply| reply.open).collect();
        if open.len() < 2 {
            return replies;
        }
        let titles: Vec<String> = open.iter().map(|force| self.force_title(*force)).collect();
        let slots = [("forces", Slot::Word(titles.join(", ")))];
        let together = Reply::new(Sign::Noted, self.words.say("talk.noted-forces", &slots));
        let (mut kept, asking): (Vec<Reply>, Vec<Reply>) = replies
            .into_iter()
            .filter(|reply| reply.open.is_none())
            .partition(|reply| !reply.asks);
        kept.push(together);
        kept.extend(asking);
        kept
    }

    /// Three lines in a row that led nowhere: help is offered.
    pub(super) fn offer_help(&mut self, outcome: &mut Outcome) {
        if !matches!(outcome.sign, Sign::Wrong | Sign::Unclear) {
            self.state.astray = 0;
            return;
        }
        self.state.astray = self.state.astray.saturating_add(1);
        if self.state.astray >= 3 {
            let message = std::mem::take(&mut outcome.message);
            outcome.message = message.then(self.say("talk.offer"));
        }
    }
}
