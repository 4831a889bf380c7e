//! Notes, the question, the line being typed and how it would be read.

use super::prose::{clip, cut, hang, indent, wrap};
use super::regions::Regions;
use super::{again, naming, working};
use crate::screen::model::{Model, Over, Page, Working};
use crate::screen::pivot;
use crate::session::{Fading, Sign};
use crate::text::{Prose, Slot};
use ratatui::Frame;
use ratatui::layout::{Position, Rect};
use ratatui::text::{Line, Span};
use ratatui::widgets::Paragraph;
use tui_input::Input;
use unicode_width::{UnicodeWidthChar, UnicodeWidthStr};

/// Rows no wider than this: longer ones are tiring to read.
const WIDEST_PROSE: usize = 110;
/// Columns before the line being typed.
const PROMPT: u16 = 2;

/// Draws everything between the rule and the names.
pub(super) fn draw(model: &Model, open: &Working, frame: &mut Frame, regions: &Regions) {
    let width = regions.question.width.into();
    draw_rows(model, notes(model, width), frame, regions.notes);
    draw_rows(model, question(model, open, width), frame, regions.question);
    let naming = model.over == Over::Naming;
    let input = if naming {
        &model.name_typed
    } else {
        &open.input
    };
    // What is looked at again takes no line.
    if model.is_replay() {
        return;
    }
    draw_input(model, input, frame, regions.input);
    let below =
        if naming || matches!(model.over, Over::Pivot(_)) || open.input.value().trim().is_empty() {
            example(model, open, width)
        } else {
            preview(model, open, width, regions.preview.height.into())
        };
    draw_rows(model, below, frame, regions.preview);
}

fn draw_rows(model: &Model, rows: Vec<Line<'static>>, frame: &mut Frame, area: Rect) {
    let rows = clip(model.theme, rows, area.width.into(), area.height.into());
    frame.render_widget(Paragraph::new(rows), area);
}

/// The rows of the notes.
pub(super) fn notes(model: &Model, width: usize) -> Vec<Line<'static>> {
    let mark = model.theme.either("◆ ", "! ");
    model
        .notes
        .iter()
        .flat_map(|note| {
            let room = width.saturating_sub(2).min(WIDEST_PROSE);
            let rows = wrap(model.theme, note, room, Default::default());
            hang(Span::styled(mark, model.theme.note()), rows)
        })
        .collect()
}

/// The rows of the question.
pub(super) fn question(model: &Model, open: &Working, width: usize) -> Vec<Line<'static>> {
    if let Over::Pivot(_) = model.over {
        return places(model, open, width);
    }
    let naming = model.over == Over::Naming;
    let mut question = match (naming, &model.page) {
        (true, _) => naming::question(model),
        (false, Page::Again(looking)) => (looking.open.as_ref())
            .map_or_else(Prose::default, |replayed| again::place(model, replayed)),
        (false, _) => open.view.question.clone(),
    };
    if open.finished() && !naming && !model.is_replay() {
        let next = match model.lesson {
            Some(_) => match open.view.fading {
                Fading::Worked => "screen.finished.last",
                Fading::Last(_) => "screen.finished.all",
                Fading::All => "screen.finished.again",
            },
            None => "screen.finished.list",
        };
        question = question.then(model.words.say(next, &[]));
    }
    let mut rows = wrap(
        model.theme,
        &question,
        width.min(WIDEST_PROSE),
        model.theme.strong(),
    );
    if !naming {
        rows.extend(choices(model, open, width));
    }
    rows
}

/// The question for the pivot, and the places behind their numbers, with the one that is chosen.
fn places(model: &Model, open: &Working, width: usize) -> Vec<Line<'static>> {
    let theme = model.theme;
    let question = model.words.say("pivot.question", &[]);
    let mut rows = wrap(theme, &question, width.min(WIDEST_PROSE), theme.strong());
    let chosen = pivot::chosen(model, open).map(|place| place.place);
    let mut row = Line::default();
    for (number, place) in open.view.pivots.iter().enumerate() {
        let (mark, style) = match chosen == Some(place.place) {
            true => (theme.either("◎", "@"), theme.chosen()),
            false => (" ", Default::default()),
        };
        let name = theme.letters(&place.name).into_owned();
        let told = [
            Span::styled(format!("{mark}{} ", number + 1), theme.key()),
            Span::styled(format!("{name}  "), style),
        ];
        let wide: usize = told.iter().map(Span::width).sum();
        if row.width() + wide > width && row.width() > 0 {
            rows.push(std::mem::take(&mut row));
        }
        row.spans.extend(told);
    }
    rows.push(row);
    rows
}

/// The rows of what may be chosen, each behind its number.
fn choices(model: &Model, open: &Working, width: usize) -> Vec<Line<'static>> {
    let mut rows = Vec::new();
    for (place, choice) in open.view.choices.iter().enumerate() {
        let number = Span::styled(format!("{:>2}  ", place + 1), model.theme.key());
        let room = width.saturating_sub(4).min(WIDEST_PROSE);
        let told = wrap(model.theme, choice, room, Default::default());
        rows.extend(hang(number, told));
    }
    rows
}

/// The rows of the example and, after a wrong line, of what may be done about it. They stand
/// where the reading will.
pub(super) fn example(model: &Model, open: &Working, width: usize) -> Vec<Line<'static>> {
    let mut rows = Vec::new();
    if model.is_replay() {
        return rows;
    }
    if model.over == Over::Naming {
        let known = naming::known(model);
        return match known.is_empty() {
            true => rows,
            false => below_input(model, &known, width),
        };
    }
    if let Over::Pivot(_) = model.over {
        return below_input(model, &pivot::told(model, open), width);
    }
    if !open.view.example.is_empty() {
        rows = below_input(model, &open.view.example, width);
    }
    if let Some(offer) = offer(model, open).filter(|_| !open.finished()) {
        rows.extend(below_input(model, &offer, width));
    }
    rows
}

/// What to do about a wrong line that waits, also after talk about it and after more wrong lines.
fn offer(model: &Model, open: &Working) -> Option<Prose> {
    let waits = |sign: Sign| matches!(sign, Sign::Wrong | Sign::Unclear | Sign::Talk);
    for line in open.view.lines.iter().rev() {
        let offer = working::offer_in(&model.words, &line.message);
        if offer.is_some() || !waits(line.sign) {
            return offer;
        }
    }
    None
}

/// How the line is read: with stacked fractions if that has room, else in one row.
fn preview(model: &Model, open: &Working, width: usize, height: usize) -> Vec<Line<'static>> {
    let Some(reading) = &open.preview else {
        return Vec::new();
    };
    if let Some(rows) = stacked(model, open, width, height) {
        return rows;
    }
    below_input(model, &read_as(model, reading.row()), width)
}

fn read_as(model: &Model, reading: String) -> Prose {
    let slots = [("reading", Slot::Word(reading))];
    model.words.say("screen.preview", &slots)
}

/// The rows of a reading with stacked fractions; `None` where it has none, or where it is wider or
/// higher than this. What is said of it stands on its main row.
pub(super) fn stacked(
    model: &Model,
    open: &Working,
    width: usize,
    height: usize,
) -> Option<Vec<Line<'static>>> {
    let theme = model.theme;
    if model.is_replay() || matches!(model.over, Over::Naming | Over::Pivot(_)) {
        return None;
    }
    let reading = open.preview.as_ref()?;
    let room = width.saturating_sub(PROMPT.into()).min(WIDEST_PROSE);
    let shown = reading.each(&|text| theme.letters(text).into_owned());
    let mut block = shown.block(theme.unicode, room, height)?;
    if block.rows.len() == 1 {
        return None;
    }
    let main = block.rows.get(block.main)?.clone();
    let told = theme
        .letters(&read_as(model, main.clone()).to_string())
        .into_owned();
    let before = told.get(..told.find(&main)?)?.width();
    for row in &mut block.rows {
        row.insert_str(0, &" ".repeat(before));
    }
    block.rows[block.main] = told;
    if block.rows.iter().any(|row| row.width() > room) {
        return None;
    }
    let rows = block.rows.into_iter();
    let rows = rows.map(|row| Line::styled(row, theme.faint())).collect();
    Some(indent(PROMPT.into(), rows))
}

fn below_input(model: &Model, told: &Prose, width: usize) -> Vec<Line<'static>> {
    let room = width.saturating_sub(PROMPT.into()).min(WIDEST_PROSE);
    let rows = wrap(model.theme, told, room, model.theme.faint());
    hang(Span::raw("  "), rows)
}

/// The prompt and the line; a long line is shown around the caret, with signs where it goes on.
pub(super) fn draw_input(model: &Model, input: &Input, frame: &mut Frame, area: Rect) {
    let theme = model.theme;
    let prompt = Span::styled(theme.either("› ", "> "), theme.key());
    frame.render_widget(Paragraph::new(Line::from(prompt)), area);
    let field = Rect {
        x: area.x + PROMPT,
        width: area.width.saturating_sub(PROMPT),
        ..area
    };
    let value = input.value();
    // One column at each end is kept for the signs that the line goes on.
    let room = usize::from(field.width).saturating_sub(2).max(1);
    let first = input.visual_scroll(room);
    let shown = columns_from(value, first);
    let mut row = Line::default();
    let mut caret = input.visual_cursor().saturating_sub(first);
    if first > 0 {
        row.push_span(Span::styled(theme.either("‹", "<"), theme.faint()));
        caret += 1;
    }
    row.push_span(Span::raw(cut(
        theme,
        &shown,
        room + usize::from(first == 0),
    )));
    frame.render_widget(Paragraph::new(row), field);
    if matches!(model.over, Over::Nothing | Over::Naming) {
        let caret = u16::try_from(caret).unwrap_or(u16::MAX);
        let caret = caret.min(field.width.saturating_sub(1));
        frame.set_cursor_position(Position::new(field.x + caret, field.y));
    }
}

/// The text from a column on.
fn columns_from(text: &str, first: usize) -> String {
    let mut column = 0;
    text.chars()
        .skip_while(|c| {
            let before = column < first;
            column += c.width().unwrap_or(0);
            before
        })
        .collect()
}
