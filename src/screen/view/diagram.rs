//! The diagram, its legend, and which of its stages is shown.

use super::prose::wrap;
use crate::problem::Problem;
use crate::screen::model::{Model, Working};
use crate::screen::pivot;
use crate::sketch::{self, Ink, LegendEntry, Marks, Picture, PointMark, Scene, Stage, Style};
use crate::text::Slot;
use ratatui::Frame;
use ratatui::layout::{Position, Rect};
use ratatui::text::{Line, Span};
use ratatui::widgets::Paragraph;
use unicode_width::UnicodeWidthStr;

/// From this many rows on, the marks in the drawing are explained below it.
const HIGH: u16 = 17;

/// What stands in the diagram's region.
pub(super) struct Composed {
    /// The drawing as it was asked for.
    pub(super) scene: Scene,
    /// The drawing on the grid.
    pub(super) picture: Picture,
    /// What found no place in it, below.
    legend: Vec<Line<'static>>,
    /// Which stage is shown.
    stage: Option<Line<'static>>,
}

impl Composed {
    /// True if the legend does not stand in full in a region of so many rows.
    pub(super) fn cut_off(&self, rows: u16) -> bool {
        usize::from(self.picture.rows) + self.legend.len() + usize::from(self.stage.is_some())
            > rows.into()
    }
}

/// Draws the diagram.
pub(super) fn draw(model: &Model, open: &Working, frame: &mut Frame, area: Rect) {
    if area.height == 0 || area.width == 0 {
        return;
    }
    if !open.view.scene.is_empty() && open.view.sheet.is_none() {
        let rows = open.view.scene.iter().flat_map(|told| {
            let base = model.theme.faint();
            wrap(model.theme, told, area.width.into(), base)
        });
        frame.render_widget(Paragraph::new(rows.collect::<Vec<_>>()), area);
        return;
    }
    let composed = compose(model, open, (area.width, area.height));
    draw_composed(model, composed, frame, area);
}

/// Draws the scene of a problem that nobody works at yet.
pub(super) fn draw_problem(model: &Model, problem: &Problem, frame: &mut Frame, area: Rect) {
    let marks = Marks {
        givens: true,
        ..Marks::default()
    };
    let scene = sketch::scene(problem, &problem.values(), &marks);
    let composed = laid(model, scene, (area.width, area.height));
    draw_composed(model, composed, frame, area);
}

fn draw_composed(model: &Model, composed: Composed, frame: &mut Frame, area: Rect) {
    let Composed {
        picture,
        legend,
        stage,
        ..
    } = composed;
    if is_blank(&picture) {
        let told = model.words.say("screen.diagram.no-room", &[]);
        let rows = wrap(model.theme, &told, area.width.into(), model.theme.faint());
        frame.render_widget(Paragraph::new(rows), area);
        return;
    }
    draw_cells(model, &picture, frame, area);
    let mut below = legend;
    below.extend(stage);
    let room = Rect {
        y: area.y + picture.rows,
        height: area.height - picture.rows,
        ..area
    };
    frame.render_widget(Paragraph::new(below), room);
}

/// Lays the diagram out in a region of so many columns and rows.
pub(super) fn compose(model: &Model, open: &Working, (columns, rows): (u16, u16)) -> Composed {
    let (shown, count) = open.stage_shown();
    let chosen = pivot::marks(model, open);
    let marks = chosen.as_ref().unwrap_or(marks_of(open, shown));
    let stage = (count > 1 && rows > 4 && chosen.is_none())
        .then(|| stage_row(model, open, (shown, count), columns.into()));
    let rows = rows - u16::from(stage.is_some());
    let problem = open.session.problem();
    let scene = match &open.view.sheet {
        Some(sheet) => sheet.scene(marks),
        None => sketch::scene(problem, &problem.values(), marks),
    };
    Composed {
        stage,
        ..laid(model, scene, (columns, rows))
    }
}

fn is_blank(picture: &Picture) -> bool {
    picture.cells.iter().all(|cell| cell.ink == Ink::Blank)
}

/// Lays a scene out in a region of so many columns and rows.
fn laid(model: &Model, scene: Scene, (columns, mut rows): (u16, u16)) -> Composed {
    let style = Style {
        unicode: model.draws_lines(),
    };
    let meanings = (rows >= HIGH)
        .then(|| meanings(model, &scene, columns.into()))
        .flatten();
    rows -= u16::from(meanings.is_some());
    let mut picture = sketch::picture(&scene, columns, rows, style);
    let mut legend = legend(model, &picture, columns.into());
    let whole = picture.clone();
    // A smaller picture may put more into its legend, which then takes more rows.
    for _ in 0..3 {
        let below = u16::try_from(legend.len()).unwrap_or(u16::MAX);
        let room = rows - below.min(rows / 2);
        if picture.rows <= room {
            break;
        }
        picture = sketch::picture(&scene, columns, room, style);
        legend = self::legend(model, &picture, columns.into());
    }
    // Where the legend would leave no drawing, it goes.
    if is_blank(&picture) && !is_blank(&whole) {
        (picture, legend) = (whole, Vec::new());
    }
    legend.extend(meanings);
    Composed {
        scene,
        picture,
        legend,
        stage: None,
    }
}

fn draw_cells(model: &Model, picture: &Picture, frame: &mut Frame, area: Rect) {
    let buffer = frame.buffer_mut();
    for row in 0..picture.rows {
        for column in 0..picture.columns {
            let cell = picture.cell(column, row);
            if let Some(to) = buffer.cell_mut(Position::new(area.x + column, area.y + row)) {
                to.set_char(decimal(model, picture, column, row));
                to.set_style(model.theme.ink(cell.ink));
            }
        }
    }
}

/// What the drawing of a stage shows.
fn marks_of(open: &Working, shown: usize) -> &Marks {
    open.view.stages.get(shown - 1).unwrap_or(&open.view.marks)
}

/// What is shown in a cell: a point between digits as the learner has chosen.
fn decimal(model: &Model, picture: &Picture, column: u16, row: u16) -> char {
    let glyph = picture.cell(column, row).glyph;
    let digit = |column: Option<u16>| {
        let column = column.filter(|column| *column < picture.columns);
        column.is_some_and(|column| picture.cell(column, row).glyph.is_ascii_digit())
    };
    let decimal = model.manner.has_comma()
        && glyph == '.'
        && digit(column.checked_sub(1))
        && digit(column.checked_add(1));
    if decimal { ',' } else { glyph }
}

/// What the marks in the drawing mean, in one row, as many as fit.
fn meanings(model: &Model, scene: &Scene, width: usize) -> Option<Line<'static>> {
    let mut row = Line::default();
    for mark in scene.point_marks() {
        let word = model.words.word(meaning(mark).1);
        let told = format!("{} {word}", mark.glyph(model.draws_lines()));
        let gap = if row.spans.is_empty() { "" } else { "   " };
        if row.width() + gap.len() + told.width() <= width {
            row.push_span(Span::styled(format!("{gap}{told}"), model.theme.faint()));
        }
    }
    (!row.spans.is_empty()).then_some(row)
}

/// The words for a mark, in full and in short.
pub(super) fn meaning(mark: PointMark) -> (&'static str, &'static str) {
    match mark {
        PointMark::Knot => ("screen.mark.knot", "screen.mark.short.knot"),
        PointMark::Hinge => ("screen.mark.hinge", "screen.mark.short.hinge"),
        PointMark::Wheel => ("screen.mark.wheel", "screen.mark.short.wheel"),
        PointMark::Stand => ("screen.mark.stand", "screen.mark.short.stand"),
        PointMark::Pivot => ("screen.mark.pivot", "screen.mark.short.pivot"),
        PointMark::Open => ("screen.mark.open", "screen.mark.short.open"),
        PointMark::Face => ("screen.mark.face", "screen.mark.short.face"),
    }
}

/// Labels that found no place, side by side.
fn legend(model: &Model, picture: &Picture, width: usize) -> Vec<Line<'static>> {
    let mut rows: Vec<Line> = Vec::new();
    for LegendEntry { mark, text, ink } in &picture.legend {
        let text = model.manner.text(text);
        let text = model.theme.letters(&text);
        let told = if mark.is_empty() {
            text.into_owned()
        } else {
            format!("{mark}: {text}")
        };
        let span = Span::styled(told, model.theme.ink(*ink));
        match rows.last_mut() {
            Some(row) if row.width() + 3 + span.width() <= width => {
                row.push_span(Span::raw("   "));
                row.push_span(span);
            }
            _ => rows.push(Line::from(span)),
        }
    }
    rows
}

fn stage_row(
    model: &Model,
    open: &Working,
    (shown, count): (usize, usize),
    width: usize,
) -> Line<'static> {
    let marks = marks_of(open, shown);
    let name = match marks.stage {
        _ if marks.triangle.is_some() => "screen.stage.triangle",
        Stage::Forces if marks.site => "screen.stage.naming",
        Stage::Scene => "screen.stage.scene",
        Stage::Forces => "screen.stage.forces",
        Stage::Angles => "screen.stage.angles",
        Stage::Components => "screen.stage.components",
        Stage::Turning => "screen.stage.turning",
    };
    let force = (marks.triangle.as_ref())
        .and_then(|mark| open.session.problem().force(mark.force))
        .map_or_else(String::new, |force| force.symbol.shown());
    let numbers = [
        ("number", Slot::Value(shown.to_string())),
        ("count", Slot::Value(count.to_string())),
        (
            "name",
            Slot::Prose(model.words.say(name, &[("force", Slot::Name(force))])),
        ),
    ];
    let mut told = model.words.say("screen.stage", &numbers).to_string();
    if told.width() > width {
        told = model.words.say("screen.stage.short", &numbers).to_string();
    }
    Line::styled(told, model.theme.faint())
}
