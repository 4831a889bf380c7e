//! The class profile of this start: where it is found, and what it fixes, in words.

use super::Trouble;
use super::args::Arguments;
use super::library::read_file;
use crate::lesson::{ClassProfile, parse_class};
use crate::problem::{Asking, FiguresAsked, Reference, UnitAsked};
use crate::store::{Wishes, data_folder, saves_folder};
use crate::text::{Language, Prose, Slot, Words, printable};
use crate::units::number_text;
use std::collections::BTreeMap;
use std::path::{Path, PathBuf};

/// The file that is found by its place.
pub(super) const CLASS_FILE: &str = "class.json";
/// The environment variable that names one.
const VARIABLE: &str = "LEVERWRIGHT_CLASS";

/// The names of the options that keep what was asked when a problem was begun.
const UNIT: &str = "unit";
const FIGURES: &str = "figures";
const CLASS: &str = "class";
/// The name of the option that keeps in which language a problem was begun.
const LANGUAGE: &str = "language";

/// The folder of the saves.
pub(super) fn saves_of(arguments: &Arguments) -> PathBuf {
    let started_in = std::env::current_dir().unwrap_or_default();
    let variable = std::env::var_os("LEVERWRIGHT_SAVES");
    let data = data_folder();
    saves_folder(&Wishes {
        option: arguments.saves.as_deref(),
        variable: variable.as_deref(),
        started_in: &started_in,
        data_folder: data.as_deref(),
    })
}

/// The profile that holds: the one asked for, else the one of the environment, else the one beside
/// the lessons or the saves; else one that changes nothing.
///
/// # Errors
/// A file that cannot be read, or with faults: what a class is asked must not be guessed.
pub(super) fn found(arguments: &Arguments, words: &Words) -> Result<ClassProfile, Trouble> {
    let variable = std::env::var_os(VARIABLE).filter(|named| !named.is_empty());
    let named = arguments.class.clone().or(variable.map(PathBuf::from));
    let beside = || {
        let lessons = arguments.lessons.clone().into_iter();
        let folders = lessons.chain([saves_of(arguments)]);
        let mut places = folders.map(|folder| folder.join(CLASS_FILE));
        places.find(|place| place.exists())
    };
    match named.or_else(beside) {
        Some(place) => read(&place, words),
        None => Ok(ClassProfile::default()),
    }
}

fn read(place: &Path, words: &Words) -> Result<ClassProfile, Trouble> {
    let text = read_file(words, place).map_err(|line| Trouble::Input(vec![line]))?;
    let name = printable(&place.display().to_string());
    parse_class(&text).map_err(|faults| Trouble::File(name, faults))
}

/// What a journal keeps beside the problem: what the class asks of answers, and the language.
pub(super) fn told(class: &ClassProfile, language: Language) -> BTreeMap<String, String> {
    let usual = Asking::default();
    let asks = class.asking;
    let named = (!class.name.is_empty()).then(|| (CLASS, class.name.clone()));
    let unit = (asks.unit != usual.unit).then(|| (UNIT, asks.unit.word().to_owned()));
    let figures = (asks.figures != usual.figures).then(|| {
        let word = asks.figures.word();
        (FIGURES, word.to_owned())
    });
    let spoken = (language != Language::default()).then(|| (LANGUAGE, language.tag().to_owned()));
    let options = named.into_iter().chain(unit).chain(figures).chain(spoken);
    options.map(|(key, word)| (key.to_owned(), word)).collect()
}

/// What was asked of answers when a problem was begun.
pub(super) fn asked_then(options: &BTreeMap<String, String>) -> Asking {
    Asking {
        unit: meant(UnitAsked::WORDS, options.get(UNIT)),
        figures: meant(FiguresAsked::WORDS, options.get(FIGURES)),
    }
}

/// What the class was called in which a problem was begun; empty without a profile.
pub(super) fn name_then(options: &BTreeMap<String, String>) -> &str {
    options.get(CLASS).map_or("", String::as_str)
}

/// True if a problem that goes under these options was begun in another class, or is asked
/// otherwise than in this one.
pub(super) fn is_other(class: &ClassProfile, options: &BTreeMap<String, String>) -> bool {
    let now = told(class, Language::default());
    [CLASS, UNIT, FIGURES]
        .iter()
        .any(|key| now.get(*key) != options.get(*key))
}

/// The language in which a problem was begun: its lines are read in it.
pub(super) fn language_then(options: &BTreeMap<String, String>) -> Language {
    let tag = options.get(LANGUAGE).map_or("", String::as_str);
    Language::tagged(tag).unwrap_or_default()
}

fn meant<T: Copy + Default>(words: &[(&str, T)], said: Option<&String>) -> T {
    let known = words
        .iter()
        .find(|(word, _)| said.is_some_and(|said| said == word));
    known.map_or_else(T::default, |(_, meaning)| *meaning)
}

/// What the class fixes, a sentence each; nothing without a profile.
pub(super) fn fixed(class: &ClassProfile, words: &Words) -> Vec<Prose> {
    if class.name.is_empty() {
        return Vec::new();
    }
    let mut told = vec![words.say(
        "class.fixed",
        &[("class", Slot::Word(printable(&class.name)))],
    )];
    if let Some(gravity) = class.gravity {
        let others: Vec<String> = class
            .accepted_gravity
            .iter()
            .map(|g| number_text(*g))
            .collect();
        let slots = [
            ("g", Slot::Value(number_text(gravity))),
            ("others", Slot::Value(others.join(", "))),
        ];
        let key = match others.is_empty() {
            true => "class.gravity",
            false => "class.gravity-others",
        };
        told.push(words.say(key, &slots));
    }
    let figures = match class.figures {
        Some(2) => Some("class.figures.two"),
        Some(3) => Some("class.figures.three"),
        Some(_) => Some("class.figures.four"),
        None => None,
    };
    told.extend(figures.map(|key| words.say(key, &[])));
    let rule = match class.asking.figures {
        FiguresAsked::Told => Some("class.few-figures.told"),
        FiguresAsked::Usual | FiguresAsked::Asked => None,
        FiguresAsked::Exact => Some("class.few-figures.exact"),
    };
    let unit = match class.asking.unit {
        UnitAsked::Told => None,
        UnitAsked::Asked => Some("class.unit.asked"),
        UnitAsked::Marked => Some("class.unit.marked"),
    };
    let angles = class.angles_from.map(|from| match from {
        Reference::Horizontal => "class.angles.horizontal",
        Reference::Vertical => "class.angles.vertical",
    });
    let keys = rule.into_iter().chain(unit).chain(angles);
    told.extend(keys.map(|key| words.say(key, &[])));
    // A class of which only the display is set changes no problem.
    match told.len() {
        1 => vec![words.say(
            "class.nothing",
            &[("class", Slot::Word(printable(&class.name)))],
        )],
        _ => told,
    }
}
