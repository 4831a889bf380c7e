//! The program on a real terminal: a pseudo-terminal, and a model of its screen.

use portable_pty::{Child, CommandBuilder, MasterPty, PtySize, native_pty_system};
use std::io::{Read, Write};
use std::num::NonZeroU16;
use std::path::Path;
use std::sync::mpsc::{Receiver, channel};
use std::time::{Duration, Instant};

/// Long enough for a busy machine; a test that passes never waits for it.
const BOUND: Duration = Duration::from_secs(60);

/// A running program with its screen.
pub(super) struct Real {
    child: Box<dyn Child + Send + Sync>,
    master: Box<dyn MasterPty + Send>,
    keys: Box<dyn Write + Send>,
    output: Receiver<Vec<u8>>,
    screen: vt100::Parser,
}

fn sized(columns: u16, rows: u16) -> PtySize {
    PtySize {
        rows,
        cols: columns,
        pixel_width: 0,
        pixel_height: 0,
    }
}

impl Real {
    /// Starts the program at 100 by 30.
    pub(super) fn start(arguments: &[&str], saves: &Path) -> Real {
        let pair = native_pty_system().openpty(sized(100, 30)).unwrap();
        let mut command = CommandBuilder::new(env!("CARGO_BIN_EXE_leverwright"));
        command.args(arguments);
        command.arg("--saves");
        command.arg(saves);
        command.env("TERM", "xterm-256color");
        command.env("LANG", "C.UTF-8");
        let child = pair.slave.spawn_command(command).unwrap();
        drop(pair.slave);
        let mut reader = pair.master.try_clone_reader().unwrap();
        let (sender, output) = channel();
        std::thread::spawn(move || {
            let mut buffer = [0; 4096];
            while let Ok(read @ 1..) = reader.read(&mut buffer) {
                if sender.send(buffer[..read].to_vec()).is_err() {
                    return;
                }
            }
        });
        Real {
            child,
            keys: pair.master.take_writer().unwrap(),
            master: pair.master,
            output,
            screen: vt100::Parser::new(
                NonZeroU16::new(30).unwrap(),
                NonZeroU16::new(100).unwrap(),
                0,
            ),
        }
    }

    /// The text of the screen, with line ends as blanks so that wrapped words are found.
    pub(super) fn shown(&self) -> String {
        self.screen.screen().contents()
    }

    /// Waits until the screen satisfies a condition.
    pub(super) fn until(&mut self, what: &str, holds: impl Fn(&str) -> bool) {
        let end = Instant::now() + BOUND;
        while !holds(&self.shown()) {
            match self.output.recv_timeout(Duration::from_millis(50)) {
                Ok(bytes) => self.screen.process(&bytes),
                Err(_) => assert!(
                    Instant::now() < end,
                    "never shown: {what}\n{}",
                    self.shown()
                ),
            }
        }
    }

    /// Waits for a text.
    pub(super) fn sees(&mut self, text: &str) {
        self.until(text, |shown| shown.contains(text));
    }

    /// Types keys.
    pub(super) fn keys(&mut self, keys: &str) {
        self.keys.write_all(keys.as_bytes()).unwrap();
        self.keys.flush().unwrap();
    }

    /// Enters a line and waits for what must then be on the screen.
    pub(super) fn enter(&mut self, line: &str, then: &str) {
        self.keys(line);
        self.keys("\r");
        self.sees(then);
    }

    /// Gives the terminal another size.
    pub(super) fn resize(&mut self, columns: u16, rows: u16) {
        self.screen.screen_mut().set_size(
            NonZeroU16::new(rows).unwrap(),
            NonZeroU16::new(columns).unwrap(),
        );
        self.master.resize(sized(columns, rows)).unwrap();
    }

    /// Sends a signal by name, such as `KILL`.
    pub(super) fn signal(&mut self, name: &str) {
        let pid = self.child.process_id().unwrap().to_string();
        let sent = std::process::Command::new("kill")
            .args(["-s", name, &pid])
            .status()
            .unwrap();
        assert!(sent.success());
    }

    /// Waits for the end of the program, and takes its last output.
    pub(super) fn ends(&mut self) -> portable_pty::ExitStatus {
        let status = self.child.wait().unwrap();
        let end = Instant::now() + BOUND;
        loop {
            match self.output.recv_timeout(Duration::from_millis(200)) {
                Ok(bytes) => self.screen.process(&bytes),
                Err(_) => break,
            }
            assert!(Instant::now() < end, "output without end");
        }
        status
    }

    /// True if the terminal is as it was before: no alternate screen, and a cursor.
    pub(super) fn is_restored(&self) -> bool {
        let screen = self.screen.screen();
        !screen.alternate_screen() && !screen.hide_cursor()
    }
}
