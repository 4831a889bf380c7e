//! The house rules, kept by reading the source. Each rule is a function from source to faults,
//! and each is tried on source that breaks it.

mod source;

use leverwright::mistakes::CATALOGUE;
use leverwright::text::{Language, Words};
use source::{code, quoted, room, root, sources, uses, without_tests};
use std::collections::{BTreeMap, BTreeSet};
use std::fs;

/// Which rooms a room may use. A room stands below everything that it uses: the list is read from
/// top to bottom, may only name rooms above, and names no room that is not used.
const EDGES: &[(&str, &str)] = &[
    ("plane", ""),
    ("text", ""),
    ("units", ""),
    ("problem", "plane text units"),
    ("system", "plane text units problem"),
    ("reading", "text units"),
    ("sketch", "plane text units problem system"),
    ("statics", "plane units problem system"),
    ("key", "plane text units problem"),
    ("working", "plane text units problem system statics key"),
    ("judge", "plane text units problem reading key"),
    ("mistakes", "units problem key"),
    ("diagnosis", "units key judge mistakes"),
    ("lesson", "text units problem system"),
    ("draw", "text units problem statics key mistakes lesson"),
    ("builder", "text units problem statics"),
    ("hint", "text units problem sketch key mistakes"),
    (
        "session",
        "text units problem system reading sketch key working judge mistakes diagnosis hint",
    ),
    ("record", ""),
    ("store", "text record"),
    ("practice", "text problem session record"),
    ("plain", "text units sketch builder session practice"),
    ("screen", "text problem sketch builder session practice"),
    (
        "cli",
        "text units problem system sketch statics key working lesson draw hint session record store \
         practice plain screen",
    ),
];

/// Words that may stand only in some places: a folder (ending with `/`), or a file.
const PLACES: &[(&str, &[&str])] = &[
    ("meval", &["reading/grammar.rs"]),
    ("ratatui", &["screen/"]),
    ("crossterm", &["screen/"]),
    ("tui_input", &["screen/"]),
    ("signal_hook", &["screen/"]),
    ("clap", &["cli/"]),
    ("std::fs", &["store/", "cli/"]),
    ("std::env", &["cli/", "screen/"]),
    ("std::process", &["store/", "screen/", "cli/", "main.rs"]),
    ("jiff", &["store/"]),
    ("SystemTime", &["store/", "cli/"]),
    ("etcetera", &["store/"]),
    ("rand::", &["draw/"]),
    (
        "serde",
        &[
            "record/file.rs",
            "store/learner.rs",
            "store/settings.rs",
            "lesson/write.rs",
            "lesson/system_write.rs",
            "cli/json.rs",
            "text/words.rs",
        ],
    ),
    ("HashMap", &[]),
    ("HashSet", &[]),
    ("print!(", &[]),
    ("println!(", &[]),
    ("dbg!(", &[]),
    ("todo!(", &[]),
    ("unimplemented!(", &[]),
    ("unreachable!(", &[]),
    ("panic!(", &[]),
    (".unwrap()", &[]),
    (".expect(", &[]),
    ("crate::{", &[]),
    ("unsafe ", &[]),
];

/// The longest file, in lines.
const LONGEST: usize = 600;

/// Words that belong to no finished program, or would cite where the job came from.
const FORBIDDEN: &[&str] = &["TODO", "FIXME", "XXX", "HACK", "recording", "video"];

fn allowed(room: &str) -> Option<Vec<&'static str>> {
    EDGES
        .iter()
        .find(|(known, _)| *known == room)
        .map(|(_, above)| above.split_whitespace().collect())
}

/// Uses of rooms that the map does not allow.
fn wrong_edges(name: &str, text: &str) -> Vec<String> {
    let Some(room) = room(name) else {
        return Vec::new();
    };
    let Some(above) = allowed(room) else {
        return vec![format!("{name}: the room {room} is not on the map")];
    };
    uses(&code(text))
        .into_iter()
        .filter(|used| used != room && allowed(used).is_some() && !above.contains(&used.as_str()))
        .map(|used| format!("{name} may not use {used}"))
        .collect()
}

/// Words that stand where they may not.
fn misplaced(name: &str, text: &str) -> Vec<String> {
    if name != "main.rs" && room(name).is_none() {
        return Vec::new();
    }
    let code = code(text);
    PLACES
        .iter()
        .filter(|(word, places)| {
            let here = places.iter().any(|place| name.starts_with(place));
            !here && code.contains(word)
        })
        .map(|(word, _)| format!("{name} has {word}"))
        .collect()
}

/// What is wrong with a file as a text.
fn unreadable(name: &str, text: &str) -> Vec<String> {
    let mut faults = Vec::new();
    if !text.starts_with("//! ") {
        faults.push(format!("{name} does not open with //!"));
    }
    let lines = text.lines().count();
    if lines > LONGEST {
        faults.push(format!("{name} has {lines} lines"));
    }
    faults
}

/// Words that may stand nowhere.
fn forbidden(name: &str, text: &str) -> Vec<String> {
    FORBIDDEN
        .iter()
        .filter(|word| text.contains(**word))
        .map(|word| format!("{name} has {word}"))
        .collect()
}

/// Keys of words that the source says and the catalogue lacks.
fn keys_without_words(name: &str, text: &str, words: &BTreeMap<String, String>) -> Vec<String> {
    keys_said(text, words)
        .into_iter()
        .filter(|key| {
            let stem = format!("{key}.");
            !words.contains_key(*key) && !words.keys().any(|known| known.starts_with(&stem))
        })
        .map(|key| format!("{name} says {key}, which has no words"))
        .collect()
}

/// What looks like a key of words: a known first part, a dot, small letters.
fn keys_said<'t>(text: &'t str, words: &BTreeMap<String, String>) -> Vec<&'t str> {
    let first: BTreeSet<&str> = words
        .keys()
        .filter_map(|key| key.split('.').next())
        .collect();
    let is_key = |said: &str| {
        let small = |c: char| c.is_ascii_lowercase() || matches!(c, '.' | '-');
        said.split_once('.').is_some_and(|(part, rest)| {
            first.contains(part) && !rest.is_empty() && rest.chars().all(small)
        }) && !said.ends_with('.')
            && !said.ends_with(".rs")
            && !said.ends_with(".json")
    };
    without_tests(text)
        .into_iter()
        .filter(|line| !line.trim_start().starts_with("//"))
        .flat_map(quoted)
        .filter(|said| is_key(said))
        .collect()
}

/// True if a key of words is said somewhere: in full, or by a beginning that the source completes.
fn is_said(key: &str, said: &BTreeSet<&str>) -> bool {
    if let Some(rest) = key.strip_prefix("mistake.") {
        return CATALOGUE.iter().any(|mistake| {
            rest.strip_prefix(mistake.id).is_some_and(|part| {
                matches!(
                    part,
                    ".name" | ".thought" | ".thought-part" | ".thought-all"
                )
            })
        });
    }
    if let Some(rest) = key.strip_prefix("family.") {
        return CATALOGUE.iter().any(|mistake| {
            rest.strip_prefix(mistake.family)
                .is_some_and(|part| matches!(part, ".look" | ".place" | ".place-by-axes" | ".name"))
        });
    }
    said.iter().any(|said| {
        let open = said.split('{').next().unwrap_or_default();
        *said == key
            || said.contains('{') && open.contains('.') && key.starts_with(open)
            || said.contains('.')
                && key
                    .strip_prefix(said)
                    .is_some_and(|rest| rest.starts_with('.'))
    })
}

fn english() -> BTreeMap<String, String> {
    words_of("en")
}

fn words_of(language: &str) -> BTreeMap<String, String> {
    let path = root().join(format!("src/text/words/{language}.json"));
    serde_json::from_str(&fs::read_to_string(path).unwrap()).unwrap()
}

/// Every fault that a rule finds in the source.
fn faults(rule: impl Fn(&str, &str) -> Vec<String>) -> Vec<String> {
    let sources = sources();
    assert!(sources.len() > 150, "only {} files", sources.len());
    sources
        .iter()
        .flat_map(|(name, text)| rule(name, text))
        .collect()
}

fn none() -> Vec<String> {
    Vec::new()
}

#[test]
fn rooms_use_only_what_stands_above_them() {
    for (index, (room, above)) in EDGES.iter().enumerate() {
        for other in above.split_whitespace() {
            let place = EDGES.iter().position(|(known, _)| *known == other);
            assert!(
                place.is_some_and(|place| place < index),
                "{room} uses {other}"
            );
        }
    }
    assert_eq!(faults(wrong_edges), none());
}

#[test]
fn the_map_names_no_use_that_is_not_made() {
    let mut made: BTreeSet<(String, String)> = BTreeSet::new();
    for (name, text) in sources() {
        if let Some(room) = room(&name) {
            made.extend(
                uses(&code(&text))
                    .into_iter()
                    .map(|used| (room.to_owned(), used)),
            );
        }
    }
    for (room, above) in EDGES {
        for other in above.split_whitespace() {
            let edge = (room.to_string(), other.to_owned());
            assert!(
                made.contains(&edge),
                "{room} does not use {other}: take it off the map"
            );
        }
    }
}

/// The list of rooms at the top of the library is read in the order of the map.
#[test]
fn the_library_opens_with_the_rooms_in_reading_order() {
    let library = fs::read_to_string(root().join("src/lib.rs")).unwrap();
    let rooms: Vec<&str> = library
        .lines()
        .filter_map(|line| line.strip_prefix("pub mod ")?.strip_suffix(';'))
        .collect();
    let map: Vec<&str> = EDGES.iter().map(|(room, _)| *room).collect();
    assert_eq!(rooms, map);
}

#[test]
fn the_outside_stays_at_the_edges() {
    assert_eq!(faults(misplaced), none());
}

#[test]
fn every_file_says_what_it_is_and_stays_readable() {
    assert_eq!(faults(unreadable), none());
}

#[test]
fn nothing_forbidden_is_written() {
    assert_eq!(faults(forbidden), none());
    for page in ["README.md", "DEVELOPERS.md", "lessons/README.md"] {
        let text = fs::read_to_string(root().join(page)).unwrap();
        assert_eq!(forbidden(page, &text), none());
    }
}

#[test]
fn every_key_that_is_said_has_words_and_every_word_is_said() {
    let words = english();
    assert_eq!(
        faults(|name, text| keys_without_words(name, text, &words)),
        none()
    );
    let sources = sources();
    let codes: Vec<String> = sources.iter().map(|(_, text)| code(text)).collect();
    let said: BTreeSet<&str> = codes.iter().flat_map(|code| quoted(code)).collect();
    let silent: Vec<&String> = words.keys().filter(|key| !is_said(key, &said)).collect();
    assert_eq!(silent, Vec::<&String>::new());
    let counted: usize = codes.iter().map(|code| keys_said(code, &words).len()).sum();
    assert!(
        counted > 100,
        "only {counted} keys were found in the source"
    );
}

#[test]
fn every_mistake_has_its_name_its_thought_and_its_hints() {
    let words = Words::english();
    for mistake in CATALOGUE {
        for key in [
            format!("mistake.{}.name", mistake.id),
            format!("mistake.{}.thought", mistake.id),
            format!("family.{}.look", mistake.family),
            format!("family.{}.place", mistake.family),
        ] {
            assert!(words.has(&key), "{key} has no words");
        }
    }
}

#[test]
fn sentences_are_calm() {
    for language in Language::all() {
        for (key, sentence) in words_of(language.tag()) {
            assert!(!sentence.contains('!'), "{key}: {sentence}");
        }
    }
    for entry in fs::read_dir(root().join("lessons")).unwrap() {
        let path = entry.unwrap().path();
        if path.extension().is_some_and(|ending| ending == "json") {
            let text = fs::read_to_string(&path).unwrap();
            assert!(!text.contains('!'), "{}", path.display());
        }
    }
}

#[test]
fn each_rule_sees_what_breaks_it() {
    let use_of_key = "//! A.\nuse crate::key::Key;\n";
    assert_eq!(
        wrong_edges("reading/a.rs", use_of_key),
        ["reading/a.rs may not use key"]
    );
    assert_eq!(wrong_edges("judge/a.rs", use_of_key), none());
    for tests in [
        "reading/tests.rs",
        "reading/tests/a.rs",
        "reading/a/tests.rs",
    ] {
        assert_eq!(wrong_edges(tests, use_of_key), none());
    }
    assert_eq!(wrong_edges("reading/a_tests.rs", use_of_key).len(), 1);
    let told =
        "//! [`crate::key`]\n// crate::key\n#[cfg(test)]\nmod tests { use crate::key::Key; }\n";
    assert_eq!(wrong_edges("reading/a.rs", told), none());
    assert_eq!(wrong_edges("attic/a.rs", "//! A.\n").len(), 1);
    for hidden in [
        "mod tests;",
        "#[allow(dead_code)]\nmod tests {\n    use a;\n}",
    ] {
        let behind = format!("//! A.\n#[cfg(test)]\n{hidden}\nuse crate::key::Key;\n");
        assert_eq!(wrong_edges("reading/a.rs", &behind).len(), 1, "{hidden}");
        let inside = hidden.replace("use a", "use crate::key::Key");
        let inside = format!("//! A.\n#[cfg(test)]\n{inside}\n");
        assert_eq!(wrong_edges("reading/a.rs", &inside), none());
    }

    for (word, _) in PLACES {
        let text = format!("//! A.\nfn a() {{ {word} }}\n");
        assert_ne!(misplaced("plane/a.rs", &text), none(), "{word}");
        assert_eq!(
            misplaced("plane/a.rs", &format!("// {word}\n")),
            none(),
            "{word}"
        );
    }
    assert_eq!(misplaced("reading/grammar.rs", "use meval::Expr;"), none());
    assert_eq!(misplaced("reading/mod.rs", "use meval::Expr;").len(), 1);
    assert_eq!(misplaced("plane/a.rs", "let a = b.unwrap_or(c);"), none());

    assert_eq!(unreadable("plane/a.rs", "use std::fmt;\n").len(), 1);
    assert_eq!(
        unreadable("plane/a.rs", &format!("//! A.\n{}", "\n".repeat(LONGEST))).len(),
        1
    );
    assert_eq!(unreadable("plane/a.rs", "//! A.\n"), none());

    for word in FORBIDDEN {
        assert_eq!(forbidden("plane/a.rs", &format!("// {word}")).len(), 1);
    }
    assert_eq!(forbidden("plane/a.rs", "// record"), none());
}

#[test]
fn the_rules_about_words_see_what_breaks_them() {
    let words: BTreeMap<String, String> = [("talk.empty", "…"), ("title.weight.own", "…")]
        .map(|(key, sentence)| (key.to_owned(), sentence.to_owned()))
        .into();
    let found = |text: &str| keys_without_words("a.rs", text, &words).len();
    assert_eq!(found("say(\"talk.empty\")"), 0);
    assert_eq!(found("say(\"talk.gone\")"), 1);
    assert_eq!(found("say(\"title.weight\")"), 0);
    assert_eq!(found("// say(\"talk.gone\")"), 0);
    assert_eq!(found("open(\"talk.json\")"), 0);

    let said: BTreeSet<&str> = ["talk.empty", "hint.{}.look", "title.weight"].into();
    for key in ["talk.empty", "hint.arm.look", "title.weight.own"] {
        assert!(is_said(key, &said), "{key}");
    }
    for key in [
        "talk.full",
        "title.weights",
        "mistake.no-such.name",
        "family.none.look",
    ] {
        assert!(!is_said(key, &said), "{key}");
    }
    assert!(is_said("mistake.complement.thought", &said));
}
