//! What a line comes to with the sums in it put back from which its numbers and names were worked
//! out: `T = 423.2/1.3` after `223.2 + 200 = 423.2` is `T = (223.2 + 200)/1.3`.

use super::Session;
use super::own_meant::put;
use super::own_relations::following;
use super::own_sums::with_form;
use crate::judge::{Judgement, Truth};
use crate::key::StepId;

/// The most sums that are put back into one line.
const MOST_SUMS: usize = 4;
/// A longer line is not made.
const LONGEST: usize = 200;
/// A number or a name of hers, and what it was worked out from in an earlier line.
struct Worked {
    result: String,
    from: String,
    /// The line, if it is none that holds: what rests on it only follows.
    wrong: Option<usize>,
}

impl Session {
    /// A refused line that holds, or follows, with the sums of earlier lines in the place of their
    /// results.
    pub(super) fn worked_from(
        &mut self,
        asked: StepId,
        line: &str,
        found: &Judgement,
    ) -> Option<Judgement> {
        let refused = matches!(
            found.truth,
            Truth::DoesNotHold | Truth::Mismatched(_) | Truth::NotUnderstood(_)
        );
        if !refused {
            return None;
        }
        let mut way = line.to_owned();
        let mut wrong = Vec::new();
        let mut put = 0;
        for worked in self.sums_of_hers() {
            let with = put_back(&way, &worked);
            if with == way || with.len() > LONGEST {
                continue;
            }
            way = with;
            wrong.extend(worked.wrong);
            put += 1;
            let judgement = self.judged_by_itself(asked, &way);
            if judgement.truth.holds() && judgement.names.is_none() {
                return Some(with_own(judgement, found, wrong));
            }
            if put == MOST_SUMS {
                break;
            }
        }
        None
    }

    /// What was worked out in the lines that stand, the latest first.
    fn sums_of_hers(&self) -> Vec<Worked> {
        let Some(freely) = self.state.freely.as_ref() else {
            return Vec::new();
        };
        let gone = |at: &usize| freely.void.contains_key(at) || freely.fallen.contains_key(at);
        let lines = freely.lines.iter().rev().filter(|(at, ..)| !gone(at));
        let mut told: Vec<&str> = Vec::new();
        let mut found = Vec::new();
        for (at, line, truth) in lines {
            let sides: Vec<&str> = line.split('=').map(str::trim).collect();
            let [head, .., last] = sides.as_slice() else {
                continue;
            };
            let name = Some(named_by(head)).filter(|name| is_name(name));
            // A name is what it was told last.
            let anew = name.filter(|name| !told.contains(name));
            told.extend(name);
            let Some(from) = sides.iter().find(|side| is_form(side)) else {
                continue;
            };
            let name = anew.filter(|name| self.is_hers(name) || !self.is_symbol(name));
            let number = number_of(last).filter(|number| number.len() > 1 && last != from);
            let results = number.into_iter().chain(name);
            found.extend(results.map(|result| Worked {
                result: result.to_owned(),
                from: (*from).to_owned(),
                wrong: (*truth == "wrong").then_some(*at),
            }));
        }
        found
    }
}

/// What holds with sums put back, as what was typed. Beside the lines that do not hold it follows, and
/// nothing is found by it: the sum that was put back comes to another number than hers.
fn with_own(judgement: Judgement, found: &Judgement, mut wrong: Vec<usize>) -> Judgement {
    if wrong.is_empty() {
        return Judgement {
            layout: found.layout.clone(),
            ..judgement
        };
    }
    wrong.sort_unstable();
    Judgement {
        truth: Truth::Follows(wrong),
        ..following(found, None)
    }
}

/// A line with what a result was worked out from in its place, in brackets.
fn put_back(line: &str, worked: &Worked) -> String {
    let (result, from) = (worked.result.as_str(), worked.from.as_str());
    if is_name(result) {
        // At its head it is told.
        let head = line.split_once('=').map(|(head, _)| named_by(head.trim()));
        return match head == Some(result) {
            true => line.to_owned(),
            false => put(line, result, from),
        };
    }
    // 27 is 27.0 again.
    let bare = result.trim_end_matches('0').trim_end_matches(['.', ',']);
    let bare = Some(bare).filter(|_| result.contains(['.', ',']));
    let texts = [Some(result), bare].into_iter().flatten();
    let mut ways = texts.filter_map(|text| with_form(line, text, from));
    ways.next().unwrap_or_else(|| line.to_owned())
}

/// The number of a value, without its unit.
fn number_of(value: &str) -> Option<&str> {
    let figure = |c: char| c.is_ascii_digit() || matches!(c, '.' | ',');
    let end = value.find(|c| !figure(c)).unwrap_or(value.len());
    let (number, unit) = value.split_at(end);
    let is_unit = |c: char| c.is_alphabetic() || matches!(c, ' ' | '·' | '*' | '°' | '²');
    (!number.is_empty() && unit.chars().all(is_unit)).then_some(number)
}

/// What the head of a line tells: `x` of `let x`.
fn named_by(head: &str) -> &str {
    let mut lets = crate::text::Words::listed("own.let").into_iter();
    let bare = lets.find_map(|word| head.strip_prefix(word.as_str())?.strip_prefix(' '));
    bare.unwrap_or(head).trim()
}

/// True for more than a name or a value: something is worked out, or taken of an angle.
fn is_form(side: &str) -> bool {
    let side = side.trim_start_matches(['-', '−', ' ']);
    let worked = |c: char| !c.is_alphanumeric();
    let digit = |c: char| c.is_ascii_digit();
    number_of(side).is_none() && !is_name(side) && side.contains(digit) && side.contains(worked)
}

fn is_name(text: &str) -> bool {
    let part = |c: char| c.is_alphanumeric() || matches!(c, '_' | '\'');
    text.starts_with(char::is_alphabetic) && text.chars().all(part)
}
