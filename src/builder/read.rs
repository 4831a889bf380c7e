//! Reading an answer: a number with its unit, a choice, a noun.

use crate::text::{Prose, Slot, Words, printable};
use crate::units::{Dimension, find_unit, unit_for};

/// The most figures of a number.
const MOST_FIGURES: usize = 8;

/// The longest noun.
const LONGEST_NOUN: usize = 24;

/// A number with its unit.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Measure {
    /// In SI units, angles in radians.
    pub(super) value: f64,
    /// As printed.
    pub(super) written: String,
    pub(super) dimension: Dimension,
}

/// What a number must be.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Wanted {
    pub(super) dimension: Dimension,
    /// In SI units, both ends left out.
    pub(super) between: (f64, f64),
}

/// A number with a unit, or a bare one in the usual unit; a comma is a point.
pub(super) fn measure(typed: &str, wanted: Wanted, words: &Words) -> Result<Measure, Prose> {
    let usual = unit_for(wanted.dimension).map_or("", |unit| unit.symbol);
    let fault = |key: &str| {
        let slots = [
            ("typed", Slot::Value(printable(typed.trim()))),
            ("unit", Slot::Value(usual.to_owned())),
        ];
        words.say(key, &slots)
    };
    let text = typed.trim().replace(',', ".");
    // A number below nought is a number, though none that a problem can have.
    let below = text.strip_prefix(['-', '−', '–']);
    let is_below = below.is_some();
    let text = below.map_or(text.as_str(), str::trim_start);
    let end = text
        .find(|c: char| !(c.is_ascii_digit() || c == '.'))
        .unwrap_or(text.len());
    let (digits, unit) = text.split_at(end);
    let value: f64 = digits.parse().map_err(|_| fault("build.fault.number"))?;
    let value = if is_below { -value } else { value };
    if digits.trim_start_matches('0').len() > MOST_FIGURES + 1 {
        return Err(fault("build.fault.figures"));
    }
    let unit = match unit.trim() {
        "" => unit_for(wanted.dimension),
        spelled => find_unit(spelled),
    };
    let unit = unit
        .filter(|unit| unit.dimension == wanted.dimension)
        .ok_or_else(|| fault("build.fault.unit"))?;
    let digits = plain(digits);
    let value = value * unit.factor;
    let (least, most) = wanted.between;
    if !(value > least && value < most) {
        let told = |end: f64| crate::units::number_text(rounded(end / unit.factor));
        let slots = [
            ("least", Slot::Value(told(least))),
            ("most", Slot::Value(told(most))),
            ("unit", Slot::Value(unit.symbol.to_owned())),
        ];
        return Err(words.say("build.fault.range", &slots));
    }
    let gap = if unit.symbol == "°" { "" } else { " " };
    Ok(Measure {
        value,
        written: format!("{digits}{gap}{}", unit.symbol),
        dimension: wanted.dimension,
    })
}

/// Without the last places of a double.
fn rounded(value: f64) -> f64 {
    (value * 1e9).round() / 1e9
}

/// Digits as a file may hold them: `.5` and `2.` have a digit on both sides of their point.
fn plain(digits: &str) -> String {
    let text = match digits.contains('.') {
        true => digits.trim_end_matches('.'),
        false => digits,
    };
    let mut text = text.trim_start_matches('0').to_owned();
    if text.is_empty() || text.starts_with('.') {
        text.insert(0, '0');
    }
    text
}

/// Which of so many choices: by its number, or by words that only one of them begins with.
pub(super) fn choice(typed: &str, choices: &[Prose], words: &Words) -> Result<usize, Prose> {
    let text = typed.trim().to_lowercase();
    if let Ok(number) = text.parse::<usize>() {
        let place = number.checked_sub(1).filter(|place| *place < choices.len());
        return place.ok_or_else(|| words.say("build.fault.choice", &[]));
    }
    let text = without_article(&text, words).to_owned();
    let begins = |choice: &Prose| {
        let choice = choice.to_string().to_lowercase();
        without_article(&choice, words).starts_with(&text)
    };
    let mut fitting = choices
        .iter()
        .enumerate()
        .filter(|(_, choice)| !text.is_empty() && begins(choice));
    match (fitting.next(), fitting.next()) {
        (Some((place, _)), None) => Ok(place),
        _ => Err(words.say("build.fault.choice", &[])),
    }
}

/// A noun: a few letters, no article before it.
pub(super) fn noun(typed: &str, words: &Words) -> Result<String, Prose> {
    let text = without_article(typed.trim(), words);
    let fits = |c: char| c.is_alphabetic() || matches!(c, ' ' | '-' | '\'');
    let named = text.starts_with(char::is_alphabetic)
        && text.chars().all(fits)
        && text.chars().count() <= LONGEST_NOUN;
    match named {
        true => Ok(text.to_owned()),
        false => Err(words.say("build.fault.noun", &[])),
    }
}

/// A text without an article before it.
fn without_article<'t>(text: &'t str, words: &Words) -> &'t str {
    let articles = words.word("build.articles");
    let rest = articles.split(", ").find_map(|article| {
        let (start, rest) = text.split_at_checked(article.len())?;
        let is_it = start.eq_ignore_ascii_case(article) && rest.starts_with(char::is_whitespace);
        is_it.then(|| rest.trim())
    });
    rest.unwrap_or(text)
}
