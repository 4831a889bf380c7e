//! Screens of real problems: long answers, a free working, and what plain letters show.

use super::looks::told;
use super::stand_ins::{Remembering, blank};
use crate::practice::Opening;
use crate::screen::dispatch;
use crate::screen::keys::Command;
use crate::screen::message::Message;
use crate::screen::model::Model;
use crate::session::Session;
use crate::text::Words;

/// The cosine stands for a sine at the first load.
const WRONG: &str = "617.4*2.7*sin 35 + 695.8*4.5*cos 35 + 107.8*5.4*sin 35 = 4.2*T*sin 65";

/// The mast of seed 3.
pub(super) fn mast() -> Session {
    let lessons = crate::lesson::built_in();
    let lesson = lessons.iter().find(|lesson| lesson.id() == "mast").unwrap();
    let problem = crate::draw::draw(lesson, 3, "en").unwrap().problem;
    Session::start(problem, None, Words::english()).unwrap()
}

/// The same on a screen, with lines entered.
pub(super) fn at_mast((columns, rows): (u16, u16), unicode: bool, lines: &[&str]) -> Model {
    let mut model = blank(columns, rows);
    model.theme.unicode = unicode;
    model.show(Opening {
        session: Box::new(mast()),
        resumed: false,
        whole: true,
        first: None,
        notes: Vec::new(),
    });
    let mut desk = Remembering::default();
    for line in lines {
        let messages = line.chars().map(Message::Typed);
        for message in messages.chain([Message::Pressed(Command::Enter)]) {
            dispatch(&mut desk, &mut model, message);
        }
    }
    model
}

/// What is told of in one sentence, rows and blanks aside.
fn flowing(shown: &str) -> String {
    shown.split_whitespace().collect::<Vec<_>>().join(" ")
}

/// `help` and `why` answer at length: what has no room beside the diagram is a key away.
#[test]
fn a_long_answer_says_how_to_see_the_rest() {
    let before = ["weight of the mast, middle, down", "help"];
    for size in [(60, 16), (72, 20)] {
        let mut model = at_mast(size, true, &before);
        let shown = told(&model);
        assert!(!flowing(&shown).contains("quit leaves"), "{shown}");
        assert!(shown.contains("The rest: Tab."), "{size:?}\n{shown}");
        crate::screen::update(&mut model, Message::Pressed(Command::Swap));
        let mut whole = told(&model);
        for _ in 0..4 {
            if !whole.contains("More below: Page Down.") {
                break;
            }
            crate::screen::update(&mut model, Message::Pressed(Command::PageDown));
            whole = told(&model);
        }
        assert!(flowing(&whole).contains("quit leaves"), "{size:?}\n{whole}");
    }
    insta::assert_snapshot!("help_cut_72x20", told(&at_mast((72, 20), true, &before)));
    // Where the givens make room, all of it stands there.
    let whole = told(&at_mast((80, 24), true, &before));
    assert!(whole.contains("leaves; nothing is lost."), "{whole}");
}

/// What has room is told in full, without a word that there is more.
#[test]
fn a_short_answer_says_nothing_of_a_rest() {
    let model = at_mast((80, 24), true, &["weight of the mast, middle, down"]);
    assert!(!told(&model).contains("The rest"), "{}", told(&model));
}

/// An ellipsis is three dots where only plain letters may be shown.
#[test]
fn in_ascii_an_ellipsis_is_spelled() {
    let lines = ["skip", "skip", "skip", "skip", "skip", "skip", "skip"];
    let model = at_mast((80, 24), false, &lines);
    let shown = told(&model);
    assert!(shown.contains("Wb*sin(...) or Wb*cos(...)"), "{shown}");
    assert!(!shown.contains("(?)"), "{shown}");
}

/// The header of a free working counts what the problem asks for, and no step.
#[test]
fn a_free_working_is_headed_as_one() {
    let model = at_mast((80, 24), true, &["freely"]);
    let shown = told(&model);
    let header = shown.lines().next().unwrap();
    assert!(header.ends_with("free working"), "{header}");
    assert!(!shown.contains("step 3"), "{shown}");
    insta::assert_snapshot!("freely_80x24", shown);
    let lines = ["freely", WRONG, "hint"];
    insta::assert_snapshot!(
        "freely_hint_100x30",
        told(&at_mast((100, 30), true, &lines))
    );
}

/// A reason is asked with all of its choices in sight, and the line that it is about.
#[test]
fn a_worked_example_shows_its_line_and_every_choice() {
    let lines = ["worked", "skip", "skip", "skip", "skip"];
    for size in [(60, 16), (80, 24), (100, 30), (140, 45)] {
        let shown = told(&at_mast(size, true, &lines));
        for number in ["1  ", "2  ", "3  "] {
            let stands = |row: &str| row.trim_start().starts_with(number);
            assert!(shown.lines().any(stands), "{size:?}\n{shown}");
        }
        assert!(flowing(&shown).contains("90° − θ"), "{size:?}\n{shown}");
    }
    insta::assert_snapshot!("worked_80x24", told(&at_mast((80, 24), true, &lines)));
    insta::assert_snapshot!("worked_60x16", told(&at_mast((60, 16), true, &lines)));
    insta::assert_snapshot!("worked_100x30", told(&at_mast((100, 30), true, &lines)));
}

/// The ring moves over the places of the drawing, and Enter takes the one it stands at.
#[test]
fn the_pivot_is_chosen_on_the_drawing() {
    let mut model = at_mast((80, 24), true, &["skip"]);
    let press = |model: &mut Model, command| {
        dispatch(
            &mut Remembering::default(),
            model,
            Message::Pressed(command),
        );
    };
    press(&mut model, Command::Pivot);
    press(&mut model, Command::LineEnd);
    insta::assert_snapshot!("pivot_80x24", told(&model));
    // A digit leads there, too; Tab works freely about it, and what was typed stays.
    for c in "xy".chars() {
        crate::screen::update(&mut model, Message::Typed(c));
    }
    crate::screen::update(&mut model, Message::Typed('1'));
    assert!(told(&model).contains("Enter takes moments about the hinge."));
    press(&mut model, Command::LineEnd);
    press(&mut model, Command::Swap);
    let shown = told(&model);
    assert!(
        flowing(&shown).contains("freely, moments about the"),
        "{shown}"
    );
    insta::assert_snapshot!("pivot_freely_80x24", shown);
    // Esc leaves all as it was.
    press(&mut model, Command::Pivot);
    press(&mut model, Command::Left);
    press(&mut model, Command::Leave);
    assert_eq!(told(&model), shown);
}

/// The ring is in sight, and every place has its number, at every size.
#[test]
fn the_ring_is_in_sight_at_every_size() {
    for size in [(60, 16), (80, 24), (100, 30), (140, 45)] {
        let mut model = at_mast(size, true, &["skip"]);
        crate::screen::update(&mut model, Message::Pressed(Command::Pivot));
        let shown = told(&model);
        for number in 1..=4 {
            assert!(
                shown.contains(&format!("{number} the ")),
                "{size:?}\n{shown}"
            );
        }
        assert!(shown.matches('◎').count() >= 2, "{size:?}\n{shown}");
    }
}

/// What may be done about a wrong line is offered as long as it waits, and no longer.
#[test]
fn the_offer_stays_while_a_wrong_line_waits() {
    let offers = |lines: &[&str]| {
        let lines = [&["skip", "hinge", "63*1"][..], lines].concat();
        told(&at_mast((100, 30), true, &lines)).contains("Mend it, or type hint")
    };
    assert!(offers(&[]) && offers(&["why"]) && offers(&["63*2"]));
    assert!(!offers(&["63*9.8 N"]));
}
