//! Reading the source: files, code without comments and tests, text in quotes.

use std::collections::BTreeSet;
use std::fs;
use std::path::{Path, PathBuf};

/// The folder of the whole project.
pub(super) fn root() -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR"))
}

/// Every Rust file below src/: its path from there, with `/`, and its text.
pub(super) fn sources() -> Vec<(String, String)> {
    let source = root().join("src");
    let mut paths = Vec::new();
    walk(&source, &mut paths);
    paths.sort();
    paths
        .into_iter()
        .map(|path| {
            let name = path.strip_prefix(&source).unwrap().to_string_lossy();
            (name.replace('\\', "/"), fs::read_to_string(&path).unwrap())
        })
        .collect()
}

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

/// The room that a file belongs to; `None` for lib.rs and main.rs, and for files of tests.
pub(super) fn room(name: &str) -> Option<&str> {
    let (room, rest) = name.split_once('/')?;
    let is_test = rest
        .split('/')
        .any(|part| matches!(part, "tests" | "tests.rs"));
    (!is_test).then_some(room)
}

/// The code of a file: no lines of comment, and nothing that is compiled for tests only (an item
/// at the left edge after `#[cfg(test)]`).
pub(super) fn code(text: &str) -> String {
    without_tests(text)
        .into_iter()
        .filter(|line| !line.trim_start().starts_with("//"))
        .collect::<Vec<_>>()
        .join("\n")
}

/// The lines of a file that are not for tests only.
pub(super) fn without_tests(text: &str) -> Vec<&str> {
    let mut kept = Vec::new();
    let mut in_test = false;
    for line in text.lines() {
        if line == "#[cfg(test)]" {
            in_test = true;
        } else if !in_test {
            kept.push(line);
        } else if !line.starts_with([' ', '#']) && line.ends_with([';', '}']) {
            // The end of the item: `mod tests;`, or the bracket that closes it at the left edge.
            in_test = false;
        }
    }
    kept
}

/// The rooms that a piece of code uses.
pub(super) fn uses(code: &str) -> BTreeSet<String> {
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

/// What stands between double quotes, line by line.
pub(super) fn quoted(code: &str) -> Vec<&str> {
    code.lines()
        .flat_map(|line| line.split('"').skip(1).step_by(2))
        .collect()
}
