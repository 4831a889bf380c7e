//! Problems that were worked at before, as the journals tell them.

use super::*;

fn work(saves: &Path, seed: u64, lines: &[&str], ends: bool) -> View {
    let mut desk = desk(saves);
    let mut opening = started(&mut desk, seed);
    let tutor = opening.session.as_mut();
    for line in lines {
        enter(&mut desk, tutor, line);
    }
    while ends && tutor.view().course == Course::On {
        enter(&mut desk, tutor, "skip");
    }
    tutor.view()
}

/// Finished or not, over several sittings; those at which nothing was entered are none.
#[test]
fn every_problem_that_was_worked_at_may_be_looked_at_again() {
    let saves = tempfile::tempdir().unwrap();
    let finished = work(
        saves.path(),
        1,
        &["skip", "hinge", "2", "", "W1 = 3*3"],
        true,
    );
    let lines = ["weight of the counter, middle, down", "quit"];
    work(saves.path(), 3, &lines, false);
    work(saves.path(), 5, &[], false);
    let mut desk = desk(saves.path());
    let before = kinds(saves.path());
    let listed = desk.earlier();
    let told: Vec<(usize, bool)> = listed.iter().map(|it| (it.lines, it.finished)).collect();
    assert_eq!(told, [(1, false), (2, true)]);
    assert!(listed.iter().all(|it| it.day.len() == 10), "{listed:?}");
    let again = desk.look_again(1).unwrap();
    assert_eq!(again.views.last(), Some(&finished));
    // After each line, and before the first: as it was then.
    let lines: Vec<usize> = again.views.iter().map(|view| view.lines.len()).collect();
    let steps: Vec<usize> = (0..lines.len()).collect();
    assert_eq!(lines, steps);
    assert!(again.views[2].estimates, "as it was asked then");
    // That one left is no line; taken up again, it is one problem.
    assert_eq!(desk.look_again(0).unwrap().views.len(), 2);
    let mut opening = desk.resume().unwrap();
    enter(&mut desk, opening.session.as_mut(), "crate, 1.2 m, down");
    drop(desk);
    let mut desk = super::desk(saves.path());
    assert_eq!(desk.earlier().len(), 2);
    assert_eq!(desk.look_again(0).unwrap().views.len(), 3);
    assert!(desk.look_again(2).is_err());
    let after = kinds(saves.path());
    assert_eq!(after[..before.len()], before, "nothing is written");
}
