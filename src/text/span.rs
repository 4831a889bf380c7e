//! A stretch of a learner's line, and what may be shown of a text from outside.

use unicode_width::UnicodeWidthStr;

/// A stretch of a line, in bytes of the line as typed: `start` inclusive, `end` exclusive.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub struct Span {
    /// First byte.
    pub start: usize,
    /// One past the last byte.
    pub end: usize,
}

impl Span {
    /// The span from `start` to `end`.
    pub const fn new(start: usize, end: usize) -> Span {
        Span { start, end }
    }

    /// The smallest span that holds both.
    pub fn join(self, other: Span) -> Span {
        Span::new(self.start.min(other.start), self.end.max(other.end))
    }

    /// The columns of a terminal that this span covers in `line`: first column and width (at
    /// least 1, so that a caret can stand under it).
    pub fn columns(self, line: &str) -> (usize, usize) {
        let cut = |at: usize| {
            let mut at = at.min(line.len());
            while !line.is_char_boundary(at) {
                at -= 1;
            }
            at
        };
        let (start, end) = (cut(self.start), cut(self.end.max(self.start)));
        (line[..start].width(), line[start..end].width().max(1))
    }
}

/// A text without the characters that show nothing and are typed by nobody: zero-width spaces and
/// joiners, soft hyphens, marks of direction.
pub fn visible(text: &str) -> String {
    let unseen = |c: &char| {
        matches!(c, '\u{ad}' | '\u{200b}'..='\u{200f}' | '\u{202a}'..='\u{202e}'
            | '\u{2060}'..='\u{2069}' | '\u{feff}')
    };
    text.chars().filter(|c| !unseen(c)).collect()
}

/// A text from outside with every control character replaced, so that it can never steer the
/// terminal. Line ends and tabs become spaces, other control characters become `·`, and
/// directional overrides are dropped.
pub fn printable(text: &str) -> String {
    text.chars()
        .filter(|c| !matches!(c, '\u{200e}' | '\u{200f}' | '\u{202a}'..='\u{202e}' | '\u{2066}'..='\u{2069}'))
        .map(|c| match c {
            '\n' | '\r' | '\t' => ' ',
            c if c.is_control() => '·',
            c => c,
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn carets_stand_under_wide_characters_too() {
        let line = "θ·梁 + 3";
        assert_eq!(Span::new(0, 2).columns(line), (0, 1));
        assert_eq!(
            Span::new("θ·梁 ".len(), "θ·梁 +".len()).columns(line),
            (5, 1)
        );
    }

    #[test]
    fn escape_sequences_lose_their_power() {
        assert_eq!(printable("\u{1b}[31mred\tink\u{202e}"), "·[31mred ink");
    }
}
