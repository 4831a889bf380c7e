//! Several statements in one line of a free working: `Wb = 180 N, W1 = 650 N`. Where they do not hold
//! together each is worked as on a line of its own, so that what follows from any of them counts.

use super::turn::{Progress, Sign};
use super::{Outcome, Session};
use crate::judge::{NameRole, statements};
use crate::key::StepId;
use crate::reading::NameId;
use crate::units::find_unit;
use std::collections::BTreeMap;

/// Sizes are of one order where neither is more than this many times the other.
const ONE_ORDER: f64 = 2.0;
/// A value of hers is seldom this many times off.
const FAR_OFF: f64 = 20.0;
/// What a bare number may be counted in, newtons first.
const MULTIPLES: [f64; 2] = [1.0, 1000.0];

impl Session {
    /// Judges a line as the next of the working, and takes what it establishes or leaves behind.
    pub(super) fn work_freely(&mut self, line: &str) -> Outcome {
        let parted = self.with_commas(line);
        let line = parted.as_deref().unwrap_or(line);
        let spans = statements(line).into_iter();
        let parts: Vec<&str> = spans.map(|span| &line[span.start..span.end]).collect();
        if parts.len() < 2 || !parts.iter().all(|part| part.contains(['=', '≈'])) {
            return self.work_statement(line);
        }
        let before = self.state.clone();
        let whole = self.work_statement(line);
        let refused = |outcome: &Outcome| matches!(outcome.sign, Sign::Wrong | Sign::Incomplete);
        if !refused(&whole) {
            return whole;
        }
        let after = std::mem::replace(&mut self.state, before);
        let each: Vec<Outcome> = parts.iter().map(|part| self.work_statement(part)).collect();
        let judged = |outcome: &Outcome| !matches!(outcome.sign, Sign::Unclear | Sign::Talk);
        // What only goes wrong together is wrong as one.
        if !each.iter().all(judged) || !each.iter().any(refused) {
            self.state = after;
            return whole;
        }
        let number = self.state.next_number;
        let found = after.judged.get(&number).cloned();
        self.state.judged.extend(found.map(|found| (number, found)));
        let basis = after.bases.get(&number).cloned();
        self.state.bases.extend(basis.map(|basis| (number, basis)));
        self.state.open.clone_from(&after.open);
        self.state.hint_stage = after.hint_stage;
        self.state.keep_told(after);
        let mut progress: Vec<StepId> = Vec::new();
        for step in each.into_iter().flat_map(|outcome| outcome.progress) {
            let done = self.state.reached.get(&step).map(|(done, _)| *done);
            if done == Some(Progress::Done) && !progress.contains(&step) {
                progress.push(step);
            }
        }
        Outcome { progress, ..whole }
    }

    /// `Wb = 186.2 W1 = 166.6`: values with nothing between them, with a comma there. A number before
    /// a name is a factor of it, unless that would be of another order than all else in the line.
    fn with_commas(&self, line: &str) -> Option<String> {
        let mut kept = String::new();
        let mut rest = line;
        while let Some(at) = self.next_value(rest) {
            let (value, behind) = rest.split_at(at);
            kept.push_str(value.trim_end());
            kept.push_str(", ");
            rest = behind;
        }
        (!kept.is_empty()).then(|| kept + rest)
    }

    /// Where the name of the next value stands behind the first one of a text.
    fn next_value(&self, text: &str) -> Option<usize> {
        let (head, told) = text.split_once('=')?;
        let first = self.size_of_name(head.trim())?;
        let from = text.len() - told.len();
        let signs = told.match_indices('=');
        signs.map(|(at, _)| from + at).find_map(|sign| {
            let letter = |c: char| c.is_alphanumeric() || c == '_';
            let before = text[..sign].trim_end();
            let start = before.trim_end_matches(letter).len();
            let name = &before[start..];
            let (value, begins) = last_number(&text[from..start])?;
            // The 3 of `P = 4/3 W = 392 N` is no value.
            let form = text[from..from + begins].trim_end();
            if !form.is_empty() && !form.ends_with('=') {
                return None;
            }
            let apart = text[..start].ends_with(char::is_whitespace);
            let second = self.size_of_name(name).filter(|_| apart)?;
            let told = first_value(&text[sign + 1..])?;
            let within = |most: f64, one: f64, other: f64| {
                let multiples = MULTIPLES.iter().take(1 + usize::from(self.is_general()));
                let mut ratios = multiples.map(|by| (by * one / other).abs());
                ratios.any(|ratio| (1.0 / most..=most).contains(&ratio))
            };
            let product = value * second;
            let factor = within(ONE_ORDER, told, product) || within(ONE_ORDER, product, first);
            let values = within(FAR_OFF, value, first) && within(FAR_OFF, told, second);
            (find_unit(name).is_none() && values && !factor).then_some(start)
        })
    }

    /// The right size of what a name of the problem stands for, as it is printed.
    fn size_of_name(&self, name: &str) -> Option<f64> {
        let names = self.names();
        let mut known = names.vocabulary().names.iter();
        let at = known.position(|known| {
            let spelled = |spelling: &String| spelling == name;
            let symbol = known.symbol.shown() == name || known.symbol.typed() == name;
            symbol || known.spellings.iter().any(spelled)
        })?;
        let value = match names.role(NameId(at))? {
            NameRole::Step(step) => {
                let right = self.key.samples(step, &self.sampling, &BTreeMap::new())?;
                right[0]
            }
            NameRole::Given(given) => self.problem.given(given).value,
            _ => return None,
        };
        (value != 0.0).then_some(value.abs())
    }
}

/// The number with which a text ends, a unit behind it apart, and where it begins.
fn last_number(text: &str) -> Option<(f64, usize)> {
    let text = text.trim_end();
    let unit = text.trim_end_matches(char::is_alphabetic);
    let known = text.len() == unit.len() || find_unit(&text[unit.len()..]).is_some();
    let bare = unit.trim_end();
    let part = |c: char| c.is_ascii_digit() || matches!(c, '.' | ',');
    let start = bare.trim_end_matches(part).len();
    // The digit of a name is no number.
    let named = bare[..start].ends_with(|c: char| c.is_alphabetic() || c == '_');
    let number = bare[start..].replace(',', ".").parse().ok();
    Some((number.filter(|_| known && !named)?, start))
}

/// The number that a text begins with, where no other name stands behind it than that of a next
/// value: `166.6`, `17*9.8 = 166.6 N`.
fn first_value(text: &str) -> Option<f64> {
    let end = text.rfind('=').map_or(text.len(), |sign| {
        let name = text[..sign].trim_end();
        let letter = |c: char| c.is_alphanumeric() || c == '_';
        let start = name.trim_end_matches(letter).len();
        match name[start..].starts_with(char::is_alphabetic) {
            true => start,
            false => text.len(),
        }
    });
    let text = &text[..end];
    let mut words = text.split(|c: char| !c.is_alphabetic());
    let plain = words.all(|word| word.is_empty() || find_unit(word).is_some());
    let first = text.trim_start();
    let part = |c: char| !(c.is_ascii_digit() || matches!(c, '.' | ','));
    let number = first.split(part).next().unwrap_or_default();
    let last = last_number(text).map(|(number, _)| number);
    let typed = last.or_else(|| number.replace(',', ".").parse().ok());
    typed.filter(|_| plain)
}
