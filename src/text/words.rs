//! The one catalogue of words: every sentence that a learner reads, by key, per language.
//!
//! A language is one JSON file, `words/<language>.json`, an object from key to template. In a
//! template `{name}` is a slot, `**word**` is strong, `` `word` `` is something to type. A language
//! that declines its nouns has them under the key `nouns`, and asks for a case by `{name:dem}`.

use super::language::Language;
use super::manner::Manner;
use super::noun::Nouns;
use super::prose::{Piece, Prose, Tag};
use std::collections::BTreeMap;
use std::sync::LazyLock;

/// The key of the nouns with their cases.
const NOUNS: &str = "nouns";
/// The key of the prepositions that become one word with an article.
const JOINED: &str = "nouns-joined";

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
    language: Language,
    templates: BTreeMap<String, String>,
    nouns: Nouns,
    manner: Manner,
}

impl Words {
    /// The English words, which are built in.
    pub fn english() -> Words {
        Words::of(Language::default())
    }

    /// The words of a language that is built in. What it lacked would be said in English; a test
    /// sees that it lacks nothing.
    pub fn of(language: Language) -> Words {
        let parsed =
            |language: Language| Words::parse(language.json()).unwrap_or_else(|_| Words::none());
        let mut words = parsed(language);
        if language != Language::default() {
            let english = parsed(Language::default()).templates;
            let lacks = |key: &String| !words.templates.contains_key(key);
            let lacking: Vec<_> = english.into_iter().filter(|(key, _)| lacks(key)).collect();
            words.templates.extend(lacking);
        }
        Words { language, ..words }
    }

    fn none() -> Words {
        Words {
            language: Language::default(),
            templates: BTreeMap::new(),
            nouns: Nouns::default(),
            manner: Manner::default(),
        }
    }

    /// The language.
    pub fn language(&self) -> Language {
        self.language
    }

    /// Reads a catalogue of words from its JSON.
    ///
    /// # Errors
    /// The parser's message, when the text is not an object from strings to strings.
    pub fn parse(json: &str) -> Result<Words, String> {
        let templates: BTreeMap<String, String> =
            serde_json::from_str(json).map_err(|trouble| trouble.to_string())?;
        let list = |key: &str| templates.get(key).map_or("", String::as_str);
        let nouns = Nouns::of(list(NOUNS), list(JOINED));
        Ok(Words {
            templates,
            nouns,
            ..Words::none()
        })
    }

    /// The same words, said in a manner. Lists of words that are read keep theirs only in the words
    /// from which this was made.
    #[must_use]
    pub fn in_manner(&self, manner: Manner) -> Words {
        Words {
            manner,
            ..self.clone()
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
            Some(template) => self.manner.prose(&fill(template, slots, &self.nouns)),
            None => Prose::plain(format!("[{key}]")),
        }
    }

    /// What the catalogues of all languages list under a key, parted by commas: what is typed in
    /// one of them is understood in every other.
    pub fn listed(key: &str) -> Vec<String> {
        let mut list: Vec<String> = Vec::new();
        for words in every() {
            let said = words.word(key);
            for word in said.split(',').map(str::trim) {
                if !word.is_empty() && !list.iter().any(|known| known == word) {
                    list.push(word.to_owned());
                }
            }
        }
        list
    }

    /// A text that the catalogue of some language has under a key, in the words of this one; any
    /// other as it stands. So what a file left to the program follows the language.
    pub fn retold(&self, key: &str, text: &str) -> String {
        match every().iter().any(|words| words.word(key) == text) {
            true => self.word(key),
            false => text.to_owned(),
        }
    }

    /// A noun in every form that a sentence may have it in, without its article.
    pub fn forms_of(&self, noun: &str) -> Vec<String> {
        self.nouns.forms_of(noun)
    }

    /// The sentence under `key` as bare text, without slots.
    pub fn word(&self, key: &str) -> String {
        self.say(key, &[]).to_string()
    }
}

/// The words of all languages.
fn every() -> &'static [Words] {
    static ALL: LazyLock<Vec<Words>> = LazyLock::new(|| Language::all().map(Words::of).collect());
    &ALL
}

/// Fills a template's slots; a slot that is not given stays visible as `{name}`.
fn fill(template: &str, slots: &[(&str, Slot)], nouns: &Nouns) -> Prose {
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
        let Some(length) = from[open.len()..].find(close) else {
            push(Tag::Plain, before);
            push(Tag::Plain, from);
            rest = "";
            break;
        };
        let inside = &from[open.len()..open.len() + length];
        let (name, case) = match (tag, inside.split_once(':')) {
            (None, Some((name, case))) => (name, Some(case)),
            _ => (inside, None),
        };
        let found = slots.iter().find(|(known, _)| *known == name);
        if let (Some((_, Slot::Word(noun))), Some(case)) = (found, case) {
            // A noun with its article alone is no sentence.
            let begins = before.is_empty() && rest.len() == template.len();
            let begins = begins && template.len() > length + 2;
            let (before, mut text) = nouns.join(before, nouns.in_case(noun, case));
            if begins {
                text = capitalised(&text);
            }
            push(Tag::Plain, before);
            push(Tag::Plain, &text);
            rest = &from[length + 2..];
            continue;
        }
        // A quantity, or what is to be typed, may be called as a thing is.
        let tagged = match found {
            Some((_, Slot::Name(noun))) => Some((Tag::Name, noun)),
            Some((_, Slot::Key(noun))) => Some((Tag::Key, noun)),
            _ => None,
        };
        if let (Some((tag, noun)), Some(case)) = (tagged, case)
            && nouns.knows(noun)
        {
            let (before, text) = nouns.join(before, nouns.in_case(noun, case));
            push(Tag::Plain, before);
            push(tag, &text);
            rest = &from[length + 2..];
            continue;
        }
        push(Tag::Plain, before);
        match (tag, found) {
            (Some(tag), _) => push(tag, &with_slots(inside, slots, nouns)),
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
fn with_slots(inside: &str, slots: &[(&str, Slot)], nouns: &Nouns) -> String {
    slots.iter().fold(inside.to_owned(), |text, (name, slot)| {
        let filling = match slot {
            Slot::Word(text) | Slot::Name(text) | Slot::Value(text) | Slot::Key(text) => {
                text.clone()
            }
            Slot::Prose(prose) => prose.to_string(),
        };
        let text = text.replace(&format!("{{{name}}}"), &filling);
        nouns.declined(&text, name, &filling)
    })
}

pub(super) fn capitalised(text: &str) -> String {
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

    /// Every language says everything, in sentences with the slots of the English ones in any case
    /// and order, and with as many things to type.
    #[test]
    fn every_language_has_every_key_with_its_slots() {
        let read = |language: Language| {
            let read: BTreeMap<String, String> = serde_json::from_str(language.json())
                .unwrap_or_else(|trouble| panic!("{}: {trouble}", language.tag()));
            read
        };
        let english = read(Language::default());
        for language in Language::all() {
            let tag = language.tag();
            let own = read(language);
            let lacking: Vec<&String> = english
                .keys()
                .filter(|key| !own.contains_key(*key))
                .collect();
            assert_eq!(lacking, Vec::<&String>::new(), "{tag}");
            let lists = [NOUNS, JOINED];
            for (key, template) in own.iter().filter(|(key, _)| !lists.contains(&key.as_str())) {
                let like = english.get(key);
                let like = like.unwrap_or_else(|| panic!("{tag} has {key}, which is no key"));
                let told = format!("{tag}: {key}: {template}");
                assert_eq!(slots_of(template), slots_of(like), "{told}");
                assert_eq!(template.matches("**").count() % 2, 0, "{told}");
                let marks = |text: &str| text.matches('`').count();
                assert_eq!(marks(template), marks(like), "{told}");
                for case in asked(template).filter_map(|inside| inside.split_once(':')) {
                    assert!(["der", "des", "dem", "den"].contains(&case.1), "{told}");
                }
            }
        }
    }

    /// What stands in the braces of a template.
    fn asked(template: &str) -> impl Iterator<Item = &str> {
        let after = template.split('{').skip(1);
        after.filter_map(|rest| rest.split_once('}').map(|(inside, _)| inside))
    }

    fn slots_of(template: &str) -> std::collections::BTreeSet<&str> {
        asked(template)
            .map(|inside| inside.split(':').next().unwrap_or(inside))
            .collect()
    }

    /// The files are sorted, so that two languages can be laid side by side.
    #[test]
    fn the_keys_of_every_language_are_in_order() {
        for language in Language::all() {
            let keys: Vec<&str> = language
                .json()
                .lines()
                .filter_map(|line| line.trim().strip_prefix('"')?.split_once("\": "))
                .map(|(key, _)| key)
                .collect();
            assert!(keys.len() > 1000);
            assert!(
                keys.is_sorted_by(|one, next| one < next),
                "{}",
                language.tag()
            );
        }
    }

    #[test]
    fn a_noun_stands_in_the_case_that_is_asked_for() {
        let words = Words::parse(
            r#"{"nouns": "Mast = der Mast, des Mastes, dem Mast, den Mast",
                "a": "{body:der} trägt {load:den} an **{body:dem}**, {body}.",
                "b": "`von {body:dem}`", "c": "{body:den}"}"#,
        )
        .unwrap_or_else(|trouble| panic!("{trouble}"));
        let slots = [
            ("body", Slot::Word("Mast".into())),
            ("load", Slot::Name("W1".into())),
        ];
        let said = words.say("a", &slots).to_string();
        assert_eq!(said, "Der Mast trägt W1 an dem Mast, Mast.");
        assert_eq!(words.say("b", &slots).to_string(), "von dem Mast");
        assert_eq!(words.say("c", &slots).to_string(), "den Mast");
    }

    #[test]
    fn the_english_catalogue_is_an_object_of_sentences() {
        assert!(Words::english().keys().count() > 0);
    }
}
