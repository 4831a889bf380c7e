//! The statement in full, or folded to the givens.

use super::prose::{clip, hang, wrap_text};
use crate::problem::Given;
use crate::screen::model::{Model, Working};
use ratatui::Frame;
use ratatui::layout::Rect;
use ratatui::text::{Line, Span};
use ratatui::widgets::Paragraph;

/// Columns between two givens.
const GAP: usize = 3;

/// Draws the statement.
pub(super) fn draw(model: &Model, open: &Working, frame: &mut Frame, area: Rect) {
    let roomy = frame.area().height >= 44;
    let rows = rows(model, open, area.width.into(), roomy);
    let first = open.told_from.min(last_top(rows.len(), area.height));
    let rows = rows.into_iter().skip(first).collect();
    let rows = clip(model.theme, rows, area.width.into(), area.height.into());
    frame.render_widget(Paragraph::new(rows), area);
}

/// The last row at which a statement of so many rows can begin in a region of this height.
fn last_top(rows: usize, height: u16) -> usize {
    rows.saturating_sub(height.into())
}

/// Where a page up or down of the statement leads, if not all of it is in sight.
pub(super) fn scrolled(model: &Model, open: &Working, area: Rect, up: bool) -> Option<usize> {
    if area.height == 0 || !open.statement_in_full() {
        return None;
    }
    let last = last_top(
        rows(model, open, area.width.into(), false).len(),
        area.height,
    );
    let page = usize::from(area.height.saturating_sub(1)).max(1);
    let from = open.told_from.min(last);
    let top = if up {
        from.saturating_sub(page)
    } else {
        (from + page).min(last)
    };
    (last > 0).then_some(top)
}

/// The rows of the statement: in full, or the givens; with their meaning where there is room.
pub(super) fn rows(model: &Model, open: &Working, width: usize, roomy: bool) -> Vec<Line<'static>> {
    if open.statement_in_full() {
        wrap_text(model.theme, &open.view.statement, width, Default::default())
    } else if roomy {
        list(model, open, width)
    } else {
        strip(model, open, width)
    }
}

/// The givens side by side.
fn strip(model: &Model, open: &Working, width: usize) -> Vec<Line<'static>> {
    let mut rows: Vec<Line> = Vec::new();
    for given in open.session.problem().givens() {
        let told = given_spans(model, given);
        let wide: usize = told.iter().map(Span::width).sum();
        match rows.last_mut() {
            Some(row) if row.width() + GAP + wide <= width => {
                row.push_span(Span::raw(" ".repeat(GAP)));
                row.spans.extend(told);
            }
            _ => rows.push(Line::from(told)),
        }
    }
    rows
}

/// The givens below each other, with their meaning.
fn list(model: &Model, open: &Working, width: usize) -> Vec<Line<'static>> {
    let givens = open.session.problem().givens();
    let told: Vec<Vec<Span>> = givens
        .iter()
        .map(|given| given_spans(model, given))
        .collect();
    let wide = |spans: &Vec<Span>| spans.iter().map(Span::width).sum::<usize>();
    let column = told.iter().map(wide).max().unwrap_or(0) + GAP;
    let mut rows = Vec::new();
    for (given, mut spans) in givens.iter().zip(told) {
        let gap = column - wide(&spans);
        let room = width.saturating_sub(column).max(8);
        // The names tell an angle with the line from which it is measured.
        let shown = given.symbol.shown();
        let named = open.view.names.iter().find(|name| name.shown == shown);
        let meaning = named.map_or(&given.meaning, |name| &name.meaning);
        let meaning = model.manner.text(meaning);
        let meaning = wrap_text(model.theme, &meaning, room, model.theme.faint());
        let mut below = hang(Span::raw(" ".repeat(column)), meaning);
        if let Some(first) = below.first_mut() {
            first.spans.remove(0);
            spans.push(Span::raw(" ".repeat(gap)));
            spans.append(&mut first.spans);
            first.spans = spans;
        }
        rows.extend(below);
    }
    rows
}

/// A given: its name, how that is typed if it is not plain, and its value as printed.
fn given_spans(model: &Model, given: &Given) -> Vec<Span<'static>> {
    let theme = model.theme;
    let (shown, typed) = (given.symbol.shown(), given.symbol.typed());
    let shown = theme.letters(&shown).into_owned();
    let other = shown != typed;
    let mut spans = vec![Span::styled(shown, theme.strong())];
    if other {
        spans.push(Span::styled(format!(" ({typed})"), theme.faint()));
    }
    let written = model.manner.text(&given.written);
    spans.push(Span::raw(format!(" = {}", theme.letters(&written))));
    spans
}
