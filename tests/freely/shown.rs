//! The line itself, shown in a free working after a wrong one: it is the right one, from her own
//! earlier values where it rests on these, and never what was refused. By hand.
//!
//! Walkway 3: 54 kg at 1.8 m, 78 kg at 2.5 m, the rope at 3.6 m and 65°. Counter 3: 18 kg at 1.1 m,
//! 13 kg at the tip (2.2 m), 15 kg at 1.5 m, the rope at 1.4 m. Mast 3: 63 kg at 2.7 m, 71 kg at 4.5 m,
//! 11 kg at 5.4 m, 55° with the level, the rope at 4.2 m and 10°.

use super::counted::{Row, told_otherwise};
use leverwright::session::Sign;

const COSINE: &[&str] = &["529.2*1.8 + 764.4*2.5 = T*3.6*cos 65"];
const NO_OWN_WEIGHT: &[&str] = &["T*1.4 = W1*2.2 + W2*1.5"];
const NO_ARM: &[&str] = &["T*1.4 = Wb*1.1 + W1 + W2*1.5"];
const AT_TIP: &[&str] = &["617.4*5.4*sin 35 + 695.8*4.5*sin 35 + 107.8*5.4*sin 35 = T*4.2*sin 65"];

const TURNED: &[&str] = &["T = 877.7 N", "Tx = T sin 65"];

/// All up to the pull shown, then a weight with g = 10 and its mend.
const WEIGHT_MENDED: &[&str] = &["show", "show", "show", "show", "Wb = 240 N", "Wb = 235.2 N"];

#[rustfmt::skip]
const ROWS: &[Row] = &[
    ("walkway --seed 3", COSINE, "show", Sign::Talk, "T·sin 65.0°·3.6 m"),
    ("walkway --seed 3", COSINE, "show", Sign::Talk, "!cos"),
    ("counter --seed 3", NO_OWN_WEIGHT, "show", Sign::Talk, "176 N·2.2 m/2"),
    ("counter --seed 3", NO_ARM, "show", Sign::Talk, "127 N·2.2 m"),
    ("mast --seed 3", AT_TIP, "show", Sign::Talk, "Wb⊥·L/2"),
    // 617.4·cos 55° = 354 is right; 617.4·sin 55° = 506 follows from her angle.
    ("mast --seed 3", &["alpha = 55", "Wbp = 480"], "show", Sign::Talk, "506 N"),
    ("mast --seed 3", &["alpha = 55", "Wbp = 480"], "show", Sign::Talk, "!480 N"),
    // (54·1.8 + 764.4·2.5)/(3.6·sin 65°) = 615.5, 450.8 − 357 = 93.8, 686 − 200 is not asked.
    ("walkway --seed 3", &["Wb = 54 N", "T = 700 N"], "show", Sign::Talk, "616 N"),
    ("counter --seed 3", &["T = 357 N", "H = 20 N"], "show", Sign::Talk, "93.8 N"),
    ("counter --seed 3", &["T = 357 N", "H = 20 N"], "show", Sign::Talk, "!20.0 N"),
    // 500·cos 28° = 441.
    ("boom", &["T = 500 N", "Hx = 200 N"], "show", Sign::Talk, "441 N"),
    ("boom", &["T = 500 N", "Hx = 200 N"], "show", Sign::Talk, "!200 N"),
    // 877.7·cos 65° = 371, and not her Tx, which was refused just now.
    ("walkway --seed 3", TURNED, "show", Sign::Talk, "Hx = −Tx = −T·cos β = −878 N·cos 65° = −371 N"),
    ("ladder", &["N = 686", "F = 200"], "show", Sign::Talk, "!200 N"),
    // What was shown stands behind the lines that are worked anew: 235.2 + 274.4 − 354.6 = 155.
    ("counter --seed 101", WEIGHT_MENDED, "H = Wb + W1 - T", Sign::Right, "!still unknown"),
    ("counter --seed 101", WEIGHT_MENDED, "H = 155 N", Sign::Right, ""),
    ("counter --seed 101", WEIGHT_MENDED, "H = 864 N", Sign::Wrong, ""),
    ("counter --seed 101", &["T = 400 N", "show", "H = 200 N", "H = 155 N"], "H = 110 N", Sign::Wrong, ""),
    ("counter --seed 101", &["Wb = 240 N", "Wb = 235.2 N"], "H = Wb + W1 - T", Sign::Right, "T still unknown"),
];

#[test]
fn the_line_shown_is_right_and_rests_on_her_own_earlier_values() {
    let others = told_otherwise(ROWS);
    assert!(others.is_empty(), "{others:#?}");
}
