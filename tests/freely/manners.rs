//! A quick form of `cargo bench --bench freely`: right workings in any manner, by pupils who have
//! no part in the reader. The goal, none called wrong, is the project's own.

#[path = "../../benches/freely/manner.rs"]
mod manner;
#[path = "../../benches/freely/measure.rs"]
mod measure;
#[path = "../../benches/freely/pupil.rs"]
mod pupil;
#[path = "../../benches/freely/scene.rs"]
mod scene;
#[path = "../../benches/freely/slipping.rs"]
mod slipping;
#[path = "../../benches/freely/slips.rs"]
mod slips;

#[test]
fn a_right_working_in_any_manner_is_never_called_wrong() {
    let findings = measure::measure(20, 2024);
    assert!(findings.lines > 500, "{}", findings.lines);
    let told = |what| findings.told.get(what).cloned().unwrap_or_default();
    assert_eq!(told("wrong"), Vec::<String>::new());
    assert_eq!(told("not understood"), Vec::<String>::new());
    // Only who carries two figures rounds too hard.
    let coarse = told("rounded too hard");
    assert!(
        coarse.iter().all(|line| line.contains("figures: 2")),
        "{coarse:#?}"
    );
    assert!(findings.cells.len() > 300 && findings.workings.is_empty());
}

/// Right lines with one thing changed, judged by a general evaluator of expressions.
#[test]
fn a_wrong_expression_or_equation_is_never_accepted() {
    let found = slips::measure_slips(2, 2024, 11, &|_| {});
    assert!(found.typed > 100, "{}", found.typed);
    assert_eq!(found.accepted, Vec::<String>::new());
    assert!(found.chance_accepted == 0 && found.by_chance.len() < 10);
    assert!(found.signs.contains_key("Wrong"), "{:?}", found.signs);
}

/// Who slips once, and goes on, mends in silence, by half, or takes the line back, is wrong in that line
/// alone.
#[test]
fn no_line_after_a_slip_is_wrongly_condemned() {
    let found = slipping::measure_slipping(25, 2024, &|_| {});
    assert!(found.workings == 75 && found.lines > 600, "{}", found.lines);
    assert_eq!(found.condemned, Vec::<String>::new());
    assert!(found.kinds.len() > 9, "{:?}", found.kinds);
    let (told, slips) = found.told;
    assert_eq!(told, slips);
}
