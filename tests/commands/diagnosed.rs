//! `diagnose`: the thoughts behind an answer off a sheet and behind the lines of a working.

use super::output;
use serde_json::Value;

/// Statics by hand from the print of mast, seed 7: a mast of 6.6 m and 72 kg, 25° from the vertical,
/// 71 kg at its tip, a level rope at 3.8 m; moments about the hinge.
struct Mast;

impl Mast {
    const G: f64 = 9.8;
    const OWN: f64 = 72.0 * Self::G;
    const LOAD: f64 = 71.0 * Self::G;

    fn sin(degrees: f64) -> f64 {
        degrees.to_radians().sin()
    }

    /// The pull for these moments of the forces as they stand, and this sine of the rope.
    fn pull(moments: f64, across: f64, rope: f64) -> f64 {
        moments * across / (3.8 * rope)
    }
}

fn diagnosed(arguments: &[&str], input: &[u8]) -> Value {
    diagnosed_of(("mast", "7"), arguments, input)
}

fn diagnosed_of((problem, seed): (&str, &str), arguments: &[&str], input: &[u8]) -> Value {
    let mut all = vec!["diagnose", problem, "--seed", seed, "--json"];
    all.extend(arguments);
    let (code, text, talk) = output(&all, input);
    assert_eq!((code, talk.as_str()), (0, ""), "{arguments:?}");
    serde_json::from_str(&text).unwrap()
}

fn thoughts(line: &Value) -> Vec<(String, String)> {
    let told = line["thoughts"].as_array().unwrap();
    let word = |thought: &Value, field: &str| thought[field].as_str().unwrap().to_owned();
    told.iter()
        .map(|thought| (word(thought, "mistake"), word(thought, "voice")))
        .collect()
}

#[test]
fn val_a_number_off_a_sheet_has_the_thought_that_gives_it_first() {
    let moments = Mast::OWN * 3.3 + Mast::LOAD * 6.6;
    let (leaning, rope) = (Mast::sin(25.0), Mast::sin(65.0));
    let rows = [
        (
            "own-weight-left-out",
            Mast::pull(Mast::LOAD * 6.6, leaning, rope),
        ),
        (
            "own-weight-at-tip",
            Mast::pull((Mast::OWN + Mast::LOAD) * 6.6, leaning, rope),
        ),
        (
            "mass-for-weight",
            Mast::pull(moments / Mast::G, leaning, rope),
        ),
        ("stopped-at-component", moments * leaning / 3.8),
        ("multiplied-at-the-end", moments * leaning / 3.8 * rope),
        ("arm-not-divided-out", moments * leaning / rope),
        (
            "turns-the-wrong-way",
            Mast::pull(Mast::LOAD * 6.6 - Mast::OWN * 3.3, leaning, rope),
        ),
    ];
    for (id, pull) in rows {
        let json = diagnosed(&["--answer", &format!("{pull:.1} N")], b"");
        assert_eq!(json["version"], 1);
        let line = &json["lines"][0];
        assert_eq!(line["step"], "pull:T");
        let told = thoughts(line);
        assert!((1..=3).contains(&told.len()), "{id}: {told:?}");
        // The rope that is not resolved and its component told for it are one function.
        let alike = line["thoughts"][0]["alike"].as_array().unwrap();
        let is_it = told[0].0 == id || alike.iter().any(|other| other == id);
        assert!(is_it, "{id} at {pull}: {told:?}");
        assert_eq!(told[0].1, "perhaps", "a number alone proves nothing");
        let first = &line["thoughts"][0];
        assert_eq!(first["speaks"], "value");
        let gives = first["gives"].as_str().unwrap().replace(" N", "");
        let gives: f64 = gives.parse().unwrap();
        assert!((gives / pull - 1.0).abs() < 0.005, "{id}: {gives} {pull}");
        let shares = line["thoughts"].as_array().unwrap().iter();
        let shares: f64 = shares
            .map(|thought| thought["share"].as_f64().unwrap())
            .sum();
        let other = line["another_thing"].as_f64().unwrap();
        assert!(other > 0.0 && (shares + other - 1.0).abs() < 1e-9, "{id}");
        assert!(
            !line["ask"]["question"].as_str().unwrap().is_empty(),
            "{id}"
        );
    }
}

#[test]
fn a_typed_form_is_named_flatly_with_both_formulas() {
    let rows = [
        (
            "Wbp",
            "72*9.8*cos(25)",
            "sine-cosine-exchanged",
            "Wb·cos α",
            "Wb·sin α",
        ),
        ("Wbp", "72*9.8", "not-resolved", "Wb", "Wb·sin α"),
        (
            "T",
            "(72*9.8*3.3+71*9.8*6.6)*sin(25)/3.8",
            // One function with stopping at the component.
            "not-resolved",
            "T",
            "T·sin γ",
        ),
    ];
    for (step, answer, id, wrong, right) in rows {
        let json = diagnosed(&["--step", step, "--answer", answer], b"");
        let line = &json["lines"][0];
        assert_eq!(
            thoughts(line),
            [(id.to_owned(), "flat".to_owned())],
            "{answer}"
        );
        let first = &line["thoughts"][0];
        assert_eq!(first["wrong"]["names"], wrong, "{answer}");
        assert_eq!(first["right"]["names"], right, "{answer}");
        assert_eq!(line["another_thing"], 0.0);
    }
    // The number of kilograms alone is a number alone.
    let json = diagnosed(&["--step", "weight:W_1", "--answer", "71"], b"");
    let line = &json["lines"][0];
    assert_eq!(
        thoughts(line)[0],
        ("mass-for-weight".to_owned(), "perhaps".to_owned())
    );
    assert_eq!(line["thoughts"][0]["wrong"]["names"], "m1");
}

#[test]
fn what_holds_has_no_thought_and_a_nonsense_number_has_none_either() {
    let right = diagnosed(&["--answer", "849 N"], b"");
    let line = &right["lines"][0];
    assert_eq!(line["truth"], "holds");
    assert!(thoughts(line).is_empty() && line["ask"].is_null());
    let nonsense = diagnosed(&["--answer", "231 N"], b"");
    let line = &nonsense["lines"][0];
    assert_eq!(line["truth"], "wrong");
    assert!(thoughts(line).is_empty());
    assert_eq!(line["another_thing"], 1.0);
    let (_, text, _) = output(
        &["diagnose", "mast", "--seed", "7", "--answer", "231 N"],
        b"",
    );
    assert!(text.contains("No known thought explains it."), "{text}");
}

#[test]
fn a_working_is_diagnosed_line_by_line_beside_its_own_values() {
    let working =
        b"Wb = 72*9.8 = 705.6 N\n\nW1 = 71\nT*3.8*sin(65) = 705.6*3.3*sin(25) + 71*6.6*cos(25)\n";
    let json = diagnosed(&["--working", "-"], working);
    let lines = json["lines"].as_array().unwrap();
    let truths: Vec<&str> = lines
        .iter()
        .map(|line| line["truth"].as_str().unwrap())
        .collect();
    assert_eq!(truths, ["holds", "wrong", "wrong"]);
    assert_eq!(
        thoughts(&lines[1])[0],
        ("mass-for-weight".to_owned(), "perhaps".to_owned())
    );
    assert_eq!(
        thoughts(&lines[2])[0],
        ("sine-cosine-exchanged".to_owned(), "flat".to_owned()),
        "the second mistake is named beside the first, which is carried on"
    );
}

#[test]
fn val_formulas_of_a_working_stand_with_its_own_earlier_values() {
    // Her pull is 1200 N where 849 N is right: 705.6 + 695.8 − 1200 = 201, 1200 + 1401 = 2600.
    let rows: [(&[u8], &str, &str); 3] = [
        (
            b"T = 1200\nHy = 72*9.8 + 71*9.8 - 1200\n",
            "201 N",
            "1200 N",
        ),
        (
            b"T = 1200\nHx = 1200\nHy = 1401\nH = 1200 + 1401\n",
            "2600 N",
            "1200 N",
        ),
        // Where the number is what the mistake makes of the right pull, that stands: 849 + 1401.
        (b"T = 1200\nHy = 1401\nH = 849 + 1401\n", "2250 N", "849 N"),
    ];
    for (working, gives, numbers) in rows {
        let json = diagnosed(&["--working", "-"], working);
        let line = json["lines"].as_array().unwrap().last().unwrap();
        let first = &line["thoughts"][0];
        assert_eq!(first["gives"], gives, "{line}");
        for formula in ["wrong", "right"] {
            let told = first[formula]["numbers"].as_str().unwrap();
            let is_level = formula == "right" && gives == "201 N";
            assert!(told.contains(numbers) || is_level, "{formula}: {told}");
        }
    }
}

#[test]
fn val_an_angle_that_is_another_one_of_the_problem_has_its_thought_too() {
    // 90° − 25°: noted at the keyboard, and a complement on a sheet.
    let json = diagnosed(&["--step", "alpha", "--answer", "65"], b"");
    let line = &json["lines"][0];
    assert_eq!(line["truth"], "noted");
    let first = thoughts(line).remove(0);
    assert_eq!(first, ("complement".to_owned(), "perhaps".to_owned()));
    assert!(line["another_thing"].as_f64().unwrap() > 0.0);
    let right = diagnosed(&["--step", "alpha", "--answer", "25"], b"");
    assert!(thoughts(&right["lines"][0]).is_empty());
}

#[test]
fn a_number_of_one_figure_proves_no_rounding() {
    // 849 N to one figure, or another thing that comes near it.
    let json = diagnosed(&["--answer", "800 N"], b"");
    let line = &json["lines"][0];
    assert_eq!(line["truth"], "too-few-figures");
    let told = thoughts(line);
    assert!(told.iter().all(|(_, voice)| voice == "perhaps"), "{told:?}");
    assert!(line["another_thing"].as_f64().unwrap() > 0.0);
    assert_eq!(told[0].0, "figures");
    // No sine speaks for a load at the rope's knot, though the line has some.
    let at_rope = "(72*9.8*3.3 + 71*9.8*3.8)*sin(25)/(3.8*sin(65))";
    let json = diagnosed(&["--answer", at_rope], b"");
    let first = &json["lines"][0]["thoughts"][0];
    assert_eq!(first["mistake"], "load-at-rope");
    assert_eq!(first["speaks"], "form");
}

#[test]
fn val_a_number_alone_never_proves_another_g() {
    // By hand from the print of counter, seed 2400: 23 kg, so 225.4 N, which is 230 to two figures, and
    // 230 is 23 times ten; to four figures it is only that.
    for (answer, both) in [("230 N", true), ("230.0 N", false)] {
        let arguments = ["--step", "Wb", "--answer", answer];
        let json = diagnosed_of(("counter", "2400"), &arguments, b"");
        let told = thoughts(&json["lines"][0]);
        let perhaps = |id: &str| (id.to_owned(), "perhaps".to_owned());
        let wanted = [perhaps("gravity"), perhaps("figures")];
        assert_eq!(told, wanted[..1 + usize::from(both)], "{answer}");
        assert_eq!(json["lines"][0]["thoughts"][0]["speaks"], "value");
    }
}

#[test]
fn val_a_part_of_the_pull_off_a_sheet_is_judged_though_no_pull_stands() {
    // By hand from the prints of seed 2400. Walkway: 3.4 m, 30 kg, 84 kg at 2.1 m, the rope at 25°.
    let pull = Mast::G * (30.0 * 1.7 + 84.0 * 2.1) / (3.4 * Mast::sin(25.0));
    let rows = [
        ("Tx", pull * Mast::sin(65.0), None),
        ("Ty", pull * Mast::sin(25.0), None),
        ("Tx", pull * Mast::sin(25.0), Some("sine-cosine-exchanged")),
        ("Ty", pull * Mast::sin(65.0), Some("sine-cosine-exchanged")),
        ("Tp", pull * Mast::sin(65.0), Some("sine-cosine-exchanged")),
    ];
    for (step, value, thought) in rows {
        let answer = format!("{value:.1} N");
        let arguments = ["--step", step, "--answer", answer.as_str()];
        let json = diagnosed_of(("walkway", "2400"), &arguments, b"");
        let line = &json["lines"][0];
        let told = thoughts(line);
        let first = told.first().map(|(id, _)| id.as_str());
        assert_eq!(first, thought, "{step} = {answer}");
        assert_eq!(line["truth"] == "wrong", thought.is_some(), "{line}");
    }
}

#[test]
fn val_a_part_of_a_wrong_or_carried_pull_has_its_thought() {
    // 723 N is the pull with the cosine for the sine, 1240 N that with 30 N for the weight of 30 kg;
    // of both the sine of 25° is taken for Tx. The mast: γ = 40° − 15°, and 1540 N follows.
    let rows = [
        ("walkway", "Wb = 294 N\nW1 = 823 N\nT = 723 N\nTx = 306 N"),
        ("walkway", "Wb = 30 N\nT = 1240 N\nTx = 524 N"),
        ("mast", "gamma = 25°\nT = 1540 N\nTx = 399 N"),
    ];
    for (problem, working) in rows {
        let json = diagnosed_of((problem, "2400"), &["--working", "-"], working.as_bytes());
        let last = json["lines"].as_array().unwrap().last().unwrap();
        assert_eq!(last["truth"], "wrong", "{working}");
        let first = thoughts(last)[0].0.clone();
        assert_eq!(first, "sine-cosine-exchanged", "{working}");
    }
}

#[test]
fn val_a_mistake_is_made_where_the_line_shows_it() {
    // One weight alone in the upright balance; the moment sum was not on the sheet.
    let json = diagnosed(&["--step", "Hy", "--answer", "Wb"], b"");
    let first = &json["lines"][0]["thoughts"][0];
    assert_eq!(first["gives"], "706 N");
    assert_eq!(first["wrong"]["names"], "Wb = Hy");
    assert_eq!(first["right"]["names"], "Wb + W1 = Hy");
}

/// Walkway 3: 877.7 N at 65°; 529.2 − 877.7·sin 65° = −266, and 500.9 + 263 with the pull of the
/// weight alone.
#[test]
fn val_a_balance_with_the_right_pull_in_it_is_shown_with_that_pull() {
    let answer = "529.2 - 877.7*sin 65";
    let all = [
        "diagnose", "walkway", "--seed", "3", "--json", "--step", "Hy", "--answer", answer,
    ];
    let (_, text, _) = output(&all, b"");
    let json: Value = serde_json::from_str(&text).unwrap();
    let first = &json["lines"][0]["thoughts"][0];
    assert_eq!(first["gives"], "−266 N", "{first}");
    let numbers = first["wrong"]["numbers"].as_str().unwrap();
    assert!(numbers.contains("795 N"), "{numbers}");
}

#[test]
fn what_is_asked_next_tells_the_thoughts_apart() {
    // A number that two thoughts give: the value that is asked for differs between them.
    for seed in 1..40 {
        let seed = seed.to_string();
        for answer in ["700 N", "820 N", "950 N", "1100 N", "640 N"] {
            let all = [
                "diagnose", "mast", "--seed", &seed, "--json", "--answer", answer,
            ];
            let (_, text, _) = output(&all, b"");
            let json: Value = serde_json::from_str(&text).unwrap();
            let values = json["lines"][0]["ask"]["values"]
                .as_array()
                .cloned()
                .unwrap_or_default();
            if values.len() > 1 {
                let mut told: Vec<&str> = values
                    .iter()
                    .map(|one| one["value"].as_str().unwrap())
                    .collect();
                told.sort_unstable();
                told.dedup();
                assert_eq!(told.len(), values.len(), "{text}");
                assert!(
                    values
                        .iter()
                        .all(|one| !one["speaks_for"].as_array().unwrap().is_empty())
                );
                return;
            }
        }
    }
    panic!("no answer had two thoughts that a value tells apart");
}

#[test]
fn wrong_use_is_told() {
    let (code, _, talk) = output(
        &[
            "diagnose", "mast", "--seed", "7", "--step", "Q", "--answer", "4",
        ],
        b"",
    );
    assert_eq!(code, 2);
    for name in ["Q", "Wb", "T", "moment-sum", "Hx"] {
        assert!(talk.contains(name), "{name}: {talk}");
    }
    let (code, _, _) = output(&["diagnose", "mast"], b"");
    assert_eq!(code, 2);
    let (code, _, talk) = output(&["diagnose", "-", "--working", "-"], b"");
    assert_eq!((code, talk.lines().count()), (2, 1), "{talk}");
    let (code, _, talk) = output(&["diagnose", "mast", "--working", "-"], b"\n\n");
    assert_eq!(
        (code, talk.as_str()),
        (1, "There is no line in this working.\n")
    );
    let (code, _, _) = output(&["diagnose", "mast", "--working", "no-such-file.txt"], b"");
    assert_eq!(code, 1);
}
