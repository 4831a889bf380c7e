//! The diagram, its legend, and which of its stages is shown.

use super::prose::wrap;
use crate::screen::model::{Model, Working};
use crate::sketch::{self, Ink, LegendEntry, Picture, Stage, Style};
use crate::text::Slot;
use ratatui::Frame;
use ratatui::layout::{Position, Rect};
use ratatui::text::{Line, Span};
use ratatui::widgets::Paragraph;
use unicode_width::UnicodeWidthStr;

/// Draws the diagram.
pub(super) fn draw(model: &Model, open: &Working, frame: &mut Frame, area: Rect) {
    if area.height == 0 || area.width == 0 {
        return;
    }
    let mut area = area;
    let (shown, count) = open.stage_shown();
    let marks = open.view.stages.get(shown - 1).unwrap_or(&open.view.marks);
    if count > 1 && area.height > 4 {
        area.height -= 1;
        let row = Rect {
            y: area.y + area.height,
            height: 1,
            ..area
        };
        draw_stage(model, (shown, count), marks.stage, frame, row);
    }
    let problem = open.session.problem();
    let scene = sketch::scene(problem, &problem.values(), marks);
    let style = Style {
        unicode: model.theme.unicode,
    };
    let mut picture = sketch::picture(&scene, area.width, area.height, style);
    let mut legend = legend(model, &picture, area.width.into());
    if !legend.is_empty() {
        let rows = u16::try_from(legend.len())
            .unwrap_or(u16::MAX)
            .min(area.height / 2);
        picture = sketch::picture(&scene, area.width, area.height - rows, style);
        legend = self::legend(model, &picture, area.width.into());
    }
    if picture.cells.iter().all(|cell| cell.ink == Ink::Blank) {
        let told = model.words.say("screen.diagram.no-room", &[]);
        let rows = wrap(model.theme, &told, area.width.into(), model.theme.faint());
        frame.render_widget(Paragraph::new(rows), area);
        return;
    }
    draw_cells(model, &picture, frame, area);
    let rows = u16::try_from(legend.len()).unwrap_or(0);
    let below = Rect {
        y: area.y + picture.rows,
        height: rows.min(area.height - picture.rows),
        ..area
    };
    frame.render_widget(Paragraph::new(legend), below);
}

fn draw_cells(model: &Model, picture: &Picture, frame: &mut Frame, area: Rect) {
    let buffer = frame.buffer_mut();
    for row in 0..picture.rows {
        for column in 0..picture.columns {
            let cell = picture.cell(column, row);
            if let Some(to) = buffer.cell_mut(Position::new(area.x + column, area.y + row)) {
                to.set_char(cell.glyph);
                to.set_style(model.theme.ink(cell.ink));
            }
        }
    }
}

/// Labels that found no place, side by side.
fn legend(model: &Model, picture: &Picture, width: usize) -> Vec<Line<'static>> {
    let mut rows: Vec<Line> = Vec::new();
    for LegendEntry { mark, text, ink } in &picture.legend {
        let text = model.theme.letters(text);
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

fn draw_stage(
    model: &Model,
    (shown, count): (usize, usize),
    stage: Stage,
    frame: &mut Frame,
    area: Rect,
) {
    let name = match stage {
        Stage::Scene => "screen.stage.scene",
        Stage::Forces => "screen.stage.forces",
        Stage::Angles => "screen.stage.angles",
        Stage::Components => "screen.stage.components",
        Stage::Turning => "screen.stage.turning",
    };
    let numbers = [
        ("number", Slot::Value(shown.to_string())),
        ("count", Slot::Value(count.to_string())),
        ("name", Slot::Word(model.words.word(name))),
    ];
    let told = model.words.say("screen.stage", &numbers);
    let mut told = told.to_string();
    if told.width() > area.width.into() {
        told = model.words.say("screen.stage.short", &numbers).to_string();
    }
    let row = Line::styled(told, model.theme.faint());
    frame.render_widget(Paragraph::new(row), area);
}
