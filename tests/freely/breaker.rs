//! Lines by which somebody tried to get a wrong thing told right, each beside a right one near it;
//! by hand.

use super::again::sitting;
use super::counted::{Row, told_otherwise};
use leverwright::session::Sign;

/// A direction of hers that is refused opens no other.
#[rustfmt::skip]
const DIRECTIONS: &[Row] = &[
    // H is at 121.9°, the mast at 125°, the rope at 10°.
    ("mast --seed 3", &["ψ = 20°"], "H = 1510 N along the mast", Sign::Wrong, "not the way"),
    ("mast --seed 3", &["ψ = 20°"], "H = 1510 N along the rope", Sign::Wrong, "not the way"),
    ("mast --seed 3", &["ψ = 20°"], "H = 1510 N perpendicular to the mast", Sign::Wrong, "not the way"),
    ("mast --seed 3", &["ψ = 20°"], "H = 1510 N", Sign::Right, ""),
    ("mast --seed 3", &["ψ = 10°"], "H = 1510 N along the rope", Sign::Follows, "line 1"),
    ("mast --seed 3", &["ψ = 10°"], "H = 1510 N along the mast", Sign::Wrong, ""),
    ("mast --seed 3", &["ψ = 20°"], "T = 811 N along the rope", Sign::Right, ""),
    ("walkway --seed 3", &["ψ = 20°"], "H = 621 N along the walkway", Sign::Wrong, "not the way"),
    ("forearm", &["ψE = 20°"], "E = 432 N along the forearm", Sign::Wrong, ""),
    ("jib", &["ψ = 20°"], "H = 3390 N along the jib", Sign::Wrong, "not the way"),
    ("jib", &["ψ = 0°"], "H = 3390 N along the jib", Sign::Follows, "line 1"),
    ("a_frame", &["ψJ = 20°"], "J = 646 N along the left leg", Sign::Wrong, "not the way"),
    ("a_frame", &["ψJ = 20°"], "J = 646 N", Sign::Right, ""),
];

/// A sum of known terms is off by what these lose, and not by a share of something large.
#[rustfmt::skip]
const SUMS: &[Row] = &[
    // Wb = 617.4 N, W1 = 695.8 N, W2 = 107.8 N: 1421.0 N, and 1422.5 N with 9.81 m/s².
    ("mast --seed 3", &[], "Wb+W1+W2 = 1425", Sign::Wrong, ""),
    ("mast --seed 3", &[], "Wb+W1+W2 = 1417", Sign::Wrong, ""),
    ("mast --seed 3", &[], "Wb+W1+W2 = 1430", Sign::Wrong, ""),
    ("mast --seed 3", &[], "Wb+W1+W2 = 1421", Sign::Right, ""),
    ("mast --seed 3", &[], "Wb+W1+W2 = 1420", Sign::Right, ""),
    ("mast --seed 3", &[], "Wb+W1+W2 = 1420.0", Sign::Right, ""),
    ("mast --seed 3", &[], "Wb+W1+W2 = 1422", Sign::Right, ""),
    ("mast --seed 3", &[], "Wb+W1+W2 = 1422.5", Sign::Right, ""),
    ("mast --seed 3", &[], "Wb+W1+W2 = 617.4+695.8+107.8 = 1421", Sign::Right, ""),
    ("mast --seed 3", &[], "Wb+W1+W2 = 617+696+108 = 1421", Sign::Right, ""),
    ("mast --seed 3", &[], "Wb+W1+W2 = 1.421 kN", Sign::Right, ""),
    ("mast --seed 3", &[], "Wb+W1+W2 = 1.42 kN", Sign::Right, ""),
    ("mast --seed 3", &["Wb = 618.0 N", "W1 = 696.5 N", "W2 = 107.9 N"], "Wb+W1+W2 = 1422.4", Sign::Right, ""),
    ("mast --seed 3", &[], "W1 - Wb = 78.4", Sign::Right, ""),
    ("mast --seed 3", &[], "W1 - Wb = 79", Sign::Right, ""),
    ("mast --seed 3", &[], "W1 - Wb = 82", Sign::Wrong, ""),
    ("mast --seed 3", &[], "617+696+108 = 1430", Sign::Wrong, ""),
    ("mast --seed 3", &[], "617+696+108 = 1425", Sign::Wrong, ""),
    ("mast --seed 3", &[], "617+696+108 = 1421", Sign::Noted, "true of these numbers"),
    ("mast --seed 3", &[], "617+696+108 = 1420", Sign::Noted, "true of these numbers"),
    // A sum of hers is kept under its name, and no other number.
    ("mast --seed 3", &[], "S = Wb+W1+W2 = 1425", Sign::Wrong, ""),
    ("mast --seed 3", &[], "S = Wb+W1+W2 = 1421", Sign::Noted, ""),
    ("mast --seed 3", &[], "1425 = Wb+W1+W2", Sign::Wrong, ""),
    ("mast --seed 3", &[], "1421 = Wb+W1+W2", Sign::Right, ""),
    // The value of a step may come from sums that were rounded on the way: 1310 + 107.8 − 140.8.
    ("mast --seed 3", &["T = 811 N"], "Hy = Wb+W1+W2-Ty = 1277", Sign::Right, ""),
    ("mast --seed 3", &["T = 811 N"], "Hy = Wb+W1+W2-Ty = 1280", Sign::Right, ""),
    ("mast --seed 3", &["T = 811 N"], "Hy = Wb+W1+W2-Ty = 1380", Sign::Wrong, ""),
    // Known numbers beside what was made up.
    ("mast --seed 3", &["T = 811 N"], "T + 1000 = 1820", Sign::Wrong, ""),
    ("mast --seed 3", &["T = 811 N"], "T + 1000 = 1811", Sign::Right, ""),
    ("mast --seed 3", &["T = 811 N"], "T + 1000 = 1810", Sign::Right, ""),
    ("mast --seed 3", &[], "1000000 + Wb = 1000900", Sign::Wrong, ""),
    ("mast --seed 3", &[], "1000000 + Wb = 1000617", Sign::Right, ""),
    ("mast --seed 3", &["T = 811 N"], "696000 + T = 696000 + 900", Sign::Wrong, ""),
    ("mast --seed 3", &["T = 811 N"], "696000 + T = 696000 + 811", Sign::Right, ""),
    // The parts of the pull and of the hinge's force.
    ("mast --seed 3", &["T = 811 N"], "Ty + Hy = 1421", Sign::Right, ""),
    ("mast --seed 3", &["T = 811 N"], "Ty + Hy = 1420", Sign::Right, ""),
    ("mast --seed 3", &["T = 811 N", "Hy = 1280 N"], "Ty + Hy = 1421", Sign::Right, ""),
];

/// Other lines of a working that were told right.
#[rustfmt::skip]
const NOT_RIGHT: &[(&str, &[&str], &str)] = &[
    ("mast --seed 3", &["T = 811 N"], "Ty + Hy = 1429"),
    ("mast --seed 3", &[], "Ty + Hy = 1429"),
    ("mast --seed 3", &["T = 811 N", "Hy = 1280 N"], "Ty + Hy = 1429"),
    ("mast --seed 3", &["T = 811 N", "Hy = 1280 N"], "Ty + Hy = 1430"),
];

/// A multiple of a number that has a name, and what only nearly is one.
#[rustfmt::skip]
const MULTIPLES: &[Row] = &[
    ("counter --seed 3", &["k = 248 N"], "T = 2k", Sign::Right, ""),
    ("counter --seed 3", &["k = 248 N"], "2k = T", Sign::Right, ""),
    ("counter --seed 3", &["k = 248 N"], "T = k + k", Sign::Right, ""),
    ("counter --seed 3", &["k = 992 N"], "T = k/2", Sign::Right, ""),
    ("counter --seed 3", &["k = 248 N"], "T = 3k", Sign::Wrong, ""),
    ("counter --seed 3", &["k = 241 N"], "T = 2k", Sign::Wrong, ""),
    ("ladder", &["k = 154.3 N"], "F = 2k", Sign::Rounded, ""),
    ("ladder", &["k = 154.3 N"], "F = 3k", Sign::Wrong, ""),
    ("forearm", &["k = 247.5"], "M = 2k", Sign::Right, ""),
    ("forearm", &["k = 247.5"], "M = 3k", Sign::Wrong, ""),
];

/// The balance of moments about the link c in numbers, once the lines before it stand.
#[test]
fn a_long_balance_beside_a_value_is_noted() {
    let sit = |line: &str| {
        let mut session = sitting("../general/three_links");
        session.submit("freely");
        for line in THREE_LINKS {
            session.submit(line);
        }
        session.submit(line).line.sign
    };
    assert_eq!(sit(ABOUT_C), Sign::Noted);
    assert_eq!(sit(&ABOUT_C.replace("57.5 N", "67.5 N")), Sign::Wrong);
}

const THREE_LINKS: [&str; 3] = [
    "Py = 120 N·sin(250° − 180°) = 113 N",
    "Py + Qy = Ay + By",
    "Py·(x1 − xC) + Px·(yC − y1) + Ay·(|xA| + xC) + Bx·(|yB| + yC) + M = Qy·(|x2| + xC) + Qx·(yC − y2) + Ax·(|yA| + yC) + By·(xB − xC)",
];

const ABOUT_C: &str = "113 N·(0.4 m − 0.1 m) + 41.0 N·(0.6 m − 0.3 m) + A·sin 70°·(0.6 m + 0.1 m) + B·cos(180° − 110°)·(0.3 m + 0.6 m) + 26 N m = 57.5 N·(0.5 m + 0.1 m) + 48.2 N·(0.6 m − 0.2 m) + A·cos 70°·(0.4 m + 0.6 m) + B·sin(180° − 110°)·(0.5 m − 0.1 m)";

#[test]
fn what_is_wrong_is_not_told_right() {
    let others: Vec<String> = [DIRECTIONS, SUMS, MULTIPLES]
        .into_iter()
        .flat_map(told_otherwise)
        .collect();
    assert!(others.is_empty(), "{others:#?}");
    let signs = NOT_RIGHT.iter().filter_map(|(name, before, line)| {
        let mut session = sitting(name);
        session.submit("freely");
        for line in *before {
            session.submit(line);
        }
        let sign = session.submit(line).line.sign;
        let right = matches!(sign, Sign::Right | Sign::Rounded | Sign::Follows);
        right.then(|| format!("{name} {before:?} {line}: {sign:?}"))
    });
    let signs: Vec<String> = signs.collect();
    assert!(signs.is_empty(), "{signs:#?}");
}
