//! The thoughts named behind wrong lines of a free working, and those that are not: what a line
//! does not show is not said of it. By hand; the wrong lines are common practice, no source.

use super::counted::{Row, told_otherwise};
use leverwright::session::Sign;

const TRAP: &str = "../worked/trap";

/// What goes wrong in workings with friction, couples, spread loads and cut shapes.
#[rustfmt::skip]
const GENERAL: &[Row] = &[
    ("bracket", &[], "50*0.25 + ME = 29.4*0.3 + 11.76*0.6 + 8*0.6", Sign::Wrong, "couple is multiplied"),
    ("bracket", &[], "50*0.25 + ME = 29.4*0.6 + 11.76*0.6 + 8", Sign::Wrong, "half of it belongs"),
    ("bracket", &[], "50*0.25 + ME = 29.4*0.6/4 + 11.76*0.6 + 8", Sign::Wrong, "halved twice"),
    ("bracket", &[], "50 + ME = 29.4*0.3 + 11.76*0.6 + 8", Sign::Wrong, "without its distance"),
    ("bracket", &[], "50*0.25 + ME = 29.4*0.3 + 11.76*0.6 - 8", Sign::Wrong, "wrong side"),
    ("bracket", &[], "50*0.25 + ME = 29.4*0.3 + 11.76*0.6 + 8", Sign::Right, ""),
    (TRAP, &[], "1471.5*4 + 6300*3.714 = B*1.5 + 4000", Sign::Wrong, "another point"),
    (TRAP, &[], "1471.5*6.5 + 6300*3.714 = B*4 + 4000", Sign::Wrong, "each other's distances"),
    (TRAP, &[], "1471.5*4 + 6300*3.714 = B*6.5 + 4000*8", Sign::Wrong, "couple is multiplied"),
    ("internal_hinge", &[], "Q = q", Sign::Wrong, "on each metre"),
    ("internal_hinge", &[], "dQ = L2", Sign::Wrong, "at its end"),
    ("topple", &[], "FN = 0.5*784", Sign::Wrong, "the most that friction could be"),
    ("topple", &[], "FN = 0.5*784*0.4", Sign::Wrong, "!the most"),
    ("topple", &[], "P*1.1 = 784*0.8", Sign::Wrong, "one edge only"),
    ("topple", &[], "P*1.1 = 784*0.4", Sign::Right, ""),
    ("ladder", &[], "alpha = theta", Sign::Wrong, "other angle"),
    // What may act either way points no way yet.
    ("forearm", &[], "Ey = 15.68+49+M*sin(80)", Sign::Wrong, "!every term points the same way"),
    ("ladder", &["F = 309 N"], "FN = 0.35*309", Sign::Wrong, "push at another place"),
    ("ladder", &[], "309*4*sin 62 = 196*2*cos 62 + 686*(4-d) cos 62", Sign::Wrong, "another point"),
    ("lamina_props", &[], "x2 = (1.2+0.3)/2", Sign::Wrong, "half-way"),
    ("lamina_props", &[], "y2 = 0.5 + 0.3/2", Sign::Wrong, "half-way"),
    ("lamina_props", &[], "y2 = 0.5 + 2*0.3/3", Sign::Wrong, "other side"),
    ("lamina_props", &[], "y2 = 0.5 + 0.3/3", Sign::Right, ""),
    // What a line agrees with as a function only is not said of it.
    ("jib", &[], "S = (392*1.5+1470*3)*sin 36.87/2", Sign::Wrong, "!divided by the ratio"),
    ("gate", &[], "B = 588*1.5*1.2", Sign::Wrong, "!divided by its distance"),
    ("gate", &[], "W*b/2 = B*h/2", Sign::Wrong, "!whole length"),
    ("gate", &[], "588*1.5 = B*0.6", Sign::Wrong, "!whole length"),
    ("gate", &[], "588*3 = B*1.2", Sign::Wrong, "half of it belongs"),
    ("topple", &[], "P*1.1/2 = 784*0.4", Sign::Wrong, "!edge"),
    ("internal_hinge", &[], "MA = F*d1", Sign::Wrong, "!added"),
    ("internal_hinge", &[], "12000*1.5 = B*1.5", Sign::Wrong, "!added"),
    ("jib", &[], "392 + 1470 = S*sin 36.87", Sign::Wrong, "!added"),
    ("rod_on_peg", &[], "58.8*1*cos 40 = P*1.4*sin 40", Sign::Wrong, "!tangent"),
    // A ratio in every term leaves no force whole.
    ("../workings/lid", &[], "140*0.3*cos25 = Wb*cos25*3*0.8/7", Sign::Wrong, "!whole force"),
    ("rod_on_peg", &[], "58.8*1*cos40 = P*1.4*cos40", Sign::Wrong, "!whole force"),
    // One thought in all places at once.
    ("leaning", &[], "R*5*sin 60 = 18*2.5*cos 60 + 65*3.5*cos 60", Sign::Wrong, "mass stands where a weight belongs"),
    ("leaning", &[], "R*5*sin 60 = 176.4*2.5*cos 60 + 65*3.5*cos 60", Sign::Wrong, "mass stands where a weight belongs"),
    ("leaning", &[], "R*5*cos 60 = 176.4*2.5*sin 60 + 637*3.5*sin 60", Sign::Wrong, "exchanged"),
    ("leaning", &[], "R*5*sin 60 = 176.4*2.5*cos 60 + 637*3.5*cos 60", Sign::Right, ""),
    ("forearm", &[], "1.6*15 + 5*35 = M*4*sin 80", Sign::Wrong, "mass stands where a weight belongs"),
    // A quarter of a metre, or one, is no missing distance; a whole length is not the whole force.
    ("../general/two_legs", &["B = 411.8"], "B*3*sin 20 = 137.2*1.5*sin 20 + T*dT*cos 20", Sign::Wrong, "!without its distance"),
    ("../workings/wall_bears", &[], "Wb*4*cos 60 = 70*4*sin 60 + 25.8*4*cos 60", Sign::Wrong, "!whole force"),
];

/// What the lessons' lines show, and what they do not.
#[rustfmt::skip]
const LESSONS: &[Row] = &[
    // A force that was forgotten in the moments, or a mass for its weight, and again in the forces.
    ("mast --seed 3", &["617.4*2.7*sin 35 + 695.8*4.5*sin35 = T*4.2*sin65", "T = 723.1 N"], "Hy = Wb + W1 - T sin 10", Sign::Follows, ""),
    ("mast --seed 3", &["617.4*2.7*sin 35 + 695.8*4.5*sin35 = T*4.2*sin65", "T = 723.1 N"], "Hy = 617.4+695.8-723.1*sin10 = 1187.6", Sign::Follows, ""),
    ("mast --seed 3", &["617.4*2.7*sin 35 + 695.8*4.5*sin35 = T*4.2*sin65", "T = 723.1 N"], "Hy = 617.4+695.8-723.1*cos10", Sign::Wrong, ""),
    ("counter --seed 3", &["176*1.1 + 127*2.2 = T*1.4", "T = 338"], "H = 176+127-338", Sign::Follows, ""),
    ("counter --seed 3", &["176*1.1 + 127*2.2 = T*1.4", "T = 338"], "H = 176-338", Sign::Wrong, ""),
    ("walkway --seed 4", &["510*1.9 + 666*2.7 = T*3.8*sin50", "T = 950"], "Hy = 510+666-950 sin50", Sign::Follows, ""),
    ("walkway --seed 4", &["510*1.9 + 666*2.7 = T*3.8*sin50", "T = 950"], "Hy = 510+666+127-950 sin50", Sign::Follows, ""),
    ("mast --seed 3", &["63*2.7*sin35+71*4.5*sin35+11*5.4*sin35=T sin65*4.2", "T=82.7"], "Hy=63+71+11-82.7 sin10", Sign::Follows, ""),
    // Two mistakes are named only where both stand in the line.
    ("counter --seed 3", &[], "H = T", Sign::Wrong, "!only"),
    ("counter --seed 6", &[], "H = T", Sign::Wrong, "!far end"),
    ("counter --seed 5", &[], "H = T", Sign::Wrong, "!moment of W1"),
    ("walkway --seed 6", &[], "Hy = Ty", Sign::Wrong, "!only"),
    ("walkway --seed 6", &[], "Hx = Wb + W1", Sign::Wrong, "!Two things"),
    ("counter --seed 6", &[], "H = 2T", Sign::Wrong, "!Two things"),
    // Printed angles put together the wrong way are no two thoughts.
    ("mast --seed 8", &[], "gamma = 50+15 = 65", Sign::Wrong, "!Two things"),
    ("mast --seed 8", &[], "gamma = 90-15", Sign::Wrong, "!Two things"),
    ("mast --seed 6", &[], "392*2.7*cos65+352.8*4.1*cos65 = T*5.4*sin(65-35)", Sign::Wrong, "!half-way"),
    ("mast --seed 6", &[], "392*2.7*cos65+352.8*4.1*cos65 = T*5.4*sin30", Sign::Wrong, "!half-way"),
    // Angles agree by chance: only the one that stands in the line is told of it.
    ("mast --seed 203", &[], "gamma = 70-35", Sign::Wrong, "!printed angle"),
    ("mast --seed 203", &[], "gamma = 180-70-35", Sign::Right, ""),
    ("mast --seed 240", &[], "Tperp = T sin 55", Sign::Wrong, "printed angle of T"),
    ("mast --seed 240", &[], "Tperp = T sin 125", Sign::Wrong, "!printed angle"),
    ("mast --seed 240", &[], "Tperp = T cos 35", Sign::Wrong, "!printed angle"),
    ("mast --seed 240", &[], "Tperp = T sin 20", Sign::Wrong, "You took α for T"),
    ("mast --seed 240", &[], "Tperp = T cos 70", Sign::Wrong, "!You took α"),
    ("mast --seed 240", &[], "Tperp = T cos 75", Sign::Wrong, "You took cos γ"),
    ("mast --seed 240", &[], "Tperp = T sin 15", Sign::Wrong, "!cos γ"),
    ("mast --seed 240", &[], "Tperp = T sin 15", Sign::Wrong, "other angle at this corner"),
    ("mast --seed 240", &[], "gamma = 70-55", Sign::Wrong, "other angle at this corner"),
    ("mast --seed 240", &[], "Wbperp = 0.9397*Wb", Sign::Wrong, "Perhaps"),
    ("mast --seed 240", &[], "Tperp = T cos 15", Sign::Right, ""),
    // Half of the rope's printed angle is no other force's angle, though both are 25°.
    ("mast --seed 704", &[], "421.4*sin25*2.5+411.6*sin25*5+176.4*sin25*2.6 = T*2.9*sin(50/2)", Sign::Wrong, "!You took α"),
    ("mast --seed 704", &[], "421.4*sin25*2.5+411.6*sin25*5+176.4*sin25*2.6 = T*2.9*sin(50-25)", Sign::Wrong, "!You took α"),
    ("mast --seed 704", &[], "421.4*sin25*2.5+411.6*sin25*5+176.4*sin25*2.6 = T*2.9*sin25", Sign::Wrong, "You took α for T"),
    ("mast --seed 704", &[], "421.4*sin25*2.5+411.6*sin25*5+176.4*sin25*2.6 = T*2.9*sin(90-65)", Sign::Wrong, "You took α for T"),
    ("mast --seed 2103", &[], "T*6*sin(70-35) = Wb*3*sin 20 + W1*3.6*sin 20", Sign::Wrong, "!You used the printed angle"),
    ("mast --seed 2103", &[], "T*6*sin 35 = Wb*3*sin 20 + W1*3.6*sin 20", Sign::Wrong, "You used the printed angle of T"),
    // The distance of another force, or one that was worked out from the middle: nobody can tell.
    ("walkway --seed 2152", &[], "T sin 70 * 4.2 = Wb*2.1 + W1*0.9 + W2*0.9", Sign::Wrong, "!You measured"),
    ("counter --seed 2056", &[], "T*0.6 = Wb*1.3 + W1*0.6", Sign::Wrong, "!You measured"),
    // `Wbp` is `Wbperp` behind an equals sign, too, and no name of her own.
    ("mast --seed 3", &[], "Wbp = Wb", Sign::Wrong, "whole of Wb"),
    ("mast --seed 3", &[], "W1p = W1", Sign::Wrong, "whole of W1"),
    ("mast --seed 3", &[], "a = T", Sign::Noted, "stands for T"),
    // Of two things at once the angle is told that stands in the line.
    ("walkway --seed 1986", &[], "T*2.2*sin 40 = 568.4*2.1+705.6*3", Sign::Wrong, "!cos γ"),
    // Without the balance nobody can tell whether W1 was turned in it or on the way from it.
    ("mast --seed 1863", &[], "T = (224.8*3.3-348.5*6.6)/(3.8 sin 65)", Sign::Wrong, "Perhaps"),
    ("mast --seed 1863", &["T*3.8*sin 65 = 224.8*3.3+348.5*6.6"], "T = (224.8*3.3-348.5*6.6)/(3.8 sin 65)", Sign::Wrong, "the other sign than it has in your balance"),
    // Walkway 3, 65°: multiplied in place of divided, whichever way the side is written.
    ("walkway --seed 3", &[], "T = (529.2*1.8+764.4*2.5)*sin 65/3.6", Sign::Wrong, "multiplied"),
    ("walkway --seed 3", &[], "T = (529.2*1.8+764.4*2.5)*cos 25/3.6", Sign::Wrong, "multiplied"),
    // A second try is looked at by itself, not beside the first.
    ("mast --seed 109", &["gamma = 75", "Tperp = T sin 20"], "Tperp = T cos 20", Sign::Wrong, "!cos γ"),
    ("mast --seed 109", &["gamma = 75"], "Tperp = T cos 75", Sign::Wrong, "You took cos γ"),
    // One mass for another, while the other weight stands right.
    ("counter --seed 3", &["W1 = 13*9.8"], "W2 = 13*9.8", Sign::Wrong, "mass that belongs to W1"),
    // A chain may end in another name than it began with.
    ("mast --seed 11", &["T = 350.1 N"], "T = 350.1 N = Hx", Sign::Right, ""),
    ("mast --seed 1", &["T = 402.4 N"], "T = 402.4 N = -Hx", Sign::Right, ""),
    ("mast --seed 11", &["T = 350.1 N"], "T = 350.1 N = Hy", Sign::Wrong, ""),
    ("mast --seed 11", &["T = 350.1 N"], "T = 390.1 N = Hx", Sign::Wrong, ""),
];

/// A moment that she calls M1 where m1 is a mass.
#[rustfmt::skip]
const MOMENTS: &[Row] = &[
    ("ladder", &["M1 = 196*2*cos62"], "M1 + 686 d cos 62 = F*4*sin 62", Sign::Right, ""),
    ("ladder", &["M1 = 196*2*sin62"], "M1 + 686 d cos 62 = 309*4*sin 62", Sign::Wrong, ""),
    ("ladder", &[], "M1 = 80 kg", Sign::Wrong, "m1 = 70 kg"),
    ("ladder", &[], "W1 = M1*9.8", Sign::Right, ""),
    ("mast --seed 3", &["M1 = 695.8*4.5*sin 35"], "617.4*2.7*sin 35 + M1 + 107.8*5.4*sin 35 = T*4.2*sin 65", Sign::Right, ""),
    ("mast --seed 3", &["M1 = 695.8*4.5*sin 35"], "W1 = M1 g", Sign::Wrong, ""),
    // Counted from the body on, or in newton metres behind a bare distance.
    ("mast --seed 43", &["M1 = Wb*2.5*cos 65 = 611 Nm", "M2 = W1*5*cos 65"], "T*3*sin 65 = M1 + M2", Sign::Right, ""),
    ("mast --seed 43", &["M1 = Wb*2.5*cos 65 = 611 Nm", "M2 = W1*5*cos 65"], "T*3*sin 65 = M1 - M2", Sign::Wrong, ""),
    ("counter --seed 45", &["M1 = Wb*1.1 = 205 Nm", "M2 = W1*0.7 = 165 Nm"], "T*2.2 = M1 + M2", Sign::Right, ""),
    ("walkway --seed 43", &["Wb = 509.6 N", "W1 = 686 N", "M1 = Wb*1.9 = 968 Nm", "M2 = W1*1.1 = 755 Nm"], "M1 + M2 = 1723 Nm", Sign::Right, ""),
    ("walkway --seed 43", &["Wb = 509.6 N", "W1 = 686 N", "M1 = Wb*1.9 = 968 Nm", "M2 = W1*1.1 = 755 Nm"], "M1 + M2 = 1923 Nm", Sign::Wrong, ""),
    ("jib", &["M1 = Wb*1.5 = 588 Nm", "M2 = W1*3 = 4410 Nm"], "M1 + M2 = 4998 Nm", Sign::Right, ""),
    ("mast --seed 43", &["M1 = W1*5*cos 65 = 1201 Nm"], "M1 + Wb*2.5*cos 65 = T*3*sin 65", Sign::Right, ""),
    ("mast --seed 43", &[], "M1 = W1*5*sin 65", Sign::Wrong, ""),
];

/// The size of a force from wrong parts of hers, and wrong friction that she calls f.
#[rustfmt::skip]
const HERS: &[Row] = &[
    ("../workings/beam_on_two", &["Ax = 100 N", "Ay = 294 N"], "A = 310.5 N", Sign::Follows, ""),
    ("../workings/beam_on_two", &["Ax = 100 N", "Ay = 294 N"], "A = 394 N", Sign::Wrong, ""),
    ("internal_hinge", &["Ax = 5 kN"], "A = 18.7 kN", Sign::Follows, ""),
    ("ladder_angle", &["68.6*4*sin θ = 196*4*cos θ"], "tan θ = 784/274.4", Sign::Follows, ""),
    ("ladder_angle", &["68.6*4*sin θ = 196*4*cos θ"], "tan θ = 274.4/784", Sign::Wrong, ""),
    ("ladder_angle", &["68.6*4*sin θ = 196*4*cos θ"], "68.6*4*sin θ = 196*4*cos θ", Sign::Wrong, ""),
    ("../workings/chest", &["f = 0.6*588 = 352.8 N"], "P cos 15 = f", Sign::Right, ""),
    ("../workings/chest", &["f = 0.6*588 = 352.8 N"], "P cos 15 = 2 f", Sign::Wrong, ""),
];

#[test]
fn what_a_wrong_line_shows_is_named_and_nothing_else() {
    let others: Vec<String> = [GENERAL, LESSONS, MOMENTS, HERS]
        .into_iter()
        .flat_map(told_otherwise)
        .collect();
    assert!(others.is_empty(), "{others:#?}");
}
