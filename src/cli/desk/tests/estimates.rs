//! Estimates in journals: those that were kept come back, and journals without them are read as
//! they were.

use super::*;

#[test]
fn estimates_come_back_with_the_problem() {
    let saves = tempfile::tempdir().unwrap();
    let asked = {
        let mut desk = desk(saves.path());
        let mut opening = started(&mut desk, 3);
        let tutor = opening.session.as_mut();
        for line in ["skip", "hinge", "help", "2"] {
            enter(&mut desk, tutor, line);
        }
        assert!(tutor.view().estimates);
        tutor.view()
    };
    assert!(kinds(saves.path()).contains(&"verdict estimate".to_owned()));
    let mut next = desk(saves.path());
    // An estimate is no line of the working.
    assert_eq!(next.unfinished().unwrap().lines, 1);
    let mut opening = next.resume().unwrap();
    assert_eq!(opening.session.view(), asked);
    for line in ["", "back"] {
        enter(&mut next, opening.session.as_mut(), line);
    }
    let passed = opening.session.view();
    drop(next);
    let mut last = desk(saves.path());
    assert_eq!(last.resume().unwrap().session.view(), passed);
}

#[test]
fn a_journal_written_without_estimates_is_read_as_it_was() {
    for lines in [
        &["skip", "hinge", "2", "2", "skip"][..],
        &["skip", "hinge", "help", "2", "1"],
        &["skip", "hinge", "skip", "hint"],
        &["skip", "hinge", "not sure", "3"],
    ] {
        let saves = tempfile::tempdir().unwrap();
        let before = {
            let mut desk = desk(saves.path());
            let words = Words::english();
            let found = desk.library.drawn(COUNTER, 3, &words).unwrap();
            let (problem, sister) = (found.problem.clone(), found.sister.clone());
            desk.opening(found).unwrap();
            let mut plain = crate::session::Session::start(problem, sister, words).unwrap();
            for line in lines {
                enter(&mut desk, &mut plain, line);
            }
            plain.view()
        };
        let mut next = desk(saves.path());
        assert_eq!(next.resume().unwrap().session.view(), before, "{lines:?}");
    }
}
