//! Beam tables, closed forms of textbooks, and the acceleration of free fall.

use super::described;
use leverwright::plane::Vector;
use leverwright::statics::{
    Action, Balance, Condition, Equilibrium, UnknownColumn, Unsolvable, solve, solve_with,
};
use serde_json::{Value, json};
use std::collections::BTreeMap;

const RIGHT: Vector = Vector::new(1.0, 0.0);
const UP: Vector = Vector::new(0.0, 1.0);

fn on_axis(x: f64) -> Vector {
    Vector::new(x, 0.0)
}

fn along(angle_deg: f64) -> Vector {
    Vector::at_angle(angle_deg.to_radians())
}

/// The forces of a described problem by name.
fn solved(form: &Value) -> BTreeMap<String, f64> {
    let (problem, names) = described::problem(form);
    let solution = solve(&problem, &problem.values()).expect("determinate");
    described::quantities(&solution, &names)
}

/// Reactions of a light beam on supports at 0 and at `span` under a load per length `intensity`
/// from `from` to `to`. The load is cut into slices, so no resultant is put in by hand.
fn under(span: f64, from: f64, to: f64, intensity: impl Fn(f64) -> f64) -> (f64, f64) {
    let slices = 2000;
    let width = (to - from) / f64::from(slices);
    let mut beam = Equilibrium::new();
    for slice in 0..slices {
        let x = from + (f64::from(slice) + 0.5) * width;
        beam.load(Action::force(0, on_axis(x), UP * (-intensity(x) * width)));
    }
    beam.unknown(UnknownColumn::along("R1", 0, on_axis(0.0), UP));
    beam.unknown(UnknownColumn::along("R2", 0, on_axis(span), UP));
    let balance = beam.solve().expect("vertical loads on two supports");
    (balance.values()[0], balance.values()[1])
}

fn near(value: f64, told: f64) -> bool {
    (value - told).abs() <= 1e-6 * told.abs().max(1.0)
}

#[test]
fn val_reactions_under_distributed_loads() {
    // Formulas of beam tables as printed in the AISC manual (read in scans). The row with the
    // overhang is from memory, derived anew.
    let (w, l, a, b, c) = (35.0, 7.0, 1.5, 3.0, 2.5);
    let rising = |x: f64| w * x / l;
    let to_centre = |x: f64| w * 2.0 * x.min(l - x) / l;
    let (triangle, tent) = (w * l / 2.0, w * l / 2.0);
    let rows = [
        ("uniform", under(l, 0.0, l, |_| w), w * l / 2.0, w * l / 2.0),
        (
            "rising to the right end",
            under(l, 0.0, l, rising),
            triangle / 3.0,
            2.0 * triangle / 3.0,
        ),
        (
            "rising to the centre",
            under(l, 0.0, l, to_centre),
            tent / 2.0,
            tent / 2.0,
        ),
        (
            "over a part",
            under(l, a, a + b, |_| w),
            w * b * (2.0 * c + b) / (2.0 * l),
            w * b * (2.0 * a + b) / (2.0 * l),
        ),
        (
            "with an overhang",
            under(l, 0.0, l + a, |_| w),
            w * (l * l - a * a) / (2.0 * l),
            w * (l + a) * (l + a) / (2.0 * l),
        ),
    ];
    assert_eq!(a + b + c, l);
    for (row, (left, right), told_left, told_right) in rows {
        assert!(near(left, told_left), "{row}: {left} for {told_left}");
        assert!(near(right, told_right), "{row}: {right} for {told_right}");
    }
}

/// A level light beam on two rollers, or on a hinge and a roller, under forces downwards.
fn beam(length: f64, left: &str, right_at: f64, loads: &[(f64, f64)]) -> BTreeMap<String, f64> {
    let mut left = json!({"name": "A", "kind": left, "at": "foot"});
    if left["kind"] == "roller" {
        left["direction"] = json!("up");
    }
    let loads: Vec<Value> = loads
        .iter()
        .enumerate()
        .map(|(index, (at, force))| {
            json!({"name": format!("P{index}"), "at": {"distance": at}, "force": force, "direction": "down"})
        })
        .collect();
    solved(&json!({
        "gravity": 9.81,
        "body": {"length": length, "tilt": "level", "towards": "right"},
        "supports": [left, {"name": "B", "kind": "roller", "at": {"distance": right_at}, "direction": "up"}],
        "loads": loads,
    }))
}

#[test]
fn val_reactions_under_point_loads() {
    // Formulas of beam tables as printed in the AISC manual (read in scans); the rows with the
    // overhang and with two loads are from memory, derived anew.
    let (l, a, b, p, q) = (6.4, 1.3, 2.2, 410.0, 90.0);
    let one = beam(l, "roller", l, &[(a, p)]);
    assert!(near(one["A"], p * (l - a) / l));
    assert!(near(one["B"], p * a / l));
    let two = beam(l, "roller", l, &[(a, p), (l - b, q)]);
    assert!(near(two["A"], (p * (l - a) + q * b) / l));
    assert!(near(two["B"], (p * a + q * (l - b)) / l));
    let overhang = beam(l + a, "hinge", l, &[(l + a, p)]);
    assert!(near(overhang["A_y"], -p * a / l));
    assert!(near(overhang["B"], p * (l + a) / l));
    let cantilever = solved(&json!({
        "gravity": 9.81,
        "body": {"length": l, "tilt": "level", "towards": "right"},
        "supports": [{"name": "A", "kind": "built-in", "at": "foot"}],
        "loads": [{"name": "P", "at": "tip", "force": p, "direction": "down"}],
    }));
    assert!(near(cantilever["A_y"], p));
    assert!(near(cantilever["A_m"], p * l));
}

#[test]
fn val_a_couple_on_a_beam_counts_the_same_everywhere() {
    // From memory, derived anew: ±M/l wherever the couple acts. A couple has no place, so it is
    // made of two opposite forces 0.1 m apart.
    let (l, couple) = (5.0, 80.0);
    for at in [0.0, 1.7, 4.9] {
        let mut beam = Equilibrium::new();
        beam.load(Action::force(0, on_axis(at), UP * (-couple / 0.1)));
        beam.load(Action::force(0, on_axis(at + 0.1), UP * (couple / 0.1)));
        beam.unknown(UnknownColumn::along("R1", 0, on_axis(0.0), UP));
        beam.unknown(UnknownColumn::along("R2", 0, on_axis(l), UP));
        let balance = beam.solve().expect("balanced");
        assert!(near(balance.values()[0], couple / l), "{at}");
        assert!(near(balance.values()[1], -couple / l), "{at}");
    }
}

/// Friction over normal force at the foot of a uniform ladder on a smooth wall, and the angle of
/// the floor's reaction above the floor in degrees.
fn smooth_wall(angle_deg: f64) -> (f64, f64) {
    let forces = solved(&json!({
        "gravity": 9.81,
        "body": {"length": 5.2, "mass": 14.0, "centre": "middle",
            "tilt": {"angle_deg": angle_deg, "from": "horizontal"}, "towards": "right"},
        "supports": [{"name": "A", "kind": "hinge", "at": "foot"},
            {"name": "B", "kind": "roller", "at": "tip", "direction": "left"}],
    }));
    let (across, up) = (forces["A_x"], forces["A_y"]);
    (across / up, up.atan2(across).to_degrees())
}

#[test]
fn val_ladder_on_a_smooth_wall() {
    // μ = 1/(2 tan θ): 51.34° for 0.40 and 59.04° for 0.3, printed in open textbooks.
    for (friction, angle_deg) in [(0.40, 51.34), (0.3, 59.04)] {
        let (most, _) = smooth_wall(angle_deg - 0.005);
        let (least, _) = smooth_wall(angle_deg + 0.005);
        assert!(least <= friction && friction <= most, "{angle_deg}");
    }
    // tan φ = 2 tan θ for the floor's reaction: 45° gives 63.43° (Crowell, Light and Matter).
    assert!((smooth_wall(45.0).1 - 63.43).abs() <= 0.005);
    // The quarter rules for ladders, computed: 0.129 at 75.52°, 0.125 at 75.96°.
    assert!((smooth_wall(75.52).0 - 0.129).abs() <= 0.0005);
    assert!((smooth_wall(75.96).0 - 0.125).abs() <= 0.0005);
}

/// A uniform ladder of 1 m at the limit of friction at both ends.
fn rough_ladder(tangent: f64, floor: f64, wall: f64) -> Result<Balance, Unsolvable> {
    let top = Vector::at_angle(libm::atan(tangent));
    let mut ladder = Equilibrium::new();
    ladder.load(Action::force(0, top * 0.5, UP * -100.0));
    let foot_normal = ladder.unknown(UnknownColumn::along("N", 0, Vector::default(), UP));
    let foot_friction = ladder.unknown(UnknownColumn::along("f", 0, Vector::default(), RIGHT));
    let top_normal = ladder.unknown(UnknownColumn::along("F", 0, top, RIGHT * -1.0));
    let top_friction = ladder.unknown(UnknownColumn::along("g", 0, top, UP));
    for (friction, normal, coefficient) in [
        (foot_friction, foot_normal, floor),
        (top_friction, top_normal, wall),
    ] {
        let terms = vec![(friction, 1.0), (normal, -coefficient)];
        ladder.condition(Condition { terms, total: 0.0 });
    }
    ladder.solve()
}

#[test]
fn val_ladder_with_friction_at_both_ends() {
    // From memory, derived anew: tan θ = (1 − μ_floor μ_wall)/(2 μ_floor); 0.5 and 0.5 give
    // 36.87°, 0.2 and 0.2 give tan θ = 2.4.
    assert!((libm::atan(0.75).to_degrees() - 36.87).abs() <= 0.005);
    for (tangent, floor, wall) in [(0.75, 0.5, 0.5), (2.4, 0.2, 0.2), (1.1, 0.4, 0.3)] {
        assert!(rough_ladder(tangent, floor, wall).is_ok(), "{tangent}");
        for other in [tangent * 0.98, tangent * 1.02] {
            let trouble = rough_ladder(other, floor, wall).expect_err("not at the limit");
            assert_eq!(trouble.code(), "mechanism");
        }
    }
}

#[test]
fn val_wire_with_a_load_in_the_middle() {
    // T = W/(2 sin θ), printed in open textbooks.
    for (weight, sag_deg) in [(120.0, 5.0), (0.26, 12.0), (900.0, 40.0)] {
        let mut knot = Equilibrium::new();
        knot.load(Action::force(0, Vector::default(), UP * -weight));
        for (name, angle_deg) in [("right", sag_deg), ("left", 180.0 - sag_deg)] {
            let direction = along(angle_deg);
            knot.unknown(UnknownColumn::along(name, 0, Vector::default(), direction));
        }
        let tension = weight / (2.0 * libm::sin(sag_deg.to_radians()));
        let balance = knot.solve().expect("two wires hold a knot");
        assert!(near(balance.values()[0], tension));
        assert!(near(balance.values()[1], tension));
    }
}

#[test]
fn val_block_that_is_about_to_slip() {
    // tan θ = μ, printed in open textbooks.
    for (slope_deg, holds) in [(30.0, true), (29.9, false), (30.1, false)] {
        let mut block = Equilibrium::new();
        block.load(Action::force(0, Vector::default(), UP * -50.0));
        let normal = along(slope_deg + 90.0);
        let push = block.unknown(UnknownColumn::along("N", 0, Vector::default(), normal));
        let grip = along(slope_deg);
        let grip = block.unknown(UnknownColumn::along("f", 0, Vector::default(), grip));
        let terms = vec![(grip, 1.0), (push, -1.0 / libm::sqrt(3.0))];
        block.condition(Condition { terms, total: 0.0 });
        assert_eq!(block.solve().is_ok(), holds, "{slope_deg}");
    }
}

#[test]
fn val_weights_by_the_acceleration_of_free_fall() {
    // Standard gravity 9.80665 m/s² (3rd CGPM, 1901); 1 lb = 0.45359237 kg and 1 lbf =
    // 4.448 221 615 260 5 N (NIST SP 811, appendix B).
    let hung = |mass: f64, gravity: f64| {
        let (problem, names) = described::problem(&json!({
            "gravity": 9.8,
            "body": {"length": 2.0, "tilt": "level", "towards": "right"},
            "supports": [{"name": "A", "kind": "hinge", "at": "foot"}],
            "ropes": [{"name": "T", "at": "tip", "direction": "up"}],
            "loads": [{"name": "W", "at": "tip", "mass": mass}],
        }));
        let solution = solve_with(&problem, &problem.values(), gravity).expect("determinate");
        described::quantities(&solution, &names)["T"]
    };
    assert!((hung(1.0, 9.80665) - 9.80665).abs() < 1e-12);
    assert!((hung(0.45359237, 9.80665) - 4.448_221_615_260_5).abs() < 1e-12);
    // 9.81 for 9.8 is 0.10 % more (computed).
    assert!((hung(12.0, 9.81) / hung(12.0, 9.8) - 1.0010).abs() <= 0.00005);
}
