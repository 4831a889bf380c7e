//! What carries nothing at the ends of a line: `so`, `∴`, a label, a full stop, a question mark.

use super::names::Lexicon;
use super::signs::{is_blank, word_length};
use super::tree::Remark;
use crate::text::Span;

/// Words at the head of a line that say nothing of it.
const FILLERS: &[&str] = &[
    "so",
    "therefore",
    "then",
    "thus",
    "hence",
    "and",
    "now",
    "also",
    "next",
    "because",
    "since",
    "as",
    "it",
    "its",
    "it's",
    "the",
    "answer",
    "ans",
    "about",
    "approximately",
    "approx",
    "roughly",
    "is",
    "that",
    "i",
    "think",
    "get",
    "got",
    "we",
    "have",
    "gives",
    "equals",
];

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
    while let Some(length) = head(&line[part.start..part.end], lexicon) {
        let end = part.start + length;
        remarks.push(Remark::PassedOver {
            span: shrink(line, Span::new(part.start, end)),
        });
        part = shrink(line, Span::new(end, part.end));
    }
    let text = &line[part.start..part.end];
    let kept = text.trim_end_matches(|c: char| ENDS.contains(&c) || is_blank(c));
    let end = part.start + kept.len();
    if end < part.end {
        let span = Span::new(end, part.end);
        remarks.push(Remark::PassedOver { span });
    }
    (Span::new(part.start, end), remarks)
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
    label(text, lexicon).or_else(|| filler(text, lexicon))
}

fn filler(text: &str, lexicon: &Lexicon<'_>) -> Option<usize> {
    let length = word_length(text);
    let word = &text[..length];
    let small = word.to_lowercase().replace('’', "'");
    let rest = text[length..].trim_start_matches(is_blank);
    // `so = 3` would name a quantity so, unless nothing but a filler says it.
    let defines = rest.starts_with('=') && !matches!(small.as_str(), "answer" | "ans" | "it");
    let known = lexicon.find(word).is_some();
    (FILLERS.contains(&small.as_str()) && !rest.is_empty() && !known && !defines)
        .then(|| length + usize::from(text[length..].starts_with(',')))
}

/// `Moments about the hinge: …`, `up = down: …`. A label ends in a colon and has letters; a name
/// before a colon (`T: 45`) is no label, nor is a division (`64.2 : 2.4`).
fn label(text: &str, lexicon: &Lexicon<'_>) -> Option<usize> {
    let colon = text.find(':')?;
    let (before, after) = (text[..colon].trim(), &text[colon + 1..]);
    let is_label = before.chars().any(char::is_alphabetic)
        && !before.ends_with(|c: char| {
            matches!(c, ')' | ']' | '}') || (c.is_ascii_digit() && !before.contains(' '))
        })
        && !after.starts_with('=')
        && !after.trim_matches(is_blank).is_empty()
        && lexicon.find(before).is_none();
    is_label.then_some(colon + 1)
}
