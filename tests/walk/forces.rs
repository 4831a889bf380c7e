//! The first two steps, as newcomers take them: what is typed first, and the kind of answer.
//!
//! What people type: common practice, no source. The places and directions are those of seed 7:
//! a mast of 6.6 m leaning left, its rope level to the right at 3.8 m; a counter of 2.2 m to the
//! right, its rope upright at the tip; a walkway of 4.2 m to the left, its rope at 2.2 m, 65° with
//! the vertical, up to the right.

use super::open;
use leverwright::session::{Session, Sign, Turn};

/// The kind of an answer.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Kind {
    /// At least one force is fully said, and nothing is asked of it.
    Taken,
    /// Understood; more is asked.
    AskedOn,
    /// Nothing in the problem acts like that.
    NothingLikeThat,
    /// It comes later.
    Later,
    /// Understood, and not so.
    Wrong,
    /// Explained, greeted or helped: no verdict.
    Told,
    /// Not understood.
    Unclear,
}
use Kind::{AskedOn, Later, NothingLikeThat, Taken, Told, Unclear, Wrong};

pub(super) fn kind(turn: &Turn) -> Kind {
    let message = turn.line.message.to_string();
    match turn.line.sign {
        Sign::Right => Taken,
        Sign::Noted if message.contains("comes later") => Later,
        Sign::Noted | Sign::Incomplete => AskedOn,
        Sign::Wrong if turn.kept.mistakes.iter().any(|id| id == "force-invented") => {
            NothingLikeThat
        }
        Sign::Talk => Told,
        Sign::Unclear => Unclear,
        _ => Wrong,
    }
}

/// Typed first, at any of the three lessons.
const ANYWHERE: &[(&str, Kind)] = &[
    ("", Told),
    ("   ", Told),
    ("hi", Told),
    ("Hello!", Told),
    ("good morning", Told),
    ("?", Told),
    ("help", Told),
    ("help me", Told),
    ("what do you mean?", Told),
    ("what do i do", Told),
    ("idk", Told),
    ("I don't know", Told),
    ("no idea", Told),
    ("hint", Told),
    ("skip", Told),
    ("back", Told),
    ("quit", Told),
    ("ok", Told),
    ("thanks", Told),
    ("my name is Lena", Told),
    ("what is a force", Told),
    ("what is tension?", Told),
    ("why the hinge?", Told),
    ("is there friction?", Told),
    ("how many forces are there", Told),
    ("done", AskedOn),
    ("Lena", Unclear),
    ("asdf", Unclear),
    ("three", Unclear),
    ("all of them", Unclear),
    ("((", Unclear),
    ("normal force", NothingLikeThat),
    ("Normal", NothingLikeThat),
    ("N", NothingLikeThat),
    ("friction", NothingLikeThat),
    ("friction at the hinge", NothingLikeThat),
    ("air resistance", NothingLikeThat),
    ("wind", NothingLikeThat),
    ("force of the wall", NothingLikeThat),
    ("centripetal force", NothingLikeThat),
    ("tension", AskedOn),
    ("the tension in the rope", AskedOn),
    ("tension T", AskedOn),
    ("rope", AskedOn),
    ("tention", AskedOn),
    ("gravitiy", AskedOn),
    ("wieght", AskedOn),
    ("hindge", AskedOn),
    ("1) own weight 2) rope", AskedOn),
    ("weight of the rope", NothingLikeThat),
    ("moment", Later),
    ("no", AskedOn),
    ("give me a hint", Told),
    ("what is the answer?", Told),
    ("pull of the rope", AskedOn),
    ("cable", AskedOn),
    ("T", AskedOn),
    ("is it the rope?", AskedOn),
    ("reaction", AskedOn),
    ("reaction of the hinge", AskedOn),
    ("hinge", AskedOn),
    ("hinge force", AskedOn),
    ("the hinge pushes back", AskedOn),
    ("force at the hinge", AskedOn),
    ("normal force of the hinge", AskedOn),
    ("pin", AskedOn),
    ("R", AskedOn),
    ("H", AskedOn),
    ("Hx and Hy", AskedOn),
    ("gravity", AskedOn),
    ("weight", AskedOn),
    ("W", AskedOn),
    ("mg", AskedOn),
    ("m*g", AskedOn),
    ("W = mg", AskedOn),
    ("force", AskedOn),
    ("left", AskedOn),
    ("down", AskedOn),
    ("↓", AskedOn),
    ("at the tip", AskedOn),
    ("weight of the body", AskedOn),
    ("own weight", AskedOn),
    ("Wb", AskedOn),
    ("mb g", AskedOn),
    ("weight of the beam, down", AskedOn),
    ("gravity, tension", AskedOn),
    ("weight, rope, hinge", AskedOn),
    ("own weight, middle, unknown", AskedOn),
    ("weight of the body in the middle, down", Taken),
    ("own weight at the centre ↓", Taken),
    ("body, L/2, straight down", Taken),
    ("down, middle, own weight", Taken),
    ("own weight, centre of mass, vertically downwards", Taken),
    ("hinge, unknown", Taken),
    ("hinge at the foot, up and to the left", Taken),
    ("hinge: don't know", Taken),
    ("own weight, tip, down", Wrong),
    ("own weight, middle, up", Wrong),
    ("own weight, middle, along the rope", Wrong),
    ("hinge at the tip", Wrong),
    ("4", Later),
    ("50 N", Later),
    ("50 degrees", Later),
    ("T = 50 N", Later),
    ("T=50N", Later),
    ("9.8*3", Later),
    ("W1 = 3*9.8 = 29.4", Later),
    ("sin(50)", Later),
    ("T cos 35", Later),
    ("sum of moments = 0", Later),
    ("T + W = H", Later),
];

/// Typed first at one lesson, seed 7.
const AT_A_LESSON: &[(&str, &str, Kind)] = &[
    ("mast", "mast", AskedOn),
    ("mast", "weight of the mast", AskedOn),
    ("mast", "practice dummy", AskedOn),
    ("mast", "dummy at the tip down", Taken),
    ("mast", "the dummy's weight, tip, downwards", Taken),
    ("mast", "m1g down at the tip", Taken),
    ("mast", "W1, 6.6 m, south", Taken),
    ("mast", "rope, 3.8 m, right", Taken),
    ("mast", "rope at 3.8 m along the rope", Taken),
    ("mast", "tension, 380 cm, horizontally to the right", Taken),
    ("mast", "rope, 2.8 m from the tip, →", Taken),
    ("mast", "rope at dT to the right", Taken),
    ("mast", "rope, 3,8 m, at 0° to the horizontal", Taken),
    ("mast", "rope towards the tower, 3.8 m", Taken),
    ("mast", "rope, 3.8 m, horizontal", AskedOn),
    ("mast", "rope pulls left", Wrong),
    ("mast", "rope, 3.8 m, up", Wrong),
    ("mast", "rope, 3.8 m, down the mast", Wrong),
    ("mast", "rope at the tip, right", Wrong),
    ("mast", "rope in the middle, right", Wrong),
    ("mast", "rope, 3.8 m, at 40° to the horizontal", Wrong),
    ("mast", "dummy in the middle, down", Wrong),
    ("mast", "bag of gear", Unclear),
    ("counter", "crate of melons", AskedOn),
    ("counter", "crate, 1.9 m, down", Taken),
    ("counter", "normal force of the crate, 1.9 m, down", Taken),
    ("counter", "onions 0.4 m down", Taken),
    ("counter", "rope, free end, vertical", AskedOn),
    ("counter", "rope, right end, vertically upwards", Taken),
    ("counter", "rope up at the end", Taken),
    ("counter", "rope, tip, at 90° to the horizontal", Taken),
    ("counter", "rope, tip, down", Wrong),
    ("counter", "crate at the rope, down", Wrong),
    ("walkway", "bird watcher", AskedOn),
    ("walkway", "watcher 2 m from the hinge down", Taken),
    ("walkway", "chest, left end, down", Taken),
    // Half of the length from the hinge names no hinge.
    (
        "walkway",
        "weight of the walkway, L/2 from the hinge, down",
        Taken,
    ),
    (
        "walkway",
        "weight of the walkway, half the length from the foot, down",
        Taken,
    ),
    // A weight points to no side: so that end is meant.
    ("walkway", "weight of the chest, at the left, down", Taken),
    ("walkway", "chest, on the left, straight down", Taken),
    ("walkway", "chest, at the right, down", Wrong),
    ("walkway", "rope 2.2 m up", AskedOn),
    ("walkway", "rope 2.2 m up and to the right", Taken),
    ("walkway", "rope, 2.2 m, 65° to the vertical", Taken),
    ("walkway", "rope, 2.2 m, β to the vertical", Taken),
    ("walkway", "rope, 2.2 m, 25° above the horizontal", Taken),
    ("walkway", "rope, 2.2 m, 65° to the horizontal", Wrong),
    ("walkway", "rope, 2.2 m, up and left", Wrong),
    ("walkway", "rope, 2.2 m, down and left", Wrong),
    ("walkway", "rope, 2.2 m, towards the hinge", Wrong),
];

#[test]
fn the_first_thing_typed_meets_an_answer_of_its_kind() {
    let everywhere = ["mast", "counter", "walkway"]
        .into_iter()
        .flat_map(|lesson| {
            ANYWHERE
                .iter()
                .map(move |(line, wanted)| (lesson, *line, *wanted))
        });
    let mut faults = Vec::new();
    for (lesson, line, wanted) in everywhere.chain(AT_A_LESSON.iter().copied()) {
        let mut session = open(lesson, 7);
        let turn = session.submit(line);
        if kind(&turn) != wanted {
            let message = &turn.line.message;
            faults.push(format!("{lesson}: {line}: {:?}, {message}", kind(&turn)));
        }
    }
    assert!(faults.is_empty(), "{}", faults.join("\n"));
}

/// Typed first at the pivot.
const PIVOT: &[(&str, &str, Kind)] = &[
    ("mast", "hinge", Taken),
    ("mast", "about the hinge", Taken),
    ("mast", "H", Taken),
    ("mast", "the foot", Taken),
    ("mast", "where the hinge is", Taken),
    ("mast", "the pin at the bottom", Taken),
    ("mast", "0", Taken),
    ("mast", "0 m", Taken),
    ("counter", "left end", Taken),
    ("walkway", "right end", Taken),
    ("mast", "tip", AskedOn),
    ("mast", "the dummy", AskedOn),
    ("mast", "where the rope is tied", AskedOn),
    ("mast", "3.8", AskedOn),
    ("mast", "middle", AskedOn),
    ("mast", "99 m", AskedOn),
    ("counter", "tip", AskedOn),
    ("mast", "A", Unclear),
    ("mast", "point O", Unclear),
    ("mast", "not the hinge", Unclear),
    ("mast", "asdf", Unclear),
    ("mast", "the mast", Unclear),
    ("mast", "down", Unclear),
    ("mast", "T = 50 N", Later),
    ("mast", "72*9.8 = 700", Later),
    ("mast", "why the hinge?", Told),
    ("mast", "why?", Told),
    ("mast", "what is a moment", Told),
    ("mast", "?", Told),
    ("mast", "idk", Told),
    ("mast", "", Told),
    ("mast", "ok", Told),
];

#[test]
fn the_first_thing_typed_at_the_pivot_meets_an_answer_of_its_kind() {
    let mut faults = Vec::new();
    for (lesson, line, wanted) in PIVOT {
        let mut session = at_the_pivot(lesson);
        let turn = session.submit(line);
        if kind(&turn) != *wanted {
            let message = &turn.line.message;
            faults.push(format!("{lesson}: {line}: {:?}, {message}", kind(&turn)));
        }
    }
    assert!(faults.is_empty(), "{}", faults.join("\n"));
}

pub(super) fn at_the_pivot(lesson: &str) -> Session {
    let mut session = open(lesson, 7);
    session.submit("skip");
    session
}

fn said(session: &mut Session, line: &str) -> String {
    session.submit(line).line.message.to_string()
}

/// A force that is still being placed waits, whatever comes between.
#[test]
fn a_further_force_is_a_new_one_and_the_open_one_is_asked_later() {
    let mut session = open("mast", 7);
    said(&mut session, "weight of the mast");
    assert!(said(&mut session, "rope").contains("rope"));
    assert!(session.view().question.to_string().contains("rope"));
    for between in ["50 N", "T = 3*9.8", "sin(50)", "72"] {
        assert_eq!(kind(&session.submit(between)), Later, "{between}");
    }
    assert_eq!(kind(&session.submit("friction")), NothingLikeThat);
    assert!(session.view().question.to_string().contains("rope"));
    let turn = session.submit("3.8 m, right");
    assert_eq!(kind(&turn), Taken);
    let message = turn.line.message.to_string();
    assert!(message.contains("weight of the mast"), "{message}");
    assert_eq!(kind(&session.submit("middle")), AskedOn);
    assert_eq!(kind(&session.submit("down")), Taken);
}

#[test]
fn several_forces_in_a_line_are_taken_apart() {
    let apart = [
        "weight at the middle, down; rope at 3.8 m along the rope; hinge at the foot, unknown; \
         dummy, tip, down",
        "weight of the mast, middle, down, dummy, tip, down, rope, 3.8 m, right, hinge, unknown",
        "weight of the mast, middle, down and weight of the dummy, tip, down and rope, 3.8 m, right \
         and hinge, unknown",
        "mast middle down and dummy tip down and rope 3.8 m right and hinge unknown",
        "the dummy hangs at the tip and pulls down. The rope pulls right at 3.8 m. The mast's \
         weight acts down at the middle. The hinge's direction is unknown.",
        "hinge ?; tip ↓ dummy; rope → 3.8 m; mast ↓ middle",
    ];
    for line in apart {
        let mut session = open("mast", 7);
        let turn = session.submit(line);
        assert!(turn.moved_on, "{line}: {}", turn.line.message);
    }
    let mut session = open("mast", 7);
    let turn = session.submit("weight of the mast, tip, down; rope, 3.8 m, right");
    assert_eq!(kind(&turn), Wrong);
    assert_eq!(turn.kept.mistakes, ["own-weight-at-tip"]);
    let message = turn.line.message.to_string();
    assert!(message.contains("Yes: the pull of the rope"), "{message}");
}

/// "Weight, down": "of what?": "the mast". Nothing has to be said twice.
#[test]
fn what_was_said_before_the_force_was_clear_is_kept() {
    let mut session = open("mast", 7);
    assert!(said(&mut session, "weight down").contains("of what"));
    said(&mut session, "the mast");
    assert_eq!(kind(&session.submit("middle")), Taken);
    let mut session = open("mast", 7);
    assert!(said(&mut session, "down").contains("Which force"));
    said(&mut session, "dummy");
    assert_eq!(kind(&session.submit("tip")), Taken);
}

/// A list of names is noted in one sentence, and one question follows.
#[test]
fn several_names_bring_one_question() {
    let mut session = open("mast", 7);
    let message = said(&mut session, "own weight, rope, hinge");
    assert_eq!(message.matches("Still to say").count(), 1, "{message}");
    assert!(
        message.contains("the pull of the rope, the force of the hinge"),
        "{message}"
    );
    let question = session.view().question.to_string();
    assert!(question.contains("weight of the mast"), "{question}");
}

#[test]
fn a_single_weight_needs_no_of_what() {
    let mut session = open("mast", 7);
    session.submit("dummy, tip, down");
    let turn = session.submit("weight, middle, down");
    assert_eq!(kind(&turn), Taken, "{}", turn.line.message);
}

#[test]
fn three_lines_that_lead_nowhere_bring_an_offer_of_help() {
    for lines in [
        ["friction", "normal force", "wind"],
        ["asdf", "Lena", "qwert"],
    ] {
        let mut session = open("walkway", 7);
        for (index, line) in lines.iter().enumerate() {
            let offered = said(&mut session, line).contains("show");
            assert_eq!(offered, index == 2, "{line}");
        }
    }
}

/// An example shows the form, and no force, place or direction of the problem by itself.
#[test]
fn examples_are_never_the_answer() {
    for lesson in ["mast", "counter", "walkway"] {
        let mut session = open(lesson, 7);
        for line in [
            "",
            "hinge",
            "unknown",
            "own weight",
            "middle",
            "down",
            "rope",
        ] {
            session.submit(line);
            let view = session.view();
            let example = view.example.to_string();
            for force in session.problem().forces() {
                assert!(!example.contains(force.noun), "{lesson}: {example}");
            }
            let mut other = open(lesson, 7);
            let turn = other.submit(&example);
            assert_ne!(turn.line.sign, Sign::Right, "{lesson}: {example}");
        }
    }
}

/// A point off the guided way is explained once and kept when it is said again.
#[test]
fn another_pivot_may_be_kept() {
    let mut session = at_the_pivot("mast");
    assert!(!session.submit("tip").moved_on);
    assert!(session.submit("the tip").moved_on);
    session.submit("back");
    assert!(!session.submit("tip").moved_on, "taken back is forgotten");
    // Counter, seed 7: the rope is tied to the tip.
    let mut session = at_the_pivot("counter");
    for _ in 0..2 {
        let turn = session.submit("tip");
        assert!(!turn.moved_on);
        assert!(turn.line.message.to_string().contains("pull of the rope"));
    }
}

#[test]
fn why_the_hinge_is_answered_after_it_was_chosen() {
    let mut session = at_the_pivot("mast");
    session.submit("hinge");
    assert_eq!(kind(&session.submit("why the hinge?")), Told);
}
