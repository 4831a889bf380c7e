//! What a printed working shows at the edges: inner forces at their limit, what is sought where the
//! search began, a body built in, a part that is nothing, friction below its limit.

use super::output;

fn solved(file: &str) -> String {
    let (_, text, _) = output(&["solve", "-"], file.as_bytes());
    text
}

/// By hand: the cord of the README's step-ladder pulls at both halves alike, so moments of the whole
/// about the left foot hold no pull: (58.8 N·1 m + 735 N·1.5 m + 39.2 N·3 m)/(4 m) = 319.725 N.
#[test]
fn val_a_cord_at_its_limit_has_no_place_in_the_balance_of_both_bodies() {
    let page = format!("{}/lessons/README.md", env!("CARGO_MANIFEST_DIR"));
    let page = std::fs::read_to_string(page).unwrap();
    let (_, ladder) = page.split_once("### A step-ladder").unwrap();
    let (_, ladder) = ladder.split_once("```jsonc\n").unwrap();
    let (ladder, _) = ladder.split_once("```").unwrap();
    let told = r#"{"angle": "15 deg","#;
    let asked = r#""asked": ["N_r", "T", "J"]"#;
    assert!(ladder.contains(told) && ladder.contains(asked));
    let ladder = ladder
        .replace(told, r#"{"angle": {"symbol": "θ", "sought": "angle"},"#)
        .replace(
            asked,
            r#""asked": ["sought", "J"], "sought": {"given": "θ", "from": "5 deg", "to": "60 deg",
               "when": {"reaches": "T", "limit": "300 N"}}"#,
        );
    let text = solved(&ladder);
    assert!(
        text.contains("Wl⊥·L/2 + Wr·3L/2·sin θ + W1⊥·d1 = Nr·2L·sin θ,"),
        "{text}"
    );
    assert!(text.contains("Nr = 320 N"), "{text}");
}

/// By hand: a beam of 2 m in a sling hangs level without its prop when the load stands under the
/// ring, at 1 m, and each rope of the sling pulls 176.4 N/(2·sin 56.31°) = 106 N. The search for that
/// place begins there, too.
#[test]
fn val_what_is_sought_is_printed_where_the_search_for_it_began() {
    let rope = |symbol: &str, at: &str| {
        format!(
            r#"{{"symbol": "{symbol}", "noun": "rope", "ends": [
                {{"body": "beam", "at": {at}, "direction": {{"towards": {{"x": "1.0 m", "y": "1.5 m"}}}}}},
                {{"body": "ring", "at": {{"x": "1.0 m", "y": "1.5 m"}}, "direction": {{"towards": {at}}}}}]}}"#
        )
    };
    let tip = r#"{"on": "beam", "at": "tip"}"#;
    let text = solved(&format!(
        r#"{{"leverwright": 1, "g": "9.8 m/s^2", "system": {{
            "bodies": [{{"name": "beam", "legs": [{{"length": "2 m", "direction": "right"}}]}},
                {{"name": "ring", "knot": true, "start": {{"x": "1.0 m", "y": "1.5 m"}}}}],
            "weights": [{{"noun": "beam", "body": "beam", "at": {{"on": "beam", "at": "middle"}}, "mass": "12 kg"}}],
            "loads": [{{"noun": "pail", "body": "beam", "mass": "6 kg",
                "at": {{"on": "beam", "at": {{"symbol": "d", "sought": "length"}}}}}}],
            "ropes": [{}, {}, {{"symbol": "T_3", "noun": "hook", "ends": [
                {{"body": "ring", "at": {{"x": "1.0 m", "y": "1.5 m"}}, "direction": "up"}}]}}],
            "holds": [{{"symbol": "S", "noun": "prop", "body": "beam", "at": {tip}, "kind": "line", "direction": "up"}}],
            "asked": ["sought", "T_1", "T_2"],
            "sought": {{"given": "d", "from": "0.1 m", "to": "1.9 m", "when": {{"vanishes": "S"}}}}}},
            "text": {{"title": "A sling", "statement": "A sling.", "caution": "For learning only."}}}}"#,
        rope("T_1", "\"origin\""),
        rope("T_2", tip),
    ));
    assert!(text.contains("T2 = 106 N"), "{text}");
    assert!(text.contains("d = 1.00 m"), "{text}");
    assert!(!text.contains('?'), "{text}");
}

/// By hand: F·3.0 m·cos 30° − W·1.0 m·sin 30° = 60 N·2.598 m − 98 N·0.5 m = 106.9 N m, which the
/// socket must turn back.
#[test]
fn val_a_body_that_is_built_in_is_worked_with_its_couple() {
    let text = solved(
        r#"{"leverwright": 1, "g": "9.8 m/s^2", "model": {
            "body": {"noun": "pole", "length": "3.0 m", "mass": "10 kg",
                "tilt": {"angle": "30 deg", "from": "vertical"}, "towards": "left", "centre": {"fraction": "1/3"}},
            "supports": [{"noun": "socket", "at": "foot", "kind": "built_in"}],
            "loads": [{"noun": "wind", "force": "60 N", "direction": "right", "at": "tip"}]},
            "text": {"title": "A pole", "statement": "{L=} {m_b=} {θ=} {F_1=}",
                "meanings": {"L": "length", "m_b": "mass", "θ": "lean", "F_1": "wind"}}}"#,
    );
    assert!(text.contains("MH = 107 N m (anticlockwise)"), "{text}");
    assert!(text.contains("Hx = −60.0 N (to the left)"), "{text}");
}

/// By hand: a beam hinged at its own centre needs no rope, so the hinge carries its weight alone and
/// its force has no level part to divide by.
#[test]
fn val_a_part_that_is_nothing_has_no_side_and_divides_nothing() {
    let text = solved(
        r#"{"leverwright": 1, "g": "9.8 m/s^2", "model": {
            "body": {"noun": "beam", "length": "4.0 m", "mass": "20 kg",
                "tilt": {"angle": "40 deg", "from": "horizontal"}, "towards": "left"},
            "supports": [{"noun": "pin", "at": "middle", "kind": "hinge"}],
            "ropes": [{"noun": "guy", "at": "tip", "direction": "right"}]},
            "text": {"title": "A beam", "statement": "{L=} {m_b=} {θ=}",
                "meanings": {"L": "length", "m_b": "mass", "θ": "tilt"}}}"#,
    );
    assert!(text.contains("Hx = 0 N\n"), "{text}");
    assert!(text.contains("H = |Hy| = 196 N"), "{text}");
    assert!(!text.contains("atan"), "{text}");
}

/// By hand: F = 196 N/(2·tan 70°) = 35.7 N, and at the most 0.3·196 N = 58.8 N.
#[test]
fn val_friction_below_its_limit_is_compared() {
    let text = solved(
        r#"{"leverwright": 1, "g": "9.8 m/s^2", "system": {
            "bodies": [{"name": "ladder", "legs": [{"length": "5 m",
                "direction": {"angle": "70 deg", "from": "horizontal", "up": true, "side": "right"}}]}],
            "weights": [{"noun": "ladder", "body": "ladder", "at": {"on": "ladder", "at": "middle"}, "mass": "20 kg"}],
            "holds": [
                {"symbol": "N", "noun": "floor", "body": "ladder", "at": {"on": "ladder", "at": "foot"},
                    "kind": "rough", "direction": "up", "friction": {"up_to": "0.3"}},
                {"symbol": "F", "noun": "wall", "body": "ladder", "at": {"on": "ladder", "at": "tip"},
                    "kind": "push", "direction": "left"}],
            "asked": ["N", "F"]},
            "text": {"title": "A ladder", "statement": "A ladder.", "caution": "For learning only."}}"#,
    );
    assert!(
        text.contains("    μ·N = 0.3·196 N = 58.8 N\n    35.7 N ≤ 58.8 N\n"),
        "{text}"
    );
    assert!(text.contains("It does not slip at the floor"), "{text}");
}

/// A level push on a tilted pole that leans on a wall: its angle is no weight's, the wall's is that
/// of its push, and a wall has no tension.
#[test]
fn val_titles_say_whose_line_an_angle_is_of() {
    let text = solved(
        r#"{"leverwright": 1, "g": "9.8 m/s^2", "model": {
            "body": {"noun": "pole", "length": "3.0 m", "mass": "15 kg",
                "tilt": {"angle": "35 deg", "from": "vertical"}, "towards": "right"},
            "supports": [{"noun": "pin", "at": "foot", "kind": "hinge"},
                {"noun": "wall", "at": "tip", "kind": "roller", "direction": "left"}],
            "loads": [{"noun": "pail", "at": "1.0 m", "force": "60 N", "direction": "right"}]},
            "text": {"title": "A pole", "statement": "{L=} {m_b=} {θ=} {F_1=} {d_1=}",
                "meanings": {"L": "length", "m_b": "mass", "θ": "lean", "F_1": "push", "d_1": "height"}}}"#,
    );
    for title in [
        "Angle between a weight and the pole\n    α",
        "Angle between the line of F1 and the pole\n    δ",
        "Angle between the line of H2 and the pole\n    γ",
        "Push of the wall\n    H2",
    ] {
        assert!(text.contains(title), "{title}: {text}");
    }
}

/// A block on a wedge slips down or up under two pushes; the floor must hold the wedge at both. The
/// second value by a tester's own arithmetic: 27.6 N needed, 0.3·106 N = 31.9 N at the most.
#[test]
fn val_every_value_of_what_is_sought_is_compared() {
    let text = solved(include_str!("../workings/wedge_two_pushes.json"));
    let (first, second) = text.split_once("is as true").unwrap();
    assert!(first.contains("    6.49 N ≤ 34.5 N\n"), "{text}");
    assert!(second.contains("    27.6 N ≤ 31.9 N\n"), "{text}");
    assert_eq!(second.matches("It does not slip").count(), 1, "{text}");
}
