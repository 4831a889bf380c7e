//! Hints of a free working speak of the line that waits, of its force and of its angle, and of what
//! is looked for next where nothing waits. By hand.
//!
//! Walkway 3: 54 kg at 1.8 m, 78 kg at 2.5 m, the rope at 3.6 m and 65° with the walkway. Counter 3:
//! 18 kg at 1.1 m, 13 kg at the tip (2.2 m), 15 kg at 1.5 m, the rope upright at 1.4 m.

use super::again::sitting;
use super::counted::{Row, told_otherwise};
use leverwright::key::StepId;
use leverwright::session::Sign;

const OTHER_ANGLE: &str = "Between which two lines is the angle that your line uses";
const MARK_ANGLE: &str = "Mark the angle between these two";
const LEVEL_PARTS: &str = "Which other forces have a level part";

#[rustfmt::skip]
const ROWS: &[Row] = &[
    // Another angle in a right form is asked for by itself, of a part as of the hinge's.
    ("walkway --seed 3", &["Tx = 877.7*cos 40"], "hint", Sign::Talk, OTHER_ANGLE),
    ("walkway --seed 3", &["Tx = 877.7*cos 40", "hint"], "hint", Sign::Talk, MARK_ANGLE),
    ("walkway --seed 3", &["Hx = T*cos 20"], "hint", Sign::Talk, OTHER_ANGLE),
    ("walkway --seed 3", &["Hx = 900 N"], "hint", Sign::Talk, LEVEL_PARTS),
    // A part of the pull is looked at before the balance that it stands in.
    ("walkway --seed 3", &["T = 877.7 N", "Tx = 1234 N"], "hint", Sign::Talk, "which side is this part"),
    // All weights where W1 acts: W1 stands where it should.
    ("counter --seed 3", &["(18+13+15)*9.8*2.2 = T*1.4"], "hint", Sign::Talk, "does Wb act"),
    ("counter --seed 3", &["Wb*2.2 + W1*2.2 + W2*1.5 = T*1.4"], "hint", Sign::Talk, "Where on a uniform"),
    // A number alone has no form to be right.
    ("walkway --seed 3", &["W1 = 746.4 N"], "hint", Sign::Talk, "from the line that gives it"),
    ("walkway --seed 3", &["W1 = 78*9.8 = 746.4 N"], "hint", Sign::Talk, "The form is the right one"),
    // The pull is found: the masses are behind her. 877.7·cos 65° = 371.
    ("walkway --seed 3", &["T = 877.7 N"], "hint", Sign::Talk, LEVEL_PARTS),
    ("walkway --seed 3", &["T = 877.7 N", "Hx = -371 N"], "hint", Sign::Talk, "Which forces pull up"),
    ("walkway --seed 3", &[], "hint", Sign::Talk, "A mass is given"),
    ("counter --seed 3", &["T = 357 N"], "hint", Sign::Talk, "!A mass is given"),
    // So they are once the balance stands, and nothing is left to hint at when all is found.
    ("counter --seed 3", &["176.4*1.1 + 127.4*2.2 + 147*1.5 = T*1.4"], "hint", Sign::Talk, "what multiplies the unknown"),
    ("counter --seed 3", &["T = 496.3 N", "H = -45.5 N"], "hint", Sign::Talk, "All that is asked for is found"),
];

#[test]
fn val_a_hint_speaks_of_the_line_that_waits() {
    let others = told_otherwise(ROWS);
    assert!(others.is_empty(), "{others:#?}");
}

/// Judged anew once the balance is mended: newtons were typed, so no unit is at fault. Counter 3:
/// (18·1.1 + 13·2.2 + 15·1.5)/1.4 = 50.6.
#[test]
fn what_followed_in_its_unit_is_no_matter_of_the_unit_once_its_balance_is_mended() {
    const FROM_MASSES: &[&str] = &["18*1.1 + 13*2.2 + 15*1.5 = T*1.4", "T = 50.6 N"];
    let mended = "176.4*1.1 + 127.4*2.2 + 147*1.5 = T*1.4";
    let told = "Line 2 is judged anew: does not hold";
    let row = ("counter --seed 3", FROM_MASSES, mended, Sign::Right, told);
    let others = told_otherwise(&[row]);
    assert!(others.is_empty(), "{others:#?}");
}

/// Counter 3: (176.4·1.1 + 127.4·2.2 + 147·1.5)/1.4 = 496.3, and with Wb at the tip 634.9.
#[test]
fn val_a_right_balance_is_right_in_a_guided_walk_that_goes_on_with_another() {
    let mut session = sitting("counter --seed 3");
    let asked = session.key().asked();
    let before = asked
        .take_while(|step| step.id != StepId::MomentSum)
        .count();
    for _ in 0..before {
        session.submit("skip");
    }
    let rows = [
        ("T*1.4 = 176.4*2.2 + 127.4*2.2 + 147*1.5", Sign::Wrong),
        ("go on", Sign::Talk),
        ("T = 634.9 N", Sign::Follows),
        ("T*1.4 = 176.4*1.1 + 127.4*1.1 + 147*1.5", Sign::Wrong),
        ("T*1.4 = 176.4*1.1 + 127.4*2.2 + 147*1.5", Sign::Right),
        ("T = 496.3 N", Sign::Right),
    ];
    for (line, sign) in rows {
        let told = session.submit(line).line;
        assert_eq!(told.sign, sign, "{line}: {}", told.message);
    }
}
