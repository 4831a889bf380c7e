//! Lessons and problems by the names that people give for them.

use super::Trouble;
use super::class::CLASS_FILE;
use crate::draw::{code, draw, draw_sister, parse_code};
use crate::lesson::{
    ClassProfile, Fault, Lesson, ProblemFile, built_in, fault_at, faults_beside, is_lesson,
    lesson_as_begun, parse_lesson, parse_problem_file,
};
use crate::problem::Problem;
use crate::record::Origin;
use crate::system::{ActId, Fault as Misfit, System};
use crate::text::{Language, Slot, Words, printable};
use crate::working::why;
use std::collections::BTreeSet;
use std::collections::hash_map::RandomState;
use std::fs;
use std::hash::{BuildHasher, Hasher};
use std::io::Read;
use std::path::Path;

/// The longest lesson or problem file that is read, in bytes.
const LONGEST_FILE: u64 = 4 << 20;

/// A problem that was found, and where it came from.
pub(super) struct Found {
    pub(super) problem: Problem,
    pub(super) sister: Option<Problem>,
    pub(super) origin: Option<Origin>,
}

/// A problem of either kind.
pub(super) enum Any {
    /// One straight body.
    Guided(Box<Found>),
    /// Bodies in general.
    General(Box<System>),
}

/// The lessons at hand.
pub(super) struct Library {
    /// What the teacher set for the class.
    pub(super) class: ClassProfile,
    pub(super) lessons: Vec<Lesson>,
    /// What was wrong with lesson files that were passed over.
    pub(super) faults: Vec<String>,
}

impl Library {
    /// The built-in lessons, and those of a folder, as the class has them.
    pub(super) fn open(folder: Option<&Path>, class: ClassProfile, words: &Words) -> Library {
        let mut library = Library {
            lessons: Vec::new(),
            faults: Vec::new(),
            class,
        };
        built_in()
            .into_iter()
            .for_each(|lesson| library.put(lesson));
        let Some(folder) = folder else { return library };
        let entries = match fs::read_dir(folder) {
            Ok(entries) => entries,
            Err(error) => {
                library
                    .faults
                    .push(unreadable(words, folder, &error.to_string()));
                return library;
            }
        };
        let mut paths: Vec<_> = entries
            .filter_map(|entry| entry.ok().map(|entry| entry.path()))
            .filter(|path| path.extension().is_some_and(|ending| ending == "json"))
            // The schema of problem files may stand beside lessons and is none.
            .filter(|path| !path.to_string_lossy().ends_with(".schema.json"))
            .filter(|path| !path.ends_with(CLASS_FILE))
            .collect();
        paths.sort();
        let read: Vec<(String, String, Lesson)> = paths
            .iter()
            .filter_map(|path| library.read(path, words))
            .collect();
        library.add(&read);
        library
    }

    /// Reads a lesson file; tells its faults.
    fn read(&mut self, path: &Path, words: &Words) -> Option<(String, String, Lesson)> {
        let name = path.display().to_string();
        let text = match read_file(words, path) {
            Ok(text) => text,
            Err(line) => {
                self.faults.push(line);
                return None;
            }
        };
        match parse_lesson(&text) {
            Ok(lesson) => Some((name, text, lesson)),
            Err(faults) => {
                self.faults.extend(told(&name, &faults));
                None
            }
        }
    }

    /// Adds lessons, and tells of those that cannot stand beside the others. They can still be
    /// worked, so they stay, except that of two files with one name the first counts.
    fn add(&mut self, read: &[(String, String, Lesson)]) {
        let mut taken = BTreeSet::new();
        for (_, _, lesson) in read {
            if taken.insert(lesson.id().to_owned()) {
                self.put(lesson.clone());
            }
        }
        taken.clear();
        for (name, text, lesson) in read {
            let faults = faults_beside(text, &self.lessons, &taken);
            self.faults.extend(told(name, &faults));
            taken.insert(lesson.id().to_owned());
        }
    }

    /// A problem of either kind by file, `-`, lesson name or code. A lesson's numbers are drawn from
    /// the seed that was asked for, or from `otherwise`; the others have their numbers, and take no
    /// seed. The lesson of a lesson file joins the others.
    pub(super) fn find_any(
        &mut self,
        name: &str,
        seed: Option<u64>,
        otherwise: u64,
        words: &Words,
    ) -> Result<Any, Trouble> {
        if let Some(index) = self.lessons.iter().position(|lesson| lesson.id() == name) {
            return self
                .drawn(index, seed.unwrap_or(otherwise), words)
                .map(Box::new)
                .map(Any::Guided);
        }
        let file = text_of(name, words)?;
        if let Some((shown, text)) = file.as_ref().filter(|(_, text)| is_lesson(text)) {
            let lesson =
                parse_lesson(text).map_err(|faults| Trouble::File(shown.clone(), faults))?;
            let id = lesson.id().to_owned();
            self.put(lesson);
            return self.find_any(&id, seed, otherwise, words);
        }
        if seed.is_some() && (file.is_some() || looks_like_code(name)) {
            let slots = [("name", Slot::Value(printable(name)))];
            let line = words.say("cli.seed-useless", &slots).to_string();
            return Err(Trouble::Use(line));
        }
        if let Some((shown, text)) = file {
            return from_text(&shown, &text, words);
        }
        if looks_like_code(name) {
            return self.by_code(name, words).map(Box::new).map(Any::Guided);
        }
        Err(self.unknown(name, words))
    }

    /// The problem with this code.
    pub(super) fn by_code(&self, typed: &str, words: &Words) -> Result<Found, Trouble> {
        let (index, place) = parse_code(typed, &self.lessons)
            .map_err(|trouble| Trouble::Input(vec![format!("{}: {trouble}", printable(typed))]))?;
        let lesson = &self.lessons[index];
        let problem = lesson
            .problem_at(&place, words.language().tag())
            .map_err(|flaws| Trouble::Input(flaws.iter().map(ToString::to_string).collect()))?;
        let seed = u64::from(lesson.checksum());
        let sister =
            draw_sister(lesson, &place, seed, words.language().tag()).map(|drawn| drawn.problem);
        let origin = Origin {
            code: code(lesson, &place),
            lesson: lesson.id().to_owned(),
            lesson_version: lesson.version(),
            seed,
        };
        Ok(Found {
            problem,
            sister,
            origin: Some(origin),
        })
    }

    /// Adds a lesson as the class has it.
    fn put(&mut self, lesson: Lesson) {
        let lesson = self.class.lesson(lesson);
        put(&mut self.lessons, lesson);
    }

    /// The sister that a problem had when it was drawn, so that its hints are the same again,
    /// whatever the class has now.
    pub(super) fn sister(
        &self,
        origin: &Origin,
        problem: &Problem,
        language: Language,
    ) -> Option<Problem> {
        let (index, place) = parse_code(&origin.code, &self.lessons).ok()?;
        let lesson = lesson_as_begun(&self.lessons[index], problem);
        let drawn = draw_sister(&lesson, &place, origin.seed, language.tag())?;
        Some(drawn.problem)
    }

    /// A problem of a lesson with its words in another language: the same numbers and code.
    pub(super) fn told_in(&self, found: Found, language: Language) -> Found {
        let told = |origin: &Origin| {
            let (index, place) = parse_code(&origin.code, &self.lessons).ok()?;
            let problem = self.lessons[index]
                .problem_at(&place, language.tag())
                .ok()?;
            let sister = self.sister(origin, &problem, language);
            Some((problem, sister))
        };
        match found.origin.as_ref().and_then(told) {
            Some((problem, sister)) => Found {
                problem,
                sister,
                ..found
            },
            None => found,
        }
    }

    /// A problem drawn from a lesson.
    pub(super) fn drawn(&self, index: usize, seed: u64, words: &Words) -> Result<Found, Trouble> {
        let lesson = &self.lessons[index];
        let Some(drawn) = draw(lesson, seed, words.language().tag()) else {
            let slots = [("lesson", Slot::Word(lesson.id().to_owned()))];
            return Err(Trouble::Input(vec![
                words.say("cli.no-draw", &slots).to_string(),
            ]));
        };
        let sister = draw_sister(lesson, &drawn.place, seed, words.language().tag())
            .map(|drawn| drawn.problem);
        let origin = Origin {
            code: code(lesson, &drawn.place),
            lesson: lesson.id().to_owned(),
            lesson_version: lesson.version(),
            seed,
        };
        Ok(Found {
            problem: drawn.problem,
            sister,
            origin: Some(origin),
        })
    }

    /// Says that a name is not known, with the nearest and all that are.
    fn unknown(&self, name: &str, words: &Words) -> Trouble {
        let known: Vec<&str> = self.lessons.iter().map(Lesson::id).collect();
        let near = known.iter().find(|id| {
            let typed = name.to_lowercase();
            !typed.is_empty()
                && (id.starts_with(&typed) || typed.starts_with(*id) || one_slip(id, &typed))
        });
        let mut slots = vec![
            ("name", Slot::Word(printable(name))),
            ("lessons", Slot::Word(known.join(", "))),
        ];
        let key = match near {
            Some(near) => {
                slots.push(("near", Slot::Word((*near).to_owned())));
                "cli.unknown-near"
            }
            None => "cli.unknown",
        };
        Trouble::Input(vec![words.say(key, &slots).to_string()])
    }
}

/// Adds a lesson; one that overrides another keeps its place in the order of teaching.
pub(super) fn put(lessons: &mut Vec<Lesson>, lesson: Lesson) {
    match lessons.iter_mut().find(|known| known.id() == lesson.id()) {
        Some(known) => *known = lesson,
        None => lessons.push(lesson),
    }
}

/// A seed for fresh numbers: the system's own randomness behind the standard hasher, so that two
/// machines started together draw different problems.
pub(super) fn fresh_seed() -> u64 {
    let mut hasher = RandomState::new().build_hasher();
    hasher.write_u32(std::process::id());
    hasher.finish() >> 16
}

/// One letter changed, missing, added, or two neighbours exchanged.
fn one_slip(known: &str, typed: &str) -> bool {
    let (known, typed): (Vec<char>, Vec<char>) = (known.chars().collect(), typed.chars().collect());
    let start = known
        .iter()
        .zip(&typed)
        .take_while(|(one, other)| one == other)
        .count();
    let (known, typed) = (&known[start..], &typed[start..]);
    let end = known
        .iter()
        .rev()
        .zip(typed.iter().rev())
        .take_while(|(one, other)| one == other)
        .count();
    let (known, typed) = (&known[..known.len() - end], &typed[..typed.len() - end]);
    match (known, typed) {
        ([one, other], [first, second]) => one == second && other == first,
        (known, typed) => known.len() <= 1 && typed.len() <= 1,
    }
}

/// True for what may stand behind `practice`: a built-in lesson, a code or a file.
pub(super) fn may_be_problem(name: &str) -> bool {
    built_in().iter().any(|lesson| lesson.id() == name)
        || Path::new(name).is_file()
        || looks_like_code(name)
}

fn looks_like_code(name: &str) -> bool {
    name.matches('-').count() >= 2 && !name.contains(['/', '.'])
}

/// What a file or standard input (`-`) is called and holds; `None` if there is no such file.
fn text_of(name: &str, words: &Words) -> Result<Option<(String, String)>, Trouble> {
    if name == "-" {
        let mut text = String::new();
        let read = std::io::stdin()
            .take(LONGEST_FILE)
            .read_to_string(&mut text);
        read.map_err(|error| {
            Trouble::Input(vec![unreadable(words, Path::new("-"), &error.to_string())])
        })?;
        return Ok(Some(("standard input".to_owned(), text)));
    }
    let path = Path::new(name);
    if !path.exists() {
        return Ok(None);
    }
    let text = read_file(words, path).map_err(|line| Trouble::Input(vec![line]))?;
    Ok(Some((name.to_owned(), text)))
}

fn from_text(name: &str, text: &str, words: &Words) -> Result<Any, Trouble> {
    let file = parse_problem_file(text).map_err(|faults| Trouble::File(name.to_owned(), faults))?;
    Ok(match file {
        ProblemFile::Guided(problem) => Any::Guided(Box::new(Found {
            problem,
            sister: None,
            origin: None,
        })),
        ProblemFile::General(system) => {
            if misfits(&system).next().is_some() {
                return Err(Trouble::File(
                    name.to_owned(),
                    unsound(&system, text, words),
                ));
            }
            Any::General(Box::new(system))
        }
    })
}

/// What shows of a file without a fault once its problem is drawn and worked, in the order of the
/// file: what holds a body where it is not, and that it cannot be held.
pub(super) fn unsound(system: &System, text: &str, words: &Words) -> Vec<Fault> {
    let mut faults = out_of_reach(system, text);
    // What stands beside its body throughout does so at the value found too; told once is enough.
    let is_told = !faults.is_empty();
    let unsolved = super::general::unsolved(system);
    // Ends that do not pull against each other turn what they hold together.
    let misses = faults
        .iter()
        .any(|fault| fault.kind.code() == "off-its-line");
    let unsolved = unsolved.filter(|why| match why.code() {
        "misplaced" => !is_told,
        "mechanism" => !misses,
        _ => true,
    });
    let whole = ["system".to_owned()];
    faults.extend(unsolved.and_then(|trouble| {
        let told = why(&trouble, words);
        fault_at(text, &whole, trouble.code(), &told)
    }));
    faults.sort_by_key(|fault| (fault.line, fault.column));
    faults
}

/// What cannot lie so: what holds a body where it is not, and ropes that miss their other end.
fn misfits(system: &System) -> impl Iterator<Item = (ActId, Misfit)> {
    let ropes = system.off_their_lines();
    system.out_of_reach().into_iter().chain(ropes)
}

/// What holds a body, or pulls at it, where it is not, and ropes that miss their other end.
fn out_of_reach(system: &System, text: &str) -> Vec<Fault> {
    let at = |act: ActId| match act {
        ActId::Hold(index) => format!("system.holds.{index}"),
        ActId::Cord(index) => format!("system.ropes.{index}"),
        ActId::Weight(_) | ActId::Load(_) => "system".to_owned(),
    };
    misfits(system)
        .filter_map(|(act, fault)| fault_at(text, &[at(act)], fault.code(), &fault.to_string()))
        .collect()
}

pub(super) fn told(name: &str, faults: &[Fault]) -> Vec<String> {
    faults
        .iter()
        .map(|fault| format!("{}: {fault}", printable(name)))
        .collect()
}

fn unreadable(words: &Words, path: &Path, system: &str) -> String {
    let slots = [
        ("place", Slot::Value(printable(&path.display().to_string()))),
        ("system", Slot::Word(system.to_owned())),
    ];
    words.say("cli.unreadable", &slots).to_string()
}

pub(super) fn read_file(words: &Words, path: &Path) -> Result<String, String> {
    let found = fs::metadata(path).map_err(|error| unreadable(words, path, &error.to_string()))?;
    if !found.is_file() {
        return Err(unreadable(words, path, &words.word("cli.no-file")));
    }
    if found.len() > LONGEST_FILE {
        return Err(unreadable(words, path, &words.word("cli.too-large")));
    }
    fs::read_to_string(path).map_err(|error| unreadable(words, path, &error.to_string()))
}
