//! The first row: which problem, and how far; and the thin lines between the regions.

use super::prose::cut;
use super::regions::Regions;
use crate::screen::model::{Model, Working};
use crate::screen::theme::Theme;
use crate::session::Progress;
use crate::text::Slot;
use ratatui::Frame;
use ratatui::layout::{Position, Rect};
use ratatui::style::Style;
use ratatui::text::{Line, Span};
use ratatui::widgets::Paragraph;
use unicode_width::UnicodeWidthStr;

/// The most steps for which each has a sign of its own.
const MOST_SIGNS: usize = 24;

/// Draws the header.
pub(super) fn draw(model: &Model, open: &Working, frame: &mut Frame, area: Rect) {
    let title = model.theme.letters(&open.view.title);
    let mut far = progress(model, open, true);
    if title.width() + far.width() + 2 > area.width.into() {
        far = progress(model, open, false);
    }
    let room = usize::from(area.width).saturating_sub(far.width() + 2);
    let title = cut(model.theme, &title, room);
    let title = Line::styled(title, model.theme.strong());
    frame.render_widget(Paragraph::new(title), area);
    frame.render_widget(Paragraph::new(far.right_aligned()), area);
}

/// A sign for each step, if asked, and the number of the present one.
fn progress(model: &Model, open: &Working, signs: bool) -> Line<'static> {
    let steps = &open.view.steps;
    let theme = model.theme;
    let mut row = Line::default();
    if steps.is_empty() {
        return row;
    }
    if signs && steps.len() <= MOST_SIGNS {
        for step in steps {
            let (sign, style) = sign(theme, step.progress);
            row.push_span(Span::styled(sign, style));
        }
        row.push_span(Span::raw("  "));
    }
    let now = steps.iter().position(|step| step.progress == Progress::Now);
    let told = match now {
        Some(now) => model.words.say(
            "screen.header.step",
            &[
                ("number", Slot::Value((now + 1).to_string())),
                ("count", Slot::Value(steps.len().to_string())),
            ],
        ),
        None if open.finished() => model.words.say("screen.header.finished", &[]),
        None if open.view.freely => model.words.say("screen.header.freely", &[]),
        None => return row,
    };
    row.push_span(Span::raw(told.to_string()));
    row
}

/// The sign of a step.
pub(super) fn sign(theme: Theme, progress: Progress) -> (&'static str, Style) {
    let (fine, ascii, style) = match progress {
        Progress::Done => ("●", "#", theme.strong()),
        Progress::Passed => ("◌", "o", theme.faint()),
        Progress::Now => ("◉", "@", theme.key()),
        Progress::Ahead => ("·", ".", theme.faint()),
    };
    (theme.either(fine, ascii), style)
}

/// Draws the rule above the question, and the line between left and right.
pub(super) fn draw_lines(model: &Model, regions: &Regions, frame: &mut Frame) {
    let theme = model.theme;
    let rule = regions.rule;
    for (area, (fine, ascii)) in [(rule, ("─", "-")), (regions.fold, ("╌", "-"))] {
        let across = theme.either(fine, ascii).repeat(area.width.into());
        frame.render_widget(Paragraph::new(Line::styled(across, theme.faint())), area);
    }
    let Some(column) = regions.divider else {
        return;
    };
    for row in regions.header.y + 2..=rule.y {
        let (fine, ascii) = if row == rule.y {
            ("┴", "+")
        } else {
            ("│", "|")
        };
        if let Some(cell) = frame.buffer_mut().cell_mut(Position::new(column, row)) {
            cell.set_symbol(theme.either(fine, ascii));
            cell.set_style(theme.faint());
        }
    }
}
