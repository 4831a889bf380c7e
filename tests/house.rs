//! The house rules, kept by reading the source.

use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::path::{Path, PathBuf};

/// Which rooms a room may use. A room stands below everything that uses it: the list is read from
/// top to bottom and may only name rooms above.
const EDGES: &[(&str, &[&str])] = &[
    ("text", &[]),
    ("units", &[]),
    ("plane", &[]),
    ("problem", &["text", "units", "plane"]),
    ("statics", &["units", "plane", "problem"]),
    ("reading", &["text", "units"]),
    ("sketch", &["text", "units", "plane", "problem"]),
    ("key", &["text", "units", "plane", "problem"]),
    (
        "judge",
        &["text", "units", "plane", "problem", "reading", "key"],
    ),
    ("mistakes", &["units", "problem", "key"]),
    ("diagnosis", &["units", "key", "judge", "mistakes"]),
    ("lesson", &["text", "units", "problem"]),
    (
        "draw",
        &[
            "text", "units", "problem", "statics", "key", "mistakes", "lesson",
        ],
    ),
    (
        "hint",
        &["text", "units", "problem", "sketch", "key", "mistakes"],
    ),
    (
        "session",
        &[
            "text",
            "units",
            "problem",
            "reading",
            "sketch",
            "key",
            "judge",
            "mistakes",
            "diagnosis",
            "hint",
        ],
    ),
    ("record", &[]),
    ("store", &["text", "record"]),
    ("practice", &["text", "problem", "session"]),
    ("plain", &["text", "sketch", "session", "practice"]),
    (
        "screen",
        &["text", "units", "problem", "sketch", "session", "practice"],
    ),
    (
        "cli",
        &[
            "text", "units", "problem", "statics", "sketch", "key", "lesson", "draw", "hint",
            "session", "record", "store", "practice", "plain", "screen",
        ],
    ),
];

fn root() -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR"))
}

/// Every source file: its path below src/, and its text without comments and without tests.
fn sources() -> Vec<(String, String)> {
    fn walk(folder: &Path, found: &mut Vec<PathBuf>) {
        for entry in fs::read_dir(folder).unwrap() {
            let path = entry.unwrap().path();
            if path.is_dir() {
                walk(&path, found);
            } else if path.extension().is_some_and(|ending| ending == "rs") {
                found.push(path);
            }
        }
    }
    let source = root().join("src");
    let mut paths = Vec::new();
    walk(&source, &mut paths);
    paths.sort();
    paths
        .into_iter()
        .map(|path| {
            let name = path
                .strip_prefix(&source)
                .unwrap()
                .to_string_lossy()
                .replace('\\', "/");
            (name, fs::read_to_string(&path).unwrap())
        })
        .collect()
}

fn is_test(name: &str) -> bool {
    name.contains("/tests")
}

/// The code of a file: no comments, nothing behind `#[cfg(test)]` at the left edge.
fn code(text: &str) -> String {
    let upto = text.split("\n#[cfg(test)]\nmod ").next().unwrap_or(text);
    upto.lines()
        .filter(|line| !line.trim_start().starts_with("//"))
        .collect::<Vec<_>>()
        .join("\n")
}

/// The rooms that a piece of code uses.
fn uses(code: &str) -> BTreeSet<String> {
    code.split("crate::")
        .skip(1)
        .filter_map(|after| {
            let room: String = after
                .chars()
                .take_while(|c| c.is_ascii_lowercase())
                .collect();
            (!room.is_empty()).then_some(room)
        })
        .collect()
}

#[test]
fn rooms_use_only_what_stands_before_them() {
    let order: BTreeMap<&str, usize> = EDGES
        .iter()
        .enumerate()
        .map(|(index, (room, _))| (*room, index))
        .collect();
    for (room, allowed) in EDGES {
        for other in *allowed {
            assert!(
                order[other] < order[room],
                "{room} uses {other}, which stands below it"
            );
        }
    }
    for (name, text) in sources()
        .iter()
        .filter(|(name, _)| name.contains('/') && !is_test(name))
    {
        let room = name.split('/').next().unwrap();
        let (_, allowed) = EDGES
            .iter()
            .find(|(known, _)| *known == room)
            .unwrap_or_else(|| panic!("{room} is new"));
        for used in uses(&code(text)) {
            let known = order.contains_key(used.as_str());
            assert!(
                !known || used == room || allowed.contains(&used.as_str()),
                "{name} may not use {used}"
            );
        }
    }
}

#[test]
fn the_checker_sees_a_forbidden_use() {
    assert!(uses(&code("use crate::key::Key;\n")).contains("key"));
    assert!(uses(&code("//! [`crate::key`]\n// crate::key\n")).is_empty());
    assert!(
        uses(&code(
            "fn a() {}\n#[cfg(test)]\nmod tests { use crate::key::Key; }\n"
        ))
        .is_empty()
    );
}

#[test]
fn every_file_says_what_it_is_and_stays_readable() {
    for (name, text) in sources() {
        assert!(text.starts_with("//!"), "{name} does not open with //!");
        assert!(
            text.lines().count() <= 650,
            "{name} has {} lines",
            text.lines().count()
        );
    }
}

#[test]
fn the_outside_stays_at_the_edges() {
    let rules: &[(&str, &[&str])] = &[
        ("meval::", &["reading/grammar.rs"]),
        ("ratatui::", &["screen/"]),
        ("tui_input::", &["screen/"]),
        ("std::fs", &["store/", "cli/"]),
        ("std::env", &["cli/", "screen/"]),
        ("jiff::", &["store/"]),
        ("clap::", &["cli/"]),
        (
            "serde_json::",
            &[
                "record/",
                "store/",
                "cli/json.rs",
                "text/words.rs",
                "lesson/",
            ],
        ),
        ("HashMap", &[]),
        ("println!", &[]),
        ("SystemTime", &["store/", "cli/"]),
        ("todo!", &[]),
        ("unimplemented!", &[]),
        ("dbg!", &[]),
    ];
    for (name, text) in sources().iter().filter(|(name, _)| !is_test(name)) {
        let code = code(text);
        for (word, places) in rules {
            let allowed = places.iter().any(|place| name.starts_with(place));
            assert!(allowed || !code.contains(word), "{name} has {word}");
        }
    }
}

#[test]
fn sentences_are_calm_and_every_key_that_is_said_exists() {
    let words: BTreeMap<String, String> =
        serde_json::from_str(&fs::read_to_string(root().join("src/text/words/en.json")).unwrap())
            .unwrap();
    for (key, sentence) in &words {
        assert!(!sentence.contains('!'), "{key}: {sentence}");
    }
    let prefixes: BTreeSet<&str> = words
        .keys()
        .filter_map(|key| key.split_once('.').map(|(prefix, _)| prefix))
        .collect();
    let mut seen = 0;
    for (name, text) in sources().iter().filter(|(name, _)| !is_test(name)) {
        for literal in code(text).split('"').skip(1).step_by(2) {
            let is_key = literal.split_once('.').is_some_and(|(prefix, rest)| {
                prefixes.contains(prefix)
                    && !rest.is_empty()
                    && rest
                        .chars()
                        .all(|c| c.is_ascii_lowercase() || matches!(c, '.' | '-' | '_'))
                    && !literal.ends_with('.')
            });
            if is_key && !literal.ends_with("rs") && !literal.ends_with("json") {
                seen += 1;
                let stem = |key: &String| {
                    key.strip_prefix(literal)
                        .is_some_and(|rest| rest.starts_with('.'))
                };
                assert!(
                    words.contains_key(literal) || words.keys().any(stem),
                    "{name} says {literal}, which has no words"
                );
            }
        }
    }
    assert!(seen > 100, "only {seen} keys were found in the source");
}

/// Words that would cite where the job came from, or that belong to no finished program.
#[test]
fn nothing_forbidden_is_written() {
    let forbidden = ["the recording", "the video", "FIXME", "XXX"];
    for (name, text) in sources() {
        for word in forbidden {
            assert!(!text.contains(word), "{name} has {word}");
        }
    }
}
