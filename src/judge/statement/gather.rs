//! Mentions gathered force by force, each with its own place and way.

use super::Said;
use super::angle::Line;
use super::group::Group;
use super::mention::Mention;
use super::place::{Side, Where, along_from, coordinate, is_whole};
use super::rough::Between;
use super::settle::{place_of, resolved, with_one_more};
use super::stretch::Stretch;
use super::subject::{Subject, subject};
use super::way::{ToBody, Way};
use crate::problem::{ForceId, Problem};

/// Small words that change how the next mention is taken.
#[derive(Default)]
pub(super) struct Before {
    pub(super) at: bool,
    pub(super) to: bool,
    pub(super) on: bool,
    pub(super) from: bool,
    pub(super) away: bool,
    pub(super) of: bool,
    pub(super) towards: bool,
    along: bool,
    pub(super) across: bool,
    pub(super) upright: bool,
    pub(super) measured: bool,
    denied: bool,
    pub(super) above: Option<bool>,
    /// To which side the length goes: "2.0 m to the left of"; without one, at which side of what
    /// follows the force acts.
    pub(super) side: Option<Side>,
    /// Near what follows.
    pub(super) near: bool,
    /// "To the": the left or right that follows is a way, unless a length goes there.
    pub(super) aimed: bool,
    /// "The end of …": what follows only says whose place it was.
    pub(super) whose: bool,
}

pub(super) struct Gathering<'a> {
    pub(super) problem: &'a Problem,
    pub(super) groups: Vec<Group>,
    pub(super) before: Before,
    /// What was heard so far.
    pub(super) heard: Vec<Mention>,
    /// The length just said: "1.2 m from the tip".
    pub(super) length: Option<f64>,
    /// It was said in this clause: "3.8 m along the mast".
    pub(super) length_fresh: bool,
    /// What the length was measured from, where no side was said, in this clause.
    pub(super) measured_from: Option<(f64, f64)>,
    /// At which side of a point the force was said to be, in this clause.
    pub(super) beside: Option<(f64, Side)>,
    /// The last mention that says something was a place.
    pub(super) place_last: bool,
    /// The last mention that says something named a force.
    named_last: bool,
    /// A comma or "and" since the subject.
    pub(super) parted: bool,
    /// The last of them was an "and", which parts forces and no place from its force.
    pub(super) listed: bool,
    /// "Between the hinge and the tip": what was said of it so far.
    pub(super) between: Option<Between>,
    /// The line that an angle still to be said is measured from.
    pub(super) axis: Option<Line>,
    /// The sense of an angle still to be said.
    pub(super) clockwise: Option<bool>,
    /// Nothing was said in this clause yet.
    pub(super) clause_opens: bool,
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
        measured_from: None,
        beside: None,
        place_last: false,
        named_last: false,
        parted: false,
        listed: false,
        between: None,
        axis: None,
        clockwise: None,
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
                let small = matches!(mention, Mention::Filler | Mention::Upright | Mention::Aimed);
                self.clause_opens &= small;
                let names = subject(self.problem, mention).is_some();
                self.named_last = names || self.named_last && small;
            }
        }
    }

    fn hear(&mut self, mention: Mention, ahead: &[Mention]) {
        let named = subject(self.problem, mention);
        if self.is_an_end_between(mention, named) {
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
            Mention::Between => self.begins_between(),
            // "Nearer to the tip than to the hinge".
            Mention::Than => self.between = Some(Between::passing()),
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
            Mention::About
                if matches!(next(ahead), Some(Mention::Length(_) | Mention::Place(_))) =>
            {
                self.before.at = true;
                self.group().about = true;
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
            Mention::Near => (before.at, before.near) = (true, true),
            Mention::Beyond => before.side = Some(Side::Out),
            Mention::ShortOf => before.side = Some(Side::In),
            Mention::Aimed => before.aimed = true,
            Mention::About => before.at = true,
            Mention::Filler | Mention::Minus => {}
            _ => return false,
        }
        true
    }

    /// A comma, or an "and".
    fn part(&mut self, listed: bool) {
        let between = self.between.take();
        self.close();
        // "Between the hinge and the tip".
        if listed {
            self.between = between;
        }
        let stranger = self.stranger;
        let group = self.group();
        let empty = !group.is_placed() && group.number.is_none() && group.way == Way::default();
        group.strange_first |= stranger && empty && group.subject.is_none();
        self.parted = true;
        self.listed = listed;
        self.length_fresh = false;
        self.clause_opens = true;
        self.reason = false;
    }

    /// A place, a number or a direction.
    fn detail(&mut self, mention: Mention, ahead: &[Mention]) {
        let mut place_last = matches!(
            mention,
            Mention::Place(_) | Mention::Length(_) | Mention::Share(..)
        );
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
            Mention::Length(metres) if self.goes_beside(metres) => {}
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
            Mention::Share(bound, share) => self.share((bound, share), ahead),
            _ if self.stresses(mention, ahead) => {}
            _ if self.is_beside(mention, ahead) => self.before.side = Side::of(mention),
            _ if self.is_a_side(mention, ahead) => {
                self.put_side(mention);
                place_last = true;
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
        self.before.near = false;
        self.before.aimed = false;
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
        // "2.4 m from the hinge on the left" tells a place.
        let on_a_side = self.before.at && !self.before.to && self.measured_from.is_some();
        side && self.length_fresh
            && !on_a_side
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

    /// Takes the side to which a length goes, and from where: with nothing after it, from the foot.
    fn measure(&mut self, mention: Mention, ahead: &[Mention]) {
        let after = next(ahead);
        (self.before.along, self.before.measured) = (after == Some(Mention::Body), true);
        self.before.upright = false;
        self.before.side = Side::of(mention);
        // What follows "of" is no owner of the place: the length is measured from it.
        self.before.from |= after == Some(Mention::Of);
        self.place_last = false;
        if let Some((from, metres)) = self.measured_from {
            self.before.from = false;
            let side = self.before.side.take();
            self.measured_to(side, from, metres);
        } else if matches!(after, None | Some(Mention::Break | Mention::Stop)) {
            self.before.from = true;
            self.place(0.0);
        }
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
        self.between = None;
        (self.measured_from, self.beside) = (None, None);
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
            let rough = more.rough.map(Where::Within);
            for place in [more.place, more.second, rough].into_iter().flatten() {
                group.put(place);
            }
            group.about |= more.about;
            group.undecided |= more.undecided || group.way.contradicts(more.way);
            group.number = group.number.or(more.number);
            group.way = group.way.and(more.way);
            group.denied |= more.denied;
        }
    }

    /// A named place: where the force acts, or where a length is measured from.
    pub(super) fn place(&mut self, metres: f64) {
        let above = self.before.above.take().map(Side::upright);
        let side = self.before.side.take().or(above);
        let measured = std::mem::take(&mut self.before.from) || side.is_some();
        let near = std::mem::take(&mut self.before.near);
        if std::mem::take(&mut self.before.towards) {
            self.group().way.to_body = Some(ToBody::Towards);
            return;
        }
        match self.length.take().filter(|_| measured) {
            Some(length) => {
                let at = Some(Where::At(along_from(self.problem, metres, length, side)));
                self.measured_from = side.is_none().then_some((metres, length));
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
            None if near => self.put(Where::Within(Stretch::near(self.problem, metres))),
            None => self.put_beside(metres, side),
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
        let beside = before.above.is_some() || before.side.is_some();
        let measured = before.from || beside;
        if before.at || beside || (measured && length.is_some()) {
            (self.before.side, self.before.above) = (before.side, before.above);
            self.before.near = before.near;
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
    let small =
        |next: &&Mention| matches!(next, Mention::Filler | Mention::Upright | Mention::Aimed);
    ahead.iter().find(|next| !small(next)).copied()
}
