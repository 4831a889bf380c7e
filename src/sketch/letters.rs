//! Labels as a terminal can show them.

use crate::text::{Symbol, lowered};
use unicode_width::{UnicodeWidthChar, UnicodeWidthStr};

/// Columns that a text takes.
pub(super) fn width(text: &str) -> usize {
    text.width()
}

/// True if every character takes one cell.
pub(super) fn is_plain(text: &str) -> bool {
    text.chars().all(|c| c.width() == Some(1))
}

/// A label as a picture of this style shows it.
pub(super) fn shown(text: &str, unicode: bool) -> String {
    if unicode {
        text.to_owned()
    } else {
        spelled(text)
    }
}

/// A label in plain ASCII: Greek letters and ⊥ spelled out, ° as "deg", other signs by their
/// nearest key.
///
/// ```
/// use leverwright::sketch::spelled;
/// assert_eq!(spelled("θ = 35°"), "theta = 35 deg");
/// assert_eq!(spelled("W1⊥"), "W1perp");
/// assert_eq!(spelled("sin(…)"), "sin(...)");
/// assert_eq!(spelled("tan⁻¹(x²)"), "tan^-1(x^2)");
/// ```
pub fn spelled(text: &str) -> String {
    let mut out = String::new();
    for c in lowered(text).chars() {
        match c {
            '°' => out.push_str(if out.ends_with(' ') { "deg" } else { " deg" }),
            '·' | '×' => out.push('*'),
            '−' | '–' => out.push('-'),
            '≈' => out.push('~'),
            '…' => out.push_str("..."),
            '‘' | '’' => out.push('\''),
            '“' | '”' => out.push('"'),
            '√' => out.push_str("sqrt"),
            '_' => out.push('_'),
            c if c.is_ascii() => out.push(c),
            c => {
                let typed = Symbol::new(c.to_string()).typed();
                if typed.is_ascii() {
                    out.push_str(&typed);
                } else {
                    out.push('?');
                }
            }
        }
    }
    out
}
