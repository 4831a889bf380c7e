//! Places as they are heard that tell no point by themselves: a side, a share of the body, near a
//! thing, between two.

use super::gather::{Gathering, next};
use super::mention::Mention;
use super::place::{Side, Where, along_from, coordinate, length};
use super::scene::places;
use super::settle::place_of;
use super::stretch::{self, Bound, Share, Stretch};
use super::subject::{Subject, likely, subject};
use super::way::NONE;
use crate::problem::{Acting, ForceId};

/// "Between the hinge and the tip", as far as it is heard.
#[derive(Clone, Copy)]
pub(super) struct Between {
    /// Names still to come.
    left: u8,
    /// The first of them, in metres from the foot, where it is a point.
    first: Option<f64>,
    /// The middle of the two was said: "halfway between".
    halfway: bool,
    /// The names are only passed over.
    passing: bool,
}

impl Between {
    /// One name that is passed over: "than the hinge".
    pub(super) fn passing() -> Between {
        Between {
            left: 1,
            first: None,
            halfway: false,
            passing: true,
        }
    }
}

impl Gathering<'_> {
    /// True for the middle of the body, as it was said last.
    fn middle_last(&self) -> bool {
        let half = 0.5 * length(self.problem);
        let place = self.groups.last().and_then(|group| group.place);
        self.place_last && matches!(place, Some(Where::At(at)) if (at - half).abs() < 1e-9)
    }

    /// "L/2 from the hinge": from which end the middle is counted is all the same, and no force is
    /// named.
    pub(super) fn counts_the_middle(&self, mention: Mention, named: Option<Subject>) -> bool {
        let end = matches!(mention, Mention::Place(_) | Mention::Left | Mention::Right)
            || matches!(named, Some(Subject::Force(ForceId::Support(_))));
        end && self.before.from && self.middle_last()
    }

    pub(super) fn begins_between(&mut self) {
        self.between = Some(Between {
            left: 2,
            first: None,
            halfway: self.middle_last(),
            passing: false,
        });
    }

    /// Takes one of the two names after "between"; false for what is none of them.
    pub(super) fn is_an_end_between(&mut self, mention: Mention, named: Option<Subject>) -> bool {
        let Some(mut between) = self.between else {
            return false;
        };
        // "The tip of the walkway" is one of them.
        if named.is_some() && self.before.whose {
            self.before.whose = false;
            return true;
        }
        let of = self.groups.last().and_then(|group| group.subject);
        let point = match (mention, named) {
            (Mention::Place(metres), _) => Some(metres),
            (Mention::Length(metres) | Mention::Number(metres), _) => {
                Some(coordinate(self.problem, metres))
            }
            (Mention::Left | Mention::Right, _) => Some(self.end_at(mention)),
            (_, Some(subject)) => match place_of(self.problem, subject, of) {
                Some(Where::At(metres)) => Some(metres),
                _ => None,
            },
            _ => return false,
        };
        between.left -= 1;
        match (between.left, between.first, point) {
            _ if between.passing => {}
            (1, ..) => between.first = point,
            (_, Some(one), Some(other)) if between.halfway => {
                self.group().place = Some(Where::At(0.5 * (one + other)));
            }
            (_, Some(one), Some(other)) => self.put(Where::Within(Stretch::between(one, other))),
            _ => {}
        }
        self.before.from = false;
        self.place_last = true;
        self.between = (between.left > 0).then_some(between);
        true
    }

    /// The end of the body at a side, in metres from the foot.
    fn end_at(&self, side: Mention) -> f64 {
        let key = match side {
            Mention::Left => "statement.left-end",
            _ => "statement.right-end",
        };
        let all = places(self.problem).into_iter();
        let mut ends = all.filter(|(name, _)| *name == key);
        ends.next().map_or(0.0, |(_, metres)| metres)
    }

    /// "2.2 m from the left": the end of the body at that side.
    pub(super) fn measured_from_a_side(&self, mention: Mention) -> Option<f64> {
        let level = matches!(mention, Mention::Left | Mention::Right);
        let measured = self.before.from && !self.before.away && self.length.is_some();
        (level && measured).then(|| self.end_at(mention))
    }

    /// "Left of the middle": at which side of a thing it acts. Of a line that is a direction:
    /// "left of the vertical".
    pub(super) fn is_beside(&self, mention: Mention, ahead: &[Mention]) -> bool {
        let level = matches!(mention, Mention::Left | Mention::Right);
        let from = next(ahead) == Some(Mention::From);
        // "Pulls left from the tip" is a way, of what may act so.
        let points = from && (self.before.aimed || !self.cannot_point(mention));
        level && !self.length_fresh && !points && self.is_of_a_point(ahead)
    }

    /// True before "of" and a point of the body.
    fn is_of_a_point(&self, ahead: &[Mention]) -> bool {
        let small = |next: &&Mention| matches!(next, Mention::Filler);
        let mut rest = ahead.iter().skip_while(small);
        if !matches!(rest.next(), Some(Mention::Of | Mention::From)) {
            return false;
        }
        rest.find(|next| !small(next)).is_some_and(|thing| {
            let named = subject(self.problem, *thing);
            matches!(thing, Mention::Place(_))
                || named.is_some_and(|named| place_of(self.problem, named, None).is_some())
        })
    }

    /// A point beside which the force was said to act, at this side; where none was said, it acts
    /// there.
    pub(super) fn put_beside(&mut self, metres: f64, side: Option<Side>) {
        let Some(side) = side else {
            return self.put(Where::At(metres));
        };
        self.beside = Some((metres, side));
        match Stretch::beside(self.problem, metres, side) {
            Some(stretch) => self.put(Where::Within(stretch)),
            None => self.put(Where::At(metres)),
        }
    }

    /// "Left of the middle by 0.4 m": the length counts from there.
    pub(super) fn goes_beside(&mut self, metres: f64) -> bool {
        let Some((from, side)) = self.beside.take() else {
            return false;
        };
        let at = along_from(self.problem, from, metres, Some(side));
        self.put(Where::At(at));
        true
    }

    /// A share of the body, or with "to" before it a way: "pulls to the left side".
    pub(super) fn share(&mut self, (bound, share): (Bound, Share), ahead: &[Mention]) {
        let side = match bound {
            Bound::At(Side::Left) => Some(Mention::Left),
            Bound::At(Side::Right) => Some(Mention::Right),
            _ => None,
        };
        let loose = matches!(share, Share::Part | Share::Side | Share::Far);
        if loose && share != Share::Far && self.is_of_a_point(ahead) {
            let at = match bound {
                Bound::At(side) => Some(side),
                _ => None,
            };
            self.before.side = at;
            return;
        }
        let placed = self.before.at || self.before.of || self.before.on;
        let group = self.groups.last();
        let stands = group.is_some_and(|group| group.is_placed() || group.number.is_some());
        let acts =
            |heard: &Mention| matches!(heard, Mention::Acts | Mention::Pushes | Mention::Lifts);
        let aims = match self.before.to || self.before.towards {
            // "Attached to the far right": no way, where the force acts to no side.
            true => {
                let acts = self.heard.iter().any(acts);
                side.is_some_and(|side| acts || !self.cannot_point(side))
            }
            false => {
                let part = share == Share::Part && next(ahead) != Some(Mention::Of);
                let aims = !placed && (stands || part);
                side.is_some_and(|side| aims && !self.cannot_point(side))
            }
        };
        match side {
            Some(side) if loose && aims => {
                self.direction(side, ahead);
                if share == Share::Part {
                    self.group().way.told.hear_part();
                }
            }
            _ => {
                let stretch = Stretch::share(self.problem, bound, share);
                if let Some(stretch) = stretch {
                    self.put(Where::Within(stretch));
                }
            }
        }
    }

    /// True for a side that tells a place: "on the left"; or where a place is told, "rope, left,
    /// up", of a force that does not act to a side, or whose way follows.
    pub(super) fn is_a_side(&self, mention: Mention, ahead: &[Mention]) -> bool {
        let level = matches!(mention, Mention::Left | Mention::Right);
        if !level || self.before.to || self.before.aimed || self.before.towards {
            return false;
        }
        if is_of_the_body(ahead) {
            return true;
        }
        // "At the top left."
        let joins = self.place_last && !self.clause_opens && self.cannot_point(mention);
        if self.before.at || joins {
            return next(ahead) != Some(Mention::Of);
        }
        let Some(group) = self.groups.last() else {
            return false;
        };
        let ends = matches!(next(ahead), Some(Mention::Break | Mention::Stop));
        let slot = self.clause_opens && self.parted && ends;
        let open = group.subject.is_some() && !group.is_placed() && group.number.is_none();
        if !slot || !open {
            return false;
        }
        let rest = ahead
            .iter()
            .take_while(|mention| subject(self.problem, **mention).is_none());
        let rest: Vec<Mention> = rest.copied().collect();
        let has = |wanted: fn(&Mention) -> bool| rest.iter().any(wanted);
        let placed = |mention: &Mention| {
            matches!(
                mention,
                Mention::Place(_)
                    | Mention::Length(_)
                    | Mention::Number(_)
                    | Mention::There
                    | Mention::Share(..)
                    | Mention::At
            )
        };
        let upright = |mention: &Mention| matches!(mention, Mention::Up | Mention::Down);
        let whole = |mention: &Mention| {
            matches!(
                mention,
                Mention::Left
                    | Mention::Right
                    | Mention::Degrees(_)
                    | Mention::AlongRope
                    | Mention::Along
                    | Mention::To
                    | Mention::Towards
                    | Mention::Open
            )
        };
        !has(placed)
            && (has(whole)
                || self.does_not_point(mention) && (has(upright) || group.way.up.is_some()))
    }

    /// A side that tells a place: the side, or the end there.
    pub(super) fn put_side(&mut self, mention: Mention) {
        let near = self.before.near;
        if let Some((from, metres)) = self.measured_from {
            // "2.4 m from the hinge on the left": where the hinge is, or to which side.
            let inner = from > NONE && from < length(self.problem) - NONE;
            if inner {
                self.measured_to(Side::of(mention), from, metres);
            }
            return;
        }
        let alone = !self.before.at;
        let stretch = stretch::side(self.problem, mention == Mention::Right, alone);
        match stretch {
            Some(stretch) if near => self.put(Where::Within(stretch.without_end())),
            Some(stretch) => self.put(Where::Within(stretch)),
            // An upright body has ends at no side but by the problem's word.
            None => {
                let end = self.end_at(mention);
                self.put(Where::At(end));
            }
        }
    }

    /// "0.4 m from the middle to the left": the length, now that its side is told.
    pub(super) fn measured_to(&mut self, side: Option<Side>, from: f64, metres: f64) {
        let at = along_from(self.problem, from, metres, side);
        self.group().place = Some(Where::At(at));
        self.measured_from = None;
    }

    /// True for a side to which the force at hand does not act at all: said of it, it is no way.
    pub(super) fn cannot_point(&self, mention: Mention) -> bool {
        self.part_towards(mention)
            .is_some_and(|part| part.abs() < NONE)
    }

    /// True for a side to which the force at hand does not act.
    fn does_not_point(&self, mention: Mention) -> bool {
        self.part_towards(mention).is_some_and(|part| part < NONE)
    }

    /// "Right at the tip", of a force that acts to no side: it only says that this is exact.
    pub(super) fn stresses(&self, mention: Mention, ahead: &[Mention]) -> bool {
        let place = matches!(
            next(ahead),
            Some(Mention::At | Mention::On | Mention::There)
        );
        mention == Mention::Right && self.clause_opens && place && self.cannot_point(mention)
    }

    /// How much of the force at hand, of size 1, acts to a side; `None` where that is not known.
    fn part_towards(&self, side: Mention) -> Option<f64> {
        let subject = self.groups.last().and_then(|group| group.subject)?;
        let force = self.problem.force(likely(self.problem, subject)?)?;
        let Acting::Along(direction) = force.acting else {
            return None;
        };
        let unit = direction.unit(self.problem.body(), &self.problem.values());
        Some(match side {
            Mention::Left => -unit.x,
            Mention::Right => unit.x,
            Mention::Down => -unit.y,
            _ => unit.y,
        })
    }
}

/// True before "of" and the body: "right of the counter".
fn is_of_the_body(ahead: &[Mention]) -> bool {
    let mut rest = ahead.iter().filter(|next| **next != Mention::Filler);
    rest.next() == Some(&Mention::Of) && rest.next() == Some(&Mention::Body)
}
