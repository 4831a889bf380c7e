//! The diagrams of drawn problems as the screen lays them out, at every stage of the working.

#![allow(clippy::unwrap_used, clippy::print_stdout)]

use super::diagram::compose;
use super::regions::regions;
use super::sight::Onlooker;
use crate::hint::{Case, force_words};
use crate::key::Sampling;
use crate::mistakes::right_line;
use crate::screen::model::{Model, Working};
use crate::screen::theme::{Depth, Theme};
use crate::session::Session;
use crate::sketch::flaws;
use crate::text::{Manner, Words};
use ratatui::backend::TestBackend;
use ratatui::layout::Rect;
use ratatui::{Frame, Terminal};
use std::collections::BTreeMap;

fn session(lesson: &str, seed: u64) -> Session {
    let lessons = crate::lesson::built_in();
    let lesson = lessons.iter().find(|known| known.id() == lesson).unwrap();
    let problem = crate::draw::draw(lesson, seed, "en").unwrap().problem;
    Session::start(problem, None, Words::english()).unwrap()
}

fn screen(columns: u16, rows: u16, unicode: bool) -> Model {
    let depth = Depth::None;
    Model::new(Words::english(), Theme { depth, unicode }, (columns, rows))
}

/// A line for each force, in an order that the seed turns.
fn naming(session: &Session, seed: u64) -> Vec<String> {
    let case = Case {
        problem: session.problem(),
        key: session.key(),
        sampling: &Sampling::of(session.problem()),
        own: Default::default(),
    };
    let forces = session.problem().forces();
    let words = Words::english();
    let mut lines: Vec<String> = (forces.iter())
        .map(|force| force_words(&words, &case, force.id))
        .collect();
    let turned = usize::try_from(seed).unwrap() % lines.len();
    lines.rotate_left(turned);
    lines
}

/// A walk through a problem with right lines, the forces named one by one; `seen` is called
/// before the first line, after each, and after the second hint to each, which may light a
/// triangle.
fn walk(lesson: &str, seed: u64, mut seen: impl FnMut(&Session)) {
    let mut session = session(lesson, seed);
    seen(&session);
    for line in naming(&session, seed) {
        session.submit(&line);
        seen(&session);
    }
    for _ in 0..60 {
        let Some(asked) = session.asked() else { return };
        let mut hinted = session.clone();
        hinted.submit("hint");
        hinted.submit("hint");
        seen(&hinted);
        let sampling = Sampling::of(session.problem());
        let line = right_line(session.problem(), session.key(), asked, &sampling);
        let line = line.map_or_else(|| "skip".to_owned(), |line| line.expression);
        session.submit(&line);
        seen(&session);
    }
    panic!("{lesson} {seed} does not end");
}

fn shown(session: &Session) -> Working {
    Working::new(Box::new(session.clone()), Manner::default())
}

/// The sizes at which everything must be clear.
const SCREENS: [(u16, u16, bool); 5] = [
    (80, 24, true),
    (80, 24, false),
    (100, 30, true),
    (120, 40, false),
    (140, 45, true),
];

/// How often each flaw stands in the diagrams of so many problems of a lesson.
fn measured(lesson: &str, seeds: std::ops::Range<u64>) -> BTreeMap<String, usize> {
    let mut counts = BTreeMap::new();
    let mut onlooker = Onlooker::new(&SCREENS);
    for seed in seeds {
        onlooker.forget();
        walk(lesson, seed, |session| {
            for sight in onlooker.look(session) {
                *counts.entry(DRAWINGS.to_owned()).or_insert(0) += 1;
                let unicode = SCREENS[sight.screen].2;
                let mut found: Vec<String> = flaws(&sight.scene, &sight.picture, unicode)
                    .iter()
                    .map(|flaw| format!("{flaw:?}"))
                    .collect();
                if !sight.whole {
                    found.push("legend cut off".to_owned());
                }
                if !found.is_empty() {
                    println!("{lesson} {seed} {:?} {found:?}", SCREENS[sight.screen]);
                    println!("{}\n", sight.picture.lines().join("\n"));
                }
                for flaw in found {
                    *counts.entry(flaw).or_insert(0) += 1;
                }
            }
        });
    }
    counts
}

/// Under which word all drawings are counted.
const DRAWINGS: &str = "drawings";
/// What two arrows do where a grid is too low for both: no label is touched.
const TIGHT: [&str; 2] = ["Crossed(", "StandsIn("];

/// The short form of `cargo bench --bench labels`, which walks through 2,000 problems: no flaw, but
/// that of so many drawings one may have arrows that meet.
fn flawless(lesson: &str, one_in: usize) {
    let mut counts = measured(lesson, 1..61);
    let drawings = counts.remove(DRAWINGS).unwrap_or_default();
    let is_tight = |flaw: &str| TIGHT.iter().any(|tight| flaw.starts_with(tight));
    let (tight, flaws): (BTreeMap<_, _>, BTreeMap<_, _>) =
        counts.into_iter().partition(|(flaw, _)| is_tight(flaw));
    assert!(flaws.is_empty(), "{lesson}: {flaws:?}");
    let met: usize = tight.values().sum();
    assert!(
        met * one_in <= drawings,
        "{lesson}: {tight:?} of {drawings}"
    );
    assert!(drawings > 2000, "{lesson}: {drawings}");
}

#[test]
fn verif_every_label_and_arrow_of_the_counter_is_clear() {
    flawless("counter", usize::from(u16::MAX));
}

#[test]
fn verif_every_label_and_arrow_of_the_walkway_is_clear() {
    flawless("walkway", usize::from(u16::MAX));
}

#[test]
fn verif_every_label_and_arrow_of_the_mast_is_clear() {
    flawless("mast", 200);
}

/// While forces are asked the scene stays in sight; a hint to a component draws its triangle
/// alone, with no number that was not said.
#[test]
fn the_scene_stays_until_the_forces_are_named_and_a_hint_draws_the_triangle() {
    let mut session = session("mast", 3);
    let lines = naming(&session, 0);
    session.submit(&lines[0]);
    assert!(session.view().marks.site);
    for line in &lines[1..] {
        session.submit(line);
    }
    session.submit("done");
    assert!(!session.view().marks.site);
    let mut lit = Vec::new();
    while let Some(asked) = session.asked() {
        let mut hinted = session.clone();
        hinted.submit("hint");
        assert_eq!(hinted.view().marks.triangle, None);
        hinted.submit("hint");
        if let Some(triangle) = hinted.view().marks.triangle {
            lit.push(format!("{asked:?}: {triangle:?}"));
        }
        session.submit("skip");
    }
    insta::assert_snapshot!(lit.join("\n"));
}

/// Prints diagrams alone: `cargo test --lib drawings -- --ignored --nocapture`. `LESSON`, `SEED`,
/// `SIZE` (as 80x24) and `ASCII` choose.
#[test]
#[ignore = "prints drawings to be looked at"]
fn drawings() {
    let wish = |name: &str, usual: &str| std::env::var(name).unwrap_or_else(|_| usual.to_owned());
    let (lesson, seed) = (wish("LESSON", "mast"), wish("SEED", "3").parse().unwrap());
    let size = wish("SIZE", "100x30");
    let (columns, rows) = size.split_once('x').unwrap();
    let (columns, rows) = (columns.parse().unwrap(), rows.parse().unwrap());
    let unicode = std::env::var("ASCII").is_err();
    let mut before = String::new();
    walk(&lesson, seed, |session| {
        let (model, open) = (screen(columns, rows, unicode), shown(session));
        let area = regions(&model, &open, Rect::new(0, 0, columns, rows)).diagram;
        let composed = compose(&model, &open, (area.width.max(1), area.height.max(1)));
        let drawn = composed.picture.lines().join("\n");
        if drawn != before {
            println!("=== {lesson} {seed} {size} {:?}", composed.picture.legend);
            println!("{}", drawn.trim_matches('\n'));
        }
        before = drawn;
    });
}

/// Prints whole screens: `cargo test --lib captures -- --ignored --nocapture`. `LESSON`, `SEED`
/// and `ASCII` choose.
#[test]
#[ignore = "prints screens to be looked at"]
fn captures() {
    let lesson = std::env::var("LESSON").unwrap_or_else(|_| "mast".to_owned());
    let seed = std::env::var("SEED")
        .ok()
        .and_then(|seed| seed.parse().ok())
        .unwrap_or(3);
    let unicode = std::env::var("ASCII").is_err();
    for (columns, rows) in [(100, 30), (80, 24)] {
        let mut before = String::new();
        walk(&lesson, seed, |session| {
            let (model, open) = (screen(columns, rows, unicode), shown(session));
            let page = Rect::new(0, 0, columns, rows);
            let area = regions(&model, &open, page).diagram;
            let composed = compose(&model, &open, (area.width.max(1), area.height.max(1)));
            let drawn = composed.picture.lines().join("\n");
            if drawn == before {
                return;
            }
            before = drawn;
            let mut terminal = Terminal::new(TestBackend::new(columns, rows)).unwrap();
            let draw = |frame: &mut Frame| super::draw_working(&model, &open, frame, page);
            terminal.draw(draw).unwrap();
            let cells = &terminal.backend().buffer().content;
            println!("=== {lesson} {seed} {columns}x{rows}");
            for row in cells.chunks(columns.into()) {
                let row: String = row.iter().map(|cell| cell.symbol()).collect();
                println!("{}", row.trim_end());
            }
        });
    }
}
