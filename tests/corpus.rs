//! Learners' working written by hand (`tests/corpus`), judged line by line as it was typed.

use crate::general::opened;
use leverwright::draw::parse_code;
use leverwright::lesson::built_in;
use leverwright::session::{Session, Sign, Turn};
use leverwright::text::Words;
use serde::Deserialize;
use std::collections::BTreeMap;
use std::fs;

#[derive(Deserialize)]
struct Place {
    code: Option<String>,
    board: Option<String>,
}

#[derive(Deserialize)]
struct Corpus {
    problem: Place,
    workings: Vec<Working>,
}

#[derive(Deserialize)]
struct Working {
    pupil: String,
    lines: Vec<Line>,
}

#[derive(Deserialize)]
struct Line {
    line: String,
    truth: String,
    /// What it establishes for the first time in the working.
    settles: Vec<String>,
    why: String,
}

/// A verdict that is another one now than its author gave, with the reason.
#[derive(Deserialize)]
struct Change {
    file: String,
    pupil: String,
    line: usize,
    text: String,
    from: String,
    to: String,
    reason: String,
}

fn changes() -> Vec<Change> {
    let place = format!("{}/tests/corpus_changes.json", env!("CARGO_MANIFEST_DIR"));
    serde_json::from_str(&fs::read_to_string(place).unwrap()).unwrap()
}

/// Every file of the corpus as its authors wrote it, by name, with the changes put in.
fn corpus() -> Vec<(String, Corpus)> {
    let folder = format!("{}/tests/corpus", env!("CARGO_MANIFEST_DIR"));
    let mut found: Vec<(String, Corpus)> = fs::read_dir(folder)
        .unwrap()
        .map(|entry| entry.unwrap().path())
        .filter(|path| path.extension().is_some_and(|kind| kind == "json"))
        .map(|path| {
            let name = path.file_stem().unwrap().to_string_lossy().into_owned();
            let text = fs::read_to_string(&path).unwrap();
            (name, serde_json::from_str(&text).unwrap())
        })
        .collect();
    found.sort_by(|one, other| one.0.cmp(&other.0));
    for change in changes() {
        let (_, corpus) = found.iter_mut().find(|one| one.0 == change.file).unwrap();
        let mut workings = corpus.workings.iter_mut();
        let working = workings.find(|one| who(one) == change.pupil).unwrap();
        let line = &mut working.lines[change.line - 1];
        assert_eq!((&line.line, &line.truth), (&change.text, &change.from));
        assert!(change.reason.len() > 20 && change.to != change.from);
        line.truth = change.to;
    }
    found
}

fn who(working: &Working) -> &str {
    working.pupil.split([':', ',']).next().unwrap_or_default()
}

/// A working of one's own at this problem: which forces act, and the pivot, are not asked.
fn start(place: &Place) -> Session {
    let mut session = match &place.board {
        Some(board) => opened(board),
        None => drawn(place.code.as_ref().unwrap()),
    };
    session.submit("freely");
    session
}

pub(crate) fn drawn(code: &str) -> Session {
    let lessons = built_in();
    let (lesson, at) = parse_code(code, &lessons).unwrap();
    let problem = lessons[lesson].problem_at(&at, "en").unwrap();
    Session::start(problem, None, Words::english()).unwrap()
}

/// True if the answer is the one that a teacher would give.
fn agrees(line: &Line, turn: &Turn) -> bool {
    let sign = turn.line.sign;
    let right = matches!(sign, Sign::Right | Sign::Rounded | Sign::Follows);
    match line.truth.as_str() {
        // What is only noted settles nothing.
        "holds" => right || line.settles.is_empty() && matches!(sign, Sign::Noted | Sign::Talk),
        "rounded" | "follows" => right,
        "wrong" => sign == Sign::Wrong,
        "coarse" => sign == Sign::Incomplete,
        // Where only the unit is left out, the line is right and the unit is named.
        "unit" => {
            sign == Sign::Incomplete || right && turn.line.message.to_string().contains("unit")
        }
        "asked" => matches!(sign, Sign::Noted | Sign::Unclear),
        other => panic!("{other} is no truth"),
    }
}

/// The lines that are not judged as they should be, and what was said of each.
fn disagreements() -> (Vec<String>, usize, String) {
    let (mut open, mut count, mut all) = (Vec::new(), 0, String::new());
    let mut table: BTreeMap<(String, String), usize> = BTreeMap::new();
    for (name, corpus) in corpus() {
        for working in &corpus.workings {
            let mut session = start(&corpus.problem);
            for (at, line) in working.lines.iter().enumerate() {
                let turn = session.submit(&line.line);
                let sign = format!("{:?}", turn.line.sign);
                *table.entry((line.truth.clone(), sign.clone())).or_default() += 1;
                count += 1;
                let who = who(working);
                if !agrees(line, &turn) {
                    open.push(format!(
                        "{name}\t{who}\t{}\t{}\t{}\t{sign}",
                        at + 1,
                        line.line,
                        line.truth
                    ));
                }
                let cells = [
                    &name,
                    &working.pupil,
                    &(at + 1).to_string(),
                    &line.line,
                    &line.truth,
                    &sign,
                    &line.settles.join(","),
                    &turn.kept.progress.join(","),
                    &line.why,
                    &turn.line.message.to_string().replace('\n', " "),
                ];
                all.push_str(&cells.map(String::as_str).join("\t"));
                all.push('\n');
            }
        }
    }
    for ((truth, sign), count) in table {
        all.push_str(&format!("{truth:8} {sign:12} {count}\n"));
    }
    (open, count, all)
}

#[test]
fn every_line_is_judged_as_a_teacher_would() {
    let (open, count, _) = disagreements();
    assert!(count >= 1600, "{count}");
    // No more than one verdict in a hundred was changed since the lines were written.
    assert!(100 * changes().len() <= count);
    assert!(open.is_empty(), "{open:#?}");
}

#[test]
#[ignore = "prints how every line is judged"]
#[allow(clippy::print_stdout)]
fn measure_the_corpus() {
    println!("{}", disagreements().2);
}
