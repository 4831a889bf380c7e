//! What `solve` says of bodies in general: the way of what it finds, and figures that tell.

use super::output;

/// A crate of 20 kg, pulled by 60 N at 30° above the level to a side, on rough ground.
/// By hand: friction 60 cos 30° = 52.0 N against the pull, push 196 − 60 sin 30° = 166 N.
fn crate_pulled(side: &str, friction: &str) -> (i32, String, String) {
    let file = format!(
        r#"{{
  "leverwright": 1, "g": "9.8 m/s^2",
  "system": {{
    "bodies": [{{"name": "crate", "legs": [{{"length": "0.8 m", "direction": "right"}}]}}],
    "weights": [{{"noun": "crate", "body": "crate", "at": {{"on": "crate", "at": "middle"}}, "mass": "20 kg"}}],
    "loads": [{{"noun": "pull", "body": "crate", "at": {{"on": "crate", "at": "middle"}}, "force": "60 N",
      "direction": {{"angle": "30 deg", "from": "horizontal", "up": true, "side": "{side}"}}}}],
    "holds": [{{"symbol": "N", "noun": "ground", "body": "crate", "at": {{"on": "crate", "at": "middle"}},
      "kind": "base", "direction": "up", "friction": {friction}, "width": "0.8 m"}}],
    "asked": ["N"]
  }},
  "text": {{"title": "The crate", "statement": "A crate is pulled."}}
}}"#
    );
    output(&["solve", "-"], file.as_bytes())
}

#[test]
fn friction_is_told_with_its_way_and_a_true_minus_sign() {
    for (side, way) in [("right", "(to the left)"), ("left", "(to the right)")] {
        let (code, text, talk) = crate_pulled(side, "\"as-needed\"");
        assert_eq!(code, 0, "{talk}");
        let friction: Vec<&str> = text.lines().filter(|line| line.contains("FN = ")).collect();
        assert!(
            friction
                .iter()
                .any(|line| line.contains("52.0 N") && line.ends_with(way)),
            "{side}: {text}"
        );
        assert!(!text.contains("= -") && !text.contains(" - "), "{text}");
    }
}

/// The coefficient is a hair too small: 0.3129 · 166 N = 51.94 N against 51.96 N.
#[test]
fn what_just_slips_is_told_with_figures_that_differ() {
    let (code, _, talk) = crate_pulled("right", "{\"up_to\": \"0.3129\"}");
    assert_ne!(code, 0);
    let numbers: Vec<&str> = talk
        .split_whitespace()
        .filter(|word| word.starts_with("51.9") || word.starts_with("52"))
        .collect();
    assert_eq!(numbers.len(), 2, "{talk}");
    assert_ne!(numbers[0], numbers[1], "{talk}");
}

#[test]
fn what_is_left_over_from_rounding_is_nothing() {
    let case = include_str!("../cases/up-pulley-incline-balance.json");
    let (code, text, talk) = output(&["solve", "-"], case.as_bytes());
    assert_eq!(code, 0, "{talk}");
    let nothing = text.contains("S = 0\n") && text.contains("Ax = 0 N");
    assert!(nothing && !text.contains("e-"), "{text}");
}

/// A lesson is taken as an example by an option, which needs to know of what.
#[test]
fn an_option_takes_a_problem_as_an_example() {
    let worked = ["practice", "counter", "--seed", "7", "--worked", "--plain"];
    let (code, text, talk) = output(&worked, b"skip\nquit\n");
    assert_eq!((code, talk.as_str()), (0, ""));
    assert!(
        text.contains("Shown, the pivot: Take moments about the hinge."),
        "{text}"
    );
    assert!(text.contains("\n1. ") && text.contains("\n3. "), "{text}");
    let last = [
        "practice", "counter", "--seed", "7", "--last", "1", "--plain",
    ];
    let (_, text, _) = output(&last, b"119.8 N up\n\nquit\n");
    assert!(text.contains("T = (Wb·L/2 + W1·d1)/dT"), "{text}");
    assert!(text.contains("Line 1: right."), "{text}");
    // Enter at the list draws one of which all steps are the learner's.
    assert!(
        text.matches("Which forces act on the counter?").count() == 1,
        "{text}"
    );
    for wrong in [
        &["practice", "--worked"][..],
        &["practice", "counter", "--last", "0"],
    ] {
        assert_eq!(output(wrong, b"").0, 2, "{wrong:?}");
    }
    // Bodies in general are worked by oneself, and are asked about all the same.
    let ladder = [
        "practice",
        "tests/boards/ladder.json",
        "--worked",
        "--plain",
    ];
    let (code, text, _) = output(&ladder, b"quit\n");
    assert_eq!(code, 0, "{text}");
    assert!(text.contains("Examples are made of one body"), "{text}");
    assert!(text.contains("You may type:"), "{text}");
}
