//! How long it takes to solve and to derive the working of one problem of each kind
//! (tests/boards), and how both grow with the loads on a body.

use super::systems_random::with_loads;
use leverwright::lesson::parse_system;
use leverwright::statics::{roots, solve_system};
use leverwright::system::System;
use leverwright::working::{Method, derive, told};
use std::hint::black_box;
use std::time::{Duration, Instant};

/// Each is measured so many times; the median counts.
const TIMES: usize = 41;

fn median(mut work: impl FnMut()) -> Duration {
    let mut all: Vec<Duration> = (0..TIMES)
        .map(|_| {
            let start = Instant::now();
            work();
            start.elapsed()
        })
        .collect();
    all.sort();
    all[TIMES / 2]
}

/// The values with what is sought found, where something is.
fn solved(system: &System) -> Vec<f64> {
    let mut values = system.values();
    if let Some(sought) = &system.parts().sought {
        let found = roots(system, system.gravity()).unwrap();
        let root = found.iter().find(|root| root.solution.is_ok()).unwrap();
        values[sought.given.0] = root.value;
    }
    values
}

/// Medians of solving, and of deriving and telling by a method; nothing where it has none.
fn measured(system: &System, method: Method) -> (Duration, Option<Duration>) {
    let values = solved(system);
    let solving = median(|| match system.parts().sought {
        Some(_) => {
            black_box(roots(system, system.gravity())).ok();
        }
        None => {
            black_box(solve_system(system, &values, system.gravity())).ok();
        }
    });
    let derives = derive(system, &values, method, None).is_ok();
    let deriving = derives.then(|| {
        median(|| {
            if let Ok(working) = derive(system, &values, method, None) {
                black_box(told(system, &working, &values));
            }
        })
    });
    (solving, deriving)
}

/// Prints every kind, then the growth from 1 to 200 loads.
pub(super) fn tell() {
    let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/tests/boards");
    let mut files: Vec<_> = (std::fs::read_dir(folder).unwrap())
        .map(|entry| entry.unwrap().path())
        .filter(|path| path.extension().is_some_and(|end| end == "json"))
        .collect();
    files.sort();
    println!(
        "{:<18} {:>10} {:>12} {:>10}",
        "kind", "solve", "components", "triangle"
    );
    for path in files {
        let system = parse_system(&std::fs::read_to_string(&path).unwrap()).unwrap();
        let (solving, components) = measured(&system, Method::Components);
        let (_, triangle) = measured(&system, Method::Triangle);
        let told = |time: Option<Duration>| time.map_or("-".to_owned(), |it| format!("{it:.1?}"));
        println!(
            "{:<18} {:>10} {:>12} {:>10}",
            path.file_stem().unwrap().to_string_lossy(),
            told(Some(solving)),
            told(components),
            told(triangle)
        );
    }
    let mut first = None;
    for loads in [1, 2, 5, 10, 20, 50, 100, 200] {
        let system = with_loads(loads);
        let (solving, deriving) = measured(&system, Method::Components);
        let deriving = deriving.unwrap();
        let first = *first.get_or_insert(deriving);
        println!(
            "{loads:>3} loads  solve {solving:>9.1?}  working {deriving:>9.1?}  {:>6.1} times that of one",
            deriving.as_secs_f64() / first.as_secs_f64()
        );
    }
}
