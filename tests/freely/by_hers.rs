//! What rests on a wrong value or balance of hers, shares of a length in whole numbers, and the right way
//! said behind a part; by hand.

use super::counted::{Row, told_otherwise};
use leverwright::session::Sign;

/// 19 kg at 1.1 m, 28 kg at 0.7 m, 6 kg at 1.3 m, the rope at the tip, 2.2 m: Wb 186.2 N, W1 274.4 N,
/// W2 58.8 N, T 215 N, H 304 N. With g = 10: 190, 280 and 60 N, T 219.5 N, H 310.5 N.
const COUNTER: &str = "counter --seed 360";
const BALANCE: &str = "T*2.2 = 186*1.1 + 274*0.7 + 58.8*1.3";
/// 28 kg at 1.9 m, 66 kg at 2.4 m, the rope at the tip, 3.8 m, and 50°: 2.4/3.8 = 12/19, T 712 N.
const SHARES: &str = "walkway --seed 225";
/// Wb 470.4 N, W1 823.2 N, T 764 N at 65°, Hy 601 N; Wb + W1 − T = 529.4.
const WHOLE: &str = "walkway --seed 211";
const WHOLE_PULL: &[&str] = &["Hy + T = Wb + W1"];
/// 35° with the upright, leaning to the left: W1 558.6 N, across 320 N, along 458 N.
const MAST: &str = "mast --seed 119";
/// The rope at 40° with the upright; T 2600 N, and 3093 N with 40° for 50° in the moments.
const EXCHANGED: &str = "walkway --seed 232";

#[rustfmt::skip]
const ROWS: &[Row] = &[
    // A refused value says nothing more once a right balance gives another.
    (COUNTER, &["T = 280 N", BALANCE], "T = 280 N", Sign::Wrong, ""),
    (COUNTER, &["T = 280 N", BALANCE], "T = 215 N", Sign::Right, ""),
    (COUNTER, &["T = 280 N", "H = 239 N"], "T = 280 N", Sign::Follows, "line 1"),
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
    // Her own number is one of her working.
    (EXCHANGED, &["T = 3093 N"], "Hy = 548.8 + 627.2 + 294 - 3093 sin 40", Sign::Noted, "!not every number"),
];

#[test]
fn what_rests_on_hers_follows_and_nothing_else_does() {
    let others = told_otherwise(ROWS);
    assert!(others.is_empty(), "{others:#?}");
}
