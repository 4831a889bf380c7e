//! Estimates before the numbers: when they are asked, what passes them over, what is said at the
//! end.

use super::said::FROM_THE_PULL;
use super::{open, right_lines};
use leverwright::session::{Course, Session, Sign};

/// Past the forces and the pivot, in a session that asks for estimates.
fn at_the_estimates(lesson: &str, seed: u64) -> Session {
    let mut session = open(lesson, seed);
    session.ask_estimates();
    session.submit("skip");
    assert!(!session.view().estimates, "not before the pivot is said");
    let turn = session.submit("hinge");
    assert!(turn.moved_on && session.view().estimates);
    session
}

fn question(session: &Session) -> String {
    session.view().question.to_string()
}

/// What is said of the estimates at the end.
fn end(session: &mut Session) -> Vec<String> {
    while session.course() == Course::On {
        session.submit("skip");
    }
    let told = session.view().summary;
    let told = told.iter().map(ToString::to_string);
    told.filter(|line| line.starts_with("You expected"))
        .collect()
}

/// By hand, in newtons. mast 7: weights (72 + 71)·9.8 = 1401, pull 849; the level part of the
/// hinge's force is 849 to the left, the upright one 1401 up. walkway 7: (36·2.1 + 82·2 + 24·4.2)·9.8
/// over 2.2·sin 25° is a pull of 3588; parts 3588·cos 25° = 3252 to the left and 142·9.8 −
/// 3588·sin 25° = −125. counter 7: weights (9 + 8 + 7)·9.8 = 235, pull
/// (9·1.1 + 8·1.9 + 7·0.4)·9.8/2.2 = 124; only an upright part, 111 up.
#[test]
fn val_estimates_stand_beside_what_came_out() {
    for (lesson, lines, wanted) in [
        (
            "mast",
            &["2", "2", "1"][..],
            &[
                "You expected the pull of the rope to be less than all weights together; 849 N is \
                 less than 1400 N.",
                "You expected the upright part of the force of the hinge to be the larger and to \
                 act up; the level part is 849 N to the left, the upright part 1400 N up.",
            ][..],
        ),
        (
            "mast",
            &["more", "level", "right"],
            &[
                "You expected the pull of the rope to be more than all weights together; 849 N is \
                 less than 1400 N.",
                "You expected the level part of the force of the hinge to be the larger and to act \
                 to the right; the level part is 849 N to the left, the upright part 1400 N up.",
            ],
        ),
        (
            "walkway",
            &["3", "1.", "not sure"],
            &[
                "You expected the level part of the force of the hinge to be the larger; the level \
                 part is 3250 N to the left, the upright part 125 N down.",
            ],
        ),
        (
            "counter",
            &["2", "down"],
            &[
                "You expected the pull of the rope to be less than all weights together; 124 N is \
                 less than 235 N.",
                "You expected the force of the hinge to act down; it is 111 N and acts up.",
            ],
        ),
        ("mast", &["3", "3"], &[]),
    ] {
        let mut session = at_the_estimates(lesson, 7);
        for (place, line) in lines.iter().enumerate() {
            let asked = question(&session);
            assert!(session.view().estimates, "{lesson} {line}: {asked}");
            let turn = session.submit(line);
            assert_eq!((turn.line.sign, turn.line.number), (Sign::Talk, None));
            assert_eq!(turn.kept.truth, "estimate", "{line}");
            assert!(turn.moved_on, "{line}");
            let last = place + 1 == lines.len();
            assert_eq!(session.view().estimates, !last, "{lesson} {line}");
        }
        assert!(question(&session).contains("weight"), "the first number");
        assert_eq!(end(&mut session), wanted, "{lesson} {lines:?}");
    }
}

/// Every line that answers the next question does so as if no estimate had been asked.
#[test]
fn a_line_that_answers_the_next_question_passes_the_estimates_over() {
    for lesson in ["counter", "walkway", "mast"] {
        for seed in 1..=2 {
            let mut asked = at_the_estimates(lesson, seed);
            let mut plain = open(lesson, seed);
            plain.submit("skip");
            plain.submit("hinge");
            for (_, line) in right_lines(&plain) {
                assert_eq!(asked.submit(&line).kept, plain.submit(&line).kept, "{line}");
                assert!(!asked.view().estimates);
            }
            assert_eq!(asked.view(), plain.view());
        }
    }
    for line in [
        "63*1",
        "123",
        "hint",
        "show",
        "back",
        "why",
        "freely",
        "63*9.8 = ",
    ] {
        let mut asked = at_the_estimates("mast", 3);
        let mut plain = open("mast", 3);
        plain.submit("skip");
        plain.submit("hinge");
        assert_eq!(asked.submit(line).kept, plain.submit(line).kept, "{line}");
        assert_eq!(asked.view(), plain.view(), "{line}");
    }
}

/// A session asks for them only where it is told to; an empty line and `skip` pass them over, and
/// pass over nothing else; help leaves them.
#[test]
fn estimates_are_passed_over_alone_and_asked_only_where_wanted() {
    let mut session = open("mast", 3);
    session.submit("skip");
    session.submit("hinge");
    assert!(!session.view().estimates);
    let weight = question(&session);
    for line in ["", "  ", "skip"] {
        let mut session = at_the_estimates("mast", 3);
        session.submit("help");
        assert!(session.view().estimates, "help leaves them");
        assert_eq!(session.preview("2"), None);
        session.submit("1");
        let turn = session.submit(line);
        assert_eq!(turn.kept.truth, "estimate", "{line:?}");
        assert_eq!(question(&session), weight, "{line:?}");
        assert!(session.preview("2").is_some());
        assert_eq!(session.submit("2").line.sign, Sign::Wrong);
    }
}

/// In a free working they are called for, as often as one likes until the force is found.
#[test]
fn a_free_working_is_not_interrupted_and_may_call_for_estimates() {
    let mut session = open("mast", 3);
    session.ask_estimates();
    session.submit("freely");
    assert!(!session.view().estimates);
    session.submit("estimate");
    assert!(session.view().estimates);
    session.submit("1");
    assert!(
        question(&session).contains("the larger"),
        "{}",
        question(&session)
    );
    session.submit("estimate");
    assert!(question(&session).contains("all weights"), "anew");
    session.submit("2");
    session.submit("2");
    session.submit("1");
    assert!(!session.view().estimates);
    session.submit("W1 = 71*98");
    session.submit("W1 = 71*9.8");
    session.submit("T = (617.4*2.7*sin 35 + 695.8*4.5*sin 35 + 107.8*5.4*sin 35)/(4.2*sin 65)");
    let said = session.submit("estimate").line.message.to_string();
    assert!(said.contains("found already"), "{said}");
    for line in FROM_THE_PULL {
        session.submit(line);
    }
    assert_eq!(session.course(), Course::Finished, "{}", question(&session));
    let told = end(&mut session);
    assert_eq!(told.len(), 2, "{told:?}");
    assert!(told[0].contains("less than all weights together; 811 N is less than 1420 N"));
}

/// Called for before it is time, or where there is nothing to estimate.
#[test]
fn there_is_a_word_where_no_estimate_is_asked() {
    let mut session = open("mast", 3);
    let said = session.submit("estimate").line.message.to_string();
    assert!(said.contains("First say which forces act"), "{said}");
    session.submit("skip");
    session.submit("hinge");
    session.submit("estimate");
    assert!(session.view().estimates, "called for in a guided one");
}

/// A journal that was written without estimates: its lines mean what they meant.
#[test]
fn a_line_that_was_judged_as_a_number_is_one() {
    for (truth, estimated) in [
        ("wrong", false),
        ("skipped", false),
        ("hint", false),
        ("estimate", true),
        ("command", true),
    ] {
        let mut session = at_the_estimates("mast", 3);
        session.pass_estimates(truth);
        let kept = session.submit("2").kept.truth;
        assert_eq!(kept == "estimate", estimated, "{truth}");
    }
}

/// An example asks for reasons, with numbers to choose from, and for nothing else.
#[test]
fn an_example_asks_for_no_estimate() {
    let mut session = open("counter", 7);
    session.ask_estimates();
    session.submit("worked");
    let mut asked = 0;
    while session.course() == Course::On {
        let view = session.view();
        assert!(
            !view.estimates && view.choices.len() == 3,
            "{}",
            view.question
        );
        session.submit("skip");
        asked += 1;
    }
    assert!(asked > 3, "{asked}");
}
