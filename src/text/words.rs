//! The one catalogue of words: every sentence that a learner reads, by key, per language.
//!
//! A language is one JSON file, `words/<language>.json`, an object from key to template. In a
//! template `{name}` is a slot, `**word**` is strong, `` `word` `` is something to type.

use super::manner::Manner;
use super::prose::{Piece, Prose, Tag};
use std::collections::BTreeMap;

/// What goes into a slot of a template.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Slot {
    /// Ordinary words.
    Word(String),
    /// The name of a quantity.
    Name(String),
    /// A value or a formula.
    Value(String),
    /// Something to type.
    Key(String),
    /// A sentence made elsewhere.
    Prose(Prose),
}

/// The words of one language.
#[derive(Clone, Debug)]
pub struct Words {
    templates: BTreeMap<String, String>,
    manner: Manner,
}

impl Words {
    /// The English words, which are built in.
    pub fn english() -> Words {
        Words::parse(include_str!("words/en.json")).unwrap_or_else(|_| Words {
            templates: BTreeMap::new(),
            manner: Manner::default(),
        })
    }

    /// Reads a catalogue of words from its JSON.
    ///
    /// # Errors
    /// The parser's message, when the text is not an object from strings to strings.
    pub fn parse(json: &str) -> Result<Words, String> {
        let templates: BTreeMap<String, String> =
            serde_json::from_str(json).map_err(|trouble| trouble.to_string())?;
        Ok(Words {
            templates,
            manner: Manner::default(),
        })
    }

    /// The same words, said in a manner. Lists of words that are read keep theirs only in the words
    /// from which this was made.
    #[must_use]
    pub fn in_manner(&self, manner: Manner) -> Words {
        Words {
            templates: self.templates.clone(),
            manner,
        }
    }

    /// True if the catalogue has this key.
    pub fn has(&self, key: &str) -> bool {
        self.templates.contains_key(key)
    }

    /// All keys, in order.
    pub fn keys(&self) -> impl Iterator<Item = &str> {
        self.templates.keys().map(String::as_str)
    }

    /// The sentence under `key` with its slots filled. A missing key shows itself in brackets: a
    /// test keeps that from happening, and a learner is never left without a sentence.
    pub fn say(&self, key: &str, slots: &[(&str, Slot)]) -> Prose {
        match self.templates.get(key) {
            Some(template) => self.manner.prose(&fill(template, slots)),
            None => Prose::plain(format!("[{key}]")),
        }
    }

    /// The sentence under `key` as bare text, without slots.
    pub fn word(&self, key: &str) -> String {
        self.say(key, &[]).to_string()
    }
}

/// Fills a template's slots; a slot that is not given stays visible as `{name}`.
fn fill(template: &str, slots: &[(&str, Slot)]) -> Prose {
    let mut pieces: Vec<Piece> = Vec::new();
    let mut push = |tag: Tag, text: &str| {
        if !text.is_empty() {
            pieces.push(Piece {
                tag,
                text: text.to_owned(),
            });
        }
    };
    let mut rest = template;
    while let Some(at) = rest.find(['{', '*', '`']) {
        let (before, from) = rest.split_at(at);
        let (open, close, tag) = match from.as_bytes()[0] {
            b'{' => ("{", "}", None),
            b'`' => ("`", "`", Some(Tag::Key)),
            _ if from.starts_with("**") => ("**", "**", Some(Tag::Strong)),
            _ => {
                push(Tag::Plain, &rest[..=at]);
                rest = &rest[at + 1..];
                continue;
            }
        };
        push(Tag::Plain, before);
        let Some(length) = from[open.len()..].find(close) else {
            push(Tag::Plain, from);
            rest = "";
            break;
        };
        let inside = &from[open.len()..open.len() + length];
        match (tag, slots.iter().find(|(name, _)| *name == inside)) {
            (Some(tag), _) => push(tag, &with_slots(inside, slots)),
            // A sentence begins with a capital letter, whatever word fills its first slot.
            (None, Some((_, Slot::Word(text))))
                if before.is_empty() && rest.len() == template.len() =>
            {
                push(Tag::Plain, &capitalised(text));
            }
            (None, Some((_, Slot::Word(text)))) => push(Tag::Plain, text),
            (None, Some((_, Slot::Name(text)))) => push(Tag::Name, text),
            (None, Some((_, Slot::Value(text)))) => push(Tag::Value, text),
            (None, Some((_, Slot::Key(text)))) => push(Tag::Key, text),
            (None, Some((_, Slot::Prose(prose)))) => {
                prose
                    .0
                    .iter()
                    .for_each(|piece| push(piece.tag, &piece.text));
            }
            (None, None) => push(Tag::Plain, &from[..length + 2]),
        }
        rest = &from[open.len() + length + close.len()..];
    }
    push(Tag::Plain, rest);
    Prose(pieces)
}

/// Slots inside something to type.
fn with_slots(inside: &str, slots: &[(&str, Slot)]) -> String {
    slots.iter().fold(inside.to_owned(), |text, (name, slot)| {
        let filling = match slot {
            Slot::Word(text) | Slot::Name(text) | Slot::Value(text) | Slot::Key(text) => {
                text.clone()
            }
            Slot::Prose(prose) => prose.to_string(),
        };
        text.replace(&format!("{{{name}}}"), &filling)
    })
}

fn capitalised(text: &str) -> String {
    let mut letters = text.chars();
    match letters.next() {
        Some(first) => first.to_uppercase().chain(letters).collect(),
        None => String::new(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn slots_are_filled_and_tagged() {
        let words =
            Words::parse(r#"{"a": "The **weight** {name} is {value}; type `help`, 3 * 4."}"#)
                .unwrap_or_else(|trouble| panic!("{trouble}"));
        let prose = words.say(
            "a",
            &[
                ("name", Slot::Name("W".into())),
                ("value", Slot::Value("3 N".into())),
            ],
        );
        assert_eq!(prose.to_string(), "The weight W is 3 N; type help, 3 * 4.");
        assert!(prose.0.contains(&Piece {
            tag: Tag::Strong,
            text: "weight".into()
        }));
    }

    #[test]
    fn the_english_catalogue_is_an_object_of_sentences() {
        assert!(Words::english().keys().count() > 0);
    }
}
