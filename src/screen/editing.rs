//! The line being typed: changes to it, and what was before them.

use super::keys::Command;
use super::model::Working;
use crate::text::printable;
use tui_input::{Input, InputRequest};

/// The most characters the input takes: twice what the reader does, so that the reader says when
/// a line is too long.
pub(super) const LONGEST_INPUT: usize = 1000;
/// So many changes can be undone.
const MOST_UNDONE: usize = 200;

/// The line before a change.
pub(super) struct Before {
    line: String,
    caret: usize,
    /// Where the caret stood after it, if the change was typing: what is typed on there belongs to
    /// the same change.
    typed_to: Option<usize>,
}

impl Before {
    fn of(working: &Working) -> Before {
        Before {
            line: working.input.value().to_owned(),
            caret: working.input.cursor(),
            typed_to: None,
        }
    }
}

/// How a key edits a line; `None` for a key that does not.
pub(super) fn request(command: Command) -> Option<InputRequest> {
    Some(match command {
        Command::Left => InputRequest::GoToPrevChar,
        Command::Right => InputRequest::GoToNextChar,
        Command::WordLeft => InputRequest::GoToPrevWord,
        Command::WordRight => InputRequest::GoToNextWord,
        Command::LineStart => InputRequest::GoToStart,
        Command::LineEnd => InputRequest::GoToEnd,
        Command::Backspace => InputRequest::DeletePrevChar,
        Command::Delete => InputRequest::DeleteNextChar,
        Command::CutWord => InputRequest::DeletePrevWord,
        Command::CutBefore => InputRequest::DeleteFromStart,
        Command::CutAfter => InputRequest::DeleteTillEnd,
        Command::PutBack => InputRequest::Yank,
        _ => return None,
    })
}

/// Edits the line, and reads it anew.
pub(super) fn edit(working: &mut Working, request: InputRequest) {
    let before = Before::of(working);
    // Where nothing is cut, what was cut before is kept.
    let at_end = before.caret == before.line.chars().count();
    if request == InputRequest::DeleteTillEnd && at_end {
        return;
    }
    let changed = working.input.handle(request);
    if !changed.is_some_and(|changed| changed.value) {
        return;
    }
    if working.input.value().chars().count() > LONGEST_INPUT {
        restore(working, before);
        return;
    }
    remember(working, before);
    working.recalled = None;
    working.read();
}

/// Puts a text in at the caret. False if it did not fit.
pub(super) fn insert(working: &mut Working, text: &str) -> bool {
    let mut before = Before::of(working);
    let (input, fits) = inserted(&working.input, text, LONGEST_INPUT);
    let caret = input.cursor();
    if input.value() != before.line {
        let last = working.changes.last_mut();
        let on = last.filter(|last| last.typed_to == Some(before.caret));
        match on.filter(|_| !text.starts_with([' ', '\t'])) {
            Some(last) => last.typed_to = Some(caret),
            None => {
                before.typed_to = Some(caret);
                remember(working, before);
            }
        }
    }
    working.input = input;
    working.recalled = None;
    working.read();
    fits
}

/// A line with a text put in at its caret, without what could steer the terminal, and whether it
/// fitted into so many characters.
pub(super) fn inserted(input: &Input, text: &str, longest: usize) -> (Input, bool) {
    let kept: String = text
        .chars()
        .map(|c| if c == '\t' { ' ' } else { c })
        .filter(|c| !c.is_control())
        .collect();
    let kept = printable(&kept);
    let room = longest.saturating_sub(input.value().chars().count());
    let fits = kept.chars().count() <= room;
    let (value, cursor) = (input.value(), input.cursor());
    let mut line: String = value.chars().take(cursor).collect();
    line.extend(kept.chars().take(room));
    let caret = line.chars().count();
    line.extend(value.chars().skip(cursor));
    (input.clone().with_value(line).with_cursor(caret), fits)
}

/// Takes the last change back: a word that was typed, or one edit.
pub(super) fn undo(working: &mut Working) {
    if let Some(before) = working.changes.pop() {
        restore(working, before);
        working.recalled = None;
        working.read();
    }
}

/// Keeps the line as it is, before another takes its place.
pub(super) fn keep_line(working: &mut Working) {
    let before = Before::of(working);
    remember(working, before);
}

fn restore(working: &mut Working, before: Before) {
    let input = working.input.clone().with_value(before.line);
    working.input = input.with_cursor(before.caret);
}

fn remember(working: &mut Working, before: Before) {
    if working.changes.len() == MOST_UNDONE {
        working.changes.remove(0);
    }
    working.changes.push(before);
}
