//! Who is at work: the question, the line in which a name is typed, and who is known.

use super::ask;
use super::prose::wrap;
use crate::screen::model::{Model, Page};
use crate::text::{Prose, Slot};
use ratatui::Frame;
use ratatui::layout::Rect;
use ratatui::text::Line;
use ratatui::widgets::Paragraph;

/// The question for the name.
pub(super) fn question(model: &Model) -> Prose {
    let at_problem = matches!(model.page, Page::Working(_));
    let (key, name) = match (&model.people.name, at_problem) {
        (None, true) => ("people.ask", String::new()),
        (None, false) => ("people.ask-at-list", String::new()),
        (Some(name), true) => ("people.anew", name.clone()),
        (Some(name), false) => ("people.another", name.clone()),
    };
    model.words.say(key, &[("name", Slot::Word(name))])
}

/// Who is known; empty if there is nobody else.
pub(super) fn known(model: &Model) -> Prose {
    let others = model.people.others.iter().enumerate();
    let told: Vec<String> = others
        .map(|(place, name)| format!("{} {name}", place + 1))
        .collect();
    // At a problem a learner who has a name stays who it is.
    let stays = model.people.name.is_some() && matches!(model.page, Page::Working(_));
    if told.is_empty() || stays {
        return Prose::default();
    }
    let slots = [("names", Slot::Word(told.join(", ")))];
    model.words.say("people.known", &slots)
}

/// How many rows the question takes at the foot of the list.
pub(super) fn height(model: &Model, width: usize) -> u16 {
    let (above, below) = rows(model, width);
    u16::try_from(above.len() + 1 + below.len()).unwrap_or(u16::MAX)
}

fn rows(model: &Model, width: usize) -> (Vec<Line<'static>>, Vec<Line<'static>>) {
    let theme = model.theme;
    let above = wrap(theme, &question(model), width, theme.strong());
    let known = known(model);
    let below = match known.is_empty() {
        true => Vec::new(),
        false => wrap(theme, &known, width, theme.faint()),
    };
    (above, below)
}

/// Draws the question at the foot of the list.
pub(super) fn draw(model: &Model, frame: &mut Frame, area: Rect) {
    let (above, below) = rows(model, area.width.into());
    let part = |from: usize, rows: usize| {
        let from = u16::try_from(from).unwrap_or(u16::MAX).min(area.height);
        let rows = u16::try_from(rows).unwrap_or(u16::MAX);
        Rect {
            y: area.y + from,
            height: rows.min(area.height - from),
            ..area
        }
    };
    let input = part(above.len(), 1);
    let after = part(above.len() + 1, below.len());
    let before = part(0, above.len());
    frame.render_widget(Paragraph::new(above), before);
    frame.render_widget(Paragraph::new(below), after);
    if input.height > 0 {
        ask::draw_input(model, &model.name_typed, frame, input);
    }
}
