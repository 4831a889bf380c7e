//! The point about which moments are taken, chosen among the places of the drawing.

use super::open;
use leverwright::session::{PivotPlace, Session, Sign};
use leverwright::sketch::Stage;
use std::collections::BTreeSet;

/// The place of a name.
fn place(session: &Session, name: &str) -> PivotPlace {
    let places = session.view().pivots;
    let found = places.iter().find(|place| place.name.contains(name));
    found.unwrap_or_else(|| panic!("{places:?}")).clone()
}

/// Every place where something acts, and both ends, may be chosen; the line that takes one is read
/// as that place, and the ring stands there.
#[test]
fn verif_every_place_of_the_drawing_is_taken_by_its_line() {
    for lesson in ["counter", "walkway", "mast"] {
        for seed in 1..=8 {
            let mut session = open(lesson, seed);
            session.submit("freely");
            let problem = session.problem().clone();
            let values = problem.values();
            let distance = |at| problem.distance(at, &values);
            let view = session.view();
            let mut acted: Vec<f64> = (problem.forces().iter())
                .map(|force| distance(force.at))
                .chain([0.0, distance(leverwright::problem::Place::Tip)])
                .collect();
            acted.sort_by(f64::total_cmp);
            acted.dedup_by(|one, other| (*one - *other).abs() < 1e-6);
            let found: Vec<f64> = view.pivots.iter().map(|at| distance(at.place)).collect();
            assert_eq!(found, acted, "{lesson} {seed}");
            let names: BTreeSet<&str> = view.pivots.iter().map(|at| at.name.as_str()).collect();
            assert_eq!(names.len(), found.len(), "{names:?}");
            for at in &view.pivots {
                let mut session = session.clone();
                let turn = session.submit(at.line.as_ref().unwrap());
                assert_eq!(turn.line.sign, Sign::Noted, "{at:?}: {}", turn.line.message);
                let ring = session.view().marks.pivot.unwrap();
                assert!((distance(ring) - distance(at.place)).abs() < 1e-9, "{at:?}");
                // Said once more, another place is it.
                session.submit("moments about the hinge");
                assert_eq!(session.view().marks.pivot, Some(session.key().pivot));
            }
        }
    }
}

#[test]
fn at_its_step_the_hinge_is_right_and_another_point_may_be_worked_about_freely() {
    let mut session = open("mast", 3);
    session.submit("skip");
    let hinge = place(&session, "the hinge");
    assert!(hinge.freely.is_none());
    let turn = session.clone().submit(&hinge.line.unwrap());
    assert_eq!(turn.line.sign, Sign::Right);
    let tip = place(&session, "the tip");
    let turn = session.clone().submit(tip.line.as_ref().unwrap());
    assert_eq!(turn.line.sign, Sign::Noted);
    assert!(!turn.moved_on);
    let turn = session.submit(tip.freely.as_ref().unwrap());
    assert!(
        turn.line
            .message
            .to_string()
            .contains("The ring stands there")
    );
    let view = session.view();
    assert!(view.freely);
    assert_eq!(view.marks.pivot, Some(tip.place));
    // The balance about it is judged, and no lever about the hinge is drawn.
    let line = "T*1.2*sin 65 + Hy*5.4*cos 55 = Wb*2.7*cos 55 + W1*0.9*cos 55 - Hx*5.4*sin 55";
    let turn = session.submit(line);
    assert!(
        matches!(turn.line.sign, Sign::Right | Sign::Noted),
        "{}",
        turn.line.message
    );
    let view = session.view();
    assert_eq!(view.marks.pivot, Some(tip.place));
    assert!(
        view.stages
            .iter()
            .all(|marks| marks.stage != Stage::Turning)
    );
}

#[test]
fn at_any_other_step_another_point_begins_a_free_working() {
    let mut session = open("walkway", 3);
    for line in ["skip", "hinge"] {
        session.submit(line);
    }
    let hinge = place(&session, "the hinge");
    assert!(hinge.line.is_none() && hinge.freely.is_none());
    let tip = place(&session, "the tip");
    assert!(tip.told.to_string().contains("works freely"));
    let mut again = session.clone();
    again.submit(tip.line.as_ref().unwrap());
    assert!(again.view().freely);
    assert_eq!(again.view().marks.pivot, Some(tip.place));
    // The steps go on about the hinge.
    again.submit("guided");
    assert_eq!(again.view().marks.pivot, Some(again.key().pivot));
    // While a reason is asked no point is.
    session.submit("worked");
    assert!(session.view().pivots.is_empty());
}

/// Lines that only speak of moments choose no point.
#[test]
fn a_balance_chooses_no_point() {
    let mut session = open("walkway", 3);
    session.submit("freely");
    for line in [
        "moments: Wb*2.1 = T",
        "moment = 3 N m",
        "moments",
        "moments about the moon",
        "the moment of T is 471 N m",
        "moment of the chest",
    ] {
        let said = session.submit(line).line.message.to_string();
        assert!(!said.contains("Moments about that point"), "{line}: {said}");
    }
}
