//! The walk through problems of bodies in general: every board worked to its end.

#[path = "general/ends.rs"]
mod ends;
#[path = "general/friction.rs"]
mod friction;
#[path = "general/mended.rs"]
mod mended;
#[path = "general/other_ways.rs"]
mod other_ways;
#[path = "general/printed.rs"]
mod printed;
#[path = "general/roots.rs"]
mod roots;
#[path = "general/said.rs"]
mod said;
#[path = "general/scripts.rs"]
mod scripts;
#[path = "general/talk.rs"]
mod talk;
#[path = "general/together.rs"]
mod together;
#[path = "general/worked.rs"]
mod worked;
#[path = "general/wrong_forms.rs"]
mod wrong_forms;

use leverwright::key::{Pins, StepId};
use leverwright::lesson::{ProblemFile, parse_problem_file};
use leverwright::session::{Course, Progress, Session, Sign, Turn};
use leverwright::system::System;
use leverwright::text::Words;
use std::fs;

/// Every problem of tests/boards, by name.
pub(crate) fn boards() -> Vec<(String, System)> {
    let folder = format!("{}/tests/boards", env!("CARGO_MANIFEST_DIR"));
    let mut found: Vec<(String, System)> = fs::read_dir(folder)
        .unwrap()
        .map(|entry| {
            let path = entry.unwrap().path();
            let name = path.file_stem().unwrap().to_string_lossy().into_owned();
            (name.clone(), board(&name))
        })
        .collect();
    found.sort_by(|one, other| one.0.cmp(&other.0));
    assert!(found.len() >= 24);
    found
}

pub(crate) fn board(name: &str) -> System {
    let path = format!("{}/tests/boards/{name}.json", env!("CARGO_MANIFEST_DIR"));
    match parse_problem_file(&fs::read_to_string(path).unwrap()).unwrap() {
        ProblemFile::General(system) => system,
        ProblemFile::Guided(_) => panic!("{name} is a problem of the guided walk"),
    }
}

pub(crate) fn opened(name: &str) -> Session {
    Session::start_general(&board(name), Words::english())
        .unwrap_or_else(|trouble| panic!("{name}: {trouble}"))
}

/// The step that is asked now.
pub(crate) fn asked(session: &Session) -> Option<StepId> {
    let steps = session.view().steps;
    let at = steps
        .iter()
        .position(|step| step.progress == Progress::Now)?;
    session.key().asked().nth(at).map(|step| step.id)
}

/// Answers every step by `answer`; gives the lines, and what was refused.
pub(crate) fn walked(
    name: &str,
    answer: &dyn Fn(&Session, StepId) -> String,
) -> (Vec<String>, Vec<String>) {
    worked(name, opened(name), answer)
}

fn worked(
    name: &str,
    mut session: Session,
    answer: &dyn Fn(&Session, StepId) -> String,
) -> (Vec<String>, Vec<String>) {
    let mut lines = Vec::new();
    let mut faults = Vec::new();
    while let Some(step) = asked(&session) {
        let line = answer(&session, step);
        let turn = session.submit(&line);
        let right = matches!(turn.line.sign, Sign::Right | Sign::Rounded);
        if !right || !turn.moved_on {
            faults.push(told(name, &line, &turn));
            session.submit("skip");
        }
        lines.push(line);
        assert!(lines.len() < 100, "{name} does not end");
    }
    assert_eq!(session.course(), Course::Finished, "{name}");
    (lines, faults)
}

fn told(name: &str, line: &str, turn: &Turn) -> String {
    let (about, sign) = (&turn.line.about, turn.line.sign);
    format!("{name}, {about}: {line}: {sign:?} {}", turn.line.message)
}

/// What is refused of every board's lines.
fn refused(answer: &dyn Fn(&Session, StepId) -> String) -> Vec<String> {
    let all = boards().into_iter();
    all.flat_map(|(name, _)| walked(&name, answer).1).collect()
}

#[test]
fn every_board_is_worked_by_the_formulas_of_its_key() {
    assert_eq!(refused(&scripts::in_names), Vec::<String>::new());
}

#[test]
fn every_board_is_worked_in_numbers() {
    assert_eq!(refused(&scripts::in_numbers), Vec::<String>::new());
    assert_eq!(refused(&scripts::values), Vec::<String>::new());
}

/// A value a tenth off is never taken, and the right one behind it always.
#[test]
fn a_value_a_tenth_off_is_never_accepted() {
    let mut tried = 0;
    let mut faults = Vec::new();
    for (name, _) in boards() {
        let mut session = opened(&name);
        while let Some(step) = asked(&session) {
            let value = session
                .key()
                .value(step, &scripts::own(&session), &Pins::new());
            if let Some(value) = value.filter(|value| *value != 0.0) {
                for share in [0.9, 1.1] {
                    let line = scripts::value_typed(&session, step, value * share);
                    let turn = session.submit(&line);
                    let wrong = matches!(turn.line.sign, Sign::Wrong | Sign::Noted);
                    if !wrong || turn.moved_on {
                        faults.push(told(&name, &line, &turn));
                    }
                    tried += 1;
                }
            }
            let line = scripts::values(&session, step);
            let turn = session.submit(&line);
            let right = matches!(turn.line.sign, Sign::Right | Sign::Rounded);
            if !right || !turn.moved_on {
                faults.push(told(&name, &line, &turn));
                session.submit("skip");
            }
        }
    }
    assert_eq!(faults, Vec::<String>::new());
    assert!(tried > 300, "only {tried}");
}

/// Cases of which a long balance in numbers is noted and not taken as proved: eight of its numbers
/// are 7, 2 and 5 m, more meanings than are tried.
const NOTED: &[&str] = &["hb-5-6-beam-inclined-load, moments"];

/// The published cases, as far as they are general problems that can be solved.
#[test]
fn the_published_cases_are_worked_by_their_keys() {
    let folder = format!("{}/tests/cases", env!("CARGO_MANIFEST_DIR"));
    let (mut faults, mut opened) = (Vec::new(), 0);
    for entry in fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        let name = path.file_stem().unwrap().to_string_lossy().into_owned();
        let Ok(ProblemFile::General(system)) =
            parse_problem_file(&fs::read_to_string(&path).unwrap())
        else {
            continue;
        };
        for answer in [scripts::in_names, scripts::values] {
            let Ok(session) = Session::start_general(&system, Words::english()) else {
                faults.push(format!("{name} is not opened"));
                continue;
            };
            opened += 1;
            faults.extend(worked(&name, session, &answer).1);
        }
    }
    faults.retain(|fault| {
        let noted = NOTED.iter().any(|name| fault.starts_with(name));
        !(noted && fault.contains(": Noted "))
    });
    faults.sort();
    assert_eq!(faults, Vec::<String>::new());
    assert!(opened > 200, "only {opened}");
}
