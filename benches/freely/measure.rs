//! What a free working answers to pupils who work rightly.

use super::manner::Style;
use super::pupil::working;
use super::scene::{Drawn, Scene, angle_names};
use leverwright::session::Sign;
use rand::SeedableRng;
use rand::rngs::ChaCha8Rng;
use std::collections::BTreeMap;

/// What became of the lines of a cell: all, called wrong, too coarse, not understood, noted.
pub(super) type Cell = [usize; 5];

/// What was found.
#[derive(Default)]
pub(super) struct Findings {
    /// All lines.
    pub(super) lines: usize,
    /// By part of the manner and pair of parts.
    pub(super) cells: BTreeMap<String, Cell>,
    /// How many lines were typed of every three parts of the manner.
    pub(super) triples: BTreeMap<String, usize>,
    /// The lines that were not credited, by what became of them.
    pub(super) told: BTreeMap<&'static str, Vec<String>>,
    /// The workings in which a line was called wrong, each line with its verdict.
    pub(super) workings: Vec<String>,
}

/// So many workings of each lesson, each of a problem and a manner of its own.
pub(super) fn measure(workings: u64, seed: u64) -> Findings {
    let mut random = ChaCha8Rng::seed_from_u64(seed);
    let mut findings = Findings::default();
    for drawn in Drawn::some(workings, seed) {
        let scene = Scene::of(&drawn.problem);
        let names = angle_names(&drawn.problem);
        let style = Style::drawn(&mut random);
        let mut session = drawn.begun();
        let (mut whole, mut condemned) =
            (format!("{} --seed {}\n", drawn.lesson, drawn.seed), false);
        for line in working(&scene, &names, style, &mut random) {
            let turn = session.submit(&line);
            let place = match turn.line.sign {
                Sign::Wrong => Some((1, "wrong")),
                Sign::Incomplete => Some((2, "rounded too hard")),
                Sign::Unclear => Some((3, "not understood")),
                Sign::Noted | Sign::Talk => Some((4, "noted")),
                _ => None,
            };
            findings.lines += 1;
            let verdict = format!("{:?}", turn.line.sign);
            whole.push_str(&format!(
                "  {line}\n      {verdict}: {}\n",
                turn.line.message
            ));
            condemned |= turn.line.sign == Sign::Wrong;
            for name in style.triples(&drawn.lesson) {
                *findings.triples.entry(name).or_default() += 1;
            }
            for name in style.cells(&drawn.lesson) {
                let cell = findings.cells.entry(name).or_default();
                cell[0] += 1;
                if let Some((place, _)) = place {
                    cell[place] += 1;
                }
            }
            if let Some((_, what)) = place {
                findings.told.entry(what).or_default().push(format!(
                    "{} --seed {} {style:?}: {line}  [{}]",
                    drawn.lesson, drawn.seed, turn.line.message
                ));
            }
        }
        if condemned {
            findings.workings.push(whole);
        }
    }
    findings
}
