//! Right lines of other workings: every method, every pivot, at every balance that is asked.

use super::{asked, boards, opened, scripts};
use leverwright::key::StepId;
use leverwright::session::{Session, Sign};
use leverwright::system::{Spot, System};
use leverwright::working::{Method, Told, derive, settle, told};
use std::collections::BTreeSet;

/// The balances of every working of a system, in numbers with their units.
fn balances(system: &System) -> BTreeSet<String> {
    let mut found = BTreeSet::new();
    let Ok(settled) = settle(system) else {
        return found;
    };
    let mut spots: Vec<Option<Spot>> = vec![None];
    for act in system.acts() {
        spots.extend(act.on.iter().map(|effect| Some(effect.at.clone())));
    }
    for method in [Method::Components, Method::LeverArms, Method::Coordinates] {
        for spot in &spots {
            let Ok(working) = derive(system, &settled.values, method, spot.as_ref()) else {
                continue;
            };
            for line in told(system, &working, &settled.values) {
                if let Told::Balance { numbers, .. } = line {
                    found.insert(numbers);
                }
            }
        }
    }
    found
}

/// Sessions at every balance that is asked, all before it answered.
fn at_balances(name: &str) -> Vec<Session> {
    let mut places = Vec::new();
    let mut lines = Vec::new();
    let mut session = opened(name);
    while let Some(step) = asked(&session) {
        if matches!(step, StepId::Sum(..)) {
            places.push(lines.len());
        }
        let line = scripts::values(&session, step);
        session.submit(&line);
        lines.push(line);
    }
    let again = |place: usize| {
        let mut session = opened(name);
        for line in &lines[..place] {
            session.submit(line);
        }
        session
    };
    places.into_iter().map(again).collect()
}

#[test]
fn no_right_balance_of_another_working_is_called_wrong() {
    let (mut faults, mut tried, mut settled) = (BTreeSet::new(), 0, 0);
    for (name, system) in boards() {
        let lines = balances(&system);
        for mut session in at_balances(&name) {
            let now = asked(&session);
            for line in &lines {
                let turn = session.submit(line);
                tried += 1;
                settled += usize::from(matches!(turn.line.sign, Sign::Right | Sign::Rounded));
                if matches!(
                    turn.line.sign,
                    Sign::Wrong | Sign::Unclear | Sign::Incomplete
                ) {
                    let (sign, said) = (turn.line.sign, &turn.line.message);
                    faults.insert(format!("{name}: {line}: {sign:?} {said}"));
                }
                // Each line meets the same question.
                if asked(&session) != now {
                    session.submit("back");
                }
                assert_eq!(asked(&session), now, "{name}: {line}");
            }
        }
    }
    assert_eq!(faults, BTreeSet::new());
    assert!(tried > 500 && settled > 200, "{tried} {settled}");
}
