//! What learners type, and how it is read.

use leverwright::reading::{Leaf, Name, NameId, Reading, Value, Vocabulary, evaluate, read};
use leverwright::text::Symbol;
use leverwright::units::{Dimension, unit_for};
use proptest::prelude::*;
use tables::{FIRST_THINGS, LINES, MISMATCHES, Row, TROUBLES};

mod stacked;
mod tables;

/// The names of a tilted beam held by a rope, and values for them that tests use.
fn names() -> Vec<(Name, f64)> {
    let name = |symbol: &str, dimension, value: f64, spellings: &[&str]| {
        let spellings = spellings.iter().map(|text| (*text).to_owned()).collect();
        let symbol = Symbol::new(symbol);
        let name = Name {
            symbol,
            dimension,
            spellings,
        };
        (name, value)
    };
    let degrees = |angle: f64| angle.to_radians();
    vec![
        name("m", Dimension::MASS, 12.0, &["m_b"]),
        name("g", Dimension::ACCELERATION, 9.8, &[]),
        name(
            "W_b",
            Dimension::FORCE,
            117.6,
            &["weight of the beam", "weight"],
        ),
        name("W_b⊥", Dimension::FORCE, 96.3, &["W_bp"]),
        name("W_1", Dimension::FORCE, 78.4, &[]),
        name("W_1⊥", Dimension::FORCE, 64.2, &["W_1p"]),
        name("L", Dimension::LENGTH, 3.2, &[]),
        name("d_1", Dimension::LENGTH, 1.6, &[]),
        name("d_T", Dimension::LENGTH, 2.4, &[]),
        name("θ", Dimension::ANGLE, degrees(35.0), &[]),
        name("γ", Dimension::ANGLE, degrees(55.0), &[]),
        name("T", Dimension::FORCE, 171.0, &["tension"]),
        name("H_x", Dimension::FORCE, 80.0, &[]),
        name("H_y", Dimension::FORCE, 60.0, &[]),
    ]
}

fn vocabulary() -> Vocabulary {
    Vocabulary {
        names: names().into_iter().map(|(name, _)| name).collect(),
    }
}

fn value_of(names: &[(Name, f64)], leaf: Leaf<'_>) -> Value {
    match leaf {
        Leaf::Literal(literal) => Value::of_literal(literal),
        Leaf::Name(NameId(place)) => Value::of(names[place].1, names[place].0.dimension),
    }
}

fn check(rows: &[Row]) {
    let (vocabulary, names) = (vocabulary(), names());
    for (line, layout, number, unit) in rows {
        let readings =
            read(line, &vocabulary).unwrap_or_else(|trouble| panic!("{line}: {trouble:?}"));
        assert_eq!(readings[0].layout(&vocabulary), *layout, "{line}");
        let side = readings[0].sides.last().unwrap();
        let value = evaluate(side, &mut |leaf| value_of(&names, leaf)).unwrap();
        let close = (value.number - number).abs() <= 1e-9 * number.abs().max(1e-3);
        assert!(close, "{line}: {} and not {number}", value.number);
        let dimension = unit_for(value.dimension)
            .map_or(format!("{:?}", value.dimension), |unit| {
                unit.symbol.to_owned()
            });
        let told = if value.bare {
            "bare".to_owned()
        } else {
            dimension
        };
        let uncertain = if value.uncertain { "?" } else { "" };
        assert_eq!(format!("{told}{uncertain}"), *unit, "{line}");
    }
}

// The layouts were read line by line by a person; the values follow from them.
#[test]
fn verif_first_things_a_newcomer_types() {
    check(FIRST_THINGS);
}

#[test]
fn verif_lines_in_every_form() {
    check(LINES);
}

#[test]
fn every_trouble_is_named_with_its_place() {
    let vocabulary = vocabulary();
    let words = leverwright::text::Words::english();
    for (line, key, start, end) in TROUBLES {
        let misreading = read(line, &vocabulary).expect_err(line);
        let span = misreading.span;
        assert_eq!(
            (misreading.trouble.key(), span.start, span.end),
            (*key, *start, *end),
            "{line}"
        );
        let sentence = words.say(key, &misreading.trouble.slots()).to_string();
        assert!(words.has(key) && !sentence.contains('{'), "{sentence}");
    }
    let long = "1+".repeat(251);
    assert_eq!(
        read(&long, &vocabulary).unwrap_err().trouble.key(),
        "reading.too-long"
    );
    let deep = "(".repeat(60) + "1";
    assert_eq!(
        read(&deep, &vocabulary).unwrap_err().trouble.key(),
        "reading.too-nested"
    );
    for blank in ["", "  ", "\t\u{7}", "?", "=", "∴ ."] {
        assert_eq!(
            read(blank, &vocabulary).unwrap_err().trouble.key(),
            "reading.empty",
            "{blank:?}"
        );
    }
}

#[test]
fn dimensions_that_disagree_keep_their_place() {
    let (vocabulary, names) = (vocabulary(), names());
    for (line, kind, start, end) in MISMATCHES {
        let reading = &read(line, &vocabulary).unwrap()[0];
        let mismatch =
            evaluate(&reading.sides[0], &mut |leaf| value_of(&names, leaf)).expect_err(line);
        let found = (
            format!("{:?}", mismatch.kind),
            mismatch.span.start,
            mismatch.span.end,
        );
        assert_eq!(found, ((*kind).to_owned(), *start, *end), "{line}");
    }
}

#[test]
fn a_force_where_a_moment_is_due_lacks_a_length() {
    let vocabulary = vocabulary();
    let reading = &read("T*d_T + W_b", &vocabulary).unwrap()[0];
    let names = names();
    let mismatch = evaluate(&reading.sides[0], &mut |leaf| value_of(&names, leaf)).unwrap_err();
    assert_eq!(mismatch.missing, Some(Dimension::LENGTH));
}

#[test]
fn lines_with_several_meanings_give_them_in_order() {
    for (line, layouts) in [
        ("12 g", &["12·g", "12 gram"][..]),
        ("171/2 sin 35", &["(171/2)·sin(35°)", "171/(2·sin(35°))"]),
        ("117.6 cos 35*2", &["117.6·cos(35°)·2", "117.6·cos(35·2)"]),
        ("sin 35^2", &["sin(35°)²", "sin(35²)"]),
        ("-120^2", &["−120²", "(−120)²"]),
        ("1,500 N", &["1500 N", "1.500 N"]),
        ("3 m", &["3 m", "3·m"]),
        ("cos 90-35", &["cos(90°) − 35", "cos(90° − 35°)"]),
    ] {
        let vocabulary = vocabulary();
        let found: Vec<String> = read(line, &vocabulary)
            .unwrap()
            .iter()
            .map(|reading| reading.layout(&vocabulary))
            .collect();
        assert_eq!(found, layouts, "{line}");
    }
}

#[test]
fn own_names_are_defined_at_the_head_only() {
    let reading = &read("so Wx = 12*9.8 = 117.6", &vocabulary()).unwrap()[0];
    let (name, span) = reading.defines.clone().unwrap();
    assert_eq!(
        (name.as_str(), span.start, span.end, reading.sides.len()),
        ("Wx", 3, 5, 2)
    );
    assert!(read("12*9.8 = Wx", &vocabulary()).is_err());
}

#[test]
fn literals_know_whether_they_stand_in_an_angle() {
    let reading = &read("2 T sin(90 - 35°) + (3) N", &vocabulary()).unwrap()[0];
    let places = reading.sides[0].literals();
    let found: Vec<(&str, bool)> = places
        .iter()
        .map(|place| (place.literal.digits.as_str(), place.in_angle))
        .collect();
    assert_eq!(
        found,
        [("2", false), ("90", true), ("35", true), ("3", false)]
    );
}

#[test]
fn figures_and_units_of_literals_are_kept() {
    let reading = &read("1.50 kN", &vocabulary()).unwrap()[0];
    let literal = reading.sides[0].literals()[0].literal.clone();
    assert_eq!(
        (literal.value, literal.typed, literal.written.significant),
        (1500.0, 1.5, 3)
    );
    assert!((literal.written.last_place - 10.0).abs() < 1e-9);
}

fn value(reading: &Reading) -> Vec<Option<f64>> {
    let names = names();
    let one = |side| {
        evaluate(side, &mut |leaf| value_of(&names, leaf))
            .ok()
            .map(|value| value.number)
    };
    reading.sides.iter().map(one).collect()
}

fn same(left: &[Option<f64>], right: &[Option<f64>]) -> bool {
    left.len() == right.len()
        && left.iter().zip(right).all(|pair| match pair {
            (Some(a), Some(b)) => (a - b).abs() <= 1e-9 * a.abs().max(b.abs()).max(1e-9),
            (None, None) => true,
            _ => false,
        })
}

/// A random expression with all brackets written, and its value by plain arithmetic.
fn expression() -> impl Strategy<Value = (String, f64)> {
    let leaf = (1_u32..999, any::<bool>()).prop_map(|(tenths, sine)| {
        let number = f64::from(tenths) / 10.0;
        if sine {
            (format!("sin {number}"), number.to_radians().sin())
        } else {
            (format!("{number}"), number)
        }
    });
    leaf.prop_recursive(5, 40, 2, |inner| {
        (inner.clone(), inner, 0..6).prop_map(|((a, x), (b, y), kind)| match kind {
            0 => (format!("({a} + {b})"), x + y),
            1 => (format!("({a} − {b})"), x - y),
            2 => (format!("({a})({b})"), x * y),
            3 => (format!("(({a})×({b}))"), x * y),
            4 => (format!("(({a})/({b}))"), x / y),
            _ => (format!("(-({a}))"), -x),
        })
    })
}

proptest! {
    #[test]
    fn nothing_panics(line in "\\PC{0,600}", any in any::<String>()) {
        let _ = read(&line, &vocabulary());
        let _ = read(&any, &vocabulary());
    }

    #[test]
    fn near_real_lines_never_panic_and_layouts_are_read_back(
        pieces in proptest::collection::vec(proptest::sample::select(vec![
            "12", "9.8", "35", "1,500", "96,3", "½", "T", "W_b", "mg", "θ", "d_T", "sin", "cos ", "tan^-1", "√",
            "+", "-", "−", "*", "·", "/", "^", "²", "(", ")", "[", "=", " ", " ", "°", " N", " m", "g", "kg", "π",
            "x", ",", ".", "e3", "×10³", "so ", "|", "Wx", ":",
        ]), 0..14)
    ) {
        let vocabulary = vocabulary();
        let line = pieces.concat();
        match read(&line, &vocabulary) {
            Err(misreading) => prop_assert!(line.get(misreading.span.start..misreading.span.end).is_some()),
            Ok(readings) => for reading in readings {
                reading.sides.iter().for_each(|side| side.visit(&mut |tree| {
                    assert!(line.get(tree.span.start..tree.span.end).is_some());
                }));
                let layout = reading.layout(&vocabulary);
                let again = read(&layout, &vocabulary);
                prop_assert!(again.is_ok(), "{line} → {layout}: {again:?}");
                let found = again.unwrap().iter().any(|again| same(&value(again), &value(&reading)));
                prop_assert!(found, "{line} → {layout}");
            }
        }
    }

    #[test]
    fn expressions_have_their_value((text, expected) in expression()) {
        if text.chars().count() <= 500 && expected.is_finite() && let Ok(readings) = read(&text, &vocabulary()) {
            prop_assert!(same(&value(&readings[0]), &[Some(expected)]), "{text}");
        }
    }
}
