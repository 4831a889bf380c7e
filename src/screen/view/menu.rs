//! The list of lessons.

use super::prose::{hang, wrap, wrap_text};
use super::{ask, strip};
use crate::practice::Resumable;
use crate::screen::model::{Menu, Model};
use crate::text::Slot;
use ratatui::Frame;
use ratatui::layout::Rect;
use ratatui::style::Style;
use ratatui::text::{Line, Span};
use ratatui::widgets::Paragraph;

/// The widest the list gets.
const WIDEST: u16 = 84;
/// Columns before a title: the mark of what is chosen, and the number.
const MARGIN: usize = 6;

/// Draws the list, with what is chosen always in sight.
pub(super) fn draw(model: &Model, menu: &Menu, frame: &mut Frame, area: Rect) {
    let width = area.width.saturating_sub(4).min(WIDEST);
    let inner = Rect {
        x: area.x + (area.width - width) / 2,
        width,
        ..area
    };
    let theme = model.theme;
    let mut above = vec![
        Line::default(),
        Line::styled(model.words.word("app.name"), theme.strong()),
    ];
    if area.height >= 20 {
        let about = model.words.say("screen.menu.about", &[]);
        above.extend(wrap(theme, &about, width.into(), Style::new()));
    }
    above.push(Line::default());
    let mut below = vec![Line::default()];
    below.extend(ask::notes(model, width.into()));
    for word in [leaving(model), "caution"] {
        let told = model.words.say(word, &[]);
        below.extend(wrap(theme, &told, width.into(), theme.faint()));
    }
    below.push(Line::default());
    let fixed = above.len() + below.len() + 1;
    let room = usize::from(area.height).saturating_sub(fixed);
    let list = list(model, menu, width.into(), room);
    // On a high screen the list does not stretch: what is below follows it, the keys end the page.
    let mut rows = above;
    rows.extend(list);
    rows.extend(below);
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

/// What may be said of leaving: only what is kept is called safe.
fn leaving(model: &Model) -> &'static str {
    if model.kept {
        "screen.menu.safe"
    } else {
        "screen.menu.unsafe"
    }
}

/// The rows of the list that fit, around what is chosen.
fn list(model: &Model, menu: &Menu, width: usize, room: usize) -> Vec<Line<'static>> {
    let mut choices = choices(model, menu, width);
    if choices.is_empty() {
        let told = model.words.say("screen.menu.no-lessons", &[]);
        return wrap(model.theme, &told, width, Style::new());
    }
    let mut total: usize = choices.iter().map(Vec::len).sum();
    if total > room {
        // Short of space, only what is chosen says what it is about.
        for (place, choice) in choices.iter_mut().enumerate() {
            choice.truncate(if place == menu.chosen {
                choice.len()
            } else {
                1
            });
        }
        total = choices.iter().map(Vec::len).sum();
    }
    let airy = total + choices.len() <= room;
    let mut rows = Vec::new();
    let (mut first, mut end) = (0, 0);
    for (place, choice) in choices.into_iter().enumerate() {
        if airy && place > 0 {
            rows.push(Line::default());
        }
        if place == menu.chosen {
            (first, end) = (rows.len(), rows.len() + choice.len());
        }
        rows.extend(choice);
    }
    if total <= room {
        return rows;
    }
    let room = room.saturating_sub(1).max(1);
    let top = end.saturating_sub(room).min(first);
    let more = rows.len() > top + room;
    let mut shown: Vec<Line> = rows.into_iter().skip(top).take(room).collect();
    if more {
        let sign = model.theme.either("⋮", ":");
        shown.push(Line::styled(format!("{sign:>4}"), model.theme.faint()));
    }
    shown
}

fn choices(model: &Model, menu: &Menu, width: usize) -> Vec<Vec<Line<'static>>> {
    let mut choices = Vec::new();
    if let Some(unfinished) = &menu.unfinished {
        let title = model.words.word("screen.menu.carry-on");
        let told = left(model, "screen.menu.lines", unfinished);
        choices.push(choice(model, menu.chosen == 0, 0, &title, &told, width));
    }
    for (place, lesson) in menu.lessons.iter().enumerate() {
        let chosen = menu.chosen == menu.before() + place;
        choices.push(choice(
            model,
            chosen,
            place + 1,
            &lesson.title,
            &lesson.teaches,
            width,
        ));
    }
    for (place, older) in menu.older.iter().enumerate() {
        let number = menu.lessons.len() + place + 1;
        let chosen = menu.chosen == menu.before() + number - 1;
        let told = left(model, "screen.menu.older", older);
        choices.push(choice(model, chosen, number, &older.title, &told, width));
    }
    choices
}

/// How far a problem that was left is.
fn left(model: &Model, key: &str, left: &Resumable) -> String {
    let key = match left.lines {
        1 => format!("{key}.one"),
        _ => format!("{key}.many"),
    };
    let slots = [
        ("title", Slot::Word(left.title.clone())),
        ("count", Slot::Value(left.lines.to_string())),
    ];
    model.words.say(&key, &slots).to_string()
}

/// One choice: its number and title, and beneath what it is about.
fn choice(
    model: &Model,
    chosen: bool,
    number: usize,
    title: &str,
    about: &str,
    width: usize,
) -> Vec<Line<'static>> {
    let theme = model.theme;
    let mark = if chosen {
        theme.either("▸", ">")
    } else {
        " "
    };
    let style = if chosen {
        theme.chosen()
    } else {
        theme.strong()
    };
    let room = width.saturating_sub(MARGIN);
    let titles = wrap_text(theme, title, room, style);
    let margin = Span::styled(format!("{mark}{number:>3}  "), theme.key());
    let mut rows = hang(margin, titles);
    let told = wrap_text(theme, about, room, theme.faint());
    rows.extend(hang(Span::raw(" ".repeat(MARGIN)), told));
    rows
}
