//! What cannot act on a knot, and what is said of it.

use leverwright::lesson::parse_system;

/// A knot with a load and two ropes; `more` stands behind the load, `hold` in the list of holds.
fn told(more: &str, hold: &str) -> Vec<String> {
    let rope = |symbol: &str, side: &str| {
        format!(
            r#"{{"symbol": "{symbol}", "noun": "rope", "ends": [{{"body": "ring", "at": "origin", "direction": "{side}"}}]}}"#
        )
    };
    let json = format!(
        r#"{{"leverwright": 1, "g": "9.8 m/s^2", "system": {{
        "bodies": [{{"name": "ring", "knot": true}}],
        "loads": [{{"noun": "lamp", "body": "ring", "at": "origin", "mass": "3 kg"}}{more}],
        "ropes": [{}, {}],
        "holds": [{hold}]}},
        "text": {{"title": "Ring", "statement": "A ring."}}}}"#,
        rope("T_1", "up"),
        rope("T_2", "left"),
    );
    parse_system(&json).map_or_else(|faults| super::told(&faults), |_| Vec::new())
}

#[test]
fn a_knot_takes_no_couple_and_no_built_in_end() {
    assert_eq!(told("", ""), Vec::<String>::new());
    let couple = r#", {"noun": "motor", "body": "ring", "couple": "4 N m", "turns": "clockwise"}"#;
    let turns = "turns a knot, which is a point and cannot be turned; give the body legs or leave \
                 \"knot\" out";
    assert_eq!(
        told(couple, ""),
        [format!("line 3, column 85, system.loads[1]: motor {turns}")]
    );
    for (kind, more) in [
        ("built-in", ""),
        ("couple", ""),
        (
            "base",
            r#", "direction": "up", "friction": "as-needed", "width": "0.2 m""#,
        ),
    ] {
        let hold = format!(
            r#"{{"noun": "wall", "body": "ring", "at": "origin", "kind": "{kind}"{more}}}"#
        );
        let said = told("", &hold);
        assert!(
            said.len() == 1 && said[0].ends_with(&format!("system.holds[0]: wall {turns}")),
            "{said:?}"
        );
    }
}

#[test]
fn all_forces_on_a_knot_act_at_one_point() {
    let beside =
        r#", {"noun": "cup", "body": "ring", "at": {"x": "0.2 m", "y": "0 m"}, "mass": "1 kg"}"#;
    let said = told(beside, "");
    assert!(
        said.len() == 1
            && said[0].ends_with(
                "system.loads[1]: cup acts beside the knot; at a knot all forces act at one point"
            ),
        "{said:?}"
    );
}
