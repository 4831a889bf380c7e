//! Practice: the screen, or the line dialogue where there is no terminal.

use super::Trouble;
use super::args::{Arguments, Practice};
use super::desk::JournalDesk;
use super::library::{Library, fresh_seed};
use crate::practice::Start;
use crate::screen;
use crate::store::{Wishes, data_folder, saves_folder};
use crate::text::Words;
use std::io::{IsTerminal, stdin, stdout};

/// Opens the practice.
pub(super) fn run(arguments: &Arguments, wishes: &Practice, words: &Words) -> Result<(), Trouble> {
    let library = Library::open(arguments.lessons.as_deref(), words);
    for fault in &library.faults {
        use std::io::Write;
        let _ = writeln!(std::io::stderr(), "{fault}");
    }
    let found = match (&wishes.code, &wishes.problem) {
        (Some(code), _) => Some(library.by_code(code, words)?),
        (None, Some(name)) => {
            let seed = wishes.seed.unwrap_or_else(fresh_seed);
            Some(library.find(name, Some(seed), words)?)
        }
        (None, None) if wishes.seed.is_some() => {
            return Err(Trouble::Use(words.word("cli.seed-alone")));
        }
        (None, None) => None,
    };
    let started_in = std::env::current_dir().unwrap_or_default();
    let variable = std::env::var_os("LEVERWRIGHT_SAVES");
    let data = data_folder();
    let saves = saves_folder(&Wishes {
        option: arguments.saves.as_deref(),
        variable: variable.as_deref(),
        started_in: &started_in,
        data_folder: data.as_deref(),
    });
    let mut desk = JournalDesk::open(library, &saves, words);
    let start = match found {
        Some(found) => Start::Problem(
            desk.opening(found)
                .map_err(|prose| Trouble::Input(vec![prose.to_string()]))?,
        ),
        None => Start::Menu,
    };
    let no_screen = std::env::var_os("TERM").is_some_and(|term| term == "dumb");
    if wishes.plain || no_screen || !stdout().is_terminal() || !stdin().is_terminal() {
        let echo = !stdin().is_terminal();
        let notes = desk.take_notes();
        crate::plain::run(
            &mut desk,
            start,
            notes,
            words,
            echo,
            &mut stdin().lock(),
            &mut stdout().lock(),
        )?;
        return Ok(());
    }
    screen::run(&mut desk, start)
        .map_err(|trouble| Trouble::Input(vec![trouble.told(words).to_string()]))
}
