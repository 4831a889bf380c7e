//! Problems worked by hand beside the solver, and walked to their ends by the lines of `solve`.

use super::ends::{of_file, passed_to};
use leverwright::lesson::{ProblemFile, parse_problem_file};
use leverwright::session::{Course, Sign};
use leverwright::system::System;
use leverwright::working::{Method, Told, derive, settle, told};

/// A file of tests/worked and the sizes of its forces, in newtons, worked by hand with g = 9.81 m/s²:
///
/// - `trap`: Q = 2.1·3 kN at 2 + 3·(1.2 + 2·3)/(3·4.2) = 3.714 m; B = (1471.5·4 + 6300·3.714 − 4000)/6.5
/// - `plate`: x = (0.72·0.6 − 0.12·0.9)/0.6 = 0.54 m; T = 235.44·0.54/(1.2 sin 50°)
/// - `frame`: By = (10·3.5 + 6·1.5)/6, Bx = (10·1.5 − 4 By)/3 kN, A from the balances
/// - `steps`: about the front foot N_2 = (88.29·1.2 + 686.7·1.6 + 49.05·3.6)/4.8 (all with cos 70°);
///   about the joint T = (N_2 − 49.05/2)·2.4 cos 70°/(1.6 sin 70°)
/// - `gate`: B = (372.78·1.4 + 255.06·2.5)/1.1
/// - `pulley`: T = (313.92·1.8 + 450·3)/(1.6 + 3.6 sin 55°)
/// - `spring`: P = (180·0.5 − 49.05·0.4 cos 30°)/(0.8 cos 30°)
/// - `couple`: E = 700 N
/// - `knots`: −A cos 35° + B sin 62° + 40 = 0 and A sin 35° + B cos 62° = 117.72
/// - `topple`: F = 588.6·0.35/1.5
const WORKED: [(&str, &[(&str, f64)]); 10] = [
    ("trap", &[("B", 3890.1538), ("A", 3881.3462)]),
    ("plate", &[("T", 138.30529), ("H", 157.07181)]),
    (
        "frame",
        &[("A", 2933.4175), ("B", 8752.4247), ("C", 5471.5877)],
    ),
    (
        "steps",
        &[
            ("N_1", 536.28),
            ("N_2", 287.76),
            ("T", 143.71456),
            ("J", 278.63298),
        ],
    ),
    ("gate", &[("B", 1054.12909), ("A", 1226.9357)]),
    ("pulley", &[("T", 420.98882), ("H", 241.47692)]),
    ("spring", &[("P", 105.37881), ("H", 90.011773)]),
    ("couple", &[("E", 700.0)]),
    ("knots", &[("A", 137.73126), ("B", 82.476973)]),
    ("topple", &[("F", 137.34)]),
];

fn text_of(name: &str) -> String {
    let path = format!("{}/tests/worked/{name}.json", env!("CARGO_MANIFEST_DIR"));
    std::fs::read_to_string(path).unwrap()
}

fn system(name: &str) -> System {
    match parse_problem_file(&text_of(name)).unwrap() {
        ProblemFile::General(system) => system,
        ProblemFile::Guided(_) => panic!("{name} is a problem of the guided walk"),
    }
}

#[test]
fn val_the_solver_finds_what_a_hand_does() {
    for (name, sizes) in WORKED {
        let system = system(name);
        let settled = settle(&system).unwrap();
        for (symbol, size) in sizes {
            let mut acts = system.acts().into_iter();
            let act = acts.find(|act| act.symbol.as_str() == *symbol).unwrap();
            let found = settled.solution.reaction(act.id).unwrap().force.size();
            assert!(
                (found / size - 1.0).abs() < 1e-6,
                "{name}, {symbol}: {found}"
            );
        }
    }
}

/// The lines of a working: each with its names alone, its numbers alone, or whole.
fn lines(system: &System, part: usize) -> Vec<String> {
    let settled = settle(system).unwrap();
    let working = derive(system, &settled.values, Method::Components, None).unwrap();
    let mut lines = Vec::new();
    for line in told(system, &working, &settled.values) {
        match line {
            Told::Balance { names, numbers, .. } if part == 0 => {
                drop(numbers);
                lines.push(names);
            }
            Told::Balance { numbers, .. } => lines.push(numbers),
            Told::Quantity { text, .. } => {
                let sides: Vec<&str> = text.split(" = ").collect();
                lines.push(match (part, sides.as_slice()) {
                    (0, [name, form, ..]) => format!("{name} = {form}"),
                    (1, [name, .., form, _]) if sides.len() > 2 => format!("{name} = {form}"),
                    _ => text,
                });
            }
            _ => {}
        }
    }
    lines
}

#[test]
fn no_line_of_a_working_is_called_wrong() {
    let mut faults = Vec::new();
    for (name, _) in WORKED {
        let system = system(name);
        for part in 0..3 {
            let mut session = of_file(&text_of(name));
            for line in lines(&system, part) {
                if session.course() == Course::Finished {
                    break;
                }
                let turn = session.submit(&line);
                if matches!(
                    turn.line.sign,
                    Sign::Wrong | Sign::Unclear | Sign::Incomplete | Sign::Talk
                ) {
                    faults.push(format!("{name}: {line}: {}", turn.line.message));
                }
            }
            if session.course() != Course::Finished {
                faults.push(format!("{name}, {part}: not at its end"));
            }
        }
    }
    assert_eq!(faults, Vec::<String>::new());
}

/// Loads are printed in kN and masses are given: who counts in kN throughout is right.
#[test]
fn bare_numbers_of_the_printed_unit_stand_beside_weights() {
    let (right, noted, wrong) = (Sign::Right, Sign::Noted, Sign::Wrong);
    for (line, signs) in [
        ("Q = 6.3", vec![right]),
        ("Q = 2.1*3", vec![right, noted]),
        ("Q = 6300 N", vec![right]),
        ("Q = 63", vec![wrong]),
        ("Q = 2.1*4", vec![wrong]),
        ("B = 3.89", vec![right]),
        ("B = 38.9", vec![wrong]),
        ("W*4 + Q*3.714 - 4 = B*6.5", vec![right, Sign::Rounded]),
        ("W*4 + Q*3.714 + 4 = B*6.5", vec![wrong]),
        ("W*4 + Q*3.714 = B*6.5", vec![wrong]),
        ("3.6*3.5 + 2.7*4 + 1.4715*4 - 4 = 6.5*B", vec![right, noted]),
        ("3.6*3.5 + 2.7*5 + 1.4715*4 - 4 = 6.5*B", vec![wrong]),
    ] {
        let mut session = of_file(&text_of("trap"));
        session.submit("skip");
        let turn = session.submit(line);
        let (sign, told) = (turn.line.sign, &turn.line.message);
        assert!(signs.contains(&sign), "{line}: {sign:?} {told}");
    }
}

/// A load that rises evenly is worked as a rectangle and a triangle too: 3600 N at 3.5 m and 2700 N
/// at 4 m, two thirds of the stretch from its lower end.
#[test]
fn val_a_trapezium_is_a_rectangle_and_a_triangle() {
    let balance = "moments about the pin (beam)";
    let faults: Vec<String> = [
        (
            balance,
            "6.5*B + 4000 = 1471.5*4 + 1200*3*3.5 + 0.5*1800*3*4",
            Sign::Right,
        ),
        (
            balance,
            "6.5*B + 4000 = 1471.5*4 + 3600*3.5 + 2700*4",
            Sign::Right,
        ),
        (balance, "6.5*B = 5886 + 12600 + 10800 - 4000", Sign::Right),
        (
            balance,
            "6.5*B + 4000 = 1471.5*4 + 3600*3.5 + 2700*3",
            Sign::Wrong,
        ),
        (
            balance,
            "6.5*B + 4000 = 1471.5*4 + 3600*3.5 + 5400*4",
            Sign::Wrong,
        ),
        ("whole force of the gravel", "3600 + 2700", Sign::Right),
        (
            "whole force of the gravel",
            "1200*3 + 1800*3/2",
            Sign::Right,
        ),
        ("whole force of the gravel", "1200*3 + 1800*3", Sign::Wrong),
    ]
    .into_iter()
    .filter_map(|(title, line, sign)| {
        let turn = passed_to(&text_of("trap"), title).submit(line);
        (turn.line.sign != sign).then(|| format!("{line}: {}", turn.line.message))
    })
    .collect();
    assert_eq!(faults, Vec::<String>::new());
}
