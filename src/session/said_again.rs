//! A wrong value of hers told once more where that says nothing for it, and a balance that is off with
//! the unit of its lengths typed.

use super::turn::verdict_of;
use super::{Outcome, Session};
use crate::judge::{Judgement, NameRole, Own, Truth, restates};
use crate::key::{Axis, Part, StepId};
use crate::reading::{Node, Tree, read};
use crate::text::Slot;

/// A number is the size of a force where it differs from it by no more than this share.
const NEAR: f64 = 0.003;

impl Session {
    /// `T = (215.6·1.4 + 205.8·1.6)/2.8` after the number that this comes to was refused, a value that
    /// followed once and does no longer, or `Wb = 28 N` after `Wb = 28 kg`: judged as if it were told
    /// for the first time. Of the many ways of a general problem her value may follow from what no line
    /// of hers says yet.
    pub(super) fn own_refused_again(
        &mut self,
        asked: StepId,
        line: &str,
        found: &Judgement,
    ) -> Option<Judgement> {
        let again = found.own_again_of()?;
        let freely = self.state.freely.as_ref().filter(|_| !self.is_general())?;
        let fallen = freely.fallen.contains_key(&again);
        let mut lines = freely.lines.iter();
        let (_, first, truth) = lines.find(|(at, ..)| *at == again)?;
        let by_number = *truth == "wrong" && is_value(first) && !is_value(line);
        let contradicted = *truth == "wrong" && self.is_given_by_balance(found.target, again);
        let judged = self.state.judged.get(&again);
        let unit = judged.and_then(|first| first.judgement.evidence.dimension);
        let asked_for = self.key.step(found.target).map(|step| step.dimension);
        let by_unit = unit.is_some() && unit != asked_for;
        if !fallen && !by_number && !contradicted && !by_unit {
            return None;
        }
        self.refused_without(found.target, asked, line)
    }

    /// `T·3·sin 35 = 48·1.5 + 70·1.6` after a T was refused that fulfils it, and nothing else does:
    /// judged as if no T had been told.
    pub(super) fn balance_of_refused(
        &mut self,
        asked: StepId,
        line: &str,
        found: &Judgement,
    ) -> Option<Judgement> {
        let noted = found.truth == Truth::Noted && !found.proved && found.names.is_none();
        let open = noted && found.evidence.follows.is_empty() && found.evidence.equation;
        let unknown = self.key.unknown().filter(|_| open && self.is_free())?;
        let own = self.state.standing.get(&unknown);
        let wrong = own.is_some_and(|own| !own.right) && !self.is_general();
        wrong
            .then(|| self.refused_without(unknown, asked, line))
            .flatten()
    }

    /// A line judged as if a value of hers had not been told, if it does not hold then.
    fn refused_without(&mut self, step: StepId, asked: StepId, line: &str) -> Option<Judgement> {
        let standing = self.state.standing.clone();
        self.state.standing.remove(&step);
        let anew = self.judged_in_force(asked, line);
        self.state.standing = standing;
        (anew.truth == Truth::DoesNotHold).then_some(anew)
    }

    /// True if the line that is answered was refused as a form before, perhaps with its value behind
    /// it now, or tells the value of line `first`, refused just before, and goes on from it in nothing.
    pub(super) fn was_refused(&self, first: usize) -> bool {
        let bare = |line: &str| line.replace(char::is_whitespace, "");
        self.state.freely.as_ref().is_some_and(|freely| {
            let now = bare(&freely.now);
            let mut later = freely.lines.iter().filter(|(at, ..)| *at > first);
            let just_before = later.all(|(.., truth)| *truth == "noted");
            let mut wrong = freely
                .lines
                .iter()
                .filter(|(_, _, truth)| *truth == "wrong");
            wrong.any(|(at, line, _)| {
                let alike = || just_before && self.is_told_alike(line, &freely.now);
                let line = bare(line);
                let form = line.contains('(') && now.starts_with(&line);
                form || *at == first && alike()
            })
        })
    }

    /// True if a line tells the value of a refused one as that told it: by a number, or by a form in
    /// which nothing is put in or worked out. A way behind it says more.
    fn is_told_alike(&self, refused: &str, line: &str) -> bool {
        if !self.ways_behind(line).is_empty() && refused != line {
            return false;
        }
        if is_value(refused) || is_value(line) {
            return is_value(refused) && is_value(line);
        }
        let (before, now) = (self.parts_counted(refused), self.parts_counted(line));
        now.0 >= before.0 && now.1 >= before.1
    }

    /// How many names and how many operations stand in a line.
    fn parts_counted(&self, line: &str) -> (usize, usize) {
        let names = self.names();
        let readings = read(line, names.vocabulary()).unwrap_or_default();
        let (mut named, mut worked) = (0, 0);
        for side in readings.iter().take(1).flat_map(|first| &first.sides) {
            side.visit(&mut |tree| match tree.node {
                Node::Name(_) => named += 1,
                Node::Binary(..) | Node::Call(..) => worked += 1,
                _ => {}
            });
        }
        (named, worked)
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
