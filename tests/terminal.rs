//! The real program in a pseudo-terminal: the whole walk, a kill in the middle, resizes, signals.

mod again;
mod own;
mod ways;

use portable_pty::{Child, CommandBuilder, MasterPty, PtySize, native_pty_system};
use std::io::{Read, Write};
use std::path::Path;
use std::sync::{Arc, Mutex};
use std::time::{Duration, Instant};

/// How long a text may take to appear. Generous: it only bounds a test that fails.
const PATIENCE: Duration = Duration::from_secs(60);

struct Terminal {
    child: Box<dyn Child + Send + Sync>,
    master: Box<dyn MasterPty + Send>,
    keys: Box<dyn Write + Send>,
    screen: Arc<Mutex<vt100::Parser>>,
}

impl Terminal {
    fn open(arguments: &[&str], saves: &Path, columns: u16, rows: u16) -> Terminal {
        let pair = native_pty_system()
            .openpty(PtySize {
                rows,
                cols: columns,
                pixel_width: 0,
                pixel_height: 0,
            })
            .unwrap();
        let mut command = CommandBuilder::new(env!("CARGO_BIN_EXE_leverwright"));
        command.args(arguments);
        command.arg("--saves");
        command.arg(saves);
        command.env("TERM", "xterm-256color");
        command.env("LANG", "C.UTF-8");
        command.env("LC_ALL", "C.UTF-8");
        let child = pair.slave.spawn_command(command).unwrap();
        drop(pair.slave);
        let mut output = pair.master.try_clone_reader().unwrap();
        let keys = pair.master.take_writer().unwrap();
        let screen = Arc::new(Mutex::new(vt100::Parser::new(
            std::num::NonZero::new(rows).unwrap(),
            std::num::NonZero::new(columns).unwrap(),
            0,
        )));
        let seen = Arc::clone(&screen);
        std::thread::spawn(move || {
            let mut buffer = [0; 4096];
            while let Ok(read) = output.read(&mut buffer) {
                if read == 0 {
                    break;
                }
                seen.lock().unwrap().process(&buffer[..read]);
            }
        });
        Terminal {
            child,
            master: pair.master,
            keys,
            screen,
        }
    }

    fn text(&self) -> String {
        self.screen.lock().unwrap().screen().contents()
    }

    fn wait(&self, what: &str, done: impl Fn(&str) -> bool) {
        let start = Instant::now();
        while !done(&self.text()) {
            assert!(
                start.elapsed() < PATIENCE,
                "waited for {what}; the screen is\n{}",
                self.text()
            );
            std::thread::sleep(Duration::from_millis(20));
        }
    }

    fn wait_for(&self, text: &str) {
        self.wait(text, |screen| screen.contains(text));
    }

    fn press(&mut self, keys: &str) {
        self.keys.write_all(keys.as_bytes()).unwrap();
        self.keys.flush().unwrap();
    }

    /// Enters a line and waits for what it brings.
    fn enter(&mut self, line: &str, brings: &str) {
        self.press(&format!("{line}\r"));
        self.wait_for(brings);
    }

    fn resize(&self, columns: u16, rows: u16) {
        // The screen first: what the program draws for the new size must find it there.
        self.screen.lock().unwrap().screen_mut().set_size(
            std::num::NonZero::new(rows).unwrap(),
            std::num::NonZero::new(columns).unwrap(),
        );
        self.master
            .resize(PtySize {
                rows,
                cols: columns,
                pixel_width: 0,
                pixel_height: 0,
            })
            .unwrap();
    }

    fn wait_for_end(&mut self) {
        let start = Instant::now();
        while self.child.try_wait().unwrap().is_none() {
            assert!(
                start.elapsed() < PATIENCE,
                "the program does not end; the screen is\n{}",
                self.text()
            );
            std::thread::sleep(Duration::from_millis(20));
        }
        // What was written last is still on its way through the terminal.
        std::thread::sleep(Duration::from_millis(200));
    }

    /// True while the program has the terminal: its own screen, keys as they are pressed.
    #[cfg(unix)]
    fn is_taken(&self) -> bool {
        !self.is_restored() && !self.edits_lines()
    }

    /// True if the terminal itself edits and echoes lines, as a shell expects.
    #[cfg(unix)]
    fn edits_lines(&self) -> bool {
        let modes = format!("{:?}", self.master.get_termios().unwrap().local_flags);
        modes.contains("ICANON") && modes.contains("ECHO")
    }

    #[cfg(unix)]
    fn signal(&self, signal: &str) {
        let process = self.child.process_id().unwrap().to_string();
        let status = std::process::Command::new("kill")
            .args([signal, &process])
            .status()
            .unwrap();
        assert!(status.success());
    }

    /// True while the system has the program stopped.
    #[cfg(target_os = "linux")]
    fn is_stopped(&self) -> bool {
        let process = self.child.process_id().unwrap();
        let told = std::fs::read_to_string(format!("/proc/{process}/stat")).unwrap();
        let (_, state) = told.rsplit_once(") ").unwrap();
        state.starts_with('T')
    }

    fn is_restored(&self) -> bool {
        let parser = self.screen.lock().unwrap();
        !parser.screen().alternate_screen() && !parser.screen().hide_cursor()
    }
}

/// Forces and pivot of mast, seed 3, then the weights and the angles. After the first line a name is
/// asked, and none is given.
const BEGINNING: &[(&str, &str)] = &[
    ("weight of the mast, middle, down", "Under which name"),
    ("", "Named so far: 1"),
    ("dummy, 4.5 m, down", "Named so far: 2"),
    ("bag, tip, down", "Named so far: 3"),
    ("rope, 4.2 m, up and right", "Named so far: 4"),
    ("hinge, unknown", "About which point"),
    ("hinge", "An estimate before the numbers"),
    ("63*9.8", "How large is W1"),
    ("71*9.8", "How large is W2"),
    ("11*9.8", "a weight's line make"),
    ("90 - 55", "does the rope make"),
    ("55 + 10", "What is Wb⊥"),
];

#[test]
fn a_tilted_mast_is_walked_with_a_mix_up_to_the_hinge() {
    let saves = tempfile::tempdir().unwrap();
    let mut terminal = Terminal::open(&["practice", "mast", "--seed", "3"], saves.path(), 100, 30);
    // Once, before the first tilted body.
    terminal.wait_for("more easily seen");
    terminal.press("1");
    terminal.wait_for("Which forces act");
    for (line, brings) in BEGINNING {
        terminal.enter(line, brings);
    }
    terminal.enter("617.4 cos 35", "You took cos");
    terminal.enter("hint", "right triangle");
    terminal.enter("hint", "long side");
    terminal.enter("617.4 sin 35", "What is W1⊥");
    terminal.enter("W1 sin 35", "What is W2⊥");
    terminal.enter("W2 sin 35", "Leave T as a letter");
    terminal.enter("T sin 65", "balance of moments");
    terminal.enter("354*2.7 + 399*4.5 + 61.8*5.4 = 4.2 T sin 65", "Solve it");
    // By hand: (63·2.7 + 71·4.5 + 11·5.4)·9.8·sin 35° / (4.2·sin 65°) = 811 N, to the hinge by
    // 811·cos 10° and 145·9.8 − 811·sin 10°.
    terminal.enter("811 N", "level part");
    terminal.enter("T cos 10", "upright part");
    terminal.enter("Wb + W1 + W2 - T sin 10", "whole force");
    terminal.enter("sqrt(Hx^2 + Hy^2)", "with the horizontal");
    terminal.enter("atan(Hy/Hx)", "How it went");
    terminal.press("\u{1b}");
    terminal.wait_for("kept");
    terminal.press("\r");
    terminal.wait_for_end();
    assert!(terminal.is_restored());
}

#[test]
fn a_kill_in_the_middle_loses_no_line() {
    let saves = tempfile::tempdir().unwrap();
    let mut terminal = Terminal::open(&["practice", "mast", "--seed", "3"], saves.path(), 100, 30);
    terminal.wait_for("more easily seen");
    terminal.press("1");
    terminal.wait_for("Which forces act");
    for (line, brings) in BEGINNING {
        terminal.enter(line, brings);
    }
    terminal.enter("617.4 cos 35", "You took cos");
    terminal.child.kill().unwrap();
    terminal.wait_for_end();

    let mut again = Terminal::open(&[], saves.path(), 100, 30);
    again.wait_for("where you stopped");
    again.press("\r");
    again.wait_for("What is Wb⊥");
    again.wait_for("You took cos");
    // No name was given for then; in each sitting it is asked once.
    again.enter("617.4 sin 35", "Under which name");
    again.enter("", "What is W1⊥");
    again.press("\u{3}");
    again.wait_for("kept");
    again.press("\r");
    again.wait_for_end();
    assert!(again.is_restored());
}

#[test]
fn a_kill_in_a_general_problem_loses_no_line_either() {
    let saves = tempfile::tempdir().unwrap();
    let file = format!("{}/tests/boards/ladder.json", env!("CARGO_MANIFEST_DIR"));
    let mut terminal = Terminal::open(&["practice", &file], saves.path(), 100, 34);
    terminal.wait_for("Leave N as a letter");
    terminal.enter("0.35*N", "Under which name");
    terminal.enter("", "weight of the ladder");
    terminal.enter("24 kg", "This is a mass");
    terminal.child.kill().unwrap();
    terminal.wait_for_end();

    let mut again = Terminal::open(&[], saves.path(), 100, 34);
    again.wait_for("where you stopped");
    again.press("\r");
    again.wait_for("weight of the ladder");
    again.wait_for("0.35*N");
    again.wait_for("24 kg");
    again.enter("mb*g", "weight of the climber");
}

/// From an empty folder: Enter opens the first lesson, the first line is answered, a name is asked
/// and kept; at the next start the problem waits under it, and somebody else may sit down.
#[test]
fn a_newcomer_gives_a_name_and_somebody_else_sits_down_after() {
    let saves = tempfile::tempdir().unwrap();
    let mut terminal = Terminal::open(&["--seed", "7"], saves.path(), 80, 24);
    terminal.wait_for("start here");
    terminal.press("\r");
    terminal.wait_for("Which forces act");
    // A second Enter does no harm.
    terminal.press("\r");
    terminal.enter("weight of the crate, 1.2 m, down", "Under which name");
    terminal.wait_for("✓ 1  weight of the crate");
    terminal.enter("Zoë", "Named so far: 1");
    terminal.wait_for("Zoë: your lines are kept");
    terminal.press("\u{3}\u{3}");
    terminal.wait_for_end();
    assert!(terminal.is_restored());

    let mut again = Terminal::open(&[], saves.path(), 80, 24);
    again.wait_for("at work: Zoë");
    again.wait_for("begun");
    again.press("\u{1b}[19~");
    again.enter("Bo", "at work: Bo");
    again.wait("an empty list", |screen| {
        !screen.contains("where you stopped")
    });
    again.wait_for("start here");
    again.press("\u{1b}[19~");
    again.wait_for("1 Zoë");
    again.enter("1", "where you stopped");
    again.press("\u{3}\u{3}");
    again.wait_for_end();
    assert!(again.is_restored());
}

#[test]
fn a_small_window_says_how_large_it_must_be_and_comes_back() {
    let saves = tempfile::tempdir().unwrap();
    let terminal = Terminal::open(
        &["practice", "counter", "--seed", "2"],
        saves.path(),
        100,
        30,
    );
    terminal.wait_for("Which forces act");
    for (columns, rows) in [(20, 5), (1, 1), (50, 12)] {
        terminal.resize(columns, rows);
        std::thread::sleep(Duration::from_millis(150));
    }
    terminal.wait_for("60 by 16");
    terminal.resize(100, 30);
    terminal.wait_for("Which forces act");
}

#[cfg(unix)]
#[test]
fn the_system_may_stop_it_and_gets_its_terminal_back() {
    let saves = tempfile::tempdir().unwrap();
    let mut terminal = Terminal::open(
        &["practice", "counter", "--seed", "2"],
        saves.path(),
        100,
        30,
    );
    terminal.wait_for("Which forces act");
    let process = terminal.child.process_id().unwrap();
    let status = std::process::Command::new("kill")
        .args(["-TERM", &process.to_string()])
        .status()
        .unwrap();
    assert!(status.success());
    terminal.wait_for_end();
    assert!(terminal.is_restored());
}

/// Bodies in general: their drawing is told where a lesson's is drawn.
#[test]
fn a_general_problem_is_walked_on_the_screen() {
    let saves = tempfile::tempdir().unwrap();
    let file = format!("{}/tests/boards/ladder.json", env!("CARGO_MANIFEST_DIR"));
    let mut terminal = Terminal::open(&["practice", &file], saves.path(), 100, 34);
    terminal.wait_for("Leave N as a letter");
    terminal.wait_for("and to the right, at θ = 62°");
    for (line, brings) in [
        ("0.35*N", "Under which name"),
        ("", "weight of the ladder"),
        ("mb*g", "weight of the climber"),
        ("686 N", "upright forces"),
        ("N = Wb + W1", "level forces"),
    ] {
        terminal.enter(line, brings);
    }
    terminal.enter("F = FN", "angle between");
    terminal.press("\u{3}");
    terminal.wait_for("Enter leave");
    terminal.press("\r");
    terminal.wait_for_end();
    assert!(terminal.is_restored());
}

/// Stopped by its key or by the system, the program leaves the terminal as it found it; when it goes on
/// it takes all of it again, and what was typed is there.
#[cfg(target_os = "linux")]
#[test]
fn stopped_and_gone_on_it_gives_the_terminal_back_and_takes_it_again() {
    let saves = tempfile::tempdir().unwrap();
    let arguments = ["practice", "mast", "--seed", "3"];
    let mut terminal = Terminal::open(&arguments, saves.path(), 100, 30);
    terminal.wait_for("more easily seen");
    terminal.press("1");
    terminal.wait_for("Which forces act");
    terminal.press("weight of the ma");
    terminal.wait_for("weight of the ma");
    assert!(terminal.is_taken());
    for by_key in [true, false] {
        match by_key {
            true => terminal.press("\u{1a}"),
            false => terminal.signal("-TSTP"),
        }
        terminal.wait("the stop", |_| terminal.is_stopped());
        // What was written last is still on its way through the terminal.
        std::thread::sleep(Duration::from_millis(200));
        assert!(terminal.is_restored() && terminal.edits_lines());
        // A shell writes over the screen, and the window may change meanwhile.
        terminal
            .screen
            .lock()
            .unwrap()
            .process(b"\x1b[2J\x1b[Hjobs and files");
        terminal.resize(if by_key { 90 } else { 100 }, 30);
        terminal.signal("-CONT");
        terminal.wait_for("Which forces act");
        terminal.wait_for("weight of the ma");
        terminal.wait("the terminal to be taken", |_| terminal.is_taken());
        assert!(!terminal.text().contains("jobs and files"));
    }
    // Stopped with no word to the program, it finds the terminal changed.
    terminal.signal("-STOP");
    terminal.wait("the stop", |_| terminal.is_stopped());
    terminal
        .screen
        .lock()
        .unwrap()
        .process(b"\x1b[?1049l\x1b[2J\x1b[Hjobs and files");
    terminal.signal("-CONT");
    terminal.wait_for("Which forces act");
    terminal.wait("the terminal to be taken", |_| terminal.is_taken());
    terminal.enter("st, middle, down", "Under which name");
    terminal.enter("", "Named so far: 1");
    terminal.press("\u{3}");
    terminal.wait_for("kept");
    terminal.press("\r");
    terminal.wait_for_end();
    assert!(terminal.is_restored() && terminal.edits_lines());
}

/// Ctrl-L draws every cell anew, whatever was written over the screen.
#[test]
fn the_whole_screen_is_drawn_anew() {
    let saves = tempfile::tempdir().unwrap();
    let arguments = ["practice", "counter", "--seed", "2"];
    let mut terminal = Terminal::open(&arguments, saves.path(), 100, 30);
    terminal.wait_for("Which forces act");
    terminal.press("3*x");
    terminal.wait_for("3*x");
    terminal
        .screen
        .lock()
        .unwrap()
        .process(b"\x1b[5;1Hmail for you\x1b[24;1H\x1b[2Kmore mail");
    assert!(terminal.text().contains("more mail"));
    terminal.press("\u{c}");
    terminal.wait("the screen drawn anew", |screen| {
        let whole = ["Which forces act", "3*x", "F1 help"];
        whole.iter().all(|part| screen.contains(part)) && !screen.contains("mail")
    });
}
