//! Values at the ends of a range, none in it, and such as solve the equations only.

use leverwright::lesson::parse_system;
use leverwright::statics::{Root, roots};
use leverwright::working::settle;

/// The file with these changes, each of a text that stands in it.
fn changed(name: &str, changes: &[(&str, &str)]) -> String {
    let path = format!("{}/tests/workings/{name}.json", env!("CARGO_MANIFEST_DIR"));
    let mut text = std::fs::read_to_string(path).unwrap();
    for (old, new) in changes {
        assert!(text.contains(old), "{name}: {old}");
        text = text.replace(old, new);
    }
    text
}

fn found(name: &str, changes: &[(&str, &str)]) -> Vec<Root> {
    let system = parse_system(&changed(name, changes)).unwrap();
    roots(&system, system.gravity()).unwrap_or_else(|why| panic!("{why}"))
}

fn refusal(name: &str, changes: &[(&str, &str)]) -> (&'static str, String) {
    let why = settle(&parse_system(&changed(name, changes)).unwrap()).unwrap_err();
    (why.code(), why.to_string())
}

/// About the tip N = W/(2(1 − μ·tan 60°)). The wall's friction holds the beam up where
/// W − N = μ²N: μ = 2 − √3. It holds it down where N − W = μ²N: μ = √3 − √2; but a foot that
/// slips from the wall lets the tip slide down, and then the friction acts upwards.
#[test]
fn val_a_sense_of_friction_that_no_motion_has_is_no_value() {
    let three = f64::sqrt(3.0);
    let both = found("rough_wall", &[]);
    let values: Vec<f64> = both.iter().map(|root| root.value).collect();
    assert_eq!(values.len(), 2, "{values:?}");
    assert!((values[0] - (2.0 - three)).abs() < 1e-9, "{values:?}");
    assert!(
        (values[1] - (three - f64::sqrt(2.0))).abs() < 1e-9,
        "{values:?}"
    );
    assert!(both[0].solution.is_ok());
    let why = both[1].solution.as_ref().unwrap_err();
    assert_eq!(why.code(), "no-one-motion");
    let (code, told) = refusal("rough_wall", &[("\"0.01\"", "\"0.3\"")]);
    assert_eq!(code, "no-one-motion");
    let wanted = "the condition is met only at μ = 0.318, and there friction is at its limit at S and N, \
                  but the bodies have no motion in which each of them slips against its friction";
    assert!(told.contains(wanted), "{told}");
}

/// Where the file says that the wall's friction acts upwards there is the one value alone, and
/// none where it says downwards: the beam would slip up the wall.
#[test]
fn val_the_sense_that_a_file_states_is_kept() {
    let value = 2.0 - f64::sqrt(3.0);
    let up = found("shared_mu", &[]);
    assert_eq!(up.len(), 1, "{up:?}");
    assert!(
        (up[0].value - value).abs() < 1e-9 && up[0].solution.is_ok(),
        "{up:?}"
    );
    let down = found(
        "shared_mu",
        &[(
            "\"direction\": \"up\"\n    }\n   },",
            "\"direction\": \"down\"\n    }\n   },",
        )],
    );
    assert!(down.iter().all(|root| root.solution.is_err()), "{down:?}");
}

/// About the right prop A·3 m = 200 N·1 m + 300 N·(3 m − ℓ): 1100/3 N with the child at the left end,
/// 200/3 N with it at 3 m, 296.67 N at 0.7 m. The limits are written a hair beside, to either side.
#[test]
fn val_a_value_at_an_end_of_the_range_is_found() {
    for (from, to, limit, value) in [
        ("0 m", "4.0 m", "366.6666666666667 N", 0.0),
        ("0 m", "4.0 m", "366.66666666666674 N", 0.0),
        ("0 m", "4.0 m", "366.6666666666666 N", 0.0),
        ("0.7 m", "4.0 m", "296.66666666666669 N", 0.7),
        ("0.7 m", "4.0 m", "296.6666666666667 N", 0.7),
        ("0 m", "3.0 m", "66.66666666666666 N", 3.0),
        ("0 m", "3.0 m", "66.6666666666667 N", 3.0),
    ] {
        let (low, high) = (format!("\"{from}\""), format!("\"to\": \"{to}\""));
        let ends = [("\"0 m\"", low.as_str()), ("\"to\": \"4.0 m\"", &high)];
        let found = found("child", &[ends[0], ends[1], ("366 N", limit)]);
        assert_eq!(found.len(), 1, "{from} to {to}, {limit}: {found:?}");
        assert!((found[0].value - value).abs() < 1e-9, "{limit}: {found:?}");
        assert!(found[0].solution.is_ok(), "{limit}: {found:?}");
    }
}

/// A = 366 N needs the child at 0.0067 m, 50 N at 3.167 m, 400 N beside the plank, and never
/// happens with the child on it; no coefficient makes a prop slip that nothing pushes along.
#[test]
fn val_a_wider_range_is_advised_only_where_it_would_help() {
    let narrow = ("\"0 m\"", "\"1 m\"");
    for (changes, advice) in [
        ([narrow, ("366 N", "366 N")], true),
        (
            [
                ("\"to\": \"4.0 m\"", "\"to\": \"3.0 m\""),
                ("366 N", "50 N"),
            ],
            true,
        ),
        ([narrow, ("366 N", "400 N")], false),
    ] {
        let (code, told) = refusal("child", &changes);
        assert_eq!(code, "none-in-range");
        assert_eq!(told.contains("the range"), advice, "{told}");
    }
    let (code, told) = refusal("props", &[]);
    assert_eq!(code, "none-in-range");
    let wanted = "no value of μ between 0.01 and 2 makes it happen, and none was found outside that \
                  range; change what is given";
    assert_eq!(told, wanted);
    let (_, told) = refusal("rough_wall", &[("\"0.01\"", "\"0.4\"")]);
    assert!(
        told.ends_with("makes it happen; widen the range, or change what is given"),
        "{told}"
    );
}

/// Where no value of the range can be drawn, its beginning is the place of the fault.
#[test]
fn a_fault_of_the_whole_range_stands_at_the_range() {
    let changes = [
        ("\"0 m\"", "\"5 m\""),
        ("\"to\": \"4.0 m\"", "\"to\": \"6 m\""),
    ];
    let text = changed("child", &changes);
    let faults = parse_system(&text).unwrap_err();
    assert_eq!(faults.len(), 1, "{faults:?}");
    let fault = &faults[0];
    assert_eq!(fault.path, "system.sought.from");
    assert_eq!(fault.kind.code(), "no-value");
    let line = text.lines().nth(fault.line - 1).unwrap();
    assert!(line[fault.column - 1..].starts_with("\"5 m\""), "{line}");
    let wanted =
        "at its beginning, ℓ = 5.00 m, child is placed 5 m along a part that is only 4 m long";
    assert!(fault.kind.to_string().contains(wanted), "{fault}");
}
