//! Names, settings and the map in the line dialogue.

use super::*;

fn nameless() -> Stand {
    Stand {
        people: People {
            name: None,
            others: vec!["Bo".into(), "Mira".into()],
            ask: true,
        },
        ..Stand::default()
    }
}

#[test]
fn a_name_is_asked_behind_the_verdict_and_may_be_given_at_any_time() {
    let (text, log) = talk_to(nameless(), true, b"3 N\nmy name is Zo\nname\nquit\n");
    let verdict = text.find("Line 1: wrong.").unwrap();
    let asked = text
        .find("Your lines are kept, so far without a name.")
        .unwrap();
    assert!(verdict < asked, "{text}");
    for said in ["name 2 for Mira.", "Welcome, Zo.", "At work: Zo."] {
        assert!(text.contains(said), "{said}: {text}");
    }
    assert!(log.contains(&"call Zo true".to_owned()), "{log:?}");
    assert!(!log.contains(&"entered name".to_owned()), "{log:?}");
    // At the list it is somebody else who sits down; a number may be wrong.
    let (text, log) = talk_to(nameless(), false, b"Name 9\nname 2\nnames\nquit\n");
    assert_eq!(log, ["call 9 false", "call 2 false"]);
    assert!(text.contains("Nobody has this number."), "{text}");
    assert!(
        text.contains("That is not one of the numbers above."),
        "{text}"
    );
}

#[test]
fn the_settings_are_numbered_and_hold_at_once() {
    let input =
        "settings\nsettings 2\nsettings 2\nsettings 3\nsettings 3\n\n2*9.8\nsettings 9\nquit\n";
    let (text, log) = talk_to(Stand::default(), true, input.as_bytes());
    for said in [
        "1. The word for what turns a body: moment. Else: torque.",
        "2. The decimal sign: a comma. Else: as the language has it, a",
        "3. Characters: plain letters.",
        "Read as: 2 * 9,8 = 19,6 N",
    ] {
        assert!(text.contains(said), "{said}: {text}");
    }
    assert_eq!(text.matches("1. The word").count(), 2, "{text}");
    assert!(!log.iter().any(|line| line.contains("settings")), "{log:?}");
    // What is typed is repeated as it was typed.
    assert!(text.contains("> 2*9.8"), "{text}");
    let after = text.split("plain letters").nth(1).unwrap();
    assert!(after.is_ascii(), "{after}");
    // The words to choose stay what they are, whichever is chosen.
    let (text, _) = talk_to(Stand::default(), true, b"settings 1\nquit\n");
    assert!(text.contains("body: torque. Else: moment."), "{text}");
    // The list is told once.
    let (text, _) = talk_to(Stand::default(), false, b"settings\nname\nquit\n");
    assert_eq!(text.matches("2. The gate.").count(), 1, "{text}");
}

#[test]
fn a_lesson_tells_what_it_builds_on_and_how_the_learner_stands() {
    for (standing, said) in [
        (Standing::New, "New."),
        (Standing::Begun, "Begun."),
        (Standing::Mastered, "Mastered."),
        (Standing::Due, "Mastered, and due to be seen again."),
    ] {
        let desk = Stand {
            standing,
            ..Stand::default()
        };
        let (text, log) = talk_to(desk, false, b"\nquit\n");
        let told = format!("2. The gate. Something. Builds on 1. {said}");
        assert!(text.contains(&told), "{text}");
        let next = match standing {
            Standing::Begun | Standing::Due => 1,
            Standing::New | Standing::Mastered => 0,
        };
        let offered = format!("press Enter for {}.", next + 1);
        assert!(text.contains(&offered), "{text}");
        assert_eq!(log[0], format!("open {next}"));
    }
}

/// Behind the number of a lesson, or alone, stands how its problem is taken.
#[test]
fn a_lesson_is_taken_as_an_example_by_a_word_behind_its_number() {
    for (typed, log) in [
        ("2 worked", ["open 1", "entered worked"]),
        ("gate last 3", ["open 1", "entered last 3"]),
        ("worked", ["open 0", "entered worked"]),
        ("Last 2", ["open 0", "entered last 2"]),
    ] {
        let input = format!("{typed}\nquit\n");
        let (text, asked) = talk_to(Stand::default(), false, input.as_bytes());
        assert_eq!(asked[..2], log, "{typed}: {asked:?}");
        assert!(
            text.contains("Type 1 worked to see lesson 1 worked first"),
            "{text}"
        );
    }
    let (_, asked) = talk_to(Stand::default(), false, b"9 worked\nquit\n");
    assert!(asked.is_empty(), "{asked:?}");
}

/// `pivot` tells the numbered places, and with a number stands for the line that takes one.
#[test]
fn a_pivot_is_chosen_by_its_number() {
    let input = b"pivot\npivot 2\npivot 9\npivot 2 freely\npivot tip\nquit\n";
    let (text, asked) = talk_to(Stand::default(), true, input);
    for said in [
        "1. the hinge",
        "2. the tip",
        "Type pivot and a number to say that point",
    ] {
        assert!(text.contains(said), "{said}: {text}");
    }
    let entered = asked
        .iter()
        .filter_map(|said| said.strip_prefix("entered "));
    let entered: Vec<&str> = entered.collect();
    let expected = ["at the tip", "freely, at the tip", "pivot tip", "quit"];
    assert_eq!(entered, expected);
}
