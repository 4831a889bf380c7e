//! Who works in a saves folder: names, and records that go from one to another.

use super::{EARLY, LATE, line, lines, opened};
use leverwright::record::{Entry, RecordId};
use leverwright::store::{Doing, Flush, Learner, LearnerName, Sitting, Store};
use std::fs;

fn store() -> (tempfile::TempDir, Store) {
    let folder = tempfile::tempdir().unwrap();
    let store = Store::open(folder.path()).unwrap();
    (folder, store)
}

fn name(text: &str) -> LearnerName {
    LearnerName::new(text).unwrap()
}

fn write(sitting: &mut Sitting, entry: Entry) -> RecordId {
    let record = sitting.number(EARLY, entry);
    let id = record.id.clone();
    sitting.append(record).unwrap();
    id
}

/// A sitting with one line in it.
fn begun(store: &Store, learner: &Learner, at: &str, text: &str) -> (Sitting, RecordId) {
    let mut sitting = store.begin_sitting(learner, at, Flush::ToSystem).unwrap();
    let problem = write(&mut sitting, opened("{}", None));
    write(&mut sitting, line(Some(&problem), text));
    (sitting, problem)
}

fn all_lines(store: &Store, learner: &Learner) -> Vec<String> {
    let history = store.history(learner).unwrap();
    assert!(history.notes.is_empty(), "{:?}", history.notes);
    history.journals.iter().flat_map(lines).collect()
}

#[test]
fn verif_a_learner_who_is_named_keeps_the_records_and_the_sitting() {
    let (_folder, store) = store();
    let unnamed = store.default_learner().unwrap();
    let (mut sitting, problem) = begun(&store, &unnamed, EARLY, "first");
    let named = store
        .name_learner(&unnamed, &name("Zoë"), Some(&mut sitting))
        .unwrap();
    assert_eq!((named.id(), named.name()), ("learner", Some(&name("Zoë"))));
    assert!(store.is_in_use(&named), "the mark is on the new file");
    write(&mut sitting, line(Some(&problem), "second"));
    assert_eq!(all_lines(&store, &named), ["first", "second"]);
    assert_eq!(store.default_learner().unwrap(), named);
    assert_eq!(store.learners().unwrap(), std::slice::from_ref(&named));
    // Another name replaces it.
    store.name_learner(&named, &name("Zoe"), None).unwrap();
    assert_eq!(store.learners().unwrap()[0].name(), Some(&name("Zoe")));
    drop(sitting);
    assert!(!store.is_in_use(&named));
}

#[test]
fn verif_the_records_of_the_unnamed_go_to_the_one_who_is_known() {
    let (_folder, store) = store();
    let unnamed = store.default_learner().unwrap();
    let known = store.add_learner(&name("Bo")).unwrap();
    drop(begun(&store, &unnamed, EARLY, "an earlier day"));
    let (mut sitting, problem) = begun(&store, &unnamed, LATE, "first");
    store
        .hand_over(&unnamed, &known, Some(&mut sitting))
        .unwrap();
    assert!(!store.is_in_use(&unnamed) && store.is_in_use(&known));
    write(&mut sitting, line(Some(&problem), "second"));
    let expected = ["an earlier day", "first", "second"];
    assert_eq!(all_lines(&store, &known), expected);
    assert_eq!(all_lines(&store, &unnamed), [""; 0]);
    assert_eq!(store.latest_learner().unwrap(), known);
}

#[test]
fn verif_what_another_program_writes_stays_where_it_is() {
    let (_folder, store) = store();
    let unnamed = store.default_learner().unwrap();
    let known = store.add_learner(&name("Bo")).unwrap();
    let (mut others, problem) = begun(&store, &unnamed, EARLY, "theirs");
    let (mut sitting, _) = begun(&store, &unnamed, LATE, "mine");
    store
        .hand_over(&unnamed, &known, Some(&mut sitting))
        .unwrap();
    write(&mut others, line(Some(&problem), "theirs too"));
    assert_eq!(all_lines(&store, &known), ["mine"]);
    assert_eq!(all_lines(&store, &unnamed), ["theirs", "theirs too"]);
}

#[test]
fn verif_a_sitting_that_cannot_go_stays_whole_where_it_was() {
    let (folder, store) = store();
    let unnamed = store.default_learner().unwrap();
    let known = store.add_learner(&name("Bo")).unwrap();
    let (mut sitting, problem) = begun(&store, &unnamed, EARLY, "first");
    fs::remove_dir_all(folder.path().join(known.id())).unwrap();
    let trouble = store
        .hand_over(&unnamed, &known, Some(&mut sitting))
        .unwrap_err();
    assert_eq!(trouble.doing, Doing::MoveJournal);
    write(&mut sitting, line(Some(&problem), "second"));
    assert_eq!(all_lines(&store, &unnamed), ["first", "second"]);
}

#[test]
fn verif_who_worked_last_is_at_work_first() {
    let (_folder, store) = store();
    let unnamed = store.latest_learner().unwrap();
    assert_eq!(unnamed.id(), "learner");
    let bo = store.add_learner(&name("Bo")).unwrap();
    assert_eq!(
        store.latest_learner().unwrap(),
        unnamed,
        "nobody has worked yet"
    );
    let (sitting, _) = begun(&store, &bo, EARLY, "first");
    let _ = begun(&store, &unnamed, EARLY, "first");
    // By the clock of the file system, whatever the records say.
    let late = std::time::SystemTime::now() + std::time::Duration::from_secs(60);
    let journal = fs::File::options()
        .append(true)
        .open(sitting.path())
        .unwrap();
    journal.set_modified(late).unwrap();
    assert_eq!(store.latest_learner().unwrap(), bo);
}
