//! Whole workings as a person meets them: the kinds of problems that a course sets, printed.
//!
//! Each is a snapshot to be read as a newcomer would read it; what the numbers are is proved
//! elsewhere (tests/workings.rs, tests/systems).

use assert_cmd::Command;
use std::fs;

fn solved(file: &str, more: &[&str]) -> String {
    let path = format!("{}/tests/boards/{file}.json", env!("CARGO_MANIFEST_DIR"));
    let output = Command::cargo_bin("leverwright")
        .unwrap()
        .args(["solve", &path])
        .args(more)
        .output()
        .unwrap();
    let told = String::from_utf8(output.stderr).unwrap();
    format!("{}{told}", String::from_utf8(output.stdout).unwrap())
}

#[test]
fn the_workings_read_as_on_the_board() {
    let folder = format!("{}/tests/boards", env!("CARGO_MANIFEST_DIR"));
    let mut names: Vec<String> = (fs::read_dir(folder).unwrap())
        .filter_map(|entry| {
            let name = entry.unwrap().file_name().into_string().unwrap();
            name.strip_suffix(".json").map(str::to_owned)
        })
        .collect();
    names.sort();
    assert!(names.len() >= 24, "{names:?}");
    for name in names {
        insta::assert_snapshot!(name.clone(), solved(&name, &[]));
    }
}

#[test]
fn the_triangle_of_forces_reads_as_on_the_board() {
    for name in [
        "forearm",
        "rod_on_peg",
        "sign",
        "back",
        "gate",
        "pole",
        "two_wires",
        "jib",
        "internal_hinge",
        "wheel_at_step",
    ] {
        let told = solved(name, &["--method", "triangle"]);
        insta::assert_snapshot!(format!("{name}_triangle"), told);
    }
}

/// The way that stands behind the angle of a force is that of its parts.
#[test]
fn the_way_of_a_force_is_told_with_its_angle() {
    let mut told = 0;
    for (name, more) in [
        ("forearm", &[][..]),
        ("forearm", &["--method", "triangle"]),
        ("back", &[]),
        ("gate", &[]),
        ("gate", &["--pivot", "tip"]),
        ("pole", &[]),
        ("jib", &[]),
        ("bracket", &[]),
    ] {
        let text = solved(name, more);
        let json: serde_json::Value = serde_json::from_str(&solved(name, &["--json"])).unwrap();
        for force in json["forces"].as_array().unwrap() {
            let (x, y) = (force["x"].as_f64().unwrap(), force["y"].as_f64().unwrap());
            let symbol = force["symbol"].as_str().unwrap().replace('_', "");
            let start = format!("    ψ{symbol} = ");
            let Some(line) = text.lines().find(|line| line.starts_with(&start)) else {
                continue;
            };
            let vertical = if y > 0.0 { "above" } else { "below" };
            let side = if x > 0.0 { "right" } else { "left" };
            let way = format!("° ({vertical} the horizontal, to the {side})");
            assert!(line.ends_with(&way), "{name}: {line}");
            told += 1;
        }
    }
    assert!(told >= 5, "{told}");
}

/// 64.7·sin 169° ÷ sin 1.49° would be 474, and the force is 495 N.
#[test]
fn figures_are_shown_that_give_the_result_back() {
    let told = solved("forearm", &["--method", "triangle"]);
    let line = "M = R·sin αM/sin αR = 64.7 N·sin 168.5°/sin 1.49° = 495 N";
    assert!(told.contains(line), "{told}");
}

#[test]
fn a_part_told_while_open_is_told_again_with_its_value() {
    let told = solved("a_frame", &["--pivot", "tip"]);
    let (line, used) = (
        "    A⊥ = A·sin α = 588 N·sin 20.0° = 201 N\n",
        "= 201 N·2.5 m",
    );
    let (at, used) = (told.find(line), told.find(used));
    assert!(at.is_some() && at < used, "{told}");
}

#[test]
fn the_triangle_of_forces_has_no_pivot() {
    let told = solved("forearm", &["--method", "triangle", "--pivot", "elbow"]);
    assert!(told.contains("leave --pivot out"), "{told}");
}

/// A square of 0.6 m without its upper right quarter: 5a/12 from the far sides.
#[test]
fn a_lamina_that_nothing_holds_asks_for_its_centre_of_mass() {
    let told = solved("centre", &["--json"]);
    let told: serde_json::Value = serde_json::from_str(&told).unwrap();
    for axis in ["x", "y"] {
        let found = told["centres_of_mass"][0][axis].as_f64().unwrap();
        assert!((found - 0.25).abs() < 1e-12, "{told}");
    }
    let path = format!("{}/tests/boards/centre.json", env!("CARGO_MANIFEST_DIR"));
    Command::cargo_bin("leverwright")
        .unwrap()
        .args(["check", &path])
        .assert()
        .success();
}

/// Each of several balances that give their unknowns together says what it is.
#[test]
fn balances_taken_together_are_told_one_by_one() {
    let bars = "../workings/two_bars";
    let told = solved(bars, &[]);
    for line in [
        "2 balances that give their unknowns together (right bar, left bar)\n",
        "\n    Moments about the joint (right bar), without Jx, Jy\n        Wr⊥·L2/2 + ",
        "\n    Moments about the left pin (left bar, right bar), without Ax, Ay\n        Wl⊥·L/2 + ",
    ] {
        assert!(told.contains(line), "{line}{told}");
    }
    let json: serde_json::Value = serde_json::from_str(&solved(bars, &["--json"])).unwrap();
    let lines = json["working"].as_array().unwrap().iter();
    let of = |line: &serde_json::Value| {
        let is_one = line["taken"] == "moments";
        is_one.then(|| format!("{} {} {}", line["about"], line["bodies"], line["removed"]))
    };
    let found: Vec<String> = lines.filter_map(of).collect();
    let wanted = [
        r#""joint" ["right bar"] ["Jx","Jy"]"#,
        r#""left pin" ["left bar","right bar"] ["Ax","Ay"]"#,
    ];
    assert_eq!(found, wanted);
}

/// What acts between two bodies acts opposite ways on them; it is counted on the one for which it
/// is told. By hand, from the other body:
/// - The floor pushes the right leg up with 588 N and nothing else upright acts on it, so the pin
///   holds it down and the left leg up; the tie pulls the left leg to the right, the pin back.
/// - The right beam carries 12000 N and the roller 6000 N of it: the hinge holds it up, and so
///   draws the left beam down.
/// - The floor rubs the right bar to the left with 0.55·276 N, so the joint pushes it to the right;
///   276 N − 176 N − 212 N: the joint holds it up. On the left bar both are the reverse.
#[test]
fn what_acts_between_two_bodies_tells_on_which_it_acts_so() {
    for (name, lines) in [
        (
            "a_frame",
            &[
                "Jy = 588 N (upwards on the left leg)\n",
                "Jx = −268 N (to the left on the left leg)\n",
                "= 65.5° (above the horizontal, to the left on the left leg)\n",
            ][..],
        ),
        (
            "internal_hinge",
            &[
                "Gy = −6000 N (downwards on the left beam)\n",
                "Ay = 18000 N (upwards)\n",
            ],
        ),
        (
            "../workings/two_bars",
            &[
                "Jx = −152 N (to the left on the left bar)\n",
                "Jy = −112 N (downwards on the left bar)\n",
                "= 36.5° (below the horizontal, to the left on the left bar)\n",
                "Ax = 152 N (to the right)\n",
            ],
        ),
    ] {
        let told = solved(name, &[]);
        for line in lines {
            assert!(told.contains(line), "{line}{told}");
        }
        let json: serde_json::Value = serde_json::from_str(&solved(name, &["--json"])).unwrap();
        for force in json["forces"].as_array().unwrap() {
            let joins = ["J", "G"].contains(&force["symbol"].as_str().unwrap());
            let reverse = force["reverse_on"].as_array().unwrap();
            assert_eq!(!reverse.is_empty(), joins, "{name}: {force}");
        }
    }
}

/// By hand: Ax = −150 N; Ay = √(250² − 150²) N = 200 N up, or down; about the roller
/// 98 N m + 490 N·(3.5 m − d) = ±200 N·3.5 m. The roller as the wanted pivot serves as well.
#[test]
fn a_hinge_at_its_limit_is_worked_by_its_parts() {
    for more in [&[][..], &["--pivot", "B"]] {
        let told = solved("hinge_gives", more);
        let order = [
            "Ax = −150 N (to the left)\nAbout to give: the pin is at its limit\n",
            "    Ay = √(Amax² − Ax²) = √((250 N)² − (−150 N)²) = 200 N (upwards)\n",
            "Moments about the roller (beam), without Ax, B\n",
            "    d = 2.27 m\n",
            "d = 5.13 m is as true",
            "    Ay = −√(Amax² − Ax²) = −√((250 N)² − (−150 N)²) = −200 N (downwards)\n",
            "    d = 5.13 m\n",
        ];
        let at: Vec<Option<usize>> = order.iter().map(|line| told.find(line)).collect();
        assert!(at.is_sorted() && at[0].is_some(), "{at:?}{told}");
        assert!(!told.contains("by trial"), "{told}");
    }
}

/// Where the knot moves with what is sought, moments about the knot say no more than those about
/// the pin and the upright forces: M(knot) = M(pin) − e·ΣFy. Only the condition gives e.
#[test]
fn a_balance_that_says_what_two_others_say_is_none() {
    let told = solved("../workings/knot_moves", &[]);
    assert!(told.contains("is found by trial here"), "{told}");
    assert!(!told.contains("together (shelf)"), "{told}");
}

/// A strap told by 0.9 m up one leg and 1.5 m down the other, of 2.4 m both, is level: about a foot
/// it turns nothing. By hand: 156.8 N·(3/4·2.4 m·sin 20°) = B·2·2.4 m·sin 20°.
#[test]
fn a_strap_that_the_distances_make_level_turns_no_whole() {
    let told = solved("../workings/strap_by_distances", &[]);
    let first = "Moments about the front floor (front, rear), without T, A\n";
    assert!(
        told.contains(first) && told.contains("    B = 58.8 N\n"),
        "{told}"
    );
}

/// By hand: level, the ramp as a whole takes the 60 N of the hand; upright, the 196 N of the trunk.
#[test]
fn parts_that_are_asked_of_a_contact_are_those_of_its_whole_force() {
    for more in [&[][..], &["--method", "triangle"]] {
        let told = solved("../workings/ramp_parts", more);
        let (_, parts) = told.split_once("The parts that are asked\n").unwrap();
        for line in [
            ["RNx = ", " = −60.0 N (to the left)\n"],
            ["RNy = ", " = 196 N (upwards)\n"],
        ] {
            let of_it = |one: &str| line.iter().all(|piece| format!("{one}\n").contains(piece));
            assert!(parts.lines().any(of_it), "{line:?} {told}");
        }
    }
}

/// The rope pulls the boom down, and along it: each part is of one end, and says of which.
#[test]
fn a_part_of_a_rope_with_two_ends_at_a_body_says_of_which_end() {
    use leverwright::session::{Session, Sign};
    let file = include_str!("boards/pulley_beam.json");
    let system = leverwright::lesson::parse_system(file).unwrap();
    let words = leverwright::text::Words::english();
    let mut session = Session::start_general(&system, words).unwrap();
    let titles: Vec<String> = session
        .view()
        .steps
        .iter()
        .map(|step| step.title.clone())
        .collect();
    let end = "upright part of S at the end that pulls down and to the left";
    assert!(titles.iter().any(|title| title.contains(end)), "{titles:?}");
    assert!(
        titles
            .iter()
            .any(|title| title.ends_with("upright part of T")),
        "{titles:?}"
    );
    session.submit("freely");
    assert_eq!(session.submit("Sy = 490 N").line.sign, Sign::Right);
}

/// From the roller back to the joint it is the second beam alone: there and back is no way.
#[test]
fn a_way_there_and_back_is_not_told() {
    let told = solved(
        "internal_hinge",
        &["--method", "coordinates", "--pivot", "B"],
    );
    assert!(
        told.contains("Q·(L2 − dQ) + Gy·L2 = 0,") && !told.contains("0L"),
        "{told}"
    );
}

/// A rope whose two directions are one line though told in two forms, 60° from the vertical and 30°
/// from the horizontal. By hand: B·2 m = 58.8·0.5 + 88.2·1.5 + 735·0.75 N m, then about the joint
/// T·0.6 m = B·1 m − 88.2·0.5 N m.
#[test]
fn a_slanting_rope_told_in_two_forms_is_one_line() {
    let told = solved("../workings/cord_two_forms", &[]);
    assert!(
        told.contains("B = 356 N") && told.contains("T = 521 N"),
        "{told}"
    );
    assert!(!told.contains("T = 0"), "{told}");
    let mirrored = solved("../workings/cord_two_forms_sought", &[]);
    assert!(
        mirrored.contains("T = 692 N") && mirrored.contains("= 103 kg"),
        "{mirrored}"
    );
}

/// About the end that is built in neither part of its force turns: the couple follows from givens.
#[test]
fn the_couple_of_a_built_in_end_is_found_about_that_end() {
    let told = solved("../workings/lamp_arm", &[]);
    assert!(
        told.contains("Moments about the wall (arm), without Ex, Ey"),
        "{told}"
    );
}

/// A hint before the last is no answer: of a force that vanishes, of where an even load acts.
#[test]
fn no_hint_before_the_last_is_the_answer() {
    use leverwright::session::Session;
    for (file, answer, steps) in [
        ("plank_tips", "A = 0", 1),
        ("internal_hinge", "at the middle", 6),
    ] {
        let path = format!("{}/tests/boards/{file}.json", env!("CARGO_MANIFEST_DIR"));
        let system = leverwright::lesson::parse_system(&fs::read_to_string(path).unwrap()).unwrap();
        let words = leverwright::text::Words::english();
        let mut session = Session::start_general(&system, words).unwrap();
        for _ in 0..steps {
            for _ in 0..3 {
                for hint in &session.submit("hint").line.hints {
                    assert!(!hint.to_string().contains(answer), "{file}: {hint}");
                }
            }
            session.submit("show");
        }
    }
}
