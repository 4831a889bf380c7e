//! The second step, said in words: the point about which moments are taken.

use super::turn::{Progress, Sign};
use super::{Outcome, Session};
use crate::judge::statement::{
    Named, PivotSaid, Said, Statement, Topic, is_pivot, pivot_said, read,
};
use crate::key::StepId;
use crate::problem::ForceId;
use crate::reading::{Node, Tree};
use crate::text::{Prose, Slot};

impl Session {
    /// The pivot.
    pub(super) fn choose_pivot(&mut self, line: &str) -> Outcome {
        match read(&self.problem, &self.words, line) {
            Statement::Asks(Topic::Forces | Topic::Pivot) => return self.explain(Topic::Pivot),
            Statement::Asks(topic) => return self.explain(topic),
            Statement::Chats => {
                let asked = self.question();
                return Outcome::talk(self.say("talk.chat").then(asked));
            }
            // The second part of the hinge's force, say: that step is done.
            Statement::Says(said) => {
                if let Some(force) = force_with_way(&said) {
                    let again = self.words.say("talk.force-again", &self.force_slots(force));
                    let asked = self.question();
                    return Outcome::noted(again.then(asked));
                }
            }
            _ => {}
        }
        if self.is_calculation(line) {
            return self.ahead(line);
        }
        let said = pivot_said(&self.problem, &self.words, line);
        let mut outcome = match said {
            PivotSaid::At(metres) if is_pivot(&self.problem, self.key.pivot, metres) => {
                self.pivot_taken("talk.pivot-right", Sign::Right)
            }
            // Said twice, another point is a choice: the steps go on, and its balance counts.
            PivotSaid::At(metres) if self.state.other_pivot == Some(metres) => {
                self.pivot_taken("talk.pivot-kept", Sign::Noted)
            }
            PivotSaid::At(metres) => {
                self.state.other_pivot = Some(metres);
                Outcome::noted(self.say("talk.pivot-other"))
            }
            PivotSaid::OnUnknown(_, force) => {
                let slots = self.force_slots(force);
                Outcome::noted(self.words.say("talk.pivot-unknown", &slots))
            }
            PivotSaid::Beyond => Outcome::noted(self.say("talk.pivot-beyond")),
            PivotSaid::Letter(letter) => {
                let slots = [
                    ("letter", Slot::Word(letter.to_string())),
                    ("body", Slot::Word(self.problem.body().noun.clone())),
                ];
                let message = self.words.say("talk.pivot-letter", &slots);
                self.pivot_unclear(message)
            }
            PivotSaid::Nothing
                if read(&self.problem, &self.words, line) == Statement::Calculates =>
            {
                return self.ahead(line);
            }
            PivotSaid::Nothing => self.pivot_unclear(self.say("talk.pivot-unclear")),
        };
        self.offer_help(&mut outcome);
        outcome
    }

    /// True for an equation about a name of the problem, and for a sine or cosine: no point is
    /// said so, whatever names stand in it.
    fn is_calculation(&self, line: &str) -> bool {
        let names = self.names();
        let Ok(readings) = crate::reading::read(line, names.vocabulary()) else {
            return false;
        };
        let ratio = |tree: &Tree| {
            let mut found = false;
            tree.visit(&mut |tree| found |= matches!(tree.node, Node::Call(..)));
            found
        };
        readings.iter().any(|reading| {
            let equation =
                reading.sides.len() > 1 && matches!(reading.sides[0].node, Node::Name(_));
            equation || reading.sides.iter().any(ratio)
        })
    }

    fn pivot_taken(&mut self, key: &str, sign: Sign) -> Outcome {
        self.state.pivot_said = true;
        self.reach(StepId::Pivot, Progress::Done);
        let (verdict, truth) = match sign {
            Sign::Right => ("verdict.right", "holds"),
            _ => ("verdict.noted", "noted"),
        };
        let mut outcome = Outcome::verdict(sign, verdict, truth, self.say(key));
        outcome.progress.push(StepId::Pivot);
        outcome
    }

    fn pivot_unclear(&self, message: Prose) -> Outcome {
        Outcome::verdict(Sign::Unclear, "verdict.unclear", "not-understood", message)
    }
}

/// The force that a line names with its way: no point is said so.
fn force_with_way(said: &[Said]) -> Option<ForceId> {
    said.iter().find_map(|said| match said.named {
        Named::Force(force) if said.way.is_some() => Some(force),
        _ => None,
    })
}
