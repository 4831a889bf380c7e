//! The class profile as the program finds it, and what it changes for a learner.

use assert_cmd::Command;
use serde_json::Value;
use std::fs;
use std::path::Path;

fn run(folder: &Path, variable: Option<&Path>, arguments: &[&str], input: &str) -> (i32, String) {
    let mut command = Command::new(env!("CARGO_BIN_EXE_leverwright"));
    command
        .env_remove("LEVERWRIGHT_SAVES")
        .env_remove("LEVERWRIGHT_CLASS");
    if let Some(variable) = variable {
        command.env("LEVERWRIGHT_CLASS", variable);
    }
    let output = command
        .args(arguments)
        .arg("--saves")
        .arg(folder.join("saves"))
        .write_stdin(input.to_owned())
        .output()
        .unwrap();
    let text = [output.stdout, output.stderr].concat();
    (
        output.status.code().unwrap(),
        String::from_utf8(text).unwrap(),
    )
}

fn write(place: &Path, fields: &str) {
    fs::create_dir_all(place.parent().unwrap()).unwrap();
    fs::write(
        place,
        format!("{{\"leverwright\": 1, \"class\": \"10b\", {fields}}}"),
    )
    .unwrap();
}

fn gravity(folder: &Path, variable: Option<&Path>, more: &[&str]) -> f64 {
    let arguments = [&["solve", "mast", "--seed", "2", "--json"], more].concat();
    let (code, text) = run(folder, variable, &arguments, "");
    assert_eq!(code, 0, "{text}");
    let solved: Value = serde_json::from_str(&text).unwrap();
    solved["gravity"]["value"].as_f64().unwrap()
}

#[test]
fn the_profile_asked_for_goes_before_the_variable_and_the_folders() {
    let folder = tempfile::tempdir().unwrap();
    let folder = folder.path();
    let place = |name: &str| folder.join(name);
    assert_eq!(gravity(folder, None, &[]), 9.8);
    write(&place("saves/class.json"), "\"g\": \"9.83 m/s^2\"");
    assert_eq!(gravity(folder, None, &[]), 9.83);
    write(&place("lessons/class.json"), "\"g\": \"9.82 m/s^2\"");
    let lessons = place("lessons").display().to_string();
    let with_lessons = ["--lessons", lessons.as_str()];
    assert_eq!(gravity(folder, None, &with_lessons), 9.82);
    write(&place("other.json"), "\"g\": \"9.81 m/s^2\"");
    let other = place("other.json");
    assert_eq!(gravity(folder, Some(&other), &with_lessons), 9.81);
    write(&place("ten.json"), "\"g\": \"10 m/s^2\"");
    let ten = place("ten.json").display().to_string();
    let asked = [&with_lessons[..], &["--class", ten.as_str()]].concat();
    assert_eq!(gravity(folder, Some(&other), &asked), 10.0);
}

#[test]
fn a_wrong_or_missing_profile_is_refused_before_anything_is_drawn() {
    let folder = tempfile::tempdir().unwrap();
    let folder = folder.path();
    let place = folder.join("saves/class.json");
    write(&place, "\"g\": 9.81");
    for arguments in [
        &["solve", "mast"][..],
        &["diagnose", "mast", "--answer", "3"],
        &["practice", "mast", "--plain"],
    ] {
        let (code, text) = run(folder, None, arguments, "");
        assert_eq!(code, 1, "{text}");
        let wanted = format!(
            "{}: line 1, column 41, g: expected an acceleration such as \"9.8 m/s^2\", found 9.81\n",
            place.display()
        );
        assert_eq!(text, wanted);
    }
    let (code, text) = run(
        folder,
        None,
        &["solve", "mast", "--class", "nowhere.json"],
        "",
    );
    assert_eq!(code, 1);
    assert!(text.contains("nowhere.json"), "{text}");
    let place = place.display().to_string();
    let (code, text) = run(folder, None, &["check", &place], "");
    assert_eq!(code, 1);
    assert!(
        text.contains("column 41, g: expected an acceleration"),
        "{text}"
    );
}

#[test]
fn a_sound_profile_is_checked_and_its_settings_are_told() {
    let folder = tempfile::tempdir().unwrap();
    let folder = folder.path();
    let place = folder.join("saves/class.json");
    write(
        &place,
        "\"g\": \"9.81 m/s^2\", \"figures\": 3, \"missing_unit\": \"asked\", \"figures_rule\": \"exact\", \
         \"angles_from\": \"vertical\", \"display\": {\"turning\": \"torque\", \"decimal\": \"comma\"}",
    );
    let shown = place.display().to_string();
    let (code, text) = run(folder, None, &["check", &shown], "");
    assert_eq!(code, 0, "{text}");
    let (_, text) = run(folder, None, &["--plain"], "settings\nquit\n");
    for said in [
        "The word for what turns a body: torque.",
        "The decimal sign: a comma.",
        "Set by your teacher for 10b, whatever you choose here:",
        "g = 9,81 m/s² in every problem that is drawn or built.",
        "Results are asked in three figures.",
        "A last value needs just so many figures, no fewer and no more.",
        "A number without its unit waits for it.",
        "Angles are given from the vertical.",
    ] {
        assert!(text.contains(said), "{said}\n{text}");
    }
    // What a learner has chosen goes before the display of the class.
    run(folder, None, &["--plain"], "settings 2\nsettings 2\nquit\n");
    let (_, text) = run(folder, None, &["--plain"], "settings\nquit\n");
    assert!(text.contains("The decimal sign: a point."), "{text}");
}

/// A problem goes on as it was begun: with its g and with what was asked of its answers.
#[test]
fn a_problem_keeps_the_profile_with_which_it_was_begun() {
    let folder = tempfile::tempdir().unwrap();
    let folder = folder.path();
    let class = folder.join("class.json");
    write(&class, "\"g\": \"10 m/s^2\", \"missing_unit\": \"asked\"");
    let class = class.display().to_string();
    let begun = ["practice", "mast", "--seed", "3", "--plain"];
    let with_class = [&begun[..], &["--class", class.as_str()]].concat();
    let (_, text) = run(folder, None, &with_class, "skip\nhinge\nquit\n");
    assert!(text.contains("g = 10 m/s²"), "{text}");
    let mass = text.split("its mass mb = ").nth(1).unwrap();
    let mass: f64 = mass.split(' ').next().unwrap().parse().unwrap();
    let bare = format!("{}\nquit\n", 10.0 * mass);
    // Without the profile, it is gone on with as it was; what is fresh has the lesson's g.
    let (_, text) = run(folder, None, &["--plain"], &format!("\n{bare}"));
    assert!(text.contains("g = 10 m/s²"), "{text}");
    assert!(text.contains("write it with its unit: N"), "{text}");
    let (_, text) = run(
        folder,
        None,
        &["practice", "mast", "--seed", "4", "--plain"],
        "quit\n",
    );
    assert!(text.contains("g = 9.8 m/s²"), "{text}");
}

#[test]
fn a_problem_built_in_the_class_has_its_g() {
    let folder = tempfile::tempdir().unwrap();
    let folder = folder.path();
    write(&folder.join("saves/class.json"), "\"g\": \"10 m/s^2\"");
    let answers = "own\na plank\n2.4 m\n18 kg\nlevel\nright\nhinge\nfoot\nrope\n2 m\nstraight\n1\n\
                   basket\n12\ntip\nhangs\n\n1\nquit\n";
    let (_, text) = run(folder, None, &["--plain"], answers);
    assert!(text.contains("g = 10 m/s²"), "{text}");
}

#[test]
fn an_answer_off_a_sheet_waits_for_what_the_class_asks() {
    let folder = tempfile::tempdir().unwrap();
    let folder = folder.path();
    let truth = |answer: &str| {
        // Counter 7 by hand: T = 262 N (tests/commands/again.rs works it on).
        let arguments = ["diagnose", "counter", "--seed", "7", "--json", "--answer"];
        let (code, text) = run(folder, None, &[&arguments[..], &[answer]].concat(), "");
        assert_eq!(code, 0, "{text}");
        let told: Value = serde_json::from_str(&text).unwrap();
        told["lines"][0]["verdict"].as_str().unwrap().to_owned()
    };
    assert_eq!(
        (truth("262"), truth("262 N")),
        ("right".into(), "right".into())
    );
    write(
        &folder.join("saves/class.json"),
        "\"missing_unit\": \"asked\"",
    );
    assert_ne!(truth("262"), "right");
    assert_eq!(truth("262 N"), "right");
}

/// A problem is asked as it was begun, so where another profile holds meanwhile the page of the
/// settings says which of the two it goes by.
#[test]
fn an_older_problem_says_that_it_keeps_what_it_was_begun_with() {
    let folder = tempfile::tempdir().unwrap();
    let folder = folder.path();
    let begin = ["practice", "mast", "--plain", "--seed", "2"];
    run(folder, None, &begin, "the weight of the mast\nquit\n");
    let without = "The open problem was begun without this profile";
    let (_, text) = run(folder, None, &["--plain"], "0\nsettings\nquit\n");
    assert!(!text.contains("was begun"), "{text}");
    write(
        &folder.join("saves/class.json"),
        "\"missing_unit\": \"asked\"",
    );
    let (_, text) = run(folder, None, &["--plain"], "0\nsettings\nquit\n");
    assert!(text.contains(without), "{text}");
    // At the list no problem is open, and a fresh one is asked as the class has it.
    let (_, text) = run(folder, None, &["--plain"], "settings\nquit\n");
    assert!(!text.contains("was begun"), "{text}");
    let fresh = ["practice", "walkway", "--plain", "--seed", "2"];
    let (_, text) = run(folder, None, &fresh, "settings\nquit\n");
    assert!(!text.contains("was begun"), "{text}");
}
