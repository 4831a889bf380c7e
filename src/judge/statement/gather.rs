//! Mentions gathered force by force, each with its own place and way.

use super::Said;
use super::group::Group;
use super::mention::Mention;
use super::place::{Side, Where, along_from, coordinate, is_whole};
use super::scene::places;
use super::settle::{place_of, resolved, with_one_more};
use super::subject::{Subject, likely, subject};
use super::way::{Line, NONE, ToBody, Way};
use crate::problem::{Acting, ForceId, Problem};

/// Small words that change how the next mention is taken.
#[derive(Default)]
pub(super) struct Before {
    at: bool,
    to: bool,
    on: bool,
    from: bool,
    away: bool,
    of: bool,
    towards: bool,
    along: bool,
    pub(super) across: bool,
    pub(super) upright: bool,
    measured: bool,
    denied: bool,
    pub(super) above: Option<bool>,
    /// To which side the length goes: "2.0 m to the left of".
    side: Option<Side>,
    /// "The end of …": what follows only says whose place it was.
    whose: bool,
}

pub(super) struct Gathering<'a> {
    pub(super) problem: &'a Problem,
    pub(super) groups: Vec<Group>,
    pub(super) before: Before,
    /// What was heard so far.
    pub(super) heard: Vec<Mention>,
    /// The length just said: "1.2 m from the tip".
    length: Option<f64>,
    /// It was said in this clause: "3.8 m along the mast".
    length_fresh: bool,
    /// The last mention that says something was a place.
    place_last: bool,
    /// The last mention that says something named a force.
    named_last: bool,
    /// A comma or "and" since the subject.
    pub(super) parted: bool,
    /// The last of them was an "and", which parts forces and no place from its force.
    pub(super) listed: bool,
    /// Names still to pass over: "between the hinge and the tip".
    between: u8,
    /// Nothing was said in this clause yet.
    clause_opens: bool,
    /// A reason is given; it names no force.
    reason: bool,
    /// A word that is not known stands where a force is named.
    pub(super) stranger: bool,
}

/// What a line says, force by force.
pub(super) fn gather(problem: &Problem, mentions: &[Mention]) -> Vec<Said> {
    let mut gathering = Gathering {
        problem,
        groups: vec![Group::default()],
        before: Before::default(),
        heard: Vec::new(),
        length: None,
        length_fresh: false,
        place_last: false,
        named_last: false,
        parted: false,
        listed: false,
        between: 0,
        clause_opens: true,
        reason: false,
        stranger: false,
    };
    for (index, mention) in mentions.iter().enumerate() {
        gathering.take(*mention, &mentions[index + 1..]);
        gathering.heard.push(*mention);
    }
    gathering.stop();
    let said = gathering
        .groups
        .iter()
        .map(|group| resolved(problem, group));
    said.fold(Vec::new(), with_one_more)
}

impl Gathering<'_> {
    fn take(&mut self, mention: Mention, ahead: &[Mention]) {
        match mention {
            Mention::Stop => {
                self.stop();
                self.part(false);
                self.stranger = false;
                self.groups.push(Group::default());
            }
            Mention::Break => self.part(false),
            Mention::And => self.part(true),
            Mention::Because => self.reason = true,
            _ if self.reason => {}
            mention => {
                self.hear(mention, ahead);
                let small = matches!(mention, Mention::Filler | Mention::Upright);
                self.clause_opens &= small;
                let names = subject(self.problem, mention).is_some();
                self.named_last = names || self.named_last && small;
            }
        }
    }

    fn hear(&mut self, mention: Mention, ahead: &[Mention]) {
        let named = subject(self.problem, mention);
        if self.between > 0 && (named.is_some() || matches!(mention, Mention::Place(_))) {
            self.between -= 1;
            return;
        }
        if self.counts_the_middle(mention, named) {
            self.before.from = false;
            return;
        }
        if let Some(subject) = named {
            if mention == Mention::Earth && self.before.on {
                self.before = Before::default();
                self.group().onto = Some(Subject::Any);
                return;
            }
            let denied = self.before.denied;
            self.force(subject, ahead);
            self.group().pushes |= mention == Mention::Push && !denied;
            self.place_last = false;
            return;
        }
        if let Some(metres) = self.measured_from_a_side(mention) {
            self.place(metres);
            return;
        }
        match mention {
            Mention::Between => self.between = 2,
            Mention::But => {
                self.close();
                self.group().refused = false;
            }
            Mention::Or => self.group().undecided = true,
            // "The mass of the mast times g".
            Mention::TimesG => self.group().weight = true,
            Mention::Acts | Mention::Pushes => {
                let pushes = mention == Mention::Pushes && !self.before.denied;
                let group = self.group();
                group.acting = true;
                group.pushes |= pushes;
                let named = group.subject.is_some();
                self.before.on |= named;
            }
            Mention::Lifts => {
                let lifts = !self.before.denied;
                let group = self.group();
                (group.acting, group.lifts) = (true, group.lifts || lifts);
                let named = group.subject.is_some();
                self.before.on |= named;
            }
            // "Hinge torque", "the moment of the rope"; what a force does about a point is said
            // of it otherwise.
            Mention::Moment => {
                let called = self.named_last || self.group().subject.is_none();
                self.group().moment |= called;
            }
            Mention::Newtons => self.group().sized = true,
            Mention::Unknown => self.unknown(),
            Mention::Part => {
                self.unknown();
                self.group().way.told.hear_part();
            }
            other if self.small(other) => {}
            other => self.detail(other, ahead),
        }
    }

    /// Notes a word that changes how the next mention is taken; false for any other.
    fn small(&mut self, mention: Mention) -> bool {
        let before = &mut self.before;
        match mention {
            Mention::At => before.at = true,
            Mention::To => (before.at, before.to) = (true, true),
            Mention::On => (before.at, before.on) = (true, true),
            Mention::From => before.from = true,
            // "3.8 m away from": a length. "Pulls away from": a direction.
            Mention::Away => {
                (before.from, before.away) = (true, !self.length_fresh);
                before.measured |= self.length_fresh;
            }
            Mention::Of => {
                before.of = true;
                before.on = false;
                before.whose = self.place_last;
            }
            Mention::Towards => before.towards = true,
            Mention::Along => before.along = true,
            Mention::Across => before.across = true,
            Mention::Upright => before.upright = true,
            Mention::Measured => before.measured = true,
            Mention::No => before.denied = true,
            Mention::Above => before.above = Some(true),
            Mention::Below => before.above = Some(false),
            Mention::Filler => {}
            _ => return false,
        }
        true
    }

    /// A comma, or an "and".
    fn part(&mut self, listed: bool) {
        let between = self.between;
        self.close();
        // "Between the hinge and the tip".
        if listed {
            self.between = between;
        }
        let stranger = self.stranger;
        let group = self.group();
        let empty = group.place.is_none() && group.number.is_none() && group.way == Way::default();
        group.strange_first |= stranger && empty && group.subject.is_none();
        self.parted = true;
        self.listed = listed;
        self.length_fresh = false;
        self.clause_opens = true;
        self.reason = false;
    }

    /// A place, a number or a direction.
    fn detail(&mut self, mention: Mention, ahead: &[Mention]) {
        let place_last = matches!(mention, Mention::Place(_) | Mention::Length(_));
        if std::mem::take(&mut self.before.denied) {
            self.group().denied = true;
            self.before = Before::default();
            return;
        }
        match mention {
            Mention::Place(metres) => self.place(metres),
            Mention::There => self.put(Where::There),
            // "2.0 m along the walkway of 4.2 m": how long it is.
            Mention::Length(metres) if self.is_of_the_body(metres, ahead) => {}
            Mention::Length(metres) => {
                let metres = coordinate(self.problem, metres);
                self.put(Where::At(metres));
                (self.length, self.length_fresh) = (Some(metres), true);
            }
            Mention::Number(number) => {
                (self.length, self.length_fresh) = (Some(number), true);
                let group = self.group();
                group.number = group.number.or(Some(number));
            }
            _ if self.is_a_measure(mention, ahead) => return self.measure(mention, ahead),
            _ if self.is_beside(mention, ahead) => self.between = 1,
            _ if self.is_an_end(mention, ahead) => {
                let (problem, side) = (self.problem, Side::of(mention));
                let length = problem.given(problem.body().length).value;
                let end = along_from(problem, 0.0, length, side).max(0.0);
                return self.place(end);
            }
            _ => {
                self.direction(mention, ahead);
                // "Middle, down the mast" is along it; "holds up the mast" is not.
                let upright = matches!(mention, Mention::Up | Mention::Down);
                self.before.along |=
                    self.clause_opens && upright && next(ahead) == Some(Mention::Body);
            }
        }
        self.before.at = false;
        self.before.to = false;
        self.before.on = false;
        self.before.towards = false;
        self.place_last = place_last;
    }

    /// "2.8 m down from the tip", "3.8 m up the mast": no direction of a force.
    fn is_a_measure(&self, mention: Mention, ahead: &[Mention]) -> bool {
        let side = matches!(
            mention,
            Mention::Up | Mention::Down | Mention::Left | Mention::Right
        );
        let level = matches!(mention, Mention::Left | Mention::Right);
        side && self.length_fresh
            && match next(ahead) {
                Some(Mention::Body | Mention::Along | Mention::From) => true,
                Some(Mention::Of) => level,
                // "2.0 m to the left", of a weight: it points to no side. "2.9 m up and pulls to the
                // right", of a level rope.
                None | Some(Mention::Break | Mention::Stop | Mention::And | Mention::Acts) => {
                    self.cannot_point(mention)
                }
                _ => false,
            }
    }

    /// "2.2 m from the left": the end of the body at that side.
    fn measured_from_a_side(&self, mention: Mention) -> Option<f64> {
        let end = match mention {
            Mention::Left => "statement.left-end",
            Mention::Right => "statement.right-end",
            _ => return None,
        };
        let measured = self.before.from && !self.before.away && self.length.is_some();
        let all = places(self.problem).into_iter();
        let mut ends = all.filter(|(key, _)| measured && *key == end);
        ends.next().map(|(_, metres)| metres)
    }

    /// "L/2 from the hinge": from which end the middle is counted is all the same, and no force is
    /// named.
    fn counts_the_middle(&self, mention: Mention, named: Option<Subject>) -> bool {
        let end = matches!(mention, Mention::Place(_))
            || matches!(named, Some(Subject::Force(ForceId::Support(_))));
        let half = 0.5 * self.problem.given(self.problem.body().length).value;
        let place = self.groups.last().and_then(|group| group.place);
        let middle = matches!(place, Some(Where::At(at)) if (at - half).abs() < 1e-9);
        end && middle && self.before.from && self.place_last
    }

    /// "The weight of the crate, at the left, down": a weight points to no side, so that end.
    fn is_an_end(&self, mention: Mention, ahead: &[Mention]) -> bool {
        let level = matches!(mention, Mention::Left | Mention::Right);
        let upright = |mention: &Mention| matches!(mention, Mention::Up | Mention::Down);
        let mut rest = ahead
            .iter()
            .take_while(|mention| **mention != Mention::Stop);
        let way = self.groups.last().and_then(|group| group.way.up);
        level
            && self.before.at
            && !self.before.to
            && next(ahead) != Some(Mention::Of)
            && self.cannot_point(mention)
            && (way.is_some() || rest.any(upright))
    }

    /// "Left of the hinge at a distance of 1.6 m": at which side of a thing it acts; the distance
    /// says where.
    fn is_beside(&self, mention: Mention, ahead: &[Mention]) -> bool {
        let level = matches!(mention, Mention::Left | Mention::Right);
        let open = self
            .groups
            .last()
            .is_some_and(|group| group.subject.is_some() && group.place.is_none());
        level && open && !self.length_fresh && next(ahead) == Some(Mention::Of)
    }

    /// Takes the side to which a length goes, and from where: with nothing after it, from the foot.
    fn measure(&mut self, mention: Mention, ahead: &[Mention]) {
        let after = next(ahead);
        (self.before.along, self.before.measured) = (after == Some(Mention::Body), true);
        self.before.upright = false;
        self.before.side = Side::of(mention);
        // What follows "of" is no owner of the place: the length is measured from it.
        self.before.from |= after == Some(Mention::Of);
        self.place_last = false;
        if matches!(after, None | Some(Mention::Break | Mention::Stop)) {
            self.before.from = true;
            self.place(0.0);
        }
    }

    /// True for a side to which the force at hand does not act at all: said of it, it is no way.
    fn cannot_point(&self, mention: Mention) -> bool {
        let subject = self.groups.last().and_then(|group| group.subject);
        let force = subject.and_then(|subject| likely(self.problem, subject));
        let acting = force.and_then(|force| self.problem.force(force));
        let Some(Acting::Along(direction)) = acting.map(|force| force.acting) else {
            return false;
        };
        let unit = direction.unit(self.problem.body(), &self.problem.values());
        let part = match mention {
            Mention::Left | Mention::Right => unit.x,
            _ => unit.y,
        };
        part.abs() < NONE
    }

    /// True for the length of the body, told after a place.
    fn is_of_the_body(&self, metres: f64, ahead: &[Mention]) -> bool {
        let placed = self
            .groups
            .last()
            .is_some_and(|group| group.place.is_some());
        let belongs = self.before.of
            || self.before.on
            || self.before.along
            || next(ahead) == Some(Mention::Body);
        placed && belongs && is_whole(self.problem, metres)
    }

    /// A word that is not known may still be what a rope runs to.
    fn unknown(&mut self) {
        let rope = matches!(
            self.group().subject,
            Some(Subject::Force(ForceId::Rope(_)) | Subject::Pull)
        );
        if std::mem::take(&mut self.before.towards) && rope {
            self.group().way.along = true;
        }
        let of = self.before.of || self.before.from;
        let group = self.group();
        group.strange |= of
            && matches!(
                group.subject,
                Some(Subject::Weight | Subject::Pull | Subject::Reaction)
            );
        let nameless = group.subject.is_none();
        self.stranger |= nameless;
    }

    /// The end of a clause: a small word that nothing followed.
    fn close(&mut self) {
        let before = std::mem::take(&mut self.before);
        self.between = 0;
        let way = &mut self.group().way;
        way.along |= before.along && !before.denied;
        if before.across && !before.denied {
            way.to_body = way.to_body.or(Some(ToBody::Across));
        }
        way.up = way.up.or(before.above);
    }

    /// The end of a sentence. One that names no force speaks of the force before it.
    fn stop(&mut self) {
        self.close();
        let nameless = self
            .groups
            .last()
            .is_some_and(|group| group.subject.is_none());
        if !nameless || self.groups.len() < 2 {
            return;
        }
        if let Some(more) = self.groups.pop() {
            let group = self.group();
            for place in [more.place, more.second].into_iter().flatten() {
                group.put(place);
            }
            group.undecided |= more.undecided || group.way.contradicts(more.way);
            group.number = group.number.or(more.number);
            group.way = group.way.and(more.way);
            group.denied |= more.denied;
        }
    }

    /// A named place: where the force acts, or where a length is measured from.
    fn place(&mut self, metres: f64) {
        let measured = self.before.from || self.before.above.is_some();
        self.before.from = false;
        let above = self.before.above.take().map(Side::upright);
        let side = self.before.side.take().or(above);
        if std::mem::take(&mut self.before.towards) {
            self.group().way.to_body = Some(ToBody::Towards);
            return;
        }
        match self.length.take().filter(|_| measured) {
            Some(length) => {
                let at = Some(Where::At(along_from(self.problem, metres, length, side)));
                let group = self.group();
                // It was taken for a place itself.
                match group.second {
                    Some(Where::At(second)) if second == length => group.second = at,
                    _ => group.place = at,
                }
            }
            // "Tied at 2.2 m, runs to the foot of the hide."
            None if self.before.to && self.group().place.is_some() => {}
            None if std::mem::take(&mut self.before.away) => {}
            None => self.put(Where::At(metres)),
        }
    }

    pub(super) fn put(&mut self, place: Where) {
        self.group().put(place);
    }

    /// Something that makes a force: which one is named, or a place or a direction.
    fn force(&mut self, subject: Subject, ahead: &[Mention]) {
        let before = std::mem::take(&mut self.before);
        let length = self.length.take();
        if before.denied || before.whose {
            // "Doesn't pull down": a verb, and what is denied follows.
            let verb = matches!(subject, Subject::Pull | Subject::Any);
            self.before.denied = before.denied && verb && self.group().subject.is_some();
            let group = self.group();
            if !before.denied {
                group.towards_a_place_of(subject);
            }
            group.denied |= before.denied && group.subject.is_none();
            group.refused |= before.denied && !verb && group.subject.is_none();
            return;
        }
        if before.along || before.across {
            // "3.8 m along the mast" is a length.
            if subject == Subject::Body && (before.measured || self.length_fresh) {
                self.length = length;
            } else {
                self.lies(subject, before.across);
            }
            return;
        }
        let behind = matches!(subject, Subject::Behind(_) | Subject::Invented(_));
        if before.away && (behind || subject == Subject::Body || length.is_none()) {
            // Away from the body itself everything may pull, and "away from the hinge" is no place.
            self.group().way.away |= behind;
            return;
        }
        let runs_to = before.to && matches!(subject, Subject::Behind(_));
        if before.towards || runs_to {
            self.towards(subject);
            return;
        }
        let named = self.group().subject;
        if before.on && named.is_some() {
            if named != Some(subject) {
                self.group().onto = Some(subject);
            }
            return;
        }
        // "Rope, hanging point of the dummy".
        let there = self.group().place == Some(Where::There);
        if before.of && there && named.is_some_and(|named| named != subject) {
            self.group().place = None;
            self.at(subject, None, false);
            return;
        }
        let measured = before.from || before.above.is_some();
        if before.at || before.above.is_some() || (measured && length.is_some()) {
            (self.before.side, self.before.above) = (before.side, before.above);
            self.before.away = before.away;
            self.before.to = before.to;
            self.at(subject, length, measured);
            return;
        }
        self.name(subject, before.of || before.from, ahead);
    }

    /// A thing after "at", or from which a length is measured.
    fn at(&mut self, subject: Subject, length: Option<f64>, measured: bool) {
        let group = self.group();
        if let (Subject::Body, Some((_, from @ None))) = (subject, &mut group.way.degrees) {
            *from = Some(Line::Body);
            return;
        }
        let of = group.subject;
        group.beside = Some(subject);
        match place_of(self.problem, subject, of) {
            Some(Where::At(metres)) => {
                self.length = length;
                self.before.from = measured;
                self.place(metres);
            }
            // "3.8 m, at the tower": said after its place, a thing off the body is a direction.
            // "3.8 m away from the tower" is a length.
            Some(Where::Off) if measured && self.group().place.is_some() => {}
            Some(Where::Off) if self.group().place.is_some() => self.towards(subject),
            Some(place) => self.put(place),
            None => {}
        }
    }

    pub(super) fn group(&mut self) -> &mut Group {
        if self.groups.is_empty() {
            self.groups.push(Group::default());
        }
        let last = self.groups.len() - 1;
        &mut self.groups[last]
    }
}

/// The next mention that says something.
pub(super) fn next(ahead: &[Mention]) -> Option<Mention> {
    let small = |next: &&Mention| matches!(next, Mention::Filler | Mention::Upright);
    ahead.iter().find(|next| !small(next)).copied()
}
