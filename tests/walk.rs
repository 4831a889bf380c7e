//! Whole walks through a session, as dialogues.

use leverwright::draw::{draw, draw_sister};
use leverwright::lesson::built_in;
use leverwright::session::{Session, Turn};
use leverwright::text::Words;

fn open(lesson: &str, seed: u64) -> Session {
    let lessons = built_in();
    let lesson = lessons.iter().find(|known| known.id() == lesson).unwrap();
    let drawn = draw(lesson, seed, "en").unwrap();
    let sister = draw_sister(lesson, &drawn.place, seed, "en").map(|drawn| drawn.problem);
    Session::start(drawn.problem, sister, Words::english()).unwrap()
}

fn told(line: &str, turn: &Turn) -> String {
    let mut text = format!(
        "> {line}\n  [{:?}] {} | {}",
        turn.line.sign, turn.line.verdict, turn.line.message
    );
    if let Some(reading) = &turn.line.reading {
        text.push_str(&format!("\n  read: {reading}"));
    }
    for hint in &turn.line.hints {
        text.push_str(&format!("\n  hint: {hint}"));
    }
    if turn.moved_on {
        text.push_str(&format!("\n? {}", turn.question));
    }
    text
}

#[test]
fn print_walk() {
    let mut session = open("mast", 3);
    println!(
        "{}\n{}",
        session.problem().statement(),
        session.view().question
    );
    let lines = std::fs::read_to_string("/tmp/lines.txt").unwrap();
    for line in lines.lines() {
        let turn = session.submit(line);
        println!("{}", told(line, &turn));
    }
    for prose in session.view().summary {
        println!("{prose}");
    }
}
