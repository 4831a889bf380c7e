//! The key table: the one place that says what a key does. The help page is printed from it.

use super::message::Message;
use ratatui::crossterm::event::{KeyCode, KeyEvent, KeyEventKind, KeyModifiers};

/// What a key asks for. What it means depends on the page that is shown.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Command {
    /// Enter the line, open the lesson, leave after the word.
    Enter,
    /// An older line of one's own; the choice above.
    Up,
    /// A newer line of one's own; the choice below.
    Down,
    /// One character back.
    Left,
    /// One character forth.
    Right,
    /// One word back.
    WordLeft,
    /// One word forth.
    WordRight,
    /// To the start of the line.
    LineStart,
    /// To the end of the line.
    LineEnd,
    /// Delete before the caret.
    Backspace,
    /// Delete at the caret; in the list, put the unfinished problem away.
    Delete,
    /// Delete the word before the caret.
    CutWord,
    /// Delete everything before the caret.
    CutBefore,
    /// Delete everything after the caret.
    CutAfter,
    /// Put in what was cut last.
    PutBack,
    /// Take the last change of the line back.
    Undo,
    /// Older working.
    PageUp,
    /// Newer working.
    PageDown,
    /// Diagram or working.
    Swap,
    /// The help page.
    Help,
    /// The stage of the diagram before.
    StageBack,
    /// The stage of the diagram after.
    StageForth,
    /// Fold or unfold the statement.
    Statement,
    /// The list of lessons.
    Lessons,
    /// The whole working another way.
    Other,
    /// The pivot, on the drawing.
    Pivot,
    /// Who is at work.
    Name,
    /// What is chosen for the display.
    Settings,
    /// Leave, after a word.
    Leave,
    /// Draw the whole screen anew.
    Redraw,
    /// Stop, as a shell's jobs are stopped, until it goes on.
    Suspend,
}

/// A key with what is held down.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
struct Chord {
    code: KeyCode,
    held: KeyModifiers,
}

/// A row of the key table.
pub(super) struct Binding {
    /// What it asks for.
    pub(super) command: Command,
    /// The keys as they are told.
    pub(super) shown: &'static str,
    /// The key of the words that tell what it does.
    pub(super) told: &'static str,
    /// The keys themselves.
    chords: &'static [Chord],
}

const fn bare(code: KeyCode) -> Chord {
    Chord {
        code,
        held: KeyModifiers::NONE,
    }
}

const fn control(code: KeyCode) -> Chord {
    Chord {
        code,
        held: KeyModifiers::CONTROL,
    }
}

const fn alt(code: KeyCode) -> Chord {
    Chord {
        code,
        held: KeyModifiers::ALT,
    }
}

const fn row(
    command: Command,
    shown: &'static str,
    told: &'static str,
    chords: &'static [Chord],
) -> Binding {
    Binding {
        command,
        shown,
        told,
        chords,
    }
}

/// Every key that does something, in the order in which help tells them.
pub(super) const TABLE: &[Binding] = &[
    row(
        Command::Enter,
        "Enter",
        "screen.key.enter",
        &[bare(KeyCode::Enter)],
    ),
    row(
        Command::Swap,
        "Tab",
        "screen.key.swap",
        &[bare(KeyCode::Tab), bare(KeyCode::BackTab)],
    ),
    row(
        Command::PageUp,
        "Page Up",
        "screen.key.page-up",
        &[bare(KeyCode::PageUp)],
    ),
    row(
        Command::PageDown,
        "Page Down",
        "screen.key.page-down",
        &[bare(KeyCode::PageDown)],
    ),
    row(
        Command::Help,
        "F1, or ? and Enter",
        "screen.key.help",
        &[bare(KeyCode::F(1))],
    ),
    row(
        Command::StageBack,
        "F2, Ctrl-Left",
        "screen.key.stage-back",
        &[bare(KeyCode::F(2)), control(KeyCode::Left)],
    ),
    row(
        Command::StageForth,
        "F3, Ctrl-Right",
        "screen.key.stage-forth",
        &[bare(KeyCode::F(3)), control(KeyCode::Right)],
    ),
    row(
        Command::Statement,
        "F4",
        "screen.key.statement",
        &[bare(KeyCode::F(4))],
    ),
    row(
        Command::Lessons,
        "F5",
        "screen.key.lessons",
        &[bare(KeyCode::F(5))],
    ),
    row(
        Command::Other,
        "F6",
        "screen.key.other",
        &[bare(KeyCode::F(6))],
    ),
    row(
        Command::Pivot,
        "F7",
        "screen.key.pivot",
        &[bare(KeyCode::F(7))],
    ),
    row(
        Command::Name,
        "F8",
        "screen.key.name",
        &[bare(KeyCode::F(8))],
    ),
    row(
        Command::Settings,
        "F9",
        "screen.key.settings",
        &[bare(KeyCode::F(9))],
    ),
    row(
        Command::Leave,
        "Esc, Ctrl-C",
        "screen.key.leave",
        &[bare(KeyCode::Esc), control(KeyCode::Char('c'))],
    ),
    row(
        Command::Redraw,
        "Ctrl-L",
        "screen.key.redraw",
        &[control(KeyCode::Char('l'))],
    ),
    row(
        Command::Suspend,
        "Ctrl-Z",
        "screen.key.suspend",
        &[control(KeyCode::Char('z'))],
    ),
    row(Command::Up, "Up", "screen.key.up", &[bare(KeyCode::Up)]),
    row(
        Command::Down,
        "Down",
        "screen.key.down",
        &[bare(KeyCode::Down)],
    ),
    row(
        Command::Left,
        "Left",
        "screen.key.left",
        &[bare(KeyCode::Left), control(KeyCode::Char('b'))],
    ),
    row(
        Command::Right,
        "Right",
        "screen.key.right",
        &[bare(KeyCode::Right), control(KeyCode::Char('f'))],
    ),
    row(
        Command::WordLeft,
        "Alt-Left",
        "screen.key.word-left",
        &[alt(KeyCode::Left), alt(KeyCode::Char('b'))],
    ),
    row(
        Command::WordRight,
        "Alt-Right",
        "screen.key.word-right",
        &[alt(KeyCode::Right), alt(KeyCode::Char('f'))],
    ),
    row(
        Command::LineStart,
        "Home, Ctrl-A",
        "screen.key.line-start",
        &[bare(KeyCode::Home), control(KeyCode::Char('a'))],
    ),
    row(
        Command::LineEnd,
        "End, Ctrl-E",
        "screen.key.line-end",
        &[bare(KeyCode::End), control(KeyCode::Char('e'))],
    ),
    row(
        Command::Backspace,
        "Backspace",
        "screen.key.backspace",
        &[bare(KeyCode::Backspace), control(KeyCode::Char('h'))],
    ),
    row(
        Command::Delete,
        "Delete",
        "screen.key.delete",
        &[bare(KeyCode::Delete)],
    ),
    row(
        Command::CutWord,
        "Ctrl-W",
        "screen.key.cut-word",
        &[control(KeyCode::Char('w')), alt(KeyCode::Backspace)],
    ),
    row(
        Command::CutBefore,
        "Ctrl-U",
        "screen.key.cut-before",
        &[control(KeyCode::Char('u'))],
    ),
    row(
        Command::CutAfter,
        "Ctrl-K",
        "screen.key.cut-after",
        &[control(KeyCode::Char('k'))],
    ),
    row(
        Command::PutBack,
        "Ctrl-Y",
        "screen.key.put-back",
        &[control(KeyCode::Char('y'))],
    ),
    row(
        Command::Undo,
        "Ctrl-_, Ctrl-/",
        "screen.key.undo",
        // Most terminals send one byte for both, which is read as Ctrl-7.
        &[
            control(KeyCode::Char('_')),
            control(KeyCode::Char('/')),
            control(KeyCode::Char('7')),
        ],
    ),
];

/// The keys that do something at the list of lessons, and the key of the words that tell what.
pub(super) const AT_LIST: &[(Command, &str)] = &[
    (Command::Enter, "screen.key.list.enter"),
    (Command::Up, "screen.key.list.up"),
    (Command::Down, "screen.key.list.down"),
    (Command::Swap, "screen.key.list.fade"),
    (Command::LineStart, "screen.key.list.first"),
    (Command::LineEnd, "screen.key.list.last"),
    (Command::Delete, "screen.key.list.delete"),
    (Command::Other, "screen.key.list.again"),
    (Command::Name, "screen.key.list.name"),
    (Command::Settings, "screen.key.settings"),
    (Command::Help, "screen.key.help"),
    (Command::Leave, "screen.key.leave"),
];

/// The same while a problem of one's own is built.
pub(super) const AT_BUILDING: &[(Command, &str)] = &[
    (Command::Enter, "screen.key.build.enter"),
    (Command::StageBack, "screen.key.build.back"),
    (Command::Up, "screen.key.list.up"),
    (Command::Down, "screen.key.list.down"),
    (Command::PageUp, "screen.key.build.page-up"),
    (Command::PageDown, "screen.key.build.page-down"),
    (Command::Lessons, "screen.key.build.lessons"),
    (Command::Settings, "screen.key.settings"),
    (Command::Help, "screen.key.help"),
    (Command::Leave, "screen.key.leave"),
];

/// The same at the list of problems that were worked at before.
pub(super) const AT_EARLIER: &[(Command, &str)] = &[
    (Command::Enter, "screen.key.again.look"),
    (Command::Up, "screen.key.list.up"),
    (Command::Down, "screen.key.list.down"),
    (Command::LineStart, "screen.key.list.first"),
    (Command::LineEnd, "screen.key.list.last"),
    (Command::Lessons, "screen.key.lessons"),
    (Command::Settings, "screen.key.settings"),
    (Command::Help, "screen.key.help"),
    (Command::Leave, "screen.key.leave"),
];

/// The same while one of them is looked at.
pub(super) const AT_REPLAY: &[(Command, &str)] = &[
    (Command::Right, "screen.key.again.next"),
    (Command::Left, "screen.key.again.before"),
    (Command::LineStart, "screen.key.again.first"),
    (Command::LineEnd, "screen.key.again.last"),
    (Command::Swap, "screen.key.swap"),
    (Command::PageUp, "screen.key.page-up"),
    (Command::PageDown, "screen.key.page-down"),
    (Command::StageBack, "screen.key.stage-back"),
    (Command::StageForth, "screen.key.stage-forth"),
    (Command::Statement, "screen.key.statement"),
    (Command::Other, "screen.key.other"),
    (Command::Lessons, "screen.key.again.list"),
    (Command::Settings, "screen.key.settings"),
    (Command::Help, "screen.key.help"),
    (Command::Leave, "screen.key.leave"),
];

/// The message of a key, if it has one. Held shift does not count; control and alt together are
/// how some keyboards type a character.
pub(super) fn message(key: KeyEvent) -> Option<Message> {
    if key.kind == KeyEventKind::Release {
        return None;
    }
    let held = key.modifiers & (KeyModifiers::CONTROL | KeyModifiers::ALT);
    let code = match key.code {
        KeyCode::Char(c) if held == KeyModifiers::CONTROL => KeyCode::Char(c.to_ascii_lowercase()),
        code => code,
    };
    let chord = Chord { code, held };
    if let Some(binding) = TABLE.iter().find(|row| row.chords.contains(&chord)) {
        return Some(Message::Pressed(binding.command));
    }
    match code {
        KeyCode::Char(c) if held.is_empty() || held.bits().count_ones() == 2 => {
            Some(Message::Typed(c))
        }
        _ => None,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn no_key_does_two_things() {
        let chords: Vec<Chord> = TABLE.iter().flat_map(|row| row.chords).copied().collect();
        for (place, chord) in chords.iter().enumerate() {
            assert!(!chords[..place].contains(chord), "{chord:?}");
        }
    }

    #[test]
    fn characters_are_typed_and_chords_are_not() {
        let message = |code, held| message(KeyEvent::new(code, held));
        let (none, ctrl, alt) = (KeyModifiers::NONE, KeyModifiers::CONTROL, KeyModifiers::ALT);
        assert!(matches!(
            message(KeyCode::Char('A'), KeyModifiers::SHIFT),
            Some(Message::Typed('A'))
        ));
        assert!(matches!(
            message(KeyCode::Char('{'), ctrl | alt),
            Some(Message::Typed('{'))
        ));
        assert!(matches!(
            message(KeyCode::Char('C'), ctrl),
            Some(Message::Pressed(Command::Leave))
        ));
        assert!(message(KeyCode::Char('x'), ctrl).is_none());
        assert!(matches!(
            message(KeyCode::Left, none),
            Some(Message::Pressed(Command::Left))
        ));
    }
}
