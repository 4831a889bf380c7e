//! The terminal: taken, given back whatever happens, and the signals that ask to stop.

use ratatui::backend::CrosstermBackend;
use ratatui::crossterm::cursor::Show;
use ratatui::crossterm::event::{DisableBracketedPaste, EnableBracketedPaste};
use ratatui::crossterm::execute;
use ratatui::crossterm::terminal::{
    EnterAlternateScreen, LeaveAlternateScreen, disable_raw_mode, enable_raw_mode,
};
use ratatui::layout::{Rect, Size};
use ratatui::{Terminal, TerminalOptions, Viewport};
use std::io::{self, IsTerminal, Stdout};
use std::sync::atomic::{AtomicBool, Ordering};
use std::sync::{Arc, Once};
use std::time::Duration;

/// True while the terminal is ours. The panic hook gives it back only then.
static TAKEN: AtomicBool = AtomicBool::new(false);
static HOOK: Once = Once::new();

/// The most columns and rows that are drawn on, from the top left. A terminal may call itself
/// 65535 by 65535 large, and no memory holds so many cells.
const LARGEST: (u16, u16) = (500, 200);

/// The part of a terminal of this size that is drawn on.
pub(super) fn drawn_on(size: Size) -> Rect {
    let (columns, rows) = LARGEST;
    Rect::new(0, 0, size.width.min(columns), size.height.min(rows))
}

/// How often to look whether the terminal is still there.
const GLANCE: Duration = Duration::from_millis(250);
/// How long the loop has to end by itself once it was asked to.
const GRACE: Duration = Duration::from_secs(1);

/// Ends the process at once.
#[allow(clippy::exit)] // The thread that could end in an orderly way hangs in a read.
fn leave() -> ! {
    std::process::exit(1)
}

/// The terminal while it is ours; dropping it gives it back.
pub(super) struct Guard {
    /// Where frames are drawn.
    pub(super) terminal: Terminal<CrosstermBackend<Stdout>>,
}

impl Guard {
    /// True if both ends are a terminal.
    pub(super) fn possible() -> bool {
        io::stdin().is_terminal() && io::stdout().is_terminal()
    }

    /// Takes the terminal: no echo, a screen of its own, pasted text as a whole.
    ///
    /// # Errors
    /// What the system says. The terminal is as it was then.
    pub(super) fn take() -> io::Result<Guard> {
        HOOK.call_once(|| {
            let before = std::panic::take_hook();
            std::panic::set_hook(Box::new(move |panic| {
                give_back();
                before(panic);
            }));
        });
        let taken = enter().and_then(|()| {
            let area = drawn_on(ratatui::crossterm::terminal::size()?.into());
            let options = TerminalOptions {
                viewport: Viewport::Fixed(area),
            };
            Terminal::with_options(CrosstermBackend::new(io::stdout()), options)
        });
        match taken {
            Ok(terminal) => Ok(Guard { terminal }),
            Err(system) => {
                give_back();
                Err(system)
            }
        }
    }

    /// Gives the terminal back and stops, as a shell's jobs are stopped; comes back once the
    /// program goes on.
    ///
    /// # Errors
    /// What the system says.
    pub(super) fn pause(&mut self, signals: &Signals) -> io::Result<()> {
        give_back();
        signals.stop_here()
    }

    /// Takes the terminal again after the program was stopped, whatever was done to it meanwhile;
    /// every cell is drawn anew. Gives its columns and rows.
    ///
    /// # Errors
    /// What the system says.
    pub(super) fn take_again(&mut self) -> io::Result<(u16, u16)> {
        // What is thought to stand is entered anew.
        disable_raw_mode()?;
        enter()?;
        self.fit()
    }

    /// Makes what is drawn fit the terminal as it is now, and draws all of it anew; gives its
    /// columns and rows.
    ///
    /// # Errors
    /// What the system says.
    pub(super) fn fit(&mut self) -> io::Result<(u16, u16)> {
        let area = drawn_on(self.terminal.size()?);
        self.terminal.resize(area)?;
        Ok((area.width, area.height))
    }
}

impl Drop for Guard {
    fn drop(&mut self) {
        give_back();
    }
}

/// Takes the terminal: raw keys, a screen of its own, pasted text as a whole.
fn enter() -> io::Result<()> {
    TAKEN.store(true, Ordering::SeqCst);
    enable_raw_mode()?;
    execute!(io::stdout(), EnterAlternateScreen, EnableBracketedPaste)
}

/// Makes the terminal as it was. Each part is tried even if another fails: there is no better
/// moment to do so.
fn give_back() {
    if TAKEN.swap(false, Ordering::SeqCst) {
        let _ = execute!(
            io::stdout(),
            DisableBracketedPaste,
            LeaveAlternateScreen,
            Show
        );
        let _ = disable_raw_mode();
    }
}

/// Whether the system has asked the program to end or to stop for a while, and whether it goes on
/// after that.
pub(super) struct Signals {
    asked: Arc<AtomicBool>,
    paused: Arc<AtomicBool>,
    resumed: Arc<AtomicBool>,
    /// True once nobody listens any more.
    over: Arc<AtomicBool>,
    ids: Vec<signal_hook::SigId>,
}

impl Signals {
    /// Listens for the signals that end a program or stop it for a while, until dropped.
    ///
    /// # Errors
    /// What the system says.
    pub(super) fn listen() -> io::Result<Signals> {
        let mut signals = Signals {
            asked: Arc::new(AtomicBool::new(false)),
            paused: Arc::new(AtomicBool::new(false)),
            resumed: Arc::new(AtomicBool::new(false)),
            over: Arc::new(AtomicBool::new(false)),
            ids: Vec::new(),
        };
        #[cfg(unix)]
        let numbers = [
            signal_hook::consts::SIGTERM,
            signal_hook::consts::SIGINT,
            signal_hook::consts::SIGHUP,
        ];
        #[cfg(not(unix))]
        let numbers = [signal_hook::consts::SIGTERM, signal_hook::consts::SIGINT];
        for number in numbers {
            let id = signal_hook::flag::register(number, Arc::clone(&signals.asked))?;
            signals.ids.push(id);
        }
        #[cfg(unix)]
        for (number, told) in [
            (signal_hook::consts::SIGTSTP, &signals.paused),
            (signal_hook::consts::SIGCONT, &signals.resumed),
        ] {
            let id = signal_hook::flag::register(number, Arc::clone(told))?;
            signals.ids.push(id);
        }
        signals.watch();
        Ok(signals)
    }

    /// Ends the program when the terminal is gone. The reader of keys never comes back from a
    /// terminal that was hung up: it reads its end again and again, and a signal is not noticed
    /// in there. Every line entered is on disk by then.
    fn watch(&self) {
        let (asked, over) = (Arc::clone(&self.asked), Arc::clone(&self.over));
        std::thread::spawn(move || {
            while !over.load(Ordering::SeqCst) {
                std::thread::sleep(GLANCE);
                let gone = asked.load(Ordering::SeqCst) || !io::stdin().is_terminal();
                if gone {
                    std::thread::sleep(GRACE);
                    if !over.load(Ordering::SeqCst) {
                        give_back();
                        leave();
                    }
                }
            }
        });
    }

    /// Asks for a stop, as the system does.
    pub(super) fn pause(&self) {
        self.paused.store(cfg!(unix), Ordering::SeqCst);
    }

    /// True once for each time that a stop was asked for.
    pub(super) fn asked_to_pause(&self) -> bool {
        self.paused.swap(false, Ordering::SeqCst)
    }

    /// True once for each time that the program goes on after a stop.
    pub(super) fn goes_on(&self) -> bool {
        self.resumed.swap(false, Ordering::SeqCst)
    }

    /// Stops the program; comes back when it goes on.
    ///
    /// # Errors
    /// What the system says.
    fn stop_here(&self) -> io::Result<()> {
        #[cfg(unix)]
        signal_hook::low_level::emulate_default_handler(signal_hook::consts::SIGTSTP)?;
        // The terminal is taken again even where nobody sends a word that it goes on.
        self.resumed.store(true, Ordering::SeqCst);
        Ok(())
    }

    /// True once a signal came.
    pub(super) fn asked_to_stop(&self) -> bool {
        self.asked.load(Ordering::SeqCst)
    }
}

impl Drop for Signals {
    fn drop(&mut self) {
        self.over.store(true, Ordering::SeqCst);
        for id in self.ids.drain(..) {
            signal_hook::low_level::unregister(id);
        }
    }
}
