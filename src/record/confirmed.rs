//! The mistakes that a learner has confirmed by putting their lines right. One that the tutor only
//! named is evidence of nothing, and is not counted.

use super::{Entry, Journal};
use std::collections::BTreeMap;

/// How often each mistake was confirmed over several sittings.
pub fn confirmed_over(journals: &[Journal]) -> BTreeMap<String, u32> {
    let mut counts = BTreeMap::new();
    for record in journals.iter().flat_map(|journal| &journal.records) {
        if let Entry::Verdict(verdict) = &record.entry {
            for id in &verdict.confirmed {
                *counts.entry(id.clone()).or_default() += 1;
            }
        }
    }
    counts
}

/// The name of the option that holds such counts.
const OPTION: &str = "confirmed";

/// The options of a problem that begins with these counts: `complement:2 not-resolved:1`.
pub fn confirmed_told(counts: &BTreeMap<String, u32>) -> BTreeMap<String, String> {
    let told: Vec<String> = counts
        .iter()
        .map(|(id, count)| format!("{id}:{count}"))
        .collect();
    let option = (!told.is_empty()).then(|| (OPTION.to_owned(), told.join(" ")));
    option.into_iter().collect()
}

/// The counts that a problem began with; what is not to be read in them is passed over.
pub fn confirmed_from(options: &BTreeMap<String, String>) -> BTreeMap<String, u32> {
    let text = options.get(OPTION).map_or("", String::as_str);
    let pieces = text
        .split_whitespace()
        .filter_map(|piece| piece.split_once(':'));
    pieces
        .filter_map(|(id, count)| Some((id.to_owned(), count.parse().ok()?)))
        .collect()
}
