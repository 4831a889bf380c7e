//! At the end of a problem: how it went, what to do next, and the whole working.

use super::prose::{hang, indent, wrap};
use crate::screen::model::{Model, Working};
use crate::text::Prose;
use ratatui::style::Style;
use ratatui::text::{Line, Span};

/// Columns by which the lines of the whole working are moved to the right.
const INSET: usize = 2;

/// The rows of the summary and of the whole working below it. What to do next stands at the end of
/// the summary, or at its head where it would be out of sight in so many rows.
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
    let said: Vec<Line> = said
        .iter()
        .flat_map(|prose| sentence(prose, mark(), Style::default()))
        .collect();
    let arrow = Span::styled(theme.either("→ ", "> "), theme.hint());
    let next = sentence(next, arrow, theme.strong());
    // A row below may be needed for the word that there is more.
    let whole = rows.len() + said.len() + next.len() + 1;
    match whole > room {
        true => rows.extend(next.into_iter().chain(said)),
        false => rows.extend(said.into_iter().chain(next)),
    }
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
        let told = wrap(
            theme,
            &line.told,
            width.saturating_sub(inset),
            Style::default(),
        );
        rows.extend(indent(inset, told));
    }
    rows
}
