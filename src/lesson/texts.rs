//! The words of a lesson in one language, and templates with places for numbers.

use crate::problem::Given;
use crate::text::Words;
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

/// Words of caution as a file gives them; where it gives none, those that always stand.
pub(super) fn caution(written: Option<&str>) -> String {
    match written.filter(|text| !text.trim().is_empty()) {
        Some(text) => text.to_owned(),
        None => Words::english().word("caution"),
    }
}

/// What stands for the value of a given that is sought.
pub(super) const UNKNOWN: &str = "?";

/// One piece of a template.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(super) enum Piece<'t> {
    /// Words as they stand.
    Words(&'t str),
    /// The place for the value of the given with this symbol: `{L}` prints `2.4 m`.
    Slot(&'t str),
    /// The place for its name and value: `{L=}` prints `L = 2.4 m`.
    NamedSlot(&'t str),
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
            let inside = &from[1..end];
            pieces.push(match inside.strip_suffix('=') {
                Some(name) => Piece::NamedSlot(name),
                None => Piece::Slot(inside),
            });
            rest = &from[end + 1..];
        } else {
            pieces.push(Piece::Words(&from[..1]));
            rest = &from[1..];
        }
    }
    pieces.push(Piece::Words(rest));
    pieces
}

/// The template with each given in its slot, or the name of one that is sought; a slot without a given stays as it is.
pub(super) fn fill(template: &str, givens: &[Given]) -> String {
    let find = |name: &str| givens.iter().find(|given| given.symbol.as_str() == name);
    let mut filled = String::new();
    for piece in pieces(template) {
        match piece {
            Piece::Words(words) => filled.push_str(words),
            Piece::Slot(name) => match find(name) {
                Some(given) if given.written == UNKNOWN => filled.push_str(&given.symbol.shown()),
                Some(given) => filled.push_str(&given.written),
                None => filled.push_str(&format!("{{{name}}}")),
            },
            Piece::NamedSlot(name) => match find(name) {
                Some(given) => filled.push_str(&format!("{} = {}", given.symbol, given.written)),
                None => filled.push_str(&format!("{{{name}=}}")),
            },
        }
    }
    filled
}

/// A text as a template that gives it back: braces doubled.
pub(super) fn escape(text: &str) -> String {
    text.replace('{', "{{").replace('}', "}}")
}
