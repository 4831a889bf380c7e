//! The pivot chosen on the drawing: a ring moves over its named places.

use super::keys::Command;
use super::message::Effect;
use super::model::{Model, Over, Page, Pane, Working};
use super::update;
use crate::session::PivotPlace;
use crate::sketch::{Marks, Stage};
use crate::text::Prose;

/// Opens the choice, or tells why there is none.
pub(super) fn open(model: &mut Model) {
    let Page::Working(working) = &mut model.page else {
        return;
    };
    if working.view.pivots.is_empty() {
        let none = model.words.say("screen.note.no-pivot", &[]);
        model.notes = vec![none];
        return;
    }
    working.pane = Pane::Diagram;
    let drawn = working.view.marks.pivot;
    let places = &working.view.pivots;
    let place = drawn.and_then(|drawn| places.iter().position(|at| at.place == drawn));
    model.notes.clear();
    model.over = Over::Pivot(place.unwrap_or(0));
}

/// A key while a place is chosen.
pub(super) fn pressed(model: &mut Model, place: usize, command: Command) -> Option<Effect> {
    let Page::Working(working) = &mut model.page else {
        model.over = Over::Nothing;
        return None;
    };
    let last = working.view.pivots.len().saturating_sub(1);
    let chosen = working.view.pivots.get(place).cloned();
    let leftward = leads_left(working);
    let moved = match command {
        Command::Left if leftward => (place + 1).min(last),
        Command::Right if leftward => place.saturating_sub(1),
        Command::Left | Command::Down => place.saturating_sub(1),
        Command::Right | Command::Up => (place + 1).min(last),
        Command::LineStart => 0,
        Command::LineEnd => last,
        Command::Enter => return take(model, chosen?.line),
        Command::Swap => return take(model, chosen?.freely),
        Command::Leave | Command::Pivot => {
            model.over = Over::Nothing;
            return None;
        }
        _ => place,
    };
    model.over = Over::Pivot(moved);
    None
}

/// A digit leads to a place, by its number from 1.
pub(super) fn typed(model: &mut Model, c: char) {
    let number = c.to_digit(10).and_then(|digit| usize::try_from(digit).ok());
    let Page::Working(working) = &model.page else {
        return;
    };
    let place = number.and_then(|number| number.checked_sub(1));
    if let Some(place) = place.filter(|place| *place < working.view.pivots.len()) {
        model.over = Over::Pivot(place);
    }
}

/// Enters a line as if it had been typed. What was being typed is put back behind it.
fn take(model: &mut Model, line: Option<String>) -> Option<Effect> {
    let line = line?;
    model.over = Over::Nothing;
    let Page::Working(working) = &mut model.page else {
        return None;
    };
    let typed = working.input.value().to_owned();
    working.set_line(line);
    let entered = update::enter(model);
    if let (Page::Working(working), false) = (&mut model.page, typed.is_empty()) {
        working.set_line(typed);
    }
    entered
}

/// True if the body runs to the left, so that its foot stands at the right.
fn leads_left(working: &Working) -> bool {
    working.session.problem().body().towards == crate::problem::Side::Left
}

/// The place that is chosen now.
pub(super) fn chosen<'a>(model: &Model, working: &'a Working) -> Option<&'a PivotPlace> {
    match model.over {
        Over::Pivot(place) => working.view.pivots.get(place),
        _ => None,
    }
}

/// The drawing while a place is chosen: the body as it stands, with the ring there.
pub(super) fn marks(model: &Model, working: &Working) -> Option<Marks> {
    let place = chosen(model, working)?.place;
    let mut stages = working.view.stages.iter().rev();
    let standing = |marks: &&Marks| {
        matches!(marks.stage, Stage::Scene | Stage::Forces) && marks.triangle.is_none()
    };
    let marks = stages.find(standing)?.clone();
    Some(Marks {
        pivot: Some(place),
        ..marks
    })
}

/// What is told beneath the question: what taking the place means.
pub(super) fn told(model: &Model, working: &Working) -> Prose {
    chosen(model, working).map_or_else(Prose::default, |place| place.told.clone())
}
