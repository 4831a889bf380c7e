//! Sentences in rows of a given width.

use crate::screen::theme::Theme;
use crate::text::{HARD_SPACE, Prose, SOFT_SPACE, Tag, bound};
use ratatui::style::Style;
use ratatui::text::{Line, Span};
use unicode_width::{UnicodeWidthChar, UnicodeWidthStr};

/// A value or a name up to this wide is not broken at its spaces: "78.4 N" stays together.
const KEPT_WHOLE: usize = 16;

/// Behind these a typed line without blanks is broken, rather than within a number.
pub(super) const OPERATORS: [char; 12] =
    ['+', '-', '−', '*', '·', '×', '/', '÷', '^', '=', '(', ','];

/// A sentence in rows of `width` columns, broken at spaces where that can be.
pub(super) fn wrap(theme: Theme, prose: &Prose, width: usize, base: Style) -> Vec<Line<'static>> {
    let mut rows = Rows::new(width);
    let pieces: Vec<_> = prose
        .0
        .iter()
        .map(|piece| (piece.tag, theme.letters(&piece.text)))
        .collect();
    // A number and its unit may be two pieces.
    let whole: String = pieces.iter().map(|(_, text)| text.as_ref()).collect();
    let joined = bound(&whole);
    let mut letters = joined.chars();
    for (tag, text) in pieces {
        let style = base.patch(theme.tag(tag));
        let whole = tag != Tag::Plain && text.width() <= KEPT_WHOLE.min(width);
        for c in letters.by_ref().take(text.chars().count()) {
            match c {
                '\n' => rows.end_row(),
                ' ' if whole => rows.put(HARD_SPACE, style),
                ' ' => rows.space(style),
                c => rows.put(c, style),
            }
        }
    }
    rows.finish()
}

/// Bare words in rows.
pub(super) fn wrap_text(
    theme: Theme,
    text: &str,
    width: usize,
    style: Style,
) -> Vec<Line<'static>> {
    wrap(theme, &Prose::plain(text), width, style)
}

/// Rows being filled.
struct Rows {
    width: usize,
    rows: Vec<Line<'static>>,
    row: Vec<(char, Style)>,
    word: Vec<(char, Style)>,
    space: Option<Style>,
}

impl Rows {
    fn new(width: usize) -> Rows {
        Rows {
            width: width.max(1),
            rows: Vec::new(),
            row: Vec::new(),
            word: Vec::new(),
            space: None,
        }
    }

    fn put(&mut self, c: char, style: Style) {
        self.word.push((c, style));
    }

    fn space(&mut self, style: Style) {
        self.end_word();
        if !self.row.is_empty() {
            self.space = Some(style);
        }
    }

    /// Places the word, in parts where it is wider than a row and may be broken.
    fn end_word(&mut self) {
        let word = std::mem::take(&mut self.word);
        let wide = columns(&word) > self.width;
        for part in word.split(|(c, _)| wide && *c == SOFT_SPACE) {
            let shown = part.iter().map(|(c, style)| match *c {
                HARD_SPACE | SOFT_SPACE => (' ', *style),
                c => (c, *style),
            });
            self.place(shown.collect());
            if let Some((_, style)) = part.last().filter(|_| wide) {
                self.space = Some(*style);
            }
        }
        if wide {
            self.space = None;
        }
    }

    fn place(&mut self, word: Vec<(char, Style)>) {
        if word.is_empty() {
            return;
        }
        let gap = usize::from(self.space.is_some());
        if columns(&self.row) + gap + columns(&word) > self.width && !self.row.is_empty() {
            self.break_row();
        }
        if let Some(style) = self.space.take() {
            self.row.push((' ', style));
        }
        let wide = columns(&word) > self.width;
        for part in word.split_inclusive(|(c, _)| wide && OPERATORS.contains(c)) {
            let full = columns(&self.row) + columns(part) > self.width;
            if full && columns(part) <= self.width && !self.row.is_empty() {
                self.break_row();
            }
            self.spell(part);
        }
    }

    /// Letter by letter: a word without an operator in it may be wider than a row.
    fn spell(&mut self, word: &[(char, Style)]) {
        for (c, style) in word {
            if columns(&self.row) + c.width().unwrap_or(0) > self.width && !self.row.is_empty() {
                self.break_row();
            }
            self.row.push((*c, *style));
        }
    }

    fn break_row(&mut self) {
        self.space = None;
        let row = std::mem::take(&mut self.row);
        self.rows.push(spans(row));
    }

    fn end_row(&mut self) {
        self.end_word();
        self.break_row();
    }

    fn finish(mut self) -> Vec<Line<'static>> {
        self.end_word();
        if !self.row.is_empty() {
            self.break_row();
        }
        self.rows
    }
}

fn columns(row: &[(char, Style)]) -> usize {
    row.iter().map(|(c, _)| c.width().unwrap_or(0)).sum()
}

/// Characters of one style together.
fn spans(row: Vec<(char, Style)>) -> Line<'static> {
    let mut spans: Vec<Span<'static>> = Vec::new();
    for (c, style) in row {
        match spans.last_mut() {
            Some(last) if last.style == style => last.content.to_mut().push(c),
            _ => spans.push(Span::styled(c.to_string(), style)),
        }
    }
    Line::from(spans)
}

/// The first row begins with `first`, all others with blanks as wide.
pub(super) fn hang(first: Span<'static>, rows: Vec<Line<'static>>) -> Vec<Line<'static>> {
    let blank = " ".repeat(first.width());
    let mut first = Some(first);
    rows.into_iter()
        .map(|mut row| {
            let before = first.take().unwrap_or_else(|| Span::raw(blank.clone()));
            row.spans.insert(0, before);
            row
        })
        .collect()
}

/// Rows moved to the right.
pub(super) fn indent(columns: usize, rows: Vec<Line<'static>>) -> Vec<Line<'static>> {
    hang(Span::raw(" ".repeat(columns)), rows)
}

/// A text cut to `width` columns, with a sign where it goes on.
pub(super) fn cut(theme: Theme, text: &str, width: usize) -> String {
    if text.width() <= width {
        return text.to_owned();
    }
    let more = theme.either("…", "...");
    let room = width.saturating_sub(more.width());
    let mut out = String::new();
    for c in text.chars() {
        if out.width() + c.width().unwrap_or(0) > room {
            break;
        }
        out.push(c);
    }
    out.push_str(more);
    if out.width() > width {
        out = ".".repeat(width);
    }
    out
}

/// Rows cut to a height, with a sign where they go on.
pub(super) fn clip(
    theme: Theme,
    rows: Vec<Line<'static>>,
    width: usize,
    height: usize,
) -> Vec<Line<'static>> {
    let more = Span::styled(theme.either(" …", " ..."), theme.faint());
    clip_with(rows, width, height, more)
}

/// Rows cut to a height, with this at the end of the last one where they go on.
pub(super) fn clip_with(
    mut rows: Vec<Line<'static>>,
    width: usize,
    height: usize,
    more: Span<'static>,
) -> Vec<Line<'static>> {
    if rows.len() > height {
        rows.truncate(height);
        if let Some(last) = rows.last_mut() {
            shorten(last, width.saturating_sub(more.width()));
            last.push_span(more);
        }
    }
    rows
}

/// Takes characters off the end of a row until it is no wider than `width`.
fn shorten(row: &mut Line<'static>, width: usize) {
    while row.width() > width {
        match row.spans.last_mut() {
            Some(last) if !last.content.is_empty() => {
                last.content.to_mut().pop();
            }
            Some(_) => {
                row.spans.pop();
            }
            None => return,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::screen::theme::Depth;
    use crate::text::Piece;
    use proptest::prelude::*;

    const THEME: Theme = Theme {
        depth: Depth::None,
        unicode: true,
    };

    fn told(rows: &[Line<'_>]) -> Vec<String> {
        rows.iter().map(ToString::to_string).collect()
    }

    #[test]
    fn a_value_stays_with_its_unit() {
        let prose = Prose(vec![
            Piece {
                tag: Tag::Plain,
                text: "The weight is ".into(),
            },
            Piece {
                tag: Tag::Value,
                text: "78.4 N".into(),
            },
            Piece {
                tag: Tag::Plain,
                text: ".".into(),
            },
        ]);
        let rows = wrap(THEME, &prose, 19, Style::new());
        assert_eq!(told(&rows), ["The weight is", "78.4 N."]);
    }

    #[test]
    fn an_equation_in_a_sentence_is_not_broken() {
        let rows = wrap_text(
            THEME,
            "its length is L = 5.4 m, its mass m",
            18,
            Style::new(),
        );
        assert_eq!(told(&rows), ["its length is", "L = 5.4 m, its", "mass m"]);
    }

    #[test]
    fn a_long_chain_is_broken_before_an_equals_sign_and_never_before_a_unit() {
        let chain = "W1 = m1·g = 8 kg·9.8 m/s² = 78.4 N";
        for width in 16..40 {
            let rows = told(&wrap_text(THEME, chain, width, Style::new()));
            assert_eq!(rows.join(" "), chain, "{width}");
            for row in rows.iter().skip(1) {
                assert!(row.starts_with("= "), "{width}: {row}");
            }
        }
    }

    #[test]
    fn a_typed_line_is_broken_behind_an_operator_and_not_within_a_number() {
        let typed = "T=(558.6*2.8*sin20+392*5.6*sin20)/(3.4*cos20)";
        for width in 8..40 {
            let rows = told(&wrap_text(THEME, typed, width, Style::new()));
            assert_eq!(rows.concat(), typed, "{width}");
            for row in &rows[..rows.len() - 1] {
                assert!(row.ends_with(OPERATORS), "{width}: {row}");
            }
        }
    }

    #[test]
    fn a_unit_in_a_piece_of_its_own_stays_with_its_number() {
        let piece = |tag, text: &str| Piece {
            tag,
            text: text.into(),
        };
        let prose = Prose(vec![
            piece(Tag::Plain, "That takes g = "),
            piece(Tag::Value, "10"),
            piece(Tag::Plain, " m/s² here."),
        ]);
        let rows = wrap(THEME, &prose, 18, Style::new());
        assert_eq!(told(&rows), ["That takes", "g = 10 m/s² here."]);
    }

    proptest! {
        #[test]
        fn no_row_is_too_wide_and_no_word_is_lost(text in "[a-z θ梁]{0,60}", width in 2usize..30) {
            let rows = wrap_text(THEME, &text, width, Style::new());
            for row in &rows {
                prop_assert!(row.width() <= width);
            }
            let letters = |text: &str| text.chars().filter(|c| *c != ' ').collect::<String>();
            prop_assert_eq!(letters(&told(&rows).concat()), letters(&text));
        }

        #[test]
        fn a_cut_text_fits(text in "[a-zθ梁]{0,20}", width in 0usize..20) {
            prop_assert!(cut(THEME, &text, width).width() <= width);
        }
    }
}
