//! A name joined to the force at hand, taken for its place, or begun as another force.

use super::apposition::{Second, second};
use super::gather::{Gathering, next};
use super::group::Group;
use super::mention::Mention;
use super::settle::place_of;
use super::subject::{Subject, joined};
use super::way::{Way, may_stay_open};

impl Gathering<'_> {
    /// Joins a name to the force at hand, or begins another force.
    pub(super) fn name(&mut self, subject: Subject, of: bool, ahead: &[Mention]) {
        let parted = std::mem::take(&mut self.parted);
        let listed = std::mem::take(&mut self.listed);
        let Some(current) = self.group().subject else {
            self.first(subject, of, ahead);
            return;
        };
        // A force that has its place and its way is complete: the next name begins another.
        let complete = self.group().is_placed() && self.group().way.has_side();
        // "…, force of the hinge": another force, not a word for the one at hand.
        let another = parted
            && matches!(subject, Subject::Any | Subject::Pull | Subject::Reaction)
            && matches!(next(ahead), Some(Mention::Of | Mention::From));
        let joint = joined(current, subject, of, parted)
            .filter(|_| current == subject || !another && (!complete || of));
        if let Some(joined) = joint {
            self.call(subject);
            self.group().subject = Some(joined);
            return;
        }
        if !listed && (self.is_place_before(subject) || self.is_second(current, subject, ahead)) {
            return;
        }
        self.groups.push(Group::default());
        self.call(subject);
        self.group().bare = !of;
    }

    /// The first name of a sentence.
    fn first(&mut self, subject: Subject, of: bool, ahead: &[Mention]) {
        // "Weight of the onions; hinge; down."
        if let Some((Mention::Stop, rest)) = ahead.split_first()
            && let [.., before, _] = self.groups.as_slice()
            && let Some(current) = before.subject
            && self.group().way == Way::default()
        {
            let empty = self.groups.pop();
            if self.is_second(current, subject, rest) {
                return;
            }
            self.groups.extend(empty);
        }
        // "The parcel, hinge, down": of something unknown, the hinge is the place.
        let unknown = self.stranger && self.is_a_hinge(subject);
        if unknown && second(self.problem, Subject::Any, subject, ahead) == Second::Place {
            self.put_at(subject, None);
            return;
        }
        self.call(subject);
        let group = self.group();
        group.bare = !of;
        group.way_first = group.way.has_side();
    }

    /// Takes a noun after a name for the name's place, or leaves it in doubt; false where it is a
    /// further force.
    fn is_second(&mut self, current: Subject, subject: Subject, ahead: &[Mention]) -> bool {
        let group = self.group();
        let open = !group.is_placed() && group.number.is_none() && group.way == Way::default();
        if !open {
            return false;
        }
        match second(self.problem, current, subject, ahead) {
            Second::Force => false,
            Second::Unclear(noun) => {
                self.group().doubt = Some(noun);
                true
            }
            Second::Place => {
                self.put_at(subject, Some(current));
                true
            }
        }
    }

    /// "Down, hinge, weight of the onions": the hinge was a place.
    fn is_place_before(&mut self, subject: Subject) -> bool {
        let group = self.group();
        let place = group.bare && group.way_first && !group.is_placed();
        let Some(current) = group.subject.filter(|_| place) else {
            return false;
        };
        if !self.is_a_hinge(current) || self.is_a_hinge(subject) {
            return false;
        }
        self.group().subject = None;
        self.put_at(current, None);
        self.call(subject);
        true
    }

    fn is_a_hinge(&self, subject: Subject) -> bool {
        matches!(subject, Subject::Force(force) if may_stay_open(self.problem, force))
    }

    fn put_at(&mut self, thing: Subject, of: Option<Subject>) {
        if let Some(place) = place_of(self.problem, thing, of) {
            self.put(place);
        }
    }

    /// Notes what a force is called.
    fn call(&mut self, subject: Subject) {
        let group = self.group();
        group.subject = Some(subject);
        group.weight |= subject == Subject::Weight;
        group.acting |= matches!(subject, Subject::Any | Subject::Pull | Subject::Reaction);
    }
}
