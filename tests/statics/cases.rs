//! Published cases, each with its source in cases.json; those from memory are marked there.

use super::{described, expression, json, list, number, text};
use leverwright::plane::Vector;
use leverwright::statics::{Action, Acts, Condition, Equilibrium, UnknownColumn, solve};
use serde_json::Value;
use std::collections::BTreeMap;

fn vector(form: &Value) -> Vector {
    Vector::new(number(&form[0]), number(&form[1]))
}

fn action(form: &Value) -> Action {
    let body = number(&form["body"]) as usize;
    match form["couple"].as_f64() {
        Some(size) => Action::couple(body, size),
        None => Action::force(body, vector(&form["at"]), vector(&form["force"])),
    }
}

/// A case as bare equilibrium.
fn equilibrium(case: &Value) -> Equilibrium {
    let mut equilibrium = Equilibrium::new();
    for load in list(case, "loads") {
        equilibrium.load(action(load));
    }
    for unknown in list(case, "unknowns") {
        let mut column = UnknownColumn::couple(text(&unknown["name"]), 0);
        column.acts = list(unknown, "acts").iter().map(action).collect();
        equilibrium.unknown(column);
    }
    for condition in list(case, "conditions") {
        let terms = condition["terms"].as_object().expect("terms");
        let place = |name: &str| {
            let mut unknowns = equilibrium.unknowns().iter();
            unknowns.position(|unknown| unknown.name == name)
        };
        let terms = terms
            .iter()
            .map(|(name, factor)| (place(name).expect(name), number(factor)))
            .collect();
        let total = number(&condition["total"]);
        equilibrium.condition(Condition { terms, total });
    }
    equilibrium
}

/// The unknowns of a case by name, from bare equilibrium.
fn unknowns(case: &Value) -> BTreeMap<String, f64> {
    let equilibrium = equilibrium(case);
    let balance = equilibrium
        .solve()
        .unwrap_or_else(|trouble| panic!("{}: {trouble}", case["id"]));
    let names = equilibrium.unknowns().iter().map(|u| u.name.clone());
    names.zip(balance.values().iter().copied()).collect()
}

/// True if a value rounds to what is printed. The published data carry ten figures.
fn rounds_to(value: f64, ask: &Value) -> bool {
    let printed = number(&ask["printed"]);
    let half = number(&ask["last_place"]) / 2.0;
    (value - printed).abs() <= half * (1.0 + 1e-6) + 1e-8 * printed.abs()
}

/// Compares every ask of a case with these values of its unknowns.
fn compare(case: &Value, values: &BTreeMap<String, f64>) {
    for ask in list(case, "asks") {
        if ask.get("left_out").is_some() {
            continue;
        }
        let value = expression::value(text(&ask["expression"]), values);
        let told = format!("{}, {}: {value}", case["id"], ask["quantity"]);
        let Some(recomputed) = ask.get("recomputed") else {
            assert!(rounds_to(value, ask), "{told} for {}", ask["printed"]);
            continue;
        };
        let recomputed = number(recomputed);
        let near = (value - recomputed).abs() <= 1e-6 * recomputed.abs();
        assert!(near, "{told} for {recomputed}");
        assert!(!rounds_to(value, ask), "{told} agrees after all");
    }
}

#[test]
fn val_published_cases_as_bare_equilibrium() {
    for case in list(&json("statics/cases.json"), "cases") {
        compare(case, &unknowns(case));
    }
}

#[test]
fn val_published_cases_as_problems() {
    for case in list(&json("statics/cases.json"), "cases") {
        if case.get("problem").is_none() {
            continue;
        }
        let (problem, names) = described::problem(&case["problem"]);
        let solution = solve(&problem, &problem.values())
            .unwrap_or_else(|trouble| panic!("{}: {trouble}", case["id"]));
        let forces = described::quantities(&solution, &names);
        let reads = case["reads"].as_object().expect("reads");
        let values = reads
            .iter()
            .map(|(name, by)| (name.clone(), expression::value(text(by), &forces)))
            .collect();
        compare(case, &values);
    }
}

#[test]
fn verif_both_ways_tell_the_same_forces() {
    for case in list(&json("statics/cases.json"), "cases") {
        if case.get("problem").is_none() {
            continue;
        }
        let (problem, names) = described::problem(&case["problem"]);
        let solution = solve(&problem, &problem.values()).expect("solved above");
        let forces = described::quantities(&solution, &names);
        let bare = unknowns(case);
        let largest = bare.values().fold(0.0, |most: f64, v| most.max(v.abs()));
        for (name, by) in case["reads"].as_object().expect("reads") {
            let value = expression::value(text(by), &forces);
            // Weights printed in newtons and ten figures of a sine: no closer than this.
            let near = (value - bare[name]).abs() <= 2e-8 * largest;
            assert!(near, "{}, {name}: {value} for {}", case["id"], bare[name]);
        }
    }
}

#[test]
fn the_file_counts_its_cases_rightly() {
    let file = json("statics/cases.json");
    let cases = list(&file, "cases");
    let having = |key: &str| cases.iter().filter(|case| case.get(key).is_some()).count();
    let being = |key: &str| cases.iter().filter(|case| case[key] == true).count();
    let asks: Vec<&Value> = cases.iter().flat_map(|case| list(case, "asks")).collect();
    let asking = |key: &str| asks.iter().filter(|ask| ask.get(key).is_some()).count();
    let (differing, left_out) = (asking("differs"), asking("left_out"));
    for (key, count) in [
        ("cases", cases.len()),
        ("straight", being("straight")),
        ("from_memory", being("from_memory")),
        ("problems", having("problem")),
        ("without_problem", having("no_problem")),
        ("asks_that_differ", differing),
        ("asks_left_out", left_out),
        ("asks_that_agree", asks.len() - differing - left_out),
    ] {
        assert_eq!(file["counts"][key], count, "{key}");
    }
    assert_eq!(having("problem") + having("no_problem"), cases.len());
    assert!(having("problem") >= 20);
    assert!(cases.iter().all(|case| !text(&case["source"]).is_empty()));
}

#[test]
fn val_moment_of_a_slanted_rope_about_the_foot_of_a_boom() {
    // Den Hartog, Mechanics: the one ask of dh-11-boom-rope that is no unknown, 2588 ft lb.
    let file = json("statics/cases.json");
    let mut cases = list(&file, "cases").iter();
    let case = cases
        .find(|case| case["id"] == "dh-11-boom-rope")
        .expect("the boom");
    let equilibrium = equilibrium(case);
    let rope = &equilibrium.loads()[0];
    assert!(matches!(rope.acts, Acts::Force { .. }));
    assert!((rope.moment(Vector::default()) - 2588.0).abs() <= 0.5);
}
