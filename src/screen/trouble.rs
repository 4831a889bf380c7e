//! Why the screen could not go on.

use crate::text::{Prose, Slot, Words};
use std::io;

/// Why the screen could not go on.
#[derive(Debug)]
pub enum ScreenTrouble {
    /// Input or output is not a terminal.
    NoTerminal,
    /// The terminal refused.
    Terminal {
        /// What the system says.
        system: io::Error,
    },
}

impl ScreenTrouble {
    /// What is wrong and what to do, for the learner.
    pub fn told(&self, words: &Words) -> Prose {
        match self {
            ScreenTrouble::NoTerminal => words.say("screen.trouble.no-terminal", &[]),
            ScreenTrouble::Terminal { system } => words.say(
                "screen.trouble.terminal",
                &[("system", Slot::Word(system.to_string()))],
            ),
        }
    }
}
