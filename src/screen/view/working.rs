//! The working so far: every line with its verdict, what was said about it, and its hints.

use super::prose::{OPERATORS, clip, clip_with, cut, hang, indent, wrap, wrap_text};
use super::summary;
use crate::screen::model::{Model, Pane, Working};
use crate::screen::theme::Theme;
use crate::session::{Fading, LineView, Sign};
use crate::text::{Prose, Span as Stretch, Words};
use ratatui::Frame;
use ratatui::layout::Rect;
use ratatui::style::Modifier;
use ratatui::text::{Line, Span};
use ratatui::widgets::Paragraph;
use unicode_width::{UnicodeWidthChar, UnicodeWidthStr};

/// Columns of the sign and the number before a line.
const MARGIN: usize = 5;
/// The words that offer what to do after a wrong line, where a step is asked and where none is, and
/// after a given that is told wrongly.
const OFFERS: [&str; 3] = [
    "talk.after-wrong",
    "talk.after-wrong-freely",
    "talk.after-given",
];
/// In no more rows than this, none is spared for the word that there is more.
const ROWS_TO_SAY_MORE: usize = 3;
/// Columns between a line and what it was an answer to.
const ABOUT_GAP: usize = 3;

/// Draws the working.
pub(super) fn draw(model: &Model, working: &Working, frame: &mut Frame, area: Rect) {
    let (rows, top) = match working.top {
        Some(top) => {
            let rows = unfolded(model, working, (area.width, area.height));
            let bottom = rows.len().saturating_sub(area.height.into());
            (rows, top.min(bottom))
        }
        None => following(model, working, area),
    };
    let height = usize::from(area.height);
    let cut = rows.len() > top + height;
    let mut shown: Vec<Line> = rows.into_iter().skip(top).take(height).collect();
    if cut && height > 2 {
        // Rows that are out of sight are told of, with the key that leads to them.
        shown.truncate(height - 1);
        let more = model.words.word("screen.working.more");
        let more = format!("{} {more}", model.theme.either("⋮", ":"));
        shown.push(Line::styled(more, model.theme.hint()));
    }
    frame.render_widget(Paragraph::new(shown), area);
}

/// True if the working does not stand in full in a region of this size.
pub(super) fn is_long(model: &Model, working: &Working, (width, height): (u16, u16)) -> bool {
    let begun = !working.view.lines.is_empty();
    begun && unfolded(model, working, (width, height)).len() > usize::from(height)
}

/// Where a page up or down leads, in an area of this size: the first row shown, or `None` for
/// following the last line.
pub(super) fn scrolled(
    model: &Model,
    working: &Working,
    (width, height): (u16, u16),
    up: bool,
) -> Option<usize> {
    let total = unfolded(model, working, (width, height)).len();
    let height = usize::from(height).max(1);
    let bottom = total.saturating_sub(height);
    let page = height.saturating_sub(2).max(1);
    // What is newest may begin above the last rows; then paging down goes on from there.
    let newest = blocks(model, working, (width.into(), height));
    let newest = total.saturating_sub(newest.last().map_or(0, Vec::len));
    let from = working.top.unwrap_or(bottom.min(newest)).min(bottom);
    let top = if up {
        from.saturating_sub(page)
    } else {
        (from + page).min(bottom)
    };
    // Following the last line shows the start of what is newest, which may be long.
    (top < bottom.min(newest) || top > newest).then_some(top)
}

/// The row of the working at which the whole working at the end begins, where a page that follows
/// the last line does not show it in full.
pub(super) fn key_row(
    model: &Model,
    working: &Working,
    (width, height): (u16, u16),
) -> Option<usize> {
    let rows = unfolded(model, working, (width, height));
    let key = summary::key_rows(model, working, width.into());
    let (key, height) = (key.len(), usize::from(height));
    let summary = summary::rows(model, working, (width.into(), height));
    (summary.len() > height).then(|| rows.len() - key)
}

/// Every line in full, with an empty row between lines, as for a region of this size: the summary
/// keeps the order in which it stood there before it was paged through.
fn unfolded(model: &Model, working: &Working, (width, height): (u16, u16)) -> Vec<Line<'static>> {
    let blocks = blocks(model, working, (width.into(), height.into()));
    spaced(blocks)
}

fn spaced(blocks: Vec<Vec<Line<'static>>>) -> Vec<Line<'static>> {
    let mut rows = Vec::new();
    for block in blocks {
        if !rows.is_empty() {
            rows.push(Line::default());
        }
        rows.extend(block);
    }
    rows
}

/// The rows when the last line is followed: as much in full as there is room for, the oldest
/// lines folded to one row first. Gives the rows and the first that is shown.
fn following(model: &Model, working: &Working, area: Rect) -> (Vec<Line<'static>>, usize) {
    let (width, height) = (usize::from(area.width), usize::from(area.height));
    let mut blocks = blocks(model, working, (width, height));
    let mut total: usize = blocks.iter().map(Vec::len).sum();
    if total + blocks.len().saturating_sub(1) <= height {
        return (spaced(blocks), 0);
    }
    let lines = &working.view.lines;
    let foldable = lines.len().saturating_sub(1).min(blocks.len());
    for (block, line) in blocks[..foldable].iter_mut().zip(lines) {
        if total <= height {
            break;
        }
        let folded = folded_block(model, working, line, width);
        total -= block.len() - folded.len();
        *block = folded;
    }
    // How it went stands off the last line.
    if working.finished()
        && total < height
        && let Some(summary) = blocks.last_mut()
    {
        summary.insert(0, Line::default());
    }
    let newest = blocks.last().map_or(0, Vec::len);
    let rows: Vec<Line> = blocks.into_iter().flatten().collect();
    let bottom = rows.len().saturating_sub(height);
    // The start of what is newest matters more than its end.
    let top = bottom.min(rows.len() - newest);
    (rows, top)
}

/// What is left of a line that is folded: a row, and nothing of a choice or an order behind a line of
/// an example.
fn folded_block(
    model: &Model,
    working: &Working,
    line: &LineView,
    width: usize,
) -> Vec<Line<'static>> {
    let of_example = working.view.fading == Fading::Worked && line.number.is_none();
    match of_example && line.sign != Sign::Shown {
        true => Vec::new(),
        false => vec![folded(model, line, width)],
    }
}

/// One block of rows for each line, and one for the summary at the end, of which so many rows are
/// in sight.
fn blocks(
    model: &Model,
    working: &Working,
    (width, room): (usize, usize),
) -> Vec<Vec<Line<'static>>> {
    let mut blocks: Vec<Vec<Line>> = working
        .view
        .lines
        .iter()
        .map(|line| full(model, line, width))
        .collect();
    if blocks.is_empty() {
        blocks.push(empty(model, working, width));
    }
    if working.finished() && !working.view.summary.is_empty() {
        blocks.push(summary::rows(model, working, (width, room)));
    }
    blocks
}

/// What stands here before the first line.
fn empty(model: &Model, working: &Working, width: usize) -> Vec<Line<'static>> {
    let faint = model.theme.faint();
    let word = if model.kept {
        "screen.working.empty"
    } else {
        "screen.working.empty-unsaved"
    };
    let word = model.words.say(word, &[]);
    let mut rows = wrap(model.theme, &word, width, faint);
    if !working.view.caution.is_empty() {
        rows.push(Line::default());
        rows.extend(wrap_text(model.theme, &working.view.caution, width, faint));
    }
    rows
}

/// A line with everything said about it.
fn full(model: &Model, line: &LineView, width: usize) -> Vec<Line<'static>> {
    let mut rows = head(model, line, width);
    rows.extend(reading(model, line, width));
    rows.extend(message(model, line, width));
    for hint in &line.hints {
        rows.extend(one_hint(model, hint, width));
    }
    rows
}

/// What was said last, in so many rows at most: the verdict and the newest hint come first, then
/// as much of the message as there is room for, and the key that leads to the rest.
pub(super) fn latest(
    model: &Model,
    working: &Working,
    width: usize,
    height: usize,
) -> Vec<Line<'static>> {
    let Some(line) = working.view.lines.last() else {
        return Vec::new();
    };
    let whole = full(model, line, width);
    if whole.len() <= height {
        return whole;
    }
    let rows = |height: usize| {
        let mut rows = head(model, line, width);
        let hint = newest_hint(model, line, width);
        let room = height.saturating_sub(rows.len() + hint.len());
        rows.extend(message_in(model, line, width, room));
        rows.extend(hint);
        rows
    };
    let paged = working.top.is_some() || working.pane == Pane::Working;
    let more = match paged || !super::narrow(model.size) {
        true => ["screen.working.more", "screen.working.more.short"],
        false => ["screen.latest.more", "screen.latest.more.short"],
    };
    let [more, short] = more.map(|word| model.words.word(word));
    if height <= ROWS_TO_SAY_MORE.max(least(model, line, width)) {
        let short = format!("{} {short}", model.theme.either(" …", " ..."));
        let short = Span::styled(short, model.theme.hint());
        return with_sign(rows(height), width, height, short);
    }
    let mut rows = clip(model.theme, rows(height - 1), width, height - 1);
    let more = format!("{} {more}", model.theme.either("⋮", ":"));
    rows.push(Line::styled(more, model.theme.hint()));
    rows
}

/// Rows of which more are left out, with this sign behind the last that has room for it.
fn with_sign(
    mut rows: Vec<Line<'static>>,
    width: usize,
    height: usize,
    sign: Span<'static>,
) -> Vec<Line<'static>> {
    let room = |row: &&mut Line| row.width() + sign.width() <= width;
    if rows.len() <= height
        && let Some(row) = rows.iter_mut().rev().find(room)
    {
        row.push_span(sign);
        return rows;
    }
    let height = height.min(rows.len());
    rows.push(Line::default());
    clip_with(rows, width, height, sign)
}

/// The fewest rows in which verdict and newest hint are whole.
pub(super) fn least(model: &Model, line: &LineView, width: usize) -> usize {
    head(model, line, width).len() + newest_hint(model, line, width).len()
}

fn newest_hint(model: &Model, line: &LineView, width: usize) -> Vec<Line<'static>> {
    let hint = line.hints.last();
    hint.map_or_else(Vec::new, |hint| one_hint(model, hint, width))
}

/// How far the rows below a line are moved to the right.
fn inset(width: usize) -> usize {
    if width < 40 { 2 } else { MARGIN }
}

fn message(model: &Model, line: &LineView, width: usize) -> Vec<Line<'static>> {
    let inset = inset(width);
    let said = without_offer(&model.words, &line.message);
    let rows = wrap(
        model.theme,
        &said,
        width.saturating_sub(inset),
        Default::default(),
    );
    indent(inset, rows)
}

/// As many whole sentences of a message as so many rows hold; where they hold none, the beginning
/// of the first.
fn message_in(model: &Model, line: &LineView, width: usize, height: usize) -> Vec<Line<'static>> {
    let whole = message(model, line, width);
    if whole.len() <= height {
        return whole;
    }
    let said = without_offer(&model.words, &line.message);
    let inset = inset(width);
    let room = width.saturating_sub(inset);
    let shown = |part: &Prose| indent(inset, wrap(model.theme, part, room, Default::default()));
    let parts = said.sentences();
    let parts = parts.iter().rev().map(shown);
    let fits = |rows: &Vec<Line>| rows.len() <= height;
    (parts.into_iter().find(fits)).unwrap_or_else(|| clip(model.theme, whole, width, height))
}

fn one_hint(model: &Model, hint: &Prose, width: usize) -> Vec<Line<'static>> {
    let inset = inset(width);
    let mark = Span::styled(model.theme.either("→ ", "> "), model.theme.hint());
    let told = wrap(
        model.theme,
        hint,
        width.saturating_sub(inset + 2),
        Default::default(),
    );
    indent(inset, hang(mark, told))
}

/// A message without the offer of what to do next, which stands at the input once.
fn without_offer(words: &Words, message: &Prose) -> Prose {
    let mut pieces = message.0.clone();
    if let Some(offer) = offer_in(words, message) {
        pieces.truncate(pieces.len() - offer.0.len());
        if pieces.last().is_some_and(|last| last.text == " ") {
            pieces.pop();
        }
    }
    Prose(pieces)
}

/// What to do next, where a line's message ends with it.
pub(super) fn offer_in(words: &Words, message: &Prose) -> Option<Prose> {
    let offers = OFFERS.iter().map(|key| words.say(key, &[]));
    let mut offers = offers.filter(|offer| message.0.ends_with(&offer.0));
    offers.next()
}

/// What the line was an answer to and how it was read, unless that says nothing new.
fn reading(model: &Model, line: &LineView, width: usize) -> Vec<Line<'static>> {
    let bare = |text: &str| text.split_whitespace().collect::<String>();
    let Some(reading) = &line.reading else {
        return Vec::new();
    };
    if bare(reading) == bare(&line.text) {
        return Vec::new();
    }
    let inset = inset(width);
    let rows = wrap_text(
        model.theme,
        reading,
        width.saturating_sub(inset),
        model.theme.faint(),
    );
    indent(inset, rows)
}

/// The row with sign, number, text and verdict, and the caret below.
fn head(model: &Model, line: &LineView, width: usize) -> Vec<Line<'static>> {
    let theme = model.theme;
    let style = text_style(theme, line);
    let room = width.saturating_sub(MARGIN).max(1);
    let text = theme.letters(&line.text);
    let mut rows: Vec<Line> = Vec::new();
    let caret = line
        .caret
        .map(|span| caret_columns(theme, &line.text, span));
    let parts = hard_rows(&text, room);
    let last = parts.len() - 1;
    for (place, (first, part)) in parts.iter().enumerate() {
        let margin = if place == 0 {
            margin(theme, line)
        } else {
            vec![Span::raw(" ".repeat(MARGIN))]
        };
        let mut row = Line::from(margin);
        row.push_span(Span::styled(part.clone(), style));
        let verdict = place == last && add_verdict(model, line, &mut row, width);
        rows.push(row);
        rows.extend(caret.and_then(|caret| {
            caret_row(theme, caret, *first, (place < last).then(|| part.width()))
        }));
        if place == last && !verdict {
            let word = verdict_word(model, line);
            rows.extend(indent(inset(width), vec![Line::from(word)]));
        }
    }
    rows
}

/// A line in one row.
fn folded(model: &Model, line: &LineView, width: usize) -> Line<'static> {
    let word = verdict_word(model, line);
    let room = width.saturating_sub(MARGIN + word.width() + 2);
    let text = cut(model.theme, &model.theme.letters(&line.text), room);
    let mut row = Line::from(margin(model.theme, line));
    row.push_span(Span::styled(text, text_style(model.theme, line)));
    add_verdict(model, line, &mut row, width);
    row
}

fn text_style(theme: Theme, line: &LineView) -> ratatui::style::Style {
    if line.standing && line.sign != Sign::Talk {
        theme.strong()
    } else {
        theme.faint()
    }
}

/// Sign and number.
fn margin(theme: Theme, line: &LineView) -> Vec<Span<'static>> {
    let number = line
        .number
        .map_or_else(String::new, |number| number.to_string());
    vec![
        Span::styled(theme.sign(line.sign), theme.verdict(line.sign)),
        Span::styled(format!(" {number:<3}"), theme.faint()),
    ]
}

fn verdict_word(model: &Model, line: &LineView) -> Span<'static> {
    let mut word = line.verdict.clone();
    if !line.standing {
        if !word.is_empty() {
            word.push_str(", ");
        }
        word.push_str(&model.words.word("screen.line.taken-back"));
    }
    let mut style = model.theme.verdict(line.sign);
    if !line.standing {
        style = style.remove_modifier(Modifier::BOLD);
    }
    Span::styled(model.theme.letters(&word).into_owned(), style)
}

/// Puts the verdict at the right end of a row, and before it, where there is room, what the line
/// was an answer to. False if there is no room.
fn add_verdict(model: &Model, line: &LineView, row: &mut Line<'static>, width: usize) -> bool {
    let word = verdict_word(model, line);
    let Some(gap) = width.checked_sub(row.width() + word.width()) else {
        return false;
    };
    if gap < 2 && word.width() > 0 {
        return false;
    }
    let about = model.theme.letters(&line.about);
    let told = about.width() + ABOUT_GAP;
    let says = line.number.is_some() || !line.hints.is_empty() || line.sign != Sign::Talk;
    if says && !about.is_empty() && told + 2 <= gap {
        let blank = " ".repeat(ABOUT_GAP);
        let about = Span::styled(format!("{blank}{about}"), model.theme.faint());
        row.push_span(about);
        row.push_span(Span::raw(" ".repeat(gap - told)));
    } else {
        row.push_span(Span::raw(" ".repeat(gap)));
    }
    row.push_span(word);
    true
}

/// A text in rows of so many columns, each with the column of the text at which it begins; broken
/// at blanks and operators where that can be.
fn hard_rows(text: &str, width: usize) -> Vec<(usize, String)> {
    let mut rows = vec![(0, String::new())];
    let mut column = 0;
    for part in text.split_inclusive(|c| c == ' ' || OPERATORS.contains(&c)) {
        let whole = Some(part.width()).filter(|wide| *wide <= width);
        for (place, c) in part.chars().enumerate() {
            let wide = c.width().unwrap_or(0);
            // What fits into a row of its own is begun only where it fits whole.
            let needed = whole.filter(|_| place == 0).unwrap_or(wide);
            let full = |(_, row): &(usize, String)| row.width() + needed > width;
            if rows.last().is_some_and(full) {
                rows.push((column, String::new()));
            }
            if let Some((_, row)) = rows.last_mut() {
                row.push(c);
            }
            column += wide;
        }
    }
    rows
}

/// First column and width of a stretch, in the text as it is shown.
fn caret_columns(theme: Theme, text: &str, span: Stretch) -> (usize, usize) {
    let parts = text.get(..span.start).zip(text.get(span.start..span.end));
    match parts {
        Some((before, inside)) if !theme.unicode => (
            theme.letters(before).width(),
            theme.letters(inside).width().max(1),
        ),
        _ => span.columns(text),
    }
}

/// The carets that stand under one row of a text, which begins at column `first` and is so wide;
/// under the last row a caret may stand behind the text, where something is missing.
fn caret_row(
    theme: Theme,
    (start, width): (usize, usize),
    first: usize,
    wide: Option<usize>,
) -> Option<Line<'static>> {
    let from = start.max(first);
    let end = wide.map_or(usize::MAX, |wide| first + wide);
    let count = (start + width)
        .min(end)
        .checked_sub(from)
        .filter(|count| *count > 0)?;
    let mut row = Line::raw(" ".repeat(MARGIN + from - first));
    row.push_span(Span::styled("^".repeat(count), theme.caret()));
    Some(row)
}

#[cfg(test)]
mod tests {
    use super::hard_rows;

    #[test]
    fn a_typed_line_is_broken_at_blanks_and_operators_and_keeps_its_columns() {
        let text = "T = (558.6*2.8*sin 20 + 695.8*4.5*cos 55)/3.195";
        for width in 8..50 {
            let rows = hard_rows(text, width);
            let whole: String = rows.iter().map(|(_, row)| row.as_str()).collect();
            assert_eq!(whole, text, "{width}");
            for ((first, row), (next, _)) in rows.iter().zip(&rows[1..]) {
                assert_eq!(first + row.len(), *next, "{width}");
                let ends = row.ends_with([' ', '*', '+', '(', '/', '=']);
                assert!(ends && row.len() <= width, "{width}: {row}");
            }
        }
    }
}
