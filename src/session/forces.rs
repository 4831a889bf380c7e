//! The first two steps, said in words: which forces act, and the pivot.

use super::state::Pending;
use super::turn::{Progress, Sign};
use super::{Outcome, Session};
use crate::judge::statement::{
    Fit, Said, is_pivot, may_stay_open, pivot_said, place_fits, said, way_fits,
};
use crate::key::StepId;
use crate::problem::ForceId;
use crate::text::{Prose, Slot};

impl Session {
    /// A statement about forces: each is named, then placed, then given its way.
    pub(super) fn name_force(&mut self, line: &str) -> Outcome {
        let said = said(&self.problem, &self.words, line);
        if said.forces.is_empty() {
            return match self.state.pending.first().copied() {
                Some(pending) if said.place.is_some() || said.way.is_some() => {
                    self.complete(pending, &said)
                }
                Some(_) => {
                    let mut outcome = self.unclear("talk.pending-unclear");
                    outcome.message = outcome.message.then(self.still_open());
                    outcome
                }
                None => self.unclear("talk.force-unclear"),
            };
        }
        let fresh: Vec<ForceId> = said
            .forces
            .iter()
            .copied()
            .filter(|id| !self.state.named.contains(id))
            .collect();
        if fresh.is_empty() {
            let slots = [("force", Slot::Word(self.force_title(said.forces[0])))];
            return Outcome::verdict(
                Sign::Noted,
                "verdict.noted",
                "noted",
                self.words
                    .say("talk.force-again", &slots)
                    .then(self.still_open()),
            );
        }
        // One force with its place and way in one line, or several names at once.
        let whole = (fresh.len() == 1).then_some(&said);
        self.state
            .pending
            .retain(|pending| !fresh.contains(&pending.force));
        for force in fresh.iter().rev() {
            self.state.pending.insert(
                0,
                Pending {
                    force: *force,
                    place: None,
                    way: None,
                },
            );
        }
        let first = self.state.pending[0];
        match whole {
            Some(said) => self.complete(first, said),
            None => self.complete(first, &Said::default()),
        }
    }

    /// Takes what was said into the force that is being placed.
    fn complete(&mut self, mut pending: Pending, said: &Said) -> Outcome {
        let (place, way) = (said.place.or(pending.place), said.way.or(pending.way));
        let force = pending.force;
        let slots = [("force", Slot::Word(self.force_title(force)))];
        let place_fit = place_fits(&self.problem, force, place);
        let way_fit = way_fits(&self.problem, force, way);
        if place_fit == Fit::Wrong {
            let own = force == ForceId::OwnWeight;
            self.miss(
                StepId::Forces,
                if own { Some("own-weight-at-tip") } else { None },
            );
            let key = if own {
                "talk.own-weight-place"
            } else {
                "talk.force-place-wrong"
            };
            let mut outcome = Outcome::verdict(
                Sign::Wrong,
                "verdict.wrong",
                "wrong",
                self.words.say(key, &slots),
            );
            outcome.mistakes = if own {
                vec!["own-weight-at-tip"]
            } else {
                Vec::new()
            };
            self.store_pending(Pending { way, ..pending });
            return outcome;
        }
        if way_fit == Fit::Wrong {
            let key = match force {
                ForceId::Rope(_) => "talk.rope-way-wrong",
                _ => "talk.weight-way-wrong",
            };
            self.miss(StepId::Forces, None);
            self.store_pending(Pending { place, ..pending });
            return Outcome::verdict(
                Sign::Wrong,
                "verdict.wrong",
                "wrong",
                self.words.say(key, &slots),
            );
        }
        pending.place = place;
        pending.way = way;
        let missing = match (place_fit, way_fit) {
            (Fit::Missing, _) => Some("talk.ask-where"),
            (_, Fit::Missing) if may_stay_open(&self.problem, force) => Some("talk.ask-way-open"),
            (_, Fit::Missing) => Some("talk.ask-way"),
            _ => None,
        };
        if let Some(key) = missing {
            self.store_pending(pending);
            return Outcome::verdict(
                Sign::Noted,
                "verdict.noted",
                "noted",
                self.words.say(key, &slots),
            );
        }
        self.state.pending.retain(|other| other.force != force);
        self.state.named.push(force);
        self.state.hint_stage = 0;
        let mut message = self.words.say("talk.force-right", &slots);
        let mut outcome = Outcome::verdict(Sign::Right, "verdict.right", "holds", Prose::default());
        if self.state.named.len() == self.problem.forces().len() {
            let count = [("count", Slot::Word(self.state.named.len().to_string()))];
            message = message.then(self.words.say("talk.forces-complete", &count));
            self.reach(StepId::Forces, Progress::Done);
            outcome.progress.push(StepId::Forces);
        } else {
            message = message.then(self.still_open());
        }
        outcome.message = message;
        outcome
    }

    fn store_pending(&mut self, pending: Pending) {
        self.state
            .pending
            .retain(|other| other.force != pending.force);
        self.state.pending.insert(0, pending);
    }

    /// What is asked next about the forces.
    fn still_open(&self) -> Prose {
        match self.state.pending.first() {
            Some(pending) => {
                let slots = [("force", Slot::Word(self.force_title(pending.force)))];
                let key =
                    if pending.place.is_none() && !matches!(pending.force, ForceId::Support(_)) {
                        "talk.ask-where"
                    } else if may_stay_open(&self.problem, pending.force) {
                        "talk.ask-way-open"
                    } else {
                        "talk.ask-way"
                    };
                self.words.say(key, &slots)
            }
            None => self.words.say("talk.more-forces", &[]),
        }
    }

    /// "That is all": true or not.
    pub(super) fn forces_done(&mut self) -> Outcome {
        let missing: Vec<ForceId> = self
            .problem
            .forces()
            .iter()
            .map(|force| force.id)
            .filter(|id| !self.state.named.contains(id))
            .collect();
        self.miss(StepId::Forces, Some("force-forgotten"));
        let count = [("count", Slot::Word(missing.len().to_string()))];
        let key = if missing.len() == 1 {
            "talk.force-missing-one"
        } else {
            "talk.force-missing-many"
        };
        let mut outcome = Outcome::verdict(
            Sign::Incomplete,
            "verdict.incomplete",
            "wrong",
            self.words.say(key, &count),
        );
        outcome.mistakes.push("force-forgotten");
        outcome.numbered = false;
        outcome
    }

    /// The pivot.
    pub(super) fn choose_pivot(&mut self, line: &str) -> Outcome {
        let body = [("body", Slot::Word(self.problem.body().noun.clone()))];
        let negated = line
            .split_whitespace()
            .any(|word| matches!(word.to_lowercase().as_str(), "not" | "except" | "without"));
        match pivot_said(&self.problem, &self.words, line).filter(|_| !negated) {
            Some(distance) if is_pivot(&self.problem, self.key.pivot, distance) => {
                self.state.pivot_said = true;
                self.reach(StepId::Pivot, Progress::Done);
                let message = self.words.say("talk.pivot-right", &body);
                let mut outcome = Outcome::verdict(Sign::Right, "verdict.right", "holds", message);
                outcome.progress.push(StepId::Pivot);
                outcome
            }
            Some(_) => {
                let message = self.words.say("talk.pivot-other", &body);
                Outcome::verdict(Sign::Noted, "verdict.noted", "noted", message)
            }
            None => self.unclear("talk.pivot-unclear"),
        }
    }

    fn unclear(&self, key: &str) -> Outcome {
        let body = [("body", Slot::Word(self.problem.body().noun.clone()))];
        Outcome::verdict(
            Sign::Unclear,
            "verdict.unclear",
            "not-understood",
            self.words.say(key, &body),
        )
    }

    /// A force in words: "the weight of the mast", "the pull of the rope".
    pub(super) fn force_title(&self, force: ForceId) -> String {
        let noun = self
            .problem
            .force(force)
            .map_or_else(String::new, |force| force.noun.to_owned());
        let key = match force {
            ForceId::OwnWeight | ForceId::Load(_) => "title.force-weight",
            ForceId::Rope(_) => "title.force-rope",
            ForceId::Support(_) => "title.force-support",
        };
        self.words
            .say(key, &[("noun", Slot::Word(noun))])
            .to_string()
    }

    /// Counts a wrong line at a step.
    pub(super) fn miss(&mut self, step: StepId, mistake: Option<&'static str>) {
        *self.state.wrong.entry(step).or_default() += 1;
        if let Some(id) = mistake {
            *self.state.mistakes.entry(id).or_default() += 1;
        }
    }

    /// Marks a step as reached by the line that is being answered.
    pub(super) fn reach(&mut self, step: StepId, progress: Progress) {
        let line = self.state.lines.len();
        self.state.reached.insert(step, (progress, Some(line)));
        self.state.open = None;
        self.state.hint_stage = 0;
    }
}
