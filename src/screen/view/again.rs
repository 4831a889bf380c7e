//! The list of problems that were worked at before, and one of them after a line.

use super::prose::{cut, wrap};
use super::{ask, draw_working, strip};
use crate::practice::Earlier;
use crate::screen::again::{Looking, Replayed};
use crate::screen::model::Model;
use crate::text::{Prose, Slot};
use ratatui::Frame;
use ratatui::layout::Rect;
use ratatui::style::Style;
use ratatui::text::{Line, Span};
use ratatui::widgets::Paragraph;
use unicode_width::UnicodeWidthStr;

/// The widest the list gets.
const WIDEST: u16 = 84;

/// Draws the line that is looked at, or the list.
pub(super) fn draw(model: &Model, looking: &Looking, frame: &mut Frame, area: Rect) {
    match &looking.open {
        Some(replayed) => draw_working(model, &replayed.working, frame, area),
        None => draw_list(model, looking, frame, area),
    }
}

/// Where one is, and what was asked then.
pub(super) fn place(model: &Model, replayed: &Replayed) -> Prose {
    let slots = [
        ("number", Slot::Value(replayed.at.to_string())),
        ("count", Slot::Value(replayed.lines().to_string())),
    ];
    let key = match replayed.at {
        0 => "again.start",
        _ => "again.place",
    };
    let place = model.words.say(key, &slots);
    place.then(replayed.working.view.question.clone())
}

fn draw_list(model: &Model, looking: &Looking, frame: &mut Frame, area: Rect) {
    let theme = model.theme;
    let width = area.width.saturating_sub(4).min(WIDEST);
    let inner = Rect {
        x: area.x + (area.width - width) / 2,
        width,
        ..area
    };
    let mut rows = vec![
        Line::default(),
        Line::styled(model.words.word("again.title"), theme.strong()),
    ];
    let about = model.words.say("again.about", &[]);
    rows.extend(wrap(theme, &about, width.into(), Style::new()));
    rows.push(Line::default());
    let notes = ask::notes(model, width.into());
    let fixed = rows.len() + notes.len() + 3;
    let room = usize::from(area.height).saturating_sub(fixed).max(1);
    let count = looking.list.len();
    let top = (looking.chosen + 1).saturating_sub(room);
    let shown = looking.list.iter().enumerate().skip(top).take(room);
    rows.extend(shown.map(|(place, earlier)| {
        let chosen = place == looking.chosen;
        row(model, earlier, chosen, width.into())
    }));
    if top + room < count {
        rows.push(Line::styled(theme.either("⋮", ":"), theme.faint()));
    }
    rows.push(Line::default());
    rows.extend(notes);
    let page = Rect {
        height: area.height.saturating_sub(1),
        ..inner
    };
    frame.render_widget(Paragraph::new(rows), page);
    let last = Rect {
        y: area.y + area.height.saturating_sub(1),
        height: 1,
        ..inner
    };
    strip::draw(model, frame, last);
}

/// One problem: its day, its title, and how far it came.
fn row(model: &Model, earlier: &Earlier, chosen: bool, width: usize) -> Line<'static> {
    let theme = model.theme;
    let (mark, style) = match chosen {
        true => (theme.either("▸ ", "> "), theme.chosen()),
        false => ("  ", Style::new()),
    };
    let key = match (earlier.finished, earlier.lines) {
        (true, 1) => "again.finished.one",
        (true, _) => "again.finished.many",
        (false, 1) => "again.unfinished.one",
        (false, _) => "again.unfinished.many",
    };
    let slots = [("count", Slot::Value(earlier.lines.to_string()))];
    let far = model.words.say(key, &slots).to_string();
    let day = format!("{mark}{}  ", earlier.day);
    let room = width.saturating_sub(day.width() + far.width() + 2);
    let title = model.manner.text(&earlier.title);
    let title = cut(theme, &theme.letters(&title), room);
    let gap = room.saturating_sub(title.width()) + 2;
    Line::from(vec![
        Span::styled(day, theme.key()),
        Span::styled(title, style),
        Span::raw(" ".repeat(gap)),
        Span::styled(far, theme.faint()),
    ])
}
