//! Laws tried on any candidate of any lesson, worth asking or not, and on problems made from it.

use super::{PULL, near, pull, scaled, value, with};
use leverwright::draw::candidates;
use leverwright::judge::{Board, Names, Standing, judge};
use leverwright::key::{Axis, Part, Sampling, StepId, derive};
use leverwright::lesson::{Lesson, built_in};
use leverwright::mistakes::right_line;
use leverwright::plane::{Vector, moment};
use leverwright::problem::{Direction, ForceId, LoadKind, Problem};
use leverwright::statics;
use leverwright::units::Dimension;
use proptest::prelude::*;
use proptest::test_runner::RngSeed;
use std::sync::LazyLock;

static LESSONS: LazyLock<Vec<Lesson>> = LazyLock::new(built_in);

/// The same draws in every run.
fn fixed(cases: u32) -> ProptestConfig {
    ProptestConfig {
        cases,
        failure_persistence: None,
        rng_seed: RngSeed::Fixed(20),
        ..ProptestConfig::default()
    }
}

/// Any candidate of any lesson whose rope can hold it.
fn any_problem() -> impl Strategy<Value = Problem> {
    (0..LESSONS.len(), any::<u64>()).prop_filter_map("it cannot be held", |(lesson, seed)| {
        let lesson = &LESSONS[lesson];
        let place = candidates(lesson, seed).next()?;
        let problem = lesson.problem_at(&place, "en").ok()?;
        statics::solve(&problem, &problem.values()).ok()?;
        Some(problem)
    })
}

/// The hinge's force by the key alone; the key has no horizontal part where all forces are upright.
fn hinge(problem: &Problem) -> Vector {
    let key = derive(problem).unwrap();
    let part = |axis| {
        let id = StepId::Reaction(ForceId::Support(0), Part::Along(axis));
        key.step(id).map_or(0.0, |_| value(problem, &key, id))
    };
    Vector {
        x: part(Axis::Horizontal),
        y: part(Axis::Vertical),
    }
}

/// Every force on the body with the point where it acts: loads from the givens, rope and hinge
/// from the key.
fn acting(problem: &Problem) -> Vec<(Vector, Vector)> {
    let values = problem.values();
    let solution = statics::solve(problem, &values).unwrap();
    let rope = problem.ropes()[0].direction.unit(problem.body(), &values);
    problem
        .forces()
        .iter()
        .map(|force| {
            let vector = match force.id {
                ForceId::Rope(_) => rope * pull(problem),
                ForceId::Support(_) => hinge(problem),
                id => solution.force(id),
            };
            (problem.point(force.at, &values), vector)
        })
        .collect()
}

/// The whole problem seen in a mirror that stands upright.
fn mirrored(problem: &Problem) -> Problem {
    let turn = |direction: Direction| match direction {
        Direction::Level(side) => Direction::Level(side.other()),
        Direction::Oblique {
            angle,
            from,
            upright,
            side,
        } => Direction::Oblique {
            angle,
            from,
            upright,
            side: side.other(),
        },
        upright => upright,
    };
    with(problem, |parts| {
        parts.body.towards = parts.body.towards.other();
        for rope in &mut parts.ropes {
            rope.direction = turn(rope.direction);
        }
        for load in &mut parts.loads {
            if let LoadKind::Force { direction, .. } = &mut load.kind {
                *direction = turn(*direction);
            }
        }
    })
}

fn same(one: Vector, other: Vector, scale: f64) {
    let apart = (one.x - other.x).hypot(one.y - other.y);
    assert!(apart <= 1e-9 * scale, "{one:?} and {other:?}");
}

proptest! {
    #![proptest_config(fixed(200))]

    /// Whatever point is chosen as the pivot, the key's forces balance about it.
    #[test]
    fn verif_the_keys_forces_balance_about_any_point(
        problem in any_problem(), x in -20.0..20.0, y in -20.0..20.0,
    ) {
        let pivot = Vector { x, y };
        let forces = acting(&problem);
        let scale = forces.iter().map(|(_, force)| force.size()).fold(0.0, f64::max);
        let turning: f64 = forces.iter().map(|(at, force)| moment(pivot, *at, *force)).sum();
        let sideways: f64 = forces.iter().map(|(_, force)| force.x).sum();
        let upwards: f64 = forces.iter().map(|(_, force)| force.y).sum();
        prop_assert!(turning.abs() <= 1e-9 * scale * 30.0, "{turning}");
        prop_assert!(sideways.abs() <= 1e-9 * scale, "{sideways}");
        prop_assert!(upwards.abs() <= 1e-9 * scale, "{upwards}");
    }

    /// A larger model of the same scene is held by the same forces.
    #[test]
    fn verif_longer_bodies_need_no_other_forces(problem in any_problem(), factor in 0.1..10.0) {
        let other = scaled(&problem, Dimension::LENGTH, factor);
        near(pull(&other), pull(&problem), "tension");
        same(hinge(&other), hinge(&problem), pull(&problem));
    }

    /// Heavier in proportion, pulled in proportion.
    #[test]
    fn verif_forces_grow_with_the_loads(problem in any_problem(), factor in 0.1..10.0) {
        let other = scaled(&scaled(&problem, Dimension::MASS, factor), Dimension::FORCE, factor);
        near(pull(&other), factor * pull(&problem), "tension");
        same(hinge(&other), hinge(&problem) * factor, factor * pull(&problem));
    }

    /// In a mirror the tension stays and the hinge's level part turns round.
    #[test]
    fn verif_a_mirror_turns_the_hinge_round(problem in any_problem()) {
        let other = mirrored(&problem);
        let back = mirrored(&other);
        prop_assert_eq!(back.parts(), problem.parts());
        near(pull(&other), pull(&problem), "tension");
        let (here, there) = (hinge(&problem), hinge(&other));
        same(Vector { x: -there.x, y: there.y }, here, pull(&problem));
    }
}

proptest! {
    #![proptest_config(fixed(60))]

    /// The right line of every step holds, before anything else was typed.
    #[test]
    fn verif_every_right_line_holds(problem in any_problem()) {
        let (key, sampling) = (derive(&problem).unwrap(), Sampling::of(&problem));
        let (names, standing) = (Names::of(&problem, &key, &[]), Standing::new());
        let board = Board::of((&problem, &key, &sampling), (&names, &standing));
        let mut judged = 0;
        for step in key.asked() {
            let Some(line) = right_line(&problem, &key, step.id, &sampling) else {
                continue;
            };
            let judgement = judge(&board, step.id, &line.expression, 1);
            prop_assert!(
                judgement.truth.holds(),
                "{:?}: {} is {:?}\n{}",
                step.id, line.expression, judgement.truth, problem.statement()
            );
            judged += 1;
            let Some((number, at)) = line.number else { continue };
            let judgement = judge(&board, at, &number, 1);
            prop_assert!(judgement.truth.holds(), "{at:?}: {number} is {:?}", judgement.truth);
        }
        prop_assert!(judged >= 5 && key.step(PULL).is_some());
    }
}
