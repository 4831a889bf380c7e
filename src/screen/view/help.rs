//! The help page: how to type, what the signs mean, the names at hand, and the key table.

use super::diagram::meaning;
use super::prose::{hang, indent, wrap, wrap_text};
use super::strip;
use super::{header, names};
use crate::screen::keys::TABLE;
use crate::screen::model::{Model, Page};
use crate::session::Sign;
use crate::sketch::PointMark;
use ratatui::Frame;
use ratatui::layout::Rect;
use ratatui::style::Style;
use ratatui::text::{Line, Span};
use ratatui::widgets::Paragraph;

/// The widest the page gets.
const WIDEST: u16 = 84;
/// The column at which what a key does is told.
const COLUMN: usize = 20;
/// The signs, in the order in which they are told.
const SIGNS: [(Sign, &str); 7] = [
    (Sign::Right, "screen.help.sign.right"),
    (Sign::Rounded, "screen.help.sign.rounded"),
    (Sign::Follows, "screen.help.sign.follows"),
    (Sign::Noted, "screen.help.sign.noted"),
    (Sign::Incomplete, "screen.help.sign.incomplete"),
    (Sign::Wrong, "screen.help.sign.wrong"),
    (Sign::Unclear, "screen.help.sign.unclear"),
];
/// How to type.
const TYPING: [&str; 6] = [
    "screen.help.typing.name",
    "screen.help.typing.product",
    "screen.help.typing.units",
    "screen.help.typing.angles",
    "screen.help.typing.letters",
    "screen.help.typing.commands",
];

/// Draws the page from a row on.
pub(super) fn draw(model: &Model, row: usize, frame: &mut Frame, area: Rect) {
    let inner = inner(area);
    let page = Rect {
        y: inner.y + 1,
        height: inner.height.saturating_sub(3),
        ..inner
    };
    let rows = rows(model, page.width.into());
    let height = usize::from(page.height);
    let row = row.min(rows.len().saturating_sub(height));
    let rows: Vec<Line> = rows.into_iter().skip(row).take(height).collect();
    frame.render_widget(Paragraph::new(rows), page);
    let last = Rect {
        y: inner.y + inner.height - 1,
        height: 1,
        ..inner
    };
    strip::draw(model, frame, last);
}

/// The furthest the page can be scrolled.
pub(in crate::screen) fn limit(model: &Model) -> usize {
    let area = inner(Rect::new(0, 0, model.size.0, model.size.1));
    let height = usize::from(area.height.saturating_sub(3));
    rows(model, area.width.into()).len().saturating_sub(height)
}

fn inner(area: Rect) -> Rect {
    let width = area.width.saturating_sub(4).min(WIDEST);
    Rect {
        x: area.x + (area.width - width) / 2,
        width,
        ..area
    }
}

fn rows(model: &Model, width: usize) -> Vec<Line<'static>> {
    let mut rows = Vec::new();
    heading(model, "screen.help.typing", &mut rows);
    for word in TYPING {
        let told = wrap(
            model.theme,
            &model.words.say(word, &[]),
            width.saturating_sub(2),
            Style::new(),
        );
        rows.extend(hang(Span::raw(model.theme.either("· ", "- ")), told));
    }
    heading(model, "screen.help.signs", &mut rows);
    for (sign, word) in SIGNS {
        let mark = format!("{:<3}", model.theme.sign(sign));
        let told = wrap(
            model.theme,
            &model.words.say(word, &[]),
            width.saturating_sub(3),
            Style::new(),
        );
        rows.extend(hang(Span::styled(mark, model.theme.verdict(sign)), told));
    }
    heading(model, "screen.help.drawing", &mut rows);
    for mark in PointMark::ALL {
        let glyph = format!("{:<3}", mark.glyph(model.theme.unicode));
        let told = wrap(
            model.theme,
            &model.words.say(meaning(mark).0, &[]),
            width.saturating_sub(3),
            Style::new(),
        );
        rows.extend(hang(Span::styled(glyph, model.theme.strong()), told));
    }
    if let Page::Working(open) = &model.page
        && !open.view.names.is_empty()
    {
        heading(model, "screen.help.names", &mut rows);
        for name in &open.view.names {
            let row = Line::from(names::spans(model, name, width));
            let told = wrap_text(
                model.theme,
                &name.meaning,
                width.saturating_sub(2),
                model.theme.faint(),
            );
            rows.extend(beside(row, told, width));
        }
    }
    rows.extend(steps(model));
    heading(model, "screen.help.keys", &mut rows);
    for binding in TABLE {
        let told = model.words.say(binding.told, &[]);
        let told = wrap(
            model.theme,
            &told,
            width.saturating_sub(COLUMN),
            Style::new(),
        );
        let key = Span::styled(format!("{:<COLUMN$}", binding.shown), model.theme.key());
        rows.extend(hang(key, told));
    }
    rows
}

/// The steps of the walk, each with its result if it has one.
fn steps(model: &Model) -> Vec<Line<'static>> {
    let mut rows = Vec::new();
    let Page::Working(open) = &model.page else {
        return rows;
    };
    if open.view.steps.is_empty() {
        return rows;
    }
    rows.push(Line::default());
    rows.push(Line::styled(
        model.words.word(match open.view.freely {
            true => "screen.help.wanted",
            false => "screen.help.steps",
        }),
        model.theme.strong(),
    ));
    for step in &open.view.steps {
        let (sign, style) = header::sign(model.theme, step.progress);
        let mut row = Line::from(Span::styled(format!("{sign:<3}"), style));
        row.push_span(model.theme.letters(&step.title).into_owned());
        if let Some(result) = &step.result {
            row.push_span(format!("   {}", model.theme.letters(result)));
        }
        rows.push(row);
    }
    rows
}

fn heading(model: &Model, word: &str, rows: &mut Vec<Line<'static>>) {
    if !rows.is_empty() {
        rows.push(Line::default());
    }
    rows.push(Line::styled(model.words.word(word), model.theme.strong()));
}

/// A name and its meaning in one row if they fit, else below each other.
fn beside(mut row: Line<'static>, told: Vec<Line<'static>>, width: usize) -> Vec<Line<'static>> {
    let column = row.width().max(COLUMN * 3 / 2) + 2;
    match <[Line; 1]>::try_from(told) {
        Ok([only]) if column + only.width() <= width => {
            row.push_span(Span::raw(" ".repeat(column - row.width())));
            row.spans.extend(only.spans);
            vec![row]
        }
        Ok([only]) => vec![row, indent(2, vec![only]).remove(0)],
        Err(told) => std::iter::once(row).chain(indent(2, told)).collect(),
    }
}
