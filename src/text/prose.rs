//! Sentences as tagged pieces.

use std::fmt;

/// What a piece of a sentence is. The screen gives each a look, plain text gives it none.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Tag {
    /// Ordinary words.
    Plain,
    /// The name of a quantity.
    Name,
    /// A value with its unit, or a formula.
    Value,
    /// A word that carries the sentence.
    Strong,
    /// Something to type or press.
    Key,
}

/// One piece of a sentence.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Piece {
    /// What it is.
    pub tag: Tag,
    /// Its text.
    pub text: String,
}

/// A sentence or a few, as tagged pieces. `Display` gives the bare words.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Prose(pub Vec<Piece>);

impl Prose {
    /// Ordinary words only.
    pub fn plain(text: impl Into<String>) -> Prose {
        Prose(vec![Piece {
            tag: Tag::Plain,
            text: text.into(),
        }])
    }

    /// No words at all.
    pub fn is_empty(&self) -> bool {
        self.0.iter().all(|piece| piece.text.is_empty())
    }

    /// This and then another, with a space between.
    #[must_use]
    pub fn then(mut self, other: Prose) -> Prose {
        if !self.is_empty() && !other.is_empty() {
            self.0.push(Piece {
                tag: Tag::Plain,
                text: " ".to_owned(),
            });
        }
        self.0.extend(other.0);
        self
    }
}

impl fmt::Display for Prose {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.0
            .iter()
            .try_for_each(|piece| formatter.write_str(&piece.text))
    }
}
