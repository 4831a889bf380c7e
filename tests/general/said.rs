//! What is said beside a value: on which body, at which angle; and lines whose sides are turned.

use super::opened;
use super::talk::{at, faults_after};
use leverwright::lesson::{ProblemFile, parse_problem_file};
use leverwright::session::{Session, Sign};
use leverwright::text::Words;

/// A force between two bodies points one way on the first and the other way on the second.
#[test]
fn a_way_is_held_against_the_body_that_is_said_with_it() {
    let (right, wrong) = (Sign::Right, Sign::Wrong);
    let level = "level part of the force of the hinge";
    let weight = "weight of the load";
    let rows: [(&str, &str, &str, Sign); 25] = [
        ("internal_hinge", level, "Gy = 6 kN up", right),
        ("internal_hinge", level, "Gy = 6 kN down", right),
        (
            "internal_hinge",
            level,
            "Gy = 6 kN up on the right beam",
            right,
        ),
        (
            "internal_hinge",
            level,
            "Gy = 6 kN on the right beam up",
            right,
        ),
        (
            "internal_hinge",
            level,
            "On the right part: Gy = 6 kN up",
            right,
        ),
        (
            "internal_hinge",
            level,
            "Gy = 6 kN down on the left beam",
            right,
        ),
        (
            "internal_hinge",
            level,
            "Gy = 6 kN down on the left part",
            right,
        ),
        (
            "internal_hinge",
            level,
            "Gy = 6 kN up on the left beam",
            wrong,
        ),
        (
            "internal_hinge",
            level,
            "Gy = 6 kN down on the right",
            wrong,
        ),
        (
            "internal_hinge",
            level,
            "Gy = 5 kN up on the right beam",
            wrong,
        ),
        ("internal_hinge", level, "Gy = -6 kN down", right),
        (
            "internal_hinge",
            level,
            "Ay = 18 kN up on the left beam",
            right,
        ),
        (
            "internal_hinge",
            level,
            "Ay = 18 kN up on the right beam",
            wrong,
        ),
        ("internal_hinge", level, "Ay = 18 kN down", wrong),
        ("a_frame", weight, "Jy = 588 N down", right),
        (
            "a_frame",
            weight,
            "Jx = 268 N to the left on the right leg",
            wrong,
        ),
        (
            "a_frame",
            weight,
            "Jx = 268 N to the right on the right leg",
            right,
        ),
        ("a_frame", weight, "J = 646 N up and to the left", right),
        ("a_frame", weight, "J = 646 N down and to the right", right),
        ("a_frame", weight, "J = 646 N up and to the right", wrong),
        (
            "a_frame",
            weight,
            "ψJ = 65.5° above the horizontal, to the right",
            wrong,
        ),
        (
            "a_frame",
            weight,
            "ψJ = 65.5° below the horizontal, to the right",
            right,
        ),
        ("a_frame", weight, "ψJ = 114.5°", right),
        ("a_frame", weight, "ψJ = 294.5°", right),
        ("a_frame", weight, "ψJ = 245.5°", wrong),
    ];
    let rows = rows.map(|(name, title, line, sign)| (name, title, &[][..], line, sign));
    assert_eq!(faults_after(&rows), Vec::<String>::new());
    let said = |line: &str| {
        at("internal_hinge", level)
            .submit(line)
            .line
            .message
            .to_string()
    };
    let on_right = "That is its way on the right beam.";
    assert!(said("Gy = 6 kN up").contains(on_right));
    assert!(said("Gy = 6 kN down").contains("on the left beam."));
    assert!(!said("Gy = 6 kN up on the right beam").contains("on the"));
}

/// By hand, in two_wires: the force points up and to the left, 23.2° above the horizontal.
#[test]
fn a_direction_is_read_against_the_line_that_is_said_with_it() {
    let (right, wrong) = (Sign::Right, Sign::Wrong);
    let part = "upright part of P";
    let last = "direction of the force";
    let jib = "weight of the jib";
    let rows: [(&str, &str, &str, Sign); 46] = [
        ("two_wires", last, "156.8", right),
        ("two_wires", last, "156.8°", right),
        ("two_wires", last, "180 - 23.2", right),
        ("two_wires", last, "66.8° from the vertical", right),
        ("two_wires", last, "66.8 with the vertical", right),
        ("two_wires", last, "66.8° to the vertical", right),
        ("two_wires", last, "atan(172/73.7) from the vertical", right),
        ("two_wires", last, "23.2° with the horizontal", right),
        ("two_wires", last, "23.2° from the negative x axis", right),
        ("two_wires", last, "156.8° from the x axis", right),
        ("two_wires", last, "23.2° from the vertical", wrong),
        ("two_wires", last, "66.8° with the horizontal", wrong),
        ("two_wires", last, "66.8", wrong),
        ("two_wires", last, "203.2", wrong),
        ("two_wires", last, "180 + 23.2", wrong),
        ("two_wires", part, "ψH = 66.8° from the vertical", right),
        ("two_wires", part, "ψH = 156.8°", right),
        ("two_wires", part, "ψH = 203.2°", wrong),
        ("two_wires", part, "H = 187 N at 156.8°", right),
        // The angle with the horizontal alone leaves open which way it points.
        ("two_wires", part, "H = 187 N at 23.2°", Sign::Noted),
        (
            "two_wires",
            part,
            "H = 187 N on the hook at 23.2°",
            Sign::Noted,
        ),
        ("two_wires", part, "H = 187 N on the hook at 156.8°", right),
        ("two_wires", part, "H = 187 N left at 23.2°", right),
        ("two_wires", part, "H = 187 N right at 23.2°", wrong),
        ("a_frame", "tension", "J = 646 N at 65.5°", Sign::Noted),
        (
            "a_frame",
            "tension",
            "J = 646 N at 114.5° on the left leg",
            right,
        ),
        (
            "a_frame",
            "tension",
            "J = 646 N at 114.5° on the right leg",
            wrong,
        ),
        (
            "a_frame",
            "tension",
            "J = 646 N on the right leg at 114.5°",
            wrong,
        ),
        ("a_frame", "tension", "ψJ = 114.5° on the right leg", wrong),
        ("two_wires", part, "H = 187 N, 66.8° to the vertical", right),
        (
            "two_wires",
            part,
            "H = 187 N at 23.2° above the horizontal, to the left",
            right,
        ),
        (
            "two_wires",
            part,
            "H = 187 N at 23.2° above the horizontal, to the right",
            wrong,
        ),
        ("two_wires", part, "H = 187 N at 20°", wrong),
        (
            "two_wires",
            part,
            "H = 187 N at 66.8° with the horizontal",
            wrong,
        ),
        ("two_wires", part, "H = 187 N at 203.2°", wrong),
        ("two_wires", part, "H = 150 N at 156.8°", wrong),
        ("two_wires", part, "P = 90 N at 35°", Sign::Noted),
        ("two_wires", part, "P = 90 N at 20°", Sign::Unclear),
        // The strut pushes the jib up and to the right, 36.9° above the horizontal… its line points
        // down and to the left where it is counted positive.
        ("jib", jib, "S = 4165 N at 36.9°", right),
        ("jib", jib, "S = 4165 N at 53.1° to the vertical", right),
        ("jib", jib, "S = 4165 N at 53.1° to the horizontal", wrong),
        ("jib", jib, "S = 4165 N at 143.1°", wrong),
        ("jib", jib, "Wb = 392 N at 270°", right),
        ("jib", jib, "β = 53.1° with the vertical", right),
        ("jib", jib, "β = 53.1° with the horizontal", wrong),
        ("jib", jib, "H = 3390 N at 190.8°", right),
    ];
    let rows = rows.map(|(name, title, line, sign)| (name, title, &[][..], line, sign));
    assert_eq!(faults_after(&rows), Vec::<String>::new());
    let mut session = at("two_wires", part);
    session.submit("H = 187 N at 156.8°");
    let done = session.submit("done");
    assert!(session.view().summary.len() > 1, "{}", done.line.message);
}

/// An equation is no less true with its sides exchanged, and none is true by being noted.
#[test]
fn a_true_relation_beside_the_question_is_noted_and_a_false_one_is_not() {
    let (noted, wrong) = (Sign::Noted, Sign::Wrong);
    let weight = "weight of the gate";
    let part = "upright forces";
    let crate_ = "weight of the crate";
    let friction = "friction of the floor";
    let level = "level part of the force of the hinge";
    let across = "part of T across";
    let rows: [(&str, &str, &str, Sign); 42] = [
        ("gate", weight, "60*9.8*1.5 = 882", noted),
        ("gate", weight, "882 = 60*9.8*1.5", noted),
        ("gate", weight, "60*9.8*1.5 = 882 N m", noted),
        ("gate", weight, "60*9.8*1.5 = 882 N", wrong),
        ("gate", weight, "60*9.8*1.5 = 880", wrong),
        ("gate", weight, "60*9.8*1.5", wrong),
        ("gate", weight, "735 = 60*9.8*1.5/1.2", noted),
        ("gate", part, "588*1.5 = 882", noted),
        ("gate", part, "W*b/2 = 882", noted),
        ("gate", part, "882 = W*b/2", noted),
        ("gate", part, "W*b = 1764", noted),
        ("gate", part, "W*b/2 = 800", wrong),
        ("gate", part, "588*1.5 = 870", wrong),
        ("pulley_beam", crate_, "980*3*cos 30 = 2546", noted),
        (
            "pulley_beam",
            crate_,
            "2864 = 980*3*cos(30) + 245*1.5*cos(30)",
            noted,
        ),
        ("pulley_beam", crate_, "849 = 980 cos 30", noted),
        ("pulley_beam", crate_, "980*3*sin 30 = 2546", wrong),
        // A balance typed before anything is found.
        (
            "ladder",
            friction,
            "F*4*sin 62 = 196*2*cos 62 + 686*d*cos 62",
            noted,
        ),
        ("ladder", friction, "F*4*sin 62 = 196*2*cos 62", wrong),
        (
            "ladder",
            friction,
            "F*4*sin 62 = 196*2*cos 62 + 686*d*sin 62",
            wrong,
        ),
        // Values of two steps are not equal because each is one.
        ("internal_hinge", level, "12000 N = 6000 N", wrong),
        ("internal_hinge", level, "0 = 12000 N + Gy + 6000 N", wrong),
        (
            "plank_tips",
            "force of the left",
            "0 N = 294 N + 441 N",
            wrong,
        ),
        // Each side of it holds what is asked and open.
        (
            "ladder_angle",
            "part of Wb",
            "196*2*cos θ = 68.6*4*sin θ",
            Sign::Right,
        ),
        (
            "ladder_angle",
            "part of Wb",
            "196*2*sin θ = 68.6*4*cos θ",
            wrong,
        ),
        // A later value by its name, though it is made of what is still open.
        ("ladder", friction, "FN = 309 N", Sign::Right),
        ("ladder", friction, "FN = 200 N", wrong),
        ("ladder", friction, "309 N", noted),
        (
            "boom_breaks",
            "weight of the bucket",
            "W1 = 299 N",
            Sign::Right,
        ),
        ("boom_breaks", "weight of the bucket", "W1 = 400 N", wrong),
        ("boom_breaks", "weight of the bucket", "299 N", noted),
        ("boom_breaks", across, "m1 = 299/9.8", Sign::Right),
        // In the unit in which the forces are printed.
        ("internal_hinge", level, "12 = Ay + Gy", noted),
        ("internal_hinge", level, "Ay + Gy = 12", noted),
        ("internal_hinge", level, "12 + Gy = Ay", noted),
        ("internal_hinge", level, "12*1.5 = MA + Gy*4", noted),
        ("internal_hinge", level, "12*1.5 = 18", noted),
        ("internal_hinge", level, "12 = Ay - 2*Gy", wrong),
        ("internal_hinge", level, "12*1.5 = MA + Gy*3", wrong),
        ("internal_hinge", level, "13 = Ay + Gy", wrong),
        ("internal_hinge", level, "12*1.5 = 19", wrong),
        ("internal_hinge", level, "Gy = 6 N", wrong),
    ];
    let rows = rows.map(|(name, title, line, sign)| {
        // What the balance gives is asked for, not the balance.
        let before: &[&str] = if title == part { &["skip"] } else { &[] };
        (name, title, before, line, sign)
    });
    assert_eq!(faults_after(&rows), Vec::<String>::new());
}

/// What still holds the end up is told by its name, and a slip by a name that fits it.
#[test]
fn the_end_of_a_problem_of_ones_own_is_told_as_such() {
    let mut session = at("ladder", "friction");
    session.submit("d = 2.81 m");
    let told = session.submit("done").line.message.to_string();
    assert!(
        told.starts_with("Still to be found: F (push of the wall)."),
        "{told}"
    );
    session.submit("F = 309 N");
    session.submit("done");
    let summary = |session: &Session| {
        let told = session.view().summary;
        told.iter()
            .map(ToString::to_string)
            .collect::<Vec<_>>()
            .join("\n")
    };
    let end = summary(&session);
    assert!(
        end.contains("Next: another problem.") && !end.contains("lesson"),
        "{end}"
    );
    let mut session = at("ladder", "upright forces");
    session.submit("Wb + W1 + N = 0");
    session.submit("W1 - Wb = N");
    session.submit("d = 2.81 m");
    session.submit("F = 309 N");
    session.submit("done");
    let end = summary(&session);
    assert!(
        end.contains("Look again at:") && !end.contains("a moment"),
        "{end}"
    );
}

/// By hand: (10 + 14 + 30) kg · 9.8 m/s² = 529.2 N.
#[test]
fn the_weights_of_several_bodies_are_one_number() {
    let file = parse_problem_file(include_str!("two_legs.json")).unwrap();
    let ProblemFile::General(system) = file else {
        panic!("two_legs.json is a problem of the guided walk");
    };
    for (line, sign) in [
        ("Ay + B = 529.2", Sign::Noted),
        ("529 = Ay + B", Sign::Noted),
        ("Ay + B = 540", Sign::Wrong),
        ("Ay - 2*B = 529.2", Sign::Wrong),
    ] {
        let mut session = Session::start_general(&system, Words::english()).unwrap();
        let turn = session.submit(line);
        let told = turn.line.message.to_string();
        assert_eq!(turn.line.sign, sign, "{line}: {told}");
        let holds = sign == Sign::Wrong || told.starts_with("It holds, with");
        assert!(holds, "{line}: {told}");
    }
}

/// Two balances give their unknowns together in sign: the first typed may be either.
#[test]
fn another_balance_counts_as_the_one_that_is_asked() {
    let mut session = opened("sign");
    let turn = session.submit("T1*sin 40 + T2*sin 25 = 137.2");
    let told = turn.line.message.to_string();
    assert_eq!(turn.line.sign, Sign::Right, "{told}");
    assert!(told.starts_with("That counts as the balance of"), "{told}");
}

/// By hand: the hinge pushes the right beam up with 6 kN, so the wall carries 12 kN + 6 kN.
#[test]
fn bare_kilonewtons_stand_beside_a_name_that_is_found() {
    let right_beam: &[&str] = &["Gy = 6 kN up on the right beam"];
    let title = "level part of the force of the hinge";
    let rows = [
        (
            "internal_hinge",
            title,
            right_beam,
            "Ay = 12 + Gy",
            Sign::Right,
        ),
        (
            "internal_hinge",
            title,
            right_beam,
            "12 + Gy = Ay",
            Sign::Right,
        ),
        (
            "internal_hinge",
            title,
            right_beam,
            "Ay = 12 + 2*Gy",
            Sign::Wrong,
        ),
        (
            "internal_hinge",
            title,
            right_beam,
            "Ay = 13 + Gy",
            Sign::Wrong,
        ),
    ];
    assert_eq!(faults_after(&rows), Vec::<String>::new());
}

/// By hand, with the chain level: (68.6·1.2 + 803.6·1.8 + 29.4·3.6)/4.8 = 341 N at the back, T =
/// (341·2.4 − 29.4·1.2)·tan 20°/1.8 = 158 N.
#[test]
fn a_line_that_lies_level_here_is_taken_as_level() {
    let (right, noted, wrong) = (Sign::Right, Sign::Noted, Sign::Wrong);
    let steps = include_str!("steps_with_chain.json");
    for (line, sign) in [
        ("Ty = 158 sin 0°", noted),
        ("Ty = 0", noted),
        ("Tx = T", noted),
        ("Tx = 158*cos 0", right),
        ("Tx = 158", right),
        ("Tx = 158*sin 20", wrong),
        ("Jx + T = 0", noted),
        ("Jx + Tx = 0", noted),
        ("Wf⊥ = Wf*sin φ", noted),
    ] {
        let turn = super::ends::of_file(steps).submit(line);
        assert_eq!(turn.line.sign, sign, "{line}: {}", turn.line.message);
    }
    let rows = [
        ("Jx + T = 0", right),
        ("Jx = T", right),
        ("Jx + Tx = 0", right),
        ("Jx = 158*sin 20", wrong),
    ];
    for (line, sign) in rows {
        let turn = super::ends::passed_to(steps, "balance of the level forces").submit(line);
        assert_eq!(turn.line.sign, sign, "{line}: {}", turn.line.message);
    }
}

/// By hand: the links at 70° and 110° have the same sine, so the upright forces give
/// 120·sin 70° + 75·sin 50° = 170.2 N = (A + B)·sin 70°; about C the moments give A = −15.8 N.
#[test]
fn a_balance_of_many_like_numbers_is_followed_term_by_term() {
    let (right, noted, wrong) = (Sign::Right, Sign::Noted, Sign::Wrong);
    let links = include_str!("three_links.json");
    let said = |line: &str| {
        let turn = super::ends::of_file(links).submit(line);
        (turn.line.sign, turn.line.message.to_string())
    };
    for (line, sign) in [
        ("120*sin 70 + 75*sin 50 = A*sin 70 + B*sin 70", right),
        ("120*sin 70 + 75*sin 50 = A*sin 70 - B*sin 70", right),
        ("A*sin70 + B*sin110 + 120*sin250 + 75*sin310 = 0", right),
        ("112.8 + 57.5 = 0.940*A + 0.940*B", right),
        (
            "120*sin 70 + 75*sin 50 = 112.8 + 57.5 = 170.3 = A*sin 70 + B*sin 70",
            Sign::Rounded,
        ),
        (
            "120*sin 70 + 75*sin 50 = 112.8 + 57.5 = 173 = A*sin 70 + B*sin 70",
            wrong,
        ),
        ("120*sin 70 + 75*sin 50 = A*sin 50 + B*sin 70", wrong),
        ("120*sin 70 - 75*sin 50 = A*sin 70 + B*sin 70", wrong),
        ("A + B = 185", wrong),
        (
            "112.8*0.3 + 41.0*0.3 + A*sin 70*0.7 + B*cos 70*0.9 + 26 = 57.5*0.6 + 48.2*0.4 + A*cos 70*1.0 + B*sin 70*0.4",
            noted,
        ),
        (
            "112.8*0.3 + 41.0*0.3 + A*sin 70*0.7 + B*cos 70*0.9 - 26 = 57.5*0.6 + 48.2*0.4 + A*cos 70*1.0 + B*sin 70*0.4",
            wrong,
        ),
        (
            "112.8*0.3 + 41.0*0.4 + A*sin 70*0.7 + B*cos 70*0.9 + 26 = 57.5*0.6 + 48.2*0.4 + A*cos 70*1.0 + B*sin 70*0.4",
            wrong,
        ),
    ] {
        let (got, told) = said(line);
        assert_eq!(got, sign, "{line}: {told}");
    }
    // What is said of numbers is true of them.
    assert!(said("A + B = 181.1").1.contains("not every number"));
    assert!(
        said("170.3 = 0.940*(A + B)")
            .1
            .contains("Which quantity each number")
    );
}

/// Between two legs each statement has its own body. By hand: on the right leg the floor lifts 411.8 N
/// and 431.2 N hang, so the joint lifts it with 19.4 N and presses the left leg down.
#[test]
fn each_statement_of_a_line_has_its_own_body() {
    let legs = include_str!("two_legs.json");
    let (right, wrong) = (Sign::Right, Sign::Wrong);
    for (line, sign) in [
        (
            "on the left leg: Jy = 19.426 N down, on the right leg: Jy = 19.426 N up",
            right,
        ),
        (
            "on the left leg: Jy = 19.426 N up, on the right leg: Jy = 19.426 N down",
            wrong,
        ),
        (
            "on the left leg: Jy = 19.426 N down, on the right leg: Jy = 19.426 N down",
            wrong,
        ),
        (
            "left leg: Jy = 19.426 N down, right leg: Jy = 19.426 N up",
            right,
        ),
        (
            "left leg: Jy = 19.426 N up, right leg: Jy = 19.426 N down",
            wrong,
        ),
        (
            "left leg: Jy = 19.426 N down; right leg: Jy = 19.426 N down",
            wrong,
        ),
        ("left leg: Jy = 19.426 N up", wrong),
        (
            "Jy = 19.426 N up on the right leg, Jx = 187.36 N to the right",
            right,
        ),
        (
            "Jy = 19.426 N up on the right leg, Ay = 117.43 N up on the left leg",
            right,
        ),
        ("left leg: Wl = Jy + Ay, right leg: Wr + W2 + Jy = B", right),
        (
            "left leg: Wl = Jy + Ay, right leg: Wr + W2 = 2*Jy + B",
            wrong,
        ),
        ("left leg: B = 411.77 N up", right),
    ] {
        let mut session = super::ends::of_file(legs);
        session.submit("freely");
        let turn = session.submit(line);
        assert_eq!(turn.line.sign, sign, "{line}: {}", turn.line.message);
    }
}
