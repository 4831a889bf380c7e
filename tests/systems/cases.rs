//! Published cases as problem files: tests/cases/, its index.json with the source of each.

use crate::statics::expression;
use leverwright::lesson::{ProblemFile, parse_problem_file, write_system};
use leverwright::statics::{SystemSolution, roots, solve_system};
use leverwright::system::{ActId, System};
use serde_json::Value;
use std::collections::{BTreeMap, BTreeSet};
use std::path::PathBuf;

fn folder() -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("tests/cases")
}

fn index() -> Value {
    let text = std::fs::read_to_string(folder().join("index.json")).unwrap();
    serde_json::from_str(&text).unwrap()
}

fn list<'a>(value: &'a Value, key: &str) -> &'a [Value] {
    value[key].as_array().map_or(&[], Vec::as_slice)
}

/// The file of a case, read.
fn system(id: &str) -> System {
    let text = std::fs::read_to_string(folder().join(format!("{id}.json"))).unwrap();
    match parse_problem_file(&text) {
        Ok(ProblemFile::General(system)) => system,
        Ok(ProblemFile::Guided(_)) => panic!("{id} is a guided problem"),
        Err(faults) => panic!("{id}:\n{}", super::told(&faults).join("\n")),
    }
}

/// What is found: the number that is sought, if one is, and the forces.
fn solved(id: &str, system: &System) -> (f64, SystemSolution) {
    let gravity = system.gravity();
    if system.parts().sought.is_none() {
        let solution = solve_system(system, &system.values(), gravity);
        let solution = solution.unwrap_or_else(|trouble| panic!("{id}: {trouble}"));
        return (f64::NAN, solution);
    }
    let found = roots(system, gravity).unwrap_or_else(|trouble| panic!("{id}: {trouble}"));
    let [root] = &found[..] else {
        panic!(
            "{id}: {:?}",
            found.iter().map(|root| root.value).collect::<Vec<f64>>()
        );
    };
    let solution = root.solution.clone();
    (
        root.value,
        solution.unwrap_or_else(|trouble| panic!("{id}: {trouble}")),
    )
}

fn force(system: &System, symbol: &str) -> ActId {
    let acts = system.acts();
    let act = acts.iter().find(|act| act.symbol.as_str() == symbol);
    act.unwrap_or_else(|| panic!("no force {symbol}")).id
}

/// A quantity that an expression names.
fn quantity(system: &System, sought: f64, solution: &SystemSolution, read: &Value) -> f64 {
    let reaction = || {
        let id = force(system, read["force"].as_str().unwrap());
        solution.reaction(id).unwrap()
    };
    let value = match read["part"].as_str().unwrap() {
        "size" => reaction().size,
        "x" => reaction().force.x,
        "y" => reaction().force.y,
        "couple" => reaction().couple,
        "push" => reaction().contact.unwrap().0,
        "sought" => sought,
        part => panic!("no part {part}"),
    };
    value / read["one_si"].as_f64().unwrap()
}

/// True if a value rounds to what is printed. The published data carry ten figures.
fn rounds_to(value: f64, ask: &Value) -> bool {
    let (printed, ulp) = (
        ask["printed"].as_f64().unwrap(),
        ask["ulp"].as_f64().unwrap(),
    );
    (value - printed).abs() <= 0.5 * ulp * (1.0 + 1e-6) + 1e-8 * printed.abs()
}

#[test]
fn val_published_cases_read_from_their_files_agree_with_what_is_printed() {
    let mut wrong = Vec::new();
    for case in list(&index(), "cases") {
        let id = case["id"].as_str().unwrap();
        let system = system(id);
        let (sought, solution) = solved(id, &system);
        let reads = case["reads"].as_object().unwrap().iter();
        let names: BTreeMap<String, f64> = reads
            .map(|(name, read)| (name.clone(), quantity(&system, sought, &solution, read)))
            .collect();
        for ask in list(case, "asks") {
            if ask.get("left_out").is_some() {
                continue;
            }
            let value = expression::value(ask["expression"].as_str().unwrap(), &names);
            let told = format!("{id}, {}: {value} for {}", ask["quantity"], ask["printed"]);
            match ask.get("recomputed").map(|value| value.as_f64().unwrap()) {
                None if !rounds_to(value, ask) => wrong.push(told),
                Some(_) if rounds_to(value, ask) => wrong.push(format!("{told} agrees after all")),
                Some(recomputed) if (value - recomputed).abs() > 1e-6 * recomputed.abs() => {
                    wrong.push(format!("{told}, recomputed {recomputed}"));
                }
                _ => {}
            }
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

#[test]
fn verif_the_files_survive_being_written() {
    for case in list(&index(), "cases") {
        let system = system(case["id"].as_str().unwrap());
        let again = parse_problem_file(&write_system(&system));
        assert_eq!(again, Ok(ProblemFile::General(system)), "{}", case["id"]);
    }
}

#[test]
fn the_index_counts_its_cases_rightly_and_names_every_file() {
    let index = index();
    let cases = list(&index, "cases");
    let asks: Vec<&Value> = cases.iter().flat_map(|case| list(case, "asks")).collect();
    let having = |key: &str| asks.iter().filter(|ask| ask.get(key).is_some()).count();
    let (differ, left_out) = (having("differs"), having("left_out"));
    for (key, count) in [
        ("cases", cases.len()),
        ("asks", asks.len()),
        ("agree", asks.len() - differ - left_out),
        ("differ", differ),
        ("left_out", left_out),
        (
            "from_memory",
            cases
                .iter()
                .filter(|case| case["from_memory"] == true)
                .count(),
        ),
        ("not_said", list(&index, "not_said").len()),
    ] {
        assert_eq!(index["counts"][key], count, "{key}");
    }
    assert!(cases.len() >= 120 && differ <= 20);
    assert!(
        cases
            .iter()
            .all(|case| !case["source"].as_str().unwrap().is_empty())
    );
    let told: BTreeSet<String> = cases
        .iter()
        .map(|case| format!("{}.json", case["id"].as_str().unwrap()))
        .chain(["index.json".to_owned()])
        .collect();
    let files = std::fs::read_dir(folder()).unwrap();
    let files: BTreeSet<String> = files
        .map(|file| file.unwrap().file_name().into_string().unwrap())
        .collect();
    assert_eq!(told, files);
}
