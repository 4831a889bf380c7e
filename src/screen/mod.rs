//! The practice screen: a list of lessons, then one problem with its diagram and the working.
//!
//! Keys become a [`message`], [`update`] changes the [`model`] and may ask for an effect, and
//! [`view`] draws the model. Only [`terminal`] and the loop in this file know a real terminal.
//! Files are the caller's: the screen asks a [`Desk`].

mod door;

pub use door::{Desk, LessonChoice, Opening, Resumable, ScreenTrouble, Start, Tutor};

/// Runs the practice screen until the learner leaves or the system asks it to stop.
///
/// The terminal is as it was before when this returns, and when the program panics meanwhile.
///
/// # Errors
/// When there is no terminal, or when it can no longer be written or read.
pub fn run(desk: &mut dyn Desk, start: Start) -> Result<(), ScreenTrouble> {
    let _ = (desk, start);
    Err(ScreenTrouble::NoTerminal)
}
