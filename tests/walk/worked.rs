//! Worked examples that fade.

use super::{open, right_lines};
use leverwright::session::{Course, Fading, Session, Sign, View};
use leverwright::text::Words;
use std::collections::BTreeSet;

/// The number of the right reason, found by trying each on a copy.
fn right_choice(session: &Session) -> usize {
    let is_right = |number: &usize| {
        let turn = session.clone().submit(&number.to_string());
        turn.line.sign == Sign::Right
    };
    let right: Vec<usize> = (1..=session.view().choices.len())
        .filter(is_right)
        .collect();
    assert_eq!(right.len(), 1, "{:?}", session.view().choices);
    right[0]
}

fn shown(view: &View) -> Vec<String> {
    let lines = view.lines.iter().filter(|line| line.sign == Sign::Shown);
    lines.map(|line| line.text.clone()).collect()
}

/// Goes through an example by its right reasons; the numbers that were typed.
fn by_right_reasons(session: &mut Session) -> Vec<usize> {
    let mut typed = Vec::new();
    while session.course() == Course::On {
        let number = right_choice(session);
        session.submit(&number.to_string());
        typed.push(number);
    }
    typed
}

/// The whole dialogue of an example, with a wrong reason, a reason passed over, and words.
#[test]
fn a_tilted_mast_is_worked_as_an_example() {
    let mut session = open("mast", 3);
    let mut text = String::new();
    let mut say = |session: &mut Session, line: &str| {
        let turn = session.submit(line);
        text.push_str(&format!("> {line}\n"));
        if !turn.line.verdict.is_empty() {
            text.push_str(&format!("  {}: ", turn.line.verdict));
        }
        text.push_str(&format!("{}\n", turn.line.message));
        for line in &turn.shown {
            text.push_str(&format!("  {} | {}\n", line.about, line.text));
        }
        if turn.moved_on {
            text.push_str(&format!("\n{}\n", turn.question));
            for (place, choice) in session.view().choices.iter().enumerate() {
                text.push_str(&format!("  {} {choice}\n", place + 1));
            }
        }
    };
    say(&mut session, "worked");
    let wrong = right_choice(&session) % 3 + 1;
    for line in [
        &wrong.to_string(),
        "m·g",
        "hint",
        "back",
        "4",
        &wrong.to_string(),
        "skip",
    ] {
        say(&mut session, line);
    }
    while session.course() == Course::On {
        let number = right_choice(&session).to_string();
        say(&mut session, &number);
    }
    for prose in session.view().summary {
        text.push_str(&format!("{prose}\n"));
    }
    insta::with_settings!({ snapshot_path => "../snapshots", prepend_module_to_snapshot => false }, {
        insta::assert_snapshot!("worked_example", text);
    });
}

/// Every lesson is worked to its end: each line stands there, each question has one right reason,
/// each wrong one gets a second go, and nothing is left unfilled.
#[test]
fn verif_every_lesson_is_worked_to_its_end_whatever_is_chosen() {
    let mut places = [0; 3];
    let mut asked = BTreeSet::new();
    for lesson in ["counter", "walkway", "mast"] {
        for seed in 1..=8 {
            let mut session = open(lesson, seed);
            session.submit("worked");
            while session.course() == Course::On {
                let view = session.view();
                asked.insert(view.question.to_string());
                let right = right_choice(&session);
                places[right - 1] += 1;
                let before = shown(&view).len();
                let other = right % 3 + 1;
                let turn = session.submit(&other.to_string());
                assert_eq!(turn.line.sign, Sign::Noted);
                assert!(!turn.moved_on && turn.shown.is_empty());
                for prose in view
                    .choices
                    .iter()
                    .chain([&view.question, &turn.line.message])
                {
                    let told = prose.to_string();
                    assert!(!told.contains(['{', '[']) && !told.contains("  "), "{told}");
                    assert!(!told.contains(" ,") && !told.contains(" ."), "{told}");
                }
                // A second wrong one is told, and the example goes on.
                let second = match seed % 2 {
                    0 => right,
                    _ => 6 - right - other,
                };
                let turn = session.submit(&second.to_string());
                let ended = session.course() == Course::Finished;
                assert!(ended || shown(&session.view()).len() > before);
                assert!(turn.moved_on, "{}", turn.line.message);
            }
            let view = session.view();
            assert!(view.steps.iter().all(|step| step.result.is_some()
                || ["which forces act", "the pivot", "moment sum"].contains(&step.title.as_str())
                || step.title.starts_with("part of T")));
            assert_eq!(view.fading, Fading::Worked);
            assert_eq!(view.summary.len(), 3);
        }
    }
    let all: usize = places.iter().sum();
    assert!(places.iter().all(|count| count * 6 > all), "{places:?}");
    assert!(asked.len() > 14, "{asked:?}");
}

/// Every kind of reason has its words whole, and no choice gives the right one away by its length.
#[test]
fn every_reason_has_its_words() {
    let words = Words::english();
    let kinds: BTreeSet<&str> = words
        .keys()
        .filter_map(|key| key.strip_prefix("reason.")?.split('.').next())
        .collect();
    assert!(kinds.len() > 15);
    for kind in kinds {
        for part in ["ask", "right", "a", "a-no", "b", "b-no"] {
            let key = format!("reason.{kind}.{part}");
            assert!(words.has(&key), "{key}");
            let told = words.word(&key);
            assert!(told.chars().count() < 100, "{key}: {told}");
        }
        for part in ["ask", "a-no", "b-no"] {
            let told = words.word(&format!("reason.{kind}.{part}"));
            assert!(told.contains('?'), "{kind}.{part}: {told}");
        }
    }
}

#[test]
fn only_the_last_steps_are_left_and_judged_as_ever() {
    let mut session = open("counter", 7);
    let lines = right_lines(&session);
    let [.., (_, pull), (_, hinge)] = lines.as_slice() else {
        panic!("{lines:?}");
    };
    let turn = session.submit("last 2");
    assert_eq!(turn.kept.truth, "shown");
    assert!(
        turn.question.to_string().starts_with("Solve it"),
        "{}",
        turn.question
    );
    // Each step is a line, and the first one for each force.
    let steps = session.view().steps.len() - 2;
    let forces = session.problem().forces().len();
    assert_eq!(turn.shown.len(), steps - 1 + forces);
    assert_eq!(session.view().fading, Fading::Last(Some(2)));
    assert_eq!(session.submit("T = 1 N").line.sign, Sign::Wrong);
    assert_eq!(session.submit(pull).line.sign, Sign::Right);
    session.submit("back");
    assert_eq!(session.submit(pull).line.number, Some(3));
    assert_eq!(session.submit(hinge).line.sign, Sign::Right);
    assert_eq!(session.course(), Course::Finished);
    // What was shown is not taken back.
    let mut session = open("counter", 7);
    session.submit("last 2");
    let before = session.view().steps;
    session.submit("back");
    assert_eq!(session.view().steps, before);
}

#[test]
fn without_a_number_the_balance_of_moments_is_the_first_of_ones_own() {
    for lesson in ["counter", "walkway", "mast"] {
        let mut session = open(lesson, 7);
        let lines = right_lines(&session);
        session.submit("last");
        assert!(
            session
                .view()
                .question
                .to_string()
                .contains("balance of moments")
        );
        let balance = lines
            .iter()
            .position(|(_, line)| line.contains(" = "))
            .unwrap();
        for (_, line) in &lines[balance..] {
            let turn = session.submit(line);
            assert!(
                matches!(turn.line.sign, Sign::Right | Sign::Rounded),
                "{line}"
            );
        }
        assert_eq!(session.course(), Course::Finished);
    }
    let mut session = open("counter", 7);
    session.submit("last 40");
    assert_eq!(session.view().fading, Fading::All);
    assert!(
        session
            .view()
            .steps
            .iter()
            .all(|step| step.result.is_none())
    );
}

#[test]
fn an_example_may_be_left_for_ones_own_working() {
    let mut session = open("walkway", 3);
    session.submit("worked");
    session.submit("skip");
    let before = shown(&session.view()).len();
    let turn = session.submit("guided");
    assert!(session.view().choices.is_empty());
    assert!(
        turn.question.to_string().contains("How large is"),
        "{}",
        turn.question
    );
    assert_eq!(shown(&session.view()).len(), before);
    // Taken up again, the next step is the first that is shown.
    session.submit("worked");
    assert_eq!(shown(&session.view()).len(), before + 1);
    session.submit("freely");
    assert!(session.view().freely && session.view().choices.is_empty());
    let turn = session.submit("worked");
    assert!(turn.shown.is_empty());
    session.submit("guided");
    session.submit("worked");
    session.submit("quit");
    assert_eq!(session.course(), Course::Quit);
}

/// A number typed beside the reasons is a choice and never a value; with no reason asked it is a value.
#[test]
fn the_same_lines_bring_the_same_example() {
    let mut session = open("mast", 11);
    session.submit("weight of the mast, middle, down");
    session.submit("worked");
    let typed = by_right_reasons(&mut session);
    let mut again = open("mast", 11);
    again.submit("weight of the mast, middle, down");
    again.submit("worked");
    for number in typed {
        again.submit(&number.to_string());
    }
    assert_eq!(session.view(), again.view());
}

/// What was shown throughout is told as the working, and as nobody's own way of it; with steps of
/// hers it is hers.
#[test]
fn a_worked_example_is_nobodys_own_way() {
    for (line, title) in [
        ("worked", "The whole working:"),
        (
            "last 2",
            "The whole working your way, with components across the mast:",
        ),
    ] {
        let mut session = open("mast", 3);
        session.submit(line);
        while session.course() == Course::On {
            let said = match session.view().choices.is_empty() {
                false => right_choice(&session).to_string(),
                true => {
                    let lines = right_lines(&session);
                    let mut lines = lines.into_iter().map(|(_, line)| line);
                    let next = lines.find(|line| session.clone().submit(line).moved_on);
                    next.unwrap()
                }
            };
            session.submit(&said);
        }
        let keys = session.view().keys;
        assert_eq!(keys[0].title.to_string(), title);
    }
}

/// The triangle of a part is drawn beside the reason that speaks of it.
#[test]
fn the_reason_of_a_part_shows_its_triangle() {
    let mut session = open("mast", 3);
    session.submit("worked");
    while !session.view().question.to_string().contains("the sine of") {
        session.submit("skip");
    }
    let triangle = session.view().marks.triangle.unwrap();
    assert!(!triangle.across.is_empty() && !triangle.across.contains('?'));
}
