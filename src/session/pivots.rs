//! The named places of the drawing about which moments may be taken, and a point chosen among them
//! in a free working.

use super::command::{Command, command};
use super::{Outcome, Session};
use crate::judge::statement::{PivotSaid, is_pivot, pivot_said};
use crate::key::StepId;
use crate::problem::{ForceId, Place};
use crate::text::{Prose, Slot};

/// Two places no farther apart than this are one, in metres.
const SAME_PLACE: f64 = 1e-6;

/// A place of the drawing about which moments may be taken.
#[derive(Clone, Debug, PartialEq)]
pub struct PivotPlace {
    /// Where it is.
    pub place: Place,
    /// What is there, in a few words: "the hinge".
    pub name: String,
    /// What taking it means now.
    pub told: Prose,
    /// The line that takes it; none where there is nothing to take.
    pub line: Option<String>,
    /// The line that works freely about it, where the steps that are asked are about another point.
    pub freely: Option<String>,
}

impl Session {
    /// The places from the foot of the body to its tip; empty for bodies in general, and where no
    /// step is asked.
    pub(super) fn pivot_places(&self) -> Vec<PivotPlace> {
        let asked = self.reason_step().is_none() && (self.asked().is_some() || self.is_free());
        if self.is_general() || !asked || self.is_finished() {
            return Vec::new();
        }
        let (problem, values) = (&self.problem, self.problem.values());
        let mut named: Vec<(Place, String)> = Vec::new();
        for force in problem.forces() {
            let key = match force.id {
                ForceId::Support(_) | ForceId::Load(_) => "pivot.at",
                ForceId::Rope(_) => "pivot.at-rope",
                ForceId::OwnWeight if force.at == Place::Middle => "pivot.at-middle",
                ForceId::OwnWeight => continue,
            };
            let slots = [("noun", Slot::Word(force.noun.to_owned()))];
            named.push((force.at, self.words.say(key, &slots).to_string()));
        }
        named.push((Place::Tip, self.words.word("pivot.at-tip")));
        named.push((Place::Foot, self.words.word("pivot.at-foot")));
        let distance = |place: Place| problem.distance(place, &values);
        let mut places: Vec<(Place, Vec<String>)> = Vec::new();
        for (place, name) in named {
            let is_here = |other: &Place| (distance(*other) - distance(place)).abs() < SAME_PLACE;
            match places.iter_mut().find(|(other, _)| is_here(other)) {
                Some((_, names)) => names.push(name),
                None => places.push((place, vec![name])),
            }
        }
        places.sort_by(|one, other| distance(one.0).total_cmp(&distance(other.0)));
        let places = places.into_iter();
        places
            .filter_map(|(place, names)| self.pivot_place(place, distance(place), &names))
            .collect()
    }

    /// One place, said by the first of its names that is read as it.
    fn pivot_place(&self, place: Place, metres: f64, names: &[String]) -> Option<PivotPlace> {
        let said = |name: &String| {
            let slots = [("place", Slot::Word(name.clone()))];
            self.words.say("pivot.line", &slots).to_string()
        };
        let is_it = |line: &String| match self.pivot_chosen(line) {
            Some(read) => (read - metres).abs() < SAME_PLACE,
            None => false,
        };
        let (name, line) = names
            .iter()
            .map(|name| (name, said(name)))
            .find(|(_, line)| is_it(line))?;
        let guided = is_pivot(&self.problem, self.key.pivot, metres);
        let order = self.words.word("command.freely");
        let order = order.split(',').next().unwrap_or_default();
        let freely = format!("{order}, {line}");
        let (key, line, freely) = match (self.is_free(), self.asked()) {
            (true, _) => ("pivot.take", Some(line), None),
            (false, Some(StepId::Pivot)) if guided => ("pivot.take", Some(line), None),
            (false, Some(StepId::Pivot)) => ("pivot.other", Some(line), Some(freely)),
            (false, _) if guided => ("pivot.taken-here", None, None),
            (false, _) => ("pivot.freely", Some(freely), None),
        };
        // Where several things are, all of them are told.
        let slots = [
            ("place", Slot::Word(name.clone())),
            ("pivot", Slot::Word(self.pivot_noun())),
        ];
        Some(PivotPlace {
            place,
            name: names.join(", "),
            told: self.words.say(key, &slots),
            line,
            freely,
        })
    }

    /// The point that a line says in words to take moments about, in metres from the foot. A value or
    /// a form of a moment says none: "the moment of T is 471 N m".
    pub(super) fn pivot_chosen(&self, line: &str) -> Option<f64> {
        let lower = line.trim().to_lowercase();
        let leads = self.words.word("pivot.lead");
        let led = leads.split(',').any(|lead| {
            let rest = lower.strip_prefix(lead.trim());
            rest.is_some_and(|rest| rest.starts_with(' '))
        });
        let told = lower.contains(|c: char| c.is_ascii_digit() || "=:*·+/".contains(c));
        if self.is_general() || !led || told {
            return None;
        }
        match pivot_said(&self.problem, &self.words, line) {
            PivotSaid::At(metres) | PivotSaid::OnUnknown(metres, _) => Some(metres),
            _ => None,
        }
    }

    /// `freely, moments about the tip`: a free working begun with its point.
    pub(super) fn begin_freely_about(&mut self, line: &str) -> Option<Outcome> {
        let (order, rest) = line.split_once(',')?;
        if command(&self.words, order) != Some(Command::Freely) {
            return None;
        }
        let metres = self.pivot_chosen(rest)?;
        let begun = self.begin_freely();
        if let Some(freely) = &mut self.state.freely {
            freely.said.about = Some(metres);
        }
        let noted = self.pivot_noted(metres);
        Some(Outcome {
            message: noted.then(begun.message),
            ..begun
        })
    }

    /// The answer to a line of a free working that says a point.
    pub(super) fn answer_pivot_freely(&self, line: &str) -> Option<Outcome> {
        let metres = self.pivot_chosen(line)?;
        Some(Outcome::noted(self.pivot_noted(metres)))
    }

    /// What is said of a point that was chosen for a free working.
    fn pivot_noted(&self, metres: f64) -> Prose {
        let key = match is_pivot(&self.problem, self.key.pivot, metres) {
            true => "pivot.noted",
            false => "pivot.noted-other",
        };
        self.say(key)
    }

    /// Where the ring of the pivot is drawn: at the point that was told last in words, else, once
    /// moments are taken, at the hinge.
    pub(super) fn pivot_drawn(&self) -> Option<Place> {
        let told = self.state.freely.as_ref().and_then(|freely| freely.about());
        match told {
            Some(metres) => self.place_at(metres),
            None => self.pivot_in_sight().then_some(self.key.pivot),
        }
    }

    /// The named place at a distance from the foot, if there is one.
    fn place_at(&self, metres: f64) -> Option<Place> {
        let values = self.problem.values();
        let forces = self.problem.forces();
        let named = forces.iter().map(|force| force.at);
        let all = [self.key.pivot, Place::Foot, Place::Middle, Place::Tip];
        let is_it =
            |place: &Place| (self.problem.distance(*place, &values) - metres).abs() < SAME_PLACE;
        all.into_iter().chain(named).find(is_it)
    }
}
