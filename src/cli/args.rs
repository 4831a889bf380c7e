//! The arguments.

use clap::{Args, Parser, Subcommand};
use std::path::PathBuf;

/// A tutor for planar statics: it reads each line of your working, says at once whether it holds,
/// and names the thought behind a wrong one.
#[derive(Debug, Parser)]
#[command(
    name = "leverwright",
    version,
    about,
    after_help = "Without a command the practice screen opens.\n\n\
Examples:\n  leverwright\n  leverwright practice mast --seed 7\n  leverwright solve mast --seed 7\n\n\
For learning only: never choose a real rope, hanger, ladder position or lift from it."
)]
pub(super) struct Arguments {
    /// What to do.
    #[command(subcommand)]
    pub(super) command: Option<Command>,
    /// Folder for the records of what was entered
    #[arg(long, global = true, value_name = "DIR")]
    pub(super) saves: Option<PathBuf>,
    /// Folder with more lessons; they add to the built-in ones or override them
    #[arg(long, global = true, value_name = "DIR")]
    pub(super) lessons: Option<PathBuf>,
}

/// What to do.
#[derive(Debug, Subcommand)]
pub(super) enum Command {
    /// Work a problem with the tutor
    Practice(Practice),
    /// Print the full worked key of a problem
    Solve(Solve),
}

/// Which problem to work.
#[derive(Args, Debug, Default)]
#[command(
    after_help = "Examples:\n  leverwright practice\n  leverwright practice mast --seed 7\n  leverwright practice counter --plain"
)]
pub(super) struct Practice {
    /// A lesson by its name, a problem's code, or a problem file; without it, a list to choose from
    pub(super) problem: Option<String>,
    /// Draw the numbers from this seed
    #[arg(long, value_name = "N")]
    pub(super) seed: Option<u64>,
    /// The problem with this code
    #[arg(long, value_name = "CODE", conflicts_with_all = ["problem", "seed"])]
    pub(super) code: Option<String>,
    /// A line dialogue: for screen readers, pipes and small terminals
    #[arg(long)]
    pub(super) plain: bool,
}

/// Which problem to solve.
#[derive(Args, Debug)]
#[command(
    after_help = "Examples:\n  leverwright solve mast --seed 7\n  leverwright solve my-problem.json --json\n  leverwright solve - < my-problem.json"
)]
pub(super) struct Solve {
    /// A problem file, `-` for standard input, a lesson by its name, or a problem's code
    pub(super) problem: String,
    /// Draw a lesson's numbers from this seed
    #[arg(long, value_name = "N")]
    pub(super) seed: Option<u64>,
    /// As JSON, with every value in full
    #[arg(long)]
    pub(super) json: bool,
}
