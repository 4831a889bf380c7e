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
    ] {
        let told = solved(name, &["--method", "triangle"]);
        insta::assert_snapshot!(format!("{name}_triangle"), told);
    }
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
