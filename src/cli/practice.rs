//! Practice: the screen, or the line dialogue where there is no terminal.

use super::Trouble;
use super::args::{Arguments, Practice};
use super::class;
use super::desk::JournalDesk;
use super::library::{Any, Library, fresh_seed};
use crate::practice::{Desk, Start, taken};
use crate::screen;
use crate::session::Fading;
use crate::statics;
use crate::text::{Slot, Words, printable};
use crate::working::why_unsolvable;
use std::io::{IsTerminal, stdin, stdout};

/// Opens the practice.
pub(super) fn run(arguments: &Arguments, wishes: &Practice, words: &Words) -> Result<(), Trouble> {
    let plain = wishes.way.plain || arguments.way.plain;
    let seed = wishes.way.seed.or(arguments.way.seed);
    if seed.is_some() && wishes.code.is_some() {
        let code = wishes.code.as_deref().unwrap_or_default();
        let slots = [("name", Slot::Value(printable(code)))];
        return Err(Trouble::Use(
            words.say("cli.seed-useless", &slots).to_string(),
        ));
    }
    let fading = match (wishes.worked, wishes.last) {
        (true, _) => Fading::Worked,
        (false, Some(count)) => Fading::Last(count.map(usize::from)),
        (false, None) => Fading::All,
    };
    let no_problem = wishes.code.is_none() && wishes.problem.is_none();
    if no_problem && fading != Fading::All {
        return Err(Trouble::Use(words.word("cli.fade-useless")));
    }
    let class = class::found(arguments, words)?;
    let mut library = Library::open(arguments.lessons.as_deref(), class, words);
    for fault in &library.faults {
        use std::io::Write;
        let _ = writeln!(std::io::stderr(), "{fault}");
    }
    let found = match (&wishes.code, &wishes.problem) {
        (Some(code), _) => Some(Any::Guided(Box::new(library.by_code(code, words)?))),
        (None, Some(name)) => Some(library.find_any(name, seed, fresh_seed(), words)?),
        (None, None) => None,
    };
    // What cannot stand in balance is refused before anything is shown or written, in the words of
    // `solve`; of bodies in general their working tells it.
    if let Some(Any::Guided(found)) = &found {
        statics::solve(&found.problem, &found.problem.values())
            .map_err(|trouble| Trouble::Input(vec![why_unsolvable(&trouble, words)]))?;
    }
    let saves = class::saves_of(arguments);
    let mut desk = JournalDesk::open(library, &saves, words, arguments.language);
    // The seed of a problem that was asked for is used: fresh ones are drawn behind it.
    let used = u64::from(found.is_some());
    desk.draw_from(seed.map(|seed| seed.wrapping_add(used)));
    let start = match found {
        // The very problem that was left is gone on with.
        Some(found) => {
            let opening = match found {
                Any::Guided(found) => match desk.left(&found) {
                    Some(opening) => opening,
                    None => desk.opening_found(*found),
                },
                Any::General(system) => desk.opening_general(&system),
            };
            let opening = opening.map_err(|prose| Trouble::Input(vec![prose.to_string()]))?;
            Start::Problem(taken(opening, fading, &desk.words()))
        }
        None => Start::Menu,
    };
    let no_screen = std::env::var_os("TERM").is_some_and(|term| term == "dumb");
    if plain || no_screen || !stdout().is_terminal() || !stdin().is_terminal() {
        let echo = !stdin().is_terminal();
        let notes = desk.take_notes();
        crate::plain::run(
            &mut desk,
            start,
            notes,
            echo,
            &mut stdin().lock(),
            &mut stdout().lock(),
        )?;
    } else {
        screen::run(&mut desk, start)
            .map_err(|trouble| Trouble::Input(vec![trouble.told(words).to_string()]))?;
    }
    if desk.has_kept_all() {
        Ok(())
    } else {
        Err(Trouble::Unsaved)
    }
}
