//! Everything the screen knows. Nothing here knows a terminal.

use super::again::Looking;
use super::building::Building;
use super::editing::Before;
use super::theme::Theme;
use crate::practice::{
    LessonChoice, Opening, People, Resumable, Standing, Tutor, next_lesson, shown,
};
use crate::session::{Course, Fading, Sign, View};
use crate::text::{Formula, Manner, Prose, Settings, Words};
use tui_input::Input;

/// Everything the screen knows.
pub(super) struct Model {
    /// The words in which it speaks.
    pub(super) words: Words,
    /// Colours and characters.
    pub(super) theme: Theme,
    /// Columns and rows of the terminal.
    pub(super) size: (u16, u16),
    /// What is shown.
    pub(super) page: Page,
    /// What lies over it.
    pub(super) over: Over,
    /// What a learner must know besides the working. They go with the next line.
    pub(super) notes: Vec<Prose>,
    /// True while everything that was entered is written down, and what is entered will be.
    pub(super) kept: bool,
    /// A line that was being typed when its problem was left for the list, with the problem's
    /// statement: it is put back when that problem is gone on with.
    pub(super) half_typed: Option<(String, String)>,
    /// A problem of the learner's own that is being built, while another page is shown.
    pub(super) draft: Option<Box<Building>>,
    /// The lesson of the open problem, by its place in the list, if it has one.
    pub(super) lesson: Option<usize>,
    /// Who is at work, and who else is known.
    pub(super) people: People,
    /// The name being typed, while it is asked.
    pub(super) name_typed: Input,
    /// What the learner has chosen for the display.
    pub(super) settings: Settings,
    /// What the teacher has set for the class.
    pub(super) fixed: Vec<Prose>,
    /// How texts are shown for that.
    pub(super) manner: Manner,
    /// True if the surroundings allow more than ASCII.
    pub(super) unicode_found: bool,
    /// True if the learner may be asked how a slope looks best.
    pub(super) asks_for_slope: bool,
    /// True once that was asked.
    pub(super) slope_asked: bool,
}

/// What is shown.
pub(super) enum Page {
    /// The list of lessons.
    Menu(Menu),
    /// A problem of the learner's own that is being built.
    Building(Box<Building>),
    /// Problems that were worked at before.
    Again(Box<Looking>),
    /// A problem.
    Working(Box<Working>),
}

/// What lies over a page.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Over {
    /// Nothing.
    Nothing,
    /// The help page, scrolled down by so many rows.
    Help(usize),
    /// The word before leaving.
    Leaving,
    /// The choice of the pivot, with one of the places chosen.
    Pivot(usize),
    /// The question who is at work.
    Naming,
    /// The page of the settings, with a row chosen.
    Settings(usize),
    /// The question how a slope looks best.
    Slope,
}

/// The list of lessons.
#[derive(Default)]
pub(super) struct Menu {
    /// All lessons.
    pub(super) lessons: Vec<LessonChoice>,
    /// What was left unfinished. It stands before the lessons.
    pub(super) unfinished: Option<Resumable>,
    /// What was left before that. It stands behind the lessons.
    pub(super) older: Vec<Resumable>,
    /// The row that is chosen.
    pub(super) chosen: usize,
    /// How a problem of the chosen lesson is taken.
    pub(super) fading: Fading,
    /// The number typed so far.
    pub(super) digits: String,
}

impl Menu {
    /// How many rows stand before the first lesson.
    pub(super) fn before(&self) -> usize {
        usize::from(self.unfinished.is_some())
    }

    /// The row to begin at: what was left unfinished, else the lesson to go on with.
    pub(super) fn start(&self) -> usize {
        match self.unfinished {
            Some(_) => 0,
            None => next_lesson(&self.lessons).unwrap_or(0),
        }
    }

    /// How many rows the list has.
    pub(super) fn rows(&self) -> usize {
        self.before() + self.lessons.len() + self.older.len() + self.own_rows()
    }

    /// The lesson that is chosen, if it is one.
    pub(super) fn lesson(&self) -> Option<&LessonChoice> {
        let place = self.chosen.checked_sub(self.before())?;
        self.lessons.get(place)
    }

    /// Chooses a row. Another one is taken as it is offered anew.
    pub(super) fn choose(&mut self, row: usize) {
        if row != self.chosen {
            self.fading = Fading::All;
        }
        self.chosen = row;
    }

    /// The row of a problem of one's own, the last, if there is one.
    pub(super) fn own(&self) -> Option<usize> {
        (self.own_rows() > 0).then(|| self.rows() - 1)
    }

    /// True if something was worked at before.
    pub(super) fn has_earlier(&self) -> bool {
        let begun = |lesson: &LessonChoice| lesson.standing != Standing::New;
        self.unfinished.is_some() || !self.older.is_empty() || self.lessons.iter().any(begun)
    }

    fn own_rows(&self) -> usize {
        usize::from(!self.lessons.is_empty())
    }
}

/// What a narrow screen shows above the question.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Pane {
    /// The diagram, with what was said about the last line.
    Diagram,
    /// The working.
    Working,
}

/// A problem that is open.
pub(super) struct Working {
    /// The session at it.
    pub(super) session: Box<dyn Tutor>,
    /// What it shows.
    pub(super) view: View,
    /// The line being typed.
    pub(super) input: Input,
    /// What it was before each change, oldest first.
    pub(super) changes: Vec<Before>,
    /// How that would be read.
    pub(super) preview: Option<Formula>,
    /// Lines entered before, oldest first.
    pub(super) history: Vec<String>,
    /// Which of them is in the input.
    pub(super) recalled: Option<usize>,
    /// Pasted lines that wait until the one in the input is entered, the next one last.
    pub(super) pasted: Vec<String>,
    /// What was being typed when the first of them was called back.
    pub(super) draft: String,
    /// What a narrow screen shows.
    pub(super) pane: Pane,
    /// The first row of the working that is shown; `None` follows the last line.
    pub(super) top: Option<usize>,
    /// The stage of the diagram; `None` follows the working.
    pub(super) stage: Option<usize>,
    /// Whether the statement is told in full, if the learner said so.
    pub(super) unfolded: Option<bool>,
    /// The first row of the statement that is shown, where not all of it has room.
    pub(super) told_from: usize,
    /// Which whole working is shown at the end, by its place.
    pub(super) way: usize,
    /// How texts are shown.
    pub(super) manner: Manner,
}

impl Working {
    /// A problem that has just been opened.
    pub(super) fn new(session: Box<dyn Tutor>, manner: Manner) -> Working {
        let view = shown(session.view(), &manner);
        let typed = view.lines.iter().filter(|line| line.sign != Sign::Shown);
        let history = typed.map(|line| line.text.clone()).collect();
        Working {
            session,
            view,
            input: Input::default(),
            changes: Vec::new(),
            preview: None,
            history,
            recalled: None,
            pasted: Vec::new(),
            draft: String::new(),
            pane: Pane::Diagram,
            top: None,
            stage: None,
            unfolded: None,
            told_from: 0,
            way: 0,
            manner,
        }
    }

    /// Puts a line in, and reads it.
    pub(super) fn set_line(&mut self, line: String) {
        self.input = self.input.clone().with_value(line);
        self.read();
    }

    /// Reads the line being typed.
    pub(super) fn read(&mut self) {
        let line = self.input.value();
        self.preview = if line.trim().is_empty() {
            None
        } else {
            let reading = self.session.preview(line);
            reading.map(|reading| reading.each(&|text| self.manner.text(text)))
        };
    }

    /// True once the last step is established.
    pub(super) fn finished(&self) -> bool {
        self.view.course == Course::Finished
    }

    /// True if the statement is told in full: until the first line of working or the first
    /// drawing of forces, or as chosen.
    pub(super) fn statement_in_full(&self) -> bool {
        let numbered = self.view.lines.iter().any(|line| line.number.is_some());
        let begun = numbered || self.view.stages.len() > 1;
        self.unfolded.unwrap_or(!begun)
    }

    /// The stage of the diagram that is shown and how many there are, both at least 1.
    pub(super) fn stage_shown(&self) -> (usize, usize) {
        let count = self.view.stages.len().max(1);
        let shown = self.stage.map_or(count, |stage| stage + 1);
        (shown.min(count), count)
    }
}

impl Model {
    /// A screen that shows an empty list, until the lessons or a problem arrive.
    pub(super) fn new(words: Words, theme: Theme, size: (u16, u16)) -> Model {
        let manner = Manner::of(Settings::default(), &words);
        Model {
            words: words.in_manner(manner.clone()),
            theme,
            size,
            page: Page::Menu(Menu::default()),
            over: Over::Nothing,
            notes: Vec::new(),
            kept: true,
            half_typed: None,
            draft: None,
            lesson: None,
            people: People::default(),
            name_typed: Input::default(),
            settings: Settings::default(),
            fixed: Vec::new(),
            manner,
            unicode_found: theme.unicode,
            asks_for_slope: false,
            slope_asked: false,
        }
    }

    /// Shows a problem.
    pub(super) fn show(&mut self, opening: Opening) {
        let mut working = Working::new(opening.session, self.manner.clone());
        if let Some((statement, line)) = self.half_typed.take()
            && statement == working.view.statement
        {
            working.set_line(line);
        }
        self.notes = opening.notes;
        // Where lines are missing, the notes say where one stands.
        if opening.resumed && opening.whole {
            let word = if working.view.lines.is_empty() {
                "screen.note.resumed-empty"
            } else {
                "screen.note.resumed"
            };
            self.notes.insert(0, self.words.say(word, &[]));
        }
        self.over = Over::Nothing;
        super::building::put_aside(self);
        self.page = Page::Working(Box::new(working));
        self.ask_for_slope();
    }

    /// True if leaving the program would lose answers to a problem that is being built.
    pub(super) fn own_at_risk(&self) -> bool {
        let open = match &self.page {
            Page::Building(page) => Some(page),
            _ => None,
        };
        let mut drafts = open.into_iter().chain(&self.draft);
        drafts.any(|page| page.is_at_risk())
    }

    /// If a problem is open: whether it is finished.
    pub(super) fn open_problem(&self) -> Option<bool> {
        match &self.page {
            Page::Working(working) => Some(working.finished()),
            Page::Menu(_) | Page::Building(_) | Page::Again(_) => None,
        }
    }

    /// The problem that is shown: at work, or looked at again.
    pub(super) fn in_sight(&self) -> Option<&Working> {
        match &self.page {
            Page::Working(working) => Some(working),
            Page::Again(looking) => looking.open.as_ref().map(|open| &open.working),
            Page::Menu(_) | Page::Building(_) => None,
        }
    }

    /// The same, to be changed.
    pub(super) fn in_sight_mut(&mut self) -> Option<&mut Working> {
        match &mut self.page {
            Page::Working(working) => Some(working),
            Page::Again(looking) => looking.open.as_mut().map(|open| &mut open.working),
            Page::Menu(_) | Page::Building(_) => None,
        }
    }

    /// True while a problem is looked at again: nothing is entered then.
    pub(super) fn is_replay(&self) -> bool {
        matches!(&self.page, Page::Again(_))
    }
}
