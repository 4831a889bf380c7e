//! What the learner chooses for the display, and the question how a slope looks best.

use super::keys::Command;
use super::message::Effect;
use super::model::{Model, Over, Page};
use crate::practice::{Desk, choices, choose, choose_next, shown};
use crate::problem::Tilt;
use crate::text::{Manner, Settings, Slope, Symbols};

impl Model {
    /// Shows everything as it was chosen.
    pub(super) fn settle(&mut self, desk: &dyn Desk) {
        let settings = desk.settings();
        if settings == self.settings {
            return;
        }
        self.settings = settings;
        // The lists of the catalogue are read as they stand there.
        let words = desk.words();
        if words.language() != self.words.language() {
            self.fixed = desk.fixed();
            if let Page::Menu(menu) = &mut self.page {
                menu.lessons = desk.lessons();
            }
        }
        self.manner = Manner::of(settings, &words);
        self.words = words.in_manner(self.manner.clone());
        self.theme.unicode = match settings.symbols {
            Symbols::Found => self.unicode_found,
            Symbols::Unicode => true,
            Symbols::Ascii => false,
        };
        if let Page::Again(looking) = &mut self.page
            && let Some(replayed) = &mut looking.open
        {
            replayed.settle(self.manner.clone());
        }
        if let Page::Working(working) = &mut self.page {
            working.manner = self.manner.clone();
            working.view = shown(working.session.view(), &self.manner);
            working.read();
        }
    }

    /// True if slopes are drawn as lines of dots.
    pub(super) fn draws_lines(&self) -> bool {
        self.theme.unicode && self.settings.slope != Slope::Characters
    }

    /// Asks how a slope looks best, once, at the first body that is tilted.
    pub(super) fn ask_for_slope(&mut self) {
        let Page::Working(working) = &self.page else {
            return;
        };
        let view = &working.view;
        let tilted = match &view.sheet {
            Some(sheet) => sheet.is_tilted(),
            None => working.session.problem().body().tilt != Tilt::Level,
        };
        let drawn = view.scene.is_empty() || view.sheet.is_some();
        let unasked = self.settings.slope == Slope::Unasked && !self.slope_asked;
        if drawn && tilted && unasked && self.theme.unicode && self.asks_for_slope {
            self.slope_asked = true;
            self.over = Over::Slope;
        }
    }
}

/// A key on the page of the settings.
pub(super) fn pressed(model: &mut Model, row: usize, command: Command) -> Option<Effect> {
    let all = choices(model.settings);
    let last = all.len() - 1;
    let taken = all[row.min(last)].taken;
    let settings = match command {
        Command::Up => {
            model.over = Over::Settings(row.saturating_sub(1));
            return None;
        }
        Command::Down => {
            model.over = Over::Settings((row + 1).min(last));
            return None;
        }
        Command::Left => choose(model.settings, row, taken.saturating_sub(1)),
        Command::Right => choose(model.settings, row, taken + 1),
        Command::Enter => choose_next(model.settings, row),
        Command::Leave | Command::Settings => {
            model.over = Over::Nothing;
            return None;
        }
        _ => return None,
    };
    (settings != model.settings).then_some(Effect::Settle(settings))
}

/// A character on that page: a number takes the next value of its row, a blank that of the row
/// that is chosen.
pub(super) fn typed(model: &mut Model, row: usize, c: char) -> Option<Effect> {
    let number = c.to_digit(10).and_then(|digit| usize::try_from(digit).ok());
    let row = match (c, number.and_then(|number| number.checked_sub(1))) {
        (' ', _) => row,
        (_, Some(place)) if place < choices(model.settings).len() => place,
        _ => return None,
    };
    model.over = Over::Settings(row);
    Some(Effect::Settle(choose_next(model.settings, row)))
}

/// A key, or a number as one, where it is asked how a slope looks best.
pub(super) fn slope(model: &mut Model, chosen: Option<Slope>) -> Option<Effect> {
    model.over = Over::Nothing;
    chosen.map(|slope| {
        Effect::Settle(Settings {
            slope,
            ..model.settings
        })
    })
}
