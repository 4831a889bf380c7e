//! Problems that were worked at before: a list by date, and one of them line by line, as it was.

use super::keys::Command;
use super::message::Effect;
use super::model::{Model, Page, Pane, Working};
use super::update;
use crate::practice::{Again, Earlier, shown};
use crate::session::View;
use crate::text::{Manner, Prose};

/// What there is to look at again.
#[derive(Default)]
pub(super) struct Looking {
    /// Every problem that was worked at, the latest first.
    pub(super) list: Vec<Earlier>,
    /// The one that is chosen.
    pub(super) chosen: usize,
    /// The one that is looked at.
    pub(super) open: Option<Replayed>,
}

/// A problem that is looked at line by line.
pub(super) struct Replayed {
    /// It as it stood after a line.
    pub(super) working: Working,
    /// It before its first line, and after each.
    views: Vec<View>,
    /// The line, from 1; 0 before the first.
    pub(super) at: usize,
}

impl Replayed {
    fn new(again: Again, manner: Manner) -> Replayed {
        let mut replayed = Replayed {
            working: Working::new(again.session, manner),
            views: again.views,
            at: 0,
        };
        replayed.go_to(1);
        replayed
    }

    /// How many lines there are.
    pub(super) fn lines(&self) -> usize {
        self.views.len().saturating_sub(1)
    }

    fn go_to(&mut self, at: usize) {
        self.at = at.min(self.lines());
        let Some(view) = self.views.get(self.at) else {
            return;
        };
        let working = &mut self.working;
        working.view = shown(view.clone(), &working.manner);
        (working.top, working.stage) = (None, None);
        working.unfolded = (self.at > 0).then_some(false);
        working.told_from = 0;
    }

    /// Shows it in another manner.
    pub(super) fn settle(&mut self, manner: Manner) {
        self.working.manner = manner;
        self.go_to(self.at);
    }
}

/// Shows the list.
pub(super) fn list(model: &mut Model, list: Vec<Earlier>) {
    if list.is_empty() {
        model.notes = vec![model.words.say("again.nothing", &[])];
        return;
    }
    model.notes.clear();
    model.page = Page::Again(Box::new(Looking {
        list,
        ..Looking::default()
    }));
}

/// Shows one of the list at its first line.
pub(super) fn open(model: &mut Model, again: Result<Again, Prose>) {
    let manner = model.manner.clone();
    let Page::Again(looking) = &mut model.page else {
        return;
    };
    match again {
        Ok(again) => {
            model.notes.clone_from(&again.notes);
            looking.open = Some(Replayed::new(again, manner));
        }
        Err(trouble) => model.notes = vec![trouble],
    }
}

/// A key at the list, or at a line.
pub(super) fn pressed(model: &mut Model, command: Command) -> Option<Effect> {
    let Page::Again(looking) = &mut model.page else {
        return None;
    };
    let Looking { list, chosen, open } = looking.as_mut();
    let Some(replayed) = open else {
        let last = list.len().saturating_sub(1);
        match command {
            Command::Up => *chosen = chosen.saturating_sub(1),
            Command::Down => *chosen = (*chosen + 1).min(last),
            Command::PageUp => *chosen = chosen.saturating_sub(10),
            Command::PageDown => *chosen = (*chosen + 10).min(last),
            Command::LineStart => *chosen = 0,
            Command::LineEnd => *chosen = last,
            Command::Enter => return Some(Effect::LookAgain(*chosen)),
            Command::Lessons | Command::Other => return Some(Effect::List),
            _ => {}
        }
        return None;
    };
    match command {
        Command::Left | Command::Up => replayed.go_to(replayed.at.saturating_sub(1)),
        Command::Right | Command::Down | Command::Enter => replayed.go_to(replayed.at + 1),
        Command::LineStart => replayed.go_to(0),
        Command::LineEnd => replayed.go_to(usize::MAX),
        Command::Lessons => {
            model.notes.clear();
            *open = None;
        }
        Command::PageUp | Command::PageDown => update::page(model, command == Command::PageUp),
        Command::Other => update::other_way(model),
        Command::Swap => {
            replayed.working.pane = match replayed.working.pane {
                Pane::Diagram => Pane::Working,
                Pane::Working => Pane::Diagram,
            }
        }
        Command::Statement | Command::StageBack | Command::StageForth => {
            update::at_problem(&mut replayed.working, command);
        }
        _ => {}
    }
    None
}
