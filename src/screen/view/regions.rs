//! Where each region of the working page lies, at every size.

use super::{ask, names, statement, working};
use crate::screen::model::{Model, Pane, Working};
use ratatui::layout::Rect;

/// The fewest columns and rows in which a learner can work.
pub(super) const SMALLEST: (u16, u16) = (60, 16);
/// From this size on, diagram and working stand side by side.
const WIDE: (u16, u16) = (100, 28);
/// The fewest rows in which a diagram says something.
const LOWEST_DIAGRAM: u16 = 5;

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

/// Cuts a page into regions.
pub(super) fn regions(model: &Model, open: &Working, page: Rect) -> Regions {
    let margin = if page.width >= WIDE.0 { 2 } else { 1 };
    let inner = Rect {
        x: page.x + margin,
        width: page.width.saturating_sub(2 * margin),
        ..page
    };
    let mut regions = Regions::default();
    let upper = lower_part(model, open, page, inner, &mut regions);
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
    regions: &mut Regions,
) -> Rect {
    let roomy = page.height >= 28;
    let air = u16::from(roomy);
    let most = (page.height / 5).max(2);
    let rows = |count: usize, most: u16| u16::try_from(count).unwrap_or(most).min(most);
    let width = inner.width.into();
    let mut rest = inner;
    regions.header = take_top(&mut rest, 1);
    take_top(&mut rest, u16::from(page.height >= 20));
    regions.keys = take_bottom(&mut rest, 1);
    take_bottom(&mut rest, air);
    let strips = match page.height {
        0..28 => 1,
        28..40 => 2,
        _ => 3,
    };
    regions.names = take_bottom(&mut rest, rows(names::height(model, open, width), strips));
    take_bottom(&mut rest, air);
    regions.preview = take_bottom(
        &mut rest,
        rows(ask::example(model, open, width).len(), 2).max(1),
    );
    regions.input = take_bottom(&mut rest, 1);
    take_bottom(&mut rest, air);
    regions.question = take_bottom(
        &mut rest,
        rows(ask::question(model, open, width).len(), most),
    );
    regions.notes = take_bottom(&mut rest, rows(ask::notes(model, width).len(), most));
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
    if open.top.is_some() && area.height >= 8 {
        let most = usize::from(area.height / 3);
        let said = last_rows(model, open, area.width, most);
        regions.latest = take_bottom(&mut area, said);
        regions.fold = take_bottom(&mut area, 1);
    }
    regions.working = area;
}

fn last_rows(model: &Model, open: &Working, width: u16, most: usize) -> u16 {
    let rows = open.view.lines.last().map_or(0, |line| {
        working::latest(model, line, width.into(), most).len()
    });
    u16::try_from(rows).unwrap_or(u16::MAX)
}

fn wide_upper(model: &Model, open: &Working, upper: Rect, regions: &mut Regions) {
    let left = (upper.width * 45 / 100).clamp(40, 72);
    let mut column = Rect {
        width: left,
        ..upper
    };
    regions.divider = Some(upper.x + left + 1);
    let right = Rect {
        x: upper.x + left + 3,
        width: upper.width - left - 3,
        ..upper
    };
    let told = statement::rows(model, open, left.into(), upper.height >= 28).len();
    let most = column.height.saturating_sub(LOWEST_DIAGRAM + 3);
    let told = u16::try_from(told).unwrap_or(most).min(most);
    regions.statement = take_top(&mut column, told);
    take_top(&mut column, 1);
    regions.diagram = column;
    with_latest(model, open, right, regions);
}

fn narrow_upper(model: &Model, open: &Working, upper: Rect, regions: &mut Regions) {
    if open.pane == Pane::Working {
        return with_latest(model, open, upper, regions);
    }
    let side = (upper.width * 2 / 5).max(26);
    let told = |width: u16| {
        let rows = statement::rows(model, open, width.into(), false).len();
        u16::try_from(rows).unwrap_or(u16::MAX)
    };
    let wanted = match last_rows(model, open, side, usize::MAX) {
        0 => 0,
        rows => rows.min(6) + 1,
    };
    let mut rest = upper;
    let crowded = told(side).saturating_add(wanted) > upper.height;
    // The givens stand in the diagram and among the names too: they make room first.
    let bare = crowded && wanted > 0 && !open.statement_in_full();
    if crowded && !bare {
        let whole = told(upper.width);
        if whole.saturating_add(LOWEST_DIAGRAM.max(wanted)) <= upper.height {
            regions.statement = take_top(&mut rest, whole);
            let gap = u16::from(rest.height > 8);
            take_top(&mut rest, gap);
        } else {
            let said = last_rows(model, open, upper.width, (upper.height / 2).into());
            regions.latest = take_bottom(&mut rest, said);
            take_bottom(&mut rest, u16::from(said > 0));
            regions.statement = rest;
            return;
        }
    }
    let mut column = Rect {
        x: rest.x + rest.width - side,
        width: side,
        ..rest
    };
    regions.diagram = Rect {
        width: rest.width - side - 2,
        ..rest
    };
    if regions.statement.height == 0 && !bare {
        regions.statement = take_top(&mut column, told(side));
        take_top(&mut column, 1);
    }
    regions.latest = column;
}
