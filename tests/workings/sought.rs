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
