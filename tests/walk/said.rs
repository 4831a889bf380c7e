//! What is said of a walk: the summary, the hints' places, the counter of steps.

use super::{at_the_weights, open, right_lines};
use leverwright::session::{Course, Progress, Session, Sign};
use leverwright::sketch::{tell, told_words};

/// Mast 3 in a free working, from the pull of 811 N on.
pub(super) const FROM_THE_PULL: [&str; 5] = [
    "Hx = -811*cos 10",
    "Hy = 145*9.8 - 811*sin 10",
    "H = sqrt(798^2 + 1280^2)",
    "psi = atan(1280/798)",
    "done",
];

fn summary(session: &Session) -> String {
    let view = session.view();
    let mut told: Vec<String> = view.summary.iter().map(ToString::to_string).collect();
    for worked in &view.keys {
        told.push(worked.title.to_string());
        told.extend(worked.lines.iter().map(|line| line.told.to_string()));
    }
    told.join("\n")
}

fn pass_the_rest(session: &mut Session) {
    while session.course() == Course::On {
        session.submit("skip");
    }
}

#[test]
fn the_summary_of_a_walk_passed_over_praises_nothing() {
    let mut session = open("mast", 3);
    pass_the_rest(&mut session);
    let all = session.view().steps.len();
    let told = summary(&session);
    assert!(
        told.contains(&format!("without a hint: 0 of {all}")),
        "{told}"
    );
    assert!(
        told.contains(&format!("Passed over or shown: {all} of {all}")),
        "{told}"
    );
    assert!(!told.contains("No line of yours"), "{told}");
    assert!(told.contains("same lesson"), "{told}");
    let end = session.view().question.to_string();
    assert!(!end.contains("Well"), "{end}");
}

#[test]
fn the_summary_of_right_lines_is_praise() {
    let mut session = at_the_weights("mast", 3);
    for (_, line) in right_lines(&session) {
        session.submit(&line);
    }
    let told = summary(&session);
    assert!(told.contains("No line of yours was wrong"), "{told}");
    assert!(told.contains("Passed over or shown: 1 of"), "{told}");
    assert!(
        session
            .view()
            .question
            .to_string()
            .contains("Well worked through")
    );
}

/// What to do next is in sight without paging through the key.
#[test]
fn the_summary_says_what_to_do_next_above_the_key() {
    let mut session = at_the_weights("mast", 3);
    for (_, line) in right_lines(&session) {
        session.submit(&line);
    }
    let told = summary(&session);
    let place = |words: &str| {
        told.find(words)
            .unwrap_or_else(|| panic!("{words}: {told}"))
    };
    assert!(
        place("Next: a fresh problem") < place("The whole working"),
        "{told}"
    );
    assert!(place("The whole working") < place("W1 ="), "{told}");
}

/// What was named with "perhaps" stays so at the end; what a form proved does not.
#[test]
fn the_summary_names_the_force_that_was_missing() {
    let mut session = open("counter", 7);
    for line in [
        "weight of the counter, middle, down; rope, tip, up",
        "crate, 1.9 m, down; sack, 0.4 m, down",
        "done",
        "hinge, unknown",
    ] {
        session.submit(line);
    }
    while session.course() == Course::On {
        session.submit("skip");
    }
    let summary = session.view().summary;
    let told: Vec<String> = summary.iter().map(ToString::to_string).collect();
    let wanted = "Look again at: the force of the hinge, among the forces that act (line 3).";
    assert!(told.iter().any(|line| line == wanted), "{told:?}");
}

#[test]
fn the_summary_is_no_surer_than_what_was_said() {
    for (line, wanted) in [
        (
            "63",
            "Perhaps look again at: the mass used as a force (line 2).",
        ),
        ("63*1", "Look again at: the mass used as a force (line 2)."),
    ] {
        let mut session = at_the_weights("mast", 3);
        let said = session.submit(line).line.message.to_string();
        assert_eq!(
            said.contains("Perhaps"),
            wanted.contains("Perhaps"),
            "{said}"
        );
        pass_the_rest(&mut session);
        let told = summary(&session);
        assert!(told.lines().any(|line| line == wanted), "{told}");
    }
}

/// Lengths are told with the figures of the problem: 2.0 m where another is 4.2 m.
#[test]
fn places_are_told_with_the_figures_of_the_lesson() {
    let mut session = open("walkway", 7);
    session.submit("skip");
    let (problem, view) = (session.problem(), session.view());
    let told = told_words(
        &tell(problem, &problem.values(), &view.marks),
        session.words(),
    );
    let told: Vec<String> = told.iter().map(ToString::to_string).collect();
    assert!(
        told.join(" ").contains("acts 2.0\u{a0}m from its foot")
            || told.join(" ").contains("acts 2.0 m from its foot"),
        "{told:?}"
    );
}

/// After another angle of the drawing was given for an angle, the first hints are about angles.
#[test]
fn the_hints_at_an_angle_are_about_the_angle() {
    let mut session = at_the_weights("mast", 3);
    while !session.view().question.to_string().contains('α') {
        session.submit("skip");
    }
    let said = session.submit("55").line.message.to_string();
    assert!(said.contains("another angle"), "{said}");
    for wanted in ["Between which two lines is this angle", "mark the angle"] {
        session.submit("hint");
        let lines = session.view().lines;
        let hint = lines.iter().flat_map(|line| &line.hints).next_back();
        let hint = hint.unwrap().to_string();
        assert!(hint.contains(wanted), "{hint}");
    }
}

#[test]
fn what_was_named_stands_in_the_summary_though_it_is_no_mistake_of_the_catalogue() {
    for (step, line, wanted) in [
        (0, "630", "the value of g"),
        (0, "617.4 kg", "the unit of a value"),
        (0, "600", "too few figures"),
        (3, "63 N + 3 m", "quantities that do not fit together"),
        (11, "798 N to the right", "the way of a force"),
    ] {
        let mut session = at_the_weights("mast", 3);
        for _ in 0..step {
            session.submit("skip");
        }
        let sign = session.submit(line).line.sign;
        assert!(
            matches!(sign, Sign::Wrong | Sign::Incomplete),
            "{line}: {sign:?}"
        );
        pass_the_rest(&mut session);
        let told = summary(&session);
        assert!(told.contains(wanted), "{line}: {told}");
        assert!(!told.contains("No line of yours"), "{line}: {told}");
    }
}

#[test]
fn wrong_lines_without_a_name_and_lines_gone_on_with_are_counted() {
    let mut session = at_the_weights("mast", 3);
    session.submit("123 N");
    session.submit("go on");
    pass_the_rest(&mut session);
    let told = summary(&session);
    assert!(
        told.contains("Gone on with a line that does not hold: 1 of"),
        "{told}"
    );
    assert!(told.contains("Lines that did not hold: 1"), "{told}");
}

#[test]
fn a_hint_stands_under_the_line_it_speaks_of_and_nowhere_else() {
    let mut session = at_the_weights("mast", 3);
    session.submit("123 N");
    session.submit("hint");
    let lines = session.view().lines;
    assert_eq!(lines.last().unwrap().hints.len(), 1, "under the wrong line");
    assert_eq!(lines.last().unwrap().text, "123 N");
    session.submit("skip");
    session.submit("hint");
    let lines = session.view().lines;
    let wrong = lines.iter().find(|line| line.text == "123 N").unwrap();
    assert_eq!(
        wrong.hints.len(),
        1,
        "a hint about another step came under it"
    );
    let last = lines.last().unwrap();
    assert_eq!((last.text.as_str(), last.hints.len()), ("hint", 1));
    assert_eq!(last.about, "weight of the practice dummy");
    // What is shown tells of itself.
    session.submit("1");
    session.submit("show");
    let last = session.view().lines.last().unwrap().clone();
    assert_eq!((last.text.as_str(), last.hints.len()), ("show", 1));
    assert!(
        last.message
            .to_string()
            .contains("weight of the practice dummy")
    );
}

/// The number of steps is the same from the first line to the last, and the step asked never has
/// a smaller number than before, unless an answer is taken back.
#[test]
fn verif_the_counter_of_steps_is_steady() {
    for (lesson, seed) in [("counter", 1), ("walkway", 2), ("mast", 3), ("mast", 5)] {
        let mut session = open(lesson, seed);
        let all = session.view().steps.len();
        let lines: Vec<String> = right_lines(&session)
            .into_iter()
            .map(|(_, line)| line)
            .collect();
        let mut entered = vec!["skip".to_owned(), "hinge".to_owned()];
        for (place, line) in lines.iter().enumerate() {
            if place % 3 == 1 {
                entered.extend(["12.3".to_owned(), "go on".to_owned()]);
            }
            // A later step's line comes early now and then.
            entered.extend(lines.get(place + 2).filter(|_| place % 2 == 0).cloned());
            entered.push(line.clone());
        }
        let mut before = 0;
        for line in entered {
            session.submit(&line);
            let steps = session.view().steps;
            assert_eq!(steps.len(), all, "{lesson} {seed} {line}");
            let now = steps.iter().position(|step| step.progress == Progress::Now);
            let now = now.unwrap_or(all);
            assert!(
                now >= before,
                "{lesson} {seed} {line}: {now} after {before}"
            );
            before = now;
        }
    }
}

#[test]
fn a_minus_sign_in_front_of_a_square_may_be_squared_too() {
    let at_the_size = || {
        let mut session = at_the_weights("mast", 3);
        while !session
            .view()
            .question
            .to_string()
            .contains("the whole force")
        {
            session.submit("skip");
        }
        session
    };
    let turn = at_the_size().submit("sqrt(-798^2 + 1280^2)");
    assert_eq!(turn.line.sign, Sign::Right);
    let told = turn.line.message.to_string();
    assert!(
        told.contains("Read in the way that makes it hold"),
        "{told}"
    );
    let turn = at_the_size().submit("sqrt((-798)^2 + 1280^2)");
    assert_eq!(turn.line.sign, Sign::Right, "{}", turn.line.message);
    // After a term the sign takes away.
    let turn = at_the_size().submit("sqrt(798^2 - 1280^2 )");
    assert_ne!(turn.line.sign, Sign::Right);
}

/// The examples of `help` and of the question are numbers of no step.
#[test]
fn verif_no_example_is_the_answer() {
    for lesson in ["counter", "walkway", "mast"] {
        for seed in 1..=25 {
            let mut session = at_the_weights(lesson, seed);
            while session.course() == Course::On {
                let example = session.view().example.to_string();
                let help = session.submit("help").line.message.to_string();
                let words = format!("{help} {example}").replace(['`', '(', ')', ','], " ");
                let words: Vec<&str> = words.split_whitespace().collect();
                let numbers = words.windows(2).filter(|pair| {
                    pair[1] == "N" && pair[0].starts_with(|c: char| c.is_ascii_digit())
                });
                let numbers: Vec<String> = numbers.map(|pair| pair.join(" ")).collect();
                assert!(!numbers.is_empty(), "{help}");
                let products = words.iter().filter(|word| word.contains("*9.8"));
                let products = products.map(ToString::to_string);
                for line in numbers.into_iter().chain(products) {
                    let shown = session.view().question.to_string();
                    let turn = session.submit(&line);
                    let sign = turn.line.sign;
                    assert!(
                        !matches!(sign, Sign::Right | Sign::Incomplete),
                        "{lesson} {seed}, {shown} {line}: {sign:?}"
                    );
                }
                session.submit("skip");
            }
        }
    }
}

#[test]
fn a_capital_g_told_for_a_weight_is_read_back_as_typed() {
    let mut session = at_the_weights("mast", 3);
    let given = session.view().names;
    let mass = given.iter().find(|name| name.shown == "mb").unwrap();
    let line = format!(
        "G = {}*9.8",
        mass.value.as_ref().unwrap().split(' ').next().unwrap()
    );
    let turn = session.submit(&line);
    assert_eq!(turn.line.sign, Sign::Right);
    let read = turn.line.reading.unwrap();
    assert!(read.starts_with("G = "), "{read}");
    let turn = session.submit("g = 9.8");
    assert!(turn.line.reading.unwrap_or_default().starts_with("g = "));
}

/// The mast whose rope pulls level: Hy = Wb + W1. Of two weights against each other one has the
/// wrong sign, and that one is named. A direction in radians is no matter of several forces.
#[test]
fn what_is_said_of_the_force_of_the_hinge_is_what_the_line_does() {
    const UPRIGHT: usize = 12;
    const LEVEL: usize = 11;
    let in_radians: &[&str] = &["936", "1176", "1503", "0.899"];
    for (skips, lines, wanted) in [
        (UPRIGHT, &["Wb - W1"] as &[&str], "W1 points the other way"),
        (UPRIGHT, &["-W1 + Wb"], "W1 points the other way"),
        (UPRIGHT, &["Hy = Wb - W1"], "W1 points the other way"),
        (UPRIGHT, &["W1 - Wb"], "Wb points the other way"),
        (UPRIGHT, &["Hy = W1 - Wb"], "Wb points the other way"),
        (LEVEL, in_radians, "this angle is asked in degrees"),
    ] {
        let mut session = open("mast", 3301);
        for _ in 0..skips {
            session.submit("skip");
        }
        let last = lines.iter().map(|line| session.submit(line)).last();
        let line = last.expect("every row has a line").line;
        let message = line.message.to_string();
        assert_eq!(line.sign, Sign::Wrong, "{lines:?}: {message}");
        assert!(message.contains(wanted), "{lines:?}: {message}");
    }
    let mut session = open("mast", 3301);
    for _ in 0..UPRIGHT {
        session.submit("skip");
    }
    assert_eq!(session.submit("Wb + W1").line.sign, Sign::Right);
}

/// The key by the learner's own way, and by another: components and lever arms on a tilted body;
/// on a level one with upright forces an arm is the distance itself, so it is about the rope.
#[test]
fn the_key_is_told_the_learners_way_and_another() {
    for (lesson, own, other, line) in [
        (
            "mast",
            "with components across the mast",
            "with lever arms",
            "aT = dT·sin γ",
        ),
        (
            "walkway",
            "with components across the walkway",
            "with lever arms",
            "aT = dT·sin γ",
        ),
        (
            "counter",
            "with moments about the hinge",
            "with moments about the rope",
            "= Hy·L",
        ),
    ] {
        let mut session = open(lesson, 7);
        assert!(session.view().keys.is_empty(), "nothing before the end");
        pass_the_rest(&mut session);
        let keys = session.view().keys;
        let titles: Vec<String> = keys.iter().map(|key| key.title.to_string()).collect();
        let wanted = [
            format!("The whole working your way, {own}:"),
            format!("The same another way, {other}:"),
        ];
        assert_eq!(titles, wanted);
        let told: Vec<String> = keys[1].lines.iter().map(|it| it.told.to_string()).collect();
        assert!(told.iter().any(|told| told.contains(line)), "{told:?}");
        let value = |key: usize, name: &str| {
            let lines = keys[key].lines.iter().map(|line| line.told.to_string());
            let told: Vec<String> = lines.filter(|told| told.starts_with(name)).collect();
            let told = told.last().cloned().unwrap_or_default();
            told.rsplit("= ").next().unwrap_or_default().to_owned()
        };
        assert_eq!(value(0, "T ="), value(1, "T ="), "{told:?}");
    }
}

/// Who works freely without components has the working with lever arms first.
#[test]
fn a_free_working_without_components_is_one_with_lever_arms() {
    let moments = "617.4*2.7*sin 35 + 695.8*4.5*sin 35 + 107.8*5.4*sin 35 = 4.2*T*sin 65";
    for (lines, own) in [
        (&[moments][..], "with lever arms"),
        (
            &["Wbperp = 617.4*sin 35", moments][..],
            "with components across the mast",
        ),
    ] {
        let mut session = open("mast", 3);
        session.submit("freely");
        for line in lines {
            session.submit(line);
        }
        session.submit("T = 811 N");
        for line in FROM_THE_PULL {
            session.submit(line);
        }
        let keys = session.view().keys;
        let title = keys.first().map(|key| key.title.to_string());
        assert!(title.iter().any(|it| it.contains(own)), "{title:?}");
        assert_eq!(keys.len(), 2);
    }
}

/// The slips are told with their lines.
#[test]
fn the_summary_names_the_lines_of_each_slip() {
    let mut session = at_the_weights("mast", 3);
    for line in ["63*1", "63*1 N", "63*9.8", "123 N"] {
        session.submit(line);
    }
    pass_the_rest(&mut session);
    let told = summary(&session);
    for wanted in [
        "Put right by you after a line that did not hold: 1 of",
        "Look again at: the mass used as a force (lines 2, 3).",
        "Lines that did not hold for another reason: 1 (line 5).",
    ] {
        assert!(told.contains(wanted), "{wanted}: {told}");
    }
}
