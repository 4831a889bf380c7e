//! The page of the settings, and the question how a slope looks best.

use super::prose::{hang, wrap};
use super::strip;
use crate::practice::choices;
use crate::screen::model::Model;
use ratatui::Frame;
use ratatui::layout::Rect;
use ratatui::style::Style;
use ratatui::text::{Line, Span};
use ratatui::widgets::Paragraph;

/// The widest the page gets.
const WIDEST: u16 = 84;
/// From this many rows on, there is room between the choices.
const LOW: u16 = 20;
/// Columns before a choice.
const MARGIN: usize = 6;

/// A slope as a line of dots.
const DOTS: [&str; 3] = ["      ⣀⣴⡿⠛⠁", "   ⣀⣴⡿⠛⠁", "⣀⣴⡿⠛⠁"];
/// The same with ordinary characters.
const CHARACTERS: [&str; 3] = ["       ###", "    ###", " ###"];

/// Draws the page of the settings.
pub(super) fn draw(model: &Model, chosen: usize, frame: &mut Frame, area: Rect) {
    let inner = inner(area);
    let width = usize::from(inner.width);
    let theme = model.theme;
    let mut rows = vec![
        Line::default(),
        Line::styled(model.words.word("settings.title"), theme.strong()),
    ];
    // What the class has set must not fall off the page.
    let fixed = u16::try_from(2 * model.fixed.len()).unwrap_or(u16::MAX);
    let roomy = area.height >= LOW.saturating_add(fixed);
    if roomy {
        let about = model.words.say("settings.about", &[]);
        rows.extend(wrap(theme, &about, width, theme.faint()));
    }
    for (place, choice) in choices(model.settings).iter().enumerate() {
        if roomy {
            rows.push(Line::default());
        }
        let here = place == chosen;
        let mark = if here { theme.either("▸", ">") } else { " " };
        let style = if here { theme.chosen() } else { theme.strong() };
        let margin = Span::styled(format!("{mark}{:>3}  ", place + 1), theme.key());
        let heading = model.words.say(choice.heading, &[]);
        let heading = wrap(theme, &heading, width.saturating_sub(MARGIN), style);
        rows.extend(hang(margin, heading));
        rows.extend(values(model, choice.values, choice.taken, width));
    }
    for (place, told) in model.fixed.iter().enumerate() {
        if place == 0 {
            rows.push(Line::default());
        }
        let style = match place {
            0 => theme.strong(),
            _ => Style::new(),
        };
        let margin = Span::raw(if place == 0 { "" } else { "  " });
        let room = width.saturating_sub(margin.width());
        rows.extend(hang(
            margin,
            wrap(theme, &model.manner.prose(told), room, style),
        ));
    }
    page(model, rows, frame, area, inner);
}

/// The values of a choice, side by side where they fit; a sign stands before the one that holds.
fn values(model: &Model, values: &[&str], taken: usize, width: usize) -> Vec<Line<'static>> {
    let theme = model.theme;
    let margin = || Line::raw(" ".repeat(MARGIN));
    let mut rows = vec![margin()];
    for (place, value) in values.iter().enumerate() {
        let (sign, style) = match place == taken {
            true => (theme.either("● ", "(x) "), theme.strong()),
            false => (theme.either("○ ", "( ) "), theme.faint()),
        };
        let told = Span::styled(format!("{sign}{}   ", model.words.word(value)), style);
        let full = |row: &Line| row.width() + told.width() > width + 3;
        if place > 0 && rows.last().is_some_and(full) {
            rows.push(margin());
        }
        if let Some(row) = rows.last_mut() {
            row.push_span(told);
        }
    }
    rows
}

/// Asks which of two small drawings is seen as a line.
pub(super) fn draw_slope(model: &Model, frame: &mut Frame, area: Rect) {
    let inner = inner(area);
    let theme = model.theme;
    let mut rows = vec![Line::default()];
    let asked = model.words.say("settings.slope.ask", &[]);
    rows.extend(wrap(theme, &asked, inner.width.into(), theme.strong()));
    rows.push(Line::default());
    let numbers = ["1", "2"].map(|number| Span::styled(number, theme.key()));
    let [one, two] = numbers;
    rows.push(Line::from(vec![
        Span::raw("  "),
        one,
        Span::raw(" ".repeat(23)),
        two,
    ]));
    for (dots, characters) in DOTS.iter().zip(CHARACTERS) {
        rows.push(Line::raw(format!("    {dots:<20}    {characters}")));
    }
    rows.push(Line::default());
    let later = model.words.say("settings.slope.later", &[]);
    rows.extend(wrap(theme, &later, inner.width.into(), theme.faint()));
    page(model, rows, frame, area, inner);
}

fn page(model: &Model, rows: Vec<Line<'static>>, frame: &mut Frame, area: Rect, inner: Rect) {
    let above = Rect {
        height: area.height.saturating_sub(2),
        ..inner
    };
    frame.render_widget(Paragraph::new(rows).style(Style::new()), above);
    let last = Rect {
        y: area.y + area.height.saturating_sub(1),
        height: 1,
        ..inner
    };
    strip::draw(model, frame, last);
}

fn inner(area: Rect) -> Rect {
    let width = area.width.saturating_sub(4).min(WIDEST);
    Rect {
        x: area.x + (area.width - width) / 2,
        width,
        ..area
    }
}
