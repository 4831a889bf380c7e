//! Laws that every problem obeys, tried on drawn ones.

use super::described;
use leverwright::plane::Vector;
use leverwright::problem::{ForceId, Problem};
use leverwright::statics::{
    Action, Acts, Equilibrium, Motion, Sense, Solution, UnknownColumn, Unsolvable, solve,
};
use leverwright::units::Dimension;
use proptest::prelude::*;
use proptest::test_runner::RngSeed;
use serde_json::{Value, json};

/// The same draws in every run.
fn fixed() -> ProptestConfig {
    ProptestConfig {
        cases: 200,
        failure_persistence: None,
        rng_seed: RngSeed::Fixed(7),
        ..ProptestConfig::default()
    }
}

const SIDES: [&str; 2] = ["left", "right"];

fn slanted() -> impl Strategy<Value = Value> {
    let reference = prop_oneof![Just("horizontal"), Just("vertical")];
    let upright = prop_oneof![Just("up"), Just("down")];
    (5.0..85.0, reference, upright, 0..2usize).prop_map(|(angle, from, upright, side)| {
        json!({"angle_deg": angle, "from": from, "upright": upright, "side": SIDES[side]})
    })
}

fn direction() -> impl Strategy<Value = Value> {
    prop_oneof![
        2 => slanted(),
        1 => prop_oneof![Just("up"), Just("down"), Just("left"), Just("right")]
            .prop_map(|name| json!(name)),
        1 => (10.0..170.0).prop_map(|angle| json!({"from_body_deg": angle})),
    ]
}

/// Any body on a hinge and held by one line, as a description.
fn described() -> impl Strategy<Value = Value> {
    let tilt = prop_oneof![
        1 => Just(json!("level")),
        2 => (5.0..85.0).prop_map(|angle| json!({"angle_deg": angle, "from": "horizontal"})),
        1 => (5.0..85.0).prop_map(|angle| json!({"angle_deg": angle, "from": "vertical"})),
    ];
    let body = (0.3..30.0, tilt, 0..2usize, 0.5..200.0);
    let rope = (0.2..1.0, direction());
    let load = (0.0..1.0, direction(), 1.0..900.0);
    (body, rope, load, (0.05..0.95, 0.5..80.0)).prop_map(|(body, rope, load, hung)| {
        let (length, tilt, side, mass) = body;
        json!({
            "gravity": 9.81,
            "body": {"length": length, "tilt": tilt, "towards": SIDES[side],
                "mass": mass, "centre": "middle"},
            "supports": [{"name": "H", "kind": "hinge", "at": "foot"}],
            "ropes": [{"name": "T", "at": {"distance": rope.0 * length}, "direction": rope.1}],
            "loads": [
                {"name": "F", "at": {"distance": (0.01 + 0.98 * load.0) * length},
                    "force": load.2, "direction": load.1},
                {"name": "W", "at": {"distance": hung.0 * length}, "mass": hung.1},
            ],
        })
    })
}

const ROPE: ForceId = ForceId::Rope(0);
const HINGE: ForceId = ForceId::Support(0);

/// The problem solved, if its rope pulls and stands well off the hinge.
fn solved(form: &Value) -> Option<(Problem, Solution)> {
    let (problem, _) = described::problem(form);
    let solution = solve(&problem, &problem.values()).ok()?;
    Some((problem, solution))
}

/// The largest force of a solution.
fn largest(solution: &Solution) -> f64 {
    let sizes = solution.all().map(|(_, found)| found.force.size());
    sizes.fold(0.0, f64::max)
}

/// The description seen in a mirror.
fn mirrored(form: &Value) -> Value {
    let swapped = form.to_string();
    let swapped = swapped.replace("\"left\"", "\"middle side\"");
    let swapped = swapped.replace("\"right\"", "\"left\"");
    let swapped = swapped.replace("\"middle side\"", "\"right\"");
    serde_json::from_str(&swapped).expect("still a description")
}

/// The equations with every point and force changed.
fn changed(
    from: &Equilibrium,
    point: impl Fn(Vector) -> Vector,
    force: impl Fn(Vector) -> Vector,
) -> Equilibrium {
    let moved = |action: &Action| match action.acts {
        Acts::Force { at, force: acting } => Action::force(action.body, point(at), force(acting)),
        Acts::Couple(size) => Action::couple(action.body, size),
    };
    let mut to = Equilibrium::new();
    from.loads().iter().for_each(|load| to.load(moved(load)));
    for unknown in from.unknowns() {
        let mut column = unknown.clone();
        column.acts = unknown.acts.iter().map(moved).collect();
        to.unknown(column);
    }
    to
}

proptest! {
    #![proptest_config(fixed())]

    #[test]
    fn verif_forces_and_moments_about_any_point_vanish(
        form in described(), across in -3.0..3.0, up in -3.0..3.0,
    ) {
        let Some((problem, solution)) = solved(&form) else { return Ok(()) };
        let length = problem.values()[problem.body().length.0];
        let pivot = Vector::new(across, up) * length;
        let left = solution.residual(pivot);
        prop_assert!(left.relative <= 1e-9, "{left:?}");
        // The sums anew, without the solver's own bookkeeping.
        let (mut force, mut moment) = (Vector::default(), 0.0);
        for (_, found) in solution.all() {
            force = force + found.force;
            moment += (found.at - pivot).cross(found.force) + found.couple;
        }
        let scale = largest(&solution);
        prop_assert!(force.size() <= 1e-9 * scale);
        prop_assert!(moment.abs() <= 1e-9 * scale * length);
    }

    #[test]
    fn verif_a_mirror_turns_only_the_sides(form in described()) {
        let Some((_, solution)) = solved(&form) else { return Ok(()) };
        let (_, other) = solved(&mirrored(&form)).expect("as solvable as its mirror image");
        let scale = largest(&solution);
        prop_assert!((solution.size(ROPE) - other.size(ROPE)).abs() <= 1e-9 * scale);
        prop_assert!((solution.force(HINGE).x + other.force(HINGE).x).abs() <= 1e-9 * scale);
        prop_assert!((solution.force(HINGE).y - other.force(HINGE).y).abs() <= 1e-9 * scale);
    }

    #[test]
    fn verif_turning_and_moving_the_whole_changes_no_force(
        form in described(), angle in -3.0..3.0, across in -50.0..50.0, up in -50.0..50.0,
    ) {
        let Some((_, solution)) = solved(&form) else { return Ok(()) };
        let axis = Vector::at_angle(angle);
        let turn = |v: Vector| axis * v.x + axis.quarter_turn() * v.y;
        let moved = changed(solution.equilibrium(), |at| turn(at) + Vector::new(across, up), turn);
        let other = moved.solve().expect("as solvable as before");
        let scale = largest(&solution);
        for (before, after) in solution.balance().values().iter().zip(other.values()) {
            // Moved by fifty metres, a body of 0.3 m keeps three figures fewer.
            prop_assert!((before - after).abs() <= 1e-8 * scale, "{before} {after}");
        }
    }

    #[test]
    fn verif_a_larger_drawing_has_the_same_forces(form in described(), factor in 0.01..100.0) {
        let Some((problem, solution)) = solved(&form) else { return Ok(()) };
        let larger = scaled(&problem, &[Dimension::LENGTH], factor);
        let other = solve(&problem, &larger).expect("as solvable as before");
        prop_assert!(alike(&solution, &other, 1.0));
        let heavier = scaled(&problem, &[Dimension::MASS, Dimension::FORCE], factor);
        let other = solve(&problem, &heavier).expect("as solvable as before");
        prop_assert!(alike(&solution, &other, factor));
    }

    #[test]
    fn verif_loads_count_one_by_one(form in described()) {
        let (problem, _) = described::problem(&form);
        let Ok(solution) = solve(&problem, &problem.values()) else { return Ok(()) };
        let whole = solution.equilibrium();
        let mut sum = vec![0.0; whole.unknowns().len()];
        for load in whole.loads() {
            let mut single = Equilibrium::new();
            single.load(*load);
            for unknown in whole.unknowns() {
                single.unknown(unknown.clone().with_sense(Sense::Either));
            }
            let balance = single.solve().expect("the same lines hold one load");
            for (total, value) in sum.iter_mut().zip(balance.values()) {
                *total += value;
            }
        }
        let scale = largest(&solution);
        for (total, value) in sum.iter().zip(solution.balance().values()) {
            prop_assert!((total - value).abs() <= 1e-9 * scale);
        }
    }

    #[test]
    fn verif_without_its_rope_the_body_turns_about_the_hinge(form in described()) {
        let mut form = form;
        form["ropes"] = json!([]);
        let (problem, _) = described::problem(&form);
        let moment: f64 = turning(&problem);
        prop_assume!(moment.abs() > 1e-6);
        let found = solve(&problem, &problem.values()).expect_err("nothing holds it");
        let Unsolvable::Mechanism { motions } = &found else { panic!("{found}") };
        let length = problem.values()[problem.body().length.0];
        let [Motion::Turn { about, anticlockwise, .. }] = motions[..] else {
            panic!("{motions:?}")
        };
        prop_assert!(about.size() <= 1e-9 * length);
        prop_assert_eq!(anticlockwise, moment > 0.0);
    }

    #[test]
    fn verif_a_second_rope_is_one_too_many(form in described(), angle in 10.0..170.0) {
        let mut form = form;
        let ropes = form["ropes"].as_array_mut().expect("ropes");
        ropes.push(json!({"name": "S", "at": "tip", "direction": {"from_body_deg": angle}}));
        let (problem, _) = described::problem(&form);
        match solve(&problem, &problem.values()) {
            Err(Unsolvable::Indeterminate { unknowns: 4, equations: 3, names }) => {
                prop_assert!(names.contains(&"T".to_owned()) || names.len() >= 2);
            }
            other => panic!("{other:?}"),
        }
    }

    #[test]
    fn verif_no_numbers_make_the_bare_layer_panic(
        numbers in prop::collection::vec(any::<f64>(), 12), couple in any::<f64>(), body in any::<usize>(),
    ) {
        let at = |index: usize| Vector::new(numbers[index], numbers[index + 1]);
        let mut bare = Equilibrium::new();
        bare.load(Action::force(body, at(0), at(2)));
        bare.load(Action::couple(0, couple));
        bare.unknown(UnknownColumn::along("A", 0, at(4), at(6)));
        bare.unknown(UnknownColumn::along("B", body, at(8), at(10)).with_sense(Sense::Pull));
        bare.unknown(UnknownColumn::couple("M", 1));
        match bare.solve() {
            Ok(balance) => prop_assert!(balance.values().iter().all(|value| value.is_finite())),
            Err(trouble) => prop_assert!(!trouble.to_string().is_empty()),
        }
    }
}

/// The values of the problem with those of some dimensions multiplied.
fn scaled(problem: &Problem, dimensions: &[Dimension], factor: f64) -> Vec<f64> {
    let givens = problem.givens().iter().zip(problem.values());
    givens
        .map(|(given, value)| {
            if dimensions.contains(&given.dimension) {
                value * factor
            } else {
                value
            }
        })
        .collect()
}

/// True if the second solution has the forces of the first times `factor`.
fn alike(one: &Solution, other: &Solution, factor: f64) -> bool {
    let scale = largest(one);
    one.all()
        .all(|(id, found)| (found.force * factor - other.force(id)).size() <= 1e-9 * scale * factor)
}

/// Moment of the loads and the own weight about the foot.
fn turning(problem: &Problem) -> f64 {
    let values = problem.values();
    let mut sum = 0.0;
    for force in problem.forces() {
        let size = match force.size {
            leverwright::problem::Size::Weight(mass) => values[mass.0] * problem.gravity(),
            leverwright::problem::Size::Given(size) => values[size.0],
            leverwright::problem::Size::Unknown => continue,
        };
        if let leverwright::problem::Acting::Along(direction) = force.acting {
            let at = problem.point(force.at, &values);
            sum += at.cross(direction.unit(problem.body(), &values) * size);
        }
    }
    sum
}

#[test]
fn the_draws_hold_enough_problems_with_an_answer() {
    use proptest::strategy::ValueTree;
    use proptest::test_runner::TestRunner;
    let mut runner = TestRunner::new(fixed());
    let strategy = described();
    let with_answer = (0..200)
        .filter(|_| {
            let tree = strategy.new_tree(&mut runner).expect("a draw");
            solved(&tree.current()).is_some()
        })
        .count();
    assert!(with_answer > 60, "{with_answer}");
}
