//! A problem of the learner's own: the question, what is typed or chosen, and what becomes of it.

use super::keys::Command;
use super::message::Effect;
use super::model::{Model, Over, Page};
use super::{editing, view};
use crate::builder::{Builder, Question, Standing};
use crate::problem::Problem;
use crate::text::{Manner, Prose, Words};
use tui_input::Input;

/// The most characters of an answer: more than any may have, so that it can be told so.
const LONGEST: usize = 80;

/// A problem that is being built.
pub(super) struct Building {
    /// What was answered so far.
    pub(super) builder: Builder,
    /// The answer being typed.
    pub(super) input: Input,
    /// True while it is an answer from before, which typing replaces.
    pub(super) ready: bool,
    /// The choice that is marked, from 0.
    pub(super) chosen: usize,
    /// Answers taken back, the first of them last: each stands ready where its question is asked
    /// again.
    again: Vec<(Question, String)>,
    /// What is wrong with what was typed.
    pub(super) fault: Option<Prose>,
    /// True while the name of a file is asked.
    pub(super) naming: bool,
    /// True if it was kept as a file just as it is.
    pub(super) kept: bool,
    /// True once it was opened to be worked at.
    pub(super) opened: bool,
    /// The first row shown beside the drawing; `None` follows the answers, or begins the statement.
    pub(super) top: Option<usize>,
}

/// What is asked now.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Wanted {
    /// One of so many choices.
    Choice(usize),
    /// A line.
    Line,
    /// Nothing: it is whole, and cannot be worked.
    Change,
}

impl Building {
    /// Nothing answered yet. A problem file keeps the words of the catalogue as they stand there.
    pub(super) fn new(words: &Words) -> Building {
        Building {
            builder: Builder::new(words.in_manner(Manner::default())),
            input: Input::default(),
            ready: false,
            chosen: 0,
            again: Vec::new(),
            fault: None,
            naming: false,
            kept: false,
            opened: false,
            top: None,
        }
    }

    /// True if leaving the program would lose answers.
    pub(super) fn is_at_risk(&self) -> bool {
        self.builder.answered() > 0 && !self.kept
    }

    /// The whole problem, if it can be worked.
    fn sound(&self) -> Option<Problem> {
        let whole = self.builder.question().is_none();
        let sound = whole && self.builder.standing() == Standing::Sound;
        self.builder.problem().filter(|_| sound)
    }

    /// What is asked now.
    pub(super) fn wanted(&self) -> Wanted {
        if self.naming {
            return Wanted::Line;
        }
        match self.builder.asked() {
            Some(asked) if asked.choices.is_empty() => Wanted::Line,
            Some(asked) => Wanted::Choice(asked.choices.len()),
            None if self.builder.standing() == Standing::Sound => {
                Wanted::Choice(view::AT_END.len())
            }
            None => Wanted::Change,
        }
    }

    /// Gets ready for the next question: with what was answered to it before, if it was.
    fn ask(&mut self) {
        self.fault = None;
        self.top = None;
        self.chosen = 0;
        self.ready = false;
        self.input = Input::default();
        let Some(question) = self.builder.question() else {
            return;
        };
        let before = self.again.iter().rposition(|(asked, _)| *asked == question);
        let Some(place) = before else {
            return;
        };
        self.again.truncate(place + 1);
        let typed = self.again[place].1.clone();
        match self.wanted() {
            Wanted::Choice(_) => self.chosen = typed.parse().unwrap_or(1_usize).saturating_sub(1),
            _ => self.stand_ready(typed),
        }
    }

    fn stand_ready(&mut self, typed: String) {
        self.ready = !typed.is_empty();
        self.input = Input::new(typed);
    }

    /// Takes the last answer back. It stands ready to be changed.
    fn back(&mut self) {
        if let Some(last) = self.builder.back() {
            self.again.push(last);
            self.kept = false;
            self.opened = false;
            self.ask();
        }
    }

    fn answer(&mut self, typed: &str) {
        let asked = self.builder.question();
        match self.builder.answer(typed) {
            Ok(_) => {
                let before = self.again.last().map(|(question, _)| *question);
                if before.is_some() && before == asked {
                    self.again.pop();
                }
                self.ask();
            }
            Err(fault) => self.fault = Some(fault),
        }
    }
}

/// Brings the page: what was begun before, or the first question.
pub(super) fn open(model: &mut Model) {
    let begun = model.draft.take();
    let page = begun.unwrap_or_else(|| Box::new(Building::new(&model.words)));
    model.notes.clear();
    model.page = Page::Building(page);
}

/// Puts what was answered aside when another page takes its place.
pub(super) fn put_aside(model: &mut Model) {
    if !matches!(&model.page, Page::Building(page) if page.builder.answered() > 0) {
        return;
    }
    let page = std::mem::replace(&mut model.page, Page::Menu(super::model::Menu::default()));
    if let Page::Building(mut page) = page {
        page.naming = false;
        page.fault = None;
        model.draft = Some(page);
    }
}

/// A key on this page.
pub(super) fn pressed(model: &mut Model, command: Command) -> Option<Effect> {
    if command == Command::Lessons {
        return Some(Effect::List);
    }
    let up = command == Command::PageUp;
    if up || command == Command::PageDown {
        scroll(model, up);
        return None;
    }
    if command == Command::Enter {
        return entered(model);
    }
    let Page::Building(page) = &mut model.page else {
        return None;
    };
    match (command, page.wanted()) {
        (Command::StageBack, _) if !page.naming => {
            page.back();
            model.notes.clear();
        }
        (Command::Leave, _) => page.naming = false,
        (Command::Up, Wanted::Choice(_)) => page.chosen = page.chosen.saturating_sub(1),
        (Command::Down, Wanted::Choice(count)) => page.chosen = (page.chosen + 1).min(count - 1),
        (command, Wanted::Line) => {
            if let Some(request) = editing::request(command) {
                page.ready = false;
                page.input.handle(request);
            }
        }
        _ => {}
    }
    None
}

fn scroll(model: &mut Model, up: bool) {
    let Page::Building(page) = &model.page else {
        return;
    };
    let top = view::build_scrolled(model, page, up);
    if let Page::Building(page) = &mut model.page {
        page.top = top;
    }
}

/// Characters that were typed: into the line, or the number of a choice.
pub(super) fn typed(model: &mut Model, text: &str) {
    let Page::Building(page) = &mut model.page else {
        return;
    };
    match page.wanted() {
        Wanted::Line => {
            if std::mem::take(&mut page.ready) {
                page.input = Input::default();
            }
            page.input = editing::inserted(&page.input, text, LONGEST).0;
        }
        Wanted::Choice(count) => {
            let digits = text.chars().filter_map(|c| c.to_digit(10));
            let places = digits.filter_map(|digit| usize::try_from(digit).ok()?.checked_sub(1));
            let mut fitting = places.filter(|place| *place < count);
            if let Some(place) = fitting.next_back() {
                page.chosen = place;
            }
        }
        Wanted::Change => {}
    }
}

fn entered(model: &mut Model) -> Option<Effect> {
    let backwards = model.words.word("build.back");
    let Page::Building(page) = &mut model.page else {
        return None;
    };
    let typed = page.input.value().trim().to_owned();
    if page.naming {
        let problem = Box::new(page.sound()?);
        return Some(Effect::Keep(problem, typed));
    }
    model.notes.clear();
    let asked = page.builder.question().is_some();
    match page.wanted() {
        Wanted::Choice(_) if asked => page.answer(&(page.chosen + 1).to_string()),
        Wanted::Choice(_) if page.chosen == 0 => {
            page.opened = true;
            return Some(Effect::OpenOwn(Box::new(page.sound()?)));
        }
        Wanted::Choice(_) => {
            page.naming = true;
            page.fault = None;
            let noun = page
                .builder
                .listed()
                .next()
                .map(|listed| listed.told.clone());
            page.stand_ready(noun.unwrap_or_default());
        }
        Wanted::Line if typed == "?" => {
            page.input = Input::default();
            model.over = Over::Help(0);
        }
        Wanted::Line
            if backwards
                .split(", ")
                .any(|word| typed.eq_ignore_ascii_case(word)) =>
        {
            page.back();
        }
        Wanted::Line => page.answer(&typed),
        Wanted::Change => {}
    }
    None
}

/// What the desk says to the name of a file. One that cannot be taken is asked for again.
pub(super) fn kept(model: &mut Model, said: Result<Prose, Prose>) {
    let Page::Building(page) = &mut model.page else {
        return;
    };
    page.ready = false;
    match said {
        Ok(said) => {
            page.naming = false;
            page.fault = None;
            page.chosen = 0;
            page.kept = true;
            model.notes = vec![said];
        }
        Err(fault) => page.fault = Some(fault),
    }
}
