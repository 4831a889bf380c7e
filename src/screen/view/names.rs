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

/// Draws the names, as many as there is room for.
pub(super) fn draw(model: &Model, open: &Working, frame: &mut Frame, area: Rect) {
    let mut rows = rows(model, open, area.width.into());
    let height = usize::from(area.height);
    if rows.len() > height {
        rows.truncate(height);
        if let Some(last) = rows.last_mut() {
            let more = Span::styled(model.words.word("screen.names.more"), model.theme.faint());
            last.leave_room(usize::from(area.width).saturating_sub(GAP + more.width()));
            last.told.push(vec![more]);
        }
    }
    let rows: Vec<Line> = rows.into_iter().map(Row::line).collect();
    frame.render_widget(Paragraph::new(rows), area);
}

/// How many rows all names take.
pub(super) fn height(model: &Model, open: &Working, width: usize) -> usize {
    rows(model, open, width).len()
}

/// A row of names.
struct Row {
    told: Vec<Vec<Span<'static>>>,
}

impl Row {
    fn width(&self) -> usize {
        let names: usize = self.told.iter().flatten().map(Span::width).sum();
        names + GAP * self.told.len().saturating_sub(1)
    }

    /// Drops names from the end until the row is no wider than `width`.
    fn leave_room(&mut self, width: usize) {
        while self.width() > width && self.told.len() > 1 {
            self.told.pop();
        }
    }

    fn line(self) -> Line<'static> {
        let mut line = Line::default();
        for (place, told) in self.told.into_iter().enumerate() {
            if place > 0 {
                line.push_span(Span::raw(" ".repeat(GAP)));
            }
            line.spans.extend(told);
        }
        line
    }
}

/// All names in rows of `width` columns: first what is found or wanted, the latest before the
/// others since the question is nearest to it, then what is given, which stands in the statement
/// too.
fn rows(model: &Model, open: &Working, width: usize) -> Vec<Row> {
    if open.view.names.is_empty() {
        return Vec::new();
    }
    let givens = open.session.problem().givens();
    let given = |name: &&NameView| {
        givens
            .iter()
            .any(|given| given.symbol.shown() == name.shown)
    };
    let names = open.view.names.iter();
    let mut ordered: Vec<&NameView> = names.clone().filter(|name| !given(name)).collect();
    // No question is nearer to one than to another in a free working.
    if !open.view.freely {
        ordered.reverse();
    }
    ordered.extend(names.filter(given));
    let heading = Span::styled(model.words.word("screen.names"), model.theme.faint());
    let blank = Span::raw(" ".repeat(heading.width()));
    let mut rows = vec![Row {
        told: vec![vec![heading]],
    }];
    for name in ordered {
        let told = spans(model, name, width);
        let wide: usize = told.iter().map(Span::width).sum();
        match rows.last_mut() {
            Some(row) if row.width() + GAP + wide <= width => row.told.push(told),
            _ => rows.push(Row {
                told: vec![vec![blank.clone()], told],
            }),
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
