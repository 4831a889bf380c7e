//! Shares of a length in whole numbers, `W1*3/4` where a load stands at 1.5 m of 2.0 m: what is left of
//! a balance that was divided by the length.

use super::Session;
use crate::units::{Dimension, number_text};
use std::ops::Range;

/// Ratios nearer than this share of them are one.
const EXACT: f64 = 1e-9;
/// The most ways in which a line is written with lengths.
const MOST_WAYS: usize = 8;

impl Session {
    /// A line with two given lengths in the place of each share in whole numbers that is as large as
    /// their ratio; one way for each two lengths that may be meant by a share.
    pub(super) fn with_lengths_in_shares(&self, line: &str) -> Vec<String> {
        let shares = shares(line);
        if self.is_general() || shares.is_empty() {
            return Vec::new();
        }
        let givens = self.problem.givens().iter();
        let lengths = givens.filter(|given| given.dimension == Dimension::LENGTH);
        let lengths: Vec<f64> = lengths.map(|given| given.value).collect();
        let mut ways = vec![line.to_owned()];
        // From the end, so that the places before it stay.
        for (over, under) in shares.into_iter().rev() {
            let number = |place: &Range<usize>| line[place.clone()].parse::<f64>().unwrap_or(0.0);
            let share = number(&over) / number(&under);
            let meant = lengths
                .iter()
                .flat_map(|one| lengths.iter().map(move |other| (one, other)));
            let meant = meant.filter(|(one, other)| {
                one != other && (*one / *other - share).abs() <= EXACT * share
            });
            let put = |way: &String, one: f64, other: f64| {
                let mut way = way.clone();
                way.replace_range(under.clone(), &number_text(other));
                way.replace_range(over.clone(), &number_text(one));
                way
            };
            let put_in: Vec<String> = meant
                .flat_map(|(one, other)| ways.iter().map(move |way| put(way, *one, *other)))
                .take(MOST_WAYS)
                .collect();
            if !put_in.is_empty() {
                ways = put_in;
            }
        }
        ways.retain(|way| way != line);
        ways
    }
}

/// The places of two whole numbers of which the one is divided by the other, in one term.
fn shares(line: &str) -> Vec<(Range<usize>, Range<usize>)> {
    let numbers = whole_numbers(line);
    let in_term = |c: char| c.is_alphanumeric() || "_⊥*·× ".contains(c);
    let pairs = numbers.windows(2).filter_map(|pair| {
        let (over, under) = (pair[0].clone(), pair[1].clone());
        let between = line[over.end..under.start].trim_end().strip_suffix('/')?;
        between.chars().all(in_term).then_some((over, under))
    });
    pairs.collect()
}

/// The places of the whole numbers in a line that belong to no name and have no fraction.
fn whole_numbers(line: &str) -> Vec<Range<usize>> {
    let of_number = |c: char| c.is_ascii_digit() || matches!(c, '.' | ',');
    let (mut found, mut from) = (Vec::new(), 0);
    while let Some(start) = line[from..].find(of_number).map(|at| from + at) {
        let rest = line[start..].trim_start_matches(of_number);
        let end = line.len() - rest.len();
        let named = line[..start].ends_with(|c: char| c.is_alphabetic() || c == '_');
        let whole = line[start..end].chars().all(|c| c.is_ascii_digit());
        if whole && !named {
            found.push(start..end);
        }
        from = end;
    }
    found
}
