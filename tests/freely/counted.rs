//! Senses that a working counts in, and what follows from two lines of hers together; by hand.

use super::again::sitting;
use leverwright::session::Sign;

/// Lines before a line in one sitting, the line, its sign, and words that its message has (after
/// `!`, has not).
pub(crate) type Row = (
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
    ("boom", &["T = 408.4 N", "Hx = T cos 28"], "Hx = -361 N", Sign::Wrong, "Since line 2"),
    // A value of a joint's force has the sense that its number has.
    ("frame", &["B = 98 N", "Jy = 196 N down on the left beam"], "Ay = 496 - Jy", Sign::Wrong, "Since line 2 Jy counts downwards on the left beam"),
    ("frame", &["B = 98 N", "Jy = 196 N down on the left beam"], "Ay = 496 + Jy", Sign::Right, ""),
    ("frame", &["B = 98 N", "Jy = -196 N"], "Ay = 496 - Jy", Sign::Right, ""),
    ("internal_hinge", &["Gy = 6 kN"], "left beam: Ay + Gy = F", Sign::Wrong, "Since line 1"),
    ("internal_hinge", &["Gy = 6 kN"], "left beam: Ay = F + Gy", Sign::Right, ""),
    ("a_frame", &["T = 268 N", "Jx = T"], "T = -Jx", Sign::Wrong, "Since line 2"),
    ("a_frame", &["T = 268 N", "Jx = T"], "T = Jx", Sign::Right, ""),
    // Beside newtons a bare number of kilonewtons tells no sense.
    ("internal_hinge", &["Gy + B = 12"], "Ay = F + Gy", Sign::Right, ""),
    ("internal_hinge", &["Gy + B = 12"], "Gy + B = 12 kN", Sign::Right, "Gy counts downwards on the left beam"),
    // A strut that pushes where the key lets it pull: her wrong balance gives it as it acts.
    ("jib", &["S sin beta*2 = 392*1.5 + 1470*2", "S = 2940 N"], "Hy = 98 N up", Sign::Follows, ""),
    ("jib", &["S sin beta*2 = 392*1.5 + 1470*2", "S = 2940 N"], "Hy = 3626 N up", Sign::Wrong, ""),
    ("jib", &["S sin beta*2 = 392*1.5 + 1470*2", "S = 2940 N"], "Hx = 2352 N left", Sign::Follows, ""),
    ("jib", &["S sin beta*2 = 392*1.5 + 1470*2", "S = 2940 N"], "Hx = 2352 N right", Sign::Wrong, ""),
    ("leaning", &["N = 813.4 N", "N*2.5 = FN*4.33 + 176.4*1.25 + 637*1.75", "FN = 161.3 N", "R = FN"], "R = 161.3 N", Sign::Follows, ""),
    // What a weight is made into is known before it is found.
    ("mast --seed 7", &["W1 = 695.8 N", "Wb = 705.6 N"], "Wb⊥*3.3 = 984", Sign::Right, ""),
    ("mast --seed 7", &["W1 = 695.8 N", "Wb = 705.6 N"], "Mb + M1 = 2925", Sign::Right, ""),
    ("mast --seed 7", &["W1 = 695.8 N", "Wb = 705.6 N"], "Mb + M1 = 2825", Sign::Wrong, ""),
    // A part of the pull, once the hinge's part that it balances is found.
    ("walkway --seed 5", &["Hy = 375.67 N"], "Ty = 604.33 N", Sign::Right, ""),
    ("walkway --seed 5", &["Hy = 375.67 N"], "Ty = 614.33 N", Sign::Noted, ""),
    ("walkway --seed 5", &["Hy = 375.67 N", "Ty = 604.33 N"], "Tx = Ty/tan 65 = 281.8 N", Sign::Right, ""),
    ("walkway --seed 5", &[], "Ty = 604.33 N", Sign::Noted, "Ty rests on T"),
    // The right number in another unit shows nothing of the right one.
    ("walkway --seed 1", &[], "T = 61.2 N", Sign::Incomplete, "!600"),
    // A small difference of numbers that were told is off by just what they were rounded by.
    ("counter --seed 9101859", &["Wb = 24×9.8 = 235 N", "W1 = 196 N", "T = 438 N"], "H = -235 - 196 + 438 = 7.00 N", Sign::Follows, ""),
    ("counter --seed 9101859", &["Wb = 24×9.8 = 235 N", "W1 = 196 N", "T = 438 N"], "H = -235 - 196 + 438 = 9.00 N", Sign::Wrong, ""),
    ("counter --seed 9101859", &["Wb = 24×9.8 = 235 N", "W1 = 196 N", "T = 438 N"], "H = -235 + 196 + 438", Sign::Wrong, ""),
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
    let others = told_otherwise(ROWS);
    assert!(others.is_empty(), "{others:#?}");
}

/// The rows of a table whose last line is told otherwise.
pub(crate) fn told_otherwise(rows: &[Row]) -> Vec<String> {
    let mut others = Vec::new();
    for (problem, before, line, sign, words) in rows {
        let mut session = sitting(problem);
        session.submit("freely");
        for line in *before {
            session.submit(line);
        }
        let told = session.submit(line).line;
        let hints = told.hints.iter().map(ToString::to_string);
        let message = std::iter::once(told.message.to_string())
            .chain(hints)
            .collect::<Vec<_>>()
            .join(" ");
        let said = match words.strip_prefix('!') {
            Some(words) => !message.contains(words),
            None => message.contains(words),
        };
        if told.sign != *sign || !said {
            others.push(format!("{problem}: {line}: {:?}: {message}", told.sign));
        }
    }
    others
}
