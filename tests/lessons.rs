//! Lesson and problem files, read and written.

mod class;
mod drawn;
mod shelf;

use leverwright::draw::candidates;
use leverwright::lesson::{Fault, FaultKind, built_in, parse_lesson, parse_problem, write_problem};
use leverwright::problem::{
    Body, Direction, Given, GivenId, Load, LoadKind, Parts, Place, Problem, Reference, Rope, Side,
    Support, SupportKind, Tilt, Upright,
};
use leverwright::text::Symbol;
use leverwright::units::Dimension;
use proptest::prelude::*;

/// A lesson without a fault, from which the broken ones are made.
pub(crate) const GOOD: &str = r#"{
  "leverwright": 1,
  "id": "oar",
  "version": 1,
  "g": "9.8 m/s^2",
  "figures": 3,
  "variants": [
    {
      "body": {"noun": "body", "length": {"from": "2.0 m", "to": "3.0 m", "step": "0.2 m"},
        "mass": "12 kg", "tilt": {"angle": "35 deg", "from": "vertical"}, "towards": "right"},
      "supports": [{"noun": "pin", "at": "foot", "kind": "hinge"}],
      "ropes": [{"noun": "line", "at": {"among": ["1.2 m", "1.6 m"]}, "direction": "left"}],
      "loads": [{"noun": "pail", "mass": "4 kg", "at": "tip"}],
      "says": ["all", "ask"]
    }
  ],
  "texts": {
    "en": {
      "title": "The oar",
      "teaches": "Moments.",
      "caution": "For learning only.",
      "nouns": {"body": "oar", "pin": "pin", "line": "line", "pail": "pail"},
      "meanings": {"L": "length", "m_b": "mass", "θ": "lean", "m_1": "pail", "d_T": "knot"},
      "sentences": {
        "all": "An oar of {L=} and {m_b}, leaning {θ=}, line at {d_T}, pail {m_1}.",
        "ask": "Find T."
      }
    }
  }
}
"#;

fn told(faults: &[Fault]) -> Vec<String> {
    faults.iter().map(Fault::to_string).collect()
}

/// Replaces the one place of `old` in the good lesson and gives the faults.
fn faults_after(old: &str, new: &str) -> Vec<String> {
    assert_eq!(GOOD.matches(old).count(), 1, "{old}");
    match parse_lesson(&GOOD.replace(old, new)) {
        Ok(_) => Vec::new(),
        Err(faults) => told(&faults),
    }
}

#[test]
fn the_good_lesson_has_no_fault() {
    let lesson = parse_lesson(GOOD).map_err(|faults| told(&faults));
    let lesson = lesson.expect("the good lesson");
    assert_eq!(lesson.size(), 12);
    let place = lesson.grid().place(3).expect("inside");
    let problem = lesson.problem_at(&place, "en").expect("valid");
    assert_eq!(
        problem.statement(),
        "An oar of L = 2.2 m and 12 kg, leaning θ = 35°, line at 1.6 m, pail 4 kg. Find T."
    );
    assert_eq!(problem.title(), "The oar");
    assert_eq!(problem.body().noun, "oar");
    assert_eq!(problem.given(GivenId(0)).value, 2.2);
}

/// Changes to the good lesson and what is said of each; blocks of `change`, `to`, `says`.
const BROKEN: &str = include_str!("lessons/faults.txt");

#[test]
fn every_fault_is_told_with_its_place() {
    let mut blocks = 0;
    for block in BROKEN
        .split("\n\n")
        .filter(|block| block.starts_with("change "))
    {
        let mut lines = block.lines();
        let old = lines.next().and_then(|line| line.strip_prefix("change "));
        let new = lines.next().and_then(|line| line.strip_prefix("to     "));
        let says: Vec<&str> = lines
            .map(|line| line.strip_prefix("says   ").expect("a line of says"))
            .collect();
        let unescape = |text: &str| text.replace("⏎", "\n");
        let (old, new) = (old.expect("a change"), new.expect("what it becomes"));
        assert_eq!(
            faults_after(&unescape(old), &unescape(new)),
            says,
            "{old} -> {new}"
        );
        assert!(!says.is_empty(), "{old}");
        blocks += 1;
    }
    assert!(blocks >= 45, "{blocks}");
}

/// No fault of a model or of another text hides a slot that stands for nothing.
#[test]
fn a_slot_for_nothing_is_told_beside_other_faults() {
    let slot = "nothing of the name m_9 is given; given are L, d_T, m_1, m_b, θ";
    for (old, new) in [
        ("\"12 kg\"", "\"12 m\""),
        ("\"says\": [\"all\", \"ask\"]", "\"says\": 3"),
        ("\"variants\": [", "\"variant\": ["),
    ] {
        let json = GOOD.replace("{m_1}.", "{m_9=}.").replace(old, new);
        let told = told(&parse_lesson(&json).expect_err("two faults"));
        assert!(told.iter().any(|fault| fault.ends_with(slot)), "{told:?}");
        assert!(told.len() > 1, "{told:?}");
    }
    let json = GOOD
        .replace("{m_1}.", "{m_9=}.")
        .replace("\"title\": \"The oar\"", "\"title\": \"\"");
    let told = told(&parse_lesson(&json).expect_err("three faults"));
    assert!(told.iter().any(|fault| fault.contains("m_9")), "{told:?}");
    assert!(told.iter().any(|fault| fault.contains("title")), "{told:?}");
}

#[test]
fn all_faults_of_a_file_come_at_once_and_in_order() {
    let json = GOOD
        .replace("\"12 kg\"", "\"12 m\"")
        .replace("\"figures\": 3", "\"figures\": 9")
        .replace("\"foot\"", "\"heel\"");
    let faults = parse_lesson(&json).expect_err("three faults");
    let places: Vec<(usize, &str)> = faults
        .iter()
        .map(|fault| (fault.line, fault.path.as_str()))
        .collect();
    let expected = [
        (6, "figures"),
        (10, "variants[0].body.mass"),
        (11, "variants[0].supports[0].at"),
    ];
    assert_eq!(places, expected);
}

#[test]
fn hostile_texts_are_refused_without_a_panic() {
    let digits = "9".repeat(400);
    let texts = [
        String::new(),
        "null".to_owned(),
        "[".repeat(200_000),
        "{\"a\":".repeat(100_000),
        format!("{{\"leverwright\": {digits}}}"),
        "{\"leverwright\": 1, \"g\": \"\\ud800\"}".to_owned(),
        "\u{feff}{}".to_owned(),
        GOOD.replace("\"12 kg\"", &format!("\"{digits} kg\"")),
        GOOD.replace("\"2.0 m\"", &format!("\"1.{digits} m\"")),
        GOOD.replace("\"12 kg\"", "\"1e5 kg\""),
        GOOD.replace("\"12 kg\"", "\"\u{1b}[2J kg\""),
        GOOD.replace("\"tip\"", "{\"fraction\": \"1/0\"}"),
        GOOD.replace("\"en\"", "\"\u{202e}\""),
        GOOD.replace("[\"all\", \"ask\"]", "[]"),
    ];
    for text in &texts {
        let lesson = parse_lesson(text).expect_err("refused");
        let problem = parse_problem(text).expect_err("refused");
        for line in told(&lesson).into_iter().chain(told(&problem)) {
            assert!(!line.contains('\u{1b}'), "{line}");
        }
    }
}

proptest! {
    #[test]
    fn cut_or_changed_files_never_panic(at in 0..GOOD.len(), length in 0_usize..40, with in ".{0,3}") {
        let edge = |mut at: usize| {
            at = at.min(GOOD.len());
            while !GOOD.is_char_boundary(at) {
                at -= 1;
            }
            at
        };
        let (start, end) = (edge(at), edge(at + length));
        let text = format!("{}{with}{}", &GOOD[..start], &GOOD[end..]);
        if let Err(faults) = parse_lesson(&text) {
            prop_assert!(faults.iter().all(|fault| fault.line >= 1 && fault.column >= 1));
        }
        let _ = parse_problem(&text);
    }

    #[test]
    fn verif_written_problems_read_back_equal(lesson in 0_usize..3, seed in any::<u64>()) {
        let lesson = &built_in()[lesson];
        let place = candidates(lesson, seed).next().expect("endless");
        let problem = lesson.problem_at(&place, "en").expect("valid");
        let written = write_problem(&problem);
        prop_assert!(!written.contains('\n'));
        prop_assert_eq!(parse_problem(&written), Ok(problem));
    }

    #[test]
    fn verif_any_double_and_order_survive_writing(
        values in prop::collection::vec(0.001_f64..1.0, 7),
        gravity in 1e-3_f64..1e3,
        flip in any::<bool>(),
    ) {
        let problem = own_problem(&values, gravity, flip).expect("valid");
        prop_assert_eq!(parse_problem(&write_problem(&problem)), Ok(problem));
    }
}

/// A problem whose numbers are not the ones printed, with a shared mass, own names, a force, a
/// roller and, if `flip`, the givens in another order.
fn own_problem(
    values: &[f64],
    gravity: f64,
    flip: bool,
) -> Result<Problem, Vec<leverwright::problem::Flaw>> {
    let given = |symbol: &str, value: f64, dimension, written: &str| Given {
        symbol: Symbol::new(symbol),
        meaning: format!("meaning of \"{symbol}\""),
        value,
        written: written.to_owned(),
        dimension,
    };
    let mut givens = vec![
        given("ℓ", 1.0 + values[0], Dimension::LENGTH, "1.5 m"),
        given("m_1", values[1], Dimension::MASS, "7 kg"),
        given("θ", values[2], Dimension::ANGLE, "35°"),
        given("F_2", values[3], Dimension::FORCE, "0.4 kN"),
        given("α_2", values[4], Dimension::ANGLE, "10°"),
        given("d_T", values[5], Dimension::LENGTH, "60 cm"),
        given("β", values[6], Dimension::ANGLE, "20°"),
    ];
    let count = givens.len();
    let id = |index: usize| GivenId(if flip { count - 1 - index } else { index });
    if flip {
        givens.reverse();
    }
    let oblique = |angle, upright| Direction::Oblique {
        angle,
        from: Reference::Vertical,
        upright,
        side: Side::Left,
    };
    let told: Vec<&str> = givens.iter().map(|given| given.written.as_str()).collect();
    let told = told.join(", ");
    Problem::new(Parts {
        title: "A {brace} of oars".to_owned(),
        statement: format!("Braces {{L}} {{{{m_1=}}}} }} {told}"),
        caution: "For learning only.".to_owned(),
        givens,
        body: Body {
            noun: "oar".to_owned(),
            length: id(0),
            mass: Some(id(1)),
            weight_symbol: Symbol::new("G"),
            centre: Place::Fraction { over: 2, under: 3 },
            tilt: Tilt::Rising {
                angle: id(2),
                from: Reference::Horizontal,
            },
            towards: Side::Left,
        },
        supports: vec![
            Support {
                symbol: Symbol::new("A"),
                noun: "pin".to_owned(),
                at: Place::Foot,
                kind: SupportKind::Hinge,
            },
            Support {
                symbol: Symbol::new("B"),
                noun: "wheel".to_owned(),
                at: Place::Tip,
                kind: SupportKind::Roller(Direction::Up),
            },
        ],
        ropes: vec![Rope {
            symbol: Symbol::new("T"),
            noun: "line".to_owned(),
            at: Place::At(id(5)),
            direction: Direction::FromBody { angle: id(6) },
        }],
        loads: vec![
            Load {
                symbol: Symbol::new("W_1"),
                noun: "pail".to_owned(),
                at: Place::Tip,
                kind: LoadKind::Mass(id(1)),
                stands: false,
            },
            Load {
                symbol: Symbol::new("F_2"),
                noun: "hand".to_owned(),
                at: Place::Middle,
                kind: LoadKind::Force {
                    size: id(3),
                    direction: oblique(id(4), Upright::Down),
                },
                stands: false,
            },
        ],
        gravity,
        accepted_gravity: vec![9.81, gravity / 3.0],
        figures: 4,
    })
}

#[test]
fn problem_files_fix_every_number() {
    let json = r#"{"leverwright": 1, "g": "9.8 m/s^2",
      "model": {"body": {"noun": "oar", "length": {"among": ["2 m", "3 m"]}, "tilt": "level", "towards": "left"},
        "ropes": [{"noun": "line", "at": "tip", "direction": "up"}]},
      "text": {"title": "Oar", "statement": "{L} {W}", "meanings": {}}}"#;
    let faults = parse_problem(json).expect_err("four faults");
    assert!(matches!(faults[1].kind, FaultKind::DrawnInProblem));
    assert_eq!(
        told(&faults),
        [
            "line 2, column 16, model: the body has no mass and no load, so there is nothing to hold",
            "line 2, column 51, model.body.length: a problem file fixes every number; write one value such as \"2.4 m\"",
            "line 4, column 45, text.statement: nothing of the name W is given; given are L",
            "line 4, column 68, text.meanings: the words for \"L\" are missing here",
        ]
    );
}

/// The examples that a teacher copies from lessons/README.md.
#[test]
fn the_examples_of_the_readme_have_no_fault() {
    let readme = include_str!("../lessons/README.md");
    let example = |fence: &str| {
        let (_, from) = readme.split_once(fence).expect("a fence");
        from.split_once("```").expect("its end").0.to_owned()
    };
    let lesson: Vec<String> = example("```jsonc\n")
        .lines()
        .map(|line| line.split("//").next().unwrap_or("").to_owned())
        .collect();
    assert_eq!(
        parse_lesson(&lesson.join("\n"))
            .map_err(|faults| told(&faults))
            .map(|lesson| lesson.size()),
        Ok(18)
    );
    assert!(parse_problem(&example("```json\n")).is_ok());
}

/// A number that is asked for and nowhere told would leave the learner at a loss.
#[test]
fn a_problem_whose_statement_keeps_a_number_back_is_told_so() {
    let lesson = parse_lesson(GOOD).expect("the good lesson");
    let place = lesson.grid().place(3).expect("inside");
    let problem = lesson.problem_at(&place, "en").expect("valid");
    let written = write_problem(&problem);
    assert!(parse_problem(&written).is_ok());
    assert_eq!(written.matches("pail 4 kg").count(), 1, "{written}");
    let faults = parse_problem(&written.replace("pail 4 kg", "a pail")).expect_err("no mass");
    let told = told(&faults).join("\n");
    assert!(told.contains("does not tell m_1"), "{told}");
}

/// What is wrong in one field hides nothing of the others, and nothing is told twice.
#[test]
fn faults_of_one_part_hide_none_of_another_and_come_once() {
    let off = "this place may lie 2.4 m from the foot, but the body may be only 2.0 m long";
    for (old, new) in [
        ("\"towards\": \"right\"", "\"towards\": \"up\""),
        ("\"12 kg\"", "\"12 m\""),
    ] {
        let json = GOOD.replace("\"1.6 m\"", "\"2.4 m\"").replace(old, new);
        let told = told(&parse_lesson(&json).expect_err("two faults"));
        assert_eq!(told.len(), 2, "{told:?}");
        assert_eq!(
            told.iter().filter(|fault| fault.ends_with(off)).count(),
            1,
            "{told:?}"
        );
    }
    let problem = r#"{"leverwright": 1, "g": "9.8 m/s^2",
 "model": {
  "body": {"noun": "oar", "length": "80 cm", "mass": "12 kg", "tilt": "level", "towards": "right"},
  "supports": [{"noun": "pin", "at": "foot", "kind": "hinge"}],
  "ropes": [{"noun": "line", "at": "90 cm", "direction": "up"}]},
 "text": {"title": "Oar", "statement": "{L} {m_b} {d_T}", "meanings": {"L": "a", "m_b": "b", "d_T": "c"}}}"#;
    let told = told(&parse_problem(problem).expect_err("one fault"));
    assert_eq!(told.len(), 1, "{told:?}");
    assert!(
        told[0].starts_with("line 5, column 36, model.ropes[0].at: "),
        "{told:?}"
    );
}
