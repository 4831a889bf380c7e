//! The diagrams of drawn problems as the screen lays them out, at every stage of the working.

#![allow(clippy::unwrap_used, clippy::print_stdout)]

use super::diagram::compose;
use super::regions::regions;
use crate::key::{Sampling, StepId};
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

const LESSONS: [&str; 3] = ["counter", "walkway", "mast"];

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

/// A walk through a problem with right lines; `seen` is called before the first line, after each,
/// and after the second hint to an angle or a component, which lights a triangle.
fn walk(lesson: &str, seed: u64, mut seen: impl FnMut(&Working)) {
    // One session chooses the lines, its twin is on the screen.
    let mut session = session(lesson, seed);
    let mut open = Working::new(Box::new(self::session(lesson, seed)), Manner::default());
    seen(&open);
    for _ in 0..60 {
        let Some(asked) = session.asked() else { return };
        if matches!(asked, StepId::Angle(_) | StepId::Across(_)) {
            open.session.submit("hint");
            open.session.submit("hint");
            open.view = open.session.view();
            seen(&open);
        }
        let sampling = Sampling::of(session.problem());
        let line = right_line(session.problem(), session.key(), asked, &sampling);
        let line = line.map_or_else(|| "skip".to_owned(), |line| line.expression);
        session.submit(&line);
        open.session.submit(&line);
        open.view = open.session.view();
        seen(&open);
    }
    panic!("{lesson} {seed} does not end");
}

/// How often each flaw stands in the diagrams of so many problems of each lesson, how many
/// diagrams there were, and how many labels stand in a legend.
fn measured(
    lessons: &[&str],
    seeds: std::ops::Range<u64>,
    print: bool,
) -> (BTreeMap<String, usize>, usize, usize) {
    let mut counts = BTreeMap::new();
    let (mut diagrams, mut beside) = (0, 0);
    for &lesson in lessons {
        for seed in seeds.clone() {
            let mut before = Vec::new();
            walk(lesson, seed, |open| {
                for (columns, rows, unicode) in [(80, 24, true), (100, 30, true), (80, 24, false)] {
                    let model = screen(columns, rows, unicode);
                    let page = Rect::new(0, 0, columns, rows);
                    let area = regions(&model, open, page).diagram;
                    if area.height == 0 {
                        continue;
                    }
                    let same = (columns, unicode, area, open.view.marks.clone());
                    if before.contains(&same) {
                        continue;
                    }
                    before.push(same);
                    let composed = compose(&model, open, (area.width, area.height));
                    diagrams += 1;
                    beside += composed.picture.legend.len();
                    let found = flaws(&composed.scene, &composed.picture, unicode);
                    for flaw in &found {
                        let text = format!("{flaw:?}");
                        let name = text.split('(').next().unwrap_or("").to_owned();
                        *counts.entry(name).or_insert(0) += 1;
                    }
                    if print && !found.is_empty() {
                        println!("{lesson} {seed} {columns}x{rows} {found:?}");
                        println!("{}\n", composed.picture.lines().join("\n"));
                    }
                    if composed.cut_off(area.height) {
                        *counts.entry("legend cut off".to_owned()).or_insert(0) += 1;
                    }
                }
            });
        }
    }
    (counts, diagrams, beside)
}

/// Where a weight hangs right beside the foot, nothing keeps its arrow out of the angle there.
const TIGHT: [&str; 2] = ["Crossed", "StandsIn"];
/// Diagrams of which one may have such an arrow.
const OF: usize = 200;

fn flawless(lesson: &str) {
    let (mut counts, diagrams, _) = measured(&[lesson], 1..61, false);
    let tight: usize = TIGHT.iter().filter_map(|name| counts.remove(*name)).sum();
    assert!(counts.is_empty(), "{lesson}: {counts:?}");
    assert!(tight * OF <= diagrams, "{lesson}: {tight} of {diagrams}");
}

#[test]
fn verif_every_label_and_arrow_of_the_counter_is_clear() {
    flawless("counter");
}

#[test]
fn verif_every_label_and_arrow_of_the_walkway_is_clear() {
    flawless("walkway");
}

#[test]
fn verif_every_label_and_arrow_of_the_mast_is_clear() {
    flawless("mast");
}

/// The same over many problems: `cargo test --lib measure_the_diagrams -- --ignored --nocapture`.
#[test]
#[ignore = "takes minutes; measures rather than tests"]
fn measure_the_diagrams() {
    let seeds = std::env::var("SEEDS")
        .ok()
        .and_then(|seeds| seeds.parse().ok())
        .unwrap_or(100);
    let (counts, diagrams, beside) =
        measured(&LESSONS, 1..1 + seeds, std::env::var("PRINT").is_ok());
    println!("{diagrams} diagrams, {beside} labels in a legend, flaws: {counts:?}");
    assert!(counts.is_empty(), "{counts:?}");
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
    walk(&lesson, seed, |open| {
        let model = screen(columns, rows, unicode);
        let area = regions(&model, open, Rect::new(0, 0, columns, rows)).diagram;
        let composed = compose(&model, open, (area.width.max(1), area.height.max(1)));
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
        walk(&lesson, seed, |open| {
            let model = screen(columns, rows, unicode);
            let page = Rect::new(0, 0, columns, rows);
            let area = regions(&model, open, page).diagram;
            let composed = compose(&model, open, (area.width.max(1), area.height.max(1)));
            let drawn = composed.picture.lines().join("\n");
            if drawn == before {
                return;
            }
            before = drawn;
            let mut terminal = Terminal::new(TestBackend::new(columns, rows)).unwrap();
            let draw = |frame: &mut Frame| super::draw_working(&model, open, frame, page);
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
