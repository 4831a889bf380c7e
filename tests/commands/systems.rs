//! What `solve` says of bodies in general, and of files with faults.

use super::output;
use serde_json::Value;

fn scene(system: &str) -> String {
    format!(
        r#"{{"leverwright": 1, "g": "9.8 m/s^2", "system": {system},
            "text": {{"title": "A bar", "statement": "A bar hangs from a nail.", "caution": "For learning only."}}}}"#
    )
}

fn solved(file: &str) -> (String, Value) {
    let (code, text, talk) = output(&["solve", "-"], file.as_bytes());
    assert_eq!((code, talk.as_str()), (0, ""), "{text}");
    let (code, json, _) = output(&["solve", "-", "--json"], file.as_bytes());
    assert_eq!(code, 0);
    (text, serde_json::from_str(&json).unwrap())
}

/// A bar on a nail at its end rests where it stands upright above it and where it hangs below. It
/// comes back to the second only.
#[test]
fn val_a_rest_that_does_not_last_is_told_as_such() {
    let (text, told) = solved(&scene(
        r#"{"bodies": [{"name": "bar", "legs": [{"length": "2 m", "direction": {"angle": {"symbol": "θ", "sought": "angle"}, "from": "x-axis"}}]}],
            "weights": [{"noun": "bar", "body": "bar", "at": {"on": "bar", "at": "middle"}, "mass": "20 kg"}],
            "holds": [{"symbol": "H", "noun": "nail", "body": "bar", "at": {"on": "bar", "at": "foot"}, "kind": "hinge"}],
            "asked": ["sought", "H"],
            "sought": {"given": "θ", "from": "1 deg", "to": "359 deg", "when": {"rests": "bar"}}}"#,
    ));
    assert!(text.contains("θ = 90.0°, an unstable rest"), "{text}");
    assert!(text.contains("θ = 270°, a stable rest"), "{text}");
    for (index, (angle, stable)) in [(90.0, false), (270.0, true)].into_iter().enumerate() {
        let one = &told["sought"][index];
        assert!(
            (one["value"].as_f64().unwrap() - angle).abs() < 1e-6,
            "{one}"
        );
        assert_eq!(one["stable"], stable);
    }
    // The working is that of the bar that hangs.
    assert_eq!(told["forces"][0]["what"], "bar");
    assert!((told["forces"][0]["at"]["y"].as_f64().unwrap() + 1.0).abs() < 1e-9);
}

/// A level bar of 20 kg, a rope from its end back to the wall, so flat that the moments give
/// T = W ÷ (2 sin φ): at 0.001° that is 28 648 weights, at 0.01° a tenth of it.
#[test]
fn val_forces_far_above_the_loads_are_told_with_caution() {
    for (angle, is_told) in [("0.001 deg", true), ("0.01 deg", false)] {
        let (text, told) = solved(&scene(&format!(
            r#"{{"bodies": [{{"name": "bar", "legs": [{{"length": "2 m", "direction": "right"}}]}}],
                "weights": [{{"noun": "bar", "body": "bar", "at": {{"on": "bar", "at": "middle"}}, "mass": "20 kg"}}],
                "ropes": [{{"noun": "rope", "ends": [{{"body": "bar", "at": {{"on": "bar", "at": "tip"}},
                    "direction": {{"angle": "{angle}", "from": "horizontal", "up": true, "side": "left"}}}}]}}],
                "holds": [{{"symbol": "H", "noun": "nail", "body": "bar", "at": {{"on": "bar", "at": "foot"}}, "kind": "hinge"}}],
                "asked": ["T"]}}"#
        )));
        assert_eq!(
            text.contains("ten thousand times the largest load (196 N)"),
            is_told,
            "{text}"
        );
        assert_eq!(told["strained"].is_object(), is_told, "{told}");
        if is_told {
            let size = told["strained"]["size"].as_f64().unwrap();
            let wanted = 98.0 / 0.001_f64.to_radians().sin();
            assert!((size / wanted - 1.0).abs() < 1e-6, "{size} for {wanted}");
            assert!((told["strained"]["largest_load"].as_f64().unwrap() - 196.0).abs() < 1e-9);
        }
    }
}

#[test]
fn programs_are_told_the_faults_of_a_file() {
    let file = super::LADDER
        .replace("\"12 kg\"", "\"12 m\"")
        .replace("\"to\": \"0.9\"", "\"to\": \"0.9\", \"too\": 1");
    let (code, text, talk) = output(&["solve", "-", "--json"], file.as_bytes());
    assert_eq!(code, 1);
    let told: Value = serde_json::from_str(&text).unwrap_or_else(|_| panic!("{text} {talk}"));
    assert_eq!(told["version"], 1);
    let faults = told["faults"].as_array().unwrap();
    let said: Vec<(&str, &str)> = faults
        .iter()
        .map(|fault| {
            (
                fault["code"].as_str().unwrap(),
                fault["path"].as_str().unwrap(),
            )
        })
        .collect();
    let wanted = [
        ("expected", "system.weights[0].mass"),
        ("unknown-field", "system.sought.too"),
    ];
    assert_eq!(said, wanted, "{text}");
    for fault in faults {
        let (line, column) = (&fault["line"], &fault["column"]);
        let path = fault["path"].as_str().unwrap();
        let message = fault["message"].as_str().unwrap();
        let line = format!("standard input: line {line}, column {column}, {path}: {message}");
        assert!(talk.contains(&line), "{line} in {talk}");
    }
}

/// A knot has no moments, whether its forces are sought or a mass is.
#[test]
fn a_knot_takes_no_pivot() {
    let ropes = r#""bodies": [{"name": "ring", "knot": true}],
        "ropes": [
          {"symbol": "T_1", "noun": "left rope", "ends": [{"body": "ring", "at": "origin", "direction": {"angle": "52 deg", "from": "horizontal", "up": true, "side": "left"}}]},
          {"symbol": "T_2", "noun": "right rope", "ends": [{"body": "ring", "at": "origin", "direction": {"angle": "18 deg", "from": "horizontal", "up": true, "side": "right"}}]}]"#;
    let given = format!(
        r#"{{{ropes}, "loads": [{{"noun": "sign", "body": "ring", "at": "origin", "mass": "9 kg"}}], "asked": ["T_1"]}}"#
    );
    let sought = format!(
        r#"{{{ropes}, "loads": [{{"noun": "sign", "body": "ring", "at": "origin", "mass": {{"symbol": "m_1", "sought": "mass"}}}}], "asked": ["sought"],
            "sought": {{"given": "m_1", "from": "1 kg", "to": "500 kg", "when": {{"reaches": "T_1", "limit": "350 N"}}}}}}"#
    );
    for system in [given, sought] {
        let file = scene(&system);
        let (code, _, talk) = output(&["solve", "-", "--pivot", "T_1"], file.as_bytes());
        assert_eq!(code, 1);
        assert!(
            talk.contains("at a knot all forces meet, so it has no moments"),
            "{talk}"
        );
        let told = output(&["solve", "-", "--pivot", "T_1", "--json"], file.as_bytes());
        assert!(told.1.contains("\"knot-pivot\""), "{told:?}");
        assert_eq!(output(&["solve", "-"], file.as_bytes()).0, 0);
    }
}

/// The statement names a number that is sought where it has no value to tell.
#[test]
fn a_number_that_is_sought_is_named_in_the_statement() {
    let file = super::LADDER.replace("For which coefficient is", "For which {μ} is");
    let (code, text, _) = output(&["solve", "-"], file.as_bytes());
    assert_eq!(code, 0);
    assert!(text.contains("For which μ is it about to slip?"), "{text}");
}

fn practised(file: &str, lines: &str) -> String {
    let path = format!("{}/tests/boards/{file}.json", env!("CARGO_MANIFEST_DIR"));
    let (code, text, talk) = output(&["practice", &path, "--plain"], lines.as_bytes());
    assert_eq!(code, 0, "{talk}");
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

/// Nothing is told of the unit of a pure number, and a point below the origin stands no negative
/// height above it.
#[test]
fn pure_numbers_and_points_below_are_told_in_whole_sentences() {
    let text = practised("ladder_mu", "μ = 0.233 N\nquit\n");
    assert!(
        text.contains("asked is a pure number, without a unit."),
        "{text}"
    );
    let text = practised("jib", "quit\n");
    assert!(
        text.contains("towards the point 1.50 m below the origin."),
        "{text}"
    );
    let text = practised("wheel_at_step", "quit\n");
    let edge = "at the point 0.400 m to the right of the origin and 0.300 m below it;";
    assert!(text.contains(edge), "{text}");
}

/// The pivot of moments is told by what acts there, else by its place; what is sought may lie
/// anywhere within its range.
#[test]
fn the_pivot_that_was_asked_for_is_told() {
    for (file, pivot, told) in [
        (
            "plank_tips",
            "tip",
            "Moments about the end of the plank (plank)",
        ),
        (
            "plank_tips",
            "W_b",
            "Moments about the centre of mass of the plank (plank)",
        ),
    ] {
        let path = format!("{}/tests/boards/{file}.json", env!("CARGO_MANIFEST_DIR"));
        let arguments = ["solve", &path, "--method", "coordinates", "--pivot", pivot];
        let (code, text, talk) = output(&arguments, b"");
        assert_eq!(code, 0, "{talk}");
        assert!(text.contains(told), "{file} {pivot}: {text}");
    }
    // The middle of its range is the middle of the board, where its weight acts.
    let board = scene(
        r#"{"bodies": [{"name": "board", "legs": [{"length": "2 m", "direction": "right"}]}],
            "weights": [{"noun": "board", "body": "board", "at": {"on": "board", "at": "middle"}, "mass": "10 kg"}],
            "loads": [{"noun": "cat", "body": "board", "at": {"on": "board", "at": {"symbol": "x", "sought": "length"}}, "mass": "6 kg"}],
            "holds": [{"symbol": "A", "noun": "left prop", "body": "board", "at": {"on": "board", "at": "foot"}, "kind": "push", "direction": "up"},
                {"symbol": "B", "noun": "right prop", "body": "board", "at": {"on": "board", "at": "1.2 m"}, "kind": "push", "direction": "up"}],
            "asked": ["sought", "B"],
            "sought": {"given": "x", "from": "0 m", "to": "2 m", "when": {"vanishes": "A"}}}"#,
    );
    let arguments = ["solve", "-", "--method", "arms", "--pivot", "cat"];
    let (code, text, talk) = output(&arguments, board.as_bytes());
    assert_eq!(code, 0, "{talk}");
    assert!(text.contains("x = 1.53 m"), "{text}");
    assert!(text.contains("Moments about the cat (board)"), "{text}");
}

/// A ladder that slips at both ends at once comes back to no rest, and goes on from none.
#[test]
fn a_ladder_about_to_slip_is_no_unstable_rest() {
    let (text, told) = solved(&scene(
        r#"{"bodies": [{"name": "ladder", "legs": [{"length": "4.5 m", "direction": {"angle": {"symbol": "θ", "sought": "angle"}, "from": "horizontal", "up": true, "side": "right"}}]}],
            "weights": [{"noun": "ladder", "body": "ladder", "at": {"on": "ladder", "at": "middle"}, "mass": "21 kg"}],
            "holds": [{"symbol": "N", "noun": "floor", "body": "ladder", "at": {"on": "ladder", "at": "foot"}, "kind": "rough", "direction": "up",
                "friction": {"limiting": {"symbol": "μ_f", "is": "0.35"}, "direction": "right"}},
                {"symbol": "R", "noun": "wall", "body": "ladder", "at": {"on": "ladder", "at": "tip"}, "kind": "rough", "direction": "left",
                "friction": {"limiting": {"symbol": "μ_w", "is": "0.2"}, "direction": "up"}}],
            "asked": ["sought"],
            "sought": {"given": "θ", "from": "5 deg", "to": "85 deg", "when": {"rests": "ladder"}}}"#,
    ));
    // tan θ = (1 − 0.35·0.2)/(2·0.35), in every textbook of statics.
    assert!(text.contains("θ = 53.0°\n"), "{text}");
    assert!(told["sought"][0]["stable"].is_null(), "{told}");
}

/// A rope tied where its platform is not, and a platform that nothing stops besides: `check`,
/// `solve` and `practice` refuse the file with the same faults.
#[test]
fn what_holds_a_body_where_it_is_not_is_refused_alike() {
    let tied = |x: &str| {
        scene(
            &r#"{"bodies": [{"name": "platform", "legs": [{"length": "3 m", "direction": "right"}]}],
            "weights": [{"noun": "platform", "body": "platform", "at": {"on": "platform", "at": "middle"}, "mass": "20 kg"}],
            "ropes": [{"symbol": "T", "noun": "rope", "ends": [{"body": "platform", "at": {"x": "FAR", "y": "0 m"}, "direction": "up"}]}],
            "holds": [{"symbol": "H", "noun": "hinge", "body": "platform", "at": {"on": "platform", "at": "foot"}, "kind": "hinge"}],
            "asked": ["T"]}"#.replace("FAR", x),
        )
    };
    let path = std::env::temp_dir().join(format!("leverwright-apart-{}.json", std::process::id()));
    let name = path.to_str().unwrap();
    let arguments: [&[&str]; 4] = [
        &["check", name],
        &["solve", name],
        &["solve", name, "--json"],
        &["practice", name, "--plain"],
    ];
    let mut told = Vec::new();
    for x in ["2.9 m", "3.4 m"] {
        std::fs::write(&path, tied(x)).unwrap();
        told.push(arguments.map(|arguments| output(arguments, b"quit\n")));
    }
    std::fs::remove_file(&path).unwrap();
    for (code, ..) in &told[0] {
        assert_eq!(*code, 0, "{:?}", told[0]);
    }
    let fault =
        "system.ropes[0]: rope is placed 0.400 m away from platform, which has no part there";
    for (code, text, talk) in &told[1] {
        assert_eq!(*code, 1, "{text} {talk}");
        assert!(format!("{text}{talk}").contains(fault), "{text} {talk}");
    }
    assert!(
        told[1][2].1.contains("\"path\":\"system.ropes[0]\""),
        "{}",
        told[1][2].1
    );
}

/// A second true value is worked too, by the steps that differ. By hand: sin β = 588·2/(600·3), so
/// β = 40.8° or 139.2°, Hx = ∓454 N; d = 2.94 m or 3.84 m.
#[test]
fn every_true_value_of_what_is_sought_is_worked() {
    let angle = include_str!("../general/stay_at_an_angle.json");
    let (text, told) = solved(angle);
    let (first, second) = text.split_once("β = 139° is as true.").unwrap();
    for line in [
        "    β = 40.8°\n",
        "    Hx = −454 N (to the left)\n",
        "    Hy = 196 N (upwards)\n",
    ] {
        assert!(first.contains(line), "{line}: {first}");
    }
    for line in [
        "    β = 139°\n",
        "    Hx = 454 N (to the right)\n",
        "Level forces (boom)\n",
    ] {
        assert!(second.contains(line), "{line}: {second}");
    }
    // What stays the same is not written again.
    assert!(!second.contains("Hy = 196 N"), "{second}");
    let other = &told["other_values"][0];
    assert_eq!(told["other_values"].as_array().unwrap().len(), 1);
    assert!(
        (other["value"].as_f64().unwrap() - 139.206).abs() < 1e-3,
        "{other}"
    );
    let working = other["working"].as_array().unwrap();
    let stage = &working
        .iter()
        .find(|line| !line["stage"].is_null())
        .unwrap()["stage"];
    assert_eq!(
        (&stage["first"], &stage["bodies"][0]),
        (&"moments".into(), &"boom".into())
    );
    assert_eq!(stage["removed"], serde_json::json!(["Hx", "Hy"]));
    let forces = other["forces"].as_array().unwrap();
    let hinge = forces.iter().find(|force| force["symbol"] == "H").unwrap();
    assert!(
        (hinge["x"].as_f64().unwrap() - 454.2).abs() < 0.1,
        "{hinge}"
    );
    let (text, _) = solved(include_str!("../general/stay_tied.json"));
    let (_, second) = text.split_once("d = 3.84 m is as true.").unwrap();
    assert!(
        second.contains("    Hx = 257 N (to the right)\n"),
        "{second}"
    );
    // Of a rest that is not stable, and of one value alone, nothing is worked again.
    let (text, told) = solved(super::LADDER);
    assert!(!text.contains("is as true"), "{text}");
    assert!(told["other_values"].as_array().unwrap().is_empty());
}

/// By hand: 20 kg on a slope of 25° press down along it with 196 N · sin 25° = 82.8 N; a pull of 150 N
/// up the slope leaves 67.2 N for the friction, the other way.
#[test]
fn val_friction_off_the_level_is_told_by_its_sides() {
    let pull = r#""loads": [{"noun": "pull", "body": "block", "at": {"on": "block", "at": "middle"},
        "force": "150 N", "direction": {"along": "block", "onward": true}}],"#;
    for (side, left, more, size, way, word) in [
        (
            "right",
            true,
            "",
            "82.8",
            "upwards, to the right",
            "up-right",
        ),
        ("left", false, "", "82.8", "upwards, to the left", "up-left"),
        (
            "right",
            true,
            pull,
            "67.2",
            "downwards, to the left",
            "down-left",
        ),
        (
            "left",
            false,
            pull,
            "67.2",
            "downwards, to the right",
            "down-right",
        ),
    ] {
        let (text, told) = solved(&scene(&format!(
            r#"{{"bodies": [{{"name": "block", "legs": [{{"length": "0.4 m", "direction":
                  {{"angle": "25 deg", "from": "horizontal", "up": true, "side": "{side}"}}}}]}}],
                "weights": [{{"noun": "block", "body": "block", "at": {{"on": "block", "at": "middle"}}, "mass": "20 kg"}}],
                {more}
                "holds": [{{"symbol": "N", "noun": "slope", "body": "block", "at": {{"on": "block", "at": "middle"}},
                  "kind": "base", "width": "0.4 m", "direction": {{"across": "block", "left": {left}}}, "friction": "as-needed"}}],
                "asked": ["N"]}}"#
        )));
        let line = text
            .lines()
            .find(|line| line.ends_with(&format!("({way})")));
        assert!(
            line.is_some_and(|line| line.contains("FN = ") && line.contains(size)),
            "{text}"
        );
        let working = told["working"].as_array().unwrap();
        assert_eq!(working.iter().filter(|line| line["way"] == word).count(), 1);
    }
}

/// By hand: the hoist of the jib runs from the crate over a pulley and back along the boom.
#[test]
fn val_a_rope_is_told_at_each_of_its_ends() {
    let path = format!(
        "{}/tests/boards/pulley_beam.json",
        env!("CARGO_MANIFEST_DIR")
    );
    let (_, told) = solved(&std::fs::read_to_string(path).unwrap());
    let forces = told["forces"].as_array().unwrap();
    let rope = forces.iter().find(|force| force["symbol"] == "S").unwrap();
    let ends = rope["ends"].as_array().unwrap();
    let on: Vec<&str> = ends.iter().map(|end| end["on"].as_str().unwrap()).collect();
    assert_eq!(on, ["load", "boom", "boom"]);
    // The crate hangs on it with 100 kg · 9.8 m/s²; over the boom it pulls down with as much.
    for (end, upwards) in ends.iter().zip([980.0, -980.0]) {
        let near = |name: &str, right: f64| (end[name].as_f64().unwrap() - right).abs() < 1e-6;
        assert!(near("x", 0.0) && near("y", upwards), "{end}");
    }
    let size = |end: &Value| end["x"].as_f64().unwrap().hypot(end["y"].as_f64().unwrap());
    assert!((size(&ends[2]) - 980.0).abs() < 1e-6);
    let others = forces.iter().filter(|force| force["what"] == "crate");
    assert!(others.into_iter().all(|force| force["ends"].is_null()));
}
