//! How long it takes to find the forces of one system.

use super::systems_random::{outcome, system, with_loads};
use leverwright::statics::solve_system;
use leverwright::system::System;
use std::collections::BTreeMap;
use std::hint::black_box;
use std::time::{Duration, Instant};

/// Each system is solved so many times; the fastest counts, since the others met something else
/// that ran.
const TIMES: usize = 5;

fn once(system: &System) -> Duration {
    let values = system.values();
    let took = (0..TIMES).map(|_| {
        let start = Instant::now();
        black_box(solve_system(system, &values, system.gravity())).ok();
        start.elapsed()
    });
    took.min().unwrap()
}

/// Prints medians by answer, by number of bodies and by number of loads.
pub(super) fn tell() {
    let mut times: BTreeMap<String, Vec<Duration>> = BTreeMap::new();
    for index in 0..3000 {
        let (_, system) = system(7, index);
        let took = once(&system);
        let answer = outcome(&system);
        let answer = answer["refused"].as_str().unwrap_or("solved");
        let bodies = system.parts().bodies.len();
        for name in [answer.to_owned(), format!("bodies: {bodies}")] {
            times.entry(name).or_default().push(took);
        }
    }
    for (name, times) in &mut times {
        times.sort();
        let at = |part: usize| times[(times.len() - 1) * part / 100];
        let count = times.len();
        println!(
            "{name:<20} {count:>5} systems  median {:>9.1?}  95 % below {:>9.1?}",
            at(50),
            at(95)
        );
    }
    let mut first = None;
    for loads in [1, 2, 5, 10, 20, 50, 100, 200] {
        let system = with_loads(loads);
        let mut all: Vec<Duration> = (0..101).map(|_| once(&system)).collect();
        all.sort();
        let first = *first.get_or_insert(all[50]);
        let ratio = all[50].as_secs_f64() / first.as_secs_f64();
        println!(
            "one body, {loads:>3} loads  median {:>9.1?}  {ratio:>6.1} times that of one",
            all[50]
        );
    }
}
