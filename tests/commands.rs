//! The commands from outside: what they print, and their exit status.

use std::io::Write;
use std::path::Path;
use std::process::{Command, Output, Stdio};

fn run(arguments: &[&str], input: &[u8]) -> Output {
    let mut child = Command::new(env!("CARGO_BIN_EXE_leverwright"))
        .args(arguments)
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .unwrap();
    // A command that reads nothing may be gone before it is written to.
    let _ = child.stdin.take().unwrap().write_all(input);
    child.wait_with_output().unwrap()
}

fn text(bytes: &[u8]) -> String {
    String::from_utf8(bytes.to_vec()).unwrap()
}

fn plain(saves: &Path, input: &[u8]) -> Output {
    let saves = saves.to_str().unwrap();
    run(
        &[
            "practice", "mast", "--seed", "3", "--plain", "--saves", saves,
        ],
        input,
    )
}

#[test]
fn verif_version_help_and_wrong_use() {
    let version = run(&["--version"], b"");
    assert_eq!(version.status.code(), Some(0));
    assert!(text(&version.stdout).contains(env!("CARGO_PKG_VERSION")));
    let help = run(&["--help"], b"");
    assert_eq!(help.status.code(), Some(0));
    assert!(text(&help.stdout).contains("practice") && text(&help.stdout).contains("solve"));
    for wrong in [&["lift"][..], &["solve"], &["practice", "--seed", "3"]] {
        let output = run(wrong, b"");
        assert_eq!(output.status.code(), Some(2), "{wrong:?}");
        assert!(output.stdout.is_empty() && !output.stderr.is_empty());
    }
}

#[test]
fn verif_solve_tells_every_lesson_and_its_forces_balance() {
    for lesson in ["counter", "walkway", "mast"] {
        let told = run(&["solve", lesson, "--seed", "3"], b"");
        assert_eq!(told.status.code(), Some(0), "{lesson}");
        assert!(text(&told.stdout).contains("Moment sum"), "{lesson}");
        let json = run(&["solve", lesson, "--seed", "3", "--json"], b"");
        assert_eq!(json.status.code(), Some(0), "{lesson}");
        let json: serde_json::Value = serde_json::from_slice(&json.stdout).unwrap();
        let forces = json["forces"].as_array().unwrap();
        for axis in ["x", "y"] {
            let sum: f64 = forces
                .iter()
                .map(|force| force[axis].as_f64().unwrap())
                .sum();
            assert!(sum.abs() < 1e-6, "{lesson} {axis}: {sum}");
        }
    }
}

/// Statics by hand from the givens of mast, seed 3; moments about the hinge.
#[test]
fn val_solve_gives_the_mast_its_pull_and_hinge_force() {
    let json = run(&["solve", "mast", "--seed", "3", "--json"], b"");
    let json: serde_json::Value = serde_json::from_slice(&json.stdout).unwrap();
    let value = |id: &str| {
        let steps = json["steps"].as_array().unwrap();
        let step = steps.iter().find(|step| step["id"] == id).unwrap();
        step["value"].as_f64().unwrap()
    };
    let lever = 55f64.to_radians().cos();
    let moments = (63.0 * 2.7 + 71.0 * 4.5 + 11.0 * 5.4) * 9.8 * lever;
    let pull = moments / (4.2 * 65f64.to_radians().sin());
    let level = -pull * 10f64.to_radians().cos();
    let upright = (63.0 + 71.0 + 11.0) * 9.8 - pull * 10f64.to_radians().sin();
    for (id, own) in [
        ("pull:T", pull),
        ("reaction:H:x", level),
        ("reaction:H:y", upright),
        ("reaction:H:size", level.hypot(upright)),
        (
            "reaction:H:direction",
            (upright / -level).atan().to_degrees(),
        ),
    ] {
        assert!((value(id) - own).abs() < 1e-6 * own.abs(), "{id}: {own}");
    }
}

#[test]
fn verif_unknown_lessons_and_broken_files_are_the_inputs_fault() {
    let unknown = run(&["solve", "nosuch"], b"");
    assert_eq!(unknown.status.code(), Some(1));
    assert!(text(&unknown.stderr).contains("nosuch"));
    assert!(text(&unknown.stderr).contains("counter"));
    let folder = tempfile::tempdir().unwrap();
    let file = folder.path().join("bad.json");
    std::fs::write(&file, "{\n \"leverwright\": 1,\n \"g\": oops\n}").unwrap();
    let broken = run(&["solve", file.to_str().unwrap()], b"");
    assert_eq!(broken.status.code(), Some(1));
    assert!(text(&broken.stderr).contains("line 3, column 7"));
}

#[test]
fn verif_a_closed_pipe_is_no_panic() {
    let mut child = Command::new(env!("CARGO_BIN_EXE_leverwright"))
        .args(["solve", "mast", "--seed", "3"])
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .unwrap();
    drop(child.stdout.take());
    let output = child.wait_with_output().unwrap();
    assert!(!text(&output.stderr).contains("panicked"));
    assert_eq!(output.status.code(), Some(0));
}

#[test]
fn verif_plain_bears_any_bytes_and_the_end_of_input() {
    let saves = tempfile::tempdir().unwrap();
    let mut input = b"\x1b[31mred\x1b[0m\n\xff\xfe\n\n".to_vec();
    input.extend(b"7".repeat(600));
    input.extend(b"\nweight of the mast at its middle, down\n");
    let output = plain(saves.path(), &input);
    assert_eq!(output.status.code(), Some(0));
    let told = text(&output.stdout);
    assert!(!told.contains('\u{1b}'));
    assert!(told.contains("longer than 500 characters"));
    // The next start offers it, with the line that stands.
    let folder = saves.path().to_str().unwrap();
    let again = run(&["practice", "--plain", "--saves", folder], b"0\n");
    assert_eq!(again.status.code(), Some(0));
    assert!(text(&again.stdout).contains("weight of the mast at its middle, down (right)"));
    let nothing = tempfile::tempdir().unwrap();
    assert_eq!(plain(nothing.path(), b"").status.code(), Some(0));
}
