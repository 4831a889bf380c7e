//! What a learner has chosen for the display, on disk.

use leverwright::store::{Doing, LearnerName, Store};
use leverwright::text::{Decimal, Settings, Slope, Symbols, Turning, Words};
use std::fs;

const CHOSEN: Settings = Settings {
    turning: Turning::Torque,
    decimal: Decimal::Comma,
    symbols: Symbols::Ascii,
    slope: Slope::Characters,
    language: None,
};

#[test]
fn verif_each_learner_keeps_what_was_chosen() {
    let folder = tempfile::tempdir().unwrap();
    let store = Store::open(folder.path()).unwrap();
    let one = store.default_learner().unwrap();
    let other = store.add_learner(&LearnerName::new("Bo").unwrap()).unwrap();
    assert_eq!(store.settings(&one), (None, None));
    store.keep_settings(&one, CHOSEN).unwrap();
    assert_eq!(store.settings(&one), (Some(CHOSEN), None));
    assert_eq!(store.settings(&other), (None, None));
    let text = fs::read_to_string(folder.path().join("learner/settings.json")).unwrap();
    let expected = "{\"version\":1,\"turning\":\"torque\",\"decimal\":\"comma\",\
                    \"symbols\":\"ascii\",\"slope\":\"characters\"}\n";
    assert_eq!(text, expected);
    assert_eq!(store.learners().unwrap().len(), 2);
    let names = fs::read_dir(folder.path().join("learner")).unwrap().count();
    assert_eq!(names, 2, "nothing half-written is left");
}

#[test]
fn verif_a_damaged_file_stands_for_a_new_learner_and_is_told_of() {
    let folder = tempfile::tempdir().unwrap();
    let store = Store::open(folder.path()).unwrap();
    let learner = store.default_learner().unwrap();
    let place = folder.path().join("learner/settings.json");
    let comma = Settings {
        decimal: Decimal::Comma,
        ..Settings::default()
    };
    for (text, settings, read) in [
        ("{\"version\":1,\"decimal\":\"comma\"}", comma, true),
        // A newer version may say more.
        (
            "{\"version\":2,\"decimal\":\"comma\",\"size\":3}",
            comma,
            true,
        ),
        ("", Settings::default(), false),
        (
            "{\"version\":1,\"decimal\":\"dot\"}",
            Settings::default(),
            false,
        ),
        (
            "{\"version\":1,\"decimal\":\"com",
            Settings::default(),
            false,
        ),
        ("[]", Settings::default(), false),
    ] {
        fs::write(&place, text).unwrap();
        let (found, unread) = store.settings(&learner);
        let found = found.unwrap_or_default();
        assert_eq!((found, unread.is_none()), (settings, read), "{text}");
        if let Some(unread) = unread {
            assert!(
                unread
                    .say(&Words::english())
                    .to_string()
                    .contains("settings.json")
            );
        }
    }
    store.keep_settings(&learner, CHOSEN).unwrap();
    assert_eq!(store.settings(&learner), (Some(CHOSEN), None));
    fs::remove_file(&place).unwrap();
    fs::create_dir(&place).unwrap();
    assert!(store.settings(&learner).1.is_some());
    let trouble = store.keep_settings(&learner, CHOSEN).unwrap_err();
    assert_eq!(trouble.doing, Doing::WriteSettings);
}
