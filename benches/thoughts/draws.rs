//! Table 7: what each lesson's range gives, and how long a draw takes.

use leverwright::draw::{draw, survey};
use leverwright::lesson::built_in;
use std::time::Instant;

/// Draws looked at, and those of them that are kept and looked at closely.
const TRIES: (usize, usize) = (1000, 200);
/// Draws timed.
const TIMED: u64 = 200;

/// Table 7.
pub(super) fn lessons(seed: u64) {
    println!("\n7. Each lesson over its range");
    for lesson in built_in() {
        let found = survey(&lesson, TRIES.0, TRIES.1, "en");
        let mut times: Vec<f64> = (0..TIMED)
            .map(|at| {
                let start = Instant::now();
                let _ = draw(&lesson, seed + at, "en");
                start.elapsed().as_secs_f64() * 1000.0
            })
            .collect();
        times.sort_by(f64::total_cmp);
        println!(
            "{:10} kept {:5.1} %, about {:.0} problems, misnamed weight {:.2} %, a draw takes {:.1} ms (99 in 100: {:.1} ms)",
            lesson.id(),
            100.0 * found.share(),
            found.problems,
            100.0 * found.misnamed,
            times[times.len() / 2],
            times[times.len() * 99 / 100],
        );
        for (id, count) in &found.identical {
            println!(
                "           identical with right at the pull: {id} in {count} of {}",
                found.looked_at
            );
        }
    }
}
