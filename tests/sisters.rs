//! The sister problem of a hint: the same steps with other numbers, never the learner's own.

use leverwright::draw::{draw, draw_sister};
use leverwright::key::{Pins, Sampling, StepId, derive};
use leverwright::lesson::{Lesson, built_in, parse_lesson};
use leverwright::problem::Problem;
use leverwright::session::Session;
use leverwright::text::Words;
use leverwright::units::value_text;

fn pair(lesson: &Lesson, seed: u64) -> (Problem, Problem) {
    let drawn = draw(lesson, seed, "en").unwrap();
    let sister = draw_sister(lesson, &drawn.place, seed, "en").unwrap();
    assert_eq!(sister.place.variant, drawn.place.variant);
    (drawn.problem, sister.problem)
}

#[test]
fn verif_a_sister_has_other_numbers_and_another_value_at_every_step() {
    for lesson in built_in() {
        for seed in 0..12 {
            let (problem, sister) = pair(&lesson, seed);
            let told = format!("{} {seed}", lesson.id());
            for (own, its) in problem.givens().iter().zip(sister.givens()) {
                assert_eq!(own.symbol, its.symbol, "{told}");
                assert_ne!(own.written, its.written, "{told} {}", own.symbol);
            }
            let (key, its_key) = (derive(&problem).unwrap(), derive(&sister).unwrap());
            let (own, its) = (Sampling::of(&problem), Sampling::of(&sister));
            for step in key.asked() {
                // A multiple of the unknown is told with the unknown's letter.
                if let StepId::Across(force) = step.id
                    && key.step(StepId::Pull(force)).is_some()
                {
                    continue;
                }
                let value = key.value(step.id, own.own(), &Pins::new());
                let Some(value) = value.filter(|_| key.balance(step.id).is_none()) else {
                    continue;
                };
                let other = its_key.value(step.id, its.own(), &Pins::new()).unwrap();
                let apart = (value.abs() - other.abs()).abs();
                assert!(
                    apart > 0.04 * value.abs(),
                    "{told} {:?}: {value} and {other}",
                    step.id
                );
            }
        }
    }
}

/// The worked line of a sister ends with a value, and that is never the one asked for.
#[test]
fn the_third_hint_never_tells_the_value_that_is_asked() {
    let mut worked = 0;
    for lesson in built_in() {
        for seed in 0..3 {
            let (problem, sister) = pair(&lesson, seed);
            let mut session = Session::start(problem, Some(sister), Words::english()).unwrap();
            let (key, sampling) = (session.key().clone(), Sampling::of(session.problem()));
            for step in key.asked() {
                let hints: Vec<String> = (0..3)
                    .filter_map(|_| session.submit("hint").line.hints.first().cloned())
                    .map(|hint| hint.to_string())
                    .collect();
                session.submit("skip");
                let Some(third) = hints.get(2).filter(|hint| hint.contains("sister")) else {
                    continue;
                };
                worked += 1;
                let Some(value) = key.value(step.id, sampling.own(), &Pins::new()) else {
                    continue;
                };
                let told = value_text(value, step.dimension, session.problem().figures());
                assert!(
                    !third.contains(&format!("= {told}")),
                    "{} {seed} {:?}: {third}",
                    lesson.id(),
                    step.id
                );
            }
        }
    }
    assert!(worked > 60, "only {worked} steps were worked in a sister");
}

/// A lesson in which the body's own mass never changes: its weight is not worked in a sister.
#[test]
fn a_sister_with_the_value_asked_for_is_not_told() {
    let drawn = "\"mass\": {\"from\": \"9 kg\", \"to\": \"24 kg\", \"step\": \"1 kg\"}";
    let counter = include_str!("../lessons/counter.json");
    let fixed = counter.replacen(drawn, "\"mass\": \"12 kg\"", 1);
    assert_ne!(fixed, counter);
    let lesson = parse_lesson(&fixed).unwrap();
    let seed = (0..40)
        .find(|seed| {
            draw(&lesson, *seed, "en").is_some_and(|drawn| {
                drawn.place.variant == 0
                    && draw_sister(&lesson, &drawn.place, *seed, "en").is_some()
            })
        })
        .unwrap();
    let (problem, sister) = pair(&lesson, seed);
    let mut session = Session::start(problem, Some(sister), Words::english()).unwrap();
    session.submit("skip");
    session.submit("skip");
    let hints: Vec<String> = (0..3)
        .map(|_| session.submit("hint").line.hints[0].to_string())
        .collect();
    assert!(!hints[2].contains("sister"), "{hints:?}");
}

/// What is worked in a sister goes the same way in the learner's own problem.
#[test]
fn a_sister_is_worked_by_the_same_formulas() {
    let mut others = Vec::new();
    for lesson in built_in() {
        for seed in 0..20 {
            let (problem, sister) = pair(&lesson, seed);
            let (key, its_key) = (derive(&problem).unwrap(), derive(&sister).unwrap());
            let rule =
                |step: &leverwright::key::Step| its_key.step(step.id).map(|its| its.rule.clone());
            if !key
                .asked()
                .all(|step| rule(step) == Some(step.rule.clone()))
            {
                others.push(format!("{} {seed}", lesson.id()));
            }
        }
    }
    // Two masts of sixty draws have angles that few others have.
    assert!(others.len() <= 2, "{others:?}");
}
