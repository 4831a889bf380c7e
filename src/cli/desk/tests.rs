//! The record behind the tutor: what is on disk when, and what comes back.

mod again;
mod damage;
mod estimates;
mod people;

use super::*;
use crate::cli::library::Library;
use crate::lesson::ClassProfile;
use crate::practice::Tutor;
use crate::record::{Journal, parse};
use crate::session::View;
use std::fs;
use std::path::PathBuf;

const COUNTER: usize = 0;

pub(super) fn desk(saves: &Path) -> JournalDesk {
    let words = Words::english();
    JournalDesk::open(
        Library::open(None, ClassProfile::default(), &words),
        saves,
        &words,
        None,
    )
}

fn started(desk: &mut JournalDesk, seed: u64) -> Opening {
    let words = Words::english();
    let found = desk.library.drawn(COUNTER, seed, &words).unwrap();
    desk.opening(found).unwrap()
}

pub(super) fn enter(
    desk: &mut JournalDesk,
    tutor: &mut dyn Tutor,
    line: &str,
) -> (Vec<Prose>, Turn) {
    let mut notes = desk.entered(line);
    let turn = tutor.submit(line);
    notes.extend(desk.judged(&turn));
    (notes, turn)
}

pub(super) fn files(saves: &Path) -> Vec<PathBuf> {
    let folder = saves.join("learner");
    let entries = fs::read_dir(folder).into_iter().flatten().flatten();
    let mut files: Vec<PathBuf> = entries
        .map(|entry| entry.path())
        .filter(|path| path.extension().is_some_and(|ending| ending == "jsonl"))
        .collect();
    files.sort();
    files
}

/// Every record of all sittings as a word each, sittings in the order of their start.
fn kinds(saves: &Path) -> Vec<String> {
    let mut journals: Vec<Journal> = files(saves)
        .iter()
        .map(|path| parse(&fs::read_to_string(path).unwrap()))
        .collect();
    journals.sort_by(|a, b| a.start().cmp(&b.start()));
    let records = journals.into_iter().flat_map(|journal| journal.records);
    records
        .map(|record| match record.entry {
            Entry::Sitting(_) => "sitting".to_owned(),
            Entry::Opened(opened) if opened.continues.is_some() => "taken up".to_owned(),
            Entry::Opened(_) => "opened".to_owned(),
            Entry::Line(line) => format!("line {}", line.text),
            Entry::Verdict(verdict) => format!("verdict {}", verdict.truth),
            Entry::Closed(closed) => format!("closed {:?}", closed.ending),
            Entry::Other(_) => "other".to_owned(),
        })
        .collect()
}

/// What the learner has put right is known in the next sitting; what was only named is not.
#[test]
fn verif_a_mistake_is_kept_once_its_line_was_put_right() {
    let saves = tempfile::tempdir().unwrap();
    {
        let mut desk = desk(saves.path());
        let mut opening = started(&mut desk, 3);
        let tutor = opening.session.as_mut();
        enter(&mut desk, tutor, "skip");
        enter(&mut desk, tutor, "hinge");
        let wrong = enter(&mut desk, tutor, "Wb = 18/9.8").1.kept;
        assert_eq!(
            (wrong.mistakes, wrong.confirmed.len()),
            (vec!["divided-by-g".to_owned()], 0)
        );
        let right = enter(&mut desk, tutor, "Wb = 18*9.8").1.kept;
        assert_eq!(right.confirmed, ["divided-by-g"]);
        // Named, and not put right.
        let named = enter(&mut desk, tutor, "W1 = 13").1.kept;
        assert_eq!(
            (named.mistakes[0].as_str(), named.confirmed.len()),
            ("mass-for-weight", 0)
        );
    }
    let known = BTreeMap::from([("divided-by-g".to_owned(), 1)]);
    let mut next = desk(saves.path());
    assert_eq!(next.confirmed, known);
    // A problem tells what was known when it was opened, so its lines are answered alike later.
    let mut opening = started(&mut next, 1);
    enter(&mut next, opening.session.as_mut(), "skip");
    let texts = files(saves.path()).into_iter().map(fs::read_to_string);
    let opened = texts.filter(|text| {
        let told = "\"options\":{\"confirmed\":\"divided-by-g:1\"}";
        text.as_ref().is_ok_and(|text| text.contains(told))
    });
    assert_eq!(opened.count(), 1);
}

/// Enters `show` and `skip` until the walk is at its end.
fn walk_through(desk: &mut JournalDesk, tutor: &mut dyn Tutor) {
    for _ in 0..60 {
        if enter(desk, tutor, "skip").1.course == Course::Finished {
            return;
        }
    }
    panic!("the walk does not end");
}

#[test]
fn verif_nothing_is_written_before_the_first_line_and_a_line_before_its_verdict() {
    let saves = tempfile::tempdir().unwrap();
    let mut desk = desk(saves.path());
    let mut opening = started(&mut desk, 3);
    assert!(files(saves.path()).is_empty(), "looking is no sitting");
    assert!(desk.entered("skip").is_empty());
    assert_eq!(kinds(saves.path()), ["sitting", "opened", "line skip"]);
    let turn = opening.session.submit("skip");
    assert!(desk.judged(&turn).is_empty());
    assert_eq!(kinds(saves.path())[3..], ["verdict skipped"]);
    assert!(desk.has_kept_all());
}

#[test]
fn verif_a_session_dropped_without_a_word_comes_back_exactly() {
    let saves = tempfile::tempdir().unwrap();
    let before = {
        let mut desk = desk(saves.path());
        let mut opening = started(&mut desk, 3);
        for line in ["skip", "hinge", "12*", "hint", "hint", "hint", "quit"] {
            enter(&mut desk, opening.session.as_mut(), line);
        }
        opening.session.view()
    };
    let mut desk = desk(saves.path());
    let left = desk.unfinished().unwrap();
    let working = before.lines.iter().filter(|line| line.number.is_some());
    assert_eq!(left.title, before.title);
    assert_eq!((left.lines, working.count()), (2, 2), "orders are no lines");
    let mut opening = desk.resume().unwrap();
    assert!(opening.resumed && opening.notes.is_empty());
    let after = opening.session.view();
    assert_eq!(after.lines, before.lines, "hints and all");
    assert_eq!(after.course, Course::On, "leaving is not done again");
    assert_eq!(files(saves.path()).len(), 1, "looking is no sitting");
    enter(&mut desk, opening.session.as_mut(), "skip");
    let kinds = kinds(saves.path());
    let last: Vec<&str> = kinds
        .iter()
        .rev()
        .take(4)
        .rev()
        .map(|kind| &**kind)
        .collect();
    assert_eq!(
        last,
        ["sitting", "taken up", "line skip", "verdict skipped"]
    );
}

#[test]
fn verif_a_line_without_verdict_is_judged_when_it_is_taken_up() {
    let saves = tempfile::tempdir().unwrap();
    {
        let mut desk = desk(saves.path());
        let mut opening = started(&mut desk, 3);
        enter(&mut desk, opening.session.as_mut(), "skip");
        desk.entered("hinge");
    }
    let mut first = desk(saves.path());
    let opening = first.resume().unwrap();
    assert_eq!(opening.session.view().lines.len(), 2);
    assert_eq!(
        kinds(saves.path())[5..],
        ["sitting", "taken up", "verdict holds"]
    );
    drop(first);
    let again = desk(saves.path());
    let orphans = again.resume.as_ref().unwrap().orphans().count();
    assert_eq!(orphans, 0);
}

#[test]
fn verif_a_finished_problem_is_closed_even_if_the_program_stopped_at_its_last_line() {
    let saves = tempfile::tempdir().unwrap();
    {
        let mut desk = desk(saves.path());
        let mut opening = started(&mut desk, 3);
        walk_through(&mut desk, opening.session.as_mut());
        assert!(desk.resume.is_none());
    }
    assert_eq!(kinds(saves.path()).last().unwrap(), "closed Finished");
    assert!(desk(saves.path()).unfinished().is_none());

    // The end, and then the last verdict too, never reach the disk.
    let journal = files(saves.path()).remove(0);
    let text = fs::read_to_string(&journal).unwrap();
    for missing in [1, 2] {
        let lines: Vec<&str> = text.lines().collect();
        fs::write(&journal, lines[..lines.len() - missing].join("\n") + "\n").unwrap();
        let mut desk = desk(saves.path());
        let opening = desk.resume().unwrap();
        assert_eq!(opening.session.view().course, Course::Finished);
        desk.closed(true);
        assert!(desk.unfinished().is_none(), "offered again and again");
        for later in files(saves.path()).iter().filter(|path| **path != journal) {
            fs::remove_file(later).unwrap();
        }
    }
}

#[test]
fn verif_what_is_put_away_is_not_offered_again_and_an_older_one_is() {
    let saves = tempfile::tempdir().unwrap();
    for seed in [3, 4] {
        let mut desk = desk(saves.path());
        let mut opening = started(&mut desk, seed);
        enter(
            &mut desk,
            opening.session.as_mut(),
            &format!("W = {seed} N"),
        );
    }
    for expected in ["W = 4 N", "W = 3 N"] {
        let mut desk = desk(saves.path());
        assert_eq!(desk.resume.as_ref().unwrap().lines[0].text, expected);
        desk.decline();
        assert!(desk.unfinished().is_none());
    }
    assert!(desk(saves.path()).unfinished().is_none());
    let left = kinds(saves.path());
    assert_eq!(left.iter().filter(|kind| *kind == "closed Left").count(), 2);
    assert_eq!(
        left.iter().filter(|kind| kind.starts_with("line")).count(),
        2
    );
}

#[test]
fn verif_a_trouble_with_the_disk_is_told_once_and_never_leaves_a_working_with_a_gap() {
    let saves = tempfile::tempdir().unwrap();
    let mut desk = desk(saves.path());
    let mut opening = started(&mut desk, 3);
    // The learner's folder goes away, as a drive that is pulled out.
    let folder = saves.path().join("learner");
    fs::remove_dir_all(&folder).unwrap();
    let (notes, turn) = enter(&mut desk, opening.session.as_mut(), "skip");
    assert_eq!(notes.len(), 1, "told plainly");
    assert_eq!(turn.kept.truth, "skipped", "and the work goes on");
    fs::create_dir(&folder).unwrap();
    let (notes, _) = enter(&mut desk, opening.session.as_mut(), "hinge");
    assert!(notes.is_empty(), "told once");
    assert!(!desk.has_kept_all());
    assert!(
        files(saves.path()).is_empty(),
        "no working without its beginning"
    );
    desk.closed(false);
    let mut next = started(&mut desk, 4);
    let (notes, _) = enter(&mut desk, next.session.as_mut(), "skip");
    assert!(notes.is_empty());
    assert_eq!(kinds(saves.path()).len(), 4, "the next problem is recorded");
}

#[test]
fn verif_a_journal_that_cannot_be_read_is_told_of_once() {
    let saves = tempfile::tempdir().unwrap();
    fs::create_dir_all(saves.path().join("learner/2026-11-25-odd.jsonl")).unwrap();
    let mut desk = desk(saves.path());
    assert_eq!(desk.take_notes().len(), 1);
    desk.closed(false);
    assert!(desk.take_notes().is_empty());
}

#[test]
fn verif_an_endless_line_is_recorded_as_too_long_only() {
    let saves = tempfile::tempdir().unwrap();
    let mut desk = desk(saves.path());
    let mut opening = started(&mut desk, 3);
    let (_, turn) = enter(&mut desk, opening.session.as_mut(), &"9".repeat(100_000));
    assert_eq!(turn.kept.truth, "too-long");
    let size = fs::metadata(&files(saves.path())[0]).unwrap().len();
    assert!(size < 20_000, "{size} bytes");
    let kept = fs::read_to_string(&files(saves.path())[0]).unwrap();
    assert!(
        kept.contains(&format!("\"{}…\"", "9".repeat(500))),
        "{kept}"
    );
    let mut desk = self::desk(saves.path());
    let turns = desk.resume().unwrap().session.view().lines;
    assert_eq!(turns.len(), 1);
    assert!(turns[0].message.to_string().contains("longer than 500"));
}

#[test]
fn verif_a_full_disk_makes_no_file_and_what_waited_is_written_when_there_is_room() {
    // Only the store's own tests can fill a disk; here the journal's place is taken by a folder
    // after its first line, which fails each write just so.
    let saves = tempfile::tempdir().unwrap();
    let mut desk = desk(saves.path());
    let mut opening = started(&mut desk, 3);
    enter(&mut desk, opening.session.as_mut(), "skip");
    let journal = files(saves.path()).remove(0);
    let before = fs::read_to_string(&journal).unwrap();
    fs::remove_file(&journal).unwrap();
    fs::create_dir(&journal).unwrap();
    let told: Vec<usize> = ["hinge", "hint", "hint"]
        .map(|line| enter(&mut desk, opening.session.as_mut(), line).0.len())
        .to_vec();
    assert_eq!(told, [1, 0, 0], "told once");
    assert!(!desk.has_kept_all());
    fs::remove_dir(&journal).unwrap();
    // Leaving tries once more.
    desk.closed(false);
    assert!(desk.has_kept_all());
    let after = fs::read_to_string(&journal).unwrap();
    assert!(after.starts_with(&before), "{after}");
    assert_eq!(kinds(saves.path()).len(), 2 + 2 * 4);
    assert_eq!(files(saves.path()).len(), 1);
}

#[test]
fn verif_a_journal_damaged_at_any_byte_is_taken_up_without_a_panic() {
    let saves = tempfile::tempdir().unwrap();
    {
        let mut desk = desk(saves.path());
        let mut opening = started(&mut desk, 3);
        for line in ["skip", "hinge", "12*", "hint", "16*9.8", "back"] {
            enter(&mut desk, opening.session.as_mut(), line);
        }
    }
    let journal = files(saves.path()).remove(0);
    let clean = fs::read(&journal).unwrap();
    // Every 211th byte: every line is met, and no two runs differ.
    for place in (0..clean.len()).step_by(211) {
        let mut bytes = clean.clone();
        bytes[place] ^= 1 << (place % 8);
        fs::write(&journal, &bytes).unwrap();
        let mut desk = self::desk(saves.path());
        // Where the start of the problem is lost, its lines are told of too.
        let most = 1 + usize::from(desk.unfinished().is_none());
        assert!(desk.take_notes().len() <= most, "byte {place}");
        if desk.unfinished().is_some() {
            let opening = desk.resume().unwrap();
            assert_eq!(opening.session.view().course, Course::On, "byte {place}");
        }
        for path in fs::read_dir(saves.path().join("learner"))
            .unwrap()
            .flatten()
        {
            if path.path() != journal {
                fs::remove_file(path.path()).unwrap();
            }
        }
    }
}

#[test]
fn verif_a_problem_of_a_newer_version_is_told_of_once_and_stays() {
    let saves = tempfile::tempdir().unwrap();
    {
        let mut desk = desk(saves.path());
        let mut opening = started(&mut desk, 3);
        enter(&mut desk, opening.session.as_mut(), "skip");
    }
    let journal = files(saves.path()).remove(0);
    let text = fs::read_to_string(&journal).unwrap();
    // The same records, their problem in another form.
    let records = parse(&text).records.into_iter().map(|mut record| {
        if let Entry::Opened(opened) = &mut record.entry {
            opened.problem_json =
                opened
                    .problem_json
                    .replacen("\"leverwright\":1", "\"leverwright\":2", 1);
            assert!(opened.problem_json.contains("\"leverwright\":2"));
        }
        record.to_line() + "\n"
    });
    let newer: String = records.collect();
    fs::write(&journal, &newer).unwrap();
    let mut desk = desk(saves.path());
    let notes = desk.take_notes();
    assert_eq!(notes.len(), 1);
    assert!(notes[0].to_string().contains("newer"), "{}", notes[0]);
    assert!(desk.unfinished().is_none());
    desk.closed(false);
    assert!(desk.take_notes().is_empty(), "told once");
    assert_eq!(fs::read_to_string(&journal).unwrap(), newer);
}

#[test]
fn verif_older_problems_that_were_left_can_be_gone_on_with_too() {
    let saves = tempfile::tempdir().unwrap();
    let mut titles = Vec::new();
    for seed in [3, 4, 5] {
        let mut desk = desk(saves.path());
        let mut opening = started(&mut desk, seed);
        let line = format!("W = {seed} N");
        enter(&mut desk, opening.session.as_mut(), &line);
        titles.push(opening.session.view().statement);
    }
    let mut first = desk(saves.path());
    assert_eq!(first.resume.as_ref().unwrap().lines[0].text, "W = 5 N");
    assert_eq!(first.older_unfinished().len(), 2);
    let mut opening = first.resume_older(1).unwrap();
    assert!(opening.resumed);
    assert_eq!(opening.session.view().statement, titles[0]);
    enter(&mut first, opening.session.as_mut(), "skip");
    first.closed(false);
    // What was worked at last is offered first; the others stay.
    assert_eq!(first.resume.as_ref().unwrap().lines.len(), 2);
    let others: Vec<&str> = first
        .older
        .iter()
        .map(|left| left.lines[0].text.as_str())
        .collect();
    assert_eq!(others, ["W = 5 N", "W = 4 N"]);
    assert!(first.resume_older(2).is_err());
}

/// A folder that can be opened and not written: its path leaves room for the learner's file and none
/// for the longer name of a journal (also where the tests may write everything).
#[cfg(target_os = "linux")]
#[test]
fn verif_a_folder_that_takes_no_journal_is_told_of_before_the_first_line() {
    const LONGEST_PATH: usize = 4095;
    let root = tempfile::tempdir().unwrap();
    let mut saves = root.path().to_owned();
    let wanted = LONGEST_PATH - "/learner/learner.json".len() - 3;
    while saves.as_os_str().len() + 202 < wanted {
        saves.push("s".repeat(150));
    }
    saves.push("s".repeat(wanted - saves.as_os_str().len() - 1));
    fs::create_dir_all(saves.join("learner")).unwrap();
    fs::write(saves.join("learner/learner.json"), "{\"version\": 1}").unwrap();
    let mut desk = desk(&saves);
    assert!(!desk.has_kept_all());
    let mut opening = started(&mut desk, 3);
    let told: Vec<String> = opening.notes.iter().map(ToString::to_string).collect();
    assert_eq!(told.len(), 1, "{told:?}");
    assert!(told[0].contains("nothing will be saved"), "{told:?}");
    let (notes, turn) = enter(&mut desk, opening.session.as_mut(), "skip");
    assert!(notes.is_empty(), "told once");
    assert_eq!(turn.kept.truth, "skipped", "and the work goes on");
    assert!(!desk.has_kept_all());
}

/// An example that was left comes back with the reason that was asked, and what is shown of it is
/// no problem finished alone.
#[test]
fn verif_a_worked_example_is_gone_on_with_where_it_was_left() {
    let saves = tempfile::tempdir().unwrap();
    let left = {
        let mut desk = desk(saves.path());
        let mut opening = started(&mut desk, 3);
        for line in ["worked", "1", "2", "skip", "3"] {
            enter(&mut desk, opening.session.as_mut(), line);
        }
        opening.session.view()
    };
    assert!(!left.choices.is_empty());
    let mut desk = desk(saves.path());
    let mut opening = desk.resume().unwrap();
    assert!(opening.whole && opening.first.is_none());
    assert_eq!(opening.session.view(), left);
    while opening.session.view().course == Course::On {
        enter(&mut desk, opening.session.as_mut(), "skip");
    }
    desk.closed(true);
    assert!(desk.unfinished().is_none());
    let standing = desk.lessons()[COUNTER].standing;
    assert_eq!(standing, crate::practice::Standing::Begun);
}
