//! A number that an earlier line of a free working works out wrongly, used again: after
//! `40 + 25 = 75` the form `137.2·cos 40/sin 75` is the right way.

use super::Session;
use crate::judge::{Judgement, Truth, WrongSum, own_of_wrong, worked_out_wrongly};
use crate::key::StepId;
use crate::units::{Dimension, number_text};

impl Session {
    /// A line that holds once the right form stands in the place of a number that she worked out
    /// wrongly; what it comes to must be what her number gives.
    pub(super) fn by_own_sum(
        &mut self,
        asked: StepId,
        line: &str,
        found: &Judgement,
    ) -> Option<Judgement> {
        if found.truth != Truth::DoesNotHold {
            return None;
        }
        let balance = found.target.is_balance();
        let number = found.evidence.number?;
        let (form, value) = line.rsplit_once('=')?;
        // A form between the name and its value, which is true as typed.
        let shown = form.contains('=') && is_number(value);
        let form = if shown { form } else { line };
        // "About B:" is no part of the equation.
        let bare = line.rsplit_once(':').map_or(line, |(_, bare)| bare);
        let links =
            |session: &Session| session.has_true_links(line) || session.has_true_links(bare);
        if !balance && !self.beside_right_alone(links) {
            return None;
        }
        self.own_sums().into_iter().rev().find_map(|(at, hers)| {
            let ways = self.with_own_number(form, &hers);
            let fits = |right: &Judgement| {
                let same = right.target == found.target && right.names.is_none();
                right.truth.holds() && (right.proved || balance) && same
            };
            let right = ways.into_iter().find_map(|way| {
                let right = self.beside_right_alone(|session| session.judged_anywhere(asked, &way));
                // Other wrong values of hers may stand beside it.
                let beside_hers = || Some(self.judged_anywhere(asked, &way)).filter(fits);
                Some(right).filter(fits).or_else(beside_hers)
            })?;
            let (names, own_values) = (self.names(), self.own_values());
            let board = self.board(&names, &own_values);
            let hers = Judgement {
                target: right.target,
                ..found.clone()
            };
            let own = own_of_wrong(&board, &hers, self.state.next_number, None)?;
            let mut judgement = right;
            let mut lines = vec![at];
            if let Truth::Follows(more) = &judgement.truth {
                lines.extend(more);
                lines.sort_unstable();
                lines.dedup();
            }
            judgement.truth = Truth::Follows(lines);
            judgement.values = vec![(judgement.target, own)];
            judgement.value = None;
            judgement.remarks.clear();
            judgement.evidence.number = Some(number);
            judgement.layout.clone_from(&found.layout);
            Some(judgement)
        })
    }

    /// The line with her form in the place of her number, or of what it makes with a given length.
    fn with_own_number(&self, line: &str, hers: &WrongSum) -> Vec<String> {
        let mut ways: Vec<String> = with_form(line, &hers.typed, &hers.form)
            .into_iter()
            .collect();
        let Ok(typed) = hers.typed.replace(',', ".").parse::<f64>() else {
            return ways;
        };
        let lengths = self.problem.givens().iter();
        let lengths = lengths.filter(|given| given.dimension == Dimension::LENGTH);
        for given in lengths {
            let symbol = given.symbol.typed();
            let (more, less) = (given.value + typed, (given.value - typed).abs());
            let (first, second) = match given.value > typed {
                true => (symbol.as_str(), hers.form.as_str()),
                false => (hers.form.as_str(), symbol.as_str()),
            };
            for (number, form) in [
                (more, format!("{symbol} + {}", hers.form)),
                (less, format!("{first} - {second}")),
            ] {
                let written = [
                    number_text(number),
                    format!("{number:.1}"),
                    format!("{number:.2}"),
                ];
                let same = |text: &&String| {
                    let read = text.parse::<f64>();
                    read.is_ok_and(|read| (read - number).abs() < 1e-9)
                };
                let texts = written.iter().filter(same);
                ways.extend(texts.filter_map(|text| with_form(line, text, &form)));
            }
        }
        ways
    }

    /// What earlier lines in force work out wrongly from numbers alone, with their lines.
    fn own_sums(&self) -> Vec<(usize, WrongSum)> {
        let Some(freely) = &self.state.freely else {
            return Vec::new();
        };
        let (names, own_values) = (self.names(), self.own_values());
        let board = self.board(&names, &own_values);
        // What was mended since gives nothing any more.
        let gone = |at: &usize| freely.void.contains_key(at) || freely.fallen.contains_key(at);
        let wrong = freely
            .lines
            .iter()
            .filter(|(at, _, truth)| *truth == "wrong" && !gone(at));
        wrong
            .filter_map(|(at, line, _)| Some((*at, worked_out_wrongly(&board, line)?)))
            .collect()
    }
}

/// True for a number, perhaps with a unit behind it.
fn is_number(text: &str) -> bool {
    let text = text.trim().trim_start_matches(['-', '−', '+', ' ']);
    text.starts_with(|c: char| c.is_ascii_digit())
        && !text.contains(['+', '*', '·', '/', '(', '^', '×', '÷'])
}

/// A line with a form in the place of a number, wherever that stands by itself; `None` where it
/// does not stand in it.
pub(super) fn with_form(line: &str, number: &str, form: &str) -> Option<String> {
    let part = |c: char| c.is_alphanumeric() || matches!(c, '.' | ',' | '_' | '^');
    let alone = |at: usize| {
        let before = line[..at].chars().next_back();
        let after = line[at + number.len()..].chars().next();
        !before.is_some_and(part) && !after.is_some_and(|c| c.is_ascii_digit() || ".,".contains(c))
    };
    let mut way = String::new();
    let mut from = 0;
    for (at, _) in line.match_indices(number) {
        if alone(at) {
            way.push_str(&line[from..at]);
            way.push_str(&format!("({form})"));
            from = at + number.len();
        }
    }
    way.push_str(&line[from..]);
    (from > 0).then_some(way)
}
