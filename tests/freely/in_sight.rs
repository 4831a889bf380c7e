//! What a free working shows: the drawing has what her lines speak of, the header what the problem asks
//! for, and hints follow the line that waits.

use super::WALKWAY;
use super::again::sitting;
use leverwright::lesson::parse_problem;
use leverwright::problem::ForceId;
use leverwright::session::{Progress, Session};
use leverwright::sketch::{Marks, Stage};
use leverwright::text::Words;

fn walkway() -> Session {
    Session::start(parse_problem(WALKWAY).unwrap(), None, Words::english()).unwrap()
}

/// The forces drawn, by their symbols, and a ring at the pivot as `o`.
fn drawn(marks: &Marks) -> String {
    let symbol = |label: &str| label.split(' ').next().unwrap().to_owned();
    let forces = marks.forces.iter().map(|mark| symbol(&mark.label));
    let ring = marks.pivot.map(|_| "o".to_owned());
    forces.chain(ring).collect::<Vec<_>>().join(" ")
}

/// All that is drawn at any stage.
fn in_sight(session: &Session) -> String {
    let stages = session.view().stages;
    let fullest = stages
        .iter()
        .max_by_key(|marks| drawn(marks).len())
        .unwrap();
    drawn(fullest)
}

/// Lines of a free working at the walkway, and what is drawn after them.
#[rustfmt::skip]
const ROWS: &[(&[&str], &str)] = &[
    (&[], ""),
    (&["hint"], ""),
    (&["why"], ""),
    // By a value, by a name, by numbers, by words; a wrong line speaks of its names all the same.
    (&["W1 = 803.6 N"], "W1"),
    (&["82*9.8"], "W1"),
    (&["m1*g"], "W1"),
    (&["weight of the bird watcher: 82*9.8 = 803.6 N"], "W1"),
    (&["W1 = 80 N"], "W1"),
    (&["W1 + Wb = 1156.4 N"], "Wb W1"),
    (&["352.8*2.1 = 741"], "Wb"),
    (&["weight of the chest of telescopes, tip, down"], "W2"),
    (&["weight of the chest of telescopes, tip, up"], ""),
    (&["no weight of the chest of telescopes"], ""),
    // The pull's value alone draws the pull, and no balance.
    (&["T = 3588 N"], "T"),
    (&["Hx = -3252 N"], "H"),
    (&["Hx = -T cos 25"], "T H"),
    // The pivot is drawn where it is said, or where moments are taken about it.
    (&["moments about the hinge"], "o"),
    (&["moments about the tip"], "o"),
    (&["Wb*2.1 + W1*2 + W2*4.2 = T*2.2*cos 65"], "Wb W1 W2 T o"),
    (&["352.8*2.1 + 803.6*2 + 235.2*4.2 = T*2.2*cos 65"], "Wb W1 W2 T o"),
    (&["T = (352.8*2.1 + 803.6*2 + 235.2*4.2)/(2.2*cos 65)"], "Wb W1 W2 T o"),
    // One weight forgotten is not drawn for her.
    (&["352.8*2.1 + 235.2*4.2 = T*2.2*cos 65"], "Wb W2 T o"),
    // What is taken back is drawn no longer.
    (&["W1 = 803.6 N", "W2 = 235.2 N", "back"], "W1"),
    (&["W1 = 803.6 N", "instead of line 1: W2 = 235.2 N"], "W2"),
    // What was shown is said.
    (&["show"], "Wb"),
    (&["done"], ""),
];

#[test]
fn a_free_working_draws_nothing_that_she_has_not_said() {
    for (lines, expected) in ROWS {
        let mut session = walkway();
        session.submit("freely");
        for line in *lines {
            session.submit(line);
        }
        let view = session.view();
        assert_eq!(in_sight(&session), *expected, "{lines:?}");
        for marks in &view.stages {
            let is_drawn = |force: ForceId| marks.forces.iter().any(|mark| mark.force == force);
            let parts = marks.components.iter().map(|mark| mark.force);
            assert!(
                parts
                    .chain(marks.distances.iter().map(|mark| mark.force))
                    .all(is_drawn)
            );
        }
        // The same lines bring the same screen, as a journal does.
        let mut again = walkway();
        again.submit("freely");
        for line in *lines {
            again.submit(line);
        }
        assert_eq!(again.view(), view, "{lines:?}");
    }
}

#[test]
fn what_was_named_before_stays_drawn_and_no_step_is_asked() {
    let mut session = walkway();
    session.submit("weight of the walkway, middle, down");
    session.submit("freely");
    let view = session.view();
    assert_eq!(in_sight(&session), "Wb");
    assert!(view.freely);
    let titles: Vec<&str> = view.steps.iter().map(|step| step.title.as_str()).collect();
    assert_eq!(titles.len(), 5, "{titles:?}");
    assert!(titles[0].contains("tension"), "{titles:?}");
    assert!(
        view.steps
            .iter()
            .all(|step| step.progress == Progress::Ahead)
    );
    assert!(
        !view.example.to_string().contains("9.8"),
        "{}",
        view.example
    );
    session.submit("T = 3588 N");
    let view = session.view();
    assert_eq!(view.steps[0].progress, Progress::Done);
    assert_eq!(view.steps[0].result.as_deref(), Some("T = 3590 N"));
    assert_eq!(view.marks.stage, Stage::Forces);
    // A line is filed under what it tells.
    session.submit("Hx = 12 N");
    let about = session.view().lines.last().unwrap().about.clone();
    assert!(about.contains("hinge"), "{about}");

    // Asked again, every step is there, and what it names is drawn.
    let told = session.submit("guided").line.message.to_string();
    assert!(told.contains("drawn now"), "{told}");
    let view = session.view();
    assert!(!view.freely);
    assert_eq!(in_sight(&session), "Wb W1 W2 T H o");
    assert!(view.steps.len() > 8);
    assert!(view.steps.iter().any(|step| step.progress == Progress::Now));
    assert!(session.submit("36*9.8").moved_on);
    // Who had named all is told nothing of a drawing.
    session.submit("freely");
    let told = session.submit("guided").line.message.to_string();
    assert!(!told.contains("drawn"), "{told}");
}

/// The mast of seed 3: 617.4 N, 695.8 N and 107.8 N at 2.7 m, 4.5 m and 5.4 m across sin 35°, the rope
/// at 4.2 m across sin 65°.
const WRONG: &str = "617.4*2.7*sin 35 + 695.8*4.5*cos 35 + 107.8*5.4*sin 35 = 4.2*T*sin 65";

#[test]
fn a_hint_of_a_free_working_follows_the_line_that_waits() {
    let mut session = sitting("mast --seed 3");
    session.submit("freely");
    let before = session.submit("hint");
    assert!(!before.line.hints[0].to_string().contains("triangle"));
    let wrong = session.submit(WRONG).line;
    assert!(
        wrong.message.to_string().contains("W1"),
        "{}",
        wrong.message
    );
    for place in 0..2 {
        session.submit("hint");
        let view = session.view();
        let line = view
            .lines
            .iter()
            .find(|line| line.number == Some(1))
            .unwrap();
        let hint = line.hints[place].to_string();
        assert!(
            hint.contains("right triangle") && hint.contains("W1"),
            "{hint}"
        );
        assert_eq!(
            view.marks.triangle.as_ref().map(|lit| lit.force),
            Some(ForceId::Load(0))
        );
    }
    // What is found meanwhile mends nothing; the hint stands by itself and says what it is about.
    session.submit("Wb = 617.4 N");
    session.submit("hint");
    let view = session.view();
    let last = view.lines.last().unwrap();
    assert!(
        last.hints[0].to_string().contains("right triangle"),
        "{:?}",
        last.hints
    );
    assert!(last.about.contains("moment"), "{}", last.about);
    assert_eq!(
        view.marks.triangle.as_ref().map(|lit| lit.force),
        Some(ForceId::Load(0))
    );
    // Once it is mended, help goes on to what is next, and no triangle is lit.
    session.submit(&WRONG.replace("cos", "sin"));
    session.submit("hint");
    let view = session.view();
    let last = view.lines.last().unwrap().hints[0].to_string();
    assert!(!last.contains("triangle"), "{last}");
    assert_eq!(view.marks.triangle, None);
}

/// In a guided walk the triangle is lit at the balance, too, where the hint speaks of it.
#[test]
fn a_hint_at_a_balance_lights_the_triangle_that_it_speaks_of() {
    let mut session = sitting("mast --seed 3");
    while !session.view().question.to_string().contains("balance") {
        session.submit("skip");
    }
    session.submit(WRONG);
    session.submit("hint");
    let view = session.view();
    let hint = view.lines.last().unwrap().hints[0].to_string();
    assert!(hint.contains("right triangle of W1"), "{hint}");
    assert_eq!(
        view.marks.triangle.as_ref().map(|lit| lit.force),
        Some(ForceId::Load(0))
    );
}
