//! The command line: arguments in, exit codes out. Data go to standard output, talk to standard
//! error. Exit status: 0 done, 1 the input is at fault, 2 wrong use.

mod args;
mod board;
mod desk;
mod json;
mod library;
mod practice;
mod solve;

use crate::text::Words;
use args::{Arguments, Command};
use clap::Parser;
use std::io::Write;
use std::process::ExitCode;

/// Why a command could not do its work.
#[derive(Debug)]
pub(crate) enum Trouble {
    /// The input is at fault: what to say, one paragraph a line.
    Input(Vec<String>),
    /// The command was used wrongly.
    Use(String),
    /// The reader of our output went away; nothing to say.
    OutputClosed,
    /// Output could not be written.
    Output(String),
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
    let arguments = match Arguments::try_parse() {
        Ok(arguments) => arguments,
        Err(error) => {
            // Help and version are data; a wrong use is talk. A closed pipe is no reason to panic.
            let wrong = error.use_stderr();
            let _ = error.print();
            return ExitCode::from(if wrong { 2 } else { 0 });
        }
    };
    let words = Words::english();
    let result = match &arguments.command {
        None => practice::run(&arguments, &args::Practice::default(), &words),
        Some(Command::Practice(wishes)) => practice::run(&arguments, wishes, &words),
        Some(Command::Solve(wishes)) => solve::run(&arguments, wishes, &words),
    };
    let mut talk = std::io::stderr().lock();
    match result {
        Ok(()) | Err(Trouble::OutputClosed) => ExitCode::SUCCESS,
        Err(Trouble::Input(lines)) => {
            for line in lines {
                let _ = writeln!(talk, "{line}");
            }
            ExitCode::from(1)
        }
        Err(Trouble::Output(system)) => {
            let _ = writeln!(
                talk,
                "{}",
                words.say("cli.output", &[("system", crate::text::Slot::Word(system))])
            );
            ExitCode::from(1)
        }
        Err(Trouble::Use(line)) => {
            let _ = writeln!(talk, "{line}");
            ExitCode::from(2)
        }
    }
}
