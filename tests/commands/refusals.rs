//! What cannot be solved is refused with its reason and its code, by every command alike; and what a
//! file asks that names nothing of it.

use super::output;
use serde_json::Value;

/// Files of tests/refusals, the code, and what is said. By hand: the ladder needs 98 N ÷ tan 40° =
/// 116.8 N of friction, the lifted plank F = 1.5·196/0.5 = 588 N, the rope T = −2·196/3, the crate
/// pushes 0.9·150/392 m beside its middle.
const REFUSED: [(&str, &str, &str); 12] = [
    (
        "slips",
        "would-slip",
        "117 N of friction are needed and 58.8 N is the most that the contact gives, 58.0 N too little",
    ),
    (
        "limiting_over",
        "mechanism",
        "with friction at its limit at N the forces cannot balance at these numbers, so this is not what happens; let friction be as needed",
    ),
    (
        "mech",
        "mechanism",
        "nothing stops the beam from sliding to the right",
    ),
    (
        "unphysical",
        "contact-would-pull",
        "the condition is met only at F = 588 N, and there the support A would have to pull with 392 N",
    ),
    (
        "ropepush",
        "rope-would-push",
        "the rope T would have to push with 131 N",
    ),
    (
        "contactpull",
        "contact-would-pull",
        "the support A would have to pull with 98.0 N",
    ),
    (
        "indet",
        "indeterminate",
        "there are 4 unknown forces but only 3 independent equations of equilibrium: Ay, B, C cannot be found",
    ),
    (
        "near",
        "nearly-singular",
        "the lines of the unknown forces nearly meet in one point",
    ),
    (
        "noroot",
        "none-in-range",
        "no value of d between 0.1 m and 3.9 m makes it happen",
    ),
    ("every", "holds-for-every-value", "m has no influence on it"),
    (
        "topples",
        "would-topple",
        "the push would have to act 0.344 m from the middle of the base, and the edge is 0.250 m away",
    ),
    (
        "splay",
        "mechanism",
        "nothing stops the left leg from turning clockwise about the point (0 m, 2.45 m) and the right leg from turning anticlockwise",
    ),
];

#[test]
fn every_refusal_has_its_reason_and_its_code() {
    for (name, code, reason) in REFUSED {
        let path = format!("{}/tests/refusals/{name}.json", env!("CARGO_MANIFEST_DIR"));
        let (status, json, talk) = output(&["solve", &path, "--json"], b"");
        assert_eq!(status, 1, "{name}");
        let told: Value = serde_json::from_str(&json).unwrap();
        assert_eq!(told["error"]["code"], code, "{name}: {told}");
        assert!(talk.contains(reason), "{name}: {talk}");
        let (status, text, _) = output(&["check", &path], b"");
        assert_eq!(status, 1, "{name}");
        assert!(
            text.contains(&format!("system: {}", talk.trim())),
            "{name}: {text}"
        );
        let (status, _, talk) = output(&["practice", &path, "--plain"], b"");
        assert_eq!(status, 1, "{name}");
        assert!(talk.contains(reason), "{name}: {talk}");
    }
}

#[test]
fn a_file_that_asks_nothing_by_name_asks_for_all_that_is_unknown() {
    let mut file: Value = serde_json::from_str(include_str!("../boards/a_frame.json")).unwrap();
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("frame.json");
    for asked in [None, Some(Value::Array(Vec::new()))] {
        file["system"]
            .as_object_mut()
            .unwrap()
            .shift_remove("asked");
        if let Some(asked) = asked {
            file["system"]["asked"] = asked;
        }
        std::fs::write(&path, file.to_string()).unwrap();
        let path = path.to_str().unwrap();
        let (status, text, _) = output(&["check", path], b"");
        assert_eq!(status, 0);
        assert!(
            text.contains("system.asked names nothing, so practice and solve ask for all that is unknown: T, J, A, B"),
            "{text}"
        );
        let all = "all that is unknown is to be found: T, J, A, B.";
        let (_, text, _) = output(&["solve", path], b"");
        assert!(text.contains(all), "{text}");
        let (_, json, _) = output(&["solve", path, "--json"], b"");
        let told: Value = serde_json::from_str(&json).unwrap();
        assert_eq!(told["asked_by_name"], false);
        let names: Vec<&str> = told["asked"]
            .as_array()
            .unwrap()
            .iter()
            .map(|one| one["symbol"].as_str().unwrap())
            .collect();
        assert_eq!(names, ["T", "J", "A", "B"]);
        let lines = "T = 267.5 N\ndone\nJ = 646 N\nψJ = 65.5°\nA = 588 N\nB = 588 N\ndone\n";
        let (_, text, _) = output(&["practice", path, "--plain"], lines.as_bytes());
        let text = text.split_whitespace().collect::<Vec<_>>().join(" ");
        assert!(text.contains(all), "{text}");
        assert!(
            text.contains("Still to be found: J (size of the force of the pin)"),
            "{text}"
        );
        assert!(text.contains("The whole working:"), "{text}");
    }
    // Who names it is asked for that alone, without a word of it.
    let (_, text, _) = output(&["solve", "-"], include_bytes!("../boards/a_frame.json"));
    assert!(!text.contains("asked by name"), "{text}");
}

/// At a knot all forces meet, whatever point is named; a couple that is given acts at no point.
#[test]
fn a_pivot_that_is_none_is_refused_with_a_code() {
    let knot = include_str!("../workings/ring_angle.json");
    let couple = include_str!("../boards/a_frame.json");
    for (file, pivot, status, code) in [
        (knot, "hook", 1, "knot-pivot"),
        (knot, "T_1", 1, "knot-pivot"),
        (couple, "moon", 2, "no-such-pivot"),
    ] {
        let arguments = ["solve", "-", "--pivot", pivot];
        let (found, text, talk) = output(&arguments, file.as_bytes());
        assert_eq!((found, text.as_str()), (status, ""), "{pivot}: {talk}");
        let (found, json, _) = output(&[&arguments[..], &["--json"]].concat(), file.as_bytes());
        let told: Value = serde_json::from_str(&json).unwrap();
        assert_eq!(
            (found, &told["error"]["code"]),
            (status, &Value::from(code))
        );
        assert_eq!(told["error"]["message"], talk.trim());
    }
    let triangle = [
        "solve", "-", "--method", "triangle", "--pivot", "T", "--json",
    ];
    let (status, json, _) = output(&triangle, couple.as_bytes());
    let told: Value = serde_json::from_str(&json).unwrap();
    assert_eq!(
        (status, &told["error"]["code"]),
        (2, &Value::from("no-pivot-needed"))
    );
}

/// A beam of 4 m and 98 N on a prop: B·d = 98 N·2 m, so B is 40 N with the prop at 4.9 m, beside the
/// beam, whether the file tells its place along the beam or by coordinates.
#[test]
fn a_hold_beside_its_body_at_the_value_found_is_refused_with_a_code() {
    let sought = r#"{"symbol": "d", "sought": "length"}"#;
    let along = format!(r#"{{"on": "beam", "at": {sought}}}"#);
    let by_coordinates = format!(r#"{{"x": {sought}, "y": "0.0 m"}}"#);
    let file = |at: &str, range: &str| {
        format!(
            r#"{{"leverwright": 1, "g": "9.8 m/s^2", "system": {{
  "bodies": [{{"name": "beam", "legs": [{{"length": "4.0 m", "direction": "right"}}]}}],
  "weights": [{{"noun": "beam", "body": "beam", "at": {{"on": "beam", "at": "middle"}}, "mass": "10 kg"}}],
  "holds": [
   {{"symbol": "A", "noun": "hinge", "body": "beam", "at": {{"on": "beam", "at": "foot"}}, "kind": "hinge"}},
   {{"symbol": "B", "noun": "prop", "body": "beam", "at": {at}, "kind": "push", "direction": "up"}}],
  "asked": ["sought"],
  "sought": {{"given": "d", {range}, "when": {{"reaches": "B", "limit": "40 N"}}}}}},
  "text": {{"title": "A prop", "statement": "Where does the prop give?"}}}}"#
        )
    };
    let told = |at: &str, range: &str| {
        let (status, json, _) = output(&["solve", "-", "--json"], file(at, range).as_bytes());
        assert_eq!(status, 1, "{json}");
        serde_json::from_str::<Value>(&json).unwrap()
    };
    let wide = r#""from": "1 m", "to": "8 m""#;
    for (at, why) in [
        (
            &along,
            "the prop would stand 4.90 m along a part that is only 4.00 m long",
        ),
        (
            &by_coordinates,
            "the prop would stand 0.900 m away from the beam",
        ),
    ] {
        let told = told(at, wide);
        assert_eq!(told["error"]["code"], "misplaced");
        let wanted = format!("the condition is met only at d = 4.90 m, and there {why}");
        assert_eq!(told["error"]["message"], wanted);
    }
    let beyond = r#""from": "5 m", "to": "8 m""#;
    let whole = told(&along, beyond);
    assert_eq!(whole["faults"][0]["code"], "no-value");
    assert_eq!(whole["faults"][0]["path"], "system.sought.from");
    let whole = told(&by_coordinates, beyond);
    let faults = whole["faults"].as_array().unwrap();
    let codes = faults.iter().map(|fault| fault["code"].as_str().unwrap());
    assert_eq!(codes.collect::<Vec<_>>(), ["none-in-range", "apart"]);
    let aside = format!(r#"{{"x": {sought}, "y": "0.5 m"}}"#);
    let whole = told(&aside, wide);
    assert_eq!(whole["faults"].as_array().unwrap().len(), 1, "{whole}");
    assert_eq!(whole["faults"][0]["code"], "apart");
}

/// The rope of the walkway pulls down here, as all that hangs there does: no page is opened, nothing is
/// kept, and the sentence is that of `solve`.
#[test]
fn practice_opens_no_problem_that_cannot_stand() {
    let file = include_str!("../lines/walkway.json").replace(r#""up": true"#, r#""up": false"#);
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("mine.json");
    std::fs::write(&path, file).unwrap();
    let (path, saves) = (path.to_str().unwrap(), folder.path().join("saves"));
    let (status, _, talk) = output(&["solve", path], b"");
    assert_eq!(status, 1);
    assert!(talk.contains("would have to push"), "{talk}");
    let kept = saves.to_str().unwrap();
    let opened = output(&["practice", path, "--plain", "--saves", kept], b"quit\n");
    assert_eq!(opened, (1, String::new(), talk));
    assert!(!saves.exists());
}
