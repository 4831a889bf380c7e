//! The language of the program: what it is asked for, and what it is then.

use assert_cmd::Command;
use serde_json::Value;
use std::fs;
use std::path::Path;

const VARIABLES: [&str; 4] = ["LEVERWRIGHT_LANGUAGE", "LC_ALL", "LC_MESSAGES", "LANG"];

/// Runs the program with these variables and no others that tell a language.
fn run(saves: &Path, variables: &[(&str, &str)], arguments: &[&str], input: &str) -> (i32, String) {
    let mut command = Command::new(env!("CARGO_BIN_EXE_leverwright"));
    for variable in VARIABLES.iter().chain(&["LEVERWRIGHT_CLASS"]) {
        command.env_remove(variable);
    }
    let output = command
        .envs(variables.iter().copied())
        .args(arguments)
        .arg("--saves")
        .arg(saves)
        .write_stdin(input.to_owned())
        .output()
        .unwrap();
    let text = [output.stdout, output.stderr].concat();
    let text = String::from_utf8(text).unwrap();
    // Lines are wrapped where the words need it.
    let flowing = text.split_whitespace().collect::<Vec<_>>().join(" ");
    (output.status.code().unwrap(), flowing)
}

const GERMAN: &str = "Der Übungsmast der Bergwacht";
const ENGLISH: &str = "The drill mast of the mountain rescue";

#[test]
fn the_option_goes_before_the_variable_and_that_before_the_system() {
    let saves = tempfile::tempdir().unwrap();
    let system = |locale| vec![("LANG", locale)];
    let named = |tag, locale| vec![("LEVERWRIGHT_LANGUAGE", tag), ("LC_ALL", locale)];
    type Row<'a> = (Vec<(&'a str, &'a str)>, &'a [&'a str], &'a str);
    let rows: [Row<'_>; 12] = [
        (vec![], &[], ENGLISH),
        (vec![], &["--language", "de"], GERMAN),
        (vec![], &["--language", "de_AT"], GERMAN),
        (system("de_DE.UTF-8"), &[], GERMAN),
        (system("fr_FR.UTF-8"), &[], ENGLISH),
        (system("de_DE.UTF-8"), &["--language", "en"], ENGLISH),
        (named("de", "C"), &[], GERMAN),
        (named("en", "de_DE"), &[], ENGLISH),
        (named("", "de_DE"), &[], GERMAN),
        (named("de", "de_DE"), &["--language", "en"], ENGLISH),
        (vec![("LC_ALL", "C"), ("LANG", "de_DE")], &[], ENGLISH),
        (
            vec![("LC_MESSAGES", "de_DE"), ("LANG", "en_GB")],
            &[],
            GERMAN,
        ),
    ];
    for (variables, more, title) in rows {
        let arguments = [&["solve", "mast", "--seed", "7"], more].concat();
        let (code, text) = run(saves.path(), &variables, &arguments, "");
        assert_eq!(code, 0, "{text}");
        assert!(text.starts_with(title), "{variables:?} {more:?}: {text}");
    }
    let (code, text) = run(
        saves.path(),
        &[],
        &["solve", "mast", "--language", "fr"],
        "",
    );
    assert_eq!(code, 2, "{text}");
    assert!(text.contains("one of en, de is wanted"), "{text}");
}

/// The numbers are the same in both, printed as each language has them; JSON is no language.
#[test]
fn the_language_changes_no_number() {
    let saves = tempfile::tempdir().unwrap();
    let solved = |more: &[&str]| {
        let arguments = [&["solve", "mast", "--seed", "7"], more].concat();
        run(saves.path(), &[], &arguments, "").1
    };
    let (english, german) = (solved(&[]), solved(&["--language", "de"]));
    assert!(english.contains("dT = 3.8 m"), "{english}");
    assert!(german.contains("dT = 3,8 m"), "{german}");
    let code = |text: &str| {
        let (_, after) = text.split_once("Code: ").unwrap();
        after.split_whitespace().next().unwrap().to_owned()
    };
    assert_eq!(code(&english), code(&german));
    let json = |more: &[&str]| -> Value {
        let more = [&["--json"], more].concat();
        serde_json::from_str(&solved(&more)).unwrap()
    };
    let (one, other) = (json(&[]), json(&["--language", "de"]));
    let values = |solved: &Value| -> Vec<Value> {
        let steps = solved["steps"].as_array().unwrap();
        steps.iter().map(|step| step["value"].clone()).collect()
    };
    assert_eq!(values(&one), values(&other));
}

/// Forces, pivot, numbers and orders in German words, to the end of the problem.
#[test]
fn a_problem_is_worked_to_its_end_in_german_lines() {
    let saves = tempfile::tempdir().unwrap();
    let lines = [
        "Gewicht des Mastes, Mitte, nach unten",
        "Gewicht der Übungspuppe an der Mastspitze, nach unten",
        "Das Seil zieht am Knoten nach links",
        "Hinweis",
        "zurück",
        "Das Seil zieht am Knoten waagrecht nach rechts",
        "Gelenkkraft am Fuß, Richtung unbekannt",
        "um das Gelenk",
        "kleiner",
        "mb mal g",
        "W1 = 600 N",
        "weiter",
        "zurück",
        "W1 = 696 N",
        "25 Grad",
        "zeigen",
        "Wb·sin 25°",
        "W1 sin 25",
        "T cos 65",
        "warum",
        "T sin 65",
        "298*3,3 + 294*6,6 = T sin 65 * 3,8",
        "T ist gleich 849 N",
        "Hx = 849 N, nach links",
        "1402 N nach oben",
        "Wurzel aus (849² + 1402²)",
        "arctan(1402/849)",
        "ende",
    ];
    let arguments = [
        "practice",
        "mast",
        "--seed",
        "7",
        "--plain",
        "--language",
        "de",
    ];
    let (code, text) = run(saves.path(), &[], &arguments, &lines.join("\n"));
    assert_eq!(code, 0, "{text}");
    for said in [
        "Welche Kräfte wirken auf den Mast?",
        "Ja: das Gewicht des Mastes, dort und so gerichtet.",
        "Das sind alle 4 Kräfte.",
        "Um welchen Punkt nimmst du die Momente?",
        "Sieh dir noch einmal an: Sinus und Kosinus vertauscht",
        "Der ganze Rechenweg auf deine Art",
        "Alles, was du eingegeben hast, ist gespeichert.",
    ] {
        assert!(text.contains(said), "{said} is not said in: {text}");
    }
    let english = [" the ", " of ", " your ", "For learning only"];
    for word in english {
        assert!(!text.contains(word), "{word} stands in: {text}");
    }
}

/// What was chosen in the settings is remembered, and a problem that was left keeps its language.
#[test]
fn a_language_that_was_chosen_is_remembered() {
    let saves = tempfile::tempdir().unwrap();
    let plain = |arguments: &[&str], input: &str| {
        let arguments = [&["practice", "--plain"], arguments].concat();
        run(saves.path(), &[], &arguments, input).1
    };
    let text = plain(
        &["mast", "--seed", "7"],
        "weight of the mast, middle, down\nquit\n",
    );
    assert!(text.contains(ENGLISH), "{text}");
    // English, then German; the list of lessons speaks it at once.
    let text = plain(&[], "settings 5\nsettings 5\nx\nende\n");
    assert!(text.contains("Die Sprache"), "{text}");
    assert!(text.contains(GERMAN), "{text}");
    let kept = fs::read_to_string(saves.path().join("learner/settings.json")).unwrap();
    assert!(kept.contains("\"language\":\"de\""), "{kept}");
    let text = plain(&["mast", "--seed", "8"], "ende\n");
    assert!(text.contains(GERMAN), "{text}");
    // The problem that was left is read as it was entered.
    let text = plain(&["mast", "--seed", "7"], "quit\n");
    assert!(text.contains(ENGLISH), "{text}");
    assert!(text.contains("Named so far: 1."), "{text}");
    // The option counts for its start.
    let text = plain(&["counter", "--seed", "8", "--language", "en"], "quit\n");
    assert!(text.contains("The counter of the market boat"), "{text}");
}

/// A German problem is taken up in German, whatever the language is by then.
#[test]
fn a_problem_that_was_left_is_taken_up_in_its_language() {
    let saves = tempfile::tempdir().unwrap();
    let arguments = ["practice", "mast", "--seed", "7", "--plain"];
    let german = [&arguments[..], &["--language", "de"]].concat();
    let input = "Gewicht des Mastes, Mitte, nach unten\nende\n";
    run(saves.path(), &[], &german, input);
    let (_, text) = run(saves.path(), &[], &arguments, "Hinweis\nende\n");
    assert!(text.contains(GERMAN), "{text}");
    assert!(text.contains("Bisher genannt: 1."), "{text}");
    let journal = fs::read_dir(saves.path().join("learner")).unwrap();
    let kept = journal
        .filter_map(|entry| fs::read_to_string(entry.unwrap().path()).ok())
        .any(|text| text.contains("\"language\":\"de\""));
    assert!(kept);
}

#[test]
fn a_class_has_its_language() {
    let saves = tempfile::tempdir().unwrap();
    let profile = saves.path().join("class.json");
    let class = |display: &str| {
        let text =
            format!("{{\"leverwright\": 1, \"class\": \"10b\", \"display\": {{{display}}}}}");
        fs::write(&profile, text).unwrap();
        let arguments = ["practice", "mast", "--seed", "7", "--plain"];
        run(saves.path(), &[], &arguments, "").1
    };
    assert!(class("\"language\": \"de\"").contains(GERMAN));
    assert!(class("\"decimal\": \"comma\"").contains(ENGLISH));
    let wrong = class("\"language\": \"fr\"");
    assert!(wrong.contains("language"), "{wrong}");
    assert!(!wrong.contains(ENGLISH), "{wrong}");
}

/// The help, and why a problem cannot be solved, are told in the language of the start.
#[test]
fn help_and_reasons_are_told_in_the_language_of_the_start() {
    let saves = tempfile::tempdir().unwrap();
    let run = |arguments: &[&str]| run(saves.path(), &[("LANG", "de_DE.UTF-8")], arguments, "");
    let (code, text) = run(&["--help"]);
    assert_eq!(code, 0);
    assert!(text.starts_with("Hilft beim Rechnen mit Kräften"), "{text}");
    for said in [
        "Aufruf: leverwright",
        "Befehle:",
        "Optionen:",
        "--seed <NUMBER>",
    ] {
        assert!(text.contains(said), "{text}");
    }
    let (_, text) = run(&["solve", "--help"]);
    assert!(
        text.contains("Argumente:") && text.contains("der Hebelarm"),
        "{text}"
    );
    let (_, text) = run(&["solve", "--language", "en", "--help"]);
    assert!(text.contains("Usage: leverwright solve"), "{text}");
    for (file, why) in [
        ("tests/refusals/mech.json", "Nichts verhindert, dass"),
        (
            "tests/refusals/indet.json",
            "unabhängige Gleichgewichtsbedingungen",
        ),
        ("tests/refusals/ropepush.json", "ein Seil kann nur ziehen"),
        ("tests/refusals/slips.json", "N Reibung sind nötig"),
    ] {
        let (code, text) = run(&["solve", file]);
        assert_eq!(code, 1, "{text}");
        assert!(text.contains(why), "{text}");
        let (_, text) = run(&["practice", file, "--plain"]);
        assert!(text.contains(why), "{text}");
    }
}
