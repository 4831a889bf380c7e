//! Does every label of the diagram stand clear, and is everything asked for in the drawing or in
//! its legend? `cargo bench --bench labels -- PROBLEMS SEED` walks through so many problems of
//! all lessons and counts what is wrong at four sizes of screen, at every stage; so it does for the
//! general problems of the tests that can be drawn, each once. `PRINT=1` prints each drawing with a
//! flaw.
#![allow(clippy::print_stdout, clippy::unwrap_used, missing_docs)]

use leverwright::draw::draw;
use leverwright::hint::{Case, force_words};
use leverwright::key::{Pins, Sampling, StepId};
use leverwright::lesson::{ProblemFile, built_in, parse_problem_file};
use leverwright::mistakes::right_line;
use leverwright::problem::Problem;
use leverwright::screen::{Onlooker, Sight};
use leverwright::session::{Course, Progress, Session};
use leverwright::sketch::{Flaw, Marks, Sheet, Stage, flaws, spelled};
use leverwright::system::System;
use leverwright::text::Words;
use leverwright::units::Dimension;
use std::collections::BTreeMap;

const SCREENS: [(u16, u16, bool); 4] = [
    (80, 24, true),
    (100, 30, true),
    (120, 40, false),
    (140, 45, true),
];

fn main() {
    let numbers: Vec<u64> = (std::env::args().skip(1))
        .filter_map(|word| word.parse().ok())
        .collect();
    let problems = numbers.first().copied().unwrap_or(2000);
    let seed = numbers.get(1).copied().unwrap_or(1);
    let lessons: Vec<_> = built_in();
    let mut count = Count {
        print: std::env::var("PRINT").is_ok(),
        ..Count::default()
    };
    let mut onlooker = Onlooker::new(&SCREENS);
    for number in 0..problems {
        let lesson = &lessons[(number % lessons.len() as u64) as usize];
        let seed = seed + number / lessons.len() as u64;
        let problem = draw(lesson, seed, "en").unwrap().problem;
        count.name = format!("{} {seed}", lesson.id());
        onlooker.forget();
        walk(&problem, seed, &mut onlooker, &mut count);
    }
    let general = general();
    let others = general.len() as u64;
    for (name, system) in general {
        count.name = name;
        onlooker.forget();
        walk_general(&system, &mut onlooker, &mut count);
    }
    count.tell(problems + others);
}

/// The general problems of the tests that can be drawn.
fn general() -> Vec<(String, System)> {
    let mut files = Vec::new();
    for folder in ["boards", "freely", "general", "worked", "workings"] {
        let listed = std::fs::read_dir(format!("tests/{folder}")).unwrap();
        files.extend(listed.map(|entry| entry.unwrap().path().display().to_string()));
    }
    files.retain(|name| name.ends_with(".json"));
    files.sort();
    let system = |name: String| {
        let text = std::fs::read_to_string(&name).unwrap();
        match parse_problem_file(&text) {
            Ok(ProblemFile::General(system)) if Sheet::of(&system).is_some() => {
                Some((name, system))
            }
            _ => None,
        }
    };
    files.into_iter().filter_map(system).collect()
}

/// Walks through a general problem, each step shown, and looks at all that can be seen on the way.
fn walk_general(system: &System, onlooker: &mut Onlooker, count: &mut Count) {
    let Ok(mut session) = Session::start_general(system, Words::english()) else {
        return;
    };
    let given = Sheet::of(system).map_or_else(Vec::new, |sheet| sheet.labelled());
    for _ in 0..80 {
        for sight in onlooker.look(&session) {
            count.see(&given, &sight);
        }
        if session.view().course != Course::On {
            return;
        }
        session.submit("show");
    }
    panic!("{} does not end", count.name);
}

/// What was counted.
#[derive(Default)]
struct Count {
    print: bool,
    /// The problem being walked through.
    name: String,
    diagrams: usize,
    labels: usize,
    beside: usize,
    /// By screen and kind.
    flaws: BTreeMap<(usize, &'static str, String), usize>,
}

impl Count {
    fn see(&mut self, given: &[String], sight: &Sight) {
        self.diagrams += 1;
        self.labels += sight.scene.labels.len();
        self.beside += sight.picture.legend.len();
        let unicode = SCREENS[sight.screen].2;
        let mut found: Vec<(&'static str, String)> = flaws(&sight.scene, &sight.picture, unicode)
            .iter()
            .map(|flaw| (kind(flaw), format!("{flaw:?}")))
            .collect();
        let missing = missing(given, sight, unicode);
        found.extend(missing.into_iter().map(|text| ("missing", text)));
        if !sight.whole {
            found.push(("missing", "legend cut off".to_owned()));
        }
        for (kind, told) in &found {
            let name = told.split('(').next().unwrap_or_default().to_owned();
            *(self.flaws.entry((sight.screen, kind, name))).or_insert(0) += 1;
        }
        if self.print && !found.is_empty() {
            let (columns, rows, _) = SCREENS[sight.screen];
            println!("{} {columns}x{rows} {found:?}", self.name);
            println!("{}\n", sight.picture.lines().join("\n"));
        }
    }

    fn tell(&self, problems: u64) {
        println!(
            "{problems} problems, {} diagrams, {} labels, {} of them in a legend",
            self.diagrams, self.labels, self.beside
        );
        for kind in ["overlapping or cut", "missing", "other"] {
            let all = self
                .flaws
                .iter()
                .filter(|((_, known, _), _)| *known == kind);
            println!(
                "{kind}: {}",
                all.clone().map(|(_, times)| times).sum::<usize>()
            );
            for ((screen, _, name), times) in all {
                let (columns, rows, unicode) = SCREENS[*screen];
                let letters = if unicode { "" } else { " ASCII" };
                println!("  {columns}x{rows}{letters}: {name} {times}");
            }
        }
    }
}

/// Which of the three figures a flaw counts towards.
fn kind(flaw: &Flaw) -> &'static str {
    match flaw {
        Flaw::Cut(_)
        | Flaw::DrawnOver(_)
        | Flaw::Covers(_)
        | Flaw::CoversLine(_)
        | Flaw::RunsInto(..)
        | Flaw::Touches(_) => "overlapping or cut",
        Flaw::Lost(_) => "missing",
        _ => "other",
    }
}

/// Forces, asked angles, components and distances of the marks, and given lengths and angles of
/// the scene, that stand neither in the picture nor in its legend.
fn missing(given: &[String], sight: &Sight, unicode: bool) -> Vec<String> {
    let marks = &sight.marks;
    let shown = |text: &str| match unicode {
        true => text.to_owned(),
        false => spelled(text),
    };
    let told: Vec<&String> = (sight.picture.labels.iter().map(|label| &label.text))
        .chain(sight.picture.legend.iter().map(|entry| &entry.text))
        .collect();
    let is_told = |text: &String| {
        let wanted = shown(text);
        // An unknown direction has a question mark; the value of an angle stands among the names.
        let open = format!("{wanted} ?");
        let name = shown(text.split(' ').next().unwrap_or_default());
        told.iter()
            // Where an angle is a given one too, one arc bears both names.
            .any(|told| {
                **told == wanted || **told == open || told.split(" = ").any(|part| *part == name)
            })
    };
    let mut wanted = demanded(marks);
    if marks.stage == Stage::Scene || marks.site {
        wanted.extend(given.iter().cloned());
    }
    wanted.retain(|text| !is_told(text));
    wanted
}

/// The given lengths and angles of a lesson's problem, as they stand in its drawing.
fn given(problem: &Problem) -> Vec<String> {
    let kinds = [Dimension::LENGTH, Dimension::ANGLE];
    let givens = problem.givens().iter();
    givens
        .filter(|given| kinds.contains(&given.dimension))
        .map(|given| format!("{} = {}", given.symbol, given.written))
        .collect()
}

/// The labels that the marks ask for.
fn demanded(marks: &Marks) -> Vec<String> {
    if let Some(lit) = &marks.triangle {
        let force = marks.forces.iter().find(|mark| mark.force == lit.force);
        let own = [&lit.along, &lit.across, &lit.angle].into_iter().cloned();
        let sides = force.map(|mark| mark.label.clone()).into_iter().chain(own);
        return sides.filter(|text| !text.is_empty()).collect();
    }
    let parts = match marks.stage {
        Stage::Components | Stage::Turning => &marks.components[..],
        _ => &[],
    };
    let angles = match marks.stage {
        Stage::Angles | Stage::Components => &marks.angles[..],
        _ => &[],
    };
    let whole =
        (marks.forces.iter()).filter(|mark| parts.iter().all(|part| part.force != mark.force));
    (whole.map(|mark| &mark.label))
        .chain(parts.iter().map(|mark| &mark.label))
        .chain(angles.iter().map(|mark| &mark.label))
        .chain(marks.distances.iter().map(|mark| &mark.label))
        .cloned()
        .collect()
}

/// Walks through a problem with right lines, the forces named one by one in an order that the
/// seed turns, and looks at all that can be seen on the way, also after two hints.
fn walk(problem: &Problem, seed: u64, onlooker: &mut Onlooker, count: &mut Count) {
    let mut session = Session::start(problem.clone(), None, Words::english()).unwrap();
    let mut look = |session: &Session| {
        for sight in onlooker.look(session) {
            count.see(&given(problem), &sight);
        }
    };
    look(&session);
    let sampling = Sampling::of(problem);
    for line in naming(problem, session.key(), &sampling, seed) {
        session.submit(&line);
        look(&session);
    }
    for _ in 0..60 {
        let Some(asked) = asked(&session) else { return };
        let mut hinted = session.clone();
        hinted.submit("hint");
        hinted.submit("hint");
        look(&hinted);
        let line = right_line(problem, session.key(), asked, &sampling);
        session.submit(&line.map_or_else(|| "skip".to_owned(), |line| line.expression));
        look(&session);
    }
    panic!("{} does not end", problem.title());
}

/// A line for each force.
fn naming(
    problem: &Problem,
    key: &leverwright::key::Key,
    sampling: &Sampling,
    seed: u64,
) -> Vec<String> {
    let case = Case {
        problem,
        key,
        sampling,
        own: Pins::default(),
    };
    let words = Words::english();
    let mut lines: Vec<String> = (problem.forces().iter())
        .map(|force| force_words(&words, &case, force.id))
        .collect();
    let turned = seed as usize % lines.len();
    lines.rotate_left(turned);
    if seed.is_multiple_of(2) {
        lines.reverse();
    }
    lines
}

fn asked(session: &Session) -> Option<StepId> {
    let view = session.view();
    let now = |step: &leverwright::session::StepView| step.progress == Progress::Now;
    let index = view.steps.iter().position(now)?;
    session.key().asked().nth(index).map(|step| step.id)
}
