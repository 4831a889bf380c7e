//! What rests on a wrong value or balance of hers, shares of a length in whole numbers, and the right way
//! said behind a part; by hand.

use super::counted::{Row, told_otherwise};
use leverwright::session::Sign;

/// 19 kg at 1.1 m, 28 kg at 0.7 m, 6 kg at 1.3 m, the rope at the tip, 2.2 m: Wb 186.2 N, W1 274.4 N,
/// W2 58.8 N, T 215 N, H 304 N. With g = 10: 190, 280 and 60 N, T 219.5 N, H 310.5 N.
const COUNTER: &str = "counter --seed 360";
const BALANCE: &str = "T*2.2 = 186*1.1 + 274*0.7 + 58.8*1.3";
/// The pull multiplied by its ratio, and the whole of it taken as upright.
const PULL_TIMES: &[&str] = &["T=(549*2.1+510*1.7)/4.2*sin 35"];
const WHOLE_UPWARD: &[&str] = &["Hy = 109*9.8-419"];
/// 28 kg at 1.9 m, 66 kg at 2.4 m, the rope at the tip, 3.8 m, and 50°: 2.4/3.8 = 12/19, T 712 N.
const SHARES: &str = "walkway --seed 225";
/// Wb 470.4 N, W1 823.2 N, T 764 N at 65°, Hy 601 N; Wb + W1 − T = 529.4.
const WHOLE: &str = "walkway --seed 211";
const WHOLE_PULL: &[&str] = &["Hy + T = Wb + W1"];
/// 35° with the upright, leaning to the left: W1 558.6 N, across 320 N, along 458 N.
const MAST: &str = "mast --seed 119";
/// The rope at 40° with the upright; T 2600 N, and 3093 N with 40° for 50° in the moments.
const EXCHANGED: &str = "walkway --seed 232";
/// 14 kg at 1.3 m and 21 kg at 0.9 m, the rope at 1.9 m: Wb 137.2 N, W1 205.8 N, T 191.4 N. With Wb at the
/// rope, 260.68 + 185.22 = 445.9, as with both at 1.3 m: T 234.7 N.
const CHANCE: &str = "counter --seed 717";
const AT_ROPE: &[&str] = &["137.2*1.9 + 205.8*0.9 = T*1.9"];
/// Three weights, 225.4, 156.8 and 137.2 N, the first 2 m away and not 1.3 m: 695.8.
const THREE: &str = "counter --seed 702";
const FAR_END: &[&str] = &["225.4*2 + 156.8*0.6 + 137.2*1.1 = T*2.6"];
const OWN_PULL: &[&str] = &["T = 234.7 N"];
/// The rope at 10° with the level, T 566 N.
const DRILL: &str = "mast --seed 703";
const LEVEL_PART: &[&str] = &["Hx = T*cos 10"];
/// 24 kg at 1.1 m, 13 kg at 1.4 m, the rope at 2.2 m: 258.7 + 178.4 = 437.1.
const CRATE: &str = "counter --seed 721";
/// 205.8, 88.2 and 156.8 N at 1.1, 1.9 and 1.7 m, the rope at the tip, 2.2 m: T 300.2 N, H 150.6 N.
const MELONS: &str = "counter --seed 2511";
const DOWN: &[&str] = &["T = 100 N", "H = 450.8 + T"];
const ABOUT_LOAD: &[&str] = &["T*0.3 - Wb*0.8 - W2*0.2 + H*1.9 = 0"];
const H_FOR_T: &[&str] = &["H*2.2 = 205.8*1.1 + 88.2*1.9 + 156.8*1.7", "T + H = 450.8"];
const T_FOR_H: &[&str] = &["T*2.2 = 205.8*1.1 + 88.2*0.3 + 156.8*0.5"];
/// Wb 470.4 N, W1 764.4 N, the rope at 50°.
const BIRDS: &str = "walkway --seed 2512";
const TURNED_PULL: &[&str] = &[
    "Hy*3.4 - Ty*1.3 = 470.4*1.7 + 764.4*1.5",
    "Hy + T*sin(50°) = 1234.8",
];
/// T 834 N at 35°, Hx 683 N, Hy 580 N, H 896 N.
const PARTS: &str = "walkway --seed 1640";
const OWN_PARTS: &[&str] = &["Hx = 893 N", "Hy = 166 N"];
/// The angle between rope and mast is 75°, or on its other side 105°; 90° + 55° − 70°.
const LEANING: &str = "mast --seed 2131";
/// 44 kg at 2.2 m, 92 kg at 1.5 m, the rope at the tip, 4.4 m, and 35°: 2301/4.4 = 523.
const WALKWAY: &str = "walkway --seed 4133";
const TIMES: &[&str] = &["T = 2301/4.4*sin 35"];
/// 28 kg at 1.5 m, 58 kg at 2.3 m, the rope at 1.8 m and 65°; it runs up to the right.
const ACROSS: &str = "walkway --seed 4010";
/// 48 kg at 1.5 m, 70 kg at 1.6 m, the rope at the tip, 3 m, and 35°: 184/(3 sin 35) = 107.
const MASSES: &str = "walkway --seed 3401";
/// 51 kg at 3 m, 41 kg at 6 m, 17 kg at 2.3 m of a mast at 65°, the rope at 4.4 m, 80° to it.
const THREE_ON: &str = "mast --seed 3101";

/// 74 kg at 2.8 m, 79 kg at 5.6 m of a mast at 55°: across 416 and 444 N, along 594 and 634 N.
const ALONG: &[&str] = &["Wbp = 594 N", "W1p = 634 N"];
/// 24 kg at 1.2 m, 11 kg at 1.6 m, 17 kg at 0.9 m, the rope at the tip, 2.4 m.
const MINUS: &str = "counter --seed 6410";
/// A mast of 6.6 m at 70°.
const LINE: &str = "mast --seed 6030";

#[rustfmt::skip]
const ROWS: &[Row] = &[
    // A refused value says nothing more once a right balance gives another.
    (COUNTER, &["T = 280 N", BALANCE], "T = 280 N", Sign::Wrong, ""),
    (COUNTER, &["T = 280 N", BALANCE], "T = 215 N", Sign::Right, ""),
    (COUNTER, &["T = 280 N", "H = 239 N"], "T = 280 N", Sign::Follows, "line 1"),
    // Told again at once in another unit, with other figures or as another form, it says nothing new;
    // who works a refused form out goes on with it.
    (COUNTER, &["T = 280 N"], "T = 0.28 kN", Sign::Noted, "line 1"),
    (COUNTER, &["T = 280 N"], "T = 280.0", Sign::Noted, "line 1"),
    (COUNTER, &["T = 280 N"], "T = 281", Sign::Wrong, ""),
    (WALKWAY, TIMES, "T = 2301*sin 35/4.4", Sign::Wrong, "multiplied"),
    (WALKWAY, TIMES, "T = 523*sin 35", Sign::Follows, "your own value from line 1"),
    (WALKWAY, &["T = 523*0.574"], "T = 523*0.5736", Sign::Noted, "line 1"),
    (WALKWAY, TIMES, "T = 300 N", Sign::Follows, "line 1"),
    (WALKWAY, TIMES, "T = 310 N", Sign::Wrong, ""),
    // A mass is no better for the unit of a force.
    (ACROSS, &["Wb = 28 kg"], "Wb = 28 N", Sign::Wrong, "mass used as a force"),
    (ACROSS, &["Wb = 28 kg"], "Wb = 274 N", Sign::Right, ""),
    // A balance that fulfils only the wrong T which it gives shows what is wrong with it.
    (MASSES, &["T = 107"], "48*1.5 + 70*1.6 = T*3*sin 35", Sign::Wrong, "used the mass"),
    (MASSES, &["T = 107"], "470*1.5 + 686*1.6 = T*3*sin 35", Sign::Right, ""),
    (MASSES, &["T = 107"], "Hx = T cos 35", Sign::Right, ""),
    // The number of a mass told for a weight is one: times g it is the weight.
    (THREE_ON, &["Wb = 51 N"], "Wb*9.8*cos 65*3 + W1*6*cos 65 + W2*2.3*cos 65 = T*4.4*sin 80", Sign::Follows, "line 1"),
    (THREE_ON, &["Wb = 51 N"], "Wb*9.8*cos 65*3 + W1*6*sin 65 + W2*2.3*cos 65 = T*4.4*sin 80", Sign::Wrong, ""),
    (THREE_ON, &["Wb = 52 N"], "Wb*9.8*cos 65*3 + W1*6*cos 65 + W2*2.3*cos 65 = T*4.4*sin 80", Sign::Wrong, ""),
    (THREE_ON, &["Wb = 499.8 N"], "Wb*9.8*cos 65*3 + W1*6*cos 65 + W2*2.3*cos 65 = T*4.4*sin 80", Sign::Wrong, ""),
    // A form that comes near by chance shows what is wrong with it.
    ("mast --seed 3103", ALONG, "T = (594*2.8+634*5.6)/3.4", Sign::Wrong, "whole of T"),
    ("mast --seed 3226", &["Wbp = Wb*cos 25"], "Tp = T*cos 25", Sign::Wrong, "cos α for T"),
    ("mast --seed 4010", &["Wbp = Wb sin 50"], "Tp = T sin 50", Sign::Wrong, "other angle"),
    // Of several statements each counts, though the first is a sum beside the working.
    (LINE, &[], "3.3 cos 70 = 1.129 m and T = 700 N", Sign::Wrong, ""),
    (LINE, &[], "3.3 cos 70 = 1.129 m, 6.6 cos 70 = 2.857 m", Sign::Wrong, ""),
    (LINE, &[], "3.3 cos 70 = 1.129 m and 6.6 cos 70 = 2.257 m", Sign::Right, ""),
    (LINE, &[], "3.3 cos 70 = 1.129 m; Wb = 754.6 N", Sign::Right, ""),
    // A weight told with a sign has it in its name; its number has the sign that stands before it.
    (MINUS, &["W1 = -107.8 N"], "T = (235.2*1.2 - 107.8*1.6 + 166.6*0.9)/2.4", Sign::Wrong, ""),
    (MINUS, &["W1 = -107.8 N"], "T = (235.2*1.2 - W1*1.6 + 166.6*0.9)/2.4", Sign::Right, ""),
    (MINUS, &["W1 = -107.8 N"], "T = (235.2*1.2 + 107.8*1.6 + 166.6*0.9)/2.4", Sign::Right, ""),
    (MINUS, &["W1 = -107.8 N"], "T = (235.2*1.2 + W1*1.6 + 166.6*0.9)/2.4", Sign::Right, ""),
    // A name told for a multiple of the pull is known, and may get its value.
    ("walkway --seed 6023", &["V = T sin 55"], "V = 2136.4/2.4 = 890 N", Sign::Right, ""),
    ("walkway --seed 6023", &["V = T sin 55"], "V = 2136.4/2.4 = 880 N", Sign::Wrong, ""),
    // A part told by a form counts as that counts it in what rests on it, with T still open.
    (ACROSS, &["Hx = T cos 65"], "Hy = Wb + W1 - Hx*tan 65", Sign::Right, ""),
    (ACROSS, &["Hx = T cos 65"], "Hy = Wb + W1 - Hx/tan 65", Sign::Wrong, ""),
    (ACROSS, &["Hx = -T cos 65"], "Hy = Wb + W1 - Hx*tan 65", Sign::Wrong, ""),
    (ACROSS, &["Hx = -T cos 65"], "Hy = Wb + W1 + Hx*tan 65", Sign::Right, ""),
    // A moment balance divided by the length.
    (SHARES, &[], "T sin 50 = Wb/2 + W1*12/19", Sign::Right, "balance holds"),
    (SHARES, &[], "T = (Wb/2 + 12*W1/19)/sin 50", Sign::Right, ""),
    (SHARES, &[], "T sin 50 = 274/2 + 647*(12/19)", Sign::Right, ""),
    (SHARES, &[], "T sin 50 = Wb/2 + W1*13/19", Sign::Wrong, ""),
    (SHARES, &[], "T sin 50 = 12/19*Wb + W1/2", Sign::Wrong, ""),
    (SHARES, &[], "T cos 50 = Wb/2 + W1*12/19", Sign::Wrong, ""),
    (SHARES, &[], "T = Wb/2 + W1*12/19", Sign::Wrong, ""),
    // g = 10 in one weight is taken in the others, too.
    (COUNTER, &["Wb = 190 N"], "H = 190 + 280 + 60 - T", Sign::Follows, "line 1"),
    (COUNTER, &["Wb = 190 N"], "T = (190*1.1 + 280*0.7 + 60*1.3)/2.2", Sign::Follows, "line 1"),
    (COUNTER, &["Wb = 190 N"], "H = 190 + 290 + 60 - T", Sign::Wrong, ""),
    (COUNTER, &["Wb = 170 N"], "H = 170 + 280 + 60 - T", Sign::Wrong, ""),
    (COUNTER, &["Wb = 190 N", "W1 = 274.4 N"], "H = 190 + 280 + 58.8 - T", Sign::Wrong, ""),
    // A wrong balance of two unknowns gives the one with the other as the moments give it.
    (WHOLE, WHOLE_PULL, "Hy = 529.4 N", Sign::Follows, ""),
    (WHOLE, WHOLE_PULL, "Hy = 549.4 N", Sign::Wrong, ""),
    (WHOLE, &["Hy + T sin 65 = Wb + W1"], "Hy = 529.4 N", Sign::Wrong, ""),
    // The right way said behind a part across or along the body.
    (MAST, &[], "W1 sin 35 = 320 N down", Sign::Right, ""),
    (MAST, &[], "W1 sin 35 = 320 N left", Sign::Right, ""),
    (MAST, &[], "W1 cos 35 = 458 N right", Sign::Right, ""),
    (MAST, &[], "W1 sin 35 = 320 N up", Sign::Wrong, "not the way"),
    (MAST, &[], "W1 cos 35 = 458 N left", Sign::Wrong, "not the way"),
    ("mast --seed 3", &[], "W1 sin 35 = 399 N up", Sign::Wrong, "not the way"),
    ("mast --seed 3", &[], "W1 sin 35 = 399 N down", Sign::Right, ""),
    ("mast --seed 3", &[], "W1 sin 35 = 399 N", Sign::Right, ""),
    // Another wrong balance that comes to the same by chance is one more mistake.
    (CHANCE, AT_ROPE, "137.2*1.3 + 205.8*1.3 = T*1.9", Sign::Wrong, "half-way along"),
    (CHANCE, AT_ROPE, "137.2*1.3 + W1*1.3 = T*1.9", Sign::Wrong, ""),
    (CHANCE, AT_ROPE, "Wb*1.3 + W1*1.3 = T*1.9", Sign::Wrong, ""),
    (CHANCE, AT_ROPE, "343*1.3 = T*1.9", Sign::Wrong, ""),
    (CHANCE, AT_ROPE, "178.36 + 267.54 = T*1.9", Sign::Wrong, ""),
    (CHANCE, AT_ROPE, "137.2*1.3 + 205.8*0.9 = T*1.9", Sign::Right, ""),
    (THREE, FAR_END, "225.4*0.6 + 156.8*1.3 + 137.2*2.6 = T*2.6", Sign::Wrong, ""),
    (THREE, FAR_END, "Wb*1.1 + W1*1.1 + W2*2 = T*2.6", Sign::Wrong, ""),
    (THREE, FAR_END, "Wb*2 + W1*0.6 + W2*1.1 = T*2.6", Sign::Follows, ""),
    (THREE, FAR_END, "450.8 + 94.1 + 151 = T*2.6", Sign::Follows, ""),
    (THREE, FAR_END, "(23*2 + 16*0.6 + 14*1.1)*9.8/2.6 = T", Sign::Follows, ""),
    // Her own, rewritten, is hers.
    (CHANCE, AT_ROPE, "260.7 + 185.2 = T*1.9", Sign::Follows, ""),
    (CHANCE, AT_ROPE, "261 + 185 = 1.9 T", Sign::Follows, ""),
    (CHANCE, AT_ROPE, "T = 137.2 + 205.8*0.9/1.9", Sign::Follows, ""),
    (CHANCE, AT_ROPE, "Wb*1.9 + W1*0.9 = T*1.9", Sign::Follows, ""),
    (CHANCE, AT_ROPE, "9.8*(14*1.9 + 21*0.9) = 1.9*T", Sign::Follows, ""),
    (CHANCE, AT_ROPE, "343*0.9 + 137.2*1.0 = T*1.9", Sign::Follows, ""),
    (CHANCE, AT_ROPE, "Wb*0.95 + W1*0.45 = T*0.95", Sign::Follows, ""),
    (CHANCE, AT_ROPE, "205.8*0.9 = 1.9*(T - 137.2)", Sign::Follows, ""),
    (CHANCE, AT_ROPE, "445.9 = 1.9 T", Sign::Follows, ""),
    (CHANCE, AT_ROPE, "T = 235 N", Sign::Follows, ""),
    (CHANCE, AT_ROPE, "T = 445.9/1.9 = 234.7 N", Sign::Follows, ""),
    // A balance is none of her own for giving the number that was refused.
    (CHANCE, OWN_PULL, "137.2*3.25 = 1.9*T", Sign::Wrong, ""),
    (CHANCE, OWN_PULL, "137.2*1.3 + 205.8*1.3 = T*1.9", Sign::Wrong, "half-way along"),
    (CHANCE, OWN_PULL, "T*1.9 = Wb*1.3 + W1*1.3", Sign::Wrong, ""),
    (CHANCE, OWN_PULL, "137.2*1.3 + 205.8*0.9 = T*1.9", Sign::Right, ""),
    (CHANCE, OWN_PULL, "445.9 = T*1.9", Sign::Follows, "line 1"),
    (CHANCE, OWN_PULL, "H = 343 - T", Sign::Right, ""),
    (CHANCE, OWN_PULL, "H = 343 - 234.7", Sign::Follows, "line 1"),
    (CHANCE, OWN_PULL, "H + 234.7 = 343", Sign::Follows, "line 1"),
    (CHANCE, OWN_PULL, "H + 234.7 = 353", Sign::Wrong, ""),
    // No value is shown that rests on what is not found.
    (DRILL, LEVEL_PART, "Hx = T*cos(350)", Sign::Right, "!558"),
    (DRILL, LEVEL_PART, "Hx = T*0.985001", Sign::Right, "!558"),
    (DRILL, LEVEL_PART, "Hx = T - T*0.0152", Sign::Right, "!558"),
    (DRILL, LEVEL_PART, "T = Hx/cos10", Sign::Right, "!566"),
    (DRILL, LEVEL_PART, "H = T*1.7", Sign::Noted, "!963"),
    (DRILL, LEVEL_PART, "Hx = T*0.9", Sign::Wrong, ""),
    (DRILL, &["T = 566 N"], "Hx = T*cos(350)", Sign::Noted, "value agrees"),
    // The first moment may be called M1, whichever it is.
    (CRATE, &["M1 = Wb*1.1", "M2 = W1*1.4"], "M1 + M2 = T*2.2", Sign::Right, ""),
    (CRATE, &["M1 = Wb*1.1", "M2 = W1*1.4"], "M1 - M2 = T*2.2", Sign::Wrong, ""),
    (CRATE, &[], "M1 = Wb*1.1", Sign::Noted, ""),
    (CRATE, &[], "M1 = Wb*1.2", Sign::Wrong, ""),
    (CRATE, &[], "M1 = W1*1.4", Sign::Right, ""),
    // Her own number is one of her working.
    (EXCHANGED, &["T = 3093 N"], "Hy = 548.8 + 627.2 + 294 - 3093 sin 40", Sign::Noted, "!not every number"),
    // What a refused relation says is as wrong in another order; what is solved or put in follows.
    (MELONS, DOWN, "H - T = 450.8", Sign::Wrong, "what line 2 says"),
    (MELONS, DOWN, "2*H - 2*T = 901.6", Sign::Wrong, "what line 2 says"),
    (MELONS, DOWN, "H = 550.8 N", Sign::Follows, ""),
    (MELONS, DOWN, "H = 450.8 + 100", Sign::Follows, ""),
    (MELONS, DOWN, "H + T = 450.8", Sign::Right, ""),
    (MELONS, &["T = 100 N", "H - T = 450.8"], "H = 450.8 + T", Sign::Follows, ""),
    (MELONS, ABOUT_LOAD, "T*0.3 + H*1.9 - Wb*0.8 = W2*0.2", Sign::Wrong, "what line 1 says"),
    (MELONS, ABOUT_LOAD, "0 = W2*0.2 + 0.8*Wb - 1.9 H - 0.3 T", Sign::Wrong, "what line 1 says"),
    (MELONS, ABOUT_LOAD, "0.3 T + 1.9 H = 205.8*0.8 + 156.8*0.2", Sign::Follows, ""),
    (MELONS, ABOUT_LOAD, "H = (Wb*0.8 + W2*0.2 - T*0.3)/1.9", Sign::Follows, ""),
    (CHANCE, AT_ROPE, "T*1.9 = 205.8*0.9 + 137.2*1.9", Sign::Wrong, "what line 1 says"),
    (CHANCE, &["0 = 137.2*1.9 + 205.8*0.9 - T*1.9"], "T*1.9 = 205.8*0.9 + 137.2*1.9", Sign::Follows, ""),
    // A balance of moments of weights alone is none for what another force of hers would give.
    (MELONS, H_FOR_T, "T*2.2 = 205.8*1.1 + 88.2*0.3 + 156.8*0.5", Sign::Wrong, ""),
    (MELONS, H_FOR_T, "T = 450.8 - 300", Sign::Follows, "line 1"),
    (MELONS, H_FOR_T, "T = 150.8 N", Sign::Follows, "line 1"),
    (MELONS, H_FOR_T, "T*2.2 = 205.8*1.1 + 88.2*1.9 + 156.8*1.7", Sign::Right, ""),
    (MELONS, T_FOR_H, "H*2.2 = 205.8*1.1 + 88.2*1.9 + 156.8*1.7", Sign::Wrong, ""),
    (MELONS, T_FOR_H, "H*2.2 = 205.8*1.1 + 88.2*0.3 + 156.8*0.5", Sign::Right, ""),
    (MELONS, T_FOR_H, "H = 300 N", Sign::Follows, ""),
    // The sign of a pull turned in a balance of forces is a slip, whatever it agrees with.
    (BIRDS, TURNED_PULL, "Hy - Ty = 1234.8", Sign::Wrong, ""),
    (BIRDS, TURNED_PULL, "Hy + Ty = 1234.8", Sign::Right, ""),
    (BIRDS, TURNED_PULL, "Hy*3.4 - Ty*1.3 = 799.68 + 1146.6", Sign::Follows, ""),
    // Parts of a force are not added up for its size.
    (PARTS, OWN_PARTS, "H = 1060", Sign::Wrong, "put together along one line"),
    (PARTS, OWN_PARTS, "H = 908 N", Sign::Follows, "lines 1, 2"),
    ("mast --seed 2046", &[], "H = -sqrt(Hx^2+Hy^2)", Sign::Wrong, "a size is no negative number"),
    ("mast --seed 2046", &[], "H = 0 - sqrt(Hx^2+Hy^2)", Sign::Wrong, "a size is no negative number"),
    ("mast --seed 2046", &[], "H = sqrt(Hx^2+Hy^2)", Sign::Right, ""),
    // An angle told on its other side leaves no room for others.
    (LEANING, &["gamma = 105"], "gamma = 70+55", Sign::Wrong, ""),
    (LEANING, &["gamma = 105"], "gamma = 70+60", Sign::Wrong, ""),
    (LEANING, &["gamma = 105"], "gamma = 90+55-70", Sign::Right, ""),
    (LEANING, &["gamma = 105"], "gamma = 70+35", Sign::Right, ""),
    // Of a form no unit is asked.
    (MELONS, &["T*2.2 = 205.8*1.1 + 88.2*1.9 + 156.8*1.7"], "T = 30.02*10 N", Sign::Right, "!unit"),
    // Her cosine of two figures gives 879 where 883 is right: that is the value of her right line.
    ("mast --seed 1863", &["T = (225*3.3+348*6.6)/(3.8*0.91)"], "T = 879", Sign::Rounded, ""),
    ("mast --seed 1863", &["T = (225*3.3+348*6.6)/(3.8*0.91)"], "T = 876", Sign::Wrong, ""),
    ("mast --seed 1863", &[], "T = 879", Sign::Wrong, ""),
    // 877.7 N at 65°: Hx = −371 and Hy = 498. Whose value it is is told only of what is found rightly.
    ("walkway --seed 3", &["T = 877.7 N", "Hx = 200 N"], "Hy = 371 N", Sign::Wrong, "!value of the level"),
    ("walkway --seed 3", &["T = 877.7 N", "Hx = -371 N"], "Hy = -371 N", Sign::Wrong, "value of the level"),
    ("walkway --seed 3", &["T = 877.7 N"], "Hy = -371 N", Sign::Wrong, "!value of the level"),
    // A mistake made once more in another form follows from nothing; what goes on with it does.
    ("walkway --seed 3402", PULL_TIMES, "T=(549*2.1+510*1.7)*sin 35/4.2", Sign::Wrong, "multiplied by the ratio"),
    ("walkway --seed 3402", PULL_TIMES, "T = 2019.9/4.2*sin 35", Sign::Follows, "line 1"),
    ("walkway --seed 3402", PULL_TIMES, "T = 480.9*0.5736 = 276 N", Sign::Follows, ""),
    ("walkway --seed 3203", &["Tp = T cos 35"], "Tp = T sin 55", Sign::Wrong, "other angle at this corner"),
    ("walkway --seed 3203", &["Tp = T cos 35"], "Tp = 0.8192*T", Sign::Follows, ""),
    ("mast --seed 3101", WHOLE_UPWARD, "Hy = 1068-419", Sign::Follows, ""),
    ("mast --seed 3101", WHOLE_UPWARD, "Hy = 109*9.8 - T", Sign::Wrong, "whole of T"),
    ("mast --seed 3101", &["W1p = 402*sin 130", "W1p = 402*sin 12.5"], "W1p = 402*sin 50", Sign::Wrong, "no angle of this problem"),
];

#[test]
fn what_rests_on_hers_follows_and_nothing_else_does() {
    let others = told_otherwise(ROWS);
    assert!(others.is_empty(), "{others:#?}");
}
