//! The thoughts that may have led to an answer or to the lines of a working.

use super::args::{Arguments, Diagnose};
use super::class;
use super::json;
use super::library::{Any, Library, read_file};
use super::{Trouble, shown};
use crate::session::{Ranked, Session, Sign, Speaks, Thought};
use crate::system::System;
use crate::text::{Slot, Words, printable};
use crate::working::why;
use std::io::{Read, Write, stdin, stdout};
use std::path::Path;

/// The longest working that is read, in bytes.
const LONGEST_WORKING: u64 = 1 << 20;

/// Prints what may lie behind an answer, or behind each line of a working.
pub(super) fn run(arguments: &Arguments, wishes: &Diagnose, words: &Words) -> Result<(), Trouble> {
    let class = class::found(arguments, words)?;
    let mut library = Library::open(arguments.lessons.as_deref(), class, words);
    if !library.faults.is_empty() {
        return Err(Trouble::Input(library.faults));
    }
    if wishes.problem == "-" && wishes.working.as_deref() == Some(Path::new("-")) {
        return Err(Trouble::Use(words.word("cli.diagnose.two-inputs")));
    }
    let any = library.find_any(&wishes.problem, wishes.seed, 1, words);
    if let (true, Err(Trouble::File(_, faults))) = (wishes.json, &any) {
        writeln!(stdout().lock(), "{}", json::faulty(faults))?;
    }
    let (mut session, code) = opened(any?, words)?;
    session.ask_of_answers(library.class.asking);
    let text = match &wishes.working {
        Some(path) => {
            let lines = working(path, words)?;
            let ranked = session.thoughts_in(&lines);
            let lines: Vec<_> = lines.iter().zip(&ranked).collect();
            match wishes.json {
                true => json::diagnosed(code.as_deref(), &lines),
                false => shown(&told_working(&lines, words), words),
            }
        }
        None => {
            let step = match &wishes.step {
                Some(name) => session.step_called(name),
                None => session.main_step(),
            };
            let Some(step) = step else {
                return Err(Trouble::Use(no_step(&session, wishes, words)));
            };
            let answer = wishes.answer.clone().unwrap_or_default();
            let ranked = session.thoughts_behind(step, &answer);
            match wishes.json {
                true => json::diagnosed(code.as_deref(), &[(&answer, &ranked)]),
                false => shown(&told_answer(&answer, &ranked, words), words),
            }
        }
    };
    let mut output = stdout().lock();
    output.write_all(text.as_bytes())?;
    output.flush()?;
    Ok(())
}

/// A session at a problem of either kind, and its code.
fn opened(any: Any, words: &Words) -> Result<(Session, Option<String>), Trouble> {
    let refused = |why: String| {
        let slots = [("why", Slot::Word(why))];
        Trouble::Input(vec![words.say("cli.no-walk", &slots).to_string()])
    };
    let general = |system: &System| {
        Session::start_general(system, words.clone())
            .map_err(|trouble| refused(why(&trouble, words)))
    };
    match any {
        Any::General(system) => Ok((general(&system)?, None)),
        Any::Guided(found) => {
            let code = found.origin.map(|origin| origin.code);
            let sister = found.sister;
            match Session::start(found.problem.clone(), sister, words.clone()) {
                Ok(session) => Ok((session, code)),
                Err(_) => Ok((general(&System::of(&found.problem))?, code)),
            }
        }
    }
}

/// The lines of a working, from a file or from standard input.
fn working(path: &Path, words: &Words) -> Result<Vec<String>, Trouble> {
    let text = if path == Path::new("-") {
        let mut text = String::new();
        let read = stdin().take(LONGEST_WORKING).read_to_string(&mut text);
        read.map_err(|error| {
            let slots = [
                ("place", Slot::Value("-".to_owned())),
                ("system", Slot::Word(error.to_string())),
            ];
            Trouble::Input(vec![words.say("cli.unreadable", &slots).to_string()])
        })?;
        text
    } else {
        read_file(words, path).map_err(|line| Trouble::Input(vec![line]))?
    };
    let lines = text.lines().map(str::trim).filter(|line| !line.is_empty());
    let lines: Vec<String> = lines.map(str::to_owned).collect();
    match lines.is_empty() {
        true => Err(Trouble::Input(vec![words.word("cli.diagnose.no-line")])),
        false => Ok(lines),
    }
}

fn no_step(session: &Session, wishes: &Diagnose, words: &Words) -> String {
    let slots = [
        (
            "name",
            Slot::Value(printable(wishes.step.as_deref().unwrap_or_default())),
        ),
        ("steps", Slot::Word(session.steps_to_call().join(", "))),
    ];
    words.say("cli.diagnose.no-step", &slots).to_string()
}

fn told_answer(answer: &str, ranked: &Ranked, words: &Words) -> String {
    let slots = [
        ("step", Slot::Word(ranked.step.1.clone())),
        ("answer", Slot::Value(printable(answer))),
        ("verdict", Slot::Word(ranked.verdict.clone())),
    ];
    let head = words.say("diagnose.answer", &slots);
    format!("{head}\n{}", body(ranked, words))
}

fn told_working(lines: &[(&String, &Ranked)], words: &Words) -> String {
    let mut text = String::new();
    for (typed, ranked) in lines {
        let slots = [
            (
                "line",
                Slot::Word(
                    ranked
                        .line
                        .map_or_else(String::new, |line| line.to_string()),
                ),
            ),
            ("typed", Slot::Value(printable(typed))),
            ("verdict", Slot::Word(ranked.verdict.clone())),
        ];
        let key = match ranked.line {
            Some(_) => "diagnose.line",
            None => "diagnose.order",
        };
        text.push_str(&format!("{}\n", words.say(key, &slots)));
        text.push_str(&body(ranked, words));
    }
    text
}

/// What stands beneath a line: what is said of it, its thoughts, and what to ask next.
fn body(ranked: &Ranked, words: &Words) -> String {
    let mut text = String::new();
    let is_wrong = matches!(ranked.sign, Sign::Wrong | Sign::Incomplete);
    // Of a slip the tutor's own words say more than its name.
    let slip = ranked
        .thoughts
        .first()
        .is_some_and(|first| first.flat && first.family.is_none());
    let silent = is_wrong && !slip && ranked.ask.is_some();
    if !silent && !ranked.said.is_empty() {
        text.push_str(&format!("   {}\n", ranked.said));
    }
    if ranked.together {
        text.push_str(&format!("   {}\n", words.word("diagnose.together")));
    }
    for (at, thought) in ranked.thoughts.iter().enumerate() {
        text.push_str(&thought_told(at + 1, thought, words));
    }
    let is_open = is_wrong || !ranked.thoughts.is_empty();
    if is_open && !ranked.thoughts.iter().any(|thought| thought.flat) {
        let slots = [("share", Slot::Value(per_cent(ranked.other)))];
        let key = match ranked.thoughts.is_empty() {
            true => "diagnose.none",
            false => "diagnose.other",
        };
        text.push_str(&format!("   {}\n", words.say(key, &slots)));
    }
    if let Some(ask) = &ranked.ask {
        let slots = [("question", Slot::Prose(ask.question.clone()))];
        text.push_str(&format!("   {}\n", words.say("diagnose.ask", &slots)));
        for (value, places) in &ask.speaks {
            let places: Vec<String> = places.iter().map(|at| (at + 1).to_string()).collect();
            let slots = [
                ("value", Slot::Value(value.clone())),
                ("thoughts", Slot::Word(places.join(", "))),
            ];
            let told = words.say("diagnose.ask.speaks", &slots);
            text.push_str(&format!("      {told}\n"));
        }
    }
    text
}

/// A share of what is not proved, which is never all nor nothing.
fn per_cent(share: f64) -> String {
    format!("{:.0} %", (100.0 * share).clamp(1.0, 99.0))
}

fn thought_told(place: usize, thought: &Thought, words: &Words) -> String {
    let slots = [
        ("name", Slot::Word(thought.name.clone())),
        ("share", Slot::Value(per_cent(thought.share))),
    ];
    let key = match thought.flat {
        true => "diagnose.flat",
        false => "diagnose.perhaps",
    };
    let mut text = format!("{place}. {}\n", words.say(key, &slots));
    let mut tell = |key: &str, slots: &[(&str, Slot)]| {
        text.push_str(&format!("   {}\n", words.say(key, slots)));
    };
    if let Some(family) = &thought.family_name {
        tell("diagnose.family", &[("family", Slot::Word(family.clone()))]);
    }
    if let Some((_, title)) = &thought.made_at {
        let mut slots = vec![("step", Slot::Word(title.clone()))];
        if let Some(of) = &thought.of {
            slots.push(("of", Slot::Name(of.clone())));
            tell("diagnose.made-of", &slots);
        } else {
            tell("diagnose.made", &slots);
        }
    }
    if let Some((wrong, right)) = &thought.formulas {
        for (key, formulas) in [("diagnose.wrong", wrong), ("diagnose.right", right)] {
            let mut told = vec![formulas.names.clone(), formulas.numbers.clone()];
            told.dedup();
            // A balance has its own equals sign.
            let between = match formulas.names.contains('=') {
                true => ";  ",
                false => " = ",
            };
            tell(key, &[("formula", Slot::Value(told.join(between)))]);
        }
    }
    if let Some(gives) = &thought.gives {
        tell("diagnose.gives", &[("value", Slot::Value(gives.clone()))]);
    }
    let slots = match &thought.speaks {
        Speaks::OwnLines(lines) => {
            let lines: Vec<String> = lines.iter().map(usize::to_string).collect();
            vec![("lines", Slot::Word(lines.join(", ")))]
        }
        _ => Vec::new(),
    };
    tell(speaks_key(&thought.speaks), &slots);
    text
}

fn speaks_key(speaks: &Speaks) -> &'static str {
    match speaks {
        Speaks::Form => "diagnose.speaks.form",
        Speaks::Ratio => "diagnose.speaks.ratio",
        Speaks::Unit => "diagnose.speaks.unit",
        Speaks::Sum => "diagnose.speaks.sum",
        Speaks::OwnLines(lines) if lines.len() == 1 => "diagnose.speaks.own-line",
        Speaks::OwnLines(_) => "diagnose.speaks.own",
        Speaks::Value => "diagnose.speaks.value",
    }
}
