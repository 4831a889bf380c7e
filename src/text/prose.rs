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

    /// What it says up to the end of its first sentence, of its second, and so on: the last is the
    /// whole.
    pub fn sentences(&self) -> Vec<Prose> {
        let whole = self.to_string();
        let ends = whole.match_indices(['.', '?']).map(|(at, _)| at + 1);
        let ends = ends.filter(|end| whole[*end..].starts_with([' ', '\n']));
        ends.chain([whole.len()])
            .map(|end| self.up_to(end))
            .collect()
    }

    /// Its first so many bytes.
    fn up_to(&self, end: usize) -> Prose {
        let mut left = end;
        let mut pieces = Vec::new();
        for piece in &self.0 {
            let taken = piece.text.len().min(left);
            left -= taken;
            if taken > 0 {
                pieces.push(Piece {
                    tag: piece.tag,
                    text: piece.text[..taken].to_owned(),
                });
            }
        }
        Prose(pieces)
    }
}

impl fmt::Display for Prose {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.0
            .iter()
            .try_for_each(|piece| formatter.write_str(&piece.text))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_prose_is_parted_behind_its_sentences_and_not_within_a_number() {
        let piece = |tag, text: &str| Piece {
            tag,
            text: text.into(),
        };
        let prose = Prose(vec![
            piece(Tag::Plain, "It is "),
            piece(Tag::Value, "3.5 m"),
            piece(Tag::Plain, ". Is it? Look."),
        ]);
        let told: Vec<String> = prose.sentences().iter().map(Prose::to_string).collect();
        let wanted = [
            "It is 3.5 m.",
            "It is 3.5 m. Is it?",
            "It is 3.5 m. Is it? Look.",
        ];
        assert_eq!(told, wanted);
        assert_eq!(prose.sentences()[0].0[1], piece(Tag::Value, "3.5 m"));
        assert_eq!(Prose::plain("").sentences().len(), 1);
    }
}
