//! The codes that programs are told, held against the list in lessons/README.md.

use std::collections::{BTreeMap, BTreeSet};
use std::path::Path;

/// The files whose `fn code` gives codes, and the one that gives codes of its own.
const CODED: &[&str] = &[
    "src/lesson/fault.rs",
    "src/problem/check.rs",
    "src/statics/unsolvable.rs",
    "src/system/fault.rs",
    "src/working/trouble.rs",
];

fn read(path: &str) -> String {
    std::fs::read_to_string(Path::new(env!("CARGO_MANIFEST_DIR")).join(path)).unwrap()
}

/// Each code with the variants that have it, of one file.
fn codes(path: &str) -> BTreeMap<String, usize> {
    let text = read(path);
    let (_, code) = text.split_once("pub fn code(&self)").unwrap();
    let (code, _) = code.split_once("\n    }\n").unwrap();
    let mut codes = BTreeMap::new();
    for line in code.lines().filter_map(|line| line.split_once("=> \"")) {
        let (code, _) = line.1.split_once('"').unwrap();
        *codes.entry(code.to_owned()).or_insert(0) += 1;
    }
    codes
}

/// The codes in the table of the page.
fn told() -> BTreeSet<String> {
    let page = read("lessons/README.md");
    let (_, table) = page.split_once("| told of | codes |\n").unwrap();
    let (table, _) = table.split_once("\n\n").unwrap();
    let pieces = table.split('`').skip(1).step_by(2);
    pieces.map(str::to_owned).collect()
}

#[test]
fn every_fault_and_every_refusal_has_a_code_that_the_page_lists() {
    let mut known: BTreeSet<String> = BTreeSet::new();
    for path in CODED {
        let codes = codes(path);
        assert!(codes.len() > 7, "{path}: {codes:?}");
        let twice: Vec<_> = codes.iter().filter(|(_, count)| **count > 1).collect();
        assert!(twice.is_empty(), "{path}: {twice:?}");
        known.extend(codes.into_keys());
    }
    let commands = read("src/cli/general.rs");
    let own = commands.split("misuse(\"").skip(1);
    known.extend(own.filter_map(|rest| Some(rest.split_once('"')?.0.to_owned())));
    assert!(read("src/cli/check.rs").contains("\"not-worth-asking\""));
    known.insert("not-worth-asking".to_owned());
    assert_eq!(known, told());
}
