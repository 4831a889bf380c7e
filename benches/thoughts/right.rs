//! Table 4: right workings, rounded to three, four or five figures on the way.

use super::case::{Case, Share};
use super::manner::{below, named, skipped};
use super::pupil::work;
use leverwright::session::Sign;
use rand::rngs::ChaCha8Rng;

/// Table 4.
pub(super) fn workings(cases: &[Case], count: usize, random: &mut ChaCha8Rng) {
    println!("\n4. Right workings, rounded on the way: accusations");
    let mut refused = Share::default();
    let (mut accused, mut flatly, mut told) = (Share::default(), 0, Vec::new());
    let mut working = 0;
    for at in 0..count {
        let case = &cases[at % cases.len().max(1)];
        let figures = 3 + below(random, 3) as u8;
        let Some(mut lines) = work(&case.paper, &[], figures) else {
            continue;
        };
        lines.retain(|line| !skipped(random, line.step));
        let typed: Vec<String> = lines
            .iter()
            .map(|line| named(random, &case.paper, line, figures))
            .collect();
        working += 1;
        for (line, ranked) in typed.iter().zip(case.session.thoughts_in(&typed)) {
            let is_wrong = matches!(ranked.sign, Sign::Wrong | Sign::Incomplete);
            let misconception = ranked
                .thoughts
                .iter()
                .any(|thought| thought.family.is_some());
            refused.count(is_wrong);
            accused.count(is_wrong && misconception);
            flatly += usize::from(ranked.thoughts.iter().any(|thought| thought.flat));
            if is_wrong && told.len() < 20 {
                told.push(format!(
                    "`{line}` at {} ({figures} figures): {}",
                    ranked.step.0, ranked.truth
                ));
            }
        }
    }
    println!(
        "workings {working}, lines {}; lines refused {}, accused of a mistake {}, flatly {flatly}",
        accused.all, refused.of_them, accused.of_them
    );
    for line in told {
        println!("refused: {line}");
    }
}
