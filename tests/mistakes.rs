//! Mistakes: the catalogue's own rules, the typed lines, and in the modules below hand arithmetic
//! and the rules for draws.

mod by_hand;
mod draws;
mod more_by_hand;
mod scene;

use leverwright::key::StepId;
use leverwright::mistakes::Scope::{Force, Here};
use leverwright::mistakes::{CATALOGUE, Scope, right_line, typed_line};
use leverwright::text::Words;
use scene::*;
use std::collections::BTreeSet;

#[test]
fn mistakes_show_where_they_are_made() {
    // Last-step mistakes leave the balance as it was, so they show at the pull and not before.
    let one = worked(&level_oblique());
    for id in [
        "stopped-at-component",
        "multiplied-at-the-end",
        "moment-called-force",
    ] {
        assert_eq!(one.instance(id, Force(ROPE)).shows_at, PULL, "{id}");
    }
    assert_eq!(
        one.instance("own-weight-left-out", Force(OWN)).shows_at,
        StepId::MomentSum
    );
    assert_eq!(
        one.instance("not-resolved", Force(ROPE)).shows_at,
        StepId::Across(ROPE)
    );
}

#[test]
fn the_catalogue_is_complete_and_worded() {
    let words = Words::english();
    let mut ids = BTreeSet::new();
    for mistake in CATALOGUE {
        let id = mistake.id;
        assert!(ids.insert(id), "{id} stands twice");
        let path = format!(
            "{}/src/mistakes/{}.rs",
            env!("CARGO_MANIFEST_DIR"),
            id.replace('-', "_")
        );
        let text = std::fs::read_to_string(&path).unwrap_or_else(|_| panic!("{path}"));
        for heading in [
            "What the learner did",
            "Why it tempts",
            "Rewrite",
            "Known false alarms",
            "Source",
        ] {
            assert!(
                text.contains(&format!("//! # {heading}\n")),
                "{id}: {heading}"
            );
        }
        for key in [
            format!("mistake.{id}.name"),
            format!("mistake.{id}.thought"),
            format!("family.{}.look", mistake.family),
            format!("family.{}.place", mistake.family),
        ] {
            assert!(words.has(&key), "{key}");
        }
        // Nothing stands for "by its form only", and is then no part of a draw either.
        let by_form_only = mistake.prior == 0.0 && !mistake.common;
        assert!(
            by_form_only || (1.0..=10.0).contains(&mistake.prior),
            "{id}"
        );
    }
    let families: BTreeSet<&str> = CATALOGUE.iter().map(|mistake| mistake.family).collect();
    for key in words.keys() {
        let mut parts = key.split('.');
        match (parts.next(), parts.next()) {
            (Some("mistake"), Some(id)) => assert!(ids.contains(id), "{key} serves nothing"),
            (Some("family"), Some(id)) => assert!(families.contains(id), "{key} serves nothing"),
            _ => {}
        }
    }
}

#[test]
fn sentences_keep_the_manners() {
    let words = Words::english();
    for key in words.keys() {
        if !(key.starts_with("mistake.") || key.starts_with("family.")) {
            continue;
        }
        let text = words.word(key);
        assert!(!text.contains('!'), "{key}");
        if key.ends_with(".look") {
            assert!(text.contains('?'), "{key} is no question");
        }
        for slot in text.split('{').skip(1) {
            let name = slot.split('}').next().unwrap();
            assert!(
                ["force", "other", "right", "wrong", "body", "step"].contains(&name),
                "{key}: {name}"
            );
        }
    }
}

#[test]
fn every_mistake_is_met_in_some_scene() {
    let met: BTreeSet<&str> = all_scenes()
        .iter()
        .flat_map(|scene| worked(scene).found)
        .map(|instance| instance.mistake.id)
        .collect();
    for mistake in CATALOGUE {
        assert!(met.contains(mistake.id), "{}", mistake.id);
    }
}

#[test]
fn every_instance_has_a_line_and_a_force() {
    for scene in all_scenes() {
        let one = worked(&scene);
        for instance in &one.found {
            let what = format!("{} {:?}", instance.mistake.id, instance.scope);
            let line = typed_line(&one.problem, &one.key, instance, &one.sampling)
                .unwrap_or_else(|| panic!("{what} has no line"));
            assert!(line.expression.is_ascii(), "{what}: {}", line.expression);
            assert!(!line.expression.contains("undefined"), "{what}");
            let right = right_line(&one.problem, &one.key, line.step, &one.sampling).unwrap();
            assert_ne!(line.expression, right.expression, "{what}");
        }
    }
}

#[test]
fn lines_are_typed_as_a_learner_types_them() {
    let one = worked(&tilted(Pulling::Level));
    let line = |id: &str, scope: Scope| {
        let instance = one.instance(id, scope);
        typed_line(&one.problem, &one.key, instance, &one.sampling).unwrap()
    };
    let cosine = line("sine-cosine-exchanged", Force(FIRST));
    assert_eq!(cosine.step, StepId::Across(FIRST));
    assert_eq!(cosine.expression, "107.8*cos(65.00)");
    assert_eq!(cosine.number, Some(("45.6".into(), StepId::Across(FIRST))));
    let radian = line("radian-calculator", Here(StepId::Across(FIRST)));
    assert_eq!(radian.expression, "107.8*sin(65.00) = 89.1");
    let missing = line("term-left-out", Force(FIRST));
    assert_eq!(missing.step, StepId::MomentSum);
    assert_eq!(missing.expression, "177.6*6/2 + 71.05*6 = T*sin(25.00)*4.5");
    assert_eq!(missing.number.map(|(_, step)| step), Some(PULL));
    let right = right_line(&one.problem, &one.key, PULL, &one.sampling).unwrap();
    assert_eq!(right.number, Some(("617".into(), PULL)));
}
