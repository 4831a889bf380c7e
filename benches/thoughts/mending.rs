//! Table 6: from a wrong line to its correction, by pupils who do what a hint asks.
//!
//! What moves a pupil is assumed, and fixed here: a sentence or a hint about her own mistake makes her
//! mend the line far oftener than one about something else; a worked sister problem helps most; the
//! last hint, the line itself, always does.

use super::case::{Case, Share, is_family};
use super::manner::{chance, named};
use super::pupil::{Line, Wrong, first_apart, work};
use leverwright::key::StepId;
use leverwright::session::{Session, Sign};
use rand::rngs::ChaCha8Rng;
use std::collections::BTreeMap;

/// In so many of a hundred she mends her line after what is said of it, and after each hint: where
/// it is about her own mistake, and where it is not.
const MENDS: [(usize, usize); 4] = [(40, 10), (50, 20), (60, 30), (80, 60)];

#[derive(Clone, Copy, Default)]
struct Row {
    lines: usize,
    hints: usize,
    last: Share,
    mended: Share,
}

/// Table 6.
pub(super) fn until_right(cases: &[Case], random: &mut ChaCha8Rng) {
    println!("\n6. From wrong line to its correction (pupils who do what a hint asks)");
    println!(
        "{:32} {:>7} {:>7} {:>7} {:>11} {:>11}",
        "mistake", "times", "lines", "hints", "last hint", "then right"
    );
    let mut rows: BTreeMap<&'static str, Row> = BTreeMap::new();
    for case in cases {
        for made in case.made() {
            if let Some((lines, hints, last, mended)) = walked(case, made.wrong, random) {
                let row = rows.entry(made.wrong.id()).or_default();
                row.lines += lines;
                row.hints += hints;
                row.last.count(last);
                row.mended.count(mended);
            }
        }
    }
    let mut whole = Row::default();
    let tell = |name: &str, row: &Row| {
        let times = row.last.all.max(1) as f64;
        println!(
            "{name:32} {:>7} {:>7.2} {:>7.2} {:>11} {:>11}",
            row.last.all,
            row.lines as f64 / times,
            row.hints as f64 / times,
            row.last.told(),
            row.mended.told()
        );
    };
    for (id, row) in &rows {
        tell(id, row);
        whole.lines += row.lines;
        whole.hints += row.hints;
        whole.last.add(row.last);
        whole.mended.add(row.mended);
    }
    tell("together", &whole);
}

/// A session at the first question with a value.
fn at_values(case: &Case) -> Session {
    let mut session = case.session.clone();
    // The forces and the pivot are not what is measured here.
    for _ in 0..2 {
        session.submit("skip");
    }
    session
}

/// Enters the right lines before a step.
fn up_to(
    session: &mut Session,
    case: &Case,
    right: &[Line],
    step: StepId,
    random: &mut ChaCha8Rng,
) {
    for line in right.iter().take_while(|line| line.step != step) {
        // Angles are asked before components.
        if let StepId::Across(force) = line.step {
            let angle = match force == case.paper.rope.force {
                true => case.paper.rope.with_body,
                false => case.paper.weight_angle,
            };
            session.submit(&format!("{angle}°"));
        }
        let typed = named(random, &case.paper, line, 5);
        session.submit(&typed);
    }
}

/// Lines and hints until the line is right, whether the last hint was needed, and whether the mended
/// line was taken as right.
fn walked(
    case: &Case,
    wrong: Wrong,
    random: &mut ChaCha8Rng,
) -> Option<(usize, usize, bool, bool)> {
    let right = work(&case.paper, &[], 5)?;
    let lines = work(&case.paper, &[wrong], 5)?;
    let step = first_apart(&right, &lines)?;
    let find = |lines: &[Line]| lines.iter().find(|line| line.step == step).cloned();
    let (mine, mended) = (find(&lines)?, find(&right)?);
    let mut session = at_values(case);
    up_to(&mut session, case, &right, step, random);
    let turn = session.submit(&named(random, &case.paper, &mine, 5));
    if turn.line.sign != Sign::Wrong {
        return None;
    }
    // Families that agree by identity at this line are one thought.
    let ranked = case.session.thoughts_behind(step, &mine.form);
    let first = ranked
        .thoughts
        .first()
        .filter(|_| !turn.kept.mistakes.is_empty());
    let about_hers = first.is_some_and(|first| is_family(first, wrong.id()));
    let mends = |random: &mut ChaCha8Rng, at: usize| match about_hers {
        true => chance(random, MENDS[at].0),
        false => chance(random, MENDS[at].1),
    };
    let mut hints = 0;
    let mut is_mended = mends(random, 0);
    while !is_mended && hints < 4 {
        session.submit("hint");
        hints += 1;
        is_mended = hints == 4 || mends(random, hints);
    }
    let turn = session.submit(&named(random, &case.paper, &mended, 5));
    // After the last hint the step is passed, and the line says what stands.
    let holds = hints == 4 || matches!(turn.line.sign, Sign::Right | Sign::Rounded);
    Some((2, hints, hints == 4, holds))
}
