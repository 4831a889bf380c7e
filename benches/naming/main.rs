//! Prints how often wrong lines are named rightly, and every right line that was called wrong:
//! `cargo bench --bench naming -- DRAWS SEED [--all-misses]`.
#![allow(clippy::print_stdout, missing_docs)]

mod forms;
mod measure;

use leverwright::lesson::built_in;
use measure::{COMMONEST, Findings, Share, measure};

/// Examples told for each mistake.
const EXAMPLES: usize = 3;

fn main() {
    let asked: Vec<u64> = std::env::args()
        .filter_map(|word| word.parse().ok())
        .collect();
    let draws = asked.first().copied().unwrap_or(200) as usize;
    let seed = asked.get(1).copied().unwrap_or(1);
    let all = std::env::args().any(|word| word == "--all-misses");
    println!("{draws} problems of each lesson from seed {seed}");
    let (mut kept, mut tried) = (0, 0);
    for lesson in built_in() {
        let findings = measure(&lesson, draws, seed);
        kept += findings.draws;
        tried += findings.tried;
        tell(
            lesson.id(),
            &findings,
            if all { usize::MAX } else { EXAMPLES },
        );
    }
    println!(
        "\nAll lessons: {:.1} % of candidates kept",
        100.0 * kept as f64 / tried.max(1) as f64
    );
}

fn tell(lesson: &str, findings: &Findings, examples: usize) {
    println!(
        "\n== {lesson}: {} of {} candidates kept ({:.1} %), misnamed weight {:.2} %",
        findings.draws,
        findings.tried,
        100.0 * findings.draws as f64 / findings.tried.max(1) as f64,
        100.0 * findings.misnamed / findings.draws.max(1) as f64
    );
    println!("refused: {:?}", findings.refused);
    println!(
        "{:34} {:>18} {:>18} {:>18}",
        "mistake", "expressions", "numbers", "balances"
    );
    let line = |name: &str, shares: [Share; 3]| {
        let told = |share: Share| format!("{:6} {:8.2} %", share.typed, share.percent());
        let [expressions, numbers, balances] = shares.map(told);
        println!("{name:34} {expressions:>18} {numbers:>18} {balances:>18}");
    };
    for (id, row) in &findings.rows {
        let mark = if COMMONEST.contains(id) { "*" } else { "" };
        let shares = [row.expressions, row.numbers, row.balances];
        line(&format!("{id}{mark}"), shares);
    }
    let commonest = findings.total(|id| COMMONEST.contains(&id));
    line("the 16 commonest (*)", commonest);
    line("all", findings.total(|_| true));
    for row in findings.rows.values() {
        for missed in row.missed.iter().take(examples) {
            println!("missed: {missed}");
        }
    }
    println!(
        "right lines typed: {}; called wrong: {}",
        findings.right_lines,
        findings.condemned.len()
    );
    for condemned in findings.condemned.iter().take(examples.saturating_mul(20)) {
        println!("condemned: {condemned}");
    }
}
