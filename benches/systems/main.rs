//! Random systems and what the program finds of them, for the judge in Python:
//! `cargo bench --bench systems -- 10000 7` writes so many of that seed, one JSON object a line
//! (read by tests/reference/judge_systems.py). `cargo bench --bench systems -- time` measures how
//! long one takes, to solve it and to derive its working.
#![allow(clippy::print_stdout, clippy::unwrap_used, missing_docs)]

mod boards;
#[path = "../../tests/systems_random/mod.rs"]
mod systems_random;
mod time;

use serde_json::json;
use std::io::Write;
use systems_random::{outcome, system, written};

fn main() {
    let words: Vec<String> = (std::env::args().skip(1))
        .filter(|word| word != "--bench")
        .collect();
    if words.first().is_some_and(|word| word == "time") {
        time::tell();
        boards::tell();
        return;
    }
    let numbers: Vec<u64> = words.iter().filter_map(|word| word.parse().ok()).collect();
    let (count, seed) = (
        numbers.first().copied().unwrap_or(200),
        numbers.get(1).copied().unwrap_or(7),
    );
    let mut out = std::io::stdout().lock();
    for index in 0..count {
        let (family, system) = system(seed, index);
        let line = json!({
            "id": index, "family": format!("{family:?}").to_lowercase(),
            "problem": written(&system), "result": outcome(&system),
        });
        // A reader that has seen enough may close the pipe.
        if writeln!(out, "{line}").is_err() {
            return;
        }
    }
}
