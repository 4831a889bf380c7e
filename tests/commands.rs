//! The commands as a user meets them.

mod again;
mod astray;
mod class;
mod codes;
mod diagnosed;
mod edges;
mod language;
mod own;
mod refusals;
mod shown;
mod systems;
mod ways;

use assert_cmd::Command;
use serde_json::Value;

fn program() -> (Command, tempfile::TempDir) {
    let saves = tempfile::tempdir().unwrap();
    let mut command = Command::new(env!("CARGO_BIN_EXE_leverwright"));
    command
        .env_remove("LEVERWRIGHT_SAVES")
        .arg("--saves")
        .arg(saves.path());
    (command, saves)
}

fn output(arguments: &[&str], input: &[u8]) -> (i32, String, String) {
    let (mut command, _saves) = program();
    let output = command.args(arguments).write_stdin(input).output().unwrap();
    (
        output.status.code().unwrap(),
        String::from_utf8(output.stdout).unwrap(),
        String::from_utf8(output.stderr).unwrap(),
    )
}

#[test]
fn solve_prints_the_whole_key_of_every_lesson() {
    for lesson in ["counter", "walkway", "mast"] {
        let (code, text, talk) = output(&["solve", lesson, "--seed", "4"], b"");
        assert_eq!((code, talk.as_str()), (0, ""), "{lesson}");
        for word in [
            "Code: ",
            "Weight of the",
            "Moment sum",
            "Tension of the rope",
            "For learning only",
        ] {
            assert!(text.contains(word), "{lesson} lacks {word}:\n{text}");
        }
    }
}

#[test]
fn solve_as_json_agrees_with_the_forces_of_equilibrium() {
    for lesson in ["counter", "walkway", "mast"] {
        for seed in ["1", "2", "3", "4"] {
            let (code, text, _) = output(&["solve", lesson, "--seed", seed, "--json"], b"");
            assert_eq!(code, 0);
            let solved: Value = serde_json::from_str(&text).unwrap();
            let step = |id: &str| {
                let steps = solved["steps"].as_array().unwrap();
                steps
                    .iter()
                    .find(|step| step["id"] == id)
                    .and_then(|step| step["value"].as_f64())
            };
            let force = |symbol: &str, part: &str| {
                let forces = solved["forces"].as_array().unwrap();
                forces
                    .iter()
                    .find(|force| force["symbol"] == symbol)
                    .and_then(|force| force[part].as_f64())
                    .unwrap()
            };
            assert!(
                (step("pull:T").unwrap() / force("T", "size") - 1.0).abs() < 1e-9,
                "{lesson} {seed}"
            );
            assert!(
                (step("reaction:H:y").unwrap() - force("H", "y")).abs() < 1e-6,
                "{lesson} {seed}"
            );
            let sum: f64 = solved["forces"]
                .as_array()
                .unwrap()
                .iter()
                .map(|force| force["y"].as_f64().unwrap())
                .sum();
            assert!(sum.abs() < 1e-6, "{lesson} {seed}: {sum}");
        }
    }
}

/// Statics by hand from the givens of mast, seed 3; moments about the hinge.
#[test]
fn val_solve_gives_the_mast_its_pull_and_hinge_force() {
    let (_, text, _) = output(&["solve", "mast", "--seed", "3", "--json"], b"");
    let json: Value = serde_json::from_str(&text).unwrap();
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
fn a_code_gives_the_same_problem_again() {
    let (_, text, _) = output(&["solve", "mast", "--seed", "9", "--json"], b"");
    let first: Value = serde_json::from_str(&text).unwrap();
    let code = first["code"].as_str().unwrap().to_owned();
    let (_, text, _) = output(&["solve", &code.to_lowercase(), "--json"], b"");
    let again: Value = serde_json::from_str(&text).unwrap();
    assert_eq!(first["problem"], again["problem"]);
    let (status, _, _) = output(
        &["solve", "-", "--json"],
        first["problem"].to_string().as_bytes(),
    );
    assert_eq!(status, 0, "the problem's own JSON is a problem file");
}

#[test]
fn what_is_wrong_is_said_where_it_is() {
    let (code, _, talk) = output(&["solve", "mst"], b"");
    assert_eq!(code, 1);
    assert!(talk.contains("Did you mean mast?"), "{talk}");
    let (code, text, talk) = output(&["solve", "nosuch"], b"");
    assert_eq!((code, text.as_str()), (1, ""));
    assert!(
        talk.contains("nosuch") && talk.contains("counter"),
        "{talk}"
    );
    let (code, _, talk) = output(
        &["solve", "-"],
        b"{\n  \"leverwright\": 1,\n  \"model\": {\"body\": 3}\n}",
    );
    assert_eq!(code, 1);
    assert!(talk.contains("line 3, column"), "{talk}");
    let (code, _, _) = output(&["frobnicate"], b"");
    assert_eq!(code, 2);
    let (code, text, _) = output(&["--version"], b"");
    assert_eq!((code, text.starts_with("leverwright ")), (0, true));
}

#[test]
fn the_line_dialogue_takes_any_bytes_and_ends_with_its_input() {
    let mut input = b"weight of the counter, middle, down\n\xff\xfe\n\x1b[31mred\n".to_vec();
    input.extend(vec![b'9'; 700]);
    input.extend(b"\n\n?\nidk\n");
    let (code, text, talk) = output(&["practice", "counter", "--seed", "3", "--plain"], &input);
    assert_eq!((code, talk.as_str()), (0, ""));
    assert!(!text.contains('\u{1b}'), "an escape reached the output");
    assert!(text.contains("longer than 500"), "{text}");
    assert!(text.contains("Everything you entered is kept."), "{text}");
}

#[test]
fn the_line_dialogue_resumes_where_it_stopped() {
    let saves = tempfile::tempdir().unwrap();
    let run = |arguments: &[&str], input: &str| {
        let mut command = Command::new(env!("CARGO_BIN_EXE_leverwright"));
        let output = command
            .arg("--saves")
            .arg(saves.path())
            .args(arguments)
            .write_stdin(input)
            .output()
            .unwrap();
        String::from_utf8(output.stdout).unwrap()
    };
    run(
        &["practice", "counter", "--seed", "3", "--plain"],
        "skip\nhinge\n",
    );
    // An empty line passes the estimate over.
    let text = run(&["practice", "--plain"], "0\n\nquit\n");
    assert!(text.contains("Carry on where you stopped"), "{text}");
    assert!(text.contains("How large is Wb"), "{text}");
    // A line that waits to be mended is told with its thought again.
    run(&["practice", "--plain"], "0\nmb\n");
    let text = run(&["practice", "--plain"], "0\nquit\n");
    assert!(text.contains("This is a mass; asked is a force."), "{text}");
    // One gone on with waits no more.
    run(&["practice", "--plain"], "0\ngo on\n");
    let text = run(&["practice", "--plain"], "0\nquit\n");
    assert!(!text.contains("Mend it"), "{text}");
}

#[test]
fn a_saves_folder_that_cannot_be_used_is_told_and_work_goes_on() {
    let file = tempfile::NamedTempFile::new().unwrap();
    let mut command = Command::new(env!("CARGO_BIN_EXE_leverwright"));
    let output = command
        .arg("--saves")
        .arg(file.path())
        .args(["practice", "counter", "--seed", "3", "--plain"])
        .write_stdin("skip\nhinge\n\nquit\n")
        .output()
        .unwrap();
    let text = String::from_utf8(output.stdout).unwrap();
    assert_eq!(output.status.code(), Some(1), "a script learns of it");
    assert!(text.contains("nothing will be saved"), "{text}");
    assert!(text.ends_with("Not everything could be saved.\n"), "{text}");
    assert!(text.contains("How large is Wb"), "{text}");
}

#[test]
fn a_reader_that_goes_away_is_no_trouble() {
    for arguments in [
        &["solve", "mast", "--json"][..],
        &["solve", "walkway"],
        &["--help"],
        &["practice", "counter", "--plain"],
    ] {
        let saves = tempfile::tempdir().unwrap();
        let mut child = std::process::Command::new(env!("CARGO_BIN_EXE_leverwright"))
            .arg("--saves")
            .arg(saves.path())
            .args(arguments)
            .stdin(std::process::Stdio::null())
            .stdout(std::process::Stdio::piped())
            .stderr(std::process::Stdio::piped())
            .spawn()
            .unwrap();
        drop(child.stdout.take());
        let output = child.wait_with_output().unwrap();
        let talk = String::from_utf8(output.stderr).unwrap();
        assert_eq!((output.status.code(), talk.as_str()), (Some(0), ""));
    }
}

#[cfg(target_os = "linux")]
#[test]
fn a_full_disk_behind_the_output_is_told() {
    // The device /dev/full fails every write with ENOSPC (Linux manual, full(4)).
    let full = std::fs::OpenOptions::new()
        .write(true)
        .open("/dev/full")
        .unwrap();
    let output = std::process::Command::new(env!("CARGO_BIN_EXE_leverwright"))
        .args(["solve", "mast"])
        .stdout(full)
        .output()
        .unwrap();
    let talk = String::from_utf8(output.stderr).unwrap();
    assert_eq!(output.status.code(), Some(1));
    assert!(talk.contains("could not be written"), "{talk}");
}

#[test]
fn the_board_shows_every_part_that_a_later_line_uses() {
    let (_, text, _) = output(&["solve", "walkway", "--seed", "2"], b"");
    // By hand: T = (24·1.5 + 84·2.3)·9.8/(3·sin 25°) = 1771.5 N, T·cos 25° = 1605.5 N.
    for line in [
        "Level part of T\n    Tx = T·cos β = 1770 N·cos 25° = 1610 N\n",
        "Upright part of T\n    Ty = T·sin β = 1770 N·sin 25° = 749 N\n",
        "Balance of the upright forces\n    Wb + W1 = Ty + Hy,\n    235 N + 823 N = 749 N + Hy\n",
        "= 310 N (upwards)\n",
        "    H acts at its foot; its direction is still to be found.\n",
    ] {
        assert!(text.contains(line), "no {line:?} in\n{text}");
    }
}

#[test]
fn a_lesson_without_a_seed_is_its_first_draw() {
    let (_, first, _) = output(&["solve", "mast", "--seed", "1"], b"");
    assert_eq!(output(&["solve", "mast"], b"").1, first);
    assert_ne!(output(&["solve", "mast", "--seed", "2"], b"").1, first);
}

#[test]
fn a_folder_of_lessons_adds_overrides_and_tells_every_fault() {
    let counter = include_str!("../lessons/counter.json");
    let folder = tempfile::tempdir().unwrap();
    let write = |name: &str, text: &str| std::fs::write(folder.path().join(name), text).unwrap();
    let solve = |lesson: &str| {
        let path = folder.path().to_str().unwrap();
        output(&["solve", lesson, "--lessons", path], b"")
    };
    write("own.json", &counter.replacen("\"counter\"", "\"stall\"", 1));
    let other = counter.replace("The counter of the market boat", "The other counter");
    write("counter.json", &other);
    write("notes.txt", "no lesson");
    assert_eq!(solve("stall").0, 0);
    assert!(solve("counter").1.starts_with("The other counter\n"));

    write("bad.json", "{\n  \"leverwright\": 1,\n  \"id\": 7\n}");
    let (code, _, talk) = solve("stall");
    assert_eq!(code, 1);
    assert!(talk.contains("bad.json: line 3, column"), "{talk}");
    assert!(talk.lines().count() > 2, "every fault: {talk}");

    let path = folder.path().to_str().unwrap();
    let arguments = ["practice", "stall", "--plain", "--lessons", path];
    let (code, text, talk) = output(&arguments, b"quit\n");
    assert_eq!(code, 0, "practice passes broken files over");
    assert!(talk.contains("bad.json: line 3") && text.contains("counter"));
}

#[test]
fn help_has_examples_and_codes_are_checked() {
    for arguments in [
        &["--help"][..],
        &["practice", "--help"],
        &["solve", "--help"],
    ] {
        let (code, text, talk) = output(arguments, b"");
        assert_eq!((code, talk.as_str()), (0, ""));
        assert!(text.contains("Examples:"), "{text}");
    }
    let (_, text, _) = output(&["solve", "mast", "--json"], b"");
    let solved: Value = serde_json::from_str(&text).unwrap();
    assert_eq!(solved["version"], 1);
    let code = solved["code"].as_str().unwrap();
    let last = if code.ends_with('0') { "1" } else { "0" };
    let wrong = format!("{}{last}", &code[..code.len() - 1]);
    let (status, _, talk) = output(&["practice", "--plain", "--code", &wrong], b"");
    assert_eq!(status, 1);
    assert!(talk.contains("sign by sign"), "{talk}");
    let (status, _, _) = output(&["practice", "mast", "--code", code], b"");
    assert_eq!(status, 2);
}

#[test]
fn a_problem_left_may_be_put_away() {
    let saves = tempfile::tempdir().unwrap();
    let run = |arguments: &[&str], input: &str| {
        let output = Command::new(env!("CARGO_BIN_EXE_leverwright"))
            .arg("--saves")
            .arg(saves.path())
            .args(arguments)
            .write_stdin(input)
            .output()
            .unwrap();
        String::from_utf8(output.stdout).unwrap()
    };
    run(&["practice", "counter", "--plain"], "skip\n");
    let text = run(&["practice", "--plain"], "put away\n");
    assert!(text.contains("It is put away."), "{text}");
    let text = run(&["practice", "--plain"], "quit\n");
    assert!(!text.contains("Carry on"), "{text}");
}

#[test]
fn solve_works_by_every_method_and_about_every_pivot() {
    let mut tensions = Vec::new();
    for method in ["components", "arms", "coordinates"] {
        for pivot in ["hinge", "tip", "W_1"] {
            let (code, text, talk) = output(
                &[
                    "solve", "mast", "--seed", "3", "--method", method, "--pivot", pivot,
                ],
                b"",
            );
            assert_eq!((code, talk.as_str()), (0, ""), "{method} {pivot}");
            let line = text
                .lines()
                .map(str::trim)
                .find(|line| line.starts_with("T = "));
            tensions.push(line.unwrap_or_default().to_owned());
        }
    }
    // By hand in tests/walk.rs: 811 N.
    assert!(
        tensions.iter().all(|line| line.ends_with("811 N")),
        "{tensions:?}"
    );
    let (code, _, talk) = output(&["solve", "mast", "--seed", "5", "--pivot", "T"], b"");
    assert_eq!(code, 1);
    assert!(talk.contains("lies on the line of T"), "{talk}");
    let (code, _, talk) = output(&["solve", "mast", "--seed", "5", "--pivot", "moon"], b"");
    assert_eq!(code, 2);
    assert!(talk.contains("There is no point moon"), "{talk}");
}

/// A ladder of 5 m and 12 kg against a smooth wall at 60°, its foot on rough ground: by hand the
/// coefficient at which it slips is 1/(2·tan 60°) = 0.2887 (a ladder alone; closed form, from
/// memory).
const LADDER: &str = r#"{"leverwright": 1, "g": "9.8 m/s^2",
 "system": {
  "bodies": [{"name": "ladder", "legs": [{"length": "5 m", "direction": {"angle": "60 deg", "from": "horizontal", "up": true, "side": "right"}}]}],
  "weights": [{"symbol": "W", "noun": "ladder", "body": "ladder", "at": {"on": "ladder", "at": "middle"}, "mass": "12 kg"}],
  "holds": [
   {"symbol": "N", "noun": "ground", "body": "ladder", "at": {"on": "ladder", "at": "foot"}, "kind": "rough", "direction": "up",
    "friction": {"limiting": {"symbol": "μ", "sought": "coefficient"}, "direction": "right"}},
   {"symbol": "P", "noun": "wall", "body": "ladder", "at": {"on": "ladder", "at": "tip"}, "kind": "push", "direction": "left"},
   {"symbol": "C", "noun": "nothing", "body": "ladder", "at": {"on": "ladder", "at": "foot"}, "kind": "couple"}],
  "asked": ["sought"],
  "sought": {"given": "μ", "from": "0.05", "to": "0.9", "when": {"vanishes": "C"}}},
 "text": {"title": "A ladder about to slip", "statement": "A uniform ladder of {L=} and {m_b=} leans at {θ=} on a smooth wall. For which coefficient is it about to slip?", "caution": "For learning only."}}"#;

#[test]
fn val_bodies_in_general_are_solved_and_sought_from_a_file() {
    let (code, text, talk) = output(&["solve", "-"], LADDER.as_bytes());
    assert_eq!((code, talk.as_str()), (0, ""), "{text}");
    assert!(text.contains("μ = 0.289"), "{text}");
    let (code, text, _) = output(&["solve", "-", "--json"], LADDER.as_bytes());
    assert_eq!(code, 0);
    let solved: Value = serde_json::from_str(&text).unwrap();
    let found = solved["sought"][0]["value"].as_f64().unwrap();
    assert!(
        (found - 1.0 / (2.0 * 60.0_f64.to_radians().tan())).abs() < 1e-6,
        "{found}"
    );
    // Practice walks through it; a range without an answer has its code, and practice its reason.
    let (code, text, _) = output(&["practice", "-", "--plain"], LADDER.as_bytes());
    assert_eq!(code, 0);
    assert!(text.contains("weight of the ladder"), "{text}");
    let none = LADDER.replace("\"0.05\"", "\"0.5\"");
    let (code, text, _) = output(&["solve", "-", "--json"], none.as_bytes());
    assert_eq!(code, 1);
    assert!(text.contains("none-in-range"), "{text}");
    let (code, _, talk) = output(&["practice", "-", "--plain"], none.as_bytes());
    assert_eq!(code, 1);
    assert!(
        talk.contains("cannot be walked through: no value of μ between 0.5 and 0.9 makes"),
        "{talk}"
    );
    // Of a number without influence no value is the answer.
    let mass = LADDER
        .replace(
            "{\"symbol\": \"μ\", \"sought\": \"coefficient\"}",
            "\"0.5\"",
        )
        .replace("\"12 kg\"", "{\"symbol\": \"m_b\", \"sought\": \"mass\"}")
        .replace("60 deg", "45 deg")
        .replace(
            "\"given\": \"μ\", \"from\": \"0.05\", \"to\": \"0.9\"",
            "\"given\": \"m_b\", \"from\": \"1 kg\", \"to\": \"90 kg\"",
        );
    let (code, text, _) = output(&["solve", "-", "--json"], mass.as_bytes());
    assert_eq!(code, 1);
    assert!(text.contains("\"holds-for-every-value\""), "{text}");
    let (code, _, talk) = output(&["practice", "-", "--plain"], mass.as_bytes());
    assert_eq!(code, 1);
    let reason = "the condition holds for every mb between 1 kg and 90 kg: mb has no influence";
    assert!(talk.contains(reason), "{talk}");
}

/// Without words of its own a problem still has the caution that is built in, however it is read.
#[test]
fn a_caution_always_stands() {
    let said = "never choose a real rope, hanger, ladder position or lift";
    let own = ", \"caution\": \"For learning only.\"";
    assert_eq!(LADDER.matches(own).count(), 1);
    let oar = r#"{"leverwright": 1, "g": "9.8 m/s^2", "model": {
      "body": {"noun": "oar", "length": "2.4 m", "mass": "12 kg", "tilt": "level", "towards": "right"},
      "supports": [{"noun": "pin", "at": "foot", "kind": "hinge"}],
      "ropes": [{"noun": "line", "at": "1.6 m", "direction": "up"}]},
      "text": {"title": "My oar", "statement": "An oar of {L=}, {m_b=}, line at {d_T=}.",
      "meanings": {"L": "length", "m_b": "mass", "d_T": "knot"}}}"#;
    for file in [
        LADDER.replace(own, ""),
        LADDER.replace(own, ", \"caution\": \" \""),
        oar.to_owned(),
    ] {
        for way in [
            &["solve", "-"][..],
            &["solve", "-", "--json"],
            &["solve", "-", "--method", "arms"],
        ] {
            let (code, text, talk) = output(way, file.as_bytes());
            assert_eq!((code, talk.as_str()), (0, ""), "{way:?}");
            let flat = text.replace('\n', " ");
            assert!(flat.contains(said), "{way:?}: {text}");
        }
    }
    let (_, text, _) = output(&["solve", "-"], LADDER.as_bytes());
    assert!(
        text.ends_with("For learning only.\n"),
        "its own words: {text}"
    );
}

/// What is shown is rounded, and what is carried is not: said where figures are shown.
#[test]
fn solve_says_how_values_are_carried_and_which_way_the_force_points() {
    let (_, text, _) = output(&["solve", "mast", "--seed", "8"], b"");
    assert_eq!(text.matches("shown to 3 figures").count(), 1, "{text}");
    assert!(
        text.contains("= 45.2° above the horizontal, to the right"),
        "{text}"
    );
    assert!(text.contains("Level part of T\n"), "{text}");
    let (_, text, _) = output(&["solve", "mast", "--seed", "8", "--method", "arms"], b"");
    assert_eq!(text.matches("shown to 3 figures").count(), 1, "{text}");
}

/// A lesson file draws from a seed as the built-in lesson of the same text does.
#[test]
fn a_lesson_file_is_drawn_from_like_a_lesson() {
    let file = concat!(env!("CARGO_MANIFEST_DIR"), "/lessons/mast.json");
    let (code, from_file, talk) = output(&["solve", file, "--seed", "7"], b"");
    assert_eq!((code, talk.as_str()), (0, ""));
    assert_eq!(from_file, output(&["solve", "mast", "--seed", "7"], b"").1);
    let text = std::fs::read(file).unwrap();
    assert_eq!(from_file, output(&["solve", "-", "--seed", "7"], &text).1);
    let own = String::from_utf8(text)
        .unwrap()
        .replace("\"id\": \"mast\"", "\"id\": \"pole\"");
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("pole.json");
    std::fs::write(&path, &own).unwrap();
    let path = path.to_str().unwrap();
    let (code, text, _) = output(&["practice", path, "--seed", "7", "--plain"], b"quit\n");
    assert_eq!(code, 0, "{text}");
    assert!(text.contains("Which forces act"), "{text}");
    std::fs::write(path, own.replace("\"version\": 1,", "\"version\": 0,")).unwrap();
    let (code, _, talk) = output(&["solve", path], b"");
    assert_eq!(code, 1);
    assert!(talk.contains("version"), "{talk}");
}

/// A lesson that gives few problems is refused: its numbers soon come again.
#[test]
fn check_refuses_a_lesson_that_is_too_narrow() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("oar.json");
    std::fs::write(&path, crate::lessons::GOOD).unwrap();
    let (code, text, _) = output(&["check", path.to_str().unwrap()], b"");
    assert_eq!(code, 1, "{text}");
    assert!(text.contains("variants: of 400 draws"), "{text}");
    assert!(
        text.contains("it must keep 5.0 % of its draws and give 200 problems"),
        "{text}"
    );
}

/// A lesson of which nothing can be drawn: which rule refuses it, how often, and where.
#[test]
fn check_tells_which_rule_refuses_a_lessons_numbers_and_where() {
    let text = crate::lessons::GOOD.replace("\"direction\": \"left\"", "\"direction\": \"right\"");
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("oar.json");
    std::fs::write(&path, text).unwrap();
    let (code, text, _) = output(&["check", path.to_str().unwrap()], b"");
    assert_eq!(code, 1);
    let line = text.lines().next().unwrap_or_default();
    assert!(
        line.contains("ropes[0].direction: no numbers here are worth asking: of 400 draws"),
        "{text}"
    );
    assert!(line.contains("push"), "{text}");
}
