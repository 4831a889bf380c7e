//! Problems without an answer, each named for what is wrong with it.

use super::described;
use leverwright::plane::Vector;
use leverwright::statics::{
    Action, Condition, Equilibrium, Motion, Sense, UnknownColumn, Unsolvable, solve, solve_with,
};
use serde_json::{Value, json};

/// A level light beam of 4 m under one load, with these supports and ropes.
fn beam(supports: Value, ropes: Value, load: Value) -> Value {
    json!({
        "gravity": 9.81,
        "body": {"length": 4.0, "tilt": "level", "towards": "right"},
        "supports": supports, "ropes": ropes, "loads": [load],
    })
}

fn down() -> Value {
    json!({"name": "W", "at": "middle", "force": 100.0, "direction": "down"})
}

fn hinge(name: &str, at: &str) -> Value {
    json!({"name": name, "kind": "hinge", "at": at})
}

fn roller(name: &str, at: &str, direction: &str) -> Value {
    json!({"name": name, "kind": "roller", "at": at, "direction": direction})
}

fn rope(name: &str, at: &str, direction: Value) -> Value {
    json!({"name": name, "at": at, "direction": direction})
}

fn trouble(form: &Value) -> Unsolvable {
    let (problem, _) = described::problem(form);
    solve(&problem, &problem.values()).expect_err("no answer")
}

/// A turn of one body about a point in a sense.
fn is_turn(motion: &Motion, of: usize, point: Vector, sense: bool) -> bool {
    matches!(*motion, Motion::Turn { body, about, anticlockwise }
        if body == of && (about - point).size() < 1e-9 && anticlockwise == sense)
}

#[test]
fn a_beam_on_a_hinge_alone_turns_about_it() {
    let found = trouble(&beam(json!([hinge("H", "foot")]), json!([]), down()));
    let Unsolvable::Mechanism { motions } = &found else {
        panic!("{found}");
    };
    assert_eq!(motions.len(), 1);
    assert!(is_turn(&motions[0], 0, Vector::default(), false));
    assert_eq!(
        found.to_string(),
        "the supports and ropes cannot hold the loads: nothing stops the body from turning \
         clockwise about the point (0 m, 0 m); add a support or a rope, or turn one so that it \
         does"
    );
}

#[test]
fn a_rope_along_the_beam_does_not_stop_it() {
    let ropes = json!([rope("T", "tip", json!("left"))]);
    let found = trouble(&beam(json!([hinge("H", "foot")]), ropes, down()));
    assert_eq!(found.code(), "mechanism");
}

#[test]
fn a_beam_on_two_upright_ropes_slides_under_a_side_load() {
    let ropes = json!([
        rope("S", "foot", json!("up")),
        rope("T", "tip", json!("up"))
    ]);
    let load = json!({"name": "W", "at": "middle", "force": 100.0, "direction":
        {"angle_deg": 30, "from": "vertical", "upright": "down", "side": "left"}});
    let found = trouble(&beam(json!([]), ropes, load));
    let Unsolvable::Mechanism { motions } = &found else {
        panic!("{found}");
    };
    let [Motion::Slide { body: 0, direction }] = motions[..] else {
        panic!("{motions:?}");
    };
    assert!((direction - Vector::new(-1.0, 0.0)).size() < 1e-9);
    assert!(found.to_string().contains("from sliding to the left"));
}

/// A block on rollers: a way is told as to a side, up or down, or at an angle below 360°.
#[test]
fn a_slide_is_told_the_way_it_goes() {
    for (x, y, way) in [
        (1.0, 0.0, "sliding to the right"),
        (0.0, 1.0, "sliding upwards"),
        (0.0, -1.0, "sliding downwards"),
        (
            -0.6,
            -0.8,
            "sliding at 233° from the level line to the right",
        ),
        (
            0.6,
            -0.8,
            "sliding at 307° from the level line to the right",
        ),
        (
            0.8,
            0.6,
            "sliding at 36.9° from the level line to the right",
        ),
    ] {
        let direction = Vector::new(x, y);
        let slide = Motion::Slide { body: 0, direction };
        assert!(slide.to_string().contains(way), "{slide}");
    }
}

#[test]
fn a_beam_in_balance_that_could_slide_is_solved_and_says_so() {
    let ropes = json!([
        rope("S", "foot", json!("up")),
        rope("T", "tip", json!("up"))
    ]);
    let (problem, _) = described::problem(&beam(json!([]), ropes, down()));
    let solution = solve(&problem, &problem.values()).expect("in balance");
    let [Motion::Slide { direction, .. }] = solution.free_motions() else {
        panic!("{:?}", solution.free_motions());
    };
    assert!(direction.y.abs() < 1e-12);
    let determinate = beam(
        json!([hinge("H", "foot"), roller("N", "tip", "up")]),
        json!([]),
        down(),
    );
    let (problem, _) = described::problem(&determinate);
    let solution = solve(&problem, &problem.values()).expect("determinate");
    assert!(solution.free_motions().is_empty());
}

#[test]
fn too_many_unknowns_are_named_and_only_those_that_are_free() {
    let rows = [
        // Two hinges on one level: what they share out is the push along the beam.
        (
            json!([hinge("A", "foot"), hinge("B", "tip")]),
            json!([]),
            4,
            3,
            vec!["Ax", "Bx"],
        ),
        (
            json!([
                roller("A", "foot", "up"),
                roller("B", "middle", "up"),
                roller("C", "tip", "up")
            ]),
            json!([]),
            3,
            2,
            vec!["A", "B", "C"],
        ),
        (
            json!([{"name": "A", "kind": "built-in", "at": "foot"}]),
            json!([rope("T", "tip", json!("up"))]),
            4,
            3,
            vec!["T", "Ay", "MA"],
        ),
    ];
    for (supports, ropes, count, independent, expected) in rows {
        let found = trouble(&beam(supports, ropes, down()));
        let Unsolvable::Indeterminate {
            unknowns,
            equations,
            names,
        } = &found
        else {
            panic!("{found}");
        };
        assert_eq!((*unknowns, *equations), (count, independent));
        assert_eq!(*names, expected);
        assert!(found.to_string().contains(&expected.join(", ")), "{found}");
    }
}

#[test]
fn a_rope_that_would_push_is_told_with_its_size() {
    let ropes = json!([rope("T", "tip", json!("down"))]);
    let found = trouble(&beam(json!([hinge("H", "foot")]), ropes, down()));
    let Unsolvable::RopeWouldPush { rope, size_n } = &found else {
        panic!("{found}");
    };
    assert_eq!(rope, "T");
    assert!((size_n - 50.0).abs() < 1e-9);
    assert!(found.to_string().contains("push with 50.0 N"), "{found}");
}

#[test]
fn a_contact_that_would_pull_is_told_with_its_size() {
    let supports = json!([roller("A", "foot", "up"), roller("B", "middle", "up")]);
    let load = json!({"name": "W", "at": "tip", "force": 80.0, "direction": "down"});
    let found = trouble(&beam(supports, json!([]), load));
    let Unsolvable::ContactWouldPull { support, size_n } = &found else {
        panic!("{found}");
    };
    assert_eq!(support, "A");
    assert!((size_n - 80.0).abs() < 1e-9);
}

#[test]
fn a_rope_that_does_not_work_may_hang_idle() {
    // The load stands over the roller, so nothing is left for the rope but rounding.
    let form = json!({
        "gravity": 9.81,
        "body": {"length": 3.3, "tilt": {"angle_deg": 37, "from": "horizontal"}, "towards": "left"},
        "supports": [hinge("H", "foot")],
        "ropes": [rope("T", "tip", json!("right"))],
        "loads": [{"name": "W", "at": "foot", "mass": 31.7}],
    });
    let (problem, names) = described::problem(&form);
    let solution = solve(&problem, &problem.values()).expect("an idle rope");
    assert!(described::quantities(&solution, &names)["T"].abs() < 1e-9);
}

#[test]
fn lines_that_nearly_meet_are_told_with_the_threshold() {
    for (angle, code) in [
        (1e-3, None),
        (1e-7, Some("nearly-singular")),
        (1e-13, Some("mechanism")),
    ] {
        let ropes = json!([rope("T", "tip", json!({"from_body_rad": angle}))]);
        let (problem, _) = described::problem(&beam(json!([hinge("H", "foot")]), ropes, down()));
        let solved = solve(&problem, &problem.values());
        assert_eq!(solved.as_ref().err().map(Unsolvable::code), code, "{angle}");
        if let Err(Unsolvable::NearlySingular {
            pivot,
            threshold,
            length_m,
            force_n,
        }) = solved
        {
            assert!(pivot < threshold && pivot > 0.0);
            assert!((1.0..=8.0).contains(&length_m));
            assert_eq!(force_n, 100.0);
        }
    }
}

#[test]
fn numbers_that_are_not_finite_are_refused() {
    let ropes = json!([rope("T", "tip", json!("up"))]);
    let (problem, _) = described::problem(&beam(json!([hinge("H", "foot")]), ropes, down()));
    let values = problem.values();
    for index in 0..values.len() {
        for wrong in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY] {
            let mut values = values.clone();
            values[index] = wrong;
            assert_eq!(
                solve(&problem, &values).expect_err("not finite").code(),
                "not-finite"
            );
        }
    }
    let found = solve_with(&problem, &values, f64::NAN).expect_err("no gravity");
    assert_eq!(found.code(), "not-finite");
    let found = solve(&problem, &values[1..]).expect_err("too few values");
    let expected = values.len();
    assert_eq!(
        found,
        Unsolvable::WrongValues {
            expected,
            found: expected - 1
        }
    );
}

#[test]
fn a_direction_without_length_is_refused() {
    let mut bare = Equilibrium::new();
    bare.unknown(UnknownColumn::along(
        "Q",
        0,
        Vector::new(1.0, 2.0),
        Vector::default(),
    ));
    let found = bare.solve().expect_err("no direction");
    assert_eq!(
        found,
        Unsolvable::NotFinite {
            what: "the line of Q".to_owned()
        }
    );
}

#[test]
fn conditions_that_contradict_each_other_are_told() {
    let mut bare = Equilibrium::new();
    let up = Vector::new(0.0, 1.0);
    let prop = bare.unknown(UnknownColumn::along("N", 0, Vector::default(), up));
    bare.load(Action::force(0, Vector::default(), up * -10.0));
    bare.condition(Condition {
        terms: vec![(prop, 1.0)],
        total: 10.0,
    });
    assert!(bare.solve().is_ok());
    bare.condition(Condition {
        terms: vec![(prop, 2.0), (99, 1.0)],
        total: 12.0,
    });
    assert_eq!(bare.solve().expect_err("10 is not 6").code(), "mechanism");
}

#[test]
fn two_bodies_in_one_line_give_way_at_their_joint() {
    let (right, up) = (Vector::new(1.0, 0.0), Vector::new(0.0, 1.0));
    let (joint, end) = (Vector::new(1.0, 0.0), Vector::new(2.0, 0.0));
    let mut pair = Equilibrium::new();
    pair.load(Action::force(0, joint, up * -5.0));
    for (name, direction) in [("x", right), ("y", up)] {
        let foot = UnknownColumn::along(format!("A{name}"), 0, Vector::default(), direction);
        pair.unknown(foot);
        pair.unknown(UnknownColumn::along(format!("B{name}"), 1, end, direction));
        let mut pin = UnknownColumn::along(format!("C{name}"), 0, joint, direction);
        pin.acts.push(Action::force(1, joint, direction * -1.0));
        pair.unknown(pin);
    }
    let found = pair.solve().expect_err("it gives way");
    let Unsolvable::Mechanism { motions } = &found else {
        panic!("{found}");
    };
    assert_eq!(motions.len(), 2);
    assert!(
        is_turn(&motions[0], 0, Vector::default(), false),
        "{motions:?}"
    );
    assert!(is_turn(&motions[1], 1, end, true), "{motions:?}");
    assert!(
        found
            .to_string()
            .contains("body 2 from turning anticlockwise")
    );
}

#[test]
fn the_sense_of_an_unknown_is_kept_at_the_bare_layer() {
    for (sense, code) in [
        (Sense::Either, None),
        (Sense::Pull, Some("rope-would-push")),
        (Sense::Push, Some("contact-would-pull")),
    ] {
        let mut bare = Equilibrium::new();
        let up = Vector::new(0.0, 1.0);
        bare.load(Action::force(0, Vector::default(), up * 10.0));
        // The direction is 2 long: the value counts twice 5 N.
        let column = UnknownColumn::along("N", 0, Vector::default(), up * 2.0);
        bare.unknown(column.with_sense(sense));
        match bare.solve() {
            Ok(balance) => assert!((balance.value("N").expect("N") + 5.0).abs() < 1e-12),
            Err(Unsolvable::RopeWouldPush { size_n, .. })
            | Err(Unsolvable::ContactWouldPull { size_n, .. }) => {
                assert!((size_n - 10.0).abs() < 1e-12);
            }
            Err(other) => panic!("{other}"),
        }
        assert_eq!(bare.solve().err().map(|trouble| trouble.code()), code);
    }
}
