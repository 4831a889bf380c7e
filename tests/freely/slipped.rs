//! What follows from a slip in the balances, under names of her own and beside what was rounded too
//! far, and what is told with the line that a force lies along; by hand.

use super::counted::{Row, told_otherwise};
use leverwright::session::Sign;

/// A mast at 40°: Wb 460.6 N, W1 519.4 N (425.9 N is a slip), T at 80° to it, 4.6 m from the foot.
const MAST: &str = "mast --seed 9500232";
/// A mast at 65° to the level: Wb 686 N, W1 647 N, W2 98 N; with W1 = 356 N T is 1183 N, H 42.8 N.
const UPRIGHT: &str = "mast --seed 9103236";
const SLIPPED: &[&str] = &["Wb = 686 N", "W1 = 356 N", "W2 = 98.0 N", TENSION];
const ROUNDED: &[&str] = &[
    "Wb = 686 N",
    "W1 = 356 N",
    "W2 = 98.0 N",
    TENSION,
    "H = -686 - 356 - 98.0 + 1180 = 40.0 N",
];
const TENSION: &str =
    "T = (686*3.3*cos(65) + 356*6.6*cos(65) + 98.0*1.2*cos(65))/(4*sin(25)) = 1180 N";

#[rustfmt::skip]
const ROWS: &[Row] = &[
    // 40° is that of the mast and that of the rope: a name of hers may stand for either.
    (MAST, &["Wb = 460.6 N", "W1 = 425.9 N", "x1 = 2.5*cos(40) = 1.915 m", "x2 = 5*cos(40) = 3.83 m"],
        "T*4.6*sin(80) = 460.6*x1 + 425.9*x2", Sign::Follows, "line 2"),
    (MAST, &["Wb = 460.6 N", "W1 = 519.4 N", "x1 = 2.5*cos(40) = 1.915 m", "x2 = 5*cos(40) = 3.83 m"],
        "T*4.6*sin(80) = 460.6*x1 + 519.4*x2", Sign::Right, ""),
    (MAST, &["Wb = 460.6 N", "W1 = 519.4 N", "x1 = 2.5*sin(40) = 1.607 m", "x2 = 5*cos(40) = 3.83 m"],
        "T*4.6*sin(80) = 460.6*x1 + 519.4*x2", Sign::Wrong, ""),
    // A balance of forces with a slipped weight in numbers.
    (UPRIGHT, SLIPPED, "0 = 686 + 356 + 98.0 - T + H", Sign::Follows, "lines 2, 4"),
    (UPRIGHT, SLIPPED, "0 = 686 + 356 - T + H", Sign::Wrong, ""),
    (UPRIGHT, ROUNDED, "0 = 686 + 356 + 98.0 - T + H", Sign::Follows, ""),
    (UPRIGHT, ROUNDED, "0 = 686 + 356 + 98.0 - T + 2*H", Sign::Wrong, ""),
    // A difference of numbers of hers is off by what both were rounded by.
    ("counter --seed 9101228", &["Wb = 147 N", "W1 = 299 N", "T = (Wb*L/2 + W1*d1)/dT = 384 N", "W1 = 24*9.8 = 235 N"],
        "H = 147 N + 235 N - 384 N = -2.00 N", Sign::Follows, "line 3"),
    // A wrong form told once more is no value of hers to go on with.
    ("mast --seed 3", &["psi = atan(798/1280)", "T = 811 N"], "psi = atan(798/1280) = 31.9°", Sign::Noted, ""),
    ("mast --seed 3", &["psi = atan(798/1280)", "T = 811 N"], "psi = 31.9°", Sign::Follows, ""),
    // What follows from a sine is the angle.
    ("mast --seed 3", &[], "sin gamma = 0.906 ⇒ 65.0°", Sign::Right, ""),
    ("mast --seed 3", &[], "sin gamma = 0.906 ⇒ 60.0°", Sign::Wrong, ""),
    // Beside an acute angle the parts are sizes, and no sense is told.
    ("mast --seed 3", &[], "tan psi = Hy/Hx", Sign::Right, "!counts"),
    // The hinge's force acts at 58° to the level, the mast stands at 55°, the rope at 10°.
    ("mast --seed 3", &[], "H = 1510 N along the mast", Sign::Wrong, "not the way"),
    ("mast --seed 3", &[], "T = 811 N along the mast", Sign::Wrong, "not the way"),
    ("mast --seed 3", &[], "T = 811 N along the rope", Sign::Right, ""),
    ("mast --seed 3", &[], "Hx = 798 N along the rope", Sign::Wrong, ""),
    ("mast --seed 3", &[], "Wb = 617 N perpendicular to the mast", Sign::Wrong, ""),
    ("ladder", &[], "N = 882 N perpendicular to the ladder", Sign::Wrong, ""),
    // B = 735 N, A = 941 N.
    ("gate", &[], "A/B = 1.28", Sign::Right, ""),
    ("gate", &[], "A = 1.28 B", Sign::Right, ""),
    ("gate", &[], "A/B = 1.20", Sign::Wrong, ""),
    ("gate", &[], "A/B = 0.78", Sign::Wrong, ""),
    ("gate", &[], "A = 1.28 N", Sign::Wrong, ""),
];

#[test]
fn what_follows_from_a_slip_and_lines_of_force_are_judged() {
    let others = told_otherwise(ROWS);
    assert!(others.is_empty(), "{others:#?}");
}
