//! The last row: the keys that matter now.

use crate::screen::building::{Building, Wanted};
use crate::screen::model::{Model, Over, Page, Pane, Working};
use crate::text::{Prose, Words};
use ratatui::Frame;
use ratatui::layout::Rect;
use ratatui::text::{Line, Span};
use ratatui::widgets::Paragraph;

/// Columns between two keys, and whether words are shortened: the first that has room for all.
const FORMS: [(usize, usize); 3] = [(3, 0), (3, 1), (2, 1)];

/// A key that works now.
struct Key {
    /// The key, in full and shortened.
    key: [&'static str; 2],
    /// The words that tell what it does, in full and shortened.
    word: [&'static str; 2],
}

const fn key(key: &'static str, word: &'static str) -> Key {
    Key {
        key: [key, key],
        word: [word, word],
    }
}

/// Draws the keys, shortened where they have too little room, the most needed first.
pub(super) fn draw(model: &Model, frame: &mut Frame, area: Rect) {
    let width = usize::from(area.width);
    let row = FORMS
        .map(|form| row(model, form, usize::MAX))
        .into_iter()
        .find(|row| row.width() <= width)
        .unwrap_or_else(|| row(model, FORMS[2], width));
    frame.render_widget(Paragraph::new(row), area);
}

/// As many keys as fit into so many columns.
fn row(model: &Model, (gap, form): (usize, usize), width: usize) -> Line<'static> {
    let theme = model.theme;
    let mut row = Line::default();
    if model.over == Over::Leaving {
        row.push_span(Span::styled(
            leaving_word(model).to_string(),
            theme.strong(),
        ));
    }
    for Key { key, word } in keys(model) {
        let word = model.words.word(word[form]);
        let gap = if row.spans.is_empty() { 0 } else { gap };
        let key = key_name(&model.words, key[form]);
        let wide = gap + key.chars().count() + 1 + word.chars().count();
        if row.width().saturating_add(wide) > width {
            continue;
        }
        row.push_span(Span::raw(" ".repeat(gap)));
        row.push_span(Span::styled(key, theme.key()));
        row.push_span(Span::styled(format!(" {word}"), theme.faint()));
    }
    row
}

/// What stands on a key, where keyboards of the language have another word for it.
pub(super) fn key_name(words: &Words, key: &str) -> String {
    let list = words.word("screen.key-names");
    let pairs = list.split(',').filter_map(|pair| pair.split_once('='));
    pairs.fold(key.to_owned(), |key, (from, to)| {
        let (from, to) = (from.trim(), to.trim());
        let apart = |c: Option<char>| !c.is_some_and(char::is_alphanumeric);
        let stands = key.match_indices(from).find(|(at, _)| {
            apart(key[..*at].chars().next_back()) && apart(key[at + from.len()..].chars().next())
        });
        match stands {
            Some((at, _)) => format!("{}{to}{}", &key[..at], &key[at + from.len()..]),
            None => key.clone(),
        }
    })
}

/// What a learner is told before leaving.
pub(super) fn leaving_word(model: &Model) -> Prose {
    let word = match (&model.page, model.kept) {
        (_, false) => "screen.leaving.unsaved",
        _ if model.own_at_risk() => "screen.leaving.own",
        (Page::Menu(_) | Page::Building(_) | Page::Again(_), true) => "screen.leaving.menu",
        (Page::Working(_), true) => "screen.leaving.kept",
    };
    model.words.say(word, &[])
}

fn keys(model: &Model) -> Vec<Key> {
    match (model.over, &model.page) {
        (Over::Leaving, Page::Working(_) | Page::Building(_) | Page::Again(_)) => vec![
            key("Enter", "screen.strip.leave-now"),
            key("Space", "screen.strip.stay"),
            key("F5", "screen.strip.lessons"),
        ],
        (Over::Leaving, Page::Menu(_)) => vec![
            key("Enter", "screen.strip.leave-now"),
            key("Space", "screen.strip.stay"),
        ],
        (Over::Naming, page) => vec![
            key("Enter", "screen.strip.take-name"),
            key(
                "Esc",
                match (&model.people.name, page) {
                    (None, Page::Working(_)) => "screen.strip.no-name",
                    _ => "screen.strip.back",
                },
            ),
        ],
        (Over::Pivot(place), Page::Working(open)) => {
            let mut keys = vec![key("Left Right", "screen.strip.move")];
            let place = open.view.pivots.get(place);
            if place.is_some_and(|place| place.line.is_some()) {
                keys.push(key("Enter", "screen.strip.take"));
            }
            if place.is_some_and(|place| place.freely.is_some()) {
                keys.push(key("Tab", "screen.strip.freely"));
            }
            keys.push(key("Esc", "screen.strip.back"));
            keys
        }
        (Over::Pivot(_), _) => vec![key("Esc", "screen.strip.back")],
        (Over::Settings(_), _) => vec![
            key("Esc", "screen.strip.back"),
            key("Up Down", "screen.strip.choose"),
            key("Enter", "screen.strip.change"),
        ],
        (Over::Slope, _) => vec![
            key("1 2", "screen.strip.choose"),
            key("Esc", "screen.strip.not-now"),
        ],
        (Over::Help(_), _) => vec![
            key("Esc", "screen.strip.back"),
            key("Up Down", "screen.strip.scroll"),
            key("1 2 3", "screen.strip.section"),
        ],
        (Over::Nothing, Page::Menu(menu)) => {
            let mut keys = vec![
                key("Enter", "screen.strip.open"),
                key("F1", "screen.strip.help"),
                key("Esc", "screen.strip.leave"),
            ];
            if menu.unfinished.is_some() && menu.chosen == 0 {
                keys.push(key("Delete", "screen.strip.put-away"));
            }
            keys.push(match model.people.name {
                Some(_) => key("F8", "screen.strip.somebody-else"),
                None => key("F8", "screen.strip.name"),
            });
            keys.push(key("F9", "screen.strip.settings"));
            if menu.has_earlier() {
                keys.push(key("F6", "screen.strip.again"));
            }
            keys.push(key("Up Down", "screen.strip.choose"));
            keys
        }
        (Over::Nothing, Page::Again(looking)) => match &looking.open {
            Some(replayed) => keys_at_replay(model, &replayed.working),
            None => vec![
                key("Enter", "screen.strip.look"),
                key("F1", "screen.strip.help"),
                key("Esc", "screen.strip.leave"),
                key("F5", "screen.strip.lessons"),
                key("Up Down", "screen.strip.choose"),
            ],
        },
        (Over::Nothing, Page::Building(page)) => keys_at_building(model, page),
        (Over::Nothing, Page::Working(open)) => keys_at_problem(model, open),
    }
}

fn keys_at_building(model: &Model, page: &Building) -> Vec<Key> {
    let mut keys = Vec::new();
    if page.naming {
        return vec![
            key("Enter", "screen.strip.keep-file"),
            key("Esc", "screen.strip.back"),
        ];
    }
    let wanted = page.wanted();
    if wanted != Wanted::Change {
        keys.push(key("Enter", "screen.strip.take"));
    }
    if let Wanted::Choice(_) = wanted {
        keys.push(key("Up Down", "screen.strip.choose"));
    }
    if page.builder.answered() > 0 {
        keys.push(Key {
            key: ["F2", "F2"],
            word: ["screen.strip.answer-back", "screen.strip.answer-back.short"],
        });
    }
    keys.push(key("F1", "screen.strip.help"));
    keys.push(key("Esc", "screen.strip.leave"));
    if super::building::goes_on(model, page) {
        keys.push(match page.builder.question() {
            Some(_) => Key {
                key: ["Page Up", "PgUp"],
                word: ["screen.strip.answers", "screen.strip.answers"],
            },
            None => Key {
                key: ["Page Down", "PgDn"],
                word: [
                    "screen.strip.more-statement",
                    "screen.strip.statement.short",
                ],
            },
        });
    }
    keys.push(key("F5", "screen.strip.lessons"));
    keys
}

fn keys_at_replay(model: &Model, open: &Working) -> Vec<Key> {
    let mut keys = vec![key("Left Right", "screen.strip.lines")];
    if super::narrow(model.size) {
        keys.push(match open.pane {
            Pane::Diagram => key("Tab", "screen.strip.working"),
            Pane::Working => key("Tab", "screen.strip.diagram"),
        });
    }
    keys.push(key("F5", "screen.strip.list"));
    keys.push(key("F1", "screen.strip.help"));
    keys.push(key("Esc", "screen.strip.leave"));
    if open.view.keys.len() > 1 {
        keys.push(Key {
            key: ["F6", "F6"],
            word: ["screen.strip.other-way", "screen.strip.other-way.short"],
        });
    }
    if open.view.stages.len() > 1 {
        keys.push(Key {
            key: ["F2 F3", "F2 F3"],
            word: ["screen.strip.stages", "screen.strip.stages.short"],
        });
    }
    keys.push(Key {
        key: ["F4", "F4"],
        word: ["screen.strip.statement", "screen.strip.statement.short"],
    });
    keys
}

fn keys_at_problem(model: &Model, open: &Working) -> Vec<Key> {
    let mut keys = Vec::new();
    if open.finished() {
        if open.input.value().trim().is_empty() {
            keys.push(match model.lesson {
                Some(_) => key("Enter", "screen.strip.fresh"),
                None => key("Enter", "screen.strip.lessons"),
            });
        }
        if open.view.keys.len() > 1 {
            keys.push(Key {
                key: ["F6", "F6"],
                word: ["screen.strip.other-way", "screen.strip.other-way.short"],
            });
        }
        if model.lesson.is_some() {
            keys.push(key("F5", "screen.strip.lessons"));
        }
    }
    if super::narrow(model.size) {
        keys.push(match open.pane {
            Pane::Diagram => key("Tab", "screen.strip.working"),
            Pane::Working => key("Tab", "screen.strip.diagram"),
        });
    }
    keys.push(key("F1", "screen.strip.help"));
    keys.push(key("Esc", "screen.strip.leave"));
    let mut pivots = open.view.pivots.iter();
    if open.view.freely || pivots.any(|place| place.freely.is_some()) {
        keys.push(key("F7", "screen.strip.pivot"));
    }
    if super::statement_goes_on(model, open) {
        keys.push(key("Page Down", "screen.strip.more-statement"));
    } else if super::working_is_long(model, open) {
        keys.push(Key {
            key: ["Page Up", "PgUp"],
            word: ["screen.strip.older", "screen.strip.older.short"],
        });
    }
    if !open.history.is_empty() {
        keys.push(Key {
            key: ["Up", "Up"],
            word: ["screen.strip.history", "screen.strip.history.short"],
        });
    }
    if open.view.stages.len() > 1 {
        keys.push(Key {
            key: ["F2 F3", "F2 F3"],
            word: ["screen.strip.stages", "screen.strip.stages.short"],
        });
    }
    keys.push(if !open.statement_in_full() {
        Key {
            key: ["F4", "F4"],
            word: ["screen.strip.statement", "screen.strip.statement.short"],
        }
    } else if super::statement_alone(model, open) {
        key("F4", "screen.strip.diagram")
    } else {
        key("F4", "screen.strip.fold")
    });
    if !open.finished() && open.view.lines.is_empty() {
        keys.push(key("Enter", "screen.strip.enter"));
    }
    keys
}
