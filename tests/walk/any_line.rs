//! What holds at every step, whatever is entered.

use super::{at_the_weights, open};
use leverwright::key::{Pins, Sampling, StepId};
use leverwright::session::{Course, Progress, Sign, View};
use leverwright::units::value_text;
use proptest::prelude::*;

/// The place of the step asked now.
fn at(view: &View) -> Option<usize> {
    view.steps
        .iter()
        .position(|step| step.progress == Progress::Now)
}

#[test]
fn verif_a_line_not_understood_changes_only_the_list_of_lines() {
    let long = "7".repeat(600);
    for line in ["((", "Wb cos", "zzz + 3", long.as_str(), "\u{1b}[2J@"] {
        let mut session = at_the_weights("mast", 3);
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
        for seed in 0..8 {
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
    #![proptest_config(ProptestConfig {
        cases: 24,
        rng_seed: proptest::test_runner::RngSeed::Fixed(11),
        ..ProptestConfig::default()
    })]

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
