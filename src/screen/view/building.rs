//! The page on which a problem of the learner's own is built: the drawing as far as it is told,
//! beside it what was answered, beneath it the question.

use super::prose::{clip_with, cut, hang, wrap, wrap_text};
use super::{ask, diagram, strip};
use crate::builder::Listed;
use crate::screen::building::{Building, Wanted};
use crate::screen::model::Model;
use crate::text::{Prose, Slot};
use ratatui::Frame;
use ratatui::layout::Rect;
use ratatui::style::Style;
use ratatui::text::{Line, Span};
use ratatui::widgets::Paragraph;

/// What may be done once it is whole, by the keys of its words.
pub(in crate::screen) const AT_END: [&str; 2] = ["screen.build.work", "screen.build.keep"];
/// From so many rows on, the drawing keeps its place while choices come and go.
const STEADY_FROM: u16 = 24;
/// The rows that question and choices take together there, even where they need fewer.
const USUAL: usize = 7;
/// The column at which an answer stands, behind its label.
const COLUMN: usize = 12;
/// Rows no wider than this: longer ones are tiring to read.
const WIDEST_PROSE: usize = 110;

/// Where everything lies.
struct Regions {
    header: Rect,
    drawing: Rect,
    told: Rect,
    rule: Rect,
    /// Notes, question, and what stands below it.
    lower: Rect,
    keys: Rect,
}

/// Draws the page.
pub(super) fn draw(model: &Model, page: &Building, frame: &mut Frame, area: Rect) {
    let (rows, input) = lower(model, page, inner(area).width.into());
    let regions = regions(model, page, area);
    draw_header(model, page, frame, regions.header);
    draw_drawing(model, page, frame, regions.drawing);
    let told = told(model, page, regions.told.width.into());
    let top = top(page, told.len(), regions.told.height);
    let more = model.theme.either(" ⋮", " :");
    let told = told.into_iter().skip(top).collect();
    let told = clip_with(
        told,
        regions.told.width.into(),
        regions.told.height.into(),
        Span::styled(more, model.theme.faint()),
    );
    frame.render_widget(Paragraph::new(told), regions.told);
    let across = model.theme.either("─", "-").repeat(area.width.into());
    let across = Line::styled(across, model.theme.faint());
    frame.render_widget(Paragraph::new(across), regions.rule);
    frame.render_widget(Paragraph::new(rows), regions.lower);
    if let Some(row) = input
        && row < usize::from(regions.lower.height)
    {
        let row = u16::try_from(row).unwrap_or_default();
        let line = Rect {
            y: regions.lower.y + row,
            height: 1,
            ..regions.lower
        };
        ask::draw_input(model, &page.input, frame, line);
    }
    strip::draw(model, frame, regions.keys);
}

fn inner(area: Rect) -> Rect {
    let margin = if area.width >= 100 { 2 } else { 1 };
    Rect {
        x: area.x + margin,
        width: area.width.saturating_sub(2 * margin),
        ..area
    }
}

fn regions(model: &Model, page: &Building, area: Rect) -> Regions {
    let inner = inner(area);
    let air = u16::from(area.height >= 28);
    let asked = lower(model, page, inner.width.into()).0.len();
    let usual = if area.height >= STEADY_FROM { USUAL } else { 0 };
    let height = u16::try_from(asked.max(usual)).unwrap_or(u16::MAX);
    let above = 1 + u16::from(area.height >= 20);
    // The rule and the keys stay, whatever is asked.
    let height = height.min(area.height.saturating_sub(above + 2 + 2 * air));
    let row = |y: u16, height: u16| Rect {
        y: area.y + y,
        height,
        ..inner
    };
    let keys = area.height - 1;
    let lower = keys - air - height;
    let rule = lower.saturating_sub(1);
    let upper = row(above, rule.saturating_sub(above));
    let side = side(model, page, upper);
    Regions {
        header: row(0, 1),
        drawing: Rect {
            width: upper.width.saturating_sub(side + 2),
            ..upper
        },
        told: Rect {
            x: upper.x + upper.width - side,
            width: side,
            ..upper
        },
        rule: Rect {
            x: area.x,
            width: area.width,
            ..row(rule, 1)
        },
        lower: row(lower, height),
        keys: row(keys, 1),
    }
}

/// The columns beside the drawing: more for a statement that would not have room else.
fn side(model: &Model, page: &Building, upper: Rect) -> u16 {
    let least = (upper.width * 2 / 5).max(26);
    if page.builder.question().is_some() {
        return least;
    }
    let fits = |side: &u16| told(model, page, (*side).into()).len() <= usize::from(upper.height);
    let sides = [least, upper.width / 2];
    sides.into_iter().find(fits).unwrap_or(upper.width / 2)
}

fn draw_header(model: &Model, page: &Building, frame: &mut Frame, area: Rect) {
    let title = model.words.word("screen.build.title");
    let title = Line::styled(title, model.theme.strong());
    let count = page.builder.answered();
    let key = match count {
        1 => "screen.build.answers.one",
        _ => "screen.build.answers.many",
    };
    let slots = [("count", Slot::Value(count.to_string()))];
    let far = model.words.say(key, &slots).to_string();
    frame.render_widget(Paragraph::new(title), area);
    if count > 0 {
        frame.render_widget(Paragraph::new(Line::raw(far).right_aligned()), area);
    }
}

fn draw_drawing(model: &Model, page: &Building, frame: &mut Frame, area: Rect) {
    if area.height == 0 || area.width == 0 {
        return;
    }
    if let Some(problem) = page.builder.problem() {
        return diagram::draw_problem(model, &problem, frame, area);
    }
    let told = model.words.say("screen.build.empty", &[]);
    let rows = wrap(model.theme, &told, area.width.into(), model.theme.faint());
    frame.render_widget(Paragraph::new(rows), area);
}

/// The rows beside the drawing: what was answered, and at the end the statement.
fn told(model: &Model, page: &Building, width: usize) -> Vec<Line<'static>> {
    if page.builder.question().is_some() {
        return page
            .builder
            .listed()
            .map(|listed| row(model, listed, width))
            .collect();
    }
    let problem = page.builder.problem();
    let statement = problem.map(|problem| model.manner.text(problem.statement()));
    wrap_text(
        model.theme,
        &statement.unwrap_or_default(),
        width,
        Style::new(),
    )
}

fn row(model: &Model, listed: &Listed, width: usize) -> Line<'static> {
    let theme = model.theme;
    let indent = if listed.detail { "  " } else { "" };
    let label = format!("{indent}{}", model.manner.prose(&listed.label));
    let room = width.saturating_sub(COLUMN);
    let told = theme.letters(&model.manner.text(&listed.told)).into_owned();
    Line::from(vec![
        Span::styled(format!("{label:<COLUMN$}"), theme.faint()),
        Span::raw(cut(theme, &told, room)),
    ])
}

/// The first row that is shown beside the drawing.
fn top(page: &Building, rows: usize, height: u16) -> usize {
    let last = rows.saturating_sub(height.into());
    let usual = match page.builder.question() {
        Some(_) => last,
        None => 0,
    };
    page.top.unwrap_or(usual).min(last)
}

/// True if not everything beside the drawing is in sight.
pub(super) fn goes_on(model: &Model, page: &Building) -> bool {
    let told_in = regions(model, page, whole(model)).told;
    told(model, page, told_in.width.into()).len() > usize::from(told_in.height)
}

fn whole(model: &Model) -> Rect {
    Rect::new(0, 0, model.size.0, model.size.1)
}

/// Where a page up or down leads beside the drawing.
pub(in crate::screen) fn scrolled(model: &Model, page: &Building, up: bool) -> Option<usize> {
    let area = regions(model, page, whole(model)).told;
    let rows = told(model, page, area.width.into()).len();
    let from = top(page, rows, area.height);
    let step = usize::from(area.height.saturating_sub(1)).max(1);
    let last = rows.saturating_sub(area.height.into());
    Some(match up {
        true => from.saturating_sub(step),
        false => (from + step).min(last),
    })
}

/// Notes, the question and what stands below it, and the row of the line being typed.
fn lower(model: &Model, page: &Building, width: usize) -> (Vec<Line<'static>>, Option<usize>) {
    let theme = model.theme;
    let mut rows = ask::notes(model, width);
    let wide = width.min(WIDEST_PROSE);
    let marked = |told: &Prose| {
        let told = wrap(theme, &model.manner.prose(told), wide - 2, Style::new());
        hang(Span::styled(theme.either("◆ ", "! "), theme.note()), told)
    };
    match (&page.fault, page.builder.trouble()) {
        (Some(fault), _) => rows.extend(marked(fault)),
        (None, Some(why)) if !page.naming => rows.extend(marked(&why)),
        _ => {}
    }
    let (prompt, choices, example) = asked(model, page);
    rows.extend(wrap(theme, &prompt, wide, theme.strong()));
    for (place, choice) in choices.iter().enumerate() {
        let chosen = place == page.chosen;
        let mark = match chosen {
            true => theme.either("▸", ">"),
            false => " ",
        };
        let style = if chosen { theme.chosen() } else { Style::new() };
        let told = wrap(theme, choice, wide - 5, style);
        let number = Span::styled(format!("{mark} {}  ", place + 1), theme.key());
        rows.extend(hang(number, told));
    }
    if page.wanted() != Wanted::Line {
        return (rows, None);
    }
    let input = rows.len();
    rows.push(Line::default());
    let example = wrap(theme, &example, wide - 2, theme.faint());
    rows.extend(hang(Span::raw("  "), example));
    (rows, Some(input))
}

/// The question, its choices, and what is said below a line.
fn asked(model: &Model, page: &Building) -> (Prose, Vec<Prose>, Prose) {
    let words = &model.words;
    let shown = |prose: &Prose| model.manner.prose(prose);
    if page.naming {
        let example = words.say("screen.build.file-name", &[]);
        return (words.say("screen.build.ask-name", &[]), Vec::new(), example);
    }
    match (page.builder.asked(), page.wanted()) {
        (Some(asked), _) => {
            let slots = [("example", Slot::Prose(shown(&asked.example)))];
            let example = match (page.ready, asked.example.is_empty()) {
                (true, _) => words.say("screen.build.ready", &[]),
                (false, true) => Prose::default(),
                (false, false) => words.say("screen.build.example", &slots),
            };
            let choices = asked.choices.iter().map(shown).collect();
            (shown(&asked.prompt), choices, example)
        }
        (None, Wanted::Choice(_)) => {
            let choices = AT_END.iter().map(|key| words.say(key, &[])).collect();
            let whole = words.say("screen.build.whole", &[]);
            (whole, choices, Prose::default())
        }
        (None, _) => {
            let unsound = words.say("screen.build.unsound", &[]);
            (unsound, Vec::new(), Prose::default())
        }
    }
}
