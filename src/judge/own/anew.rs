//! A name of the learner's own that stands for something already, before one more form.

use super::super::board::Board;
use super::super::equation;
use super::super::moment_sum::value_of_name;
use super::super::stock::Stock;
use super::super::{Judgement, Truth};
use super::{multiple_of_unknown, own_name};
use crate::key::StepId;
use crate::reading::Tree;

/// Judges `M = …` where M stands for something already: `M = T·3.6·sin 65°` after a value of M is the
/// balance of the moments, where it holds. Else the name stands for the form from here on.
pub(in super::super) fn told_anew(
    board: &Board<'_>,
    stock: &Stock,
    asked: StepId,
    (name, sides): (Option<&str>, &[&Tree]),
    rest: &[&Tree],
    line: usize,
) -> Judgement {
    let name = name.unwrap_or_default();
    // A multiple of the unknown takes the place of what the name stood for, too.
    if let Some(own) = multiple_of_unknown(board, stock, rest) {
        let balance = equation::judge(board, stock, asked, sides, line);
        if balance.truth.holds() {
            return balance;
        }
        let mut judgement = Judgement::of(asked, Truth::Noted);
        judgement.names = Some((name.to_owned(), own));
        return judgement;
    }
    let mut judgement = value_of_name(board, stock, asked, rest, line);
    judgement.names = own_name(board, stock, name, rest, &judgement);
    if !judgement.truth.holds() {
        judgement.truth = Truth::Noted;
        judgement.remarks.clear();
    }
    judgement
}
