//! Lessons beside each other, and files of either kind.

use super::{GOOD, told};
use leverwright::lesson::{Checked, Lesson, built_in, check_file, faults_beside, parse_lesson};
use std::collections::BTreeSet;

/// The good lesson under another name, on other foundations.
fn lesson(id: &str, builds_on: &str) -> (String, Lesson) {
    let head = format!("\"id\": \"{id}\", \"builds_on\": [{builds_on}]");
    let text = GOOD.replace("\"id\": \"oar\"", &head);
    let lesson = parse_lesson(&text).map_err(|faults| told(&faults));
    (text, lesson.unwrap())
}

/// Lessons by id and what they build on, and what is told of each.
type Case = (
    &'static [(&'static str, &'static str)],
    &'static [&'static [&'static str]],
);

#[test]
fn circles_and_unknown_foundations_are_told_where_they_stand() {
    let none = BTreeSet::new();
    let cases: &[Case] = &[
        (&[("oar", "\"mast\"")], &[&[]]),
        (
            &[("oar", "\"mst\"")],
            &[&[
                "line 3, column 30, builds_on[0]: expected the name of a lesson, one of \
                 counter, walkway, mast, oar, found \"mst\"",
            ]],
        ),
        (
            &[("oar", "\"pole\""), ("pole", "\"counter\", \"oar\"")],
            &[
                &[
                    "line 3, column 30, builds_on[0]: pole builds on oar in turn, so neither can \
                   come first; take one of the two out",
                ],
                &[
                    "line 3, column 42, builds_on[1]: oar builds on pole in turn, so neither can \
                   come first; take one of the two out",
                ],
            ],
        ),
        (
            &[("oar", "\"pole\""), ("pole", "\"rod\""), ("rod", "\"oar\"")],
            &[
                &[
                    "line 3, column 30, builds_on[0]: pole builds on oar in turn, so neither can \
                   come first; take one of the two out",
                ],
                &[
                    "line 3, column 31, builds_on[0]: rod builds on pole in turn, so neither can \
                   come first; take one of the two out",
                ],
                &[
                    "line 3, column 30, builds_on[0]: oar builds on rod in turn, so neither can \
                   come first; take one of the two out",
                ],
            ],
        ),
        // A lesson that stands on a circle is not part of it.
        (
            &[
                ("oar", "\"pole\""),
                ("pole", "\"rod\""),
                ("rod", "\"pole\""),
            ],
            &[
                &[],
                &[
                    "line 3, column 31, builds_on[0]: rod builds on pole in turn, so neither can \
                   come first; take one of the two out",
                ],
                &[
                    "line 3, column 30, builds_on[0]: pole builds on rod in turn, so neither can \
                   come first; take one of the two out",
                ],
            ],
        ),
    ];
    for (given, says) in cases {
        let read: Vec<_> = given.iter().map(|(id, on)| lesson(id, on)).collect();
        let mut lessons = built_in();
        lessons.extend(read.iter().map(|(_, lesson)| lesson.clone()));
        for ((text, _), says) in read.iter().zip(*says) {
            assert_eq!(
                told(&faults_beside(text, &lessons, &none)),
                *says,
                "{given:?}"
            );
        }
    }
}

#[test]
fn two_files_cannot_hold_lessons_of_one_name() {
    let (text, lesson) = lesson("oar", "");
    let taken = BTreeSet::from(["oar".to_owned()]);
    assert_eq!(
        told(&faults_beside(&text, &[lesson], &taken)),
        [
            "line 3, column 9, id: expected a name of its own, found \"oar\", which already means \
          another lesson of this folder"
        ]
    );
}

#[test]
fn built_in_lessons_stand_well_beside_each_other() {
    let lessons = built_in();
    for name in ["counter", "walkway", "mast"] {
        let path = format!("{}/lessons/{name}.json", env!("CARGO_MANIFEST_DIR"));
        let text = std::fs::read_to_string(path).unwrap();
        assert_eq!(
            told(&faults_beside(&text, &lessons, &BTreeSet::new())),
            [""; 0]
        );
    }
}

#[test]
fn a_file_is_checked_as_what_it_is() {
    assert!(matches!(check_file(GOOD), Ok(Checked::Lesson(_))));
    let problem = r#"{"leverwright": 1, "g": "9.8 m/s^2", "model": {
        "body": {"noun": "oar", "length": "2 m", "mass": "3 kg", "tilt": "level", "towards": "left"},
        "ropes": [{"noun": "line", "at": "middle", "direction": "up"}]},
        "text": {"title": "Oar", "statement": "{L} {m_b}", "meanings": {"L": "l", "m_b": "m"}}}"#;
    assert!(matches!(check_file(problem), Ok(Checked::Problem(_))));
    let broken = problem.replace("\"2 m\"", "\"2\"");
    let faults = check_file(&broken).unwrap_err();
    assert_eq!(faults[0].path, "model.body.length");
    for text in ["", "[]", "{", "null"] {
        assert_eq!(check_file(text).unwrap_err().len(), 1, "{text}");
    }
}
