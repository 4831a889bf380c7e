//! What is said about a judged line. All sentences come from the catalogue of words.

use super::Session;
use super::state::Open;
use crate::diagnosis::{Diagnosis, Voice};
use crate::hint::{on_body, way_word};
use crate::judge::{Judgement, Remark, Truth};
use crate::key::{Axis, StepId};
use crate::text::{Prose, Slot};
use crate::units::{Dimension, number_text, unit_for, value_text};

/// Of so many earlier lines it is told that a line rests on them.
const LINES_TOLD: usize = 3;

/// What is named about a line that does not hold, where that is no mistake of the catalogue: the
/// end of its key under `summary.slip`. In the order of what is said (see `words_of_wrong`).
pub(super) fn slip_told(judgement: &Judgement, diagnosis: &Diagnosis) -> Option<&'static str> {
    let evidence = &judgement.evidence;
    let by_form = diagnosis.is_by_form();
    Some(match &judgement.truth {
        Truth::TooFewFigures => "figures",
        Truth::WrongUnit { .. } => "unit",
        Truth::Mismatched(_) => "mismatch",
        Truth::OtherAngle => "other-angle",
        _ if evidence.runs_on => "sum",
        _ if evidence.reaction_arm || evidence.surplus && !by_form => "surplus",
        _ if evidence.wrong_angle.is_some() && !by_form => "other-angle",
        _ if evidence.lacking.is_some() && !by_form => "lacking",
        _ if evidence.same_turn => "sense",
        _ if evidence.takes_ten || evidence.gravity_told => "gravity",
        _ if evidence.negative_pull || evidence.wrong_way || evidence.wrong_body => "way",
        _ if evidence.other_line => "line",
        _ if evidence.is_misread(by_form) => "misread",
        _ => match diagnosis.spoken() {
            Some(named) if !diagnosis.slip || named.voice == Voice::Flat => return None,
            _ if diagnosis.slip || diagnosis.pen_slip => "sum",
            None if evidence.angle_sum.is_some() => "angle-sum",
            _ => return None,
        },
    })
}

impl Session {
    /// What is said about a line that holds.
    pub(super) fn words_of_right(&self, asked: StepId, judgement: &Judgement) -> Prose {
        let target = judgement.target;
        let mut prose = Prose::default();
        if target != asked && !judgement.establishes.contains(&asked) && !self.is_free() {
            let slots = [
                ("other", Slot::Word(self.title(target))),
                ("step", Slot::Word(self.title(asked))),
            ];
            // Whichever balance it is, it gives what that one would give.
            let key = match target.is_balance() && self.is_general() {
                true => "general.counts-as",
                false => "talk.other-settled",
            };
            prose = self.words.say(key, &slots);
            // The steps that lead to it stand before it, and nobody needs them now.
            if target.is_pull() && self.leads_to(asked, target) {
                prose = prose.then(self.words.say("talk.may-skip", &[]));
            }
        }
        match &judgement.truth {
            Truth::HoldsRounded => prose = prose.then(self.words.say("talk.rounded", &[])),
            Truth::Follows(lines) if lines.is_empty() => {
                prose = prose.then(self.words.say("talk.follows-relation", &[]))
            }
            Truth::Follows(lines) => prose = prose.then(self.own_lines(lines)),
            _ => {}
        }
        if !judgement.remarks.contains(&Remark::OppositeSense) {
            prose = prose.then(self.points(target));
        }
        for remark in &judgement.remarks {
            prose = prose.then(self.remark(remark, target));
        }
        if let Some((name, _)) = &judgement.names {
            let slots = [
                ("name", Slot::Name(name.clone())),
                ("step", Slot::Word(self.title(target))),
            ];
            prose = prose.then(self.words.say("talk.own-name", &slots));
        }
        // What follows from a wrong relation is no balance that holds.
        let of_relation = judgement.truth == Truth::Follows(Vec::new());
        if target.is_balance() && !of_relation {
            prose = prose.then(self.words.say("talk.moment-sum-right", &[]));
        }
        prose
    }

    /// The lines whose values a line rests on; three at most.
    pub(super) fn own_lines(&self, lines: &[usize]) -> Prose {
        let told = lines.iter().take(LINES_TOLD).map(ToString::to_string);
        let told: Vec<String> = told.collect();
        let key = match lines.len() {
            1 => "talk.follows",
            count if count <= LINES_TOLD => "talk.follows-lines",
            _ => "talk.follows-others",
        };
        self.words
            .say(key, &[("lines", Slot::Word(told.join(", ")))])
    }

    fn remark(&self, remark: &Remark, target: StepId) -> Prose {
        let dimension = self
            .key
            .step(target)
            .map_or(Dimension::NUMBER, |step| step.dimension);
        let unit = unit_for(dimension)
            .map_or("", |unit| unit.symbol)
            .to_owned();
        let last = target.is_unknown();
        let (key, slots) = match remark {
            Remark::UnitMissing if last => ("remark.unit-last", vec![("unit", Slot::Value(unit))]),
            Remark::UnitMissing => ("remark.unit", vec![("unit", Slot::Value(unit))]),
            Remark::PrintedUnit(unit) => {
                let slots = vec![("unit", Slot::Value((*unit).to_owned()))];
                ("remark.printed-unit", slots)
            }
            Remark::FewFigures | Remark::FewFiguresTyped if self.asked().is_none() => {
                let slots = vec![("figures", Slot::Word(self.figures_word()))];
                ("remark.figures-last", slots)
            }
            Remark::FewFiguresTyped | Remark::FewFigures => {
                let slots = vec![("figures", Slot::Word(self.carried_word()))];
                match remark {
                    Remark::FewFigures => ("remark.figures", slots),
                    _ => ("remark.figures-typed", slots),
                }
            }
            Remark::OtherGravity(gravity) => {
                let own = number_text(self.problem.gravity());
                (
                    "remark.gravity",
                    vec![
                        ("g", Slot::Value(number_text(*gravity))),
                        ("own", Slot::Value(own)),
                    ],
                )
            }
            Remark::OppositeSense if target.along().is_none() => ("remark.other-sense", Vec::new()),
            Remark::OppositeSense => {
                let symbol = self.key.step(target).map(|step| step.symbol.shown());
                let slots = vec![
                    ("symbol", Slot::Name(symbol.unwrap_or_default())),
                    ("way", Slot::Prose(self.way_of(target))),
                ];
                ("remark.opposite", slots)
            }
            Remark::OnBody(place) => {
                let general = self.key.general.as_ref();
                let both = general.and_then(|general| general.between.get(&target));
                let body = both.and_then(|both| both.get(*place)).cloned();
                let slots = vec![("body", Slot::Word(body.unwrap_or_default()))];
                ("general.on-body", slots)
            }
            Remark::OtherPart(Axis::Horizontal) => ("remark.level-part-too", Vec::new()),
            Remark::OtherPart(Axis::Vertical) => ("remark.upright-part-too", Vec::new()),
            Remark::OtherReading => ("remark.other-reading", Vec::new()),
            Remark::NotNewtons => ("remark.not-newtons", Vec::new()),
            Remark::SignInSum => ("remark.sign-in-sum", Vec::new()),
            Remark::TakenAsZero => ("remark.taken-as-zero", Vec::new()),
            Remark::NegativePull if self.is_push(target) => ("remark.negative-push", Vec::new()),
            Remark::NegativePull => ("remark.negative-pull", Vec::new()),
            Remark::NotSeen => ("remark.way-not-seen", Vec::new()),
            Remark::AllKnown
            | Remark::OfNumbers
            | Remark::HoldsHere
            | Remark::ByChance
            | Remark::LeaveLetter
            | Remark::RestsOnOpen
            | Remark::OtherUnknowns(_)
            | Remark::OtherName(_)
            | Remark::SensesTaken(_)
            | Remark::SignAndWay
            | Remark::WayOpen
            | Remark::SaidAlready(_)
            | Remark::OwnAgain(_)
            | Remark::SaysNothing => {
                return Prose::default();
            }
        };
        self.words.say(key, &slots)
    }

    /// What is said about a line that does not hold.
    pub(super) fn words_of_wrong(
        &self,
        asked: StepId,
        judgement: &Judgement,
        diagnosis: &Diagnosis,
    ) -> Prose {
        match &judgement.truth {
            Truth::NotUnderstood(misreading) => {
                let key = misreading.trouble.key();
                return self.words.say(key, &misreading.trouble.slots());
            }
            Truth::Mismatched(mismatch) => return self.mismatch(mismatch),
            Truth::Noted => return self.noted(judgement),
            Truth::OtherAngle => {
                let degrees = judgement.evidence.number.map_or(0.0, |number| number.value);
                let slots = [
                    (
                        "value",
                        Slot::Value(value_text(degrees, Dimension::ANGLE, 3)),
                    ),
                    ("step", Slot::Word(self.title(asked))),
                ];
                return self.words.say("talk.other-angle", &slots);
            }
            Truth::Circular => {
                let symbol = self
                    .key
                    .step(judgement.target)
                    .map_or_else(String::new, |step| step.symbol.shown());
                let key = if self.names_target(judgement) {
                    "talk.circular"
                } else {
                    "talk.open-unknown"
                };
                return self.words.say(key, &[("symbol", Slot::Name(symbol))]);
            }
            Truth::TooFewFigures => {
                let slots = [
                    ("carried", Slot::Word(self.carried_word())),
                    ("figures", Slot::Word(self.figures_word())),
                ];
                return self.words.say("talk.too-few-figures", &slots);
            }
            Truth::WrongUnit { wanted, found } => {
                let of_kind = unit_for(*wanted).map_or("", |unit| unit.symbol);
                let unit = judgement.evidence.right_in.unwrap_or(of_kind);
                let slots = [
                    ("wanted", Slot::Word(self.kind(*wanted))),
                    ("found", Slot::Word(self.kind(*found))),
                    ("unit", Slot::Value(unit.to_owned())),
                ];
                let key = match unit_for(*wanted) {
                    // Who leaves g out gets the number in kilograms-force.
                    _ if wanted == found && unit.starts_with("kgf") => "talk.as-masses",
                    _ if wanted == found => "talk.wrong-prefix",
                    Some(_) => "talk.wrong-unit",
                    None => "talk.wrong-unit-none",
                };
                return self.words.say(key, &slots);
            }
            _ => {}
        }
        let prose = match self.evidence_told(judgement, diagnosis) {
            Some(told) => told,
            None => self.diagnosis_told(asked, judgement, diagnosis),
        };
        let prose = match judgement.evidence.after_right {
            true => self.words.say("talk.first-part-holds", &[]).then(prose),
            false => prose,
        };
        // Said once a step; the footer and `help` say it always.
        match self.state.open.is_some() {
            true => prose,
            false => prose.then(self.offer_after(judgement)),
        }
    }

    /// What may be done about a line that does not hold.
    pub(super) fn offer(&self) -> Prose {
        let key = match self.is_free() {
            true => "talk.after-wrong-freely",
            false => "talk.after-wrong",
        };
        self.words.say(key, &[])
    }

    /// The thought behind a line, a slip, or that none is known.
    fn diagnosis_told(&self, asked: StepId, judgement: &Judgement, diagnosis: &Diagnosis) -> Prose {
        // A value where a balance is asked is compared with the unknown, and need not be meant
        // for it.
        let balance = asked == StepId::MomentSum && !self.names_target(judgement);
        let about = if balance { asked } else { judgement.target };
        let mut prose = match diagnosis.spoken() {
            Some(named) if !diagnosis.slip || named.voice == Voice::Flat => {
                self.thoughts_told(judgement, diagnosis, named)
            }
            _ if diagnosis.component_for_pull => {
                let slots = [
                    ("force", Slot::Name(self.unknown_symbol())),
                    ("body", Slot::Word(self.problem.body().noun.clone())),
                ];
                self.words.say("talk.component-for-pull", &slots)
            }
            _ if diagnosis.slip
                && (judgement.evidence.number.is_none() || judgement.evidence.broken_by_form) =>
            {
                self.words.say("talk.slip-link", &[])
            }
            _ if diagnosis.slip => self.words.say("talk.slip", &[]),
            _ if diagnosis.pen_slip => self.words.say("talk.pen-slip", &[]),
            _ if diagnosis.coarse => self.words.say("talk.rounded-hard", &[]),
            _ if diagnosis.ten => {
                let own = Slot::Value(number_text(self.problem.gravity()));
                self.words.say("talk.perhaps-ten", &[("own", own)])
            }
            None if let Some(sum) = judgement.evidence.angle_sum => self.angle_sum(about, sum),
            _ => {
                let step = [("step", Slot::Word(self.title(about)))];
                if self.is_free() && !self.names_target(judgement) {
                    return self.words.say("talk.unexplained-freely", &[]);
                }
                let values_right = self.state.standing.values().all(|own| own.right);
                let mended = |open: &Open| self.state.reached.contains_key(&open.judgement.target);
                let stands = values_right
                    && self.state.carried.is_empty()
                    && self.state.judged.values().all(mended);
                let key = if stands && !self.is_free() {
                    "talk.unexplained"
                } else {
                    "talk.unexplained-own"
                };
                self.words.say(key, &step)
            }
        };
        if let Some(dimension) = judgement.evidence.dimension.filter(|_| !balance) {
            let wanted = self
                .key
                .step(judgement.target)
                .map_or(Dimension::NUMBER, |step| step.dimension);
            let slots = [
                ("found", Slot::Word(self.kind(dimension))),
                ("wanted", Slot::Word(self.kind(wanted))),
            ];
            prose = self.words.say("talk.dimension", &slots).then(prose);
        }
        prose
    }

    /// True if the line that was read names its own target.
    pub(super) fn names_target(&self, judgement: &Judgement) -> bool {
        let symbol = self
            .key
            .step(judgement.target)
            .map_or_else(String::new, |step| step.symbol.shown());
        judgement.layout.as_ref().is_some_and(|layout| {
            layout
                .split(|c: char| !(c.is_alphanumeric() || c == '⊥'))
                .any(|word| word == symbol)
        })
    }

    fn noted(&self, judgement: &Judgement) -> Prose {
        if judgement.target == StepId::KnownMoments {
            return self.words.say("talk.known-moments", &[]);
        }
        if judgement.remarks.contains(&Remark::SaysNothing) {
            return self.words.say("talk.says-nothing", &[]);
        }
        if judgement.remarks.contains(&Remark::OfNumbers) {
            return self.words.say("talk.true-of-numbers", &[]);
        }
        if let Some(line) = judgement.own_again_of() {
            let slots = [("line", Slot::Word(line.to_string()))];
            return self.words.say("talk.own-again", &slots);
        }
        let there = judgement.remarks.iter().find_map(|remark| match remark {
            Remark::SaidAlready(there) => Some(*there),
            _ => None,
        });
        if let Some(there) = there {
            return self.general_said_already(there);
        }
        if judgement.remarks.contains(&Remark::SignAndWay) {
            return self.words.say("talk.sign-and-way", &[]);
        }
        if judgement.remarks.contains(&Remark::WayOpen) {
            return self.words.say("talk.way-open", &[]);
        }
        let hers = judgement.names.is_some() && self.is_free();
        if judgement.remarks.contains(&Remark::LeaveLetter) && !hers {
            return self.leave_letter(judgement.target);
        }
        let other = judgement.remarks.iter().find_map(|remark| match remark {
            Remark::OtherName(other) => Some(*other),
            _ => None,
        });
        if let Some(other) = other {
            return self.other_name(judgement.target, other);
        }
        if judgement.remarks.contains(&Remark::HoldsHere) {
            return self.words.say("talk.holds-here", &[]);
        }
        if self.is_far(judgement) {
            return self.words.say("talk.unproved-own", &[]);
        }
        if judgement.remarks.contains(&Remark::ByChance) {
            return self.words.say("talk.unproved-known", &[]);
        }
        if judgement.remarks.contains(&Remark::NotSeen) {
            let all_known = judgement.remarks.contains(&Remark::AllKnown);
            let key = match judgement.target {
                StepId::MomentSum => "talk.unproved-balance",
                step if step.is_balance() && all_known => "general.unproved-which",
                step if step.is_balance() => "general.unproved",
                _ if all_known => "talk.unproved-which",
                _ => "talk.unproved",
            };
            return self.words.say(key, &[]);
        }
        let others = judgement.remarks.iter().find_map(|remark| match remark {
            Remark::OtherUnknowns(others) => Some(others),
            _ => None,
        });
        let senses = self.senses_taken(judgement);
        if others.is_some() && self.is_free() {
            return self.holds_with(&self.open_names(judgement)).then(senses);
        }
        if let Some(others) = others.filter(|_| self.is_general()) {
            return self.general_still_unknown(others);
        }
        if let Some(others) = others {
            return self.still_unknown(others).then(senses);
        }
        match &judgement.names {
            Some((_, own)) if own.of_open_weight && !self.may_tell(own) => {
                self.words.say("talk.noted", &[])
            }
            Some((name, own)) if !self.may_tell(own) => {
                let slots = [
                    ("name", Slot::Name(name.clone())),
                    ("symbol", Slot::Name(self.unknown_symbol())),
                ];
                self.words.say("talk.noted-open", &slots)
            }
            Some((name, own)) => {
                let value = value_text(own.value, own.dimension, self.problem.figures());
                let slots = [
                    ("name", Slot::Name(name.clone())),
                    ("value", Slot::Value(value)),
                ];
                self.words.say("talk.noted-name", &slots)
            }
            None if judgement.proved => self.still_asked().then(senses),
            None => self.words.say("talk.noted", &[]),
        }
    }

    /// A value that is none of the step, and nothing more.
    pub(super) fn not_yet(&self, step: StepId) -> Prose {
        let slots = [("step", Slot::Word(self.title(step)))];
        self.words.say("talk.unexplained-own", &slots)
    }

    /// The value asked, under the name of another quantity.
    fn other_name(&self, asked: StepId, other: StepId) -> Prose {
        let symbol = |id: StepId| {
            let step = self.key.step(id);
            Slot::Name(step.map_or_else(String::new, |step| step.symbol.shown()))
        };
        let slots = [
            ("step", Slot::Word(self.title(asked))),
            ("symbol", symbol(asked)),
            ("other", symbol(other)),
            ("title", Slot::Word(self.title(other))),
        ];
        self.words.say("talk.other-name", &slots)
    }

    /// The senses in which a balance with parts of the hinge's force in it holds.
    pub(super) fn senses_taken(&self, judgement: &Judgement) -> Prose {
        let senses = judgement.remarks.iter().find_map(|remark| match remark {
            Remark::SensesTaken(senses) => Some(senses),
            _ => None,
        });
        let told = senses.into_iter().flatten().filter_map(|(step, against)| {
            let way = self.way_counted(*step, *against)?;
            let slots = [
                ("symbol", Slot::Name(self.key.step(*step)?.symbol.shown())),
                ("way", Slot::Prose(way)),
            ];
            Some(self.words.say("talk.sense-taken", &slots))
        });
        told.fold(Prose::default(), Prose::then)
    }

    /// The way in which a part of the hinge's force is counted; of a joint's on its first body.
    pub(super) fn way_counted(&self, step: StepId, against: bool) -> Option<Prose> {
        let (axis, positive) = match step.along() {
            Some(axis) => (axis, true),
            None => {
                let way = self.key.general.as_ref()?.ways.get(&step)?;
                super::ways::axis_of((way.x, way.y))?
            }
        };
        let positive = positive != against;
        let kept = self.is_free() || !self.is_general();
        let told = kept && step.has_free_sense();
        let way = || self.words.say(way_word(axis, positive), &[]);
        told.then(|| on_body(&self.words, &self.key, step, way()))
    }

    /// A line that holds and leaves the question open.
    pub(super) fn still_asked(&self) -> Prose {
        if self.is_free() {
            return self.words.say("talk.holds", &[]);
        }
        let asked = self.asked();
        let step = asked.map_or_else(String::new, |step| self.title(step));
        let key = match asked {
            Some(step) if step.is_balance() => "talk.holds-open-balance",
            _ => "talk.holds-open",
        };
        self.words.say(key, &[("step", Slot::Word(step))])
    }

    /// A balance that holds with more than one unknown in it.
    fn still_unknown(&self, others: &[StepId]) -> Prose {
        let mut names = vec![self.unknown_symbol()];
        names.extend(
            others
                .iter()
                .filter_map(|step| self.key.step(*step))
                .map(|step| step.symbol.shown()),
        );
        names.dedup();
        let slots = [
            ("unknowns", Slot::Word(names.join(", "))),
            ("symbol", Slot::Name(self.unknown_symbol())),
            ("pivot", Slot::Word(self.pivot_noun())),
        ];
        self.words.say("talk.holds-unknowns", &slots)
    }

    /// The symbol of the unknown of the moment balance.
    pub(super) fn unknown_symbol(&self) -> String {
        let unknown = self
            .key
            .unknown()
            .and_then(|unknown| self.key.step(unknown));
        unknown.map_or_else(String::new, |step| step.symbol.shown())
    }

    /// The kind of quantity of a dimension: "a force".
    pub(super) fn kind(&self, dimension: Dimension) -> String {
        let key = match dimension {
            Dimension::FORCE => "kind.force",
            Dimension::MOMENT => "kind.moment",
            Dimension::MASS => "kind.mass",
            Dimension::LENGTH => "kind.length",
            Dimension::ANGLE => "kind.angle",
            Dimension::ACCELERATION => "kind.acceleration",
            Dimension::NUMBER => "kind.number",
            _ => "kind.other",
        };
        self.words.word(key)
    }
}
