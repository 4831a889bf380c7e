//! Reactions of beams against the published tables.
//!
//! The formulas are those of AISC, Steel Construction Manual, table 3-23 (shears, moments and
//! deflections), and of Roark's Formulas for Stress and Strain, table 8.1; both from memory, the
//! number of the case where it is remembered. L is the span between the supports of a simple beam or
//! the length of a cantilever that is built in at its left end; w, w₁, w₂ are loads a length.

use leverwright::lesson::parse_system;
use leverwright::statics::{Reaction, solve_system};
use leverwright::system::ActId;
use leverwright::working::{Meaning, Method, derive};

/// What the beam rests on.
#[derive(Clone, Copy)]
enum Rests {
    /// A pin at its left end, and a support L from it.
    Simply,
    /// Built in at its left end.
    BuiltIn,
}

fn beam(rests: Rests, span: f64, whole: f64, loads: &str) -> [Reaction; 2] {
    let holds = match rests {
        Rests::Simply => format!(
            r#"{{"symbol": "A", "noun": "pin", "body": "beam", "at": "origin", "kind": "hinge"}},
               {{"symbol": "B", "noun": "support", "body": "beam", "at": {{"x": "{span} m", "y": "0 m"}}, "kind": "line", "direction": "up"}}"#
        ),
        Rests::BuiltIn => {
            r#"{"symbol": "A", "noun": "wall", "body": "beam", "at": "origin", "kind": "built-in"}"#
                .to_owned()
        }
    };
    let json = format!(
        r#"{{"leverwright": 1, "g": "9.81 m/s^2", "system": {{
        "bodies": [{{"name": "beam", "legs": [{{"length": "{whole} m", "direction": "right"}}]}}],
        "loads": [{loads}], "holds": [{holds}]}},
        "text": {{"title": "Beam", "statement": "A beam."}}}}"#
    );
    let system = parse_system(&json).unwrap_or_else(|faults| {
        panic!("{loads}: {:?}", super::told(&faults));
    });
    let values = system.values();
    let solution = solve_system(&system, &values, system.gravity()).unwrap();
    let found = [0, 1].map(|hold| solution.reaction(ActId::Hold(hold)).unwrap_or_default());
    // The working says the same as the solver.
    for method in [Method::Components, Method::LeverArms, Method::Coordinates] {
        let working = derive(&system, &values, method, None).unwrap();
        for (meaning, wanted) in [
            (Meaning::Force(ActId::Hold(1)), found[1].size),
            (Meaning::Couple(ActId::Hold(0)), found[0].couple),
        ] {
            let Some(id) = working.find(meaning) else {
                continue;
            };
            let value = working.value(id, &values, system.gravity()).unwrap();
            assert!(
                (value - wanted).abs() < 1e-9 * (1.0 + wanted.abs()),
                "{loads}"
            );
        }
    }
    found
}

fn near(found: f64, table: f64, what: &str) {
    assert!(
        (found - table).abs() < 1e-9 * (1.0 + table.abs()),
        "{what}: {found}, the table {table}"
    );
}

fn force(newtons: f64, at: f64) -> String {
    format!(
        r#"{{"noun": "load", "body": "beam", "at": {{"on": "beam", "at": "{at} m"}}, "force": "{newtons} N", "direction": "down"}}"#
    )
}

/// Newtons a metre from `first` at `from` to `last` at `to`; nothing at an end where it is zero.
fn spread(first: f64, last: f64, from: f64, to: f64) -> String {
    let value = |name: &str, value: f64| match value {
        0.0 => String::new(),
        value => format!(r#""{name}": "{value} N/m", "#),
    };
    let place = |metres: f64| match metres {
        0.0 => r#""foot""#.to_owned(),
        metres => format!(r#""{metres} m""#),
    };
    format!(
        r#"{{"noun": "load", "body": "beam", "from": {}, "to": {}, {}{}"direction": "down"}}"#,
        place(from),
        place(to),
        value("first", first),
        value("last", last)
    )
}

const SPANS: [f64; 4] = [1.6, 3.0, 4.8, 7.25];

#[test]
fn val_simple_beams_of_the_tables() {
    let (p, w, q) = (900.0, 350.0, 1100.0);
    for l in SPANS {
        let simple = |case: &str, loads: &str, left: f64, right: f64| {
            let [a, b] = beam(Rests::Simply, l, l, loads);
            near(a.force.y, left, case);
            near(b.force.y, right, case);
            near(a.force.x, 0.0, case);
        };
        // Case 7: concentrated load at the centre.
        simple("centre", &force(p, l / 2.0), p / 2.0, p / 2.0);
        // Case 8: concentrated load at any point, a from the left and b from the right.
        for share in [0.1, 0.35, 0.8] {
            let (a, b) = (share * l, l - share * l);
            simple("any point", &force(p, a), p * b / l, p * a / l);
        }
        // Case 9: two equal loads, symmetrically placed.
        let a = 0.25 * l;
        let two = format!("{}, {}", force(p, a), force(p, l - a));
        simple("two equal", &two, p, p);
        // Case 11: two unequal loads, a from the left and b from the right.
        let (a, b) = (0.2 * l, 0.35 * l);
        let two = format!("{}, {}", force(p, a), force(q, l - b));
        simple(
            "two unequal",
            &two,
            (p * (l - a) + q * b) / l,
            (p * a + q * (l - b)) / l,
        );
        // Case 1: uniform over the whole span.
        let half = w * l / 2.0;
        simple("uniform", &spread(w, w, 0.0, l), half, half);
        // Case 4: uniform over b, a from the left and c from the right.
        let (a, b, c) = (0.2 * l, 0.5 * l, 0.3 * l);
        simple(
            "uniform over part",
            &spread(w, w, a, a + b),
            w * b * (2.0 * c + b) / (2.0 * l),
            w * b * (2.0 * a + b) / (2.0 * l),
        );
        // Case 5: uniform at one end, over a.
        let a = 0.4 * l;
        simple(
            "uniform at one end",
            &spread(w, w, 0.0, a),
            w * a * (2.0 * l - a) / (2.0 * l),
            w * a * a / (2.0 * l),
        );
        // Case 6: uniform at each end, w over a and q over c.
        let (a, c) = (0.3 * l, 0.45 * l);
        let both = format!("{}, {}", spread(w, w, 0.0, a), spread(q, q, l - c, l));
        simple(
            "uniform at each end",
            &both,
            (w * a * (2.0 * l - a) + q * c * c) / (2.0 * l),
            (q * c * (2.0 * l - c) + w * a * a) / (2.0 * l),
        );
        // Case 2: load rising evenly to one end; W is the whole of it.
        let whole = w * l / 2.0;
        simple(
            "triangle",
            &spread(0.0, w, 0.0, l),
            whole / 3.0,
            2.0 * whole / 3.0,
        );
        // Case 3: load rising evenly to the centre.
        let roof = format!(
            "{}, {}",
            spread(0.0, w, 0.0, l / 2.0),
            spread(w, 0.0, l / 2.0, l)
        );
        simple("triangle to the centre", &roof, whole / 2.0, whole / 2.0);
        // Roark, table 8.1, case 2e: trapezium.
        simple(
            "trapezium",
            &spread(w, q, 0.0, l),
            l * (2.0 * w + q) / 6.0,
            l * (w + 2.0 * q) / 6.0,
        );
        // Roark, table 8.1, case 3e: a couple, wherever it acts; the left support holds down.
        let couple = format!(
            r#"{{"noun": "motor", "body": "beam", "couple": "{p} N m", "turns": "clockwise"}}"#
        );
        simple("couple", &couple, -p / l, p / l);
    }
}

#[test]
fn val_overhanging_beams_of_the_tables() {
    let (p, w) = (900.0, 350.0);
    for l in SPANS {
        for share in [0.15, 0.4] {
            let a = share * l;
            let whole = l + a;
            let over = |case: &str, loads: &str, left: f64, right: f64| {
                let [one, other] = beam(Rests::Simply, l, whole, loads);
                near(one.force.y, left, case);
                near(other.force.y, right, case);
            };
            // Case 24: uniform over the whole length.
            over(
                "overhang, uniform",
                &spread(w, w, 0.0, whole),
                w * (l * l - a * a) / (2.0 * l),
                w * (l + a) * (l + a) / (2.0 * l),
            );
            // Case 25: uniform on the overhang only; the left support holds down.
            over(
                "uniform on the overhang",
                &spread(w, w, l, whole),
                -w * a * a / (2.0 * l),
                w * a * (2.0 * l + a) / (2.0 * l),
            );
            // Case 26: concentrated load at the end of the overhang.
            over(
                "load on the overhang",
                &force(p, whole),
                -p * a / l,
                p * (l + a) / l,
            );
            // Case 27: uniform between the supports.
            let half = w * l / 2.0;
            over("uniform between", &spread(w, w, 0.0, l), half, half);
            // Case 28: concentrated load between the supports.
            let from = 0.3 * l;
            over(
                "load between",
                &force(p, from),
                p * (l - from) / l,
                p * from / l,
            );
        }
    }
}

#[test]
fn val_cantilevers_of_the_tables() {
    let (p, w, q) = (900.0, 350.0, 1100.0);
    for l in SPANS {
        let cantilever = |case: &str, loads: &str, push: f64, couple: f64| {
            let [wall, _] = beam(Rests::BuiltIn, l, l, loads);
            near(wall.force.y, push, case);
            near(wall.couple, couple, case);
        };
        // Case 22: concentrated load at the free end; case 21: at any point, a from the wall.
        cantilever("free end", &force(p, l), p, p * l);
        let a = 0.65 * l;
        cantilever("any point", &force(p, a), p, p * a);
        let two = format!("{}, {}", force(p, a), force(q, l));
        cantilever("two loads", &two, p + q, p * a + q * l);
        // Case 19: uniform over the whole length.
        cantilever("uniform", &spread(w, w, 0.0, l), w * l, w * l * l / 2.0);
        // Roark, table 8.1, case 2a: uniform from a to the free end.
        let part = l - a;
        cantilever(
            "uniform over part",
            &spread(w, w, a, l),
            w * part,
            w * part * (l + a) / 2.0,
        );
        // Case 18: load rising evenly to the wall; W is the whole of it.
        let whole = w * l / 2.0;
        cantilever(
            "rising to the wall",
            &spread(w, 0.0, 0.0, l),
            whole,
            whole * l / 3.0,
        );
        // Roark, table 8.1, case 2a: rising evenly to the free end, and a trapezium.
        cantilever(
            "rising to the free end",
            &spread(0.0, w, 0.0, l),
            whole,
            2.0 * whole * l / 3.0,
        );
        cantilever(
            "trapezium",
            &spread(w, q, 0.0, l),
            l * (w + q) / 2.0,
            l * l * (w + 2.0 * q) / 6.0,
        );
        // Roark, table 8.1, case 3a: a couple, wherever it acts.
        let couple = format!(
            r#"{{"noun": "motor", "body": "beam", "couple": "{p} N m", "turns": "clockwise"}}"#
        );
        cantilever("couple", &couple, 0.0, p);
    }
}
