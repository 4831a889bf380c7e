//! Whole workings of one problem as ten pupils would write them, as dialogues.
//!
//! Each file of `tests/dialogues` is a pupil: the sign that a teacher would set, and the line. The
//! snapshots beside the others are to be read as a teacher would read them.
//!
//! The mast by hand: Wb = 411.6 N, W1 = 705.6 N, across it 236.1 N and 404.7 N; T = 2350.7/(6.2 sin 80°)
//! = 385.0 N with parts 348.9 N and 162.7 N; Hx = 348.9 N to the left, Hy = 954.5 N, H = 1016 N, ψ = 69.9°.

use leverwright::lesson::parse_problem;
use leverwright::session::{Session, Sign};
use leverwright::text::Words;
use std::fmt::Write;
use std::fs;

const MAST: &str = include_str!("lines/mast.json");

fn sign_of(word: &str) -> Sign {
    match word {
        "right" => Sign::Right,
        "noted" => Sign::Noted,
        "follows" => Sign::Follows,
        "rounded" => Sign::Rounded,
        "wrong" => Sign::Wrong,
        "talk" => Sign::Talk,
        other => panic!("no sign is called {other}"),
    }
}

#[test]
fn ten_pupils_work_one_problem_as_ten_people_would() {
    let folder = format!("{}/tests/dialogues", env!("CARGO_MANIFEST_DIR"));
    let mut files: Vec<_> = (fs::read_dir(folder).unwrap())
        .map(|entry| entry.unwrap().path())
        .collect();
    files.sort();
    assert_eq!(files.len(), 10);
    let mut faults = Vec::new();
    for file in files {
        let name = file.file_stem().unwrap().to_str().unwrap().to_owned();
        let text = fs::read_to_string(&file).unwrap();
        let problem = parse_problem(MAST).unwrap();
        let mut session = Session::start(problem, None, Words::english()).unwrap();
        session.submit("freely");
        let mut dialogue = String::new();
        for line in text.lines() {
            let Some((sign, typed)) = line.split_once(" | ") else {
                writeln!(dialogue, "{}\n", line.trim_start_matches("# ")).unwrap();
                continue;
            };
            let turn = session.submit(typed);
            let said = &turn.line;
            let message = said.message.to_string();
            let verdict = format!("{:?}. {message}", said.sign);
            writeln!(dialogue, "> {typed}\n  {}\n", verdict.trim_end()).unwrap();
            if said.sign != sign_of(sign) {
                faults.push(format!(
                    "{name}: {typed}: {sign}, not {:?}: {}",
                    said.sign, said.message
                ));
            }
        }
        insta::assert_snapshot!(name, dialogue);
    }
    assert_eq!(faults, Vec::<String>::new());
}
