//! Learners' working written by hand (`tests/corpus`), judged line by line as it was typed.

use crate::general::opened;
use leverwright::draw::parse_code;
use leverwright::lesson::built_in;
use leverwright::session::{Session, Sign};
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
    settles: Vec<String>,
    why: String,
}

/// Every file of the corpus, by name.
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
    found
}

/// A working of one's own at this problem: which forces act, and the pivot, are not asked.
fn start(place: &Place) -> Session {
    if let Some(board) = &place.board {
        return opened(board);
    }
    let lessons = built_in();
    let (lesson, at) = parse_code(place.code.as_ref().unwrap(), &lessons).unwrap();
    let problem = lessons[lesson].problem_at(&at, "en").unwrap();
    let mut session = Session::start(problem, None, Words::english()).unwrap();
    session.submit("skip");
    session.submit("skip");
    session
}

#[test]
#[ignore = "prints how every line is judged"]
fn measure_the_corpus() {
    let go_on = std::env::var("GO_ON").is_ok();
    let mut table: BTreeMap<(String, String), usize> = BTreeMap::new();
    for (name, corpus) in corpus() {
        for working in &corpus.workings {
            let mut session = start(&corpus.problem);
            for (at, line) in working.lines.iter().enumerate() {
                let turn = session.submit(&line.line);
                let sign = format!("{:?}", turn.line.sign);
                *table.entry((line.truth.clone(), sign.clone())).or_default() += 1;
                println!(
                    "{}\t{}\t{}\t{}\t{}\t{}\t{}\t{}\t{}\t{}",
                    name,
                    working.pupil,
                    at + 1,
                    line.line,
                    line.truth,
                    sign,
                    line.settles.join(","),
                    turn.kept.progress.join(","),
                    line.why,
                    turn.line.message.to_string().replace('\n', " ")
                );
                if go_on && turn.line.sign == Sign::Wrong {
                    session.submit("go on");
                }
            }
        }
    }
    for ((truth, sign), count) in table {
        eprintln!("{truth:8} {sign:12} {count}");
    }
}
