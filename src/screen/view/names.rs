//! The names at hand.

use super::prose::cut;
use crate::screen::model::{Model, Working};
use crate::session::NameView;
use ratatui::Frame;
use ratatui::layout::Rect;
use ratatui::text::{Line, Span};
use ratatui::widgets::Paragraph;

/// Columns between two names.
const GAP: usize = 3;

/// Draws the names.
pub(super) fn draw(model: &Model, open: &Working, frame: &mut Frame, area: Rect) {
    let mut rows = rows(model, open, area.width.into());
    let height = usize::from(area.height);
    if rows.len() > height {
        rows.truncate(height);
        if let Some(last) = rows.last_mut() {
            let more = model.words.word("screen.names.more");
            let room = usize::from(area.width).saturating_sub(more.chars().count() + GAP);
            while last.width() > room && last.spans.len() > 1 {
                last.spans.pop();
            }
            last.push_span(Span::raw(" ".repeat(GAP)));
            last.push_span(Span::styled(more, model.theme.faint()));
        }
    }
    frame.render_widget(Paragraph::new(rows), area);
}

/// All names in rows of `width` columns.
pub(super) fn rows(model: &Model, open: &Working, width: usize) -> Vec<Line<'static>> {
    let theme = model.theme;
    if open.view.names.is_empty() {
        return Vec::new();
    }
    let heading = model.words.word("screen.names");
    let blank = " ".repeat(heading.chars().count());
    let mut rows = vec![Line::styled(heading, theme.faint())];
    for name in &open.view.names {
        let told = spans(model, name, width);
        let wide: usize = told.iter().map(Span::width).sum();
        let fits = rows
            .last()
            .is_some_and(|row| row.width() + GAP + wide <= width);
        if !fits {
            rows.push(Line::raw(blank.clone()));
        }
        if let Some(row) = rows.last_mut() {
            row.push_span(Span::raw(" ".repeat(GAP)));
            row.spans.extend(told);
        }
    }
    rows
}

/// A name, how it is typed if that is not plain, and its value.
pub(super) fn spans(model: &Model, name: &NameView, width: usize) -> Vec<Span<'static>> {
    let theme = model.theme;
    let shown = theme.letters(&name.shown).into_owned();
    let mut spans = Vec::new();
    let other = shown != name.typed;
    spans.push(Span::styled(shown, theme.strong()));
    if other {
        spans.push(Span::styled(format!(" ({})", name.typed), theme.faint()));
    }
    if let Some(value) = &name.value {
        let value = cut(theme, &theme.letters(value), width / 3);
        spans.push(Span::raw(format!(" = {value}")));
    }
    spans
}
