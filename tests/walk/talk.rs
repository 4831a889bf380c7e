//! What is answered to what learners typed, word for word.

use super::{open, right_lines};
use leverwright::session::{Course, Session};

/// A lesson at seed 1, how many questions are skipped first, the lines, and what is said to the
/// last of them.
type Row = (&'static str, usize, &'static [&'static str], &'static str);

const PUSH: &str =
    "A rope can only pull, never push. Which way from the counter does the rope run?";
const GRAVITY_TEN: &str = "That is the value with g = 10 m/s². This problem uses g = 9.8 m/s². \
    Mend it, or type hint, show, go on (with yours), or I think I am right.";
// 176.4 N to two figures is 180 N as well.
const TEN_OR_FEW: &str = "Perhaps this was worked with g = 10 m/s², or rounded to too few figures. \
    This problem uses g = 9.8 m/s². Mend it, or type hint, show, go on (with yours), or I think I \
    am right.";
const KILO: &str = "That is the value in kN. Write the unit behind it, or type it in N. Mend it, \
    or type hint, show, go on (with yours), or I think I am right.";
const PARTS_ADDED: &str = "You added or subtracted the two parts of H, as if they lay along one \
    line. Mend it, or type hint, show, go on (with yours), or I think I am right.";
const NO_DISTANCE: &str = "The known side is a moment, the side with T⊥ a force: its distance \
    from the pivot is missing. Mend it, or type hint, show, go on (with yours), or I think I am \
    right.";
const NO_MOMENT: &str = "A moment is no force: it is what a force does about a point. Name the \
    force itself, where it acts and which way.";
const ROPE_AGAIN: &str = "You have named the pull of the rope already.";
const NO_MAKER: &str = "Nothing called so is known here. What makes that force?";

const ANSWERS: &[Row] = &[
    // A force that was named and is still open is not missing.
    (
        "counter",
        0,
        &[
            "Wb, middle, down",
            "W1, tip, down",
            "T 2.4 m up",
            "hinge force",
            "done",
        ],
        "Still to say of the force of the hinge: which way it acts.",
    ),
    (
        "counter",
        0,
        &["Wb, middle, down", "W1, tip, down", "hinge force", "done"],
        "Something more pulls or pushes at the counter. Still to say of the force of the \
         hinge: which way it acts.",
    ),
    // What is asked on names its force.
    (
        "counter",
        0,
        &["rope, 2.4 m, vertical", "hm"],
        "No place or direction was recognised. Along that line, yes. Does the pull of the rope \
         act up or down?",
    ),
    // Ten times the mass.
    ("counter", 2, &["180 N"], TEN_OR_FEW),
    ("counter", 2, &["W = 18*10 = 180 N"], GRAVITY_TEN),
    // What a number or a form shows at first sight.
    ("mast", 2, &["0.559"], KILO),
    ("mast", 10, &["T = 0.402"], KILO),
    (
        "mast",
        10,
        &["0.405"],
        "This is not the tension of the rope yet. Everything before it stands. Mend it, or type \
         hint, show, go on (with yours), or I think I am right.",
    ),
    (
        "mast",
        11,
        &["Hx = 0"],
        "Hx is not zero: something else pulls along this line, and the hinge must balance it. \
         What is it? Mend it, or type hint, show, go on (with yours), or I think I am right.",
    ),
    ("mast", 13, &["H = Hx + Hy"], PARTS_ADDED),
    ("mast", 13, &["951 - 402"], PARTS_ADDED),
    ("mast", 9, &["191*2.8 + 134*5.6 = Tp"], NO_DISTANCE),
    ("mast", 9, &["Wbp*L/2 + W1p*L = Tp"], NO_DISTANCE),
    // What cannot be seen is not read.
    ("mast", 2, &["558\u{200b}.6 N\u{feff}"], ""),
    // The smallest number is no foot.
    ("mast", 1, &["1e-999"], "That comes later: first the pivot."),
    // A name of her own that was used before.
    (
        "mast",
        7,
        &["Mk = 3", "Mk = 12*13"],
        "Mk = 156. It is judged when you use it.",
    ),
    (
        "mast",
        8,
        &["Mk = 3", "Mk = 12*13"],
        "Mk = 156. It is judged when you use it.",
    ),
    // A rope pushes nothing.
    ("counter", 0, &["rope pushes up at 2.4 m"], PUSH),
    ("counter", 0, &["the push of the rope, 2.4 m, up"], PUSH),
    (
        "counter",
        0,
        &["rope pushes up at 2.4 m", "it pulls up"],
        "Yes: the pull of the rope, there and that way.",
    ),
    (
        "counter",
        0,
        &["the rope does not push, it pulls up at 2.4 m"],
        "Yes: the pull of the rope, there and that way.",
    ),
    (
        "counter",
        0,
        &["hinge pushes up at the foot"],
        "Taken: the force of the hinge. Whether it acts that way, the working will show.",
    ),
    // A pull said the wrong way is no push.
    (
        "counter",
        0,
        &["rope pulls the counter down at 2.4 m"],
        "That is not the way of the pull of the rope. A rope pulls along itself, towards its \
         other end.",
    ),
    // What hangs lifts nothing; a hinge turns nothing.
    (
        "counter",
        0,
        &["the crate lifts the counter at its tip"],
        "That is not the way of the weight of the crate of melons. Which way does the Earth pull?",
    ),
    ("counter", 0, &["hinge torque"], NO_MOMENT),
    (
        "counter",
        0,
        &["moment of the hinge at the foot"],
        NO_MOMENT,
    ),
    // A size is not credited before it is asked.
    (
        "counter",
        0,
        &["weight of the counter, middle, down, 5000 N"],
        "Yes: the weight of the counter, there and that way. Its size is asked further on; that \
         number is not looked at here.",
    ),
    // Said again: compared with what was credited.
    (
        "mast",
        0,
        &["rope, 3.4 m, right", "rope, 3.4 m, right"],
        ROPE_AGAIN,
    ),
    ("mast", 0, &["rope, 3.4 m, right", "rope"], ROPE_AGAIN),
    (
        "mast",
        0,
        &["rope, 3.4 m, right", "rope, 3.4 m, left"],
        "You have named the pull of the rope already. That is not the way of the pull of the \
         rope. A rope pulls along itself, towards its other end.",
    ),
    (
        "mast",
        0,
        &["rope, 3.4 m, right", "rope at the tip"],
        "You have named the pull of the rope already. The pull of the rope does not act there. A \
         rope pulls at the point of the mast where it is tied.",
    ),
    // Two names of one force.
    (
        "counter",
        0,
        &["tension, rope, at 2.4 m, up"],
        "Yes: the pull of the rope, there and that way.",
    ),
    (
        "counter",
        0,
        &["rope, tension, at 2.4 m, up"],
        "Yes: the pull of the rope, there and that way.",
    ),
    (
        "counter",
        0,
        &["reaction, hinge, unknown"],
        "Yes: the force of the hinge, and its direction is still to be found.",
    ),
    // What nothing here is called is not taken by its place.
    (
        "counter",
        0,
        &["weight of the crate", "bag, tip, down"],
        NO_MAKER,
    ),
    ("counter", 0, &["weight of the bag, tip, down"], NO_MAKER),
    ("counter", 0, &["pull of the monkey, 2.4 m, up"], NO_MAKER),
    (
        "counter",
        0,
        &["weight of the bag, 0.8 m, down", "the crate"],
        "Yes: the weight of the crate of melons, there and that way.",
    ),
    // A moment sum is an equation, and no value.
    (
        "mast",
        9,
        &["Hx=-T"],
        "It holds. Still asked: the moment sum, an equation with the unknown in it.",
    ),
    // Near misses of commands, and a way alone.
    ("mast", 2, &["hnt"], "Did you mean hint?"),
    ("mast", 2, &["shwo"], "Did you mean show?"),
    ("mast", 0, &["hnt"], "Did you mean hint?"),
    (
        "counter",
        6,
        &["up"],
        "That is the way; the size is still asked.",
    ),
    (
        "counter",
        6,
        &["down"],
        "Not that way. Which forces along this line must it balance?",
    ),
    (
        "mast",
        11,
        &["left"],
        "That is the way; the size is still asked.",
    ),
    (
        "mast",
        11,
        &["up"],
        "That is a way. Asked is how large it is.",
    ),
];

fn at(lesson: &str, skipped: usize) -> Session {
    let mut session = open(lesson, 1);
    for _ in 0..skipped {
        session.submit("skip");
    }
    session
}

#[test]
fn what_is_said_is_said_so() {
    for (lesson, skipped, lines, wanted) in ANSWERS {
        let mut session = at(lesson, *skipped);
        let turns: Vec<_> = lines.iter().map(|line| session.submit(line)).collect();
        let said = turns.last().unwrap().line.message.to_string();
        assert_eq!(said, *wanted, "{lesson}: {lines:?}");
    }
}

#[test]
fn an_open_force_is_not_called_forgotten_in_the_summary() {
    let mut session = at("counter", 0);
    for line in [
        "Wb, middle, down",
        "W1, tip, down",
        "T 2.4 m up",
        "hinge force",
        "done",
    ] {
        session.submit(line);
    }
    session.submit("unknown");
    while session.course() == Course::On {
        session.submit("skip");
    }
    let summary = session.view().summary;
    let told: Vec<String> = summary.iter().map(ToString::to_string).collect();
    assert!(!told.join(" ").contains("forgotten"), "{told:?}");
}

/// The last hint at a part of the hinge's force shows where the part of the pull comes from.
#[test]
fn the_parts_of_the_pull_are_told_with_the_parts_of_the_hinge() {
    let mut session = at("walkway", 0);
    let mut hints = Vec::new();
    while session.course() == Course::On {
        hints.extend(session.submit("show").line.hints);
    }
    let told: Vec<String> = hints.iter().map(ToString::to_string).collect();
    for wanted in [
        "Hx = Tx = T·cos β = 600 N·cos 40° = 460 N (to the right)",
        "Hy = Wb + W1 − Ty = Wb + W1 − T·sin β = 412 N + 510 N − 600 N·sin 40° = 536 N (upwards)",
    ] {
        assert!(told.iter().any(|hint| hint.ends_with(wanted)), "{told:?}");
    }
}

/// "For what follows" is not said of the line that nothing follows.
#[test]
fn three_figures_are_wanted_of_the_last_value_and_for_what_follows() {
    let at_the_load = || {
        let mut session = open("counter", 5);
        for _ in 0..3 {
            session.submit("skip");
        }
        session
    };
    let said = at_the_load().submit("88 N").line.message.to_string();
    assert_eq!(said, "For what follows keep three figures.");
    let mut session = at_the_load();
    for line in ["Wb*1.4+W1*1.7=T*2.8", "T=161.4 N", "H=142.4 N"] {
        session.submit(line);
    }
    let said = session.submit("88 N").line.message.to_string();
    assert_eq!(said, "Give a last value with three figures.");
    assert_eq!(session.course(), Course::Finished);
}

/// One line, several, and more than are told.
#[test]
fn own_values_are_told_of_three_lines_at_most() {
    let mut session = open("mast", 1);
    for line in [
        "skip", "hinge", "Wb=600 N", "go on", "W1=500 N", "go on", "skip", "skip",
    ] {
        session.submit(line);
    }
    let mut told = Vec::new();
    for line in [
        "Wb*sin(alpha)",
        "W1*sin(alpha)",
        "T*sin(gamma)",
        "Wbp*2.8+W1p*5.6=Tp*3.4",
        "T=(Wbp*2.8+W1p*5.6)/(3.4*sin(gamma))",
    ] {
        told.push(session.submit(line).line.message.to_string());
    }
    let own = |lines: &str| format!("Right way, with your own {lines}.");
    assert_eq!(told[1], own("value from line 3"));
    let balance = own("values from lines 4, 5");
    assert_eq!(told[3], format!("{balance} The balance holds."));
    assert_eq!(told[4], own("values from lines 4, 5"));
}

/// A line that settles all that is sought leaves the steps before it open, and free.
#[test]
fn a_problem_worked_another_way_ends_with_done() {
    let mut session = at("mast", 4);
    let early = session.submit("done").line.message.to_string();
    assert!(early.starts_with("Still asked"), "{early}");
    for line in [
        "T=(558.6*2.8*sin20+392*5.6*sin20)/(3.4*cos20)",
        "Hx=-402 N",
        "Hy=951 N",
        "H=1030 N",
    ] {
        assert!(
            !session.submit(line).question.to_string().contains("done"),
            "{line}"
        );
    }
    let found = session.submit("psi=67.1");
    assert!(
        found.question.to_string().contains("done ends it"),
        "{}",
        found.question
    );
    session.submit("done");
    assert_eq!(session.course(), Course::Finished);
    let summary = session.view().summary;
    let told: Vec<String> = summary.iter().map(ToString::to_string).collect();
    assert!(
        told.contains(&"Not needed in your own way: 6 of 15 steps.".to_owned()),
        "{told:?}"
    );
    assert!(
        told.contains(&"Passed over or shown: 4 of 15 steps.".to_owned()),
        "{told:?}"
    );
    session.submit("back");
    assert_eq!(session.course(), Course::On, "it may be taken back");
}

/// Taking a step back does not untell the value that passing it over told.
#[test]
fn a_value_that_was_told_is_not_found_by_typing_it() {
    let mut session = open("counter", 1);
    for line in ["skip", "hinge", "skip", "back"] {
        session.submit(line);
    }
    let weight = right_lines(&session)[0].1.clone();
    session.submit(&weight);
    while session.course() != Course::Finished {
        session.submit("skip");
    }
    let summary = session.view().summary;
    let said: String = summary.iter().map(ToString::to_string).collect();
    assert!(
        said.contains("at the first go and without a hint: 1 of"),
        "{said}"
    );
}
