//! Right workings that no reader has a part in: `cargo bench --bench freely -- 20 7`.
//!
//! Pupils write whole free workings of drawn lesson problems with an arithmetic and a formatter of
//! their own (`pupil.rs`, `scene.rs`): by components, lever arms or coordinates, about the hinge, the
//! knot or the tip, in names or in numbers, carrying two to six figures, in several senses of the
//! hinge's parts, in many spellings. Told are, for each part of the manner and each pair of parts,
//! how many lines were typed, and how many of them were called wrong, rounded too hard, not
//! understood or only noted. With two figures carried a line may be rounded too hard.
//! The long ones tell on the standard error stream how far they are and what they found.
#![allow(
    clippy::print_stdout,
    clippy::print_stderr,
    clippy::unwrap_used,
    missing_docs
)]

mod bare;
mod manner;
mod measure;
mod pupil;
mod scene;
mod slipping;
mod slips;

use bare::measure_bare;
use measure::measure;
use slipping::measure_slipping;
use slips::measure_slips;

fn main() {
    if std::env::var_os("SLIPS").is_some() {
        return slips();
    }
    if std::env::var_os("SLIPPING").is_some() {
        return slipping();
    }
    if std::env::var_os("BARE").is_some() {
        return bare();
    }
    let (workings, seed) = counted(50);
    let shows = std::env::var("SHOW")
        .ok()
        .and_then(|show| show.parse().ok());
    let findings = measure(workings, seed);
    println!(
        "{:40} {:>8} {:>7} {:>7} {:>8} {:>7}",
        "cell", "lines", "wrong", "coarse", "unclear", "noted"
    );
    for (name, [lines, wrong, coarse, unclear, noted]) in &findings.cells {
        println!("{name:40} {lines:>8} {wrong:>7} {coarse:>7} {unclear:>8} {noted:>7}");
    }
    if let Some((name, lines)) = findings.triples.iter().min_by_key(|(_, lines)| **lines) {
        println!(
            "\n{} lines; {} triples of parts, the rarest with {lines}: {name}",
            findings.lines,
            findings.triples.len()
        );
    }
    for (what, lines) in &findings.told {
        println!("\n{what}: {}", lines.len());
        for line in lines.iter().take(shows.unwrap_or(40)) {
            println!("  {}", line.replace('\n', " "));
        }
    }
    if std::env::var_os("WHOLE").is_some() {
        for working in &findings.workings {
            println!("\n{working}");
        }
    }
}

/// How many, and from which seed, as they stand behind the name of the bench.
fn counted(usual: u64) -> (u64, u64) {
    let numbers: Vec<u64> = std::env::args()
        .filter_map(|arg| arg.parse().ok())
        .collect();
    let at = |place: usize, usual: u64| numbers.get(place).copied().unwrap_or(usual);
    (at(0, usual), at(1, 7))
}

/// Says on the standard error stream how far a long measurement is.
fn tell(so_far: &str) {
    eprintln!("{so_far}");
}

/// Wrong lines that were accepted: `SLIPS=1 cargo bench --bench freely -- PROBLEMS SEED`.
fn slips() {
    let (problems, seed) = counted(5);
    let found = measure_slips(problems, seed, 1, &tell);
    println!("wrong lines: {}  {:?}", found.typed, found.signs);
    println!("accepted: {}", found.accepted.len());
    for line in &found.accepted {
        println!("  {}", line.replace('\n', " "));
    }
    println!(
        "right by chance at the printed numbers: {}, accepted {}",
        found.by_chance.len(),
        found.chance_accepted
    );
    for line in found.by_chance.iter().take(20) {
        println!("  {line}");
    }
}

/// How often a bare wrong value is accepted: `BARE=1 cargo bench --bench freely -- PROBLEMS SEED`.
fn bare() {
    let (problems, seed) = counted(50);
    let rates = measure_bare(problems, seed);
    let all = rates.values();
    let (typed, accepted) = all.fold((0, 0), |sum, rate| (sum.0 + rate.0, sum.1 + rate.1));
    println!("bare wrong values: {typed}, accepted {accepted}");
    for (kind, (typed, accepted, lines)) in &rates {
        println!("{kind:24} {typed:>8} {accepted:>6}");
        for line in lines {
            println!("  {line}");
        }
    }
}

/// Lines wrongly condemned in workings with a slip: `SLIPPING=1 cargo bench --bench freely -- WORKINGS SEED`.
fn slipping() {
    let (workings, seed) = counted(50);
    let found = measure_slipping(workings, seed, &tell);
    let (told, slips) = found.told;
    println!(
        "workings: {}, lines: {}, slips told as wrong: {told} of {slips}",
        found.workings, found.lines
    );
    for (kind, (lines, condemned)) in &found.kinds {
        println!("{kind:24} {lines:>8} {condemned:>6}");
    }
    for working in &found.condemned {
        println!("\n{working}");
    }
}
