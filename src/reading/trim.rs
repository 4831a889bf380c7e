//! What carries nothing at the ends of a line: `so`, `∴`, a label, a full stop, a question mark;
//! and a direction said after a value.

use super::names::Lexicon;
use super::said::{is_one, said};
use super::signs::{is_blank, word_length};
use super::tree::{NameId, Remark, Way};
use crate::text::Span;
use crate::units::find_unit;

/// Signs at the head of a line that say nothing of it.
const SIGNS: &[&str] = &[
    "∴", "⇒", "→", "⟹", "=>", "->", ">", "==", "=", "≈", "~", "•", ":",
];

/// Signs at the end of a line that say nothing.
const ENDS: &[char] = &['.', ';', ',', '?', '!', '=', ':'];

/// The part of a line that is to be read, with a remark on each thing passed over.
pub(super) fn part(line: &str, lexicon: &Lexicon<'_>) -> (Span, Vec<Remark>) {
    let mut remarks = Vec::new();
    let mut part = shrink(line, Span::new(0, line.len()));
    if let Some((length, way)) = leading_way(&line[part.start..part.end]) {
        let span = Span::new(part.start, part.start + length);
        remarks.push(Remark::Direction { span, way });
        part = shrink(line, Span::new(span.end, part.end));
    }
    while let Some(length) = head(&line[part.start..part.end], lexicon) {
        let end = part.start + length;
        remarks.push(Remark::PassedOver {
            span: shrink(line, Span::new(part.start, end)),
        });
        part = shrink(line, Span::new(end, part.end));
    }
    let mut end = part.start + bare_end(&line[part.start..part.end]);
    if end < part.end {
        let span = Span::new(end, part.end);
        remarks.push(Remark::PassedOver { span });
    }
    // `58.8° above the horizontal, to the left`: each is said of its own part.
    let mut told = false;
    let of = |text: &str, told: bool| {
        let angle = || Some((bearing(text, told)?, None));
        let open = || told.then(|| open_bracket(text)).flatten();
        (direction(text, lexicon).or_else(open)).or_else(angle)
    };
    while let Some((length, way)) = of(&line[part.start..end], told) {
        told = true;
        let span = Span::new(part.start + length, end);
        remarks.push(match way {
            Some(way) => Remark::Direction { span, way },
            None => Remark::PassedOver { span },
        });
        let rest = &line[part.start..part.start + length];
        let rest = &rest[..bare_end(rest)];
        let mut and = said().and.iter();
        let before = and.find_map(|and| rest.strip_suffix(and.as_str())?.strip_suffix(' '));
        let rest = before.unwrap_or(rest);
        end = part.start + bare_end(rest);
    }
    (Span::new(part.start, end), remarks)
}

/// An arrow or a word for a way before a number: `← 349 N`, `left 349 N`.
fn leading_way(text: &str) -> Option<(usize, Way)> {
    let small = text.to_lowercase();
    let before = |(words, way): &(String, Option<Way>)| {
        let rest = small.strip_prefix(words.as_str())?;
        let number = rest.trim_start_matches(|c: char| is_blank(c) || c == ':' || c == ',');
        let apart = is_arrow(words) || number.len() < rest.len();
        let told = apart && number.starts_with(|c: char| c.is_ascii_digit());
        told.then_some((words.len(), (*way)?))
    };
    let apart = small.len() == text.len();
    said().ways.iter().filter(|_| apart).find_map(before)
}

/// Bytes of a text without the signs at its end that say nothing.
fn bare_end(text: &str) -> usize {
    text.trim_end_matches(|c: char| ENDS.contains(&c) || is_blank(c))
        .len()
}

/// A direction after a value: the bytes before it, and the way. What is left must end in a digit,
/// a letter or a bracket, so that a direction alone is no value.
fn direction(text: &str, lexicon: &Lexicon<'_>) -> Option<(usize, Option<Way>)> {
    let small = text.to_lowercase();
    if small.len() != text.len() {
        return None;
    }
    // `849 N (left)`, `58.8° (above the horizontal, to the left)`: a bracket with nothing but
    // directions in it.
    if let Some(open) = small.strip_suffix(')').and_then(|rest| rest.rfind('(')) {
        let inside = &small[open + 1..small.len() - 1];
        if said().other_way.iter().any(|words| words == inside.trim()) {
            return has_minus(&small[..open]).then_some((open, None));
        }
        let all = inside.split(',').all(|words| way(words).is_some());
        let last = inside.rfind(',').map_or(open, |comma| open + 1 + comma);
        let words = inside.rsplit(',').next().filter(|_| all)?;
        return way(words).map(|way| (last, way));
    }
    let ways = said().ways.iter();
    let (words, way) = ways
        .filter(|(words, _)| small.ends_with(words.as_str()))
        .max_by_key(|(words, _)| words.len())?;
    let before = &text[..text.len() - words.len()];
    let mut verbs = said().verbs.iter();
    let verb = verbs.find_map(|verb| before.strip_suffix(' ')?.strip_suffix(verb.as_str()));
    let before = verb.unwrap_or(before);
    let apart = before.ends_with(|c: char| is_blank(c) || c == ',') || is_arrow(words);
    let known = lexicon.find(words).is_some();
    let name = |word: &str| lexicon.find(word).is_some();
    let value = before.chars().any(|c| c.is_ascii_digit() || c == '=')
        || before.split(|c: char| is_blank(c) || c == ',').any(name);
    (apart && !known && value).then_some((before.len(), *way))
}

/// True for an arrow, which needs no blank beside it. `->` does.
fn is_arrow(words: &str) -> bool {
    !words.is_ascii() && !words.starts_with(char::is_alphabetic)
}

/// The way that some words say.
fn way(words: &str) -> Option<Option<Way>> {
    let mut known = said().ways.iter();
    let found = known.find(|(known, _)| known == words.trim());
    found.map(|(_, way)| *way)
}

/// A bracket whose other directions were read already: `58.8° (above the horizontal`.
fn open_bracket(text: &str) -> Option<(usize, Option<Way>)> {
    let open = text.rfind('(')?;
    way(&text[open + 1..].to_lowercase()).map(|way| (open, way))
}

/// True for a value with a minus: `S = −519 N`.
fn has_minus(text: &str) -> bool {
    let value = text.rsplit('=').next().unwrap_or(text);
    value.trim_start_matches(is_blank).starts_with(['-', '−'])
}

/// `385 N along the rope`, `385 N at 25° to the beam`: the bytes before what says along which line a
/// force lies. Only after a value, and only where nothing else follows; a `bare` angle only before
/// what tells its line.
fn bearing(text: &str, bare: bool) -> Option<usize> {
    let small = text.to_lowercase();
    if small.len() != text.len() {
        return None;
    }
    let value = |length: &usize| text[..*length].chars().any(|c| c.is_ascii_digit());
    let lies = said().lies.iter().find_map(|words| {
        let at = small.rfind(&format!(" {words} "))?;
        let rest = small[at + words.len() + 2..].trim();
        let mut articles = said().articles.iter();
        let noun =
            articles.find_map(|article| rest.strip_prefix(article.as_str())?.strip_prefix(' '));
        let noun = noun.unwrap_or(rest);
        let plain = !noun.is_empty() && noun.chars().all(|c| c.is_alphabetic() || c == '-');
        plain.then_some(at)
    });
    let angle = || {
        let mut words = said().at.iter();
        let (at, from) = words.find_map(|at| {
            let found = small.rfind(&format!(" {at} "))?;
            Some((found, found + at.len() + 2))
        })?;
        let rest = small[from..].trim_start();
        let digits = rest.trim_start_matches(|c: char| c.is_ascii_digit() || c == '.');
        let after = digits.trim_start();
        let degrees = || {
            let mut known = said().degrees.iter();
            known.find_map(|unit| after.strip_prefix(unit.as_str()))
        };
        let unit = after.strip_prefix('°').or_else(degrees)?;
        let mut words = unit.split_whitespace();
        let plain = words.next().map_or(bare, |word| is_one(&said().with, word))
            && words.all(|word| word.chars().all(char::is_alphabetic));
        (digits.len() < rest.len() && plain).then_some(at)
    };
    lies.or_else(angle).filter(value)
}

/// `M(hinge)`, `ΣM (knot)`: moments, and about what.
fn is_sum_about(before: &str) -> bool {
    let Some((sum, about)) = before
        .strip_suffix(')')
        .and_then(|text| text.split_once('('))
    else {
        return false;
    };
    let sum = sum.trim();
    let moments =
        matches!(sum, "M" | "ΣM" | "∑M") || said().moments.iter().any(|words| words == sum);
    moments && !about.is_empty() && about.chars().all(|c| c.is_alphanumeric() || c == ' ')
}

/// `↑ H = 313.6 − 238.3`: an arrow before a sum says along which line it is taken.
fn sum_arrow(text: &str) -> Option<usize> {
    let arrow = text.chars().next().filter(|c| matches!(c, '↑' | '→'))?;
    let rest = text[arrow.len_utf8()..].trim_start_matches(is_blank);
    let (_, sum) = rest.split_once('=')?;
    let is_sum = rest.starts_with(char::is_alphabetic) && sum.trim().contains(['+', '−', '-']);
    is_sum.then_some(arrow.len_utf8())
}

/// A span without the blanks at its ends.
fn shrink(line: &str, part: Span) -> Span {
    let text = &line[part.start..part.end];
    let kept = text.trim_start_matches(is_blank);
    let start = part.end - kept.len();
    Span::new(start, start + kept.trim_end_matches(is_blank).len())
}

/// Bytes of something at the head that is passed over.
fn head(text: &str, lexicon: &Lexicon<'_>) -> Option<usize> {
    if let Some(sign) = SIGNS.iter().find(|sign| text.starts_with(**sign)) {
        return Some(sign.len());
    }
    if let Some(arrow) = sum_arrow(text) {
        return Some(arrow);
    }
    label(text, lexicon).or_else(|| filler(text, lexicon))
}

fn filler(text: &str, lexicon: &Lexicon<'_>) -> Option<usize> {
    let length = word_length(text);
    let word = &text[..length];
    let small = word.to_lowercase().replace('’', "'");
    let rest = text[length..].trim_start_matches(is_blank);
    // `so = 3` would name a quantity so, unless nothing but a filler says it.
    let defines = rest.starts_with('=') && !said().results.contains(&small);
    let known = lexicon.find(word).is_some();
    (said().fillers.contains(&small) && !rest.is_empty() && !known && !defines)
        .then(|| length + usize::from(text[length..].starts_with([',', '.'])))
}

/// `Moments about the hinge: …`, `up = down: …`. A label ends in a colon and has letters; a name
/// before a colon (`T: 45`) is no label, nor is a division (`64.2 : 2.4`).
fn label(text: &str, lexicon: &Lexicon<'_>) -> Option<usize> {
    let colon = text.find(':')?;
    let (before, after) = (text[..colon].trim(), &text[colon + 1..]);
    // `ΣFy = 0: Hy = 954` says what the sum is of.
    let sum = before.contains('=') && after.contains('=');
    let arrow = matches!(before, "↑" | "→" | "↓" | "←" | "↶" | "↷");
    let is_label = (arrow || before.chars().any(char::is_alphabetic))
        && (sum
            || is_sum_about(before)
            || !before.ends_with(|c: char| {
                matches!(c, ')' | ']' | '}') || (c.is_ascii_digit() && !before.contains(' '))
            }))
        && !after.starts_with('=')
        && !after.trim_matches(is_blank).is_empty()
        && (lexicon.find(before).is_none() || is_before_equation(before, after, lexicon));
    is_label.then_some(colon + 1)
}

/// `M: T·2.4 = …`, `H: T cos 70 = Hx`: a name before a whole equation is a label of it. Before what
/// it comes to (`H: 450 N`, `H: √(Hx² + Hy²) = 450 N`) it is that name.
fn is_before_equation(before: &str, after: &str, lexicon: &Lexicon<'_>) -> bool {
    let sides: Vec<&str> = after.split('=').collect();
    let ([first, .., last], false) = (sides.as_slice(), after.contains(':')) else {
        return false;
    };
    let of_label = lexicon.exact(before);
    let itself = |text: &str| names_in(text, lexicon).any(|id| Some(id) == of_label);
    let named = |text: &str| names_in(text, lexicon).next().is_some();
    let another = lexicon.find(first.trim()).is_some();
    match of_label {
        // `M` where the problem has a mass m.
        None => named(after),
        Some(_) => another || itself(after) || named(last),
    }
}

/// The names in a text; a unit behind a number is none.
fn names_in<'t>(text: &'t str, lexicon: &'t Lexicon<'_>) -> impl Iterator<Item = NameId> + 't {
    let letter = |c: char| c.is_alphanumeric() || c == '_';
    let words = text.split(move |c: char| !letter(c));
    words.filter_map(move |word| {
        let at = word.as_ptr() as usize - text.as_ptr() as usize;
        let name = word.trim_start_matches(|c: char| c.is_ascii_digit());
        let before = text[..at].trim_end();
        let number = name.len() < word.len() || before.ends_with(|c: char| c.is_ascii_digit());
        let unit = number && find_unit(name).is_some();
        lexicon.find(name).filter(|_| !name.is_empty() && !unit)
    })
}
