//! Whole walks on a real terminal.

mod real;

use real::Real;

const MAST: &[&str] = &["practice", "mast", "--seed", "3"];

/// What is entered up to the parts across the mast, and what the screen must show after it.
const BEFORE_THE_PARTS: &[(&str, &str)] = &[
    ("weight of the mast at its middle, down", "Named so far: 1"),
    ("W1 at 4.5 m, down", "Named so far: 2"),
    (
        "weight of the bag of gear at the tip, down",
        "Named so far: 3",
    ),
    (
        "tension of the rope at 4.2 m, along the rope",
        "Named so far: 4",
    ),
    ("force of the hinge at the foot, unknown", "step 2 of 17"),
    ("hinge", "step 3 of 17"),
    ("63*9.8", "step 4 of 17"),
    ("71*9.8", "step 5 of 17"),
    ("11*9.8", "step 6 of 17"),
    ("90 - 55", "step 7 of 17"),
    ("10 + 55", "step 8 of 17"),
];

fn walk(real: &mut Real, lines: &[(&str, &str)]) {
    for (line, then) in lines {
        real.enter(line, then);
    }
}

/// The rest of the walk, its numbers by own arithmetic from the printed givens.
fn walk_from_the_parts(real: &mut Real) {
    let lever = 55f64.to_radians().cos();
    let moments = (63.0 * 2.7 + 71.0 * 4.5 + 11.0 * 5.4) * 9.8 * lever;
    let pull = moments / (4.2 * 65f64.to_radians().sin());
    let level = -pull * 10f64.to_radians().cos();
    let upright = 145.0 * 9.8 - pull * 10f64.to_radians().sin();
    let size = level.hypot(upright);
    let direction = (upright / -level).atan().to_degrees();
    walk(
        real,
        &[
            ("Wb sin α", "step 9 of 17"),
            ("W1 sin α", "step 10 of 17"),
            ("W2 sin α", "step 11 of 17"),
            ("T sin γ", "step 12 of 17"),
            (
                "Wbperp*L/2 + W1perp*d1 + W2perp*L = Tperp*dT",
                "step 13 of 17",
            ),
            (&format!("{pull:.1} N"), "step 14 of 17"),
            (&format!("{level:.1} N"), "step 15 of 17"),
            (&format!("{upright:.1} N"), "step 16 of 17"),
            (&format!("{size:.1} N"), "step 17 of 17"),
            (&format!("{direction:.1}°"), "finished"),
        ],
    );
}

#[test]
fn verif_a_whole_walk_on_the_screen() {
    let saves = tempfile::tempdir().unwrap();
    let mut real = Real::start(MAST, saves.path());
    real.sees("step 1 of 17");
    walk(&mut real, BEFORE_THE_PARTS);
    real.enter("Wb cos α", "does not hold");
    real.sees("Beside that angle lies");
    walk_from_the_parts(&mut real);
    real.keys("quit\r");
    assert!(real.ends().success());
    assert!(real.is_restored());
}

#[test]
fn verif_a_killed_program_goes_on_where_it_was() {
    let saves = tempfile::tempdir().unwrap();
    let mut real = Real::start(MAST, saves.path());
    real.sees("step 1 of 17");
    walk(&mut real, BEFORE_THE_PARTS);
    let before = real.shown();
    real.signal("KILL");
    real.ends();
    let mut again = Real::start(&[], saves.path());
    again.sees("Carry on where you stopped");
    again.enter("", "step 8 of 17");
    again.sees("You are where you stopped");
    let after = again.shown();
    for line in ["90 - 55", "10 + 55", "What is Wb⊥"] {
        assert!(before.contains(line) && after.contains(line), "{after}");
    }
    walk_from_the_parts(&mut again);
}

#[test]
fn verif_a_terminated_program_restores_the_terminal() {
    let saves = tempfile::tempdir().unwrap();
    let mut real = Real::start(MAST, saves.path());
    real.sees("step 1 of 17");
    real.signal("TERM");
    real.ends();
    assert!(real.is_restored(), "{}", real.shown());
}

#[test]
fn verif_a_small_terminal_is_told_and_comes_back() {
    let saves = tempfile::tempdir().unwrap();
    let mut real = Real::start(MAST, saves.path());
    real.sees("step 1 of 17");
    real.enter("weight of the mast at its middle, down", "Named so far: 1");
    real.resize(20, 5);
    real.until("the size needed", |shown| {
        shown.contains("60") && shown.contains("16")
    });
    real.resize(100, 30);
    real.sees("Named so far: 1");
}
