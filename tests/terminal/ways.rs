//! Other ways through a problem with the keys of a real terminal: freely, about another pivot, with
//! the first steps shown; and what a terminal does besides: resizes in a storm, a paste of many lines.

use super::Terminal;

const F7: &str = "\x1b[18~";

/// Leaves from a problem by Ctrl-C and Enter, and sees the terminal given back.
fn leave(mut terminal: Terminal) {
    terminal.press("\x03");
    terminal.wait_for("kept");
    terminal.press("\r");
    terminal.wait_for_end();
    assert!(terminal.is_restored());
}

fn walkway(arguments: &[&str], columns: u16, rows: u16) -> (tempfile::TempDir, Terminal) {
    let saves = tempfile::tempdir().unwrap();
    let all = [&["practice", "walkway", "--seed", "2"], arguments].concat();
    let terminal = Terminal::open(&all, saves.path(), columns, rows);
    (saves, terminal)
}

/// Works freely, and enters a first line; no name is given after it.
fn begin_freely(terminal: &mut Terminal) {
    terminal.wait_for("Which forces act");
    terminal.enter("freely", "Still to be found: T, Hx, Hy, H");
    terminal.enter("Wb = 24*9.8", "Under which name");
    terminal.enter("", "✓ 1  Wb = 24*9.8");
}

/// Walkway, seed 2: 24 kg at 1.5 m and 84 kg at 2.3 m of 3.0 m, the rope at the tip with 25°. By hand,
/// about the tip: Hy = (24·1.5 + 84·0.7)·9.8/3.0 = 309.7 N; T = (108·9.8 − 309.7)/sin 25° = 1772 N.
#[test]
fn a_free_working_about_another_point_is_worked_to_its_end() {
    let (_saves, mut terminal) = walkway(&[], 100, 30);
    begin_freely(&mut terminal);
    terminal.enter("W1 = 84 g", "✓ 2  W1 = 84 g");
    terminal.press(F7);
    terminal.wait_for("◎1 the hinge");
    terminal.press("4");
    terminal.wait_for("◎4 the rope");
    terminal.press("\r");
    terminal.wait("the tip as the pivot", |screen| !screen.contains("◎4"));
    terminal.enter("Hy*3 = 235.2*1.5 + 823.2*0.7", "✓ 4  Hy*3");
    terminal.enter("Hy = 309.7", "Still to be found: T, Hx, H, ψ");
    // The other leg of the triangle, and its mend.
    terminal.enter("T cos 25 + Hy = Wb + W1", "You took cos");
    terminal.enter("T sin 25 + Hy = Wb + W1", "✓ 7  T sin 25");
    terminal.enter("T = 1772", "Still to be found: Hx, H, ψ");
    terminal.enter("Hx = T cos 25 = 1606", "Still to be found: H, ψ");
    terminal.enter("H = sqrt(Hx^2+Hy^2) = 1635", "Still to be found: ψ");
    terminal.enter("ψ = atan(Hy/Hx) = 10.9", "✓ 11");
    terminal.enter("done", "How it went");
    leave(terminal);
}

#[test]
fn an_example_is_worked_line_by_line_to_its_end() {
    let (_saves, mut terminal) = walkway(&["--worked"], 100, 30);
    terminal.wait_for("○");
    // Each Enter or choice brings the next line; a wrong reason is no slip.
    for _ in 0..60 {
        if terminal.text().contains("How it went") {
            break;
        }
        let before = terminal.text();
        terminal.press("1\r");
        terminal.wait("another screen", |screen| screen != before);
    }
    terminal.wait_for("How it went");
    leave(terminal);
}

#[test]
fn a_storm_of_resizes_leaves_line_and_working_where_they_were() {
    let (_saves, mut terminal) = walkway(&[], 100, 30);
    begin_freely(&mut terminal);
    terminal.press("W1 = 84*9.8");
    // What is typed while the window is too small to show it is left out.
    terminal.wait_for("› W1 = 84*9.8");
    for round in 0..60_u16 {
        let (columns, rows) = match round % 6 {
            0 => (1, 1),
            1 => (220, 70),
            2 => (20, 5),
            3 => (80, 24),
            4 => (3, 60),
            _ => (200, 2),
        };
        terminal.resize(columns, rows);
        std::thread::sleep(std::time::Duration::from_millis(5));
    }
    terminal.resize(100, 30);
    terminal.wait_for("✓ 1  Wb = 24*9.8");
    terminal.wait_for("› W1 = 84*9.8");
    terminal.enter("", "✓ 2  W1 = 84*9.8");
    leave(terminal);
}

#[test]
fn pasted_lines_are_judged_one_by_one() {
    let (_saves, mut terminal) = walkway(&[], 100, 30);
    terminal.wait_for("Which forces act");
    terminal.enter("freely", "Still to be found");
    // As terminals send a paste: between its two marks, lines parted by carriage returns.
    terminal.press("\x1b[200~Wb = 24*9.8\rW1 = 84*9.8\rT = 1772\x1b[201~");
    terminal.wait_for("the other 2 lines follow");
    terminal.wait_for("› Wb = 24*9.8");
    terminal.enter("", "Under which name");
    terminal.enter("", "✓ 1  Wb = 24*9.8");
    // The next one waits in the input, and nothing is judged that was not entered.
    terminal.wait_for("› W1 = 84*9.8");
    terminal.wait_for("One more follows");
    terminal.enter("", "✓ 2  W1 = 84*9.8");
    terminal.wait_for("› T = 1772");
    // Who empties it leaves the rest out.
    terminal.press("\x15");
    terminal.enter("T sin 25 = 3", "3  T sin 25 = 3");
    leave(terminal);
}

#[test]
fn an_emptied_line_leaves_the_other_pasted_lines_out() {
    let (_saves, mut terminal) = walkway(&[], 100, 30);
    terminal.wait_for("Which forces act");
    terminal.press("\x1b[200~hint\nWb = 24*9.8\x1b[201~");
    terminal.wait_for("the other one follows");
    terminal.press("\x15");
    terminal.enter("", "The other pasted lines were left out.");
    leave(terminal);
}
