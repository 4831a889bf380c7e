//! What is said of broken files: tests/systems/faults.txt.

use leverwright::lesson::{ProblemFile, parse_problem, parse_problem_file, parse_system};
use std::fmt::Write;

/// A file without a fault, from which the broken ones are made.
pub(super) const GOOD: &str = r#"{
  "leverwright": 1,
  "g": "9.8 m/s^2",
  "system": {
    "bodies": [
      {"name": "beam", "legs": [{"length": "3.0 m", "direction": {"angle": "20 deg", "from": "horizontal", "up": true, "side": "right"}},
                                {"length": "0.5 m", "direction": {"across": "beam", "leg": 0, "left": true}}]},
      {"name": "post", "start": {"on": "beam", "at": "middle"}, "legs": [{"length": {"symbol": "d", "sought": "length"}, "direction": "down"}]}
    ],
    "weights": [{"noun": "beam", "body": "beam", "at": {"on": "beam", "at": "middle"}, "mass": "12 kg"}],
    "loads": [
      {"noun": "lamp", "body": "beam", "at": {"on": "beam", "at": "2.2 m"}, "mass": "4 kg"},
      {"noun": "push", "body": "beam", "at": {"on": "beam", "leg": 1, "at": "tip"}, "force": "30 N", "direction": "left"},
      {"noun": "motor", "body": "beam", "couple": "6 N m", "turns": "clockwise"},
      {"noun": "sand", "body": "beam", "from": "foot", "to": {"fraction": "2/3"}, "first": "15 N/m", "direction": "down"}
    ],
    "ropes": [{"noun": "rope", "ends": [{"body": "beam", "at": {"on": "beam", "at": "tip"}, "direction": {"towards": {"x": "0 m", "y": "2.5 m"}}}]}],
    "holds": [
      {"symbol": "A", "noun": "hinge", "body": "beam", "at": "origin", "kind": "hinge"},
      {"symbol": "B", "noun": "joint", "body": "beam", "by": "post", "at": {"on": "post", "at": "foot"}, "kind": "hinge"},
      {"symbol": "N", "noun": "ground", "body": "post", "at": {"on": "post", "at": "tip"}, "kind": "base", "direction": "up",
       "friction": "as-needed", "width": "0.2 m"}
    ],
    "asked": ["T", {"vertical": "A"}, "sought"],
    "sought": {"given": "d", "from": "0.1 m", "to": "1 m", "when": {"slips": "N", "coefficient": {"symbol": "μ", "is": "0.4"}}},
    "order": ["L", "θ", "L_2", "d", "m_b", "d_1", "m_1", "F_2", "M_3", "q_4", "y", "b", "μ"]
  },
  "text": {
    "title": "The beam",
    "statement": "A beam of {L=} and {m_b}.",
    "meanings": {"L": "length"}
  }
}
"#;

fn faults_after(old: &str, new: &str) -> Vec<String> {
    assert_eq!(GOOD.matches(old).count(), 1, "{old}");
    match parse_problem_file(&GOOD.replace(old, new)) {
        Ok(_) => Vec::new(),
        Err(faults) => super::told(&faults),
    }
}

/// A plate with one fault of each kind; what cannot be drawn is told beside numbers that cannot be
/// read, wherever it does not rest on them.
const PLATE: &str = r#"{"leverwright": 1, "g": "9.8 m/s^2", "system": {
  "bodies": [{"name": "plate", "legs": [{"length": "0.80 m", "direction": "right"}]}],
  "weights": [{"noun": "plate", "body": "plate", "mass": "3.0 kg", "shapes": [
    {"shape": "rectangle", "noun": "sheet", "width": {"same_as": "L"}, "height": "0.50 m"},
    {"shape": "disc", "noun": "hole", "radius": "0.15 m", "x": "0.75 m", "y": "0.25 m", "hole": true},
    {"shape": "rectangle", "noun": "tab", "width": "0.2 m", "height": "0.2 m", "x": "0.1 m", "y": "0.1 m"},
    {"shape": "disc", "noun": "slot", "radius": "RADIUS", "x": "0.2 m", "y": "0.4 m", "hole": true}]}],
  "loads": [{"noun": "lamp", "body": "plate", "at": {"on": "plate", "at": "tip"}, "mass": "MASS"}],
  "ropes": [{"noun": "wire", "ends": [{"body": "plate", "at": {"on": "plate", "at": "middle"}, "direction": "LIFT"}]},
    {"noun": "rope", "ends": [{"body": "plate", "at": {"x": "0.4 m", "y": "0.5 m"}, "direction": {"towards": {"x": "0.4 m", "y": "0.5 m"}}}]}],
  "holds": [{"symbol": "S", "noun": "prop", "body": "plate", "at": {"on": "plate", "at": "PLACE"}, "kind": "push", "direction": "up"}],
  "asked": ["S"]},
 "text": {"title": "x", "statement": "A {L=} plate."}}"#;

#[test]
fn what_cannot_be_drawn_is_told_beside_what_cannot_be_read() {
    let drawn = [
        "system.weights[0].shapes[1]: hole reaches beyond",
        "system.weights[0].shapes[2]: tab overlaps",
        "system.ropes[1]: rope points at the place where it acts",
    ];
    let right = [
        ("RADIUS", "0.05 m"),
        ("MASS", "2 kg"),
        ("LIFT", "up"),
        ("PLACE", "0.7 m"),
    ];
    let wrong = [
        (
            "RADIUS",
            "0.05 kg",
            "system.weights[0].shapes[3].radius: expected a length",
        ),
        ("MASS", "2 m", "system.loads[0].mass: expected a mass"),
        (
            "LIFT",
            "across",
            "system.ropes[0].ends[0].direction: expected a direction",
        ),
        (
            "PLACE",
            "0.9 m",
            "system.holds[0].at.at: this place lies 0.9 m",
        ),
    ];
    for set in 0..1 << wrong.len() {
        let mut file = PLATE.to_owned();
        let mut wanted: Vec<&str> = drawn.to_vec();
        for (index, (name, worse, says)) in wrong.into_iter().enumerate() {
            let bad = set & (1 << index) != 0;
            file = file.replace(name, if bad { worse } else { right[index].1 });
            wanted.extend(bad.then_some(says));
        }
        let faults = parse_system(&file).unwrap_err();
        let told: Vec<String> = faults.iter().map(ToString::to_string).collect();
        assert_eq!(told.len(), wanted.len(), "{set} {told:#?}");
        for says in wanted {
            assert!(
                told.iter().any(|line| line.contains(says)),
                "{says} in {told:#?}"
            );
        }
    }
    // Where the sheet itself cannot be read, nothing is said of what is cut from it.
    let file = right.iter().fold(PLATE.to_owned(), |file, (name, good)| {
        file.replace(name, good)
    });
    let file = file.replace("\"height\": \"0.50 m\"", "\"height\": \"0.50 kg\"");
    let faults = parse_system(&file).unwrap_err();
    assert!(
        faults
            .iter()
            .all(|fault| !fault.path.starts_with("system.weights[0].shapes[1]"))
    );
    assert!(
        faults
            .iter()
            .any(|fault| fault.path.ends_with("shapes[0].height"))
    );
}

/// Changes and what is said of each; `UPDATE=1` writes the file anew, to be read before it is kept.
#[test]
fn every_fault_is_told_with_its_place() {
    let path = concat!(env!("CARGO_MANIFEST_DIR"), "/tests/systems/faults.txt");
    let kept = std::fs::read_to_string(path).unwrap();
    let (mut anew, mut blocks) = (String::new(), 0);
    for block in kept.split("\n\n") {
        let mut lines = block.lines();
        let old = lines.next().and_then(|line| line.strip_prefix("change "));
        let Some(old) = old else {
            write!(anew, "{}\n\n", block.trim_end()).unwrap();
            continue;
        };
        let new = lines.next().and_then(|line| line.strip_prefix("to     "));
        let new = new.unwrap_or_default();
        writeln!(anew, "change {old}\nto     {new}").unwrap();
        let says = faults_after(old, &new.replace('⏎', "\n"));
        assert!(!says.is_empty(), "{old} -> {new} has no fault");
        for line in says {
            writeln!(anew, "says   {line}").unwrap();
        }
        anew.push('\n');
        blocks += 1;
    }
    let anew = format!("{}\n", anew.trim_end());
    if std::env::var_os("UPDATE").is_some() {
        std::fs::write(path, &anew).unwrap();
    } else {
        assert_eq!(anew, kept);
    }
    assert!(blocks >= 60, "{blocks}");
}

#[test]
fn the_good_file_has_no_fault() {
    let read = parse_problem_file(GOOD).map_err(|faults| super::told(&faults));
    let Ok(ProblemFile::General(system)) = read else {
        panic!("{read:?}");
    };
    assert_eq!(system.parts().statement, "A beam of L = 3.0 m and 12 kg.");
    let names: Vec<&str> = system
        .givens()
        .iter()
        .map(|given| given.symbol.as_str())
        .collect();
    assert_eq!(names.join(" "), "L θ L_2 d m_b d_1 m_1 F_2 M_3 q_4 y b μ");
    assert_eq!(system.givens()[3].value, 0.55);
}

#[test]
fn all_faults_of_a_file_come_at_once_and_in_order() {
    let json = GOOD
        .replace("\"12 kg\"", "\"12 m\"")
        .replace("\"9.8 m/s^2\"", "\"9.8\"")
        .replace("\"by\": \"post\"", "\"by\": \"pots\"")
        .replace("\"2.2 m\"", "\"3.2 m\"")
        .replace("{L=}", "{H}");
    let faults = parse_system(&json).expect_err("five faults");
    let places: Vec<(usize, &str)> = faults
        .iter()
        .map(|fault| (fault.line, fault.path.as_str()))
        .collect();
    let expected = [
        (3, "g"),
        (10, "system.weights[0].mass"),
        (12, "system.loads[0].at.at"),
        (20, "system.holds[1].by"),
        (30, "text.statement"),
    ];
    for place in expected {
        assert!(
            places.contains(&place),
            "{place:?}: {:#?}",
            super::told(&faults)
        );
    }
    assert!(places.is_sorted());
}

#[test]
fn the_field_tells_which_kind_a_problem_is() {
    let guided = include_str!("../lines/mast.json");
    assert!(matches!(
        parse_problem_file(guided),
        Ok(ProblemFile::Guided(_))
    ));
    assert_eq!(
        parse_problem_file(guided).ok(),
        parse_problem(guided).ok().map(ProblemFile::Guided)
    );
    let told = |json: &str| super::told(&parse_problem_file(json).expect_err("a fault")).join("\n");
    assert!(told("{\"leverwright\": 1}").contains("\"model\""));
    assert!(told("[]").contains("expected"));
    let both = GOOD.replacen("\"system\"", "\"model\": {}, \"system\"", 1);
    assert!(
        told(&both).contains("model: no field of this name"),
        "{}",
        told(&both)
    );
}

#[test]
fn hostile_texts_are_refused_without_a_panic() {
    let digits = "9".repeat(400);
    for text in [
        String::new(),
        "null".to_owned(),
        "{\"system\":".repeat(100_000),
        GOOD.replace("\"12 kg\"", &format!("\"{digits} kg\"")),
        GOOD.replace("\"12 kg\"", "\"\u{1b}[2J kg\""),
        GOOD.replace("\"noun\": \"lamp\"", "\"noun\": \"\u{1b}[2J\""),
        GOOD.replace("\"leg\": 1", "\"leg\": 4000000000"),
        GOOD.replace("\"leg\": 1", "\"leg\": -1"),
        GOOD.replace("\"2/3\"", "\"4294967295/0\""),
        GOOD.replace(
            "\"y\": \"2.5 m\"",
            &format!("\"y\": {{\"sum\": [[\"{digits}\", \"L\"]]}}"),
        ),
        GOOD.replace("\"name\": \"post\"", "\"name\": \"beam\""),
        GOOD.replace("\"given\": \"d\"", "\"given\": \"\u{202e}\""),
    ] {
        for line in super::told(&parse_problem_file(&text).expect_err("refused")) {
            assert!(!line.contains(['\u{1b}', '\u{202e}']), "{line}");
        }
    }
}

/// The nouns of parts may repeat; their places in the file do not.
#[test]
fn what_shows_only_in_the_whole_is_told_where_its_part_stands() {
    let order = GOOD.find(",\n    \"order\"").unwrap();
    let end = order + GOOD[order..].find("]\n").unwrap() + 1;
    let whole = format!("{}{}", &GOOD[..order], &GOOD[end..]);
    assert!(parse_system(&whole).is_ok());
    let after = |old: &str, new: &str| {
        assert_eq!(whole.matches(old).count(), 1, "{old}");
        super::told(&parse_system(&whole.replace(old, new)).expect_err("a fault"))
    };
    assert_eq!(
        after(
            "\"towards\": {\"x\": \"0 m\", \"y\": \"2.5 m\"}",
            "\"towards\": {\"on\": \"beam\", \"at\": \"tip\"}"
        ),
        ["line 17, column 15, system.ropes[0]: rope points at the place where it acts"]
    );
    assert_eq!(
        after(
            "{\"name\": \"post\"",
            "{\"name\": \"wire\"},\n{\"name\": \"post\""
        ),
        ["line 8, column 7, system.bodies[1]: nothing acts on wire"]
    );
}

/// A number that another fault keeps from being told is not blamed where the text names it; one
/// that is told nowhere is.
#[test]
fn a_name_is_not_blamed_for_a_number_that_is_missing() {
    let statement = "A beam of {L=} and {m_b}.";
    let told = |changes: &[(&str, &str)], names: &str| -> Vec<String> {
        let good = GOOD.replace(statement, &format!("A beam of {{L=}}. {names}"));
        let file = changes.iter().fold(good, |file, (old, new)| {
            assert_eq!(file.matches(old).count(), 1, "{old}");
            file.replace(old, new)
        });
        let faults = parse_system(&file).unwrap_err().into_iter();
        faults
            .map(|fault| format!("{}: {}", fault.path, fault.kind))
            .collect()
    };
    let when = r#"{"slips": "N", "coefficient": {"symbol": "μ", "is": "0.4"}}"#;
    let reaches = r#"{"reaches": "K", "limit": "5 N"}"#;
    for (change, names, path) in [
        (
            (r#", "mass": "12 kg""#, ""),
            "{m_b=}",
            "system.weights[0].mass",
        ),
        (
            ("\"first\": \"15 N/m\", ", ""),
            "{q_4=}",
            "system.loads[3].first",
        ),
        ((when, reaches), "{T_max=}", "system.sought.when.reaches"),
        (
            ("\"kind\": \"base\"", "\"kind\": \"bse\""),
            "{b=}",
            "system.holds[2].kind",
        ),
    ] {
        let faults = told(&[change], names);
        assert_eq!(faults.len(), 1, "{names}: {faults:#?}");
        assert!(faults[0].starts_with(path), "{names}: {faults:#?}");
        let faults = told(&[change], "{zeta=}");
        let blamed = faults
            .iter()
            .filter(|fault| fault.contains("of the name zeta"));
        assert_eq!((faults.len(), blamed.count()), (2, 1), "{faults:#?}");
    }
}
