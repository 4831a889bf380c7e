//! Whether what holds a body meets it.

use super::faults::GOOD;
use leverwright::lesson::parse_system;

fn apart(text: &str) -> Vec<String> {
    let system = parse_system(text).unwrap_or_else(|faults| panic!("{faults:?}"));
    let apart = system.out_of_reach().into_iter();
    apart.map(|(_, fault)| fault.to_string()).collect()
}

/// A post that starts elsewhere is not joined to the beam, and a rope at a far point pulls at
/// nothing; a bar that meets a body along its line is joined to it.
#[test]
fn what_holds_a_body_meets_it() {
    let order = GOOD.find(",\n    \"order\"").unwrap();
    let end = order + GOOD[order..].find("]\n").unwrap() + 1;
    let good = format!("{}{}", &GOOD[..order], &GOOD[end..]);
    assert_eq!(apart(&good), Vec::<String>::new());
    let after = |old: &str, new: &str| {
        assert_eq!(good.matches(old).count(), 1, "{old}");
        apart(&good.replace(old, new)).join("\n")
    };
    let starts = r#""start": {"on": "beam", "at": "middle"}"#;
    let told = after(starts, r#""start": {"x": "9 m", "y": "0 m"}"#);
    assert!(told.starts_with("joint is placed "), "{told}");
    assert!(told.contains(" m away from beam, which has no part there"));
    let rope = r#"[{"body": "beam", "at": {"on": "beam", "at": "tip"}"#;
    for (x, is_told) in [("9 m", true), ("-0.0011 m", true), ("-0.0009 m", false)] {
        let there = format!(r#"[{{"body": "beam", "at": {{"x": "{x}", "y": "0 m"}}"#);
        let told = after(rope, &there);
        assert_eq!(told.starts_with("rope is placed "), is_told, "{x}: {told}");
    }
    assert_eq!(
        apart(&LEGS.replace("HEIGHT", "0.4 m")),
        Vec::<String>::new()
    );
    let told = apart(&LEGS.replace("HEIGHT", "-0.4 m")).join("\n");
    assert!(
        told.starts_with("bar is placed 0.400 m away from left leg"),
        "{told}"
    );
}

/// Two legs of an A with a level bar between them, told by its end at the left one.
const LEGS: &str = r#"{"leverwright": 1, "g": "9.8 m/s^2", "system": {
  "bodies": [{"name": "left leg", "legs": [{"length": "2.0 m", "direction": "up"}]},
    {"name": "right leg", "start": {"on": "left leg", "at": "tip"},
     "legs": [{"length": "2.5 m", "direction": {"angle": "70 deg", "from": "horizontal", "up": false, "side": "right"}}]}],
  "loads": [{"noun": "lamp", "body": "left leg", "at": {"on": "left leg", "at": "tip"}, "mass": "4 kg"},
    {"noun": "wind", "body": "left leg", "at": {"on": "left leg", "at": "middle"}, "force": "8 N", "direction": "right"}],
  "holds": [{"symbol": "J", "noun": "pin", "body": "left leg", "by": "right leg", "at": {"on": "left leg", "at": "tip"}, "kind": "hinge"},
    {"symbol": "S", "noun": "bar", "body": "left leg", "by": "right leg", "at": {"x": "0 m", "y": "HEIGHT"}, "kind": "line", "direction": "right"},
    {"symbol": "A", "noun": "shoe", "body": "left leg", "at": {"on": "left leg", "at": "foot"}, "kind": "hinge"},
    {"symbol": "N", "noun": "floor", "body": "right leg", "at": {"on": "right leg", "at": "tip"}, "kind": "push", "direction": "up"}],
  "asked": ["S"]},
 "text": {"title": "x", "statement": "Legs of {L=}."}}"#;
