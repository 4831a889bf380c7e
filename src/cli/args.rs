//! The arguments.

use crate::text::Language;
use clap::{Args, Parser, Subcommand};
use std::path::PathBuf;

/// A tutor for planar statics: it reads each line of your working, says at once whether it holds,
/// and names the thought behind a wrong one.
#[derive(Debug, Parser)]
#[command(
    name = "leverwright",
    version,
    about = "A tutor for forces on beams: it sets a problem, reads each line of your working, says \
at once whether it holds, and names the thought behind a wrong one.",
    after_help = "Without a command, practice opens at the list of lessons.\n\n\
Examples:
  leverwright                          choose a lesson and work at it
  leverwright --plain                  the same as lines of text, for screen readers
  leverwright --language de            the same in German
  leverwright practice mast --seed 7   the problem with number 7 of the lesson mast
  leverwright solve mast --seed 7      the same problem, worked from beginning to end
  leverwright diagnose mast --seed 7 --step T --answer \"231 N\"
                                       which thoughts may have led to this answer
  leverwright check my-lesson.json     what is wrong in a file that you wrote
  leverwright help practice            every option of a command

For learning only: never choose a real rope, hanger, ladder position or lift from it."
)]
pub(super) struct Arguments {
    /// What to do.
    #[command(subcommand)]
    pub(super) command: Option<Command>,
    #[command(flatten)]
    pub(super) way: Way,
    /// Keep what you enter in this folder, and carry on with what was left there; without it, in
    /// the folder named by the environment variable LEVERWRIGHT_SAVES, else in your data folder
    #[arg(long, global = true, value_name = "FOLDER")]
    pub(super) saves: Option<PathBuf>,
    /// Use the lesson files (*.json) of this folder too; one with the name of a built-in lesson
    /// takes its place
    #[arg(long, global = true, value_name = "FOLDER")]
    pub(super) lessons: Option<PathBuf>,
    /// The class profile: the file in which a teacher sets g, figures, units and the display for a
    /// class; without it, the one named by the environment variable LEVERWRIGHT_CLASS, else a
    /// class.json in the folder of the lessons or of the saves
    #[arg(long, global = true, value_name = "FILE")]
    pub(super) class: Option<PathBuf>,
    /// The language: en (English) or de (German); without it, the one chosen in the settings of
    /// practice, else the one named by the environment variable LEVERWRIGHT_LANGUAGE, else that of
    /// the system (LC_ALL, LC_MESSAGES, LANG), else English
    #[arg(long, global = true, value_name = "LANGUAGE", value_parser = language)]
    pub(super) language: Option<Language>,
}

/// What to do.
#[derive(Debug, Subcommand)]
pub(super) enum Command {
    /// Work at a problem, line by line, with the tutor
    Practice(Practice),
    /// Print a problem worked from beginning to end, with diagrams
    Solve(Solve),
    /// Tell which thoughts may have led to an answer, or to each line of a working
    Diagnose(Diagnose),
    /// Find every fault of lesson and problem files
    Check(Check),
}

/// How practice goes.
#[derive(Args, Clone, Copy, Debug, Default)]
pub(super) struct Way {
    /// Draw the numbers of the lesson from this whole number (0 or more): the same number gives
    /// the same problem on every computer; without it, each problem is a new one
    #[arg(long, value_name = "NUMBER", value_parser = seed, allow_negative_numbers = true)]
    pub(super) seed: Option<u64>,
    /// Talk in plain lines of text in place of the full screen: for screen readers, for input
    /// from a file, and for small terminals
    #[arg(long)]
    pub(super) plain: bool,
}

/// Which problem to work.
#[derive(Args, Debug, Default)]
#[command(after_help = "Examples:
  leverwright practice                   choose from the list of lessons
  leverwright practice mast --seed 7     the problem with number 7 of the lesson mast
  leverwright practice my-problem.json   a problem that you wrote
  leverwright practice counter --plain   as lines of text
  leverwright practice mast --worked     worked line by line first, with a reason asked at each
  leverwright practice mast --last 3     the last three steps yours, the others shown")]
pub(super) struct Practice {
    /// The name of a lesson (counter, walkway, mast), the code printed with a problem, or a
    /// lesson or problem file; without it, a list to choose from
    pub(super) problem: Option<String>,
    #[command(flatten)]
    pub(super) way: Way,
    /// The problem with this code, as `solve` prints it
    #[arg(long, value_name = "CODE", conflicts_with_all = ["problem", "seed"])]
    pub(super) code: Option<String>,
    /// Show the problem worked, line by line, and choose the reason of each
    #[arg(long, conflicts_with = "last")]
    pub(super) worked: bool,
    /// Show the first steps of the problem, and do so many last ones; without a number, those from
    /// the balance of moments on
    #[arg(long, value_name = "STEPS", num_args = 0..=1, value_parser = clap::value_parser!(u8).range(1..))]
    pub(super) last: Option<Option<u8>>,
}

/// Which problem to solve.
#[derive(Args, Debug)]
#[command(after_help = "Examples:
  leverwright solve mast --seed 7          the problem with number 7 of the lesson mast
  leverwright solve my-problem.json        a problem that you wrote
  leverwright solve - < my-problem.json    the same, from standard input
  leverwright solve mast --json            for another program
  leverwright solve mast --seed 7 --method coordinates --pivot tip")]
pub(super) struct Solve {
    /// The name of a lesson (counter, walkway, mast), the code printed with a problem, a lesson or
    /// problem file, or `-` for such a file on standard input
    pub(super) problem: String,
    /// Draw the numbers of the lesson from this whole number (0 or more); without it, from 1
    #[arg(long, value_name = "NUMBER", value_parser = seed, allow_negative_numbers = true)]
    pub(super) seed: Option<u64>,
    /// Print JSON for other programs: every value in full, in SI units, angles in degrees
    #[arg(long)]
    pub(super) json: bool,
    /// How moments are worked out: a force's part across the body times the distance along it
    /// (components), a force times the perpendicular distance of its line (arms),
    /// x·Fy - y·Fx (coordinates); or no moments at all but the triangle of three forces whose
    /// lines meet in one point (triangle)
    #[arg(long, value_enum, value_name = "METHOD")]
    pub(super) method: Option<MethodName>,
    /// About which point: `foot`, `middle` or `tip` of the first body, or what acts there, by its
    /// name or symbol; without it, the point that removes most unknowns
    #[arg(long, value_name = "POINT")]
    pub(super) pivot: Option<String>,
}

/// The methods by their names.
#[derive(clap::ValueEnum, Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum MethodName {
    /// Components across the body
    Components,
    /// Lever arms
    Arms,
    /// Coordinates
    Coordinates,
    /// The triangle of forces
    Triangle,
}

/// What to diagnose.
#[derive(Args, Debug)]
#[command(
    group = clap::ArgGroup::new("what").required(true).args(["answer", "working"]),
    after_help = "Examples:
  leverwright diagnose mast --seed 7 --answer \"231 N\"            the pull of the rope, off a sheet
  leverwright diagnose mast --seed 7 --step Hy --answer 412         another quantity, by its symbol
  leverwright diagnose mast --seed 7 --step T --answer \"96*2.7/4\"  a form says more than a number
  leverwright diagnose mast --seed 7 --working lines.txt            each line of a whole working
  leverwright diagnose mast --seed 7 --working - --json             for another program

At most three thoughts are told, likeliest first, with what speaks for each; then what is left for
another thing altogether, and what to ask the learner next. The right formula stands in what is
printed: it is meant for a teacher."
)]
pub(super) struct Diagnose {
    /// The name of a lesson (counter, walkway, mast), the code printed with a problem, a lesson or
    /// problem file, or `-` for such a file on standard input
    pub(super) problem: String,
    /// Draw the numbers of the lesson from this whole number (0 or more); without it, from 1
    #[arg(long, value_name = "NUMBER", value_parser = seed, allow_negative_numbers = true)]
    pub(super) seed: Option<u64>,
    /// What the answer is of: the symbol of a quantity (T, Wbp, Hy), its title, or the `id` of a
    /// step as `solve --json` prints it; without it, the pull of a lesson
    #[arg(long, value_name = "NAME", conflicts_with = "working")]
    pub(super) step: Option<String>,
    /// The answer, as it stands on the sheet: a number, a form or an equation
    #[arg(long, value_name = "LINE", allow_hyphen_values = true)]
    pub(super) answer: Option<String>,
    /// A file with a working, one line a line, in any order; `-` for standard input
    #[arg(long, value_name = "FILE")]
    pub(super) working: Option<PathBuf>,
    /// Print JSON for other programs
    #[arg(long)]
    pub(super) json: bool,
}

/// Which files to check.
#[derive(Args, Debug)]
#[command(after_help = "Examples:
  leverwright check my-problem.json
  leverwright check lessons/*.json

Each fault stands on a line of its own: file, line, column, field, what is wrong and what was
expected. Exit status: 0 if no file has a fault, 1 if one has.")]
pub(super) struct Check {
    /// Lesson and problem files and class profiles; a file with a `model` or a `system` is read as a
    /// problem, one with a `class` as a profile, any other as a lesson
    #[arg(required = true, value_name = "FILE")]
    pub(super) files: Vec<PathBuf>,
}

/// A language by its tag, or by a locale that begins with it.
fn language(typed: &str) -> Result<Language, String> {
    Language::of_locale(typed).ok_or_else(|| {
        let tags: Vec<&str> = Language::all().map(Language::tag).collect();
        format!("one of {} is wanted", tags.join(", "))
    })
}

/// A seed as it is typed.
fn seed(typed: &str) -> Result<u64, String> {
    typed
        .parse()
        .map_err(|_| format!("a whole number from 0 to {} is wanted", u64::MAX))
}
