//! A wrong value of hers told once more where that says nothing for it, and a balance that is off with
//! the unit of its lengths typed.

use super::turn::verdict_of;
use super::{Outcome, Session};
use crate::judge::{Judgement, NameRole, Own, Remark, Truth, restates};
use crate::key::{Axis, Part, StepId};
use crate::reading::{Tree, read};
use crate::text::Slot;

/// A number is the size of a force where it differs from it by no more than this share.
const NEAR: f64 = 0.003;

impl Session {
    /// `T = (215.6·1.4 + 205.8·1.6)/2.8` after the number that this comes to was refused, or a value
    /// that followed once and does no longer: judged as if it were told for the first time. Of the many
    /// ways of a general problem her value may follow from what no line of hers says yet.
    pub(super) fn own_refused_again(
        &mut self,
        asked: StepId,
        line: &str,
        found: &Judgement,
    ) -> Option<Judgement> {
        let again = found.remarks.iter().find_map(|remark| match remark {
            Remark::OwnAgain(line) => Some(*line),
            _ => None,
        })?;
        let freely = self.state.freely.as_ref().filter(|_| !self.is_general())?;
        let fallen = freely.fallen.contains_key(&again);
        let mut lines = freely.lines.iter();
        let (_, first, truth) = lines.find(|(at, ..)| *at == again)?;
        let by_number = *truth == "wrong" && is_value(first) && !is_value(line);
        let contradicted = *truth == "wrong" && self.is_given_by_balance(found.target, again);
        if !fallen && !by_number && !contradicted {
            return None;
        }
        let standing = self.state.standing.clone();
        self.state.standing.remove(&found.target);
        let anew = self.judged_in_force(asked, line);
        self.state.standing = standing;
        (anew.truth == Truth::DoesNotHold).then_some(anew)
    }

    /// A relation that would follow from the refused one that it says once more, written otherwise, as
    /// one that does not hold; so the parts of a force added up for its size.
    pub(super) fn not_said_again(&self, line: &str, mut judgement: Judgement) -> Judgement {
        let lines: &[usize] = match &judgement.truth {
            Truth::Follows(lines) => lines,
            Truth::Noted if !judgement.evidence.follows.is_empty() => &judgement.evidence.follows,
            _ => return judgement,
        };
        // What she has told since may give it by itself.
        let first = lines.iter().copied().min();
        let Some(freely) = &self.state.freely else {
            return judgement;
        };
        let (names, own_values) = (self.names(), self.own_values());
        let board = self.board(&names, &own_values);
        let mut wrong = freely.lines.iter().filter(|(.., truth)| *truth == "wrong");
        let said = wrong.find(|(at, refused, _)| {
            first.is_none_or(|first| first <= *at) && restates(&board, refused, line)
        });
        let added = self.adds_own_parts(&judgement);
        if said.is_none() && !added {
            return judgement;
        }
        judgement.evidence.says_again = said.map(|(at, ..)| *at);
        judgement.truth = Truth::DoesNotHold;
        judgement.proved = false;
        judgement.values.clear();
        judgement.establishes.clear();
        judgement.remarks.clear();
        judgement.evidence.follows.clear();
        judgement
    }

    /// True for a number alone that is the sum or the difference of her own parts of a force and is told
    /// for its size, where their root is another: nearer to that than to what it would follow from.
    fn adds_own_parts(&self, judgement: &Judgement) -> bool {
        let target = judgement.target;
        let part = |axis| match target {
            StepId::Reaction(force, Part::Size) => {
                let part = StepId::Reaction(force, Part::Along(axis));
                self.state.standing.get(&part).map(told)
            }
            _ => None,
        };
        let evidence = &judgement.evidence;
        let typed = evidence.number.filter(|_| evidence.alone);
        let parts = part(Axis::Horizontal).zip(part(Axis::Vertical));
        let Some((typed, (level, upright))) = typed.zip(parts) else {
            return false;
        };
        let value = typed.value.abs();
        let half = 0.5 * typed.written.last_place * (1.0 + 1e-6);
        let off = [level + upright, (level - upright).abs()].map(|sum| (sum - value).abs());
        let off = off[0].min(off[1]);
        let follows = judgement.values.iter().find(|(step, _)| *step == target);
        let from = follows.map_or(f64::INFINITY, |(_, own)| {
            (own.function[0].abs() - value).abs()
        });
        let root = (level.hypot(upright) - value).abs();
        off <= half && off < from && root > half.max(NEAR * value)
    }

    /// A line that says again what was refused.
    pub(super) fn says_refused(&mut self, line: usize) -> Outcome {
        self.state.open = None;
        let slots = [("line", Slot::Word(line.to_string()))];
        let (sign, verdict) = verdict_of("wrong");
        let message = self.words.say("talk.said-again", &slots);
        Outcome::verdict(sign, verdict, "wrong", message)
    }

    /// True if a right balance that gives a quantity by itself was told since this line: it says
    /// another value than the one that was refused.
    fn is_given_by_balance(&self, target: StepId, since: usize) -> bool {
        let sum = self.key.sum_of(target);
        let own = sum.and_then(|sum| self.state.standing.get(&sum));
        own.is_some_and(|own| own.right && own.line > since)
    }

    /// `Wb·1.8 m + W1 = T sin 65·3.6 m`: a balance that is off by a distance is one of no kind, and is
    /// judged by its numbers; the m behind a length is no mass.
    pub(super) fn with_bare_lengths(
        &mut self,
        asked: StepId,
        line: &str,
        found: &Judgement,
    ) -> Option<Judgement> {
        let (bare, count) = without_metres(line)?;
        let shown = found.layout.as_deref().unwrap_or_default();
        let as_mass = shown.matches(" m").count() < count;
        let refused = match found.truth {
            Truth::DoesNotHold => as_mass,
            Truth::Mismatched(_) => true,
            _ => false,
        };
        if !refused {
            return None;
        }
        let judgement = self.judged_in_force(asked, &bare);
        let balance = judgement.target.is_balance() && judgement.evidence.number.is_some();
        (balance && judgement.truth == Truth::DoesNotHold).then_some(judgement)
    }

    /// True if a name of hers that is a multiple of the unknown stands in the line that is answered.
    pub(super) fn types_multiple(&self) -> bool {
        let Some(freely) = self.state.freely.as_ref() else {
            return true;
        };
        let names = self.names();
        let readings = read(&freely.now, names.vocabulary()).unwrap_or_default();
        let sides = readings.iter().flat_map(|reading| &reading.sides);
        let mut roles = sides
            .flat_map(Tree::names)
            .filter_map(|(id, _)| names.role(id));
        roles.any(|role| match role {
            NameRole::Own(index) => {
                let own = self.state.own_names.get(index);
                own.is_some_and(|(_, own)| own.of_unknown)
            }
            _ => false,
        })
    }
}

/// A value of hers as she told it, without its sense.
fn told(own: &Own) -> f64 {
    own.typed.map_or(own.value, |(typed, _)| typed).abs()
}

/// True for a name and its number, perhaps with a unit and a way.
fn is_value(line: &str) -> bool {
    let line = line.replace("N*m", "N m").replace("N·m", "N m");
    let mut sides = line.split('=').skip(1);
    let (Some(value), None) = (sides.next(), sides.next()) else {
        return false;
    };
    let value = value.trim().trim_start_matches(['-', '−', '+']);
    let worked = ['*', '·', '×', '/', '+', '-', '−', '('];
    let ratio = ["sin", "cos", "tan", "sqrt"];
    let number = value.starts_with(|c: char| c.is_ascii_digit());
    number && !value.contains(worked) && !ratio.iter().any(|name| value.contains(name))
}

/// A line without the m behind its numbers, and how many there are; `None` where there is none.
fn without_metres(line: &str) -> Option<(String, usize)> {
    let (mut bare, mut count) = (String::new(), 0);
    let letter = |c: char| c.is_alphanumeric() || matches!(c, '²' | '³' | '^' | '_' | '⊥');
    let mut rest = line;
    while let Some(at) = rest.find('m') {
        let (before, behind) = (&rest[..at], &rest[at + 1..]);
        let text = before.trim_end();
        let digits = text.trim_end_matches(|c: char| c.is_ascii_digit() || matches!(c, '.' | ','));
        let number = digits.len() < text.len() && !digits.ends_with(letter);
        let next = behind.trim_start().chars().next();
        let alone = !behind.starts_with(letter) && next != Some('g');
        bare.push_str(match number && alone {
            true => text,
            false => &rest[..=at],
        });
        count += usize::from(number && alone);
        rest = behind;
    }
    bare.push_str(rest);
    (count > 0).then_some((bare, count))
}
