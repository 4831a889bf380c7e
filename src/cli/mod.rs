//! The command line: arguments in, exit codes out. Data go to standard output, talk to standard
//! error. Exit status: 0 done, 1 the input is at fault or something could not be written or saved,
//! 2 wrong use.

mod args;
mod board;
mod check;
mod class;
mod desk;
mod diagnose;
mod general;
mod help;
mod json;
mod language;
mod library;
mod practice;
mod solve;

use crate::lesson::Fault;
use crate::text::{Manner, Settings, Slot, Words};
use args::{Arguments, Command};
use clap::FromArgMatches;
use clap::error::{ContextKind, ContextValue, ErrorKind};
use std::io::{Write, stdout};
use std::process::ExitCode;

/// Why a command could not do its work.
#[derive(Debug)]
pub(crate) enum Trouble {
    /// The input is at fault: what to say, one paragraph a line.
    Input(Vec<String>),
    /// A file is at fault: what it is called, and every fault.
    File(String, Vec<Fault>),
    /// The command was used wrongly.
    Use(String),
    /// The reader of our output went away; nothing to say.
    OutputClosed,
    /// Output could not be written.
    Output(String),
    /// Not everything that was entered is kept; the learner was told.
    Unsaved,
}

impl From<std::io::Error> for Trouble {
    fn from(error: std::io::Error) -> Trouble {
        match error.kind() {
            std::io::ErrorKind::BrokenPipe => Trouble::OutputClosed,
            _ => Trouble::Output(error.to_string()),
        }
    }
}

/// Runs the program on the process's arguments.
pub fn main() -> ExitCode {
    let mut words = Words::of(language::of_surroundings());
    let typed: Vec<std::ffi::OsString> = std::env::args_os().collect();
    let helped = help::asked(&typed).map_or_else(|| words.clone(), Words::of);
    let read = help::command(&helped).try_get_matches_from(&typed);
    let result = match read.and_then(|found| Arguments::from_arg_matches(&found)) {
        Ok(arguments) => {
            words = arguments.language.map_or(words, Words::of);
            run(&arguments, &words)
        }
        Err(error) if error.use_stderr() => {
            let _ = error.print();
            if let Some(line) = meant_practice(&error, &words) {
                let _ = writeln!(std::io::stderr(), "{line}");
            }
            return ExitCode::from(2);
        }
        // Help and version are data, and must arrive like any other.
        Err(error) => error
            .print()
            .and_then(|()| stdout().flush())
            .map_err(Trouble::from),
    };
    ended(result, &words)
}

fn run(arguments: &Arguments, words: &Words) -> Result<(), Trouble> {
    let way = arguments.way;
    match &arguments.command {
        None => practice::run(arguments, &args::Practice::default(), words),
        Some(Command::Practice(wishes)) => practice::run(arguments, wishes, words),
        Some(_) if way.plain || way.seed.is_some() => {
            let key = if way.plain {
                "cli.plain-elsewhere"
            } else {
                "cli.seed-before"
            };
            Err(Trouble::Use(words.word(key)))
        }
        Some(Command::Solve(wishes)) => solve::run(arguments, wishes, words),
        Some(Command::Diagnose(wishes)) => diagnose::run(arguments, wishes, words),
        Some(Command::Check(wishes)) => check::run(arguments, wishes, words),
    }
}

/// A text that is printed to be read, with the figures of its language.
fn shown(text: &str, words: &Words) -> String {
    Manner::of(Settings::default(), words).text(text)
}

/// What to say to somebody who gave a lesson, a code or a file in the place of a command.
fn meant_practice(error: &clap::Error, words: &Words) -> Option<String> {
    if error.kind() != ErrorKind::InvalidSubcommand {
        return None;
    }
    let Some(ContextValue::String(typed)) = error.get(ContextKind::InvalidSubcommand) else {
        return None;
    };
    let name = crate::text::printable(typed);
    if !library::may_be_problem(typed) {
        return None;
    }
    let slots = [("name", Slot::Value(name))];
    Some(words.say("cli.meant-practice", &slots).to_string())
}

/// The exit status, and what is said on standard error.
fn ended(result: Result<(), Trouble>, words: &Words) -> ExitCode {
    let mut talk = std::io::stderr().lock();
    match result {
        Ok(()) | Err(Trouble::OutputClosed) => ExitCode::SUCCESS,
        Err(Trouble::Input(lines)) => {
            for line in lines {
                let _ = writeln!(talk, "{line}");
            }
            ExitCode::from(1)
        }
        Err(Trouble::File(name, faults)) => {
            for line in library::told(&name, &faults) {
                let _ = writeln!(talk, "{line}");
            }
            ExitCode::from(1)
        }
        Err(Trouble::Output(system)) => {
            let _ = writeln!(
                talk,
                "{}",
                words.say("cli.output", &[("system", Slot::Word(system))])
            );
            ExitCode::from(1)
        }
        Err(Trouble::Unsaved) => ExitCode::from(1),
        Err(Trouble::Use(line)) => {
            let _ = writeln!(talk, "{line}");
            ExitCode::from(2)
        }
    }
}
