//! The words of a lesson in one language, and templates with places for numbers.

use crate::problem::Given;
use std::collections::BTreeMap;

/// The words of a lesson in one language.
#[derive(Clone, Debug, Default, PartialEq)]
pub(super) struct Text {
    pub(super) title: String,
    pub(super) teaches: String,
    pub(super) caution: String,
    /// Words for the noun keys of the models.
    pub(super) nouns: BTreeMap<String, String>,
    /// What each given is, by its symbol.
    pub(super) meanings: BTreeMap<String, String>,
    /// Sentences of statements, by key.
    pub(super) sentences: BTreeMap<String, String>,
}

/// One piece of a template.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(super) enum Piece<'t> {
    /// Words as they stand.
    Words(&'t str),
    /// The place for the value of the given with this symbol.
    Slot(&'t str),
}

/// Cuts a template into words and slots. `{{` and `}}` stand for one brace each; a brace that is
/// never closed is a word.
pub(super) fn pieces(template: &str) -> Vec<Piece<'_>> {
    let mut pieces = Vec::new();
    let mut rest = template;
    while let Some(at) = rest.find(['{', '}']) {
        let (before, from) = rest.split_at(at);
        pieces.push(Piece::Words(before));
        if from.starts_with("{{") || from.starts_with("}}") {
            pieces.push(Piece::Words(&from[..1]));
            rest = &from[2..];
        } else if let Some(end) = from.find('}').filter(|_| from.starts_with('{')) {
            pieces.push(Piece::Slot(&from[1..end]));
            rest = &from[end + 1..];
        } else {
            pieces.push(Piece::Words(&from[..1]));
            rest = &from[1..];
        }
    }
    pieces.push(Piece::Words(rest));
    pieces
}

/// The template with the written form of each given in its slot.
pub(super) fn fill(template: &str, givens: &[Given]) -> String {
    let mut filled = String::new();
    for piece in pieces(template) {
        match piece {
            Piece::Words(words) => filled.push_str(words),
            Piece::Slot(name) => match givens.iter().find(|given| given.symbol.as_str() == name) {
                Some(given) => filled.push_str(&given.written),
                None => {
                    filled.push('{');
                    filled.push_str(name);
                    filled.push('}');
                }
            },
        }
    }
    filled
}

/// A text as a template that gives it back: braces doubled.
pub(super) fn escape(text: &str) -> String {
    text.replace('{', "{{").replace('}', "}}")
}
