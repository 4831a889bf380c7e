//! Directions as they are heard: sides, lines, angles, along and towards.

use super::angle::Line;
use super::clash::describes;
use super::gather::{Gathering, next};
use super::mention::Mention;
use super::subject::Subject;
use super::way::ToBody;
use crate::problem::{ForceId, Reference};

impl Gathering<'_> {
    pub(super) fn direction(&mut self, mention: Mention, ahead: &[Mention]) {
        let across = std::mem::take(&mut self.before.across);
        let upright = std::mem::take(&mut self.before.upright);
        match mention {
            Mention::Line(line) => self.line(line, across, ahead),
            Mention::Up | Mention::Down => self.up_or_down(mention == Mention::Up, upright, ahead),
            Mention::Left | Mention::Right => {
                let right = Some(mention == Mention::Right);
                let aimed = self.before.aimed || self.before.to;
                let way = &mut self.group().way;
                let other = way.right.is_some() && way.right != right;
                way.right = way.right.or(right);
                way.told.hear_side(aimed);
                self.group().undecided |= other;
            }
            Mention::Degrees(degrees) => {
                let (axis, clockwise) = (self.axis.take(), self.clockwise.take());
                let way = &mut self.group().way;
                way.degrees = way.degrees.or(Some((degrees, axis)));
                way.clockwise = way.clockwise.or(clockwise);
            }
            Mention::Axis(line, sense) => self.axis(Line::Axis(line, sense)),
            Mention::Clockwise | Mention::Anticlockwise => {
                let clockwise = Some(mention == Mention::Clockwise);
                match &mut self.group().way {
                    way if way.degrees.is_some() => way.clockwise = clockwise,
                    _ => self.clockwise = clockwise,
                }
            }
            // "Somewhere along the walkway" is no way.
            Mention::Somewhere if goes_on_with_a_place(ahead) => self.before.measured = true,
            Mention::Somewhere => self.group().way.open = true,
            Mention::AlongRope => self.group().way.along = true,
            Mention::Open => self.group().way.open = true,
            _ => {}
        }
    }

    fn up_or_down(&mut self, up: bool, upright: bool, ahead: &[Mention]) {
        let vertically = next(ahead) == Some(Mention::Line(Reference::Vertical));
        // "Straight up and to the left" goes on.
        let goes_on = next(ahead) == Some(Mention::And);
        let group = self.group();
        let way = &mut group.way;
        let other = way.up.is_some_and(|said| said != up);
        way.up = way.up.or(Some(up));
        way.upright |= upright && !goes_on;
        way.told.hear_upright(upright || vertically);
        group.undecided |= other;
    }

    /// An axis from which an angle is measured.
    fn axis(&mut self, axis: Line) {
        let above = self.before.above.take();
        let way = &mut self.group().way;
        match &mut way.degrees {
            Some((_, from @ None)) => *from = Some(axis),
            Some(_) => return,
            None => self.axis = Some(axis),
        }
        let way = &mut self.group().way;
        way.up = way.up.or(above);
    }

    /// The level or the upright: what an angle is measured from, or along which a force acts.
    fn line(&mut self, line: Reference, across: bool, ahead: &[Mention]) {
        let above = self.before.above.take();
        if !across && describes(&self.heard, ahead) {
            return;
        }
        let heard = std::mem::take(&mut self.heard);
        let way = &mut self.group().way;
        match &mut way.degrees {
            Some((_, from)) if from.is_none() => {
                *from = Some(Line::Fixed(line));
                way.up = way.up.or(above);
            }
            _ => {
                let line = if across { other(line) } else { line };
                way.line = way.line.or(Some(line));
                way.told.hear_line(line, &heard, ahead);
            }
        }
        self.heard = heard;
    }

    /// "Along the rope", "across the mast".
    pub(super) fn lies(&mut self, subject: Subject, across: bool) {
        let way = &mut self.group().way;
        match subject {
            Subject::Body if across => way.to_body = Some(ToBody::Across),
            Subject::Body => way.to_body = Some(ToBody::Along),
            Subject::Force(ForceId::Rope(_)) | Subject::Pull => way.along |= !across,
            // "In the direction of the tower".
            Subject::Behind(_) if !across => self.towards(subject),
            _ => {}
        }
    }

    pub(super) fn towards(&mut self, subject: Subject) {
        let of = self.group().subject;
        let way = &mut self.group().way;
        match (of, subject) {
            (
                Some(Subject::Force(ForceId::Rope(_)) | Subject::Pull),
                Subject::Invented(_) | Subject::Behind(_),
            ) => way.along = true,
            (_, Subject::Invented(_) | Subject::Weight) => way.up = way.up.or(Some(false)),
            // "Towards the hide", where the rope's way was asked.
            (None, Subject::Behind(behind)) if behind.rope => way.to_body = Some(ToBody::RopeEnd),
            _ => way.to_body = Some(ToBody::Towards),
        }
    }
}

/// True where "somewhere" only says that a place is not exact: "somewhere on the left half".
fn goes_on_with_a_place(ahead: &[Mention]) -> bool {
    let next = next(ahead);
    matches!(
        next,
        Some(
            Mention::At
                | Mention::On
                | Mention::Of
                | Mention::Near
                | Mention::Between
                | Mention::Beyond
                | Mention::ShortOf
                | Mention::Above
                | Mention::Below
                | Mention::Along
                | Mention::Left
                | Mention::Right
                | Mention::Place(_)
                | Mention::Share(..)
        )
    )
}

/// The line at a right angle to a line.
fn other(line: Reference) -> Reference {
    match line {
        Reference::Horizontal => Reference::Vertical,
        Reference::Vertical => Reference::Horizontal,
    }
}
