//! Diagrams of general problems of one straight body: every label clear, everything in the picture
//! or in its legend, and a few of them to be looked at.

use leverwright::lesson::{ProblemFile, parse_problem_file};
use leverwright::sketch::{
    DistanceMark, Entry, Flaw, ForceMark, Marks, Picture, Share, Sheet, Stage, Style, flaws,
    picture, told_words,
};
use leverwright::system::System;
use leverwright::text::Words;
use std::fs;
use std::path::PathBuf;

/// The folders of general problems.
const FOLDERS: [&str; 5] = ["boards", "freely", "general", "worked", "workings"];

fn files() -> Vec<PathBuf> {
    let mut files = Vec::new();
    for folder in FOLDERS {
        let listed = fs::read_dir(format!("tests/{folder}")).unwrap();
        files.extend(listed.map(|entry| entry.unwrap().path()));
    }
    files.retain(|path| path.extension().is_some_and(|ending| ending == "json"));
    files.sort();
    files
}

fn system(path: &PathBuf) -> Option<System> {
    match parse_problem_file(&fs::read_to_string(path).unwrap()) {
        Ok(ProblemFile::General(system)) => Some(system),
        _ => None,
    }
}

fn named(name: &str) -> Sheet {
    let path = PathBuf::from(format!("tests/{name}.json"));
    Sheet::of(&system(&path).unwrap()).unwrap()
}

fn scene_marks() -> Marks {
    Marks {
        givens: true,
        ..Marks::default()
    }
}

/// Every force named; one in no known direction points up and to the right if it is found.
fn force_marks(sheet: &Sheet, found: bool, site: bool) -> Marks {
    let label = |entry: &Entry| match entry.share {
        Share::Whole => entry.symbol.clone(),
        Share::Friction => format!("F{}", entry.symbol),
        Share::Couple => format!("M{}", entry.symbol),
    };
    let forces = sheet.entries().iter().map(|entry| ForceMark {
        force: entry.force,
        label: label(entry),
        direction: (found && is_open(sheet, entry)).then_some(1.1),
    });
    let distances = sheet.distances().into_iter();
    let distances = distances.map(|(force, label)| DistanceMark { force, label });
    Marks {
        stage: Stage::Forces,
        forces: forces.collect(),
        site,
        given_angles: !site,
        distances: if site {
            Vec::new()
        } else {
            distances.collect()
        },
        ..Marks::default()
    }
}

/// True for a force that is drawn as a ring until its direction is found.
fn is_open(sheet: &Sheet, entry: &Entry) -> bool {
    let mark = ForceMark {
        force: entry.force,
        label: "?".to_owned(),
        direction: None,
    };
    let told = sheet.tell(&Marks {
        stage: Stage::Forces,
        forces: vec![mark],
        ..Marks::default()
    });
    told_words(&told, &Words::english())
        .iter()
        .any(|told| told.to_string().contains("still to be found"))
}

fn drawn(sheet: &Sheet, marks: &Marks, (columns, rows): (u16, u16), unicode: bool) -> Picture {
    picture(&sheet.scene(marks), columns, rows, Style { unicode })
}

fn told(picture: &Picture) -> String {
    let mut text = picture.lines().join("\n");
    for entry in &picture.legend {
        text.push_str(&format!("\n[{}] {}", entry.mark, entry.text));
    }
    text
}

#[test]
fn every_given_length_and_angle_of_a_general_problem_stands_clear() {
    let mut sheets = 0;
    let mut found = Vec::new();
    for path in files() {
        let Some(sheet) = system(&path).as_ref().and_then(Sheet::of) else {
            continue;
        };
        sheets += 1;
        let all = [
            scene_marks(),
            force_marks(&sheet, false, true),
            force_marks(&sheet, true, true),
            force_marks(&sheet, true, false),
        ];
        for marks in all {
            let scene = sheet.scene(&marks);
            for (columns, rows, unicode) in [(46, 16, true), (64, 20, true), (90, 33, false)] {
                let picture = picture(&scene, columns, rows, Style { unicode });
                let mut flaws = flaws(&scene, &picture, unicode);
                // Two ends of one rope have one name, and so have the ends of a polygon of forces.
                flaws.retain(|flaw| {
                    matches!(
                        flaw,
                        Flaw::Cut(_)
                            | Flaw::DrawnOver(_)
                            | Flaw::Covers(_)
                            | Flaw::RunsInto(..)
                            | Flaw::Lost(_)
                    )
                });
                if !flaws.is_empty() {
                    let name = path.display();
                    found.push(format!("{name} {flaws:?}\n{}", told(&picture)));
                }
            }
        }
    }
    assert!(sheets >= 30, "{sheets}");
    assert!(found.is_empty(), "{}", found.join("\n\n"));
}

#[test]
fn pictures_of_general_problems() {
    for name in [
        "worked/trap",
        "freely/leaning",
        "boards/jib",
        "worked/pulley",
        "workings/deck",
        "boards/rod_on_peg",
    ] {
        let sheet = named(name);
        let mut text = String::new();
        for (head, marks) in [
            ("scene", scene_marks()),
            ("forces", force_marks(&sheet, false, true)),
            ("free", force_marks(&sheet, true, false)),
        ] {
            let picture = drawn(&sheet, &marks, (60, 20), true);
            text.push_str(&format!("== {head}\n{}\n", told(&picture)));
        }
        insta::assert_snapshot!(format!("general_{}", name.replace('/', "_")), text);
    }
}

#[test]
fn a_general_problem_is_drawn_in_plain_signs_too() {
    for name in ["worked/trap", "freely/leaning"] {
        let sheet = named(name);
        let marks = force_marks(&sheet, true, true);
        let picture = drawn(&sheet, &marks, (60, 20), false);
        let text = told(&picture);
        assert!(text.is_ascii(), "{text}");
        insta::assert_snapshot!(format!("general_ascii_{}", name.replace('/', "_")), text);
    }
}

/// Several bodies, a bent one, a length or an angle that is sought: there is nothing to draw to
/// scale, and what is told in words stays.
#[test]
fn what_cannot_be_drawn_to_scale_has_no_picture() {
    for name in [
        "boards/a_frame",
        "boards/gate",
        "boards/ladder",
        "boards/ladder_angle",
        "boards/plate",
        "worked/topple",
    ] {
        let path = PathBuf::from(format!("tests/{name}.json"));
        let system = system(&path).unwrap();
        assert_eq!(Sheet::of(&system), None, "{name}");
    }
}

/// A post in the wind's pull leans by no angle of a lesson, and a place worked out is told like a
/// result.
#[test]
fn the_forces_of_a_general_problem_are_told_in_words() {
    let sheet = named("worked/trap");
    let marks = force_marks(&sheet, false, true);
    let told: Vec<String> = told_words(&sheet.tell(&marks), &Words::english())
        .iter()
        .map(ToString::to_string)
        .collect();
    let wanted = [
        "W acts at its middle, straight down.",
        "Q acts 3.71 m from its foot, straight down.",
        "MM turns it anticlockwise.",
        "A acts at its foot; its direction is still to be found.",
        "B acts 6.5 m from its foot, straight up.",
    ];
    assert_eq!(told, wanted);
}
