//! A pivot that gives nothing, and a rope that misses its other end, are refused by their codes.

use super::output;
use serde_json::Value;

fn told(file: &str, more: &[&str]) -> (String, Value) {
    let arguments = [&["solve", "-", "--json"], more].concat();
    let (_, json, _) = output(&arguments, file.as_bytes());
    let told: Value = serde_json::from_str(&json).unwrap();
    let code = match &told["error"]["code"] {
        Value::Null => &told["faults"][0]["code"],
        code => code,
    };
    (code.as_str().unwrap_or("").to_owned(), told)
}

/// By hand: all forces on a pipe in a groove meet in its middle, so moments about it are 0 = 0; about
/// a side they give the other. The same of a plate: its centre is no matter of moments.
#[test]
fn val_a_pivot_gives_an_unknown_or_is_refused() {
    let side = |symbol: &str, x: &str, angle: &str| {
        format!(
            r#"{{"symbol": "{symbol}", "noun": "side {symbol}", "body": "pipe", "at": {{"x": "{x}", "y": "-0.35 m"}},
                "kind": "push", "direction": {{"angle": "{angle}", "from": "x-axis"}}}}"#
        )
    };
    let pipe = format!(
        r#"{{"leverwright": 1, "g": "9.8 m/s^2", "system": {{"bodies": [{{"name": "pipe"}}],
            "weights": [{{"symbol": "W", "noun": "pipe", "body": "pipe", "at": "origin", "mass": "20 kg"}}],
            "holds": [{}, {}], "asked": ["A", "B"]}},
            "text": {{"title": "A pipe", "statement": "A pipe.", "caution": "For learning only."}}}}"#,
        side("A", "-0.35 m", "45 deg"),
        side("B", "0.35 m", "135 deg"),
    );
    let path = format!("{}/tests/boards/centre.json", env!("CARGO_MANIFEST_DIR"));
    let plate = std::fs::read_to_string(path).unwrap();
    for (file, pivot, code) in [
        (&pipe, "A", ""),
        (&pipe, "B", ""),
        (&pipe, "W", "pivot-unused"),
        (&plate, "foot", "no-pivot-needed"),
    ] {
        for method in ["components", "arms", "coordinates"] {
            let (found, whole) = told(file, &["--method", method, "--pivot", pivot]);
            assert_eq!(found, code, "{pivot} {method}: {whole}");
            let working = whole["working"].as_array().into_iter().flatten();
            let mut stages = working.map(|line| &line["stage"]["first"]);
            let takes = stages.any(|first| first == "moments");
            assert_eq!(takes, code.is_empty(), "{pivot} {method}: {whole}");
        }
    }
}

/// By hand: the cord of the README's step-ladder, tied half-way up the right half, lies 2.0 m ·
/// (1/2 − 1/4) · cos 15° = 0.483 m higher there. One that pulls otherwise at an end runs over something.
#[test]
fn val_a_straight_rope_meets_its_other_end() {
    let page = format!("{}/lessons/README.md", env!("CARGO_MANIFEST_DIR"));
    let page = std::fs::read_to_string(page).unwrap();
    let (_, ladder) = page.split_once("### A step-ladder").unwrap();
    let (_, ladder) = ladder.split_once("```jsonc\n").unwrap();
    let (ladder, _) = ladder.split_once("```").unwrap();
    let tied = r#""at": {"fraction": "3/4"}}, "direction": "left"}"#;
    assert_eq!(ladder.matches(tied).count(), 1);
    for (fraction, way, code) in [
        ("3/4", "left", ""),
        ("1/2", "left", "off-its-line"),
        // Two millimetres off its line, it would turn the whole of both halves.
        ("751/1000", "left", "off-its-line"),
        ("1/2", "up", ""),
        // Told by an angle of half a degree at one end only, the two pulls do not oppose each other.
        ("3/4", "tilted", "off-its-line"),
    ] {
        let tilted = r#"{"angle": "0.5 deg", "from": "horizontal", "up": true, "side": "left"}"#;
        let way = if way == "tilted" {
            tilted.to_owned()
        } else {
            format!("\"{way}\"")
        };
        let there = format!(r#""at": {{"fraction": "{fraction}"}}}}, "direction": {way}}}"#);
        let (found, whole) = told(&ladder.replace(tied, &there), &[]);
        match code {
            "" => assert_ne!(found, "off-its-line", "{fraction} {way}: {whole}"),
            code => {
                assert_eq!(found, code, "{fraction} {way}: {whole}");
                let fault = &whole["faults"][0];
                assert_eq!(fault["path"], "system.ropes[0]");
                let apart = match fraction {
                    "1/2" => "0.483 m",
                    // The halves stand 4.0 m · sin 15° · 3/4 apart there; half a degree off its line.
                    "3/4" => "0.00678 m",
                    _ => "0.00193 m",
                };
                assert!(
                    fault["message"].as_str().unwrap().contains(apart),
                    "{fault}"
                );
            }
        }
    }
}

/// A strap told level once for all, whose end is sought: by hand it lies up to (2.0 m − 1.5 m) ·
/// cos 20° off its line in the range. A ring whose place is told is met like anything else: from
/// (2.1 m, 0) at 135° to (1.0 m, 1.0 m), 0.1 m · sin 45° beside it.
#[test]
fn val_a_straight_rope_meets_its_other_end_at_every_value_sought() {
    let strap = include_str!("../workings/strap_by_distances.json");
    let limit = r#""asked": ["sought"], "sought": {"given": "c", "from": "1.0 m", "to": "2.0 m",
        "when": {"reaches": "T", "limit": "35 N"}}},"#;
    let (parts, text) = strap.split_once("\"asked\"").unwrap();
    let (_, text) = text.split_once("},").unwrap();
    let given = parts.replace("\"is\": \"1.5 m\"", "\"sought\": \"length\"");
    assert_ne!(given, parts);
    let text = text.replace("{c=}", "{T_max=}");
    let ring = include_str!("../workings/ring_beside.json");
    for (file, apart) in [
        (format!("{given}{limit}{text}"), "up to 0.470 m"),
        (ring.to_owned(), "0.0707 m"),
    ] {
        let (found, whole) = told(&file, &[]);
        assert_eq!(found, "off-its-line", "{whole}");
        let fault = whole["faults"][0]["message"].as_str().unwrap();
        assert!(fault.contains(apart), "{fault}");
    }
}
