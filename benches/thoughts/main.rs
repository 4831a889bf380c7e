//! How well the thought behind a wrong line is named, over the shipped lessons:
//! `cargo bench --bench thoughts -- TABLES DRAWS SEED WORKINGS`, such as `12345678 40 7 1000`; the
//! last is the number of right workings of table 4. Deterministic by seed, but for the times.
//!
//! The pupils make the twenty commonest mistakes by their own arithmetic (`pupil.rs`); the others are
//! written from the rewrites of the catalogue, and stand on lines of their own. What they do, and how
//! often, is fixed in these files and is not what the diagnosis expects.
#![allow(clippy::print_stdout, missing_docs)]

mod case;
mod draws;
mod manner;
mod mending;
mod mixture;
mod paper;
mod pupil;
mod right;
mod single;
mod time;

use case::Case;
use leverwright::lesson::built_in;
use rand::SeedableRng;
use rand::rngs::ChaCha8Rng;

fn main() {
    let words: Vec<String> = std::env::args()
        .skip(1)
        .filter(|word| word.bytes().all(|byte| byte.is_ascii_digit()))
        .collect();
    let tables = words.first().map_or("12345678", String::as_str);
    let number = |at: usize, otherwise: u64| -> u64 {
        let typed = words.get(at).and_then(|word| word.parse().ok());
        typed.unwrap_or(otherwise)
    };
    let (draws, seed) = (number(1, 40) as usize, number(2, 7));
    let cases: Vec<Case> = built_in()
        .iter()
        .flat_map(|lesson| (0..draws as u64).filter_map(|at| Case::draw(lesson, seed + at)))
        .collect();
    println!(
        "{} problems, {draws} of each lesson from seed {seed}",
        cases.len()
    );
    // Each table has a stream of its own, so that it is the same whatever else is printed.
    let stream = |table: u64| ChaCha8Rng::seed_from_u64(seed * 16 + table);
    let wanted = |table: char| tables.contains(table);
    if wanted('1') {
        single::typed_and_values(&cases, &mut stream(1));
    }
    if wanted('2') {
        single::final_answers(&cases, &mut stream(2));
    }
    if wanted('3') {
        mixture::pairs(&cases, &mut stream(3));
    }
    if wanted('4') {
        right::workings(
            &cases,
            number(3, draws as u64 * 10) as usize,
            &mut stream(4),
        );
    }
    if wanted('5') {
        mixture::calibration(&cases, &mut stream(5));
    }
    if wanted('6') {
        mending::until_right(&cases, &mut stream(6));
    }
    if wanted('7') {
        draws::lessons(seed);
    }
    if wanted('8') {
        time::opening_and_diagnosis(&cases, &mut stream(8));
    }
}
