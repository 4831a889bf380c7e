//! What comes back of a problem some of whose saved lines were damaged, and what comes after one.

use super::super::*;
use super::{desk, enter, files};
use crate::practice::Tutor;
use crate::session::LineView;
use std::fs;

const MAST: usize = 2;

/// A sitting at the mast of a seed, in a folder.
fn sitting(saves: &Path, seed: u64, lines: &[&str]) -> Box<dyn Tutor> {
    let mut desk = desk(saves);
    let words = Words::english();
    let found = match seed {
        // As it was drawn before draw rules changed.
        1610 => desk.library.by_code("mast-101SXC7-RQG4S", &words),
        _ => desk.library.drawn(MAST, seed, &words),
    };
    let found = found.unwrap();
    let mut opening = desk.opening(found).unwrap();
    for line in lines {
        enter(&mut desk, opening.session.as_mut(), line);
    }
    opening.session
}

/// Changes the text of the first journal, so that the sum of a line no longer fits.
fn damage(saves: &Path, from: &str, into: &str) {
    let path = files(saves).remove(0);
    let text = fs::read_to_string(&path).unwrap();
    assert_eq!(text.matches(from).count(), 1, "{from}");
    fs::write(&path, text.replace(from, into)).unwrap();
}

fn verdicts(lines: &[LineView]) -> Vec<(Option<usize>, String)> {
    let told = |line: &LineView| (line.number, line.verdict.clone());
    lines.iter().map(told).collect()
}

/// Takes up the mast with one text damaged: every verdict and the question are as they were.
fn comes_back(seed: u64, lines: &[&str], from: &str, into: &str) -> Opening {
    let saves = tempfile::tempdir().unwrap();
    let before = sitting(saves.path(), seed, lines).view();
    damage(saves.path(), from, into);
    let opening = desk(saves.path()).resume().unwrap();
    let after = opening.session.view();
    assert_eq!(verdicts(&after.lines), verdicts(&before.lines));
    assert_eq!(after.question, before.question);
    assert!(opening.resumed && !opening.whole);
    opening
}

fn told(opening: &Opening) -> String {
    let notes: Vec<String> = opening.notes.iter().map(ToString::to_string).collect();
    notes.join(" ")
}

#[test]
fn verif_lines_behind_a_lost_right_one_keep_question_and_verdict() {
    let lines = ["skip", "skip", "480.2 N", "500 N", "110"];
    let opening = comes_back(1601, &lines, "\"text\":\"480.2", "\"text\":\"481.2");
    assert!(told(&opening).contains("Line 1 of this working could not be read."));
    let view = opening.session.view();
    assert_eq!(view.lines[2].text, "a line that could not be read");
    assert!(!view.lines[2].message.to_string().contains("480"));
    let lines = [
        "skip", "skip", "372.4 N", "705.6 N", "35", "80", "213.6", "404.7",
    ];
    for lost in &lines[2..] {
        let from = format!("\"text\":\"{lost}\"");
        comes_back(1610, &lines, &from, "\"text\":\"1\"");
    }
}

#[test]
fn verif_lines_behind_a_lost_wrong_one_and_its_values_keep_theirs() {
    let lines = ["skip", "skip", "380 N", "go on", "705.6 N", "35", "80"];
    for lost in ["380 N", "go on"] {
        let from = format!("\"text\":\"{lost}\"");
        let saves = tempfile::tempdir().unwrap();
        let before = sitting(saves.path(), 1610, &lines).view();
        damage(saves.path(), &from, "\"text\":\"?\"");
        let after = desk(saves.path()).resume().unwrap().session.view();
        assert_eq!(after.question, before.question, "{lost}");
        let numbered = |lines: &[LineView]| {
            let all = verdicts(lines).into_iter();
            all.filter(|(number, _)| number.is_some())
                .collect::<Vec<_>>()
        };
        assert_eq!(numbered(&after.lines), numbered(&before.lines), "{lost}");
    }
}

#[test]
fn verif_a_line_lost_with_its_answer_leaves_the_later_ones_theirs() {
    let saves = tempfile::tempdir().unwrap();
    let lines = ["skip", "skip", "372.4 N", "705.6 N", "35"];
    let before = sitting(saves.path(), 1610, &lines).view();
    damage(saves.path(), "\"text\":\"372.4 N\"", "\"text\":\"?\"");
    damage(
        saves.path(),
        "\"progress\":[\"weight:W_b\"]",
        "\"progress\":[]",
    );
    let opening = desk(saves.path()).resume().unwrap();
    let after = opening.session.view();
    assert_eq!(after.question, before.question);
    let held: Vec<&str> = after.lines[2..].iter().map(|line| &*line.verdict).collect();
    assert_eq!(held, ["right", "right"]);
    assert!(told(&opening).contains("Not everything that was saved"));
}

#[test]
fn verif_lines_whose_problem_could_not_be_read_are_told_of() {
    let saves = tempfile::tempdir().unwrap();
    sitting(saves.path(), 1610, &["skip", "skip", "372.4 N"]);
    damage(saves.path(), "\"kind\":\"opened\"", "\"kind\":\"openid\"");
    let mut desk = desk(saves.path());
    assert!(desk.unfinished().is_none());
    let notes: Vec<String> = desk.take_notes().iter().map(ToString::to_string).collect();
    assert!(
        notes[1].starts_with("3 lines belong to a problem whose start"),
        "{notes:?}"
    );
    assert!(notes[1].contains("kept in") && notes[1].contains("cannot be shown"));
}

#[test]
fn verif_a_fresh_problem_is_another_than_the_last() {
    let saves = tempfile::tempdir().unwrap();
    let mut desk = desk(saves.path());
    // The seed by which the problem was asked for, and the list's own.
    desk.draw_from(Some(3));
    let found = desk.library.drawn(MAST, 3, &Words::english()).unwrap();
    let mut seen = vec![desk.opening(found).unwrap().session.view().statement];
    for _ in 0..3 {
        desk.closed(true);
        seen.push(desk.open(MAST).unwrap().session.view().statement);
    }
    for pair in seen.windows(2) {
        assert_ne!(pair[0], pair[1]);
    }
}
