//! How long a learner waits for a verdict: `cargo bench --bench verdict`.
//!
//! Lines of the mast lesson are entered into a session, and each turn is written to a journal as
//! the program does, with and without the flush to the disk; then the hand-written corpus, each
//! working as one's own. Beside both stands what meval alone takes to read and evaluate the same
//! lines, where it can.
#![allow(clippy::print_stdout, clippy::unwrap_used, missing_docs)]

use leverwright::draw::{draw, parse_code};
use leverwright::key::{Sampling, derive};
use leverwright::lesson::{built_in, parse_system};
use leverwright::mistakes::{instances, right_line, typed_line};
use leverwright::record::{Entry, Line, Verdict};
use leverwright::session::Session;
use leverwright::store::{Flush, Store, now};
use leverwright::text::Words;
use serde_json::Value;
use std::hint::black_box;
use std::path::Path;
use std::time::{Duration, Instant};

fn main() {
    let lessons = built_in();
    let mast = lessons.iter().find(|lesson| lesson.id() == "mast").unwrap();
    let mut times = Times::default();
    for seed in 1..=4 {
        let problem = draw(mast, seed, "en").unwrap().problem;
        let lines = lines(&problem);
        let mut session = Session::start(problem, None, Words::english()).unwrap();
        for line in lines {
            times.enter(&mut session, line);
        }
    }
    let mut verdicts = times.told("verdict");
    freely();
    for (name, flush) in [
        ("journal, to the system", Flush::ToSystem),
        ("journal, to the disk", Flush::ToDisk),
    ] {
        tell(name, &mut written(flush, &verdicts));
    }
    verdicts.sort();
    println!("slowest:");
    for (time, line) in verdicts.iter().rev().take(5) {
        println!("  {time:>10.1?}  {line}");
    }
}

/// What each line takes, answered and by meval alone.
#[derive(Default)]
struct Times {
    verdicts: Vec<(Duration, String)>,
    alone: Vec<(Duration, String)>,
}

impl Times {
    fn enter(&mut self, session: &mut Session, line: String) {
        let start = Instant::now();
        black_box(session.submit(&line));
        self.verdicts.push((start.elapsed(), line.clone()));
        self.alone.extend(by_meval(line));
    }

    /// Prints both; the answers are given back, the fastest first.
    fn told(mut self, what: &str) -> Vec<(Duration, String)> {
        tell(what, &mut self.verdicts);
        tell("meval alone (lines it can read)", &mut self.alone);
        self.verdicts
    }
}

/// What meval alone takes for a line, where it can read it.
fn by_meval(line: String) -> Option<(Duration, String)> {
    let start = Instant::now();
    let whole: Result<(), meval::Error> = line.split('=').try_for_each(|side| {
        let tree: meval::Expr = side.trim().parse()?;
        black_box(tree.eval()?);
        Ok(())
    });
    whole.ok().map(|()| (start.elapsed(), line))
}

/// The lines of the hand-written corpus, each working in a session of its own.
fn freely() {
    let mut times = Times::default();
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests");
    let read = |path: &Path| std::fs::read_to_string(path).unwrap();
    let files = std::fs::read_dir(folder.join("corpus")).unwrap();
    let mut files: Vec<_> = files.map(|entry| entry.unwrap().path()).collect();
    files.retain(|path| path.extension().is_some_and(|kind| kind == "json"));
    files.sort();
    for file in files {
        let corpus: Value = serde_json::from_str(&read(&file)).unwrap();
        let mut start = match corpus["problem"]["board"].as_str() {
            Some(board) => {
                let file = folder.join("boards").join(format!("{board}.json"));
                let system = parse_system(&read(&file)).unwrap();
                Session::start_general(&system, Words::english()).unwrap()
            }
            None => {
                let (lessons, code) = (built_in(), corpus["problem"]["code"].as_str());
                let (lesson, at) = parse_code(code.unwrap(), &lessons).unwrap();
                let problem = lessons[lesson].problem_at(&at, "en").unwrap();
                Session::start(problem, None, Words::english()).unwrap()
            }
        };
        start.submit("freely");
        for working in corpus["workings"].as_array().unwrap() {
            let mut session = start.clone();
            for line in working["lines"].as_array().unwrap() {
                times.enter(&mut session, line["line"].as_str().unwrap().to_owned());
            }
        }
    }
    let verdicts = times.told("verdict in a free working");
    for (time, line) in verdicts.iter().rev().take(5) {
        println!("  {time:>10.1?}  {line}");
    }
}

/// Right and wrong lines of the whole walk, in order: every wrong line of a step before its right
/// one.
fn lines(problem: &leverwright::problem::Problem) -> Vec<String> {
    let key = derive(problem).unwrap();
    let sampling = Sampling::of(problem);
    let all = instances(problem, &key, &sampling);
    // The forces and the pivot are said in words: passed here.
    let mut lines = vec!["skip".to_owned(), "skip".to_owned()];
    for step in key.asked().map(|step| step.id) {
        let wrong = all
            .iter()
            .filter(|made| made.shows_at == step)
            .filter_map(|made| typed_line(problem, &key, made, &sampling));
        for line in wrong {
            lines.extend(line.number.map(|(number, _)| number));
            lines.push(line.expression);
        }
        if let Some(right) = right_line(problem, &key, step, &sampling) {
            lines.push(right.expression);
        }
    }
    lines
}

/// What it takes to write each line and its verdict to a journal.
fn written(flush: Flush, verdicts: &[(Duration, String)]) -> Vec<(Duration, String)> {
    let folder = tempfile::tempdir().unwrap();
    let store = Store::open(folder.path()).unwrap();
    let learner = store.default_learner().unwrap();
    let mut sitting = store.begin_sitting(&learner, &now(), flush).unwrap();
    verdicts
        .iter()
        .map(|(_, line)| {
            let start = Instant::now();
            let entered = sitting.number(
                &now(),
                Entry::Line(Line {
                    problem: None,
                    text: line.clone(),
                }),
            );
            let verdict = Verdict {
                line: entered.id.clone(),
                truth: "wrong".to_owned(),
                message: "A message of usual length stands here, a sentence or two.".to_owned(),
                ..Verdict::default()
            };
            sitting.append(entered).unwrap();
            let verdict = sitting.number(&now(), Entry::Verdict(verdict));
            sitting.append(verdict).unwrap();
            (start.elapsed(), line.clone())
        })
        .collect()
}

fn tell(what: &str, times: &mut [(Duration, String)]) {
    times.sort();
    let at = |share: f64| times[((times.len() - 1) as f64 * share) as usize].0;
    println!(
        "{what:34} {:5} lines   median {:>10.1?}   99th percentile {:>10.1?}",
        times.len(),
        at(0.5),
        at(0.99)
    );
}
