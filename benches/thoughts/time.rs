//! Table 8: how long it takes to open a problem and to rank the thoughts behind one answer.

use super::case::Case;
use super::manner::number;
use super::pupil::work;
use leverwright::diagnosis::diagnose;
use leverwright::judge::{Board, Names, Standing, judge};
use leverwright::problem::{Given, GivenId, Load, LoadKind, Place, Problem};
use leverwright::session::Session;
use leverwright::text::{Symbol, Words};
use leverwright::units::Dimension;
use rand::rngs::ChaCha8Rng;
use std::time::Instant;

/// The most loads tried.
const MOST_LOADS: usize = 6;

/// Table 8.
pub(super) fn opening_and_diagnosis(cases: &[Case], random: &mut ChaCha8Rng) {
    println!("\n8. Times, in milliseconds: median, and the one that 99 in 100 stay below");
    told(
        "the drawn problems",
        cases.iter().collect::<Vec<_>>().as_slice(),
        random,
    );
    for loads in 1..=MOST_LOADS {
        let grown: Vec<Case> = cases
            .iter()
            .step_by((cases.len() / 8).max(1))
            .filter_map(|case| Case::of(with_loads(&case.problem, loads)?))
            .collect();
        told(
            &format!("{loads} loads"),
            &grown.iter().collect::<Vec<_>>(),
            random,
        );
    }
    for share in [25, 50, 75, 100] {
        by_catalogue(cases, share, random);
    }
}

/// The problem with so many loads, the further ones at places of their own.
fn with_loads(problem: &Problem, loads: usize) -> Option<Problem> {
    let mut parts = problem.parts().clone();
    parts.loads.truncate(loads);
    let length = problem.given(problem.body().length).value;
    while parts.loads.len() < loads {
        let at = parts.loads.len();
        let mut given = |symbol: String, value: f64, written: String, dimension: Dimension| {
            parts.givens.push(Given {
                symbol: Symbol::new(symbol),
                meaning: "more".to_owned(),
                value,
                written,
                dimension,
            });
            GivenId(parts.givens.len() - 1)
        };
        let (mass, place) = (7.0 + 4.0 * at as f64, length * (0.11 + 0.13 * at as f64));
        let place = (place * 100.0).round() / 100.0;
        let mass = given(
            format!("m_{}", at + 1),
            mass,
            format!("{mass} kg"),
            Dimension::MASS,
        );
        let place = given(
            format!("d_{}", at + 1),
            place,
            format!("{place} m"),
            Dimension::LENGTH,
        );
        parts.loads.push(Load {
            symbol: Symbol::new(format!("W_{}", at + 1)),
            noun: format!("pack {at}"),
            at: Place::At(place),
            kind: LoadKind::Mass(mass),
            stands: false,
        });
    }
    Problem::new(parts).ok()
}

fn told(name: &str, cases: &[&Case], random: &mut ChaCha8Rng) {
    let (mut opening, mut ranking, mut instances) = (Vec::new(), Vec::new(), 0);
    for case in cases {
        let start = Instant::now();
        let opened = Session::start(case.problem.clone(), None, Words::english());
        opening.push(start.elapsed());
        let Ok(session) = opened else { continue };
        instances += case.instances.len();
        let made = case.made();
        for made in made.iter().step_by((made.len() / 5).max(1)) {
            let lines = work(&case.paper, &[made.wrong], 4);
            let value = lines.and_then(|lines| case.valued(&lines, case.pull()));
            let Some((pull, value)) = value else { continue };
            let typed = number(random, pull, value, 3);
            let start = Instant::now();
            let _ = session.thoughts_behind(pull, &typed);
            ranking.push(start.elapsed());
        }
    }
    let opening = figures(opening);
    let ranking = figures(ranking);
    println!(
        "{name:20} opening {opening}   one diagnosis {ranking}   ({:.0} mistakes can be made)",
        instances as f64 / cases.len().max(1) as f64
    );
}

fn figures(mut times: Vec<std::time::Duration>) -> String {
    times.sort();
    let at = |share: usize| {
        let time = times.get((times.len() * share / 100).min(times.len().saturating_sub(1)));
        time.map_or(0.0, |time| time.as_secs_f64() * 1000.0)
    };
    format!("{:7.2} {:7.2}", at(50), at(99))
}

/// The naming alone, with a share of the mistakes.
fn by_catalogue(cases: &[Case], share: usize, random: &mut ChaCha8Rng) {
    let mut times = Vec::new();
    for case in cases {
        let lines = work(&case.paper, &[], 5);
        let Some((pull, right)) = lines.and_then(|lines| case.valued(&lines, case.pull())) else {
            continue;
        };
        let typed = number(random, pull, 1.3 * right, 3);
        let (names, standing) = (Names::of(&case.problem, &case.key, &[]), Standing::new());
        let board = Board::of(
            (&case.problem, &case.key, &case.sampling),
            (&names, &standing),
        );
        let judgement = judge(&board, pull, &typed, 1);
        let some = &case.instances[..case.instances.len() * share / 100];
        let start = Instant::now();
        let _ = diagnose(&board, &judgement, some);
        times.push(start.elapsed());
    }
    println!(
        "naming with {share:3} % of the catalogue {}",
        figures(times)
    );
}
