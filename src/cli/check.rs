//! Every fault of lesson and problem files.

use super::Trouble;
use super::args::{Arguments, Check};
use super::library::{Library, put, read_file, told, unsound};
use crate::draw::{LEAST_KEPT, LEAST_PROBLEMS, Refused, Survey, draw, refusals, survey};
use crate::lesson::{
    Checked, ClassProfile, Fault, Lesson, check_file, fault_at, faults_beside, model_alone,
};
use crate::problem::Problem;
use crate::statics::{self, Unsolvable};
use crate::text::{Slot, Words, printable};
use crate::units::to_figures;
use crate::working::why_unsolvable;
use std::collections::BTreeSet;
use std::io::{Write, stdout};
use std::path::Path;

/// How many draws are looked at to tell why none can be asked.
const TRIES: usize = 400;
/// How many of the kept draws are looked at for what the mistakes give there.
const CLOSE: usize = 60;
/// The most rules that are told of.
const MOST_RULES: usize = 3;

/// Prints the faults of each file, or that it has none.
pub(super) fn run(arguments: &Arguments, wishes: &Check, words: &Words) -> Result<(), Trouble> {
    let library = Library::open(arguments.lessons.as_deref(), ClassProfile::default(), words);
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
    // Of a file that cannot be read through, what it describes is not looked at in full.
    let is_faulty = |read: &Result<Read, _>| read.as_ref().is_ok_and(|read| read.checked.is_err());
    let hides_more = read.iter().any(|(_, read)| is_faulty(read));
    for (path, read) in read {
        let lines = match &read {
            Ok(read) => shelf.faults(path, read),
            Err(lines) => lines.clone(),
        };
        let sound = read.ok().and_then(|read| read.checked.ok());
        faults += lines.len();
        for line in &lines {
            writeln!(output, "{line}")?;
        }
        if lines.is_empty() {
            let slots = [("file", Slot::Value(shown(path)))];
            writeln!(output, "{}", words.say("cli.check.sound", &slots))?;
            if let Some(line) = all_asked(path, sound.as_ref(), words) {
                writeln!(output, "{line}")?;
            }
            for line in range_told(path, sound.as_ref(), words) {
                writeln!(output, "{line}")?;
            }
        }
    }
    output.flush()?;
    let told = match faults {
        0 => return Ok(()),
        1 => words.word("cli.check.faults.one"),
        _ => {
            let slots = [("count", Slot::Word(faults.to_string()))];
            words.say("cli.check.faults.many", &slots).to_string()
        }
    };
    let more = hides_more.then(|| words.word("cli.check.more"));
    Err(Trouble::Input([told].into_iter().chain(more).collect()))
}

/// What a problem asks that names nothing of it: no fault, and yet perhaps not what was meant.
fn all_asked(path: &Path, checked: Option<&Checked>, words: &Words) -> Option<String> {
    let Some(Checked::System(system)) = checked else {
        return None;
    };
    let asked = system.asked_unnamed();
    let slots = [
        ("file", Slot::Value(shown(path))),
        ("wanted", Slot::Name(asked.join(", "))),
    ];
    (!asked.is_empty()).then(|| words.say("cli.check.all-asked", &slots).to_string())
}

/// Of a lesson, how much of its range is kept and how well mistakes show there.
fn range_told(path: &Path, checked: Option<&Checked>, words: &Words) -> Vec<String> {
    let Some(Checked::Lesson(lesson)) = checked else {
        return Vec::new();
    };
    let found = survey(lesson, TRIES, CLOSE, words.language().tag());
    let identical = |(id, count): (&&str, &usize)| {
        let name = words.word(&format!("mistake.{id}.name"));
        let share = *count as f64 / found.looked_at.max(1) as f64;
        format!("{name} ({:.0} %)", 100.0 * share)
    };
    let identical: Vec<String> = found.identical.iter().map(identical).collect();
    let slots = [
        ("file", Slot::Value(shown(path))),
        ("tries", Slot::Value(found.tried.to_string())),
        ("kept", Slot::Value(per_cent(found.share()))),
        ("problems", Slot::Value(about(found.problems))),
        ("misnamed", Slot::Value(per_cent(found.misnamed))),
        ("identical", Slot::Word(identical.join(", "))),
    ];
    keys_of_range(&found)
        .into_iter()
        .map(|key| words.say(key, &slots).to_string())
        .collect()
}

fn keys_of_range(found: &Survey) -> Vec<&'static str> {
    let mut keys = vec!["cli.check.range"];
    if !found.identical.is_empty() {
        keys.push("cli.check.identical");
    }
    keys
}

fn per_cent(share: f64) -> String {
    format!("{:.1} %", 100.0 * share)
}

/// A count to two figures, or as it is where it is small.
fn about(count: f64) -> String {
    let figures = if count < 100.0 {
        count.round()
    } else {
        to_figures(count, 2)
    };
    format!("{figures:.0}")
}

fn shown(path: &Path) -> String {
    printable(&path.display().to_string())
}

/// A file as it was read.
struct Read {
    text: String,
    checked: Result<Checked, Vec<Fault>>,
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
        let checked = check_file(&text);
        if let Ok(Checked::Lesson(lesson)) = &checked {
            put(&mut self.lessons, (**lesson).clone());
        }
        Ok(Read { text, checked })
    }

    /// What is wrong with a file, in itself and beside the others, in the order of the file.
    fn faults(&mut self, path: &Path, read: &Read) -> Vec<String> {
        let mut faults = match &read.checked {
            Ok(Checked::Lesson(lesson)) => match self.undrawn(lesson, &read.text) {
                undrawn if undrawn.is_empty() => self.too_narrow(lesson, &read.text),
                undrawn => undrawn,
            },
            Ok(Checked::Problem(problem)) => unsolved(problem, &read.text, self.words),
            Ok(Checked::System(system)) => unsound(system, &read.text, self.words),
            Ok(Checked::Class(_)) => return Vec::new(),
            // What the text lacks does not hide that the forces cannot balance.
            Err(faults) => {
                let model = model_alone(&read.text);
                let unsolved = model
                    .iter()
                    .flat_map(|model| unsolved(model, &read.text, self.words));
                faults.iter().cloned().chain(unsolved).collect()
            }
        };
        for fault in faults_beside(&read.text, &self.lessons, &self.taken) {
            if !faults.contains(&fault) {
                faults.push(fault);
            }
        }
        if let Ok(Checked::Lesson(lesson)) = &read.checked {
            self.taken.insert(lesson.id().to_owned());
        }
        faults.sort_by_key(|fault| (fault.line, fault.column));
        told(&shown(path), &faults)
    }

    /// That too little of a lesson's range is worth asking.
    fn too_narrow(&self, lesson: &Lesson, text: &str) -> Vec<Fault> {
        let language = self.words.language().tag();
        let found = survey(lesson, TRIES, 0, language);
        if !found.is_too_narrow() {
            return Vec::new();
        }
        let slots = [
            ("tries", Slot::Value(found.tried.to_string())),
            ("kept", Slot::Value(per_cent(found.share()))),
            ("problems", Slot::Value(about(found.problems))),
            ("least", Slot::Value(per_cent(LEAST_KEPT))),
            ("few", Slot::Value(LEAST_PROBLEMS.to_string())),
        ];
        let why = self.words.say("cli.check.narrow", &slots).to_string();
        let places = ["variants".to_owned()];
        fault_at(text, &places, "not-worth-asking", &why)
            .into_iter()
            .collect()
    }

    /// Which rules refuse the numbers of a lesson of which no problem can be drawn.
    fn undrawn(&self, lesson: &Lesson, text: &str) -> Vec<Fault> {
        let language = self.words.language().tag();
        if draw(lesson, 1, language).is_some() {
            return Vec::new();
        }
        let refused = refusals(lesson, TRIES, language);
        let fault = |refused: &Refused| {
            let slots = [
                ("tries", Slot::Value(TRIES.to_string())),
                ("count", Slot::Value(refused.count.to_string())),
                ("why", Slot::Word(refused.why.clone())),
            ];
            let why = self.words.say("cli.check.refused", &slots).to_string();
            let variant = format!("variants.{}", refused.variant);
            let mut places: Vec<String> = refused
                .fields
                .iter()
                .map(|field| format!("{variant}.{field}"))
                .collect();
            places.push(variant);
            fault_at(text, &places, "not-worth-asking", &why)
        };
        refused.iter().take(MOST_RULES).filter_map(fault).collect()
    }
}

/// Why equilibrium does not give the forces of a problem.
fn unsolved(problem: &Problem, text: &str, words: &Words) -> Vec<Fault> {
    let Err(trouble) = statics::solve(problem, &problem.values()) else {
        return Vec::new();
    };
    let place = match trouble {
        Unsolvable::RopeWouldPush { .. } => "model.ropes.0.direction",
        _ => "model",
    };
    let places = [place.to_owned(), "model".to_owned()];
    let why = why_unsolvable(&trouble, words);
    fault_at(text, &places, trouble.code(), &why)
        .into_iter()
        .collect()
}
