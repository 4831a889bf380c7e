//! Single lines with what is said to them, and whole dialogues.

use super::{asked, boards, opened, scripts, walked};
use assert_cmd::Command;
use leverwright::session::{Session, Sign, Turn};
use std::path::Path;

/// A session answered rightly until the name of the asked step holds this.
pub(crate) fn at(name: &str, title: &str) -> Session {
    let mut session = opened(name);
    loop {
        let step = asked(&session).unwrap_or_else(|| panic!("{name} has no {title}"));
        let steps = session.view().steps;
        let now = session
            .key()
            .asked()
            .position(|one| one.id == step)
            .unwrap();
        if steps[now].title.contains(title) {
            return session;
        }
        let line = scripts::values(&session, step);
        session.submit(&line);
    }
}

fn said(session: &mut Session, line: &str) -> Turn {
    session.submit(line)
}

/// A board, where it stands, a line, and its sign.
const LINES: &[(&str, &str, &str, Sign)] = &[
    // Any order, any side, with or without the weights worked out.
    ("ladder", "upright forces", "N - Wb - W1 = 0", Sign::Right),
    ("ladder", "upright forces", "mb*g + m1*g = N", Sign::Right),
    (
        "ladder",
        "upright forces",
        "0 = 20*9.8 + 70*9.8 - N",
        Sign::Right,
    ),
    ("ladder", "upright forces", "882 N", Sign::Right),
    ("ladder", "upright forces", "N = 882 N", Sign::Right),
    ("ladder", "upright forces", "Wb + W1 + N = 0", Sign::Wrong),
    ("ladder", "upright forces", "W1 = N", Sign::Wrong),
    ("ladder", "upright forces", "mb + m1 = N", Sign::Wrong),
    ("ladder", "upright forces", "N = 800 N", Sign::Wrong),
    ("ladder", "upright forces", "N = 882 kg", Sign::Incomplete),
    // What is asked at last, at the first question.
    ("ladder", "friction", "d = 2.81 m", Sign::Right),
    ("ladder", "friction", "d = 2.5 m", Sign::Wrong),
    ("ladder", "friction", "FN = μ*N", Sign::Right),
    ("ladder", "friction", "FN = 0.35", Sign::Wrong),
    // Moments about the wall, about the middle, by lever arms, by coordinates.
    (
        "ladder",
        "moments",
        "Wb*cos(62)*L/2 + W1*cos(62)*(L - d) + FN*sin(62)*L = N*cos(62)*L",
        Sign::Right,
    ),
    (
        "ladder",
        "moments",
        "W1*cos(θ)*(d - L/2) + N*cos(θ)*L/2 = F*sin(θ)*L/2 + FN*sin(θ)*L/2",
        Sign::Right,
    ),
    (
        "ladder",
        "moments",
        "196*2*cos 62 + 686*d*cos 62 = 308.7*4*sin 62",
        Sign::Right,
    ),
    (
        "ladder",
        "moments",
        "196*2*sin 62 + 686*d*sin 62 = 308.7*4*cos 62",
        Sign::Wrong,
    ),
    ("ladder", "moments", "Wb⊥*L/2 + W1⊥*d = F*L", Sign::Wrong),
    ("ladder", "moments", "Wb⊥*L/2 = F⊥*L", Sign::Wrong),
    (
        "ladder",
        "moments",
        "Wb⊥*L/2 + W1⊥*d + F⊥*L = 0",
        Sign::Wrong,
    ),
    // The whole of two beams, and one of them about its other end.
    (
        "internal_hinge",
        "moments about the wall",
        "F*d1 + Q*(L + L2/2) = B*(L + L2) + MA",
        Sign::Right,
    ),
    (
        "internal_hinge",
        "moments about the wall",
        "F*d1 + Q*(L + L2/2) = B*(L + L2) - MA",
        Sign::Right,
    ),
    (
        "internal_hinge",
        "moments about the wall",
        "F*d1 + Q*(L + L2/2) = B*L2 + MA",
        Sign::Wrong,
    ),
    (
        "internal_hinge",
        "moments about the hinge",
        "F*d1 + Q*(L + L2/2) = B*(L + L2) + MA",
        Sign::Noted,
    ),
    (
        "internal_hinge",
        "moments about the hinge",
        "4000*3*1.5 = B*3",
        Sign::Right,
    ),
    (
        "internal_hinge",
        "moments about the hinge",
        "4000*3*3 = B*3",
        Sign::Wrong,
    ),
    (
        "internal_hinge",
        "upright part of the force of the hinge",
        "-6000 N",
        Sign::Right,
    ),
    (
        "internal_hinge",
        "upright part of the force of the hinge",
        "6 kN",
        Sign::Right,
    ),
    (
        "internal_hinge",
        "upright forces (right",
        "Gy = 6 kN downwards",
        Sign::Right,
    ),
    (
        "internal_hinge",
        "upright forces (right",
        "Gy = 6 kN upwards",
        Sign::Right,
    ),
    (
        "internal_hinge",
        "level part of the force of the hinge",
        "Gx = 0",
        Sign::Right,
    ),
    (
        "internal_hinge",
        "level part of the force of the hinge",
        "Gx = 5 N",
        Sign::Wrong,
    ),
    // Balances that give their unknowns together.
    (
        "incline_topple",
        "forces across",
        "W*cos(θ) = N",
        Sign::Right,
    ),
    (
        "incline_topple",
        "forces across",
        "W*sin(θ) = N",
        Sign::Wrong,
    ),
    (
        "incline_topple",
        "moments",
        "196*0.45*sin θ = N*0.2",
        Sign::Right,
    ),
    ("incline_topple", "moments", "tan θ = L/h1", Sign::Right),
    ("incline_topple", "moments", "2*W*cos(θ) = 2*N", Sign::Noted),
    ("incline_slip", "forces along", "tan θ = μ", Sign::Right),
    // A number that is sought stands in a balance like an unknown.
    (
        "boom_breaks",
        "moments",
        "18*9.8*1.2 + m1*9.8*2.4 = 900*sin 35*1.8",
        Sign::Right,
    ),
    (
        "boom_breaks",
        "moments",
        "18*9.8*1.2 + m1*2.4 = 900*sin 35*1.8",
        Sign::Wrong,
    ),
    (
        "plank_tips",
        "moments",
        "294*1 = 441*(d - 3.5)",
        Sign::Right,
    ),
    (
        "plank_tips",
        "moments",
        "294*2.5 + 441*d = B*3.5",
        Sign::Noted,
    ),
    (
        "ladder_mu",
        "value that is sought",
        "μ = 50.27/215.6",
        Sign::Right,
    ),
    ("ladder_mu", "value that is sought", "0.233", Sign::Right),
    ("ladder_mu", "value that is sought", "0.215", Sign::Wrong),
    ("plate", "moments", "tan θ = 0.357/0.250", Sign::Right),
    (
        "a_frame",
        "moments about the pin",
        "T*sin 70*2 = 588*sin 20*2.5",
        Sign::Right,
    ),
    (
        "forearm",
        "moments",
        "Wb*db + W1*L = M*sin(80)*dM",
        Sign::Right,
    ),
    (
        "forearm",
        "moments",
        "Wb*db + W1*L = M*cos(80)*dM",
        Sign::Wrong,
    ),
    ("forearm", "part of M", "M*sin 80", Sign::Right),
    ("forearm", "part of M", "M*cos 80", Sign::Wrong),
    // Rounded on the way, near as in a lesson; a multiple of the unknown is no input of it.
    (
        "a_frame",
        "moments about the pin",
        "T = 267 N",
        Sign::Rounded,
    ),
    (
        "a_frame",
        "moments about the pin",
        "T = 267.4 N",
        Sign::Rounded,
    ),
    ("a_frame", "moments about the pin", "T = 260 N", Sign::Wrong),
    (
        "a_frame",
        "moments about the pin",
        "T = 201*2.5/(2 sin 70) = 267.4 N",
        Sign::Right,
    ),
    (
        "a_frame",
        "moments about the pin",
        "T = 502.5/1.88 = 267 N",
        Sign::Right,
    ),
    (
        "a_frame",
        "level part of the force of the pin",
        "J = 645 N",
        Sign::Rounded,
    ),
    (
        "a_frame",
        "level part of the force of the pin",
        "J = 640 N",
        Sign::Wrong,
    ),
    (
        "forearm",
        "tension of the biceps",
        "M = 494 N",
        Sign::Rounded,
    ),
    (
        "forearm",
        "tension of the biceps",
        "M = 494.8 N",
        Sign::Rounded,
    ),
    ("forearm", "tension of the biceps", "M = 490 N", Sign::Wrong),
    ("forearm", "level forces", "Ex = 85.9 N", Sign::Rounded),
    ("forearm", "level forces", "Ex = 85.0 N", Sign::Wrong),
    // The sum of two given masses, worked in the head.
    ("ladder", "upright forces", "N = 90*9.8", Sign::Right),
    ("ladder", "upright forces", "N = 90 kg*9.8", Sign::Right),
    ("ladder", "upright forces", "N = 91*9.8", Sign::Wrong),
    // Numbers in the unit in which the problem prints its forces.
    (
        "internal_hinge",
        "whole force",
        "Q = 4*3 = 12 kN",
        Sign::Right,
    ),
    ("internal_hinge", "whole force", "Q = 4*3 kN", Sign::Right),
    ("internal_hinge", "whole force", "12", Sign::Right),
    ("internal_hinge", "whole force", "Q = 3*3 kN", Sign::Wrong),
    ("internal_hinge", "whole force", "Q = 12 N", Sign::Wrong),
    (
        "internal_hinge",
        "moments about the hinge",
        "12*1.5 = B*3",
        Sign::Right,
    ),
    (
        "internal_hinge",
        "moments about the hinge",
        "12*3 = B*3",
        Sign::Wrong,
    ),
    (
        "internal_hinge",
        "upright forces (right",
        "12 + Gy = 6",
        Sign::Right,
    ),
    (
        "internal_hinge",
        "upright forces (left",
        "12 = Ay - 6",
        Sign::Right,
    ),
    (
        "internal_hinge",
        "upright forces (left",
        "Ay = 18",
        Sign::Right,
    ),
    (
        "internal_hinge",
        "upright forces (left",
        "Ay = 17",
        Sign::Wrong,
    ),
    (
        "internal_hinge",
        "moments about the wall",
        "12*1.5 + 6*4 = MA",
        Sign::Right,
    ),
    (
        "internal_hinge",
        "moments about the wall",
        "12*1.5 + 6*3 = MA",
        Sign::Wrong,
    ),
    // Which way a couple turns.
    (
        "internal_hinge",
        "moments about the wall",
        "42 kN m anticlockwise",
        Sign::Right,
    ),
    (
        "internal_hinge",
        "moments about the wall",
        "MA = 42 kN m (counterclockwise)",
        Sign::Right,
    ),
    (
        "internal_hinge",
        "moments about the wall",
        "MA = 42 kN m clockwise",
        Sign::Wrong,
    ),
];

/// The hints of a line along which one force alone acts never tell that it is nothing.
#[test]
fn the_answer_is_in_no_hint_before_the_last() {
    let mut session = opened("internal_hinge");
    for _ in 0..3 {
        let hint = said(&mut session, "hint").line.hints[0].to_string();
        assert!(!hint.contains("= 0"), "{hint}");
    }
    let last = said(&mut session, "hint").line.hints[0].to_string();
    assert!(last.contains("Gx = 0"), "{last}");
}

#[test]
fn lines_of_every_kind_get_their_sign() {
    let mut faults = Vec::new();
    for (name, title, line, sign) in LINES {
        let mut session = at(name, title);
        let turn = said(&mut session, line);
        if turn.line.sign != *sign {
            let got = turn.line.sign;
            faults.push(format!(
                "{name}, {title}: {line}: {got:?} {}",
                turn.line.message
            ));
        }
    }
    assert_eq!(faults, Vec::<String>::new());
}

/// What a typed form shows is named, flatly; a value never is.
#[test]
fn a_mistake_is_named_by_its_form_only() {
    let named = |name: &str, title: &str, line: &str| {
        let turn = said(&mut at(name, title), line);
        turn.kept.mistakes
    };
    let cases = [
        (
            "ladder",
            "weight of the ladder",
            "Wb = 20",
            "mass-for-weight",
        ),
        ("forearm", "part of M", "M*cos(80)", "sine-cosine-exchanged"),
        ("ladder", "moments", "W1⊥*d = F⊥*L", "term-left-out"),
        (
            "forearm",
            "moments",
            "Wb*db = W1*L + M⊥*dM",
            "turns-the-wrong-way",
        ),
    ];
    for (name, title, line, mistake) in cases {
        let found = named(name, title, line);
        let by_value = line.ends_with("= 20");
        let first = found.first().map(String::as_str);
        assert_eq!(first, (!by_value).then_some(mistake), "{name}: {line}");
    }
}

/// What follows from a wrong value that is gone on with is right, and said to follow.
#[test]
fn what_follows_from_an_own_value_follows() {
    let mut session = at("forearm", "weight of the forearm");
    assert_eq!(said(&mut session, "Wb = 18 N").line.sign, Sign::Wrong);
    said(&mut session, "go on");
    assert!(said(&mut session, "49 N").moved_on);
    assert!(said(&mut session, "M*sin 80").moved_on);
    let balance = said(&mut session, "18*15 + 49*35 = M*sin(80)*4");
    assert!(
        balance.line.sign == Sign::Follows
            || balance.line.sign == Sign::Right
            || balance.line.sign == Sign::Noted
    );
    // By hand: (18·0.15 + 49·0.35)/(0.04·sin 80°) = 503.9.
    let pull = said(&mut session, "M = 504 N");
    assert_eq!(pull.line.sign, Sign::Follows, "{}", pull.line.message);
}

#[test]
fn commands_mean_here_what_they_mean_elsewhere() {
    let mut session = at("a_frame", "moments about the left foot");
    let hints: Vec<String> = (0..3)
        .map(|_| said(&mut session, "hint").line.hints[0].to_string())
        .collect();
    insta::assert_snapshot!("hints_of_a_balance", hints.join("\n"));
    let shown = said(&mut session, "hint");
    assert!(shown.moved_on, "the fourth hint is the line itself");
    assert!(said(&mut session, "back").moved_on);
    assert!(said(&mut session, "skip").moved_on);
    assert!(!said(&mut session, "?").moved_on);
    assert_eq!(said(&mut session, "go on").line.sign, Sign::Talk);
    assert!(said(&mut session, "B = 588 N").moved_on);
}

/// A board, where it stands, the lines before, a line, and its sign.
pub(crate) type After = (
    &'static str,
    &'static str,
    &'static [&'static str],
    &'static str,
    Sign,
);

pub(crate) fn faults_after(rows: &[After]) -> Vec<String> {
    let mut faults = Vec::new();
    for (name, title, before, line, sign) in rows {
        let mut session = at(name, title);
        for line in *before {
            said(&mut session, line);
        }
        let turn = said(&mut session, line);
        if turn.line.sign != *sign {
            let got = turn.line.sign;
            faults.push(format!(
                "{name}, {title}: {line}: {got:?} {}",
                turn.line.message
            ));
        }
    }
    faults
}

/// An unknown of free sense that she found with a sign of her own stands under its name as she
/// counted it, and as the key counts it.
#[test]
fn a_name_stands_in_the_sense_that_was_counted() {
    let level = "level forces";
    let strut: &[&str] = &["Wb*L/2 + W1*L = S⊥*dS", "S = 4165 N", "Sx = 3332 N"];
    let upright: &[&str] = &[
        "Wb*L/2 + W1*L = S⊥*dS",
        "S = 4165 N",
        "skip",
        "skip",
        "Hx = 3332 N",
        "Sy = 2499 N",
    ];
    let all: &[&str] = &[
        "Wb*L/2 + W1*L = S⊥*dS",
        "S = 4165 N",
        "skip",
        "skip",
        "Hx = 3332 N",
        "Sy = 2499 N",
        "Hy = 637 N",
    ];
    let found: &[&str] = &[
        "Wb*L/2 + W1*L = S⊥*dS",
        "S = 4165 N",
        "Sx = 3332 N",
        "Hx = 3332 N",
    ];
    let friction: &[&str] = &["F = FN", "FN = 50.3 N"];
    let hinge: &[&str] = &["Gy + B = Q", "Gy = 6000 N"];
    let key: &[&str] = &["Gy + B = Q", "Gy = -6000 N"];
    let right = Sign::Right;
    let rows = [
        ("ladder_mu", level, friction, "μ = FN/N", right),
        ("ladder_mu", level, friction, "μ = FN/N = 0.233", right),
        ("ladder_mu", level, friction, "μ = N/FN", Sign::Wrong),
        (
            "internal_hinge",
            "upright forces (right",
            hinge,
            "Ay = F + Gy",
            right,
        ),
        (
            "internal_hinge",
            "upright forces (right",
            hinge,
            "F + Gy = Ay",
            right,
        ),
        (
            "internal_hinge",
            "upright forces (right",
            hinge,
            "F - Gy = Ay",
            right,
        ),
        (
            "internal_hinge",
            "upright forces (right",
            hinge,
            "Ay = Gy",
            Sign::Wrong,
        ),
        (
            "internal_hinge",
            "upright forces (right",
            hinge,
            "MA = F*d1 + Gy*L",
            right,
        ),
        (
            "internal_hinge",
            "upright forces (right",
            hinge,
            "MA = F*L + Gy*L",
            Sign::Wrong,
        ),
        // Friction of which she has said no way stands for its size. Before it is found the law
        // gives no coefficient.
        (
            "ladder_mu",
            "friction of the floor",
            &[],
            "μ = FN/N",
            Sign::Noted,
        ),
        (
            "ladder_mu",
            "friction of the floor",
            &[],
            "FN/N = μ",
            Sign::Noted,
        ),
        (
            "ladder_mu",
            "friction of the floor",
            &["skip"],
            "μ = FN/N",
            right,
        ),
        (
            "ladder_mu",
            "friction of the floor",
            &["skip"],
            "FN/N",
            right,
        ),
        (
            "ladder_mu",
            "friction of the floor",
            &["skip"],
            "μ = N/FN",
            Sign::Wrong,
        ),
        (
            "ladder_mu",
            "friction of the floor",
            &["skip"],
            "μ = FN/(2*N)",
            Sign::Wrong,
        ),
        // Who counted as the key does has no other sense.
        (
            "internal_hinge",
            "upright forces (right",
            key,
            "Ay = F + Gy",
            Sign::Wrong,
        ),
        (
            "internal_hinge",
            "upright forces (right",
            key,
            "Ay = F - Gy",
            right,
        ),
        ("jib", "moments", upright, "Hy + Sy = Wb + W1", right),
        ("jib", "moments", upright, "Hy = Wb + W1 - Sy", right),
        ("jib", "moments", upright, "Hy = Wb - W1 - Sy", Sign::Wrong),
        // A balance that is typed after what it gives.
        ("jib", "moments", strut, "Hx + Sx = 0", right),
        ("jib", "moments", found, "Hx + Sx = 0", Sign::Noted),
        ("jib", "moments", found, "Hx + 2*Sx = 0", Sign::Wrong),
        ("jib", "moments", all, "Hy + Sy + Wb + W1 = 0", Sign::Noted),
        ("jib", "moments", all, "Hy + Sy = Wb + W1", Sign::Noted),
        ("jib", "moments", all, "Hy + Sy = Wb", Sign::Wrong),
    ];
    assert_eq!(faults_after(&rows), Vec::<String>::new());
}

/// A word behind a value says which way the force points on its body.
#[test]
fn a_way_that_is_said_with_a_value_is_held_against_the_force() {
    let (right, wrong) = (Sign::Right, Sign::Wrong);
    let upright = "upright forces";
    let rows: [(&str, &str, &str, Sign); 29] = [
        ("a_frame", upright, "A = 588 N down", wrong),
        ("a_frame", upright, "A = 588 N up", right),
        ("a_frame", upright, "A = 588 N to the left", wrong),
        // The tie pulls each leg towards the other.
        ("a_frame", upright, "T = 267.5 N to the left", right),
        ("a_frame", upright, "T = 267.5 N to the right", right),
        ("ladder_mu", upright, "N = 215.6 N down", wrong),
        ("ladder_mu", upright, "N = 215.6 N upwards", right),
        ("ladder_mu", upright, "F = 50.3 N to the right", wrong),
        ("ladder_mu", upright, "F = 50.3 N to the left", right),
        ("ladder_mu", upright, "FN = 50.3 N to the left", wrong),
        ("ladder_mu", upright, "FN = 50.3 N to the right", right),
        // The sign may say the same as the word.
        ("ladder_mu", upright, "FN = -50.3 N to the right", right),
        ("ladder", "moments", "FN = 308.7 N to the left", wrong),
        ("ladder", "moments", "FN = 308.7 N to the right", right),
        ("rod_on_peg", "moments", "P = 32.17 N down", wrong),
        ("rod_on_peg", "moments", "P = 32.17 N up", right),
        ("rod_on_peg", "moments", "P = 32.17 N to the left", right),
        ("rod_on_peg", "moments", "N = 34.15 N down", wrong),
        ("jib", "moments", "S = 4165 N up", right),
        ("jib", "moments", "S = 4165 N to the right", right),
        ("jib", "moments", "S = 4165 N down", wrong),
        ("jib", "size", "3390 N to the left", right),
        ("jib", "size", "3390 N up", wrong),
        ("jib", "direction", "10.8° below the horizontal", right),
        ("jib", "direction", "10.8° down and to the left", right),
        ("jib", "direction", "10.8° with the horizontal", right),
        ("jib", "direction", "10.8° above the horizontal", wrong),
        ("jib", "direction", "10.8° up and to the right", wrong),
        ("jib", "direction", "10.8° down and to the right", wrong),
    ];
    let rows = rows.map(|(name, title, line, sign)| (name, title, &[][..], line, sign));
    assert_eq!(faults_after(&rows), Vec::<String>::new());
}

/// What follows from an own value exactly needs no more figures than it has.
#[test]
fn an_own_value_is_carried_on_to_one_figure_and_to_nothing() {
    let four: &[&str] = &["B = 4 kN", "go on"];
    let twelve: &[&str] = &["B = 12 kN", "go on", "Q + Gy = B"];
    let found: &[&str] = &["B = 4 kN", "go on", "Gy = -8000 N"];
    let roller = "push of the roller";
    let rows = [
        ("internal_hinge", roller, four, "Gy = -8 kN", Sign::Follows),
        ("internal_hinge", roller, four, "Gy = 8 kN", Sign::Follows),
        ("internal_hinge", roller, four, "Gy = 7 kN", Sign::Wrong),
        ("internal_hinge", roller, found, "G = 8 kN", Sign::Follows),
        ("internal_hinge", roller, found, "G = 9 kN", Sign::Wrong),
        ("internal_hinge", roller, twelve, "Gy = 0 N", Sign::Follows),
        ("internal_hinge", roller, twelve, "Gy = 1 N", Sign::Wrong),
        ("internal_hinge", roller, four, "Gy = 0 N", Sign::Wrong),
    ];
    assert_eq!(faults_after(&rows), Vec::<String>::new());
}

fn practised(name: &str, saves: &Path, lines: &[String]) -> String {
    let file = format!("{}/tests/boards/{name}.json", env!("CARGO_MANIFEST_DIR"));
    let output = Command::cargo_bin("leverwright")
        .unwrap()
        .args(["practice", &file, "--plain", "--saves"])
        .arg(saves)
        .write_stdin(
            lines
                .iter()
                .map(|line| format!("{line}\n"))
                .collect::<String>(),
        )
        .output()
        .unwrap();
    assert!(output.status.success(), "{name}");
    String::from_utf8(output.stdout).unwrap()
}

/// The dialogue as a learner reads it, without the list of lessons behind it.
fn transcript(name: &str, lines: &[&str]) -> String {
    let saves = tempfile::tempdir().unwrap();
    let lines: Vec<String> = lines.iter().map(|line| (*line).to_owned()).collect();
    let told = practised(name, saves.path(), &lines);
    let end = told.find("Choose by number").unwrap_or(told.len());
    told[..end].to_owned()
}

#[test]
fn a_ladder_about_to_slip_reads_as_beside_a_teacher() {
    let lines = [
        "hint",
        "FN = 0.35*N",
        "20",
        "196 N",
        "70*9.8",
        "Wb + W1 + N = 0",
        "Wb + W1 = N",
        "F = FN",
        "28",
        "196 cos 62",
        "686 sin 28",
        "309 sin 62",
        "Wb*L/2*cos(62) + W1*d*cos(62) = F*L*cos(62)",
        "hint",
        "hint",
        "92.0*2 + 322*d = 273*4",
        "d = 2.81 m",
    ];
    insta::assert_snapshot!("ladder_about_to_slip", transcript("ladder", &lines));
}

#[test]
fn a_beam_with_a_hinge_in_it_reads_as_beside_a_teacher() {
    let lines = [
        "0 N",
        "Ax = 0",
        "q*L2",
        "1.5 m",
        "Q*1.5 = B*3",
        "B = 6 kN",
        "Q - Gy = B",
        "Q + Gy = B",
        "Gy = 6 kN downwards",
        "F*d1 + Q*(L + L2/2) = B*(L + L2) + MA",
        "12000 = Ay - 6000",
        "Ay = 18 kN",
        "MA = 42 kN m",
        "A = 18 kN",
        "6000 N",
    ];
    insta::assert_snapshot!("beam_with_a_hinge", transcript("internal_hinge", &lines));
}

#[test]
fn every_board_is_walked_to_its_end_in_the_line_dialogue() {
    for (name, _) in boards() {
        let saves = tempfile::tempdir().unwrap();
        let (lines, _) = walked(&name, &scripts::values);
        let told = practised(&name, saves.path(), &lines);
        assert!(told.contains("The whole working:"), "{name}: {told}");
        assert!(
            told.contains("No line of yours was wrong."),
            "{name}: {told}"
        );
    }
}

#[test]
fn what_was_left_is_gone_on_with_where_it_was() {
    let (lines, _) = walked("a_frame", &scripts::values);
    let saves = tempfile::tempdir().unwrap();
    let (first, rest) = lines.split_at(lines.len() / 2);
    let told = practised("a_frame", saves.path(), first);
    assert!(!told.contains("The whole working:"));
    let told = practised("a_frame", saves.path(), rest);
    assert!(told.contains("Here is your working so far."), "{told}");
    assert!(told.contains("No line of yours was wrong."), "{told}");
}

#[test]
fn what_cannot_be_solved_is_refused_with_its_reason() {
    let folder = tempfile::tempdir().unwrap();
    let text = include_str!("../boards/a_frame.json").replacen(
        "\"kind\": \"hinge\"",
        "\"kind\": \"built-in\"",
        1,
    );
    let file = folder.path().join("stiff.json");
    std::fs::write(&file, text).unwrap();
    let output = Command::cargo_bin("leverwright")
        .unwrap()
        .args(["practice", file.to_str().unwrap(), "--plain"])
        .output()
        .unwrap();
    assert_eq!(output.status.code(), Some(1));
    let told = String::from_utf8(output.stderr).unwrap();
    insta::assert_snapshot!("refused", told);
}
