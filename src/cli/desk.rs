//! The learner's record behind the tutor: every line is on disk before it is judged.

use super::Trouble;
use super::class;
use super::library::{Found, Library, fresh_seed};
use crate::lesson::{ProblemFile, parse_problem_file, write_problem, write_system};
use crate::practice::{Again, Desk, Earlier, LessonChoice, Opening, People, Resumable};
use crate::problem::Problem;
use crate::record::{
    Closed, Ending, Entry, LessonWork, Line, Opened, Origin, RecordId, Resume, Verdict,
    confirmed_told,
};
use crate::session::{Course, Turn};
use crate::store::{Doing, Flush, Learner, Sitting, Store, now};
use crate::system::System;
use crate::text::{Language, Prose, Settings, Words};
use std::collections::{BTreeMap, BTreeSet};
use std::path::Path;

mod again;
mod own;
#[cfg(test)]
#[allow(clippy::unwrap_used)]
mod tests;

mod past;
mod people;

use past::resumable;
use people::Seat;

/// The most problems offered beside the latest that was left.
const MOST_OLDER: usize = 5;

/// How many draws are tried for a problem other than the last.
const MOST_DRAWS: usize = 20;

/// The problem that is open, as the journal knows it.
struct Current {
    problem_json: String,
    origin: Option<Origin>,
    /// How often the learner had confirmed each mistake when it was opened first.
    confirmed: BTreeMap<String, u32>,
    /// What the class asked of answers then, as the journal has it.
    asked: BTreeMap<String, String>,
    /// The record that opened it, once it is written.
    opened: Option<RecordId>,
    /// The record of an earlier sitting that this one takes up.
    continues: Option<RecordId>,
    /// The line that waits for its verdict.
    line: Option<RecordId>,
    /// True once a line of it could not be recorded: lines after a gap would not bring the
    /// session back, so none is recorded.
    unrecorded: bool,
}

impl Current {
    /// A problem of which nothing is written yet.
    fn new(
        problem_json: String,
        (origin, continues): (Option<Origin>, Option<RecordId>),
        (confirmed, asked): (BTreeMap<String, u32>, BTreeMap<String, String>),
    ) -> Current {
        Current {
            problem_json,
            origin,
            confirmed,
            asked,
            opened: None,
            continues,
            line: None,
            unrecorded: false,
        }
    }
}

/// The options under which a problem goes: they stay as they were when it was begun.
fn options_of(current: &Current) -> BTreeMap<String, String> {
    let mut options = current.asked.clone();
    options.extend(confirmed_told(&current.confirmed));
    options
}

/// Lessons and records for the screens.
pub(super) struct JournalDesk {
    library: Library,
    words: Words,
    /// The language of the surroundings.
    found: Language,
    /// The language asked for at this start; it counts until the learner chooses another.
    asked: Option<Language>,
    store: Option<(Store, Learner)>,
    sitting: Option<Sitting>,
    current: Option<Current>,
    resume: Option<Resume>,
    /// Problems left before that one, the latest first.
    older: Vec<Resume>,
    /// The problems that were listed to be looked at again.
    earlier: Vec<Resume>,
    /// How often the learner has confirmed each mistake, over all that could be read.
    confirmed: BTreeMap<String, u32>,
    /// What was done at each lesson, by its id.
    work: BTreeMap<String, LessonWork>,
    /// Who is at work, and who else is known.
    seat: Seat,
    notes: Vec<Prose>,
    /// Every note about the files that was given, so that none is given twice.
    noted: BTreeSet<String>,
    told_of_trouble: bool,
    /// True once a problem of this sitting went unrecorded.
    lost: bool,
    /// True from a start at which the folder could be opened and not written, until a line is.
    blocked: bool,
    /// The seed of the next problem chosen from the list; none for numbers by chance.
    next_seed: Option<u64>,
    /// The problem that was opened last: a fresh one is another.
    last: Option<String>,
}

impl JournalDesk {
    /// A desk over a saves folder. If it cannot be used, the learner is told and works on.
    pub(super) fn open(
        library: Library,
        saves: &Path,
        words: &Words,
        asked: Option<Language>,
    ) -> JournalDesk {
        let mut desk = JournalDesk {
            library,
            words: words.clone(),
            found: words.language(),
            asked,
            store: None,
            sitting: None,
            current: None,
            resume: None,
            older: Vec::new(),
            earlier: Vec::new(),
            confirmed: BTreeMap::new(),
            work: BTreeMap::new(),
            seat: Seat::default(),
            notes: Vec::new(),
            noted: BTreeSet::new(),
            told_of_trouble: false,
            lost: false,
            blocked: false,
            next_seed: None,
            last: None,
        };
        let opened = Store::open(saves).and_then(|store| {
            let learner = store.latest_learner()?;
            Ok((store, learner))
        });
        match opened {
            Ok((store, learner)) => {
                // Nobody should learn at the first line that nothing can be kept here.
                if let Err(trouble) = store.try_journal(&learner, &now()) {
                    desk.blocked = true;
                    // A full disk may have room by then: that is told with the line itself.
                    if trouble.doing == Doing::StartJournal {
                        desk.told_of_trouble = true;
                        desk.notes.push(trouble.say(words));
                    }
                }
                if store.is_in_use(&learner) {
                    desk.note_others();
                }
                desk.store = Some((store, learner));
            }
            Err(trouble) => desk.notes.push(trouble.say(words)),
        }
        desk.look_around();
        desk.look_for_unfinished();
        desk
    }

    /// Draws the problems that are chosen from the list from this seed on, not from chance.
    pub(super) fn draw_from(&mut self, seed: Option<u64>) {
        self.next_seed = seed;
    }

    /// The next draw of a lesson.
    fn fresh(&mut self, lesson: usize) -> Result<Found, Prose> {
        let seed = self.next_seed.unwrap_or_else(fresh_seed);
        self.next_seed = self.next_seed.map(|seed| seed.wrapping_add(1));
        let drawn = self.library.drawn(lesson, seed, &self.words);
        drawn.map_err(|trouble| match trouble {
            Trouble::Input(lines) => Prose::plain(lines.join(" ")),
            _ => self.words.say("cli.no-lesson", &[]),
        })
    }

    /// What the learner should be told before anything else.
    pub(super) fn take_notes(&mut self) -> Vec<Prose> {
        std::mem::take(&mut self.notes)
    }

    /// Says, once, that another program is at work for the same learner.
    fn note_others(&mut self) {
        let note = self.words.say("store.note.in_use", &[]);
        if self.noted.insert(note.to_string()) {
            self.notes.push(note);
        }
    }

    fn look_for_unfinished(&mut self) {
        let Some((store, learner)) = &self.store else {
            return;
        };
        let notes = match store.unfinished(learner) {
            Ok(found) => {
                let mut notes: Vec<Prose> = found
                    .notes
                    .iter()
                    .map(|note| note.say(&self.words))
                    .collect();
                self.resume = found.resume;
                self.confirmed = found.confirmed;
                self.work = found.work;
                let readable = |left: &Resume| parse_problem_file(&left.problem_json).is_ok();
                let older = found.older.into_iter().filter(readable);
                self.older = older.take(MOST_OLDER).collect();
                // A journal from a newer version may hold a problem that this one cannot read.
                if let Some(resume) = &self.resume
                    && parse_problem_file(&resume.problem_json).is_err()
                {
                    self.resume = None;
                    notes.push(self.words.say("cli.unread-problem", &[]));
                }
                notes
            }
            Err(trouble) => vec![trouble.say(&self.words)],
        };
        for note in notes {
            if self.noted.insert(note.to_string()) {
                self.notes.push(note);
            }
        }
    }

    /// Takes up a problem that was left, if the one that was found is that by its code.
    pub(super) fn left(&mut self, found: &Found) -> Option<Result<Opening, Prose>> {
        let code = &found.origin.as_ref()?.code;
        let is_it = |left: &Resume| left.code() == Some(code.as_str());
        if self.resume.as_ref().is_some_and(is_it) {
            return Some(self.resume());
        }
        let place = self.older.iter().position(is_it)?;
        Some(self.resume_older(place))
    }

    /// Opens a found problem.
    pub(super) fn opening(&mut self, found: Found) -> Result<Opening, Prose> {
        let problem_json = write_problem(&found.problem);
        let words = self.words.clone();
        let mut session = self.started(ProblemFile::Guided(found.problem), found.sister, words)?;
        session.lean(&self.confirmed);
        session.ask_of_answers(self.library.class.asking);
        self.last = Some(problem_json.clone());
        let confirmed = self.confirmed.clone();
        let options = (
            confirmed,
            class::told(&self.library.class, self.words.language()),
        );
        self.current = Some(Current::new(problem_json, (found.origin, None), options));
        Ok(Opening {
            session: Box::new(session),
            resumed: false,
            whole: true,
            first: None,
            notes: self.take_notes(),
        })
    }

    /// Opens a problem of bodies in general, with its lines if it was left.
    pub(super) fn opening_general(&mut self, system: &System) -> Result<Opening, Prose> {
        let problem_json = write_system(system);
        let is_it = |left: &Resume| left.problem_json == problem_json;
        if self.resume.as_ref().is_some_and(is_it) {
            return self.resume();
        }
        if let Some(place) = self.older.iter().position(is_it) {
            return self.resume_older(place);
        }
        let words = self.words.clone();
        let mut session = self.started(ProblemFile::General(system.clone()), None, words)?;
        session.lean(&self.confirmed);
        session.ask_of_answers(self.library.class.asking);
        let confirmed = self.confirmed.clone();
        let options = (
            confirmed,
            class::told(&self.library.class, self.words.language()),
        );
        self.current = Some(Current::new(problem_json, (None, None), options));
        Ok(Opening {
            session: Box::new(session),
            resumed: false,
            whole: true,
            first: None,
            notes: self.take_notes(),
        })
    }

    /// The sitting, begun at the first line.
    fn sitting(&mut self) -> Result<Option<&mut Sitting>, Prose> {
        if self.sitting.is_none()
            && let Some((store, learner)) = &self.store
        {
            let begun = store.begin_sitting(learner, &now(), Flush::ToDisk);
            let sitting = begun.map_err(|trouble| trouble.say(&self.words))?;
            if sitting.joined_others() {
                self.note_others();
            }
            self.sitting = Some(sitting);
        }
        Ok(self.sitting.as_mut())
    }

    /// Appends an entry; its record's id, and a note where it could not be written.
    fn append(&mut self, entry: Entry) -> (Option<RecordId>, Vec<Prose>) {
        let words = self.words.clone();
        let sitting = match self.sitting() {
            Ok(Some(sitting)) => sitting,
            Ok(None) => return (None, Vec::new()),
            Err(note) => return (None, self.tell_once(note)),
        };
        let record = sitting.number(&now(), entry);
        let id = record.id.clone();
        match sitting.append(record) {
            Ok(()) => {
                self.told_of_trouble = false;
                self.blocked = false;
                (Some(id), Vec::new())
            }
            Err(trouble) => (Some(id), self.tell_once(trouble.say(&words))),
        }
    }

    /// A trouble that lasts is told once.
    fn tell_once(&mut self, note: Prose) -> Vec<Prose> {
        if std::mem::replace(&mut self.told_of_trouble, true) {
            Vec::new()
        } else {
            vec![note]
        }
    }

    /// Writes down which problem is worked at, before its first line.
    fn write_opened(&mut self) -> Vec<Prose> {
        let Some(current) = self
            .current
            .as_ref()
            .filter(|current| current.opened.is_none())
        else {
            return Vec::new();
        };
        let entry = Entry::Opened(Box::new(Opened {
            problem_json: current.problem_json.clone(),
            origin: current.origin.clone(),
            options: options_of(current),
            continues: current.continues.clone(),
        }));
        let (id, notes) = self.append(entry);
        if let Some(current) = &mut self.current {
            current.opened = id;
        }
        notes
    }

    /// The record that opened the problem in this sitting.
    fn opened_id(&self) -> Option<RecordId> {
        self.current.as_ref()?.opened.clone()
    }

    fn finished(problem: RecordId) -> Entry {
        Entry::Closed(Closed {
            problem,
            ending: Ending::Finished,
        })
    }

    fn verdict(line: RecordId, turn: &Turn) -> Entry {
        Entry::Verdict(Verdict {
            line,
            truth: turn.kept.truth.clone(),
            progress: turn.kept.progress.clone(),
            mistakes: turn.kept.mistakes.clone(),
            confirmed: turn.kept.confirmed.clone(),
            hint: turn.kept.hint,
            message: turn.kept.message.clone(),
        })
    }
}

impl Desk for JournalDesk {
    fn entered(&mut self, line: &str) -> Vec<Prose> {
        // Whoever goes on without a name is not asked again in this sitting.
        self.seat.settled |= self.seat.people.ask;
        self.seat.people.ask = false;
        if self.current.as_ref().is_some_and(|now| now.unrecorded) {
            return Vec::new();
        }
        let mut notes = self.write_opened();
        let problem = self.opened_id();
        if let (Some(current), None) = (&mut self.current, &problem) {
            current.unrecorded = true;
            self.lost = true;
            return notes;
        }
        // A line that is refused for its length is kept to that length, and a mark that more stood
        // there; it is too long when it is read again.
        let text = match line.char_indices().nth(crate::session::LONGEST_LINE) {
            Some((end, _)) => format!("{}…", &line[..end]),
            None => line.to_owned(),
        };
        let (id, more) = self.append(Entry::Line(Line { problem, text }));
        if let Some(current) = &mut self.current {
            current.line = id;
        }
        notes.extend(more);
        notes.extend(self.take_notes());
        notes
    }

    fn judged(&mut self, turn: &Turn) -> Vec<Prose> {
        let line = self
            .current
            .as_mut()
            .and_then(|current| current.line.take());
        let mut notes = match line {
            Some(line) => self.append(Self::verdict(line, turn)).1,
            None => Vec::new(),
        };
        if turn.course == Course::Finished
            && let Some(problem) = self.opened_id()
        {
            notes.extend(self.append(Self::finished(problem)).1);
        }
        // Orders are no working, and what could not be written needs no name.
        if turn.line.number.is_some() && self.has_kept_all() {
            self.ask_for_name();
        }
        notes
    }

    fn lessons(&self) -> Vec<LessonChoice> {
        let lessons = &self.library.lessons;
        let language = self.words.language().tag();
        let place = |id: &String| lessons.iter().position(|lesson| lesson.id() == id);
        let now = now();
        let standing = |id: &str| self.work.get(id).map(|work| work.standing(&now));
        lessons
            .iter()
            .map(|lesson| LessonChoice {
                id: lesson.id().to_owned(),
                title: lesson.title(language).to_owned(),
                teaches: lesson.teaches(language).to_owned(),
                builds_on: lesson.builds_on().iter().filter_map(place).collect(),
                standing: standing(lesson.id()).unwrap_or_default(),
            })
            .collect()
    }

    fn people(&self) -> People {
        self.seat.people.clone()
    }

    fn settings(&self) -> Settings {
        self.seat.settings
    }

    fn words(&self) -> Words {
        self.words.clone()
    }

    fn fixed(&self) -> Vec<Prose> {
        self.set_for_class()
    }

    fn settle(&mut self, settings: Settings) -> Vec<Prose> {
        self.settled(settings)
    }

    fn call(&mut self, typed: &str, at_problem: bool) -> Result<Prose, Prose> {
        self.called(typed, at_problem)
    }

    fn open(&mut self, lesson: usize) -> Result<Opening, Prose> {
        if lesson >= self.library.lessons.len() {
            return Err(self.words.say("cli.no-lesson", &[]));
        }
        // The problem that was just worked at is not a fresh one.
        let mut found = self.fresh(lesson)?;
        for _ in 0..MOST_DRAWS {
            if self.last.as_ref() != Some(&write_problem(&found.problem)) {
                break;
            }
            found = self.fresh(lesson)?;
        }
        self.opening(found)
    }

    fn open_own(&mut self, problem: &Problem) -> Result<Opening, Prose> {
        self.open_built(problem)
    }

    fn keep_problem(&mut self, problem: &Problem, name: &str) -> Result<Prose, Prose> {
        self.keep_built(problem, name)
    }

    fn unfinished(&mut self) -> Option<Resumable> {
        self.resume.as_ref().and_then(resumable)
    }

    fn resume(&mut self) -> Result<Opening, Prose> {
        let nothing = || self.words.say("cli.nothing-left", &[]);
        let resume = self.resume.take().ok_or_else(nothing)?;
        self.take_up(resume)
    }

    fn older_unfinished(&self) -> Vec<Resumable> {
        self.older.iter().filter_map(resumable).collect()
    }

    fn resume_older(&mut self, place: usize) -> Result<Opening, Prose> {
        if place >= self.older.len() {
            return Err(self.words.say("cli.nothing-left", &[]));
        }
        let resume = self.older.remove(place);
        self.take_up(resume)
    }

    fn earlier(&mut self) -> Vec<Earlier> {
        self.list_earlier()
    }

    fn look_again(&mut self, place: usize) -> Result<Again, Prose> {
        self.looked_at(place)
    }

    fn decline(&mut self) {
        if let Some(resume) = self.resume.take() {
            let left = Entry::Closed(Closed {
                problem: resume.opened,
                ending: Ending::Left,
            });
            let troubles = self.append(left).1;
            self.notes.extend(troubles);
        }
    }

    fn open_lesson(&self) -> Option<usize> {
        let id = &self.current.as_ref()?.origin.as_ref()?.lesson;
        let lessons = &self.library.lessons;
        lessons.iter().position(|lesson| lesson.id() == id)
    }

    fn has_kept_all(&self) -> bool {
        let waiting = self.sitting.as_ref().map_or(0, Sitting::unsaved);
        self.store.is_some() && !self.lost && !self.blocked && waiting == 0
    }

    fn closed(&mut self, finished: bool) {
        // The disk may have room again. What still fails was told, and is told at the end.
        if let Some(sitting) = &mut self.sitting {
            let _ = sitting.retry();
        }
        // Leaving is no ending: the problem is offered again. An end was written with its verdict.
        if finished {
            self.current = None;
        }
        self.look_for_unfinished();
    }
}
