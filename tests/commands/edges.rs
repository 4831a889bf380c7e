//! The edges: outputs that fail, options in odd places, saves that cannot be used, hostile input.

use super::{output, program};
use std::fs;
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};

/// Runs on a saves folder, which may be anything, and gives status, text and talk.
fn on(saves: &Path, arguments: &[&str], input: &[u8]) -> (i32, String, String) {
    let output = assert_cmd::Command::new(env!("CARGO_BIN_EXE_leverwright"))
        .arg("--saves")
        .arg(saves)
        .args(arguments)
        .write_stdin(input)
        .output()
        .unwrap();
    (
        output.status.code().unwrap(),
        String::from_utf8(output.stdout).unwrap(),
        String::from_utf8(output.stderr).unwrap(),
    )
}

fn files(folder: &Path, ending: &str) -> Vec<PathBuf> {
    let entries = fs::read_dir(folder).into_iter().flatten().flatten();
    let mut paths: Vec<PathBuf> = entries
        .map(|entry| entry.path())
        .filter(|path| path.to_string_lossy().ends_with(ending))
        .collect();
    paths.sort();
    paths
}

#[cfg(target_os = "linux")]
#[test]
fn nothing_that_is_lost_on_the_way_out_counts_as_done() {
    let lesson = concat!(env!("CARGO_MANIFEST_DIR"), "/lessons/mast.json");
    for arguments in [
        &["--help"][..],
        &["--version"],
        &["help", "solve"],
        &["practice", "--help"],
        &["solve", "mast"],
        &["solve", "mast", "--json"],
        &["check", lesson],
        &["--plain"],
    ] {
        // The device /dev/full fails every write with ENOSPC (Linux manual, full(4)).
        let full = fs::OpenOptions::new()
            .write(true)
            .open("/dev/full")
            .unwrap();
        let saves = tempfile::tempdir().unwrap();
        let output = Command::new(env!("CARGO_BIN_EXE_leverwright"))
            .arg("--saves")
            .arg(saves.path())
            .args(arguments)
            .stdin(Stdio::null())
            .stdout(full)
            .output()
            .unwrap();
        let talk = String::from_utf8(output.stderr).unwrap();
        assert_eq!(output.status.code(), Some(1), "{arguments:?}");
        assert!(
            talk.contains("could not be written"),
            "{arguments:?}: {talk}"
        );
    }
}

#[test]
fn options_of_practice_need_no_command() {
    let practice = output(&["practice", "--plain"], b"quit\n");
    assert_eq!(practice.0, 0);
    for arguments in [
        &["--plain"][..],
        &[],
        &["--plain", "practice"],
        &["--lessons", concat!(env!("CARGO_MANIFEST_DIR"), "/lessons")],
        &["--seed", "5", "--plain"],
    ] {
        assert_eq!(output(arguments, b"quit\n"), practice, "{arguments:?}");
    }
    let asked = |arguments: &[&str]| output(arguments, b"3\nquit\n").1;
    assert_eq!(asked(&["--seed", "5"]), asked(&["practice", "--seed", "5"]));
    assert_ne!(asked(&["--seed", "5"]), asked(&["--seed", "6"]));
    // The second problem from the list has the next seed, not the same numbers again.
    let skips = "skip\n".repeat(20);
    let two = output(&["--seed", "5"], format!("3\n{skips}3\nquit\n").as_bytes()).1;
    let (_, next, _) = output(&["solve", "mast", "--seed", "6"], b"");
    let sentence = next.lines().nth(3).unwrap().split(". ").nth(1).unwrap();
    let flat = two.replace('\n', " ");
    assert!(flat.contains(sentence), "no {sentence:?} in\n{two}");
}

#[test]
fn an_option_that_would_do_nothing_is_refused() {
    let folder = tempfile::tempdir().unwrap();
    let problem = folder.path().join("own.json");
    let (_, solved, _) = output(&["solve", "mast", "--json"], b"");
    let solved: serde_json::Value = serde_json::from_str(&solved).unwrap();
    fs::write(&problem, solved["problem"].to_string()).unwrap();
    let (file, code) = (problem.to_str().unwrap(), solved["code"].as_str().unwrap());
    assert_eq!(output(&["solve", file], b"").0, 0);
    for (arguments, says) in [
        (&["solve", file, "--seed", "3"][..], "has its own"),
        (&["practice", file, "--seed", "3"], "has its own"),
        (&["--seed", "3", "practice", file], "has its own"),
        (&["solve", code, "--seed", "3"], "has its own"),
        (&["solve", "-", "--seed", "3"], "has its own"),
        (&["--seed", "3", "practice", "--code", code], "has its own"),
        (&["--seed", "3", "solve", "mast"], "behind the command"),
        (&["--plain", "solve", "mast"], "for practice only"),
        (&["solve", "mast", "--seed", "x"], "a whole number from 0"),
        (&["solve", "mast", "--seed", "-3"], "a whole number from 0"),
        (&["solve", "mast", "--seed", "1e3"], "a whole number from 0"),
        (&["slove"], "similar subcommand exists: 'solve'"),
        (&["mast"], "leverwright practice mast"),
        (&[code], "leverwright practice"),
        (&["check"], "<FILE>"),
    ] {
        let (status, text, talk) = output(arguments, b"{}");
        assert_eq!((status, text.as_str()), (2, ""), "{arguments:?}");
        assert!(talk.contains(says), "{arguments:?}: {talk}");
    }
}

#[test]
fn every_option_and_command_is_explained() {
    for command in ["practice", "solve", "check"] {
        let (_, all, _) = output(&["--help"], b"");
        assert!(all.contains(command));
        let (_, help, _) = output(&[command, "--help"], b"");
        assert!(help.contains(&format!("leverwright {command} ")), "{help}");
        for line in help.lines().filter(|line| line.trim().starts_with("--")) {
            // An option whose line ends with its value has its words below or beside it.
            assert!(
                line.trim().contains("  ") || help.contains("\n          "),
                "{line}"
            );
        }
        // A lesson of this name could not be asked for.
        let path = format!("{}/lessons/mast.json", env!("CARGO_MANIFEST_DIR"));
        let text = fs::read_to_string(path).unwrap();
        let named = text.replacen("\"mast\"", &format!("\"{command}\""), 1);
        let faults = leverwright::lesson::parse_lesson(&named).unwrap_err();
        assert!(faults[0].to_string().contains("a command"), "{}", faults[0]);
    }
}

#[test]
fn check_tells_every_fault_of_every_file() {
    let folder = tempfile::tempdir().unwrap();
    let counter = include_str!("../../lessons/counter.json");
    let write = |name: &str, text: &str| {
        let path = folder.path().join(name);
        fs::write(&path, text).unwrap();
        path.to_str().unwrap().to_owned()
    };
    let sound = write(
        "sound.json",
        &counter.replacen("\"counter\"", "\"stall\"", 1),
    );
    let (code, text, talk) = output(&["check", &sound], b"");
    let lines: Vec<&str> = text.lines().collect();
    assert_eq!((code, talk.as_str(), lines.len()), (0, "", 2), "{text}");
    assert_eq!(lines[0], format!("{sound}: no faults"));
    // What a lesson's range gives is told after that: of the counter's draws not quite two in five.
    assert!(
        lines[1].starts_with(&format!("{sound}: of 400 draws 37")),
        "{text}"
    );
    assert!(lines[1].contains("of the weight of the mistakes"), "{text}");
    let bad = write("bad.json", "{\n  \"leverwright\": 1,\n  \"id\": 7\n}");
    let twice = write(
        "twice.json",
        &counter.replacen("\"counter\"", "\"stall\"", 1),
    );
    let missing = folder.path().join("none.json");
    let missing = missing.to_str().unwrap();
    let (code, text, talk) = output(&["check", &sound, &bad, &twice, missing], b"");
    assert_eq!(code, 1);
    assert!(text.starts_with(&format!("{sound}: no faults\n")), "{text}");
    // Behind the sound file stands what its range gives, and then the faults of the next one.
    let third = text.lines().nth(2).unwrap();
    assert!(third.starts_with(&format!("{bad}: line ")), "{text}");
    assert!(text.contains(&format!("{bad}: line 3, column 9, id: expected a word")));
    assert!(
        text.contains(&format!("{twice}: line 3, column 9, id: expected a name")),
        "{text}"
    );
    assert!(text.contains("none.json could not be read"), "{text}");
    // Two lines stand for the sound file.
    let faults = text.lines().count() - 2;
    // A file that cannot be read through may have more.
    let more = "Others may show once these are mended.\n";
    assert_eq!(talk, format!("{faults} faults.\n{more}"));
    // Equilibrium alone does not give the forces of this one.
    let loose = r#"{"leverwright": 1, "g": "9.8 m/s^2", "model": {
        "body": {"noun": "oar", "length": "2 m", "mass": "3 kg", "tilt": "level", "towards": "left"},
        "ropes": [{"noun": "line", "at": "tip", "direction": "up"}]},
        "text": {"title": "Oar", "statement": "{L} {m_b}", "meanings": {"L": "l", "m_b": "m"}}}"#;
    let untitled = write(
        "untitled.json",
        &loose.replace("\"title\": \"Oar\"", "\"title\": \"\""),
    );
    let loose = write("loose.json", loose);
    let (code, text, talk) = output(&["check", &loose], b"");
    assert_eq!((code, talk.as_str()), (1, "One fault.\n"), "{text}");
    // Nor does a fault of its text hide that.
    let told = text.trim_end().replace("loose.json", "untitled.json");
    let (code, text, talk) = output(&["check", &untitled], b"");
    assert_eq!((code, talk), (1, format!("2 faults.\n{more}")), "{text}");
    assert!(text.contains(&told), "{text}");
    assert!(text.contains("text.title: expected"), "{text}");
}

#[test]
fn noise_ends_as_any_input() {
    // Bytes of a linear congruential generator (Knuth's MMIX constants, from memory).
    let mut state = 7_u64;
    let noise: Vec<u8> = std::iter::repeat_with(|| {
        state = state
            .wrapping_mul(6_364_136_223_846_793_005)
            .wrapping_add(1_442_695_040_888_963_407);
        (state >> 56) as u8
    })
    .take(40_000)
    .collect();
    let (code, text, talk) = output(&["practice", "mast", "--seed", "3", "--plain"], &noise);
    assert_eq!((code, talk.as_str()), (0, ""));
    assert!(
        !text.chars().any(|c| c.is_control() && c != '\n'),
        "control characters"
    );
    assert!(text.ends_with("Everything you entered is kept.\n"));
}

#[test]
fn odd_surroundings_are_borne() {
    let saves = tempfile::tempdir().unwrap();
    let usual = on(
        saves.path(),
        &["practice", "mast", "--seed", "3"],
        b"quit\n",
    );
    for (name, value) in [
        ("TERM", Some("dumb")),
        ("TERM", None),
        ("TERM", Some("")),
        ("LANG", None),
        ("LANG", Some("C")),
        ("LANG", Some("xx_YY.nonsense")),
        ("HOME", None),
        ("NO_COLOR", Some("1")),
    ] {
        let (mut command, _saves) = program();
        match value {
            Some(value) => command.env(name, value),
            None => command.env_remove(name),
        };
        let output = command
            .args(["practice", "mast", "--seed", "3"])
            .write_stdin("quit\n")
            .output()
            .unwrap();
        assert_eq!(output.status.code(), Some(0), "{name} {value:?}");
        assert_eq!(
            String::from_utf8(output.stdout).unwrap(),
            usual.1,
            "{name} {value:?}"
        );
    }
}

#[cfg(unix)]
#[test]
fn saves_that_are_no_folder_are_told_and_work_goes_on() {
    let folder = tempfile::tempdir().unwrap();
    let place = |name: &str| folder.path().join(name);
    fs::write(place("file"), "mine").unwrap();
    std::os::unix::fs::symlink(place("loop"), place("loop")).unwrap();
    std::os::unix::fs::symlink(place("nowhere"), place("dangling")).unwrap();
    fs::create_dir(place("held")).unwrap();
    fs::write(place("held/learner"), "a file in the learner's place").unwrap();
    for name in ["file", "file/below", "loop", "dangling", "held"] {
        let work = b"skip\nhinge\n617\nquit\n";
        let (code, text, talk) = on(&place(name), &["practice", "mast", "--seed", "3"], work);
        assert_eq!((code, talk.as_str()), (1, ""), "{name}");
        let flat = text.replace('\n', " ");
        assert_eq!(
            flat.matches("nothing will be saved").count(),
            1,
            "{name}: {text}"
        );
        assert!(
            text.ends_with("Not everything could be saved.\n"),
            "{name}: {text}"
        );
    }
    assert_eq!(fs::read_to_string(place("file")).unwrap(), "mine");
}

/// A limit of no bytes for files stands for a full disk: the first write fails (EFBIG).
#[cfg(target_os = "linux")]
#[test]
fn a_full_disk_leaves_no_litter_and_is_told_once() {
    let saves = tempfile::tempdir().unwrap();
    on(saves.path(), &["--plain"], b"quit\n");
    let learner = saves.path().join("learner");
    let before = files(&learner, "");
    let run = Command::new("sh")
        .arg("-c")
        .arg(
            "trap '' XFSZ; ulimit -f 0; \
             printf 'skip\\nhinge\\n617\\n\\nhint\\n1\\n2\\n' | \
             \"$0\" practice mast --seed 3 --plain --saves \"$1\" | cat",
        )
        .arg(env!("CARGO_BIN_EXE_leverwright"))
        .arg(saves.path())
        .output()
        .unwrap();
    let text = String::from_utf8(run.stdout).unwrap();
    let flat = text.replace('\n', " ");
    assert_eq!(flat.matches("could not be saved in").count(), 1, "{text}");
    assert!(flat.contains("are lost when you leave it"), "{text}");
    assert!(text.ends_with("Not everything could be saved.\n"), "{text}");
    assert_eq!(files(&learner, ""), before, "{text}");
}

#[test]
fn two_programs_at_once_keep_every_line() {
    let saves = tempfile::tempdir().unwrap();
    std::thread::scope(|scope| {
        for seed in ["1", "2", "3", "4"] {
            let saves = saves.path();
            scope.spawn(move || {
                let lines = "skip\nhinge\n".to_owned() + &"hint\n".repeat(10);
                let arguments = ["practice", "counter", "--seed", seed, "--plain"];
                let (code, text, _) = on(saves, &arguments, lines.as_bytes());
                assert_eq!(code, 0);
                assert!(
                    text.ends_with("Everything you entered is kept.\n"),
                    "{text}"
                );
            });
        }
    });
    let journals = files(&saves.path().join("learner"), ".jsonl");
    assert_eq!(journals.len(), 4);
    for journal in journals {
        let text = fs::read_to_string(journal).unwrap();
        assert_eq!(text.lines().count(), 2 + 2 * 12, "{text}");
        assert_eq!(leverwright::record::parse(&text).damaged, []);
    }
    assert_eq!(
        files(&saves.path().join("learner"), "").len(),
        5,
        "no litter"
    );
}

#[test]
fn a_value_is_said_once_and_signs_are_not_doubled() {
    for lesson in ["counter", "walkway", "mast"] {
        for seed in ["2", "3", "5", "7", "12"] {
            let (_, text, _) = output(&["solve", lesson, "--seed", seed], b"");
            for line in text.lines() {
                assert!(!line.contains("+ -") && !line.contains("- -"), "{line}");
                let said: Vec<&str> = line.split(" = ").map(str::trim).collect();
                if let [.., before, last] = said[..] {
                    // An angle as given and the same angle at the figures asked.
                    let number = |text: &str| text.strip_suffix('°').map(str::parse::<f64>);
                    let twice = matches!((number(before), number(last)), (Some(Ok(one)), Some(Ok(other))) if one == other);
                    assert!(!twice, "{lesson} {seed}: {line}");
                }
            }
        }
    }
    let (_, text, _) = output(&["solve", "walkway", "--seed", "2"], b"");
    assert!(text.contains("    γ = β = 25°\n"), "{text}");
}

#[test]
fn a_program_beside_another_one_for_the_same_learner_says_so() {
    use leverwright::store::{Flush, Store, now};
    const TOLD: &str = "Another leverwright is open";
    let folder = tempfile::tempdir().unwrap();
    let arguments = ["practice", "mast", "--seed", "7", "--plain"];
    let lines = "weight of the mast, at its middle, down\nquit\n".as_bytes();
    let told = || {
        let (status, text, _) = on(folder.path(), &arguments, lines);
        assert_eq!(status, 0);
        text.split_whitespace().collect::<Vec<_>>().join(" ")
    };
    let store = Store::open(folder.path()).unwrap();
    let learner = store.default_learner().unwrap();
    let sitting = store
        .begin_sitting(&learner, &now(), Flush::ToSystem)
        .unwrap();
    assert_eq!(told().matches(TOLD).count(), 1);
    drop(sitting);
    assert_eq!(told().matches(TOLD).count(), 0);
}
