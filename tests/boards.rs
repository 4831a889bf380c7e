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
