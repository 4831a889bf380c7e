//! The class profile: what it changes in a lesson, and how a wrong one is refused.

use super::told;
use leverwright::draw::{candidates, code, draw, parse_code};
use leverwright::key::{Pins, Sampling, derive};
use leverwright::lesson::{ClassProfile, Lesson, built_in, is_class, lesson_as_begun, parse_class};
use leverwright::problem::{Direction, FiguresAsked, Reference, Tilt, UnitAsked};
use leverwright::text::{Decimal, Turning};

fn profile(fields: &str) -> ClassProfile {
    let json = format!("{{\"leverwright\": 1, \"class\": \"10b\"{fields}}}");
    parse_class(&json).unwrap_or_else(|faults| panic!("{}", told(&faults).join("\n")))
}

fn lesson(id: &str) -> Lesson {
    built_in().into_iter().find(|one| one.id() == id).unwrap()
}

#[test]
fn a_profile_holds_what_its_teacher_wrote() {
    assert_eq!(
        profile(""),
        ClassProfile {
            name: "10b".to_owned(),
            ..ClassProfile::default()
        }
    );
    let read = profile(
        r#", "g": "10 m/s^2", "accepted_g": ["9.8 m/s^2", "9.81 m/s^2"], "figures": 2,
           "figures_rule": "exact", "missing_unit": "marked", "angles_from": "vertical",
           "display": {"turning": "torque", "decimal": "comma"}"#,
    );
    assert_eq!((read.gravity, read.figures), (Some(10.0), Some(2)));
    assert_eq!(read.accepted_gravity, [9.8, 9.81]);
    assert_eq!(read.asking.figures, FiguresAsked::Exact);
    assert_eq!(read.asking.unit, UnitAsked::Marked);
    assert_eq!(read.angles_from, Some(Reference::Vertical));
    assert_eq!(read.display.turning, Turning::Torque);
    assert_eq!(read.display.decimal, Decimal::Comma);
    assert_eq!(profile(r#", "angles_from": "either""#).angles_from, None);
}

#[test]
fn a_wrong_profile_is_refused_with_every_fault_and_its_place() {
    for (json, faults) in [
        (
            "{\"leverwright\": 1, \"class\": \"10b\", \"g\": \"1000 m/s^2\"}",
            vec![
                "line 1, column 41, g: expected an acceleration from 0.1 m/s² to 100 m/s², found \"1000 m/s^2\"",
            ],
        ),
        (
            "{\"leverwright\": 1, \"class\": \"10b\", \"g\": \"0.001 m/s^2\"}",
            vec![
                "line 1, column 41, g: expected an acceleration from 0.1 m/s² to 100 m/s², found \"0.001 m/s^2\"",
            ],
        ),
        (
            "{\"leverwright\": 1, \"class\": \"10b\", \"g\": \"9,81 m/s^2\"}",
            vec![
                "line 1, column 41, g: expected a point in the number, as in \"9.81 m/s^2\", found \"9,81 m/s^2\"",
            ],
        ),
        // A comma that is not all that is wrong.
        (
            "{\"leverwright\": 1, \"class\": \"10b\", \"g\": \"9,81 kg\"}",
            vec![
                "line 1, column 41, g: expected an acceleration such as \"9.8 m/s^2\", found \"9,81 kg\"",
            ],
        ),
        (
            "{\"leverwright\": 1}",
            vec![
                "line 1, column 1, class: this field is missing; write what the class is called, such as \"10b\"",
            ],
        ),
        (
            "{\"leverwright\": 1, \"class\": \"10b\",\n \"g\": \"9.81 kg\"}",
            vec![
                "line 2, column 7, g: expected an acceleration such as \"9.8 m/s^2\", found \"9.81 kg\"",
            ],
        ),
        (
            "{\"leverwright\": 1, \"class\": \"10b\", \"figures\": 7,\n \"missing_unit\": \"maybe\", \"grade\": 1}",
            vec![
                "line 1, column 47, figures: expected a whole number from 2 to 4, found 7",
                "line 2, column 18, missing_unit: expected \"told\" or \"asked\" or \"marked\", found \"maybe\"",
                "line 2, column 27, grade: no field of this name belongs here; the fields are leverwright, class, g, accepted_g, figures, figures_rule, missing_unit, angles_from, display",
            ],
        ),
        (
            "{\"leverwright\": 1, \"class\": \"10b\", \"accepted_g\": [\"10 m/s^2\"]}",
            vec![
                "line 1, column 50, accepted_g: what else counts as right needs a \"g\" beside it; write both",
            ],
        ),
        (
            "{\"leverwright\": 1, \"class\": \" \", \"display\": {\"decimal\": \";\"}}",
            vec![
                "line 1, column 29, class: expected what the class is called, in at most 60 characters, found \" \"",
                "line 1, column 57, display.decimal: expected \"found\" or \"point\" or \"comma\", found \";\"",
            ],
        ),
        (
            "{\"leverwright\": 2, \"class\": \"10b\"}",
            vec![
                "line 1, column 17, leverwright: this program reads form version 1, the file says 2",
            ],
        ),
    ] {
        assert_eq!(told(&parse_class(json).unwrap_err()), faults, "{json}");
    }
}

#[test]
fn only_a_profile_is_taken_for_one() {
    assert!(is_class("{\"class\": 3}"));
    assert!(!is_class("{\"class\": 3, \"variants\": []}"));
    assert!(!is_class("{\"leverwright\": 1}"));
    // A profile that lacks its name is one all the same; a lesson that lacks its variants is none.
    assert!(is_class("{\"leverwright\": 1, \"g\": \"9.81 m/s^2\"}"));
    assert!(is_class("{\"leverwright\": 1, \"figures\": 3}"));
    assert!(!is_class(
        "{\"leverwright\": 1, \"id\": \"x\", \"g\": \"9.81 m/s^2\"}"
    ));
    assert!(!is_class(
        "{\"leverwright\": 1, \"g\": \"9.81 m/s^2\", \"model\": {}}"
    ));
    assert!(!is_class("[\"class\"]"));
}

/// A weight is the mass times the class's g, and the code of the numbers is the lesson's.
#[test]
fn the_class_changes_g_and_figures_and_no_code() {
    let class = profile(r#", "g": "10 m/s^2", "figures": 2"#);
    for id in ["counter", "walkway", "mast"] {
        let (own, of_class) = (lesson(id), class.lesson(lesson(id)));
        assert_eq!(own.checksum(), of_class.checksum());
        for seed in 1..=6 {
            let drawn = draw(&of_class, seed, "en").unwrap();
            assert_eq!(
                (drawn.problem.gravity(), drawn.problem.figures()),
                (10.0, 2)
            );
            assert!(drawn.problem.accepted_gravity().is_empty());
            let key = derive(&drawn.problem).unwrap();
            let sampling = Sampling::of(&drawn.problem);
            let weights = key.steps.iter().filter(|step| step.id.is_weight());
            for weight in weights {
                let value = key.value(weight.id, sampling.own(), &Pins::new()).unwrap();
                let mut masses = drawn.problem.values().into_iter();
                assert!(masses.any(|mass| (10.0 * mass - value).abs() < 1e-9));
            }
            let typed = code(&of_class, &drawn.place);
            assert_eq!(typed, code(&own, &drawn.place));
            let (_, place) = parse_code(&typed, std::slice::from_ref(&own)).unwrap();
            assert_eq!(place, drawn.place);
        }
    }
}

/// What was begun goes on with its own g, in its sister too.
#[test]
fn a_lesson_as_begun_has_the_g_of_the_problem() {
    let begun = draw(&lesson("mast"), 4, "en").unwrap().problem;
    let class = profile(r#", "g": "10 m/s^2", "figures": 4"#);
    let again = lesson_as_begun(&class.lesson(lesson("mast")), &begun);
    assert_eq!((again.gravity(), again.figures()), (9.8, 3));
    let place = candidates(&again, 4).next().unwrap();
    let problem = again.problem_at(&place, "en").unwrap();
    assert_eq!(problem.gravity(), 9.8);
    assert_eq!(problem.accepted_gravity(), begun.accepted_gravity());
}

#[test]
fn angles_are_given_from_the_line_of_the_class() {
    for (word, from) in [
        ("horizontal", Reference::Horizontal),
        ("vertical", Reference::Vertical),
    ] {
        let class = profile(&format!(", \"angles_from\": \"{word}\""));
        let mast = class.lesson(lesson("mast"));
        for seed in 1..=20 {
            let problem = draw(&mast, seed, "en").unwrap().problem;
            let Tilt::Rising { from: its, .. } = problem.body().tilt else {
                panic!("a mast is tilted");
            };
            assert_eq!(its, from);
            for rope in problem.ropes() {
                if let Direction::Oblique { from: its, .. } = rope.direction {
                    assert_eq!(its, from);
                }
            }
        }
        // Nothing of a counter has an angle.
        let counter = class.lesson(lesson("counter"));
        assert_eq!(draw(&counter, 1, "en"), draw(&lesson("counter"), 1, "en"));
    }
}

/// Who says how many figures are asked means it, and who does not say leaves three enough.
#[test]
fn figures_that_are_set_are_asked_unless_the_rule_says_otherwise() {
    for (fields, rule) in [
        ("", FiguresAsked::Usual),
        (r#", "g": "10 m/s^2""#, FiguresAsked::Usual),
        (r#", "figures": 4"#, FiguresAsked::Asked),
        (
            r#", "figures": 4, "figures_rule": "told""#,
            FiguresAsked::Told,
        ),
        (r#", "figures_rule": "exact""#, FiguresAsked::Exact),
    ] {
        assert_eq!(profile(fields).asking.figures, rule, "{fields}");
    }
}
