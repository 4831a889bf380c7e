//! Problems to enter lines at, and what must hold of every answer.

use leverwright::draw::parse_code;
use leverwright::lesson::{built_in, parse_system};
use leverwright::session::{Course, Session};
use leverwright::text::Words;
use serde_json::Value;
use std::fs;
use std::path::{Path, PathBuf};

/// The folder of the tests.
pub fn tests() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("..")
}

/// A problem of the hand-written corpus, with the lines that were typed there.
pub struct Scene {
    /// Asked step by step.
    pub guided: Session,
    /// A working of one's own.
    pub free: Session,
    pub lines: Vec<String>,
}

/// Every problem of the hand-written corpus.
pub fn scenes() -> Vec<Scene> {
    let mut files: Vec<PathBuf> = (fs::read_dir(tests().join("corpus")).unwrap())
        .map(|entry| entry.unwrap().path())
        .filter(|path| path.extension().is_some_and(|kind| kind == "json"))
        .collect();
    files.sort();
    files.iter().map(|path| scene(path)).collect()
}

fn scene(path: &Path) -> Scene {
    let corpus: Value = serde_json::from_str(&fs::read_to_string(path).unwrap()).unwrap();
    let place = &corpus["problem"];
    let guided = match (place["board"].as_str(), place["code"].as_str()) {
        (Some(board), _) => {
            let file = tests().join("boards").join(format!("{board}.json"));
            let system = parse_system(&fs::read_to_string(file).unwrap()).unwrap();
            Session::start_general(&system, Words::english()).unwrap()
        }
        (_, code) => {
            let lessons = built_in();
            let (lesson, at) = parse_code(code.unwrap(), &lessons).unwrap();
            let problem = lessons[lesson].problem_at(&at, "en").unwrap();
            Session::start(problem, None, Words::english()).unwrap()
        }
    };
    let mut free = guided.clone();
    free.submit("freely");
    let workings = corpus["workings"].as_array().unwrap().iter();
    let lines = workings.flat_map(|working| working["lines"].as_array().unwrap());
    Scene {
        guided,
        free,
        lines: lines
            .map(|line| line["line"].as_str().unwrap().to_owned())
            .collect(),
    }
}

/// Enters lines one after the other. Each is shown while it is typed, answered in words that are
/// whole, and a copy of the session answers it alike.
pub fn enter(session: &Session, lines: impl Iterator<Item = String>) {
    let mut session = session.clone();
    for line in lines {
        if session.course() != Course::On {
            return;
        }
        let _ = session.preview(&line);
        let mut copy = session.clone();
        let turn = session.submit(&line);
        let again = copy.submit(&line);
        assert_eq!(turn.kept.truth, again.kept.truth, "twice at {line:?}");
        assert_eq!(turn.kept.message, again.kept.message, "twice at {line:?}");
        is_whole(&turn.kept.message, &line);
        for hint in &turn.line.hints {
            is_whole(&hint.to_string(), &line);
        }
        let _ = session.view();
    }
}

/// No number that is none, and no slot left open, but for what was typed.
fn is_whole(message: &str, line: &str) {
    for broken in ["NaN", "inf ", "{", "}"] {
        let is_typed = line.to_lowercase().contains(&broken.trim().to_lowercase());
        assert!(is_typed || !message.contains(broken), "{line:?}: {message}");
    }
}
