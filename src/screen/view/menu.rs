//! The list of lessons.

use super::map::Branch;
use super::prose::{cut, wrap, wrap_text};
use super::{ask, map, naming, strip};
use crate::practice::{Resumable, offered};
use crate::screen::model::{Menu, Model, Over};
use crate::screen::theme::Theme;
use crate::session::Fading;
use crate::text::Slot;
use ratatui::Frame;
use ratatui::layout::Rect;
use ratatui::style::Style;
use ratatui::text::{Line, Span};
use ratatui::widgets::Paragraph;

/// The widest the list gets.
const WIDEST: u16 = 84;
/// Columns before a title: the mark of what is chosen, and the number.
const MARGIN: usize = 6;

/// Draws the list, with what is chosen always in sight.
pub(super) fn draw(model: &Model, menu: &Menu, frame: &mut Frame, area: Rect) {
    let width = area.width.saturating_sub(4).min(WIDEST);
    let inner = Rect {
        x: area.x + (area.width - width) / 2,
        width,
        ..area
    };
    let theme = model.theme;
    let mut above = vec![
        Line::default(),
        Line::styled(model.words.word("app.name"), theme.strong()),
    ];
    if area.height >= 20 {
        let mut about = model.words.say("screen.menu.about", &[]);
        if let Some(offer) = offer(menu) {
            about = about.then(model.words.say(offer, &[]));
        }
        above.extend(wrap(theme, &about, width.into(), Style::new()));
    }
    above.push(Line::default());
    let mut below = vec![Line::default()];
    below.extend(ask::notes(model, width.into()));
    for word in [leaving(model), "caution"] {
        let told = model.words.say(word, &[]);
        below.extend(wrap(theme, &told, width.into(), theme.faint()));
    }
    below.push(Line::default());
    let asked = match model.over {
        Over::Naming => naming::height(model, width.into()),
        _ => 0,
    };
    if asked > 0 {
        // While the name is asked, the rest has less to say.
        below = ask::notes(model, width.into());
        below.push(Line::default());
    }
    let fixed = above.len() + below.len() + 1 + usize::from(asked);
    let room = usize::from(area.height).saturating_sub(fixed);
    let list = list(model, menu, width.into(), room);
    // On a high screen the list does not stretch: what is below follows it, the keys end the page.
    let mut rows = above;
    rows.extend(list);
    rows.extend(below);
    let page = Rect {
        height: area.height.saturating_sub(1 + asked),
        ..inner
    };
    frame.render_widget(Paragraph::new(rows), page);
    draw_name(model, frame, page);
    if asked > 0 {
        let foot = Rect {
            y: page.y + page.height,
            height: asked.min(area.height.saturating_sub(1)),
            ..inner
        };
        naming::draw(model, frame, foot);
    }
    let last = Rect {
        y: area.y + area.height.saturating_sub(1),
        height: 1,
        ..inner
    };
    strip::draw(model, frame, last);
}

/// Who is at work, beside the name of the program.
fn draw_name(model: &Model, frame: &mut Frame, page: Rect) {
    let Some(name) = &model.people.name else {
        return;
    };
    let slots = [("name", Slot::Word(name.clone()))];
    let told = model.words.say("people.at-work", &slots).to_string();
    let room = usize::from(page.width) / 2;
    let told = cut(model.theme, &model.theme.letters(&told), room);
    let row = Rect {
        y: page.y + page.height.min(1),
        height: page.height.saturating_sub(1).min(1),
        ..page
    };
    frame.render_widget(Paragraph::new(Line::raw(told).right_aligned()), row);
}

/// What may be said of leaving: only what is kept is called safe.
fn leaving(model: &Model) -> &'static str {
    if model.kept {
        "screen.menu.safe"
    } else {
        "screen.menu.unsafe"
    }
}

/// The rows of the list that fit, around what is chosen.
fn list(model: &Model, menu: &Menu, width: usize, room: usize) -> Vec<Line<'static>> {
    let mut choices = choices(model, menu, width);
    if choices.is_empty() {
        let told = model.words.say("screen.menu.no-lessons", &[]);
        return wrap(model.theme, &told, width, Style::new());
    }
    let mut total: usize = choices.iter().map(Vec::len).sum();
    let lessons = menu.before()..menu.before() + menu.lessons.len();
    // Short of space, only lessons and what is chosen say what they are about, then only that.
    for keeps_lessons in [true, false] {
        if total <= room {
            break;
        }
        for (place, choice) in choices.iter_mut().enumerate() {
            if place != menu.chosen && !(keeps_lessons && lessons.contains(&place)) {
                choice.truncate(1);
            }
        }
        total = choices.iter().map(Vec::len).sum();
    }
    let airy = total + choices.len() <= room;
    let mut rows = Vec::new();
    let (mut first, mut end) = (0, 0);
    let branches = map::branches(model, &menu.lessons);
    for (place, choice) in choices.into_iter().enumerate() {
        if airy && place > 0 {
            let above = (place - 1).checked_sub(menu.before());
            let branch = above.and_then(|lesson| branches.get(lesson));
            let rest = branch.map_or("", |branch| branch.rest.as_str());
            let gap = format!("{:MARGIN$}{rest}", "");
            rows.push(Line::styled(gap, model.theme.faint()));
        }
        if place == menu.chosen {
            (first, end) = (rows.len(), rows.len() + choice.len());
        }
        rows.extend(choice);
    }
    if total <= room {
        return rows;
    }
    let room = room.saturating_sub(1).max(1);
    let top = end.saturating_sub(room).min(first);
    let more = rows.len() > top + room;
    let mut shown: Vec<Line> = rows.into_iter().skip(top).take(room).collect();
    if more {
        let sign = model.theme.either("⋮", ":");
        shown.push(Line::styled(format!("{sign:>4}"), model.theme.faint()));
    }
    shown
}

fn choices(model: &Model, menu: &Menu, width: usize) -> Vec<Vec<Line<'static>>> {
    let mut choices = Vec::new();
    if let Some(unfinished) = &menu.unfinished {
        let title = model.words.word("screen.menu.carry-on");
        let told = left(model, "screen.menu.lines", unfinished);
        let chosen = menu.chosen == 0;
        choices.push(choice(model, Row::bare(chosen, 0, &title, &told), width));
    }
    let branches = map::branches(model, &menu.lessons);
    for (place, lesson) in menu.lessons.iter().enumerate() {
        let chosen = menu.chosen == menu.before() + place;
        let about = match way(menu).filter(|_| chosen) {
            Some(way) => model.words.word(way),
            None => map::about(model, lesson),
        };
        let row = Row {
            chosen,
            number: place + 1,
            title: &model.manner.text(&lesson.title),
            about: &model.manner.text(&about),
            branch: branches[place].clone(),
            standing: map::standing(model, &menu.lessons, place),
        };
        choices.push(choice(model, row, width));
    }
    for (place, older) in menu.older.iter().enumerate() {
        let number = menu.lessons.len() + place + 1;
        let chosen = menu.chosen == menu.before() + number - 1;
        let told = left(model, "screen.menu.older", older);
        let row = Row::bare(chosen, number, &older.title, &told);
        choices.push(choice(model, row, width));
    }
    if let Some(row) = menu.own() {
        let title = model.words.word("screen.build.title");
        let about = own(model);
        let (chosen, number) = (menu.chosen == row, row + 1 - menu.before());
        choices.push(choice(
            model,
            Row::bare(chosen, number, &title, &about),
            width,
        ));
    }
    choices
}

/// What is offered of the chosen lesson, while it is taken as it is.
fn offer(menu: &Menu) -> Option<&'static str> {
    let lesson = menu.lesson().filter(|_| menu.fading == Fading::All)?;
    match offered(lesson.standing) {
        Fading::Worked => Some("fade.offer.worked"),
        Fading::Last(_) => Some("fade.offer.last"),
        Fading::All => None,
    }
}

/// How the chosen lesson is taken, where that is not by all of its steps.
fn way(menu: &Menu) -> Option<&'static str> {
    match menu.fading {
        Fading::Worked => Some("fade.way.worked"),
        Fading::Last(_) => Some("fade.way.last"),
        Fading::All => None,
    }
}

/// What there is to say of a problem of one's own.
fn own(model: &Model) -> String {
    let count = model.draft.as_ref().map(|draft| draft.builder.answered());
    let key = match count {
        None => "screen.menu.own",
        Some(1) => "screen.menu.own-begun.one",
        Some(_) => "screen.menu.own-begun.many",
    };
    let slots = [("count", Slot::Value(count.unwrap_or(0).to_string()))];
    model.words.say(key, &slots).to_string()
}

/// How far a problem that was left is.
fn left(model: &Model, key: &str, left: &Resumable) -> String {
    let key = match left.lines {
        1 => format!("{key}.one"),
        _ => format!("{key}.many"),
    };
    let slots = [
        ("title", Slot::Word(left.title.clone())),
        ("count", Slot::Value(left.lines.to_string())),
    ];
    model.words.say(&key, &slots).to_string()
}

/// A choice.
struct Row<'a> {
    chosen: bool,
    number: usize,
    title: &'a str,
    /// What it is about.
    about: &'a str,
    /// The lines of the map before it.
    branch: Branch,
    /// How the learner stands with it.
    standing: Vec<Span<'static>>,
}

impl<'a> Row<'a> {
    /// A choice that is no lesson.
    fn bare(chosen: bool, number: usize, title: &'a str, about: &'a str) -> Row<'a> {
        Row {
            chosen,
            number,
            title,
            about,
            branch: Branch::default(),
            standing: Vec::new(),
        }
    }
}

/// One choice: its number and title, how the learner stands, and beneath what it is about.
fn choice(model: &Model, row: Row<'_>, width: usize) -> Vec<Line<'static>> {
    let theme = model.theme;
    let mark = if row.chosen {
        theme.either("▸", ">")
    } else {
        " "
    };
    let style = if row.chosen {
        theme.chosen()
    } else {
        theme.strong()
    };
    let (first, rest) = (&row.branch.first, &row.branch.rest);
    let standing = Line::from(row.standing);
    let taken = match standing.width() {
        0 => 0,
        width => width + 2,
    };
    let margin = MARGIN + first.chars().count();
    let room = width.saturating_sub(margin + taken);
    let titles = wrap_text(theme, row.title, room, style);
    let number = Span::styled(format!("{mark}{:>3}  ", row.number), theme.key());
    let mut rows = Vec::new();
    for (place, title) in titles.into_iter().enumerate() {
        let mut line = match place {
            0 => Line::from(vec![
                number.clone(),
                Span::styled(first.clone(), theme.faint()),
            ]),
            _ => beneath(theme, rest),
        };
        line.spans.extend(title.spans);
        if place == 0 && taken > 0 {
            let gap = width.saturating_sub(line.width() + standing.width());
            line.push_span(Span::raw(" ".repeat(gap)));
            line.spans.extend(standing.spans.clone());
        }
        rows.push(line);
    }
    let margin = MARGIN + rest.chars().count();
    let told = wrap_text(
        theme,
        row.about,
        width.saturating_sub(margin),
        theme.faint(),
    );
    rows.extend(told.into_iter().map(|told| {
        let mut line = beneath(theme, rest);
        line.spans.extend(told.spans);
        line
    }));
    rows
}

/// The margin of a row beneath a title, with the lines of the map.
fn beneath(theme: Theme, rest: &str) -> Line<'static> {
    Line::from(Span::styled(format!("{:MARGIN$}{rest}", ""), theme.faint()))
}
