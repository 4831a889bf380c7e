//! Looking again: the list by date, and a problem line by line.

use super::at_lessons::mast;
use super::looks::told;
use super::stand_ins::{Remembering, blank};
use crate::practice::{Again, Earlier, Start};
use crate::screen::keys::Command;
use crate::screen::message::Message;
use crate::screen::model::{Model, Page};
use crate::screen::{begin, dispatch};

/// The mast, with a wrong line, a hint under it, and the end.
pub(super) fn replay() -> Again {
    let mut session = mast();
    let mut views = vec![session.view()];
    let mut lines = vec![
        "weight of the mast, middle, down",
        "skip",
        "hinge",
        "63*1",
        "hint",
        "63*9.8",
    ];
    lines.extend(["skip"; 14]);
    for line in lines {
        session.submit(line);
        views.push(session.view());
    }
    Again {
        session: Box::new(session),
        views,
        notes: Vec::new(),
    }
}

fn at_list((columns, rows): (u16, u16), count: usize) -> (Remembering, Model) {
    let earlier = |place: usize| Earlier {
        title: if place == 0 {
            "The drill mast of the mountain rescue".into()
        } else {
            "The counter of the market boat".into()
        },
        day: format!("2026-11-{:02}", 28 - place),
        lines: 3 * place + 1,
        finished: place % 2 == 1,
    };
    let mut desk = Remembering {
        earlier: (0..count).map(earlier).collect(),
        ..Remembering::default()
    };
    let mut model = blank(columns, rows);
    begin(&mut desk, &mut model, Start::Menu);
    (desk, model)
}

fn press(desk: &mut Remembering, model: &mut Model, command: Command) -> String {
    dispatch(desk, model, Message::Pressed(command));
    told(model)
}

#[test]
fn problems_are_listed_by_date_and_looked_at_line_by_line() {
    let (mut desk, mut model) = at_list((80, 24), 3);
    let list = press(&mut desk, &mut model, Command::Other);
    insta::assert_snapshot!("again_list_80x24", list);
    press(&mut desk, &mut model, Command::Down);
    let shown = press(&mut desk, &mut model, Command::Enter);
    assert!(shown.contains("cannot be looked at again"), "{shown}");
    press(&mut desk, &mut model, Command::Up);
    let first = press(&mut desk, &mut model, Command::Enter);
    assert!(first.contains("Looking again: 1 of 20."), "{first}");
    assert!(first.contains("weight of the mast,"), "{first}");
    for _ in 0..3 {
        press(&mut desk, &mut model, Command::Right);
    }
    let wrong = told(&model);
    assert!(
        wrong.contains("does not hold") && wrong.contains("63*1"),
        "{wrong}"
    );
    let hint = press(&mut desk, &mut model, Command::Enter);
    assert!(
        hint.contains("does not hold") && hint.contains("→"),
        "{hint}"
    );
    // What was drawn later is not drawn yet.
    let end = press(&mut desk, &mut model, Command::LineEnd);
    assert!(end.contains("How it went") || end.contains("skip"), "{end}");
    press(&mut desk, &mut model, Command::LineStart);
    let start = told(&model);
    assert!(start.contains("before the first of 20 lines"), "{start}");
    assert_eq!(press(&mut desk, &mut model, Command::Left), start);
    // Nothing is typed, entered or closed here.
    dispatch(
        &mut desk,
        &mut model,
        Message::TypedTogether("63*9.8".into()),
    );
    dispatch(&mut desk, &mut model, Message::Pasted("63*9.8".into()));
    assert_eq!(told(&model), start);
    press(&mut desk, &mut model, Command::Lessons);
    assert!(told(&model).contains("2026-11-28"));
    press(&mut desk, &mut model, Command::Lessons);
    assert!(matches!(model.page, Page::Menu(_)));
    let asked = ["earlier", "look again 1", "look again 0"];
    assert_eq!(desk.asked, asked);
}

#[test]
fn the_whole_working_is_there_at_the_last_line_two_ways() {
    for size in [(60, 16), (80, 24), (100, 30)] {
        let (mut desk, mut model) = at_list(size, 1);
        for command in [Command::Other, Command::Enter, Command::LineEnd] {
            press(&mut desk, &mut model, command);
        }
        let shown = press(&mut desk, &mut model, Command::Other);
        assert!(shown.contains("The same another way"), "{shown}");
    }
    let (mut desk, mut model) = at_list((120, 40), 1);
    for command in [Command::Other, Command::Enter, Command::LineEnd] {
        press(&mut desk, &mut model, command);
    }
    let end = told(&model);
    assert!(
        end.contains("How it went") && end.contains("→ Next:"),
        "{end}"
    );
    let help = press(&mut desk, &mut model, Command::Help);
    assert!(
        help.contains("the line before") && !help.contains("Backspace"),
        "{help}"
    );
}

#[test]
fn where_nothing_was_worked_at_there_is_a_word() {
    let (mut desk, mut model) = at_list((80, 24), 0);
    let shown = press(&mut desk, &mut model, Command::Other);
    assert!(shown.contains("nothing to look at again"), "{shown}");
    assert!(!shown.contains("F6"), "{shown}");
    // A long list goes with what is chosen.
    let (mut desk, mut model) = at_list((60, 16), 28);
    press(&mut desk, &mut model, Command::Other);
    let end = press(&mut desk, &mut model, Command::LineEnd);
    assert!(
        end.contains("2026-11-01") && !end.contains("2026-11-28"),
        "{end}"
    );
}
