//! What the learner chooses for the display, and what is shown then.

use super::looks::told;
use super::stand_ins::{Canned, Remembering, at_problem, blank, open, read_as};
use crate::practice::{Opening, Start};
use crate::screen::keys::Command;
use crate::screen::message::Message;
use crate::screen::model::{Model, Over};
use crate::screen::{begin, dispatch};
use crate::text::{Decimal, Language, Prose, Settings, Slope, Symbols, Turning};

fn press(desk: &mut Remembering, model: &mut Model, command: Command) {
    dispatch(desk, model, Message::Pressed(command));
}

fn type_in(desk: &mut Remembering, model: &mut Model, text: &str) {
    for c in text.chars() {
        dispatch(desk, model, Message::Typed(c));
    }
}

#[test]
fn the_page_of_the_settings() {
    let mut desk = Remembering::default();
    let mut model = at_problem(true, 80, 24);
    press(&mut desk, &mut model, Command::Settings);
    insta::assert_snapshot!("settings_80x24", told(&model));
    model.size = (60, 16);
    assert!(told(&model).contains("with ordinary characters"));
}

/// What the class fixes stands below what can be chosen, in the manner that is chosen.
#[test]
fn the_page_of_the_settings_tells_what_the_class_has_set() {
    let mut desk = Remembering::default();
    let mut model = at_problem(true, 80, 30);
    let told_of = |text: &str| Prose::plain(text.to_owned());
    model.fixed = vec![
        told_of("Set by your teacher for 10b, whatever you choose here:"),
        told_of("g = 9.81 m/s² in every problem that is drawn or built."),
        told_of("A last value needs just so many figures, no fewer and no more."),
    ];
    press(&mut desk, &mut model, Command::Settings);
    insta::assert_snapshot!("settings_class_80x30", told(&model));
    type_in(&mut desk, &mut model, "22");
    assert!(told(&model).contains("g = 9,81 m/s²"));
}

#[test]
fn a_choice_is_written_down_and_shown_at_once() {
    let mut desk = Remembering::default();
    let mut model = at_problem(true, 100, 30);
    let before = told(&model);
    for given in ["6.00 m", "4.50 m"] {
        assert!(before.contains(given), "{before}");
    }
    press(&mut desk, &mut model, Command::Settings);
    press(&mut desk, &mut model, Command::Down);
    press(&mut desk, &mut model, Command::Right);
    press(&mut desk, &mut model, Command::Right);
    assert_eq!(desk.settings.decimal, Decimal::Comma);
    type_in(&mut desk, &mut model, "1");
    assert_eq!(desk.settings.turning, Turning::Torque);
    let page = told(&model);
    assert!(page.contains("● torque"), "{page}");
    assert!(page.contains("○ moment"), "{page}");
    press(&mut desk, &mut model, Command::Leave);
    assert_eq!(model.over, Over::Nothing);
    let shown = told(&model);
    for given in ["6,00 m", "4,50 m"] {
        assert!(shown.contains(given), "{given}: {shown}");
        assert!(!shown.contains(&given.replace(',', ".")), "{shown}");
    }
    // Her own lines stay as they were typed.
    assert!(shown.contains("42*9.8"), "{shown}");
    // The preview too.
    type_in(&mut desk, &mut model, "2.5*x");
    assert_eq!(read_as(&mut model), Some("2,5 · x".to_owned()));
    model.over = Over::Help(0);
    model.size = (80, 100);
    let help = told(&model);
    assert!(help.contains("about which torques are taken"), "{help}");
    // And back.
    model.size = (100, 30);
    model.over = Over::Nothing;
    open(&mut model).set_line(String::new());
    press(&mut desk, &mut model, Command::Settings);
    type_in(&mut desk, &mut model, "12");
    press(&mut desk, &mut model, Command::Leave);
    assert_eq!(told(&model), before);
    assert_eq!(desk.asked, ["settle"; 5]);
}

/// A language that is chosen is spoken at once, but for a problem that is open.
#[test]
fn the_language_is_changed_at_once() {
    let german = Language::tagged("de");
    let mut desk = Remembering::default();
    let mut model = at_problem(true, 80, 24);
    let before = open(&mut model).view.question.to_string();
    press(&mut desk, &mut model, Command::Settings);
    type_in(&mut desk, &mut model, "55");
    assert_eq!(desk.settings.language, german);
    let page = told(&model);
    for said in ["Einstellungen", "● Deutsch", "○ English", "Die Sprache"] {
        assert!(page.contains(said), "{said}: {page}");
    }
    insta::assert_snapshot!("settings_german_80x24", page);
    press(&mut desk, &mut model, Command::Leave);
    assert_eq!(
        open(&mut model).view.question.to_string(),
        before.replace('.', ",")
    );
    // At the list the lessons are told anew.
    let mut model = blank(80, 24);
    begin(&mut desk, &mut model, Start::Menu);
    assert!(told(&model).contains("Wähle"), "{}", told(&model));
    press(&mut desk, &mut model, Command::Settings);
    type_in(&mut desk, &mut model, "5");
    press(&mut desk, &mut model, Command::Leave);
    assert!(!told(&model).contains("Wähle"), "{}", told(&model));
}

#[test]
fn characters_are_those_that_were_chosen() {
    let mut desk = Remembering {
        settings: Settings {
            symbols: Symbols::Ascii,
            ..Settings::default()
        },
        ..Remembering::default()
    };
    let mut model = blank(80, 24);
    begin(&mut desk, &mut model, Start::Lesson(0));
    assert!(told(&model).is_ascii());
    press(&mut desk, &mut model, Command::Settings);
    type_in(&mut desk, &mut model, "3");
    assert_eq!(desk.settings.symbols, Symbols::Found);
    assert!(!told(&model).is_ascii());
}

/// The stand-in's problem has a tilted body.
#[test]
fn how_a_slope_looks_best_is_asked_once() {
    let opening = || Opening {
        session: Box::new(Canned::new(super::fixture::view(false))),
        resumed: false,
        whole: true,
        first: None,
        notes: Vec::new(),
    };
    for (key, slope) in [("1", Slope::Line), ("2", Slope::Characters)] {
        let mut desk = Remembering::default();
        let mut model = blank(80, 24);
        model.asks_for_slope = true;
        dispatch(&mut desk, &mut model, Message::Opened(Ok(opening())));
        assert_eq!(model.over, Over::Slope);
        if key == "1" {
            insta::assert_snapshot!("slope_80x24", told(&model));
        }
        type_in(&mut desk, &mut model, key);
        assert_eq!((model.over, desk.settings.slope), (Over::Nothing, slope));
        let braille = told(&model).contains(|c| ('\u{2801}'..='\u{28ff}').contains(&c));
        assert_eq!(braille, slope == Slope::Line);
        dispatch(&mut desk, &mut model, Message::Opened(Ok(opening())));
        assert_eq!(model.over, Over::Nothing);
    }
    // Put off, it is not asked again before the next start; without the characters never.
    let mut desk = Remembering::default();
    let mut model = blank(80, 24);
    model.asks_for_slope = true;
    dispatch(&mut desk, &mut model, Message::Opened(Ok(opening())));
    press(&mut desk, &mut model, Command::Leave);
    assert_eq!(
        (model.over, desk.settings.slope),
        (Over::Nothing, Slope::Unasked)
    );
    dispatch(&mut desk, &mut model, Message::Opened(Ok(opening())));
    assert_eq!(model.over, Over::Nothing);
    let mut model = blank(80, 24);
    model.asks_for_slope = true;
    model.theme.unicode = false;
    dispatch(&mut desk, &mut model, Message::Opened(Ok(opening())));
    assert_eq!(model.over, Over::Nothing);
}
