//! Who is at work: when a name is asked, and where the records go.

use super::{desk, enter, started};
use crate::practice::{Desk, Standing};
use std::path::Path;

/// The texts of all lines in the folder of the learner who is at work.
fn lines_of(saves: &Path, name: &str) -> usize {
    let store = crate::store::Store::open(saves).unwrap();
    let learners = store.learners().unwrap();
    let called = |learner: &&crate::store::Learner| {
        learner.name().is_some_and(|known| known.as_str() == name)
    };
    let learner = learners.iter().find(called).unwrap();
    let journals = store.history(learner).unwrap().journals;
    let records = journals.iter().flat_map(|journal| &journal.records);
    records
        .filter(|record| matches!(record.entry, crate::record::Entry::Line(_)))
        .count()
}

#[test]
fn a_name_is_asked_once_and_only_after_a_line_of_working() {
    let saves = tempfile::tempdir().unwrap();
    let mut desk = desk(saves.path());
    let mut opening = started(&mut desk, 3);
    let tutor = opening.session.as_mut();
    enter(&mut desk, tutor, "hint");
    enter(&mut desk, tutor, "skip");
    assert!(!desk.people().ask, "orders are nothing to keep");
    enter(&mut desk, tutor, "hinge");
    assert!(desk.people().ask);
    // Whoever goes on is not asked again, not even in the next problem.
    enter(&mut desk, tutor, "W1 = 3 N");
    assert!(!desk.people().ask);
    desk.closed(false);
    let mut next = started(&mut desk, 4);
    enter(&mut desk, next.session.as_mut(), "hinge");
    assert!(!desk.people().ask);
    // At the next start it is time again, and blank is no name.
    let mut again = super::desk(saves.path());
    let mut opening = again.resume().unwrap();
    enter(&mut again, opening.session.as_mut(), "W1 = 4 N");
    assert!(again.people().ask);
    assert!(again.call("  ", true).unwrap().is_empty());
    assert_eq!((again.people().ask, again.people().name), (false, None));
}

#[test]
fn what_was_entered_without_a_name_goes_to_the_one_who_is_named() {
    let saves = tempfile::tempdir().unwrap();
    let mut first = desk(saves.path());
    let mut opening = started(&mut first, 3);
    enter(&mut first, opening.session.as_mut(), "skip");
    enter(&mut first, opening.session.as_mut(), "hinge");
    let said = first.call(" Zoë ", true).unwrap();
    assert!(said.to_string().contains("Zoë"), "{said}");
    assert_eq!(first.people().name.as_deref(), Some("Zoë"));
    enter(&mut first, opening.session.as_mut(), "W1 = 3 N");
    assert!(first.has_kept_all());
    assert_eq!(lines_of(saves.path(), "Zoë"), 3);
    // A slip in the name is put right where it was made; a number that nobody has is told.
    assert!(first.call("2", true).is_err());
    assert!(first.call(&"x".repeat(81), true).is_err());
    first.call("Zoe", true).unwrap();
    assert_eq!(first.people().name.as_deref(), Some("Zoe"));
    drop(first);
    let mut again = desk(saves.path());
    assert_eq!(again.people().name.as_deref(), Some("Zoe"));
    assert_eq!(again.unfinished().unwrap().lines, 2);
}

#[test]
fn somebody_else_sits_down_and_finds_only_their_own() {
    let saves = tempfile::tempdir().unwrap();
    let mut desk = desk(saves.path());
    let mut opening = started(&mut desk, 3);
    enter(&mut desk, opening.session.as_mut(), "hinge");
    desk.call("Zoë", true).unwrap();
    assert!(
        desk.call("Bo", true).is_ok(),
        "at a problem it is another name for the same"
    );
    desk.call("Zoë", true).unwrap();
    desk.closed(false);
    desk.call("Bo", false).unwrap();
    assert!(desk.unfinished().is_none());
    assert_eq!(desk.people().others, ["Zoë"]);
    assert_eq!(desk.lessons()[0].standing, Standing::New);
    let mut opening = started(&mut desk, 5);
    enter(&mut desk, opening.session.as_mut(), "hinge");
    assert!(!desk.people().ask);
    // Not in the midst of a problem.
    assert!(desk.call("1", true).is_err());
    desk.closed(false);
    desk.call("zoë", false).unwrap();
    assert_eq!(desk.unfinished().unwrap().lines, 1);
    assert_eq!(desk.lessons()[0].standing, Standing::Begun);
    assert_eq!(
        (lines_of(saves.path(), "Zoë"), lines_of(saves.path(), "Bo")),
        (1, 1)
    );
    assert_eq!(super::desk(saves.path()).people().others.len(), 1);
}

#[test]
fn the_records_of_the_unnamed_go_to_somebody_who_is_known() {
    let saves = tempfile::tempdir().unwrap();
    let store = crate::store::Store::open(saves.path()).unwrap();
    store.default_learner().unwrap();
    store
        .add_learner(&crate::store::LearnerName::new("Bo").unwrap())
        .unwrap();
    let mut desk = desk(saves.path());
    let mut opening = started(&mut desk, 3);
    enter(&mut desk, opening.session.as_mut(), "hinge");
    assert_eq!(desk.people().others, ["Bo"]);
    desk.call("1", true).unwrap();
    enter(&mut desk, opening.session.as_mut(), "W1 = 3 N");
    assert!(desk.has_kept_all());
    assert_eq!(lines_of(saves.path(), "Bo"), 2);
    desk.closed(false);
    assert_eq!(desk.unfinished().unwrap().lines, 2);
}
