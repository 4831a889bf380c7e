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
