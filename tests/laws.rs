//! Laws of the key over problems drawn from the lessons, and the lessons against a second solver.

mod any_draw;
mod forms;

use leverwright::draw::{candidates, parse_code};
use leverwright::key::{Axis, Key, Part, Pins, Sample, Sampling, StepId, derive};
use leverwright::lesson::built_in;
use leverwright::plane::moment;
use leverwright::problem::{ForceId, Given, LoadKind, Parts, Place, Problem, Side};
use leverwright::statics;
use leverwright::units::Dimension;
use serde_json::Value;
use std::collections::BTreeMap;

/// Problems of every lesson that can be held: not only those worth asking.
fn problems() -> Vec<Problem> {
    built_in()
        .iter()
        .flat_map(|lesson| {
            candidates(lesson, 11)
                .take(150)
                .filter_map(|place| lesson.problem_at(&place, "en").ok())
                .filter(|problem| statics::solve(problem, &problem.values()).is_ok())
                .collect::<Vec<_>>()
        })
        .collect()
}

fn value(problem: &Problem, key: &Key, id: StepId) -> f64 {
    key.value(id, Sampling::of(problem).own(), &Pins::new())
        .unwrap()
}

const PULL: StepId = StepId::Pull(ForceId::Rope(0));

fn pull(problem: &Problem) -> f64 {
    value(problem, &derive(problem).unwrap(), PULL)
}

fn near(one: f64, other: f64, what: &str) {
    let scale = one.abs().max(other.abs()).max(1.0);
    assert!(
        (one - other).abs() <= 1e-9 * scale,
        "{what}: {one} and {other} differ by {}",
        one - other
    );
}

#[test]
fn verif_the_key_agrees_with_the_solver() {
    let problems = problems();
    assert!(problems.len() > 300, "only {} problems", problems.len());
    for problem in &problems {
        let solution = statics::solve(problem, &problem.values()).unwrap();
        let key = derive(problem).unwrap();
        near(
            value(problem, &key, PULL),
            solution.size(ForceId::Rope(0)),
            "pull",
        );
        let hinge = solution.force(ForceId::Support(0));
        for (axis, part) in [(Axis::Horizontal, hinge.x), (Axis::Vertical, hinge.y)] {
            let id = StepId::Reaction(ForceId::Support(0), Part::Along(axis));
            if key.step(id).is_some() {
                near(value(problem, &key, id), part, "hinge");
            } else {
                near(part, 0.0, "hinge of upright forces");
            }
        }
    }
}

/// Every pivot gives the same tension: the key's forces have no moment about any point.
#[test]
fn verif_moments_vanish_about_every_point() {
    for problem in problems() {
        let (key, values) = (derive(&problem).unwrap(), problem.values());
        let tension = value(&problem, &key, PULL);
        let solution = statics::solve(&problem, &values).unwrap();
        for about in [
            Place::Foot,
            Place::Middle,
            Place::Tip,
            problem.ropes()[0].at,
        ] {
            let pivot = problem.point(about, &values);
            let mut sum = 0.0;
            let mut scale = 1.0_f64;
            for force in problem.forces() {
                let vector = match force.id {
                    ForceId::Rope(_) => {
                        problem.ropes()[0].direction.unit(problem.body(), &values) * tension
                    }
                    id => solution.force(id),
                };
                let turned = moment(pivot, problem.point(force.at, &values), vector);
                sum += turned;
                scale = scale.max(turned.abs());
            }
            assert!(sum.abs() <= 1e-9 * scale, "{sum} about {about:?}");
        }
    }
}

#[test]
fn verif_every_formula_evaluates_to_its_step() {
    for problem in problems() {
        let key = derive(&problem).unwrap();
        let sampling = Sampling::of(&problem);
        for sample in &sampling.samples {
            let free: Pins = [(PULL, key.value(PULL, sample, &Pins::new()).unwrap())].into();
            for step in &key.steps {
                let Some(formula) = key.formula(step.id) else {
                    continue;
                };
                let told = key.evaluate(&formula, sample, &free).unwrap();
                near(
                    told,
                    key.value(step.id, sample, &free).unwrap(),
                    step.symbol.as_str(),
                );
            }
        }
    }
}

fn with(problem: &Problem, change: impl Fn(&mut Parts)) -> Problem {
    let mut parts = problem.parts().clone();
    change(&mut parts);
    Problem::new(parts).unwrap()
}

fn scaled(problem: &Problem, dimension: Dimension, factor: f64) -> Problem {
    let scale = |given: &mut Given| {
        if given.dimension == dimension {
            given.value *= factor;
        }
    };
    with(problem, |parts| parts.givens.iter_mut().for_each(scale))
}

#[test]
fn verif_lengths_scale_out_and_masses_scale_the_forces() {
    for problem in problems() {
        let tension = pull(&problem);
        near(
            pull(&scaled(&problem, Dimension::LENGTH, 3.0)),
            tension,
            "lengths times three",
        );
        let masses_only = problem
            .loads()
            .iter()
            .all(|load| matches!(load.kind, LoadKind::Mass(_)));
        if masses_only {
            near(
                pull(&scaled(&problem, Dimension::MASS, 2.5)),
                2.5 * tension,
                "masses times two and a half",
            );
        }
    }
}

#[test]
fn verif_a_mirrored_problem_has_the_same_tension() {
    use leverwright::problem::Direction;
    let mirrored = |direction: Direction| match direction {
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
        other => other,
    };
    for problem in problems() {
        let other = with(&problem, |parts| {
            parts.body.towards = if parts.body.towards == Side::Left {
                Side::Right
            } else {
                Side::Left
            };
            parts
                .ropes
                .iter_mut()
                .for_each(|rope| rope.direction = mirrored(rope.direction));
        });
        near(pull(&other), pull(&problem), "mirrored");
    }
}

fn kept(name: &str) -> Value {
    let path = format!("{}/tests/reference/{name}", env!("CARGO_MANIFEST_DIR"));
    serde_json::from_str(&std::fs::read_to_string(path).unwrap()).unwrap()
}

/// The lessons' problems as SymPy solves them from ΣFx, ΣFy and ΣM (tests/reference/solve.py).
#[test]
fn val_the_lessons_agree_with_an_independent_solver() {
    let lessons = built_in();
    let solutions: BTreeMap<String, Value> = kept("lesson_solutions.json")["solutions"]
        .as_array()
        .unwrap()
        .iter()
        .map(|solution| {
            (
                solution["id"].as_str().unwrap().to_owned(),
                solution["forces"].clone(),
            )
        })
        .collect();
    assert_eq!(solutions.len(), 75);
    for (code, forces) in solutions {
        let (lesson, place) =
            parse_code(&code, &lessons).unwrap_or_else(|trouble| panic!("{code}: {trouble}"));
        let problem = lessons[lesson].problem_at(&place, "en").unwrap();
        let key = derive(&problem).unwrap();
        let sample: Sample = Sampling::of(&problem).own().clone();
        let step = |id: StepId| key.value(id, &sample, &Pins::new());
        near(
            step(PULL).unwrap(),
            forces["T"]["size"].as_f64().unwrap(),
            &code,
        );
        let part = |axis: Axis| {
            step(StepId::Reaction(ForceId::Support(0), Part::Along(axis))).unwrap_or(0.0)
        };
        near(
            part(Axis::Horizontal),
            forces["H"]["x"].as_f64().unwrap(),
            &code,
        );
        near(
            part(Axis::Vertical),
            forces["H"]["y"].as_f64().unwrap(),
            &code,
        );
        let solution = statics::solve(&problem, &problem.values()).unwrap();
        let told = |name: &str, part: &str| forces[name][part].as_f64().unwrap();
        let hinge = solution.force(ForceId::Support(0));
        near(solution.size(ForceId::Rope(0)), told("T", "size"), &code);
        near(hinge.x, told("H", "x"), &code);
        near(hinge.y, told("H", "y"), &code);
    }
}
