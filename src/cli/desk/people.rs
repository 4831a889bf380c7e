//! Who is at work: the name is asked once there is something to keep, and somebody else may sit
//! down.

use super::JournalDesk;
use crate::practice::{Opening, People};
use crate::store::{Doing, Learner, LearnerName, StoreTrouble};
use crate::text::{Prose, Settings, Slot, Words};

/// Who is at work, and who else is known.
#[derive(Default)]
pub(super) struct Seat {
    pub(super) people: People,
    /// The others, in the order of [`People::others`].
    others: Vec<Learner>,
    /// True once the learner was asked and gave no name: none is asked for again.
    pub(super) settled: bool,
    /// What the learner at work has chosen for the display.
    pub(super) settings: Settings,
}

impl JournalDesk {
    /// The learner at work chooses for the display.
    pub(super) fn settled(&mut self, settings: Settings) -> Vec<Prose> {
        // Whoever chooses a language does not want the one of the start any longer.
        if settings.language != self.seat.settings.language {
            self.asked = None;
        }
        self.seat.settings = settings;
        self.speak();
        let Some((store, learner)) = &self.store else {
            return Vec::new();
        };
        match store.keep_settings(learner, settings) {
            Ok(()) => Vec::new(),
            Err(trouble) => vec![trouble.say(&self.words)],
        }
    }

    /// Opens a problem that was found before it was known who is at work, in her language.
    pub(in crate::cli) fn opening_found(&mut self, found: super::Found) -> Result<Opening, Prose> {
        let found = self.library.told_in(found, self.words.language());
        self.opening(found)
    }

    /// Speaks the language of this start, else of the learner at work, else of the surroundings.
    fn speak(&mut self) {
        let chosen = self.asked.or(self.seat.settings.language);
        let language = chosen.unwrap_or(self.found);
        if language != self.words.language() {
            self.words = Words::of(language);
        }
    }

    /// Reads what the learner at work has chosen; a file that cannot be read is told of once.
    fn read_settings(&mut self) {
        let Some((store, learner)) = &self.store else {
            return;
        };
        let (settings, unread) = store.settings(learner);
        self.seat.settings = settings.unwrap_or(self.library.class.display);
        self.speak();
        let note = unread.map(|unread| unread.say(&self.words));
        if let Some(note) = note.filter(|note| self.noted.insert(note.to_string())) {
            self.notes.push(note);
        }
    }

    /// Looks who is known in the saves folder, and what the learner at work has chosen.
    pub(super) fn look_around(&mut self) {
        self.read_settings();
        let Some((store, learner)) = &self.store else {
            return;
        };
        // Best effort: who cannot be listed can still be named.
        let known = store.learners().unwrap_or_default().into_iter();
        self.seat.people.name = learner.name().map(LearnerName::shown);
        self.seat.others = known
            .filter(|known| known.id() != learner.id() && known.name().is_some())
            .collect();
        self.seat.people.others = self.seat.others.iter().map(shown).collect();
    }

    /// There is something to keep: a learner without a name is asked for one, once.
    pub(super) fn ask_for_name(&mut self) {
        let seat = &mut self.seat;
        seat.people.ask = seat.people.name.is_none() && !seat.settled;
    }

    /// The learner says who is at work.
    pub(super) fn called(&mut self, typed: &str, at_problem: bool) -> Result<Prose, Prose> {
        self.seat.settled |= self.seat.people.ask;
        self.seat.people.ask = false;
        let typed = typed.trim();
        let Some((_, learner)) = &self.store else {
            return Err(self.words.say("people.nowhere", &[]));
        };
        if typed.is_empty() {
            return Ok(Prose::default());
        }
        let unnamed = learner.name().is_none();
        let known = self.known(typed)?;
        match (known, unnamed, at_problem) {
            (Known::AtWork, ..) => {}
            (Known::Other(other), true, _) => self.take_over(other)?,
            (Known::Other(other), false, true) => {
                let slots = [("name", Slot::Word(shown(&other)))];
                return Err(self.words.say("people.at-list", &slots));
            }
            (Known::Other(other), false, false) => self.sit_down(other)?,
            (Known::New(name), true, _) | (Known::New(name), false, true) => self.rename(&name)?,
            (Known::New(name), false, false) => self.welcome(&name)?,
        }
        self.look_around();
        let name = self.seat.people.name.clone().unwrap_or_default();
        Ok(self
            .words
            .say("people.called", &[("name", Slot::Word(name))]))
    }

    /// Whom a number or a name means. A name that is known is that learner, however it is spelt.
    fn known(&self, typed: &str) -> Result<Known, Prose> {
        let others = &self.seat.others;
        if let Ok(number) = typed.parse::<usize>() {
            let other = number.checked_sub(1).and_then(|place| others.get(place));
            let other = other.ok_or_else(|| self.words.say("people.no-number", &[]))?;
            return Ok(Known::Other(other.clone()));
        }
        let name = LearnerName::new(typed).map_err(|trouble| trouble.say(&self.words))?;
        let same = |learner: &Learner| {
            let known = learner.name().map(|name| name.as_str().to_lowercase());
            known.is_some_and(|known| known == name.as_str().to_lowercase())
        };
        Ok(match others.iter().find(|other| same(other)) {
            Some(other) => Known::Other(other.clone()),
            None if self.store.as_ref().is_some_and(|(_, now)| same(now)) => Known::AtWork,
            None => Known::New(name),
        })
    }

    /// The learner at work gets a name, or another one.
    fn rename(&mut self, name: &LearnerName) -> Result<(), Prose> {
        if let Some((store, learner)) = &mut self.store {
            let named = store.name_learner(learner, name, self.sitting.as_mut());
            *learner = named.map_err(|trouble| trouble.say(&self.words))?;
        }
        Ok(())
    }

    /// What the learner without a name has entered goes to somebody known, who is at work now.
    fn take_over(&mut self, other: Learner) -> Result<(), Prose> {
        if let Some((store, learner)) = &mut self.store {
            let moved = store.hand_over(learner, &other, self.sitting.as_mut());
            moved.map_err(|trouble| trouble.say(&self.words))?;
            *learner = other;
        }
        if self.sitting.is_none() {
            self.look_for_unfinished();
        }
        Ok(())
    }

    /// Somebody new sits down.
    fn welcome(&mut self, name: &LearnerName) -> Result<(), Prose> {
        let Some((store, _)) = &self.store else {
            return Ok(());
        };
        let added = store.add_learner(name).map_err(|trouble| StoreTrouble {
            doing: Doing::NameLearner,
            ..trouble
        });
        let added = added.map_err(|trouble| trouble.say(&self.words))?;
        self.sit_down(added)
    }

    /// Somebody else sits down: the sitting of the learner who was at work ends.
    fn sit_down(&mut self, other: Learner) -> Result<(), Prose> {
        if let Some(sitting) = &mut self.sitting
            && sitting.retry().is_err()
        {
            return Err(self.words.say("people.unsaved", &[]));
        }
        self.sitting = None;
        self.current = None;
        self.last = None;
        self.resume = None;
        self.older.clear();
        if let Some((_, learner)) = &mut self.store {
            *learner = other;
        }
        self.look_for_unfinished();
        Ok(())
    }
}

/// Whom somebody means by what was typed.
enum Known {
    /// The learner at work.
    AtWork,
    /// Somebody else who is known.
    Other(Learner),
    /// Nobody known.
    New(LearnerName),
}

fn shown(learner: &Learner) -> String {
    learner.name().map(LearnerName::shown).unwrap_or_default()
}
