//! What is sought, found where the force in question reaches its limit: by hand beside each.

use leverwright::lesson::parse_system;
use leverwright::system::System;
use leverwright::working::{Method, Told, derive, settle, told};

fn filed(name: &str) -> System {
    let path = format!("{}/tests/workings/{name}.json", env!("CARGO_MANIFEST_DIR"));
    parse_system(&std::fs::read_to_string(path).unwrap()).unwrap()
}

/// The value of what is sought, and what is printed.
fn worked(system: &System) -> (f64, String) {
    let settled = settle(system).unwrap_or_else(|why| panic!("{why}"));
    let given = system.parts().sought.as_ref().unwrap().given;
    let working = derive(system, &settled.values, Method::Components, None).unwrap();
    let line = |told: Told| match told {
        Told::Quantity { text, .. } => text,
        other => format!("{other:?}"),
    };
    let lines = told(system, &working, &settled.values);
    let lines: Vec<String> = lines.into_iter().map(line).collect();
    (settled.values[given.0], lines.join("\n"))
}

/// - A strut that is told from the beam down to its foot is pressed. About the pin
///   S·sin 45°·2.0 m = 294 N·2.0 m + 490 N·d, so S = 900 N at d = 684.79/490 m.
/// - Of a rough contact the name is the push. About the tip of the leaning beam
///   (268 N − 147 N)·cos 60° = F·sin 60°, so F = 69.859 N = S; upright μ·S = 294 N − 268 N.
/// - About its foot 147 N·cos 60° = S·sin 60° + μ·S·cos 60° with S = 75 N:
///   μ = (73.5 − 64.952)/37.5.
#[test]
fn val_a_force_reaches_its_limit_in_its_own_size() {
    for (name, value, line) in [
        ("strut_reaches", 1.39753, "S = −Smax = −900 N"),
        ("floor_reaches", 0.37218, "N = Nmax = 268 N"),
        ("wall_reaches", 0.22795, "S = Smax = 75 N"),
    ] {
        let (found, lines) = worked(&filed(name));
        assert!((found - value).abs() < 1e-5, "{name}: {found}");
        assert!(lines.contains(line), "{name}: {lines}");
        assert!(!lines.contains("Trial"), "{name}: {lines}");
    }
}

fn text_of(name: &str) -> String {
    let path = format!("{}/tests/workings/{name}.json", env!("CARGO_MANIFEST_DIR"));
    std::fs::read_to_string(path).unwrap()
}

/// Why the file cannot be worked after these changes.
fn refused(name: &str, changes: &[(&str, &str)]) -> String {
    let mut text = text_of(name);
    for (old, new) in changes {
        assert!(text.contains(old), "{name}: {old}");
        text = text.replace(old, new);
    }
    match parse_system(&text) {
        Ok(system) => settle(&system).unwrap_err().to_string(),
        Err(faults) => faults[0].to_string(),
    }
}

/// The right rest pushes alone: 294 N·(3.5 m − L/2) = 147 N·(d − 3.5 m). With L = 5.5 m the goat
/// tips the plank at d = 5.0 m; with L = 5.0 m it would have to stand at 5.5 m, beside the plank.
#[test]
fn val_a_place_beside_its_part_is_no_value() {
    assert!((worked(&filed("goat")).0 - 5.0).abs() < 1e-9);
    let why = refused("goat", &[("5.5 m", "5.0 m")]);
    let wanted = "the condition is met only at d = 5.50 m, and there the goat would stand 5.50 m \
                  along a part that is only 5.00 m long";
    assert_eq!(why, wanted);
}

/// The climber slips at d = (L/M)·(μ·(m + M)·tan θ − m/2) = (4/70)·(0.35·90·1.88073 − 10), on
/// the ladder of 4.0 m although the range reaches to 9 m and its middle lies beyond the ladder.
/// Where no place of the range lies on the part its beginning is named.
#[test]
fn val_a_range_may_reach_beyond_the_part() {
    let found = worked(&filed("climber")).0;
    assert!((found - 2.81388).abs() < 1e-4, "{found}");
    let why = refused("goat", &[("2.5 m", "6 m"), ("\"6.0 m\"", "\"8 m\"")]);
    let wanted = "no value of this range will do: at its beginning, d = 6.00 m, goat is placed 6 m";
    assert!(why.contains(wanted), "{why}");
}

/// The floor carries 90 kg·9.8 m/s² wherever the climber stands. Of the wall's push on the beam
/// that leans, tan 60°·S = 147 N − μ·S, so it falls from 147 N/(1.73205 + 0.01) to
/// 147 N/(1.73205 + 3), and reaches 99 N for no μ at all.
#[test]
fn val_a_limit_that_is_not_reached_tells_what_the_force_is() {
    let slips = "\"slips\": \"N\",";
    let coefficient = "\"coefficient\": \"0.35\"";
    let changes = [
        (slips, "\"reaches\": \"N\","),
        (coefficient, "\"limit\": \"900 N\""),
        ("\"9 m\"", "\"3.9 m\""),
        ("{μ=}", "{N_max=}"),
    ];
    let why = refused("climber", &changes);
    let wanted = "N is 882 N for every d between 0.1 m and 3.9 m: d has no influence on it; seek \
                  another number, or change the limit";
    assert_eq!(why, wanted);
    let why = refused("wall_reaches", &[("75 N", "99 N")]);
    let wanted = "no value of μ between 0.01 and 3 makes it happen: S stays between 31.1 N and \
                  84.4 N there; change the limit";
    assert_eq!(why, wanted);
    // With μ = 0.228 it is 75 N.
    let why = refused("wall_reaches", &[("\"0.01\"", "\"0.5\"")]);
    let wanted = "S stays between 31.1 N and 65.9 N there; change the limit, or the range";
    assert!(why.ends_with(wanted), "{why}");
}

/// One coefficient at both ends stands in a product with the push, so no balance gives it: the
/// walk refuses with that reason. By hand μ = √(1 + tan² θ) − tan θ = 2 − √3 at 60°.
#[test]
fn val_a_coefficient_that_two_contacts_share_is_found_by_trial() {
    let system = filed("shared_mu");
    let (found, lines) = worked(&system);
    assert!((found - (2.0 - 3.0_f64.sqrt())).abs() < 1e-9, "{found}");
    assert!(lines.starts_with("Trial"), "{lines}");
    let why = leverwright::working::walk(&system).unwrap_err();
    assert_eq!(why.code(), "by-trial");
    assert!(
        why.to_string()
            .starts_with("only the balances and the condition together give μ,"),
        "{why}"
    );
}

/// - The stay pulls through the tip, so moments about it leave Hy = 0 and the hinge gives at
///   Hx = 500 N: T·cos 30° = 500 N and m·g = T·sin 30° = 288.68 N.
/// - Level P + Ax = 0, so Ay = √(250² − 150²) N = 200 N; about the roller
///   196 N·0.5 m + 490 N·(3.5 m − d) = 200 N·3.5 m.
#[test]
fn val_a_hinge_at_its_limit_gives_its_other_part() {
    for (name, value, line) in [
        ("hinge_breaks", 29.4566, "Hx = Hmax = 500 N"),
        ("../boards/hinge_gives", 2.27143, "Ay = √(Amax² − Ax²)"),
    ] {
        let (found, lines) = worked(&filed(name));
        assert!((found - value).abs() < 1e-4, "{name}: {found}");
        assert!(lines.contains(line), "{name}: {lines}");
        assert!(!lines.contains("Trial"), "{name}: {lines}");
        assert!(leverwright::working::walk(&filed(name)).is_ok(), "{name}");
    }
}
