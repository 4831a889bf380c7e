//! Senses that a working counts in, and what follows from two lines of hers together; by hand.

use super::again::sitting;
use leverwright::session::Sign;

/// Lines before a line in one sitting, the line, its sign, and words that its message has.
type Row = (
    &'static str,
    &'static [&'static str],
    &'static str,
    Sign,
    &'static str,
);

#[rustfmt::skip]
const ROWS: &[Row] = &[
    // What acts between two bodies acts up on the one and down on the other.
    ("internal_hinge", &[], "right beam: Gy + B = Q", Sign::Right, "Gy counts downwards on the left beam"),
    ("internal_hinge", &["right beam: Gy + B = Q"], "left beam: Ay + Gy = F", Sign::Wrong, "Since line 1 Gy counts downwards on the left beam"),
    ("internal_hinge", &["right beam: Gy + B = Q"], "left beam: Ay = F + Gy", Sign::Right, ""),
    ("internal_hinge", &["left beam: Ay + Gy = F"], "right beam: Gy + B = Q", Sign::Wrong, "Since line 1"),
    ("internal_hinge", &["left beam: Ay + Gy = F"], "right beam: B = Q + Gy", Sign::Right, ""),
    ("internal_hinge", &["right beam: Gy + B = Q", "Gy = 6 kN"], "left beam: Ay + Gy = F", Sign::Wrong, ""),
    ("internal_hinge", &["right beam: Gy + B = Q", "Gy = -6 kN"], "left beam: Ay + Gy = F", Sign::Right, ""),
    // A minus against the sense that the line before it counts in.
    ("boom", &["Hx = T cos 28"], "Hx = -361 N", Sign::Wrong, "Since line 1 Hx counts to the right"),
    ("boom", &["Hx = T cos 28"], "Hx = 361 N", Sign::Right, ""),
    ("boom", &["Hx + T cos 28 = 0"], "Hx = -361 N", Sign::Right, ""),
    ("boom", &["Hx = 361 N", "Hx = T cos 28"], "Hx = -361 N", Sign::Wrong, "Since line 2"),
    // An angle of two figures is too coarse, and not another.
    ("incline_slip", &[], "theta = 17°", Sign::Incomplete, ""),
    ("incline_slip", &[], "theta = 18°", Sign::Wrong, ""),
    // Radians turned into degrees by hand.
    ("mast --seed 3", &["T = 811 N"], "psi = 1.013*180/pi", Sign::Right, ""),
    ("mast --seed 3", &["T = 811 N"], "psi = atan(1280/798)*180/pi = 58.1", Sign::Right, ""),
    ("mast --seed 3", &["T = 811 N"], "psi = 1.1*180/pi", Sign::Wrong, ""),
    ("mast --seed 3", &["T = 811 N"], "Wb = 617.4*180/pi", Sign::Wrong, ""),
    // A name of her own for what is not found yet claims nothing.
    ("mast --seed 3", &["T = 811 N"], "S = Hx + Hy", Sign::Noted, ""),
    ("mast --seed 3", &[], "S = Hx + T cos 10", Sign::Noted, ""),
    // The size of a force through a wrong turn: her H acts as the forces do.
    ("mast --seed 3", &["T*4.2*sin 45 = 617.4*2.7*cos 55 + 695.8*4.5*cos 55 + 107.8*5.4*cos 55", "T = 1039 N"], "Hx = 1039 cos 10 = 1023 N", Sign::Follows, "Hx points to the left"),
    ("mast --seed 3", &["T*4.2*sin 45 = 617.4*2.7*cos 55 + 695.8*4.5*cos 55 + 107.8*5.4*cos 55"], "Hx = 1023 N", Sign::Follows, "Hx points to the left"),
    // Two of her lines together: both wrong, or one of them.
    ("ring", &["T1 cos 50 = T2 cos 25 + 70", "T1 sin 50 + T2 sin 25 = 254.8"], "T2 = 114.05 N", Sign::Follows, "from your own balance"),
    ("ring", &["T1 cos 50 = T2 cos 25 + 70", "T1 sin 50 + T2 sin 25 = 254.8"], "T1 = 269.7 N", Sign::Follows, "from your own balance"),
    ("ring", &["T1 cos 50 = T2 cos 25 + 70", "T1 sin 50 + T2 sin 25 = 254.8"], "T1 = 289 N", Sign::Wrong, ""),
    ("ring", &["T1 cos 50 = T2 cos 25 + 70", "T1 sin 50 + T2 cos 25 = 254.8"], "T2 = 86.3 N", Sign::Follows, "from your own balance"),
    ("ring", &["T1 cos 50 = T2 cos 25 + 70", "T1 sin 50 + T2 cos 25 = 254.8"], "T2 = 96.3 N", Sign::Wrong, ""),
    // Mended since: the first of them gives nothing any more.
    ("ring", &["T1 cos 50 = T2 cos 25 + 70", "T1 cos 50 = T2 sin 25 + 70", "T1 sin 50 + T2 cos 25 = 254.8"], "T2 = 86.3 N", Sign::Wrong, ""),
];

#[test]
fn senses_are_kept_and_two_lines_give_what_follows_from_both() {
    let mut others = Vec::new();
    for (problem, before, line, sign, words) in ROWS {
        let mut session = sitting(problem);
        session.submit("freely");
        for line in *before {
            session.submit(line);
        }
        let told = session.submit(line).line;
        let message = told.message.to_string();
        if told.sign != *sign || !message.contains(words) {
            others.push(format!("{problem}: {line}: {:?}: {message}", told.sign));
        }
    }
    assert!(others.is_empty(), "{others:#?}");
}
