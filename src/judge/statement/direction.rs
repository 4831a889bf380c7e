//! Directions as they are heard: sides, lines, angles, along and towards.

use super::clash::describes;
use super::gather::{Gathering, next};
use super::mention::Mention;
use super::subject::Subject;
use super::way::{Line, ToBody};
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
                let way = &mut self.group().way;
                let other = way.right.is_some() && way.right != right;
                way.right = way.right.or(right);
                self.group().undecided |= other;
            }
            Mention::Degrees(degrees) => {
                let way = &mut self.group().way;
                way.degrees = way.degrees.or(Some((degrees, None)));
            }
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

/// The line at a right angle to a line.
fn other(line: Reference) -> Reference {
    match line {
        Reference::Horizontal => Reference::Vertical,
        Reference::Vertical => Reference::Horizontal,
    }
}
