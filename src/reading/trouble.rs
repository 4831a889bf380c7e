//! Why a line could not be read, as data: what and where, no words.

use crate::text::{Slot, Span, Symbol, printable};

/// A line that could not be read.
#[derive(Clone, Debug, PartialEq)]
pub struct Misreading {
    /// What is wrong.
    pub trouble: Trouble,
    /// Where, in bytes of the line as typed.
    pub span: Span,
}

/// What keeps a line from being read.
#[derive(Clone, Debug, PartialEq)]
#[non_exhaustive]
pub enum Trouble {
    /// Nothing to read.
    Empty,
    /// More characters than are read.
    TooLong {
        /// The greatest number of characters.
        limit: usize,
    },
    /// Brackets inside brackets, deeper than is read.
    TooNested {
        /// The greatest depth.
        limit: usize,
    },
    /// A name that is not known.
    UnknownName {
        /// As typed.
        name: String,
        /// The known name that is nearly spelled so.
        nearest: Option<Symbol>,
    },
    /// A name without the index that tells which of several is meant: `W`, where `W_1` and `W_b`
    /// are known.
    WhichName {
        /// As typed.
        name: String,
        /// The known names that begin so.
        names: Vec<Symbol>,
    },
    /// A word after a number that is no unit.
    UnknownUnit {
        /// As typed.
        name: String,
    },
    /// A second unit after a unit.
    SeveralUnits {
        /// The second, as typed.
        second: String,
    },
    /// A bracket without its partner.
    MissingBracket {
        /// The bracket that is missing.
        missing: char,
    },
    /// Something that has no place here.
    Unexpected {
        /// What stands there.
        found: String,
    },
    /// A number or name should stand here.
    NumberExpected,
    /// Two numbers side by side without an operator between them.
    TwoNumbers {
        /// The first, as typed.
        first: String,
        /// The second, as typed.
        second: String,
    },
    /// A number too large to compute with.
    NotFinite,
}

impl Trouble {
    /// The stable key of the sentence that tells this trouble.
    pub fn key(&self) -> &'static str {
        match self {
            Trouble::Empty => "reading.empty",
            Trouble::TooLong { .. } => "reading.too-long",
            Trouble::TooNested { .. } => "reading.too-nested",
            Trouble::UnknownName {
                nearest: Some(_), ..
            } => "reading.unknown-name-near",
            Trouble::UnknownName { nearest: None, .. } => "reading.unknown-name",
            Trouble::WhichName { .. } => "reading.which-name",
            Trouble::UnknownUnit { .. } => "reading.unknown-unit",
            Trouble::SeveralUnits { .. } => "reading.several-units",
            Trouble::MissingBracket { .. } => "reading.missing-bracket",
            Trouble::Unexpected { .. } => "reading.unexpected",
            Trouble::NumberExpected => "reading.number-expected",
            Trouble::TwoNumbers { .. } => "reading.two-numbers",
            Trouble::NotFinite => "reading.not-finite",
        }
    }

    /// What fills the sentence under [`Trouble::key`]. Typed text is made safe to show.
    pub fn slots(&self) -> Vec<(&'static str, Slot)> {
        let key = |text: &str| Slot::Key(printable(text));
        match self {
            Trouble::TooLong { limit } | Trouble::TooNested { limit } => {
                vec![("limit", Slot::Word(limit.to_string()))]
            }
            Trouble::UnknownName { name, nearest } => {
                let near = nearest
                    .iter()
                    .map(|symbol| ("nearest", Slot::Name(symbol.shown())));
                std::iter::once(("name", key(name))).chain(near).collect()
            }
            Trouble::WhichName { name, names } => {
                let shown: Vec<String> = names.iter().map(Symbol::shown).collect();
                vec![("name", key(name)), ("names", Slot::Word(shown.join(", ")))]
            }
            Trouble::UnknownUnit { name } => vec![("name", key(name))],
            Trouble::SeveralUnits { second } => vec![("second", key(second))],
            Trouble::MissingBracket { missing } => vec![("missing", key(&missing.to_string()))],
            Trouble::Unexpected { found } => vec![("found", key(found))],
            Trouble::TwoNumbers { first, second } => {
                vec![("first", key(first)), ("second", key(second))]
            }
            Trouble::Empty | Trouble::NumberExpected | Trouble::NotFinite => Vec::new(),
        }
    }

    /// This trouble at a place.
    pub(super) fn at(self, span: Span) -> Misreading {
        Misreading {
            trouble: self,
            span,
        }
    }
}
