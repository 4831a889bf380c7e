//! A second language in full: a problem walked in German from its first force to its end, a free
//! working with a mistake named in German, and no English in between.

use leverwright::draw::draw_sister;
use leverwright::lesson::{built_in, parse_problem};
use leverwright::session::{Course, Session, Sign, Turn, View};
use leverwright::text::{Language, Words};
use std::collections::BTreeSet;

fn german() -> Words {
    Words::of(Language::tagged("de").unwrap())
}

/// A drawn problem of a lesson in a language.
fn open(lesson: &str, seed: u64, words: Words) -> Session {
    let tag = words.language().tag();
    let lessons = built_in();
    let lesson = lessons.iter().find(|known| known.id() == lesson).unwrap();
    let drawn = crate::pinned::drawn_then(lesson, seed);
    let problem = lesson.problem_at(&drawn.place, tag).unwrap();
    let sister = draw_sister(lesson, &drawn.place, seed, tag).map(|drawn| drawn.problem);
    let mut session = Session::start(problem, sister, words).unwrap();
    session.ask_estimates();
    session
}

/// Every sentence that a learner has before her.
fn sentences(view: &View, turn: Option<&Turn>) -> BTreeSet<String> {
    let mut all: Vec<String> = vec![
        view.title.clone(),
        view.statement.clone(),
        view.caution.clone(),
        view.question.to_string(),
        view.example.to_string(),
    ];
    all.extend(view.scene.iter().map(ToString::to_string));
    all.extend(view.choices.iter().map(ToString::to_string));
    all.extend(view.summary.iter().map(ToString::to_string));
    all.extend(view.steps.iter().map(|step| step.title.clone()));
    all.extend(view.names.iter().map(|name| name.meaning.clone()));
    all.extend(view.pivots.iter().map(|place| place.told.to_string()));
    for worked in &view.keys {
        all.push(worked.title.to_string());
        all.extend(worked.lines.iter().map(|line| line.told.to_string()));
    }
    for line in turn.iter().map(|turn| &turn.line).chain(&view.lines) {
        all.extend([line.about.clone(), line.verdict.clone()]);
        all.push(line.message.to_string());
        all.extend(line.hints.iter().map(ToString::to_string));
    }
    all.into_iter().filter(|said| !said.is_empty()).collect()
}

/// Words that stand in almost any English sentence and in no German one.
const ENGLISH: [&str; 12] = [
    "the", "of", "your", "you", "and", "which", "with", "from", "is", "that", "this", "not",
];

/// What of these sentences is English, or no sentence at all.
fn leaks(said: &BTreeSet<String>) -> Vec<&String> {
    let is_leak = |sentence: &&String| {
        let words = sentence.split(|c: char| !c.is_alphabetic());
        let english = words.clone().any(|word| ENGLISH.contains(&word));
        let key = sentence.starts_with('[') && sentence.contains('.') && !sentence.contains(' ');
        english || key || sentence.contains('{')
    };
    said.iter().filter(is_leak).collect()
}

/// German and English line by line through the mast, seed 3, with the signs of the verdicts. A mast
/// of 5.4 m at 55° with the horizontal; 63 kg, 71 kg at 4.5 m and 11 kg at the tip; the rope at
/// 4.2 m runs back up at 10° with the horizontal. By hand: Wb = 617 N, W1 = 696 N, W2 = 108 N,
/// T = 833 N, Hx = 820 N, Hy = 1276 N, H = 1520 N at 57.3°.
const MAST: &[(&str, Sign)] = &[
    ("Gewicht des Mastes, Mitte, nach unten", Sign::Right),
    (
        "das Gewicht der Übungspuppe wirkt 4,5 m vom Gelenk entfernt senkrecht nach unten",
        Sign::Right,
    ),
    ("Materialsack, an der Mastspitze, nach unten", Sign::Right),
    ("Wind von links", Sign::Wrong),
    ("Hinweis", Sign::Talk),
    ("das Seil zieht am Knoten nach rechts unten", Sign::Wrong),
    ("weiter", Sign::Talk),
    ("zurück", Sign::Talk),
    ("Gelenkkraft am Fuß, Richtung unbekannt", Sign::Right),
    ("warum", Sign::Talk),
];

#[test]
fn a_problem_is_walked_in_german_from_its_first_force_to_its_end() {
    for (lesson, seed) in [("counter", 2), ("walkway", 5), ("mast", 3)] {
        let mut said = BTreeSet::new();
        let (mut session, mut english) = (
            open(lesson, seed, german()),
            open(lesson, seed, Words::english()),
        );
        let mut shown = sentences(&english.view(), None);
        said.append(&mut sentences(&session.view(), None));
        for order in ["Hinweis", "Hinweis", "zeigen", "zurück", "zeigen"] {
            let turn = session.submit(order);
            said.append(&mut sentences(&session.view(), Some(&turn)));
        }
        english.submit("show");
        let pivot = session.submit("um das Gelenk");
        assert_eq!(pivot.line.sign, Sign::Right, "{}", pivot.line.message);
        said.append(&mut sentences(&session.view(), Some(&pivot)));
        english.submit("about the hinge");
        // The estimates are passed over, and each step is hinted at before its line is shown.
        for _ in 0..60 {
            if session.course() == Course::Finished {
                break;
            }
            for order in [
                "warum", "1 N", "Hinweis", "Hinweis", "Hinweis", "weiter", "zeigen",
            ] {
                let turn = session.submit(order);
                said.append(&mut sentences(&session.view(), Some(&turn)));
            }
            for order in ["why", "1 N", "hint", "hint", "hint", "keep", "show"] {
                let turn = english.submit(order);
                shown.append(&mut sentences(&english.view(), Some(&turn)));
            }
        }
        assert_eq!(session.course(), Course::Finished, "{lesson}");
        assert_eq!(english.course(), Course::Finished, "{lesson}");
        assert!(said.len() > 80, "{} sentences", said.len());
        assert_eq!(leaks(&said), Vec::<&String>::new(), "{lesson}");
        // What both say alike is a formula or a name.
        let word = |said: &&&String| {
            let mut words = said.split(|c: char| !c.is_alphabetic());
            words.any(|word| word.chars().count() > 4)
        };
        let alike: Vec<&String> = said.intersection(&shown).collect();
        let alike: Vec<&&String> = alike.iter().filter(word).collect();
        assert_eq!(alike, Vec::<&&String>::new(), "{lesson}");
        assert!(!leaks(&shown).is_empty(), "the English sentences are found");
    }
}

#[test]
fn forces_told_in_german_are_right_or_wrong_as_they_are() {
    let mut session = open("mast", 3, german());
    for (line, sign) in MAST {
        let turn = session.submit(line);
        assert_eq!(turn.line.sign, *sign, "{line}: {}", turn.line.message);
    }
}

/// A line of a free working, what it is, and a stretch of what is said of it.
type Row = (&'static str, Sign, &'static str);

/// The walkway of `tests/lines.rs`: Wb = 352.8 N, W1 = 803.6 N, W2 = 235.2 N, γ = 25°,
/// T = 3588 N, Hx = −3252 N, Hy = −124.7 N.
const WALKWAY: &str = include_str!("lines/walkway.json");

#[rustfmt::skip]
const FREELY: &[Row] = &[
    ("Wb = 36 mal 9,8 ist gleich 352,8 N", Sign::Right, ""),
    ("also W1 = 82·9,8 = 803,6 N", Sign::Right, ""),
    ("W2 = 24 kg mal 9,8 N/kg ergibt 245 N", Sign::Wrong, ""),
    ("W2 = 235,2 N", Sign::Right, ""),
    // The part along the walkway in the place of the part across it.
    ("Momente um das Gelenk: 352,8*2,1 + 803,6*2,0 + 235,2*4,2 = T*cos 25*2,2", Sign::Wrong, "Du hast bei T mit cos γ gerechnet"),
    ("352,8*2,1 + 803,6*2,0 + 235,2*4,2 = T*Sinus von 25°*2,2", Sign::Right, "Das Gleichgewicht stimmt"),
    ("T = ungefähr 3588 N", Sign::Right, ""),
    ("Hx = 3252 N nach rechts", Sign::Wrong, ""),
    ("Hx = 3252 N, nach links", Sign::Right, "Hx zeigt nach links"),
    ("die Kraft des Gelenks zeigt nach links unten", Sign::Noted, "Das stimmt für H"),
    ("die Kraft des Gelenks zeigt nach rechts oben", Sign::Wrong, ""),
];

#[test]
fn a_mistake_in_a_free_working_is_named_in_german() {
    let problem = WALKWAY
        .replace("\"walkway\"", "\"Steg\"")
        .replace("\"hinge\",", "\"Gelenk\",");
    let mut session = Session::start(parse_problem(&problem).unwrap(), None, german()).unwrap();
    session.submit("frei");
    for (line, sign, said) in FREELY {
        let turn = session.submit(line);
        let message = turn.line.message.to_string();
        assert_eq!(turn.line.sign, *sign, "{line}: {message}");
        assert!(message.contains(said), "{line}: {message}");
    }
}
