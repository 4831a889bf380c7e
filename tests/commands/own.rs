//! Problems of one's own by the line dialogue, and the files that come of them.

use super::output;
use assert_cmd::Command;
use std::path::Path;

/// Answers from the list on, up to the file's name.
fn built(saves: &Path, answers: &[&str]) -> String {
    let input = format!("own\n{}\n", answers.join("\n"));
    let output = Command::new(env!("CARGO_BIN_EXE_leverwright"))
        .env_remove("LEVERWRIGHT_SAVES")
        .args(["--plain", "--saves"])
        .arg(saves)
        .write_stdin(input)
        .output()
        .unwrap();
    assert!(output.status.success());
    String::from_utf8(output.stdout).unwrap()
}

/// What is built by questions is read again by `solve`, `check` and `practice`, whatever holds it.
#[test]
fn a_kept_problem_is_solved_and_practised_like_any_file() {
    let rows: &[(&str, &[&str], &str)] = &[
        // T·2.0 = 18·9.8·1.2 + 12·9.8·2.4, so T = 247 N (by hand).
        (
            "rope",
            &[
                "a plank", "2.4 m", "18 kg", "level", "right", "hinge", "foot", "rope", "2 m",
                "straight", "1", "basket", "12", "tip", "hangs", "",
            ],
            "247 N",
        ),
        // Weight and push are both upright, so N·1.7 = 14·9.8·1.0 whatever the angle: 80.7 N.
        (
            "prop",
            &[
                "beam", "2 m", "14 kg", "tilted", "1", "35", "right", "1", "foot", "a prop",
                "1.7 m", "1", "",
            ],
            "80.7 N",
        ),
        // The couple of the built-in end: 3·9.8·0.45 + 5·9.8·0.9 = 57.3 N m.
        (
            "built in",
            &[
                "bracket", "0.9 m", "3", "1", "1", "2", "foot", "1", "pot", "5", "tip", "1", "",
            ],
            "57.3 N m",
        ),
        // T·sin 70°·2.5 = 20·9.8·1.6·sin 35° + 6·9.8·3.2·sin 35°, so T = 123 N.
        (
            "aslant",
            &[
                "beam", "3.2 m", "20 kg", "tilted", "vertical", "35", "left", "1", "foot", "1",
                "2.5", "5", "70", "1", "lamp", "6 kg", "tip", "1", "",
            ],
            "123 N",
        ),
        // Two trestles: N2·1.5 = 14·9.8·0.8, so 73.2 N, and 64.0 N.
        (
            "two props",
            &[
                "bench", "2 m", "14", "1", "1", "3", "2", "0.2 m", "3", "1.7 m", "1", "",
            ],
            "73.2 N",
        ),
    ];
    for (name, answers, result) in rows {
        let saves = tempfile::tempdir().unwrap();
        let said = built(saves.path(), &[*answers, &[*name]].concat());
        assert!(said.contains("It is kept in"), "{said}");
        let file = name.replace(' ', "-");
        let file = saves.path().join(format!("learner/problems/{file}.json"));
        let file = file.to_str().unwrap();
        let (code, solved, talk) = output(&["solve", file], b"");
        assert_eq!((code, talk.as_str()), (0, ""), "{name}");
        assert!(solved.contains(result), "{name}: {result}\n{solved}");
        assert_eq!(output(&["check", file], b"").0, 0, "{name}");
        let (code, practised, _) = output(&["practice", file, "--plain"], b"quit\n");
        assert_eq!(code, 0, "{name}");
        assert!(practised.contains("Find "), "{practised}");
        // A second one does not take its place.
        let before = std::fs::read(file).unwrap();
        let again = built(saves.path(), &[*answers, &[*name]].concat());
        assert!(again.contains("of that name already"), "{again}");
        assert_eq!(std::fs::read(file).unwrap(), before);
    }
}

/// What was answered waits in the list; the end of the input says what is lost.
#[test]
fn answers_wait_in_the_list() {
    let saves = tempfile::tempdir().unwrap();
    let said = built(
        saves.path(),
        &[
            "plank", "2.4 m", "quit", "4", "18 kg", "1", "1", "1", "foot", "1", "tip", "3", "back",
        ],
    );
    for needed in [
        "waits in the list",
        "4. My own problem: go on with what you have answered so far.",
        "What is the mass of the plank?",
        "it would give way",
        "Taken back: level, to the right.",
        "What you answered to your own problem is dropped.",
    ] {
        let flowing = said.split_whitespace().collect::<Vec<_>>().join(" ");
        assert!(flowing.contains(needed), "{needed}\n{said}");
    }
}

/// The choices at the end are numbered like all others: a number is never taken for a file's name.
#[test]
fn a_built_problem_is_kept_by_number() {
    let saves = tempfile::tempdir().unwrap();
    let answers = [
        "plank", "2.4 m", "18 kg", "1", "1", "1", "foot", "1", "tip", "1", "1", "bricks", "6 kg",
        "tip", "1", "", "2", "my plank", "quit",
    ];
    let said = built(saves.path(), &answers);
    for needed in [
        "2. Keep it as a problem file first",
        "Under which name?",
        "Which place on the plank carries the bricks?",
        "The plank carries the bricks, of mass m1 = 6 kg, hanging from it at its tip.",
    ] {
        let flowing = said.split_whitespace().collect::<Vec<_>>().join(" ");
        assert!(flowing.contains(needed), "{needed}\n{said}");
    }
    let problems = saves.path().join("learner/problems");
    let files: Vec<_> = std::fs::read_dir(problems).unwrap().collect();
    assert_eq!(files.len(), 1);
    assert!(files[0].as_ref().unwrap().path().ends_with("my-plank.json"));
}
