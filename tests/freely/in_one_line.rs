//! How one typed line is taken apart: statements side by side, labels before a colon, bare numbers
//! where forces are printed in kilonewtons; by hand.

use super::counted::{Row, told_otherwise};
use leverwright::session::Sign;

const HOOK: &str = "../workings/hook_three";
const BOTH: &str = "../workings/both_rough";
const CLIMBER: &str = "../workings/climber";
/// Wb 176.4 N and W1 637 N with g = 9.8.
const WITH_TEN: &[&str] = &["Wb = 18*10 = 180, W1 = 65*10 = 650"];
const OF_COUNTER: &[&str] = &[
    "Wb = 190 N, W1 = 260 N",
    "T*1.3 = 190*1.2 + 260*0.9",
    "T = 355.4",
];
const EXCHANGED: &[&str] = &["Px = 90 cos35 = 73.7, Py = 90 sin 35 = 51.6"];
const PARTS: &[&str] = &["Tx = 408.4 sin 28 = 191.7, Ty = 408.4 cos 28 = 360.6"];
/// The roller bears 6 kN, the hinge passes 6 kN on, the wall bears 18 kN and 42 kN m.
const HINGE: &str = "internal_hinge";
const THIRDS: &[&str] = &["Q = 12", "B = 12*2/3 = 8", "Gy = 12 - 8 = 4"];
const THRICE: &[&str] = &["Q = 4*3*3 = 36", "B = 36/2 = 18", "Gy = 18"];

#[rustfmt::skip]
const ROWS: &[Row] = &[
    // Of several wrong statements in one line each is hers, as on lines of their own.
    ("leaning", WITH_TEN, "N = 830", Sign::Follows, "line 1"),
    ("leaning", WITH_TEN, "N = 840", Sign::Wrong, ""),
    ("leaning", WITH_TEN, "R*5*sin60 = 180*2.5*cos60+650*3.5*cos60", Sign::Follows, "line 1"),
    ("leaning", WITH_TEN, "R*5*sin60 = 180*2.5*cos60+650*3.5*sin60", Sign::Wrong, ""),
    ("leaning", WITH_TEN, "N = 813.4 N", Sign::Right, ""),
    ("counter --seed 23", &["Wb = 190 N, W1 = 260 N"], "T*1.3 = 190*1.2 + 260*0.9", Sign::Follows, "line 1"),
    ("counter --seed 23", &["Wb = 190 N, W1 = 260 N"], "T*1.3 = 190*0.9 + 260*0.9", Sign::Wrong, ""),
    ("counter --seed 23", OF_COUNTER, "H = 190 + 260 - 355.4 = 94.6", Sign::Follows, "line"),
    ("counter --seed 23", OF_COUNTER, "H = 190 + 260 + 355.4 = 805.4", Sign::Wrong, ""),
    (HOOK, EXCHANGED, "Hx = 73.7-120 = -46.3", Sign::Follows, "line 1"),
    (HOOK, EXCHANGED, "Hy = 51.6+60 = 111.6", Sign::Follows, "line 1"),
    (HOOK, EXCHANGED, "Hy = 51.6-60 = -8.4", Sign::Wrong, ""),
    ("boom", PARTS, "Hy = 421.4-360.6 = 60.8", Sign::Follows, ""),
    ("boom", PARTS, "Hy = 421.4-191.7 = 229.7", Sign::Right, ""),
    ("boom", PARTS, "Hy = 421.4+360.6 = 782", Sign::Wrong, ""),
    ("boom", &["Tx = 408.4 sin 28 = 191.7 and Ty = 408.4 cos 28 = 360.6"], "Hy = 421.4-360.6 = 60.8", Sign::Follows, ""),
    ("gate", &["W = 650 N; B = 812.5 N → Ax = 812.5 N"], "A = 1041 N", Sign::Follows, "line 1"),
    ("gate", &["W = 650 N; B = 812.5 N → Ax = 812.5 N"], "A = 941 N", Sign::Right, ""),
    ("gate", &["W = 650 N; B = 812.5 N → Ax = 812.5 N"], "A = 1141 N", Sign::Wrong, ""),
    ("gate", &["W = 588 N, B = 800 N"], "Ax = 800 N", Sign::Follows, "line 1"),
    ("gate", &["W = 588 N, B = 800 N"], "Ax = 900 N", Sign::Wrong, ""),
    ("gate", &["W = 588 N, B = 735 N"], "Ax = 735 N", Sign::Right, "!line"),
    ("gate", &["W = 650 N, B = 812.5 N", "back"], "Ax = 812.5 N", Sign::Wrong, ""),
    ("gate", &["W = 650 N, B = 812.5 N", "W = 588 N, B = 735 N"], "Ax = 735 N", Sign::Right, ""),
    // A short name before a whole equation is a label of it, and before a value that name.
    ("boom", &[], "M: T*2.4*sin63 = 176.4*1.6*cos35 + 245*3.2*cos35", Sign::Right, ""),
    ("boom", &[], "M: T*2.4*sin63 = 176.4*1.6*cos35 + 245*3.2*sin35", Sign::Wrong, ""),
    ("leaning", &[], "M: 4.33 R = 1335.25", Sign::Right, ""),
    ("leaning", &[], "M: 4.33 R = 1435.25", Sign::Wrong, ""),
    ("rod_on_peg", &[], "M: P*1.4 = 58.8*cos40", Sign::Right, ""),
    ("rod_on_peg", &[], "M: P*1.4 = 58.8*sin40", Sign::Wrong, ""),
    ("rod_on_peg", &[], "M: P = 32.2", Sign::Right, ""),
    ("rod_on_peg", &[], "M: P = 37.2", Sign::Wrong, ""),
    ("frame", &[], "M: B*3 = 294*1", Sign::Right, ""),
    ("frame", &[], "M(0): B*3 = 294*1", Sign::Right, ""),
    ("frame", &[], "M(A): B*3 = 294*2", Sign::Wrong, ""),
    ("frame", &[], "M: 294*1 = 294 N m", Sign::Noted, ""),
    ("pulley_beam", &[], "H: Hx = T cos 10 + S cos 30", Sign::Right, ""),
    ("pulley_beam", &[], "H: Hx = T cos 10 + S sin 30", Sign::Wrong, ""),
    ("pulley_beam", &[], "M: Hx*1.5 + 245*1.299 = Hy*2.598", Sign::Right, ""),
    ("pulley_beam", &[], "M: Hx*1.5 + 245*1.5 = Hy*2.598", Sign::Wrong, ""),
    ("walkway --seed 52", &[], "H: T cos 70 = Hx", Sign::Right, ""),
    ("walkway --seed 52", &[], "H: T sin 70 = Hx", Sign::Wrong, ""),
    ("walkway --seed 52", &[], "M: T = 3101.7/(3 sin 70) = 1100", Sign::Right, ""),
    ("walkway --seed 52", &[], "M: T = 3101.7/(3 cos 70) = 3023", Sign::Wrong, ""),
    ("walkway --seed 52", &["T = 1100 N"], "H: T cos 70 = 376", Sign::Right, ""),
    ("walkway --seed 52", &["T = 1100 N"], "H: T cos 70 = 476", Sign::Wrong, ""),
    ("walkway --seed 52", &[], "H: 450 N", Sign::Wrong, "size of the hinge"),
    ("counter --seed 8", &[], "H: 450 N", Sign::Wrong, ""),
    ("gate", &[], "W: 60*9.8 = 588 N", Sign::Right, ""),
    ("gate", &[], "W: 60*9.8 = 688 N", Sign::Wrong, ""),
    ("gate", &[], "B : W = 5 : 4", Sign::Right, ""),
    ("gate", &["B = 735 N", "Ax = 735 N"], "A: sqrt(735^2+588^2) = 941 N", Sign::Right, ""),
    ("gate", &["B = 735 N", "Ax = 735 N"], "A: sqrt(735^2+588^2) = 841 N", Sign::Wrong, ""),
    ("gate", &[], "A: B*1.2 = 588*1.5", Sign::Right, ""),
    ("gate", &["A: B*1.2 = 588*3"], "B = 1470 N", Sign::Follows, "line 1"),
    ("gate", &["A: B*1.2 = 588*3"], "B = 1570 N", Sign::Wrong, ""),
    ("gate", &["B = 735 N", "Ax = 735 N", "Ay = 588 N"], "A: Ax + Ay = 1323 N", Sign::Wrong, ""),
    // Bare numbers beside names count in the unit in which the forces are printed.
    (HINGE, &["Ay = 18 kN"], "Ay - 12 = 6", Sign::Right, ""),
    (HINGE, &["Ay = 18 kN"], "Ay - 12 = 7", Sign::Wrong, ""),
    (HINGE, &["Ay = 18 kN"], "Ay - 6 = 12", Sign::Right, ""),
    (HINGE, &["Ay = 18 kN"], "Ay/3 = 6", Sign::Right, ""),
    (HINGE, &["Ay = 18 kN"], "Ay/3 = 6 N", Sign::Wrong, ""),
    (HINGE, &["Ay = 18 kN"], "Ay/3 = 5.5", Sign::Wrong, ""),
    (HINGE, &["B = 6 kN"], "2 B = 12", Sign::Right, ""),
    (HINGE, &["B = 6 kN"], "2 B = 13", Sign::Wrong, ""),
    (HINGE, &["B = 6 kN"], "B/2 = 3", Sign::Right, ""),
    (HINGE, &["B = 6 kN"], "Ay = B + 12", Sign::Right, ""),
    (HINGE, &["B = 6 kN"], "Ay = B + 24", Sign::Wrong, ""),
    (HINGE, &["MA = 42"], "MA/4 = 10.5", Sign::Right, ""),
    (HINGE, &["MA = 42"], "MA/4 = 11.5", Sign::Wrong, ""),
    (HINGE, &["Q = 12", "B = 12*2/3 = 8"], "Gy = 12 - 8 = 4", Sign::Follows, "line 2"),
    (HINGE, &["Q = 12", "B = 12*2/3 = 8"], "Gy = 12 + 8 = 20", Sign::Wrong, ""),
    (HINGE, &["Q = 12", "B = 8 N"], "Gy = 12 - 8 = 4", Sign::Wrong, ""),
    (HINGE, THIRDS, "Ay = 12+4 = 16", Sign::Follows, "line"),
    (HINGE, THIRDS, "Ay = 12+14 = 26", Sign::Wrong, ""),
    (HINGE, THIRDS, "MA = 12*1.5+4*4 = 34", Sign::Follows, "line"),
    (HINGE, THIRDS, "MA = 12*1.5+4*9 = 54", Sign::Wrong, ""),
    (HINGE, &["Q = 4*3*3 = 36"], "B = 36/2 = 18", Sign::Follows, "line 1"),
    (HINGE, &["Q = 4*3*3 = 36"], "B = 36/3 = 12", Sign::Wrong, ""),
    (HINGE, THRICE, "Ay = 12+18 = 30", Sign::Follows, "line"),
    (HINGE, THRICE, "Ay = 12+28 = 40", Sign::Wrong, ""),
    (HINGE, THRICE, "MA = 12*1.5+18*4 = 90", Sign::Follows, "line"),
    (HINGE, THRICE, "MA = 12*1.5+18*3 = 72", Sign::Wrong, ""),
    (HINGE, &[], "MA + B*7 = 50", Sign::Wrong, ""),
    (HINGE, &[], "MA + B*7 = 84", Sign::Noted, "comes out right"),
    (HINGE, &[], "MA + B*7 = 84000", Sign::Noted, "comes out right"),
    (HINGE, &[], "B = 12*1.5/3 = 6", Sign::Right, "kN"),
    (HINGE, &[], "B: 12*1.5/3 = 6", Sign::Right, "kN"),
    (HINGE, &[], "B = 12*1.5/3 = 7", Sign::Wrong, ""),
    // Two values with nothing between them; a number before a name may be its factor.
    ("counter --seed 41", &[], "Wb = 186.2 W1 = 166.6", Sign::Right, ""),
    ("counter --seed 41", &[], "Wb = 186.2 N W1 = 166.6 N", Sign::Right, ""),
    ("counter --seed 41", &[], "Wb = 19*9.8 = 186.2 W1 = 17*9.8 = 166.6", Sign::Right, ""),
    ("counter --seed 41", &[], "Wb = 186.2 W1 = 196.6", Sign::Wrong, ""),
    ("counter --seed 41", &["Wb = 190 W1 = 170"], "T*1.9 = 190*1.3 + 170*1.8", Sign::Follows, "line 1"),
    ("counter --seed 41", &["Wb = 190 W1 = 170"], "T*1.9 = 190*1.3 + 170*1.3", Sign::Wrong, ""),
    ("boom", &["T = 408.4 N"], "Hx = 0.883 T = 361 N", Sign::Right, ""),
    ("wheel_at_step", &[], "P = 4/3 W = 392 N", Sign::Right, ""),
    ("wheel_at_step", &[], "P = 3/4 W = 221 N", Sign::Wrong, ""),
    ("boom", &["T = 408.4 N"], "Hx = 0.983 T = 401 N", Sign::Wrong, ""),
    // A label of another body or point is told so.
    ("gate", &[], "about the upper hinge: B*1.2 = 588*1.5", Sign::Right, "B acts there"),
    ("gate", &[], "about the lower hinge: B*1.2 = 588*1.5", Sign::Right, "!there"),
    (HINGE, &[], "left beam: Ay + B = 24", Sign::Right, "B does not act on that body"),
    (HINGE, &[], "right beam: Gy + B = Q", Sign::Right, "!that body"),
    (HINGE, &[], "about the wall: Q*1.5 = B*3", Sign::Right, "MA stands in the sum"),
    (HINGE, &[], "about the wall: MA = F*1.5 + Gy*4", Sign::Right, "!in the sum"),
    (HINGE, &[], "about the hinge: Q*1.5 = B*3", Sign::Right, "!about that point"),
    ("ladder", &[], "about the floor: F*4*sin 62 = Wb*2*cos 62 + W1*d*cos 62", Sign::Right, "!there"),
    ("ladder", &[], "about the wall: F*4*sin 62 = Wb*2*cos 62 + W1*d*cos 62", Sign::Right, "F acts there"),
    // N behind a number may be the force of that name, in the lines that rest on it, too.
    (BOTH, &["R = 0.35 N", "N = 205.8 + 0.2*R"], "N = 221.3", Sign::Follows, ""),
    (BOTH, &["R = 0.35 N", "N = 205.8 + 0.2*R"], "N = 231.3", Sign::Wrong, ""),
    (BOTH, &["R = 0.35*N", "N = 205.8 + 0.2*R"], "N = 221.3", Sign::Follows, ""),
    // F and f are two forces.
    ("ladder", &["f = 308.7"], "F = f", Sign::Right, ""),
    ("ladder", &["f = 308.7"], "F = f + 1", Sign::Wrong, ""),
    ("ladder", &["f = 308.7"], "f = F", Sign::Right, ""),
    (CLIMBER, &["f = 308.7"], "F = f", Sign::Right, ""),
    (CLIMBER, &["f = 308.7"], "F = 2 f", Sign::Wrong, ""),
];

#[test]
fn a_line_is_taken_apart_as_it_is_meant() {
    let others = told_otherwise(ROWS);
    assert!(others.is_empty(), "{others:#?}");
}
