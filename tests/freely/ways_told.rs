//! The way told behind a value or a form, and the senses of unknowns kept from line to line; by hand.

use super::counted::{Row, told_otherwise};
use leverwright::session::Sign;

const WALKWAY: &[&str] = &["764*2.5 = T*3.6*sin 65", "T = 585 N"];
const COUNTER: &[&str] = &["127*2.2 + 147*1.5 = T*1.4", "T = 357.5 N"];
const LIGHT: &[&str] = &["Wb = 18", "18*1.1 + 127*2.2 + 147*1.5 = T*1.4", "T = 372 N"];
const MAST: &[&str] = &[
    "63*9.8*2.7*sin 35 + 71*9.8*4.5*sin 35 = T*4.2*sin 65",
    "T = 725 N",
    "Hx = 714 N left",
];
const FRAME: &[&str] = &[
    "B*3 = 294*2",
    "B = 196 N up",
    "Jy = 98 N down on the left beam",
    "MA = 392 + 300 + 392",
];
/// Sine and cosine exchanged: 529 + 764 − 1881·sin 65 = −412.
const TURNED: &[&str] = &["T = 1881 N", "Hx = -795 N", "Hy = 529+764-1705 = -412 N"];
const TIPS: &[&str] = &["A = 0", "294*2 = 441*(d-3.5)"];

#[rustfmt::skip]
const ROWS: &[Row] = &[
    // Who leaves a force out everywhere has its way, too: 764.4 − 585·sin 65 = 234.2, upwards.
    ("walkway --seed 3", WALKWAY, "Hy = 234 N", Sign::Follows, "upwards"),
    ("walkway --seed 3", WALKWAY, "Hy = 764.4 - 585*sin 65 down", Sign::Wrong, "not the way"),
    ("walkway --seed 3", WALKWAY, "Hy = 764.4 - 585*sin 65 up", Sign::Follows, "upwards"),
    ("walkway --seed 3", WALKWAY, "Hy = 234 N down", Sign::Wrong, "not the way"),
    ("walkway --seed 3", WALKWAY, "Hy = 234 N up", Sign::Follows, ""),
    ("mast --seed 3", MAST, "Hy = 1187 N down", Sign::Wrong, "not the way"),
    ("mast --seed 3", MAST, "Hy = 1187 N up", Sign::Follows, ""),
    // A true sum of numbers is not yet what its label calls it: 3.6·sin 65° = 3.263.
    ("walkway --seed 3", &[], "arm of T: 3.6 cos 65 = 1.521 m", Sign::Noted, "The sum is right"),
    ("walkway --seed 3", &[], "arm of T: 3.6 sin 65 = 3.263 m", Sign::Noted, "The sum is right"),
    ("walkway --seed 3", &[], "Wb: 54*9.8 = 529 N", Sign::Right, ""),
    // Masses in place of weights: (54·1.8 + 78·2.5)/(3.6·sin 65°) = 89.6.
    ("walkway --seed 3", &[], "T = 89.6 N", Sign::Incomplete, "masses in place of weights"),
    // To one figure nearly anything is the same: 878.2.
    ("walkway --seed 3", &[], "T = 900 N", Sign::Incomplete, "Near, but rounded too far"),
    ("walkway --seed 3", &[], "T = 1000 N", Sign::Wrong, ""),
    // With the pull as she has it: 274.4 − 357.5 = −83.1.
    ("counter --seed 3", COUNTER, "H = 83.5 N up", Sign::Wrong, "not the way"),
    ("counter --seed 3", COUNTER, "H = 83.1 N down", Sign::Follows, "downwards"),
    ("counter --seed 3", COUNTER, "H = 83.1 N up", Sign::Wrong, "not the way"),
    ("counter --seed 3", COUNTER, "H = 274.4 - 357.5 down", Sign::Follows, ""),
    ("counter --seed 3", COUNTER, "H = 73.1 N down", Sign::Wrong, ""),
    // Of two values that are rounded to one number the one that points so: 450.8 − 371.8 up beside
    // 292.4 − 371.8, down.
    ("counter --seed 3", LIGHT, "H = 79 N up", Sign::Follows, "points upwards"),
    ("counter --seed 3", LIGHT, "H = 79 N down", Sign::Follows, "points downwards"),
    ("frame", FRAME, "MA = 1084 N m clockwise", Sign::Wrong, "not the way"),
    ("frame", FRAME, "MA = 1084 N m anticlockwise", Sign::Follows, ""),
    // A wrong value of hers told once more, with its way turned round.
    ("walkway --seed 3", &["Hy = 200 N up"], "Hy = 200 N down", Sign::Wrong, "line 1, turned the other way round"),
    ("walkway --seed 3", &["Hy = 200 N up", "T = 878 N"], "Hy = 200 N up", Sign::Follows, "you go on with it"),
    ("walkway --seed 3", &["T = 300 N"], "T = 300 N down", Sign::Wrong, "turned the other way round"),
    ("walkway --seed 3", &["T = 300 N"], "T = 300 N up", Sign::Follows, ""),
    ("frame", &["Ay = 196 + 300"], "Ay = 496 N down", Sign::Wrong, "turned the other way round"),
    ("frame", &["Ay = 196 + 300"], "Ay = 496 N up", Sign::Follows, ""),
    ("frame", &["MA = 196*4 + 300*1 + 196*4"], "MA = 1868 N m clockwise", Sign::Wrong, "turned"),
    ("frame", &["MA = 196*4 + 300*1 + 196*4"], "MA = 1868 N m anticlockwise", Sign::Follows, ""),
    ("frame", &["B = 90"], "B = 90 N down", Sign::Wrong, "turned the other way round"),
    ("frame", &["B = 90"], "B = 90 N up", Sign::Follows, ""),
    ("plank_tips", &["B = 441"], "B = 441 N down", Sign::Wrong, "turned the other way round"),
    ("frame", &["B = 90 N down"], "B = 90 N up", Sign::Wrong, "turned the other way round"),
    ("frame", &["Jy = 100 N down on the left beam"], "Jy = 100 N down on the right beam", Sign::Wrong, "turned the other way round"),
    ("frame", &["Jy = 100 N down on the left beam"], "Jy = 100 N up on the right beam", Sign::Follows, ""),
    // The way behind a form with what is not found yet in it.
    ("rod_on_peg", &[], "FN = P sin 40 to the left", Sign::Wrong, "not the way"),
    ("rod_on_peg", &[], "FN = P sin 40 to the right", Sign::Right, "P still unknown"),
    ("forearm", &[], "Ex = M cos 80 to the left", Sign::Wrong, "not the way"),
    ("forearm", &[], "Ex = M cos 80 to the right", Sign::Right, "M still unknown"),
    ("forearm", &[], "Ey = M sin 80 - 64.68 up", Sign::Wrong, "not the way"),
    ("forearm", &[], "Ey = M sin 80 - 64.68 down", Sign::Right, ""),
    ("forearm", &[], "Ey = 64.68 - M sin 80 up", Sign::Right, ""),
    ("gate", &[], "Ax = B to the left", Sign::Wrong, "not the way"),
    ("gate", &[], "Ax = B to the right", Sign::Right, ""),
    ("../workings/strap_by_distances", &[], "Jx = T to the right on the front", Sign::Wrong, "not the way"),
    ("../workings/strap_by_distances", &[], "Jx = T to the left on the front", Sign::Right, ""),
    ("../workings/strap_by_distances", &[], "A = 156.8 - B downwards", Sign::Wrong, "not the way"),
    ("../workings/strap_by_distances", &[], "A = 156.8 - B upwards", Sign::Right, ""),
    ("frame", &[], "Jy = 294 - B up on the left beam", Sign::Wrong, "not the way"),
    ("frame", &[], "Jy = 294 - B down on the left beam", Sign::Right, ""),
    ("frame", &[], "Jy = 294 - B up on the right beam", Sign::Right, ""),
    ("frame", &[], "MA = 392 + 300 + 4*Jy clockwise", Sign::Wrong, "not the way"),
    ("frame", &[], "MA = 392 + 300 + 4*Jy anticlockwise", Sign::Right, ""),
    ("frame", &[], "Ay = 196 + 300 + Jy down", Sign::Wrong, "not the way"),
    ("frame", &[], "Ay = 196 + 300 + Jy up", Sign::Right, ""),
    ("a_frame", &[], "Jx = T to the left on the right leg", Sign::Wrong, "not the way"),
    ("a_frame", &[], "Jx = T to the right on the right leg", Sign::Right, ""),
    ("a_frame", &[], "Jx = T to the right", Sign::Right, ""),
    ("internal_hinge", &[], "Ay = 24 - B down", Sign::Noted, ""),
    ("internal_hinge", &[], "Ay = 24 - B up", Sign::Right, ""),
    ("pulley_beam", &[], "Hx = T cos 10 + S cos 30 to the left", Sign::Wrong, "not the way"),
    ("pulley_beam", &[], "Hx = T cos 10 + S cos 30 to the right", Sign::Right, ""),
    ("ladder", &[], "N = F/0.35 downwards", Sign::Wrong, "not the way"),
    ("ladder", &[], "N = F/0.35 upwards", Sign::Right, ""),
    ("ladder", &[], "F = mu N to the right", Sign::Wrong, "not the way"),
    ("ladder", &[], "F = mu N to the left", Sign::Right, ""),
    ("two_wires", &[], "Hy = H sin 23.2 down", Sign::Wrong, "not the way"),
    ("two_wires", &[], "Hy = H sin 23.2 up", Sign::Right, ""),
    ("../general/two_legs", &[], "Jx = T to the right on the left leg", Sign::Wrong, "not the way"),
    // A strut that she counts as it pushes, by its value.
    ("jib", &["S = 4170 N"], "Hx = S cos 36.87 to the right", Sign::Wrong, "not the way"),
    ("jib", &["S = 4170 N"], "Hx = S cos 36.87 to the left", Sign::Right, ""),
    ("jib", &[], "Hx = S cos 36.87 to the left", Sign::Right, ""),
    // Bare numbers where forces are printed in kilonewtons tell senses, too: 18·4 + 42 is no 30.
    ("internal_hinge", &["MA = 42 kN m anticlockwise"], "Ay*4 + MA = 12*2.5", Sign::Wrong, "Since line 1 MA"),
    ("internal_hinge", &["MA = 42 kN m anticlockwise"], "Ay*4 - MA = 12*2.5", Sign::Right, ""),
    ("internal_hinge", &["Ay + B = 24"], "B - Ay = 24", Sign::Wrong, "Since line 1 Ay"),
    ("internal_hinge", &["Ay + B = 24"], "B + Ay = 24", Sign::Right, ""),
    ("internal_hinge", &["Ay + B = 24"], "Ay + B = 24 kN", Sign::Right, ""),
    // Along the axis of a lesson nobody is wrong to count, nor elsewhere in a sense that stood before.
    ("walkway --seed 3", &["Hx = T cos 65 to the left", "Hx + T cos 65 = 0"], "-Hx*tan 65*3.6 = 529.2*1.8 + 764.4*2.5", Sign::Right, ""),
    ("walkway --seed 3", &["Hx = T cos 65 to the left", "Hx + T cos 65 = 0"], "-Hx*tan 65*3.6 = 529.2*1.8 - 764.4*2.5", Sign::Wrong, ""),
    ("counter --seed 3", &["T = 450.8 + H"], "H + T = 450.8", Sign::Right, ""),
    ("counter --seed 3", &["T = 450.8 + H"], "T + 450.8 = H", Sign::Wrong, ""),
    ("forearm", &["Ey*4 + 15.68*11 + 49*31 = 0", "Ey*4 = 15.68*11 + 49*31"], "Ey*4 + 15.68*11 + 49*31 = 0", Sign::Right, ""),
    ("forearm", &["Ey*4 = 15.68*11 + 49*31"], "Ey*4 + 15.68*11 + 49*31 = 0", Sign::Wrong, "Since line 1 Ey counts downwards"),
    // The way of the hinge's force where a part of it came out the other way.
    ("walkway --seed 3", TURNED, "ψ = 27.4° above the horizontal", Sign::Wrong, "point another way"),
    ("walkway --seed 3", TURNED, "ψ = 27.4° below the horizontal", Sign::Follows, ""),
    ("walkway --seed 3", TURNED, "ψ = 27.4°", Sign::Follows, ""),
    ("walkway --seed 3", TURNED, "ψ = 27.4° right", Sign::Wrong, ""),
    ("walkway --seed 3", &["Hy = 497 N down"], "psi = 53.2° up", Sign::Rounded, ""),
    // The way told of a part, by its name or by a product.
    ("mast --seed 3", &[], "Wb⊥ = 354 N along the mast", Sign::Wrong, "not the way"),
    ("mast --seed 3", &[], "Wb⊥ = 354 N across the mast", Sign::Right, ""),
    ("mast --seed 3", &[], "T sin 10 = 141 N to the left", Sign::Wrong, "not the way"),
    ("mast --seed 3", &[], "T sin 10 = 141 N down", Sign::Wrong, "not the way"),
    ("mast --seed 3", &[], "T sin 10 = 141 N up", Sign::Right, ""),
    ("mast --seed 3", &[], "T cos 10 = 799 N to the right", Sign::Right, ""),
    ("mast --seed 3", &[], "T cos 10 = 799 N up", Sign::Wrong, "not the way"),
    // A length that follows, told from another place: 3.5 + 4/3 = 4.83.
    ("plank_tips", TIPS, "d = 1.33 m from the right trestle", Sign::Follows, ""),
    ("plank_tips", TIPS, "d = 1.43 m from the right trestle", Sign::Wrong, ""),
    ("plank_tips", TIPS, "d = 4.33 m from the left trestle", Sign::Follows, ""),
    ("plank_tips", TIPS, "d = 4.43 m from the left trestle", Sign::Wrong, ""),
    ("plank_tips", TIPS, "d = 0.167 m from the right end", Sign::Follows, ""),
    ("plank_tips", &[], "d = 0.67 m from the right trestle", Sign::Right, ""),
    ("hinge_gives", &["490*(3.5-d) = 200*3.5"], "d = 1.43 m from the roller", Sign::Follows, ""),
    ("hinge_gives", &["490*(3.5-d) = 200*3.5"], "d = 1.63 m from the roller", Sign::Wrong, ""),
];

#[test]
fn ways_behind_values_and_forms_are_compared_and_senses_kept() {
    let others = told_otherwise(ROWS);
    assert!(others.is_empty(), "{others:#?}");
}
