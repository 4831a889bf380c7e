//! A way said beside a true one, in the same line or in a later one: a false one is never credited,
//! a true one always is.
//!
//! What people type: common practice, no source.

use super::open;
use leverwright::session::Sign;

/// The lesson and seed, lines in one sitting, and the sign of the last.
const ROWS: &[(&str, u64, &[&str], Sign)] = &[
    // The rope runs up and to the left, 35° from the vertical.
    (
        "walkway",
        1503,
        &[
            "rope tension to the hide",
            "the rope pulls straight up at 2.7 m",
        ],
        Sign::Noted,
    ),
    (
        "walkway",
        1503,
        &["rope up and left", "the rope pulls straight up at 2.7 m"],
        Sign::Noted,
    ),
    (
        "walkway",
        1503,
        &["rope to the hide at 2.7 m straight up"],
        Sign::Noted,
    ),
    (
        "walkway",
        1503,
        &["rope up and left", "rope at 2.7 m, level to the left"],
        Sign::Wrong,
    ),
    (
        "walkway",
        1503,
        &[
            "rope up and left",
            "rope at 2.7 m, to the left, horizontally",
        ],
        Sign::Wrong,
    ),
    (
        "walkway",
        1503,
        &[
            "rope pulls along itself",
            "rope pulls up 35 degrees from the horizontal at 2.7 m",
        ],
        Sign::Wrong,
    ),
    (
        "walkway",
        1503,
        &["rope to the hide, 35 degrees from the horizontal, at 2.7 m"],
        Sign::Wrong,
    ),
    (
        "walkway",
        1503,
        &["rope up and left", "rope at 2.7 m, vertically upward"],
        Sign::Noted,
    ),
    (
        "walkway",
        1503,
        &[
            "rope up and left",
            "rope at 2.7 m, across the walkway, up at 90 degrees to it",
        ],
        Sign::Wrong,
    ),
    (
        "walkway",
        1504,
        &["the rope pulls the free end straight up towards the hide"],
        Sign::Noted,
    ),
    // The rope runs up and to the right, 35° from the horizontal.
    (
        "mast",
        1505,
        &["rope at the tip, to the tower, 35 degrees from the vertical"],
        Sign::Wrong,
    ),
    (
        "mast",
        1505,
        &["rope at the tip, up and back to the tower, 35 degrees from the vertical"],
        Sign::Wrong,
    ),
    (
        "mast",
        1505,
        &["rope up and right", "rope at the tip, vertically up"],
        Sign::Noted,
    ),
    // What was wrong or half is put right.
    (
        "walkway",
        1503,
        &["rope to the hide at 2.7 m straight up", "towards the hide"],
        Sign::Right,
    ),
    (
        "walkway",
        1503,
        &["rope to the hide at 2.7 m straight up", "left"],
        Sign::Right,
    ),
    (
        "walkway",
        1503,
        &[
            "rope up and left",
            "rope at 2.7 m, level to the left",
            "up and left",
        ],
        Sign::Right,
    ),
    (
        "walkway",
        1503,
        &[
            "rope up and left",
            "rope at 2.7 m, level to the left",
            "35 degrees from the vertical",
        ],
        Sign::Right,
    ),
    (
        "walkway",
        1503,
        &["rope straight up", "left", "at 2.7 m"],
        Sign::Right,
    ),
    // A later true one stays right, and so does a true part of it.
    (
        "walkway",
        1503,
        &["rope up and left", "at 2.7 m"],
        Sign::Right,
    ),
    (
        "walkway",
        1503,
        &["rope up and left", "rope at 2.7 m, up"],
        Sign::Right,
    ),
    (
        "walkway",
        1503,
        &["rope to the hide", "rope at 2.7 m, up"],
        Sign::Right,
    ),
    (
        "walkway",
        1503,
        &["rope to the hide", "rope at 2.7 m, left"],
        Sign::Right,
    ),
    (
        "walkway",
        1503,
        &[
            "rope to the hide",
            "rope at 2.7 m, 35 degrees from the vertical",
        ],
        Sign::Right,
    ),
    (
        "walkway",
        1503,
        &[
            "rope to the hide",
            "rope at 2.7 m, at angle b to the vertical",
        ],
        Sign::Right,
    ),
    (
        "walkway",
        1503,
        &[
            "rope up and left",
            "rope at 2.7 m, 55 degrees from the horizontal",
        ],
        Sign::Right,
    ),
    (
        "walkway",
        1503,
        &[
            "rope up and left",
            "rope at 2.7 m, towards the top of the hide",
        ],
        Sign::Right,
    ),
    ("walkway", 1503, &["rope up at 2.7 m", "left"], Sign::Right),
    (
        "walkway",
        1503,
        &["rope at 2.7 m", "towards the hide"],
        Sign::Right,
    ),
    (
        "walkway",
        1503,
        &["rope at 2.7 m", "to the hide"],
        Sign::Right,
    ),
    (
        "walkway",
        1503,
        &["rope up at 2.7 m", "it pulls towards the hide"],
        Sign::Right,
    ),
    (
        "walkway",
        1503,
        &["rope at 2.7 m towards the top of the hide"],
        Sign::Right,
    ),
    (
        "walkway",
        1503,
        &["rope at 2.7 m", "towards the hinge"],
        Sign::Wrong,
    ),
    (
        "walkway",
        1503,
        &["bird watcher at 1.1 m", "towards the hide"],
        Sign::Wrong,
    ),
    (
        "walkway",
        1503,
        &["rope straight up and to the left at 2.7 m"],
        Sign::Right,
    ),
    (
        "walkway",
        1503,
        &["rope straight up and back to the hide at 2.7 m"],
        Sign::Right,
    ),
    (
        "walkway",
        1503,
        &["rope, 2.7 m, vertically up, horizontally left"],
        Sign::Right,
    ),
    (
        "walkway",
        1503,
        &["rope up and back to the hide, 2.7 m, 35 degrees from the vertical"],
        Sign::Right,
    ),
    (
        "walkway",
        1503,
        &["bird watcher straight down 1.1 m from the hinge"],
        Sign::Right,
    ),
    (
        "walkway",
        1503,
        &["straight down at 1.1 m, weight of the bird watcher"],
        Sign::Right,
    ),
    (
        "mast",
        1505,
        &["dummy 3.8 m straight up the mast, down"],
        Sign::Right,
    ),
    (
        "mast",
        1505,
        &["rope, 7 m straight up the mast, to the tower"],
        Sign::Right,
    ),
    (
        "mast",
        1505,
        &["rope at the tip, along itself, 75 degrees with the mast"],
        Sign::Right,
    ),
    (
        "mast",
        1505,
        &[
            "rope at the tip",
            "to the tower, 35 degrees above the horizontal",
        ],
        Sign::Right,
    ),
];

/// Two ways of one force in one breath, and what is told of them. The rope of the walkway runs up
/// and to the left, that of the mast up and to the right.
#[rustfmt::skip]
const TWO_WAYS: &[(&str, u64, &[&str], &str)] = &[
    ("walkway", 1503, &["rope at 2.7 m, up and left, level"], "two ways of the pull of the rope: upwards and to the left, and level"),
    ("walkway", 1503, &["rope up and to the left, level, at 2.7 m"], "and level"),
    ("walkway", 1503, &["rope at 2.7 m to the hide, horizontally"], "along itself, and level"),
    ("walkway", 1503, &["rope at 2.7 m horizontally towards the hide"], "along itself, and level"),
    ("walkway", 1503, &["rope at 2.7 m, along itself, vertically"], "along itself, and upright"),
    ("walkway", 1503, &["rope at 2.7 m, up and left, vertical"], "upwards and to the left, and upright"),
    ("walkway", 1503, &["rope at 2.7 m, up and left, straight up"], "upwards and to the left, and straight up"),
    ("walkway", 1503, &["rope at 2.7 m, straight up, up and left"], "and straight up"),
    ("walkway", 1503, &["rope at 2.7 m to the hide, straight up"], "and straight up"),
    ("walkway", 1503, &["rope at 2.7 m, up and left, 35 degrees from the vertical, level"], "and level"),
    ("walkway", 1503, &["horizontal rope at 2.7 m, up and left"], "and level"),
    ("walkway", 1503, &["rope at 2.7 m, up and left. It is level."], "and level"),
    ("walkway", 1503, &["rope at 2.7 m, up and left", "rope at 2.7 m, up and left, level"], "and level"),
    ("walkway", 1503, &["hinge, foot, up, level"], "the force of the hinge: upwards, and level"),
    ("walkway", 1503, &["weight of the walkway, middle, down, level"], "downwards, and level"),
    ("mast", 1505, &["rope at the tip, up and right, level"], "and level"),
    ("mast", 1505, &["rope at the tip, to the tower, horizontally"], "and level"),
    // The same line once more, and a part of a force that is told part by part.
    ("walkway", 1503, &["rope at 2.7 m, horizontally to the left, vertically up"], "Yes:"),
    ("walkway", 1503, &["rope at 2.7 m, left horizontally and up"], "Yes:"),
    ("walkway", 1503, &["rope at 2.7 m, its level part to the left, its upright part up"], "Yes:"),
    ("walkway", 1503, &["rope at 2.7 m, horizontal component to the left and vertical component up"], "Yes:"),
    ("walkway", 1503, &["rope at 2.7 m, horizontal part left, and up"], "Yes:"),
    ("walkway", 1503, &["rope at 2.7 m, up and to the left, neither level nor upright"], "Yes:"),
    ("walkway", 1503, &["rope at 2.7 m, up and left, not level"], "Yes:"),
    ("walkway", 1503, &["rope at 2.7 m, to the hide, at an angle with the horizontal"], "Yes:"),
    ("walkway", 1503, &["rope at 2.7 m of the level walkway, up and left"], "Yes:"),
    ("walkway", 1503, &["rope at 2.7 m horizontally from the hinge, up and left"], "Yes:"),
    ("walkway", 1503, &["rope, horizontal distance 2.7 m, up and left"], "Yes:"),
    ("walkway", 1503, &["rope at 2.7 m, up and left, above the horizontal"], "Yes:"),
    ("walkway", 1503, &["rope at 2.7 m, straight up and to the left"], "Yes:"),
    ("walkway", 1503, &["the hinge pushes right and up at the foot"], "Taken:"),
    ("walkway", 1503, &["hinge, foot, horizontally and up"], "Taken:"),
    ("walkway", 1503, &["hinge, foot, horizontal and vertical"], "Yes:"),
    ("walkway", 1503, &["hinge at ground level, up and right"], "Taken:"),
    ("walkway", 1503, &["weight of the walkway, middle, down, vertically"], "Yes:"),
    ("walkway", 1503, &["weight of the level walkway, middle, down"], "Yes:"),
    ("mast", 7, &["rope, 3.8 m, to the tower, level"], "Yes:"),
    ("mast", 7, &["rope, 3.8 m, right, horizontally"], "Yes:"),
    ("mast", 7, &["rope, 3.8 m, right, vertical"], "to the right, and upright"),
    ("counter", 7, &["rope, tip, up, vertical"], "Yes:"),
    ("counter", 7, &["rope, tip, straight up to the ceiling, along itself"], "Yes:"),
    ("counter", 7, &["rope, tip, up, level"], "upwards, and level"),
];

#[test]
fn two_ways_of_one_force_in_one_breath_are_told_and_never_credited() {
    let mut faults = Vec::new();
    for (lesson, seed, lines, wanted) in TWO_WAYS {
        let mut session = open(lesson, *seed);
        let turns: Vec<_> = lines.iter().map(|line| session.submit(line)).collect();
        let last = turns.last().unwrap();
        let message = last.line.message.to_string();
        let credited = last.line.sign == Sign::Right;
        let wants_credit = wanted.ends_with(':');
        if !message.contains(wanted) || credited != wants_credit {
            faults.push(format!(
                "{lesson} {lines:?}: {:?}: {message}",
                last.line.sign
            ));
        }
    }
    assert!(faults.is_empty(), "{}", faults.join("\n"));
}

#[test]
fn a_false_way_beside_a_true_one_is_never_credited() {
    let mut faults = Vec::new();
    for (lesson, seed, lines, wanted) in ROWS {
        let mut session = open(lesson, *seed);
        let turns: Vec<_> = lines.iter().map(|line| session.submit(line)).collect();
        let last = turns.last().unwrap();
        if last.line.sign != *wanted {
            faults.push(format!("{lesson} {lines:?}: {:?}", last.line.sign));
        }
    }
    assert!(faults.is_empty(), "{}", faults.join("\n"));
}
