//! "strut length = 3.5 m": the length of a rope or strut that runs from one point to another, told
//! in words; and what follows from a wrong one.

use super::own_relations::following;
use super::turn::verdict_of;
use super::{Outcome, Session};
use crate::judge::{Aside, Judgement, Truth, own_of_wrong};
use crate::key::StepId;
use crate::reading::{NameId, Node, Operator, read};
use crate::system::{Bearing, Line, System};
use crate::text::{Slot, Span};
use crate::units::{Dimension, number_text};

/// A length is the right one up to this share of it.
const SAME: f64 = 0.005;

/// What runs from one point to another, and how long it is in metres.
pub(super) type Member = (String, f64);

/// The ropes and struts of known length; none where something is sought, on which that may hang.
pub(super) fn members(system: &System) -> Vec<Member> {
    let values = system.values();
    if system.parts().sought.is_some() {
        return Vec::new();
    }
    let of_act = |act: &crate::system::Act<'_>| {
        let [effect] = act.on.as_slice() else {
            return None;
        };
        let Line::Known(Bearing::Towards(end)) = &effect.line else {
            return None;
        };
        let (one, other) = (
            system.point(&effect.at, &values),
            system.point(end, &values),
        );
        let length = libm::hypot(other.x - one.x, other.y - one.y);
        (length.is_finite() && !act.noun.is_empty()).then(|| (act.noun.to_lowercase(), length))
    };
    system.acts().iter().filter_map(of_act).collect()
}

impl Session {
    /// The answer to a line that tells the length of a rope or strut in words; `None` for others.
    pub(super) fn answer_member_length(&mut self, asked: StepId, line: &str) -> Option<Outcome> {
        let (noun, right) = self.member_told(line)?;
        let in_metres = self.without_mass_behind(line);
        let line = in_metres.as_str();
        let (_, own) = self.judged_freely(asked, line).names?;
        let reading = self.answer(asked, line).reading;
        let (truth, message) = match (own.value - right).abs() <= SAME * right {
            true => ("holds", self.words.say("talk.holds", &[])),
            false => {
                let slots = [("noun", Slot::Word(noun))];
                ("wrong", self.words.say("general.member-length", &slots))
            }
        };
        let (sign, verdict) = verdict_of(truth);
        Some(Outcome {
            reading,
            ..Outcome::verdict(sign, verdict, truth, message)
        })
    }

    /// `√(1.5² + 2²) m`: a line that tells a length, without an m behind a form that was read as a
    /// mass and is of metres.
    fn without_mass_behind(&self, line: &str) -> String {
        let names = self.names();
        let vocabulary = names.vocabulary();
        let is_mass = |id: NameId, span: Span| {
            let name = vocabulary.name(id);
            line.get(span.start..span.end) == Some("m")
                && name.is_some_and(|name| name.dimension == Dimension::MASS)
        };
        let mut behind = Vec::new();
        let readings = read(line, vocabulary).unwrap_or_default();
        for side in readings.first().into_iter().flat_map(|first| &first.sides) {
            side.visit(&mut |tree| {
                if let Node::Binary(Operator::Multiply, _, last) = &tree.node
                    && let Node::Name(id) = last.node
                    && is_mass(id, last.span)
                {
                    behind.push(last.span);
                }
            });
        }
        behind.sort_unstable_by_key(|span| std::cmp::Reverse(span.start));
        let mut metres = line.to_owned();
        for span in behind {
            metres.replace_range(span.start..span.end, "");
        }
        metres
    }

    /// The rope or strut whose length a line tells.
    fn member_told(&self, line: &str) -> Option<Member> {
        let (name, _) = line.split_once('=')?;
        let small = name.to_lowercase();
        let mut members = self.members.iter();
        let (noun, length) = members.find(|(noun, _)| {
            let rest = small.replacen(noun.as_str(), " ", 1);
            let mut words = rest.split_whitespace().peekable();
            let known = |word: &str| {
                let lists = ["statement.length", "statement.filler", "statement.of"];
                lists.iter().any(|list| self.is_in(list, word))
            };
            rest != small && self.has_word(&rest, "statement.length") && words.all(known)
        })?;
        Some((noun.clone(), *length))
    }

    /// A line that does not hold and would with the right length in the place of a wrong one of
    /// hers.
    pub(super) fn by_member_length(
        &mut self,
        asked: StepId,
        line: &str,
        found: &Judgement,
    ) -> Option<Judgement> {
        if found.truth != Truth::DoesNotHold || self.members.is_empty() {
            return None;
        }
        let wrong = self.state.freely.as_ref()?.lines.iter();
        let wrong: Vec<(usize, String, f64)> = wrong
            .filter(|(.., truth)| *truth == "wrong")
            .filter_map(|(at, wrong, _)| {
                let (_, right) = self.member_told(wrong)?;
                let (_, value) = wrong.rsplit_once('=')?;
                Some((*at, value.trim().to_owned(), right))
            })
            .collect();
        let (at, _) = wrong.into_iter().rev().find_map(|(at, value, right)| {
            let number = value.trim_end_matches(|c: char| !c.is_ascii_digit());
            let mended = with_number(line, number, &number_text(right))?;
            // What her length comes to stands behind the form.
            let form = match mended.matches('=').count() {
                0 | 1 => mended.as_str(),
                _ => mended.rsplit_once('=')?.0,
            };
            let there = self.judged_freely(asked, form);
            // A true relation of known numbers is as good as a form that is proved.
            let is_true = there.proved && there.truth == Truth::Noted
                || there.evidence.aside == Some(Aside::True);
            let holds = there.target == found.target && there.truth.holds();
            (holds || is_true).then_some((at, there))
        })?;
        let (names, own_values) = (self.names(), self.own_values());
        let board = self.board(&names, &own_values);
        let own = own_of_wrong(&board, found, self.state.next_number, None);
        let mut follows = following(found, own);
        follows.truth = Truth::Follows(vec![at]);
        Some(follows)
    }
}

/// A line with a number in it for another; `None` where it does not stand there.
fn with_number(line: &str, number: &str, other: &str) -> Option<String> {
    let part = |c: char| c.is_ascii_digit() || matches!(c, '.' | ',');
    let at = line.match_indices(number).map(|(at, _)| at).find(|at| {
        let before = line[..*at].chars().next_back();
        let behind = line[at + number.len()..].chars().next();
        !before.is_some_and(part) && !behind.is_some_and(part)
    });
    let at = at.filter(|_| !number.is_empty())?;
    Some(format!(
        "{}{other}{}",
        &line[..at],
        &line[at + number.len()..]
    ))
}
