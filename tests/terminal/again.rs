//! Estimates before the numbers, and looking again, with the keys of a real terminal.

use super::Terminal;

const F6: &str = "\x1b[17~";
const RIGHT: &str = "\x1b[C";

#[test]
fn an_estimate_is_given_passed_over_and_looked_at_again() {
    let saves = tempfile::tempdir().unwrap();
    let arguments = ["practice", "counter", "--seed", "7"];
    let mut terminal = Terminal::open(&arguments, saves.path(), 80, 24);
    terminal.wait_for("Which forces act");
    terminal.enter("skip", "About which point");
    terminal.enter("hinge", "Under which name");
    terminal.enter("", "An estimate before the numbers");
    terminal.enter("2", "Which way will");
    terminal.press("\r");
    terminal.wait_for("How large is Wb");
    // Another empty line passes nothing over.
    terminal.press("\r");
    terminal.wait_for("Nothing is typed yet");
    terminal.press("\x1b");
    terminal.wait_for("Everything you entered is kept.");
    terminal.press("\t");
    terminal.wait_for("where you stopped");
    terminal.press(F6);
    terminal.wait_for("1 line, not finished");
    terminal.press("\r");
    terminal.wait_for("Looking again: 1 of 4.");
    terminal.press(RIGHT);
    terminal.press(RIGHT);
    terminal.wait_for("Looking again: 3 of 4. Which way will");
    terminal.press("63*9.8\r");
    terminal.wait_for("Looking again: 4 of 4. How large is Wb");
    terminal.press("\x03");
    terminal.wait_for("Enter leave");
    terminal.press("\r");
    terminal.wait_for_end();
    assert!(terminal.is_restored());
}
