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
const BLOCK: &str = "../workings/block";
const LID: &str = "../workings/lid";
const CHEST: &str = "../workings/chest";
const COUNTER: &str = "counter --seed 3";
const PULLEY: &str = "pulley_beam";
const DECK: &str = "../workings/deck";
const BOTH: &[&str] = &[
    "N = 192 N",
    "R = 67.2 N",
    "192*4.5*cos θ = 67.2*4.5*sin θ + 205.8*2.5*cos θ",
];
const TENSION: &str =
    "T = (686*3.3*cos(65) + 356*6.6*cos(65) + 98.0*1.2*cos(65))/(4*sin(25)) = 1180 N";

#[rustfmt::skip]
const ROWS: &[Row] = &[
    // A factor of one metre that stands with b in a square is seldom written.
    ("../workings/hay", &[], "5.7 = b² - b - 6", Sign::Noted, "comes out right"),
    ("../workings/hay", &[], "b^2 = b + 11.7", Sign::Noted, "comes out right"),
    ("../workings/hay", &[], "5.7 = b² - b - 9", Sign::Wrong, "length is missing"),
    ("../workings/hay", &[], "5.7 = b² - 3b - 6", Sign::Wrong, ""),
    // What is left of two parts that nearly cancel is as fine as they are.
    ("../workings/post_pulled", &["T = 283 N"], "Hx = 283 cos 60 - 200 cos 45 = 0.1 N", Sign::Right, ""),
    ("../workings/post_pulled", &["T = 283 N"], "Hx = 283 cos 60 - 200 cos 45 = 2 N", Sign::Wrong, "not its value"),
    ("../workings/post_pulled", &["T = 283 N"], "Hx = 0.1 N", Sign::Rounded, ""),
    ("../workings/post_pulled", &["T = 283 N"], "Hx = 2 N", Sign::Wrong, ""),
    ("../workings/bag_at_rope", &["T = 205 N"], "Hy = 118 - 205 sin 35 = 0.4 N", Sign::Right, ""),
    ("../workings/bag_at_rope", &["T = 205 N"], "Hy = 118 - 205 sin 35 = 2 N", Sign::Wrong, "not its value"),
    // The whole area may be called A, by its unit or its form.
    ("lamina_props", &[], "A = 0.717 m²", Sign::Right, ""),
    ("lamina_props", &[], "A = 0.6 + 0.18 - 0.0628 = 0.717", Sign::Right, ""),
    ("lamina_props", &[], "A = 0.817 m²", Sign::Wrong, ""),
    ("lamina_props", &[], "A = 0.6 + 0.18 + 0.0628 = 0.843", Sign::Wrong, ""),
    ("lamina_props", &[], "A = 0.717 N", Sign::Wrong, ""),
    // A force up or down the slope.
    ("../workings/block_pushed", &[], "FN = 110 N down the slope", Sign::Right, ""),
    ("../workings/block_pushed", &[], "FN = 110 N up the slope", Sign::Wrong, "not the way"),
    ("../workings/block_pushed", &[], "FN = 150 N down the slope", Sign::Wrong, ""),
    ("../workings/ramp_parts", &[], "FN = 28.5 N up the incline", Sign::Right, ""),
    ("../workings/ramp_parts", &[], "FN = 28.5 N down the ramp", Sign::Wrong, "not the way"),
    // A limit may be told by what reaches it.
    ("../workings/joint_strut", &[], "Smax = S", Sign::Right, ""),
    ("../workings/joint_strut", &[], "Smax = T", Sign::Wrong, ""),
    ("../workings/joint_strut", &[], "Smax = 600 N", Sign::Wrong, "The problem gives"),
    // The root of a balance that stands, in numbers carried to three figures.
    ("mast --seed 3", &["T*4.2*sin 65 = 956 + 1800 + 335"], "T = 811.7 N", Sign::Rounded, ""),
    ("mast --seed 3", &["T*4.2*sin 65 = 956 + 1800 + 335"], "T = 813.7 N", Sign::Wrong, ""),
    ("mast --seed 3", &["T*4.2*sin 65 = 956 + 1800 + 335"], "T = 808.7 N", Sign::Wrong, ""),
    // f in a balance, before it was told as the friction.
    ("leaning", &[], "f - R = 0", Sign::Right, ""),
    ("leaning", &["f - R = 0"], "f = R", Sign::Right, ""),
    ("leaning", &["f - R = 0"], "f = N", Sign::Wrong, ""),
    ("leaning", &[], "f - N = 0", Sign::Unclear, "not known"),
    // A square worked out wrongly is no other value, and a quotient of weights no pull.
    ("boom", &["W1 = 260 N", "W1^2 = 68600"], "T = 426.9 N", Sign::Follows, "line 1"),
    ("mast --seed 3", &["W1 = 750 N", "W1/Wb = 1.3148"], "T = 1.21 N", Sign::Wrong, ""),
    ("../workings/child", &["W1 = 320 N", "l = 0.19375 m"], "W1*l = 62", Sign::Follows, ""),
    ("../workings/child", &["W1 = 320 N", "l = 0.19375 m"], "W1*l = 72", Sign::Wrong, ""),
    ("ladder_angle", &["θ = 40°"], "cos θ = 0.766", Sign::Follows, ""),
    ("ladder_angle", &["θ = 40°"], "tan θ = 0.939", Sign::Wrong, ""),
    // Sums worked out with a wrong value of hers are true, and no attempt at anything else.
    ("gate", &["W = 568 N"], "568*1.5 = 852", Sign::Noted, "true of these numbers"),
    ("gate", &["W = 568 N"], "568*1.5 = 862", Sign::Wrong, ""),
    ("gate", &["W = 568 N", "568*1.5 = 852", "852/1.2 = 710"], "B = 710 N", Sign::Follows, "line 1"),
    ("gate", &["W = 568 N", "568*1.5 = 852"], "Ay = 852 N", Sign::Wrong, ""),
    ("walkway --seed 5", &["W1 = 558 N"], "W1*2.5 = 1395", Sign::Follows, "line 1"),
    ("walkway --seed 5", &["W1 = 558 N"], "W1*2.5 = 1495", Sign::Wrong, ""),
    ("walkway --seed 8", &["T = 737 N"], "412*1.7 + 784*1.2 = T*sin 40*2.9", Sign::Wrong, ""),
    // What is worked out wrongly is no weight.
    ("walkway --seed 5", &["sin 65 = 0.5"], "T = (0.906*1.8 + 588*2.5)/(3.6*sin 65)", Sign::Wrong, ""),
    ("walkway --seed 5", &["40*9.8 = 492"], "T = (492*1.8 + 588*2.5)/(3.6*sin 65)", Sign::Follows, "line 1"),
    // What solves a line of hers that is not linear.
    ("ladder_angle", &["N = 196 N", "F = 86.6 N", "86.6*4*sin theta = 196*2*cos theta"], "theta = 48.5°", Sign::Follows, ""),
    ("ladder_angle", &["N = 196 N", "F = 86.6 N", "86.6*4*sin theta = 196*2*cos theta"], "theta = 47.0°", Sign::Wrong, ""),
    ("ladder_angle", &["68.6*4*sin theta = 196*4*cos theta"], "theta = 70.7°", Sign::Follows, ""),
    ("../general/stay_at_an_angle", &["588*2 = 600*3*cos beta"], "beta = 49.2°", Sign::Follows, ""),
    ("../workings/both_rough", BOTH, "864 cos θ = 302.4 sin θ + 514.5 cos θ", Sign::Follows, ""),
    ("../workings/both_rough", BOTH, "864 cos θ = 302.4 sin θ + 614.5 cos θ", Sign::Wrong, ""),
    ("../workings/both_rough", BOTH, "θ = 49.1°", Sign::Follows, ""),
    ("../workings/both_rough", BOTH, "θ = 48.1°", Sign::Wrong, ""),
    // The value that stands proves no other way to it, by way of a wrong value of hers.
    ("walkway --seed 8", &["412*1.7 + 510*1.2 = T*cos 40*3.4", "T = 737 N", "Hy = 565 N"], "Hy = 1038.8 - 737 sin 40", Sign::Noted, ""),
    ("walkway --seed 8", &["412*1.7 + 510*1.2 = T*cos 40*3.4", "T = 737 N"], "Hy = 565 N", Sign::Right, ""),
    // A strut at its limit may be counted as it acts.
    ("../workings/joint_strut", &[], "T cos 25 = S cos 30", Sign::Right, ""),
    ("../workings/joint_strut", &[], "T cos 25 = S sin 30", Sign::Wrong, ""),
    ("../workings/strut_reaches", &[], "S sin 45*2 = 588 + 490*d", Sign::Right, ""),
    // Beside F for the push of the wall f is friction.
    ("ladder_mu", &["F = 50.3 N", "N = 215.6 N"], "f = 50.3 N left", Sign::Wrong, "not the way"),
    ("ladder_mu", &["F = 50.3 N", "N = 215.6 N"], "f = 50.3 N right", Sign::Right, ""),
    // Whose weight it is stands in the words.
    ("ladder", &[], "the weight of the ladder is 686 N", Sign::Wrong, "weight of the ladder"),
    ("ladder", &[], "the weight of the ladder is 196 N", Sign::Right, ""),
    ("ladder", &[], "weight of climber = 196 N", Sign::Wrong, ""),
    // Behind a number m is the metre, and no moment M.
    ("frame", &[], "MA = 1476 m N", Sign::Right, ""),
    ("internal_hinge", &[], "12 N*1.5 m = B*3 m", Sign::Wrong, ""),
    // A ratio of two figures is near many.
    ("boom", &[], "T = 1.7 W1", Sign::Noted, ""),
    ("boom", &[], "T = 1.67 W1", Sign::Right, ""),
    ("boom", &[], "T = 1.9 W1", Sign::Wrong, ""),
    // A label with another point than the hinge, of a sum without the hinge's force.
    ("mast --seed 3", &[], "about the tip: T*4.2*sin 65 = Wb*2.7*cos 55 + W1*4.5*cos 55 + W2*5.4*cos 55", Sign::Right, "about the hinge"),
    ("mast --seed 3", &[], "about the knot: T*4.2*sin 65 = Wb*2.7*cos 55 + W1*4.5*cos 55 + W2*5.4*cos 55", Sign::Right, "about the hinge"),
    ("mast --seed 3", &[], "about the hinge: T*4.2*sin 65 = Wb*2.7*cos 55 + W1*4.5*cos 55 + W2*5.4*cos 55", Sign::Right, "!about the hinge"),
    ("mast --seed 3", &["Ry = Hy", "Rx = Hx"], "about the tip: T*1.2*sin 65 + Ry*5.4*cos 55 = Wb*2.7*cos 55 + W1*0.9*cos 55 - Rx*5.4*sin 55", Sign::Right, "!about the hinge"),
    ("leaning", &["f = FN"], "f = R", Sign::Right, ""),
    ("leaning", &["f = FN"], "f = N", Sign::Wrong, ""),
    ("mast --seed 3", &["Ry = Hy"], "Ry = 1280 N", Sign::Right, ""),
    ("mast --seed 3", &["Ry = Hy"], "Ry = 1380 N", Sign::Wrong, ""),
    ("mast --seed 3", &["T = 811 N", "Hy = 1280 N", "Ry = Hy"], "Ry + 811*sin 10 = 617.4 + 695.8 + 107.8", Sign::Right, ""),
    ("mast --seed 3", &["T = 811 N", "Hx = 798 N"], "about the tip: T*4.2*sin 65 = Wb*2.7*cos 55 + W1*4.5*cos 55 + W2*5.4*cos 55", Sign::Right, "!about the hinge"),
    // Two unknowns, of which the first that is sought has no root here.
    ("hinge_gives", &[], "3.5*(686-Ay) = 588 + 490*d", Sign::Right, "with Ay, d still unknown"),
    ("hinge_gives", &[], "3.5*(686-Ay) = 600 + 490*d", Sign::Wrong, ""),
    // The other of two ways to give way is no answer, and nothing wrong.
    (CHEST, &[], "if it slides: P cos15 = 0.6(588 - P sin15)", Sign::Noted, "the other way"),
    (CHEST, &["if it slides: P = 315 N"], "P = 315 N", Sign::Wrong, ""),
    (CHEST, &[], "tips: P = 315 N", Sign::Wrong, ""),
    // Of a form no unit is tried but its own.
    (BLOCK, &[], "N = W - 0.3 N", Sign::Wrong, "!kgf"),
    ("jib", &[], "S = 4165 N, pulls", Sign::Right, ""),
    // A second value that is by chance that of another quantity takes the place of the first.
    ("mast --seed 12", &["Hy = 101 N", "Hy = 745 N"], "H = 1349 N", Sign::Follows, "line 2"),
    // ℓ without its key.
    ("../workings/child", &[], "l = 0.00667 m", Sign::Right, ""),
    ("../workings/child", &[], "l = 3.2 m", Sign::Wrong, ""),
    // N and m behind a number may be the force and the mass that are sought.
    (BLOCK, &[], "1.024 N = 117.6", Sign::Noted, "comes out right"),
    (BLOCK, &[], "1.324 N = 117.6", Sign::Wrong, ""),
    (BLOCK, &["N(cos28 + 0.3 sin28) = 117.6"], "1.024 N = 117.6", Sign::Right, ""),
    (BLOCK, &["N(cos28 + 0.3 sin28) = 117.6"], "1.148 N = 117.6", Sign::Wrong, ""),
    (BLOCK, &["N(cos28 + 0.3 cos28) = 117.6"], "1.148 N = 117.6", Sign::Follows, ""),
    (LID, &["m*9.8*0.343*cos25 = 42"], "3.045 m = 42", Sign::Right, ""),
    (LID, &["m*9.8*0.343*cos25 = 42"], "3.145 m = 42", Sign::Wrong, ""),
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
    ("jib", &[], "H = 3392 N along the jib", Sign::Wrong, "not the way"),
    ("jib", &[], "S = 4165 N along the jib", Sign::Wrong, "not the way"),
    ("jib", &[], "S = 4165 N along the strut", Sign::Right, ""),
    ("jib", &[], "Wb = 392 N perpendicular to the jib", Sign::Right, ""),
    ("ladder", &[], "N = 882 N perpendicular to the ladder", Sign::Wrong, ""),
    // A value below zero for one that is counted the other way leaves no room for another: Sy 2499 N.
    ("jib", &["S = 4998/1.2 = 4165 N"], "Sy = 3332 N", Sign::Wrong, ""),
    ("jib", &["S = 4998/1.2 = 4165 N"], "Sy = 2499 N", Sign::Right, ""),
    // A root is of sizes; a multiple told with its number keeps the sense of that.
    ("a_frame", &["Jx = 267.5 N", "Jy = 588 N"], "J = √(Jx² + Jy²) = 646 N", Sign::Right, ""),
    ("jib", &["S = 4165 N", "Sy = 0.6 S = 2499 N"], "Hy = 1862 - Sy = -637 N", Sign::Right, ""),
    ("jib", &["S = 4165 N", "Sy = 0.6 S = 2499 N"], "Hy = 1862 - Sy = 637 N", Sign::Wrong, ""),
    // Two wrong attempts at one balance give nothing together.
    ("walkway --seed 3", &["Hy = 1293.6 + T sin 65", "Hy = 1293.6 - T cos 65"], "Hy = 1293.6 + T", Sign::Wrong, ""),
    ("gate", &["Ay = 588 + B", "Ay = 588 - B"], "Ay = 588 + 2 B", Sign::Wrong, ""),
    // Her own value is told with its way, and not with the other one.
    ("counter --seed 3", &["T = 635 N", "H = 184 N down"], "H = 184 N up", Sign::Wrong, "not the way"),
    // What was mended does not follow from what was made of it.
    ("walkway --seed 3", &["T = 1170 N", "Hy = 234 N up", "T = 878 N"], "T = 1170 N", Sign::Wrong, ""),
    ("walkway --seed 3", &["T = 1170 N", "Hy = 234 N up", "T = 878 N"], "T = 1.17 kN", Sign::Wrong, ""),
    // Beside an own wrong pull the balance is an equation for it anew.
    ("walkway --seed 3", &["Wb = 592.2 N", "W1 = 746.4 N", "T = (592.2*1.8+746.4*2.5)/(3.6 sin 65)", "W1 = 764.4 N"],
        "3.6 T sin 65 = 592.2*1.8+764.4*2.5", Sign::Follows, "line 1"),
    // Masses for weights: what follows is no number of kilograms.
    ("sign", &["T1 cos 40 = T2 cos 25", "T1 sin 40 + T2 sin 25 = 14"], "T1 = 14 N", Sign::Follows, ""),
    // Sine and cosine exchanged in a part of the pull, before and after that is found.
    ("mast --seed 3", &["T = 811 N"], "Tx = 811 sin 10", Sign::Wrong, "sin β"),
    ("mast --seed 3", &["T = 811 N"], "Tx = T sin 10", Sign::Wrong, ""),
    // A right value by way of a wrong one of hers.
    ("walkway --seed 2", &["T*3*cos 25 = 352.8+1893.36", "T = 826 N"], "Hy = 1058.4 - 826 cos 25", Sign::Noted, ""),
    ("walkway --seed 2", &["T*3*cos 25 = 352.8+1893.36", "T = 826 N"], "Ty = 826 cos 25 = 748.6 N", Sign::Noted, ""),
    ("walkway --seed 2", &["T*3*cos 25 = 352.8+1893.36", "T = 826 N"], "Ty = 0.826 kN cos 25 = 748.6 N", Sign::Noted, ""),
    // A wrong value told once more, as a number behind the form.
    ("ladder_angle", &["tan θ = 274.4/392"], "tan θ = 0.7", Sign::Follows, ""),
    // Squared units behind a value.
    ("mast --seed 7", &[], "Wb = 706 m²", Sign::Incomplete, "another kind"),
    ("mast --seed 7", &[], "T = 849 kN²", Sign::Incomplete, ""),
    // A length in words, 2.5 m, and what follows from a wrong one.
    ("jib", &[], "strut length = √(1.5²+2²) m = 2.5 m", Sign::Right, ""),
    ("jib", &[], "strut length = √(1.5²+2²)m = 2.5 m", Sign::Right, ""),
    ("jib", &[], "strut length = sqrt(2² + 1.5²) = 2.5 m", Sign::Right, ""),
    ("jib", &[], "length of the strut = 3.5 m", Sign::Wrong, "length of the strut"),
    ("jib", &["strut length = 3.5 m"], "sin β = 1.5/3.5 = 0.4286", Sign::Follows, "line 1"),
    ("jib", &["strut length = 3.5 m"], "sin β = 2/3.5 = 0.571", Sign::Wrong, ""),
    // A place told from either end or from the right trestle, 3.5 m from the left end: d = 4.17 m.
    ("plank_tips", &[], "the child stands 4.17 m from the right end", Sign::Wrong, ""),
    ("plank_tips", &[], "the child stands 0.833 m from the right end", Sign::Right, ""),
    ("plank_tips", &[], "d = 0.667 m from the right trestle", Sign::Right, ""),
    ("plank_tips", &[], "d = 0.567 m from the right trestle", Sign::Wrong, ""),
    ("ladder", &[], "d = 2.81 m from the foot, 1.19 m from the top", Sign::Right, ""),
    ("ladder", &[], "d = 2.81 m from the foot, 1.39 m from the top", Sign::Wrong, ""),
    // Moments worked out in the head, and masses for weights.
    ("plank_tips", &[], "45·d + 75 = 75·3.5", Sign::Right, ""),
    ("plank_tips", &[], "441·d + 735 = 735·3.5", Sign::Right, ""),
    ("plank_tips", &[], "45·d + 75 = 75·2.5", Sign::Wrong, ""),
    // The right size of E = 490 N by way of a wrong direction.
    ("wheel_at_step", &["sin ψ = 0.4/0.5 = 0.8"], "E cos ψ = 294", Sign::Wrong, ""),
    // What her own roller leaves by her right balance of both beams.
    ("internal_hinge", &["about the wall, both beams: M_A + 7 B = 12·1.5 + 12·5.5", "B = 11 kN"],
        "M_A = 84 − 7·11 = 7 kN m", Sign::Follows, ""),
    ("internal_hinge", &["about the wall, both beams: M_A + 7 B = 12·1.5 + 12·5.5", "B = 11 kN"],
        "M_A = 84 − 6·11 = 18 kN m", Sign::Wrong, ""),
    // The hinge's force 2175 N, its parts 1527.5 N and 1548.4 N.
    ("mast-001T8CD-RQGJ5", &[], "H² = 1.5275² + 1.5484² kN²", Sign::Right, ""),
    ("mast-001T8CD-RQGJ5", &[], "H² = 1.5275² + 1.5484² (kN²)", Sign::Right, ""),
    ("mast-001T8CD-RQGJ5", &[], "H² = 1.5275² + 1.7484² kN²", Sign::Wrong, ""),
    // A name told in words, whose meaning a right line proved.
    ("mast-0Q66BFN-RQGFX", &["the hinge pulls down with D", "about the knot: 38g·2,7 = 36g·0,6 + 20g·1,7 + D·3,9"],
        "about the knot: 38g·2,7 + 36g·0,6 = 20g·1,7 + D·3,9", Sign::Wrong, "for D"),
    // B = 735 N, A = 941 N.
    ("gate", &[], "A/B = 1.28", Sign::Right, ""),
    ("gate", &[], "A = 1.28 B", Sign::Right, ""),
    ("gate", &[], "A/B = 1.20", Sign::Wrong, ""),
    ("gate", &[], "A/B = 0.78", Sign::Wrong, ""),
    ("gate", &[], "A = 1.28 N", Sign::Wrong, ""),
    ("gate", &[], "B : W = 5 : 4", Sign::Right, ""),
    ("gate", &[], "A^2 = 885969 N^2", Sign::Right, ""),
    ("gate", &[], "A² = 0.886 kN²", Sign::Right, ""),
    ("gate", &[], "A^2 = 785969 N^2", Sign::Wrong, ""),
    // 10.8° below the level, to the left.
    ("jib", &[], "H = 3392 N at -169.2°", Sign::Right, ""),
    ("jib", &[], "H = 3392 N at −169.2°", Sign::Right, ""),
    ("jib", &[], "H = 3392 N at -160°", Sign::Wrong, "not the way"),
    ("gate", &[], "B : W = 5 : 3", Sign::Wrong, ""),
    // E = 490 N, W = 294 N, P = 392 N; N is nothing.
    ("wheel_at_step", &["P = 392 N"], "E = 5/4 P", Sign::Right, ""),
    ("wheel_at_step", &["P = 392 N"], "E = 5/2 P", Sign::Wrong, ""),
    ("wheel_at_step", &[], "P = 392 N to the left", Sign::Wrong, "not the way"),
    // A moment under a name of a mass, added up; what a slip in one of them makes follows.
    (COUNTER, &[], "M1 = 176.4*1.1 = 194", Sign::Right, "kept as the moment"),
    (COUNTER, &["M1 = 176.4*1.1 = 194", "M2 = 127.4*2.2 = 280", "M3 = 147*1.5 = 220.5"], "T*1.4 = M1+M2+M3", Sign::Right, ""),
    (COUNTER, &["M1 = 176.4*1.1 = 194", "M2 = 127.4*2.2 = 280", "M3 = 147*1.5 = 220.5"], "T*1.4 = M1+M2-M3", Sign::Wrong, ""),
    // A false link behind the sum of the moments is no moment, whatever is known by then.
    (COUNTER, &["T = 496 N"], "T*1.4 = 176.4*1.1 + 127.4*2.2 + 147*1.5 = 649", Sign::Wrong, ""),
    (COUNTER, &["T = 496 N"], "T*1.4 = 176.4*1.1 + 127.4*2.2 + 147*1.5 = 694.8", Sign::Right, ""),
    // Sums of known forces in which a part has no line of its own.
    (PULLEY, &["Wb = 245", "S = 980"], "Wb + S + Sy = 1715", Sign::Right, ""),
    (PULLEY, &["Wb = 245", "S = 980"], "Wb + S + Sy = 1735", Sign::Wrong, ""),
    (DECK, &["B = 588", "C = 387"], "By + Cy = 829", Sign::Right, ""),
    (DECK, &["B = 588", "C = 387"], "By + Cy = 849", Sign::Wrong, ""),
];

/// Counter: Wb 176.4 N, W1 186.2 N, T at 2.4 m. Walkway: W1 510 N, Wb 412 N, T 600 N at 40°.
#[rustfmt::skip]
const CARRIED: &[Row] = &[
    // A slip in a moment that has a name: (422 + 149)/2.4 = 238, not 134 with the right one.
    ("counter --seed 1", &["Mb = 176*2.4 = 422 N m", "M1 = 186*0.8 = 149 N m", "T*2.4 = Mb + M1"], "T = 238 N", Sign::Follows, "line 1"),
    ("counter --seed 1", &["Mb = 176*2.4 = 422 N m", "M1 = 186*0.8 = 149 N m", "T*2.4 = Mb + M1"], "T = 250 N", Sign::Wrong, ""),
    ("walkway --seed 1", &["M1 = 510*1.7 = 867 N m", "Mb = 700 N m"], "Mb + M1 = 1567 N m", Sign::Follows, "line 1"),
    ("walkway --seed 1", &["M1 = 510*1.7 = 867 N m", "Mb = 700 N m"], "1567 = T*3.4*sin 40", Sign::Follows, "line 1"),
    ("walkway --seed 1", &["M1 = 510*1.7 = 867 N m", "Mb = 700 N m"], "1667 = T*3.4*sin 40", Sign::Wrong, ""),
    // A wrong part of the pull, told before the pull: 600 sin 40 = 386.
    ("walkway --seed 1", &["Tx = T sin 40", "T = 600 N"], "Hx = 386 N", Sign::Follows, ""),
    ("walkway --seed 1", &["Tx = T sin 40", "T = 600 N"], "Hx = 430 N", Sign::Wrong, ""),
    // The upright part of the pull from her own balance, before the pull: 1361/3.4 = 400, and with
    // W1 = 520 N 389; then 400/sin 40 = 622.
    ("walkway --seed 1", &["Ty*3.4 = 412*1.2 + 510*1.7"], "Ty = 400 N", Sign::Follows, "line 1"),
    ("walkway --seed 1", &["Ty*3.4 = 412*1.2 + 510*1.7", "Ty = 400 N"], "T = Ty/sin 40 = 622 N", Sign::Follows, ""),
    ("walkway --seed 1", &["Ty*3.4 = 412*1.2 + 510*1.7"], "Ty = 420 N", Sign::Noted, ""),
    ("walkway --seed 1", &["W1 = 520 N", "Ty*3.4 = Wb*1.7 + W1*1.2"], "Ty = 389 N", Sign::Follows, "line 1"),
    // Signs told with parts and weights stand in the sums: 1575 − 135 = 774 + 666.
    ("mast --seed 9", &["T = 776 N", "Ty = -135 N"], "Hy + Ty = Wb + W1", Sign::Right, ""),
    ("mast --seed 9", &["Ty = -T sin 10"], "Hy + Ty = Wb + W1", Sign::Right, ""),
    ("mast --seed 9", &["T = 776 N", "Ty = 135 N"], "Hy + Ty = Wb + W1", Sign::Wrong, ""),
    ("mast --seed 3", &["Wb = -617 N", "W1 = -696 N", "W2 = -108 N"], "Hy + Ty + Wb + W1 + W2 = 0", Sign::Right, ""),
    ("mast --seed 3", &["Wb = 617 N", "W1 = 696 N", "W2 = 108 N"], "Hy + Ty + Wb + W1 + W2 = 0", Sign::Wrong, ""),
    // Differences of numbers of degrees, and sums of numbers that say nothing of the problem.
    ("mast --seed 3", &[], "90 - 55 = 35°", Sign::Noted, ""),
    ("mast --seed 3", &[], "90 - 55 = 36°", Sign::Wrong, ""),
    ("mast --seed 14", &["q = 80 - 65 = 15°"], "Tx = T cos q", Sign::Right, ""),
    ("mast --seed 14", &["q = 80 - 65 = 15°"], "Tx = T sin q", Sign::Wrong, ""),
    ("sign", &[], "90 - 40 = 50", Sign::Noted, ""),
    ("sign", &[], "90 - 40 = 60", Sign::Wrong, ""),
    ("counter --seed 7", &[], "97.02 + 23.52 + 123.48 = 244.02", Sign::Noted, ""),
    // Quotients of her own wrong balance, its two unknowns still open: cos 40/cos 25 = 0.845.
    ("sign", &["T1*cos25 = T2*cos40"], "T1/T2 = cos40/cos25", Sign::Follows, ""),
    ("sign", &["T1*cos25 = T2*cos40"], "T2/T1 = cos25/cos40 = 1.18", Sign::Follows, ""),
    ("sign", &["T1*cos25 = T2*cos40"], "T1/T2 = 0.945", Sign::Wrong, ""),
    // 1 kgf = 9.806 65 N, 1 lbf = 4.448 222 N (NIST SP 811, appendix B.8): 849.4 N.
    ("mast --seed 7", &[], "T = 86.6 kgf", Sign::Right, "kgf, is the weight of 1 kg at standard gravity: 9.807 N"),
    ("mast --seed 7", &[], "T = 190.9 lbf", Sign::Right, "4.448 N"),
    ("mast --seed 7", &["T = 100 kgf"], "T = 86.6 kgf", Sign::Right, "!kgf, is"),
    // A check in numbers with all found, where 40° is two angles and 2.3 m may be two stretches:
    // 1850 − 1637 − 1637 + 4556 − 3131 = 0.
    ("mast --seed 16304942", &["T = 1445.78 N", "Hx = 1107.53 N", "Hy = 638.671 N"], "0 = 754.600 N·3.2 m·cos 40° - T·sin 40°·2.3 m·cos 40° - T·cos 40°·2.3 m·sin 40° + Hx·6.4 m·sin 40° - Hy·6.4 m·cos 40°", Sign::Right, ""),
    ("mast --seed 16304942", &["T = 1445.78 N", "Hx = 1107.53 N", "Hy = 638.671 N"], "0 = 754.600 N·3.2 m·cos 40° - T·sin 40°·2.3 m·cos 40° - T·cos 40°·2.3 m·sin 40° + Hx·6.4 m·cos 40° - Hy·6.4 m·cos 40°", Sign::Wrong, ""),
    // A wrong check in numbers alone is no weight.
    ("mast --seed 7", &["T = 849 N", "849*3.8 cos25 + 705.6*0.5 sin 25 = 1401*3.8 sin 25 - 695.8*2.8 sin 25"], "Wb = 3070 N", Sign::Wrong, ""),
    // One more try is no balance of her own.
    ("walkway --seed 5", &["T = 600 N"], "T = 602 N", Sign::Wrong, ""),
    ("counter --seed 3", &["H = 100 N"], "H = 100.4 N", Sign::Wrong, ""),
    // Metres, not a mass, under a name of her own.
    ("jib", &[], "c = √(1.5²+2²) m = 2.5 m", Sign::Noted, "c = 2.50 m"),
    ("jib", &[], "c = √(1.5²+2²) m = 2.6 m", Sign::Wrong, ""),
    // A size is not below zero.
    ("boom", &["T = 408 N"], "|Hx| = -361 N", Sign::Wrong, ""),
    ("boom", &["T = 408 N"], "|Hx| = 361 N", Sign::Right, ""),
    // A = 941.25 N, B = 735 N: true of two unknowns, though no balance says it.
    ("gate", &[], "A + B = 1676 N", Sign::Noted, ""),
    ("gate", &[], "A - B = 206 N", Sign::Noted, ""),
    ("gate", &[], "A + B = 1700 N", Sign::Wrong, ""),
    // What the right form gives, told to three figures: 588/sin 38.7 = 940.4 for 941.25.
    ("gate", &["B = 735 N", "Ay = 588 N"], "A = 588/sin 38.7 = 940 N", Sign::Right, ""),
    ("gate", &["B = 735 N", "Ay = 588 N"], "A = 588/sin 38.7 = 960 N", Sign::Wrong, ""),
    ("gate", &[], "B = 735 kg·m·s⁻²", Sign::Right, ""),
    // A given told wrongly: nothing is said to follow from it.
    ("mast --seed 7", &[], "L = 3.4 m", Sign::Wrong, "6.6 m. Go on with"),
    // The label of a line names the other axis; the line itself holds.
    ("mast --seed 7", &[], "vertical: T + Hx = 0", Sign::Right, "the level ones"),
    ("mast --seed 7", &[], "horizontal: Wb + W1 = Hy", Sign::Right, "the upright ones"),
    ("mast --seed 7", &[], "level: T + Hx = 0", Sign::Right, "!ones"),
    ("mast --seed 7", &[], "up = down: Wb + W1 = Hy", Sign::Right, "!ones"),
    // A comparison behind a chain, or before it: 392 N is the most that friction can be.
    ("topple", &[], "0.5*784 = 392 N > 285 N", Sign::Noted, ""),
    ("topple", &["N = 784 N"], "285 N < μN = 392 N", Sign::Right, ""),
    ("topple", &["N = 784 N"], "μN = 392 N < 285 N", Sign::Wrong, "Compare"),
    ("topple", &["N = 784 N"], "μN = 400 N > 285 N", Sign::Wrong, ""),
    ("topple", &[], "P = 285 N < 392 N", Sign::Right, ""),
    ("topple", &[], "285 > 392", Sign::Wrong, "Compare"),
    ("boom", &["W1 = 245 N"], "Wb = 176.4 N > W1", Sign::Wrong, "Compare"),
    ("ladder", &[], "d = 2.81 m > L", Sign::Wrong, "Compare"),
    ("ladder", &["N = 882 N", "FN = 309 N"], "FN = 309 N > N", Sign::Wrong, "Compare"),
    ("ladder", &["N = 882 N", "FN = 309 N"], "FN = 309 N < N", Sign::Right, ""),
    ("topple", &["N = 784 N"], "μN = 0.5·784 = 392 N > 285 m", Sign::Wrong, ""),
    // Comparing a multiple of what is known with what is not would tell it by and by.
    ("boom", &[], "1.6*W1 > T", Sign::Noted, ""),
    ("boom", &[], "1.7*W1 > T", Sign::Noted, ""),
    // Neither a size nor its opposite is counted in another sense.
    ("boom", &[], "-|Hx| = 361 N", Sign::Wrong, ""),
    ("boom", &[], "|Hy| + 230 = 0", Sign::Wrong, ""),
    // As long as the stretch between knot and tip, and no 2.9 cos 10 = 2.86 rounded.
    ("mast --seed 14200066", &[], "0 = 490*3*cos(55) - T*tan(10)*2.9*cos(55) - T*cos(10)*2.9*sin(55) + Hx*6*sin(55) - Hy*6*cos(55)", Sign::Noted, ""),
    ("mast --seed 14200066", &[], "0 = 490*3*cos(55) - T*sin(10)*2.9*cos(55) - T*cos(10)*2.9*sin(55) + Hx*6*sin(55) - Hy*6*cos(55)", Sign::Right, ""),
    // Several masses together are none of them.
    ("mast --seed 14", &[], "M = 51 + 59 = 110 kg", Sign::Noted, "M = 110 kg"),
    ("walkway --seed 1", &[], "T = 600 rad", Sign::Incomplete, ""),
    // What stands behind a form must be its value, whatever the form is of.
    ("internal_hinge", &[], "MA = 12*1.5+12*5.5-6*7 = 40", Sign::Wrong, ""),
    ("topple", &[], "P = 3136/11 = 5 N", Sign::Wrong, ""),
    ("counter --seed 3", &[], "T = 7*70.9 = 600 N", Sign::Wrong, "!The expression is right"),
    ("counter --seed 3", &[], "T = 7*70.9 = 496 N", Sign::Right, ""),
    // 71·10 is equal to 710: another g was meant.
    ("mast --seed 3", &[], "W1 = 71*10 = 710 N", Sign::Wrong, "g = 10"),
    ("bracket", &[], "C = 8 N", Sign::Wrong, "8.0 N m"),
    ("bracket", &[], "P = 50 kg", Sign::Wrong, "50 N"),
    ("bracket", &[], "C = 8 N m", Sign::Noted, ""),
    ("mast --seed 3", &[], "theta = 0.96 rad", Sign::Noted, ""),
    ("mast --seed 3", &[], "theta = 0.97 rad", Sign::Wrong, "55°"),
    // Names with the noun of another force, or of the other part.
    ("mast --seed 3", &[], "weight of the dummy = 107.8 N", Sign::Noted, "What is"),
    ("mast --seed 3", &[], "weight of the dummy = 695.8 N", Sign::Right, ""),
    ("mast --seed 3", &[], "W1par = W1 cos 55", Sign::Noted, "What is"),
    ("mast --seed 3", &[], "W1perp = W1 cos 55", Sign::Right, ""),
    ("mast --seed 3", &[], "Wdummy = m2 g", Sign::Noted, "What is"),
    // 811·cos 10 is 798.7: no other g was taken.
    ("mast --seed 3", &["Hx = T cos 10", "T = 811 N"], "Hx = 799 N", Sign::Rounded, "!9.81"),
    // On a level body x is level.
    ("walkway --seed 1", &["T = 600 N"], "Tx = T sin 40", Sign::Wrong, "sin"),
    ("walkway --seed 1", &["T = 600 N", "Tx = T sin 40"], "Hx = 386 N", Sign::Follows, ""),
    ("plank_tips", &["let W = Wb + W1 = 0.735 kN"], "B = W", Sign::Right, ""),
    // One figure is no rounding of 1.154.
    ("counter --seed 3", &[], "W2/W1 = 1", Sign::Wrong, ""),
    ("counter --seed 3", &[], "W2/W1 = 1.15", Sign::Right, ""),
    ("mast --seed 12", &[], "L/2 = 3 m", Sign::Wrong, ""),
    // The way is that of her own pull.
    ("counter --seed 3", &["T = 480 N"], "H = 30 N", Sign::Follows, "downwards"),
    // Who leaves the body's weight out everywhere is true to her own drawing, in any form.
    ("counter --seed 3", &["T = 357 N"], "H = 357 - 127 - 147", Sign::Follows, "downwards"),
    ("counter --seed 3", &["T = 357 N"], "H = 83 N", Sign::Follows, "downwards"),
    ("counter --seed 3", &["T = 357 N"], "H + T = 127 + 147", Sign::Follows, ""),
    ("counter --seed 3", &["T = 496 N"], "H = 222 N", Sign::Wrong, ""),
    // A balance of forces with the pull in it shows its thought before the pull is found.
    ("counter --seed 3", &[], "H + T = 127 + 147", Sign::Wrong, "leaves out Wb"),
    ("mast --seed 3", &[], "Hy + T cos 10 = Wb + W1 + W2", Sign::Wrong, "cos β"),
    ("mast --seed 3", &[], "Hy + T sin 10 = Wb + W1 + W2", Sign::Right, ""),
    // What a slip in a product without a name leads to, by way of a sum.
    ("counter --seed 23", &["186*1.2 = 223.2", "255*0.9 = 200", "223.2 + 200 = 423.2"], "T = 423.2/1.3 = 326 N", Sign::Follows, "line 2"),
    ("counter --seed 23", &["186*1.2 = 223.2", "255*0.9 = 200", "223.2 + 200 = 423.2"], "T = 433.2/1.3 = 333 N", Sign::Wrong, ""),
    ("mast --seed 24", &["T = 848", "848 sin 15 = 291", "1244 - 291 = 953"], "Hy = 953", Sign::Follows, "line 2"),
    ("mast --seed 24", &["T = 848", "848 sin 15 = 291", "1244 - 291 = 953"], "Hy = 963", Sign::Wrong, ""),
    ("forearm", &["49*35 = 1751", "235.5 + 1751 = 1986.5"], "M = 1986.5/3.94 = 504 N", Sign::Follows, "line 1"),
    ("../workings/goat", &["294*0.75 = 202.5", "202.5/147 = 1.38"], "d = 3.5 + 1.38 = 4.88", Sign::Follows, "line 1"),
    ("../workings/goat", &["294*0.75 = 202.5", "202.5/147 = 1.38"], "d = 3.5 + 1.48 = 4.98", Sign::Wrong, ""),
    ("mast --seed 21", &["M1 = 581 Nm", "M2 = 1345 Nm", "M3 = T*4.32"], "M1 + M2 = M3", Sign::Right, ""),
    ("mast --seed 21", &["M1 = 581 Nm", "M2 = 1345 Nm", "M3 = T*4.32"], "M1 - M2 = M3", Sign::Wrong, ""),
    ("ladder", &["M2 = 686*d*cos62"], "196*2*cos62 + M2 = 309*4*sin62", Sign::Right, ""),
    // A circle of names finds nothing.
    ("walkway --seed 23", &["Tx = T cos β", "Hx = -Tx"], "T = -Hx/cos β", Sign::Noted, "no more than"),
    ("centre", &["x̄ = ȳ"], "ȳ = x̄", Sign::Noted, "no more than"),
    ("mast --seed 23", &["k = T/2"], "Hx = 2 k", Sign::Right, "T still unknown"),
    // A bare m of several masses is all of them, or one of the problem's that was misread.
    ("counter --seed 29", &["m = 58 kg"], "T + H = m*9.8", Sign::Right, ""),
    ("counter --seed 23", &["M = 452.8"], "T = M/1.3", Sign::Right, ""),
    ("counter --seed 29", &[], "m = 59 kg", Sign::Wrong, "The problem gives"),
    ("mast --seed 23", &[], "two T = 763 N", Sign::Unclear, "two"),
    ("mast --seed 23", &[], "weight of the bag = 343 N", Sign::Noted, "What is"),
    ("mast --seed 23", &[], "weight of the bag = 205.8 N", Sign::Right, "bag of gear"),
    ("ladder", &[], "R = 999", Sign::Noted, "judged when you use it"),
    // What is done in the moment sum shows in no form of the hinge's force.
    ("walkway --seed 21", &[], "Hy = T sin β", Sign::Wrong, "!far end"),
    ("walkway --seed 21", &[], "ψ = β", Sign::Wrong, "!without W1"),
    ("counter --seed 25", &[], "H = T", Sign::Wrong, "!far end"),
    ("walkway --seed 21", &[], "Hx = T sin β", Sign::Wrong, "sin β"),
    ("gate", &[], "W*1.5 = B*1.2 + Ay*1.5", Sign::Wrong, "!missing"),
    // A root counted the other way is no reach from nothing to the value.
    ("jib", &["Wb*1.5 + W1*3 = S sin 36.9*2"], "S = 100 N", Sign::Wrong, ""),
    ("jib", &["Wb*1.5 + W1*3 = S sin 36.9*2"], "S = 3000 N", Sign::Wrong, ""),
    ("gate", &["W*1.5 + B*1.2 = 0"], "B = 100 N", Sign::Wrong, ""),
    ("gate", &["W*1.5 + B*1.2 = 0"], "B = 735 N", Sign::Right, ""),
    // A name told anew is what it was told last.
    ("counter --seed 41", &["w = 19*9.8", "w = 5"], "T = (1.3 w + 299.88)/1.9", Sign::Wrong, ""),
    ("internal_hinge", &["u = 6 kN", "u = 12 kN"], "B = u", Sign::Wrong, ""),
    ("bracket", &["k = 11.76*0.6", "k = 30"], "ME = 8.82+k+8-12.5", Sign::Wrong, ""),
    ("bracket", &["k = 11.76*0.6"], "ME = 8.82+k+8-12.5", Sign::Right, ""),
    // Words before numbers say what they come to.
    ("sign", &[], "tension in the left rope: 116 N", Sign::Wrong, ""),
    ("sign", &[], "tension in the right rope: 116 N", Sign::Right, ""),
    ("mast --seed 48", &[], "weight of the practice dummy: 755 N", Sign::Wrong, ""),
];

#[test]
fn what_follows_from_a_slip_and_lines_of_force_are_judged() {
    let others: Vec<String> = [ROWS, CARRIED]
        .into_iter()
        .flat_map(told_otherwise)
        .collect();
    assert!(others.is_empty(), "{others:#?}");
}

#[test]
fn a_line_of_very_many_numbers_is_asked_to_be_split() {
    let mut session = super::again::sitting("jib");
    session.submit("freely");
    let told = session
        .submit(&format!("S = {}1", "1/2sin β/".repeat(54)))
        .line;
    assert_eq!(told.sign, Sign::Unclear);
    assert!(told.message.to_string().contains("60 numbers"));
}
