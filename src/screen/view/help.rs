//! The help page: the keys that work here, how to type, what the signs mean, and what is at hand.
//! Its sections are numbered, and a number leads to each.

use super::diagram::meaning;
use super::prose::{hang, indent, wrap, wrap_text};
use super::strip;
use super::{header, map, names};
use crate::practice::Standing;
use crate::screen::keys::{AT_BUILDING, AT_EARLIER, AT_LIST, AT_REPLAY, Command, TABLE};
use crate::screen::model::{Model, Page, Working};
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
const SIGNS: [(Sign, &str); 8] = [
    (Sign::Right, "screen.help.sign.right"),
    (Sign::Rounded, "screen.help.sign.rounded"),
    (Sign::Follows, "screen.help.sign.follows"),
    (Sign::Noted, "screen.help.sign.noted"),
    (Sign::Incomplete, "screen.help.sign.incomplete"),
    (Sign::Wrong, "screen.help.sign.wrong"),
    (Sign::Unclear, "screen.help.sign.unclear"),
    (Sign::Shown, "screen.help.sign.shown"),
];
/// How a learner may stand with a lesson, in the order in which it is told.
const STANDINGS: [(Standing, &str); 4] = [
    (Standing::New, "screen.help.standing.new"),
    (Standing::Begun, "screen.help.standing.begun"),
    (Standing::Mastered, "screen.help.standing.mastered"),
    (Standing::Due, "screen.help.standing.due"),
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

/// How to answer while a problem is built.
const ANSWERING: [&str; 4] = [
    "screen.help.build.numbers",
    "screen.help.build.places",
    "screen.help.build.foot",
    "screen.help.build.checked",
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
    let more = rows.len() > row + height;
    let rows: Vec<Line> = rows.into_iter().skip(row).take(height).collect();
    frame.render_widget(Paragraph::new(rows), page);
    if more {
        let below = Rect {
            y: page.y + page.height,
            height: 1,
            ..inner
        };
        let told = model.words.word("screen.working.more");
        let told = format!("{} {told}", model.theme.either("⋮", ":"));
        let told = Line::styled(told, model.theme.hint());
        frame.render_widget(Paragraph::new(told), below);
    }
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

/// The row at which a section begins, by its number from 1.
pub(in crate::screen) fn section(model: &Model, number: usize) -> Option<usize> {
    let width = inner(Rect::new(0, 0, model.size.0, model.size.1)).width;
    let before = number.checked_sub(1)?;
    let sections = sections(model, width.into());
    let rows = |section: &Section| section.rows.len() + 2;
    (before < sections.len()).then(|| sections[..before].iter().map(rows).sum())
}

/// A part of the page.
struct Section {
    /// The key of the words that stand above it.
    heading: &'static str,
    rows: Vec<Line<'static>>,
}

/// The sections one after another, each under its number.
fn rows(model: &Model, width: usize) -> Vec<Line<'static>> {
    let mut rows = Vec::new();
    for (place, section) in sections(model, width).into_iter().enumerate() {
        if place > 0 {
            rows.push(Line::default());
        }
        rows.push(Line::from(vec![
            Span::styled(format!("{} ", place + 1), model.theme.key()),
            Span::styled(model.words.word(section.heading), model.theme.strong()),
        ]));
        rows.extend(section.rows);
    }
    rows
}

/// What the page has to tell here, the keys first.
fn sections(model: &Model, width: usize) -> Vec<Section> {
    let section = |heading, rows| Section { heading, rows };
    let mut sections = vec![section("screen.help.keys", keys(model, width))];
    if let Page::Menu(_) = &model.page {
        sections.push(section("screen.help.standing", standings(model, width)));
    }
    if let Page::Building(_) = &model.page {
        let answering = bullets(model, &ANSWERING, width);
        sections.push(section("screen.help.build", answering));
        sections.push(section("screen.help.drawing", drawing(model, width)));
        return sections;
    }
    if let Page::Again(_) = &model.page {
        sections.push(section("screen.help.signs", signs(model, width)));
        return sections;
    }
    let typing = bullets(model, &TYPING, width);
    sections.push(section("screen.help.typing", typing));
    sections.push(section("screen.help.signs", signs(model, width)));
    if let Page::Working(open) = &model.page {
        sections.push(section("screen.help.drawing", drawing(model, width)));
        let names = names_at_hand(model, open, width);
        sections.push(section("screen.help.names", names));
        let wanted = match open.view.freely {
            true => "screen.help.wanted",
            false => "screen.help.steps",
        };
        sections.push(section(wanted, steps(model, open)));
    }
    sections.retain(|section| !section.rows.is_empty());
    sections
}

/// The keys that work here.
fn keys(model: &Model, width: usize) -> Vec<Line<'static>> {
    let row = |shown: &str, told: &str| {
        let told = model.words.say(told, &[]);
        let room = width.saturating_sub(COLUMN);
        let told = wrap(model.theme, &told, room, Style::new());
        let shown = strip::key_name(&model.words, shown);
        let key = Span::styled(format!("{shown:<COLUMN$}"), model.theme.key());
        hang(key, told)
    };
    if let Page::Working(_) = &model.page {
        let rows = TABLE.iter().flat_map(|bound| row(bound.shown, bound.told));
        return rows.collect();
    }
    let mut rows = Vec::new();
    let listed = match &model.page {
        Page::Building(_) => AT_BUILDING,
        Page::Again(looking) if looking.open.is_some() => AT_REPLAY,
        Page::Again(_) => AT_EARLIER,
        _ => AT_LIST,
    };
    for (command, told) in listed {
        if *command == Command::Help {
            // A line with a question mark can only be entered at a problem.
            rows.extend(row("F1", told));
            continue;
        }
        let bound = TABLE.iter().find(|bound| bound.command == *command);
        rows.extend(
            bound
                .map(|bound| row(bound.shown, told))
                .unwrap_or_default(),
        );
        if *command == Command::Enter && !model.is_replay() {
            rows.extend(row("1, 2, 3 ...", "screen.key.list.number"));
        }
    }
    rows
}

fn bullets(model: &Model, keys: &[&str], width: usize) -> Vec<Line<'static>> {
    let told = |word: &&str| {
        let told = model.words.say(word, &[]);
        let told = wrap(model.theme, &told, width.saturating_sub(2), Style::new());
        hang(Span::raw(model.theme.either("· ", "- ")), told)
    };
    keys.iter().flat_map(told).collect()
}

/// A sign with what it says.
fn sign_row(
    model: &Model,
    sign: &str,
    style: Style,
    word: &str,
    width: usize,
) -> Vec<Line<'static>> {
    let told = model.words.say(word, &[]);
    let told = wrap(model.theme, &told, width.saturating_sub(3), Style::new());
    hang(Span::styled(format!("{sign:<3}"), style), told)
}

fn signs(model: &Model, width: usize) -> Vec<Line<'static>> {
    let theme = model.theme;
    let row = |(sign, word): &(Sign, &str)| {
        sign_row(model, theme.sign(*sign), theme.verdict(*sign), word, width)
    };
    SIGNS.iter().flat_map(row).collect()
}

fn standings(model: &Model, width: usize) -> Vec<Line<'static>> {
    let row = |(standing, word): &(Standing, &str)| {
        let (sign, style) = map::sign(model.theme, *standing);
        sign_row(model, sign, style, word, width)
    };
    STANDINGS.iter().flat_map(row).collect()
}

fn drawing(model: &Model, width: usize) -> Vec<Line<'static>> {
    let theme = model.theme;
    let row = |mark: &PointMark| {
        let glyph = mark.glyph(model.draws_lines()).to_string();
        sign_row(model, &glyph, theme.strong(), meaning(*mark).0, width)
    };
    let arrow = theme.either("→", "->");
    let told = "screen.help.drawing.arrows";
    let arrow = sign_row(model, arrow, theme.strong(), told, width);
    PointMark::ALL.iter().flat_map(row).chain(arrow).collect()
}

fn names_at_hand(model: &Model, open: &Working, width: usize) -> Vec<Line<'static>> {
    let mut rows = Vec::new();
    for name in &open.view.names {
        let row = Line::from(names::spans(model, name, width));
        let room = width.saturating_sub(2);
        let told = wrap_text(model.theme, &name.meaning, room, model.theme.faint());
        rows.extend(beside(row, told, width));
    }
    rows
}

/// The steps of the walk, each with its result if it has one.
fn steps(model: &Model, open: &Working) -> Vec<Line<'static>> {
    let mut rows = Vec::new();
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
