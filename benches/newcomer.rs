//! Prints what the tutor answers to the first things that a newcomer types, for a teacher to read:
//! `cargo bench --bench newcomer`. Each line meets a session of its own.
#![allow(clippy::print_stdout, clippy::unwrap_used, missing_docs)]

use leverwright::draw::draw;
use leverwright::lesson::built_in;
use leverwright::session::Session;
use leverwright::text::Words;

/// At the very first question, about the forces.
const FORCES: &[&str] = &[
    "",
    "hi",
    "what do i do",
    "?",
    "weight",
    "the weight",
    "gravity",
    "tension",
    "rope",
    "T",
    "mg",
    "W",
    "normal force",
    "friction",
    "the hinge pushes back",
    "rope pulls left",
    "T = 50 N",
    "4",
    "three",
    "weight of the body in the middle, down",
    "body",
    "dummy at the tip down",
    "hinge",
    "reaction",
    "i dont get it",
    "sin(50)",
    "all of them",
    "left",
    "down",
    "force of the wall",
    "tention",
    "weight, rope, hinge",
    "weight of the body; rope; hinge, unknown",
    "own weight, tip, down",
    "rope, unknown",
    "weight of the rope",
    "what is tension",
    "no",
];

/// At the pivot.
const PIVOT: &[&str] = &[
    "",
    "?",
    "hinge",
    "H",
    "A",
    "the foot",
    "tip",
    "where the rope is tied",
    "middle",
    "99 m",
    "why the hinge?",
    "T = 50 N",
    "the mast",
];

/// At the first question about a value.
const VALUE: &[&str] = &[
    "",
    "?",
    "mg",
    "m*g",
    "m g",
    "9.8",
    "52",
    "52*9.8",
    "52 * 9,8",
    "52kg*9.8",
    "510",
    "509.6",
    "509.6 N",
    "509.6N",
    "W=509.6",
    "W = mg",
    "about 500",
    "500",
    "5.1e2",
    "0.5096 kN",
    "509.6 kg",
    "510 Newtons",
    "sin(50)",
    "50",
    "50 degrees",
    "zero",
    "mass times gravity",
    "52x9.8",
    "52*10",
    "52*9.81",
    "=52*9.8",
    "52*",
    "(52*9.8",
    "52/9.8",
    "-509.6",
    "T",
    "no idea",
    "what is g",
];

fn main() {
    let lessons = built_in();
    let mast = lessons.iter().find(|lesson| lesson.id() == "mast").unwrap();
    let problem = draw(mast, 3, "en").unwrap().problem;
    println!("{}", problem.statement());
    let mass = problem
        .givens()
        .iter()
        .find(|given| given.written.ends_with("kg"))
        .map_or(52.0, |given| given.value);
    for (question, lines) in [("forces", FORCES), ("pivot", PIVOT), ("value", VALUE)] {
        println!("\n== {question}");
        for line in lines {
            let mut session = Session::start(problem.clone(), None, Words::english()).unwrap();
            let passed = match question {
                "forces" => 0,
                "pivot" => 1,
                _ => 2,
            };
            for _ in 0..passed {
                session.submit("skip");
            }
            // The numbers above are those of a mass of 52 kg.
            let line = line
                .replace("509.6", &format!("{:.1}", mass * 9.8))
                .replace("0.5096", &format!("{:.4}", mass * 0.0098))
                .replace("52", &format!("{mass}"));
            let turn = session.submit(&line);
            println!("{line:28} [{}] {}", turn.line.verdict, turn.line.message);
        }
    }
}
