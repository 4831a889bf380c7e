//! A wrong value of hers told once more where that says nothing for it, and a balance that is off with
//! the unit of its lengths typed.

use super::Session;
use crate::judge::{Judgement, NameRole, Remark, Truth};
use crate::key::StepId;
use crate::reading::{Tree, read};

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
