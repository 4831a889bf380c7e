//! The first step, said in words: which forces act, where, and which way.

use super::reply::Reply;
use super::state::Pending;
use super::turn::{Progress, Sign};
use super::{Outcome, Session};
use crate::diagnosis::Voice;
use crate::judge::statement::{
    Clash, Fit, Invention, Named, Said, Statement, Topic, Way, WayAsked, WayFault, WayFit, Where,
    bare_number, is_on, may_be_a_place, may_stay_open, place_fits, read, way_after, way_fits,
};
use crate::key::StepId;
use crate::problem::{ForceId, Size};
use crate::text::{Prose, Slot};

impl Session {
    /// A statement about forces: each is named, then placed, then given its way.
    pub(super) fn name_force(&mut self, line: &str) -> Outcome {
        let loose = self.state.loose.take();
        let said = match read(&self.problem, &self.words, line) {
            Statement::Says(said) if self.is_only_an_angle(&said) => return self.ahead(line),
            Statement::Says(said) => said,
            Statement::Asks(topic) => return self.explain(topic),
            Statement::Chats => {
                let asked = self.question();
                return Outcome::talk(self.say("talk.chat").then(asked));
            }
            Statement::Calculates => match self.asked_place(line) {
                Some(place) => vec![Said::at(place)],
                None => return self.ahead(line),
            },
        };
        if said.is_empty() {
            let reply = Reply::unclear(self.not_recognised());
            return self.answered(vec![reply]);
        }
        // "Weight, down": "of what?": "the mast". The answer completes what was said before.
        let alone = said.len() == 1;
        let loose = loose.filter(|_| alone);
        let mut fresh: Vec<ForceId> = Vec::new();
        let mut replies = Vec::new();
        for part in said {
            let part = match alone {
                true => self.side_for_place(part),
                false => part,
            };
            let unclear = loose
                .and_then(|before| self.place_of_a_weight(before, &part))
                .or_else(|| self.place_asked(&part))
                .filter(|_| alone);
            let reply = match unclear {
                Some(noun) => Reply::unclear(self.one_or_two(noun)),
                None => {
                    let part = loose.map_or(part, |before| completed(before, part));
                    self.take(part, &mut fresh)
                }
            };
            replies.push(reply);
        }
        self.in_order_said(&fresh);
        self.answered(replies)
    }

    /// An angle where no force waits for its way.
    fn is_only_an_angle(&self, said: &[Said]) -> bool {
        let angle = |said: &Said| {
            said.named == Named::None
                && said.place.is_none()
                && said
                    .way
                    .is_some_and(|way| way.degrees.is_some() && !way.has_side())
        };
        self.state.pending.is_empty() && !said.is_empty() && said.iter().all(angle)
    }

    /// A number alone where a place is asked: metres, if it lies on the body.
    fn asked_place(&self, line: &str) -> Option<Where> {
        let open = self.state.pending.first()?;
        let metres = bare_number(line)?;
        (open.place.is_none() && is_on(&self.problem, metres)).then_some(Where::At(metres))
    }

    /// Takes one part of a statement.
    fn take(&mut self, said: Said, fresh: &mut Vec<ForceId>) -> Reply {
        let open = self.state.pending.first().map(|pending| pending.force);
        match said.named {
            Named::None | Named::SomeWeight | Named::SomeForce if said.strange => {
                self.state.loose = Some(said);
                Reply::asking(self.say("talk.maker-unknown"))
            }
            Named::Force(force) => self.take_force(force, &said, fresh),
            Named::Mass(_) => {
                self.state.loose = Some(said);
                Reply::asking(self.say("talk.mass"))
            }
            Named::Behind(_) => {
                self.state.loose = Some(said);
                Reply::asking(self.say("talk.behind"))
            }
            Named::Elsewhere => Reply::new(Sign::Wrong, self.say("talk.elsewhere")),
            Named::OneOrTwo(noun) => Reply::unclear(self.one_or_two(noun)),
            Named::SomeWeight => {
                let left = self.weights_left();
                match (open.filter(|open| left.contains(open)), left.as_slice()) {
                    (Some(open), _) => self.take_force(open, &said, fresh),
                    (None, [only]) => self.take_force(*only, &said, fresh),
                    (None, []) => Reply::new(Sign::Noted, self.say("talk.weights-again")),
                    (None, _) => {
                        self.state.loose = Some(said);
                        Reply::asking(self.say("talk.weight-which"))
                    }
                }
            }
            Named::SomeForce => {
                self.state.loose = Some(said);
                Reply::asking(self.say("talk.force-which"))
            }
            Named::Invented(kind) => Reply {
                mistake: Some("force-invented"),
                ..Reply::new(Sign::Wrong, self.nothing_like_that(kind))
            },
            Named::None => match open {
                Some(open) => self.take_force(open, &said, fresh),
                None if said.denied && said.place.is_none() && said.way.is_none() => {
                    Reply::asking(self.say("talk.denied"))
                }
                None => {
                    self.state.loose = Some(said);
                    Reply::asking(self.say("talk.force-which-so"))
                }
            },
        }
    }

    /// The noun of which it is unclear whether it is the place asked or a further force.
    fn place_asked(&self, said: &Said) -> Option<ForceId> {
        let open = self.state.pending.first()?;
        match said.named {
            Named::Force(noun)
                if place_fits(&self.problem, open.force, open.place) == Fit::Missing
                    && may_be_a_place(&self.problem, open.force, said) =>
            {
                Some(noun)
            }
            _ => None,
        }
    }

    /// "Weight": "of what?": "hinge, down" is perhaps its place.
    fn place_of_a_weight(&self, before: Said, part: &Said) -> Option<ForceId> {
        let weight = match before.named {
            Named::SomeWeight | Named::Mass(None) => *self.weights_left().first()?,
            Named::Mass(Some(force)) => force,
            _ => return None,
        };
        match part.named {
            Named::Force(noun) if before.place.is_none() => {
                may_be_a_place(&self.problem, weight, part).then_some(noun)
            }
            _ => None,
        }
    }

    fn one_or_two(&self, noun: ForceId) -> Prose {
        let noun = self.problem.force(noun);
        let noun = noun.map_or_else(String::new, |force| force.noun.to_owned());
        self.words
            .say("talk.one-or-two", &[("noun", Slot::Word(noun))])
    }

    /// Takes what was said of one force; a size said with it is not judged here.
    fn take_force(&mut self, force: ForceId, said: &Said, fresh: &mut Vec<ForceId>) -> Reply {
        let reply = self.take_named(force, said, fresh);
        if !said.sized || matches!(reply.sign, Sign::Wrong | Sign::Unclear) {
            return reply;
        }
        Reply {
            message: reply.message.then(self.say("talk.size-later")),
            ..reply
        }
    }

    fn take_named(&mut self, force: ForceId, said: &Said, fresh: &mut Vec<ForceId>) -> Reply {
        if said.moment {
            return Reply::new(Sign::Wrong, self.say("talk.moment-no-force"));
        }
        if said.refused {
            return Reply::asking(self.say("talk.denied"));
        }
        let between_ways = said.undecided && !may_stay_open(&self.problem, force);
        if said.two_places || between_ways {
            return Reply::asking(self.say("talk.undecided"));
        }
        if self.state.named.contains(&force) {
            return self.said_again(force, said);
        }
        let before = self
            .state
            .pending
            .iter()
            .find(|pending| pending.force == force);
        let mut pending = before.copied().unwrap_or(Pending {
            force,
            place: None,
            way: None,
            misplaced: false,
        });
        if !fresh.contains(&force) {
            fresh.push(force);
        }
        let place = said.place.or(pending.place);
        let heard = said.way.or_else(|| self.lifting_way(force, said));
        let way = match (heard, pending.way) {
            (Some(new), Some(old)) => Some(way_after(&self.problem, force, old, new)),
            (new, old) => new.or(old),
        };
        let place_fit = match self.place_fit(&Pending { place, ..pending }) {
            // The point was told before.
            Fit::Rough if pending.place.is_some() => Fit::Right,
            fit => fit,
        };
        let way_fit = way_fits(&self.problem, force, way);
        let exact = !matches!(said.place, Some(Where::Within(_))) || pending.place.is_none();
        if exact && matches!(place_fit, Fit::Right | Fit::Missing) {
            pending.place = place;
        }
        pending.misplaced |= place_fit == Fit::Wrong;
        if let Some(wrong) = self.wrong_verb(force, said) {
            self.store_pending(pending);
            return wrong;
        }
        // What is wrong, or guessed without ground, is not kept.
        let guessed = way_fit == WayFit::Missing(WayAsked::Guessed);
        let false_way = matches!(way_fit, WayFit::Wrong(_));
        if !guessed && !false_way {
            pending.way = way;
        }
        if let WayFit::Wrong(WayFault::Two(Clash::Straight)) = way_fit {
            let up = way.and_then(|way| way.up);
            pending.way = Some(Way {
                up,
                ..Way::default()
            });
        }
        // A whole way that was taken back by a false one is asked once more.
        if false_way && way_fits(&self.problem, force, pending.way) == WayFit::Right {
            pending.way = None;
        }
        self.store_pending(pending);
        if place_fit == Fit::Wrong {
            return self.misplaced(force, place);
        }
        match (way_fit, way) {
            (WayFit::Wrong(WayFault::Two(clash)), Some(way)) => {
                let two = self.two_ways(force, way, clash);
                let unsaid = Pending {
                    way: None,
                    ..pending
                };
                return Reply::asking(two.then(self.ask_on(&unsaid)));
            }
            (WayFit::Wrong(fault), _) => {
                return Reply::new(Sign::Wrong, self.wrong_way(force, fault));
            }
            _ => {}
        }
        match (place_fit, way_fit) {
            (Fit::Right, WayFit::Right) => self.complete(&pending),
            _ => {
                let remark = match (said.denied, guessed) {
                    (_, true) => self.say("talk.ask-hinge-guess"),
                    (true, _) => self.say("talk.denied"),
                    _ if place_fit == Fit::Rough => self.say("talk.place-rough"),
                    _ => Prose::default(),
                };
                Reply {
                    // A remark is no part of a list of names.
                    open: remark.is_empty().then_some(force),
                    ..Reply::asking(remark.then(self.ask_on(&pending)))
                }
            }
        }
    }

    /// A force said once more: another place or way than the one credited does not hold.
    fn said_again(&self, force: ForceId, said: &Said) -> Reply {
        let again = self.words.say("talk.force-again", &self.force_slots(force));
        let misplaced = place_fits(&self.problem, force, said.place) == Fit::Wrong;
        let verb = self.wrong_verb(force, said);
        let wrong = match (verb, way_fits(&self.problem, force, said.way)) {
            _ if misplaced => self.misplaced(force, said.place),
            (Some(wrong), _) => wrong,
            (None, WayFit::Wrong(WayFault::Two(clash))) => {
                Reply::asking(self.two_ways(force, said.way.unwrap_or_default(), clash))
            }
            (None, WayFit::Wrong(fault)) => Reply::new(Sign::Wrong, self.wrong_way(force, fault)),
            _ => return Reply::new(Sign::Noted, again),
        };
        Reply {
            message: again.then(wrong.message),
            ..wrong
        }
    }

    /// A force that is fully said.
    fn complete(&mut self, pending: &Pending) -> Reply {
        let force = pending.force;
        self.state.pending.retain(|other| other.force != force);
        self.state.name(force);
        self.state.hint_stage = 0;
        let guessed = pending.way.is_some_and(|way| !way.open);
        let key = match (may_stay_open(&self.problem, force), guessed) {
            (true, true) => "talk.hinge-right-guess",
            (true, false) => "talk.hinge-right-open",
            (false, _) => "talk.force-right",
        };
        Reply::new(Sign::Right, self.words.say(key, &self.force_slots(force)))
    }

    /// What is said where the verb alone tells a wrong way: a rope only pulls, and no weight lifts.
    fn wrong_verb(&self, force: ForceId, said: &Said) -> Option<Reply> {
        let key = match force {
            ForceId::Rope(_) if said.pushes => "talk.rope-pushes",
            _ if said.lifts && self.is_a_weight(force) => "talk.weight-way-wrong",
            _ => return None,
        };
        let slots = self.force_slots(force);
        Some(Reply::new(Sign::Wrong, self.words.say(key, &slots)))
    }

    pub(super) fn is_a_weight(&self, force: ForceId) -> bool {
        let force = self.problem.force(force);
        force.is_some_and(|force| matches!(force.size, Size::Weight(_)))
    }

    /// The way told by the verb alone: what lifts acts upwards. A level rope lifts a body too, as it
    /// turns it; of that no way is heard.
    fn lifting_way(&self, force: ForceId, said: &Said) -> Option<Way> {
        let up = Way {
            up: Some(true),
            ..Way::default()
        };
        let fits = !matches!(way_fits(&self.problem, force, Some(up)), WayFit::Wrong(_));
        (said.lifts && fits).then_some(up)
    }

    /// What is still to be said of a force, in one sentence.
    fn ask_on(&self, pending: &Pending) -> Prose {
        let slots = self.force_slots(pending.force);
        let asked = match way_fits(&self.problem, pending.force, pending.way) {
            WayFit::Missing(asked) => Some(asked),
            _ => None,
        };
        let place = self.place_fit(pending) == Fit::Missing;
        let part = match asked {
            Some(WayAsked::UpOrDown) => self.words.say("talk.ask-up-or-down", &slots),
            Some(WayAsked::LeftOrRight) => self.words.say("talk.ask-left-or-right", &slots),
            Some(WayAsked::More) => self.words.say("talk.ask-more-way", &slots),
            Some(WayAsked::Told) => self.words.say("talk.ask-way-told", &slots),
            Some(WayAsked::All | WayAsked::Guessed) | None => Prose::default(),
        };
        let whole_way = matches!(
            asked,
            Some(WayAsked::All | WayAsked::Told | WayAsked::Guessed)
        );
        match (place, whole_way) {
            (true, true) => part.then(self.words.say("talk.open-where-way", &slots)),
            (true, false) => part.then(self.words.say("talk.open-where", &slots)),
            (false, true) => part.then(self.words.say("talk.open-way", &slots)),
            (false, false) => part,
        }
    }

    /// The forces just named stand before those named earlier, in the order said.
    fn in_order_said(&mut self, fresh: &[ForceId]) {
        let place = |pending: &Pending| {
            fresh
                .iter()
                .position(|force| *force == pending.force)
                .unwrap_or(fresh.len())
        };
        self.state.pending.sort_by_key(place);
    }

    fn store_pending(&mut self, pending: Pending) {
        match self
            .state
            .pending
            .iter_mut()
            .find(|other| other.force == pending.force)
        {
            Some(known) => *known = pending,
            None => self.state.pending.push(pending),
        }
    }

    fn weights_left(&self) -> Vec<ForceId> {
        let forces = self.problem.forces();
        let weights = forces.iter().map(|force| force.id).filter(|id| {
            matches!(id, ForceId::OwnWeight | ForceId::Load(_)) && !self.state.named.contains(id)
        });
        weights.collect()
    }

    /// What is still open of a force named earlier.
    pub(super) fn still_open(&self) -> Prose {
        match self.state.pending.first() {
            Some(pending) => self.ask_on(pending),
            None => Prose::default(),
        }
    }

    fn not_recognised(&self) -> Prose {
        match self.state.pending.first() {
            Some(pending) => self.say("talk.pending-unclear").then(self.ask_on(pending)),
            None => self.say("talk.force-unclear"),
        }
    }

    pub(super) fn nothing_like_that(&self, kind: Invention) -> Prose {
        self.say(&format!("talk.invented.{}", kind.word()))
    }

    /// The answer to a question at the first two steps.
    pub(super) fn explain(&mut self, topic: Topic) -> Outcome {
        self.state.astray = 0;
        Outcome::talk(match topic {
            Topic::Forces => self.say("talk.what.forces"),
            Topic::Weight => self.say("talk.what.weight"),
            Topic::Rope => self.say("talk.what.rope"),
            Topic::Hinge => self.say("talk.what.hinge"),
            Topic::Pivot => self.say("talk.pivot-why"),
            Topic::Invented(kind) => self.nothing_like_that(kind),
        })
    }

    /// "That is all": true or not.
    pub(super) fn forces_done(&mut self) -> Outcome {
        let said = |id: &ForceId| {
            let pending = self.state.pending.iter();
            self.state.named.contains(id) || pending.map(|open| &open.force).any(|open| open == id)
        };
        let forces = self.problem.forces();
        let missing = forces.iter().map(|force| force.id).filter(|id| !said(id));
        let missing: Vec<ForceId> = missing.collect();
        let open = self.still_open();
        // How many are missing is a part of the answer.
        let message = match missing.is_empty() {
            true => open,
            false => self.say("talk.force-missing").then(open),
        };
        let (sign, verdict) = (Sign::Incomplete, "verdict.incomplete");
        let mut outcome = Outcome::verdict(sign, verdict, "not-done", message);
        // A force that was named is not forgotten, though its place or its way is open.
        if !missing.is_empty() {
            self.miss(StepId::Forces, Some(unsaid(&missing)));
            outcome.mistakes.push("force-forgotten");
        }
        outcome.numbered = false;
        outcome
    }

    /// What of the force at hand is asked: `where-way`, `where`, `way`, or `way-open`.
    pub(super) fn pending_asks(&self) -> Option<&'static str> {
        let pending = self.state.pending.first()?;
        let place = self.place_fit(pending) == Fit::Missing;
        let way = way_fits(&self.problem, pending.force, pending.way) != WayFit::Right;
        Some(match (place, way) {
            (true, true) => "where-way",
            (true, false) => "where",
            _ if may_stay_open(&self.problem, pending.force) => "way-open",
            _ => "way",
        })
    }

    /// A sentence that may name the body.
    pub(super) fn say(&self, key: &str) -> Prose {
        let body = [("body", Slot::Word(self.problem.body().noun.clone()))];
        self.words.say(key, &body)
    }

    pub(super) fn force_slots(&self, force: ForceId) -> [(&'static str, Slot); 2] {
        [
            ("force", Slot::Word(self.force_title(force))),
            ("body", Slot::Word(self.problem.body().noun.clone())),
        ]
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
        self.miss_told(step, mistake.map(|id| (id, Voice::Flat)));
    }

    /// The same, where a mistake was named perhaps only.
    pub(super) fn miss_told(&mut self, step: StepId, mistake: Option<(&'static str, Voice)>) {
        let line = self.state.next_number;
        *self.state.wrong.entry(step).or_default() += 1;
        self.state.wrong_lines.push(line);
        if let Some((id, voice)) = mistake {
            let told = self.state.mistakes.entry(id).or_default();
            told.times += 1;
            told.flatly += usize::from(voice == Voice::Flat);
            if told.lines.last() != Some(&line) {
                told.lines.push(line);
            }
        }
    }

    /// Marks a step as reached by the line that is being answered.
    pub(super) fn reach(&mut self, step: StepId, progress: Progress) {
        let line = self.state.lines.len();
        self.state.reached.insert(step, (progress, Some(line)));
        self.state.open = None;
        self.state.hint_stage = 0;
        self.state.astray = 0;
    }
}

/// What forces that were not named are called in the summary: by their kind, if it is one.
fn unsaid(missing: &[ForceId]) -> &'static str {
    let kind = |id: &ForceId| match id {
        ForceId::OwnWeight => "unsaid-own-weight",
        ForceId::Load(_) => "unsaid-load",
        ForceId::Rope(_) => "unsaid-rope",
        ForceId::Support(_) => "unsaid-support",
    };
    let first = missing.first().map_or("unsaid", kind);
    match missing.iter().all(|id| kind(id) == first) {
        true => first,
        false => "unsaid",
    }
}

/// What was said before it was clear of which force, completed by the next line.
fn completed(before: Said, part: Said) -> Said {
    let weight = matches!(
        part.named,
        Named::SomeWeight | Named::Force(ForceId::OwnWeight | ForceId::Load(_))
    );
    let named = match (before.named, part.named) {
        // "The mass of the mast": "a mass is no force": "its weight, then".
        (Named::Mass(Some(force)), Named::SomeWeight) => Named::Force(force),
        (_, Named::None) => return part,
        // A further force is not what was asked about.
        (Named::Mass(_) | Named::SomeWeight, _) if !weight => return part,
        (Named::Behind(_), _) if weight => return part,
        (_, named) => named,
    };
    Said {
        named,
        place: part.place.or(before.place),
        way: part.way.or(before.way),
        ..part
    }
}
