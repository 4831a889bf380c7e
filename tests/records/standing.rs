//! How a learner stands with a lesson, by the rule that `record/standing.rs` states.

use super::{closed, sitting};
use leverwright::record::{
    Ending, Entry, Journal, Line, Opened, Origin, Record, RecordId, Standing, Verdict, work_over,
};
use std::collections::BTreeMap;

fn at_lesson(lesson: &str, continues: Option<&RecordId>) -> Entry {
    Entry::Opened(Box::new(Opened {
        problem_json: "{}".to_owned(),
        origin: Some(Origin {
            code: String::new(),
            lesson: lesson.to_owned(),
            lesson_version: 1,
            seed: 1,
        }),
        options: BTreeMap::new(),
        continues: continues.cloned(),
    }))
}

/// A problem whose lines got these verdicts, `hint4` for the last hint; `finished` ends it.
fn problem(name: &str, lesson: &str, at: &str, verdicts: &str) -> Vec<Record> {
    let opened = RecordId::new(name, 1);
    let mut entries = vec![at_lesson(lesson, None)];
    for word in verdicts.split_whitespace() {
        if word == "finished" {
            entries.push(closed(&opened, Ending::Finished));
            continue;
        }
        let line = RecordId::new(name, entries.len() as u64 + 1);
        entries.push(Entry::Line(Line {
            problem: Some(opened.clone()),
            text: word.to_owned(),
        }));
        let hint = word
            .strip_prefix("hint")
            .and_then(|stage| stage.parse().ok());
        entries.push(Entry::Verdict(Verdict {
            line,
            truth: hint.map_or(word, |_| "hint").to_owned(),
            hint,
            ..Verdict::default()
        }));
    }
    sitting(name, at, entries)
}

fn standing(problems: &[Vec<Record>], now: &str) -> Option<Standing> {
    let journals: Vec<Journal> = problems
        .iter()
        .map(|records| Journal {
            records: records.clone(),
            damaged: Vec::new(),
        })
        .collect();
    Some(work_over(&journals).get("beam")?.standing(now))
}

#[test]
fn two_problems_in_a_row_finished_alone_make_a_lesson_mastered() {
    let now = "2026-11-03T09:00:00.000Z";
    let cases: &[(&[&str], Option<Standing>)] = &[
        (&[], None),
        // Opened and looked at only.
        (&[""], None),
        (&["holds"], Some(Standing::Begun)),
        (&["not-understood"], Some(Standing::Begun)),
        (&["holds finished"], Some(Standing::Begun)),
        (
            &["holds finished", "holds finished"],
            Some(Standing::Mastered),
        ),
        // One line in four that does not hold is no harm; more is.
        (
            &["holds finished", "holds wrong rounded follows finished"],
            Some(Standing::Mastered),
        ),
        (
            &["holds finished", "holds wrong rounded finished"],
            Some(Standing::Begun),
        ),
        // The first three hints are no harm; to be told the line is.
        (
            &["holds finished", "hint1 hint2 hint3 holds finished"],
            Some(Standing::Mastered),
        ),
        (
            &["holds finished", "hint4 holds finished"],
            Some(Standing::Begun),
        ),
        (
            &["holds finished", "shown holds finished"],
            Some(Standing::Begun),
        ),
        (
            &["holds finished", "skipped holds finished"],
            Some(Standing::Begun),
        ),
        // A problem that is still open counts neither way.
        (
            &["holds finished", "wrong wrong", "holds finished"],
            Some(Standing::Mastered),
        ),
        (
            &["holds finished", "holds finished", "skipped finished"],
            Some(Standing::Begun),
        ),
        (
            &["skipped finished", "holds finished", "holds finished"],
            Some(Standing::Mastered),
        ),
    ];
    for (problems, expected) in cases {
        let problems: Vec<Vec<Record>> = problems
            .iter()
            .enumerate()
            .map(|(place, verdicts)| {
                let at = format!("2026-11-0{}T09:00:00.000Z", place + 1);
                problem(&format!("s{place}"), "beam", &at, verdicts)
            })
            .collect();
        assert_eq!(standing(&problems, now), *expected, "{problems:?}");
    }
}

#[test]
fn what_is_mastered_is_due_after_a_week_and_each_time_twice_as_late() {
    let at = "2026-11-01T20:00:00.000Z";
    for (times, now, expected) in [
        (2, "2026-11-07T23:00:00.000Z", Standing::Mastered),
        (2, "2026-11-08T01:00:00.000Z", Standing::Due),
        (3, "2026-11-14T20:00:00.000Z", Standing::Mastered),
        (3, "2026-11-15T20:00:00.000Z", Standing::Due),
        (5, "2026-12-26T20:00:00.000Z", Standing::Mastered),
        (5, "2026-12-27T20:00:00.000Z", Standing::Due),
        (9, "2026-12-27T20:00:00.000Z", Standing::Due),
        // A clock that was set back, or a time that nobody can read.
        (2, "2026-10-01T20:00:00.000Z", Standing::Mastered),
        (2, "soon", Standing::Mastered),
    ] {
        let problems: Vec<Vec<Record>> = (0..times)
            .map(|place| problem(&format!("s{place}"), "beam", at, "holds finished"))
            .collect();
        assert_eq!(standing(&problems, now), Some(expected), "{times} {now}");
    }
}

#[test]
fn a_problem_taken_up_later_is_one_problem_and_other_lessons_count_for_themselves() {
    let begun = problem("s0", "beam", "2026-11-01T09:00:00.000Z", "skipped");
    let opened = RecordId::new("s0", 1);
    let taken_up = RecordId::new("s1", 1);
    let entries = vec![
        at_lesson("beam", Some(&opened)),
        closed(&taken_up, Ending::Finished),
    ];
    let ended = sitting("s1", "2026-11-02T09:00:00.000Z", entries);
    let alone = |name: &str, lesson: &str| {
        problem(name, lesson, "2026-11-03T09:00:00.000Z", "holds finished")
    };
    let now = "2026-11-04T09:00:00.000Z";
    // It was passed over in the first sitting, so its end in the second is not alone.
    let problems = [begun.clone(), ended.clone(), alone("s2", "beam")];
    assert_eq!(standing(&problems, now), Some(Standing::Begun));
    let problems = [begun, ended, alone("s2", "beam"), alone("s3", "beam")];
    assert_eq!(standing(&problems, now), Some(Standing::Mastered));
    assert_eq!(
        standing(&[alone("s4", "ladder"), alone("s5", "ladder")], now),
        None
    );
}
