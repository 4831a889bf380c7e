//! Ropes with several ends, sides of the vertical, balances that give their unknowns together, and
//! the letter N beside newtons.

use super::asked;
use super::talk::{at, faults_after};
use leverwright::lesson::{ProblemFile, parse_problem_file};
use leverwright::session::{Session, Sign};
use leverwright::text::Words;

const RIGHT: Sign = Sign::Right;
const WRONG: Sign = Sign::Wrong;

pub(crate) fn of_file(json: &str) -> Session {
    match parse_problem_file(json).unwrap() {
        ProblemFile::General(system) => Session::start_general(&system, Words::english()).unwrap(),
        ProblemFile::Guided(_) => panic!("a problem of the guided walk"),
    }
}

/// A session at the step that is so called, everything before it passed over.
pub(crate) fn passed_to(json: &str, title: &str) -> Session {
    let mut session = of_file(json);
    while !asked_title(&session).contains(title) {
        session.submit("skip");
    }
    session
}

fn asked_title(session: &Session) -> String {
    let now = asked(session).unwrap();
    let at = session.key().asked().position(|one| one.id == now).unwrap();
    session.view().steps[at].title.clone()
}

/// The tie pulls the left leg to the right and the right leg to the left; the hoist the load up,
/// and the boom down and back along it.
#[test]
fn a_rope_pulls_at_each_end_its_own_way() {
    let (tie, hoist) = ("tension of the tie", "balance of the upright forces (load)");
    let rows = [
        ("a_frame", tie, "T = 268 N to the right", RIGHT),
        ("a_frame", tie, "T = 268 N to the left", RIGHT),
        ("a_frame", tie, "T = 268 N up", WRONG),
        ("a_frame", tie, "T = 268 N down", WRONG),
        ("a_frame", tie, "T = 268 N right on the left leg", RIGHT),
        ("a_frame", tie, "T = 268 N left on the left leg", WRONG),
        ("a_frame", tie, "T = 268 N left on the right leg", RIGHT),
        ("a_frame", tie, "T = 268 N at 0°", RIGHT),
        ("a_frame", tie, "T = 268 N at 30°", WRONG),
        ("a_frame", tie, "T = 268 N at 180° on the right leg", RIGHT),
        ("a_frame", tie, "T = 268 N at 30° to the right", WRONG),
        // The way and the angle are told of one end.
        ("a_frame", tie, "T = 268 N right at 180°", WRONG),
        ("a_frame", tie, "T = 268 N left at 180°", RIGHT),
        (
            "a_frame",
            tie,
            "T = 268 N to the right, 180° from the x axis",
            WRONG,
        ),
        (
            "a_frame",
            tie,
            "T = 268 N right on the left leg at 180°",
            WRONG,
        ),
        (
            "pulley_beam",
            hoist,
            "S = 980 N down and left at 90°",
            WRONG,
        ),
        (
            "pulley_beam",
            hoist,
            "S = 980 N down and left at 210°",
            RIGHT,
        ),
        ("pulley_beam", hoist, "S = 980 N down at 270°", RIGHT),
        ("pulley_beam", hoist, "S = 980 N left at 270°", WRONG),
        ("pulley_beam", hoist, "S = 980 N up", RIGHT),
        (
            "pulley_beam",
            hoist,
            "S = 980 N down and to the left",
            RIGHT,
        ),
        ("pulley_beam", hoist, "S = 980 N to the right", WRONG),
        ("pulley_beam", hoist, "S = 980 N up and left", WRONG),
        ("pulley_beam", hoist, "S = 980 N up on the boom", WRONG),
        ("pulley_beam", hoist, "S = 980 N up on the load", RIGHT),
        ("pulley_beam", hoist, "S = 980 N at 40°", WRONG),
    ];
    let rows = rows.map(|(name, title, line, sign)| (name, title, &[][..], line, sign));
    assert_eq!(faults_after(&rows), Vec::<String>::new());
}

/// By the key: Ex = −392 N and Ey = 294 N, so E lies 53.1° to the left of the vertical.
#[test]
fn the_side_of_the_vertical_is_read() {
    let (size, direction) = ("size of the force of the edge", "direction of the force");
    let rows = [
        (
            "wheel_at_step",
            size,
            "E = 490 N at 53.1° to the left of the vertical",
            RIGHT,
        ),
        (
            "wheel_at_step",
            size,
            "E = 490 N at 53.1° to the right of the vertical",
            WRONG,
        ),
        (
            "wheel_at_step",
            size,
            "E = 490 N, 53.1° from the vertical, to the left",
            RIGHT,
        ),
        (
            "wheel_at_step",
            size,
            "E = 490 N, 53.1° from the vertical, to the right",
            WRONG,
        ),
        (
            "wheel_at_step",
            size,
            "E = 490 N at 40° to the left of the vertical",
            WRONG,
        ),
        (
            "wheel_at_step",
            direction,
            "53.1° to the left of the vertical",
            RIGHT,
        ),
        ("wheel_at_step", direction, "53.1° left of vertical", RIGHT),
        (
            "wheel_at_step",
            direction,
            "53.1° to the right of the vertical",
            WRONG,
        ),
        (
            "wheel_at_step",
            direction,
            "53.1° from the vertical, to the left",
            RIGHT,
        ),
        (
            "wheel_at_step",
            direction,
            "53.1° from the vertical, upwards to the left",
            RIGHT,
        ),
        (
            "wheel_at_step",
            direction,
            "53.1° from the vertical, down and to the left",
            WRONG,
        ),
        (
            "wheel_at_step",
            direction,
            "36.9° from the horizontal, to the left",
            RIGHT,
        ),
        (
            "wheel_at_step",
            direction,
            "36.9° to the left of the vertical",
            WRONG,
        ),
    ];
    let rows = rows.map(|(name, title, line, sign)| (name, title, &[][..], line, sign));
    assert_eq!(faults_after(&rows), Vec::<String>::new());
}

const LEFT_LEG: &str =
    "588*sin20*1.8 + 68.6*sin20*1.3 + 90*sin70*0.6 + Jx*sin70*2.6 = Jy*sin20*2.6";
const RIGHT_LEG: &str = "78.4*sin35*1.49 + Jx*sin55*2.98 + Jy*sin35*2.98 = 0";

/// Each of two balances that give their unknowns together counts for itself, and once.
#[test]
fn a_balance_counts_where_its_equation_is_asked() {
    let frame = include_str!("frame_on_studs.json");
    let mut session = passed_to(frame, "moments about the right stud");
    let first = session.submit(LEFT_LEG);
    assert_eq!(first.line.sign, RIGHT, "{}", first.line.message);
    let counts = "That counts as the moments about the left stud";
    assert!(first.line.message.to_string().starts_with(counts));
    for again in [
        LEFT_LEG,
        "588*1.8 cos70 + 68.6*1.3 cos 70 + 90*0.6 sin 70 + Jx*2.6 sin 70 = Jy*2.6 cos 70",
        "Jx*0.94*2.6 + 588*0.342*1.8 + 68.6*0.342*1.3 + 90*0.94*0.6 = Jy*0.342*2.6",
    ] {
        let turn = session.submit(again);
        let told = turn.line.message.to_string();
        assert_eq!(turn.line.sign, Sign::Noted, "{again}: {told}");
        let there = "It holds, and it stands already: moments about the left stud";
        assert!(told.starts_with(there), "{told}");
        assert!(asked_title(&session).contains("moments about the right stud"));
    }
    assert_eq!(session.submit(RIGHT_LEG).line.sign, RIGHT);
    assert!(asked_title(&session).contains("level part of the force of the bolt"));
    // In their order, the first typed twice.
    let mut session = passed_to(frame, "moments about the right stud");
    assert_eq!(session.submit(RIGHT_LEG).line.sign, RIGHT);
    assert_eq!(session.submit(RIGHT_LEG).line.sign, Sign::Noted);
    assert!(asked_title(&session).contains("moments about the left stud"));
    assert_eq!(session.submit(LEFT_LEG).line.sign, RIGHT);
}

/// The sum of two balances is neither: it counts once, and either of them beside it is new.
#[test]
fn a_sum_of_balances_counts_once() {
    let frame = include_str!("frame_on_studs.json");
    let both = "588*sin20*1.8 + 68.6*sin20*1.3 + 90*sin70*0.6 + Jx*sin70*2.6 + 78.4*sin35*1.49 \
                + Jx*sin55*2.98 + Jy*sin35*2.98 = Jy*sin20*2.6";
    let mut session = passed_to(frame, "moments about the right stud");
    assert_eq!(session.submit(both).line.sign, RIGHT);
    assert_eq!(session.submit(both).line.sign, Sign::Noted);
    assert_eq!(session.submit(RIGHT_LEG).line.sign, RIGHT);
    assert!(asked_title(&session).contains("level part of the force of the bolt"));
}

/// `0.15 N` is a multiple of the force N where that makes the line right.
#[test]
fn a_number_before_n_is_newtons_or_a_multiple_of_the_force() {
    for (line, sign) in [
        ("88.2*sin33 + 0.15 N sin33 = N cos33", RIGHT),
        ("48.0 N + 0.15 N*sin33 = N cos33", RIGHT),
        ("88.2 N*sin33 = N cos33 - 0.15 N sin33", RIGHT),
        ("48.0 N + 0.15 N cos33 = N cos33", WRONG),
        // At the other value of d it is about to slip upwards.
        ("48.0 N - 0.15 N sin33 = N cos33", RIGHT),
        ("0.15 N sin33 = N cos33", WRONG),
        ("48.0 N = 0.84 N", WRONG),
    ] {
        let json = include_str!("pole_on_peg.json");
        let mut session = passed_to(json, "balance of the forces along the pole");
        let turn = session.submit(line);
        assert_eq!(turn.line.sign, sign, "{line}: {}", turn.line.message);
    }
}

/// A balance of forces is told as one, though its unknown is asked by moments.
#[test]
fn forces_are_not_told_to_turn_a_body() {
    let mut session = at("a_frame", "angle between the line");
    let told = session.submit("A = 1176 + B").line.message.to_string();
    assert!(told.starts_with("The forces hold in size"), "{told}");
    let mut session = at("a_frame", "moments about the left foot");
    let told = session.submit("B*2*2.5*cos70 + 1176*2.5*cos70 = 0");
    let told = told.line.message.to_string();
    assert!(told.contains("turn"), "{told}");
}

/// That every term points one way is said only where it is so.
#[test]
fn one_wrong_sign_is_not_told_as_terms_that_all_point_one_way() {
    for (line, said) in [
        (
            "T2*sin 25 = 137.2 + T1*sin 40",
            "The forces hold in size, and not all in sign.",
        ),
        (
            "T2 cos 25 + T1 cos 40 = 0",
            "In this sum every term points the same way",
        ),
    ] {
        let mut session = at("sign", "balance of the level forces");
        let turn = session.submit(line);
        let told = turn.line.message.to_string();
        assert_eq!(turn.line.sign, WRONG, "{line}: {told}");
        assert!(told.starts_with(said), "{line}: {told}");
    }
}
