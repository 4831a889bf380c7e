//! A problem of one's own, from the list to its first judged line.

use super::Terminal;

#[test]
fn a_problem_of_ones_own_is_built_kept_and_worked_at() {
    let saves = tempfile::tempdir().unwrap();
    let mut terminal = Terminal::open(&["--seed", "7"], saves.path(), 80, 24);
    terminal.wait_for("start here");
    terminal.press("4\r");
    for (answer, brings) in [
        ("", "What is to be held up?"),
        ("a plank", "How long is the plank?"),
        ("long", "not read as a number"),
        // Ctrl-U empties the line.
        ("\u{15}2.4 m", "mass of the plank?"),
        ("18 kg", "How does the plank stand?"),
        ("1", "To which side of the foot"),
        ("1", "What fixes the plank"),
        ("1", "Where on the plank is the hinge?"),
        ("foot", "What else holds the plank?"),
        ("1", "Where does the rope hold"),
        ("tip", "Which way does the rope run"),
        // A rope along the plank holds nothing.
        ("3", "it would give way"),
    ] {
        if !answer.is_empty() {
            terminal.press(&format!("{answer}\r"));
        }
        terminal.wait_for(brings);
    }
    // F2 takes it back.
    terminal.press("\u{1b}OQ");
    terminal.wait_for("Which way does the rope run");
    for (answer, brings) in [
        ("1", "Does anything else hold"),
        ("1", "What does the plank carry?"),
        ("basket", "mass of the basket?"),
        ("12", "Which place on the plank carries the basket?"),
        ("1.6 m", "How does the plank carry"),
        ("1", "carry anything more?"),
        ("", "it can be worked"),
        ("2", "Under which name"),
        ("my plank", "It is kept in"),
        ("1", "Which forces act on the plank?"),
        ("weight of the plank, middle, down", "Under which name"),
        ("", "Named so far: 1"),
    ] {
        terminal.press(&format!("{answer}\r"));
        terminal.wait_for(brings);
    }
    terminal.press("\u{3}");
    terminal.wait_for("kept");
    terminal.press("\r");
    terminal.wait_for_end();
    assert!(terminal.is_restored());

    // The problem waits in the record, and its file is a problem file like any other.
    let mut again = Terminal::open(&[], saves.path(), 80, 24);
    again.wait_for("where you stopped");
    again.press("\r");
    again.wait_for("Named so far: 1");
    drop(again);
    let file = saves.path().join("learner/problems/my-plank.json");
    let file = file.to_str().unwrap();
    let other = tempfile::tempdir().unwrap();
    let opened = Terminal::open(&["practice", file], other.path(), 80, 24);
    opened.wait_for("Which forces act on the plank?");
}
