//! What follows from wrong lines of her own that tell of several unknowns, and what does not though
//! two of them together would let it pass; by hand.

use super::counted::{Row, told_otherwise};
use leverwright::session::Sign;

const TWO_LEGS: &str = "../general/two_legs";
const POLE: &str = "../general/pole_on_peg";
const STEPS: &str = "../general/steps_with_chain";
const PUSHED: &str = "../general/block_pushed";
const CLIMBER: &str = "../workings/climber";

/// A moment sum that is wrong (`2` for the cosine's share), solved for F: 0.5·104 + 171.5 d.
const CLIMBED: &[&str] = &[
    "N = 882",
    "F*4*sin62 = 196*2*cos62 + 686*d*sin62",
    "3.532 F = 184 + 605.7 d",
    "F = 52.1 + 171.5 d",
];
const CLIMBED_TO: &[&str] = &[
    "N = 882",
    "F*4*sin62 = 196*2*cos62 + 686*d*sin62",
    "3.532 F = 184 + 605.7 d",
    "F = 52.1 + 171.5 d",
    "F = 308.7",
];
/// The right moments of the counter come to 694.8 N m.
const STRAY: &[&str] = &["T*1.4 = 176.4*1.1 + 127.4*2.2 + 147*1.5 + 3"];

#[rustfmt::skip]
const ROWS: &[Row] = &[
    // A balance in two variants leaves nothing of what they differ in: no factor of it follows.
    ("rod_on_peg", &["N + P cos 40 = 58.8", "N + P sin 40 = 58.8"], "N + P = 58.8", Sign::Wrong, ""),
    ("rod_on_peg", &["N + P cos 40 = 58.8", "N + P sin 40 = 58.8"], "N + 9 P = 58.8", Sign::Wrong, ""),
    ("rod_on_peg", &["N + P cos 40 = 58.8", "N + P sin 40 = 58.8"], "N = 58.8 - 0.643 P", Sign::Follows, ""),
    ("mast --seed 3", &["Hx = -T cos 10", "Hy + T sin 10 = 1421", "Hy + T sin 20 = 1421"], "Hy + 3 T = 1421", Sign::Wrong, ""),
    ("mast --seed 3", &["Hx = -T cos 10", "Hy + T sin 10 = 1421", "Hy + T sin 20 = 1421"], "Hy - T = 1421", Sign::Wrong, ""),
    ("mast --seed 3", &["Hx = -T cos 10", "Hy + T sin 10 = 1421", "Hy + T sin 20 = 1421"], "Hy = 1421 - 0.342 T", Sign::Follows, ""),
    ("counter --seed 11", &["H*1.1 = T*0.7 - 127.4*1.1", "H*1.1 = T*0.6 - 127.4*1.1"], "H*1.1 = T*0.2 - 127.4*1.1", Sign::Wrong, ""),
    ("counter --seed 11", &["H*1.1 = T*0.7 - 127.4*1.1", "H*1.1 = T*0.6 - 127.4*1.1"], "H*1.1 = T*5.3 - 127.4*1.1", Sign::Wrong, ""),
    ("counter --seed 11", &["H*1.1 = T*0.7 - 127.4*1.1", "H*1.1 = T*0.6 - 127.4*1.1"], "H = 0.5455 T - 127.4", Sign::Follows, ""),
    ("walkway --seed 11", &["Hx = T cos 50", "Hx = 2 T cos 50"], "Hx = 7 T", Sign::Wrong, ""),
    ("walkway --seed 11", &["Hx = T cos 50", "Hx = 2 T cos 50"], "T/T = 3", Sign::Wrong, ""),
    ("walkway --seed 11", &["Hx = T cos 50", "Hx = 2 T cos 50"], "Hx = 1.286 T", Sign::Follows, ""),
    ("pulley_beam", &["Hx = T sin 10 + 848.7", "Hx = T*0.1736 + 848.7"], "Hx = T sin 20 + 848.7", Sign::Wrong, ""),
    ("pulley_beam", &["Hx = T sin 10 + 848.7", "Hx = T*0.1736 + 848.7"], "Hx = T tan 40 + 848.7", Sign::Wrong, ""),
    ("pulley_beam", &["Hx = T sin 10 + 848.7", "Hx = T*0.1736 + 848.7"], "Hx = 848.7 + 0.174 T", Sign::Follows, ""),
    // 40° is the slope of this mast and of its rope: typed four times it is one of them each time.
    ("mast --seed 80300953", &["Wb = 1210 N", "W1 = 48*9.8 = 470 N"], "0 = 1210*1.9*cos 40 - 470*0.7*cos 40 + Hx*4.5*sin 40 + Hy*4.5*cos 40", Sign::Follows, ""),
    ("mast --seed 80300953", &["Wb = 1210 N", "W1 = 48*9.8 = 470 N"], "0 = 1210*1.9*cos 40 - 470*0.7*cos 40 + Hx*4.5*cos 40 + Hy*4.5*sin 40", Sign::Wrong, ""),
    ("mast --seed 80300953", &["Wb = 1210 N", "W1 = 48*9.8 = 470 N"], "0 = 1210*1.9*cos 40 - 470*0.9*cos 40 + Hx*4.5*sin 40 + Hy*4.5*cos 40", Sign::Wrong, ""),
    // A chain of numbers that differ is never right, whatever was refused before it.
    ("ladder", &["N = 700 = 882"], "N = 5 = 882", Sign::Wrong, ""),
    ("ladder", &["N = 700 = 882"], "N = 196 + 70 = 882", Sign::Wrong, ""),
    ("ladder", &["N = 700 = 882"], "N = 196 + 686 = 882", Sign::Right, ""),
    ("counter --seed 3", &["T = 400 = 496"], "T = 300 = 496", Sign::Wrong, ""),
    ("counter --seed 3", &["T = 400 = 496"], "T = 250 + 100 = 496", Sign::Wrong, ""),
    ("counter --seed 3", &["T = 400 = 496"], "T = 496 N", Sign::Right, ""),
    ("gate", &["B = 588*3/1.2 = 735"], "B = 588*2/1.2 = 735", Sign::Wrong, ""),
    ("gate", &["B = 588*3/1.2 = 735"], "B = 588*1.5/1.2 = 735", Sign::Right, ""),
    ("wheel_at_step", &["P = 294/0.3 = 392"], "P = 294/0.5 = 392", Sign::Wrong, ""),
    ("wheel_at_step", &["P = 294/0.3 = 392"], "P = 294*0.4/0.3 = 392", Sign::Right, ""),
    ("walkway --seed 3", &["T = 878 N", "T = 2684/3.6/sin 65 = 795.4/sin 65 = 878"], "T = 2864/3.6*sin 65 = 878", Sign::Wrong, ""),
    ("walkway --seed 3", &["T = 878 N", "T = 2684/3.6/sin 65 = 795.4/sin 65 = 878"], "T = 2864/3.6/sin 65 = 878", Sign::Right, ""),
    // The right value of one unknown mends no wrong balance with another: it gives that.
    (CLIMBER, CLIMBED, "F = 308.7", Sign::Right, "!anew"),
    (CLIMBER, CLIMBED_TO, "d = 1.496", Sign::Follows, ""),
    (CLIMBER, CLIMBED_TO, "d = (308.7 - 52.1)/171.5 = 1.496", Sign::Follows, ""),
    (CLIMBER, CLIMBED_TO, "d = 1.596", Sign::Wrong, ""),
    ("boom", &["Hx = T sin 28", "T = 408.4"], "Hx = 191.7", Sign::Follows, ""),
    ("boom", &["Hx = T sin 28", "T = 408.4"], "Hx = 201.7", Sign::Wrong, ""),
    ("boom", &["Hx = T sin 28", "T = 408.4"], "Hx = 360.6", Sign::Right, ""),
    (STEPS, &["Nf + Nk = 803.6", "Nk = 340.6"], "Nf = 463", Sign::Follows, ""),
    (STEPS, &["Nf + Nk = 803.6", "Nk = 340.6"], "Nf = 473", Sign::Wrong, ""),
    ("jib", &["Hy = 1862 - S*0.8", "Hy = 392 + 1470 - 0.8*S"], "S = 4165", Sign::Right, "!anew"),
    ("jib", &["Hy = 1862 - S*0.8", "Hy = 392 + 1470 - 0.8*S", "S = 4165"], "Hy = 1862-3332 = -1470", Sign::Follows, ""),
    ("jib", &["Hy = 1862 - S*0.8", "Hy = 392 + 1470 - 0.8*S", "S = 4165"], "Hy = 1862-3232 = -1370", Sign::Wrong, ""),
    ("forearm", &["Ey = 64.7 + M sin80", "Ey = 64.7 + 0.985 M", "M = 495"], "Ey = 552.5", Sign::Follows, ""),
    ("forearm", &["Ey = 64.7 + M sin80", "Ey = 64.7 + 0.985 M", "M = 495"], "Ey = 572.5", Sign::Wrong, ""),
    ("rod_on_peg", &["N = 58.8 - P sin 40", "N = 58.8 - 0.643 P", "P = 32.17"], "N = 38.1", Sign::Follows, ""),
    ("rod_on_peg", &["N = 58.8 - P sin 40", "N = 58.8 - 0.643 P", "P = 32.17"], "N = 36.1", Sign::Wrong, ""),
    ("leaning", &["R*5*sin60 = N*2.5*cos60", "R = 0.2887 N", "N = 813.4"], "R = 234.8", Sign::Follows, ""),
    ("leaning", &["R*5*sin60 = N*2.5*cos60", "R = 0.2887 N", "N = 813.4"], "R = 254.8", Sign::Wrong, ""),
    // Where one unknown stands alone in it, it is mended.
    ("gate", &["B*h = W*b", "B = 1470 N", "B = 735 N"], "Ax = 1470 N", Sign::Wrong, ""),
    // A right product of her own value and what is sought.
    (POLE, &["P cos33 = 88.2", "P = 105.2", "P d = 88.2*1.2*cos33"], "d = 0.844", Sign::Follows, ""),
    (POLE, &["P cos33 = 88.2", "P = 105.2", "P d = 88.2*1.2*cos33"], "d = 0.944", Sign::Wrong, ""),
    // Her own line solved, with the right value in the place of a name.
    (TWO_LEGS, &["Ay*3*sin20 = 98*1.5*sin20 + 300*cos20 - T*2*cos20", "Ay = 117.4"], "T = (98*1.5*sin20 + 300*cos20 - 117.4*3*sin20)/(2*cos20)", Sign::Follows, ""),
    (TWO_LEGS, &["Ay*3*sin20 = 98*1.5*sin20 + 300*cos20 - T*2*cos20", "Ay = 117.4"], "T = (98*1.5*sin20 + 300*cos20 + 117.4*3*sin20)/(2*cos20)", Sign::Wrong, ""),
    // Her own parts put into a true balance that she never typed.
    ("sign", &["T1x = T1 sin 40", "T2x = T2 sin 25"], "T1 sin 40 = T2 sin 25", Sign::Follows, ""),
    ("sign", &["T1x = T1 sin 40", "T2x = T2 sin 25"], "T1 cos 40 = T2 sin 25", Sign::Wrong, ""),
    ("sign", &["T1 = T2"], "T1 sin 40 + T1 sin 25 = 137.2", Sign::Follows, ""),
    ("sign", &["T1 = T2"], "T1 sin 40 + T1 cos 25 = 137.2", Sign::Wrong, ""),
    ("boom", &["Tx = T sin 28"], "Hx = T sin 28", Sign::Follows, ""),
    ("boom", &["Tx = T sin 28"], "Hx = T tan 28", Sign::Wrong, ""),
    (PUSHED, &["N = 117.6*cos28 - P*sin28"], "P*cos28 + 0.3*(117.6*cos28 - P*sin28) = 117.6*sin28", Sign::Follows, ""),
    (PUSHED, &["N = 117.6*cos28 - P*sin28"], "P*cos28 + 0.3*(117.6*cos28 - P*sin28) = 117.6*cos28", Sign::Wrong, ""),
    // What does not stand in her line does not follow from it, however small; a rounding does.
    ("counter --seed 3", STRAY, "T*1.4 = 176.4*1.1 + 127.4*2.2 + 147*1.5 + 6", Sign::Wrong, ""),
    ("counter --seed 3", STRAY, "T*1.4 = 194 + 280 + 221 + 6", Sign::Wrong, ""),
    ("counter --seed 3", STRAY, "T*1.4 = 194 + 280 + 221 + 3", Sign::Follows, ""),
    ("counter --seed 3", &["H = 222", "T + H = 450.8"], "T + H = 453", Sign::Wrong, ""),
    ("counter --seed 3", &["H = 222", "T + H = 450.8"], "T = 228.8", Sign::Follows, ""),
    // Once both unknowns are right it gives nothing any more.
    ("rod_on_peg", &["N + P sin 40 = 58.8", "P = 32.17"], "N = 38.1", Sign::Follows, ""),
    ("rod_on_peg", &["N + P sin 40 = 58.8", "P = 32.17", "N = 38.1", "N = 34.16"], "N = 38.2", Sign::Wrong, ""),
    ("counter --seed 3", STRAY, "T = (194 + 280 + 220.5 + 3)/1.4", Sign::Follows, ""),
];

#[test]
fn what_follows_from_wrong_lines_with_several_unknowns_is_judged() {
    let others = told_otherwise(ROWS);
    assert!(others.is_empty(), "{others:#?}");
}
