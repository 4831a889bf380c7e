//! Pupils who slip once and go on: with the slip, mending it in silence, by half, or by taking the
//! line back. No line but the one with the slip may be called wrong.

use super::manner::Style;
use super::pupil::{Pupil, Slip};
use super::scene::{Drawn, Scene, angle_names};
use leverwright::session::Sign;
use rand::Rng;
use rand::SeedableRng;
use rand::rngs::ChaCha8Rng;
use std::collections::BTreeMap;

/// How she goes on.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
enum After {
    Carries,
    Mends,
    HalfMends,
    TakesBack,
}

/// What was found.
#[derive(Default)]
pub(super) struct Slipping {
    pub(super) workings: usize,
    pub(super) lines: usize,
    /// How often the slip itself was told as wrong, of how many.
    pub(super) told: (usize, usize),
    /// By how she goes on: lines, and lines wrongly condemned.
    pub(super) kinds: BTreeMap<String, (usize, usize)>,
    /// Workings with a line that was wrongly condemned, each line with its verdict.
    pub(super) condemned: Vec<String>,
}

/// So many workings of each lesson. `tell` hears how far it is and what is found.
pub(super) fn measure_slipping(workings: u64, seed: u64, tell: &dyn Fn(&str)) -> Slipping {
    let mut random = ChaCha8Rng::seed_from_u64(seed);
    let mut found = Slipping::default();
    for drawn in Drawn::some(workings, seed) {
        let scene = Scene::of(&drawn.problem);
        let names = angle_names(&drawn.problem);
        let style = Style::carrying(&mut random);
        let mut pick = |count: usize| random.next_u32() as usize % count;
        let factor = [0.82, 1.27, 1.6, 0.55][pick(4)];
        let slip = match pick(3) {
            0 => Slip::Weight(pick(scene.weights.len()), factor),
            1 => Slip::Pull(factor),
            _ => Slip::Ratio,
        };
        // Where sine and cosine are alike or nothing is no slip to see.
        let between = scene.angles()[2];
        let slip = match slip {
            Slip::Ratio if (between - 45.0).abs() < 4.0 || between > 80.0 => Slip::Pull(factor),
            slip => slip,
        };
        let after = [
            After::Carries,
            After::Mends,
            After::HalfMends,
            After::TakesBack,
        ][pick(4)];
        let lines = written(&Pupil::at_work(&scene, &names, style, slip), slip, after);
        let mut session = drawn.begun();
        let kind = format!(
            "{after:?}, {}",
            format!("{slip:?}").split('(').next().unwrap_or("")
        );
        let mut whole = format!("{} --seed {} {kind} {style:?}\n", drawn.lesson, drawn.seed);
        let mut condemned = false;
        for (line, is_slip) in lines {
            let turn = session.submit(&line);
            let sign = turn.line.sign;
            whole.push_str(&format!(
                "  {line}\n      {sign:?}: {}\n",
                turn.line.message
            ));
            found.lines += 1;
            if is_slip {
                found.told.1 += 1;
                found.told.0 += usize::from(sign == Sign::Wrong);
                continue;
            }
            let counted = found.kinds.entry(kind.clone()).or_default();
            counted.0 += 1;
            if matches!(sign, Sign::Wrong | Sign::Unclear) {
                counted.1 += 1;
                condemned = true;
            }
        }
        found.workings += 1;
        if condemned {
            tell(&whole);
            found.condemned.push(whole);
        }
        if found.workings.is_multiple_of(100) {
            tell(&format!(
                "{} workings, {} lines, condemned in {}",
                found.workings,
                found.lines,
                found.condemned.len()
            ));
        }
    }
    found
}

/// The lines, and whether each is the one with the slip.
fn written(pupil: &Pupil<'_>, slip: Slip, after: After) -> Vec<(String, bool)> {
    let [definitions, relations, values] = pupil.lines();
    let mut lines: Vec<(String, bool)> = Vec::new();
    let is_weight = |at: usize| matches!(slip, Slip::Weight(slipped, _) if slipped == at);
    for (at, line) in definitions.into_iter().enumerate() {
        lines.push((line, is_weight(at)));
    }
    let pull = !matches!(slip, Slip::Weight(..));
    let place = match slip {
        Slip::Weight(at, _) => at + 1,
        _ => lines.len() + 2,
    };
    let mut relations = relations.into_iter();
    lines.extend(relations.next().map(|line| (line, false)));
    let mut told = values.into_iter();
    lines.extend(told.next().map(|line| (line, pull)));
    let rest: Vec<String> = told.collect();
    let right = pupil.half_mended();
    let [right_definitions, right_relations, right_values] = right.lines();
    let mended = match slip {
        Slip::Weight(at, _) => right_definitions[at].clone(),
        _ => right_values[0].clone(),
    };
    match after {
        After::Carries => lines.extend(rest.into_iter().map(|line| (line, false))),
        After::Mends | After::TakesBack => {
            let mended = match after {
                After::TakesBack => format!("instead of line {place}: {mended}"),
                _ => mended,
            };
            lines.extend(rest.into_iter().take(1).map(|line| (line, false)));
            lines.push((mended, false));
            let right = pupil.mended();
            let [_, _, values] = right.lines();
            lines.extend(values.into_iter().map(|line| (line, false)));
        }
        After::HalfMends => {
            lines.push((mended, false));
            lines.extend(right_values.into_iter().skip(1).map(|line| (line, false)));
        }
    }
    // Who mended a weight does not write down its old number again.
    match after {
        After::Carries => lines.extend(relations.map(|line| (line, false))),
        _ => lines.extend(
            right_relations
                .into_iter()
                .skip(1)
                .map(|line| (line, false)),
        ),
    }
    lines
}
