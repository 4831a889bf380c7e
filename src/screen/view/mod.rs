//! Draws the model. Every view is a function of `&Model`.
//!
//! The working page at 80 columns and 24 rows; each region has a file of its own:
//!
//! ```text
//! +------------------------------------------------------------------------------+
//! | title of the problem                                   header.rs  step 3 of 9 |
//! |                                                                              |
//! |  diagram.rs                                     | statement.rs: the givens   |
//! |                                                 | (or the whole statement)   |
//! |       the diagram,                              |                            |
//! |       or, after Tab,                            | working.rs: what was said  |
//! |       working.rs across the whole width         | about the last line        |
//! |                                                 |                            |
//! |------------------------------------------------------------------------------|
//! | ask.rs     notes, if any                                                     |
//! |            the question                                                      |
//! |            > the line being typed                                            |
//! |            how it would be read, or an example                               |
//! | names.rs   names at hand                                                     |
//! | strip.rs   keys                                                              |
//! +------------------------------------------------------------------------------+
//! ```
//!
//! From 100 columns and 28 rows on, statement and diagram stand left and the working right.
//! regions.rs says where each region lies at every size.

mod again;
mod ask;
mod building;
mod diagram;
mod header;
mod help;
mod map;
mod menu;
mod names;
mod naming;
mod prose;
mod regions;
mod settings;
mod sight;
mod small;
mod statement;
mod strip;
mod summary;
#[cfg(test)]
mod tests;
mod working;

pub(super) use building::{AT_END, scrolled as build_scrolled};
pub(super) use help::{limit as help_limit, section as help_section};
pub(super) use regions::narrow;
pub use sight::{Onlooker, Sight};

use super::model::{Model, Over, Page, Working};
use ratatui::Frame;
use ratatui::layout::Rect;
use ratatui::widgets::Paragraph;

/// True if a terminal of so many columns and rows cannot hold the screen.
pub(super) fn too_small((columns, rows): (u16, u16)) -> bool {
    columns < regions::SMALLEST.0 || rows < regions::SMALLEST.1
}

/// Draws everything.
pub(super) fn draw(model: &Model, frame: &mut Frame) {
    let area = frame.area();
    if too_small((area.width, area.height)) {
        small::draw(model, frame, area);
    } else {
        match (&model.page, model.over) {
            (_, Over::Help(row)) => help::draw(model, row, frame, area),
            (_, Over::Settings(row)) => settings::draw(model, row, frame, area),
            (_, Over::Slope) => settings::draw_slope(model, frame, area),
            (Page::Menu(menu), _) => menu::draw(model, menu, frame, area),
            (Page::Building(page), _) => building::draw(model, page, frame, area),
            (Page::Again(looking), _) => again::draw(model, looking, frame, area),
            (Page::Working(open), _) => draw_working(model, open, frame, area),
        }
    }
    if !model.theme.unicode {
        keep_to_ascii(frame);
    }
}

fn draw_working(model: &Model, open: &Working, frame: &mut Frame, area: Rect) {
    let regions = regions::regions(model, open, area);
    header::draw(model, open, frame, regions.header);
    header::draw_lines(model, &regions, frame);
    statement::draw(model, open, frame, regions.statement);
    diagram::draw(model, open, frame, regions.diagram);
    working::draw(model, open, frame, regions.working);
    let area = regions.latest;
    let rows = working::latest(model, open, area.width.into(), area.height.into());
    frame.render_widget(Paragraph::new(rows), area);
    ask::draw(model, open, frame, &regions);
    names::draw(model, open, frame, regions.names);
    strip::draw(model, frame, regions.keys);
}

/// Where a page up or down leads.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Scroll {
    /// The working shows this row first, or follows its last line.
    Working(Option<usize>),
    /// The statement, which has too little room, shows this row first.
    Statement(usize),
}

/// Where a page up or down leads at this problem: through the statement where it has too little
/// room, else through the working.
pub(super) fn scrolled(model: &Model, open: &Working, up: bool) -> Scroll {
    let page = Rect::new(0, 0, model.size.0, model.size.1);
    let regions = regions::regions(model, open, page);
    if let Some(row) = statement::scrolled(model, open, regions.statement, up) {
        return Scroll::Statement(row);
    }
    let area = regions.working;
    // A diagram is shown where the working would be: it is paged by the same height.
    let size = if area.height == 0 {
        (page.width.saturating_sub(2), page.height / 2)
    } else {
        (area.width, area.height)
    };
    Scroll::Working(working::scrolled(model, open, size, up))
}

/// The first row of the whole working at the end, to be shown first; `None` where it is in sight
/// while the last line is followed.
pub(super) fn key_row(model: &Model, open: &Working) -> Option<usize> {
    let page = Rect::new(0, 0, model.size.0, model.size.1);
    let area = regions::regions(model, open, page).working;
    working::key_row(model, open, (area.width, area.height))
}

/// True if not all of the statement is in sight.
fn statement_goes_on(model: &Model, open: &Working) -> bool {
    matches!(scrolled(model, open, false), Scroll::Statement(_))
}

/// True if the working does not stand in full in its region.
fn working_is_long(model: &Model, open: &Working) -> bool {
    let page = Rect::new(0, 0, model.size.0, model.size.1);
    let area = regions::regions(model, open, page).working;
    if area.height == 0 {
        return open.view.lines.len() > 1;
    }
    working::is_long(model, open, (area.width, area.height))
}

/// True if the statement leaves no room for the diagram.
fn statement_alone(model: &Model, open: &Working) -> bool {
    let page = Rect::new(0, 0, model.size.0, model.size.1);
    let regions = regions::regions(model, open, page);
    regions.statement.height > 0 && regions.diagram.height == 0
}

/// The last resort where only ASCII may be shown.
fn keep_to_ascii(frame: &mut Frame) {
    for cell in &mut frame.buffer_mut().content {
        if !cell.symbol().is_ascii() {
            cell.set_symbol("?");
        }
    }
}
