//! Journals: nothing that was entered is lost, whatever happens to their text.

mod people;
mod saves;
mod settings;
mod standing;

use leverwright::record::{
    Closed, Damage, Ending, Entry, FORMAT_VERSION, Journal, Line, Opened, Origin, Record, RecordId,
    Verdict, parse, unfinished, unfinished_over,
};
use proptest::prelude::*;
use std::collections::BTreeMap;

const EARLY: &str = "2026-11-25T09:00:00.000Z";
const LATE: &str = "2026-11-25T10:00:00.000Z";

fn opened(problem_json: &str, continues: Option<&RecordId>) -> Entry {
    Entry::Opened(Box::new(Opened {
        problem_json: problem_json.to_owned(),
        origin: Some(Origin {
            code: "lamp-7-k2".to_owned(),
            lesson: "lamp".to_owned(),
            lesson_version: 3,
            seed: u64::MAX,
        }),
        options: BTreeMap::from([("method".to_owned(), "lever arms".to_owned())]),
        continues: continues.cloned(),
    }))
}

fn line(problem: Option<&RecordId>, text: &str) -> Entry {
    Entry::Line(Line {
        problem: problem.cloned(),
        text: text.to_owned(),
    })
}

fn verdict(line: &RecordId) -> Entry {
    Entry::Verdict(Verdict {
        line: line.clone(),
        truth: "holds".to_owned(),
        progress: vec!["weight".to_owned()],
        mistakes: vec!["sine_for_cosine".to_owned()],
        confirmed: vec!["not_resolved".to_owned()],
        hint: Some(2),
        message: "Yes: W = 49 N.".to_owned(),
    })
}

fn closed(problem: &RecordId, ending: Ending) -> Entry {
    Entry::Closed(Closed {
        problem: problem.clone(),
        ending,
    })
}

/// The records of a sitting that never touches a disk.
fn sitting(name: &str, at: &str, entries: Vec<Entry>) -> Vec<Record> {
    let number = |(index, entry): (usize, Entry)| Record {
        id: RecordId::new(name, index as u64 + 1),
        sequence: index as u64 + 1,
        at: at.to_owned(),
        entry,
    };
    entries.into_iter().enumerate().map(number).collect()
}

fn text_of(records: &[Record]) -> String {
    records
        .iter()
        .map(|record| record.to_line() + "\n")
        .collect()
}

fn journal(name: &str, at: &str, entries: Vec<Entry>) -> Journal {
    parse(&text_of(&sitting(name, at, entries)))
}

/// A sitting with a problem, the lines given, and an answer to all lines but the last.
fn practice(texts: &[String]) -> Vec<Record> {
    let problem = RecordId::new("s", 1);
    let mut entries = vec![opened(
        r#"{"title":"Lampe – mât","givens":[0.1,1e-7]}"#,
        None,
    )];
    for (index, text) in texts.iter().enumerate() {
        entries.push(line(Some(&problem), text));
        if index + 1 < texts.len() {
            entries.push(verdict(&RecordId::new("s", entries.len() as u64)));
        }
    }
    sitting("s", EARLY, entries)
}

fn lines(journal: &Journal) -> Vec<String> {
    let resume = unfinished(journal);
    resume.map_or(Vec::new(), |resume| {
        resume.lines.into_iter().map(|line| line.text).collect()
    })
}

fn typed() -> impl Strategy<Value = String> {
    prop_oneof![
        any::<String>(),
        prop::collection::vec(any::<char>(), 500).prop_map(String::from_iter),
        Just("{\"record\":1,\"sum\":\"00000000\"}".to_owned()),
        Just("a\r\nb\u{2028}\u{0}\u{1b}[2J 😀".to_owned()),
    ]
}

proptest! {
    #![proptest_config(ProptestConfig {
        cases: 64,
        rng_seed: proptest::test_runner::RngSeed::Fixed(5),
        ..ProptestConfig::default()
    })]

    #[test]
    fn verif_records_read_back_as_written(texts in prop::collection::vec(typed(), 1..6)) {
        let records = practice(&texts);
        let text = text_of(&records);
        prop_assert_eq!(text.matches('\n').count(), records.len());
        let journal = parse(&text);
        prop_assert!(journal.damaged.is_empty());
        prop_assert_eq!(&journal.records, &records);
        prop_assert_eq!(lines(&journal), texts);
    }

    #[test]
    fn verif_flipped_bytes_never_panic_and_spare_the_other_lines(
        texts in prop::collection::vec(typed(), 1..5),
        flips in prop::collection::vec((any::<prop::sample::Index>(), 1..=255_u8), 1..5),
    ) {
        let records = practice(&texts);
        let clean = text_of(&records).into_bytes();
        let mut bytes = clean.clone();
        for (place, mask) in &flips {
            bytes[place.index(clean.len())] ^= mask;
        }
        let journal = parse(&String::from_utf8_lossy(&bytes));
        let mut start = 0;
        for record in &records {
            let end = start + record.to_line().len();
            // The line's own end may be hit and the record still be told from its neighbour.
            if bytes[start..end] == clean[start..end] {
                let newline_before = start == 0 || bytes[start - 1] == b'\n';
                let newline_after = bytes[end] == b'\n';
                let found = journal.records.contains(record);
                prop_assert!(found || !(newline_before && newline_after));
            }
            start = end + 1;
        }
        for record in &journal.records {
            prop_assert!(records.contains(record), "no record may be made up: {record:?}");
        }
    }

    #[test]
    fn verif_any_text_is_read_without_panic(text in any::<String>()) {
        let journal = parse(&text);
        prop_assert!(journal.records.is_empty());
    }

    #[test]
    fn verif_any_problem_text_comes_back(problem in any::<String>()) {
        let journal = journal("s", EARLY, vec![opened(&problem, None)]);
        prop_assert!(journal.damaged.is_empty());
        prop_assert!(unfinished(&journal).is_some());
    }
}

#[test]
fn verif_a_journal_cut_at_any_byte_keeps_every_whole_line() {
    let texts = ["W = 5 kg * 9.81", "½·L·cos(33°) — 😀", "hint", "T = 31 N"].map(str::to_owned);
    let records = practice(&texts);
    let text = text_of(&records);
    for cut in 0..=text.len() {
        let left = String::from_utf8_lossy(&text.as_bytes()[..cut]);
        let journal = parse(&left);
        // A record that lacks only its line's end is whole.
        let mut whole = 0;
        let mut end = 0;
        for record in &records {
            end += record.to_line().len();
            whole += usize::from(end <= cut);
            end += 1;
        }
        assert_eq!(journal.records, records[..whole], "cut at {cut}");
        let torn = !left.is_empty() && !left.ends_with('\n') && !records_end_at(&records, cut);
        assert_eq!(journal.damaged.len(), usize::from(torn), "cut at {cut}");
        if torn {
            assert_eq!(journal.damaged[0].line_number, whole + 1);
        }
    }
}

fn records_end_at(records: &[Record], cut: usize) -> bool {
    let mut end = 0;
    records.iter().any(|record| {
        end += record.to_line().len() + 1;
        end - 1 == cut
    })
}

#[test]
fn verif_a_torn_line_is_told_as_torn_and_a_changed_one_as_changed() {
    let records = practice(&["T = 31 N".to_owned(), "T = 32 N".to_owned()]);
    let text = text_of(&records);
    let torn = parse(&text[..text.len() - 30]);
    assert_eq!(torn.damaged[0].why, Damage::Torn);
    let changed = parse(&text.replace("T = 31 N", "T = 13 N"));
    assert_eq!(changed.damaged.len(), 1);
    assert_eq!(changed.damaged[0].line_number, 2);
    assert_eq!(changed.damaged[0].why, Damage::WrongChecksum);
    // The place of the changed line is kept, its text is not.
    assert_eq!(lines(&changed), ["", "T = 32 N"]);
    assert_eq!(parse("my notes\n").damaged[0].why, Damage::NotARecord);
}

#[test]
fn verif_a_whole_record_behind_half_a_record_is_read() {
    let records = practice(&["T = 31 N".to_owned(), "T = 32 N".to_owned()]);
    let written: Vec<String> = records.iter().map(Record::to_line).collect();
    let glued = format!("{}\n{}{}\n", written[0], &written[1][..40], written[3]);
    let journal = parse(&glued);
    assert_eq!(lines(&journal), ["T = 32 N"]);
    assert_eq!(journal.damaged.len(), 1);
    assert_eq!(journal.damaged[0].text, written[1][..40]);

    let one_line = parse(&written.join("\r"));
    assert_eq!((one_line.records, one_line.damaged.len()), (records, 0));
}

#[test]
fn verif_only_half_of_the_very_next_record_is_no_damage() {
    let records = practice(&["T = 31 N".to_owned(), "T = 32 N".to_owned()]);
    let written: Vec<String> = records.iter().map(Record::to_line).collect();
    let cases = [
        (vec![&written[0][..99], &written[0], &written[1]], 0),
        (vec![&written[1][..99], &written[0], &written[1]], 1),
        (vec![&written[0], &written[1], &written[1][..99]], 1),
        (vec!["\u{fffd}", &written[0], &written[1]], 1),
        (
            vec!["note", &written[1][..99], "", &written[1], &written[0]],
            1,
        ),
    ];
    for (lines, damaged) in cases {
        let journal = parse(&lines.join("\n"));
        assert_eq!(journal.damaged.len(), damaged, "{lines:?}");
        assert_eq!(journal.records, records[..2]);
    }
}

/// All records of a sitting begin alike: the first bytes of one are no sign of the next.
#[test]
fn verif_a_record_cut_to_its_first_bytes_is_set_aside() {
    let records = practice(&["T = 31 N".to_owned(), "T = 32 N".to_owned()]);
    let mut written: Vec<String> = records.iter().map(Record::to_line).collect();
    written[2].truncate(30);
    let journal = parse(&written.join("\n"));
    assert_eq!(journal.records.len(), records.len() - 1);
    assert_eq!(journal.damaged.len(), 1);
}

#[test]
fn verif_a_record_written_twice_counts_once_and_order_is_by_number_not_by_clock() {
    let mut records = practice(&["a".to_owned(), "b".to_owned(), "c".to_owned()]);
    for (index, record) in records.iter_mut().enumerate() {
        record.at = format!("20{:02}-01-01T00:00:00.000Z", 90 - index);
    }
    let mut shuffled: Vec<Record> = records.iter().rev().cloned().collect();
    shuffled.extend(records.clone());
    let journal = parse(&text_of(&shuffled));
    assert_eq!(journal.records, records);
    assert_eq!(lines(&journal), ["a", "b", "c"]);
}

/// Closes a hand-written record with its checksum, by way of a record of an unknown kind.
fn sealed(json: &str) -> String {
    Record {
        id: RecordId::default(),
        sequence: 0,
        at: String::new(),
        entry: Entry::Other(leverwright::record::OtherEntry {
            version: 0,
            kind: String::new(),
            json: json.to_owned(),
        }),
    }
    .to_line()
}

#[test]
fn verif_newer_versions_are_passed_over_and_kept() {
    let head = r#""id":"s-1","sequence":1,"at":"2030-01-01T00:00:00.000Z""#;
    let newer = FORMAT_VERSION + 1;
    let dance = sealed(&format!(
        r#"{{"record":{newer},{head},"kind":"dance","steps":3}}"#
    ));
    let read = parse(&dance);
    assert!(read.damaged.is_empty());
    assert!(
        matches!(&read.records[0].entry, Entry::Other(other) if other.kind == "dance" && other.version == newer)
    );
    assert_eq!(read.records[0].to_line(), dance);

    let extra = sealed(&format!(
        r#"{{"record":1,{head},"kind":"line","text":"T = 1 N","mood":{{"n":[1]}}}}"#
    ));
    assert_eq!(parse(&extra).records[0].entry, line(None, "T = 1 N"));

    let changed = sealed(&format!(
        r#"{{"record":{newer},{head},"kind":"line","words":[]}}"#
    ));
    assert!(matches!(parse(&changed).records[0].entry, Entry::Other(_)));

    let incomplete = sealed(&format!(r#"{{"record":1,{head},"kind":"line"}}"#));
    let why = &parse(&incomplete).damaged[0].why;
    assert!(matches!(why, Damage::Incomplete { missing } if missing.contains("text")));
}

#[test]
fn verif_the_problem_is_nested_as_a_value_and_its_numbers_do_not_change() {
    let problem = r#"{"title":"a","givens":[0.1,1e-7,123456789.12345679],"body":{"length":2.0}}"#;
    let record = &sitting("s", EARLY, vec![opened(problem, None)])[0];
    assert!(
        record
            .to_line()
            .contains(r#""problem":{"title":"a","givens":[0.1,1e-7,"#)
    );
    let deep = format!("{}1{}", "[".repeat(200_000), "]".repeat(200_000));
    for problem in [problem, "not { json", "1,2", "1],[2", "\"text\"", "", &deep] {
        let read = journal("s", EARLY, vec![opened(problem, None)]);
        assert_eq!(unfinished(&read).unwrap().problem_json, problem);
    }
}

#[test]
fn verif_what_was_left_open_is_found_and_nothing_else() {
    let (first, second) = (RecordId::new("s", 1), RecordId::new("s", 2));
    let cases: Vec<(&str, Vec<Entry>, Option<&RecordId>)> = vec![
        ("nothing", vec![line(None, "help")], None),
        ("open", vec![opened("1", None)], Some(&first)),
        (
            "finished",
            vec![opened("1", None), closed(&first, Ending::Finished)],
            None,
        ),
        (
            "left",
            vec![opened("1", None), closed(&first, Ending::Left)],
            None,
        ),
        (
            "two open: the last",
            vec![opened("1", None), opened("2", None)],
            Some(&second),
        ),
        (
            "the last is closed: the one before",
            vec![
                opened("1", None),
                opened("2", None),
                closed(&second, Ending::Finished),
            ],
            Some(&first),
        ),
        (
            "a circle of a damaged file",
            vec![opened("1", Some(&second)), opened("2", Some(&first))],
            None,
        ),
        ("continues itself", vec![opened("1", Some(&first))], None),
    ];
    for (what, entries, expected) in cases {
        let found = unfinished(&journal("s", EARLY, entries));
        assert_eq!(found.map(|found| found.opened).as_ref(), expected, "{what}");
    }
}

#[test]
fn verif_an_orphan_line_is_there_to_be_judged_again() {
    let read = parse(&text_of(&practice(&["a".to_owned(), "b".to_owned()])));
    let resume = unfinished(&read).unwrap();
    assert_eq!(resume.code(), Some("lamp-7-k2"));
    assert_eq!(resume.origin.as_ref().unwrap().seed, u64::MAX);
    assert_eq!(resume.last_answered().unwrap().text, "a");
    let orphans: Vec<&str> = resume.orphans().map(|line| line.text.as_str()).collect();
    assert_eq!(orphans, ["b"]);
}

#[test]
fn verif_a_problem_taken_up_again_and_again_keeps_all_its_lines() {
    let (a, b) = (RecordId::new("a", 1), RecordId::new("b", 1));
    let first = vec![opened("1", None), line(Some(&a), "one")];
    let second = vec![
        opened("1", Some(&a)),
        verdict(&RecordId::new("a", 2)),
        line(Some(&b), "two"),
    ];
    let journals = [journal("a", EARLY, first), journal("b", LATE, second)];
    let resume = unfinished_over(&journals).unwrap();
    assert_eq!(resume.opened, b);
    let texts: Vec<&str> = resume.lines.iter().map(|line| line.text.as_str()).collect();
    assert_eq!(texts, ["one", "two"]);
    assert!(
        resume.lines[0].verdict.is_some(),
        "answered a sitting later"
    );

    let end = journal("c", LATE, vec![closed(&b, Ending::Finished)]);
    let [first, second] = journals;
    assert_eq!(unfinished_over(&[first, second, end]), None);
}

/// Bytes of one journal, changed one at a time: at most the line of the byte and its neighbour go.
#[test]
fn verif_a_changed_byte_costs_at_most_its_own_line_and_a_neighbour() {
    let texts: Vec<String> = (0..20)
        .map(|number| format!("W{number} = {number}*9.8 ½"))
        .collect();
    let records = practice(&texts);
    let clean = text_of(&records).into_bytes();
    let step = (clean.len() / 2000).max(1);
    let mut tried = 0;
    for place in (0..clean.len()).step_by(step) {
        let mut bytes = clean.clone();
        bytes[place] ^= 1 << (place % 8);
        let journal = parse(&String::from_utf8_lossy(&bytes));
        assert!(journal.records.len() + 2 >= records.len(), "byte {place}");
        assert!(
            journal
                .records
                .iter()
                .all(|record| records.contains(record)),
            "byte {place}"
        );
        let _ = unfinished(&journal);
        tried += 1;
    }
    assert!(tried >= 2000, "{tried}");
}
