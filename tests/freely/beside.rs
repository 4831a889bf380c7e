//! What is named beside what stands already: a wrong line after a right pull, a second mistake beside
//! one just named, a form that no number speaks for, and the question that tells two thoughts apart.
//! By hand; the wrong lines are common practice, no source.

use super::counted::{Row, told_otherwise};
use leverwright::session::Sign;

/// 26 kg at 2.1 m, 82 kg at 2.7 m, the rope at the tip, 4.2 m, and 50°: T 840.7 N.
const WALKWAY: &str = "walkway --seed 5022";
const PULL: &[&str] = &["T = 840.7 N"];
/// 56 kg at 1.6 m, 62 kg at 1.8 m, 8 kg at the tip, the rope at 2.3 m and 65°.
const LOADED: &str = "walkway --seed 5035";
const COSINE: &[&str] = &["548.8*1.6 + 607.6*1.8 + 78.4*3.2 = 2.3 T cos 65"];
/// 45 kg hang from the tip of a counter, 2.4 m; the rope is tied there.
const HALF: &str = "counter --seed 5016";
/// 9 kg at 1.2 m, 13 kg at the tip, 2.4 m, 18 kg at 0.5 m, the rope at 1.5 m.
const MELONS: &str = "counter --seed 5041";
/// A mast at 55° with a rope at 10° with the horizontal; T 826.3 N.
const MAST: &str = "mast --seed 5112";
/// 63 kg at 2.8 m, 31 kg at the tip; 35° and 75° between the forces and the mast.
const DRILL: &str = "mast --seed 5024";
const ALL_SINE: &[&str] = &["617.4*2.8*sin 35 + 303.8*5.6*sin 35 = 3.9 T sin 35"];
/// β = 70° with the mast.
const TWO_WRONG: &[&str] = &[
    "Wbp*3.5 + W1p*7 = T*cos 70*4.3",
    "Wbp*3.5 + W1p*7 = T*sin 20*4.3",
];
const BRACKET: &[&str] = &["372.4*1.9 + 803.6*1.4 = 2 T sin 65", "T = 1832.6/2*sin 65"];

#[rustfmt::skip]
const ROWS: &[Row] = &[
    // Her right pull says nothing of a wrong one, nor makes a sum of a balance.
    (WALKWAY, PULL, "T = 803.6*2.7/(4.2 sin 50)", Sign::Wrong, "leaves out Wb"),
    (WALKWAY, PULL, "254.8*2.1 + 803.6*2.7 = 4.2 T cos 50", Sign::Wrong, "cos γ for T"),
    (WALKWAY, PULL, "254.8*2.1 + 803.6*2.7 = 4.2 T sin 50", Sign::Right, ""),
    (WALKWAY, PULL, "254.8*2.1 = 545.1", Sign::Wrong, "Check this sum"),
    ("mast --seed 5002", &["T = 767 N"], "T = 361 N", Sign::Wrong, "placed at the far end"),
    // Nor does a wrong one of the balance that it is found from.
    (HALF, &["T = 221 N"], "T*2.4 = 441*1.2", Sign::Wrong, "half-way along"),
    // A second mistake is named beside the first.
    (LOADED, COSINE, "548.8*3.2 + 607.6*1.8 + 78.4*3.2 = 2.3 T cos 65", Sign::Wrong, "far end of the walkway"),
    (LOADED, COSINE, "548.8*1.6 + 607.6*1.8 + 78.4*3.2 = 2.3 T sin 65", Sign::Right, ""),
    // Another ratio in a refused balance is another mistake; the value of a refused form is hers.
    (DRILL, ALL_SINE, "617.4*2.8*sin 75 + 303.8*5.6*sin 75 = 3.9 T sin 75", Sign::Wrong, "γ for Wb"),
    (DRILL, ALL_SINE, "617.4*2.8 + 303.8*5.6 = 3.9 T", Sign::Follows, ""),
    ("walkway --seed 5004", BRACKET, "T = 830.5 N", Sign::Follows, "own value from line 2"),
    ("walkway --seed 5004", BRACKET, "T = 1011 N", Sign::Right, ""),
    // A refused line is not right for that a later one mends the line before it.
    ("mast --seed 7024", TWO_WRONG, "Wbp*3.5 + W1p*7 = T*sin 70*4.3", Sign::Right, "!judged anew"),
    // Of a form no number speaks for what has another form.
    (MAST, &["T = 826.3 N"], "Tx = 826.3 cos 55", Sign::Wrong, "!divided by g"),
    ("counter --seed 5031", &[], "T = (186.2*1.1 + 215.6*1.6)/1.6", Sign::Wrong, "!far end"),
    // Two thoughts give this number: an earlier value tells which.
    (MELONS, &[], "T = 131 N", Sign::Wrong, "What did you get for the weight of the crate"),
    (MELONS, &["T = 131 N"], "W1 = 127.4 N", Sign::Right, "Back to line 1. Perhaps all masses placed at one point"),
    (MELONS, &["T = 131 N"], "W1 = 1.33 N", Sign::Wrong, "divided by g (W1)"),
    (MELONS, &["T = 131 N", "T = 132 N"], "T = 131 N", Sign::Wrong, "!What did you get"),
    (MELONS, &["T = 131 N"], "T = (9*1.2 + 13*2.4 + 18*0.5)*9.8/1.5", Sign::Right, ""),
];

#[test]
fn what_stands_already_hides_no_thought() {
    let others = told_otherwise(ROWS);
    assert!(others.is_empty(), "{others:#?}");
}
