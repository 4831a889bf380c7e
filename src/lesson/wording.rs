//! Reading the texts of a lesson, and whether they fit its models.

use super::decode::{Fields, Item, Report};
use super::family::Variant;
use super::fault::FaultKind;
use super::texts::{Piece, Text, caution, pieces};
use std::collections::{BTreeMap, BTreeSet};

/// A language, its text, and where its parts stand.
pub(super) type Told<'a> = (String, Text, TextItems<'a>);

/// Where the parts of a text stand: each section, and each entry of it.
pub(super) struct TextItems<'a> {
    nouns: Section<'a>,
    meanings: Section<'a>,
    sentences: Section<'a>,
}

/// A section of a text: where it stands, and where each of its entries stands.
struct Section<'a> {
    item: Item<'a>,
    entries: BTreeMap<String, Item<'a>>,
}

/// Reads the texts of a lesson by language.
pub(super) fn read_texts<'a>(item: &Item<'a>, report: &mut Report) -> Option<Vec<Told<'a>>> {
    let entries = item.entries(report)?;
    if entries.is_empty() {
        item.expected("the texts of at least one language, such as \"en\"", report);
        return None;
    }
    let texts: Vec<Option<Told<'a>>> = entries
        .into_iter()
        .map(|(language, item)| {
            let tag = language
                .chars()
                .all(|c| c.is_ascii_alphanumeric() || c == '-');
            if !tag || language.is_empty() {
                item.expected("a language under a tag such as \"en\"", report);
            }
            let (text, items) = read_text(&item, report)?;
            Some((language.to_owned(), text, items))
        })
        .collect();
    // A fault of one language hides none of another.
    Some(texts.into_iter().flatten().collect())
}

fn read_text<'a>(item: &Item<'a>, report: &mut Report) -> Option<(Text, TextItems<'a>)> {
    let known = [
        "title",
        "teaches",
        "caution",
        "nouns",
        "meanings",
        "sentences",
    ];
    let fields = item.fields(&known, report)?;
    let mut line = |name, expected| {
        let item = fields.required(name, expected, report)?;
        item.said(expected, report).map(str::to_owned)
    };
    let title = line("title", "one line that names the lesson");
    let teaches = line("teaches", "one sentence that says what it teaches");
    let caution = line("caution", "a sentence of caution");
    let nouns = section(
        &fields,
        "nouns",
        "the words for the nouns of the models",
        report,
    );
    let meanings = section(&fields, "meanings", "what each given number is", report);
    let sentences = section(
        &fields,
        "sentences",
        "the sentences of the statements",
        report,
    );
    let ((nouns, noun_items), (meanings, meaning_items)) = (nouns?, meanings?);
    let (sentences, sentence_items) = sentences?;
    // What a line lacks is reported; the words below are looked at all the same.
    let text = Text {
        title: title.unwrap_or_default(),
        teaches: teaches.unwrap_or_default(),
        caution: caution.unwrap_or_default(),
        nouns,
        meanings,
        sentences,
    };
    let items = TextItems {
        nouns: noun_items,
        meanings: meaning_items,
        sentences: sentence_items,
    };
    Some((text, items))
}

/// An object from names to texts.
fn section<'a>(
    fields: &Fields<'a>,
    name: &str,
    expected: &str,
    report: &mut Report,
) -> Option<(BTreeMap<String, String>, Section<'a>)> {
    let item = fields.required(name, &format!("an object with {expected}"), report)?;
    let mut texts = BTreeMap::new();
    let mut entries = BTreeMap::new();
    for (key, entry) in item.entries(report)? {
        let text = entry.said("words that can be read", report);
        texts.insert(key.to_owned(), text.unwrap_or_default().to_owned());
        entries.insert(key.to_owned(), entry);
    }
    Some((texts, Section { item, entries }))
}

/// Reads the text of a problem file and its statement.
pub(super) fn read_problem_text<'a>(
    item: &Item<'a>,
    report: &mut Report,
) -> Option<(Text, String, Item<'a>)> {
    let known = ["title", "statement", "caution", "nouns", "meanings"];
    let fields = item.fields(&known, report)?;
    let mut line = |name, expected| {
        let item = fields.required(name, expected, report)?;
        item.said(expected, report).map(str::to_owned)
    };
    let title = line("title", "one line that names the problem");
    let statement = line("statement", "the scene in words, with every given number");
    let caution = match fields.optional("caution") {
        Some(item) => item
            .text("a sentence of caution", report)
            .map(|text| caution(Some(text))),
        None => Some(caution(None)),
    };
    let nouns = match fields.has("nouns") {
        true => section(&fields, "nouns", "words for nouns", report).map(|(texts, _)| texts),
        false => Some(BTreeMap::new()),
    };
    let meanings = section(&fields, "meanings", "what each given number is", report);
    let text = Text {
        title: title?,
        caution: caution?,
        nouns: nouns?,
        meanings: meanings?.0,
        ..Text::default()
    };
    Some((text, statement?, item.clone()))
}

/// Reports slots of a problem whose model could not be read, where they mean nothing.
pub(super) fn check_loose_statement(
    item: &Item<'_>,
    text: &Text,
    statement: &str,
    report: &mut Report,
) {
    let known = text.meanings.keys().map(String::as_str);
    check_slots(&field(item, "statement"), statement, known, report);
}

/// Reports givens without a meaning and slots without a given.
pub(super) fn check_problem_words(
    item: &Item<'_>,
    text: &Text,
    statement: &str,
    variant: &Variant,
    report: &mut Report,
) {
    for given in given_names(variant) {
        if !text.meanings.contains_key(given) {
            let key = given.to_owned();
            report.add(&field(item, "meanings"), FaultKind::NoWord { key });
        }
    }
    let said = field(item, "statement");
    check_slots(&said, statement, given_names(variant), report);
    for name in untold(variant, statement) {
        // A statement may also hold the number itself.
        let given = variant.parts.givens.iter();
        let mut given = given.filter(|given| given.symbol.as_str() == name);
        if !given.any(|given| statement.contains(&given.written)) {
            let kind = FaultKind::NotTold {
                symbol: name.to_owned(),
                variant: None,
            };
            report.add(&said, kind);
        }
    }
}

/// A field that was read before.
fn field<'a>(item: &Item<'a>, name: &str) -> Item<'a> {
    let known = item.entries(&mut Report::default()).unwrap_or_default();
    let found = known.into_iter().find(|(known, _)| *known == name);
    found.map_or_else(|| item.clone(), |(_, item)| item)
}

fn given_names(variant: &Variant) -> impl Iterator<Item = &str> + Clone {
    variant
        .parts
        .givens
        .iter()
        .map(|given| given.symbol.as_str())
}

fn check_slots<'v, T>(item: &Item<'_>, template: &str, known: T, report: &mut Report)
where
    T: IntoIterator<Item = &'v str> + Clone,
{
    for piece in pieces(template) {
        if let Piece::Slot(name) | Piece::NamedSlot(name) = piece
            && !known.clone().into_iter().any(|given| given == name)
        {
            let kind = FaultKind::NoSuchGiven {
                symbol: crate::text::printable(name),
                given: known.clone().into_iter().map(str::to_owned).collect(),
            };
            report.add(item, kind);
        }
    }
}

/// Reports words that a language lacks, words that nothing uses, and numbers that are not told.
pub(super) fn check_lesson_words(
    texts: &[Told<'_>],
    variants: &[Option<Variant>],
    report: &mut Report,
) {
    let read: Vec<&Variant> = variants.iter().flatten().collect();
    let complete = read.len() == variants.len();
    let nouns = read.iter().flat_map(|variant| noun_keys(variant)).collect();
    let givens = read
        .iter()
        .flat_map(|variant| given_names(variant))
        .collect();
    let says = read.iter().flat_map(|variant| &variant.says);
    let says: BTreeSet<&str> = says.map(String::as_str).collect();
    for (_, text, items) in texts {
        check_section(&items.nouns, &nouns, complete, report);
        check_section(&items.meanings, &givens, complete, report);
        check_section(&items.sentences, &says, complete, report);
        for (index, variant) in variants.iter().enumerate() {
            if let Some(variant) = variant {
                check_statement(text, items, index, variant, report);
            }
        }
        if !complete {
            let known = text
                .meanings
                .keys()
                .map(String::as_str)
                .chain(givens.iter().copied());
            check_loose_sentences(items, text, &says, &known.collect(), report);
        }
    }
}

/// Reports slots that are no given of any model and mean nothing, in the sentences of models that
/// could not be read.
fn check_loose_sentences(
    items: &TextItems<'_>,
    text: &Text,
    told: &BTreeSet<&str>,
    known: &BTreeSet<&str>,
    report: &mut Report,
) {
    for (key, sentence) in &text.sentences {
        let item = items.sentences.entries.get(key);
        if let Some(item) = item.filter(|_| !told.contains(key.as_str())) {
            check_slots(item, sentence, known.iter().copied(), report);
        }
    }
}

fn noun_keys(variant: &Variant) -> Vec<&str> {
    let parts = &variant.parts;
    let mut keys = vec![parts.body.noun.as_str()];
    keys.extend(parts.supports.iter().map(|part| part.noun.as_str()));
    keys.extend(parts.ropes.iter().map(|part| part.noun.as_str()));
    keys.extend(parts.loads.iter().map(|part| part.noun.as_str()));
    keys
}

fn check_section(
    section: &Section<'_>,
    needed: &BTreeSet<&str>,
    complete: bool,
    report: &mut Report,
) {
    for &key in needed {
        if !section.entries.contains_key(key) {
            let key = crate::text::printable(key);
            report.add(&section.item, FaultKind::NoWord { key });
        }
    }
    for (key, item) in &section.entries {
        if complete && !needed.contains(key.as_str()) {
            let key = crate::text::printable(key);
            report.add(item, FaultKind::UnusedWord { key });
        }
    }
}

fn check_statement(
    text: &Text,
    items: &TextItems<'_>,
    index: usize,
    variant: &Variant,
    report: &mut Report,
) {
    for key in &variant.says {
        if let (Some(sentence), Some(item)) =
            (text.sentences.get(key), items.sentences.entries.get(key))
        {
            check_slots(item, sentence, given_names(variant), report);
        }
    }
    let template = text.template(&variant.says);
    for name in untold(variant, &template) {
        let kind = FaultKind::NotTold {
            symbol: name.to_owned(),
            variant: Some(index),
        };
        report.add(&items.sentences.item, kind);
    }
}

/// The givens that a statement has no slot for.
fn untold<'v>(variant: &'v Variant, template: &str) -> Vec<&'v str> {
    let told: BTreeSet<Piece<'_>> = pieces(template).into_iter().collect();
    given_names(variant)
        .filter(|name| {
            !told.contains(&Piece::Slot(name)) && !told.contains(&Piece::NamedSlot(name))
        })
        .collect()
}
