//! The practice screen: a list of lessons, then one problem with its diagram and the working.
//!
//! One loop: draw the model, wait for an event, turn it into a message, let `update` change the
//! model, run the effect it asks for. The model is drawn by `view` and by nothing else. Only
//! `terminal` and the loop in this file know a real terminal. Files are the caller's: the screen
//! asks a [`Desk`], which writes every line down before it is judged.

mod again;
mod building;
mod editing;
mod keys;
mod message;
mod model;
mod naming;
mod pivot;
mod settings;
mod terminal;
#[cfg(test)]
mod tests;
mod theme;
mod trouble;
mod update;
mod view;

pub use trouble::ScreenTrouble;
pub use view::{Onlooker, Sight};

use crate::practice::{Desk, Start, taken};
use crate::session::Fading;

use message::{Choice, Effect, Message};
use model::Model;
use ratatui::crossterm::event::{self, Event};
use std::time::Duration;
use terminal::{Guard, Signals};
use theme::Theme;
use update::update;

/// How long to wait for a key before looking whether the system asked to stop.
const PATIENCE: Duration = Duration::from_millis(100);

/// The most events taken before the screen is drawn anew.
const MOST_AT_ONCE: usize = 2000;

/// Runs the practice screen until the learner leaves or the system asks it to stop.
///
/// The terminal is as it was before when this returns, and when the program panics meanwhile.
///
/// # Errors
/// When there is no terminal, or when it can no longer be written or read.
pub fn run(desk: &mut dyn Desk, start: Start) -> Result<(), ScreenTrouble> {
    if !Guard::possible() {
        return Err(ScreenTrouble::NoTerminal);
    }
    let trouble = |system| ScreenTrouble::Terminal { system };
    let theme = Theme::of(|name| std::env::var(name).ok());
    let signals = Signals::listen().map_err(trouble)?;
    let mut guard = Guard::take().map_err(trouble)?;
    let size = guard.fit().map_err(trouble)?;
    let mut model = Model::new(desk.words(), theme, size);
    model.fixed = desk.fixed();
    model.settle(desk);
    model.asks_for_slope = true;
    begin(desk, &mut model, start);
    let ended = converse(desk, &mut model, &mut guard, &signals).map_err(trouble);
    drop(guard);
    if let Some(finished) = model.open_problem() {
        desk.closed(finished);
    }
    ended
}

/// Brings the first page.
fn begin(desk: &mut dyn Desk, model: &mut Model, start: Start) {
    match start {
        Start::Problem(opening) => dispatch(desk, model, Message::Opened(Ok(opening))),
        Start::Menu => {
            let message = listed(desk);
            dispatch(desk, model, message)
        }
        Start::Lesson(lesson) => {
            let message = listed(desk);
            dispatch(desk, model, message);
            let message = Message::Opened(desk.open(lesson));
            dispatch(desk, model, message)
        }
    };
}

/// The loop.
fn converse(
    desk: &mut dyn Desk,
    model: &mut Model,
    guard: &mut Guard,
    signals: &Signals,
) -> std::io::Result<()> {
    let mut stale = true;
    while !signals.asked_to_stop() {
        if signals.asked_to_pause() {
            guard.pause(signals)?;
        }
        // Whoever stopped the program may have changed the terminal meanwhile.
        if signals.goes_on() {
            let (columns, rows) = guard.take_again()?;
            dispatch(desk, model, Message::Resized(columns, rows));
            stale = true;
        }
        if stale {
            guard.terminal.draw(|frame| view::draw(model, frame))?;
            stale = false;
        }
        if !event::poll(PATIENCE)? {
            continue;
        }
        for message in waiting(guard)? {
            match dispatch(desk, model, message) {
                Next::On => {}
                Next::Redraw => {
                    guard.fit()?;
                }
                Next::Pause => signals.pause(),
                Next::Leave => return Ok(()),
            }
            stale = true;
        }
    }
    Ok(())
}

/// What waits to be taken, at least one event; characters that wait together are one message.
fn waiting(guard: &mut Guard) -> std::io::Result<Vec<Message>> {
    let mut messages = Vec::new();
    for _ in 0..MOST_AT_ONCE {
        match event::read()? {
            Event::Key(key) => messages.extend(keys::message(key)),
            Event::Paste(text) => messages.push(Message::Pasted(text)),
            Event::Resize(..) => {
                let (columns, rows) = guard.fit()?;
                messages.push(Message::Resized(columns, rows));
            }
            _ => {}
        }
        if !event::poll(Duration::ZERO)? {
            break;
        }
    }
    Ok(together(messages))
}

/// Messages with characters that follow each other made one.
fn together(messages: Vec<Message>) -> Vec<Message> {
    let mut joined: Vec<Message> = Vec::new();
    for message in messages {
        match (joined.last_mut(), message) {
            (Some(Message::TypedTogether(text)), Message::Typed(c)) => text.push(c),
            (_, Message::Typed(c)) => joined.push(Message::TypedTogether(c.to_string())),
            (_, message) => joined.push(message),
        }
    }
    joined
}

/// What the loop does after a message.
enum Next {
    /// It goes on.
    On,
    /// It draws every cell anew.
    Redraw,
    /// It stops until the system lets it go on.
    Pause,
    /// It ends.
    Leave,
}

/// Lets a message change the model, and runs every effect that follows.
fn dispatch(desk: &mut dyn Desk, model: &mut Model, message: Message) -> Next {
    let mut next = Some(message);
    model.kept = desk.has_kept_all();
    while let Some(message) = next.take() {
        let open = model.open_problem();
        // Another problem may have been begun in another class.
        let moved = matches!(message, Message::Opened(_) | Message::Listed { .. });
        next = match update(model, message) {
            None => None,
            Some(Effect::Leave) => return Next::Leave,
            Some(Effect::Redraw) => return Next::Redraw,
            Some(Effect::Suspend) => return Next::Pause,
            Some(Effect::Enter(line)) => {
                let notes = desk.entered(&line);
                Some(Message::Entered { line, notes })
            }
            Some(Effect::Judge(turn)) => {
                let notes = desk.judged(&turn);
                model.people = desk.people();
                Some(Message::Judged { notes })
            }
            Some(Effect::Settle(settings)) => {
                let notes = desk.settle(settings);
                model.settle(desk);
                Some(Message::Settled { notes })
            }
            Some(Effect::Call(typed)) => {
                let said = desk.call(&typed, open.is_some());
                let stays = open.is_some() || said.is_err();
                update(model, Message::Called(said));
                (!stays).then(|| listed(desk))
            }
            Some(Effect::Earlier) => Some(Message::Earlier(desk.earlier())),
            Some(Effect::LookAgain(place)) => Some(Message::Again(desk.look_again(place))),
            Some(Effect::OpenOwn(problem)) => Some(Message::Opened(desk.open_own(&problem))),
            Some(Effect::Keep(problem, name)) => {
                Some(Message::KeptOwn(desk.keep_problem(&problem, &name)))
            }
            Some(Effect::Open(Choice::Lesson(lesson, fading))) => {
                Some(opened(desk, lesson, fading))
            }
            Some(Effect::Open(Choice::Older(place))) => {
                Some(Message::Opened(desk.resume_older(place)))
            }
            Some(Effect::Open(Choice::Unfinished)) => Some(Message::Opened(desk.resume())),
            Some(Effect::PutAway) => {
                desk.decline();
                Some(listed(desk))
            }
            Some(Effect::Again(lesson, fading)) => {
                if let Some(finished) = open {
                    desk.closed(finished);
                }
                Some(opened(desk, lesson, fading))
            }
            Some(Effect::List) => {
                if let Some(finished) = open {
                    desk.closed(finished);
                }
                Some(listed(desk))
            }
        };
        model.kept = desk.has_kept_all();
        model.lesson = desk.open_lesson();
        model.people = desk.people();
        if moved {
            model.fixed = desk.fixed();
        }
        model.settle(desk);
    }
    Next::On
}

/// A fresh problem of a lesson, taken so.
fn opened(desk: &mut dyn Desk, lesson: usize, fading: Fading) -> Message {
    let opening = desk.open(lesson);
    let words = desk.words();
    Message::Opened(opening.map(|opening| taken(opening, fading, &words)))
}

fn listed(desk: &mut dyn Desk) -> Message {
    Message::Listed {
        lessons: desk.lessons(),
        unfinished: desk.unfinished(),
        older: desk.older_unfinished(),
    }
}
