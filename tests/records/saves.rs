//! The saves folder: learners, sittings, damaged files and troubles.

use super::{EARLY, LATE, line, lines, opened};
use leverwright::record::{Closed, Damage, Ending, Entry, RecordId};
use leverwright::store::{
    Cause, Doing, Flush, LearnerName, NameTrouble, Note, Sitting, Store, StoreTrouble, Wishes, now,
    saves_folder,
};
use leverwright::text::Words;
use std::ffi::OsStr;
use std::fs;
use std::path::Path;

fn open_store() -> (tempfile::TempDir, Store) {
    let folder = tempfile::tempdir().unwrap();
    let store = Store::open(&folder.path().join("deep/saves")).unwrap();
    (folder, store)
}

fn write(sitting: &mut Sitting, entry: Entry) -> RecordId {
    let record = sitting.number(&now(), entry);
    let id = record.id.clone();
    sitting.append(record).unwrap();
    id
}

#[test]
fn verif_two_sittings_at_once_share_nothing() {
    let (_folder, store) = open_store();
    let learner = store.default_learner().unwrap();
    let work = |number: usize| {
        let mut sitting = store.begin_sitting(&learner, EARLY, Flush::ToDisk).unwrap();
        let problem = write(&mut sitting, opened(&number.to_string(), None));
        for index in 0..50 {
            write(
                &mut sitting,
                line(Some(&problem), &format!("{number}.{index}")),
            );
        }
        sitting.path().to_owned()
    };
    let paths = std::thread::scope(|scope| {
        let workers = [1, 2].map(|number| scope.spawn(move || work(number)));
        workers.map(|worker| worker.join().unwrap())
    });
    assert_ne!(paths[0], paths[1]);
    let history = store.history(&learner).unwrap();
    assert_eq!(history.journals.len(), 2);
    for journal in &history.journals {
        assert_eq!((journal.records.len(), lines(journal).len()), (52, 50));
        assert_eq!(journal.beginning().unwrap().learner, "learner");
    }
    assert!(history.notes.is_empty());
}

#[test]
fn verif_the_newest_open_problem_is_found_whatever_the_names_of_the_files() {
    let (_folder, store) = open_store();
    let learner = store.default_learner().unwrap();
    assert_eq!(store.unfinished(&learner).unwrap().resume, None);
    for (at, problem) in [(LATE, "\"late\""), (EARLY, "\"early\"")] {
        let mut sitting = store.begin_sitting(&learner, at, Flush::ToSystem).unwrap();
        let record = sitting.number(at, opened(problem, None));
        sitting.append(record).unwrap();
    }
    let resume = store.unfinished(&learner).unwrap().resume.unwrap();
    assert_eq!(resume.problem_json, "\"late\"");
}

#[test]
fn verif_damaged_lines_are_set_aside_once_and_the_journal_stays() {
    let (_folder, store) = open_store();
    let learner = store.default_learner().unwrap();
    let mut sitting = store.begin_sitting(&learner, EARLY, Flush::ToDisk).unwrap();
    let problem = write(&mut sitting, opened("{}", None));
    write(&mut sitting, line(Some(&problem), "T = 31 N"));
    write(&mut sitting, line(Some(&problem), "T = 32 N"));
    let mut bytes = fs::read(sitting.path()).unwrap();
    // Sitting ids and sums are random and may hold the digits too.
    let typed = b"T = 31 N";
    let place = bytes
        .windows(typed.len())
        .position(|part| part == typed)
        .unwrap()
        + 4;
    bytes[place] = 0xFF;
    bytes.truncate(bytes.len() - 5);
    fs::write(sitting.path(), &bytes).unwrap();

    let found = store.unfinished(&learner).unwrap();
    let aside = sitting.path().with_extension("damaged.txt");
    let note = Note::SetAside {
        lines: 2,
        place: aside.clone(),
    };
    assert_eq!(found.notes, [note]);
    assert_eq!(found.resume.unwrap().lines.len(), 0);
    let kept = fs::read_to_string(&aside).unwrap();
    assert!(
        kept.contains("3\twrong_checksum\t") && kept.contains("4\ttorn\t"),
        "{kept}"
    );
    assert!(kept.contains("T = 32 N"));

    assert!(
        store.unfinished(&learner).unwrap().notes.is_empty(),
        "told once"
    );
    assert_eq!(fs::read_to_string(&aside).unwrap(), kept);
    assert_eq!(fs::read(sitting.path()).unwrap(), bytes);
}

#[test]
fn verif_names_are_any_text_and_never_a_path() {
    let (folder, store) = open_store();
    let long = "ß".repeat(80);
    let names = [
        "Zoë 😀",
        "../../escape",
        "a/b\\c",
        "CON",
        "x\u{1b}[2J\u{0}",
        &long,
        "Zoë 😀",
    ];
    for name in names {
        store.add_learner(&LearnerName::new(name).unwrap()).unwrap();
    }
    let learners = store.learners().unwrap();
    assert_eq!(
        learners.len(),
        names.len(),
        "two learners may bear one name"
    );
    for learner in &learners {
        let name = learner.name().unwrap();
        assert!(names.contains(&name.as_str()), "{name:?}");
        assert!(!name.shown().chars().any(char::is_control));
        assert!(
            learner
                .id()
                .bytes()
                .all(|byte| byte.is_ascii_alphanumeric())
        );
    }
    assert!(!folder.path().join("escape").exists());
    assert_eq!(LearnerName::new(" \t "), Err(NameTrouble::Empty));
    assert_eq!(
        LearnerName::new(&"😀".repeat(81)),
        Err(NameTrouble::TooLong { characters: 81 })
    );
}

#[test]
fn verif_only_learners_are_listed_and_a_broken_file_hides_nobody() {
    let (_folder, store) = open_store();
    let root = store.folder();
    fs::create_dir_all(root.join("sample")).unwrap();
    fs::write(root.join("sample/learner.json"), "{}").unwrap();
    fs::create_dir_all(root.join("lost+found")).unwrap();
    fs::create_dir_all(root.join("empty")).unwrap();
    fs::write(root.join("notes.txt"), "mine").unwrap();
    fs::create_dir_all(root.join("broken")).unwrap();
    fs::write(root.join("broken/learner.json"), "{\"name\":").unwrap();
    fs::create_dir_all(root.join("bare")).unwrap();
    fs::write(root.join("bare/x.jsonl"), "").unwrap();
    let default = store.default_learner().unwrap();
    assert_eq!(store.default_learner().unwrap(), default);
    let learners = store.learners().unwrap();
    let ids: Vec<&str> = learners.iter().map(|learner| learner.id()).collect();
    assert_eq!(ids, ["bare", "broken", "learner"]);
}

#[test]
fn verif_the_saves_folder_follows_the_rule() {
    let folder = tempfile::tempdir().unwrap();
    let (here, data) = (folder.path(), Path::new("/data/leverwright"));
    let wishes = Wishes {
        option: Some(Path::new("mine")),
        variable: Some(OsStr::new("/from/variable")),
        started_in: here,
        data_folder: Some(data),
    };
    assert_eq!(saves_folder(&wishes), here.join("mine"));
    let without_option = Wishes {
        option: None,
        ..wishes
    };
    assert_eq!(saves_folder(&without_option), Path::new("/from/variable"));
    let bare = Wishes {
        variable: Some(OsStr::new("")),
        ..without_option
    };
    assert_eq!(saves_folder(&bare), data.join("saves"));
    fs::create_dir(here.join("saves")).unwrap();
    assert_eq!(saves_folder(&bare), data.join("saves"), "no lessons here");
    fs::create_dir(here.join("lessons")).unwrap();
    assert_eq!(saves_folder(&bare), here.join("saves"));
    let nowhere = Wishes {
        data_folder: None,
        started_in: Path::new("/nowhere"),
        ..bare
    };
    assert_eq!(saves_folder(&nowhere), Path::new("/nowhere/saves"));
}

#[test]
fn verif_troubles_say_what_where_and_what_to_do() {
    let folder = tempfile::tempdir().unwrap();
    let file = folder.path().join("file");
    fs::write(&file, "").unwrap();
    let trouble = Store::open(&file).unwrap_err();
    assert_eq!(
        (trouble.doing, &trouble.cause),
        (Doing::MakeFolder, &Cause::NotAFolder)
    );
    assert!(trouble.to_string().contains(&file.display().to_string()));

    let store = Store::open(&folder.path().join("saves")).unwrap();
    let learner = store.default_learner().unwrap();
    let mut sitting = store.begin_sitting(&learner, EARLY, Flush::ToDisk).unwrap();
    fs::remove_dir_all(store.folder()).unwrap();
    let record = sitting.number(EARLY, line(None, "T = 3 N"));
    let trouble = sitting.append(record).unwrap_err();
    assert_eq!(
        (trouble.doing, &trouble.cause),
        (Doing::Append, &Cause::Vanished)
    );
    assert_eq!(store.history(&learner).unwrap_err().cause, Cause::Vanished);
    let trouble = store
        .begin_sitting(&learner, EARLY, Flush::ToDisk)
        .unwrap_err();
    assert_eq!(trouble.doing, Doing::StartJournal);

    // The drive is connected again: the line that was kept is written.
    store.default_learner().unwrap();
    sitting.retry().unwrap();
    let history = store.history(&learner).unwrap();
    assert_eq!(history.journals[0].records[1].entry, line(None, "T = 3 N"));
}

#[test]
fn verif_every_trouble_and_note_has_its_words() {
    let words = Words::english();
    let mut sentences = Vec::new();
    let causes = [
        Cause::NotAllowed,
        Cause::DiskFull,
        Cause::Vanished,
        Cause::NotAFolder,
        Cause::Other("odd".to_owned()),
    ];
    for doing in [
        Doing::MakeFolder,
        Doing::ReadFolder,
        Doing::WriteLearner,
        Doing::StartJournal,
        Doing::Append,
    ] {
        for cause in causes.clone() {
            let place = "/x/y".into();
            sentences.push(
                StoreTrouble {
                    doing,
                    place,
                    cause,
                }
                .say(&words),
            );
        }
    }
    for lines in [1, 2] {
        let place = Path::new("/x/y");
        sentences.push(
            Note::SetAside {
                lines,
                place: place.into(),
            }
            .say(&words),
        );
        sentences.push(
            Note::NotSetAside {
                lines,
                place: place.into(),
            }
            .say(&words),
        );
        let system = "odd".to_owned();
        sentences.push(
            Note::Unreadable {
                place: place.into(),
                system,
            }
            .say(&words),
        );
    }
    for sentence in &sentences {
        let sentence = sentence.to_string();
        assert!(sentence.contains("/x/y"), "{sentence}");
        assert!(!sentence.contains(['[', '{', '!']), "{sentence}");
    }
    for trouble in [NameTrouble::Empty, NameTrouble::TooLong { characters: 81 }] {
        assert!(!trouble.say(&words).to_string().contains(['[', '{', '!']));
    }
    let missing = String::new();
    for why in [
        Damage::Torn,
        Damage::WrongChecksum,
        Damage::NotARecord,
        Damage::Incomplete { missing },
    ] {
        assert!(words.has(why.words_key()));
    }
}

/// A clock set back orders sittings wrongly, but neither loses a line nor offers a problem twice.
#[test]
fn verif_a_clock_set_back_loses_no_line() {
    let (_folder, store) = open_store();
    let learner = store.default_learner().unwrap();
    let mut sitting = store
        .begin_sitting(&learner, LATE, Flush::ToSystem)
        .unwrap();
    let at = |sitting: &mut Sitting, at: &str, entry: Entry| {
        let record = sitting.number(at, entry);
        let id = record.id.clone();
        sitting.append(record).unwrap();
        id
    };
    let first = at(&mut sitting, LATE, opened("{}", None));
    at(&mut sitting, EARLY, line(Some(&first), "one"));
    // The next start, an hour before the first.
    let mut sitting = store
        .begin_sitting(&learner, EARLY, Flush::ToSystem)
        .unwrap();
    let second = at(&mut sitting, EARLY, opened("{}", Some(&first)));
    at(&mut sitting, EARLY, line(Some(&second), "two"));
    let resume = store.unfinished(&learner).unwrap().resume.unwrap();
    let texts: Vec<&str> = resume.lines.iter().map(|line| line.text.as_str()).collect();
    assert_eq!((resume.opened, texts), (second.clone(), vec!["one", "two"]));
    let end = Entry::Closed(Closed {
        problem: second,
        ending: Ending::Finished,
    });
    at(&mut sitting, EARLY, end);
    assert_eq!(store.unfinished(&learner).unwrap().resume, None);
}

#[cfg(unix)]
#[test]
fn verif_pipes_and_circles_of_links_in_the_folder_stop_nobody() {
    let (_folder, store) = open_store();
    let learner = store.default_learner().unwrap();
    let folder = store.folder().join("learner");
    let pipe = |name: &str| {
        let made = std::process::Command::new("mkfifo")
            .arg(folder.join(name))
            .status();
        assert!(made.unwrap().success());
    };
    pipe("a.jsonl");
    fs::remove_file(folder.join("learner.json")).unwrap();
    pipe("learner.json");
    std::os::unix::fs::symlink("b.jsonl", folder.join("b.jsonl")).unwrap();
    std::os::unix::fs::symlink("nowhere", folder.join("c.jsonl")).unwrap();
    assert_eq!(store.default_learner().unwrap(), learner);
    assert_eq!(store.learners().unwrap().len(), 1);
    let history = store.history(&learner).unwrap();
    assert!(history.journals.is_empty());
    assert_eq!(history.notes.len(), 3, "{:?}", history.notes);
}
