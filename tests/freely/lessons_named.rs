//! Thoughts in the lessons that only a form shows: the hinge's force forgotten, distances from the
//! rope's place, every force divided by its distance. By hand; the wrong lines are common practice,
//! no source. What a line does not show is not said of it.
//!
//! Counter 3: 18 kg at 1.1 m, 13 kg at the tip (2.2 m), 15 kg at 1.5 m, the rope at 1.4 m. Mast 3:
//! 63 kg at 2.7 m, 71 kg at 4.5 m, 11 kg at 5.4 m, 55° with the level, the rope at 4.2 m and 10°.
//! Mast 8: 57 kg at 2.7 m, 31 kg at 5.4 m, 40° with the level, the rope at 4.2 m and 15°. Mast 1: a
//! level rope. Walkway 4: 52 kg at 1.9 m, 68 kg at 2.7 m, 13 kg at 1.5 m, the rope at 3.8 m and 50°.
//! Walkway 3: 54 kg at 1.8 m, 78 kg at 2.5 m, the rope at 3.6 m and 65°.

use super::counted::{Row, told_otherwise};
use leverwright::session::Sign;

const HINGE: &str = "T alone hold up the weights";
const ROPE: &str = "weights from the place where T acts";

#[rustfmt::skip]
const ROWS: &[Row] = &[
    // The rope alone holds up the weights.
    ("mast --seed 3", &[], "T sin10 = Wb+W1+W2", Sign::Wrong, HINGE),
    ("mast --seed 3", &[], "T = (617.4+695.8+107.8)/sin 10", Sign::Wrong, HINGE),
    ("mast --seed 3", &[], "T sin 10 - Wb - W1 - W2 = 0", Sign::Wrong, HINGE),
    ("mast --seed 8", &[], "T*sin15 = 558.6 + 303.8", Sign::Wrong, HINGE),
    ("mast --seed 3", &[], "T sin10 + Hy = Wb+W1+W2", Sign::Right, ""),
    ("mast --seed 3", &[], "T cos10 = Wb+W1+W2", Sign::Wrong, "!alone hold up"),
    ("mast --seed 3", &[], "T = Wb+W1+W2", Sign::Wrong, "!alone hold up"),
    // Forces without their distances are that, whatever else was thought.
    ("counter --seed 3", &[], "T = Wb + W1 + W2", Sign::Wrong, "none of them has its distance"),
    ("counter --seed 3", &[], "T + H = Wb + W1 + W2", Sign::Right, ""),
    // Half of all, whichever way the rope pulls.
    ("walkway --seed 3", &[], "T = (Wb+W1)/2", Sign::Wrong, "half of all weights"),
    ("mast --seed 8", &[], "T = (Wb+W1)/2", Sign::Wrong, "half of all weights"),
    ("walkway --seed 3", &[], "T = (Wb+W1)/2", Sign::Wrong, "!Two things"),
    // Nor of distances that do not stand in the line: W1 has 2.2 and T the middle's 1.1.
    ("counter --seed 3", &[], "Wb*1.4 + W1*1.1 + W2*1.5 = T*2.2", Sign::Wrong, "!and T the distance"),
    ("mast --seed 8", &[], "psi = beta", Sign::Wrong, "!Two things"),
    // Of one force's moment nothing is said of two.
    ("counter --seed 3", &[], "M1 = 127.4*1.4 m", Sign::Wrong, "!Two things"),
    ("counter --seed 3", &[], "M1 = 127.4*1.5 m", Sign::Wrong, "!and W2 the distance"),
    ("mast --seed 3", &[], "m1", Sign::Noted, "!Two things"),
    // A number for a part of the pull beside a pull of her own: it holds, follows or is wrong.
    ("walkway --seed 2400", &["T = 723 N"], "Tx = 1405 N", Sign::Rounded, ""),
    ("walkway --seed 2400", &["T = 723 N"], "Tx = 655 N", Sign::Follows, "own value from line 1"),
    ("walkway --seed 2400", &["T = 723 N"], "Tx = 306 N", Sign::Wrong, "sine and cosine"),
    ("walkway --seed 2400", &["T = 723 N"], "Tx = 400 N", Sign::Wrong, "!sine"),
    ("walkway --seed 2400", &[], "Tx = 306 N", Sign::Noted, "still to be found"),
    ("walkway --seed 2400", &[], "Tx = 1405 N", Sign::Noted, "still to be found"),
    // Ten times the mass may be the weight to two figures.
    ("counter --seed 2400", &[], "Wb = 230 N", Sign::Wrong, "Perhaps this was worked with g = 10"),
    ("counter --seed 2400", &[], "Wb = 230.0 N", Sign::Wrong, "That is the value with g = 10"),
    // Another quantity than the one asked is no mistake that gives nearly its number.
    ("mast --seed 2400", &["T = 794 N"], "H = 767 N", Sign::Wrong, "!Perhaps"),
    // A pull that follows from a wrong balance, told for its own part.
    (
        "mast --seed 3202",
        &["676*2.5*sin 40 + 294*5*sin 40 = T*4.3", "T = 472 N"],
        "Tx = 472 N",
        Sign::Wrong,
        "part across the body",
    ),
    // Who multiplied by a ratio that was worked out before did not divide by it.
    ("walkway --seed 4102", &[], "T = (509.6*2.1+686*1.5)/2 * 0.574", Sign::Wrong, "!divided by the ratio"),
    ("walkway --seed 4102", &[], "T = (509.6*2.1+686*1.5)/2 * sin 35", Sign::Wrong, "multiplied by the ratio"),
    // Ratios of the weights and of the rope that cancel in a quotient prove nothing.
    ("mast --seed 4001", &[], "T = (Wb*2.6 sin 65+W1*4.4 sin 65)/(5.2 cos 50)", Sign::Wrong, "!You divided by the ratio"),
    ("mast --seed 4001", &[], "T = (Wb*2.6 cos 50+W1*4.4 cos 50)/(5.2 cos 50)", Sign::Wrong, "!You used the whole"),
    // Nor did anybody take a cosine where none stands.
    ("mast --seed 4120", &[], "T = 627.2*2.6+421.4*5.2", Sign::Wrong, "!You took cos"),
    // Half of a weight, or of all, shows no moments.
    ("walkway --seed 3201", &[], "Hy = 32*9.8/2", Sign::Wrong, "Perhaps"),
    ("walkway --seed 3207", &[], "Ty = 1137/2", Sign::Wrong, "!Two things"),
    // Six is no sine: the distance stands there, and is another.
    ("mast --seed 3101", &[], "T*6 = 211*3+170*6+70.4*2.3", Sign::Wrong, "!distance from the pivot is missing"),
    ("mast --seed 3101", &[], "T*sin 80 = 211*3+170*6+70.4*2.3", Sign::Wrong, "stands without its distance"),
    // A given told with its name last.
    ("mast --seed 3", &[], "4.5 m = d1", Sign::Noted, ""),
    ("mast --seed 3", &[], "63 kg = mb", Sign::Noted, ""),
    ("counter --seed 3", &[], "1.4 m = dT", Sign::Noted, ""),
    ("counter --seed 3", &[], "1.5 m = dT", Sign::Wrong, ""),
    // Moments about the rope's place without the hinge's, and the supports exchanged.
    ("counter --seed 3", &[], "Wb*0.3 = W1*0.8 + W2*0.1", Sign::Wrong, ROPE),
    ("counter --seed 3", &[], "176.4*0.3 = 127.4*0.8+147*0.1", Sign::Wrong, ROPE),
    ("counter --seed 3", &[], "T*1.4 = 176.4*0.3 - 127.4*0.8 - 147*0.1", Sign::Wrong, ROPE),
    ("counter --seed 3", &[], "H*1.4 = Wb*0.3 - W1*0.8 - W2*0.1", Sign::Right, ""),
    ("counter --seed 3", &[], "T*1.4 = Wb*1.1 + W1*2.2 + W2*1.5", Sign::Right, ""),
    ("counter --seed 3", &[], "Wb*1.1 = W1*2.2 + W2*1.5", Sign::Wrong, "!from the place where T acts"),
    ("mast --seed 3", &[], "617.4*1.5*sin 35 = 695.8*0.3*sin 35+107.8*1.2*sin 35", Sign::Wrong, ROPE),
    ("mast --seed 3", &[], "Wb*1.5 = W1*0.3 + W2*1.2", Sign::Wrong, ROPE),
    ("counter --seed 3", &[], "T = H", Sign::Wrong, "!from the place where T acts"),
    // Every force divided by its distance.
    ("counter --seed 3", &[], "T*1.4 = 176.4/1.1+127.4/2.2+147/1.5", Sign::Wrong, "divided each weight by its distance"),
    ("counter --seed 3", &[], "T/1.4 = 176.4/1.1+127.4/2.2+147/1.5", Sign::Wrong, "divided every force by its distance"),
    ("counter --seed 3", &[], "T*1.4 = 176.4*1.1+127.4/2.2+147*1.5", Sign::Wrong, "divided by its distance (W1)"),
    ("counter --seed 3", &[], "T = 176.4*1.1/1.4+127.4*2.2/1.4+147*1.5/1.4", Sign::Right, ""),
    // The rope's ratio at weights that act squarely.
    ("walkway --seed 4", &[], "509.6*sin50*1.9 + 666.4*sin50*2.7+127.4*sin50*1.5 = T*3.8*sin50", Sign::Wrong, "multiplied the weights by a ratio"),
    ("walkway --seed 4", &[], "509.6*sin50*1.9 + 666.4*sin50*2.7+127.4*sin50*1.5 = T*3.8", Sign::Wrong, "multiplied the weights by a ratio"),
    ("walkway --seed 4", &[], "509.6*1.9 + 666.4*2.7+127.4*1.5 = T*3.8", Sign::Wrong, "You used the whole of T"),
    ("walkway --seed 4", &[], "509.6*1.9 + 666.4*2.7+127.4*1.5 = T*3.8*sin50", Sign::Right, ""),
    // A level pull among the upright forces.
    ("mast --seed 1", &[], "Hy + T = Wb + W1", Sign::Wrong, "pulls level"),
    ("mast --seed 1", &[], "Hy = Wb + W1 - T", Sign::Wrong, "pulls level"),
    ("mast --seed 1", &["T = 402"], "Hy = 951+402", Sign::Wrong, "You put T into the vertical balance"),
    ("mast --seed 1", &[], "Hy = Wb + W1", Sign::Right, ""),
    // Masses or distances exchanged: the products are the same, a weight's name tells.
    ("mast --seed 8", &[], "31*9.8*2.7*sin50 + 57*9.8*5.4*sin50 = T*4.2*sin 55", Sign::Wrong, "Perhaps"),
    ("mast --seed 8", &[], "Wb*5.4*sin50 + W1*2.7*sin50 = T*4.2*sin 55", Sign::Wrong, "You gave Wb the distance of W1"),
    ("mast --seed 8", &["Wb = 559", "W1 = 304"], "304*2.7*sin50 + 559*5.4*sin50 = T*4.2*sin 55", Sign::Wrong, "You gave Wb the distance of W1"),
    ("mast --seed 8", &[], "57*9.8*2.7*sin50 + 31*9.8*5.4*sin50 = T*4.2*sin 55", Sign::Right, ""),
    // Half of all weights, however it is written; the same products are places where lengths stand.
    ("counter --seed 3", &[], "46*9.8 = 2T", Sign::Wrong, "half of all weights"),
    ("counter --seed 3", &[], "176.4 + 127.4 + 147 = 2*T", Sign::Wrong, "half of all weights"),
    ("walkway --seed 3", &[], "T = 132*9.8/(2*sin 65)", Sign::Wrong, "upright part of T half of all weights"),
    ("walkway --seed 3", &[], "2*Ty = Wb + W1", Sign::Wrong, "upright part of T half of all weights"),
    ("walkway --seed 3", &[], "529.2*1.8+764.4*1.8 = T*3.6*sin 65", Sign::Wrong, "You placed W1 half-way"),
    ("walkway --seed 3", &[], "T = 132*9.8/2", Sign::Wrong, "!half-way"),
    ("walkway --seed 3", &[], "Ty = Hy", Sign::Wrong, "!distance"),
    ("walkway --seed 3", &[], "Ty + Hy = Wb + W1", Sign::Right, ""),
    // One line of one force shows whose mass was taken, and of the other one nothing.
    ("mast --seed 3", &[], "W1p = 617 sin 35", Sign::Wrong, "For W1 you used the mass that belongs to Wb"),
    ("counter --seed 3", &[], "W2 = 13*9.8", Sign::Wrong, "For W2 you used the mass that belongs to W1"),
    ("counter --seed 3", &[], "W2 = 15*9.8", Sign::Right, ""),
    // Hy found about the tip (498.2 N), by its name and as a number; Hx = 795.4/tan 65.
    ("walkway --seed 3", &["Hy = 498.2 N"], "T cos 65 = Wb + W1 - Hy", Sign::Wrong, "You took cos"),
    ("walkway --seed 3", &["Hy = 498.2 N"], "T cos 65 + 498.2 = 529.2 + 764.4", Sign::Wrong, "You took cos"),
    ("walkway --seed 3", &["Hy = 498.2 N"], "T tan 65 = 529.2 + 764.4 - 498.2", Sign::Wrong, "You took a tangent"),
    ("walkway --seed 3", &["Hx = 370.9 N"], "T sin 65 = 370.9", Sign::Wrong, "You took sin"),
    ("walkway --seed 3", &["Hx = 370.9 N"], "T cos 65 = 370.9", Sign::Right, ""),
    ("walkway --seed 3", &["Hy = 498.2 N"], "T sin 65 + 498.2 = 529.2 + 764.4", Sign::Right, ""),
    // An upright rope leaves one part of the hinge's force: Hy is H. Counter 3: T = 496.3 N, 45.5 N down.
    ("counter --seed 3", &[], "Hy*1.4 = Wb*0.3 - W1*0.8 - W2*0.1", Sign::Right, ""),
    ("counter --seed 3", &["T = 496.3 N"], "Hy + 496.3 = 176.4+127.4+147", Sign::Right, ""),
    ("counter --seed 3", &["T = 496.3 N"], "Hy = 45.5 N down", Sign::Right, ""),
    ("counter --seed 3", &["T = 496.3 N"], "Hy = 45.5 N up", Sign::Wrong, ""),
    ("counter --seed 3", &["T = 496.3 N"], "Hy = 145.5 N", Sign::Wrong, ""),
    ("counter --seed 3", &["T = 496.3 N"], "Hy = 176.4+127.4-496.3", Sign::Wrong, "Your balance of forces leaves out W2"),
    ("counter --seed 3", &["T = 496.3 N"], "Hy = 127.4+147-496.3", Sign::Wrong, "as if the counter itself weighed nothing"),
    // The rope's length for its arm is one thought, none of two ratios.
    ("walkway --seed 3", &[], "529*1.8 + 764*2.5 = T*(3.6/cos 65)", Sign::Wrong, "!Two things"),
];

#[test]
fn what_only_a_form_shows_in_a_lesson_is_named() {
    let others: Vec<String> = told_otherwise(ROWS);
    assert!(others.is_empty(), "{others:#?}");
}
