//! What follows from values of hers that stand in a line as numbers, in the sense in which she counts
//! them, and what is no better for the luck that it has; by hand.

use super::counted::{Row, told_otherwise};
use leverwright::session::Sign;

const PUSHED: &str = "../general/block_pushed";
const POLE: &str = "../general/pole_on_peg";
const CHAIN: &str = "../general/level_chain";
const STUDS: &str = "../general/frame_on_studs";
const TWO_LEGS: &str = "../general/two_legs";
const STRAP: &str = "../workings/strap_by_distances";
const BARS: &str = "../workings/two_bars";

/// The strut pushes with 4165 N: 392·1.5 + 1470·3 = 4998, over 2·0.6.
const PUSHES: &str = "392*1.5 + 1470*3 = S*2*sin 36.87";
const SLIPPED: &[&str] = &[PUSHES, "S = 3200 N"];
/// With 3125 N the pin pulls down with 1875 − 1862.
const SMALL: &[&str] = &[PUSHES, "S sin36.9 = 1862 + Hy", "S = 3125 N"];
/// (204 − 39.2) cot 55° = 115.4, to the left.
const STUD: &[&str] = &[
    "By = 204 N",
    "right leg about joint: 204*2.98*cos55 = 78.4*1.49*cos55 + Bx*2.98*sin55",
];
const LEGS: &[&str] = &[
    "B*6*sin20 = 98*1.5*sin20 + 137.2*4.5*sin20 + 294*3*sin20",
    "B = 274.4 N",
    "Ay = 529.2 - 274.4 = 254.8 N",
];
const TENS: &[&str] = &[
    "Wb = 720 N",
    "W1 = 710 N",
    "T = 866 N",
    "Hx = -866 N",
    "Hy = 1430 N",
];
const COMPLEMENT: &[&str] = &[
    "gamma = 25°",
    "T*3.6*sin(25) = 392*1.8+588*2.5",
    "T = 1430 N",
];
const EXCHANGED: &[&str] = &["W cos theta = mu*N", "W sin theta = N"];
/// Cosine for sine in the part of T, and T as it is right: 529.2 + 764.4 − 878·cos 65 = 922.5.
const UPRIGHT: &[&str] = &["Hy = Wb + W1 - T cos 65", "T = 878 N"];
/// 878·sin 65 = 796.
const LEVEL: &[&str] = &["Hx = -T sin 65", "T = 878 N"];
const ADDED: &[&str] = &["H = Wb+W1+W2+T", "T = 496 N"];
const OWN_WEIGHT: &[&str] = &["Hy = W1+W2-T sin 10", "T = 811 N"];
const BY_NAMES: &[&str] = &[
    "W2 = 86.2 N",
    "T = 2669 N",
    "Hx = 1531 N to the left",
    "Hy = Wb+W1+W2-Ty",
];
const MOMENTS: &str = "M = 529*1.8 + 764*2.5 = 2862 N m";
/// The moments of both bars about the left pin, and of the right one about the joint.
const BOTH_BARS: &str = "88.2*1 + 176.4*(2*cos50 + 1.3*cos35) + m*9.8*(2*cos50 + 1*cos35) = N*(2*cos50 + 2.6*cos35) + 0.55*N*(2*sin50 - 2.6*sin35)";
const RIGHT_BAR: &str = "176.4*1.3*cos35 + m*9.8*1*cos35 + 0.55*N*2.6*sin35 = N*2.6*cos35";
const RIGHT_BAR_TWICE: &str =
    "2*(176.4*1.3*cos35 + m*9.8*1*cos35 + 0.55*N*2.6*sin35) = 2*N*2.6*cos35";

#[rustfmt::skip]
const ROWS: &[Row] = &[
    // A strut pushes from where a line says so: 3200·cos 36.9° = 2559 to the left, 3200·0.6 − 1862 down.
    ("jib", SLIPPED, "Hx = 3200cos36.9 = 2559 N left", Sign::Follows, "line 2"),
    ("jib", SLIPPED, "Hx = 2559 N right", Sign::Wrong, ""),
    ("jib", SLIPPED, "Hx = -2560 N", Sign::Follows, "!to the right"),
    ("jib", SLIPPED, "Hy = 1862 - 3200 sin36.9 = -59 N", Sign::Follows, ""),
    ("jib", SLIPPED, "Hy = 1862 + 3200 sin36.9 = 3783 N", Sign::Wrong, ""),
    ("jib", &["S = 3200 N"], "Hx = 2559 N left", Sign::Follows, "line 1"),
    ("jib", SMALL, "Hy = 14 N down", Sign::Follows, "line 3"),
    ("jib", SMALL, "Hy = 14 N up", Sign::Wrong, ""),
    ("jib", SMALL, "Hy = 24 N down", Sign::Wrong, ""),
    // Its right value takes nothing of that back.
    ("jib", &[PUSHES, "S = 4165 N"], "Hy = Wb + W1 + S sin 36.87", Sign::Wrong, "Since line 1 S counts one way"),
    ("jib", &[PUSHES, "S = 4165 N"], "Hy = 1862 + S sin 36.87", Sign::Wrong, "Since line 1"),
    ("jib", &[PUSHES, "S = 4165 N"], "Hy = Wb + W1 - S sin 36.87", Sign::Right, ""),
    ("jib", &[PUSHES, "S = 4165 N"], "Hx = S cos 36.87", Sign::Right, ""),
    ("jib", &["Hy = Wb + W1 + S sin 36.87", "S = 4165 N"], "Hy = Wb + W1 + S sin 36.87", Sign::Right, ""),
    ("jib", &["S = -4165 N"], "Hy = Wb + W1 + S sin 36.87", Sign::Right, ""),
    ("jib", &[], "Hy = 1862 + S sin 36.87", Sign::Right, ""),
    ("jib", &["S = 4165 N", "Sy = 2500 N up"], "Hy = Wb + W1 + Sy", Sign::Wrong, "Since line 2 Sy counts one way"),
    ("jib", &["S = 4165 N", "Sy = 2500 N up"], "Hy = Wb + W1 - Sy", Sign::Right, ""),
    // A part that a wrong balance gives points as the key would have it.
    (STUDS, STUD, "Bx = 115 N left", Sign::Follows, ""),
    (STUDS, STUD, "Bx = 115 N right", Sign::Wrong, ""),
    (STUDS, STUD, "Bx = 125 N left", Sign::Wrong, ""),
    // Friction at its limit under a name of hers, at the other value of what is sought.
    (PUSHED, &["F = 0.3*N"], "P cos28 = 117.6 sin28 + F", Sign::Right, "another value of P"),
    (PUSHED, &["F = 0.3*N"], "P cos28 + F = 117.6 sin28", Sign::Right, "!another value of P"),
    (PUSHED, &["F = 0.3*N"], "P cos28 = 117.6 sin28 + 2*F", Sign::Wrong, ""),
    (PUSHED, &["f = μN"], "P = N sin28 + f cos28", Sign::Right, "another value of P"),
    (PUSHED, &["f = μN", "P = N sin28 + f cos28"], "N cos28 = 117.6 + f sin28", Sign::Right, ""),
    (PUSHED, &["f = μN"], "P = N sin28 + f sin28", Sign::Wrong, ""),
    (PUSHED, &["Ff = 0.3*N"], "P cos28 = 117.6 sin28 + Ff", Sign::Right, ""),
    (POLE, &["F = 0.15*N"], "N cos33 + F sin33 = 88.2 sin33", Sign::Right, ""),
    (POLE, &["F = 0.15*N"], "N cos33 + F cos33 = 88.2 sin33", Sign::Wrong, ""),
    // A value of hers as a number is as good as its name, in the printed unit, too.
    ("internal_hinge", &["B = 6 kN"], "A + 6 = 24", Sign::Right, ""),
    ("internal_hinge", &["B = 6 kN"], "A + 6 = 26", Sign::Wrong, ""),
    ("internal_hinge", &["B*3 = 12*3", "B = 12 kN"], "MA + 12*7 = 12*1.5 + 12*5.5", Sign::Follows, "line 2"),
    ("internal_hinge", &["B*3 = 12*3", "B = 12 kN"], "MA + 12*7 = 12*1.5 + 12*5", Sign::Wrong, ""),
    ("internal_hinge", &["B*3 = 12*3", "B = 12 kN"], "A + 12 = 24", Sign::Follows, ""),
    ("internal_hinge", &["B*3 = 12*3", "B = 12 kN"], "A + 12 = 25", Sign::Wrong, ""),
    ("internal_hinge", &["B = 5 kN"], "MA + 5*7 = 12*1.5 + 12*5.5", Sign::Follows, "line 1"),
    ("internal_hinge", &["B = 5 kN"], "MA + 5*6 = 12*1.5 + 12*5.5", Sign::Wrong, ""),
    ("internal_hinge", &["B = 5 kN"], "A + 5 = 24", Sign::Follows, ""),
    ("frame", &["B*3 = 294*1.5", "B = 147 N"], "MA + 147*7 = 196*2 + 300*1 + 294*5", Sign::Follows, "line 2"),
    ("frame", &["B*3 = 294*1.5", "B = 147 N"], "MA + 147*7 = 196*2 + 300*1 + 294*4", Sign::Wrong, ""),
    ("frame", &["B*3 = 294*1.5", "B = 147 N"], "A + 147 = 790", Sign::Follows, "line 2"),
    ("frame", &["B*3 = 294*1.5", "B = 147 N"], "A + 147 = 690", Sign::Wrong, ""),
    ("frame", &["B = 147 N"], "147*3 = 294*1", Sign::Wrong, ""),
    (TWO_LEGS, LEGS, "left leg about joint: 254.8*3*sin20 + 150*3*cos20 = 98*1.5*sin20 + 150*1*cos20 + T*2*cos20", Sign::Follows, "line 3"),
    (TWO_LEGS, LEGS, "left leg about joint: 150*3*cos20 = 254.8*3*sin20 + 98*1.5*sin20 + 150*1*cos20 + T*2*cos20", Sign::Wrong, ""),
    // Wrong values that make up for each other follow all the same.
    ("mast --seed 7", TENS, "psi = atan(1430/866)", Sign::Follows, ""),
    ("mast --seed 7", TENS, "psi = atan(866/1430)", Sign::Wrong, ""),
    ("jib", &["Hx = 3400 N", "Hy = 650 N"], "psi = atan(650/3400)", Sign::Follows, "lines 1, 2"),
    ("walkway --seed 5", COMPLEMENT, "Hy = Wb + W1 - 1430*sin(25)", Sign::Follows, "lines 1, 3"),
    ("walkway --seed 5", COMPLEMENT, "Hy = Wb + W1 - 1430*sin(35)", Sign::Wrong, ""),
    // A right line that is not linear, multiplied out.
    ("ladder_angle", &["196*2*cos theta = 68.6*4*sin theta"], "tan theta = 392/274.4", Sign::Right, ""),
    ("ladder_angle", &["196*2*cos theta = 68.6*4*sin theta"], "tan theta = 392/284.4", Sign::Wrong, ""),
    // The other foot carries the rest: 1176 − 706, 186.2 − 125, 901.6 − 553.7, 156.8 − 91.5.
    ("a_frame", &["A*5*cos70 = 1176*3*cos70", "A = 706 N"], "B = 470 N", Sign::Follows, "line 2"),
    ("a_frame", &["A*5*cos70 = 1176*3*cos70", "A = 706 N"], "B = 480 N", Sign::Wrong, ""),
    ("cord_by_numbers", &["A = 125"], "B = 61.2", Sign::Follows, "line 1"),
    ("cord_by_numbers", &["A = 125"], "B = 71.2", Sign::Wrong, ""),
    (CHAIN, &["Nf = 553.7"], "Nk = 347.9", Sign::Follows, "line 1"),
    (CHAIN, &["Nf = 553.7"], "Nk = 357.9", Sign::Wrong, ""),
    (STRAP, &["A = 91.5"], "B = 65.3", Sign::Follows, "line 1"),
    (STRAP, &["A = 91.5"], "B = 75.3", Sign::Wrong, ""),
    // The number of her whole pull, which happens to be that of the part, shows no way.
    ("walkway --seed 11", &["352.8*2.1 + 646.8*2.8 = T*4.2", "T = 608 N"], "Hy = 999.6 - 608 = 392 N", Sign::Noted, ""),
    ("walkway --seed 11", &["352.8*2.1 + 646.8*2.8 = T*4.2", "T = 608 N"], "Hy = 392 N", Sign::Right, ""),
    ("walkway --seed 11", &[], "Hy = 999.6 - 608 = 392 N", Sign::Right, ""),
    ("forearm", &["M = 487.6"], "Ey = 487.6 - 64.7 = 423", Sign::Noted, ""),
    ("forearm", &["My = 487.6"], "Ey = 487.6 - 64.7 = 423", Sign::Right, ""),
    ("jib", &["S = 4165 N", "S = 4998/1.5 = 3332 N"], "|Hx| = 4998/1.5 = 3332 N", Sign::Right, ""),
    // A mistake that was refused is none the less one in the balance after it.
    ("mast --seed 3", &["Hx = -811"], "Hx + T = 0", Sign::Follows, "line 1"),
    ("mast --seed 3", &["Hx = -811"], "Hx + T cos 10 = 0", Sign::Right, ""),
    ("mast --seed 3", &["Hy = 1421 - 811"], "Hy + T = Wb + W1 + W2", Sign::Follows, "line 1"),
    ("counter --seed 2", &["H = 353 + 182"], "H - T = 353", Sign::Follows, "line 1"),
    ("counter --seed 2", &["H = 353 + 182"], "H + T = 353", Sign::Right, ""),
    ("pulley_beam", &["T = 1486 N", "Hx = 1463 - 849"], "Hx = Tx - Sx", Sign::Follows, "line 2"),
    ("ladder", &["N = 882 - 308.7"], "N + F = 882", Sign::Follows, "line 1"),
    ("ladder", &["N = 882 - 308.7"], "N = 882", Sign::Right, ""),
    // A balance of forces is told as one where no moments are asked.
    ("walkway --seed 5", &[], "T sin 65 = Wb + W1", Sign::Wrong, "T alone hold up the weights"),
    ("walkway --seed 5", &[], "T sin 65 - Wb - W1 = 0", Sign::Wrong, "T alone hold up the weights"),
    ("counter --seed 2", &[], "T - Wb - W1 = 0", Sign::Wrong, "T alone hold up the weights"),
    ("walkway --seed 5", &[], "T sin 65 + Hy - Wb - W1 = 0", Sign::Right, ""),
    // What two wrong lines give together.
    ("incline_slip", EXCHANGED, "tan theta = 1/mu", Sign::Follows, ""),
    ("incline_slip", EXCHANGED, "tan theta = 2/mu", Sign::Wrong, ""),
    ("incline_slip", EXCHANGED, "tan theta = mu", Sign::Right, ""),
    ("incline_slip", &[], "tan theta = 1/mu", Sign::Wrong, "divided by it"),
    // A wrong relation, its unknown, and its value with a way.
    ("walkway --seed 3", UPRIGHT, "Hy = 922 N up", Sign::Follows, "your own balance"),
    ("walkway --seed 3", UPRIGHT, "Hy = 922 N down", Sign::Wrong, ""),
    ("walkway --seed 3", UPRIGHT, "Hy = 932 N up", Sign::Wrong, ""),
    ("walkway --seed 3", LEVEL, "Hx = 796 N to the left", Sign::Follows, "to the left"),
    ("walkway --seed 3", LEVEL, "Hx = 796 N", Sign::Follows, "to the left"),
    ("walkway --seed 3", LEVEL, "Hx = 796 N to the right", Sign::Wrong, ""),
    ("walkway --seed 3", LEVEL, "Hx = 806 N to the left", Sign::Wrong, ""),
    ("walkway --seed 3", &["Hx = T sin 65", "T = 878 N"], "Hx = 796 N to the left", Sign::Follows, ""),
    ("walkway --seed 3", &["Hx = T sin 65", "T = 878 N"], "Hx = 796 N to the right", Sign::Wrong, ""),
    ("counter --seed 3", ADDED, "H = 946 N up", Sign::Follows, "your own balance"),
    ("counter --seed 3", ADDED, "H = 946 N down", Sign::Wrong, ""),
    ("mast --seed 3", OWN_WEIGHT, "Hy = 663 N up", Sign::Follows, ""),
    ("mast --seed 3", OWN_WEIGHT, "Hy = 663 N down", Sign::Wrong, ""),
    ("boom", &["Hx = -T sin 28", "T = 408.4 N"], "Hx = 192 N to the left", Sign::Follows, ""),
    ("boom", &["Hx = -T sin 28", "T = 408.4 N"], "Hx = 192 N to the right", Sign::Wrong, ""),
    // The moment sum by a name that has its value already.
    ("walkway --seed 3", &[MOMENTS], "M = T*3.6*sin 65", Sign::Right, "The balance holds"),
    ("walkway --seed 3", &[MOMENTS], "M = T*3.6*cos 65", Sign::Noted, ""),
    ("walkway --seed 3", &[MOMENTS], "M = T*3.6", Sign::Noted, ""),
    // A part told by names has a value none the less: 688.
    ("walkway --seed 42", BY_NAMES, "H = sqrt(1531^2+688^2)", Sign::Follows, ""),
    ("walkway --seed 42", BY_NAMES, "H = sqrt(1531^2+788^2)", Sign::Wrong, ""),
    ("walkway --seed 42", BY_NAMES, "psi = atan(688/1531)", Sign::Follows, ""),
    ("walkway --seed 42", BY_NAMES, "psi = atan(1531/688)", Sign::Wrong, ""),
    // What follows no longer is refused when it is typed again, too.
    ("mast --seed 3", &["gamma = 45", "T = 1040 N", "gamma = 65"], "T = 1040 N", Sign::Wrong, ""),
    ("mast --seed 3", &["gamma = 45", "T = 1040 N"], "T = 1040 N", Sign::Follows, ""),
    // So is a form of the number that was refused.
    ("counter --seed 219", &["T = 225.4"], "T = (215.6*1.4 + 205.8*1.6)/2.8", Sign::Wrong, "from the far end"),
    ("walkway --seed 733", &["Hx = -435"], "Hx = -759 cos 55", Sign::Wrong, ""),
    // The m behind a length is no mass in a balance that is off.
    ("walkway --seed 3", &[], "Wb*1.8 m + W1 = T sin 65 * 3.6 m", Sign::Wrong, "a distance left out (W1)"),
    ("walkway --seed 3", &["Wb*1.8 m + W1 = T sin 65 * 3.6 m"], "T = 526 N", Sign::Follows, ""),
    ("walkway --seed 3", &["Wb*1.8 m + W1 = T sin 65 * 3.6 m"], "T = 536 N", Sign::Wrong, ""),
    ("walkway --seed 3", &[], "Wb*1.8 m + W1*2.5 m = T sin 65 * 3.6 m", Sign::Right, ""),
    ("mast --seed 28", &[], "Wbp*L/2 + W1p = T*sin(55°)*4.4 m", Sign::Wrong, "W1 stands without its distance"),
    // A wrong sign is none of too few figures.
    ("mast --seed 3", &[], "ψ = -58°", Sign::Wrong, "point another way"),
    ("mast --seed 3", &[], "ψ = 58°", Sign::Right, ""),
    ("ladder", &[], "d = -2.8 m", Sign::Wrong, ""),
    ("ladder", &[], "d = 2.8 m", Sign::Right, ""),
    // A rope at her own wrong angle slopes no other way.
    ("mast --seed 5", &["gamma = 55-25 = 30", "T = 758"], "Hy = 412 + 706 + 758 sin 25 = 1438", Sign::Wrong, ""),
    ("mast --seed 5", &["gamma = 55-25 = 30", "T = 758"], "Hy = 412 + 706 - 758 sin 25 = 798", Sign::Follows, ""),
    // Nothing of an unknown stands in it.
    ("walkway --seed 3", &[], "M1 = W1*d1", Sign::Right, "!still unknown"),
    // Two balances that are nearly one say two things: N and m stand in them as 949 to 447 and 361 to 174.
    (BARS, &[BOTH_BARS], RIGHT_BAR, Sign::Right, "The balance holds"),
    (BARS, &[RIGHT_BAR], BOTH_BARS, Sign::Right, "The balance holds"),
    (BARS, &[RIGHT_BAR], RIGHT_BAR_TWICE, Sign::Noted, "says no more"),
];

#[test]
fn what_follows_from_her_numbers_counts_and_no_luck_does() {
    let others: Vec<String> = told_otherwise(ROWS);
    assert!(others.is_empty(), "{others:#?}");
}
