//! The last row: the keys that matter now.

use crate::screen::model::{Model, Over, Page, Pane};
use crate::text::Prose;
use ratatui::Frame;
use ratatui::layout::Rect;
use ratatui::text::{Line, Span};
use ratatui::widgets::Paragraph;

/// Columns between two keys.
const GAP: usize = 3;

/// Draws as many keys as there is room for, the most needed first.
pub(super) fn draw(model: &Model, frame: &mut Frame, area: Rect) {
    let theme = model.theme;
    let mut row = Line::default();
    if model.over == Over::Leaving {
        row.push_span(Span::styled(
            leaving_word(model).to_string(),
            theme.strong(),
        ));
    }
    for (key, word) in keys(model) {
        let word = model.words.word(word);
        let gap = if row.spans.is_empty() { 0 } else { GAP };
        let wide = gap + key.len() + 1 + word.chars().count();
        if row.width() + wide > area.width.into() {
            continue;
        }
        row.push_span(Span::raw(" ".repeat(gap)));
        row.push_span(Span::styled(key, theme.key()));
        row.push_span(Span::styled(format!(" {word}"), theme.faint()));
    }
    frame.render_widget(Paragraph::new(row), area);
}

/// What a learner is told before leaving.
pub(super) fn leaving_word(model: &Model) -> Prose {
    let word = match (&model.page, model.unsaved) {
        (Page::Menu(_), _) => "screen.leaving.menu",
        (Page::Working(_), true) => "screen.leaving.unsaved",
        (Page::Working(_), false) => "screen.leaving.kept",
    };
    model.words.say(word, &[])
}

fn keys(model: &Model) -> Vec<(&'static str, &'static str)> {
    match (model.over, &model.page) {
        (Over::Leaving, Page::Working(_)) => vec![
            ("Enter", "screen.strip.leave-now"),
            ("Tab", "screen.strip.lessons"),
            ("Space", "screen.strip.stay"),
        ],
        (Over::Leaving, Page::Menu(_)) => vec![
            ("Enter", "screen.strip.leave-now"),
            ("Space", "screen.strip.stay"),
        ],
        (Over::Help(_), _) => vec![
            ("Esc", "screen.strip.back"),
            ("Up Down", "screen.strip.scroll"),
        ],
        (Over::Nothing, Page::Menu(menu)) => {
            let mut keys = vec![
                ("Enter", "screen.strip.open"),
                ("Up Down", "screen.strip.choose"),
                ("F1", "screen.strip.help"),
                ("Esc", "screen.strip.leave"),
            ];
            if menu.unfinished.is_some() && menu.chosen == 0 {
                keys.push(("Delete", "screen.strip.put-away"));
            }
            keys
        }
        (Over::Nothing, Page::Working(open)) => {
            let mut keys = Vec::new();
            if open.finished() && open.input.value().trim().is_empty() {
                keys.push(("Enter", "screen.strip.lessons"));
            }
            if super::narrow(model.size) {
                keys.push(match open.pane {
                    Pane::Diagram => ("Tab", "screen.strip.working"),
                    Pane::Working => ("Tab", "screen.strip.diagram"),
                });
            }
            keys.push(("F1", "screen.strip.help"));
            keys.push(("Esc", "screen.strip.leave"));
            keys.push(if !open.statement_in_full() {
                ("F4", "screen.strip.statement")
            } else if super::statement_alone(model, open) {
                ("F4", "screen.strip.diagram")
            } else {
                ("F4", "screen.strip.fold")
            });
            if super::statement_goes_on(model, open) {
                keys.push(("Page Down", "screen.strip.more-statement"));
            }
            if open.view.stages.len() > 1 {
                keys.push(("F2 F3", "screen.strip.stages"));
            }
            if open.view.lines.len() > 1 {
                keys.push(("Page Up", "screen.strip.older"));
            }
            if !open.finished() {
                keys.push(("Enter", "screen.strip.enter"));
            }
            keys
        }
    }
}
