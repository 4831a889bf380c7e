//! Which characters mean what.

/// A character that stands for nothing: white space of every kind, control characters, marks of
/// writing direction, and characters without width.
pub(super) fn is_blank(c: char) -> bool {
    c.is_whitespace()
        || c.is_control()
        || matches!(c, '\u{200b}'..='\u{200f}' | '\u{202a}'..='\u{202e}' | '\u{2060}'..='\u{2069}' | '\u{feff}' | '\u{fe0f}')
}

/// A space that typesetters put inside a number.
pub(super) fn is_number_space(c: char) -> bool {
    matches!(c, '\u{a0}' | '\u{2009}' | '\u{202f}')
}

pub(super) fn is_times(c: char) -> bool {
    matches!(c, '*' | '×' | '·' | '⋅' | '∙' | '•' | '∗' | '✕' | '✖')
}

pub(super) fn is_divide(c: char) -> bool {
    matches!(c, '/' | '÷' | '∕' | '⁄')
}

pub(super) fn is_minus(c: char) -> bool {
    matches!(c, '-' | '−' | '–' | '—' | '‐' | '‑' | '‒' | '﹣' | '－')
}

pub(super) fn is_open(c: char) -> bool {
    matches!(c, '(' | '[' | '{')
}

/// The closing bracket of an opening one.
pub(super) fn partner(open: char) -> char {
    match open {
        '(' => ')',
        '[' => ']',
        '{' => '}',
        ')' => '(',
        ']' => '[',
        '}' => '{',
        other => other,
    }
}

/// A letter or mark that a name may begin with.
pub(super) fn starts_word(c: char) -> bool {
    (c.is_alphabetic() && c != 'º') || matches!(c, '_' | '⊥' | '∥')
}

/// A letter, digit or mark that a name may go on with.
pub(super) fn continues_word(c: char) -> bool {
    // A bar over a letter is a mark of its own behind it.
    starts_word(c) || c.is_ascii_digit() || matches!(c, '₀'..='₉' | '\'' | '′' | '’' | '\u{304}')
}

/// The digit or minus of a raised character.
pub(super) fn lowered(c: char) -> Option<char> {
    Some(match c {
        '⁰' => '0',
        '¹' => '1',
        '²' => '2',
        '³' => '3',
        '⁴'..='⁹' => char::from(b'4' + (c as u32 - '⁴' as u32) as u8),
        '⁻' => '-',
        _ => return None,
    })
}

/// The value of a fraction in one character.
pub(super) fn fraction(c: char) -> Option<f64> {
    Some(match c {
        '½' => 0.5,
        '¼' => 0.25,
        '¾' => 0.75,
        '⅓' => 1.0 / 3.0,
        '⅔' => 2.0 / 3.0,
        '⅕' => 0.2,
        '⅙' => 1.0 / 6.0,
        '⅛' => 0.125,
        _ => return None,
    })
}

/// Bytes of the blanks at the start of a text.
pub(super) fn blanks(text: &str) -> usize {
    text.len() - text.trim_start_matches(is_blank).len()
}

/// Bytes of the word at the start of a text: letters, digits and marks, and `{…}` after `_`.
pub(super) fn word_length(text: &str) -> usize {
    let mut underscore = false;
    let mut braces = false;
    for (at, c) in text.char_indices() {
        let opens = underscore && c == '{' && text[at..].contains('}');
        if !(continues_word(c) || opens || (braces && c == '}')) || (at == 0 && !starts_word(c)) {
            return at;
        }
        braces = opens || (braces && c != '}');
        underscore = c == '_';
    }
    text.len()
}
