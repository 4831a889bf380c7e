//! Every fault of lesson and problem files.

use super::Trouble;
use super::args::{Arguments, Check};
use super::library::{LANGUAGE, Library, put, read_file, told};
use crate::draw::draw;
use crate::lesson::{Checked, Lesson, check_file, faults_beside};
use crate::problem::Problem;
use crate::statics;
use crate::text::{Slot, Words, printable};
use std::collections::BTreeSet;
use std::io::{Write, stdout};
use std::path::Path;

/// Prints the faults of each file, or that it has none.
pub(super) fn run(arguments: &Arguments, wishes: &Check, words: &Words) -> Result<(), Trouble> {
    let library = Library::open(arguments.lessons.as_deref(), words);
    let mut shelf = Shelf {
        lessons: library.lessons,
        taken: BTreeSet::new(),
        words,
    };
    let read: Vec<_> = wishes
        .files
        .iter()
        .map(|path| (path, shelf.read(path)))
        .collect();
    let mut output = stdout().lock();
    let mut faults = 0;
    for (path, read) in read {
        let lines = match read {
            Ok(read) => shelf.faults(path, &read),
            Err(lines) => lines,
        };
        faults += lines.len();
        for line in &lines {
            writeln!(output, "{line}")?;
        }
        if lines.is_empty() {
            let slots = [("file", Slot::Value(shown(path)))];
            writeln!(output, "{}", words.say("cli.check.sound", &slots))?;
        }
    }
    output.flush()?;
    match faults {
        0 => Ok(()),
        1 => Err(Trouble::Input(vec![words.word("cli.check.faults.one")])),
        _ => {
            let slots = [("count", Slot::Word(faults.to_string()))];
            let line = words.say("cli.check.faults.many", &slots).to_string();
            Err(Trouble::Input(vec![line]))
        }
    }
}

fn shown(path: &Path) -> String {
    printable(&path.display().to_string())
}

/// A file without a fault of its own.
struct Read {
    text: String,
    checked: Checked,
}

/// The lessons that the files stand with.
struct Shelf<'a> {
    lessons: Vec<Lesson>,
    /// Names of the lessons of the files looked at so far.
    taken: BTreeSet<String>,
    words: &'a Words,
}

impl Shelf<'_> {
    /// Reads a file; its lesson joins the others.
    fn read(&mut self, path: &Path) -> Result<Read, Vec<String>> {
        let text = read_file(self.words, path).map_err(|line| vec![line])?;
        let checked = check_file(&text).map_err(|faults| told(&shown(path), &faults))?;
        if let Checked::Lesson(lesson) = &checked {
            put(&mut self.lessons, (**lesson).clone());
        }
        Ok(Read { text, checked })
    }

    /// What is wrong with a file that reads well.
    fn faults(&mut self, path: &Path, read: &Read) -> Vec<String> {
        let own = match &read.checked {
            Checked::Lesson(lesson) => {
                let faults = faults_beside(&read.text, &self.lessons, &self.taken);
                self.taken.insert(lesson.id().to_owned());
                let mut lines = told(&shown(path), &faults);
                lines.extend(self.undrawn(lesson).map(|why| self.of_file(path, &why)));
                return lines;
            }
            Checked::Problem(problem) => unsolved(problem),
            Checked::System(system) => super::general::unsolved(system),
        };
        own.map(|why| self.of_file(path, &why))
            .into_iter()
            .collect()
    }

    fn undrawn(&self, lesson: &Lesson) -> Option<String> {
        let slots = [("lesson", Slot::Word(lesson.id().to_owned()))];
        let none = draw(lesson, 1, LANGUAGE).is_none();
        none.then(|| self.words.say("cli.no-draw", &slots).to_string())
    }

    fn of_file(&self, path: &Path, why: &str) -> String {
        format!("{}: {why}", shown(path))
    }
}

/// Why equilibrium does not give the forces of a problem.
fn unsolved(problem: &Problem) -> Option<String> {
    let solved = statics::solve(problem, &problem.values());
    solved.err().map(|trouble| trouble.to_string())
}
