//! Estimates, the end of a problem, and looking again, by the line dialogue with real records.

use assert_cmd::Command;
use std::path::Path;

fn talk(saves: &Path, lines: &[&str]) -> String {
    let output = Command::new(env!("CARGO_BIN_EXE_leverwright"))
        .env_remove("LEVERWRIGHT_SAVES")
        .args(["--plain", "--seed", "7", "--saves"])
        .arg(saves)
        .write_stdin(lines.join("\n") + "\n")
        .output()
        .unwrap();
    assert!(output.status.success());
    // How prose is broken into lines is tested elsewhere.
    let text = String::from_utf8(output.stdout).unwrap();
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

/// By hand: (14 + 25)·9.8 = 382 N of weights; T = (14·1.3 + 25·1.2)·9.8/1.8 = 262 N; 120 N are left
/// for the hinge, up.
#[test]
fn val_a_problem_from_an_estimate_to_its_last_look() {
    let saves = tempfile::tempdir().unwrap();
    let lines = [
        "counter",
        "skip",
        "hinge",
        "1",
        "2",
        "14",
        "Wb = 14*9.8",
        "quit",
    ];
    let begun = talk(saves.path(), &lines);
    for said in [
        "will the pull of the rope be more than all weights together, or less? 1 more, 2 less, 3 \
         not sure.",
        "You may type: 1, 2 or 3; Enter alone goes on to the numbers.",
        "Which way will the force of the hinge act on the counter? 1 up, 2 down, 3 not sure.",
        "Line 2: does not hold.",
    ] {
        assert!(begun.contains(said), "{said}: {begun}");
    }
    // The estimates are kept with the lines.
    let lines = [
        "",
        "W1 = 25*9.8",
        "137.2*1.3 + 245*1.2 = 1.8 T",
        "262",
        "120",
        "",
        "look again",
        "1",
        "",
        "",
        "",
        "",
        "",
        "",
        "7",
        "back",
        "99",
        "done",
        "",
        "quit",
    ];
    let ended = talk(saves.path(), &lines);
    let end = [
        "Put right by you after a line that did not hold: 1 of",
        "You expected the pull of the rope to be more than all weights together; 262 N is less \
         than 382 N.",
        "You expected the force of the hinge to act down; it is 120 N and acts up.",
        "Perhaps look again at: the mass used as a force (line 2).",
        "Next: a fresh problem of the same lesson",
        "The whole working your way, with moments about the hinge:",
        "The same another way, with moments about the rope:",
    ];
    let mut from = 0;
    for said in end {
        let found = ended[from..].find(said);
        from += found.unwrap_or_else(|| panic!("{said}: {ended}"));
    }
    assert_eq!(ended.matches("The same another way").count(), 1, "once");
}

#[test]
fn what_was_worked_at_is_looked_at_again_line_by_line() {
    let saves = tempfile::tempdir().unwrap();
    let nothing = talk(saves.path(), &["look again", "quit"]);
    assert!(nothing.contains("nothing to look at again"), "{nothing}");
    assert!(!nothing.contains("5. Look again"), "{nothing}");
    talk(
        saves.path(),
        &["counter", "skip", "hinge", "2", "1", "14", "hint", "quit"],
    );
    talk(
        saves.path(),
        &["mast", "weight of the mast, middle, down", "quit"],
    );
    // Left problems come first in the list: what was worked at is the last choice.
    let lines = [
        "look again",
        "9",
        "2",
        "",
        "",
        "",
        "",
        "",
        "",
        "back",
        "0",
        "6",
        "done",
        "1",
        "",
        "",
        "",
        "quit",
    ];
    let again = talk(saves.path(), &lines);
    for said in [
        "Look again at a problem that you have worked at.",
        "The drill mast of the mountain rescue (1 line, not finished).",
        "The counter of the market boat (2 lines, not finished).",
        "That is not one of the numbers above.",
        "Looking again: 3 of 6. > 2 Kept;",
        "Looking again: 5 of 6. > 14 Line 2: does not hold.",
        "Looking again, before the first of 6 lines.",
        "Looking again: 1 of 1. > weight of the mast, middle, down Line 1: right.",
        "That was its last line.",
    ] {
        assert!(again.contains(said), "{said}: {again}");
    }
}
