//! A second solver in another language: tests/reference/README.md.

use super::{described, json, list, number, text};
use leverwright::statics::{Unsolvable, solve};

/// How far two solvers in doubles may lie apart, as a part of the largest force.
const NEAR: f64 = 1e-9;

#[test]
fn val_forces_agree_with_an_independent_solver() {
    let (problems, solutions) = (
        json("reference/problems.json"),
        json("reference/solutions.json"),
    );
    let (problems, solutions) = (list(&problems, "problems"), list(&solutions, "solutions"));
    assert_eq!(problems.len(), solutions.len());
    assert!(problems.len() >= 60);
    let mut pushing = 0;
    for (form, told) in problems.iter().zip(solutions) {
        assert_eq!(form["id"], told["id"]);
        let told_forces = told["forces"].as_object().expect("forces");
        let sizes = |(name, force): (&String, &serde_json::Value)| {
            Some((name.clone(), force["size"].as_f64()?))
        };
        let forbidden = told_forces
            .iter()
            .filter_map(sizes)
            .find(|(_, size)| *size < 0.0);
        let (problem, names) = described::problem(form);
        let solved = solve(&problem, &problem.values());
        if let Some((name, size)) = forbidden {
            pushing += 1;
            let trouble = solved.expect_err("a rope that pushes");
            let (Unsolvable::RopeWouldPush { rope, size_n }
            | Unsolvable::ContactWouldPull {
                support: rope,
                size_n,
            }) = trouble
            else {
                panic!("{}: {trouble}", form["id"]);
            };
            assert_eq!(rope, name);
            assert!((size_n + size).abs() <= NEAR * size.abs(), "{}", form["id"]);
            continue;
        }
        let solution = solved.unwrap_or_else(|trouble| panic!("{}: {trouble}", form["id"]));
        assert_eq!(names.len(), told_forces.len());
        let largest = solution.all().map(|(_, found)| found.force.size());
        let largest = largest.fold(0.0, f64::max);
        let length = number(&form["body"]["length"]);
        for (name, id) in &names {
            let force = &told_forces[name];
            let near = |value: f64, key: &str, scale: f64| {
                let told = number(&force[key]);
                let id = text(&form["id"]);
                assert!(
                    (value - told).abs() <= NEAR * scale,
                    "{id}, {name} {key}: {value} for {told}"
                );
            };
            near(solution.force(*id).x, "x", largest);
            near(solution.force(*id).y, "y", largest);
            if force.get("size").is_some() {
                near(solution.size(*id), "size", largest);
            }
            if force.get("couple").is_some() {
                near(solution.couple(*id), "couple", largest * length);
            }
        }
    }
    assert!(pushing > 0, "no problem with a rope that would push");
}
