//! Where each region of the working page lies, at every size.

use super::{ask, names, statement, working};
use crate::screen::model::{Model, Over, Pane, Working};
use ratatui::layout::Rect;

/// The fewest columns and rows in which a learner can work.
pub(super) const SMALLEST: (u16, u16) = (60, 16);
/// From this size on, diagram and working stand side by side.
const WIDE: (u16, u16) = (100, 28);
/// The fewest rows in which a diagram says something.
const LOWEST_DIAGRAM: u16 = 9;
/// The fewest columns in which a diagram says something.
const NARROWEST_DIAGRAM: u16 = 30;

/// From so many rows on, the diagram keeps its place while the prompt grows and shrinks a little.
const STEADY_FROM: u16 = 28;
/// The rows that question, notes and example take together, even where they need fewer.
const USUAL: u16 = 3;

/// True if diagram and working take turns.
pub(in crate::screen) fn narrow((columns, rows): (u16, u16)) -> bool {
    columns < WIDE.0 || rows < WIDE.1
}

/// The regions. What is not shown has no rows.
#[derive(Clone, Copy, Debug, Default)]
pub(super) struct Regions {
    pub(super) header: Rect,
    pub(super) statement: Rect,
    pub(super) diagram: Rect,
    pub(super) working: Rect,
    /// What was said last, where the working does not show it.
    pub(super) latest: Rect,
    /// The thin line between the working and that.
    pub(super) fold: Rect,
    /// The column of the line between left and right.
    pub(super) divider: Option<u16>,
    pub(super) rule: Rect,
    pub(super) notes: Rect,
    pub(super) question: Rect,
    pub(super) input: Rect,
    pub(super) preview: Rect,
    pub(super) names: Rect,
    pub(super) keys: Rect,
}

/// The most rows that a reading with stacked fractions takes.
fn most_read(page: Rect) -> u16 {
    match page.height {
        0..28 => 3,
        28..40 => 5,
        _ => 7,
    }
}

/// Cuts a page into regions. A reading with stacked fractions takes rows of its own where nothing
/// that is told loses any; else it stands in one row.
pub(super) fn regions(model: &Model, open: &Working, page: Rect) -> Regions {
    let flat = cut(model, open, page, 0);
    let most = most_read(page);
    let width = flat.question.width.into();
    let Some(stacked) = ask::stacked(model, open, width, most.into()) else {
        return flat;
    };
    let high = cut(model, open, page, rows(stacked.len(), most));
    if keeps_told(model, open, &flat, &high) {
        high
    } else {
        flat
    }
}

/// True if statement, last verdict, question and notes keep their rows, and the drawing is still
/// high enough.
fn keeps_told(model: &Model, open: &Working, before: &Regions, after: &Regions) -> bool {
    let said = |was: Rect, is: Rect| {
        let rows = || last_rows(model, open, was.width, usize::MAX);
        was.height == 0 || is.width == was.width && rows().min(was.height) <= is.height
    };
    let (drawn, least) = (after.diagram.height, LOWEST_DIAGRAM);
    let (was, is) = (before.statement, after.statement);
    let whole = || told(model, open, was.width, true).min(was.height);
    (was == is || was.width == is.width && whole() <= is.height)
        && said(before.latest, after.latest)
        && said(before.working, after.working)
        && before.question.height == after.question.height
        && before.notes.height == after.notes.height
        && before.names.height == after.names.height
        && drawn >= before.diagram.height.min(least)
}

/// As many rows, but no more than these.
fn rows(count: usize, most: u16) -> u16 {
    u16::try_from(count).unwrap_or(most).min(most)
}

/// Cuts a page into regions, with so many rows for the reading at least.
fn cut(model: &Model, open: &Working, page: Rect, read: u16) -> Regions {
    let margin = if page.width >= WIDE.0 { 2 } else { 1 };
    let inner = Rect {
        x: page.x + margin,
        width: page.width.saturating_sub(2 * margin),
        ..page
    };
    let mut regions = Regions::default();
    let upper = lower_part(model, open, page, inner, read, &mut regions);
    if narrow((page.width, page.height)) {
        narrow_upper(model, open, upper, &mut regions);
    } else {
        wide_upper(model, open, upper, &mut regions);
    }
    regions
}

/// Takes rows off the top of a region.
fn take_top(rest: &mut Rect, rows: u16) -> Rect {
    let rows = rows.min(rest.height);
    let taken = Rect {
        height: rows,
        ..*rest
    };
    rest.y += rows;
    rest.height -= rows;
    taken
}

/// Takes rows off the bottom of a region.
fn take_bottom(rest: &mut Rect, rows: u16) -> Rect {
    let rows = rows.min(rest.height);
    rest.height -= rows;
    Rect {
        y: rest.y + rest.height,
        height: rows,
        ..*rest
    }
}

/// Places header and everything from the rule down, and gives what is left between.
fn lower_part(
    model: &Model,
    open: &Working,
    page: Rect,
    inner: Rect,
    read: u16,
    regions: &mut Regions,
) -> Rect {
    let roomy = page.height >= 28;
    let air = u16::from(roomy);
    let most = (page.height / 5).max(2);
    let width = inner.width.into();
    let mut rest = inner;
    regions.header = take_top(&mut rest, 1);
    // A whole statement needs every row of a low screen.
    let full = open.statement_in_full() && !roomy;
    take_top(&mut rest, u16::from(page.height >= 20 && !full));
    let example = rows(ask::example(model, open, width).len(), 3).max(1);
    // What is chosen from must stand there whole.
    let chooses = !open.view.choices.is_empty() || matches!(model.over, Over::Pivot(_));
    let asked = if chooses { page.height / 2 } else { most };
    let question = rows(ask::question(model, open, width).len(), asked);
    let notes = rows(ask::notes(model, width).len(), most);
    // A longer question or an offer takes a row that is kept free, and the drawing stays.
    let free = match page.height {
        0..STEADY_FROM => 0,
        _ => USUAL.saturating_sub(example + question + notes),
    };
    // So does a reading, and empty rows, before the line being typed moves up for it.
    let mut lacking = read.saturating_sub(example);
    let mut empty = |rows: u16| {
        let given = rows.min(lacking);
        lacking -= given;
        rows - given
    };
    let (free, under_names, over_names) = (empty(free), empty(air), empty(air));
    regions.keys = take_bottom(&mut rest, 1);
    take_bottom(&mut rest, under_names);
    let strips = match page.height {
        0..28 => 1,
        28..40 => 2,
        _ => 3,
    };
    regions.names = take_bottom(&mut rest, rows(names::height(model, open, width), strips));
    take_bottom(&mut rest, over_names);
    take_bottom(&mut rest, free);
    regions.preview = take_bottom(&mut rest, example.max(read));
    regions.input = take_bottom(&mut rest, 1);
    take_bottom(&mut rest, air);
    regions.question = take_bottom(&mut rest, question);
    regions.notes = take_bottom(&mut rest, notes);
    let rule = take_bottom(&mut rest, 1);
    regions.rule = Rect {
        x: page.x,
        width: page.width,
        ..rule
    };
    rest
}

/// The working and, where it was scrolled away from its end, what was said last.
fn with_latest(model: &Model, open: &Working, mut area: Rect, regions: &mut Regions) {
    let least = open
        .view
        .lines
        .last()
        .map_or(0, |line| working::least(model, line, area.width.into()));
    let room = usize::from(area.height.saturating_sub(3));
    if open.top.is_some() && least <= room {
        let most = usize::from(area.height / 3).max(least);
        let said = last_rows(model, open, area.width, most);
        regions.latest = take_bottom(&mut area, said);
        regions.fold = take_bottom(&mut area, 1);
    }
    regions.working = area;
}

fn last_rows(model: &Model, open: &Working, width: u16, most: usize) -> u16 {
    let rows = working::latest(model, open, width.into(), most).len();
    u16::try_from(rows).unwrap_or(u16::MAX)
}

fn wide_upper(model: &Model, open: &Working, upper: Rect, regions: &mut Regions) {
    let left = (upper.width * 45 / 100).clamp(40, 72);
    let mut column = upper_left(upper, left);
    regions.divider = Some(upper.x + left + 1);
    let right = Rect {
        x: upper.x + left + 3,
        width: upper.width - left - 3,
        ..upper
    };
    if open.statement_in_full() && open.view.lines.is_empty() {
        // Before the first line the statement stands where the working will.
        let mut right = right;
        let rows = told(model, open, right.width, false);
        regions.statement = take_top(&mut right, rows);
        take_top(&mut right, 1);
        regions.working = right;
        regions.diagram = upper_left(upper, left);
        return;
    }
    let told = told(model, open, left, upper.height >= 28);
    if told + 1 + LOWEST_DIAGRAM > column.height {
        regions.statement = column;
    } else {
        regions.statement = take_top(&mut column, told);
        take_top(&mut column, 1);
        regions.diagram = column;
    }
    with_latest(model, open, right, regions);
}

fn upper_left(upper: Rect, width: u16) -> Rect {
    Rect { width, ..upper }
}

/// How many rows the statement takes.
fn told(model: &Model, open: &Working, width: u16, roomy: bool) -> u16 {
    let rows = statement::rows(model, open, width.into(), roomy).len();
    u16::try_from(rows).unwrap_or(u16::MAX)
}

fn narrow_upper(model: &Model, open: &Working, upper: Rect, regions: &mut Regions) {
    if open.pane == Pane::Working {
        return with_latest(model, open, upper, regions);
    }
    let full = open.statement_in_full();
    // What was said last has room beside the diagram, or the statement makes room for it.
    let wanted = |side: u16| match last_rows(model, open, side, usize::MAX) {
        0 => 0,
        rows if full => rows.min(6) + 1,
        rows => rows + 1,
    };
    let fits = |side: &u16| {
        let diagram = upper.width.saturating_sub(side + 2);
        diagram >= NARROWEST_DIAGRAM
            && told(model, open, *side, false).saturating_add(wanted(*side)) <= upper.height
    };
    let least = (upper.width * 2 / 5).max(26);
    let sides = [least, upper.width / 2, upper.width * 3 / 5];
    let tries = if full { &sides[..] } else { &sides[..1] };
    let side = tries.iter().copied().find(fits);
    if side.is_none() && full {
        return told_across(model, open, upper, regions);
    }
    let (side, bare) = (side.unwrap_or(least), side.is_none() && wanted(least) > 0);
    let mut column = Rect {
        x: upper.x + upper.width - side,
        width: side,
        ..upper
    };
    regions.diagram = upper_left(upper, upper.width - side - 2);
    // The givens stand in the diagram and among the names too: they make room first.
    if !bare {
        regions.statement = take_top(&mut column, told(model, open, side, false));
        take_top(&mut column, 1);
    }
    regions.latest = column;
}

/// The statement across the whole width, with what was said last, and the diagram if it has room.
fn told_across(model: &Model, open: &Working, upper: Rect, regions: &mut Regions) {
    let mut rest = upper;
    let said = last_rows(model, open, upper.width, (upper.height / 2).into());
    regions.latest = take_bottom(&mut rest, said);
    take_bottom(&mut rest, u16::from(said > 0));
    let whole = told(model, open, upper.width, false);
    if whole.saturating_add(1 + LOWEST_DIAGRAM) <= rest.height {
        regions.statement = take_top(&mut rest, whole);
        take_top(&mut rest, 1);
        regions.diagram = rest;
    } else {
        regions.statement = rest;
    }
}
