//! Wrong lines made by the catalogue's rewrites, typed at the step that they change: none is taken,
//! and none gets the name of another thought.

use super::{asked, boards, opened, scripts};
use leverwright::key::{StepId, agree, balance_names, formula_names};
use leverwright::mistakes::{Instance, general_instances};
use leverwright::session::{Session, Sign};
use leverwright::text::Words;
use std::collections::BTreeMap;

/// The line of a learner who makes a mistake, in names.
fn line(session: &Session, instance: &Instance, step: StepId) -> Option<String> {
    if let Some(balance) = instance.key.balance(step) {
        return Some(balance_names(session.problem(), &instance.key, balance));
    }
    let formula = instance.key.formula(step)?;
    Some(formula_names(session.problem(), &instance.key, &formula))
}

/// The mistakes that give the same function as this one at its step.
fn alike(session: &Session, all: &[Instance], one: &Instance, step: StepId) -> Vec<&'static str> {
    let none = BTreeMap::new();
    let of = |instance: &Instance| {
        let key = &instance.key;
        key.function(session.key(), step, session.sampling(), &none)
    };
    let mine = of(one);
    let same = |other: &&Instance| match (&mine, of(other)) {
        (Some(mine), Some(other)) => agree(mine, &other),
        _ => false,
    };
    all.iter().filter(same).map(|one| one.mistake.id).collect()
}

#[test]
fn every_mistake_has_its_words() {
    let words = Words::english();
    for (name, _) in boards() {
        let session = opened(&name);
        for instance in general_instances(session.key(), session.sampling()) {
            let id = instance.mistake.id;
            let thought = words.has(&format!("general.thought.{id}"));
            let names = ["general.name", "mistake"].map(|start| match start {
                "mistake" => format!("mistake.{id}.name"),
                start => format!("{start}.{id}"),
            });
            let named = names.iter().any(|name| words.has(name));
            assert!(thought && named, "{name}: {id}");
        }
    }
}

#[test]
fn no_rewritten_line_is_taken_or_named_otherwise() {
    let (mut faults, mut tried, mut named) = (Vec::new(), 0, 0);
    for (name, _) in boards() {
        let mut session = opened(&name);
        let all = general_instances(session.key(), session.sampling());
        while let Some(step) = asked(&session) {
            for instance in all.iter().filter(|one| one.shows_at == step) {
                let Some(line) = line(&session, instance, step) else {
                    continue;
                };
                let turn = session.submit(&line);
                tried += 1;
                let taken = matches!(turn.line.sign, Sign::Right | Sign::Rounded | Sign::Follows);
                let first = turn.kept.mistakes.first();
                named += usize::from(first.is_some());
                let fits = alike(&session, &all, instance, step);
                if taken || first.is_some_and(|first| !fits.contains(&first.as_str())) {
                    let (sign, id) = (turn.line.sign, instance.mistake.id);
                    faults.push(format!("{name}, {id}: {line}: {sign:?} {first:?}"));
                }
                if taken {
                    session.submit("back");
                }
                assert_eq!(asked(&session), Some(step), "{name}: {line}");
            }
            let line = scripts::values(&session, step);
            session.submit(&line);
        }
    }
    assert_eq!(faults, Vec::<String>::new());
    assert!(tried > 200 && 4 * named > 3 * tried, "{tried} {named}");
}

/// A sum of known forces that is set to nothing is no balance: the unknown stands in none of these.
#[test]
fn what_is_known_and_not_nothing_is_not_set_to_nothing() {
    for (board, step, lines) in [
        (
            "rod_on_peg",
            "level forces",
            ["P sin 40 = 0", "0 = 32.2 sin 40", "P sin 40 + FN = 0"],
        ),
        (
            "rod_on_peg",
            "upright forces",
            ["Wb - Py = 0", "58.8 - 24.6 = 0", "Wb - Py - N = 0"],
        ),
        (
            "gate",
            "moments",
            ["735*1 = 0", "588*1.5 = 0", "588*1.5 - B*1.2 = 0"],
        ),
        (
            "gate",
            "upright forces",
            ["60*9.8 = 0", "W = 0", "60*9.8 - Ay = 0"],
        ),
    ] {
        let mut session = opened(board);
        let asks = |session: &Session| {
            let asked = session.view().question.to_string();
            asked.contains("equation") && asked.contains(step)
        };
        for _ in 0..30 {
            if asks(&session) {
                break;
            }
            session.submit("skip");
        }
        assert!(asks(&session), "{board} {step}");
        for (at, line) in lines.into_iter().enumerate() {
            let turn = session.submit(line);
            let is_right = turn.line.sign == Sign::Right;
            assert_eq!(is_right, at == 2, "{board} {line}: {}", turn.line.message);
            assert_eq!(asks(&session), at < 2, "{board} {line}");
        }
    }
}
