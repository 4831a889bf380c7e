//! How long a learner waits for the screen: `cargo bench --bench latency -- KEYS`.
//!
//! The real program in a pseudo-terminal: from its start to the first page, beside an empty Rust
//! program started in the same way in the same run; from a key to the first and to the last byte of
//! what it brings; and the most memory that it held (Linux only). The time that the bench takes to read
//! is in every figure.
#![allow(clippy::print_stdout, clippy::unwrap_used, missing_docs)]

use portable_pty::{Child, CommandBuilder, MasterPty, PtySize, native_pty_system};
use std::io::{Read, Write};
use std::path::{Path, PathBuf};
use std::process::Command;
use std::sync::mpsc::{Receiver, channel};
use std::time::{Duration, Instant};

/// A frame is over when nothing more comes for so long.
const QUIET: Duration = Duration::from_millis(12);
/// How long to wait at most; it only bounds a run that fails.
const PATIENCE: Duration = Duration::from_secs(20);
/// How often each program is started.
const STARTS: usize = 25;

fn main() {
    let words = std::env::args().skip(1);
    let keys = words.filter_map(|word| word.parse().ok()).next();
    let keys: usize = keys.unwrap_or(400);
    let folder = tempfile::tempdir().unwrap();
    let empty = empty_program(folder.path());
    starts(folder.path(), empty.as_deref());
    for (columns, rows) in [(80, 24), (140, 45)] {
        typing(folder.path(), (columns, rows), keys);
    }
}

/// A program that does nothing, built as the release is, if there is a compiler.
fn empty_program(folder: &Path) -> Option<PathBuf> {
    let source = folder.join("empty.rs");
    std::fs::write(&source, "fn main() {}\n").unwrap();
    let program = folder.join("empty");
    let built = Command::new("rustc")
        .args(["-C", "opt-level=3", "-C", "strip=symbols", "-o"])
        .arg(&program)
        .arg(&source)
        .status();
    built.ok().filter(|status| status.success())?;
    Some(program)
}

/// A program at a terminal, and what it wrote with the time when it was read.
struct Running {
    child: Box<dyn Child + Send + Sync>,
    keys: Box<dyn Write + Send>,
    written: Receiver<(Instant, Vec<u8>)>,
    started: Instant,
    // Held so that the terminal stays open.
    _master: Box<dyn MasterPty + Send>,
}

impl Running {
    fn start(mut command: CommandBuilder, (columns, rows): (u16, u16)) -> Running {
        let size = PtySize {
            rows,
            cols: columns,
            pixel_width: 0,
            pixel_height: 0,
        };
        let pair = native_pty_system().openpty(size).unwrap();
        command.env("TERM", "xterm-256color");
        command.env("LC_ALL", "C.UTF-8");
        let started = Instant::now();
        let child = pair.slave.spawn_command(command).unwrap();
        drop(pair.slave);
        let mut output = pair.master.try_clone_reader().unwrap();
        let keys = pair.master.take_writer().unwrap();
        let (sender, written) = channel();
        std::thread::spawn(move || {
            let mut buffer = vec![0; 1 << 16];
            while let Ok(read @ 1..) = output.read(&mut buffer) {
                if sender
                    .send((Instant::now(), buffer[..read].to_vec()))
                    .is_err()
                {
                    break;
                }
            }
        });
        Running {
            child,
            keys,
            written,
            started,
            _master: pair.master,
        }
    }

    /// When the first and the last byte of a frame came, and how many they were.
    fn frame(&self) -> Option<(Instant, Instant, usize)> {
        let (first, bytes) = self.written.recv_timeout(PATIENCE).ok()?;
        let (mut last, mut all) = (first, bytes.len());
        while let Ok((at, bytes)) = self.written.recv_timeout(QUIET) {
            last = at;
            all += bytes.len();
        }
        Some((first, last, all))
    }

    /// Presses a key and waits for the frame; `None` if it brings nothing.
    fn press(&mut self, key: &str) -> Option<(Duration, Duration, usize)> {
        let at = Instant::now();
        self.keys.write_all(key.as_bytes()).ok()?;
        self.keys.flush().ok()?;
        let (first, last, bytes) = self.frame()?;
        Some((first - at, last - at, bytes))
    }

    /// The most memory that it held, in kilobytes.
    fn memory(&self) -> Option<u64> {
        let status = std::fs::read_to_string(format!("/proc/{}/status", self.child.process_id()?));
        let status = status.ok()?;
        let line = status.lines().find(|line| line.starts_with("VmHWM"))?;
        line.split_whitespace().nth(1)?.parse().ok()
    }
}

fn program(saves: &Path, arguments: &[&str]) -> CommandBuilder {
    let mut command = CommandBuilder::new(env!("CARGO_BIN_EXE_leverwright"));
    command.args(arguments);
    command.arg("--saves");
    command.arg(saves);
    command
}

/// From the start to the first page, and to the end of an empty program.
fn starts(folder: &Path, empty: Option<&Path>) {
    let (mut page, mut nothing) = (Vec::new(), Vec::new());
    for at in 0..STARTS {
        let saves = folder.join(format!("start-{at}"));
        let mut running = Running::start(program(&saves, &["practice"]), (80, 24));
        if let Some((_, last, _)) = running.frame() {
            page.push(last - running.started);
        }
        let _ = running.child.kill();
        let _ = running.child.wait();
        if let Some(empty) = empty {
            let mut running = Running::start(CommandBuilder::new(empty), (80, 24));
            let _ = running.child.wait();
            nothing.push(running.started.elapsed());
        }
    }
    tell("start to first page", &mut page);
    tell("start to end of an empty program", &mut nothing);
}

/// Keys of a newcomer at the first lesson: a line typed, taken back, typed again.
fn typing(folder: &Path, size: (u16, u16), keys: usize) {
    let saves = folder.join(format!("typing-{}", size.0));
    let arguments = ["practice", "mast", "--seed", "3"];
    let mut running = Running::start(program(&saves, &arguments), size);
    running.frame();
    let lines = [
        "weight of the mast, middle, down",
        "dummy, 4.5 m, down",
        "bag, tip, down",
        "rope, 4.2 m, up and right",
        "hinge, unknown",
        "hinge",
        "63*9.8",
        "71*9.8",
        "11*9.8",
    ];
    let (mut first, mut whole, mut entered) = (Vec::new(), Vec::new(), Vec::new());
    let mut bytes = 0;
    let mut lines = lines.iter();
    while first.len() < keys {
        let line = lines.next().copied();
        for letter in line.unwrap_or("298*3.3 + 294*6.6 = T*sin 65").chars() {
            let Some((begun, done, written)) = running.press(&letter.to_string()) else {
                break;
            };
            first.push(begun);
            whole.push(done);
            bytes += written;
        }
        match line {
            Some(_) => entered.extend(running.press("\r").map(|(_, done, _)| done)),
            None => {
                running.press("\u{15}");
            }
        }
    }
    let memory = running.memory();
    println!("{}x{}:", size.0, size.1);
    tell("  key to first byte", &mut first);
    tell("  key to whole frame", &mut whole);
    tell("  line entered to whole frame", &mut entered);
    println!("  bytes a key          {:10}", bytes / first.len().max(1));
    match memory {
        Some(kilobytes) => println!(
            "  most memory          {:10.1} MB",
            kilobytes as f64 / 1024.0
        ),
        None => println!("  most memory          not known here"),
    }
    let _ = running.child.kill();
    let _ = running.child.wait();
}

fn tell(what: &str, times: &mut [Duration]) {
    times.sort_unstable();
    let at = |share: f64| {
        let last = times.len().saturating_sub(1);
        times.get((last as f64 * share).round() as usize)
    };
    if let (Some(median), Some(late)) = (at(0.5), at(0.99)) {
        println!(
            "{what:34} median {median:>9.2?}, 99 % {late:>9.2?}, of {}",
            times.len()
        );
    }
}
