//! Laws of a session: what holds for whole walks, whatever is entered.

use leverwright::draw::{draw, draw_sister};
use leverwright::key::{Pins, Sampling, StepId};
use leverwright::lesson::built_in;
use leverwright::session::{Course, Progress, Session, Sign, View};
use leverwright::text::Words;
use leverwright::units::value_text;
use proptest::prelude::*;

fn open(lesson: &str, seed: u64) -> Session {
    let lessons = built_in();
    let lesson = lessons.iter().find(|known| known.id() == lesson).unwrap();
    let drawn = draw(lesson, seed, "en").unwrap();
    let sister = draw_sister(lesson, &drawn.place, seed, "en").map(|drawn| drawn.problem);
    Session::start(drawn.problem, sister, Words::english()).unwrap()
}

/// The place of the step asked now.
fn at(view: &View) -> Option<usize> {
    view.steps
        .iter()
        .position(|step| step.progress == Progress::Now)
}

/// The mast of seed 3 up to the parts across it. Numbers by hand: 63·9.8, 71·9.8, 11·9.8.
const BEFORE_THE_PARTS: &[&str] = &[
    "weight of the mast at its middle, down",
    "W1 at 4.5 m, down",
    "weight of the bag of gear at the tip, down",
    "tension of the rope at 4.2 m, along the rope",
    "force of the hinge at the foot, unknown",
    "hinge",
    "617.4 N",
    "695.8 N",
    "107.8 N",
    "90 - 55",
    "10 + 55",
];

fn mast_at_the_parts() -> Session {
    let mut session = open("mast", 3);
    for line in BEFORE_THE_PARTS {
        let turn = session.submit(line);
        assert_eq!(turn.line.sign, Sign::Right, "{line}: {}", turn.line.message);
    }
    session
}

fn right(session: &mut Session, lines: &[&str]) {
    for line in lines {
        let turn = session.submit(line);
        assert!(
            matches!(turn.line.sign, Sign::Right | Sign::Rounded) && turn.moved_on,
            "{line}: {:?} {}",
            turn.line.sign,
            turn.line.message
        );
    }
}

#[test]
fn verif_the_same_lines_give_the_same_view() {
    let lines = [
        "hint",
        "rope",
        "tip",
        "Wb cos α",
        "Wb cos α",
        "go on",
        "back",
        "hint",
        "hint",
        "skip",
        "W1 sin α",
        "",
        "(((",
        "idk",
        "show",
    ];
    let (mut one, mut other) = (mast_at_the_parts(), mast_at_the_parts());
    for line in lines {
        assert_eq!(one.submit(line), other.submit(line), "{line}");
        assert_eq!(one.view(), other.view(), "{line}");
    }
}

#[test]
fn verif_a_line_not_understood_changes_only_the_list_of_lines() {
    let long = "7".repeat(600);
    for line in ["((", "Wb cos", "zzz + 3", long.as_str(), "\u{1b}[2J@"] {
        let mut session = mast_at_the_parts();
        let before = session.view();
        let turn = session.submit(line);
        assert_eq!(turn.line.sign, Sign::Unclear, "{line}");
        let mut after = session.view();
        assert_eq!(after.lines.len(), before.lines.len() + 1, "{line}");
        after.lines.pop();
        assert_eq!(after, before, "{line}");
    }
}

#[test]
fn verif_back_after_a_right_line_asks_it_again() {
    let mut session = mast_at_the_parts();
    let before = session.view();
    right(&mut session, &["Wb sin α"]);
    let turn = session.submit("back");
    assert!(turn.moved_on);
    let after = session.view();
    assert_eq!(at(&after), at(&before));
    assert_eq!(after.question, before.question);
    assert_eq!(after.steps, before.steps);
    assert_eq!(after.marks, before.marks);
    right(&mut session, &["Wb sin α"]);
}

#[test]
fn verif_a_carried_value_is_followed_and_the_true_one_stays_right() {
    // Sine and cosine exchanged in one part: 617.4·cos 35° = 505.7 in place of 354.1.
    let carried = || {
        let mut session = mast_at_the_parts();
        assert_eq!(session.submit("Wb cos α").line.sign, Sign::Wrong);
        let turn = session.submit("go on");
        assert!(turn.moved_on, "{}", turn.line.message);
        right(&mut session, &["W1 sin α", "W2 sin α", "T sin γ"]);
        let sum = session.submit("Wbperp*L/2 + W1perp*d1 + W2perp*L = Tperp*dT");
        assert_eq!(sum.line.sign, Sign::Follows, "{}", sum.line.message);
        assert!(sum.moved_on);
        session
    };
    let (sine, cosine) = (35f64.to_radians().sin(), 35f64.to_radians().cos());
    let pull = |own: f64| {
        (own * 617.4 * 2.7 + 695.8 * sine * 4.5 + 107.8 * sine * 5.4)
            / (4.2 * 65f64.to_radians().sin())
    };
    let mut follows = carried();
    let turn = follows.submit(&format!("{:.1} N", pull(cosine)));
    assert_eq!(turn.line.sign, Sign::Follows, "{}", turn.line.message);
    let mut repaired = carried();
    let turn = repaired.submit(&format!("{:.1} N", pull(sine)));
    assert!(
        matches!(turn.line.sign, Sign::Right | Sign::Rounded),
        "{:?} {}",
        turn.line.sign,
        turn.line.message
    );
}

#[test]
fn verif_a_carried_moment_sum_judges_the_pull() {
    let mut session = mast_at_the_parts();
    right(
        &mut session,
        &["Wb sin α", "W1 sin α", "W2 sin α", "T sin γ"],
    );
    let turn = session.submit("W1perp*d1 + W2perp*L = Tperp*dT");
    assert_eq!(turn.line.sign, Sign::Wrong);
    assert_eq!(
        turn.kept.mistakes.first().map(String::as_str),
        Some("own-weight-left-out")
    );
    assert!(session.submit("go on").moved_on);
    let sine = 35f64.to_radians().sin();
    let own = (695.8 * sine * 4.5 + 107.8 * sine * 5.4) / (4.2 * 65f64.to_radians().sin());
    let turn = session.submit(&format!("{own:.1} N"));
    assert_eq!(turn.line.sign, Sign::Follows, "{}", turn.line.message);
}

#[test]
fn verif_commands_are_understood_at_every_step() {
    let mut session = open("mast", 3);
    while session.course() == Course::On {
        let before = at(&session.view());
        for line in ["?", "idk", "i think i am right", "help", ""] {
            let turn = session.submit(line);
            assert_eq!(turn.line.sign, Sign::Talk, "{line}");
            assert_eq!(turn.line.number, None, "{line}");
            assert!(!turn.moved_on, "{line}");
        }
        assert_eq!(at(&session.view()), before);
        let line = if before.is_some_and(|step| step % 2 == 0) {
            "skip"
        } else {
            "show"
        };
        let turn = session.submit(line);
        assert_eq!(turn.line.sign, Sign::Talk);
        assert!(turn.moved_on, "{line} at {before:?}");
    }
    assert_eq!(session.course(), Course::Finished);
    assert!(!session.view().summary.is_empty());
}

/// "811 N" is in "T = 811 N" and not in "1811 N" or "811 Nm".
fn shows(text: &str, number: &str) -> bool {
    text.match_indices(number).any(|(start, _)| {
        let before = text[..start].chars().next_back();
        let after = text[start + number.len()..].chars().next();
        !before.is_some_and(|c| c.is_ascii_digit() || c == '.')
            && !after.is_some_and(|c| c.is_ascii_digit())
    })
}

#[test]
fn verif_nothing_before_the_last_hint_holds_the_answer() {
    for lesson in ["counter", "walkway", "mast"] {
        for seed in 0..20 {
            let mut session = open(lesson, seed);
            let sampling = Sampling::of(session.problem());
            let figures = session.problem().figures();
            let asked: Vec<_> = session
                .key()
                .asked()
                .map(|step| (step.id, step.dimension))
                .collect();
            for (step, dimension) in asked {
                let value = session.key().value(step, sampling.own(), &Pins::new());
                let number = value.map(|value| {
                    let told = value_text(value.abs(), dimension, figures);
                    told.trim_end_matches(|c: char| !c.is_ascii_digit())
                        .to_owned()
                });
                // What is printed in the statement is no secret.
                let number = number.filter(|number| !shows(session.problem().statement(), number));
                for stage in 1..=2 {
                    let turn = session.submit("hint");
                    assert_eq!(turn.kept.hint, Some(stage), "{lesson} {seed} {step:?}");
                    for hint in &turn.line.hints {
                        if let Some(number) = &number {
                            assert!(
                                !shows(&hint.to_string(), number),
                                "{lesson} {seed} {step:?} stage {stage}: {hint}"
                            );
                        }
                    }
                }
                if let (StepId::Pull(_), Some(number)) = (step, &number) {
                    let seen = format!("{:?}", session.view());
                    let unit = format!("{number} N");
                    assert!(!shows(&seen, &unit), "{lesson} {seed}: {unit} is shown");
                }
                assert!(session.submit("skip").moved_on);
            }
        }
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(24))]

    #[test]
    fn verif_no_line_loses_the_session(
        lines in prop::collection::vec(
            prop_oneof![
                any::<String>(),
                "[0-9a-zA-Z*/+=()., ⊥α°^-]{0,40}",
                Just("skip".to_owned()),
                Just("back".to_owned()),
                Just("go on".to_owned()),
                Just("hint".to_owned()),
            ],
            0..14,
        )
    ) {
        let mut session = open("mast", 3);
        for line in &lines {
            let known = session.view().lines.iter().filter(|line| line.number.is_some()).count();
            let turn = session.submit(line);
            prop_assert!(!turn.line.text.chars().any(char::is_control));
            let now = session.view().lines.iter().filter(|line| line.number.is_some()).count();
            prop_assert_eq!(now, known + usize::from(turn.line.number.is_some()));
            if turn.course != Course::On {
                session.stay();
            }
        }
        while session.course() == Course::On {
            session.submit("skip");
        }
        prop_assert_eq!(session.course(), Course::Finished);
    }
}
