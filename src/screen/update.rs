//! What a message changes. Pure: no terminal, no file, no clock.

use super::editing::{LONGEST_INPUT, edit, insert, keep_line, request, undo};
use super::keys::Command;
use super::message::{Choice, Effect, Message};
use super::model::{Menu, Model, Over, Page, Pane, Working};
use super::{again, building, naming, pivot, settings, view};
use crate::practice::{next_fading, shown};
use crate::session::Course;
use crate::text::{Prose, Slope, Slot, Words};

/// Changes the model, and says what the outside is asked to do.
pub(super) fn update(model: &mut Model, message: Message) -> Option<Effect> {
    match message {
        Message::Resized(columns, rows) => model.size = (columns, rows),
        Message::Listed {
            lessons,
            unfinished,
            older,
        } => list(
            model,
            Menu {
                lessons,
                unfinished,
                older,
                ..Menu::default()
            },
        ),
        Message::Opened(Ok(mut opening)) => {
            let first = opening.first.take();
            model.show(opening);
            return first.map(Effect::Enter);
        }
        Message::Opened(Err(trouble)) => model.notes = vec![trouble],
        Message::Entered { line, notes } => return judge(model, &line, notes),
        Message::Judged { notes } => {
            add_notes(model, notes);
            // A problem of one's own that was worked at is in the record now.
            model.draft.take_if(|draft| draft.opened);
            if model.people.ask && model.over == Over::Nothing {
                naming::ask(model);
            }
        }
        Message::Settled { notes } => add_notes(model, notes),
        Message::Earlier(list) => again::list(model, list),
        Message::Again(opened) => again::open(model, opened),
        Message::Called(said) => naming::called(model, said),
        Message::KeptOwn(said) => building::kept(model, said),
        Message::Pressed(command) => return pressed(model, command),
        Message::Typed(c) => return typed(model, c),
        Message::TypedTogether(text) => return typed_together(model, &text),
        Message::Pasted(text) => paste(model, &text),
    }
    None
}

fn list(model: &mut Model, mut menu: Menu) {
    menu.chosen = menu.start();
    if let Page::Working(working) = &model.page {
        model.notes.clear();
        let line = working.input.value().to_owned();
        model.half_typed = (!line.is_empty()).then(|| (working.view.statement.clone(), line));
    }
    model.over = Over::Nothing;
    if let Page::Building(_) = &model.page {
        model.notes.clear();
        building::put_aside(model);
        menu.chosen = menu.own().unwrap_or(menu.chosen);
    }
    model.page = Page::Menu(menu);
}

fn judge(model: &mut Model, line: &str, notes: Vec<Prose>) -> Option<Effect> {
    model.notes.clear();
    add_notes(model, notes);
    let Page::Working(working) = &mut model.page else {
        return None;
    };
    let turn = working.session.submit(line);
    working.view = shown(working.session.view(), &working.manner);
    working.top = None;
    working.stage = None;
    match turn.course {
        Course::Quit => model.over = Over::Leaving,
        // What there is to look back on stands below the working.
        Course::Finished => working.pane = Pane::Working,
        Course::On => next_pasted(model),
    }
    Some(Effect::Judge(Box::new(turn)))
}

/// Adds notes, each once.
fn add_notes(model: &mut Model, notes: Vec<Prose>) {
    for note in notes {
        if !model.notes.contains(&note) {
            model.notes.push(note);
        }
    }
}

fn pressed(model: &mut Model, command: Command) -> Option<Effect> {
    match command {
        Command::Redraw => return Some(Effect::Redraw),
        Command::Suspend => return Some(Effect::Suspend),
        _ => {}
    }
    match model.over {
        Over::Leaving => leaving(model, command),
        Over::Naming if !view::too_small(model.size) => naming::pressed(model, command),
        Over::Settings(row) if !view::too_small(model.size) => {
            settings::pressed(model, row, command)
        }
        Over::Pivot(place) if !view::too_small(model.size) => pivot::pressed(model, place, command),
        Over::Slope if !view::too_small(model.size) => {
            let line = (command == Command::Enter).then_some(Slope::Line);
            settings::slope(model, line)
        }
        Over::Help(row) => {
            model.over = match command {
                Command::Up => Over::Help(row.saturating_sub(1)),
                Command::Down => Over::Help(row + 1),
                Command::PageUp => Over::Help(row.saturating_sub(10)),
                Command::PageDown => Over::Help(row + 10),
                Command::LineStart => Over::Help(0),
                Command::LineEnd => Over::Help(usize::MAX),
                _ => Over::Nothing,
            };
            if let Over::Help(row) = model.over {
                model.over = Over::Help(row.min(view::help_limit(model)));
            }
            None
        }
        _ if command == Command::Leave => {
            if let Page::Building(page) = &mut model.page
                && std::mem::take(&mut page.naming)
            {
                page.fault = None;
                return None;
            }
            model.over = Over::Leaving;
            None
        }
        // Nothing that cannot be seen is changed.
        _ if view::too_small(model.size) => None,
        _ if command == Command::Help => {
            model.over = Over::Help(0);
            None
        }
        _ if command == Command::Name
            && !matches!(model.page, Page::Building(_) | Page::Again(_)) =>
        {
            naming::ask(model);
            None
        }
        _ if command == Command::Settings => {
            model.over = Over::Settings(0);
            None
        }
        _ => match model.page {
            Page::Menu(_) => in_menu(model, command),
            Page::Building(_) => building::pressed(model, command),
            Page::Again(_) => again::pressed(model, command),
            Page::Working(_) => in_working(model, command),
        },
    }
}

/// After the word before leaving: Enter or the same key again leaves, Tab goes to the lessons.
fn leaving(model: &mut Model, command: Command) -> Option<Effect> {
    model.over = Over::Nothing;
    match (command, &model.page) {
        (Command::Enter | Command::Leave, _) => Some(Effect::Leave),
        (Command::Swap | Command::Lessons, page) if !matches!(page, Page::Menu(_)) => {
            Some(Effect::List)
        }
        _ => None,
    }
}

fn in_menu(model: &mut Model, command: Command) -> Option<Effect> {
    let Page::Menu(menu) = &mut model.page else {
        return None;
    };
    let last = menu.rows().saturating_sub(1);
    menu.digits.clear();
    match command {
        Command::Up => menu.choose(menu.chosen.saturating_sub(1)),
        Command::Down => menu.choose((menu.chosen + 1).min(last)),
        Command::LineStart | Command::PageUp => menu.choose(0),
        Command::LineEnd | Command::PageDown => menu.choose(last),
        Command::Swap => {
            let standing = menu.lesson().map(|lesson| lesson.standing);
            if let Some(standing) = standing {
                menu.fading = next_fading(standing, menu.fading);
            }
        }
        Command::Delete if menu.unfinished.is_some() && menu.chosen == 0 => {
            return Some(Effect::PutAway);
        }
        Command::Other => return Some(Effect::Earlier),
        Command::Enter if menu.own() == Some(menu.chosen) => building::open(model),
        Command::Enter if menu.rows() > 0 => {
            return Some(Effect::Open(match menu.chosen.checked_sub(menu.before()) {
                Some(row) => match row.checked_sub(menu.lessons.len()) {
                    Some(place) => Choice::Older(place),
                    None => Choice::Lesson(row, menu.fading),
                },
                None => Choice::Unfinished,
            }));
        }
        _ => {}
    }
    None
}

fn in_working(model: &mut Model, command: Command) -> Option<Effect> {
    match command {
        Command::PageUp | Command::PageDown => {
            page(model, command == Command::PageUp);
        }
        Command::Enter => return enter(model),
        Command::Lessons => return Some(Effect::List),
        Command::Other => other_way(model),
        Command::Pivot => pivot::open(model),
        command => {
            if let Page::Working(working) = &mut model.page {
                at_problem(working, command);
            }
        }
    }
    None
}

pub(super) fn page(model: &mut Model, up: bool) {
    let Some(leads) = (model.in_sight()).map(|working| view::scrolled(model, working, up)) else {
        return;
    };
    let narrow = view::narrow(model.size);
    let Some(working) = model.in_sight_mut() else {
        return;
    };
    match leads {
        view::Scroll::Statement(row) => working.told_from = row,
        view::Scroll::Working(top) => {
            working.top = top;
            if narrow {
                working.pane = Pane::Working;
            }
        }
    }
}

pub(super) fn at_problem(working: &mut Working, command: Command) {
    match command {
        Command::Up => older(working),
        Command::Down => newer(working),
        Command::Left
        | Command::Right
        | Command::WordLeft
        | Command::WordRight
        | Command::LineStart
        | Command::LineEnd
        | Command::Backspace
        | Command::Delete
        | Command::CutWord
        | Command::CutBefore
        | Command::CutAfter
        | Command::PutBack => {
            if let Some(request) = request(command) {
                edit(working, request);
            }
        }
        Command::Undo => undo(working),
        Command::Swap => {
            working.pane = match working.pane {
                Pane::Diagram => Pane::Working,
                Pane::Working => Pane::Diagram,
            }
        }
        Command::Statement => {
            working.unfolded = Some(!working.statement_in_full());
            working.told_from = 0;
            working.pane = Pane::Diagram;
        }
        Command::StageBack | Command::StageForth => {
            let (shown, count) = working.stage_shown();
            let stage = if command == Command::StageBack {
                shown.saturating_sub(2)
            } else {
                shown
            };
            working.stage = (stage + 1 < count).then_some(stage);
            working.pane = Pane::Diagram;
        }
        Command::PageUp
        | Command::PageDown
        | Command::Enter
        | Command::Help
        | Command::Lessons
        | Command::Other
        | Command::Pivot
        | Command::Name
        | Command::Settings
        | Command::Leave
        | Command::Redraw
        | Command::Suspend => {}
    }
}

/// Shows the whole working another way, from its first row on.
pub(super) fn other_way(model: &mut Model) {
    let Some(working) = model.in_sight_mut() else {
        return;
    };
    if working.view.keys.len() < 2 {
        return;
    }
    working.way = (working.way + 1) % working.view.keys.len();
    working.pane = Pane::Working;
    let top = (model.in_sight()).and_then(|working| view::key_row(model, working));
    if let Some(working) = model.in_sight_mut() {
        working.top = top;
    }
}

fn older(working: &mut Working) {
    let before = working.recalled.unwrap_or(working.history.len());
    let Some(line) = before.checked_sub(1) else {
        return;
    };
    if working.recalled.is_none() {
        working.draft = working.input.value().to_owned();
        keep_line(working);
    }
    working.recalled = Some(line);
    working.set_line(working.history[line].clone());
}

fn newer(working: &mut Working) {
    let Some(line) = working.recalled else {
        return;
    };
    let next = working.history.get(line + 1).cloned();
    working.recalled = next.is_some().then_some(line + 1);
    let text = next.unwrap_or_else(|| working.draft.clone());
    working.set_line(text);
}

pub(super) fn enter(model: &mut Model) -> Option<Effect> {
    let Page::Working(working) = &mut model.page else {
        return None;
    };
    let line = working.input.value().trim().to_owned();
    // An empty line passes an estimate over.
    if line.is_empty() && working.view.estimates {
        return Some(Effect::Enter(line));
    }
    // Who empties the line that was put in wants none of those behind it.
    if line.is_empty() && !working.pasted.is_empty() {
        working.pasted.clear();
        model.notes = vec![model.words.say("screen.note.pasted-dropped", &[])];
        return None;
    }
    if line.is_empty() {
        if working.finished() {
            return Some(match model.lesson {
                Some(lesson) => Effect::Again(lesson, working.view.fading.next()),
                None => Effect::List,
            });
        }
        let word = match working.view.choices.is_empty() {
            true => nothing_typed(&model.words),
            false => model.words.say("worked.choose", &[]),
        };
        if !model.notes.contains(&word) {
            model.notes.push(word);
        }
        return None;
    }
    working.input.reset();
    working.preview = None;
    working.recalled = None;
    working.draft.clear();
    working.changes.clear();
    if line == "?" {
        model.over = Over::Help(0);
        return None;
    }
    if working.history.last() != Some(&line) {
        working.history.push(line.clone());
    }
    Some(Effect::Enter(line))
}

fn nothing_typed(words: &Words) -> Prose {
    words.say("screen.note.nothing-typed", &[])
}

fn typed(model: &mut Model, c: char) -> Option<Effect> {
    match (model.over, &mut model.page) {
        (Over::Help(_), _) => leaf(model, c),
        (Over::Leaving, _) => model.over = Over::Nothing,
        _ if view::too_small(model.size) => {}
        (Over::Naming, _) => naming::insert(model, &c.to_string()),
        (Over::Pivot(_), _) => pivot::typed(model, c),
        (Over::Settings(row), _) => return settings::typed(model, row, c),
        (Over::Slope, _) => {
            let chosen = match c {
                '1' => Some(Slope::Line),
                '2' => Some(Slope::Characters),
                _ => return None,
            };
            return settings::slope(model, chosen);
        }
        (Over::Nothing, Page::Again(_)) => {}
        (Over::Nothing, Page::Menu(menu)) => choose_by_number(menu, c),
        (Over::Nothing, Page::Building(_)) => building::typed(model, &c.to_string()),
        (Over::Nothing, Page::Working(_)) => return typed_together(model, &c.to_string()),
    }
    None
}

/// A digit leads to a section of the help page; any other character closes it.
fn leaf(model: &mut Model, c: char) {
    let number = c.to_digit(10).and_then(|digit| usize::try_from(digit).ok());
    let row = number.and_then(|number| view::help_section(model, number));
    model.over = match row {
        Some(row) => Over::Help(row.min(view::help_limit(model))),
        None => Over::Nothing,
    };
}

/// Characters that waited together are put in at once, so that the line is read but once: a paste
/// that a terminal does not mark as one.
fn typed_together(model: &mut Model, text: &str) -> Option<Effect> {
    let mut rest = text.chars();
    let (over, small) = (model.over, view::too_small(model.size));
    match (over, &mut model.page) {
        (Over::Nothing, Page::Working(working)) => {
            if !small && !text.is_empty() {
                insert(working, text);
                let words = ["screen.note.nothing-typed", "worked.choose"];
                let words = words.map(|word| model.words.say(word, &[]));
                model.notes.retain(|note| !words.contains(note));
            }
            None
        }
        (Over::Nothing, Page::Building(_)) if !small => {
            building::typed(model, text);
            None
        }
        (Over::Naming, _) if !small => {
            naming::insert(model, text);
            None
        }
        // One by one: the first may close what lies over the page. A choice asks the outside, and
        // what waits behind it is left out.
        _ => {
            let first = rest.next()?;
            typed(model, first).or_else(|| typed_together(model, rest.as_str()))
        }
    }
}

/// A digit chooses a lesson by its number; 0 is what was left unfinished.
fn choose_by_number(menu: &mut Menu, c: char) {
    if !c.is_ascii_digit() {
        menu.digits.clear();
        return;
    }
    menu.digits.push(c);
    for digits in [menu.digits.clone(), c.to_string()] {
        let row = match digits.parse::<usize>() {
            Ok(0) if digits.len() == 1 && menu.unfinished.is_some() => 0,
            Ok(number) if (1..=menu.rows() - menu.before()).contains(&number) => {
                menu.before() + number - 1
            }
            _ => continue,
        };
        menu.choose(row);
        menu.digits = digits;
        return;
    }
    menu.digits.clear();
}

/// The first line of what is pasted is put in; each line that is entered brings the next.
fn paste(model: &mut Model, text: &str) {
    if model.over == Over::Naming && !view::too_small(model.size) {
        let first = text.lines().find(|line| !line.trim().is_empty());
        return naming::insert(model, first.unwrap_or_default().trim_end());
    }
    if model.over != Over::Nothing || view::too_small(model.size) {
        return;
    }
    if let Page::Building(_) = &model.page {
        let first = text.lines().find(|line| !line.trim().is_empty());
        return building::typed(model, first.unwrap_or_default().trim_end());
    }
    let Page::Working(working) = &mut model.page else {
        return;
    };
    let lines = text
        .split(['\n', '\r'])
        .filter(|line| !line.trim().is_empty());
    let mut lines: Vec<String> = lines.map(|line| line.trim_end().to_owned()).collect();
    lines.reverse();
    let Some(first) = lines.pop() else {
        return;
    };
    let fits = insert(working, &first);
    let rest = lines.len();
    if rest > 0 {
        working.pasted = lines;
    }
    let note = match (fits, rest) {
        (false, _) => model.words.say(
            "screen.note.pasted-too-long",
            &[("limit", Slot::Value(LONGEST_INPUT.to_string()))],
        ),
        (true, 0) => return,
        (true, 1) => model.words.say("screen.note.pasted-rest.one", &[]),
        (true, _) => model.words.say(
            "screen.note.pasted-rest.many",
            &[("count", Slot::Value(rest.to_string()))],
        ),
    };
    model.notes = vec![note];
}

/// Puts the next pasted line in, to be looked at and entered like any other.
fn next_pasted(model: &mut Model) {
    let Page::Working(working) = &mut model.page else {
        return;
    };
    let Some(next) = working
        .pasted
        .pop()
        .filter(|_| working.input.value().is_empty())
    else {
        return;
    };
    insert(working, &next);
    let slots = [("count", Slot::Value(working.pasted.len().to_string()))];
    let key = match working.pasted.len() {
        0 => "screen.note.pasted-next.last",
        1 => "screen.note.pasted-next.one",
        _ => "screen.note.pasted-next.many",
    };
    let note = model.words.say(key, &slots);
    model.notes.push(note);
}
