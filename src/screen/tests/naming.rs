//! The name that is asked once there is something to keep, and the map with who stands where.

use super::looks::told;
use super::stand_ins::{Remembering, at_problem, blank, open};
use crate::practice::{Desk, People, Resumable, Standing, Start};
use crate::screen::keys::Command;
use crate::screen::message::Message;
use crate::screen::model::{Model, Over, Page};
use crate::screen::{begin, dispatch};

/// A screen at a problem, and a desk that asks for a name.
fn asked(name: Option<&str>) -> (Remembering, Model) {
    let desk = Remembering {
        people: People {
            name: name.map(str::to_owned),
            others: vec!["Bo".into(), "Mira".into()],
            ask: name.is_none(),
        },
        ..Remembering::default()
    };
    (desk, at_problem(false, 80, 24))
}

fn enter(desk: &mut Remembering, model: &mut Model, text: &str) {
    for c in text.chars() {
        dispatch(desk, model, Message::Typed(c));
    }
    dispatch(desk, model, Message::Pressed(Command::Enter));
}

fn press(desk: &mut Remembering, model: &mut Model, command: Command) {
    dispatch(desk, model, Message::Pressed(command));
}

fn notes(model: &Model) -> String {
    let notes: Vec<String> = model.notes.iter().map(ToString::to_string).collect();
    notes.join(" ")
}

#[test]
fn a_name_is_asked_after_the_first_line_and_the_verdict_stays_in_sight() {
    let (mut desk, mut model) = asked(None);
    enter(&mut desk, &mut model, "T = 3 N");
    assert_eq!(model.over, Over::Naming);
    insta::assert_snapshot!("naming_80x24", told(&model));
    model.size = (60, 16);
    let shown = told(&model);
    for needed in ["It holds.", "Under which name", "1 Bo, 2 Mira"] {
        assert!(shown.contains(needed), "{needed}: {shown}");
    }
    enter(&mut desk, &mut model, "Zoë");
    assert_eq!(desk.asked[2..], ["call \"Zoë\" true"]);
    assert_eq!(
        (model.over, notes(&model).as_str()),
        (Over::Nothing, "Zoë: your lines are kept under this name.")
    );
    assert_eq!(open(&mut model).input.value(), "");
}

#[test]
fn enter_alone_or_the_key_to_leave_go_on_without_a_name() {
    for (typed, key) in [
        ("", Command::Enter),
        ("  ", Command::Enter),
        ("no", Command::Enter),
        ("later", Command::Enter),
        ("Zo", Command::Leave),
    ] {
        let (mut desk, mut model) = asked(None);
        enter(&mut desk, &mut model, "T = 3 N");
        for c in typed.chars() {
            dispatch(&mut desk, &mut model, Message::Typed(c));
        }
        press(&mut desk, &mut model, key);
        assert_eq!(desk.asked[2..], ["call \"\" true"], "{typed:?}");
        assert_eq!(model.over, Over::Nothing);
        assert!(notes(&model).is_empty());
    }
}

/// Whoever types on without reading has typed an answer.
#[test]
fn a_line_of_working_is_no_name() {
    for line in [
        "T = 4 N",
        "weight of the lamp, tip, down",
        "2*9.8",
        "78.4 N",
        "hint",
        "quit",
    ] {
        let (mut desk, mut model) = asked(None);
        enter(&mut desk, &mut model, "T = 3 N");
        desk.people.ask = false;
        enter(&mut desk, &mut model, line);
        let entered = format!("entered {line}");
        assert_eq!(desk.asked[2], entered, "{line}");
        assert_ne!(model.over, Over::Naming);
    }
}

#[test]
fn a_name_that_cannot_be_taken_is_asked_again_and_edited_like_a_line() {
    let (mut desk, mut model) = asked(None);
    enter(&mut desk, &mut model, "T = 3 N");
    enter(&mut desk, &mut model, "9");
    assert_eq!(
        (model.over, notes(&model).as_str()),
        (Over::Naming, "Nobody here has this number.")
    );
    press(&mut desk, &mut model, Command::CutBefore);
    dispatch(&mut desk, &mut model, Message::TypedTogether("Bx".into()));
    press(&mut desk, &mut model, Command::Backspace);
    dispatch(
        &mut desk,
        &mut model,
        Message::Pasted("o\u{1b}\nanything".into()),
    );
    press(&mut desk, &mut model, Command::Enter);
    assert_eq!(desk.asked.last().unwrap(), "call \"Bo\" true");
}

#[test]
fn at_the_list_somebody_else_sits_down() {
    let (mut desk, mut model) = asked(Some("Zoë"));
    model.page = Page::Menu(Default::default());
    begin(&mut desk, &mut model, Start::Menu);
    assert!(told(&model).contains("at work: Zoë"));
    press(&mut desk, &mut model, Command::Name);
    insta::assert_snapshot!("naming_at_the_list_80x24", told(&model));
    enter(&mut desk, &mut model, "2");
    assert_eq!(desk.asked, ["call \"2\" false"]);
    assert_eq!(model.over, Over::Nothing);
    assert!(notes(&model).contains("your lines are kept"));
    // A window that is too small shows nothing of it, and leaves as everywhere.
    press(&mut desk, &mut model, Command::Name);
    model.size = (40, 10);
    enter(&mut desk, &mut model, "x");
    press(&mut desk, &mut model, Command::Leave);
    assert_eq!(model.over, Over::Leaving);
    assert_eq!(desk.asked.len(), 1);
}

fn map(standings: [Standing; 3], unfinished: bool, columns: u16, rows: u16) -> Model {
    let mut desk = Remembering {
        standings,
        unfinished: unfinished.then(|| Resumable {
            title: "The shelf of the pantry".into(),
            lines: 4,
        }),
        ..Remembering::default()
    };
    let mut model = blank(columns, rows);
    begin(&mut desk, &mut model, Start::Menu);
    model
}

#[test]
fn the_map_tells_what_builds_on_what_and_how_the_learner_stands() {
    use Standing::{Begun, Due, Mastered, New};
    let model = map([Mastered, Begun, New], true, 100, 30);
    insta::assert_snapshot!("map_100x30", told(&model));
    let mut plain = map([Due, Mastered, New], false, 80, 24);
    plain.theme.unicode = false;
    insta::assert_snapshot!("map_ascii_80x24", told(&plain));
}

/// The row at which one begins is the one to go on with.
#[test]
fn enter_at_the_list_goes_on() {
    use Standing::{Begun, Due, Mastered, New};
    for (standings, unfinished, expected) in [
        ([New, New, New], false, "open 0"),
        ([Begun, New, New], false, "open 0"),
        ([Mastered, New, New], false, "open 1"),
        ([Mastered, Due, Begun], false, "open 1"),
        ([Mastered, Due, Begun], true, "resume"),
    ] {
        let mut desk = Remembering {
            standings,
            unfinished: unfinished.then(|| Resumable {
                title: "The shelf of the pantry".into(),
                lines: 4,
            }),
            ..Remembering::default()
        };
        let mut model = blank(80, 24);
        begin(&mut desk, &mut model, Start::Menu);
        press(&mut desk, &mut model, Command::Enter);
        assert_eq!(desk.asked, [expected], "{standings:?}");
        assert_eq!(desk.lessons().len(), 3);
    }
}
