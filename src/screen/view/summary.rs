//! At the end of a problem: how it went, what to do next, and the whole working.

use super::prose::{hang, indent, wrap};
use crate::screen::model::{Model, Working};
use crate::text::Prose;
use ratatui::style::Style;
use ratatui::text::{Line, Span};
use unicode_width::UnicodeWidthStr;

/// Columns by which the lines of the whole working are moved to the right.
const INSET: usize = 2;

/// The rows of the summary and of the whole working below it. What to do next stands at the end of
/// the summary, or at its head, below the slips, where it would be out of sight in so many rows.
pub(super) fn rows(
    model: &Model,
    working: &Working,
    (width, room): (usize, usize),
) -> Vec<Line<'static>> {
    let theme = model.theme;
    let sentence = |prose: &Prose, mark, style| {
        let told = wrap(theme, prose, width.saturating_sub(2), style);
        hang(mark, told)
    };
    let mut rows = vec![Line::styled(
        model.words.word("screen.summary"),
        theme.strong(),
    )];
    let Some((next, said)) = working.view.summary.split_last() else {
        return rows;
    };
    let mark = || Span::raw(theme.either("· ", "- "));
    let told = |said: &[Prose]| -> Vec<Line> {
        let row = |prose| sentence(prose, mark(), Style::default());
        said.iter().flat_map(row).collect()
    };
    let (counts, slips) = said.split_at(said.len().saturating_sub(working.view.slips));
    let (counts, slips) = (told(counts), told(slips));
    let arrow = Span::styled(theme.either("→ ", "> "), theme.hint());
    let next = sentence(next, arrow, theme.strong());
    // A row below may be needed for the word that there is more.
    let whole = rows.len() + counts.len() + slips.len() + next.len() + 1;
    let parts = match whole > room {
        true => [slips, next, counts],
        false => [counts, slips, next],
    };
    rows.extend(parts.into_iter().flatten());
    rows.extend(key_rows(model, working, width));
    rows
}

/// The rows of the whole working that is chosen, with an empty one above.
pub(super) fn key_rows(model: &Model, working: &Working, width: usize) -> Vec<Line<'static>> {
    let Some(worked) = working.view.keys.get(working.way) else {
        return Vec::new();
    };
    let theme = model.theme;
    let mut rows = vec![Line::default()];
    rows.extend(wrap(theme, &worked.title, width, theme.strong()));
    for line in &worked.lines {
        let inset = if line.heading { 0 } else { INSET };
        let room = width.saturating_sub(inset);
        let told = parted(&line.told, room);
        rows.extend(indent(inset, wrap(theme, &told, room, Style::default())));
    }
    rows
}

/// A balance that is wider than a row, its numbers below its letters.
fn parted(told: &Prose, room: usize) -> Prose {
    let mut told = told.clone();
    if told.to_string().width() <= room {
        return told;
    }
    for piece in &mut told.0 {
        let numbers = piece.text.match_indices(", ").map(|(at, _)| at + 1);
        let numbers =
            numbers.filter(|at| piece.text[at + 1..].starts_with(|c: char| c.is_ascii_digit()));
        if let Some(at) = numbers.last() {
            piece.text.replace_range(at..=at, "\n");
        }
    }
    told
}
