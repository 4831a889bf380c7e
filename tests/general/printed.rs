//! What `solve` prints is typed back, line by line: who copies a working is right.

use super::{asked, boards, opened};
use assert_cmd::Command;
use leverwright::session::{Session, Sign};

/// The lines of a working, without what heads them; of another true value those that differ stand
/// for themselves, as a learner works with one of them.
fn printed(name: &str) -> Vec<Vec<String>> {
    let file = format!("{}/tests/boards/{name}.json", env!("CARGO_MANIFEST_DIR"));
    let mut command = Command::cargo_bin("leverwright").unwrap();
    let out = command.args(["solve", &file]).output().unwrap();
    let text = String::from_utf8(out.stdout).unwrap();
    let of_one = |text: &str| -> Vec<String> {
        let lines = text
            .lines()
            .filter(|line| line.starts_with("    ") && line.contains('='))
            .filter(|line| !is_drawn(line));
        let lines = lines.map(|line| line.trim().trim_end_matches(',').to_owned());
        lines.collect()
    };
    let workings: Vec<Vec<String>> = text.split(" is as true.").map(of_one).collect();
    let all = workings.iter().all(|lines| lines.len() > 2);
    assert!(all, "{name}: {text}");
    workings
}

/// True for a row of the drawing: in it stand strokes, or labels apart from each other.
fn is_drawn(line: &str) -> bool {
    let stroke = |c: char| ('\u{2500}'..='\u{28ff}').contains(&c);
    line.contains(stroke) || line.trim().contains("   ")
}

/// A printed line without the bracket of words behind it, and the words.
fn without_words(line: &str) -> (&str, &str) {
    let words = |at: &usize| {
        let inside = line[*at..].trim_matches([' ', '(', ')']);
        let is_word = |c: char| c.is_alphabetic() || c == ' ' || c == ',';
        line.ends_with(')') && inside.len() > 1 && inside.chars().all(is_word)
    };
    line.split_at(line.rfind(" (").filter(words).unwrap_or(line.len()))
}

/// What may be typed of a printed line: each side of a chain as the value of its name, the whole of
/// it, and the same with its words.
fn forms(line: &str) -> Vec<String> {
    let (chain, words) = without_words(line);
    let sides: Vec<&str> = chain.split(" = ").collect();
    let links = sides[1..]
        .iter()
        .map(|side| format!("{} = {side}", sides[0]));
    let mut found: Vec<String> = links.filter(|link| link != chain).collect();
    found.push(chain.to_owned());
    if !words.is_empty() {
        found.push(line.to_owned());
    }
    found
}

/// What is said to a line of a working that is not right; of a line with words behind its value
/// also where it is only noted.
fn fault(session: &mut Session, line: &str) -> Option<String> {
    let turn = session.submit(line);
    let worded = !without_words(line).1.is_empty();
    let fine = turn.line.sign == Sign::Right || turn.line.sign == Sign::Noted && !worded;
    (!fine).then(|| format!("{line}: {}", turn.line.message))
}

#[test]
fn every_printed_line_is_right_where_its_step_is_asked() {
    let mut faults = Vec::new();
    let mut ways = 0;
    for (name, _) in boards() {
        for lines in printed(&name) {
            let mut session = opened(&name);
            for form in lines.iter().flat_map(|line| forms(line)) {
                if asked(&session).is_none() {
                    break;
                }
                ways += usize::from(!without_words(&form).1.is_empty());
                let found = fault(&mut session, &form);
                faults.extend(found.map(|found| format!("{name}: {found}")));
            }
        }
    }
    assert_eq!(faults, Vec::<String>::new());
    assert!(ways > 20, "{ways}");
}

#[test]
fn every_printed_line_is_right_in_a_free_working() {
    let mut faults = Vec::new();
    for (name, _) in boards() {
        for lines in printed(&name) {
            let mut session = opened(&name);
            session.submit("freely");
            for form in lines.iter().flat_map(|line| forms(line)) {
                let found = fault(&mut session, &form);
                faults.extend(found.map(|found| format!("{name}: {found}")));
            }
        }
    }
    assert_eq!(faults, Vec::<String>::new());
}

/// By hand: Hx of these wires acts to the left, and 172 N to the right is wrong, minus or not.
#[test]
fn a_minus_and_a_word_may_say_the_same_and_nothing_false() {
    for (line, sign) in [
        ("Hx = -172 N (to the left)", Sign::Right),
        ("Hx = -172 N to the left", Sign::Right),
        ("Hx = 172 N (to the left)", Sign::Right),
        ("Hx = 172 N (to the right)", Sign::Wrong),
        ("Hx = -150 N (to the left)", Sign::Wrong),
        ("Hy = -73.7 N (downwards)", Sign::Noted),
        ("Hy = -73.7 N (upwards)", Sign::Wrong),
        ("Hy = 73.7 N (downwards)", Sign::Wrong),
    ] {
        let mut session = opened("two_wires");
        session.submit("freely");
        let turn = session.submit(line);
        assert_eq!(turn.line.sign, sign, "{line}: {}", turn.line.message);
    }
    for (line, sign) in [
        ("S = -4170 N (the other way along its line)", Sign::Right),
        ("S = 4170 N (the other way along its line)", Sign::Unclear),
        ("S = -3500 N (the other way along its line)", Sign::Wrong),
    ] {
        let mut session = opened("jib");
        session.submit("freely");
        let turn = session.submit(line);
        assert_eq!(turn.line.sign, sign, "{line}: {}", turn.line.message);
    }
    for (line, sign) in [
        (
            "ψH = 10.8° (below the horizontal, to the left)",
            Sign::Right,
        ),
        (
            "ψH = 10.8° (above the horizontal, to the left)",
            Sign::Wrong,
        ),
        (
            "ψH = 10.8° (below the horizontal, to the right)",
            Sign::Wrong,
        ),
    ] {
        let mut session = opened("jib");
        for value in ["S = -4170 N", "Hx = -3330 N", "Hy = -637 N"] {
            session.submit(value);
        }
        let turn = session.submit(line);
        assert_eq!(turn.line.sign, sign, "{line}: {}", turn.line.message);
    }
}
