//! The general problems that lessons/README.md shows are read, and solve to what a hand finds.

use leverwright::lesson::{parse_system, write_system};
use leverwright::statics::{SystemSolution, roots, solve_system};
use leverwright::system::System;

const PAGE: &str = include_str!("../../lessons/README.md");

/// The whole file under a heading of the page.
fn shown(heading: &str) -> System {
    let (_, from) = PAGE.split_once(&format!("### {heading}\n")).expect(heading);
    let (_, from) = from.split_once("```jsonc\n").expect("a block");
    let (json, _) = from.split_once("```").expect("its end");
    let system = parse_system(json).map_err(|faults| super::told(&faults).join("\n"));
    let system = system.unwrap_or_else(|faults| panic!("{heading}:\n{faults}"));
    assert_eq!(parse_system(&write_system(&system)), Ok(system.clone()));
    let statement = &system.parts().statement;
    assert!(!statement.contains(['{', '}']), "{statement}");
    system
}

fn solved(system: &System) -> SystemSolution {
    solve_system(system, &system.values(), system.gravity()).expect("solved")
}

/// The size of a force by its name.
fn size(system: &System, solution: &SystemSolution, symbol: &str) -> f64 {
    let acts = system.acts();
    let act = acts.iter().find(|act| act.symbol.as_str() == symbol);
    solution.reaction(act.expect(symbol).id).expect(symbol).size
}

fn near(found: f64, by_hand: f64) {
    assert!(
        (found - by_hand).abs() < 1e-9 * by_hand.abs(),
        "{found} for {by_hand}"
    );
}

/// Own arithmetic: moments of the whole about the left foot, of the right half about the top.
#[test]
fn verif_the_step_ladder_of_the_page() {
    let system = shown("A step-ladder");
    let solution = solved(&system);
    let (sine, cosine) = 15_f64.to_radians().sin_cos();
    let half = 2.0 * sine;
    let right = 9.8 * (6.0 * 0.5 * half + 75.0 * 1.5 * sine + 4.0 * 1.5 * half) / (2.0 * half);
    near(size(&system, &solution, "N_r"), right);
    let cord = (right * half - 4.0 * 9.8 * 0.5 * half) / (1.5 * cosine);
    near(size(&system, &solution, "T"), cord);
    near(size(&system, &solution, "J"), cord.hypot(right - 4.0 * 9.8));
}

/// Own arithmetic: the rule of sines of three forces in balance.
#[test]
fn verif_the_sign_on_two_ropes_of_the_page() {
    let system = shown("A sign on two ropes");
    let solution = solved(&system);
    let (left, right) = (40_f64.to_radians(), 25_f64.to_radians());
    let over = 14.0 * 9.8 / (left + right).sin();
    near(size(&system, &solution, "T_1"), over * right.cos());
    near(size(&system, &solution, "T_2"), over * left.cos());
}

/// Own arithmetic: an even load of 0.3 kN/m and a triangle up to 0.6 kN/m more.
#[test]
fn verif_the_beam_with_a_spread_load_of_the_page() {
    let system = shown("A beam with a spread load");
    let solution = solved(&system);
    let (even, rest, own) = (300.0 * 4.0, 0.5 * 600.0 * 4.0, 90.0 * 9.81);
    let roller = (even * 4.0 + rest * (2.0 + 4.0 * 2.0 / 3.0) + own * 3.0) / 4.0;
    near(size(&system, &solution, "B"), roller);
    near(
        size(&system, &solution, "A"),
        (even + rest + own - roller).abs(),
    );
}

/// Own arithmetic: the centre of mass by areas; it hangs straight below the nail.
#[test]
fn verif_the_plate_with_a_hole_of_the_page() {
    let system = shown("A plate with a hole");
    let found = roots(&system, system.gravity()).expect("found");
    let [root] = &found[..] else {
        panic!("{} values", found.len());
    };
    let (sheet, hole) = (0.8 * 0.5, std::f64::consts::PI * 0.15 * 0.15);
    let along = (sheet * 0.4 - hole * 0.6) / (sheet - hole);
    let by_hand = (along / 0.25).atan();
    assert!((root.value - by_hand).abs() < 1e-9, "{}", root.value);
}

/// Own arithmetic: the push of the wall is the coefficient times both weights.
#[test]
fn verif_the_ladder_about_to_slip_of_the_page() {
    let system = shown("A ladder about to slip");
    let found = roots(&system, system.gravity()).expect("found");
    let [root] = &found[..] else {
        panic!("{} values", found.len());
    };
    let tangent = 62_f64.to_radians().tan();
    let by_hand = (0.35 * 90.0 * 4.0 * tangent - 20.0 * 2.0) / 70.0;
    assert!(
        (root.value - by_hand).abs() < 1e-7,
        "{} for {by_hand}",
        root.value
    );
    let solution = root.solution.as_ref().expect("solved");
    let wall = size(&system, solution, "F");
    assert!((wall - 0.35 * 90.0 * 9.8).abs() < 1e-4, "{wall}");
}
